"""A whole question: a lamp let go by a rising balloon; what it does first, its highest point, the ground, the graphs.

The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from calc.figures import Figure
from calc.figures.graphs import GraphLine, graph
from calc.model.answers import Point
from calc.model.questions import SA, Check, Data, Mistake, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.projectile.equations import YOUNGER, Known, Roots, directed, equations, falling, passes, sense_stated
from calc.topics.projectile.from_height import CARRIED, below, scene, tops
from calc.topics.projectile.laws import DOWNWARDS, EQUATIONS, FREE_FALL
from calc.topics.shared.phase_graphs import Mark, table, velocity_graph
from calc.topics.shared.phases import Motion, free
from calc.topics.shared.quantities import Quantity, length
from calc.working.declaring import boxes, state
from calc.working.working import measure, run

rising = Quantity(
    "m·s⁻¹",
    1e-3,
    100,
    "The balloon rises: give its speed, greater than zero.",
    typed="m/s",
)
QUANTITIES = (
    rising("u", "Speed at which the balloon rises", "", "6 m/s; 6 12; 5,5 13"),
    length("H", "Height at which the lamp is let go", "", "40 m; 12 30; 11 40"),
)
OPENINGS = (
    "A hot-air balloon rises straight up at a constant {u}. When its basket is {H} above the ground, a lamp comes off.",
    (
        "At a night festival a tethered balloon climbs vertically at a constant {u}. {H} above the field a lamp comes"
        " loose from its basket."
    ),
    "A weather balloon moves vertically upwards at a constant {u}. At a height of {H} the lamp below it drops off.",
)
FIRST = Part(
    "first",
    "explain",
    "Describe the motion of the lamp just after it has come off. Give a reason.",
    points=(
        Point("It goes on upwards, with the velocity of the balloon.", 1, ("upwards", "velocity of the balloon")),
        Point("Its acceleration is g downwards, so it slows down until it stops and then falls.", 1, ("downwards",)),
    ),
)
ALONE = "You found how far the balloon has moved meanwhile. Its height above the ground is asked: add {H} to get {y_B}."


@lru_cache(maxsize=2)
def meanwhile(up: bool) -> Relation:
    """The height of the balloon at that time."""
    why = "It was at the same place as the lamp when that came off, and its velocity does not change."
    return Relation(
        "y_B = H + u*t" if up else "y_B = H - u*t",
        what="The balloon moves on at constant velocity",
        why=why if up else f"{why} Its displacement ut is negative, upwards, and adds to the height.",
        plain="The same number of metres in each second.",
        units={"y_B": "m"},
        marks=SA,
        mistakes=(Mistake("rise-alone", "y_B", "u*t" if up else "-u*t", ALONE),),
    )


def motion(v: Values, up: bool) -> Motion:
    """The lamp from when it comes off to the ground."""
    made = Motion((free(v["H"], abs(v["u"]), v["g"]),))
    return made if up else made.turned()


def velocities(v: Values, up: bool) -> Figure:
    """v against t of the lamp."""
    one = motion(v, up)
    turn = one.phases[0].turning or 0.0
    marks = [Mark(0.0, "", "", "u"), Mark(turn, "t_{top}"), Mark(one.end, "t", "", "v")]
    figure = velocity_graph(
        one, marks, areas=[(0.0, turn, ""), (turn, one.end, "")], title="Velocity of the lamp against time"
    )
    return replace(figure, table=table(one, [turn]))


def places(v: Values) -> Figure:
    """Height against time of lamp and balloon on the same axes."""
    (one,) = motion(v, True).phases
    return graph(
        "t (s)",
        "y (m)",
        [
            GraphLine([(t, one.position(t)) for t in one.times()], "lamp"),
            GraphLine([(0.0, v["H"]), (one.end, v["H"] + abs(v["u"]) * one.end)], "balloon"),
        ],
        title="Positions of the lamp and of the balloon",
        notes=("At the start both lines have the same gradient: the same velocity.",),
    )


def drawings(data: Data, values: Values, up: bool) -> tuple[Part, ...]:
    """The two graphs and what they are marked by."""
    style = data.settings.style
    at = {name: measure(values[name], "s", style).text for name in ("t", "t_top")}
    speed = {name: measure(values[name], "m·s⁻¹", style).text for name in ("u", "v")}
    return (
        Part(
            "velocity-graph",
            "draw",
            sense_stated("Draw the graph of the velocity of the lamp against time. Upwards is positive.", up),
            points=(
                Point("Axes labelled v (m·s⁻¹) and t (s).", 1, ("labelled",)),
                Point(f"A straight line from {speed['u']} to {speed['v']} at {at['t']}.", 1, ("straight",)),
                Point(f"It crosses the time axis at {at['t_top']}.", 1, ("crosses",)),
            ),
            figure=lambda v: velocities(v, up),
        ),
        Part(
            "position-graph",
            "draw",
            f"On one pair of axes sketch the {'positions' if up else 'heights'} of the lamp and of the balloon against"
            " time.",
            points=(
                Point("For the lamp a curve that rises first, turns, and reaches zero.", 1, ("curve",)),
                Point("For the balloon a straight line that rises.", 1, ("straight",)),
                Point("Both begin at the same point with the same gradient.", 1, ("same gradient",)),
            ),
            figure=places,
        ),
    )


def plan(data: Data) -> Plan:
    """State, what it does first, highest point, ground, the balloon meanwhile, two graphs."""
    g, up = data.settings.constant("g"), data.choices["positive"] == "up"
    (kept,) = passes(Known(u=data.values["u"], y=-data.values["H"]), g)
    laws = equations(up, Roots(kept), forgotten=CARRIED)
    height, moment = tops(up)
    first = moment.step("t_top")
    if not up:
        first = replace(first, why=f"{first.why} The lamp starts upwards, so u is negative.")
    landing = directed(laws[1].step("v"), up)
    (below_step,) = (step for step in below(up).steps() if step.makes == "Deltay")
    time = (*falling(up).steps(), below_step, laws[2].step("t"))
    given = {**data.values, "u": data.values["u"] if up else -data.values["u"]}
    calculated = (
        Part(
            "top-time",
            "calculate",
            "Calculate how long after it has come off its velocity is zero.",
            (first,),
        ),
        Part("height", "calculate", "Calculate the greatest height of the lamp above the ground.", (height.step("h"),)),
        Part("ground", "calculate", "Calculate the time from when it comes off until it hits the ground.", time),
        Part("velocity", "calculate", "Calculate the velocity with which it hits the ground.", (landing,)),
        Part(
            "balloon",
            "calculate",
            "The balloon keeps its velocity. Calculate how high above the ground it is when the lamp hits the ground.",
            (meanwhile(up).step("y_B"),),
        ),
    )
    values = run(Plan("", calculated, given), data.settings.constants())
    graphs = drawings(data, values, up)
    return Plan(
        story=(
            f"{data.pick(*OPENINGS).format(**data.said)} Air resistance is left out."
            f" {sense_stated('Take upwards as positive.', up)}"
        ),
        parts=(state(DOWNWARDS), FIRST, *calculated, *graphs),
        values=given,
        # without its velocity, which the second part asks for
        scene=lambda v: scene({"H": v["H"]}, up),
        checks=(
            Check("The velocity from the time", "v = u + a*t", tolerance=1e-6),
            Check(
                "The lamp is below the balloon by what both have moved apart: ½gt²", "y_B = 1/2*g*t^2", tolerance=1e-6
            ),
        ),
    )


LAMP = Question(
    "lamp",
    "A lamp that falls from a balloon",
    plan=plan,
    **boxes(YOUNGER, *QUANTITIES),
    laws=(DOWNWARDS.name, FREE_FALL.name, EQUATIONS.name),
    constants=("g",),
    scenario=True,
    since=4,
)
