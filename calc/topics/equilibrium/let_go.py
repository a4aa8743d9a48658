"""A charged sphere on a thread, held at an angle and let go: which way it swings, how it starts, what the thread pulls.

The thread keeps it on an arc. Outwards along the arc is positive: F_E cos α − mg sin α = ma₀; along the thread, as long
as it is at rest, T = mg cos α + F_E sin α: Newton's second law, and its components. Which way it goes is decided by
calc.topics.shared.connected, for which a tight thread is a smooth slope. Marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from math import atan, cos, degrees, sin, tan

from calc.model.answers import Direction, Point
from calc.model.directions import ON_ARC
from calc.model.questions import Check, Data, Mistake, Part, Refusal, Values
from calc.model.relations import Relation, Said
from calc.topics.equilibrium.hung import SAGGING
from calc.topics.equilibrium.practised import one_of, si
from calc.topics.equilibrium.relations import THREAD_UNITS, TO_SUPPORT, provable
from calc.topics.equilibrium.shared import FBD_RULES, refuse_uncharged
from calc.topics.equilibrium.thread_figures import thread_draw
from calc.topics.shared.connected import on_thread, outcome
from calc.topics.shared.electrostatics import SECOND
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import Given
from calc.working.solving import Situation
from calc.working.working import measure

NOT_CUT = "The sphere is let go here and the thread stays whole: leave this box empty, or leave out the other one."
NO_CUT = "The sphere is let go here and the thread stays whole. Ask for the acceleration when the thread is cut alone."
NO_ANGLE = (
    "The angle cannot be asked from how it starts: α stands in a sine and in a cosine of one equation. Ask for another"
    " quantity, or for the angle at rest."
)
TOO_FAST = (
    "It cannot start back with more than g sin α, which it would have without any charge: give a smaller acceleration"
    " back, or another angle."
)
NO_WEIGHT = "You let the whole weight act along the arc. Only its component does: use {m*g*sin(alpha)}."
TURNED = (
    "You took the components the wrong way round. Along the arc, at right angles to the thread, use {F_E*cos(alpha)}"
    " for F_E and {m*g*sin(alpha)} for the weight."
)
SUMMED = "You added the two components. F_E pushes outwards and the weight pulls back: subtract {m*g*sin(alpha)}."
AT_REST = (
    "You used the balance of a sphere that hangs at rest. Here the horizontal and vertical forces do not balance; only"
    " those along the thread do: use {m*g*cos(alpha) + F_E*sin(alpha)}."
)
NO_PUSH = "You left F_E out. It has a component along the thread too: add {F_E*sin(alpha)}."
SLOW = 0.5  # m·s⁻²
STILL = 1e-8  # m·s⁻²: a start slower than this is none
PLAIN_ARC = "The thread lets it move only along a circle, so only what acts along the circle speeds it up."
ALONG_ARC = Relation(
    "F_E*cos(alpha) - m*g*sin(alpha) = m*a_0",
    "Use Newton's second law along the arc",
    "Outwards is positive. The thread is at right angles to the arc, so the tension has no component along it.",
    {"m": "kg", "F_E": "N", "a_0": "m·s⁻²"},
    PLAIN_ARC,
    quotes=(SECOND.name,),
    mistakes=(
        Mistake("not-resolved", "a_0", "F_E*cos(alpha)/m - g", NO_WEIGHT),
        Mistake("sin-cos", "a_0", "(F_E*sin(alpha) - m*g*cos(alpha))/m", TURNED),
        Mistake("added", "a_0", "(F_E*cos(alpha) + m*g*sin(alpha))/m", SUMMED),
    ),
    said={
        "m": Said("Use Newton's second law along the arc for the mass"),
        "F_E": Said("Use Newton's second law along the arc for the electrostatic force"),
    },
)
ALONG_THREAD = Relation(
    "T = m*g*cos(alpha) + F_E*sin(alpha)",
    "Balance the forces along the thread",
    "It is let go from rest, and nothing moves along the thread: T balances what pulls along it.",
    THREAD_UNITS,
    "The thread pulls as hard as the weight and the push stretch it.",
    directions={"T": TO_SUPPORT},
    mistakes=(
        Mistake("as-at-rest", "T", "m*g/cos(alpha)", AT_REST),
        Mistake("push-forgotten", "T", "m*g*cos(alpha)", NO_PUSH),
    ),
)
RESULTANT = Check(
    "The resultant of F_E and the weight, turned through the angle to the thread",
    "sqrt(F_E^2 + (m*g)^2)*sin(atan(F_E/(m*g)) - alpha) = m*a_0",
    "Only its component at right angles to the thread is left.",
)
SQUARES = Check(
    "The components along the arc and along the thread make up F_E and the weight again",
    "(m*a_0)^2 + T^2 = F_E^2 + (m*g)^2",
)


IN_BALANCE = Check("At this angle it would hang at rest", "m*g*tan(alpha) = F_E")


def proofs(*more: Check) -> Callable[[Values], tuple[Check, ...]]:
    """Second ways to an answer; through the resultant only where it does not point along the thread: digits cancel."""

    def known(values: Values) -> tuple[Check, ...]:
        start = abs(values.get("a_0", 0.0))
        way = (RESULTANT,) if start > SLOW else (IN_BALANCE,) if start < STILL else ()
        return provable(values.keys(), *way, SQUARES, *more)

    return known


START: Given = Quantity(
    "m·s⁻²",
    1e-3,
    1e3,
    typed="m/s^2",
    way=(ON_ARC, "outwards"),
    help="minus: back towards the vertical",
)(
    "a_0",
    "Acceleration at the instant it is let go",
    "Let go there, it starts with an acceleration of {}.",
    ask="The sphere is let go. Calculate its acceleration at that instant.",
)
FROM_NOW = replace(START, box=replace(START.box, optional=True, since=6))
THEN = "At the instant it is let go the tension in the thread is {}."


def enough(typed: Mapping[str, object], *ways: str) -> dict[str, tuple[str, ...]]:
    """For practice: what leads to the start, where the rule of drawing knows it."""
    return {"a_0": ways} if "a_0" in typed else {}


def is_drawn(typed: Mapping[str, object], others: str) -> bool:
    """Whether practice asks for the start: none of the other quantities is left empty."""
    return "a_0" in typed and all(typed[name] for name in others.split())


def aside(rest: str, random: object) -> str:
    """For practice: an angle (°) well inside or far outside that at which it would hang at rest.

    Outside, F_E must be small beside the weight, else the answer hangs on the g of the data sheet.
    """
    leans = tan(si(rest, "°")) * one_of(random, (0.4, 0.55, 3.3, 3.7))
    return f"{degrees(atan(leans)):.0f}°"


def is_let_go(data: Data) -> bool:
    """Whether the sphere is held and let go, not hanging at rest."""
    return data.has("a_0") or "a_0" in data.asked_names


def refuse(data: Data) -> None:
    """What does not belong to a sphere that is let go."""
    refuse_uncharged(data)
    if "a" in data.asked_names:
        raise Refusal(None, NO_CUT)
    if data.has("a"):
        raise Refusal("a", NOT_CUT)
    if data.values.get("T") == 0:
        raise Refusal("T", SAGGING)
    if "alpha" in data.asked_names:
        raise Refusal(None, NO_ANGLE)


def laws(towards: Direction | None) -> tuple[Relation, ...]:
    """Along the arc and along the thread. towards: the direction of F_E, where it is told."""
    if towards is None:
        return ALONG_ARC, ALONG_THREAD
    return tuple(replace(law, directions={**law.directions, "F_E": towards}) for law in (ALONG_ARC, ALONG_THREAD))


def decided(data: Data, v: Values) -> tuple[Point, ...]:
    """Which way it starts to move, with the two components that decide it."""
    out, back = v["F_E"] * cos(v["alpha"]), v["m"] * v["g"] * sin(v["alpha"])
    found = outcome([on_thread(v["m"], v["alpha"], v["F_E"])], g=v["g"])
    a = found.bodies[0].a
    told = [measure(size, "N", data.settings.style).text for size in (out, back)]
    along = f"Along the arc F_E has {told[0]} outwards and the weight {told[1]} back"
    if abs(a) < STILL:
        return (
            Point(f"{along}: they are equal.", 1, ("equal",)),
            Point("The net force is zero: it stays where it is let go.", 1, ("stays",)),
        )
    larger, way = ("F_E", "outwards, away from the vertical") if a > 0 else ("the weight", "back towards the vertical")
    which = f"that of {larger} is {'larger' if told[0] != told[1] else 'a little larger'}"
    return (
        Point(f"{along}: {which}.", 1, (which,)),
        Point(f"It swings {way}.", 1, (way,)),
    )


def let_go(data: Data, bare: Situation, push: int, memo: tuple[Point, ...], openings: tuple[str, ...]) -> Situation:
    """The situation of a sphere that is held and let go, from what holds whatever pushes it.

    push, memo: as in ``beside.one_sphere``. openings: that do not say that it is at rest.
    """
    ways = bare.steps(data)

    def later(_: Data, values: Values) -> tuple[Part, ...]:
        v = {**data.settings.constants(), **data.values, **values}
        if not {"F_E", "alpha", "m"} <= v.keys():
            return ()
        ask = "Which way does the sphere start to move? Give a reason."
        return (Part("decide", "explain", ask, points=decided(data, v)),)

    drawn = (thread_draw(data, ways, push, memo, body="the sphere"),) if push else ()
    return replace(
        bare,
        openings=openings,
        tell={**bare.tell, "T": THEN},
        unfit={"F_E": TOO_FAST, "m": TOO_FAST},
        stated=drawn,
        later=later,
        scene=bare.scene if push else None,
        notes=(FBD_RULES,) if push else (),
    )
