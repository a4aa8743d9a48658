"""The power a cell gives to its load, P = ε²R/(R + r)², for any unknown; and emf and r of a cell from two loads.

From the power follow two resistances with the product r²; none above ε²/4r, the power at R = r (the square in
(R + r)² − 4Rr = (R − r)² is never negative). Refusals and mistakes: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.circuits import Part as Symbol
from calc.figures.circuits import circuit, parallel, series
from calc.model.questions import A, Data, Mistake, Part, Refusal, Values
from calc.model.relations import Relation, Said
from calc.topics.circuits.cell import NO_RESISTANCE, scene
from calc.topics.circuits.laws import (
    ACROSS,
    ELECTRIC_POWER,
    EMF,
    OHM,
    TERMINAL,
    current,
    emf,
    inside,
    load,
    power,
    resistance,
    volts,
)
from calc.working.declaring import boxes, state, told
from calc.working.solving import Limit, Situation, question
from calc.working.working import measure

# --- the power of a load -----------------------------------------------------------------------------------

TOO_MUCH = (
    "No load gets so much power from this cell. The most it can give is ε²/(4r) = {}, to a load with R = r. Type a"
    " smaller power, a larger emf or a smaller internal resistance."
)
NO_INSIDE = (
    "No internal resistance fits: even without any, this load would get less than this power. Check the power, the emf"
    " and the resistance."
)
TWO = "Two loads get this power: a large one with a small current, and a small one with a large current."
GIVEN = Relation(
    "P = epsilon^2*R/(R + r)^2",
    what="Power of the load: I²R with the current I = ε/(R + r)",
    why="The current passes R and r one after the other, so I = ε/(R + r). Put that into P = I²R.",
    plain="A load gets most when it resists as much as the cell itself.",
    units={"P": "W", "epsilon": "V", "R": "Ω", "r": "Ω"},
    quotes=(ELECTRIC_POWER.name,),
    said={
        "R": Said(
            "Find the resistance from the power: a quadratic equation",
            "Put I = ε/(R + r) into P = I²R and multiply out. The equation has two roots, and both are resistances.",
        ),
        "r": Said("Find the internal resistance from the power of the load"),
        "epsilon": Said("Find the emf from the power of the load"),
    },
    dropped={"R": "It is a load as well, and gets the same power.", "epsilon": "An emf is a size: it is dropped."},
    mistakes=(
        Mistake(
            "emf-for-load",
            "P",
            "epsilon^2/R",
            "You used the emf. The load has only its own share of it, so use the load's own potential difference"
            " {epsilon*R/(R + r)}.",
        ),
        Mistake(
            "whole-power",
            "P",
            "epsilon^2/(R + r)",
            "You gave the power of the whole circuit. A part of it makes the cell warm: take {R} alone in I²R.",
        ),
        Mistake(
            "inside-power",
            "P",
            "epsilon^2*r/(R + r)^2",
            "You gave the power inside the cell. Use {R}, not {r}, in I²R.",
        ),
        Mistake(
            "emf-for-load",
            "R",
            "epsilon^2/P",
            "You put the emf across the load. The cell keeps a part of it: use the current ε/(R + r) in I²R.",
        ),
        Mistake(
            "smaller-root",
            "R",
            "(epsilon^2 - 2*P*r - sqrt((epsilon^2 - 2*P*r)^2 - 4*P^2*r^2))/(2*P)",
            "You gave the smaller root. Take the larger {R} here: use the plus before the square root.",
        ),
        Mistake(
            "emf-for-load",
            "epsilon",
            "sqrt(P*R)",
            "You found the potential difference of the load. Add the lost volts: use {R + r} for the whole circuit.",
        ),
        Mistake(
            "not-subtracted",
            "r",
            "sqrt(epsilon^2*R/P)",
            "You stopped at the total resistance. Subtract {R} from it to get {r}.",
        ),
    ),
)
GIVEN = replace(
    GIVEN,
    by_hand={
        "R": replace(
            GIVEN.step("R"),
            make="R = (epsilon^2 - 2*P*r + sqrt((epsilon^2 - 2*P*r)^2 - 4*P^2*r^2))/(2*P)",
            lines=("P*(R + r)^2 = epsilon^2*R", "P*R^2 + (2*P*r - epsilon^2)*R + P*r^2 = 0"),
            other="R = (epsilon^2 - 2*P*r - sqrt((epsilon^2 - 2*P*r)^2 - 4*P^2*r^2))/(2*P)",
        )
    },
)
OTHER = Relation(
    "R_2 = r^2/R",
    what="The smaller resistance from the product of the roots",
    why="In PR² + (2Pr − ε²)R + Pr² = 0 the product of the two roots is Pr²/P = r².",
    plain="One load lies as far above r as the other below, as factors.",
    units={"R_2": "Ω"},
    mistakes=(
        Mistake("not-squared", "R_2", "r/R", "You did not square {r}. The product of the roots is {r^2}: divide that."),
        Mistake("upside-down", "R_2", "R/r^2", "You divided the other way round: divide {r^2} by {R}."),
    ),
)
POWER_BOXES = (
    emf("epsilon", "Emf", "The emf of the cell is {}.", "9 V; 6 9 12; 4,5 13,5"),
    inside(
        "r",
        "Internal resistance",
        "The internal resistance is {}.",
        "1,5 Ω; 0,5 0,8 1,5; 0,6 1,2",
        told_at={0.0: "Its internal resistance may be left out."},
        unfit=NO_INSIDE,
    ),
    load("R", "External resistance", "The external resistance is {}.", "?; 4 5 6 8; 3,5 7,2"),
    power(
        "P", "Power of the external resistance", "The external resistance gets a power of {}.", "12 W; 4 5 6; 3,5 6,4"
    ),
)
POWER_OPENINGS = (
    "A small heater is connected to a cell.",
    "One cell feeds the wire of a foam cutter.",
    "In a laboratory a cell drives a current through a resistor.",
)
SMALLER = Part("smaller", "calculate", "Calculate the smaller of the two.", (replace(OTHER.step("R_2"), marks=A),))


def refuse_power(data: Data) -> None:
    """More than the largest power is refused, and a circuit without resistance."""
    v = data.values
    if v.get("R") == 0 == v.get("r"):
        raise Refusal("r", NO_RESISTANCE)
    if data.asked == "R" and v["r"] and v["P"] > most(v) * (1 + 1e-12):
        raise Refusal("P", TOO_MUCH.format(measure(most(v), "W", data.settings.style).text))


def most(v: Values) -> float:
    """The largest power (W) a cell can give."""
    return v["epsilon"] ** 2 / (4 * v["r"])


def given_power(data: Data) -> Situation:
    """One resistance or two from the power, by the internal resistance."""
    refuse_power(data)
    two = data.asked == "R" and data.values["r"] > 0 and data.values["P"] < most(data.values) * (1 - 1e-9)
    base = told(POWER_BOXES)
    ask = {"R": f"{TWO} Calculate the larger of the two resistances."} if two else {}
    return replace(
        base,
        relations=(GIVEN,),
        openings=POWER_OPENINGS,
        ask={**base.ask, **ask},
        unfit={"r": NO_INSIDE},
        stated=(state(ELECTRIC_POWER),),
        later=lambda data, values: (SMALLER,) if two else (),
        scene=lambda v: scene(False),
        notes=("The load gets most power where R = r; then as much power again is transferred inside the cell.",),
    )


LOAD_POWER = question(
    "load-power",
    "The power of a load",
    given_power,
    **boxes(*POWER_BOXES),
    unknowns=("epsilon", "r", "R", "P"),
    any_givens=False,
    laws=(ELECTRIC_POWER.name,),
    asks="R",
    since=6,
)

# --- two loads ---------------------------------------------------------------------------------------------

EQUAL = (
    "Both currents are the same, so this is one reading twice and tells only one thing of the cell. Type two different"
    " currents."
)
COLUMNS = (
    "Check the columns: the larger current must go with the smaller terminal potential difference. No internal"
    " resistance fits these readings."
)
FIRST = TERMINAL.renamed(V_ext="V1", I="I1")
SECOND = TERMINAL.renamed(V_ext="V2", I="I2")
CHANGES = Relation(
    "r = (V1 - V2)/(I2 - I1)",
    what="The internal resistance from the two changes",
    why=(
        "Both readings have the same ε: V₁ + I₁r = V₂ + I₂r. So the potential difference falls by r for each ampere"
        " more."
    ),
    plain="How many volts are lost for each ampere more.",
    mistakes=(
        Mistake(
            "load-for-internal",
            "r",
            "V1/I1",
            "You divided one reading by its current: that is the load. Divide the change {V1 - V2} by {I2 - I1}.",
        ),
        Mistake(
            "load-for-internal",
            "r",
            "V2/I2",
            "You divided one reading by its current: that is the load. Divide the change {V1 - V2} by {I2 - I1}.",
        ),
        Mistake("upside-down", "r", "(I2 - I1)/(V1 - V2)", "You divided the other way round: divide {V1 - V2}."),
    ),
)
LOADS = (ACROSS.renamed(V_ext="V1", I="I1", R="R1"), ACROSS.renamed(V_ext="V2", I="I2", R="R2"))
READINGS = (
    current(
        "I1", "Current with the first load", "With the first load the current is {}.", "0,5 A; 0,4 0,5 0,6; 0,35 0,55"
    ),
    volts(
        "V1",
        "Terminal potential difference with the first load",
        "The terminal potential difference with the first load is {}.",
        "5,75 V; 5,6 5,7 5,8; 5,65 5,85",
    ),
    resistance(
        "R1",
        "Resistance of the first load",
        "The first load has a resistance of {}.",
        "?; 12 14 15; 11 16",
        result="measured",
    ),
    current("I2", "Current with the second load", "With the second load the current is {}.", "2 A; 1,5 2 2,5; 1,4 2,2"),
    volts(
        "V2",
        "Terminal potential difference with the second load",
        "The terminal potential difference with the second load is {}.",
        "5 V; 4,5 4,8 5; 4,4 5,1",
    ),
    resistance(
        "R2",
        "Resistance of the second load",
        "The second load has a resistance of {}.",
        "?; 2 2,5 3; 1,8 2,2",
        result="measured",
    ),
    inside("r", "Internal resistance", "The internal resistance is {}.", "?; 0,4 0,5 0,6; 0,35 0,45", unfit=COLUMNS),
    emf("epsilon", "Emf", "The emf of the cell is {}.", "?; 6 6,2; 6,1 6,3"),
)


def loads_scene(v: Values) -> Figure:
    """The cell with its meters and a load that is changed."""
    terminals = parallel(Symbol("voltmeter"), series(Symbol("cell", "ε"), Symbol("resistor", "r")))
    return circuit(
        terminals, series(Symbol("ammeter"), Symbol("variable resistor", "load")), title="A cell and its loads"
    )


LOADS_OPENINGS = (
    "One cell is connected to two loads, one after the other.",
    "With two different resistors in turn, current and terminal potential difference of a cell are read.",
    "A class tests a cell: two loads, one at a time, and two meters.",
)
PRACTISED = {
    "r": "I1 V1 I2 V2",
    "epsilon": "I1 V1 I2 V2",
    "V2": "I1 V1 I2 r",
    "V1": "epsilon I1 r",
    "I2": "I1 V1 V2 r",
    "I1": "epsilon V1 r",
    "R1": "epsilon r I1",
    "R2": "I1 V1 I2 r",
}


def two_loads(data: Data) -> Situation:
    """Two readings of one cell; the same current twice is refused."""
    if data.has("I1") and data.values.get("I2") == data.values["I1"]:
        raise Refusal("I2", EQUAL)
    return replace(
        told(READINGS),
        relations=(CHANGES, FIRST, SECOND, *LOADS),
        openings=LOADS_OPENINGS,
        stated=(state(EMF),),
        unfit={"r": COLUMNS},
        limits=(Limit("abs(I1 - I2)", EQUAL),),
        scene=loads_scene,
    )


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """The readings that lead to the unknown drawn."""
    asked = next((name for name in PRACTISED if not typed[name]), "r")
    return {**typed} | {name: "" for name in PRACTISED if name not in PRACTISED[asked].split()}


TWO_LOADS = question(
    "two-loads",
    "Emf and internal resistance from two loads",
    two_loads,
    **boxes(*READINGS),
    laws=(EMF.name, OHM.name),
    asks="r",
    adjust=practise,
    since=6,
)
