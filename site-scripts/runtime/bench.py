"""Measure the page runtime side by side with an ordinary Pyodide start; nothing here is a test.

    .venv/bin/python site-scripts/runtime/bench.py [--turns 5] [--only edits] [--keep]

All times are told as ratios of an ordinary start of Pyodide in the same run: its own files as published and the same
wheel, from the same local server, cold (a new browser) or warm (the page opened again). Beside it: the built runtime
over http and from disk, the same with its questions repeated until there are 120, an edit to its lines and to its
figures over every declared question with drawn numbers, and the next page of the built site, from leaving a page to
a form that answers.

A machine's speed changes while it is measured. So everything is measured in turns: a plain start, then a share of the
edits and of the next pages, then a plain start again, and each share's times are ratios of the two starts around it.

`bench_ratios.json` has the ratios of the last release, which the differences are told from; `--keep` writes them.
A ratio above its target ends the script with an error.
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
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from importlib import import_module
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

from playwright.sync_api import Page, Playwright, sync_playwright  # noqa: E402

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
EACH = ("lines", "figures")  # held by the p95, as each edit is to be quick; the others by the p50
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

# One edit after another, each to its lines in the page, and on to its folded parts and figures, as a page asks; before
# the first one of a question what a page with its form asks while it is idle.
EDITS = """async (requests) => {
  const place = document.querySelector("output");
  const times = { lines: [], figures: [] };
  // The page of the edit before is painted: nobody types faster than that.
  const painted = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  const rehearsed = (window.rehearsed ??= new Set());
  for (const request of requests) {
    const data = { ...request, opened: [] };
    for (let turn = 0, more = !rehearsed.has(data.question); more; turn++) {
      more = (await bookletRuntime.ask("rehearse", { question: data.question, turn })).data.more;
    }
    rehearsed.add(data.question);
    await painted();
    const begun = performance.now();
    const lines = await bookletRuntime.ask("solve", { ...data, drawn: false }, { channel: "form" });
    if (!lines.ok) throw new Error(JSON.stringify([data, lines]));
    place.innerHTML = lines.data.html;
    times.lines.push(performance.now() - begun);
    const figures = await bookletRuntime.ask("drawings", data, { channel: "form" });
    for (const [key, part] of Object.entries(figures.data.parts)) {
      place.querySelector(`[data-part="${CSS.escape(key)}"]`).outerHTML = part;
    }
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


Taken = dict[str, list[float]]  # times in ms by what was measured
Share = Callable[[int], Taken]  # what one turn of several measures


class Times:
    """Times in ms by what was measured, each with the plain start of its own minutes."""

    def __init__(self) -> None:
        self.taken: dict[str, list[tuple[float, float]]] = {}

    def add(self, taken: Taken, plain: float) -> None:
        """Note times that are ratios of a plain start's."""
        for name, times in taken.items():
            self.taken.setdefault(name, []).extend((time, plain) for time in times)

    def times(self, name: str) -> list[float]:
        """The times of one measure."""
        return [time for time, _ in self.taken[name]]

    def ratios(self, name: str) -> list[float]:
        """The same as ratios."""
        return [time / plain for time, plain in self.taken[name]]


def open_page(page: Page, address: str) -> float:
    """Open a page and return the milliseconds from its opening to its first answer."""
    page.goto(address)
    page.wait_for_function("window.took !== undefined", timeout=60_000)
    if not page.evaluate("window.reply.ok"):
        raise SystemExit(f"{address} answered {page.evaluate('window.reply')}")
    return float(page.evaluate("window.took"))


@contextmanager
def new_page(playwright: Playwright, **options: bool) -> Iterator[Page]:
    """A page of a browser that has fetched nothing yet."""
    browser = playwright.chromium.launch(executable_path=str(ensure_chromium()), args=CHROMIUM_ARGUMENTS)
    yield browser.new_page(**options)
    browser.close()


def measure_starts(playwright: Playwright, plain: str, addresses: dict[str, str], turns: int, times: Times) -> None:
    """First answers in new browsers, all in turn, each turn beside its own plain start."""
    for _ in range(turns):
        taken: Taken = {}
        for name, address in {"plain cold": plain, **addresses}.items():
            with new_page(playwright) as page:
                taken[name] = [open_page(page, address)]
        times.add(taken, taken["plain cold"][0])


def measure_in_turns(playwright: Playwright, plain: str, shares: list[Share], turns: int, times: Times) -> None:
    """A share of each measure a turn, with a plain warm start before and after."""
    with new_page(playwright) as page:
        open_page(page, plain)
        before = open_page(page, plain)
        times.add({"plain warm": [before]}, before)
        for turn in range(turns):
            taken = [share(turn) for share in shares]
            after = open_page(page, plain)
            times.add({"plain warm": [after]}, after)
            for some in taken:
                times.add(some, (before + after) / 2)
            before = after


def share_of_edits(page: Page, address: str, turns: int) -> Share:
    """Edits in a page that stays open: times to their lines, and to their figures."""
    asked = edits()
    open_page(page, address)
    page.evaluate(EDITS, asked[::10])
    return lambda turn: page.evaluate(EDITS, asked[turn::turns])


def share_of_pages(page: Page, base: str, turns: int) -> Share:
    """Pages one after another: times from leaving one to the next one's live form, Python being kept."""
    first, *others = question_pages()
    page.add_init_script(WATCH)
    page.goto(base + first)
    return lambda turn: {"next page": [next_page(page, base, name) for name in others[turn::turns]]}


def next_page(page: Page, base: str, name: str) -> float:
    """Leave a page of the site for another; the milliseconds to its live form."""
    page.wait_for_function("window.took !== undefined", timeout=60_000)
    page.evaluate(LEAVE, base + name)
    page.wait_for_function("(end) => location.href.endsWith(end) && window.took !== undefined", arg=name)
    if page.evaluate("bookletRuntime.how.place") != "shared":
        raise SystemExit("Python was not kept for the next page.")
    return float(page.evaluate("window.took"))


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


def twentieths(values: list[float]) -> tuple[float, float]:
    """Their p50 and p95."""
    cuts = statistics.quantiles(values, n=20, method="inclusive")
    return cuts[9], cuts[18]


class Report:
    """Ratios beside their targets and those of the last release."""

    def __init__(self) -> None:
        self.last = json.loads(KEPT.read_text("utf-8")) if KEPT.exists() else {"version": "none", "ratios": {}}
        self.ratios: dict[str, float] = {}

    def tell(self, name: str, times: Times) -> None:
        """Print one measure: its times, its ratio, how that is against target and last release."""
        values = times.times(name)
        middle, most = twentieths(values)
        spread = f"{min(values):.0f} to {max(values):.0f}"
        told = f"  {name:28} p50 {middle:6.1f}  p95 {most:6.1f} ms ({spread}, {len(values)} times)"
        if name in TARGETS:
            told += f"  {self._ratio(name, *twentieths(times.ratios(name)))}"
        print(told)

    def _ratio(self, name: str, middle: float, most: float) -> str:
        ratio = self.ratios[name] = round(most if name in EACH else middle, 4)
        verdict = "met" if ratio <= TARGETS[name] else "MISSED"
        before = self.last["ratios"].get(name)
        change = f"{ratio - before:+.4f} since {self.last['version']}" if before else "no ratio of a release before"
        of = "p95" if name in EACH else "p50"
        return f"ratio p50 {middle:.4f}  p95 {most:.4f}, target of its {of} {TARGETS[name]}: {verdict}; {change}"

    def missed(self) -> list[str]:
        """Names of the measures above their targets."""
        return [name for name, ratio in self.ratios.items() if ratio > TARGETS[name]]

    def keep(self) -> None:
        """Write the ratios as those of this release."""
        version = import_module("calc").VERSION
        ratios = {**self.last["ratios"], **self.ratios}
        KEPT.write_text(json.dumps({"version": version, "ratios": ratios}, indent=2) + "\n", encoding="utf-8")


def measure(folder: Path, only: str, turns: int) -> Times:
    """Lay the pages out and measure what is asked for, or all."""
    sys.path.insert(0, str(REPO))
    times = Times()
    lay_out(folder, REPO / "calc")
    lay_out_plain(folder, REPO / "calc")
    if only in ("", "starts"):
        lay_out(folder / "many", repeated(REPO / "calc", folder), "cache-bench")
    with ExitStack() as open_things:
        base, site = (open_things.enter_context(served(where)) for where in (folder, SITE))
        playwright = open_things.enter_context(sync_playwright())
        plain = f"{base}plain.html"
        if only in ("", "starts"):
            addresses = {
                "first answer, http": f"{base}ours.html",
                "first answer, disk": (folder / "ours.html").as_uri(),
                f"first answer, {MANY} questions": f"{base}many/ours.html",
            }
            measure_starts(playwright, plain, addresses, turns, times)
        shares = []
        if only in ("", "edits"):
            page = open_things.enter_context(new_page(playwright))
            shares.append(share_of_edits(page, f"{base}ours.html", turns))
        if only in ("", "pages"):
            page = open_things.enter_context(new_page(playwright, bypass_csp=True))  # for the script that waits
            shares.append(share_of_pages(page, site, turns))
        if shares:
            measure_in_turns(playwright, plain, shares, turns, times)
    return times


def main() -> None:
    """Run everything, print the figures, and end with an error where a target is missed."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--turns", type=int, default=5)
    parser.add_argument("--only", choices=["starts", "edits", "pages"], default="")
    parser.add_argument("--keep", action="store_true", help="keep the ratios as those of this release")
    options = parser.parse_args()
    report = Report()
    with tempfile.TemporaryDirectory() as name:
        times = measure(Path(name), options.only, options.turns)
    for name in times.taken:
        report.tell(name, times)
    if options.keep:
        report.keep()
    if missed := report.missed():
        raise SystemExit(f"Above target: {', '.join(missed)}.")


if __name__ == "__main__":
    main()
