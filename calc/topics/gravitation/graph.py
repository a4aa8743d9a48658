"""A graph of the gravitational force against 1/r² is read: its gradient G M m, the mass of the planet, other forces.

F = G M m × (1/r²): a straight line through the origin (data-sheet equation). Mistakes and marks: common practice, no
source.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import cast

from calc.figures import Figure, GraphLine, graph
from calc.figures.graph_marks import Key
from calc.model.answers import Point
from calc.model.questions import SA, Check, Data, Mistake, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.gravitation.laws import GRAVITATION, PLAIN, between_centres, body_mass, pull
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import boxes, state

READ = 0.05  # of a force that is read off the line. Common practice, no source.
inverse_square = Quantity("m⁻²", 1e-24, 1e4, "A place on the axis of 1/r² is greater than zero: give that of P.")
STRAIGHT = Part(
    "straight",
    "explain",
    "Explain why the graph is a straight line, and why it points towards the origin.",
    points=(
        Point("F = GMm × (1/r²), and GMm does not change: F is directly proportional to 1/r².", 1, ("proportional",)),
        Point("Further away both 1/r² and F come nearer to zero.", 1, ("zero",)),
    ),
)
GRADIENT = Relation(
    "k_F = F_P/x_P",
    what="The gradient of the line through the origin and P",
    why="The line begins at the origin, so its gradient is the force at P divided by 1/r² at P.",
    plain="Steepness is how far up for each step to the right.",
    units={"k_F": "N·m²"},
    mistakes=(
        Mistake(
            "upside-down",
            "k_F",
            "x_P/F_P",
            "You divided the other way round. The gradient is the change in force for each step along: divide {F_P} by"
            " {x_P}.",
        ),
        Mistake("multiplied", "k_F", "F_P*x_P", "You multiplied. The gradient is a quotient: divide {F_P} by {x_P}."),
    ),
)
MASS = Relation(
    "k_F = G*M*m",
    what="What the gradient stands for",
    why="F = GMm × (1/r²) has the form y = kx, so the gradient is GMm.",
    plain="The steepness holds G and both masses; divide by what is known, and the other mass is left.",
    units={"M": "kg"},
    quotes=(GRAVITATION.name,),
    mistakes=(
        Mistake(
            "other-mass-forgotten",
            "M",
            "k_F/G",
            "You left out the mass of the probe. The gradient holds both masses: divide by {m} as well.",
        ),
        Mistake(
            "constant-forgotten",
            "M",
            "k_F/m",
            "You left out {G}. The gradient holds it as well: divide by {G}.",
        ),
    ),
)
PLACE = Relation(
    "x_P = 1/r_P^2",
    what="How far from the centre it was at P",
    why="The axis is 1/r². Turn it upside down, then take the square root.",
    plain="The axis was chosen so that the curve becomes a straight line; this goes back to the distance.",
    units={"r_P": "m"},
    mistakes=(
        Mistake("root-omitted", "r_P", "1/x_P", "You stopped at {r_P^2}. Take its square root: that is {r_P}."),
        Mistake(
            "not-inverted", "r_P", "sqrt(x_P)", "The axis is {1/r_P^2}, and you took its root alone: divide 1 by it."
        ),
    ),
)
OTHER = Relation(
    "F_2 = k_F*(1/r_2^2)",
    what="The force at the other distance",
    why="Find 1/r² on the axis, go up to the line and across; or multiply the gradient by 1/r².",
    plain=PLAIN,
    units={"F_2": "N"},
    marks=SA,
    mistakes=(
        Mistake(
            "not-squared",
            "F_2",
            "k_F/r_2",
            "You divided by the distance itself. The axis is 1/r²: square {r_2} first, then divide by it.",
        ),
    ),
)
HEAVIER = Part(
    "heavier",
    "draw",
    "On the same axes draw the line for a probe of twice the mass.",
    points=(
        Point("A straight line that points towards the origin as well.", 1, ("towards the origin",)),
        Point("It is twice as steep: at each place the force is doubled.", 1, ("twice as steep",)),
    ),
)
BOXES = (
    inverse_square("x_P", "1/r² at the point P", "", "4 x 10^-14 m^-2", unit="m⁻²"),
    pull("F_P", "Force at the point P", "", "600 N"),
    body_mass("m", "Mass of the probe", "", "250 kg; 150 450; 125 640"),
    between_centres("r_2", "Another distance from the centre", "", "8 x 10^6 m"),
)


def lines(v: Values) -> tuple[float, float]:
    """The gradient, and how far along the axis the line is drawn."""
    return v["F_P"] / v["x_P"], 1.1 * max(v["x_P"], 1 / v["r_2"] ** 2)


def scene(v: Values) -> Figure:
    """The graph that is read."""
    steep, end = lines(v)
    return graph(
        "1/r^2 (m^{-2})",
        "F (N)",
        [GraphLine([(0.0, 0.0), (end, steep * end)])],
        keys=[Key(v["x_P"], v["F_P"], "P")],
        title="Gravitational force against 1/r²",
        description="Graph of F against 1/r²: a straight line from the origin through P.",
    )


def both(v: Values) -> Figure:
    """The line and that of twice the mass."""
    steep, end = lines(v)
    return graph(
        "1/r^2 (m^{-2})",
        "F (N)",
        [
            GraphLine([(0.0, 0.0), (end, steep * end)], "m"),
            GraphLine([(0.0, 0.0), (end, 2 * steep * end)], "2m"),
        ],
        title="The lines of both probes",
    )


def plan(data: Data) -> Plan:
    """State, why straight, gradient, mass of the planet, the distance at P, another force, a heavier probe."""
    said = data.said
    opening = data.pick(
        "A probe moves away from a planet, and a sensor notes the force with which the planet attracts it.",
        "For a school project the gravitational force of a planet on a probe is worked out at many places of its path.",
        "On its way to a planet the gravitational force on a probe is measured again and again.",
    )
    return Plan(
        story=(
            f"{opening} The probe has a mass of {said['m']}. Plotted against 1/r², where r is the distance from the"
            " centre of the planet, the forces lie on a straight line that points towards the origin and passes through"
            f" P ({said['x_P']}; {said['F_P']})."
        ),
        parts=(
            state(GRAVITATION),
            STRAIGHT,
            Part("gradient", "calculate", "Calculate the gradient of the line.", (GRADIENT.step("k_F"),)),
            Part("mass", "calculate", "Calculate the mass of the planet from the gradient.", (MASS.step("M"),)),
            Part(
                "place",
                "calculate",
                "Calculate how far from the centre it was at P.",
                (PLACE.step("r_P"),),
            ),
            Part(
                "read",
                "calculate",
                f"Read from the line, or calculate, the force when the probe is {said['r_2']} from the centre.",
                (replace(OTHER.step("F_2"), read_off=READ),),
            ),
            replace(HEAVIER, figure=both),
        ),
        values=dict(data.values),
        scene=scene,
        checks=(
            Check("The force at P straight from the law", "F_P = G*M*m/r_P^2"),
            Check("The two forces by the ratio of the distances", "F_2/F_P = (r_P/r_2)^2"),
        ),
        notes=("The gradient is the same at every place of the line; one point far out on it is enough.",),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """A planet, a place of P, and another distance further in or out."""
    draw = cast(Random, random)
    mass = float(str(typed["m"]).split()[0].replace(",", "."))
    planet = draw.choice((4e23, 9e23, 2e24, 5e24) if level == 1 else (3.3e23, 7.4e23, 1.8e24, 6.6e24))
    r = draw.choice((4e6, 5e6, 8e6, 1e7) if level == 1 else (4.4e6, 6.5e6, 9.2e6, 1.3e7))
    other = r * draw.choice((0.8, 1.25, 1.5, 2) if level == 1 else (0.85, 1.3, 1.6, 1.9))
    x = float(f"{1 / r**2:.2g}")
    force = float(f"{6.67e-11 * planet * mass * x:.3g}")
    return {**typed, "x_P": power(x, "m^-2"), "F_P": f"{force:g} N".replace(".", ","), "r_2": power(other, "m")}


def power(value: float, unit: str) -> str:
    """A number as a learner types it, with its power of ten."""
    digits, _, exponent = f"{value:.2e}".partition("e")
    return f"{float(digits):g} x 10^{int(exponent)} {unit}".replace(".", ",")


GRAPH = Question(
    key="graph",
    title="Read from a graph of force",
    **boxes(*BOXES),
    plan=plan,
    constants=("G",),
    laws=(GRAVITATION.name,),
    adjust=practise,
    scenario=True,
    since=5,
)
