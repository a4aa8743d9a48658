"""Words for a drawing: labels as plain text, directions as a person says them."""

from __future__ import annotations

import re
from functools import lru_cache

_RAISED = str.maketrans("0123456789+-−", "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻⁻")

GREEK = {
    "α": "alpha",
    "β": "beta",
    "η": "eta",
    "θ": "theta",
    "λ": "lambda",
    "μ": "mu",
    "ε": "epsilon",
    "σ": "sigma",
    "ω": "omega",
    "φ": "phi",
}


@lru_cache(maxsize=256)
def plain(label: str) -> str:
    """A label without its markup: ``F_{AB}`` gives “F AB”, ``Q_1`` gives “Q1”."""
    text = re.sub(r"\^\{([^{}]*)\}|\^(\w)", lambda m: (m[1] or m[2] or "").translate(_RAISED), label)
    text = re.sub(r"_\{?(\d+)\}?", r"\1", text)
    text = re.sub(r"_\{([^{}]*)\}|_(\w)", lambda m: " " + (m[1] or m[2] or ""), text)
    return text.replace("{", "").replace("}", "")


def charged(label: str, sign: float) -> str:
    """A body with the sign written in it: “A (positive)”; the label alone where none is."""
    name = plain(label) or "a body"
    return f"{name} ({'positive' if sign > 0 else 'negative'})" if sign else name


def degrees(angle: float) -> str:
    """An angle for a sentence, to one decimal where it needs one: “36,9°”."""
    return f"{angle:.1f}".removesuffix(".0").replace(".", ",") + "°"


def direction(angle_deg: float) -> str:
    """A direction on the page: “to the right”, “36,9° above the left” (0° is to the right)."""
    angle = angle_deg % 360
    for exact, words in (
        (0, "to the right"),
        (90, "upwards"),
        (180, "to the left"),
        (270, "downwards"),
        (360, "to the right"),
    ):
        if abs(angle - exact) < 0.05:
            return words
    side = "right" if angle < 90 or angle > 270 else "left"
    level = "above" if angle < 180 else "below"
    return f"{degrees(min(angle % 180, 180 - angle % 180))} {level} the {side}"


def listing(parts: list[str]) -> str:
    """“a”, “a and b”, “a, b and c”."""
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"


@lru_cache(maxsize=256)
def names_in(label: str) -> frozenset[str]:
    """Names of the value a label stands for: ``F_{AB} = 3 N`` gives F_AB, ``Q_1`` gives Q_1 and Q1."""
    symbol = label.partition("=")[0].strip().replace("{", "").replace("}", "")
    if not symbol or " " in symbol:
        return frozenset()
    for sign, name in GREEK.items():
        symbol = symbol.replace(sign, name)
    return frozenset((symbol, re.sub(r"_(\d+)$", r"\1", symbol)))
