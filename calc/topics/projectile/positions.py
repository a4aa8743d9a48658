"""What a graph of position against time tells of a throw: velocities by gradients, the acceleration, when it lands.

The reader gives the key points: where it starts, and the turning point. Δy = ½(u + v)t up to the turning point, where
v = 0, then v = u + at and Δy = ut + ½at² (data-sheet equations). Mistakes and marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from random import Random
from typing import cast

from calc.figures import Figure
from calc.figures.graph_marks import Key
from calc.figures.graphs import GraphLine, graph
from calc.model.answers import Point
from calc.model.questions import SA, Check, Data, Mistake, Part, Plan, Question, Refusal, Step, Values
from calc.model.relations import Relation
from calc.topics.projectile.equations import POSITIVE, directed, sense_stated, written
from calc.topics.projectile.laws import EQUATIONS
from calc.topics.shared.phase_graphs import velocity_graph
from calc.topics.shared.phases import Motion, Phase
from calc.topics.shared.quantities import height, length
from calc.topics.shared.quantities import time as a_time
from calc.working.declaring import boxes
from calc.working.working import measure, run

LOW = "The turning point lies above the start: give a greater height, or a smaller one for the start."
LANDED = "It has reached the ground by then, after {}. Give an earlier time."
READ = 0.05  # of a height that is read off the graph. Common practice, no source.
OPENINGS = (
    "On a moon without air a lander throws a stone straight up, and its camera records the position of the stone. The"
    " graph of position against time",
    "A probe on a small world without air shoots a ball straight up from a tube. The graph of the position of the ball"
    " against time",
    "For a film about a far world, where there is no air, a trick ball is thrown vertically upwards. The graph of its"
    " position against time",
)
CHORD = (
    "You have the gradient of the straight line up to the turning point, the mean velocity. At the start it is fastest:"
    " double that for {u}."
)
FROM_GROUND = "You measured from the ground. The displacement begins at the start: subtract {h_0} from {h_1}."
DOWN_ONLY = "You have the time from the turning point down. The clock starts with the throw: add {t_1}."
TWICE = "You doubled {t_1}. It lands lower than it starts, so the way down takes longer: find that time and add {t_1}."
AS_AT_START = (
    "You gave it the speed of the start. It lands lower than it starts and is faster there: multiply {a} by {t - t_1}."
)
WHOLE_TIME = (
    "You used the whole time. It is at rest at the turning point: its velocity grows from then on, use {t - t_1}."
)
DISTANCE = (
    "You divided the distance by the time. Take the displacement, from the start straight to the ground, for {v_av}."
)
DISPLACEMENT = "You have the size of the displacement. The distance counts both ways: add the way up and the way down."
ONE_WAY = "You have the way down alone. Add the way up, {h_1 - h_0}."
FORGOTTEN = "You left out the height of the start. The position is measured from the ground: add {h_0}."


@lru_cache(maxsize=2)
def laws(up: bool) -> dict[str, Relation]:
    """The laws up to the turning point and of the position, by what they find.

    Heights above the ground are sizes, velocities and accelerations have signs.
    """
    plus = "+" if up else "-"
    rise = "h_1 - h_0" if up else "h_0 - h_1"
    sense = "upwards is positive" if up else "downwards is positive, so u is negative"
    return {
        "u": Relation(
            f"{rise} = 1/2*(u + 0)*t_1",
            what="The velocity at the start, from the way to the turning point",
            why=f"From Δy = ½(u + v)t: the graph is level at the turning point, so v = 0 there. It goes up; {sense}.",
            plain="On average it is half as fast as at the start, for it slows down evenly to a standstill.",
            units={"u": "m·s⁻¹"},
            mistakes=(
                Mistake("mean-velocity", "u", f"({rise})/t_1", CHORD),
                Mistake("from-the-ground", "u", "2*h_1/t_1" if up else "-2*h_1/t_1", FROM_GROUND),
            ),
        ),
        "a": Relation(
            "0 = u + a*t_1",
            what="The acceleration, from the velocity at the start and at the turning point",
            why="From v = u + at with v = 0 at the turning point. Its sign is opposite to that of u.",
            plain="So much velocity is lost in each second.",
            units={"a": "m·s⁻²"},
        ),
        "h_2": Relation(
            f"h_2 = h_0 {plus} u*t_2 {plus} 1/2*a*t_2^2",
            what="The position at that time",
            why=(
                "The graph gives it directly: go from that time to the curve, then across to the axis. Δy = ut + ½at²"
                f" from the start gives the same{'' if up else '; downwards is positive, so it is taken from h₀'}."
            ),
            plain="Where it began, and how far it has come since.",
            units={"h_2": "m"},
            mistakes=(Mistake("start-height-forgotten", "h_2", "abs(u*t_2 + 1/2*a*t_2^2)", FORGOTTEN),),
        ),
    }


@lru_cache(maxsize=2)
def of_the_end(up: bool) -> dict[str, Relation]:
    """The laws of the landing, of the average and of the distance, by what they find."""
    minus = "-" if up else ""
    return {
        "t": Relation(
            f"{minus}h_1 = 1/2*a*(t - t_1)^2",
            what="From the turning point, where it is at rest, down to the ground",
            why="From Δy = ut + ½at² with u = 0: it needs the time t − t₁ from the turning point to the ground.",
            plain="How long it falls from up there, and before that it rose for t₁.",
            units={"t": "s"},
        ),
        "v": Relation(
            "v = 0 + a*(t - t_1)",
            what="The velocity just before it lands",
            why="From v = u + at with u = 0 at the turning point.",
            plain="It gains the same amount of velocity in each second of the fall.",
            units={"v": "m·s⁻¹"},
            marks=SA,
        ),
        "v_av": Relation(
            f"v_av = {minus}h_0/t",
            what="The average velocity: the gradient from start to end",
            why="The average velocity is the displacement over the time: the gradient of the straight line between.",
            plain="As if it had gone straight from the start to the ground in that time.",
            units={"v_av": "m·s⁻¹"},
            marks=SA,
            mistakes=(Mistake("distance", "v_av", "(2*h_1 - h_0)/t", DISTANCE),),
        ),
        "d": Relation(
            "d = h_1 - h_0 + h_1",
            what="The way up and the way down",
            why="The distance counts every metre of the path, whichever way it goes.",
            plain="Up to the turning point, then all the way down.",
            units={"d": "m"},
            marks=SA,
            mistakes=(
                Mistake("displacement", "d", "h_0", DISPLACEMENT),
                Mistake("one-way", "d", "h_1", ONE_WAY),
            ),
        ),
    }


def steps(up: bool, lower: bool) -> dict[str, Step]:
    """The steps by what they find. lower: it lands lower than it starts."""
    made = {name: law.step(name) for name, law in (laws(up) | of_the_end(up)).items()}
    root = "sqrt(-2*h_1/a)" if up else "sqrt(2*h_1/a)"
    slips = [Mistake("down-only", "t", root, DOWN_ONLY)]
    ends = [Mistake("whole-time", "v", "a*t", WHOLE_TIME)]
    if lower:
        slips.append(Mistake("up-twice", "t", "2*t_1", TWICE))
        ends.append(Mistake("as-at-start", "v", "-u", AS_AT_START))
    made["t"] = replace(
        made["t"],
        make=f"t = t_1 + {root}",
        lines=(f"t - t_1 = {root}",),
        other=f"t = t_1 - {root}",
        dropped=f"It belongs to {'a time before the start' if lower else 'the start itself'}: drop it.",
        mistakes=tuple(slips),
    )
    made["v"] = replace(made["v"], mistakes=tuple(ends))
    made["v_av"] = replace(made["v_av"], make=made["v_av"].law)
    made["h_2"] = replace(made["h_2"], read_off=READ)
    return made | {name: directed(made[name], up) for name in ("u", "a", "v", "v_av")}


SHAPE = Part(
    "shape",
    "explain",
    "How does the graph show where the velocity is zero, and where the speed is largest? Give reasons.",
    points=(
        Point("The gradient of the graph is the velocity.", 1, ("gradient",)),
        Point("At the turning point the graph is level, so the velocity is zero there.", 1, ("turning point", "level")),
        Point("It is steepest just before the ground, so the speed is largest there.", 1, ("steepest",)),
    ),
)
SAME_LEVEL = replace(
    SHAPE,
    points=(
        *SHAPE.points[:2],
        Point("It is steepest at the start and just before the end: there the speed is largest.", 1, ("steepest",)),
    ),
)


def motion(v: Values, up: bool) -> Motion:
    """From the start to the ground, in the signs of the positive direction."""
    a = -2 * (v["h_1"] - v["h_0"]) / v["t_1"] ** 2
    made = Motion((Phase(0.0, v["h_0"], -a * v["t_1"], a, v["t_1"] + (-2 * v["h_1"] / a) ** 0.5),))
    return made if up else made.turned()


def scene(v: Values, up: bool) -> Figure:
    """The graph that is read: its key points named, the landing and the rest to be read off its axes."""
    (one,) = motion(v, up).phases
    shape = "rises to its turning point at B" if up else "goes down to its turning point at B, as upwards is negative"
    return graph(
        "t (s)",
        "y (m)",
        [GraphLine([(t, one.position(t)) for t in one.times()])],
        keys=[Key(0.0, one.y, "A"), Key(v["t_1"], one.position(v["t_1"]), "B", "t_1")],
        title="Position against time",
        description=f"Graph of y against t: a curve that begins at A, {shape}, and ends on the time axis.",
        notes=("Zero is at the ground. The gradient of this graph is the velocity.",),
    )


def drawn(v: Values, up: bool) -> Figure:
    """The velocity against time."""
    return velocity_graph(motion(v, up))


def sketch(data: Data, v: Values, up: bool) -> Part:
    """The graph of the velocity that goes with it."""
    style = data.settings.style
    speeds = [measure(v[name], "m·s⁻¹", style).text for name in ("u", "v")]
    end = measure(v["t"], "s", style).text
    return Part(
        "velocity-graph",
        "draw",
        "Draw the graph of velocity against time that belongs to it.",
        points=(
            Point("Axes labelled v (m·s⁻¹) and t (s).", 1, ("labelled",)),
            Point(f"A straight line from {speeds[0]} at the start to {speeds[1]} at {end}.", 1, ("straight",)),
            Point(f"It crosses the time axis at {data.said['t_1']}, the time of the turning point.", 1, ("crosses",)),
        ),
        figure=lambda values: drawn(values, up),
    )


def plan(data: Data) -> Plan:
    """The shape, velocity, acceleration, a position, the landing, average and distance, and v against t."""
    given, said = data.values, data.said
    if given["h_1"] <= given["h_0"]:
        raise Refusal("h_1", LOW)
    up = data.choices["positive"] == "up"
    ends = motion(given, up).end
    if given["t_2"] >= ends:
        raise Refusal("t_2", LANDED.format(measure(ends, "s", data.settings.style).text))
    lower = given["h_0"] > 0
    find = steps(up, lower)
    calculated = [
        Part("start", "calculate", "Calculate the velocity at the start.", (find["u"],)),
        Part("acceleration", "calculate", "Calculate the acceleration.", (find["a"],)),
        Part(
            "position",
            "calculate",
            f"Read from the graph, or calculate, how high above the ground it is at {said['t_2']}.",
            (find["h_2"],),
        ),
        Part("landing", "calculate", "Calculate the time at which it reaches the ground.", (find["t"],)),
        Part("end", "calculate", "Calculate the velocity just before it reaches the ground.", (find["v"],)),
    ]
    if lower:
        ask = "Calculate the average velocity from the start to the ground."
        calculated.append(Part("average", "calculate", ask, (find["v_av"],)))
    ask = "Calculate the distance that it covers until it reaches the ground."
    calculated.append(Part("distance", "calculate", ask, (find["d"],)))
    values = run(Plan("", tuple(calculated), dict(given)), data.settings.constants())
    start = f"{said['h_0']} above the ground" if lower else "on the ground"
    return Plan(
        story=(
            f"{data.pick(*OPENINGS)} is part of a parabola. It begins {start}, and its turning point lies at"
            f" {said['t_1']} and {said['h_1']} above the ground. Positions are measured from the ground."
            f" {sense_stated('Upwards is positive.', up)}"
        ),
        parts=(SHAPE if lower else SAME_LEVEL, *calculated, sketch(data, values, up)),
        values=dict(given),
        scene=lambda v: scene(v, up),
        checks=checks(up, lower),
    )


def checks(up: bool, lower: bool) -> tuple[Check, ...]:
    """Other ways to the last velocity and to the average."""
    energy = Check("The last velocity without the time", f"v^2 = u^2 {'-' if up else '+'} 2*a*h_0", tolerance=1e-6)
    mean = Check("The average velocity is the mean of the first and the last", "v_av = 1/2*(u + v)", tolerance=1e-6)
    return (energy, mean) if lower else (energy,)


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """A throw on a world with a weaker or stronger pull than ours, and a time before it lands."""
    draw = cast(Random, random)
    g = float(draw.choice((1.6, 3.7, 4, 5, 8) if level == 1 else (1.4, 2.6, 3.8, 7.5, 11)))
    t_1 = float(draw.choice((1, 2, 3) if level == 1 else (0.8, 1.5, 2.4)))
    low = float(draw.choice((0, 2, 5, 6) if level > 1 else (2, 4, 5, 6)))
    high = float(written(low + g * t_1**2 / 2, "", 3).replace(",", "."))
    rise = high - low
    end = t_1 + t_1 * (high / rise) ** 0.5
    at = round(end * draw.choice((0.15, 0.2, 0.7, 0.75)), 1)
    numbers = {"h_0": (low, "m"), "t_1": (t_1, "s"), "h_1": (high, "m"), "t_2": (max(at, 0.1), "s")}
    return {**typed} | {name: written(*number, 3) for name, number in numbers.items()}


POSITIONS = Question(
    "positions",
    "Read from a graph of position",
    plan=plan,
    **boxes(
        POSITIVE,
        height("h_0", "Height of the start", "", "4 m; 2 6; 2 6"),
        a_time("t_1", "Time of the turning point", "", "2 s"),
        length("h_1", "Height of the turning point", "", "12 m; 6 40; 6 40"),
        a_time("t_2", "Time at which the position is read", "", "1 s"),
    ),
    laws=(EQUATIONS.name,),
    adjust=practise,
    scenario=True,
    since=5,
)
