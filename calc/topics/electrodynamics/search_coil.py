"""A whole question: a search coil is pulled out of a magnet; flux, emf, current, its direction, twice the speed.

The set-up and its numbers are our own. Φ = BA, ε = −NΔΦ/Δt, I = ε/R. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.coils import coil_in_field
from calc.figures.graphs import GraphLine, graph
from calc.model.answers import Mark, Point
from calc.model.questions import A, Check, Data, Mistake, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.electrodynamics.emf import CHANGED, FINAL_ONLY, INDUCED
from calc.topics.electrodynamics.flux import ACROSS, ROUND
from calc.topics.electrodynamics.laws import FARADAY, LENZ, change_time, diameter, magnetic_field, turns
from calc.topics.shared.quantities import resistance
from calc.working.declaring import boxes, state

INSIDE = Relation(
    "Phi_1 = B*A",
    what="The flux while the coil is in the field",
    why="The field is along the normal of the coil: θ = 0° and cos θ = 1.",
    plain="All the field that the loop can catch goes through it.",
    units={"Phi_1": "Wb"},
    marks=(Mark("formula"), Mark("substitution")),
)
FLOWS = Relation(
    "I = epsilon/R",
    what="The current in the closed circuit",
    why="The emf drives the current through the whole resistance of the circuit.",
    plain="How hard it is pushed, over what is in the way.",
    units={"I": "A"},
    mistakes=(
        Mistake("multiplied", "I", "epsilon*R", "You multiplied. More resistance means less current: divide by {R}."),
        Mistake("upside-down", "I", "R/epsilon", "You turned the fraction over. Divide {epsilon} by {R}."),
    ),
)
FIELD_OF_IT = Part(
    "opposes",
    "explain",
    "Compare the direction of the magnetic field of the induced current inside the coil with that of the magnet. Give a"
    " reason.",
    points=(
        Point("The flux decreases, and the induced current opposes this change.", 1, ("opposes",)),
        Point(
            "So its field inside the coil has the direction of the field of the magnet.", 1, ("direction of the field",)
        ),
    ),
)
PULSES = (
    Point("Axes labelled emf and time.", 1, ("labelled",)),
    Point("Both emfs are steady while the coil leaves the field, and zero before and after.", 1, ("steady",)),
    Point("At twice the speed the emf is twice as large.", 1, ("twice as large",)),
    Point("It lasts half as long.", 1, ("half as long",)),
)
BOXES = (
    turns("N", "Number of turns", "", "150; 100 200 250; 120 180 320"),
    diameter("D", "Diameter of the coil", "", "6 cm; 4 5 8; 4,5 7,2", unit="cm"),
    magnetic_field("B", "Magnetic field", "", "0,4 T; 0,2 0,3 0,5; 0,25 0,45"),
    change_time("Deltat", "Time it takes", "", "0,2 s; 0,1 0,2 0,4; 0,15 0,25"),
    resistance("R", "Resistance of the circuit", "", "30 Ω; 20 40 50; 25 45"),
)


def scene(v: Values) -> Figure:
    """The coil in the field, before it is pulled out."""
    return coil_in_field(0.0, "", title="The coil in the field")


def pulses(v: Values) -> Figure:
    """Two rectangles: twice as high, half as long."""
    time, size = v["Deltat"], v["epsilon"]
    return graph(
        "t (s)",
        "ε (V)",
        [
            GraphLine(((0.0, 0.0), (0.0, size), (time, size), (time, 0.0)), "first speed"),
            GraphLine(
                ((0.0, 0.0), (0.0, 2 * size), (time / 2, 2 * size), (time / 2, 0.0)), "twice the speed", "dashed"
            ),
        ],
        title="The emf while the coil is pulled out",
        description=(
            "Graph of the emf against time. Solid: a rectangle while the coil leaves the field. Dashed, at twice the"
            " speed: a rectangle twice as high and half as long."
        ),
        drawn_from=("epsilon", "Deltat"),
    )


def story(data: Data) -> str:
    """Three tellings."""
    said = data.said
    coil = f"It has {said['N']} turns, a diameter of {said['D']}, and with its ammeter a resistance of {said['R']}."
    return data.pick(
        f"A round coil lies between the poles of a magnet, at right angles to a field of {said['B']}. {coil} It is"
        f" pulled out of the field steadily in {said['Deltat']}.",
        f"To test a magnet a round coil is held at right angles to its field of {said['B']}. {coil} Then the coil is"
        f" drawn out of the field at a steady rate in {said['Deltat']}.",
        f"A robot arm holds a round coil at right angles to a field of {said['B']}. {coil} The arm takes the coil"
        " out of"
        f" the field at a steady rate, which lasts {said['Deltat']}.",
    )


def plan(data: Data) -> Plan:
    """State, change in flux, emf, current, its field, twice the speed."""
    return Plan(
        story=story(data),
        parts=(
            state(FARADAY),
            Part(
                "change",
                "calculate",
                "Calculate the change in the magnetic flux through the coil.",
                (
                    ACROSS.step("r"),
                    ROUND.step("A"),
                    INSIDE.step("Phi_1"),
                    replace(CHANGED.step("DeltaPhi"), marks=A, what="Final minus initial: outside there is no flux"),
                ),
            ),
            Part(
                "emf",
                "calculate",
                "Calculate the size of the emf induced in the coil.",
                (
                    replace(INDUCED, mistakes=tuple(one for one in INDUCED.mistakes if one.say != FINAL_ONLY)).step(
                        "epsilon"
                    ),
                ),
            ),
            Part("current", "calculate", "Calculate the current in the coil.", (FLOWS.step("I"),)),
            FIELD_OF_IT,
            Part(
                "twice",
                "draw",
                "Sketch a graph of the emf against time. On the same axes sketch it for a coil that is pulled out at"
                " twice"
                " the speed.",
                points=PULSES,
                figure=pulses,
            ),
        ),
        values={**data.values, "Phi_2": 0.0},
        scene=scene,
        checks=(Check("All in one line", "I = N*B*pi*D^2/(4*R*Deltat)"),),
    )


SEARCH = Question(
    "search-coil",
    "A coil pulled out of a magnet",
    plan=plan,
    **boxes(*BOXES),
    laws=(FARADAY.name, LENZ.name),
    scenario=True,
    since=6,
)
