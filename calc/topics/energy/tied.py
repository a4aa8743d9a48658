"""Two bodies on one string over a pulley: one equation for both, with the sum of their kinetic energies.

m₂gh − µ_k m₁gh = ½(m₁ + m₂)(v² − u²) beside a table; m₂gh − m₁gh where both hang. Ranges: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Arrow, Block, Figure, Surface
from calc.figures.bodies import Cord, Pulley, Table
from calc.figures.pieces import Item
from calc.figures.telling import composed
from calc.model.answers import Point
from calc.model.questions import Choice, Data, Draw, Mistake, Part, Refusal
from calc.model.relations import Relation
from calc.topics.energy.laws import THEOREM
from calc.topics.shared.quantities import distance, force, friction_coefficient, mass, speed
from calc.working.declaring import boxes, state, told
from calc.working.solving import Situation, question
from calc.working.working import measure

NO_TABLE = "Both bodies hang: there is no friction. Leave this empty, or choose the table."
STANDS = (
    "They do not start that way: from rest the net work would be less than zero. Check the masses and the friction."
)
UNFIT = {
    "v": "They stop first: the forces take more kinetic energy than there is. Check the numbers.",
    "u": "No initial speed fits: the forces alone would make them faster than this. Check the numbers.",
    "h": "No distance fits: these forces do not change the speed that way. Check the speeds and the masses.",
    "m1": "No mass fits: the second body alone would not become so fast. Check the speeds and the distance.",
    "m2": "No mass fits: even a very heavy second body falls no faster than freely. Check the speeds and the distance.",
    "mu_k": "No coefficient fits: friction would have to push the first body along. Check the numbers.",
    "T": "No tension fits: a string only pulls, so the second body falls no faster than freely. Check the numbers.",
}
ONE_MASS = "You used one mass alone for the kinetic energy. Both bodies move: use {m1 + m2}."
FRICTION_OUT = "You left friction out. It takes energy from the first body: subtract {mu_k*m1*g*h}."
OTHER_WEIGHT = "You left out the weight of the first body. It rises as the second comes down: subtract {m1*g*h}."
U_DROPPED = "You left out the initial kinetic energy. They move at first already: add the initial speed squared."
HALF_LOST = "You lost the ½. Kinetic energy is ½mv²: multiply the net work by 2 before you divide by the masses."
ROOT_LOST = "You stopped at {v^2}. Take its square root: that is the speed {v}."
WEIGHT_FOR_T = (
    "You took the weight for the tension. The second body speeds up, so they are not equal: use its own energy."
)
WHY_NOT = Part(
    "tension-work",
    "explain",
    "Why does the tension not stand in the equation for both bodies together?",
    points=(
        Point("The string pulls the two bodies with the same force over the same distance.", 1, ("same force",)),
        Point("Its work is positive on one and negative on the other, so the total is zero.", 1, ("total is zero",)),
    ),
)
ON = Choice("first", "The first body", (("table", "slides on a level table"), ("hangs", "hangs and rises")))
QUANTITIES = (
    mass("m1", "Mass of the first body", "The first has a mass of {}.", "2 kg; 1,5 2 2,5 3; 1,8 2,4 2,8"),
    mass("m2", "Mass of the second body", "The second has a mass of {}.", "3 kg; 3,5 4 4,5; 3,2 3,8 4,6"),
    friction_coefficient(
        "mu_k",
        "Coefficient of kinetic friction",
        "The coefficient of kinetic friction between the first and the table is {}.",
        "0,3; 0,2 0,3 0,4; 0,24 0,36",
        told_at={0.0: "The table is smooth."},
    ),
    distance(
        "h", "Distance that the second comes down", "The second comes down by {}.", "0,8 m; 0,5 0,8 1,2; 0,65 0,95"
    ),
    speed(
        "u",
        "Initial speed of both",
        "At first the speed of both is {}.",
        "0 m/s; 0,8 1 1,5; 0,9 1,2",
        told_at={0.0: "They start from rest."},
    ),
    speed("v", "Final speed of both", "Then the speed of both is {}.", "?; 2 2,5 3; 2,2 2,8"),
    force("T", "Tension in the string", "The tension in the string is {}.", "?; 12 15 20", result="measured"),
)
DROPPED = dict.fromkeys(("v", "u"), "A speed has no sign: it is dropped.")
STORIES = {
    "table": (
        (
            "A block, the first body, slides on a level table. A light string over a pulley without friction joins it"
            " to a second body that hangs beside the table and comes down."
        ),
        (
            "On a level work table a tool box, the first body, is pulled along by a light string. The string runs over"
            " a smooth pulley at the edge to a second body, which comes down."
        ),
        (
            "A crate, the first body, is on a level loading table. A light string over a smooth pulley joins it to a"
            " second body, which comes down beside the table."
        ),
    ),
    "hangs": (
        (
            "Two bodies hang on the ends of a light string that runs over a pulley without friction. The second comes"
            " down, the first rises."
        ),
        (
            "A light string over a smooth pulley on the ceiling carries a body at each end. The first is pulled up"
            " while the second comes down."
        ),
        (
            "In a laboratory two bodies are joined by a light string over a smooth pulley. The second sinks and lifts"
            " the first."
        ),
    ),
}


def both(hangs: bool, from_rest: bool) -> Relation:
    """The work of every force on the two together is the change in the sum of their kinetic energies."""
    work = "m2*g*h - m1*g*h" if hangs else "m2*g*h - mu_k*m1*g*h"
    forgotten = Mistake(
        "first-forgotten", "v", "sqrt(2*m2*g*h/(m1 + m2) + u^2)", OTHER_WEIGHT if hangs else FRICTION_OUT
    )
    slips = (
        forgotten,
        Mistake("one-mass", "v", f"sqrt(2*({work})/m2 + u^2)", ONE_MASS),
        Mistake("half-lost", "v", f"sqrt(({work})/(m1 + m2) + u^2)", HALF_LOST),
        Mistake("root-lost", "v", f"2*({work})/(m1 + m2) + u^2", ROOT_LOST, "the answer is the square of the speed"),
        *(() if from_rest else (Mistake("initial-dropped", "v", f"sqrt(2*({work})/(m1 + m2))", U_DROPPED),)),
    )
    takes = "the weight of the first takes energy" if hangs else "friction on the first takes energy"
    return Relation(
        f"{work} = 1/2*(m1 + m2)*v^2 - 1/2*(m1 + m2)*u^2",
        what="Net work on both equals the change in the sum of their kinetic energies",
        why=f"The weight of the second gives energy and {takes}. Both have the same speed; the tension's work cancels.",
        plain="One pays, the other costs; what is left makes both faster.",
        units={
            name: unit
            for name, unit in (("v", "m·s⁻¹"), ("u", "m·s⁻¹"), ("h", "m"), ("m1", "kg"), ("m2", "kg"), ("mu_k", ""))
            if name != "mu_k" or not hangs
        },
        quotes=(THEOREM.name,),
        dropped=DROPPED,
        mistakes=slips,
    )


ALONE = Relation(
    "m2*g*h - T*h = 1/2*m2*v^2 - 1/2*m2*u^2",
    what="The theorem for the second body alone",
    why="Its weight does positive work, the tension negative work: it pulls up while the body comes down.",
    plain="What the string holds back of the second body's energy goes to the first.",
    units={"T": "N", "h": "m"},
    quotes=(THEOREM.name,),
    mistakes=(Mistake("weight-for-tension", "T", "m2*g", WEIGHT_FOR_T),),
)


def refuse_stop(data: Data, hangs: bool) -> None:
    """Bodies whose kinetic energy would come out below zero have stopped before: where."""
    known = data.known
    if data.asked_names[0] != "v" or not {"m1", "m2", "h", "u", *(() if hangs else ("mu_k",))} <= known.keys():
        return
    net = known["g"] * (known["m2"] - known["m1"] * (1.0 if hangs else known["mu_k"]))
    kinetic = (known["m1"] + known["m2"]) * known["u"] ** 2 / 2
    if kinetic + net * known["h"] >= 0:
        return
    if not kinetic:
        raise Refusal("u", STANDS)
    stop = measure(kinetic / -net, "m", data.settings.style).text
    raise Refusal("h", f"They stop first, after h = {stop}. Type a shorter distance.")


def situation(data: Data) -> Situation:
    """What holds for the first body on the table or hanging."""
    hangs = data.choices["first"] == "hangs"
    if hangs and data.has("mu_k"):
        raise Refusal("mu_k", NO_TABLE)
    refuse_stop(data, hangs)
    return replace(
        told(QUANTITIES),
        relations=(both(hangs, data.values.get("u") == 0), ALONE),
        openings=STORIES["hangs" if hangs else "table"],
        stated=(state(THEOREM),),
        later=lambda data, values: (WHY_NOT,),
        unfit=UNFIT,
        scene=lambda v: hanging() if hangs else beside(),
    )


def beside() -> Figure:
    """The first body on a table, the second beside it."""
    items: list[Item] = [
        Table((0.0, 0.0), (12.0, 0.0), 6.0),
        Pulley((12.8, 0.4), 0.7, (12.0, -0.2)),
        Block((4.0, 1.1), 3.2, 2.2, 0.0, "1"),
        Cord((5.6, 1.1), (13.5, -2.2), (12.8, 0.4), 0.7),
        Block((13.5, -3.2), 2.0, 2.0, 0.0, "2"),
        Arrow((15.4, -2.2), (15.4, -4.4), "", "velocity"),
    ]
    return composed(
        "Two bodies on one string",
        items,
        opening="Body 1 on a level table is joined by a string over a pulley to body 2, which comes down.",
    )


def hanging() -> Figure:
    """Both bodies hang, the second comes down."""
    items: list[Item] = [
        Surface((4.0, 3.4), (-4.0, 3.4)),
        Pulley((0.0, 1.4), 1.3, (0.0, 3.4)),
        Cord((-1.3, -4.0), (1.3, -2.4), (0.0, 1.4), 1.3),
        Block((-1.3, -5.0), 2.0, 2.0, 0.0, "1"),
        Block((1.3, -3.4), 2.0, 2.0, 0.0, "2"),
        Arrow((3.4, -2.4), (3.4, -4.6), "", "velocity"),
        Arrow((-3.4, -6.0), (-3.4, -3.8), "", "velocity"),
    ]
    return composed(
        "Two bodies on one string",
        items,
        opening="Bodies 1 and 2 hang on a string over a pulley; body 2 comes down, body 1 rises.",
    )


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """A second body heavy enough; the final speed is worked out where something else is asked."""
    toss = chance.random  # type: ignore[attr-defined]
    hangs = typed["first"] == "hangs"
    asked = next((name for name in ("v", "h", "m1", "m2", "u", "mu_k", "T") if not typed[name]), "v")
    if asked == "mu_k":
        hangs = False
    m1, mu = 1.5 + round(15 * toss()) / 10, 0.2 + round(20 * toss()) / 100
    m2 = round(m1 * (1.2 + 0.6 * toss()), 1)
    h, u = 0.5 + round(10 * toss()) / 10, 0.6 + round(8 * toss()) / 10
    v = (u * u + 2 * 9.8 * h * (m2 - m1 * (1.0 if hangs else mu)) / (m1 + m2)) ** 0.5
    shown = {
        "m1": f"{m1:g} kg",
        "m2": f"{m2:g} kg",
        "mu_k": "" if hangs else f"{mu:g}",
        "h": f"{h:g} m",
        "u": f"{u:g} m/s",
        "v": "" if asked in ("v", "T") else f"{v:.3g} m/s",
        "T": "",
    }
    return {
        "first": "hangs" if hangs else "table",
        **{name: one.replace(".", ",") for name, one in shown.items()},
        asked: "",
    }


TIED = question(
    "tied",
    "Two bodies on one string, by energy",
    situation,
    **boxes(ON, *QUANTITIES, draws={"first": Draw(("table", "hangs"))}),
    unknowns=("v", "T", "h", "m1", "m2", "mu_k", "u"),
    drawn=("v", "T", "h", "mu_k", "m2", "u"),
    asks="v",
    constants=("g",),
    laws=(THEOREM.name,),
    adjust=practise,
    since=4,
)
