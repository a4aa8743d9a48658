"""Generators and motors: the parts in a drawing, what turns, what commutates, and what makes the emf larger.

AC generator: slip rings; DC generator and DC motor: split-ring commutator. Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.machines import machine
from calc.model.answers import Point
from calc.model.questions import SA, Choice, Data, Mistake, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.electrodynamics.laws import GENERATOR, MOTOR
from calc.topics.electrodynamics.peak import PERIOD, REVOLUTIONS, revolutions
from calc.topics.shared.quantities import time
from calc.working.declaring import boxes, state

KIND = Choice(
    "kind",
    "The machine",
    (("ac", "AC generator"), ("dc", "DC generator"), ("motor", "DC motor")),
)
STORIES = {
    "ac": (
        "A wind wheel drives the coil of an AC generator.",
        "The drawing shows a small AC generator that is turned by a water wheel.",
        "For a science fair learners build an AC generator and turn it with a crank.",
    ),
    "dc": (
        "A wind wheel drives the coil of a DC generator.",
        "The drawing shows a small DC generator that is turned by a water wheel.",
        "For a science fair learners build a DC generator and turn it with a crank.",
    ),
    "motor": (
        "A battery drives the coil of a small DC motor.",
        "The drawing shows a DC motor that turns a toy crane.",
        "For a science fair learners build a DC motor and join it to a battery.",
    ),
}
JOINTS = {
    "ac": (
        "slip rings",
        (
            Point(
                "Each ring stays joined to one end of the coil and keeps touching its brush.", 1, ("keeps touching",)
            ),
            Point("So the current outside alternates as it does in the coil.", 1, ("alternates",)),
        ),
    ),
    "dc": (
        "split-ring commutator",
        (
            Point(
                "It changes over the ends of the coil each half-turn, as the emf turns round.",
                1,
                ("each half-turn",),
            ),
            Point("So the current outside always flows in one direction.", 1, ("one direction",)),
        ),
    ),
    "motor": (
        "split-ring commutator",
        (
            Point("It reverses the current in the coil each half-turn.", 1, ("reverses", "each half-turn")),
            Point("So the coil keeps turning in one direction.", 1, ("one direction",)),
        ),
    ),
}
CHANGES = {
    True: (
        Point("It converts electrical energy into mechanical energy.", 1, ("into mechanical energy",)),
        Point("The magnetic field exerts forces on the sides of the coil while a current flows in it.", 1, ("forces",)),
    ),
    False: (
        Point("It converts mechanical energy into electrical energy.", 1, ("into electrical energy",)),
        Point("The coil turns, so the flux through it changes and an emf is induced.", 1, ("induced",)),
    ),
}
LARGER = {
    True: Part(
        "larger",
        "explain",
        "Name three changes that make the motor turn with a larger turning effect.",
        points=(
            Point("A larger current.", 1, ("larger current",)),
            Point("More turns, or a coil with a larger area.", 1, ("More turns", "larger area")),
            Point("A stronger magnet.", 1, ("stronger magnet",)),
        ),
    ),
    False: Part(
        "larger",
        "explain",
        "Name three changes that give a larger emf.",
        points=(
            Point("Turn the coil faster.", 1, ("faster",)),
            Point("More turns, or a coil with a larger area.", 1, ("More turns", "larger area")),
            Point("A stronger magnet.", 1, ("stronger magnet",)),
        ),
    ),
}
POSITION = Part(
    "position",
    "explain",
    "The plane of the coil is parallel to the field, as drawn. How large are the flux through it and the emf, compared"
    " with other positions?",
    points=(
        Point("The flux is zero.", 1, ("zero",)),
        Point("The emf is at its largest, for the flux changes fastest here.", 1, ("largest",)),
    ),
)
FORCES = Part(
    "forces",
    "explain",
    "Give the directions of the forces on the two sides of the coil that lie next to the poles, as drawn. Explain why"
    " they differ.",
    points=(
        Point("Down on the side next to the north pole, up on the other side.", 1, ("Down", "up")),
        Point("The currents in the two sides have opposite directions, so the forces do as well.", 1, ("opposite",)),
    ),
)
ALTERNATING_INSTEAD = Part(
    "other",
    "explain",
    "Which part would have to be replaced, and by what, to make an AC generator of this machine?",
    points=(Point("The split-ring commutator, by two slip rings.", 1, ("slip rings",)),),
)
DIRECT = Part(
    "other",
    "explain",
    "Which part would have to be replaced, and by what, to make a DC generator of this machine?",
    points=(Point("The slip rings, by a split-ring commutator.", 1, ("split-ring commutator",)),),
)


REVERSALS = Relation(
    "z = 2*n*t/60",
    what="Two reversals in each turn",
    why="The current in the coil reverses each half-turn, so twice in a turn, and n turns take 60 seconds.",
    plain="Two for each turn, so many turns each second.",
    units={"z": ""},
    marks=SA,
    mistakes=(
        Mistake(
            "half-turns", "z", "n*t/60", "You counted whole turns. The current reverses each half-turn: multiply by 2."
        ),
    ),
)
BOXES = (
    revolutions("n", "Turns in a minute", "", "600; 150 300 600 900; 120 350 750 980"),
    time("t", "Time it runs", "", "20 s; 10 20 30 60; 15 25 45"),
)


def plan(data: Data) -> Plan:
    """The parts, the energy, the rings, what turns, position or forces, a larger effect, its rate, another machine."""
    kind = data.choices["kind"]
    motor = kind == "motor"
    joint, does = JOINTS[kind]
    what = "motor" if motor else "generator"

    def scene(v: Values) -> Figure:
        return machine(kind, named=False, title=f"A {what} with lettered parts")

    def named(v: Values) -> Figure:
        return machine(kind, title=f"A {what} and its parts")

    return Plan(
        story=f"{data.pick(*STORIES[kind])} Its coil makes {data.said['n']} turns in a minute.",
        parts=(
            Part(
                "parts",
                "draw",
                "Name the parts A, B, C and D.",
                points=(
                    Point("A is the magnet, B the coil.", 1, ("magnet", "coil")),
                    Point(f"C: {joint}.", 1, (joint,)),
                    Point("D: brushes.", 1, ("brushes",)),
                ),
                figure=named,
            ),
            Part("energy", "explain", "Which energy is converted into which, and how?", points=CHANGES[motor]),
            Part("rings", "explain", "What is part C for?", points=does),
            Part(
                "turning",
                "explain",
                "Which of the parts A to D turn, and which are at rest?",
                points=(
                    Point(f"The coil (B) and the {joint} (C) turn with the axle.", 1, (joint, "turn")),
                    Point("The magnet (A) and the brushes (D) are at rest.", 1, ("rest",)),
                ),
            ),
            FORCES if motor else POSITION,
            LARGER[motor],
            Part(
                "period", "calculate", "Calculate how long each turn takes.", (REVOLUTIONS.step("f"), PERIOD.step("T"))
            ),
            Part(
                "reversals",
                "calculate",
                f"Calculate how many times the current in the coil reverses in {data.said['t']}.",
                (REVERSALS.step("z"),),
            ),
            *((DIRECT,) if kind == "ac" else (ALTERNATING_INSTEAD,) if kind == "dc" else (state(MOTOR),)),
        ),
        values=dict(data.values),
        scene=scene,
        notes=("Slip rings: alternating current. Split-ring commutator: direct current, and every DC motor.",),
    )


MACHINES = Question(
    key="machines",
    title="Generator and motor: parts and reasons",
    plan=plan,
    **boxes(KIND, *BOXES),
    laws=(GENERATOR.name, MOTOR.name),
    since=6,
)
