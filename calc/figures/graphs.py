"""Graphs: axes with ticks, straight and curved lines, points, dashed extensions."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, floor, isfinite, log10
from typing import Literal, NamedTuple

from calc.figures import graph_words, words
from calc.figures.figure import Figure, Tells
from calc.figures.graph_marks import Area, Gradient, Key
from calc.figures.pieces import Arrow, Curve, Dot, Item, LineKind, Point, Segment, Shade, Text

WIDE, HIGH = 15.0, 10.0  # drawn size in lines


class GraphLine(NamedTuple):
    """One line of a graph, in the units of the axes; “points” draws crosses only."""

    points: Sequence[Point]
    label: str = ""
    kind: Literal["solid", "dashed", "points"] = "solid"


class Scale(NamedTuple):
    """An axis: its ends, its ticks, and the power of ten taken out of the numbers."""

    low: float
    high: float
    ticks: tuple[float, ...]
    power: int


def scale_of(values: Sequence[float], *, zero: bool = True, most_ticks: int = 6) -> Scale:
    """An axis around `values` with ticks at 1, 2 or 5 times a power of ten."""
    low, high = min(values), max(values)
    if zero:
        low, high = min(low, 0.0), max(high, 0.0)
    if high == low:
        high = low + (abs(low) or 1.0)
    rough = (high - low) / most_ticks
    unit = 10.0 ** floor(log10(rough))
    step = next(unit * n for n in (1, 2, 5, 10) if unit * n >= rough * (1 - 1e-9))
    first, last = floor(low / step + 1e-9), ceil(high / step - 1e-9)
    ticks = tuple(n * step for n in range(first, last + 1))
    largest = max(abs(ticks[0]), abs(ticks[-1]))
    power = floor(log10(largest) + 1e-9)
    # Numbers from 0,1 to 1000 are written out; others share a power of ten.
    return Scale(ticks[0], ticks[-1], ticks, 0 if -1 <= power <= 3 else power)


def tick_label(value: float, scale: Scale) -> str:
    """A tick's number, with a decimal comma and no more decimals than the step needs."""
    if value == 0:
        return "0"
    step = (scale.ticks[1] - scale.ticks[0]) / 10.0**scale.power
    decimals = max(0, -floor(log10(step) + 1e-9))
    text = f"{round(value / 10.0**scale.power, decimals) + 0.0:.{decimals}f}"
    return text.replace(".", ",").replace("-", "−")


def _axis_label(label: str, power: int) -> str:
    if not power:
        return label
    head, bracket, tail = label.partition("(")
    return f"{head}(× 10^{{{power}}} {tail}" if bracket else f"{label} (× 10^{{{power}}})"


def _tick(foot: Point, stroke: Point, label: str, side: Literal["below", "left"]) -> list[Item]:
    """A stroke on an axis and its number."""
    end = (foot[0] + stroke[0], foot[1] + stroke[1])
    return [Segment(foot, end, "tick"), Text(end, label, side, small=True)]


def _drawn(line: GraphLine, points: tuple[Point, ...]) -> list[Item]:
    """A line of the graph, or crosses for its points."""
    if line.kind != "points":
        kind: LineKind = "graph" if line.kind == "solid" else "extrapolation"
        return [Curve(points, kind, line.label)]
    return [Segment((x - 0.22, y - rise), (x + 0.22, y + rise), "graph") for x, y in points for rise in (0.22, -0.22)]


def _line_said(line: GraphLine) -> str:
    """What is said of one line."""
    name = words.plain(line.label)
    if line.kind == "points":
        places = words.listing([graph_words.at(point) for point in line.points])
        return f" Crosses{' for ' + name if name else ''} at {places}."
    if len(line.points) > 1:
        return " " + graph_words.line_words(line.points, name, line.kind == "dashed")
    return ""


def graph(
    x_label: str,
    y_label: str,
    lines: Sequence[GraphLine | tuple[Sequence[Point], str]],
    *,
    marks: Sequence[tuple[float, float, str]] = (),
    keys: Sequence[Key] = (),
    areas: Sequence[Area] = (),
    gradients: Sequence[Gradient] = (),
    x_zero: bool = True,
    y_zero: bool = True,
    ticks: bool = True,
    title: str = "",
    description: str = "",
    notes: Sequence[str] = (),
    drawn_from: tuple[str, ...] = (),
) -> Figure:
    """A graph of one or more lines; label the axes with symbol and unit, “v (m·s⁻¹)”.

    `marks` are points shown with a dot and a label, `keys` points with dashed
    guides to both axes, `areas` are shaded, `gradients` slope triangles; these
    must lie within the lines. `drawn_from` names values the graph's shape gives away. With `x_zero` or `y_zero`
    false that axis may start elsewhere, and a note says so. Without `ticks` it
    is a sketch.

    Raises ValueError if there is no point or a number is not finite.
    """
    given = [GraphLine(*one) for one in lines]
    points = [p for line in given for p in line.points] + [(x, y) for x, y, _ in marks]
    if not points or not all(isfinite(v) for p in points for v in p):
        raise ValueError(f"The graph of {y_label} has no points, or one that is not a number.")
    xs = scale_of([x for x, _ in points], zero=x_zero)
    ys = scale_of([y for _, y in points], zero=y_zero)

    def at(x: float, y: float) -> Point:
        return ((x - xs.low) / (xs.high - xs.low) * WIDE, (y - ys.low) / (ys.high - ys.low) * HIGH)

    x_axis, y_axis = min(max(0.0, ys.low), ys.high), min(max(0.0, xs.low), xs.high)
    corner = at(y_axis, x_axis)
    items: list[Item] = [
        Arrow((0.0, corner[1]), (WIDE + 1.2, corner[1]), _axis_label(x_label, xs.power), "axis"),
        Arrow((corner[0], 0.0), (corner[0], HIGH + 1.2), _axis_label(y_label, ys.power), "axis"),
    ]
    if ticks:
        for x in (x for x in xs.ticks if x != y_axis or corner[1] == 0):
            items += _tick(at(x, x_axis), (0.0, -0.3), tick_label(x, xs), "below")
        for y in (y for y in ys.ticks if y != x_axis or corner[0] == 0):
            items += _tick(at(y_axis, y), (-0.3, 0.0), tick_label(y, ys), "left")
    for line in given:
        items += _drawn(line, tuple(at(x, y) for x, y in line.points))
    items += [Dot(at(x, y), label, 0.18) for x, y, label in marks]
    marked: tuple[Key | Area | Gradient, ...] = (*areas, *gradients, *keys)
    for piece in marked:
        items += piece.drawn(at, (y_axis, x_axis))
    items.sort(key=lambda item: not isinstance(item, Shade))  # areas lie under everything else
    name_x, name_y = (words.plain(label.split("(")[0]).strip() for label in (x_label, y_label))
    remarks = [
        f"The {name} axis does not start at zero."
        for name, scale in ((name_x, xs), (name_y, ys))
        if ticks and not scale.low <= 0 <= scale.high
    ]
    said = f"Graph of {words.plain(y_label)} against {words.plain(x_label)}.{''.join(map(_line_said, given))}"
    told = [Tells(one.words, one.names) for one in marked]
    return Figure(
        title or f"{name_y} against {name_x}",
        description or " ".join([said, *(one.sentence for one in told)]),
        tuple(items),
        (*remarks, *notes),
        unit=1.0,
        drawn_from=drawn_from,
        tells=() if description else tuple(told),
    )
