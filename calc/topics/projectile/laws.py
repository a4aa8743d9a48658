"""The laws of the chapter on vertical projectile motion, as a memo and a data sheet have them."""

from calc.model.answers import Law

FREE_FALL = Law(
    "Definition of free fall",
    "A body is in free fall when the gravitational force is the only force that acts on it.",
    ("gravitational force", "only force"),
)
DOWNWARDS = Law(
    "Direction of the acceleration in free fall",
    "In free fall the acceleration is g, downwards, all the way: while the body rises, at its highest point and while"
    " it falls.",
    ("downwards", "at its highest point"),
)
EQUATIONS = Law(
    "Equations of motion",
    "When the acceleration is constant, the velocity changes by the same amount in every second.",
    ("acceleration is constant", "same amount in every second"),
    formulas=(
        "v = u + a*t",
        "Deltay = u*t + 1/2*a*t^2",
        "v^2 = u^2 + 2*a*Deltay",
        "Deltay = 1/2*(u + v)*t",
    ),
    group="Motion",
)
