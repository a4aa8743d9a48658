"""Bodies of mechanics put on a sheet: ball, trolley, lift, pulley, string, table, slope, spring."""

from __future__ import annotations

from math import acos, atan2, cos, hypot, pi, sin

from calc.figures.bodies import Ball, Cord, Lift, Pulley, Slope, Spring, Table, Trolley
from calc.figures.pieces import AngleMark
from calc.renderings import labels
from calc.renderings.drawing import Disc, Sheet
from calc.renderings.geometry import Point, between, unit
from calc.renderings.spots import FONT, Spot, around, beside


def inside_or_above(sheet: Sheet, label: str, middle: Point, half_w: float, half_h: float) -> None:
    """A label in the middle of an upright box where it fits, else above, at the sides or below it."""
    x, y = middle
    wide, high = labels.width(label, FONT) / 2, sum(labels.room(label)) * FONT / 2
    if wide < half_w - 3 and high < half_h - 1:
        sheet.label(label, [Spot(middle, (0.0, 0.0))])
        return
    sheet.label(
        label,
        [
            Spot((x, y - half_h), (0.0, -1.0)),
            Spot((x + half_w, y), (1.0, 0.0), 1.5),
            Spot((x - half_w, y), (-1.0, 0.0), 1.5),
            Spot((x, y + half_h), (0.0, 1.0), 2.0),
        ],
    )


def rectangle(middle: Point, half_w: float, half_h: float) -> tuple[Point, ...]:
    """The corners of an upright rectangle."""
    x, y = middle
    return (
        (x - half_w, y - half_h),
        (x + half_w, y - half_h),
        (x + half_w, y + half_h),
        (x - half_w, y + half_h),
    )


def ball(sheet: Sheet, item: Ball) -> None:
    """A circle with its name beside it."""
    centre, radius = sheet.at(item.centre), item.radius * sheet.scale
    sheet.disc(centre, radius, "body")
    spots = [Spot((x + ux * radius, y + uy * radius), (ux, uy), cost) for (x, y), (ux, uy), cost, _ in around(centre)]
    sheet.label(item.label, spots)


def trolley(sheet: Sheet, item: Trolley) -> None:
    """A box on two wheels, its name inside where it fits."""
    x, y = sheet.at(item.foot)
    half, high = item.width * sheet.scale / 2, item.height * sheet.scale
    wheel = min(0.19 * high, 0.2 * half)
    body = (high - 2 * wheel) / 2
    middle = (x, y - 2 * wheel - body)
    sheet.stroke("body", rectangle(middle, half, body), closed=True)
    for side in (-0.6, 0.6):
        sheet.disc((x + side * half, y - wheel), wheel, "wheel")
    inside_or_above(sheet, item.label, middle, half, body)


def lift(sheet: Sheet, item: Lift) -> None:
    """A cage with a floor and its cable."""
    x, y = sheet.at(item.centre)
    half_w, half_h = item.width * sheet.scale / 2, item.height * sheet.scale / 2
    sheet.stroke("outline", rectangle((x, y), half_w, half_h), closed=True)
    sheet.stroke("outline", ((x - half_w, y + half_h - 4), (x + half_w, y + half_h - 4)))
    sheet.stroke("string", ((x, y - half_h), (x, y - 1.5 * half_h)))
    sides = [Spot((x + s * half_w, y), (s, 0.0), 0.0 if s > 0 else 0.4) for s in (1.0, -1.0)]
    sheet.label(item.label, sides)


def pulley(sheet: Sheet, item: Pulley) -> None:
    """A wheel with its axle and what holds it."""
    centre, radius = sheet.at(item.centre), item.radius * sheet.scale
    sheet.stroke("outline", (centre, sheet.at(item.hung_from)))
    sheet.disc(centre, radius, "wheel")
    sheet.shapes.append(Disc(centre, 2.6, "dot"))
    spots = [
        Spot((x + ux * radius, y + uy * radius), (ux, uy), cost) for (x, y), (ux, uy), cost, _ in around(centre, 45.0)
    ]
    sheet.label(item.label, spots)


def _touching(end: Point, centre: Point, radius: float, side: int) -> float:
    """Angle on a wheel at which the line from `end` touches it; page angles, y downwards."""
    dx, dy = end[0] - centre[0], end[1] - centre[1]
    away = max(hypot(dx, dy), radius)
    return atan2(dy, dx) + side * acos(radius / away)


def cord(sheet: Sheet, item: Cord) -> None:
    """A string that touches the wheel on both sides and follows it over the top."""
    start, end, centre = sheet.at(item.start), sheet.at(item.end), sheet.at(item.over)
    radius = item.radius * sheet.scale
    side = 1 if start[0] <= end[0] else -1
    first, last = _touching(start, centre, radius, side), _touching(end, centre, radius, -side)
    # Over the top: from the left angles grow (y runs downwards), from the right they shrink.
    turn = (last - first) % (2 * pi) if side > 0 else -((first - last) % (2 * pi))
    arc = [
        (centre[0] + radius * cos(first + turn * n / 16), centre[1] + radius * sin(first + turn * n / 16))
        for n in range(17)
    ]
    sheet.stroke("string", (start, *arc, end))
    legs = sorted(((start, arc[0]), (arc[-1], end)), key=lambda leg: -unit(*leg)[1])
    spots = [*beside(*legs[0], {0.5: 0.0, 0.35: 0.4, 0.65: 0.4}), *beside(*legs[1], {0.5: 1.0})]
    sheet.label(item.label, spots)


def table(sheet: Sheet, item: Table) -> None:
    """A top with two pairs of legs."""
    a, b = sheet.at(item.start), sheet.at(item.end)
    thick, high = 7.0, item.height * sheet.scale
    (ux, _), _ = unit(a, b)
    sheet.stroke("body", (a, b, (b[0], b[1] + thick), (a[0], a[1] + thick)), closed=True)
    for share in (0.08, 0.8):
        x, y = between(a, b, share)
        sheet.stroke("outline", ((x, y + thick), (x, y + high)))
        sheet.stroke("outline", ((x + 5 * ux, y + thick), (x + 5 * ux, y + high)))


def slope(sheet: Sheet, item: Slope) -> AngleMark:
    """Draws the wedge and gives back its angle, to be drawn as any other."""
    foot, top = sheet.at(item.foot), sheet.at(item.top)
    sheet.stroke("body", (foot, (top[0], foot[1]), top), closed=True)
    ends = (0.0, item.angle_deg) if item.base > 0 else (180 - item.angle_deg, 180.0)
    return AngleMark(item.foot, *ends, item.label, 2.6)


def spring(sheet: Sheet, item: Spring) -> None:
    """A zigzag with straight ends."""
    a, b = sheet.at(item.start), sheet.at(item.end)
    (ux, uy), length = unit(a, b)
    lead, high = min(8.0, 0.12 * length), 7.0
    step = (length - 2 * lead) / (2 * item.coils)
    path = [a, (a[0] + ux * lead, a[1] + uy * lead)]
    for n in range(2 * item.coils):
        along, off = lead + (n + 0.5) * step, high if n % 2 else -high
        path.append((a[0] + ux * along - uy * off, a[1] + uy * along + ux * off))
    path += [(b[0] - ux * lead, b[1] - uy * lead), b]
    sheet.stroke("spring", tuple(path))
    out = [
        Spot((m[0] - uy * s * high, m[1] + ux * s * high), (-uy * s, ux * s), cost)
        for share in (0.5, 0.3, 0.7)
        for s, cost in ((-1, 0.0), (1, 0.3))
        for m in [between(a, b, share)]
    ]
    sheet.label(item.label, out)
