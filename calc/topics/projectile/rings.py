"""A whole question: one ring thrown up, another dropped a little later; where they meet, how they move, why evenly.

The story and its numbers are our own. Marks: common practice, no source.
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
from calc.model.questions import SA, Check, Data, Mistake, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.projectile.equations import YOUNGER, directed, sense_stated, written
from calc.topics.projectile.laws import DOWNWARDS, EQUATIONS, FREE_FALL
from calc.topics.projectile.meeting import DELAY, by_hand, fault, meet, meetings, same_level, scene
from calc.topics.shared.phases import Phase
from calc.topics.shared.quantities import Quantity, height
from calc.topics.shared.quantities import time as a_time
from calc.working.declaring import boxes, state
from calc.working.working import measure, run

SPED_UP = "You added {g*t}. Gravity takes upward velocity away: subtract {g*t} to get {v_A}."
SAME_SIGN = (
    "You gave both the same sign. A was thrown upwards and g points downwards: put a minus sign before {u_A} to get"
    " {v_A}."
)


@lru_cache(maxsize=2)
def laws(up: bool) -> tuple[Relation, Relation, Relation, Relation]:
    """When they meet, where, and the velocity of each then; u_A is a speed, upwards."""
    meeting = by_hand(
        meet(
            "y_A + u_A*t - 1/2*g*t^2 = y_B - 1/2*g*(t - t_0)^2",
            "B starts from rest and moves for the time t − t₀ only. The square of t stands on both sides and cancels.",
            up=up,
            mistakes=(Mistake("delay-ignored", "t", "(y_B - y_A)/u_A", DELAY),),
        ),
        "t = (y_B - y_A - 1/2*g*t_0^2)/(u_A - g*t_0)",
        "y_A + u_A*t = y_B + g*t_0*t - 1/2*g*t_0^2",
    )
    if not up:
        meeting = thrown(meeting)
    of_a = Relation(
        "v_A = u_A - g*t" if up else "v_A = g*t - u_A",
        what="The velocity of A at that time",
        why=(
            "From v = u + at with a = −g, upwards positive."
            if up
            else "From v = u + at with a = g, downwards positive: A was thrown upwards, so its velocity was −u_A."
        ),
        plain="Each second takes away the same amount of upward velocity.",
        units={"v_A": "m·s⁻¹"},
        marks=SA,
        mistakes=(
            Mistake("signs-mixed", "v_A", "u_A + g*t", SPED_UP)
            if up
            else Mistake("signs-mixed", "v_A", "g*t + u_A", SAME_SIGN),
        ),
    )
    of_b = Relation(
        "v_B = 0 - g*(t - t_0)" if up else "v_B = 0 + g*(t - t_0)",
        what="The velocity of B at that time",
        why=(
            "From v = u + at with u = 0: B starts from rest, later than A by t₀."
            f" {'Upwards' if up else 'Downwards'} is positive."
        ),
        plain="It has fallen for a shorter time.",
        units={"v_B": "m·s⁻¹"},
        marks=SA,
        mistakes=(Mistake("delay-ignored", "v_B", "-g*t" if up else "g*t", DELAY),),
    )
    height = same_level() if up else replace(same_level(), why=UPWARD_SPEED, by_hand={})
    return meeting, height, of_a, of_b


def thrown(law: Relation) -> Relation:
    """A law that holds the speed upwards of A, downwards positive."""
    why = f"{law.why} A was thrown upwards, so its displacement is −u_A t + ½gt²."
    step = replace(law.by_hand["t"], why=why)
    return replace(law, why=why, by_hand={"t": step})


UPWARD_SPEED = (
    "From Δy = ut + ½at² with a = g, downwards positive: A was thrown upwards, so its displacement is −u_A t + ½gt²,"
    " and it is taken from the height of the start."
)
EVENLY = Part(
    "evenly",
    "explain",
    "Seen from A, ring B comes nearer at a constant velocity once both are in the air. Explain why.",
    points=(
        Point("Both are in free fall and have the same acceleration, g downwards.", 1, ("same acceleration",)),
        Point("Their velocities change alike, so the difference of the velocities stays the same.", 1, ("difference",)),
    ),
)
START = Quantity("m·s⁻¹", 1e-3, 100, "A is thrown upwards: give its speed, greater than zero.", typed="m/s")
QUANTITIES = (
    height("y_A", "Height of A when it is thrown", "", "1,5 m; 1 2; 1,2 2,1"),
    START("u_A", "Speed with which A is thrown upwards", "", "14 m/s; 12 16; 11 17"),
    height("y_B", "Height from which B is dropped", "", "10 m; 5 10; 4 11"),
    a_time("t_0", "Delay of B", "", "0,3 s; 0,2 0,4; 0,25 0,45"),
)
OPENINGS = (
    (
        "In a circus a juggler throws ring A straight up at {u_A} from {y_A} above the ground. A partner in the"
        " rigging, {y_B} above the ground, drops ring B from rest {t_0} later, just beside the path of A."
    ),
    (
        "For a film of a machine that juggles, ring A is shot vertically upwards at {u_A}, {y_A} above the floor. {t_0}"
        " later ring B is let go from rest {y_B} above the floor, close to the line of A."
    ),
    (
        "A dancer throws ring A vertically upwards: it leaves the hand {y_A} above the stage at {u_A}. {t_0} after that"
        " ring B is released from rest, {y_B} above the stage and right beside the path of A."
    ),
)


def with_rest(data: Data) -> Data:
    """The same data with B at rest when it starts."""
    return replace(data, values={**data.values, "u_B": 0.0})


def drawn(v: Values) -> Figure:
    """Height against time of both rings up to their meeting and a little beyond."""
    g, end = v["g"], v["t"] * 1.15
    a = Phase(0.0, v["y_A"], v["u_A"], -g, end)
    b = Phase(v["t_0"], v["y_B"], 0.0, -g, end - v["t_0"])
    waits = GraphLine([(0.0, v["y_B"]), (v["t_0"], v["y_B"])])
    lines = [GraphLine([(t, one.position(t)) for t in one.times()], name) for one, name in ((a, "A"), (b, "B"))]
    return graph(
        "t (s)",
        "y (m)",
        [*lines, waits],
        keys=[Key(v["t"], v["y"], "", "t", "y")],
        title="Positions of the two rings",
    )


def plan(data: Data) -> Plan:
    """State, when, where, both velocities, why evenly, the graph."""
    rest = with_rest(data)
    (now,) = meetings(rest)
    if why := fault(rest, rest.values, now):
        raise Refusal(None, why)
    up = data.choices["positive"] == "up"
    meeting, height, of_a, of_b = laws(up)
    calculated = (
        Part("when", "calculate", "Calculate the time from the throw of A until the rings meet.", (meeting.step("t"),)),
        Part("where", "calculate", "Calculate the height at which they meet.", (height.step("y"),)),
        Part("of-A", "calculate", "Calculate the velocity of A at that moment.", (directed(of_a.step("v_A"), up),)),
        Part("of-B", "calculate", "Calculate the velocity of B at that moment.", (directed(of_b.step("v_B"), up),)),
    )
    values = run(Plan("", calculated, dict(data.values)), data.settings.constants())
    style = data.settings.style
    at, there = measure(values["t"], "s", style).text, measure(values["y"], "m", style).text
    sketch = Part(
        "graph",
        "draw",
        f"On one pair of axes sketch the {'positions' if up else 'heights'} of both rings against time until they"
        " meet.",
        points=(
            Point(f"A starts at {data.said['y_A']}, B is at {data.said['y_B']} until it starts.", 1, ("start",)),
            Point("Both lines are curved while the rings move.", 1, ("curved",)),
            Point(f"They cross at {at} and {there}.", 1, ("cross",)),
        ),
        figure=drawn,
    )
    return Plan(
        story=(
            f"{data.pick(*OPENINGS).format(**data.said)} Air resistance is left out."
            f" {sense_stated('Take upwards as positive and measure heights from the ground.', up)}"
        ),
        parts=(state(FREE_FALL), *calculated, EVENLY, sketch),
        values=dict(data.values),
        scene=lambda v: scene({"y_A": v["y_A"], "y_B": v["y_B"], "u_A": v["u_A"] if up else -v["u_A"]}, up),
        checks=(
            Check("The height from the motion of B", "y = y_B - 1/2*g*(t - t_0)^2", tolerance=1e-6),
            Check(
                "Since B started, the gap closes at the difference of the velocities",
                f"{'v_A - v_B' if up else 'v_B - v_A'} = u_A - g*t_0",
            ),
        ),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """A drop that A meets in the air, on its way up or down."""
    draw = cast(Random, random)
    y, u, t_0 = (float(str(typed[name]).split()[0].replace(",", ".")) for name in ("y_A", "u_A", "t_0"))
    t = t_0 + 0.25 + 0.5 * draw.random()
    high = y + u * t - 4.9 * t * t + 4.9 * (t - t_0) ** 2
    return {**typed, "y_B": written(high, "m", 2)}


RINGS = Question(
    "rings",
    "Two rings that meet",
    plan=plan,
    **boxes(YOUNGER, *QUANTITIES),
    laws=(FREE_FALL.name, DOWNWARDS.name, EQUATIONS.name),
    constants=("g",),
    adjust=practise,
    scenario=True,
    since=4,
)
