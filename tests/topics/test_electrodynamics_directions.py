"""Directions in electrodynamics: each sentence and each drawing against vectors worked out here from the drawing."""

from __future__ import annotations

import itertools
import math
import re

import numpy as np
import pytest

from calc.figures import AngleMark, Arrow, Block, Curve, Figure, Segment, Text
from calc.figures.circuit_pieces import Symbol, Wire
from calc.figures.coils import coil_in_field, magnet_and_coil
from calc.figures.machines import machine
from tests.topics.asking import Chapter

ASKED = Chapter("electrodynamics")
AHEAD = np.array([0.0, 0.0, 1.0])  # to the reader
CASES = list(itertools.product("NS", ("towards", "away"), ("left", "right")))


def wires(figure: Figure) -> list[Segment]:
    """The front wires of the coil, from left to right; they slant, the leads do not."""
    found = [one for one in figure.items if isinstance(one, Segment) and one.arrow and one.start[0] != one.end[0]]
    return sorted(found, key=lambda one: one.start[0])


def magnet(figure: Figure) -> tuple[Block, dict[str, float]]:
    """The magnet, and where along the axis its poles stand."""
    (body,) = [one for one in figure.items if isinstance(one, Block) and one.centre[0] != 0]
    low, high = (body.centre[0] + turn * body.width / 2 for turn in (-1, 1))
    inside = {one.text: one.at[0] for one in figure.items if isinstance(one, Text) and low < one.at[0] < high}
    return body, inside


def field_at_the_coil(poles: dict[str, float], moved: float = 0.0) -> float:
    """The field along the axis at the middle of the coil: away from a north pole, towards a south pole."""
    return sum(
        sign * -np.sign(poles[name] + moved) / (poles[name] + moved) ** 2 for name, sign in (("N", 1), ("S", -1))
    )


def moment(figure: Figure) -> float:
    """Along the axis: the moment of the drawn current, position times direction at the front of a turn."""
    (one, *rest) = wires(figure)
    along = np.array([*np.subtract(one.end, one.start), 0.0])
    assert all(np.allclose(np.subtract(two.end, two.start), along[:2]) for two in rest)
    return float(np.cross(AHEAD, along)[0])


@pytest.mark.parametrize(("pole", "moves", "side"), CASES)
def test_an_induced_current_opposes_the_change_as_drawn_and_as_told(pole: str, moves: str, side: str) -> None:
    """The change of the field of two poles that move as the arrow says; poles, arrows, meter and words follow."""
    figure = magnet_and_coil(pole, moves, side, answer=True)
    body, poles = magnet(figure)
    (velocity,) = [one for one in figure.items if isinstance(one, Arrow)]
    assert (body.centre[0] > 0) == (side == "right")
    assert min(poles, key=lambda name: abs(poles[name])) == pole
    before, after = (field_at_the_coil(poles, step * np.sign(velocity.end[0] - velocity.start[0])) for step in (0, 0.1))
    induced = moment(figure)
    assert induced * (after - before) < 0
    ends = {one.at[0] > 0: one.text for one in figure.items if isinstance(one, Text) and 4.8 < abs(one.at[0]) < 6.5}
    assert ends == ({True: "N", False: "S"} if induced > 0 else {True: "S", False: "N"})

    solved = ASKED.solve("direction", pole=pole, moves=moves, side=side, N="300", DeltaPhi="2 mWb", Deltat="0,5 s")
    words = " ".join(point.words for part in solved.parts for point in part.points)
    grows = abs(after) > abs(before)
    assert ("size of the flux increases" in words, "size of the flux decreases" in words) == (grows, not grows)
    near = ends[side == "right"]
    assert re.search(r"becomes a (\w+) pole", words)[1] == {"N": "north", "S": "south"}[near]  # type: ignore[index]
    assert ("coil repels" in words, "coil attracts" in words) == (near == pole, near != pole)
    downwards = wires(figure)[0].end[1] < wires(figure)[0].start[1]
    assert re.search(r"front wires point (\w+)", words)[1] == ("down" if downwards else "up")  # type: ignore[index]
    to_the_magnet = 1 if side == "right" else -1
    round_ = "anticlockwise" if induced * to_the_magnet > 0 else "clockwise"
    assert re.search(r"from the magnet, the current flows (\w+)", words)[1] == round_  # type: ignore[index]
    story = solved.story
    assert f"{ {'N': 'north', 'S': 'south'}[pole] } pole" in story
    assert f"{side}" in story


@pytest.mark.parametrize(("pole", "moves", "side"), CASES)
def test_the_current_goes_on_through_the_leads(pole: str, moves: str, side: str) -> None:
    """What comes down the front leaves by the lower end of the first wire on the left, and comes back on the right."""
    figure = magnet_and_coil(pole, moves, side, answer=True)
    leads = [one for one in figure.items if isinstance(one, Segment) and one.arrow and one.start[0] == one.end[0]]
    left, right = sorted(leads, key=lambda one: one.start[0])
    first = wires(figure)[0]
    lower = min(first.start, first.end, key=lambda point: point[1])
    assert abs(lower[0] - left.start[0]) < 0.6  # the lead begins where that wire ends
    down = first.end[1] < first.start[1]
    assert (left.end[1] < left.start[1], right.end[1] < right.start[1]) == (down, not down)
    (meter,) = [one for one in figure.items if isinstance(one, Symbol)]
    assert left.start[0] < meter.centre[0] < right.start[0]
    assert f"in the ammeter the current flows to the {'right' if down else 'left'}" in figure.description


def test_a_magnet_at_rest_is_drawn_without_arrows() -> None:
    """Neither a velocity, nor a current, nor a pole of the coil."""
    figure = magnet_and_coil("S", "still", "left", answer=True)
    assert not [one for one in figure.items if isinstance(one, Arrow) or (isinstance(one, Segment) and one.arrow)]
    assert sorted(one.text for one in figure.items if isinstance(one, Text)) == ["N", "S", "coil"]


def test_the_motor_turns_as_the_forces_on_its_sides_say() -> None:
    """From the positive terminal round the drawn coil; I × B on both sides; the arrow, the words and the poles."""
    figure = machine("motor")
    text = {one.text: one.at for one in figure.items if isinstance(one, Text)}
    (coil,) = [one.points for one in figure.items if isinstance(one, Curve) and one.kind == "graph"]
    assert text["+"][0] < 0 < text["−"][0]
    outer = [one for one in figure.items if isinstance(one, Wire)]
    assert sorted(np.sign(one.points[0][0]) for one in outer) == [-1, 1]  # one side each, from brush to battery
    assert all(np.sign(a[0]) == np.sign(b[0]) for one in outer for a, b in itertools.pairwise(one.points))
    assert coil[0][0] < 0 < coil[-1][0]  # so the current runs through the coil in the order of its points
    field = np.array([np.sign(text["S"][0] - text["N"][0]), 0.0, 0.0])
    forces = {}
    for one, two in itertools.pairwise(coil):
        if abs(one[0]) > 2 and one[0] * two[0] > 0 and one[1] != two[1] and abs(two[0]) > 2:
            inwards = two[1] > one[1]  # what lies higher on the page lies further back
            forces[np.sign(one[0])] = np.cross([0.0, 0.0, -1.0 if inwards else 1.0], field)[1]
    assert forces[-1] < 0 < forces[1]
    (turning,) = [one.points for one in figure.items if isinstance(one, Curve) and one.arrows]
    middle = np.mean([min(turning), max(turning)], axis=0)
    spun = [
        np.cross([*(p - middle), 0], [*(np.subtract(q, p)), 0])[2] for p, q in itertools.pairwise(np.array(turning))
    ]
    assert np.sum(spun) > 0  # anticlockwise: the left side goes down
    words = " ".join(p.words for part in ASKED.whole("machines", kind="motor").parts for p in part.points)
    assert "Down on the side next to the north pole, up on the other side." in words
    assert "turns anticlockwise" in figure.description


@pytest.mark.parametrize("kind", ["ac", "dc", "motor"])
def test_each_end_of_the_coil_has_its_own_ring_or_half(kind: str) -> None:
    """Whole rings: each end on another one, a brush on each. Halves: ends and brushes on both sides of the gaps."""
    figure = machine(kind)
    (coil,) = [one.points for one in figure.items if isinstance(one, Curve) and one.kind == "graph"]
    rings = [
        np.array(one.points) for one in figure.items if isinstance(one, Curve) and one.closed and len(one.points) > 9
    ]
    brushes = [one for one in figure.items if isinstance(one, Block) and one.width < 2]
    assert len(brushes) == 2

    def touched(at: tuple[float, float]) -> int:
        return min(range(len(rings)), key=lambda n: float(np.min(np.hypot(*(rings[n] - np.array(at)).T))))

    held = [touched(coil[0]), touched(coil[-1])]
    by_brush = [
        touched((one.centre[0] - math.copysign(one.width / 2, one.centre[0]), one.centre[1])) for one in brushes
    ]
    assert held[0] != held[1]
    assert sorted(held) == sorted(by_brush)
    assert len(rings) == (4 if kind == "ac" else 2)
    if kind == "ac":
        assert all(math.isclose(np.ptp(ring[:, 0]), np.ptp(ring[:, 1]), rel_tol=0.02) for ring in rings)
    else:
        assert all(np.all(np.sign(ring[:, 0]) == np.sign(ring[0, 0])) for ring in rings)


@pytest.mark.parametrize("theta", [0.0, 20.0, 60.0, 90.0, 130.0])
def test_the_coil_stands_across_its_normal(theta: float) -> None:
    """The normal makes its angle with the field, the coil a right angle with it, and the marks lie between."""
    figure = coil_in_field(theta, plane="β" if theta < 90 else "")
    field = next(one for one in figure.items if isinstance(one, Arrow))
    assert field.end[0] > field.start[0]
    assert field.end[1] == field.start[1]
    lines = {one.label: np.subtract(one.end, one.start) for one in figure.items if isinstance(one, Segment)}
    normal, coil = lines["normal"], lines["coil"]
    assert math.degrees(math.atan2(normal[1], normal[0])) == pytest.approx(theta)
    assert float(np.dot(normal, coil)) == pytest.approx(0, abs=1e-9)
    marks = {one.label: (one.start_deg, one.end_deg) for one in figure.items if isinstance(one, AngleMark)}
    assert marks.get("θ", (0.0, theta)) == (0.0, theta)
    if theta < 90:
        down = (
            math.degrees(math.atan2(-coil[1], -coil[0])) if coil[1] > 0 else math.degrees(math.atan2(coil[1], coil[0]))
        )
        assert marks["β"] == (pytest.approx(down), 0.0)
