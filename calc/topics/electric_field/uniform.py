"""A charge that moves in a uniform field: the laws, the boxes and the limits that its questions share.

E = V/d, F = qE, F = ma, the equations of motion from rest along the field, W = qEs and the kinetic
energy ½mv²: data-sheet equations. The weight is left out below a thousandth of the electrostatic
force; speeds are far below that of light. Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from random import Random
from typing import cast

from calc.language.expressions import ExpressionError, equation
from calc.model.directions import FOUR_WAYS, SIGN_OF_CHARGE
from calc.model.questions import Check, Choice, Data, Input, Mistake, Refusal, Step, Values
from calc.model.relations import Relation, Towards
from calc.topics.electric_field.laws import (
    DISTANCE_IN,
    NEWTON,
    PER_CHARGE,
    SPEED_AFTER,
    SPEED_GAINED,
    along_or_against,
    between,
    follows_field,
)
from calc.topics.electric_field.shared import (
    AIR,
    BREAKDOWN,
    by_value,
    field,
    follows,
    gap,
    school,
    typed_number,
    voltage,
    words_of,
)
from calc.working.chain import spread
from calc.working.working import measure

PARTICLES = {"electron": ("e", "m_e", -1), "proton": ("e", "m_p", 1)}
# Charge (C) and mass (kg) of ions for practice: He²⁺, Na⁺, Cl⁻, O²⁻, Al³⁺, from atomic masses (from memory).
IONS = ((3.2e-19, 6.64e-27), (1.6e-19, 3.82e-26), (-1.6e-19, 5.89e-26), (-3.2e-19, 2.66e-26), (4.8e-19, 4.48e-26))
TIMES = 1000  # the weight counts for less than this share of the electrostatic force
FAST = 0.1  # of the speed of light: beyond it the formulas are a little off (common practice, no source)


@dataclass(frozen=True)
class Charged:
    """The charged body of one set of data.

    q, m: the names of its charge and mass. sign: of the charge, 0 where nothing tells it.
    along: which way the field points. directed: what has the direction of the force, besides force and acceleration.
    """

    name: str
    q: str
    m: str
    sign: int
    along: str
    directed: tuple[str, ...]

    @property
    def pushed(self) -> str:
        """Which way the electrostatic force points; '' where the sign is not known."""
        return follows(self.along, self.sign) if self.sign else ""

    @property
    def ways(self) -> dict[str, Towards]:
        """The direction of the force, the acceleration and what they bring about, and the sign of the charge."""
        if not self.sign:
            return {}
        moved = {name: by_value(FOUR_WAYS, self.pushed, name) for name in ("F", "a", *self.directed)}
        # The sign is not calculated but told by the way the body is pushed.
        return {**moved, "q": lambda v: SIGN_OF_CHARGE.by_sign(self.sign, "positive") if v["q"] else None}

    @property
    def kind(self) -> str:
        return "negative" if self.sign < 0 else "positive"


def charged(data: Data, along: str, choice: str, told: int, directed: tuple[str, ...]) -> Charged:
    """Who moves. told: the sign that the box ``choice`` gives its charge, 0 for none.

    Refuses a charge of zero, one that stands on the data sheet, and one that ``choice`` contradicts.
    """
    name = data.choices["particle"]
    q, m, sign = PARTICLES.get(name, ("q", "m", told))
    if name in PARTICLES:
        typed = [box for box in ("q", "m") if data.has(box)]
        if typed:
            raise Refusal(
                typed[0],
                f"Charge and mass of {an(name)} stand on the data sheet: leave this box empty, or choose another"
                " charged body.",
            )
        if {"q", "m"} & set(data.asked_names):
            raise Refusal(
                "particle",
                f"Charge and mass of {an(name)} stand on the data sheet. Choose another charged body to find one of"
                " them.",
            )
    elif data.has("q"):
        sign = data.sign("q")
        if not sign:
            raise Refusal("q", "A zero charge feels no force, so it stays as it is. Type a charge that is not zero.")
    body = Charged(name if name in PARTICLES else "charged body", q, m, sign, along, directed)
    if told and told != sign:
        raise Refusal(
            choice,
            f"This does not fit the charge: it is {body.kind}, so the force on it points {words_of(body.pushed)}."
            " Choose “as its charge tells”.",
        )
    return body


ONLY_SIZE = "Only the size of the charge follows: say which way the body is pushed to learn its sign."
BY_CHARGE = ("charge", "as its charge tells")


def only_size(data: Data, body: Charged) -> tuple[str, ...]:
    """The note where the sign of a charge that is asked does not follow."""
    return () if body.sign or "q" not in data.asked_names else (ONLY_SIZE,)


def an(name: str) -> str:
    return f"{'an' if name[0] in 'aeiou' else 'a'} {name}"


# --- the laws --------------------------------------------------------------------------------------------------


def for_body(relation: Relation, body: Charged, **names: str) -> Relation:
    """The relation with this body's charge, mass and directions, and with other names."""
    law = between(relation, q=body.q, m=body.m, **names)
    return replace(law, directions={name: way for name, way in body.ways.items() if name in law.units})


def force_of(body: Charged) -> Relation:
    """F = qE on the body."""
    q, negative = body.q, body.sign < 0
    why = f"The charge of the {body.name} has the size e." if q == "e" else "Sizes go into the formula."
    law = for_body(PER_CHARGE, body)
    return replace(
        law,
        law=f"F = {q}*E",
        what="Force and field: so much force on every coulomb",
        why=f"{why} {along_or_against(negative)}" if body.sign else why,
        plain=(
            "The field says how hard one coulomb would be pushed. Multiply by how many coulombs there are, or share the"
            " force out over them."
        ),
        mistakes=(*law.mistakes, *follows_field("F", f"{q}*E", negative)),
    )


OTHER_MASS = "You used {%s}, the mass of the other particle. Look at the data sheet again and put in {%s}."


def other_mass(force: str, makes: str, mass: str) -> tuple[Mistake, ...]:
    """The acceleration of an electron worked with the mass of a proton, or the other way round."""
    other = {"m_e": "m_p", "m_p": "m_e"}.get(mass)
    return (Mistake("other-mass", makes, f"{force}/{other}", OTHER_MASS % (other, mass)),) if other else ()


def newton(body: Charged) -> Relation:
    """F = ma: the electrostatic force is the net force."""
    law = for_body(NEWTON, body)
    return replace(
        law,
        why=(
            "The electrostatic force is the only force worth counting: the weight is far smaller. The acceleration has"
            " its direction."
        ),
        mistakes=(*law.mistakes, *other_mass("F", "a", body.m)),
    )


def from_rest(body: Charged, rest: str, **names: str) -> tuple[Relation, ...]:
    """The equations of motion along the field. rest: why it starts without speed."""
    laws = (for_body(law, body, **names) for law in (SPEED_GAINED, SPEED_AFTER, DISTANCE_IN))
    return tuple(replace(law, why=f"{rest} {law.why}") for law in laws)


# --- the boxes ---------------------------------------------------------------------------------------------------


def boxes(mass_of: str = "Mass of the body") -> tuple[Input | Choice, ...]:
    """Plates, field, particle, its charge and mass, force and acceleration."""
    return (
        voltage(),
        gap(),
        field("E", "Electric field between the plates", "V·m⁻¹"),
        Choice(
            "particle",
            "What moves",
            (("electron", "an electron"), ("proton", "a proton"), ("body", "another charged body")),
        ),
        Input(
            "q", "Charge of the body", "C", 1e-19, 1e-6, signed=True, help="with its sign; not for electron or proton"
        ),
        Input(
            "m",
            mass_of,
            "kg",
            1e-30,
            1e-3,
            refusal="Mass must be greater than zero.",
            help="not for electron or proton",
        ),
        Input(
            "F",
            "Electrostatic force (size)",
            "N",
            1e-20,
            1,
            refusal="Enter the size of the force, greater than zero; its direction follows from the field.",
        ),
        Input("a", "Acceleration (size)", "m·s⁻²", 1e3, 1e18, refusal="Acceleration must be greater than zero."),
    )


def length(name: str, words: str, unit: str = "mm") -> Input:
    return Input(name, words, unit, 1e-6, 1, refusal=f"{words} must be greater than zero.")


def speed(name: str, words: str) -> Input:
    return Input(name, words, "m·s⁻¹", 1e-3, 3e7, refusal=f"{words} must be greater than zero.")


def time(words: str) -> Input:
    return Input("t", words, "s", 1e-12, 100, refusal="Time must be greater than zero.")


def energy(words: str) -> Input:
    return Input("W", words, "J", 1e-22, 1, refusal="Work must be greater than zero.")


# --- what is told, asked and drawn ------------------------------------------------------------------------------

TELL = {
    "V": "The potential difference between the plates is {}.",
    "d": "The plates are {} apart.",
    "E": "The field is {}.",
    "q": "The charge of the body is {}.",
    "m": "Its mass is {}.",
    "F": "The electrostatic force on it is {}.",
    "a": "It accelerates at {}.",
}


def ask_of(body: Charged) -> dict[str, str]:
    """What is asked about plates, charge, force and acceleration."""
    return {
        "E": "Calculate the electric field between the plates.",
        "q": "Calculate the charge of the body.",
        "F": f"Calculate the electrostatic force on the {body.name}.",
        "a": f"Calculate the acceleration of the {body.name}.",
    }


Numbers = Callable[[Random, float, float], dict[str, str]]


def fitted(
    typed: dict[str, object], random: object, given: Mapping[str, tuple[str, ...]], numbers: Numbers
) -> tuple[dict[str, object], float]:
    """A draw with numbers that fit each other, of those only what leads to the answer; and the charge if it is asked.

    given: by what is asked, the boxes that lead to it. numbers: the texts of all boxes for a charge's size and a mass.
    """
    draw, sheet = cast(Random, random), school("e", "m_e", "m_p")
    asked = next(name for name in given if not str(typed.get(name, "")).strip())
    own = asked in ("q", "m") or typed["particle"] == "body"
    q, m = draw.choice(IONS)
    if not own:
        q, m = sheet["e"], sheet[PARTICLES[str(typed["particle"])][1]]
    number = {**numbers(draw, abs(q), m), "q": typed_number(q, "C"), "m": typed_number(m, "kg")}
    kept = {*given[asked], *(("q", "m") if own else ())} - {asked}
    drawn = {name: number[name] if name in kept else "" for name in given}
    return {**typed, **drawn, "particle": "body" if own else typed["particle"]}, q if asked == "q" else 0.0


# --- what cannot be ------------------------------------------------------------------------------------------------


def following(data: Data, ways: Sequence[Step]) -> dict[str, float]:
    """All that follows from the data, to judge them by."""
    try:
        return spread(data.values, ways, data.settings.constants())
    except ExpressionError:
        return dict(data.values)


def refuse_weight(data: Data, found: Values) -> None:
    """The weight is left out only where it cannot be seen in the answer."""
    g = data.settings.constant("g")
    if "a" in found and found["a"] < TIMES * g:
        size = measure(found["a"], "m·s⁻²", data.settings.style).text
        raise Refusal(
            None,
            f"The weight counts here too: the electrostatic force alone gives {size}, less than a thousand times g, and"
            " these formulas leave the weight out. Take a stronger field, a larger charge or a smaller mass.",
        )


def refuse_light(data: Data, found: Values, *names: str) -> None:
    """Nothing is faster than light."""
    for name in names:
        if name in found and found[name] >= data.settings.constant("c"):
            raise Refusal(
                name if data.has(name) else None,
                "That is faster than light, which nothing can be: these formulas do not hold any more. Check the"
                " prefixes, or take a smaller potential difference.",
            )


def warned(values: Values, *names: str) -> tuple[str, ...]:
    """About sparks in air and about speeds near that of light."""
    told: tuple[str, ...] = ()
    if values.get("E", 0.0) > BREAKDOWN:
        told += (AIR,)
    if any(values.get(name, 0.0) > FAST * values["c"] for name in names):
        told += ("The speed is more than a tenth of that of light: these formulas make it a little too large.",)
    return told


def told_by(values: Values, *checks: Check) -> tuple[Check, ...]:
    """Those of the checks whose every value is known."""
    return tuple(check for check in checks if set(equation(check.equation).names) <= values.keys())


def weight_check(values: Values, body: Charged) -> tuple[Check, ...]:
    """That the weight is below a thousandth of the electrostatic force, where that can be told."""
    if not {body.q, body.m, "E", "g"} <= values.keys():
        return ()
    return (
        Check(
            "May the weight be left out?",
            words="The weight is less than a thousandth of the electrostatic force.",
            holds=lambda v: v[body.m] * v["g"] < abs(v[body.q]) * v["E"] / TIMES,
        ),
    )
