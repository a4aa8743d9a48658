"""A pendulum let go from rest: the height from string and angle, then mgh = ½mv²; every quantity may be asked."""

from __future__ import annotations

from math import degrees

from calc.figures import AngleMark, Dimension, Figure, Segment, Surface, polar
from calc.figures.bodies import Ball
from calc.figures.pieces import Item
from calc.figures.telling import composed
from calc.model.questions import Values
from calc.topics.energy.laws import CONSERVED
from calc.topics.shared.quantities import distance, height, slope_angle, speed
from calc.working.declaring import Mistake, Relation, declare

DROP = Relation(
    "h = L - L*cos(alpha)",
    what="Height of the ball above its lowest point",
    why="Pulled aside, the ball hangs L cos α below the support, at its lowest point L: the difference is its height.",
    plain=(
        "Measure how far below the hook the ball is, pulled aside and hanging straight. The difference is the height."
    ),
    mistakes=(
        Mistake(
            "depth-for-height",
            "h",
            "L*cos(alpha)",
            "You found how far the ball is below the support. Its height is what is missing: subtract this from {L}.",
        ),
        Mistake(
            "sine",
            "h",
            "L*sin(alpha)",
            "You found how far the ball is to the side. Its height is {L - L*cos(alpha)}: use the cosine.",
        ),
        Mistake(
            "depth-for-height",
            "alpha",
            "acos(h/L)",
            "You used {h} for the part of the string beside the angle. That part is {L - h}: use it.",
        ),
        Mistake(
            "depth-for-height",
            "L",
            "h/cos(alpha)",
            "You took {h} for the part of the string beside the angle. That part is {L - h}: use it.",
        ),
    ),
)
SWING = Relation(
    "g*h = 1/2*v^2",
    what="Mechanical energy where it is let go equals mechanical energy at the lowest point: mgh = ½mv²",
    why=(
        "The tension is at right angles to the motion and does no work, so only the weight does. The mass stands in"
        " both terms and cancels."
    ),
    plain="What the ball loses in height it has in speed when it comes through the lowest point.",
    dropped={"v": "A speed has no sign: it is dropped."},
    quotes=(CONSERVED.name,),
    mistakes=(
        Mistake(
            "half-lost",
            "v",
            "sqrt(g*h)",
            "You lost the ½. Kinetic energy is ½mv²: multiply {g*h} by 2 before you take the root.",
        ),
        Mistake(
            "root-lost",
            "v",
            "2*g*h",
            "You stopped at {v^2}. Take its square root: that is the speed {v}.",
            "the answer is the square of the speed",
        ),
        Mistake("half-lost", "h", "v^2/g", "You lost the ½. Kinetic energy is ½mv²: divide by 2 as well."),
    ),
)
TOO_FAST = (
    "No angle below 90° fits: so fast, the ball would rise above its support. Check the speed and the length of the"
    " string."
)
QUANTITIES = (
    distance(
        "L", "Length of the string", "The string is {} long.", "1,6 m; 0,6 1 1,2 1,5 1,9; 0,65 0,95 1,35 1,85", unit="m"
    ),
    slope_angle(
        "alpha",
        "Angle of the string with the vertical",
        "The ball is pulled aside until the string makes an angle of {} with the vertical, and let go from rest.",
        "50°; 20 30 40 50 60 70; 22 35 55 68",
    ),
    height(
        "h",
        "Height above the lowest point",
        "It is let go from rest {} above its lowest point.",
        "?; 0,2 0,3 0,4; 0,15 0,35",
    ),
    speed("v", "Speed at the lowest point", "It passes its lowest point at {}.", "?; 1,5 2 2,5; 1,2 1,8 2,2"),
)


def scene(v: Values) -> Figure:
    """The pendulum pulled aside, and dashed where it hangs straight; the angle is drawn true."""
    tilt = min(max(degrees(v["alpha"]), 8.0), 85.0)
    hook, long = (0.0, 0.0), 9.0
    aside, lowest = polar(hook, long, 270 - tilt), (0.0, -long)
    items: list[Item] = [
        Surface((3.2, 0.0), (-0.4, 0.0)),
        Segment(hook, polar(hook, long - 0.7, 270 - tilt), "string"),
        Segment(hook, lowest, "guide"),
        Ball(aside, 0.7, ""),
        Dimension(aside, hook, "L", 1.4, 0.4),
        AngleMark(hook, 270 - tilt, 270, "α", 2.8),
        Segment(aside, (1.6, aside[1]), "guide"),
        Dimension((1.6, lowest[1]), (1.6, aside[1]), "h", 0.0, 0.0),
        Segment(lowest, (1.6, lowest[1]), "guide"),
    ]
    return composed(
        "A pendulum",
        items,
        opening="A ball on a string is pulled aside; dotted, the vertical from the support to the lowest point.",
        notes=("Not to scale.",),
        drawn_from=("alpha",),
    )


PENDULUM = declare(
    "pendulum",
    "A pendulum that is let go",
    (DROP, SWING),
    openings=(
        "A small heavy ball hangs on a light string that does not stretch. Air resistance is left out.",
        "In a hall a steel ball hangs from the ceiling by a thin string; the air hardly slows its swing.",
        "A lead ball swings on a string without friction at the support.",
    ),
    given=QUANTITIES,
    unfit={
        "alpha": TOO_FAST,
        "L": TOO_FAST,
    },
    scene=scene,
    constants=("g",),
    notes=("The speed is largest at the lowest point. The mass of the ball does not matter.",),
    states=(CONSERVED,),
    practised={"v": "L alpha", "h": "L alpha", "alpha": "L v", "L": "alpha v"},
    asks="v",
    since=4,
)
