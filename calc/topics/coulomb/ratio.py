"""By what factor: charges, distance and force compared before and after a change, any one of them asked.

From F = k Q₁ Q₂ / r² for both states follows f = a b / d², where each letter is the factor by which a
quantity changes. Ranges: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.charges import Charge, spheres_on_line
from calc.model.questions import Data, Draw, Input, Mistake, Values
from calc.model.relations import Relation
from calc.topics.shared.electrostatics import COULOMB, PLAIN_LAW, force
from calc.working.solving import Situation, question

ROOT = "You have d²: take the square root."
SQUARE = "Inverse square: square the factor of the distance."
GROWS = "Further apart the force is weaker: to make up for that, multiply by d²."
WHICH = "The force after the change goes on top: f = F_new/F."
RATIO = Relation(
    "f = a*b/d^2",
    what="Compare the force after the change with the force before",
    why=(
        "k stays the same and cancels when one force is divided by the other. What is left are the factors: "
        "those of the charges multiply, that of the distance divides, squared."
    ),
    plain=PLAIN_LAW,
    units={"f": "", "a": "", "b": "", "d": ""},
    mistakes=(
        Mistake("not-squared", "f", "a*b/d", SQUARE),
        Mistake("distance-multiplied", "f", "a*b*d^2", "Further apart means a smaller force: divide by d²."),
        Mistake("factors-added", "f", "(a+b)/d^2", "Product, not sum: multiply the factors."),
        Mistake("root-omitted", "d", "a*b/f", ROOT, "the answer is the square of the factor"),
        Mistake("inverse", "d", "sqrt(f/(a*b))", "Turn it over: a larger force needs a smaller distance."),
        *(
            mistake
            for one, other in (("a", "b"), ("b", "a"))
            for mistake in (
                Mistake("not-squared", one, f"f*d/{other}", SQUARE),
                Mistake("distance-divided", one, f"f/({other}*d^2)", GROWS),
            )
        ),
    ),
)
BOTH_FORCES = Relation(
    "F_new = f*F",
    what="The new force is the factor times the first one",
    why="A factor says how many times as large the force becomes.",
    plain="Twice as strong means two times the first force.",
    units={"F_new": "N", "f": "", "F": "N"},
    mistakes=(
        Mistake("divided", "F_new", "F/f", "Multiply: the new force is f times the first one."),
        Mistake("multiplied", "F", "F_new*f", "Go back: divide the new force by the factor."),
        Mistake("inverse", "f", "F/F_new", WHICH),
    ),
)


def changed(data: Data, name: str, what: str) -> str:
    """What becomes of one quantity, in a sentence; a factor of 1 changes nothing."""
    if not data.has(name):
        return ""
    if data.values[name] == 1:
        return f"{what} stays the same."
    return f"{what} is made {{}} times as large."


def situation(data: Data) -> Situation:
    """The change told with the factors that are given."""
    given = {
        "F": "At first the force is {}.",
        "a": changed(data, "a", "The charge on A"),
        "b": changed(data, "b", "The charge on B"),
        "d": changed(data, "d", "The distance between them"),
        "f": "The force stays the same." if data.values.get("f") == 1 else "The force becomes {} times as large.",
        "F_new": "The force afterwards is {}.",
    }
    return replace(TOLD, tell=given)


def scene(values: Values) -> Figure:
    """Two spheres whose charges are not told, and the distance that changes."""
    return spheres_on_line(
        [Charge("A", 0.0, 0.0, signed=False), Charge("B", 0.0, 1.0, signed=False)],
        distances=[(0, 1, "r")],
        title="Two charges and the distance between them",
    )


TOLD = Situation(
    relations=(RATIO, BOTH_FORCES),
    openings=(
        "Two small charged spheres, A and B, exert a force on each other. Then something is changed.",
        "Two small charged bodies, A and B, act on each other; neither charge is known. A change is made.",
        "A charged sphere A pulls or pushes another, B. Their charges and their distance may then be altered.",
    ),
    tell={},
    ask={
        "a": "By what factor must the charge on A change?",
        "b": "By what factor must the charge on B change?",
        "d": "By what factor must the distance between A and B change?",
        "f": "By what factor does the force change?",
        "F": "Calculate the force before the change.",
        "F_new": "Calculate the force after the change.",
    },
    scene=scene,
    notes=("A factor larger than 1 means larger, one smaller than 1 means smaller; 1 means no change.",),
)


def factor(name: str, words: str) -> Input:
    """How many times as large a quantity becomes."""
    refusal = "A factor is greater than zero: 2 for doubled, 0,5 for halved, 1 for no change."
    return Input(name, words, "", 0.01, 100, refusal=refusal, help="1: no change")


GIVEN = {
    "f": ("a", "b", "d"),
    "d": ("a", "b", "f"),
    "a": ("b", "d", "f"),
    "b": ("a", "d", "f"),
    "F_new": ("F", "a", "b", "d"),
    "F": ("F_new", "a", "b", "d"),
}


def practise_ratio(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """What one asks with; from level 2 on, the distance often from the two forces themselves."""
    asked = next((name for name in GIVEN if not typed[name]), "")
    keep = GIVEN.get(asked, tuple(typed))
    if level > 1 and asked == "d" and typed["a"] != "1":
        keep = ("a", "b", "F", "F_new")
    return {name: text if name in keep else "" for name, text in typed.items()}


FACTORS = question(
    "ratio",
    "Factors of a change",
    situation,
    fields=(
        factor("a", "Factor of the charge on A"),
        factor("b", "Factor of the charge on B"),
        factor("d", "Factor of the distance"),
        factor("f", "Factor of the force"),
        force("F", "Force before the change (size)"),
        replace(force("F_new", "Force after the change (size)"), result="measured"),
    ),
    example={"a": "1", "b": "1", "d": "", "f": "4", "F": "", "F_new": ""},
    since=2,
    asks="d",
    laws=(COULOMB.name,),
    draws={
        "a": Draw((1, 1, 2, 3), harder=(1, 0.5, 3, 1.5)),
        "b": Draw((1, 2, 4), harder=(0.25, 3, 2)),
        "d": Draw((2, 3, 0.5), harder=(0.4, 1.5, 2.5)),
        "f": Draw((4, 9, 16, 0.25), harder=(2, 0.36, 5, 12)),
        "F": Draw((12, 20, 36, 48), "mN", harder=(5.4, 64, 7.5)),
        "F_new": Draw((3, 4, 9, 75), "mN", harder=(2.7, 16, 30)),
    },
    adjust=practise_ratio,
)
