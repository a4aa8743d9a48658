"""A figure turned into page coordinates: shapes to draw and labels with their places.

`layout(figure)` is what every picture rendering starts from, and what tests
measure. Page units: y downwards, one line of label text is `LINE` high.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass

from calc.figures.pieces import Figure, corners
from calc.renderings import labels
from calc.renderings.drawing import NOTE_FONT, Disc, Shape, Sheet, Stroke
from calc.renderings.placing import (
    LINE,
    Bar,
    Box,
    Placed,
    Point,
    Round,
    between,
    box_at,
    inside,
    inside_round,
    place,
)
from calc.renderings.shapes import draw

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
        current = [path[0]]
        for a, b in itertools.pairwise(path):
            bar = Bar(a, b, 0.0)
            parts = [inside(bar, box) for box in boxes]
            parts += [inside_round(bar, disc) for disc in rounds]
            for enter, leave in sorted(part for part in parts if part):
                current.append(between(a, b, enter))
                paths.append(tuple(current))
                current = [between(a, b, leave)]
            current.append(b)
        paths.append(tuple(current))
    return Stroke(tuple(p for p in paths if len(p) > 1 and p[0] != p[-1]), shape.style)


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


def layout(figure: Figure) -> Layout:
    """Fit the figure to the page and place its labels.

    If drawing and labels are wider than `WIDEST`, long labels are set in two
    lines; if that is not enough, the drawing shrinks, down to 0,6 of its size.
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
    smallest = 0.6 * scale
    narrow = False
    while True:
        sheet = Sheet(scale, (left, high), narrow)
        for item in figure.items:
            draw(sheet, item)
        placed = place(sheet.requests, sheet.bars, sheet.rounds)
        view = _bounds(sheet.shapes, placed)
        over = (view.right - view.left) - WIDEST
        if over <= 0 or (narrow and scale <= smallest):
            break
        if narrow:
            scale = max(smallest, scale * min(0.9, 1 - over / max(width * scale, over)))
        narrow = True
    boxes = [p.box for p in placed]
    spheres = [
        Round(shape.centre, shape.radius, 0.0)
        for shape in sheet.shapes
        if isinstance(shape, Disc) and shape.style != "dot"
    ]
    shapes = [_cut(shape, boxes, spheres) for shape in sheet.shapes]
    notes = _notes(figure, view)
    for note in notes:
        view = view.union(note.box)
    return Layout(view.grown(MARGIN), scale, tuple(shapes), (*placed, *notes), tuple(sheet.shafts))
