"""Forces and free-body diagrams: one body on a surface, pulled or pushed; three forces in balance."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.forces.angle import ANGLE
from calc.topics.forces.crew import CREW
from calc.topics.forces.lantern import LANTERN
from calc.topics.forces.level import LEVEL
from calc.topics.forces.moves import MOVES
from calc.topics.forces.ramp import RAMP
from calc.topics.forces.slipping import SLIPS
from calc.topics.forces.slope import SLOPE
from calc.topics.forces.strings import STRINGS
from calc.topics.shared.motion_laws import EQUILIBRIUM, FIRST, FRICTION, KINETIC, NORMAL, SECOND, STATIC

TOPIC = Topic(
    key="forces",
    title="Forces and free-body diagrams",
    laws=(FIRST, NORMAL, FRICTION, STATIC, KINETIC, EQUILIBRIUM, SECOND),
    questions=(MOVES, LEVEL, SLOPE, SLIPS, ANGLE, STRINGS, CREW, RAMP, LANTERN),
    cautions=(
        "Loads that slide or hang: keep feet and fingers clear, and put a catch box under what can fall.",
        (
            "Sums about tyres, brakes and ramps are physics, not advice: follow the rules where you are, and never try"
            " them out on a road."
        ),
    ),
)
