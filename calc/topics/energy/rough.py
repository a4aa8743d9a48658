"""A way of which only a level part is rough, split into legs: smooth, rough, smooth.

W_nc = −fL with f = μ_k mg on the level; without the mass, which cancels where μ_k is given: −μ_k gL. Data-sheet
equations. Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Curve, Dimension, Dot, Figure, Segment, Surface
from calc.figures.pieces import Item
from calc.figures.telling import composed
from calc.model.answers import Point
from calc.model.questions import SA, Choice, Mistake, Part, Values
from calc.model.relations import Relation
from calc.topics.energy.laws import NON_CONSERVATIVE
from calc.topics.shared.quantities import friction_coefficient

WHERE = Choice(
    "where",
    "It is rough",
    (("all", "all the way from A to B"), ("part", "only on a level part of length L")),
    since=5,
)
MU = friction_coefficient(
    "mu_k",
    "Coefficient of kinetic friction on the level part",
    "The coefficient of kinetic friction there is {}.",
)
NOT_LEVEL = (
    "All the way is rough, up and down, so friction is not the same everywhere: leave this empty, or choose the level"
    " part."
)
GIVE = {
    "L": "Type the length of the rough part, or the work of friction on it.",
    "mu_k": "Type the coefficient of kinetic friction on the rough part, or the work of friction on it.",
}
TOLD = {"f": "The friction on it there is {}.", "L": "The rough part is {} long."}
ON_PART = (
    (
        "A child on a sledge slides down an icy bank from A, over a level patch of gravel, and on over smooth ice to B."
        " Heights are measured from the level of the gravel."
    ),
    (
        "In a warehouse a crate slides from A down a smooth chute, across a level strip of rubber, and on over smooth"
        " rails to B. Heights are measured from the level of the strip."
    ),
    (
        "A small car without a motor runs on a smooth toy railway from A down to a level piece covered with felt, and"
        " on over smooth rails to B. Heights are measured from the level of the felt."
    ),
)
RUBS = Relation(
    "f = mu_k*m*g",
    what="Kinetic friction on the level part",
    why="On the level the normal force is as large as the weight, and friction is the coefficient times it.",
    units={"f": "N", "mu_k": "", "m": "kg"},
    plain="How rough it is, times how hard it presses on the ground.",
    marks=SA,
    mistakes=(
        Mistake(
            "mass-for-weight",
            "mu_k",
            "f/m",
            "You divided by the mass. The ground carries the weight: divide {f} by {m*g}.",
        ),
    ),
)
SPEEDS = dict.fromkeys(("v", "u"), "A speed has no sign: it is dropped.")
MASSLESS = Relation(
    "-mu_k*g*L = 1/2*v^2 - 1/2*u^2 + g*h_B - g*h_A",
    what="Work of friction equals the change in mechanical energy, divided by the mass",
    why="Only on the level part does friction take energy: μₖmgL. The mass stands in every term and cancels.",
    units={"v": "m·s⁻¹", "u": "m·s⁻¹", "h_A": "m", "h_B": "m", "L": "m", "mu_k": ""},
    plain="What is missing at the end was taken on the rough part, metre by metre.",
    quotes=(NON_CONSERVATIVE.name,),
    dropped=SPEEDS,
    mistakes=(
        Mistake(
            "conserved-anyway",
            "v",
            "sqrt(u^2 + 2*g*(h_A - h_B))",
            "You left the rough part out. Friction takes {mu_k*g*L} for each kilogram there: subtract it.",
        ),
        Mistake(
            "friction-turned",
            "v",
            "sqrt(u^2 + 2*g*(h_A - h_B) + 2*mu_k*g*L)",
            "You let friction give energy. It acts against the motion: subtract {mu_k*g*L}.",
        ),
    ),
)
LEGS = Part(
    "legs",
    "explain",
    "Split the way into legs. On which of them is mechanical energy conserved, on which is it not? Give a reason.",
    points=(
        Point(
            "From A to the rough part, and from its end to B, only the weight does work: it is conserved.",
            1,
            ("only the weight", "conserved"),
        ),
        Point(
            "On the rough part friction, a non-conservative force, takes energy: it is not conserved.",
            1,
            ("friction", "not conserved"),
        ),
    ),
)


def drawn(v: Values) -> Figure:
    """A, the rough level part, and B; not to scale. The heights are from the level part."""
    a, b = v.get("h_A", 1.0), v.get("h_B", 0.0)
    low, high = 3.0, 6.0
    y_a = 0.0 if not a else high if a >= b else low
    y_b = 0.0 if not b else high if b > a else low if a > b else y_a
    left, start, end, right = (2.0, y_a), (7.0, 0.0), (12.0, 0.0), (17.0, y_b)
    items: list[Item] = [
        Segment((0.0, 0.0), start, "guide"),
        Segment(end, (19.6, 0.0), "guide"),
        Curve(_eased(left, start), "outline"),
        Surface(start, end),
        Curve(_eased(end, right), "outline"),
        Dot(left, "A"),
        Dot(right, "B"),
        Dimension(start, end, "L", -1.8, 0.9),
    ]
    for x, y, label in ((left[0] - 1.6, y_a, "h_A"), (right[0] + 1.6, y_b, "h_B")):
        if y:
            items.append(Dimension((x, 0.0), (x, y), label, 0.0, 0.0))
    return composed(
        "From A to B",
        items,
        opening="A smooth way leads from A down to a rough level part, and from its end on to B.",
        notes=("Not to scale.",),
        drawn_from=("h_A", "h_B"),
    )


def _eased(start: tuple[float, float], end: tuple[float, float]) -> tuple[tuple[float, float], ...]:
    shares = [step / 12 for step in range(13)]
    return tuple(
        (start[0] + s * (end[0] - start[0]), start[1] + s * s * (3 - 2 * s) * (end[1] - start[1])) for s in shares
    )
