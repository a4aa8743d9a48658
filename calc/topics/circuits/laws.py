"""The laws of the chapter on electric circuits, its quantities, and the relations of a cell that several questions use.

V = IR, ε = I(R + r), V_ext = ε − Ir, P = VI: data-sheet equations. Ranges, refusals and marks: common practice, no
source.
"""

from __future__ import annotations

from calc.model.answers import Law
from calc.model.questions import SA, Mistake
from calc.model.relations import Relation, Said
from calc.topics.shared.quantities import Quantity

OHM = Law(
    "Ohm's law",
    "The potential difference across a conductor is directly proportional to the current in the conductor at constant"
    " temperature.",
    ("directly proportional to the current", "constant temperature"),
    formulas=("R = V/I",),
    group="Electric circuits",
)
EMF = Law(
    "Definition of emf",
    "The emf of a cell is the maximum energy that the cell supplies per coulomb of charge passing through it.",
    ("maximum energy", "per coulomb of charge"),
    formulas=("epsilon = I*(R + r)",),
    group="Electric circuits",
)
SERIES = Law(
    "Rule for resistors in series",
    "In series the current is the same in every resistor and the potential differences add up, so the resistances add"
    " up.",
    ("current is the same", "potential differences add up"),
    formulas=("R_s = R1 + R2",),
    group="Electric circuits",
)
PARALLEL = Law(
    "Rule for resistors in parallel",
    "In parallel the potential difference is the same across every branch and the currents add up, so the reciprocals"
    " of the resistances add up.",
    ("potential difference is the same", "currents add up"),
    formulas=("1/R_p = 1/R1 + 1/R2",),
    group="Electric circuits",
)
ELECTRIC_POWER = Law(
    "Definition of electric power",
    "Electric power is the rate at which electrical energy is transferred.",
    ("rate", "energy is transferred"),
    formulas=("P = V*I", "P = I^2*R", "P = V^2/R", "W = P*Deltat"),
    group="Electric circuits",
)

emf = Quantity("V", 0.5, 240, "Emf must be greater than zero.")
volts = Quantity("V", 1e-3, 240, "Enter the size of the potential difference, zero or more.", over=None)
current = Quantity("A", 1e-6, 20, "Current must be greater than zero.")
inside = Quantity("Ω", 1e-3, 10, "Internal resistance cannot be negative; type 0 for an ideal cell.", over=None)
resistance = Quantity("Ω", 0.1, 1e6, "Resistance must be greater than zero.")
load = Quantity("Ω", 0.1, 1e6, "Resistance cannot be negative.", over=None)
power = Quantity("W", 1e-3, 3e3, "Power must be greater than zero.")

R_IGNORED = (
    "You left out the internal resistance. The cell resists too: the current passes {R} and {r}, so use {R + r}."
)
LOST = "You gave the lost volts, {I*r}. Subtract them from the emf: {epsilon - I*r}."
WHOLE = Relation(
    "epsilon = I*(R + r)",
    what="The emf drives the current through the whole circuit",
    why="The current passes the external resistance and the internal resistance one after the other, so these add up.",
    plain="The cell's push is used up by everything the charge has to pass, the cell itself included.",
    units={"epsilon": "V", "I": "A", "R": "Ω", "r": "Ω"},
    mistakes=(
        Mistake("internal-ignored", "I", "epsilon/R", R_IGNORED),
        Mistake("external-ignored", "I", "epsilon/r", "You left out the external resistance: divide by {R + r}."),
        Mistake("internal-ignored", "epsilon", "I*R", R_IGNORED),
        Mistake(
            "external-ignored",
            "epsilon",
            "I*r",
            "You gave the lost volts. The emf drives the current through {R} as well: use {R + r}.",
        ),
        Mistake(
            "not-subtracted",
            "R",
            "epsilon/I",
            "You stopped at the total resistance. The cell resists too: subtract {r} from it.",
        ),
        Mistake(
            "not-subtracted",
            "r",
            "epsilon/I",
            "You stopped at the total resistance. Subtract the external resistance {R} from it.",
        ),
    ),
)
TERMINAL = Relation(
    "V_ext = epsilon - I*r",
    what="The terminal potential difference is the emf less the lost volts",
    why="Of the energy of each coulomb the part Ir is transferred inside the cell; the rest reaches the terminals.",
    plain="The cell keeps a little of its push for itself, the more the larger the current.",
    units={"V_ext": "V", "epsilon": "V", "I": "A", "r": "Ω"},
    mistakes=(
        Mistake("lost-volts", "V_ext", "I*r", LOST),
        Mistake(
            "emf-as-terminal",
            "V_ext",
            "epsilon",
            "You gave the emf. While a current flows the terminals show less: subtract the lost volts {I*r}.",
        ),
        Mistake(
            "added",
            "V_ext",
            "epsilon + I*r",
            "You added the lost volts. A cell that supplies current shows less than its emf: subtract {I*r}.",
        ),
        Mistake(
            "subtracted",
            "epsilon",
            "V_ext - I*r",
            (
                "You subtracted the lost volts. The emf is larger than the terminal potential difference: add"
                " {I*r} to {V_ext}."
            ),
        ),
        Mistake(
            "load-for-internal",
            "r",
            "V_ext/I",
            "You found the resistance of the load. Inside the cell only the lost volts {epsilon - V_ext} drop: divide"
            " these by {I}.",
        ),
        Mistake(
            "emf-over-current",
            "r",
            "epsilon/I",
            "You found the total resistance. Inside the cell only the lost volts {epsilon - V_ext} drop: divide these"
            " by {I}.",
        ),
        Mistake(
            "terminal-for-lost",
            "I",
            "V_ext/r",
            "You divided the terminal potential difference by {r}. Across the internal resistance only {epsilon -"
            " V_ext} drops: divide"
            " that by {r}.",
        ),
    ),
)
TURNED = "You divided the other way round. Divide the potential difference by {I}."
ACROSS = Relation(
    "V_ext = I*R",
    what="Ohm's law for the external circuit",
    why="The terminal potential difference is that across the external resistance.",
    plain="A larger resistance needs more volts for the same current.",
    units={"V_ext": "V", "I": "A", "R": "Ω"},
    quotes=(OHM.name,),
    mistakes=(
        Mistake("upside-down", "R", "I/V_ext", TURNED),
        Mistake("multiplied", "R", "V_ext*I", "You multiplied. Divide {V_ext} by {I} to get the resistance."),
        Mistake("upside-down", "I", "R/V_ext", "You divided the other way round: divide {V_ext} by {R}."),
        Mistake("divided", "V_ext", "I/R", "You divided. Multiply the current by the resistance: {I*R}."),
    ),
)
LOST_VOLTS = Relation(
    "V_r = I*r",
    what="The lost volts are the current times the internal resistance",
    why="The internal resistance carries the same current as the rest of the circuit.",
    plain="What the cell keeps for itself.",
    units={"V_r": "V", "I": "A", "r": "Ω"},
    said={"r": Said("Find the internal resistance from the lost volts"), "I": Said("Find the current from them")},
    mistakes=(
        Mistake("divided", "V_r", "I/r", "You divided. Multiply the current by the internal resistance: {I*r}."),
        Mistake("upside-down", "r", "I/V_r", TURNED),
    ),
)
SHARED_OUT = Relation(
    "epsilon = V_ext + V_r",
    what="The emf is shared between the external circuit and the cell",
    why="Each coulomb gets the emf from the cell: a part is transferred outside, the rest inside.",
    plain="Nothing is lost from the sum: what is missing outside stayed inside.",
    units={"epsilon": "V", "V_ext": "V", "V_r": "V"},
    marks=SA,
    mistakes=(
        Mistake("added", "V_r", "epsilon + V_ext", "You added. The lost volts are the difference: subtract {V_ext}."),
        Mistake("added", "V_ext", "epsilon + V_r", "You added. The terminals show less than the emf: subtract {V_r}."),
        Mistake("subtracted", "epsilon", "V_ext - V_r", "You subtracted. The emf is the larger one: add {V_r}."),
    ),
)
SHORT = Relation(
    "I_s = epsilon/r",
    what="With the terminals joined only the internal resistance is left",
    why="The external resistance is then zero, so ε = Ir. It is the largest current the cell can drive.",
    plain="Nothing outside holds the current back any more. Work it out; never try it.",
    units={"I_s": "A", "epsilon": "V", "r": "Ω"},
    mistakes=(
        Mistake(
            "external-left-in",
            "I_s",
            "epsilon/(R + r)",
            "You left {R} in. A short circuit passes it by: divide the emf by {r} alone.",
        ),
        Mistake("multiplied", "I_s", "epsilon*r", "You multiplied. Divide the emf by the internal resistance."),
        Mistake("upside-down", "r", "I_s/epsilon", "You divided the other way round: divide the emf by {I_s}."),
    ),
)
HEAT_INSIDE = Relation(
    "P_r = I^2*r",
    what="Power transferred inside the cell",
    why="The current I passes the internal resistance: P = I²R with r for R. It only makes the cell warm.",
    plain="A cell that works hard gets warm.",
    units={"P_r": "W", "I": "A", "r": "Ω"},
    quotes=(ELECTRIC_POWER.name,),
    mistakes=(
        Mistake("not-squared", "P_r", "I*r", "You did not square the current. That is the lost volts: use {I^2*r}."),
        Mistake(
            "emf-for-lost",
            "P_r",
            "epsilon^2/r",
            "You used the emf. Across the internal resistance only {I*r} drops: use {I^2*r}.",
        ),
        Mistake("root-omitted", "I", "P_r/r", "You stopped at {I^2}. Take its square root."),
        Mistake("not-squared", "r", "P_r/I", "You divided by {I} only once. Divide by {I^2}."),
    ),
)
