"""A whole question: a light barrier at a gate; work function, kinetic energy, speed, brightness, another cathode.

The set-up and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.photo import photocell
from calc.model.answers import Point
from calc.model.questions import Check, Data, Mistake, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.photoelectric.emission import EINSTEIN, KINETIC, LONGEST
from calc.topics.photoelectric.intensity import EFFECTS
from calc.topics.photoelectric.laws import DIRECT, EFFECT, PHOTON, THRESHOLD, WORK_FUNCTION, wavelength, work_function
from calc.topics.photoelectric.misstatements import DARK, LIGHT
from calc.working.declaring import boxes, state

TOO_LONG = (
    "Light of this wavelength frees no electron from the cathode: its photons have less than the work function. Type a"
    " wavelength below the threshold wavelength."
)
EQUAL = "The photons have just the work function of the other metal. Type another one, so that there is a verdict."
SPARE = Relation(
    "E_d = E - W_2",
    what="Compare the energy of one photon with the work function of the other metal",
    why="Above zero the photon has enough, below zero it has not.",
    plain="Is the packet large enough for this metal?",
    units={"E_d": "J"},
    mistakes=(
        Mistake("added", "E_d", "E + W_2", "You added. Subtract the work function {W_2} from {E} to compare the two."),
        Mistake(
            "first-metal",
            "E_d",
            "E - W_0",
            "You used the work function of the first metal. Put in that of the other one, {W_2}.",
        ),
    ),
)
BOXES = (
    wavelength("lamda_0", "Threshold wavelength of the cathode", "", "560 nm; 520 590 650; 505 575 665"),
    wavelength("lamda", "Wavelength of the light", "", "420 nm; 380 430 480; 365 415 475", former=("lambda",)),
    work_function("W_2", "Work function of another metal", "", "3,7 eV; 2,3 3,2 4,2; 2,25 3,65 4,45"),
)


def scene(v: Values) -> Figure:
    """The photocell of the barrier."""
    return photocell(title="The photocell of the barrier")


def verdict(enough: bool) -> Part:
    """Whether the other metal emits electrons."""
    said = (
        ("Yes: the energy of one photon is larger than the work function of this metal.", "larger"),
        ("The electrons leave with the energy that is left over as maximum kinetic energy.", "left over"),
    )
    if not enough:
        said = (
            ("No: the energy of one photon is smaller than the work function of this metal.", "smaller"),
            ("Brighter light would not help: each electron takes one photon only.", "one photon"),
        )
    return Part(
        "verdict",
        "explain",
        "Does the barrier work with a cathode of the other metal? Use your last answer.",
        points=tuple(Point(words, 1, (key,)) for words, key in said),
        misstatements=LIGHT if enough else DARK,
    )


def plan(data: Data) -> Plan:
    """State, work function, kinetic energy, speed, brightness, another cathode."""
    v, said, sheet = data.values, data.said, data.settings
    if v["lamda"] >= v["lamda_0"]:
        raise Refusal("lamda", TOO_LONG)
    spare = sheet.constant("h") * sheet.constant("c") / v["lamda"] - v["W_2"]
    if abs(spare) < 1e-3 * v["W_2"]:
        raise Refusal("W_2", EQUAL)
    opening = data.pick(
        "At the gate of a parking ground a beam of light falls on a photocell; a car that breaks the beam stops the"
        " current.",
        "A light barrier counts the sheep that pass a gate: each one breaks a beam of light on a photocell.",
        "The door of a lift stays open while something breaks the beam of light that falls on a photocell.",
    )
    return Plan(
        story=(
            f"{opening} The light has a wavelength of {said['lamda']}, and the threshold wavelength of the cathode is"
            f" {said['lamda_0']}."
        ),
        parts=(
            state(EFFECT),
            Part("work", "calculate", "Calculate the work function of the cathode.", (LONGEST.step("W_0"),)),
            Part(
                "energy",
                "calculate",
                "Calculate the maximum kinetic energy of the emitted electrons.",
                (DIRECT.step("E"), EINSTEIN.step("E_k")),
            ),
            Part("speed", "calculate", "Calculate the speed of the fastest electrons.", (KINETIC.step("v"),)),
            EFFECTS["brighter"],
            Part(
                "spare",
                "calculate",
                f"Another metal has a work function of {said['W_2']}. Calculate the energy of one photon less this"
                " work function, with its sign.",
                (SPARE.step("E_d"),),
            ),
            verdict(spare > 0),
        ),
        values=dict(v),
        scene=scene,
        checks=(Check("The kinetic energy straight from both wavelengths", "E_k = h*c*(1/lamda - 1/lamda_0)"),),
        notes=("The speed is far below that of light, so ½mv² holds.",),
    )


GATE = Question(
    key="gate",
    title="A light barrier at a gate",
    **boxes(*BOXES),
    plan=plan,
    constants=("h", "c", "e", "m_e"),
    laws=(EFFECT.name, PHOTON.name, WORK_FUNCTION.name, THRESHOLD.name),
    scenario=True,
    since=6,
)
