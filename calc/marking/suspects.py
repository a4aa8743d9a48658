"""The wrong values that known mistakes would give: each mistake alone, and any two together.

A topic declares its own mistakes beside its steps. Those that any question allows
are made here: a prefix left as typed, g = 10, a calculator in radians, signs put
into a formula that wants sizes, and rounding on the way.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping
from copy import copy
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import combinations
from typing import Literal

from calc.language.expressions import ExpressionError, equation, expression
from calc.language.printing import Style, exact
from calc.language.quantities import Quantity
from calc.language.symbols import symbol
from calc.marking.algebra_slips import algebra_slips
from calc.marking.common_slips import Datum, of_answer, of_constants, of_data
from calc.marking.early_rounding import plain_decimals, rounded_inside, two_decimals, two_figures
from calc.model.answers import Direction
from calc.model.questions import Mistake, Part, Plan, Step
from calc.working.working import direction, measure, run, sized

SAME = 1e-9
PLAIN = Style()
DOUBLINGS = frozenset(("twice", "half"))  # general slips that name no cause
MOST_STEPS_APART = 12  # of rounding one intermediate at a time


type SlipKind = Literal["declared", "unconverted", "gravity", "radians", "gradians", "sign", "algebra", "common"]


@dataclass(frozen=True)
class Slip:
    """One way to go wrong.

    at: the step or datum where it happens, where a reader is pointed. instead: wrong
    expressions by name. signed: steps worked with signs where sizes belong. output: what the
    answer's own number is multiplied by. kind: 'declared', 'unconverted', 'gravity', 'radians', 'gradians',
    'sign', 'algebra', 'common'.
    """

    key: str
    at: str
    say: str
    why: str = ""
    kind: SlipKind = "declared"
    instead: tuple[tuple[str, str], ...] = ()
    signed: tuple[str, ...] = ()
    output: float = 1.0

    @property
    def touches(self) -> frozenset[str]:
        """Every name this slip makes wrong."""
        return frozenset((*(name for name, _ in self.instead), *self.signed, self.at))


@dataclass(frozen=True)
class Suspect:
    """The value that one slip, or two together, would give."""

    slips: tuple[Slip, ...]
    value: float

    @property
    def key(self) -> str:
        return "+".join(f"{slip.key}@{slip.at}" for slip in self.slips)


@dataclass(frozen=True)
class _Converted:
    """A datum typed in a unit with a factor, and every name of the plan it stands under."""

    name: str
    names: tuple[str, ...]
    quantity: Quantity


class Chain:
    """The way to one value of a plan, worked right, with a learner's values carried in, or with slips.

    plan: as declared. target: a step's name. carry: the learner's own earlier values.
    quantities: the data as typed, by field path. Raises ExpressionError when the value cannot be worked.
    """

    def __init__(
        self,
        plan: Plan,
        constants: Mapping[str, float],
        target: str,
        carry: Mapping[str, float] | None = None,
        quantities: Mapping[str, Quantity] | None = None,
        style: Style = PLAIN,
    ) -> None:
        self.whole, self.constants, self.target, self.style = plan, constants, target, style
        self.carry = {name: value for name, value in (carry or {}).items() if name != target}
        self.quantities = quantities or {}
        steps = _needed(plan.steps, target, self.carry)
        self.plan = replace(plan, parts=(Part("to", "calculate", "", steps),))
        self.step = next(step for step in steps if step.makes == target)
        self.values = run(self.plan, constants, self.carry)
        self.right = self.values[target]

    def with_constants(self, constants: Mapping[str, float]) -> Chain:
        """The same way with other constants. Raises ExpressionError where they lead to no value."""
        return Chain(self.whole, constants, self.target, self.carry, self.quantities, self.style)

    @property
    def base(self) -> float:
        """The value that the answer is judged by its difference from; 0 where its whole size counts."""
        return self.values.get(self.step.judged_by, 0.0)

    @cached_property
    def direction(self) -> Direction | None:
        """The direction that goes with this value, if it has one."""
        try:
            return direction(self.step, self.values)
        except KeyError:  # it looks at values beyond this one
            return direction(self.step, run(self.whole, self.constants, self.carry))

    def run(self, slips: Iterable[Slip]) -> dict[str, float] | None:
        """Every value with these slips made, or None where they lead to no value."""
        slips = tuple(slips)
        instead = {name: how for slip in slips for name, how in slip.instead}
        signed = {name for slip in slips for name in slip.signed}
        plan = self.plan
        if signed:
            steps = tuple(replace(s, sizes=()) if s.makes in signed else s for s in plan.steps)
            plan = replace(plan, parts=(Part("to", "calculate", "", steps),))
        try:
            values = run(plan, self.constants, self.carry, instead, None if signed else self.values)
        except (ExpressionError, ArithmeticError, ValueError):
            return None
        values[self.target] *= math.prod(slip.output for slip in slips)
        return values

    # --- the slips ------------------------------------------------------------------------------------------

    @cached_property
    def slips(self) -> tuple[Slip, ...]:
        """Every slip that changes this value, alone."""
        return tuple(dict.fromkeys((*self.declared, *self.unconverted, *self.gravity, *self.radians, *self.signs)))

    @property
    def _mistakes(self) -> Iterator[Mistake]:
        for step in self.plan.steps:
            if step.makes not in self.carry:
                yield from step.mistakes
        yield from self.plan.mistakes

    @cached_property
    def declared(self) -> tuple[Slip, ...]:
        """The topic's own, for this value and those it is made from."""
        made = {step.makes for step in self.plan.steps} - self.carry.keys()
        known = made | self.plan.values.keys() | self.constants.keys()
        return tuple(
            Slip(m.key, m.at, m.said, m.shows, instead=((m.at, m.instead),))
            for m in self._mistakes
            if not m.turns and m.at in known
        )

    @property
    def turning(self) -> tuple[Mistake, ...]:
        """Declared mistakes that leave the size right and turn the direction round."""
        return tuple(m for m in self.step.mistakes if m.turns)

    @cached_property
    def used(self) -> frozenset[str]:
        """Names of data and constants that the working uses."""
        return frozenset(name for step in self.plan.steps for name in uses(step))

    @cached_property
    def unconverted(self) -> tuple[Slip, ...]:
        """A quantity put in as the number typed: one, all with the same unit, or all there are."""
        each = [self._left([line]) for line in self._converted]
        every = [self._left(self._converted)] if len(self._units) > 1 else []
        return tuple(dict.fromkeys((*each, *self._unit_slips, *every)))

    @cached_property
    def _unit_slips(self) -> tuple[Slip, ...]:
        """One slip a unit: every quantity typed in it left as it is. A learner converts all of a kind or none."""
        return tuple(self._left(lines) for lines in self._units.values())

    @cached_property
    def _units(self) -> dict[str, list[_Converted]]:
        units: dict[str, list[_Converted]] = {}
        for line in self._converted:
            units.setdefault(line.quantity.unit.text, []).append(line)
        return units

    @cached_property
    def _converted(self) -> list[_Converted]:
        """The data used here whose unit is not the SI one."""
        found = []
        for path, quantity in self.quantities.items():
            name = self._name(path, quantity)
            plain = quantity.unit.is_angle or quantity.unit.factor == 1 or not quantity.value
            if not name or plain:
                continue
            # a datum left out may repeat another: r2 is r when the distance is the same afterwards
            also = [
                other
                for other, value in self.plan.values.items()
                if value == quantity.value and other.startswith(name) and other not in self.quantities
            ]
            names = tuple(n for n in dict.fromkeys((name, *also)) if n in self.used)
            if names:
                found.append(_Converted(name, names, quantity))
        return found

    def _name(self, path: str, quantity: Quantity) -> str:
        """The plan's name for a datum; a table cell ``charges.0.Q`` is ``Q1``."""
        first, *rest = path.split(".")
        name = f"{rest[1]}{int(rest[0]) + 1}" if len(rest) == 2 else first
        value = self.plan.values.get(name)
        if value is not None and math.isclose(value, quantity.value, rel_tol=SAME):
            return name
        start = rest[-1] if rest else first
        return next((n for n, v in self.plan.values.items() if v == quantity.value and n.startswith(start)), "")

    def _left(self, lines: list[_Converted]) -> Slip:
        shown, more = lines[:3], len(lines) - 3
        said = "; ".join(self._conversion(line.name, line.quantity) for line in shown)
        numbers = " and ".join(self._as_typed(line) for line in shown)
        return Slip(
            "unconverted-" + ",".join(line.name for line in lines),
            lines[0].name,
            f"Convert first: {said}{f', and {more} more' if more > 0 else ''}.",
            f"{numbers}{', and so on' if more > 0 else ''}",
            kind="unconverted",
            instead=tuple(
                (name, f"{name}*{float(line.quantity.number) / line.quantity.value!r}")
                for line in lines
                for name in line.names
            ),
        )

    def _as_typed(self, line: _Converted) -> str:
        typed, right = (exact(value, self.style).text for value in (float(line.quantity.number), line.quantity.value))
        return f"{symbol(line.name).text} went in as {typed} instead of {right}"

    def _conversion(self, name: str, quantity: Quantity) -> str:
        number = exact(float(quantity.number), self.style).text
        si = measure(quantity.value, quantity.unit.si().text, self.style, data=True).text
        return f"{symbol(name).text} = {number}\N{NO-BREAK SPACE}{quantity.unit.text} = {si}"

    @property
    def gravity(self) -> tuple[Slip, ...]:
        sheet = self.constants.get("g")
        if sheet is None or "g" in self.plan.values or "g" not in self.used:
            return ()
        value = exact(sheet, self.style).text
        return (
            Slip(
                "g-ten",
                "g",
                f"Use g = {value}\N{NO-BREAK SPACE}m·s⁻² as on the data sheet.",
                "10 was used for g",
                kind="gravity",
                instead=(("g", "10"),),
            ),
        )

    @property
    def radians(self) -> tuple[Slip, ...]:
        """A calculator set to radians: angles given go in, and angles found come out, as wrong numbers."""
        angles = [name for name in self.plan.values if self.plan.units.get(name) == "°" and name in self.used]
        found = self.step.unit == "°" and any(f in self.step.how for f in ("asin(", "acos(", "atan("))
        if not angles and not found:
            return ()
        instead = tuple((name, f"{name}*{math.degrees(1)!r}") for name in angles)
        say = "Set the calculator to degrees: it worked in radians."
        why = "the angle was taken in radians"
        output = math.radians(1) if found else 1.0
        at = angles[0] if angles else self.target
        return (Slip("radians", at, say, why, kind="radians", instead=instead, output=output),)

    @property
    def gradians(self) -> tuple[Slip, ...]:
        """A calculator set to gradians, of which a right angle has 100: 9 degrees for every 10."""
        return tuple(
            Slip(
                "gradians",
                slip.at,
                "Set the calculator to degrees: it worked in gradians.",
                "the angle was taken in gradians",
                kind="gradians",
                instead=tuple((name, f"{name}*0.9") for name, _ in slip.instead),
                output=1.0 if slip.output == 1 else 1 / 0.9,
            )
            for slip in self.radians
        )

    @property
    def signs(self) -> tuple[Slip, ...]:
        """Signs substituted where the formula wants sizes."""
        return tuple(
            Slip(
                "sign-substituted",
                step.makes,
                "Put only sizes into this formula: a sign tells the direction and nothing else.",
                "a minus sign went into the formula",
                kind="sign",
                signed=(step.makes,),
            )
            for step in self.plan.steps
            if step.makes not in self.carry and any(self.values[name] < 0 for name in step.sizes)
        )

    # --- the suspects ---------------------------------------------------------------------------------------

    @cached_property
    def singles(self) -> tuple[Suspect, ...]:
        """Each slip alone, where it changes the size or the sign of the value."""
        found = ((slip, self.run((slip,))) for slip in self.slips)
        return tuple(
            Suspect((slip,), values[self.target])
            for slip, values in found
            if values and _differ(values[self.target], self.right)
        )

    @cached_property
    def general(self) -> tuple[Suspect, ...]:
        """What the slips of any formula, any data and any answer give; those a topic declares are left out."""
        told = {slip.instead for slip in self.declared}
        slips = [slip for slip in (*self.gradians, *self._of_formulas, *self._common) if slip.instead not in told]
        found = ((slip, self.run((slip,))) for slip in slips)
        return tuple(
            Suspect((slip,), values[self.target])
            for slip, values in found
            if values and _differ(values[self.target], self.right)
        )

    @property
    def _common(self) -> Iterator[Slip]:
        named = {self._name(path, quantity): (path, quantity) for path, quantity in self.quantities.items()}
        steps = [step for step in self.plan.steps if step.makes not in self.carry]
        read_off = any(step.read_off for step in steps)
        data = [
            Datum((name,), quantity, "." in path)
            for name, (path, quantity) in named.items()
            if name in self.used and quantity.value and not (read_off and "." in path)
        ]
        constants = [name for name in self.constants if name in self.used and name not in self.plan.values]
        for made in (
            *of_data(data, self.style),
            *of_constants(constants, self.constants, self.style),
            *of_answer(steps, self.step, self.style),
        ):
            yield Slip(made.key, made.at, made.say, kind="common", instead=((made.at, made.instead),))

    def distinct(self, suspects: Iterable[Suspect]) -> tuple[Suspect, ...]:
        """Of those that are the same mistake told in two ways, the first: they agree with other data too, and one is
        the topic's own or both are made at one place. Prefixes of two data that move the answer alike are two mistakes.

        What a topic declares stays: two of its mistakes may agree for all data of one sign and are two all the same.
        """
        kept: list[tuple[Suspect, float | None]] = []
        for suspect in suspects:
            elsewhere = self._elsewhere(suspect)
            declared = any(slip.kind not in ("algebra", "common") for slip in suspect.slips)
            if (
                declared
                or elsewhere is None
                or not any(
                    other is not None
                    and _one_mistake(suspect, one)
                    and not _differ(elsewhere, other)
                    and not _differ(suspect.value, one.value)
                    for one, other in kept
                )
            ):
                kept.append((suspect, elsewhere))
        return tuple(suspect for suspect, _ in kept)

    def _elsewhere(self, suspect: Suspect) -> float | None:
        """The value the same slips give when every datum is a little different."""
        data = {name: _shifted(value, place) for place, (name, value) in enumerate(self.plan.values.items(), 1)}
        other = copy(self)
        other.plan, other.values = replace(self.plan, values=data), {}
        other.constants = {
            name: _shifted(value, place) for place, (name, value) in enumerate(self.constants.items(), 7)
        }
        other.carry = {name: _shifted(value, place) for place, (name, value) in enumerate(self.carry.items(), 3)}
        values = other.run(suspect.slips)
        return values[self.target] if values else None

    def rounded_with(self, slip: Slip) -> Iterator[float]:
        """The values of a slip when every step is rounded to two decimals as soon as it is found."""
        instead = dict(slip.instead)
        if slip.signed or slip.output != 1:
            return
        for round_off in (two_decimals, plain_decimals):
            carried = dict(self.carry)
            try:
                for step in self.plan.steps:
                    if step.makes == self.target:
                        break
                    if step.makes not in self.carry:
                        carried[step.makes] = round_off(run(self.plan, self.constants, carried, instead)[step.makes])
                yield run(self.plan, self.constants, carried, instead)[self.target]
            except (ExpressionError, ArithmeticError, ValueError):
                continue

    @property
    def _of_formulas(self) -> Iterator[Slip]:
        for step in reversed(self.plan.steps):
            # what is read from a graph was not reckoned with the formula that the best line has
            if step.makes in self.carry or step.root or step.read_off:
                continue
            for made in algebra_slips(step.how, tuple(self.constants)):
                instead = ((step.makes, made.instead),)
                yield Slip(made.key, step.makes, made.say, kind="algebra", instead=instead)

    @cached_property
    def pairs(self) -> tuple[Suspect, ...]:
        """Two slips at different places, where together they give what neither gives alone."""
        alone = {suspect.slips[0]: suspect.value for suspect in self.singles}
        whole = {frozenset(slip.instead) for slip in self.unconverted}
        found = []
        for one, two in combinations(self._pairable, 2):
            if one.touches & two.touches or frozenset(one.instead + two.instead) in whole:
                continue
            values = self.run((one, two))
            value = values[self.target] if values else None
            if value is None or any(
                not _differ(value, other)
                for other in (self.right, alone.get(one, self.right), alone.get(two, self.right))
            ):
                continue
            found.append(Suspect((one, two), value))
        return tuple(found)

    @property
    def _pairable(self) -> list[Slip]:
        """Slips to combine."""
        others = (*self.declared, *self.gravity, *self.radians, *self.signs)
        return [*others, *self._unit_slips]

    @cached_property
    def rounded_early(self) -> tuple[float, ...]:
        """Values reached by rounding to two decimals on the way: every step, one step, or inside the last line."""
        names = [s.makes for s in self.plan.steps if s.makes != self.target and s.makes not in self.carry]
        groups = [names, *([name] for name in names[-MOST_STEPS_APART:])] if names else []
        found: list[float] = []
        for round_off in (two_decimals, plain_decimals, two_figures):
            for group in groups:
                found += self._with_rounding(group, round_off)
        values = sized(self.values, self.step.sizes)
        if not self.step.root:
            found += rounded_inside(self.step.how, values)
        return tuple(dict.fromkeys(found))

    def _with_rounding(self, names: list[str], round_off: Callable[[float], float]) -> list[float]:
        """The value when each of ``names`` is rounded as soon as it is found."""
        carried = dict(self.carry)
        try:
            for name in names:
                carried[name] = round_off(run(self.plan, self.constants, carried)[name])
            return [run(self.plan, self.constants, carried)[self.target]]
        except (ExpressionError, ArithmeticError, ValueError):
            return []


def _needed(steps: tuple[Step, ...], target: str, carry: Mapping[str, float]) -> tuple[Step, ...]:
    """The steps that lead to ``target``, rightly or by a declared mistake, in order; a carried one needs nothing."""
    wanted, kept = {target}, []
    for step in reversed(steps):
        if step.makes in wanted:
            kept.append(step)
            if step.makes not in carry:
                wanted |= set(uses(step))
                for mistake in step.mistakes:
                    wanted |= set(expression(mistake.instead).names)
    return tuple(reversed(kept))


def uses(step: Step) -> tuple[str, ...]:
    """Names of the values a step is made from."""
    names = equation(step.root.equation).names if step.root else expression(step.how).names
    return tuple(name for name in (*names, *step.sizes) if name != step.makes)


def _shifted(value: float, place: int) -> float:
    """A value a little off, by another share for each place."""
    return value * (1 + 0.07 * math.sqrt(place % 23 + 2) / 5)


def _one_mistake(one: Suspect, other: Suspect) -> bool:
    """Whether both are made at the same name, or one is the topic's, or both only say that a factor 2 is wrong."""
    both = (*one.slips, *other.slips)
    return (
        len({slip.at for slip in both}) == 1
        or any(slip.kind == "declared" for slip in both)
        or all(slip.key in DOUBLINGS for slip in both)
    )


def _differ(one: float, other: float) -> bool:
    return not math.isclose(one, other, rel_tol=SAME)
