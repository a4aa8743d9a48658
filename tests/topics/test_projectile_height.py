"""From a height to the ground: scipy's fall until it lands, the reference case, balloons, both directions, refusals."""

import numpy as np
import pytest
from scipy import integrate

from calc import topics
from calc.working.reading import read
from tests.topics.test_projectile import PUBLISHED, G, refused, solve

FREE = {"positive": "up", "start": "thrown"}


def fall(u: float, high: float) -> tuple[float, float, float, float]:
    """(time to the ground, velocity there, greatest height, time to it): motion integrated until it lands."""

    def landed(t: float, state: np.ndarray) -> float:
        return float(state[0])

    landed.terminal, landed.direction = True, -1  # type: ignore[attr-defined]
    found = integrate.solve_ivp(
        lambda t, state: [state[1], -G], (0, 60), [high, u], events=landed, rtol=1e-10, atol=1e-12, max_step=0.05
    )
    top = int(np.argmax(found.y[0]))
    lands = float(found.t_events[0][0])
    return lands, float(found.y_events[0][0][1]), float(found.y[0][top]), float(found.t[top])


@pytest.mark.parametrize(("u", "high"), [(12.0, 25.0), (0.0, 20.0), (-6.0, 33.0), (3.0, 180.0)])
@pytest.mark.parametrize("positive", ["up", "down"])
def test_a_fall_ends_as_it_is_integrated(u: float, high: float, positive: str) -> None:
    """Time and velocity at the ground, and back from them to the start and its height."""
    lands, v, top, _ = fall(u, high)
    way = 1 if positive == "up" else -1
    base = {**FREE, "positive": positive}
    start, end = f"{way * u + 0.0:g}", f"{way * v + 0.0:.12g}"
    found = solve("from-height", "t,v", u=start, H=f"{high} m", **base).values
    assert (found["t"], found["v"]) == pytest.approx((lands, way * v), rel=1e-6)
    assert solve("from-height", "H", u=start, t=f"{lands:.12g} s", **base).values["H"] == pytest.approx(high, rel=1e-6)
    assert solve("from-height", "u", H=f"{high} m", t=f"{lands:.12g} s", **base).values["u"] == pytest.approx(
        way * u, rel=1e-6, abs=1e-5
    )
    assert solve("from-height", "H", u=start, v=end, **base).values["H"] == pytest.approx(high, rel=1e-6)
    if u > 0:
        found = solve("from-height", "h,t_top", u=start, H=f"{high} m", **base).values
        assert found["h"] == pytest.approx(top, rel=1e-3)
        back = solve("from-height", "u", H=f"{high} m", h=f"{found['h']:.12g} m", **base)
        assert back.values["u"] == pytest.approx(way * u)
        assert [shown.name for shown in back.answers] == ["u"]


def test_the_reference_case() -> None:
    """Up 12 m/s from 25 m: 3,79 s (other root −1,34 s), 25,18 m/s down, top 7,35 m above (recomputed by hand)."""
    found = solve("from-height", "t,v,h", u="12", H="25 m", **FREE)
    assert found.values["t"] == pytest.approx((12 + (144 + 50 * G) ** 0.5) / G)
    shown = {one.name: one.shown.text.replace("\N{NO-BREAK SPACE}", " ") for one in found.answers}
    assert (shown["t"], shown["v"].lstrip("−")) == ("3,79 s", "25,18 m·s⁻¹")
    assert [one.direction.words for one in found.answers if one.direction] == ["downwards"]
    assert found.values["h"] - 25 == pytest.approx(7.35, abs=0.005)
    methods = [step.method for part in found.parts for step in part.steps]
    assert any("t = −1,34" in method and "before the start" in method for method in methods)


def test_the_published_sandbag_leaves_with_the_velocity_of_the_balloon() -> None:
    """Let go at 180 m from a balloon that rises at 3 m/s (OpenStax, see projectile_published.json)."""
    told = PUBLISHED["sandbag-time"]
    typed = {"u": "3", "H": "180 m", "positive": "up", "start": "carried"}
    found = solve("from-height", "t", **typed)
    assert found.values["t"] == pytest.approx(told["published"]["value"], rel=told["published"]["rel_tol"])
    _, question = topics.find("projectile.from-height")
    plan = question.plan(read(question, typed, "t").data)
    mistakes = {one.key: one.say for step in plan.steps for one in step.mistakes}
    assert mistakes["start-forgotten"].startswith("You let it start from rest. It leaves with the velocity of what")


@pytest.mark.parametrize("start", ["thrown", "carried"])
@pytest.mark.parametrize("u", ["4", "0", "-4"])
def test_the_other_positive_direction_gives_the_same_words(start: str, u: str) -> None:
    """Story, reasons and answers in words do not hang on the choice."""
    over = {"4": "-4", "-4": "4", "0": "0"}[u]
    first = solve("from-height", "t,v", u=u, H="30 m", positive="up", start=start)
    second = solve("from-height", "t,v", u=over, H="30 m", positive="down", start=start)
    assert first.story.replace("Take upwards", "Take downwards") == second.story
    for one, other in zip(first.answers, second.answers, strict=True):
        assert abs(one.value) == pytest.approx(abs(other.value))
        assert (one.direction and one.direction.words) == (other.direction and other.direction.words)
    assert [part.ask for part in first.parts] == [part.ask for part in second.parts]


def test_the_start_may_have_been_either_way() -> None:
    """From the velocity at the ground and the height both starts are worked; scipy's fall gives both times."""
    found = solve("from-height", "u,t", v="-25", H="20 m", **FREE).values
    assert found["u"] == pytest.approx(-found["u1"])
    assert fall(found["u"], 20)[0] == pytest.approx(found["t"], rel=1e-6)
    assert fall(found["u1"], 20)[0] == pytest.approx(found["t1"], rel=1e-6)


@pytest.mark.parametrize(
    ("find", "typed", "sentence"),
    [
        (
            "h",
            {"u": "-3", "H": "20 m"},
            (
                "It does not go up, so its highest place is where it starts. Ask for something else, or check the sign"
                " of the velocity at the start."
            ),
        ),
        ("t", {"u": "-3", "h": "20 m"}, "It does not go up, so its highest place is where it starts."),
        (
            "t",
            {"u": "-3", "H": "20 m", "t_top": "0,3 s"},
            "It does not go up, so its highest place is where it starts.",
        ),
        (
            "u",
            {"h": "18 m", "H": "20 m"},
            "The highest point cannot lie below the start: give a greatest height of at least the height of the start.",
        ),
        (
            "t",
            {"v": "25", "H": "20 m"},
            "It moves downwards when it lands. Check the velocity just before it lands and its sign.",
        ),
        (
            "H",
            {"u": "20", "t": "1 s"},
            (
                "With these values it would end above its start and not on the ground. Give a later time, or check the"
                " velocities and their signs."
            ),
        ),
        ("H", {"u": "5", "t": "1 s"}, "With these values it would end above its start and not on the ground."),
        (
            "t",
            {"v": "-10", "H": "20 m"},
            "These values contradict each other: that far below the start it must be faster, at least 19,80 m·s⁻¹.",
        ),
        (
            "v",
            {"u": "12", "H": "25 m", "t": "3 s"},
            "These values contradict each other: from the others the height would be 8,10 m.",
        ),
        ("t", {"u": "3", "H": "-5 m"}, "Distance must be greater than zero."),
    ],
)
def test_what_cannot_be_is_refused(find: str, typed: dict[str, str], sentence: str) -> None:
    """Each refusal gives its reason and what to do."""
    assert sentence in refused("from-height", find, **FREE, **typed)
