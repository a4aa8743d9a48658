"""What a chain of bodies does, against other routes.

numpy solves the equations of motion written as one matrix, scipy's linear programming looks for frictions and tensions
that hold bodies at rest, and its integrator slides one to a stop.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from math import cos, pi, radians, sin, tan

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import linprog

from calc.topics.shared.connected import HANGING, Body, Kind, Link, Motion, Pull, outcome, slides_to_rest

G = 9.8


def chain(chance: random.Random, count: int) -> tuple[list[Body], list[Kind]]:
    """Any bodies on any surfaces, in any links."""
    bodies = []
    for _ in range(count):
        rise = chance.choice((0.0, radians(chance.randint(-60, 60)), HANGING, -HANGING))
        pulls = (Pull(chance.uniform(0, 25), chance.uniform(-pi, pi)),) if chance.random() < 0.4 else ()
        mu_k = chance.choice((0.0, chance.uniform(0, 0.8)))
        mu_s = mu_k + chance.uniform(0, 0.3) * (mu_k > 0)
        along = chance.choice((0.0, chance.uniform(-9, 9)))
        bodies.append(Body(chance.uniform(0.5, 6), rise, mu_s, mu_k, () if abs(rise) == HANGING else pulls, along))
    return bodies, [chance.choice(("string", "contact")) for _ in range(count - 1)]


def by_hand(body: Body) -> tuple[float, float]:
    """D and N from the components along x and y of each force, turned by the slope."""
    along = np.array([cos(body.rise), sin(body.rise)])
    away = np.array([-sin(body.rise), cos(body.rise)])
    force = np.array([0.0, -body.mass * G]) + along * body.along + away * body.off
    for pull in body.pulls:
        force += pull.size * (cos(pull.angle) * along + sin(pull.angle) * away)
    return float(force @ along), 0.0 if abs(body.rise) == HANGING else float(-force @ away)


def can_rest(bodies: list[Body], kinds: list[Kind]) -> list[tuple[float, float]] | None:
    """By linear programming: the least and the greatest signed pull of each link at rest; None where none is enough."""
    n, links = len(bodies), len(kinds)
    if not links:
        drive, normal = by_hand(bodies[0])
        return [] if abs(drive) <= bodies[0].mu_s * normal else None
    rows = np.zeros((n, n + links))
    for i in range(n):
        rows[i, i] = 1
        if i < links:
            rows[i, n + i] = 1
        if i:
            rows[i, n + i - 1] = -1
    most = [b.mu_s * by_hand(b)[1] for b in bodies]
    bounds = [(-m, m) for m in most] + [(0, None) if kind == "string" else (None, 0) for kind in kinds]
    found = []
    for i in range(links):
        ends = []
        for sign in (1, -1):
            cost = np.zeros(n + links)
            cost[n + i] = sign
            done = linprog(cost, A_eq=rows, b_eq=[-by_hand(b)[0] for b in bodies], bounds=bounds)
            if done.status == 2:
                return None
            ends.append(float("inf") * -sign if done.status == 3 else done.x[n + i])
        found.append((ends[0], ends[1]))
    return found


def test_any_chain_does_what_a_matrix_and_linear_programming_say() -> None:
    """At rest exactly where frictions and tensions can hold it; else each body obeys its own equation of motion, with
    friction against the way it starts, and no string pushes and no contact pulls."""
    chance = random.Random(7)
    seen: dict[str, int] = {}
    for _ in range(220):
        bodies, kinds = chain(chance, chance.randint(1, 3))
        found = outcome(bodies, kinds, g=G)
        forces = [by_hand(body) for body in bodies]
        seen[found.state] = seen.get(found.state, 0) + 1
        if found.state == "lifts off":
            assert any(normal < 0 for _, normal in forces)
            continue
        assert all(normal >= 0 for _, normal in forces)
        ranges = can_rest(bodies, kinds)
        held = found.state in ("stays", "limit") and not found.slack
        assert held == (ranges is not None)
        if ranges is not None:
            for link, (low, high) in zip(found.links, ranges, strict=True):
                assert (link.force is None) == (high - low > 1e-6)
                assert link.force is None or link.force == pytest.approx(abs(low), abs=1e-6)
            continue
        obeys(bodies, found.bodies, found.links)
    assert seen["stays"] > 20
    assert seen["moves"] > 60
    assert seen["lifts off"] > 3


def obeys(bodies: list[Body], motions: Sequence[Motion], links: Sequence[Link]) -> None:
    """Newton's second law for each body, the rules of friction and of links; a pair at rest may share what holds it."""
    if any(link.force is None for link in links):
        held = [i for i, link in enumerate(links) if link.force is None]
        assert not any(motions[i].moves or motions[i + 1].moves for i in held)
        return
    pulls = [float(link.force or 0) * (1 if link.kind == "string" else -1) for link in links]
    for i, (body, motion) in enumerate(zip(bodies, motions, strict=True)):
        drive, normal = by_hand(body)
        ahead = pulls[i] if i < len(pulls) else 0.0
        behind = pulls[i - 1] if i else 0.0
        assert motion.normal == pytest.approx(normal, abs=1e-9)
        assert motion.friction is not None
        assert drive + motion.friction + ahead - behind == pytest.approx(body.mass * motion.a, abs=1e-8)
        if motion.moves:
            assert abs(motion.friction) == pytest.approx(body.mu_k * normal, abs=1e-9)
            assert motion.friction * motion.a <= 0
        else:
            assert motion.a == 0
            assert abs(motion.friction) <= body.mu_s * normal + 1e-8
    for i, link in enumerate(links):
        assert link.force is not None
        assert link.force >= 0
        apart = (motions[i + 1].a - motions[i].a) * (1 if link.kind == "string" else -1)
        assert abs(apart) < 1e-8 if link.force > 1e-7 else apart <= 1e-9


def test_a_moving_pair_is_what_two_equations_give() -> None:
    """Numpy solves both bodies' equations for a and T at once: 4 kg on a slope of 30°, 3 kg hanging."""
    up = radians(30)
    normal = 4 * G * cos(up)
    a, t = np.linalg.solve([[4, -1], [3, 1]], [-4 * G * sin(up) - 0.2 * normal, 3 * G])
    found = outcome([Body(4, up, 0.2, 0.2), Body(3, -HANGING)], ["string"])
    assert [one.a for one in found.bodies] == pytest.approx([a, a])
    assert found.links[0].force == pytest.approx(t)
    assert (round(a, 2), round(t, 2)) == (0.43, 28.11)  # the reference of the notes this chapter follows


@pytest.mark.parametrize(("pull", "state"), [(20, "stays"), (25.2, "stays"), (25.22, "moves"), (30, "moves")])
def test_a_pull_at_an_angle_moves_a_crate_from_a_certain_size_on(pull: float, state: str) -> None:
    """5 kg, µs 0,6, µk 0,4, 30° above the level: it slips at mg·µs/(cos φ + µs sin φ), worked by plain arithmetic."""
    assert 5 * G * 0.6 / (cos(radians(30)) + 0.6 * sin(radians(30))) == pytest.approx(25.21, abs=0.005)
    found = outcome([Body(5, 0, 0.6, 0.4, (Pull(pull, radians(30)),))])
    assert found.state == state
    if pull == 30:
        assert found.bodies[0].a == pytest.approx((30 * cos(radians(30)) - 0.4 * 34) / 5)
    if pull == 20:
        assert found.bodies[0].friction == pytest.approx(-17.3205, abs=1e-4)


def test_the_limit_is_neither_rest_with_something_to_spare_nor_motion() -> None:
    """On a slope with tan θ = µs a body is at its limit, and a hair steeper it slides."""
    angle = radians(35)
    assert outcome([Body(2, angle, tan(angle), 0.3)]).state == "limit"
    assert outcome([Body(2, angle + 1e-6, tan(angle), 0.3)]).state == "moves"
    assert outcome([Body(2, angle - 1e-6, tan(angle), 0.3)]).state == "stays"


def test_a_strong_pull_upwards_lifts_a_body_off() -> None:
    """N would be below zero: nothing else is found, and the body is named."""
    found = outcome([Body(2, 0, 0.5, 0.4), Body(2, 0, 0.5, 0.4, (Pull(30, radians(80)),))], ["string"])
    assert (found.state, found.lifted) == ("lifts off", (1,))


def test_the_tension_between_two_rough_bodies_at_rest_cannot_be_found() -> None:
    """Either friction may hold the pull: only a range follows; a smooth body behind leaves the string no pull."""
    rough = Body(3, 0, 0.5, 0.4)
    pulled = Body(2, 0, 0.5, 0.4, (Pull(8.0),))
    found = outcome([rough, pulled], ["string"])
    assert found.state == "stays"
    assert found.links[0].force is None
    assert found.bodies[0].friction is None
    one = outcome([Body(3), pulled], ["string"])
    assert one.links[0].force == pytest.approx(0)
    assert one.bodies[1].friction == pytest.approx(-8)


def test_a_string_goes_slack_where_the_body_behind_is_the_faster() -> None:
    """Down a slope a smooth body behind a rough one runs up to it: the string hangs slack and each goes its own way;
    in contact they press instead."""
    down = -radians(30)
    pair = [Body(2, down), Body(2, down, 0.4, 0.3)]
    found = outcome(pair, ["string"])
    assert found.slack
    assert found.links[0].force == 0
    assert found.bodies[0].a == pytest.approx(G * sin(radians(30)))
    assert found.bodies[1].a == pytest.approx(G * (sin(radians(30)) - 0.3 * cos(radians(30))))
    pressed = outcome(pair, ["contact"])
    assert not pressed.slack
    assert pressed.bodies[0].a == pressed.bodies[1].a


@pytest.mark.parametrize(("mu_s", "back"), [(0.9, False), (0.5, True)])
def test_a_body_pushed_up_a_slope_stops_where_an_integrator_stops_and_is_tested_again(mu_s: float, back: bool) -> None:
    """scipy integrates the slide up; the time and distance agree, and it slides back where tan θ is above µs."""
    up = radians(32)
    stop = slides_to_rest([Body(1.5, up, mu_s, 0.3)], velocity=4.0)
    assert stop is not None

    def slide(_: float, state: np.ndarray) -> list[float]:
        return [state[1], -G * sin(up) - 0.3 * G * cos(up)]

    def halts(_: float, state: np.ndarray) -> float:
        return float(state[1])

    halts.terminal, halts.direction = True, -1  # type: ignore[attr-defined]
    path = solve_ivp(slide, (0, 10), [0.0, 4.0], events=halts, rtol=1e-10, atol=1e-12)
    assert stop.time == pytest.approx(path.t[-1])
    assert stop.distance == pytest.approx(path.y[0][-1])
    assert (stop.after.state == "moves") is back
    if back:
        assert stop.after.bodies[0].a == pytest.approx(-G * (sin(up) - 0.3 * cos(up)))


def test_friction_acts_against_the_motion_not_against_the_drive() -> None:
    """A crate that moves to the right while it is pulled to the left is slowed by both."""
    found = outcome([Body(2, 0, 0.5, 0.25, (Pull(6.0, pi),))], velocity=3.0)
    assert found.bodies[0].friction == pytest.approx(-0.25 * 2 * G)
    assert found.bodies[0].a == pytest.approx((-6 - 0.25 * 2 * G) / 2)


def test_three_bodies_over_two_pulleys() -> None:
    """2 kg rises, 3 kg on a rough table, 5 kg falls: numpy solves the three equations for a and both tensions."""
    a, first, second = np.linalg.solve([[2, -1, 0], [3, 1, -1], [5, 0, 1]], [-2 * G, -0.2 * 3 * G, 5 * G])
    found = outcome([Body(2, HANGING), Body(3, 0, 0.3, 0.2), Body(5, -HANGING)], ["string", "string"])
    assert [one.a for one in found.bodies] == pytest.approx([a, a, a])
    assert [link.force for link in found.links] == pytest.approx([first, second])


def test_the_mirror_image_of_a_chain_does_the_same_the_other_way() -> None:
    """Read from its other end, with every sign turned, a chain has the same forces."""
    chance = random.Random(11)
    for _ in range(60):
        bodies, kinds = chain(chance, 3)
        turned = [
            Body(b.mass, -b.rise, b.mu_s, b.mu_k, tuple(Pull(p.size, pi - p.angle) for p in b.pulls), -b.along)
            for b in bodies[::-1]
        ]
        here, there = outcome(bodies, kinds, g=G), outcome(turned, kinds[::-1], g=G)
        assert here.state == there.state
        assert [one.a for one in here.bodies] == pytest.approx([-one.a for one in there.bodies[::-1]], abs=1e-9)


@pytest.mark.parametrize("bodies", [[], [Body(1)] * 4])
def test_no_body_and_more_than_three_are_refused(bodies: list[Body]) -> None:
    """The chain has one to three bodies, and the sentence says how many came."""
    with pytest.raises(ValueError, match=f"{len(bodies)} bodies"):
        outcome(bodies, ["string"] * max(len(bodies) - 1, 0))


@pytest.mark.parametrize("data", [{"mass": 0.0}, {"mass": 1.0, "mu_k": -0.1}, {"mass": 1.0, "rise": 2.0}])
def test_impossible_bodies_are_refused(data: dict[str, float]) -> None:
    """No mass, a negative coefficient, a slope past upright."""
    with pytest.raises(ValueError, match="a mass is above zero"):
        Body(**data)
