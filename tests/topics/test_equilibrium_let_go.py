"""A charged sphere on a thread that is held and let go: scipy's swing and numpy's vectors beside our lines."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from calc.model.answers import PartShown, WorkedAnswer
from calc.model.questions import Refusal
from calc.practice.drawing import draw
from calc.topics import find
from calc.topics.shared.connected import on_thread, outcome
from calc.working.reading import Refusals, read
from calc.working.working import work

K, G = 9e9, 9.8
BESIDE, FIELD = "thread-beside-charge", "thread-in-field"


def solve(key: str, asked: str, **typed: str) -> WorkedAnswer:
    """The worked answer of ``equilibrium.key``."""
    topic, question = find(f"equilibrium.{key}")
    return work(topic, question, read(question, typed, asked))


def value(worked: WorkedAnswer, key: str = "find") -> float:
    """The value that a part ends with."""
    return part(worked, key).steps[-1].value


def part(worked: WorkedAnswer, key: str) -> PartShown:
    """One part of a worked answer."""
    return next(shown for shown in worked.parts if shown.key == key)


def refused(key: str, asked: str, **typed: str) -> Refusal:
    """The one refusal of these data."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(key, asked, **typed)
    one = caught.value
    return one if isinstance(one, Refusal) else one.refusals[0]


def swing(m: float, alpha: float, push: float, length: float = 0.5) -> tuple[float, float]:
    """Acceleration outwards and tension at the first instant, from positions that scipy integrates.

    The thread is a stiff spring on the sphere, its stretch that of rest along the thread: no formula of ours is in it.
    """
    stiff = 1e5 * m * G / length
    way, across = np.array([math.sin(alpha), -math.cos(alpha)]), np.array([math.cos(alpha), math.sin(alpha)])
    forces = np.array([push, -m * G])
    stretch = float(forces @ way) / stiff
    start = (length + stretch) * way

    def rate(_: float, state: np.ndarray) -> np.ndarray:
        place, velocity = state[:2], state[2:]
        long = float(np.hypot(*place))
        pull = -stiff * (long - length) * place / long
        return np.concatenate([velocity, (forces + pull) / m])

    time = 1e-3
    ran = solve_ivp(rate, (0.0, time), [*start, 0.0, 0.0], rtol=1e-11, atol=1e-15, max_step=1e-5)
    return float((ran.y[:2, -1] - start) @ across) * 2 / time**2, stiff * stretch


@pytest.mark.parametrize("seed", range(12))
def test_the_start_is_that_of_a_swing_worked_numerically(seed: int) -> None:
    """Acceleration and tension agree with a sphere on a stiff thread, out and back."""
    rng = random.Random(seed)
    m, alpha, push = rng.uniform(5e-4, 5e-3), math.radians(rng.uniform(5, 70)), 0.0
    push = m * G * math.tan(alpha) * rng.choice((0.4, 0.8, 1.3, 2.5))
    a, tension = swing(m, alpha, push)
    worked = solve(BESIDE, "a_0,T", m=f"{m!r} kg", alpha=f"{math.degrees(alpha)!r}°", F_E=f"{push!r} N", acting="repel")
    assert value(worked, "find-a_0") == pytest.approx(a, rel=2e-3)
    assert value(worked, "find-T") == pytest.approx(tension, rel=1e-9)


@pytest.mark.parametrize("seed", range(20))
def test_any_quantity_follows_from_the_start(seed: int) -> None:
    """Vectors of numpy give the start; from it each quantity is found again."""
    rng = random.Random(seed)
    m, alpha, r = rng.uniform(5e-4, 5e-3), math.radians(rng.uniform(5, 60)), rng.uniform(0.05, 0.2)
    q1, q2 = rng.uniform(10e-9, 90e-9), rng.uniform(10e-9, 90e-9)
    push = K * q1 * q2 / r**2
    along = np.array([math.cos(alpha), math.sin(alpha)])
    a = float(np.array([push, -m * G]) @ along) / m
    typed = {
        "m": f"{m!r} kg",
        "alpha": f"{math.degrees(alpha)!r}°",
        "r": f"{r!r} m",
        "Q1": f"{q1!r} C",
        "Q2": f"{-q2!r} C",
        "a_0": f"{a!r} m/s^2",
    }
    for asked, right in {"a_0": a, "m": m, "r": r, "Q1": q1, "Q2": q2, "F_E": push}.items():
        given = {name: text for name, text in typed.items() if name != asked}
        if asked == "F_E":
            given = {name: typed[name] for name in ("m", "alpha", "a_0")}
        worked = solve(BESIDE, asked, **given, acting="attract")
        assert abs(value(worked)) == pytest.approx(abs(right), rel=1e-6), asked


@pytest.mark.parametrize(
    ("alpha", "way", "decided"),
    [
        ("10°", "outwards along the arc", "It swings outwards, away from the vertical."),
        ("25°", "back along the arc, towards the vertical", "It swings back towards the vertical."),
    ],
)
def test_which_way_it_swings(alpha: str, way: str, decided: str) -> None:
    """It hangs still at 17,0° here (tan α = QV/(dmg)): held closer in it goes out, further out it comes back."""
    worked = solve(FIELD, "a_0", m="0,2 g", Q="+8 nC", V="6 kV", d="8 cm", alpha=alpha)
    direction = part(worked, "find").steps[-1].direction
    assert direction is not None
    assert direction.words == way
    said = [point.words for point in part(worked, "decide").points]
    assert said[1] == decided
    larger = "F_E" if way.startswith("out") else "the weight"
    assert said[0].endswith(f"that of {larger} is larger.")


def test_where_it_would_hang_still_it_stays() -> None:
    """At the angle of rest the components are equal, and the start is zero."""
    rest = math.degrees(math.atan(6e-4 / (2e-4 * G)))
    worked = solve(FIELD, "a_0", m="0,2 g", Q="+8 nC", V="6 kV", d="8 cm", alpha=f"{rest!r}°")
    assert [point.words for point in part(worked, "decide").points][1] == (
        "The net force is zero: it stays where it is let go."
    )


@pytest.mark.parametrize("key", [BESIDE, FIELD])
def test_nothing_says_that_it_hangs_at_rest(key: str) -> None:
    """The story of each wording holds the sphere and lets it go."""
    typed = {
        BESIDE: {"Q1": "30 nC", "Q2": "45 nC", "r": "8 cm"},
        FIELD: {"Q": "8 nC", "E": "75 kV/m"},
    }[key]
    topic, question = find(f"equilibrium.{key}")
    for variant in range(12):
        data = read(question, {"m": "1 g", "alpha": "20°", **typed}, "a_0", variant=variant)
        story = work(topic, question, data).story
        assert "let go from rest" in story
        assert "at rest on" not in story
        assert "hangs still" not in story
        assert "hangs at rest" not in story
        assert "hangs there" not in story


def test_the_cut_is_another_question() -> None:
    """The sphere is either let go or cut off; the angle cannot be asked; a thread that is pulled is never at zero."""
    data = {"m": "1 g", "Q1": "30 nC", "Q2": "45 nC", "r": "8 cm"}
    assert refused(BESIDE, "a_0", alpha="20°", a="11 m/s^2", **data).field == "a"
    assert refused(BESIDE, "a_0,a", alpha="20°", **data).sentence.endswith(
        "Ask for the acceleration when the thread is cut alone."
    )
    assert refused(BESIDE, "alpha", a_0="1 m/s^2", **data).sentence.startswith("The angle cannot be asked")
    assert refused(BESIDE, "a_0", alpha="20°", T="0 N", **data).field == "T"


def test_it_cannot_start_back_faster_than_without_charge() -> None:
    """g sin 20° is 3,35 m·s⁻²: a start of 4 m·s⁻² back has no charge, 3 m·s⁻² has one."""
    data = {"m": "1 g", "Q2": "45 nC", "r": "8 cm", "alpha": "20°", "acting": "repel"}
    assert "cannot start back with more than g sin α" in refused(BESIDE, "Q1", a_0="-4 m/s^2", **data).sentence
    assert value(solve(BESIDE, "Q1", a_0="-3 m/s^2", **data)) > 0


@pytest.mark.parametrize("seed", range(10))
def test_a_tight_thread_is_a_smooth_slope(seed: int) -> None:
    """The core's acceleration and "normal force" are the components of weight and push that numpy gives."""
    rng = random.Random(seed)
    m, lean, push = rng.uniform(0.1, 5), rng.uniform(0.05, 1.4), rng.uniform(0, 60)
    forces, along = np.array([push, -m * G]), np.array([math.cos(lean), math.sin(lean)])
    away = np.array([math.sin(lean), -math.cos(lean)])
    found = outcome([on_thread(m, lean, push)], g=G)
    assert found.bodies[0].a == pytest.approx(float(forces @ along) / m)
    assert found.bodies[0].normal == pytest.approx(float(forces @ away))
    pulled_up = outcome([on_thread(m, lean, -2 * m * G)], g=G)
    assert pulled_up.state == ("lifts off" if 2 * math.tan(lean) > 1 else "moves")


@pytest.mark.parametrize("key", [BESIDE, FIELD])
def test_practice_lets_go_on_both_sides_of_rest(key: str) -> None:
    """From the sixth rule of drawing on; no earlier one asks for it."""
    topic, question = find(f"equilibrium.{key}")
    starts = []
    for seed in range(1, 70):
        assert draw(topic, question, seed, 3, 5).find != "a_0"
        drawn = draw(topic, question, seed, 3, 6)
        if drawn.find == "a_0":
            worked = work(topic, question, read(question, drawn.inputs, "a_0", variant=drawn.variant))
            starts.append(value(worked))
    assert min(starts) < -1
    assert max(starts) > 1
