"""Coils in a magnetic field: seen edge-on between field lines, with the normal and its angle."""

from __future__ import annotations

from calc.figures.figure import Figure
from calc.figures.pieces import AngleMark, Arrow, Block, Curve, Item, Segment, Text, polar
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

    `moves` is "towards", "away" or "still". With `answer` the end of the coil next to the magnet has its pole, and the
    front wires carry arrows: down where the right-hand end is a north pole, up where it is a south pole.
    """
    turn = 1.0 if side == "right" else -1.0
    near, far = 6.4 * turn, 13.6 * turn
    middle = (near + far) / 2
    wires = [(-3.6 + 1.8 * n, 1.7) for n in range(5)]
    pole = end_pole(facing, moves)
    down = pole and (pole == "N") == (side == "right")
    items: list[Item] = [Block((0.0, 0.0), 9.6, 3.4, 0.0, "")]
    for x, high in wires:
        ends = ((x + 0.4, high), (x - 0.4, -high))
        first, last = ends if down or not pole else ends[::-1]
        items.append(Segment(first, last, "graph", arrow=bool(answer and pole)))
    items += [
        Text((0.0, -1.7), "coil", "below"),
        Block((middle, 0.0), 7.2, 2.4),
        Segment((middle, -1.2), (middle, 1.2), "outline"),
        Text(((near + middle) / 2, 0.0), facing, "centre"),
        Text(((far + middle) / 2, 0.0), "S" if facing == "N" else "N", "centre"),
    ]
    if moves != "still":
        way = -turn if moves == "towards" else turn
        items.append(Arrow((middle - 1.6 * way, 2.3), (middle + 1.6 * way, 2.3), "v", "velocity"))
    if answer and pole:
        items.append(Text((4.8 * turn, 1.9), pole, "above"))
    motion = {"towards": "It moves towards the coil.", "away": "It moves away from the coil.", "still": "It rests."}
    said = [
        f"A bar magnet is on the {side} of a coil, with its {POLES[facing]} pole next to the coil.",
        motion[moves],
    ]
    if answer and pole:
        said.append(
            f"The end of the coil next to the magnet is marked {pole}. Arrows on the front wires point"
            f" {'down' if down else 'up'}."
        )
    return composed(title, items, description=" ".join(said), notes=("The front wires of the coil are drawn.",))


POLES = {"N": "north", "S": "south"}


def end_pole(facing: str, moves: str) -> str:
    """The pole of the end of the coil next to the magnet: it repels one that comes, attracts one that goes."""
    if moves == "still":
        return ""
    return facing if moves == "towards" else ("S" if facing == "N" else "N")


def machine(kind: str, *, named: bool = True, title: str = "A generator and its parts") -> Figure:
    """A coil between two poles on an axle, with what joins it to the circuit: ``kind`` "rings" or "split".

    With `named` the letters A to D have their words.
    """
    joint = "slip rings" if kind == "rings" else "split-ring commutator"
    letters = {"A": "magnet", "B": "coil", "C": joint, "D": "brushes"}
    items: list[Item] = [
        Block((-6.6, 3.6), 3.6, 5.2),
        Block((6.6, 3.6), 3.6, 5.2),
        Text((-6.6, 3.6), "N", "centre"),
        Text((6.6, 3.6), "S", "centre"),
        Curve(
            ((-0.7, -1.6), (-0.7, 0.8), (-3.2, 0.8), (-3.2, 6.4), (3.2, 6.4), (3.2, 0.8), (0.7, 0.8), (0.7, -1.6)),
            "graph",
        ),
    ]
    if kind == "rings":
        items += [
            Block((0.0, -1.6), 4.0, 0.7),
            Block((0.0, -3.0), 4.0, 0.7),
            Segment((0.7, -1.6), (0.7, -3.0), "graph"),
        ]
        brushes = ((-2.6, -1.6), (2.6, -3.0))
    else:
        items += [Block((-1.15, -2.2), 1.9, 1.4), Block((1.15, -2.2), 1.9, 1.4)]
        brushes = ((-2.7, -2.2), (2.7, -2.2))
    for x, y in brushes:
        out = 1.0 if x > 0 else -1.0
        items += [Block((x, y), 1.0, 0.6), Segment((x + 0.5 * out, y), (6.0 * out, y), "graph")]
    places = {
        "A": (-6.6, 6.2),
        "B": (0.0, 6.4),
        "C": (0.0, -3.4 if kind == "rings" else -2.9),
        "D": (brushes[1][0], brushes[1][1] + 0.3),
    }
    sides = {"A": "above", "B": "above", "C": "below", "D": "above"}
    for letter, at in places.items():
        items.append(Text(at, f"{letter}: {letters[letter]}" if named else letter, sides[letter]))  # type: ignore[arg-type]
    said = (
        "A coil on an axle turns between the north pole of a magnet on the left and the south pole on the right. Below,"
        + (
            " two whole rings, one for each end of the coil,"
            if kind == "rings"
            else " a ring in two halves, one for each end of the coil,"
        )
        + " are touched by a brush on each side, from which wires lead away."
    )
    told = (
        " ".join(f"{letter} is the {words}." for letter, words in letters.items())
        if named
        else ("Letters mark the parts: A at the magnet, B at the coil, C at the ring or rings, D at a brush.")
    )
    return composed(title, items, description=f"{said} {told}", notes=("Seen from above; not to scale.",))
