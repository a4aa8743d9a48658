"""Two trolleys that a spring drives apart: (m₁ + m₂)u = m₁v₁ + m₂v₂, mostly from rest."""

from calc.figures.motion import before_after, moving
from calc.model.questions import Check
from calc.topics.momentum.join import NO_MASS
from calc.topics.momentum.laws import MOMENTUM
from calc.topics.shared.quantities import mass, velocity
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
EXCHANGED = Check(
    "What the first loses in momentum the second gains",
    "m1*(u - v1) = m2*(v2 - u)",
    "The impulses on the two are equal and opposite.",
)
QUANTITIES = (
    mass("m1", "Mass of the first", "The first has a mass of {}.", "1,5 kg; 1 2 3 5; 1,2 2,6 4,5"),
    mass("m2", "Mass of the second", "The second has a mass of {}.", "2,5 kg; 2 4 6; 1,6 3,4 5,5"),
    velocity(
        "u",
        "Velocity of both before",
        "Before, they move together at {}.",
        "0 m/s; 0 0 0,5; 0 0,4 0,6",
        told_at={0.0: "At first they are at rest."},
    ),
    velocity(
        "v1",
        "Velocity of the first afterwards",
        "Afterwards the first moves at {}.",
        "-2 m/s; -1,5 -2 -3; -1,2 -2,4 -3,6",
        told_at={0.0: "Afterwards the first is at rest."},
    ),
    velocity(
        "v2",
        "Velocity of the second afterwards",
        "Afterwards the second moves at {}.",
        "?; 1,5 2 2,5; 1,4 2,2 2,8",
        told_at={0.0: "Afterwards the second is at rest."},
    ),
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
    proofs=lambda v: (EXCHANGED,),
    later=lambda data, values: (
        Part(
            "energy",
            "calculate",
            "Calculate the energy that the spring gives the two.",
            (ENERGY.step("DeltaE_k"),),
        ),
    ),
    scene=lambda v: before_after(
        [moving("1", "u", v["u"]), moving("2", "", v["u"], joined=True)],
        [moving("1", "v_1", v["v1"]), moving("2", "v_2", v["v2"])],
    ),
    notes=("The spring is inside the system: it can change the kinetic energy, but not the total momentum.",),
    states=(MOMENTUM,),
    since=4,
)
