"""A whole question: a canister that slides on ice bursts in two; velocity, energy gained, forces, and how they part.

The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.motion import Moving, before_after
from calc.model.answers import Mark
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import Check, Data, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.momentum.impulse import STRUCK
from calc.topics.momentum.laws import ISOLATED, MOMENTUM, RATE
from calc.topics.momentum.market import words
from calc.topics.momentum.spring import ENERGY, SPRUNG
from calc.topics.shared.quantities import distance, mass, time, velocity
from calc.working.declaring import Mistake, boxes, state, told
from calc.working.solving import said

BEHIND = (
    "They would pass through each other: the burst drives the first part, on the left, to the left. Its velocity"
    " afterwards must be less than before; check both and their signs."
)
BURST = replace(
    SPRUNG.in_units(dict.fromkeys(("u", "v1", "v2"), "m·s⁻¹")),
    why=(
        "The forces of the burst are equal, opposite and inside the system; no net external force acts along the ice."
        " To the right is positive."
    ),
    marks=(Mark("formula"), Mark("substitution", 2), Mark("answer")),  # one for each side of the equation
)
SECOND = replace(BURST.step("v2"), direction=lambda v: LEFT_RIGHT.by_sign(v["v2"], "right"))
GAINED = replace(
    ENERGY,
    what="Kinetic energy gained: after minus before",
    why="Add the kinetic energies of the two parts and subtract that of the whole canister before.",
    plain="What the two have gained in energy of motion came out of the squeezed gas.",
    mistakes=(
        Mistake(
            "before-left-out",
            "DeltaE_k",
            "1/2*m1*v1^2 + 1/2*m2*v2^2",
            "You gave the kinetic energy after the burst. What is gained is after minus before: subtract"
            " {1/2*(m1 + m2)*u^2}.",
        ),
        Mistake(
            "subtracted",
            "DeltaE_k",
            "1/2*m2*v2^2 - 1/2*m1*v1^2 - 1/2*(m1 + m2)*u^2",
            "You subtracted the kinetic energy of the first part. Energy has no direction: add that of both parts.",
        ),
    ),
)
ON_FIRST = replace(STRUCK, units={"F_net": "N"}).renamed(m="m1", v="v1")
PUSHED = replace(ON_FIRST.step("F_net"), direction=lambda v: LEFT_RIGHT.by_sign(v["F_net"], "right"))
PARTING = Relation(
    "d = (v2 - v1)*t",
    what="The distance between them grows at the difference of their velocities",
    why="Without friction both keep their velocities. Subtract the velocities with their signs.",
    plain="How fast they get apart depends on both, not on one of them.",
    units={"t": "s"},
    mistakes=(
        Mistake(
            "velocities-added",
            "t",
            "d/(v2 + v1)",
            "You added the velocities. The distance grows at their difference, signs included: use {v2 - v1}.",
        ),
        Mistake(
            "second-alone",
            "t",
            "d/v2",
            "You used the second part alone. The first moves too: use the difference of the velocities, {v2 - v1}.",
        ),
        Mistake(
            "first-alone",
            "t",
            "d/abs(v1)",
            "You used the first part alone. The second moves too: use the difference of the velocities, {v2 - v1}.",
        ),
    ),
)
SOURCE = words(
    "source",
    "The kinetic energy of the system has changed. Has its total momentum changed too? Explain both.",
    ("No net external force acts, so the total momentum stays the same.", "no net external force", "stays the same"),
    (
        "The forces inside the system do work on both parts: energy that was stored in the gas becomes kinetic energy.",
        "stored",
        "work",
    ),
)
THIRD = words(
    "second-force",
    "Compare the average force on the second part during the burst with the force on the first. Give a reason.",
    ("It has the same size and the opposite direction.", "same size", "opposite direction"),
    ("The parts push each other: by Newton's third law the two forces are equal and opposite.", "third law"),
)
QUANTITIES = (
    mass("m1", "Mass of the first part", "", "2 kg; 1 2 3 4; 1,2 2,6 3,4"),
    mass("m2", "Mass of the second part", "", "6 kg; 5 6 8 10; 4,5 5,5 7,5"),
    velocity("u", "Velocity before the burst", "", "1,5 m/s; 0 1 1,5 2 -1; 0 1,2 1,8 -1,4"),
    velocity("v1", "Velocity of the first part afterwards", "", "-6 m/s; -4 -5 -6 -8; -3,5 -5,5 -7,5"),
    time("Deltat", "Time the burst lasts", "", "20 ms; 10 20 25 40; 15 24 35"),
    distance("d", "Distance between the parts later", "", "17 m; 12 15 18 20; 14 17 23"),
)


def plan(data: Data) -> Plan:
    """State, velocity, energy gained, where from, force, the other force, the time until they are so far apart."""
    if data.values["v1"] >= data.values["u"]:
        raise Refusal("v1", BEHIND)
    before, after = (said(data, name, told(QUANTITIES)) for name in ("u", "v1"))
    given = data.said
    slides, drifts = (f"{one} at {before}" if data.values["u"] else "is at rest" for one in ("slides", "drifts"))
    lasting = f"The burst lasts {given['Deltat']}, and just after it the first part moves at {after}."
    return Plan(
        story=data.pick(
            f"A canister of squeezed gas {slides} on the smooth ice of a lake. It bursts into two parts: the first, on"
            f" the left, of {given['m1']}, the second of {given['m2']}. {lasting}",
            f"For a film a hollow log on a level sheet of ice is filled with squeezed air. The log {slides} when it"
            f" bursts in two. The first part, on the left, has a mass of {given['m1']}, the second of {given['m2']}."
            f" {lasting}",
            f"On an air table without friction a plastic flask {drifts}. Air has been pumped into it until it bursts"
            f" in two: the first part, on the left, of {given['m1']}, and the second of {given['m2']}. {lasting}",
        ),
        parts=(
            state(MOMENTUM),
            Part("velocity", "calculate", "Calculate the velocity of the second part just after the burst.", (SECOND,)),
            Part(
                "energy",
                "calculate",
                "Calculate by how much the kinetic energy of the system changes in the burst.",
                (GAINED.step("DeltaE_k"),),
            ),
            SOURCE,
            Part(
                "force",
                "calculate",
                "Calculate the average net force on the first part during the burst.",
                (PUSHED,),
            ),
            THIRD,
            Part(
                "apart",
                "calculate",
                f"Calculate how long after the burst the two parts are {given['d']} apart.",
                (PARTING.step("t"),),
            ),
        ),
        values=dict(data.values),
        scene=scene,
        checks=(
            Check(
                "The impulses on the two parts are equal and opposite",
                "m2*(v2 - u) = m1*(u - v1)",
                "What the second gains in momentum the first loses.",
            ),
            Check(
                "The energy gained once more, from how fast the parts leave each other",
                "DeltaE_k = 1/2*m1*m2/(m1 + m2)*(v2 - v1)^2",
                "It is the same for whoever slides along with the canister.",
            ),
        ),
    )


def scene(v: Values) -> Figure:
    """In one piece, and the two parts."""
    return before_after(
        [
            Moving("1", "u", abs(v["u"]), v["u"] >= 0, "box"),
            Moving("2", "", abs(v["u"]), v["u"] >= 0, "box", joined=True),
        ],
        [
            Moving("1", "v_1", abs(v["v1"]), v["v1"] >= 0, "box"),
            Moving("2", "v_2", abs(v["v2"]), v["v2"] >= 0, "box"),
        ],
    )


CANISTER = Question(
    "canister",
    "A canister bursts on ice",
    plan=plan,
    **boxes(*QUANTITIES),
    laws=(MOMENTUM.name, ISOLATED.name, RATE.name),
    scenario=True,
    since=4,
)
