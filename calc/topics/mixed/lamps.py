"""A whole question: a water wheel drives a generator that lights two lamps; emf, circuit, power, a lamp burns out.

The set-up and its numbers are our own. ε_max = 2πfNBA, V_rms = V_max/√2, ε = I(R + r), P = V²/R, W = PΔt; every value
but the largest emf is an rms value, and the coil counts only by its resistance. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.circuits import Part as Symbol
from calc.figures.circuits import circuit, parallel, series
from calc.model.answers import Point
from calc.model.questions import A, Check, Data, Mistake, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.circuits.laws import ACROSS, ELECTRIC_POWER, OHM, PARALLEL, TERMINAL, WHOLE, resistance
from calc.topics.circuits.power import ENERGY, P_IR, P_VR, lasting
from calc.topics.circuits.resistors import combined
from calc.topics.electrodynamics.laws import FARADAY, ROOT_MEAN_SQUARE, area, magnetic_field, turns
from calc.topics.electrodynamics.peak import LARGEST, REVOLUTIONS, revolutions
from calc.topics.electrodynamics.rms import VOLTAGE
from calc.working.declaring import boxes, state

EFFECTIVE = replace(
    VOLTAGE.renamed(V_rms="epsilon_rms", V_max="epsilon_max"),
    what="The rms value of the emf",
    units={"epsilon_rms": "V"},
)
BOTH = replace(combined("parallel", 2).renamed(R="R_p"), what="The two lamps in parallel: the reciprocals add up")
TOTAL = Relation(
    "R_T = R_c + R_p",
    what="The whole external circuit",
    why="The total current passes the cable and then the pair of lamps, so these two add up.",
    plain="One obstacle after the other.",
    units={"R_T": "Ω"},
    marks=A,
    mistakes=(
        Mistake("cable-left-out", "R_T", "R_p", "You left out the cable. The current passes it too: add {R_c}."),
        Mistake(
            "all-added",
            "R_T",
            "R_c + R1 + R2",
            "You added all three. The lamps are side by side: use {R_p} for the pair.",
        ),
    ),
)
DRIVEN = replace(
    WHOLE.renamed(epsilon="epsilon_rms", R="R_T"),
    what="The emf drives the current through the whole circuit",
    why="The current passes the coil, the cable and the pair of lamps one after the other, so these add up.",
    plain="The coil that makes the emf is a long wire, and resists as well.",
    mistakes=(
        Mistake(
            "coil-ignored",
            "I",
            "epsilon_rms/R_T",
            "You left out the resistance of the coil. The current passes it too: use {R_T + r}.",
        ),
        Mistake(
            "peak-for-rms",
            "I",
            "epsilon_max/(R_T + r)",
            "You used the largest emf. The rms current is asked: use {epsilon_rms}.",
        ),
    ),
)
OUTSIDE = replace(
    TERMINAL.renamed(epsilon="epsilon_rms"),
    what="The emf, less what drops across the coil",
    why="Of the energy of each coulomb the part Ir is transferred in the coil; the rest reaches the terminals.",
    plain="The coil keeps a little of the push for itself.",
    mistakes=(
        Mistake("coil-volts", "V_ext", "I*r", "You gave what drops across the coil. Subtract it: {epsilon_rms - I*r}."),
        Mistake(
            "emf-as-terminal",
            "V_ext",
            "epsilon_rms",
            "You gave the emf. While a current flows the terminals show less: subtract {I*r}.",
        ),
    ),
)
PAIR = replace(
    ACROSS.renamed(V_ext="V_p", R="R_p"),
    what="Ohm's law for the pair of lamps",
    why="The total current passes the pair as a whole, whose resistance is R_p.",
)
LIT = replace(P_VR.renamed(P="P_1", V="V_p", R="R1"), units={"P_1": "W"})
LIT = replace(
    LIT,
    why="Each lamp has the potential difference of the pair across it.",
    mistakes=(
        *LIT.mistakes,
        Mistake(
            "whole-current",
            "P_1",
            "I^2*R1",
            "You used the total current. It divides between the lamps: take the pair's {V_p}.",
        ),
        Mistake(
            "terminal-for-lamp",
            "P_1",
            "V_ext^2/R1",
            "You used the terminal potential difference. A part of it drops across the cable: use {V_p}.",
        ),
    ),
)
TRANSFERRED = replace(ENERGY.renamed(P="P_1"), units={"W": "J"})
ALONE = Relation(
    "epsilon_rms = I_2*(R_c + R1 + r)",
    what="Now everything is in series",
    why="Only lamp 1 is left: the same current passes the coil, the cable and lamp 1. The emf has not changed.",
    plain="One single way round.",
    units={"I_2": "A"},
    mistakes=(
        Mistake(
            "pair-left-in",
            "I_2",
            "epsilon_rms/(R_T + r)",
            "You kept both lamps. No current passes the one that burnt out: use {R1} alone.",
        ),
        Mistake(
            "coil-ignored",
            "I_2",
            "epsilon_rms/(R_c + R1)",
            "You left out the resistance of the coil. Add {r} as well.",
        ),
    ),
)
AFTER = replace(P_IR.renamed(P="P_2", I="I_2", R="R1"), units={"P_2": "W"})
WHY_ALTERNATING = Part(
    "alternates",
    "explain",
    "Explain why the emf of the turning coil alternates.",
    points=(
        Point("As the coil turns, the flux through it increases and decreases in turn.", 1, ("increases", "decreases")),
        Point("The emf opposes each change, so its direction reverses.", 1, ("reverses",)),
    ),
)
BRIGHTER = Part(
    "brighter",
    "explain",
    "Lamp 2 burns out; the coil goes on turning at the same rate. Explain what happens to the brightness of lamp 1.",
    points=(
        Point("One branch less: the total resistance increases.", 1, ("resistance increases",)),
        Point("The emf stays the same, so the total current decreases.", 1, ("current decreases",)),
        Point(
            "Less drops across coil and cable, so the potential difference across lamp 1 increases.",
            1,
            ("increases",),
        ),
        Point("Its power V²/R increases: lamp 1 becomes brighter.", 1, ("brighter",)),
    ),
)
HARDER = Part(
    "harder",
    "explain",
    "Explain why the coil is harder to turn while the lamps are lit than while no current flows.",
    points=(
        Point("The field exerts forces on the current in the coil, and these oppose its turning.", 1, ("oppose",)),
        Point("Work must be done against them to keep it turning: this becomes the electrical energy.", 1, ("work",)),
    ),
)
field_present = replace(
    magnetic_field, over=0.0, refusal="Without a magnetic field no emf is induced: type a field greater than zero."
)
of_wire = replace(
    resistance, low=0.01, high=100.0, refusal="A wire always resists a little: type a resistance greater than zero."
)
BOXES = (
    turns("N", "Number of turns", "", "200; 120 150 200; 140 180"),
    field_present("B", "Magnetic field", "", "0,2 T; 0,15 0,2 0,25; 0,18 0,22"),
    area("A", "Area of the coil", "", "60 cm^2; 40 50 60; 45 55", unit="cm²"),
    revolutions("n", "Turns in a minute", "", "900; 600 750 900; 550 850"),
    of_wire("r", "Resistance of the coil", "", "1,5 Ω; 1 1,5 2; 1,2 1,8"),
    of_wire("R_c", "Resistance of the cable", "", "0,5 Ω; 0,5 0,8 1; 0,4 0,6"),
    resistance("R1", "Resistance of lamp 1", "", "10 Ω; 10 12 20; 9,5 14"),
    resistance("R2", "Resistance of lamp 2", "", "15 Ω; 15 24 30; 16 22"),
    lasting("Deltat", "Time the lamps are on", "", "30 min; 10 20 30; 15 25"),
)


def scene(v: Values) -> Figure:
    """The generator with the resistance of its coil, the cable, and the lamps side by side."""
    return circuit(
        parallel(Symbol("voltmeter"), series(Symbol("generator", "ε"), Symbol("resistor", "r"))),
        series(Symbol("resistor", "R_c"), parallel(Symbol("lamp", "R_1"), Symbol("lamp", "R_2"))),
        title="A generator and two lamps",
    )


def plan(data: Data) -> Plan:
    """State, why it alternates, emf, rms, current, terminals, one lamp; a lamp burns out; what turns the coil."""
    said = data.said
    tale = data.pick(
        "In a mill a water wheel turns the coil of an AC generator, which lights two lamps, 1 and 2, in parallel.",
        "The pedals of a fixed bicycle turn the coil of an AC generator by a chain. It lights two lamps, 1 and 2, side"
        " by side.",
        "At a mountain hut a stream turns the coil of an AC generator. Its two lamps, 1 and 2, are connected in"
        " parallel.",
    )
    return Plan(
        story=(
            f"{tale} The coil has {said['N']} turns of {said['A']} in a field of {said['B']}, turns {said['n']} times"
            f" a minute and has a resistance r of {said['r']}. The cable to the lamps has a resistance R_c of"
            f" {said['R_c']}, lamp 1 has {said['R1']} and lamp 2 {said['R2']}. A voltmeter across the generator shows"
            " rms values."
        ),
        parts=(
            state(FARADAY),
            WHY_ALTERNATING,
            Part(
                "emf",
                "calculate",
                "Calculate the rms value of the emf. Begin with its largest value.",
                (REVOLUTIONS.step("f"), LARGEST.step("epsilon_max"), EFFECTIVE.step("epsilon_rms")),
            ),
            Part("pair", "calculate", "Calculate the resistance of the two lamps together.", (BOTH.step("R_p"),)),
            Part("current", "calculate", "Calculate the rms total current.", (TOTAL.step("R_T"), DRIVEN.step("I"))),
            Part("terminal", "calculate", "Calculate the reading of the voltmeter.", (OUTSIDE.step("V_ext"),)),
            Part("power", "calculate", "Calculate the power of lamp 1.", (PAIR.step("V_p"), LIT.step("P_1"))),
            Part(
                "energy",
                "calculate",
                f"Calculate the energy that lamp 1 transfers in {said['Deltat']}.",
                (TRANSFERRED.step("W"),),
            ),
            BRIGHTER,
            Part(
                "after",
                "calculate",
                "Calculate the power of lamp 1 after lamp 2 has burnt out.",
                (ALONE.step("I_2"), AFTER.step("P_2")),
            ),
            HARDER,
        ),
        values=dict(data.values),
        scene=scene,
        checks=(
            Check(
                "What the generator gives is what all the resistances take",
                "epsilon_rms*I = I^2*(r + R_c) + V_p^2/R1 + V_p^2/R2",
            ),
            Check("The same with lamp 2 burnt out", "epsilon_rms*I_2 = I_2^2*(r + R_c) + P_2"),
        ),
        notes=("The resistance of a real lamp grows when it is hotter; here it is taken as constant.",),
    )


LAMPS = Question(
    "lamps",
    "A generator lights two lamps",
    plan=plan,
    **boxes(*BOXES),
    laws=(FARADAY.name, ROOT_MEAN_SQUARE.name, PARALLEL.name, OHM.name, ELECTRIC_POWER.name),
    scenario=True,
    since=6,
)
