"""A whole question across chapters: a ball is caught by a trolley, momentum; then both climb a slope, energy.

The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from math import degrees

from calc.figures import Arrow, Figure, Surface
from calc.figures.bodies import Ball, Slope, Trolley
from calc.figures.pieces import Item
from calc.figures.telling import composed
from calc.model.answers import Mark, Point
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import Check, Data, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.energy.laws import CONSERVED, THEOREM
from calc.topics.shared.quantities import force, mass, slope_angle, speed
from calc.working.declaring import Mistake, boxes, state

CAUGHT = Relation(
    "m1*u = (m1 + m2)*v",
    what="Total momentum before equals total momentum after the catch",
    why="No net external force acts along the level track while the ball is caught. To the right is positive.",
    plain="What the ball brings in motion, ball and trolley have together afterwards.",
    units={"v": "m·s⁻¹"},
    marks=(Mark("formula"), Mark("substitution"), Mark("answer")),
    directions={"v": LEFT_RIGHT.of("right")},
    mistakes=(
        Mistake(
            "ball-left-out",
            "v",
            "m1*u/m2",
            "You divided by the mass of the trolley alone. They move on as one body: divide by {m1 + m2}.",
        ),
        Mistake(
            "energy-kept",
            "v",
            "sqrt(m1*u^2/(m1 + m2))",
            "You kept the kinetic energy the same. In a catch it is not conserved: use the momentum.",
        ),
    ),
)
BEFORE = Relation(
    "SigmaE_k = 1/2*m1*u^2",
    what="Total kinetic energy before the catch",
    why="Before the catch only the ball moves.",
    plain="The energy of motion that the ball brings.",
    units={"SigmaE_k": "J"},
    marks=(Mark("formula"), Mark("answer")),
    mistakes=(
        Mistake(
            "not-squared",
            "SigmaE_k",
            "1/2*m1*u",
            "You did not square the speed. Kinetic energy is half the mass times the square of the speed: use {u^2}.",
        ),
    ),
)
AFTER = Relation(
    "SigmaE_k_after = 1/2*(m1 + m2)*v^2",
    what="Total kinetic energy after the catch",
    why="After the catch ball and trolley move together.",
    plain="The energy of motion that both have together.",
    units={"SigmaE_k_after": "J"},
    marks=(Mark("answer"),),
    mistakes=(
        Mistake(
            "trolley-alone",
            "SigmaE_k_after",
            "1/2*m2*v^2",
            "You left the ball out. Both move together with {v}: use {m1 + m2}.",
        ),
    ),
)
CLIMB = Relation(
    "-((m1 + m2)*g*sin(theta) + f)*L = 0 - 1/2*(m1 + m2)*v^2",
    what="Net work on the slope equals the change in kinetic energy",
    why=(
        "Going up, the component of the weight and friction both act against the motion: their work is negative. At the"
        " highest point they are at rest."
    ),
    plain="The hill and the rubbing take all the energy of motion, metre by metre.",
    units={"L": "m"},
    quotes=(THEOREM.name,),
    marks=(Mark("formula"), Mark("substitution", 2), Mark("answer")),
    mistakes=(
        Mistake(
            "friction-left-out",
            "L",
            "v^2/(2*g*sin(theta))",
            "You left friction out. It takes energy as well: add {f} to {(m1 + m2)*g*sin(theta)}.",
        ),
        Mistake(
            "length-as-height",
            "L",
            "(m1 + m2)*v^2/(2*((m1 + m2)*g + f))",
            "You used {L} as the height. The height is {L*sin(theta)}: put the sine in.",
        ),
        Mistake(
            "half-lost",
            "L",
            "(m1 + m2)*v^2/((m1 + m2)*g*sin(theta) + f)",
            "You lost the ½. Kinetic energy is {1/2*(m1 + m2)*v^2}: halve your answer for {L}.",
        ),
    ),
)
WHY = Part(
    "why",
    "explain",
    "Is the catch elastic? Give a reason with your answers above.",
    points=(
        Point("The total kinetic energy is less after the catch than before.", 1, ("less after",)),
        Point("So the catch is inelastic; what is missing became heat and sound.", 1, ("inelastic",)),
    ),
)
HEAVIER = Part(
    "heavier",
    "explain",
    "The same ball is thrown in the same way at a heavier trolley. Friction is left out this time in both cases."
    " Explain how the distance along the slope changes.",
    points=(
        Point("The momentum of the ball is the same, shared by a larger mass.", 1, ("same", "larger mass")),
        Point("So the speed after the catch is smaller.", 1, ("speed", "smaller")),
        Point("By energy conservation the height, v²/2g, is smaller, and so is the distance.", 1, ("height",)),
    ),
)
PRINCIPLE = Part(
    "principle",
    "explain",
    "Which principle gives the velocity just after the catch, and why may it be used?",
    points=(
        Point("The conservation of linear momentum.", 1, ("momentum",)),
        Point("No net external force acts on ball and trolley along the track.", 1, ("net external force",)),
    ),
)
QUANTITIES = (
    mass("m1", "Mass of the ball", "", "0,5 kg; 0,4 0,6 0,8 1; 0,45 0,65 0,9"),
    speed("u", "Speed of the ball", "", "12 m/s; 8 10 12 14; 9,5 11,5 13,5"),
    mass("m2", "Mass of the trolley", "", "1,5 kg; 1,2 1,6 2; 1,4 1,8 2,2"),
    slope_angle("theta", "Angle of the slope with the horizontal", "", "20°; 15 20 25 30; 18 22 28"),
    force("f", "Friction on the slope (size)", "", "1,2 N; 0,8 1 1,5; 0,9 1,3"),
)


def plan(data: Data) -> Plan:
    """Principle, velocity, energies, elastic or not, distance along the slope, a heavier trolley."""
    said = data.said
    return Plan(
        story=data.pick(
            f"A trolley of {said['m2']} with a net stands at rest on a smooth level track. A ball of {said['m1']} flies"
            f" horizontally to the right at {said['u']} and is caught in the net.",
            f"In a sports hall a ball of {said['m1']} is thrown horizontally to the right at {said['u']} into a box on"
            " a trolley that is at rest on a smooth level floor. Box and trolley together have a mass of"
            f" {said['m2']}.",
            f"A machine shoots a ball of {said['m1']} horizontally to the right at {said['u']} into the soft foam on a"
            f" trolley of {said['m2']}, which is at rest on a smooth level rail. The ball sticks there.",
        )
        + f" Trolley and ball then roll up a slope at {said['theta']} to the horizontal, where the friction on them is"
        f" {said['f']}.",
        parts=(
            PRINCIPLE,
            Part(
                "velocity",
                "calculate",
                "Calculate the velocity of ball and trolley just after the catch.",
                (CAUGHT.step("v"),),
            ),
            Part(
                "energies",
                "calculate",
                "Calculate the total kinetic energy just before and just after the catch.",
                (BEFORE.step("SigmaE_k"), AFTER.step("SigmaE_k_after")),
                also=("SigmaE_k",),
            ),
            WHY,
            state(THEOREM),
            Part(
                "distance",
                "calculate",
                "Use energy principles to calculate how far they roll along the slope before they come to rest.",
                (CLIMB.step("L"),),
            ),
            HEAVIER,
        ),
        values=dict(data.values),
        units={"theta": "°"},
        scene=scene,
        checks=(
            Check(
                "By the equations of motion on the slope: v² = 2aL", "v^2 = 2*((m1 + m2)*g*sin(theta) + f)/(m1 + m2)*L"
            ),
            Check(
                "The share of the kinetic energy that is left is that of the ball in the whole mass",
                "SigmaE_k_after = m1/(m1 + m2)*SigmaE_k",
            ),
        ),
    )


def scene(v: Values) -> Figure:
    """Ball and trolley before the catch, on the level before the slope; not to scale."""
    foot = (10.0, 0.0)
    items: list[Item] = [
        Surface((-3.0, 0.0), foot),
        Trolley((6.6, 0.0), 3.0, 2.2, "2"),
        Ball((-0.6, 1.6), 0.7, "1"),
        Arrow((0.5, 1.6), (3.2, 1.6), "u", "velocity"),
        Slope(foot, 7.0, degrees(v["theta"]), "θ"),
    ]
    return composed(
        "A ball, a trolley and a slope",
        items,
        opening="Ball 1 flies to the right towards trolley 2 on the level; a slope begins behind the trolley.",
        notes=("Not to scale.",),
    )


CATCH = Question(
    key="caught",
    title="A caught ball, then a slope",
    plan=plan,
    **boxes(*QUANTITIES),
    constants=("g",),
    laws=(CONSERVED.name, THEOREM.name),
    scenario=True,
    since=4,
)
