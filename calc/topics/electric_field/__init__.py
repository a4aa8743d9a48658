"""Electric field: of one charge, on a charge, of several charges, its zero, between plates.

E = kQ/r², E = F/q, the vector sum of fields, E = V/d, and a drop held by mg = qE.
"""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.electric_field.charge import CHARGE, FORCE
from calc.topics.electric_field.components import COMPONENTS
from calc.topics.electric_field.crossing import CROSSING
from calc.topics.electric_field.drop import DROP, DROP_CHARGE
from calc.topics.electric_field.net import LINE, PLANE
from calc.topics.electric_field.null import NULL
from calc.topics.electric_field.particle import PARTICLE
from calc.topics.electric_field.pattern import PATTERN
from calc.topics.electric_field.plates import PLATES
from calc.topics.electric_field.released import RELEASED
from calc.topics.electric_field.shared import ADDING, FIELD, MOTION, TEST_CHARGE, UNIFORM, WORK_ENERGY
from calc.topics.electric_field.stories import DOMES, SPRAYER
from calc.topics.shared.electrostatics import EQUILIBRIUM, QUANTISATION, SECOND

TOPIC = Topic(
    key="electric-field",
    title="Electric field",
    laws=(FIELD, TEST_CHARGE, ADDING, UNIFORM, EQUILIBRIUM, QUANTISATION, SECOND, MOTION, WORK_ENERGY),
    questions=(
        CHARGE,
        FORCE,
        PARTICLE,
        LINE,
        PLANE,
        COMPONENTS,
        NULL,
        PATTERN,
        PLATES,
        DROP,
        DROP_CHARGE,
        RELEASED,
        CROSSING,
        DOMES,
        SPRAYER,
    ),
    cautions=(
        (
            "Kilovolt plates: use a current-limited supply only; switch off and earth the plates before adjusting"
            " anything. Follow the rules of your school and work under supervision."
        ),
        "Static machines: discharge them before touching, and keep them away from people with medical implants.",
    ),
)
