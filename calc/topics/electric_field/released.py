"""A charge released from rest in a uniform field: force, acceleration, time, speed and energy, any of them
from the rest.

E = V/d, E = F/q, F = ma, v = at, v² = 2as, s = ½at², W = qEs = ½mv². Marks: common practice, no source.
"""

from __future__ import annotations

from random import Random

from calc.model.questions import Check, Choice, Data, Draw, Part, Refusal, Values
from calc.topics.electric_field.laws import KINETIC, PLATES, WORK_BY_FIELD
from calc.topics.electric_field.motion_drawn import released_figure
from calc.topics.electric_field.shared import FIELD, FOUR, MOTION, UNIFORM, WORK_ENERGY, memo, typed_number, words_of
from calc.topics.electric_field.uniform import (
    BY_CHARGE,
    TELL,
    Charged,
    an,
    ask_of,
    boxes,
    charged,
    energy,
    fitted,
    following,
    for_body,
    force_of,
    from_rest,
    length,
    newton,
    only_size,
    refuse_light,
    refuse_weight,
    speed,
    time,
    told_by,
    warned,
    weight_check,
)
from calc.topics.shared.electrostatics import SECOND, state
from calc.working.solving import Situation, question

TOLD = TELL | {
    "s": "It moves a distance of {} along the line of the field.",
    "t": "It moves for {}.",
    "v": "Its speed is then {}.",
    "W": "By then the field has done {} of work on it.",
}
ASK = {
    "s": "Calculate how far it has moved.",
    "t": "Calculate how long it moves.",
    "v": "Calculate the speed it has reached.",
    "W": "Calculate the work that the field has done on it.",
}


def situation(data: Data) -> Situation:
    along = data.choices["along"]
    moves = data.choices["moves"]
    body = charged(data, along, "moves", {"along": 1, "against": -1}.get(moves, 0), ("v",))
    laws = (
        PLATES,
        force_of(body),
        newton(body),
        *from_rest(body, "It starts from rest."),
        for_body(WORK_BY_FIELD, body),
        for_body(KINETIC, body),
    )
    who = an(body.name)
    way = f"The field points {words_of(along)}; the weight may be left out."
    if body.q == "q" and body.sign and not data.has("q"):
        way += f" The body moves {words_of(body.pushed)}."

    def refuse(data: Data, values: Values) -> None:
        found = following(data, [step for law in laws for step in law.steps()])
        if "s" in found and "d" in found and found["s"] > found["d"] * (1 + 1e-9):
            raise Refusal(
                "s" if data.has("s") else None,
                "The plates are in the way: the distance moved cannot be more than the distance between the plates."
                " Make it smaller.",
            )
        refuse_weight(data, found)
        refuse_light(data, found, "v")

    def proofs(values: Values) -> tuple[Check, ...]:
        q, m = body.q, body.m
        balance = Check(
            "Energy: what the field gives is what the body has",
            f"{q}*V*s/d = 1/2*{m}*v^2",
            "Both sides in joules.",
            tolerance=1e-6,
            sizes=("q",) if q == "q" else (),
        )
        return told_by(values, balance) + weight_check(values, body)

    return Situation(
        relations=laws,
        openings=(
            (
                f"{who[0].upper()}{who[1:]} is released from rest in the uniform field between two charged plates in a"
                f" vacuum. {way}"
            ),
            f"Between two parallel charged plates in an evacuated tube {who} starts from rest. {way}",
            f"In a vacuum, {who} is let go between a pair of charged metal plates. {way}",
        ),
        tell=TOLD,
        ask=ask_of(body) | ASK,
        stated=(state(WORK_ENERGY),),
        later=lambda data, values: (draw_part(body), explain_part(body)) if body.sign else (),
        refuse=refuse,
        proofs=proofs,
        warn=lambda v: warned(v, "v"),
        scene=lambda v: released_figure(body.name, body.along, body.sign, forces=False),
        notes=only_size(data, body),
    )


def draw_part(body: Charged) -> Part:
    where = words_of(body.pushed)
    return memo(
        "draw",
        "draw",
        f"Draw the {body.name} in the field, with the force on it and its velocity a moment after it is let go.",
        (f"F points {where}, {'opposite to' if body.sign < 0 else 'in the direction of'} the field.", where),
        (f"v points {where} as well: from rest it moves the way it is pushed.", where),
        figure=lambda _: released_figure(body.name, body.along, body.sign, forces=True),
    )


def explain_part(body: Charged) -> Part:
    against = "opposite to the field" if body.sign < 0 else "in the direction of the field"
    return memo(
        "explain",
        "explain",
        f"Explain which way the {body.name} moves, and why its acceleration stays the same.",
        (
            f"The charge is {body.kind}, so the force on it is {against}: it moves {words_of(body.pushed)}.",
            words_of(body.pushed),
        ),
        ("The field is uniform: the force qE is the same everywhere, and so is the acceleration.", "same everywhere"),
    )


GIVEN = {
    "v": ("V", "d", "s"),
    "a": ("V", "d"),
    "F": ("V", "d"),
    "W": ("V", "d", "s"),
    "t": ("V", "d", "s"),
    "s": ("V", "d", "t"),
    "E": ("s", "t"),
    "V": ("d", "s", "v"),
    "d": ("V", "a"),
    "q": ("V", "d", "a"),
    "m": ("V", "d", "s", "v"),
}


def numbers(draw: Random, q: float, m: float, level: int) -> dict[str, str]:
    """A voltage, plates and a way between them, and what comes of these for a charge's size and a mass (SI)."""
    volts = draw.choice((120, 150, 240, 300, 450) if level == 1 else (180, 360, 540, 720, 900))
    millimetres = draw.choice((10, 12, 15, 20, 25))
    part = draw.choice((0.4, 0.5, 0.6, 0.8))
    d, s = millimetres / 1000, millimetres * part / 1000
    a = q * volts / (d * m)
    return {
        "V": f"{volts} V",
        "d": f"{millimetres} mm",
        "s": f"{millimetres * part:g} mm".replace(".", ","),
        "a": typed_number(a, "m/s^2"),
        "t": typed_number((2 * s / a) ** 0.5, "s"),
        "v": typed_number((2 * a * s) ** 0.5, "m/s"),
    }


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Numbers that fit each other; the way it moves is told where its charge is asked."""
    drawn, q = fitted(typed, random, GIVEN, lambda draw, size, m: numbers(draw, size, m, level))
    return {**drawn, "moves": ("against" if q < 0 else "along") if q else "charge"}


RELEASED = question(
    "released",
    "A charge released from rest in a uniform field",
    situation,
    fields=(
        *boxes(),
        length("s", "Distance moved"),
        time("Time it moves for"),
        speed("v", "Speed reached"),
        energy("Work done by the field"),
        Choice("along", "The field points", FOUR),
        Choice(
            "moves",
            "The body moves",
            (BY_CHARGE, ("along", "along the field"), ("against", "against the field")),
            quiet=("charge",),
        ),
    ),
    example={
        **dict.fromkeys(GIVEN, ""),
        "V": "240 V",
        "d": "20 mm",
        "particle": "body",
        "q": "+3,2 x 10^-19 C",
        "m": "6,64 x 10^-27 kg",
        "s": "15 mm",
        "along": "right",
        "moves": "charge",
    },
    asks="v",
    since=2,
    laws=(UNIFORM.name, FIELD.name, SECOND.name, MOTION.name, WORK_ENERGY.name),
    constants=("e", "m_e", "m_p", "g", "c"),
    draws={
        **{name: Draw((1,)) for name in GIVEN},
        "particle": Draw(("electron", "proton", "body")),
        "along": Draw(("right", "left", "up", "down")),
        "moves": Draw(("charge",)),
    },
    adjust=practise,
)
