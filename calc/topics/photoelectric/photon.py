"""The energy of a photon: E = hf = hc/λ (data-sheet equations), in joules and in electronvolts."""

from __future__ import annotations

from calc.model.questions import Data, Part, Values
from calc.topics.photoelectric.laws import (
    DIRECT,
    PACKET,
    PHOTON,
    WAVE,
    frequency,
    in_electronvolts,
    photon_energy,
    wavelength,
)
from calc.working.declaring import declare


def later(data: Data, values: Values) -> tuple[Part, ...]:
    """The energy in electronvolts, where it was asked for."""
    return (in_electronvolts("E", "this energy"),) if "E" in data.asked_names else ()


PHOTON_ENERGY = declare(
    "photon",
    "Energy of a photon",
    (DIRECT, PACKET, WAVE),
    openings=(
        "A lamp sends out light of a single wavelength.",
        "Light of a single frequency falls on a light sensor.",
        "A filter lets light of one wavelength only through to a detector.",
    ),
    given=(
        wavelength(
            "lamda",
            "Wavelength",
            "The light has a wavelength of {}.",
            "462 nm; 410 480 555; 212 250 285",
            former=("lambda",),
        ),
        frequency(
            "f",
            "Frequency",
            "The light has a frequency of {}.",
            "?; 4,8e14 5,6e14 6,4e14; 7,3e14 8,5e14 9,8e14",
        ),
        photon_energy(
            "E",
            "Energy of one photon",
            "Each photon has an energy of {}.",
            "?; 3,1e-19 3,6e-19 4,1e-19; 6,2e-19 7e-19 8,3e-19",
        ),
    ),
    states=(PHOTON,),
    constants=("h", "c", "e"),
    later=later,
    practised={"E": "lamda", "f": "E", "lamda": "f"},
    asks="E",
    notes=("A photon of visible light has an energy of 2 eV to 3 eV.",),
    since=6,
)
