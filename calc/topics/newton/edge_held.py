"""Over the edge of a table, where friction holds the two: T = m₂g, f = T, a = 0, and how rough it must be at least.

They stay where m₂g is at most μm₁g, for static friction can be at least as large as kinetic friction. The decision is
that of calc.topics.shared.connected. Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures.connected import over_an_edge
from calc.model.answers import Point
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import Check, Data, Part, Plan
from calc.model.relations import Relation
from calc.topics.forces.words import TWO
from calc.topics.newton.at_rest import HANGS, SLIDING, STILL
from calc.topics.newton.pairs import PLAIN_F
from calc.topics.shared.connected import HANGING, Body, outcome
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import PLAIN_STATIC, SECOND
from calc.working.declaring import Mistake, state
from calc.working.working import measure

TENSION = Relation(
    "T = m2*g",
    what=HANGS.what,
    why=HANGS.why,
    units=HANGS.units,
    plain=HANGS.plain,
    mistakes=(
        Mistake("kinetic-at-rest", "T", "f_k", "You used the friction as if it slid. It stays at rest: use {m2*g}."),
    ),
)
NORMAL = Relation(
    "N_1 = m1*g",
    what="Balance the forces across the table",
    why="The table is level and the string pulls along it, so N carries the whole weight.",
    units={"N_1": "N"},
    plain="The ground pushes back only as hard as it is pressed.",
)
FRICTION = Relation(
    "T - f = 0",
    what="Balance the forces along the table",
    why="It stays at rest, so the net force is zero: static friction is just as large as the tension that it holds.",
    units={"f": "N"},
    plain=PLAIN_STATIC,
    directions={"f": LEFT_RIGHT.of("left")},
    mistakes=(
        Mistake(
            "kinetic-at-rest",
            "f",
            "f_k",
            "You used kinetic friction although it stays at rest. It is not sliding: use {T}, which static friction"
            " matches.",
        ),
    ),
)
LEAST = Relation(
    "f = mu_min*N_1",
    what="The least coefficient of static friction that holds them",
    why="At the limit the largest static friction is just what has to be held.",
    units={"mu_min": ""},
    plain=PLAIN_F,
    marks=TWO,
    mistakes=(
        Mistake(
            "upside-down",
            "mu_min",
            "N_1/f",
            "You have the fraction upside down. The coefficient is friction divided by the normal force: {f/N_1}.",
        ),
    ),
)
BALANCED = Check("The weight that hangs is the least coefficient times the weight on the table", "m2*g = mu_min*m1*g")


def stays(data: Data) -> bool:
    """Whether the two stay when they are let go, where all that decides is known."""
    v = data.values
    if not {"m1", "m2", "mu"} <= v.keys():
        return False
    pair = [Body(v["m1"], 0.0, v["mu"], v["mu"]), Body(v["m2"], -HANGING)]
    return outcome(pair, ["string"], g=data.known["g"]).state != "moves"


def _decided(data: Data) -> tuple[Point, ...]:
    hangs, most = data.values["m2"] * data.known["g"], data.values["mu"] * data.values["m1"] * data.known["g"]
    told = [measure(value, "N", data.settings.style).text for value in (hangs, most)]
    return (
        Point(
            f"The weight that hangs is {told[0]}, not larger than {told[1]}, which static friction can reach at least.",
            1,
            ("not larger",),
        ),
        Point("Static friction can hold it: they stay at rest.", 1, ("stay at rest",)),
    )


def _diagrams(data: Data) -> tuple[Part, ...]:
    v, g = data.values, data.known["g"]
    own = {"w1": v["m1"] * g, "N_1": v["m1"] * g, "w2": v["m2"] * g, "T": v["m2"] * g, "f": v["m2"] * g}
    on_table = (
        ("F_g", "w1", "the weight, straight down", 270.0),
        ("N", "N_1", "the normal force, upwards", 90.0),
        ("T", "T", "the tension, to the right", 0.0),
        ("f", "f", "friction, to the left", 180.0),
    )
    hanging = (("F_g", "w2", "the weight, straight down", 270.0), ("T", "T", "the tension, upwards", 90.0))
    return tuple(
        free_body(f"draw-{n}", name, rows, (), data, f"Free-body diagram of {name}", None, own.__or__)
        for n, name, rows in ((1, "the body on the table", on_table), (2, "the body that hangs", hanging))
    )


def plan(data: Data, openings: tuple[str, ...], facts: str) -> Plan:
    """N, what friction could be, rest, both diagrams, tension, friction, the least coefficient, acceleration."""
    worked = [
        Part(key, "calculate", ask, (step,))
        for key, ask, step in (
            ("normal", "Calculate the normal force on the body on the table.", NORMAL.step("N_1")),
            ("slid", "Calculate the friction on it if it slid.", SLIDING.step("f_k")),
            ("tension", "Calculate the tension in the string.", TENSION.step("T")),
            ("friction", "Calculate the friction on the body on the table.", FRICTION.step("f")),
            (
                "needed",
                "Calculate the least coefficient of static friction with which they stay at rest.",
                LEAST.step("mu_min"),
            ),
        )
    ]
    ask = "Do they stay at rest or move? Give a reason."
    return Plan(
        story=f"{data.pick(*openings)} {facts}",
        parts=(
            state(SECOND),
            *worked[:2],
            Part("decide", "explain", ask, points=_decided(data)),
            *_diagrams(data),
            *worked[2:],
            Part("still", "explain", "Give the net force on each of them and the acceleration.", points=STILL),
        ),
        values=dict(data.values),
        scene=lambda values: over_an_edge(),
        checks=(BALANCED,),
        notes=(FBD_RULES,),
    )
