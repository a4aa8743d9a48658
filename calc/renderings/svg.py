"""A figure as one self-contained SVG element.

No style attributes, no style sheet, no ids: several figures can stand on one
page, and a page that forbids inline styles may carry them. Colours and weights
are presentation attributes on `currentColor`, so a figure reads as a file of
its own and in print; ``docs/assets/figures.css`` refines them by class name.
"""

from __future__ import annotations

import re
from functools import lru_cache
from html import escape

from calc.figures.figure import Figure
from calc.figures.words import plain
from calc.renderings import labels
from calc.renderings.drawing import Disc, Head, Shape, Stroke
from calc.renderings.geometry import Point
from calc.renderings.layout import Layout, layout
from calc.renderings.spots import FONT, NOTE_FONT, Placed

# Kinds differ in weight, dash and head, so that they are told apart without colour.
WEIGHT = {
    "force": 2.6,
    "resultant": 2.6,
    "component": 1.8,
    "field": 1.8,
    "velocity": 1.8,
    "axis": 1.3,
    "outline": 1.6,
    "string": 1.4,
    "guide": 1.0,
    "construction": 1.0,
    "fieldline": 1.2,
    "graph": 2.2,
    "extrapolation": 1.8,
    "dimension": 1.0,
    "extension": 0.8,
    "angle": 1.1,
    "body": 1.6,
    "surface": 1.8,
    "hatch": 0.8,
    "sign": 1.8,
    "positive": 1.5,
    "negative": 1.5,
    "neutral": 1.5,
    "leader": 0.7,
    "tick": 1.0,
    "wheel": 1.5,
    "meter": 1.5,
    "spring": 1.5,
    "wire": 1.5,
    "symbol": 1.5,
    "short": 3.0,
    "column": 1.5,
}
DASH = {
    "component": "6 4",
    "resultant": "14 5",
    "guide": "2 4",
    "construction": "3 3",
    "extrapolation": "7 5",
}
OPEN_HEADS = frozenset({"field", "velocity"})
TINTED = frozenset({"positive", "negative", "neutral", "body", "column"})
_ITALIC = ' font-style="italic"'


def number(value: float) -> str:
    """A coordinate with at most two decimals and no needless zeros."""
    return _short(f"{value:.2f}")


def _short(numbers: str) -> str:
    """Numbers of two decimals each without needless zeros and without a minus before nought."""
    return _NEEDLESS.sub("", numbers.replace("-0.00", "0.00"))


_NEEDLESS = re.compile(r"\.00|(?<=\.\d)0(?!\d)")


def _points(points: tuple[Point, ...], between: str = " ") -> str:
    return _short(between.join([f"{x:.2f},{y:.2f}" for x, y in points]))


def _shape(shape: Shape) -> str:
    style = shape.style
    name = f'class="fig-{style}"'
    if style == "shade" and isinstance(shape, Stroke):
        return f'<polygon {name} points="{_points(shape.paths[0])}" fill="currentColor" fill-opacity=".15"/>'
    if isinstance(shape, Disc):
        x, y = shape.centre
        place = f'cx="{number(x)}" cy="{number(y)}" r="{number(shape.radius)}"'
        if style == "dot":
            return f'<circle {name} {place} fill="currentColor"/>'
        return (
            f'<circle {name} {place} fill="currentColor" fill-opacity=".08" '
            f'stroke="currentColor" stroke-width="{WEIGHT[style]}"/>'
        )
    if isinstance(shape, Head):
        name = f'class="fig-{style} fig-head"'
        if style == "field":
            tip, left, right = shape.points
            return (
                f'<polyline {name} points="{_points((left, tip, right))}" fill="none" '
                f'stroke="currentColor" stroke-width="{WEIGHT[style]}"/>'
            )
        hollow = style in OPEN_HEADS
        paint = f'fill="none" stroke="currentColor" stroke-width="{WEIGHT[style]}"' if hollow else 'fill="currentColor"'
        return f'<polygon {name} points="{_points(shape.points)}" {paint}/>'
    end = "Z" if shape.closed else ""
    d = "".join([f"M{_points(path, 'L')}{end}" for path in shape.paths])
    dash = f' stroke-dasharray="{DASH[style]}"' if style in DASH else ""
    fill = 'fill="currentColor" fill-opacity=".08"' if style in TINTED else 'fill="none"'
    return f'<path {name} d="{d}" {fill} stroke="currentColor" stroke-width="{WEIGHT[style]}"{dash}/>'


@lru_cache(maxsize=256)
def _line(text: str, size: float) -> str:
    """One line of label text as tspans."""
    parts: list[str] = []
    down = 0.0
    for run in labels.runs(text):
        shift = {"base": 0.0, "sub": 0.28, "super": -0.42}[run.level] * size
        attributes = _ITALIC if run.italic else ""
        if shift != down:
            attributes += f' dy="{number(shift - down)}"'
        if run.level != "base":
            attributes += f' font-size="{number(labels.SMALL * size)}"'
        down = shift
        parts.append(f"<tspan{attributes}>{escape(run.text)}</tspan>" if attributes else escape(run.text))
    return "".join(parts)


def _text(label: Placed) -> str:
    size = FONT if label.style in ("label", "letter") else NOTE_FONT
    x = {"start": label.box.left, "middle": label.centre[0], "end": label.box.right}[label.align]
    anchor = "" if label.align == "middle" else f' text-anchor="{label.align}"'
    lines = label.text.split("\n")
    high = (label.box.bottom - label.box.top) / len(lines)
    base = labels.room(label.text)[0] * size if len(lines) == 1 else 0.5 * high + 0.33 * size
    return "".join(
        f'<text class="fig-{label.style}" x="{number(x)}" y="{number(label.box.top + high * place + base)}" '
        f'font-size="{number(size)}"{anchor}>{_line(line, size)}</text>'
        for place, line in enumerate(lines)
    )


def draw(figure: Figure, placed: Layout) -> str:
    """The SVG of a figure whose layout is already made."""
    box = placed.view
    width, height = box.right - box.left, box.bottom - box.top
    shapes = [_shape(shape) for shape in placed.shapes]
    leaders = [_shape(Stroke((label.leader,), "leader")) for label in placed.labels if label.leader]
    texts = [_text(label) for label in placed.labels]
    return "".join(
        (
            '<svg xmlns="http://www.w3.org/2000/svg" class="fig" role="img" ',
            f'viewBox="{number(box.left)} {number(box.top)} {number(width)} {number(height)}" ',
            f'width="{number(width)}" height="{number(height)}">',
            f"<title>{escape(plain(figure.title))}</title><desc>{escape(figure.description)}</desc>",
            '<g stroke-linejoin="round">',
            *shapes,
            *leaders,
            "</g>",
            (
                '<g fill="currentColor" text-anchor="middle" '
                "font-family=\"'Source Serif 4','Times New Roman',Times,serif\">"
            ),
            *texts,
            "</g></svg>",
        )
    )


def render(figure: Figure) -> str:
    """The figure as an `<svg>` element: title and description inside, nothing outside needed."""
    return draw(figure, layout(figure))


_NOT_SKETCHED = frozenset({"dimension", "extension", "leader"})


def sketch(figure: Figure) -> str:
    """The figure without labels and lengths, cut to what is drawn: a small picture beside words that name it."""
    shapes = [shape for shape in layout(figure).shapes if shape.style not in _NOT_SKETCHED]
    corners = [corner for shape in shapes for corner in _corners(shape)]
    edge = 4.0
    left, top = (min(corner[axis] for corner in corners) - edge for axis in (0, 1))
    right, bottom = (max(corner[axis] for corner in corners) + edge for axis in (0, 1))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="fig" aria-hidden="true" viewBox="{number(left)} {number(top)} '
        f'{number(right - left)} {number(bottom - top)}"><g stroke-linejoin="round">'
        f"{''.join(_shape(shape) for shape in shapes)}</g></svg>"
    )


def _corners(shape: Shape) -> list[Point]:
    if isinstance(shape, Disc):
        (x, y), far = shape.centre, shape.radius
        return [(x - far, y - far), (x + far, y + far)]
    if isinstance(shape, Head):
        return list(shape.points)
    return [point for path in shape.paths for point in path]
