"""Charges at corners given by sides, against numpy vector sums over places that sympy's geometry gives."""

from __future__ import annotations

import math

import numpy as np
import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.model.answers import WorkedAnswer
from calc.model.constants import Settings
from calc.model.questions import Refusal
from calc.renderings import svg
from calc.topics import find
from calc.working.reading import Refusals, read
from calc.working.working import run, work

K = 9.0e9  # school value
CHARGES = st.sampled_from([-9, -5, -3, -1, 1, 2, 4, 7])


def solve(key: str, variant: int = 0, **typed: str) -> WorkedAnswer:
    """The worked answer; what is not given comes from the example."""
    topic, question = find(f"several-charges.{key}")
    return work(topic, question, read(question, {**question.example, **typed}, variant=variant))


def net_on(charges: list[float], places: list[tuple[float, float]], on: int) -> np.ndarray:
    """k Q q d/|d|³ summed by numpy over signed charges in nC and places in cm."""
    points, total = np.array(places, dtype=float) / 100, np.zeros(2)
    for i, point in enumerate(points):
        if i != on:
            step = points[on] - point
            total += K * charges[on] * charges[i] * 1e-18 * step / np.linalg.norm(step) ** 3
    return total


def corner_above(base: float, left: float, right: float) -> tuple[float, float]:
    """The third corner as the upper point where two circles meet."""
    x = (base + (left - right) * (left + right) / base) / 2
    return x, math.sqrt(left**2 - x**2)


def spaced(words: str) -> str:
    """Words with plain spaces."""
    return words.replace("\N{NO-BREAK SPACE}", " ")


def agrees(worked: WorkedAnswer, net: np.ndarray) -> None:
    """Size, components and full angle are those of the vector."""
    shown = next(part.answer for part in worked.parts if part.key == "net")
    assert shown
    size = float(np.linalg.norm(net))
    assert shown.value == pytest.approx(size, rel=1e-7)
    assert worked.values["SigmaF_x"] == pytest.approx(net[0], rel=1e-7, abs=1e-7 * size)
    assert worked.values["SigmaF_y"] == pytest.approx(net[1], rel=1e-7, abs=1e-7 * size)
    assert shown.direction
    turn = (shown.direction.angle - math.degrees(math.atan2(net[1], net[0]))) % 360
    assert min(turn, 360 - turn) < 1e-4
    assert worked.unproven == ()


@given(st.tuples(CHARGES, CHARGES, CHARGES), st.tuples(*[st.integers(5, 40)] * 3), st.sampled_from("123"))
def test_any_triangle_is_that_of_numpy(q: tuple[int, int, int], sides: tuple[int, int, int], on: str) -> None:
    """Three sides and three signed charges give the vector sum over places found by circles."""
    base, left, right = sides
    assume(2 * max(sides) < sum(sides))
    typed = {f"Q{n + 1}": f"{value} nC" for n, value in enumerate(q)}
    worked = solve("triangle", **typed, r_12=f"{base} cm", r_13=f"{left} cm", r_23=f"{right} cm", on=on)
    places = [(0.0, 0.0), (float(base), 0.0), corner_above(base, left, right)]
    agrees(worked, net_on(list(q), places, int(on) - 1))


@pytest.mark.parametrize("on", "123")
@pytest.mark.parametrize(
    ("shape", "typed", "sides"),
    [
        ("right", {"r_12": "30 cm", "r_13": "40 cm"}, (30, 40, 50)),
        ("right", {"r_12": "30 cm", "r_23": "50 cm"}, (30, 40, 50)),
        ("right", {"r_13": "5 cm", "r_23": "13 cm"}, (12, 5, 13)),
        ("right", {"r_12": "12 cm", "r_13": "5 cm", "r_23": "13 cm"}, (12, 5, 13)),
        ("isosceles", {"r_12": "30 cm", "r_13": "20 cm"}, (30, 20, 20)),
        ("isosceles", {"r_12": "10 cm", "r_23": "25 cm"}, (10, 25, 25)),
        ("equilateral", {"r_12": "20 cm"}, (20, 20, 20)),
        ("equilateral", {"r_13": "20 cm"}, (20, 20, 20)),
        ("equilateral", {"r_23": "8 cm"}, (8, 8, 8)),
    ],
)
def test_each_shape_needs_only_its_own_sides(
    shape: str, typed: dict[str, str], sides: tuple[int, int, int], on: str
) -> None:
    """A special triangle is worked from fewer sides and gives what its three sides give."""
    empty = {"r_12": "", "r_13": "", "r_23": ""}
    worked = solve("triangle", shape=shape, on=on, **{**empty, **typed})
    places = [(0.0, 0.0), (float(sides[0]), 0.0), corner_above(*sides)]
    agrees(worked, net_on([4, -6, 5], places, int(on) - 1))


@given(st.tuples(CHARGES, CHARGES, CHARGES, CHARGES), st.integers(5, 40), st.integers(0, 40), st.sampled_from("1234"))
def test_a_square_and_a_rectangle_are_those_of_numpy(
    q: tuple[int, int, int, int], wide: int, high: int, on: str
) -> None:
    """An empty height is a square; the sum over all four corners is numpy's."""
    tall = high if high > 4 else wide
    places = [(0, 0), (wide, 0), (wide, tall), (0, tall)]
    net = net_on(list(q), places, int(on) - 1)
    assume(np.linalg.norm(net) > 1e-9)
    typed = {f"Q{n + 1}": f"{value} nC" for n, value in enumerate(q)}
    agrees(solve("square", **typed, r_12=f"{wide} cm", r_14=f"{high} cm" if high > 4 else "", on=on), net)


@pytest.mark.parametrize(
    ("sides", "blunt"), [((14, 13, 15), False), ((10, 8, 15), True), ((20, 15, 7), False), ((9, 20, 14), True)]
)
def test_the_cosine_rule_is_written_out(sides: tuple[int, int, int], blunt: bool) -> None:
    """Law, the product alone, the cosine alone, the angle: each line holds for the angle sympy finds."""
    base, left, right = sides
    worked = solve("triangle", r_12=f"{base} cm", r_13=f"{left} cm", r_23=f"{right} cm", on="3")
    corners = sympy.Point(0, 0), sympy.Point(base, 0)
    meet = sympy.Circle(corners[0], left).intersection(sympy.Circle(corners[1], right))
    third = max(meet, key=lambda point: point.y)
    inside = [float(a) for p, a in sympy.Triangle(*corners, third).angles.items() if p != third]
    acute = sorted(min(angle, math.pi - angle) for angle in inside)
    assert sorted(worked.values[f"theta_{n}3"] for n in "12") == pytest.approx(acute)
    steps = [part.steps[0] for part in worked.parts if part.key.startswith("angle-")]
    assert [len(step.algebra) for step in steps] == [4, 4]
    assert any("left of it to 180°" in step.why for step in steps) == blunt
    law = next(s for s in steps if ("180°" in s.why) == blunt).formula.text
    assert (" + 2r₁₂" in law) == blunt


def test_a_right_angle_is_found_from_three_sides() -> None:
    """3-4-5: the angle step gives 90° and the force along y needs no component."""
    worked = solve("triangle", r_12="3 cm", r_13="4 cm", r_23="5 cm")
    assert math.degrees(worked.values["theta_13"]) == pytest.approx(90)
    assert not any(step.makes == "F_31x" for part in worked.parts for step in part.steps)


REFUSED = [
    (
        "triangle",
        {"r_23": ""},
        "r_23",
        "A triangle is fixed by its three sides: fill in this one too, or choose another shape.",
    ),
    (
        "triangle",
        {"r_23": "30 cm"},
        "r_23",
        (
            "These sides make no triangle: the one between charges 2 and 3 (0,30 m) must be shorter than the other two"
            " together (0,27 m). Change one of the sides."
        ),
    ),
    (
        "triangle",
        {"r_12": "28 cm"},
        "r_12",
        (
            "These sides make no triangle: the one between charges 1 and 2 (0,28 m) must be shorter than the other two"
            " together (0,28 m). With these lengths the three charges lie on one line. Change one of the sides."
        ),
    ),
    (
        "triangle",
        {"shape": "right", "r_13": "", "r_23": ""},
        "r_13",
        "A right-angled triangle needs two of its sides: fill in one more.",
    ),
    (
        "triangle",
        {"shape": "right", "r_13": "", "r_23": "10 cm"},
        "r_23",
        (
            "The side between charges 2 and 3 lies opposite the right angle, so it must be the longest. Type a larger"
            " distance here, or a smaller one for the other side."
        ),
    ),
    (
        "triangle",
        {"shape": "isosceles", "r_12": "", "r_23": ""},
        "r_12",
        (
            "An isosceles triangle needs its base, between charges 1 and 2, and one of the two equal sides: fill in"
            " this one too."
        ),
    ),
    (
        "triangle",
        {"shape": "isosceles", "r_12": "40 cm", "r_23": ""},
        "r_12",
        (
            "These sides make no triangle: the one between charges 1 and 2 (0,40 m) must be shorter than the other two"
            " together (0,26 m). Change one of the sides."
        ),
    ),
    (
        "triangle",
        {"shape": "equilateral", "r_12": "", "r_13": "", "r_23": ""},
        "r_12",
        "An equilateral triangle needs one side: fill in this one.",
    ),
    (
        "triangle",
        {"shape": "equilateral", "r_23": ""},
        "r_12",
        "This does not fit the other numbers: they give 0,13 m. Correct it, or leave this box empty.",
    ),
    (
        "triangle",
        {"shape": "isosceles"},
        "r_13",
        "This does not fit the other numbers: they give 0,15 m. Correct it, or leave this box empty.",
    ),
    (
        "triangle",
        {"shape": "right", "r_23": "20 cm"},
        "r_12",
        "This does not fit the other numbers: they give 0,15 m. Correct it, or leave this box empty.",
    ),
    ("triangle", {"Q2": "0 nC"}, "Q2", "A zero charge gives no force, so this cannot be found."),
    ("triangle", {"r_12": "0 cm"}, "r_12", "Distance must be greater than zero."),
    ("square", {"Q4": "0"}, "Q4", "A zero charge gives no force, so this cannot be found."),
    ("square", {"r_14": "0 cm"}, "r_14", "Distance must be greater than zero."),
]


@pytest.mark.parametrize(("key", "typed", "field", "sentence"), REFUSED)
def test_impossible_sides_are_refused(key: str, typed: dict[str, str], field: str, sentence: str) -> None:
    """The box and the sentence, word for word."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(key, **typed)
    refusals = caught.value.refusals if isinstance(caught.value, Refusals) else (caught.value,)
    assert (field, sentence) in [(r.field, spaced(r.sentence)) for r in refusals]


@pytest.mark.parametrize("on", "123")
@pytest.mark.parametrize(
    ("shape", "sides"),
    [("right", "4 2,9999 5"), ("isosceles", "5 8 7,99"), ("equilateral", "8 7,99 8"), ("right", "4 3 5")],
)
def test_more_sides_than_needed_are_compared_and_left_out(shape: str, sides: str, on: str) -> None:
    """Sides that agree to their figures: those not needed are named as spare, and the checks still hold."""
    boxes = {f"r_{ends}": f"{side} cm" for ends, side in zip(("12", "13", "23"), sides.split(), strict=True)}
    worked = solve("triangle", shape=shape, on=on, **boxes)
    assert worked.unproven == ()
    spare = [note for note in worked.notes if note.startswith("More is given than is needed")]
    assert len(spare) == (2 if shape == "equilateral" else 1)


@pytest.mark.parametrize("key", ["triangle", "square"])
def test_three_tellings_give_the_same_answer(key: str) -> None:
    """Three openings, each with every charge and side that is given; the net force is the same."""
    told = [solve(key, variant=n) for n in range(3)]
    assert len({worked.story for worked in told}) == 3
    assert len({worked.values["F_net"] for worked in told}) == 1
    for worked in told:
        for datum in (line.shown.text for line in worked.given if line.symbol.text):
            assert spaced(datum) in spaced(worked.story)


@pytest.mark.parametrize(
    ("key", "typed", "name", "at", "value", "say"),
    [
        (
            "triangle",
            {},
            "not-doubled",
            "theta_13",
            math.acos(140 / (14 * 13)),
            "You left out the 2 of the cosine rule. It has twice the product of the two sides: divide by 2r₁₂r₁₃.",
        ),
        (
            "triangle",
            {},
            "wrong-side-opposite",
            "theta_13",
            math.acos((14**2 + 15**2 - 13**2) / (2 * 14 * 15)),
            "You found another angle of the triangle. The side opposite charge 1 does not touch it: put r₂₃ there.",
        ),
        (
            "triangle",
            {"shape": "isosceles", "r_12": "10 cm", "r_23": ""},
            "not-halved",
            "theta_13",
            math.acos(10 / 13),
            "You used the whole base. Only half of r₁₂ belongs to the right-angled triangle: halve it.",
        ),
        (
            "triangle",
            {"shape": "right", "r_23": "", "on": "2"},
            "sides-added",
            "r_23",
            0.27,
            "You added the two sides. The distance r₂₃ is straight across: use Pythagoras.",
        ),
        (
            "triangle",
            {"shape": "right", "r_13": "", "on": "2"},
            "squares-added",
            "r_13",
            math.hypot(0.14, 0.15),
            "You added the squares. The longest side is r₂₃, which is known: subtract the squares instead.",
        ),
        (
            "triangle",
            {"shape": "right", "r_23": "", "on": "2"},
            "angle-inverted",
            "theta_23",
            math.atan(14 / 13),
            "You divided the sides the other way round. Seen from charge 2, r₁₃ is opposite θ₂₃: divide it by r₁₂.",
        ),
        (
            "square",
            {},
            "sides-added",
            "r_13",
            0.4,
            "You added the two sides. The distance r₁₃ is straight across: use Pythagoras.",
        ),
    ],
)
def test_slips_with_the_sides_give_the_listed_values(
    key: str, typed: dict[str, str], name: str, at: str, value: float, say: str
) -> None:
    """Each slip leads to the value it is known by, and says its sentence."""
    _, question = find(f"several-charges.{key}")
    plan = question.plan(read(question, {**question.example, **typed}).data)
    found = next(m for step in plan.steps for m in step.mistakes if m.key == name and m.at == at)
    assert found.said == say
    values = run(plan, Settings().constants(), instead={at: found.instead})
    assert values[at] == pytest.approx(value)


def test_at_45_degrees_nobody_is_told_of_sin_for_cos() -> None:
    """Along the diagonal of a square both components are alike, so the slip leaves no trace."""
    _, question = find("several-charges.square")
    plan = question.plan(read(question, question.example).data)
    assert "sin-for-cos" not in {m.key for step in plan.steps for m in step.mistakes}


def test_the_figure_keeps_the_shape_and_names_the_sides_given() -> None:
    """The scene carries the three lengths typed; the forces are drawn on the chosen charge only."""
    worked = solve("triangle")
    assert worked.figure
    drawn = spaced(svg.render(worked.figure))
    for side in ("14 cm", "13 cm", "15 cm"):
        assert side in drawn
    net = next(part for part in worked.parts if part.key == "net")
    assert net.figure
    assert net.figure.title == "Forces on charge 1"
    assert {part.key: part.marks for part in worked.parts} == {
        "state": 2,
        "angle-13": 2,
        "force-2": 2,
        "force-3": 2,
        "draw": 2,
        "net": 6,
        "sum": 2,
    }
