"""The angle of a slope, or of a force with its surface, from the motion: two sines or cosines made one.

With tan ε = μ, sin θ + μ cos θ is sin(θ + ε)/cos ε and cos φ + μ sin φ is cos(φ − ε)/cos ε (any book on trigonometry).
"""

from __future__ import annotations

from collections.abc import Mapping
from math import acos, asin, atan, cos, degrees, pi

from calc.language.expressions import equation as line
from calc.language.symbols import symbol
from calc.model.answers import Mark
from calc.model.questions import FSA, Refusal, Step
from calc.topics.forces.words import TWO
from calc.topics.newton.situation_chain import STEEPEST
from calc.topics.newton.situation_laws import joined, presses
from calc.topics.newton.situation_side import Side, bracket
from calc.working.working import sized

TINY = 1e-9
NO_ANGLE = (
    "No angle of the slope fits: the forces along it are too large or too small at every angle. Check the numbers."
)
LEVEL_ONLY = "No slope fits: it would have to fall to the right, not rise. Check the numbers and which way they move."
NO_RIDGE = (
    "No slope on this side fits: it would have to be level or fall away. Check the numbers and which way they move."
)
TOO_STEEP = f"The slope would have to be steeper than {STEEPEST:.0f}°, the most that the page draws. Check the numbers."
TOO_SMALL = "Too small at every angle: even at the best angle this force does not do it. Use a larger one."
NO_PHI = (
    "No angle from 0° to 90° fits: the force is too large for this motion, or acts the wrong way. Check the numbers."
)
STEEPER = "A slope as steep as this fits as well; the smaller angle is asked."
OVER = "A slope makes at most 90° with the horizontal: this one is dropped."
NOT_DRAWN = f"The page draws slopes up to {STEEPEST:.0f}°: this one is dropped."
BELOW = "A slope that rises to the right has an angle above zero: this one is dropped."
PHI_BOTH = "This angle fits as well; the smaller one is asked."
PHI_OUT = "It does not lie between 0° and 90° on its side of the surface, so it is dropped."
HELPER = Step(
    "tan(epsilon) = {}",
    "epsilon = atan({})",
    "Name the angle whose tangent is the coefficient",
    "Then both terms with the unknown angle become one.",
    "°",
    (Mark("answer"),),
    plain="A sine and a cosine of the same angle, added, are again one sine, moved along.",
)


def helper(mu: str) -> Step:
    """The angle ε."""
    return Step(
        HELPER.law.format(mu),
        HELPER.make.format(mu),
        HELPER.what,
        HELPER.why,
        HELPER.unit,
        HELPER.marks,
        plain=HELPER.plain,
    )


def rest(terms: list[tuple[int, str]], why: str, sizes: tuple[str, ...]) -> Step:
    """F₀: what the equation has besides the unknown angle."""
    sum_ = joined(terms)
    return Step(f"F_0 = {sum_}", f"F_0 = {sum_}", "Put the known terms on one side", why, "N", TWO, sizes=sizes)


def of_slope(side: Side, v: Mapping[str, float]) -> tuple[Step, ...]:
    """The angle of the slope under these bodies; v has the friction elsewhere."""
    here, name = side.here, side.name
    on = [n for n in side.standing if here.angle(n) == name]
    rubs = [n for n in side.rough if n in on]
    mu = side.of(rubs[0]) if rubs else ""
    terms = [(sign, term) for sign, term in side.drive if f"({name})" not in term]
    terms += [(-1, f"f_{n}") for n in side.rough if n not in on]
    if rubs and here.acted in on:
        terms.append((-1 if here.push else 1, f"{mu}*P*sin(phi)"))
    if not here.balanced:
        terms.append((-1, side.gains))
    known = line(f"F_0 = {joined(terms)}").right.value(sized(v, here.sizes)) if terms else 0.0
    epsilon = atan(v[mu]) if rubs else 0.0
    share = known * cos(epsilon) / (sum(v[f"m{n}"] for n in on) * v["g"])
    if abs(share) > 1:
        raise Refusal(None, NO_ANGLE)
    lean, up = asin(share), (here.way > 0) != here.falls(on[0])
    first, second = (lean - epsilon, pi - lean - epsilon) if up else (epsilon - lean, epsilon + lean - pi)
    if first <= TINY:
        raise Refusal(None, NO_RIDGE if here.shape.ridge else LEVEL_ONLY)
    if degrees(first) > STEEPEST + TINY:
        raise Refusal(None, TOO_STEEP)
    if rubs and not terms:
        return (tangent(side),)
    why = f"Sorted: what depends on {symbol(name).text} stands on one side, everything else on the other."
    solve = sine(name, up, bracket(" + ".join(f"m{n}" for n in on)), mu, dropped_slope(second))
    return ((helper(mu),) if rubs else ()) + (rest(terms or [(1, "0")], why, here.sizes), solve)


def dropped_slope(other: float) -> str:
    """Why the other root is not the answer."""
    if other < 0:
        return BELOW
    if degrees(other) > 90:
        return OVER
    return NOT_DRAWN if degrees(other) > STEEPEST else STEEPER


def sine(name: str, up: bool, mass: str, mu: str, dropped: str) -> Step:
    """The sine with the unknown angle, solved. up: it moves up this slope; mu: empty without friction."""
    ratio = f"F_0*cos(epsilon)/({mass}*g)" if mu else f"F_0/({mass}*g)"
    if up:
        law = f"F_0 = {mass}*g*(sin({name}) + {mu}*cos({name}))" if mu else f"F_0 = {mass}*g*sin({name})"
        make = f"{name} = asin({ratio}) - epsilon" if mu else f"{name} = asin({ratio})"
        inner, other = f"{name} + epsilon", f"{name} = deg180 - asin({ratio}) - epsilon"
    else:
        law = f"F_0 = {mass}*g*({mu}*cos({name}) - sin({name}))" if mu else f"F_0 = -({mass}*g*sin({name}))"
        make = f"{name} = epsilon - asin({ratio})" if mu else f"{name} = asin(-{ratio})"
        inner, other = f"epsilon - {name}", f"{name} = epsilon - (deg180 - asin({ratio}))"
    return Step(
        law,
        make,
        "Make it one sine, and solve" if mu else "Solve for the angle",
        "sin ε/cos ε takes the place of the coefficient: the two products make one sine."
        if mu
        else f"Only the part of the weight along the slope depends on {symbol(name).text}.",
        "°",
        FSA,
        lines=(f"sin({inner}) = {ratio}",) if mu else (),
        other=other if mu else "",
        dropped=dropped,
        plain="The steeper the slope, the more of the weight pulls along it.",
    )


def tangent(side: Side) -> Step:
    """Nothing but weight and friction: the tangent is the coefficient."""
    return Step(
        f"tan(theta) = {side.of(side.rough[0])}",
        f"theta = atan({side.of(side.rough[0])})",
        "The tangent of the angle is the coefficient",
        "Along the slope mg sin θ = f, across it N = mg cos θ, and f = μN: divided, mg drops out.",
        "°",
        FSA,
        plain="How steep a surface may be before something slips depends on how rough it is, not on how heavy.",
    )


def of_force(side: Side, v: Mapping[str, float]) -> tuple[Step, ...]:
    """The angle of the force with its surface."""
    here = side.here
    mu = side.of(here.acted)
    rubs = here.acted in side.rough
    along = here.force * here.way  # +1: it drives them the way they move
    terms = [(-along * sign, term) for sign, term in (*side.drive, *side.rubs) if "phi" not in term]
    if rubs:
        weight = presses(here, here.acted).split(" + P")[0].split(" - P")[0]
        terms.append((along, f"{mu}*{weight}"))
    if not here.balanced:
        terms.append((along, side.gains))
    known = line(f"F_0 = {joined(terms)}").right.value(sized(v, here.sizes)) if terms else 0.0
    epsilon = atan(v[mu]) if rubs else 0.0
    turn = 1 if (not here.push) == (along > 0) else -1
    share = known * cos(epsilon) / v["P"] if v["P"] else 2.0
    if abs(share) > 1:
        raise Refusal("P", TOO_SMALL if share > 1 else NO_PHI)
    both = sorted((turn * epsilon - acos(share), turn * epsilon + acos(share)))
    fits = [angle for angle in both if -TINY <= angle < pi / 2]
    if not fits:
        raise Refusal("P", NO_PHI)
    law = f"P*cos(phi {'-' if turn > 0 else '+'} epsilon) = F_0*cos(epsilon)" if rubs else "P*cos(phi) = F_0"
    ratio = "F_0*cos(epsilon)/P" if rubs else "F_0/P"
    head = ("epsilon " if turn > 0 else "-epsilon ") if rubs else ""
    makes = [
        f"phi = {head}- acos({ratio})" if rubs else f"phi = -acos({ratio})",
        f"phi = {head}+ acos({ratio})" if rubs else f"phi = acos({ratio})",
    ]
    if turn < 0 and rubs:
        makes[1] = f"phi = acos({ratio}) - epsilon"
    at = both.index(fits[0])
    solve = Step(
        law,
        makes[at],
        "Make it one cosine, and solve" if rubs else "Solve for the angle",
        "sin ε/cos ε takes the place of the coefficient; the two products make one cosine."
        if rubs
        else "Only the part of the force along the surface depends on φ.",
        "°",
        FSA,
        other=makes[1 - at] if rubs else "",
        dropped=PHI_BOTH if len(fits) > 1 else PHI_OUT,
        plain="The steeper a force points away from the surface, the less of it acts along the surface.",
    )
    why = "Sorted: what depends on φ stands on one side, everything else on the other."
    return (*side.before, *((helper(mu),) if rubs else ()), rest(terms or [(1, "0")], why, here.sizes), solve)
