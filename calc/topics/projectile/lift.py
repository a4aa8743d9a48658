"""Let go inside a lift that accelerates: relative to the lift it falls with g + a.

Upwards is positive. Seen from the ground the body has the acceleration −g and the lift a; the difference is what counts
inside. Refusals, mistakes and marks: common practice, no source.
"""

from calc.figures import Figure
from calc.figures.vertical import Height, Place, vertical
from calc.model.questions import Values
from calc.topics.projectile.laws import DOWNWARDS, FREE_FALL
from calc.topics.shared.quantities import UP, acceleration, length, speed, time
from calc.working.declaring import Limit, Mistake, Relation, declare

LEFT_OUT = "You left out the acceleration of the lift. Its floor is accelerated too: use {g + a} for g."
SUBTRACTED = (
    "You subtracted the acceleration of the lift. A floor that is accelerated upwards comes to meet the body: use {g +"
    " a} with the sign of {a}."
)
FLOATS = (
    "It does not reach the floor: a lift whose acceleration is g downwards, or more, falls as fast as what is let go in"
    " it. Check the acceleration and its sign."
)
WHY = (
    "Seen from the ground, the body is accelerated by −g and the floor by a. Seen from the lift, the body is"
    " accelerated by g + a towards the floor, and it starts at rest there."
)
PLAIN = "A floor that speeds up to meet it makes the fall shorter; one that gives way makes it longer."
WAY = Relation(
    "h = 1/2*(g + a)*t^2",
    what="The fall as seen from the lift",
    why=WHY,
    plain=PLAIN,
    mistakes=(
        Mistake("lift-left-out", "t", "sqrt(2*h/g)", LEFT_OUT),
        Mistake("lift-subtracted", "t", "sqrt(2*h/(g - a))", SUBTRACTED),
        Mistake("lift-left-out", "h", "1/2*g*t^2", LEFT_OUT),
        Mistake("lift-subtracted", "h", "1/2*(g - a)*t^2", SUBTRACTED),
    ),
)
ENDS = Relation(
    "v = (g + a)*t",
    what="The speed as seen from the lift",
    why=WHY,
    plain=PLAIN,
    mistakes=(
        Mistake("lift-left-out", "v", "g*t", LEFT_OUT),
        Mistake("lift-subtracted", "v", "(g - a)*t", SUBTRACTED),
    ),
)
QUANTITIES = (
    length(
        "h", "Height above the floor of the lift", "It is let go {} above the floor of the lift.", "1,8 m; 1,2 2; 1 1,9"
    ),
    acceleration(
        "a",
        "Acceleration of the lift",
        "The acceleration of the lift is {}.",
        "1,5 m/s^2; 1,5 2 -1,5 -2; 1,2 2,4 -1,2 -2,4",
        way=UP,
        told_at={0.0: "The velocity of the lift is constant."},
    ),
    time("t", "Time to the floor of the lift", "It takes {} to the floor.", "; 0,52 0,68; 0,5 0,66"),
    speed(
        "v",
        "Speed at the floor, as seen in the lift",
        "As seen in the lift its speed at the floor is {}.",
        "; 5 6,5; 4,8 6,4",
    ),
)


def scene(v: Values) -> Figure:
    """The body above the floor of the lift."""
    return vertical([Place("", 1.0)], [Height(0.0, 1.0, "h")], ground=0.0, title="Inside the lift")


LIFT = declare(
    "lift",
    "Let go inside an accelerating lift",
    (WAY, ENDS),
    openings=(
        "In a lift a coin is let go at rest relative to the lift. Upwards is positive.",
        "Someone in a lift holds a pen still and lets it go. Take upwards as positive.",
        "From a shelf inside a glass lift a bolt comes loose; until then it moved with the lift. Upwards is positive.",
    ),
    given=QUANTITIES,
    limits=(Limit("g + a", FLOATS, at="a"),),
    scene=scene,
    states=(DOWNWARDS,),
    laws=(FREE_FALL,),
    constants=("g",),
    practised={"t": "h a", "h": "a t", "v": "a t", "a": "h t"},
    asks="t",
    since=4,
)
