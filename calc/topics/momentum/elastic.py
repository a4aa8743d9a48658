"""Two bodies after an elastic collision: momentum and kinetic energy together give both velocities.

From both balances follows v₂ − v₁ = u₁ − u₂; the other root is no collision at all (v₁ = u₁).
"""

from dataclasses import replace

from calc.model.directions import LEFT_RIGHT
from calc.model.questions import Check, Data, Part, Values
from calc.topics.momentum.join import APART, NO_MASS
from calc.topics.momentum.laws import ELASTIC, MOMENTUM
from calc.topics.momentum.part import PARTED
from calc.topics.momentum.two_bodies import afterwards, before, mass_of, parting
from calc.working.declaring import Limit, Mistake, Relation, Together, declare

STUCK = "You let them move on together. In an elastic collision they part: use the kinetic energy as well."
LEFT_OUT = "You stopped at the speed at which they part. Add {v1}, the velocity of the first."
TURNED = (
    "You took the velocities before in the wrong order. They part as fast as they met: put {v2 - v1} equal to {u1 -"
    " u2}."
)
BALANCE = replace(PARTED, mistakes=(Mistake("stuck-together", "v1", "(m1*u1 + m2*u2)/(m1 + m2)", STUCK),))
SPEEDS = Relation(
    "v2 - v1 = u1 - u2",
    what="In an elastic collision they part as fast as they met",
    why="This follows when neither total momentum nor total kinetic energy changes and the two really collide.",
    plain="However fast they came together, so fast they go apart.",
    mistakes=(
        Mistake("first-left-out", "v2", "u1 - u2", LEFT_OUT),
        Mistake("order-turned", "v2", "v1 + u2 - u1", TURNED),
    ),
)
ENERGY = Check(
    "The total kinetic energy is the same before and after",
    "1/2*m1*u1^2 + 1/2*m2*u2^2 = 1/2*m1*v1^2 + 1/2*m2*v2^2",
    "So the collision is elastic.",
)
QUANTITIES = (
    mass_of("first", "3 kg; 2 3 4 5; 1,2 2,4 3,6"),
    before("first", "4 m/s; 3 4 5 6; 2,6 4,8", may_rest=False),
    mass_of("second", "1 kg; 1 2 3 6; 0,8 1,5 4,5"),
    before("second", "0 m/s; 0 -1 -2 1; 0 -1,5 0,6 -2,4"),
    afterwards("first", "?; -1 1,5 -2; -0,8 1,2 -1,6"),
    afterwards("second", "?; 3 4 5; 2,5 4,5", may_rest=False),
)
OTHER = replace(
    SPEEDS.in_units(dict.fromkeys(("u1", "u2", "v1", "v2"), "m·s⁻¹")).step("v2"),
    direction=lambda v: LEFT_RIGHT.by_sign(v["v2"], "right"),
)


def both(data: Data, values: Values) -> tuple[Part, ...]:
    """The velocity of the second as well, where it is not found on the way."""
    if "v2" in values:
        return ()
    return (Part("second", "calculate", "Calculate the velocity of the second afterwards.", (OTHER,)),)


ELASTICALLY = declare(
    "elastic",
    "An elastic collision",
    (Together(BALANCE, SPEEDS, "v1", "v2", "Put the two equations together"), SPEEDS, BALANCE),
    openings=(
        "Two air-track gliders with magnets collide elastically; the first comes from the left.",
        (
            "On a level track without friction two trolleys with steel springs as buffers collide. The collision is"
            " elastic; the first is on the left."
        ),
        "Two steel balls on a level rail collide, the first on the left. Take the collision as elastic.",
    ),
    given=QUANTITIES,
    limits=(Limit("u1 - u2", APART, at="u2"), Limit("u1 - v1", NO_MASS)),
    unfit={"m1": NO_MASS, "m2": NO_MASS},
    later=both,
    proofs=lambda v: (ENERGY,),
    scene=parting,
    states=(ELASTIC,),
    laws=(MOMENTUM,),
    unknowns=("v1", "v2", "m1", "m2"),
    practised={"v1": "m1 u1 m2 u2", "v2": "m1 u1 m2 u2", "m1": "u1 m2 u2 v1", "m2": "m1 u1 u2 v1"},
    asks="v1",
    since=4,
)
