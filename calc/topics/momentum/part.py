"""Two trolleys that collide and part: m₁u₁ + m₂u₂ = m₁v₁ + m₂v₂, and whether the collision is elastic."""

from calc.model.questions import Data, Refusal, Values
from calc.topics.momentum.join import APART, NO_MASS, SIGNS
from calc.topics.momentum.laws import ELASTIC, MOMENTUM
from calc.topics.momentum.two_bodies import afterwards, before, exchanged, mass_of, parting
from calc.topics.momentum.verdict import NEARLY, kinetic, verdict
from calc.working.declaring import Limit, Mistake, Part, Relation, declare
from calc.working.working import measure

THROUGH = (
    "They would pass through each other: afterwards the first, on the left, cannot be the faster one to the right."
    " Check the velocities and their signs."
)
SPRING = (
    "Needs an explosion or spring: the total kinetic energy would rise from {} to {}. In a collision it cannot rise;"
    " check the numbers."
)
KEPT = "You kept the kinetic energy the same. That holds only if the collision is elastic: use the momentum."
FORGOTTEN = "You left out the momentum that the other trolley has afterwards. Subtract it from the total."
PARTED = Relation(
    "m1*u1 + m2*u2 = m1*v1 + m2*v2",
    what="Total momentum before equals total momentum after",
    why="No net external force acts on the two, so their total momentum stays the same. To the right is positive.",
    plain="What one loses in motion the other gains.",
    mistakes=(
        Mistake("directions-ignored", "v2", "(m1*abs(u1) + m2*abs(u2) - m1*abs(v1))/m2", SIGNS),
        Mistake("other-forgotten", "v2", "(m1*u1 + m2*u2)/m2", FORGOTTEN),
        Mistake("energy-kept", "v2", "sqrt((m1*u1^2 + m2*u2^2 - m1*v1^2)/m2)", KEPT),
        Mistake("directions-ignored", "v1", "(m1*abs(u1) + m2*abs(u2) - m2*abs(v2))/m1", SIGNS),
        Mistake("other-forgotten", "v1", "(m1*u1 + m2*u2)/m1", FORGOTTEN),
        Mistake("energy-kept", "v1", "sqrt((m1*u1^2 + m2*u2^2 - m2*v2^2)/m1)", KEPT),
    ),
)
QUANTITIES = (
    mass_of("first", "2 kg; 2 3 4 5; 1,2 2,4 3,6"),
    before("first", "5 m/s; 4 5 6; 3,5 5,4", may_rest=False),
    mass_of("second", "3 kg; 2 3 4 6; 1,5 2,5 4,5"),
    before("second", "-2 m/s; -1 -2 1; -1,5 0,5 -2,4"),
    afterwards("first", "-1 m/s; -1 -2 -1,5; -0,6 -1,2 0,8"),
    afterwards("second", "?; 2 3 2,5; 1,6 2,4 2,8"),
)


def refuse(data: Data, values: Values) -> None:
    """No collision gives kinetic energy; what is within the rounding of the data may be."""
    earlier, later = (kinetic(values, *speeds) for speeds in (("u1", "u2"), ("v1", "v2")))
    if later > earlier * (1 + NEARLY):
        style = data.settings.style
        raise Refusal(None, SPRING.format(*(measure(one, "J", style).text for one in (earlier, later))))


def energies(data: Data, values: Values) -> tuple[Part, ...]:
    """Whether the collision is elastic: both totals, then the comparison."""
    return verdict(data, values, ("u1", "u2"), ("v1", "v2"))


PART = declare(
    "part",
    "Two trolleys that collide and part",
    (PARTED,),
    openings=(
        (
            "Two trolleys with buffers run on a level track without friction, the first on the left; they collide and"
            " part again."
        ),
        (
            "On a smooth level floor two crates on castors bump into each other and move apart; the first comes from"
            " the left."
        ),
        "Two air-track gliders with bumpers meet, the first on the left, and separate after the collision.",
    ),
    given=QUANTITIES,
    limits=(Limit("u1 - u2", APART, at="u2"), Limit("v2 - v1", THROUGH)),
    unfit={"m1": NO_MASS, "m2": NO_MASS},
    refuse=refuse,
    later=energies,
    proofs=lambda v: (exchanged("u1", "u2"),),
    scene=parting,
    states=(MOMENTUM,),
    laws=(ELASTIC,),
    since=4,
)
