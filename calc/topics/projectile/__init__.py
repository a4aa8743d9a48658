"""Vertical projectile motion: thrown up, let go, thrown down, bouncing, meeting."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.projectile.accelerations import ACCELERATIONS
from calc.topics.projectile.bounce import BOUNCE
from calc.topics.projectile.court import COURT
from calc.topics.projectile.flight import FLIGHT
from calc.topics.projectile.from_height import FROM_HEIGHT
from calc.topics.projectile.graphs import GRAPHS
from calc.topics.projectile.lamp import LAMP
from calc.topics.projectile.laws import DOWNWARDS, EQUATIONS, FREE_FALL
from calc.topics.projectile.lift import LIFT
from calc.topics.projectile.meeting import MEETING
from calc.topics.projectile.positions import POSITIONS
from calc.topics.projectile.reading import READING
from calc.topics.projectile.rings import RINGS

TOPIC = Topic(
    key="projectile",
    title="Vertical projectile motion",
    laws=(FREE_FALL, DOWNWARDS, EQUATIONS),
    questions=(
        FLIGHT,
        FROM_HEIGHT,
        BOUNCE,
        MEETING,
        GRAPHS,
        READING,
        POSITIONS,
        ACCELERATIONS,
        LIFT,
        COURT,
        LAMP,
        RINGS,
    ),
    cautions=(
        (
            "Falling bodies: drop only soft, light things, over a marked area that nobody enters, and look up before"
            " you let go."
        ),
    ),
)
