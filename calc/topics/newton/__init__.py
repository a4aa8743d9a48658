"""Newton's second law and connected bodies: strings over pulleys, bodies in contact, lifts."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.newton.bench import BENCH
from calc.topics.newton.edge import EDGE
from calc.topics.newton.hoist import HOIST
from calc.topics.newton.incline import INCLINE
from calc.topics.newton.lift import LIFT
from calc.topics.newton.pulley import PULLEY
from calc.topics.newton.quarry import QUARRY
from calc.topics.newton.row import CONTACT, ROW
from calc.topics.newton.situation import SITUATION
from calc.topics.shared.motion_laws import FIRST, KINETIC, SECOND, STATIC, THIRD

TOPIC = Topic(
    key="newton",
    title="Newton's second law and connected bodies",
    laws=(SECOND, THIRD, FIRST, STATIC, KINETIC),
    questions=(ROW, CONTACT, EDGE, INCLINE, PULLEY, LIFT, BENCH, QUARRY, HOIST, SITUATION),
    cautions=(
        "Masses that hang from strings: put a catch box under them, keep feet away, and keep fingers out of pulleys.",
        "A string under tension can snap back: wear eye protection.",
    ),
)
