"""What questions "by what factor" share: f = a b / d², each letter the factor by which a quantity changes."""

from calc.model.questions import Mistake
from calc.model.relations import Relation

SQUARE = "You used {d} once. The force goes with the square of the distance, so its factor is squared: use {d^2}."
GROWS = "You divided by {d^2}. Further apart the force is weaker, and {%s} has to make up for that: multiply by {d^2}."
FURTHER = "You multiplied by {d^2}. Further apart means a smaller force, so divide by it."
ADDED = "You added the factors {a} and {b}. Each of them changes the force by itself, so multiply {a} by {b}."
INVERSE_SQUARE = Relation(
    "f = a*b/d^2",
    what="Compare the force after the change with the force before",
    why=(
        "The constant of the law stays the same and cancels when one force is divided by the other. What is left are"
        " the factors: those of the two bodies multiply, that of the distance divides, squared."
    ),
    mistakes=(
        Mistake("not-squared", "f", "a*b/d", SQUARE),
        Mistake("distance-multiplied", "f", "a*b*d^2", FURTHER),
        Mistake("factors-added", "f", "(a+b)/d^2", ADDED),
        Mistake(
            "root-omitted",
            "d",
            "a*b/f",
            "You stopped at {d^2}. Take its square root: that is the factor {d} of the distance.",
            "the answer is the square of the factor",
        ),
        Mistake(
            "inverse",
            "d",
            "sqrt(f/(a*b))",
            "You have the fraction under the root upside down. A larger force needs a smaller distance, so divide by"
            " {f}.",
        ),
        Mistake("not-squared", "a", "f*d/b", SQUARE),
        Mistake("distance-divided", "a", "f/(b*d^2)", GROWS % "a"),
        Mistake("not-squared", "b", "f*d/a", SQUARE),
        Mistake("distance-divided", "b", "f/(a*d^2)", GROWS % "b"),
    ),
)
TIMES = Relation(
    "new = factor*old",
    what="The new force is the factor times the first one",
    why="A factor says how many times as large the force becomes.",
    plain="Twice as strong means two times the first force.",
    mistakes=(
        Mistake(
            "divided",
            "new",
            "old/factor",
            (
                "You divided by {factor}. The new force {new} is {factor} times the first one, so multiply {old} by"
                " {factor}."
            ),
        ),
        Mistake(
            "multiplied",
            "old",
            "new*factor",
            "You multiplied by {factor}. That leads on from {new}; to go back to the first force, divide by {factor}.",
        ),
        Mistake(
            "inverse",
            "factor",
            "old/new",
            "You divided the other way round. The factor tells how many times as large the new force is: divide {new}"
            " by {old}.",
        ),
    ),
)
