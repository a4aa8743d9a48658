"""Questions across chapters: one story that needs the laws of several."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.mixed.charged import CHARGED
from calc.topics.momentum.laws import MOMENTUM
from calc.topics.shared.electrostatics import COULOMB
from calc.topics.shared.motion_laws import SECOND

TOPIC = Topic(
    key="mixed",
    title="Across the chapters",
    laws=(COULOMB, SECOND, MOMENTUM),
    questions=(CHARGED,),
    cautions=(
        ("Trolleys, gliders and falling masses: keep feet and fingers clear, and put a catch box under what can fall."),
        (
            "Charged spheres are fed from a high-voltage supply: only supervised, with a supply made for schools, and"
            " discharged before anyone touches them."
        ),
    ),
)
