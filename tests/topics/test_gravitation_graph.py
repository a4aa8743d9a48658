"""A graph of the gravitational force is read: numpy's line through points of the law, marks of a reading, refusals."""

import json

import numpy as np
import pytest

from calc import desk, topics
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.topics.gravitation.graph import READ, both, scene
from calc.working.reading import Refusals, read
from calc.working.working import work

G = 6.67e-11
CASES = [(9e23, 250.0, 5e6, 8e6), (7.35e22, 640.0, 3e6, 2e6), (5.97e24, 120.0, 2e7, 1e7)]


def solve(**typed: str) -> WorkedAnswer:
    """The worked answer for these data."""
    topic, question = topics.find("gravitation.graph")
    return work(topic, question, read(question, {**question.example, **typed}))


def typed(planet: float, m: float, r: float, other: float) -> dict[str, str]:
    """The boxes of a probe at r."""
    return {
        "x_P": f"{1 / r**2!r} m^-2",
        "F_P": f"{G * planet * m / r**2!r} N",
        "m": f"{m} kg",
        "r_2": f"{other!r} m",
    }


@pytest.mark.parametrize("case", CASES)
def test_the_line_through_points_of_the_law_gives_the_planet(case: tuple[float, ...]) -> None:
    """numpy fits a line to twenty forces of the law against 1/r²: its gradient, the mass behind it, a point on it."""
    planet, m, r, other = case
    places = np.linspace(r / 2, 3 * r, 20)
    slope, start = np.polyfit(1 / places**2, G * planet * m / places**2, 1)
    found = solve(**typed(*case)).values
    assert found["k_F"] == pytest.approx(slope, rel=1e-6)
    assert abs(start) < 1e-6 * found["F_P"]
    assert found["M"] == pytest.approx(planet, rel=1e-6)
    assert found["r_P"] == pytest.approx(r, rel=1e-6)
    assert found["F_2"] == pytest.approx(slope / other**2, rel=1e-6)


@pytest.mark.parametrize(("share", "state"), [(1.0, "right"), (1.04, "right"), (0.96, "right"), (1.08, "wrong")])
def test_a_force_read_off_the_line_may_be_a_little_off(share: float, state: str) -> None:
    """Within 5 % it is right, beyond it is not."""
    assert READ == 0.05
    value = G * 9e23 * 250 / 8e6**2 * share
    data = {
        "question": "gravitation.graph",
        "inputs": typed(*CASES[0]),
        "answers": {"read": {"value": f"{value:.4g} N"}},
    }
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    parts = {part["part"]: part for part in reply["data"]["parts"]}
    assert (parts["read"]["state"] == "right") == (state == "right")


@pytest.mark.parametrize(
    ("part", "value", "sentence"),
    [
        (
            "mass",
            "2.25e26 kg",
            "You left out the mass of the probe. The gradient holds both masses: divide by m as well.",
        ),
        ("place", "2.5e13 m", "Take its square root"),
        ("read", "1.876e9 N", "The axis is 1/r²: square r₂ first, then divide by it."),
    ],
)
def test_mistakes_are_named(part: str, value: str, sentence: str) -> None:
    """Each wrong value that a known mistake gives is told with what to do."""
    data = {"question": "gravitation.graph", "inputs": typed(*CASES[0]), "answers": {part: {"value": value}}}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    told = next(one for one in reply["data"]["parts"] if one["part"] == part)
    assert told["state"] != "right"
    assert sentence in " ".join(line for fit in told.get("fits", ()) for line in fit["say"])


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"x_P": "0 m^-2"}, "A place on the axis of 1/r² is greater than zero: give that of P."),
        ({"F_P": "0 N"}, "The force between two masses is never zero. Enter its size, above zero."),
        ({"m": "0 kg"}, "Mass must be greater than zero"),
        ({"r_2": "0 m"}, "Distance must be greater than zero."),
    ],
)
def test_what_cannot_be_is_refused(change: dict[str, str], sentence: str) -> None:
    """Each refusal gives its reason and what to do."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(**{**typed(*CASES[0]), **change})
    one = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    assert sentence in one.sentence


def test_the_picture_is_read_and_the_second_line_is_twice_as_steep() -> None:
    """The words of the picture hold no number; the line of the heavier probe ends twice as high."""
    v = {"x_P": 4e-14, "F_P": 600.0, "r_2": 8e6}
    assert not any(sign.isdigit() for sign in scene(v).description.replace("1/r²", ""))
    said = both(v).description
    assert "(4,4 × 10⁻¹⁴; 660)" in said
    assert "(4,4 × 10⁻¹⁴; 1,32 × 10³)" in said
