"""Before and after: two sketches side by side, with the positive direction stated."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, NamedTuple

from calc.figures import words
from calc.figures.bodies import Ball, Trolley
from calc.figures.figure import VELOCITY, Figure, Tells
from calc.figures.pieces import Arrow, Block, Item, Surface, Text

type Shape = Literal["trolley", "box", "ball"]

GAP = 5.6  # lines from the middle of one body to the next
LONGEST = 3.0  # of a velocity arrow, in lines
FIRMEST = 0.8  # of the shortest


class Moving(NamedTuple):
    """A body of one of the two sketches.

    `velocity` is its label, `speed` its size in any unit (0: at rest), `to_right`
    its sense. `joined` bodies touch the one before them. `shows` names the values
    that the arrow tells of, besides the one its label names.
    """

    label: str
    velocity: str = ""
    speed: float = 0.0
    to_right: bool = True
    shape: Shape = "trolley"
    joined: bool = False
    shows: tuple[str, ...] = ()


def moving(label: str, velocity: str, value: float, *, joined: bool = False) -> Moving:
    """A trolley with a signed velocity: to the right where it is above zero."""
    return Moving(label, velocity, abs(value), value >= 0, joined=joined)


def _body(moving: Moving, x: float) -> Item:
    match moving.shape:
        case "trolley":
            return Trolley((x, 0.0), 3.0, 2.2, moving.label)
        case "box":
            return Block((x, 1.0), 2.6, 2.0, 0.0, moving.label)
        case "ball":
            return Ball((x, 0.8), 0.8, moving.label)


HALF = {"trolley": 1.5, "box": 1.3, "ball": 0.8}


def _sketch(bodies: Sequence[Moving], left: float, fastest: float) -> tuple[list[Item], float]:
    """Bodies on a floor that begins at `left`, and where it ends."""
    items: list[Item] = []
    x = left + 2.4
    before: Moving | None = None
    for moving in bodies:
        if before is not None:
            touching = HALF[before.shape] + HALF[moving.shape]
            x += touching if moving.joined else GAP
        items.append(_body(moving, x))
        if moving.speed and not (moving.joined and not moving.velocity):
            share = moving.speed / fastest
            half = (FIRMEST + (LONGEST - FIRMEST) * share) / 2 * (1 if moving.to_right else -1)
            ends = ((x - half, 3.9), (x + half, 3.9))
            items.append(Arrow(*ends, moving.velocity, "velocity", label_at="middle", shows=moving.shows))
        before = moving
    end = x + 2.4
    return [Surface((left, 0.0), (end, 0.0)), *items], end


def _said(moving: Moving) -> str:
    name = words.plain(moving.label) or "a body"
    if moving.joined and not moving.velocity:
        return f"{name} is joined to it"
    if not moving.speed:
        return f"{name} is at rest"
    velocity = f" with {words.plain(moving.velocity)}" if moving.velocity else ""
    return f"{name} moves to the {'right' if moving.to_right else 'left'}{velocity}"


def _tells(when: str, moving: Moving) -> Tells:
    names = words.names_in(moving.velocity) | set(moving.shows)
    name = words.plain(moving.label) or "a body"
    return Tells(f"{when}, {_said(moving)}.", tuple(sorted(names)), f"{when}, there is {name}.")


def before_after(
    before: Sequence[Moving | tuple[str, str, float]],
    after: Sequence[Moving | tuple[str, str, float]],
    *,
    positive: Literal["right", "left"] = "right",
    title: str = "Before and after",
    description: str = "",
    notes: Sequence[str] = (),
) -> Figure:
    """Two sketches of the same bodies, each with its velocity arrows, under the stated positive direction.

    Raises ValueError where a sketch has no body or a speed is below zero.
    """
    pair = [[Moving(*one) for one in sketch] for sketch in (before, after)]
    if not all(pair) or any(one.speed < 0 for sketch in pair for one in sketch):
        raise ValueError("Each sketch needs a body, and a speed is zero or more: turn the direction instead.")
    fastest = max(one.speed for sketch in pair for one in sketch) or 1.0
    first, middle = _sketch(pair[0], 0.0, fastest)
    second, end = _sketch(pair[1], middle + 1.6, fastest)
    way = 1.2 if positive == "right" else -1.2
    centre = middle + 0.8
    items: list[Item] = [
        *first,
        *second,
        Text((middle / 2, -0.6), "Before", "below"),
        Text(((middle + 1.6 + end) / 2, -0.6), "After", "below"),
        Arrow((centre - way, 6.4), (centre + way, 6.4), "+", "axis"),
    ]
    tells = [_tells(when, one) for when, sketch in zip(("Before", "After"), pair, strict=True) for one in sketch]
    said = " ".join([*(one.sentence for one in tells), f"The positive direction is to the {positive}."])
    has_arrow = any(isinstance(item, Arrow) and item.kind == "velocity" for item in items)
    return Figure(
        title,
        description or said,
        tuple(items),
        (*((VELOCITY,) if has_arrow else ()), *notes),
        unit=1.0,
        tells=() if description else tuple(one for one in tells if one.names),
    )
