"""Where labels go: candidates around an anchor, the cheapest free place wins.

All in page units, y downwards. A label never ends up on another label: the
search widens until a free place is found. It keeps off arrows, bodies and
lines as far as a nearby place allows.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, hypot, inf, radians, sin
from typing import Literal, NamedTuple

type Point = tuple[float, float]

LINE = 20.0  # height of one line of label text, in page units
GAP = 5.5  # clear space between a label and what it names
WIDER = (0.0, 0.3, 0.7, 1.2, 1.8, 2.6, 3.6, 5.0, 7.0, 10.0)  # extra distance tried, in lines
CELL = 2 * LINE  # side of the squares by which strokes are found
LEADER_FROM = 1.8  # from this extra distance on, a thin line ties the label to its anchor


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


def box_at(centre: Point, width: float, height: float) -> Box:
    """A box of the given size around `centre`."""
    x, y = centre
    return Box(x - width / 2, y - height / 2, x + width / 2, y + height / 2)


class Bar(NamedTuple):
    """A straight stroke to keep off; `cost` says how much it matters."""

    start: Point
    end: Point
    cost: float


class Round(NamedTuple):
    """A disc to keep off."""

    centre: Point
    radius: float
    cost: float


class Spot(NamedTuple):
    """A place to try: the label beside `anchor`, pushed towards `way` (unit vector, or 0, 0).

    With `beside` it clears the whole line through the anchor at right angles
    to `way`, not only the anchor.
    """

    anchor: Point
    way: Point
    cost: float = 0.0
    beside: bool = False


def unit(a: Point, b: Point) -> tuple[Point, float]:
    """Direction from a to b as a unit vector, and the distance."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = hypot(dx, dy)
    return ((dx / length, dy / length), length) if length else ((1.0, 0.0), 0.0)


def between(a: Point, b: Point, share: float) -> Point:
    """The point at `share` of the way from a to b."""
    return (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share)


def beside(a: Point, b: Point, shares: dict[float, float]) -> Iterator[Spot]:
    """Spots on both sides of a line; `shares` maps place along it to cost."""
    (ux, uy), _ = unit(a, b)
    for share, cost in shares.items():
        at = between(a, b, share)
        yield Spot(at, (uy, -ux), cost, beside=True)
        yield Spot(at, (-uy, ux), cost + 0.2, beside=True)


def around(at: Point, first_deg: float = 90.0, cost: float = 0.0) -> Iterator[Spot]:
    """Spots in eight directions, the first at `first_deg` (anticlockwise from the right)."""
    for turn in (0, 180, 45, -45, 90, -90, 135, -135):
        a = radians(first_deg + turn)
        yield Spot(at, (round(cos(a), 6), round(-sin(a), 6)), cost + abs(turn) / 100)


@dataclass(frozen=True, slots=True)
class Request:
    """A label waiting for a place; `style` is passed on to the renderer."""

    text: str
    width: float
    height: float
    spots: tuple[Spot, ...]
    style: str = "label"
    gap: float = GAP


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
            enter = max(enter, room / step)
        else:
            leave = min(leave, room / step)
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


def _crosses(a: Point, b: Point, bar: Bar) -> bool:
    """Whether the line from a to b crosses the bar."""
    (x, y), (x2, y2), (u, v), (u2, v2) = a, b, bar.start, bar.end

    def side(px: float, py: float) -> float:
        return (x2 - x) * (py - y) - (y2 - y) * (px - x)

    def other(px: float, py: float) -> float:
        return (u2 - u) * (py - v) - (v2 - v) * (px - u)

    return side(u, v) * side(u2, v2) < 0 and other(x, y) * other(x2, y2) < 0


def _leader(spot: Spot, box: Box) -> tuple[Point, Point]:
    """From the nearest point of the box to just short of the anchor."""
    x, y = spot.anchor
    start = (min(max(x, box.left), box.right), min(max(y, box.top), box.bottom))
    length = hypot(x - start[0], y - start[1]) or 1.0
    short = max(0.0, 1 - 3 / length)
    return (start, (start[0] + (x - start[0]) * short, start[1] + (y - start[1]) * short))


def _gap_to(disc: Round, box: Box) -> float:
    x, y = disc.centre
    return (
        hypot(max(box.left - x, 0, x - box.right), max(box.top - y, 0, y - box.bottom))
        - disc.radius
    )


def _candidates(
    request: Request, wider: Sequence[float]
) -> Iterator[tuple[float, float, Point, Spot]]:
    w, h = request.width, request.height
    for extra in wider:
        for spot in request.spots:
            (x, y), (ux, uy) = spot.anchor, spot.way
            if not (ux or uy):
                if not extra:
                    yield spot.cost, 0.0, spot.anchor, spot
                continue
            # Far enough for the box to clear the anchor in this direction.
            reach = min(
                (w / 2 + request.gap) / abs(ux) if ux else inf,
                (h / 2 + request.gap) / abs(uy) if uy else inf,
            )
            if spot.beside:
                reach = abs(ux) * w / 2 + abs(uy) * h / 2 + request.gap
            reach += extra * LINE
            yield spot.cost + 5.0 * extra, extra, (x + ux * reach, y + uy * reach), spot


class _Bars:
    """Strokes by where they are, so that a place is priced against those near it alone."""

    def __init__(self, bars: Sequence[Bar]) -> None:
        self.strong = [bar for bar in bars if bar.cost >= 30]
        self._bars = bars
        self._long: list[int] = []
        self._cells: dict[tuple[int, int], list[int]] = {}
        for i, ((x, y), (x2, y2), _) in enumerate(bars):
            cells = _cells(Box(min(x, x2), min(y, y2), max(x, x2), max(y, y2)))
            if cells is None:
                self._long.append(i)
            else:
                for cell in cells:
                    self._cells.setdefault(cell, []).append(i)

    def near(self, box: Box) -> Iterator[Bar]:
        """Every stroke that may touch `box`, and some that do not."""
        cells = _cells(box)
        if cells is None:
            return iter(self._bars)
        found = set(self._long)
        for cell in cells:
            found.update(self._cells.get(cell, ()))
        return (self._bars[i] for i in sorted(found))


def _cells(box: Box) -> list[tuple[int, int]] | None:
    """The squares of page that a box lies on; None if they are many."""
    left, top, right, bottom = (side / CELL for side in box)
    if not (right - left) * (bottom - top) + (right - left) + (bottom - top) < 100:
        return None
    columns = range(int(left // 1), int(right // 1) + 1)
    return [(x, y) for x in columns for y in range(int(top // 1), int(bottom // 1) + 1)]


def _price(
    box: Box, others: Sequence[Box], bars: _Bars, rounds: Sequence[Round], best: float
) -> float:
    """Cost of standing at `box`; gives up once it exceeds `best`."""
    price = 0.0
    for other in others:
        if box.overlaps(other, 1.5):
            price += 1000.0
    for disc in rounds:
        if price > best:
            return price
        gap = _gap_to(disc, box)
        if gap < 1.5:
            price += disc.cost * (1.0 - min(gap, 0.0) / LINE)
    near = box.grown(2.0)
    for bar in bars.near(near):
        if price > best:
            return price
        (x, y), (x2, y2) = bar.start, bar.end
        if (x < near.left and x2 < near.left) or (x > near.right and x2 > near.right):
            continue
        if (y < near.top and y2 < near.top) or (y > near.bottom and y2 > near.bottom):
            continue
        if part := inside(bar, near):
            length = (part[1] - part[0]) * hypot(x2 - x, y2 - y)
            price += bar.cost * (0.5 + length / LINE)
    return price


def _settle(
    request: Request, others: Sequence[Box], bars: _Bars, rounds: Sequence[Round]
) -> Placed:
    best = inf
    chosen: tuple[float, Point, Spot, Box] | None = None
    wider: Sequence[float] = WIDER
    while True:
        for cost, extra, centre, spot in _candidates(request, wider):
            if cost >= best:
                continue
            box = box_at(centre, request.width, request.height)
            price = cost + _price(box, others, bars, rounds, best - cost)
            if extra >= LEADER_FROM and price < best:
                line = _leader(spot, box)
                price += 6.0 + sum(25.0 for bar in bars.strong if _crosses(*line, bar))
            if price < best:
                best, chosen = price, (extra, centre, spot, box)
        if chosen is not None and best < 1000.0:
            break
        if wider is WIDER and not any(spot.way != (0.0, 0.0) for spot in request.spots):
            at = request.spots[0].anchor
            ways = ((0.0, 1.0), (0.0, -1.0), (1.0, 0.0), (-1.0, 0.0))
            request = Request(
                request.text, request.width, request.height,
                tuple(Spot(at, way) for way in ways), request.style, request.gap,
            )  # fmt: skip
        # Labels are finite, so a wide enough ring is free.
        wider = [extra + wider[-1] + 1 for extra in range(12)]
    extra, centre, spot, box = chosen
    leader = _leader(spot, box) if extra >= LEADER_FROM else None
    along = spot.way[0]
    align: Literal["start", "middle", "end"] = "middle"
    if abs(along) > 0.5:
        align = "start" if along > 0 else "end"
    return Placed(request.text, request.style, centre, box, align, leader)


def place(
    requests: Sequence[Request], bars: Sequence[Bar], rounds: Sequence[Round]
) -> tuple[Placed, ...]:
    """A place for every label, in the order given; no two boxes overlap.

    Labels with the fewest possible places go first; a second pass lets each
    move to a better place now that the others stand.
    """
    order = sorted(range(len(requests)), key=lambda i: len(requests[i].spots))
    placed: dict[int, Placed] = {}
    indexed = _Bars(bars)
    for _ in range(2):
        for i in order:
            others = [p.box for j, p in placed.items() if j != i]
            placed[i] = _settle(requests[i], others, indexed, rounds)
    return tuple(placed[i] for i in range(len(requests)))
