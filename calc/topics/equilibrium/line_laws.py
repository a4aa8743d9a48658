"""The laws of a sphere held on one line, each declared once: the weight's parts, F_net = 0, the second law.

With "up" positive T + F_E − F_g∥ = 0, each force with its own sign; across a slope N = mg cos θ: data-sheet
equations and their components. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.model.answers import Mark
from calc.model.questions import NO_MARKS, SA, Mistake, Step
from calc.model.relations import Relation, Said
from calc.topics.equilibrium.relations import PLAIN_BALANCE
from calc.topics.equilibrium.shared import BALANCE_MARKS

SWAPPED = (
    "You took the cosine of {theta}. The component of the weight along the slope lies opposite {theta}: use the sine."
)
NOT_ARCCOS = "You took the inverse cosine. {F_gpar} lies opposite {theta}, so use the inverse sine of {F_gpar/(m*g)}."
ALONG_IT = "You used the whole weight. Only a part of it acts along the slope: use the component {m*g*sin(theta)}."
ACROSS = (
    "You took the sine of {theta}. {N} balances the component of the weight next to {theta}, across the slope: use the"
    " cosine."
)
NOT_ARCSIN = (
    "You took the inverse sine. {N} balances the component next to {theta}, so use the inverse cosine of {N/(m*g)}."
)
ACROSS_IT = "You let {N} carry the whole weight. On a slope it balances only one component: use {m*g*cos(theta)}."
FORGOTTEN = "You left out {F_E}. The charges still act on each other: put {F_E} into the sum of the forces."
PULL_TURNED = (
    "You took {F_E} the other way. Say first whether the charges attract or repel, draw {F_E}, and add up the forces"
    " again."
)
PUSH_TURNED = "You took one force the other way. Draw all of them again, and see which point the same way as {F_E}."
GENTLE = "On a gentle slope gravity pulls only a little along it; on a steep one nearly with all its strength."
EXCHANGED = "sin and cos are exchanged"
FROM_PARALLEL = "Find the {} from the component along the slope"
WEIGHT = Relation(
    "F_g = m*g",
    "Find the weight",
    "The weight acts straight down.",
    {"F_g": "N", "m": "kg"},
    marks=NO_MARKS,
    mistakes=(
        Mistake(
            "multiplied",
            "m",
            "F_g*g",
            "You multiplied {F_g} by {g}. The weight is {m*g}, so divide it by {g} to get the mass {m}.",
        ),
    ),
    said={
        "F_g": Said(marks=NO_MARKS, plain="How hard the earth pulls on the sphere."),
        "m": Said("Find the mass from the weight", "The weight is m times g.", marks=SA),
    },
)
PARALLEL = Relation(
    "F_gpar = m*g*sin(theta)",
    "Resolve the weight along the slope",
    "Only this component of the weight acts along the slope.",
    {"F_gpar": "N", "m": "kg", "theta": "°"},
    marks=SA,
    mistakes=(
        Mistake("sin-cos", "F_gpar", "m*g*cos(theta)", SWAPPED, EXCHANGED),
        Mistake("not-resolved", "F_gpar", "m*g", ALONG_IT),
        Mistake("sin-cos", "m", "F_gpar/(g*cos(theta))", SWAPPED, EXCHANGED),
        Mistake("sin-cos", "theta", "acos(F_gpar/(m*g))", NOT_ARCCOS, EXCHANGED),
    ),
    said={
        "F_gpar": Said(marks=NO_MARKS, plain=GENTLE),
        "m": Said(FROM_PARALLEL.format("mass"), "F_g∥ = mg sin θ, with m alone on one side."),
        "theta": Said(FROM_PARALLEL.format("angle"), "F_g∥ = mg sin θ: the inverse sine gives the angle."),
    },
)
NORMAL = Relation(
    "N = m*g*cos(theta)",
    "Balance the forces across the slope",
    "T and F_E have no component across the slope, so N alone balances mg cos θ.",
    {"N": "N", "m": "kg", "theta": "°"},
    mistakes=(
        Mistake("sin-cos", "N", "m*g*sin(theta)", ACROSS, EXCHANGED),
        Mistake("not-resolved", "N", "m*g", ACROSS_IT),
        Mistake("sin-cos", "m", "N/(g*sin(theta))", ACROSS, EXCHANGED),
        Mistake("sin-cos", "theta", "asin(N/(m*g))", NOT_ARCSIN, EXCHANGED),
    ),
    said={
        "N": Said(plain="The slope pushes back just as hard as the sphere presses on it."),
        "m": Said("Find the mass from the normal force", "N = mg cos θ, with m alone on one side."),
        "theta": Said("Find the angle from the normal force", "N = mg cos θ: the inverse cosine gives the angle."),
    },
)
COMPONENTS = Relation(
    "tan(theta) = F_gpar/N",
    "Find the angle from both components of the weight",
    "F_g∥ = mg sin θ and N = mg cos θ: divided, m and g cancel.",
    {"theta": "°"},
)
AFTER_CUT = "Write the second law just after the cut"
BARE_REASON = "Once the string is cut only the weight's component acts along the slope; m cancels."
BARE_CUT = Relation(
    "m*a = m*g*sin(theta)",
    AFTER_CUT,
    BARE_REASON,
    {"a": "m·s⁻²", "theta": "°"},
    by_hand={
        "a": Step(
            "m*a = m*g*sin(theta)",
            "a = g*sin(theta)",
            AFTER_CUT,
            BARE_REASON,
            "m·s⁻²",
            mistakes=(Mistake("sin-cos", "a", "g*cos(theta)", SWAPPED, EXCHANGED),),
        ),
        "theta": Step("m*a = m*g*sin(theta)", "theta = asin(a/g)", AFTER_CUT, BARE_REASON, "°"),
    },
)


def sum_of(string: str, lift: int, weight: str) -> str:
    """F_net = 0 along the line, up positive; ``lift`` 0: without an electrostatic force."""
    sums = {
        ("up", 1): "T + F_E - {} = 0",
        ("up", -1): "T - F_E - {} = 0",
        ("down", 1): "F_E - T - {} = 0",
        ("up", 0): "T - {} = 0",
    }
    return sums.get((string, lift), "F_E - {} = 0").format(weight)


def balance(string: str, lift: int, weight: str, why: str) -> Relation:
    """F_net = 0 along the line for T, F_E and the weight's part (``F_gpar`` or ``F_g``)."""
    slope = weight == "F_gpar"
    what = f"Let the forces along the {'slope' if slope else 'vertical'} add up to zero"
    law = Relation(
        sum_of(string, lift, weight),
        what,
        why,
        dict.fromkeys(("T", "F_E", weight), "N"),
        PLAIN_BALANCE,
        marks=BALANCE_MARKS,
    )
    mistakes: list[Mistake] = []
    if lift and string != "none":
        whole = "m*g*sin(theta)" if slope else "m*g"
        pull, push = (other_way(law.step(name).make) for name in ("T", "F_E"))
        mistakes = [
            Mistake(
                "reversed",
                "T",
                pull,
                PULL_TURNED,
                "the answer differs by 2F_E",
            ),
            Mistake("charge-forgotten", "T", whole, FORGOTTEN),
            Mistake(
                "reversed",
                "F_E",
                push,
                PUSH_TURNED,
                "one force is taken the other way",
            ),
        ]
    law = Relation(law.law, what, why, law.units, PLAIN_BALANCE, marks=BALANCE_MARKS, mistakes=tuple(mistakes))
    short = (Mark("formula"), Mark("answer")) if string == "none" else (Mark("formula"), Mark("substitution"))
    names = law.names if string == "none" else (weight,)
    return replace(law, said=dict.fromkeys(names, Said(what, why, marks=short)))


def other_way(make: str) -> str:
    """The right side of a sum or difference with its sign turned; its size only."""
    right = make.split(" = ")[1]
    if " - " in right:
        return right.replace(" - ", " + ")
    return f"abs({right.replace(' + ', ' - ')})"


def mass_from_cut(string: str, lift: int) -> Relation:
    """m where only F_E, the angle and the acceleration after the cut are given."""
    law = {
        ("up", 1): "m*a = m*g*sin(theta) - F_E",
        ("up", -1): "m*a = m*g*sin(theta) + F_E",
        ("down", 1): "m*a = F_E - m*g*sin(theta)",
    }[string, lift]
    why = "The tension is gone; the other two forces along the slope are unchanged and give the acceleration."
    return Relation(law, AFTER_CUT, why, {"m": "kg"}, marks=BALANCE_MARKS)


BALANCES = tuple(
    balance(string, lift, weight, "At rest, so F_net = 0.")
    for string, lift in (("up", 1), ("up", -1), ("down", 1), ("none", 1), ("up", 0))
    for weight in ("F_gpar", "F_g")
)
MASSES = tuple(mass_from_cut(string, lift) for string, lift in (("up", 1), ("up", -1), ("down", 1)))
