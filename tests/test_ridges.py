"""Two bodies over a ridge, as drawn."""

from __future__ import annotations

import math
import random

import pytest

from calc.figures import AngleMark, Arrow
from calc.figures.chains import Acting
from calc.figures.pieces import Block
from calc.figures.ridges import over_a_ridge
from calc.figures.surfaces import Pulled
from tests.test_figure_overlaps import all_faults


def test_labels_stand_clear_over_a_ridge() -> None:
    """At any two angles, with a rope at any angle on either side and a second force, no label touches anything."""
    chance, wrong = random.Random(4), list[str]()
    for _ in range(120):
        angles = [chance.choice((4, 10, 20, 30, 45, 55, 70)) for _ in range(2)]
        pulled = Pulled("P", chance.choice((0, 15, 30, 60, 85)), back=chance.random() < 0.5)
        second = Acting(chance.randrange(2), chance.random() < 0.5)
        some = chance.choice(((pulled, second), (pulled, None), (None, second), (None, None)))
        wrong += [
            f"{angles} {some}: {fault}" for fault in all_faults(over_a_ridge(*angles, pulled=some[0], second=some[1]))
        ]
    assert wrong == []


@pytest.mark.parametrize(("left", "right"), [(20, 50), (50, 20), (35, 35)])
def test_bodies_and_angles_are_drawn_true(left: int, right: int) -> None:
    """Each box is turned as its slope, on its own side and as far from the ridge; the marks have the angles told."""
    figure = over_a_ridge(left, right)
    one, two = (item for item in figure.items if isinstance(item, Block))
    assert (one.angle_deg, two.angle_deg) == (left, -right)
    assert one.centre[0] < 0 < two.centre[0]
    assert math.hypot(*one.centre) == pytest.approx(math.hypot(*two.centre))
    marks = {item.label: item.sweep_deg for item in figure.items if isinstance(item, AngleMark)}
    assert marks == pytest.approx({"θ": left, "θ_2": right})


@pytest.mark.parametrize(("place", "back", "way"), [(0, False, 20), (0, True, 200), (1, False, -40), (1, True, 140)])
def test_a_second_force_lies_along_its_own_slope(place: int, back: bool, way: float) -> None:
    """Forwards is up the left slope and down the right one; the words say the same."""
    figure = over_a_ridge(20, 40, second=Acting(place, back))
    (arrow,) = (item for item in figure.items if isinstance(item, Arrow))
    (x, y), (x2, y2) = arrow.start, arrow.end
    assert math.degrees(math.atan2(y2 - y, x2 - x)) % 360 == pytest.approx(way % 360)
    words = "up the slope" if way in (20, 140) else "down the slope"
    assert (
        f"An arrow labelled F over m{place + 1} points {words}: a second force on m{place + 1}." in figure.description
    )


def test_slopes_that_cannot_be_drawn() -> None:
    """Level or steeper than 70°."""
    with pytest.raises(ValueError, match="cannot be drawn"):
        over_a_ridge(0, 20)
    with pytest.raises(ValueError, match="cannot be drawn"):
        over_a_ridge(20, 71)
