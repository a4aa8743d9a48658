"""Measure the page runtime side by side with an ordinary Pyodide start; nothing here is a test.

    .venv/bin/python site-scripts/runtime/bench.py [--runs 5] [--only edits] [--keep]

All times are told as ratios of an ordinary start of Pyodide in the same run: its own files as published and the same
wheel, from the same local server, cold (a new browser) or warm (the page opened again). Beside it: the built runtime
over http and from disk, the same with its questions repeated until there are 120, an edit to its lines and to its
figures over every declared question with drawn numbers, and the next page of the built site, from leaving a page to
a form that answers. `bench_ratios.json` has the ratios of the last release, which the differences are told from;
`--keep` writes them. A ratio above its target ends the script with an error.
"""

from __future__ import annotations

import argparse
import functools
import http.server
import json
import re
import shutil
import statistics
import sys
import tempfile
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from importlib import import_module
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

from playwright.sync_api import Page, sync_playwright  # noqa: E402

from runtime.build_runtime import build_runtime, build_wheel, lock_and_compile  # noqa: E402
from toolbox import BUILD, CHROMIUM_ARGUMENTS, NODE_MODULES, REPO, ensure_chromium  # noqa: E402

# Ratios: of a cold start, and of a warm one.
TARGETS = {
    "first answer, http": 0.2,
    "first answer, disk": 0.3,
    "first answer, 120 questions": 0.2,
    "lines": 0.006,
    "figures": 0.02,
    "next page": 0.04,
}
COLD = frozenset(name for name in TARGETS if name.startswith("first"))
KEPT = HERE / "bench_ratios.json"
MANY = 120  # questions
DRAWN = 3  # edits of a question, beside its example
SITE = REPO / "build" / "site"

REQUEST = json.dumps(
    {
        "operation": "solve",
        "data": {"question": "coulomb.force", "inputs": {"Q1": "6 nC", "Q2": "-2 nC", "r": "15 cm"}},
    }
)

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

# One edit after another, each to its lines in the page, and on to its figures.
EDITS = """async (requests) => {
  const place = document.querySelector("output");
  const times = { lines: [], figures: [] };
  for (const data of requests) {
    const begun = performance.now();
    const lines = await bookletRuntime.ask("solve", { ...data, drawn: false }, { channel: "form" });
    if (!lines.ok) throw new Error(JSON.stringify([data, lines]));
    place.innerHTML = lines.data.html;
    times.lines.push(performance.now() - begun);
    const figures = await bookletRuntime.ask("drawings", data, { channel: "form" });
    for (const [name, picture] of Object.entries(figures.data.drawings)) {
      place.querySelector(`[data-drawing="${CSS.escape(name)}"]`).innerHTML = picture;
    }
    times.figures.push(performance.now() - begun);
  }
  return times;
}"""

# In every page: when it was left, and when the page that followed had a form and Python ready to answer it.
WATCH = """addEventListener("DOMContentLoaded", () => {
  const runtime = window.bookletRuntime;
  const live = () => {
    if (runtime.state === "ready") window.took ??= Date.now() - Number(sessionStorage.getItem("left"));
  };
  if (!runtime || !document.querySelector("form.numbers.live")) return;
  runtime.onchange(live);
  live();
});"""
LEAVE = "(address) => { sessionStorage.setItem('left', Date.now()); location.href = address; }"


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


def edits() -> list[dict[str, object]]:
    """What is asked of every declared question: its example, and drawn numbers of every level."""
    sys.path.insert(0, str(REPO))
    topics, drawing = import_module("calc.topics"), import_module("calc.practice.drawing")
    asked: list[dict[str, object]] = []
    for key in topics.question_keys():
        topic, question = topics.find(key)
        asked.append({"question": key, "inputs": dict(question.example)})
        for seed in range(DRAWN):
            drawn = drawing.draw(topic, question, seed, 1 + seed % 3)
            asked.append({"question": key, "inputs": drawn.inputs, "find": drawn.find})
    return asked


def repeated(package_dir: Path, folder: Path) -> Path:
    """A copy of the package with its topics repeated until there are `MANY` questions."""
    package = folder / "calc"
    shutil.copytree(package_dir, package, ignore=shutil.ignore_patterns("__pycache__"))
    there = len(import_module("calc.topics").question_keys())
    folders = [f for f in sorted((package / "topics").iterdir()) if f.is_dir() and f.name != "shared"]
    for turn in range(2, -(-MANY // there) + 1):
        for topic in folders:
            again = topic.with_name(f"{topic.name}_{turn}")
            shutil.copytree(topic, again)
            for file in again.rglob("*.py"):
                text = re.sub(rf"calc\.topics\.{topic.name}\b", f"calc.topics.{again.name}", file.read_text("utf-8"))
                text = re.sub(r'(TOPIC = Topic\(\s*key="[\w-]+)"', rf'\1-{turn}"', text)
                file.write_text(text, encoding="utf-8")
    return package


def lay_out(folder: Path, package_dir: Path, cache: str = "cache") -> None:
    """Write the page with the built runtime below one folder."""
    folder.mkdir(exist_ok=True)
    build_runtime(folder, BUILD / cache, package_dir=package_dir)
    (folder / "ours.html").write_text(OURS.replace("REQUEST", REQUEST), encoding="utf-8")


def lay_out_plain(folder: Path, package_dir: Path) -> None:
    """Write the page with Pyodide as published, and the package's wheel beside it."""
    pyodide = folder / "pyodide"
    shutil.copytree(NODE_MODULES / "pyodide", pyodide)
    with tempfile.TemporaryDirectory() as scratch:
        wheel = build_wheel(package_dir, Path(scratch))
        lock, compiled = lock_and_compile(wheel, NODE_MODULES / "pyodide", Path(scratch) / "lock")
        shutil.copy(compiled, pyodide)
        shutil.copy(lock, pyodide / "pyodide-lock.json")
    (folder / "plain.html").write_text(PLAIN.replace("REQUEST", REQUEST), encoding="utf-8")


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


def measure_edits(address: str, asked: list[dict[str, object]]) -> dict[str, list[float]]:
    """Return times in ms from an edit to its lines, and to its figures."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=str(ensure_chromium()), args=CHROMIUM_ARGUMENTS)
        page = browser.new_page()
        open_page(page, address)
        page.evaluate(EDITS, asked[::10])
        found: dict[str, list[float]] = page.evaluate(EDITS, asked)
        browser.close()
    return found


def measure_next_page(base: str, pages: list[str]) -> list[float]:
    """Return times in ms from leaving a page to the next one's live form, Python being kept."""
    times = []
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=str(ensure_chromium()), args=CHROMIUM_ARGUMENTS)
        page = browser.new_page(bypass_csp=True)  # for the script that waits
        page.add_init_script(WATCH)
        page.goto(base + pages[0])
        for name in pages[1:]:
            page.wait_for_function("window.took !== undefined", timeout=60_000)
            page.evaluate(LEAVE, base + name)
            page.wait_for_function("(end) => location.href.endsWith(end) && window.took !== undefined", arg=name)
            if page.evaluate("bookletRuntime.how.place") != "shared":
                raise SystemExit("Python was not kept for the next page.")
            times.append(float(page.evaluate("window.took")))
        browser.close()
    return times


def question_pages() -> list[str]:
    """Pages of questions of the built site, a few of each chapter, each chapter's in their order."""
    folders = sorted({file.parent for file in SITE.glob("*/*.html")} - {SITE / "assets"})
    found = [
        file.relative_to(SITE).as_posix()
        for folder in folders
        for file in sorted(folder.glob("*.html"))[:3]
        if "form" in file.read_text("utf-8")
    ]
    if len(found) < 5:
        raise SystemExit(f"{SITE} has no pages of questions. Run site-scripts/build_site.py first.")
    return found


class Report:
    """Ratios beside their targets and those of the last release."""

    def __init__(self, plain: dict[str, float]) -> None:
        self.plain = plain
        self.last = json.loads(KEPT.read_text("utf-8")) if KEPT.exists() else {"version": "none", "ratios": {}}
        self.ratios: dict[str, float] = {}

    def tell(self, name: str, values: list[float]) -> None:
        """Print one measure: its times, its ratio, how that is against target and last release."""
        middle, cuts = statistics.median(values), statistics.quantiles(values, n=20)
        worth = cuts[18] if name in ("lines", "figures") else middle
        of = "cold" if name in COLD else "warm"
        ratio = self.ratios[name] = round(worth / self.plain[of], 4)
        verdict = "met" if ratio <= TARGETS[name] else "MISSED"
        before = self.last["ratios"].get(name)
        change = f"{ratio - before:+.4f} since {self.last['version']}" if before else "no ratio of a release before"
        spread = f"{min(values):.0f} to {max(values):.0f}"
        print(
            f"  {name:28} p50 {middle:6.1f}  p95 {cuts[18]:6.1f} ms ({spread}, {len(values)} times)  "
            f"ratio {ratio:.4f}, target {TARGETS[name]}: {verdict}; {change}"
        )

    def missed(self) -> list[str]:
        """Names of the measures above their targets."""
        return [name for name, ratio in self.ratios.items() if ratio > TARGETS[name]]

    def keep(self) -> None:
        """Write the ratios as those of this release."""
        version = import_module("calc").VERSION
        ratios = {**self.last["ratios"], **self.ratios}
        KEPT.write_text(json.dumps({"version": version, "ratios": ratios}, indent=2) + "\n", encoding="utf-8")


def main() -> None:
    """Run everything, print the figures, and end with an error where a target is missed."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--runs", type=int, default=5)
    parser.add_argument("--only", choices=["starts", "edits", "pages"], default="")
    parser.add_argument("--keep", action="store_true", help="keep the ratios as those of this release")
    options = parser.parse_args()
    asked = edits()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        lay_out(folder, REPO / "calc")
        lay_out_plain(folder, REPO / "calc")
        if options.only in ("", "starts"):
            lay_out(folder / "many", repeated(REPO / "calc", folder), "cache-bench")
        with served(folder) as base, served(SITE) as site:
            addresses = {"plain": f"{base}plain.html"}
            if options.only in ("", "starts"):
                addresses["first answer, http"] = f"{base}ours.html"
                addresses["first answer, disk"] = (folder / "ours.html").as_uri()
                addresses[f"first answer, {MANY} questions"] = f"{base}many/ours.html"
            times = measure(addresses, options.runs)
            plain = {warmth: statistics.median(times[f"plain {warmth}"]) for warmth in ("cold", "warm")}
            print(f"plain start of Pyodide: cold {plain['cold']:.0f} ms, warm {plain['warm']:.0f} ms")
            report = Report(plain)
            for label in list(addresses)[1:]:
                report.tell(label, times[f"{label} cold"])
            if options.only in ("", "edits"):
                for label, values in measure_edits(f"{base}ours.html", asked).items():
                    report.tell(label, values)
            if options.only in ("", "pages"):
                report.tell("next page", measure_next_page(site, question_pages()))
    if options.keep:
        report.keep()
    if missed := report.missed():
        raise SystemExit(f"Above target: {', '.join(missed)}.")


if __name__ == "__main__":
    main()
