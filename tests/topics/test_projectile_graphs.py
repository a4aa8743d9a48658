"""The three graphs as a question: numbers by scipy, criteria that follow the data, both positive directions."""

import pytest
from scipy import integrate

from calc.model.answers import WorkedAnswer
from tests.topics.test_projectile import G, refused, solve
from tests.topics.test_projectile_height import fall


def words(found: WorkedAnswer, key: str) -> list[str]:
    """What a part is marked by."""
    (part,) = [one for one in found.parts if one.key == key]
    return [point.words.replace("\N{NO-BREAK SPACE}", " ") for point in part.points]


@pytest.mark.parametrize(("u", "high"), [(8.0, 12.0), (0.0, 12.0), (-5.0, 20.0)])
def test_the_key_points_are_those_of_the_integrated_fall(u: float, high: float) -> None:
    """Time and velocity at the ground, top and time to it, and the rebound."""
    lands, v, top, _ = fall(u, high)
    values = solve("graphs", u=f"{u:g}", H=f"{high} m", h_2="5 m", positive="up").values
    assert (values["t"], values["v"]) == pytest.approx((lands, v), rel=1e-6)
    assert ("h" in values) == (u > 0)
    if u > 0:
        assert values["h"] == pytest.approx(top, rel=1e-3)
    up = integrate.solve_ivp(lambda t, s: [s[1], -G], (0, values["t_2"]), [0, values["v_2"]], rtol=1e-10, atol=1e-12)
    assert up.y[0][-1] == pytest.approx(0, abs=1e-6)
    assert max(up.y[0]) <= 5 + 1e-6


def test_criteria_follow_the_data() -> None:
    """Only a body that goes up crosses zero and turns; only one that bounces jumps and has a parallel line."""
    full = solve("graphs", u="8", H="12 m", h_2="5 m", positive="up")
    assert words(full, "velocity-graph") == [
        "Axes labelled v (m·s⁻¹) and t (s), with the positive direction stated.",
        "A straight line from 8,00 m·s⁻¹ at the start to −17,30 m·s⁻¹ at 2,58 s.",
        "It crosses the time axis at 0,82 s.",
        "At 2,58 s it jumps to 9,90 m·s⁻¹.",
        "The line after the bounce is parallel to the first.",
    ]
    dropped = solve("graphs", u="0", H="12 m", positive="up")
    assert not any("crosses" in one or "jumps" in one for one in words(dropped, "velocity-graph"))
    assert not any("turning point" in one for one in words(dropped, "position-graph"))
    assert len(words(dropped, "acceleration-graph")) == 1


def test_the_other_positive_direction_mirrors_every_graph() -> None:
    """Every value on an upright axis changes its sign, every time stays, every kind of line stays."""
    up = solve("graphs", u="8", H="12 m", h_2="5 m", positive="up")
    down = solve("graphs", u="-8", H="12 m", h_2="5 m", positive="down")
    for key in ("velocity-graph", "position-graph", "acceleration-graph"):
        tables = [next(p.figure for p in found.parts if p.key == key).table for found in (up, down)]  # type: ignore[union-attr]
        for one, other in zip(tables[0][1:], tables[1][1:], strict=True):
            assert one[0] == other[0]
            assert [cell.lstrip("−") for cell in one] == [cell.lstrip("−") for cell in other]
            assert all(a == b == "0" or (a[0] == "−") != (b[0] == "−") for a, b in zip(one[1:], other[1:], strict=True))
    assert [part.key for part in up.parts] == [part.key for part in down.parts]
    said = [[shown.direction.words for shown in found.answers if shown.direction] for found in (up, down)]
    assert said[0] == said[1] == ["downwards", "upwards"]


def test_a_bounce_that_would_add_energy_is_refused() -> None:
    """From 12 m at 8 m/s it can rise to 15,27 m at most."""
    assert "A bounce cannot add energy" in refused("graphs", u="8", H="12 m", h_2="15,4 m", positive="up")
    assert solve("graphs", u="8", H="12 m", h_2="15,2 m", positive="up").values["v_2"] < 17.3
