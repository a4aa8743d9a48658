"""Two trolleys that join: m₁u₁ + m₂u₂ = (m₁ + m₂)v, a data-sheet principle."""

from calc.figures.motion import before_after, moving
from calc.topics.momentum.laws import MOMENTUM
from calc.topics.momentum.two_bodies import before, mass_of
from calc.topics.momentum.verdict import ELASTIC, if_asked
from calc.topics.shared.quantities import velocity
from calc.working.declaring import Limit, Mistake, Relation, declare

SIGNS = "You left out the sign of a velocity. To the left is negative here: put each velocity in with its sign."
ADDED = "You divided by the first mass alone. They move on as one body: divide by {m1 + m2}."
NO_MASS = "No mass fits: these velocities would need a mass of zero or less. Check the directions."
APART = "They never meet: the first is on the left and must be the faster one to the right. Check the velocities."
JOINED = Relation(
    "m1*u1 + m2*u2 = (m1 + m2)*v",
    what="Total momentum before equals total momentum after",
    why="No net external force acts on the two, so their total momentum stays the same. To the right is positive.",
    plain="What the two bring in motion together, they still have together once they have joined.",
    mistakes=(
        Mistake("directions-ignored", "v", "(m1*abs(u1) + m2*abs(u2))/(m1 + m2)", SIGNS),
        Mistake("masses-not-added", "v", "(m1*u1 + m2*u2)/m1", ADDED),
    ),
)
QUANTITIES = (
    mass_of("first", "3 kg; 2 3 4 5 8; 1,2 2,4 3,6"),
    before("first", "4 m/s; 3 4 5 6; 2,8 4,5 7,2", may_rest=False),
    mass_of("second", "2 kg; 1 2 6 7; 0,8 1,5 2,5"),
    before("second", "-1,5 m/s; -1 -2 1 -3; -1,5 0,5 -2,4", may_rest=False),
    velocity("v", "Velocity of both afterwards", "Afterwards they move together at {}.", "?; 1 1,5 2; 0,9 1,6 2,2"),
)
JOIN = declare(
    "join",
    "Two trolleys that join",
    (JOINED,),
    openings=(
        "Two trolleys run on a level track without friction, the first on the left; they collide and stay together.",
        "Two loaded carts roll on a smooth level floor. The one on the left, the first, runs into the other and they"
        " lock together.",
        "Two air-track gliders meet and couple; the first comes from the left.",
    ),
    given=QUANTITIES,
    limits=(Limit("u1 - u2", APART, at="u2"),),
    unfit={"m1": NO_MASS, "m2": NO_MASS},
    scene=lambda v: before_after(
        [moving("1", "u_1", v["u1"]), moving("2", "u_2", v["u2"])],
        [moving("1", "v", v["v"]), moving("2", "", v["v"], joined=True)],
    ),
    choices=(ELASTIC,),
    later=if_asked(("u1", "u2"), ("v", "v")),
    states=(MOMENTUM,),
    since=2,
)
