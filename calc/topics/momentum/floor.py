"""A ball that hits the floor: the floor stops it, turns it round and carries its weight, N = F_net + mg."""

from dataclasses import replace

from calc.figures import Force, free_body_diagram
from calc.model.questions import Data, Refusal, Values
from calc.topics.momentum.impulse import CHANGE_ALONE, DISAGREE, SIZES
from calc.topics.momentum.laws import IMPULSE, RATE
from calc.topics.shared.quantities import UP, force, mass, time, velocity
from calc.working.declaring import Limit, Mistake, Relation, declare

WEIGHT = "You left the weight out. {N} must also carry it: add {m*g} to {F_net}."
WEIGHT_OFF = "You left the weight out. {N} also carries it: subtract {m*g} from {N}."
WEIGHT_IN_N = "You left the weight out. {N} must also carry it: put {N - m*g} in for the net force."
TAKEN_OFF = "You subtracted the weight. {N} makes {F_net} and must also carry the weight: add {m*g}."
DOWN = "The ball does not come down: to hit the floor it moves downwards just before. Give its velocity a minus sign."
THROUGH = "The ball cannot go through the floor: just afterwards it is at rest or moves upwards. Check the velocities."
LIGHT = "The floor only pushes: to stop the ball, its force must be larger than the weight. Check the numbers."
PULLS = (
    "The floor only pushes: these velocities would need a pull. The ball moves downwards before (a minus sign) and"
    " upwards, or not at all, afterwards."
)
FLOOR = Relation(
    "F_net*Deltat = m*(v - u)",
    what="Impulse equals change in momentum",
    why="The net force on the ball changes its momentum: final minus initial. Upwards is positive.",
    plain="How hard it is pushed, times how long, is how much its motion changes.",
    mistakes=(
        Mistake("sizes-subtracted", "F_net", "m*(abs(v) - abs(u))/Deltat", SIZES),
        Mistake("change-alone", "v", "F_net*Deltat/m", CHANGE_ALONE),
        Mistake("sizes-subtracted", "Deltat", "m*(abs(v) - abs(u))/F_net", SIZES),
    ),
)
CARRIED = Relation(
    "N = F_net + m*g",
    what="The floor makes the net force and carries the weight",
    why="Two forces act: N upwards and the weight downwards. The net force is N less the weight.",
    plain="The floor has two jobs: it turns the ball round, and it holds it up.",
    mistakes=(
        Mistake("weight-left-out", "N", "F_net", WEIGHT),
        Mistake("weight-subtracted", "N", "F_net - m*g", TAKEN_OFF),
        Mistake("weight-left-out", "F_net", "N", WEIGHT_OFF),
    ),
)
IN_ONE = Relation(
    "(N - m*g)*Deltat = m*(v - u)",
    what="Impulse equals change in momentum, with the net force as N less the weight",
    why="The net force is N less the weight, and the mass stands in both. Upwards is positive.",
    units={"m": "kg"},  # for any other quantity there are two steps
    plain="The floor turns the ball round and holds it up at the same time.",
    mistakes=(Mistake("weight-left-out", "m", "N*Deltat/(v - u)", WEIGHT_IN_N),),
)
push = replace(force, refusal="The floor can only push: give the size of its force, zero or more.")
QUANTITIES = (
    mass("m", "Mass of the ball", "The ball has a mass of {}.", "400 g; 250 400 500 600; 320 450 625"),
    velocity(
        "u",
        "Velocity just before",
        "It reaches the floor at {}.",
        "-6 m/s; -4 -5 -6 -8; -4,5 -5,5 -7,5",
        way=UP,
    ),
    velocity(
        "v",
        "Velocity just afterwards",
        "It leaves the floor at {}.",
        "4,5 m/s; 2 3 4 5; 2,5 3,5 4,8",
        way=UP,
        told_at={0.0: "It stays on the floor, at rest."},
    ),
    time("Deltat", "Time of contact", "The contact lasts {}.", "0,15 s; 0,1 0,15 0,2 0,25; 0,12 0,18 0,24"),
    push(
        "N", "Force of the floor (average)", "The floor pushes it with an average force of {}.", "?; 40 50 60; 35 46 58"
    ),
)


def refuse(data: Data, values: Values) -> None:
    """What hits a floor does not go on downwards."""
    if values["v"] < 0:
        raise Refusal("v" if data.has("v") else None, THROUGH)


BOUNCE = declare(
    "floor",
    "A ball that hits the floor",
    (FLOOR, CARRIED, IN_ONE),
    openings=(
        "A handball falls straight down and bounces on a gymnasium floor.",
        "A lump of rubber drops onto a level stone floor.",
        "In a test a soft ball is dropped on a heavy plate that lies on the ground.",
    ),
    given=QUANTITIES,
    limits=(Limit("-u", DOWN, at="u"), Limit("N - m*g", LIGHT, at="N")),
    unfit={"m": DISAGREE, "Deltat": DISAGREE, "N": PULLS},
    units={"F_net": "N"},
    refuse=refuse,
    scene=lambda v: free_body_diagram(
        [Force("N", v["N"], 90.0), Force("w", v["m"] * v["g"], 270.0, ("m",))],
        title="Forces on the ball during the contact",
    ),
    constants=("g",),
    notes=("The ball pushes the floor downwards with a force as large as N.",),
    states=(RATE,),
    laws=(IMPULSE,),
    since=4,
)
