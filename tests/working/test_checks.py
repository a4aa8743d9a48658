"""When a check of an answer can tell right from wrong."""

from __future__ import annotations

import pytest

from calc.model.questions import Check
from calc.working.working import agrees, decides


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
