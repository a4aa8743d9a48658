"""What every question says, against what it said before: ``approved/QUESTION.txt`` holds the lines.

A regression lock, no proof that a line is right: that is for the tests of each topic, which hold numbers, directions
and words against things outside the project. These hold the rest still, over all questions: the working and the memo,
hints, the sheet, and the marks of right and of wrong answers. After a change on purpose:

    .venv/bin/python -m tests.test_approved_answers             # all, or: ... coulomb.force

writes them anew; read what git shows as changed.
"""

import html
import json
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from calc import desk
from tests.cases import KEYS

APPROVED = Path(__file__).parent / "approved"
DRAWS = ((1, 1), (3, 1), (3, 2))  # level and seed
BEGINNING = 12  # characters of a line told again
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


def results(text: str) -> list[tuple[str, str]]:
    """(value, direction) of each part that has an answer, from the text rendering."""
    return [
        (value, where.strip()) for value, _, where in (m.partition(", ") for m in re.findall("  Answer: (.*)", text))
    ]


def planted(digits: str) -> str:
    """A value with its first digit changed."""
    return re.sub(r"[1-9]", lambda digit: str(int(digit[0]) % 9 + 1), digits, count=1)


def attempts(sheet: dict[str, Any], text: str) -> Iterator[tuple[str, dict[str, Any]]]:
    """Answers to mark: right ones with everything ticked, a digit wrong, ten times and no direction, none."""
    parts = sheet["parts"]
    asked = [part["part"] for part in parts if part.get("kind", "calculate") == "calculate"]
    ticked = {part["part"]: {"said": [0]} for part in parts if part["part"] not in asked}
    right = list(zip(asked, results(text), strict=False))
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


@pytest.mark.parametrize("key", KEYS)
def test_a_question_says_what_it_said(key: str) -> None:
    """Each line of working, hints, sheet and marks of a few draws is the one that is kept."""
    kept = (APPROVED / f"{key}.txt").read_text(encoding="utf-8").split("\n")[:-1]
    assert list(lines(key)) == kept


def test_no_question_is_kept_that_is_gone() -> None:
    """A file for every question, and no other."""
    assert {path.stem for path in APPROVED.glob("*.txt")} == set(KEYS)


if __name__ == "__main__":
    APPROVED.mkdir(exist_ok=True)
    for every in filter(lambda key: key.startswith(tuple(sys.argv[1:]) or ""), KEYS):
        (APPROVED / f"{every}.txt").write_text("\n".join(lines(every)) + "\n", encoding="utf-8")
