"""The pieces of a figure as shapes on the page, with what their labels ask for.

`draw(sheet, item)` turns one piece into strokes, heads and discs in page units
(y downwards), remembers what labels should keep off, and queues its label.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass, field
from math import ceil, cos, degrees, radians, sin

from calc.figures.pieces import (
    AngleMark,
    Arrow,
    Block,
    Curve,
    Dimension,
    Dot,
    Item,
    Plate,
    Segment,
    Sphere,
    Surface,
    Text,
    corners,
)
from calc.renderings import labels
from calc.renderings.placing import (
    GAP,
    LINE,
    Bar,
    Point,
    Request,
    Round,
    Spot,
    around,
    beside,
    between,
    unit,
)

FONT = 16.0
NOTE_FONT = 13.0
LONG = 5.5 * LINE  # a label wider than this may be broken in two lines
HEAD = {
    "force": (12.0, 5.2), "resultant": (12.0, 5.2), "component": (10.0, 4.2), "field": (11.0, 4.6),
    "velocity": (11.0, 4.8), "axis": (9.0, 3.4), "fieldline": (8.0, 3.6), "dimension": (8.0, 2.8),
}  # fmt: skip  # length and half-width of a head
SHY = {
    "force": 60.0, "resultant": 60.0, "component": 40.0, "field": 60.0, "velocity": 60.0, "axis": 40.0,
    "outline": 40.0, "string": 40.0, "graph": 40.0, "extrapolation": 30.0, "dimension": 40.0,
    "angle": 30.0, "guide": 8.0, "construction": 12.0, "fieldline": 14.0, "hatch": 8.0, "extension": 8.0,
}  # fmt: skip  # what it costs a label to lie on such a line


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
    world unit.
    """

    scale: float
    origin: Point
    narrow: bool = False  # long labels break before their equals sign
    shapes: list[Shape] = field(default_factory=list)
    bars: list[Bar] = field(default_factory=list)
    rounds: list[Round] = field(default_factory=list)
    requests: list[Request] = field(default_factory=list)
    shafts: list[tuple[str, Point, Point]] = field(default_factory=list)

    def at(self, point: Point) -> Point:
        return ((point[0] - self.origin[0]) * self.scale, (self.origin[1] - point[1]) * self.scale)

    def stroke(self, style: str, *paths: tuple[Point, ...], closed: bool = False) -> None:
        self.shapes.append(Stroke(paths, style, closed))
        cost = SHY.get(style, 30.0)
        for path in paths:
            ends = path[1:] + path[:1] if closed else path[1:]
            self.bars += [Bar(a, b, cost) for a, b in zip(path, ends, strict=False)]

    def disc(self, centre: Point, radius: float, style: str, cost: float = 80.0) -> None:
        self.shapes.append(Disc(centre, radius, style))
        self.rounds.append(Round(centre, radius, cost))

    def head(self, tip: Point, way: Point, kind: str, room: float, style: str = "") -> float:
        """An arrowhead at `tip` pointing along `way`; returns its length."""
        length, half = HEAD[kind]
        shrink = min(1.0, 0.6 * room / length)
        length, half = length * shrink, half * shrink
        (x, y), (ux, uy) = tip, way
        bx, by = x - ux * length, y - uy * length
        left, right = (bx + uy * half, by - ux * half), (bx - uy * half, by + ux * half)
        self.shapes.append(Head((tip, left, right), style or kind))
        self.bars.append(Bar(left, right, 60.0))
        return length

    def label(
        self, text: str, spots: Iterator[Spot] | list[Spot], style: str = "label", gap: float = GAP
    ) -> None:
        if text.strip():
            size = NOTE_FONT if style == "number" else FONT
            if self.narrow and labels.width(text, size) > LONG:
                text = text.replace(" = ", "\n= ", 1)
            lines = text.split("\n")
            wide, high = (
                max(labels.width(line, size) for line in lines),
                (1.15 if len(lines) == 1 else 1.4) * size * len(lines),
            )
            self.requests.append(Request(text, wide, high, tuple(spots), style, gap))


def _arrow(sheet: Sheet, item: Arrow) -> None:
    tail, tip = sheet.at(item.start), sheet.at(item.end)
    way, length = unit(tail, tip)
    if not length:
        return
    ux, uy = way
    shift = (uy * item.lane * LINE, -ux * item.lane * LINE)
    tail, tip = (tail[0] + shift[0], tail[1] + shift[1]), (tip[0] + shift[0], tip[1] + shift[1])
    sheet.shafts.append((item.kind, tail, tip))
    head = sheet.head(tip, way, item.kind, length)
    # Filled heads hide the end of the shaft; the shaft stops short so its square end stays inside.
    inset = 0.0 if item.kind == "field" else head * (1.0 if item.kind == "velocity" else 0.7)
    neck = (tip[0] - ux * inset, tip[1] - uy * inset)
    if item.kind == "resultant":
        second = (tip[0] - ux * head * 0.8, tip[1] - uy * head * 0.8)
        sheet.head(second, way, item.kind, length)
        neck = (tip[0] - ux * head * 1.5, tip[1] - uy * head * 1.5) if length > 2 * head else neck
    sheet.stroke(item.kind, (tail, neck))
    if item.label_at == "middle":
        spots = [Spot(tip, way, 6.0)]
        spots += beside(tail, tip, {0.5: 0.0, 0.6: 0.3, 0.4: 0.3, 0.75: 1.0, 0.25: 1.2})
    else:
        # A component's head lies where other arrows end: its label goes beside it.
        # A long label beyond a level arrow makes the whole figure wide.
        wide = 0.25 * abs(ux) * labels.width(item.label, FONT) / LINE
        spots = [Spot(tip, way, 4.0 if item.kind == "component" else wide)]
        spots += beside(tail, tip, {0.9: 1.0, 0.7: 1.5, 0.5: 1.6, 0.3: 3.0})
    for turn in (40, -40):
        a = radians(turn)
        turned = (ux * cos(a) - uy * sin(a), ux * sin(a) + uy * cos(a))
        spots.append(Spot(tip, turned, 1.2 if item.label_at == "tip" else 6.5))
    sheet.label(item.label, spots)


def _line(
    sheet: Sheet, points: tuple[Point, ...], kind: str, label: str, arrows: int, closed: bool
) -> None:
    sheet.stroke(kind, points, closed=closed)
    lengths = [unit(a, b)[1] for a, b in itertools.pairwise(points)]
    total = sum(lengths)
    for n in range(arrows):
        goal = total * (n + 1) / (arrows + 1) + 4.0
        for (a, b), length in zip(itertools.pairwise(points), lengths, strict=True):
            if goal <= length and length:
                sheet.head(between(a, b, goal / length), unit(a, b)[0], "fieldline", total)
                break
            goal -= length
    if label.strip() and total:
        spots: list[Spot] = []
        steps = list(itertools.pairwise(points))
        if len(steps) == 1:
            spots += beside(
                *steps[0], {0.5: 0.0, 0.4: 0.3, 0.6: 0.3, 0.25: 0.8, 0.75: 0.8, 0.12: 2, 0.88: 2}
            )
        else:
            for share in (0.5, 0.65, 0.35, 0.8, 0.2, 0.95):
                a, b = steps[min(len(steps) - 1, int(share * len(steps)))]
                spots += beside(a, b, {0.5: 3 * abs(share - 0.5)})
        sheet.label(label, spots)


def _dimension(sheet: Sheet, item: Dimension) -> None:
    a, b = sheet.at(item.start), sheet.at(item.end)
    (ux, uy), length = unit(a, b)
    off = item.offset * LINE
    left = (uy, -ux)
    p, q = ((x + left[0] * off, y + left[1] * off) for x, y in (a, b))
    side = 1.0 if off >= 0 else -1.0
    # End ticks reach from near the measured point to a little beyond the dimension line.
    reach = max(5.0, abs(off) - item.clear * LINE)
    ticks = [
        (
            (x - left[0] * side * reach, y - left[1] * side * reach),
            (x + left[0] * side * 5, y + left[1] * side * 5),
        )
        for x, y in (p, q)
    ]
    sheet.stroke("extension", *ticks)
    sheet.stroke("dimension", (p, q))
    if length > 20:
        sheet.head(q, (ux, uy), "dimension", length)
        sheet.head(p, (-ux, -uy), "dimension", length)
    outward = (left[0] * side, left[1] * side)
    spots = [
        Spot(between(p, q, share), outward, cost)
        for share, cost in ((0.5, 0.0), (0.4, 0.4), (0.6, 0.4))
    ]
    spots += [
        Spot(between(p, q, 0.5), (-outward[0], -outward[1]), 1.0),
        Spot(q, (ux, uy), 3.0),
        Spot(p, (-ux, -uy), 3.0),
    ]
    sheet.label(item.label, spots)


def _angle(sheet: Sheet, item: AngleMark) -> None:
    centre = sheet.at(item.vertex)
    sweep = item.sweep_deg

    def on(radius: float, angle_deg: float) -> Point:
        a = radians(angle_deg)
        return (centre[0] + radius * cos(a), centre[1] - radius * sin(a))

    middle = radians(item.start_deg + sweep / 2)
    way = (round(cos(middle), 6), round(-sin(middle), 6))
    if abs(sweep - 90) < 0.05:
        side = min(item.radius, 0.7) * LINE
        reach = side * 2**0.5
        sheet.stroke(
            "angle",
            (
                on(side, item.start_deg),
                on(reach, item.start_deg + 45),
                on(side, item.start_deg + 90),
            ),
        )
    else:
        # A small angle needs a wide arc to be seen.
        reach = max(item.radius, min(1.1 / radians(sweep), 7.0)) * LINE
        steps = max(2, ceil(sweep / 8))
        sheet.stroke(
            "angle",
            tuple(on(reach, item.start_deg + sweep * n / steps) for n in range(steps + 1)),
        )
    at = on(reach, degrees(middle))
    spots = [Spot(at, way, 0.0)]
    for turn, cost in ((20, 0.8), (-20, 0.8), (40, 2.0), (-40, 2.0)):
        a = middle + radians(turn)
        spots.append(Spot(at, (cos(a), -sin(a)), cost))
    spots.append(Spot(on(reach * 0.55, degrees(middle)), (0.0, 0.0), 0.5 if sweep > 60 else 2.0))
    for end in (item.start_deg, item.start_deg + sweep):
        # Just outside the angle: where a very small one has its label.
        sign = -1 if end == item.start_deg else 1
        a = radians(end + 90 * sign)
        spots.append(Spot(on(reach, end), (round(cos(a), 6), round(-sin(a), 6)), 4.0))
    sheet.label(item.label, spots, gap=3.0)


def _sign(sheet: Sheet, at: Point, size: float, sign: str) -> None:
    if sign:
        x, y = at
        paths: list[tuple[Point, ...]] = [((x - size, y), (x + size, y))]
        if sign == "+":
            paths.append(((x, y - size), (x, y + size)))
        sheet.shapes.append(Stroke(tuple(paths), "sign"))


def _sphere(sheet: Sheet, item: Sphere) -> None:
    centre, radius = sheet.at(item.centre), max(item.radius * sheet.scale, 4.0)
    charge = {"+": "positive", "-": "negative", "": "neutral"}[item.sign]
    sheet.disc(centre, radius, charge)
    _sign(sheet, centre, min(0.5 * radius, 7.0), item.sign)
    spots: list[Spot] = []
    for spot in around(centre):
        (x, y), (ux, uy) = centre, spot.way
        spots.append(Spot((x + ux * radius, y + uy * radius), spot.way, spot.cost))
    sheet.label(item.label, spots)


def _block(sheet: Sheet, item: Block) -> None:
    centre = sheet.at(item.centre)
    path = tuple(sheet.at(corner) for corner in corners(item))
    sheet.stroke("body", path, closed=True)
    half_w, half_h = item.width * sheet.scale / 2, item.height * sheet.scale / 2
    # Fits inside if the box, turned with the block, has room.
    w, h = labels.width(item.label, FONT) / 2, FONT / 2
    c, s = abs(cos(radians(item.angle_deg))), abs(sin(radians(item.angle_deg)))
    if w * c + h * s < half_w - 2 and w * s + h * c < half_h - 2:
        sheet.label(item.label, [Spot(centre, (0.0, 0.0))])
    else:
        up = item.angle_deg + 90
        spots = [
            Spot((centre[0] + cos(radians(up + t)) * r, centre[1] - sin(radians(up + t)) * r),
                 (round(cos(radians(up + t)), 6), round(-sin(radians(up + t)), 6)), cost)
            for t, r, cost in ((0, half_h, 0.0), (90, half_w, 1.5), (-90, half_w, 1.5), (180, half_h, 2.0))
        ]  # fmt: skip
        sheet.label(item.label, spots)
    sheet.rounds.append(Round(centre, min(half_w, half_h), 0.0))


def _surface(sheet: Sheet, item: Surface) -> None:
    a, b = sheet.at(item.start), sheet.at(item.end)
    (ux, uy), length = unit(a, b)
    sheet.stroke("surface", (a, b))
    step = 9.0
    count = max(1, int(length / step))
    inward = (-uy - ux, ux - uy)  # to the right of start to end, slanting back
    marks = []
    for n in range(count):
        x, y = between(a, b, (n + 0.75) / count)
        marks.append(((x, y), (x + inward[0] * 6.5, y + inward[1] * 6.5)))
    sheet.stroke("hatch", *marks)


def _plate(sheet: Sheet, item: Plate) -> None:
    a, b = sheet.at(item.start), sheet.at(item.end)
    (ux, uy), length = unit(a, b)
    thick = 15.0
    out = (-uy * thick, ux * thick)
    path = (a, b, (b[0] + out[0], b[1] + out[1]), (a[0] + out[0], a[1] + out[1]))
    style = {"+": "positive", "-": "negative", "": "neutral"}[item.sign]
    sheet.stroke(style, path, closed=True)
    count = max(2, round(length / (1.7 * LINE)))
    for n in range(count):
        x, y = between(a, b, (n + 0.5) / count)
        _sign(sheet, (x + out[0] / 2, y + out[1] / 2), 4.5, item.sign)
    middle = (out[0] / 2, out[1] / 2)
    ends = [(p[0] + middle[0], p[1] + middle[1]) for p in (a, b)]
    outer = between(path[3], path[2], 0.5)
    spots = [
        Spot(ends[1], (ux, uy), 0.0),
        Spot(ends[0], (-ux, -uy), 0.3),
        Spot(outer, (-uy, ux), 0.6),
    ]
    sheet.label(item.label, spots)


def _text(sheet: Sheet, item: Text) -> None:
    at = sheet.at(item.at)
    ways = {
        "centre": (0.0, 0.0),
        "above": (0.0, -1.0),
        "below": (0.0, 1.0),
        "left": (-1.0, 0.0),
        "right": (1.0, 0.0),
    }
    if item.place == "auto":
        sheet.label(item.text, around(at))
    else:
        sheet.label(item.text, [Spot(at, ways[item.place])], "number" if item.small else "label")


def draw(sheet: Sheet, item: Item) -> None:
    """Put one piece of a figure on the sheet."""
    match item:
        case Arrow():
            _arrow(sheet, item)
        case Segment():
            ends = (sheet.at(item.start), sheet.at(item.end))
            _line(sheet, ends, item.kind, item.label, int(item.arrow), False)
        case Curve():
            points = tuple(sheet.at(point) for point in item.points)
            _line(sheet, points, item.kind, item.label, item.arrows, item.closed)
        case Dimension():
            _dimension(sheet, item)
        case AngleMark():
            _angle(sheet, item)
        case Sphere():
            _sphere(sheet, item)
        case Block():
            _block(sheet, item)
        case Dot():
            centre = sheet.at(item.at)
            radius = item.radius * LINE
            sheet.disc(centre, radius, "dot")
            sheet.label(item.label, around(centre, 45.0), gap=radius + 3)
        case Surface():
            _surface(sheet, item)
        case Plate():
            _plate(sheet, item)
        case Text():
            _text(sheet, item)
