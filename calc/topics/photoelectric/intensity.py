"""Intensity and frequency: photons a second from the power of the light, electrons a second, saturation current.

N = P/E with E = hc/λ; n = N/k, where one photon in k frees an electron; I = ne. Marks: common practice, no
source.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import cast

from calc.figures import Figure
from calc.figures.photo import photocell
from calc.language.quantities import parse_quantity
from calc.model.answers import Mark, Point
from calc.model.questions import Choice, Data, Mistake, Part, Values
from calc.model.relations import Relation
from calc.topics.photoelectric.laws import DIRECT, EFFECT, EV_LEFT, PHOTON, photon_energy, wavelength
from calc.topics.photoelectric.misstatements import FASTER, FASTER_HERE, FREES_MORE, FREES_MORE_HERE
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import Limit, declare

MORE = (
    "Never more electrons than photons: each photon frees at most one electron. Check the power, the wavelength and the"
    " current."
)
light_power = Quantity("mW", 1e-9, 100, "Power must be greater than zero.")
rate = Quantity("s⁻¹", 1e6, 1e22, "A number a second must be greater than zero.", typed="/s")
photons_each = Quantity(
    "",
    1,
    1e8,
    "Never more electrons than photons: one photon at least for each electron, so type 1 or more.",
    over=0.999999,
    help="1 or more",
)
photocurrent = Quantity("µA", 1e-12, 1, "Current must be greater than zero.", typed="µA", result="measured")
ARRIVING = Relation(
    "N = P/E",
    what="Photons that arrive in one second",
    why="The power is the energy that arrives in a second; divided by the energy of one photon it is their number.",
    plain="How many packets make up all that arrives.",
    units={"N": "s⁻¹", "P": "W", "E": "J"},
    mistakes=(
        Mistake("multiplied", "N", "P*E", "You multiplied. Divide the power by the energy of one photon: {P/E}."),
        Mistake("upside-down", "N", "E/P", "You turned the fraction over. Divide {P} by {E}."),
        Mistake("electronvolts-left", "N", "P*e/E", EV_LEFT),
        Mistake("divided", "P", "E/N", "You divided. Multiply the energy of one photon by their number: {N*E}."),
    ),
)
FREED = Relation(
    "n = N/k",
    what="Electrons that are freed in one second",
    why="A photon frees one electron or none; most are lost as heat or reflected, and only one in k succeeds.",
    plain="Only one packet in so many does its work.",
    units={"n": "s⁻¹", "N": "s⁻¹", "k": ""},
    marks=(Mark("substitution"), Mark("answer")),
    mistakes=(
        Mistake("skipped", "n", "N", "You let every photon free an electron. Divide by {k}."),
        Mistake(
            "multiplied", "n", "N*k", "You multiplied. There are never more electrons than photons: divide by {k}."
        ),
        Mistake("upside-down", "k", "n/N", "You turned the fraction over. Divide the photons by the electrons: {N/n}."),
        Mistake("divided", "N", "n/k", "You divided. There are more photons than electrons: multiply by {k}."),
    ),
)
CURRENT = Relation(
    "I = n*e",
    what="Saturation current",
    why="The current is the charge that passes in a second: every freed electron reaches the collector and carries e.",
    plain="Count the electrons; each carries the same small charge.",
    units={"I": "A", "n": "s⁻¹"},
    mistakes=(
        Mistake("divided", "I", "n/e", "You divided by {e}. Multiply: each electron carries {e}."),
        Mistake("multiplied", "n", "I*e", "You multiplied by {e}. Divide the current by it: {I/e}."),
    ),
)
CHANGE = Choice(
    "change",
    "Explain what happens when",
    (
        ("brighter", "the light is made brighter, of the same frequency"),
        ("photons-fixed", "the frequency is raised, with as many photons a second"),
        ("power-fixed", "the frequency is raised, at the same intensity"),
    ),
    besides=True,
)
BRIGHTER = "The intensity is raised while the frequency stays the same, above the threshold."
EFFECTS = {
    "brighter": Part(
        "change",
        "explain",
        f"{BRIGHTER} Explain what happens to the current and to the maximum kinetic energy of the electrons.",
        points=(
            Point("More photons arrive per second.", 1, ("more photons",)),
            Point("More electrons are ejected per second.", 1, ("more electrons",)),
            Point("So the current increases.", 1, ("current increases",)),
            Point(
                "Photons of the same energy leave the maximum kinetic energy unchanged: intensity counts photons,"
                " frequency sets energy.",
                1,
                ("energy unchanged",),
            ),
        ),
        misstatements=(FASTER_HERE, FREES_MORE),
    ),
    "photons-fixed": Part(
        "change",
        "explain",
        "The frequency is raised while as many photons arrive per second as before. Explain what happens to the maximum"
        " kinetic energy of the electrons and to the saturation current.",
        points=(
            Point("Each photon has more energy (E = hf), while the work function is the same.", 1, ("more energy",)),
            Point("So the maximum kinetic energy increases.", 1, ("kinetic energy increases",)),
            Point(
                "As many photons free as many electrons per second: the saturation current stays the same.",
                1,
                ("current stays the same",),
            ),
        ),
        misstatements=(FASTER, FREES_MORE_HERE),
    ),
    "power-fixed": Part(
        "change",
        "explain",
        "The frequency is raised while the intensity stays the same. Explain what happens to the maximum kinetic energy"
        " of the electrons and to the saturation current.",
        points=(
            Point(
                "Each photon has more energy, so the maximum kinetic energy increases.",
                1,
                ("kinetic energy increases",),
            ),
            Point("The same power is carried by fewer photons per second.", 1, ("fewer photons",)),
            Point(
                "With the same share of photons, fewer electrons are ejected and the saturation current decreases.",
                1,
                ("current decreases",),
            ),
        ),
        misstatements=(FASTER, FREES_MORE_HERE),
    ),
}
QUANTITIES = (
    light_power("P", "Power of the light", "Light with a power of {} falls on the metal.", "3 mW; 2 5 8; 1,5 4,5 7,5"),
    wavelength(
        "lamda",
        "Wavelength of the light",
        "Its wavelength is {}.",
        "250 nm; 240 300 360; 215 285 345",
        former=("lambda",),
    ),
    photon_energy("E", "Energy of one photon", "Each photon has an energy of {}.", "?; 6e-19 8e-19; 5,5e-19 9,5e-19"),
    rate(
        "N",
        "Photons that arrive in one second",
        "In one second {} photons arrive.",
        "?; 2e15 5e15; 1,5e15 7,5e15",
        ask="Calculate how many photons arrive in one second.",
    ),
    photons_each(
        "k",
        "Photons for each freed electron",
        "Of every {} photons one frees an electron.",
        "50; 20 40 80; 25 64 125",
        ask="Calculate how many photons there are for each freed electron.",
    ),
    rate(
        "n",
        "Electrons freed in one second",
        "In one second {} electrons leave the metal.",
        "?; 2e13 5e13; 1,5e13 7,5e13",
        ask="Calculate how many electrons are freed in one second.",
    ),
    photocurrent("I", "Saturation current", "The saturation current is {}.", "?; 8 12 16; 5,5 10,5 18,5"),
)
PRACTISED = {
    "I": "P lamda k",
    "N": "P lamda",
    "n": "P lamda k",
    "P": "I k lamda",
    "k": "I P lamda",
    "E": "P I k",
    "lamda": "P I k",
}


def scene(v: Values) -> Figure:
    """The photocell with its meter."""
    return photocell()


def later(data: Data, values: Values) -> tuple[Part, ...]:
    """What a change of the light does."""
    return (EFFECTS[data.choices["change"]],)


DECLARED = declare(
    "intensity",
    "Intensity, frequency and current",
    (DIRECT, ARRIVING, FREED, CURRENT),
    openings=(
        "Light above the threshold frequency falls on a photocell; its supply pulls every electron to the collector.",
        "The cathode of a photocell is lit, and the supply is so strong that no electron turns back.",
        "Light of one colour, above the threshold frequency, frees electrons from a metal; all of them are collected.",
    ),
    given=QUANTITIES,
    limits=(Limit("1.000001 - n/N", MORE), Limit("k - 0.999999", MORE)),
    unfit={"k": MORE},
    states=(EFFECT,),
    laws=(PHOTON,),
    constants=("h", "c", "e"),
    choices=(CHANGE,),
    later=later,
    scene=scene,
    practised=PRACTISED,
    asks="I",
    notes=("A photocurrent is small because only few of the photons free an electron.",),
    since=6,
)


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """What is given for the unknown; where the photon follows from power and current, a power that suits one."""
    given = DECLARED.adjust(typed, chance, level) if DECLARED.adjust else typed
    if not all(given[name] for name in ("P", "I", "k")):
        return given
    current, each = (parse_quantity(str(given[name]), unit).value for name, unit in (("I", "A"), ("k", "")))
    volts = (3.5, 4.0, 4.5, 5.0, 5.5)[int(5 * cast(Random, chance).random())]
    return {**given, "P": f"{1e3 * current * each * volts:.2g} mW".replace(".", ",")}


INTENSITY = replace(DECLARED, adjust=practise)
