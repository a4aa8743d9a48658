"""A graph of position is read: numpy's parabola through its key points, refusals, words on both sides, marks."""

import json
import re
from typing import Any

import numpy as np
import pytest

from calc import desk, topics
from calc.figures import Curve, Dot
from calc.topics.projectile.positions import READ, scene
from calc.working.reading import read
from calc.working.working import work
from tests.topics.asking import mistakes_said
from tests.topics.test_projectile import refused, solve

CASES = [(4.0, 2.0, 12.0, 1.0), (0.0, 1.5, 6.0, 2.5), (2.0, 1.0, 6.9, 0.4), (20.0, 3.0, 65.0, 6.0)]


def typed(h_0: float, t_1: float, h_1: float, t_2: float) -> dict[str, str]:
    """The boxes."""
    return {"h_0": f"{h_0} m", "t_1": f"{t_1} s", "h_1": f"{h_1} m", "t_2": f"{t_2} s"}


@pytest.mark.parametrize("positive", ["up", "down"])
@pytest.mark.parametrize("case", CASES)
def test_everything_read_is_that_of_the_fitted_parabola(case: tuple[float, ...], positive: str) -> None:
    """numpy fits a parabola through start, turning point and its mirror image; derivative and roots give the rest."""
    h_0, t_1, h_1, t_2 = case
    way = 1 if positive == "up" else -1
    curve = np.poly1d(np.polyfit([0, t_1, 2 * t_1], [way * h_0, way * h_1, way * h_0], 2))
    lands = max(np.roots(curve).real)
    slope = curve.deriv()
    found = solve("positions", **typed(*case), positive=positive).values
    expected = {
        "u": slope(0),
        "a": slope.deriv()(0),
        "h_2": way * curve(t_2),
        "t": lands,
        "v": slope(lands),
        "d": 2 * h_1 - h_0,
    }
    for name, value in expected.items():
        assert found[name] == pytest.approx(float(value), rel=1e-6), name
    if h_0:
        assert found["v_av"] == pytest.approx((float(curve(lands)) - way * h_0) / lands, rel=1e-6, abs=1e-9)


@pytest.mark.parametrize("positive", ["up", "down"])
def test_directions_in_words(positive: str) -> None:
    """Up at the start; the acceleration, the velocity at the end and the average point downwards."""
    found = solve("positions", **typed(*CASES[0]), positive=positive)
    said = [shown.direction.words for shown in found.answers if shown.direction]
    assert said == ["upwards", "downwards", "downwards", "downwards"]


def test_where_it_is_fastest_hangs_on_the_start() -> None:
    """From the ground start and end are equally steep, and there is no average to ask; from a height the end alone."""
    high, low = (solve("positions", **typed(*case)) for case in CASES[:2])
    points = [[point.words for point in found.parts[0].points] for found in (high, low)]
    both = [
        "The gradient of the graph is the velocity.",
        "At the turning point the graph is level, so the velocity is zero there.",
    ]
    assert points == [
        [*both, "It is steepest just before the ground, so the speed is largest there."],
        [*both, "It is steepest at the start and just before the end: there the speed is largest."],
    ]
    assert [point.marks for found in (high, low) for point in found.parts[0].points] == [1] * 6
    assert ["average" in [part.key for part in found.parts] for found in (high, low)] == [True, False]
    assert "begins 4\N{NO-BREAK SPACE}m above the ground" in high.story
    assert "begins on the ground" in low.story
    dropped = [step.method for part in low.parts for step in part.steps if "other root" in step.method]
    assert [text.partition(". ")[2] for text in dropped] == ["It belongs to the start itself: drop it."]


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        (
            {"h_1": "4 m"},
            "The turning point lies above the start: give a greater height, or a smaller one for the start.",
        ),
        ({"t_2": "4,5 s"}, "It has reached the ground by then, after 4,45 s. Give an earlier time."),
        ({"h_0": "-1 m"}, "Height of the start cannot be negative."),
        ({"t_1": "0 s"}, "Time must be greater than zero."),
    ],
)
def test_what_cannot_be_is_refused(change: dict[str, str], sentence: str) -> None:
    """Each refusal gives its reason and what to do."""
    assert sentence in refused("positions", **{**typed(*CASES[0]), **change})


def marked(value: str) -> dict[str, Any]:
    """The marks of the height that is read off."""
    data = {
        "question": "projectile.positions",
        "inputs": {"positive": "up", **typed(*CASES[0])},
        "answers": {"position": {"value": value}},
        "only": "position",
    }
    reply: dict[str, Any] = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    assert reply["ok"], reply
    (part,) = [one for one in reply["data"]["parts"] if one["part"] == "position"]
    return part


@pytest.mark.parametrize(("value", "right"), [("10 m", True), ("10,3 m", True), ("9,6 m", True), ("10,8 m", False)])
def test_a_height_read_off_the_graph_may_be_a_little_off(value: str, right: bool) -> None:
    """Within 5 % of 10 m it is right, beyond it is not."""
    assert READ == 0.05
    assert (marked(value)["state"] == "right") is right


def test_the_picture_names_the_key_points_and_tells_no_answer() -> None:
    """A and B are named; no number stands in the words of the drawing, so the landing is read off its axis."""
    figure = scene({"h_0": 4.0, "t_1": 2.0, "h_1": 12.0}, up=True)
    assert not any(sign.isdigit() for sign in figure.description)
    assert "rises to its turning point at B" in figure.description
    assert (
        "goes down to its turning point at B, as upwards is negative"
        in scene({"h_0": 4.0, "t_1": 2.0, "h_1": 12.0}, up=False).description
    )


def test_the_reasons_name_the_positive_direction() -> None:
    """Upwards u is positive and a displacement adds to the height; downwards u is negative and it is taken from it."""
    told = {}
    for positive in ("up", "down"):
        parts = {part.key: part for part in solve("positions", **typed(*CASES[0]), positive=positive).parts}
        told[positive] = [parts[key].steps[0].why for key in ("start", "position")]
    assert told == {
        "up": [
            "From Δy = ½(u + v)t: the graph is level at the turning point, so v = 0 there. It goes up; upwards is"
            " positive.",
            "The graph gives it directly: go from that time to the curve, then across to the axis. Δy = ut + ½at² from"
            " the start gives the same.",
        ],
        "down": [
            "From Δy = ½(u + v)t: the graph is level at the turning point, so v = 0 there. It goes up; downwards is"
            " positive, so u is negative.",
            "The graph gives it directly: go from that time to the curve, then across to the axis. Δy = ut + ½at² from"
            " the start gives the same; downwards is positive, so it is taken from h₀.",
        ],
    }


def test_the_story_holds_the_key_points() -> None:
    """Where it begins, where it turns, where zero is, and which direction is positive."""
    story = solve("positions", **typed(*CASES[0])).story.replace("\N{NO-BREAK SPACE}", " ")
    assert story == (
        "On a moon without air a lander throws a stone straight up, and its camera records the position of the stone."
        " The graph of position against time is part of a parabola. It begins 4 m above the ground, and its turning"
        " point lies at 2 s and 12 m above the ground. Positions are measured from the ground. Upwards is positive."
    )


# what is typed, what it is told to be
MISTAKES = [
    (
        "start",
        "4 m/s",  # 8 m in 2 s
        "You have the gradient of the straight line up to the turning point, the mean velocity. At the start it is"
        " fastest: double that for u.",
    ),
    (
        "start",
        "12 m/s",
        "You measured from the ground. The displacement begins at the start: subtract h₀ from h₁.",
    ),
    (
        "position",
        "6 m",  # it has risen by 6 m then
        "You left out the height of the start. The position is measured from the ground: add h₀.",
    ),
    (
        "landing",
        "2.449 s",  # √(2 · 12/4)
        "You have the time from the turning point down. The clock starts with the throw: add t₁.",
    ),
    (
        "landing",
        "4 s",
        "You doubled t₁. It lands lower than it starts, so the way down takes longer: find that time and add t₁.",
    ),
    (
        "end",
        "8 m/s",
        "You gave it the speed of the start. It lands lower than it starts and is faster there: multiply a by t − t₁.",
    ),
    (
        "end",
        "17.8 m/s",
        "You used the whole time. It is at rest at the turning point: its velocity grows from then on, use t − t₁.",
    ),
    (
        "average",
        "4.495 m/s",  # 20 m in 4,45 s
        "You divided the distance by the time. Take the displacement, from the start straight to the ground, for vₐᵥ.",
    ),
    (
        "distance",
        "4 m",
        "You have the size of the displacement. The distance counts both ways: add the way up and the way down.",
    ),
    ("distance", "12 m", "You have the way down alone. Add the way up, h₁ − h₀."),
]


@pytest.mark.parametrize(("part", "value", "sentence"), MISTAKES, ids=[f"{row[0]}-{row[1]}" for row in MISTAKES])
@pytest.mark.parametrize("positive", ["up", "down"])
def test_mistakes_are_named(part: str, value: str, sentence: str, positive: str) -> None:
    """Each wrong size is told as the mistake that gives it, whichever direction is positive."""
    given = {"positive": positive, **typed(*CASES[0])}
    assert sentence in mistakes_said("projectile.positions", given, part, value)


def test_from_the_ground_up_no_way_is_longer_than_the_other() -> None:
    """Where it lands as high as it starts, twice the time up is right, and so is the speed of the start."""
    given = typed(*CASES[1])
    data = {
        "question": "projectile.positions",
        "inputs": {"positive": "up", **given},
        "answers": {"landing": {"value": "3 s"}, "end": {"value": "8 m/s", "direction": "downwards"}},
    }
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    states = {one["part"]: one["state"] for one in reply["data"]["parts"]}
    assert [states[part] for part in ("landing", "end")] == ["right", "right"]


@pytest.mark.parametrize("variant", range(3))
def test_every_telling_throws_it_straight_up_where_there_is_no_air(variant: int) -> None:
    """Whoever throws it, it rises at first, nothing slows it but the pull of that world, and its graph is told."""
    topic, question = topics.find("projectile.positions")
    story = work(topic, question, read(question, question.example, variant=variant)).story
    assert re.search(r"\b(straight up|vertically upwards)\b", story)
    assert re.search(r"\b(without|there is no) air\b", story)
    assert re.search(r"[Tt]he graph of .*position.* against time is part of a parabola\.", story)


@pytest.mark.parametrize(("t_2", "read_off"), [("2,99 s", True), ("3 s", False)])
def test_a_position_is_read_only_before_it_lands(t_2: str, read_off: bool) -> None:
    """Thrown from the ground, at its top after 1,5 s, it is back after 3 s: at that moment nothing is left to read."""
    given = {**typed(*CASES[1]), "t_2": t_2}
    if read_off:
        assert 0 < solve("positions", **given).values["h_2"] < 0.1
    else:
        assert "It has reached the ground by then, after 3,00 s." in refused("positions", **given)


@pytest.mark.parametrize(("h_1", "allowed"), [("4,01 m", True), ("4 m", False)])
def test_a_turning_point_lies_above_the_start(h_1: str, allowed: bool) -> None:
    """A centimetre higher will do; as high as the start will not."""
    given = {**typed(*CASES[0]), "h_1": h_1}
    if allowed:
        assert solve("positions", **given).values["u"] == pytest.approx(0.01)
    else:
        assert "The turning point lies above the start" in refused("positions", **given)


@pytest.mark.parametrize(("positive", "way"), [("up", 1), ("down", -1)])
def test_the_graph_is_drawn_through_its_key_points(positive: str, way: int) -> None:
    """A at the start, B two seconds and eight metres further, the end on the axis of time at 4,45 s; on the side of the
    positive direction."""
    figure = solve("positions", **typed(*CASES[0]), positive=positive).figure
    assert figure is not None
    (curve,) = [np.array(item.points) for item in figure.items if isinstance(item, Curve)]
    dots = {item.label: np.array(item.at) for item in figure.items if isinstance(item, Dot)}
    assert list(dots) == ["A", "B"]
    above = {name: way * (at[1] - curve[-1, 1]) for name, at in dots.items()}  # the curve ends on the ground
    assert tuple(dots["A"]) == tuple(curve[0])
    assert dots["A"][0] == 0
    assert above["B"] == pytest.approx(3 * above["A"])  # 12 m and 4 m
    assert above["B"] == pytest.approx(max(way * (curve[:, 1] - curve[-1, 1])))
    assert curve[-1, 0] / dots["B"][0] == pytest.approx((2 + 6**0.5) / 2)
    assert figure.title == "Position against time"
    assert figure.notes == ("Zero is at the ground. The gradient of this graph is the velocity.",)


@pytest.mark.parametrize(("positive", "speeds"), [("up", ("8,00", "−9,80")), ("down", ("−8,00", "9,80"))])
def test_the_graph_of_the_velocity_is_told_end_to_end(positive: str, speeds: tuple[str, str]) -> None:
    """A mark for the axes, one for the line from the first velocity to the last, one for where it crosses."""
    part = solve("positions", **typed(*CASES[0]), positive=positive).parts[-1]
    assert [(point.words.replace("\N{NO-BREAK SPACE}", " "), point.marks) for point in part.points] == [
        ("Axes labelled v (m·s⁻¹) and t (s).", 1),
        (f"A straight line from {speeds[0]} m·s⁻¹ at the start to {speeds[1]} m·s⁻¹ at 4,45 s.", 1),
        ("It crosses the time axis at 2 s, the time of the turning point.", 1),
    ]
    assert part.figure is not None
    (line,) = [item.points for item in part.figure.items if isinstance(item, Curve)]
    assert (line[-1][1] > line[0][1]) is (positive == "down")


@pytest.mark.parametrize("positive", ["up", "down"])
def test_every_step_is_told_in_plain_words(positive: str) -> None:
    """What a step does, without a formula; the same whichever direction is positive."""
    found = solve("positions", **typed(*CASES[0]), positive=positive)
    assert [step.plain for part in found.parts for step in part.steps] == [
        "On average it is half as fast as at the start, for it slows down evenly to a standstill.",
        "So much velocity is lost in each second.",
        "Where it began, and how far it has come since.",
        "How long it falls from up there, and before that it rose for t₁.",
        "It gains the same amount of velocity in each second of the fall.",
        "As if it had gone straight from the start to the ground in that time.",
        "Up to the turning point, then all the way down.",
    ]
