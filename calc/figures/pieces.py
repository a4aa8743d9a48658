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
from dataclasses import dataclass, field
from math import cos, isfinite, radians, sin
from typing import Literal

type Point = tuple[float, float]
type Sign = Literal["+", "-", ""]
type ArrowKind = Literal["force", "field", "component", "resultant", "velocity", "axis"]
type LineKind = Literal[
    "outline", "string", "guide", "construction", "fieldline", "graph", "extrapolation", "tick"
]
type TextPlace = Literal["auto", "centre", "above", "below", "left", "right"]


@dataclass(frozen=True, slots=True)
class Sphere:
    """A drawn sphere; `radius` is the drawn one, in world units; `sign` is written inside."""

    centre: Point
    radius: float
    sign: Sign = ""
    label: str = ""


@dataclass(frozen=True, slots=True)
class Dot:
    """A point or a body drawn as a dot; `radius` is in lines."""

    at: Point
    label: str = ""
    radius: float = 0.2


@dataclass(frozen=True, slots=True)
class Block:
    """A rectangular body turned by `angle_deg` about its centre."""

    centre: Point
    width: float
    height: float
    angle_deg: float = 0.0
    label: str = ""


@dataclass(frozen=True, slots=True)
class Arrow:
    """An arrow with a head at `end`.

    `lane` moves the drawn arrow sideways (to its own left) by that many lines,
    so that arrows along one line of action stay apart. `label_at` is where the
    label would rather be.
    """

    start: Point
    end: Point
    label: str = ""
    kind: ArrowKind = "force"
    lane: float = 0.0
    label_at: Literal["tip", "middle"] = "tip"


@dataclass(frozen=True, slots=True)
class Segment:
    """A straight line; `arrow` puts an arrowhead half-way along it."""

    start: Point
    end: Point
    kind: LineKind = "outline"
    label: str = ""
    arrow: bool = False


@dataclass(frozen=True, slots=True)
class Curve:
    """A line through many points; `arrows` arrowheads are spread along it."""

    points: tuple[Point, ...]
    kind: LineKind = "outline"
    label: str = ""
    arrows: int = 0
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measured distance: double-headed line with end ticks.

    It is set off by `offset` lines to the left of the direction start to end
    (negative: to the right); its end ticks begin `clear` lines from the points.
    """

    start: Point
    end: Point
    label: str = ""
    offset: float = 0.0
    clear: float = 0.3


@dataclass(frozen=True, slots=True)
class AngleMark:
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


@dataclass(frozen=True, slots=True)
class Surface:
    """A slope, floor, wall or ceiling: hatched on the right of start to end."""

    start: Point
    end: Point


@dataclass(frozen=True, slots=True)
class Plate:
    """A charged plate: its face runs from start to end, its body lies on the right of that."""

    start: Point
    end: Point
    sign: Sign = ""
    label: str = ""


@dataclass(frozen=True, slots=True)
class Text:
    """A free-standing label; `place` says on which side of `at` it goes.

    `small` sets it in the size of numbers along an axis.
    """

    at: Point
    text: str
    place: TextPlace = "auto"
    small: bool = False


type Item = (
    Sphere | Dot | Block | Arrow | Segment | Curve | Dimension | AngleMark | Surface | Plate | Text
)


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing as data.

    `description` is the text alternative: what a reader who cannot see the
    drawing needs. `notes` are printed below it ("Not to scale."). `width`
    and `height` bound the drawing on the page, in lines of label text; `unit`
    is the largest drawn size of one world unit, in lines (0: no limit).

    Raises ValueError if the title or description is blank, if there is
    nothing to draw, or if a coordinate is not a finite number.
    """

    title: str
    description: str
    items: tuple[Item, ...]
    notes: tuple[str, ...] = ()
    width: float = field(default=22.0, kw_only=True)
    height: float = field(default=17.0, kw_only=True)
    unit: float = field(default=0.0, kw_only=True)

    def __post_init__(self) -> None:
        if not self.title.strip() or not self.description.strip():
            raise ValueError("A figure needs a title and a description: write both.")
        if not self.items:
            raise ValueError(
                f"Figure “{self.title}” has nothing to draw: give it at least one item."
            )
        for item in self.items:
            for x, y in corners(item):
                if not (isfinite(x) and isfinite(y)):
                    raise ValueError(
                        f"Figure “{self.title}”: {type(item).__name__} has the point ({x}, {y}); "
                        "every coordinate must be a finite number."
                    )


def corners(item: Item) -> Iterator[Point]:
    """Points that bound an item in world coordinates."""
    match item:
        case Sphere(centre=(x, y), radius=r):
            yield (x - r, y - r)
            yield (x + r, y + r)
        case Block(centre=(x, y), width=w, height=h, angle_deg=a):
            c, s = cos(radians(a)), sin(radians(a))
            for u, v in ((-1, -1), (1, -1), (1, 1), (-1, 1)):
                yield (x + (u * w * c - v * h * s) / 2, y + (u * w * s + v * h * c) / 2)
        case Curve(points=points):
            yield from points
        case Dot(at=at) | Text(at=at):
            yield at
        case AngleMark(vertex=vertex):
            yield vertex
        case _:
            yield item.start
            yield item.end


def polar(origin: Point, length: float, direction_deg: float) -> Point:
    """The point `length` from `origin` in the direction `direction_deg`."""
    # Whole quarter turns are exact, so that a vertical arrow is drawn vertical.
    quarter = {0.0: (1, 0), 90.0: (0, 1), 180.0: (-1, 0), 270.0: (0, -1)}.get(direction_deg % 360)
    c, s = quarter or (cos(radians(direction_deg)), sin(radians(direction_deg)))
    return (origin[0] + length * c, origin[1] + length * s)
