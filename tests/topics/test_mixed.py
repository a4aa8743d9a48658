"""Questions across chapters: the motion followed in small steps, refusals at their edge, words and pictures."""

from __future__ import annotations

import pytest
from scipy.integrate import solve_ivp

from calc.figures.pieces import Arrow
from calc.topics.mixed.charged import scene
from tests.topics.asking import Chapter

K = 9e9


ASKED = Chapter("mixed")
solve, refusal = ASKED.whole, ASKED.refusal


# --- two charged gliders ---


def apart(m1: float, m2: float, q1: float, q2: float, r: float, seconds: float) -> tuple[float, float]:
    """The velocities of both, to the right positive, so many seconds after they were let go."""

    def change(_: float, state: list[float]) -> list[float]:
        x1, x2, v1, v2 = state
        push = K * q1 * q2 / (x2 - x1) ** 2
        return [v1, v2, -push / m1, push / m2]

    end = solve_ivp(change, (0, seconds), [0.0, r, 0.0, 0.0], rtol=1e-10, atol=1e-12).y[:, -1]
    return float(end[2]), float(end[3])


@pytest.mark.parametrize("signs", [1, -1])
@pytest.mark.parametrize(("m1", "m2"), [(0.2, 0.3), (0.3, 0.1)])
def test_charged_gliders_move_as_coulombs_law_drives_them(m1: float, m2: float, signs: int) -> None:
    """The velocity of the second is that of the motion followed step by step; so is the acceleration at the start."""
    q1, q2, r = 6e-7 * signs, 4e-7 * signs, 0.1
    v1, v2 = apart(m1, m2, q1, q2, r, 0.3)
    found = solve("charged", m1=f"{m1} kg", m2=f"{m2} kg", Q1=f"{q1!r} C", Q2=f"{q2!r} C", r=f"{r} m", v1=f"{v1!r} m/s")
    assert found.values["v2"] == pytest.approx(v2, rel=1e-6)
    started = apart(m1, m2, q1, q2, r, 1e-4)
    assert -found.values["a1"] == pytest.approx(started[0] / 1e-4, rel=1e-4)
    directions = {part.key: part.answers[0].direction for part in found.parts if part.answers}
    assert directions["acceleration"].words == "to the left"
    assert directions["velocity"].words == "to the right"


def test_charged_gliders_get_no_more_than_the_charges_give() -> None:
    """However long they are followed, the first stays below the speed at which it is refused."""
    limit = (2 * K * 6e-7 * 4e-7 / 0.1 / (0.2 * (1 + 0.2 / 0.3))) ** 0.5
    assert 0.97 * limit < -apart(0.2, 0.3, 6e-7, 4e-7, 0.1, 60)[0] < limit
    data = {"m1": "200 g", "m2": "300 g", "Q1": "+600 nC", "Q2": "+400 nC", "r": "10 cm"}
    solve("charged", **data, v1=f"-{0.999 * limit!r} m/s")
    field, sentence = refusal("charged", **data, v1=f"-{1.001 * limit!r} m/s")
    assert field == "v1"
    assert sentence.startswith("The charges cannot give so much")


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"Q2": "-400 nC"}, "Q2"),
        ({"Q2": "0 nC"}, "Q2"),
        ({"Q1": "0 nC"}, "Q1"),
        ({"v1": "0,2 m/s"}, "v1"),
        ({"v1": "0 m/s"}, "v1"),
    ],
)
def test_what_two_charged_gliders_cannot_do_is_refused(typed: dict[str, str], field: str) -> None:
    """Unlike charges, no charge, and a velocity towards each other, each at its box and with a remedy."""
    where, sentence = refusal("charged", **typed)
    assert where == field
    assert "Give both" in sentence or "minus sign" in sentence


def test_charged_gliders_are_drawn_moving_apart() -> None:
    """At rest before; after, the left one to the left and the right one to the right."""
    arrows = [
        item for item in scene({"v1": -0.2, "v2": 0.13}).items if isinstance(item, Arrow) and item.kind == "velocity"
    ]
    assert [arrow.end[0] > arrow.start[0] for arrow in sorted(arrows, key=lambda one: one.start[0])] == [False, True]
