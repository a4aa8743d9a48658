"""Energy levels of an atom: ΔE = hf between two of them, any quantity; emission and absorption; why there are lines.

E = hf and c = fλ: data-sheet equations. Levels are measured from the ionised atom, so bound ones are negative. Marks:
common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.levels import energy_levels
from calc.model.answers import Mark, Point
from calc.model.questions import Choice, Data, Mistake, Part, Values
from calc.model.relations import Relation, Said
from calc.topics.photoelectric.laws import (
    DIRECT,
    PACKET,
    PHOTON,
    WAVE,
    in_electronvolts,
    photon_energy,
)
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import Limit, boxes, state, told
from calc.working.solving import Situation, question

level = Quantity("eV", 1e-20, 1e-16, signed=True, help="with its sign", typed="eV")
line_frequency = Quantity("Hz", 1e13, 1e17, "Frequency must be greater than zero.")
line_wavelength = Quantity("nm", 1e-9, 2e-5, "Wavelength must be greater than zero.")
ORDER = (
    "The upper level must lie above the lower one: a level with a minus sign lies below zero, and −2 eV lies above"
    " −3 eV. Check both."
)
GAP = Relation(
    "E = E_2 - E_1",
    what="The photon has the difference of the two levels",
    why="Energy is conserved: what the atom loses or gains is the energy of one photon, E₂ − E₁ = hf.",
    plain="Like stairs: the packet is as large as the step.",
    units={"E": "J", "E_2": "J", "E_1": "J"},
    said={
        "E_2": Said("The upper level is higher by the energy of the photon"),
        "E_1": Said("The lower level is lower by the energy of the photon"),
    },
    marks=(Mark("formula"), Mark("substitution"), Mark("answer")),
    mistakes=(
        Mistake(
            "added",
            "E",
            "abs(E_2 + E_1)",
            "You added the two levels. Subtract: the photon has {E_2 - E_1}; minus a negative level is plus.",
        ),
        Mistake(
            "one-level",
            "E",
            "abs(E_1)",
            "You took one level alone. The atom does not reach zero: subtract {E_1} from {E_2}.",
        ),
        Mistake("turned", "E_2", "E_1 - E", "You subtracted the photon. Add {E} to the lower level {E_1}."),
        Mistake("turned", "E_1", "E_2 + E", "You added the photon. Subtract {E} from the upper level {E_2}."),
    ),
)
WAY = Choice(
    "way",
    "The atom",
    (("emits", "sends a photon out (emission)"), ("absorbs", "takes a photon in (absorption)")),
)
LINES = {
    "emits": Part(
        "lines",
        "explain",
        "Explain why a hot gas of such atoms sends out a spectrum of separate lines.",
        points=(
            Point("The atoms have certain energy levels only.", 1, ("energy levels",)),
            Point(
                "When an electron falls to a lower level, a photon with the difference of the two levels is sent out.",
                1,
                ("lower level", "difference"),
            ),
            Point("So only certain frequencies occur, and each is a bright line.", 1, ("certain frequencies",)),
        ),
    ),
    "absorbs": Part(
        "lines",
        "explain",
        "White light passes through a cool gas of such atoms. Explain why there are dark lines in its spectrum.",
        points=(
            Point("The atoms have certain energy levels only.", 1, ("energy levels",)),
            Point(
                "An electron rises to a higher level by taking in a photon with the difference of the two levels.",
                1,
                ("higher level", "difference"),
            ),
            Point(
                "These frequencies are taken out of the light (and sent out again in all directions), so there is a"
                " dark line for each: the same lines that the hot gas sends out.",
                1,
                ("dark line",),
            ),
        ),
    ),
}
BOXES = (
    level(
        "E_1",
        "Lower level",
        "The lower of the two levels is {}.",
        "-5,4 eV; -6,3 -5,7 -5,2; -9,6 -8,7 -7,4",
    ),
    level("E_2", "Upper level", "The upper of the two levels is {}.", "-3 eV; -3,1 -2,6 -2,2; -4,9 -4,2 -3,6"),
    photon_energy(
        "E", "Energy of the photon", "The photon has an energy of {}.", "?; 3e-19 4e-19 5e-19; 4,5e-19 6e-19"
    ),
    line_frequency(
        "f", "Frequency of the light", "The light has a frequency of {}.", "?; 5e14 6e14 7e14; 7,5e14 9,5e14"
    ),
    line_wavelength(
        "lamda",
        "Wavelength of the light",
        "The light has a wavelength of {}.",
        "?; 410 480 590; 230 310 375",
        former=("lambda",),
    ),
)
ASKED = {"E": "this energy", "E_1": "this level", "E_2": "this level"}
EV = {"E": "E_eV", "E_1": "L_eV", "E_2": "U_eV"}
OPENINGS = {
    "emits": (
        "In an atom of a thin hot gas an electron falls from one energy level to a lower one.",
        "A gas in a discharge tube glows: electrons in its atoms fall from one level to a lower one.",
        "An excited atom returns to a lower energy level and sends out one photon.",
    ),
    "absorbs": (
        "An atom of a cool gas takes in one photon, and an electron rises to a higher level.",
        "Light passes through a thin cool gas; an atom takes in one photon and reaches a higher level.",
        "An atom in the outer layer of a star takes in one photon and reaches a higher level.",
    ),
}


def situation(data: Data) -> Situation:
    """The two levels, told for an atom that sends a photon out or takes one in."""
    way = data.choices["way"]

    def scene(v: Values) -> Figure:
        change = (1, 0, "hf") if way == "emits" else (0, 1, "hf")
        return energy_levels(("E_1", "E_2"), (change,))

    def later(data: Data, values: Values) -> tuple[Part, ...]:
        asked = (name for name in ("E", "E_1", "E_2") if name in data.asked_names)
        return (*(in_electronvolts(name, ASKED[name], EV[name]) for name in asked), LINES[way])

    given = told(BOXES)
    return Situation(
        relations=(GAP, DIRECT, PACKET, WAVE),
        openings=OPENINGS[way],
        tell=given.tell,
        ask=given.ask,
        stated=(state(PHOTON),),
        later=later,
        limits=(Limit("E_2 - E_1", ORDER, at="E_2"),),
        unfit={"E": ORDER},
        scene=scene,
        notes=("Zero is the energy of an electron that has just left the atom, so bound levels are negative.",),
    )


PRACTISED = {"E": "E_1 E_2", "f": "E_1 E_2", "lamda": "E_1 E_2", "E_1": "E_2 lamda", "E_2": "E_1 f"}


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Two data that lead to what is asked."""
    asked = next((name for name in PRACTISED if not typed[name]), "f")
    kept = PRACTISED[asked].split()
    return {name: "" if name in PRACTISED and name not in kept else text for name, text in typed.items()}


LEVELS = question(
    "levels",
    "Energy levels and spectral lines",
    situation,
    **boxes(WAY, *BOXES),
    constants=("h", "c", "e"),
    laws=(PHOTON.name,),
    adjust=practise,
    asks="f",
    since=6,
)
