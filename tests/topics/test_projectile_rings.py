"""Two rings that meet, and what is let go inside a lift: scipy's roots and motions, refusals."""

import pytest
from scipy import integrate, optimize

from tests.topics.test_projectile import G, refused, solve, value


@pytest.mark.parametrize(
    ("y_a", "u_a", "y_b", "t_0"), [(1.5, 14.0, 10.0, 0.3), (1.2, 11.0, 6.0, 0.45), (2.0, 12.0, 7.5, 0.2)]
)
def test_the_rings_meet_where_both_integrated_motions_are(y_a: float, u_a: float, y_b: float, t_0: float) -> None:
    """Brent's method on the two motions gives time, height and both velocities."""

    def fallen(start: float, u: float, t: float) -> tuple[float, float]:
        found = integrate.solve_ivp(lambda _, s: [s[1], -G], (0, t), [start, u], rtol=1e-11, atol=1e-12)
        return float(found.y[0][-1]), float(found.y[1][-1])

    expected = optimize.brentq(lambda t: fallen(y_a, u_a, t)[0] - fallen(y_b, 0, t - t_0)[0], t_0 + 1e-6, 3)
    values = solve("rings", y_A=f"{y_a} m", u_A=f"{u_a}", y_B=f"{y_b} m", t_0=f"{t_0} s").values
    assert values["t"] == pytest.approx(expected, rel=1e-6)
    assert (values["y"], values["v_A"]) == pytest.approx(fallen(y_a, u_a, expected), rel=1e-6, abs=1e-6)
    assert values["v_B"] == pytest.approx(fallen(y_b, 0, expected - t_0)[1], rel=1e-6)


@pytest.mark.parametrize(
    ("u_a", "y_b", "t_0", "way"), [("14", "10 m", "0,3 s", "upwards"), ("6", "3,5 m", "0,5 s", "downwards")]
)
def test_directions_follow_the_velocities(u_a: str, y_b: str, t_0: str, way: str) -> None:
    """A is met on its way up or on its way down; B always moves downwards."""
    found = solve("rings", y_A="1,5 m", u_A=u_a, y_B=y_b, t_0=t_0)
    assert [shown.direction.words for shown in found.answers if shown.direction] == [way, "downwards"]


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ({"y_A": "1,5 m", "u_A": "-14", "y_B": "10 m", "t_0": "0,3 s"}, "A is thrown upwards: give its speed"),
        ({"y_A": "1,5 m", "u_A": "4", "y_B": "30 m", "t_0": "0,3 s"}, "A has landed"),
        ({"y_A": "1,5 m", "u_A": "14", "y_B": "2 m", "t_0": "0,9 s"}, "They do not meet: the equation gives"),
        ({"y_A": "1,5 m", "u_A": "9,8", "y_B": "20 m", "t_0": "1 s"}, "They never meet"),
    ],
)
def test_rings_that_cannot_meet_are_refused(typed: dict[str, str], sentence: str) -> None:
    """Each with its reason."""
    assert sentence in refused("rings", **typed)


# --- inside a lift ---


@pytest.mark.parametrize("a", [1.5, -1.5, 0.0, -9.0])
def test_a_fall_inside_a_lift(a: float) -> None:
    """Body and floor are moved apart, step by step as seen from the ground, until the gap is nothing."""

    def gap(t: float, state: list[float]) -> float:
        return state[0] - state[2]

    gap.terminal = True  # type: ignore[attr-defined]
    start = [1.8, 2.0, 0.0, 2.0]  # both move upwards at 2 m/s: that changes nothing
    found = integrate.solve_ivp(
        lambda t, s: [s[1], -G, s[3], a], (0, 20), start, events=gap, rtol=1e-10, atol=1e-12, max_step=0.1
    )
    lands, state = float(found.t_events[0][0]), found.y_events[0][0]
    typed = {"h": "1,8 m", "a": f"{a}".replace(".", ",")}
    assert value("lift", "t", **typed) == pytest.approx(lands, rel=1e-6)
    assert value("lift", "v", **typed) == pytest.approx(state[3] - state[1], rel=1e-6)
    assert value("lift", "h", a=typed["a"], t=f"{lands:.12g} s") == pytest.approx(1.8, rel=1e-6)
    assert value("lift", "a", h="1,8 m", t=f"{lands:.12g} s") == pytest.approx(a, abs=1e-6)


@pytest.mark.parametrize("a", ["-9,8", "-12"])
def test_nothing_falls_in_a_lift_that_falls_as_fast(a: float) -> None:
    """At g downwards and beyond there is no fall to the floor."""
    assert "It does not reach the floor: a lift whose acceleration is g downwards" in refused(
        "lift", "t", h="1,8 m", a=a
    )
