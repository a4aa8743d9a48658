"""A body on a slope, tied over a pulley at its top to one that hangs: it moves up or down, or stays.

N = m₁g cos θ, f = μN. Moving up: T − m₁g sin θ − f = m₁a and m₂g − T = m₂a; moving down: m₁g sin θ − T − f = m₁a and
T − m₂g = m₂a. From rest it moves up where m₂g is larger than m₁g sin θ + f, down where it is smaller than
m₁g sin θ − f, and stays in between (see :mod:`calc.topics.newton.at_rest`).
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from math import cos, degrees, radians, sin

from calc.figures import Figure
from calc.figures.connected import over_the_top
from calc.model.directions import ALONG_SLOPE
from calc.model.questions import Check, Choice, Data, Plan, Refusal, Values
from calc.topics.newton import at_rest, cut
from calc.topics.newton.edge import HANGS
from calc.topics.newton.pairs import (
    AT_ONCE,
    FREE,
    HANGING_WEIGHT,
    NET_ONLY,
    NO_FRICTION,
    ONE_MASS,
    OTHER_BODY,
    PLAIN_F,
    PLAIN_ONE,
    Rows,
    Set,
    coefficient,
    common,
    connected,
    masses,
    put_together,
    sizes,
    string,
)
from calc.topics.shared.connected import HANGING, Body, outcome
from calc.topics.shared.motion_laws import SECOND
from calc.topics.shared.quantities import slope_angle
from calc.working.declaring import Limit, Mistake, Relation
from calc.working.solving import Laws

STAYS = (
    "Friction can hold the difference: released from rest they stay, so a = 0 and T = m₂g. Choose “not said”, or change"
    " a mass, the angle or the coefficient."
)
AGAINST_IT = (
    "The acceleration would come out against the motion: with these numbers they do not speed up that way. Check the"
    " tension, a mass, the angle or the coefficient."
)
FOLLOWS = "With these numbers they stay at rest: a = 0 and T = m₂g follow. Leave this box empty, or change a number."
OTHER_WAY = "Released from rest with these numbers they move the other way: choose “{}”."
SAY = "Say which way they move: choose “moves up the slope” or “moves down the slope”, or give both masses, θ and μ."
NORMAL_SINE = "You took the sine for the part of the weight across the slope. Try it on the level: use {cos(theta)}."
ALONG_COSINE = "You took the cosine for the part of the weight along the slope. Try it on the level: use {sin(theta)}."
LEVEL_N = (
    "You used the whole weight for the normal force. On a slope only a part presses into it: use {m1*g*cos(theta)}."
)
NO_PART = "You left the part of the weight along the slope out. Put {m1*g*sin(theta)} in as well."
WAY = Choice(
    "way",
    "The body on the slope",
    (("up", "moves up the slope"), ("down", "moves down the slope"), ("unsaid", "not said: moves or stays")),
    quiet=("unsaid",),
)
BOXES = (
    *masses("the body on the slope", "the body that hangs", "4 kg; 3 4 5 6; 2,5 3,5 5,5", "3 kg; 2 3 4 6; 1,5 2,5 4,5"),
    slope_angle("theta", "Angle of the slope", "The slope makes {} with the horizontal.", "30°; 20 25 30 35; 22 28 36"),
    coefficient("with the slope", "0,2; 0,1 0,15 0,2 0,25; 0,12 0,18 0,22"),
    replace(common("?; 1 1,5 2 2,5; 0,8 1,6 2,4"), ask="Calculate the acceleration of the body on the slope."),
    string("; 12 15 20; 14 18 22"),
)


def moving(data: Data) -> int:
    """Which way the body on the slope moves: +1 up, −1 down, 0 at rest. Refuses what the numbers do not allow."""
    said = {"up": 1, "down": -1}.get(data.choices["way"], 0)
    v = data.values
    if not {"m1", "m2", "theta", "mu"} <= v.keys():
        if not said:
            raise Refusal("way", SAY)
        return said
    pair = [Body(v["m1"], v["theta"], v["mu"], v["mu"]), Body(v["m2"], -HANGING)]
    found = outcome(pair, ["string"], g=data.settings.constants()["g"])
    if found.state != "moves":
        if said:
            raise Refusal("way", STAYS)
        return 0
    way = 1 if found.bodies[0].a > 0 else -1
    if said and said != way:
        raise Refusal("way", OTHER_WAY.format("moves up the slope" if way > 0 else "moves down the slope"))
    return way


NORMAL = Relation(
    "N_1 = m1*g*cos(theta)",
    what="Balance the forces across the slope",
    why="It does not leave the slope, so N is as large as the part of its weight that presses into the slope.",
    units={"N_1": "N"},
    plain="The ground pushes back only as hard as it is pressed.",
    mistakes=(
        Mistake("normal-is-weight", "N_1", "m1*g", LEVEL_N),
        Mistake("sin-cos", "N_1", "m1*g*sin(theta)", NORMAL_SINE),
    ),
)
RUBS = Relation(
    "f = mu*N_1",
    what="Friction from the normal force",
    why="It slides, so friction is kinetic, against the motion.",
    units={"f": "N", "mu": ""},
    plain=PLAIN_F,
)


@lru_cache(maxsize=2)
def laws(way: int) -> Laws:
    """The laws for a body that moves up (+1) or down (−1) the slope."""
    up = way > 0
    on = "T - m1*g*sin(theta) - f = m1*a" if up else "m1*g*sin(theta) - T - f = m1*a"
    sign = "+" if up else "-"
    alone = f"m1*g*sin(theta) {sign} f {sign} m1*a"
    slides = Relation(
        on,
        what="Use Newton's second law for the body on the slope",
        why=(
            "It moves up, so up the slope is positive: the tension acts up, mg sin θ and friction down the slope."
            if up
            else (
                "It moves down, so down the slope is positive: mg sin θ acts down, the tension and friction up the"
                " slope."
            )
        ),
        units={"T": "N", "f": "N", "a": "m·s⁻²"},
        plain=PLAIN_ONE,
        quotes=(SECOND.name,),
        directions={"a": ALONG_SLOPE.of("up-slope" if up else "down-slope")},
        mistakes=(
            Mistake("net-force-alone", "T", "m1*a", NET_ONLY),
            Mistake("part-left-out", "T", "m1*a + f", NO_PART),
            Mistake("sin-cos", "T", alone.replace("sin", "cos"), ALONG_COSINE),
        ),
    )
    hangs = (
        HANGS
        if up
        else replace(
            HANGS,
            law="T - m2*g = m2*a",
            why="It moves up, so up is positive for it: the tension acts up, its weight down.",
            mistakes=(
                Mistake("hanging-weight", "T", "m2*g", HANGING_WEIGHT % "m2*g + m2*a"),
                Mistake(
                    "sign-slip",
                    "T",
                    "m2*(g - a)",
                    "You subtracted {m2*a}. It rises, so the tension beats its weight: add {m2*a}.",
                ),
                Mistake("net-force-alone", "T", "m2*a", NET_ONLY),
            ),
        )
    )
    drive = "m2*g - m1*g*sin(theta)" if up else "m1*g*sin(theta) - m2*g"
    slips = (
        Mistake("one-mass", "a", f"({drive} - f)/m2", ONE_MASS),
        Mistake("friction-ignored", "a", f"({drive})/(m1 + m2)", NO_FRICTION),
        Mistake("sin-cos", "a", f"({drive.replace('sin', 'cos')} - f)/(m1 + m2)", ALONG_COSINE),
    )
    put = "mu*m1*g*cos(theta)"
    whole = replace(
        slides,
        law=on.replace(" f ", f" {put} "),
        what="Use Newton's second law for the body on the slope, with f = μm₁g cos θ",
        units={"m1": "kg"},
        mistakes=(),
    )
    return (NORMAL, RUBS, hangs, slides, whole, put_together(slides, hangs, "a", "T", slips))


def diagrams(data: Data) -> tuple[tuple[str, str, Rows, float | None], ...]:
    """The two free-body diagrams."""
    way, tilt = moving(data), degrees(data.values.get("theta", 0.5))
    back = ("down the slope", tilt + 180) if way > 0 else ("up the slope", tilt)
    return (
        (
            "1",
            "the body on the slope",
            (
                ("F_g", "w1", "the weight, straight down", 270.0),
                ("N", "N_1", "the normal force, away from the slope at right angles to it", tilt + 90),
                ("T", "T", "the tension, up the slope", tilt),
                ("f", "f", f"friction, {back[0]}", back[1]),
            ),
            tilt,
        ),
        (
            "2",
            "the body that hangs",
            (("F_g", "w2", "the weight, straight down", 270.0), ("T", "T", "the tension, upwards", 90.0)),
            None,
        ),
    )


TALES = (
    (
        "A crate on a ramp is tied to a light string that runs up the ramp and over a light pulley without friction at"
        " its top; a sandbag hangs from the string."
    ),
    (
        "On a sloping track a loaded sledge is tied to a light string. It runs parallel to the track over a smooth"
        " wheel at the top, and a counterweight hangs from it."
    ),
    (
        "A block lies on a sloping board. A light string runs from it, parallel to the board, over a pulley without"
        " friction at the upper end to a tin that hangs."
    ),
)
ENDS = {
    "unsaid": "They are released from rest and move.",
    "rest": "They are held at rest and then let go.",
    "up": "They are released from rest, and the body on the slope moves up.",
    "down": "They are released from rest, and the body on the slope moves down.",
}


def figure(v: Values) -> Figure:
    """The slope with both bodies."""
    return over_the_top(min(max(degrees(v.get("theta", 0.5)), 6.0), 70.0))


def check(way: int) -> tuple[Check, ...]:
    """Both at once, and the tension from the other body."""
    up, sign = way > 0, "+" if way > 0 else "-"
    drive = "m2*g - m1*g*sin(theta)" if up else "m1*g*sin(theta) - m2*g"
    return (
        Check(AT_ONCE, f"a = ({drive} - mu*m1*g*cos(theta))/(m1 + m2)"),
        Check(OTHER_BODY, f"T = m1*(g*sin(theta) {sign} mu*g*cos(theta) {sign} a)"),
    )


RESTS = 5  # the rule of drawing from which practice also draws what stays at rest


def way_that_fits(typed: dict[str, object], chance: object, find: str) -> dict[str, object]:
    """Where a mass or μ is asked the way is told; by an older rule what stays is told to move, and so drawn anew."""
    way = str(typed["way"])
    if find not in ("a", "T"):
        return {**typed, "way": "up" if way == "unsaid" else way}
    m1, m2, theta, mu = (
        float(str(typed[name]).split("°")[0].split()[0].replace(",", ".")) for name in ("m1", "m2", "theta", "mu")
    )
    held = abs(m2 - m1 * sin(radians(theta))) <= mu * m1 * cos(radians(theta))
    return {**typed, "way": "up" if held and getattr(chance, "rule", 0) < RESTS else "unsaid"}


MOVING = connected(
    Set(
        key="incline",
        title="Over the top of a slope",
        boxes=BOXES,
        laws=lambda data: laws(moving(data)),
        openings=lambda data: tuple(f"{tale} {ENDS[data.choices['way']]}" for tale in TALES),
        diagrams=diagrams,
        sizes=sizes,
        figure=figure,
        enough={
            "a": "m1 m2 theta mu",
            "T": "m1 m2 theta mu",
            "m1": "m2 theta mu a",
            "m2": "m1 theta mu a",
            "mu": "m1 m2 theta a",
        },
        limits=(Limit("g - a", FREE, at="a"),),
        unfit=lambda data: {"m1": FREE, "m2": FREE, "a": AGAINST_IT},
        checks_of=lambda data: check(moving(data)),
        later=lambda data, values: cut.parts(data, values, moving(data)) if data.choices["also"] == "cut" else (),
    ),
    choices=(cut.CUT, WAY),
    adjust=way_that_fits,
)


def plan(data: Data) -> Plan:
    """In motion as two connected bodies, at rest with what holds them."""
    if {"m1", "m2", "theta", "mu"} <= data.values.keys() and not moving(data):
        for name in ("a", "T"):
            if data.has(name):
                raise Refusal(name, FOLLOWS)
        openings = tuple(f"{tale} {ENDS['rest']}" for tale in TALES)
        facts = " ".join(one.tell.format(data.said[one.box.name]) for one in BOXES if data.has(one.box.name))
        return at_rest.plan(data, openings, facts, NORMAL)
    return MOVING.plan(data)


INCLINE = replace(MOVING, plan=plan)
