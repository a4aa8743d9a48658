"""Answers of two values in one line, and answers with one end: "between 2 cm and 5 cm", "2 cm < x < 5 cm", "x > 3 cm".

Whether an end itself belongs to an interval is not told apart: < and ≤ are read alike. Common practice, no source.
"""

from __future__ import annotations

import re
from typing import Literal

from calc.marking.writings import value_text

type Side = Literal["more", "less"]

_COMPARED = re.compile(r"\s*([<>≤≥⩽⩾≦≧]|[<>]=|=[<>])\s*(?!=)")
_ABOVE = frozenset(">≥⩾≧")
_VALUE = re.compile(r"^\s*[+\-−]?\s*(?:[\d√]|[.,]\d)")
_LARGER = "more|greater|larger|bigger|higher|further|farther|longer|beyond"
_SMALLER = "less|smaller|lower|nearer|closer|shorter"
# What stands before a value, then what stands behind it; "no more than" before the "more than" in it.
_BEFORE: tuple[tuple[str, Side], ...] = (
    (rf"(?:no|not)\s+(?:{_LARGER})\s+than", "less"),
    (rf"(?:no|not)\s+(?:{_SMALLER})\s+than", "more"),
    (rf"at least|(?:{_LARGER})\s+than|above|over|beyond|exceeds", "more"),
    (rf"at most|(?:{_SMALLER})\s+than|below|under|up to", "less"),
)
_BEHIND: tuple[tuple[str, Side], ...] = (
    (rf"(?:or|and)\s+(?:{_LARGER}|above|over|upwards?)|upwards", "more"),
    (rf"(?:or|and)\s+(?:{_SMALLER}|below|under|downwards?)", "less"),
)
_BETWEEN = re.compile(r"\b(?:between|from)\s+(.+?)\s+(?:and|to|up to|till|until)\s+(.+)$", re.IGNORECASE)
_REACHING = re.compile(r"^(.+?)(?:\s+(?:up to|to)\s+|\s+[-−–—]\s+|\s*[–—…]\s*|\s*\.{2,3}\s*)(.+)$", re.IGNORECASE)
_BRACKETED = re.compile(r"^(?:[^\d;]*[∈=:]|[^\d;]*\bin\b)?\s*[(\[\]]([^;()\[\]]+);([^;()\[\]]+)[)\[\]](.*)$")
_JOINED = re.compile(r"\s*(?:\band\b|\bor\b|&|;|(?<=[^\W\d_]),\s)\s*", re.IGNORECASE)
_FROM_WHERE = re.compile(r"\s+(?:from|away|on|apart|to|in)\b.*$", re.IGNORECASE)
_POWER = re.compile(r"[×x*·]\s*10\S*|(?<=\d)[eE][+\-−]?\d+")
_UNIT = re.compile(r"[^\W\d_][^\s]*.*$|[°%].*$")


def bound(text: str) -> tuple[str, Side] | None:
    """The value and the side of an answer with one end: "x > 3 cm", "3 cm < x", "at least 3 cm", "3 cm or more";
    None for any other text."""
    typed = _FROM_WHERE.sub("", text.strip())
    pieces = _COMPARED.split(typed)
    if len(pieces) == 3:
        left, sign, right = pieces
        above = bool(_ABOVE & set(sign))
        if _VALUE.match(right) and not _VALUE.match(left):
            return right, "more" if above else "less"
        if _VALUE.match(left) and not _VALUE.match(right):
            return left, "less" if above else "more"
        return None
    for words, side in _BEFORE:
        found = re.search(rf"(?:^|\s)(?:{words})\s+(.+)$", typed, re.IGNORECASE)
        if found and _VALUE.match(found[1]):
            return found[1], side
    for words, side in _BEHIND:
        found = re.search(rf"^(.*?),?\s+(?:{words})$", typed, re.IGNORECASE)
        if found and _VALUE.match(value_text(found[1])):
            return found[1], side
    return None


def ends(text: str) -> tuple[str, str] | None:
    """Both ends of an interval in words or signs, in the order written; one unit behind both stands for both.

    "between 2 cm and 5 cm", "from 2 to 5 cm", "2 cm – 5 cm", "2 cm < x < 5 cm", "x > 2 cm and x < 5 cm", "[2; 5] cm".
    None for any other text.
    """
    typed = text.strip()
    sides = [bound(part) for part in _JOINED.split(typed)]
    if len(sides) == 2 and sides[0] and sides[1]:
        return _two(sides[0][0], sides[1][0]) if sides[0][1] != sides[1][1] else None
    pieces = _COMPARED.split(typed)
    if len(pieces) == 5:
        same = bool(_ABOVE & set(pieces[1])) == bool(_ABOVE & set(pieces[3]))
        return _two(pieces[0], pieces[4]) if same and not _VALUE.match(pieces[2]) else None
    bracketed = _BRACKETED.match(typed)
    if bracketed:
        unit = bracketed[3]
        return _two(f"{bracketed[1]}{unit}", f"{bracketed[2]}{unit}")
    found = _BETWEEN.search(typed) or _REACHING.match(typed)
    return _two(found[1], found[2]) if found else None


def listed(text: str) -> tuple[str, str] | None:
    """Two values one behind the other: "2 nC and 5 nC", "2 nC; 5 nC", "2 or 5 cm"; None for any other text."""
    parts = _JOINED.split(text.strip())
    return _two(*parts) if len(parts) == 2 else None


def _two(first: str, second: str) -> tuple[str, str] | None:
    """Two values as typed, the unit of the second also behind a bare first; None where one is no value."""
    second = _FROM_WHERE.sub("", second.strip())
    if not all(_VALUE.match(value_text(text)) for text in (first, second)):
        return None
    unit = _UNIT.search(_POWER.sub("", value_text(second)))
    if unit and not _UNIT.search(_POWER.sub("", value_text(first))):
        first = f"{first.strip()} {unit[0]}"
    return first.strip(), second.strip()
