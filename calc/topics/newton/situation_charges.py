"""A charged body of a situation, in a field or beside a fixed charge: its force, and a charge or distance from it.

F_E = QE along the field for a positive charge, against it for a negative one; F_E = kQ₁Q₂/r² between two charges, like
ones repel. What the motion asks of F_E follows from the equation of all bodies; its direction gives the sign of a
charge. Marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from calc.model.questions import FSA, Mistake, Refusal, Step
from calc.model.relations import Relation
from calc.topics.newton.situation_chain import Setup
from calc.topics.newton.situation_extras import CHARGES, NEARBY, Extra
from calc.topics.shared.electrostatics import POINT_CHARGES, sign_of_charge

ASKED = (*CHARGES, *NEARBY)  # that follow from the electrostatic force
FORCE, ANOTHER = "F_E", "F_B"  # the force, and that with which they go the other way
TINY = 1e-12  # N: smaller than this there is none
NO_FORCE = (
    "Without an electrostatic force the motion is the same: the charge would have to be zero, or too far away to"
    " matter. Check the numbers."
)
WRONG_SIDE = (
    "These charges {do} each other, so the force points {is_}; this motion needs it to point {needs}. Change the sign"
    " of a charge, or put the fixed charge on the other side."
)
PLAIN_FIELD = "A field says how many newtons act on each coulomb."
NOT_DIVIDED = "You multiplied by {E}. The force is charge times field, so divide {%s} by {E}."
UPSIDE_DOWN = "You have the fraction upside down. The force is charge times field: divide {%s} by {E}."


def attracted(extra: Extra) -> bool:
    """Whether the fixed charge attracts."""
    return extra.way == extra.side


def electric(here: Setup) -> Extra:
    """The force on the charged body."""
    return next(one for one in here.extras if one.charge)


def coulomb(here: Setup, **names: str) -> Relation:
    """Coulomb's law between the charge of the body and the fixed one. names: what some of its letters are here."""
    extra = electric(here)
    do, signs = ("attract", "unlike") if attracted(extra) else ("repel", "like")
    force = extra.term
    law = POINT_CHARGES.renamed(
        F=force, Q1=names.get(extra.charge, extra.charge), Q2=names.get("Q", "Q"), r=names.get("r", "r")
    )
    why = (
        f"The charges have {signs} signs and {do} each other, so the force on this body points"
        f" {here.where(extra.way).words}. The sizes of the charges go into the law."
    )
    return replace(law, why=why, directions={force: here.where(extra.way)})


def trial(here: Setup, force: str) -> Setup:
    """The same with the electrostatic force under this name, taken to point along the motion."""
    extras = tuple(replace(one, way=here.way, term=force, size=1.0) if one.charge else one for one in here.extras)
    return replace(here, extras=extras)


def turned(here: Setup, way: int) -> Setup:
    """The same with the electrostatic force pointing this way."""
    return replace(here, extras=tuple(replace(one, way=way) if one.charge else one for one in here.extras))


def reachable(here: Setup, v: Mapping[str, float], name: str, force: float) -> int:
    """Which way the electrostatic force points that the motion needs. force: along the motion, in N.

    Refuses no force, and a distance where both signs are known and make it point the other way.
    """
    if abs(force) < TINY:
        raise Refusal(None, NO_FORCE)
    extra, way = electric(here), here.way if force > 0 else -here.way
    if name != "r":
        return way
    real = -extra.side if v[extra.charge] * v["Q"] > 0 else extra.side
    if real != way:
        do = "attract" if real == extra.side else "repel"
        raise Refusal("fixed", WRONG_SIDE.format(do=do, is_=here.where(real).words, needs=here.where(way).words))
    return way


def reason(here: Setup) -> str:
    """Why the electrostatic force points the way it does."""
    extra = electric(here)
    small = "small" if extra.way == here.way else "large"
    return (
        f" Without the electrostatic force the others would be too {small}, so it acts {here.where(extra.way).words}."
    )


def found(here: Setup, v: Mapping[str, float], name: str, label: str) -> tuple[Step, int]:
    """The step from the electrostatic force to what is asked, called ``label``, and the sign of what is found."""
    extra = electric(here)
    if not extra.side:
        sign = 1 if extra.way == here.field else -1
        return in_field(here, label, sign), sign
    law = coulomb(here, **{name: label})
    if name == "r":
        said = "Only the positive root is a distance. The sizes of the charges go into the law."
        return replace(law, why=said).step(label), 1
    known = "Q" if name == extra.charge else extra.charge
    sign = (-1 if attracted(extra) else 1) * (1 if v[known] > 0 else -1)
    do, signs, away = ("attract", "unlike", "towards") if attracted(extra) else ("repel", "like", "away from")
    why = (
        f"The force on the body points {here.where(extra.way).words}, {away} the fixed charge: the charges {do} each"
        f" other, so they have {signs} signs."
    )
    return replace(law, why=why, directions={label: sign_of_charge(sign)}).step(label), sign


def in_field(here: Setup, name: str, sign: int) -> Step:
    """The charge from its force in a field."""
    extra = electric(here)
    along, kind = ("along", "positive") if sign > 0 else ("against", "negative")
    force = extra.term
    return Relation(
        f"{force} = {name}*E",
        what="Use the force of the field on the charge",
        why=f"The force points {here.where(extra.way).words}, {along} the field, so the charge is {kind}.",
        units={name: "C"},
        sizes=(name,),
        plain=PLAIN_FIELD,
        marks=FSA,
        directions={name: sign_of_charge(sign)},
        mistakes=(
            Mistake("multiplied", name, f"{force}*E", NOT_DIVIDED % force),
            Mistake("upside-down", name, f"E/{force}", UPSIDE_DOWN % force),
        ),
    ).step(name)
