"""Answers that are intervals, or two values in one line, each end marked by itself.

The sample question: a sphere of +4 nC, a sensor that works from 900 to 3 600 N·C⁻¹. E = kQ/r² with k = 9 × 10⁹ gives
r² = 36/E: 0,10 m and 0,20 m, worked by hand. How intervals are written: ISO 80000-2 (2019), items on intervals, and
inequalities; the words: common practice, no source.
"""

import json
from typing import Any

import pytest

from calc import desk
from calc.desk.marking import verdict
from calc.marking.intervals import bound, ends, listed
from calc.marking.marking import mark_question
from calc.model.constants import Settings
from calc.model.directions import SIDE_OF_END
from calc.model.questions import SA, Input, Mistake, Part, Plan, Question, Step
from calc.working.reading import Data, read

NOT_ROOTED = Mistake("not-rooted", "r_1", "k*Q/E_high", "You found r². Take the square root to get r.")


def sensor(data: Data) -> Plan:
    """Between which distances a sensor works, and from where on the field is weak enough."""
    near = Step("r_1 = sqrt(k*Q/E_high)", "r_1 = sqrt(k*Q/E_high)", "The near end", "", "m", SA, mistakes=(NOT_ROOTED,))
    far = Step("r_2 = sqrt(k*Q/E_low)", "r_2 = sqrt(k*Q/E_low)", "The far end", "", "m", SA)
    weak = Step(
        "r_weak = sqrt(k*Q/E_low)",
        "r_weak = sqrt(k*Q/E_low)",
        "From where the field is weak",
        "",
        "m",
        SA,
        direction=SIDE_OF_END.of("more"),
    )
    return Plan(
        story="A sensor is moved away from a small charged sphere.",
        parts=(
            Part("works", "calculate", "Between which distances does the sensor work?", (near, far), also=("r_1",)),
            Part("weak", "calculate", "Where is the field below the lower value?", (weak,)),
        ),
        values=dict(data.values),
    )


SENSOR = Question(
    "sensor",
    "A sensor near a charge",
    (
        Input("Q", "Charge", "C", 1e-12, 1e-4),
        Input("E_low", "Least field", "N·C⁻¹", 1, 1e6),
        Input("E_high", "Largest field", "N·C⁻¹", 1, 1e6),
    ),
    sensor,
    {"Q": "4 nC", "E_low": "900 N/C", "E_high": "3600 N/C"},
    constants=("k",),
)


def marked(**answers: dict[str, Any]) -> dict[str, dict[str, Any]]:
    """Verdicts of the sample question by part."""
    found = read(SENSOR, SENSOR.example)
    done = mark_question(sensor(found.data), found, answers)
    return {part.part.key: verdict(part, "", Settings()) for part in done}


@pytest.mark.parametrize(
    "text",
    [
        "between 10 cm and 20 cm",
        "between 10 and 20 cm",
        "from 10 cm to 20 cm",
        "10 cm to 20 cm",
        "10 to 20 cm",
        "0,10 m < r < 0,20 m",
        "0,20 m > r > 0,10 m",
        "10 cm ≤ r ≤ 20 cm",
        "10 cm <= r <= 20 cm",
        "r > 10 cm and r < 20 cm",
        "10 cm < r, r < 20 cm",
        "more than 10 cm and less than 20 cm",
        "[10; 20] cm",
        "r ∈ (0,1 m; 0,2 m)",
        "10 cm – 20 cm",
        "10–20 cm",
        "10 cm - 20 cm",
        "1,0 × 10^-1 m to 2,0 × 10^-1 m",
        "between 20 cm and 10 cm",
        "it works between 10 cm and 20 cm from the sphere",
        "10 cm and 20 cm",
        "10 cm; 20 cm",
        "r_2 = 20 cm and r_1 = 10 cm",
    ],
)
def test_an_interval_in_one_line_earns_every_mark(text: str) -> None:
    """However an interval is written, both ends are taken from the line."""
    part = marked(works={"value": text})["works"]
    assert (part["state"], part["earned"], part["possible"], part["sentences"]) == ("right", 4, 4, [])


def test_each_end_in_a_box_of_its_own() -> None:
    """The boxes of both values take the ends one by one."""
    part = marked(works={"value": "20 cm", "steps": {"r_1": "10 cm"}})["works"]
    assert (part["earned"], part["possible"]) == (4, 4)


def test_the_far_end_wrong_loses_its_own_mark_only() -> None:
    """ "Between 10 cm and 25 cm" is half right: one answer mark is lost, with its substitution."""
    part = marked(works={"value": "between 10 cm and 25 cm"})["works"]
    assert [mark["earned"] for mark in part["marks"]] == [1, 1, 0, 0]


def test_the_near_end_wrong_is_said_beside_the_right_one() -> None:
    """r² in place of r at the near end: the far end keeps its marks, and the slip is named at its own end."""
    part = marked(works={"value": "from 1 cm to 20 cm"})["works"]
    assert [mark["earned"] for mark in part["marks"]] == [1, 0, 1, 1]
    assert part["head"] != "Right"
    assert part["sentences"][0] == "Your r₂ is right, but your r₁ is not."
    named = marked(works={"value": "0,0100 m < r < 0,200 m"})["works"]
    assert [fit["keys"] for fit in named["fits"]] == [["not-rooted@r_1"]]


def test_one_end_left_out_is_asked_for() -> None:
    """One end alone earns what it shows and no more, and the other is asked for."""
    part = marked(works={"value": "20 cm"})["works"]
    assert (part["earned"], part["possible"]) == (3, 4)
    assert part["sentences"] == ["This part asks for r₁ as well. Type it too."]


@pytest.mark.parametrize(
    ("text", "earned"),
    [
        ("r > 20 cm", 2),
        ("20 cm < r", 2),
        ("r ≥ 0,20 m", 2),
        ("r >= 20 cm", 2),
        ("> 20 cm", 2),
        ("at least 20 cm", 2),
        ("more than 20 cm", 2),
        ("not less than 20 cm", 2),
        ("20 cm or more", 2),
        ("further than 20 cm from the sphere", 2),
        ("r < 20 cm", 1),
        ("20 cm > r", 1),
        ("at most 20 cm", 1),
        ("no more than 20 cm", 1),
        ("20 cm or less", 1),
        ("20 cm", 1),
        ("r > 25 cm", 0),
    ],
)
def test_an_answer_with_one_end(text: str, earned: int) -> None:
    """The value and the side are both marked; the wrong side or none loses the answer mark."""
    assert marked(weak={"value": text})["weak"]["earned"] == earned


def test_the_side_may_be_chosen_beside_the_value() -> None:
    """The side picked beside the box counts like a sign in the line."""
    assert marked(weak={"value": "20 cm", "direction": "more"})["weak"]["earned"] == 2
    assert marked(weak={"value": "20 cm", "direction": "below"})["weak"]["head"] == "Right size, wrong direction"


@pytest.mark.parametrize("text", ["2,5 cm", "-2 nC", "3 × 10-9 C", "25 µN to the left", "1 200 N", "", "between"])
def test_one_value_is_not_taken_for_two(text: str) -> None:
    """A single value, its sign, its power and its direction are no interval and no end of one."""
    assert (ends(text), listed(text), bound(text)) == (None, None, None)


@pytest.mark.parametrize("text", ["2 cm < x > 5 cm", "x > 2 cm and x > 5 cm", "2 cm < 3 cm < 5 cm", "2 cm < 5 cm"])
def test_signs_that_do_not_enclose_anything(text: str) -> None:
    """Two signs that point apart, or no name between the ends, make no interval."""
    assert (ends(text), bound(text)) == (None, None)


def test_both_charges_in_one_line() -> None:
    """Charges of a pair, found from two forces, are taken from one line, in either order, with or without names."""
    one, other = 18.973665961010277e-9, -6.324555320336759e-9
    before, after = 9e9 * one * -other / 0.1**2, 9e9 * ((one + other) / 2) ** 2 / 0.1**2
    inputs = {"F_1": f"{before!r} N", "F_2": f"{after!r} N", "r": "10 cm", "acting": "attract"}
    for text in ("18,97 nC and −6,325 nC", "−6,325 nC; 18,97 nC", "Q₂ = −6,325 nC and Q₁ = 18,97 nC"):
        data = {"question": "coulomb.two-forces", "inputs": inputs, "answers": {"charges": {"value": text}}}
        part = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))["data"]["parts"][0]
        assert (part["earned"], part["possible"]) == (7, 7), text
