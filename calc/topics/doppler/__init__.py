"""The Doppler effect: the frequency that is heard when source or listener moves."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.doppler.bell import BELL
from calc.topics.doppler.crossing import CROSSING
from calc.topics.doppler.laws import DOPPLER, RED_SHIFT
from calc.topics.doppler.moving import BOTH, ONE
from calc.topics.doppler.passing import PASSING
from calc.topics.doppler.shaft import SHAFT

TOPIC = Topic(
    key="doppler",
    title="Doppler effect",
    laws=(DOPPLER, RED_SHIFT),
    questions=(ONE, PASSING, BOTH, CROSSING, SHAFT, BELL),
    cautions=(
        (
            "Sirens, buzzers and headphones: loud sound harms hearing for good. Keep it short and quiet, and follow the"
            " rules of your school."
        ),
        (
            "A buzzer whirled on a cord: test the knot and the cord first, keep everyone out of its circle and wear eye"
            " protection, under supervision."
        ),
        "Traffic and trains here are physics, not advice: never listen or measure on or near a road or a track.",
    ),
)
