"""Boxes, strokes and discs of a page, how far they are apart, and which lie near a box.

All in page units, y downwards.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import floor, hypot
from typing import NamedTuple

type Point = tuple[float, float]

CELL = 40.0  # side of a square of the index; about the width of a label
MANY = 400  # squares of the index looked at one by one
FEW = 24  # strokes that are looked through sooner than the squares of a box are worked out


class Box(NamedTuple):
    """An upright rectangle."""

    left: float
    top: float
    right: float
    bottom: float

    def overlaps(self, other: Box, gap: float = 0.0) -> bool:
        """Whether the two come closer than `gap`."""
        return (
            self.left < other.right + gap
            and other.left < self.right + gap
            and self.top < other.bottom + gap
            and other.top < self.bottom + gap
        )

    def union(self, other: Box) -> Box:
        """The smallest box around both."""
        return Box(
            min(self.left, other.left),
            min(self.top, other.top),
            max(self.right, other.right),
            max(self.bottom, other.bottom),
        )

    def grown(self, by: float) -> Box:
        """The box with `by` added on every side."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def gap_to(self, point: Point) -> float:
        """Distance of a point from the box; 0 inside it."""
        x, y = point
        return hypot(max(self.left - x, 0, x - self.right), max(self.top - y, 0, y - self.bottom))


class Bar(NamedTuple):
    """A straight stroke to keep off; `cost` says how much it matters.

    `owner` is the number of the piece it belongs to; `named` marks the shaft of
    an arrow, whose label must not stand nearer to another one.
    """

    start: Point
    end: Point
    cost: float
    owner: int = -1
    named: bool = False


class Round(NamedTuple):
    """A disc to keep off; `owner` as for a `Bar`."""

    centre: Point
    radius: float
    cost: float
    owner: int = -1


def box_at(centre: Point, width: float, height: float) -> Box:
    """A box of the given size around `centre`."""
    x, y = centre
    return Box(x - width / 2, y - height / 2, x + width / 2, y + height / 2)


def unit(a: Point, b: Point) -> tuple[Point, float]:
    """Direction from a to b as a unit vector, and the distance."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = hypot(dx, dy)
    return ((dx / length, dy / length), length) if length else ((1.0, 0.0), 0.0)


def between(a: Point, b: Point, share: float) -> Point:
    """The point at `share` of the way from a to b."""
    return (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share)


def centroid(points: Sequence[Point]) -> Point:
    """Centre of the area inside a closed line (of its first point where it encloses none)."""
    (x0, y0), area, cx, cy = points[0], 0.0, 0.0, 0.0
    for (x, y), (x2, y2) in zip(points, (*points[1:], points[0]), strict=True):
        cross = (x - x0) * (y2 - y0) - (x2 - x0) * (y - y0)
        area += cross
        cx += cross * (x + x2 + x0) / 3
        cy += cross * (y + y2 + y0) / 3
    return (cx / area, cy / area) if area else (x0, y0)


def inside(bar: Bar, box: Box) -> tuple[float, float] | None:
    """The part of `bar` inside `box` as two shares of its length; None if there is none.

    Liang–Barsky clipping.
    """
    (x, y), (x2, y2) = bar.start, bar.end
    dx, dy = x2 - x, y2 - y
    enter, leave = 0.0, 1.0
    rooms = ((-dx, x - box.left), (dx, box.right - x), (-dy, y - box.top), (dy, box.bottom - y))
    for step, room in rooms:
        if step == 0:
            if room < 0:
                return None
        elif step < 0:
            share = room / step
            if share > enter:
                enter = share
        else:
            share = room / step
            if share < leave:
                leave = share
    return (enter, leave) if leave > enter else None


def inside_round(bar: Bar, disc: Round) -> tuple[float, float] | None:
    """The part of `bar` inside `disc` as two shares of its length; None if there is none."""
    (x, y), (x2, y2), (cx, cy) = bar.start, bar.end, disc.centre
    dx, dy, fx, fy = x2 - x, y2 - y, x - cx, y - cy
    a, b, c = dx * dx + dy * dy, dx * fx + dy * fy, fx * fx + fy * fy - disc.radius**2
    root = b * b - a * c
    if not a or root <= 0:
        return None
    enter, leave = max(0.0, (-b - root**0.5) / a), min(1.0, (-b + root**0.5) / a)
    return (enter, leave) if leave > enter else None


def outside(start: Point, end: Point, parts: Sequence[tuple[float, float]]) -> list[tuple[Point, Point]]:
    """What is left of a line when the given shares of it are taken out."""
    kept, at = [], 0.0
    for enter, leave in sorted(parts):
        if enter > at:
            kept.append((between(start, end, at), between(start, end, enter)))
        at = max(at, leave)
    if at < 1.0:
        kept.append((between(start, end, at), end))
    return kept


def crosses(a: Point, b: Point, bar: Bar) -> bool:
    """Whether the line from a to b crosses the bar."""
    (x, y), (x2, y2), (u, v), (u2, v2) = a, b, bar.start, bar.end
    dx, dy, du, dv = x2 - x, y2 - y, u2 - u, v2 - v
    # The ends of each must lie on both sides of the other.
    if (dx * (v - y) - dy * (u - x)) * (dx * (v2 - y) - dy * (u2 - x)) >= 0:
        return False
    return (du * (y - v) - dv * (x - u)) * (du * (y2 - v) - dv * (x2 - u)) < 0


def alongside(a: Point, b: Point, bar: Bar, within: float) -> bool:
    """Whether the whole bar lies along the line from a to b, less than `within` from it."""
    (x, y), (ux, uy), length = a, *unit(a, b)
    for u, v in (bar.start, bar.end):
        if abs(ux * (v - y) - uy * (u - x)) >= within:
            return False
        if not -within < ux * (u - x) + uy * (v - y) < length + within:
            return False
    return True


def bar_gap(bar: Bar, box: Box) -> float:
    """Distance between a stroke and a box; 0 where they touch."""
    if inside(bar, box):
        return 0.0
    near = min(box.gap_to(bar.start), box.gap_to(bar.end))
    (x, y), (dx, dy) = bar.start, (bar.end[0] - bar.start[0], bar.end[1] - bar.start[1])
    square = dx * dx + dy * dy
    if square:
        for u in (box.left, box.right):
            for v in (box.top, box.bottom):
                share = min(1.0, max(0.0, ((u - x) * dx + (v - y) * dy) / square))
                near = min(near, hypot(u - x - share * dx, v - y - share * dy))
    return near


def round_gap(disc: Round, box: Box) -> float:
    """Distance between a disc and a box; below 0 where they overlap."""
    return box.gap_to(disc.centre) - disc.radius


def room_of(bar: Bar) -> Box:
    """The upright rectangle a stroke lies in."""
    (x, y), (x2, y2) = bar.start, bar.end
    left, right = (x, x2) if x < x2 else (x2, x)
    return Box(left, y, right, y2) if y < y2 else Box(left, y2, right, y)


def _squares(room: Box) -> float:
    left, top, right, bottom = room
    return ((right - left) / CELL + 1) * ((bottom - top) / CELL + 1)


def _cells(room: Box) -> list[tuple[int, int]]:
    """The squares of the page that a rectangle touches."""
    left, top, right, bottom = room
    first, last = floor(left / CELL), floor(right / CELL)
    upper, lower = floor(top / CELL), floor(bottom / CELL)
    if first == last and upper == lower:
        return [(first, upper)]
    return [(column, row) for column in range(first, last + 1) for row in range(upper, lower + 1)]


def _passed(bar: Bar, room: Box, reach: float = 0.01) -> list[tuple[int, int]]:
    """The squares that a stroke comes within `reach` of; ``room`` is the rectangle that it lies in."""
    cells = _cells(room)
    if len(cells) < 4 or cells[0][0] == cells[-1][0] or cells[0][1] == cells[-1][1]:
        return cells  # it slants through no more than one row or column
    wide = CELL + reach
    return [
        (column, row)
        for column, row in cells
        if inside(bar, Box(column * CELL - reach, row * CELL - reach, column * CELL + wide, row * CELL + wide))
    ]


class Index:
    """Strokes by the squares of the page they pass, so that only near ones are looked at."""

    def __init__(self, bars: Sequence[Bar]) -> None:
        self._cells: dict[tuple[int, int], list[tuple[Box, int, Bar]]] = {}
        self._long: list[tuple[Box, int, Bar]] = []  # across so many squares that all are told of them
        few = len(bars) <= FEW
        for number, bar in enumerate(bars):
            room = room_of(bar)
            if few or _squares(room) > MANY:
                self._long.append((room, number, bar))
                continue
            for cell in _passed(bar, room):
                self._cells.setdefault(cell, []).append((room, number, bar))

    def near(self, box: Box) -> list[Bar]:
        """Every stroke that may touch the box, each once."""
        if not self._cells or _squares(box) > MANY:
            return self._found(self._cells, box)
        return self._found(_cells(box), box)

    def along(self, bar: Bar, reach: float) -> list[Bar]:
        """Every stroke that may come within `reach` of another stroke."""
        room = room_of(bar).grown(reach)
        if not self._cells or _squares(room) > MANY:
            return self._found(self._cells, room)
        return self._found(_passed(bar, room, reach), room)

    def _found(self, cells: Iterable[tuple[int, int]], box: Box) -> list[Bar]:
        left, top, right, bottom = box
        found: dict[int, Bar] = {}
        for near in (self._long, *[self._cells[cell] for cell in cells if cell in self._cells]):
            for (x, y, x2, y2), number, bar in near:
                if x <= right and left <= x2 and y <= bottom and top <= y2:
                    found[number] = bar
        return list(found.values())
