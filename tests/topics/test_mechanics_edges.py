"""What questions of mechanics say and draw at their edges: small speeds, rest, equal forces, a pull along the slope.

Expected words follow from the data by common sense; nothing is taken from the declarations.
"""

import json
from functools import cache
from math import atan2, cos, degrees, radians, sin

import pytest

from calc import desk, topics
from calc.figures import AngleMark, Arrow, Block, Segment
from calc.topics.energy.drawn import surface
from calc.topics.energy.moved import Way, weight_law
from calc.topics.projectile.lamp import meanwhile
from calc.topics.projectile.reading import balance
from calc.working.reading import read

# question, what is asked, data besides those of the example, what must be told, what must not
ROWS: list[tuple[str, str, dict[str, str], tuple[str, ...], tuple[str, ...]]] = [
    # A velocity below 1 m/s has a direction all the same.
    (
        "momentum.impulse",
        "F_net",
        {"u": "0,5 m/s", "v": "-0,5 m/s", "m": "150 g", "Deltat": "5 ms"},
        ("Before, a body moves to the right with u. After, a body moves to the left with v.",),
        (),
    ),
    (
        "momentum.impulse",
        "F_net",
        {"u": "-0,5 m/s", "v": "0,5 m/s", "m": "150 g", "Deltat": "5 ms"},
        ("Before, a body moves to the left with u. After, a body moves to the right with v.",),
        (),
    ),
    ("momentum.bat", "", {"u": "0,5 m/s", "v": "-0,5 m/s"}, ("right with u. After, a body moves to the left",), ()),
    ("momentum.bat", "", {"u": "-0,5 m/s", "v": "0,5 m/s"}, ("left with u. After, a body moves to the right",), ()),
    (
        "momentum.canister",
        "",
        {"u": "0,5 m/s", "v1": "-0,5 m/s"},
        ("1 moves to the right with u.", "1 moves to the left with v1", "2 moves to the right with v2"),
        (),
    ),
    (
        "momentum.canister",
        "",
        {"u": "-0,5 m/s", "v1": "-0,9 m/s"},
        ("1 moves to the left with u.", "1 moves to the left with v1"),
        (),
    ),
    ("momentum.join", "v", {"u1": "0,5 m/s", "u2": "-0,5 m/s"}, ("1 moves to the right", "2 moves to the left"), ()),
    ("momentum.elastic", "v1", {"u1": "0 m/s", "u2": "-3 m/s"}, ("moves at 0",), ("the first is at rest",)),
    ("projectile.meeting", "t", {"u_A": "0,5 m/s", "y_A": "9 m", "y_B": "9,01 m", "t_0": "0 s"}, ("A moves up",), ()),
    # A pull lifts, a push presses.
    ("forces.level", "a", {"how": "pull", "P": "120 N", "phi": "60°", "m": "5 kg", "mu": "0,2"}, ("lifts it off",), ()),
    ("forces.level", "a", {"how": "push", "P": "120 N", "phi": "20°", "m": "5 kg", "mu": "0,2"}, ("a =",), ("lifts",)),
    (
        "forces.slope",
        "a",
        {"how": "pull", "motion": "up", "P": "60 N", "phi": "0°", "m": "6 kg", "theta": "25°", "mu": "0,2"},
        ("The pull is parallel to the slope.", "pulls it up the slope, along the surface", "P 25° above the right"),
        (),
    ),
    # At rest as long as the drive is not larger than the largest static friction, and at its very edge.
    (
        "forces.moves",
        "",
        {"how": "pull", "P": "9,8 N", "phi": "0°", "theta": "0°", "m": "2 kg", "mu_s": "0,5", "mu_k": "0,6"},
        ("Static friction can hold it: it stays at rest.",),
        (),
    ),
    # A weight just a little smaller than on the ground is a weight at a height.
    ("gravitation.lander", "", {"n": "1,05"}, ("Answer:",), ("greater than 1",)),
    ("gravitation.lander", "", {"n": "1"}, ("greater than 1",), ("Answer:",)),
    (
        "projectile.lift",
        "t",
        {"a": "-9,8 m/s^2"},
        ("a lift whose acceleration is g downwards, or more,",),
        ("Answer:",),
    ),
    # A force below 1 N has a direction all the same.
    (
        "newton.situation",
        "",
        {"chain": "one", "force": "pull-on", "m1": "5 kg", "m2": "", "P": "0,5 N", "theta": "0°", "phi": "0°"}
        | {"mu_s": "0", "mu_k": "0"},
        ("0,50 N, to the right", "0,10 m·s⁻², to the right"),
        ("to the left",),
    ),
    # Two at one pulley: the heavier goes down.
    (
        "newton.situation",
        "",
        {"chain": "pulley", "force": "none", "m1": "3 kg", "m2": "5 kg", "theta": "", "P": "", "phi": ""}
        | {"mu_s": "", "mu_k": ""},
        ("2,45 m·s⁻², upwards",),
        (),
    ),
    (
        "newton.situation",
        "",
        {"chain": "pulley", "force": "none", "m1": "5 kg", "m2": "3 kg", "theta": "", "P": "", "phi": ""}
        | {"mu_s": "", "mu_k": ""},
        ("2,45 m·s⁻², downwards",),
        (),
    ),
]


@cache
def told(key: str, find: str, inputs: tuple[tuple[str, str], ...]) -> str:
    """The worked answer as text, or what is said when it is refused."""
    given = {**topics.find(key)[1].example, **dict(inputs), **({find: ""} if find else {})}
    data = {"question": key, "inputs": given, "find": find, "as": ["text"]}
    reply = json.loads(desk.answer(json.dumps({"operation": "solve", "data": data})))
    text: str = reply["data"]["text"] if reply["ok"] else json.dumps(reply["errors"], ensure_ascii=False)
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("key", "find", "inputs", "says", "never"), ROWS, ids=[f"{row[0]} {n}" for n, row in enumerate(ROWS)]
)
def test_at_its_edges(
    key: str, find: str, inputs: dict[str, str], says: tuple[str, ...], never: tuple[str, ...]
) -> None:
    """Directions of small speeds, rest, a lifted body, equality: words and picture say what the data say."""
    text = told(key, find, tuple(inputs.items()))
    assert [words for words in says if words not in text] == []
    assert [words for words in never if words in text] == []


@pytest.mark.parametrize("down", [False, True])
def test_a_slanting_pull_is_drawn_from_the_front_of_the_body_away_from_the_surface(down: bool) -> None:
    """On a slope of 20° with the pull 30° off it: up along 20° and 50°, down along 200° and 170°; φ lies between."""
    figure = surface({"theta": radians(20)}, level=False, down=down, pull=30.0, above=True, title="t", opening="o")
    pull = next(item for item in figure.items if isinstance(item, Arrow) and item.label == "F")
    guide = next(item for item in figure.items if isinstance(item, Segment))
    mark = next(item for item in figure.items if isinstance(item, AngleMark) and item.label == "φ")
    turns = [
        degrees(atan2(y2 - y1, x2 - x1)) % 360
        for (x1, y1), (x2, y2) in ((guide.start, guide.end), (pull.start, pull.end))
    ]
    along, across = (200.0, 170.0) if down else (20.0, 50.0)
    assert turns == pytest.approx([along, across])
    assert (mark.start_deg, mark.end_deg) == pytest.approx((min(along, across), max(along, across)))
    block = next(item for item in figure.items if isinstance(item, Block))
    ahead = (pull.start[0] - block.centre[0]) * cos(radians(along)) + (pull.start[1] - block.centre[1]) * sin(
        radians(along)
    )
    assert ahead > 0


def told_of(key: str, part: str, value: str, find: str, **inputs: str) -> list[tuple[str, str]]:
    """The mistakes that an answer is told to come from, each with what is said of it."""
    data = {"question": key, "inputs": inputs, "find": find, "answers": {part: {"value": value}}}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    verdict = next(one for one in reply["data"]["parts"] if one["part"] == part)
    return [(name, say) for fit in verdict["fits"] for name, say in zip(fit["keys"], fit["say"], strict=True)]


def causes(key: str, part: str, value: str, find: str, **inputs: str) -> list[str]:
    """The mistakes alone."""
    return [name for name, _ in told_of(key, part, value, find, **inputs)]


def test_friction_acts_on_the_body_on_the_table() -> None:
    """5 kg on a table, 3 kg hangs and falls 0,8 m: without friction v = √(2 × 3 × 9,8 × 0,8/8) = 2,4249 m/s."""
    data = {"first": "table", "m1": "5 kg", "m2": "3 kg", "h": "0,8 m", "u": "0 m/s", "mu_k": "0,2"}
    ((_, say),) = told_of("energy.tied", "find", "2,4249 m/s", "v", **data)
    assert say.startswith("You left friction out. It takes energy from the first body")


def test_a_small_speed_at_the_start_can_be_forgotten() -> None:
    """At 1 m/s there is a kinetic energy to leave out: √(2g × 2 m) = 6,26 m/s is that mistake."""
    found = causes("energy.two-places", "find", "6,261 m/s", "v", way="fly", h_A="3 m", h_B="1 m", u="1 m/s")
    assert "initial-dropped@v" in found


def test_a_small_height_at_the_end_can_be_forgotten() -> None:
    """B is 1 m high: √(1² + 2g × 3 m) = 7,73 m/s leaves it out."""
    found = causes("energy.two-places", "find", "7,733 m/s", "v", way="fly", h_A="3 m", h_B="1 m", u="1 m/s")
    assert "height-at-b@v" in found


@pytest.mark.parametrize("way", ["up", "down"])
def test_the_cosine_along_a_slope_is_told_whichever_way_it_moves(way: str) -> None:
    """T from 4 kg on a slope of 30° with µ = 0,1 and a = 1,2 m/s², cos 30° put for sin 30°: up with + f + ma, down
    with minus."""
    slope, sign = radians(30), 1 if way == "up" else -1
    wrong = 4 * 9.8 * cos(slope) + sign * (0.1 * 4 * 9.8 * cos(slope) + 4 * 1.2)
    data = {"m1": "4 kg", "m2": "", "mu": "0,1", "theta": "30°", "a": "1,2 m/s^2", "way": way}
    assert "sin-cos@T" in causes("newton.incline", "find", f"{wrong:.3f} N", "T", **data)


@pytest.mark.parametrize(
    ("chapter", "duties"),
    [
        ("forces", ("keep feet and fingers clear", "catch box under what can fall", "never try them out on a road")),
        ("newton", ("catch box under them", "keep feet away", "fingers out of pulleys", "wear eye protection")),
        ("gravitation", ("keep heads, hands and feet clear", "soft box underneath")),
        ("projectile", ("only soft, light things", "that nobody enters", "look up before you let go")),
        ("momentum", ("catch box under what can fall", "out of its way", "never heat, pierce or overfill")),
        ("energy", ("never aim it at anyone", "catch box under it", "try nothing out without supervision")),
        (
            "doppler",
            ("test the knot and the cord first", "keep everyone out of its circle", "never listen or measure on"),
        ),
        ("mixed", ("only supervised", "discharged before anyone touches them")),
    ],
)
def test_a_chapter_says_how_no_one_is_hurt(chapter: str, duties: tuple[str, ...]) -> None:
    """What to do and what never to do where practical work can hurt."""
    said = " ".join(topics.topics()[chapter].cautions)
    assert [duty for duty in duties if duty not in said] == []


@pytest.mark.parametrize("key", topics.question_keys())
def test_the_phrases_that_marks_hang_on_stand_in_their_sentence(key: str) -> None:
    """A memo's key phrases are words of the point they belong to."""
    question = topics.find(key)[1]
    plan = question.plan(read(question, dict(question.example), "").data)
    points = [point for part in plan.parts for point in part.points]
    assert [(k, p.words) for p in points for k in p.keys if k.casefold() not in p.words.casefold()] == []


def test_the_check_of_a_velocity_graph_sees_one_per_cent() -> None:
    """2 m/s² for 2 s lead from 1 m/s to 5 m/s, and neither to 5,05 m/s nor with 1,98 m/s²."""
    holds = balance(["a1"], 2).holds
    assert holds
    right = {"t1": 0.0, "t2": 2.0, "v1": 1.0, "v2": 5.0, "a1": 2.0}
    assert [holds(right | wrong) for wrong in ({}, {"v2": 5.05}, {"a1": 1.98})] == [True, False, False]


@pytest.mark.parametrize("up", [True, False])
def test_a_parent_reads_that_a_steady_balloon_moves_evenly(up: bool) -> None:
    """At constant velocity it covers the same distance in each second."""
    assert "same number of metres in each second" in meanwhile(up).plain


def test_a_parent_reads_that_only_height_counts_for_the_weight() -> None:
    """Up or down, by the height and not by the length of the slope."""
    for rise in (1, -1):
        (law,) = weight_law(Way(rise, "none"))
        assert law.plain == "Only going up or down counts for the weight, not how long the slope is."
