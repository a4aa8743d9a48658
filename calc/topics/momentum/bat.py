"""A whole question: a bat hits a ball back; impulse, average force, its peak, a graph, third law, a softer contact.

The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.motion import Moving, before_after
from calc.model.answers import Point
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import SA, Check, Data, Part, Plan, Question, Refusal, Step, Values
from calc.topics.momentum.impulse import CHANGED, PUSHED
from calc.topics.momentum.laws import IMPULSE, RATE
from calc.topics.momentum.market import words
from calc.topics.momentum.pulse import TRIANGLE, pulse
from calc.topics.shared.quantities import mass, time, velocity
from calc.working.declaring import Mistake, boxes, state, told
from calc.working.solving import said

BACK = (
    "The bat hits the ball back, so its velocity afterwards is the other way. Give the two velocities opposite signs."
)
NOT_LONGER = "With the sleeve the contact lasts longer. Type a longer time than without it."
AVERAGE = replace(
    PUSHED,
    units={"F_net": "N"},
    mistakes=(
        Mistake(
            "multiplied",
            "F_net",
            "Deltap*Deltat",
            "You multiplied by {Deltat}. The force is the change in momentum in each second: divide by the time.",
        ),
    ),
)
PEAK = replace(
    TRIANGLE,
    units={"F_max": "N"},
    mistakes=(
        Mistake(
            "rectangle",
            "F_max",
            "Deltap/Deltat",
            "You found the average of the force. The area of a triangle is half of height times base: double it.",
        ),
        Mistake(
            "halved",
            "F_max",
            "Deltap/(2*Deltat)",
            "You took half where it has to be doubled. The force is at its peak only for a moment: use"
            " {2*Deltap/Deltat}.",
        ),
    ),
)
SOFT = replace(
    AVERAGE.renamed(F_net="F_2", Deltat="Deltat_2"),
    what="The same impulse in a longer time",
    mistakes=(
        Mistake(
            "in-proportion",
            "F_2",
            "Deltap*Deltat_2/Deltat^2",
            "You made the force grow with the time. Force times time stays the same: divide {Deltap} by {Deltat_2}.",
        ),
        Mistake(
            "as-before",
            "F_2",
            "Deltap/Deltat",
            "You used the time without the sleeve. With it the contact lasts {Deltat_2}: divide by that.",
        ),
    ),
)


def to_the_right(step: Step) -> Step:
    """The step with the direction of what it finds, where to the right is positive."""
    return replace(step, direction=lambda v: LEFT_RIGHT.by_sign(v[step.makes], "right"))


THIRD = words(
    "bat",
    "What is the average force of the ball on the bat? Give a reason.",
    ("It has the same size and the opposite direction.", "same size", "opposite direction"),
    ("Ball and bat act on each other: by Newton's third law the two forces are equal and opposite.", "third law"),
)
SOFTER = words(
    "sleeve",
    "A sleeve of soft rubber is put over the bat. The velocities of the ball are as before, but the contact lasts"
    " longer. Explain, with an equation, how this changes the average net force on the ball.",
    ("The mass and the velocities are the same, so the change in momentum Δp is the same.", "Δp is the same"),
    ("The time of contact Δt is longer.", "longer"),
    ("The net force is Δp/Δt, so it is smaller.", "smaller"),
)
QUANTITIES = (
    mass("m", "Mass of the ball", "", "140 g; 60 80 120 150; 75 95 145"),
    velocity("u", "Velocity of the ball before", "", "15 m/s; 12 16 20 -10 -15; 11,5 17,5 -13,5"),
    velocity("v", "Velocity of the ball afterwards", "", "-25 m/s; 18 24 28 30; 17,5 21,5 26,5"),
    time("Deltat", "Time of contact", "", "8 ms; 4 5 8 10; 3,5 6,5 7,5"),
    time("Deltat_2", "Time of contact with the sleeve", "", "20 ms; 15 16 25 30; 14 18 24"),
)


def marked(v: Values) -> tuple[Point, ...]:
    """What the graph must show; the side of the axis is that of the force."""
    side = "above" if v["v"] > v["u"] else "below"
    return (
        Point("Axes labelled net force, in newtons, and time, in milliseconds or seconds.", 1, ("labelled",)),
        Point(f"Two straight lines: away from zero, then back to it, {side} the time axis.", 1, ("straight", side)),
        Point("The greatest value lies half-way through the contact, and its size is marked.", 1, ("half-way",)),
        Point("The time of contact is marked.", 1, ("time of contact",)),
    )


def story(data: Data) -> str:
    """Three tellings."""
    before, after = (said(data, name, told(QUANTITIES)) for name in ("u", "v"))
    given = data.said
    return data.pick(
        f"In a game on the beach a ball of {given['m']} flies level at {before}. A bat hits it, and it leaves the"
        f" bat level at {after}. Ball and bat touch for {given['Deltat']}. Take to the right as positive.",
        f"A machine tests bats: it shoots a ball of {given['m']} level at {before} at a bat that is swung. The ball"
        f" flies off level at {after}; the contact lasts {given['Deltat']}. Take to the right as positive.",
        f"On a school field a learner bats a ball of {given['m']}. It arrives level at {before} and leaves level at"
        f" {after}, after {given['Deltat']} of contact. Take to the right as positive.",
    )


def plan(data: Data) -> Plan:
    """State, impulse, average force, peak, graph, the force on the bat, a softer contact."""
    v = data.values
    if v["u"] * v["v"] >= 0:
        raise Refusal("v", BACK)
    if v["Deltat_2"] <= v["Deltat"]:
        raise Refusal("Deltat_2", NOT_LONGER)
    return Plan(
        story=story(data),
        parts=(
            state(RATE),
            Part(
                "impulse",
                "calculate",
                "Calculate the impulse on the ball.",
                (to_the_right(replace(CHANGED, units={"Deltap": "N·s"}).step("Deltap")),),
            ),
            Part(
                "force",
                "calculate",
                "Calculate the average net force on the ball during the contact.",
                (to_the_right(AVERAGE.step("F_net")),),
            ),
            Part(
                "peak",
                "calculate",
                "The net force grows evenly from zero for the first half of the contact and dies away evenly in the"
                " second. Calculate its greatest value.",
                (to_the_right(PEAK.step("F_max")),),
            ),
            Part(
                "graph",
                "draw",
                "Sketch a graph of this net force against time. Mark its greatest value and the time of contact.",
                points=marked(v),
                figure=pulse,
            ),
            THIRD,
            SOFTER,
            Part(
                "softer-force",
                "calculate",
                f"With the sleeve the contact lasts {data.said['Deltat_2']}. Calculate the average net force on the"
                " ball.",
                (to_the_right(replace(SOFT.step("F_2"), marks=SA)),),
            ),
        ),
        values=dict(v),
        scene=scene,
        checks=(
            Check(
                "Force times time with and without the sleeve",
                "F_net*Deltat = F_2*Deltat_2",
                "Both are the change in momentum.",
            ),
            Check("The peak is twice the average", "F_max = 2*F_net", "So it is for every triangle."),
        ),
    )


def scene(v: Values) -> Figure:
    """The ball before and after."""
    return before_after(
        [Moving("", "u", abs(v["u"]), v["u"] > 0, "ball")], [Moving("", "v", abs(v["v"]), v["v"] > 0, "ball")]
    )


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """The ball goes back the way it came."""
    size = str(typed["v"]).lstrip("-−")
    return {**typed, "v": size if str(typed["u"])[0] in "-−" else f"-{size}"}


BAT = Question(
    "bat",
    "A bat hits a ball back",
    plan=plan,
    **boxes(*QUANTITIES),
    laws=(RATE.name, IMPULSE.name),
    scenario=True,
    since=4,
    adjust=practise,
)
