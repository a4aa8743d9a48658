"""The Doppler effect: published cases, waves counted one by one, every unknown, refusals, and marks by the shift."""

import json
from pathlib import Path
from typing import Any

import pytest
from scipy import optimize

from calc import desk, topics
from calc.figures.bodies import Ball
from calc.figures.pieces import Arrow, Curve, Dot
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.topics.doppler.moving import scene
from calc.topics.doppler.passing import scene as passing_scene
from calc.topics.doppler.shaft import scene as shaft_scene
from calc.working.reading import Refusals, read
from calc.working.working import work

PUBLISHED = json.loads((Path(__file__).parent / "doppler_published.json").read_text(encoding="utf-8"))
UNITS = {"f_S": "Hz", "f_L": "Hz", "f_1": "Hz", "f_2": "Hz", "v": "m/s", "v_S": "m/s", "v_L": "m/s"}
SIGN = {"towards": 1, "away": -1, "": 0}


def solve(key: str, find: str = "", **typed: str) -> WorkedAnswer:
    """The worked answer for these data."""
    topic, question = topics.find(f"doppler.{key}")
    return work(topic, question, read(question, typed, find))


def refusal(key: str, find: str = "", **typed: str) -> tuple[str | None, str]:
    """Where data are refused, and why."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(key, find, **typed)
    one = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    return one.field, one.sentence


def texts(values: dict[str, float], *names: str) -> dict[str, str]:
    """Values as typed, those named."""
    return {name: f"{values[name]!r} {UNITS[name]}" for name in names}


def counted(f: float, v: float, v_s: float, v_l: float) -> float:
    """The frequency heard, from the times at which two wavefronts meet the listener; speeds towards are positive."""
    gap, times = 1000.0, []
    for sent in (0.0, 1 / f):
        source, listener = v_s * sent, gap - v_l * sent
        times.append(sent + optimize.brentq(lambda t, s=source, x=listener: s + v * t - (x - v_l * t), 0, 1e3))
    return 1 / (times[1] - times[0])


# --- published and reference values -----------------------------------------------------------------------------


@pytest.mark.parametrize("case", PUBLISHED, ids=lambda case: case["id"])
def test_published_cases(case: dict[str, Any]) -> None:
    """Each published case comes out within its own tolerance; its source stands beside it in the file."""
    names = {"f": "f_S", "fs": "f_S", "fL": "f_L", "v": "v", "vs": "v_S", "vL": "v_L"}
    typed = {names[n]: f"{q['value']!r} {q['unit']}" for n, q in case["given"].items() if q["value"]}
    find = "f_L" if case["find"].startswith("fL") else "v_S"
    away = "receding" in case["topic"] or case["id"] == "manual-source-away"
    if {"v_S", "v_L"} <= typed.keys():
        trailing = case["id"] == "same-vehicle-no-shift"  # the source runs ahead of the listener
        typed |= {"source_way": "away" if trailing else "towards", "listener_way": "towards"}
        found = solve("both-move", find, **typed)
    else:
        mover = "listener" if "v_L" in typed else "source"
        found = solve("one-moves", find, **typed, moving=mover, way="away" if away else "towards")
    published = case["published"]
    factor = 1000 if published["unit"] == "kHz" else 1
    assert found.values[find] == pytest.approx(published["value"] * factor, rel=published["rel_tol"])


@pytest.mark.parametrize(
    ("mover", "way", "heard"),
    [
        ("source", "towards", 548.39),
        ("source", "away", 459.46),
        ("listener", "towards", 544.12),
        ("listener", "away", 455.88),
    ],
)
def test_reference_frequencies(mover: str, way: str, heard: float) -> None:
    """500 Hz and 30 m/s in air of 340 m/s, worked with a pocket calculator."""
    speed = {"v_S" if mover == "source" else "v_L": "30 m/s"}
    found = solve("one-moves", "f_L", moving=mover, way=way, f_S="500 Hz", v="340 m/s", **speed)
    assert found.values["f_L"] == pytest.approx(heard, abs=0.005)


# --- every unknown, by waves counted one by one -----------------------------------------------------------------


@pytest.mark.parametrize("source", ["towards", "away"])
@pytest.mark.parametrize("listener", ["towards", "away"])
@pytest.mark.parametrize("unknown", ["f_L", "f_S", "v_S", "v_L", "v"])
def test_every_unknown_where_both_move(source: str, listener: str, unknown: str) -> None:
    """What is found is what the wavefronts were sent out with."""
    values = {"f_S": 650.0, "v_S": 31.0, "v_L": 17.0, "v": 338.0}
    values["f_L"] = counted(650, 338, 31 * SIGN[source], 17 * SIGN[listener])
    typed = texts(values, *(name for name in values if name != unknown))
    found = solve("both-move", unknown, source_way=source, listener_way=listener, **typed)
    assert found.values[unknown] == pytest.approx(values[unknown], rel=1e-6)


@pytest.mark.parametrize("way", ["towards", "away"])
@pytest.mark.parametrize("mover", ["source", "listener"])
def test_every_unknown_where_one_moves(mover: str, way: str) -> None:
    """Each unknown, and the wavelength: the speed of sound relative to the listener over the frequency heard."""
    speed = "v_S" if mover == "source" else "v_L"
    values = {"f_S": 650.0, speed: 31.0, "v": 338.0}
    moves = (31.0 * SIGN[way], 0.0) if mover == "source" else (0.0, 31.0 * SIGN[way])
    values["f_L"] = counted(650, 338, *moves)
    for unknown in values:
        typed = texts(values, *(name for name in values if name != unknown))
        found = solve("one-moves", unknown, moving=mover, way=way, **typed).values
        assert found[unknown] == pytest.approx(values[unknown], rel=1e-6)
        if unknown in ("f_S", "v_S"):
            assert "lambda_L" not in found
            continue
        assert found["lambda_L"] == pytest.approx((338 + moves[1]) / values["f_L"], rel=1e-6)


@pytest.mark.parametrize("mover", ["source", "listener"])
@pytest.mark.parametrize("unknown", ["f_S", "speed", "v", "f_1", "f_2"])
def test_every_unknown_of_two_notes(mover: str, unknown: str) -> None:
    """Two notes give the speed and the source; with the source, one note and the speed give the other note."""
    speed = "v_S" if mover == "source" else "v_L"
    moves = (24.0, 0.0) if mover == "source" else (0.0, 24.0)
    values = {"f_S": 520.0, "v": 341.0, speed: 24.0}
    values |= {"f_1": counted(520, 341, *moves), "f_2": counted(520, 341, -moves[0], -moves[1])}
    given = {"f_S": "f_1 f_2 v", "speed": "f_1 f_2 v", "v": "f_1 f_2 speed", "f_1": "f_2 v speed", "f_2": "f_1 v speed"}
    name = speed if unknown == "speed" else unknown
    names = [speed if one == "speed" else one for one in given[unknown].split()]
    found = solve("passing", name, passing=mover, **texts(values, *names))
    assert found.values[name] == pytest.approx(values[name], rel=1e-6)
    assert not found.unproven
    assert not found.notes
    assert found.checks


def test_speed_and_source_from_two_notes_at_once() -> None:
    """Both may be asked together: v(f1 − f2)/(f1 + f2), and 2 f1 f2/(f1 + f2)."""
    found = solve("passing", "v_S,f_S", passing="source", f_1="550 Hz", f_2="450 Hz", v="340 m/s").values
    assert found["v_S"] == pytest.approx(34)
    assert found["f_S"] == pytest.approx(495)


# --- refusals ---------------------------------------------------------------------------------------------------

ONE = {"f_S": "500 Hz", "v": "340 m/s"}


@pytest.mark.parametrize(
    ("find", "typed", "field", "begins"),
    [
        (
            "f_L",
            {"v_S": "340 m/s"},
            "v_S",
            "At or beyond the speed of sound the formula fails (shock wave).",
        ),
        ("f_L", {"moving": "listener", "way": "away", "v_L": "341 m/s"}, "v_L", "Sound never catches the listener"),
        ("v_S", {"f_L": "500 Hz"}, "f_L", "No relative motion"),
        ("f_L", {"v_S": "0 m/s"}, "v_S", "No relative motion"),
        ("v_S", {"f_L": "480 Hz"}, "f_L", "Direction and frequencies disagree"),
        ("v_S", {"f_L": "520 Hz", "way": "away"}, "f_L", "Direction and frequencies disagree"),
        ("f_L", {"v_S": "30 m/s", "v_L": "5 m/s"}, "v_L", "The listener is at rest here."),
        ("v_L", {"f_L": "520 Hz"}, None, "The listener is at rest here, so its speed is zero."),
        ("f_L", {"v_S": "-3 m/s"}, "v_S", "A speed cannot be negative. Choose towards or away instead."),
    ],
)
def test_refusals_where_one_moves(find: str, typed: dict[str, str], field: str | None, begins: str) -> None:
    """Data that cannot be are refused beside their box, with the reason and the remedy."""
    where, sentence = refusal("one-moves", find, **ONE, **typed)
    assert where == field
    assert sentence.startswith(begins)
    assert sentence.count(".") > 1 or "Choose" in sentence


def test_a_source_that_runs_away_faster_than_sound_is_worked_with_a_warning() -> None:
    """Behind it the formula still holds."""
    found = solve("one-moves", "f_L", **ONE, way="away", v_S="340 m/s")
    assert found.values["f_L"] == pytest.approx(250)
    assert any("shock wave" in sentence for sentence in found.warnings)


@pytest.mark.parametrize(("f_1", "f_2"), [("450 Hz", "550 Hz"), ("500 Hz", "500 Hz")])
def test_the_note_before_passing_is_the_higher(f_1: str, f_2: str) -> None:
    """Equal or lower before passing is refused."""
    found = refusal("passing", "v_S", passing="source", f_1=f_1, f_2=f_2, v="340 m/s")
    assert found == (
        "f_1",
        "Approaching is the higher note. Enter the higher frequency as the one heard before passing.",
    )


def test_the_source_lies_between_its_notes() -> None:
    """A frequency of the source outside the two notes is refused."""
    field, sentence = refusal("passing", "v_S", passing="source", f_1="550 Hz", f_S="560 Hz", v="340 m/s")
    assert field == "f_S"
    assert sentence.startswith("The frequency of the source lies between the two notes")


# --- marks ------------------------------------------------------------------------------------------------------


def verdict(key: str, find: str, part: str, value: str, **typed: str) -> dict[str, Any]:
    """What is said of an answer."""
    data = {"question": f"doppler.{key}", "inputs": typed, "find": find, "answers": {part: {"value": value}}}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))["data"]
    return next(line for line in reply["parts"] if line["part"] == part)


@pytest.mark.parametrize(
    ("value", "state", "named"),
    [
        ("548,39 Hz", "right", []),
        ("548 Hz", "right", []),
        ("548,8 Hz", "right", []),
        ("544,12 Hz", "mistake", ["roles-swapped"]),
        ("459,46 Hz", "mistake", ["sign-swapped"]),
        ("455,88 Hz", "mistake", ["upside-down"]),
        ("549,5 Hz", "not recognised", []),
        ("550 Hz", "not recognised", []),
    ],
)
def test_an_answer_is_judged_by_the_shift(value: str, state: str, named: list[str]) -> None:
    """1 % of the 48,39 Hz between the two frequencies, not of 548,39 Hz; the swapped formula is told apart."""
    found = verdict("one-moves", "f_L", "find", value, **ONE, moving="source", way="towards", v_S="30 m/s")
    assert found["state"] == state
    assert [key.partition("@")[0] for fit in found["fits"] for key in fit["keys"]] == named


def test_the_mean_of_the_notes_is_told_apart_from_the_source() -> None:
    """503,93 Hz for 500 Hz is within 1 % and wrong all the same."""
    typed = {"passing": "source", "f_1": "548,39 Hz", "f_2": "459,46 Hz", "v": "340 m/s"}
    found = verdict("passing", "f_S", "find", "503,93 Hz", **typed)
    assert found["state"] == "mistake"
    assert found["fits"][0]["say"][0].startswith("You took the mean of the notes. Only for a moving listener")
    assert verdict("passing", "f_S", "find", "500 Hz", **typed)["state"] == "right"


def test_kilometres_an_hour_left_as_they_are_are_named() -> None:
    """108 put in for 108 km/h is named, with the conversion."""
    typed = {**ONE, "moving": "source", "way": "towards", "v_S": "108 km/h"}
    found = verdict("one-moves", "f_L", "find", f"{500 * 340 / (340 - 108):.2f} Hz".replace(".", ","), **typed)
    assert found["state"] == "mistake"
    assert "108" in " ".join(found["fits"][0]["say"])


def test_mistakes_that_collide_are_told_together() -> None:
    """Equal speeds towards each other: a sign wrong above and one wrong below give one number, and both are told."""
    typed = {"source_way": "towards", "listener_way": "towards", "f_S": "500 Hz", "v_S": "20 m/s", "v_L": "20 m/s"}
    found = verdict("both-move", "f_L", "find", "500 Hz", v="340 m/s", **typed)
    assert found["state"] == "one of two"
    told = {key.partition("@")[0] for fit in found["fits"] for key in fit["keys"]}
    assert {"source-sign", "listener-sign"} <= told


def test_the_other_note_is_marked_with_the_own_speed() -> None:
    """A wrong speed costs its marks once: the other note worked from it is carried on, judged by its shift too."""
    own = 30.0
    data = {
        "question": "doppler.crossing",
        "inputs": {"f_S": "500 Hz", "f_L": "540 Hz", "v": "340 m/s"},
        "answers": {"speed": {"value": "30 m/s"}, "other-note": {"value": f"{500 * 340 / (340 + own):.2f} Hz"}},
    }
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))["data"]
    states = {line["part"]: line["state"] for line in reply["parts"]}
    assert states["other-note"] == "carried"


# --- the whole question and the drawing -------------------------------------------------------------------------


@pytest.mark.parametrize(("heard", "way", "pitch"), [("540 Hz", "towards", "higher"), ("470 Hz", "away", "lower")])
def test_the_frequencies_say_which_way(heard: str, way: str, pitch: str) -> None:
    """Higher is towards and then away; the other note lies on the other side of the source."""
    found = solve("crossing", f_S="500 Hz", f_L=heard, v="340 m/s")
    parts = {part.key: part for part in found.parts}
    assert [part.key for part in found.parts] == ["state", "way", "speed", "other-note", "use", "red-shift"]
    assert way in parts["way"].points[0].words
    assert pitch in parts["way"].points[1].words
    assert (found.values["f_2"] - 500) * (found.values["f_L"] - 500) < 0
    assert parts["speed"].marks == 5


def test_nothing_asked_tells_which_way_the_train_moves() -> None:
    """The same words whichever way it is, and no picture in practice: that is for the learner to say."""
    nearer, farther = (solve("crossing", f_S="500 Hz", f_L=f"{heard} Hz", v="340 m/s") for heard in (540, 470))
    assert [part.ask for part in nearer.parts] == [part.ask for part in farther.parts]
    assert nearer.story.replace("540", "470") == farther.story
    for seed in range(6):
        request = {
            "operation": "practice",
            "data": {"question": "doppler.crossing", "seed": seed, "level": 1, "draw": 4},
        }
        assert json.loads(desk.answer(json.dumps(request)))["data"]["figure"] == ""


def recorded(f: float, v: float, fallen: float, depth: float) -> float:
    """The frequency at a depth below the start, from when two sounds sent shortly one after the other arrive there."""
    sent = (2 * fallen / 9.8) ** 0.5
    apart = 1e-5
    arrive = [at + abs(depth - 4.9 * at * at) / v for at in (sent - apart / 2, sent + apart / 2)]
    return f * apart / (arrive[1] - arrive[0])


@pytest.mark.parametrize(("f", "v", "h", "later"), [(500.0, 340.0, 20.0, 48.0), (880.0, 331.0, 11.0, 6.0)])
def test_a_falling_buzzer_is_heard_from_below_and_from_above(f: float, v: float, h: float, later: float) -> None:
    """Both notes are those of sounds followed on their way, and a note leads back to how far it has fallen."""
    note = recorded(f, v, later, 200.0)
    found = solve("shaft", f_S=f"{f} Hz", v=f"{v} m/s", h=f"{h} m", f_3=f"{note!r} Hz").values
    assert found["f_L"] == pytest.approx(recorded(f, v, h, 200.0), rel=1e-6)
    assert found["f_2"] == pytest.approx(recorded(f, v, h, 0.0), rel=1e-6)
    assert found["h_3"] == pytest.approx(later, rel=1e-4)
    assert found["f_2"] < f < found["f_L"]


def test_a_falling_buzzer_cannot_be_heard_lower_on_the_floor_nor_outrun_its_sound() -> None:
    """Refused beside the box, with the reason and the remedy."""
    data = {"f_S": "500 Hz", "v": "300 m/s", "h": "20 m"}
    assert refusal("shaft", **data, f_3="500 Hz")[0] == "f_3"
    assert refusal("shaft", **data, f_3="480 Hz")[1].startswith("Direction and frequencies disagree: the source falls")
    fast = {**data, "f_3": "550 Hz", "h": "5 km"}
    assert refusal("shaft", **fast) == ("h", refusal("one-moves", "f_L", **ONE, v_S="340 m/s")[1])


def test_the_falling_buzzer_is_drawn_between_its_microphones() -> None:
    """The arrow at S points down; T lies above it and B below."""
    figure = shaft_scene({})
    (fast,) = [item for item in figure.items if isinstance(item, Arrow) and item.kind == "velocity"]
    assert fast.end[1] < fast.start[1]
    heights = {item.label: item.centre[1] for item in figure.items if isinstance(item, Ball)}
    assert heights["T"] > heights["S"] > heights["B"]


@pytest.mark.parametrize("source", [1, 0, -1])
@pytest.mark.parametrize("listener", [1, 0, -1])
def test_the_drawing_shows_what_moves_which_way(source: int, listener: int) -> None:
    """Wavefronts are closer on the side the source moves to, as far apart as they are long; arrows point as told."""
    figure = scene(source, listener)
    fronts = [item for item in figure.items if isinstance(item, Curve)]
    right = [max(x for x, _ in front.points) for front in fronts]
    left = [min(x for x, _ in front.points) for front in fronts]
    ahead, behind = right[1] - right[0], left[0] - left[1]
    assert (ahead < behind - 0.1, ahead > behind + 0.1) == (source > 0, source < 0)
    s, el = (item.at for item in figure.items if isinstance(item, Dot))
    assert s[0] < el[0]
    arrows = {item.start[1] > 2: item.end[0] - item.start[0] for item in figure.items if isinstance(item, Arrow)}
    assert {True: arrows.get(True, 0) > 0, False: arrows.get(False, 0) < 0} == {True: source > 0, False: listener > 0}
    assert len(arrows) == bool(source) + bool(listener)
    words = {1: "close together", -1: "far apart", 0: "evenly spaced"}
    assert words[source] in figure.description


def test_who_looks_for_a_speed_still_sees_the_way() -> None:
    """The symbol of the speed goes; the arrow and the words that the story tells as well stay."""
    for figure in (scene(1, -1), passing_scene("source"), passing_scene("listener")):
        seen = figure.without(("v_S", "v_L"))
        assert seen is not None
        assert seen.description == figure.description
        assert sum(isinstance(item, Arrow) for item in seen.items) == sum(
            isinstance(item, Arrow) for item in figure.items
        )
