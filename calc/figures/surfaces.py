"""A body on a level or sloping surface with a rope or a rod at an angle, and a weight on two strings."""

from __future__ import annotations

from math import cos, radians
from typing import NamedTuple

from calc.figures import words
from calc.figures.bodies import Rope
from calc.figures.figure import Figure
from calc.figures.pieces import AngleMark, Block, Dot, Item, LineKind, Point, Segment, Surface, polar

SCHEMATIC = "Not to scale."
BOX = (2.6, 1.8)  # width and height of a drawn body, in lines
LENGTH = 15.0  # of a drawn surface
ROPE = 4.6  # of a rope or rod


class Pulled(NamedTuple):
    """A rope (pull) or a rod (push) at ``angle_deg`` from the surface, 0 to 90, with its label and its angle's."""

    label: str
    angle_deg: float
    push: bool = False
    angle_label: str = "φ"
    back: bool = False  # on the other side: it acts down the slope, or to the left


def rope(pulled: Pulled, centre: Point, tilt: float) -> list[Item]:
    """The rope or rod, and its angle with a line along the surface."""
    front = -1 if pulled.back else 1
    way = tilt if front > 0 else tilt + 180
    turn = pulled.angle_deg * front
    # A pull runs away from the front of the body and upwards; a push comes from behind and above.
    side = way + 180 if pulled.push else way
    run = side - turn if pulled.push else side + turn
    edge = polar(centre, BOX[0] / 2, side)
    far = polar(edge, ROPE, run)
    ends = (far, edge) if pulled.push else (edge, far)
    kind: LineKind = "outline" if pulled.push else "string"
    items: list[Item] = [Rope(*ends, kind, pulled.label, arrow=True)]
    if pulled.angle_deg:
        start, end = sorted((side, run))
        items += [
            Segment(edge, polar(edge, 3.4, side), "guide"),
            AngleMark(edge, start, end, pulled.angle_label, 2.3),
        ]
    return items


def on_surface(
    angle_deg: float = 0.0,
    pulled: Pulled | None = None,
    *,
    label: str = "m",
    angle_label: str = "θ",
    title: str = "A body on a surface",
    description: str = "",
) -> Figure:
    """A box on a surface that rises to the right at ``angle_deg`` (0, level, to below 90).

    Angles are drawn true. Raises ValueError for a slope or a rope that cannot be drawn.
    """
    if not 0 <= angle_deg < 90:
        raise ValueError(f"A slope of {angle_deg}° cannot be drawn: use 0 or more and less than 90.")
    if pulled and not 0 <= pulled.angle_deg <= 90:
        raise ValueError(f"A rope at {pulled.angle_deg}° cannot be drawn: use 0 to 90.")
    foot: Point = (0.0, 0.0)
    surface = Surface(foot, polar(foot, LENGTH, angle_deg))
    centre = polar(polar(foot, LENGTH * (0.5 if not angle_deg else 0.55), angle_deg), BOX[1] / 2, angle_deg + 90)
    items: list[Item] = [surface]
    if angle_deg:
        base = max(LENGTH * cos(radians(angle_deg)), 6.0)
        items = [Segment(foot, (base, 0.0), "guide"), surface, AngleMark(foot, 0.0, angle_deg, angle_label, 3.0)]
    items.append(Block(centre, *BOX, angle_deg, label))
    if pulled:
        items += rope(pulled, centre, angle_deg)
    names = words.names_in(angle_label) if angle_deg else frozenset[str]()
    if pulled and pulled.angle_deg:
        names |= words.names_in(pulled.angle_label)
    return Figure(
        title,
        description or f"{_placed(angle_deg)}{held(pulled, angle_deg)}",
        tuple(items),
        (SCHEMATIC,),
        unit=1.0,
        drawn_from=tuple(sorted(names)),
    )


def _placed(angle_deg: float) -> str:
    if not angle_deg:
        return "A box on a level surface."
    return f"A box on a slope. The slope rises to the right at {words.degrees(angle_deg)} to the horizontal."


def held(pulled: Pulled | None, angle_deg: float) -> str:
    """The rope or rod in words, '' without one."""
    if pulled is None:
        return ""
    acts, noun = ("pushes", "rod") if pulled.push else ("pulls", "rope")
    way = (
        f"{'down' if pulled.back else 'up'} the slope" if angle_deg else f"to the {'left' if pulled.back else 'right'}"
    )
    if not pulled.angle_deg:
        return f" A {noun} labelled {words.plain(pulled.label)} {acts} it {way}, along the surface."
    size = words.degrees(pulled.angle_deg)
    where = f"slanting down at {size} to the surface" if pulled.push else f"at {size} above the surface"
    return f" A {noun} labelled {words.plain(pulled.label)} {acts} it {way}, {where}."


def on_two_strings(
    alpha_deg: float,
    beta_deg: float,
    *,
    labels: tuple[str, str] = ("T_1", "T_2"),
    angle_labels: tuple[str, str] = ("α", "β"),
    load: str = "",
    title: str = "A weight on two strings",
    description: str = "",
) -> Figure:
    """A load that hangs from a knot of two strings, the first to the left, each at its angle above the horizontal.

    Raises ValueError for an angle outside 0 to 90 or two that leave no room.
    """
    if not (0 <= alpha_deg <= 90 and 0 <= beta_deg <= 90) or not 0 < alpha_deg + beta_deg < 180:
        raise ValueError(
            f"Strings at {alpha_deg}° and {beta_deg}°: each lies between 0° and 90°, not both level or upright."
        )
    knot: Point = (0.0, 0.0)
    items: list[Item] = []
    for way, label, mark, ends in (
        (180 - alpha_deg, labels[0], angle_labels[0], (180 - alpha_deg, 180.0)),
        (beta_deg, labels[1], angle_labels[1], (0.0, beta_deg)),
    ):
        end = polar(knot, 9.0, way)
        across = 1.6 if way < 120 else -1.6
        wall = (end[0] - abs(across), end[1]), (end[0] + abs(across), end[1])
        items += [
            Rope(knot, end, "string", label),
            Surface(wall[1], wall[0]),
        ]
        if ends[0] != ends[1]:
            side = 0.0 if label == labels[1] else 180.0
            items += [Segment(knot, polar(knot, 3.0, side), "guide"), AngleMark(knot, *ends, mark, 2.3)]
    items += [Segment(knot, (0.0, -2.4), "string"), Block((0.0, -3.4), 2.6, 2.0, 0.0, load), Dot(knot)]
    said = (
        f"A load hangs from a knot. One string runs up to the left at {words.degrees(alpha_deg)} to the horizontal, the"
        f" other up to the right at {words.degrees(beta_deg)}."
    )
    names = words.names_in(angle_labels[0]) | words.names_in(angle_labels[1])
    return Figure(title, description or said, tuple(items), (SCHEMATIC,), unit=1.0, drawn_from=tuple(sorted(names)))
