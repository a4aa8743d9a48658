"""A label's wishes: the places it would take, and the place it got."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, radians, sin
from typing import Literal, NamedTuple

from calc.renderings import labels
from calc.renderings.geometry import Box, Point, between, box_at, unit

FONT = 16.0
NOTE_FONT = 13.0
LINE = 20.0  # height of one line of label text, in page units
GAP = 5.5  # clear space between a label and what it names


class Spot(NamedTuple):
    """A place to try: the label beside `anchor`, pushed towards `way` (unit vector, or 0, 0).

    With `beside` it clears the whole line through the anchor at right angles
    to `way`, not only the anchor.
    """

    anchor: Point
    way: Point
    cost: float = 0.0
    beside: bool = False


def beside(a: Point, b: Point, shares: dict[float, float]) -> Iterator[Spot]:
    """Spots on both sides of a line; `shares` maps place along it to cost."""
    (ux, uy), _ = unit(a, b)
    for share, cost in shares.items():
        at = between(a, b, share)
        yield Spot(at, (uy, -ux), cost, beside=True)
        yield Spot(at, (-uy, ux), cost + 0.2, beside=True)


def around(at: Point, first_deg: float = 90.0, cost: float = 0.0) -> Iterator[Spot]:
    """Spots in sixteen directions, the first at `first_deg` (anticlockwise from the right)."""
    for turn in (0.0, 180, 45, -45, 90, -90, 135, -135):
        a = radians(first_deg + turn)
        yield Spot(at, (round(cos(a), 6), round(-sin(a), 6)), cost + abs(turn) / 100)
    # Between those, where lines run out in all directions from a body.
    for turn in (22.5, -22.5, 67.5, -67.5, 112.5, -112.5, 157.5, -157.5):
        a = radians(first_deg + turn)
        yield Spot(at, (round(cos(a), 6), round(-sin(a), 6)), cost + 1.5 + abs(turn) / 100)


@dataclass(frozen=True, slots=True)
class Request:
    """A label waiting for a place; `style` is passed on to the renderer.

    `owner` is the number of the piece it names.
    """

    text: str
    width: float
    height: float
    spots: tuple[Spot, ...]
    style: str = "label"
    gap: float = GAP
    owner: int = -1


@dataclass(frozen=True, slots=True)
class Placed:
    """A label with its place; `leader` joins it to a far anchor.

    `align` is the side of the box the text is set from: a box is a little wide
    for most fonts, and text keeps to the end that is near its anchor.
    """

    text: str
    style: str
    centre: Point
    box: Box
    align: Literal["start", "middle", "end"] = "middle"
    leader: tuple[Point, Point] | None = None


def box_of(text: str, centre: Point) -> Box:
    """The box of one line of label around a point."""
    return box_at(centre, labels.width(text, FONT), sum(labels.room(text)) * FONT)
