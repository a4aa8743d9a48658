"""The angle at which a body begins to slip: tan θ = μs, from mg sin θ = f, N = mg cos θ and f = μsN.

Marks: common practice, no source.
"""

from __future__ import annotations

from math import degrees

from calc.figures import Figure
from calc.figures.surfaces import on_surface
from calc.model.answers import Point
from calc.model.questions import Check, Part, Values
from calc.topics.shared.motion_laws import STATIC
from calc.topics.shared.quantities import friction_coefficient, slope_angle
from calc.working.declaring import Mistake, Relation, declare

UPSIDE_DOWN = "You have the tangent upside down. At the limit {sin(theta)} equals {mu_s*cos(theta)}: use {tan(theta)}."
SINE = "You took the sine. At the limit {sin(theta)} equals {mu_s*cos(theta)}: divide, and use the tangent for {mu_s}."
SLIPPING = Relation(
    "tan(theta) = mu_s",
    what="At the limit the tangent of the angle is the coefficient",
    why="Along the slope mg sin θ = f, across it N = mg cos θ, and f = μₛN: divided, mg drops out.",
    plain="How steep a surface may be before something slips depends on how rough it is, not on how heavy.",
    mistakes=(
        Mistake("tan-inverted", "theta", "atan(1/mu_s)", UPSIDE_DOWN),
        Mistake("sine-for-tan", "theta", "asin(mu_s)", SINE),
        Mistake("tan-inverted", "mu_s", "1/tan(theta)", UPSIDE_DOWN),
        Mistake("sine-for-tan", "mu_s", "sin(theta)", SINE),
    ),
)
HEAVIER = Part(
    "heavier",
    "explain",
    "A body of the same material has twice the mass. At what angle does it begin to slip? Give a reason.",
    points=(
        Point("At the same angle.", 1, ("same angle",)),
        Point(
            "The part of the weight along the slope doubles, and so do the normal force and the largest static"
            " friction.",
            1,
            ("doubles", "friction"),
        ),
    ),
)
QUANTITIES = (
    slope_angle(
        "theta",
        "Angle at which it begins to slip",
        "It begins to slip when the surface makes {} with the horizontal.",
        "?; 18 25 28 35; 16 24 33 38",
        ask="Calculate the angle of the surface with the horizontal at which it begins to slip.",
        result="measured",
    ),
    friction_coefficient(
        "mu_s",
        "Coefficient of static friction",
        "The coefficient of static friction is {}.",
        "0,45; 0,3 0,4 0,5 0,7; 0,35 0,55 0,65",
    ),
)


def scene(v: Values) -> Figure:
    """The body on the tilted surface."""
    return on_surface(min(max(degrees(v["theta"]), 4.0), 75.0), title="The body on the tilted surface")


SLIPS = declare(
    "slipping",
    "When does it begin to slip?",
    (SLIPPING,),
    openings=(
        "A wooden block lies on a board. One end of the board is slowly lifted until the block just begins to slip.",
        "A coin rests on a flat tray that is tilted more and more, until the coin is about to slide.",
        "A bar of soap lies on a sheet of glass. The sheet is tilted slowly, until the soap is just about to slip.",
    ),
    given=QUANTITIES,
    later=lambda data, values: (HEAVIER,),
    proofs=lambda v: (
        Check("Sine over cosine is the tangent", "sin(theta) = mu_s*cos(theta)", "Both sides, times mg, are f."),
    ),
    scene=scene,
    states=(STATIC,),
    since=4,
)
