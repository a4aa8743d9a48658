"""Small judgements that explanations of wrong answers rest on."""

from __future__ import annotations

import pytest

from calc.marking.findings import _opposite
from calc.model.directions import ATTRACTION, LEFT_RIGHT


@pytest.mark.parametrize(
    ("said", "opposite"), [("to the left", True), ("west", True), ("to the right", False), ("blue", False), ("", False)]
)
def test_a_direction_said_is_the_opposite_of_the_right_one(said: str, opposite: bool) -> None:
    """A slip that turns the value round is meant only where the opposite is said; what cannot be read says nothing."""
    assert _opposite(said, LEFT_RIGHT.of("right")) == opposite


def test_repulsion_is_the_opposite_of_attraction() -> None:
    """By any of its words."""
    assert _opposite("they repel", ATTRACTION.of("attract"))
    assert not _opposite("they attract", ATTRACTION.of("attract"))
