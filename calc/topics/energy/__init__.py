"""Work, energy and power: what forces do along a way, mechanical energy, and how fast it goes."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.energy.caught import CATCH
from calc.topics.energy.laws import CONSERVATIVE, CONSERVED, NON_CONSERVATIVE, POWER, THEOREM, WORK
from calc.topics.energy.moved import MOVED
from calc.topics.energy.one_force import SINGLE
from calc.topics.energy.pendulum import PENDULUM
from calc.topics.energy.places import LOSS, SLIDE
from calc.topics.energy.ramp import RAMP
from calc.topics.energy.rate import AVERAGE, STARTING
from calc.topics.energy.rebound import REBOUND
from calc.topics.energy.slide import SLIDE_AND_GROUND
from calc.topics.energy.spring import LAUNCH
from calc.topics.energy.steady import DRIVING, PUMP
from calc.topics.energy.tied import TIED
from calc.topics.energy.turning import TURNING
from calc.topics.energy.ways import WAYS

TOPIC = Topic(
    key="energy",
    title="Work, energy and power",
    laws=(WORK, THEOREM, CONSERVATIVE, NON_CONSERVATIVE, CONSERVED, POWER),
    questions=(
        LAUNCH,
        SINGLE,
        MOVED,
        TIED,
        SLIDE,
        PENDULUM,
        LOSS,
        AVERAGE,
        STARTING,
        DRIVING,
        PUMP,
        RAMP,
        SLIDE_AND_GROUND,
        CATCH,
        REBOUND,
        TURNING,
        WAYS,
    ),
    cautions=(
        "A pressed or stretched spring stores energy: wear eye protection and never aim it at anyone.",
        "Whatever is lifted or hangs on a string can fall: keep feet and fingers clear, and put a catch box under it.",
        (
            "Sums about vehicles, slides and throws are physics, not advice: follow the rules where you are, and try"
            " nothing out without supervision."
        ),
    ),
)
