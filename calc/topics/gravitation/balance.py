"""Where between two bodies a third feels no net gravitational force.

G m₁m/r₁² = G m₂m/(d − r₁)²; G and m cancel, and square roots of both sides give r₁ = d/(1 + √(m₂/m₁)). The other root
lies outside, where both forces point the same way. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure, Mass, On, spheres_on_line
from calc.model.answers import Mark, Point
from calc.model.questions import Check, Data, Mistake, Part, Step, Values
from calc.model.relations import Relation
from calc.topics.gravitation.laws import GRAVITATION, between_centres, body_mass
from calc.working.declaring import Limit, boxes, state, told
from calc.working.solving import Situation, question

ROOTS = "Take the square root of both sides."
DROPPED = (
    "It lies outside, beyond the body with the smaller mass. The two forces are equal in size there too, but they point"
    " the same way and cannot cancel: drop it."
)
OUTSIDE = (
    "The balance point lies between the bodies: its distance from A must be smaller than the distance between A and B."
    " Check both distances."
)
EQUAL_FORCES = Relation(
    "m1/r_1^2 = m2/(d - r_1)^2",
    what="Set the sizes of the two forces equal",
    why=(
        "Between the bodies the two forces are opposite; they cancel where their sizes are equal. G and the mass of the"
        f" third body stand on both sides and have been divided out. {ROOTS}"
    ),
    plain="Go to the spot where both pull equally hard. It is closer to the smaller one.",
    units={"m1": "kg", "m2": "kg", "d": "m", "r_1": "m"},
    marks=(Mark("formula"), Mark("substitution", 2), Mark("answer")),
    quotes=(GRAVITATION.name,),
    mistakes=(
        Mistake(
            "not-squared",
            "m2",
            "m1*(d - r_1)/r_1",
            "You left out the squares. The force falls with the square of the distance: square {r_1} and {d - r_1}.",
        ),
        Mistake(
            "not-squared",
            "m1",
            "m2*r_1/(d - r_1)",
            "You left out the squares. The force falls with the square of the distance: square {r_1} and {d - r_1}.",
        ),
        Mistake(
            "whole-distance",
            "m2",
            "m1*d^2/r_1^2",
            "You put in {d} for B. The distance from B to the balance point is only {d - r_1}: use that.",
        ),
        Mistake(
            "stopped-short",
            "d",
            "r_1*sqrt(m2/m1)",
            "You stopped at the distance from B to the balance point. Add {r_1} to it.",
        ),
    ),
)
UNEQUAL = (
    Mistake(
        "no-root",
        "r_1",
        "d/(1 + m2/m1)",
        "You left out the square root. The force falls with the square of the distance: take the square root of"
        " {m2/m1}.",
    ),
    Mistake(
        "other-root",
        "r_1",
        "abs(d/(1 - sqrt(m2/m1)))",
        "You have the other root. There both forces point the same way and cannot cancel: take the point between the"
        " bodies.",
    ),
    Mistake(
        "other-end",
        "r_1",
        "d/(1 + sqrt(m1/m2))",
        "You have the distance from B. The distance {r_1} starts at A: subtract yours from {d}, or put {m2} on top"
        " under the root.",
    ),
    Mistake(
        "half-way",
        "r_1",
        "d/2",
        "You took the middle for {r_1}. The body with the larger mass pulls harder there: take a point closer to the"
        " other one.",
    ),
)
PLACE = Step(
    law=EQUAL_FORCES.law,
    make="r_1 = d/(1 + sqrt(m2/m1))",
    lines=("sqrt(m1)/r_1 = sqrt(m2)/(d - r_1)", "(d - r_1)/r_1 = sqrt(m2/m1)", "d/r_1 - 1 = sqrt(m2/m1)"),
    what=EQUAL_FORCES.what,
    why=EQUAL_FORCES.why,
    plain=EQUAL_FORCES.plain,
    unit="m",
    marks=EQUAL_FORCES.marks,
    quotes=EQUAL_FORCES.quotes,
)
BOXES = (
    body_mass("m1", "Mass of A", "A has a mass of {}.", "4,5 x 10^24 kg; 2e24 6e24 8e24; 1,3e24 4,7e24 9,5e24"),
    body_mass("m2", "Mass of B", "B has a mass of {}.", "5 x 10^22 kg; 4e22 9e22 3e23; 2,6e22 7,3e22 5,8e23"),
    between_centres(
        "d",
        "Distance between the centres of A and B",
        "Their centres are {} apart.",
        "3,2 x 10^8 m; 2e8 4e8 6e8; 1,7e8 3,9e8 7,4e8",
    ),
    between_centres(
        "r_1",
        "Distance from A to the balance point",
        "On the line between their centres, {} from A, a third body feels no net force.",
        "?; 1,6e8 1,8e8; 1,4e8 1,66e8",
        ask="A third body is to feel no net gravitational force. Calculate how far from the centre of A it must be.",
        result="laid out",
    ),
)
WHERE = Part(
    "where",
    "explain",
    "Explain why the point cannot lie on the line outside the two bodies.",
    points=(
        Point("Outside, on either side, both bodies attract the third body the same way.", 1, ("the same way",)),
        Point("The two forces then add and cannot cancel.", 1, ("cannot cancel",)),
    ),
)


def drawn(v: Values) -> Figure:
    """A and B, and between them the third body with the two equal and opposite forces."""
    known = all(name in v for name in ("d", "r_1")) and 0 < v["r_1"] < v["d"]
    d, place = (v["d"], v["r_1"]) if known else (1.0, 0.6)
    return spheres_on_line(
        [Mass("A", 0.0), Mass("B", d), Mass("C", place)],
        forces=[On(2, "F_A", 1.0, False), On(2, "F_B", 1.0, True)],
        distances=[(0, 2, "r_1"), (0, 1, "d")],
        title="The balance point between two bodies",
        notes=("Bodies not to scale.",),
    )


def situation(data: Data) -> Situation:
    """The two bodies told; with equal masses the equation has one root only, half-way."""
    m1, m2 = (data.values.get(name) for name in ("m1", "m2"))
    place = PLACE
    if m1 != m2:
        place = replace(PLACE, other="r_1 = d/(1 - sqrt(m2/m1))", dropped=DROPPED, mistakes=UNEQUAL)
    return replace(
        told(BOXES),
        relations=(replace(EQUAL_FORCES, by_hand={"r_1": place}),),
        openings=(
            "A and B are two bodies of a distant star system; no other body is near.",
            "Two large bodies, A and B, are far away from all others.",
            "A probe flies straight from a body A to a body B; nothing else is near.",
        ),
        stated=(state(GRAVITATION),),
        later=lambda data, values: (WHERE,),
        limits=(Limit("d - r_1", OUTSIDE, at="r_1"),),
        scene=drawn,
        proofs=lambda v: (
            Check("Put it back: each mass over the square of its own distance", "m1/r_1^2 = m2/(d - r_1)^2"),
        ),
        notes=(
            "The mass of the third body does not matter: it stands on both sides and cancels.",
            "Nudged along the line, the third body does not come back: the one it has neared then pulls harder.",
        ),
    )


BALANCE = question(
    "balance",
    "Balance point between two bodies",
    situation,
    **boxes(*BOXES),
    unknowns=("r_1", "m1", "m2", "d"),
    any_givens=False,
    laws=(GRAVITATION.name,),
    since=4,
)
