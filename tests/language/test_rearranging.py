"""Laws made to yield any of their quantities, proved by sympy, and their lines word for word."""

import math
import re
from random import Random

import pytest
import sympy

from calc.language.expressions import equation, expression
from calc.language.rearranging import rearranged
from calc.language.trees import NotRearranged
from calc.marking.algebra_slips import algebra_slips

# Laws of a school data sheet, as any handbook has them; the shapes are what is tested.
LAWS = (
    "F = k*Q1*Q2/r^2",
    "E_k = 1/2*m*v^2",
    "v = u + a*t",
    "s = u*t + 1/2*a*t^2",
    "v^2 = u^2 + 2*a*s",
    "s = (u + v)/2*t",
    "m1*u1 + m2*u2 = (m1 + m2)*v",
    "m1*u1 + m2*u2 = m1*v1 + m2*v2",
    "F*t = m*(v - u)",
    "1/R = 1/R1 + 1/R2",
    "E = I*(R + r)",
    "f_L = f_S*(v + v_L)/(v - v_S)",
    "g_h = g*(R/(R + h))^2",
    "W = F*x*cos(theta)",
    "n1*sin(a1) = n2*sin(a2)",
    "P = E^2*R/(R + r)^2",
    "T = m*g*sin(theta) - F",
    "h*f = W0 + 1/2*m*v^2",
    "tan(alpha) = F/(m*g)",
    "a = g*(m2 - mu*m1)/(m1 + m2)",
    "T = sqrt(F^2 + (m*g)^2)",
    "x*y + x*z = y*z",
    "V = 4*pi*R^3/3",
    "P = c*v^3 - W",
    "a*x^2 + b*x^2 = c",
    "x/a = b/x",
    "b*x = x^2 + a*x",
    "-x*a = b",
    "r_1 = r_2",
)
CASES = [(law, name) for law in LAWS for name in equation(law).names]
VALUES = (0.37, 0.82, 1.31, 1.73, 2.19, 2.83)


def as_sympy(text: str) -> sympy.Expr:
    """An expression of ours read by sympy, every name positive."""
    names = {name: sympy.Symbol(name, positive=True) for name in expression(text).names}
    return sympy.sympify(text.replace("^", "**"), locals=names)


@pytest.mark.parametrize(("law", "unknown"), CASES)
def test_the_rearranged_form_puts_the_law_right(law: str, unknown: str) -> None:
    """Put back into its law, the rearranged form makes both sides the same for sympy."""
    found = rearranged(law, unknown)
    left, right = (as_sympy(side) for side in law.split("="))
    put = {sympy.Symbol(unknown, positive=True): as_sympy(found.how)}
    names = [n for n in equation(law).names if n != unknown]
    for shift in range(3):
        numbers = {
            sympy.Symbol(name, positive=True): VALUES[(place + shift) % len(VALUES)] / (7 if name[0] in "at" else 1)
            for place, name in enumerate(names)
        }
        gap = complex(sympy.N((left - right).subs(put).subs(numbers)))
        size = abs(complex(sympy.N(left.subs(put).subs(numbers)))) + 1e-9
        assert abs(gap) < 1e-7 * max(1.0, size), found


@pytest.mark.parametrize(("law", "unknown"), CASES)
def test_every_line_says_the_same_as_the_law(law: str, unknown: str) -> None:
    """Each line between holds for the value that the last line gives."""
    found = rearranged(law, unknown)
    names = [n for n in equation(law).names if n != unknown]
    chance = Random(f"{law} {unknown}")
    values: dict[str, float] = {}
    for _ in range(200):
        values = {name: chance.uniform(0.1, 3) for name in names}
        try:
            values[unknown] = expression(found.how).value(values)
            break
        except ValueError:
            continue  # no real value with these numbers
    assert unknown in values
    for line in found.lines:
        sides = equation(line)
        left, right = sides.left.value(values), sides.right.value(values)
        scale = max(map(abs, (left, right, *values.values())))
        assert math.isclose(left, right, rel_tol=1e-7, abs_tol=1e-7 * scale), line


def test_lines_of_a_square() -> None:
    """A square is freed first, then its root taken, as on the board."""
    found = rearranged("F = k*Q1*Q2/r^2", "r")
    assert found.lines == ("r^2 = k*Q1*Q2/F",)
    assert found.make == "r = sqrt(k*Q1*Q2/F)"


def test_both_roots_of_a_quadratic_are_kept() -> None:
    """Time in the equation of motion: one line in standard form, then both roots."""
    found = rearranged("s = u*t + 1/2*a*t^2", "t")
    assert found.lines == ("a*t^2 + 2*u*t - 2*s = 0",)
    assert found.make == "t = (-u + sqrt(u^2 + 2*a*s))/a"
    assert found.other == "t = (-u - sqrt(u^2 + 2*a*s))/a"


def test_like_terms_are_collected() -> None:
    """An unknown on both sides is collected and factored out."""
    found = rearranged("m1*u1 + m2*u2 = (m1 + m2)*v", "m1")
    assert found.lines == ("m1*(u1 - v) = m2*(v - u2)",)
    assert found.make == "m1 = m2*(v - u2)/(u1 - v)"


def test_an_unknown_alone_on_the_right_needs_no_line_between() -> None:
    """T sin α = F_E read from right to left is the answer already."""
    found = rearranged("T*sin(alpha) = F_E", "F_E")
    assert (found.make, found.lines) == ("F_E = T*sin(alpha)", ())


def test_what_cannot_be_freed_is_refused() -> None:
    """An angle under sine and cosine at once needs a numeric root."""
    with pytest.raises(NotRearranged, match="theta stands inside"):
        rearranged("F = m*g*sin(theta) - mu*m*g*cos(theta)", "theta")


@pytest.mark.parametrize(("law", "unknown"), CASES)
def test_slips_differ_from_the_right_form(law: str, unknown: str) -> None:
    """For sympy no slip is the right form in other writing, and no slip stands twice."""
    how = rearranged(law, unknown).how
    names = expression(how).names
    numbers = {n: VALUES[place % len(VALUES)] for place, n in enumerate(names)}
    right = complex(sympy.N(as_sympy(how).subs({sympy.Symbol(n, positive=True): v for n, v in numbers.items()})))
    slips = algebra_slips(how)
    assert slips or "/" not in how
    for slip in slips:
        wrong = complex(
            sympy.N(as_sympy(slip.instead).subs({sympy.Symbol(n, positive=True): v for n, v in numbers.items()}))
        )
        assert abs(wrong - right) > 1e-9 * abs(right), slip
    assert len({slip.instead for slip in slips}) == len(slips)


def test_a_minus_stands_before_the_whole_product() -> None:
    """-(F·r²/k): with numbers put in, the minus is not read as part of the first of them alone."""
    found = rearranged("F = -(k*P/r^2)", "P")
    assert (found.make, found.lines) == ("P = -(F*r^2/k)", ("k*P/r^2 = -F",))


def test_nothing_is_divided_by_one() -> None:
    """Two numbers from half their sum and their product: the square stands alone, so the roots are no fraction."""
    found = rearranged("x*(2*h - x) = P", "x")
    assert found.lines == ("x^2 - 2*h*x + P = 0",)
    assert (found.make, found.other) == ("x = h + sqrt(h^2 - P)", "x = h - sqrt(h^2 - P)")


@pytest.mark.parametrize(
    ("law", "unknown", "reason"),
    [
        ("a = b", "x", "a = b: there is no x in it"),
        ("x^3 + x = a", "x", "x stands in power 3"),
        ("y = sin(x)*x", "x", "x stands inside sin(x) and elsewhere"),
        ("a = abs(x)", "x", "x stands inside abs(x)"),
    ],
)
def test_what_is_not_rearranged_is_said(law: str, unknown: str, reason: str) -> None:
    """Each with its reason, so that the one who declares it writes that step by hand."""
    with pytest.raises(NotRearranged, match=f"^{re.escape(reason)}$"):
        rearranged(law, unknown)


def test_a_root_at_zero_is_no_answer() -> None:
    """b·x = x² + a·x: no learner asks for x = 0, so x is divided away."""
    assert rearranged("b*x = x^2 + a*x", "x").make == "x = b - a"


def test_a_pure_square_has_two_roots_and_no_formula() -> None:
    """a·x² + b·x² = c: the square is made the subject, then its root is taken, both signs told."""
    found = rearranged("a*x^2 + b*x^2 = c", "x")
    assert (found.lines, found.make, found.other, found.why) == (
        ("x^2 = c/(a + b)",),
        "x = sqrt(c/(a + b))",
        "x = -sqrt(c/(a + b))",
        "",
    )
