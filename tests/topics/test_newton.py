"""Connected bodies: published cases, numpy and the engine of chains for every unknown, refusals, words and pictures."""

from __future__ import annotations

import json
import random
from math import cos, degrees, radians, sin

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from calc import desk, topics
from calc.figures import Arrow
from calc.model.answers import WorkedAnswer
from calc.model.questions import Choice, Input, Refusal
from calc.practice.drawing import draw
from calc.topics.shared.connected import HANGING, Body, outcome
from calc.working.reading import Refusals, read
from calc.working.working import work
from tests.topics.asking import Chapter

G = 9.8
ASKED = Chapter("newton")
solve, value, refused, given, published = ASKED.solve, ASKED.value, ASKED.refused, ASKED.given, ASKED.published


# Sources stand in newton_published.json: OpenStax University Physics Volume 1 and OpenStax College Physics,
# worked examples and exercises, CC BY 4.0.


@pytest.mark.parametrize("case", ["lift-up-scale", "lift-down-scale", "lift-scale"])
def test_published_scales_in_a_lift(case: str) -> None:
    """What scales show in a lift that accelerates up and down."""
    m, a = given(case, "m", "a")
    assert value("lift", "N", on="floor", m=f"{m} kg", a=f"{a} m/s^2") == published(case)


@pytest.mark.parametrize("case", ["lift-cable-speeding-up", "lift-cable-slowing"])
def test_the_published_cable(case: str) -> None:
    """The cable of a loaded lift carries it as a string does; slowing on the way up the acceleration is downwards."""
    m, a = given(case, "m", "a")
    assert value("lift", "T", on="string", m=f"{m} kg", a=f"{a} m/s^2") == published(case)


def test_the_published_rise_of_a_lift() -> None:
    """Three stages of a rise, integrated by scipy from the accelerations of the three equations."""
    a1, t1, t2, a3, t3 = map(float, given("lift-total-rise", "a1", "t1", "t2", "a3", "t3"))
    m, place, speed = 1700.0, 0.0, 0.0
    for a, lasting in ((a1, t1), (0.0, t2), (a3, t3)):
        pull = m * (G + a)
        found = value("lift", "a", on="string", m=f"{m} kg", T=f"{pull:.12g} N")
        path = solve_ivp(lambda t, y, a=found: [y[1], a], (0, lasting), [place, speed], rtol=1e-10)
        place, speed = path.y[:, -1]
    assert place == published("lift-total-rise")
    assert speed == pytest.approx(0, abs=1e-6)


def test_the_published_bag_on_a_balance() -> None:
    """The mass of a bag whose balance shows less in a lift that accelerates downwards."""
    reading, a = given("lift-hung-bag-mass", "reading", "a")
    assert value("lift", "m", on="string", T=f"{reading} N", a=f"{a} m/s^2") == published("lift-hung-bag-mass")


def test_the_published_launch_and_shell() -> None:
    """A rocket at lift-off and a shell in its tube obey the same equation: force upwards less weight."""
    m, thrust = given("launch-acceleration", "m", "F")
    data = {"on": "floor", "m": f"{m} kg", "N": f"{thrust} N"}
    assert value("lift", "a", **data) == published("launch-acceleration")
    m, height, tube = map(float, given("mortar-average-force", "m", "h", "L"))
    a = G * height / tube  # v² = 2gh above, v² = 2aL in the tube
    assert m * a == published("mortar-average-force")
    assert value("lift", "T", on="string", m=f"{m} kg", a=f"{a:.12g} m/s^2") == pytest.approx(m * (a + G))


def test_the_published_swimmer() -> None:
    """The average net force on an animal that slows down in water, by impulse and by the second law."""
    m, u, v, t = given("swimmer-slowing", "m", "u", "v", "t")
    topic, question = topics.find("momentum.impulse")
    data = {"m": f"{m} kg", "u": f"{u} m/s", "v": f"{v} m/s", "Deltat": f"{t} s"}
    found = work(topic, question, read(question, data, "F_net")).values["F_net"]
    assert found == published("swimmer-slowing")
    assert found == pytest.approx(float(m) * (float(v) - float(u)) / float(t))


@pytest.mark.parametrize("case", ["table-pulley-a", "table-pulley-2-a"])
def test_published_blocks_over_the_edge_of_a_table(case: str) -> None:
    """A smooth table, one block hanging."""
    m1, m2 = given(case, "m1", "m2")
    assert value("edge", "a", m1=f"{m1} kg", m2=f"{m2} kg", mu="0") == published(case)


def test_the_published_speed_at_the_floor() -> None:
    """From rest over the height, with the acceleration found."""
    m1, m2, height = given("table-pulley-2-v", "m1", "m2", "h")
    a = value("edge", "a", m1=f"{m1} kg", m2=f"{m2} kg", mu="0")
    assert (2 * a * float(height)) ** 0.5 == published("table-pulley-2-v")


def test_the_published_tension_of_two_that_hang() -> None:
    """Two masses over one pulley."""
    m1, m2 = given("two-hanging-T", "m1", "m2")
    assert value("pulley", "T", m1=f"{m1} kg", m2=f"{m2} kg") == published("two-hanging-T")


def test_the_published_slope_and_pulley() -> None:
    """A smooth slope, one block hanging."""
    m1, m2, angle = given("slope-pulley-a", "m1", "m2", "angle")
    data = {"way": "unsaid", "m1": f"{m1} kg", "m2": f"{m2} kg", "theta": f"{angle}°", "mu": "0"}
    worked = solve("incline", "a", **data)
    assert worked.values["a"] == published("slope-pulley-a")
    assert [one.direction.words for one in worked.answers if one.direction] == ["up the slope"]


def test_the_references_of_the_notes() -> None:
    """4 kg on a table, 3 kg hangs; the same on a slope of 30°; 60 kg in a lift."""
    data = {"m1": "4 kg", "m2": "3 kg"}
    assert value("edge", "a", mu="0,25", **data) == pytest.approx(2.80, abs=0.005)
    assert value("edge", "T", mu="0,25", **data) == pytest.approx(21.00, abs=0.005)
    slope = {**data, "way": "unsaid", "theta": "30°", "mu": "0,2"}
    assert value("incline", "a", **slope) == pytest.approx(0.43, abs=0.005)
    assert value("incline", "T", **slope) == pytest.approx(28.11, abs=0.005)
    for a, shown in ((1.5, 678), (-1.5, 498)):
        assert value("lift", "N", on="floor", m="60 kg", a=f"{a} m/s^2") == pytest.approx(shown)


# --- independent routes -----------------------------------------------------------------------------------------


def system(key: str, v: dict[str, float], down: bool = False) -> tuple[float, float]:
    """a and the force in the link, from two equations as a matrix."""
    m1, m2, mu = v["m1"], v["m2"], v.get("mu", 0.0)
    if key == "row":
        matrix, right = [[m1, -1], [m2, 1]], [-mu * m1 * G, v["P"] - mu * m2 * G]
    elif key == "contact":
        matrix, right = [[m1, 1], [m2, -1]], [v["P"] - mu * m1 * G, -mu * m2 * G]
    elif key == "edge":
        matrix, right = [[m1, -1], [m2, 1]], [-mu * m1 * G, m2 * G]
    elif key == "pulley":
        matrix, right = [[m1, -1], [m2, 1]], [-m1 * G, m2 * G]
    else:
        along, across = m1 * G * sin(v["theta"]), m1 * G * cos(v["theta"])
        sign = -1 if down else 1
        matrix, right = [[m1, -sign], [m2, sign]], [-sign * along - mu * across, sign * m2 * G]
    a, force = np.linalg.solve(matrix, right)
    return float(a), float(force)


UNITS = {"m1": "kg", "m2": "kg", "P": "N", "mu": "", "a": "m/s^2", "T": "N", "R": "N"}
SETS = [
    ("row", {"m1": 3.0, "m2": 5.0, "P": 40.0, "mu": 0.15}, False),
    ("contact", {"m1": 3.0, "m2": 5.0, "P": 40.0, "mu": 0.15}, False),
    ("edge", {"m1": 5.0, "m2": 4.0, "mu": 0.3}, False),
    ("pulley", {"m1": 2.0, "m2": 3.5}, False),
    ("incline", {"m1": 4.0, "m2": 5.0, "theta": radians(25), "mu": 0.2}, False),
    ("incline", {"m1": 8.0, "m2": 1.0, "theta": radians(35), "mu": 0.2}, True),
]


@pytest.mark.parametrize(("key", "data", "down"), SETS)
def test_a_matrix_gives_the_same_and_every_unknown_comes_back(key: str, data: dict[str, float], down: bool) -> None:
    """numpy finds a and T from two equations; each datum left out comes back from the rest and a."""
    a, force = system(key, data, down)
    link = "R" if key == "contact" else "T"
    typed = {name: f"{degrees(x)}°" if name == "theta" else f"{x} {UNITS[name]}".strip() for name, x in data.items()}
    typed |= {"way": "down" if down else "up"} if key == "incline" else {}
    assert value(key, "a", **typed) == pytest.approx(a)
    assert value(key, link, **typed) == pytest.approx(force)
    for name in data:
        if name == "theta":
            continue
        rest = {n: text for n, text in typed.items() if n != name}
        assert value(key, name, a=f"{a:.12g} m/s^2", **rest) == pytest.approx(data[name], rel=1e-6)


def test_the_tension_lies_between_the_weights_and_the_push_loses_what_the_first_needs() -> None:
    """Sanity of the catalogue: both bodies give the same T, and R is less than P."""
    t = value("pulley", "T", m1="2 kg", m2="3 kg")
    assert 2 * G < t < 3 * G
    r = value("contact", "R", m1="2 kg", m2="3 kg", P="40 N", mu="0,1")
    assert r == pytest.approx(40 * 3 / 5)
    assert value("edge", "a", m1="0,0001 kg", m2="3 kg", mu="0") == pytest.approx(G, rel=1e-4)


@pytest.mark.parametrize(("m2", "said"), [(4.2, "up the slope"), (1.0, "down the slope"), (2.5, "")])
def test_which_way_a_slope_goes_is_decided_by_the_numbers(m2: float, said: str) -> None:
    """5 kg at 30°, μ 0,2: its part along the slope is 24,5 N, friction 8,5 N; in between they stay."""
    data = {"way": "unsaid", "m1": "5 kg", "m2": f"{m2} kg", "theta": "30°", "mu": "0,2"}
    if not said:
        assert "still" in {part.key for part in solve("incline", "a", **data).parts}
        assert refused("incline", "a", **{**data, "way": "up"}).startswith(
            "Friction can hold the difference: released from rest they stay"
        )
        return
    worked = solve("incline", "a", **data)
    assert [one.direction.words for one in worked.answers if one.direction] == [said]
    points = [point.words for part in worked.parts if part.key == "draw-1" for point in part.points]
    against = {"up the slope": "down the slope", "down the slope": "up the slope"}[said]
    assert f"f: friction, {against}." in points
    told = [sentence for sentence in worked.story.split(". ") if "slope" in sentence]
    assert not any("up the slope" in one or "down the slope" in one for one in told)


@pytest.mark.parametrize(
    ("m2", "state", "way"), [(30, "stay", 1), (35, "slide", 1), (12, "stay", -1), (5, "slide", -1)]
)
def test_a_sledge_and_its_counterweight_do_what_a_matrix_says(m2: int, state: str, way: int) -> None:
    """40 kg at 30°, μs 0,3, μk 0,2: held up to 101,8 N; the tension from two equations, or the whole weight at rest."""
    data = {"m1": "40 kg", "m2": f"{m2} kg", "theta": "30°", "mu_s": "0,3", "mu_k": "0,2"}
    worked = solve("quarry", **data)
    points = {part.key: " ".join(point.words for point in part.points) for part in worked.parts}
    assert ("they stay at rest" in points["decide"]) == (state == "stay")
    up, down = "up the slope", "down the slope"
    assert f"f: friction, {down if way > 0 else up}." in points["draw"]
    if state == "stay":
        assert worked.values["T"] == pytest.approx(m2 * G)
        assert "The acceleration is zero" in points["then"]
        return
    a, force = system("incline", {"m1": 40, "m2": m2, "theta": radians(30), "mu": 0.2}, down=way < 0)
    assert worked.values["T"] == pytest.approx(force)
    assert worked.values["a"] == pytest.approx(a)
    assert f"slide {up if way > 0 else down}" in points["decide"]
    assert f"{a:.2f}".replace(".", ",") in points["then"]


def test_a_sledge_does_not_tell_whether_or_which_way_it_goes() -> None:
    """Four counterweights, the same words, marks and picture but for the number."""
    told, marks = set(), set()
    for m2 in (5, 12, 30, 35):
        data = {"m1": "40 kg", "m2": f"{m2} kg", "theta": "30°", "mu_s": "0,3", "mu_k": "0,2"}
        worked = solve("quarry", **data)
        assert worked.figure
        seen = (worked.story, *(part.ask for part in worked.parts), worked.figure.description)
        told.add(" ".join(seen).replace(f"{m2}\N{NO-BREAK SPACE}kg", "m₂"))
        marks.add(tuple(part.marks for part in worked.parts))
    assert len(told) == len(marks) == 1


def test_kinetic_friction_above_static_is_warned_of_where_it_changes_nothing() -> None:
    """40 kg at 30°: D is 98 N with 30 kg; with μs 0,3 and μk 0,4 they stay, between the two they could do neither."""
    data = {"m1": "40 kg", "theta": "30°"}
    for m2, mu_s, mu_k in (("30 kg", "0,3", "0,4"), ("40 kg", "0,3", "0,4")):
        worked = solve("quarry", m2=m2, mu_s=mu_s, mu_k=mu_k, **data)
        assert any("μₖ is larger than μₛ" in one for one in worked.warnings)
    said = (
        "With these coefficients kinetic friction would stop them as soon as they start: μₖ may not be larger than μₛ."
    )
    assert said in refused("quarry", m2="32 kg", mu_s="0,3", mu_k="0,4", **data)
    assert not solve("quarry", m2="30 kg", mu_s="0,3", mu_k="0,3", **data).warnings


# --- refusals ---------------------------------------------------------------------------------------------------

PAIR = {"m1": "4 kg", "m2": "3 kg"}


@pytest.mark.parametrize(
    ("key", "find", "typed", "sentence"),
    [
        (
            "edge",
            "m2",
            {"m1": "4 kg", "mu": "0,2", "a": "9,8 m/s^2"},
            "A hanging mass cannot accelerate it at g or more",
        ),
        (
            "edge",
            "m2",
            {"m1": "4 kg", "mu": "0,2", "a": "12 m/s^2"},
            "A hanging mass cannot accelerate it at g or more",
        ),
        (
            "edge",
            "T",
            {"m1": "9 kg", "m2": "1 kg", "mu": "0,5", "a": "1 m/s^2"},
            "With these numbers they stay at rest: a = 0 and T = m₂g follow. Leave this box empty, or change a number.",
        ),
        (
            "edge",
            "a",
            {"m1": "9 kg", "T": "30 N", "mu": "0,5"},
            "With these numbers they would not speed up this way. Check the acceleration, the tension, a mass or the",
        ),
        ("row", "a", {**PAIR, "P": "5 N", "mu": "0,5"}, "T cannot be found"),
        (
            "row",
            "a",
            {**PAIR, "P": "40 N", "mu": "0,1", "T": "-2 N"},
            "The string goes slack: treat the bodies separately",
        ),
        ("row", "m2", {"P": "40 N", "mu": "0,3", "a": "1 m/s^2", "T": "0 N"}, "the tension must be greater than zero"),
        ("contact", "a", {**PAIR, "P": "5 N", "mu": "0,5"}, "R cannot be found"),
        ("pulley", "a", {"m1": "4 kg", "m2": "3 kg"}, "must be the heavier one"),
        ("pulley", "T", {"m1": "4 kg", "m2": "4 kg"}, "must be the heavier one"),
        ("lift", "N", {"on": "floor", "m": "60 kg", "a": "-11 m/s^2"}, "It leaves the floor"),
        ("lift", "T", {"on": "string", "m": "60 kg", "a": "-11 m/s^2"}, "The string goes slack"),
        ("lift", "a", {"on": "floor", "m": "60 kg", "T": "500 N"}, "stands on the floor without a string"),
        (
            "incline",
            "m2",
            {"way": "unsaid", "m1": "4 kg", "theta": "30°", "mu": "0,2", "a": "1 m/s^2"},
            "Say which way they move",
        ),
        (
            "incline",
            "a",
            {"way": "down", "m1": "2 kg", "m2": "6 kg", "theta": "30°", "mu": "0,2"},
            "they move the other way",
        ),
        (
            "incline",
            "a",
            {"way": "up", "m1": "4 kg", "m2": "2,2 kg", "theta": "30°", "mu": "0,2"},
            "Friction can hold the difference: released from rest they stay, so a = 0 and T = m₂g. Choose “not said”",
        ),
        (
            "incline",
            "a",
            {"way": "unsaid", "m1": "4 kg", "m2": "2,2 kg", "theta": "30°", "mu": "0,2", "T": "20 N"},
            "With these numbers they stay at rest: a = 0 and T = m₂g follow. Leave this box empty",
        ),
        ("lift", "N", {"on": "floor", "m": "60 kg", "a": "-9,81 m/s^2"}, "It leaves the floor: a floor cannot pull"),
        ("lift", "m", {"on": "floor", "N": "0 N", "a": "-9,8 m/s^2"}, "the mass cannot be found"),
        ("edge", "a", {"m1": "0 kg", "m2": "3 kg", "mu": "0,2"}, "Mass must be greater than zero."),
        ("bench", "", {"m1": "9 kg", "m2": "1 kg", "mu": "0,5"}, "from rest nothing moves"),
    ],
)
def test_what_cannot_be_is_refused_with_its_reason(key: str, find: str, typed: dict[str, str], sentence: str) -> None:
    """Word for word."""
    assert sentence in refused(key, find, **typed)


# --- a string that breaks on a slope ---


@pytest.mark.parametrize(("way", "m2", "mu"), [("up", 3.0, 0.2), ("down", 0.5, 0.2), ("up", 3.0, 0.0)])
def test_a_string_that_breaks_leaves_the_forces_that_are_drawn(way: str, m2: float, mu: float) -> None:
    """The arrows of the body on the slope add up to m₁a₁ down the slope, friction against the motion it still has."""
    typed = {"way": way, "m1": "4 kg", "m2": f"{m2} kg", "theta": "30°", "mu": f"{mu}"}
    worked = solve("incline", "a", also="cut", **typed)
    parts = {part.key: part for part in worked.parts}
    slides = parts["cut-slides"].answer
    assert slides
    assert slides.direction
    assert slides.direction.words == "down the slope"
    turn = 1 if way == "up" else -1
    assert slides.value == pytest.approx(G * (sin(radians(30)) + turn * mu * cos(radians(30))))
    drawn = parts["cut-draw"]
    assert drawn.figure
    sizes = {"F_g": 4 * G, "N": worked.values["N_1"], "f": worked.values["f"]}
    arrows = [one for one in drawn.figure.items if isinstance(one, Arrow)]
    assert [one.label for one in arrows] == (["F_g", "N", "f"] if mu else ["F_g", "N"])
    total = sum(
        sizes[one.label] * np.subtract(one.end, one.start) / np.hypot(*np.subtract(one.end, one.start))
        for one in arrows
    )
    assert total == pytest.approx(-4 * slides.value * np.array([cos(radians(30)), sin(radians(30))]), abs=1e-6)
    back = {"up": "down the slope", "down": "up the slope"}[way]
    if mu:
        assert f"f: friction, {back}." in [point.words for point in drawn.points]
    step = parts["cut-slides"].steps[0]
    assert f"still moves {way} at first, so friction acts {back.removesuffix(' the slope')} the slope" in step.why
    assert "9,8" in parts["cut-falls"].points[1].words
    assert not {"cut-falls", "cut-draw", "cut-slides"} & {part.key for part in solve("incline", "a", **typed).parts}


# --- at rest over the top of a slope, and weightless ------------------------------------------------------------


def at_rest(m2: str, mu: str = "0,2") -> WorkedAnswer:
    """4 kg on a slope of 30°, held by friction against what hangs."""
    return solve("incline", "a", way="unsaid", m1="4 kg", m2=m2, theta="30°", mu=mu)


@pytest.mark.parametrize(("m2", "back"), [("2,2 kg", "down the slope"), ("1,5 kg", "up the slope")])
def test_what_friction_holds_stays_with_the_string_carrying_what_hangs(m2: str, back: str) -> None:
    """a = 0, T = m₂g, and friction is what is left of the two pulls, against the larger one; all forces add to zero."""
    worked = at_rest(m2)
    hanging = float(m2.split()[0].replace(",", ".")) * G
    assert worked.values["T"] == pytest.approx(hanging)
    assert worked.values["f"] == pytest.approx(abs(hanging - 4 * G * sin(radians(30))))
    assert next(one.direction.words for one in worked.answers if one.name == "f" and one.direction) == back
    points = {part.key: " ".join(point.words for point in part.points) for part in worked.parts}
    assert "they stay at rest" in points["decide"]
    assert "acceleration is zero" in points["still"]
    assert f"f: friction, {back}." in points["draw-1"]
    sizes = {"F_g": 4 * G, "N": worked.values["N_1"], "T": hanging, "f": worked.values["f"]}
    figure = next(part.figure for part in worked.parts if part.key == "draw-1")
    assert figure
    total = np.zeros(2)
    for arrow in figure.items:
        if isinstance(arrow, Arrow):
            way = np.subtract(arrow.end, arrow.start)
            total += sizes[arrow.label] * way / np.hypot(*way)
    assert total == pytest.approx([0, 0], abs=1e-9)


def test_rest_agrees_with_the_engine_of_chains_on_each_side_of_every_limit() -> None:
    """Just inside the limits they stay, just outside they move, up or down."""
    most = 0.2 * cos(radians(30))
    for share, key in ((0.999, "still"), (1.001, "find"), (-0.999, "still"), (-1.001, "find"), (0.0, "still")):
        m2 = 4 * (sin(radians(30)) + share * most)
        assert key in {part.key for part in at_rest(f"{m2:.9g} kg").parts}
        pair = [Body(4, radians(30), 0.2, 0.2), Body(m2, -HANGING)]
        assert (outcome(pair, ["string"], g=G).state == "moves") == (key == "find")


def test_two_that_balance_need_no_friction() -> None:
    """The weights balance along the string: no arrow and no step for friction, rough or smooth."""
    for mu in ("0", "0,2"):
        worked = at_rest("2 kg", mu)
        keys = [part.key for part in worked.parts]
        assert "friction" not in keys
        drawn = next(part for part in worked.parts if part.key == "draw-1")
        assert [point.words[0] for point in drawn.points] == ["F", "N", "T"]
        assert "balance without friction" in " ".join(p.words for part in worked.parts for p in part.points)


def test_practice_by_the_newest_rule_also_draws_what_stays() -> None:
    """Up, down and at rest are drawn; by the rule before it nothing stays."""
    topic, question = topics.find("newton.incline")
    for rule, kinds in ((4, {False}), (5, {True, False})):
        met = set()
        for seed in range(12):
            drawn = draw(topic, question, seed, 1, rule)
            worked = work(topic, question, read(question, drawn.inputs, drawn.find))
            met.add("still" in {part.key for part in worked.parts})
        assert met == kinds


def test_the_story_says_rest_only_where_they_rest() -> None:
    """Held and let go, or released and moving: never the one for the other."""
    for m2, told, other in (("2,2 kg", "held at rest and then let go", "and move"), ("3 kg", "and move", "let go")):
        story = at_rest(m2).story
        assert told in story
        assert other not in story


@pytest.mark.parametrize(("on", "name"), [("floor", "N"), ("string", "T")])
def test_in_free_fall_nothing_carries_the_body(on: str, name: str) -> None:
    """An acceleration of g downwards: the force is zero, the weight alone is drawn, and the note says weightless."""
    for find, typed in ((name, {"a": "-9,8 m/s^2"}), ("a", {name: "0 N"})):
        worked = solve("lift", find, on=on, m="60 kg", **typed)
        assert worked.values[name] == pytest.approx(0, abs=1e-9)
        assert worked.values["a"] == pytest.approx(-G)
        drawn = next(part for part in worked.parts if part.kind == "draw")
        assert drawn.figure
        assert [one.label for one in drawn.figure.items if isinstance(one, Arrow)] == ["F_g"]
        assert any(note.startswith("Weightless means") for note in worked.notes)
    assert not any("Weightless" in note for note in solve("lift", name, on=on, m="60 kg", a="-9,7 m/s^2").notes)


# --- words and pictures -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(("a", "faster"), [("1,5 m/s^2", "upwards"), ("-1,5 m/s^2", "downwards")])
def test_a_lift_may_move_either_way(a: str, faster: str) -> None:
    """An acceleration upwards: up and faster, or down and slower; downwards the other way round."""
    worked = solve("lift", "N", on="floor", m="60 kg", a=a)
    points = " ".join(point.words for part in worked.parts if part.key == "motion" for point in part.points)
    slower = {"upwards": "downwards", "downwards": "upwards"}[faster]
    assert f"Moving {faster} it speeds up" in points
    assert f"Moving {slower} it slows down" in points


@pytest.mark.parametrize("key", ["row", "contact", "edge", "incline", "pulley", "bench"])
def test_each_body_has_a_diagram_whose_arrows_give_its_acceleration(key: str) -> None:
    """The drawn arrows of each body, added up with the values behind them, are m times a along its motion."""
    topic, question = topics.find(f"newton.{key}")
    worked = work(topic, question, read(question, question.example))
    v = {**worked.values, "g": G}
    for part in worked.parts:
        if part.kind != "draw":
            continue
        n = part.key.removeprefix("draw-") if part.key != "draw" else "1"
        sizes = {"F_g": v[f"m{n}"] * G, "T": v.get("T", 0), "R": v.get("R", 0), "P": v.get("P", 0)}
        sizes |= {"f": v.get(f"f_{n}", v.get("f", 0)), "N": v.get("N_1", v[f"m{n}"] * G)}
        assert part.figure
        total = np.zeros(2)
        for arrow in part.figure.items:
            if isinstance(arrow, Arrow):
                way = np.subtract(arrow.end, arrow.start)
                total += sizes[arrow.label] * way / np.hypot(*way)
        assert np.hypot(*total) == pytest.approx(v[f"m{n}"] * v["a"], rel=1e-6), (key, n)


@pytest.mark.parametrize("key", ["row", "contact", "edge", "incline", "pulley"])
def test_the_tension_is_the_same_in_both_diagrams_and_points_away_from_each_body(key: str) -> None:
    """T points along the string: to the right on the left body, up where it hangs."""
    topic, question = topics.find(f"newton.{key}")
    for seed in range(5):
        drawn = draw(topic, question, seed, 2, 4)
        worked = work(topic, question, read(question, drawn.inputs, drawn.find, variant=drawn.variant))
        ways = []
        for part in worked.parts:
            if part.kind == "draw" and part.figure:
                link = next(one for one in part.figure.items if isinstance(one, Arrow) and one.label in ("T", "R"))
                ways.append(degrees(np.arctan2(link.end[1] - link.start[1], link.end[0] - link.start[0])))
        if key in ("edge", "pulley", "incline"):
            assert ways[1] == pytest.approx(90)
        if key == "row":
            assert ways == pytest.approx([0, 180])
        if key == "contact":
            assert [abs(way) for way in ways] == pytest.approx([180, 0])


def test_after_the_break_the_toolbox_slows_at_mu_g() -> None:
    """Whatever its mass; before, it was pulled the other way."""
    for m1 in ("4 kg", "6 kg"):
        worked = solve("bench", m1=m1, m2="5 kg", mu="0,3")
        assert worked.values["a_1"] == pytest.approx(0.3 * G)
        assert (
            next(one.direction.words for one in worked.answers if one.name == "a_1" and one.direction) == "to the left"
        )


@pytest.mark.parametrize(
    ("key", "wrong", "words"),
    [
        ("edge", {"find": "6,5333 m/s²"}, "You divided by one mass alone"),
        ("edge", {"find": "4,2 m/s²"}, "You left friction out"),
        ("row", {"find": "3,824 m/s²"}, "You counted the friction on one body"),
        ("bench", {"motion": "29,40 N"}, "You made T as large as the weight of what hangs"),
        ("bench", {"motion": "34,9125 N"}, "It falls, so its weight beats the tension"),
        ("bench", {"motion": "5,5125 N"}, "Net force is not tension"),
        ("bench", {"slows": "9,80 m/s²"}, "You gave the toolbox the acceleration of free fall"),
        ("lift", {"find": "588,00 N"}, "You made N as large as the weight"),
        ("lift", {"find": "498,00 N"}, "Up is positive"),
    ],
)
def test_mistakes_of_the_table_are_named(key: str, wrong: dict[str, str], words: str) -> None:
    """The number that a known mistake gives brings its sentence."""
    _, question = topics.find(f"newton.{key}")
    answers = {part: {"value": text, "direction": ""} for part, text in wrong.items()}
    data = {"question": f"newton.{key}", "inputs": dict(question.example), "answers": answers}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))["data"]
    fits = [say for part in reply["parts"] for fit in part["fits"] for say in fit["say"]]
    told = [sentence for part in reply["parts"] for sentence in (*part["sentences"], *part["problems"])]
    assert words in " ".join(map(str, (*fits, *told)))


def test_a_longer_list_of_draws_agrees_with_the_engine_of_chains() -> None:
    """Each drawn slope goes the way that the forces say, with its a positive."""
    topic, question = topics.find("newton.incline")
    for seed in range(25):
        drawn = draw(topic, question, seed, 1, 4)
        v = work(topic, question, read(question, drawn.inputs, drawn.find)).values
        along, rub = v["m1"] * G * sin(v["theta"]), v["mu"] * v["m1"] * G * cos(v["theta"])
        hanging = v["m2"] * G
        net = hanging - along - rub if hanging > along else along - hanging - rub
        assert v["a"] == pytest.approx(net / (v["m1"] + v["m2"]))
        assert net > 0


EDGES = {"°": (0, 0.001, 5, 20, 30, 45, 60, 89, 89.99), "": (0, 0.1, 0.3, 0.6, 1, 1.5, 5)}


@pytest.mark.parametrize("key", ["row", "contact", "edge", "incline", "pulley", "lift", "bench", "quarry"])
def test_any_data_are_worked_and_drawn_or_refused(key: str) -> None:
    """Numbers from the ends of every box, any choices, any unknown: an answer with its drawings, or a sentence."""
    topic, question = topics.find(f"newton.{key}")
    empty = 0.4 if question.unknowns else 0.05
    chance, worked = random.Random(f"any {key}"), 0
    for _ in range(90):
        typed = {}
        for item in question.fields:
            if isinstance(item, Choice):
                typed[item.name] = chance.choice(item.options)[0]
            elif isinstance(item, Input):
                numbers = EDGES.get(item.unit, (0, 0.01, 1, 5, 9.8, 20, 49, 100, 1e4, -2))
                typed[item.name] = "" if chance.random() < empty else f"{chance.choice(numbers)} {item.unit}"
        find = chance.choice(question.unknowns) if question.unknowns else ""
        try:
            answer = work(topic, question, read(question, typed | ({find: ""} if find else {}), find))
        except (Refusal, Refusals):
            continue
        assert answer.figure
        assert all(part.figure for part in answer.parts if part.kind == "draw")
        worked += 1
    assert worked


@pytest.mark.parametrize("lift", [1.2, 0.0, -2.5, -9.0])
def test_a_pulley_in_a_lift_does_what_a_matrix_says(lift: float) -> None:
    """Seen from the ground: each body by itself, and a string whose ends sink and rise about the lift's own motion."""
    m1, m2 = 3.0, 5.0
    up_1, up_2, tension = np.linalg.solve([[m1, 0, -1], [0, m2, -1], [1, 1, 0]], [-m1 * G, -m2 * G, 2 * lift])
    found = solve("hoist", m1="3 kg", m2="5 kg", a_L=f"{lift} m/s^2")
    v = found.values
    assert (v["T"], v["a_2"], v["F"]) == pytest.approx((tension, up_2, 2 * tension))
    assert v["a"] == pytest.approx(up_1 - lift)
    ground = next(part for part in found.parts if part.key == "ground")
    assert ground.answers[0].direction.words == ("upwards" if up_2 > 0 else "downwards")


def test_a_pulley_in_a_lift_has_its_heavier_body_and_its_string_tight() -> None:
    """Equal masses, the lighter one named second, and a lift that falls faster than freely are refused."""
    assert "must be the heavier one" in refused("hoist", m1="3 kg", m2="3 kg", a_L="1 m/s^2")
    assert "must be the heavier one" in refused("hoist", m1="3 kg", m2="2 kg", a_L="1 m/s^2")
    assert "string goes slack" in refused("hoist", m1="3 kg", m2="5 kg", a_L="-9,8 m/s^2")
