"""The algebra slips of every form of many laws, and the lines that lead to the form, as they were read.

``approved/laws/slips.txt`` holds them; that each slip differs from the right form is shown by sympy elsewhere. After a
change on purpose:

    .venv/bin/python -m tests.marking.test_slips_kept
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from pathlib import Path

import pytest

from calc.language.rearranging import NotRearranged, rearranged
from calc.marking.algebra_slips import algebra_slips
from tests.language.test_rearranging import CASES

KEPT = Path(__file__).parents[1] / "approved" / "laws" / "slips.txt"
MORE = (  # further forms as they stand on a memo
    "P*t/2",
    "F*cos(theta) - f",
    "a - b",
    "b - a + c",
    "a + b",
    "a + b + c + d",
    "-a - b",
    "1/2*m*v^2 - 1/2*m*u^2",
    "sqrt(a^2 + b^2)",
    "sqrt(a^2 - b^2)",
    "sqrt((x1 - x2)^2 + y^2)",
    "sqrt(2*g*h)",
    "atan(a/b)",
    "atan((a - b)/c)",
    "asin(F/(m*g))",
    "acos(0.5*x)",
    "m*g*sin(theta + phi)",
    "2*pi*R",
    "4*pi*R^2",
    "k*Q/r^3",
    "V/d^4",
    "3*a/4",
    "(a + b)/2",
    "(a - b)/(c - d)",
    "abs(a - b)/t",
    "a^(1/3)",
)


def forms() -> Iterator[str]:
    """Each law solved for each name, with the lines between, and what else a memo has."""
    for law, name in CASES:
        try:
            found = rearranged(law, name)
        except NotRearranged as refused:
            yield f"=== {law} for {name}: {refused}"
            continue
        yield f"=== {law} for {name}: {'; '.join(found.lines)}; {found.make}; {found.other}; {found.why}"
        yield from slips(found.how)
    for form in MORE:
        yield f"=== {form}"
        yield from slips(form)


def slips(form: str) -> Iterator[str]:
    """A line a slip: its name, the wrong form, the sentence."""
    for slip in algebra_slips(form):
        yield f"{slip.key}: {slip.instead}: {slip.say}"


def test_slips_and_lines_are_those_that_were_read() -> None:
    """The wrong forms, their sentences, and the lines of the right one."""
    assert list(forms()) == KEPT.read_text(encoding="utf-8").splitlines()


@pytest.mark.parametrize(
    ("form", "turned"),
    [
        ("abs(a - b)/t", []),
        ("t*abs(a - b)^3", []),
        ("(a - b)^2/t", []),
        ("t/(a - b)^4", []),
        ("abs(a^2 - b^2)", []),
        ("(a - b)*(a - b)", ["(b - a)*(a - b)", "(a - b)*(b - a)"]),
        ("(a - b)^3/t", ["(b - a)^3/t"]),
        ("abs(a - b)*(t - a)", ["(a - t)*abs(a - b)"]),
    ],
)
def test_what_never_changes_the_value_is_no_slip(form: str, turned: list[str]) -> None:
    """A difference turned round under |…| or an even power is right; elsewhere it is a slip; each slip tells itself."""
    made = algebra_slips(form)
    assert [slip.instead for slip in made if slip.key == "turned-round"] == turned
    for slip in made:
        assert any(_reckoned(slip.instead, *data) != _reckoned(form, *data) for data in product((2, -3, 5), repeat=3))


def _reckoned(form: str, a: float, b: float, t: float) -> float | None:
    """The value as Python has it; None where there is none."""
    try:
        return eval(form.replace("^", "**"), {"a": a, "b": b, "t": t})
    except ZeroDivisionError:
        return None


if __name__ == "__main__":
    KEPT.write_text("".join(f"{line}\n" for line in forms()), encoding="utf-8")
