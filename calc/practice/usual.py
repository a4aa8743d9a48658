"""What an examiner would print: quantities in their usual prefix, places within reach, answers that hang on no sheet.

The numbers are common practice; no source.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping
from decimal import Decimal

from calc.language.expressions import ExpressionError
from calc.language.printing import Style, exact
from calc.language.quantities import Quantity, parse_quantity
from calc.language.units import parse_unit
from calc.marking.findings import EARLY
from calc.marking.learner import CLOSE
from calc.marking.suspects import uses
from calc.model.constants import SHEET, other_sheets
from calc.model.questions import Draw, Input, Plan, Question, Rows
from calc.working.reading import Read
from calc.working.working import run

# Units of one kind, each a prefix above the one before. Printed are 1 to 999,9 of a unit with a prefix; what stands
# without one, and kilogram and gram, may be a tenth too.
LADDERS = (
    ("nC", "µC", "mC"),
    ("µN", "mN", "N"),
    ("mg", "g", "kg"),
    ("mm", "cm", "m"),
    ("V", "kV"),
    ("W", "kW"),
)
BARE = {"N", "g", "kg", "m", "V", "W"}
APPARATUS = 0.15  # m: a length given from here on is that of the apparatus, not of a gap or a push
SKY = 1e5  # m: where a length may be longer than this, the question is about planets and no apparatus
REACH, ROOM = 2.5, 2.0  # a place to be found: so many times the apparatus away at most, and so many metres
DOUBLE = 2  # out of doors, where practice itself draws a length beyond ROOM: so many times the longest it draws
POWER = re.compile(r"10\s*[\^⁻¹²³⁰-⁹]|\d[eE][+-]?\d")  # of a unit without a prefix, it needs none
ROUND_G = 10.0  # m/s²: what some write for g


def typed_text(value: float, unit: str, figures: int = 6) -> str:
    """A value to so many figures as a keyboard gives it."""
    shown = exact(float(f"{value:.{figures}g}"), Style()).text
    return f"{shown} {unit}".replace("\N{NO-BREAK SPACE}", " ").replace("−", "-").strip()


def usual(number: Decimal, unit: str) -> bool:
    """Whether a number is an ordinary one of its unit; any is of a unit without prefixes, and zero of each."""
    if not number or not any(unit in ladder for ladder in LADDERS):
        return True
    return (Decimal("0.1") if unit in BARE else 1) <= abs(number) < 1000


def in_usual_prefix(text: str, unit: str) -> str | None:
    """``text``, in the nearest prefix that makes an ordinary number of it; None where none does."""
    if not text.strip():
        return text
    quantity = parse_quantity(text, unit)
    now = quantity.unit.text
    if now in BARE and POWER.search(text):
        return text
    if usual(quantity.number, now):
        return text
    ladder = next(one for one in LADDERS if now in one)
    for other in sorted(ladder, key=lambda one: abs(ladder.index(one) - ladder.index(now))):
        number = in_unit(quantity, other)
        if usual(number, other):
            return typed_text(float(number), other)
    return None


def in_unit(quantity: Quantity, other: str) -> Decimal:
    """The number of a quantity in another unit of its kind."""
    ratio = quantity.unit.factor / parse_unit(other).factor
    return quantity.number * ratio.numerator / ratio.denominator


def in_usual_prefixes(question: Question, inputs: Mapping[str, object]) -> dict[str, object] | None:
    """Typed text with every quantity an ordinary number; None where that cannot be, as in a column with one unit."""
    changed = dict(inputs)
    for item in question.fields:
        given = inputs.get(item.name)
        if isinstance(item, Rows) and isinstance(given, list):
            for column in item.columns:
                if any(
                    in_usual_prefix(str(row.get(column.name, "")), column.unit) != row.get(column.name, "")
                    for row in given
                ):
                    return None
        elif isinstance(item, Input) and isinstance(given, str):
            printed = in_usual_prefix(given, item.unit)
            if printed is None:
                return None
            changed[item.name] = printed
    return changed


def within_reach(question: Question, plan: Plan, found: Read, values: Mapping[str, float]) -> bool:
    """Whether every length that is worked out fits into the story: none is far beyond the lengths given.

    Among planets, where no apparatus sets a size, each must lie within the sensible range of its own box; out of doors
    none is longer than twice the longest that the question itself draws. Of a question that asks for no length, nothing
    says how large its story is.
    """
    if not any(_is_length(item.unit) for item in measured(question)):
        return True
    boxes = {item.name: item for item in question.fields if isinstance(item, Input) and _is_length(item.unit)}
    if any(item.high > SKY for item in boxes.values()):
        own = [(boxes[step.makes], abs(values[step.makes])) for step in plan.steps if step.makes in boxes]
        return all(item.low <= length <= item.high for item, length in own)
    given = [abs(q.value) for q in found.quantities.values() if q.unit.si().text == "m"]
    longest = max(given, default=0.0)
    far = min(ROOM, REACH * longest) if longest >= APPARATUS else ROOM
    outdoors = longest_drawn(question, boxes)
    if outdoors > ROOM:
        far = DOUBLE * outdoors
    lengths = [abs(values[step.makes]) for step in plan.steps if _is_length(step.unit)]
    return all(length <= far * (1 + 1e-9) for length in lengths)


def measured(question: Question) -> Iterator[Input]:
    """Every box for a quantity, those of tables too."""
    for item in question.fields:
        if isinstance(item, Input):
            yield item
        elif isinstance(item, Rows):
            yield from item.columns


def longest_drawn(question: Question, boxes: Mapping[str, Input]) -> float:
    """The longest length (m) that practice draws for any of these boxes; 0 for none."""
    lengths = [0.0]
    for name, item in boxes.items():
        source = question.draws.get(name, Draw(()))
        for value in (*source.values, *source.harder):
            text = value if isinstance(value, str) else f"{value!r} {source.unit}"
            if text.strip():
                lengths.append(abs(parse_quantity(text, item.unit).value))
    return max(lengths)


def _is_length(unit: str) -> bool:
    return bool(unit) and unit != "°" and parse_unit(unit).si().text == "m"


def on_any_sheet(plan: Plan, constants: Mapping[str, float], values: Mapping[str, float]) -> bool:
    """Whether another data sheet's constants, k = 8,99 × 10⁹ or g = 9,81, leave each answer right within the judging
    rule, and g = 10 within what it takes for rounding."""
    used = {name for step in plan.steps for name in uses(step)}
    others = [(other, CLOSE) for other in other_sheets(constants, used)]
    if "g" in used and constants.get("g") == SHEET["g"].school and "g" not in plan.values:
        others.append(({**constants, "g": ROUND_G}, EARLY))
    answers = [name for part in plan.parts if part.kind == "calculate" for name in part.asked]
    for other, close in others:
        try:
            again = run(plan, other)
        except ExpressionError:
            return False
        if not all(math.isclose(again[name], values[name], rel_tol=close) for name in answers):
            return False
    return True
