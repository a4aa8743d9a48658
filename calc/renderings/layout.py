"""A figure turned into page coordinates: shapes to draw and labels with their places.

`layout(figure)` is what every picture rendering starts from, and what tests
measure. Page units: y downwards, one line of label text is `LINE` high.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass, field
from math import ceil, cos, degrees, hypot, radians, sin

from calc.figures.pieces import (
    AngleMark,
    Arrow,
    Block,
    Curve,
    Dimension,
    Dot,
    Figure,
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
    Box,
    Placed,
    Point,
    Request,
    Round,
    Spot,
    box_at,
    inside,
    place,
)

FONT = 16.0
NOTE_FONT = 13.0
MARGIN = 6.0
THIN = frozenset({"guide", "construction", "fieldline", "extension", "hatch"})
LONG = 5.5 * LINE
WIDEST = 23 * LINE  # wider than this, label text gets too small on a phone
HEAD = {
    "force": (12.0, 5.2), "resultant": (12.0, 5.2), "component": (10.0, 4.2), "field": (11.0, 4.6),
    "velocity": (11.0, 4.8), "axis": (9.0, 3.4), "fieldline": (8.0, 3.6), "dimension": (8.0, 2.8),
}  # fmt: skip  # length and half-width of a head
SHY = {
    "force": 60.0, "resultant": 60.0, "component": 40.0, "field": 60.0, "velocity": 60.0, "axis": 40.0,
    "outline": 40.0, "string": 40.0, "graph": 40.0, "extrapolation": 30.0, "dimension": 40.0,
    "angle": 30.0, "guide": 8.0, "construction": 12.0, "fieldline": 7.0, "hatch": 8.0, "extension": 8.0,
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


@dataclass(frozen=True, slots=True)
class Layout:
    """A figure on the page. `shafts` gives (kind, tail, tip) of each arrow, in item order."""

    view: Box
    scale: float
    shapes: tuple[Shape, ...]
    labels: tuple[Placed, ...]
    shafts: tuple[tuple[str, Point, Point], ...]


@dataclass(slots=True)
class _Sheet:
    """Collects shapes, obstacles and label requests in page units."""

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


def _unit(a: Point, b: Point) -> tuple[Point, float]:
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = hypot(dx, dy)
    return ((dx / length, dy / length), length) if length else ((1.0, 0.0), 0.0)


def _between(a: Point, b: Point, share: float) -> Point:
    return (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share)


def _beside(a: Point, b: Point, shares: dict[float, float]) -> Iterator[Spot]:
    """Spots on both sides of a line; `shares` maps place along it to cost."""
    (ux, uy), _ = _unit(a, b)
    for share, cost in shares.items():
        at = _between(a, b, share)
        yield Spot(at, (uy, -ux), cost, beside=True)
        yield Spot(at, (-uy, ux), cost + 0.2, beside=True)


def _around(at: Point, first_deg: float = 90.0, cost: float = 0.0) -> Iterator[Spot]:
    for turn in (0, 180, 45, -45, 90, -90, 135, -135):
        a = radians(first_deg + turn)
        yield Spot(at, (round(cos(a), 6), round(-sin(a), 6)), cost + abs(turn) / 100)


def _arrow(sheet: _Sheet, item: Arrow) -> None:
    tail, tip = sheet.at(item.start), sheet.at(item.end)
    way, length = _unit(tail, tip)
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
        spots += _beside(tail, tip, {0.5: 0.0, 0.6: 0.3, 0.4: 0.3, 0.75: 1.0, 0.25: 1.2})
    else:
        # A component's head lies where other arrows end: its label goes beside it.
        # A long label beyond a level arrow makes the whole figure wide.
        wide = 0.25 * abs(ux) * labels.width(item.label, FONT) / LINE
        spots = [Spot(tip, way, 4.0 if item.kind == "component" else wide)]
        spots += _beside(tail, tip, {0.9: 1.0, 0.7: 1.5, 0.5: 1.6, 0.3: 3.0})
    for turn in (40, -40):
        a = radians(turn)
        turned = (ux * cos(a) - uy * sin(a), ux * sin(a) + uy * cos(a))
        spots.append(Spot(tip, turned, 1.2 if item.label_at == "tip" else 6.5))
    sheet.label(item.label, spots)


def _line(
    sheet: _Sheet, points: tuple[Point, ...], kind: str, label: str, arrows: int, closed: bool
) -> None:
    sheet.stroke(kind, points, closed=closed)
    lengths = [_unit(a, b)[1] for a, b in itertools.pairwise(points)]
    total = sum(lengths)
    for n in range(arrows):
        goal = total * (n + 1) / (arrows + 1) + 4.0
        for (a, b), length in zip(itertools.pairwise(points), lengths, strict=True):
            if goal <= length and length:
                sheet.head(_between(a, b, goal / length), _unit(a, b)[0], "fieldline", total)
                break
            goal -= length
    if label.strip() and total:
        spots: list[Spot] = []
        steps = list(itertools.pairwise(points))
        if len(steps) == 1:
            spots += _beside(
                *steps[0], {0.5: 0.0, 0.4: 0.3, 0.6: 0.3, 0.25: 0.8, 0.75: 0.8, 0.12: 2, 0.88: 2}
            )
        else:
            for share in (0.5, 0.65, 0.35, 0.8, 0.2, 0.95):
                a, b = steps[min(len(steps) - 1, int(share * len(steps)))]
                spots += _beside(a, b, {0.5: 3 * abs(share - 0.5)})
        sheet.label(label, spots)


def _dimension(sheet: _Sheet, item: Dimension) -> None:
    a, b = sheet.at(item.start), sheet.at(item.end)
    (ux, uy), length = _unit(a, b)
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
        Spot(_between(p, q, share), outward, cost)
        for share, cost in ((0.5, 0.0), (0.4, 0.4), (0.6, 0.4))
    ]
    spots += [
        Spot(_between(p, q, 0.5), (-outward[0], -outward[1]), 1.0),
        Spot(q, (ux, uy), 3.0),
        Spot(p, (-ux, -uy), 3.0),
    ]
    sheet.label(item.label, spots)


def _angle(sheet: _Sheet, item: AngleMark) -> None:
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


def _sign(sheet: _Sheet, at: Point, size: float, sign: str) -> None:
    if sign:
        x, y = at
        paths: list[tuple[Point, ...]] = [((x - size, y), (x + size, y))]
        if sign == "+":
            paths.append(((x, y - size), (x, y + size)))
        sheet.shapes.append(Stroke(tuple(paths), "sign"))


def _sphere(sheet: _Sheet, item: Sphere) -> None:
    centre, radius = sheet.at(item.centre), max(item.radius * sheet.scale, 4.0)
    charge = {"+": "positive", "-": "negative", "": "neutral"}[item.sign]
    sheet.disc(centre, radius, charge)
    _sign(sheet, centre, min(0.5 * radius, 7.0), item.sign)
    spots: list[Spot] = []
    for spot in _around(centre):
        (x, y), (ux, uy) = centre, spot.way
        spots.append(Spot((x + ux * radius, y + uy * radius), spot.way, spot.cost))
    sheet.label(item.label, spots)


def _block(sheet: _Sheet, item: Block) -> None:
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


def _surface(sheet: _Sheet, item: Surface) -> None:
    a, b = sheet.at(item.start), sheet.at(item.end)
    (ux, uy), length = _unit(a, b)
    sheet.stroke("surface", (a, b))
    step = 9.0
    count = max(1, int(length / step))
    inward = (-uy - ux, ux - uy)  # to the right of start to end, slanting back
    marks = []
    for n in range(count):
        x, y = _between(a, b, (n + 0.75) / count)
        marks.append(((x, y), (x + inward[0] * 6.5, y + inward[1] * 6.5)))
    sheet.stroke("hatch", *marks)


def _plate(sheet: _Sheet, item: Plate) -> None:
    a, b = sheet.at(item.start), sheet.at(item.end)
    (ux, uy), length = _unit(a, b)
    thick = 15.0
    out = (-uy * thick, ux * thick)
    path = (a, b, (b[0] + out[0], b[1] + out[1]), (a[0] + out[0], a[1] + out[1]))
    style = {"+": "positive", "-": "negative", "": "neutral"}[item.sign]
    sheet.stroke(style, path, closed=True)
    count = max(2, round(length / (1.7 * LINE)))
    for n in range(count):
        x, y = _between(a, b, (n + 0.5) / count)
        _sign(sheet, (x + out[0] / 2, y + out[1] / 2), 4.5, item.sign)
    middle = (out[0] / 2, out[1] / 2)
    ends = [(p[0] + middle[0], p[1] + middle[1]) for p in (a, b)]
    outer = _between(path[3], path[2], 0.5)
    spots = [
        Spot(ends[1], (ux, uy), 0.0),
        Spot(ends[0], (-ux, -uy), 0.3),
        Spot(outer, (-uy, ux), 0.6),
    ]
    sheet.label(item.label, spots)


def _text(sheet: _Sheet, item: Text) -> None:
    at = sheet.at(item.at)
    ways = {
        "centre": (0.0, 0.0),
        "above": (0.0, -1.0),
        "below": (0.0, 1.0),
        "left": (-1.0, 0.0),
        "right": (1.0, 0.0),
    }
    if item.place == "auto":
        sheet.label(item.text, _around(at))
    else:
        sheet.label(item.text, [Spot(at, ways[item.place])], "number" if item.small else "label")


def _draw(sheet: _Sheet, item: Item) -> None:
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
            sheet.label(item.label, _around(centre, 45.0), gap=radius + 3)
        case Surface():
            _surface(sheet, item)
        case Plate():
            _plate(sheet, item)
        case Text():
            _text(sheet, item)


def _cut(shape: Shape, boxes: list[Box]) -> Shape:
    """A thin line, interrupted where a label stands on it."""
    if not isinstance(shape, Stroke) or shape.style not in THIN:
        return shape
    paths: list[tuple[Point, ...]] = []
    for path in shape.paths:
        current = [path[0]]
        for a, b in itertools.pairwise(path):
            gaps = sorted(gap for box in boxes if (gap := inside(Bar(a, b, 0.0), box)))
            for enter, leave in gaps:
                current.append(_between(a, b, enter))
                paths.append(tuple(current))
                current = [_between(a, b, leave)]
            current.append(b)
        paths.append(tuple(current))
    return Stroke(tuple(p for p in paths if len(p) > 1), shape.style)


def _bounds(shapes: list[Shape], placed: tuple[Placed, ...]) -> Box:
    boxes = [p.box for p in placed]
    for shape in shapes:
        if isinstance(shape, Disc):
            boxes.append(box_at(shape.centre, 2 * shape.radius, 2 * shape.radius))
        else:
            paths = shape.paths if isinstance(shape, Stroke) else (shape.points,)
            for path in paths:
                xs, ys = [p[0] for p in path], [p[1] for p in path]
                boxes.append(Box(min(xs), min(ys), max(xs), max(ys)))
    total = boxes[0]
    for box in boxes:
        total = total.union(box)
    return total


def _notes(figure: Figure, view: Box) -> list[Placed]:
    """Notes set in lines below the drawing, centred."""
    room = max(view.right - view.left, 14 * LINE)
    middle, y = (view.left + view.right) / 2, view.bottom + 10
    lines = []
    for note in figure.notes:
        for line in labels.wrapped(note, NOTE_FONT, room):
            y += NOTE_FONT * 1.3
            at = (middle, y - NOTE_FONT * 0.65)
            box = box_at(at, labels.width(line, NOTE_FONT), NOTE_FONT * 1.2)
            lines.append(Placed(line, "note", at, box))
    return lines


def layout(figure: Figure) -> Layout:
    """Fit the figure to the page and place its labels.

    If drawing and labels are wider than `WIDEST`, long labels are set in two
    lines; if that is not enough, the drawing shrinks, down to 0,6 of its size.
    """
    points = [corner for item in figure.items for corner in corners(item)]
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    low, high = min(y for _, y in points), max(y for _, y in points)
    width, height = (right - left) or 1e-12, (high - low) or 1e-12
    scale = min(figure.width * LINE / width, figure.height * LINE / height)
    if right == left and high == low:
        scale = LINE
    if figure.unit:
        scale = min(scale, figure.unit * LINE)
    smallest = 0.6 * scale
    narrow = False
    while True:
        sheet = _Sheet(scale, (left, high), narrow)
        for item in figure.items:
            _draw(sheet, item)
        placed = place(sheet.requests, sheet.bars, sheet.rounds)
        view = _bounds(sheet.shapes, placed)
        over = (view.right - view.left) - WIDEST
        if over <= 0 or (narrow and scale <= smallest):
            break
        if narrow:
            scale = max(smallest, scale * min(0.9, 1 - over / max(width * scale, over)))
        narrow = True
    boxes = [p.box for p in placed]
    shapes = [_cut(shape, boxes) for shape in sheet.shapes]
    notes = _notes(figure, view)
    for note in notes:
        view = view.union(note.box)
    return Layout(view.grown(MARGIN), scale, tuple(shapes), (*placed, *notes), tuple(sheet.shafts))


__all__ = ["FONT", "NOTE_FONT", "Disc", "Head", "Layout", "Shape", "Stroke", "layout"]
