"""What is refused when several boxes are changed together, as it was read.

``approved/refusals/QUESTION.txt`` has a line for each sentence, with the data it was first said to, and one of letters:
which of them each of many data sets is told (a dot where all is taken). After a change on purpose:

    .venv/bin/python -m tests.test_refusals_kept             # all, or: ... coulomb.force
"""

from __future__ import annotations

import random
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from calc import topics
from calc.language.quantities import parse_quantity
from calc.language.units import parse_unit
from calc.model.questions import Choice, Input, Question, Rows, Values
from calc.working.working import run
from tests.cases import KEYS
from tests.draws import planned
from tests.test_approved_answers import APPROVED, taken, typed

KEPT = APPROVED / "refusals"
MANY = 80  # data sets of a question
FACTORS = (0.0, 0.02, 0.2, 0.5, 0.9, 1.0, 1.1, 2.0, 5.0, 50.0, -1.0, -2.0)


def otherwise(question: Question, whole: Values, seed: int) -> tuple[dict[str, Any], str]:
    """The example with some boxes changed, emptied or chosen otherwise, and what is asked for."""
    chance = random.Random(f"{question.key} {seed}")
    inputs = dict(question.example)
    names = [item.name for item in question.fields]
    for name in chance.sample(names, min(len(names), chance.randint(1, 4))):
        item = question.find(name)
        if isinstance(item, Choice):
            inputs[name] = chance.choice(item.options)[0]
        elif isinstance(item, Rows):
            rows: Any = [dict(row) for row in inputs[name]]
            at, column = chance.randrange(len(rows)), chance.choice(item.columns)
            rows[at][column.name] = scaled(column, rows[at].get(column.name, ""), {}, chance)
            inputs[name] = rows
        elif isinstance(item, Input):
            inputs[name] = scaled(item, inputs.get(name, ""), whole, chance)
    return inputs, chance.choice(("", *question.unknowns))


def scaled(item: Input, entry: Any, whole: Values, chance: random.Random) -> str:
    """The number of a box, or what is found for it, times a factor; or nothing."""
    factor = chance.choice(FACTORS)
    if chance.random() < 0.3:
        return ""
    if entry:
        given = parse_quantity(str(entry), item.unit)
        return f"{float(given.number) * factor:.4g} {given.unit.text}".strip()
    return f"{whole.get(item.name, 1.0) * factor:.4g} {parse_unit(item.unit).si().text if item.unit else ''}".strip()


def lines(key: str) -> Iterator[str]:
    """The sentences, and which of the data sets is told which."""
    _, question = topics.find(key)
    letters: dict[str, str] = {"": "."}
    told = []
    example = planned(question, dict(question.example))
    whole = run(example[1], example[0].data.settings.constants()) if example else {}
    for seed in range(MANY):
        inputs, asked = otherwise(question, whole, seed)
        sentence = "; ".join(taken(question, inputs, asked)[1])
        if sentence not in letters:
            letters[sentence] = chr(ord("A") + len(letters) - 1)
            yield f"{letters[sentence]} {sentence}"
            yield f"    to {asked or 'all'}: {typed(inputs)}"
        told.append(letters[sentence])
    yield "".join(told)


@pytest.mark.parametrize("key", KEYS)
def test_boxes_changed_together_are_judged_as_they_were(key: str) -> None:
    """Which data are taken, which are refused, and with which sentence."""
    kept = (KEPT / f"{key}.txt").read_text(encoding="utf-8").split("\n")[:-1]
    assert list(lines(key)) == kept


def test_no_questions_refusals_are_kept_that_is_gone() -> None:
    """A file for every question, and no other."""
    assert {path.stem for path in KEPT.glob("*.txt")} == set(KEYS)


if __name__ == "__main__":
    KEPT.mkdir(parents=True, exist_ok=True)
    for every in filter(lambda key: key.startswith(tuple(sys.argv[1:]) or ""), KEYS):
        Path(KEPT / f"{every}.txt").write_text("\n".join(lines(every)) + "\n", encoding="utf-8")
