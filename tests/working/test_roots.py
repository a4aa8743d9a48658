"""Roots by halving, against scipy."""

import math

import pytest
import scipy.optimize
from hypothesis import given
from hypothesis import strategies as st

from calc.working.roots import NoRoot, bisect, scan


@given(st.floats(1e-6, 1e3))
def test_bisect_agrees_with_scipy(size: float) -> None:
    """sin²α tan α = size has one root below 90°; scipy's brentq finds the same."""

    def gap(angle: float) -> float:
        return math.sin(angle) ** 2 * math.tan(angle) - size

    theirs = scipy.optimize.brentq(gap, 1e-9, math.pi / 2 - 1e-9, xtol=1e-15)
    assert math.isclose(bisect(gap, 1e-9, math.pi / 2 - 1e-9), theirs, rel_tol=1e-9)


def test_no_change_of_sign_is_said() -> None:
    """An interval without a root is refused, not answered."""
    with pytest.raises(NoRoot, match="no change of sign"):
        bisect(lambda x: x * x + 1, -1, 1)


def test_scan_lists_every_root_in_order() -> None:
    """All three roots of a cubic are found."""
    assert scan(lambda x: (x + 1) * (x - 0.5) * (x - 2), -3, 3) == pytest.approx([-1, 0.5, 2])


@pytest.mark.parametrize(("low", "high", "root"), [(2, 5, 2), (-1, 2, 2), (1, 3, 2)])
def test_a_root_at_an_end_is_that_end(low: float, high: float, root: float) -> None:
    """Nothing is halved where an end is the root itself."""
    assert bisect(lambda x: x - 2, low, high) == root


def test_roots_on_the_grid_are_found_once() -> None:
    """A root on a point of the grid, and one at its end, stand once in the list."""
    assert scan(lambda x: x * (x - 1), -1, 1, pieces=4) == [0, 1]
    assert scan(lambda x: x + 1, -1, 1, pieces=4) == [-1]
