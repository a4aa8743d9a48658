"""A whole question: a ball dropped from a gallery bounces; velocities, forces of the contact, a graph, a softer mat.

The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from random import Random
from typing import cast

from calc.figures import Figure
from calc.model.answers import Point
from calc.model.questions import SA, Check, Data, Mistake, Part, Plan, Question, Refusal, Step, Values
from calc.model.relations import Relation
from calc.topics.projectile.bounce import ADDS, after, before, carried, change, pushed, scene
from calc.topics.projectile.equations import YOUNGER, directed, sense_stated, written
from calc.topics.projectile.laws import DOWNWARDS, EQUATIONS, FREE_FALL
from calc.topics.shared.phase_graphs import Mark, table, velocity_graph
from calc.topics.shared.phases import Motion, Phase
from calc.topics.shared.quantities import length, mass, time
from calc.working.declaring import boxes, state
from calc.working.working import measure, run

UNITS = {
    "v_1": "m·s⁻¹",
    "v_2": "m·s⁻¹",
    "h_1": "m",
    "h_2": "m",
    "Deltav": "m·s⁻¹",
    "m": "kg",
    "Deltat": "s",
    "F_net": "N",
    "N": "N",
}
TOP = "You divided the velocity just after the bounce by g. Take the one just before it for {t}."


@lru_cache(maxsize=2)
def fall(up: bool) -> Relation:
    """From rest down to the floor, for the time."""
    return Relation(
        "v_1 = -g*t" if up else "v_1 = g*t",
        what="From rest to the floor",
        why=f"From v = u + at with u = 0 and a = {'−g, upwards' if up else 'g, downwards'} positive.",
        plain="It gains the same amount of velocity in each second.",
        units={"t": "s"},
        marks=SA,
        mistakes=(Mistake("wrong-velocity", "t", "v_2/g" if up else "-v_2/g", TOP),),
    )


LOSS = Part(
    "loss",
    "explain",
    "Why does the ball not rise to the height it fell from?",
    points=(
        Point("Part of the mechanical energy is lost in the contact.", 1, ("mechanical energy",)),
        Point("It becomes heat, sound and work that bends the ball and the floor.", 1, ("heat",)),
    ),
)
MAT = Part(
    "mat",
    "explain",
    "On a soft mat the ball would leave with the same velocity after a longer contact. Explain how this changes the"
    " force on the ball.",
    points=(
        Point("The change in velocity is the same, so the change in momentum Δp is the same.", 1, ("Δp is the same",)),
        Point("The time of contact Δt is longer.", 1, ("longer",)),
        Point("The net force is Δp/Δt, so it is smaller.", 1, ("smaller",)),
    ),
)
QUANTITIES = (
    length("h_1", "Height it is dropped from", "", "5 m; 3 8; 3,5 9"),
    length("h_2", "Height it rises to", "", "3,2 m"),
    mass("m", "Mass of the ball", "", "600 g; 250 600; 270 620"),
    time("Deltat", "Time of contact", "", "0,12 s; 0,1 0,25; 0,11 0,28"),
)
OPENINGS = (
    "From the gallery of a sports hall a coach lets a ball fall from rest, {h_1} above the court.",
    "To try out a new floor, a ball is let go from rest {h_1} above it.",
    "A climber on an indoor wall drops a ball from rest; it falls {h_1} to the floor of the hall.",
)


def motion(v: Values, up: bool) -> Motion:
    """Down to the floor, and up again until it lands a second time."""
    g, leaves = v["g"], abs(v["v_2"])
    first = Phase(0.0, v["h_1"], 0.0, -g, abs(v["v_1"]) / g)
    made = Motion((first, first.then(2 * leaves / g, u=leaves)))
    return made if up else made.turned()


def drawn(v: Values, up: bool) -> Figure:
    """v against t from the drop to the second landing."""
    one = motion(v, up)
    end = one.phases[0].end
    marks = [Mark(end, "t", "", "v_1", after=False), Mark(end, "", "", "v_2")]
    figure = velocity_graph(one, marks, title="Velocity of the ball against time")
    return replace(figure, table=table(one, [turn for phase in one.phases if (turn := phase.turning)]))


def steps(up: bool) -> dict[str, Step]:
    """The steps by the name of what they find."""
    laws = (before(up), after(up), change(up), pushed(up), carried(up))
    made = dict[str, Step]()
    for law, name in zip(laws, ("v_1", "v_2", "Deltav", "F_net", "N"), strict=True):
        step = law.in_units(UNITS).step(name)
        if name in ("v_1", "v_2"):
            step = directed(step, up)
        made[name] = step
    return made


def sketch(data: Data, values: Values, up: bool) -> Part:
    """The graph of the velocity and what it is marked by."""
    style = data.settings.style
    at = {name: measure(values[name], "m·s⁻¹", style).text for name in ("v_1", "v_2")}
    moment = measure(values["t"], "s", style).text
    return Part(
        "graph",
        "draw",
        sense_stated(
            "Draw the graph of velocity against time from the drop until it lands a second time. Upwards is positive.",
            up,
        ),
        points=(
            Point("Axes labelled v (m·s⁻¹) and t (s).", 1, ("labelled",)),
            Point(f"A straight line from zero to {at['v_1']} at {moment}.", 1, ("straight",)),
            Point(f"There it jumps to {at['v_2']}.", 1, ("jumps",)),
            Point("The line after the bounce is parallel to the first.", 1, ("parallel",)),
        ),
        figure=lambda v: drawn(v, up),
    )


def plan(data: Data) -> Plan:
    """State, velocities, time, forces, graph, the loss, a softer mat."""
    if data.values["h_2"] > data.values["h_1"] * (1 + 1e-9):
        raise Refusal("h_2", ADDS)
    up = data.choices["positive"] == "up"
    find = steps(up)
    said = data.said
    calculated = (
        Part("before", "calculate", "Calculate the velocity just before it hits the floor.", (find["v_1"],)),
        Part("fall", "calculate", "Calculate the time of the fall.", (fall(up).step("t"),)),
        Part("after", "calculate", "Calculate the velocity with which it leaves the floor.", (find["v_2"],)),
        Part(
            "net-force",
            "calculate",
            "Calculate the average net force on the ball during the contact.",
            (find["Deltav"], find["F_net"]),
        ),
        Part("floor-force", "calculate", "Calculate the average force of the floor on the ball.", (find["N"],)),
    )
    values = run(Plan("", calculated, dict(data.values)), data.settings.constants())
    lost = (LOSS,) if data.values["h_2"] < data.values["h_1"] else ()
    return Plan(
        story=(
            f"{data.pick(*OPENINGS).format(**said)} It has a mass of {said['m']}. The contact with the floor lasts"
            f" {said['Deltat']}, and it rises to {said['h_2']}. Air resistance is left out."
            f" {sense_stated('Take upwards as positive.', up)}"
        ),
        parts=(state(FREE_FALL), *calculated, sketch(data, values, up), *lost, MAT),
        values=dict(data.values),
        scene=lambda v: scene(v, up),
        checks=(
            Check("The ratio of the speeds, from the heights alone", "v_2/v_1 = -sqrt(h_2/h_1)"),
            Check("The time of the fall from the height", "h_1 = 1/2*g*t^2", tolerance=1e-6),
        ),
        notes=("During the contact the ball is not in free fall: the floor pushes it.",),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """A rebound to a third up to three quarters of the height."""
    draw = cast(Random, random)
    high = float(str(typed["h_1"]).split()[0].replace(",", "."))
    return {**typed, "h_2": written(high * (0.35 + 0.4 * draw.random()), "m", 2)}


COURT = Question(
    "court",
    "A ball dropped in a hall",
    plan=plan,
    **boxes(YOUNGER, *QUANTITIES),
    laws=(FREE_FALL.name, DOWNWARDS.name, EQUATIONS.name),
    constants=("g",),
    adjust=practise,
    scenario=True,
    since=4,
)
