"""A whole question: two bodies on one string over a pulley that hangs in a lift which accelerates.

Up is positive for the lift, whose acceleration is a_L; a is that of both relative to the lift, m₂ being the heavier:
T − m₁g = m₁(a + a_L) and m₂g − T = m₂(a − a_L). The story and its numbers are our own. Marks: common practice, no
source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures.connected import over_one_pulley
from calc.model.answers import Mark, Point
from calc.model.directions import UP_DOWN
from calc.model.questions import Check, Data, Mistake, Part, Plan, Question, Refusal
from calc.model.relations import Relation
from calc.topics.newton.lift import SLACK, accelerates
from calc.topics.newton.pairs import ONE_MASS, PLAIN_ONE, masses, put_together, sizes
from calc.topics.newton.pulley import LIGHTER, diagrams
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import SECOND
from calc.working.declaring import boxes, state, told
from calc.working.solving import said

STANDING = "You left the acceleration of the lift out. The bodies share it: put {g + a_L} for {g}."
QUANTITIES = (
    *masses("the lighter body", "the heavier body", "3 kg; 2 3 4; 1,5 2,5 3,5", "5 kg; 5 6 8; 4,5 5,5 7,5"),
    accelerates("a_L", "Acceleration of the lift", "", "1,2 m/s^2; 1,2 1,5 2 -1,2 -1,5; 0,8 1,6 -0,9 -2,2"),
)
RISES = Relation(
    "T - m1*g = m1*(a + a_L)",
    what="Use Newton's second law for the lighter body",
    why="Seen from the ground its acceleration is a + a_L upwards: it rises in the lift, and the lift carries it.",
    units={"T": "N", "m1": "kg", "a": "m·s⁻²"},
    plain=PLAIN_ONE,
    quotes=(SECOND.name,),
    mistakes=(
        Mistake("lift-left-out", "T", "m1*(g + a)", STANDING),
        Mistake(
            "its-weight",
            "T",
            "m1*g",
            "You made {T} as large as the weight. The body also accelerates: add {m1*(a + a_L)}.",
        ),
    ),
)
SINKS = Relation(
    "m2*g - T = m2*(a - a_L)",
    what="Use Newton's second law for the heavier body",
    why="It sinks in the lift, so down is positive for it; an acceleration of the lift upwards counts against that.",
    units={"T": "N", "m2": "kg", "a": "m·s⁻²"},
    plain=PLAIN_ONE,
    quotes=(SECOND.name,),
)
BOTH = put_together(
    RISES,
    SINKS,
    "a",
    "T",
    (
        Mistake("lift-left-out", "a", "g*(m2 - m1)/(m1 + m2)", STANDING),
        Mistake("one-mass", "a", "(g + a_L)*(m2 - m1)/m2", ONE_MASS),
        Mistake(
            "lift-subtracted",
            "a",
            "(g - a_L)*(m2 - m1)/(m1 + m2)",
            "You have the sign of {a_L} the wrong way round. Upwards it makes both heavier: use {g + a_L}.",
        ),
    ),
)
FROM_GROUND = Relation(
    "a_2 = a_L - a",
    what="Add the acceleration of the lift and that relative to it, with their signs",
    why="Up is positive: relative to the lift the heavier body accelerates downwards.",
    plain="Whoever stands on the ground sees the lift move and the body move in it.",
    units={"a_2": "m·s⁻²"},
    directions={"a_2": lambda v: UP_DOWN.by_sign(v["a_2"], "up")},
    mistakes=(
        Mistake("added", "a_2", "a_L + a", "You added {a}. Relative to the lift it points downwards: subtract it."),
    ),
)
HOOK = Relation(
    "F = 2*T",
    what="Balance the forces on the light pulley",
    why="The string pulls it down on both sides. It is light, so the hook pulls up as hard as both together.",
    plain="The hook has to hold both ends of the string.",
    units={"F": "N"},
    directions={"F": UP_DOWN.of("up")},
    mistakes=(
        Mistake(
            "weights",
            "F",
            "(m1 + m2)*g",
            "You added the weights. The bodies accelerate, so the hook does not hold them: use {2*T}.",
        ),
        Mistake("one-side", "F", "T", "You took one side of the string. It pulls down on both: use {2*T}."),
    ),
)
LOOSE = Part(
    "loose",
    "explain",
    "Suppose that the lift, with everything in it, falls freely. What are the tension and the acceleration relative to"
    " the lift then? Explain.",
    points=(
        Point("All fall with the acceleration g, each under its own weight alone.", 1, ("g",)),
        Point("No other force is needed on either body, so the tension is zero.", 1, ("tension is zero",)),
        Point("They do not move relative to the lift: that acceleration is zero too.", 1, ("acceleration is zero",)),
    ),
)


def plan(data: Data) -> Plan:
    """State, both diagrams, the motion, the heavier body from the ground, the hook, free fall."""
    v = data.values
    if v["m2"] <= v["m1"]:
        raise Refusal("m2", LIGHTER)
    if v["a_L"] <= -data.settings.constant("g"):
        raise Refusal("a_L", SLACK)
    given, lift = data.said, said(data, "a_L", told(QUANTITIES))
    moves = f"has an acceleration of {lift}" if v["a_L"] else "moves at constant velocity"
    drawn = (
        free_body(f"draw-{key}", name, rows, (), data, f"Free-body diagram of {name}", guide, sizes)
        for key, name, rows, guide in diagrams(data)
    )
    return Plan(
        story=data.pick(
            "A light pulley without friction hangs from a hook in the ceiling of a lift. Over it runs a light string"
            f" with a bag of {given['m1']} at one end and one of {given['m2']} at the other.",
            "In a goods lift a smooth light wheel is hung from the ceiling by a hook. A light string over it carries a"
            f" tin of {given['m1']} and a tin of {given['m2']}.",
            "For a test two blocks hang from the ends of a light string, over a light pulley without friction that a"
            f" hook holds under the roof of a lift. Their masses are {given['m1']} and {given['m2']}.",
        )
        + f" The lift {moves} while the two move freely.",
        parts=(
            state(SECOND),
            *drawn,
            Part(
                "motion",
                "calculate",
                "Calculate the acceleration of the two relative to the lift and the tension in the string.",
                (BOTH.steps()[0], replace(RISES.step("T"), marks=(Mark("substitution"), Mark("answer")))),
                also=("a",),
            ),
            Part(
                "ground",
                "calculate",
                "Calculate the acceleration of the heavier body relative to the ground.",
                (FROM_GROUND.step("a_2"),),
            ),
            Part("hook", "calculate", "Calculate the force of the hook on the pulley.", (HOOK.step("F"),)),
            LOOSE,
        ),
        values=dict(v),
        scene=lambda v: over_one_pulley(title="Over a pulley in a lift"),
        checks=(
            Check("As in a lift at rest with g + a_L in the place of g", "a = (g + a_L)*(m2 - m1)/(m1 + m2)"),
            Check("The tension in the same way", "T = 2*m1*m2*(g + a_L)/(m1 + m2)"),
        ),
        notes=(FBD_RULES,),
    )


HOIST = Question(
    key="hoist",
    title="A pulley in a lift",
    **boxes(*QUANTITIES),
    plan=plan,
    laws=(SECOND.name,),
    constants=("g",),
    scenario=True,
    since=4,
)
