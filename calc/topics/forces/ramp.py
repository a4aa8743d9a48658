"""A whole question: a box pushed up a ramp; forces while it slides up, how far it goes, whether it slides back.

On the way up friction and mg sin θ both act down the slope: a = g sin θ + μk g cos θ. At rest it is tested again: it
slides back where mg sin θ is larger than μs N. The story and its numbers are our own. Marks: common practice, no
source.
"""

from __future__ import annotations

from dataclasses import replace
from math import degrees, tan

from calc.figures.surfaces import on_surface
from calc.model.answers import Point
from calc.model.directions import ALONG_SLOPE
from calc.model.questions import Check, Data, Part, Plan, Question, Refusal
from calc.model.relations import Relation
from calc.topics.forces.moves import HELD, ODD
from calc.topics.forces.slope import Set, normal_law, rubbing
from calc.topics.forces.words import BY_WEIGHT, PLAIN_F, SLIDES_HERE, STILL_AT_REST, TWO, weight
from calc.topics.shared.connected import Body, slides_to_rest
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import FRICTION, KINETIC, SECOND, STATIC
from calc.topics.shared.quantities import friction_coefficient, mass, slope_angle, speed
from calc.working.declaring import Mistake, boxes, state
from calc.working.working import measure, run

UP = Set(pulled=False, way=1, slides=True)
NEVER_STOPS = (
    "Nothing slows it down: on the level without friction it slides on at constant speed. Give a slope or a coefficient"
    " of kinetic friction above zero."
)
RUBS = rubbing(UP).renamed(mu="mu_k")
RUBS = replace(RUBS, mistakes=(*RUBS.mistakes, Mistake("static-for-kinetic", "f", "mu_s*N", SLIDES_HERE, since=6)))
SLOWS = Relation(
    "m*g*sin(theta) + f = m*a",
    what="Use Newton's second law along the slope",
    why="It moves up, but both forces along the slope act down it: mg sin θ and friction. Down the slope is positive.",
    units={"a": "m·s⁻²"},
    plain="Two forces hold it back, so it slows down quickly.",
    quotes=(SECOND.name,),
    directions={"a": ALONG_SLOPE.of("down-slope")},
    mistakes=(
        Mistake(
            "friction-helps",
            "a",
            "(m*g*sin(theta) - f)/m",
            "You let friction help the motion. It moves up, so friction acts down the slope too: add {f}.",
        ),
        Mistake("friction-ignored", "a", "g*sin(theta)", "You left friction out. It acts down the slope: add {f}."),
    ),
)
STOPS = Relation(
    "u^2 = 2*a*d",
    what="Use the equation of motion without the time",
    why="It ends at rest and slows down by a: v² = u² − 2ad with v = 0.",
    units={"d": "m"},
    plain="Twice as fast at the start takes it four times as far.",
    mistakes=(
        Mistake("half-left-out", "d", "u^2/a", "You left the 2 out. The equation is {u^2} = {2*a*d}: divide by {2*a}."),
        Mistake("not-squared", "d", "u/(2*a)", "You did not square the speed. Use {u^2}."),
    ),
)
PART_OF_WEIGHT = Relation(
    "F_gpar = m*g*sin(theta)",
    what="The part of the weight along the slope",
    why="At rest only this part would move it, down the slope.",
    units={"F_gpar": "N"},
    plain="The steeper the slope, the more of the weight acts along it.",
    directions={"F_gpar": ALONG_SLOPE.of("down-slope")},
    mistakes=(
        Mistake(
            "sin-cos",
            "F_gpar",
            "m*g*cos(theta)",
            "You took the cosine for the part of the weight along the slope. Use the sine: on the level nothing is"
            " left.",
        ),
    ),
)
HOLDS = Relation(
    "f_smax = mu_s*N",
    what="The largest static friction",
    why="At rest static friction can have any size up to this one.",
    units={"f_smax": "N"},
    plain=PLAIN_F,
    marks=TWO,
    quotes=(STATIC.name,),
    mistakes=(
        Mistake("weight-for-normal", "f_smax", "mu_s*m*g", BY_WEIGHT),
        Mistake("kinetic-for-static", "f_smax", "mu_k*N", STILL_AT_REST, since=6),
    ),
)
QUANTITIES = (
    mass("m", "Mass of the box", "", "2 kg; 1,5 2 3 4; 1,8 2,4 3,5"),
    slope_angle("theta", "Angle of the ramp", "", "25°; 20 25 30 35; 22 28 33"),
    speed("u", "Speed at the start", "", "4 m/s; 3 4 5; 2,8 3,6 4,5"),
    friction_coefficient("mu_s", "Coefficient of static friction", "", "0,4; 0,3 0,4 0,5; 0,35 0,45 0,55"),
    friction_coefficient("mu_k", "Coefficient of kinetic friction", "", "0,25; 0,2 0,25 0,3; 0,18 0,22 0,28"),
)


def decided(data: Data, values: dict[str, float], back: bool) -> tuple[Point, ...]:
    """Both sizes side by side, and what follows."""
    sizes = [measure(values[name], "N", data.settings.style).text for name in ("F_gpar", "f_smax")]
    told = f"The part of the weight along the slope is {sizes[0]}, the largest static friction {sizes[1]}"
    if back:
        return (
            Point(f"{told}: the part of the weight is larger.", 1, ("larger",)),
            Point("Static friction cannot hold it: it slides back down.", 1, ("slides back",)),
        )
    return (
        Point(f"{told}: the part of the weight is not larger.", 1, ("not larger",)),
        Point("Static friction can hold it: it stays at rest.", 1, ("stays",)),
    )


def story(data: Data) -> str:
    """The data told."""
    facts = (
        f"The ramp makes {data.said['theta']} with the horizontal. The coefficients of friction are {data.said['mu_s']}"
        f" (static) and {data.said['mu_k']} (kinetic)."
    )
    return data.pick(
        f"In a sorting hall a box of {data.said['m']} is pushed up a ramp and let go at {data.said['u']}. It slides"
        f" on up the ramp. {facts}",
        f"A boy gives a wooden box of {data.said['m']} a push up a sloping plank; it leaves his hand at"
        f" {data.said['u']} and slides on up. {facts}",
        f"A box of {data.said['m']} slides up the ramp of a lorry; where the push ends its speed is"
        f" {data.said['u']}. {facts}",
    )


def plan(data: Data) -> Plan:
    """State, diagram, normal force, friction, acceleration, distance, then at rest: compared and decided."""
    v = data.values
    if v["mu_s"] < tan(v["theta"]) <= v["mu_k"]:
        raise Refusal("mu_k", HELD)
    if not (v["theta"] or v["mu_k"]):
        raise Refusal("mu_k", NEVER_STOPS)
    stop = slides_to_rest(
        [Body(v["m"], v["theta"], v["mu_s"], v["mu_k"])], velocity=v["u"], g=data.settings.constants()["g"]
    )
    back = stop is not None and stop.after.state == "moves"
    tilt = degrees(v["theta"])
    rows = (
        ("F_g", "F_g", "the weight, straight down", 270.0),
        ("N", "N", "the normal force, away from the slope at right angles to it", tilt + 90),
        ("f", "f", "friction, down the slope", tilt + 180),
    )
    normal = replace(normal_law(UP), units={"N": "N"})
    work = (
        Part("normal", "calculate", "Calculate the normal force on the box.", (normal.step("N"),)),
        Part("friction", "calculate", "Calculate the friction on the box while it slides up.", (RUBS.step("f"),)),
        Part("slows", "calculate", "Calculate its acceleration on the way up.", (SLOWS.step("a"),)),
        Part("distance", "calculate", "Calculate how far up the ramp it comes to rest.", (STOPS.step("d"),)),
    )
    rest = (
        Part(
            "part", "calculate", "Calculate the part of its weight along the slope.", (PART_OF_WEIGHT.step("F_gpar"),)
        ),
        Part("limit", "calculate", "Calculate the largest static friction on it.", (HOLDS.step("f_smax"),)),
    )
    found = run(Plan("", (*work, *rest), dict(v)), data.settings.constants())
    return Plan(
        story=story(data),
        parts=(
            state(FRICTION),
            free_body("draw", "the box while it slides up", rows, (), data, guide=tilt, derived=weight),
            *work,
            *rest,
            Part(
                "decide",
                "explain",
                "What does the box do after it has come to rest? Give a reason.",
                points=decided(data, found, back),
            ),
        ),
        values=dict(v),
        units={"theta": "°"},
        scene=lambda values: on_surface(tilt, title="The box on the ramp"),
        checks=(
            Check("Energy: the kinetic energy is spent on height and friction", "1/2*m*u^2 = m*g*d*sin(theta) + f*d"),
        ),
        notes=(FBD_RULES,),
        warnings=(ODD,) if v["mu_k"] > v["mu_s"] else (),
    )


RAMP = Question(
    key="ramp",
    title="A box pushed up a ramp",
    **boxes(*QUANTITIES),
    plan=plan,
    laws=(FRICTION.name, KINETIC.name, STATIC.name, SECOND.name),
    constants=("g",),
    scenario=True,
    since=4,
)
