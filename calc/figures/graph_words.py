"""What a line of a graph does, in words: where it rises, falls and stays level, with the key values."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from math import hypot
from typing import Literal

from calc.figures.pieces import Point

type Trend = Literal["rises", "falls", "stays level"]
SAME = 1e-9  # of the height of the line: a smaller change is level
STRAIGHT = 2e-3  # of the drawn size: points nearer to one straight line than this lie on it
_RAISED = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
MOST = 6  # stretches told one by one; a line with more is told as going up and down


def short(value: float) -> str:
    """A coordinate to three figures, with a decimal comma; a power of ten where it is needed: “6,8 × 10⁻⁵”."""
    number, _, power = f"{value + 0.0:.3g}".partition("e")
    said = number.replace(".", ",").replace("-", "−")
    return f"{said} × 10{str(int(power)).translate(_RAISED)}" if power else said


def at(point: Point) -> str:
    """A point of the graph: “(2; 0,5)”."""
    return f"({short(point[0])}; {short(point[1])})"


def stretches(points: Sequence[Point]) -> list[tuple[Trend, Point, Point]]:
    """The line cut where it turns: what it does, from where, to where."""
    high = max(y for _, y in points) - min(y for _, y in points)
    found: list[tuple[Trend, Point, Point]] = []
    for a, b in itertools.pairwise(points):
        change = b[1] - a[1]
        trend: Trend = "stays level" if abs(change) <= SAME * high else "rises" if change > 0 else "falls"
        if found and found[-1][0] == trend:
            found[-1] = (trend, found[-1][1], b)
        else:
            found.append((trend, a, b))
    return found


def straight(points: Sequence[Point]) -> bool:
    """Whether the points lie on one straight line, as drawn to fill its box."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    wide, high = max(xs) - min(xs) or 1.0, max(ys) - min(ys) or 1.0
    (x, y), (x2, y2) = points[0], points[-1]
    dx, dy = (x2 - x) / wide, (y2 - y) / high
    length = hypot(dx, dy)
    if not length:
        return False
    return all(abs(dx * (v - y) / high - dy * (u - x) / wide) / length <= STRAIGHT for u, v in points)


def line_words(points: Sequence[Point], name: str = "", dashed: bool = False) -> str:
    """A sentence about a line of two points or more."""
    parts = stretches(points)
    pieces = [[p for p in points if min(a[0], b[0]) <= p[0] <= max(a[0], b[0])] for _, a, b in parts]
    shape = "curve"
    if all(straight(piece) for piece in pieces if len(piece) > 1):
        shape = "straight line" if straight(points) else "line of straight pieces"
    noun = f"A {'dashed ' if dashed else ''}{shape}"
    if name:
        noun += f", {name},"
    if len(parts) > MOST:
        ys = [y for _, y in points]
        return (
            f"{noun} goes up and down between {short(min(ys))} and {short(max(ys))}, from {at(points[0])} to"
            f" {at(points[-1])}."
        )
    said = f"{noun} {parts[0][0]} from {at(parts[0][1])} to {at(parts[0][2])}"
    for trend, _, end in parts[1:]:
        said += f", then {trend} to {at(end)}"
    return f"{said}."
