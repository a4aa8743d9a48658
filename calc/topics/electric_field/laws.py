"""The laws of the chapter, each declared once: every inverse form, its lines and its slips follow from here.

E = kQ/r², E = F/q, E = V/d, mg = qE, n = q/e, F = ma: data-sheet equations.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from calc.model.questions import Mistake, Step
from calc.model.relations import Relation
from calc.topics.electric_field.shared import NOT_SQUARED, PLAIN_FIELD, WHY_SOURCE
from calc.topics.shared.electrostatics import SECOND

WEIGHED = "The force to balance is the weight: multiply the mass by g."

SOURCE_FIELD = Relation(
    "E = k*Q/r^2",
    what="Use the field of a point charge",
    why=WHY_SOURCE,
    plain=PLAIN_FIELD,
    units={"E": "N·C⁻¹", "Q": "C", "r": "m"},
    sizes=("Q",),
    mistakes=(
        Mistake("not-squared", "E", "k*Q/r", NOT_SQUARED, "the answer is r times the right one"),
        Mistake("not-squared", "Q", "E*r/k", NOT_SQUARED),
        Mistake("upside-down", "Q", "k/(E*r^2)", "Rearrange again: Q is alone when E r² is divided by k."),
        Mistake(
            "root-omitted",
            "r",
            "k*Q/E",
            "You have r²: take the square root.",
            "the answer is the square of the distance",
        ),
    ),
)
PER_CHARGE = Relation(
    "E = F/q",
    what="Use the definition: force per unit charge",
    why="Sizes go into the formula.",
    plain="The field is the push on one coulomb. Share the force out over the charge, or multiply back.",
    units={"E": "N·C⁻¹", "F": "N", "q": "C"},
    sizes=("q",),
    mistakes=(
        Mistake("multiplied", "E", "F*q", "Per unit charge: divide the force by the charge."),
        Mistake("divided", "F", "E/q", "E is force per coulomb: multiply by the charge."),
        Mistake("upside-down", "q", "E/F", "E is force per coulomb: q is the force divided by E."),
    ),
)
PLATES = Relation(
    "E = V/d",
    what="Use the field between parallel plates",
    why="Between parallel plates the field is uniform. It points towards the negative plate.",
    plain="The same voltage over a smaller gap makes a stronger field: share the volts out over the metres.",
    units={"E": "V·m⁻¹", "V": "V", "d": "m"},
    mistakes=(
        Mistake("multiplied", "E", "V*d", "Per metre: divide."),
        Mistake("divided", "V", "E/d", "E is volts per metre: multiply by the metres."),
        Mistake("upside-down", "d", "E/V", "E is volts per metre: d is the volts divided by E."),
    ),
)
HELD = Relation(
    "m*g = q*E",
    what="Let the two forces on the drop balance",
    why="At rest the net force is zero: the electrostatic force upwards is as large as the weight downwards.",
    plain="The drop hangs still, so the electric push up is just as strong as the pull of the earth.",
    units={"m": "kg", "q": "C", "E": "V·m⁻¹"},
    mistakes=(
        Mistake("weight", "q", "m/E", WEIGHED),
        Mistake("multiplied", "q", "m*g*E", "q is alone when mg is divided by E."),
        Mistake("weight", "E", "m/q", WEIGHED),
        Mistake("multiplied", "E", "m*g*q", "E is alone when mg is divided by q."),
        Mistake("weight", "m", "q*E", "This is the weight: divide by g to get the mass."),
    ),
)
COUNT = Relation(
    "n = q/e",
    what="Count the electrons",
    why="Charge is a whole number of electron charges. e is the size of one electron's charge.",
    plain="Divide the pile by the size of one grain to count the grains.",
    units={"n": "", "q": "C"},
    mistakes=(
        Mistake("multiplied", "n", "q*e", "Divide by the charge of one electron: n = q/e."),
        Mistake("divided", "q", "e/n", "Multiply: each electron brings e."),
    ),
)
NEWTON = Relation(
    "F = m*a",
    what="Newton's second law",
    quotes=(SECOND.name,),
    why="The acceleration has the direction of the net force. The weight is far too small to count.",
    plain="The same push speeds up a small mass more.",
    units={"F": "N", "a": "m·s⁻²", "m": "kg"},
    mistakes=(
        Mistake("divided", "F", "a/m", "F = ma: multiply the mass by the acceleration."),
        Mistake("multiplied", "a", "F*m", "F = ma: divide the force by the mass."),
    ),
)


def step(relation: Relation, unknown: str, also: tuple[Mistake, ...] = (), **changes: Any) -> Step:
    """The relation's step for ``unknown`` with these fields of a Step changed; ``also``: further mistakes."""
    made = relation.step(unknown)
    return replace(made, mistakes=(*made.mistakes, *also), **changes)


def force_step(at: str, q: str, makes: str, also: tuple[Mistake, ...] = (), **changes: Any) -> Step:
    """F = qE from the field ``at``, in the order in which it is said."""
    relation = PER_CHARGE.renamed(E=at, q=q, F=makes)
    return step(relation, makes, also, make=f"{makes} = {q}*{at}", **changes)
