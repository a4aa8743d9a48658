"""What every question says, against what it said before: ``approved/QUESTION.txt`` holds the lines.

A regression lock, no proof that a line is right: that is for the tests of each topic, which hold numbers, directions
and words against things outside the project. These hold the rest still, over all questions: the working and the memo,
hints, the sheet, and the marks of right and of wrong answers. ``approved/entries`` holds what is said to each box
filled in wrongly or oddly, and the prose about data that are wilder than drawn ones. After a change on purpose:

    .venv/bin/python -m tests.test_approved_answers             # all, or: ... coulomb.force

writes them anew; read what git shows as changed.
"""

import hashlib
import html
import json
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from calc import desk, topics
from calc.model.questions import Choice, Input, Question, Refusal, Rows
from calc.renderings import text
from calc.working.reading import Read, Refusals, read
from calc.working.working import run
from tests.cases import KEYS, reckoned
from tests.draws import data_sets, planned

APPROVED = Path(__file__).parent / "approved"
ENTRIES = APPROVED / "entries"
DRAWS = ((1, 1), (3, 1), (3, 2))  # level and seed
BEGINNING = 12  # characters of a line told again
ODD = ("", "0", "1", "-2", "3 kg·m", "0 {}", "-0,5 {}", "1e-30 {}", "1e30 {}", "2,50 {}", "about {}", "1 2 {}")
WORDS = re.compile(r"(?:[A-Za-z]{2,}[ ,;:.]+){3}")
END = re.compile(r"</(?:p|li|legend|label|summary|section|tr|h\d)>")


def ask(operation: str, data: dict[str, Any]) -> dict[str, Any]:
    """The data of a reply, or its errors."""
    reply: dict[str, Any] = json.loads(desk.answer(json.dumps({"operation": operation, "data": data})))
    return reply["data"] if reply["ok"] else {"errors": reply["errors"]}


def plain(markup: str) -> Iterator[str]:
    """The lines of words in markup, without drawings."""
    runs = re.sub(r"</math>(<wbr>)?<math", "</math> <math", markup)  # a line that may break there
    words = re.sub(r'<math[^>]* alttext="([^"]*)".*?</math>', r"\1", runs, flags=re.S)
    for raw in END.split(re.sub(r"<svg.*?</svg>", "", words, flags=re.S)):
        line = " ".join(html.unescape(re.sub(r"<[^>]*>", " ", raw)).split())
        if line:
            yield line


def results(said: str) -> list[tuple[str, str]]:
    """(value, direction) of each part that has an answer, from the text rendering."""
    return [
        (value, where.strip()) for value, _, where in (m.partition(", ") for m in re.findall("  Answer: (.*)", said))
    ]


def planted(digits: str) -> str:
    """A value with its first digit changed."""
    return re.sub(r"[1-9]", lambda digit: str(int(digit[0]) % 9 + 1), digits, count=1)


def attempts(sheet: dict[str, Any], worked: str) -> Iterator[tuple[str, dict[str, Any]]]:
    """Answers to mark: right ones with everything ticked, a digit wrong, ten times and no direction, none."""
    parts = sheet["parts"]
    asked = [part["part"] for part in parts if part.get("kind", "calculate") == "calculate"]
    ticked = {part["part"]: {"said": [0]} for part in parts if part["part"] not in asked}
    right = list(zip(asked, results(worked), strict=False))
    yield "right", {**ticked, **{part: {"value": value, "direction": where} for part, (value, where) in right}}
    yield "a digit wrong", {part: {"value": planted(value), "direction": where} for part, (value, where) in right}
    yield "no direction, no unit", {part: {"value": value.split("\N{NO-BREAK SPACE}")[0]} for part, (value, _) in right}


def said(request: dict[str, Any], fully: bool) -> Iterator[str]:
    """The lines of one request: its working, and where ``fully`` its sheet and its marks."""
    solved = ask("solve", {**request, "as": ["text"]})
    if "errors" in solved:
        yield from (f"refused: {error}" for error in solved["errors"])
        return
    yield from (line for line in solved["text"].split("\n") if line.strip())
    yield f"spoken: {solved['spoken']}"
    if not fully:
        return
    sheet = ask("sheet", request)
    if "errors" in sheet:
        yield from (f"no sheet: {error}" for error in sheet["errors"])
        return
    yield "- sheet"
    yield from plain(sheet["html"])
    for name, answers in attempts(sheet, solved["text"]):
        marked = ask("mark", {**request, "answers": answers})
        yield f"- marked, {name}: " + str(marked.get("earned", marked.get("errors")))
        yield from plain(marked.get("html", ""))


def lines(key: str) -> Iterator[str]:
    """All that is held of a question; of a long line that stands further up, its beginning."""
    before: set[str] = set()
    for line in told(key):
        yield line if line not in before else f"{line[:BEGINNING]}…"
        if len(line) > BEGINNING:
            before.add(line)


def told(key: str) -> Iterator[str]:
    """All that is said of a question."""
    for level, seed in DRAWS:
        drawn = ask("practice", {"question": key, "seed": seed, "level": level})
        yield f"=== level {level}, seed {seed}"
        if "errors" in drawn:
            yield from (f"not drawn: {error}" for error in drawn["errors"])
            continue
        request = {name: drawn[name] for name in ("question", "inputs", "find", "variant")}
        yield json.dumps(request, ensure_ascii=False, sort_keys=True)
        yield from said(request, fully=seed == 1)
        if seed == 1:
            yield "- hints"
            yield from (line for part in drawn["hints"] for hint in part["html"] for line in plain(hint))


def oddly(question: Question) -> Iterator[tuple[str, dict[str, Any]]]:
    """The example with one box at a time filled in otherwise: (what, inputs)."""
    example = dict(question.example)
    for item in question.fields:
        if isinstance(item, Choice):
            for option, *_ in (*item.options, ("sideways",)):
                yield f"{item.name} = {option}", {**example, item.name: option}
        elif isinstance(item, Rows):
            rows: Any = example[item.name]
            for column in item.columns:
                for entry in (one.format(column.unit) for one in ODD):
                    changed = [{**rows[0], column.name: entry}, *rows[1:]]
                    yield f"{item.name}, {column.name} = {entry}", {**example, item.name: changed}
            for count in (0, 1, 2, len(rows) + 1, 12):
                yield f"{item.name}: {count} rows", {**example, item.name: (list(rows) * 12)[:count]}
        elif isinstance(item, Input):
            for entry in (one.format(item.unit) for one in ODD):
                yield f"{item.name} = {entry}", {**example, item.name: entry}


def taken(question: Question, inputs: dict[str, Any], asked: str = "") -> tuple[Read | None, list[str]]:
    """What was read of data that can be worked, and nothing; or nothing, and each refusal with its box and offers."""
    try:
        found = read(question, inputs, asked)
        run(question.plan(found.data), found.data.settings.constants())
    except Refusal as one:
        return None, [refused(one)]
    except Refusals as several:
        return None, list(map(refused, several.refusals))
    except (ValueError, ArithmeticError) as problem:
        return None, [type(problem).__name__]
    return found, []


def judged(question: Question, inputs: dict[str, Any]) -> Iterator[str]:
    """Every refusal with its box and offers, or what is doubted about data that are taken."""
    found, refusals = taken(question, inputs)
    yield from refusals
    if found:
        yield f"finds {found.data.asked or 'all'}"
        yield from found.warnings
        yield from map(refused, found.notes)
        yield from (f"{name} taken as {understood}" for name, understood in found.understood.items())


def refused(one: Refusal) -> str:
    """A refusal: its box, its sentence, and what may be picked instead."""
    return " / ".join([f"{one.field}! {one.sentence}", *(f"{pick.words} → {pick.text}" for pick in one.picks)])


def typed(inputs: dict[str, Any]) -> str:
    """What is typed in the boxes, of a number worked out with all its digits the first six."""
    return re.sub(r"(\d\.\d{5})\d+", r"\1…", " | ".join(map(str, inputs.values())))


def entries(key: str) -> Iterator[str]:
    """What is said of odd entries (not the working), and the prose about wilder data with a sum of the whole text."""
    topic, question = topics.find(key)
    before: set[str] = set()
    for what, inputs in oddly(question):
        yield f"{what}: " + "; ".join(judged(question, inputs))
    for inputs, find in data_sets(key, 1):
        worked = planned(question, inputs, find)
        whole = text.render(reckoned(topic, question, worked[0])) if worked else "refused"
        yield f"=== {find} {hashlib.sha256(whole.encode()).hexdigest()[:8]} {typed(inputs)}"
        for line in whole.split("\n"):
            if WORDS.search(line) and line not in before:
                yield line
                before.add(line)


@pytest.mark.parametrize("key", KEYS)
def test_odd_entries_are_answered_as_they_were(key: str) -> None:
    """Each refusal, note and warning about a box, and each sentence about wild data, is the one that is kept."""
    kept = (ENTRIES / f"{key}.txt").read_text(encoding="utf-8").split("\n")[:-1]
    assert list(entries(key)) == kept


@pytest.mark.parametrize("key", KEYS)
def test_a_question_says_what_it_said(key: str) -> None:
    """Each line of working, hints, sheet and marks of a few draws is the one that is kept."""
    kept = (APPROVED / f"{key}.txt").read_text(encoding="utf-8").split("\n")[:-1]
    assert list(lines(key)) == kept


def test_no_question_is_kept_that_is_gone() -> None:
    """A file for every question, and no other."""
    for folder in (APPROVED, ENTRIES):
        assert {path.stem for path in folder.glob("*.txt")} == set(KEYS)


if __name__ == "__main__":
    ENTRIES.mkdir(parents=True, exist_ok=True)
    for every in filter(lambda key: key.startswith(tuple(sys.argv[1:]) or ""), KEYS):
        (APPROVED / f"{every}.txt").write_text("\n".join(lines(every)) + "\n", encoding="utf-8")
        (ENTRIES / f"{every}.txt").write_text("\n".join(entries(every)) + "\n", encoding="utf-8")
