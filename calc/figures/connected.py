"""Bodies tied to each other or pushed together: on the level, over a table's edge, over a slope's top, over one pulley,
and in a lift. Nothing drawn tells which way they move."""

from __future__ import annotations

from math import cos, radians, tan

from calc.figures import words
from calc.figures.bodies import Cord, Lift, Pulley, Rope, Slope, Table
from calc.figures.figure import Figure
from calc.figures.pieces import Block, Item, Point, Segment, Surface, polar

SCHEMATIC = "Not to scale."
FIRST, SECOND = "m_1", "m_2"
BOX = (2.8, 2.0)


def in_a_row(
    *, pushed: bool, labels: tuple[str, str] = (FIRST, SECOND), title: str = "Two bodies on the level"
) -> Figure:
    """Two boxes on a floor: the second on the right pulled by P with a string to the first; or pushed together, P
    pushing the first from the left."""
    gap = 0.0 if pushed else 3.4
    first: Point = (5.0, BOX[1] / 2)
    second: Point = (first[0] + BOX[0] + gap, BOX[1] / 2)
    items: list[Item] = [
        Surface((0.0, 0.0), (second[0] + 6.2, 0.0)),
        Block(first, *BOX, 0.0, labels[0]),
        Block(second, *BOX, 0.0, labels[1]),
    ]
    if pushed:
        edge = first[0] - BOX[0] / 2
        items.append(Rope((edge - 3.4, first[1]), (edge, first[1]), "outline", "P", arrow=True))
        said = "Two boxes touch on a level floor, m1 on the left. A rod labelled P pushes m1 to the right, against m2."
    else:
        items.append(Rope((first[0] + BOX[0] / 2, first[1]), (second[0] - BOX[0] / 2, first[1]), "string"))
        edge = second[0] + BOX[0] / 2
        items.append(Rope((edge, first[1]), (edge + 3.8, first[1]), "string", "P", arrow=True))
        said = (
            "Two boxes on a level floor, m1 on the left, joined by a string. A rope labelled P pulls m2 to the right."
        )
    return Figure(title, said, tuple(items), (SCHEMATIC,), unit=1.0)


def over_an_edge(*, labels: tuple[str, str] = (FIRST, SECOND), title: str = "Over the edge of a table") -> Figure:
    """A box on a table, tied over a pulley at the right edge to one that hangs."""
    height = 7.4
    wheel: Point = (12.9, 0.3)
    middle = wheel[1] + 0.7
    items: list[Item] = [
        Table((0.0, 0.0), (12.0, 0.0), height),
        Pulley(wheel, 0.7, (12.0, -0.3)),
        Block((4.4, middle), BOX[0], 2 * middle, 0.0, labels[0]),
        Cord((4.4 + BOX[0] / 2, middle), (wheel[0] + 0.7, -3.0), wheel, 0.7),
        Block((wheel[0] + 0.7, -4.0), 2.4, 2.0, 0.0, labels[1]),
    ]
    said = "Box m1 stands on a level table. A string runs from it over a pulley at the edge to box m2, which hangs."
    return Figure(title, said, tuple(items), (SCHEMATIC,), unit=1.0)


def over_the_top(
    angle_deg: float, *, labels: tuple[str, str] = (FIRST, SECOND), title: str = "Over the top of a slope"
) -> Figure:
    """A box on a slope that rises to the right, tied over a pulley at the top to one that hangs.

    The angle is drawn true; raises ValueError for one that leaves no room (5 to 70).
    """
    if not 4 <= angle_deg <= 72:
        raise ValueError(f"A slope of {angle_deg}° cannot be drawn: use 4 to 72.")
    base = min(11.0, 8.5 / tan(radians(angle_deg)))
    slope = Slope((0.0, 0.0), base, angle_deg, "θ")
    top, half = slope.top, 0.9
    wheel = polar(polar(top, 1.1 / cos(radians(angle_deg)), angle_deg), half - 0.7, angle_deg + 90)
    box = slope.place(0.45, half)
    start = polar(box, 1.3, angle_deg)
    hook: Point = (wheel[0] + 0.7, wheel[1] - 4.4)
    items: list[Item] = [
        slope,
        Pulley(wheel, 0.7, top),
        Block(box, 2.6, 2 * half, angle_deg, labels[0]),
        Cord(start, hook, wheel, 0.7),
        Block((hook[0], hook[1] - 1.0), 2.2, 2.0, 0.0, labels[1]),
    ]
    said = (
        f"Box m1 stands on a slope that rises to the right at {words.degrees(angle_deg)} (marked θ). A string runs from"
        " it, parallel to the slope, over a pulley at the top to box m2, which hangs."
    )
    return Figure(title, said, tuple(items), (SCHEMATIC,), unit=1.0, drawn_from=("theta",))


def over_one_pulley(*, labels: tuple[str, str] = (FIRST, SECOND), title: str = "Over one pulley") -> Figure:
    """Two boxes that hang from one string over a pulley, side by side, the first on the left."""
    wheel: Point = (0.0, 0.0)
    items: list[Item] = [
        Surface((2.6, 2.6), (-2.6, 2.6)),
        Pulley(wheel, 1.4, (0.0, 2.6)),
        Cord((-1.4, -4.4), (1.4, -4.4), wheel, 1.4),
        Block((-1.4, -5.4), 2.4, 2.0, 0.0, labels[0]),
        Block((1.4, -5.4), 2.4, 2.0, 0.0, labels[1]),
    ]
    said = "Two boxes hang from one string over a fixed pulley, m1 on the left and m2 on the right, at the same height."
    return Figure(title, said, tuple(items), (SCHEMATIC,), unit=1.0)


def in_a_lift(*, hangs: bool, label: str = "m", title: str = "In the lift") -> Figure:
    """A lift with a box on its floor, or one that hangs from its ceiling on a string."""
    items: list[Item] = [Lift((0.0, 0.0), 7.0, 8.0)]
    if hangs:
        items += [Segment((0.0, 4.0), (0.0, 0.6), "string"), Block((0.0, -0.5), 2.6, 2.2, 0.0, label)]
        said = "A lift; a box labelled m hangs on a string from its ceiling."
    else:
        items.append(Block((0.0, -2.66), 2.6, 2.2, 0.0, label))
        said = "A lift; a box labelled m stands on its floor."
    return Figure(title, said, tuple(items), (SCHEMATIC,), unit=1.0)
