"""A whole question: two rocks far out; their pull, who is pulled harder, a craft in balance, other rocks by factors.

The set-up and its numbers are our own. F = Gm₁m₂/d²; m₁/r₁² = m₂/(d − r₁)² between them. Marks: common practice, no
source.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import cast

from calc.figures import Figure, Mass, spheres_on_line
from calc.figures.vectors import Force, free_body_diagram
from calc.model.answers import Point
from calc.model.questions import SA, Check, Data, Mistake, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.gravitation.balance import DROPPED, PLACE, UNEQUAL
from calc.topics.gravitation.compared import times
from calc.topics.gravitation.laws import GRAVITATION, TWO_BODIES, between_centres, body_mass
from calc.working.declaring import boxes, state

PULL = replace(
    TWO_BODIES.renamed(r="d"),
    why="Each rock attracts the other along the line through their centres; d is measured from centre to centre.",
)
GIVEN_TO_B = Relation(
    "F = m2*a_B",
    what="Newton's second law for B",
    why="Nothing but A pulls at B, so the gravitational force is the net force on it.",
    plain="The same pull moves a light body more than a heavy one.",
    units={"F": "N", "a_B": "m·s⁻²"},
    mistakes=(
        Mistake("other-mass", "a_B", "F/m1", "You divided by the mass of A. The acceleration of B is asked: use {m2}."),
        Mistake(
            "both-masses",
            "a_B",
            "F/(m1 + m2)",
            "You divided by both masses. The force on B moves B alone: divide by {m2}.",
        ),
        Mistake("upside-down", "a_B", "m2/F", "You turned the fraction over. Divide the force by the mass: {F/m2}."),
    ),
)
FACTORS = Relation(
    "f = a*b/c^2",
    what="Compare the two forces",
    why=(
        "G cancels when one force is divided by the other. The factors of the masses multiply; that of the distance"
        " divides, squared."
    ),
    plain="More mass on either side pulls harder in step; twice as far leaves a quarter.",
    units={"f": "", "a": "", "b": "", "c": ""},
    marks=SA,
    mistakes=(
        Mistake(
            "not-squared",
            "f",
            "a*b/c",
            "You used {c} once. The force falls with the square of the distance, so its factor is squared: use {c^2}.",
        ),
        Mistake(
            "added",
            "f",
            "(a + b)/c^2",
            "You added the factors of the masses. The force grows in step with each of them: multiply, {a*b}.",
        ),
        Mistake(
            "distance-multiplied",
            "f",
            "a*b*c^2",
            "You multiplied by {c^2}. A larger distance makes the force smaller, so divide by it.",
        ),
    ),
)
HARDER = Part(
    "pair",
    "explain",
    "Which of the two is pulled harder by the other? Give a reason.",
    points=(
        Point("Neither: the two forces have the same size.", 1, ("same size",)),
        Point("They are a pair by Newton's third law, equal and in opposite directions.", 1, ("third law",)),
    ),
)
ARROWS = (
    Point("An arrow from the craft towards A, labelled as the gravitational force of A.", 1, ("towards A",)),
    Point("An arrow from the craft towards B, labelled as the gravitational force of B.", 1, ("towards B",)),
    Point("Both are equally long, and there is no other force.", 1, ("equally long",)),
)
NUDGED = Part(
    "nudged",
    "explain",
    "A puff of gas moves the craft a little towards A. Explain whether it then comes back to that point.",
    points=(
        Point("Closer to A, the force of A on it is larger and that of B smaller.", 1, ("larger", "smaller")),
        Point("The net force points towards A, so it does not come back.", 1, ("towards A", "does not come back")),
    ),
)
BOXES = (
    body_mass("m1", "Mass of A", "", "8 x 10^15 kg; 5e15 9e15 2e16; 3,6e15 7,5e15 1,4e16"),
    body_mass("m2", "Mass of B", "", "2 x 10^15 kg; 1e15 3e15 4e15; 1,8e15 2,7e15 5,2e15"),
    between_centres("d", "Distance between the centres", "", "6 x 10^4 m; 4e4 5e4 9e4; 3,5e4 7,5e4 8,2e4"),
    times("a", "Factor of the first mass, to other rocks", "", "3"),
    times("b", "Factor of the second mass, to other rocks", "", "6"),
    times("c", "Factor of the distance, to other rocks", "", "3"),
)


def scene(v: Values) -> Figure:
    """A and B, and the distance between their centres."""
    return spheres_on_line(
        [Mass("A", 0.0), Mass("B", v["d"])],
        distances=[(0, 1, "d")],
        title="Two rocks",
        notes=("Bodies not to scale.",),
    )


def forces(v: Values) -> Figure:
    """The craft in balance: two forces, equally long."""
    return free_body_diagram(
        [Force("F_A", 1.0, 180.0), Force("F_B", 1.0, 0.0)],
        title="Forces on the craft",
        notes=("A is on the left, B on the right.",),
    )


def story(data: Data) -> str:
    """Three tellings."""
    said = data.said
    masses = f"A has a mass of {said['m1']}, B of {said['m2']}, and their centres are {said['d']} apart."
    return data.pick(
        f"Two rocks, A and B, drift far away from all other bodies. {masses}",
        f"For a story two round rocks, A and B, float in empty space. {masses}",
        f"A telescope finds two rocks, A and B, far beyond the last planet; others are left out. {masses}",
    )


def plan(data: Data) -> Plan:
    """State, force, pair, acceleration, balance point, its diagram, a nudge, other rocks."""
    said, v = data.said, data.values
    place = PLACE
    if v["m1"] != v["m2"]:
        place = replace(PLACE, other="r_1 = d/(1 - sqrt(m2/m1))", dropped=DROPPED, mistakes=UNEQUAL)
    return Plan(
        story=story(data),
        parts=(
            state(GRAVITATION),
            Part(
                "force",
                "calculate",
                "Calculate the size of the gravitational force of A on B.",
                (PULL.step("F"),),
            ),
            HARDER,
            Part(
                "acceleration",
                "calculate",
                "Calculate the size of the acceleration that A gives B.",
                (GIVEN_TO_B.step("a_B"),),
            ),
            Part(
                "balance",
                "calculate",
                "A small craft between A and B is to feel no net gravitational force. Calculate how far from the centre"
                " of A it must be.",
                (place,),
            ),
            Part(
                "diagram",
                "draw",
                "Draw a free-body diagram of the craft at this point.",
                points=ARROWS,
                figure=forces,
            ),
            NUDGED,
            Part(
                "others",
                "calculate",
                f"Two other rocks have {said['a']} times the mass of A and {said['b']} times the mass of B, at"
                f" {said['c']} times the distance. Without a calculator: by what factor is the force between them"
                " larger or smaller than that between A and B?",
                (FACTORS.step("f"),),
            ),
        ),
        values=dict(v),
        scene=scene,
        checks=(
            Check(
                "The acceleration of B straight from the law, without its own mass",
                "a_B = G*m1/d^2",
                "It is g of A at that distance.",
            ),
            Check("Put it back: each mass over the square of its own distance", "m1/r_1^2 = m2/(d - r_1)^2"),
        ),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Factors that need no calculator: one force a whole number of times the other, and never the same."""
    draw = cast(Random, random)
    c = draw.choice((2, 3) if level == 1 else (2, 3, 4, 6))
    pairs = [(a, b) for a in range(2, 10) for b in range(2, 10) if a * b != c * c]
    a, b = draw.choice([(a, b) for a, b in pairs if not (a * b) % (c * c) or not (c * c) % (a * b)])
    return {**typed, "a": str(a), "b": str(b), "c": str(c)}


ROCKS = Question(
    key="rocks",
    title="Two rocks far out",
    **boxes(*BOXES),
    plan=plan,
    constants=("G",),
    laws=(GRAVITATION.name,),
    adjust=practise,
    scenario=True,
    since=4,
)
