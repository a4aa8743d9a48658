"""Two trolleys that a spring drives apart: (m₁ + m₂)u = m₁v₁ + m₂v₂, mostly from rest."""

from calc.figures.motion import moving
from calc.topics.momentum.join import NO_MASS
from calc.topics.momentum.laws import MOMENTUM
from calc.topics.momentum.two_bodies import afterwards, exchanged, mass_of, parting
from calc.topics.shared.quantities import velocity
from calc.working.declaring import Limit, Mistake, Part, Relation, declare

THROUGH = (
    "They would pass through each other: the spring drives the first, on the left, away from the second. Check the"
    " velocities and their signs."
)
ONE_SPEED = (
    "You gave both the same speed. Their momenta change by the same amount, their velocities do not: use {m1} and {m2}."
)
SWAPPED = "You have the masses the wrong way round. Multiply each mass by the change in its own velocity."
ONE_MASS = "You divided by one mass alone. Before, the two are one body: divide by {m1 + m2}."
SPRUNG = Relation(
    "(m1 + m2)*u = m1*v1 + m2*v2",
    what="Total momentum before equals total momentum after",
    why=(
        "The spring pushes both with equal and opposite forces inside the system; no net external force acts. To the"
        " right is positive."
    ),
    plain="Pushed apart, each gets as much motion as the other, in opposite directions.",
    mistakes=(
        Mistake("one-speed", "v2", "2*u - v1", ONE_SPEED),
        Mistake("masses-swapped", "v2", "u - m2*(v1 - u)/m1", SWAPPED),
        Mistake("one-speed", "v1", "2*u - v2", ONE_SPEED),
        Mistake("masses-swapped", "v1", "u - m1*(v2 - u)/m2", SWAPPED),
        Mistake("one-mass", "u", "(m1*v1 + m2*v2)/m1", ONE_MASS),
    ),
)
ENERGY = Relation(
    "DeltaE_k = 1/2*m1*v1^2 + 1/2*m2*v2^2 - 1/2*(m1 + m2)*u^2",
    what="The spring gives the kinetic energy that is gained",
    why="Kinetic energy after minus kinetic energy before: what the spring had stored.",
    units={"DeltaE_k": "J"},
    plain="What the two have gained in energy of motion came out of the spring.",
)
QUANTITIES = (
    mass_of("first", "1,5 kg; 1 2 3 5; 1,2 2,6 4,5"),
    mass_of("second", "2,5 kg; 2 4 6; 1,6 3,4 5,5"),
    velocity(
        "u",
        "Velocity of both before",
        "Before, they move together at {}.",
        "0 m/s; 0 0 0,5; 0 0,4 0,6",
        told_at={0.0: "At first they are at rest."},
    ),
    afterwards("first", "-2 m/s; -1,5 -2 -3; -1,2 -2,4 -3,6"),
    afterwards("second", "?; 1,5 2 2,5; 1,4 2,2 2,8"),
)
SPRING = declare(
    "spring",
    "Two trolleys driven apart",
    (SPRUNG,),
    openings=(
        (
            "Two trolleys stand on a level track without friction with a pressed spring between them, the first on the"
            " left. The thread that holds them is burnt and the spring drives them apart."
        ),
        (
            "A light spring is squeezed between two air-track gliders that are tied together, the first on the left."
            " The tie is cut and they fly apart."
        ),
        (
            "On smooth ice two sledges, the first on the left, are latched together with a pressed spring between them."
            " The latch opens and the spring drives them apart."
        ),
    ),
    given=QUANTITIES,
    limits=(Limit("v2 - v1", THROUGH),),
    unfit={"m1": NO_MASS, "m2": NO_MASS},
    proofs=lambda v: (exchanged("u", "u"),),
    later=lambda data, values: (
        Part(
            "energy",
            "calculate",
            "Calculate the energy that the spring gives the two.",
            (ENERGY.step("DeltaE_k"),),
        ),
    ),
    scene=lambda v: parting(v, [moving("1", "u", v["u"]), moving("2", "", v["u"], joined=True)]),
    notes=("The spring is inside the system: it can change the kinetic energy, but not the total momentum.",),
    states=(MOMENTUM,),
    since=4,
)
