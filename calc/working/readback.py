"""What was understood of each box, read back beside it while a reader types: "12 cm" is 0,12 m."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from calc.language.printing import Style
from calc.language.quantities import Quantity, QuantityError, parse_quantity
from calc.language.units import parse_unit, speak
from calc.model.constants import Settings
from calc.model.questions import Input, Question, Rows
from calc.working.reading import as_named_now, by_sheet, refused
from calc.working.working import measure


@dataclass(frozen=True)
class ReadBack:
    """unit: the one the number is counted in, as it stands beside the box, and spoken; line: "= 0,12 m", ''
    where that is what was typed."""

    unit: str
    spoken: str
    line: str


def readback(question: Question, typed: Mapping[str, object], settings: Settings) -> dict[str, ReadBack]:
    """By box (``charges.0.x`` for a cell) what was understood; a box without a usable value has no entry."""
    typed, _ = as_named_now(question, typed, "")
    return {
        path: back for path, item, text in _boxes(question, typed) if (back := _back(question, item, text, settings))
    }


def _boxes(question: Question, typed: Mapping[str, object]) -> Iterator[tuple[str, Input, str]]:
    for item in question.fields:
        entry = typed.get(item.name)
        if isinstance(item, Input) and isinstance(entry, str):
            yield item.name, item, entry
        elif isinstance(item, Rows) and isinstance(entry, list | tuple):
            for index, row in enumerate(entry):
                for column in item.columns if isinstance(row, Mapping) else ():
                    cell = row.get(column.name)
                    if isinstance(cell, str):
                        yield f"{item.name}.{index}.{column.name}", column, cell


def _back(question: Question, item: Input, text: str, settings: Settings) -> ReadBack | None:
    if not text.strip():
        return None
    try:
        quantity = by_sheet(parse_quantity(text, item.unit), question, settings)
    except QuantityError:
        return None
    if refused(item, quantity):
        return None
    said = _said(item, quantity, settings.style)
    unit = quantity.unit
    return ReadBack(
        unit.text, f"in {speak(unit)}" if unit.text else "", "" if _bare(said) == _bare(text) else f"= {said}"
    )


def _said(item: Input, quantity: Quantity, style: Style) -> str:
    """The value in the SI unit, an angle in degrees."""
    unit = item.unit if item.unit in ("", "°") else parse_unit(item.unit).si().text
    return measure(quantity.value, unit, style, data=True).text


def _bare(text: str) -> str:
    """A value without spaces and a plus before it, with one decimal sign and one minus."""
    return "".join(text.split()).replace(".", ",").replace("−", "-").removeprefix("+")
