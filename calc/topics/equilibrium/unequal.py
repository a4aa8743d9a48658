"""Two charged spheres of their own masses on threads from one hook, at the same level.

The forces are equal and opposite, so m₁ tan α₁ = m₂ tan α₂ = F_E/g: the lighter sphere hangs further to the
side. h below the hook the spheres are r = h (tan α₁ + tan α₂) apart and L cos α = h: components of
data-sheet equations, and triangles. Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from math import pi

from calc.model.answers import Point
from calc.model.questions import SA, Check, Data, Mistake, Part, Refusal, Values
from calc.model.relations import Relation
from calc.topics.equilibrium.hung import PARTS, SAGGING
from calc.topics.equilibrium.practised import following, like_charges, practised
from calc.topics.equilibrium.relations import coulomb, steps_of, thread_laws, where_known
from calc.topics.equilibrium.shared import (
    DEPTH,
    FBD_RULES,
    GAP,
    HUNG_MASS,
    LEAN,
    LENGTH,
    LENGTHS,
    PULL,
    PUSH,
    arrow_points,
    kind,
    refuse_uncharged,
    signs,
)
from calc.topics.equilibrium.thread_figures import thread_draw, unequal_scene
from calc.topics.equilibrium.threads import SWING
from calc.topics.shared.electrostatics import COULOMB, EQUILIBRIUM, kind_of_force
from calc.topics.shared.quantities import charge
from calc.working.chain import spread
from calc.working.declaring import boxes, told
from calc.working.solving import Situation, question

FIRST, SECOND = ({"m": f"m{i}", "alpha": f"alpha_{i}", "T": f"T{i}", "F_E": "F_E"} for i in (1, 2))
ANGLES = (FIRST["alpha"], SECOND["alpha"])
NO_THREAD = "No thread hangs at such an angle: each angle must be more than 0° and less than 90°. Check the numbers."
SAME_FORCE = "The force is the same on both spheres, so {m1*tan(alpha_1)} = {m2*tan(alpha_2)}."
NEXT_TO = "The depth {h} lies next to {alpha_%s}, so use the cosine:"
OTHER_BODY = "Each sphere has its own mass and its own angle: keep them together."
BOTH = Relation(
    "m1*tan(alpha_1) = m2*tan(alpha_2)",
    "Let the force be the same on both spheres",
    "The spheres exert equal and opposite forces on each other, and F_E = mg tan α for each; g cancels.",
    {"m1": "kg", "m2": "kg", "alpha_1": "°", "alpha_2": "°"},
    "Each pushes the other just as hard as it is pushed. The lighter one gives way more.",
    mistakes=(
        *(
            Mistake(
                "upside-down",
                f"alpha_{i}",
                f"atan(m{i}*tan(alpha_{j})/m{j})",
                f"You have the masses the other way round. {SAME_FORCE} Divide by {{m{i}}}.",
            )
            for i, j in ((1, 2), (2, 1))
        ),
        *(
            Mistake(
                "angles-in-proportion",
                f"alpha_{i}",
                f"m{j}*alpha_{j}/m{i}",
                (
                    f"You put the angles in proportion. Their tangents are: take the tangent of {{alpha_{j}}} first,"
                    " and the inverse tangent last."
                ),
            )
            for i, j in ((1, 2), (2, 1))
        ),
        *(
            Mistake(
                "upside-down",
                f"m{i}",
                f"m{j}*tan(alpha_{i})/tan(alpha_{j})",
                f"You have the tangents the other way round. {SAME_FORCE} Divide by {{tan(alpha_{i})}}.",
            )
            for i, j in ((1, 2), (2, 1))
        ),
    ),
)
APART = Relation(
    "r = h*(tan(alpha_1) + tan(alpha_2))",
    "Add the two shifts to the side",
    "Each sphere hangs h tan α to the side of the vertical through the hook.",
    {"r": "m", "h": "m"},
    "Two triangles stand side by side with the same height.",
    mistakes=(
        Mistake(
            "one-shift",
            "r",
            "h*tan(alpha_1)",
            "You counted one shift only. The other sphere hangs to its own side: add {h*tan(alpha_2)}.",
        ),
    ),
)


def threads_of(i: int) -> Relation:
    """The triangle of thread i: its length, the depth h and the angle."""
    return Relation(
        f"L{i}*cos(alpha_{i}) = h",
        "Use the triangle of thread and vertical",
        "h is beside the angle, the thread is the longest side.",
        {f"L{i}": "m", "h": "m", f"alpha_{i}": "°"},
        marks=SA,
        mistakes=(
            Mistake("sin-cos", f"L{i}", f"h/sin(alpha_{i})", f"You used the sine. {NEXT_TO % i} {{h/cos(alpha_{i})}}."),
            Mistake(
                "sin-cos", "h", f"L{i}*sin(alpha_{i})", f"You used the sine. {NEXT_TO % i} {{L{i}*cos(alpha_{i})}}."
            ),
        ),
    )


@lru_cache(maxsize=8)
def _laws(sign_1: int, sign_2: int) -> tuple[Relation, ...]:
    return every_law(coulomb(kind_of_force(1), sign_1, sign_2))


def laws(data: Data) -> tuple[Relation, ...]:
    """What holds where the charges have the signs that the data tell."""
    return _laws(*signs(data, 1))


@lru_cache(maxsize=1)
def _balance() -> tuple[Relation, ...]:
    """The balance of both spheres, with the steps it allows: every answer asks for them."""
    return tuple(law.renamed(**names) for names in (FIRST, SECOND) for law in thread_laws(kind_of_force(1)))


@lru_cache(maxsize=1)
def _triangles() -> tuple[Relation, ...]:
    return threads_of(1), threads_of(2)


def every_law(force: Relation) -> tuple[Relation, ...]:
    """The balance of both spheres, the force that they share, and the triangles."""
    return (BOTH, *_balance(), force, APART, *_triangles())


HOOK = (
    (
        "Two small spheres of different make hang from one hook on light insulating threads; charged alike, they hang"
        " apart, both at the same level."
    ),
    (
        "From one hook in the ceiling hang two charged spheres. They repel each other, and the lengths of the light"
        " threads are such that the spheres are level with each other."
    ),
    (
        "Two charged spheres are tied to one hook with thin nylon threads. They hang at rest on both sides of it, their"
        " centres on one level line."
    ),
)


def unequal(data: Data) -> Situation:
    """What holds for two spheres of their own masses at one level."""
    refuse_uncharged(data)
    if kind(data) < 0:
        raise Refusal("Q2", SWING)
    for name in ("T1", "T2"):
        if data.values.get(name) == 0:
            raise Refusal(name, SAGGING)
    one, two = signs(data, 1)
    ways = steps_of(*laws(data))

    def drawn() -> Part:
        rows = arrow_points(
            ("F_g", "the weight, straight down"),
            ("T_2", "the tension, along its thread towards the hook"),
            ("F_E", "the electrostatic force, horizontally, away from the first sphere"),
        )
        return thread_draw(
            data,
            ways,
            1,
            rows,
            body="the second sphere, on the right",
            names=SECOND,
            title="Free-body diagram of the second sphere",
        )

    def lean(_: Data, values: Values) -> tuple[Part, ...]:
        constants = data.settings.constants()
        known = spread({n: x for n, x in values.items() if n not in constants}, ways, constants)
        return (
            Part(
                "which",
                "explain",
                "Explain which of the two spheres hangs at the larger angle to the vertical.",
                points=which(known),
            ),
        )

    return replace(
        told(GIVEN),
        relations=laws(data),
        openings=HOOK,
        stated=(drawn(),),
        later=lean,
        judge=leaning(data),
        scene=lambda v: unequal_scene(v.get("alpha_1", 0.5), v.get("alpha_2", 0.3), one, two),
        proofs=where_known(
            Check(
                "The force on the first sphere must be as large as that on the second",
                "m1*g*tan(alpha_1) = m2*g*tan(alpha_2)",
            ),
            Check(
                "The whole way back: Coulomb's law with these charges must give the force that the angle needs",
                "k*Q1*Q2/r^2 = m1*g*tan(alpha_1)",
                sizes=("Q1", "Q2"),
            ),
            *(
                Check("The three forces on it make a right-angled triangle", f"sqrt(F_E^2 + (m{i}*g)^2) = T{i}")
                for i in (1, 2)
            ),
        ),
        notes=(FBD_RULES,),
    )


def which(known: Values) -> tuple[Point, ...]:
    """Two marks: the forces are equal, so the mass decides; the angles or masses say which is which."""
    equal = Point(
        "The spheres exert equal and opposite forces on each other, even when their charges differ.",
        1,
        ("equal and opposite forces",),
    )
    lighter = lighter_of(known)
    rule = "tan α = F_E/(mg): with the same F_E"
    if lighter is None:
        words, key = f"{rule} the lighter sphere hangs at the larger angle.", "lighter"
    elif lighter == 0:
        words, key = f"{rule} and equal masses both hang at the same angle.", "same angle"
    else:
        name = ("first", "second")[lighter - 1]
        words, key = f"{rule} the lighter sphere, here the {name} one, hangs at the larger angle.", f"the {name}"
    return (equal, Point(words, 1, (key,)))


def lighter_of(known: Values) -> int | None:
    """1 or 2 for the lighter sphere, 0 for equal masses, None where nothing tells."""
    for one, two, turned in (("m1", "m2", 1), ("alpha_1", "alpha_2", -1)):
        if one in known and two in known:
            gap = (known[one] - known[two]) * turned
            return 0 if abs(gap) < 1e-9 * abs(known[one]) else 1 if gap < 0 else 2
    return None


def leaning(data: Data) -> Callable[[str, float | None], None]:
    """Refuses what follows from the data and cannot hang."""

    def see(name: str, value: float | None) -> None:
        if name in ANGLES and (value is None or not 0 < value < pi / 2):
            raise Refusal(None, NO_THREAD)

    return see


def everything(base: dict[str, float]) -> dict[str, float]:
    """Every quantity from the masses, the first angle, the depth and one charge (SI, radians)."""
    return like_charges(following(base, *every_law(coulomb(None))))


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Just enough data for the unknown."""
    return dict(
        practised(
            typed,
            random,
            level,
            GIVEN,
            "m1 m2 alpha_1 h Q2",
            everything,
            {
                "alpha_2": ("m1 m2 alpha_1", "m2 F_E", "m2 T2"),
                "alpha_1": ("m1 m2 alpha_2", "m1 T1"),
                "m1": ("m2 alpha_1 alpha_2", "F_E alpha_1"),
                "m2": ("m1 alpha_1 alpha_2", "T2 alpha_2"),
                "Q1": ("m1 m2 alpha_1 h Q2", "m1 alpha_1 r Q2", "m2 alpha_2 r Q2"),
                "Q2": ("m1 m2 alpha_1 h Q1", "m2 alpha_2 r Q1"),
                "r": ("m1 alpha_1 Q1 Q2", "h alpha_1 alpha_2"),
                "F_E": ("m1 alpha_1", "m2 alpha_2"),
                "T1": ("m1 alpha_1", "m2 alpha_1 alpha_2"),
                "T2": ("m2 alpha_2", "m1 alpha_1 alpha_2"),
                "h": ("r alpha_1 alpha_2", "L1 alpha_1"),
                "L1": ("r alpha_1 alpha_2", "L2 alpha_1 alpha_2"),
                "L2": ("L1 alpha_1 alpha_2", "m1 m2 alpha_1 L1"),
            },
        )
    )


GIVEN = (
    HUNG_MASS(
        "m1", "Mass of the first sphere", "The first sphere has a mass of {}.", "2 g; 0,8 1 1,2 1,5 2; 0,9 1,4 1,8"
    ),
    HUNG_MASS(
        "m2", "Mass of the second sphere", "The second sphere has a mass of {}.", "1,2 g; 0,5 0,6 2,5 3 4; 0,55 2,4 3,2"
    ),
    LEAN(
        "alpha_1",
        "Angle of the first thread with the vertical",
        "The thread of the first makes an angle of {} with the vertical.",
        "18°; 15 18 20 22 25; 16,5 23,5",
    ),
    LEAN(
        "alpha_2",
        "Angle of the second thread with the vertical",
        "The thread of the second makes an angle of {} with the vertical.",
        "?; 20 30 °",
    ),
    charge("Q1", "Charge on the first sphere", "The first carries {}.", "?; 60 80 nC"),
    charge("Q2", "Charge on the second sphere", "The second carries {}.", "+60 nC; 60 80 90 -70 -85; 64 -78"),
    GAP("r", "Distance between the spheres", "The distance between the centres is {}.", "?; 8 10 cm"),
    PUSH(
        "F_E",
        "Electrostatic force (size)",
        "The electrostatic force on each is {}.",
        "?; 3 5 mN",
        ask="Calculate the electrostatic force on each sphere.",
    ),
    PULL("T1", "Tension in the first thread", "The tension in the first thread is {}.", "?; 12 15 mN"),
    PULL("T2", "Tension in the second thread", "The tension in the second thread is {}.", "?; 12 15 mN"),
    DEPTH(
        "h",
        "Depth of the spheres below the hook",
        "They hang {} below the hook.",
        "12 cm; 6 8 10 12; 7,5 9,5 11,5",
        unit="m",
        ask="Calculate how far below the hook the spheres hang.",
    ),
    LENGTH("L1", "Length of the first thread", "The first thread is {} long.", "?; 20 25 cm"),
    LENGTH("L2", "Length of the second thread", "The second thread is {} long.", "?; 20 25 cm"),
)
UNEQUAL = question(
    "unequal-threads",
    "Two unequal spheres on threads",
    unequal,
    **boxes(*GIVEN, PARTS, LENGTHS),
    asks="Q1",
    unknowns=("alpha_2", "alpha_1", "m1", "m2", "F_E", "T1", "T2", "Q1", "Q2", "r", "h", "L1", "L2"),
    constants=("k", "g"),
    laws=(EQUILIBRIUM.name, COULOMB.name),
    since=2,
    adjust=practise,
)
