"""Whole questions on gravitation: fields summed and bodies followed by another route, refusals, words and pictures."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import optimize
from scipy.integrate import solve_ivp

from calc import topics
from calc.figures.bodies import Ball
from calc.figures.pieces import Arrow
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.practice.drawing import DRAWS, draw
from calc.topics.gravitation.probe import curve, scene
from calc.topics.gravitation.rocks import forces
from calc.working.reading import Refusals, read
from calc.working.working import work

G = 6.67e-11


def solve(key: str, **typed: str) -> WorkedAnswer:
    """The worked answer for these data, the rest as in the example."""
    topic, question = topics.find(f"gravitation.{key}")
    return work(topic, question, read(question, {**question.example, **typed}, ""))


def refusal(key: str, **typed: str) -> tuple[str | None, str]:
    """Where data are refused, and why."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(key, **typed)
    one = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    return one.field, one.sentence


def asked(found: WorkedAnswer) -> str:
    """All that stands there before anything is answered."""
    return " ".join([found.story, *(part.ask for part in found.parts)])


# --- a probe above a moon ---


def fall_time(mass: float, start: float, drop: float) -> float:
    """How long a body let fall at a distance from the centre takes for the first metres, followed step by step."""

    def fallen(t: float, state: list[float]) -> float:
        return state[0] - (start - drop)

    fallen.terminal = True  # type: ignore[attr-defined]
    path = solve_ivp(
        lambda t, s: [s[1], -G * mass / s[0] ** 2], (0, 1e3), [start, 0.0], events=fallen, rtol=1e-12, atol=1e-9
    )
    return float(path.t_events[0][0])


@pytest.mark.parametrize(("radius", "g", "h", "later"), [(1.6e6, 1.5, 4e5, 0.5), (2.3e6, 2.1, 9e5, 2.0)])
def test_the_moon_found_lets_bodies_fall_as_told(radius: float, g: float, h: float, later: float) -> None:
    """A fall of 10 m, followed step by step, gives back g at the surface, at the probe and at the last height."""
    found = solve("probe", R=f"{radius!r} m", g=f"{g} m/s^2", m="350 kg", h=f"{h!r} m", g_2=f"{later} m/s^2").values
    for place, expected in ((0.0, g), (h, found["g_h"]), (found["h_2"], later)):
        assert 20 / fall_time(found["M"], radius + place, 10) ** 2 == pytest.approx(expected, rel=1e-4)
    assert found["F"] == pytest.approx(350 * found["g_h"])
    assert found["F"] == pytest.approx(350 * g * (radius / (radius + h)) ** 2)


@pytest.mark.parametrize("g_2", ["1,5 m/s^2", "1,51 m/s^2", "9,8 m/s^2"])
def test_nowhere_above_is_g_as_large_as_at_the_surface(g_2: str) -> None:
    """Equal or more is refused beside its box; just less is a small height."""
    field, sentence = refusal("probe", g_2=g_2)
    assert field == "g_2"
    assert sentence.startswith("More than at the surface: check. g becomes smaller")
    assert 0 < solve("probe", g_2="1,49 m/s^2").values["h_2"] < 1e4


def test_a_probe_below_the_surface_is_refused() -> None:
    """A height is measured upwards from the surface."""
    assert refusal("probe", h="-5 km")[0] == "h"
    assert refusal("probe", h="-5 km")[1].startswith("Only valid at or above the surface")


def test_nothing_asked_about_the_probe_tells_its_answers() -> None:
    """Neither smaller nor the same, nor the shape of the curve, before the model answers say so."""
    found = solve("probe")
    for word in ("smaller", "same", "curve", "falls", "less", "not zero", "weightless"):
        assert word not in asked(found).lower(), word


def test_the_curve_of_g_is_an_inverse_square_from_the_surface() -> None:
    """Each drawn point lies at one over the square of its distance, the first at the surface."""
    drawn = curve({})
    (line,) = [item for item in drawn.items if type(item).__name__ == "Curve"]
    xs, ys = np.array(line.points).T
    assert ys * xs**2 == pytest.approx(ys[0] * xs[0] ** 2)
    assert xs[0] > 0
    assert "begins where r is R" in drawn.description


def test_the_force_on_the_probe_points_at_the_moon() -> None:
    """The arrow starts at the probe, outside the moon, and points to its centre; the moon is called a moon."""
    drawn = scene({})
    (moon,) = [item for item in drawn.items if isinstance(item, Ball)]
    (arrow,) = [item for item in drawn.items if isinstance(item, Arrow)]
    assert arrow.start[0] > arrow.end[0] > moon.centre[0]
    assert arrow.start[0] > moon.radius
    assert "planet" not in drawn.description


# --- two rocks ---


@pytest.mark.parametrize(("m1", "m2", "d"), [(8e15, 2e15, 6e4), (3e15, 7e15, 9e4), (4e15, 4e15, 5e4)])
def test_the_craft_is_in_balance_where_the_summed_pulls_cancel(m1: float, m2: float, d: float) -> None:
    """A root of the sum of both pulls, and the rocks followed for a while, give what is found."""
    found = solve("rocks", m1=f"{m1!r} kg", m2=f"{m2!r} kg", d=f"{d!r} m").values

    def net(x: float) -> float:
        return m2 / (d - x) ** 2 - m1 / x**2

    assert found["r_1"] == pytest.approx(optimize.brentq(net, d * 1e-3, d * (1 - 1e-3), xtol=1e-9))
    assert net(found["r_1"] - d / 100) < 0  # a nudge towards A and A wins

    def change(_: float, s: list[float]) -> list[float]:
        gap = s[1] - s[0]
        return [s[2], s[3], G * m2 / gap**2, -G * m1 / gap**2]

    speed = solve_ivp(change, (0, 1.0), [0.0, d, 0.0, 0.0], rtol=1e-10).y[:, -1]
    assert found["a_B"] == pytest.approx(-speed[3], rel=1e-6)
    assert found["F"] == pytest.approx(m1 * speed[2], rel=1e-6)  # the force of B on A is as large


@pytest.mark.parametrize(("a", "b", "c"), [(3, 6, 3), (2, 2, 4), (5, 1, 2)])
def test_other_rocks_pull_by_the_factor(a: int, b: int, c: int) -> None:
    """The force worked out anew for the other rocks, over that of the first two."""
    first = solve("rocks", a=f"{a}", b=f"{b}", c=f"{c}").values
    other = solve("rocks", m1=f"{8e15 * a!r} kg", m2=f"{2e15 * b!r} kg", d=f"{6e4 * c!r} m").values
    assert other["F"] / first["F"] == pytest.approx(first["f"])


@pytest.mark.parametrize(
    ("typed", "field", "begins"),
    [
        ({"a": "0"}, "a", "A factor is greater than zero"),
        ({"c": "-2"}, "c", "A factor is greater than zero"),
        ({"m1": "0 kg"}, "m1", "Mass must be greater than zero."),
        ({"d": "0 m"}, "d", "Distance must be greater than zero."),
    ],
)
def test_what_two_rocks_cannot_be_is_refused(typed: dict[str, str], field: str, begins: str) -> None:
    """Each refusal stands at its box with its reason."""
    where, sentence = refusal("rocks", **typed)
    assert where == field
    assert sentence.startswith(begins)


def test_nothing_asked_about_the_rocks_tells_which_is_pulled_harder_or_where_the_craft_is() -> None:
    """The same words for either rock the heavier, and no word of equal forces or of coming back before."""
    one, other = (solve("rocks", m1=m1, m2=m2) for m1, m2 in (("8e15 kg", "2e15 kg"), ("2e15 kg", "8e15 kg")))
    assert [part.ask for part in one.parts] == [part.ask for part in other.parts]
    for word in ("equal", "same", "neither", "third law", "closer", "middle"):
        assert word not in asked(one).lower(), word


def test_the_craft_is_drawn_between_two_equal_pulls() -> None:
    """One arrow to each side, equally long: the pull of A to the left, where the sketch has A."""
    (a, b) = (
        next(item for item in forces({}).items if isinstance(item, Arrow) and item.label == name)
        for name in ("F_A", "F_B")
    )
    assert a.start[0] > a.end[0]
    assert a.start[0] - a.end[0] == pytest.approx(b.end[0] - b.start[0])
    assert a.start[1] == a.end[1] == b.start[1] == b.end[1]
    whole = solve("rocks").figure
    assert whole is not None
    assert whole.description.startswith("From left to right: A and B")


def test_practice_asks_for_factors_that_need_no_calculator() -> None:
    """One of the two forces is a whole number of times the other, and they differ."""
    topic, question = topics.find("gravitation.rocks")
    for level in (1, 2, 3):
        for seed in range(8):
            typed = draw(topic, question, seed, level, DRAWS).inputs
            a, b, c = (int(str(typed[name])) for name in ("a", "b", "c"))
            assert a * b != c * c
            assert (a * b) % (c * c) == 0 or (c * c) % (a * b) == 0
