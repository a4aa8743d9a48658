"""A ride past a bell: sounds followed on their way, refusals at their edge, what the words and graphs tell."""

from __future__ import annotations

import pytest
from scipy import optimize

from calc import topics
from calc.figures.pieces import Arrow, Curve
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.topics.doppler.bell import in_time, with_speed
from calc.working.reading import Refusals, read
from calc.working.working import work


def solve(**typed: str) -> WorkedAnswer:
    """The worked answer for these data, the rest as in the example."""
    topic, question = topics.find("doppler.bell")
    return work(topic, question, read(question, {**question.example, **typed}, ""))


def refusal(**typed: str) -> tuple[str | None, str]:
    """Where data are refused, and why."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(**typed)
    one = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    return one.field, one.sentence


def heard(f: float, v: float, speed: float, at: float) -> float:
    """The frequency heard by one who moves at `speed` along a line through the bell, `at` metres from it (negative:
    still to pass), from when two crests of its sound reach that listener."""
    period = 1 / f
    sent = -abs(at) / v

    def arrives(crest: float) -> float:
        return optimize.brentq(lambda t: v * (t - crest) - abs(at + speed * t), crest, crest + 10, xtol=1e-14)

    return 1 / (arrives(sent + period) - arrives(sent))


@pytest.mark.parametrize(("f", "v", "speed"), [(500.0, 340.0, 8.0), (880.0, 332.0, 22.0), (420.0, 345.0, 30.0)])
@pytest.mark.parametrize("far", [25.0, 60.0])
def test_both_notes_are_those_of_crests_followed_to_the_listener(f: float, v: float, speed: float, far: float) -> None:
    """Before and after passing, and no matter how far from the bell: the note is steady on either side."""
    found = solve(f_S=f"{f} Hz", v=f"{v} m/s", v_L=f"{speed} m/s", f_3=f"{f * 1.01!r} Hz").values
    assert found["f_1"] == pytest.approx(heard(f, v, speed, -far), rel=1e-7)
    assert found["f_2"] == pytest.approx(heard(f, v, speed, far), rel=1e-7)
    assert found["f_2"] < f < found["f_1"]


@pytest.mark.parametrize(("speed", "way", "pitch"), [(21.0, "towards", "higher"), (-21.0, "away from", "lower")])
def test_the_second_note_tells_way_and_speed(speed: float, way: str, pitch: str) -> None:
    """Worked back from crests followed to a second listener who comes (positive) or goes."""
    note = heard(500, 340, abs(speed), -40.0 if speed > 0 else 40.0)
    found = solve(f_3=f"{note!r} Hz")
    assert found.values["v_3"] == pytest.approx(abs(speed), rel=1e-5)
    told = {part.key: part for part in found.parts}["second-way"].points
    assert way in told[0].words
    assert pitch in told[1].words


@pytest.mark.parametrize(
    ("typed", "field", "begins"),
    [
        ({"f_3": "500 Hz"}, "f_3", "No relative motion"),
        ({"f_3": "588,3 Hz"}, "f_3", "To hear this the second driver would have to move at"),
        ({"f_3": "411,7 Hz"}, "f_3", "To hear this the second driver would have to move at"),
        ({"v_L": "340 m/s"}, "v_L", "Sound never catches the listener"),
    ],
)
def test_what_no_rider_hears_is_refused(typed: dict[str, str], field: str, begins: str) -> None:
    """Each at its box, with what to do."""
    where, sentence = refusal(**typed)
    assert where == field
    assert sentence.startswith(begins)
    assert "Type" in sentence or "Enter" in sentence


@pytest.mark.parametrize("f_3", ["588,2 Hz", "411,8 Hz", "500,1 Hz", "499,9 Hz"])
def test_just_within_the_edge_is_worked(f_3: str) -> None:
    """60 m/s, towards or away, and next to no speed, are allowed."""
    assert 0 < solve(f_3=f_3).values["v_3"] <= 60


def test_nothing_asked_tells_what_is_asked() -> None:
    """The same questions whichever way the second goes; no word of level lines, a drop, or a higher note."""
    nearer, farther = solve(f_3="515 Hz"), solve(f_3="485 Hz")
    assert [part.ask.replace("515", "485") for part in nearer.parts] == [part.ask for part in farther.parts]
    asked = " ".join([farther.story, *(part.ask for part in farther.parts)]).lower()
    for word in ("higher", "lower", "drop", "level line", "straight line that", "louder", "origin"):
        assert word not in asked, word


def test_the_graph_in_time_is_level_then_drops_then_level() -> None:
    """Three straight pieces: flat, straight down, flat."""
    (line,) = [item for item in in_time({}).items if isinstance(item, Curve)]
    (a, b, c, d) = line.points
    assert a[1] == b[1] > c[1] == d[1] > 0
    assert a[0] < b[0] == c[0] < d[0]


def test_the_graph_with_speed_is_straight_and_begins_above_the_origin() -> None:
    """It rises from a point of the f axis, above zero."""
    drawn = with_speed({})
    (line,) = [item for item in drawn.items if isinstance(item, Curve)]
    start, end = line.points
    axes = [item for item in drawn.items if isinstance(item, Arrow) and item.kind == "axis"]
    foot = min(axis.start[1] for axis in axes)
    assert start[0] == min(axis.start[0] for axis in axes)
    assert end[1] > start[1] > foot
