"""Practice data for a question that may be asked any quantity: just enough of them, and they fit each other."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from math import copysign
from random import Random
from typing import cast

from calc.language.quantities import parse_quantity
from calc.model.questions import Draw
from calc.model.relations import Relation
from calc.topics.equilibrium.relations import steps_of
from calc.working.chain import spread
from calc.working.declaring import Given

SCHOOL = {"k": 9e9, "g": 9.8, "e": 1.6e-19}


def si(text: str, unit: str) -> float:
    """A drawn text in SI."""
    return parse_quantity(text, unit).value


def one_of[T](random: object, items: tuple[T, ...]) -> T:
    """One of the items; only ``random()`` is asked, so that a draw repeats everywhere."""
    return items[int(cast(Random, random).random() * len(items))]


def practised(
    typed: Mapping[str, object],
    random: object,
    level: int,
    given: Iterable[Given],
    first: str,
    whole: Callable[[dict[str, float]], dict[str, float]],
    enough: Mapping[str, tuple[str, ...]],
) -> dict[str, str]:
    """The typed texts with only those data filled that lead to the one left empty.

    given: the quantities of the question, whose draws say the units that are typed. first: those that are drawn;
    ``whole`` works out all others from them, SI. enough: for each unknown the names that are enough, in one or
    more ways; the first way at level 1.
    """
    draws = {one.box.name: one.draw for one in given if one.draw}
    base = {name: draws[name] for name in first.split()}
    text = {name: str(value) for name, value in typed.items()}
    find = next(name for name in enough if not text[name])
    for name, source in base.items():
        if not text[name]:
            text[name] = f"{one_of(random, tuple(source.values))} {source.unit}"
    values = whole({name: si(text[name], source.unit) for name, source in base.items()})
    ways = enough[find]
    kept = (ways[0] if level == 1 else one_of(random, ways)).split()
    for name in {*enough, *base}:
        if name not in kept:
            text[name] = ""
        elif name not in base:
            text[name] = shown(draws[name], values[name])
    return text


def shown(draw: Draw, value: float) -> str:
    """A value to three figures as a keyboard gives it, in the unit of its draws."""
    number = f"{value / si(f'1 {draw.unit}', draw.unit):.3g}"
    return f"{number}°" if draw.unit == "°" else f"{number} {draw.unit}"


def following(base: Mapping[str, float], *laws: Relation) -> dict[str, float]:
    """The drawn values and all that these laws make of them, with the constants a school gives (SI, radians)."""
    return spread(base, steps_of(*laws), SCHOOL)


def like_charges(values: Mapping[str, float]) -> dict[str, float]:
    """The same with the sign of Q2 for Q1: laws give its size, and the two repel."""
    return {**values, "Q1": copysign(values["Q1"], values["Q2"])}
