"""Expressions: the value, and the same line in symbols and in numbers."""

import math

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from calc.language.expressions import ExpressionError, equation, expression
from calc.language.maths import Shown

SIZES = st.floats(1e-3, 1e3, allow_nan=False)


@pytest.mark.parametrize(
    ("source", "text", "tex"),
    [
        ("k*Q1*Q2/r^2", "kQ₁Q₂/r²", r"\dfrac{k Q_{1} Q_{2}}{r^{2}}"),
        ("sqrt(k*Q1*Q2/F)", "√(kQ₁Q₂/F)", r"\sqrt{\dfrac{k Q_{1} Q_{2}}{F}}"),
        ("2*L*sin(alpha)", "2L sin α", r"2 L\,\sin \alpha"),
        ("a-(b-c)", "a − (b − c)", r"a - \left(b - c\right)"),
        ("m*g*sin(theta)-F_E", "mg sin θ − F_E", r"m g\,\sin \theta - F_{E}"),
        ("-(F*r^2/k)", "−Fr²/k", r"-\dfrac{F r^{2}}{k}"),
        ("k*10^-12", "k × 10⁻¹²", r"k \times 10^{-12}"),
        ("sin(alpha)^2*tan(alpha)", "sin² α tan α", r"\sin^{2} \alpha\,\tan \alpha"),
        ("F_E*r^2/k", "F_E r²/k", r"\dfrac{F_{E} r^{2}}{k}"),
        ("(a+b)/2", "(a + b)/2", r"\dfrac{a + b}{2}"),
        ("a/(b*c)", "a/(bc)", r"\dfrac{a}{b c}"),
        (
            "f_S*(v +- v_L)/(v +- v_S)",
            "f_S (v ± v_L)/(v ± v_S)",
            r"\dfrac{f_{S} \left(v \pm v_{L}\right)}{v \pm v_{S}}",
        ),
        ("deg90 - beta", "90° − β", r"90^\circ - \beta"),
        ("deg180 + alpha", "180° + α", r"180^\circ + \alpha"),
        ("deg360 - phi", "360° − φ", r"360^\circ - \phi"),
        ("atan(F_y/F_x)", "tan⁻¹(F_y/Fₓ)", r"\tan^{-1}\left(\dfrac{F_{y}}{F_{x}}\right)"),
    ],
)
def test_symbols_are_set_as_on_a_data_sheet(source: str, text: str, tex: str) -> None:
    """A formula is written without multiplication signs, in both notations."""
    shown = expression(source).maths()
    assert (shown.text, shown.tex) == (text, tex)


def test_numbers_stand_in_brackets_inside_a_product() -> None:
    """A substitution keeps every number apart from the next."""
    numbers = {
        "k": Shown(r"9 \times 10^{9}", "9 × 10⁹"),
        "Q1": Shown(r"8 \times 10^{-9}", "8 × 10⁻⁹"),
        "r": Shown("0{,}12", "0,12"),
    }
    line = equation("F = k*Q1*Q2/r^2").maths(numbers)
    assert line.text == "F = (9 × 10⁹)(8 × 10⁻⁹)Q₂/(0,12)²"
    assert line.tex == r"F = \dfrac{(9 \times 10^{9}) (8 \times 10^{-9}) Q_{2}}{(0{,}12)^{2}}"


def test_a_line_with_either_sign_is_shown_and_has_no_value() -> None:
    """v ± u stands for two lines, so it is never worked out."""
    with pytest.raises(ExpressionError, match="no real value"):
        expression("v +- u").value({"v": 340.0, "u": 30.0})


def test_a_negative_number_after_a_sign_gets_brackets() -> None:
    """9 + (−4), never 9 + −4."""
    shown = expression("Q1+Q2").maths({"Q1": Shown("9", "9"), "Q2": Shown("-4", "−4")})
    assert shown.text == "9 + (−4)"


@given(a=SIZES, b=SIZES, c=SIZES)
def test_values_agree_with_an_independent_algebra_system(a: float, b: float, c: float) -> None:
    """The value of an expression is what sympy computes for the same text."""
    source = "a*b^2/(c+1)-sqrt(a)*sin(b)/2"
    known = sympy.sympify(source.replace("^", "**")).evalf(30, subs={"a": a, "b": b, "c": c})
    assert math.isclose(
        expression(source).value({"a": a, "b": b, "c": c}),
        float(known),
        rel_tol=1e-12,
        abs_tol=1e-12,
    )


@pytest.mark.parametrize("source", ["__import__('os')", "a.b", "a if b else c", "f(x)", "[1]", "a +", "'text'"])
def test_only_formulas_are_taken(source: str) -> None:
    """Anything but arithmetic of names is refused when it is written, not when it is used."""
    with pytest.raises(ExpressionError):
        expression(source)


@pytest.mark.parametrize(
    ("source", "values"),
    [
        ("sqrt(a)", {"a": -1.0}),
        ("1/a", {"a": 0.0}),
        ("a^a", {"a": 1e308}),
        ("asin(a)", {"a": 2.0}),
        ("a", {}),
    ],
)
def test_no_real_value_is_an_error_with_the_formula_in_it(source: str, values: dict[str, float]) -> None:
    """A root of a negative, a division by zero or a missing name never becomes a NaN."""
    with pytest.raises(ExpressionError, match="a"):
        expression(source).value(values)


def test_an_equation_has_one_equals_sign() -> None:
    """Two equals signs are a mistake of the author, said at once."""
    with pytest.raises(ExpressionError, match="exactly one '='"):
        equation("a = b = c")


@pytest.mark.parametrize(
    ("source", "text"),
    [
        ("a*(-b)", "a(−b)"),
        ("a*(-b)/c", "a(−b)/c"),
        ("a*((-b)/c)", "a(−b/c)"),
        ("a + (-b)/c", "a + (−b/c)"),
        ("a - (-b)", "a − (−b)"),
        ("sin(-b)", "sin (−b)"),
        ("a/(-b)", "a/(−b)"),
        ("(a/b)*c", "(a/b)c"),
    ],
)
def test_a_minus_after_another_factor_keeps_its_brackets(source: str, text: str) -> None:
    """A product with a negated name never reads as a subtraction, nor a fraction as swallowing the next factor."""
    assert expression(source).maths().text == text


def test_a_long_sum_in_a_fraction_stands_in_rows() -> None:
    """Five products with powers of ten are wider than a page: two of them in a row, and no rows in plain text."""
    law = expression("(" + " + ".join(f"x{n}*F{n}" for n in range(1, 6)) + ")/(x1^2 - x2^2)")
    large, small = Shown("277{,}78", "277,78"), Shown(r"7{,}6 \times 10^{-4}", "7,6 × 10⁻⁴")
    shown = law.maths({f"{letter}{n}": what for n in range(1, 6) for letter, what in (("x", large), ("F", small))})
    top = shown.tex.split(r"\begin{gathered}")[1].split(r"\end{gathered}")[0]
    rows = [row.strip() for row in top.split(r"\cr")]
    assert [row.count("277{,}78") for row in rows] == [2, 2, 1]
    assert [row.startswith("{} + (277") for row in rows] == [False, True, True]
    assert shown.tex.count(r"\begin{gathered}") == 1, "the bottom is short"
    assert shown.text.startswith("((277,78)(7,6 × 10⁻⁴) + (277,78)(7,6 × 10⁻⁴) + (277,78)")
    assert "gathered" not in law.maths().tex, "so are the symbols"


def test_a_fraction_inside_a_function_has_less_room() -> None:
    """Three squares with powers of ten stand in one row of a fraction, but not inside cos⁻¹( )."""
    sides = {name: Shown(r"2{,}2 \times 10^{-6}", "2,2 × 10⁻⁶") for name in "abc"}
    cosine = "(a^2 - b^2 - c^2)/(2*b*c)"
    assert "gathered" not in expression(cosine).maths(sides).tex
    assert r"10^{-6})^{2} \cr {} - (2{,}2" in expression(f"acos({cosine})").maths(sides).tex


@pytest.mark.parametrize(
    ("source", "angle", "value"),
    [
        ("cos(a)", math.pi / 2, 0.0),
        ("sin(a)", math.pi, 0.0),
        ("sin(a)", 1e-32, 1e-32),
        ("cos(a)", math.pi / 2 - 1e-14, math.cos(math.pi / 2 - 1e-14)),
        ("sin(a)", 0.0, 0.0),
    ],
)
def test_right_angles_are_exact_and_tiny_angles_stay(source: str, angle: float, value: float) -> None:
    """A force at right angles does exactly no work; the sine of a tiny angle is not taken for none."""
    assert expression(source).value({"a": angle}) == value
