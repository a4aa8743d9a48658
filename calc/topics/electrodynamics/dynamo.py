"""A whole question across chapters: a dynamo charges two plates, and their field holds or moves a speck of dust.

The set-up and its numbers are our own. ε_max = 2πfNBA, E = V/d, F = qE, F_net = ma. Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.plates import plates_scene
from calc.model.answers import Point
from calc.model.questions import Check, Data, Mistake, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.electric_field.laws import PER_CHARGE, PLATES
from calc.topics.electrodynamics.laws import FARADAY, GENERATOR, area, magnetic_field, turns
from calc.topics.electrodynamics.peak import LARGEST, REVOLUTIONS, revolutions
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import boxes, state

CHARGED = Relation(
    "V = epsilon_max",
    what="The plates charge up to the largest emf",
    why=(
        "The diode lets charge flow to the plates but not back, until their potential difference equals the largest"
        " emf."
    ),
    plain="Like a valve: what was pumped in at the highest push stays in.",
    units={"V": "V"},
    marks=(),
)
MOVED = Relation(
    "F = m*a",
    what="Newton's second law, along the field",
    why="Along the field only the electrostatic force acts; the weight acts at right angles to it.",
    plain="The same push moves a light speck more.",
    units={"a": "m·s⁻²"},
    mistakes=(
        Mistake("multiplied", "a", "F*m", "You multiplied. A larger mass is moved less: divide {F} by {m}."),
        Mistake("upside-down", "a", "m/F", "You turned the fraction over. Divide the force by the mass: {F/m}."),
    ),
)
DIODE = Part(
    "diode",
    "explain",
    "Why is a diode needed to charge the plates with this generator?",
    points=(
        Point("The emf of the generator alternates, so the current would flow to and fro.", 1, ("alternates",)),
        Point(
            "The diode lets it flow in one direction only, and the charge stays on the plates.", 1, ("one direction",)
        ),
    ),
)
FASTER = Part(
    "faster",
    "explain",
    "The dynamo is turned twice as fast. By what factor does the acceleration of the speck become larger? Give"
    " reasons.",
    points=(
        Point("Twice the speed gives twice the largest emf and potential difference.", 1, ("twice the largest",)),
        Point("The field and the force double with it (E = V/d, F = qE).", 1, ("double",)),
        Point("So the acceleration becomes twice as large.", 1, ("twice as large",)),
    ),
)
speck_mass = Quantity("kg", 1e-12, 1e-2, "Mass must be greater than zero.")
plate_gap = Quantity("m", 1e-4, 1, "Distance must be greater than zero.")
carried = Quantity("pC", 1e-15, 1e-6, "Give the size of the charge, above zero.")
BOXES = (
    turns("N", "Number of turns", "", "400; 300 400 500; 350 450 620"),
    magnetic_field("B", "Magnetic field", "", "0,3 T; 0,2 0,3 0,4; 0,25 0,35"),
    area("A", "Area of the coil", "", "40 cm^2; 30 40 50; 35 45", unit="cm²"),
    revolutions("n", "Turns in a minute", "", "1800; 1200 1500 1800; 1350 2100"),
    plate_gap("d", "Distance between the plates", "", "5 mm; 4 5 8; 3,5 6,5", unit="mm"),
    carried("q", "Charge of the speck", "", "20 pC; 10 20 40; 15 35", unit="pC"),
    speck_mass("m", "Mass of the speck", "", "5 mg; 2 4 5; 1,5 3,5", unit="mg"),
)


def scene(v: Values) -> Figure:
    """The upright plates and the speck."""
    return plates_scene(upright=True, upper_sign="+", lines=4, particle="q", particle_sign="+")


def plan(data: Data) -> Plan:
    """State, largest emf, diode, field, force, acceleration, twice the speed."""
    said = data.said
    coil = (
        f"Its coil has {said['N']} turns of {said['A']} in a field of {said['B']} and turns {said['n']} times a minute."
    )
    rest = (
        f" Through a diode it charges two upright parallel plates, {said['d']} apart. A positive speck of dust between"
        f" them has a charge of {said['q']} and a mass of {said['m']}."
    )
    return Plan(
        story=data.pick(
            f"A bicycle wheel drives a small AC generator. {coil}{rest}",
            f"A learner turns the crank of a small AC generator. {coil}{rest}",
            f"A wind wheel on a model house drives a small AC generator. {coil}{rest}",
        ),
        parts=(
            state(FARADAY),
            Part(
                "largest",
                "calculate",
                "Calculate the largest emf of the generator.",
                (REVOLUTIONS.step("f"), LARGEST.step("epsilon_max")),
            ),
            DIODE,
            Part(
                "field",
                "calculate",
                "The plates charge up to the largest emf. Calculate the size of the electric field between them.",
                (CHARGED.step("V"), PLATES.step("E")),
            ),
            Part(
                "force",
                "calculate",
                "Calculate the size of the electrostatic force on the speck.",
                (PER_CHARGE.step("F"),),
            ),
            Part(
                "acceleration",
                "calculate",
                "Calculate the size of the acceleration that this force alone gives the speck.",
                (MOVED.step("a"),),
            ),
            FASTER,
        ),
        values=dict(data.values),
        scene=scene,
        checks=(Check("All in one line", "a = q*2*pi*n*N*B*A/(60*d*m)"),),
        notes=("Air resistance and the edges of the plates are left out.",),
    )


DYNAMO = Question(
    "dynamo",
    "A dynamo charges two plates",
    plan=plan,
    **boxes(*BOXES),
    laws=(FARADAY.name, GENERATOR.name),
    scenario=True,
    since=6,
)
