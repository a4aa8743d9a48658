"""Build the booklet and serve it: `python3 site-scripts/serve.py`.

Standard library only; any Python from 3.11 on can start it.
"""

from __future__ import annotations

import argparse
import re
import subprocess
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import unquote, urlsplit

sys.path.insert(0, str(Path(__file__).resolve().parent))
from toolbox import BUILD, SCRIPTS, SetupError, ensure_node_modules, ensure_venv

SITE = BUILD / "site"
ZIP = BUILD / "booklet-offline.zip"
FIRST_PORT = 8000
# A script, a style, a font or a file of the runtime that has a part of its digest in its name.
_BY_CONTENT = re.compile(r"/assets/.*[-./][0-9a-f]{8,12}\.[a-z0-9.]+$")


class SiteHandler(SimpleHTTPRequestHandler):
    """Serve a built site below a prefix such as "/class/notes/"."""

    # Fixed here because the system's own table may lack some or, on Windows, be wrong.
    extensions_map = {  # noqa: RUF012 (the base class declares it as plain data)
        "": "application/octet-stream",
        ".css": "text/css; charset=utf-8",
        ".gz": "application/gzip",
        ".html": "text/html; charset=utf-8",
        ".js": "text/javascript; charset=utf-8",
        ".json": "application/json",
        ".mjs": "text/javascript; charset=utf-8",
        ".png": "image/png",
        ".svg": "image/svg+xml",
        ".txt": "text/plain; charset=utf-8",
        ".wasm": "application/wasm",
        ".webmanifest": "application/manifest+json",
        ".woff2": "font/woff2",
        ".zip": "application/zip",
    }
    protocol_version = "HTTP/1.1"
    prefix = "/"
    verbose = False

    def translate_path(self, path: str) -> str:
        """Return the file for an address; one outside the prefix leads to no file."""
        plain = unquote(urlsplit(path).path)
        if not plain.startswith(self.prefix):
            return str(Path(self.directory) / "no such page")
        return super().translate_path("/" + path[len(self.prefix) :])

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        """Answer a missing page with the site's own page for that."""
        page = Path(self.directory) / "404.html"
        if code != 404 or not page.is_file():
            super().send_error(code, message, explain)
            return
        body = page.read_bytes()
        self.send_response(404)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def list_directory(self, path: str) -> None:
        """Show no folder listings: a host of static files would not either."""
        self.send_error(404)

    def send_response(self, code: int, message: str | None = None) -> None:
        """Let browsers keep a file that is named by its content, and check for a newer build of all else."""
        super().send_response(code, message)
        named = code in (200, 304) and _BY_CONTENT.search(urlsplit(self.path).path)
        self.send_header("Cache-Control", "public, max-age=31536000, immutable" if named else "no-cache")

    def log_message(self, format: str, *args: object) -> None:
        """Keep the terminal for what matters, unless asked."""
        if self.verbose:
            super().log_message(format, *args)


class SiteServer(ThreadingHTTPServer):
    """A server that does not mind a browser hanging up in the middle of an answer."""

    daemon_threads = True

    def handle_error(self, request: object, client_address: object) -> None:
        """Report every error but a closed connection."""
        if not isinstance(sys.exc_info()[1], ConnectionError):
            super().handle_error(request, client_address)


def make_server(site: Path, port: int, prefix: str = "", asked: set[str] | None = None) -> ThreadingHTTPServer:
    """Return a server for a site on this machine; port 0 takes a free one.

    asked: gets the path of every file that is asked for.
    Raises OSError when the port is taken.
    """
    path = "/".join(["", *(part for part in prefix.split("/") if part), ""])

    class Handler(SiteHandler):
        def __init__(self, *args: object) -> None:
            super().__init__(*args, directory=str(site))

        def do_GET(self) -> None:
            if asked is not None:
                asked.add(self.path.split("?")[0].removeprefix(path))
            super().do_GET()

    Handler.prefix = path
    return SiteServer(("127.0.0.1", port), Handler)


@contextmanager
def serving(site: Path, prefix: str = "", asked: set[str] | None = None) -> Iterator[str]:
    """Serve a site in the background on a free port; yield its address, with a slash at its end.

    asked: gets the path of every file that is asked for.
    """
    server = make_server(site, 0, prefix, asked)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_address[1]}{server.RequestHandlerClass.prefix}"
    server.shutdown()
    server.server_close()
    thread.join()


def prepare_and_build() -> Path:
    """Set up everything a build needs, build, and return the interpreter of .venv."""
    python = ensure_venv()
    ensure_node_modules()
    if subprocess.run([str(python), str(SCRIPTS / "build_site.py")]).returncode != 0:
        raise SetupError("Mend what the lines above name and try again.")
    return python


def _serve(port: int | None, prefix: str) -> None:
    ports = range(FIRST_PORT, FIRST_PORT + 20) if port is None else [port]
    for number in ports:
        try:
            server = make_server(SITE, number, prefix)
            break
        except OSError:
            continue
    else:
        taken = f"{ports[0]} to {ports[-1]} are" if port is None else f"{port} is"
        raise SetupError(f"Port {taken} taken or not allowed; choose another with --port.")
    address = f"http://127.0.0.1:{server.server_address[1]}{server.RequestHandlerClass.prefix}"
    print(f"Serving {address} (stop with Ctrl+C)", flush=True)
    try:
        server.serve_forever()
    except KeyboardInterrupt:
        print()
    finally:
        server.server_close()


def main() -> int:
    """Read the options, build, print where everything is, serve."""
    options = argparse.ArgumentParser(description="Build the booklet and serve it.")
    options.add_argument("--build-only", action="store_true", help="build, do not serve")
    options.add_argument("--port", type=int, help=f"port (else the first free from {FIRST_PORT})")
    options.add_argument("--prefix", default="", help="serve below a path such as class/notes")
    chosen = options.parse_args()
    try:
        prepare_and_build()
        print(f"Built folder: {SITE}\nOffline zip:  {ZIP}", flush=True)
        if not chosen.build_only:
            _serve(chosen.port, chosen.prefix)
    except SetupError as error:
        print(f"Stopped. {error}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
