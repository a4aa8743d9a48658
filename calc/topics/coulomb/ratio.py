"""By what factor: from F = k Q₁ Q₂ / r² before and after a change follows f = a b / d², any one of them asked."""

from dataclasses import replace

from calc.topics.coulomb.force import between
from calc.topics.shared.electrostatics import COULOMB, PLAIN_LAW
from calc.topics.shared.quantities import electrostatic_force, factor
from calc.topics.shared.ratios import INVERSE_SQUARE, TIMES
from calc.working.declaring import declare

RATIO = replace(
    INVERSE_SQUARE,
    why="k stays the same and cancels when one force is divided by the other. What is left are the factors: those of"
    " the charges multiply, that of the distance divides, squared.",
    plain=PLAIN_LAW,
)
HOW_FAR = "By what factor must the distance between A and B change?"
GIVEN = {"f": "a b d", "d": "a b f", "a": "b d f", "b": "a d f", "F_new": "F a b d", "F": "F_new a b d"}
FORCES = {**GIVEN, "d": "a b F F_new"}  # the distance from the two forces themselves
QUANTITIES = (
    factor("a", "Factor of the charge on A", "The charge on A", "1; 1 1 2 3; 1 0,5 3 1,5"),
    factor("b", "Factor of the charge on B", "The charge on B", "1; 1 2 4; 0,25 3 2"),
    factor("d", "Factor of the distance", "The distance between them", "?; 2 3 0,5; 0,4 1,5 2,5", ask=HOW_FAR),
    factor("f", "Factor of the force", "The force", "4; 4 9 16 0,25; 2 0,36 5 12", follows=True),
    electrostatic_force(
        "F", "Force before the change (size)", "At first the force is {}.", "?; 12 20 36 48 mN; 5,4 64 7,5"
    ),
    electrostatic_force(
        "F_new",
        "Force after the change (size)",
        "The force afterwards is {}.",
        "?; 3 4 9 75 mN; 2,7 16 30",
        result="measured",
    ),
)
FACTORS = declare(
    "ratio",
    "Factors of a change",
    (RATIO, TIMES.renamed(new="F_new", factor="f", old="F")),
    openings=(
        "Two small charged spheres, A and B, exert a force on each other. Then something is changed.",
        "Two small charged bodies, A and B, act on each other; neither charge is known. A change is made.",
        "A charged sphere A pulls or pushes another, B. Their charges and their distance may then be altered.",
    ),
    given=QUANTITIES,
    told_first=("F",),
    scene=lambda v: between(),
    notes=("A factor larger than 1 means larger, one smaller than 1 means smaller; 1 means no change.",),
    practised=lambda drawn, level: FORCES if level > 1 and drawn["a"] != "1" else GIVEN,
    asks="d",
    laws=(COULOMB,),
    since=2,
)
