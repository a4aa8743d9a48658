"""Coils: one seen edge-on between field lines, with the normal and its angle; one that a bar magnet comes to."""

from __future__ import annotations

from calc.figures.circuit_pieces import HALF as HALF_SYMBOL
from calc.figures.circuit_pieces import Symbol
from calc.figures.figure import Figure
from calc.figures.pieces import AngleMark, Arrow, Block, Item, Segment, Text, polar
from calc.figures.telling import composed

HALF = 4.2  # of the coil seen edge-on, in lines
NORMAL = 5.6
ROWS = (-5.2, -2.6, 2.6, 5.2)  # of the field lines


def _coil(theta: float, label: str, after: bool) -> list[Item]:
    """The coil with its normal at `theta` degrees from the field; a later position is dashed."""
    return [
        Segment(
            polar((0.0, 0.0), HALF, theta - 90),
            polar((0.0, 0.0), HALF, theta + 90),
            "extrapolation" if after else "graph",
            "" if after else "coil",
        ),
        Segment((0.0, 0.0), polar((0.0, 0.0), NORMAL, theta), "construction", label),
    ]


def coil_in_field(
    theta: float,
    label: str = "θ",
    *,
    after: float | None = None,
    after_label: str = "",
    plane: str = "",
    shows: tuple[str, ...] = (),
    title: str = "A coil in a magnetic field",
) -> Figure:
    """A coil seen edge-on in a field to the right; its normal makes `theta` degrees with the field.

    `label` and `plane` name the angles of the field with the normal and with the coil ('' for none); `after` is a later
    angle of the normal, drawn dashed. `shows` names values that the drawing tells of.
    """
    items: list[Item] = [Arrow((-7.0, y), (7.0, y), "B" if y == ROWS[-1] else "", "field") for y in ROWS]
    items += _coil(theta, "normal", False)
    items.append(Segment((0.0, 0.0), (6.6, 0.0), "construction"))
    if label and theta:
        items.append(AngleMark((0.0, 0.0), 0.0, theta, label, 2.0, shows=shows))
    if plane and theta < 90:
        items.append(AngleMark((0.0, 0.0), theta - 90, 0.0, plane, 1.8, shows=shows))
    if after is not None:
        items += _coil(after, "normal afterwards", True)
        if after and after_label:
            items.append(AngleMark((0.0, 0.0), 0.0, after, after_label, 3.4, shows=shows))
    said = ["A coil is seen edge-on in a magnetic field B that points to the right; a line marks its normal."]
    said += [f"The angle {label} lies between the field and the normal."] if label and theta else []
    said += [f"The angle {plane} lies between the field and the coil."] if plane and theta < 90 else []
    said += ["Dashed: the coil afterwards, turned."] if after is not None else []
    return composed(title, items, description=" ".join(said), notes=("The coil is seen edge-on.",), drawn_from=shows)


def magnet_and_coil(
    facing: str,
    moves: str,
    side: str,
    *,
    answer: bool = False,
    title: str = "A magnet and a coil",
) -> Figure:
    """A bar magnet with its ``facing`` pole ("N" or "S") towards a coil, on one ``side`` of it.

    `moves` is "towards", "away" or "still". With `answer` the ends of the coil have their poles, and the front wires
    carry arrows: down where the right-hand end is a north pole, up where it is a south pole. The coil is wound so that
    a current down the front leaves by the lead on the left.
    """
    turn = 1.0 if side == "right" else -1.0
    near, far = 6.8 * turn, 14.0 * turn
    middle = (near + far) / 2
    wires = [(-3.6 + 1.8 * n, 1.7) for n in range(5)]
    pole = end_pole(facing, moves)
    down = pole and (pole == "N") == (side == "right")
    flows = bool(answer and pole)
    items: list[Item] = [
        Block((0.0, 0.0), 9.6, 3.4, 0.0, ""),
        *_circuit("" if not flows else "right" if down else "left"),
    ]
    for x, high in wires:
        ends = ((x + 0.4, high), (x - 0.4, -high))
        first, last = ends if down or not pole else ends[::-1]
        items.append(Segment(first, last, "graph", arrow=flows))
    items += [
        Text((0.0, -1.7), "coil", "below"),
        Block((middle, 0.0), 7.2, 2.4),
        Segment((middle, -1.2), (middle, 1.2), "outline"),
        Text(((near + middle) / 2, 0.0), facing, "centre"),
        Text(((far + middle) / 2, 0.0), OTHER[facing], "centre"),
    ]
    if moves != "still":
        way = -turn if moves == "towards" else turn
        items.append(Arrow((middle - 1.6 * way, 2.3), (middle + 1.6 * way, 2.3), "v", "velocity"))
    if flows:
        items += [Text((5.8 * turn, 0.0), pole, "centre"), Text((-5.8 * turn, 0.0), OTHER[pole], "centre")]
    motion = {"towards": "It moves towards the coil.", "away": "It moves away from the coil.", "still": "It rests."}
    said = [
        f"A bar magnet is on the {side} of a coil, with its {POLES[facing]} pole next to the coil.",
        motion[moves],
    ]
    if flows:
        said.append(
            f"The end of the coil next to the magnet is marked {pole}. Arrows on the front wires point"
            f" {'down' if down else 'up'}; in the ammeter the current flows to the {'right' if down else 'left'}."
        )
    return composed(title, items, description=" ".join(said), notes=("The front wires of the coil are drawn.",))


def _circuit(way: str) -> list[Item]:
    """The leads of the coil to an ammeter below it, with the `way` of the current in the meter, "" for none."""
    low, out = -5.0, 4.4
    corners = [(-out, -1.7), (-out, low), (-HALF_SYMBOL, low), (HALF_SYMBOL, low), (out, low), (out, -1.7)]
    ends = [(corners[0], corners[1]), (corners[4], corners[5])]
    if way == "left":
        ends = [(last, first) for first, last in ends]
    return [
        *(Segment(first, last, "outline", arrow=bool(way)) for first, last in ends),
        Segment(corners[1], corners[2], "outline"),
        Segment(corners[3], corners[4], "outline"),
        Symbol("ammeter", (0.0, low)),
    ]


POLES = {"N": "north", "S": "south"}
OTHER = {"N": "S", "S": "N"}


def end_pole(facing: str, moves: str) -> str:
    """The pole of the end of the coil next to the magnet: it repels one that comes, attracts one that goes."""
    if moves == "still":
        return ""
    return facing if moves == "towards" else OTHER[facing]
