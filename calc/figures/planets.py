"""A planet in section with a body at its surface or above it: radius, height, distance from the centre, one arrow."""

from __future__ import annotations

from collections.abc import Sequence

from calc.figures import words
from calc.figures.bodies import Ball
from calc.figures.figure import Figure, Tells
from calc.figures.pieces import Arrow, ArrowKind, Dimension, Dot, Item, Segment, Text
from calc.figures.vectors import names_of

PLANET = 3.4  # drawn radius, in lines
HIGH = 5.6  # of the body above the surface
ROWS = (-4.6, -6.5)  # of the dimension lines


def planet_scene(
    arrow: str = "",
    *,
    kind: ArrowKind = "force",
    above: bool = False,
    shows: tuple[str, ...] = (),
    title: str = "A body near a planet",
    what: str = "planet",
    notes: Sequence[str] = (),
) -> Figure:
    """The planet on the left, the body to the right of its centre: at the surface, or `above` it at the height h.

    `arrow` labels what acts there, always towards the centre; `shows` names the values it tells of besides;
    `what` is what the planet is called.
    """
    place = PLANET + HIGH if above else PLANET
    items: list[Item] = [
        Ball((0.0, 0.0), PLANET),
        Segment((0.0, 0.0), (place, 0.0), "guide"),
        Dot((0.0, 0.0), ""),
        Text((0.0, PLANET), what, "above"),
        Dimension((0.0, 0.0), (PLANET, 0.0), "R", ROWS[0], 0.3),
    ]
    where = f"A body is at the surface of a {what}"
    if above:
        where = f"A body is above the surface of a {what}, at the height h"
        items += [
            Dimension((PLANET, 0.0), (place, 0.0), "h", ROWS[0], 0.3),
            Dimension((0.0, 0.0), (place, 0.0), "r", ROWS[1], 0.3),
        ]
    items.append(Dot((place, 0.0), "", 0.3))
    tells = [Tells(f"{where}; R is measured from the centre of the {what} to its surface.", ())]
    if above:
        tells.append(Tells("The distance r, from the centre to the body, is R and h together.", ()))
    if arrow:
        items.append(Arrow((place - 0.3, 0.0), (place - 2.9, 0.0), arrow, kind, shows=shows, label_at="middle"))
        told = f"{words.plain(arrow)} points from the body towards the centre of the {what}."
        tells.append(Tells(told, names_of(arrow, shows)))
    return Figure(
        title,
        " ".join(one.sentence for one in tells),
        tuple(items),
        ("Not to scale.", *notes),
        unit=1.0,
        tells=tuple(one for one in tells if one.names),
    )
