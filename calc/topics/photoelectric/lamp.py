"""A whole question: the light of a gas lamp, from the levels of its atoms to a photocell and its stopping potential.

The set-up and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.levels import energy_levels
from calc.figures.photo import photocell
from calc.model.answers import Point
from calc.model.questions import Check, Data, Part, Plan, Question, Refusal, Values
from calc.topics.photoelectric.emission import EINSTEIN, STOPPED, WORK
from calc.topics.photoelectric.laws import DIRECT, PHOTON, THRESHOLD, WORK_FUNCTION, work_function
from calc.topics.photoelectric.levels import GAP, LINES, level
from calc.topics.photoelectric.misstatements import DARK, LIGHT
from calc.working.declaring import boxes, state

SMALL = (
    "Light of this change frees no electron: the photon has no more than the work function. Type levels that lie"
    " further apart, or a smaller work function."
)
NO_LINE = (
    "The middle level must lie between the other two: a level with a minus sign lies below zero, and −2 eV lies above"
    " −3 eV. Check all three."
)
CIRCUIT = Part(
    "circuit",
    "draw",
    "Draw a photocell in a circuit that measures the stopping potential: lamp, cathode, collector, meter and supply.",
    points=(
        Point("Light falls on the cathode inside a tube without air.", 1, ("cathode",)),
        Point("A sensitive ammeter and a supply that can be changed join cathode and collector.", 1, ("ammeter",)),
        Point("The cathode is at the positive terminal, so that electrons are held back.", 1, ("positive",)),
    ),
    figure=lambda v: photocell(against=True, title="Measuring the stopping potential"),
)
BOXES = (
    level("E_1", "Lowest level", "", "-10,4 eV; -10,6 -9,8 -9,2; -11,5 -9,6 -8,8"),
    level("E_2", "Middle level", "", "-5,5 eV; -5,3 -5 -4,7; -5,4 -4,9 -4,4"),
    level("E_3", "Highest level", "", "-3,7 eV; -3,8 -3,4 -3; -3,9 -3,3 -2,8"),
    work_function("W_0", "Work function of the cathode", "", "2,3 eV; 2,1 2,4 2,9; 1,95 2,65 3,2"),
)


def scene(v: Values) -> Figure:
    """The levels, and the change that sends out the photon."""
    return energy_levels(("E_1", "E_2", "E_3"), ((1, 0, "A"), (2, 1, "B")), title="Three energy levels of the atom")


def weaker(v: Values) -> Part:
    """Whether the photons of the smaller step free electrons."""
    enough = v["E_3"] - v["E_2"] > v["W_0"]
    first = (
        Point("Yes: the photon of B has more than the work function.", 1, ("more than the work function",))
        if enough
        else Point("No: the photon of B does not have more than the work function.", 1, ("work function",))
    )
    then = (
        Point("The electrons are slower than those of A, for less is left over.", 1, ("slower",))
        if enough
        else Point("However bright it is, each electron takes one photon only.", 1, ("one photon",))
    )
    return Part(
        "weaker",
        "explain",
        "Does the light of change B free electrons from the cathode? Compare the step with the work function.",
        points=(first, then),
        misstatements=LIGHT if enough else DARK,
    )


def plan(data: Data) -> Plan:
    """State, lines, photon, wavelength, threshold, kinetic energy, stopping potential, circuit, the other line."""
    v, said = data.values, data.said
    if not v["E_1"] < v["E_2"] < v["E_3"]:
        raise Refusal("E_2", NO_LINE)
    if v["E_2"] - v["E_1"] <= v["W_0"]:
        raise Refusal("W_0", SMALL)
    opening = data.pick(
        "A tube with a glowing gas lights the cathode of a photocell.",
        "For a night sky project the light of a gas lamp is sent onto a photocell.",
        "In a laboratory a photocell is tested with a lamp that is filled with a thin gas.",
    )
    return Plan(
        story=(
            f"{opening} The atoms of the gas have levels of {said['E_1']}, {said['E_2']} and {said['E_3']}. A is the"
            " change from the middle level to the lowest, B from the highest to the middle one. The work function of"
            f" the cathode is {said['W_0']}."
        ),
        parts=(
            state(THRESHOLD),
            LINES["emits"],
            Part("photon", "calculate", "Calculate the energy of a photon of change A.", (GAP.step("E"),)),
            Part("wave", "calculate", "Calculate its wavelength.", (DIRECT.step("lamda"),)),
            Part("threshold", "calculate", "Calculate the threshold frequency of the cathode.", (WORK.step("f_0"),)),
            Part(
                "energy",
                "calculate",
                "Calculate the maximum kinetic energy of the electrons that light of change A frees.",
                (EINSTEIN.step("E_k"),),
            ),
            Part("stop", "calculate", "Calculate the stopping potential for this light.", (STOPPED.step("V_s"),)),
            CIRCUIT,
            weaker(v),
        ),
        values=dict(v),
        scene=scene,
        checks=(Check("The stopping potential straight from the levels", "V_s = (E_2 - E_1 - W_0)/e"),),
        notes=("Levels are measured from an electron that has just left the atom, so they are negative.",),
    )


LAMP = Question(
    key="lamp",
    title="A gas lamp and a photocell",
    **boxes(*BOXES),
    plan=plan,
    constants=("h", "c", "e"),
    laws=(THRESHOLD.name, PHOTON.name, WORK_FUNCTION.name),
    scenario=True,
    since=6,
)
