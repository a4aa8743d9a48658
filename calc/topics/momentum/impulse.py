"""A ball that is struck: F_net Δt = m(v − u), a data-sheet equation; every quantity may be asked."""

from calc.figures.motion import Moving, before_after
from calc.topics.momentum.besides import LONGER, longer
from calc.topics.momentum.laws import IMPULSE, RATE
from calc.topics.shared.quantities import RIGHT, force, impulse, mass, time, velocity
from calc.working.declaring import Mistake, Relation, declare

DISAGREE = (
    "Directions disagree: the net force and the change in velocity must point the same way. Check the signs of the"
    " velocities and of the force."
)
SIZES = (
    "You subtracted the sizes. Put each velocity into the change in momentum with its sign: for a body that turns"
    " back, the sizes add up."
)
BACKWARDS = (
    "You subtracted the velocity afterwards from the velocity before. A change is final minus initial: use {v - u}."
)
FINAL_ALONE = "You used the momentum afterwards alone. Impulse is the change in momentum: subtract the momentum before."
CHANGE_ALONE = "You stopped at the change in velocity. Add {u}, the velocity before, to get the velocity afterwards."
ADDED_ON = "You added the change to {v}. To go back to the velocity before, subtract it."
WHY = "The net force acts for a short time and changes the momentum: final minus initial. To the right is positive."
PLAIN = "How hard something is pushed, times how long, is how much its motion changes."
STRUCK = Relation(
    "F_net*Deltat = m*(v - u)",
    what="Impulse equals change in momentum",
    why=WHY,
    plain=PLAIN,
    mistakes=(
        Mistake("sizes-subtracted", "F_net", "m*(abs(v) - abs(u))/Deltat", SIZES),
        Mistake("final-alone", "F_net", "m*v/Deltat", FINAL_ALONE),
        Mistake("backwards", "F_net", "m*(u - v)/Deltat", BACKWARDS, turns=True),
        Mistake("sizes-subtracted", "Deltat", "m*(abs(v) - abs(u))/F_net", SIZES),
        Mistake("sizes-subtracted", "m", "F_net*Deltat/(abs(v) - abs(u))", SIZES),
        Mistake("change-alone", "v", "F_net*Deltat/m", CHANGE_ALONE),
        Mistake("change-added", "u", "v + F_net*Deltat/m", ADDED_ON),
    ),
)
CHANGED = Relation(
    "Deltap = m*(v - u)",
    what="The impulse is the change in momentum",
    why="A change is final minus initial, each velocity with its sign. To the right is positive.",
    plain="Impulse says how much the motion has changed, and which way.",
    mistakes=(
        Mistake("sizes-subtracted", "Deltap", "m*(abs(v) - abs(u))", SIZES),
        Mistake("final-alone", "Deltap", "m*v", FINAL_ALONE),
        Mistake("backwards", "Deltap", "m*(u - v)", BACKWARDS, turns=True),
    ),
)
PUSHED = Relation(
    "F_net*Deltat = Deltap",
    what="Impulse is net force times time",
    why="The net force, multiplied by the time for which it acts, is the impulse.",
    plain="A small push for a long time can do as much as a large one for a short time.",
)
QUANTITIES = (
    mass("m", "Mass of the ball", "The ball has a mass of {}.", "60 g; 40 60 80 150; 45 58 125"),
    velocity("u", "Velocity before", "Just before it moves at {}.", "24 m/s; 8 12 15 20; 9,5 14,5 22"),
    velocity(
        "v",
        "Velocity afterwards",
        "Just afterwards it moves at {}.",
        "-18 m/s; -6 -9 -12 -16; -7,5 -11,5 -18",
        told_at={0.0: "It is brought to rest."},
    ),
    time("Deltat", "Time of contact", "The contact lasts {}.", "8 ms; 5 10 20 40; 6 12 35"),
    force(
        "F_net",
        "Net force during the contact (average)",
        "During the contact the average net force on it is {}.",
        "?; -120 -200 -300; -85 -150 -260",
        way=RIGHT,
        ask="Calculate the average net force on the ball.",
    ),
    impulse("Deltap", "Impulse on the ball", "The impulse on it is {}.", "?; -2 -3 -4; -1,8 -2,7 -3,6"),
)
GIVEN = {
    "F_net": "m u v Deltat",
    "Deltap": "m u v",
    "m": "u v Deltat F_net",
    "u": "m v Deltat F_net",
    "v": "m u Deltap",
    "Deltat": "m u v F_net",
}
HIT = declare(
    "impulse",
    "A ball that is struck",
    (STRUCK, CHANGED, PUSHED),
    openings=(
        "A ball flies level and is struck by a racket.",
        "On a smooth level floor a rubber ball rolls against a stick that is swung at it.",
        "A light ball on a level track meets a bumper that springs forward.",
    ),
    given=QUANTITIES,
    unfit={"m": DISAGREE, "Deltat": DISAGREE},
    scene=lambda v: before_after(
        [Moving("", "u", abs(v["u"]), v["u"] >= 0, "ball")],
        [Moving("", "v", abs(v["v"]), v["v"] >= 0, "ball")],
    ),
    notes=("The ball pushes back with a force of the same size, in the opposite direction, for the same time.",),
    choices=(LONGER,),
    later=lambda data, values: (longer(data),) if data.choices["also"] == "longer" else (),
    states=(RATE,),
    laws=(IMPULSE,),
    practised=GIVEN,
    asks="F_net",
    since=4,
)
