"""The direction of an induced current by opposing the change: a magnet that comes to a coil, leaves it or rests.

Lenz's law, and the right-hand grip rule for the poles of a coil: seen from in front of an end, the current runs
anticlockwise round a north pole. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.coils import end_pole, magnet_and_coil
from calc.model.answers import Point
from calc.model.questions import Choice, Data, Part, Plan, Question, Values
from calc.topics.electrodynamics.emf import FINAL_ONLY, INDUCED
from calc.topics.electrodynamics.laws import FARADAY, LENZ, change_time, turns
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import boxes, state

change_size = Quantity("Wb", 1e-6, 1, "Give the size of the change, above zero.")
POLE = Choice("pole", "Pole next to the coil", (("N", "north pole"), ("S", "south pole")))
MOVES = Choice(
    "moves",
    "The magnet",
    (("towards", "moves towards the coil"), ("away", "moves away from the coil"), ("still", "is held still")),
)
SIDE = Choice("side", "It is", (("right", "on the right of the coil"), ("left", "on the left of the coil")))
NAMES = {"N": "north", "S": "south"}
BY_CHANGE = replace(INDUCED, mistakes=tuple(one for one in INDUCED.mistakes if one.say != FINAL_ONLY))
SIZED = Part(
    "emf", "calculate", "Calculate the size of the average emf while the flux changes.", (BY_CHANGE.step("epsilon"),)
)
STORIES = {
    "towards": (
        "A bar magnet on the {side} of a coil is pushed towards it, its {pole} pole first.",
        "A trolley carries a bar magnet towards a fixed coil. The magnet is on the {side} of the coil, and its {pole}"
        " pole points at the coil.",
        "A learner moves the {pole} pole of a magnet towards the {side}-hand end of a coil.",
    ),
    "away": (
        "A bar magnet on the {side} of a coil is pulled away from it. Its {pole} pole is next to the coil.",
        "A trolley carries a bar magnet away from a fixed coil. The magnet is on the {side} of the coil, and its {pole}"
        " pole points at the coil.",
        "A learner moves the {pole} pole of a magnet away from the {side}-hand end of a coil.",
    ),
    "still": (
        "A bar magnet is held still on the {side} of a coil. Its {pole} pole is next to the coil.",
        "A trolley with a bar magnet stands still on the {side} of a fixed coil, and the {pole} pole of the magnet"
        " points at the coil.",
        "A learner holds the {pole} pole of a magnet still at the {side}-hand end of a coil.",
    ),
}
NOTHING = (
    Part(
        "nothing",
        "explain",
        "Does a current flow? Give a reason.",
        points=(
            Point("No current flows.", 1, ("No current",)),
            Point("The flux through the coil does not change, so no emf is induced.", 1, ("does not change",)),
        ),
    ),
    Part(
        "ways",
        "explain",
        "Name two ways of inducing a larger emf in this coil with the same magnet once it moves.",
        points=(
            Point("Move the magnet faster.", 1, ("faster",)),
            Point("Use a coil with more turns.", 1, ("more turns",)),
        ),
    ),
)


def moving(data: Data) -> tuple[Part, ...]:
    """How the flux changes, which pole opposes that, which way the current flows, and where its energy comes from."""
    picked = data.choices
    comes, side = picked["moves"] == "towards", picked["side"]
    end = end_pole(picked["pole"], picked["moves"])
    round_ = "anticlockwise" if end == "N" else "clockwise"
    front = "down" if (end == "N") == (side == "right") else "up"
    change = "increases" if comes else "decreases"
    opposes = "repels" if comes else "attracts"

    def drawn(v: Values) -> Figure:
        return magnet_and_coil(picked["pole"], picked["moves"], side, answer=True)

    return (
        Part(
            "change",
            "explain",
            "How does the magnetic flux through the coil change? Give a reason.",
            points=(
                Point(f"The size of the flux {change}.", 1, (change,)),
                Point(
                    "The field of the magnet is stronger close to it, and the magnet comes closer."
                    if comes
                    else "The field of the magnet is weaker far from it, and the magnet leaves.",
                    1,
                    ("stronger" if comes else "weaker",),
                ),
            ),
        ),
        Part(
            "end",
            "explain",
            "Which pole does the end of the coil next to the magnet become? Give a reason.",
            points=(
                Point(f"The induced current opposes the change, so the coil {opposes} the magnet.", 1, (opposes,)),
                Point(f"The end next to the magnet becomes a {NAMES[end]} pole.", 1, (f"{NAMES[end]} pole",)),
            ),
        ),
        Part(
            "current",
            "draw",
            "Draw the direction of the induced current on the front wires of the coil, and give it as seen from the"
            " magnet.",
            points=(
                Point(f"Arrows on the front wires point {front}.", 1, (front,)),
                Point(f"Seen from the magnet, the current flows {round_}.", 1, (round_,)),
            ),
            figure=drawn,
        ),
        Part(
            "energy",
            "explain",
            "Where does the electrical energy come from?",
            points=(
                Point("Whoever moves the magnet does work against the force of the coil on it.", 1, ("does work",)),
                Point("This work becomes electrical energy.", 1, ("electrical energy",)),
            ),
        ),
    )


BOXES = (
    turns("N", "Number of turns", "", "300; 100 200 400; 150 250 360"),
    change_size("DeltaPhi", "Change in flux (size)", "", "2 mWb; 1 2 4 5; 1,5 3,5", unit="mWb"),
    change_time("Deltat", "Time it takes", "", "0,5 s; 0,2 0,4 0,5; 0,25 0,6"),
)
SIZE = "The size of the flux through the coil changes by {DeltaPhi} in {Deltat}."


def plan(data: Data) -> Plan:
    """State the rule; then what follows from the motion."""
    picked = data.choices
    story = data.pick(*STORIES[picked["moves"]]).format(side=picked["side"], pole=NAMES[picked["pole"]])
    later = " Later the magnet is moved." if picked["moves"] == "still" else ""
    told = f"{later} {SIZE.format(**data.said)}"
    return Plan(
        story=(
            f"{story} The coil has {data.said['N']} turns, and its ends are joined through a sensitive ammeter.{told}"
        ),
        parts=(state(LENZ), *(NOTHING if picked["moves"] == "still" else moving(data)), SIZED),
        values=dict(data.values),
        scene=lambda v: magnet_and_coil(picked["pole"], picked["moves"], picked["side"]),
        notes=(
            "Right hand: the fingers curl as the current flows, and the thumb points to the north pole of the coil.",
        ),
    )


DIRECTION = Question(
    key="direction",
    title="Which way the induced current flows",
    plan=plan,
    **boxes(POLE, MOVES, SIDE, *BOXES),
    laws=(LENZ.name, FARADAY.name),
    since=6,
)
