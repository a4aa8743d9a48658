"""When a check of an answer can tell right from wrong."""

from __future__ import annotations

import pytest

from calc.language.expressions import equation
from calc.model.questions import Check
from calc.working.working import _holds, agrees, decides


@pytest.mark.parametrize(
    ("large", "left", "clear"),
    [
        (5.0, 2.0, True),  # plain numbers
        (5.0, 2.1, True),  # wrong, and the check sees it
        (1e3, 2.0, False),  # floats leave 4 × 10⁻⁹ of the terms uncertain, more than the tolerance of what is left
        (1e12, 2.0, False),  # the terms cancel: what is left is below what floats carry
        (1e12, 1e6, True),  # the terms cancel too, but the answer is wrong by far more
    ],
)
def test_a_check_of_a_difference_that_cancels_decides_nothing(large: float, left: float, clear: bool) -> None:
    """F = A − B: what floats leave uncertain of A and of B adds up, and hides a small F."""
    check = Check("By the difference", "F = A - B", tolerance=1e-9)
    assert decides(check, {"F": left, "A": large, "B": large - 2.0}) == clear


def test_a_check_that_is_told_by_rule_always_decides() -> None:
    """A rule answers yes or no."""
    check = Check("By a rule", holds=lambda values: values["F"] > 0)
    assert decides(check, {"F": 1.0})
    assert agrees(check, {"F": 1.0})
    assert not agrees(check, {"F": -1.0})


def test_what_cannot_be_worked_out_decides_nothing() -> None:
    """A root of a negative number makes no check."""
    check = Check("By a root", "F = sqrt(A)")
    assert not decides(check, {"F": 1.0, "A": -1.0})
    assert not agrees(check, {"F": 1.0, "A": -1.0})


@pytest.mark.parametrize(
    ("law", "said", "holds"),
    [
        ("F = a + b", {"F": 3.0, "a": 1.0, "b": 2.0}, True),
        ("F = a + b", {"F": 3.02, "a": 1.0, "b": 2.0}, True),  # rounded within one in a hundred
        ("F = a + b", {"F": 3.05, "a": 1.0, "b": 2.0}, False),
        ("F = sqrt(a)", {"F": 1.0, "a": -1.0, "b": 0.0}, False),  # no value at all
        ("0 = a - b", {"F": 1.0, "a": 2.0, "b": 2.005}, True),  # judged by the size of the unknown
        ("0 = a - b", {"F": 1.0, "a": 2.0, "b": 2.05}, False),
    ],
)
def test_a_line_with_the_printed_numbers_holds_within_one_in_a_hundred(
    law: str, said: dict[str, float], holds: bool
) -> None:
    """Sides that come to the same, to the places that are printed."""
    assert _holds(equation(law), said, said["F"]) == holds
