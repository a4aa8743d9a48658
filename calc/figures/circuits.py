"""Circuit diagrams laid out from what is in series and in parallel with what.

Rows of symbols with straight wires: no wire crosses another, and each symbol has
room for its label above it. Symbols are those of IEC 60617.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from calc.figures import words
from calc.figures.circuit_pieces import HALF, NOUNS, Junction, Symbol, SymbolKind, Wire
from calc.figures.figure import Figure, Tells
from calc.figures.pieces import Item, Text, named_only

ABOVE, BELOW = 2.0, 1.0  # room above and below the wire of a row, in lines
LETTER = 0.52  # width kept free for a letter of a label, in lines


@dataclass(frozen=True, slots=True)
class Part:
    """One symbol with its label; `shows` names the values it tells of."""

    kind: SymbolKind
    label: str = ""
    shows: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Series:
    """Parts one after the other, from left to right."""

    parts: tuple[Branch, ...]


@dataclass(frozen=True, slots=True)
class Parallel:
    """Branches side by side, the first at the top."""

    parts: tuple[Branch, ...]


type Branch = Part | Series | Parallel


class _Size(NamedTuple):
    """Room a branch needs: its width, and the height above and below its wire."""

    wide: float
    above: float
    below: float


def series(*parts: Branch) -> Series:
    """Parts in series."""
    return Series(parts)


def parallel(*parts: Branch) -> Parallel:
    """Branches in parallel."""
    return Parallel(parts)


def _size(branch: Branch) -> _Size:
    match branch:
        case Part(label=label):
            return _Size(max(2 * HALF, LETTER * len(words.plain(label)) + 0.8), ABOVE, BELOW)
        case Series(parts=parts):
            sizes = [_size(part) for part in parts]
            gaps = 0.5 * (len(parts) - 1)
            return _Size(sum(s.wide for s in sizes) + gaps, max(s.above for s in sizes), max(s.below for s in sizes))
        case Parallel(parts=parts):
            sizes = [_size(part) for part in parts]
            half = sum(s.above + s.below for s in sizes) / 2
            # The wires come in half-way between the first row and the last.
            span = half * 2 - sizes[0].above - sizes[-1].below
            return _Size(max(s.wide for s in sizes) + 1.6, sizes[0].above + span / 2, sizes[-1].below + span / 2)


def _drawn(branch: Branch, left: float, right: float, y: float) -> list[Item]:
    """The branch between two points at one height, centred, with its wires."""
    match branch:
        case Part(kind=kind, label=label, shows=shows):
            middle = (left + right) / 2
            wires: list[Item] = [
                Wire(((a, y), (b, y))) for a, b in ((left, middle - HALF), (middle + HALF, right)) if b - a > 1e-9
            ]
            return [*wires, Symbol(kind, (middle, y), label, shows=shows)]
        case Series(parts=parts):
            spare = (right - left - sum(_size(part).wide for part in parts)) / len(parts)
            items: list[Item] = []
            for part in parts:
                end = left + _size(part).wide + spare
                items += _drawn(part, left, end, y)
                left = end
            return items
        case Parallel(parts=parts):
            return _rows(parts, left, right, y)


def _rows(parts: Sequence[Branch], left: float, right: float, y: float) -> list[Item]:
    sizes = [_size(part) for part in parts]
    wide = max(size.wide for size in sizes) + 0.4
    middle = (left + right) / 2
    a, b = middle - wide / 2, middle + wide / 2
    heights = [y + sum(s.below + t.above for s, t in itertools.pairwise(sizes)) / 2]
    for size, after in itertools.pairwise(sizes):
        heights.append(heights[-1] - size.below - after.above)
    items: list[Item] = [Wire(((left, y), (a, y))), Wire(((b, y), (right, y)))]
    for part, height in zip(parts, heights, strict=True):
        items += _drawn(part, a, b, height)
    joins = {round(height, 9) for height in heights[1:-1]} | {round(y, 9)}
    for x in (a, b):
        items.append(Wire(((x, heights[0]), (x, heights[-1]))))
        items += [Junction((x, height)) for height in sorted(joins)]
    return items


def told(branch: Branch) -> str:
    """The branch in words: “a resistor R1 in series with (a lamp in parallel with a lamp)”."""
    match branch:
        case Part(kind=kind, label=label):
            noun = NOUNS[kind]
            name = f" {words.plain(label)}" if label.strip() else ""
            return f"{'an' if noun[0] in 'aeio' else 'a'} {noun}{name}"
        case Series(parts=parts) | Parallel(parts=parts):
            how = " in series with " if isinstance(branch, Series) else " in parallel with "
            return how.join(told(p) if isinstance(p, Part) else f"({told(p)})" for p in parts)


def _parts(branch: Branch) -> list[Part]:
    return [branch] if isinstance(branch, Part) else [p for one in branch.parts for p in _parts(one)]


def circuit(
    source: Branch,
    load: Branch,
    *,
    title: str = "Circuit diagram",
    description: str = "",
    notes: Sequence[str] = (),
) -> Figure:
    """A closed circuit: the branch with the source above, what it drives below.

    A voltmeter is a branch in parallel with what it is across.

    Raises ValueError for an empty branch.
    """
    for branch in (source, load):
        if not _parts(branch) or any(isinstance(one, Series | Parallel) and not one.parts for one in _all(branch)):
            raise ValueError("A branch of the circuit is empty: give it at least one part.")
    top, low = _size(source), _size(load)
    wide = max(top.wide, low.wide) + 2.0
    high = top.below + low.above + 0.4
    items = [
        *_drawn(source, 0.0, wide, high),
        *_drawn(load, 0.0, wide, 0.0),
        Wire(((0.0, 0.0), (0.0, high))),
        Wire(((wide, 0.0), (wide, high))),
    ]
    said = f"In the upper wire: {told(source)}. Connected to it below: {told(load)}."
    tells = [
        Tells(
            told(part),
            tuple(sorted(words.names_in(part.label) | set(part.shows))),
            told(replace(part, label=named_only(part.label))),
        )
        for part in _parts(source) + _parts(load)
        if " = " in part.label
    ]
    return Figure(
        title,
        description or said,
        tuple(items),
        tuple(notes),
        unit=1.0,
        height=60.0,
        tells=() if description else tuple(tells),
    )


def _all(branch: Branch) -> list[Branch]:
    return [branch] if isinstance(branch, Part) else [branch, *(b for p in branch.parts for b in _all(p))]


def bridge(source: Part, parts: tuple[Part, Part, Part, Part, Part], *, title: str = "A bridge") -> Figure:
    """Five resistors: the first two in the upper way with A between, the next two in the lower with B between; the
    fifth joins A and B. The source lies across both ways.
    """
    left, a, b, right = 0.0, 7.0, 13.0, 20.0
    top, middle, low, above = 6.0, 3.0, 0.0, 9.4
    r1, r2, r3, r4, r5 = parts
    items: list[Item] = [
        *_drawn(source, left - 1.5, right + 1.5, above),
        *_drawn(r1, left, a, top),
        *_drawn(r2, a, right, top),
        *_drawn(r3, left, b, low),
        *_drawn(r4, b, right, low),
        *_drawn(r5, a, b, middle),
        *(Wire(((x, low), (x, top))) for x in (left, right)),
        Wire(((a, top), (a, middle))),
        Wire(((b, middle), (b, low))),
        *(Wire(((x, middle), (x + d, middle), (x + d, above))) for x, d in ((left, -1.5), (right, 1.5))),
        *(Junction(at) for at in ((left, middle), (right, middle), (a, top), (b, low))),
        Text((a, top), "A", "above"),
        Text((b, low), "B", "below"),
    ]
    ways = [told(series(*pair)) for pair in ((r1, r2), (r3, r4))]
    said = (
        f"{told(source)[0].upper()}{told(source)[1:]} across two ways side by side: {ways[0]}, with A between them, and"
        f" {ways[1]}, with B between them. From A to B: {told(r5)}."
    )
    return Figure(title, said, tuple(items), unit=1.0, height=60.0)
