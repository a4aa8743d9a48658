"""Several charges: the net electrostatic force on one of them, and what must be true for a stated one.

One pair at a time by Coulomb's law, then the vector sum (superposition): on a line with signs,
at right angles with Pythagoras, anywhere in a plane with components.
"""

from __future__ import annotations

from calc.questions import Topic
from calc.topics._electrostatics import COULOMB, QUANTISATION, SECOND
from calc.topics._several import SUPERPOSITION
from calc.topics._several_balance import BALANCE
from calc.topics._several_line import LINE
from calc.topics._several_places import PLACES_QUESTION
from calc.topics._several_plane import PLANE
from calc.topics._several_right_angle import CORNER, TWO_FORCES
from calc.topics._several_stories import PUCKS, RAIL
from calc.topics._several_third import THIRD

TOPIC = Topic(
    key="several-charges",
    title="Several charges",
    laws=(SUPERPOSITION, COULOMB, QUANTISATION, SECOND),
    questions=(LINE, CORNER, TWO_FORCES, PLANE, THIRD, BALANCE, PLACES_QUESTION, RAIL, PUCKS),
    cautions=(
        "Static machines: discharge them before touching, and keep them away from people with medical implants.",
    ),
)
