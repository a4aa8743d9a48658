"""A whole question: the battery of a model boat, with its switch open and closed, and with a second motor.

The set-up and its numbers are our own; a motor held still is a resistor. V_ext = ε − Ir, P = VI, W = PΔt (data-sheet
equations). Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.circuits import Part as Symbol
from calc.figures.circuits import circuit, parallel, series
from calc.model.answers import Point
from calc.model.questions import SA, Check, Data, Mistake, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.circuits.cell import MORE_THAN_EMF
from calc.topics.circuits.laws import (
    ACROSS,
    ELECTRIC_POWER,
    EMF,
    LOST_VOLTS,
    OHM,
    SHARED_OUT,
    TERMINAL,
    WHOLE,
    current,
    emf,
    volts,
)
from calc.topics.circuits.misstatements import CURRENT
from calc.topics.circuits.power import ENERGY, P_VI, lasting
from calc.working.declaring import boxes, state

OPEN_SHOWS = Part(
    "open",
    "explain",
    "Explain why the voltmeter across the battery shows the emf while the switch is open.",
    points=(
        Point("With the switch open there is no current.", 1, ("no current",)),
        Point("So there are no lost volts: Ir = 0, and V_ext = ε.", 1, ("no lost volts",)),
    ),
    misstatements=CURRENT,
)
EQUAL = Relation(
    "R_p = R/2",
    what="Two equal resistances in parallel",
    why="1/R_p = 1/R + 1/R = 2/R, so R_p is half of each.",
    plain="Two equal ways through: together half the resistance.",
    units={"R_p": "Ω"},
    marks=SA,
    mistakes=(
        Mistake(
            "as-series",
            "R_p",
            "2*R",
            "You added the resistances. Adding a branch lowers the resistance: divide {R} by 2.",
        ),
        Mistake(
            "not-inverted", "R_p", "2/R", "You stopped at the sum of the reciprocals. Turn it upside down: use {R/2}."
        ),
    ),
)
POWER = replace(P_VI, units={"P": "W"}).renamed(V="V_ext")
TWO = WHOLE.renamed(I="I_2", R="R_p")
TWO = replace(
    TWO,
    mistakes=(
        *TWO.mistakes,
        Mistake(
            "current-fixed",
            "I_2",
            "I",
            "You kept the current. The cell does not fix it, the total resistance does: use {R_p + r} now.",
        ),
    ),
)
LESS = TERMINAL.renamed(V_ext="V_2", I="I_2")
INSIDE = replace(
    LOST_VOLTS,
    mistakes=(
        *LOST_VOLTS.mistakes,
        Mistake(
            "load-for-internal",
            "r",
            "V_ext/I",
            "You divided the reading by the current: that is the resistance of the load. Only the lost volts {V_r} drop"
            " inside the battery: divide these by {I}.",
        ),
    ),
)
LOWER = Part(
    "lower",
    "explain",
    "A second {}, equal to the first, is connected in parallel with it. Explain, without numbers, why the reading"
    " of the"
    " voltmeter becomes smaller.",
    points=(
        Point("One branch more: the total resistance decreases.", 1, ("resistance decreases",)),
        Point("The emf and r are constant, so the total current increases.", 1, ("current increases",)),
        Point("The lost volts Ir increase, so V_ext = ε − Ir decreases.", 1, ("lost volts Ir increase",)),
    ),
    misstatements=CURRENT,
)
BOXES = (
    emf("epsilon", "Reading with the switch open", "", "12 V; 6 9 12; 7,2 13,5"),
    volts("V_ext", "Reading with the switch closed", "", "11,2 V; 5,4 5,6 8,2 11,2; 5,1 6,8 11,7"),
    current("I", "Current with the switch closed", "", "1,6 A; 0,8 1,2 1,6 2; 0,95 1,4 2,3"),
    lasting("Deltat", "Time it is closed", "", "15 min; 5 10 15 20; 8 12,5"),
)
TALES = (
    "The motor of a model boat is held still on the bench, so that it only resists.",
    "A search lamp is tried out before a night walk; its resistance is taken as constant.",
    "A small heating wire for a bird bath is tried out with its battery.",
)
NAMES = ("motor", "lamp", "wire")


def scene(v: Values) -> Figure:
    """The battery with its voltmeter, the switch, and the load."""
    return circuit(
        parallel(Symbol("voltmeter"), series(Symbol("cell", "ε"), Symbol("resistor", "r"))),
        series(Symbol("ammeter"), Symbol("closed switch", "S"), Symbol("resistor", "R")),
        title="The battery and its load",
    )


def doubled(v: Values) -> Figure:
    """The same with a second load in parallel."""
    return circuit(
        parallel(Symbol("voltmeter"), series(Symbol("cell", "ε"), Symbol("resistor", "r"))),
        series(
            Symbol("ammeter"),
            Symbol("closed switch", "S"),
            parallel(Symbol("resistor", "R"), Symbol("resistor", "R")),
        ),
        title="The battery and two loads",
    )


def plan(data: Data) -> Plan:
    """State, why the emf, lost volts, r, R, power, energy, a second load: current, reading, reasons."""
    if data.values["V_ext"] >= data.values["epsilon"]:
        raise Refusal("V_ext", MORE_THAN_EMF)
    said, what = data.said, data.pick(*NAMES)
    return Plan(
        story=(
            f"{data.pick(*TALES)} A voltmeter across the battery reads {said['epsilon']} while the switch is open and"
            f" {said['V_ext']} once it is closed; then the current is {said['I']}."
        ),
        parts=(
            state(EMF),
            OPEN_SHOWS,
            Part("lost", "calculate", "Calculate the lost volts with the switch closed.", (SHARED_OUT.step("V_r"),)),
            Part("internal", "calculate", "Calculate the internal resistance of the battery.", (INSIDE.step("r"),)),
            Part("load", "calculate", f"Calculate the resistance of the {what}.", (ACROSS.step("R"),)),
            Part(
                "energy",
                "calculate",
                f"The switch stays closed for {said['Deltat']}. Calculate the energy that the {what} gets.",
                (
                    replace(P_VI, units={"P": "W"}).renamed(V="V_ext").step("P"),
                    replace(ENERGY, units={"W": "J"}).step("W"),
                ),
            ),
            replace(LOWER, ask=LOWER.ask.format(what)),
            Part(
                "both",
                "calculate",
                "Calculate the total current with both.",
                (EQUAL.step("R_p"), TWO.step("I_2")),
                figure=doubled,
            ),
            Part("reading", "calculate", "Calculate the reading of the voltmeter with both.", (LESS.step("V_2"),)),
        ),
        values=dict(data.values),
        scene=scene,
        checks=(
            Check("What the battery gives is what load and cell take", "epsilon*I = P + I^2*r"),
            Check("The same with two loads", "epsilon*I_2 = I_2^2*(R/2 + r)"),
            Check("The reading is that of both loads", "V_2 = I_2*R_p"),
        ),
    )


BOAT = Question(
    key="boat",
    title="A battery under test",
    **boxes(*BOXES),
    plan=plan,
    laws=(EMF.name, OHM.name, ELECTRIC_POWER.name),
    scenario=True,
    since=6,
)
