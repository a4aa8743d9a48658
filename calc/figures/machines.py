"""A generator or a motor: magnet, coil on an axle, slip rings or a split ring, brushes, and what they are joined to."""

from __future__ import annotations

from math import cos, radians, sin

from calc.figures.circuit_pieces import HALF, Symbol, Wire
from calc.figures.figure import Figure
from calc.figures.pieces import Block, Curve, Item, Point, Segment, Text
from calc.figures.telling import composed

FRONT, BACK = (4.0, 0.8), (3.0, 4.8)  # corners of the coil: half its width, and height on the page
BAND = 0.4  # width of a ring
GAP = 12  # half the gap of a split ring, in degrees
WIRES = 8.2  # from the middle to the wires down
LEAD = 0.7  # from the axle to the ends of the coil


def _arc(middle: Point, radius: float, start: int, end: int) -> list[Point]:
    """Points of an arc, anticlockwise, in degrees."""
    (x, y), steps = middle, 24
    turns = [radians(start + (end - start) * n / steps) for n in range(steps + 1)]
    return [(x + radius * cos(turn), y + radius * sin(turn)) for turn in turns]


def _ring(middle: Point, radius: float) -> list[Item]:
    """A whole ring seen from the front."""
    return [Curve(tuple(_arc(middle, r, 0, 360)), closed=True) for r in (radius, radius - BAND)]


def _halves(middle: Point, radius: float) -> list[Item]:
    """Two halves of a ring, with gaps above and below."""
    made: list[Item] = []
    for start, end in ((90 + GAP, 270 - GAP), (GAP - 90, 90 - GAP)):
        inner = _arc(middle, radius - BAND, start, end)[::-1]
        made.append(Curve((*_arc(middle, radius, start, end), *inner), closed=True))
    return made


def _magnet(side: float, pole: str) -> list[Item]:
    """One pole piece: its front, its top and the face towards the coil."""
    near, far, low, high = 5.2 * side, 9.4 * side, -1.2, 2.8
    back, outer, top, bottom = 4.0 * side, 7.4 * side, 6.0, 3.6
    return [
        Block(((near + far) / 2, (low + high) / 2), 4.2, high - low),
        Curve(((far, high), (near, high), (back, top), (outer, top)), closed=True),
        Curve(((near, low), (near, high), (back, top), (back, bottom)), closed=True),
        Text(((near + far) / 2, (low + high) / 2), pole, "centre"),
    ]


def _joined(left: Point, right: Point, kind: str, low: float) -> list[Item]:
    """Both brushes and the wires from them to a symbol below."""
    made: list[Item] = [Symbol("battery" if kind == "motor" else "lamp", (0.0, low))]
    for (x, y), side in ((left, -1.0), (right, 1.0)):
        made.append(Block((x + 0.45 * side, y), 0.9, 1.0))
        ends = ((x + 0.9 * side, y), (WIRES * side, y), (WIRES * side, low), (HALF * side, low))
        made.append(Wire(ends))
    if kind == "motor":
        made += [Text((-HALF - 0.2, low - 0.2), "+", "below"), Text((HALF + 0.2, low - 0.2), "−", "below")]
    return made


def machine(kind: str, *, named: bool = True, title: str = "A generator and its parts") -> Figure:
    """A coil between two poles on an axle: an "ac" or a "dc" generator that feeds a lamp, or a "motor" on a battery.

    The coil lies along the field and turns anticlockwise, as it does in a motor with the positive terminal on the left.
    With `named` the letters A to D have their words.
    """
    rings = kind == "ac"
    letters = {"A": "magnet", "B": "coil", "C": "slip rings" if rings else "split-ring commutator", "D": "brushes"}
    first, second, radius = ((0.0, -2.6), (0.0, -5.6), 1.3) if rings else ((0.0, -3.0), (0.0, -3.0), 1.6)
    touch = (radius**2 - LEAD**2) ** 0.5
    low = -9.2 if rings else -7.6
    (wide, near), (narrow, far) = FRONT, BACK
    items: list[Item] = [
        *_magnet(-1.0, "N"),
        *_magnet(1.0, "S"),
        Segment((0.0, 6.0), second, "construction"),
        Curve(tuple(_arc((0.0, 6.9), 1.0, -150, 120)), arrows=1),
        Curve(
            (
                (-LEAD, first[1] + touch),
                (-LEAD, near),
                (-wide, near),
                (-narrow, far),
                (narrow, far),
                (wide, near),
                (LEAD, near),
                (LEAD, second[1] + touch),
            ),
            "graph",
        ),
        *((*_ring(first, radius), *_ring(second, radius)) if rings else _halves(first, radius)),
        *_joined((-radius, first[1]), (radius, second[1]), kind, low),
    ]
    spots: dict[str, Text] = {
        "A": Text((-5.7, 6.0), "", "above"),
        "B": Text((-1.8, 2.6), "", "centre"),
        "C": Text((radius + 0.2, first[1]), "", "right") if rings else Text((0.0, first[1] - radius), "", "below"),
        "D": Text((-radius - 2.9, first[1] + 0.1), "", "above"),
    }
    items += [
        Text(spot.at, f"{letter}: {letters[letter]}" if named else letter, spot.place) for letter, spot in spots.items()
    ]
    return composed(title, items, description=_told(kind, letters if named else {}), notes=("Not to scale.",))


def _told(kind: str, letters: dict[str, str]) -> str:
    """The drawing in words."""
    ring = "two whole rings, one for each end" if kind == "ac" else "a ring in two halves, one for each end"
    joined = (
        "a battery, its positive terminal on the left. Seen from the front the coil turns anticlockwise"
        if kind == "motor"
        else "a lamp"
    )
    said = (
        "A coil on an axle turns between the north pole of a magnet on the left and the south pole on the right; its"
        f" plane is parallel to the field. In front {ring} of the coil, touched by a brush on each side. Wires lead"
        f" from the brushes to {joined}."
    )
    if letters:
        return said + "".join(f" {letter} is the {words}." for letter, words in letters.items())
    return f"{said} Letters mark the parts: A at the magnet, B at the coil, C at the ring or rings, D at a brush."
