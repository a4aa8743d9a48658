"""Two terms with one unknown angle made one: with tan ε = μ, sin θ ± μ cos θ is sin(θ ± ε)/cos ε, and so for cosines.

Angle sums of school mathematics.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import acos, atan, cos, pi
from typing import Literal

from calc.language.expressions import expression
from calc.model.answers import Mark
from calc.model.questions import FSA, A, Refusal, Step, Values
from calc.model.relations import Relation
from calc.working.declaring import Mistake

NEAR = 1e-6  # rad: rounding
STEEPER = (
    "A second angle fits these numbers: {}. On so steep a slope less friction makes up for the larger part of the"
    " weight along it."
)


def named(coefficient: str, terms: str) -> Relation:
    """ε, whose tangent is the coefficient. terms: which two terms become one: "those of …"."""
    return Relation(
        f"tan(epsilon) = {coefficient}",
        what="Name the angle whose tangent is the coefficient",
        why=f"With μ = sin ε/cos ε both terms with the unknown angle, {terms}, become one.",
        units={"epsilon": "°"},
        plain="A way to turn two unknown parts into one.",
        marks=(Mark("answer"),),
        mistakes=(
            Mistake(
                "sine",
                "epsilon",
                f"asin({coefficient})",
                f"You took the sine. Use the tangent: {{{coefficient}}} is sine over cosine.",
            ),
        ),
    )


def other_slope(values: Values) -> float | None:
    """The other angle (rad) below 90° with the same sin(θ + ε), if there is one."""
    other = pi - values["theta"] - 2 * values["epsilon"]
    return other if 0 <= other < pi / 2 and abs(other - values["theta"]) > NEAR else None


# --- the angle of a pull that drives and lightens: P(cos φ + μ sin φ) = P cos(φ − ε)/cos ε ------------------------

TOO_SMALL = "Too small at every angle: even at the best angle this force cannot do it. Use a larger one."
BELOW = "It lies below the surface: there the pull would be a push, not a pull."
ABOVE = "It lies above the surface: there the push would be a pull, not a push."
OFF = "There the pull would lift the body off the surface, so it is dropped."
WHY_NOT = {"below": BELOW, "above": ABOVE, "off": OFF, "also": ""}
OTHER_ASK = "Calculate the other angle at which a force of this size does the same."


@dataclass(frozen=True)
class Leaning:
    """The angles at which ``pull``·(cos φ + μ sin φ) is ``rest``, two expressions. larger, other: see ``leaning``."""

    pull: str
    rest: str
    larger: bool = True
    other: Literal["also", "below", "above", "off"] = "below"

    def make(self, name: str, larger: bool) -> str:
        """One of the two roots, as an equation."""
        return f"{name} = epsilon {'+' if larger else '-'} acos({self.rest}*cos(epsilon)/({self.pull}))"

    def step(self, what: str, why: str, plain: str, quotes: tuple[str, ...], name: str = "phi") -> Step:
        """The step for φ; under another ``name`` the one for the other angle."""
        first = name == "phi"
        larger = self.larger == first
        shown = first and self.other != "also"
        return Step(
            f"{self.pull}*cos({name} - epsilon) = {self.rest}*cos(epsilon)",
            self.make(name, larger),
            what,
            why,
            "°",
            FSA if first else A,
            (f"cos({name} - epsilon) = {self.rest}*cos(epsilon)/({self.pull})",),
            other=self.make(name, not larger) if shown else "",
            dropped=WHY_NOT[self.other],
            quotes=quotes,
            plain=plain,
        )


def leaning(
    pull: str, rest: str, coefficient: float, known: Values, normal: Callable[[float], float], push: bool = False
) -> Leaning:
    """Which of the two angles hold. normal: N (N) at an angle (rad). Raises Refusal where none can be.

    pull begins with the name of the force. larger: whether the larger one is the answer; other: whether the other
    holds as well, or why not.
    """
    turned = atan(coefficient)
    ratio = expression(rest).value(known) * cos(turned) / expression(pull).value(known)
    if ratio > 1 + NEAR:
        raise Refusal(pull[0], TOO_SMALL)
    spread = acos(max(min(ratio, 1.0), -1.0))
    holds = [0 <= one < pi / 2 and normal(one) >= 0 for one in (turned + spread, turned - spread)]
    if all(holds) and spread > NEAR:
        return Leaning(pull, rest, True, "also")
    if holds[1] and not holds[0]:
        return Leaning(pull, rest, False, "off")
    return Leaning(pull, rest, True, "above" if push else "below")
