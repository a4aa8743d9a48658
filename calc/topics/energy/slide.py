"""A whole question: down a smooth slide, then along rough ground to rest; energy bars, and there and back again.

The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Curve, Dimension, Dot, Figure, Surface
from calc.figures.energy import energy_bars
from calc.figures.pieces import Item
from calc.figures.telling import composed
from calc.model.answers import Mark, Point
from calc.model.questions import Check, Data, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.energy.laws import CONSERVATIVE, CONSERVED, THEOREM
from calc.topics.energy.places import eased
from calc.topics.shared.quantities import distance, height, mass, speed
from calc.working.declaring import Mistake, boxes, state

DROPPED = {"v": "A speed has no sign: it is dropped."}
BOTTOM = Relation(
    "m*g*h + 1/2*m*u^2 = 1/2*m*v^2",
    what="Total mechanical energy at A equals total mechanical energy at B",
    why="From A to B only the weight does work. Heights are measured from B.",
    plain="What is lost in height is gained in speed.",
    units={"v": "m·s⁻¹", "h": "m"},
    dropped=DROPPED,
    quotes=(CONSERVED.name,),
    marks=(Mark("formula"), Mark("substitution", 2), Mark("answer")),
    mistakes=(
        Mistake(
            "initial-dropped",
            "v",
            "sqrt(2*g*h)",
            "You left out the kinetic energy at A. There is a push at A already: add {1/2*m*u^2}.",
        ),
        Mistake(
            "half-lost",
            "v",
            "sqrt(g*h + u^2)",
            "You lost the ½. Kinetic energy is {1/2*m*v^2}: multiply {m*g*h} by 2 before you divide by {m}.",
        ),
        Mistake(
            "root-lost",
            "v",
            "2*g*h + u^2",
            "You stopped at {v^2}. Take its square root: that is the speed {v}.",
            "the answer is the square of the speed",
        ),
    ),
)
STOPPED = Relation(
    "f*d*cos(deg180) = 0 - 1/2*m*v^2",
    what="Net work equals the change in kinetic energy",
    why="On the level only friction does work, and at C the body is at rest: final minus initial is less than zero.",
    plain="Friction takes all the energy of motion, metre by metre.",
    units={"f": "N"},
    quotes=(THEOREM.name,),
    mistakes=(
        Mistake(
            "half-lost",
            "f",
            "m*v^2/d",
            "You lost the ½. Kinetic energy is {1/2*m*v^2}: halve your answer.",
        ),
        Mistake(
            "not-squared",
            "f",
            "m*v/(2*d)",
            "You did not square the speed. Kinetic energy is {1/2*m*v^2}: use {v^2}.",
        ),
    ),
)
RATIO = Relation(
    "f = mu_k*m*g",
    what="Kinetic friction on the level",
    why=(
        "On the level the normal force is as large as the weight, and friction is the coefficient times the normal"
        " force."
    ),
    plain="How rough it is, times how hard it presses on the ground.",
    units={"mu_k": ""},
    marks=(Mark("substitution"), Mark("answer")),
    mistakes=(
        Mistake(
            "mass-for-weight",
            "mu_k",
            "f/m",
            "You divided by the mass. The ground carries the weight: divide {f} by {m*g}.",
        ),
        Mistake("upside-down", "mu_k", "m*g/f", "You have the fraction upside down. Divide {f} by {m*g}."),
    ),
)
WHY = Part(
    "why",
    "explain",
    "Why may the conservation of mechanical energy be used from A to B, but not from B to C?",
    points=(
        Point("From A to B only the weight does work, and it is a conservative force.", 1, ("conservative force",)),
        Point(
            "From B to C friction does work, and it is a non-conservative force.", 1, ("friction", "non-conservative")
        ),
    ),
)
HEAVIER = Part(
    "heavier",
    "explain",
    "A rider of twice the mass starts from A in the same way. The coefficient of friction is the same. Where does this"
    " rider stop? Explain.",
    points=(
        Point("The speed at B is the same: the mass cancels.", 1, ("speed at B is the same",)),
        Point("Kinetic energy and friction are both twice as large.", 1, ("both twice",)),
        Point("So the distance is the same: this rider stops at C too.", 1, ("distance is the same",)),
    ),
)
ROUND = Part(
    "round-trip",
    "explain",
    "From C the rider is pulled back along the ground to B and climbs up to A again. What is the total work of the"
    " weight over the whole trip, and can the total work of friction be zero too? Explain.",
    points=(
        Point("The weight does no work in total: the rider is back at the same height.", 1, ("no work in total",)),
        Point(
            "Friction is against the motion both ways, so its work is negative both ways: never zero.",
            1,
            ("both ways",),
        ),
    ),
)
QUANTITIES = (
    mass("m", "Mass of the rider", "", "36 kg; 28 32 40 44; 26 34 42"),
    height("h", "Height of A above B", "", "2,4 m; 1,6 2 2,5 3; 1,8 2,2 2,8"),
    speed("u", "Speed at A", "", "1,5 m/s; 1 2 2,5 3; 1,4 2,2 2,8"),
    distance("d", "Distance from B to C", "", "6 m; 4 5 7 8; 4,5 6,5 7,5"),
)


def bars(v: Values) -> Figure:
    """Energy at A, at B and at C, to one scale: potential, kinetic, and what friction has taken."""
    potential, kinetic = v["m"] * v["g"] * v["h"], v["m"] * v["u"] ** 2 / 2
    return energy_bars(
        [
            ("At A", [("E_p", potential), ("E_k", kinetic)]),
            ("At B", [("E_p", 0.0), ("E_k", potential + kinetic)]),
            ("At C", [("E_k", 0.0), ("W_f", -(potential + kinetic))]),
        ],
        title="Energy at A, at B and at C",
        description=(
            "Bars to one scale. At A a bar of potential and a bar of kinetic energy; at B no potential energy and one"
            " bar of kinetic energy as high as both together; at C no kinetic energy, and the work of friction hangs"
            " down by the same length."
        ),
    )


BARS = Part(
    "bars",
    "draw",
    "Draw bars of the potential and kinetic energy at A and at B, and of the kinetic energy at C with the work of"
    " friction from B to C, all to one scale.",
    points=(
        Point("At A a bar for the potential energy and one for the kinetic energy.", 1, ("At A",)),
        Point("At B no potential energy; the kinetic energy is as high as both bars at A together.", 1, ("together",)),
        Point(
            "At C no kinetic energy; the work of friction is negative and as long as the bar at B.", 1, ("negative",)
        ),
    ),
    figure=bars,
)


def plan(data: Data) -> Plan:
    """State, why, speed at B, friction and coefficient, bars, twice the mass, there and back."""
    said = data.said
    return Plan(
        story=data.pick(
            f"In a park a child of {said['m']}, the rider, goes down a smooth slide. At A, {said['h']} above the level"
            f" ground, the speed is {said['u']}. From B, at the foot of the slide, the rider slides on over rough level"
            f" matting and stops at C, {said['d']} from B.",
            f"A rider of {said['m']} on a plastic tray passes A on an icy bank at {said['u']}; A is {said['h']} above"
            " the level meadow. The ice ends at B, at the foot of the bank. On the level grass the tray, whose own"
            f" mass is left out, stops at C, {said['d']} from B.",
            f"At a water park the rider, {said['m']}, leaves A in a smooth chute at {said['u']}, {said['h']} above the"
            f" level landing strip. The chute ends at B; on the rough strip the rider stops at C, {said['d']}"
            " further on.",
        ),
        parts=(
            state(CONSERVED),
            WHY,
            Part("speed", "calculate", "Calculate the speed of the rider at B.", (BOTTOM.step("v"),)),
            Part(
                "friction",
                "calculate",
                "Use energy principles to calculate the average friction between B and C.",
                (STOPPED.step("f"),),
            ),
            Part(
                "coefficient",
                "calculate",
                "Calculate the coefficient of kinetic friction between B and C.",
                (RATIO.step("mu_k"),),
            ),
            BARS,
            HEAVIER,
            ROUND,
        ),
        values=dict(data.values),
        scene=scene,
        checks=(
            Check(
                "All at once, from A to C: what friction takes is all the energy there was", "f*d = m*g*h + 1/2*m*u^2"
            ),
            Check("By the equations of motion on the level: v² = 2(f/m)d", "v^2 = 2*f/m*d"),
        ),
    )


def scene(v: Values) -> Figure:
    """The slide from A to B, the ground from B to C; not to scale."""
    a, b, c = (2.0, 6.0), (9.0, 0.0), (17.0, 0.0)
    items: list[Item] = [
        Curve(eased(a, b), "outline"),
        Surface(b, (19.0, 0.0)),
        Dot(a, "A"),
        Dot(b, "B"),
        Dot(c, "C"),
        Dimension((0.6, 0.0), (0.6, 6.0), "h", 0.0, 0.0),
        Dimension(b, c, "d", -1.8, 0.9),
    ]
    return composed(
        "A slide and rough ground",
        items,
        opening="A smooth slide leads from A down to B; rough level ground leads on from B to C.",
        notes=("Not to scale.",),
    )


SLIDE_AND_GROUND = Question(
    key="slide",
    title="Down a slide and along the ground",
    plan=plan,
    **boxes(*QUANTITIES),
    constants=("g",),
    laws=(CONSERVED.name, CONSERVATIVE.name, THEOREM.name),
    scenario=True,
    since=4,
)
