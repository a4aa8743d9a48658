"""What a reader has to find is nowhere in the figure given with the question: no arrow, label, number, word.

Measured on the SVG text, which holds the description too.
"""

import re
from html import unescape

import pytest

from calc import topics
from calc.figures import (
    Arrow,
    Charge,
    Figure,
    Force,
    On,
    Segment,
    charges_in_plane,
    free_body_diagram,
    graph,
    hanging_pair,
    plates_scene,
    slope_scene,
    spheres_on_line,
)
from calc.figures.bodies import Slope, Trolley
from calc.figures.circuits import Part, circuit, parallel, series
from calc.figures.energy import Amount, energy_bars
from calc.figures.graph_marks import Area, Gradient, Key
from calc.figures.motion import Moving, before_after
from calc.figures.pieces import Block, Dimension, Text
from calc.figures.scenes import Body
from calc.figures.telling import composed
from calc.language.symbols import symbol
from calc.model.questions import Part as Asked
from calc.model.questions import Plan, Step
from calc.papers.papers import plain_scene
from calc.practice.fair import fair_scene
from calc.renderings.svg import render
from calc.working.reading import read
from tests import cases


def seen(figure: Figure | None) -> str:
    """All text of the SVG, tags taken out."""
    return unescape(re.sub(r"<[^>]*>", " ", render(figure))) if figure else ""


VELOCITIES = before_after(
    [Moving("A", "v_{iA} = 4 m·s⁻¹", 4), Moving("B")],
    [Moving("A", "v_f = 1,5 m·s⁻¹", 1.5, False), Moving("B", joined=True)],
)
BARS = energy_bars(
    [
        ("Before", [Amount("E_p", 60, "60 J")]),
        ("Work", [Amount("W_f", -15, "−15 J")]),
        ("After", [Amount("E_k", 45, "45 J")]),
    ]
)
ON_SLOPE = slope_scene(30, [Body("A", 0.3, 1, shows=("Q1",)), Body("B", 0.7, -1, shows=("Q2",))])
PAIR = hanging_pair(20, signs=("+", "-"), two_supports=True, shows=(("Q1",), ("Q2",)))
CIRCUIT = circuit(
    series(Part("battery", "ε = 12 V"), Part("ammeter")),
    parallel(Part("resistor", "R_1 = 4 Ω"), Part("resistor", "R_2 = 6 Ω")),
)
SKETCH = composed(
    "Pulled box",
    [Block((0, 1), 2, 2, 0, "m = 3 kg"), Arrow((1, 1), (4, 1), "F = 9 N"), Dimension((0, 0), (4, 0), "d = 2 m", -1.5)],
)
LINE = spheres_on_line(
    [Charge("A", -3, 0, shows=("Q1",)), Charge("B", 2, 1)], forces=[On(0, "F_{BA}", 1, True, shows=("F",))]
)
PLANE = charges_in_plane([("Q_1", -3, 0, 0), ("Q_2", 2, 3, 4)], forces=[("F_{21}", 1, 53.1)])
GRAPH = graph(
    "t (s)",
    "v (m·s⁻¹)",
    [([(0, 4), (3, 4), (5, 0)], "")],
    keys=[Key(3, 4, "P", "t_1", "")],
    areas=[Area([(0, 4), (3, 4)], "Δx", ("x",))],
    gradients=[Gradient((3, 4), (5, 0), "Δt", "Δv", ("a",))],
)


@pytest.mark.parametrize(
    ("figure", "asked", "gone", "kept"),
    [
        (ON_SLOPE, "Q1", ("A (positive)",), ("A and B", "A slope rises")),
        (ON_SLOPE, "Q2", ("B (negative)",), ("A and B", "A slope rises")),
        (PAIR, "Q2", ("B (negative)",), ("hang apart on equal threads",)),
        (VELOCITIES, "v_f", ("1,5", "to the left"), ("4 m·s", "Before, A moves to the right")),
        (BARS, "W_f", ("15", "below zero"), ("60 J", "45 J")),
        (CIRCUIT, "R1", ("4 Ω",), ("6 Ω", "12 V", "a resistor R1")),
        (CIRCUIT, "epsilon", ("12 V",), ("6 Ω", "a battery ε")),
        (SKETCH, "F", ("9 N", "force arrow"), ("3 kg", "2 m")),
        (SKETCH, "m", ("3 kg",), ("9 N", "A box labelled m")),
        (SKETCH, "d", ("2 m",), ("9 N", "A distance labelled d")),
        (LINE, "Q1", ("negative",), ("A and B", "to the right")),
        (LINE, "F", ("to the right",), ("A (negative)",)),
        (LINE, "F_BA", ("to the right",), ("A (negative)",)),
        (PLANE, "F_21", ("points",), ("Q2 (positive)",)),
        (PLANE, "Q1", ("negative", "positive"), ("F21 points",)),
        (GRAPH, "t_1", ("P is marked",), ("slope triangle", "shaded")),
        (GRAPH, "x", ("shaded",), ("slope triangle",)),
        (GRAPH, "a", ("slope triangle",), ("shaded",)),
        (plates_scene(particle="drop", forces=[("F_E", 1, 90)]), "F_E", ("upwards",), ("field lines",)),
        (plates_scene(particle="drop", forces=[("F_E", 1, 90)]), "E", ("field lines run",), ("upwards",)),
        (free_body_diagram([Force("T", 2, 30, ("F_T",)), ("w", 1, 270)]), "F_T", ("30°",), ("Labelled: w",)),
    ],
)
def test_what_is_asked_is_gone(figure: Figure, asked: str, gone: tuple[str, ...], kept: tuple[str, ...]) -> None:
    """Every sign of the asked value is gone from picture and words; the rest stays."""
    before, after = seen(figure), seen(figure.without({asked}))
    for words in (*gone, *kept):
        assert words in before or words.startswith(("Labelled", "A and B"))
    for words in gone:
        assert words not in after
    for words in kept:
        assert words in after


def test_a_figure_without_the_asked_is_the_same() -> None:
    """A name that nothing shows takes nothing away."""
    assert VELOCITIES.without({"p"}) is VELOCITIES


def test_an_angle_drawn_true_is_not_shown_at_all() -> None:
    """Where the shape itself tells, there is no figure."""
    assert slope_scene(30, [("A", 0.5, 1)], angle_label="θ").without({"theta"}) is None
    assert composed("Hill", [Slope((0, 0), 9, 25, "θ"), Trolley((2, 2), 2, 1, "A")]).without({"theta"}) is None


def test_lines_alone_are_nothing_to_look_at() -> None:
    """With all its pieces hidden a figure is None, not an empty frame."""
    figure = Figure("F", "A force.", (Segment((0, 0), (9, 0), "guide"), Arrow((0, 0), (3, 0), "F")))
    assert figure.without({"F"}) is None


@pytest.mark.parametrize("key", topics.question_keys())
def test_no_scene_shows_an_arrow_of_what_is_to_be_found(key: str) -> None:
    """In practice and papers no arrow, and no word, tells of a value the steps make."""
    _, question = topics.find(key)
    for seed in range(3):
        for level in (1, 3):
            drawn = cases.drawn(key, seed, level)
            found = read(question, drawn.inputs, drawn.find, variant=drawn.variant)
            plan = question.plan(found.data)
            made = {symbol(step.makes).label.replace("{", "").replace("}", "") for step in plan.steps}
            for scene in (fair_scene(plan, found), plain_scene(plan, found)):
                for item in scene.items if scene else ():
                    label = getattr(item, "label", "").replace("{", "").replace("}", "")
                    assert not (isinstance(item, Arrow) and label.partition(" =")[0] in made)
                words = scene.description if scene else ""
                for name in made:
                    assert f"{name.replace('_', ' ')} points" not in words
                    assert f"{name.replace('_', '')} points" not in words


READ = ("positions", "reading", "accelerations")


@pytest.mark.parametrize("key", [f"projectile.{kind}" for kind in READ] + ["gravitation.graph"])
def test_a_graph_that_is_read_is_there_to_be_read(key: str) -> None:
    """In practice and on paper, whichever numbers its axes happen to have in common with the answers."""
    _, question = topics.find(key)
    for seed in range(5):
        for level in (1, 2):
            drawn = cases.drawn(key, seed, level, 5)
            found = read(question, drawn.inputs, drawn.find, variant=drawn.variant)
            plan = question.plan(found.data)
            assert fair_scene(plan, found) is not None, seed
            assert plain_scene(plan, found) is not None, seed


@pytest.mark.parametrize(
    ("words", "label", "shown"),
    [
        ("The first is at 8 m, the second beyond it.", "", True),  # told in the story already
        ("The second is at 6 m.", "", False),  # the answer, told by the picture alone
        ("The first is at 8 m.", "6 m", False),
        ("The first is at 8 m.", "8 m", True),
    ],
)
def test_a_number_of_the_picture_tells_only_what_the_story_does_not(words: str, label: str, shown: bool) -> None:
    """6 m is asked: the picture is left out where its words or a label say it, and stays where they say 8 m, as the
    story does."""
    step = Step(law="y = x - 2", make="y = x - 2", what="", why="", unit="m")
    picture = Figure("Places", words, (Text((0, 0), label or "P"), Segment((0, 0), (9, 0), "axis")))
    plan = Plan(
        "The first is at 8 m.",
        (Asked("find", "calculate", "Where is the second?", (step,)),),
        {"x": 8.0},
        scene=lambda v: picture,
    )
    question = topics.find("projectile.lift")[1]
    assert (fair_scene(plan, read(question, question.example)) is not None) == shown


def test_the_numbers_along_an_axis_are_no_answer() -> None:
    """A graph whose axis has a 6 is shown where 6 m is asked; a label beside a point of it is not."""
    step = Step(law="y = x - 2", make="y = x - 2", what="", why="", unit="m")
    question = topics.find("projectile.lift")[1]
    for mark, shown in (("P", True), ("6 m", False)):
        drawn = graph("a", "b", [([(0.0, 0.0), (5.0, 12.0)], "")], marks=[(5.0, 12.0, mark)], description="A line.")
        assert "6" in [getattr(item, "text", "") for item in drawn.items]
        plan = Plan(
            "A line.",
            (Asked("find", "calculate", "Where is it?", (step,)),),
            {"x": 8.0},
            scene=lambda v, drawn=drawn: drawn,  # type: ignore[misc]
        )
        assert (fair_scene(plan, read(question, question.example)) is not None) == shown
