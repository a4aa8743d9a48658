"""A change of the note in per cent, and the wavelength heard: waves counted one by one, every unknown, refusals."""

import pytest

from calc import topics
from calc.model.questions import Choice
from calc.practice.drawing import DRAWS, draw
from calc.topics.doppler.shares import drops, linked, shares, shares_of_both
from tests.topics.asking import mistakes_said
from tests.topics.test_doppler import counted, refusal, solve

F, V = 500.0, 340.0
CASES = [
    ("source", "towards", 30.0),
    ("source", "away", 30.0),
    ("listener", "towards", 25.0),
    ("listener", "away", 25.0),
]


def heard(who: str, way: str, u: float) -> tuple[str, float, float, float]:
    """The box of the speed, the note counted wave by wave, its change in per cent, and the wavelength in the air."""
    sign = 1 if way == "towards" else -1
    v_s, v_l = (sign * u, 0.0) if who == "source" else (0.0, sign * u)
    note = counted(F, V, v_s, v_l)
    return ("v_S" if who == "source" else "v_L"), note, abs(note - F) / F * 100, (V - v_s) / F


@pytest.mark.parametrize(("who", "way", "u"), CASES)
def test_the_change_in_per_cent_is_enough_for_the_speeds(who: str, way: str, u: float) -> None:
    """Without either frequency: the speed from the change and the speed of sound, and each of these back again."""
    box, _, p, _ = heard(who, way, u)
    picked = {"moving": who, "way": way}
    data = {"p": f"{p!r} %", "v": f"{V} m/s", box: f"{u} m/s"}
    for name, right in (("p", p), ("v", V), (box, u)):
        given = {key: text for key, text in data.items() if key != name}
        found = solve("one-moves", name, **picked, **given)
        assert found.answers[0].value == pytest.approx(right, rel=1e-6)
        words = " ".join(step.why for part in found.parts for step in part.steps)
        assert ("the note is higher" in words, "the note is lower" in words) == (way == "towards", way == "away")


@pytest.mark.parametrize(("who", "way", "u"), CASES)
def test_each_frequency_follows_from_the_other_and_the_change(who: str, way: str, u: float) -> None:
    """Per cent count from the note of the source; the story says higher towards and lower away."""
    _, note, p, _ = heard(who, way, u)
    picked = {"moving": who, "way": way}
    share = {"p": f"{p!r} %"}
    assert solve("one-moves", "f_L", **picked, **share, f_S=f"{F} Hz").answers[0].value == pytest.approx(note, rel=1e-6)
    found = solve("one-moves", "f_S", **picked, **share, f_L=f"{note!r} Hz")
    assert found.answers[0].value == pytest.approx(F, rel=1e-6)
    higher, lower = "higher than that of the source", "lower than that of the source"
    assert (higher in found.story, lower in found.story) == (way == "towards", way == "away")
    asked = solve("one-moves", "p", **picked, f_S=f"{F} Hz", f_L=f"{note!r} Hz")
    assert asked.answers[0].value == pytest.approx(p, rel=1e-6)
    assert (higher in asked.parts[-1].ask) == (way == "towards")


@pytest.mark.parametrize(("who", "way", "u"), CASES)
def test_the_wavelength_that_reaches_the_listener(who: str, way: str, u: float) -> None:
    """Short ahead, long behind, unchanged for a moving listener; from it speed and frequencies come back."""
    box, note, _, length = heard(who, way, u)
    picked = {"moving": who, "way": way}
    data = {"f_S": f"{F} Hz", "v": f"{V} m/s", box: f"{u} m/s"}
    found = solve("one-moves", "lambda_L", **picked, **data)
    assert found.answers[0].value == pytest.approx(length)
    assert [part.key for part in found.parts if part.key == "wavelength"] == []
    waves = {"lambda_L": f"{length!r} m", "v": f"{V} m/s"}
    back = solve("one-moves", "f_L", **picked, **waves, **({box: f"{u} m/s"} if who == "listener" else {}))
    assert back.answers[0].value == pytest.approx(note, rel=1e-6)
    if who == "source":
        speed = solve("one-moves", "v_S", **picked, **waves, f_S=f"{F} Hz")
        assert speed.answers[0].value == pytest.approx(u)
        assert len([step for part in speed.parts for step in part.steps]) == 1


@pytest.mark.parametrize(
    ("who", "way", "said"),
    [
        ("source", "towards", "f_L/f_S is 1 + p/100, for the note is higher."),
        ("source", "away", "f_L/f_S is 1 − p/100, for the note is lower."),
        ("listener", "towards", "f_L/f_S is 1 + p/100, for the note is higher."),
        ("listener", "away", "f_L/f_S is 1 − p/100, for the note is lower."),
    ],
)
def test_the_reason_says_higher_towards_and_lower_away(who: str, way: str, said: str) -> None:
    """With the sign that goes with it, for the ratio and for the frequencies, and how to mend the usual swap."""
    box = "v_S" if who == "source" else "v_L"
    (step,) = solve("one-moves", box, moving=who, way=way, p="8 %", v="340 m/s").parts[-1].steps
    assert step.why == f"Only the ratio of the frequencies counts: {said}"
    (notes,) = solve("one-moves", "f_L", moving=who, way=way, p="8 %", f_S="500 Hz").parts[-1].steps
    higher = "higher: it is (100 + p)" if way == "towards" else "lower: it is (100 − p)"
    assert notes.why == f"The note heard is {higher} per cent of the note of the source."
    sign = 1 if way == "towards" else -1
    by_speeds = shares(sign, 0)[1] if who == "source" else shares(0, sign)[1]
    (swapped,) = by_speeds.mistakes
    fraction = "v − v/(1 + p/100)" if way == "towards" else "v/(1 − p/100) − v"
    assert swapped.said == (
        "You took that per cent of the speed of sound. That holds for a moving listener; a moving source stands below"
        f" the fraction line: use {fraction}."
        if who == "source"
        else "You worked as for a moving source. A moving listener stands above the fraction line: take that per cent"
        " of v."
    )


@pytest.mark.parametrize(
    ("who", "said"),
    [
        ("source", "The listener is at rest, so v = fλ holds for what is heard."),
        (
            "listener",
            "In a second the waves come closer to the listener by this speed, and they lie one wavelength apart.",
        ),
    ],
)
def test_the_reason_for_the_note_of_a_wavelength(who: str, said: str) -> None:
    """A listener at rest hears v/λ; one who moves meets the waves faster or more slowly."""
    speed = {} if who == "source" else {"v_L": "25 m/s"}
    steps = solve("one-moves", "f_L", moving=who, way="away", lambda_L="0,7 m", v="340 m/s", **speed).parts[-1].steps
    assert [step.why for step in steps] == [said]


def test_the_reference_change_of_eight_per_cent() -> None:
    """A note 8 % higher at 340 m/s: a source comes at 340 − 340/1,08 = 25,19 m/s, a listener at 27,2 m/s (by hand)."""
    source = solve("one-moves", "v_S", moving="source", way="towards", p="8 %", v="340 m/s")
    listener = solve("one-moves", "v_L", moving="listener", way="towards", p="8", v="340 m/s")
    assert source.answers[0].value == pytest.approx(25.185, abs=0.001)
    assert listener.answers[0].value == pytest.approx(27.2)


@pytest.mark.parametrize(
    ("find", "data", "field", "sentence"),
    [
        (
            "v_S",
            {"p": "0 %", "v": "340 m/s"},
            "p",
            "No relative motion: a change of zero means that neither comes closer.",
        ),
        ("v_S", {"p": "-8 %", "v": "340 m/s"}, "p", "choose towards for higher and away for lower."),
        (
            "v_S",
            {"p": "100 %", "v": "340 m/s", "way": "away"},
            "p",
            "A note cannot be lower by all of its frequency. Give less than 100 %.",
        ),
        (
            "v_S",
            {"lambda_L": "0,7 m", "f_S": "500 Hz", "v": "340 m/s"},
            None,
            "Direction and frequencies disagree: towards, the listener hears the higher frequency; away, the lower.",
        ),
        ("p", {"f_S": "500 Hz", "f_L": "480 Hz"}, "f_L", "Direction and frequencies disagree"),
    ],
)
def test_what_cannot_be_is_refused(find: str, data: dict[str, str], field: str | None, sentence: str) -> None:
    """Beside its box, with the reason and what to do."""
    where, why = refusal("one-moves", find, **{"moving": "source", "way": "towards", **data})
    assert (where, sentence in why) == (field, True), why


def test_a_change_that_does_not_fit_the_frequencies_is_named() -> None:
    """500 Hz heard as 540 Hz is 8 % higher: 9 % typed besides is held against it."""
    data = {"moving": "source", "way": "towards", "f_S": "500 Hz", "f_L": "540 Hz", "v": "340 m/s"}
    assert refusal("one-moves", "v_S", **data, p="9 %")[0] in ("p", "f_L")
    assert solve("one-moves", "v_S", **data, p="8 %").answers[0].value == pytest.approx(340 - 340 / 1.08)


# --- both move --------------------------------------------------------------------------------------------------

BOTH = [("towards", "towards", 22.0, 31.0), ("towards", "away", 20.0, 33.0), ("away", "towards", 35.0, 25.0)]
BOTH += [("towards", "away", 30.0, 12.0), ("away", "away", 18.0, 24.0)]
SIGN = {"towards": 1, "away": -1}


def both(source: str, listener: str, v_s: float, v_l: float) -> tuple[dict[str, str], float, float]:
    """The choices, the note counted wave by wave and its change in per cent, below zero for a lower note."""
    note = counted(F, V, SIGN[source] * v_s, SIGN[listener] * v_l)
    return {"source_way": source, "listener_way": listener}, note, (note - F) / F * 100


@pytest.mark.parametrize(("source", "listener", "v_s", "v_l"), BOTH)
def test_where_both_move_the_change_is_enough_for_each_speed(
    source: str, listener: str, v_s: float, v_l: float
) -> None:
    """Without the frequencies: each speed, the speed of sound, and the change itself with higher or lower."""
    picked, _, p = both(source, listener, v_s, v_l)
    data = {"p": f"{p!r} %", "v": f"{V} m/s", "v_S": f"{v_s} m/s", "v_L": f"{v_l} m/s"}
    for name, right in (("p", p), ("v", V), ("v_S", v_s), ("v_L", v_l)):
        found = solve("both-move", name, **picked, **{key: text for key, text in data.items() if key != name})
        assert found.answers[0].value == pytest.approx(right, rel=1e-6)
        way = "higher" if p > 0 else "lower"
        if name == "p":
            assert found.answers[0].direction.words == way
            assert "higher or lower than that of the source" in found.parts[-1].ask
        else:
            assert f" % {way} than that of the source." in found.story.replace("\N{NO-BREAK SPACE}", " ")
            assert "−" not in found.story.partition("The note heard")[2]


@pytest.mark.parametrize(("source", "listener", "v_s", "v_l"), BOTH)
def test_where_both_move_each_frequency_follows_from_the_change(
    source: str, listener: str, v_s: float, v_l: float
) -> None:
    """From the other frequency and the change, whatever the speeds are."""
    picked, note, p = both(source, listener, v_s, v_l)
    heard_one = solve("both-move", "f_L", **picked, p=f"{p!r} %", f_S=f"{F} Hz")
    sent = solve("both-move", "f_S", **picked, p=f"{p!r} %", f_L=f"{note!r} Hz")
    change = solve("both-move", "p", **picked, f_S=f"{F} Hz", f_L=f"{note!r} Hz")
    values = [one.answers[0].value for one in (heard_one, sent, change)]
    assert values == pytest.approx([note, F, p], rel=1e-6)


def test_one_towards_and_one_away_at_the_same_speed_change_nothing() -> None:
    """Both trains move the same way equally fast: the note heard is that of the source."""
    same = {"source_way": "towards", "listener_way": "away", "v": "340 m/s"}
    found = solve("both-move", "p", **same, v_S="20 m/s", v_L="20 m/s")
    assert (found.answers[0].value, found.answers[0].direction) == (0, None)
    told = solve("both-move", "v_S", **same, v_L="20 m/s", p="0 %")
    assert "The note heard is that of the source." in told.story
    assert told.answers[0].value == pytest.approx(20)


@pytest.mark.parametrize(
    ("source", "listener", "data", "field", "sentence"),
    [
        (
            "towards",
            "towards",
            {"p": "-4 %"},
            "p",
            "both move towards each other, so the note heard is higher. Type the change above zero.",
        ),
        (
            "away",
            "away",
            {"p": "4 %"},
            "p",
            "both move away from each other, so the note heard is lower. Type the change below zero, with a minus",
        ),
        ("towards", "away", {"p": "-100 %"}, "p", "A note cannot be lower by all of its frequency."),
        # a source at 20 m/s towards raises the note by 6,25 % already; a listener who comes too cannot bring it to 2 %
        ("towards", "towards", {"p": "2 %"}, None, "with these directions no speed gives this change."),
    ],
)
def test_a_change_that_both_directions_cannot_give_is_refused(
    source: str, listener: str, data: dict[str, str], field: str | None, sentence: str
) -> None:
    """Beside its box where its sign is wrong, else for the whole."""
    picked = {"source_way": source, "listener_way": listener, "v_S": "20 m/s", "v": "340 m/s"}
    where, why = refusal("both-move", "v_L", **picked, **data)
    assert (where, sentence in why) == (field, True), why


# --- two notes --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("who", "u"), [("source", 30.0), ("listener", 25.0)])
def test_two_notes_by_their_changes(who: str, u: float) -> None:
    """Rise before, fall after and the drop between, each asked from the notes and giving the speed back."""
    v_s, v_l = (u, 0.0) if who == "source" else (0.0, u)
    first, second = counted(F, V, v_s, v_l), counted(F, V, -v_s, -v_l)
    changes = {"p_1": (first / F - 1) * 100, "p_2": (1 - second / F) * 100, "p": (1 - second / first) * 100}
    speed = "v_S" if who == "source" else "v_L"
    notes = {"f_1": f"{first!r} Hz", "f_2": f"{second!r} Hz"}
    for name, right in changes.items():
        assert solve("passing", name, passing=who, **notes).answers[0].value == pytest.approx(right, rel=1e-6)
        by_speed = solve("passing", name, passing=who, v=f"{V} m/s", **{speed: f"{u} m/s"})
        assert by_speed.answers[0].value == pytest.approx(right, rel=1e-6)
        assert len(by_speed.parts[-1].steps) == 1
        back = solve("passing", speed, passing=who, v=f"{V} m/s", **{name: f"{right!r} %"})
        assert back.answers[0].value == pytest.approx(u, rel=1e-6)
        sound_speed = solve("passing", "v", passing=who, **{name: f"{right!r} %", speed: f"{u} m/s"})
        assert sound_speed.answers[0].value == pytest.approx(V, rel=1e-6)
    for given, asked in (("p_1", "p_2"), ("p_1", "p"), ("p_2", "p"), ("p_2", "p_1"), ("p", "p_1"), ("p", "p_2")):
        if given == "p":  # the drop and one of the others give the third
            other = "p_2" if asked == "p_1" else "p_1"
            data = {"p": f"{changes['p']!r} %", other: f"{changes[other]!r} %"}
        else:
            data = {given: f"{changes[given]!r} %"}
        found = solve("passing", asked, passing=who, **data)
        assert found.answers[0].value == pytest.approx(changes[asked], rel=1e-6)


def test_the_two_notes_are_told_and_asked_as_higher_before_and_lower_after() -> None:
    """Each change with what it counts from; the drop counts from the note before."""
    speed = {"v": "340 m/s", "passing": "source"}
    stories = [solve("passing", "v_S", **speed, **{name: "8 %"}).story for name in ("p_1", "p_2", "p")]
    plain = [one.replace("\N{NO-BREAK SPACE}", " ") for one in stories]
    assert "Before passing the note is 8 % higher than that of the source." in plain[0]
    assert "After passing the note is 8 % lower than that of the source." in plain[1]
    assert "In passing the note heard drops by 8 %." in plain[2]
    notes = {"passing": "source", "f_1": "548 Hz", "f_2": "460 Hz"}
    assert [solve("passing", name, **notes).parts[-1].ask for name in ("p_1", "p_2", "p")] == [
        "Calculate by how many per cent the note before passing is higher than that of the source.",
        "Calculate by how many per cent the note after passing is lower than that of the source.",
        "Calculate by how many per cent the note heard drops in passing.",
    ]


@pytest.mark.parametrize(
    ("who", "data", "field", "sentence"),
    [
        ("source", {"p_1": "0 %"}, "p_1", "Before passing the note is higher, after passing lower, whatever moves."),
        ("source", {"p_2": "-8 %"}, "p_2", "Type how many per cent, above zero and without a sign."),
        ("source", {"p_2": "100 %"}, "p_2", "A note cannot be lower by all of its frequency."),
        ("source", {"p": "100 %"}, "p", "A note cannot be lower by all of its frequency."),
        ("listener", {"p_1": "100 %"}, "p_1", "Sound never catches the listener"),
    ],
)
def test_a_change_that_no_passing_gives_is_refused(who: str, data: dict[str, str], field: str, sentence: str) -> None:
    """Beside its box."""
    where, why = refusal("passing", "v_S" if who == "source" else "v_L", passing=who, v="340 m/s", **data)
    assert (where, sentence in why) == (field, True), why


def test_the_reasons_of_the_changes() -> None:
    """Which ratio stands where, in words that hold for the one who moves."""
    assert [law.why for law in linked("source")] == [
        "f_S/f₁ = (v − v_S)/v and f_S/f₂ = (v + v_S)/v: added, the speeds drop out and 2 is left.",
        "f₂/f_S is f₁/f_S times f₂/f₁: ratios that follow each other are multiplied.",
    ]
    assert linked("listener")[0].why == (
        "f₁ = f_S(v + v_L)/v and f₂ = f_S(v − v_L)/v: both differ by v_L/v from the note of the source."
    )
    assert drops("source")[1].why == (
        "The frequency of the source is the same in both formulas, so it drops out: f₂/f₁ is 1 − p/100."
    )
    assert shares_of_both(1, -1)[0].why == (
        "The note heard is (100 + p) per cent of the note of the source: p is above zero for a higher note, below zero"
        " for a lower one."
    )


@pytest.mark.parametrize("key", ["both-move", "passing"])
def test_practice_gives_a_change_in_place_of_the_notes_now_and_then(key: str) -> None:
    """Some draws ask for a speed from a change alone, others from frequencies."""
    topic, question = topics.find(f"doppler.{key}")
    drawn = [draw(topic, question, seed, 2, DRAWS) for seed in range(40)]
    changes = [name for name in ("p", "p_1", "p_2") if name in drawn[0].inputs]
    speeds = [one for one in drawn if one.find in ("v_S", "v_L", "v")]
    by_change = [one for one in speeds if any(one.inputs[name] for name in changes)]
    assert 0 < len(by_change) < len(speeds)
    assert not any(one.inputs.get("f_S") or one.inputs.get("f_L") or one.inputs.get("f_1") for one in by_change)


def test_a_link_that_knew_nothing_of_the_change_asks_what_it_asked() -> None:
    """One of the older boxes empty: that one is found, though the box of the change is empty as well."""
    data = {"source_way": "towards", "listener_way": "towards", "f_S": "500 Hz", "v_L": "20 m/s", "v": "340 m/s"}
    found = solve("both-move", **data, f_L="580 Hz")
    assert [one.name for one in found.answers] == ["v_S"]
    where, why = refusal("both-move", **{**data, "f_S": ""})
    assert "Pick what to find: frequency of the source, speed of the source, frequency the listener hears" in why
    assert where is None


@pytest.mark.parametrize(("way", "heard_", "whole"), [("towards", 540.0, "108 %"), ("away", 460.0, "92 %")])
def test_the_usual_mistakes_with_per_cent_are_told(way: str, heard_: float, whole: str) -> None:
    """A note 40 Hz from 500 Hz differs by 8 %: not by the whole ratio, and not by 40 Hz of the note heard."""
    _, question = topics.find("doppler.one-moves")
    empty = {item.name: item.options[0][0] if isinstance(item, Choice) else "" for item in question.fields}
    given = {**empty, "way": way, "f_S": "500 Hz", "f_L": f"{heard_} Hz"}
    (said,) = mistakes_said("doppler.one-moves", given, "find", whole, "p")
    assert said.startswith("You have the whole ratio in per cent. By how much it differs from 100 is asked: use ")
    if way == "towards":
        assert said.endswith(": use f_L/f_S, less 1.")
    assert mistakes_said("doppler.one-moves", given, "find", f"{4000 / heard_:.6g} %", "p") == [
        "You took the per cent of the note heard. It counts from the note of the source: divide by f_S."
    ]
