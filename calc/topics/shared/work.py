"""The work-energy theorem, which mechanics and the electric field both state."""

from calc.model.answers import Law

WORK_ENERGY = Law(
    "Work-energy theorem",
    "The net work done on a body is equal to the change in the kinetic energy of the body.",
    ("net work", "change in the kinetic energy"),
    formulas=("E_k = 1/2*m*v^2", "W_net = DeltaE_k"),
    group="Work and energy",
)
