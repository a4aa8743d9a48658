"""Coulomb's law: two charges, sharing by contact, counting electrons."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.coulomb.contact import CONTACT, TWO_FORCES
from calc.topics.coulomb.contact_back import CONTACT_BACK
from calc.topics.coulomb.electrons import ELECTRONS
from calc.topics.coulomb.force import FORCE, SCALING
from calc.topics.coulomb.inverse_square import INVERSE_SQUARE
from calc.topics.coulomb.ratio import FACTORS
from calc.topics.coulomb.sharing import THREE_SPHERES, TWO_SPHERES
from calc.topics.shared.electrostatics import CONSERVATION, COULOMB, QUANTISATION

TOPIC = Topic(
    key="coulomb",
    title="Coulomb's law",
    laws=(COULOMB, CONSERVATION, QUANTISATION),
    questions=(
        FORCE,
        CONTACT,
        ELECTRONS,
        SCALING,
        TWO_FORCES,
        TWO_SPHERES,
        THREE_SPHERES,
        CONTACT_BACK,
        FACTORS,
        INVERSE_SQUARE,
    ),
    cautions=(
        "Static machines: discharge them before touching, and keep them away from people with medical implants.",
    ),
)
