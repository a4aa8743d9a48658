"""A whole question: a block runs up a rough slope and stops; whether it slides back, and how fast it returns.

tan θ against µ_s decides. The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import cos, degrees, sin, tan

from calc.figures import Dot, Figure, polar
from calc.model.answers import Mark, Point
from calc.model.questions import Check, Data, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.energy.drawn import LONG, START, surface
from calc.topics.energy.laws import CONSERVATIVE, NON_CONSERVATIVE, THEOREM
from calc.topics.energy.moved import Way, friction_laws
from calc.topics.forces.words import SLIDES_HERE
from calc.topics.shared.quantities import friction_coefficient, mass, slope_angle, speed
from calc.working.declaring import Mistake, boxes, state
from calc.working.working import measure

NORMAL, FRICTION = (
    replace(law, mistakes=(*law.mistakes, *more)).in_units({"N": "N", "f": "N"}).step(name)
    for law, name, more in zip(
        friction_laws(Way(1, "none"))[:2],
        ("N", "f"),
        ((), (Mistake("static-for-kinetic", "f", "mu_s*N", SLIDES_HERE, since=6),)),
        strict=True,
    )
)
FULL = (Mark("formula"), Mark("substitution", 2), Mark("answer"))
UP = Relation(
    "-(m*g*sin(theta) + f)*d = 0 - 1/2*m*u^2",
    what="Net work on the way up equals the change in kinetic energy",
    why="On the way up the component of the weight and friction both act against the motion; at the end it is at rest.",
    plain="Going up, the hill and the rubbing both take energy, metre by metre, until none is left.",
    units={"d": "m"},
    quotes=(THEOREM.name,),
    marks=FULL,
    mistakes=(
        Mistake(
            "friction-left-out",
            "d",
            "u^2/(2*g*sin(theta))",
            "You left friction out. On the way up it takes energy as well: add {f} to {m*g*sin(theta)}.",
        ),
        Mistake(
            "length-as-height",
            "d",
            "m*u^2/(2*(m*g + f))",
            "You used {d} as the height. The height is {d*sin(theta)}: put the sine in.",
        ),
        Mistake(
            "half-lost",
            "d",
            "m*u^2/(m*g*sin(theta) + f)",
            "You lost the ½. Kinetic energy is {1/2*m*u^2}: halve your answer for {d}.",
        ),
        Mistake(
            "friction-turned",
            "d",
            "m*u^2/(2*(m*g*sin(theta) - f))",
            "You let friction help. On the way up it acts down the slope: add {f} to {m*g*sin(theta)}.",
        ),
    ),
)
DOWN = Relation(
    "(m*g*sin(theta) - f)*d = 1/2*m*v^2",
    what="Net work on the way down equals the change in kinetic energy",
    why="On the way down the component of the weight helps, and friction acts up the slope, against the motion.",
    plain="Coming down the hill gives energy, and the rubbing takes some of it again.",
    units={"v": "m·s⁻¹"},
    quotes=(THEOREM.name,),
    dropped={"v": "A speed has no sign: it is dropped."},
    marks=FULL,
    mistakes=(
        Mistake(
            "friction-left-out",
            "v",
            "sqrt(2*g*sin(theta)*d)",
            "You left friction out. On the way down it takes energy too: subtract {f} from {m*g*sin(theta)}.",
        ),
        Mistake(
            "friction-turned",
            "v",
            "sqrt(2*(m*g*sin(theta) + f)*d/m)",
            "You let friction point down the slope. It is against the motion, so on the way down it acts up the slope:"
            " subtract {f}.",
        ),
        Mistake(
            "half-lost",
            "v",
            "sqrt((m*g*sin(theta) - f)*d/m)",
            "You lost the ½. Kinetic energy is {1/2*m*v^2}: multiply by 2 before you take the root for {v}.",
        ),
    ),
)
HELD = Relation(
    "f_s = m*g*sin(theta)",
    what="At rest static friction balances the component of the weight",
    why="The block stays, so the net force along the slope is zero: static friction is only as large as it must be.",
    plain="The ground holds back just as hard as the hill pulls, no harder.",
    units={"f_s": "N"},
    marks=FULL,
    mistakes=(
        Mistake(
            "largest",
            "f_s",
            "mu_s*m*g*cos(theta)",
            "You used the largest static friction. It is only as large as it must be: use {m*g*sin(theta)} for {f_s}.",
        ),
        Mistake(
            "kinetic",
            "f_s",
            "f",
            "You used kinetic friction. The block is at rest: use {m*g*sin(theta)} for {f_s}.",
        ),
    ),
)
QUANTITIES = (
    mass("m", "Mass of the block", "", "4 kg; 2 3 5 6; 2,5 3,5 4,5"),
    slope_angle("theta", "Angle of the slope with the horizontal", "", "30°; 15 20 25 30 35; 18 22 28 32"),
    speed("u", "Speed at A", "", "6 m/s; 4 5 6 7; 4,5 5,5 6,5"),
    friction_coefficient("mu_s", "Coefficient of static friction", "", "0,4; 0,35 0,4 0,45 0,5; 0,38 0,48"),
    friction_coefficient("mu_k", "Coefficient of kinetic friction", "", "0,3; 0,15 0,2 0,25 0,3; 0,18 0,28"),
)
WHICH = (
    "The coefficient of kinetic friction is usually smaller than that of static friction. Check which is which; it is"
    " worked out all the same."
)


def decision(data: Data, slides: bool) -> Part:
    """Whether it slides back: the pull down the slope beside the largest static friction."""
    known, style = data.known, data.settings.style
    pull, most = (
        measure(known["m"] * known["g"] * one, "N", style).text
        for one in (sin(known["theta"]), known["mu_s"] * cos(known["theta"]))
    )
    than, so = ("larger than", "slides back") if slides else ("not larger than", "stays at rest")
    return Part(
        "back",
        "explain",
        "Does the block slide back, or does it stay where it stops? Compare two forces.",
        points=(
            Point(f"The component of the weight down the slope is mg sin θ = {pull}.", 1, ("mg sin θ",)),
            Point(f"The largest static friction is µs mg cos θ = {most}.", 1, ("largest static friction",)),
            Point(f"The first is {than} the second, so the block {so}.", 1, (so,)),
        ),
    )


ENERGY = Part(
    "where",
    "explain",
    "What has become of the kinetic energy that the block had at A, when it has come to rest?",
    points=(
        Point("A part is now potential energy: the block is higher.", 1, ("potential energy",)),
        Point("The rest was taken by friction and has become heat.", 1, ("heat",)),
    ),
)
ROUND = Part(
    "round-trip",
    "explain",
    "Suppose that the block is at A again later, by itself or pulled. What is the work of the weight over the whole"
    " trip, and is that of friction zero as well? Explain with the two kinds of force.",
    points=(
        Point(
            "The work of the weight is zero: it is conservative, and the block is back at the same height.",
            1,
            ("zero",),
        ),
        Point(
            "Friction is against the motion both ways: its work is negative, for it is non-conservative.",
            1,
            ("negative",),
        ),
    ),
)


def plan(data: Data) -> Plan:
    """Theorem, distance up, whether it slides back, the speed or the friction then, and the energy."""
    said, values = data.said, data.values
    slides = tan(values["theta"]) > values["mu_s"]
    start = data.pick(
        f"A block of {said['m']} is pushed and let go on a straight wooden board that rises at {said['theta']} to the"
        " horizontal.",
        f"A block of {said['m']} slides up a straight concrete ramp, which makes an angle of {said['theta']} with the"
        " horizontal.",
        f"On a straight slope of dry grass, at {said['theta']} to the horizontal, a block of {said['m']} is shoved"
        " uphill.",
    )
    last = Part(
        "return" if slides else "holding",
        "calculate",
        "If it slides back, calculate its speed when it passes A again; if it stays, calculate the static friction"
        " on it.",
        ((DOWN.step("v") if slides else HELD.step("f_s")),),
    )
    return Plan(
        story=(
            f"{start} It passes A, on its way up, at {said['u']}. The coefficient of static friction is {said['mu_s']},"
            f" that of kinetic friction {said['mu_k']}."
        ),
        parts=(
            state(THEOREM),
            Part(
                "distance",
                "calculate",
                "Use energy principles to calculate how far from A, along the slope, the block comes to rest.",
                (NORMAL, FRICTION, UP.step("d")),
            ),
            decision(data, slides),
            last,
            ENERGY,
            ROUND,
        ),
        values=dict(values),
        units={"theta": "°"},
        scene=scene,
        checks=(
            Check("By the equations of motion on the way up: u² = 2ad", "u^2 = 2*(m*g*sin(theta) + f)/m*d"),
            *(
                (Check("What is missing at A was taken on both ways", "1/2*m*u^2 - 1/2*m*v^2 = 2*f*d"),)
                if slides
                else ()
            ),
        ),
        warnings=(WHICH,) if values["mu_k"] > values["mu_s"] else (),
        notes=("A body at rest on a slope slides only if tan θ is larger than µs: its mass does not matter.",),
    )


def scene(v: Values) -> Figure:
    """The block at A on its way up."""
    place = polar((0.0, 0.0), LONG * START, degrees(v["theta"]))
    return surface(
        v,
        level=False,
        distance="",
        title="A block on a slope",
        opening="A block passes A on its way up a slope.",
        extra=(Dot(place, "A"),),
    )


TURNING = Question(
    key="turning",
    title="Up a rough slope, and back?",
    plan=plan,
    **boxes(*QUANTITIES),
    constants=("g",),
    laws=(THEOREM.name, CONSERVATIVE.name, NON_CONSERVATIVE.name),
    scenario=True,
    since=4,
)
