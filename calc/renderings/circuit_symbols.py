"""Circuit symbols of IEC 60617 put on a sheet, as schools draw them."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin

from calc.figures.circuit_pieces import HALF, Junction, Symbol, SymbolKind, Wire
from calc.renderings.drawing import Disc, Sheet
from calc.renderings.geometry import Point
from calc.renderings.mechanics import rectangle
from calc.renderings.spots import Placed, Spot, box_of

LONG, SHORT = 15.0, 7.0  # half-heights of the two strokes of a cell
ROUND = 13.0  # radius of a lamp or a meter


def _wires(sheet: Sheet, x: float, y: float, inner: float) -> None:
    reach = HALF * sheet.scale
    sheet.stroke("wire", ((x - reach, y), (x - inner, y)), ((x + inner, y), (x + reach, y)))


def _fitting(sheet: Sheet, half: float) -> float:
    """Half the length of a symbol: where a long row leaves little room, it ends where the wires end."""
    return min(half, HALF * sheet.scale)


def _cell(sheet: Sheet, x: float, y: float) -> None:
    _wires(sheet, x, y, 3.0)
    sheet.stroke("symbol", ((x - 3, y - LONG), (x - 3, y + LONG)))
    sheet.stroke("short", ((x + 3, y - SHORT), (x + 3, y + SHORT)))


def _battery(sheet: Sheet, x: float, y: float) -> None:
    _wires(sheet, x, y, 14.0)
    for left in (x - 14, x + 8):
        sheet.stroke("symbol", ((left, y - LONG), (left, y + LONG)))
        sheet.stroke("short", ((left + 6, y - SHORT), (left + 6, y + SHORT)))
    sheet.stroke("construction", ((x - 8, y), (x + 8, y)))


def _resistor(sheet: Sheet, x: float, y: float) -> None:
    half = _fitting(sheet, 20.0)
    _wires(sheet, x, y, half)
    sheet.stroke("symbol", rectangle((x, y), half, 7.0), closed=True)


def _variable(sheet: Sheet, x: float, y: float) -> None:
    _resistor(sheet, x, y)
    tip = (x + 17.0, y - 17.0)
    sheet.stroke("symbol", ((x - 15.0, y + 15.0), tip))
    sheet.head(tip, (2**-0.5, -(2**-0.5)), "dimension", 40.0)


def _lamp(sheet: Sheet, x: float, y: float) -> None:
    radius = _fitting(sheet, ROUND)
    _wires(sheet, x, y, radius)
    sheet.disc((x, y), radius, "meter")
    c, s = radius * cos(pi / 4), radius * sin(pi / 4)
    sheet.stroke("symbol", ((x - c, y - s), (x + c, y + s)), ((x - c, y + s), (x + c, y - s)))


def _switch(sheet: Sheet, x: float, y: float, lifted: float) -> None:
    _wires(sheet, x, y, 14.0)
    sheet.stroke("symbol", ((x - 14, y), (x + 14, y - lifted)))
    for end in (x - 14, x + 14):
        sheet.shapes.append(Disc((end, y), 2.6, "dot"))


def _meter(letter: str) -> Callable[[Sheet, float, float], None]:
    def drawn(sheet: Sheet, x: float, y: float) -> None:
        _wires(sheet, x, y, ROUND)
        sheet.disc((x, y), ROUND, "meter")
        sheet.letters.append(Placed(letter, "letter", (x, y), box_of(letter, (x, y))))

    return drawn


def _generator(sheet: Sheet, x: float, y: float) -> None:
    """G over a small wave, for alternating current."""
    _wires(sheet, x, y, ROUND)
    sheet.disc((x, y), ROUND, "meter")
    sheet.letters.append(Placed("G", "letter", (x, y - 3.0), box_of("G", (x, y - 3.0))))
    sheet.stroke("symbol", tuple((x + step, y + 7.0 - 2.0 * sin(pi * step / 5.0)) for step in range(-5, 6)))


DRAWN: dict[SymbolKind, Callable[[Sheet, float, float], None]] = {
    "cell": _cell,
    "battery": _battery,
    "resistor": _resistor,
    "variable resistor": _variable,
    "lamp": _lamp,
    "open switch": lambda sheet, x, y: _switch(sheet, x, y, 14.0),
    "closed switch": lambda sheet, x, y: _switch(sheet, x, y, 0.0),
    "ammeter": _meter("A"),
    "voltmeter": _meter("V"),
    "generator": _generator,
}


HIGH: dict[SymbolKind, float] = {
    "cell": LONG,
    "battery": LONG,
    "resistor": 8.0,
    "variable resistor": 18.0,
    "lamp": ROUND,
    "open switch": 15.0,
    "closed switch": 5.0,
    "ammeter": ROUND,
    "voltmeter": ROUND,
    "generator": ROUND,
}  # from the wire to the highest point


def symbol(sheet: Sheet, item: Symbol) -> None:
    """A symbol with its label above, else below, in the room its row keeps for it."""
    x, y = sheet.at(item.centre)
    DRAWN[item.kind](sheet, x, y)
    up = HIGH[item.kind]
    spots = [Spot((x, y - up), (0.0, -1.0)), Spot((x, y + up), (0.0, 1.0), 2.0)]
    sheet.label(item.label, spots, gap=2.5)


def wire(sheet: Sheet, item: Wire) -> None:
    """A wire through its points."""
    points: tuple[Point, ...] = tuple(sheet.at(point) for point in item.points)
    sheet.stroke("wire", points)


def junction(sheet: Sheet, item: Junction) -> None:
    """A dot where wires meet."""
    sheet.disc(sheet.at(item.centre), 3.4, "dot")
