"""Data sets for any declared question: drawn as practice draws them, asked for every unknown, and made wilder."""

from __future__ import annotations

import math
import random
from collections.abc import Iterator
from decimal import Decimal

from calc.language.quantities import parse_quantity
from calc.language.units import parse_unit
from calc.model.questions import Choice, Input, Plan, Question, Refusal, Rows, Worded
from calc.topics import find
from calc.working.reading import Read, Refusals, read
from calc.working.working import run
from tests import cases

Typed = dict[str, object]


def typed_si(item: Input, value: float) -> str:
    """A value as a reader could type it, in SI, with all its digits."""
    if item.unit == "°":
        return f"{math.degrees(value)!r} °"
    if item.whole:
        return str(round(value))
    return f"{value!r} {parse_unit(item.unit).si().text}".strip() if item.unit else repr(value)


def planned(question: Question, typed: Typed, asked: str = "") -> tuple[Read, Plan] | None:
    """The data read and the plan, or None where they are refused."""
    try:
        found = read(question, typed, asked)
        plan = question.plan(found.data)
        run(plan, found.data.settings.constants())
    except (Refusal, Refusals, ValueError, ArithmeticError):
        return None
    return found, plan


def data_sets(key: str, count: int, seed: int = 0) -> Iterator[tuple[Typed, str]]:
    """(typed text, unknown) for ``count`` draws of each level, each unknown, and wilder sizes and signs."""
    _, question = find(key)
    yield dict(question.example), ""
    for n in range(count):
        for level in question.levels:
            drawn = cases.drawn(key, seed + n, level)
            yield drawn.inputs, drawn.find
            yield from every_unknown(question, drawn.inputs, drawn.find)
            chance = random.Random(f"{key}/{seed}/{n}/{level}")
            for spread in (0.5, 2.0, 4.0):
                yield wilder(question, drawn.inputs, chance, spread), drawn.find


def every_unknown(question: Question, typed: Typed, asked: str) -> Iterator[tuple[Typed, str]]:
    """The same situation with every other quantity left out in turn."""
    worked = planned(question, typed, asked)
    item = question.find(asked) if asked else None
    if not worked or not isinstance(item, Input):
        return
    found, plan = worked
    values = run(plan, found.data.settings.constants())
    if asked not in values:  # the answer is that there is none, such as a speed where nothing moves
        return
    whole = {**typed, asked: typed_si(item, values[asked])}
    for unknown in question.unknowns:
        if unknown != asked:
            yield {**whole, unknown: ""}, unknown


def wilder(question: Question, typed: Typed, chance: random.Random, spread: float) -> Typed:
    """The same fields with sizes up to ``10**spread`` times larger or smaller, other signs and other choices."""
    return {item.name: _wilder(item, typed.get(item.name, ""), chance, spread) for item in question.fields}


def _wilder(item: object, entry: object, chance: random.Random, spread: float) -> object:
    if isinstance(item, Choice):
        return chance.choice(item.options)[0] if chance.random() < 0.5 else entry
    if isinstance(item, Rows):
        rows = entry if isinstance(entry, list | tuple) else []
        return [{c.name: _wilder(c, row.get(c.name, ""), chance, spread) for c in item.columns} for row in rows]
    if isinstance(item, Worded):
        return entry
    assert isinstance(item, Input)
    if not str(entry).strip():
        return ""
    quantity = parse_quantity(str(entry), item.unit)
    number = quantity.number
    if item.unit == "°":
        return f"{chance.uniform(0.5, 89.5):.3g} °"
    number *= Decimal(f"{10 ** chance.uniform(-spread, spread):.3g}")
    if item.signed and chance.random() < 0.4:
        number = -number
    if item.whole:
        number = max(Decimal(1), number.to_integral_value())
    return f"{float(number):.4g} {quantity.unit.text}".strip()
