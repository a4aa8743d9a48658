"""The laws of the chapter on the photoelectric effect, and its quantities.

E = hf, hf = W₀ + E_k, W₀ = hf₀ and c = fλ: data-sheet equations. Ranges, refusals and marks: common practice,
no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.model.answers import Law
from calc.model.questions import SA, Mistake, Part
from calc.model.relations import Relation, Said
from calc.topics.shared.quantities import Quantity

EFFECT = Law(
    "Definition of the photoelectric effect",
    "The photoelectric effect is the process in which electrons are ejected from a metal surface when light of suitable"
    " frequency shines on it.",
    ("electrons are ejected from a metal surface", "light of suitable frequency"),
)
THRESHOLD = Law(
    "Definition of the threshold frequency",
    "The threshold frequency of a metal is the minimum frequency of light that ejects electrons from its surface.",
    ("minimum frequency", "ejects electrons"),
    formulas=("W_0 = h*f_0",),
    group="Matter and light",
)
WORK_FUNCTION = Law(
    "Definition of the work function",
    "The work function of a metal is the minimum energy that an electron needs to be emitted from its surface.",
    ("minimum energy", "minimum energy that an electron needs to be emitted"),
    formulas=("h*f = W_0 + E_k", "E_k = 1/2*m*v^2"),
    group="Matter and light",
)
PHOTON = Law(
    "Energy of a photon",
    "The energy of a photon is directly proportional to the frequency of the light.",
    ("directly proportional to the frequency",),
    formulas=("E = h*f", "E = h*c/lamda"),
    group="Matter and light",
)

frequency = Quantity("Hz", 1e14, 1e16, "Frequency must be greater than zero.")
wavelength = Quantity("nm", 5e-8, 2e-6, "Wavelength must be greater than zero.")
photon_energy = Quantity("J", 3e-20, 3e-18, "The energy of a photon must be greater than zero.")
work_function = Quantity("eV", 2e-19, 1.2e-18, "The work function must be greater than zero.")
kinetic_energy = Quantity(
    "J",
    1e-21,
    4e-16,
    "Kinetic energy cannot be negative: type zero at the threshold, else a value above zero.",
    over=None,
)
electron_speed = Quantity(
    "m·s⁻¹", 1e3, 3e6, "Enter the size of the speed: zero or more.", typed="m/s", over=None, result="measured"
)
stopping = Quantity(
    "V", 1e-3, 20, "Enter the size of the stopping potential: zero or more.", over=None, result="measured"
)

EV_LEFT = "You left an energy in electronvolts. Multiply by {e} to have it in joules before it goes into the formula."
WAVE_AS_FREQUENCY = "You put the wavelength in the place of the frequency. Use c/λ: the frequency is {c/lamda}."
PLAIN_PHOTON = "Light comes in small packets. The faster it swings, the more energy each packet has."
DIRECT = Relation(
    "E = h*c/lamda",
    what="Energy of one photon from the wavelength",
    why="E = hf, and the frequency of light is c/λ.",
    plain="A shorter wave swings faster, and each packet of it has more energy.",
    units={"E": "J", "lamda": "m"},
    quotes=(PHOTON.name,),
    said={"lamda": Said("Wavelength from the energy of one photon")},
    mistakes=(
        Mistake("wavelength-as-frequency", "E", "h*lamda", WAVE_AS_FREQUENCY, "the answer is absurdly small"),
        Mistake("electronvolts-left", "lamda", "h*c*e/E", EV_LEFT),
        Mistake(
            "frequency-for-wavelength",
            "lamda",
            "E/h",
            "You found the frequency, {E/h}. Divide {c} by it.",
        ),
    ),
)
PACKET = Relation(
    "E = h*f",
    what="Energy of one photon",
    why="The energy of a photon is directly proportional to the frequency; Planck's constant is what links them.",
    plain=PLAIN_PHOTON,
    units={"E": "J", "f": "Hz"},
    quotes=(PHOTON.name,),
    said={"f": Said("Frequency from the energy of one photon")},
    mistakes=(
        Mistake("divided", "E", "f/h", "You divided by {h}. Multiply instead: {h*f}."),
        Mistake("electronvolts-left", "f", "E/(e*h)", EV_LEFT),
        Mistake("multiplied", "f", "E*h", "You multiplied by {h}. Divide the energy by it instead: {E/h}."),
    ),
)
WAVE = Relation(
    "c = f*lamda",
    what="Frequency and wavelength of light",
    why="Light travels one wavelength in one period, at the speed of light: c = fλ.",
    plain="Long waves swing slowly, short waves fast; all light is equally fast.",
    units={"f": "Hz", "lamda": "m"},
    mistakes=(
        Mistake("multiplied", "f", "c*lamda", "You multiplied. The frequency is {c/lamda}: divide {c} by {lamda}."),
        Mistake("multiplied", "lamda", "c*f", "You multiplied. The wavelength is {c/f}: divide {c} by {f}."),
        Mistake("upside-down", "f", "lamda/c", "You turned the fraction over. Divide {c} by {lamda}."),
    ),
)
IN_EV = Relation(
    "E_eV = E/e",
    what="The energy in electronvolts",
    why="One electronvolt is the energy that an electron gains across one volt, so as many joules as e has coulombs.",
    plain="A smaller unit, so that the numbers are easy to say.",
    units={"E_eV": "eV"},
    marks=SA,
    mistakes=(
        Mistake(
            "multiplied",
            "E_eV",
            "E*e",
            "You multiplied by {e}. An electronvolt is a very small part of a joule: divide {E} by {e}.",
        ),
    ),
)


def in_electronvolts(name: str, words: str, other: str = "E_eV") -> Part:
    """The part that gives an energy in electronvolts. name, other: of its value before and after; words: "this …"."""
    law = replace(IN_EV.renamed(E=name, E_eV=other), units={other: "eV"})
    return Part(f"{name}-in-eV", "calculate", f"Give {words} in electronvolts.", (law.step(other),))
