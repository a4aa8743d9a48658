"""Electric field: of one charge, on a charge, of several charges, its zero, between plates.

E = kQ/r², E = F/q, the vector sum of fields, E = V/d, and a drop held by mg = qE.
"""

from __future__ import annotations

from calc.questions import Topic
from calc.topics._electrostatics import EQUILIBRIUM, QUANTISATION, SECOND
from calc.topics._field import ADDING, FIELD, TEST_CHARGE, UNIFORM
from calc.topics._field_charge import CHARGE, FORCE
from calc.topics._field_drop import DROP, DROP_CHARGE
from calc.topics._field_line import LINE
from calc.topics._field_null import NULL
from calc.topics._field_particle import PARTICLE
from calc.topics._field_plane import PATTERN, PLANE
from calc.topics._field_plates import PLATES
from calc.topics._field_stories import DOMES, SPRAYER

TOPIC = Topic(
    key="electric-field",
    title="Electric field",
    laws=(FIELD, TEST_CHARGE, ADDING, UNIFORM, EQUILIBRIUM, QUANTISATION, SECOND),
    questions=(
        CHARGE, FORCE, PARTICLE, LINE, PLANE, NULL, PATTERN, PLATES, DROP, DROP_CHARGE, DOMES, SPRAYER,
    ),
    cautions=(
        "Kilovolt plates: use a current-limited supply only; switch off and earth the plates before adjusting anything. "
        "Follow the rules of your school and work under supervision.",
        "Static machines: discharge them before touching, and keep them away from people with medical implants.",
    ),
)  # fmt: skip
