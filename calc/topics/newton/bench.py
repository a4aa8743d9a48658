"""A whole question: a toolbox on a bench, pulled by what hangs; forces, both equations, a string that breaks.

The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures.connected import over_an_edge
from calc.model.answers import Mark, Point
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import Check, Data, Part, Plan, Question, Refusal
from calc.model.relations import Relation
from calc.topics.newton.edge import HANGS, STAYS, both, diagrams
from calc.topics.newton.pairs import AT_ONCE, OTHER_BODY, PLAIN_ONE, friction, masses, sizes
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import KINETIC, SECOND
from calc.topics.shared.quantities import friction_coefficient
from calc.working.declaring import Mistake, boxes, state
from calc.working.working import measure

QUANTITIES = (
    *masses("the toolbox", "the bag", "5 kg; 4 5 6 8; 3,5 4,5 6,5", "3 kg; 3 4 5; 2,8 3,6 4,4"),
    friction_coefficient("mu", "Coefficient of kinetic friction", "", "0,3; 0,2 0,25 0,3; 0,18 0,24 0,28"),
)
RUBS = replace(friction("f", "m1"), what="Friction on the toolbox")
SLOWS = Relation(
    "f = m1*a_1",
    what="Use Newton's second law for the toolbox alone",
    why="Without the string only friction acts along the bench. It acts against the motion, to the left.",
    units={"a_1": "m·s⁻²"},
    plain=PLAIN_ONE,
    quotes=(SECOND.name,),
    directions={"a_1": LEFT_RIGHT.of("left")},
    mistakes=(
        Mistake(
            "as-before", "a_1", "a", "You kept the acceleration of before. The string has gone: use {f} and {m1} alone."
        ),
        Mistake(
            "both-masses", "a_1", "f/(m1 + m2)", "You divided by both masses. The toolbox is alone now: divide by {m1}."
        ),
        Mistake(
            "free-fall",
            "a_1",
            "g",
            "You gave the toolbox the acceleration of free fall. The bench carries it: use {f}.",
        ),
    ),
)


def falls(data: Data) -> Part:
    """The part on the bag just after the break."""
    g = measure(data.settings.constants()["g"], "m·s⁻²", data.settings.style, data=True).text
    return Part(
        "falls",
        "explain",
        "While they move the string breaks. Give the acceleration of the bag just afterwards, with a reason.",
        points=(
            Point("Only its weight acts on the bag.", 1, ("only its weight",)),
            Point(f"Its acceleration is g, {g} downwards.", 1, ("g", "downwards")),
        ),
    )


HEAVIER = Part(
    "heavier",
    "explain",
    "The string is mended and more is put into the bag, so that they start as before but with a larger mass in the bag."
    " Explain whether the acceleration and the tension become larger or smaller.",
    points=(
        Point(
            "A larger part of the whole mass drives them: the acceleration becomes larger.",
            1,
            ("acceleration becomes larger",),
        ),
        Point("Friction and the mass of the toolbox are what they were.", 1, ("friction",)),
        Point("T = m₁a + f, so the tension becomes larger.", 1, ("tension becomes larger",)),
    ),
)


def plan(data: Data) -> Plan:
    """State, diagram, friction, both equations, the break, the toolbox afterwards, a heavier bag."""
    v = data.values
    if v["m2"] <= v["mu"] * v["m1"]:
        raise Refusal("m2" if data.has("m2") else None, STAYS)
    said = data.said
    _, _, rows, guide = diagrams(data)[0]
    pull = Part(
        "motion",
        "calculate",
        "Calculate the acceleration of the two and the tension in the string.",
        (both(fewer=True).steps()[0], replace(HANGS.step("T"), marks=(Mark("substitution"), Mark("answer")))),
        also=("a",),
    )
    return Plan(
        story=data.pick(
            f"In a school workshop a toolbox of {said['m1']} stands on a level bench. A light string runs from it to"
            f" the right over a light pulley without friction and carries a bag of bolts of {said['m2']}.",
            f"On the level floor of a loft a toolbox of {said['m1']} is tied to a light string that runs to the right"
            f" over a smooth wheel at a hatch; a bag of {said['m2']} hangs from the string.",
            f"A toolbox of {said['m1']} lies on a level workbench. From a light string over a pulley without friction"
            f" at the right-hand end of the bench hangs a bag of sand of {said['m2']}.",
        )
        + f" The coefficient of kinetic friction under the toolbox is {said['mu']}. They are let go, and the bag moves"
        " down.",
        parts=(
            state(SECOND),
            free_body("draw", "the toolbox", rows, (), data, "Free-body diagram of the toolbox", guide, sizes),
            Part("friction", "calculate", "Calculate the friction on the toolbox.", (RUBS.step("f"),)),
            pull,
            falls(data),
            Part(
                "slows",
                "calculate",
                "The toolbox slides on along the bench. Calculate its acceleration after the string has broken.",
                (SLOWS.step("a_1"),),
            ),
            HEAVIER,
        ),
        values=dict(v),
        scene=lambda v: over_an_edge(),
        checks=(
            Check(AT_ONCE, "a = (m2*g - mu*m1*g)/(m1 + m2)"),
            Check(OTHER_BODY, "T = m1*(a + mu*g)"),
        ),
        notes=(FBD_RULES,),
    )


BENCH = Question(
    key="bench",
    title="A toolbox on a bench",
    **boxes(*QUANTITIES),
    plan=plan,
    laws=(SECOND.name, KINETIC.name),
    constants=("g",),
    scenario=True,
    since=4,
)
