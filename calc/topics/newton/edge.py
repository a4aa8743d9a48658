"""A body on a table, tied over a pulley to one that hangs: T − f = m₁a and m₂g − T = m₂a, f = μm₁g.

Where friction holds them they stay (see :mod:`calc.topics.newton.edge_held`).
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from calc.figures.connected import over_an_edge
from calc.model.questions import Check, Data, Plan, Refusal
from calc.topics.forces.words import typed_as
from calc.topics.newton import edge_held
from calc.topics.newton.pairs import (
    ADDED,
    ADDED_G,
    AGAINST,
    ALL_TENSION,
    AT_ONCE,
    FREE,
    HANGING_WEIGHT,
    INTERNAL,
    NET_ONLY,
    NO_FRICTION,
    ONE_MASS,
    OTHER_BODY,
    PLAIN_ONE,
    Rows,
    Set,
    coefficient,
    common,
    connected,
    friction,
    masses,
    put_together,
    sizes,
    string,
)
from calc.topics.shared.motion_laws import SECOND
from calc.working.declaring import Limit, Mistake, Relation, Together
from calc.working.solving import Laws

STAYS = (
    "The weight that hangs is not larger than the friction: from rest nothing moves, so a = 0 and T = m₂g. Use a larger"
    " mass that hangs or less friction."
)
SLOWS = (
    "With these numbers they would not speed up this way. Check the acceleration, the tension, a mass or the"
    " coefficient."
)
FOLLOWS = "With these numbers they stay at rest: a = 0 and T = m₂g follow. Leave this box empty, or change a number."
RESTS = 6  # the rule of drawing from which practice also draws what stays at rest
ROUGHEST = 0.95  # coefficient that it draws
TALES = (
    (
        "A crate on a level table is tied to a light string. The string runs to the right over a light pulley without"
        " friction at the edge, and a sandbag hangs from it."
    ),
    (
        "A block lies on a level bench, tied to a light string that runs to the right over a pulley without friction at"
        " the end of the bench. A bucket hangs from the string."
    ),
    (
        "A trolley with jammed wheels stands on a level worktop. A light string runs from it to the right over a pulley"
        " without friction, and a weight hangs from the string."
    ),
)
HELD = "They are held at rest and then let go."
HANGS = Relation(
    "m2*g - T = m2*a",
    what="Use Newton's second law for the body that hangs",
    why="It moves down, so down is positive for it: its weight acts down, the tension up.",
    units={"T": "N", "m2": "kg", "a": "m·s⁻²"},
    plain=PLAIN_ONE,
    quotes=(SECOND.name,),
    mistakes=(
        Mistake("hanging-weight", "T", "m2*g", HANGING_WEIGHT % "m2*g - m2*a"),
        Mistake("sign-slip", "T", "m2*(g + a)", ADDED),
        Mistake("net-force-alone", "T", "m2*a", NET_ONLY),
        Mistake(
            "sign-slip",
            "m2",
            "T/(g + a)",
            ADDED_G,
        ),
    ),
)
SLIDES = Relation(
    "T - f = m1*a",
    what="Use Newton's second law for the body on the table",
    why="The tension pulls it towards the pulley, friction acts the other way. Across the table N carries its weight.",
    units={"T": "N", "f": "N", "a": "m·s⁻²"},
    plain=PLAIN_ONE,
    quotes=(SECOND.name,),
    mistakes=(
        Mistake("net-force-alone", "T", "m1*a", NET_ONLY),
        Mistake(
            "friction-helps",
            "T",
            "m1*a - f",
            AGAINST,
        ),
        Mistake(
            "tension-alone",
            "f",
            "T",
            ALL_TENSION,
        ),
    ),
)
WHOLE = Relation(
    "T - mu*m1*g = m1*a",
    what="Use Newton's second law for the body on the table, with f = μm₁g",
    why="The tension pulls it towards the pulley, friction acts the other way.",
    units={"m1": "kg"},
    plain=PLAIN_ONE,
    quotes=(SECOND.name,),
    mistakes=(Mistake("friction-ignored", "m1", "T/a", "You left friction out. Put {mu*m1*g} in as well."),),
)
FROM_FRICTION = Relation(
    "f = mu*m1*g",
    what="Friction from the normal force, which is the weight on a level table",
    why="On the level N = m₁g, and it slides, so friction is μN.",
    units={"mu": ""},
    plain="The harder two surfaces are pressed together, the harder it is to slide one on the other.",
)


def both(fewer: bool = False) -> Together:
    """Both equations, for a. fewer: without the mistake that a whole question of many steps leaves out."""
    slips: tuple[Mistake, ...] = (
        Mistake("one-mass", "a", "(m2*g - f)/m2", ONE_MASS),
        Mistake("friction-ignored", "a", "m2*g/(m1 + m2)", NO_FRICTION),
        Mistake("tension-kept", "a", "(m2*g - f - m2*(m1*g + f)/(m1 + m2))/(m1 + m2)", INTERNAL),
    )
    return put_together(SLIDES, HANGS, "a", "T", slips[:2] if fewer else slips)


RUBS = replace(friction("f", "m1"), what="Friction on the body on the table")
LAWS: Laws = (RUBS, FROM_FRICTION, HANGS, SLIDES, WHOLE, both())


def diagrams(data: Data) -> tuple[tuple[str, str, Rows, float | None], ...]:
    """The two free-body diagrams."""
    return (
        (
            "1",
            "the body on the table",
            (
                ("F_g", "w1", "the weight, straight down", 270.0),
                ("N", "w1", "the normal force, upwards", 90.0),
                ("T", "T", "the tension, to the right", 0.0),
                ("f", "f", "friction, to the left", 180.0),
            ),
            None,
        ),
        (
            "2",
            "the body that hangs",
            (("F_g", "w2", "the weight, straight down", 270.0), ("T", "T", "the tension, upwards", 90.0)),
            None,
        ),
    )


BOXES = (
    *masses(
        "the body on the table",
        "the body that hangs",
        "4 kg; 3 4 5 6; 2,5 3,5 5,5",
        "3 kg; 2 3 4; 1,5 2,5 3,5",
    ),
    coefficient("with the table", "0,25; 0,1 0,15 0,2 0,3; 0,12 0,18 0,26"),
    common("?; 1 1,5 2 2,5; 0,8 1,6 2,4"),
    string("; 12 15 20; 14 18 22"),
)
MOVING = connected(
    Set(
        key="edge",
        title="Over the edge of a table",
        boxes=BOXES,
        laws=lambda data: LAWS,
        openings=lambda data: (
            (
                "A crate on a level table is tied to a light string. The string runs to the right over a light pulley"
                " without friction at the edge, and a sandbag hangs from it. The sandbag moves down."
            ),
            (
                "A block slides to the right on a level bench, pulled by a light string over a pulley without friction"
                " at the end of the bench. A bucket hangs from the string and moves down."
            ),
            (
                "A trolley with jammed wheels is dragged to the right over a level worktop by a light string that runs"
                " over a pulley without friction; a weight that hangs from the string moves down."
            ),
        ),
        diagrams=diagrams,
        sizes=sizes,
        figure=lambda v: over_an_edge(),
        enough={"a": "m1 m2 mu", "T": "m1 m2 mu", "m1": "m2 mu a", "m2": "m1 mu a", "mu": "m1 m2 a"},
        limits=(Limit("g - a", FREE, at="a"),),
        unfit={"a": SLOWS, "T": SLOWS, "m1": FREE, "m2": FREE},
        proofs=(
            Check(
                AT_ONCE,
                "a = (m2*g - mu*m1*g)/(m1 + m2)",
            ),
            Check(OTHER_BODY, "T = m1*(a + mu*g)"),
        ),
    )
)


def plan(data: Data) -> Plan:
    """In motion as two connected bodies, at rest with what holds them."""
    if not edge_held.stays(data):
        return MOVING.plan(data)
    for name in ("a", "T"):
        if data.has(name):
            raise Refusal(name, FOLLOWS)
    facts = " ".join(one.tell.format(data.said[one.box.name]) for one in BOXES if data.has(one.box.name))
    return edge_held.plan(data, tuple(f"{tale} {HELD}" for tale in TALES), facts)


def practise(typed: dict[str, object], chance: Any, level: int) -> dict[str, object]:
    """What the set-up gives, now and then so rough that they stay; by an older rule what stays is left without its
    coefficient, and so drawn anew."""
    ready = MOVING.adjust(typed, chance, level) if MOVING.adjust else typed
    if not all(ready[name] for name in ("m1", "m2", "mu")):
        return ready
    m1, m2, mu = (float(str(ready[name]).split()[0].replace(",", ".")) for name in ("m1", "m2", "mu"))
    if chance.rule < RESTS:
        return {**ready, "mu": ""} if m2 <= mu * m1 else ready
    rough = m2 / m1 * (1.15 + 0.5 * chance.random())
    return {**ready, "mu": typed_as(rough, "", 2).strip()} if chance.random() < 0.35 and rough < ROUGHEST else ready


EDGE = replace(MOVING, plan=plan, adjust=practise)
