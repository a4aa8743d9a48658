"""Emission from a metal: hf = W₀ + E_k, W₀ = hf₀, E_k = ½mₑv², eV_s = E_k (data-sheet equations); any unknown.

Light whose photons have less than the work function frees no electron, whatever its intensity: that is worked out and
explained. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.photo import photocell
from calc.model.answers import Point
from calc.model.questions import A, Data, Input, Mistake, Part, Plan, Values
from calc.model.relations import Relation, Said
from calc.topics.photoelectric.laws import (
    DIRECT,
    EV_LEFT,
    PACKET,
    PHOTON,
    THRESHOLD,
    WAVE,
    WORK_FUNCTION,
    electron_speed,
    frequency,
    in_electronvolts,
    kinetic_energy,
    photon_energy,
    stopping,
    wavelength,
    work_function,
)
from calc.topics.photoelectric.misstatements import DARK, LIGHT
from calc.working.chain import spread
from calc.working.declaring import Limit, declare, state, told
from calc.working.solving import Situation, plan

KINETIC_NAMES = frozenset(("E_k", "v", "V_s"))
NOTHING_LEFT = (
    "The kinetic energy is at least as large as the energy of one photon, so nothing would be left to free the"
    " electron. Check both: E_k must be smaller than hf."
)
CLASSICAL = (
    "Classical formula unsuitable: at a tenth of the speed of light and above ½mv² no longer holds. Check the energies"
    " and the speed."
)
ADDED = "You added the work function. The electron pays {W_0} first: subtract it from {E}."
SKIPPED = "You left out the work function. The electron pays {W_0} first: subtract it from {E}."
PLAIN = "Part of the packet pays the way out of the metal. What is left keeps the electron moving."
EINSTEIN = Relation(
    "E = W_0 + E_k",
    what="Use hf = W₀ + E_k, where hf is the energy of one photon",
    why=(
        "One photon gives all its energy to one electron. The work function pays for leaving the metal; the rest is the"
        " maximum kinetic energy."
    ),
    plain=PLAIN,
    units={"E": "J", "W_0": "J", "E_k": "J"},
    quotes=(WORK_FUNCTION.name,),
    mistakes=(
        Mistake("added", "E_k", "E + W_0", ADDED),
        Mistake("skipped", "E_k", "E", SKIPPED),
        Mistake(
            "added",
            "W_0",
            "E + E_k",
            "You added the kinetic energy. Both come out of one photon: subtract {E_k} from {E}.",
        ),
        Mistake("skipped", "W_0", "E", "You left out the kinetic energy. Subtract {E_k} from {E}."),
        Mistake(
            "subtracted",
            "E",
            "abs(E_k - W_0)",
            "You subtracted. The photon pays for both: add {W_0} and {E_k}.",
        ),
        Mistake("skipped", "E", "E_k", "You left out the work function. The photon pays for both: add {W_0}."),
    ),
)
WORK = Relation(
    "W_0 = h*f_0",
    what="Work function and threshold frequency",
    why="A photon of the threshold frequency has just the work function: it frees an electron and leaves nothing over.",
    plain="The smallest packet that is enough.",
    units={"W_0": "J", "f_0": "Hz"},
    quotes=(THRESHOLD.name,),
    mistakes=(
        Mistake("electronvolts-left", "f_0", "W_0/(e*h)", EV_LEFT),
        Mistake("divided", "W_0", "f_0/h", "You divided by {h}. Multiply: the work function is {h*f_0}."),
        Mistake("multiplied", "f_0", "W_0*h", "You multiplied by {h}. Divide the work function by it: {W_0/h}."),
    ),
)
LONGEST = Relation(
    "W_0 = h*c/lamda_0",
    what="Work function and threshold wavelength",
    why="The threshold wavelength belongs to the threshold frequency, c/λ₀; longer waves free no electron.",
    plain="The longest wave whose packets are still enough.",
    units={"W_0": "J", "lamda_0": "m"},
    quotes=(THRESHOLD.name,),
    mistakes=(
        Mistake(
            "wavelength-as-frequency",
            "W_0",
            "h*lamda_0",
            "You put the wavelength in the place of the frequency. Use c/λ: multiply {h} by {c/lamda_0}.",
            "the answer is absurdly small",
        ),
        Mistake("electronvolts-left", "lamda_0", "h*c*e/W_0", EV_LEFT),
    ),
)
THRESHOLD_WAVE = replace(WAVE.renamed(f="f_0", lamda="lamda_0"), what="Threshold frequency and threshold wavelength")
KINETIC = Relation(
    "E_k = 1/2*m_e*v^2",
    what="Kinetic energy and speed of the fastest electrons",
    why="E_k is the maximum: electrons from deeper in the metal lose more on their way out and are slower.",
    plain="The more energy is left over, the faster the electron.",
    units={"E_k": "J", "v": "m·s⁻¹"},
    dropped={"v": "A speed is a size, so the negative root is dropped."},
    mistakes=(
        Mistake("half-forgotten", "v", "sqrt(E_k/m_e)", "You left out the ½ in ½mv². Double {E_k} before the root."),
        Mistake(
            "root-forgotten",
            "v",
            "2*E_k/m_e",
            "You stopped at {v^2}. Take its square root.",
            "the answer is larger than the speed of light",
        ),
        Mistake("electronvolts-left", "v", "sqrt(2*E_k/(e*m_e))", EV_LEFT),
        Mistake("half-forgotten", "E_k", "m_e*v^2", "You left out the ½ in ½mv². Halve your answer."),
        Mistake("not-squared", "E_k", "1/2*m_e*v", "You left out the square. Square {v} in ½mv²."),
    ),
)
STOPPED = Relation(
    "E_k = e*V_s",
    what="Kinetic energy and stopping potential",
    why="The stopping potential holds back the fastest electrons: crossing it would take all of their kinetic energy.",
    plain="A hill just too high for the fastest.",
    units={"E_k": "J", "V_s": "V"},
    mistakes=(
        Mistake("divided", "E_k", "V_s/e", "You divided by {e}. Multiply: the energy is {e*V_s}."),
        Mistake("multiplied", "V_s", "E_k*e", "You multiplied by {e}. Divide the energy by it: {E_k/e}."),
    ),
)
SHORT = Relation(
    "E_m = W_0 - E",
    what="What is missing",
    why="The photon must bring at least the work function. Subtract what it brings.",
    plain="The packet is too small; this is by how much.",
    units={"E_m": "J"},
    marks=A,
)
ONE = Said(marks=A)  # beside the comparison, energies earn their answer only
NONE_EMITTED = Part(
    "none",
    "explain",
    "Are electrons emitted? Explain, and say what happens if the light is made much brighter.",
    points=(
        Point(
            "No: the energy of one photon is smaller than the work function (the frequency is below the threshold"
            " frequency), so there is no emission, and no kinetic energy, speed or stopping potential to be found.",
            1,
            ("no emission",),
        ),
        Point(
            "Brighter light brings more photons a second, but each electron takes one photon only: there is no"
            " emission, whatever the intensity.",
            1,
            ("one photon", "whatever the intensity"),
        ),
    ),
    misstatements=DARK,
)
JUST = Part(
    "just",
    "explain",
    "The light has just the threshold frequency. What does that mean for the electrons?",
    points=(
        Point("Emission is just possible.", 1, ("just possible",)),
        Point("The whole photon pays for leaving the metal, so the kinetic energy is zero.", 1, ("zero",)),
    ),
    misstatements=LIGHT,
)
QUANTITIES = (
    wavelength(
        "lamda",
        "Wavelength of the light",
        "The light has a wavelength of {}.",
        "400 nm; 200 250 310; 180 240 330",
        former=("lambda",),
    ),
    frequency(
        "f", "Frequency of the light", "The light has a frequency of {}.", "?; 9e14 1,2e15 1,5e15; 8,5e14 1,1e15 1,6e15"
    ),
    photon_energy("E", "Energy of one photon", "Each photon has an energy of {}.", "?; 6e-19 8e-19; 5,5e-19 9,5e-19"),
    work_function(
        "W_0",
        "Work function",
        "The work function of the metal is {}.",
        "3,2 x 10^-19 J; 2,1 2,9 3,7 4,6 eV; 1,9 3,1 4,8 eV",
        unit="J",
        unfit=NOTHING_LEFT,
    ),
    frequency(
        "f_0",
        "Threshold frequency",
        "The threshold frequency of the metal is {}.",
        "?; 5e14 7e14 9e14; 4,6e14 8,2e14 9,8e14",
        unfit=NOTHING_LEFT,
    ),
    wavelength(
        "lamda_0",
        "Threshold wavelength",
        "The threshold wavelength of the metal is {}.",
        "?; 340 450 560 nm; 310 480 590 nm",
        former=("lambda_0",),
    ),
    kinetic_energy(
        "E_k",
        "Maximum kinetic energy of the electrons",
        "The maximum kinetic energy of the emitted electrons is {}.",
        "?; 1e-19 1,5e-19 2e-19; 0,9e-19 1,6e-19 2,4e-19",
        result="measured",
        ask="Calculate the maximum kinetic energy of the emitted electrons.",
    ),
    electron_speed(
        "v",
        "Speed of the fastest electrons",
        "The fastest emitted electrons have a speed of {}.",
        "?; 4e5 5e5 6e5; 3,6e5 5,4e5 7,2e5",
    ),
    stopping("V_s", "Stopping potential", "The stopping potential is {}.", "?; 0,6 1,1 1,6; 0,45 0,95 1,75"),
)
OPENINGS = (
    "Light falls on the clean cathode of a photocell.",
    "A beam of one colour shines on a metal plate in a tube without air.",
    "To test a new light sensor, light is sent onto its metal surface.",
)
LAWS = (DIRECT, PACKET, WAVE, EINSTEIN, WORK, LONGEST, THRESHOLD_WAVE, KINETIC, STOPPED)
ENERGIES = (DIRECT, PACKET, WORK, LONGEST)
PRACTISED = {
    "E_k": "lamda W_0",
    "v": "f W_0",
    "V_s": "lamda f_0",
    "W_0": "lamda V_s",
    "f_0": "lamda E_k",
    "lamda_0": "f V_s",
    "f": "W_0 v",
    "lamda": "W_0 E_k",
    "E": "f_0 E_k",
}


def scene(v: Values) -> Figure:
    """The photocell; the supply holds the electrons back where the stopping potential is told or asked."""
    return photocell(against="V_s" in v)


def no_emission(v: Values) -> Figure:
    """The photocell without an electron that leaves."""
    return photocell(emits=False)


def later(data: Data, values: Values) -> tuple[Part, ...]:
    """At the threshold what that means; else an energy that was asked for, in electronvolts."""
    if values.get("E_k") == 0:
        return (JUST,)
    for name, other, words in (("E_k", "K_eV", "this kinetic energy"), ("W_0", "W_eV", "this work function")):
        if name in data.asked_names:
            return (in_electronvolts(name, words, other),)
    return ()


SOLVED = declare(
    "emission",
    "Emission from a metal",
    LAWS,
    openings=OPENINGS,
    given=QUANTITIES,
    limits=(Limit("0.1*c - v", CLASSICAL, at="v"),),
    states=(WORK_FUNCTION,),
    laws=(PHOTON, THRESHOLD),
    constants=("h", "c", "e", "m_e"),
    later=later,
    scene=scene,
    practised=PRACTISED,
    asks="E_k",
    notes=("The energy hf is never smaller than E_k: no electron leaves with more than its photon had.",),
    since=6,
)
INPUTS = {one.box.name: one.box for one in QUANTITIES} | {"E_m": Input("E_m", "Energy that is missing", "J", 0, 1)}
BELOW: Situation = replace(
    told(QUANTITIES),
    relations=(
        *(replace(law, said=dict.fromkeys(law.units, ONE)) for law in ENERGIES),
        SHORT,
    ),
    openings=OPENINGS,
    ask={"E_m": "Compare the energy of one photon with the work function: calculate how much energy is missing."},
    stated=(state(WORK_FUNCTION),),
    later=lambda data, values: (NONE_EMITTED,),
    scene=no_emission,
    notes=("Below the threshold frequency there is no emission, whatever the intensity.",),
)


def planned(data: Data) -> Plan:
    """As the laws have it; where the photons are too small for an emission that is asked about, why there is none."""
    if data.asked_names and KINETIC_NAMES.issuperset(data.asked_names) and not KINETIC_NAMES & data.values.keys():
        steps = [step for law in (*ENERGIES, WAVE, THRESHOLD_WAVE) for step in law.steps()]
        found = spread(data.values, steps, data.settings.constants())
        if {"E", "W_0"} <= found.keys() and found["E"] < found["W_0"] * (1 - 1e-9):
            return plan(replace(data, asked="E_m"), BELOW, INPUTS)
    return SOLVED.plan(data)


EMISSION = replace(SOLVED, plan=planned)
