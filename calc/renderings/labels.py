"""Reading and measuring figure labels.

A label is plain text with ``_`` for a subscript and ``^`` for a superscript
(braces hold more than one character). Symbols are set in italics, numbers,
units, subscripts and words upright, as ISO 80000-1 asks.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Literal, NamedTuple

type Level = Literal["base", "sub", "super"]

SMALL = 0.72  # size of a subscript against its base
FUNCTIONS = frozenset({"sin", "cos", "tan", "log", "ln"})
SHORT_WORDS = frozenset(
    [
        "at",
        "to",
        "of",
        "on",
        "in",
        "by",
        "up",
        "is",
        "no",
        "or",
        "an",
        "as",
        "if",
        "it",
        "we",
        "be",
        "do",
        "so",
        "go",
        "off",
        "and",
        "the",
        "via",
        "not",
        "for",
        "per",
    ]
)
_RAISED = dict(zip("⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻", "0123456789+−", strict=True))
_TOKEN = re.compile(
    r"_\{(?P<subs>[^{}]*)\}|_(?P<sub>[^\s{}])"
    r"|\^\{(?P<sups>[^{}]*)\}|\^(?P<sup>[^\s{}])"
    r"|(?P<raised>[⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻]+)"
    r"|(?P<number>[−-]?\d+(?:[\u00a0\u202f ]\d{3})*(?:[.,]\d+)?)"
    r"|(?P<word>[^\W\d_]+)"
    r"|(?P<space>\s+)"
    r"|(?P<other>.)",
    re.DOTALL,
)


class Run(NamedTuple):
    """A stretch of a label in one style."""

    text: str
    italic: bool
    level: Level


def runs(label: str) -> list[Run]:
    """The label cut into runs of one style each; unmatched braces print as they are."""
    tokens = [(m.lastgroup or "other", m) for m in _TOKEN.finditer(label)]
    words = [m[0] for kind, m in tokens if kind == "word"]
    prose = sum(len(word) > 2 and word not in FUNCTIONS for word in words) > 1
    cut: list[Run] = []
    in_unit = False  # after a number and a space: what follows is a unit
    depth = 0  # inside round brackets: a unit or a remark
    for place, (kind, match) in enumerate(tokens):
        text = match[0]
        follows = tokens[place + 1][0] if place + 1 < len(tokens) else ""
        if kind in ("subs", "sub", "sups", "sup", "raised"):
            inner = match[kind]
            level: Level = "sub" if kind.startswith("sub") else "super"
            inner = "".join(_RAISED.get(sign, sign) for sign in inner)
            cut.append(Run(inner.replace("-", "−") if level == "super" else inner, False, level))
            continue
        italic = False
        if kind == "number":
            in_unit = True
            text = text.replace("-", "−")
        elif kind == "word":
            symbol = len(text) <= 2 and text not in SHORT_WORDS
            marked = follows in ("sub", "subs")
            # "2L" is a product, "2 L" a volume: a unit stands off from its number.
            if place and tokens[place - 1][0] == "number":
                in_unit = False
            unit = in_unit or depth > 0 or prose
            italic = symbol and (marked or not unit)
        elif kind == "other":
            depth = max(0, depth + (text == "(") - (text == ")"))
            # "= 2 m, x" or "3 m = y": a unit ends here; "N·C", "m/s" and "2 × 10" go on.
            if text not in "·/×°%":
                in_unit = False
        cut.append(Run(text, italic, "base"))
    joined: list[Run] = []
    for run in cut:
        if joined and joined[-1][1:] == run[1:]:
            joined[-1] = run._replace(text=joined[-1].text + run.text)
        else:
            joined.append(run)
    return joined


# Widths in ems, on the generous side: the reader's own font may be a wide one.
_NARROW, _WIDE = frozenset("iljtfrI.,:;'|!()[]· ’‘"), frozenset("mwMWOQGD@%—→×ΩΦ=+−±<>≥≤")


@lru_cache(maxsize=256)
def width(label: str, size: float) -> float:
    """Estimated printed width of a label set at `size`, in the units of `size`."""
    total = 0.0
    for run in runs(label):
        scale = 1.0 if run.level == "base" else SMALL
        for sign in run.text:
            if sign in _NARROW:
                ems = 0.36
            elif sign in "mW":
                ems = 1.03
            elif sign in _WIDE:
                ems = 0.9
            elif sign.isupper():
                ems = 0.74
            elif ord(sign) > 0x2E7F:
                ems = 1.0
            else:
                ems = 0.6
            total += ems * scale
    return total * size


@lru_cache(maxsize=256)
def room(label: str) -> tuple[float, float]:
    """Height wanted above and below the base line of one line of label, in ems, with a little air."""
    levels = {run.level for run in runs(label)}
    return (0.975 if "super" in levels else 0.905, 0.475 if "sub" in levels else 0.245)


def wrapped(text: str, size: float, limit: float) -> list[str]:
    """The text in lines no wider than `limit` where its words allow that."""
    lines: list[str] = []
    for word in text.split():
        if lines and width(f"{lines[-1]} {word}", size) <= limit:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines
