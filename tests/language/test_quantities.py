"""calc.language.quantities: numbers and quantities as learners type them, and every refusal."""

import contextlib
import math
import re
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.language import quantities
from calc.language.quantities import LONGEST, QuantityError, parse_number, parse_quantity
from calc.language.units import UnitError, parse_unit
from tests.strategies import SYMBOLS, scribbles, typed_numbers, typed_units

# pi/6 to 32 decimals; math.pi / 6 is rounded twice and ends one bit lower.
SIXTH_OF_PI = 0.52359877559829887307710723054658


@given(typed_numbers())
def test_number_is_read_exactly(typed: tuple[str, Decimal]) -> None:
    """Every spelling of a number is read with all its digits and no others."""
    text, value = typed
    assert parse_number(text) == value


@given(typed_numbers(), typed_units(), st.sampled_from(["", " ", "\u00a0"]))
def test_value_is_rounded_once(typed: tuple[str, Decimal], symbol: str, gap: str) -> None:
    """The SI value is the float nearest to the exact product of number and factor."""
    text, number = typed
    quantity = parse_quantity(text + gap + symbol, symbol)
    assert quantity.value == float(Fraction(number) * parse_unit(symbol).factor)
    assert quantity.number == number
    assert quantity.unit_typed


@given(typed_numbers(), st.sampled_from(sorted(SYMBOLS)))
def test_bare_number_takes_the_unit_of_the_box(typed: tuple[str, Decimal], symbol: str) -> None:
    """A number without a unit is worth the same as with the box's unit typed."""
    bare, full = parse_quantity(typed[0], symbol), parse_quantity(f"{typed[0]} {symbol}", symbol)
    assert (bare.value, bare.number, bare.unit) == (full.value, full.number, full.unit)
    assert not bare.unit_typed


@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("5 nC", 5e-9),
        ("5nC", 5e-9),
        ("5e-9 C", 5e-9),
        ("5E-9C", 5e-9),
        ("5 e-9 C", 5e-9),
        ("5 x 10^-9 C", 5e-9),
        ("5×10⁻⁹ C", 5e-9),
        ("5*10^-9", 5e-9),
        ("5·10^-9", 5e-9),
        ("5 x 10-9", 5e-9),
        ("5 x 10-9 C", 5e-9),
        ("5 × 10 ^ −9 C", 5e-9),
        ("10^-9 C", 1e-9),
        ("-10⁻⁹ C", -1e-9),
        ("0,03 C", 0.03),
        ("0.03", 0.03),
        (".5", 0.5),
        (",5", 0.5),
        ("+5", 5.0),
        ("-5", -5.0),
        ("−5 mC", -0.005),
        ("–5 mC", -0.005),
        ("- 5 C", -5.0),
        ("12 000", 12000.0),
        ("1 200,5", 1200.5),
        ("1\u00a0200,5", 1200.5),
        ("12\u202f000 C", 12000.0),
        ("1\u2009200", 1200.0),
        ("1,602 176 634e-19", 1.602176634e-19),
        ("5.", 5.0),
        ("5 nC. ", 5e-9),
        ("5 µC", 5e-6),
        ("5 μC", 5e-6),
        ("5 uC", 5e-6),
        ("5 micro coulomb", 5e-6),
        ("5 microcoulombs", 5e-6),
        ("0", 0.0),
        ("-0", 0.0),
        ("5 \u200bnC", 5e-9),
        ("\t5 nC\n", 5e-9),
        ("1,6 × 10^(-19) C", 1.6e-19),
        ("5,25 A s", 5.25),
        ("1 A·h", 3600.0),
    ],
)
def test_ways_of_typing_a_charge(typed: str, value: float) -> None:
    """Each way of typing a charge gives its value in coulombs and is kept as typed."""
    quantity = parse_quantity(typed, "C")
    assert quantity.value == value
    assert math.copysign(1, quantity.value) == math.copysign(1, value)
    assert quantity.text == typed


@pytest.mark.parametrize(
    ("typed", "field", "value", "unit"),
    [
        ("15 cm", "m", 0.15, "cm"),
        ("15", "cm", 0.15, "cm"),
        ("36 km/h", "m/s", 10.0, "km·h⁻¹"),
        ("9,0 x 10^9 N·m²/C²", "N·m²·C⁻²", 9e9, "N·m²·C⁻²"),
        ("4,2 eV", "J", 6.7291418628e-19, "eV"),
        ("500 V/m", "N/C", 500.0, "V·m⁻¹"),
        ("2 kWh", "J", 7.2e6, "kWh"),
        ("20 ms", "s", 0.02, "ms"),
        ("0,3", "", 0.3, ""),
        ("1,2 t", "kg", 1200.0, "t"),
        ("4 cm²", "m²", 4e-4, "cm²"),
        ("30°", "°", SIXTH_OF_PI, "°"),
        ("30 deg", "°", SIXTH_OF_PI, "°"),
        ("30", "°", SIXTH_OF_PI, "°"),
        ("0,5 rad", "°", 0.5, "rad"),
        ("50 /s", "Hz", 50.0, "s⁻¹"),
    ],
)
def test_units_meet_boxes(typed: str, field: str, value: float, unit: str) -> None:
    """Any unit of the right kind is taken and converted, and recorded as typed."""
    quantity = parse_quantity(typed, field)
    assert quantity.value == value
    assert quantity.unit.text == unit


NEEDED = "this box needs a charge in coulombs (C), for example 5 nC."
POWER = "has a power that cannot be read. Type the power of ten with × and ^, for example 5 × 10^-9."
THREES = "has digits apart that are not in groups of three. Type them together or in threes, for example 1 200."
TWO_MARKS = "has two decimal signs. Use one decimal sign, and spaces between thousands, for example 1 200,5."
FAR = "is too large or too small: powers of ten go from -300 to 300. Check the power, for example 5 nC."
CALCULATION = "is a calculation. Work it out and type the result, for example 5 nC."
NO_NUMBER = "does not start with a number. Type a number, for example 5 nC."
NOT_FINITE = "is not a number to work with. Type digits, for example 5 nC."
STROKE = "Write negative powers instead of a stroke, for example J·kg^-1·K^-1."


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("", "Type a value, for example 5 nC."),
        (" \u00a0\t", "Type a value, for example 5 nC."),
        ("\u200b\x00", "Type a value, for example 5 nC."),
        ("5 kg", f'"5 kg" is a mass; {NEEDED}'),
        ("  5   kg ", f'"5 kg" is a mass; {NEEDED}'),
        ("−5 m", f'"−5 m" is a length; {NEEDED}'),
        ("30°", f'"30°" is an angle; {NEEDED}'),
        ("5 C C", f'"5 C C" is a quantity in s²·A²; {NEEDED}'),
        ("5 NC", '"NC" is not a unit: capital and small letters differ. Did you mean nC?'),
        ("5 mc", '"mc" is not a unit: capital and small letters differ. Did you mean mC or MC?'),
        ("5 n", '"n" is only a prefix: a unit follows it. Did you mean nC?'),
        ("5 u", '"u" is only a prefix: a unit follows it. Did you mean µC?'),
        ("5 As", '"As" is not a unit used here. Did you mean A·s? Put a dot between two units.'),
        ("5 qq", f'"qq" is not a unit used here. T{NEEDED[1:]}'),
        ("5 °C", '"°C" is not a unit used here. Add 273 to the temperature and type kelvin, for example 293 K.'),
        ("5 J/kg·K", f'"J/kg·K" can be read in two ways. {STROKE}'),
        ("5 €", f'"€" cannot be read as a unit from "€". T{NEEDED[1:]}'),
        ("5 C 3", f'"C 3" cannot be read as a unit from "3". T{NEEDED[1:]}'),
        ("1.200,5 C", f'"1.200,5 C" {TWO_MARKS}'),
        ("1,200,5", f'"1,200,5" {TWO_MARKS}'),
        ("1.200.000", f'"1.200.000" {TWO_MARKS}'),
        ("5,2.10^-9", f'"5,2.10^-9" {TWO_MARKS}'),
        ("5,,2", f'"5,,2" {TWO_MARKS}'),
        ("3/4", '"3/4" is a fraction. Type it as a decimal number: 0,75.'),
        ("3 / 4 C", '"3 / 4 C" is a fraction. Type it as a decimal number: 0,75 C.'),
        ("-7/8 nC", '"-7/8 nC" is a fraction. Type it as a decimal number: −0,875 nC.'),
        (
            "1/3 nC",
            (
                '"1/3 nC" is a fraction. Type it as a decimal number, with as many digits as the '
                "question gives: 0,333 nC, for example."
            ),
        ),
        ("1/0 C", '"1/0 C" divides by zero. Type a decimal number instead.'),
        ("1/2 zork", '"1/2 zork" is a fraction. Work it out and type a decimal number.'),
        ("1/2/3", '"1/2/3" is a fraction. Work it out and type a decimal number, for example 5 nC.'),
        ("1,5/2 C", '"1,5/2 C" is a fraction. Work it out and type a decimal number, for example 5 nC.'),
        ("5-3", f'"5-3" {CALCULATION}'),
        ("5 x 3", f'"5 x 3" {CALCULATION}'),
        ("2(3)", f'"2(3)" {CALCULATION}'),
        ("5e", '"5e" has no power of ten after the e. Type the power too, for example 5 nC.'),
        ("5e- C", '"5e- C" has no power of ten after the e. Type the power too, for example 5 nC.'),
        ("5 x 10", f'"5 x 10" {POWER}'),
        ("5 x 109 C", f'"5 x 109 C" {POWER}'),
        ("5^2", f'"5^2" {POWER}'),
        ("5.10^-9", f'"5.10^-9" {POWER}'),
        ("5 10^-9", f'"5 10^-9" {POWER}'),
        ("10-9 C", f'"10-9 C" {POWER}'),
        ("5e-9 x 10^3", f'"5e-9 x 10^3" {POWER}'),
        ("1 20 C", f'"1 20 C" {THREES}'),
        ("12 00", f'"12 00" {THREES}'),
        ("1 2000", f'"1 2000" {THREES}'),
        ("0 500", f'"0 500" {THREES}'),
        ("1'200", '"1\'200" has a mark between its digits. Use a space between thousands, for example 1 200.'),
        ("5e-9,5", '"5e-9,5" has decimals in its power of ten. Type a whole power, for example 5 nC.'),
        ("5 %", '"5 %" is a percentage. Divide by 100 and type the decimal number, for example 5 nC.'),
        ("5e400", f'"5e400" {FAR}'),
        ("0e999", f'"0e999" {FAR}'),
        ("5e-301", f'"5e-301" {FAR}'),
        ("5e" + "9" * 50, f'"5e{"9" * 50}" {FAR}'),
        ("5e300 GC", f'"5e300 GC" {FAR}'),
        ("1e-299 pC", f'"1e-299 pC" {FAR}'),
        ("inf", f'"inf" {NOT_FINITE}'),
        ("-Infinity C", f'"-Infinity C" {NOT_FINITE}'),
        ("NaN", f'"NaN" {NOT_FINITE}'),
        ("∞", f'"∞" {NOT_FINITE}'),
        ("Q = 5 nC", '"Q = 5 nC" has an equals sign. Type the value alone, for example 5 nC.'),
        ("five", f'"five" {NO_NUMBER}'),
        ("nC", f'"nC" {NO_NUMBER}'),
        ("--5", f'"--5" {NO_NUMBER}'),
        (".", f'"." {NO_NUMBER}'),
        ("٣ C", f'"٣ C" {NO_NUMBER}'),
        ("5 " + "C" * 60, '"5 CCCCCCCCCCCCCCCCCC…" is longer than 60 characters. Type one value, for example 5 nC.'),
    ],
)
def test_refusals_word_for_word(typed: str, sentence: str) -> None:
    """Each mistake is named as typed, with the rule and a remedy for a charge box."""
    with pytest.raises(QuantityError) as refusal:
        parse_quantity(typed, "C", example="5 nC")
    assert refusal.value.sentence == sentence


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        ("30°", "", '"30°" is an angle; this box needs a plain number without a unit, for example 0,5.'),
        ("5 kg", "cm", '"5 kg" is a mass; this box needs a length in centimetres (cm), for example 5 cm.'),
        ("5 C", "°", '"5 C" is a charge; this box needs an angle in degrees (°), for example 30°.'),
        (
            "5 ms^-1",
            "m/s",
            (
                '"5 ms^-1" is a frequency; this box needs a velocity in metres per '
                "second (m·s⁻¹), for example 5 m·s⁻¹. Did you mean m·s⁻¹? Put a dot between two units."
            ),
        ),
        (
            "5 kg",
            "N·m²·C⁻²",
            (
                '"5 kg" is a mass; this box needs a value in newton metres squared '
                "per coulomb squared (N·m²·C⁻²), for example 5 N·m²·C⁻²."
            ),
        ),
        ("", "cm", "Type a value, for example 5 cm."),
        ("", "", "Type a value, for example 0,5."),
        ("", "°", "Type a value, for example 30°."),
    ],
)
def test_refusals_name_the_box(typed: str, field: str, sentence: str) -> None:
    """A refusal names the quantity and the unit the box needs, with an example of its own."""
    with pytest.raises(QuantityError) as refusal:
        parse_quantity(typed, field)
    assert refusal.value.sentence == sentence


def test_plain_number_refuses_a_unit() -> None:
    """Where only a number is wanted a unit is refused by name."""
    with pytest.raises(QuantityError) as refusal:
        parse_number("5 nC")
    assert refusal.value.sentence == '"5 nC" has more than a number in it. Type the number alone, for example 0,5.'


def test_wrong_field_unit_is_the_page_author_s_error() -> None:
    """A box declared with an unknown unit raises UnitError whatever was typed."""
    with pytest.raises(UnitError):
        parse_quantity("5", "zork")


@given(scribbles(), st.sampled_from(["", "C", "cm", "°", "m/s", "N·m²·C⁻²"]))
def test_any_text_is_read_or_refused(text: str, field: str) -> None:
    """No text raises anything but QuantityError, and what is read is finite."""
    with contextlib.suppress(QuantityError):
        assert math.isfinite(parse_quantity(text, field).value)
        return
    with pytest.raises(QuantityError) as refusal:
        parse_quantity(text, field)
    assert refusal.value.sentence[-1] in ".?"


@given(typed_numbers(), scribbles())
def test_number_with_any_tail_is_read_or_refused(typed: tuple[str, Decimal], tail: str) -> None:
    """A good number followed by anything is read or refused, never a crash."""
    with contextlib.suppress(QuantityError):
        assert math.isfinite(parse_quantity(typed[0] + tail, "C").value)


@given(typed_numbers(), typed_units(), typed_units())
def test_other_kinds_are_refused(typed: tuple[str, Decimal], symbol: str, field: str) -> None:
    """A unit of another kind is never taken."""
    mine, theirs = parse_unit(symbol), parse_unit(field)
    assume((mine.dimension, mine.is_angle) != (theirs.dimension, theirs.is_angle))
    with pytest.raises(QuantityError, match="this box needs"):
        parse_quantity(f"{typed[0]} {symbol}", field)


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("1/4 m", '"1/4 m" is a fraction. Type it as a decimal number: 0.25 m.'),
        (
            "1.2.3",
            '"1.2.3" has two decimal signs. Use one decimal sign, and spaces between thousands, for example 1 200.5.',
        ),
    ],
)
def test_refusals_follow_the_decimal_sign(typed: str, sentence: str) -> None:
    """A reader who writes a decimal point is answered with one."""
    with pytest.raises(QuantityError) as refusal:
        parse_quantity(typed, "m", comma=False)
    assert refusal.value.sentence == sentence


# Every shape that makes a pattern try again from the start: digits in threes, powers, signs, fractions.
TIRING = ["1 ", "123 ", "1,", "10^", "1 x 10", "e-", "-", "1/", "(", "°", "m·", "\u200b", " "]


@pytest.mark.parametrize("piece", TIRING)
def test_the_work_of_reading_is_bounded(piece: str) -> None:
    """The pattern of a number is tried at most once, on at most 60 characters, however much was typed."""
    for length in (10, LONGEST, 100_000):
        seen = seen_by_patterns("1" + piece * (length // len(piece)) + "1")
        assert len(seen) <= 1
        assert all(len(text) <= LONGEST for text in seen)


def seen_by_patterns(typed: str) -> list[str]:
    """The texts that the number pattern is tried on while ``typed`` is read."""
    seen: list[str] = []
    pattern = quantities._NUMBER

    class Watching:
        def match(self, text: str) -> re.Match[str] | None:
            seen.append(text)
            return pattern.match(text)

    with pytest.MonkeyPatch.context() as patch, contextlib.suppress(QuantityError):
        patch.setattr(quantities, "_NUMBER", Watching())
        parse_quantity(typed, "C")
    return seen
