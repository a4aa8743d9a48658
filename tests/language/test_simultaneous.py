"""Two equations with two unknowns, proved by sympy, and the board's way word for word."""

import pytest
import sympy

from calc.language.expressions import equation
from calc.language.simultaneous import together
from calc.language.trees import NotRearranged

# Two bodies on a string, two readings of a cell, an elastic collision, a hanging ball, a pull at an angle:
# the equations themselves are common practice, no source.
CASES = (
    ("T - f = m1*a", "m2*g - T = m2*a", "a", "T", "add"),
    ("T - f = m1*a", "m2*g - T = m2*a", "T", "a", "divide"),
    ("E = V1 + I1*r", "E = V2 + I2*r", "r", "E", "equate"),
    ("m1*u1 + m2*u2 = m1*v1 + m2*v2", "v1 - v2 = u2 - u1", "v1", "v2", "substitute"),
    ("T*cos(b) = m*g", "T*sin(b) = F", "b", "T", "divide"),
    ("N + P*sin(b) = m*g", "P*cos(b) - mu*N = m*a", "P", "N", "substitute"),
    ("p + x = a + y", "q + x = a - z", "p", "x", "subtract"),
    ("T*cos(b) = m*g", "T*sin(b) = F", "F", "T", "divide"),
    ("T*sin(b)*c = F", "T*cos(b) = m*g", "c", "T", "divide"),
)


@pytest.mark.parametrize(("first", "second", "find", "drop", "method"), CASES)
def test_both_equations_hold_for_what_is_found(first: str, second: str, find: str, drop: str, method: str) -> None:
    """Sympy puts both values back into both equations, and they hold."""
    found = together(first, second, find, drop)
    assert found.method == method
    names = set(equation(first).names) | set(equation(second).names)
    numbers = {name: 0.31 + 0.17 * place for place, name in enumerate(sorted(names - {find, drop}))}
    values = {sympy.Symbol(n): v for n, v in numbers.items()}

    def worth(text: str) -> float:
        symbols = {name: sympy.Symbol(name) for name in names}
        return float(sympy.sympify(text.replace("^", "**"), locals=symbols).subs(values))

    values[sympy.Symbol(find)] = worth(found.found.how)
    values[sympy.Symbol(drop)] = worth(found.back.how)
    for law in (first, second):
        left, right = law.split("=")
        assert worth(left) == pytest.approx(worth(right), rel=1e-9), law


def test_adding_is_explained() -> None:
    """The reason names the quantity that drops out, and why it does."""
    found = together("T - f = m1*a", "m2*g - T = m2*a", "a", "T")
    assert found.law == "m2*g - f = m1*a + m2*a"
    assert found.found.lines == ("a*(m1 + m2) = m2*g - f",)
    assert found.why == "T stands with opposite signs in the two equations: added, it drops out."


def test_subtracting_dividing_and_equating_are_explained() -> None:
    """Each with what drops out and why; a term on the same side of both is gone with it."""
    found = together("p + x = a + y", "q + x = a - z", "p", "x")
    assert found.law == "p - q = y + z"
    assert found.why == "x stands with the same sign in both equations: subtract one from the other and it drops out."
    found = together("T*sin(b)*c = F", "T*cos(b) = m*g", "c", "T")
    assert found.law == "c*tan(b) = F/(m*g)"
    assert found.why == "T is a factor of both equations: divide one by the other and it drops out."
    assert together("T*cos(b) = m*g", "T*sin(b) = F", "F", "T").law == "1/tan(b) = m*g/F"
    found = together("E = V1 + I1*r", "E = V2 + I2*r", "r", "E")
    assert found.why == "E is the same in both equations, so the other sides are equal too."


def test_the_other_unknown_comes_from_the_equation_that_can_be_solved_for_it() -> None:
    """The first is tried, then the second."""
    found = together("x = y*sin(y)", "y + c = b", "x", "y")
    assert found.back.make == "y = b - c"


def test_what_cannot_be_combined_is_refused() -> None:
    """Without a common quantity there is nothing to combine."""
    with pytest.raises(NotRearranged):
        together("x^3 + x = y*sin(y)", "y^5 + y = cos(x)", "x", "y")
