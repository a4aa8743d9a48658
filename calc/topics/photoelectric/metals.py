"""Two metals in one light: which of them emits electrons, and with what kinetic energy.

Work functions: CRC Handbook of Chemistry and Physics, table "Electron Work Function of the Elements" (polycrystalline
samples), quoted from memory. Marks: common practice, no source.
"""

from __future__ import annotations

from random import Random
from typing import cast

from calc.figures import Figure
from calc.figures.photo import photocell
from calc.language.quantities import parse_quantity
from calc.model.answers import Point
from calc.model.questions import A, Check, Choice, Data, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.photoelectric.emission import EINSTEIN, WORK
from calc.topics.photoelectric.laws import DIRECT, PHOTON, THRESHOLD, WORK_FUNCTION, wavelength
from calc.topics.photoelectric.misstatements import DARK, LIGHT
from calc.working.declaring import boxes, state

METALS = {  # work functions in electronvolts
    "caesium": 1.95,
    "potassium": 2.29,
    "sodium": 2.36,
    "calcium": 2.87,
    "zinc": 3.63,
    "magnesium": 3.66,
    "lead": 4.25,
}
SOURCE = (
    "Work functions: CRC Handbook of Chemistry and Physics, “Electron Work Function of the Elements”, from memory. They"
    " change with how clean the surface is."
)
LONGEST = 1.24e-6  # metres times electronvolts: hc/e
SAME = "Pick two different metals, so that there is something to compare."
OPTIONS = tuple((name, name) for name in METALS)
BOXES = (
    Choice("first", "First metal", OPTIONS),
    Choice("second", "Second metal", OPTIONS),
    wavelength("lamda", "Wavelength of the light", "", "390 nm; 310 380 450; 295 345 515", former=("lambda",)),
)
IN_JOULES = Relation(
    "W_0 = w*e",
    what="The work function in joules",
    why="One electronvolt is e joules: multiply the number of electronvolts by e before anything else.",
    plain="Change to the unit that all formulas use.",
    units={"W_0": "J"},
    marks=A,
)
FIRST, SECOND = (WORK.renamed(W_0=f"W_{n}", f_0=f"f_{n}") for n in (1, 2))


def scene(v: Values) -> Figure:
    """The photocell in which both are tested, without a word on what happens."""
    return photocell(emits=None, title="The photocell in which both metals are tested")


def emits(n: int, name: str, enough: bool) -> Part:
    """Whether a metal emits electrons."""
    said = (
        Point("Yes: the energy of one photon is larger than the work function.", 1, ("larger than the work function",))
        if enough
        else Point(
            "No: the energy of one photon is smaller than the work function, and brighter light does not help.",
            1,
            ("smaller than the work function",),
        )
    )
    ask = f"Does {name} emit electrons in this light? Give a reason."
    return Part(f"emits-{n}", "explain", ask, points=(said,), misstatements=LIGHT if enough else DARK)


def plan(data: Data) -> Plan:
    """State, photon, and for each metal its threshold, whether it emits, and the kinetic energy if it does."""
    sheet, names = data.settings, (data.choices["first"], data.choices["second"])
    if names[0] == names[1]:
        raise Refusal("second", SAME)
    photon = sheet.constant("h") * sheet.constant("c") / data.values["lamda"]
    works = [METALS[name] * sheet.constant("e") for name in names]
    parts = list[Part]()
    for n, (name, work, law) in enumerate(zip(names, works, (FIRST, SECOND), strict=True), 1):
        ask = f"Calculate the threshold frequency of {name}."
        joules = IN_JOULES.renamed(W_0=f"W_{n}", w=f"w{n}")
        parts += [
            Part(f"threshold-{n}", "calculate", ask, (joules.step(f"W_{n}"), law.step(f"f_{n}"))),
            emits(n, name, photon > work),
        ]
        if photon > work:
            kinetic = EINSTEIN.renamed(W_0=f"W_{n}", E_k=f"E_k{n}")
            ask = f"Calculate the maximum kinetic energy of the electrons from {name}."
            parts.append(Part(f"energy-{n}", "calculate", ask, (kinetic.step(f"E_k{n}"),)))
    told = ", ".join(f"{name} {METALS[name]:.2f} eV".replace(".", ",") for name in names)
    opening = data.pick(
        "Two metals are tried as the cathode of a photocell, one after the other.",
        "For a light sensor one of two metals is to be picked.",
        "A class lights two clean metal plates in a tube without air.",
    )
    return Plan(
        story=f"{opening} Their work functions are: {told}. The light has a wavelength of {data.said['lamda']}.",
        parts=(
            state(WORK_FUNCTION),
            Part("photon", "calculate", "Calculate the energy of one photon.", (DIRECT.step("E"),)),
            *parts,
        ),
        values={**data.values, **{f"w{n}": METALS[name] for n, name in enumerate(names, 1)}},
        scene=scene,
        checks=tuple(
            Check(f"The photon of the threshold frequency of {name} has its work function", f"W_{n} = h*f_{n}")
            for n, name in enumerate(names, 1)
        ),
        notes=(SOURCE,),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Never the same metal twice, and one of the two at least emits electrons."""
    names = list(METALS)
    first, second = str(typed["first"]), str(typed["second"])
    if first == second:
        second = names[(names.index(first) + 2) % len(names)]
    wave = parse_quantity(str(typed["lamda"]), "nm").value
    if min(METALS[first], METALS[second]) * wave > LONGEST:
        first = names[int(2 * cast(Random, random).random())]
    return {**typed, "first": first, "second": second}


COMPARED = Question(
    key="metals",
    title="Two metals in one light",
    **boxes(*BOXES, example={"first": "sodium", "second": "zinc"}),
    plan=plan,
    constants=("h", "c", "e"),
    laws=(WORK_FUNCTION.name, PHOTON.name, THRESHOLD.name),
    adjust=practise,
    since=6,
)
