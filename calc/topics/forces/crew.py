"""A whole question: a case on a stage floor; first law, forces, does it move, and what a steeper strap changes.

The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.model.answers import Point
from calc.model.questions import Data, Part, Plan, Question
from calc.model.relations import Relation
from calc.topics.forces.moves import facts, judged, parts, practise, scene, squares
from calc.topics.forces.words import EACH_AXIS_MARKS, LIGHTER, PLAIN_REST, WEIGHT_ALWAYS, lean, pull
from calc.topics.shared.free_bodies import FBD_RULES
from calc.topics.shared.motion_laws import FIRST, KINETIC, STATIC
from calc.topics.shared.quantities import friction_coefficient, mass
from calc.working.declaring import Mistake, boxes, state

QUANTITIES = (
    mass("m", "Mass of the case", "", "24 kg; 15 20 25 30; 18 22 28"),
    pull("P", "Pull", "", "90 N; 60 80 100; 65 85 95"),
    lean("phi", "Angle of the strap with the floor", "", "25°; 20 25 30 35; 22 28 36"),
    friction_coefficient("mu_s", "Coefficient of static friction", "", "0,35; 0,35 0,4 0,5; 0,32 0,38 0,46"),
    friction_coefficient("mu_k", "Coefficient of kinetic friction", "", "0,25; 0,2 0,25 0,3; 0,18 0,22 0,28"),
)
SLIPS = Relation(
    "P_min*cos(phi) = mu_s*(m*g - P_min*sin(phi))",
    what="Balance the forces along the floor, with the largest static friction",
    why="About to slip it is still at rest: the level part of the pull is as large as μₛN, and N = mg − P sin φ.",
    units={"P_min": "N"},
    plain=PLAIN_REST,
    marks=EACH_AXIS_MARKS,
    quotes=(STATIC.name,),
    mistakes=(
        Mistake("normal-is-weight", "P_min", "mu_s*m*g/cos(phi)", WEIGHT_ALWAYS % "m*g - P_min*sin(phi)"),
        Mistake(
            "vertical-part-wrong-way",
            "P_min",
            "mu_s*m*g/(cos(phi) - mu_s*sin(phi))",
            LIGHTER.replace("{P}", "{P_min}").replace("{P*sin(phi)}", "{P_min*sin(phi)}"),
        ),
        Mistake(
            "kinetic-for-static",
            "P_min",
            "mu_k*m*g/(cos(phi) + mu_k*sin(phi))",
            "You used the kinetic coefficient. It is still at rest when it is about to slip: use {mu_s}.",
        ),
    ),
)
STEEPER = Part(
    "steeper",
    "explain",
    "Suppose that the case slides. Then the strap is held at a steeper angle, and the pull keeps its size. Explain"
    " whether the friction on the case becomes larger, becomes smaller or stays the same.",
    points=(
        Point("The vertical part of the pull, P sin φ, becomes larger.", 1, ("vertical part", "larger")),
        Point("So the normal force, mg − P sin φ, becomes smaller.", 1, ("normal force", "smaller")),
        Point(
            "Kinetic friction is the coefficient times the normal force, so it becomes smaller.",
            1,
            ("friction", "smaller"),
        ),
    ),
)


def on_the_level(data: Data) -> Data:
    """The data as those of a body on the level that is pulled."""
    return replace(data, values={**data.values, "theta": 0.0}, choices={**data.choices, "how": "pull"})


def plan(data: Data) -> Plan:
    """State, normal force, forces along the floor, limit, diagram, decide, friction, then the limit and a new angle."""
    level = on_the_level(data)
    here = judged(level)
    tale = data.pick(
        "A case with loudspeakers stands on a level stage floor. A stage hand pulls at it to the right with a strap.",
        "A wrapped cupboard, the case, stands in a level corridor. A remover pulls at it to the right with a strap.",
        "A tool case stands on the level floor of a boathouse. Somebody pulls at it to the right with a strap.",
    )
    least = Part(
        "least",
        "calculate",
        "Calculate the smallest pull at this angle at which the case begins to slip.",
        (SLIPS.step("P_min"),),
    )
    return Plan(
        story=f"{tale} {facts(level, here)}",
        parts=(state(FIRST), *parts(level, here), least, STEEPER),
        values={**data.values, "theta": 0.0},
        units={"theta": "°", "phi": "°"},
        scene=lambda v: scene(level),
        checks=(squares(here),),
        notes=(FBD_RULES,),
    )


def draw(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """A pull below or above the one at which it slips."""
    made = practise({**typed, "theta": "0°", "how": "pull"}, chance, level)
    return {name: text for name, text in made.items() if name in typed}


CREW = Question(
    key="crew",
    title="A case on a stage",
    **boxes(*QUANTITIES),
    plan=plan,
    laws=(FIRST.name, STATIC.name, KINETIC.name),
    constants=("g",),
    adjust=draw,
    scenario=True,
    since=4,
)
