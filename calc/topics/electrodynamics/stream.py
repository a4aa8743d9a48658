"""A whole question: a generator in a stream and the line from it; largest emf, rms, losses, why high voltage.

The set-up and its numbers are our own. ε_max = 2πfNBA, V_rms = V_max/√2, P = VI, I²R. The transformer is ideal and
told by its voltages. Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.machines import machine
from calc.model.answers import Point
from calc.model.questions import Check, Data, Part, Plan, Question, Refusal, Values
from calc.topics.electrodynamics.laws import FARADAY, GENERATOR, ROOT_MEAN_SQUARE, area, magnetic_field, turns
from calc.topics.electrodynamics.line import AGAIN as SENT_AGAIN
from calc.topics.electrodynamics.line import (
    ALL_LOST,
    LOST,
    LOST_AGAIN,
    SENT,
    SHARE,
    WHY_HIGH,
    high_voltage,
    line_resistance,
    watts,
)
from calc.topics.electrodynamics.peak import CURVES, LARGEST, PARALLEL, REVOLUTIONS, curves, revolutions
from calc.topics.electrodynamics.rms import VOLTAGE
from calc.working.declaring import boxes, state

NOT_HIGHER = "The transformer raises the voltage. Type a voltage above the rms value of the generator."
EFFECTIVE = VOLTAGE.renamed(V_rms="V", V_max="epsilon_max")
CONVERTS = Part(
    "converts",
    "explain",
    "Which energy does the generator convert into which, and by what principle?",
    points=(
        Point("Mechanical energy of the water into electrical energy.", 1, ("into electrical energy",)),
        Point("The turning coil has a changing flux, so an emf is induced.", 1, ("induced",)),
    ),
)
BOXES = (
    turns("N", "Number of turns", "", "500; 400 500 600; 450 550 640"),
    magnetic_field("B", "Magnetic field", "", "0,25 T; 0,2 0,25 0,3; 0,18 0,28"),
    area("A", "Area of the coil", "", "200 cm^2; 150 200 250; 180 240", unit="cm²"),
    revolutions("n", "Turns in a minute", "", "1500; 1200 1500; 1350 1650"),
    watts("P", "Power that is sent", "", "3 kW; 2 3 4; 2,5 3,5", unit="kW"),
    line_resistance("R", "Resistance of the line", "", "2 Ω; 1 2; 1,5 1,8"),
    high_voltage("V_2", "Voltage behind the transformer (rms)", "", "2800 V; 2000 2500 3000; 2400 3200"),
)


def scene(v: Values) -> Figure:
    """The generator with its slip rings."""
    return machine("ac", title="The generator")


def plan(data: Data) -> Plan:
    """Principle, state, largest emf, position, rms, line current and loss, with the transformer, why, graph."""
    said = data.said
    coil = (
        f"Its coil has {said['N']} turns of {said['A']} and turns {said['n']} times a minute in a field of {said['B']}."
    )
    line = f"It feeds {said['P']} into a line with a resistance of {said['R']}. Its own resistance is left out."
    made = Plan(
        story=data.pick(
            f"A stream drives an AC generator above a village. {coil} {line}",
            f"A water mill drives an AC generator that is to light a camp. {coil} {line}",
            f"Below a small dam water turns the coil of an AC generator. {coil} {line}",
        ),
        parts=(
            CONVERTS,
            state(FARADAY),
            Part(
                "largest",
                "calculate",
                "Calculate the largest emf of the generator.",
                (REVOLUTIONS.step("f"), LARGEST.step("epsilon_max")),
            ),
            PARALLEL,
            Part("rms", "calculate", "Calculate the rms value of this emf.", (EFFECTIVE.step("V"),)),
            Part(
                "loss",
                "calculate",
                "The power is sent at this rms voltage. Calculate the power that is lost in the line.",
                (SENT.step("I"), LOST.step("P_lost")),
            ),
            Part("share", "calculate", "Calculate the percentage of the power that is lost.", (SHARE.step("p"),)),
            Part(
                "raised",
                "calculate",
                f"An ideal transformer raises the rms voltage to {said['V_2']} for the same power. Calculate the"
                " power that"
                " is lost now.",
                (SENT_AGAIN.step("I_2"), LOST_AGAIN.step("P_lost2")),
            ),
            WHY_HIGH,
            Part(
                "graph",
                "draw",
                "Sketch the emf of the generator against time for one full turn, beginning with an emf of zero. On"
                " the same"
                " axes sketch it for the same time at twice the speed.",
                points=(Point("Axes labelled emf and time.", 1, ("labelled",)), *CURVES[1:]),
                figure=curves,
            ),
        ),
        values=dict(data.values),
        scene=scene,
        checks=(Check("The losses are as the squares of the voltages", "P_lost/P_lost2 = (V_2/V)^2"),),
    )
    refuse(data.values)
    return made


def refuse(v: Values) -> None:
    """A transformer that does not raise the voltage, and a line that takes all."""
    rms = 2**0.5 * 3.141592653589793 * v["n"] / 60 * v["N"] * v["B"] * v["A"]
    if not rms or v["P"] * v["R"] >= rms**2:
        raise Refusal("P", ALL_LOST)
    if v["V_2"] <= rms:
        raise Refusal("V_2", NOT_HIGHER)


STREAM = Question(
    "stream",
    "A generator in a stream and its line",
    plan=plan,
    **boxes(*BOXES),
    laws=(FARADAY.name, GENERATOR.name, ROOT_MEAN_SQUARE.name),
    scenario=True,
    since=6,
)
