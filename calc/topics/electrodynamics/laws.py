"""The laws of electrodynamics, and its quantities.

Φ = BA cos θ, ε = −N ΔΦ/Δt, V_rms = V_max/√2, P_av = V_rms I_rms: data-sheet equations; ε_max = 2πfNBA follows for a
coil that turns steadily. Wordings, ranges, refusals and marks: common practice, no source.
"""

from __future__ import annotations

from calc.model.answers import Law
from calc.topics.shared.quantities import Quantity

GROUP = "Electrodynamics"
FLUX = Law(
    "Definition of magnetic flux",
    "The magnetic flux through a coil is the product of its area and the component of the magnetic field at right"
    " angles to it.",
    ("area", "component of the magnetic field at right angles"),
    formulas=("Phi = B*A*cos(theta)",),
    group=GROUP,
)
FARADAY = Law(
    "Faraday's law of electromagnetic induction",
    "The magnitude of the induced emf is directly proportional to the rate of change of magnetic flux linkage.",
    ("directly proportional", "rate of change of magnetic flux linkage"),
    formulas=("epsilon = -N*DeltaPhi/Deltat",),
    group=GROUP,
)
LENZ = Law(
    "Lenz's law",
    "An induced current flows in such a direction that its magnetic field opposes the change in magnetic flux that"
    " causes it.",
    ("opposes the change",),
)
ROOT_MEAN_SQUARE = Law(
    "Definition of the rms value",
    "The rms value of an alternating voltage or current is the direct value that dissipates energy at the same rate in"
    " the same resistor.",
    ("direct value", "same rate", "same resistor"),
    formulas=("V_rms = V_max/sqrt(2)", "I_rms = I_max/sqrt(2)", "P_av = V_rms*I_rms"),
    group=GROUP,
)
GENERATOR = Law(
    "Principle of a generator",
    "A generator converts mechanical energy into electrical energy: the flux through its turning coil changes, and an"
    " emf is induced.",
    ("mechanical energy into electrical energy", "induced"),
)
MOTOR = Law(
    "Principle of an electric motor",
    "An electric motor converts electrical energy into mechanical energy: a magnetic field exerts forces on its coil"
    " while a current flows in it.",
    ("electrical energy into mechanical energy", "exerts forces"),
)

turns = Quantity("", 1, 1e4, "Turns are counted: type a whole number, 1 or more.", whole=True)
flux = Quantity("Wb", 1e-6, 1, signed=True, help="with its sign")
magnetic_field = Quantity("T", 1e-5, 5, "A field strength is never negative: type its size.", over=None)
area = Quantity("m²", 1e-5, 1, "Area must be greater than zero.", typed="m^2")
radius = Quantity("m", 1e-3, 1, "Radius must be greater than zero.")
diameter = Quantity("m", 2e-3, 2, "Diameter must be greater than zero.")
side = Quantity("m", 1e-3, 2, "A side must be longer than zero.")
from_normal = Quantity(
    "°",
    0.1,
    180,
    "The angle with the normal lies from 0° to 180°.",
    over=None,
    under=180.0001,
    help="between field and normal",
)
from_plane = Quantity(
    "°",
    0.1,
    90,
    "The angle with the plane lies from 0° to 90°.",
    over=None,
    under=90.0001,
    help="between field and coil",
)
change_time = Quantity("s", 1e-3, 60, "Change needs time: type a time greater than zero.")
emf = Quantity("V", 1e-6, 5e4, "An emf is given by its size: leave the minus sign out.", over=None)
frequency = Quantity("Hz", 1, 400, "Frequency must be greater than zero.")
