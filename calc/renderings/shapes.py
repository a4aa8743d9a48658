"""The pieces of a figure put on a sheet, each with what its label asks for.

`draw(sheet, item)` is the one entry: it turns one piece into strokes, heads
and discs, and queues its label with the places it may take.
"""

from __future__ import annotations

import itertools
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
from calc.renderings.drawing import FONT, Sheet, Stroke
from calc.renderings.geometry import Point, between, unit
from calc.renderings.spots import LINE, Spot, around, beside


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
    if arrows:
        sheet.flows.append((points, arrows))
    if label.strip() and points[0] != points[-1]:
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
