"""The page a figure is drawn on: strokes, heads and discs in page units, y downwards.

A `Sheet` also remembers what labels should keep off, and queues the labels.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from calc.renderings import labels
from calc.renderings.geometry import Bar, Point, Round
from calc.renderings.spots import FONT, GAP, LINE, NOTE_FONT, Placed, Request, Spot

LONG = 3.6 * LINE  # a label wider than this may be broken in two lines
HEAD = {
    "force": (12.0, 5.2),
    "resultant": (12.0, 5.2),
    "component": (10.0, 4.2),
    "field": (11.0, 4.6),
    "velocity": (11.0, 4.8),
    "axis": (9.0, 3.4),
    "fieldline": (8.0, 3.6),
    "dimension": (8.0, 2.8),
}  # length and half-width of a head
SHY = {
    "force": 60.0,
    "resultant": 60.0,
    "component": 40.0,
    "field": 60.0,
    "velocity": 60.0,
    "axis": 40.0,
    "outline": 40.0,
    "string": 40.0,
    "graph": 40.0,
    "extrapolation": 30.0,
    "dimension": 40.0,
    "angle": 30.0,
    "body": 40.0,
    "wire": 40.0,
    "symbol": 40.0,
    "short": 40.0,
    "spring": 40.0,
    "guide": 8.0,
    "construction": 12.0,
    "fieldline": 14.0,
    "hatch": 8.0,
    "extension": 8.0,
}  # what it costs a label to lie on such a line
VECTORS = frozenset({"force", "resultant", "component", "field", "velocity"})


@dataclass(frozen=True, slots=True)
class Stroke:
    """One or more open (or closed) polylines in one style."""

    paths: tuple[tuple[Point, ...], ...]
    style: str
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Head:
    """An arrowhead: tip first, then the two barbs (and a notch for some styles)."""

    points: tuple[Point, ...]
    style: str


@dataclass(frozen=True, slots=True)
class Disc:
    """A circle."""

    centre: Point
    radius: float
    style: str


type Shape = Stroke | Head | Disc


@dataclass(slots=True)
class Sheet:
    """Collects shapes, obstacles and label requests in page units.

    `origin` is the world point at the page's (0, 0), `scale` page units per
    world unit. `flows` are the lines with heads along them, and how many: they
    get their heads when labels stand, so that no head lies under one.
    """

    scale: float
    origin: Point
    narrow: bool = False  # long labels break before their equals sign
    shapes: list[Shape] = field(default_factory=list)
    bars: list[Bar] = field(default_factory=list)
    rounds: list[Round] = field(default_factory=list)
    requests: list[Request] = field(default_factory=list)
    shafts: list[tuple[str, Point, Point]] = field(default_factory=list)
    letters: list[Placed] = field(default_factory=list)  # inside symbols, where nothing else goes
    flows: list[tuple[tuple[Point, ...], int]] = field(default_factory=list)
    owner: int = -1  # number of the piece being drawn

    def at(self, point: Point) -> Point:
        return ((point[0] - self.origin[0]) * self.scale, (self.origin[1] - point[1]) * self.scale)

    def stroke(self, style: str, *paths: tuple[Point, ...], closed: bool = False) -> None:
        self.shapes.append(Stroke(paths, style, closed))
        cost = SHY.get(style, 30.0)
        for path in paths:
            ends = path[1:] + path[:1] if closed else path[1:]
            self.bars += [Bar(a, b, cost, self.owner, style in VECTORS) for a, b in zip(path, ends, strict=False)]

    def disc(self, centre: Point, radius: float, style: str, cost: float = 80.0) -> None:
        self.shapes.append(Disc(centre, radius, style))
        self.rounds.append(Round(centre, radius, cost, self.owner))

    def head(self, tip: Point, way: Point, kind: str, room: float, style: str = "") -> float:
        """An arrowhead at `tip` pointing along `way`; returns its length."""
        length, half = HEAD[kind]
        shrink = min(1.0, 0.6 * room / length)
        length, half = length * shrink, half * shrink
        (x, y), (ux, uy) = tip, way
        bx, by = x - ux * length, y - uy * length
        left, right = (bx + uy * half, by - ux * half), (bx - uy * half, by + ux * half)
        self.shapes.append(Head((tip, left, right), style or kind))
        self.bars += [
            Bar(a, b, 60.0, self.owner, kind in VECTORS) for a, b in ((left, right), (left, tip), (right, tip))
        ]
        return length

    def label(self, text: str, spots: Iterator[Spot] | list[Spot], style: str = "label", gap: float = GAP) -> None:
        if text.strip():
            size = NOTE_FONT if style == "number" else FONT
            if self.narrow and labels.width(text, size) > LONG:
                text = text.replace(" = ", "\n= ", 1)
            lines = text.split("\n")
            wide = max(labels.width(line, size) for line in lines)
            pitch = sum(labels.room(text)) if len(lines) == 1 else 1.5
            high = pitch * size * len(lines)
            self.requests.append(Request(text, wide, high, tuple(spots), style, gap, self.owner))
