"""A graph of flux against time is read: the emf by its gradient, where there is none, its direction, its own graph.

ε = −N ΔΦ/Δt: data-sheet equation; N times the gradient of a straight stretch. Mistakes and marks: common practice, no
source.
"""

from __future__ import annotations

from calc.figures import Figure, GraphLine, graph
from calc.figures.graph_marks import Key
from calc.model.answers import Point
from calc.model.questions import Check, Data, Mistake, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.electrodynamics.emf import EACH_TURN
from calc.topics.electrodynamics.laws import FARADAY, change_time, turns
from calc.topics.electrodynamics.search_coil import FLOWS
from calc.topics.shared.quantities import Quantity, resistance
from calc.working.declaring import boxes, state

LATER = "The points follow each other: type a later time than that of the point before."
UPSIDE_DOWN = "You divided the other way round. Divide the change in flux by the time to get the gradient."
RISING = Relation(
    "epsilon_1 = N*Phi_m/t_A",
    what="The turns times the gradient from O to A",
    why="The emf has the size N ΔΦ/Δt, and ΔΦ/Δt is the gradient. From O to A the flux grows from zero.",
    plain="The steeper the line, the larger the emf.",
    units={"epsilon_1": "V"},
    quotes=(FARADAY.name,),
    mistakes=(
        Mistake("turns-left-out", "epsilon_1", "Phi_m/t_A", EACH_TURN),
        Mistake("upside-down", "epsilon_1", "N*t_A/Phi_m", UPSIDE_DOWN),
    ),
)
FALLING = Relation(
    "epsilon_2 = N*Phi_m/(t_C - t_B)",
    what="The turns times the gradient from B to C",
    why="From B to C the flux falls to zero. The time that this takes is that at C less that at B.",
    plain="Only the time of the change counts, not that on the clock.",
    units={"epsilon_2": "V"},
    quotes=(FARADAY.name,),
    mistakes=(
        Mistake("turns-left-out", "epsilon_2", "Phi_m/(t_C - t_B)", EACH_TURN),
        Mistake(
            "clock-time",
            "epsilon_2",
            "N*Phi_m/t_C",
            "You divided by the time at C. Divide by the time that the change takes: {t_C - t_B}.",
        ),
        Mistake("upside-down", "epsilon_2", "N*(t_C - t_B)/Phi_m", UPSIDE_DOWN),
    ),
)
NONE = Part(
    "none",
    "explain",
    "In which stretch of the graph is there no emf? Explain how the graph shows it.",
    points=(
        Point("From A to B the line is level: the flux does not change, so no emf is induced.", 1, ("A to B", "level")),
        Point("The emf is N times the gradient, and the gradient is zero there.", 1, ("gradient is zero",)),
    ),
)
OPPOSITE = Part(
    "opposite",
    "explain",
    "Compare the direction of the current from B to C with that from O to A. Give a reason.",
    points=(
        Point("The flux increases from O to A and decreases from B to C.", 1, ("increases", "decreases")),
        Point("The current opposes each change, so its direction is opposite.", 1, ("direction is opposite",)),
    ),
)
DRAWN = (
    Point("Axes labelled emf, in volts, and time, in seconds.", 1, ("labelled",)),
    Point("Level lines from O to A and from B to C, at the emfs worked out; zero from A to B.", 1, ("Level",)),
    Point("They lie on opposite sides of the time axis.", 1, ("opposite sides",)),
)
linked = Quantity("Wb", 1e-6, 1, "The largest flux must be greater than zero.")
BOXES = (
    turns("N", "Number of turns", "", "200; 50 100 200 400; 120 250 360"),
    linked("Phi_m", "Flux at A and B", "", "6 mWb; 2 4 6 8; 2,5 4,8", unit="mWb"),
    change_time("t_A", "Time at A", "", "0,2 s; 0,2 0,3 0,4; 0,15 0,25"),
    change_time("t_B", "Time at B", "", "0,6 s; 0,6 0,7 0,8; 0,55 0,65"),
    change_time("t_C", "Time at C", "", "0,7 s; 0,9 1 1,2; 0,95 1,1"),
    resistance("R", "Resistance of the circuit", "", "30 Ω; 20 40 50; 25 45"),
)


def scene(v: Values) -> Figure:
    """The graph that is read."""
    top = v["Phi_m"] * 1000
    corners = ((0.0, 0.0), (v["t_A"], top), (v["t_B"], top), (v["t_C"], 0.0))
    return graph(
        "t (s)",
        "Φ (mWb)",
        [GraphLine(corners)],
        keys=[Key(v["t_A"], top, "A"), Key(v["t_B"], top, "B")],
        marks=[(v["t_C"], 0.0, "C")],
        title="The flux through the coil against time",
    )


def answer(v: Values) -> Figure:
    """The emf that belongs to it, by ε = −N ΔΦ/Δt."""
    low, high = -v["epsilon_1"], v["epsilon_2"]
    a, b, c = v["t_A"], v["t_B"], v["t_C"]
    return graph(
        "t (s)",
        "ε (V)",
        [GraphLine(((0.0, low), (a, low), (a, 0.0), (b, 0.0), (b, high), (c, high), (c, 0.0)))],
        title="The emf against time",
        notes=("The sign is that of −NΔΦ/Δt; the other way up is the other choice of what is positive.",),
        drawn_from=("epsilon_1", "epsilon_2"),
    )


def plan(data: Data) -> Plan:
    """State, no emf, both gradients, the directions, the graph of the emf, the current."""
    v, said = data.values, data.said
    for name, before in (("t_B", "t_A"), ("t_C", "t_B")):
        if v[name] <= v[before]:
            raise Refusal(name, LATER)
    told = data.pick(
        "A slider carries a coil through the gap of a magnet.",
        "A coil on a toy train passes between the poles of a magnet.",
        "A motor draws a coil into a magnetic field, holds it, and draws it out again.",
    )
    return Plan(
        story=(
            f"{told} The coil has {said['N']} turns, and its circuit a resistance of {said['R']}. The graph of the"
            " magnetic flux through it against time is made of straight lines from the origin O to"
            f" A ({said['t_A']}; {said['Phi_m']}), to B ({said['t_B']}; {said['Phi_m']}) and to C ({said['t_C']}; 0)."
        ),
        parts=(
            state(FARADAY),
            NONE,
            Part("rising", "calculate", "Calculate the size of the emf from O to A.", (RISING.step("epsilon_1"),)),
            Part("falling", "calculate", "Calculate the size of the emf from B to C.", (FALLING.step("epsilon_2"),)),
            OPPOSITE,
            Part("graph", "draw", "Draw the graph of the emf against time.", points=DRAWN, figure=answer),
            Part(
                "current",
                "calculate",
                "Calculate the current from B to C.",
                (FLOWS.renamed(epsilon="epsilon_2").step("I"),),
            ),
        ),
        values=dict(v),
        scene=scene,
        checks=(Check("The flux falls by as much as it rose", "epsilon_1*t_A = epsilon_2*(t_C - t_B)"),),
    )


FLUX_GRAPH = Question(
    "flux-graph",
    "Read from a graph of flux",
    plan=plan,
    **boxes(*BOXES),
    laws=(FARADAY.name,),
    scenario=True,
    since=6,
)
