"""Measure the page runtime side by side with an ordinary Pyodide start; nothing here is a test.

    .venv/bin/python site-scripts/runtime/bench.py [--runs 5] [--package calc]

Both open a page of this script's own from the same local server: one with the built runtime, one
with Pyodide's own files as published and the same wheel. Cold: a new browser each time. Warm: the
page opened again in that browser. Then the time from an edit to the new answer, over the
package's own example requests.
"""

from __future__ import annotations

import argparse
import functools
import http.server
import json
import shutil
import statistics
import sys
import tempfile
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

from playwright.sync_api import Page, sync_playwright  # noqa: E402

from runtime.build_runtime import build_runtime, build_wheel, lock_and_compile  # noqa: E402
from runtime.example_requests import example_requests  # noqa: E402
from toolbox import BUILD, CHROMIUM_ARGUMENTS, NODE_MODULES, REPO, ensure_chromium  # noqa: E402

TARGETS = {"http cold": 0.25, "disk cold": 0.5}
EDIT_TARGET_MS = 16

OURS = """<!doctype html><meta charset="utf-8"><title>Runtime</title><output></output>
<script src="assets/runtime/loader.js"></script>
<script>
const request = REQUEST;
bookletRuntime.ask(request.operation, request.data).then((reply) => {
  document.querySelector("output").textContent = JSON.stringify(reply).slice(0, 200);
  window.took = performance.now();
  window.reply = reply;
});
</script>
"""

PLAIN = """<!doctype html><meta charset="utf-8"><title>Plain</title><output></output>
<script src="pyodide/pyodide.js"></script>
<script>
(async () => {
  const python = await loadPyodide({ indexURL: "pyodide/" });
  await python.loadPackage("calc", { messageCallback() {} });
  const answer = python.runPython("from calc.desk import answer; answer");
  const reply = JSON.parse(answer(JSON.stringify(REQUEST)));
  document.querySelector("output").textContent = JSON.stringify(reply).slice(0, 200);
  window.took = performance.now();
  window.reply = reply;
})();
</script>
"""

# One edit after another, each to the answer in the page and to the frame that shows it.
EDITS = """async (requests) => {
  const place = document.querySelector("output");
  const times = { answer: [], frame: [] };
  for (const { operation, data } of requests) {
    const begun = performance.now();
    const reply = await bookletRuntime.ask(operation, data, { channel: "form" });
    times.answer.push(performance.now() - begun);
    place.textContent = JSON.stringify(reply);
    await new Promise((done) => requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = done;
      port2.postMessage(0);
    }));
    times.frame.push(performance.now() - begun);
  }
  return { times, how: bookletRuntime.how };
}"""


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None:
        """Keep the run's output to the figures."""


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """Serve a folder on this machine only; yield its address."""
    handler = functools.partial(_Quiet, directory=str(folder))
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}/"
        server.shutdown()


def requests_of(package_dir: Path) -> list[dict[str, object]]:
    """Return the package's requests to solve, parsed, in the one notation an edit asks for."""
    sys.path.insert(0, str(package_dir.parent))
    offered = [json.loads(request) for request in example_requests()]
    requests = [request for request in offered if request["operation"] == "solve"]
    for request in requests:
        request["data"].pop("as", None)
    return requests


def lay_out(folder: Path, package_dir: Path, request: dict[str, object]) -> None:
    """Write both pages and everything they need below one folder."""
    build_runtime(folder, BUILD / "cache", package_dir=package_dir)
    pyodide = folder / "pyodide"
    shutil.copytree(NODE_MODULES / "pyodide", pyodide)
    with tempfile.TemporaryDirectory() as scratch:
        wheel = build_wheel(package_dir, Path(scratch))
        lock, compiled = lock_and_compile(wheel, NODE_MODULES / "pyodide", Path(scratch) / "lock")
        shutil.copy(compiled, pyodide)
        shutil.copy(lock, pyodide / "pyodide-lock.json")
    text = json.dumps(request)
    (folder / "ours.html").write_text(OURS.replace("REQUEST", text), encoding="utf-8")
    (folder / "plain.html").write_text(PLAIN.replace("REQUEST", text), encoding="utf-8")


def open_page(page: Page, address: str) -> float:
    """Open a page and return the milliseconds from its opening to its first answer."""
    page.goto(address)
    page.wait_for_function("window.took !== undefined", timeout=60_000)
    if not page.evaluate("window.reply.ok"):
        raise SystemExit(f"{address} answered {page.evaluate('window.reply')}")
    return float(page.evaluate("window.took"))


def measure(addresses: dict[str, str], runs: int) -> dict[str, list[float]]:
    """Return times in ms under "<name> cold" and "<name> warm", the names taken in turn."""
    times: dict[str, list[float]] = {f"{n} {w}": [] for n in addresses for w in ("cold", "warm")}
    with sync_playwright() as playwright:
        for _ in range(runs):
            for name, address in addresses.items():
                browser = playwright.chromium.launch(executable_path=str(ensure_chromium()), args=CHROMIUM_ARGUMENTS)
                page = browser.new_page()
                for warmth in ("cold", "warm"):
                    times[f"{name} {warmth}"].append(open_page(page, address))
                browser.close()
    return times


def measure_edits(address: str, requests: list[dict[str, object]]) -> dict[str, object]:
    """Return times in ms from an edit to its answer, and to the frame showing it."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=str(ensure_chromium()), args=CHROMIUM_ARGUMENTS)
        page = browser.new_page()
        open_page(page, address)
        page.evaluate(EDITS, requests[:20])
        found: dict[str, object] = page.evaluate(EDITS, requests)
        browser.close()
    return found


def verdict(value: float, target: float) -> str:
    """Say whether a figure meets its target."""
    return f"target {target}: {'met' if value <= target else 'MISSED'}"


def main() -> None:
    """Run everything and print the figures."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--runs", type=int, default=5)
    parser.add_argument("--package", type=Path, default=REPO / "calc")
    options = parser.parse_args()
    package_dir = options.package.resolve()
    requests = requests_of(package_dir)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        lay_out(folder, package_dir, requests[0])
        with served(folder) as base:
            addresses = {
                "plain": f"{base}plain.html",
                "http": f"{base}ours.html",
                "disk": (folder / "ours.html").as_uri(),
            }
            times = measure(addresses, options.runs)
            edits = measure_edits(addresses["http"], (requests * 200)[:200])
    middle = {label: statistics.median(values) for label, values in times.items()}
    print(f"page open to first answer, median of {options.runs} (ms, smallest to largest)")
    for label, values in times.items():
        ratio = middle[label] / middle[f"plain {label.split()[1]}"]
        note = f", {verdict(round(ratio, 3), TARGETS[label])}" if label in TARGETS else ""
        spread = f"{min(values):.0f} to {max(values):.0f}"
        print(f"  {label:11}{middle[label]:6.0f}  ({spread})  ratio {ratio:.3f}{note}")
    print(f"an edit to its answer, 200 edits, {edits['how']}")
    for label, values in edits["times"].items():  # type: ignore[attr-defined]
        cuts = statistics.quantiles(values, n=20)
        note = f", {verdict(round(cuts[18], 1), EDIT_TARGET_MS)}" if label == "answer" else ""
        print(f"  to the {label:7} p50 {statistics.median(values):.1f}  p95 {cuts[18]:.1f} ms{note}")


if __name__ == "__main__":
    main()
