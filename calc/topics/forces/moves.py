"""Whether a body at rest moves: the forces along the surface beside the largest static friction, then what it does.

D = P cos φ − mg sin θ, N = mg cos θ − P sin φ (a push: + P sin φ); at rest while |D| ≤ μsN, with f = |D|; else
f = μkN against the motion and ma = D − f. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, degrees, radians, sin
from typing import Literal

from calc.figures import Figure
from calc.figures.surfaces import Pulled, on_surface
from calc.model.answers import Direction, Point
from calc.model.directions import ALONG_SLOPE, LEFT_RIGHT
from calc.model.questions import Check, Choice, Data, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.forces.words import (
    ALL_ALONG,
    BY_WEIGHT,
    HEAVIER,
    LIFTS,
    LIGHTER,
    NO_G,
    PLAIN_F,
    PLAIN_N,
    SINE,
    SINE_SLOPE,
    STILL_AT_REST,
    SWAPPED,
    TWO,
    WEIGHT_ALWAYS,
    lean,
    pull,
    typed_as,
    weight,
)
from calc.topics.shared.connected import Body, Outcome, Pull, outcome
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import FIRST, KINETIC, PLAIN_STATIC, STATIC
from calc.topics.shared.quantities import friction_coefficient, mass, slope_angle
from calc.working.declaring import Mistake, boxes, state
from calc.working.working import measure, run

ODD = "μₖ is larger than μₛ. Kinetic friction is usually the smaller of the two: check the coefficients."
HELD = (
    "With these coefficients kinetic friction would stop it as soon as it starts: μₖ may not be larger than μₛ. Check"
    " the coefficients."
)
STILL = "You used the largest static friction although it stays at rest. It only matches {D}: use that."
KINETIC_REST = (
    "You used kinetic friction although it stays at rest. It is not sliding: use {D}, which static friction matches."
)
STATIC_SLIDES = "You used the static coefficient although it slides. Once it slides, use {mu_k*N}."
MATCHES = "You let friction match the other forces although it slides. Use kinetic friction then: {mu_k*N}."
HOW = Choice("how", "The force is", (("pull", "a pull, slanting upwards"), ("push", "a push, slanting downwards")))
BOXES = (
    mass("m", "Mass", "", "5 kg; 3 4 5 8; 3,5 6,5 8,5"),
    slope_angle("theta", "Angle of the surface (0: level)", "", "0°; 0 20 25 30; 0 22 28 32"),
    pull("P", "Force", "", "20 N; 20 30 40; 15 25 35"),
    lean("phi", "Angle of the force with the surface", "", "30°; 20 25 30 35; 22 28 36"),
    friction_coefficient("mu_s", "Coefficient of static friction", "", "0,6; 0,4 0,5 0,6; 0,35 0,45 0,55"),
    friction_coefficient("mu_k", "Coefficient of kinetic friction", "", "0,4; 0,2 0,25 0,3; 0,15 0,22 0,28"),
)
TALES = {
    ("pull", False): (
        "A crate stands on a level floor, and a rope pulls it to the right.",
        "A sledge stands on level ground. A dog pulls it to the right by a strap.",
        "A cable pulls to the right at a chest that stands on a level deck.",
    ),
    ("push", False): (
        "A crate stands on a level floor, and somebody pushes it to the right with a pole.",
        "A sledge stands on level ground and is pushed to the right with a stick.",
        "A rod pushes to the right at a chest that stands on a level deck.",
    ),
    ("pull", True): (
        "A crate stands on a ramp, and a rope pulls it up the ramp.",
        "A sledge stands on an even hillside. A strap pulls it uphill.",
        "A cable pulls at a chest on a sloping deck, up the slope.",
    ),
    ("push", True): (
        "A crate stands on a ramp, and somebody pushes it up the ramp with a pole.",
        "A sledge stands on an even hillside and is pushed uphill with a stick.",
        "A rod pushes at a chest on a sloping deck, up the slope.",
    ),
}


@dataclass(frozen=True)
class Judged:
    """What the numbers decide. slope, up: the surface, and whether P lifts. way: of D, +1 forwards or up the slope."""

    slope: bool
    up: bool
    way: int
    found: Outcome

    @property
    def stays(self) -> bool:
        """Whether it stays at rest."""
        return self.found.state != "moves"

    def where(self, way: int) -> Direction:
        """Forwards and backwards as directions."""
        if self.slope:
            return ALONG_SLOPE.of("up-slope" if way > 0 else "down-slope")
        return LEFT_RIGHT.of("right" if way > 0 else "left")


def judged(data: Data) -> Judged:
    """Rest or motion, decided by the numbers; refuses what lifts off or contradicts itself."""
    v = data.values
    up, g = data.choices["how"] == "pull", data.settings.constants()["g"]
    theta, phi = v["theta"], v["phi"] * (1 if up else -1)
    body = Body(v["m"], theta, v["mu_s"], v["mu_k"], (Pull(v["P"], phi),))
    found = outcome([body], g=g)
    if found.state == "lifts off":
        raise Refusal("P", LIFTS)
    drive, limit = found.bodies[0].drive, v["mu_s"] * found.bodies[0].normal
    if limit < abs(drive) <= v["mu_k"] * found.bodies[0].normal:
        raise Refusal("mu_k", HELD)
    return Judged(theta > 0, up, -1 if drive < 0 else 1, found)


def normal_law(here: Judged) -> Relation:
    """Forces across the surface."""
    lean_, pressed = ("*cos(theta)" if here.slope else ""), ("-" if here.up else "+")
    across = f"m*g{lean_} {pressed} P*sin(phi)"
    slips = [
        Mistake("normal-is-weight", "N", "m*g", WEIGHT_ALWAYS % across),
        Mistake("vertical-part-wrong-way", "N", across.replace(pressed, "+" if here.up else "-"), PART_WAY[here.up]),
        Mistake("mass-for-weight", "N", across.replace("m*g", "m"), NO_G),
    ]
    if here.slope:
        slips.append(Mistake("sin-cos", "N", across.replace("cos(theta)", "sin(theta)"), SWAPPED))
    return Relation(
        f"N = {across}",
        what="Balance the forces across the surface",
        why="It does not leave the surface, so the forces at right angles to it balance: "
        + ("P sin φ takes away from what presses it down." if here.up else "P sin φ adds to what presses it down."),
        units={"N": "N"},
        plain=PLAIN_N,
        mistakes=tuple(slips),
    )


def along_law(here: Judged) -> Relation:
    """D: the forces along the surface, friction left out."""
    sum_ = "P*cos(phi) - m*g*sin(theta)" if here.slope else "P*cos(phi)"
    slips = [Mistake("all-along", "D", sum_.replace("*cos(phi)", ""), ALL_ALONG)]
    if here.slope:
        slips.append(Mistake("sin-cos", "D", sum_.replace("sin(theta)", "cos(theta)"), SINE_SLOPE))
    else:
        slips.append(Mistake("sine-along", "D", sum_.replace("cos(phi)", "sin(phi)"), SINE))
    return Relation(
        f"D = {sum_}",
        what="Add the forces along the surface, friction left out",
        why=(
            "Up the slope is positive: P cos φ acts up the slope, mg sin θ down."
            if here.slope
            else "Forwards, to the right, is positive: only the part of P along the level counts."
        ),
        units={"D": "N"},
        plain="This is what friction would have to hold.",
        directions={"D": here.where(1)},
        mistakes=tuple(slips),
    )


LIMIT = Relation(
    "f_smax = mu_s*N",
    what="The largest static friction",
    why="Static friction can have any size up to this one.",
    units={"f_smax": "N"},
    plain=PLAIN_F,
    marks=TWO,
    quotes=(STATIC.name,),
    mistakes=(
        Mistake("kinetic-for-static", "f_smax", "mu_k*N", STILL_AT_REST),
        Mistake("weight-for-normal", "f_smax", "mu_s*m*g", BY_WEIGHT),
    ),
)
PART_WAY = {True: LIGHTER, False: HEAVIER}


def friction_law(here: Judged) -> Relation:
    """f = |D| at rest, μk·N in motion."""
    if here.stays:
        return Relation(
            "f = D" if here.way == 1 else "f = -D",
            what="The friction that acts",
            why="It stays at rest, so the net force is zero: static friction is just as large as what it holds.",
            units={"f": "N"},
            plain=PLAIN_STATIC,
            marks=TWO,
            directions={"f": here.where(-here.way)},
            mistakes=(
                Mistake("largest-although-at-rest", "f", "f_smax", STILL),
                Mistake("kinetic-at-rest", "f", "mu_k*N", KINETIC_REST),
            ),
        )
    return Relation(
        "f = mu_k*N",
        what="The friction that acts",
        why="It slides, so friction is kinetic, against the motion.",
        units={"f": "N"},
        plain=PLAIN_F,
        marks=TWO,
        quotes=(KINETIC.name,),
        directions={"f": here.where(-here.way)},
        mistakes=(
            Mistake("static-for-kinetic", "f", "mu_s*N", STATIC_SLIDES),
            Mistake("matches", "f", "abs(D)", MATCHES),
        ),
    )


def told(data: Data, value: float, unit: str = "N") -> str:
    """A value as a sentence has it."""
    return measure(abs(value), unit, data.settings.style).text


def decided(data: Data, here: Judged, v: Values) -> tuple[Point, ...]:
    """Both sizes side by side, and what follows."""
    sizes = f"D is {told(data, v['D'])} and the largest static friction is {told(data, v['f_smax'])}"
    if here.found.state == "limit":
        return (
            Point(f"{sizes}: they are the same.", 1, ("the same",)),
            Point("Static friction just holds it: it stays at rest, and the least bit more moves it.", 1, ("at rest",)),
        )
    if here.stays:
        return (
            Point(f"{sizes}: D is smaller.", 1, ("smaller",)),
            Point("Static friction can hold it: it stays at rest.", 1, ("stays at rest",)),
        )
    return (
        Point(f"{sizes}: D is larger.", 1, ("larger",)),
        Point(f"Static friction cannot hold it: it starts to slide {here.where(here.way).words}.", 1, ("slide",)),
    )


def then(data: Data, here: Judged, v: Values) -> tuple[Point, ...]:
    """Net force and acceleration in words."""
    if here.stays:
        return (
            Point("Friction balances the other forces: the net force is zero.", 1, ("net force is zero",)),
            Point("Its acceleration is zero.", 1, ("acceleration is zero",)),
        )
    net = abs(v["D"]) - v["f"]
    way = here.where(here.way).words
    return (
        Point(f"The net force is D less friction: {told(data, net)} {way}.", 1, (told(data, net), way)),
        Point(f"a = F_net/m = {told(data, net / v['m'], 'm·s⁻²')} {way}.", 1, (told(data, net / v["m"], "m·s⁻²"),)),
    )


def parts(data: Data, here: Judged) -> tuple[Part, ...]:
    """From the normal force to what it does."""
    along = along_law(here).step("D")
    work = (
        Part("normal", "calculate", "Calculate the normal force on the body.", (normal_law(here).step("N"),)),
        Part(
            "along",
            "calculate",
            "Calculate D, the sum of the forces along the surface without friction.",
            (along,),
        ),
        Part("limit", "calculate", "Calculate the largest static friction.", (LIMIT.step("f_smax"),)),
    )
    acts = Part(
        "friction", "calculate", "Calculate the friction that acts on it then.", (friction_law(here).step("f"),)
    )
    v = run(Plan("", (*work, acts), dict(data.values)), data.settings.constants())
    tilt = degrees(data.values["theta"])
    slant = degrees(data.values["phi"]) * (1 if here.up else -1)
    back = here.where(-here.way).words
    noun = "pull, at φ above the surface" if here.up else "push, at φ below the surface"
    rows = (
        ("F_g", "F_g", "the weight, straight down", 270.0),
        (
            "N",
            "N",
            (
                "the normal force, away from the slope at right angles to it"
                if here.slope
                else "the normal force, upwards"
            ),
            90 + tilt,
        ),
        (
            "P",
            "P",
            f"the {noun}",
            slant + tilt,
        ),
        ("f", "f", f"friction, {back}", tilt + (180 if here.way == 1 else 0)),
    )
    guide = tilt if here.slope else None
    return (
        *work,
        free_body("draw", "the body", rows, (), data, guide=guide, derived=weight),
        Part("decide", "explain", "Does the body stay at rest or move? Give a reason.", points=decided(data, here, v)),
        acts,
        Part("then", "explain", "Give the net force on it and its acceleration then.", points=then(data, here, v)),
    )


def scene(data: Data) -> Figure:
    """The body with its rope or pole."""
    v = data.values
    push = data.choices["how"] == "push"
    return on_surface(degrees(v["theta"]), Pulled("P", degrees(v["phi"]), push), title="The body and the force P")


def facts(data: Data, here: Judged) -> str:
    """The data in sentences."""
    said, noun = data.said, "pull" if here.up else "push"
    tilt = f" The slope makes {said['theta']} with the horizontal." if here.slope else ""
    side = "above" if here.up else "below"
    angle = (
        f"at {said['phi']} {side} the {'slope' if here.slope else 'level'}"
        if data.values["phi"]
        else "parallel to the surface"
    )
    return (
        f"Its mass is {said['m']}.{tilt} The {noun} is {said['P']}, {angle}. The coefficients of friction are"
        f" {said['mu_s']} (static) and {said['mu_k']} (kinetic). At first it is at rest."
    )


def plan(data: Data) -> Plan:
    """State, normal force, forces along the surface, limit, decide, friction, acceleration."""
    here = judged(data)
    tale = data.pick(*TALES[data.choices["how"], here.slope])
    return Plan(
        story=f"{tale} {facts(data, here)}",
        parts=(state(STATIC), *parts(data, here)),
        values=dict(data.values),
        units={"theta": "°", "phi": "°"},
        scene=lambda v: scene(data),
        checks=(squares(here),),
        notes=(FBD_RULES,),
        warnings=(ODD,) if data.values["mu_k"] > data.values["mu_s"] else (),
    )


def squares(here: Judged) -> Check:
    """All forces but friction, added head to tail: their parts along and across the surface give the same size."""
    sign, turn = ("-", "+") if here.up else ("+", "-")
    level = f"P^2 + (m*g)^2 {sign} 2*P*m*g*sin(phi)"
    slope = f"P^2 + (m*g)^2 {sign} 2*P*m*g*sin(phi {turn} theta)"
    return Check(
        "Pull and weight added head to tail have the same parts: Pythagoras and the cosine rule agree",
        f"D^2 + N^2 = {slope if here.slope else level}",
    )


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """A force below or above the one at which it slips, about as often."""
    toss = chance.random  # type: ignore[attr-defined]
    number = {name: float(str(typed[name]).split("°")[0].split()[0].replace(",", ".")) for name in NAMES}
    theta, phi = radians(number["theta"]), radians(number["phi"])
    phi = phi if typed["how"] == "pull" else -phi
    slips = number["m"] * 9.8 * (sin(theta) + number["mu_s"] * cos(theta))
    slips /= cos(phi) + number["mu_s"] * sin(phi)
    share = 0.55 + 0.3 * toss() if toss() < 0.5 else 1.15 + 0.3 * toss()
    return {**typed, "P": typed_as(share * slips, "N", 2)}


NAMES: tuple[Literal["m", "theta", "phi", "mu_s"], ...] = ("m", "theta", "phi", "mu_s")
MOVES = Question(
    key="moves",
    title="Does it move?",
    **boxes(HOW, *BOXES),
    plan=plan,
    laws=(STATIC.name, KINETIC.name, FIRST.name),
    constants=("g",),
    adjust=practise,
    since=4,
)
