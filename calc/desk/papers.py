"""The request for a worksheet: ``paper``.

data: topics (keys of topics or questions), count, marks, level (1, 2, 3 or "rising"), seed, heading,
learner or own (the number of a learner's own paper), space, memo ("short", the lines that earn marks, or
"full"), settings, and ``as``: the notations wanted.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from calc.desk.requests import read_settings
from calc.language.printing import counted
from calc.model.questions import Refusal
from calc.papers.papers import (
    LARGEST_SEED,
    LONGEST_HEADING,
    MOST_MARKS,
    MOST_QUESTIONS,
    RISING,
    Paper,
    Wanted,
    make,
    own_number,
)
from calc.practice.drawing import DRAWS
from calc.renderings import answer_table, markdown, paper_latex
from calc.renderings import paper as html
from calc.working.reading import Refusals

LONGEST_NAME, MOST_ENTRIES = 80, 60
NOTATIONS: Mapping[str, Callable[[Paper, str, bool], str]] = {
    "paper_html": lambda made, space, _: html.render(made, space=space),
    "memo_html": lambda made, _, full: html.memo(made, full=full),
    "markdown": lambda made, *_: markdown.render(made),
    "markdown_memo": lambda made, _, full: markdown.memo(made, full=full),
    "latex": lambda made, space, _: paper_latex.render(made, space=space),
    "latex_memo": lambda made, _, full: paper_latex.memo(made, full=full),
}


def paper(data: Mapping[str, Any]) -> dict[str, Any]:
    """A question paper and its memo. Reply: what ``as`` lists (usually paper_html and memo_html), marks,
    questions, said (one sentence), named (entries that always give this paper), seed, level, own and answers (by
    notation the pieces of a class's answer table: {title, questions: [{head, row, foot}]}).
    """
    reader = _Reader(data)
    wanted = Wanted(
        entries=reader.entries(),
        count=reader.whole("count", 1, MOST_QUESTIONS, "Number of questions"),
        marks=reader.whole("marks", 1, MOST_MARKS, "Marks"),
        level=reader.level(),
        seed=reader.whole("seed", 0, LARGEST_SEED, "The paper's number") or 0,
        own=reader.whole("own", 0, LARGEST_SEED, "The number of a learner's paper") or 0,
        rule=reader.whole("draw", 1, DRAWS, "The draw number") or 1,
        heading=reader.line("heading", LONGEST_HEADING, "The heading"),
        learner=reader.line("learner", LONGEST_NAME, "A learner's name"),
        settings=read_settings(data.get("settings", {})),
    )
    space = reader.one_of("space", html.SPACES, "Room for answers")
    full = reader.one_of("memo", html.MEMOS, "The memo") == "full"
    notations = reader.notations()
    if reader.refusals:
        raise Refusals(tuple(reader.refusals))
    if wanted.learner and not wanted.own:
        wanted = replace(wanted, own=own_number(wanted.seed, wanted.learner))
    made = make(wanted)
    return {
        **{name: NOTATIONS[name](made, space, full) for name in notations},
        "marks": made.marks,
        "questions": len(made.items),
        "said": said(made),
        "answers": answer_table.pieces(made),
        "named": list(made.named),
        "seed": wanted.seed,
        "level": "rising" if wanted.level == RISING else wanted.level,
        "own": wanted.own,
        "draw": wanted.rule,
    }


def said(made: Paper) -> str:
    """What the paper came to, and how far that is from what was asked."""
    count, marks = len(made.items), made.marks
    sentence = f"{counted(count, 'question')}, {counted(marks, 'mark')}."
    if made.wanted.marks and made.wanted.marks != marks:
        sentence += f" You asked for {made.wanted.marks} marks; no choice of these questions comes nearer."
    return sentence


class _Reader:
    """Reads a request, and gathers every refusal."""

    def __init__(self, data: Mapping[str, Any]) -> None:
        self.data = data
        self.refusals: list[Refusal] = []

    def refuse(self, field: str, sentence: str) -> None:
        self.refusals.append(Refusal(field, sentence))

    def entries(self) -> tuple[str, ...]:
        found = self.data.get("topics")
        if not isinstance(found, list) or not found:
            self.refuse("topics", "Choose at least one topic.")
            return ()
        if len(found) > MOST_ENTRIES:
            self.refuse("topics", f"A paper names at most {MOST_ENTRIES} topics and questions: leave some out.")
            return ()
        return tuple(str(entry) for entry in found)

    def whole(self, name: str, low: int, high: int, words: str) -> int | None:
        """A whole number, None when it is not given; typed text will do."""
        value = self.data.get(name)
        if isinstance(value, str):
            value = value.strip() or None
        if value is None:
            return None
        if isinstance(value, str) and value.isascii() and value.isdigit() and len(value) < 10:
            value = int(value)
        if isinstance(value, bool) or not isinstance(value, int) or not low <= value <= high:
            self.refuse(name, f"{words}: a whole number from {low} to {high}.")
            return None
        return value

    def level(self) -> int:
        value = self.data.get("level", 1)
        if value == "rising":
            return RISING
        if str(value) not in ("1", "2", "3"):
            self.refuse("level", "There are three levels, 1, 2 and 3, and “rising”.")
            return 1
        return int(value)

    def line(self, name: str, longest: int, words: str) -> str:
        value = self.data.get(name, "")
        text = " ".join(str(value).split()) if isinstance(value, str) else ""
        if len(text) > longest:
            self.refuse(name, f"{words} has {len(text)} characters; at most {longest} fit. Shorten it.")
            return ""
        return text

    def one_of(self, name: str, keys: tuple[str, ...], words: str) -> str:
        value = self.data.get(name) or keys[0]
        if value not in keys:
            self.refuse(name, f"{words} is one of {', '.join(keys)}.")
        return str(value)

    def notations(self) -> list[str]:
        value = self.data.get("as", ["paper_html", "memo_html"])
        if not isinstance(value, list) or not set(map(str, value)) <= set(NOTATIONS):
            self.refuse("as", f"A paper is given as {', '.join(NOTATIONS)}, and nothing else.")
            return []
        return [str(name) for name in value]
