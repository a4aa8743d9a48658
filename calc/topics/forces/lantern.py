"""A whole question: a lantern on two strings; equilibrium, forces, both tensions, the triangle, a flatter string.

The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from math import degrees

from calc.figures.surfaces import on_two_strings
from calc.model.answers import Point
from calc.model.questions import Check, Data, Part, Plan, Question, Refusal
from calc.topics.forces.strings import ACROSS, LEVEL, SINES, WEIGHT, pair, tilt, triangle
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import EQUILIBRIUM, FIRST
from calc.topics.shared.quantities import mass
from calc.working.declaring import boxes, state

QUANTITIES = (
    mass("m", "Mass of the lantern", "", "8 kg; 4 6 8 12; 3,5 7,5 9,5"),
    tilt("alpha", "Angle of the left string", "", "30°; 20 25 30 35; 22 28 33"),
    tilt("beta", "Angle of the right string", "", "50°; 50 55 60 65; 48 58 62"),
)
FLATTER = Part(
    "flatter",
    "explain",
    "Later the lantern hangs in the middle, so that both strings make the same angle with the horizontal. Then both are"
    " shortened, and the angle becomes smaller. Explain how the tensions change.",
    points=(
        Point("The vertical parts of the tensions still carry the same weight.", 1, ("same weight",)),
        Point("At a smaller angle a smaller part of each tension is vertical.", 1, ("smaller part",)),
        Point("So both tensions become larger.", 1, ("larger",)),
    ),
)
NEVER = Part(
    "never",
    "explain",
    "Can the strings be pulled so hard that both are perfectly level? Give a reason.",
    points=(
        Point("No: level tensions have no vertical part.", 1, ("no vertical part",)),
        Point("Nothing would carry the weight, so the net force would not be zero.", 1, ("weight",)),
    ),
)


def plan(data: Data) -> Plan:
    """State, diagram, both tensions, the triangle, flatter strings, level strings."""
    v, said = data.values, data.said
    if not v["alpha"] + v["beta"]:
        raise Refusal("beta", LEVEL)
    rows = (
        ("w", "w", "the pull of the lantern, straight down", 270.0),
        ("T_1", "T1", "the tension of the left string, along it, away from the knot", 180 - degrees(v["alpha"])),
        ("T_2", "T2", "the tension of the right string, along it, away from the knot", degrees(v["beta"])),
    )
    return Plan(
        story=data.pick(
            f"For a street festival a lantern of {said['m']} hangs at rest from a knot of two light strings between two"
            " houses.",
            f"Over a stage a lantern of {said['m']} hangs at rest from a knot; one light string leads from it to the"
            " left, one to the right.",
            f"Between two masts of a harbour a lantern of {said['m']} hangs still from a knot in the middle of two"
            " light strings.",
        )
        + f" The left string rises at {said['alpha']} to the horizontal, the right string at {said['beta']}.",
        parts=(
            state(EQUILIBRIUM),
            free_body("draw", "the knot", rows, (), data),
            Part("weight", "calculate", "Calculate the weight of the lantern.", (WEIGHT.step("w"),)),
            Part(
                "left",
                "calculate",
                "Calculate the tension in the left string.",
                pair("T1", "T2", "alpha", "beta").steps(),
            ),
            Part("right", "calculate", "Calculate the tension in the right string.", (ACROSS.step("T2"),)),
            Part(
                "triangle",
                "draw",
                "Draw the triangle of the three forces, not to scale.",
                points=(
                    Point("The three arrows stand head to tail, each with its label.", 1, ("head to tail",)),
                    Point("The triangle closes: the last head meets the first tail.", 1, ("closes",)),
                ),
                figure=triangle,
            ),
            FLATTER,
            NEVER,
        ),
        values=dict(v),
        units={"alpha": "°", "beta": "°"},
        scene=lambda values: on_two_strings(degrees(v["alpha"]), degrees(v["beta"]), load="m"),
        checks=(
            SINES,
            Check("The vertical parts carry the weight", "T1*sin(alpha) + T2*sin(beta) = m*g"),
        ),
        notes=(FBD_RULES,),
    )


LANTERN = Question(
    key="lantern",
    title="A lantern between two houses",
    **boxes(*QUANTITIES),
    plan=plan,
    laws=(EQUILIBRIUM.name, FIRST.name),
    constants=("g",),
    scenario=True,
    since=4,
)
