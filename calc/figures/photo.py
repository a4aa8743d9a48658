"""A photocell in its circuit: a lamp, a cathode and a collector without air around them, a meter, a supply."""

from __future__ import annotations

from collections.abc import Sequence

from calc.figures.circuit_pieces import HALF, Symbol, Wire
from calc.figures.figure import Figure
from calc.figures.pieces import Arrow, Curve, Dot, Item, Plate, Text

TUBE = (7.4, 3.2)  # half its width and height
APART = 4.6  # from the middle to an electrode
LOW = -5.6  # where the meter and the supply lie
LAMP = (0.0, 5.6)


def photocell(
    *,
    against: bool = False,
    emits: bool | None = True,
    title: str = "A photocell in its circuit",
    notes: Sequence[str] = (),
) -> Figure:
    """Light falls on the cathode; the supply pulls the electrons to the collector, or `against` it holds them back.

    The positive terminal of the supply is on the left. Without `emits` no electron leaves the
    cathode; None does not tell.
    """
    side = -1.0 if against else 1.0  # of the cathode: at the negative terminal, unless electrons are held back
    wide, high = TUBE
    corners = ((-wide, -high), (wide, -high), (wide, high), (-wide, high), (-wide, -high))
    items: list[Item] = [
        Curve(corners),
        Wire(((-APART - 0.7, 0.0), (-wide - 1.0, 0.0), (-wide - 1.0, LOW), (-4.0 - HALF, LOW))),
        Wire(((-4.0 + HALF, LOW), (4.0 - HALF, LOW))),
        Wire(((4.0 + HALF, LOW), (wide + 1.0, LOW), (wide + 1.0, 0.0), (APART + 0.7, 0.0))),
        Plate((-APART, 1.7), (-APART, -1.7), "+"),
        Plate((APART, -1.7), (APART, 1.7), "-"),
        Text((side * (APART + 0.2), -2.0), "cathode", "below"),
        Text((-side * (APART + 0.2), -2.0), "collector", "below"),
        Dot(LAMP, "", 0.45),
        Text((LAMP[0] - side * 0.9, LAMP[1]), "lamp", "left" if side > 0 else "right"),
        Arrow((side * 0.5, LAMP[1] - 0.6), (side * (APART - 0.05), 1.0), "hf", "velocity", label_at="middle"),
        Symbol("ammeter", (-4.0, LOW)),
        Symbol("battery", (4.0, LOW)),
        Text((4.0 - HALF - 0.2, LOW - 0.2), "+", "below"),
        Text((4.0 + HALF + 0.2, LOW - 0.2), "−", "below"),
    ]
    if emits:
        far = 2.2 if against else -APART + 0.3
        items.append(Arrow((side * (APART - 0.05), -0.7), (side * far, -0.7), "e^{−}", "velocity", label_at="middle"))
    pole, other = ("positive", "negative") if against else ("negative", "positive")
    leaving = "" if emits is None else " No electron leaves it."
    if emits:
        leaving = (
            " Electrons leave it and are slowed down on their way to the collector."
            if against
            else " Electrons leave it and cross to the collector."
        )
    return Figure(
        title,
        f"Light from a lamp falls on the cathode of a tube without air.{leaving} An ammeter and a supply join the two"
        f" outside: the cathode is at the {pole} terminal, the collector at the {other} one.",
        tuple(items),
        tuple(notes),
        unit=1.0,
    )
