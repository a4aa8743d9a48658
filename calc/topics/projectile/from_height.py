"""From a height to the ground: thrown, let go from rest, or let go by a balloon or a lift that moves.

What is let go has the velocity of what carried it, and from then on the acceleration g downwards. Refusals, mistakes
and marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random
from typing import cast

from calc.figures import Figure
from calc.figures.vertical import Height, Place, vertical
from calc.model.answers import Point
from calc.model.directions import UP_DOWN
from calc.model.questions import NO_MARKS, Choice, Data, Mistake, Part, Refusal, Values
from calc.model.relations import Relation
from calc.topics.projectile.apart import chains_apart
from calc.topics.projectile.equations import POSITIVE, Pass, Roots, equations, falling, put_back, written
from calc.topics.projectile.flight import SENSE
from calc.topics.projectile.given import Boxes, flights
from calc.topics.projectile.laws import DOWNWARDS, EQUATIONS, FREE_FALL
from calc.topics.shared.quantities import length, time, velocity_along
from calc.working.declaring import boxes, state, told
from calc.working.solving import Limit, Situation, question

START = Choice(
    "start",
    "How it starts",
    (("thrown", "thrown, or let go from rest"), ("carried", "let go by what carries it")),
)
QUANTITIES = (
    velocity_along("u", "Velocity at the start", "", "12 m/s; 5 15; 4,5 18"),
    length("H", "Height of the start above the ground", "S lies {} above G.", "25 m; 12 45; 9,5 60"),
    time("t", "Time from the start to the ground", "It lands {} after it has left S.", "; 1 4; 0,9 4,5"),
    velocity_along("v", "Velocity just before it lands", "Just before it lands its velocity is {}.", "; 12 30; 10 32"),
    length(
        "h", "Greatest height above the ground", "The highest point it reaches lies {} above the ground.", "; 15 60"
    ),
    time("t_top", "Time from the start to the highest point", "It is highest {} after it has left S.", "; 0,5 1,6"),
)
TOLD_U = {
    "thrown": ("At S its velocity is {}.", "At S it is let go from rest."),
    "carried": ("At that moment what carries it moves at {}.", "At that moment what carries it does not move."),
}
BOXES = Boxes(
    {"u": "u", "v": "v", "y": "H", "t": "t"},
    {"u": "velocity at the start", "v": "velocity just before it lands", "y": "height", "t": "time"},
    height=True,
)
OPENINGS = {
    "thrown": (
        "Over the edge of a quarry a stone starts from S and moves freely along a vertical line to G on the ground.",
        "From S, at an open window of an empty tower, a steel ball starts on a vertical path to G on the ground below.",
        (
            "A robot arm on a mast starts a heavy dart from S; it moves straight up or down until it reaches G on the"
            " ground."
        ),
    ),
    "carried": (
        "A balloon moves along a vertical line at constant velocity. At S a sandbag comes loose from it.",
        "A builders' lift on the outside of a tower moves at constant velocity. At S a bolt drops off it.",
        "A drone on a vertical course moves at constant velocity. At S its hook lets a parcel go.",
    ),
}
AIR = "Air resistance is left out."
LANDING = {"thrown": "", "carried": " It lands at G on the ground."}
CARRIED = (
    "You let it start from rest. It leaves with the velocity of what carried it, whichever way that moves: keep {u}."
)
ALONE = "You found how far it rises above the start. The height above the ground is asked: add {H}."
TO_GROUND = "You subtracted the height of the start. The highest point lies above the start: add {H}."
NOT_UP = (
    "It does not go up, so its highest place is where it starts. Ask for something else, or check the sign of the"
    " velocity at the start."
)
LOWER = "The highest point cannot lie below the start: give a greatest height of at least the height of the start."
LANDS = "It moves downwards when it lands. Check the velocity just before it lands and its sign."
ABOVE = (
    "With these values it would end above its start and not on the ground. Give a later time, or check the velocities"
    " and their signs."
)
EITHER = "It may have been going up or down at the start."
ASKED = {
    "u": f"{EITHER} Calculate the velocity at the start if it was going up.",
    "t": f"{EITHER} Calculate the time from the start to the ground if it was going up at the start.",
}
ASKED_APART = {
    "u": "Calculate the velocity at the start if it was going down.",
    "t": "Calculate the time from the start to the ground if it was going down at the start.",
}


TOP = Part(
    "top",
    "explain",
    "What are its velocity and its acceleration at the highest point?",
    points=(
        Point("Its velocity is zero for a moment.", 1, ("zero",)),
        Point(
            "Its acceleration is g downwards, as all the way: the gravitational force still acts on it.",
            1,
            ("downwards",),
        ),
    ),
)


def below(up: bool) -> Relation:
    """Δy = ∓H: the ground lies below the start."""
    return Relation(
        "Deltay = -H" if up else "Deltay = H",
        what="The displacement, with its sign",
        why="The displacement runs from the start straight down to the ground, however high it rises in between.",
        plain="Only where it starts and where it ends counts.",
        units={"Deltay": "m", "H": "m"},
        marks=NO_MARKS,
        directions={"Deltay": UP_DOWN.of("up" if up else "down")},
    )


def tops(up: bool) -> tuple[Relation, ...]:
    """What holds at the highest point, where v = 0."""
    height = Relation(
        "u^2 = 2*g*(h - H)",
        what="At the highest point the velocity is zero",
        why="From v² = u² + 2aΔy with v = 0: u² is 2g times the distance it rises, and that begins at the start.",
        plain="The faster it starts, the higher it comes before it stands still.",
        units={"u": "m·s⁻¹", "h": "m", "H": "m"},
        dropped={"u": "It belongs to a start downwards, and then it does not rise: drop it."},
        mistakes=(
            Mistake("rise-alone", "h", "u^2/(2*g)", ALONE),
            Mistake("start-subtracted", "h", "abs(u^2/(2*g) - H)", TO_GROUND),
        ),
    )
    if not up:
        upwards = replace(height.step("u"), make="u = -sqrt(2*g*(h - H))", other="u = sqrt(2*g*(h - H))")
        height = replace(height, by_hand={"u": upwards})
    return (
        height,
        Relation(
            "u = g*t_top" if up else "u = -g*t_top",
            what="At the highest point the velocity is zero",
            why=f"From v = u + at with v = 0 and a = {'−g' if up else 'g'}.",
            plain="Each second takes away the same amount of velocity, until none is left.",
            units={"u": "m·s⁻¹", "t_top": "s"},
            mistakes=(
                Mistake(
                    "up-and-down",
                    "t_top",
                    "abs(2*u/g)",
                    "You have the time up and back to the start. The highest point is half-way: halve it.",
                ),
            ),
        ),
    )


def given(data: Data, way: int) -> Data:
    """The data with a velocity or a height that the highest point gives."""
    values, g = dict(data.values), data.settings.constant("g")
    if "u" not in values and "t_top" in values:
        values["u"] = way * g * values["t_top"]
    if "u" not in values and {"h", "H"} <= values.keys():
        if values["h"] < values["H"]:
            raise Refusal("h", LOWER)
        values["u"] = way * (2 * g * (values["h"] - values["H"])) ** 0.5
    if "H" not in values and {"u", "h"} <= values.keys():
        values["H"] = values["h"] - values["u"] ** 2 / (2 * g)
    return replace(data, values=values)


def roots_of(data: Data, way: int) -> Roots:
    """The flight that is worked: upwards at the start where both ways fit."""
    if data.has("v") and data.values["v"] * way >= 0:
        raise Refusal("v", LANDS)
    if data.has("u") and data.values["u"] * way < 0 and {"h", "t_top"} & data.values.keys():
        raise Refusal("u", NOT_UP)
    found = flights(given(data, way), BOXES, way)
    if not found:
        return Roots(Pass(0.0, 0.0, 0.0, 0.0))
    if all(one.y >= 0 for one in found):
        raise Refusal("t" if data.has("t") else None, ABOVE)
    kept = found[-1]
    other = next((one for one in found if one is not kept), None)
    if {"h", "t_top"} & {*data.values, *data.asked_names}:  # then it goes up
        other = None
    return Roots(kept, other, apart=other is not None)


def situation(data: Data) -> Situation:
    """The way to the ground in the signs of the positive direction."""
    up = data.choices["positive"] == "up"
    way = 1 if up else -1
    start = data.choices["start"]
    roots = roots_of(data, way)
    if {"h", "t_top"} & set(data.asked_names) and roots.kept.t and roots.kept.u <= 0:
        raise Refusal("u" if data.has("u") else None, NOT_UP)
    moves, rests = TOLD_U[start]
    base = told((replace(QUANTITIES[0], tell=moves, told_at={0.0: rests}), *QUANTITIES[1:]), ("H",))
    fall = equations(up, roots, forgotten=CARRIED) if start == "carried" else equations(up, roots)
    return replace(
        base,
        relations=(falling(up), below(up), *fall, *tops(up)),
        openings=tuple(f"{one}{LANDING[start]} {AIR} {SENSE[up]}" for one in OPENINGS[start]),
        ask={**base.ask, **(ASKED if roots.apart else {})},
        ways=dict.fromkeys(("u", "v", "Deltay", "a"), (UP_DOWN, "up" if up else "down")),
        stated=(state(DOWNWARDS),),
        later=lambda data, values: tuple(apart(data, roots, up)),
        limits=(Limit("h - H + 1e-9*H", LOWER, at="h"),),
        proofs=put_back,
        scene=lambda v: scene(v, up),
    )


def apart(data: Data, roots: Roots, up: bool) -> Iterator[Part]:
    """The parts that ask the same of a start downwards, or what holds at the highest point of one upwards."""
    if data.has("u") and roots.kept.turned:
        yield TOP
    if roots.apart:
        for name, chain in chains_apart(data, roots, up, ("u", "t"), (below(up),)):
            yield Part(f"other-{name}", "calculate", ASKED_APART[name], chain)


def scene(v: Values, up: bool) -> Figure:
    """The start above the ground, with the velocity there and just before it lands."""
    way = 1 if up else -1
    return vertical(
        [
            Place("S", 1.0, "u" if "u" in v else "", v["u"] * way > 0 if v.get("u") else None, spot=True),
            Place("G", 0.0, "v" if "v" in v else "", False, spot=True),
        ],
        [Height(0.0, 1.0, "H")],
        ground=0.0,
        positive="up" if up else "down",
        title="From a height to the ground",
    )


GIVEN = {
    "t": (("u", "H"), ("u", "v"), ("v", "H")),
    "v": (("u", "H"), ("u", "t"), ("H", "t")),
    "H": (("u", "t"), ("u", "v"), ("u", "h")),
    "u": (("H", "t"), ("v", "H"), ("H", "h")),
    "h": (("u", "H"),),
}
SPEEDS = ((5, 6, 8, 10, 12, 14, 15), (4.5, 6.5, 7.5, 9, 11, 13, -3, -5, -8))


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Two values of a fall that there can be."""
    draw = cast(Random, random)
    asked = next(name for name in GIVEN if not typed[name])
    way = 1 if typed["positive"] == "up" else -1
    up = asked == "h" or level == 1
    names = draw.choice(GIVEN[asked] if level > 1 else GIVEN[asked][:1])
    u = float(draw.choice([one for one in SPEEDS[level > 1] if one > 0 or not (up or "h" in names)]))
    high = float(draw.choice(range(12, 46)) if level == 1 else round(9 + 36 * draw.random(), 1))
    v = -((u * u + 2 * 9.8 * high) ** 0.5)
    values = {
        "u": (u * way, "m/s"),
        "H": (high, "m"),
        "v": (v * way, "m/s"),
        "t": ((u - v) / 9.8, "s"),
        "h": (high + u * u / 19.6, "m"),
    }
    emptied = {**typed, **dict.fromkeys(GIVEN, ""), "t_top": ""}
    return emptied | {name: written(*values[name], 2 if level == 1 else 3) for name in names}


FROM_HEIGHT = question(
    "from-height",
    "From a height to the ground",
    situation,
    **boxes(POSITIVE, START, *QUANTITIES),
    laws=(DOWNWARDS.name, FREE_FALL.name, EQUATIONS.name),
    constants=("g",),
    asks="t",
    drawn=tuple(GIVEN),
    adjust=practise,
    since=4,
)
