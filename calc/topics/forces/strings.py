"""A weight on two strings: three forces in balance at a knot, any size or angle unknown.

T₁ cos α = T₂ cos β and T₁ sin α + T₂ sin β = w; an angle by the closed triangle, T₂² = T₁² + w² − 2T₁w sin α (cosine
rule). Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import degrees, sin

from calc.figures import Figure, Force, tail_to_head
from calc.figures.surfaces import on_two_strings
from calc.model.answers import Point
from calc.model.questions import Check, Data, Part, Refusal, Values
from calc.topics.forces.words import EACH_AXIS_MARKS, lean
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import EQUILIBRIUM
from calc.topics.shared.quantities import Quantity, mass
from calc.working.declaring import Limit, Mistake, Relation, Together, declare

CANNOT = (
    "These cannot balance: each of three forces in balance is smaller than the other two together. Check the sizes."
)
LEVEL = "No tension holds a weight on a perfectly level string: give at least one string an angle above 0°."
BELOW = (
    "These cannot balance on two strings that slope upwards: each of the three forces must be smaller than the other"
    " two together, and no tension so large that a string would slope downwards. Check the sizes."
)
HALF = "You gave each string half of the weight. Only upright strings share it so: use both equations."
SWAPPED = (
    "You have sine and cosine the wrong way round. The angles are with the horizontal: use the sine for what pulls"
    " upwards."
)
COSINES = "You added the horizontal parts. The vertical parts carry {w}: use the sines, {T1*sin(alpha) + T2*sin(beta)}."
ALONE = "You let this string carry the whole weight. The other carries a part of it as well: use both equations."
SIZES = "You added the sizes of the tensions. Only their vertical parts carry the weight: add those."
RIGHT_ANGLE = "You used Pythagoras. The two forces are not at right angles: use the cosine rule."
OTHER_ANGLE = (
    "You took the angle with the horizontal for that with the weight. The cosine of the angle between is the sine of"
    " the angle with the horizontal: use the sine."
)
PLAIN = "Nothing moves, so the pulls to the left and right are worth the same, and so are those up and down."
ACROSS = Relation(
    "T1*cos(alpha) = T2*cos(beta)",
    what="Balance the horizontal forces",
    why="The knot is at rest: the tensions pull sideways equally, one to the left, the other to the right.",
    units={"T1": "N", "T2": "N", "alpha": "°", "beta": "°"},
    plain=PLAIN,
    mistakes=(
        Mistake("sin-cos", "T2", "T1*sin(alpha)/sin(beta)", SWAPPED),
        Mistake("sin-cos", "T1", "T2*sin(beta)/sin(alpha)", SWAPPED),
    ),
)
UPWARDS = Relation(
    "T1*sin(alpha) + T2*sin(beta) = w",
    what="Balance the vertical forces",
    why="The knot is at rest: the vertical parts of both tensions carry the weight.",
    units={"w": "N", "T1": "N", "T2": "N"},
    plain=PLAIN,
    mistakes=(
        Mistake("sizes-added", "w", "T1 + T2", SIZES),
        Mistake("sin-cos", "w", "T1*cos(alpha) + T2*cos(beta)", COSINES),
    ),
)


def pair(find: str, drop: str, mine: str, other: str) -> Together:
    """Both equations, for one tension. mine, other: the angles of the string asked and of the other."""
    slips = (
        Mistake("half", find, "w/2", HALF),
        Mistake("alone", find, f"w/sin({mine})", ALONE),
        Mistake("sin-cos", find, f"w*sin({other})/sin({mine} + {other})", SWAPPED),
    )
    first = replace(ACROSS, mistakes=slips, marks=EACH_AXIS_MARKS)
    return Together(
        first, replace(UPWARDS, mistakes=()), find, drop, "Write one equation across and one upwards", PLAIN
    )


def closed(angle: str, near: str, far: str) -> Relation:
    """The closed triangle, for the angle of the string whose tension is ``near``, or for the other tension."""
    return Relation(
        f"{far}^2 = {near}^2 + w^2 - 2*{near}*w*sin({angle})",
        what="Use the closed triangle of the three forces",
        why=(
            "Head to tail the three arrows close. The side opposite the angle between weight and string is the other"
            " tension: by the cosine rule, with the cosine of 90° less the angle, which is its sine."
        ),
        units={angle: "°", far: "N"},
        plain="Three forces that balance make a triangle, and three sides fix its angles.",
        dropped={far: "A size has no sign: it is dropped."},
        mistakes=(
            Mistake("pythagoras", far, f"sqrt({near}^2 + w^2)", RIGHT_ANGLE),
            Mistake("sin-cos", far, f"sqrt({near}^2 + w^2 - 2*{near}*w*cos({angle}))", OTHER_ANGLE),
        ),
    )


WEIGHT = Relation(
    "w = m*g",
    what="The weight of the load",
    why="The string below the knot pulls with a force as large as the weight.",
    units={"w": "N", "m": "kg"},
    plain="How hard the load pulls downwards.",
    mistakes=(Mistake("mass-for-weight", "w", "m", "You put the mass in for the weight. Multiply it by {g}."),),
)
tilt = replace(lean, help="0: level")
tension = Quantity("N", 1e-3, 1e6, "A string only pulls: give the size of the tension, greater than zero.")
QUANTITIES = (
    mass("m", "Mass of the load", "The load has a mass of {}.", "12 kg; 4 6 8 12; 3,5 7,5 14"),
    tension("w", "Weight of the load", "The load has a weight of {}.", "; 40 60 80; 35 75"),
    tilt(
        "alpha",
        "Angle of the left string",
        "The left string makes {} with the horizontal.",
        "35°; 25 30 35 50; 28 36 55",
        ask="Calculate the angle α of the left string with the horizontal.",
        result="laid out",
    ),
    tilt(
        "beta",
        "Angle of the right string",
        "The right string makes {} with the horizontal.",
        "50°; 50 55 60 65; 48 58 66",
        ask="Calculate the angle β of the right string with the horizontal.",
        result="laid out",
    ),
    tension("T1", "Tension in the left string", "The tension in the left string is {}.", "?; 40 50 60; 45 55 70"),
    tension("T2", "Tension in the right string", "The tension in the right string is {}.", "; 40 50 60; 45 55 70"),
)


def scene(v: Values) -> Figure:
    """The load on its strings."""
    angles = (max(degrees(v.get(name, 0.8)), 0.0) for name in ("alpha", "beta"))
    return on_two_strings(*(min(one, 88.0) for one in angles), load="m" if "m" in v else "")


def triangle(v: Values) -> Figure:
    """The three forces head to tail."""
    alpha, beta = degrees(v["alpha"]), degrees(v["beta"])
    return tail_to_head(
        [Force("w", v["w"], 270.0), Force("T_2", v["T2"], beta), Force("T_1", v["T1"], 180 - alpha)],
        title="The three forces head to tail",
        description=(
            "Three arrows, each with its tail at the head of the one before: w straight down, T2 up to the right,"
            " T1 up to the left. The last head meets the first tail."
        ),
    )


def refuse(data: Data, values: Values) -> None:
    """One string alone that pulls upwards by more than the weight: the other would have to pull downwards."""
    v = values
    for tension_, angle in (("T1", "alpha"), ("T2", "beta")):
        if {tension_, angle, "w"} <= v.keys() and v[tension_] * sin(v[angle]) > v["w"] * (1 + NEAR):
            raise Refusal(tension_ if data.has(tension_) else None, BELOW)


NEAR = 1e-9  # rounding
SINES = Check(
    "The sine rule in the closed triangle",
    "T1*sin(alpha + beta) = w*cos(beta)",
    "The side T₁ lies opposite the angle 90° less β, the side w opposite the sum of α and β, or what it lacks of 180°.",
)


def later(data: Data, values: Values) -> tuple[Part, ...]:
    """The other tension, where it is not found on the way; then the free-body diagram and the triangle."""
    if not {"alpha", "beta", "w"} <= values.keys() or not {"T1", "T2"} & values.keys():
        return ()
    other = next((name for name in ("T1", "T2") if name not in values), "")
    ask = f"Calculate the tension in the {'left' if other == 'T1' else 'right'} string."
    rows = (
        ("w", "w", "the pull of the load, straight down", 270.0),
        ("T_1", "T1", "the tension of the left string, along it, away from the knot", 180 - degrees(values["alpha"])),
        ("T_2", "T2", "the tension of the right string, along it, away from the knot", degrees(values["beta"])),
    )
    return (
        *((Part("other", "calculate", ask, (ACROSS.step(other),)),) if other else ()),
        free_body("draw", "the knot", rows, (), data),
        Part(
            "triangle",
            "draw",
            "Draw the triangle of the three forces, not to scale.",
            points=(
                Point("The three arrows stand head to tail, each with its label.", 1, ("head to tail",)),
                Point("The triangle closes: the last head meets the first tail.", 1, ("closes",)),
            ),
            figure=triangle,
        ),
    )


STRINGS = declare(
    "strings",
    "A weight on two strings",
    (
        WEIGHT,
        UPWARDS,
        ACROSS,
        pair("T1", "T2", "alpha", "beta"),
        pair("T2", "T1", "beta", "alpha"),
        closed("alpha", "T1", "T2"),
        closed("beta", "T2", "T1"),
    ),
    openings=(
        (
            "A lamp hangs at rest from a knot where two light strings meet; one runs up to the left, the other up to"
            " the right."
        ),
        (
            "Two light strings are tied to a ring, one up to the left and one up to the right, and a basket hangs from"
            " the ring at rest."
        ),
        (
            "A sign hangs still from a knot. One light string runs from the knot up to a wall on the left, another up"
            " to a wall on the right."
        ),
    ),
    given=QUANTITIES,
    limits=(
        Limit("alpha + beta", LEVEL, at="beta"),
        Limit("T1 + T2 - w", CANNOT),
        Limit("T1 + w - T2", CANNOT),
        Limit("T2 + w - T1", CANNOT),
    ),
    unfit={"alpha": BELOW, "beta": BELOW},
    refuse=refuse,
    later=later,
    proofs=lambda v: (SINES,) if {"T1", "alpha", "beta", "w"} <= v.keys() else (),
    scene=scene,
    constants=("g",),
    states=(EQUILIBRIUM,),
    notes=(FBD_RULES,),
    practised={
        "T1": "m alpha beta",
        "T2": "m alpha beta",
        "w": "alpha beta T1",
        "m": "alpha beta T1",
        "alpha": "w T1 T2",
        "beta": "w T1 T2",
    },
    asks="T1",
    since=4,
)
