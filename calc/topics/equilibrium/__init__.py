"""Charged bodies in equilibrium: on a smooth slope, on a vertical line, on threads.

Equilibrium: net force zero. On a slope N = mg cos θ and T, F_E and mg sin θ balance; on a thread
tan α = F_E/(mg), whether a second sphere, a fixed charge or a field pushes it. When a string is cut, a = T/m
at that instant.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.equilibrium.beside import BESIDE, IN_FIELD
from calc.topics.equilibrium.held import SLOPE, VERTICAL
from calc.topics.equilibrium.hung import THREADS
from calc.topics.equilibrium.stories import BARN, GAUGE, HALL, HOVER, MUSEUM, STAGE
from calc.topics.equilibrium.unequal import UNEQUAL
from calc.topics.shared.electrostatics import COULOMB, EQUILIBRIUM, QUANTISATION, SECOND

TOPIC = Topic(
    key="equilibrium",
    title="Charged bodies in equilibrium",
    laws=(EQUILIBRIUM, SECOND, COULOMB, QUANTISATION),
    questions=(SLOPE, VERTICAL, THREADS, BESIDE, IN_FIELD, UNEQUAL, MUSEUM, STAGE, GAUGE, HOVER, HALL, BARN),
    cautions=(
        "Static machines: discharge them before touching, and keep them away from people with medical implants.",
        "Put a catch tray under a hanging load before its thread is cut.",
    ),
)
