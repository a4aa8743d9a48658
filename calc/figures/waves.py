"""Wavefronts of a source of sound, seen from above: bunched ahead of a moving source, stretched behind it."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, sin, tau
from typing import Literal, NamedTuple

from calc.figures import words
from calc.figures.figure import VELOCITY, Figure, Tells
from calc.figures.pieces import Arrow, Curve, Dot, Item, Text

type Way = Literal["right", "left", ""]

FRONTS = 4
STEP = 1.4  # of one radius to the next, in lines
SHARE = 0.42  # of the speed of sound, as drawn: an ordinary speed would not show
AWAY = 9.6  # of a listener from the source
ABOVE = 1.3  # of a velocity arrow over its body
HALF = 1.1  # of an arrow
CORNERS = 64
CLOSER = "Not to scale: at ordinary speeds the wavefronts are bunched far less."


class Listener(NamedTuple):
    """Who hears the source: the label, on which side of it, which way it moves, the label of its velocity and that of
    the frequency heard there."""

    label: str
    side: Literal["right", "left"] = "right"
    moves: Way = ""
    velocity: str = ""
    hears: str = ""


def _sign(way: Way) -> int:
    return {"right": 1, "left": -1, "": 0}[way]


def _front(age: int, way: int) -> Curve:
    """The wavefront sent out ``age`` steps ago, round where the source was then."""
    radius = age * STEP
    middle = -way * SHARE * radius
    ring = [(middle + radius * sin(n * tau / CORNERS), -radius * cos(n * tau / CORNERS)) for n in range(CORNERS)]
    return Curve(tuple(ring), "construction", closed=True)


def _arrow(x: float, y: float, way: int, label: str) -> tuple[Item, ...]:
    """An arrow with its name above it. The name is a piece of its own: who looks for the speed still sees the way."""
    arrow = Arrow((x - way * HALF, y), (x + way * HALF, y), "", "velocity")
    return (arrow, Text((x, y + 0.4), label, "above")) if label else (arrow,)


def _heard(one: Listener, moves: Way) -> str:
    """What a listener does, and how the wavefronts lie on its side."""
    name = words.plain(one.label)
    does = "is at rest"
    if one.moves:
        does = f"moves {'away from' if one.moves == one.side else 'towards'} the source"
    hears = f" and hears {words.plain(one.hears)}" if one.hears else ""
    lie = "evenly spaced" if not moves else "close together" if moves == one.side else "far apart"
    return f"On the {one.side}, {name} {does}{hears}; the wavefronts there are {lie}."


def wavefronts(
    source: str = "S",
    moves: Way = "",
    velocity: str = "",
    listeners: Sequence[Listener] = (Listener("L"),),
    *,
    title: str = "Wavefronts of the source",
    description: str = "",
    notes: Sequence[str] = (),
) -> Figure:
    """A source with the wavefronts it has sent out, and listeners to its right and left.

    moves: which way the source goes; velocity: the label of its arrow. Raises ValueError without a listener.
    """
    if not listeners:
        raise ValueError("Wavefronts need a listener: give at least one.")
    way = _sign(moves)
    items: list[Item] = [_front(age, way) for age in range(1, FRONTS + 1)]
    items.append(Dot((0.0, 0.0), source))
    if way:
        items.extend(_arrow(0.0, FRONTS * STEP + ABOVE, way, velocity))
    for one in listeners:
        x = AWAY * _sign(one.side)
        items.append(Dot((x, 0.0), f"{one.label}: {one.hears}" if one.hears else one.label))
        if one.moves:
            items.extend(_arrow(x, ABOVE, _sign(one.moves), one.velocity))
    name = words.plain(source)
    told = f"The source {name} moves to the {moves}." if moves else f"The source {name} is at rest."
    said = [told, *(_heard(one, moves) for one in listeners)]
    names = [words.names_in(velocity), *(words.names_in(one.velocity) | words.names_in(one.hears) for one in listeners)]
    # no sentence gives a value away: whoever is asked for one reads the same words
    told_to_all = tuple(Tells(one, tuple(sorted(of)), one) for one, of in zip(said, names, strict=True) if of)
    arrows = bool(way) or any(one.moves for one in listeners)
    return Figure(
        title,
        description or " ".join(said),
        tuple(items),
        (*((CLOSER,) if way else ()), *((VELOCITY,) if arrows else ()), *notes),
        unit=1.0,
        tells=() if description else told_to_all,
    )
