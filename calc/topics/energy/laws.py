"""The laws of the chapter on energy, as a memo and a data sheet have them."""

from calc.model.answers import Law

CONSERVED = Law(
    "Conservation of mechanical energy",
    "The total mechanical energy of an isolated system remains constant.",
    ("total mechanical energy", "isolated system", "constant"),
    formulas=("E_k = 1/2*m*v^2", "E_p = m*g*h", "E_s = 1/2*k*x^2"),
    group="Energy",
)
