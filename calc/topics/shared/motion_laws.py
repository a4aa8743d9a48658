"""Newton's laws and the forces of surfaces in words, as a memo and a data sheet have them."""

from calc.model.answers import Law

FORCE = "Force"
FIRST = Law(
    "Newton's first law",
    "A body remains at rest or moves at constant velocity unless a non-zero net (resultant) force acts on it.",
    ("at rest", "constant velocity", "non-zero net"),
)
SECOND = Law(
    "Newton's second law",
    "When a net force acts on a body, the body accelerates in the direction of the net force; the acceleration is "
    "directly proportional to the net force and inversely proportional to the mass of the body.",
    ("directly proportional to the net force", "inversely proportional to the mass of the body"),
    formulas=("F_net = m*a",),
    group=FORCE,
)
THIRD = Law(
    "Newton's third law",
    "When body A exerts a force on body B, body B simultaneously exerts a force on body A that is equal in magnitude"
    " and opposite in direction.",
    ("simultaneously", "equal in magnitude", "opposite in direction"),
)
EQUILIBRIUM = Law(
    "Equilibrium",
    "A body is in equilibrium when the net force on it is zero.",
    ("net force", "zero"),
)
NORMAL = Law(
    "Definition of the normal force",
    "The normal force is the force that a surface exerts on a body that touches it, perpendicular to the surface.",
    ("surface exerts", "perpendicular to the surface"),
)
FRICTION = Law(
    "Definition of friction",
    "Friction is the force, parallel to a surface, that opposes the motion of a body, or its tendency to move, relative"
    " to the surface.",
    ("parallel to a surface", "opposes the motion", "tendency"),
)
STATIC = Law(
    "Definition of the maximum static friction",
    "Static friction acts on a body at rest relative to the surface; it can have any size up to a maximum, the"
    " coefficient of static friction times the normal force.",
    ("at rest relative to the surface", "maximum", "coefficient of static friction times the normal force"),
    formulas=("f_smax = mu_s*N",),
    group=FORCE,
)
KINETIC = Law(
    "Definition of kinetic friction",
    "Kinetic friction acts on a body that slides on a surface; its size is the coefficient of kinetic friction times"
    " the normal force.",
    ("slides", "coefficient of kinetic friction times the normal force"),
    formulas=("f_k = mu_k*N",),
    group=FORCE,
)
# In plain words, wherever static friction holds something.
PLAIN_STATIC = "Friction holds against a push exactly as hard as it is pushed, up to its limit."
