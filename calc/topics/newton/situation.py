"""A situation of the reader's own: bodies on a surface or over pulleys, forces on them; what happens is decided here.

Each body has an equation across and one along its surface; put together they give D, friction, a and the forces between
the bodies. The decision is that of calc.topics.shared.connected. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import degrees, radians

from calc.figures import Figure
from calc.figures.chains import Acting, Lying, chain
from calc.figures.surfaces import Pulled
from calc.model.answers import Point
from calc.model.questions import Check, Data, Draw, Part, Plan, Question, Refusal
from calc.topics.forces.words import lean, pull
from calc.topics.newton import situation_apart
from calc.topics.newton.situation_back import ASKED, FOUND_HERE, KNOWN, WHAT_HAPPENS, put_back, solved, split
from calc.topics.newton.situation_chain import ALSO, CHAIN, FIELD, FORCE, SHAPES, START, Setup, set_up
from calc.topics.newton.situation_laws import (
    STEADY,
    between,
    drive,
    equation,
    kinetic,
    limit,
    links,
    normal,
    resting,
    whole,
)
from calc.topics.newton.situation_practice import DRAWN, practise
from calc.topics.newton.situation_words import (
    changing,
    decided,
    equations,
    name,
    on_surface,
    positive,
    sought,
    story,
    told,
)
from calc.topics.shared.connected import Kind, Outcome, outcome
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import KINETIC, SECOND, STATIC
from calc.topics.shared.quantities import Quantity, charge, field_strength, friction_coefficient, mass, slope_angle
from calc.working.declaring import Given, boxes, state
from calc.working.working import run

SOME_SLOPE = SOME_LEAN = radians(25)  # drawn where the angle is asked
STILL = (
    Point("All forces balance: the net force is zero.", 1, ("net force is zero",)),
    Point("The acceleration is zero.", 1, ("acceleration is zero",)),
)
REST_SLACK = "How they go on from rest is not told here: a string would go slack or the bodies would part."


def maybe(given: Given) -> Given:
    """A box that applies only to some arrangements."""
    return replace(given, box=replace(given.box, optional=True))


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


def from_rest(here: Setup, g: float) -> Outcome:
    """What they do from rest."""
    kinds: list[Kind] = ["contact" if here.shape.touch else "string"] * (here.shape.count - 1)
    return outcome(here.bodies, kinds, g=g)


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
    along = drive(here)
    if along:
        hang = here.shape.behind or here.shape.ahead
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
    else:
        steps = (resting(here).step(f"f_{here.rough[0]}"),) if len(here.rough) == 1 and drive(here) else ()
    if not steps:
        return []
    ask = "Calculate the friction that acts."
    if len(here.rough) > 1:
        ask = "Calculate the friction on each body."
    return [Part("friction", "calculate", ask, steps, also=tuple(step.makes for step in steps[:-1]))]


def follows(here: Setup) -> bool:
    """Whether every friction follows: not where several rough bodies share the load at rest."""
    return here.moves or len(here.rough) < 2


def shared_load(data: Data, here: Setup) -> Part:
    """What can be said of several frictions at rest."""
    g = data.settings.constants()["g"]
    total = sum(body.drive(g) for body in here.bodies)
    between_them = "the tension in a string" if here.link == "T" else "the force between the bodies"
    size = "zero"
    if abs(total) > STEADY:
        size = f"{told(data, total)}, {here.where(-1 if total > 0 else 1).words}"
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


def rows_of(data: Data, here: Setup, n: int) -> tuple[tuple[str, str, str, float], ...] | None:
    """The forces on body n, each with where it points; None where one of them does not follow."""
    shape, body, moved = here.shape, here.bodies[n - 1], here.found.bodies[n - 1]
    tilt, hang, tiny = degrees(body.rise), shape.hangs(n), 1e-9 * body.mass
    rows = [("F_g", f"w{n}", "the weight, straight down", 270.0)]
    if not hang:
        up = "away from the slope at right angles to it" if here.slope else "upwards"
        rows.append(("N", f"N_{n}", f"the normal force, {up}", tilt + 90))
    if n == here.acted:
        slant = degrees(body.pulls[0].angle) if here.force > 0 else 180 - degrees(body.pulls[0].angle)
        side = f", at φ {'below' if here.push else 'above'} the surface" if slant else ""
        way = slant if here.force > 0 else 180 - slant
        rows.append(
            ("P", "P", f"the {'push' if here.push else 'pull'}, {here.where(here.force).words}{side}", way + tilt)
        )
    for extra in (one for one in here.extras if one.n == n):
        label, what = ("F_E", "the electrostatic force") if extra.charge else ("F", "the second force")
        angle = tilt + (0 if extra.way > 0 else 180)
        rows.append((label, label, f"{what}, {here.where(extra.way).words}", angle))
    for link, ahead in ((n, 1), (n - 1, -1)):
        if not 1 <= link < shape.count:
            continue
        force = here.found.links[link - 1].force
        if force is None:
            return None
        if force > tiny:
            way = ahead * (-1 if here.link == "R" else 1)
            what = "the tension" if here.link == "T" else f"the force of {name(here, n + ahead)}"
            where, angle = ("upwards", 90.0) if hang else (here.where(way).words, tilt + (0 if way > 0 else 180))
            rows.append((f"{here.link}_{link}", f"{here.link}_{link}", f"{what}, {where}", angle))
    if moved.friction is None:
        return None
    if abs(moved.friction) > tiny:
        way = 1 if moved.friction > 0 else -1
        rows.append(("f", f"f_{n}", f"friction on it, {here.where(way).words}", tilt + (0 if way > 0 else 180)))
    return tuple(rows)


def diagrams(data: Data, here: Setup) -> list[Part]:
    """A free-body diagram of each body all of whose forces follow."""
    g, parts = data.settings.constants()["g"], list[Part]()
    sizes = {f"{here.link}_{n}": link.force for n, link in enumerate(here.found.links, 1) if link.force is not None}
    for n, (body, moved) in enumerate(zip(here.bodies, here.found.bodies, strict=True), 1):
        rows = rows_of(data, here, n)
        if rows is None:
            continue
        own: dict[str, float] = sizes | {
            f"w{n}": body.mass * g,
            f"N_{n}": moved.normal,
            f"f_{n}": abs(moved.friction or 0.0),
            **{"F_E" if one.charge else "F": one.size for one in here.extras},
        }
        guide = degrees(body.rise) if here.slope and not body.hangs else None
        who = name(here, n)
        parts.append(free_body(f"draw-{n}", who, rows, (), data, f"Free-body diagram of {who}", guide, own.__or__))
    return parts


def scene(data: Data, here: Setup) -> Figure:
    """The surface, the bodies, what joins them and the force."""
    shape, count = here.shape, here.shape.count
    pulled = None
    if here.force:
        pulled = Pulled("P", degrees(data.values.get("phi", SOME_LEAN)), here.push, back=here.force == -1)
    second = field = None
    for extra in here.extras:
        place = here.numbers.index(extra.n)
        if extra.charge:
            field = Lying(place, extra.way == here.field, f"Q_{extra.n}", back=here.field < 0)
        else:
            second = Acting(place, back=extra.way < 0)
    return chain(
        degrees(data.values.get("theta", SOME_SLOPE if here.slope else 0.0)),
        tuple(f"m_{n}" for n in here.numbers),
        touch=shape.touch,
        pulled=pulled,
        front=f"m_{count}" if shape.ahead else "",
        back="m_1" if shape.behind else "",
        second=second,
        field=field,
    )


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
            weight = f"sqrt(N_{n}^2 + (m{n}*g*sin(theta))^2)" if here.slope else f"N_{n}"
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
    here, steps = solved(data)
    each = "the body" if here.shape.count == 1 else "each body"
    ask = f"Write Newton's second law for {each} along its path. {positive(here)}."
    return Plan(
        story=story(data, here),
        parts=(
            state(SECOND),
            *diagrams(data, here),
            Part("equations", "explain", ask, points=equations(here)),
            Part("find", "calculate", sought(here, data.asked), steps),
        ),
        values={name: value for name, value in data.values.items() if name != data.asked},
        units={name: "°" for name in ("theta", "phi") if data.has(name)},
        scene=lambda values: scene(data, here),
        checks=put_back(here, data),
        notes=(FBD_RULES,),
    )


def parted(data: Data, here: Setup) -> Plan:
    """A string goes slack or the bodies part: each on its own."""
    first, after, checks_ = situation_apart.parts(here, data)
    return Plan(
        story=story(data, here),
        parts=(state(SECOND), *first, *diagrams(data, here), *after),
        values=dict(data.values),
        units={name: "°" for name in ("theta", "phi") if data.has(name)},
        scene=lambda values: scene(data, here),
        checks=checks_,
        notes=(FBD_RULES, situation_apart.LATER),
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
    here = set_up(data.choices, data.values, g, apart=True)
    if here.found.slack:
        return parted(data, here)
    rest = from_rest(here, g)
    work = [*forces(here), *([] if here.start else holds(here))]
    act = [*rubbing(here), *diagrams(data, here), *motion(data, here)]
    calculated = tuple(part for part in (*work, *act) if part.steps)
    v = run(Plan("", calculated, dict(data.values)), constants)
    notes = [FBD_RULES]
    if here.start:
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
    return Plan(
        story=story(data, here),
        parts=(state(SECOND), *work, *act),
        values=dict(data.values),
        units={name: "°" for name in ("theta", "phi") if data.has(name)},
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
        *CHARGED,
        *OWN_RUB,
        example={"chain": "edge", "force": "none", "start": "rest", "P": "", "phi": "", "theta": "20°"},
        draws={
            # two over one pulley have a question of their own, and nearly every draw of them is apart
            "chain": Draw(tuple(key for key in SHAPES if key != "pulley")),
            "force": Draw(("none", "pull-on", "push-on", "pull-back", "push-back")),
            "start": Draw(("rest", "rest", "on", "back")),
        },
    ),
    plan=plan,
    unknowns=("a", *ASKED),
    drawn=("a", *DRAWN),
    asks="a",
    drawn_since=5,
    laws=(SECOND.name, STATIC.name, KINETIC.name),
    constants=("g",),
    adjust=practise,
    scenario=True,
    since=4,
)
