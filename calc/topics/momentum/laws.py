"""The laws of the chapter on momentum, as a memo and a data sheet have them."""

from calc.model.answers import Law

MOMENTUM = Law(
    "Conservation of linear momentum",
    "The total linear momentum of an isolated system remains constant.",
    ("total linear momentum", "isolated system", "constant"),
    formulas=("p = m*v",),
    group="Momentum",
)
