"""A graph of an alternating emf is read: period, frequency, rms value, power, flux at the peak, twice the speed.

T from the first peak, f = 1/T, V_rms = V_max/√2, P_av = V_rms²/R: data-sheet equations but the first. Mistakes and
marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure, GraphLine, graph
from calc.figures.graph_marks import Key
from calc.model.answers import Point
from calc.model.questions import SA, Check, Data, Mistake, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.electrodynamics.kiln import PEAKS
from calc.topics.electrodynamics.laws import ROOT_MEAN_SQUARE, emf
from calc.topics.electrodynamics.peak import CURVES, PERIOD, curves
from calc.topics.electrodynamics.rms import BY_VOLTAGE, VOLTAGE
from calc.topics.electrodynamics.waves import sine
from calc.topics.shared.quantities import Quantity, resistance
from calc.working.declaring import boxes, state

QUARTER = Relation(
    "T = 4*t_P",
    what="The period from the first peak",
    why="The emf begins at zero and is at its peak after a quarter of the period.",
    plain="Up, down, below and back: four stretches as long as the first.",
    units={"T": "s"},
    marks=SA,
    mistakes=(
        Mistake(
            "peak-as-period", "T", "t_P", "You took the time of the peak. That is a quarter of the period: use {4*t_P}."
        ),
        Mistake(
            "half-wave",
            "T",
            "2*t_P",
            "You took half a wave. The period holds the part below the axis too: use {4*t_P}.",
        ),
    ),
)
EFFECTIVE = VOLTAGE.renamed(V_rms="epsilon_rms", V_max="epsilon_max")
PEAK_CURRENT = PEAKS.renamed(V_max="epsilon_max", V_rms="epsilon_rms")
HEATS = replace(
    BY_VOLTAGE.renamed(V_rms="epsilon_rms"),
    why="The whole emf is across the resistor, for the coil has no resistance worth counting.",
    mistakes=(
        Mistake(
            "peak-for-rms", "P_av", "epsilon_max^2/R", "You squared the peak. Square the rms value: {epsilon_rms}."
        ),
        Mistake("not-squared", "P_av", "epsilon_rms/R", "You did not square. Power is {epsilon_rms^2/R}: square it."),
    ),
)
THROUGH = Part(
    "flux",
    "explain",
    "How large is the flux through the coil at P, and where on the graph is it largest? Give reasons.",
    points=(
        Point("At P the flux is zero: there it changes fastest.", 1, ("zero", "fastest")),
        Point("It is largest where the emf is zero: there it does not change for a moment.", 1, ("emf is zero",)),
    ),
)
peak_time = Quantity("s", 1e-4, 1, "Time must be greater than zero.")
top = replace(emf, over=0.0, refusal="A peak lies above zero: type an emf greater than zero.")
BOXES = (
    peak_time("t_P", "Time of the first peak P", "", "5 ms; 4 5 10; 3,5 7,5 12", unit="ms"),
    top("epsilon_max", "Emf at P", "", "34 V; 12 17 25 34; 8,5 15,5 28"),
    resistance("R", "Resistance", "", "20 Ω; 10 20 50; 15 33"),
)


def scene(v: Values) -> Figure:
    """One and a half periods with the first peak; the emf begins at zero."""
    return graph(
        "t (s)",
        "ε (V)",
        [GraphLine(sine(1.5, v["epsilon_max"], 4 * v["t_P"]))],
        keys=[Key(v["t_P"], v["epsilon_max"], "P")],
        title="The emf of a generator against time",
    )


def plan(data: Data) -> Plan:
    """Period and frequency, state, rms, power, flux at the peak, twice the speed."""
    said = data.said
    told = data.pick(
        "A sensor records the emf of an AC generator that is turned by a wind wheel.",
        "Learners record the emf of an AC generator while a drill turns it steadily.",
        "The emf of an AC generator in a small mill is recorded.",
    )
    return Plan(
        story=(
            f"{told} It is zero at first, and the first peak P of its graph is at ({said['t_P']};"
            f" {said['epsilon_max']}). The generator feeds a resistor of {said['R']}; its coil has no resistance."
        ),
        parts=(
            Part(
                "frequency",
                "calculate",
                "Find the period from the graph, and calculate the frequency.",
                (QUARTER.step("T"), PERIOD.step("f")),
            ),
            state(ROOT_MEAN_SQUARE),
            Part("rms", "calculate", "Calculate the rms value of the emf.", (EFFECTIVE.step("epsilon_rms"),)),
            Part("peak", "calculate", "Calculate the peak current.", (PEAK_CURRENT.step("I_max"),)),
            Part("power", "calculate", "Calculate the average power of the resistor.", (HEATS.step("P_av"),)),
            THROUGH,
            Part(
                "twice",
                "draw",
                "Draw the graph for one full turn, and on the same axes that for the same time at twice the speed.",
                points=CURVES,
                figure=curves,
            ),
        ),
        values=dict(data.values),
        scene=scene,
        checks=(Check("The average power is half of the largest", "P_av = epsilon_max^2/R/2"),),
    )


TRACE = Question(
    "trace",
    "Read from a graph of an alternating emf",
    plan=plan,
    **boxes(*BOXES),
    laws=(ROOT_MEAN_SQUARE.name,),
    scenario=True,
    since=6,
)
