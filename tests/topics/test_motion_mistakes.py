"""The usual mistakes with gravitation, projectiles and the Doppler effect: each wrong number is named for what it is.

The wrong numbers are worked here, in plain arithmetic. Which mistakes are usual: common practice, no source.
"""

import json

import pytest

from calc import desk, topics
from calc.model.questions import Choice

BIG_G, G = 6.67e-11, 9.8
M, R, H = 6.4e23, 3.4e6, 4e5
ABOVE = {"M": "6,4e23 kg", "R": "3,4e6 m", "h": "400 km"}
PAIR = {"m1": "4,8e24 kg", "m2": "650 kg"}
SOURCE = {"f_S": "500 Hz", "v_S": "30 m/s", "v": "340 m/s"}
THROW = {"u": "12 m/s"}
LOWERED = {"way": "away", "f_S": "500 Hz", "f_L": "460 Hz"}
BOUNCED = {"positive": "down", "h_1": "2 m", "h_2": "1,2 m"}
AHEAD, BEHIND = 340 / 310, 340 / 370

# question, what is asked, the data, the wrong number with its unit, the mistake
TABLE = [
    ("gravitation.field", "g_h", ABOVE, BIG_G * M / H**2, "m/s^2", "height-as-distance@r"),
    ("gravitation.field", "g_h", ABOVE, BIG_G * M / R**2, "m/s^2", "height-ignored@r"),
    ("gravitation.field", "g_h", ABOVE, BIG_G * M / (R + H), "m/s^2", "not-squared@g_h"),
    ("gravitation.field", "g_h", ABOVE, BIG_G * M / (R + 400) ** 2, "m/s^2", "unconverted-h@h"),
    ("gravitation.field", "g", {"M": ABOVE["M"], "R": ABOVE["R"]}, BIG_G * M / (2 * R) ** 2, "m/s^2", "diameter@g"),
    ("gravitation.field", "g_h", {"g": "8 m/s^2", "R": "3,4e6 m", "h": "3400 km"}, 4.0, "m/s^2", "not-squared@g_h"),
    ("gravitation.field", "w", {"M": ABOVE["M"], "R": ABOVE["R"], "m": "85 kg"}, 85.0, "N", "mass-as-weight@w"),
    ("gravitation.force", "F", {**PAIR, "r": "8,2e6 m"}, 9.8 * 4.8e24 * 650 / 8.2e6**2, "N", "field-for-constant@F"),
    ("gravitation.force", "F", {**PAIR, "r": "8200 km"}, BIG_G * 4.8e24 * 650 / 8200**2, "N", "unconverted-r@r"),
    ("gravitation.force", "r", {**PAIR, "F": "3000 N"}, BIG_G * 4.8e24 * 650 / 3000, "m", "root-omitted@r"),
    ("projectile.flight", "v", {**THROW, "Deltay": "-25 m"}, 144 + 2 * G * 25, "m/s", "root-omitted@v"),
    ("projectile.flight", "Deltay", {**THROW, "t": "3 s"}, 36 - G * 9, "m", "number-left-out@Deltay"),
    ("projectile.flight", "Deltay", {**THROW, "t": "2 s"}, 24 + G / 2 * 4, "m", "signs-mixed@Deltay"),
    ("projectile.flight", "t", {**THROW, "Deltay": "-25 m"}, 12 / G, "s", "zero-at-the-end@t"),
    ("projectile.flight", "t", {**THROW, "Deltay": "0 m"}, 12 / G, "s", "zero-at-the-end@t"),
    ("projectile.flight", "Deltay", {**THROW, "v": "-25 m/s"}, (144 + 625) / (2 * G), "m", "distance@Deltay"),
    (
        "projectile.from-height",
        "t",
        {"start": "carried", "u": "6", "H": "40 m"},
        (80 / G) ** 0.5,
        "s",
        "start-forgotten@t",
    ),
    ("projectile.bounce", "Deltav", BOUNCED, (4 * G) ** 0.5 - (2.4 * G) ** 0.5, "m/s", "sizes-subtracted@Deltav"),
    ("projectile.bounce", "v_2", {"positive": "down", "v_1": "6", "Deltav": "-10"}, 16.0, "m/s", "sign-left-out@v_2"),
    ("projectile.bounce", "h_2", {"h_1": "2 m", "p": "30 %"}, 0.6, "m", "part-lost@h_2"),
    (
        "projectile.meeting",
        "t",
        {"positive": "down", "y_A": "0", "u_A": "-20", "y_B": "30", "u_B": "0", "t_0": "1"},
        1.5,
        "s",
        "delay-ignored@t",
    ),
    (
        "projectile.meeting",
        "t_0",
        {"y_A": "0", "u_A": "20", "y_B": "30", "u_B": "-1", "t": "2,4 s"},
        (-1 + (1 + 2 * G * (30 - (48 - G / 2 * 2.4**2))) ** 0.5) / G,
        "s",
        "time-of-B@t_0",
    ),
    (
        "projectile.meeting",
        "t_0",
        {"y_A": "0", "u_A": "20", "y_B": "18", "u_B": "9", "t": "1,8 s"},
        1.8 - (9 - (81 - 2 * G * (36 - G / 2 * 1.8**2 - 18)) ** 0.5) / G,
        "s",
        "other-delay@t_0",
    ),
    ("projectile.lift", "t", {"positive": "down", "h": "1,8", "a": "2"}, (3.6 / G) ** 0.5, "s", "lift-left-out@t"),
    ("projectile.lift", "t", {"positive": "down", "h": "1,8", "a": "2"}, (3.6 / 11.8) ** 0.5, "s", "lift-subtracted@t"),
    ("doppler.one-moves", "f_L", SOURCE, 500 * BEHIND, "Hz", "sign-swapped@f_L"),
    ("doppler.one-moves", "f_L", SOURCE, 500 * 370 / 340, "Hz", "roles-swapped@f_L"),
    ("doppler.one-moves", "f_L", SOURCE, 500 / AHEAD, "Hz", "upside-down@f_L"),
    ("doppler.one-moves", "f_L", {**SOURCE, "v_S": "108 km/h"}, 500 * 340 / 232, "Hz", "unconverted-v_S@v_S"),
    ("doppler.one-moves", "v_S", {"p": "8 %", "v": "340 m/s"}, 27.2, "m/s", "roles-swapped@v_S"),
    ("doppler.one-moves", "v_S", {"way": "away", "p": "8 %", "v": "340 m/s"}, 27.2, "m/s", "roles-swapped@v_S"),
    (
        "doppler.one-moves",
        "v_L",
        {"moving": "listener", "p": "8 %", "v": "340 m/s"},
        340 - 340 / 1.08,
        "m/s",
        "roles-swapped@v_L",
    ),
    (
        "doppler.one-moves",
        "v_L",
        {"moving": "listener", "way": "away", "p": "8 %", "v": "340 m/s"},
        340 / 0.92 - 340,
        "m/s",
        "roles-swapped@v_L",
    ),
    ("doppler.one-moves", "p", LOWERED, 92.0, "%", "whole-ratio@p"),
    (
        "doppler.one-moves",
        "p",
        {"way": "away", "f_S": "500 Hz", "f_L": "460 Hz"},
        4000 / 460,
        "%",
        "of-the-note-heard@p",
    ),
    ("doppler.one-moves", "p", {"f_S": "500 Hz", "f_L": "540 Hz"}, 108.0, "%", "whole-ratio@p"),
    ("doppler.one-moves", "p", {"f_S": "500 Hz", "f_L": "540 Hz"}, 4000 / 540, "%", "of-the-note-heard@p"),
    ("doppler.one-moves", "lambda_L", SOURCE, 370 / 500, "m", "other-side@lambda_L"),
    ("doppler.both-move", "f_L", {**SOURCE, "v_L": "20 m/s"}, 500 * 20 / 30, "Hz", "speed-of-sound-omitted@f_L"),
    ("doppler.passing", "f_S", {"f_1": "548,39 Hz", "f_2": "459,46 Hz"}, 503.925, "Hz", "mean-of-notes@f_S"),
]


@pytest.mark.parametrize(
    ("key", "find", "data", "wrong", "unit", "mistake"), TABLE, ids=[f"{row[0]}-{row[5]}" for row in TABLE]
)
def test_a_usual_mistake_is_named(
    key: str, find: str, data: dict[str, str], wrong: float, unit: str, mistake: str
) -> None:
    """The number is not right, and among what fits it is the mistake that gave it; the sentence says what to do."""
    _, question = topics.find(key)
    empty = {item.name: item.options[0][0] if isinstance(item, Choice) else "" for item in question.fields}
    request = {
        "question": key,
        "inputs": {**empty, **data},
        "find": find,
        "answers": {"find": {"value": f"{wrong:.6g} {unit}"}},
    }
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": request})))
    assert reply["ok"], reply
    (part,) = [one for one in reply["data"]["parts"] if one["part"] == "find"]
    assert part["state"] in ("mistake", "one of two"), part["state"]
    assert mistake in [name for fit in part["fits"] for name in fit["keys"]]
