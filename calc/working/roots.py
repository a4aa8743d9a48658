"""A root of one equation, by halving an interval: slow, certain, and easy to explain to a learner."""

from __future__ import annotations

import itertools
from collections.abc import Callable


class NoRoot(ValueError):
    """The function does not change sign over the interval."""


def bisect(function: Callable[[float], float], low: float, high: float) -> float:
    """The point between ``low`` and ``high`` where ``function`` changes sign, to the last bit that matters.

    Raises :class:`NoRoot` when the ends have the same sign.
    """
    at_low, at_high = function(low), function(high)
    if at_low == 0:
        return low
    if at_high == 0:
        return high
    if (at_low > 0) == (at_high > 0):
        raise NoRoot(f"no change of sign between {low!r} and {high!r}")
    for _ in range(200):
        middle = low + (high - low) / 2
        if middle in (low, high):
            break
        if (function(middle) > 0) == (at_low > 0):
            low = middle
        else:
            high = middle
    return low + (high - low) / 2


def scan(function: Callable[[float], float], low: float, high: float, pieces: int = 400) -> list[float]:
    """Every root found where ``function`` changes sign between neighbouring points of an even grid."""
    points = [low + (high - low) * i / pieces for i in range(pieces + 1)]
    values = [function(point) for point in points]
    roots = []
    for (left, right), (a, b) in zip(itertools.pairwise(points), itertools.pairwise(values), strict=False):
        if a == 0:
            roots.append(left)
        elif (a > 0) != (b > 0) and b != 0:
            roots.append(bisect(function, left, right))
    if values[-1] == 0:
        roots.append(points[-1])
    return roots
