"""A figure turned into page coordinates: shapes to draw and labels with their places.

`layout(figure)` is what every picture rendering starts from, and what tests
measure. Page units: y downwards, one line of label text is `LINE` high.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass

from calc.figures.figure import Figure
from calc.figures.pieces import corners
from calc.renderings import labels
from calc.renderings.drawing import LONG, Disc, Shape, Sheet, Stroke
from calc.renderings.geometry import (
    Bar,
    Box,
    Point,
    Round,
    between,
    box_at,
    inside,
    inside_round,
    outside,
    room_of,
    unit,
)
from calc.renderings.placing import place
from calc.renderings.shapes import draw
from calc.renderings.spots import LINE, NOTE_FONT, Placed

MARGIN = 6.0
THIN = frozenset({"guide", "construction", "fieldline", "extension", "hatch"})
CUT_AT_SPHERES = frozenset({"axis", "string"})
WIDEST = 23 * LINE  # wider than this, label text gets too small on a phone


@dataclass(frozen=True, slots=True)
class Layout:
    """A figure on the page. `shafts` gives (kind, tail, tip) of each arrow, in item order."""

    view: Box
    scale: float
    shapes: tuple[Shape, ...]
    labels: tuple[Placed, ...]
    shafts: tuple[tuple[str, Point, Point], ...]


def _cut(shape: Shape, boxes: list[Box], rounds: list[Round]) -> Shape:
    """A thin line interrupted where a label stands on it; any line, inside a sphere.

    A line through a sphere would turn a written minus into a plus.
    """
    if not isinstance(shape, Stroke) or shape.style not in THIN | CUT_AT_SPHERES:
        return shape
    if shape.style not in THIN:
        boxes = []
    paths: list[tuple[Point, ...]] = []
    for path in shape.paths:
        current: list[Point] = []
        for a, b in itertools.pairwise(path):
            for start, end in outside(a, b, _taken(Bar(a, b, 0.0), boxes, rounds)):
                if not current or current[-1] != start:
                    paths.append(tuple(current))
                    current = [start]
                current.append(end)
        paths.append(tuple(current))
    return Stroke(tuple(p for p in paths if len(p) > 1), shape.style)


def _taken(bar: Bar, boxes: list[Box], rounds: list[Round]) -> list[tuple[float, float]]:
    """The parts of a line, as shares of it, that lie in a box or a disc."""
    x, y, x2, y2 = room_of(bar)
    parts = []
    for box in boxes:
        if x < box.right and box.left < x2 and y < box.bottom and box.top < y2 and (part := inside(bar, box)):
            parts.append(part)
    for disc in rounds:
        (u, v), r = disc.centre, disc.radius
        if x < u + r and u - r < x2 and y < v + r and v - r < y2 and (part := inside_round(bar, disc)):
            parts.append(part)
    return parts


def _flow_heads(sheet: Sheet, boxes: list[Box]) -> None:
    """Heads along the lines that have a sense: evenly spread, each moved on where a label stands."""
    for points, count in sheet.flows:
        lengths = [unit(a, b)[1] for a, b in itertools.pairwise(points)]
        total = sum(lengths)
        for n in range(count):
            goal = total * (n + 1) / (count + 1) + 4.0
            tries = [goal + step * sign for step in range(0, 80, 8) for sign in (1, -1)]
            for at in tries:
                found = _point_along(points, lengths, at) if 10.0 < at < total - 2.0 else None
                if found and not any(box.gap_to(found[0]) < 10.0 for box in boxes):
                    sheet.head(*found, "fieldline", total)
                    break
            else:
                if found := _point_along(points, lengths, min(goal, total)):
                    sheet.head(*found, "fieldline", total)


def _point_along(points: tuple[Point, ...], lengths: list[float], at: float) -> tuple[Point, Point] | None:
    """The point a way along a line, and the direction of the line there."""
    for (a, b), length in zip(itertools.pairwise(points), lengths, strict=True):
        if at <= length and length:
            return between(a, b, at / length), unit(a, b)[0]
        at -= length
    return None


def _bounds(shapes: list[Shape], placed: tuple[Placed, ...]) -> Box:
    boxes = [p.box for p in placed]
    for shape in shapes:
        if isinstance(shape, Disc):
            boxes.append(box_at(shape.centre, 2 * shape.radius, 2 * shape.radius))
        else:
            paths = shape.paths if isinstance(shape, Stroke) else (shape.points,)
            for path in paths:
                xs, ys = [p[0] for p in path], [p[1] for p in path]
                boxes.append(Box(min(xs), min(ys), max(xs), max(ys)))
    total = boxes[0]
    for box in boxes:
        total = total.union(box)
    return total


def _notes(figure: Figure, view: Box) -> list[Placed]:
    """Notes set in lines below the drawing, centred."""
    room = max(view.right - view.left, 14 * LINE)
    middle, y = (view.left + view.right) / 2, view.bottom + 10
    lines = []
    for note in figure.notes:
        for line in labels.wrapped(note, NOTE_FONT, room):
            y += NOTE_FONT * 1.3
            at = (middle, y - NOTE_FONT * 0.65)
            box = box_at(at, labels.width(line, NOTE_FONT), NOTE_FONT * 1.2)
            lines.append(Placed(line, "note", at, box))
    return lines


@dataclass(frozen=True, slots=True)
class _Attempt:
    """A figure drawn at one scale, with its labels placed."""

    sheet: Sheet
    placed: tuple[Placed, ...]
    view: Box

    @property
    def over(self) -> float:
        return self.view.right - self.view.left - WIDEST

    @property
    def leaders(self) -> int:
        return sum(label.leader is not None for label in self.placed)


def _attempt(figure: Figure, scale: float, origin: Point, narrow: bool) -> _Attempt:
    sheet = Sheet(scale, origin, narrow)
    for number, item in enumerate(figure.items):
        sheet.owner = number
        draw(sheet, item)
    placed = place(sheet.requests, sheet.bars, sheet.rounds)
    return _Attempt(sheet, placed, _bounds(sheet.shapes, placed))


def _fitted(figure: Figure, scale: float, origin: Point, width: float) -> _Attempt:
    """The drawing with long labels in one line, else in two, else made smaller until it fits."""
    tried = _attempt(figure, scale, origin, False)
    if tried.over <= 0 and not tried.leaders:
        return tried
    breakable = any(" = " in one.text and one.width > LONG for one in tried.sheet.requests)
    narrow = _attempt(figure, scale, origin, True) if breakable else tried
    if tried.over <= 0 and narrow.leaders >= tried.leaders:
        return tried
    smallest = 0.6 * scale
    while narrow.over > 0 and scale > smallest:
        over = narrow.over
        scale = max(smallest, scale * min(0.9, 1 - over / max(width * scale, over)))
        narrow = _attempt(figure, scale, origin, True)
    return narrow


def layout(figure: Figure) -> Layout:
    """Fit the figure to the page and place its labels.

    If drawing and labels are wider than `WIDEST`, or a label finds no place near
    what it names, long labels are set in two lines; if the whole is still too
    wide, the drawing shrinks, down to 0,6 of its size.
    """
    points = [corner for item in figure.items for corner in corners(item)]
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    low, high = min(y for _, y in points), max(y for _, y in points)
    width, height = (right - left) or 1e-12, (high - low) or 1e-12
    scale = min(figure.width * LINE / width, figure.height * LINE / height)
    if right == left and high == low:
        scale = LINE
    if figure.unit:
        scale = min(scale, figure.unit * LINE)
    tried = _fitted(figure, scale, (left, high), width)
    sheet, placed, view = tried.sheet, tried.placed, tried.view
    boxes = [p.box.grown(2.0) for p in placed]
    _flow_heads(sheet, boxes)
    spheres = [
        Round(shape.centre, shape.radius, 0.0)
        for shape in sheet.shapes
        if isinstance(shape, Disc) and shape.style != "dot"
    ]
    shapes = [_cut(shape, boxes, spheres) for shape in sheet.shapes]
    notes = _notes(figure, view)
    for note in notes:
        view = view.union(note.box)
    return Layout(
        view.grown(MARGIN),
        sheet.scale,
        tuple(shapes),
        (*placed, *sheet.letters, *notes),
        tuple(sheet.shafts),
    )
