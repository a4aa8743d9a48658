"""One free flight from S to P: any two of the velocities, the displacement and the time give the others.

Refusals, the judging of extra data and marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random
from typing import cast

from calc.figures import Figure
from calc.figures.vertical import Height, Place, vertical
from calc.model.directions import UP_DOWN
from calc.model.questions import Choice, Data, Part, Refusal, Values
from calc.topics.projectile.apart import chains_apart
from calc.topics.projectile.equations import (
    POSITIVE,
    Pass,
    Roots,
    equations,
    falling,
    put_back,
    written,
)
from calc.topics.projectile.given import Boxes, flights
from calc.topics.projectile.laws import EQUATIONS, FREE_FALL
from calc.topics.shared.quantities import displacement_along, time, velocity_along
from calc.working.declaring import boxes, state, told
from calc.working.solving import Situation, question

TURN = Choice(
    "turn",
    "On the way from S to P it",
    (
        ("any", "not said"),
        ("turned", "passes its highest point"),
        ("straight", "does not turn round"),
    ),
    quiet=("any",),
)
QUANTITIES = (
    velocity_along(
        "u",
        "Velocity at S",
        "At S its velocity is {}.",
        "12 m/s; 8 20; 6,5 24",
        told_at={0.0: "At S it starts from rest."},
    ),
    displacement_along(
        "Deltay",
        "Displacement from S to P",
        "The displacement from S to P is {}.",
        "5 m; 2 40; 2,5 45",
        told_at={0.0: "P is at the same height as S."},
    ),
    velocity_along(
        "v",
        "Velocity at P",
        "At P its velocity is {}.",
        "; 5 15; 4,5 18",
        told_at={0.0: "At P it is at rest for a moment."},
    ),
    time("t", "Time from S to P", "It takes {} from S to P.", "; 0,5 3; 0,45 3,5"),
)
BOXES = Boxes(
    {"u": "u", "v": "v", "y": "Deltay", "t": "t"},
    {"u": "velocity at S", "v": "velocity at P", "y": "displacement", "t": "time"},
)
NO_TURN = "With these values it does not turn round between S and P. Pick the other answer, or check the signs."
TURNS = "With these values it turns round between S and P. Pick the other answer, or check the signs."
SENSE = {True: "Take upwards as positive.", False: "Take downwards as positive."}
OPENINGS = (
    "A stone moves freely along a vertical line, first past S and later past P; air resistance is left out.",
    "In a tall hall without draughts a steel ball passes S and then P on one vertical line. Only its weight counts.",
    "A heavy bolt flies straight up or down in still air; S and P lie on its path. Air resistance may be ignored.",
)
UP_OR_DOWN = "It may have been thrown upwards or downwards."
# what is asked of the flight that turns round, and of the other: by whether S and its velocity are given
ASKED = {
    True: {
        "t": "It passes P twice. Calculate the time from S until it passes P on its way down.",
        "v": "It passes P twice. Calculate its velocity when it passes P on its way down.",
    },
    False: {
        "u": f"{UP_OR_DOWN} Calculate the velocity at S if it was thrown upwards.",
        "t": f"{UP_OR_DOWN} Calculate the time from S to P if it was thrown upwards.",
    },
}
ASKED_APART = {
    True: {
        "t": "Calculate the time from S until it passes P on its way up.",
        "v": "Calculate its velocity when it passes P on its way up.",
    },
    False: {
        "u": "Calculate the velocity at S if it was thrown downwards.",
        "t": "Calculate the time from S to P if it was thrown downwards.",
    },
}


def chosen(data: Data, found: tuple[Pass, ...]) -> Roots | None:
    """The flight that is worked, by what was picked; None where too little is given."""
    if not found:
        return None
    turn = data.choices["turn"]
    fitting = [one for one in found if turn == "any" or one.turned == (turn == "turned")]
    if not fitting:
        raise Refusal("turn", NO_TURN if turn == "turned" else TURNS)
    kept = fitting[-1]
    other = next((one for one in found if one is not kept), None)
    return Roots(kept, other, apart=other is not None and turn == "any")


def situation(data: Data) -> Situation:
    """The flight in the signs of the positive direction."""
    up = data.choices["positive"] == "up"
    roots = chosen(data, flights(data, BOXES, 1 if up else -1)) or Roots(Pass(0.0, 0.0, 0.0, 0.0))
    turn = {
        "turned": " Between S and P it passes its highest point.",
        "straight": " Between S and P it does not turn round.",
    }.get(data.choices["turn"], "")
    base = told(QUANTITIES)
    return replace(
        base,
        relations=(falling(up), *equations(up, roots)),
        openings=tuple(f"{one} {SENSE[up]}{turn}" for one in OPENINGS),
        ask={**base.ask, **(ASKED[data.has("u")] if roots.apart else {})},
        ways=dict.fromkeys(("u", "v", "Deltay", "a"), (UP_DOWN, "up" if up else "down")),
        stated=(state(FREE_FALL),),
        later=lambda data, values: tuple(apart(data, roots, up)) if roots.apart else (),
        proofs=put_back,
        scene=lambda v: scene(v, up),
    )


def apart(data: Data, roots: Roots, up: bool) -> Iterator[Part]:
    """The parts that ask the same of the other flight."""
    given = data.has("u")
    names = ("t", "v") if given else ("u", "t")
    for name, chain in chains_apart(data, roots, up, names):
        yield Part(f"other-{name}", "calculate", ASKED_APART[given][name], chain)


def scene(v: Values, up: bool) -> Figure:
    """S and P on their line, with the velocities."""
    way = 1 if up else -1
    rise = v.get("Deltay", 0.0) * way

    def moves(name: str) -> bool | None:
        return v[name] * way > 0 if v.get(name) else None

    same = not rise
    return vertical(
        [
            Place("S", 0.0, "u" if "u" in v else "", moves("u"), spot=True),
            Place("P", rise, "v" if "v" in v else "", moves("v"), int(same), spot=True),
        ],
        [] if same else [Height(min(0.0, rise), max(0.0, rise), "Δy", shows=("Deltay",))],
        positive="up" if up else "down",
        title="From S to P",
        drawn_from=("Deltay",),
    )


GIVEN = {
    "v": (("u", "t"), ("u", "y")),
    "t": (("u", "y"), ("u", "v")),
    "y": (("u", "t"), ("u", "v")),
    "u": (("y", "t"), ("v", "t"), ("v", "y")),
}


UNITS_TYPED = {"u": "m/s", "v": "m/s", "y": "m", "t": "s"}


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Two values of a flight that there can be: mostly a throw upwards, sometimes a drop or a throw downwards."""
    draw = cast(Random, random)
    asked = next(name for name, box in BOXES.names.items() if not typed[box])
    way = 1 if typed["positive"] == "up" else -1
    pair = draw.choice(GIVEN[asked] if level > 1 else GIVEN[asked][:1])
    u = draw.choice(
        (8, 10, 12, 14, 15, 16, 18, 20, 22, 24) if level == 1 else (9.5, 11, 13, 17, 19, 21, 23, -4, -6.5, -9)
    )
    longest = (u + (u * u + 2 * 9.8 * 25) ** 0.5) / 9.8  # until 25 m below S
    t = round(longest * (0.12 + 0.85 * draw.random()), 1 if level == 1 else 2)
    values = {"u": u, "t": t, "y": u * t - 4.9 * t * t, "v": u - 9.8 * t}
    out = {**typed, **dict.fromkeys(BOXES.names.values(), ""), "turn": "any"}
    for name in pair:
        value = values[name] * (1 if name == "t" else way)
        out[BOXES.names[name]] = written(value, UNITS_TYPED[name], 2 if level == 1 else 3)
    if pair in (("u", "y"), ("v", "y")) and draw.random() < 0.5:
        out["turn"] = "turned" if u > 0 > values["v"] else "straight"
    return out


FLIGHT = question(
    "flight",
    "One free flight: the equations of motion",
    situation,
    **boxes(POSITIVE, *QUANTITIES, TURN),
    laws=(FREE_FALL.name, EQUATIONS.name),
    constants=("g",),
    asks="t",
    adjust=practise,
    since=4,
)
