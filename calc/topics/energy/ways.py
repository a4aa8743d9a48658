"""A whole question: two ways from A up to B; the work of the weight and of friction on each, and what that means.

The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Curve, Dimension, Dot, Figure, Segment
from calc.figures.pieces import Item
from calc.figures.pieces import Point as Place
from calc.figures.telling import composed
from calc.model.answers import Point
from calc.model.directions import SIGN_OF_WORK
from calc.model.questions import Check, Data, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.energy.laws import CONSERVATIVE, NON_CONSERVATIVE
from calc.topics.energy.places import FRICTION_PLUS
from calc.topics.shared.quantities import distance, force, height, mass
from calc.working.declaring import Mistake, boxes, state

SHORT = "A way cannot be shorter than the height between its ends. Make it longer, or the height smaller."
BENT = "Way 1 is straight, so it is the shortest there is. Make way 2 longer than way 1."
WEIGHT = Relation(
    "W_w = -(m*g*h)",
    what="Work of the weight from A to B",
    why="Only the height counts. The weight pulls downwards while the crate comes up by h: its work is negative.",
    plain="Going up costs the same, whichever way leads there.",
    units={"W_w": "J", "h": "m"},
    directions={"W_w": lambda v: SIGN_OF_WORK.by_sign(v["W_w"], "positive")},
    mistakes=(
        Mistake(
            "way-for-height",
            "W_w",
            "-(m*g*L_1)",
            "You used the length of the way. The weight does work {W_w} over the vertical height only: use {h}.",
        ),
        Mistake(
            "mass-for-weight",
            "W_w",
            "-(m*h)",
            "You used the mass as the weight. The weight is {m*g}: multiply by g.",
        ),
        Mistake(
            "sign",
            "W_w",
            "m*g*h",
            "You made the work of the weight positive. The crate rises against the weight: put a minus sign before it.",
            turns=True,
        ),
    ),
)


def friction_on(way: int) -> Relation:
    """The work of friction on the first or the second way."""
    name, long = f"W_{way}", f"L_{way}"
    return Relation(
        f"{name} = f*{long}*cos(deg180)",
        what=f"Work of friction on way {way}",
        why=(
            "Friction is against the motion all along the way: the angle between them is 180°, and its work is"
            " negative."
        ),
        plain="The longer the way, the more the rubbing takes.",
        units={name: "J"},
        directions={name: lambda v: SIGN_OF_WORK.by_sign(v[name], "positive")},
        mistakes=(
            Mistake(
                "height-for-way",
                name,
                "f*h*cos(deg180)",
                f"You used the height. Friction acts along the whole way: use {{{long}}} for {{{name}}}.",
            ),
            Mistake("friction-positive", name, f"f*{long}", FRICTION_PLUS, turns=True),
        ),
    )


VERDICT = Part(
    "which",
    "explain",
    "Which of the two forces is conservative, and which is not? Use your answers.",
    points=(
        Point("The weight does the same work on both ways, so it is conservative.", 1, ("same work", "conservative")),
        Point(
            "Friction takes more energy on the longer way, so it is non-conservative.",
            1,
            ("longer", "non-conservative"),
        ),
    ),
)
BACK = Part(
    "back",
    "explain",
    "The crate is taken up on one way and let down on the other. What is the total work of the weight, and why is that"
    " of friction not zero?",
    points=(
        Point("The total work of the weight is zero: up and down cancel.", 1, ("zero",)),
        Point("Friction is against the motion on both ways, so its work is negative both times.", 1, ("negative",)),
    ),
)
QUANTITIES = (
    mass("m", "Mass of the crate", "", "24 kg; 16 20 28 32; 18 26 34"),
    height("h", "Height of B above A", "", "2 m; 1,5 2 2,5; 1,6 2,4"),
    distance("L_1", "Length of way 1", "", "3 m; 3 3,5 4; 3,2 3,8"),
    distance("L_2", "Length of way 2", "", "8 m; 6 7 8 9; 6,5 8,5"),
    force("f", "Average friction on either way (size)", "", "60 N; 40 50 60 70; 45 65"),
)


def plan(data: Data) -> Plan:
    """Definition, work of the weight, of friction on each way, which is conservative, up and down again."""
    said, values = data.said, data.values
    if values["L_1"] < values["h"]:
        raise Refusal("L_1", SHORT)
    if values["L_2"] <= values["L_1"]:
        raise Refusal("L_2", BENT)
    story = data.pick(
        "From the floor of a cellar, A, a crate of {m} is dragged to the yard at B, {h} higher. It can be dragged up a"
        " short plank, way 1, {L_1} long, or up a long winding ramp, way 2, {L_2} long.",
        "A crate of {m} has to be dragged from a beach, A, to a terrace at B, {h} higher. Way 1, straight up a board,"
        " is {L_1} long; way 2, along a bent path, is {L_2} long.",
        "In a warehouse a crate of {m} is pulled from A to a platform at B, {h} higher: by a steep slide rail, way 1,"
        " {L_1} long, or by a gentle bent one, way 2, {L_2} long.",
    ).format(**said)
    return Plan(
        story=f"{story} On either way the average friction is {said['f']}.",
        parts=(
            state(CONSERVATIVE),
            Part("weight", "calculate", "Calculate the work done by the weight from A to B.", (WEIGHT.step("W_w"),)),
            *(
                Part(
                    f"way-{n}",
                    "calculate",
                    f"Calculate the work done by friction on way {n}.",
                    (friction_on(n).step(f"W_{n}"),),
                )
                for n in (1, 2)
            ),
            VERDICT,
            BACK,
        ),
        values=dict(values),
        scene=scene,
        checks=(Check("The works of friction are in the ratio of the ways", "W_1/W_2 = L_1/L_2"),),
    )


def bent(start: Place, one: Place, other: Place, end: Place) -> tuple[Place, ...]:
    """A smooth way that leaves towards ``one`` and arrives from ``other`` (a cubic Bézier curve)."""
    shares = [step / 24 for step in range(25)]
    weights = [((1 - s) ** 3, 3 * s * (1 - s) ** 2, 3 * s * s * (1 - s), s**3) for s in shares]
    corners = (start, one, other, end)
    return tuple(
        (
            sum(w * corner[0] for w, corner in zip(row, corners, strict=True)),
            sum(w * corner[1] for w, corner in zip(row, corners, strict=True)),
        )
        for row in weights
    )


def scene(v: Values) -> Figure:
    """A below, B above, a straight way and a bent one between them; not to scale."""
    a, b = (0.0, 0.0), (12.0, 6.0)
    items: list[Item] = [
        Segment((-1.5, 0.0), (14.6, 0.0), "guide"),
        Segment(a, b, "outline", "L_1"),
        Curve(bent(a, (13.0, 0.0), (17.0, 2.6), b), "outline", "L_2"),
        Dot(a, "A"),
        Dot(b, "B"),
        Dimension((15.8, 0.0), (15.8, 6.0), "h", 0.0, 0.0),
        Segment(b, (15.8, 6.0), "guide"),
    ]
    return composed(
        "Two ways from A to B",
        items,
        opening="Two ways lead from A up to B: way 1 straight, way 2 bent.",
        notes=("Not to scale.",),
    )


WAYS = Question(
    key="two-ways",
    title="Two ways up",
    plan=plan,
    **boxes(*QUANTITIES),
    constants=("g",),
    laws=(CONSERVATIVE.name, NON_CONSERVATIVE.name),
    scenario=True,
    since=4,
)
