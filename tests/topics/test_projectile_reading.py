"""Read from a graph: numpy's gradients and areas of the same points, the greatest height by a fine grid, refusals."""

import numpy as np
import pytest

from calc import topics
from calc.model.answers import WorkedAnswer
from calc.working.reading import read
from calc.working.working import work
from tests.topics.test_projectile import refused, solve


def graph_of(*points: tuple[float, float]) -> WorkedAnswer:
    """The worked answer for these (time, velocity) points."""
    topic, question = topics.find("projectile.reading")
    return work(topic, question, read(question, {"points": rows(*points)}))


def rows(*points: tuple[float, float]) -> list[dict[str, str]]:
    """The table's cells."""
    return [{"t": f"{t:g} s", "v": f"{v:g} m/s"} for t, v in points]


CASES = [
    ((0, 0), (2, 5), (5, 5), (9, -3)),
    ((0, 4), (3, -8)),
    ((1, -2), (2, -2), (4, 6), (7, 6), (8, 0), (9.5, -4)),
    ((0, 3), (4, 3)),
    ((0, -1), (2, 4), (3, -1), (6, -1)),
]


@pytest.mark.parametrize("points", CASES)
def test_gradients_and_areas(points: tuple[tuple[float, float], ...]) -> None:
    """Accelerations are the slopes of the pieces, the displacement is the integral of the piecewise line."""
    times, speeds = np.array(points).T
    values = graph_of(*points).values
    for n, slope in enumerate(np.diff(speeds) / np.diff(times), 1):
        assert values.get(f"a{n}", 0.0) == pytest.approx(slope)
    total = values["Deltay"] if len(points) > 2 else values["A1"]
    assert total == pytest.approx(np.trapezoid(speeds, times))


@pytest.mark.parametrize("points", CASES)
def test_the_greatest_height_is_that_of_the_integrated_motion(points: tuple[tuple[float, float], ...]) -> None:
    """On a fine grid the place is highest where the answer says; without a turn above the start none is asked."""
    times, speeds = np.array(points).T
    fine = np.linspace(times[0], times[-1], 200001)
    v = np.interp(fine, times, speeds)
    y = np.concatenate(([0.0], np.cumsum((v[1:] + v[:-1]) / 2 * np.diff(fine))))
    best = int(np.argmax(y))
    found = graph_of(*points).values
    inside = 0 < best < len(fine) - 1 and y[best] > 1e-9
    assert ("h" in found) == inside
    if inside:
        assert found["h"] == pytest.approx(y[best], abs=1e-4)
        assert found["t_h"] == pytest.approx(fine[best], abs=1e-3)


@pytest.mark.parametrize("points", CASES)
def test_the_other_positive_direction_reads_the_same_motion(points: tuple[tuple[float, float], ...]) -> None:
    """With every velocity and the positive direction turned: the same parts, sizes and directions in words, and the
    same greatest height."""
    first = graph_of(*points)
    topic, question = topics.find("projectile.reading")
    over = {"points": rows(*((t, -v) for t, v in points)), "positive": "down"}
    second = work(topic, question, read(question, over))
    assert [part.ask for part in first.parts] == [part.ask for part in second.parts]
    assert "Upwards is positive." in first.story
    assert "Downwards is positive." in second.story
    for one, other in zip(first.answers, second.answers, strict=True):
        assert (one.direction and one.direction.words) == (other.direction and other.direction.words)
        assert other.value == pytest.approx(-one.value if one.direction else one.value)


def test_every_direction_in_words_is_that_of_the_sign() -> None:
    """Upwards exactly for values above zero, no direction for zero."""
    for points in CASES:
        for shown in graph_of(*points).answers:
            if shown.name[0] in "aAD":
                way = shown.direction.words if shown.direction else ""
                assert way == ("upwards" if shown.value > 0 else "downwards" if shown.value < 0 else ""), shown.name


def test_the_distance_is_told_from_the_displacement() -> None:
    """Where pieces lie on both sides of the axis, adding the sizes is a known mistake."""
    _, question = topics.find("projectile.reading")
    plan = question.plan(read(question, {"points": rows((0, 4), (2, 4), (4, -6), (6, -6))}).data)
    (say,) = [one.said for step in plan.steps for one in step.mistakes if one.key == "distance"]
    assert say.startswith("You added the sizes. Δy is the displacement")


def test_times_must_go_on() -> None:
    """A point at or before the time of the one before it is refused at its own box."""
    sentence = refused("reading", points=rows((0, 1), (3, 2), (3, 4)))  # type: ignore[arg-type]
    assert "Each point comes after the one before it: type a later time." in sentence


# --- the whole questions, by plain sums ---


def test_the_ball_in_the_hall() -> None:
    """Velocities from the heights, the time of the fall, and both forces of the contact."""
    values = solve("court", h_1="5 m", h_2="3,2 m", m="600 g", Deltat="25 ms").values
    before, after = -((2 * 9.8 * 5) ** 0.5), (2 * 9.8 * 3.2) ** 0.5
    assert (values["v_1"], values["v_2"]) == pytest.approx((before, after))
    assert values["t"] == pytest.approx((2 * 5 / 9.8) ** 0.5)
    assert values["F_net"] == pytest.approx(0.6 * (after - before) / 0.025)
    assert values["N"] == pytest.approx(values["F_net"] + 0.6 * 9.8)
    assert "A bounce cannot add energy" in refused("court", h_1="3 m", h_2="3,2 m", m="600 g", Deltat="25 ms")


def test_a_ball_that_loses_nothing_is_not_asked_what_it_loses() -> None:
    """The part on the energy lost is there exactly if some is lost."""
    for rises, asked in (("3,2 m", True), ("5 m", False)):
        found = solve("court", h_1="5 m", h_2=rises, m="600 g", Deltat="25 ms")
        assert ("loss" in [part.key for part in found.parts]) == asked


def test_the_lamp_from_the_balloon() -> None:
    """Numpy's root for the ground, the top by half the flight back to the height, the balloon meanwhile."""
    values = solve("lamp", u="6", H="40 m").values
    lands = max(float(root.real) for root in np.roots([-4.9, 6, 40]))
    assert values["t"] == pytest.approx(lands)
    assert values["v"] == pytest.approx(6 - 9.8 * lands)
    assert values["h"] == pytest.approx(40 + 6 * values["t_top"] / 2)
    assert values["y_B"] == pytest.approx(40 + 6 * lands)
    assert "The balloon rises: give its speed, greater than zero." in refused("lamp", u="-6", H="40 m")


def test_no_later_part_of_the_lamp_tells_what_it_does_first() -> None:
    """No question of a part says that the lamp rises: that is for the second part to find."""
    found = solve("lamp", u="6", H="40 m")
    asks = " ".join(part.ask for part in found.parts)
    assert "ris" not in asks
    assert "upwards" not in asks.replace("Upwards is positive", "")
