"""The photoelectric effect: photons, emission from a metal, intensity and frequency, its graph, energy levels."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.photoelectric.laws import EFFECT, PHOTON, THRESHOLD, WORK_FUNCTION
from calc.topics.photoelectric.photon import PHOTON_ENERGY

TOPIC = Topic(
    key="photoelectric",
    title="Photoelectric effect",
    laws=(EFFECT, PHOTON, THRESHOLD, WORK_FUNCTION),
    questions=(PHOTON_ENERGY,),
    cautions=(
        "Ultraviolet light harms eyes and skin, and it cannot be seen: shield the lamp, never look into it, and keep to"
        " the rules of your school, under supervision.",
        "A discharge lamp becomes hot: let it cool before anybody touches it.",
        "Photocells and discharge lamps may need a high supply voltage: switch off before changing anything.",
    ),
)
