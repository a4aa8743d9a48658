"""Kept texts compared with what is made now: numbers may differ in the last place that is printed, nothing else may."""

from __future__ import annotations

import re

PRINTED = 0.011  # numbers have two decimals; the last may differ where sin and cos do
NUMBER = re.compile(r"-?\d*\.?\d+")


def differing(kept: list[str], made: list[str]) -> list[tuple[str, str]]:
    """The lines that differ by more than the printed place of a number."""
    if len(kept) != len(made):
        return [(f"{len(kept)} lines", f"{len(made)} lines")]
    found = []
    for old, new in zip(kept, made, strict=True):
        if old != new:
            pairs = zip(NUMBER.findall(old), NUMBER.findall(new), strict=False)
            same = NUMBER.sub("#", old) == NUMBER.sub("#", new)
            if not same or any(abs(float(a) - float(b)) > PRINTED for a, b in pairs):
                found.append((old, new))
    return found
