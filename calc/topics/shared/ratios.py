"""What questions "by what factor" share: f = a b / d², each letter the factor by which a quantity changes."""

from calc.model.questions import Mistake
from calc.model.relations import Relation

SQUARE = "Inverse square: square the factor of the distance."
GROWS = "Further apart the force is weaker: to make up for that, multiply by d²."
INVERSE_SQUARE = Relation(
    "f = a*b/d^2",
    what="Compare the force after the change with the force before",
    why=(
        "The constant of the law stays the same and cancels when one force is divided by the other. What is left are"
        " the factors: those of the two bodies multiply, that of the distance divides, squared."
    ),
    mistakes=(
        Mistake("not-squared", "f", "a*b/d", SQUARE),
        Mistake("distance-multiplied", "f", "a*b*d^2", "Further apart means a smaller force: divide by d²."),
        Mistake("factors-added", "f", "(a+b)/d^2", "Product, not sum: multiply the factors."),
        Mistake(
            "root-omitted",
            "d",
            "a*b/f",
            "You have d²: take the square root.",
            "the answer is the square of the factor",
        ),
        Mistake("inverse", "d", "sqrt(f/(a*b))", "Turn it over: a larger force needs a smaller distance."),
        Mistake("not-squared", "a", "f*d/b", SQUARE),
        Mistake("distance-divided", "a", "f/(b*d^2)", GROWS),
        Mistake("not-squared", "b", "f*d/a", SQUARE),
        Mistake("distance-divided", "b", "f/(a*d^2)", GROWS),
    ),
)
TIMES = Relation(
    "new = factor*old",
    what="The new force is the factor times the first one",
    why="A factor says how many times as large the force becomes.",
    plain="Twice as strong means two times the first force.",
    mistakes=(
        Mistake("divided", "new", "old/factor", "Multiply: the new force is f times the first one."),
        Mistake("multiplied", "old", "new*factor", "Go back: divide the new force by the factor."),
        Mistake("inverse", "factor", "old/new", "The force after the change goes on top: f = F_new/F."),
    ),
)
