"""A drawn figure measured from its SVG text alone: what stands on what.

Shares nothing with the code that places labels. Letter widths are those of Adobe's
Times metrics (AFM, thousandths of an em), written from memory.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Callable
from dataclasses import dataclass
from math import hypot
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"
WIDTHS = {
    **dict.fromkeys("0123456789", 500),
    **dict(zip("ABCDEFGHIJKLM", (722, 667, 667, 722, 611, 556, 722, 722, 333, 389, 722, 611, 889), strict=True)),
    **dict(zip("NOPQRSTUVWXYZ", (722, 722, 556, 722, 667, 556, 611, 722, 722, 944, 722, 722, 611), strict=True)),
    **dict(zip("abcdefghijklm", (444, 500, 444, 500, 444, 333, 500, 500, 278, 278, 500, 278, 778), strict=True)),
    **dict(zip("nopqrstuvwxyz", (500, 500, 500, 500, 333, 389, 278, 500, 500, 722, 500, 500, 444), strict=True)),
    **dict.fromkeys(" .,·", 250),
    **dict.fromkeys(":;'’‘|!", 300),
    **dict.fromkeys("()[]⁻", 333),
    **dict.fromkeys("+−=×÷<>≈", 564),
    **dict.fromkeys("→—Ω", 800),
    "°": 400,
    "-": 333,
    "\u00a0": 250,
    "\u202f": 200,
    "α": 520,
    "θ": 480,
    "µ": 520,
    "Δ": 612,
}
HANGS = frozenset("gjpqyQJ,;()[]µμφρβ|")
RISES = frozenset("acegmnopqrsuvwxyzαεμνπρστωµ·,.−-—=→+×÷:;~")
THICK = frozenset(
    [
        "force",
        "resultant",
        "component",
        "field",
        "velocity",
        "axis",
        "outline",
        "string",
        "graph",
        "extrapolation",
        "dimension",
        "angle",
        "body",
        "surface",
        "positive",
        "negative",
        "neutral",
        "fieldline",
        "guide",
        "construction",
        "extension",
        "hatch",
        "tick",
        "sign",
        "symbol",
        "wire",
        "spring",
        "wheel",
        "rod",
    ]
)


@dataclass(frozen=True)
class Ink:
    """The rectangle a run of printed text fills, y downwards."""

    text: str
    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: Ink) -> bool:
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )

    def with_line(self, below: Ink) -> Ink:
        """One label set in two lines."""
        return Ink(
            f"{self.text} {below.text}",
            min(self.left, below.left),
            self.top,
            max(self.right, below.right),
            below.bottom,
        )

    def gap_to(self, x: float, y: float) -> float:
        """Distance of a point from the rectangle; 0 inside it."""
        return hypot(max(self.left - x, 0, x - self.right), max(self.top - y, 0, y - self.bottom))

    def crossed(self, a: tuple[float, float], b: tuple[float, float]) -> bool:
        """Whether any point of the line from a to b lies inside."""
        low, high = 0.0, 1.0
        for start, end, least, most in (
            (a[0], b[0], self.left, self.right),
            (a[1], b[1], self.top, self.bottom),
        ):
            if abs(end - start) < 1e-9:
                if not least < start < most:
                    return False
                continue
            near, far = sorted(((least - start) / (end - start), (most - start) / (end - start)))
            low, high = max(low, near), min(high, far)
        return low < high


@dataclass(frozen=True)
class Line:
    """A straight stroke of the drawing and the class it carries."""

    kind: str
    start: tuple[float, float]
    end: tuple[float, float]
    shaft: bool = False


@dataclass(frozen=True)
class Circle:
    """A circle of the drawing and the class it carries."""

    kind: str
    x: float
    y: float
    radius: float


@dataclass(frozen=True)
class Drawn:
    """All there is in one SVG; leaders are kept apart from the other lines."""

    texts: tuple[Ink, ...]
    lines: tuple[Line, ...]
    circles: tuple[Circle, ...]
    leaders: tuple[Line, ...]
    heads: tuple[tuple[str, tuple[tuple[float, float], ...]], ...]


def _ink(element: ElementTree.Element) -> Ink:
    size, x, y = (float(element.get(name, "0")) for name in ("font-size", "x", "y"))
    wide, top, bottom, down = 0.0, y, y, 0.0
    said = ""
    runs = [(element.text or "", size)]
    shifts = [0.0]
    for span in element:
        down += float(span.get("dy", "0"))
        runs.append((span.text or "", float(span.get("font-size", size))))
        shifts.append(down)
        runs.append((span.tail or "", size))
        shifts.append(down)
    for (text, em), shift in zip(runs, shifts, strict=True):
        said += text
        for sign in text:
            wide += WIDTHS.get(sign, 560) / 1000 * em
            if sign.strip():
                top = min(top, y + shift - (0.46 if sign in RISES else 0.68) * em)
                bottom = max(bottom, y + shift + (0.2 if sign in HANGS else 0.0) * em)
    left = {"start": x, "middle": x - wide / 2, "end": x - wide}[element.get("text-anchor", "middle")]
    return Ink(said, left, top, left + wide, bottom)


def _points(text: str) -> list[tuple[float, float]]:
    numbers = [float(n) for n in re.findall(r"-?[\d.]+", text)]
    return list(zip(numbers[::2], numbers[1::2], strict=True))


def measured(svg: str) -> Drawn:
    """Every text, line, circle and head of an SVG figure."""
    root = ElementTree.fromstring(svg)
    texts, lines, circles, leaders, heads = [], [], [], [], []
    for element in root.iter():
        tag = element.tag.removeprefix(SVG)
        kind = element.get("class", "").split(" ")[0].removeprefix("fig-")
        if tag == "text":
            ink = _ink(element)
            if ink.text.startswith("= ") and texts and abs(texts[-1].bottom - ink.top) < 20:
                ink = texts.pop().with_line(ink)
            texts.append(ink)
        elif tag == "circle":
            circles.append(Circle(kind, *(float(element.get(n, "0")) for n in ("cx", "cy", "r"))))
        elif tag in ("polygon", "polyline"):
            corners = tuple(_points(element.get("points", "")))
            heads.append((kind, corners))
            ends = corners[1:] + corners[:1] if tag == "polygon" else corners[1:]
            lines += [Line(kind, a, b) for a, b in zip(corners, ends, strict=False)]
        elif tag == "path":
            for piece in element.get("d", "").split("M")[1:]:
                corners = tuple(_points(piece))
                closed = corners[:1] if piece.rstrip().endswith("Z") else ()
                drawn = [Line(kind, a, b, True) for a, b in itertools.pairwise(corners + closed)]
                (leaders if kind == "leader" else lines).extend(drawn)
    return Drawn(tuple(texts), tuple(lines), tuple(circles), tuple(leaders), tuple(heads))


def faults(drawn: Drawn) -> list[str]:
    """Every label that stands on another, on a line, on a circle, or is struck by a leader."""
    found = [f"“{a.text}” on “{b.text}”" for a, b in itertools.combinations(drawn.texts, 2) if a.meets(b)]
    for ink in drawn.texts:
        kinds = {
            line.kind
            for line in (*drawn.lines, *drawn.leaders)
            if (line.kind in THICK or line.kind == "leader") and ink.crossed(line.start, line.end)
        }
        found += [f"“{ink.text}” struck by {kind}" for kind in sorted(kinds)]
        for circle in drawn.circles:
            far = max(hypot(x - circle.x, y - circle.y) for x in (ink.left, ink.right) for y in (ink.top, ink.bottom))
            # A letter wholly inside the circle of a meter is that meter's symbol.
            if ink.gap_to(circle.x, circle.y) < circle.radius and not (circle.kind == "meter" and far <= circle.radius):
                found.append(f"“{ink.text}” on a circle ({circle.kind})")
    return found


RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻", "0123456789+−")


def printed(label: str) -> str:
    """A label as it stands in the SVG's text: without markup, raised signs as plain ones."""
    return re.sub(r"[_^{}]", "", label).translate(RAISED)


@dataclass(frozen=True)
class Named:
    """A thing of the drawing that carries a label: a circle, or the shaft of an arrow."""

    label: str
    gap_to: Callable[[Ink], float]


def _circle_gap(circle: Circle) -> Callable[[Ink], float]:
    return lambda ink: ink.gap_to(circle.x, circle.y) - circle.radius


def _shaft_gap(tail: tuple[float, float], tip: tuple[float, float]) -> Callable[[Ink], float]:
    steps = [(tail[0] + (tip[0] - tail[0]) * n / 60, tail[1] + (tip[1] - tail[1]) * n / 60) for n in range(61)]
    return lambda ink: min(ink.gap_to(*point) for point in steps)


def arrows(drawn: Drawn, kind: str) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    """(tail, tip) of each arrow of a kind, in the order drawn; the tip is the head's own point."""
    tips = [corners[1 if kind == "field" else 0] for name, corners in drawn.heads if name == kind]
    if kind == "resultant":
        tips = tips[::2]  # two heads an arrow
    shafts = [line for line in drawn.lines if line.kind == kind and line.shaft]
    return [(line.start, tip) for line, tip in zip(shafts, tips, strict=True)]


def misread(drawn: Drawn, bodies: list[str], vectors: dict[str, list[str]]) -> list[str]:
    """Labels that stand nearer to another body or arrow than to their own.

    `bodies` gives the label of each circle, `vectors` that of each arrow by kind,
    all in the order drawn. A leader tells what a label far away belongs to.
    """
    discs = [Named(printed(label), _circle_gap(circle)) for label, circle in zip(bodies, drawn.circles, strict=True)]
    shafts = [
        Named(printed(label), _shaft_gap(*ends))
        for kind, labels in vectors.items()
        for label, ends in zip(labels, arrows(drawn, kind), strict=True)
    ]
    tied = [min(drawn.texts, key=lambda ink: ink.gap_to(*leader.start)) for leader in drawn.leaders]
    found = []
    for ink in drawn.texts:
        if ink in tied:
            continue
        for group in (discs, shafts):
            own = [one.gap_to(ink) for one in group if one.label == ink.text]
            others = [one.gap_to(ink) for one in group if one.label != ink.text]
            # One name for a body and an arrow could be either's label.
            unique = sum(one.label == ink.text for one in (*discs, *shafts)) == len(own)
            if own and others and unique and min(others) < min(own) - 0.5:
                found.append(f"“{ink.text}” stands nearer to another")
    return found
