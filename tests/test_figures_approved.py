"""Every figure of every question, piece by piece, against what it was: ``approved/figures/QUESTION.txt`` holds it.

A regression lock, no proof that an arrow is right: that is for the rules in ``test_arrows``, ``test_figures`` and the
tests of each topic. It holds the rest still: coordinates, lengths, kinds, words, what practice hides, and where each
label is put on the page. Numbers may differ in their last printed place. After a change on purpose:

    .venv/bin/python -m tests.test_figures_approved             # all, or: ... coulomb.force

writes them anew; look at the pages of the questions that git shows as changed.
"""

import re
import sys
from collections.abc import Iterator
from dataclasses import MISSING, fields
from pathlib import Path
from typing import Any

import pytest

from calc import topics
from calc.figures import Figure
from calc.figures.pieces import Piece
from calc.practice.fair import fair_scene, found_values
from calc.renderings import svg
from calc.working.working import run, show
from tests.cases import KEYS, Case, case
from tests.draws import every_unknown, planned
from tests.kept import differing

APPROVED = Path(__file__).parent / "approved" / "figures"
DRAWS = ((0, 0), (1, 1), (2, 2), (3, 3))  # seed and level; level 0 is the example of the page
LONG = 40  # points of a curve that are held one by one
PLACED = re.compile(r'<text[^>]* x="([^"]*)" y="([^"]*)"[^>]*>(.*?)</text>')


def short(value: Any) -> str:
    """A value as text, numbers to two decimals, of a long curve the ends, the number and the sum of its points."""
    if isinstance(value, float | int) and not isinstance(value, bool):
        return f"{round(value, 2) + 0.0:g}"
    if isinstance(value, tuple):
        if len(value) > LONG:
            total = tuple(sum(axis) / len(value) for axis in zip(*value, strict=True))
            return f"{short(value[:3])}…{short(value[-3:])} {len(value)} points about {short(total)}"
        return "(" + " ".join(map(short, value)) + ")"
    return repr(value)


def piece(item: Piece) -> str:
    """A piece with all that is not as usual about it."""
    said = [
        f"{one.name}={short(value)}"
        for one in fields(item)
        if one.default is MISSING or getattr(item, one.name) != one.default
        for value in [getattr(item, one.name)]
    ]
    return " ".join([type(item).__name__, *said])


def labels(figure: Figure) -> Iterator[str]:
    """Each label with the place it has on the page."""
    for x, y, words in PLACED.findall(svg.render(figure)):
        yield f"label {re.sub('<[^>]*>', '', words)} at {x} {y}"


def told(figure: Figure) -> Iterator[str]:
    """The words of a figure and its pieces."""
    yield f"{figure.title}: {figure.description}"
    yield from (f"note: {note}" for note in figure.notes)
    yield from (f"tells: {one}" for one in figure.tells)
    yield from map(piece, figure.items)
    yield from labels(figure)


def unknowns(key: str) -> Iterator[Case]:
    """The example asked for every other quantity."""
    topic, question = topics.find(key)
    asked = case(key, 0, 0).found.data.asked
    for typed, unknown in every_unknown(question, dict(question.example), asked):
        worked = planned(question, typed, unknown)
        if worked:
            values = run(worked[1], worked[0].data.settings.constants())
            yield Case(f"{key} for {unknown}", *worked, values, show(topic, question, *worked, values))


def lines(key: str) -> Iterator[str]:
    """All figures of a question; a line that stands further up is not told again."""
    before: set[str] = set()
    for one in (*(case(key, *draw) for draw in DRAWS), *unknowns(key)):
        yield f"=== {one.name}"
        shown = one.figures
        hidden = fair_scene(one.plan, one.found)
        if hidden:
            shown = [*shown, ("in practice", hidden)]
        if one.plan.scene:
            left = one.plan.scene(one.values).without(found_values(one.plan))
            shown = [*shown, ("on paper", left)] if left and left != hidden else shown
        for part, figure in shown:
            every = list(told(figure))
            yield f"--- {part or 'scene'}: {len(every)} lines"
            yield from (line for line in every if line not in before)
            before.update(every)


@pytest.mark.parametrize("key", KEYS)
def test_the_figures_of_a_question_are_as_they_were(key: str) -> None:
    """Each piece, word and place of a label in the figures of the example, two draws and every unknown is kept."""
    kept = (APPROVED / f"{key}.txt").read_text(encoding="utf-8").split("\n")[:-1]
    assert differing(kept, list(lines(key))) == []


def test_no_figures_are_kept_of_a_question_that_is_gone() -> None:
    """A file for every question, and no other."""
    assert {path.stem for path in APPROVED.glob("*.txt")} == set(KEYS)


def test_a_piece_that_moved_is_seen() -> None:
    """A number moved by two hundredths, a word, a line more: each is a difference; a hundredth is not."""
    line = "Arrow start=(0 0) end=(1 2.5) label='F'"
    assert differing([line], [line.replace("2.5", "2.51")]) == []
    assert differing([line], [line.replace("2.5", "2.52")])
    assert differing([line], [line.replace("'F'", "'G'")])
    assert differing([line], [line, line])


if __name__ == "__main__":
    APPROVED.mkdir(parents=True, exist_ok=True)
    for every in filter(lambda key: key.startswith(tuple(sys.argv[1:]) or ""), KEYS):
        (APPROVED / f"{every}.txt").write_text("\n".join(lines(every)) + "\n", encoding="utf-8")
