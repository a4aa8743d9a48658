"""A whole question across chapters: a ball falls, bounces and rises; energy lost, impulse and force of the floor.

The story and its numbers are our own. Upwards is positive for momentum. Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Arrow, Dimension, Figure, Force, Segment, Surface, free_body_diagram
from calc.figures.bodies import Ball
from calc.figures.pieces import Item
from calc.figures.telling import composed
from calc.model.answers import Point
from calc.model.directions import UP_DOWN
from calc.model.questions import SA, Check, Data, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.energy.laws import CONSERVED
from calc.topics.shared.quantities import height, mass, time
from calc.working.declaring import Mistake, boxes, state

HIGHER = "It cannot bounce higher than it fell: that would need energy from nowhere. Make the second height smaller."
NO_SIGN = "A speed has no sign: it is dropped."
HALF = (
    "You lost the ½. Kinetic energy is half the mass times the square of the speed: multiply {%s} by 2 under the root."
)
ROOT = "You stopped at {%s^2}. Take its square root: that is the speed {%s}."


def speed_step(name: str, fallen: str, what: str, why: str, other: str) -> Relation:
    """The speed at the floor that belongs to a height."""
    return Relation(
        f"m*g*{fallen} = 1/2*m*{name}^2",
        what=what,
        why=why,
        plain="Height and speed are two forms of the same energy.",
        units={name: "m·s⁻¹"},
        quotes=(CONSERVED.name,),
        dropped={name: NO_SIGN},
        mistakes=(
            Mistake("half-lost", name, f"sqrt(g*{fallen})", HALF % f"g*{fallen}"),
            Mistake("root-lost", name, f"2*g*{fallen}", ROOT % (name, name), "the answer is the square of the speed"),
            Mistake(
                "other-height",
                name,
                f"sqrt(2*g*{other})",
                f"You took the other height. This speed belongs to {{{fallen}}}: use it for {{{name}}}.",
            ),
        ),
    )


ARRIVES = speed_step(
    "v1",
    "h1",
    "Mechanical energy at the first height equals mechanical energy at the floor",
    "Only the weight does work while it falls from rest. Heights are measured from the floor.",
    "h2",
)
LEAVES = speed_step(
    "v2",
    "h2",
    "Mechanical energy at the second height equals mechanical energy at the floor",
    "Only the weight does work while it rises to rest. Heights are measured from the floor.",
    "h1",
)
LOST = Relation(
    "E_lost = 1/2*m*v1^2 - 1/2*m*v2^2",
    what="Kinetic energy before the bounce less kinetic energy after it",
    why="The mechanical energy changes only while ball and floor touch, and there the height is zero both times.",
    plain="What does not come back as height has become heat and sound.",
    units={"E_lost": "J"},
    mistakes=(
        Mistake(
            "difference-squared",
            "E_lost",
            "1/2*m*(v1 - v2)^2",
            "You squared the difference of the speeds. Square {v1} and {v2} first, then subtract.",
        ),
        Mistake(
            "half-lost", "E_lost", "m*v1^2 - m*v2^2", "You lost the ½. Kinetic energy is {1/2*m*v1^2}: halve {E_lost}."
        ),
    ),
)
PUSH = Relation(
    "F_net*Deltat = m*v2 + m*v1",
    what="Impulse equals change in momentum",
    why=(
        "Upwards is positive: the momentum is mv₂ after and −mv₁ before. Final minus initial, so the sizes add up. The"
        " net force points upwards."
    ),
    plain="The floor has to stop the ball and throw it back: two jobs.",
    units={"F_net": "N"},
    directions={"F_net": UP_DOWN.of("up")},
    mistakes=(
        Mistake(
            "sizes-subtracted",
            "F_net",
            "m*(v1 - v2)/Deltat",
            "You subtracted the sizes. The ball turns round: put each momentum in with its sign, and the sizes add up.",
        ),
        Mistake(
            "final-alone",
            "F_net",
            "m*v2/Deltat",
            "You used the momentum afterwards alone. Impulse is the change in momentum: add {m*v1}.",
        ),
    ),
)
CARRIES = Relation(
    "N = F_net + m*g",
    what="The floor makes the net force and carries the weight",
    why="Two forces act: N upwards and the weight downwards. The net force is N less the weight.",
    plain="While it throws the ball back, the floor also holds it up.",
    units={"N": "N"},
    marks=SA,
    directions={"N": UP_DOWN.of("up")},
    mistakes=(
        Mistake(
            "weight-left-out", "N", "F_net", "You left the weight out. {N} must also carry it: add {m*g} to {F_net}."
        ),
        Mistake(
            "weight-subtracted",
            "N",
            "F_net - m*g",
            "You subtracted the weight. {N} makes {F_net} and must also carry the weight: add {m*g}.",
        ),
    ),
)
SOFTER = Part(
    "softer",
    "explain",
    "The ball falls from the same height on a soft mat and rises as high as before, but the contact lasts longer."
    " Explain how the force of the mat compares with that of the floor.",
    points=(
        Point("The speeds before and after are the same, so the change in momentum is the same.", 1, ("is the same",)),
        Point(
            "Net force is change in momentum divided by time: over a longer time it is smaller.", 1, ("longer time",)
        ),
        Point("So the force of the mat is smaller.", 1, ("smaller",)),
    ),
)
FORCES = Part(
    "draw",
    "draw",
    "Draw a labelled free-body diagram of the ball while it touches the floor.",
    points=(
        Point("Force of the floor N, upwards, the longer arrow.", 1, ("upwards",)),
        Point("Weight w, downwards.", 1, ("downwards",)),
    ),
    figure=lambda v: free_body_diagram(
        [Force("N", v["N"], 90.0), Force("w", v["m"] * v["g"], 270.0, ("m",))],
        title="Forces on the ball while it touches the floor",
    ),
)
QUANTITIES = (
    mass("m", "Mass of the ball", "", "450 g; 300 400 500 600; 350 420 550"),
    height("h1", "Height from which it falls", "", "2,2 m; 1,5 2 2,5; 1,4 1,9 2,3"),
    height("h2", "Height to which it rises", "", "1,4 m; 0,8 1 1,2; 0,7 0,9 1,1"),
    time("Deltat", "Time of contact", "", "0,12 s; 0,1 0,15 0,2; 0,11 0,14 0,18"),
)


def verdict(data: Data) -> Part:
    """Whether the bounce is elastic, and where the energy is."""
    if data.values["h1"] == data.values["h2"]:
        points: tuple[Point, ...] = (
            Point("The kinetic energy is the same before and after, so it is elastic.", 1, ("the same", "elastic")),
            Point("No mechanical energy has become heat or sound.", 1, ("no mechanical energy",)),
        )
    else:
        points = (
            Point("The kinetic energy is less after than before, so it is inelastic.", 1, ("less", "inelastic")),
            Point("The rest has become heat and sound in ball and floor.", 1, ("heat",)),
        )
    return Part(
        "elastic",
        "explain",
        "Is the collision with the floor elastic? Give a reason, and say what has become of the mechanical energy.",
        points=points,
    )


def plan(data: Data) -> Plan:
    """State, speeds before and after, energy, elastic or not, diagram, forces, a softer floor."""
    if data.values["h2"] > data.values["h1"]:
        raise Refusal("h2", HIGHER)
    said = data.said
    return Plan(
        story=data.pick(
            f"A soft ball of {said['m']} falls from rest, {said['h1']} above a wooden floor, and rises to {said['h2']}"
            f" after the bounce. It touches the floor for {said['Deltat']}.",
            f"In a test a soft ball of {said['m']} is let go {said['h1']} above a stone floor. A camera shows that it"
            f" comes up to {said['h2']} and that the contact lasts {said['Deltat']}.",
            f"A child lets a soft ball of {said['m']} fall from a window sill {said['h1']} above a level floor. It"
            f" bounces up to {said['h2']}; ball and floor touch for {said['Deltat']}.",
        )
        + " Air resistance is left out.",
        parts=(
            state(CONSERVED),
            Part(
                "before", "calculate", "Calculate the speed of the ball just before the bounce.", (ARRIVES.step("v1"),)
            ),
            Part("after", "calculate", "Calculate the speed of the ball just after the bounce.", (LEAVES.step("v2"),)),
            Part(
                "lost",
                "calculate",
                "Calculate the size of the change in kinetic energy in the bounce.",
                (LOST.step("E_lost"),),
            ),
            verdict(data),
            FORCES,
            Part(
                "force",
                "calculate",
                "Calculate the average force that the floor exerts on the ball.",
                (PUSH.step("F_net"), CARRIES.step("N")),
            ),
            SOFTER,
        ),
        values=dict(data.values),
        scene=scene,
        checks=(
            Check("The same loss by the heights", "E_lost = m*g*h1 - m*g*h2"),
            Check("By the equations of motion: the time of the fall gives the same speed", "v1 = g*sqrt(2*h1/g)"),
        ),
        notes=("The ball pushes the floor downwards with a force as large as N.",),
    )


def scene(v: Values) -> Figure:
    """Both heights above the floor; not to scale, but the second not above the first."""
    low = 6.0 if v["h1"] == v["h2"] else 4.2
    items: list[Item] = [
        Surface((-4.5, 0.0), (7.5, 0.0)),
        Ball((-1.5, 6.7), 0.7),
        Ball((4.0, low + 0.7), 0.7),
        Segment((-1.5, 6.0), (-1.5, 0.0), "guide"),
        Segment((4.0, low), (4.0, 0.0), "guide"),
        Arrow((-0.2, 4.6), (-0.2, 2.4), "", "velocity"),
        Arrow((2.7, 1.4), (2.7, 3.6), "", "velocity"),
        Dimension((-3.4, 0.0), (-3.4, 6.0), "h_1", 0.0, 0.0),
        Dimension((6.2, 0.0), (6.2, low), "h_2", 0.0, 0.0),
    ]
    return composed(
        "A ball before and after a bounce",
        items,
        opening=(
            "On the left a ball falls from the first height to the floor; on the right it rises to the second height."
        ),
        notes=("Not to scale.",),
    )


REBOUND = Question(
    key="rebound",
    title="A bounce: energy and force",
    plan=plan,
    **boxes(*QUANTITIES),
    constants=("g",),
    laws=(CONSERVED.name,),
    scenario=True,
    since=4,
)
