"""Whole questions on momentum: motions followed in small steps, refusals at their edge, words and pictures."""

from __future__ import annotations

import json

import numpy as np
import pytest
from scipy import optimize
from scipy.integrate import quad, solve_ivp

from calc import desk
from calc.figures.pieces import Arrow
from calc.model.answers import WorkedAnswer
from calc.topics.momentum.canister import scene as canister_scene
from calc.topics.momentum.pulse import pulse
from tests.topics.asking import Chapter

ASKED = Chapter("momentum")
solve, refusal = ASKED.whole, ASKED.refusal


def directions(found: WorkedAnswer) -> dict[str, str]:
    """The direction of the answer of each part that has one."""
    return {part.key: part.answer.direction.words for part in found.parts if part.answer and part.answer.direction}


def practised(key: str, seed: int, level: int) -> dict:
    """What a page gets of a practice question."""
    request = {
        "operation": "practice",
        "data": {"question": f"momentum.{key}", "seed": seed, "level": level, "draw": 4},
    }
    return json.loads(desk.answer(json.dumps(request)))["data"]


# --- a canister that bursts ---

BURSTS = [(2.0, 6.0, 1.5, -6.0), (3.0, 1.5, 0.0, -4.0), (6.0, 2.0, -1.0, -3.0), (1.0, 10.0, 2.0, 0.5)]


@pytest.mark.parametrize(("m1", "m2", "u", "v1"), BURSTS)
def test_a_burst_drives_the_parts_as_a_force_between_them_does(m1: float, m2: float, u: float, v1: float) -> None:
    """A force that swells and dies away, turned up until the first part has its velocity, gives all the rest."""
    lasting, apart = 0.02, 17.0

    def motion(peak: float, until: float) -> np.ndarray:
        def change(t: float, state: list[float]) -> list[float]:
            push = peak * np.sin(np.pi * t / lasting) ** 2 if t < lasting else 0.0
            return [state[2], state[3], -push / m1, push / m2]

        return solve_ivp(change, (0, until), [0.0, 0.0, u, u], rtol=1e-10, atol=1e-12, max_step=lasting / 40).y

    peak = optimize.brentq(lambda push: motion(push, lasting)[2, -1] - v1, 0.0, 1e5)
    ended = motion(peak, lasting)[:, -1]
    found = solve(
        "canister", m1=f"{m1}", m2=f"{m2}", u=f"{u}", v1=f"{v1}", Deltat=f"{lasting} s", d=f"{apart} m"
    ).values
    assert found["v2"] == pytest.approx(ended[3], rel=1e-6, abs=1e-9)
    before, after = (sum(m * v**2 for m, v in zip((m1, m2), pair, strict=True)) / 2 for pair in ((u, u), ended[2:]))
    assert found["DeltaE_k"] == pytest.approx(after - before, rel=1e-6)
    average, _ = quad(lambda t: peak * np.sin(np.pi * t / lasting) ** 2 / lasting, 0, lasting)
    assert found["F_net"] == pytest.approx(-average, rel=1e-6)
    places = [0.0 + v * found["t"] for v in ended[2:]]
    assert places[1] - places[0] == pytest.approx(apart, rel=1e-6)


@pytest.mark.parametrize(
    ("u", "v1", "second"),
    [
        ("1,5", "-6", "to the right"),
        ("-1", "-2", "to the left"),
        ("-2", "-9", "to the right"),
        ("0", "-4", "to the right"),
    ],
)
def test_the_force_on_the_first_part_always_points_left(u: str, v1: str, second: str) -> None:
    """It is the second part that pushes it, from the right; the second part may go either way."""
    told = directions(solve("canister", u=u, v1=v1))
    assert told["force"] == "to the left"
    assert told["velocity"] == second


@pytest.mark.parametrize("v1", ["1,5 m/s", "2 m/s", "1,6 m/s"])
def test_a_burst_drives_no_part_through_the_other(v1: str) -> None:
    """At the velocity before, and above it, the first part is refused; just below it is not."""
    field, sentence = refusal("canister", v1=v1)
    assert field == "v1"
    assert sentence.startswith("They would pass through each other: the burst drives the first part")
    solve("canister", v1="1,45 m/s")


def test_the_words_of_the_canister_do_not_tell_where_its_second_part_goes() -> None:
    """The same words and parts, whether the second goes left or right; practice shows no arrow for it."""
    right, left = (solve("canister", u="-2", v1=v1) for v1 in ("-9", "-3"))
    assert right.values["v2"] > 0 > left.values["v2"]
    assert right.story.replace("\u00a0", " ").replace("at 9", "at 3") == left.story.replace("\u00a0", " ")
    assert [part.ask for part in right.parts] == [part.ask for part in left.parts]
    assert [[point.words for point in part.points] for part in right.parts] == [
        [point.words for point in part.points] for part in left.parts
    ]
    for seed in range(4):
        assert "2 moves" not in practised("canister", seed, 1)["figure"].partition("After")[2]


@pytest.mark.parametrize(("u", "v1", "v2"), [(1.5, -6.0, 4.0), (-2.0, -3.0, -1.0), (2.0, 0.5, 4.0)])
def test_the_canister_is_drawn_as_it_moves(u: float, v1: float, v2: float) -> None:
    """Each arrow points the way of its velocity, one for both before."""
    drawn = canister_scene({"u": u, "v1": v1, "v2": v2})
    arrows = {item.label: item.end[0] > item.start[0] for item in drawn.items if isinstance(item, Arrow)}
    assert {name: arrows[name] for name in ("u", "v_1", "v_2")} == {"u": u > 0, "v_1": v1 > 0, "v_2": v2 > 0}


# --- a bat and a ball ---

HITS = [(0.14, 15.0, -25.0, 0.008, 0.02), (0.06, -20.0, 12.0, 0.005, 0.006)]


@pytest.mark.parametrize(("m", "u", "v", "lasting", "longer"), HITS)
def test_a_ball_is_hit_as_the_triangle_drives_it(m: float, u: float, v: float, lasting: float, longer: float) -> None:
    """Followed through a force that rises and falls evenly to the peak found, the ball leaves as told."""
    found = solve("bat", m=f"{m} kg", u=f"{u}", v=f"{v}", Deltat=f"{lasting} s", Deltat_2=f"{longer} s").values

    def push(t: float) -> float:
        return found["F_max"] * (1 - abs(2 * t / lasting - 1))

    ended = solve_ivp(lambda t, state: [push(t) / m], (0, lasting), [u], rtol=1e-9, max_step=lasting / 50).y[0, -1]
    assert ended == pytest.approx(v, rel=1e-6)
    area, _ = quad(push, 0, lasting, points=[lasting / 2])
    assert found["Deltap"] == pytest.approx(area)
    assert found["F_net"] == pytest.approx(area / lasting)
    assert found["F_2"] == pytest.approx(area / longer)


@pytest.mark.parametrize(("u", "v", "way", "side"), [("15", "-25", "left", "below"), ("-15", "25", "right", "above")])
def test_impulse_forces_and_graph_lie_on_one_side(u: str, v: str, way: str, side: str) -> None:
    """All point the way the ball leaves, and the graph is drawn and told on that side of the axis."""
    found = solve("bat", u=u, v=v)
    assert set(directions(found).values()) == {f"to the {way}"}
    assert len(directions(found)) == 4
    parts = {part.key: part for part in found.parts}
    assert side in parts["graph"].points[1].words
    assert ({"above": "below", "below": "above"}[side]) not in " ".join(one.words for one in parts["graph"].points)
    assert (found.values["F_max"] > 0) == (side == "above")
    assert parts["graph"].figure is not None


def test_the_graph_of_the_hit_peaks_half_way() -> None:
    """From zero to the peak at half the time and back, in milliseconds."""
    for peak, first, last in ((-1400.0, "falls", "rises"), (1400.0, "rises", "falls")):
        told = pulse({"Deltat": 0.008, "F_max": peak}).description
        assert f"{first} from (0; 0) to (4; " in told
        assert f"then {last} to (8; 0)" in told


def test_no_part_before_tells_that_the_sleeve_makes_the_force_smaller() -> None:
    """Neither story nor a question says smaller or larger; the model answer does."""
    found = solve("bat")
    asked = " ".join([found.story, *(part.ask for part in found.parts)])
    assert "smaller" not in asked
    assert "larger" not in asked
    (sleeve,) = [part for part in found.parts if part.key == "sleeve"]
    assert "smaller" in sleeve.points[-1].words


@pytest.mark.parametrize(
    ("typed", "field", "begins"),
    [
        ({"v": "25"}, "v", "The bat hits the ball back"),
        ({"u": "0"}, "v", "The bat hits the ball back"),
        ({"v": "0"}, "v", "The bat hits the ball back"),
        ({"Deltat_2": "8 ms"}, "Deltat_2", "With the sleeve the contact lasts longer."),
        ({"Deltat_2": "7,9 ms"}, "Deltat_2", "With the sleeve the contact lasts longer."),
    ],
)
def test_what_a_bat_does_not_do_is_refused(typed: dict[str, str], field: str, begins: str) -> None:
    """A ball that goes on or rests, and a sleeve that shortens the contact; just longer is allowed."""
    where, sentence = refusal("bat", **typed)
    assert where == field
    assert sentence.startswith(begins)
    solve("bat", Deltat_2="8,1 ms")
