"""A whole question: a lander on a small world, its weight there and high above, weightlessness, another world.

The set-up and its numbers are our own. g = GM/R², w = mg, and at the distance r from the centre g/n = GM/r². Marks:
common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import cast

from calc.figures import Figure, GraphLine, graph
from calc.figures.planets import planet_scene
from calc.model.answers import Point
from calc.model.questions import SA, Check, Data, Mistake, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.gravitation.compared import FACTORS, times
from calc.topics.gravitation.field import DISTANCE
from calc.topics.gravitation.laws import AT_SURFACE, GRAVITATION, PLAIN, WEIGHED, WEIGHT, WEIGHTLESS, body_mass, radius
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import boxes, state

SHARE = Relation(
    "g/n = G*M/r^2",
    what="Find the distance from the centre at which g is so many times smaller",
    why=(
        "The mass of the lander is the same everywhere, so its weight is divided by n where g is divided by n. r is"
        " measured from the centre."
    ),
    plain=PLAIN,
    units={"r": "m"},
    quotes=(GRAVITATION.name,),
    mistakes=(
        Mistake(
            "not-squared",
            "r",
            "n*R",
            "You multiplied the radius by {n}. The pull falls with the square of the distance: multiply the radius by"
            " the square root of {n}.",
        ),
        Mistake("root-omitted", "r", "G*M*n/g", "You stopped at {r^2}. Take its square root: that is {r}."),
        Mistake(
            "not-divided",
            "r",
            "sqrt(G*M/g)",
            "You used {g} at the surface, which leads back to the surface. Up there it is smaller: divide {g} by {n}.",
        ),
        Mistake(
            "multiplied",
            "r",
            "sqrt(G*M/(n*g))",
            "You multiplied g by {n}. The weight is smaller up there: divide {g} by {n}.",
        ),
    ),
)
HEIGHT = DISTANCE.step("h")
GRAPH = (
    Point("Axes labelled F and 1/r², both from zero.", 1, ("labelled",)),
    Point("A straight line.", 1, ("straight",)),
    Point("The line is drawn towards the origin.", 1, ("origin",)),
)
FLOATS = Part(
    "weightless",
    "explain",
    "Later the lander circles the world with its engine off, and a loose screw floats inside it. Explain whether the"
    " gravitational force on the screw is zero.",
    points=(
        Point("No: the world still attracts the screw.", 1, ("still attracts",)),
        Point(
            "Lander and screw fall together, so no contact force acts on the screw: it is weightless.",
            1,
            ("no contact force",),
        ),
    ),
)
BOXES = (
    body_mass("M", "Mass of the world", "", "4,2 x 10^22 kg; 2e22 5e22 8e22; 3,4e22 6,7e22 1,2e23"),
    radius("R", "Radius of the world", "", "1,4 x 10^6 m; 1e6 1,5e6 2e6; 1,1e6 1,7e6 2,3e6", unit="m"),
    body_mass("m", "Mass of the lander", "", "240 kg; 150 300 450; 125 275 640"),
    Quantity(
        "",
        1.01,
        400,
        "The weight becomes smaller with height: type a number greater than 1, such as 4 for a quarter.",
        over=1.0,
    )("n", "Number by which the weight is to be divided", "", "4"),
    times("a", "Factor of the mass from this world to another", "", "2"),
    times("b", "Factor of the radius from this world to another", "", "2"),
)
SHARES = (("4", "9", "16"), ("2", "3", "5", "6,25", "9"))  # a whole root first


def scene(v: Values) -> Figure:
    """The lander at the surface."""
    return planet_scene("w", title="The lander on its world", what="world")


def sketch(v: Values) -> Figure:
    """F against 1/r²: from near the origin to the surface."""
    return graph(
        "1/r^2",
        "F",
        [GraphLine([(0.0, 0.0), (1.0, 1.0)])],
        ticks=False,
        title="Gravitational force against 1/r²",
        description="Graph of F against 1/r²: a straight line that begins at the origin and rises to the right.",
        notes=("The line ends where the lander stands on the surface.",),
    )


def plan(data: Data) -> Plan:
    """State, g, weight, height, sketch, weightlessness, another world."""
    said = data.said
    return Plan(
        story=" ".join(
            (
                data.pick(
                    f"A lander of {said['m']} stands on a round world of a distant star.",
                    f"A space crew sets a lander of {said['m']} down on a small world without air.",
                    f"In a film a lander of {said['m']} reaches a lonely world that does not turn.",
                ),
                f"The world has a mass of {said['M']} and a radius of {said['R']}.",
            )
        ),
        parts=(
            state(GRAVITATION),
            Part("field", "calculate", "Calculate g at the surface of this world.", (AT_SURFACE.step("g"),)),
            Part("weight", "calculate", "Calculate the weight of the lander there.", (WEIGHED.step("w"),)),
            Part(
                "height",
                "calculate",
                "The lander takes off straight upwards. Calculate the height above the surface at which its weight is"
                f" the weight at the surface divided by {said['n']}.",
                (SHARE.step("r"), HEIGHT),
            ),
            Part(
                "graph",
                "draw",
                "Sketch a graph of the gravitational force F on the lander against 1/r² while it rises.",
                points=GRAPH,
                figure=sketch,
            ),
            FLOATS,
            Part(
                "other",
                "calculate",
                f"Another world has {said['a']} times the mass and {said['b']} times the radius. Without a calculator:"
                " by what factor is g at its surface larger or smaller?",
                (replace(FACTORS.step("f"), marks=SA, what="Compare g on the two worlds"),),
            ),
        ),
        values=dict(data.values),
        scene=scene,
        checks=(
            Check("The distance from the centre once more, without G and M", "r = R*sqrt(n)"),
            Check("The weight at the surface straight from the law", "w = G*M*m/R^2"),
        ),
        notes=("Height is measured from the surface, the distance in the law from the centre.",),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Whole factors, so that the last part needs no calculator; g is never the same on both worlds."""
    draw = cast(Random, random)
    b = draw.choice((2, 3) if level == 1 else (2, 3, 4, 5))
    a = draw.choice([n for n in range(2, 10) if n not in (b, b * b)])
    return {**typed, "n": draw.choice(SHARES[level > 1]), "a": str(a), "b": str(b)}


LANDER = Question(
    key="lander",
    title="A lander on a small world",
    **boxes(*BOXES),
    plan=plan,
    constants=("G",),
    laws=(GRAVITATION.name, WEIGHT.name, WEIGHTLESS.name),
    adjust=practise,
    scenario=True,
    since=4,
)
