"""An angle in a plane as learners say it: "18,43° below the +x axis", "N 50° E", "50° north of east", "bearing 053".

Compass points: north is +y, east is +x. Bearings are counted clockwise from north. Common practice, no source.
"""

from __future__ import annotations

import math
import re

_SIGNS = str.maketrans({"−": "-", "–": "-", "º": "°", "˚": "°"})
_POINTS = {"north": 90.0, "n": 90.0, "east": 0.0, "e": 0.0, "south": 270.0, "s": 270.0, "west": 180.0, "w": 180.0}
_POINT = r"(north|south|east|west|n|s|e|w)(?:ward)?s?"
_AXIS = (
    r"(?:the\s+)?(positive|negative|\+|-)?\s*([xy]|horizontal|vertical)\s*[- ]?(?:axis|direction)?"
    r"(?:\s+(?:to|on)\s+the\s+(left|right))?"
)
_ANGLE = r"(-?\d+(?:\.\d+)?)\s*(?:°|deg(?:ree)?s?\b)?"
_TURN = r"(?:(anti|counter)[- ]?)?(clockwise|cw)|(acw|ccw)"

_BEARING = re.compile(rf"(?:on\s+)?(?:a\s+)?bearing\s*(?:of\s+|:\s*|=\s*)?{_ANGLE}|{_ANGLE}\s*(?:bearing|t|true)")
_BETWEEN = re.compile(rf"{_POINT}\s*{_ANGLE}\s*{_POINT}")
_OF = re.compile(rf"{_ANGLE}\s*(?:to\s+the\s+)?{_POINT}\s+of\s+(?:due\s+)?{_POINT}")
_BESIDE = re.compile(rf"{_ANGLE}\s*(above|below|over|under)\s+{_AXIS}")
_SIDE = re.compile(rf"{_ANGLE}\s*(?:to\s+the\s+)?(left|right)\s+(?:of|from)\s+{_AXIS}")
_ROUND = re.compile(rf"{_ANGLE}\s*(?:{_TURN})\s+(?:from|of|to)\s+(?:{_AXIS}|(?:due\s+)?{_POINT})")
_ALONE = re.compile(rf"{_ANGLE}(?:\s*(?:{_TURN}))?")


def has_number(text: str) -> bool:
    """Whether an angle may be meant at all."""
    return any(c.isdigit() for c in text)


def angle_said(text: str) -> float | None:
    """The direction that ``text`` names, in degrees anticlockwise from the +x axis; None where it cannot be read.

    What stands in brackets after it is left out, as in "53° below the −x axis (233° anticlockwise from the +x axis)".
    """
    said = " ".join(text.translate(_SIGNS).casefold().split())
    said = re.sub(r"(?<=\d),(?=\d)", ".", said)
    said = re.sub(r"^(?:at|is|in the direction)\s+|[.,;]+$|^θ\s*=\s*|^(?:at\s+)?an angle of\s+", "", said).strip()
    for words in (said, re.sub(r"\s*\(.*\)$", "", said), re.sub(r"^[^\d(]*,\s*", "", re.sub(r"\s*\(.*\)$", "", said))):
        found = _read(words)
        if found is not None:
            return found % 360
    return None


def _read(said: str) -> float | None:
    for pattern, read in (
        (_BEARING, _bearing),
        (_BETWEEN, _between),
        (_OF, _of),
        (_BESIDE, _beside),
        (_SIDE, _side),
        (_ROUND, _round),
        (_ALONE, _alone),
    ):
        match = pattern.fullmatch(said)
        if match:
            return read(match)
    return None


def _towards(start: float, angle: float, other: float) -> float | None:
    """``angle`` degrees from one compass point towards another beside it."""
    turn = (other - start + 180) % 360 - 180
    return None if abs(turn) != 90 else start + math.copysign(angle, turn)


def _bearing(found: re.Match[str]) -> float | None:
    return 90 - float(found[1] or found[2])


def _between(found: re.Match[str]) -> float | None:
    return _towards(_POINTS[found[1]], float(found[2]), _POINTS[found[3]])


def _of(found: re.Match[str]) -> float | None:
    return _towards(_POINTS[found[3]], float(found[1]), _POINTS[found[2]])


def _axis(sign: str | None, name: str, side: str | None) -> float | None:
    """The direction of an axis: "-x", "positive y", "horizontal to the left"; None where its side is not said."""
    minus = sign in ("negative", "-")
    if name in ("y", "vertical"):
        return 270.0 if minus else 90.0
    if name == "horizontal" and not side and not sign:
        return None
    return 180.0 if minus or side == "left" else 0.0


def _beside(found: re.Match[str]) -> float | None:
    base = _axis(found[3], found[4], found[5])
    if base not in (0.0, 180.0):
        return None
    above = found[2] in ("above", "over")
    return base + float(found[1]) * (1 if above == (base == 0) else -1)


def _side(found: re.Match[str]) -> float | None:
    base = _axis(found[3], found[4], found[5])
    if base not in (90.0, 270.0):
        return None
    return base + float(found[1]) * (1 if (found[2] == "left") == (base == 90) else -1)


def _round(found: re.Match[str]) -> float | None:
    base = _POINTS[found[8]] if found[8] else _axis(found[5], found[6], found[7])
    clockwise = bool(found[3]) and not found[2]
    return None if base is None else base + float(found[1]) * (-1 if clockwise else 1)


def _alone(found: re.Match[str]) -> float | None:
    clockwise = bool(found[3]) and not found[2]
    return float(found[1]) * (-1 if clockwise else 1)
