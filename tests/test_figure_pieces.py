"""Bodies, velocities, before and after, bars, graphs and circuits: drawn in every notation, told in words.

Circuit symbols: IEC 60617 (the shapes stated here are from memory). Hollow or open heads for
velocities, a stated positive direction, dots where wires join: common practice, no source.
"""

import itertools
import random
import re
from dataclasses import dataclass

import pytest

from calc import topics
from calc.figures import Figure, GraphLine, Piece, graph
from calc.figures.circuit_pieces import NOUNS, Symbol
from calc.figures.circuits import Part, circuit, parallel, series
from calc.figures.energy import energy_bars
from calc.figures.motion import Moving, before_after
from calc.figures.pieces import Column, Dot
from calc.figures.telling import composed, tell
from calc.practice.drawing import draw
from calc.renderings import svg, tikz
from calc.working.reading import read
from calc.working.working import run
from tests.drawn_figures import BUILDERS
from tests.measured import arrows, measured

NEW = list(BUILDERS)[9:]


@dataclass(frozen=True, slots=True)
class Flag(Piece):
    """A piece that no renderer knows."""

    def corners(self):  # noqa: ANN201
        yield (0.0, 0.0)


@pytest.mark.parametrize("render", [svg.render, tikz.render])
def test_a_piece_without_a_drawing_is_refused(render) -> None:  # noqa: ANN001
    """A renderer that meets an unknown piece says so and draws nothing by default."""
    with pytest.raises(TypeError, match="no drawing of a Flag"):
        render(Figure("Flag", "A flag.", (Flag(),)))


def test_a_piece_without_words_is_refused() -> None:
    """No piece goes untold."""
    with pytest.raises(TypeError, match="no words for a Flag"):
        composed("Flag", [Flag()])


@pytest.mark.parametrize("kind", BUILDERS)
def test_every_builder_draws_in_every_notation(kind: str) -> None:
    """SVG and TikZ of each, with balanced braces and one command a line, and a description."""
    for seed in range(3):
        figure = BUILDERS[kind](random.Random(f"{kind}/{seed}"))
        assert measured(svg.render(figure)).texts
        text = tikz.render(figure)
        assert text.count("{") == text.count("}")
        body = text.splitlines()[1:-1]
        assert all((line.startswith("\\") and line.endswith(";")) or line == "%" for line in body)
        assert len(figure.description) > 20


def test_every_known_piece_has_words_and_a_drawing() -> None:
    """Each class of piece is told; helping lines alone are silent."""
    for kind in NOUNS:
        assert kind.split()[-1] in tell(Symbol(kind, (0, 0), "X"))
    assert tell(Column((0, 0), 1, 3, "5 J")) == "a bar labelled 5 J"
    assert tell(Dot((0, 0), "P")) == "a dot labelled P"


def test_velocities_are_told_from_forces() -> None:
    """Hollow heads in the picture, and a note and words that say so."""
    figure = before_after([Moving("A", "v_i", 2)], [Moving("A", "v_f", 1)])
    heads = re.findall(r'<polygon class="fig-velocity fig-head"[^>]*>', svg.render(figure))
    assert len(heads) == 2
    assert all('fill="none"' in head for head in heads)
    assert "Hollow heads: velocities, not forces; lengths not to scale." in figure.notes


@pytest.mark.parametrize("to_right", [True, False])
def test_before_and_after_point_as_they_say(to_right: bool) -> None:
    """Words and arrows of each sketch agree, whichever way the body goes, and the positive direction is drawn."""
    for positive in ("right", "left"):
        figure = before_after(
            [Moving("A", "v_i", 2, to_right)], [Moving("A", "v_f", 1, not to_right)], positive=positive
        )
        (tail, tip), (tail2, tip2) = arrows(measured(svg.render(figure)), "velocity")
        assert (tip[0] > tail[0]) is to_right
        assert (tip2[0] > tail2[0]) is not to_right
        ((start, end),) = arrows(measured(svg.render(figure)), "axis")
        assert (end[0] > start[0]) is (positive == "right")
        side = "right" if to_right else "left"
        assert f"Before, A moves to the {side} with v i." in figure.description
        assert f"The positive direction is to the {positive}." in figure.description


def test_bars_are_to_one_scale_and_hang_below_zero() -> None:
    """A bar of 45 J is three times one of 15 J; negative work hangs down and is told so."""
    figure = energy_bars([("Before", [("E_k", 45.0)]), ("Work", [("W_f", -15.0)])])
    first, second = (item for item in figure.items if isinstance(item, Column))
    assert first.height == pytest.approx(-3 * second.height)
    assert "Work: W f has a bar (below zero)." in figure.description


GRAPHS = [
    ([(0, 0), (2, 6)], "A straight line rises from (0; 0) to (2; 6)."),
    ([(0, 6), (2, 0)], "A straight line falls from (0; 6) to (2; 0)."),
    ([(0, 6), (2, 6)], "A straight line stays level from (0; 6) to (2; 6)."),
    ([(0, 0), (1, 2), (2, 4)], "A straight line rises from (0; 0) to (2; 4)."),
    ([(0, 0), (2, 4), (4, 0)], "A line of straight pieces rises from (0; 0) to (2; 4), then falls to (4; 0)."),
    ([(0, 4), (2, 0), (4, 4)], "A line of straight pieces falls from (0; 4) to (2; 0), then rises to (4; 4)."),
    ([(0, 4), (3, 4), (5, 0)], "A line of straight pieces stays level from (0; 4) to (3; 4), then falls to (5; 0)."),
    ([(x, x * x) for x in range(5)], "A curve rises from (0; 0) to (4; 16)."),
    ([(x, -x * x) for x in range(5)], "A curve falls from (0; 0) to (4; −16)."),
    (
        [(x / 4, 8 * x / 4 - 4 * (x / 4) ** 2) for x in range(9)],
        "A curve rises from (0; 0) to (1; 4), then falls to (2; 0).",
    ),
    (
        [(x / 4, 4 * (x / 4) ** 2 - 8 * x / 4) for x in range(9)],
        "A curve falls from (0; 0) to (1; −4), then rises to (2; 0).",
    ),
]


@pytest.mark.parametrize(("points", "sentence"), GRAPHS)
def test_a_graph_is_told_as_it_goes(points: list[tuple[float, float]], sentence: str) -> None:
    """A ball going up and down does not “stay level”: each stretch is told, straight or curved, with its ends."""
    assert graph("t (s)", "y (m)", [GraphLine(points)]).description.endswith(sentence)


def test_crosses_are_told_with_their_places() -> None:
    """Measured points are told one by one."""
    told = graph("x (m)", "F (N)", [GraphLine([(1, 2), (2, 3.5)], "", "points")]).description
    assert "Crosses at (1; 2) and (2; 3,5)." in told


def test_wires_cross_only_where_they_are_joined() -> None:
    """In random circuits no wire crosses another but at a dot or an end, seen in the SVG."""
    for seed in range(40):
        drawn = measured(svg.render(BUILDERS["circuit"](random.Random(f"wires/{seed}"))))
        wires = [line for line in drawn.lines if line.kind == "wire"]
        dots = [(c.x, c.y) for c in drawn.circles if c.kind == "dot"]
        for one, other in itertools.combinations(wires, 2):
            (x, y), (x2, y2), (u, v), (u2, v2) = one.start, one.end, other.start, other.end
            level, upright = abs(y - y2) < 0.1, abs(u - u2) < 0.1
            if level and upright and min(x, x2) < u - 0.5 < max(x, x2) - 1 and min(v, v2) < y - 0.5 < max(v, v2) - 1:
                assert any(abs(a - u) < 1 and abs(b - y) < 1 for a, b in dots)


def test_a_circuit_is_told_as_it_is_joined() -> None:
    """Series and parallel are told with their brackets."""
    load = series(Part("resistor", "R_1"), parallel(Part("lamp"), Part("voltmeter", "V")))
    assert (
        circuit(Part("cell"), load).description == "In the upper wire: a cell. Connected to it below: "
        "a resistor R1 in series with (a lamp in parallel with a voltmeter V)."
    )


def test_an_empty_branch_is_refused() -> None:
    """A branch without parts cannot be drawn."""
    with pytest.raises(ValueError, match="branch of the circuit is empty"):
        circuit(Part("cell"), series())


def test_forces_of_coulomb_point_as_like_and_unlike_charges_do() -> None:
    """In the SVG, arrows on like charges point away from the other sphere, on unlike ones towards it."""
    topic, question = topics.find("coulomb.force")
    seen = set()
    for seed in range(12):
        drawn = draw(topic, question, seed, 1 + seed % 2)
        found = read(question, drawn.inputs, drawn.find, variant=drawn.variant)
        plan = question.plan(found.data)
        values = run(plan, found.data.settings.constants())
        picture = measured(svg.render(plan.scene(values)))
        spheres = sorted((c for c in picture.circles if c.kind != "dot"), key=lambda c: c.x)
        forces = sorted(arrows(picture, "force"))
        if len(forces) != 2 or "neutral" in {sphere.kind for sphere in spheres}:
            continue  # a sign that is to be found is not drawn
        like = spheres[0].kind == spheres[1].kind
        left, right = forces
        assert (left[1][0] < left[0][0]) is like
        assert (right[1][0] > right[0][0]) is like
        seen.add(like)
    assert seen == {True, False}
