"""The pieces of a figure put on a sheet, each with what its label asks for.

`draw(sheet, item)` is the one entry: it turns one piece into strokes, heads
and discs, and queues its label with the places it may take.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable
from math import cos, radians, sin
from typing import Any

from calc.figures.bodies import Ball, Cord, Lift, Pulley, Slope, Spring, Table, Trolley
from calc.figures.circuit_pieces import Junction, Symbol, Wire
from calc.figures.pieces import (
    AngleMark,
    Arrow,
    Block,
    Column,
    Curve,
    Dimension,
    Dot,
    Item,
    Plate,
    Segment,
    Shade,
    Sphere,
    Surface,
    Text,
    Told,
    corners,
)
from calc.renderings import circuit_symbols, labels, marks, mechanics
from calc.renderings.drawing import Sheet, Stroke
from calc.renderings.geometry import Point, between, centroid, unit
from calc.renderings.mechanics import rectangle
from calc.renderings.spots import FONT, LINE, Spot, around, beside


def _line(sheet: Sheet, points: tuple[Point, ...], kind: str, label: str, arrows: int, closed: bool) -> None:
    sheet.stroke(kind, points, closed=closed)
    if arrows:
        sheet.flows.append((points, arrows))
    if label.strip() and points[0] != points[-1]:
        spots: list[Spot] = []
        steps = list(itertools.pairwise(points))
        if len(steps) == 1:
            spots += beside(*steps[0], {0.5: 0.0, 0.4: 0.3, 0.6: 0.3, 0.25: 0.8, 0.75: 0.8, 0.12: 2, 0.88: 2})
        else:
            for share in (0.5, 0.65, 0.35, 0.8, 0.2, 0.95):
                a, b = steps[min(len(steps) - 1, int(share * len(steps)))]
                spots += beside(a, b, {0.5: 3 * abs(share - 0.5)})
        sheet.label(label, spots)


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
            Spot(
                (centre[0] + cos(radians(up + t)) * r, centre[1] - sin(radians(up + t)) * r),
                (round(cos(radians(up + t)), 6), round(-sin(radians(up + t)), 6)),
                cost,
            )
            for t, r, cost in ((0, half_h, 0.0), (90, half_w, 1.5), (-90, half_w, 1.5), (180, half_h, 2.0))
        ]
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


def _dot(sheet: Sheet, item: Dot) -> None:
    centre, radius = sheet.at(item.at), item.radius * LINE
    sheet.disc(centre, radius, "dot")
    sheet.label(item.label, around(centre, 45.0), gap=radius + 3)


def _shade(sheet: Sheet, item: Shade) -> None:
    points = tuple(sheet.at(point) for point in item.points)
    sheet.shapes.append(Stroke((points,), "shade"))
    middle = centroid(points)
    x, y = middle
    # Inside, a little higher or lower where numbers of an axis stand.
    spots = [Spot((x, y + step * LINE), (0.0, 0.0), abs(step)) for step in (0.0, 0.6, -0.6, 1.2, -1.2)]
    spots += [Spot(middle, spot.way, 3.0 + spot.cost) for spot in around(middle)]
    sheet.label(item.label, spots)


def _column(sheet: Sheet, item: Column) -> None:
    (x, y), half = sheet.at(item.foot), item.width * sheet.scale / 2
    high = item.height * sheet.scale
    top = (x, y - high)
    sheet.stroke("column", rectangle((x, y - high / 2), half, high / 2), closed=True)
    sheet.label(item.label, [Spot(top, (0.0, -1.0 if high >= 0 else 1.0))], gap=3.0)


def draw(sheet: Sheet, item: Item) -> None:
    """Put one piece of a figure on the sheet. Raises TypeError for a piece it cannot draw."""
    match item:
        case Segment():
            ends = (sheet.at(item.start), sheet.at(item.end))
            _line(sheet, ends, item.kind, item.label, int(item.arrow), False)
        case Curve():
            points = tuple(sheet.at(point) for point in item.points)
            _line(sheet, points, item.kind, item.label, item.arrows, item.closed)
        case Slope():
            marks.angle(sheet, mechanics.slope(sheet, item))
        case _:
            drawn = DRAWN.get(type(item))
            if drawn is None:
                raise TypeError(f"There is no drawing of a {type(item).__name__}: give it one in shapes.py.")
            drawn(sheet, item)


DRAWN: dict[type[Item], Callable[[Sheet, Any], None]] = {
    Arrow: marks.arrow,
    Told: marks.arrow,
    Dimension: marks.dimension,
    AngleMark: marks.angle,
    Sphere: _sphere,
    Block: _block,
    Dot: _dot,
    Surface: _surface,
    Plate: _plate,
    Text: _text,
    Shade: _shade,
    Column: _column,
    Ball: mechanics.ball,
    Trolley: mechanics.trolley,
    Lift: mechanics.lift,
    Pulley: mechanics.pulley,
    Cord: mechanics.cord,
    Table: mechanics.table,
    Spring: mechanics.spring,
    Symbol: circuit_symbols.symbol,
    Wire: circuit_symbols.wire,
    Junction: circuit_symbols.junction,
}
