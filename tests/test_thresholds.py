"""Both edges of every limit: what is still let through, and the first that is not.

The limits are written here as numbers, not read from calc: moving one there must fail here.
"""

from __future__ import annotations

import itertools
import json
from datetime import date
from types import SimpleNamespace
from typing import Any

import pytest
import scipy.constants

from calc import desk, topics
from calc.language.expressions import equation
from calc.language.printing import Style, exact, rounded
from calc.language.quantities import QuantityError, parse_quantity
from calc.language.units import parse_unit
from calc.marking.early_rounding import two_decimals
from calc.marking.findings import _early
from calc.marking.learner import judge_direction, read_line, read_value
from calc.model.answers import Direction
from calc.model.constants import SHEET
from calc.model.questions import Check, Input, Plan, Question, Rows
from calc.practice.revision import Attempt
from calc.topics.coulomb.electrons import few_electrons
from calc.topics.several_charges.shared import axis_angle, compass, scale_words
from calc.topics.shared import quantities
from calc.working.reading import Refusals, doubtful, read
from calc.working.working import agrees, decides, run
from tests.cases import KEYS, Case, cases
from tests.draws import planned

FORCE = {
    "question": "coulomb.force",
    "inputs": {"Q1": "+8 nC", "Q2": "-5 nC", "r": "12 cm", "F": ""},
}


def ask(operation: str, **data: Any) -> dict[str, Any]:
    """A request through the one boundary."""
    text = json.dumps({"operation": operation, "data": data})
    reply: dict[str, Any] = json.loads(desk.answer(text))
    return reply


# --- constants ---

SCHOOL = {
    "k": "9.0e9",
    "e": "1.6e-19",
    "g": "9.8",
    "m_e": "9.11e-31",
    "m_p": "1.67e-27",
    "h": "6.63e-34",
    "c": "3.0e8",
    "G": "6.67e-11",
}


def test_the_school_data_sheet_to_its_last_digit() -> None:
    """The constants as school data sheets round them. Common practice, no source."""
    assert {name: line.school for name, line in SHEET.items()} == {n: float(v) for n, v in SCHOOL.items()}


@pytest.mark.parametrize("name", SHEET)
def test_a_fuller_value_has_every_digit_of_codata(name: str) -> None:
    """As many digits as scipy's CODATA 2022 table gives; g as the 3rd CGPM (1901) fixed it."""
    table = scipy.constants.physical_constants
    exact_ = {
        "k": 1 / (4 * scipy.constants.pi * table["vacuum electric permittivity"][0]),
        "e": table["elementary charge"][0],
        "g": 9.80665,
        "m_e": table["electron mass"][0],
        "m_p": table["proton mass"][0],
        "h": table["Planck constant"][0],
        "c": table["speed of light in vacuum"][0],
        "G": table["Newtonian constant of gravitation"][0],
    }[name]
    value = SHEET[name].fuller
    digits = max(6, len(f"{value!r}".split("e")[0].replace(".", "").strip("0")))
    assert value == float(f"{exact_:.{digits - 1}e}")


# --- sensible ranges ---


def inputs_of(question: Question) -> list[Input]:
    """Every quantity a question takes, of its tables too."""
    found = [item for item in question.fields if isinstance(item, Input)]
    return found + [c for item in question.fields if isinstance(item, Rows) for c in item.columns]


@pytest.mark.parametrize("key", KEYS)
def test_a_value_at_the_end_of_the_sensible_range_is_not_doubted(key: str) -> None:
    """At either end there is no warning; one part in a million outside there is one, that names the end."""
    style = Style()
    for item in inputs_of(topics.find(key)[1]):
        unit = "°" if item.unit == "°" else parse_unit(item.unit).si().text
        for end, factor, word in ((item.low, 1 - 1e-6, "small"), (item.high, 1 + 1e-6, "large")):
            assert doubtful(item, parse_quantity(f"{end!r} {unit}", item.unit), style) == "" or item.unit == "°"
            outside = doubtful(item, parse_quantity(f"{end * factor!r} {unit}", item.unit), style)
            assert (
                f"looks very {word} (usual: at {'least' if word == 'small' else 'most'} {exact(end, style).text}"
                in outside
            ), item.name


@pytest.mark.parametrize("key", KEYS)
def test_a_limit_that_may_not_be_reached_is_refused_at_the_limit(key: str) -> None:
    """A size of exactly ``over`` or ``under`` is refused; the next one inside is read."""
    _, question = topics.find(key)
    for item in (i for i in question.fields if isinstance(i, Input) and not i.signed):
        unit = "°" if item.unit == "°" else parse_unit(item.unit).si().text
        for limit, inside in ((item.over, 1 + 1e-6), (item.under, 1 - 1e-6)):
            if limit is None:
                continue
            asked = next((name for name in question.unknowns if name != item.name), "")
            within = limit * inside if limit else (1.0 if item.whole else 1e-6)
            for value, refused in ((limit, True), (within, False)):
                typed = {**question.example, item.name: f"{value!r} {unit}"}
                if item.whole and value != int(value):
                    continue
                try:
                    read(question, typed, asked)
                    fields: set[str | None] = set()
                except Refusals as several:
                    fields = {one.field for one in several.refusals}
                assert (item.name in fields) == refused, (item.name, value)


def test_the_ranges_of_electrostatics_are_those_of_a_class() -> None:
    """1 pC to 100 µC, 1 mm to 10 m, 1 nN to 1 kN, 1 g scale masses. Common practice, no source."""
    _, question = topics.find("coulomb.force")
    ranges = {i.name: (i.low, i.high) for i in question.fields if isinstance(i, Input)}
    assert ranges == {"Q1": (1e-12, 1e-4), "Q2": (1e-12, 1e-4), "r": (1e-3, 10), "F": (1e-9, 1e3), "R": (1e-4, 1.0)}


# kind of quantity, the smallest and the largest that is usual, what a zero is told ("": it is taken). Common practice,
# no source.
USUAL = [
    ("mass", "0,1 g", "1e6 kg", "Mass must be greater than zero."),
    ("time", "1 ms", "10 min", "Time must be greater than zero."),
    ("delay", "1 ms", "10 min", ""),
    ("length", "1 mm", "10 km", "Distance must be greater than zero."),
    ("distance", "1 mm", "10 km", "Distance must be greater than zero."),
    ("extension", "1 mm", "2 m", "Distance must be greater than zero."),
    ("height", "1 mm", "10 km", ""),
    ("speed", "1e-3 m/s", "1 km/s", ""),
    ("velocity", "1e-3 m/s", "500 m/s", ""),
    ("velocity_along", "1e-3 m/s", "300 m/s", ""),
    ("displacement_along", "1 mm", "10 km", ""),
    ("acceleration", "1e-3 m/s^2", "1000 m/s^2", ""),
    ("force", "1 mN", "1 MN", ""),
    ("electrostatic_force", "1 nN", "1 kN", ""),
    ("momentum", "1e-3 kg m/s", "1e7 kg m/s", ""),
    ("impulse", "1e-3 N s", "1e7 N s", ""),
    ("energy", "1 mJ", "1 GJ", ""),
    ("work", "1 mJ", "1 GJ", ""),
    ("power", "1 mW", "1 GW", "Power must be greater than zero."),
    ("spring_constant", "1 N/m", "1e5 N/m", "The spring constant must be greater than zero."),
    ("friction_coefficient", "0,001", "1,5", ""),
    ("charge", "1 pC", "100 µC", ""),
    ("field_strength", "1 N/C", "3 MN/C", "Field strength must be greater than zero."),
    ("voltage", "1 mV", "50 kV", "Potential difference must be greater than zero."),
    ("current", "1 µA", "1 kA", "Current must be greater than zero."),
    ("resistance", "1 mΩ", "100 MΩ", "Resistance must be greater than zero."),
    ("frequency", "1 Hz", "1e20 Hz", "Frequency must be greater than zero."),
    ("wavelength", "1 pm", "1 km", "Wavelength must be greater than zero."),
]
BELOW_ZERO = {
    "delay": "A delay cannot be negative: call the body that starts first A.",
    "force": "Enter the size; choose the direction.",
    "electrostatic_force": "Enter the size of the force; choose the direction separately.",
    "friction_coefficient": "A coefficient of friction cannot be negative.",
}


def typed_into(kind: str, text: str) -> tuple[str, bool]:
    """What a box of this kind says of a text: the refusal, and whether it is taken but doubted."""
    box = vars(quantities)[kind]("x", "Some words", "It is {}.").box
    trial = Question("trial", "A trial", (box,), lambda data: Plan("", ()), {"x": text})
    try:
        read(trial, {"x": text})
    except Refusals as several:
        return several.refusals[0].sentence, False
    return "", bool(doubtful(box, parse_quantity(text, box.unit), Style()))


@pytest.mark.parametrize(("kind", "least", "most", "zero"), USUAL, ids=[row[0] for row in USUAL])
def test_what_is_usual_of_each_kind_of_quantity(kind: str, least: str, most: str, zero: str) -> None:
    """Both ends are taken without a doubt; a hundredth beyond either is doubted; zero is taken or refused in words."""
    for text, factor in ((least, "0,99"), (most, "1,01")):
        assert typed_into(kind, text) == ("", False)
        number, _, unit = text.partition(" ")
        beyond = float(number.replace(",", ".")) * float(factor.replace(",", "."))
        assert typed_into(kind, f"{beyond!r} {unit}") == ("", True)
    unit = least.partition(" ")[2]
    assert typed_into(kind, f"0 {unit}")[0] == zero
    if kind in BELOW_ZERO:
        assert typed_into(kind, f"-1 {unit}")[0] == BELOW_ZERO[kind]


@pytest.mark.parametrize(("text", "refused"), [("0°", False), ("0,1°", False), ("89,9°", False), ("90°", True)])
def test_a_slope_is_less_than_upright(text: str, refused: bool) -> None:
    """A level one will do; upright it is no slope, and the sentence says where an angle lies."""
    said = "Angle lies between 0° and 90°; choose above or below." if refused else ""
    assert typed_into("slope_angle", text)[0] == said


@pytest.mark.parametrize(
    ("typed", "taken"), [("1e300 C", True), ("1,01e300 C", False), ("1e-300 C", True), ("9,9e-301 C", False)]
)
def test_powers_of_ten_go_to_three_hundred(typed: str, taken: bool) -> None:
    """At the limit a number is read, beyond it it is refused."""
    try:
        parse_quantity(typed, "C")
        read_ = True
    except QuantityError:
        read_ = False
    assert read_ == taken


# --- lengths and counts ---


def test_a_request_of_a_hundred_thousand_characters_is_read_and_no_longer_one() -> None:
    """The longest request the desk reads."""
    head, tail = '{"operation": "settings", "data": {"x": "', '"}}'
    room = 100_000 - len(head) - len(tail)
    assert json.loads(desk.answer(head + "a" * room + tail))["ok"]
    refused = json.loads(desk.answer(head + "a" * (room + 1) + tail))
    assert refused["errors"][0]["message"] == "That is too much text to read. Shorten it and try again."


@pytest.mark.parametrize("decimals", range(7))
def test_nought_to_six_decimals_are_printed(decimals: int) -> None:
    """A result has as many decimals as the reader asked for."""
    reply = ask("solve", **FORCE, settings={"decimals": decimals}, **{"as": ["text"]})
    coefficient = reply["data"]["spoken"].split(" times")[0]
    assert len(coefficient.partition(",")[2]) == decimals


@pytest.mark.parametrize("decimals", [-1, 7, "7", "x", 2.5])
def test_no_other_number_of_decimals_is(decimals: object) -> None:
    """Outside nought to six the settings are refused."""
    reply = ask("settings", settings={"decimals": decimals})
    assert [error["field"] for error in reply["errors"]] == ["settings.decimals"]


@pytest.mark.parametrize(
    ("changed", "field"),
    [
        ({"count": 30}, None),
        ({"count": 31}, "count"),
        ({"count": 1}, None),
        ({"count": 0}, "count"),
        ({"marks": 301}, "marks"),
        ({"marks": 0}, "marks"),
        ({"seed": 999_999}, None),
        ({"seed": 1_000_000}, "seed"),
        ({"seed": 0}, None),
        ({"seed": -1}, "seed"),
        ({"own": 1_000_000}, "own"),
        ({"heading": "x" * 120}, None),
        ({"heading": "x" * 121}, "heading"),
        ({"learner": "x" * 80}, None),
        ({"learner": "x" * 81}, "learner"),
        ({"topics": ["coulomb.electrons"] * 60, "count": 1}, None),
        ({"topics": ["coulomb.electrons"] * 61, "count": 1}, "topics"),
        ({"level": 3}, None),
        ({"level": 4}, "level"),
        ({"level": 0}, "level"),
    ],
)
def test_a_paper_is_made_up_to_each_limit_and_not_beyond(changed: dict[str, Any], field: str | None) -> None:
    """Counts, marks, numbers and lengths of a paper at their last allowed value, and one further."""
    data = {"topics": ["coulomb", "several-charges"], "count": 1, "as": [], **changed}
    if "marks" in changed:
        data.pop("count")
    reply = ask("paper", **data)
    assert reply["ok"] == (field is None), reply
    if field:
        assert field in [error["field"] for error in reply["errors"]]


@pytest.mark.parametrize(("seed", "good"), [(0, True), (999_999, True), (1_000_000, False), (-1, False)])
def test_the_number_of_a_drawn_question_has_two_ends(seed: int, good: bool) -> None:
    """0 to 999 999."""
    assert ask("practice", question="coulomb.electrons", seed=seed)["ok"] == good


@pytest.mark.parametrize("key", [k for k in KEYS if any(isinstance(f, Rows) for f in topics.find(k)[1].fields)])
def test_a_table_is_read_from_its_fewest_to_its_most_rows(key: str) -> None:
    """Fewer or more rows than declared are refused at the table; as many as declared are not."""
    _, question = topics.find(key)
    table = next(item for item in question.fields if isinstance(item, Rows))
    # One source has a field but no net force; a line through two readings shows nothing.
    fewest = {"electric-field": 1, "coulomb": 3, "circuits": 3, "photoelectric": 3}.get(key.split(".")[0], 2)
    most = {"circuits": 12, "photoelectric": 12}.get(key.split(".")[0], 8)  # a page of readings
    assert (table.at_least, table.at_most) == (fewest, most)
    for count in (table.at_least - 1, table.at_least, table.at_most, table.at_most + 1):
        rows = [{c.name: f"{n + 1} {c.unit}" for c in table.columns} for n in range(count)]
        try:
            read(question, {**question.example, table.name: rows})
            fields: set[str | None] = set()
        except Refusals as several:
            fields = {one.field for one in several.refusals}
        assert (table.name in fields) == (not fewest <= count <= most), count


# --- judging ---


@pytest.mark.parametrize(
    ("typed", "right", "agrees"),
    [
        ("1,0100", 1.0, True),
        ("1,0101", 1.0, False),
        ("0,9900", 1.0, True),
        ("0,9899", 1.0, False),
        ("2,7", 2.65, True),  # a correct rounding to two figures, 1,9 % off
        ("2,7", 2.64, False),
        ("3", 2.65, False),
        ("0", 0.0, True),
        ("0", 1e-9, False),
    ],
)
def test_one_per_cent_or_a_correct_rounding_is_right(typed: str, right: float, agrees: bool) -> None:
    """Within 1 % the answer is right, and beyond it only as the right answer rounded to two figures or more."""
    assert read_value(typed + " N", "N").agrees(right) == agrees


@pytest.mark.parametrize(("off", "near"), [(0.0299, True), (0.0301, False)])
def test_near_a_mistake_is_within_the_share_asked_for(off: float, near: bool) -> None:
    """A value is held against a mistake's to the share given: 3 % where the findings ask for it."""
    assert read_value(f"{1 + off:.6f} N", "N").near(1.0, 0.03) == near


@pytest.mark.parametrize(
    ("typed", "value", "near"),
    [
        ("20", 24.9, True),  # the nought may hold the place only
        ("20", 25.1, False),
        ("1200", 1249.0, True),
        ("1200", 1251.0, False),
        ("2", 2.4, False),  # a single figure fits far too much
        ("2", 2.02, True),
        ("2", 2.03, False),
    ],
)
def test_end_noughts_may_hold_places(typed: str, value: float, near: bool) -> None:
    """Typed noughts at the end leave half their place; a single figure leaves 1 % like any other."""
    assert read_value(typed + " N", "N").near(value) == near


@pytest.mark.parametrize(
    ("value", "cut"),
    [
        (0.123456, 0.12),
        (0.1, 0.1),
        (0.0999999, 0.1),
        (0.0123456, 0.0123),
        (9999.994, 9999.99),
        (10_000.4, 10_000),
        (12_345.6, 12_300),
    ],
)
def test_a_value_on_the_way_is_cut_as_it_is_printed(value: float, cut: float) -> None:
    """Two decimals from 0,1 to below 10 000; outside, two on the coefficient."""
    assert two_decimals(value) == pytest.approx(cut, rel=1e-12)


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (0.1, "0,10"),
        (0.0999, "9,99 × 10⁻²"),
        (9999.99, "9999,99"),
        (10_000.0, "1,00 × 10⁴"),
        (9999.996, "1,00 × 10⁴"),
        (0.125, "0,13"),
        (0.005, "5,00 × 10⁻³"),
        (-0.125, "−0,13"),
    ],
)
def test_a_result_is_plain_from_a_tenth_to_ten_thousand(value: float, text: str) -> None:
    """Halves go away from zero, and powers of ten begin at both ends."""
    assert rounded(value, Style()).text.replace("\u00a0", " ") == text


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (0.001, "0,001"),
        (0.00099, "9,9 × 10⁻⁴"),
        (9999.0, "9999"),
        (10_000.0, "1 × 10⁴"),
        (0.123456789012, "0,123456789012"),
        (0.1234567890123, "0,123457"),
    ],
)
def test_a_datum_is_plain_from_a_thousandth_to_ten_thousand(value: float, text: str) -> None:
    """Twelve figures are a datum, thirteen came out of a calculation."""
    assert exact(value, Style()).text.replace("\u00a0", " ") == text


# --- electrons, noise, scales ---


@pytest.mark.parametrize(
    ("n", "warned"),
    [
        (3.0999, False),
        (3.1001, True),
        (2.9001, False),
        (2.8999, True),
        (99.5, True),
        (100.5, False),
        (99.05, False),
        (4.0, False),
    ],
)
def test_few_electrons_must_be_nearly_whole(n: float, warned: bool) -> None:
    """Below a hundred, further than 0,1 from a whole number is worth a word."""
    assert bool(few_electrons(n)) == warned


@pytest.mark.parametrize(
    ("x", "y", "key"),
    [
        (1.0, 1e-8, "right-up"),
        (1.0, 1e-10, "right"),
        (1.0, -1e-8, "right-down"),
        (-1.0, 1e-10, "left"),
        (1e-8, 1.0, "right-up"),
        (1e-10, 1.0, "up"),
        (1e-10, -1.0, "down"),
        (-1e-8, -1.0, "left-down"),
        (0.0, 0.0, "none"),
    ],
)
def test_what_is_left_of_a_sum_that_cancels_has_no_direction(x: float, y: float, key: str) -> None:
    """A billionth of the size is noise of the sum; ten times that is a direction."""
    assert compass(x, y, Style()).key == key
    assert (axis_angle(x, y) is None) == ("-" not in key)


@pytest.mark.parametrize(
    ("largest", "scale"),
    [
        (10.0, "1"),
        (10.1, "2"),
        (4.0, "0,5"),
        (5.1, "1"),
        (20.0, "2"),
        (21.0, "5"),
        (50.0, "5"),
        (51.0, "10"),
        (2e-6, "2 × 10⁻⁷"),
    ],
)
def test_a_scale_draws_the_largest_force_up_to_ten_centimetres_long(largest: float, scale: str) -> None:
    """The scale steps 1, 2, 5, 10 where the drawing would become longer than 10 cm."""
    assert scale_words(largest, Style()).replace("\u00a0", " ") == f"1 cm stands for {scale} N"


# --- checks ---


def spoilt(case: Case, name: str, factor: float) -> list[bool]:
    """Whether each check by equation still agrees when one value is off by ``factor``."""
    values = {**case.values, name: case.values[name] * factor}
    return [agrees(check, values) for check in case.plan.checks if not check.holds]


@pytest.mark.parametrize("key", KEYS)
def test_a_check_fails_for_an_answer_one_part_in_a_hundred_thousand_off(key: str) -> None:
    """A second way must not agree with a value that is off by 1e-5, nor fail for rounding noise of 1e-13."""
    for case in cases(key)[:4]:
        checks = [check for check in case.plan.checks if not check.holds]
        names = {step.makes for step in case.plan.steps}
        for place, check in enumerate(checks):
            line = equation(check.equation)
            tried = [n for n in names if n in line.names and case.values[n]]
            # A value on both sides in the same way (F = F·1) cannot be caught: then another one must be.
            caught = [n for n in tried if not spoilt(case, n, 1 + 1e-5)[place]]
            assert caught or not tried, (case.name, check.equation)
            assert all(spoilt(case, n, 1 + 1e-14)[place] for n in tried[:1]), (case.name, check.equation)


@pytest.mark.parametrize("key", KEYS)
def test_checks_of_two_things_asked_at_once_agree_and_are_close(key: str) -> None:
    """What is asked together is checked by laws that neither alone would need: they hold, to one in a million."""
    _, question = topics.find(key)
    for pair in itertools.combinations(question.unknowns, 2):
        asked = planned(question, {**question.example, **dict.fromkeys(pair, "")}, ",".join(pair))
        if asked:
            values = run(asked[1], asked[0].data.settings.constants())
            for check in asked[1].checks:
                assert check.tolerance <= 1e-6, (pair, check.what)
                assert agrees(check, values) or not decides(check, values), (pair, check.what)


@pytest.mark.parametrize("key", KEYS)
def test_no_check_is_looser_than_one_in_a_million(key: str) -> None:
    """The tolerance of every check of every draw."""
    assert all(check.tolerance <= 1e-6 for case in cases(key) for check in case.plan.checks)


def test_a_check_is_one_in_a_thousand_million() -> None:
    """Where a question declares no tolerance."""
    assert Check("x").tolerance == 1e-9


@pytest.mark.parametrize(("cut", "early"), [("1,0299", True), ("0,9701", True), ("1,0301", False), ("0,9699", False)])
def test_rounding_early_explains_up_to_three_per_cent(cut: str, early: bool) -> None:
    """A value that rounding on the way gives is taken for that up to 3 % off, and no further."""
    typed = read_value(f"{cut} N", "N")
    way: Any = SimpleNamespace(right=1.0, base=0.0, rounded_early=(typed.value,))
    assert _early(typed, way) == early
    assert not _early(typed, SimpleNamespace(right=1.0, base=0.0, rounded_early=(typed.value * 1.001,)))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("said", "judged"),
    [
        ("30,99", "right"),
        ("29,01", "right"),
        ("31,01", "wrong"),
        ("28,99", "wrong"),
        ("210,99", "opposite"),
        ("211,01", "wrong"),
    ],
)
def test_a_direction_in_a_plane_is_right_within_one_degree(said: str, judged: str) -> None:
    """One degree either way; the opposite direction is known with the same allowance."""
    way = Direction("right-up", "30° above the +x axis", (), 30.0)
    assert judge_direction(said, way) == judged


@pytest.mark.parametrize(("length", "read_"), [(200, True), (201, False)])
def test_a_line_of_numbers_has_at_most_two_hundred_characters(length: int, read_: bool) -> None:
    """The longest line of numbers that is read."""
    line = "1" + "+1" * ((length - 1) // 2) + " " * ((length - 1) % 2)
    line = "1" * (length - len(line.strip())) + line.strip()
    assert len(line) == length
    if read_:
        assert read_line(line) > 0
    else:
        with pytest.raises(QuantityError, match="longer than 200 characters"):
            read_line(line)


@pytest.mark.parametrize(
    ("earned", "possible", "well"), [(8, 10, True), (79, 100, False), (4, 5, True), (3, 4, False), (0, 0, False)]
)
def test_four_fifths_of_the_marks_is_done_well(earned: int, possible: int, well: bool) -> None:
    """Exactly 80 % counts; less does not."""
    assert Attempt(date(2026, 3, 9), 1, earned, possible).well == well
