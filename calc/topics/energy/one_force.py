"""The work of one constant force: W = F Δx cos θ, a data-sheet equation; every quantity may be asked."""

from math import degrees, pi

from calc.figures import AngleMark, Arrow, Block, Dimension, Figure, Surface, polar
from calc.figures.pieces import Item, Segment
from calc.figures.telling import composed
from calc.model.directions import SIGN_OF_WORK
from calc.model.questions import Data, Refusal, Values
from calc.topics.energy.laws import WORK
from calc.topics.shared.quantities import Quantity, distance, work
from calc.working.declaring import Mistake, Relation, declare

WIDE = "The angle between the force and the displacement lies between 0° and 180°: type an angle in this range."
NO_SIZE = (
    "No size fits: below 90° the work is positive, at 90° it is zero, and above 90° it is negative. Check the sign of"
    " the work and the angle."
)
TO_VERTICAL = (
    "You took the angle from the wrong line. θ is the angle between the force and the displacement: use {cos(theta)}."
)
WHOLE_FORCE = "You used the whole force. Only its component along the displacement does work: multiply by {cos(theta)}."
WHOLE_FORCE_BACK = (
    "You used the whole force. Only its component along the displacement does work: divide by {cos(theta)} as well."
)
BY_COSINE = (
    "You multiplied by {cos(theta)}. That leads to the component along the displacement; here, divide by {cos(theta)}."
)
BY_SINE = "You used the sine. The component along the displacement goes with the cosine: use the inverse cosine."
ONE = Relation(
    "W = F*Deltax*cos(theta)",
    what="Work is force times displacement times the cosine of the angle between them",
    why="Only the component of the force along the displacement does work. The cosine brings the sign.",
    plain=(
        "A force that helps the motion gives energy, so its work is positive. One that holds back takes energy:"
        " negative."
    ),
    directions={"W": lambda v: SIGN_OF_WORK.by_sign(v["W"], "positive")},
    mistakes=(
        Mistake("angle-to-vertical", "W", "F*Deltax*sin(theta)", TO_VERTICAL),
        Mistake("cosine-left-out", "W", "F*Deltax", WHOLE_FORCE),
        Mistake("angle-to-vertical", "F", "W/(Deltax*sin(theta))", TO_VERTICAL),
        Mistake("cosine-left-out", "F", "W/Deltax", WHOLE_FORCE_BACK),
        Mistake("cosine-multiplied", "F", "W*cos(theta)/Deltax", BY_COSINE),
        Mistake("angle-to-vertical", "Deltax", "W/(F*sin(theta))", TO_VERTICAL),
        Mistake("cosine-left-out", "Deltax", "W/F", WHOLE_FORCE_BACK),
        Mistake("angle-to-vertical", "theta", "asin(W/(F*Deltax))", BY_SINE),
    ),
)
angle = Quantity("°", 0.1, 180, WIDE, over=None)
acting = Quantity("N", 1e-3, 1e6, "The size of a force is greater than zero; its direction is in the angle.")
QUANTITIES = (
    acting("F", "Force (size)", "The force has a size of {}.", "40 N; 20 35 60 80; 24 45 72"),
    distance(
        "Deltax",
        "Displacement (size)",
        "The displacement of the crate is {} along the floor.",
        "6 m; 3 5 8; 2,5 4,5 7,5",
    ),
    angle(
        "theta",
        "Angle between force and displacement",
        "The angle between the force and the displacement is {}.",
        "30°; 25 30 35 60 120 150; 20 40 130 155",
        told_at={
            0.0: "The force acts in the direction of the displacement.",
            pi: "The force acts opposite to the displacement.",
        },
    ),
    work(
        "W", "Work done by the force", "The force does {} of work on the crate.", "?; 120 180 -150 -240; 135 -165 260"
    ),
)


def refuse(data: Data, values: Values) -> None:
    """Two directions are at most half a turn apart."""
    if values["theta"] > pi * (1 + 1e-9):
        raise Refusal("theta" if data.has("theta") else None, WIDE)


def scene(v: Values) -> Figure:
    """A crate on a floor that moves to the right, the force at its angle."""
    turn = degrees(v["theta"])
    centre, far = (0.0, 1.0), (9.0, 1.0)
    items: list[Item] = [
        Surface((-6.5, 0.0), (11.5, 0.0)),
        Block(centre, 2.6, 2.0, 0.0, ""),
        Segment((7.7, 0.0), (7.7, 2.0), "construction"),
        Segment((7.7, 2.0), (10.3, 2.0), "construction"),
        Segment((10.3, 2.0), (10.3, 0.0), "construction"),
        Segment((1.3, 1.0), (5.2, 1.0), "guide"),
        Arrow(polar(centre, 0.0, turn), polar(centre, 5.2, turn), "F"),
        Dimension((centre[0], 0.0), (far[0], 0.0), "Δx", -1.9, 0.9),
    ]
    if turn > 1:
        items.append(AngleMark(centre, 0.0, turn, "θ", 2.6))
    return composed(
        "A crate, a force and a displacement",
        items,
        opening="A crate on a level floor is displaced to the right; its place at the end is dashed.",
        drawn_from=("theta",),
    )


SINGLE = declare(
    "one-force",
    "Work done by one force",
    (ONE,),
    openings=(
        "A crate slides along a level floor; several forces act on it, and one of them is looked at here.",
        "A porter moves a crate across a level hall. Take one of the forces on the crate.",
        "A crate is shifted along a level loading bay, and the work of a single force on it is wanted.",
    ),
    given=QUANTITIES,
    unfit={
        "F": NO_SIZE,
        "Deltax": NO_SIZE,
        "theta": (
            "No angle fits: the work cannot be larger than force times displacement. Check the numbers and their"
            " prefixes."
        ),
    },
    refuse=refuse,
    scene=scene,
    notes=(
        "The sign of work is no direction: positive work gives the body energy, negative work takes energy from it.",
    ),
    states=(WORK,),
    since=4,
)
