"""Drawings of every builder against pictures that were looked at: ``approved/`` holds them, to open in a browser.

The other tests of figures state rules (no label struck, every arrow as its step says). These hold the rest still:
proportions of a trolley, the heads of arrows, the words of the text alternative. After a change on purpose:

    .venv/bin/python -m tests.renderings.test_approved_drawings

writes them anew; look at each picture that git shows as changed. Symbols: IEC 60617; hatched surfaces, hollow heads
of velocities, dashed components: common practice, no source.
"""

import json
import random
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from calc.figures import (
    AngleMark,
    Arrow,
    Block,
    Body,
    Charge,
    Curve,
    Dimension,
    Figure,
    GraphLine,
    On,
    Plate,
    Resolved,
    Segment,
    Sphere,
    Text,
    charges_in_plane,
    field_pattern,
    free_body_diagram,
    graph,
    hanging_pair,
    plates_scene,
    slope_scene,
    spheres_on_line,
    tail_to_head,
)
from calc.figures.bodies import Cord, Spring, Table, Trolley
from calc.figures.energy import energy_bars
from calc.figures.motion import before_after, moving
from calc.figures.pieces import Column, Piece, Shade
from calc.renderings import shapes, svg, tikz
from calc.renderings.drawing import Sheet
from tests.drawn_figures import BUILDERS
from tests.kept import differing
from tests.test_figure_words import WORDS

APPROVED = Path(__file__).parent / "approved"


TELLING = range(8)  # seeds of a builder whose words are held
WAYS = ((0, 90), (0, 180), (0, 0), (270, 0), (0, 89.9), (0, 89.95), (0, 91), (30, 120), (0, 0.99), (0, 1), (179, 0))
# Drawings at the edges of what is drawn one way or the other: turns of 0, 1, 7, 90, 180 degrees; sizes near the
# least that can be seen; nothing at all.
EDGES: dict[str, Callable[[], Figure]] = {
    **{
        f"sum of {a} and {b}": lambda a=a, b=b: tail_to_head([("A", 1, a), ("B", 0.5, b)], angle=(a, a + 40, "θ"))
        for a, b in WAYS
    },
    **{
        f"sum with {size} of the largest": lambda size=size: tail_to_head(
            [("A", 1, 0), ("B", size, 90)], angle=(0, 1, "θ")
        )
        for size in (0, 0.05, 0.06, 0.15, 0.16)
    },
    "sum that closes": lambda: tail_to_head([("A", 1, 0), ("B", 1, 120), ("C", 1, 240)]),
    "sum that almost closes": lambda: tail_to_head([("A", 1, 0), ("B", 1 - 1e-5, 180)]),
    **{
        f"free body at {a} and {b}": lambda a=a, b=b: free_body_diagram(
            [("A", 1, a), ("B", 0.5, b), ("C", 0, 45)], components=[Resolved("A", 30, "along", "across")]
        )
        for a, b in (*WAYS, (0, 7), (0, 6.9), (10, 17))
    },
    **{
        f"free body with {size}": lambda size=size: free_body_diagram([("A", 1, 0), ("B", size, 90)])
        for size in (0.01, 0.15, 0.16, 0.17, 1)
    },
    **{
        f"line with gaps 1 and {gap}": lambda gap=gap: spheres_on_line(
            [("A", 1, 0), ("B", -1, 1), ("C", 0, 1 + gap)],
            forces=[On(1, "F", 1, True), On(1, "G", 0.5, True), On(1, "H", 0.2, False)],
            distances=[(0, 1, "r"), (1, 2, "s"), (0, 2, "t")],
        )
        for gap in (0.1, 0.46, 0.47, 1, 2.1, 2.2, 50)
    },
    **{
        f"plane with a third at {x}; {y}": lambda x=x, y=y: charges_in_plane(
            [Charge("A", 1, 0, 0), Charge("B", -1, 1, 0), Charge("C", 2, x, y)],
            forces=[("F", 1, 0), ("G", 0.4, 90)],
            resultant=("R", 1.1, 22),
            distances=[(0, 1, "r")],
        )
        for x, y in ((0, 1), (-1, 0), (2, 0), (1, 0.26), (1, 0.27), (0.01, 0.01), (30, 40))
    },
    **{
        f"axes with a second at {x}; {y}": lambda x=x, y=y: charges_in_plane(
            [Charge("A", 1, 0, 0), Charge("B", -1, x, y)], forces=[("F", 1, 0)], axes=True, distances=[(0, 1, "r")]
        )
        for x, y in ((1, 0), (0, -1), (1, 0.001), (0.001, 1), (-1, -1))
    },
    **{
        f"slope of {angle}": lambda angle=angle: slope_scene(angle, [Body("A", 0.0, 1), Body("B", 1.0, 0)], string="up")
        for angle in (1, 10, 45, 66, 67, 89)
    },
    **{
        f"threads at {angle}": lambda angle=angle: hanging_pair(angle, two_supports=False)
        for angle in (1, 3, 7.4, 45, 89)
    },
    **{f"plates with {n} lines": lambda n=n: plates_scene(lines=n, upper_sign="-") for n in (0, 1, 2, 12)},
    **{
        f"bodies at {a} and {b}": lambda a=a, b=b: before_after(
            [moving("1", "u", a)],
            [moving("1", "v", b), moving("2", "", b, joined=True)],
        )
        for a, b in ((0, 1), (-1, 0), (3, 1), (3, 2.4), (3, 2.5), (0, 0))
    },
    **{
        f"bars of {size}": lambda size=size: energy_bars([("Before", [("E", 1.0)]), ("After", [("E", size)])])
        for size in (-1, 0, 1e-3, 1)
    },
    **{
        f"graph to {end}": lambda end=end: graph("t (s)", "v (m·s⁻¹)", [GraphLine([(0, 1), (1, 1 + end), (2, 1)])])
        for end in (0, 1e-10, 1e-8, 1, -3, 5000)
    },
    "graph with many stretches": lambda: graph("t", "x", [GraphLine([(n, n % 2) for n in range(8)])]),
    "graph with six stretches": lambda: graph("t", "x", [GraphLine([(n, n % 2) for n in range(7)])]),
    "pattern of one": lambda: field_pattern([Charge("A", -1, 0, 0)]),
    "pattern of like": lambda: field_pattern([Charge("A", 1, 0, 0), Charge("B", 1, 1, 0)]),
}


MORE: list[Piece] = [
    Dimension((0, 0), (4, 0), "r = 12 cm", -1.5),
    Dimension((0, 0), (0.5, 0), "r", 0.0, 0.0),
    Dimension((4, 3), (0, 0), "d", 2.0),
    AngleMark((0, 0), 0, 2, "α"),
    AngleMark((0, 0), 10, 80, "θ = 30°", 3.0),
    AngleMark((0, 0), 0, 200, "β", 0.5),
    AngleMark((0, 0), 270, 360, "", 2.0),
    AngleMark((0, 0), 30, 120, "", 0.7),
    AngleMark((0, 0), 0, 60, "γ"),
    Plate((0, 0), (3, 4), "+", "P"),
    Spring((0, 0), (3, 4), "k"),
    Table((0, 0), (6, 0), 3),
    Cord((-2, -3), (2, -1), (0, 0), 0.7, "T"),
    Trolley((0, 0), 5, 3, "A"),
    Arrow((0, 0), (3, 1), "F_{net} = 3,60 × 10⁻² N", "resultant", 1.0),
    Arrow((0, 0), (-3, 0), "v", "velocity", 0.0, "middle"),
    Arrow((0, 0), (0, 3), "F", "force", 0.0, "middle"),
    Arrow((0, 0), (0.1, 0), "F", "resultant"),
    Block((0, 0), 5, 3, 30, "m_1"),
    Block((0, 0), 1, 1, 30, "m_1 = 2 kg"),
    Text((0, 0), "P", "above"),
    Text((0, 0), "P", "left"),
    Text((0, 0), "1", "below", small=True),
    Segment((0, 0), (4, 1), "graph", "ball A"),
    Curve(((0, 0), (1, 1), (2, 0), (3, 4), (5, 5)), "graph", "A = 3", 2),
    Sphere((0, 0), 0.1, "-", "Q_1 = −5 nC"),
    Column((0, 0), 2, -3, "−5 J"),
    Shade(((0, 0), (4, 0), (4, 3)), "Δx"),
]


def told(figure: Figure) -> list[str]:
    """The words of a figure, and which of them tell what."""
    return [figure.title, figure.description, *figure.notes, *map(str, figure.tells), ", ".join(figure.drawn_from)]


def plainly(thing: object) -> str:
    """A thing as data, numbers to a thousandth."""

    def short(found: re.Match[str]) -> str:
        return f"{float(found[0]) + 0.0:.3f}"

    return re.sub(r"-?\d+\.\d+(e-?\d+)?", short, repr(thing)).replace("-0.000", "0.000")


def pieces(figure: Figure) -> list[str]:
    """The pieces as data; of a long curve the ends."""
    lines = [plainly(item) for item in figure.items]
    return [line if len(line) < 900 else f"{line[:300]} … {line[-300:]}" for line in lines]


def sheet(piece: Piece, scale: float, narrow: bool) -> list[str]:
    """What a piece alone puts on the page: strokes, what labels keep off, and the places its label would take."""
    page = Sheet(scale, (0.0, 0.0), narrow)
    shapes.draw(page, piece)
    wishes = [
        f"{one.text!r} {one.width:.2f} {one.height:.2f} {one.style} {one.gap}: "
        + " ".join(f"{s.cost:.2f}{'b' if s.beside else ''}@{s.anchor[0]:.1f},{s.anchor[1]:.1f}" for s in one.spots)
        for one in page.requests
    ]
    costs = sorted({(bar.cost, bar.named) for bar in page.bars} | {(one.cost, False) for one in page.rounds})
    return [*map(plainly, page.shapes), *wishes, f"costs {costs}"]


def held() -> dict[str, dict[str, list[str]]]:
    """Words of every builder, and words and pieces at the edges."""
    words = {
        f"{kind}/{seed}": told(BUILDERS[kind](random.Random(f"{kind}/told/{seed}")))
        for kind in BUILDERS
        for seed in TELLING
    }
    sheets = {
        f"{n} {said} at {scale}": sheet(piece, scale, scale > 50)
        for n, (piece, said) in enumerate([*WORDS, *((piece, "more") for piece in MORE)])
        for scale in (20.0, 90.0)
    }
    return {
        "words": words,
        "sheets": sheets,
        "edges": {name: [*told(make()), *pieces(make())] for name, make in EDGES.items()},
    }


def drawings(kind: str) -> dict[str, str]:
    """By file name: two drawings of a builder as SVG, the first in TikZ too."""
    name = kind.replace(" ", "-")
    first, second = (BUILDERS[kind](random.Random(f"{kind}/approved/{seed}")) for seed in (1, 2))
    return {
        f"{name}-1.svg": svg.render(first),
        f"{name}-2.svg": svg.render(second),
        f"{name}-1.tex": tikz.render(first),
    }


def lined(text: str) -> str:
    """One element a line, as the files hold them."""
    return re.sub(r">(?=<)", ">\n", text).strip() + "\n"


def changed(before: str, after: str) -> list[tuple[str, str]]:
    """The lines that differ by more than the printed place of a coordinate."""
    return differing(before.splitlines(), after.splitlines())


@pytest.mark.parametrize("kind", BUILDERS)
def test_a_drawing_is_the_one_that_was_looked_at(kind: str) -> None:
    """Every stroke, head, label, word and weight of two drawings of each builder."""
    for name, text in drawings(kind).items():
        approved = (APPROVED / name).read_text(encoding="utf-8")
        assert changed(approved, lined(text)) == [], name


@pytest.mark.parametrize("what", ["words", "edges", "sheets"])
def test_words_and_edges_are_those_that_were_read(what: str) -> None:
    """What every builder says, and what is drawn where one way of drawing gives way to another."""
    approved = json.loads((APPROVED / f"{what}.json").read_text(encoding="utf-8"))
    made = held()[what]
    assert made.keys() == approved.keys()
    for name, lines in made.items():
        assert changed("\n".join(approved[name]), "\n".join(lines)) == [], name


def test_a_changed_drawing_is_seen() -> None:
    """A stroke moved by a twentieth, a turned word, an element more: each is a change."""
    text = lined(svg.render(BUILDERS["slope"](random.Random("seen"))))
    number = re.search(r'd="M(-?[\d.]+)', text)
    assert number
    moved = text[: number.start(1)] + f"{float(number[1]) + 0.05:.2f}" + text[number.end(1) :]
    assert len(changed(text, moved)) == 1
    assert changed(text, text.replace("<desc>", "<desc>Not ", 1))
    assert changed(text, text + "<g/>\n")
    assert changed(text, text) == []


if __name__ == "__main__":
    APPROVED.mkdir(exist_ok=True)
    for every in BUILDERS:
        for name, text in drawings(every).items():
            (APPROVED / name).write_text(lined(text), encoding="utf-8")
    for what, lines in held().items():
        (APPROVED / f"{what}.json").write_text(json.dumps(lines, ensure_ascii=False, indent=1) + "\n", encoding="utf-8")
