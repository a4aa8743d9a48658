"""Read from a graph of acceleration: numpy's areas of the points, either positive direction, refusals, mistakes."""

import json

import numpy as np
import pytest

from calc import desk, topics
from calc.figures.pieces import Curve
from calc.model.answers import WorkedAnswer
from calc.practice.drawing import DRAWS, draw
from calc.topics.projectile.accelerations import drawn, pieces
from calc.working.reading import read
from calc.working.working import work
from tests.topics.test_projectile import refused

type Points = tuple[tuple[float, float], ...]


def rows(points: Points) -> list[dict[str, str]]:
    """The table's cells."""
    return [{"t": f"{t:g} s", "a": f"{a:g} m/s^2"} for t, a in points]


def graph_of(points: Points, u: float, at: float, positive: str = "up") -> WorkedAnswer:
    """The worked answer for these (time, acceleration) points."""
    topic, question = topics.find("projectile.accelerations")
    typed = {"points": rows(points), "u": f"{u!r} m/s", "t_P": f"{at!r} s", "positive": positive}
    return work(topic, question, read(question, typed))


def speed(points: Points, u: float, at: float) -> float:
    """The velocity at a time, by the trapezium rule over the points up to it; numpy's line between two of them."""
    times, values = np.array(points).T
    inside = times < at
    left = [*times[inside], at]
    return u + float(np.trapezoid([*values[inside], np.interp(at, times, values)], left))


CASES: list[tuple[Points, float, float]] = [
    (((0, 2), (3, 2), (5, 0), (9, -1.5)), 1, 4),
    (((0, 2), (3, 2), (5, 0), (9, -1.5)), -4, 2),
    (((0, 0), (4, 3)), 0, 1),
    (((1, -2), (2, -2), (4, 6), (7, 6), (8, 0), (9.5, -4)), 3, 7.5),
    (((0, 1.5), (4, 1.5)), -2, 2.5),
    (((0, 0), (2, 0), (5, 4)), 2.5, 1),
    (((0, 0), (2, 0), (5, 4)), 2.5, 2),
    (((0, 1), (3, -2), (6, -2), (7, 0), (9, 0)), 5, 8),
]


@pytest.mark.parametrize(("points", "u", "at"), CASES)
def test_changes_and_velocities_are_areas(points: Points, u: float, at: float) -> None:
    """The change over the whole, the velocity at the end and the one at a time."""
    change, end, then = graph_of(points, u, at).answers
    assert (change.value, end.value, then.value) == pytest.approx(
        (speed(points, 0, points[-1][0]), speed(points, u, points[-1][0]), speed(points, u, at))
    )


def test_a_jump_parts_two_areas() -> None:
    """2 m/s² for 3 s, then at once −4 m/s² for 2 s: 6 less 8 m/s; after 4 s it has lost 4 of the 6."""
    found = graph_of(((0, 2), (3, 2), (3, -4), (5, -4)), 1, 4)
    assert [one.value for one in found.answers] == pytest.approx([-2, -1, 3])
    assert [one.direction.words for one in found.answers if one.direction] == ["downwards", "downwards", "upwards"]
    assert found.unproven == ()


@pytest.mark.parametrize(("points", "u", "at"), CASES)
def test_the_other_positive_direction_reads_the_same_motion(points: Points, u: float, at: float) -> None:
    """With every sign and the positive direction turned: the same parts, sizes and directions in words."""
    first = graph_of(points, u, at)
    second = graph_of(tuple((t, -a) for t, a in points), -u, at, "down")
    assert [part.ask for part in first.parts] == [part.ask for part in second.parts]
    assert "Upwards is positive." in first.story
    assert "Downwards is positive." in second.story
    for one, other in zip(first.answers, second.answers, strict=True):
        assert (one.direction and one.direction.words) == (other.direction and other.direction.words)
        assert other.value == pytest.approx(-one.value)
        words = one.direction.words if one.direction else ""
        assert words == ("upwards" if one.value > 0 else "downwards" if one.value < 0 else "")


@pytest.mark.parametrize(("u", "said"), [(2, "moves at 2 m·s⁻¹ upwards."), (-2, "moves at 2 m·s⁻¹ downwards.")])
def test_the_story_tells_how_it_moves_at_the_start(u: float, said: str) -> None:
    """A size with its direction; at rest without a number."""
    assert said in graph_of(CASES[0][0], u, 4).story.replace("\N{NO-BREAK SPACE}", " ")
    rest = graph_of(CASES[0][0], 0, 4)
    assert "At the first point it is at rest." in rest.story
    assert "forgotten" not in " ".join(m.key for m in planned(CASES[0][0], 0, 4))


def planned(points: Points, u: float, at: float) -> list:  # type: ignore[type-arg]
    """Every mistake of the steps."""
    question = topics.find("projectile.accelerations")[1]
    plan = question.plan(read(question, {"points": rows(points), "u": f"{u} m/s", "t_P": f"{at} s"}).data)
    return [mistake for step in plan.steps for mistake in step.mistakes]


@pytest.mark.parametrize(
    ("points", "u", "at", "field", "sentence"),
    [
        (((0, 1), (3, 2), (2, 4)), 1, 1, "points.2.t", "Each point comes after the one before it, or at the same time"),
        (((0, 1), (3, 2), (3, 1), (3, 4), (5, 4)), 1, 1, "points.3.t", "type a later time."),
        (((0, 1), (3, 2), (3, 2), (5, 1)), 1, 1, "points.2.a", "give the second another acceleration"),
        (((0, 1), (0, 2), (3, 2)), 1, 1, "points.1.t", "A jump at the first or the last point lasts no time"),
        (((0, 1), (3, 2), (3, 1)), 1, 1, "points.2.t", "leave one of the two points out."),
        (((1, 1), (3, 2)), 1, 1, "t_P", "The graph goes from 1 s to 3 s: give a time between them."),
        (((1, 1), (3, 2)), 1, 3, "t_P", "give a time between them."),
        (((1, 0), (3, 0)), 1, 2, "points.0.a", "The acceleration is zero throughout, so nothing changes."),
    ],
)
def test_what_is_no_graph_is_refused(points: Points, u: float, at: float, field: str, sentence: str) -> None:
    """At its own box, with what to do."""
    said = refused("accelerations", points=rows(points), u=f"{u} m/s", t_P=f"{at} s")  # type: ignore[arg-type]
    assert sentence in said.replace("\N{NO-BREAK SPACE}", " ")
    assert field in str(refusals(points, u, at))


def refusals(points: Points, u: float, at: float) -> list[str | None]:
    """The boxes at which data are refused, through the boundary."""
    data = {"question": "projectile.accelerations", "inputs": {"points": rows(points), "u": f"{u}", "t_P": f"{at}"}}
    reply = json.loads(desk.answer(json.dumps({"operation": "solve", "data": data})))
    return [one["field"] for one in reply["errors"]]


@pytest.mark.parametrize(
    ("part", "value", "key"),
    [
        ("change", "-4,5 m/s", ""),  # no usual mistake
        ("change", "11 m/s", "sizes-added@Deltav"),  # 6 + 2 + 3
        ("end", "5 m/s", "start-forgotten@v"),
        ("end", "4 m/s", "start-subtracted@v"),
        ("at-time", "7,5 m/s", "start-forgotten@v_P"),
        ("at-time", "6 m/s", "to-the-end@v_P"),
        ("at-time", "1 m/s", "value-read@v_P"),
    ],
)
def test_the_usual_mistakes_are_named(part: str, value: str, key: str) -> None:
    """From the numbers alone; areas by hand: 6, 2 and −3 m/s, 1,5 m/s up to 4 s, 1 m/s at the start."""
    points, u, at = CASES[0]
    data = {
        "question": "projectile.accelerations",
        "inputs": {"points": rows(points), "u": f"{u} m/s", "t_P": f"{at} s"},
        "answers": {part: {"value": value, "direction": "upwards"}},
    }
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))["data"]
    verdict = next(one for one in reply["parts"] if one["part"] == part)
    keys = [name for fit in verdict["fits"] for name in fit["keys"]]
    assert (key in keys) == bool(key), keys
    assert verdict["earned"] < verdict["possible"]


def test_the_gradient_for_the_area_is_named() -> None:
    """One slanting piece, 1 to 4 m/s² in 2 s: the area is 5 m/s, the gradient 1,5; 2 · 4 and half of that are told
    as the wrong shapes."""
    said = {one.key: one.said for one in planned(((0, 1), (2, 4)), 2, 1) if one.at == "A1"}
    assert set(said) == {"gradient", "rectangle", "triangle"}
    assert said["gradient"] == (
        "You took the gradient of the graph. It tells how fast the acceleration changes; the change in velocity is the"
        " area: use (1/2)(a₁ + a₂)(t₂ − t₁)."
    )
    level = {one.key for one in planned(((1, 3), (4, 3)), 2, 2) if one.at == "A1"}
    assert level == {"divided", "halved", "whole-time"}


def test_the_velocity_drawn_is_that_of_the_areas() -> None:
    """The curve of the memo's graph through the trapezium rule's values, and the table below it."""
    points = ((0.0, 2.0), (3.0, 2.0), (3.0, -4.0), (5.0, 0.0), (7.0, 0.0))
    figure = drawn(pieces([{"t": t, "a": a} for t, a in points]), 1.0)
    assert figure.table[0] == ("t (s)", "a (m·s⁻²)", "v (m·s⁻¹)")
    assert figure.table[1:] == (
        ("0", "2", "1"),
        ("3", "2", "7"),
        ("3", "−4", "7"),
        ("5", "0", "3"),
        ("7", "0", "3"),
    )
    (line,) = [item for item in figure.items if isinstance(item, Curve)]
    heights = [y for _, y in line.points]
    assert max(heights) == heights[1]  # 7 m/s after 3 s, where the jump is


@pytest.mark.parametrize(
    ("points", "u", "asked"),
    [
        (((0, 2), (3, 2), (5, 0), (9, -1.5)), 1, True),
        (((0, 2), (3, 2), (3, -4), (5, -4)), 1, True),
        (((0, 2), (3, 2), (5, 0)), 1, False),
        (((0, 2), (3, 2), (3, -4), (5, -4)), -6, False),  # at 3 s its velocity is zero just there: it does turn
    ],
)
def test_a_change_of_sign_is_asked_about_where_it_does_not_turn(points: Points, u: float, asked: bool) -> None:
    """The sign of the acceleration changes, the velocity goes on in its direction."""
    assert ("turning" in [part.key for part in graph_of(points, u, 1).parts]) == asked


def test_practice_draws_slants_level_pieces_and_jumps() -> None:
    """Within a few seeds each kind of graph comes, with the time inside it and three answers above zero in size."""
    topic, question = topics.find("projectile.accelerations")
    kinds = set()
    for level in (1, 2, 3):
        for seed in range(12):
            one = draw(topic, question, seed, level, DRAWS)
            found = read(question, one.inputs, one.find, variant=one.variant).data
            times = [row["t"] for row in found.rows["points"]]
            kinds.add(
                "jump" if len(set(times)) < len(times) else "slant" if found.rows["points"][0]["a"] == 0 else "level"
            )
            assert times[0] < found.values["t_P"] < times[-1]
    assert kinds == {"jump", "slant", "level"}
