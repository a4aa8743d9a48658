"""The laws of the chapter on work, energy and power, as a memo and a data sheet have them."""

from calc.model.answers import Law
from calc.topics.shared.work import WORK_ENERGY

THEOREM = WORK_ENERGY
GROUP = THEOREM.group
WORK = Law(
    "Definition of work",
    "The work done on a body by a constant force is the product of the force, the displacement and the cosine of the"
    " angle between the force and the displacement.",
    ("force", "displacement", "cosine of the angle between the force and the displacement"),
    formulas=("W = F*Deltax*cos(theta)",),
    group=GROUP,
)
CONSERVATIVE = Law(
    "Definition of a conservative force",
    "A force is conservative when the work it does in moving a body between two points is independent of the path"
    " taken.",
    ("work", "independent of the path"),
)
NON_CONSERVATIVE = Law(
    "Definition of a non-conservative force",
    "A force is non-conservative when the work it does in moving a body between two points depends on the path taken.",
    ("work", "depends on the path"),
    formulas=("W_nc = DeltaE_k + DeltaE_p",),
    group=GROUP,
)
CONSERVED = Law(
    "Conservation of mechanical energy",
    "The total mechanical energy of an isolated system remains constant.",
    ("total mechanical energy", "isolated system", "constant"),
    formulas=("E_k = 1/2*m*v^2", "E_p = m*g*h", "E_s = 1/2*k*x^2"),
    group=GROUP,
)
POWER = Law(
    "Definition of power",
    "Power is the rate at which work is done or energy is transferred.",
    ("rate at which work is done",),
    formulas=("P = W/Deltat", "P_av = F*v_av"),
    group=GROUP,
)
