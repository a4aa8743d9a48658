"""Numbers that practice types and reads again."""

from __future__ import annotations

from collections.abc import Mapping

from calc.language.quantities import parse_quantity
from calc.language.units import parse_unit
from calc.working.declaring import Given

type Units = Mapping[str, str]


def units_of(boxes: tuple[Given, ...]) -> Units:
    """The units of the boxes, by name."""
    return {one.box.name: one.box.unit for one in boxes}


def number(typed: Mapping[str, object], name: str, units: Units) -> float:
    """What is typed in a box, in SI (an angle in radians)."""
    return parse_quantity(str(typed[name]), units[name]).value


def typed_as(value: float, unit: str, figures: int = 3) -> str:
    """A value in SI as a learner types it in this unit."""
    short = float(f"{parse_unit(unit).from_si(value):.{figures}g}")
    return f"{short:.10g} {unit}".replace(".", ",")


def asked_of(chance: object, usual: str) -> str:
    """The unknown that practice asks for."""
    return str(getattr(chance, "asked", "")) or usual
