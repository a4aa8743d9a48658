"""Mechanical energy at two places, a pendulum, and friction: published cases, integrated motion, refusals."""

import numpy as np
import pytest
import sympy
from scipy import integrate

from calc import topics
from calc.figures import AngleMark, Arrow, Dimension, Dot, Surface
from calc.figures.bodies import Ball
from calc.practice.drawing import draw
from calc.working.leading import boxes
from calc.working.reading import read
from calc.working.working import work
from tests.topics.test_energy_work import G, published, refused, solve, value


def test_the_published_pole_vaulter() -> None:
    """The speed with which a vaulter has to run to get over a bar: all kinetic energy becomes height."""
    (h,), answer = published("pole-vault-speed", "h")
    assert value("two-places", "u", h_A="0", h_B=f"{h}", v="0", way="fly") == answer


def test_the_published_batted_ball() -> None:
    """The work of air resistance on a ball that lands higher than it was struck."""
    (m, u, v, h), answer = published("batted-ball-air-resistance", "m", "u", "v", "h")
    assert value("friction-loss", "W_nc", m=f"{m}", u=f"{u}", v=f"{v}", h_A="0", h_B=f"{h}") == answer


def thrown(h_a: float, u: float, h_b: float, angle: float) -> float:
    """The speed at which a body thrown from h_a at an angle passes h_b on its way down: integrated."""

    def at_b(t: float, state: np.ndarray) -> float:
        return float(state[1] - h_b)

    at_b.terminal, at_b.direction = True, -1  # type: ignore[attr-defined]
    start = (0.0, h_a, u * np.cos(angle), u * np.sin(angle))
    path = integrate.solve_ivp(
        lambda t, s: (s[2], s[3], 0.0, -G), (0, 20), start, events=at_b, max_step=0.1, rtol=1e-10, atol=1e-12
    )
    return float(np.hypot(*path.y[2:, -1]))


@pytest.mark.parametrize("way", ["slide", "fly"])
@pytest.mark.parametrize("mass", ["", "3 kg"])
@pytest.mark.parametrize(("h_a", "u", "h_b"), [(3.2, 2.0, 1.4), (1.4, 9.0, 3.2), (5.0, 0.0, 0.0)])
def test_every_unknown_between_two_places(way: str, mass: str, h_a: float, u: float, h_b: float) -> None:
    """Speeds and heights agree with a body thrown at any angle; neither the way nor the mass matters."""
    speeds = [thrown(h_a, u, h_b, angle) for angle in (0.9, 1.2)]
    assert speeds[0] == pytest.approx(speeds[1])
    right = {"h_A": h_a, "u": u, "h_B": h_b, "v": speeds[0]}
    for name, number in right.items():
        typed = {other: f"{size!r}" for other, size in right.items() if other != name}
        found = value("two-places", name, way=way, m=mass, **typed)
        assert found == pytest.approx(number, rel=1e-6, abs=1e-6), name


def test_every_unknown_where_friction_takes_energy() -> None:
    """Sympy solves W_nc = ΔE_k + ΔE_p for each quantity, friction and its way among them."""
    names = sympy.symbols("m u v h_A h_B f L", positive=True)
    m, u, v, h_a, h_b, f, way = names
    law = sympy.Eq(-f * way, m * (v**2 - u**2) / 2 + m * sympy.Float(G) * (h_b - h_a))
    right = {"m": 40.0, "u": 2.0, "v": 5.0, "h_A": 3.2, "h_B": 1.4, "L": 8.0}
    (friction,) = sympy.solve(law.subs({sympy.Symbol(n, positive=True): x for n, x in right.items()}), f)
    right["f"] = float(friction)
    for name in right:
        symbol = sympy.Symbol(name, positive=True)
        known = {one: right[str(one)] for one in names if one != symbol}
        (expected,) = sympy.solve(law.subs(known), symbol)
        typed = {other: f"{size!r}" for other, size in right.items() if other != name}
        assert value("friction-loss", name, **typed) == pytest.approx(float(expected), rel=1e-9), name
    typed = {name: f"{size!r}" for name, size in right.items() if name not in ("f", "L")}
    found = solve("friction-loss", "W_nc", **typed)
    assert found.values["W_nc"] == pytest.approx(-right["f"] * right["L"])
    (answer,) = found.answers
    assert answer.direction
    assert answer.direction.words == "negative: the force takes energy from the body"


@pytest.mark.parametrize("angle", [10.0, 50.0, 85.0])
def test_a_pendulum_swings_as_integrated(angle: float) -> None:
    """The speed at the lowest point from the equation of motion of a pendulum; then every quantity back."""
    long = 1.6

    def lowest(t: float, state: np.ndarray) -> float:
        return float(state[0])

    lowest.terminal = True  # type: ignore[attr-defined]
    swing = integrate.solve_ivp(
        lambda t, s: (s[1], -G / long * np.sin(s[0])),
        (0, 10),
        (np.radians(angle), 0.0),
        events=lowest,
        rtol=1e-11,
        atol=1e-12,
    )
    right = {"L": long, "alpha": angle, "v": float(abs(swing.y[1, -1])) * long}
    for name, number in right.items():
        typed = {other: f"{size!r}{'°' if other == 'alpha' else ''}" for other, size in right.items() if other != name}
        found = value("pendulum", name, **typed)
        assert (np.degrees(found) if name == "alpha" else found) == pytest.approx(number, rel=1e-6), name
    assert value("pendulum", "h", L="", alpha="", v=f"{right['v']!r}") == pytest.approx(
        long * (1 - np.cos(np.radians(angle))), rel=1e-6
    )


REFUSED = (
    (
        "two-places",
        "v",
        {"h_A": "3", "u": "2", "h_B": "4"},
        "It does not reach B: with this energy it rises to a height of 3,20 m at most.",
    ),
    (
        "two-places",
        "u",
        {"h_A": "3", "v": "2", "h_B": "1"},
        "No speed at A fits: without any it would already be faster at B. Check the heights and the speeds.",
    ),
    (
        "two-places",
        "h_B",
        {"h_A": "3", "u": "2", "v": "9"},
        "No height of B fits: B would lie below the level from which heights are measured. Check the numbers.",
    ),
    (
        "two-places",
        "h_A",
        {"h_B": "1", "u": "9", "v": "2"},
        "No height of A fits: A would lie below the level from which heights are measured. Check the numbers.",
    ),
    ("two-places", "v", {"h_A": "-3", "u": "9", "h_B": "2"}, "Height of A cannot be negative."),
    (
        "friction-loss",
        "v",
        {"m": "40", "h_A": "3", "u": "2", "h_B": "1", "W_nc": "-900"},
        "It stops before B: friction and the height take more energy than it has. Check the numbers.",
    ),
    (
        "friction-loss",
        "f",
        {"m": "40", "h_A": "1", "u": "2", "h_B": "1", "v": "3", "L": "4"},
        "No friction fits: it only takes energy, and here the body has more at B than at A. Check the numbers.",
    ),
    (
        "friction-loss",
        "L",
        {"m": "40", "h_A": "1", "u": "2", "h_B": "1", "v": "3", "f": "4"},
        "No way fits: friction only takes energy, and here the body has more at B than at A. Check the numbers.",
    ),
    (
        "friction-loss",
        "m",
        {"h_A": "1", "u": "2", "h_B": "1", "v": "3", "W_nc": "-40"},
        "No mass fits: the work and the change in energy have opposite signs. Check the sign of the work.",
    ),
    (
        "friction-loss",
        "v",
        {"where": "all", "m": "40", "h_A": "3", "h_B": "1", "u": "3", "mu_k": "0,2", "L": "2"},
        "All the way is rough, up and down, so friction is not the same everywhere: leave this empty, or choose the"
        " level part.",
    ),
    (
        "friction-loss",
        "mu_k",
        {"where": "part", "h_A": "3", "h_B": "1", "u": "3", "v": "8", "L": "2"},
        "No coefficient fits: friction only takes energy, and here the body has more at B than at A.",
    ),
    (
        "friction-loss",
        "v",
        {"where": "part", "h_A": "3", "h_B": "2", "u": "0", "mu_k": "0,5", "L": "4"},
        "It stops before B: friction and the height take more energy than it has.",
    ),
    (
        "friction-loss",
        "u",
        {"m": "40", "h_A": "3", "h_B": "1", "v": "3", "W_nc": "-40"},
        "No speed at A fits: without any it would already be faster at B. Check the work and the speed at B.",
    ),
    (
        "pendulum",
        "alpha",
        {"L": "1", "v": "6"},
        "No angle below 90° fits: so fast, the ball would rise above its support. Check the speed and the length of the"
        " string.",
    ),
    (
        "pendulum",
        "alpha",
        {"L": "1", "v": "5"},
        "No angle below 90° fits: so fast, the ball would rise above its support. Check the speed and the length of the"
        " string.",
    ),
    ("pendulum", "v", {"L": "1", "alpha": "90°"}, "Angle lies between 0° and 90°; choose above or below."),
)


@pytest.mark.parametrize(("key", "find", "typed", "sentence"), REFUSED)
def test_places_that_cannot_be_are_refused(key: str, find: str, typed: dict[str, str], sentence: str) -> None:
    """Each refusal gives its reason and what to do."""
    blank = dict.fromkeys(("h_A", "h_B", "u", "v", "m") if key != "pendulum" else ("L", "alpha"), "")
    assert sentence in refused(key, find, **{**blank, **typed}).replace("\u00a0", " ")


# --- rough on a level part alone ---


def over_the_strip(h_a: float, u: float, h_b: float, mu: float, way: float) -> float:
    """The speed at B, leg by leg: down to the strip, integrated across it, and on up to B."""
    at_strip = (u**2 + 2 * G * h_a) ** 0.5

    def end(t: float, state: np.ndarray) -> float:
        return float(state[0] - way)

    end.terminal = True  # type: ignore[attr-defined]
    path = integrate.solve_ivp(lambda t, s: (s[1], -mu * G), (0, 20), (0.0, at_strip), events=end, rtol=1e-10)
    return float((path.y[1, -1] ** 2 - 2 * G * h_b) ** 0.5)


@pytest.mark.parametrize("mass", ["", "40 kg"])
@pytest.mark.parametrize(("h_a", "u", "h_b"), [(3.2, 2.0, 1.4), (1.0, 6.0, 2.0), (4.0, 0.0, 0.0)])
def test_every_unknown_of_a_way_that_is_rough_on_a_part(mass: str, h_a: float, u: float, h_b: float) -> None:
    """Split into legs, with and without the mass: integrated across the rough part."""
    right = {"h_A": h_a, "u": u, "h_B": h_b, "mu_k": 0.25, "L": 3.0, "v": over_the_strip(h_a, u, h_b, 0.25, 3.0)}
    for name, number in right.items():
        typed = {other: f"{size!r}" for other, size in right.items() if other != name}
        found = value("friction-loss", name, where="part", m=mass, **typed)
        assert found == pytest.approx(number, rel=1e-6, abs=2e-6), name
    if mass:
        typed = {name: f"{size!r}" for name, size in right.items() if name != "mu_k"}
        assert value("friction-loss", "f", where="part", m=mass, **typed) == pytest.approx(0.25 * 40 * G)
        assert value("friction-loss", "W_nc", where="part", m=mass, **typed) == pytest.approx(-0.25 * 40 * G * 3)


def test_the_legs_are_told_and_drawn() -> None:
    """Smooth, rough, smooth: the point on each leg, and the rough part drawn hatched between A and B, L beneath it."""
    typed = {"h_A": "3,2", "u": "2", "h_B": "1,4", "L": "3", "mu_k": "0,25"}
    found = solve("friction-loss", "v", where="part", **typed)
    (legs,) = [part for part in found.parts if part.key == "legs"]
    assert "only the weight does work: it is conserved" in legs.points[0].words
    assert "non-conservative force, takes energy: it is not conserved" in legs.points[1].words
    assert found.figure
    (strip,) = [item for item in found.figure.items if isinstance(item, Surface)]
    at = {item.label: item.at for item in found.figure.items if isinstance(item, Dot)}
    assert at["A"][0] < strip.start[0] < strip.end[0] < at["B"][0]
    (length,) = [item for item in found.figure.items if isinstance(item, Dimension) and item.label == "L"]
    assert (length.start, length.end) == (strip.start, strip.end)
    whole = solve("friction-loss", "W_nc", **{**typed, "m": "40", "v": "5", "mu_k": "", "L": ""})
    assert "legs" not in {part.key for part in whole.parts}


def test_what_the_rough_part_needs_is_asked_for() -> None:
    """Its length and coefficient are shown on the form as soon as it is chosen; without them each says so itself."""
    _, question = topics.find("energy.friction-loss")
    typed = {"h_A": "3,2 m", "u": "2 m/s", "h_B": "1,4 m"}
    assert {"L", "mu_k"} <= set(boxes(question, "v", {**typed, "where": "part"}))
    assert "mu_k" not in boxes(question, "v", {**typed, "where": "all"})
    said = refused("friction-loss", "v", where="part", **typed)
    assert said == "Type the length of the rough part, or the work of friction on it."
    said = refused("friction-loss", "v", where="part", L="3 m", **typed)
    assert said == "Type the coefficient of kinetic friction on the rough part, or the work of friction on it."


def test_practice_splits_into_legs_by_the_newest_rule_alone() -> None:
    """Older addresses are rough all the way, as they were; the newest draws both, each told as it is."""
    topic, question = topics.find("energy.friction-loss")
    seen: dict[int, set[bool]] = {4: set(), 5: set()}
    for rule, met in seen.items():
        for seed in range(8):
            drawn = draw(topic, question, seed, 2, rule)
            story = work(topic, question, read(question, drawn.inputs, drawn.find, variant=drawn.variant)).story
            part = drawn.inputs.get("where") == "part"
            assert part == any(word in story for word in ("gravel", "strip", "felt"))
            met.add(part)
    assert seen == {4: {False}, 5: {True, False}}


@pytest.mark.parametrize("key", ["two-places", "friction-loss"])
@pytest.mark.parametrize(("h_a", "h_b"), [("3", "1"), ("1", "3"), ("0", "3"), ("3", "0"), ("2", "2"), ("0", "0")])
def test_the_higher_place_is_drawn_higher(key: str, h_a: str, h_b: str) -> None:
    """A stands to the left; the place with the larger height is drawn higher, equal ones level, none under zero."""
    typed = {"h_A": h_a, "h_B": h_b, "u": "9", "v": ""}
    typed |= {"m": "2", "W_nc": "-5"} if key == "friction-loss" else {}
    figure = solve(key, "v", **typed).figure
    assert figure
    at = {item.label: item.at for item in figure.items if isinstance(item, Dot)}
    assert at["A"][0] < at["B"][0]
    assert np.sign(at["A"][1] - at["B"][1]) == np.sign(float(h_a) - float(h_b))
    shown = {item.label: item.end[1] - item.start[1] for item in figure.items if isinstance(item, Dimension)}
    for name, size, place in (("h_A", h_a, "A"), ("h_B", h_b, "B")):
        assert (name in shown) == (float(size) > 0)
        assert at[place][1] == pytest.approx(shown.get(name, 0.0))


def test_the_pendulum_is_drawn_at_its_angle() -> None:
    """The ball lies on the cord at the angle from the vertical; the marked height is that above the lowest point."""
    figure = solve("pendulum", "v", L="1,6 m", alpha="50°").figure
    assert figure
    (ball,) = [item for item in figure.items if isinstance(item, Ball)]
    (mark,) = [item for item in figure.items if isinstance(item, AngleMark)]
    (rise,) = [item for item in figure.items if isinstance(item, Dimension) and item.label == "h"]
    assert np.degrees(np.arctan2(abs(ball.centre[0]), -ball.centre[1])) == pytest.approx(50)
    assert mark.sweep_deg == pytest.approx(50)
    assert rise.end[1] == pytest.approx(ball.centre[1])
    assert rise.end[1] - rise.start[1] == pytest.approx(9 * (1 - np.cos(np.radians(50))))
    assert not [item for item in figure.items if isinstance(item, Arrow)]
