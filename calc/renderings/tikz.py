"""A figure as a TikZ picture for LaTeX: the same layout as the SVG, in black."""

from __future__ import annotations

from calc.figures import Figure
from calc.renderings import labels
from calc.renderings.drawing import Disc, Shape, Stroke
from calc.renderings.geometry import Point
from calc.renderings.latex import escape
from calc.renderings.layout import layout
from calc.renderings.spots import Placed
from calc.renderings.svg import DASH, OPEN_HEADS, TINTED, WEIGHT, number

UNIT = 0.7  # pt of one page unit
_ANCHOR = {"start": "west", "middle": "center", "end": "east"}


def render(figure: Figure) -> str:
    """The ``tikzpicture``; y runs downwards, as on a screen."""
    placed = layout(figure)
    lines = [_shape(shape) for shape in placed.shapes]
    lines += [_shape(Stroke((label.leader,), "leader")) for label in placed.labels if label.leader]
    lines += [_label(label) for label in placed.labels]
    head = rf"\begin{{tikzpicture}}[x={UNIT}pt,y=-{UNIT}pt,line join=round]"
    return "\n".join([head, *lines, r"\end{tikzpicture}"])


def _at(point: Point) -> str:
    return f"({number(point[0])},{number(point[1])})"


def _shape(shape: Shape) -> str:
    style = shape.style
    if style == "shade" and isinstance(shape, Stroke):
        return rf"\fill[black!15] {' -- '.join(_at(point) for point in shape.paths[0])} -- cycle;"
    width = f"line width={number((1.0 if style == 'dot' else WEIGHT[style]) * UNIT)}pt"
    if isinstance(shape, Disc):
        ring = f"circle[radius={number(shape.radius)}]"
        if style == "dot":
            return rf"\fill {_at(shape.centre)} {ring};"
        return rf"\draw[{width},fill=black!8] {_at(shape.centre)} {ring};"
    if not isinstance(shape, Stroke):
        tip, left, right = (_at(point) for point in shape.points[:3])
        if style == "field":
            return rf"\draw[{width}] {left} -- {tip} -- {right};"
        paint = rf"\draw[{width}]" if style in OPEN_HEADS else r"\fill"
        return rf"{paint} {tip} -- {left} -- {right} -- cycle;"
    options = [width]
    if style in DASH:
        on, off = DASH[style].split()
        options.append(f"dash pattern=on {float(on) * UNIT:.1f}pt off {float(off) * UNIT:.1f}pt")
    if style in TINTED:
        options.append("fill=black!8")
    close = " -- cycle" if shape.closed else ""
    paths = " ".join(" -- ".join(_at(point) for point in path) + close for path in shape.paths)
    return rf"\draw[{','.join(options)}] {paths};" if paths else "%"


def _label(label: Placed) -> str:
    size = r"\normalsize" if label.style in ("label", "letter") else r"\small"
    x = {"start": label.box.left, "middle": label.centre[0], "end": label.box.right}[label.align]
    lines = label.text.split("\n")
    high = (label.box.bottom - label.box.top) / len(lines)
    return "\n".join(
        rf"\node[anchor={_ANCHOR[label.align]},inner sep=0pt,font={size}] at "
        rf"{_at((x, label.box.top + high * (place + 0.5)))} {{{_text(line)}}};"
        for place, line in enumerate(lines)
    )


def _text(line: str) -> str:
    parts = []
    for run in labels.runs(line):
        words = escape(run.text)
        if run.italic:
            words = rf"\textit{{{words}}}"
        if run.level != "base":
            mark = "_" if run.level == "sub" else "^"
            words = rf"${mark}{{\text{{{words}}}}}$"
        parts.append(words)
    return "".join(parts)
