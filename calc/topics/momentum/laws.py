"""The laws of the chapter on momentum, as a memo and a data sheet have them."""

from calc.model.answers import Law

MOMENTUM = Law(
    "Conservation of linear momentum",
    "The total linear momentum of an isolated system remains constant.",
    ("total linear momentum", "isolated system", "constant"),
    formulas=("p = m*v",),
    group="Momentum",
)
PRODUCT = Law(
    "Definition of momentum",
    "The momentum of a body is the product of its mass and its velocity.",
    ("product", "mass", "velocity"),
)
ISOLATED = Law(
    "Definition of an isolated system",
    "A system is isolated when the net external force on it is zero.",
    ("net external force", "zero"),
)
RATE = Law(
    "Newton's second law in terms of momentum",
    "The net force on a body is equal to the rate of change of its momentum, in the direction of the net force.",
    ("rate of change of its momentum", "in the direction"),
    formulas=("F_net = Deltap/Deltat",),
    group="Momentum",
)
IMPULSE = Law(
    "Definition of impulse",
    "Impulse is the product of the net force on a body and the time for which it acts.",
    ("product", "net force", "time"),
    formulas=("F_net*Deltat = Deltap", "Deltap = m*v - m*u"),
    group="Momentum",
)
ELASTIC = Law(
    "Definition of an elastic collision",
    "A collision is elastic when the total kinetic energy of the bodies is the same before and after.",
    ("total kinetic energy", "same before and after"),
    formulas=("E_k = 1/2*m*v^2",),
    group="Momentum",
)
