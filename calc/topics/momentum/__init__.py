"""Momentum: collisions, pushes and explosions along a line."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.momentum.bat import BAT
from calc.topics.momentum.canister import CANISTER
from calc.topics.momentum.elastic import ELASTICALLY
from calc.topics.momentum.floor import BOUNCE
from calc.topics.momentum.impulse import HIT
from calc.topics.momentum.join import JOIN
from calc.topics.momentum.laws import ELASTIC, IMPULSE, ISOLATED, MOMENTUM, PRODUCT, RATE
from calc.topics.momentum.market import MARKET
from calc.topics.momentum.part import PART
from calc.topics.momentum.pulse import PULSE
from calc.topics.momentum.spring import SPRING

TOPIC = Topic(
    key="momentum",
    title="Momentum",
    laws=(PRODUCT, ISOLATED, MOMENTUM, RATE, IMPULSE, ELASTIC),
    questions=(JOIN, PART, ELASTICALLY, SPRING, HIT, PULSE, BOUNCE, MARKET, CANISTER, BAT),
    cautions=(
        "Trolleys and falling masses: keep feet and fingers clear, and put a catch box under what can fall.",
        (
            "A pressed spring or a stretched tie lets go at once: wear eye protection and keep hands and faces out of"
            " its way."
        ),
        (
            "What is filled with squeezed gas can burst: never heat, pierce or overfill it, and leave such trials to"
            " people trained for them."
        ),
        (
            "Sums about crashes, airbags and bent knees are physics, not advice: follow the rules where you are, and"
            " never try them out."
        ),
    ),
)
