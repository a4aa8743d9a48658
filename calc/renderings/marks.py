"""Arrows, measured distances and angles put on a sheet."""

from __future__ import annotations

from math import ceil, cos, degrees, radians, sin

from calc.figures.pieces import AngleMark, Arrow, Dimension
from calc.renderings import labels
from calc.renderings.drawing import Sheet
from calc.renderings.geometry import Point, between, unit
from calc.renderings.spots import FONT, LINE, Spot, beside


def arrow(sheet: Sheet, item: Arrow) -> None:
    """An arrow with its head; its label at the tip, or at the middle where that is wanted."""
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
        # Above a level velocity, whichever way it points: below it stands the body.
        ends = (tip, tail) if item.kind == "velocity" and ux < 0 else (tail, tip)
        spots += beside(*ends, {0.5: 0.0, 0.6: 0.3, 0.4: 0.3, 0.75: 1.0, 0.25: 1.2})
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


def dimension(sheet: Sheet, item: Dimension) -> None:
    """A measured distance between two end ticks."""
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
    spots = [Spot(between(p, q, share), outward, cost) for share, cost in ((0.5, 0.0), (0.4, 0.4), (0.6, 0.4))]
    spots += [
        Spot(between(p, q, 0.5), (-outward[0], -outward[1]), 1.0),
        Spot(q, (ux, uy), 3.0),
        Spot(p, (-ux, -uy), 3.0),
    ]
    sheet.label(item.label, spots)


def angle(sheet: Sheet, item: AngleMark) -> None:
    """An arc, or a square for a right angle."""
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
