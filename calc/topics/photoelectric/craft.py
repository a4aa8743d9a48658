"""A whole question: a metal plate of a craft in ultraviolet light; photons and electrons a second, charge, potential.

The set-up and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.photo import photocell
from calc.model.answers import Point
from calc.model.questions import Check, Data, Mistake, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.photoelectric.emission import EINSTEIN, STOPPED
from calc.topics.photoelectric.intensity import ARRIVING, FREED, light_power, photons_each
from calc.topics.photoelectric.laws import PACKET, PHOTON, WORK_FUNCTION, frequency, work_function
from calc.topics.photoelectric.misstatements import FASTER_HERE, FREES_MORE
from calc.topics.shared.quantities import time
from calc.working.declaring import boxes, state

BELOW = (
    "Light of this frequency frees no electron from the plate: its photons have less than the work function. Type a"
    " larger frequency."
)
CHARGE = Relation(
    "Q = n*t*e",
    what="The charge that leaves with the electrons",
    why="Each electron takes the charge e along, and n of them leave in each second.",
    plain="So many a second, for so many seconds, each with its small charge.",
    units={"Q": "C"},
    mistakes=(
        Mistake("time-forgotten", "Q", "n*e", "You left out the time. Multiply by the seconds, {t}."),
        Mistake("charge-forgotten", "Q", "n*t", "You counted the electrons. Multiply by the charge of each, {e}."),
    ),
)
POSITIVE = Part(
    "sign",
    "explain",
    "What sign does the charge of the plate have after a while? Give a reason.",
    points=(
        Point("It becomes positive.", 1, ("positive",)),
        Point("Electrons, which are negative, have left it.", 1, ("electrons",)),
    ),
)
ENDS = Part(
    "ends",
    "explain",
    "After a while not a single electron gets away any more, although the light still shines. Explain why.",
    points=(
        Point("The positive plate attracts the electrons back.", 1, ("attracts",)),
        Point(
            "At the stopping potential getting away would take all of the maximum kinetic energy.",
            1,
            ("maximum kinetic energy",),
        ),
    ),
)
TWICE = Part(
    "twice",
    "explain",
    "Light of the same frequency but twice the power falls on an equal plate. What changes in the last potential, and"
    " what in the time it takes to get there?",
    points=(
        Point("The potential is the same, for the maximum kinetic energy is unchanged.", 1, ("same", "unchanged")),
        Point("More electrons leave per second, so it is reached sooner.", 1, ("more electrons", "sooner")),
    ),
    misstatements=(FASTER_HERE, FREES_MORE),
)
BOXES = (
    frequency("f", "Frequency of the light", "", "1,6 x 10^15 Hz; 1,3e15 1,5e15 1,7e15; 1,25e15 1,45e15 1,85e15"),
    work_function("W_0", "Work function of the plate", "", "4,2 eV; 3,6 4,2 4,8; 3,4 4,1 4,9"),
    light_power("P", "Power of the light", "", "5 mW; 2 4 8; 1,5 3,5 6,5"),
    photons_each("k", "Photons for each freed electron", "", "80; 20 40 80; 25 64 125"),
    time("t", "Time", "", "2 s; 3 5 8; 2,5 4,5 7,5"),
)


def scene(v: Values) -> Figure:
    """The same metal in a photocell that leads every electron away."""
    return photocell(title="The metal of the plate in a photocell")


def plan(data: Data) -> Plan:
    """State, kinetic energy, potential, sign, photons, electrons, charge, the end, twice the power."""
    v, said = data.values, data.said
    if data.settings.constant("h") * v["f"] <= v["W_0"]:
        raise Refusal("f", BELOW)
    opening = data.pick(
        "Far out, ultraviolet light of a star falls on a metal plate of a craft that nothing else touches.",
        "On a moon without air a loose metal plate lies in ultraviolet light on dust that does not conduct.",
        "In a test chamber without air a metal plate hangs on an insulating thread in ultraviolet light.",
    )
    return Plan(
        story=(
            f"{opening} Take light of one frequency, {said['f']}, with a power of {said['P']} on the plate. The work"
            f" function of the metal is {said['W_0']}. Of every {said['k']} photons one frees an"
            " electron that gets away at first."
        ),
        parts=(
            state(WORK_FUNCTION),
            Part(
                "energy",
                "calculate",
                "Calculate the maximum kinetic energy of the electrons.",
                (PACKET.step("E"), EINSTEIN.step("E_k")),
            ),
            Part(
                "photons",
                "calculate",
                "Calculate how many photons arrive in one second.",
                (ARRIVING.step("N"),),
            ),
            Part(
                "electrons",
                "calculate",
                "Calculate how many electrons leave in one second at first.",
                (FREED.step("n"),),
            ),
            Part(
                "charge",
                "calculate",
                "The same light falls on this metal in the photocell of the diagram, which leads every electron away."
                f" Calculate the size of the charge that leaves the metal in {said['t']}.",
                (CHARGE.step("Q"),),
            ),
            POSITIVE,
            Part(
                "potential",
                "calculate",
                "Calculate the potential of the plate, against its surroundings, at which no electron gets away.",
                (STOPPED.step("V_s"),),
            ),
            ENDS,
            TWICE,
        ),
        values=dict(v),
        scene=scene,
        checks=(
            Check("The potential straight from the frequency", "V_s = (h*f - W_0)/e"),
            Check("The charge straight from the power", "Q = P*t*e/(h*f*k)"),
        ),
        notes=("There are never more electrons than photons.",),
    )


CRAFT = Question(
    key="craft",
    title="A metal plate in ultraviolet light",
    **boxes(*BOXES),
    plan=plan,
    constants=("h", "e"),
    laws=(WORK_FUNCTION.name, PHOTON.name),
    scenario=True,
    since=6,
)
