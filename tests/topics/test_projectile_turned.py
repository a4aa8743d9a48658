"""The positive direction is chosen: turned round, with every signed number, it gives the same physics in the same
words."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import topics
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.practice.drawing import DRAWS, draw
from calc.topics.projectile.bounce import NOT_DOWN, NOT_UP
from calc.topics.projectile.equations import other_sign
from calc.working.reading import Refusals
from tests.strategies import examples
from tests.topics.test_projectile import solve

# question, unknown, data with upwards positive, the signed among them
CASES = [
    ("bounce", "N", {"h_1": "2 m", "h_2": "1,2 m", "m": "200 g", "Deltat": "50 ms"}, ""),
    ("bounce", "N", {"v_1": "-6 m/s", "v_2": "4 m/s", "m": "200 g", "Deltat": "50 ms"}, "v_1 v_2"),
    ("bounce", "v_2", {"v_1": "-6 m/s", "Deltav": "10 m/s"}, "v_1 Deltav"),
    ("bounce", "v_1", {"v_2": "4 m/s", "F_net": "40 N", "m": "200 g", "Deltat": "50 ms"}, "v_2 F_net"),
    ("bounce", "F_net", {"m": "300 g", "N": "50 N"}, ""),
    ("bounce", "p", {"v_1": "-6 m/s", "v_2": "4 m/s"}, "v_1 v_2"),
    ("lift", "t", {"h": "1,8 m", "a": "1,5"}, "a"),
    ("lift", "t", {"h": "1,8 m", "a": "-2"}, "a"),
    ("lift", "a", {"h": "1,8 m", "t": "0,5 s"}, ""),
    ("lift", "h", {"a": "-2", "t": "0,5 s"}, "a"),
    ("lift", "v", {"a": "1,5", "t": "0,5 s"}, "a"),
    ("lift", "v", {"a": "0", "t": "0,5 s"}, "a"),
    ("meeting", "t,y", {"y_A": "0 m", "u_A": "20", "y_B": "30 m", "u_B": "0"}, "u_A u_B"),
    ("meeting", "t,y", {"y_A": "2 m", "u_A": "18", "y_B": "25 m", "u_B": "-3", "t_0": "0,4 s"}, "u_A u_B"),
    ("meeting", "u_A", {"y_A": "2 m", "t": "1,2 s", "y_B": "25 m", "u_B": "-3", "t_0": "0,4 s"}, "u_A u_B"),
    ("meeting", "u_B", {"y_A": "2 m", "t": "1,2 s", "y_B": "25 m", "u_A": "18", "t_0": "0,4 s"}, "u_A u_B"),
    ("meeting", "y_B", {"y_A": "2 m", "t": "1,2 s", "u_B": "3", "u_A": "18", "t_0": "0,4 s"}, "u_A u_B"),
    ("meeting", "t_0", {"y_A": "0 m", "u_A": "20", "y_B": "18 m", "u_B": "9", "t": "1,8 s"}, "u_A u_B"),
    ("meeting", "t_0", {"y_A": "0 m", "u_A": "20", "y_B": "30 m", "u_B": "-1", "t": "2,4 s"}, "u_A u_B"),
    ("meeting", "t,y", {"other": "steady", "y_A": "0 m", "u_A": "20", "y_B": "10 m", "u_B": "2"}, "u_A u_B"),
    ("meeting", "t", {"other": "steady", "y_A": "30 m", "u_A": "-2", "y_B": "10 m", "u_B": "-2"}, "u_A u_B"),
    ("positions", "", {"h_0": "4 m", "t_1": "2 s", "h_1": "12 m", "t_2": "1 s"}, ""),
    ("positions", "", {"h_0": "0 m", "t_1": "1,5 s", "h_1": "6 m", "t_2": "2,5 s"}, ""),
    ("court", "", {"h_1": "5 m", "h_2": "3,2 m", "m": "600 g", "Deltat": "0,12 s"}, ""),
    ("lamp", "", {"u": "6 m/s", "H": "40 m"}, ""),
    ("rings", "", {"y_A": "1,5 m", "u_A": "14 m/s", "y_B": "10 m", "t_0": "0,3 s"}, ""),
]
STATED = re.compile(r"([Uu]p|[Dd]own)wards( is| as)? positive")


def neutral(words: str) -> str:
    """Words without the positive direction that they state; positions from the ground are heights either way."""
    return STATED.sub("so is positive", words).replace("sketch the positions", "sketch the heights")


def turned(question: str, find: str, data: dict[str, str], signed: str) -> tuple[WorkedAnswer, WorkedAnswer]:
    """The answer with upwards positive, and that with downwards positive."""
    other = {name: other_sign(text) if name in signed.split() else text for name, text in data.items()}
    return solve(question, find, **data), solve(question, find, **other, positive="down")


@pytest.mark.parametrize(("question", "find", "data", "signed"), CASES)
def test_the_other_positive_direction_is_the_same_physics(
    question: str, find: str, data: dict[str, str], signed: str
) -> None:
    """Story, parts, sizes and directions in words agree; what has a direction has the other sign, nothing else has."""
    first, second = turned(question, find, data, signed)
    assert "upwards" in STATED.search(first.story)[0].lower()
    assert "downwards" in STATED.search(second.story)[0].lower()
    assert neutral(first.story) == neutral(second.story)
    assert [neutral(part.ask) for part in first.parts] == [neutral(part.ask) for part in second.parts]
    assert [part.marks for part in first.parts] == [part.marks for part in second.parts]
    directed = 0
    for one, other in zip(first.answers, second.answers, strict=True):
        assert abs(one.value) == pytest.approx(abs(other.value))
        assert (one.direction and one.direction.words) == (other.direction and other.direction.words)
        if one.direction:
            assert one.value == pytest.approx(-other.value)
            directed += 1
        else:
            assert one.value == pytest.approx(other.value)
    for one, other in zip(points(first), points(second), strict=True):
        assert one == other


def points(worked: WorkedAnswer) -> list[str]:
    """The points of parts in words, numbers and their signs left out."""
    return [re.sub(r"[−-]?\d[\d,]*", "0", point.words) for part in worked.parts for point in part.points]


SPEEDS = st.integers(-15, 25).map(lambda n: f"{n} m/s")
HEIGHTS = st.integers(0, 40).map(lambda n: f"{n} m")


def outcome(question: str, find: str, data: dict[str, str]) -> list[object]:
    """What comes of data: sizes and directions in words, or the words of the refusal."""
    try:
        worked = solve(question, find, **data)
    except (Refusal, Refusals) as refused:
        one = refused.refusals[0] if isinstance(refused, Refusals) else refused
        return [neutral(one.sentence)]
    found = [(round(abs(one.value), 9), one.direction and one.direction.words) for one in worked.answers]
    return [*found, *(neutral(part.ask) for part in worked.parts)]


@given(y_a=HEIGHTS, u_a=SPEEDS, y_b=HEIGHTS, u_b=SPEEDS, late=st.sampled_from(["", "0,5 s", "1 s"]), free=st.booleans())
@examples(40)
def test_whatever_two_bodies_do_they_do_it_either_way(
    y_a: str, u_a: str, y_b: str, u_b: str, late: str, free: bool
) -> None:
    """They meet when and where they meet, or do not for the same reason, whichever direction is positive."""
    data = {"y_A": y_a, "u_A": u_a, "y_B": y_b, "u_B": u_b, "t_0": late, "other": "free" if free else "steady"}
    over = {**data, "u_A": other_sign(u_a), "u_B": other_sign(u_b), "positive": "down"}
    assert outcome("meeting", "t,y", data) == outcome("meeting", "t,y", over)


@given(v_1=SPEEDS, v_2=SPEEDS)
@examples(30)
def test_whatever_bounces_does_it_either_way(v_1: str, v_2: str) -> None:
    """A bounce has the same force of the floor, or cannot be, whichever direction is positive."""
    data = {"v_1": v_1, "v_2": v_2, "m": "200 g", "Deltat": "50 ms"}
    over = {**data, "v_1": other_sign(v_1), "v_2": other_sign(v_2), "positive": "down"}
    first, second = outcome("bounce", "N", data), outcome("bounce", "N", over)
    told = [sorted(one) for one in (SIGNS_TOLD & {*first}, SIGNS_TOLD & {*second})]
    assert [len(one) for one in told] in ([0, 0], [1, 1])
    assert told[0] or first == second


# what is said of a sign names the direction that is positive, so it differs
SIGNS_TOLD = {neutral(words) for words in (*NOT_DOWN.values(), *NOT_UP.values())}


@pytest.mark.parametrize("name", ["0 m/s", "0", "0,0 m/s", "-0"])
def test_zero_has_no_other_sign(name: str) -> None:
    """What is at rest is typed alike for both positive directions."""
    assert other_sign(name) == name


@pytest.mark.parametrize(("text", "other"), [("-6 m/s", "6 m/s"), ("4", "-4"), ("+0,5 N", "-0,5 N"), ("10 m", "-10 m")])
def test_other_numbers_have(text: str, other: str) -> None:
    """A number is turned as a learner would type it."""
    assert other_sign(text) == other


@pytest.mark.parametrize("key", sorted({case[0] for case in CASES}))
def test_practice_draws_both_positive_directions(key: str) -> None:
    """By the newest rule; an older address keeps upwards."""
    topic, question = topics.find(f"projectile.{key}")
    picked = {draw(topic, question, seed, 1, DRAWS).inputs["positive"] for seed in range(8)}
    assert picked == {"up", "down"}
    older = {draw(topic, question, seed, 1, 4).inputs["positive"] for seed in range(3)}
    assert older == {"up"} or question.since > 4
