"""What a stated net force in a plane tells of a charge or a distance, against numpy sums and sympy's equations."""

from __future__ import annotations

import math
import random
from typing import Any

import numpy as np
import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.figures.pieces import AngleMark
from calc.model.answers import AnswerShown, WorkedAnswer
from calc.model.constants import Settings
from calc.model.questions import Refusal
from calc.practice.drawing import draw
from calc.renderings import svg
from calc.topics import find
from calc.working.reading import Refusals, read
from calc.working.working import run, work

K = 9.0e9  # school value
CHARGES = st.sampled_from([-9, -5, -3, -1, 1, 2, 4, 7])
GAPS = st.sampled_from([8, 12, 20, 35])
ANGLES = st.sampled_from([25, 60, 90, 110, 155, 205, 270, 320])
UNKNOWNS = ("Q3", "r_13", "Q2", "r_12", "Q1")


def solve(find_: str = "", variant: int = 0, **typed: str) -> WorkedAnswer:
    """The worked answer; what is not given comes from the example."""
    topic, question = find("several-charges.stated")
    return work(topic, question, read(question, {**question.example, **typed}, find_, variant=variant))


def found(worked: WorkedAnswer, part: str = "find") -> AnswerShown:
    """The answer of a part."""
    answer = next(one.answer for one in worked.parts if one.key == part)
    assert answer
    return answer


def net_force(data: dict[str, float]) -> np.ndarray:
    """k Q q d/|d|³ on charge 1 at the origin, by numpy; nC, cm and degrees."""
    phi, total = math.radians(data["phi"]), np.zeros(2)
    for n, way in (("2", (1.0, 0.0)), ("3", (math.cos(phi), math.sin(phi)))):
        step = -np.array(way) * data[f"r_1{n}"] / 100
        total += K * data["Q1"] * data[f"Q{n}"] * 1e-18 * step / np.linalg.norm(step) ** 3
    return total


def typed(data: dict[str, float]) -> dict[str, str]:
    """The data as they are typed, the net force left out."""
    units = {"Q": "nC", "r": "cm", "p": "°"}
    boxes = {name: f"{value} {units[name[0]]}" for name, value in data.items()}
    return {**boxes, "F_x": "", "F_y": "", "F_net": "", "theta": ""}


@given(CHARGES, CHARGES, CHARGES, GAPS, GAPS, ANGLES, st.sampled_from(UNKNOWNS), st.sampled_from(["x", "y", "size"]))
def test_each_unknown_comes_back_from_the_net_force(
    q1: int, q2: int, q3: int, near: int, far: int, phi: int, unknown: str, told: str
) -> None:
    """The net force by numpy, told as a component or as size and direction, gives back what was left out."""
    data: dict[str, float] = {"Q1": q1, "Q2": q2, "Q3": q3, "r_12": near, "r_13": far, "phi": phi}
    net = net_force(data)
    size = float(np.linalg.norm(net))
    if told == "x":
        assume(unknown not in ("Q3", "r_13") or phi not in (90, 270))
        assume(abs(net[0]) > 1e-3 * size)
        given_ = {"F_x": f"{float(net[0])!r} N"}
    elif told == "y":
        assume(unknown not in ("Q2", "r_12"))
        given_ = {"F_y": f"{float(net[1])!r} N"}
    else:
        assume(size > 1e-9)
        assume(abs(net[0]) > 1e-3 * size)
        way = math.degrees(math.atan2(net[1], net[0])) % 360
        given_ = {"F_net": f"{size!r} N", "theta": f"{way!r}°"}
    worked = solve(unknown, **{**typed(data), **given_, unknown: ""})
    answer = found(worked)
    scale = 1e-2 if unknown.startswith("r") else 1e-9
    assert answer.value == pytest.approx(abs(data[unknown]) * scale, rel=1e-6)
    if unknown.startswith("Q"):
        assert answer.direction
        assert answer.direction.key == ("positive" if data[unknown] > 0 else "negative")
    assert worked.unproven == ()


@given(CHARGES, CHARGES, CHARGES, ANGLES)
def test_two_charges_follow_from_both_components(q1: int, q2: int, q3: int, phi: int) -> None:
    """sympy solves the two component equations for Q₂ and Q₃ with their signs."""
    data: dict[str, float] = {"Q1": q1, "Q2": q2, "Q3": q3, "r_12": 20, "r_13": 30, "phi": phi}
    x, y = (float(part) for part in net_force(data))
    a, b = sympy.symbols("a b")
    per = -K * q1 * 1e-9
    turn = math.radians(phi)
    root = sympy.solve(
        [per * (a / 0.04 + b * round(math.cos(turn), 12) / 0.09) - x, per * b * math.sin(turn) / 0.09 - y], [a, b]
    )
    boxes = {**typed(data), "F_x": f"{x!r} N", "F_y": f"{y!r} N", "Q2": "", "Q3": ""}
    worked = solve("Q2,Q3", **boxes)
    for name, symbol in (("Q2", a), ("Q3", b)):
        answer = found(worked, f"find-{name}")
        assert answer.value == pytest.approx(abs(float(root[symbol])), rel=1e-6)
        assert answer.direction
        assert answer.direction.key == ("positive" if root[symbol] > 0 else "negative")
    assert worked.unproven == ()


def answers(worked: WorkedAnswer) -> list[tuple[float, float]]:
    """Each answer that is given, the second one too: its value and, for a charge, its sign."""
    kept = [part.answer for part in worked.parts if part.key in ("find", "second") and part.answer]
    signs = {"positive": 1.0, "negative": -1.0}
    return [(one.value, signs.get(one.direction.key if one.direction else "", 0.0)) for one in kept]


@given(CHARGES, CHARGES, CHARGES, GAPS, GAPS, ANGLES, st.sampled_from(["Q3", "r_13", "Q2", "r_12"]))
def test_the_size_alone_gives_every_answer_that_fits(
    q1: int, q2: int, q3: int, near: int, far: int, phi: int, unknown: str
) -> None:
    """Without its direction: numpy's roots of |F|² as a polynomial of the unknown force, each of them and no other."""
    data: dict[str, float] = {"Q1": q1, "Q2": q2, "Q3": q3, "r_12": near, "r_13": far, "phi": phi}
    size = float(np.linalg.norm(net_force(data)))
    tag, other = unknown[-1], {"2": "3", "3": "2"}[unknown[-1]]
    pull = {n: -K * q1 * data[f"Q{n}"] * 1e-18 / (data[f"r_1{n}"] / 100) ** 2 for n in "23"}
    roots = np.roots([1, 2 * pull[other] * math.cos(math.radians(phi)), pull[other] ** 2 - size**2]).real
    assume(abs(roots[0] - roots[1]) > 1e-4 * size and min(abs(roots)) > 1e-4 * size)
    if unknown[0] == "Q":
        gap = data[f"r_1{tag}"] / 100
        expected = [(abs(f) * gap**2 / (K * abs(q1) * 1e-9), -math.copysign(1, f * q1)) for f in roots]
    else:
        right = [f for f in roots if f * pull[tag] > 0]
        expected = [(math.sqrt(K * abs(q1 * data[f"Q{tag}"]) * 1e-18 / abs(f)), 0.0) for f in right]
    worked = solve(unknown, **{**typed(data), "F_net": f"{size!r} N", unknown: ""})
    by_sign = [sorted(found_, key=lambda one: (one[1], one[0])) for found_ in (answers(worked), expected)]
    assert by_sign[0] == [pytest.approx(one, rel=1e-6) for one in by_sign[1]]
    assert worked.unproven == ()


@given(CHARGES, CHARGES, CHARGES, GAPS, GAPS, ANGLES, st.sampled_from([("F_x",), ("F_y",), ("F_x", "F_y"), ("F_net",)]))
def test_the_angle_comes_back(q1: int, q2: int, q3: int, near: int, far: int, phi: int, told: tuple[str, ...]) -> None:
    """Both angles with the stated component or size, by numpy; the one angle where both components are given."""
    data: dict[str, float] = {"Q1": q1, "Q2": q2, "Q3": q3, "r_12": near, "r_13": far, "phi": phi}
    net = net_force(data)
    numbers = {"F_x": float(net[0]), "F_y": float(net[1]), "F_net": float(np.linalg.norm(net))}
    assume(min(abs(numbers[name]) for name in told) > 1e-3 * numbers["F_net"] > 0)
    assume(told != ("F_y",) or phi not in (90, 270))  # the largest F_y there can be: floats decide
    boxes = {name: f"{numbers[name]!r} N" for name in told}
    worked = solve("phi", **{**typed(data), **boxes, "phi": ""})
    found_ = sorted(math.degrees(value) for value, _ in answers(worked))
    expected = {phi} if len(told) == 2 else {phi, (180 - phi) % 360} if told == ("F_y",) else {phi, 360 - phi}
    assert found_ == [pytest.approx(one, abs=2e-4) for one in sorted(expected)]
    for angle in found_:
        again = net_force({**data, "phi": angle})
        parts = {"F_x": again[0], "F_y": again[1], "F_net": float(np.linalg.norm(again))}
        for name in told:
            assert parts[name] == pytest.approx(numbers[name], abs=1e-5 * numbers["F_net"])
    assert worked.unproven == ()


@given(CHARGES, CHARGES, CHARGES, GAPS, GAPS, ANGLES, st.sampled_from(["Q2", "r_12", "Q3", "r_13"]))
def test_charge_1_comes_back_with_another_unknown(
    q1: int, q2: int, q3: int, near: int, far: int, phi: int, other: str
) -> None:
    """Both components, by numpy, give charge 1 and a second charge or distance, with the signs."""
    data: dict[str, float] = {"Q1": q1, "Q2": q2, "Q3": q3, "r_12": near, "r_13": far, "phi": phi}
    x, y = (float(part) for part in net_force(data))
    assume(min(abs(x), abs(y)) > 1e-3 * math.hypot(x, y))
    worked = solve(f"Q1,{other}", **{**typed(data), "F_x": f"{x!r} N", "F_y": f"{y!r} N", "Q1": "", other: ""})
    for name in ("Q1", other):
        answer = found(worked, f"find-{name}")
        assert answer.value == pytest.approx(abs(data[name]) * (1e-2 if name[0] == "r" else 1e-9), rel=1e-6)
        if name[0] == "Q":
            assert answer.direction
            assert answer.direction.key == ("positive" if data[name] > 0 else "negative")
    assert worked.unproven == ()


@given(CHARGES, CHARGES, CHARGES, ANGLES)
def test_the_size_alone_gives_the_size_of_charge_1(q1: int, q2: int, q3: int, phi: int) -> None:
    """Charge 1 without its sign, and the reason why the sign does not follow."""
    data: dict[str, float] = {"Q1": q1, "Q2": q2, "Q3": q3, "r_12": 20, "r_13": 35, "phi": phi}
    size = float(np.linalg.norm(net_force(data)))
    worked = solve("Q1", **{**typed(data), "F_net": f"{size!r} N", "Q1": ""})
    answer = found(worked)
    assert answer.value == pytest.approx(abs(q1) * 1e-9, rel=1e-6)
    assert answer.direction is None
    assert [part.key for part in worked.parts] == ["state", "find", "sign", "double"]


EMPTY = {"F_x": "", "F_y": "", "F_net": "", "theta": ""}
REFUSED: list[tuple[str, dict[str, str], str | None, str]] = [
    (
        "Q3",
        {"phi": ""},
        None,
        "Charge 3 does not follow from these data. Add the angle of the line from charge 1 to charge 3.",
    ),
    (
        "Q2",
        {**EMPTY, "Q2": "", "Q3": "5 nC", "F_y": "-1,7 µN"},
        None,
        "Charge 2 does not follow from these data. Add the net force along x.",
    ),
    ("Q3", {"phi": "90°"}, None, "Charge 3 does not follow from these data. Add the net force along y."),
    ("Q3", {"Q1": "", "F_y": "-1,7 µN"}, None, "Charge 3 does not follow from these data. Add charge 1."),
    (
        "Q1,Q3",
        {"Q1": ""},
        None,
        ("Charge 3 does not follow from these data. Add charge 1 or the net force along y."),
    ),
    (
        "r_13",
        {"Q3": "-5 nC", "r_13": ""},
        "Q3",
        (
            "Charge 3 would have to repel charge 1, but unlike charges attract: no distance fits. Change the sign of"
            " one of them, or the net force."
        ),
    ),
    (
        "r_13",
        {**EMPTY, "Q3": "5 nC", "r_13": "", "F_y": "2 µN"},
        "Q3",
        (
            "Charge 3 would have to attract charge 1, but like charges repel: no distance fits. Change the sign of one"
            " of them, or the net force."
        ),
    ),
    (
        "Q3",
        {"F_x": "5,4 µN"},
        "F_x",
        (
            "Charge 2 alone already gives this component, so there is nothing left for charge 3 to do. Change the net"
            " force."
        ),
    ),
    (
        "Q3",
        {"F_y": "3 µN"},
        "F_y",
        (
            "This does not fit the other numbers: with the stated component along x that along y is −1,73 × 10⁻⁶ N."
            " Correct it, or leave this box empty."
        ),
    ),
    (
        "Q3",
        {"phi": "90°", "F_y": "2 µN"},
        "F_x",
        (
            "This does not fit the other numbers: with the stated component along y that along x is 5,40 × 10⁻⁶ N."
            " Correct it, or leave this box empty."
        ),
    ),
    (
        "Q3",
        {**EMPTY, "F_net": "4 µN", "theta": "0°"},
        "theta",
        (
            "This direction does not fit the other numbers: no value of what is asked makes the net force point this"
            " way. Correct it, or give one component instead."
        ),
    ),
    (
        "Q1",
        {**EMPTY, "Q1": "", "Q3": "5 nC", "F_net": "4 µN", "theta": "200°"},
        "theta",
        (
            "This direction does not fit the other numbers: no value of what is asked makes the net force point this"
            " way. Correct it, or give one component instead."
        ),
    ),
    (
        "Q1",
        {"Q1": "", "Q3": "27 nC"},
        "F_x",
        (
            "For any charge 1 the other charges give no force along x, so this component says nothing about it. Give"
            " the other component."
        ),
    ),
    (
        "Q1",
        {"Q1": "", "Q3": "5 nC", "F_x": "0 N"},
        "F_x",
        "A net force of zero along x would need a charge 1 of zero. Give a component that is not zero.",
    ),
    (
        "Q3",
        {"phi": "180°"},
        "phi",
        "At 180° charge 3 is on the x-axis as well: use a question about charges on a line, or change the angle.",
    ),
    (
        "Q3",
        {"phi": "0°"},
        "phi",
        "At 0° charge 3 is on the x-axis as well: use a question about charges on a line, or change the angle.",
    ),
    (
        "Q3",
        {**EMPTY, "F_net": "4 µN"},
        "F_net",
        (
            "Charge 3 can only cancel what charge 2 does along the line through charges 1 and 3: the net force is"
            " 4,68 × 10⁻⁶ N at least. Give a larger one."
        ),
    ),
    (
        "r_13",
        {**EMPTY, "Q3": "-5 nC", "r_13": "", "F_net": "5,3 µN"},
        "F_net",
        (
            "Charge 3 pulls charge 1 here, and no distance makes the net force as small as this: it is more than"
            " 5,40 × 10⁻⁶ N. Change a sign, or the net force."
        ),
    ),
    (
        "phi",
        {**EMPTY, "Q3": "5 nC", "phi": "", "F_net": "9 µN"},
        "F_net",
        (
            "With these charges and distances the net force is between 3,40 × 10⁻⁶ N and 7,40 × 10⁻⁶ N, whatever the"
            " angle. Give one between them."
        ),
    ),
    (
        "phi",
        {**EMPTY, "Q3": "5 nC", "phi": "", "F_x": "9 µN"},
        "F_x",
        (
            "With these charges and distances the net force along x is between 3,40 × 10⁻⁶ N and 7,40 × 10⁻⁶ N,"
            " whatever the angle. Give one between them."
        ),
    ),
    (
        "phi",
        {**EMPTY, "Q3": "5 nC", "phi": "", "F_x": "5 µN", "F_y": "1 µN"},
        "F_y",
        (
            "This does not fit the other numbers: at no angle of charge 3 are both components as stated. Correct it,"
            " or leave this box empty."
        ),
    ),
    (
        "phi",
        {**EMPTY, "Q3": "5 nC", "phi": "", "F_y": "0 N"},
        "F_y",
        (
            "Only with charge 3 on the x-axis would this fit: use a question about charges on a line, or change the"
            " net force."
        ),
    ),
    (
        "Q3,phi",
        {"phi": ""},
        None,
        "The angle is asked alone here: give all three charges, both distances and the net force.",
    ),
    (
        "Q1,Q3",
        {"Q1": "", "F_x": "2 µN", "F_y": "3,4641016151 µN"},
        "F_x",
        (
            "Charge 2 would exert no force on charge 1, so charge 1 would be zero. Change the net force, or the angle"
            " of charge 3."
        ),
    ),
    ("Q3", {"phi": "360°"}, "phi", "Type an angle from 0° up to 360°."),
    ("Q3", {"Q1": "0"}, "Q1", "A zero charge gives no force, so this cannot be found."),
]


@pytest.mark.parametrize(("unknown", "boxes", "field", "sentence"), REFUSED)
def test_what_does_not_follow_is_refused(unknown: str, boxes: dict[str, str], field: str | None, sentence: str) -> None:
    """The box and the sentence, word for word, with what is missing named."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(unknown, **boxes)
    refusals = caught.value.refusals if isinstance(caught.value, Refusals) else (caught.value,)
    said = [(r.field, r.sentence.replace("\N{NO-BREAK SPACE}", " ")) for r in refusals]
    assert (field, sentence) in said


def test_any_mixture_of_boxes_is_solved_or_refused() -> None:
    """Whatever is filled and asked: an answer whose checks hold, or a sentence; never a fault."""
    chance, solved = random.Random(11), 0
    charges, angles = ("-5 nC", "5 nC", "3 nC", ""), ("90°", "270°", "0°", "45°", "", "200°")
    forces = ("0 N", "-2 µN", "3 µN", "", "", "")
    kinds = {"Q": charges, "r": ("20 cm", "10 cm", ""), "F": forces, "p": angles, "t": angles}
    names = [item.name for item in find("several-charges.stated")[1].fields]
    for _ in range(1500):
        boxes = {name: chance.choice(kinds[name[0]]) for name in names}
        asked = chance.choice([*UNKNOWNS, "phi", "Q2,Q3", "Q3,r_12", "r_12,r_13", "Q1,r_13", "Q1,phi"])
        try:
            worked = solve(asked, **boxes)
        except (Refusal, Refusals):
            continue
        assert worked.unproven == (), (asked, boxes)
        solved += 1
    assert solved > 30


def test_a_second_component_that_fits_is_named_as_spare() -> None:
    """Both components for one unknown agree to their figures: solved, with a note."""
    worked = solve("Q3", F_y="-1,73 µN")
    assert found(worked).value == pytest.approx(5e-9, rel=5e-3)
    assert any("More is given than is needed" in note for note in worked.notes)


@pytest.mark.parametrize("unknown", UNKNOWNS)
def test_three_tellings(unknown: str) -> None:
    """Three openings, the same answer; the charge that is asked for is in none of them."""
    told = [solve(unknown, variant=n, **{"Q3": "+5 nC", unknown: ""}) for n in range(3)]
    assert len({worked.story for worked in told}) == 3
    assert len({found(worked).value for worked in told}) == 1
    assert all("4,4\N{NO-BREAK SPACE}µN to the right" in worked.story for worked in told)


def slip(name: str, at: str, unknown: str, **boxes: str) -> tuple[Any, dict[str, float]]:
    """A declared mistake, and all the values it leads to."""
    _, question = find("several-charges.stated")
    plan = question.plan(read(question, {**question.example, **boxes}, unknown).data)
    one = next(m for step in plan.steps for m in step.mistakes if m.key == name and m.at == at)
    return one, run(plan, Settings().constants(), instead={at: one.instead})


COS = math.cos(math.radians(60))
SIN = math.sin(math.radians(60))


TURNED = (
    "You took F₂₁ the other way. Charges that attract pull towards each other, those that repel push away: draw its"
    " arrow again."
)
ONE_FORCE = "You let charge 3 give the whole of Fₓ. Charge 2 acts along x as well: bring F₂₁ into the sum first."


@pytest.mark.parametrize(
    ("name", "at", "boxes", "value", "say"),
    [
        ("wrong-side", "F_31", {}, (4.4e-6 + 5.4e-6) / COS, TURNED),
        ("one-force", "F_31", {}, 4.4e-6 / COS, ONE_FORCE),
        (
            "sin-for-cos",
            "F_31",
            {},
            -1e-6 / SIN,
            "You worked with the sine. The angle φ is measured from the x-axis, so use the cosine along x.",
        ),
        (
            "sin-for-cos",
            "F_31",
            {**EMPTY, "F_y": "-1,7 µN"},
            -1.7e-6 / COS,
            "You worked with the cosine. The angle φ is measured from the x-axis, so use the sine along y.",
        ),
        (
            "component-as-force",
            "F_31",
            {**EMPTY, "F_y": "-1,7 µN"},
            -1.7e-6,
            "You took F_y for the whole force of charge 3. It is only one component of it: divide by sin φ.",
        ),
        (
            "net-used",
            "Q3",
            {**EMPTY, "F_net": "4,73 µN", "theta": "338,5°"},
            4.73e-6 * 0.09 / (K * 4e-9),
            "You used Fₙₑₜ, the whole net force. Charge 3 gives only its own share of it: use F₃₁.",
        ),
        (
            "not-squared",
            "Q3",
            {},
            2e-6 * 0.3 / (K * 4e-9),
            "You multiplied by r₁₃ only once. Coulomb's law has the square of the distance, so multiply by r₁₃².",
        ),
    ],
)
def test_slips_give_the_listed_values(name: str, at: str, boxes: dict[str, str], value: float, say: str) -> None:
    """Each slip leads to the value it is known by, and says its sentence."""
    one, values = slip(name, at, "Q3", **boxes)
    assert one.said == say
    assert abs(values[at]) == pytest.approx(abs(value), rel=1e-6)


def test_the_scene_shows_no_sign_that_is_asked_for() -> None:
    """Charge 3 is drawn without a sign where it is asked, with one where it is given."""
    asked, given_ = solve("Q3").figure, solve("r_13", Q3="+5 nC", r_13="").figure
    assert asked
    assert given_
    assert "Q3 (sign not known)" in asked.description
    assert "Q3 (positive)" in given_.description
    assert "Distances not to scale." in given_.notes
    assert svg.render(asked).startswith("<svg")


def test_an_angle_that_is_asked_for_is_not_drawn_true() -> None:
    """The scene is the same whatever the angle is, and says so; a given angle is drawn true."""
    scenes = [solve("phi", Q3="5 nC", phi="", F_x=f"{size} µN").figure for size in (4, 5, 6)]
    assert scenes[0] == scenes[1] == scenes[2]
    assert scenes[0]
    assert "The angle φ is not drawn true." in scenes[0].notes
    given_ = solve("r_13", Q3="5 nC", r_13="", phi="35°").figure
    assert given_
    assert "The angle φ is not drawn true." not in given_.notes
    assert [item.end_deg for item in given_.items if isinstance(item, AngleMark)] == [pytest.approx(35)]


def test_practice_draws_what_it_drew_before_the_angle_could_be_asked() -> None:
    """The unknowns of drawn questions are those declared for practice; the form offers the angle as well."""
    topic, question = find("several-charges.stated")
    asked = {draw(topic, question, seed, level).find for seed in range(12) for level in (2, 3)}
    assert asked <= set(UNKNOWNS)
    assert len(asked) > 2
    assert "phi" in question.unknowns


@pytest.mark.parametrize(
    ("unknown", "boxes", "phrase"),
    [
        ("Q3", {**EMPTY, "F_net": "6 µN"}, "this time the negative one"),
        ("phi", {"Q3": "5 nC", "phi": "", "F_x": "5 µN"}, "nothing that is given tells them apart, so both fit"),
        ("phi", {"Q3": "5 nC", "phi": "", "F_x": "5 µN", "F_y": "1,96 µN"}, "the sign of F_y tells which one it is"),
        ("phi", {**EMPTY, "Q3": "5 nC", "phi": "", "F_y": "1 µN"}, "charge 3 is below the x-axis: count on from 180°"),
    ],
)
def test_why_there_are_two_answers_or_one(unknown: str, boxes: dict[str, str], phrase: str) -> None:
    """The step says where the second answer comes from, or what picks the one."""
    whys = [step.why for part in solve(unknown, **boxes).parts for step in part.steps]
    assert any(phrase in why for why in whys)


def test_a_root_that_cannot_be_is_named_with_its_reason() -> None:
    """One distance fits where the other root would turn the force round."""
    worked = solve("r_13", **{**EMPTY, "Q3": "-5 nC", "r_13": "", "F_net": "6 µN"})
    assert [part.key for part in worked.parts] == ["state", "find", "draw"]
    lines = [step for part in worked.parts for step in part.steps if step.makes == "F_31"]
    assert "Charge 3 pulls, so its force counts as positive here." in f"{lines[0].why} {lines[0].method} {lines[0]}"


@pytest.mark.parametrize(
    ("unknown", "boxes", "parts"),
    [
        ("Q3", {}, {"state": 2, "find": 6, "draw": 2}),
        ("Q3", {**EMPTY, "F_y": "-1,7 µN"}, {"state": 2, "find": 4, "enough": 2}),
        ("Q1", {"Q1": "", "Q3": "5 nC"}, {"state": 2, "find": 3, "double": 2}),
        ("Q2,Q3", {"Q2": "", "F_y": "-1,7 µN"}, {"state": 2, "find-Q3": 4, "find-Q2": 4, "draw": 2}),
    ],
)
def test_the_marks_of_each_part(unknown: str, boxes: dict[str, str], parts: dict[str, int]) -> None:
    """Two marks a step, in the order in which the parts need each other."""
    assert {part.key: part.marks for part in solve(unknown, **boxes).parts} == parts


@pytest.mark.parametrize(
    ("theta", "across", "up"),
    [
        (90, "F_x = 0", "F_y = F_net"),
        (270, "F_x = 0", "F_y = -F_net"),
    ],
)
def test_a_net_force_along_an_axis_has_one_component(theta: int, across: str, up: str) -> None:
    """No cosine and sine are written where the force lies along an axis: the whole of it, or nothing."""
    _, question = find("several-charges.stated")
    boxes = {**question.example, "F_x": "", "F_net": "5 uN", "theta": f"{theta}°"}
    plan = question.plan(read(question, boxes, "Q1").data)
    made = [step.make or step.law for part in plan.parts for step in part.steps]
    assert [one for one in made if one.startswith(("F_x", "F_y"))] == [across, up]
