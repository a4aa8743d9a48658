"""What a wrong answer is taken for: nothing that would give another number, sign or direction; own values in every
sense; other data sheets. Every number is worked here with plain arithmetic.
"""

import json
import math
from typing import Any

import pytest

from calc import desk, topics

K = 9e9
FORCE = {"Q1": "+8 nC", "Q2": "-5 nC", "r": "12 cm"}
RIGHT = K * 8e-9 * 5e-9 / 0.12**2  # 25 µN


def marked(question: str, inputs: dict[str, Any], **answers: dict[str, Any]) -> dict[str, dict[str, Any]]:
    """Verdicts by part."""
    data = {"question": question, "inputs": inputs, "answers": answers}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    assert reply["ok"], reply
    return {part["part"]: part for part in reply["data"]["parts"]}


def force(value: str, direction: str = "attract") -> dict[str, Any]:
    """The verdict on an answer to the force of two charges."""
    return marked("coulomb.force", FORCE, find={"value": value, "direction": direction})["find"]


def names(verdict: dict[str, Any]) -> list[str]:
    """The mistakes named, by key."""
    return [key for fit in verdict["fits"] for key in fit["keys"]]


@pytest.mark.parametrize("off", [1.012, 1.02, 1.028, 0.975, 0.985])
def test_an_answer_a_little_off_is_told_of_no_mistake_that_gives_another_number(off: float) -> None:
    """1 to 3 % off and of no origin: signs in the formula would give −25 µN, which is another number and sign."""
    verdict = force(f"{RIGHT * off:.3e} N")
    assert names(verdict) == []


def test_a_slip_needs_its_sign_and_direction() -> None:
    """The size of signs substituted is the right one: only the minus sign shows that slip."""
    assert names(force(f"{-RIGHT:.3e} N", "")) == ["sign-substituted@F"]
    assert names(force(f"{RIGHT:.3e} N", "repel")) == []


@pytest.mark.parametrize(
    ("value", "name"),
    [
        (K * 8e-9 * 5e-9 / 0.06**2, "half-length@r"),
        (K * 8e-9 * 5e-9 / 0.24**2, "double-length@r"),
        (K * 8e-9 / 0.12**2, "factor-left-out@F"),
        (K * 8e-6 * 5e-9 / 0.012**2, ""),  # two slips together have no single name
        (K * 5e-9 * 5e-9 / 0.12**2, "mixed-up@Q1"),
        (RIGHT / 2, "half@F"),
        (RIGHT * 2, "twice@F"),
    ],
)
def test_slips_that_no_topic_declares(value: float, name: str) -> None:
    """Half and twice a distance, a factor left out, a datum put in for another, half and twice the answer."""
    assert (names(force(f"{value:.4e} N")) or [""])[0] == name


APART = {"Q1": "+8 nC", "Q2": "-5 nC", "r": "", "F": "25 uN"}


def apart(times: float) -> dict[str, Any]:
    """The verdict on a distance so many times the right one, √(9 × 10⁹ × 40 × 10⁻¹⁸ ÷ 25 × 10⁻⁶) = 0,12 m."""
    return marked("coulomb.force", APART, find={"value": f"{0.12 * times:.5g} m"})["find"]


@pytest.mark.parametrize(
    ("times", "told"),
    [
        (math.sqrt(0.1), [["power-of-k@k"], ["prefix-0.1@Q1"], ["prefix-0.1@Q2"]]),
        (math.sqrt(10), [["power-of-k@k"], ["prefix-10@Q1"], ["prefix-10@Q2"]]),
        (math.sqrt(1000), [["prefix-1000@Q1"], ["prefix-1000@Q2"], ["prefix-0.001@F"]]),
        (2, [["twice@r"]]),
        (0.12, [["root-omitted@r"]]),
    ],
)
def test_slips_that_give_one_value_for_any_data_are_told_together(times: float, told: list[list[str]]) -> None:
    """Under the root a power of ten in k, in one charge, in the other or in F moves the distance alike: no number can
    say which. What gives a value of its own is named alone."""
    verdict = apart(times)
    assert [fit["keys"] for fit in verdict["fits"]] == told
    told_so = any("exactly your number. Look in your own working" in sentence for sentence in verdict["sentences"])
    assert told_so == (len(told) > 1)


def test_a_factor_two_is_laid_on_no_value_on_the_way_where_the_answer_shows_it_too() -> None:
    """A charge on a drop, twice too large: twice the charge, or half the plates' distance; not "twice E" besides."""
    inputs = {"V": "420 V", "V_2": "105 V", "d": "4 mm", "m": "8,57 × 10⁻¹⁵ kg", "n": "", "upper": "positive"}
    right = 8.57e-15 * 9.8 * 4e-3 / 420
    drop = marked("electric-field.drop", inputs, charge={"value": f"{2 * right:.4e} C", "direction": "negative"})[
        "charge"
    ]
    assert names(drop) == ["double-length@d", "twice@q"]


@pytest.mark.parametrize(
    ("value", "head"),
    [("25000 N", "Wrong: it may be one of two mistakes"), ("2,5 × 10⁻⁹ N", "Wrong: it may be this mistake")],
)
def test_the_right_digits_may_hide_any_power_of_ten(value: str, head: str) -> None:
    """A charge left in nC gives the right digits, and so does any other power of ten."""
    verdict = force(value)
    assert verdict["head"] == head
    assert any(sentence.startswith("Your digits are the right ones") for sentence in verdict["sentences"])


def test_other_digits_are_no_power_of_ten() -> None:
    """Where the digits are others the mistake is named without a word of powers of ten."""
    verdict = force(f"{RIGHT / 2:.4e} N")
    assert verdict["head"] == "Wrong: here is the mistake"
    assert not any("power of ten" in sentence for sentence in verdict["sentences"])


def test_digits_one_per_cent_off_are_not_called_right() -> None:
    """2,48 × 10⁻³ N is a hundred times the right 25 µN but for 0,8 %: its digits are others."""
    assert force("2,50 × 10⁻³ N")["head"] == "Right digits, wrong power of ten"
    near = {**FORCE, "Q1": "+7,855 nC"}  # 24,547 µN, of which a memo gives three figures
    memo = marked("coulomb.force", near, find={"value": "2,45 × 10⁻³ N", "direction": "attract"})["find"]
    assert memo["head"] == "Right digits, wrong power of ten"
    assert force("2,48 × 10⁻³ N")["head"] == "Wrong"
    less = {**FORCE, "Q1": "+6,272 nC"}  # 19,6 µN: two figures make 20 of it, four do not
    for value, head in (("2,0 × 10⁻⁴ N", "Right digits, wrong power of ten"), ("2,000 × 10⁻⁴ N", "Wrong")):
        answer = {"value": value, "direction": "attract"}
        assert marked("coulomb.force", less, find=answer)["find"]["head"] == head
    assert force(f"{RIGHT * 100 * 8.988 / 9:.3e} N")["head"] == "Right digits, wrong power of ten"


def test_fifty_thousand_is_not_forty_nine_thousand() -> None:
    """With g = 10 a field of 49 000 V·m⁻¹ comes to 50 000: another data sheet's 9,81 does not make that right."""
    inputs = {"V": "", "V_2": "90 V", "d": "4 mm", "m": "4,8 × 10⁻¹⁵ kg", "n": "6", "upper": "positive"}
    field = 4.8e-15 * 9.8 / (6 * 1.6e-19)
    assert field == pytest.approx(49000)
    found = {
        value: marked("electric-field.drop", inputs, field={"value": value, "direction": "downwards"})["field"]
        for value in ("50000 V/m", "49050 V/m")
    }
    assert names(found["50000 V/m"]) == ["g-ten@g"]
    assert found["49050 V/m"]["head"] == "Right"


def test_swapped_digits_are_told_beside_a_slip_cut_short() -> None:
    """47 600 is 46 700 with two digits changed over, and nearly what g = 10 gives, 47 656: both are told."""
    inputs = {"V": "", "V_2": "90 V", "d": "4 mm", "m": "4,575 × 10⁻¹⁵ kg", "n": "6", "upper": "positive"}
    field = marked("electric-field.drop", inputs, field={"value": "47600 V/m", "direction": "downwards"})["field"]
    assert names(field) == ["g-ten@g", "digits-swapped@E"]


def test_another_data_sheet_does_not_round_off_what_is_typed_in_full() -> None:
    """38 490 with g = 9,8 is 38 529 with 9,81: 39 kV·m⁻¹ rounds that to two figures, 39,00 kV·m⁻¹ does not."""
    inputs = {"V": "", "V_2": "90 V", "d": "4 mm", "m": "3,7705 × 10⁻¹⁵ kg", "n": "6", "upper": "positive"}
    field_there = 3.7705e-15 * 9.8 / (6 * 1.6e-19)
    assert field_there == pytest.approx(38490, rel=1e-4)
    for value, right in (("39 kV/m", True), ("39000 V/m", True), ("39,00 kV/m", False), ("3,900 × 10⁴ V/m", False)):
        field = marked("electric-field.drop", inputs, field={"value": value, "direction": "downwards"})["field"]
        assert (field["earned"] == field["possible"]) == right, value


THREE = [{"Q": "+3 nC", "x": "0 cm"}, {"Q": "+8 nC", "x": "40 cm"}, {"Q": "-5 nC", "x": "50 cm"}]


def test_a_term_left_out_is_not_told_as_a_division_that_makes_it_vanish() -> None:
    """One force alone, 1,35 µN: the other was left out, or its distance left in cm; nobody divided it by k."""
    inputs = {"charges": THREE, "on": "1", "positive": "right"}
    alone = K * 3e-9 * 8e-9 / 0.4**2
    told = names(marked("several-charges.line", inputs, net={"value": f"{alone:.3e} N", "direction": "left"})["net"])
    assert {"term-left-out@SigmaF", "unconverted-x3@x3"} <= set(told)
    assert not any(key.startswith(("divided", "factor-left-out", "multiplied")) for key in told)


def test_what_is_subtracted_is_no_sum() -> None:
    """ΔQ = Q_new − Q₁ is a difference, and its parts are said to belong in one."""
    inputs = {"Q1": "+8 nC", "Q2": "-2 nC", "r": "15 cm", "r2": ""}
    answer = {"value": "5,000 × 10¹⁰", "direction": "electrons move from B to A"}
    fits = marked("coulomb.contact", inputs, electrons=answer)["electrons"]["fits"]
    assert [fit["say"] for fit in fits] == [["You left Q_new out: it belongs in this difference."]]


def test_one_prefix_left_is_the_likeliest_where_the_digits_are_right() -> None:
    """A distance left in cm: told with its step, as the likeliest of what may be wrong with the power of ten."""
    assert force("2,5 × 10⁻⁹ N")["sentences"] == [
        "Your digits are the right ones, so a prefix or a power of ten is wrong. Most likely it is this one, in the"
        " step “Find the size of the force with Coulomb's law”:"
    ]


def test_twice_a_length_is_not_called_a_part_of_it() -> None:
    """The whole length is what half of it is corrected to; twice it is corrected to the length itself."""
    half, twice = (force(f"{K * 8e-9 * 5e-9 / r**2:.4e} N")["fits"][0]["say"] for r in (0.06, 0.24))
    assert half == ["You used half of r. The whole length belongs in the formula: r = 0,12\N{NO-BREAK SPACE}m."]
    assert twice == ["You used twice r. The length itself belongs in the formula: r = 0,12\N{NO-BREAK SPACE}m."]


def test_swapped_digits_are_told() -> None:
    """2,05 for 2,50: every digit is there."""
    verdict = force("2,05 × 10⁻⁵ N")
    assert names(verdict) == ["digits-swapped@F"]
    assert verdict["sentences"] == []  # the slip of the pen lies in no step


def test_no_list_is_longer_than_three() -> None:
    """A short number fits many slips: the likeliest three are told."""
    inputs = {"charges": [{"Q": "+2 nC", "x": "0 cm"}, {"Q": "+4 nC", "x": "25 cm"}, {"Q": "-6 nC", "x": "35 cm"}]}
    data = {**inputs, "on": "1", "positive": "left"}
    for value in ("1,2 µN", "8,8 µN", "1,1 µN", "2,0 µN", "5,5 µN"):
        assert len(marked("several-charges.line", data, net={"value": value, "direction": "left"})["net"]["fits"]) <= 3


def test_what_to_do_next_when_nothing_fits() -> None:
    """The learner is asked for the first value on the way, by its name."""
    inputs = {"Q1": "+9 nC", "Q2": "-4 nC", "r": "20 cm", "r2": ""}
    verdict = marked("coulomb.contact", inputs, electrons={"value": "3,7137 × 10¹⁰"})["electrons"]
    assert verdict["sentences"] == [
        "No usual mistake gives this number. Type your value for Q_new under “My working”, and I can check that far. "
        "The first value that is not right shows where to look."
    ]


def test_ten_for_g_costs_the_answer_mark_only() -> None:
    """A drop hangs still in a field: with g = 10 formula and numbers keep their marks, part by part."""
    inputs = {"V": "420 V", "V_2": "105 V", "d": "4 mm", "m": "8,57 × 10⁻¹⁵ kg", "n": "", "upper": "positive"}
    field = 420 / 4e-3
    charge = 8.57e-15 * 10 / field
    drop = marked("electric-field.drop", inputs, charge={"value": f"{charge:.4e} C", "direction": "negative"})["charge"]
    assert names(drop) == ["g-ten@g"]
    assert [mark["kind"] for mark in drop["marks"] if not mark["earned"]] == ["answer"]


def test_the_constants_of_another_data_sheet_are_right() -> None:
    """k = 8,99 × 10⁹ all the way is no mistake, where two almost equal forces magnify the difference as well."""
    inputs = {
        "charges": [{"Q": "+9 nC", "x": "0 cm"}, {"Q": "-4 nC", "x": "30 cm"}, {"Q": "+4,04 nC", "x": "90 cm"}],
        "on": "2",
        "positive": "right",
    }
    net = 8.99e9 * (9e-9 * 4e-9 / 0.3**2 - 4e-9 * 4.04e-9 / 0.6**2)
    verdict = marked("several-charges.line", inputs, net={"value": f"{net:.4e} N", "direction": "left"})["net"]
    assert verdict["earned"] == verdict["possible"]


@pytest.mark.parametrize(("g", "earned"), [(9.8, 4), (9.81, 4), (10, 3), (9.79, 0)])
def test_the_g_of_another_data_sheet_is_right_where_a_difference_magnifies_it(g: float, earned: int) -> None:
    """T = mg − F_E with 19 mN of 19,6 mN held up: 9,81 moves T by 3 %; 10 loses the answer mark, 9,79 has no origin."""
    boxes = {"want": "T", "where": "above", "string": "up", "acting": "attract", "m": "2 g", "F_E": "0,019 N"}
    empty = dict.fromkeys(("Q1", "Q2", "r"), "")
    tension = {"value": f"{0.002 * g - 0.019:.4e} N", "direction": "up"}
    verdict = marked("equilibrium.vertical", {**boxes, **empty}, find=tension)["find"]
    assert (verdict["earned"], verdict["possible"]) == (earned, 4)


LINE = {
    "charges": [{"Q": "+2 nC", "x": "0 cm"}, {"Q": "+4 nC", "x": "25 cm"}, {"Q": "-6 nC", "x": "35 cm"}],
    "on": "1",
    "positive": "left",
}
FROM_2 = K * 2e-9 * 4e-9 / 0.25**2  # 1,152 µN to the left
FROM_3 = K * 2e-9 * 6e-9 / 0.35**2  # 0,882 µN to the right


def test_a_wrong_direction_is_carried_like_a_wrong_size() -> None:
    """Force 2 taken to the right: both then point right and add up. The net force from there earns full marks."""
    verdicts = marked(
        "several-charges.line",
        LINE,
        **{
            "force-2": {"value": f"{FROM_2:.4e} N", "direction": "right"},
            "net": {"value": f"{FROM_2 + FROM_3:.4e} N", "direction": "right"},
        },
    )
    assert verdicts["force-2"]["state"] == "direction"
    assert (verdicts["net"]["state"], verdicts["net"]["earned"]) == ("carried", verdicts["net"]["possible"])


def test_the_direction_of_the_memo_is_right_beside_a_carried_size() -> None:
    """A held charge found as 2,6 nC for 0,4 nC: the electrons from it are carried, whichever way the learner says that
    they went, as the data have it or as the own value has it."""
    inputs = {"Q1": "", "Q2": "2,2 nC", "Q_new": "1,3 nC"}
    own = {"value": "2,6 nC", "direction": "positive"}
    for where in ("electrons move from A to B", "electrons move from B to A"):
        part = marked("coulomb.sharing", inputs, find=own, electrons={"value": "8,125 × 10⁹", "direction": where})
        assert part["electrons"]["earned"] == part["electrons"]["possible"], where
    other = {"value": "5,625 × 10⁹", "direction": "electrons move from B to A"}
    assert marked("coulomb.sharing", inputs, electrons=other)["electrons"]["head"] == "Right size, wrong direction"


def test_copied_wrongly_is_told_beside_a_slip_that_seldom_happens() -> None:
    """3,24 for 3,42 could also come of another charge put in, for these data: both are told."""
    charges = [{"Q": "+5 nC", "x": "0 cm"}, {"Q": "+8 nC", "x": "20 cm"}, {"Q": "+6 nC", "x": "30 cm"}]
    inputs = {"charges": charges, "on": "2", "positive": "right"}
    verdict = marked("several-charges.line", inputs, net={"value": "3,240 × 10⁻⁵ N", "direction": "left"})["net"]
    assert "digits-swapped@F_net" in names(verdict)


def test_a_wrong_size_with_a_wrong_sign_is_not_called_right() -> None:
    """5,44 nC for −6,32 nC: the sign is told, and nothing says that the size is right."""
    one, other = 18.973665961010277e-9, -6.324555320336759e-9
    before, after = K * one * -other / 0.1**2, K * ((one + other) / 2) ** 2 / 0.1**2
    inputs = {"F_1": f"{before!r} N", "F_2": f"{after!r} N", "r": "10 cm", "acting": "attract"}
    for value, said in (("5,44 nC", "This value is"), ("6,325 nC", "The size is right, but this value is")):
        answer = {"value": value, "steps": {"Q1": "18,97 nC"}}
        sentences = marked("coulomb.two-forces", inputs, charges=answer)["charges"]["sentences"]
        assert sentences[-1] == f"{said} negative: keep the minus sign."


def test_a_minus_sign_where_no_direction_is_asked() -> None:
    """A gradient has no direction: the learner is told to leave the minus sign out and nothing of words."""
    key = "coulomb.graph"
    inputs = topics.find(key)[1].example
    sentences = marked(key, dict(inputs), gradient={"value": "-1,252 × 10⁻⁹ N·m²"})["gradient"]["sentences"]
    assert sentences[-1] == "This value is not negative: leave the minus sign out."


def test_a_named_mistake_stands_last() -> None:
    """What is said of the direction comes before the line that leads on to the mistake."""
    inputs = {"Q1": "7,8 nC", "Q2": "", "Q_new": "-2,7 nC"}
    verdict = marked("coulomb.sharing", inputs, find={"value": "2,400 nC", "direction": "positive"})["find"]
    assert len(verdict["fits"]) == 1
    assert verdict["sentences"][0].startswith("The direction should be: negative charge.")
    assert verdict["sentences"][-1].endswith("and work on from there:")


def test_a_sign_alone_is_no_power_of_ten() -> None:
    """Minus the right force is the slip of the sign, named without doubt."""
    verdict = force(f"{-RIGHT:.3e} N", "")
    assert verdict["head"] == "Wrong: here is the mistake"


def test_a_prefix_left_is_told_once() -> None:
    """A force left in mN is told as that, beside the prefixes of the charges; not again as another power of ten."""
    inputs = {**APART, "F": "25 mN", "Q1": "+8 µC"}
    verdict = marked("coulomb.force", inputs, find={"value": f"{math.sqrt(K * 8e-6 * 5e-9 / 25):.4e} m"})["find"]
    assert names(verdict) == ["unconverted-F@F", "prefix-0.001@Q1", "prefix-0.001@Q2"]


def test_a_balance_turned_over_by_an_own_value_is_carried() -> None:
    """Force 3 four times too large, by half the distance: the net force changes its side, rightly."""
    wrong = 4 * FROM_3
    verdicts = marked(
        "several-charges.line",
        LINE,
        **{
            "force-3": {"value": f"{wrong:.4e} N", "direction": "right"},
            "net": {"value": f"{wrong - FROM_2:.4e} N", "direction": "right"},
        },
    )
    assert (verdicts["net"]["state"], verdicts["net"]["earned"]) == ("carried", verdicts["net"]["possible"])


@pytest.mark.parametrize("typed", ["3,5 µN", "3,53 µN", "3,527 µN"])
def test_an_own_value_is_carried_rounded_or_not(typed: str) -> None:
    """The net force by the value in the calculator or by the two figures written down: both are right."""
    wrong = 4 * FROM_3
    for used in (wrong, float(typed.split()[0].replace(",", ".")) * 1e-6):
        verdicts = marked(
            "several-charges.line",
            LINE,
            **{
                "force-3": {"value": typed, "direction": "right"},
                "net": {"value": f"{used - FROM_2:.4e} N", "direction": "right"},
            },
        )
        assert verdicts["net"]["earned"] == verdicts["net"]["possible"], used


def test_the_unrounded_own_value_of_no_known_origin() -> None:
    """3,1 µN written for 3,14 µN, whatever gave it: what lies between the values that round to it is right."""
    verdicts = marked(
        "several-charges.line",
        LINE,
        **{
            "force-3": {"value": "3,1 µN", "direction": "right"},
            "net": {"value": f"{3.14e-6 - FROM_2:.4e} N", "direction": "right"},
        },
    )
    assert verdicts["net"]["earned"] == verdicts["net"]["possible"]
    assert math.isfinite(FROM_2)


def test_the_reason_given_is_one_for_the_direction() -> None:
    """Attraction for repulsion is answered with the rule of signs, not with the formula of the force."""
    verdict = force("25 µN", "repel")
    told = " ".join(verdict["sentences"])
    assert "charges of opposite sign attract" in told


@pytest.mark.parametrize(
    ("on_the_way", "answer", "earned", "sentence"),
    [
        ({"E_1": "800 N/C"}, "", 3, ""),
        ({"E_1": "800 N/C", "E_2": "1125 N/C"}, "", 4, ""),
        ({"E_1": "800 N/C", "E_2": "1125 N/C"}, "1925 N/C", 6, ""),
        ({"E_1": "400 N/C"}, "", 0, "Your E₁ is not right."),
        ({"E_1": "400 N/C", "E_2": "1125 N/C"}, "1525 N/C", 2, "Your answer follows rightly from your own E₁"),
    ],
)
def test_a_value_on_the_way_needs_no_direction(
    on_the_way: dict[str, str], answer: str, earned: int, sentence: str
) -> None:
    """Fields of two charges at a point: sizes earn their marks; a direction is asked of the answer alone."""
    _, question = topics.find("electric-field.line")
    net = {"value": answer, "direction": "right" if answer else "", "steps": on_the_way}
    verdict = marked("electric-field.line", dict(question.example), net=net)["net"]
    assert (verdict["earned"], verdict["possible"]) == (earned, 6)
    assert " ".join(verdict["sentences"]).startswith(sentence)
    assert "direction" not in " ".join(verdict["sentences"])
