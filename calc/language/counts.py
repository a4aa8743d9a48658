"""What a pure number counts, as a learner may type it: kilowatt-hours with their unit, money with its sign.

A number of kilowatt-hours is an energy told as a count: "0,5 kWh" and "1,8 MJ" are both 0,5 of them. Money has no
currency here, so any sign or letters before the amount are left out.
"""

from __future__ import annotations

import re
import unicodedata
from decimal import Decimal
from fractions import Fraction

from calc.language.quantities import QuantityError, parse_quantity
from calc.language.units import parse_unit

MONEY = "money"
_LETTERS = re.compile(r"[A-Za-z]{1,3}\.?\s*(?=[\d.,])")


def as_count(text: str, counted: str) -> str:
    """The text as a bare number, where it tells ``counted`` (a unit, or MONEY) in another way; else as it is."""
    bare = text.strip()
    if counted == MONEY:
        if bare and unicodedata.category(bare[0]) == "Sc":
            return bare[1:].lstrip()
        return bare[: -1 if bare and unicodedata.category(bare[-1]) == "Sc" else None][_lettered(bare) :]
    if not counted:
        return text
    try:
        typed = parse_quantity(bare, counted)
    except QuantityError:
        return text
    if not typed.unit_typed:
        return text
    ratio = Fraction(typed.number) * typed.unit.factor / parse_unit(counted).factor
    return f"{Decimal(ratio.numerator) / Decimal(ratio.denominator):f}"


def without_currency(working: str) -> str:
    """The lines of a working without the signs of money, and without the letters of one behind an equals sign."""
    signs = "".join(sign for sign in working if unicodedata.category(sign) != "Sc")
    return re.sub(r"(?<==)\s*[A-Za-z]{1,3}\.?\s?(?=\d)", " ", signs)


def _lettered(bare: str) -> int:
    found = _LETTERS.match(bare)
    return found.end() if found else 0
