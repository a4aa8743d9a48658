"""Momentum: collisions along a line."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.momentum.join import JOIN
from calc.topics.momentum.laws import MOMENTUM

TOPIC = Topic(
    key="momentum",
    title="Momentum",
    laws=(MOMENTUM,),
    questions=(JOIN,),
    cautions=("Trolleys and falling masses: keep feet and fingers clear, and put a catch box under what can fall.",),
)
