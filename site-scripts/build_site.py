"""Build the site into build/site and the offline zip beside it. Runs under .venv.

The stages are: MkDocs, libraries from npm, scripts of the pages, the page runtime, formulas, content policy, zip.
All work in a folder of their own, which takes the place of build/site only when all are done.
"""

from __future__ import annotations

import argparse
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import zipfile
from collections.abc import Iterator, Mapping
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from pathlib import Path

try:
    import fcntl
except ImportError:  # not on every system; there builds are not guarded
    fcntl = None  # type: ignore[assignment]

from page_policy import content_named, kept_policies, references, with_content_names, with_policy, with_script_files
from page_scripts import write_scripts
from runtime.build_runtime import made_runtime
from toolbox import (
    BUILD,
    REPO,
    SCRIPTS,
    SetupError,
    digest,
    ensure_node,
    is_fresh,
    say,
    write_stamp,
)
from vendor import vendor

SITE = BUILD / "site"
ZIP = BUILD / "booklet-offline.zip"
CACHE = BUILD / "cache"
ZIP_FOLDER = "physics-line-by-line"
INPUTS = [REPO / "docs", REPO / "calc", REPO / "mkdocs.yml", SCRIPTS]
_STAMP = BUILD / "site-stamp"
# What only a page served over http loads: half of the zip, and of its reader's data.
HTTP_ONLY = ("assets/runtime/*.gz", "assets/runtime/*.json", "search/search_index.json")
# A paragraph with the class only-served, such as the offer of the zip: no copy from disk holds one.
_ONLY_SERVED = re.compile(rb'<p class="only-served">.*?</p>\n?', re.DOTALL)
# In the theme's script: whether the index is fetched at once, or when the search is opened.
_INDEX_AT_ONCE = '$(location.protocol!=="file:"),Je("search")'
_INDEX_WHEN_OPENED = '$(!1),Je("search")'
# Parts of the theme that no page of ours uses.
_UNUSED = ("assets/javascripts/lunr", "sitemap.xml", "sitemap.xml.gz")


@contextmanager
def one_at_a_time() -> Iterator[None]:
    """Hold the build folder: two builds at once would undo each other."""
    BUILD.mkdir(exist_ok=True)
    with (BUILD / "lock").open("w") as held:
        if fcntl:
            fcntl.flock(held, fcntl.LOCK_EX)
            _sweep()
        yield


def _sweep() -> None:
    """Remove what killed builds left. Only while the folder is held: then none of it is in use."""
    for left in [*BUILD.glob("site-*/"), *CACHE.glob("tmp*/")]:
        shutil.rmtree(left, ignore_errors=True)


def build(force: bool = False) -> Path:
    """Build the site if any input changed since the last build; return its folder."""
    with one_at_a_time():
        return _build(force)


def _build(force: bool) -> Path:
    value = digest(INPUTS, extra=sys.version)
    if not force and SITE.is_dir() and ZIP.is_file() and is_fresh(_STAMP, value):
        return SITE
    ensure_node()
    BUILD.mkdir(exist_ok=True)
    staging = Path(tempfile.mkdtemp(prefix="site-", dir=BUILD))
    try:
        site = staging / "site"
        with ThreadPoolExecutor(1) as beside:
            runtime = beside.submit(made_runtime, CACHE)  # other programs do most of it, as they do of the pages
            _mkdocs(site)
            vendor(site)
            write_scripts(site)
            pages = _sealed_pages(site)
            shutil.copytree(runtime.result(), site / "assets" / "runtime")
        _write_pages(pages)
        say("Writing the offline zip")
        write_zip(site, staging / ZIP.name)
        # The served copy is offered for download; the zip was written before it was there.
        shutil.copyfile(staging / ZIP.name, site / ZIP.name)
        # A build killed from here on is not taken for finished.
        _STAMP.unlink(missing_ok=True)
        _put_in_place(staging)
    finally:
        shutil.rmtree(staging, ignore_errors=True)
    write_stamp(_STAMP, value)
    return SITE


def _mkdocs(site: Path) -> None:
    say("Building the pages")
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--site-dir", str(site)]
    # The page hooks import calc from the repository; a fixed hash seed keeps builds alike.
    settings = {"PYTHONPATH": str(REPO), "PYTHONHASHSEED": "0", "NO_MKDOCS_2_WARNING": "1"}
    done = subprocess.run(command, cwd=REPO, env={**os.environ, **settings})
    if done.returncode != 0:
        raise SetupError("MkDocs stopped; its message above names the page to mend.")
    for name in _UNUSED:
        if (site / name).is_dir():
            shutil.rmtree(site / name)
        else:
            (site / name).unlink(missing_ok=True)
    for source_map in site.rglob("*.map"):
        source_map.unlink()
    _late_index(site)
    # What pages/search-worker.js loads where a worker may not start from a file.
    for worker in (site / "assets/javascripts/workers").glob("*.js"):
        text = json.dumps(worker.read_text(encoding="utf-8"))
        worker.with_name(f"{worker.name}.source.js").write_text(
            f"window.bookletSearchSource = {text};\n", encoding="utf-8"
        )


def _late_index(site: Path) -> None:
    """Have the theme fetch the index of the search when the find box is opened, served too, and not with each page.

    Raises SetupError where the theme's script is not the one this was written for.
    """
    (script,) = (site / "assets/javascripts").glob("bundle.*.js")
    text = script.read_text(encoding="utf-8")
    if text.count(_INDEX_AT_ONCE) != 1:
        raise SetupError("The theme fetches the index of its search in another way now; mend _late_index to fit it.")
    script.write_text(text.replace(_INDEX_AT_ONCE, _INDEX_WHEN_OPENED), encoding="utf-8")


def _sealed_pages(site: Path) -> dict[Path, str]:
    """The pages with their scripts moved out and their policy put in: all that does not wait for the runtime."""
    say("Sealing the pages")
    policies = kept_policies()
    pages = {}
    for path in sorted(site.rglob("*.html")):
        text = with_script_files(path.read_text(encoding="utf-8"), path, site / "assets/javascripts/inline")
        pages[path] = with_policy(text, path.name, policies)
    policies.write()
    return pages


def _write_pages(pages: Mapping[Path, str]) -> None:
    """Write the pages with their scripts and styles named by content."""
    plain: set[Path] = set()  # files that now stand there under the name of their content
    for path, text in pages.items():
        plain |= {(path.parent / name).resolve() for name in references(text)}
        path.write_text(with_content_names(text, path), encoding="utf-8")
    for file in plain:
        if file.name != "loader.js" and content_named(file) != file:
            file.unlink()


def write_zip(site: Path, target: Path) -> None:
    """Zip what a site needs from disk, below one folder; the same site gives the same bytes."""
    left_out = {file for pattern in HTTP_ONLY for file in site.glob(pattern)}
    files = sorted(path for path in site.rglob("*") if path.is_file() and path not in left_out)
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as packed:
        for file in files:
            entry = zipfile.ZipInfo(f"{ZIP_FOLDER}/{file.relative_to(site).as_posix()}")
            entry.external_attr = 0o644 << 16
            entry.compress_type = zipfile.ZIP_DEFLATED
            content = file.read_bytes()
            packed.writestr(entry, _ONLY_SERVED.sub(b"", content) if file.suffix == ".html" else content)


def _put_in_place(staging: Path) -> None:
    if SITE.exists():
        SITE.rename(staging / "old")
    (staging / "site").rename(SITE)
    (staging / ZIP.name).replace(ZIP)


def main() -> int:
    """Build from the command line; errors are sentences, not tracebacks."""
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--force", action="store_true", help="build even if nothing changed")
    try:
        build(options.parse_args().force)
    except SetupError as error:
        print(f"The site was not built. {error}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
