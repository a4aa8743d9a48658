"""Whole questions of the chapter: a winch on a ramp, a slide with rough ground, a caught ball on a slope."""

import numpy as np
import pytest
from scipy import integrate

from calc import topics
from calc.figures import Arrow
from calc.figures.pieces import Column, Item
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.practice.drawing import draw
from calc.working.reading import read
from calc.working.working import work
from tests.topics.test_energy_work import G, solve

LEVELS = ((1, 1), (1, 2), (2, 3), (3, 4))


def drawn(key: str, level: int, seed: int) -> WorkedAnswer:
    """One draw of a whole question, worked."""
    topic, question = topics.find(f"energy.{key}")
    one = draw(topic, question, seed, level, 4)
    return work(topic, question, read(question, one.inputs, one.find, variant=one.variant))


def after(way: float, speed: float, acceleration: float) -> tuple[float, float]:
    """Speed and time after a way at constant acceleration, by integrating the motion."""

    def there(t: float, state: np.ndarray) -> float:
        return float(state[0] - way)

    there.terminal = True  # type: ignore[attr-defined]
    path = integrate.solve_ivp(
        lambda t, s: (s[1], acceleration), (0, 60), (0.0, speed), events=there, rtol=1e-10, atol=1e-12
    )
    return float(path.y[1, -1]), float(path.t[-1])


@pytest.mark.parametrize(("level", "seed"), LEVELS)
def test_the_chest_on_the_ramp_moves_as_integrated(level: int, seed: int) -> None:
    """Speed and average power from the integrated motion; each work with the sign of its force along the way."""
    v = drawn("ramp", level, seed).values
    along, out = (np.array([np.cos(a), np.sin(a)]) for a in (v["theta"], v["theta"] + np.pi / 2))
    weight = np.array([0.0, -v["m"] * G])
    friction = v["mu_k"] * -float(weight @ out)
    net = v["F"] + float(weight @ along) - friction
    speed, time = after(v["L"], 0.0, net / v["m"])
    assert v["v"] == pytest.approx(speed, rel=1e-6)
    assert v["P"] == pytest.approx(v["F"] * v["L"] / time, rel=1e-6)
    assert v["W_F"] == pytest.approx(v["F"] * v["L"])
    assert v["W_w"] == pytest.approx(float(weight @ along) * v["L"])
    assert v["W_f"] == pytest.approx(-friction * v["L"])


def headings(items: tuple[Item, ...]) -> dict[str, float]:
    """The direction of each labelled force arrow, in degrees."""
    return {
        item.label: float(np.degrees(np.arctan2(item.end[1] - item.start[1], item.end[0] - item.start[0])) % 360)
        for item in items
        if isinstance(item, Arrow) and item.kind == "force"
    }


def test_the_forces_on_the_chest_are_drawn_as_the_memo_says() -> None:
    """Pull up along the slope, weight straight down, normal force at right angles, friction down the slope; and the
    scene shown before shows none of them."""
    found = solve("ramp", **{name: str(text) for name, text in topics.find("energy.ramp")[1].example.items()})
    figure = next(part.figure for part in found.parts if part.key == "draw")
    assert figure
    assert found.figure
    expected = {"F": 22.0, "w": 270.0, "N": 112.0, "f": 202.0}
    assert headings(figure.items) == pytest.approx(expected)
    assert headings(found.figure.items) == {}


def test_a_pull_that_is_too_weak_is_refused() -> None:
    """A winch that cannot pull the chest up is told so."""
    example = {name: str(text) for name, text in topics.find("energy.ramp")[1].example.items()}
    with pytest.raises(Refusal) as told:
        solve("ramp", **{**example, "F": "160 N"})
    assert str(told.value) == "The pull is too weak: it does not bring the chest up the ramp. Make it larger."


@pytest.mark.parametrize(("level", "seed"), LEVELS)
def test_the_rider_stops_where_the_motion_does(level: int, seed: int) -> None:
    """The speed at B as of a free fall by the same height; the friction found stops the rider after d."""
    found = drawn("slide", level, seed)
    v = found.values
    falling, _ = after(v["h"], v["u"], G)
    assert v["v"] == pytest.approx(falling, rel=1e-6)
    assert v["d"] == pytest.approx(v["v"] ** 2 / (2 * v["f"] / v["m"]))
    assert v["mu_k"] == pytest.approx(v["f"] / (v["m"] * G))
    figure = next(part.figure for part in found.parts if part.key == "bars")
    assert figure
    heights = [item.height for item in figure.items if isinstance(item, Column)]
    assert heights[0] / heights[1] == pytest.approx(v["m"] * G * v["h"] / (v["m"] * v["u"] ** 2 / 2))
    assert heights[2] == pytest.approx(heights[0] + heights[1])
    assert heights[3] == pytest.approx(-heights[2])


@pytest.mark.parametrize(("level", "seed"), LEVELS)
def test_ball_and_trolley_come_to_rest_where_found(level: int, seed: int) -> None:
    """Momentum in the catch, then the integrated motion up the slope: at rest after the distance found."""
    v = drawn("caught", level, seed).values
    both = v["m1"] + v["m2"]
    assert v["v"] * both == pytest.approx(v["m1"] * v["u"])
    slowing = G * np.sin(v["theta"]) + v["f"] / both
    path = integrate.solve_ivp(lambda t, s: (s[1], -slowing), (0, v["v"] / slowing), (0.0, v["v"]), rtol=1e-10)
    assert v["L"] == pytest.approx(float(path.y[0, -1]), rel=1e-6)
    assert v["SigmaE_k"] > v["SigmaE_k_after"] > 0


@pytest.mark.parametrize(("level", "seed"), LEVELS)
def test_the_bounce_loses_what_the_heights_say(level: int, seed: int) -> None:
    """Speeds of integrated falls; a constant force of the floor turns one into the other within the contact."""
    found = drawn("rebound", level, seed)
    v = found.values
    for height, speed in (("h1", "v1"), ("h2", "v2")):
        assert v[speed] == pytest.approx(after(v[height], 0.0, G)[0], rel=1e-6)
    contact = integrate.solve_ivp(
        lambda t, s: ((v["N"] - v["m"] * G) / v["m"],), (0, v["Deltat"]), (-v["v1"],), rtol=1e-10
    )
    assert v["v2"] == pytest.approx(float(contact.y[0, -1]), rel=1e-6)
    assert v["E_lost"] == pytest.approx(v["m"] * G * (v["h1"] - v["h2"]))
    figure = next(part.figure for part in found.parts if part.key == "draw")
    assert figure
    assert headings(figure.items) == pytest.approx({"N": 90.0, "w": 270.0})


@pytest.mark.parametrize(("rises", "word"), [("1,8 m", "so it is elastic"), ("1,79 m", "so it is inelastic")])
def test_the_bounce_is_judged_by_its_heights(rises: str, word: str) -> None:
    """As high as before is elastic, anything less is not; higher is refused with the reason."""
    found = solve("rebound", m="450 g", h1="1,8 m", h2=rises, Deltat="40 ms")
    (verdict,) = [part for part in found.parts if part.key == "elastic"]
    assert word in " ".join(point.words for point in verdict.points)
    with pytest.raises(Refusal) as told:
        solve("rebound", m="450 g", h1="1,8 m", h2="1,81 m", Deltat="40 ms")
    assert (
        str(told.value)
        == "It cannot bounce higher than it fell: that would need energy from nowhere. Make the second height smaller."
    )


@pytest.mark.parametrize("theta", [10.0, 21.7, 21.9, 30.0, 45.0])
def test_it_slides_back_where_statics_says_so(theta: float) -> None:
    """On each side of tan θ = µs = 0,4; the way up and the return as integrated with friction against the motion."""
    typed = {"m": "4 kg", "theta": f"{theta}°", "u": "6 m/s", "mu_s": "0,4", "mu_k": "0,3"}
    found = solve("turning", **typed)
    v, slope = found.values, np.radians(theta)
    slowing = G * (np.sin(slope) + 0.3 * np.cos(slope))
    up = integrate.solve_ivp(lambda t, s: (s[1], -slowing), (0, 6 / slowing), (0.0, 6.0), rtol=1e-10)
    assert v["d"] == pytest.approx(float(up.y[0, -1]), rel=1e-6)
    slides = 4 * G * np.sin(slope) > 0.4 * 4 * G * np.cos(slope)
    told = " ".join(point.words for part in found.parts for point in part.points)
    assert ("so the block slides back" in told) == slides
    assert ("so the block stays at rest" in told) == (not slides)
    assert ("v" in v) == slides
    assert ("f_s" in v) == (not slides)
    if slides:
        back, _ = after(v["d"], 0.0, G * (np.sin(slope) - 0.3 * np.cos(slope)))
        assert v["v"] == pytest.approx(back, rel=1e-6)
        assert v["v"] < 6
    else:
        assert v["f_s"] == pytest.approx(4 * G * np.sin(slope))


def test_the_tasks_are_the_same_whether_it_slides_back_or_stays() -> None:
    """No task and no number of marks tells the decision."""
    told = []
    for theta in ("15°", "30°"):
        found = solve("turning", m="4 kg", theta=theta, u="6 m/s", mu_s="0,4", mu_k="0,3")
        told.append([(part.ask, part.marks) for part in found.parts])
    assert told[0] == told[1]


def test_a_kinetic_friction_above_the_static_one_is_warned_of() -> None:
    """It is worked all the same, with a word."""
    typed = {"m": "4 kg", "theta": "30°", "u": "6 m/s", "mu_s": "0,2", "mu_k": "0,3"}
    assert solve("turning", **typed).warnings == (
        (
            "The coefficient of kinetic friction is usually smaller than that of static friction. Check which is which;"
            " it is worked out all the same."
        ),
    )


@pytest.mark.parametrize(("level", "seed"), LEVELS)
def test_two_ways_as_sums_over_a_crooked_path(level: int, seed: int) -> None:
    """Work summed over many straight pieces of any path of the right length and height: the weight's is the same."""
    v = drawn("two-ways", level, seed).values
    chance = np.random.default_rng(seed)
    for way, work_ in (("L_1", "W_1"), ("L_2", "W_2")):
        shares = chance.dirichlet(np.ones(50))
        rises = v["h"] * chance.dirichlet(np.ones(50))
        assert np.sum(-v["m"] * G * rises) == pytest.approx(v["W_w"])
        assert np.sum(-v["f"] * v[way] * shares) == pytest.approx(v[work_])


@pytest.mark.parametrize(
    ("way", "short", "fits", "sentence"),
    [
        (
            "L_1",
            "1,99 m",
            "2 m",
            "A way cannot be shorter than the height between its ends. Make it longer, or the height smaller.",
        ),
        ("L_2", "3 m", "3,01 m", "Way 1 is straight, so it is the shortest there is. Make way 2 longer than way 1."),
    ],
)
def test_a_way_that_is_too_short_is_refused(way: str, short: str, fits: str, sentence: str) -> None:
    """No way is shorter than the height between its ends, and none as short as the straight one."""
    typed = {"m": "24 kg", "h": "2 m", "L_1": "3 m", "L_2": "8 m", "f": "60 N"}
    assert solve("two-ways", **{**typed, way: fits}).values["W_w"] == pytest.approx(-24 * G * 2)
    with pytest.raises(Refusal) as told:
        solve("two-ways", **{**typed, way: short})
    assert told.value.field == way
    assert str(told.value) == sentence


ASKS = {
    "two-ways": ("same work", "negative", "more work", "cancel"),
    "turning": ("stays at rest", "larger", "negative", "heat", "potential"),
    "rebound": ("inelastic", "lost", "smaller", "longer arrow", "heat"),
    "ramp": ("larger", "smaller", "negative", "zero work"),
    "slide": ("conserved there", "same distance", "negative", "at C too"),
    "caught": ("smaller", "inelastic", "lost", "not conserved"),
}


@pytest.mark.parametrize("key", ASKS)
def test_neither_story_nor_tasks_tell_an_answer(key: str) -> None:
    """No telling and no part's task has the words that a later answer is to find."""
    topic, question = topics.find(f"energy.{key}")
    for variant in (0, 1, 2):
        found = work(topic, question, read(question, question.example, variant=variant))
        told = " ".join([found.story, *(part.ask for part in found.parts)]).lower()
        assert not [words for words in ASKS[key] if words in told]


@pytest.mark.parametrize(
    ("key", "kinds"),
    [
        ("ramp", "state draw calculate calculate calculate explain calculate explain calculate"),
        ("slide", "state explain calculate calculate calculate draw explain explain"),
        ("rebound", "state calculate calculate calculate explain draw calculate explain"),
        ("caught", "explain calculate calculate explain state calculate explain"),
    ],
)
def test_parts_stand_in_the_order_of_an_examination(key: str, kinds: str) -> None:
    """What is stated, drawn, calculated and explained, one after the other."""
    found = drawn(key, 1, 1)
    assert " ".join(part.kind for part in found.parts) == kinds
