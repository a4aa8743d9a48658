"""Several charges: the net electrostatic force on one of them, and what must be true for a stated one.

One pair at a time by Coulomb's law, then the vector sum (superposition): on a line with signs,
at right angles with Pythagoras, anywhere in a plane with components.
"""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.several_charges.balance import BALANCE
from calc.topics.several_charges.corners import RECTANGLE, TRIANGLE
from calc.topics.several_charges.line import LINE
from calc.topics.several_charges.places import PLACES_QUESTION
from calc.topics.several_charges.plane import PLANE
from calc.topics.several_charges.right_angle import CORNER, PUCKS, TWO_FORCES
from calc.topics.several_charges.shared import SUPERPOSITION
from calc.topics.several_charges.stated import STATED
from calc.topics.several_charges.third import RAIL, THIRD
from calc.topics.shared.electrostatics import COULOMB, QUANTISATION, SECOND

TOPIC = Topic(
    key="several-charges",
    title="Several charges",
    laws=(SUPERPOSITION, COULOMB, QUANTISATION, SECOND),
    questions=(
        LINE,
        CORNER,
        TWO_FORCES,
        PLANE,
        THIRD,
        BALANCE,
        PLACES_QUESTION,
        RAIL,
        PUCKS,
        TRIANGLE,
        RECTANGLE,
        STATED,
    ),
    cautions=(
        "Static machines: discharge them before touching, and keep them away from people with medical implants.",
    ),
)
