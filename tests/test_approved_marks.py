"""How answers of many kinds are marked, in every question: ``approved/marks/QUESTION.txt`` holds marks and sentences.

Each answer is wrong, or right, in one way of its own: a factor, a power, too few figures, another unit, each direction
there is a word for, each formula that is offered, a line of numbers. A regression lock, no proof that a mark is fair:
that is for ``tests/marking``. After a change on purpose:

    .venv/bin/python -m tests.test_approved_marks             # all, or: ... coulomb.force

writes them anew; read what git shows as changed.
"""

import sys
from collections.abc import Iterator
from typing import Any

import pytest

from calc.marking.learner import can_be_asked
from calc.marking.marking import formulas
from calc.working.working import direction
from tests.cases import KEYS, case
from tests.test_approved_answers import APPROVED as ANSWERS
from tests.test_approved_answers import ask, plain, results

APPROVED = ANSWERS / "marks"
SEED, LEVEL = 1, 2
FACTORS = (2.0, 0.5, 10.0, 1e-3, 1.01, -1.0)
POWERS = (0.5, -1.0)
WAYS = ("left", "right", "up", "down", "positive", "-", "attraction", "repulsion", "away", "towards", "30°", "sideways")

Entry = dict[str, Any]


def values(key: str) -> Iterator[tuple[str, Entry]]:
    """Answers to the last part that has a value: (what is odd about it, the entry)."""
    one = case(key, SEED, LEVEL)
    part = [part for part in one.plan.parts if part.asked][-1]
    step = next(step for step in one.plan.steps if step.makes == part.asked[-1])
    size = one.values[step.makes]
    unit = "rad" if step.unit == "°" else step.unit
    where = direction(step, one.values)
    right = where.words if where else ""
    for factor in FACTORS:
        yield f"times {factor:g}", {"value": f"{size * factor:.4g} {unit}", "direction": right}
    for power in POWERS:
        yield f"to the power {power:g}", {"value": f"{abs(size) ** power:.4g} {unit}", "direction": right}
    for figures in (1, 2, 6):
        yield f"{figures} figures", {"value": f"{size:.{figures}g} {unit}", "direction": right}
    for other in ("", "V", "kg", "m"):
        yield f"in {other}", {"value": f"{size:.4g} {other}", "direction": right}
    if can_be_asked(where):
        for way in ("", *WAYS):
            yield f"towards {way}", {"value": f"{size:.4g} {unit}", "direction": way}
    for made in one.plan.steps:
        for name, law in formulas(made):
            entry = {"value": f"{size * 2.1:.4g} {unit}", "direction": right, "formula": {made.makes: name}}
            yield f"{made.makes} by {name}: {law}", entry
    for line in (f"{size!r}", f"{size / 2!r} * 2", f"{size!r} * 2", "2 +", "sqrt(-1)"):
        entry = {"value": f"{size * 2:.4g} {unit}", "direction": right, "substitution": {step.makes: line}}
        yield "line " + line.replace(repr(size), "value").replace(repr(size / 2), "half"), entry


def lines(key: str) -> Iterator[str]:
    """Marks and sentences for each answer; a sentence that stands further up is not told again."""
    before: set[str] = set()
    drawn = ask("practice", {"question": key, "seed": SEED, "level": LEVEL})
    request = {name: drawn[name] for name in ("question", "inputs", "find", "variant")}
    shown = results(ask("solve", {**request, "as": ["text"]})["text"])
    parts = [part["part"] for part in ask("sheet", request)["parts"] if part.get("kind", "calculate") == "calculate"]
    rest = {name: {"value": value, "direction": way} for name, (value, way) in zip(parts, shown, strict=False)}
    for what, entry in values(key):
        marked = ask("mark", {**request, "answers": {**rest, parts[-1]: entry}})
        yield f"{what}: {marked.get('earned', marked.get('errors'))}"
        said = list(plain(marked.get("html", "")))
        yield from (f"  {one}" for one in said if one not in before)
        before.update(said)


def asks(key: str) -> bool:
    """Whether a question asks for a value."""
    return any(part.asked for part in case(key, SEED, LEVEL).plan.parts)


@pytest.mark.parametrize("key", KEYS)
def test_answers_are_marked_as_they_were(key: str) -> None:
    """Marks and sentences for each kind of wrong and right answer are those that are kept, where a value is asked."""
    if not asks(key):
        assert not (APPROVED / f"{key}.txt").exists()
        return
    kept = (APPROVED / f"{key}.txt").read_text(encoding="utf-8").split("\n")[:-1]
    assert list(lines(key)) == kept


def test_every_question_has_its_marks_kept() -> None:
    """A file for each question that asks for a value, and no other."""
    assert {path.stem for path in APPROVED.glob("*.txt")} == set(filter(asks, KEYS))


if __name__ == "__main__":
    APPROVED.mkdir(parents=True, exist_ok=True)
    for every in filter(lambda key: key.startswith(tuple(sys.argv[1:]) or ""), KEYS):
        if not asks(every):
            continue
        (APPROVED / f"{every}.txt").write_text("\n".join(lines(every)) + "\n", encoding="utf-8")
