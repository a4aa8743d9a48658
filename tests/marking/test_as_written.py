"""Answers as learners write them: other writings of a right value, directions in words, both values of a pair.

Directions are checked against a map drawn here: north is +y, east is +x, bearings go clockwise from north
(ISO 19111 calls this grid north; compass points: common practice, no source).
"""

import json
import math
from typing import Any

import pytest

from calc import desk
from calc.language.quantities import QuantityError
from calc.marking.bearings import angle_said
from calc.marking.learner import judge_direction, read_value
from calc.model.directions import ALONG_X, ATTRACTION, LEFT_RIGHT, NET_IN_PLANE, SIGN_OF_CHARGE

FORCE = {"Q1": "+8 nC", "Q2": "-5 nC", "r": "12 cm"}
LINE = {
    "charges": [{"Q": "-8 nC", "x": "0 cm"}, {"Q": "-2 nC", "x": "30 cm"}, {"Q": "+4 nC", "x": "45 cm"}],
    "on": "3",
}


def marked(question: str, inputs: dict[str, Any], **answers: dict[str, Any]) -> dict[str, dict[str, Any]]:
    """Verdicts by part."""
    data = {"question": question, "inputs": inputs, "answers": answers}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    assert reply["ok"], reply
    return {part["part"]: part for part in reply["data"]["parts"]}


def full(verdict: dict[str, Any]) -> bool:
    """Whether every mark was earned."""
    return bool(verdict["earned"] == verdict["possible"])


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("F = 25 µN", "N", 25e-6),
        ("≈ 2,5 N", "N", 2.5),
        ("about 2,5 N", "N", 2.5),
        ("approx. 2.5 N", "N", 2.5),
        ("1,90.10^-9 C", "C", 1.9e-9),
        ("5.10⁻⁴ N", "N", 5e-4),
        ("72 378 N/C", "N·C⁻¹", 72378.0),
        ("3 ms⁻²", "m·s⁻²", 3.0),
        ("3 m/s/s", "m·s⁻²", 3.0),
        ("3 ms-2", "m·s⁻²", 3.0),
        ("3 ms^-2", "m·s⁻²", 3.0),
        ("4 NC⁻¹", "N·C⁻¹", 4.0),
        ("4 NC-1", "N·C⁻¹", 4.0),
        ("1/4 m", "m", 0.25),
        ("3/8", "m", 0.375),
        ("√2 m", "m", math.sqrt(2)),
        ("2√3 m", "m", 2 * math.sqrt(3)),
        ("√(2)/2 m", "m", math.sqrt(2) / 2),
        ("F = 9e9 × 5e-9 = 45 N", "N", 45.0),
    ],
)
def test_writings_of_a_value(text: str, unit: str, value: float) -> None:
    """A name before it, a word for about, a dot for ×, a fraction, a root and units run together are read."""
    typed = read_value(text, unit)
    assert typed.value == pytest.approx(value)
    assert typed.fits


def test_figures_of_a_power_of_ten_count() -> None:
    """1,10 × 10⁵ has three figures that are meant; of 110 000 written out the zeros may be place holders."""
    assert not read_value("1,10 × 10⁵ V/m", "V·m⁻¹").near(1.15e5)
    assert read_value("110 000 V/m", "V·m⁻¹").near(1.14e5)


@pytest.mark.parametrize(
    ("said", "degrees"),
    [
        ("18,43° below the +x axis", 341.57),
        ("20° below the -x-axis", 200),
        ("N 50° E", 40),
        ("E 40° S", 320),
        ("50 degrees north of east", 50),
        ("bearing 053", 37),
        ("30° clockwise from north", 60),
        ("30° left of the +y axis", 120),
        ("30° above the horizontal to the right", 30),
        ("233,13°", 233.13),
        ("53,13° below the −x axis (233,13° anticlockwise from the +x axis)", 233.13),
    ],
)
def test_angles_as_they_are_said(said: str, degrees: float) -> None:
    """Axes, compass points and bearings, as degrees anticlockwise from the +x axis."""
    assert angle_said(said) == pytest.approx(degrees)


@pytest.mark.parametrize("said", ["30° above", "N 30° S", "30° from the axis", "30° above the horizontal", "steep"])
def test_an_angle_of_two_meanings_is_not_guessed(said: str) -> None:
    """What may be two directions is none."""
    assert angle_said(said) is None


@pytest.mark.parametrize(
    ("said", "right"),
    [
        ("left and up", NET_IN_PLANE.of("left-up")),
        ("up and to the left", NET_IN_PLANE.of("left-up")),
        ("north east", NET_IN_PLANE.of("right-up")),
        ("it moves to the left", LEFT_RIGHT.of("left")),
        ("West", LEFT_RIGHT.of("left")),
        ("they attract each other", ATTRACTION.of("attract")),
        ("negatively charged", SIGN_OF_CHARGE.of("negative")),
        ("to the right", ALONG_X.of("positive")),
    ],
)
def test_directions_in_words_of_ones_own(said: str, right: Any) -> None:
    """A sentence, a compass point and a part of the words printed name the direction."""
    assert judge_direction(said, right) == "right"


@pytest.mark.parametrize("said", ["not to the left", "left or right", "?"])
def test_a_doubtful_direction_is_not_read(said: str) -> None:
    """A choice of two, or what is denied, is no answer."""
    with pytest.raises(QuantityError, match="could not be read"):
        judge_direction(said, LEFT_RIGHT.of("left"))


def test_a_direction_behind_the_value() -> None:
    """ "25 µN attraction" in one line is value and direction."""
    assert full(marked("coulomb.force", FORCE, find={"value": "25 µN, attraction"})["find"])


def test_a_direction_that_cannot_be_read_is_not_called_missing() -> None:
    """The learner said something: the verdict says that it could not be read."""
    verdict = marked("coulomb.force", FORCE, find={"value": "25 µN", "direction": "sideways"})["find"]
    assert verdict["head"] == "Right size, direction not read"
    assert any("could not be read" in mark["reason"] for mark in verdict["marks"])


@pytest.mark.parametrize(
    ("positive", "value", "head"),
    [
        ("left", "-2,08 µN", "Right size, wrong sign"),
        ("right", "-2,08 µN", "Right size, no direction"),
    ],
)
def test_a_sign_is_understood_where_a_positive_direction_is_stated(positive: str, value: str, head: str) -> None:
    """Both charges pull the third to the left: by k|Q₁Q₃|/r² 1,42 µN and 3,2 µN, 4,62 µN together."""
    size = 9e9 * (8e-9 * 4e-9 / 0.45**2 + 2e-9 * 4e-9 / 0.15**2)
    typed = {"value": f"-{size:.4g} N"}
    verdict = marked("several-charges.line", {**LINE, "positive": positive}, net=typed)["net"]
    assert verdict["head"] == head


def test_the_minus_sign_is_answered() -> None:
    """A right minus sign is told to be understood, and that words are wanted."""
    size = 9e9 * (8e-9 * 4e-9 / 0.45**2 + 2e-9 * 4e-9 / 0.15**2)
    verdict = marked("several-charges.line", {**LINE, "positive": "right"}, net={"value": f"-{size:.4g} N"})["net"]
    assert "Your minus sign is understood, but an answer needs its direction in words. Add it." in verdict["sentences"]


def test_a_comma_that_may_part_thousands_is_asked_about() -> None:
    """1,125 typed for 1 125 V/m is no mistake of physics."""
    inputs = {"Q": "2 nC", "r": "12,65 cm"}
    verdict = marked("electric-field.charge", inputs, find={"value": "1,125 N/C", "direction": "away"})["find"]
    assert verdict["sentences"][0] == (
        "“1,125 N/C” is read with a decimal comma or point. If you mean thousands, type a space instead: “1 125 N/C”. "
        "Then it is right."
    )


def test_more_digits_than_a_memo_gives_need_no_remark() -> None:
    """0,102 N for a memo's 0,10 N is better than the memo."""
    exact = {"Q1": "+8,16 nC", "Q2": "-5 nC", "r": "12 cm"}
    size = 9e9 * 8.16e-9 * 5e-9 / 0.12**2
    verdict = marked("coulomb.force", exact, find={"value": f"{size:.3e} N", "direction": "attract"})["find"]
    assert (verdict["state"], verdict["sentences"]) == ("right", [])


def test_both_charges_of_a_pair_in_either_order() -> None:
    """Charges +18,97 nC and −6,32 nC attract and share to 6,32 nC each: either sphere may carry either, and both may
    have the other sign."""
    one, other = 18.973665961010277e-9, -6.324555320336759e-9
    before, after = 9e9 * one * -other / 0.1**2, 9e9 * ((one + other) / 2) ** 2 / 0.1**2
    inputs = {"F_1": f"{before!r} N", "F_2": f"{after!r} N", "r": "10 cm", "acting": "attract"}
    for first, second in ((one, other), (other, one), (-one, -other), (-other, -one)):
        answers = {"value": f"{second:.4g} C", "steps": {"Q1": f"{first:.4g} C"}}
        assert full(marked("coulomb.two-forces", inputs, charges=answers)["charges"]), (first, second)
    wrong = {"value": f"{one:.4g} C", "steps": {"Q1": f"{one:.4g} C"}}
    assert not full(marked("coulomb.two-forces", inputs, charges=wrong)["charges"])


def test_an_angle_mark_needs_an_angle() -> None:
    """The resultant's mark for the angle is not earned by "right and up" alone."""
    request = {"operation": "practice", "data": {"question": "several-charges.plane", "seed": 1, "level": 1}}
    drawn = json.loads(desk.answer(json.dumps(request)))["data"]
    data = {name: drawn[name] for name in ("question", "inputs", "find", "variant")}
    solved = json.loads(desk.answer(json.dumps({"operation": "solve", "data": {**data, "as": ["text"]}})))["data"]
    answer = [line for line in solved["text"].split("\n") if line.startswith("  Answer: ")][-1].removeprefix(
        "  Answer: "
    )
    value, _, where = answer.partition(", ")
    for said, lost in ((where, 0), (where.split("°", 1)[1].split("(")[0].strip(), 1)):
        answers = {"net": {"value": value, "direction": said}}
        reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": {**data, "answers": answers}})))["data"]
        verdict = next(part for part in reply["parts"] if part["part"] == "net")
        assert verdict["possible"] - verdict["earned"] == lost, said
