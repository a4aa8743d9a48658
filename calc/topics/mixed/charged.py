"""A whole question: two charged gliders let go side by side; force, acceleration, momentum, and energy.

The set-up and its numbers are our own. Coulomb's law, Newton's second law, and m₁v₁ + m₂v₂ = 0. Marks: common practice,
no source.
"""

from __future__ import annotations

from random import Random
from typing import cast

from calc.figures import Figure
from calc.figures.motion import moving
from calc.model.answers import Point
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import Check, Data, Mistake, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.momentum.laws import MOMENTUM
from calc.topics.momentum.two_bodies import mass_of, parting
from calc.topics.shared.electrostatics import COULOMB, POINT_CHARGES
from calc.topics.shared.motion_laws import SECOND
from calc.topics.shared.quantities import charge, length, velocity
from calc.working.declaring import boxes, state, told
from calc.working.solving import said
from calc.working.working import measure

UNLIKE = (
    "Unlike charges attract, so the two would not move apart; without charge they would stay at rest. Give both a"
    " charge of the same sign."
)
WAY = (
    "The first, on the left, is driven to the left: its velocity is negative. Type it with a minus sign, such as −0,2"
    " m/s."
)
TOO_FAST = (
    "The charges cannot give so much: the two would have {} of kinetic energy, and from this distance the charges do at"
    " most {} of work, however far they go. Type a smaller speed."
)
PUSHED = Relation(
    "F = m1*a1",
    what="Newton's second law for the first",
    why="Without friction the electrostatic force is the net force. It points away from the second, to the left.",
    plain="The same push moves a light thing more than a heavy one.",
    units={"F": "N", "a1": "m·s⁻²"},
    directions={"a1": lambda v: LEFT_RIGHT.of("left")},
    quotes=(SECOND.name,),
    mistakes=(
        Mistake(
            "other-mass", "a1", "F/m2", "You divided by the mass of the second. The first is asked: divide by {m1}."
        ),
        Mistake(
            "both-masses",
            "a1",
            "F/(m1 + m2)",
            "You divided by both masses. The force on the first moves the first alone: divide by {m1}.",
        ),
        Mistake("upside-down", "a1", "m1/F", "You turned the fraction over. Divide the force by the mass: {F/m1}."),
    ),
)
APART = Relation(
    "m1*v1 + m2*v2 = 0",
    what="Total momentum afterwards equals total momentum before",
    why=(
        "Both were at rest, and the forces they exert on each other are equal and opposite, inside the system. To the"
        " right is positive."
    ),
    plain="What one gains in motion to the left, the other gains to the right.",
    units={"v1": "m·s⁻¹", "v2": "m·s⁻¹"},
    directions={"v2": lambda v: LEFT_RIGHT.by_sign(v["v2"], "right")},
    quotes=(MOMENTUM.name,),
    mistakes=(
        Mistake(
            "one-speed",
            "v2",
            "-v1",
            "You gave both the same speed. Their momenta have the same size, not their velocities: use {m1} and {m2}.",
        ),
        Mistake(
            "masses-swapped",
            "v2",
            "-m2*v1/m1",
            "You have the masses the wrong way round. Multiply each mass by its own velocity.",
        ),
    ),
)
WEAKER = Part(
    "weaker",
    "explain",
    "How does the acceleration of the first change while they move apart? Explain.",
    points=(
        Point("The distance r between the charges becomes larger.", 1, ("larger",)),
        Point("By Coulomb's law the force falls with the square of r, so it becomes smaller.", 1, ("smaller",)),
        Point("The mass stays the same, so the acceleration becomes smaller too.", 1, ("acceleration",)),
    ),
)
BOTH_KEPT = Part(
    "energy",
    "explain",
    "The total kinetic energy grows and the total momentum does not. Explain how both can be.",
    points=(
        Point("The forces are equal, opposite and inside the system, so the total momentum stays zero.", 1, ("zero",)),
        Point("Each force does work, for it acts the way its body moves: kinetic energy is gained.", 1, ("work",)),
    ),
)
QUANTITIES = (
    mass_of("first", "80 g; 60 80 100 120; 55 75 110"),
    mass_of("second", "120 g; 50 90 150; 65 85 140"),
    charge("Q1", "Charge on the first", "", "+600 nC; 400 500 600 800 -400 -500 -700; 350 450 -550 750"),
    charge("Q2", "Charge on the second", "", "+400 nC; 300 400 500 700; 250 350 650"),
    length("r", "Distance between the charges at first", "", "10 cm; 8 10 12 15; 7,5 9,5 12,5"),
    velocity("v1", "Velocity of the first, later", "", "-0,2 m/s"),
)


def kinetic(v: Values) -> float:
    """The kinetic energy of both, in J, where their momenta are opposite."""
    return 0.5 * v["m1"] * v["v1"] ** 2 * (1 + v["m1"] / v["m2"])


def refuse(data: Data) -> None:
    """What cannot be: attraction, the wrong way, and more energy than kQ₁Q₂/r, the work up to any distance."""
    v, style = data.values, data.settings.style
    if v["Q1"] * v["Q2"] <= 0:
        raise Refusal("Q2" if v["Q1"] else "Q1", UNLIKE)
    if v["v1"] >= 0:
        raise Refusal("v1", WAY)
    most = data.settings.constant("k") * v["Q1"] * v["Q2"] / v["r"]
    if kinetic(v) >= most:
        raise Refusal("v1", TOO_FAST.format(*(measure(one, "J", style).text for one in (kinetic(v), most))))


def plan(data: Data) -> Plan:
    """State, force, acceleration, how it changes, the other velocity, momentum against energy."""
    refuse(data)
    given = data.said
    later = said(data, "v1", told(QUANTITIES))
    charges = f"charges of {given['Q1']} and {given['Q2']}"
    return Plan(
        story=data.pick(
            f"Two gliders are held on a level air track: the first, on the left, of {given['m1']}, the second of"
            f" {given['m2']}. They carry small spheres with {charges}, in that order, whose centres are {given['r']}"
            " apart. Both are let go at the same moment.",
            "On a level table without friction two light carts are held; each carries a charged ball. The first, on the"
            f" left, has a mass of {given['m1']}, the second of {given['m2']}. In that order the balls have {charges},"
            f" and their centres are {given['r']} apart. Both carts are let go together.",
            f"Two toy sledges float on a level sheet of air: the first, on the left, of {given['m1']}, the second of"
            f" {given['m2']}. Charged beads on them, with {charges} in that order, are {given['r']} apart. Both sledges"
            " are released at the same time.",
        ),
        parts=(
            state(COULOMB),
            Part(
                "force",
                "calculate",
                "Calculate the size of the electrostatic force on each of them at that moment.",
                (POINT_CHARGES.step("F"),),
            ),
            Part(
                "acceleration",
                "calculate",
                "Calculate the acceleration of the first at that moment.",
                (PUSHED.step("a1"),),
            ),
            WEAKER,
            state(MOMENTUM, "state-momentum"),
            Part(
                "velocity",
                "calculate",
                f"A little later the first moves at {later}. Calculate the velocity of the second then.",
                (APART.step("v2"),),
            ),
            BOTH_KEPT,
        ),
        values=dict(data.values),
        scene=scene,
        checks=(
            Check(
                "The two momenta have the same size",
                "m1*v1 = -(m2*v2)",
                "They point in opposite directions, so their sum is zero.",
            ),
        ),
    )


def scene(v: Values) -> Figure:
    """At rest, and moving apart later."""
    return parting(v, [moving("1", "", 0.0), moving("2", "", 0.0)])


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Like charges, and a later velocity that the charges can give."""
    draw = cast(Random, random)

    def number(name: str) -> float:
        return float(str(typed[name]).split()[0].replace(",", ".").replace("−", "-"))

    like = f"{'-' if number('Q1') < 0 else '+'}{str(typed['Q2']).lstrip('+-−')}"
    m1, m2 = number("m1") / 1000, number("m2") / 1000
    most = 8.9e9 * abs(number("Q1") * number("Q2")) * 1e-18 / (number("r") / 100)
    fastest = (2 * most / (m1 * (1 + m1 / m2))) ** 0.5
    speed = fastest * (0.6 + 0.3 * draw.random())
    return {**typed, "Q2": like, "v1": f"-{speed:.2g} m/s".replace(".", ",")}


CHARGED = Question(
    "charged",
    "Two charged gliders",
    plan=plan,
    **boxes(*QUANTITIES),
    laws=(MOMENTUM.name, COULOMB.name, SECOND.name),
    constants=("k",),
    adjust=practise,
    scenario=True,
    since=4,
)
