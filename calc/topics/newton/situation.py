"""A situation of the reader's own: bodies on a surface or over pulleys, forces on them; what happens is decided here.

Each body has an equation across and one along its surface; put together they give D, friction, a and the forces between
the bodies. The decision is that of calc.topics.shared.connected. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.model.answers import Point
from calc.model.questions import Check, Data, Draw, Part, Plan, Question, Refusal
from calc.topics.forces.words import lean, pull
from calc.topics.newton import situation_apart
from calc.topics.newton import situation_charges as charges
from calc.topics.newton.situation_back import ASKED, FOUND_HERE, KNOWN, WHAT_HAPPENS, put_back, solved, split
from calc.topics.newton.situation_chain import START, Setup, set_up
from calc.topics.newton.situation_drawn import diagrams, scene
from calc.topics.newton.situation_extras import ALSO, FIELD, FIXED
from calc.topics.newton.situation_laws import (
    STEADY,
    between,
    drive,
    equation,
    greatest,
    kinetic,
    limit,
    links,
    normal,
    resting,
    whole,
)
from calc.topics.newton.situation_practice import DRAWN, DRAWN_LATER, practise
from calc.topics.newton.situation_shapes import CHAIN, FORCE, SHAPES
from calc.topics.newton.situation_words import (
    at_once,
    changing,
    decided,
    equations,
    later,
    name,
    on_surface,
    other_way,
    positive,
    sought,
    story,
    told,
)
from calc.topics.shared.connected import Kind, Outcome, outcome
from calc.topics.shared.free_bodies import FBD_RULES
from calc.topics.shared.motion_laws import KINETIC, SECOND, STATIC
from calc.topics.shared.quantities import (
    Quantity,
    charge,
    distance,
    field_strength,
    friction_coefficient,
    mass,
    slope_angle,
)
from calc.working.declaring import Given, boxes, state
from calc.working.working import run

STILL = (
    Point("All forces balance: the net force is zero.", 1, ("net force is zero",)),
    Point("The acceleration is zero.", 1, ("acceleration is zero",)),
)
REST_SLACK = "How they go on from rest is not told here: a string would go slack or the bodies would part."


def maybe(given: Given) -> Given:
    """A box that applies only to some arrangements."""
    return replace(given, box=replace(given.box, optional=True))


def newest(given: Given) -> Given:
    """The same, from the newest one on."""
    return replace(given, box=replace(given.box, optional=True, since=6))


def younger(given: Given) -> Given:
    """The same, from a later rule of drawing on."""
    return replace(given, box=replace(given.box, optional=True, since=5))


ALONG = Quantity(
    "m·s⁻²",
    1e-3,
    1e3,
    typed="m/s^2",
    signed=True,
    help="minus: against the motion",
)
tension = Quantity("N", 1e-3, 1e6, "Give the size of this force, greater than zero.", result="measured")

BOXES = (
    mass("m1", "Mass of the first body", "", "8 kg; 3 4 5 8; 3,5 6,5 8,5"),
    maybe(mass("m2", "Mass of the second body", "", "6 kg; 5 6 8; 4,5 6,5 7,5")),
    maybe(mass("m3", "Mass of the third body", "", "; 8 6 4; 7,5 6,5 4,5")),
    maybe(slope_angle("theta", "Angle of the surface (0: level)", "", "10°; 0 30 35 40; 0 28 34 38")),
    newest(slope_angle("theta2", "Angle of the slope on the right", "")),
    maybe(pull("P", "Size of the force", "", "75 N; 40 50 60; 45 55 65")),
    maybe(lean("phi", "Angle of the force with the surface", "", "30°; 25 30 35; 26 32 36")),
    maybe(friction_coefficient("mu_s", "Coefficient of static friction", "", "0,3; 0,3 0,35 0,4; 0,32 0,36 0,42")),
    maybe(friction_coefficient("mu_k", "Coefficient of kinetic friction", "", "0,2; 0,15 0,2 0,25; 0,12 0,18 0,24")),
)
NAMES = tuple(one.box.name for one in BOXES)
KNOWN_BOXES = (
    younger(ALONG("a", "Acceleration (what happens)", "")),
    younger(tension("T_1", "Tension, first to second", "")),
    younger(tension("T_2", "Tension, second to third", "")),
    younger(tension("R_1", "Contact force, first and second", "")),
    younger(tension("R_2", "Contact force, second and third", "")),
)
SECOND_FORCE = younger(pull("F", "Size of the second force", ""))
OWN_RUB = tuple(
    younger(friction_coefficient(f"mu_{kind[0]}{n}", f"{kind.capitalize()} coefficient of the {place} body alone", ""))
    for n, place in ((2, "second"), (3, "third"))
    for kind in ("static", "kinetic")
)
CHARGED = (
    younger(field_strength("E", "Strength of the electric field", "")),
    younger(charge("Q1", "Charge of the first body", "", unit="µC")),
    younger(charge("Q2", "Charge of the second body", "", unit="µC")),
    younger(charge("Q3", "Charge of the third body", "", unit="µC")),
)
NEARBY = (
    newest(charge("Q", "Fixed charge", "", unit="µC")),
    newest(distance("r", "Distance between the two charges", "", high=10)),
)
AT_ONCE = (
    "This holds at the moment that is told: as they move, the distance between the charges changes, and with it the"
    " force."
)


def from_rest(here: Setup, g: float) -> Outcome:
    """What they do from rest."""
    kinds: list[Kind] = ["contact" if here.shape.touch else "string"] * (here.shape.count - 1)
    return outcome(here.bodies, kinds, g=g)


def electric(here: Setup) -> list[Part]:
    """The force of a fixed charge."""
    if not here.beside:
        return []
    ask = f"Calculate the electrostatic force on {name(here, here.beside.n)}."
    return [Part("electric", "calculate", ask, (charges.coulomb(here).step("F_E"),))]


def forces(here: Setup) -> list[Part]:
    """Normal forces and D."""
    normals = tuple(normal(here, n).step(f"N_{n}") for n in here.numbers)
    parts = list[Part]()
    if normals:
        each = f"the normal force on {on_surface(here)}"
        if len(normals) > 1:
            each = "the normal force on each body on the surface"
        also = tuple(step.makes for step in normals[:-1])
        parts.append(Part("normal", "calculate", f"Calculate {each}.", normals, also=also))
    parts += electric(here)
    along = drive(here)
    if along:
        hang = here.shape.behind or here.shape.ahead or here.shape.ridge
        ask = f"Calculate D, the sum of the forces along the {'string' if hang else 'surface'} without friction"
        every = "." if here.shape.count == 1 else ", for all bodies together."
        parts.append(Part("along", "calculate", ask + every, (along.step("D"),)))
    return parts


def holds(here: Setup) -> list[Part]:
    """The largest static friction."""
    if not here.rough:
        return []
    ask = "Calculate the largest static friction."
    if len(here.rough) > 1:
        ask = "Calculate the largest static friction, on all bodies together."
    return [Part("limit", "calculate", ask, (limit(here).step("f_smax"),))]


def rubbing(here: Setup) -> list[Part]:
    """The friction that acts, where it follows."""
    if here.moves:
        steps = tuple(kinetic(here, n).step(f"f_{n}") for n in here.rough if here.bodies[n - 1].mu_k > 0)
    elif here.all_at_limit:
        steps = tuple(greatest(here, n).step(f"f_{n}") for n in here.rough)
    else:
        steps = (resting(here).step(f"f_{here.rough[0]}"),) if len(here.rough) == 1 and drive(here) else ()
    if not steps:
        return []
    ask = "Calculate the friction that acts."
    if len(here.rough) > 1:
        ask = "Calculate the friction on each body."
    return [Part("friction", "calculate", ask, steps, also=tuple(step.makes for step in steps[:-1]))]


def follows(here: Setup) -> bool:
    """Whether every friction follows: not where several rough bodies share the load at rest, short of the limit."""
    return here.moves or len(here.rough) < 2 or here.all_at_limit


def shared_load(data: Data, here: Setup) -> Part:
    """What can be said of several frictions at rest."""
    g = data.settings.constants()["g"]
    total = sum(body.drive(g) for body in here.bodies)
    between_them = "the tension in a string" if here.link == "T" else "the force between the bodies"
    size = "zero"
    if abs(total) > STEADY:
        size = f"{told(data, total)}, {here.where(-1 if total > 0 else 1).words}"
        if here.left:
            size = f"{told(data, total)} along the string, on the left {here.where(-1 if total > 0 else 1).words}"
    points = (
        Point(f"Only the sum of the frictions can be found: it balances D, so it is {size}.", 1, ("sum",)),
        Point(
            f"How they share it does not follow: each may have any size up to its own limit. So {between_them} on the"
            " surface cannot be found.",
            1,
            ("cannot be found",),
        ),
    )
    ask = f"Can the friction on each body and {between_them} be found? Give a reason."
    return Part("shared", "explain", ask, points=points)


def motion(data: Data, here: Setup) -> list[Part]:
    """The equations of the bodies, a, and the forces between them."""
    parts = list[Part]()
    if follows(here):
        way = "motion" if here.start else "D"
        each = "the body" if here.shape.count == 1 else "each body"
        ask = f"Write Newton's second law for {each}, with the direction of {way} positive."
        parts.append(Part("equations", "explain", ask, points=equations(here)))
        if here.moves:
            ask = f"Calculate the acceleration of {on_surface(here)}."
            parts.append(Part("acceleration", "calculate", ask, (whole(here).step("a"),)))
        else:
            ask = f"Give the net force and the acceleration of {on_surface(here)}."
            parts.append(Part("acceleration", "explain", ask, points=STILL))
    elif drive(here):
        parts.append(shared_load(data, here))
    for link, body in links(here):
        law = between(here, link, body, name(here, body))
        pair = f"between {name(here, link)} and {name(here, link + 1)}"
        what = f"the force that the bodies exert on each other, {pair}" if here.link == "R" else f"the tension {pair}"
        parts.append(Part(f"link-{link}", "calculate", f"Calculate {what}.", (law.step(f"{here.link}_{link}"),)))
    return parts


def checks(here: Setup) -> tuple[Check, ...]:
    """The equations of the bodies that were not used, else the parts of all forces on one body."""
    used = {body for _, body in links(here)}
    found = [
        Check(f"The equation of {name(here, n)} agrees", equation(here, n), sizes=here.sizes)
        for n in range(1, here.shape.count + 1)
        if n not in used and follows(here) and here.shape.count > 1
    ]
    if not found and here.numbers:
        n = here.numbers[0]
        if n != here.acted:
            weight = f"sqrt(N_{n}^2 + (m{n}*g*sin({here.angle(n)}))^2)" if here.slope else f"N_{n}"
            found.append(Check("The parts of the weight make it up again", f"{weight} = m{n}*g"))
        elif here.shape.count == 1 and not here.extras:
            sign = "+" if here.push else "-"
            turn = f"phi {'-' if (here.force > 0) == here.push else '+'} theta" if here.slope else "phi"
            found.append(
                Check(
                    "Force and weight added head to tail: Pythagoras and the cosine rule agree",
                    f"D^2 + N_{n}^2 = P^2 + (m{n}*g)^2 {sign} 2*P*m{n}*g*sin({turn})",
                )
            )
    if not found and not here.shape.on:
        found.append(Check("Both bodies give the same tension", "T_1 = m2*g"))
    return tuple(found)


def plan(data: Data) -> Plan:
    """What happens, or what is asked instead from what happens."""
    return forwards(data) if data.asked == "a" else backwards(data)


def backwards(data: Data) -> Plan:
    """The diagrams and the equations of the bodies, and what is asked from them."""
    found = solved(data)
    here = found.here
    each = "the body" if here.shape.count == 1 else "each body"
    ask = f"Write Newton's second law for {each} along its path. {positive(here)}."
    sign = data.asked in charges.ASKED and data.asked != "r"
    also = tuple[Part, ...]()
    if found.other:
        ask_other = other_way(found.other.here, data.asked)
        also = (Part("other", "calculate", ask_other, found.other.steps, asks_sign=sign),)
    return Plan(
        story=story(data, here),
        parts=(
            state(SECOND),
            *diagrams(data, here),
            Part("equations", "explain", ask, points=equations(here)),
            Part("find", "calculate", sought(here, data.asked), found.steps, asks_sign=sign),
            *also,
        ),
        values={name: value for name, value in data.values.items() if name != data.asked},
        units={name: "°" for name in ("theta", "theta2", "phi") if data.has(name)},
        scene=lambda values: scene(data, here),
        checks=put_back(here, data),
        notes=(FBD_RULES, *((AT_ONCE,) if here.beside and not here.balanced else ())),
    )


def parted(data: Data, here: Setup) -> Plan:
    """A string goes slack or the bodies part: each on its own."""
    first, after, checks_ = situation_apart.parts(here, data)
    return Plan(
        story=story(data, here),
        parts=(state(SECOND), *electric(here), *first, *diagrams(data, here), *after),
        values=dict(data.values),
        units={name: "°" for name in ("theta", "theta2", "phi") if data.has(name)},
        scene=lambda values: scene(data, here),
        checks=checks_,
        notes=(FBD_RULES, situation_apart.LATER, *((AT_ONCE,) if here.beside else ())),
    )


def forwards(data: Data) -> Plan:
    """Across and along the surface, rest or motion, diagrams, equations, a, forces between; what follows a stop."""
    constants = data.settings.constants()
    g = constants["g"]
    if split(data.choices)[0] != data.choices:
        raise Refusal("start", WHAT_HAPPENS)
    for box in KNOWN:
        if data.has(box):
            raise Refusal(box, FOUND_HERE)
    here = set_up(data.choices, data.known)
    if here.found.slack:
        return parted(data, here)
    rest = from_rest(here, g)
    work = [*forces(here), *([] if here.start else holds(here))]
    act = [*rubbing(here), *diagrams(data, here), *motion(data, here)]
    calculated = tuple(part for part in (*work, *act) if part.steps)
    v = run(Plan("", calculated, dict(data.values)), constants)
    notes = [FBD_RULES]
    if here.beside and here.moves:
        notes.append(AT_ONCE)
    if here.beside and here.start:
        ask = "Does the motion become faster or slower at this moment? Give a reason."
        act.append(Part("motion", "explain", ask, points=at_once(here, v)))
    elif here.start:
        told = None if rest.slack else rest
        slows = v["a"] < -STEADY
        if slows and not told:
            notes.append(REST_SLACK)
        ask = "Does the motion become faster or slower, and what happens if it comes to rest? Give reasons."
        act += [*holds(here), Part("motion", "explain", ask, points=changing(here, v, told))]
    else:
        who = "the body stay at rest or move" if here.shape.count == 1 else "the bodies stay at rest or move"
        work.append(
            Part(
                "decide",
                "explain",
                f"Does {who}? Give a reason.".replace("Does the bodies", "Do the bodies"),
                points=decided(data, here, here.found, v),
            )
        )
    if here.beside and here.moves:
        ask = "Does the acceleration stay the same as they move on? Give a reason."
        one = here.shape.count == 1
        act.append(Part("later", "explain", ask.replace("they move", "it moves") if one else ask, points=later(here)))
    return Plan(
        story=story(data, here),
        parts=(state(SECOND), *work, *act),
        values=dict(data.values),
        units={name: "°" for name in ("theta", "theta2", "phi") if data.has(name)},
        scene=lambda values: scene(data, here),
        checks=checks(here),
        notes=tuple(notes),
    )


SITUATION = Question(
    key="situation",
    title="A situation of your own",
    **boxes(
        CHAIN,
        FORCE,
        START,
        *BOXES,
        *KNOWN_BOXES,
        ALSO,
        SECOND_FORCE,
        FIELD,
        FIXED,
        *CHARGED,
        *NEARBY,
        *OWN_RUB,
        example={"chain": "edge", "force": "none", "start": "rest", "P": "", "phi": "", "theta": "20°"},
        draws={
            # two over one pulley have a question of their own, and nearly every draw of them is apart
            "chain": Draw(tuple(key for key in SHAPES if key not in ("pulley", "ridge"))),
            "force": Draw(("none", "pull-on", "push-on", "pull-back", "push-back")),
            "start": Draw(("rest", "rest", "on", "back")),
        },
    ),
    plan=plan,
    unknowns=("a", *ASKED),
    drawn=("a", *DRAWN),
    drawn_later=DRAWN_LATER,
    asks="a",
    drawn_since=5,
    laws=(SECOND.name, STATIC.name, KINETIC.name),
    constants=("g", "k"),
    adjust=practise,
    scenario=True,
    since=4,
)
