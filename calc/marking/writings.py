"""The ways learners write an answer that a datum never has: "F = 25 µN", "≈ 2,5 N", "1,90.10^-9 C", "√2/4 m".

Each is turned into what ``calc.language.quantities`` reads. Nothing is guessed: a writing with two meanings stays as
it is. Common practice, no source.
"""

from __future__ import annotations

import re

from calc.language.quantities import QuantityError, parse_quantity
from calc.language.units import Unit, UnitError, parse_unit, same_kind, suggest
from calc.language.unittext import raised_to_caret

_ABOUT = re.compile(r"^\s*(?:≈|~|∼|≃|≅|=|about|approximately|approx\.?|roughly|around|circa|ca\.?)\s*", re.IGNORECASE)
_DOT_AS_TIMES = re.compile(r"(?<=\d)\s*[.·]\s*10\s*(?=\^|\*\*|[⁺⁻⁰¹²³⁴⁵⁶⁷⁸⁹])")
_PER_PER = re.compile(r"/\s*s\s*/\s*s\b")
_HEAD = re.compile(r"^\s*((?:[\d\s.,+\-−/()×*·]|√|sqrt)*[\d)])\s*(.*)$")
_FRACTION = re.compile(r"^[+\-−]?\s*\d+(?:[.,]\d+)?\s*/\s*\d+(?:[.,]\d+)?$")
_POWER = re.compile(r"[×x*·]\s*10|[eE][+-]?\d")
_THOUSANDS = re.compile(r"^[+\-−]?[1-9]\d{0,2}[.,]\d{3}(?!\d)")


def value_text(text: str) -> str:
    """``text`` without the name, the sign for "about" and the dot for × that learners write.

    Of a line of several values, as "F = 9e9 × 2 = 18 N", the last.
    """
    plain = text
    if any(sign in plain for sign in "=≈"):
        *_, last = re.split(r"[=≈]", plain)
        plain = last if last.strip() else plain
    plain = _ABOUT.sub("", plain)
    plain = _DOT_AS_TIMES.sub(" × 10", plain)
    return _PER_PER.sub("/s^2", plain)


def number_parts(text: str) -> tuple[str, str] | None:
    """(a fraction or a root as typed, the unit after it), or None where the number is a plain one."""
    match = _HEAD.match(text)
    if not match:
        return None
    number, unit = match[1].strip(), match[2].strip()
    rooted = "√" in number or "sqrt" in number
    return (number, unit) if rooted or _FRACTION.match(number) else None


def unit_meant(tail: str, wanted: Unit) -> str | None:
    """The unit of the wanted kind that ``tail`` writes without its dot: ``ms⁻²`` for m·s⁻², ``NC⁻¹`` for N·C⁻¹."""

    def letters(unit: str) -> str:
        return raised_to_caret(unit).replace("·", "").replace("^", "").replace(" ", "").replace(".", "")

    try:
        if same_kind(parse_unit(tail), wanted):
            return tail
    except UnitError:
        pass
    meant = [unit for unit in suggest(tail, wanted) if letters(unit) == letters(tail.replace("−", "-"))]
    return meant[0] if len(meant) == 1 else None


def thousands(text: str, unit: str) -> str | None:
    """``text`` with a space where its comma or point could part thousands, "1,200 N" as "1 200 N"; None elsewhere."""
    typed = value_text(text).strip()
    if not _THOUSANDS.match(typed) or _POWER.search(typed):
        return None
    spaced = re.sub(r"[.,]", " ", typed, count=1)
    try:
        parse_quantity(spaced, unit)
    except QuantityError:
        return None
    return spaced
