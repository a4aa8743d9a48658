"""Two cells in parallel with one load: the currents at their junction, from the p.d. that all three share.

(ε₁ − V)/r₁ + (ε₂ − V)/r₂ = V/R: what enters a junction leaves it again. Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.circuits import Part, circuit, parallel, series
from calc.model.questions import Mistake, Values
from calc.model.relations import Relation
from calc.topics.circuits.laws import EMF, OHM, PARALLEL, current, emf, load, volts
from calc.topics.circuits.laws import resistance as ohms
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import declare

CHARGES = "a minus sign: it is charged by the other cell"
through = Quantity("A", 1e-6, 20, signed=True, help=CHARGES, result="measured")
JUNCTION = Relation(
    "(epsilon_1 - V)/r1 + (epsilon_2 - V)/r2 = V/R",
    what="At the junction the currents of both cells add up to that in the load",
    why=(
        "Cells and load share the potential difference V. Each cell keeps ε − V for its own resistance, so its current"
        " is (ε − V)/r; the load takes V/R."
    ),
    plain="What flows into a meeting point flows out of it again.",
    quotes=(PARALLEL.name,),
    mistakes=(
        Mistake(
            "emfs-averaged",
            "V",
            "(epsilon_1 + epsilon_2)/2",
            "You took the mean of both emfs. The cells lose volts inside: add the currents at the junction.",
        ),
        Mistake(
            "emfs-added",
            "V",
            "(epsilon_1 + epsilon_2)*R/(R + r1 + r2)",
            "You added the emfs. In parallel they do not add up: find {V} from the currents at the junction.",
        ),
    ),
)


def own(n: int) -> Relation:
    """One cell: its terminal p.d. is that of the junction."""
    return Relation(
        f"V = epsilon_{n} - I{n}*r{n}",
        what=f"The current of cell {n}: its terminals show V",
        why=f"Cell {n} keeps ε − V as lost volts. A negative current means that the other cell charges it.",
        plain="The stronger cell may push current back through the weaker one.",
        quotes=(EMF.name,),
        mistakes=(
            Mistake(
                "emf-over-r",
                f"I{n}",
                f"epsilon_{n}/r{n}",
                f"You divided the whole emf by {{r{n}}}. Only {{epsilon_{n} - V}} drops there: divide that.",
            ),
        ),
    )


LOAD = Relation(
    "V = I*R",
    what="Ohm's law for the load",
    why="The load has the potential difference of the junction.",
    plain="A larger resistance needs more volts for the same current.",
    quotes=(OHM.name,),
    mistakes=(Mistake("divided-wrong", "I", "R/V", "You divided the other way round: divide {V} by {R}."),),
)
SUM = Relation(
    "I = I1 + I2",
    what="The currents of both cells add up to that in the load",
    why="No charge is lost at the junction.",
    plain="What goes in comes out again.",
    quotes=(PARALLEL.name,),
)


def scene(v: Values) -> Figure:
    """Both cells, each with its resistance, side by side above the load."""
    one, two = (series(Part("cell", f"ε_{n}"), Part("resistor", f"r_{n}")) for n in (1, 2))
    return circuit(parallel(one, two), Part("resistor", "R"), title="Two cells in parallel")


TWO_CELLS = declare(
    "two-cells",
    "Two cells in parallel with a load",
    (JUNCTION, LOAD, own(1), own(2), SUM),
    openings=(
        "Two cells are connected in parallel, positive to positive, and drive one load.",
        "A fresh and an older battery stand side by side, like terminals joined, and feed one resistor.",
        "To make a lamp last longer two cells are joined in parallel across it.",
    ),
    given=(
        emf("epsilon_1", "Emf of cell 1", "Cell 1 has an emf of {}.", "6 V; 6 9 12; 4,5 7,5 9"),
        ohms("r1", "Internal resistance of cell 1", "The internal resistance of cell 1 is {}.", "1 Ω; 1 2; 0,8 1,5"),
        emf("epsilon_2", "Emf of cell 2", "Cell 2 has an emf of {}.", "4 V; 4 5 8; 3 6 8,5"),
        ohms("r2", "Internal resistance of cell 2", "The internal resistance of cell 2 is {}.", "2 Ω; 1 2 4; 0,5 2,5"),
        load("R", "Resistance of the load", "The load has a resistance of {}.", "4 Ω; 2 4 6; 3,5 7,5"),
        volts("V", "Potential difference across the load", "Across the load {} is read.", "?; 3 4 5; 3,5 4,5"),
        current("I", "Current in the load", "The current in the load is {}.", "?; 1 2; 1,4 2,2"),
        through("I1", "Current of cell 1", "The current of cell 1 is {}.", "?; 1 2; 1,5 2,5"),
        through("I2", "Current of cell 2", "The current of cell 2 is {}.", "?; 1 2; 0,5 1,5"),
    ),
    units={"epsilon_1": "V", "epsilon_2": "V"},
    scene=scene,
    notes=(
        "The larger emf does not decide alone: where V lies above the emf of a cell, that cell takes up current and is"
        " charged.",
    ),
    practised=dict.fromkeys(("V", "I", "I1", "I2"), "epsilon_1 r1 epsilon_2 r2 R")
    | {"epsilon_1": "r1 epsilon_2 r2 R V", "R": "epsilon_1 r1 epsilon_2 r2 V", "epsilon_2": "epsilon_1 r1 r2 R V"},
    unknowns=("V", "I", "I1", "I2", "epsilon_1", "epsilon_2", "R"),
    asks="V",
    laws=(EMF, OHM, PARALLEL),
    since=6,
)
