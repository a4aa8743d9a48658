"""A change of the note in per cent, and the wavelength heard: waves counted one by one, every unknown, refusals."""

import pytest

from calc.topics.doppler.shares import shares
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
