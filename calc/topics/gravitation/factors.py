"""By what factor: from F = G m₁ m₂ / r² before and after a change follows f = a b / d², any one of them asked."""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure, Mass, spheres_on_line
from calc.model.questions import Values
from calc.topics.gravitation.laws import GRAVITATION, PLAIN, pull
from calc.topics.shared.quantities import factor
from calc.topics.shared.ratios import INVERSE_SQUARE, TIMES
from calc.working.declaring import declare

RATIO = replace(
    INVERSE_SQUARE,
    why="G stays the same and cancels when one force is divided by the other. What is left are the factors: those of"
    " the masses multiply, that of the distance divides, squared.",
    plain=PLAIN,
)
GIVEN = {"f": "a b d", "d": "a b f", "a": "b d f", "b": "a d f", "F_new": "F a b d", "F": "F_new a b d"}
QUANTITIES = (
    factor("a", "Factor of the mass of A", "The mass of A", "2; 1 2 3 4; 1 0,5 3 1,5"),
    factor("b", "Factor of the mass of B", "The mass of B", "1; 1 2 3; 0,25 3 2"),
    factor("d", "Factor of the distance", "The distance between the centres", "2; 2 3 0,5; 0,4 1,5 2,5"),
    factor("f", "Factor of the force", "The force", "?; 4 9 0,25 0,5; 2 0,36 5 12", follows=True),
    pull("F", "Force before the change (size)", "At first the force is {}.", "; 120 200 360 480 N; 54 640 75"),
    pull(
        "F_new",
        "Force after the change (size)",
        "The force afterwards is {}.",
        "; 30 40 90 750 N; 27 160 300",
        result="measured",
    ),
)


def scene(v: Values) -> Figure:
    """The two bodies: what changes are numbers."""
    return spheres_on_line(
        [Mass("A", 0.0), Mass("B", 1.0)], title="Two bodies that attract each other", notes=("Bodies not to scale.",)
    )


FACTORS = declare(
    "factors",
    "What if: factors of the force",
    (RATIO, TIMES.renamed(new="F_new", factor="f", old="F")),
    openings=(
        "Two bodies in space, A and B, attract each other. Then something is changed.",
        "For a computer game two worlds, A and B, attract each other by gravitation. A change is made.",
        "A probe, B, is attracted by a moon, A. In a second plan masses and distance may be others.",
    ),
    given=QUANTITIES,
    told_first=("F",),
    scene=scene,
    notes=("A factor larger than 1 means larger, one smaller than 1 means smaller; 1 means no change.",),
    practised=GIVEN,
    asks="f",
    laws=(GRAVITATION,),
    since=4,
)
