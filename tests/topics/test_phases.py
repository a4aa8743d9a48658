"""Motion in phases: scipy integrates the same motion; borders, turning points, mirrored signs; the graphs of it."""

import re

import numpy as np
import pytest
from scipy import integrate

from calc.figures import Curve, Figure
from calc.topics.shared.phase_graphs import Mark, acceleration_graph, position_graph, table, velocity_graph
from calc.topics.shared.phases import Motion, Phase, free

G = 9.8
FIRST = free(25.0, 12.0, G)
BOUNCED = Motion((FIRST, FIRST.then(2 * 9.9 / G, u=9.9)))


def integrated(u: float, y: float, lasting: float) -> tuple[float, float]:
    """Place and velocity after a time of free fall, step by step."""
    found = integrate.solve_ivp(lambda t, state: [state[1], -G], (0, lasting), [y, u], rtol=1e-10, atol=1e-12)
    return float(found.y[0][-1]), float(found.y[1][-1])


@pytest.mark.parametrize("share", [0.1, 0.35, 0.7, 0.999])
def test_a_motion_is_as_it_is_integrated(share: float) -> None:
    """Place and velocity inside each phase, the second begun with the velocity after the bounce."""
    for one in BOUNCED.phases:
        at = one.start + share * one.lasting
        expected = integrated(one.u, one.y, share * one.lasting)
        assert (BOUNCED.position(at), BOUNCED.velocity(at)) == pytest.approx(expected, rel=1e-6, abs=1e-6)


def test_a_free_flight_ends_on_the_ground() -> None:
    """12 m/s up from 25 m: 3,79 s and 25,18 m/s downwards; it turns after 1,22 s, 7,35 m higher."""
    assert (FIRST.lasting, FIRST.v, FIRST.last) == pytest.approx((3.79, -25.18, 0), abs=0.006)
    assert FIRST.turning == pytest.approx(12 / G)
    assert FIRST.position(12 / G) == pytest.approx(25 + 144 / 2 / G)
    assert free(25, -3, G).turning is None


def test_a_mirrored_motion_has_every_sign_turned() -> None:
    """With downwards positive position, velocity and acceleration change their signs, times stay."""
    other = BOUNCED.turned()
    for t in np.linspace(0, BOUNCED.end, 23):
        assert other.position(t) == pytest.approx(-BOUNCED.position(t))
        assert other.velocity(t) == pytest.approx(-BOUNCED.velocity(t))
    assert other.turned() == BOUNCED


@pytest.mark.parametrize(
    "phases",
    [
        (),
        (Phase(0, 0, 1, 0, 0),),
        (Phase(0, 0, 1, 0, 1), Phase(1.5, 1, 1, 0, 1)),
        (FIRST, Phase(FIRST.end, 3, 0, 0, 1)),
        (FIRST, Phase(FIRST.end, 0.01, 0, 0, 1)),
    ],
)
def test_phases_without_a_gap(phases: tuple[Phase, ...]) -> None:
    """No phase, one of no length, and a jump in time or place are refused."""
    with pytest.raises(ValueError, match="phase"):
        Motion(phases)


def curve(figure: Figure) -> np.ndarray:
    """The points of a graph's first line, in the units of its drawing."""
    return np.array(next(item.points for item in figure.items if isinstance(item, Curve)))


def test_the_position_graph_is_drawn_to_the_numbers() -> None:
    """Its drawn points lie on the motion: heights of the drawing are in proportion to the heights."""
    drawn = curve(position_graph(BOUNCED))
    times = drawn[:, 0] / drawn[-1, 0] * BOUNCED.end
    heights = np.array([BOUNCED.position(t) for t in times])
    assert np.allclose(drawn[:, 1] * heights.max(), heights * drawn[:, 1].max(), atol=1e-6)


def test_the_velocity_graph_has_parallel_lines_and_a_jump() -> None:
    """Both solid lines have the gradient −g in the units of the axes; the dashed one stands upright at the bounce."""
    figure = velocity_graph(BOUNCED)
    lines = [np.array(item.points) for item in figure.items if isinstance(item, Curve)]
    slopes = [(line[-1, 1] - line[0, 1]) / (line[-1, 0] - line[0, 0]) for line in lines[:2]]
    assert slopes[0] == pytest.approx(slopes[1])
    assert slopes[0] < 0
    assert lines[2][0, 0] == pytest.approx(lines[2][1, 0])
    assert [item.kind for item in figure.items if isinstance(item, Curve)] == ["graph", "graph", "extrapolation"]


def test_the_acceleration_graph_is_level_but_for_the_contact() -> None:
    """Level at −g and unbroken through the top; at the contact one spike to the other side of zero."""
    figure = acceleration_graph(BOUNCED)
    (said,) = re.findall(r"A line of straight pieces (.*?)\.", figure.description)
    assert said.count("stays level") == 2
    assert "−9,8" in said
    assert any("spike is cut off" in note for note in figure.notes)
    assert "stays level from (0; −9,8) to (3,79; −9,8)" in acceleration_graph(Motion((FIRST,))).description


def test_the_table_says_what_the_graphs_show() -> None:
    """A row for each key point; the bounce has two, before and after."""
    rows = table(BOUNCED, [12 / G])
    assert rows[0] == ("t (s)", "y (m)", "v (m·s⁻¹)", "a (m·s⁻²)")
    assert rows[1:] == (
        ("0", "25", "12", "−9,8"),
        ("1,22", "32,3", "0", "−9,8"),
        ("3,79", "0", "−25,2", "−9,8"),
        ("3,79", "0", "9,9", "−9,8"),
        ("5,81", "0", "−9,9", "−9,8"),
    )


def test_a_key_point_on_an_axis_keeps_its_name() -> None:
    """Where a guide would have no length the name stands at the dot."""
    figure = velocity_graph(Motion((FIRST,)), [Mark(0, "", "", "u"), Mark(12 / G, "t_{top}", "", "")])
    assert "u is marked at (0; 12)." in figure.description
    assert "t top is marked at (1,22; 0)." in figure.description
