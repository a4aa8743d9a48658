"""Practice data for a question that may be asked any quantity: just enough of them, and they fit each other."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import degrees
from random import Random
from typing import cast

from calc.language.quantities import parse_quantity
from calc.model.questions import Draw

TYPED = {
    "m": ("g", 1e-3),
    "Q": ("nC", 1e-9),
    "r": ("cm", 1e-2),
    "L": ("cm", 1e-2),
    "h": ("cm", 1e-2),
    "d": ("cm", 1e-2),
    "F": ("mN", 1e-3),
    "T": ("mN", 1e-3),
    "a": ("m/s^2", 1.0),
    "E": ("kV/m", 1e3),
    "V": ("kV", 1e3),
}


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
    base: Mapping[str, Draw],
    whole: Callable[[dict[str, float]], dict[str, float]],
    givens: Mapping[str, tuple[str, ...]],
) -> dict[str, str]:
    """The typed texts with only those data filled that lead to the one left empty.

    base: the quantities that are drawn; ``whole`` works out all others from them, SI. givens: for each
    unknown the names that are enough, in one or more ways; the first way at level 1.
    """
    text = {name: str(value) for name, value in typed.items()}
    find = next(name for name in givens if not text[name])
    for name, source in base.items():
        if not text[name]:
            text[name] = f"{one_of(random, tuple(source.values))} {source.unit}"
    values = whole({name: si(text[name], source.unit) for name, source in base.items()})
    ways = givens[find]
    kept = (ways[0] if level == 1 else one_of(random, ways)).split()
    for name in {*givens, *base}:
        if name not in kept:
            text[name] = ""
        elif name not in base:
            text[name] = shown(name, values[name])
    return text


def shown(name: str, value: float) -> str:
    """A value to three figures as a keyboard gives it."""
    if name.startswith("alpha"):
        return f"{degrees(value):.3g}°"
    unit, factor = TYPED[name[0]]
    return f"{value / factor:.3g} {unit}"
