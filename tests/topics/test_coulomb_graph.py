"""F against 1/r²: the gradient against numpy's least squares, the words, the picture, and readings that cannot be."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import Curve
from calc.figures.graph_words import short
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.topics import find
from calc.working.reading import Refusals, read
from calc.working.working import work

K = 9.0e9
STRAIGHT = [
    (5, 720.0),
    (10, 180.0),
    (20, 45.0),
]  # cm, µN: exactly on a line with the gradient 1,8 µN·m²


def solve(readings: list[tuple[float, float]], variant: int = 0, **typed: str) -> WorkedAnswer:
    """The worked answer for readings in cm and µN."""
    topic, question = find("coulomb.graph")
    rows = [{"r": f"{r!r} cm", "F": f"{force!r} µN"} for r, force in readings]
    return work(topic, question, read(question, {"readings": rows, **typed}, variant=variant))


def plain(text: str) -> str:
    """Ordinary spaces."""
    return text.replace("\N{NO-BREAK SPACE}", " ")


@given(
    st.lists(st.integers(3, 60), min_size=3, max_size=8, unique=True),
    st.lists(st.floats(0.9, 1.1), min_size=8, max_size=8),
    st.integers(5, 90),
    st.integers(5, 90),
)
def test_the_gradient_is_that_of_numpys_least_squares(places: list[int], off: list[float], q1: int, q2: int) -> None:
    """numpy.linalg.lstsq with the one column 1/r² gives the gradient; the product and the charge follow."""
    forces = [float(f"{K * q1 * q2 * 1e-18 / (p / 100) ** 2 * f * 1e6:.4g}") for p, f in zip(places, off, strict=False)]
    column = np.array([[1 / (p / 100) ** 2] for p in places])
    (slope,), *_ = np.linalg.lstsq(column, np.array(forces) * 1e-6, rcond=None)
    worked = solve(list(zip(places, forces, strict=True)), Q1=f"{q1} nC", r_P="9 cm")
    assert worked.values["m"] == pytest.approx(slope, rel=1e-9)
    assert worked.values["P"] == pytest.approx(slope / K, rel=1e-9)
    assert worked.values["Q2"] == pytest.approx(slope / K / (q1 * 1e-9), rel=1e-9)
    assert worked.values["F_P"] == pytest.approx(slope / 0.09**2, rel=1e-9)
    assert worked.unproven == ()


def test_readings_on_the_law_give_the_charges_back() -> None:
    """Readings worked from 20 nC and 10 nC give 10 nC for the other, and the force at 8 cm."""
    worked = solve(STRAIGHT, Q1="-20 nC", r_P="8 cm")
    assert worked.values["m"] == pytest.approx(1.8e-6)
    assert worked.values["Q2"] == pytest.approx(10e-9)
    assert worked.values["F_P"] == pytest.approx(K * 200e-18 / 0.0064)
    assert worked.warnings == ()
    assert [part.key for part in worked.parts] == [
        "explain",
        "squares",
        "draw",
        "gradient",
        "product",
        "charge",
        "read",
    ]


def test_without_a_charge_or_a_place_nothing_is_asked_of_them() -> None:
    """The parts end with the product of the charges."""
    assert [part.key for part in solve(STRAIGHT).parts][-1] == "product"


def test_the_memo_explains_the_line() -> None:
    """Why straight, why through the origin, what a doubled charge does."""
    points = [point.words for point in solve(STRAIGHT).parts[0].points]
    assert points == [
        (
            "F = kQ₁Q₂ × (1/r²), and kQ₁Q₂ does not change: F is directly proportional to 1/r², so the points lie on a"
            " straight line."
        ),
        (
            "The further apart the charges are, the nearer both 1/r² and F come to zero, so the line passes through the"
            " origin."
        ),
        "The gradient is kQ₁Q₂: with one charge doubled it is doubled, and the line is twice as steep.",
    ]


def test_a_doubled_charge_makes_the_line_twice_as_steep() -> None:
    """The memo's sentence holds for the numbers: twice the forces, twice the gradient."""
    doubled = [(r, 2 * force) for r, force in STRAIGHT]
    assert solve(doubled).values["m"] == pytest.approx(2 * solve(STRAIGHT).values["m"])


def test_the_graph_shows_readings_line_triangle_and_the_point_read_off() -> None:
    """The words of the figure tell all of it, the line from the origin, with powers of ten as a teacher writes them."""
    figure = next(p.figure for p in solve(STRAIGHT, r_P="8 cm").parts if p.key == "draw")
    said = plain(figure.description)
    assert said.startswith(
        "Graph of F (N) against 1/r² (m⁻²). Crosses at (400; 0,00072), (100; 0,00018) and (25; 4,5 × 10⁻⁵). "
        "A straight line rises from (0; 0) to"
    )
    assert "A slope triangle with the sides Δ(1/r²) and ΔF stands between" in said
    assert "P is marked at (156; 0,000281)" in said
    assert len([item for item in figure.items if isinstance(item, Curve)]) == 1


@pytest.mark.parametrize(
    ("value", "said"),
    [(0.0, "0"), (4.5e-5, "4,5 × 10⁻⁵"), (-2e7, "−2 × 10⁷"), (0.25, "0,25"), (-3.0, "−3")],
)
def test_a_coordinate_is_told_as_a_teacher_writes_it(value: float, said: str) -> None:
    """No letter e stands for a power of ten in the words of a graph."""
    assert short(value) == said


@pytest.mark.parametrize(("force", "warned"), [(115.0, False), (120.0, True), (0.0, False), (300.0, True)])
def test_a_reading_far_from_the_line_is_pointed_out(force: float, warned: bool) -> None:
    """More than a tenth of the largest force (720 µN) away from the line of all is; nearer is let pass."""
    told = solve([(5, 720.0), (10, 180.0), (20, force)]).warnings
    sentence = "Reading 3 lies far from the line of the others. Check its distance, its force and their prefixes."
    assert told == ((sentence,) if warned else ())


@pytest.mark.parametrize(
    ("readings", "typed", "field", "sentence"),
    [
        (
            [(5, 720.0)] * 3,
            {},
            "readings.1.r",
            (
                "All these distances are the same, so every point lies above the same place of the axis and no line "
                "can be drawn. Type at least two different distances."
            ),
        ),
        (
            [(5, 0.0), (6, 0.0), (7, 0.0)],
            {},
            "readings.0.F",
            (
                "All these forces are zero: without a force there is no gradient and no charge to find. Type forces"
                " above zero."
            ),
        ),
        (STRAIGHT, {"Q1": "0 C"}, "Q1", "A zero charge gives no force, so this cannot be found."),
    ],
)
def test_readings_that_give_no_line_are_refused(
    readings: list[tuple[float, float]], typed: dict[str, str], field: str, sentence: str
) -> None:
    """The refusal stands at a box that can be changed."""
    with pytest.raises(Refusal) as caught:
        solve(readings, **typed)
    assert (caught.value.field, caught.value.sentence) == (field, sentence)


def test_two_readings_are_too_few() -> None:
    """A line from two points shows nothing about the law."""
    with pytest.raises(Refusals) as caught:
        solve(STRAIGHT[:2])
    assert caught.value.refusals[0].sentence == "Give from 3 to 8 rows: there are 2."


@pytest.mark.parametrize("variant", [0, 1, 2])
def test_each_telling_names_the_spheres_and_the_readings(variant: int) -> None:
    """The three openings differ; the readings follow each."""
    story = plain(solve(STRAIGHT, variant).story)
    assert story.endswith("The readings: 720 µN at 5 cm; 180 µN at 10 cm; 45 µN at 20 cm.")
    assert "A" in story
    assert len({solve(STRAIGHT, one).story for one in range(3)}) == 3


SQUARE_FIRST = "You divided by the distance itself. The axis is 1/r²: square the distance first, then divide 1 by it."


@pytest.mark.parametrize(
    ("at", "key", "wrong", "say"),
    [
        ("x3", "not-squared", 1 / 0.2, SQUARE_FIRST),
        (
            "m",
            "rows-not-squared",
            (720 / 0.05 + 180 / 0.1 + 45 / 0.2) * 1e-6 / 525,
            SQUARE_FIRST,
        ),
        (
            "m",
            "rows-not-inverted",
            5.4e-6 / (0.05**4 + 0.1**4 + 0.2**4),
            "You stopped at r², the square of the distance. The axis is 1/r²: divide 1 by it.",
        ),
        (
            "m",
            "upside-down",
            1 / 1.8e-6,
            "You divided the other way round. The gradient is the change in F for each step in 1/r²: divide F by 1/r².",
        ),
        (
            "P",
            "multiplied",
            1.8e-6 * K,
            "You multiplied the gradient by k. The gradient is k times the product of the charges, so divide by k.",
        ),
        (
            "Q2",
            "root-taken",
            (200e-18) ** 0.5,
            "You took the square root of P. That holds only for two equal charges: divide P by Q₁ instead.",
        ),
        (
            "F_P",
            "not-squared",
            1.8e-6 / 0.08,
            "You multiplied the gradient by 1/r. The axis of the graph is 1/r²: square r_P before you divide by it.",
        ),
    ],
)
def test_known_mistakes_have_their_values_and_sentences(at: str, key: str, wrong: float, say: str) -> None:
    """Each slip, put in for its step, gives the value a learner would have."""
    from calc.language.expressions import expression
    from calc.working.working import sized

    _, question = find("coulomb.graph")
    rows = [{"r": f"{r} cm", "F": f"{force} µN"} for r, force in STRAIGHT]
    found = read(question, {"readings": rows, "Q1": "-20 nC", "r_P": "8 cm"})
    plan = question.plan(found.data)
    values = solve(STRAIGHT, Q1="-20 nC", r_P="8 cm").values
    step = next(step for step in plan.steps if step.makes == at)
    slip = next(m for m in step.mistakes if m.key == key)
    assert expression(slip.instead).value(sized(values, step.sizes)) == pytest.approx(wrong)
    assert slip.said == say


@pytest.mark.parametrize(
    ("gradient", "state"),
    [("1,72e-6", "right"), ("1,88e-6", "right"), ("1,70e-6", "not recognised"), ("1,90e-6", "not recognised")],
)
def test_a_gradient_read_from_a_line_drawn_by_eye_is_right(gradient: str, state: str) -> None:
    """Within 5 % of the best line it earns its marks, and what follows from it is right as well, without a reproach."""
    import json

    from calc import desk

    rows = [{"r": f"{r} cm", "F": f"{force} µN"} for r, force in STRAIGHT]
    own = float(gradient.replace(",", "."))
    answers = {
        "gradient": {"value": f"{gradient} N·m²"},
        "product": {"value": f"{own / K:.3g} C²"},
        "charge": {"value": f"{own / K / 20e-9:.3g} C"},
    }
    data = {"question": "coulomb.graph", "inputs": {"readings": rows, "Q1": "20 nC"}, "answers": answers}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    parts = {part["part"]: part for part in reply["data"]["parts"]}
    assert parts["gradient"]["state"] == state
    follows = "right" if state == "right" else "carried"
    assert [parts[name]["state"] for name in ("product", "charge")] == [follows, follows]
    assert all(parts[name]["earned"] == 3 for name in ("product", "charge"))
    if state == "right":
        assert not any("Carry every digit" in s for p in parts.values() for s in p["sentences"])
