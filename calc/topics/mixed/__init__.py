"""Questions across chapters: one story that needs the laws of several."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.circuits.laws import ELECTRIC_POWER, OHM, PARALLEL
from calc.topics.electrodynamics.laws import FARADAY, ROOT_MEAN_SQUARE
from calc.topics.mixed.charged import CHARGED
from calc.topics.mixed.lamps import LAMPS
from calc.topics.momentum.laws import MOMENTUM
from calc.topics.shared.electrostatics import COULOMB
from calc.topics.shared.motion_laws import SECOND

TOPIC = Topic(
    key="mixed",
    title="Across the chapters",
    laws=(COULOMB, SECOND, MOMENTUM, FARADAY, ROOT_MEAN_SQUARE, PARALLEL, OHM, ELECTRIC_POWER),
    questions=(CHARGED, LAMPS),
    cautions=(
        ("Trolleys, gliders and falling masses: keep feet and fingers clear, and put a catch box under what can fall."),
        (
            "Charged spheres are fed from a high-voltage supply: only supervised, with a supply made for schools, and"
            " discharged before anyone touches them."
        ),
        "Turning wheels, belts and chains catch hair, sleeves and fingers: cover them, and tie back what hangs loose.",
        "A generator that lights lamps stays below 25 V, and nothing here is joined to the mains. Local rules and the"
        " supervising teacher come first.",
    ),
)
