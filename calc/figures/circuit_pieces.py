"""Pieces of circuit diagrams: the symbols of IEC 60617 that schools use, wires, junctions."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from calc.figures.pieces import Kept, Piece, Point

type SymbolKind = Literal[
    "cell",
    "battery",
    "resistor",
    "variable resistor",
    "lamp",
    "open switch",
    "closed switch",
    "ammeter",
    "voltmeter",
    "generator",
]
NOUNS: dict[SymbolKind, str] = {
    "cell": "cell",
    "battery": "battery",
    "resistor": "resistor",
    "variable resistor": "variable resistor",
    "lamp": "lamp",
    "open switch": "open switch",
    "closed switch": "closed switch",
    "ammeter": "ammeter",
    "voltmeter": "voltmeter",
    "generator": "generator",
}
HALF = 1.3  # from the middle of a symbol to the end of its wires, in lines


@dataclass(frozen=True, slots=True)
class Symbol(Kept):
    """A symbol between two wires that come from the left and the right."""

    kind: SymbolKind
    centre: Point
    label: str = ""

    def corners(self) -> Iterator[Point]:
        x, y = self.centre
        yield (x - HALF, y - 0.6)
        yield (x + HALF, y + 0.6)


@dataclass(frozen=True, slots=True)
class Wire(Piece):
    """A connecting wire through the points."""

    points: tuple[Point, ...]

    def corners(self) -> Iterator[Point]:
        yield from self.points


@dataclass(frozen=True, slots=True)
class Junction(Piece):
    """A dot where wires are joined."""

    centre: Point

    def corners(self) -> Iterator[Point]:
        yield self.centre
