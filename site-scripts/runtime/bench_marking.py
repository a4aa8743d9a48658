"""Measure marking in a browser against plain Pyodide starts of the same minutes; nothing here is a test.

    .venv/bin/python site-scripts/runtime/bench_marking.py [--turns 5]

Every declared question, with its example and drawn numbers, is marked whole, each of its parts answered: rightly, twice
too large, and by a number that no mistake gives, for which every mistake and every pair has to be tried. Times are
from asking to the verdict on the page, told as ratios of the plain warm starts before and after.
"""

from __future__ import annotations

import argparse
import math
import sys
import tempfile
from contextlib import ExitStack
from importlib import import_module
from pathlib import Path

from bench import (
    DRAWN,
    REPO,
    Share,
    Times,
    lay_out,
    lay_out_plain,
    measure_in_turns,
    new_page,
    open_page,
    served,
    twentieths,
)
from playwright.sync_api import Page, sync_playwright

TARGET = 0.1  # of a plain warm start, for the p95
KINDS = {"right": 1.0, "twice": 2.0, "of no origin": 1.3717}  # answers, as multiples of the right ones

MARKS = """async (requests) => {
  const place = document.querySelector("output");
  const times = {};
  for (const [kind, data] of requests) {
    const begun = performance.now();
    const marked = await bookletRuntime.ask("mark", data, { limit: 60000 });
    if (!marked.ok) throw new Error(JSON.stringify([data, marked]));
    place.innerHTML = marked.data.parts.map((part) => part.html).join("");
    (times[`marked, ${kind}`] ??= []).push(performance.now() - begun);
  }
  return times;
}"""


def requests() -> list[tuple[str, dict[str, object]]]:
    """What is marked: (kind of answers, request)."""
    sys.path.insert(0, str(REPO))
    topics, drawing = import_module("calc.topics"), import_module("calc.practice.drawing")
    asked: list[tuple[str, dict[str, object]]] = []
    for key in topics.question_keys():
        topic, question = topics.find(key)
        data: list[dict[str, object]] = [{"question": key, "inputs": dict(question.example), "find": ""}]
        for seed in range(DRAWN):
            drawn = drawing.draw(topic, question, seed, 1 + seed % 3)
            data.append({"question": key, "inputs": drawn.inputs, "find": drawn.find})
        for one in data:
            for kind, times in KINDS.items():
                asked.append((kind, {**one, "answers": answers(key, one, times)}))
    return asked


def answers(key: str, data: dict[str, object], times: float) -> dict[str, dict[str, str]]:
    """Every part's value, so many times the right one, with its unit and direction."""
    topics, reading = import_module("calc.topics"), import_module("calc.working.reading")
    working = import_module("calc.working.working")
    question = topics.find(key)[1]
    found = reading.read(question, data["inputs"], data["find"])
    plan = question.plan(found.data)
    values = working.run(plan, found.data.settings.constants())
    typed = {}
    for part in plan.parts:
        if part.kind != "calculate":
            continue
        step = next(step for step in part.steps if step.makes == part.answers)
        where = working.direction(step, values)
        size = abs(values[part.answers]) if where else values[part.answers]
        number = (math.degrees(size) if step.unit == "°" else size) * times
        typed[part.key] = {"value": f"{number:.4g} {step.unit}", "direction": where.words if where else ""}
    return typed


def share_of_marking(page: Page, address: str, turns: int) -> Share:
    """Marking in a page that stays open, a share of the requests a turn."""
    asked = requests()
    open_page(page, address)
    page.evaluate(MARKS, asked[::20])
    return lambda turn: page.evaluate(MARKS, asked[turn::turns])


def main() -> None:
    """Measure, print the ratios by kind of answer, and end with an error where the target is missed."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--turns", type=int, default=5)
    options = parser.parse_args()
    times = Times()
    with ExitStack() as open_things:
        folder = Path(open_things.enter_context(tempfile.TemporaryDirectory()))
        lay_out(folder, REPO / "calc")
        lay_out_plain(folder, REPO / "calc")
        base = open_things.enter_context(served(folder))
        playwright = open_things.enter_context(sync_playwright())
        page = open_things.enter_context(new_page(playwright))
        share = share_of_marking(page, f"{base}ours.html", options.turns)
        measure_in_turns(playwright, f"{base}plain.html", [share], options.turns, times)
    missed = False
    for name in times.taken:
        values, ratios = times.times(name), times.ratios(name)
        middle, most = twentieths(ratios)
        told = f"  {name:24} p50 {twentieths(values)[0]:6.1f} ms, {len(values)} times"
        if name.startswith("marked"):
            missed |= most > TARGET
            told += f"; ratio p50 {middle:.4f}  p95 {most:.4f}  largest {max(ratios):.4f}, target of the p95 {TARGET}"
        print(told)
    if missed:
        raise SystemExit("Above target.")


if __name__ == "__main__":
    main()
