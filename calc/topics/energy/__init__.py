"""Work and energy: mechanical energy from one place to another."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.energy.laws import CONSERVED
from calc.topics.energy.spring import LAUNCH

TOPIC = Topic(
    key="energy",
    title="Energy",
    laws=(CONSERVED,),
    questions=(LAUNCH,),
    cautions=("A pressed or stretched spring stores energy: wear eye protection and never aim it at anyone.",),
)
