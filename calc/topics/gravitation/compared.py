"""Another planet: from g = GM/R² before and after follows g′/g = a/b², with the factors of mass and radius."""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.planets import planet_scene
from calc.model.questions import Mistake, Values
from calc.model.relations import Relation
from calc.topics.gravitation.laws import GRAVITATION, field
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import declare

times = Quantity(
    "",
    0.01,
    1000,
    "A factor is greater than zero: 2 for doubled, 0,5 for halved, 1 for no change.",
    help="1: the same",
)
SQUARED = "You used {b} once. g falls with the square of the radius, so its factor is squared: use {b^2}."
FACTORS = Relation(
    "f = a/b^2",
    what="Compare g on Planet 2 with g on Planet 1",
    why=(
        "G stays the same and cancels when one g is divided by the other. What is left are the factors: that of the"
        " mass multiplies, that of the radius divides, squared."
    ),
    plain="More mass pulls harder in step. A surface twice as far from the middle feels a quarter of the pull.",
    units={"f": "", "a": "", "b": ""},
    mistakes=(
        Mistake("not-squared", "f", "a/b", SQUARED),
        Mistake(
            "radius-multiplied",
            "f",
            "a*b^2",
            "You multiplied by {b^2}. A larger radius means further from the centre and a smaller g, so divide by it.",
        ),
        Mistake("radius-ignored", "f", "a", "You left out the radius. Divide the factor of the mass by {b^2}."),
        Mistake("not-squared", "a", "f*b", SQUARED),
        Mistake(
            "root-omitted",
            "b",
            "a/f",
            "You stopped at {b^2}. Take its square root: that is the factor {b} of the radius.",
            "the answer is the square of the factor",
        ),
        Mistake(
            "inverse",
            "b",
            "sqrt(f/a)",
            "You have the fraction under the root upside down. A larger g needs a smaller radius, so divide by {f}.",
        ),
    ),
)
NEW = Relation(
    "g2 = f*g1",
    what="g on Planet 2 is the factor times g on Planet 1",
    why="A factor says how many times as large g becomes.",
    plain="Three times as strong means three times the number.",
    units={"g2": "m·s⁻²", "f": "", "g1": "m·s⁻²"},
    mistakes=(
        Mistake(
            "divided",
            "g2",
            "g1/f",
            "You divided by {f}. On Planet 2 g is {f} times as large, so multiply {g1} by {f}.",
        ),
        Mistake(
            "multiplied",
            "g1",
            "g2*f",
            "You multiplied by {f}. That leads on from {g2}; to go back to Planet 1, divide by {f}.",
        ),
        Mistake(
            "inverse",
            "f",
            "g1/g2",
            "You divided the other way round. The factor tells how many times as large {g2} is: divide it by {g1}.",
        ),
    ),
)
QUANTITIES = (
    times(
        "a",
        "Factor of the mass from Planet 1 to Planet 2",
        "Planet 2 has {} times the mass of Planet 1.",
        "3; 2 3 5 8; 0,5 4 6,5",
        ask="By what factor is the mass of Planet 2 larger or smaller than that of Planet 1?",
        told_at={1.0: "Planet 2 has the same mass as Planet 1."},
    ),
    times(
        "b",
        "Factor of the radius from Planet 1 to Planet 2",
        "The radius of Planet 2 is {} times that of Planet 1.",
        "2; 2 3 0,5; 0,4 1,5 2,5",
        ask="By what factor is the radius of Planet 2 larger or smaller than that of Planet 1?",
        told_at={1.0: "The radius of Planet 2 is that of Planet 1."},
    ),
    times(
        "f",
        "Factor of g from Planet 1 to Planet 2",
        "On the surface of Planet 2 g is {} times as large as on Planet 1.",
        "?; 2 3 0,5 4; 0,25 1,5 2,5",
        ask="By what factor is g larger or smaller on Planet 2 than on Planet 1?",
        told_at={1.0: "On the surface of Planet 2 g is as large as on Planet 1."},
    ),
    field(
        "g1",
        "Gravitational acceleration on Planet 1",
        "On the surface of Planet 1 g is {}.",
        "9,6 m/s^2; 4 6 8 10; 3,6 5,4 9,6",
        ask="Calculate g at the surface of Planet 1.",
    ),
    field(
        "g2",
        "Gravitational acceleration on Planet 2",
        "On the surface of Planet 2 g is {}.",
        "?; 2 3 5 12; 2,4 7,5 15",
        ask="Calculate g at the surface of Planet 2.",
        result="measured",
    ),
)


def scene(v: Values) -> Figure:
    """One planet with its radius: what differs are numbers."""
    return planet_scene("g", kind="field", shows=("f", "g1", "g2"), title="g at the surface of a planet")


COMPARED = declare(
    "compared",
    "What if: another planet, by factors",
    (FACTORS, NEW),
    openings=(
        "Two planets, 1 and 2, of different stars are compared.",
        "For a story about space travel two planets, 1 and 2, are made up.",
        "A telescope finds two planets. The first is called Planet 1, the second Planet 2.",
    ),
    given=QUANTITIES,
    scene=scene,
    notes=("A factor larger than 1 means larger, one smaller than 1 means smaller; 1 means no change.",),
    practised={"g2": "a b g1", "f": "a b", "a": "b f", "b": "a f", "g1": "g2 a b"},
    asks="g2",
    laws=(GRAVITATION,),
    since=4,
)
