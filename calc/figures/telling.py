"""What each piece of a drawing is, in words, for the text alternative."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import atan2, degrees

from calc.figures import bodies, circuit_pieces, words
from calc.figures.figure import VELOCITY, Figure, Tells
from calc.figures.pieces import (
    AngleMark,
    Arrow,
    Block,
    Column,
    Curve,
    Dimension,
    Dot,
    Item,
    Plate,
    Segment,
    Shade,
    Sphere,
    Surface,
    Text,
)

ARROWS = {
    "force": "force arrow",
    "field": "field arrow (open head)",
    "component": "dashed component arrow",
    "resultant": "dashed resultant arrow",
    "velocity": "velocity arrow (hollow head)",
    "axis": "axis",
}
SIGNS = {"+": "positive ", "-": "negative ", "": ""}
LINES = {
    "outline": "",
    "string": "string",
    "guide": "",
    "construction": "",
    "fieldline": "field line",
    "graph": "line",
    "extrapolation": "dashed line",
    "tick": "",
}


def _named(kind: str, label: str) -> str:
    article = "an" if kind[0] in "aeio" else "a"
    return f"{article} {kind}" + (f" labelled {words.plain(label)}" if label.strip() else "")


def _way(item: Arrow | Surface) -> str:
    (x, y), (x2, y2) = item.start, item.end
    return words.direction(degrees(atan2(y2 - y, x2 - x)))


def _surface(item: Surface) -> str:
    dx, dy = item.end[0] - item.start[0], item.end[1] - item.start[1]
    if abs(dy) < 1e-9 * abs(dx):
        return "a floor" if dx > 0 else "a ceiling"
    if abs(dx) < 1e-9 * abs(dy):
        return "a wall"
    return f"a slope, {_way(item)}"


def tell(item: Item) -> str:
    """The piece as a noun phrase; "" for lines that only help the eye.

    Raises TypeError for a piece it has no words for.
    """
    match item:
        case Arrow(kind="axis", label=label):
            return _named("axis", label)
        case Arrow(label=label):
            return f"{_named(ARROWS[item.kind], label)}, {_way(item)}"
        case Sphere(sign=sign, label=label):
            return _named({"+": "positive sphere", "-": "negative sphere", "": "sphere"}[sign], label)
        case Segment(label=label) | Curve(label=label):
            noun = LINES[item.kind] or ("line" if label.strip() else "")
            return _named(noun, label) if noun else ""
        case Plate(label=label):
            return _named(f"{SIGNS[item.sign]}plate", label)
        case Surface():
            return _surface(item)
        case AngleMark(label=label):
            return f"the angle {words.plain(label)}" if label.strip() else "a right angle"
        case Dimension(label=label):
            return _named("distance", label)
        case Text(text=text):
            return f"the words {words.plain(text)}" if not item.small else ""
        case bodies.Slope(angle_deg=angle, label=label):
            side = "right" if item.base > 0 else "left"
            marked = f" (marked {words.plain(label)})" if label.strip() else ""
            return f"a slope that rises to the {side} at {words.degrees(angle)}{marked}"
        case bodies.Table():
            return "a table"
        case bodies.Cord(label=label):
            return f"{_named('string', label)} over the pulley"
        case circuit_pieces.Symbol(label=label):
            return _named(circuit_pieces.NOUNS[item.kind], label)
        case circuit_pieces.Wire() | circuit_pieces.Junction():
            return ""
        case _:
            if type(item) not in NOUNS:
                raise TypeError(f"There are no words for a {type(item).__name__}: give it some in telling.py.")
            return _named(NOUNS[type(item)], getattr(item, "label", ""))


NOUNS: dict[type[Item], str] = {
    Dot: "dot",
    Block: "box",
    Column: "bar",
    Shade: "shaded area",
    bodies.Ball: "ball",
    bodies.Trolley: "trolley",
    bodies.Lift: "lift",
    bodies.Pulley: "fixed pulley",
    bodies.Spring: "spring",
}


def composed(
    title: str,
    items: Sequence[Item],
    *,
    opening: str = "",
    description: str = "",
    notes: Sequence[str] = (),
    drawn_from: tuple[str, ...] = (),
) -> Figure:
    """Your own drawing of any pieces, in lines of label text, with its words written.

    `opening` is a sentence to begin with. A velocity arrow brings the note that
    says how it is told from a force.
    """
    said = [_sentence(item) for item in items]
    text = " ".join(filter(None, [opening, *said])) or title
    fast = any(isinstance(item, Arrow) and item.kind == "velocity" for item in items)
    return Figure(
        title,
        description or text,
        tuple(items),
        (*((VELOCITY,) if fast else ()), *notes),
        unit=1.0,
        drawn_from=(*drawn_from, *_drawn_true(items)),
        tells=() if description else tuple(_tells(items)),
    )


def _drawn_true(items: Sequence[Item]) -> Iterator[str]:
    """Names of the angles that the drawing shows as large as they are."""
    for item in items:
        if isinstance(item, AngleMark | bodies.Slope):
            yield from sorted(words.names_in(item.label) | set(item.shows))


def _sentence(item: Item) -> str:
    phrase = tell(item)
    return f"{phrase[0].upper()}{phrase[1:]}." if phrase else ""


def _tells(items: Sequence[Item]) -> Iterator[Tells]:
    for item in items:
        label = getattr(item, "label", "") or getattr(item, "text", "")
        names = words.names_in(label) | set(item.shows)
        sentence = _sentence(item)
        if names and sentence:
            seen = item.hiding(names)
            yield Tells(sentence, tuple(sorted(names)), _sentence(seen) if seen else "")
