"""The laws of charged bodies at rest, each declared once; every form of them follows.

T cos α = mg and T sin α = F_E, divided tan α = F_E/(mg), for a thread at α to the vertical; Coulomb's law
with the sizes of the charges; n = Q/e; F_net = T and F_net = ma just after a string is cut: data-sheet
equations and their components. Marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from calc.language.expressions import equation
from calc.model.answers import Direction
from calc.model.questions import NO_MARKS, Check, Mistake, Step, Values
from calc.model.relations import Relation, Towards
from calc.topics.shared.electrostatics import PLAIN_LAW, WHY_SIGN, sign_of_charge

PLAIN_BALANCE = (
    "Nothing moves, so the pulls up and the pulls down along the line are worth the same."
)
ALONG = (
    ("away", "along the line of the thread, away from the support"),
    ("to", "along the line of the thread, towards the support"),
    ("down", "straight down"),
    ("sideways", "horizontally"),
)
AWAY, TO_SUPPORT = (Direction(key, dict(ALONG)[key], ALONG) for key in ("away", "to"))
OPPOSITE = "F_E is opposite α and mg beside it: tan α = F_E/(mg)."
UPRIGHT = "The vertical part of T balances mg: T cos α = mg."
LEVEL = "F_E is opposite α: T sin α."


def thread_laws(towards: Direction | None) -> tuple[Relation, ...]:
    """One body on a thread with a horizontal force F_E: divided, vertical and horizontal balance.

    towards: the direction of F_E, where it is told.
    """
    units = {"m": "kg", "alpha": "°", "F_E": "N", "T": "N"}
    pull = {"T": fixed(TO_SUPPORT)}
    push = {"F_E": fixed(towards)} if towards else {}
    return (
        Relation(
            "tan(alpha) = F_E/(m*g)", "Compare the two components of the tension",
            "At rest: T sin α balances F_E, T cos α balances mg. Divide the two: T drops out.",
            units, PLAIN_BALANCE, directions=push,
            mistakes=(
                Mistake("tan-inverted", "F_E", "m*g/tan(alpha)", OPPOSITE, "tan is upside down"),
                Mistake("sin-for-tan", "F_E", "m*g*sin(alpha)", "mg is a side of the right angle, not the longest side: use tan α."),
                Mistake("tan-inverted", "m", "F_E*tan(alpha)/g", OPPOSITE),
                Mistake("tan-inverted", "alpha", "atan(m*g/F_E)", OPPOSITE),
            ),
        ),
        Relation(
            "T*cos(alpha) = m*g", "Balance the vertical forces", "Only the vertical part of the tension holds the weight.",
            units, PLAIN_BALANCE, directions=pull,
            mistakes=(
                Mistake("cos-times", "T", "m*g*cos(alpha)", UPRIGHT, "the answer is smaller than the weight"),
                Mistake("sin-cos", "m", "T*sin(alpha)/g", UPRIGHT),
                Mistake("sin-cos", "alpha", "asin(m*g/T)", UPRIGHT),
            ),
        ),
        Relation(
            "T*sin(alpha) = F_E", "Balance the horizontal forces", "Only the horizontal part of the tension holds the sphere against F_E.",
            units, PLAIN_BALANCE, directions={**pull, **push},
            mistakes=(
                Mistake("sin-cos", "F_E", "T*cos(alpha)", LEVEL),
                Mistake("sin-cos", "T", "F_E/cos(alpha)", LEVEL),
                Mistake("sin-cos", "alpha", "acos(F_E/T)", LEVEL),
            ),
        ),
    )  # fmt: skip


WOULD_CUT = Relation(
    "a*cos(alpha) = g", "Use what the cut would do", "Just after the cut a = T/m, and T = mg/cos α.", {"alpha": "°"}, PLAIN_BALANCE,
)  # fmt: skip


def coulomb(towards: Direction | None, sign_1: int = 0, sign_2: int = 0, equal: bool = False) -> Relation:  # fmt: skip
    """Coulomb's law between Q1 and Q2, or between two charges of the size Q1 where they are equal.

    towards: the direction of F_E. sign_1, sign_2: the signs of the charges, 0 where they are not known.
    """
    both, sum_ = ("Q1^2", "2*Q1") if equal else ("Q1*Q2", "Q1+Q2")
    signs = {"Q1": sign_1} if equal else {"Q1": sign_1, "Q2": sign_2}
    ways = {name: sign_of_charge(sign) for name, sign in signs.items() if sign}
    ways |= {"F_E": towards} if towards else {}
    mistakes = [
        Mistake("not-squared", "F_E", f"k*{both}/r", "Inverse square: square the distance.", "the answer is r times the right one"),
        Mistake("added", "F_E", f"k*({sum_})/r^2", "Product, not sum: multiply the charges."),
        Mistake("root-omitted", "r", f"k*{both}/F_E", "You have r²: take the square root.", "the answer is the square of the distance"),
    ]  # fmt: skip
    if equal:
        mistakes.append(Mistake("root-omitted", "Q1", "F_E*r^2/k", "You have Q²: take the square root."))  # fmt: skip
    else:
        mistakes += [
            Mistake("not-squared", one, f"F_E*r/(k*{other})", "Inverse square: square the distance.")
            for one, other in (("Q1", "Q2"), ("Q2", "Q1"))
        ]  # fmt: skip
    law = Relation(
        f"F_E = k*{both}/r^2", "Find the electrostatic force with Coulomb's law", WHY_SIGN,
        {"F_E": "N", "r": "m", **dict.fromkeys(signs, "C")}, PLAIN_LAW, sizes=tuple(signs),
        mistakes=tuple(mistakes), directions={name: fixed(way) for name, way in ways.items()},
    )  # fmt: skip
    words = {"r": ("Use Coulomb's law for the distance", "Only the positive root is a distance.")}
    words |= dict.fromkeys(signs, ("Use Coulomb's law for the size of the charge", WHY_SIGN if not equal else "Both charges are the same size, so Q² stands in the law."))  # fmt: skip
    return told(law, words)


def counting(sign_1: int = 0) -> Relation:
    """Charge and electrons; ``sign_1``: the sign of the charge Q1, 0 where it is not known."""
    excess, lacking = (
        ("excess", "too many electrons: the charge is negative"),
        ("lacking", "too few electrons: the charge is positive"),
    )
    kept = excess if sign_1 < 0 else lacking
    where = Direction(*kept, options=(excess, lacking)) if sign_1 else None
    law = Relation(
        "n = Q1/e", "Count the electrons", "Charge comes in whole electron charges; e is the size of one.",
        {"n": "", "Q1": "C"}, "Divide the pile by the size of one grain to count the grains.", sizes=("Q1",),
        directions={"n": lambda _: where, "Q1": lambda _: sign_of_charge(sign_1) if sign_1 else None},
        mistakes=(
            Mistake("multiplied", "n", "Q1*e", "Divide by the charge of one electron: n = Q/e."),
            Mistake("divided", "Q1", "n/e", "Multiply: each electron brings e."),
        ),
    )  # fmt: skip
    count = replace(law.step("n"), count=True)
    back = replace(
        law.step("Q1"), what="Turn the electrons into a charge", why="Each electron too many or too few counts e.",
        plain="So many grains, each of the same size.", marks=NO_MARKS,
    )  # fmt: skip
    return replace(law, by_hand={"n": count, "Q1": back})


CUT = (
    "The cut takes the tension away at once. The sphere has not moved yet, so r, F_E and the weight are what they were. "
    "Before the cut they were balanced by T, so the net force is now as large as T was."
)
TENSION_KEPT = Mistake("tension-kept", "F_net", "0", "The cut removes T: the other forces no longer balance.", "the answer is zero")  # fmt: skip


def cut(way: Direction, *mistakes: Mistake) -> tuple[Relation, ...]:
    """Just after the cut: the net force is as large as T was and points along ``way``; T = ma takes it back."""
    held = "What the string held back is what moves the sphere once it is gone."
    ways = {"F_net": fixed(way), "a": fixed(way)}
    back = Relation("T = m*a", "Find the tension from the acceleration after the cut", CUT, {"T": "N", "m": "kg"}, held)  # fmt: skip
    return (
        Relation(
            "F_net = T", "Find the net force just after the cut", CUT, {"F_net": "N"},
            "Let go of one end of a tug-of-war rope and the other side wins by exactly what you pulled.",
            marks=NO_MARKS, directions=ways, mistakes=(TENSION_KEPT, *mistakes),
        ),
        Relation(
            "F_net = m*a", "Use Newton's second law", "The net force gives the acceleration, in its own direction.", {"a": "m·s⁻²"},
            "The heavier the body, the less a given push changes its motion.", directions=ways,
            mistakes=(Mistake("multiplied", "a", "F_net*m", "Divide: a = F_net/m."),),
        ),
        told(back, {"m": ("Find the mass from the acceleration after the cut", CUT)}),
    )  # fmt: skip


def told(law: Relation, words: dict[str, tuple[str, str]]) -> Relation:
    """A relation whose step for a name in ``words`` has its own heading and reason."""
    return replace(
        law,
        by_hand={
            **law.by_hand,
            **{
                name: replace(law.step(name), what=what, why=why)
                for name, (what, why) in words.items()
            },
        },
    )


def fixed(way: Direction) -> Towards:
    """A direction that no value changes."""
    return lambda values: way


def steps_of(*laws: Relation) -> list[Step]:
    """Every step that these laws allow, in their order."""
    return [step for law in laws for step in law.steps()]


def where_known(*checks: Check) -> Callable[[Values], tuple[Check, ...]]:
    """Second ways to an answer, each where all its values are known."""
    return lambda values: tuple(c for c in checks if set(equation(c.equation).names) <= values.keys())  # fmt: skip
