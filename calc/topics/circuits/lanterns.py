"""A whole question: two lanterns in parallel behind a series resistor; one is switched off, and the other changes.

The set-up and its numbers are our own. 1/R_p = 1/R₁ + 1/R₂, ε = I(R + r), V_ext = ε − Ir, P = V²/R (data-sheet
equations). Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.circuits import Part as Symbol
from calc.figures.circuits import circuit, parallel, series
from calc.model.answers import Point
from calc.model.questions import A, Check, Data, Mistake, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.circuits.laws import (
    ACROSS,
    ELECTRIC_POWER,
    EMF,
    OHM,
    PARALLEL,
    TERMINAL,
    WHOLE,
    emf,
    inside,
    resistance,
)
from calc.topics.circuits.misstatements import CURRENT
from calc.topics.circuits.power import P_IR, P_VR
from calc.topics.circuits.resistors import combined
from calc.working.declaring import boxes, state

BOTH = replace(combined("parallel", 2).renamed(R="R_p"), what="The two lanterns in parallel: the reciprocals add up")
TOTAL = Relation(
    "R_T = R_s + R_p",
    what="The whole external circuit",
    why="The total current passes the series resistor and then the pair of lanterns, so these two add up.",
    plain="One obstacle after the other.",
    units={"R_T": "Ω"},
    marks=A,
    mistakes=(
        Mistake(
            "series-left-out", "R_T", "R_p", "You left out the series resistor. The current passes it too: add {R_s}."
        ),
        Mistake(
            "all-added",
            "R_T",
            "R_s + R1 + R2",
            "You added all three. The lanterns are side by side: use {R_p} for the pair.",
        ),
    ),
)
ALL = WHOLE.renamed(R="R_T")
PAIR = replace(
    ACROSS.renamed(V_ext="V_p", R="R_p"),
    what="Ohm's law for the pair of lanterns",
    why="The total current passes the pair as a whole, whose resistance is R_p.",
)
FIRST = replace(P_VR, units={"P": "W"}).renamed(P="P_1", V="V_p", R="R1")
FIRST = replace(
    FIRST,
    why="Each lantern has the potential difference of the pair across it.",
    mistakes=(
        *FIRST.mistakes,
        Mistake(
            "whole-current",
            "P_1",
            "I^2*R1",
            "You used the total current. It divides between the lanterns: use the potential difference of the pair,"
            " {V_p}.",
        ),
        Mistake(
            "emf-for-load",
            "P_1",
            "epsilon^2/R1",
            "You used the emf. The lantern has only the potential difference of the pair: use {V_p}.",
        ),
    ),
)
ALONE = Relation(
    "epsilon = I_2*(R_s + R1 + r)",
    what="Now everything is in series",
    why="With S open only lantern 1 is left: the same current passes the resistor, lantern 1 and the cell.",
    plain="One single way round.",
    units={"I_2": "A"},
    mistakes=(
        Mistake(
            "pair-left-in",
            "I_2",
            "epsilon/(R_T + r)",
            "You kept both lanterns. No current passes the open branch: use {R1} alone.",
        ),
        Mistake(
            "internal-ignored",
            "I_2",
            "epsilon/(R_s + R1)",
            "You left out the internal resistance. Add {r} as well.",
        ),
    ),
)
AFTER = replace(P_IR, units={"P": "W"}).renamed(P="P_2", I="I_2", R="R1")
VOLTMETER = Part(
    "voltmeter",
    "explain",
    "Switch S is opened. Explain whether the reading of the voltmeter becomes larger, becomes smaller or stays the"
    " same.",
    points=(
        Point("One branch less: the total resistance increases.", 1, ("resistance increases",)),
        Point("The emf and r are constant, so the total current decreases.", 1, ("current decreases",)),
        Point(
            "The lost volts Ir decrease, so V_ext increases: the reading is larger.",
            1,
            ("V_ext increases",),
        ),
    ),
    misstatements=CURRENT,
)
BRIGHTER = Part(
    "brighter",
    "explain",
    "Explain what happens to the brightness of lantern 1 when S is opened. The resistance of a lantern is taken as"
    " constant.",
    points=(
        Point("The current decreases, so less drops across r and the series resistor.", 1, ("current decreases",)),
        Point(
            "The potential difference across lantern 1 increases: it is ε − I(r + R_s).",
            1,
            ("lantern 1 increases",),
        ),
        Point("Its power V²/R increases: lantern 1 becomes brighter.", 1, ("brighter",)),
    ),
    misstatements=CURRENT,
)
BOXES = (
    emf("epsilon", "Emf", "", "12 V; 6 9 12; 4,5 13,5"),
    inside("r", "Internal resistance", "", "1 Ω; 0,5 0,8 1; 0,6 1,2"),
    resistance("R_s", "Series resistor", "", "2 Ω; 1,5 2 3; 1,2 2,4"),
    resistance("R1", "Resistance of lantern 1", "", "4 Ω; 4 6 8; 5,2 7,4"),
    resistance("R2", "Resistance of lantern 2", "", "12 Ω; 10 12 15; 9,5 14"),
)
TALES = (
    "On a camp site two lanterns, 1 and 2, hang side by side from one battery; a resistor in the lead protects them.",
    "Two lanterns, 1 and 2, light a chicken run. They are connected in parallel, behind a long thin cable that resists"
    " like a series resistor.",
    "A class builds a model street with two lanterns, 1 and 2, in parallel, and a resistor in series with both.",
)


def scene(v: Values) -> Figure:
    """The battery, the series resistor, and the lanterns side by side, the second with its switch."""
    return circuit(
        parallel(Symbol("voltmeter"), series(Symbol("cell", "ε"), Symbol("resistor", "r"))),
        series(
            Symbol("ammeter"),
            Symbol("resistor", "R_s"),
            parallel(Symbol("lamp", "R_1"), series(Symbol("lamp", "R_2"), Symbol("closed switch", "S"))),
        ),
        title="Two lanterns",
    )


def plan(data: Data) -> Plan:
    """State, combine, total current, terminal p.d., one lantern; S opened: the reasons, then the numbers."""
    said = data.said
    return Plan(
        story=(
            f"{data.pick(*TALES)} The battery has an emf of {said['epsilon']} and an internal resistance of"
            f" {said['r']}; the series resistor R_s has {said['R_s']}, lantern 1 {said['R1']} and lantern 2"
            f" {said['R2']}. A voltmeter is connected across the battery. Switch S, in the branch of lantern 2, is"
            " closed."
        ),
        parts=(
            state(PARALLEL),
            Part("pair", "calculate", "Calculate the resistance of the two lanterns together.", (BOTH.step("R_p"),)),
            Part(
                "current",
                "calculate",
                "Calculate the total current.",
                (TOTAL.step("R_T"), ALL.step("I")),
            ),
            Part("terminal", "calculate", "Calculate the reading of the voltmeter.", (TERMINAL.step("V_ext"),)),
            Part(
                "power",
                "calculate",
                "Calculate the power of lantern 1.",
                (PAIR.step("V_p"), FIRST.step("P_1")),
            ),
            VOLTMETER,
            BRIGHTER,
            Part("alone", "calculate", "Calculate the current when S is open.", (ALONE.step("I_2"),)),
            Part("after", "calculate", "Calculate the power of lantern 1 when S is open.", (AFTER.step("P_2"),)),
        ),
        values=dict(data.values),
        scene=scene,
        checks=(
            Check(
                "What the battery gives is what all the resistances take",
                "epsilon*I = I^2*(r + R_s) + V_p^2/R1 + V_p^2/R2",
            ),
            Check("The same with S open", "epsilon*I_2 = I_2^2*(r + R_s) + P_2"),
        ),
        notes=("The resistance of a real lamp grows when it is hotter; here it is taken as constant.",),
    )


LANTERNS = Question(
    key="lanterns",
    title="Two lanterns and a switch",
    **boxes(*BOXES),
    plan=plan,
    laws=(PARALLEL.name, EMF.name, OHM.name, ELECTRIC_POWER.name),
    scenario=True,
    since=6,
)
