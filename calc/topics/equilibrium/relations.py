"""The laws of charged bodies at rest, each declared once; every form of them follows.

T cos α = mg and T sin α = F_E, divided tan α = F_E/(mg), for a thread at α to the vertical; Coulomb's law
with the sizes of the charges; n = Q/e; F_net = T and F_net = ma just after a string is cut: data-sheet
equations and their components. Marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import replace

from calc.language.expressions import equation
from calc.model.answers import Direction
from calc.model.directions import ALONG_THREAD, ELECTRONS
from calc.model.questions import NO_MARKS, Check, Mistake, Step, Values
from calc.model.relations import Relation, Said
from calc.topics.shared.electrostatics import (
    COULOMB,
    EACH_BRINGS,
    NOT_ADDED,
    NOT_ROOTED,
    NOT_SQUARED,
    ONLY_ONCE,
    PER_ELECTRON,
    PLAIN_LAW,
    SECOND,
    WHY_SIGN,
    sign_of_charge,
)

PLAIN_BALANCE = "Nothing moves, so the pulls up and the pulls down along the line are worth the same."
AWAY, TO_SUPPORT = ALONG_THREAD.of("away"), ALONG_THREAD.of("to")
OPPOSITE = (
    "You have the tangent upside down. {F_E} lies opposite {alpha} and {m*g} next to it: start again from"
    " {tan(alpha)} = {F_E/(m*g)}."
)
LONGEST = (
    "You used the sine. The weight {m*g} is a side at the right angle, not the longest side: use the tangent of"
    " {alpha}."
)
MULTIPLIED = (
    "You multiplied by the cosine. The vertical part of {T} carries the weight, {T*cos(alpha)} = {m*g}: divide {m*g} by"
    " {cos(alpha)}."
)
UPRIGHT = "You took the sine for the vertical part of {T}. It lies next to {alpha}: use {T*cos(alpha)} = {m*g}."
LEVEL = "You took the cosine. The horizontal part of {T} lies opposite {alpha}: use {T*sin(alpha)} = {F_E}."


def directed(law: Relation, ways: Mapping[str, Direction]) -> Relation:
    """A relation whose quantities point as told."""
    steps = {name: replace(step, direction=ways.get(name)) for name, step in law.by_hand.items()}
    return replace(law, directions=ways, by_hand=steps)


def alone(step: Step) -> Relation:
    """A law that is used for one of its quantities only, by the step given."""
    names = {step.makes: step.unit}
    return Relation(step.law, step.what, step.why, names, step.plain, sizes=step.sizes, by_hand={step.makes: step})


THREAD_UNITS = {"m": "kg", "alpha": "°", "F_E": "N", "T": "N"}
THREAD = (
    Relation(
        "tan(alpha) = F_E/(m*g)",
        "Compare the two components of the tension",
        "At rest: T sin α balances F_E, T cos α balances mg. Divide the two: T drops out.",
        THREAD_UNITS,
        PLAIN_BALANCE,
        mistakes=(
            Mistake("tan-inverted", "F_E", "m*g/tan(alpha)", OPPOSITE, "tan is upside down"),
            Mistake(
                "sin-for-tan",
                "F_E",
                "m*g*sin(alpha)",
                LONGEST,
            ),
            Mistake("tan-inverted", "m", "F_E*tan(alpha)/g", OPPOSITE),
            Mistake("tan-inverted", "alpha", "atan(m*g/F_E)", OPPOSITE),
        ),
    ),
    Relation(
        "T*cos(alpha) = m*g",
        "Balance the vertical forces",
        "Only the vertical part of the tension holds the weight.",
        THREAD_UNITS,
        PLAIN_BALANCE,
        mistakes=(
            Mistake("cos-times", "T", "m*g*cos(alpha)", MULTIPLIED, "the answer is smaller than the weight"),
            Mistake("sin-cos", "m", "T*sin(alpha)/g", UPRIGHT),
            Mistake("sin-cos", "alpha", "asin(m*g/T)", UPRIGHT),
        ),
    ),
    Relation(
        "T*sin(alpha) = F_E",
        "Balance the horizontal forces",
        "Only the horizontal part of the tension holds the sphere against F_E.",
        THREAD_UNITS,
        PLAIN_BALANCE,
        mistakes=(
            Mistake("sin-cos", "F_E", "T*cos(alpha)", LEVEL),
            Mistake("sin-cos", "T", "F_E/cos(alpha)", LEVEL),
            Mistake("sin-cos", "alpha", "acos(F_E/T)", LEVEL),
        ),
    ),
)


def thread_laws(towards: Direction | None) -> tuple[Relation, ...]:
    """One body on a thread with a horizontal force F_E: divided, vertical and horizontal balance.

    towards: the direction of F_E, where it is told.
    """
    ways = {"T": TO_SUPPORT, **({"F_E": towards} if towards else {})}
    return tuple(replace(law, directions=ways) for law in THREAD)


WOULD_CUT = Relation(
    "a*cos(alpha) = g",
    "Use what the cut would do",
    "Just after the cut a = T/m, and T = mg/cos α.",
    {"alpha": "°"},
    PLAIN_BALANCE,
)


SUMMED = "You added the two charges. The force grows in step with each of them, so multiply: {Q1^2}."
SIZE = "Use Coulomb's law for the size of the charge"


def _coulomb(both: str, added: str, say: str, charges: tuple[str, ...], *mistakes: Mistake) -> Relation:
    """Coulomb's law with its product of charges. say: to one who added them."""
    law = Relation(
        f"F_E = k*{both}/r^2",
        "Find the electrostatic force with Coulomb's law",
        WHY_SIGN,
        {"F_E": "N", "r": "m", **dict.fromkeys(charges, "C")},
        PLAIN_LAW,
        sizes=charges,
        quotes=(COULOMB.name,),
        mistakes=(
            Mistake("not-squared", "F_E", f"k*{both}/r", NOT_SQUARED, "the answer is {r} times the right one"),
            Mistake("added", "F_E", f"k*({added})/r^2", say),
            Mistake("root-omitted", "r", f"k*{both}/F_E", NOT_ROOTED, "the answer is the square of the distance"),
            *mistakes,
        ),
    )
    why = WHY_SIGN if len(charges) > 1 else "Both charges are the same size, so Q² stands in the law."
    words = {"r": Said("Use Coulomb's law for the distance", "Only the positive root is a distance.")}
    return replace(law, said={**words, **dict.fromkeys(charges, Said(SIZE, why))})


TWO_CHARGES = _coulomb(
    "Q1*Q2",
    "Q1+Q2",
    NOT_ADDED,
    ("Q1", "Q2"),
    Mistake("not-squared", "Q1", "F_E*r/(k*Q2)", ONLY_ONCE),
    Mistake("not-squared", "Q2", "F_E*r/(k*Q1)", ONLY_ONCE),
)
EQUAL_CHARGES = _coulomb(
    "Q1^2",
    "2*Q1",
    SUMMED,
    ("Q1",),
    Mistake("root-omitted", "Q1", "F_E*r^2/k", "You stopped at {Q1^2}. Take its square root: that is the charge {Q1}."),
)


def coulomb(towards: Direction | None, sign_1: int = 0, sign_2: int = 0, equal: bool = False) -> Relation:
    """Coulomb's law between Q1 and Q2, or between two charges of the size Q1 where they are equal.

    towards: the direction of F_E. sign_1, sign_2: the signs of the charges, 0 where they are not known.
    """
    ways = {name: sign_of_charge(sign) for name, sign in (("Q1", sign_1), ("Q2", sign_2)) if sign}
    return directed(EQUAL_CHARGES if equal else TWO_CHARGES, {**ways, **({"F_E": towards} if towards else {})})


COUNTING = Relation(
    "n = Q1/e",
    "Count the electrons",
    "Charge comes in whole electron charges; e is the size of one.",
    {"n": "", "Q1": "C"},
    "Divide the pile by the size of one grain to count the grains.",
    sizes=("Q1",),
    mistakes=(
        Mistake("multiplied", "n", "Q1*e", PER_ELECTRON % "Q1"),
        Mistake("divided", "Q1", "n/e", EACH_BRINGS % "n} by {e"),
    ),
    said={
        "n": Said(count=True),
        "Q1": Said(
            "Turn the electrons into a charge",
            "Each electron too many or too few counts e.",
            marks=NO_MARKS,
            plain="So many grains, each of the same size.",
        ),
    },
)


def counting(sign_1: int = 0) -> Relation:
    """Charge and electrons; ``sign_1``: the sign of the charge Q1, 0 where it is not known."""
    kept = ELECTRONS.of("excess" if sign_1 < 0 else "lacking")
    ways = {"n": kept, "Q1": sign_of_charge(sign_1)} if sign_1 else {}
    return directed(COUNTING, ways)


CUT = (
    "The cut takes the tension away at once. The sphere has not moved yet, so r, F_E and the weight are what they were."
    " Before the cut they were balanced by T, so the net force is now as large as T was."
)
TENSION_KEPT = Mistake(
    "tension-kept",
    "F_net",
    "0",
    "You let the forces balance as before. The cut takes {T} away at once: leave {T} out and add up the others.",
    "the answer is zero",
)


HELD = "What the string held back is what moves the sphere once it is gone."
NET = Relation(
    "F_net = T",
    "Find the net force just after the cut",
    CUT,
    {"F_net": "N"},
    "Let go of one end of a tug-of-war rope and the other side wins by exactly what you pulled.",
    marks=NO_MARKS,
    mistakes=(TENSION_KEPT,),
)
SECOND_LAW = Relation(
    "F_net = m*a",
    "Use Newton's second law",
    "The net force gives the acceleration, in its own direction.",
    {"a": "m·s⁻²"},
    "The heavier the body, the less a given push changes its motion.",
    mistakes=(
        Mistake(
            "multiplied",
            "a",
            "F_net*m",
            "You multiplied {F_net} by {m}. A larger mass is harder to speed up, so divide: {a} = {F_net/m}.",
        ),
    ),
    quotes=(SECOND.name,),
)


BACK = Relation(
    "T = m*a",
    "Find the tension from the acceleration after the cut",
    CUT,
    {"T": "N", "m": "kg"},
    HELD,
    said={"m": Said("Find the mass from the acceleration after the cut", CUT)},
)


def cut(way: Direction, *mistakes: Mistake) -> tuple[Relation, ...]:
    """Just after the cut: the net force is as large as T was and points along ``way``; T = ma takes it back."""
    net = replace(NET, mistakes=(*NET.mistakes, *mistakes))
    return (directed(net, {"F_net": way}), directed(SECOND_LAW, {"a": way}), BACK)


def steps_of(*laws: Relation) -> list[Step]:
    """Every step that these laws allow, in their order."""
    return [step for law in laws for step in law.steps()]


COUNTED = Check("Multiply back: the charge that n electrons carry", "n*e = Q1", sizes=("Q1",))


def provable(names: Collection[str], *checks: Check) -> tuple[Check, ...]:
    """The second ways to an answer whose quantities are all among ``names``; constants are known anyway."""
    known = {*names, "k", "g", "e"}
    return tuple(c for c in checks if set(equation(c.equation).names) <= known)


def where_known(*checks: Check) -> Callable[[Values], tuple[Check, ...]]:
    """Second ways to an answer, each where all its values are known."""
    return lambda values: provable(values.keys(), *checks)
