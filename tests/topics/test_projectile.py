"""Vertical projectile motion: published cases, scipy's motion and roots, both positive directions, refusals."""

import json
import re
from pathlib import Path

import numpy as np
import pytest
from scipy import integrate, optimize

from calc import topics
from calc.model.answers import WorkedAnswer
from calc.model.questions import Input, Question, Refusal
from calc.topics.projectile.equations import other_sign
from calc.working.reading import Refusals, read
from calc.working.working import work

PUBLISHED = {
    case["id"]: case for case in json.loads((Path(__file__).parent / "projectile_published.json").read_text("utf-8"))
}
G = 9.8


def solve(key: str, find: str = "", **typed: str) -> WorkedAnswer:
    """The worked answer of a question of the chapter."""
    topic, question = topics.find(f"projectile.{key}")
    choices = {"flight": {"positive": "up", "turn": "any"}}.get(key, {})
    return work(topic, question, read(question, {**choices, **typed}, find))


def value(key: str, find: str, **typed: str) -> float:
    """One value of it."""
    return solve(key, find, **typed).values[find]


def published(case: str, *names: str) -> tuple[list[float], object]:
    """The data of a published case by name, and its answer as published."""
    told = PUBLISHED[case]
    return (
        [float(told["given"][name]["value"]) for name in names],
        pytest.approx(told["published"]["value"], rel=told["published"]["rel_tol"]),
    )


def refused(key: str, find: str = "", **typed: str) -> str:
    """The sentence with which data are refused."""
    with pytest.raises((Refusal, Refusals)) as told:
        solve(key, find, **typed)
    return str(told.value).replace("\N{NO-BREAK SPACE}", " ")


# Sources stand in projectile_published.json: OpenStax University Physics Volume 1 and OpenStax College Physics, worked
# examples and exercises, CC BY 4.0.


def test_published_flights() -> None:
    """Velocities, heights and times of one free flight as published; each source's g is 9,8 m/s²."""
    (h,), speed = published("mortar-exit-speed", "h")
    assert value("flight", "u", v="0", Deltay=f"{h} m") == speed
    (h,), speed = published("jump-speed", "h")
    assert value("flight", "u", v="0", Deltay=f"{h} m") == speed
    (u, t), velocity = published("thrown-down-v-05", "u", "t")
    assert value("flight", "v", u=f"{u}", t=f"{t} s") == velocity
    (u, t), height = published("thrown-down-height", "u", "t")
    assert value("flight", "Deltay", u=f"{u}", t=f"{t} s", positive="down") == height
    (u, h), speed = published("diver-entry-speed", "u", "h")
    assert -value("flight", "v", u=f"{u}", Deltay=f"-{h} m") == speed
    (u, t), height = published("cliff-height-thrown-up", "u", "t")
    assert -value("flight", "Deltay", u=f"{u}", t=f"{t} s") == height
    (u, t), velocity = published("coin-from-balloon-v", "u", "t")
    assert value("flight", "v", u=f"{u}", t=f"{t} s") == velocity
    (u,), height = published("leap-height", "u")
    assert value("flight", "Deltay", u=f"{u}", v="0") == height
    (high, u), time = published("sandbag-time", "H", "u")
    assert value("flight", "t", u=f"{u}", Deltay=f"-{high} m") == time
    (u, t), height = published("rock-up-1s", "u", "t")
    assert value("flight", "Deltay", u=f"{u}", t=f"{t} s") == height


def test_a_published_branch_is_passed_twice() -> None:
    """The time between the two passes is published; both times are answers."""
    (u, h), between = published("passing-a-branch-twice", "u", "h")
    found = solve("flight", "t", u=f"{u}", Deltay=f"{h} m")
    assert [shown.name for shown in found.answers] == ["t", "t1"]
    assert found.values["t"] - found.values["t1"] == between


def test_the_published_rest_of_a_fall() -> None:
    """The time left of a fall is that of the whole less that of its first part."""
    (high, t), left = published("falling-rock-time-left", "H", "t")
    assert value("flight", "t", u="0", Deltay=f"-{high} m") - t == left


# --- one flight: scipy's motion is the independent route ---


def motion(u: float, lasting: float) -> tuple[float, float]:
    """Velocity and place after a time, upwards positive: the equation of motion integrated step by step."""
    found = integrate.solve_ivp(lambda t, state: [state[1], -G], (0, lasting), [0.0, u], rtol=1e-10, atol=1e-12)
    return float(found.y[1][-1]), float(found.y[0][-1])


FLIGHTS = [(12.0, 3.0), (12.0, 0.5), (0.0, 2.0), (-4.0, 1.5), (20.0, 40 / G)]
UNITS = {"u": "m/s", "v": "m/s", "Deltay": "m", "t": "s"}


@pytest.mark.parametrize(("u", "t"), FLIGHTS)
@pytest.mark.parametrize("positive", ["up", "down"])
def test_any_two_give_the_others(u: float, t: float, positive: str) -> None:
    """Of every two of the four quantities the others follow as the integrated motion has them."""
    v, y = motion(u, t)
    way = 1 if positive == "up" else -1
    flight = {"u": way * u, "v": way * v, "Deltay": way * y, "t": t}
    turn = "turned" if u > 0 > v else "straight"
    for one in flight:
        for other in (name for name in flight if name > one):
            typed = {name: f"{flight[name] + 0.0:.10g} {UNITS[name]}" for name in (one, other)}
            for find in (name for name in flight if name not in typed):
                found = solve("flight", find, **typed, positive=positive, turn=turn)
                assert found.values[find] == pytest.approx(flight[find], rel=1e-6, abs=1e-4), (typed, find)


DATA = [
    {"u": "12", "Deltay": "5"},
    {"u": "12", "Deltay": "-25"},
    {"u": "-3", "Deltay": "-25"},
    {"u": "0", "t": "2"},
    {"u": "9,8", "t": "2"},
    {"v": "-20", "Deltay": "-12"},
    {"v": "-20", "t": "3"},
    {"Deltay": "8", "t": "1,5"},
]


@pytest.mark.parametrize("typed", DATA)
def test_the_other_positive_direction_gives_the_same_words(typed: dict[str, str]) -> None:
    """With every sign and the positive direction turned, story, answers in words and reasons stay the same."""
    turned = {
        name: text if name == "t" or text == "0" else text[1:] if text[0] == "-" else f"-{text}"
        for name, text in typed.items()
    }
    over = {"Take upwards as positive.": "Take downwards as positive."}
    for find in (name for name in UNITS if name not in typed):
        first = solve("flight", find, **typed)
        second = solve("flight", find, **turned, positive="down")
        story = first.story
        for one, other in over.items():
            story = story.replace(one, other)
        assert second.story == story
        assert [part.ask for part in first.parts] == [part.ask for part in second.parts]
        for one, other in zip(first.answers, second.answers, strict=True):
            assert abs(one.value) == pytest.approx(abs(other.value))
            assert (one.direction and one.direction.words) == (other.direction and other.direction.words)
        dropped = [
            [step.method.partition(". ")[2] for p in found.parts for step in p.steps] for found in (first, second)
        ]
        assert dropped[0] == dropped[1]


@pytest.mark.parametrize("seed", range(12))
def test_both_roots_of_a_pass(seed: int) -> None:
    """Numpy's roots of ½gt² − ut + Δy are the two times; below the start only the one above zero is an answer."""
    chance = np.random.default_rng(seed)
    u = round(float(chance.uniform(5, 25)), 1)
    y = round(float(chance.uniform(-30, 0.95 * u * u / 2 / G)), 1)
    times = sorted(float(root.real) for root in np.roots([G / 2, -u, y]))
    found = solve("flight", "t", u=f"{u}", Deltay=f"{y} m")
    answers = sorted(shown.value for shown in found.answers)
    assert answers == pytest.approx([one for one in times if one > 1e-12])
    (method,) = [step.method for step in found.parts[1].steps if step.method]
    assert ("It belongs to a time before the start: drop it." in method) == (y < 0)
    assert ("It is right as well: it belongs to the way up" in method) == (y > 0)


def test_a_throw_may_have_been_either_way() -> None:
    """From a velocity below the start both throws are worked, and each leads there."""
    found = solve("flight", "u,t", v="-20", Deltay="-12 m")
    assert [shown.name for shown in found.answers] == ["u", "t", "u1", "t1"]
    for u, t in (("u", "t"), ("u1", "t1")):
        assert motion(found.values[u], found.values[t]) == pytest.approx((-20, -12), rel=1e-6)
    assert found.values["u"] == pytest.approx(-found.values["u1"])


def test_the_words_choose_one_pass() -> None:
    """Where the turn is told, one time is asked, and the other root is dropped with that reason."""
    for turn, which in (("turned", 1), ("straight", 0)):
        found = solve("flight", "t", u="15", Deltay="7", turn=turn)
        times = sorted(float(root.real) for root in np.roots([G / 2, -15, 7]))
        assert [shown.value for shown in found.answers] == pytest.approx([times[which]])
        method = next(step.method for step in found.parts[1].steps if step.method)
        where = {"turned": ("up", "down"), "straight": ("down", "up")}[turn]
        assert f"It belongs to the way {where[0]}, and the words ask for the way {where[1]}: drop it." in method


def test_the_top_is_one_answer() -> None:
    """At the highest point the two passes are one, and the velocity is zero."""
    top = optimize.minimize_scalar(lambda t: -(14 * t - G / 2 * t * t), bounds=(0, 3), method="bounded")
    found = solve("flight", "t", u="14", Deltay="10 m")
    assert [shown.value for shown in found.answers] == pytest.approx([top.x], rel=1e-6)


FLIGHT_REFUSED = (
    ({"u": "8", "Deltay": "5 m"}, "Never gets there; highest point is 3,27 m above release. Check Δy and its sign."),
    (
        {"u": "-8", "Deltay": "5 m"},
        "Never gets there: it moves downwards from the start, and the place lies above. Check the signs.",
    ),
    (
        {"u": "8", "v": "9"},
        (
            "Free fall never makes the upward velocity larger: the acceleration is downwards all the way. Check both"
            " velocities and their signs."
        ),
    ),
    (
        {"v": "-3", "Deltay": "-20 m"},
        (
            "These values contradict each other: that far below the start it must be faster, at least 19,80 m·s⁻¹."
            " Check the velocity and the displacement."
        ),
    ),
    (
        {"u": "12", "t": "2 s", "v": "-9"},
        (
            "These values contradict each other: from the others the velocity at P would be 7,60 m·s⁻¹ downwards."
            " Correct it, or leave a box empty."
        ),
    ),
    (
        {"u": "12", "t": "2 s", "v": "7,6"},
        (
            "These values contradict each other: from the others the velocity at P would be 7,60 m·s⁻¹ downwards."
            " Correct it, or leave a box empty."
        ),
    ),
    ({"u": "12", "t": "0 s"}, "Time must be greater than zero."),
    (
        {"u": "12", "Deltay": "-3 m", "turn": "straight"},
        "With these values it turns round between S and P. Pick the other answer, or check the signs.",
    ),
    (
        {"u": "-12", "Deltay": "-3 m", "turn": "turned"},
        "With these values it does not turn round between S and P. Pick the other answer, or check the signs.",
    ),
)


@pytest.mark.parametrize(("typed", "sentence"), FLIGHT_REFUSED)
def test_a_flight_that_cannot_be_is_refused(typed: dict[str, str], sentence: str) -> None:
    """Each refusal gives its reason and what to do."""
    find = next(name for name in UNITS if name not in typed)
    assert sentence in refused("flight", find, **typed)


def test_more_data_within_one_per_cent_are_let_through() -> None:
    """7,6 m/s downwards follows: 7,53 and 7,67 still fit; 7,30 and 7,90 do not, nor does the time (2 s) that they
    would give."""
    for near in ("-7,53", "-7,67"):
        assert value("flight", "Deltay", u="12 m/s", t="2,00 s", v=f"{near} m/s") == pytest.approx(4.4, rel=0.02)
    for far in ("-7,30", "-7,90"):
        assert "contradict" in refused("flight", "Deltay", u="12,00", t="2,000 s", v=far)


QUESTIONS = topics.topics()["projectile"].questions


@pytest.mark.parametrize("question", QUESTIONS, ids=lambda question: question.key)
def test_every_telling_states_the_positive_direction(question: Question) -> None:
    """Once, before any signed number is asked for, in each telling; and it is the one that was picked."""
    ways = ("up", "down") if any(item.name == "positive" for item in question.fields) else ("up",)
    for way in ways:
        typed = {**question.example, **({"positive": way} if len(ways) > 1 else {})}
        if way == "down":
            signed = [one.name for one in question.fields if isinstance(one, Input) and one.signed]
            typed |= {name: other_sign(str(typed[name])) for name in signed if typed[name]}
        for variant in (0, 1, 2, 1000, 1001, 1002):
            data = read(question, typed, variant=variant).data
            said = re.findall(r"(up|down)wards (?:is|as) (\w+)", question.plan(data).story, re.I)
            assert [(one.lower(), sign) for one, sign in said] == [(way, "positive")], variant
