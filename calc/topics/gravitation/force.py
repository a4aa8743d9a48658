"""Newton's law of universal gravitation between two bodies, any one quantity unknown.

F = G m₁ m₂ / r² with r from centre to centre; a pair of equal and opposite forces. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure, Mass, On, spheres_on_line
from calc.model.answers import Point
from calc.model.questions import Check, Data, Mistake, Part, Refusal, Values
from calc.topics.gravitation.laws import GRAVITATION, TWO_BODIES, between_centres, body_mass, pull, radius
from calc.working.declaring import boxes, state, told
from calc.working.solving import Situation, question

OPTIONAL = "only if it is given"
SURFACES = Mistake(
    "surfaces",
    "r",
    "r - R1 - R2",
    "You measured from surface to surface. The distance {r} runs from centre to centre: put in all of it.",
    "the gap between the surfaces was put in for {r}",
)
OVERLAP = (
    "Bodies overlap: their centres must be at least as far apart as the two radii together. Check the distance and the"
    " radii."
)
BOXES = (
    body_mass(
        "m1", "Mass of A", "A has a mass of {}.", "4,8 x 10^24 kg; 3e24 5e24 8e23 6e23; 7,4e22 6,2e23 9,1e24 5,7e24"
    ),
    body_mass("m2", "Mass of B", "B has a mass of {}.", "650 kg; 200 450 800 950; 125 365 720 940"),
    between_centres(
        "r",
        "Distance between the centres",
        "Their centres are {} apart.",
        "8,2 x 10^6 m; 7e6 9e6 2e7 3e7; 7,4e6 1,2e7 4,5e7",
        ask="Calculate the distance between the centres of A and B.",
    ),
    pull(
        "F",
        "Gravitational force (size)",
        "They attract each other with a force of {}.",
        "?; 120 250 400 900 N; 135 365 780",
        ask="Calculate the size of the gravitational force between A and B.",
    ),
    *(
        replace(one, box=replace(one.box, optional=True, help=OPTIONAL))
        for one in (
            radius("R1", "Radius of A", "The radius of A is {}.", unit="m"),
            radius("R2", "Radius of B", "The radius of B is {}.", unit="m"),
        )
    ),
)
PAIR = Part(
    "pair",
    "explain",
    "A has a much larger mass than B. Explain how the force of A on B compares with the force of B on A.",
    points=(
        Point("The two forces are equal in size.", 1, ("equal in size",)),
        Point(
            "They are opposite in direction: each body is attracted towards the other (Newton's third law).",
            1,
            ("opposite in direction",),
        ),
    ),
)
PUT_BACK = Check("Put the answer back into the law: the force must come out as given", "G*m1*m2/r^2 = F")
FIELD_OF_A = Check(
    "Once more as a weight: the mass of B times g of A at that distance",
    "m2*(G*m1/r^2) = F",
    "What B weighs there is the force with which A attracts it.",
)


def refuse_overlap(data: Data, values: Values) -> None:
    """The centres of two bodies lie at least their two radii apart."""
    given = [name for name in ("R1", "R2") if data.has(name)]
    if given and values["r"] < sum(data.values[name] for name in given):
        raise Refusal("r" if data.has("r") else given[-1], OVERLAP)


def two_bodies(v: Values) -> Figure:
    """A and B with the pair of forces on them and the distance between their centres."""
    forces = [On(0, "F", v["F"], True), On(1, "F", v["F"], False)] if "F" in v else []
    return spheres_on_line(
        [Mass("A", 0.0), Mass("B", v.get("r", 1.0))],
        forces=forces,
        distances=[(0, 1, "r")],
        title="Two bodies that attract each other",
        notes=("Bodies not to scale.",),
    )


def situation(data: Data) -> Situation:
    """The two bodies told; the pair of forces explained where one of them is much the larger."""
    with_radii = data.has("R1") and data.has("R2")
    return replace(
        told(BOXES),
        relations=(TWO_BODIES,),
        openings=(
            "Two bodies, A and B, are far away from all others.",
            "In a model of space flight B moves past A; only the pull between these two counts.",
            "A research team works out the gravitational force between two bodies, A and B.",
        ),
        stated=(state(GRAVITATION),),
        later=lambda data, values: (PAIR,) if values["m1"] > 10 * values["m2"] else (),
        refuse=refuse_overlap,
        scene=two_bodies,
        proofs=lambda v: (FIELD_OF_A,) if data.asked == "F" else (PUT_BACK,),
        mistakes=(SURFACES,) if with_radii else (),
        notes=("The force on A and the force on B have the same size, whichever of the two has the larger mass.",),
    )


FORCE = question(
    "force",
    "Gravitational force between two bodies",
    situation,
    **boxes(*BOXES),
    unknowns=("F", "m1", "m2", "r"),
    any_givens=False,
    constants=("G",),
    laws=(GRAVITATION.name,),
    since=4,
)
