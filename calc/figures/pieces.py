"""The pieces a figure is made of: frozen data in world coordinates, y upwards.

Any scale will do (metres, centimetres, newtons scaled by the caller); the
renderer fits the whole figure to the page. Angles are in degrees,
anticlockwise from +x. Sizes that belong to the page and not to the world
(how far a dimension line is set off, how large an angle mark is) are in
*lines*: multiples of the height of one line of label text.

Labels use a small markup, read by ``calc.renderings.labels``::

    F_E   F_{AB}   Q_1   θ   mg sin θ   10^{-2}   3,60 × 10⁻² N
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from math import cos, radians, sin
from typing import Any, Literal, Self

from calc.figures.words import names_in

type Point = tuple[float, float]
type Sign = Literal["+", "-", ""]
type ArrowKind = Literal["force", "field", "component", "resultant", "velocity", "axis"]
type LineKind = Literal["outline", "string", "guide", "construction", "fieldline", "graph", "extrapolation", "tick"]
type TextPlace = Literal["auto", "centre", "above", "below", "left", "right"]


@dataclass(frozen=True, slots=True)
class Piece:
    """What every piece of a figure has.

    `shows` names the values it tells something of: a size, a direction, a sign, a
    place. `Figure.without` hides it from a reader who is to find one of them.
    """

    shows: tuple[str, ...] = field(default=(), kw_only=True)

    def tells_of(self, asked: frozenset[str]) -> bool:
        """Whether it shows one of these values, or carries its symbol."""
        label = getattr(self, "label", "") or getattr(self, "text", "")
        return bool(asked & (names_in(label) | set(self.shows)))

    def corners(self) -> Iterator[Point]:
        """Points that bound the piece in world coordinates."""
        raise NotImplementedError(f"{type(self).__name__} does not say where it is.")

    def hiding(self, asked: frozenset[str]) -> Self | None:
        """What may be seen of the piece by one who is asked for these: None for nothing."""
        return None if self.tells_of(asked) else self

    def moved(self, dx: float, dy: float) -> Self:
        """The piece in another place."""
        changed: dict[str, Any] = {
            name: (getattr(self, name)[0] + dx, getattr(self, name)[1] + dy)
            for name in ("centre", "at", "start", "end", "vertex", "foot", "over", "hung_from")
            if hasattr(self, name)
        }
        if hasattr(self, "points"):
            changed["points"] = tuple((x + dx, y + dy) for x, y in self.points)
        return replace(self, **changed)


def named_only(label: str) -> str:
    """A label without the value it gives: ``Q_1 = +6 nC`` leaves ``Q_1``."""
    return label.partition(" = ")[0]


@dataclass(frozen=True, slots=True)
class Kept(Piece):
    """A piece that stays to be seen when its value is hidden: only the value at its name goes."""

    def hiding(self, asked: frozenset[str]) -> Self:
        changed: dict[str, Any] = {"label": named_only(getattr(self, "label", ""))}
        return replace(self, **changed) if self.tells_of(asked) else self


@dataclass(frozen=True, slots=True)
class Span(Piece):
    """A piece that runs from one point to another."""

    start: Point
    end: Point

    def corners(self) -> Iterator[Point]:
        yield self.start
        yield self.end


@dataclass(frozen=True, slots=True)
class Sphere(Piece):
    """A drawn sphere; `radius` is the drawn one, in world units; `sign` is written inside."""

    centre: Point
    radius: float
    sign: Sign = ""
    label: str = ""

    def corners(self) -> Iterator[Point]:
        (x, y), r = self.centre, self.radius
        yield (x - r, y - r)
        yield (x + r, y + r)

    def hiding(self, asked: frozenset[str]) -> Self:
        """The body stays; its sign and the value at its name go."""
        if not self.tells_of(asked):
            return self
        return replace(self, sign="", label=named_only(self.label))


@dataclass(frozen=True, slots=True)
class Dot(Kept):
    """A point or a body drawn as a dot; `radius` is in lines."""

    at: Point
    label: str = ""
    radius: float = 0.2

    def corners(self) -> Iterator[Point]:
        yield self.at


@dataclass(frozen=True, slots=True)
class Block(Kept):
    """A rectangular body turned by `angle_deg` about its centre."""

    centre: Point
    width: float
    height: float
    angle_deg: float = 0.0
    label: str = ""

    def corners(self) -> Iterator[Point]:
        (x, y), w, h = self.centre, self.width, self.height
        c, s = cos(radians(self.angle_deg)), sin(radians(self.angle_deg))
        for u, v in ((-1, -1), (1, -1), (1, 1), (-1, 1)):
            yield (x + (u * w * c - v * h * s) / 2, y + (u * w * s + v * h * c) / 2)


@dataclass(frozen=True, slots=True)
class Arrow(Span):
    """An arrow with a head at `end`.

    `lane` moves the drawn arrow sideways (to its own left) by that many lines,
    so that arrows along one line of action stay apart. `label_at` is where the
    label would rather be.
    """

    label: str = ""
    kind: ArrowKind = "force"
    lane: float = 0.0
    label_at: Literal["tip", "middle"] = "tip"


@dataclass(frozen=True, slots=True)
class Told(Arrow):
    """An arrow whose direction the story gives: a drawn question shows it too."""


@dataclass(frozen=True, slots=True)
class Segment(Span):
    """A straight line; `arrow` puts an arrowhead half-way along it."""

    kind: LineKind = "outline"
    label: str = ""
    arrow: bool = False


@dataclass(frozen=True, slots=True)
class Curve(Piece):
    """A line through many points; `arrows` arrowheads are spread along it."""

    points: tuple[Point, ...]
    kind: LineKind = "outline"
    label: str = ""
    arrows: int = 0
    closed: bool = False

    def corners(self) -> Iterator[Point]:
        yield from self.points


@dataclass(frozen=True, slots=True)
class Dimension(Span, Kept):
    """A measured distance: double-headed line with end ticks.

    It is set off by `offset` lines to the left of the direction start to end
    (negative: to the right); its end ticks begin `clear` lines from the points.
    """

    label: str = ""
    offset: float = 0.0
    clear: float = 0.3


@dataclass(frozen=True, slots=True)
class AngleMark(Kept):
    """An arc from `start_deg` anticlockwise to `end_deg`; a square when that is 90°."""

    vertex: Point
    start_deg: float
    end_deg: float
    label: str = ""
    radius: float = 2.0

    @property
    def sweep_deg(self) -> float:
        """Size of the marked angle, above 0° and up to 360°."""
        return (self.end_deg - self.start_deg) % 360 or 360.0

    def corners(self) -> Iterator[Point]:
        yield self.vertex


@dataclass(frozen=True, slots=True)
class Surface(Span):
    """A slope, floor, wall or ceiling: hatched on the right of start to end."""


@dataclass(frozen=True, slots=True)
class Plate(Span):
    """A charged plate: its face runs from start to end, its body lies on the right of that."""

    sign: Sign = ""
    label: str = ""


@dataclass(frozen=True, slots=True)
class Text(Piece):
    """A free-standing label; `place` says on which side of `at` it goes.

    `small` sets it in the size of numbers along an axis.
    """

    at: Point
    text: str
    place: TextPlace = "auto"
    small: bool = False

    def corners(self) -> Iterator[Point]:
        yield self.at


@dataclass(frozen=True, slots=True)
class Shade(Piece):
    """A shaded area with its outline through the points; the label stands inside where it fits."""

    points: tuple[Point, ...]
    label: str = ""

    def corners(self) -> Iterator[Point]:
        yield from self.points


@dataclass(frozen=True, slots=True)
class Column(Piece):
    """An upright bar of a bar chart from the middle of its foot; below 0 it hangs down."""

    foot: Point
    width: float
    height: float
    label: str = ""

    def corners(self) -> Iterator[Point]:
        (x, y), w = self.foot, self.width
        yield (x - w / 2, y)
        yield (x + w / 2, y + self.height)


type Item = Piece


def corners(item: Item) -> Iterator[Point]:
    """Points that bound an item in world coordinates."""
    return item.corners()


def polar(origin: Point, length: float, direction_deg: float) -> Point:
    """The point `length` from `origin` in the direction `direction_deg`."""
    # Whole quarter turns are exact, so that a vertical arrow is drawn vertical.
    quarter = {0.0: (1, 0), 90.0: (0, 1), 180.0: (-1, 0), 270.0: (0, -1)}.get(direction_deg % 360)
    c, s = quarter or (cos(radians(direction_deg)), sin(radians(direction_deg)))
    return (origin[0] + length * c, origin[1] + length * s)
