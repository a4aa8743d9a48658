"""Two bodies that meet on one vertical line: both free, one perhaps later, or one at constant velocity.

Upwards is positive, heights are measured from the ground, and the time from the start of A. Both positions are equated;
where both fall freely ½gt² stands on both sides and cancels. Refusals, mistakes and marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random
from typing import cast

from calc.figures import Figure
from calc.figures.vertical import Height, Place, vertical
from calc.model.answers import Mark
from calc.model.questions import Choice, Data, Mistake, Part, Refusal, Step, Values
from calc.model.relations import Relation
from calc.topics.projectile.apart import under_names
from calc.topics.projectile.equations import settled, written
from calc.topics.projectile.laws import DOWNWARDS, EQUATIONS, FREE_FALL
from calc.topics.shared.quantities import UP, delay, height, time, velocity
from calc.working.chain import lead
from calc.working.declaring import boxes, state, told
from calc.working.solving import Situation, question
from calc.working.working import measure

SAME_MOMENT = "Both start at the same moment."
OTHER = Choice("other", "B", (("free", "moves freely too"), ("steady", "moves at constant velocity")))
QUANTITIES = (
    height(
        "y_A",
        "Height of A at its start",
        "A starts {} above the ground.",
        "0 m; 2 10; 1,5 12",
        told_at={0.0: "A starts on the ground."},
    ),
    velocity(
        "u_A",
        "Velocity of A at its start",
        "A starts with a velocity of {}.",
        "20 m/s; 15 24; 16 26",
        way=UP,
        told_at={0.0: "A starts from rest."},
    ),
    height(
        "y_B",
        "Height of B at its start",
        "B starts {} above the ground.",
        "30 m; 20 40; 18 45",
        told_at={0.0: "B starts on the ground."},
    ),
    velocity(
        "u_B",
        "Velocity of B at its start",
        "B starts with a velocity of {}.",
        "0 m/s; -2 -5; -1,5 -6",
        way=UP,
        told_at={0.0: "B starts from rest."},
    ),
    delay("t_0", "Delay of B", "B starts {} after A.", "1 s; 0,5 1; 0,6 1,2", told_at={0.0: SAME_MOMENT}),
    time("t", "Time from the start of A until they meet", "They meet {} after the start of A.", "; 1 2; 0,9 2,5"),
    height("y", "Height at which they meet", "They meet {} above the ground.", "; 5 18; 4,5 20"),
)
# what is told of a body at constant velocity
STEADY = {
    "y_B": ("At that moment B is {} above the ground.", "At that moment B passes the ground."),
    "u_B": ("B moves at a constant velocity of {}.", "B does not move."),
}
BOTH_SIDES = (Mark("formula"), Mark("substitution", 2), Mark("answer"))  # one for each side of the equation
NEVER = "They never meet: A never comes nearer to B. Check the heights and the velocities with their signs."
ALWAYS = "They are always together: they start at the same height and move alike. Change one of the values."
BEFORE = "They do not meet: the equation gives {}, before they both move. Check the heights and the velocities."
LANDED = "{} has landed: the equation gives a time of {}, and by then {} has reached the ground. Check the values."
TOO_LOW = "They never meet: A does not reach B, which moves away too fast or starts too high. Check the values."
NO_DELAY = "B moves all the time at constant velocity, and its height is that at the start of A: leave its delay empty."
SENSE = "Upwards is positive, and heights are measured from the ground."
FIRST = "They meet twice. Calculate the time from the start of A until they meet for the first time."
AGAIN = "Calculate the time from the start of A until they meet again."
FIRST_AT = "They meet twice. Calculate the height at which they meet for the first time."
AGAIN_AT = "Calculate the height at which they meet again."
TWICE = 2
OPENINGS = {
    True: (
        "Two stones, A and B, move freely on vertical lines close to each other; air resistance is left out.",
        (
            "At the face of a quarry two steel balls, A and B, start close to each other. Both move freely, straight up"
            " or down."
        ),
        (
            "Beside an empty tower two heavy darts, A and B, move on vertical paths, one next to the other. Leave air"
            " resistance out."
        ),
    ),
    False: (
        (
            "A stone, A, moves freely on a vertical line close beside a lift, B, on the outside of a building. Air"
            " resistance is left out."
        ),
        (
            "A drone, B, keeps to a vertical line and a constant velocity; close beside it a steel ball, A, moves"
            " freely. Air resistance is left out."
        ),
        (
            "Close beside a balloon, B, on a vertical course a heavy dart, A, moves freely, straight up or down. Leave"
            " air resistance out."
        ),
    ),
}
DELAY = "You let both start at the same moment. B moves for a shorter time: use {t - t_0} for B."
FALL_OFF = "You left out the fall of A. B does not fall freely, so {1/2*g*t^2} does not cancel: keep it."
RAISED = "You added {1/2*g*t^2}. Gravity takes height away from {y}, so subtract it."
START = "You found how far A is from its own start. The height above the ground is asked: add {y_A}."
WHY = "They meet where both are at the same height at the same time. Each position is y₀ + ut − ½gt², upwards positive."
PLAIN = "Same place, same moment: write down where each one is, and put the two equal."
SAME_LEVEL = Relation(
    "y = y_A + u_A*t - 1/2*g*t^2",
    what="The height of A at that time",
    why="From Δy = ut + ½at² with a = −g: the height is that of the start and the displacement together.",
    plain="Where it began, and how far it has come since.",
    units={"y": "m", "y_A": "m", "u_A": "m·s⁻¹"},
    mistakes=(
        Mistake("signs-mixed", "y", "y_A + u_A*t + 1/2*g*t^2", RAISED),
        Mistake("start-height-forgotten", "y", "abs(u_A*t - 1/2*g*t^2)", START),
    ),
)
UNITS = {"y_A": "m", "y_B": "m", "u_A": "m·s⁻¹", "u_B": "m·s⁻¹", "t": "s", "t_0": "s"}


def meet(law: str, why: str, *, marks: tuple[Mark, ...] = BOTH_SIDES, mistakes: tuple[Mistake, ...] = ()) -> Relation:
    """Both positions equated."""
    return Relation(
        law,
        what="Put the two positions equal",
        why=f"{WHY} {why}",
        plain=PLAIN,
        units=UNITS,
        marks=marks,
        mistakes=mistakes,
    )


def by_hand(law: Relation, make: str, line: str, other: str = "", dropped: str = "") -> Relation:
    """The law with its step for t, where no rule of algebra reads as a teacher writes."""
    step = Step(
        law=law.law,
        make=make,
        lines=(line,),
        what=law.what,
        why=law.why,
        plain=law.plain,
        unit="s",
        marks=law.marks,
        mistakes=law.mistakes,
        other=other,
        dropped=dropped,
    )
    return replace(law, by_hand={"t": step})


def free_together() -> Relation:
    """Both free from the same moment on."""
    return meet(
        "y_A + u_A*t = y_B + u_B*t",
        "Both fall alike, so −½gt² stands on both sides and has been left out.",
    )


def free_later() -> Relation:
    """Both free, B later by t_0."""
    law = meet(
        "y_A + u_A*t - 1/2*g*t^2 = y_B + u_B*(t - t_0) - 1/2*g*(t - t_0)^2",
        "B moves for the time t − t₀ only. The square of t stands on both sides and cancels.",
        mistakes=(Mistake("delay-ignored", "t", "(y_B - y_A)/(u_A - u_B)", DELAY),),
    )
    return by_hand(
        law,
        "t = (y_B - y_A - u_B*t_0 - 1/2*g*t_0^2)/(u_A - u_B - g*t_0)",
        "y_A + u_A*t = y_B + u_B*t - u_B*t_0 + g*t_0*t - 1/2*g*t_0^2",
    )


def steady(late: bool, other: bool, dropped: str) -> Relation:
    """A free, B at constant velocity. late: the later of the two roots; other: there is another root."""
    law = meet(
        "y_A + u_A*t - 1/2*g*t^2 = y_B + u_B*t",
        "B does not fall freely: its position is y₀ + ut.",
        mistakes=(Mistake("fall-forgotten", "t", "(y_B - y_A)/(u_A - u_B)", FALL_OFF),),
    )
    root = "sqrt((u_A - u_B)^2 + 2*g*(y_A - y_B))"
    make, second = (f"t = (u_A - u_B {sign} {root})/g" for sign in ("+-" if late else "-+"))
    line = "g*t^2 - 2*(u_A - u_B)*t - 2*(y_A - y_B) = 0"
    return by_hand(law, make, line, second if other else "", dropped)


def lands(high: float, u: float, g: float) -> float:
    """The time a free body takes to the ground."""
    return float((u + (u * u + 2 * g * high) ** 0.5) / g)


def fault(data: Data, values: Values, now: float) -> str:
    """Why they cannot meet at a time: B has not started yet, or one of them has landed; '' if they can."""
    g, t_0 = data.settings.constant("g"), values.get("t_0", 0.0)
    said = measure(now, "s", data.settings.style).text
    if now < t_0 or now <= 0:
        return BEFORE.format(said)
    ends = {"A": lands(values["y_A"], values["u_A"], g)}
    if data.choices.get("other", "free") == "free":
        ends["B"] = t_0 + lands(values["y_B"], values["u_B"], g)
    elif values["u_B"] < 0:
        ends["B"] = -values["y_B"] / values["u_B"]
    for name, end in ends.items():
        if now > end * (1 + 1e-9):
            return LANDED.format(name, said, name)
    return ""


def meetings(data: Data) -> tuple[float, ...]:
    """The times at which they meet, where all that decides is given. Raises Refusal where there is none."""
    v, g = data.values, data.settings.constant("g")
    if not {"y_A", "u_A", "y_B", "u_B"} <= v.keys():
        return ()
    gap, closing, t_0 = v["y_B"] - v["y_A"], v["u_A"] - v["u_B"], v.get("t_0", 0.0)
    if data.choices.get("other") == "steady":
        under = settled(closing**2 - 2 * g * gap, closing**2)
        if under < 0:
            raise Refusal(None, TOO_LOW)
        times = sorted({(closing - under**0.5) / g, (closing + under**0.5) / g})
        ahead = [one for one in times if one > 1e-12]
        if not ahead:
            raise Refusal(None, NEVER)
        return tuple(one for n, one in enumerate(ahead) if not n or not fault(data, v, one))
    above = gap - v["u_B"] * t_0 - g * t_0**2 / 2
    below = closing - g * t_0
    if abs(below) <= 1e-12 * max(abs(v["u_A"]), abs(v["u_B"]), g * t_0):
        raise Refusal(None, ALWAYS if abs(above) <= 1e-9 * max(abs(gap), 1.0) else NEVER)
    return (above / below,)


def laws(data: Data, found: tuple[float, ...]) -> tuple[Relation, ...]:
    """The positions equated, and the height."""
    if data.choices["other"] == "steady":
        return (steady(late=data_late(data), other=not touching(data), dropped=dropped(data, found)), SAME_LEVEL)
    return (free_later() if data.values.get("t_0") else free_together(), SAME_LEVEL)


def touching(data: Data) -> bool:
    """Whether A just reaches B and no more: the two roots are one."""
    v = data.values
    if not {"y_A", "u_A", "y_B", "u_B"} <= v.keys():
        return False
    closing = v["u_A"] - v["u_B"]
    return not settled(closing**2 - 2 * data.settings.constant("g") * (v["y_B"] - v["y_A"]), closing**2)


def data_late(data: Data) -> bool:
    """Whether the later of the two roots is the first meeting: the other lies before the start."""
    v = data.values
    return v.get("y_A", 0.0) >= v.get("y_B", 0.0)


def dropped(data: Data, found: tuple[float, ...]) -> str:
    """Why the other root is not the answer."""
    if data_late(data):
        same = data.values.get("y_A") == data.values.get("y_B")
        return f"It belongs to {'the start itself' if same else 'a time before the start'}: drop it."
    if len(found) >= TWICE:
        return "It is right as well: they meet again, which the next part asks for."
    return "By then A has landed: drop it."


def situation(data: Data) -> Situation:
    """The two bodies as they were picked."""
    free = data.choices["other"] == "free"
    if not free and data.values.get("t_0"):
        raise Refusal("t_0", NO_DELAY)
    found = meetings(data)
    if found and (why := fault(data, data.values, found[0])):
        raise Refusal(None, why)
    base = told(QUANTITIES)
    alone = {name: words[0] for name, words in STEADY.items()}
    at_zero = {name: {0.0: words[1]} for name, words in STEADY.items()}
    moment = "" if data.has("t_0") or not free else f" {SAME_MOMENT}"
    return replace(
        base,
        relations=laws(data, found),
        openings=tuple(f"{one}{moment} {SENSE}" for one in OPENINGS[free]),
        tell={**base.tell, **({} if free else alone)},
        told_at={**base.told_at, **({} if free else at_zero)},
        ask={**base.ask, **({"t": FIRST, "y": FIRST_AT} if len(found) >= TWICE else {})},
        stated=(state(DOWNWARDS),),
        later=lambda data, values: tuple(again(data, found)),
        refuse=refuse,
        scene=scene,
    )


def refuse(data: Data, values: Values) -> None:
    """Refuses values found that would let a body start below the ground or meet when one has landed."""
    if {"y_A", "u_A", "y_B", "u_B", "t"} <= values.keys() and (why := fault(data, values, values["t"])):
        raise Refusal(None, why)


def again(data: Data, found: tuple[float, ...]) -> Iterator[Part]:
    """The parts that ask for the second meeting."""
    if len(found) < TWICE:
        return
    first = steady(late=True, other=True, dropped="It belongs to the first meeting: drop it here.").step("t")
    when, where = (under_names(one, {"t": "t1", "y": "y1"}, up=True) for one in (first, SAME_LEVEL.step("y")))
    when, where = replace(when, direction=None), replace(where, direction=None)
    known = {"g", *data.values}
    for name, ask in (("t1", AGAIN), ("y1", AGAIN_AT)):
        if name[0] in data.asked_names:
            chain = lead(known, (when, where), name)
            known |= {step.makes for step in chain}
            yield Part(f"again-{name[0]}", "calculate", ask, chain)


def scene(v: Values) -> Figure:
    """A and B at their starts, side by side."""
    y_a, y_b = v.get("y_A", 0.0), v.get("y_B", 0.0)

    def moves(name: str) -> bool | None:
        return v[name] > 0 if v.get(name) else None

    return vertical(
        [
            Place("A", y_a, "u_A" if "u_A" in v else "", moves("u_A")),
            Place("B", y_b, "u_B" if "u_B" in v else "", moves("u_B"), 1),
        ],
        [Height(0.0, y, name, line) for line, (name, y) in enumerate((("y_A", y_a), ("y_B", y_b))) if y > 0],
        ground=0.0,
        title="A and B at their starts",
        drawn_from=("y_A", "y_B"),
    )


GIVEN = {
    "t": "y_A u_A y_B u_B t_0",
    "y": "y_A u_A y_B u_B t_0",
    "u_A": "y_A y_B u_B t_0 t",
    "y_A": "u_A y_B u_B t_0 t",
    "y_B": "y_A u_A u_B t_0 t",
    "u_B": "y_A u_A y_B t_0 t",
}


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Bodies that meet in the air: A thrown up from below, B above it."""
    draw = cast(Random, random)
    asked = next(name for name in GIVEN if not typed[name])
    free = typed["other"] == "free"
    u_a = float(draw.choice((16, 18, 20, 22, 24) if level == 1 else (17, 19, 21, 23, 25)))
    u_b = float(draw.choice((0, 0, -2, -4) if free else (1, 2, 3, -1, -2)))
    t_0 = draw.choice((0.0, 0.5, 1.0)) if free and asked != "y_A" else 0.0
    y_a = float(draw.choice((2, 3, 5, 8) if asked == "y_A" else (0, 0, 2, 3, 5)))
    t = t_0 + 0.4 + draw.random() * 1.2
    fall = 4.9 * (t - t_0) ** 2 if free else 0.0
    y_b = round(y_a + u_a * t - 4.9 * t * t - u_b * (t - t_0) + fall, 0 if level == 1 else 1)
    values = {"y_A": (y_a, "m"), "u_A": (u_a, "m/s"), "y_B": (y_b, "m"), "u_B": (u_b, "m/s"), "t_0": (t_0, "s")}
    values["t"] = (t, "s")
    names = [name for name in GIVEN[asked].split() if free or name != "t_0"]
    emptied = {**typed, **dict.fromkeys((*values, "y"), "")}
    return emptied | {name: written(*values[name], 3) for name in names}


MEETING = question(
    "meeting",
    "Two bodies meet",
    situation,
    **boxes(OTHER, *QUANTITIES),
    unknowns=("t", "y", "u_A", "u_B", "y_A", "y_B"),
    laws=(DOWNWARDS.name, FREE_FALL.name, EQUATIONS.name),
    constants=("g",),
    drawn=tuple(GIVEN),
    asks="t",
    adjust=practise,
    since=4,
)
