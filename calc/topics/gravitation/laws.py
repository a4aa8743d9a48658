"""The laws of the chapter on gravitation, and its quantities.

F = G m₁ m₂ / r² and w = mg: data-sheet equations; g = GM/R² follows from both. Ranges, refusals and marks: common
practice, no source.
"""

from __future__ import annotations

from calc.model.answers import Law
from calc.model.questions import Mistake
from calc.model.relations import Relation, Said
from calc.topics.shared.quantities import Quantity

GRAVITATION = Law(
    "Newton's law of universal gravitation",
    "Every particle in the universe attracts every other particle with a force that is directly proportional to the"
    " product of their masses and inversely proportional to the square of the distance between their centres.",
    (
        "directly proportional to the product of their masses",
        "inversely proportional to the square of the distance between their centres",
    ),
    formulas=("F = G*m1*m2/r^2", "g = G*M/R^2"),
    group="Gravitation",
)
WEIGHT = Law(
    "Definition of weight",
    "The weight of an object is the gravitational force that a planet exerts on the object.",
    ("gravitational force", "exerts on the object"),
    formulas=("w = m*g",),
    group="Gravitation",
)
MASS = Law(
    "Definition of mass",
    "The mass of an object is the amount of matter in it; it is the same everywhere.",
    ("amount of matter", "same everywhere"),
)
WEIGHTLESS = Law(
    "Definition of weightlessness",
    "An object is weightless when no contact force acts on it, although the gravitational force still does.",
    ("no contact force", "gravitational force still does"),
)

body_mass = Quantity("kg", 1e-3, 1e31, "Mass must be greater than zero.")
between_centres = Quantity("m", 1e-3, 1e12, "Distance must be greater than zero.")
radius = Quantity("m", 1e-2, 1e12, "Radius must be greater than zero.")
height_above = Quantity(
    "km",
    1e-3,
    1e12,
    "Only valid at or above the surface: type a height of zero or more, measured from the surface.",
    over=None,
)
pull = Quantity("N", 1e-12, 1e30, "The force between two masses is never zero. Enter its size, above zero.")
field = Quantity("m·s⁻²", 1e-3, 300, "The gravitational acceleration must be greater than zero.", typed="m/s^2")

NOT_SQUARED = "You divided by {r} only once. The force falls with the square of the distance, so divide by {r^2}."
ONLY_ONCE = "You multiplied by {r} only once. The law has the square of the distance, so multiply by {r^2}."
NOT_ADDED = "You added {m1} and {m2}. The force grows in step with each of the masses, so multiply them: {m1*m2}."
NOT_ROOTED = "You stopped at {r^2}. Take its square root: that is the distance {r}."
FIELD_FOR_CONSTANT = (
    "You put g at the surface of the Earth in the place of {G}. Take {G}, the universal gravitational constant, from"
    " the data sheet."
)
PLAIN = (
    "Any two things pull at each other. More mass on either side makes the pull bigger in step; twice as far apart"
    " makes it four times weaker."
)
TWO_BODIES = Relation(
    "F = G*m1*m2/r^2",
    what="Use Newton's law of universal gravitation",
    why="Each body attracts the other along the line through their centres, and r is measured from centre to centre.",
    plain=PLAIN,
    units={"F": "N", "m1": "kg", "m2": "kg", "r": "m"},
    quotes=(GRAVITATION.name,),
    mistakes=(
        Mistake("not-squared", "F", "G*m1*m2/r", NOT_SQUARED, "the answer is {r} times the right one"),
        Mistake("added", "F", "G*(m1 + m2)/r^2", NOT_ADDED),
        Mistake("field-for-constant", "F", "9.8*m1*m2/r^2", FIELD_FOR_CONSTANT),
        Mistake("not-squared", "m1", "F*r/(G*m2)", ONLY_ONCE),
        Mistake("field-for-constant", "m1", "F*r^2/(9.8*m2)", FIELD_FOR_CONSTANT),
        Mistake("not-squared", "m2", "F*r/(G*m1)", ONLY_ONCE),
        Mistake("field-for-constant", "m2", "F*r^2/(9.8*m1)", FIELD_FOR_CONSTANT),
        Mistake("root-omitted", "r", "G*m1*m2/F", NOT_ROOTED, "the answer is the square of the distance"),
        Mistake("added", "r", "sqrt(G*(m1 + m2)/F)", NOT_ADDED),
    ),
)

DIAMETER = "You put in the diameter. {R} is the radius, from the centre to the surface: halve the diameter."
AT_SURFACE = Relation(
    "g = G*M/R^2",
    what="Find g from the mass and the radius of the planet",
    why=(
        "At the surface the distance from the centre is R. The weight mg is the gravitational force GmM/R², and the"
        " mass m of the object cancels."
    ),
    plain="A heavier planet pulls harder; a larger one keeps you further from its middle and pulls less.",
    units={"g": "m·s⁻²", "M": "kg", "R": "m"},
    said={
        "M": Said("Find the mass of the planet from g and its radius"),
        "R": Said("Find the radius of the planet from g and its mass"),
    },
    mistakes=(
        Mistake(
            "not-squared",
            "g",
            "G*M/R",
            "You divided by {R} only once. The pull falls with the square of the distance, so divide by {R^2}.",
        ),
        Mistake("diameter", "g", "G*M/(2*R)^2", DIAMETER, "the answer is a quarter of the right one"),
        Mistake("field-for-constant", "g", "9.8*M/R^2", FIELD_FOR_CONSTANT),
        Mistake(
            "not-squared",
            "M",
            "g*R/G",
            "You multiplied by {R} only once. The formula has the square of the radius, so multiply by {R^2}.",
        ),
        Mistake("diameter", "M", "g*(2*R)^2/G", DIAMETER, "the answer is four times the right one"),
        Mistake(
            "root-omitted",
            "R",
            "G*M/g",
            "You stopped at {R^2}. Take its square root: that is the radius {R}.",
            "the answer is the square of the radius",
        ),
    ),
)
ON_EARTH = "You used g at the surface of the Earth. Use the {g} of this planet."
WEIGHED = Relation(
    "w = m*g",
    what="Weight is mass times g",
    why="g is the gravitational force on each kilogram. The mass is the same on every planet; the weight is not.",
    plain="A planet pulls on every kilogram with g newtons.",
    units={"w": "N", "m": "kg", "g": "m·s⁻²"},
    quotes=(WEIGHT.name,),
    mistakes=(
        Mistake("mass-as-weight", "w", "m", "You gave the mass. Weight is a force in newtons: multiply {m} by {g}."),
        Mistake(
            "divided",
            "w",
            "m/g",
            "You divided by {g}. The planet pulls on every kilogram with {g}, so multiply {m} by {g}.",
        ),
        Mistake("field-of-earth", "w", "9.8*m", ON_EARTH),
        Mistake(
            "multiplied",
            "m",
            "w*g",
            "You multiplied by {g}. Each kilogram has the weight {g}, so find how often {g} goes into {w}: divide.",
        ),
        Mistake("field-of-earth", "m", "w/9.8", ON_EARTH),
        Mistake(
            "upside-down",
            "g",
            "m/w",
            "You divided {m} by {w}. {g} is the force on each kilogram: divide {w} by {m}.",
        ),
    ),
)
