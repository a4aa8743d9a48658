"""What a graph of velocity against time tells: accelerations by gradients, displacement by areas, the greatest height.

The reader gives the key points of the graph, joined by straight lines; either direction may be the positive
one. Mistakes and marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from random import Random
from typing import cast

from calc.figures import Figure
from calc.figures.graphs import GraphLine, graph
from calc.model.answers import Mark, Point
from calc.model.directions import UP_DOWN
from calc.model.questions import SA, A, Check, Data, Input, Mistake, Part, Plan, Question, Refusal, Rows, Step, Values
from calc.topics.projectile.equations import YOUNGER, sense_stated, written
from calc.topics.projectile.laws import EQUATIONS
from calc.topics.shared.phases import Motion, Phase
from calc.topics.shared.quantities import AGAINST

LETTERS = "ABCDEFGH"
LATER = "Each point comes after the one before it: type a later time."
OPENINGS = (
    (
        "A drone flies along a vertical line. A sensor in it records its velocity; the graph has these points, joined"
        " by straight lines: {}."
    ),
    "The graph of velocity against time of a lift in a test tower is made of straight lines between these points: {}.",
    (
        "A test capsule is driven up and down a vertical rail. Its velocity against time is drawn as straight lines"
        " between the points {}."
    ),
)
UPSIDE_DOWN = (
    "You divided the other way round. For {%s} take the change in velocity and divide it by the time it takes."
)
END_ONLY = "You divided a velocity by a time. Divide the change in velocity by the change in time to get {%s}."
RECTANGLE = "You took a rectangle for {%s}. The velocity changes evenly here: use the mean of both velocities."
HALVED = "You took a triangle for {%s}. Both velocities count: use the mean of the two."
DISTANCE = "You added the sizes. {Deltay} is the displacement: an area below the time axis is negative, subtract it."
TRIANGLE = "You left out the half in the last area. It is a triangle: halve it for {h}."
PLAIN_AREA = "How fast, on average, times how long."
TURNS = (
    Point("Its velocity is zero for a moment and changes its sign: the line crosses the time axis.", 1, ("crosses",)),
    Point("Its acceleration is the gradient of the line there, which is not zero.", 1, ("gradient", "not zero")),
)


TURNING = Part(
    "turning",
    "explain",
    "How does the graph show that it turns round, and is its acceleration zero there? Give reasons.",
    points=TURNS,
)


def gradient(n: int, one: dict[str, float], other: dict[str, float], up: bool) -> Step:
    """The acceleration between two points."""
    name, change, time = f"a{n}", f"v{n + 1} - v{n}", f"t{n + 1} - t{n}"
    mistakes = []
    if change_of(one, other):
        mistakes.append(Mistake("upside-down", name, f"({time})/({change})", UPSIDE_DOWN % name))
    if one["v"] and other["t"]:
        mistakes.append(Mistake("end-only", name, f"v{n + 1}/t{n + 1}", END_ONLY % name))
    return Step(
        law=f"{name} = ({change})/({time})",
        make=f"{name} = ({change})/({time})",
        what=f"The gradient from {LETTERS[n - 1]} to {LETTERS[n]}",
        why=sense_stated(
            "The gradient is the acceleration: the change in velocity over the time it takes. Upwards is positive.", up
        ),
        plain="How steep the line is.",
        unit="m·s⁻²",
        marks=SA,
        mistakes=tuple(mistakes),
        direction=lambda v: UP_DOWN.by_sign(v[name], "up" if up else "down"),
    )


def change_of(one: dict[str, float], other: dict[str, float]) -> float:
    """How much the velocity changes between two points."""
    return other["v"] - one["v"]


def area(n: int, one: dict[str, float], other: dict[str, float], up: bool) -> Step:
    """The displacement between two points."""
    name, time = f"A{n}", f"(t{n + 1} - t{n})"
    mistakes = []
    if change_of(one, other):
        mistakes.append(
            Mistake("rectangle", name, f"v{n + 1}*{time}" if other["v"] else f"v{n}*{time}", RECTANGLE % name)
        )
    if one["v"] and other["v"]:
        mistakes.append(Mistake("triangle", name, f"1/2*v{n + 1}*{time}", HALVED % name))
    return Step(
        law=f"{name} = 1/2*(v{n} + v{n + 1})*{time}",
        make=f"{name} = 1/2*(v{n} + v{n + 1})*{time}",
        what=f"The area from {LETTERS[n - 1]} to {LETTERS[n]}",
        why="The area between the line and the time axis is the displacement; below the axis it is negative.",
        plain=PLAIN_AREA,
        unit="m",
        marks=A,
        mistakes=tuple(mistakes),
        direction=lambda v: UP_DOWN.by_sign(v[name], "up" if up else "down"),
    )


def whole(count: int, areas: Sequence[float], up: bool) -> Step:
    """The displacement of the whole motion."""
    names = [f"A{n}" for n in range(1, count + 1)]
    mistakes: tuple[Mistake, ...] = ()
    if min(areas) < 0 < max(areas):
        mistakes = (Mistake("distance", "Deltay", "+".join(f"abs({name})" for name in names), DISTANCE),)
    return Step(
        law=f"Deltay = {' + '.join(names)}",
        make=f"Deltay = {' + '.join(names)}",
        what="Add the areas, with their signs",
        why=(
            "The displacement from the first point to the last is the sum of all: what goes down takes away from what"
            " goes up."
        ),
        plain="Where it ends, seen from where it began.",
        unit="m",
        marks=(Mark("formula"), Mark("answer")),
        mistakes=mistakes,
        direction=lambda v: UP_DOWN.by_sign(v["Deltay"], "up" if up else "down"),
    )


def highest(motion: Motion) -> tuple[int, float] | None:
    """The stretch in which it turns at its greatest height above the start, and when; None if it never does."""
    found = [(n, one.start - one.u / one.a) for n, one in enumerate(motion.phases, 1) if one.u > 0 >= one.v]
    best = max(found, key=lambda one: motion.position(one[1]), default=None)
    if best is None or motion.position(best[1]) <= max(0.0, motion.phases[-1].last):
        return None
    return best[0], best[1]


def top(n: int, inside: bool, up: bool) -> tuple[Part, ...]:
    """The parts on the greatest height, which is reached in stretch n. inside: not where the graph bends."""
    minus = "" if up else " With downwards positive that displacement is negative, and the height is its size."

    def in_all(last: str) -> str:
        areas = " + ".join([*before, last])
        return areas if up else f"-({areas})" if before else f"-{areas}"

    before = [f"A{k}" for k in range(1, n)]
    moment = Step(
        law=f"0 = v{n} + a{n}*(t_h - t{n})",
        make=f"t_h = t{n} - v{n}/a{n}",
        lines=(f"a{n}*(t_h - t{n}) = -v{n}",),
        what="The line crosses the time axis",
        why="At the greatest height the velocity is zero. v = u + at with v = 0, from the point before.",
        plain="It slows down, stands still for a moment, and comes down.",
        unit="s",
    )
    height = Step(
        law=f"h = {in_all(f'1/2*v{n}*(t_h - t{n})')}",
        make=f"h = {in_all(f'1/2*v{n}*(t_h - t{n})')}",
        what="The area up to that moment",
        why=f"The height above the start is the displacement until then. The last piece is a triangle.{minus}",
        plain=PLAIN_AREA,
        unit="m",
        marks=SA,
        mistakes=(Mistake("half-forgotten", "h", in_all(f"v{n}*(t_h - t{n})"), TRIANGLE),),
    )
    return (
        Part("top-time", "calculate", "Calculate the time at which it is highest.", (moment,)),
        Part("height", "calculate", "Calculate its greatest height above the place where it starts.", (height,)),
        *((TURNING,) if inside else ()),
    )


def accelerations(gradients: tuple[Step, ...]) -> tuple[Part, ...]:
    """The part that asks for them, where the velocity changes at all."""
    if not gradients:
        return ()
    ask = "Calculate the acceleration in each part of the motion in which the velocity changes."
    also = tuple(step.makes for step in gradients[:-1])
    return (Part("acceleration", "calculate", ask, gradients, also=also),)


def plan(data: Data) -> Plan:
    """Gradients, areas, the greatest height."""
    rows = data.rows["points"]
    for n, (one, other) in enumerate(pairwise(rows), 1):
        if other["t"] <= one["t"]:
            raise Refusal(f"points.{n}.t", LATER)
    up = data.choices["positive"] == "up"
    motion = phases(rows)
    pieces = list(enumerate(pairwise(rows), 1))
    gradients = tuple(gradient(n, one, other, up) for n, (one, other) in pieces if change_of(one, other))
    areas = tuple(area(n, one, other, up) for n, (one, other) in pieces)
    sizes = [one.last - one.y for one in motion.phases]
    listed = ", ".join(
        f"{LETTERS[n]} ({row['t']}; {row['v'].lstrip('+')})" for n, row in enumerate(data.rows_said["points"])
    )
    sums = (*areas, whole(len(pieces), sizes, up)) if len(pieces) > 1 else areas
    upward = motion if up else motion.turned()
    turned = highest(upward)
    return Plan(
        story=f"{data.pick(*OPENINGS).format(listed)} {sense_stated('Upwards is positive.', up)}",
        parts=(
            *accelerations(gradients),
            Part("displacement", "calculate", "Calculate the displacement from the first point to the last.", sums),
            *(top(turned[0], inside=upward.phases[turned[0] - 1].v < 0, up=up) if turned else ()),
        ),
        values={f"{name}{n}": row[name] for n, row in enumerate(rows, 1) for name in ("t", "v")},
        scene=lambda v: drawn(v, len(rows)),
        checks=(balance([step.makes for step in gradients], len(rows)),) if gradients else (),
    )


def phases(rows: Sequence[dict[str, float]]) -> Motion:
    """The motion from point to point, counted from its start."""
    made, y = list[Phase](), 0.0
    for one, other in pairwise(rows):
        lasting = other["t"] - one["t"]
        made.append(Phase(one["t"], y, one["v"], (other["v"] - one["v"]) / lasting, lasting))
        y = made[-1].last
    return Motion(tuple(made))


def balance(made: Sequence[str], count: int) -> Check:
    """The accelerations, each over its time, give the whole change in velocity."""

    def holds(v: Values) -> bool:
        change = sum(v[name] * (v[f"t{int(name[1:]) + 1}"] - v[f"t{name[1:]}"]) for name in made)
        return abs(v["v1"] + change - v[f"v{count}"]) <= 1e-9 * sum(abs(v[f"v{n}"]) for n in range(1, count + 1))

    return Check(
        "The accelerations lead to the last velocity",
        words=(
            "Each acceleration times its time is a change in velocity; added to the first velocity they give the last."
        ),
        holds=holds,
    )


def drawn(v: Values, count: int) -> Figure:
    """The graph with its points."""
    points = [(v[f"t{n}"], v[f"v{n}"]) for n in range(1, count + 1)]
    return graph(
        "t (s)",
        "v (m·s^{-1})",
        [GraphLine(points)],
        marks=[(*point, LETTERS[n]) for n, point in enumerate(points)],
        title="Velocity against time",
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Up faster and faster, steadily, slower, and from level 2 on down again."""
    draw = cast(Random, random)
    v = float(draw.choice((2, 3, 4, 5, 6)))
    lasting = [float(draw.choice((1, 2, 3, 4) if level == 1 else (1.5, 2, 2.5, 3.5))) for _ in range(4)]
    start = 0.0 if draw.random() < 0.6 else float(draw.choice((1, -1, 1.5)))
    speeds = [start, v, v, -float(draw.choice((1, 2, 3))) if draw.random() < 0.7 else 0.0]
    if level > 1 and speeds[-1]:
        speeds.append(0.0)
    if draw.random() < 0.3:
        del speeds[2]
    rows, t = [], 0.0
    way = 1 if typed["positive"] == "up" else -1
    for speed, step in zip(speeds, (0.0, *lasting), strict=False):
        t += step
        rows.append({"t": written(t, "s", 3), "v": written(speed * way, "m/s", 3)})
    return {**typed, "points": rows}


READING = Question(
    key="reading",
    title="Read from a graph of velocity",
    fields=(
        YOUNGER,
        Rows(
            "points",
            "Key points of the graph",
            "point",
            (
                Input("t", "Time", "s", 1e-3, 600, over=None),
                Input("v", "Velocity", "m·s⁻¹", 1e-3, 300, signed=True, help=AGAINST),
            ),
            at_least=2,
            at_most=8,
        ),
    ),
    plan=plan,
    laws=(EQUATIONS.name,),
    example={
        "positive": "up",
        "points": (
            {"t": "0 s", "v": "0 m/s"},
            {"t": "2 s", "v": "5 m/s"},
            {"t": "5 s", "v": "5 m/s"},
            {"t": "9 s", "v": "-3 m/s"},
        ),
    },
    adjust=practise,
    since=4,
)
