"""calc.language.printing: rounding once, data as given, and one set of digits in every notation.

Rounding is checked against exact arithmetic with fractions; constants printed as data are
those of CODATA 2018 (e, c, h exact in SI; values from memory).
"""

import math
import re
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.language.printing import Printed, Style, angle, count, counted, exact, rounded, spoken, with_unit
from calc.language.quantities import parse_number
from calc.language.units import parse_unit
from tests.strategies import compound_units, data_values, styles, values

_FROM_RAISED = str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹−", "-0123456789-")


def digits_of_text(text: str) -> tuple[str, str]:
    """(digits with a point, power) of printed text."""
    coefficient, _, power = text.translate(_FROM_RAISED).partition("\u00a0×\u00a010")
    return coefficient.replace(",", "."), power


def digits_of_tex(tex: str) -> tuple[str, str]:
    """(digits with a point, power) of printed TeX."""
    match = re.fullmatch(r"(-?[0-9.]+)(?: \\times 10\^\{(-?[0-9]+)\})?", tex.replace("{,}", "."))
    assert match is not None
    return match[1], match[2] or ""


def digits_of_words(words: str) -> tuple[str, str]:
    """(digits with a point, power) of spoken words."""
    coefficient, _, power = words.replace("minus ", "-").partition(" times 10 to the power ")
    return coefficient.replace(",", "."), power


def half_up(value: float, places: int) -> Fraction:
    """``value`` at its shortest digits, rounded by exact arithmetic, halves away from zero."""
    exact_value = Fraction(repr(value))
    steps = math.floor(abs(exact_value) * 10**places + Fraction(1, 2))
    return Fraction(steps, 10**places) * (1 if exact_value > 0 else -1)


@pytest.mark.parametrize(
    ("value", "text", "tex", "words"),
    [
        (1.6e-6, "1,60 × 10⁻⁶", r"1{,}60 \times 10^{-6}", "1,60 times 10 to the power minus 6"),
        (2.675, "2,68", "2{,}68", "2,68"),
        (-2.675, "−2,68", "-2{,}68", "minus 2,68"),
        (1.5 * 0.15, "0,23", "0{,}23", "0,23"),
        (0.0, "0", "0", "0"),
        (-0.0, "0", "0", "0"),
        (0.1, "0,10", "0{,}10", "0,10"),
        (0.0999999, "1,00 × 10⁻¹", r"1{,}00 \times 10^{-1}", "1,00 times 10 to the power minus 1"),
        (9.994e-5, "9,99 × 10⁻⁵", r"9{,}99 \times 10^{-5}", "9,99 times 10 to the power minus 5"),
        (9.995e-5, "1,00 × 10⁻⁴", r"1{,}00 \times 10^{-4}", "1,00 times 10 to the power minus 4"),
        (-9.999e-5, "−1,00 × 10⁻⁴", r"-1{,}00 \times 10^{-4}", "minus 1,00 times 10 to the power minus 4"),
        (9999.994, "9999,99", "9999{,}99", "9999,99"),
        (9999.995, "1,00 × 10⁴", r"1{,}00 \times 10^{4}", "1,00 times 10 to the power 4"),
        (10000.0, "1,00 × 10⁴", r"1{,}00 \times 10^{4}", "1,00 times 10 to the power 4"),
        (2.5e10, "2,50 × 10¹⁰", r"2{,}50 \times 10^{10}", "2,50 times 10 to the power 10"),
        (0.75, "0,75", "0{,}75", "0,75"),
        (31, "31,00", "31{,}00", "31,00"),
    ],
)
def test_rounded_results(value: float, text: str, tex: str, words: str) -> None:
    """A result is printed with two decimals in text, TeX and words."""
    assert rounded(value) == Printed(text.replace(" ", "\u00a0"), tex, words)


@pytest.mark.parametrize(
    ("value", "style", "text"),
    [
        (1.6e-6, Style(3, False), "1.600 × 10⁻⁶"),
        (2.675, Style(0), "3"),
        (0.3, Style(0), "3 × 10⁻¹"),
        (0.5, Style(0), "1"),
        (9.6e-4, Style(0), "1 × 10⁻³"),
        (2.5, Style(0), "3"),
        (2.5, Style(5, False), "2.50000"),
    ],
)
def test_styles_of_rounding(value: float, style: Style, text: str) -> None:
    """Decimals and decimal sign follow the style, and a small value never prints as nought."""
    assert rounded(value, style).text == text.replace(" ", "\u00a0")


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (0.15, "0,15"),
        (6e-9, "6 × 10⁻⁹"),
        (9e9, "9 × 10⁹"),
        (9.8, "9,8"),
        (0.03, "0,03"),
        (1.6e-19, "1,6 × 10⁻¹⁹"),
        (1.602176634e-19, "1,602176634 × 10⁻¹⁹"),
        (299792458, "2,99792458 × 10⁸"),
        (6.62607015e-34, "6,62607015 × 10⁻³⁴"),
        (0.001, "0,001"),
        (0.00099, "9,9 × 10⁻⁴"),
        (9999, "9999"),
        (9999.5, "9999,5"),
        (10000, "1 × 10⁴"),
        (12000, "1,2 × 10⁴"),
        (-5e-9, "−5 × 10⁻⁹"),
        (0.0, "0"),
        (200, "200"),
        (-0.0, "0"),
        (0.1 + 0.2, "0,3"),
        (1 / 3, "0,333333"),
        (2e-9 / 3, "6,66667 × 10⁻¹⁰"),
        (999999.99999999, "1 × 10⁶"),
        (Decimal("0.123456789012345"), "0,123456789012345"),
        (Decimal("5E+3"), "5000"),
        (Decimal("0.030"), "0,03"),
    ],
)
def test_data_as_given(value: float | Decimal, text: str) -> None:
    """A datum keeps its digits, and a float that is noise is shown with six."""
    assert exact(value).text == text.replace(" ", "\u00a0")


@given(values(), styles())
def test_rounded_is_the_nearest_at_its_place(value: float, style: Style) -> None:
    """What is printed reads back within half a unit of the last printed place."""
    text = rounded(value, style).text
    read = Fraction(parse_number(text))
    _, power = digits_of_text(text)
    half_place = Fraction(10) ** (int(power or 0) - style.decimals) / 2
    slack = abs(Fraction(value)) / 10**13  # the calculator's 14 digits
    assert abs(read - Fraction(value)) <= half_place + slack


@given(st.integers(-9_999_999, 9_999_999), st.integers(3, 6), st.integers(0, 4))
def test_rounding_of_short_decimals_is_exact(digits: int, shift: int, places: int) -> None:
    """Numbers of up to seven digits from 0,1 to 10 000 round as exact arithmetic says."""
    value = digits / 10**shift
    expected = half_up(value, places)
    assume(abs(value) >= 0.1 and 0 < abs(expected) < 10_000)
    assert Fraction(parse_number(rounded(value, Style(places)).text)) == expected


@given(st.integers(1, 9999), st.integers(1, 999))
def test_halves_out_of_a_product_round_up(first: int, second: int) -> None:
    """A product of two short decimals rounds as the same product worked by hand."""
    by_hand = Decimal(first) / 100 * Decimal(second) / 100
    by_float = (first / 100) * (second / 100)
    assert rounded(by_float) == rounded(by_hand)


@given(values(), styles())
def test_three_notations_carry_the_same_digits(value: float, style: Style) -> None:
    """Text, TeX and words of a number have the same digits and power."""
    for printed in (rounded(value, style), exact(value, style)):
        text = digits_of_text(printed.text)
        assert digits_of_tex(printed.tex) == text
        assert digits_of_words(printed.spoken) == text


@given(values(1e-30, 1e30), styles())
def test_notation_follows_the_size(value: float, style: Style) -> None:
    """A power of ten stands exactly where the size is below 0,1, at least 10 000, or lost."""
    _, power = digits_of_text(rounded(value, style).text)
    plain = half_up(value, style.decimals)
    wanted = value != 0 and (abs(value) < 0.1 or not 0 < abs(plain) < 10_000)
    assert bool(power) == wanted


@given(values(), styles())
def test_coefficient_has_one_digit_before_the_mark(value: float, style: Style) -> None:
    """In scientific notation the coefficient is from 1 to below 10, also after a carry."""
    for printed in (rounded(value, style), exact(value, style)):
        coefficient, power = digits_of_text(printed.text)
        assert not power or 1 <= abs(Decimal(coefficient)) < 10


@given(data_values(), st.booleans())
def test_datum_reads_back_unchanged(value: float, comma: bool) -> None:
    """A datum of up to nine digits is printed so that it reads back as the same float."""
    assert float(parse_number(exact(value, Style(comma=comma)).text)) == value


@given(values(), styles())
def test_decimal_sign_follows_the_style(value: float, style: Style) -> None:
    """No number prints the decimal sign of the other style."""
    other = "." if style.comma else ","
    for printed in (rounded(value, style), exact(value, style)):
        assert other not in printed.text + printed.spoken + printed.tex


@given(values(), st.sampled_from([0, 1, 2]))
def test_number_never_breaks_across_lines(value: float, places: int) -> None:
    """A number with its unit has only no-break spaces."""
    assert " " not in with_unit(rounded(value, Style(places)), parse_unit("N/C")).text


@pytest.mark.parametrize(
    ("value", "unit", "text", "tex", "words"),
    [
        (
            1.6e-6,
            "N",
            "1,60 × 10⁻⁶ N",
            r"1{,}60 \times 10^{-6}\,\mathrm{N}",
            "1,60 times 10 to the power minus 6 newtons",
        ),
        (45, "°", "45,00°", r"45{,}00^\circ", "45,00 degrees"),
        (3, "", "3,00", "3{,}00", "3,00"),
        (500, "N/C", "500,00 N·C⁻¹", r"500{,}00\,\mathrm{N\cdot C^{-1}}", "500,00 newtons per coulomb"),
    ],
)
def test_results_with_units(value: float, unit: str, text: str, tex: str, words: str) -> None:
    """The unit follows the number after a space, a degree sign without one."""
    printed = with_unit(rounded(value), parse_unit(unit))
    assert printed == Printed(text.replace(" ", "\u00a0"), tex, words)


def test_one_of_a_unit_is_singular() -> None:
    """Exactly one is spoken in the singular, 1,00 in the plural."""
    assert with_unit(exact(1.0), parse_unit("C")).spoken == "1 coulomb"
    assert with_unit(rounded(1.0), parse_unit("C")).spoken == "1,00 coulombs"


@given(data_values(), compound_units())
def test_unit_keeps_the_digits(value: float, pairs: list[tuple[str, int]]) -> None:
    """Adding a unit changes no digit of the number in any notation."""
    number = exact(value)
    unit = parse_unit("·".join(f"{s}^{p}" for s, p in pairs))
    whole = with_unit(number, unit)
    assert whole.text == f"{number.text}\u00a0{unit.text}"
    assert whole.tex == f"{number.tex}\\,{unit.tex}"
    assert whole.spoken.startswith(number.spoken)


def test_spoken_result() -> None:
    """The words of a result are those of its rounding."""
    assert spoken(-1.6e-6, Style(1, False)) == "minus 1.6 times 10 to the power minus 6"


@pytest.mark.parametrize("value", [math.inf, -math.inf, math.nan, Decimal("NaN")])
def test_no_nan_is_ever_printed(value: float | Decimal) -> None:
    """A value that is not finite is refused by name."""
    for print_it in (rounded, exact, spoken):
        with pytest.raises(ValueError, match="cannot be printed: only finite numbers can"):
            print_it(value)


@pytest.mark.parametrize("decimals", [-1, 11])
def test_impossible_style_is_refused(decimals: int) -> None:
    """Decimals outside 0 to 10 are refused with the range."""
    with pytest.raises(ValueError) as refusal:
        Style(decimals)
    assert str(refusal.value) == f"{decimals} decimals cannot be printed. Choose from 0 to 10, for example 2."


@pytest.mark.parametrize("power", [45, 58, 300, -300])
def test_any_finite_size_is_printed(power: int) -> None:
    """A value far outside physics prints as a number times a power of ten."""
    shown = rounded(1.309 * 10.0**power, Style())
    assert shown.tex == rf"1{{,}}31 \times 10^{{{power}}}"


@pytest.mark.parametrize(
    ("degrees", "text"),
    [
        (36.8699, "36,87"),
        (90.0, "90,00"),
        (0.0, "0"),
        (359.99996, "359,999960"),
        (89.99997, "89,999970"),
        (0.0334, "0,033"),
        (2.03e-10, "0,00000000020"),
        (180.0 + 1e-14, "180,00"),
        (-53.1301, "−53,13"),
    ],
)
def test_an_angle_has_no_power_of_ten_and_is_on_an_axis_only_when_it_is(degrees: float, text: str) -> None:
    """Angles are plain numbers, and one beside an axis keeps two figures of its distance from it."""
    assert angle(degrees).text == text


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (3.0000000000000004, "3"),
        (1.0, "1"),
        (2.4, "2,40"),
        (4.0625e10, "4,06 × 10¹⁰"),
        (9999.0, "9999"),
    ],
)
def test_a_count_is_printed_whole_when_it_is_whole(value: float, text: str) -> None:
    """Things counted are not printed with decimals they cannot have."""
    assert count(value).text == text.replace(" ", "\N{NO-BREAK SPACE}")


@pytest.mark.parametrize(("count", "said"), [(0, "0 marks"), (1, "1 mark"), (2, "2 marks"), (11, "11 marks")])
def test_only_one_is_singular(count: int, said: str) -> None:
    """A noun is singular after 1 alone."""
    assert counted(count, "mark") == said
