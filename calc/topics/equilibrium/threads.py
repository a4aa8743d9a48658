"""Two charged spheres of equal mass on equal threads: from one support, or from two supports side by side.

α is the angle of a thread with the vertical, half the angle between the threads of one support.
T cos α = mg and T sin α = F_E, so tan α = F_E/(mg); the spheres are r = 2L sin α apart on one
support, r = s ± 2L sin α on two supports s apart (+ repelling, − attracting).
With the charges given, α is the root of tan α · r² = kQ₁Q₂/(mg).
"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from functools import lru_cache
from math import asin, cos, degrees, pi, sin, tan

from calc.figures import Figure
from calc.figures.charges import sign_of
from calc.figures.scenes import hanging_pair
from calc.model.answers import Point
from calc.model.questions import FSA, NO_MARKS, SA, A, Check, Data, Mistake, Part, Refusal, Root, Step, Values
from calc.model.relations import Relation, Said
from calc.topics.equilibrium.relations import (
    AWAY,
    COUNTED,
    WOULD_CUT,
    alone,
    coulomb,
    counting,
    cut,
    provable,
    thread_laws,
)
from calc.topics.equilibrium.shared import SAY_ACTING, arrow_points, kind, signs
from calc.topics.equilibrium.thread_figures import thread_draw
from calc.topics.shared.electrostatics import kind_of_force
from calc.working.roots import scan

METHOD = "No rearranging frees α: try angles, halving the interval in which the two sides cross until they agree."
HALF = (
    "You used the angle between the two threads. {alpha} is the angle of one thread with the vertical: use half of it."
)
TOUCH = (
    "The spheres would touch or overlap. Use a larger distance between the supports, shorter threads or a smaller"
    " angle."
)
SWING = "On one support spheres that attract swing together and touch. Choose two supports, or charges that repel."
NO_ANGLE = (
    "No equilibrium with the spheres apart: the attraction wins at every angle and they swing together. "
    "Move the supports further apart, or use smaller charges."
)
SHORTCUT_ONE = "The small-angle shortcut is for one support. Choose the exact method."
SHORTCUT_FAR = "The small-angle shortcut gives no angle here: sin α would be larger than 1. Choose the exact method."


BESIDE_ALPHA = "The shift is opposite α, the thread is the longest side."
TO_THE_SIDE = "Find how far a sphere hangs to the side"
HALVED = Relation(
    "alpha = beta/2",
    "Halve the angle between the threads",
    "The vertical through the support halves the angle, because both masses are equal.",
    {"alpha": "°"},
    marks=NO_MARKS,
    mistakes=(Mistake("whole-angle", "alpha", "beta", HALF, "the whole angle stands in for its half"),),
)
DOUBLED = Relation(
    "beta = 2*alpha", "Double for the angle between the threads", "Both threads lean by α.", {"beta": "°"}, marks=A
)
SHIFT = Relation(
    "sin(alpha) = x/L",
    "Find the angle from the triangle",
    BESIDE_ALPHA,
    {"x": "m", "alpha": "°", "L": "m"},
    marks=SA,
    mistakes=(
        Mistake(
            "sin-cos",
            "x",
            "L*cos(alpha)",
            "You used the cosine. The shift {x} lies opposite {alpha}, so use the sine: {L*sin(alpha)}.",
        ),
        Mistake(
            "sin-cos",
            "alpha",
            "acos(x/L)",
            "You used the inverse cosine. The shift {x} lies opposite {alpha}: use {sin(alpha)} = {x/L}.",
        ),
    ),
    said={
        "x": Said(
            TO_THE_SIDE,
            "Each sphere hangs a distance x = L sin α to the side of its support.",
            marks=NO_MARKS,
            plain="Look at the triangle of thread, vertical and sideways shift.",
        ),
        "L": Said("Find the length of a thread from the triangle", BESIDE_ALPHA),
    },
)
ONE_SUPPORT = Relation(
    "r = 2*x",
    "Find the distance between the spheres",
    "The support is above the middle: two equal shifts.",
    {"r": "m", "x": "m"},
    marks=SA,
    mistakes=(
        Mistake(
            "half-gap",
            "r",
            "x",
            "You stopped at the shift {x} of one sphere. Both hang to the side, so double it.",
            "the answer is half the right one",
        ),
        Mistake(
            "half-gap",
            "x",
            "r",
            "You used the whole distance {r}. Only half of it belongs to the triangle of one thread: halve it.",
        ),
    ),
    said={"x": Said("Halve the distance between the spheres", "The support is above the middle.", marks=NO_MARKS)},
)


LEAN_TURNED = (
    "You let the threads lean the other way. Repelling spheres lean outwards, attracting ones inwards: %s the two"
    " shifts."
)


def two_supports(plus: str, minus: str, lean: str) -> Relation:
    """The distance between spheres that lean ``lean`` from two supports."""
    law = Relation(
        f"r = s {plus} 2*x",
        "Find the distance between the spheres",
        f"Both threads lean {lean}.",
        {"r": "m", "x": "m", "s": "m"},
        marks=SA,
        mistakes=(
            Mistake(
                "one-shift",
                "r",
                f"s {plus} x",
                "You counted one shift only. Each of the two spheres hangs to the side by {x}: count it twice.",
            ),
            Mistake("wrong-lean", "r", f"s {minus} 2*x", LEAN_TURNED % ("add" if plus == "+" else "subtract")),
            Mistake(
                "not-halved",
                "x",
                "r - s" if plus == "+" else "s - r",
                "You gave one thread the whole difference between {r} and {s}. Both share it equally: halve it.",
            ),
        ),
    )
    return replace(
        law,
        said={
            "x": Said(TO_THE_SIDE, "The difference between r and s is shared by both sides."),
            "s": Said("Find the distance between the supports", "Take both shifts off the gap again."),
        },
    )


GAPS = {
    (False, 1): ONE_SUPPORT,
    (True, 1): two_supports("+", "-", "outwards, so the gap is s and two shifts"),
    (True, -1): two_supports("-", "+", "inwards, so the gap is s less two shifts"),
}


@dataclass(frozen=True)
class Pair:
    """One set-up. repel: +1, attracting −1. two: two supports. shortcut: sin α taken for tan α."""

    repel: int
    two: bool
    equal: bool
    shortcut: bool = False
    sign_1: int = 0
    sign_2: int = 0

    @property
    def charges(self) -> str:
        return "Q1^2" if self.equal else "Q1*Q2"

    @property
    def sizes(self) -> tuple[str, ...]:
        return ("Q1",) if self.equal else ("Q1", "Q2")

    @property
    def gap(self) -> str:
        """The distance of the spheres, as an expression."""
        return f"(s {'+' if self.repel > 0 else '-'} 2*L*sin(alpha))" if self.two else "(2*L*sin(alpha))"

    # --- the laws that hold

    def laws(self) -> tuple[Relation, ...]:
        """Every law of this set-up, but for the search for an angle."""
        return _laws(self)

    def cube(self) -> Relation:
        """Coulomb's law and the horizontal balance put together, for the angle."""
        return alone(
            Step(
                f"T*sin(alpha)^3 = k*{self.charges}/(4*L^2)",
                f"alpha = asin((k*{self.charges}/(4*L^2*T))^(1/3))",
                "Put Coulomb's law into the horizontal balance",
                "T sin α = F_E with r = 2L sin α: three factors of sin α, a cube root.",
                "°",
                FSA,
                sizes=self.sizes,
            )
        )

    @property
    def bare(self) -> set[str]:
        """What is enough to search for the angle."""
        return {"m", "L", *self.sizes} | ({"s"} if self.two else set())

    @property
    def cubed(self) -> str:
        """What stands for sin³ α once the shortcut has taken sin α for tan α."""
        return f"k*{self.charges}/(4*L^2*m*g)"

    def shortens(self, steps: Iterable[Step]) -> bool:
        """Whether an answer goes by the shortcut: with other data every step may be exact."""
        return any(step.law == f"sin(alpha)^3 = {self.cubed}" for step in steps)

    def small_angle(self, known: Values, k: float, g: float) -> Step:
        """α by the shortcut: sin α taken for tan α."""
        if k * self.product(known) / (4 * known["L"] ** 2 * known["m"] * g) >= 1:
            raise Refusal("method", SHORTCUT_FAR)
        return Step(
            f"sin(alpha)^3 = {self.cubed}",
            f"alpha = asin(({self.cubed})^(1/3))",
            "Use the small-angle shortcut: take sin α for tan α",
            "Then tan α · sin² α becomes sin³ α, which can be rearranged. It is not exact.",
            "°",
            FSA,
            sizes=self.sizes,
        )

    def product(self, known: Values) -> float:
        return abs(known["Q1"] * known["Q1" if self.equal else "Q2"])

    def roots(self, known: Values, k: float, g: float) -> list[Step]:
        """α from the charges: no formula frees it. All angles at which the spheres can hang apart, smallest first."""
        equation = (
            f"tan(alpha)*{self.gap}^2 = k*{self.charges}/(m*g)"
            if self.two
            else f"tan(alpha)*sin(alpha)^2 = k*{self.charges}/(4*L^2*m*g)"
        )
        why = (
            f"F_E = mg tan α and F_E = k{'Q₁²' if self.equal else 'Q₁Q₂'}/r² with r ="
            f" {'2L sin α' if not self.two else 's ' + ('+' if self.repel > 0 else '−') + ' 2L sin α'}. Put together,"
            " only α is unknown."
        )
        found = f"alpha = atan(k*{self.charges}/(m*g*{self.gap}^2))"
        steps = []
        for i, (low, high) in enumerate(self.brackets(known, k * self.product(known) / (known["m"] * g))):
            name = "alpha" if i == 0 else f"alpha_{i + 1}"
            law = equation.replace("alpha", name)
            steps.append(
                Step(
                    law,
                    found.replace("alpha", name),
                    "Solve for the angle step by step" if i == 0 else "Find the next angle that fits as well",
                    why,
                    "°",
                    FSA if i == 0 else A,
                    sizes=self.sizes,
                    root=Root(law, low, high, METHOD),
                    plain="Guess an angle, see which side is too large, guess between; again and again.",
                )
            )
        return steps

    def brackets(self, known: Values, c: float) -> list[tuple[float, float]]:
        """Intervals of α with exactly one root each of tan α · r² = c (c = kQ₁Q₂/(mg), in m²)."""
        top = pi / 2 - 1e-9
        if self.repel > 0:
            return [(0.0, top)]
        length, s = known["L"], known["s"]
        limit = asin(s / (2 * length)) if s < 2 * length else top

        def gap(alpha: float) -> float:
            return tan(alpha) * (s - 2 * length * sin(alpha)) ** 2 - c

        def slope(alpha: float) -> float:  # sign of the derivative of tan α · r²
            return s - 2 * length * sin(alpha) - 4 * length * sin(alpha) * cos(alpha) ** 2

        ends = [0.0, *scan(slope, 0.0, limit * (1 - 1e-12)), limit]
        return [(a, b) for a, b in itertools.pairwise(ends) if (gap(a) > 0) != (gap(b) > 0)]

    # --- words and drawings

    def arrows(self) -> tuple[Point, ...]:
        """The memo of the free-body diagram of the right-hand sphere."""
        push = "away from" if self.repel > 0 else "towards"
        return arrow_points(
            ("F_g", "the weight, straight down"),
            ("T", "the tension, along the thread towards the support"),
            ("F_E", f"the electrostatic force, horizontally, {push} the other sphere"),
        )

    def after(self) -> tuple[Point, ...]:
        """What becomes of a once the cut sphere moves."""
        run, gap, force, net, end = (
            ("away from", "larger", "smaller", "shrink", " towards g, straight down")
            if self.repel > 0
            else ("towards", "smaller", "larger", "grow", "")
        )
        return (
            Point(
                f"The sphere moves {run} the other one: r becomes {gap}, so F_E becomes {force}.",
                1,
                (f"F_E becomes {force}",),
            ),
            Point(f"The weight stays, so the net force and the acceleration {net}{end}.", 1, (net,)),
        )


@lru_cache(maxsize=32)
def _laws(pair: Pair) -> tuple[Relation, ...]:
    """Made once for a set-up, with the steps they allow: every answer asks for them."""
    force = kind_of_force(pair.repel)
    return (
        *(HALVED, SHIFT, GAPS[pair.two, pair.repel], DOUBLED),
        *(*thread_laws(force), WOULD_CUT),
        coulomb(force, pair.sign_1, pair.sign_2, pair.equal),
        counting(pair.sign_1),
        *cut(AWAY),
        *(() if pair.two else (pair.cube(),)),
    )


def pair_of(data: Data) -> Pair:
    """The set-up the data describe; refuses attraction on one support."""
    two = data.choices["supports"] == "two"
    acting = kind(data) or (0 if two else 1)
    if two and not acting and data.has("r") and data.has("s"):
        acting = 1 if data.values["r"] > data.values["s"] else -1
    if two and not acting:
        raise Refusal("acting", SAY_ACTING)
    if acting < 0 and not two:
        raise Refusal("supports", SWING)
    shortcut = data.choices.get("method") == "small"
    if shortcut and two:
        raise Refusal("method", SHORTCUT_ONE)
    return Pair(acting, two, data.choices["equal"] == "equal", shortcut, *signs(data, acting))


def judge_pair(pair: Pair, data: Data) -> Callable[[str, float | None], None]:
    """Refuses what follows from the data and cannot be, with the reason."""

    def see(name: str, value: float | None) -> None:
        if name == "r" and value is not None and value <= 0:
            raise Refusal("s" if data.has("s") else None, TOUCH)
        if name == "x" and value is not None and value <= 0:
            lean = "further apart" if pair.repel > 0 else "closer together"
            raise Refusal(
                "r",
                f"Spheres that {'repel' if pair.repel > 0 else 'attract'} hang {lean} than their supports. Check r and"
                " s, or whether they attract.",
            )
        if name == "s" and value is not None and value <= 0:
            raise Refusal(None, "The supports would have no distance between them. Check the angle and the lengths.")
        if name == "alpha" and (value is None or not 0 < value < pi / 2):
            raise Refusal(None, bad_angle(data))

    return see


def bad_angle(data: Data) -> str:
    """Why no thread hangs at the angle these data would need."""
    if data.has("T") and data.has("m"):
        return (
            "The tension must be larger than the weight: a slanting thread also pulls sideways. Change T or the mass."
        )
    if data.has("L"):
        return "The thread is too short for this distance. Use a longer thread or a smaller distance."
    return "No thread hangs at such an angle: α must be more than 0° and less than 90°. Check the numbers."


def pair_figure(pair: Pair, alpha: float) -> Figure:
    """The hanging pair; the drawn angle stays within what can be seen."""
    return hanging_pair(
        min(max(degrees(alpha), 6.0), 70.0),
        signs=(sign_of(pair.sign_1), sign_of(pair.sign_2)),
        two_supports=pair.two,
        attracting=pair.repel < 0,
        shows=(("Q1",), (pair.sizes[-1],)),
        supports_label="s" if pair.two else "",
    )


def pair_draw(
    pair: Pair, data: Data, ways: list[Step], key: str = "draw", cut: bool = False, body: str = "the right-hand sphere"
) -> Part:
    """The part that asks for the free-body diagram, before the cut or just after it."""
    title = "Free-body diagram of the right-hand sphere"
    return thread_draw(data, ways, pair.repel, pair.arrows(), body=body, key=key, cut=cut, title=title)


def pair_checks(pair: Pair, names: set[str], steps: tuple[Step, ...]) -> tuple[Check, ...]:
    """Other routes to the same values, as far as their quantities are among ``names``."""
    if pair.shortens(steps):
        return ()
    length = pair.gap if pair.two else "(L*sin(alpha)*2)"
    whole = Check(
        "The whole way back: Coulomb's law with these charges must give the force that the angle needs",
        f"k*{pair.charges}/{length}^2 = m*g*tan(alpha)",
        sizes=pair.sizes,
        tolerance=1e-6,
    )
    law = f"k*{pair.charges}/r^2"
    if pair.bare | {"alpha"} <= names:
        last: tuple[Check, ...] = ()
    elif all(step.make != f"F_E = {law}" for step in steps):
        last = (Check("Put the charges and the distance back into Coulomb's law", f"{law} = F_E", sizes=pair.sizes),)
    else:
        last = (Check("Put the angle back", "m*g*tan(alpha) = F_E"),)
    return provable(names, *ROUTES, whole, *last)


ROUTES = (
    Check("The three forces make a right-angled triangle", "sqrt(F_E^2 + (m*g)^2) = T"),
    Check(
        "Take moments about the support",
        "F_E*cos(alpha)*L = m*g*sin(alpha)*L",
        "F_E turns the thread one way with the arm L cos α, the weight the other way with the arm L sin α.",
    ),
    Check("Work the acceleration from g and the angle", "a = g/cos(alpha)", "T = mg/cos α, divided by m."),
    COUNTED,
)


def exact_part(pair: Pair) -> Part:
    """How far the shortcut is out: the exact root beside it."""
    exact = replace(pair, shortcut=False)
    equation = f"tan(alpha_0)*sin(alpha_0)^2 = k*{pair.charges}/(4*L^2*m*g)"
    steps = (
        Step(
            equation,
            f"alpha_0 = atan(k*{pair.charges}/(m*g*(2*L*sin(alpha_0))^2))",
            "Solve for the exact angle step by step",
            "F_E = mg tan α and r = 2L sin α without any shortcut.",
            "°",
            A,
            sizes=exact.sizes,
            root=Root(equation, 0.0, pi / 2 - 1e-9, METHOD),
        ),
        Step(
            "p = 100*(alpha - alpha_0)/alpha_0",
            "p = 100*(alpha - alpha_0)/alpha_0",
            "Compare the two angles",
            "Per cent of the exact angle; plus means that the shortcut is too large.",
            "%",
            SA,
        ),
    )
    return Part("error", "calculate", "By how many per cent is the angle of the shortcut out?", steps)
