"""Slips that belong to any data and any answer: half a distance, a prefix read wrongly, a value on the way.

They are made from the names, units and values of a plan, so that no question lists them. Each is an expression in
place of the right one (or a factor of the answer), with a sentence to the learner. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from calc.language.printing import Style, exact
from calc.language.quantities import Quantity
from calc.language.symbols import symbol
from calc.language.unittext import PREFIXES, superscript
from calc.model.constants import SHEET
from calc.model.questions import Step
from calc.working.working import measure

_NAMES = {symbol: name for symbol, (_, name) in PREFIXES.items()}


@dataclass(frozen=True)
class CommonSlip:
    """One wrong way with a datum or an answer. at: the name; instead: what stood in its place; say: to the learner."""

    key: str
    at: str
    instead: str
    say: str


@dataclass(frozen=True)
class Datum:
    """A datum of the plan that the working uses: its names there, what was typed, and whether in a table, as
    places are."""

    names: tuple[str, ...]
    quantity: Quantity
    cell: bool = False

    @property
    def name(self) -> str:
        """The first of its names."""
        return self.names[0]


def of_data(data: Iterable[Datum], style: Style) -> Iterator[CommonSlip]:
    """What goes wrong with a datum between the question and the formula."""
    data = tuple(data)
    for datum in data:
        yield from _of_prefix(datum, style)
        unit = datum.quantity.unit
        if unit.si().text == "m" and not datum.cell:
            yield from _of_length(datum, style)
        if datum.quantity.value < 0:
            said = symbol(datum.name).text
            say = f"You left out the minus sign of {said}. In this formula the sign goes in with the number."
            yield CommonSlip("sign-dropped", datum.name, f"abs({datum.name})", say)
        if unit.text == "°":
            say = f"You used 90° − {symbol(datum.name).text}: the other angle of the triangle. Look which one is given."
            yield CommonSlip("other-angle", datum.name, f"{90!r}*{_DEGREE!r} - {datum.name}", say)
    yield from _mixed_up(data, style)


_DEGREE = 0.017453292519943295


def _of_prefix(datum: Datum, style: Style) -> Iterator[CommonSlip]:
    """Another prefix than the one typed."""
    unit, said = datum.quantity.unit, symbol(datum.name).text
    text = unit.text
    prefix = text[:1] if len(text) > 1 and text[:1] in PREFIXES and unit.factor != 1 else ""
    if not prefix:
        return
    right = measure(datum.quantity.value, unit.si().text, style, data=True).text
    number = exact(float(datum.quantity.number), style).text
    for times in (1000.0, 0.001, 10.0, 0.1, 100.0, 0.01):
        say = (
            f"You took another power of ten for {said}: {number}\N{NO-BREAK SPACE}{text} is {right},"
            f" because {_NAMES[prefix]} stands for 10{superscript(PREFIXES[prefix][0])}."
        )
        yield CommonSlip(f"prefix-{times:g}", datum.name, f"{datum.name}*{times!r}", say)


def _of_length(datum: Datum, style: Style) -> Iterator[CommonSlip]:
    said = symbol(datum.name).text
    right = measure(datum.quantity.value, "m", style, data=True).text
    for key, times, did, wanted in (
        ("half-length", 0.5, "half of", "The whole length belongs"),
        ("double-length", 2.0, "twice", "The length itself belongs"),
    ):
        say = f"You used {did} {said}. {wanted} in the formula: {said} = {right}."
        yield CommonSlip(key, datum.name, f"{datum.name}*{times!r}", say)


def _mixed_up(data: tuple[Datum, ...], style: Style) -> Iterator[CommonSlip]:
    """One datum put in where another of the same kind belongs."""
    for datum in data:
        for other in data:
            same = datum.quantity.unit.dimension == other.quantity.unit.dimension
            angles = datum.quantity.unit.is_angle or not datum.quantity.unit.text
            if other is datum or not same or angles or datum.quantity.value == other.quantity.value:
                continue
            said, wrong = symbol(datum.name).text, symbol(other.name).text
            right = measure(datum.quantity.value, datum.quantity.unit.si().text, style, data=True).text
            say = f"You put {wrong} where {said} belongs. Here {said} = {right} goes in."
            yield CommonSlip("mixed-up", datum.name, other.name, say)


def of_constants(names: Iterable[str], constants: Mapping[str, float], style: Style) -> Iterator[CommonSlip]:
    """A constant with another power of ten, or with the sign of its power turned."""
    for name in names:
        value, line = constants[name], SHEET.get(name)
        if line is None or 0.01 < abs(value) < 1000:
            continue
        right, said = measure(value, line.unit, style, data=True).text, symbol(name).text
        power = round(float(f"{value:e}".split("e")[1]))
        for times in (10.0 ** (-2 * power), 10.0, 0.1):
            say = f"You used another power of ten for {said}. The data sheet gives {said} = {right}."
            yield CommonSlip(f"power-of-{name}", name, f"{name}*{times!r}", say)


def of_answer(steps: Iterable[Step], target: Step, style: Style) -> Iterator[CommonSlip]:
    """The answer itself: a value on the way written down for it, twice or half of it."""
    wanted = symbol(target.makes).text
    for step in steps:
        if step.makes != target.makes:
            said = symbol(step.makes).text
            say = f"This is {said}, a value on the way. Go on from it to {wanted}, which is what is asked."
            yield CommonSlip("on-the-way", target.makes, step.makes, say)
        if not step.root:
            said, how = symbol(step.makes).text, f"({step.how})"
            last = step.makes == target.makes
            over = f"This is exactly twice {said}." if last else f"Twice {said} gives this number."
            under = f"This is exactly half of {said}." if last else f"Half of {said} gives this number."
            say = f"{over} Look for a factor 2 too many, or something counted twice."
            yield CommonSlip("twice", step.makes, f"2*{how}", say)
            say = f"{under} Look for a factor 2 that is missing, or a half too many."
            yield CommonSlip("half", step.makes, f"{how}/2", say)
