"""Gravitation: the force between two bodies, the field of a planet at its surface and above it."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.gravitation.balance import BALANCE
from calc.topics.gravitation.compared import COMPARED
from calc.topics.gravitation.factors import FACTORS
from calc.topics.gravitation.field import FIELD
from calc.topics.gravitation.force import FORCE
from calc.topics.gravitation.graph import GRAPH
from calc.topics.gravitation.lander import LANDER
from calc.topics.gravitation.laws import GRAVITATION, MASS, WEIGHT, WEIGHTLESS
from calc.topics.gravitation.probe import PROBE
from calc.topics.gravitation.rocks import ROCKS

TOPIC = Topic(
    key="gravitation",
    title="Gravitation",
    laws=(GRAVITATION, WEIGHT, MASS, WEIGHTLESS),
    questions=(FORCE, FACTORS, FIELD, COMPARED, BALANCE, GRAPH, LANDER, PROBE, ROCKS),
    cautions=(
        "Where bodies are dropped or swung to measure g: keep heads, hands and feet clear, and put a soft box"
        " underneath.",
    ),
)
