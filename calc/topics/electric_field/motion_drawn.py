"""Drawings of a charge that moves between plates: let go from rest, and crossing at right angles to the field."""

from __future__ import annotations

from calc.figures import Arrow, Figure, Segment, Sphere, polar
from calc.figures.figure import VELOCITY, Tells
from calc.figures.pieces import Curve, Dimension, Item, Plate, Point, Sign
from calc.figures.vectors import NOT_TO_SCALE
from calc.topics.electric_field.shared import TURNED, follows, words_of

EDGES = "The edges of the plates are ignored."
WIDE, HALF = 6.5, 4.0  # half the plates' length and half their distance, as drawn
RADIUS = 0.6
SIGNS: dict[int, Sign] = {-1: "-", 0: "", 1: "+"}
PLATES = {"up": "upper", "down": "lower"}


def released_figure(name: str, along: str, sign: int, *, forces: bool) -> Figure:
    """The body between the plates; with the force on it and its first velocity when ``forces``."""
    turn = TURNED[along]
    pushed = follows(along, sign)
    push, where = TURNED[pushed], words_of(pushed)
    items = _plates(turn)
    items.append(Sphere((0.0, 0.0), RADIUS, SIGNS[sign], "q" if name == "charged body" else "", shows=("q",)))
    tells: tuple[Tells, ...] = (
        Tells(
            f"Two parallel charged plates; the field E between them points {words_of(along)}.",
            ("E",),
            "Two parallel charged plates.",
        ),
    )
    sentences = [tells[0].sentence, f"The {name} is between the plates."]
    if forces:
        start = polar((0.0, 0.0), RADIUS, push)
        beside = polar(start, 1.3, push + 90.0)
        items += [Arrow(start, polar(start, 2.4, push), "F"), Arrow(beside, polar(beside, 1.7, push), "v", "velocity")]
        moved = (Tells(f"F on it points {where}.", ("F",)), Tells(f"v points {where}.", ("v",)))
        tells += moved
        sentences += [tell.sentence for tell in moved]
    notes = (EDGES, VELOCITY) if forces else (EDGES,)
    title = "Force and velocity of the charge let go" if forces else "A charge in the field between plates"
    return Figure(title, " ".join(sentences), tuple(items), notes, unit=1.0, tells=tells)


def _plates(turn: float) -> list[Item]:
    """Both plates and the field lines between them; ``turn`` is the way of the field, degrees from the right."""

    def place(on: float, across: float) -> Point:
        return polar(polar((0.0, 0.0), on, turn), across, turn + 90.0)

    items: list[Item] = [
        Segment(place(-HALF, off), place(HALF, off), "fieldline", "E" if off == 4.8 else "", arrow=True, shows=("E",))
        for off in (-4.8, -2.4, 2.4, 4.8)
    ]
    items.append(Plate(place(-HALF, WIDE), place(-HALF, -WIDE), "+"))
    items.append(Plate(place(HALF, -WIDE), place(HALF, WIDE), "-"))
    return items


def crossing_figure(upper: Sign, sign: int, bends: str, share: float, edge: bool, *, path: bool) -> Figure:
    """Level plates and the charge that enters from the left; its path with velocities when ``path``.

    share: how much of the free gap it is deflected by, 0 to 1. edge: it enters beside the plate it leaves.
    """
    up = 1 if bends == "up" else -1
    enters = -up * (HALF - 1.0) if edge else 0.0
    items = _plates(270.0 if upper == "+" else 90.0)
    first = -WIDE - 3.4
    items += [
        Sphere((first, enters), RADIUS, SIGNS[sign], shows=("q",)),
        Arrow((first + RADIUS, enters), (first + RADIUS + 2.4, enters), "u", "velocity"),
        Dimension((-WIDE, -HALF - 1.5), (WIDE, -HALF - 1.5), "L", -1.0, 0.3),
    ]
    signs = ("positive", "negative") if upper == "+" else ("negative", "positive")
    plates = f"Upper plate {signs[0]}, lower plate {signs[1]}"
    tells: tuple[Tells, ...] = (Tells(f"{plates}; the field E between them.", ("E",), f"{plates}."),)
    said = f"{tells[0].sentence} From the left the charge enters with velocity u, parallel to the plates."
    if path:
        room = 2 * HALF - 1.6 if edge else HALF - 0.6
        drop = up * max(1.6, min(share, 1.0) * room)
        count = 24
        points = tuple((-WIDE + 2 * WIDE * i / count, enters + drop * (i / count) ** 2) for i in range(count + 1))
        end = points[-1]
        across, down = 3.6, 3.6 * drop / WIDE
        items += [
            Curve(points, "graph"),
            Arrow(end, (end[0] + across, end[1]), "u", "velocity"),
            Arrow(end, (end[0], end[1] + down), "v_y", "velocity"),
            Arrow(end, (end[0] + across, end[1] + down), "v", "velocity"),
        ]
        bent = (
            Tells(f"The path bends towards the {PLATES[bends]} plate.", ("y", "v_y", "theta")),
            Tells(
                f"At the end the velocity v has the part u along the plates and the part v_y {words_of(bends)}.",
                ("v", "v_y", "theta"),
            ),
        )
        tells += bent
        said += " " + " ".join(tell.sentence for tell in bent)
    notes = (NOT_TO_SCALE, EDGES, VELOCITY)
    title = "The path between the plates" if path else "A charge enters between plates"
    return Figure(title, said, tuple(items), notes, unit=1.0, tells=tells)
