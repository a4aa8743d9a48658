"""Bodies of mechanics as pieces: ball, trolley, lift, pulley, string, table, slope, spring.

A box is a `Block`; a floor, wall or ceiling a `Surface`. World coordinates, y upwards.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import radians, tan

from calc.figures.pieces import Kept, Point, Segment, Span, polar


@dataclass(frozen=True, slots=True)
class Ball(Kept):
    """A round body without a charge."""

    centre: Point
    radius: float
    label: str = ""

    def corners(self) -> Iterator[Point]:
        (x, y), r = self.centre, self.radius
        yield (x - r, y - r)
        yield (x + r, y + r)


@dataclass(frozen=True, slots=True)
class Trolley(Kept):
    """A cart on two wheels; `foot` is the point on the floor half-way between them."""

    foot: Point
    width: float
    height: float
    label: str = ""

    def corners(self) -> Iterator[Point]:
        (x, y), w = self.foot, self.width
        yield (x - w / 2, y)
        yield (x + w / 2, y + self.height)


@dataclass(frozen=True, slots=True)
class Lift(Kept):
    """A cage that hangs on a cable, open to show what is inside; the label stands at its side."""

    centre: Point
    width: float
    height: float
    label: str = ""

    def corners(self) -> Iterator[Point]:
        (x, y), w, h = self.centre, self.width, self.height
        yield (x - w / 2, y - h / 2)
        yield (x + w / 2, y + 0.75 * h)


@dataclass(frozen=True, slots=True)
class Pulley(Kept):
    """A fixed wheel on an axle held from `hung_from`."""

    centre: Point
    radius: float
    hung_from: Point
    label: str = ""

    def corners(self) -> Iterator[Point]:
        (x, y), r = self.centre, self.radius
        yield (x - r, y - r)
        yield (x + r, y + r)
        yield self.hung_from


@dataclass(frozen=True, slots=True)
class Cord(Span):
    """A string from start to end over the top of a wheel at `over`; the label is its tension or name."""

    over: Point
    radius: float
    label: str = ""

    def corners(self) -> Iterator[Point]:
        (x, y), r = self.over, self.radius
        yield self.start
        yield self.end
        yield (x - r, y + r)
        yield (x + r, y + r)


@dataclass(frozen=True, slots=True)
class Rope(Segment, Kept):
    """A straight rope, rod or string named for its force: it stays to be seen when that is asked for."""


@dataclass(frozen=True, slots=True)
class Table(Span):
    """A table top from start to end (left to right), with its legs; bodies may hang over its edge."""

    height: float

    def corners(self) -> Iterator[Point]:
        for x, y in (self.start, self.end):
            yield (x, y)
            yield (x, y - self.height)


@dataclass(frozen=True, slots=True)
class Slope(Kept):
    """A wedge that rises from `foot` over the length `base` (below 0: to the left) at `angle_deg`.

    The label stands at the marked angle.
    """

    foot: Point
    base: float
    angle_deg: float
    label: str = ""

    @property
    def top(self) -> Point:
        x, y = self.foot
        return (x + self.base, y + abs(self.base) * tan(radians(self.angle_deg)))

    def place(self, share: float, height: float = 0.0) -> Point:
        """The point a share of the way up, `height` above the slope at right angles to it."""
        (x, y), (x2, y2) = self.foot, self.top
        way = self.angle_deg + 90 if self.base > 0 else 90 - self.angle_deg
        return polar((x + share * (x2 - x), y + share * (y2 - y)), height, way)

    def corners(self) -> Iterator[Point]:
        yield self.foot
        yield (self.top[0], self.foot[1])
        yield self.top


@dataclass(frozen=True, slots=True)
class Spring(Span, Kept):
    """A coil spring from start to end."""

    label: str = ""
    coils: int = 8
