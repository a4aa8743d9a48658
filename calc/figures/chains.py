"""A chain of one to three bodies on one surface, tied or touching, with a pulley at an end where one hangs.

Nothing drawn tells whether or which way they move.
"""

from __future__ import annotations

from itertools import pairwise
from math import cos, radians, sin
from typing import NamedTuple

from calc.figures import words
from calc.figures.bodies import Cord, Pulley, Rope, Slope, Table
from calc.figures.connected import over_one_pulley
from calc.figures.figure import Figure, Tells
from calc.figures.pieces import Block, Dimension, Item, Point, Segment, Sign, Sphere, Surface, Text, Told, polar
from calc.figures.surfaces import BOX, ROPE, SCHEMATIC, Pulled, held, rope

GAP = 2.0  # a string between two bodies in tow
ROOM = 2.6  # between the last body and an end of the surface
WHEEL = 0.6
STEEPEST = 70.0
ABOVE = 0.8  # from a body to what is drawn over it
BESIDE, BALL = 2.6, 0.65  # room for a fixed charge, and its radius
TURNED, NAME = 15.0, 1.3  # a box turned further than this has its name over it, and that needs so much


class Acting(NamedTuple):
    """A force along the surface on the body at this place (from 0, left to right), forwards or backwards."""

    place: int
    back: bool = False
    label: str = "F"


class Lying(NamedTuple):
    """A uniform electric field along the surface, forwards or backwards, and the body in it that is charged.

    positive: its sign, None where that is not known.
    """

    place: int
    positive: bool | None
    charge: str = "Q"
    back: bool = False
    label: str = "E"


class Fixed(NamedTuple):
    """A fixed charge beyond the bodies, in line with them, and the body that it acts on; signs 0 where not known."""

    place: int
    body_sign: int
    sign: int
    charge: str = "Q_1"
    back: bool = False
    label: str = "Q"
    distance: str = "r"


def chain(
    angle_deg: float,
    on: tuple[str, ...],
    *,
    touch: bool = False,
    pulled: Pulled | None = None,
    front: str = "",
    back: str = "",
    second: Acting | None = None,
    field: Lying | None = None,
    fixed: Fixed | None = None,
    title: str = "The bodies and what joins them",
) -> Figure:
    """Bodies on a surface that rises to the right at ``angle_deg`` (0 to 70).

    on: their labels from left to right, none for two that hang over one pulley. touch: they touch, no string between.
    pulled: acts on the last, or backwards on the first; a push the other way about. front, back: labels of what hangs
    beyond the right and the left end. second, field: a further force, and a charge in a field, drawn over the bodies.
    fixed: a fixed charge and the body it acts on. Raises ValueError for a slope that cannot be drawn or what hangs at
    its foot.
    """
    if not on:
        return over_one_pulley(labels=(back, front), title=title)
    if not 0 <= angle_deg <= STEEPEST or (back and angle_deg):
        raise ValueError(f"A slope of {angle_deg}° with these bodies cannot be drawn: use 0 to {STEEPEST:g}.")
    step = BOX[0] + (0.0 if touch else GAP)
    lead = ROPE + 0.6 if pulled and pulled.back != pulled.push else ROOM
    tail = ROPE + 0.6 if pulled and pulled.back == pulled.push and not front else ROOM
    roped = _roped(pulled)
    if fixed and fixed.back:
        lead += BESIDE
    elif fixed:
        tail += BESIDE
    length = lead + BOX[0] + step * (len(on) - 1) + tail
    items, centres = _placed(angle_deg, length, [lead + BOX[0] / 2 + step * n for n in range(len(on))])
    if front or back:
        items[:1] = _grounds(angle_deg, length)
    items += [Block(centre, *BOX, angle_deg, label) for centre, label in zip(centres, on, strict=True)]
    if not touch:
        items += [
            Rope(polar(a, BOX[0] / 2, angle_deg), polar(b, -BOX[0] / 2, angle_deg), "string")
            for a, b in pairwise(centres)
        ]
    if front:
        items += _over(polar((0.0, 0.0), length, angle_deg), centres[-1], angle_deg, front, 1)
    if back:
        items += _over((0.0, 0.0), centres[0], 0.0, back, -1)
    if pulled:
        items += rope(pulled, centres[-1 if pulled.back == pulled.push else 0], angle_deg)
    names = words.names_in("θ") if angle_deg else frozenset[str]()
    if pulled and pulled.angle_deg:
        names |= words.names_in(pulled.angle_label)
    marked = field.place if field else fixed.place if fixed else None
    items += _over_bodies(centres, angle_deg, second, field, touch, marked)
    if fixed:
        at = 1.8 if fixed.back else length - 1.8
        items += _beside(centres, polar((0.0, 0.0), at, angle_deg), angle_deg, fixed, second, roped)
    tells = _further(on, angle_deg, second, field) + _near(on, angle_deg, fixed, roped)
    said = _said(angle_deg, on, touch, front, back) + _where(on, pulled, angle_deg)
    return Figure(
        title,
        " ".join((said, *(one.sentence for one in tells))),
        tuple(items),
        (SCHEMATIC,),
        unit=1.0,
        drawn_from=tuple(sorted(names)),
        tells=tells,
    )


def _over_bodies(
    centres: list[Point], angle: float, second: Acting | None, field: Lying | None, touch: bool, marked: int | None
) -> list[Item]:
    """The second force, the sign of the charge and the field, in rows over the bodies and no wider than they are.

    marked: the place of the body over which a sign stands. A pull or push never leans over its body, so nothing here
    crosses one.
    """
    items, half = list[Item](), BOX[0] / 2 - 0.1

    def arrow(first: Point, last: Point, up: float, backwards: bool) -> tuple[Point, Point]:
        ends = (polar(first, -half, angle), polar(last, half, angle))
        start, end = (polar(point, BOX[1] / 2 + up, angle + 90) for point in ends)
        return (end, start) if backwards else (start, end)

    # The sign is written level: on a slope it needs more room.
    needs = 1.6 * sin(radians(angle)) + 0.6 * cos(radians(angle))
    base = over = ABOVE + (NAME if angle > TURNED else 0.0)
    if field:
        sign = field.charge if field.positive is None else f"{field.charge} ({'+' if field.positive else '−'})"
        at = polar(centres[field.place], BOX[1] / 2 + base - 0.5 + needs, angle + 90)
        items.append(Text(at, sign, "centre", shows=tuple(sorted(words.names_in(field.charge)))))
    if second:
        if marked is not None and (touch or marked == second.place):
            over = base + 2 * needs - 0.1
        centre = centres[second.place]
        items.append(Told(*arrow(centre, centre, over, second.back), second.label, label_at="middle"))
    if field:
        over = max(over + 1.9 if second else 0.0, base + 2 * needs)
        for row, label in ((0.0, ""), (1.0, field.label)):
            ends = arrow(centres[0], centres[-1], over + row, field.back)
            shows = tuple(sorted(words.names_in(field.label)))
            items.append(Told(*ends, label, "field", label_at="middle", shows=shows))
    return items


def _roped(pulled: Pulled | None) -> int:
    """On which side a rope or rod leaves the bodies: in front (+1), behind, or none."""
    if not pulled:
        return 0
    return -1 if pulled.back != pulled.push else 1


def _beside(
    centres: list[Point], foot: Point, angle: float, fixed: Fixed, second: Acting | None, roped: int
) -> list[Item]:
    """The fixed charge on its stand, the sign of the body's charge, and the distance over them where there is room."""
    at, body = polar(foot, BOX[1] / 2, angle + 90), centres[fixed.place]
    sign: Sign = "" if not fixed.sign else "+" if fixed.sign > 0 else "-"
    items: list[Item] = [
        Segment(foot, polar(foot, BOX[1] / 2 - BALL, angle + 90), "outline"),
        Sphere(at, BALL, sign, fixed.label, shows=tuple(sorted(words.names_in(fixed.label)))),
    ]
    needs = 1.6 * sin(radians(angle)) + 0.6 * cos(radians(angle))
    base = ABOVE + (NAME if angle > TURNED else 0.0)
    written = fixed.charge + (f" ({'+' if fixed.body_sign > 0 else '−'})" if fixed.body_sign else "")
    over = polar(body, BOX[1] / 2 + base - 0.5 + needs, angle + 90)
    items.append(Text(over, written, "centre", shows=tuple(sorted(words.names_in(fixed.charge)))))
    if roped == (-1 if fixed.back else 1):
        return items
    height = BOX[1] / 2 + base + 2 * needs + (1.9 if second else 0.0)
    left, right = sorted((body, at))
    items.append(Dimension(left, right, fixed.distance, height, height - 0.5))
    return items


def _near(on: tuple[str, ...], angle: float, fixed: Fixed | None, roped: int) -> tuple[Tells, ...]:
    """The fixed charge and the body's charge in words."""
    if not fixed:
        return ()
    where = "further down than" if fixed.back else "further up than"
    if not angle:
        where = "to the left of" if fixed.back else "to the right of"
    who, name = words.plain(on[fixed.place]), words.plain(fixed.label)
    charge, distance = words.plain(fixed.charge), words.plain(fixed.distance)
    said = f"A ball labelled {name} stands {where} the bodies, in line with them: a fixed charge."
    if roped != (-1 if fixed.back else 1):
        said += f" Its distance from {who} is marked {distance}."
    found = [Tells(said, ())]
    for sign, label, whose in (
        (fixed.sign, fixed.label, f"The fixed charge {name}"),
        (fixed.body_sign, fixed.charge, f"The charge {charge} of {who}"),
    ):
        if sign:
            kind = "positive" if sign > 0 else "negative"
            found.append(Tells(f"{whose} is {kind}.", tuple(sorted(words.names_in(label)))))
    return tuple(found)


def _further(on: tuple[str, ...], angle: float, second: Acting | None, field: Lying | None) -> tuple[Tells, ...]:
    """The second force, the field and the charge in words."""

    def way(backwards: bool) -> str:
        if angle:
            return "down the slope" if backwards else "up the slope"
        return "to the left" if backwards else "to the right"

    found = list[Tells]()
    if second:
        who, name = words.plain(on[second.place]), words.plain(second.label)
        said = f"An arrow labelled {name} over {who} points {way(second.back)}: a second force on {who}."
        found.append(Tells(said, tuple(sorted(words.names_in(second.label)))))
    if field:
        name = words.plain(field.label)
        said = f"Parallel arrows labelled {name} point {way(field.back)}: a uniform electric field along the surface."
        found.append(Tells(said, tuple(sorted(words.names_in(field.label)))))
    if field and field.positive is not None:
        sign = "positive" if field.positive else "negative"
        said = f"The charge {words.plain(field.charge)} of {words.plain(on[field.place])} is {sign}."
        found.append(Tells(said, tuple(sorted(words.names_in(field.charge)))))
    return tuple(found)


def _placed(angle: float, length: float, places: list[float]) -> tuple[list[Item], list[Point]]:
    """The surface and the middles of the bodies."""
    foot: Point = (0.0, 0.0)
    ground: Item = Surface(foot, (length, 0.0))
    if angle:
        ground = Slope(foot, length * cos(radians(angle)), angle, "θ")
    return [ground], [polar(polar(foot, place, angle), BOX[1] / 2, angle + 90) for place in places]


def _grounds(angle: float, length: float) -> list[Item]:
    """The surface where bodies hang beyond its ends."""
    if angle:
        return [Slope((0.0, 0.0), length * cos(radians(angle)), angle, "θ")]
    return [Table((0.0, 0.0), (length, 0.0), 7.0)]


def _over(end: Point, centre: Point, angle: float, label: str, way: int) -> list[Item]:
    """A pulley beyond an end of the surface, the string over it, and what hangs; way −1: at the left."""
    wheel = polar(polar(end, way * 1.1 / cos(radians(angle)), angle), BOX[1] / 2 - WHEEL, angle + 90)
    start = polar(centre, way * BOX[0] / 2, angle)
    hook: Point = (wheel[0] + way * WHEEL, wheel[1] - 3.4)
    return [
        Pulley(wheel, WHEEL, end),
        Cord(start, hook, wheel, WHEEL),
        Block((hook[0], hook[1] - 0.9), 2.2, 1.8, 0.0, label),
    ]


def _said(angle: float, on: tuple[str, ...], touch: bool, front: str, back: str) -> str:
    """What stands where."""
    plain = [words.plain(one) for one in on]
    boxes = f"Box {plain[0]} stands" if len(on) == 1 else f"Boxes {', '.join(plain)} stand, from left to right,"
    ground = f"a slope that rises to the right at {words.degrees(angle)} (marked θ)" if angle else "a level surface"
    said = [f"{boxes} on {ground}."]
    if len(on) > 1:
        said.append("They touch." if touch else "A string joins each to the next.")
    if front:
        where = "the top" if angle else "the right edge"
        said.append(
            f"A string runs from {plain[-1]} over a pulley at {where} to box {words.plain(front)}, which hangs."
        )
    if back:
        said.append(
            f"A string runs from {plain[0]} over a pulley at the left edge to box {words.plain(back)}, which hangs."
        )
    return " ".join(said)


def _where(on: tuple[str, ...], pulled: Pulled | None, angle: float) -> str:
    """The rope or rod, by the name of the body it acts on."""
    if not pulled:
        return ""
    body = on[-1 if pulled.back == pulled.push else 0]
    return held(pulled, angle).replace(" it ", f" {words.plain(body)} ", 1)
