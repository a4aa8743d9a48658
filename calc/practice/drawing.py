"""Fresh numbers for any declared question: the same seed gives the same question, everywhere and always.

Numbers come from a question's ``draws``; a question without them gets its
example's numbers changed by simple factors. A draw is kept when the question can
be worked without a warning, no answer prints as nothing, and every known mistake
lies more than 5 % from the right value and from the other mistakes of its step. Of
several such draws the one is taken in which the fewest mistakes leave an answer
within 5 % of the right one; those that do are named.

Level 1 asks what the page's example asks. Level 2 draws harder numbers and any
unknown. Level 3 asks for another unknown, and some data come in another prefix.
"""

from __future__ import annotations

import json
import math
import random
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import TypeVar

from calc.language.expressions import ExpressionError, expression
from calc.language.quantities import parse_quantity
from calc.marking.suspects import Chain
from calc.model.constants import SHEET
from calc.model.questions import LATER, Choice, Draw, Input, Plan, Question, Refusal, Rows, Topic, Worded
from calc.practice.usual import in_unit, in_usual_prefixes, on_any_sheet, typed_text, within_reach
from calc.working.reading import Refusals, read
from calc.working.roots import NoRoot
from calc.working.working import run, sized

T = TypeVar("T")

APART = 0.05
SAME = 1e-9  # floats that mean the same number
TRIES = 60
ENOUGH = 12  # draws compared by their answers
LEVELS = (1, 2, 3)
FACTORS = ("0.5", "0.6", "0.8", "1.2", "1.5", "1.6", "2", "2.5")
SMALLEST, LARGEST = 1e-40, 1e30
# Another way a worksheet could give the same quantity.
RESTATED = {
    "nC": "µC",
    "µC": "nC",
    "cm": "mm",
    "mm": "cm",
    "m": "cm",
    "g": "kg",
    "kg": "g",
    "µN": "mN",
    "mN": "N",
    "V": "kV",
    "kV": "V",
    "W": "kW",
    "kW": "W",
}


@dataclass(frozen=True)
class Drawn:
    """One drawn question: typed text by field (a table: a list of rows), the unknown, and the wording's number.

    apart: False when no draw kept every mistake 5 % from the right value of its step; the first one found is
    then given. near: mistakes (``key@step``) that leave an answer within 5 % of the right one all the same.
    """

    question: str
    inputs: dict[str, object]
    find: str
    variant: int
    seed: int
    level: int
    apart: bool = True
    near: tuple[str, ...] = ()


def draw(topic: Topic, question: Question, seed: int, level: int = 1, rule: int = 1, *, first: bool = False) -> Drawn:
    """Draw data for ``question`` by a rule of addresses (1 to DRAWS). Raises ValueError if no drawn data can be
    worked at all.

    first: take the first that can be worked, for data that nobody sees: none are compared.
    """
    key = f"{topic.key}.{question.key}"
    level = min(max(level, 1), 3)
    chance = Chance(f"{key}/{seed}/{level}", rule)
    best: Drawn | None = None
    compared, find = 0, ""
    for tried in range(TRIES):
        held = rule >= HELD and find in question.drawn_later
        if held and best and tried == TRIES // 2:
            return best
        if not held or tried >= TRIES // 2:
            find = _unknown(question, chance, level, rule) if rule >= question.drawn_since else ""
        chance.asked = find
        inputs = _inputs(question, find, chance, level, rule)
        variant = _below(chance, 1000)
        if rule >= BETWEEN:
            printed = in_usual_prefixes(question, inputs)
            if printed is None:
                continue
            inputs, variant = printed, variant + LATER
        plan = _workable(question, inputs, find, variant, rule)
        if plan is None:
            continue
        if first:
            return Drawn(key, inputs, find, variant, seed, level)
        apart = _all_apart(plan, rule)
        if best and best.apart and not apart:  # however near its answers are
            continue
        drawn = Drawn(key, inputs, find, variant, seed, level, apart, near_answers(plan, rule))
        if best is None or (not drawn.apart, len(drawn.near)) < (not best.apart, len(best.near)):
            best = drawn
        compared += drawn.apart
        if (best.apart and not best.near) or compared == ENOUGH:
            return best
    if best is None:
        usual = _example_unknown(question)
        best = Drawn(key, dict(question.example), usual, 0, seed, level, apart=False)
        if _workable(question, best.inputs, best.find, 0, 1) is None:
            raise ValueError(f"{key}: neither drawn data nor the example can be worked")
    return best


# Addresses carry the number of the rule they were drawn by; one without it is of the first. A later rule may know
# more questions and choices (see Question.since, Choice.since) and draw other data; what an earlier one drew stays.
DRAWS = 6
# By rule: between which numbers a quantity may be given in another prefix. An examiner writes 2 nC and 1,5 µC,
# never 0,002 µC or 1 500 nC (common practice, no source).
_WIDE, _USUAL, _PLAIN = ((Decimal(low), Decimal(high)) for low, high in (("0.001", 10_000), ("0.1", 1000), (1, 1000)))
RESTATED_WITHIN = {1: _WIDE, 2: _WIDE, 3: _USUAL, 4: _PLAIN, 5: _PLAIN, 6: _PLAIN}
BETWEEN = 4  # from this rule on a number is drawn between those a question declares, not from among them
HELD = 6  # from this rule on a later unknown, once drawn, is tried for a while: few data may suit it
ONE_GIVEN = 2  # unknowns: one is asked, and a single number is given, to one figure more
FEW = 12  # numbers of two figures between the ends; with fewer one figure more is drawn


def offered(topic: Topic, rule: int) -> tuple[Question, ...]:
    """The questions that a topic's key chooses from by this rule; those it began with, where the topic is younger."""
    began = min((question.since for question in topic.questions), default=rule)
    return tuple(question for question in topic.questions if question.since <= max(rule, began))


class Chance:
    """Chance with a name: the same name gives the same draws in every Python, in the page too.

    ``random.Random`` promises that only for ``random()``, so ``choice`` and ``sample`` are written out
    here, on the 32-bit words of the same generator (Mersenne Twister; Matsumoto and Nishimura, 1998).
    """

    def __init__(self, name: str, rule: int = 1) -> None:
        self._source = random.Random(name)
        self.rule = rule  # of drawing: a question's own ``adjust`` may know more numbers from some rule on
        self.kept = dict[str, str]()  # what an ``adjust`` settles once for every try of a draw
        self.asked = ""  # what this try asks for

    def random(self) -> float:
        """From 0 up to, not including, 1."""
        return self._source.random()

    def choice(self, items: Sequence[T]) -> T:
        """One of ``items``."""
        return items[self._under(len(items))]

    def sample(self, items: Sequence[T], count: int) -> list[T]:
        """``count`` of ``items``, none twice, in the order drawn. ValueError when there are too few."""
        if count > len(items):
            raise ValueError(f"{count} cannot be drawn from {len(items)}")
        left, drawn = list(items), []
        for _ in range(count):
            at = self._under(len(left))
            drawn.append(left[at])
            left[at] = left[-1]
            left.pop()
        return drawn

    def _under(self, count: int) -> int:
        """A whole number below ``count``: words of just enough bits, until one fits."""
        while (word := self._source.getrandbits(count.bit_length())) >= count:
            pass
        return word


def _below(chance: Chance, count: int) -> int:
    return int(chance.random() * count)


def _pick(chance: Chance, items: Sequence[str]) -> str:
    return items[_below(chance, len(items))]


def _example_unknown(question: Question) -> str:
    empty = [name for name in question.unknowns if not str(question.example.get(name, "")).strip()]
    if question.asks in empty:
        return question.asks
    return empty[0] if empty else (question.unknowns[0] if question.unknowns else "")


def _unknown(question: Question, chance: Chance, level: int, rule: int) -> str:
    """Level 1 asks what the example asks; from level 2 on any unknown may be asked."""
    if not question.unknowns:
        return ""
    usual = _example_unknown(question)
    if level == 1:
        return usual
    asked = question.drawn or question.unknowns
    asked = (*asked, *(name for name, since in question.drawn_later.items() if since <= rule))
    others = [name for name in asked if name != usual]
    if level == 3 and others:
        return _pick(chance, others)
    return _pick(chance, asked)


def _inputs(question: Question, find: str, chance: Chance, level: int, rule: int) -> dict[str, object]:
    """Typed text for every field but the unknown."""
    inputs: dict[str, object] = {}
    for item in question.fields:
        if isinstance(item, Input) and item.since > rule:
            continue
        if item.name == find:
            inputs[item.name] = ""
        elif item.name in question.draws:
            between = rule >= BETWEEN and isinstance(item, Input)
            figures = 3 if len(question.unknowns) == ONE_GIVEN else 2
            whole = isinstance(item, Input) and item.whole
            inputs[item.name] = _drawn(question.draws[item.name], chance, level, figures if between else 0, whole)
        elif isinstance(item, Choice):
            inputs[item.name] = _chosen(item, chance) if item.since <= rule else item.options[0][0]
        elif isinstance(item, Worded):
            inputs[item.name] = str(question.example.get(item.name, ""))  # its question's ``adjust`` draws it
        elif isinstance(item, Rows):
            inputs[item.name] = _changed_rows(item, question.example.get(item.name), chance)
        else:
            inputs[item.name] = _changed(item, str(question.example.get(item.name, "")), chance)
    if question.adjust:
        inputs = question.adjust(inputs, chance, level)
    return _restated(question, inputs, chance, RESTATED_WITHIN[rule]) if level == 3 else inputs


def _restated(
    question: Question, inputs: dict[str, object], chance: Chance, within: tuple[Decimal, Decimal]
) -> dict[str, object]:
    """About half of the quantities in another prefix, where that leaves an ordinary number: one ``within`` both."""
    changed = dict(inputs)
    for item in question.fields:
        typed = inputs.get(item.name)
        if not isinstance(item, Input) or not isinstance(typed, str) or not typed.strip():
            continue
        quantity = parse_quantity(typed, item.unit)
        other = RESTATED.get(quantity.unit.text)
        if other is None or chance.random() < 0.5:
            continue
        number = in_unit(quantity, other)
        if within[0] <= abs(number) < within[1]:
            changed[item.name] = typed_text(float(number), other)
    return changed


def _drawn(source: Draw, chance: Chance, level: int, figures: int, whole: bool) -> str:
    values = source.harder if level > 1 and source.harder else source.values
    value = values[_below(chance, len(values))]
    if figures and (typed := _between(source, values, value, chance, figures, whole)):
        return typed
    if isinstance(value, str):
        return value
    return typed_text(float(value), source.unit, 3)


_TEXT = re.compile(r"([+-]?)(\d+(?:[,.]\d+)?)(?: x 10\^(-?\d+))?((?: \S+)?)")


def _between(
    source: Draw, values: Sequence[float | str], value: float | str, chance: Chance, figures: int, whole: bool
) -> str:
    """A number of the size of those declared, with the sign of ``value``.

    '' where they are no numbers of one unit, all of one size, or ``value`` is 1 or 0, which changes nothing.
    """
    declared = [_number(one, source.unit) for one in values]
    picked = _number(value, source.unit)
    units = {unit for _, unit in declared}
    sizes = sorted(abs(number) for number, _ in declared if number)
    if picked[0] in (0, 1) or math.nan in picked or len(units) > 1 or not sizes or sizes[0] == sizes[-1]:
        return ""
    low, high = sizes[0], sizes[-1]
    size = low * (high / low) ** chance.random()
    if _count(low, high) < FEW:
        figures = 3
    size = float(round(size)) if whole and size < 1000 else float(f"{size:.{figures}g}")
    size = math.copysign(min(max(size, low), high), picked[0])
    if isinstance(value, str) and " x 10^" in value:
        power = math.floor(math.log10(abs(size)))
        return f"{typed_text(size / 10**power, '', 3)} x 10^{power}{f' {picked[1]}' if picked[1] else ''}"
    return typed_text(size, picked[1])


def _number(value: float | str, unit: str) -> tuple[float, str]:
    """What a declared value comes to, and its unit; not a number for words."""
    if not isinstance(value, str):
        return float(value), unit
    found = _TEXT.fullmatch(value)
    if not found:
        return math.nan, ""
    return float(f"{found[1]}{found[2].replace(',', '.')}e{found[3] or 0}"), found[4].strip()


def _count(low: float, high: float) -> float:
    """How many numbers of two figures lie between two sizes, about."""
    return 90 * math.log10(high / low)


def _chosen(item: Choice, chance: Chance) -> str:
    said = [key for key, _ in item.options if not (item.asked and key in item.quiet)]
    return _pick(chance, said)


def _changed(item: Input, typed: str, chance: Chance) -> str:
    """The example's number changed by a simple factor; an empty box stays empty."""
    if not typed.strip():
        return ""
    quantity = parse_quantity(typed, item.unit)
    if item.unit == "°":
        number = Decimal(10 + 5 * _below(chance, 11))
    else:
        number = quantity.number * Decimal(_pick(chance, FACTORS))
        if item.whole:
            number = max(Decimal(1), number.to_integral_value())
    return typed_text(float(number), quantity.unit.text, 3)


def _changed_rows(item: Rows, example: object, chance: Chance) -> list[dict[str, str]]:
    """Every charge or size of a table changed; positions too, but in step, so that the picture keeps its shape."""
    rows = [row for row in example if isinstance(row, Mapping)] if isinstance(example, list | tuple) else []
    stretch = _pick(chance, FACTORS)
    changed = []
    for row in rows:
        cells = {}
        for column in item.columns:
            typed = str(row.get(column.name, ""))
            length = column.unit in ("m", "cm", "mm")
            cells[column.name] = _stretched(column, typed, stretch) if length else _changed(column, typed, chance)
        changed.append(cells)
    return changed


def _stretched(column: Input, typed: str, factor: str) -> str:
    if not typed.strip():
        return ""
    quantity = parse_quantity(typed, column.unit)
    return typed_text(float(quantity.number * Decimal(factor)), quantity.unit.text, 3)


def _workable(question: Question, inputs: Mapping[str, object], find: str, variant: int, rule: int) -> Plan | None:
    """The plan for these data, if it works without a warning and every answer is worth printing; by the newest rule
    also within the story, and the same from any data sheet."""
    try:
        found = read(question, inputs, find, variant=variant)
        plan = question.plan(found.data)
        constants = found.data.settings.constants()
        values = run(plan, constants)
    except (Refusal, Refusals, ExpressionError, NoRoot):
        return None
    if found.warnings or plan.warnings:
        return None
    for part in plan.parts:
        if part.kind == "calculate" and not SMALLEST < abs(values[part.answers]) < LARGEST:
            return None
    if rule >= BETWEEN and not (within_reach(question, plan, found, values) and on_any_sheet(plan, constants, values)):
        return None
    return plan


def _all_apart(plan: Plan, rule: int) -> bool:
    """Whether every mistake of a step can be told from the right value and from the others."""
    constants = {name: line.school for name, line in SHEET.items()}
    values = run(plan, constants)
    for step in plan.steps:
        right, base = values[step.makes], values.get(step.judged_by, 0.0)
        seen = [abs(right) - base]
        for mistake in step.mistakes:
            if mistake.turns or mistake.since > rule:
                continue
            try:
                wrong = abs(expression(mistake.instead).value(sized(values, step.sizes))) - base
            except ExpressionError:
                continue
            if any(math.isclose(wrong, other, rel_tol=APART) for other in seen):
                return False
            seen.append(wrong)
    return True


def near_answers(plan: Plan, rule: int = DRAWS) -> tuple[str, ...]:
    """Mistakes (``key@step``) that leave an answer within 5 % of the right one, so that marking cannot tell them.

    A mistake that drops out again on the way, and cannot reach the answer, is not near it; the rules before the
    fourth counted it.
    """
    constants = {name: line.school for name, line in SHEET.items()}
    near: dict[str, None] = {}
    younger = {(mistake.key, mistake.at) for mistake in plan.mistakes if mistake.since > rule}
    younger |= {(slip.key, slip.at) for step in plan.steps for slip in step.mistakes if slip.since > rule}
    for part in plan.parts:
        if part.kind != "calculate":
            continue
        chain = Chain(plan, constants, part.answers)
        for slip in chain.declared:
            values = chain.run((slip,)) if (slip.key, slip.at) not in younger else None
            if not values:
                continue
            wrong = values[part.answers]
            reaches = rule < BETWEEN or not math.isclose(wrong, chain.right, rel_tol=SAME)
            shift, wanted = (abs(value) - chain.base for value in (wrong, chain.right))
            if reaches and math.isclose(shift, wanted, rel_tol=APART):
                near[f"{slip.key}@{slip.at}"] = None
    return tuple(near)


def as_request(drawn: Drawn) -> dict[str, object]:
    """The drawn question as a request for ``solve``, ``sheet`` or ``mark``."""
    inputs = json.loads(json.dumps(drawn.inputs))
    return {
        "question": drawn.question,
        "inputs": inputs,
        "find": drawn.find,
        "variant": drawn.variant,
    }
