"""The laws of the chapter, each declared once: every inverse form, its lines and its slips follow from here.

E = kQ/r², E = F/q, E = V/d, mg = qE, n = q/e, F = ma: data-sheet equations.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from calc.model.constants import SHEET
from calc.model.questions import Mistake, Step
from calc.model.relations import Relation
from calc.topics.electric_field.shared import NOT_SQUARED, PLAIN_FIELD, WHY_SOURCE, WORK_ENERGY
from calc.topics.shared.electrostatics import EACH_BRINGS, NOT_ROOTED, PER_ELECTRON, PLATE_SLIPS, SECOND

WEIGHED = "You left out {g}. The force to balance is the weight, not the mass: put {m*g} in the place of {m}."
BALANCED = "You multiplied {m*g} by {%s}. To get {%s} alone from {m*g} = {q*E}, divide by {%s}."

SOURCE_FIELD = Relation(
    "E = k*Q/r^2",
    what="Use the field of a point charge",
    why=WHY_SOURCE,
    plain=PLAIN_FIELD,
    units={"E": "N·C⁻¹", "Q": "C", "r": "m"},
    sizes=("Q",),
    mistakes=(
        Mistake("not-squared", "E", "k*Q/r", NOT_SQUARED, "the answer is {r} times the right one"),
        Mistake(
            "not-squared",
            "Q",
            "E*r/k",
            "You multiplied by {r} only once. The formula has the square of the distance, so multiply by {r^2}.",
        ),
        Mistake(
            "upside-down",
            "Q",
            "k/(E*r^2)",
            "You have the formula upside down. Rearrange again: {Q} is alone when {E*r^2} is divided by {k}.",
        ),
        Mistake(
            "root-omitted",
            "r",
            "k*Q/E",
            NOT_ROOTED,
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
        Mistake(
            "multiplied",
            "E",
            "F*q",
            "You multiplied {F} by {q}. {E} tells the force on each coulomb, so divide: {E} = {F/q}.",
        ),
        Mistake(
            "divided",
            "F",
            "E/q",
            "You divided {E} by {q}. {E} tells the force on each coulomb, so multiply: {F} = {q*E}.",
        ),
        Mistake(
            "upside-down",
            "q",
            "E/F",
            "You divided {E} by {F}. {E} tells the force on each coulomb: divide {F} by {E} to get {q}.",
        ),
    ),
)
PLATES = Relation(
    "E = V/d",
    what="Use the field between parallel plates",
    why="Between parallel plates the field is uniform. It points towards the negative plate.",
    plain="The same voltage over a smaller gap makes a stronger field: share the volts out over the metres.",
    units={"E": "V·m⁻¹", "V": "V", "d": "m"},
    mistakes=PLATE_SLIPS,
)
HELD = Relation(
    "m*g = q*E",
    what="Let the two forces on the drop balance",
    why="At rest the net force is zero: the electrostatic force upwards is as large as the weight downwards.",
    plain="The drop hangs still, so the electric push up is just as strong as the pull of the earth.",
    units={"m": "kg", "q": "C", "E": "V·m⁻¹"},
    mistakes=(
        Mistake("weight", "q", "m/E", WEIGHED),
        Mistake("multiplied", "q", "m*g*E", BALANCED % ("E", "q", "E")),
        Mistake("weight", "E", "m/q", WEIGHED),
        Mistake("multiplied", "E", "m*g*q", BALANCED % ("q", "E", "q")),
        Mistake("weight", "m", "q*E", "You stopped at the weight of the drop. Divide it by {g} to get the mass {m}."),
    ),
)
COUNT = Relation(
    "n = q/e",
    what="Count the electrons",
    why="Charge is a whole number of electron charges. e is the size of one electron's charge.",
    plain="Divide the pile by the size of one grain to count the grains.",
    units={"n": "", "q": "C"},
    mistakes=(
        Mistake(
            "multiplied",
            "n",
            "q*e",
            PER_ELECTRON % "q",
        ),
        Mistake(
            "divided",
            "q",
            "e/n",
            EACH_BRINGS % "e} by {n",
        ),
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
        Mistake(
            "divided", "F", "a/m", "You divided {a} by {m}. Newton's second law says {F} = {m*a}, so multiply the two."
        ),
        Mistake(
            "multiplied",
            "a",
            "F*m",
            "You multiplied {F} by {m}. A larger mass is harder to speed up, so divide {F} by {m}.",
        ),
        Mistake(
            "multiplied",
            "m",
            "F*a",
            "You multiplied {F} by {a}. Newton's second law says {F} = {m*a}: divide {F} by {a} to get {m}.",
        ),
    ),
)

TIME_SQUARED = "You stopped at {t^2}. Take its square root: that is the time {t}."
STEADY = "A steady push adds the same speed in every second."
SPEED_GAINED = Relation(
    "v = a*t",
    what="The speed grows in step with the time",
    why="The field is uniform, so the acceleration is constant and the equations of motion hold.",
    plain=STEADY,
    units={"v": "m·s⁻¹", "a": "m·s⁻²", "t": "s"},
    mistakes=(
        Mistake(
            "divided",
            "v",
            "a/t",
            "You divided {a} by {t}. The speed grows by {a} in each second, so multiply: {v} = {a*t}.",
        ),
        Mistake(
            "multiplied",
            "t",
            "v*a",
            "You multiplied {v} by {a}. The speed grows by {a} in each second: divide {v} by {a} to get the seconds.",
        ),
    ),
)
SPEED_AFTER = Relation(
    "v^2 = 2*a*s",
    what="Speed after a distance, from rest",
    why=SPEED_GAINED.why,
    plain=STEADY,
    units={"v": "m·s⁻¹", "a": "m·s⁻²", "s": "m"},
    mistakes=(
        Mistake("root-omitted", "v", "2*a*s", "You stopped at {v^2}. Take its square root: that is the speed {v}."),
        Mistake(
            "two-omitted",
            "v",
            "sqrt(a*s)",
            "You left out the factor 2. From rest {v^2} = {2*a*s}: put the 2 under the root as well.",
        ),
        Mistake(
            "not-squared",
            "s",
            "v/(2*a)",
            "You did not square {v}. The formula has {v^2}: square the speed before you divide by {2*a}.",
        ),
    ),
)
DISTANCE_IN = Relation(
    "s = 1/2*a*t^2",
    what="Distance in a time, from rest",
    why=SPEED_GAINED.why,
    plain=STEADY,
    units={"s": "m", "a": "m·s⁻²", "t": "s"},
    mistakes=(
        Mistake(
            "not-squared",
            "s",
            "1/2*a*t",
            "You did not square {t}. The distance grows with the square of the time: multiply by {t^2}.",
        ),
        Mistake(
            "half-omitted",
            "s",
            "a*t^2",
            "You left out the half. The speed starts from zero, so its mean is half the last one: use {1/2*a*t^2}.",
        ),
        Mistake("root-omitted", "t", "2*s/a", TIME_SQUARED),
        Mistake(
            "half-omitted",
            "t",
            "sqrt(s/a)",
            "You left out the half in {1/2*a*t^2}. Double {s} before you divide by {a}.",
        ),
    ),
)
WORK_BY_FIELD = Relation(
    "W = q*E*s",
    what="Work done by the field: force times distance along it",
    why=(
        "The force qE and the motion along the field's line have the same direction, so cos 0° = 1. Work has no"
        " direction."
    ),
    plain="Pushing harder, or over a longer way, takes more energy from the field.",
    units={"W": "J", "q": "C", "E": "V·m⁻¹", "s": "m"},
    sizes=("q",),
    mistakes=(
        Mistake(
            "distance-omitted",
            "W",
            "q*E",
            "You stopped at the force {q*E}. Work is force times distance, so multiply by {s}.",
        ),
        Mistake(
            "multiplied",
            "s",
            "W*q*E",
            "You multiplied {W} by the force. Work is force times distance, so divide {W} by {q*E}.",
        ),
    ),
)
KINETIC = Relation(
    "W = 1/2*m*v^2",
    what="Work-energy theorem: the work becomes kinetic energy",
    quotes=(WORK_ENERGY.name,),
    why="It starts from rest, so all the work done by the field is now kinetic energy.",
    plain="What the field puts in as work is there as energy of motion.",
    units={"W": "J", "m": "kg", "v": "m·s⁻¹"},
    mistakes=(
        Mistake(
            "not-squared",
            "W",
            "1/2*m*v",
            "You did not square {v}. Kinetic energy grows with the square of the speed: multiply by {v^2}.",
        ),
        Mistake(
            "half-omitted",
            "W",
            "m*v^2",
            "You left out the half. Kinetic energy is half of {m*v^2}, so halve what you have.",
        ),
        Mistake("root-omitted", "v", "2*W/m", "You stopped at {v^2}. Take its square root: that is the speed {v}."),
        Mistake(
            "half-omitted",
            "v",
            "sqrt(W/m)",
            "You left out the half. The work {W} is half of {m*v^2}, so double it before you divide by {m}.",
        ),
        Mistake(
            "not-squared",
            "m",
            "2*W/v",
            "You divided by {v} only once. Kinetic energy has the square of the speed, so divide by {v^2}.",
        ),
    ),
)
ALONG_PLATES = Relation(
    "L = u*t",
    what="Along the plates: constant velocity",
    why="The field is at right angles to u: no force acts along the plates, so that velocity does not change.",
    plain="Nothing pushes it along the plates, so it goes on there just as fast.",
    units={"L": "m", "u": "m·s⁻¹", "t": "s"},
    mistakes=(
        Mistake(
            "multiplied", "t", "L*u", "You multiplied {L} by {u}. Time is distance divided by speed, so divide: {L/u}."
        ),
        Mistake(
            "upside-down",
            "t",
            "u/L",
            "You divided {u} by {L}. Time is distance divided by speed, so turn the fraction over: {L/u}.",
        ),
        Mistake(
            "divided", "L", "u/t", "You divided {u} by {t}. Distance is speed times time, so multiply: {L} = {u*t}."
        ),
        Mistake(
            "multiplied", "u", "L*t", "You multiplied {L} by {t}. Speed is distance divided by time, so divide: {L/t}."
        ),
    ),
)
BOTH_VELOCITIES = Relation(
    "v^2 = u^2 + v_y^2",
    what="Put the two velocities together",
    why="They are at right angles: use Pythagoras.",
    plain="It moves along and across at once.",
    units={"v": "m·s⁻¹", "u": "m·s⁻¹", "v_y": "m·s⁻¹"},
    mistakes=(
        Mistake(
            "sizes-added",
            "v",
            "u + v_y",
            "You added {u} and {v_y}. The two velocities are at right angles, so add their squares: use Pythagoras.",
        ),
    ),
)
ANGLE_LEFT = Relation(
    "tan(theta) = v_y/u",
    what="The angle of the velocity with the direction in which it entered",
    why="Opposite over adjacent: across over along.",
    plain="How steeply it leaves.",
    units={"theta": "°", "v_y": "m·s⁻¹", "u": "m·s⁻¹"},
    mistakes=(
        Mistake(
            "angle-inverted",
            "theta",
            "atan(u/v_y)",
            "You divided {u} by {v_y}. The side opposite {theta} is {v_y}, so divide {v_y} by {u}.",
            "the angle was taken from the line of the field",
        ),
    ),
)


def between(relation: Relation, **names: str) -> Relation:
    """The relation between other names. What stands on the data sheet has no sign and is not asked for."""
    law = relation.renamed(**names)
    return replace(
        law,
        units={name: unit for name, unit in law.units.items() if name not in SHEET},
        sizes=tuple(name for name in law.sizes if name not in SHEET),
        mistakes=tuple(m for m in law.mistakes if m.at not in SHEET),
    )


def step(relation: Relation, unknown: str, also: tuple[Mistake, ...] = (), **changes: Any) -> Step:
    """The relation's step for ``unknown`` with these fields of a Step changed; ``also``: further mistakes."""
    made = relation.step(unknown)
    return replace(made, mistakes=(*made.mistakes, *also), **changes)


def written(line: str, unit: str, **rest: Any) -> Step:
    """A step whose line holds for these data alone (a sum, a distance), so that no law of a data sheet has it."""
    return Step(law=line, make=line, unit=unit, **rest)


def force_step(at: str, q: str, makes: str, also: tuple[Mistake, ...] = (), **changes: Any) -> Step:
    """F = qE from the field ``at``, in the order in which it is said."""
    return step(between(PER_CHARGE, E=at, q=q, F=makes), makes, also, make=f"{makes} = {q}*{at}", **changes)


def along_or_against(negative: bool) -> str:
    if negative:
        return "The charge is negative: the force is opposite to the field."
    return "The charge is positive: the force has the direction of the field."


def follows_field(at: str, right: str, negative: bool) -> tuple[Mistake, ...]:
    """A negative charge taken to follow the field: the size stays right."""
    if not negative:
        return ()
    did = "gave the field the direction of the force" if at.startswith("E") else f"let {{{at}}} point along the field"
    say = (
        f"You {did}. The charge is negative, so force and field point opposite ways: turn the direction of {{{at}}}"
        " round."
    )
    return (Mistake("follows-field", at, right, say, "only the direction differs", turns=True),)
