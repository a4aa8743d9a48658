"""The photoelectric effect: photons, emission from a metal, intensity and frequency, its graph, energy levels."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.photoelectric.craft import CRAFT
from calc.topics.photoelectric.emission import EMISSION
from calc.topics.photoelectric.gate import GATE
from calc.topics.photoelectric.graph import GRAPH
from calc.topics.photoelectric.intensity import INTENSITY
from calc.topics.photoelectric.lamp import LAMP
from calc.topics.photoelectric.laws import EFFECT, PHOTON, THRESHOLD, WORK_FUNCTION
from calc.topics.photoelectric.levels import LEVELS
from calc.topics.photoelectric.metals import COMPARED
from calc.topics.photoelectric.photon import PHOTON_ENERGY
from calc.topics.photoelectric.readings import READINGS

TOPIC = Topic(
    key="photoelectric",
    title="Photoelectric effect",
    laws=(EFFECT, PHOTON, THRESHOLD, WORK_FUNCTION),
    questions=(PHOTON_ENERGY, EMISSION, COMPARED, INTENSITY, GRAPH, READINGS, LEVELS, GATE, CRAFT, LAMP),
    cautions=(
        "Ultraviolet light harms eyes and skin, and it cannot be seen: shield the lamp, never look into it, and keep to"
        " the rules of your school, under supervision.",
        "A discharge lamp becomes hot: let it cool before anybody touches it.",
        "Photocells and discharge lamps may need a high supply voltage: switch off before changing anything.",
    ),
)
