"""Marking of a learner's own work: what each answer is taken for, its marks, and what is said."""

import json
import math
from html.parser import HTMLParser
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import desk, topics
from calc.language.printing import Style
from calc.language.quantities import QuantityError
from calc.marking.learner import judge_direction, read_line, read_value
from calc.marking.marking import PartMarked, formulas, mark_question, tick_items
from calc.marking.sentences import sentence_text, sentences
from calc.model.answers import Direction, Point
from calc.model.constants import Settings
from calc.model.directions import KINDS, LEFT_RIGHT, Kind
from calc.model.questions import A, Data, Input, Mistake, Part, Plan, Question, Step
from calc.working.reading import read

FORCE = {"Q1": "+8 nC", "Q2": "-5 nC", "r": "12 cm"}
TOUCH = {"Q1": "+9 nC", "Q2": "-4 nC", "r": "20 cm", "r2": ""}


def marked(question: str, inputs: dict[str, str], **answers: object) -> dict[str, Any]:
    """The reply of the desk to a request to mark."""
    data = {"question": question, "inputs": inputs, "answers": answers}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    assert reply["ok"], reply
    found: dict[str, Any] = reply["data"]
    return found


def verdict(reply: dict[str, Any], part: str) -> dict[str, Any]:
    """One part's verdict."""
    return next(line for line in reply["parts"] if line["part"] == part)


def force(**answer: object) -> dict[str, Any]:
    """The verdict on an answer to the force of two charges (25 µN, attraction)."""
    return verdict(marked("coulomb.force", FORCE, find=answer), "find")


def keys(found: dict[str, Any]) -> list[list[str]]:
    """The mistakes named, by key."""
    return [fit["keys"] for fit in found["fits"]]


# --- right answers ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "text",
    ["2,50 × 10⁻⁵ N", "25 µN", "2.5e-5 N", "0,000025 N", "25,2 µN", "24,8uN", "2,5×10^-5 kg m s^-2"],
)
def test_a_right_force_in_any_writing(text: str) -> None:
    """Any prefix, sign of decimals and figures within 1 % earn every mark."""
    found = force(value=text, direction="attract")
    assert (found["state"], found["earned"], found["possible"]) == ("right", 3, 3)


def test_a_rounding_to_two_figures_is_right_and_told() -> None:
    """1,0 for 1,04 is 4 % off and still a correct rounding; the memo's decimals are shown."""
    right = 9e9 * 6.5e-9 * 2e-9 / 0.106**2
    assert abs(1.0e-5 / right - 1) > 0.03
    inputs = {"Q1": "6,5 nC", "Q2": "2 nC", "r": "10,6 cm"}
    reply = marked("coulomb.force", inputs, find={"value": "1,0e-5 N", "direction": "repel"})
    found = verdict(reply, "find")
    assert found["state"] == "right"
    assert found["sentences"] == [
        "Near enough; a memo gives F = 1,04 × 10⁻⁵ N.".replace(" × ", "\xa0×\xa0").replace("⁵ N", "⁵\xa0N")
    ]


@given(st.floats(-0.0099, 0.0099), st.integers(4, 12))
def test_within_one_percent_is_right(off: float, digits: int) -> None:
    """Any number within 1 % is right, however many digits are typed."""
    assert read_value(f"{2.5e-5 * (1 + off):.{digits}e} N", "N").agrees(2.5e-5)


@given(st.floats(1e-9, 1e9), st.integers(2, 9))
def test_correct_roundings_are_right(right: float, digits: int) -> None:
    """A correct rounding to two or more figures always agrees."""
    assert read_value(f"{right:.{digits - 1}e} N", "N").agrees(right)


@pytest.mark.parametrize(
    ("text", "right"),
    [("2e-5 N", 2.5e-5), ("1,1 N", 1.04), ("0 N", 2e-6), ("25,28 µN", 2.5e-5), ("24,72 µN", 2.5e-5)],
)
def test_too_few_or_wrong_figures_are_not_right(text: str, right: float) -> None:
    """One figure, a wrong rounding, nought and 1,1 % do not agree."""
    assert not read_value(text, "N").agrees(right)


def test_one_figure_is_told_apart() -> None:
    """The right answer cut to one figure is not right, and the learner is told why."""
    found = force(value="3e-5 N", direction="attract")
    assert found["state"] == "not recognised"
    assert found["sentences"][0].startswith("This is the right answer cut too short")


# --- unit and direction -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("answer", "state", "says"),
    [
        ({"value": "2,5e-5", "direction": "attract"}, "unit", "An answer needs its unit: write N after the number."),
        ({"value": "2,5e-5 C", "direction": "attract"}, "unit", "“C” measures a charge, but a force is wanted: N."),
        (
            {"value": "25 mN", "direction": "attract"},
            "unit",
            "The digits are right, but the answer is 1000 times too large. Check every prefix and every power of ten.",
        ),
        (
            {"value": "25 nN", "direction": "attract"},
            "unit",
            "The digits are right, but the answer is 1000 times too small. Check every prefix and every power of ten.",
        ),
        ({"value": "25 µN"}, "direction", "The answer has a direction too. Write in words which way it points."),
        (
            {"value": "25 µN", "direction": "repel"},
            "direction",
            "The direction should be: attraction: each is pulled towards the other.",
        ),
    ],
)
def test_unit_and_direction_lose_the_answer_mark(answer: dict[str, str], state: str, says: str) -> None:
    """A right size with a wrong unit, prefix or direction is told so and earns no answer mark."""
    found = force(**answer)
    assert found["state"] == state
    assert says in found["sentences"][0]
    lost = {mark["kind"]: mark["earned"] for mark in found["marks"]}
    assert lost["answer"] == 0
    if "times too" not in says:  # with a power of ten lost, method is not seen unless it is typed
        assert (lost["formula"], lost["substitution"]) == (1, 1)


def test_a_sign_put_into_the_formula_is_named() -> None:
    """−25 µN is the right size with the sign substituted: named, and the answer mark is lost."""
    found = force(value="-25 µN", direction="attract")
    assert keys(found) == [["sign-substituted@F"]]
    assert (found["state"], found["earned"]) == ("mistake", 2)


@pytest.mark.parametrize(
    ("answer", "state"),
    [
        ({"value": "2,5 nC"}, "right"),
        ({"value": "2,5 nC", "direction": "positive"}, "right"),
        ({"value": "-2,5 nC"}, "direction"),
        ({"value": "2,5 nC", "direction": "negative"}, "direction"),
    ],
)
def test_a_sign_typed_or_picked(answer: dict[str, str], state: str) -> None:
    """The sign of a charge may be typed or picked; a wrong one is a wrong direction."""
    assert verdict(marked("coulomb.contact", TOUCH, shared=answer), "shared")["state"] == state


def test_a_charge_known_by_size_and_acting() -> None:
    """A charge whose sign follows from attraction may be typed with its minus sign or picked negative."""
    inputs = {"Q1": "8 nC", "r": "12 cm", "F": "25 µN", "acting": "attract"}
    for answer in ({"value": "-5 nC"}, {"value": "5 nC", "direction": "negative"}):
        assert verdict(marked("coulomb.force", inputs, find=answer), "find")["state"] == "right"
    wrong = verdict(marked("coulomb.force", inputs, find={"value": "5 nC"}), "find")
    assert wrong["state"] == "direction"


NORTH_EAST = Direction(
    "right-up",
    "53° above the +x axis",
    (("right-up", "right and up"), ("left-down", "left and down"), ("left-up", "left and up")),
    53.13,
)


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("53°", "right"),
        ("413,1°", "right"),
        ("bearing 037", "right"),
        ("right and up", "right"),
        ("233°", "opposite"),
        ("left-down", "opposite"),
        ("left-up", "wrong"),
        ("36,9", "wrong"),
        ("", "missing"),
    ],
)
def test_directions_in_a_plane(said: str, found: str) -> None:
    """Degrees from +x, a bearing or the words: right within a degree, opposite when turned round."""
    assert judge_direction(said, NORTH_EAST) == found


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_kind_of_direction_is_judged_by_its_own_words(kind: Kind) -> None:
    """Each word and synonym of a kind names its direction; the opposite, however it is said, is the opposite."""
    for key, words in kind.options:
        right = kind.of(key)
        for said in (key, words, *kind.synonyms.get(key, ()), f" {words.upper()} "):
            assert judge_direction(said, right) == "right", said
        others = {o for pair in kind.opposites for o in pair if key in pair and o != key}  # a few have none
        for said in (s for other in others for s in (other, *kind.synonyms.get(other, ()))):
            assert judge_direction(said, right) == "opposite", said
        for third in {k for k, _ in kind.options} - {key, *others}:
            assert judge_direction(third, right) == "wrong", third


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("up and to the right", "right"),
        ("rightwards, upward", "right"),
        ("down and left", "opposite"),
        ("to the left and upwards", "wrong"),
        ("to the left", "wrong"),
    ],
)
def test_a_direction_of_two_parts_may_be_said_in_any_order(said: str, found: str) -> None:
    """Each part in words of its own kind."""
    options = (("right-up", "A"), ("left-down", "B"), ("left-up", "C"), ("right-down", "D"), ("left", "E"))
    assert judge_direction(said, Direction("right-up", "A", options)) == found


def test_words_of_no_direction_on_offer_are_refused() -> None:
    """A word of another kind, or of two kinds on offer at once, is no answer."""
    for said in ("upwards", "clockwise", "right or left"):
        with pytest.raises(QuantityError, match="could not be read as one of the directions here"):
            judge_direction(said, LEFT_RIGHT.of("left"))


def test_a_direction_that_is_none_says_what_to_choose() -> None:
    """A direction not on offer is refused at its own box and the size still marked."""
    reply = marked("coulomb.force", FORCE, find={"value": "25 µN", "direction": "sideways"})
    problem = reply["problems"][0]
    assert problem["field"] == "answers.find.direction"
    assert (
        problem["message"]
        == '"sideways" could not be read as one of the directions here. Choose “attraction: each is pulled '
        "towards the other” or “repulsion: each is pushed away from the other”."
    )
    assert verdict(reply, "find")["state"] == "direction"


# --- known mistakes (common practice, no source), by plain arithmetic -----------------------------------------------


@pytest.mark.parametrize(
    ("value", "mistake"),
    [
        (9e9 * 8e-9 * 5e-9 / 0.12, ["not-squared@F"]),
        (9e9 * 13e-9 / 0.12**2, ["added@F"]),
        (9e9 * 8e-9 * 5e-9 / 12**2, ["unconverted-r@r"]),
        (9e9 * 8 * 5 / 0.12**2, ["unconverted-Q1,Q2@Q1"]),
        (9e9 * 8 * 5 / 12**2, ["unconverted-Q1,Q2,r@Q1"]),
        (9e9 * 8e-9 * 5e-9 / 12, ["not-squared@F", "unconverted-r@r"]),
    ],
)
def test_a_known_mistake_is_named(value: float, mistake: list[str]) -> None:
    """Each mistake, and two together, is named from the number alone, and pointed to."""
    found = force(value=f"{value:.2e} N", direction="attract")
    assert keys(found) == [mistake]
    assert (found["state"], found["step"]) == ("mistake", "F")
    assert found["where"] == "The step of part 2: Find the size of the force with Coulomb's law"
    assert found["earned"] == 0


def test_what_cannot_be_told_apart_is_listed() -> None:
    """One charge left in nC: the number cannot say which, so both are named and neither alone."""
    found = force(value="2,5e4 N", direction="attract")
    assert found["state"] == "one of two"
    assert keys(found) == [["unconverted-Q1@Q1"], ["unconverted-Q2@Q2"]]
    assert found["sentences"] == [
        "Your digits are the right ones, so a prefix or a power of ten is wrong. It may be one of these: check each of"
        " them in your own working."
    ]


def test_sharing_with_opposite_charges_says_which_two() -> None:
    """The change of charge from averaged sizes equals the final charge here: both are listed."""
    reply = marked("coulomb.contact", TOUCH, electrons={"value": "1,56e10", "direction": "B-to-A"})
    assert keys(verdict(reply, "electrons")) == [["sizes-averaged@Q_new"], ["final-charge@DeltaQ"]]


def test_fewer_digits_tell_less_apart() -> None:
    """6,0 nC may be averaged sizes or a sum not halved; 6,025 nC is the first of them."""
    inputs = {**TOUCH, "Q2": "-3,05 nC"}
    few = verdict(marked("coulomb.contact", inputs, shared={"value": "6,0 nC"}), "shared")
    many = verdict(marked("coulomb.contact", inputs, shared={"value": "6,025 nC"}), "shared")
    assert keys(few) == [["sizes-averaged@Q_new"], ["not-halved@Q_new"]]
    assert keys(many) == [["sizes-averaged@Q_new"]]


def test_a_mistake_like_rounding_is_not_named() -> None:
    """Where a mistake and rounding on the way give one number, the learner gets the marks and a hint."""
    inputs = {"Q1": "6 nC", "Q2": "2 nC", "r": "1,05 m"}
    answer = {"value": "1,0e-7 N", "direction": "repel"}
    found = verdict(marked("coulomb.force", inputs, find=answer), "find")
    assert (found["state"], found["earned"], found["fits"]) == ("rounded early", 3, [])
    assert "A mistake would give the same number; check it too." in found["sentences"][1]


def test_a_formula_picked_settles_it() -> None:
    """The learner's own formula decides between mistakes that give one number."""
    plain = marked("coulomb.contact", TOUCH, electrons={"value": "1,56e10", "direction": "B-to-A"})
    steps = {"DeltaQ": "2,5 nC"}
    told = marked("coulomb.contact", TOUCH, electrons={"value": "1,56e10", "direction": "B-to-A", "steps": steps})
    assert len(keys(verdict(plain, "electrons"))) == 2
    assert keys(verdict(told, "electrons")) == [["final-charge@DeltaQ"]]
    assert verdict(told, "electrons")["step"] == "DeltaQ"


def test_a_picked_formula_tells_equal_values_apart() -> None:
    """6,0 nC from +9 and −3 is a sum not halved for one who picked that formula."""
    inputs = {**TOUCH, "Q2": "-3 nC"}
    answer = {"value": "6,0 nC", "formula": "not-halved"}
    found = verdict(marked("coulomb.contact", inputs, shared=answer), "shared")
    assert keys(found) == [["not-halved@Q_new"]]
    assert found["sentences"] == [
        "The formula you picked is the one that gives this number.",
        "Put this right in the step “Share the net charge equally”, and work on from there:",
    ]


def test_the_digits_typed_bound_what_they_show() -> None:
    """6,03 shows 6,034 and not 6,036."""
    typed = read_value("6,03 nC", "C")
    assert typed.shows(6.034e-9)
    assert not typed.shows(6.036e-9)


def test_a_number_from_nowhere_is_not_named() -> None:
    """No mistake is made up for a number that none gives."""
    found = force(value="1,77e-5 N", direction="attract")
    assert (found["state"], found["fits"]) == ("not recognised", [])


# --- a question of mechanics, declared here -------------------------------------------------------------------


def ramp_plan(data: Data) -> Plan:
    """A crate on a ramp: weight, component, acceleration."""
    step = Step("F_g = m*g", "F_g = m*g", "Weight", "", "N")
    along = Step(
        "F_x = F_g*sin(theta)",
        "F_x = F_g*sin(theta)",
        "Along the ramp",
        "",
        "N",
        A,
        mistakes=(Mistake("cosine", "F_x", "F_g*cos(theta)", "Take the sine."),),
    )
    speed = Step(
        "v = sqrt(2*F_x*L/m)",
        "v = sqrt(2*F_x*L/m)",
        "Speed at the end",
        "",
        "m·s⁻¹",
        mistakes=(Mistake("root-omitted", "v", "2*F_x*L/m", "Take the root."),),
    )
    return Plan(
        "A crate slides down a smooth ramp.",
        (
            Part("define", "state", "Define weight.", points=(Point("The pull of the Earth on a body.", 2),)),
            Part("weight", "calculate", "Weight?", (step,)),
            Part("along", "calculate", "Component along the ramp?", (along,)),
            Part("speed", "calculate", "Speed?", (speed,)),
        ),
        dict(data.values),
        {"theta": "°"},
    )


RAMP = Question(
    "ramp",
    "Ramp",
    (Input("m", "Mass", "kg", 0.01, 100), Input("theta", "Angle", "°", 1, 89), Input("L", "Length", "m", 0.01, 10)),
    ramp_plan,
    constants=("g",),
    example={"m": "400 g", "theta": "25°", "L": "65 cm"},
)
WEIGHT, ALONG = 0.4 * 9.8, 0.4 * 9.8 * math.sin(math.radians(25))
SPEED = math.sqrt(2 * 9.8 * math.sin(math.radians(25)) * 0.65)


def ramp(settings: Settings | None = None, **answers: object) -> dict[str, PartMarked]:
    """The marked parts of the ramp question."""
    found = read(RAMP, RAMP.example, settings=settings)
    return {part.part.key: part for part in mark_question(ramp_plan(found.data), found, answers)}


def named(part: PartMarked) -> list[str]:
    """Keys of the mistakes that fit a part."""
    return [fit.key for fit in part.blamed.fits] if part.blamed else []


def told(part: PartMarked) -> str:
    """All sentences about a part."""
    return " ".join(sentence_text(sentence) for sentence in sentences(part, Style()))


def test_g_ten_is_named_before_early_rounding() -> None:
    """g = 10 is only 2 % off and is named, not taken for rounding."""
    part = ramp(weight={"value": "4,00 N"})["weight"]
    assert (part.state, named(part)) == ("mistake", ["g-ten@g"])


def test_a_changed_g_is_no_mistake() -> None:
    """With 10 on the reader's own data sheet there is nothing to name."""
    part = ramp(Settings({"g": 10.0}), weight={"value": "4 N"})["weight"]
    assert part.state == "right"


def test_the_calculator_in_radians_is_named() -> None:
    """sin 25 in radians is −0,13: named from the size and the sign."""
    part = ramp(along={"value": f"{WEIGHT * math.sin(25):.3f} N"})["along"]
    assert named(part) == ["radians@theta"]


def test_rounding_early_is_right_and_told() -> None:
    """1,5 % off because sin 3,1° was cut to 0,05 is right, with a note."""
    found = read(RAMP, {**RAMP.example, "theta": "3,1°"})
    value = f"{WEIGHT * 0.05:.4f} N"
    assert abs(WEIGHT * 0.05 / (WEIGHT * math.sin(math.radians(3.1))) - 1) > 0.01
    inside = mark_question(ramp_plan(found.data), found, {"along": {"value": "0,2117 N"}})[2]
    assert inside.state == "right"
    far = mark_question(ramp_plan(found.data), found, {"along": {"value": value}})[2]
    assert far.state == "not recognised"  # 7,5 % off: too far for rounding
    found = read(RAMP, {**RAMP.example, "theta": "26,2°"})
    near = WEIGHT * 0.44
    true = WEIGHT * math.sin(math.radians(26.2))
    assert 0 < abs(near / true - 1) < 0.01
    found = read(RAMP, {**RAMP.example, "theta": "14,8°"})
    true, cut = WEIGHT * math.sin(math.radians(14.8)), WEIGHT * 0.26
    assert 0.01 < abs(cut / true - 1) < 0.03
    part = mark_question(ramp_plan(found.data), found, {"along": {"value": f"{cut:.3f} N"}})[2]
    assert (part.state, part.earned) == ("rounded early", part.possible)
    assert told(part).startswith("Carry every digit and round once, at the end.")


def test_later_parts_are_marked_from_the_learners_own_value() -> None:
    """A wrong weight is carried: the component and the speed found rightly from it earn full marks."""
    parts = ramp(
        weight={"value": "40,0 N"},
        along={"value": f"{40 * math.sin(math.radians(25)):.2f} N"},
        speed={"value": f"{math.sqrt(2 * 40 * math.sin(math.radians(25)) * 0.65 / 0.4):.2f} m/s"},
    )
    assert [parts[key].state for key in ("weight", "along", "speed")] == [
        "not recognised",
        "carried",
        "carried",
    ]
    assert [parts[key].earned for key in ("weight", "along", "speed")] == [0, 1, 3]
    assert told(parts["along"]).startswith("With your own F_g this comes to F")
    assert {mark.reason for mark in parts["along"].marks} == {"your own earlier value, rightly used"}


def test_a_mistake_made_on_a_carried_value_is_named() -> None:
    """Cosine for sine on the learner's own weight is found on that weight."""
    parts = ramp(weight={"value": "40,0 N"}, along={"value": f"{40 * math.cos(math.radians(25)):.2f} N"})
    assert (parts["along"].state, named(parts["along"])) == ("mistake", ["cosine@F_x"])


def test_a_right_answer_after_a_wrong_one_is_right() -> None:
    """A later part answered rightly from the data is right, whatever came before."""
    parts = ramp(weight={"value": "40 N"}, along={"value": f"{ALONG:.2f} N"})
    assert parts["along"].state == "right"


def test_a_rounded_right_value_carried_on_costs_nothing() -> None:
    """Two figures of the weight carried into the speed are rounding, and keep every mark."""
    parts = ramp(
        weight={"value": "3,9 N"},
        along={"value": "1,6 N"},
        speed={"value": f"{math.sqrt(2 * 1.6 * 0.65 / 0.4):.3f} m/s"},
    )
    assert {parts["along"].state, parts["speed"].state} <= {"right", "rounded early"}
    assert parts["speed"].earned == 3


# --- marks as a memo gives them ---------------------------------------------------------------------------------


def letters(found: dict[str, Any]) -> str:
    """The marks earned as a memo letters them."""
    return "".join(mark["kind"][0].upper() for mark in found["marks"] if mark["earned"])


@pytest.mark.parametrize(
    ("answer", "earned"),
    [
        ({"value": "1,77e-5 N"}, ""),  # wrong, no working
        ({"value": "1,77e-5 N", "formula": "law"}, "F"),
        ({"value": "1,77e-5 N", "substitution": "9e9 x 8e-9 x 5e-9 / 0,12^2"}, "FS"),
        ({"value": "2,5e-9 N", "substitution": "(9×10⁹)(8×10⁻⁹)(5×10⁻⁹)/12²"}, "F"),  # not SI
        ({"value": "3,00e-6 N", "formula": "not-squared"}, ""),  # wrong formula: nothing
        ({"value": "2,5e-5 N", "direction": "attract", "formula": "added"}, ""),  # formula against answer
        ({"value": "2,5e-5 N", "direction": "repel"}, "FS"),
        ({"value": "2,5e-5 N", "direction": "attract"}, "FSA"),
        ({"substitution": "9e9 x 8e-9 x 5e-9 / 0,12^2"}, "FS"),  # no answer
        ({"value": "25 µN", "direction": "attract", "substitution": "9e9 x 8e-9 x 5e-9 / 12^2"}, "FA"),
        ({}, ""),
    ],
)
def test_method_marks(answer: dict[str, str], earned: str) -> None:
    """Method marks need typed working once the answer is wrong; a wrong formula loses the whole calculation."""
    assert letters(force(**answer)) == earned


def test_a_wrong_value_inside_a_part_loses_the_answer_mark_only() -> None:
    """With ΔQ wrong and n rightly found from it, formula and substitution stand and the answer mark goes."""
    steps = {"DeltaQ": "3 nC"}
    reply = marked("coulomb.contact", TOUCH, electrons={"value": "1,88e10", "direction": "B-to-A", "steps": steps})
    found = verdict(reply, "electrons")
    assert letters(found) == "FS"
    assert found["marks"][-1]["reason"] == "it carries a wrong value of this same part"
    assert found["sentences"][0] == "Your answer follows rightly from your own ΔQ, but that value is not right."


def test_ticked_points_are_counted_as_ticked() -> None:
    """A law's key phrases are ticked by the learner; the total says how many marks came so."""
    reply = marked("coulomb.force", FORCE, state={"said": [1]}, find={"value": "25 µN", "direction": "attract"})
    assert (reply["earned"], reply["possible"], reply["self_marked"]) == (4, 5, 1)
    assert verdict(reply, "state")["state"] == "self-marked"
    assert "(1 of them ticked by yourself)" in reply["html"]


def test_no_tick_is_no_answer() -> None:
    """A part without a tick is open, not marked."""
    found = verdict(marked("coulomb.force", FORCE, state={"said": []}), "state")
    assert (found["state"], found["head"], found["earned"]) == ("blank", "Nothing ticked yet", 0)


def test_points_are_ticked_by_key_phrase_where_each_is_worth_a_mark() -> None:
    """Two phrases and two marks give two ticks; a point without phrases gives one."""
    phrases = Part("a", "state", "", points=(Point("x is y and z is w", 2, ("x is y", "z is w")),))
    whole = Part("a", "draw", "", points=(Point("arrow", 1), Point("label", 2)))
    assert tick_items(phrases) == (("x is y", 1), ("z is w", 1))
    assert tick_items(whole) == (("arrow", 1), ("label", 2))


# --- what is typed ----------------------------------------------------------------------------------------------


def test_an_unreadable_answer_is_refused_at_its_own_box() -> None:
    """Text without a number is answered beside its box; the other parts are marked all the same."""
    reply = marked("coulomb.contact", TOUCH, before={"value": "lots"}, shared={"value": "2,5 nC"})
    assert reply["problems"] == [
        {
            "field": "answers.before.value",
            "message": '"lots" does not start with a number. Type a number, for example 5 N.',
        }
    ]
    assert [line["state"] for line in reply["parts"]] == ["blank", "unreadable", "right", "blank", "blank"]


@pytest.mark.parametrize(
    ("line", "value"),
    [
        ("(9×10⁹)(8×10⁻⁹)(5×10⁻⁹)/(0,12)²", 2.5e-5),
        ("F = 9e9 x 8e-9 x 5e-9 / 0,12^2", 2.5e-5),
        ("0,4(9,8) sin 30°", 1.96),
        ("√(2 × 8)", 4.0),
        ("2^-1", 0.5),
    ],
)
def test_lines_of_numbers(line: str, value: float) -> None:
    """A typed substitution is worked out as it would be on paper."""
    assert read_line(line) == pytest.approx(value)


@given(st.text(max_size=40))
def test_any_text_is_a_value_or_a_sentence(text: str) -> None:
    """Whatever is typed is read, or refused with a sentence; nothing else is raised."""
    said = ""
    for reader in (lambda: read_value(text, "N"), lambda: read_value(text, ""), lambda: read_line(text)):
        try:
            reader()
        except QuantityError as problem:
            said += problem.sentence
    assert said or any(sign.isdigit() for sign in text)


@pytest.mark.parametrize("line", ["9^9^9^9^9^9", "__import__('os')", "k*Q", "1/0", "(" * 190])
def test_a_line_that_is_no_sum_is_refused(line: str) -> None:
    """Names, endless powers and loose brackets are refused with the remedy."""
    with pytest.raises(QuantityError, match="Type numbers only"):
        read_line(line)


class _Tags(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.tags: set[str] = set()

    def handle_starttag(self, tag: str, attrs: object) -> None:
        self.tags.add(tag)


def test_typed_text_is_escaped() -> None:
    """Mark-up typed as an answer comes back as text."""
    attack = "<script>alert(1)</script>"
    reply = marked("coulomb.force", FORCE, find={"value": f"5 {attack}", "direction": attack})
    reader = _Tags()
    reader.feed(reply["html"])
    assert "script" not in reader.tags
    assert attack not in reply["html"]


@pytest.mark.parametrize("answers", [None, 3, {"find": 7}, {"find": {"value": 5, "said": "x", "steps": 3}}])
def test_answers_of_the_wrong_shape(answers: object) -> None:
    """Answers that are no texts are blanks, or refused in a sentence."""
    data = {"question": "coulomb.force", "inputs": FORCE, "answers": answers}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    if isinstance(answers, dict):
        assert reply["data"]["earned"] == 0
    else:
        assert reply["errors"][0]["message"] == "The answers of this request cannot be read. Type them again."


@pytest.mark.parametrize("key", topics.question_keys())
def test_every_question_has_a_sheet_and_takes_marks(key: str) -> None:
    """Each declared question gives an answer sheet, and its own right answers earn every mark that is not ticked."""
    _, question = topics.find(key)
    data = {"question": key, "inputs": question.example}
    sheet = json.loads(desk.answer(json.dumps({"operation": "sheet", "data": data})))["data"]
    assert len(sheet["parts"]) == sheet["html"].count('<fieldset class="answer-part"')
    solved = question.plan(read(question, question.example).data)
    for line, part in zip(sheet["parts"], solved.parts, strict=True):
        assert line["part"] == part.key
        if part.kind == "calculate":
            assert f'name="answers.{part.key}.value"' in sheet["html"]
        else:
            assert len(line["tick"]) >= 1
            assert sum(worth for _, worth in tick_items(part)) == part.marks


def test_offered_formulas_do_not_give_the_right_one_away() -> None:
    """The right formula stands among its mistakes in alphabetical order."""
    _, question = topics.find("coulomb.force")
    plan = question.plan(read(question, FORCE).data)
    offered = formulas(plan.steps[0])
    assert [key for key, _ in offered] == ["added", "not-squared", "law"]
    assert [line for _, line in offered] == sorted(line for _, line in offered)


def asked_for(question: str, name: str, inputs: dict[str, str], answer: object) -> dict[str, Any]:
    """The reply where one of a question's unknowns is asked."""
    data = {"question": question, "inputs": inputs, "find": name, "answers": {"find": answer}}
    found: dict[str, Any] = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))["data"]
    return found


@pytest.mark.parametrize(
    ("value", "earned"),
    [
        ("799,2 N", 2),  # 74(10 + 0,8); 74(9,8 + 1), a left out as a factor, happens to give the same
        ("784,4 N", 3),
        ("740 N", 0),
    ],
)
def test_ten_for_g_costs_the_value_alone_where_a_slip_of_algebra_gives_the_same(value: str, earned: int) -> None:
    """74 kg on a string, upwards at 0,8 m/s²: T = m(g + a). What is likelier counts for the marks, both are told."""
    lift = {"on": "string", "m": "74 kg", "a": "0,8 m/s^2"}
    found = verdict(asked_for("newton.lift", "T", lift, {"value": value}), "find")
    assert found["earned"] == earned
    if earned == 2:
        assert keys(found) == [["g-ten@g"], ["factor-left-out@T"]]


HIT = {"m": "140 g", "u": "15 m/s", "v": "-25 m/s", "Deltat": "8 ms", "Deltat_2": "20 ms"}


@pytest.mark.parametrize(
    ("impulse", "average", "peak", "earned"),
    [
        ("", "175 N", "350 N", 3),  # twice the own average
        ("", "175 N", "1400 N", 3),  # from the impulse itself
        ("1,4 N s", "", "350 N", 3),  # twice the own impulse over the time
        ("1,4 N s", "175 N", "350 N", 3),
        ("", "175 N", "175 N", 0),
        ("", "175 N", "700 N", 0),  # the average, not the peak
    ],
)
def test_what_a_check_says_may_be_the_way_from_an_own_value(impulse: str, average: str, peak: str, earned: int) -> None:
    """The peak of a triangle is twice the average force: that follows from an own average too (5,6 N·s in 8 ms)."""
    values = {"impulse": impulse, "force": average, "peak": peak}
    given = {part: {"value": value, "direction": "to the left"} for part, value in values.items() if value}
    assert verdict(marked("momentum.bat", HIT, **given), "peak")["earned"] == earned


@pytest.mark.parametrize("direction", ["upwards", "downwards"])
def test_sizes_subtracted_at_a_bounce_are_named_whichever_way_is_said(direction: str) -> None:
    """Down at 4,315 m/s, up at 2,970 m/s: who takes 1,345 m/s, and says upwards or downwards, subtracted the sizes."""
    data = {"positive": "up", "h_1": "0,95 m", "h_2": "0,45 m"}
    reply = asked_for("projectile.bounce", "Deltav", data, {"value": "1,345 m/s", "direction": direction})
    assert keys(verdict(reply, "find")) == [["sizes-subtracted@Deltav"]]


@pytest.mark.parametrize(
    ("value", "direction", "earned", "said"),
    [
        ("3,13 %", "lower", 5, ""),
        ("3,13 % lower", "", 5, ""),
        ("-3,13 %", "", 5, ""),
        ("+3,13 %", "", 4, "The note heard is lower, not higher."),
        ("3,13 %", "higher", 4, "The note heard is lower, not higher."),
        ("3,13 %", "", 4, "Say as well whether the note heard is higher or lower: in words, or with a sign."),
    ],
)
def test_a_change_of_a_note_says_higher_or_lower_in_words_or_by_its_sign(
    value: str, direction: str, earned: int, said: str
) -> None:
    """310/320 of the note are heard: 3,125 % lower. It is no vector, so a sign is enough."""
    data = {"source_way": "towards", "listener_way": "away", "v_S": "20 m/s", "v_L": "30 m/s", "v": "340 m/s"}
    found = verdict(asked_for("doppler.both-move", "p", data, {"value": value, "direction": direction}), "find")
    assert found["earned"] == earned
    assert (said in found["sentences"]) == bool(said), found["sentences"]
