"""A body in a lift, on its floor or on a string from its ceiling: N − mg = ma or T − mg = ma, up positive."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from calc.figures.connected import in_a_lift
from calc.model.answers import Point
from calc.model.questions import Check, Choice, Data, Part, Refusal, Values
from calc.topics.newton.pairs import PLAIN_ONE
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import SECOND
from calc.topics.shared.quantities import UP, Quantity, mass
from calc.working.declaring import Mistake, Relation, boxes, state, told
from calc.working.solving import Laws, Situation, question

LEAVES = (
    "It leaves the floor: a floor cannot pull it downwards, so with an acceleration of more than g downwards they part."
    " Check the acceleration and its direction."
)
SLACK = (
    "The string goes slack: it cannot push the body downwards, so with an acceleration of more than g downwards it"
    " hangs loose. Check the acceleration and its direction."
)
ANY_MASS = (
    "With an acceleration of g downwards the force is zero whatever the mass: the mass cannot be found. Ask for"
    " something else."
)
WEIGHTLESS = {
    "N": "Weightless means that no floor pushes: gravity acts as always, and lift and body fall together.",
    "T": "Weightless means that no string pulls: gravity acts as always, and lift and body fall together.",
}
NOT_THERE = {
    "N": "The body hangs on a string and touches no floor: leave this box empty, or choose “stands on the floor”.",
    "T": "The body stands on the floor without a string: leave this box empty, or choose “hangs on a string”.",
}
NEAR = 1e-9  # m·s⁻²: rounding
WEIGHT_ONLY = "You made {%s} as large as the weight. That is so only without acceleration: use {m*g + m*a}."
SIGN = (
    "You have the sign of {a} the wrong way round. Up is positive: put {a} in with a minus sign only if it is"
    " downwards."
)
NET = "You made {%s} as large as the net force. Net force is not the whole of it: add the weight {m*g}."
KILOS = "You left {g} out of the weight: put in {m*g} for it."
ON = Choice(
    "on", "The body", (("floor", "stands on the floor of the lift"), ("string", "hangs on a string in the lift"))
)
accelerates = Quantity("m·s⁻²", 1e-3, 1e3, typed="m/s^2", way=UP)
BOXES = (
    mass("m", "Mass of the body", "The mass of the body is {}.", "60 kg; 45 55 65 80; 52 68 74"),
    accelerates(
        "a",
        "Acceleration of the lift",
        "The acceleration of the lift is {}.",
        "1,5 m/s^2; 1,2 1,5 2 -1,2 -1,5 -2; 0,8 1,6 2,4 -0,9 -1,4 -2,2",
        told_at={0.0: "The lift moves at constant velocity."},
    ),
    Quantity("N", 1e-3, 1e6, "A floor only pushes: give the size of its force, zero or more.", over=None)(
        "N", "Normal force (what scales under it show)", "The floor pushes it with {}.", "?; 420 500 650; 460 530 720"
    ),
    Quantity("N", 1e-3, 1e6, "A string only pulls: give the size of the tension, zero or more.", over=None)(
        "T", "Tension in the string", "The tension in the string is {}.", "; 420 500 650; 460 530 720"
    ),
)
TALES = {
    "floor": (
        "Somebody stands on bathroom scales in a lift.",
        "A crate stands on the floor of a goods lift.",
        "In the cage of a mine lift a worker stands on a plate that measures the force on it.",
    ),
    "string": (
        "A bag hangs on a light string from the ceiling of a lift.",
        "In a goods lift a lamp hangs on a light string from the ceiling.",
        (
            "A parcel hangs on a spring balance with a light hook in a lift; the string pulls as hard as the balance"
            " shows."
        ),
    ),
}


@lru_cache(maxsize=4)
def laws(name: str) -> Laws:
    """The second law for the body; name: N or T."""
    floor = name == "N"
    law = Relation(
        f"{name} - m*g = m*a",
        what="Use Newton's second law for the body",
        why=f"Up is positive: the {'floor pushes' if floor else 'string pulls'} upwards, the weight acts downwards.",
        units={name: "N", "m": "kg", "a": "m·s⁻²"},
        plain=PLAIN_ONE,
        quotes=(SECOND.name,),
        mistakes=(
            Mistake("weight-only", name, "m*g", WEIGHT_ONLY % name),
            Mistake("sign-slip", name, "m*(g - a)", SIGN),
            Mistake("net-force-alone", name, "m*abs(a)", NET % name),
            Mistake("mass-for-weight", name, "m + m*a", KILOS),
            Mistake(
                "weight-only",
                "m",
                f"{name}/g",
                f"You let {{{name}}} balance the weight. It also accelerates: divide by {{g + a}}.",
            ),
            Mistake("sign-slip", "m", f"{name}/(g - a)", SIGN),
            Mistake(
                "weight-left-out",
                "a",
                f"{name}/m",
                f"You left the weight out. The net force is {{{name} - m*g}}: use that.",
            ),
        ),
    )
    return (law,)


def falls(data: Data, name: str) -> bool:
    """Whether the lift falls freely, so that nothing pushes or pulls the body; name: N or T."""
    v = data.values
    return (data.has("a") and abs(v["a"] + data.known["g"]) < NEAR) or (data.has(name) and not v[name])


def diagram(data: Data, name: str, here: Situation) -> Part:
    """The free-body diagram; in free fall the weight alone."""
    what = ("the normal force, upwards", "the tension, upwards")[name == "T"]
    rows = (("F_g", "F_g", "the weight, straight down", 270.0), (name, name, what, 90.0))[
        : 1 if falls(data, name) else 2
    ]

    def sizes(known: dict[str, float]) -> dict[str, float]:
        return {"F_g": known["m"] * known["g"]} if "m" in known else {}

    return free_body("draw", "the body", rows, here.steps(data), data, derived=sizes)


def moves(data: Data, values: Values) -> tuple[Part, ...]:
    """Which motions of the lift fit the acceleration."""
    if not values["a"]:
        return ()
    up = values["a"] > 0
    faster, slower = ("upwards", "downwards") if up else ("downwards", "upwards")
    return (
        Part(
            "motion",
            "explain",
            "The lift may be moving in either direction. Say for each whether it speeds up or slows down with this"
            " acceleration.",
            points=(
                Point(
                    f"Moving {faster} it speeds up: its acceleration has the direction of its motion.",
                    1,
                    (f"{faster} it speeds up",),
                ),
                Point(
                    f"Moving {slower} it slows down: its acceleration is against its motion.",
                    1,
                    (f"{slower} it slows down",),
                ),
            ),
        ),
    )


def situation(data: Data) -> Situation:
    """The situation of the choice made."""
    name = "N" if data.choices["on"] == "floor" else "T"
    other = "T" if name == "N" else "N"
    if data.has(other):
        raise Refusal(other, NOT_THERE[other])
    if other in data.asked_names:
        raise Refusal(None, NOT_THERE[other].replace("leave this box empty", "ask for something else"))
    reason = LEAVES if name == "N" else SLACK
    if data.has("a") and data.values["a"] < -(data.known["g"] + NEAR):
        raise Refusal("a", reason)
    free = falls(data, name)
    if free and "m" in data.asked_names:
        raise Refusal(None, ANY_MASS)
    here = replace(
        told(BOXES),
        relations=laws(name),
        openings=TALES[data.choices["on"]],
        unfit={name: reason, "m": reason},
        units={"m": "kg", "a": "m·s⁻²", "N": "N", "T": "N"},
        notes=(FBD_RULES, *((WEIGHTLESS[name],) if free else ())),
        later=moves,
        proofs=lambda v: (Check("Weight and net force add up", f"m*(g + a) = {name}"),),
        scene=lambda v: in_a_lift(hangs=name == "T"),
    )
    return replace(here, stated=(state(SECOND), diagram(data, name, here)))


ENOUGH = {"m": "a {}", "a": "m {}", "N": "m a", "T": "m a"}


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """The force that the numbers give, and only the boxes that are needed."""
    find = next(name for name in ("m", "a", "N", "T") if not typed[name])
    on = {"N": "floor", "T": "string"}.get(find, str(typed["on"]))
    force = "N" if on == "floor" else "T"
    keep = ENOUGH[find].format(force).split()
    ready = dict(typed)
    if force in keep:  # between 0,8 and 1,25 times some weight
        m = float(str(typed["m"] or "60").split()[0].replace(",", "."))
        share = 0.8 + 0.15 * chance.random() if chance.random() < 0.5 else 1.07 + 0.18 * chance.random()  # type: ignore[attr-defined]
        ready[force] = f"{float(f'{share * m * 9.8:.3g}'):g} N"
    return {**ready, "on": on, **{name: ready[name] if name in keep else "" for name in ("m", "a", "N", "T")}}


LIFT = question(
    "lift",
    "In a lift",
    situation,
    **boxes(ON, *BOXES),
    laws=(SECOND.name,),
    unknowns=("N", "T", "m", "a"),
    constants=("g",),
    asks="N",
    adjust=practise,
    since=4,
)
