"""The angle of a slope or of a force, asked with the coefficient: with tan ε = μ two terms become one.

Sliding or about to slip: mg(sin θ ± μ cos θ) is mg sin(θ ± ε)/cos ε, P(cos φ ± μ sin φ) is P cos(φ ∓ ε)/cos ε. A pull
that drives and lightens may fit at two angles: those at which N is not below zero hold.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import cos, sin

from calc.model.questions import Data, Part, Values
from calc.model.relations import Relation
from calc.topics.forces.words import PLAIN_A, PLAIN_REST
from calc.topics.shared.motion_laws import SECOND
from calc.topics.shared.one_angle import OTHER_ASK, STEEPER, leaning, named, other_slope
from calc.working.chain import spread
from calc.working.declaring import Mistake
from calc.working.solving import Laws, Situation
from calc.working.working import measure

NO_SLOPE = (
    "No angle fits: on a slope the weight can drive or hold back at most with its whole size. Check the forces, the"
    " coefficient and the acceleration."
)
NO_LEAN = (
    "No angle fits: at every angle from 0° to 90° this force does something else. Check the forces, the coefficient and"
    " the acceleration."
)
SLOPE = named("mu", "those of the weight and of friction")
FORCE = named("mu", "those of the force")
STEEP = "Both parts of the weight have θ in them, and sin θ {0} μ cos θ is sin(θ {0} ε)/cos ε."
DRIVES = "P cos φ {}, and P sin φ {}: cos φ {} μ sin φ is cos(φ {} ε)/cos ε."
AT_LIMIT = Relation(
    "tan(theta) = mu",
    what="At the limit the tangent of the angle is the coefficient",
    why="Along the slope mg sin θ = f, across it N = mg cos θ, and f = μN: divided, mg drops out.",
    units={"theta": "°"},
    plain="How steep a surface may be before something slips depends on how rough it is, not on how heavy.",
    mistakes=(
        Mistake(
            "tan-inverted",
            "theta",
            "atan(1/mu)",
            "You have the tangent upside down. At the limit {sin(theta)} equals {mu*cos(theta)}: use {tan(theta)}.",
        ),
    ),
)


def slope_laws(way: int, *, pulled: bool, push: bool, slides: bool) -> tuple[Relation, ...]:
    """The laws for θ. way: +1 up, −1 down the slope. push: P presses into it."""
    sign, turned = ("+", "-") if way > 0 else ("-", "+")
    mass = "m*" if pulled else ""
    forces = [f"P*cos(phi) {turned if push else sign} mu*P*sin(phi)"] if pulled else []
    speeding = f"{mass}a" if slides else ""
    if way > 0:
        rest = " ".join([*forces, f"- {speeding}" if speeding else ""]).strip()
    else:
        rest = " + ".join([*([speeding] if speeding else []), *forces])
    if not rest:
        return (AT_LIMIT,)
    rest = f"({rest})" if pulled else rest
    turn = Mistake(
        "turned",
        "theta",
        f"asin({rest}*cos(epsilon)/({mass}g)) {sign} epsilon",
        f"You turned {{epsilon}} the wrong way. The sine is that of {{theta {sign} epsilon}}:"
        f" {'add' if turned == '+' else 'subtract'} {{epsilon}} at the end.",
    )
    law = Relation(
        f"{mass}g*sin(theta {sign} epsilon) = {rest}*cos(epsilon)",
        what="Put the forces along and across the slope together, for the angle",
        why=STEEP.format("+" if way > 0 else "−"),
        units={"theta": "°"},
        plain=PLAIN_A if slides else PLAIN_REST,
        quotes=(SECOND.name,) if slides else (),
        mistakes=(turn,),
    )
    return (SLOPE, law)


def second_slope(way: int, lifted: bool, values: Values, data: Data) -> tuple[str, ...]:
    """The other angle that fits, on a very steep way up, told as a warning. lifted: a pull lightens the contact."""
    if way < 0 or not {"theta", "epsilon"} <= values.keys():
        return ()
    other = other_slope(values)
    if other is None:
        return ()
    v = {**data.known, **values}
    if lifted and v["m"] * v["g"] * cos(other) < v["P"] * sin(v["phi"]):
        return ()
    return (STEEPER.format(measure(other, "°", data.settings.style).text),)


type Found = tuple[tuple[Relation, ...], tuple[Part, ...]]  # the laws for φ, the part for a second angle


HELPS = "Pulling a little upwards helps, because it lightens the contact; pulling too steeply wastes the pull."
HOLDS = (
    "Pushing a little into the slope helps to hold it, because it adds to the friction; too steeply wastes the push."
)


def two_angles(rest: str, data: Data, normal: Callable[[float], float], slides: bool, push: bool = False) -> Found:
    """A pull that drives and lightens, or a push that holds back and presses (push). rest: what P(cos φ + μ sin φ) is;
    normal: N at an angle (rad)."""
    found = leaning("P", rest, data.known["mu"], data.known, normal, push)
    does = ("holds it back", "adds to the friction") if push else ("drives it", "lightens the contact")
    words = (
        "Put the forces along and across the surface together, for the angle",
        DRIVES.format(*does, "+", "−"),
        HOLDS if push else HELPS,
        (SECOND.name,) if slides else (),
    )
    step = found.step(*words)
    law = Relation(step.law, step.what, step.why, {"phi": "°"}, step.plain, quotes=step.quotes, by_hand={"phi": step})
    second = Part("other", "calculate", OTHER_ASK, (found.step(*words, name="phi_2"),))
    return (FORCE, law), (second,) if found.other == "also" else ()


def one_angle(rest: str, does: tuple[str, str], slides: bool) -> tuple[Relation, ...]:
    """Where P sin φ works against P cos φ: P cos(φ + ε) is ``rest``·cos ε. does: what each part of P does."""
    return (
        FORCE,
        Relation(
            f"P*cos(phi + epsilon) = {rest}*cos(epsilon)",
            what="Put the forces along and across the surface together, for the angle",
            why=DRIVES.format(*does, "−", "+"),
            units={"phi": "°"},
            plain=PLAIN_A if slides else PLAIN_REST,
            quotes=(SECOND.name,) if slides else (),
        ),
    )


def level_angle(pull: bool, slides: bool, data: Data) -> Found:
    """The laws for φ on the level; () where something else is missing."""
    v, rest = data.known, "(mu*m*g + m*a)" if slides else "mu*m*g"
    if not {"m", "P", "mu", *(("a",) if slides else ())} <= v.keys():
        return (), ()
    if pull:
        return two_angles(rest, data, lambda phi: v["m"] * v["g"] - v["P"] * sin(phi), slides)
    return one_angle(rest, ("drives it", "presses it down"), slides), ()


def slope_angle_of_pull(way: int, push: bool, slides: bool, data: Data) -> Found:
    """The laws for φ on a slope; () where something else is missing."""
    v = data.known
    if not {"m", "P", "mu", "theta", *(("a",) if slides else ())} <= v.keys():
        return (), ()
    sign = "+" if way > 0 else "-"
    rest = f"(m*g*(sin(theta) {sign} mu*cos(theta)){f' {sign} m*a' if slides else ''})"
    if (way > 0) == push:
        does = ("drives it", "presses it down") if push else ("holds it back", "lightens the contact")
        return one_angle(rest, does, slides), ()
    lift = 1 if push else -1
    return two_angles(
        rest, data, lambda phi: v["m"] * v["g"] * cos(v["theta"]) + lift * v["P"] * sin(phi), slides, push
    )


USUAL = {"theta": 0.5, "phi": 0.0}  # rad, where an angle does not follow


def found_angle(name: str, laws: Laws, data: Data) -> float:
    """The angle (rad) given, or that follows, for a diagram that is drawn before it is asked."""
    if data.has(name) or name not in data.asked_names:
        return data.values.get(name, USUAL[name])
    steps = replace(Situation(relations=laws, openings=(), tell={}), units={name: "°"}).steps(data)
    known = spread(dict(data.values), steps, data.settings.constants())
    return known.get(name, USUAL[name])
