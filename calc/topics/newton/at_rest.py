"""Over the top of a slope, where friction holds the two: what is compared, what holds, T = m₂g and a = 0.

D = m₂g − m₁g sin θ is what friction would have to hold. They stay where |D| is at most μm₁g cos θ, for static friction
can be at least as large as kinetic friction. Marks: common practice, no source.
"""

from __future__ import annotations

from math import cos, degrees, sin

from calc.figures.connected import over_the_top
from calc.model.answers import Direction, Point
from calc.model.directions import ALONG_SLOPE
from calc.model.questions import Check, Data, Part, Plan
from calc.model.relations import Relation
from calc.topics.newton.pairs import PLAIN_F, PLAIN_ONE, sizes
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import PLAIN_STATIC, SECOND
from calc.working.declaring import Mistake, state
from calc.working.working import measure

DRIVE = Relation(
    "D = m2*g - m1*g*sin(theta)",
    what="Compare the weight that hangs with the part of the other weight along the slope",
    why="Along the string, up the slope is positive: m₂g pulls the body on the slope up, m₁g sin θ pulls it down.",
    units={"D": "N"},
    plain="Two pulls at the two ends of one string: what is left over is what friction has to hold.",
    directions={"D": lambda v: ALONG_SLOPE.by_sign(v["D"], "up-slope")},
    mistakes=(
        Mistake("whole-weight", "D", "m2*g - m1*g", "You used the whole weight. Use {m1*g*sin(theta)}."),
        Mistake(
            "sin-cos",
            "D",
            "m2*g - m1*g*cos(theta)",
            "You took the cosine for the part along the slope. Use the sine: {m1*g*sin(theta)}.",
        ),
    ),
)
SLIDING = Relation(
    "f_k = mu*N_1",
    what="Friction if it slid",
    why="Sliding, it would feel kinetic friction. At rest static friction can be at least as large.",
    units={"f_k": "N"},
    plain=PLAIN_F,
)
HANGS = Relation(
    "T = m2*g",
    what="Balance the forces on the body that hangs",
    why="It stays at rest, so the tension carries its whole weight.",
    units={"T": "N"},
    plain=PLAIN_ONE,
    mistakes=(
        Mistake(
            "other-part",
            "T",
            "m1*g*sin(theta)",
            "You used the part of the other weight. Friction takes its share there: use {m2*g}.",
        ),
    ),
)


def held(way: int) -> Relation:
    """The static friction that holds D. way: +1 where D points up the slope."""
    return Relation(
        "f = D" if way > 0 else "f = -D",
        what="The friction that acts",
        why="It stays at rest, so the net force is zero: static friction is just as large as what it holds.",
        units={"f": "N"},
        plain=PLAIN_STATIC,
        directions={"f": _along(-way)},
        mistakes=(
            Mistake(
                "kinetic-at-rest",
                "f",
                "f_k",
                "You used kinetic friction although it stays at rest. It is not sliding: use {D}, which static friction"
                " matches.",
            ),
        ),
    )


def _along(way: int) -> Direction:
    return ALONG_SLOPE.of("up-slope" if way > 0 else "down-slope")


def _decided(data: Data, drive: float, most: float) -> tuple[Point, ...]:
    if not drive:
        return (
            Point("D is zero: along the string the weights balance without friction.", 1, ("zero",)),
            Point("Nothing is left to move them: they stay at rest.", 1, ("stay at rest",)),
        )
    told = [measure(abs(value), "N", data.settings.style).text for value in (drive, most)]
    return (
        Point(
            f"D is {told[0]}, not larger than {told[1]}, which static friction can reach at least.", 1, ("not larger",)
        ),
        Point("Static friction can hold it: they stay at rest.", 1, ("stay at rest",)),
    )


NEAR = 1e-9  # of the weight: so little is rounding
STILL = (
    Point("The net force on each of them is zero.", 1, ("zero",)),
    Point("The acceleration is zero.", 1, ("acceleration is zero",)),
)


def _diagrams(data: Data, way: int, friction: float) -> tuple[Part, ...]:
    """Both free-body diagrams; without friction where there is nothing to hold."""
    v, tilt = data.values, degrees(data.values["theta"])
    own = {"N_1": v["m1"] * data.known["g"] * cos(v["theta"]), "T": v["m2"] * data.known["g"], "f": friction}
    back = (_along(-way).words, tilt + (180 if way > 0 else 0))
    on_slope = (
        ("F_g", "w1", "the weight, straight down", 270.0),
        ("N", "N_1", "the normal force, away from the slope at right angles to it", tilt + 90),
        ("T", "T", "the tension, up the slope", tilt),
        *((("f", "f", f"friction, {back[0]}", back[1]),) if friction else ()),
    )
    hanging = (("F_g", "w2", "the weight, straight down", 270.0), ("T", "T", "the tension, upwards", 90.0))
    bodies = (("1", "the body on the slope", on_slope, tilt), ("2", "the body that hangs", hanging, None))
    return tuple(
        free_body(
            f"draw-{key}",
            name,
            rows,
            (),
            data,
            f"Free-body diagram of {name}",
            guide,
            lambda known: {**sizes(known), **own},
        )
        for key, name, rows, guide in bodies
    )


def plan(data: Data, openings: tuple[str, ...], facts: str, normal: Relation) -> Plan:
    """Both diagrams, N, what friction could be, D, rest, friction, tension, acceleration."""
    v, g = data.values, data.known["g"]
    drive = v["m2"] * g - v["m1"] * g * sin(v["theta"])
    if abs(drive) <= NEAR * v["m2"] * g:
        drive = 0.0
    most = v["mu"] * v["m1"] * g * cos(v["theta"])
    way = -1 if drive < 0 else 1
    steps = (
        ("normal", "Calculate the normal force on the body on the slope.", normal.step("N_1")),
        ("slid", "Calculate the friction on it if it slid.", SLIDING.step("f_k")),
        (
            "along",
            "Calculate D, the sum of the forces along the string on both bodies without friction.",
            DRIVE.step("D"),
        ),
        ("friction", "Calculate the friction on the body on the slope.", held(way).step("f")),
        ("tension", "Calculate the tension in the string.", HANGS.step("T")),
    )
    worked = [Part(key, "calculate", ask, (step,)) for key, ask, step in steps]
    return Plan(
        story=f"{data.pick(*openings)} {facts}",
        parts=(
            state(SECOND),
            *worked[:3],
            Part(
                "decide",
                "explain",
                "Do they stay at rest or move? Give a reason.",
                points=_decided(data, drive, most),
            ),
            *_diagrams(data, way, abs(drive)),
            *worked[3 if drive else 4 :],
            Part("still", "explain", "Give the net force on each of them and the acceleration.", points=STILL),
        ),
        values=dict(v),
        units={"theta": "°"},
        scene=lambda values: over_the_top(min(max(degrees(v["theta"]), 6.0), 70.0)),
        checks=(check(way),) if drive else (WITHOUT,),
        notes=(FBD_RULES,),
    )


WITHOUT = Check("The forces along the slope on the other body balance too", "T = m1*g*sin(theta)")


def check(way: int) -> Check:
    """The forces along the slope on the body that lies on it balance too."""
    friction = "- f" if way > 0 else "+ f"
    return Check("The forces along the slope on the other body balance too", f"T {friction} = m1*g*sin(theta)")
