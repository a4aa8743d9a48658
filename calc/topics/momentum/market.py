"""A whole question: two hand carts hook together; principle, velocity, elastic or not, force, and a softer buffer.

The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.motion import before_after, moving
from calc.model.answers import Mark, Point
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import Check, Data, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.momentum.impulse import BACKWARDS, FINAL_ALONE, SIZES
from calc.topics.momentum.join import APART, JOINED
from calc.topics.momentum.laws import ELASTIC, MOMENTUM, RATE
from calc.topics.momentum.verdict import verdict
from calc.topics.shared.quantities import mass, time, velocity
from calc.working.declaring import Mistake, boxes, state, told
from calc.working.solving import said
from calc.working.working import run

BOTH_SIDES = (Mark("formula"), Mark("substitution", 2), Mark("answer"))  # one for each side of the equation
TOGETHER = replace(JOINED.in_units(dict.fromkeys(("u1", "u2", "v"), "m·s⁻¹")), marks=BOTH_SIDES).step("v")
TOGETHER = replace(TOGETHER, direction=lambda v: LEFT_RIGHT.by_sign(v["v"], "right"))
STOPPED = Relation(
    "F_net*Deltat = m2*(v - u2)",
    what="Impulse equals change in momentum, for the second cart alone",
    why=(
        "The force of the first cart changes the momentum of the second: final minus initial. To the right is positive."
    ),
    plain="How hard it is pushed, times how long, is how much its motion changes.",
    units={"F_net": "N"},
    directions={"F_net": lambda v: LEFT_RIGHT.by_sign(v["F_net"], "right")},
    mistakes=(
        Mistake("sizes-subtracted", "F_net", "m2*(abs(v) - abs(u2))/Deltat", SIZES),
        Mistake("final-alone", "F_net", "m2*v/Deltat", FINAL_ALONE),
        Mistake(
            "backwards", "F_net", "m2*(u2 - v)/Deltat", BACKWARDS.replace("{v - u}", "{v - u2}"), turns=True, since=6
        ),
    ),
)


def words(key: str, ask: str, *points: tuple[str, ...]) -> Part:
    """A part to explain, one mark a point: its sentence, then the phrases that must be there."""
    return Part(key, "explain", ask, points=tuple(Point(told, 1, tuple(keys)) for told, *keys in points))


THIRD = words(
    "first",
    "What is the average force of the second cart on the first? Give a reason.",
    ("It has the same size and the opposite direction.", "same size", "opposite direction"),
    ("The carts act on each other: by Newton's third law the two forces are equal and opposite.", "third law"),
)
SOFTER = words(
    "buffer",
    "A buffer of soft rubber would make the contact last longer. Explain, with an equation, how this changes the force"
    " on the second cart.",
    ("The masses and velocities are the same, so the change in momentum Δp is the same.", "Δp is the same"),
    ("The time of contact Δt is longer.", "longer"),
    ("The net force is Δp/Δt, so it is smaller.", "smaller"),
)
QUANTITIES = (
    mass("m1", "Mass of the first cart", "", "120 kg; 80 100 120 150; 85 95 135"),
    velocity("u1", "Velocity of the first before", "", "2 m/s; 1,5 2 2,5 3; 1,4 2,2 2,8"),
    mass("m2", "Mass of the second cart", "", "40 kg; 40 50 60 70; 35 45 65"),
    velocity("u2", "Velocity of the second before", "", "-1 m/s; -0,5 -1 -1,2; -0,6 -0,8 -1,4"),
    time("Deltat", "Time of contact", "", "0,2 s; 0,1 0,2 0,25 0,3; 0,12 0,18 0,28"),
)


def plan(data: Data) -> Plan:
    """State, velocity, energies, force, the force on the other cart, a softer buffer."""
    if data.values["u1"] <= data.values["u2"]:
        raise Refusal("u2", APART)
    way, other = (said(data, name, told(QUANTITIES)) for name in ("u1", "u2"))
    masses, lasting = (data.said["m1"], data.said["m2"]), data.said["Deltat"]
    moves = f"is moving at {other}" if data.values["u2"] else "is at rest"
    joined = Part("velocity", "calculate", "Calculate the velocity of the carts after they have hooked.", (TOGETHER,))
    found = run(Plan("", (joined,), dict(data.values)), data.settings.constants())
    return Plan(
        story=data.pick(
            f"At a fruit market a loaded hand cart of {masses[0]} rolls freely at {way} along a level floor. A second"
            f" cart, of {masses[1]}, {moves}. The first cart, on the left, runs into it and the two hook together. The"
            f" contact lasts {lasting}.",
            "In a workshop two carts roll on a smooth level floor without friction. The first, on the left, has a mass"
            f" of {masses[0]} and moves at {way}; the second has a mass of {masses[1]} and {moves}. They collide for"
            f" {lasting} and stay coupled.",
            f"A baker's trolley of {masses[0]} rolls freely at {way} on a level floor into another of {masses[1]}, to"
            f" its right, that {moves}. In {lasting} of contact the two catch on each other and roll on as one.",
        ),
        parts=(
            state(MOMENTUM),
            joined,
            *verdict(data, found, ("u1", "u2"), ("v", "v")),
            Part(
                "force",
                "calculate",
                "Calculate the average net force on the second cart during the contact.",
                (STOPPED.step("F_net"),),
            ),
            THIRD,
            SOFTER,
        ),
        values=dict(data.values),
        scene=scene,
        checks=(IMPULSES,),
    )


IMPULSES = Check(
    "The impulses on the two carts are equal and opposite",
    "m2*(v - u2) = m1*(u1 - v)",
    "What the second gains in momentum the first loses.",
)


def scene(v: Values) -> Figure:
    """Before and after."""
    return before_after(
        [moving("1", "u_1", v["u1"]), moving("2", "u_2", v["u2"])],
        [moving("1", "v", v["v"]), moving("2", "", v["v"], joined=True)],
    )


MARKET = Question(
    "market",
    "Two carts at a market",
    plan=plan,
    **boxes(*QUANTITIES),
    laws=(MOMENTUM.name, ELASTIC.name, RATE.name),
    scenario=True,
    since=4,
)
