"""Two bodies that hang from one string over a pulley, m₂ the heavier: T − m₁g = m₁a and m₂g − T = m₂a."""

from __future__ import annotations

from dataclasses import replace

from calc.figures.connected import over_one_pulley
from calc.model.questions import Check, Data
from calc.topics.newton.edge import HANGS
from calc.topics.newton.pairs import (
    AT_ONCE,
    FREE,
    HANGING_WEIGHT,
    INTERNAL,
    NET_ONLY,
    ONE_MASS,
    OTHER_BODY,
    PLAIN_ONE,
    Rows,
    Set,
    common,
    connected,
    masses,
    put_together,
    sizes,
    string,
)
from calc.topics.shared.motion_laws import SECOND
from calc.working.declaring import Limit, Mistake, Relation

LIGHTER = "The second body, m₂, must be the heavier one: it moves down. Swap the two masses."
BOTH_WEIGHTS = "You left the weight of the lighter body out. It pulls the other way: subtract {m1*g}."
RISES = Relation(
    "T - m1*g = m1*a",
    what="Use Newton's second law for the lighter body",
    why="It moves up, so up is positive for it: the tension acts up, its weight down.",
    units={"T": "N", "m1": "kg", "a": "m·s⁻²"},
    plain=PLAIN_ONE,
    quotes=(SECOND.name,),
    mistakes=(
        Mistake("its-weight", "T", "m1*g", HANGING_WEIGHT % "m1*g + m1*a"),
        Mistake(
            "sign-slip",
            "T",
            "m1*(g - a)",
            "You subtracted {m1*a}. It rises, so the tension beats its weight: add {m1*a}.",
        ),
        Mistake("net-force-alone", "T", "m1*a", NET_ONLY),
        Mistake(
            "sign-slip", "m1", "T/(g - a)", "You used {g - a}. It rises, so the tension beats its weight: use {g + a}."
        ),
    ),
)
FALLS = replace(HANGS, what="Use Newton's second law for the heavier body")
BOTH = put_together(
    RISES,
    FALLS,
    "a",
    "T",
    (
        Mistake("one-mass", "a", "g*(m2 - m1)/m2", ONE_MASS),
        Mistake("one-weight", "a", "m2*g/(m1 + m2)", BOTH_WEIGHTS),
        Mistake("tension-kept", "a", "(m2*g - m1*g - 2*m1*m2*g/(m1 + m2))/(m1 + m2)", INTERNAL),
    ),
)


def diagrams(data: Data) -> tuple[tuple[str, str, Rows, float | None], ...]:
    """The two free-body diagrams."""
    return tuple(
        (
            f"{n}",
            f"the {which} body",
            (("F_g", f"w{n}", "the weight, straight down", 270.0), ("T", "T", "the tension, upwards", 90.0)),
            None,
        )
        for n, which in ((1, "lighter"), (2, "heavier"))
    )


PULLEY = connected(
    Set(
        key="pulley",
        title="Both hang over one pulley",
        boxes=(
            *masses("the lighter body", "the heavier body", "3 kg; 2 3 4; 1,5 2,5 3,5", "5 kg; 5 6 8; 4,5 5,5 7,5"),
            common("?; 1 1,5 2 3; 0,8 1,6 2,4"),
            string("; 25 30 40; 28 36 44"),
        ),
        laws=lambda data: (FALLS, RISES, BOTH),
        openings=lambda data: (
            (
                "Two buckets hang from the ends of a light string that runs over a light pulley without friction. They"
                " are let go."
            ),
            (
                "A light string over a smooth fixed wheel has a bag of sand at one end and a heavier one at the other."
                " Both are released from rest."
            ),
            (
                "Two stones are tied to the ends of a light string over a pulley that turns without friction, and then"
                " let go."
            ),
        ),
        diagrams=diagrams,
        sizes=sizes,
        figure=lambda v: over_one_pulley(),
        enough={"a": "m1 m2", "T": "m1 m2", "m1": "m2 a", "m2": "m1 a"},
        limits=(Limit("m2 - m1", LIGHTER, at="m2"), Limit("g - a", FREE, at="a")),
        unfit={"a": LIGHTER, "m1": FREE, "m2": FREE},
        proofs=(
            Check(AT_ONCE, "a = g*(m2 - m1)/(m1 + m2)"),
            Check(OTHER_BODY, "T = 2*m1*m2*g/(m1 + m2)"),
        ),
    )
)
