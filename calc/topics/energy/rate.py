"""Average power: work in a time, P = W/Δt, and the power of one constant force, P = F v_av; any quantity asked."""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Arrow, Block, Dimension, Figure, Segment, Surface
from calc.figures.bodies import Pulley
from calc.figures.motion import Moving, before_after
from calc.figures.pieces import Item
from calc.figures.telling import composed
from calc.model.questions import Values
from calc.topics.energy.laws import POWER, WORK
from calc.topics.shared.quantities import Quantity, distance, force, height, mass, speed
from calc.working.declaring import Mistake, Relation, declare

lasting = Quantity("s", 1e-3, 1e5, "Time must be greater than zero.")
rate = Quantity("W", 1e-3, 1e9, "Power must be greater than zero.")
done = Quantity("J", 1e-3, 1e10, "The work that a motor does is greater than zero.")

MULTIPLIED = "You multiplied by {Deltat}. Power is work in each second: divide {W} by {Deltat}."
DIVIDED = "You divided by {Deltat}. Power is work in each second: multiply {P} by {Deltat}."
UPSIDE_DOWN = "You have the fraction upside down. Time is work divided by power: use {W/P}."
LIFT_ALONE = "You left out the kinetic energy. The load gains speed as well: add {1/2*m*v^2 - 1/2*m*u^2}."
SPEED_ALONE = "You left out the height. The work {W} raises the load as well: add {m*g*h}."
NO_G = "You used the mass as the weight. The weight is {m*g}: multiply by g."
PER_TIME = Relation(
    "P = W/Deltat",
    what="Average power is work divided by time",
    why="Power is the rate at which work is done.",
    plain="How much energy goes over in each second.",
    quotes=(POWER.name,),
    mistakes=(
        Mistake("multiplied", "P", "W*Deltat", MULTIPLIED),
        Mistake("divided", "W", "P/Deltat", DIVIDED),
        Mistake("upside-down", "Deltat", "P/W", UPSIDE_DOWN),
        Mistake("multiplied", "Deltat", "P*W", UPSIDE_DOWN.replace("have the fraction upside down", "multiplied")),
    ),
)
LIFTED = Relation(
    "W = m*g*h + 1/2*m*v^2 - 1/2*m*u^2",
    what="The motor's work is the gain in potential and in kinetic energy",
    why="What the motor does raises the load and changes its speed: each change is final minus initial.",
    plain="The motor pays for the height and for the speed.",
    mistakes=(
        Mistake("kinetic-left-out", "W", "m*g*h", LIFT_ALONE),
        Mistake("height-left-out", "W", "1/2*m*v^2 - 1/2*m*u^2", SPEED_ALONE),
        Mistake("mass-for-weight", "W", "m*h + 1/2*m*v^2 - 1/2*m*u^2", NO_G),
        Mistake(
            "kinetic-left-out",
            "h",
            "W/(m*g)",
            "You gave all the work to the height. A part of it makes speed: subtract that first.",
        ),
        Mistake(
            "height-left-out",
            "v",
            "sqrt(2*W/m + u^2)",
            "You gave all the work to the speed. A part of it lifts the load: subtract {m*g*h} first.",
        ),
        Mistake(
            "height-left-out",
            "u",
            "sqrt(v^2 - 2*W/m)",
            "You gave all the work to the speed. A part of it lifts the load: subtract {m*g*h} from {W} first.",
        ),
    ),
    dropped=dict.fromkeys(("v", "u"), "A speed has no sign: it is dropped."),
)
LITTLE = (
    "This work is too little: it does not even reach for the rest. Check the power, the time and the other numbers."
)
LIFT = (
    mass("m", "Mass of the load", "The load has a mass of {}.", "250 kg; 120 200 300 400; 150 260 350"),
    height(
        "h",
        "Height gained",
        "It is raised by {}.",
        "4 m; 2 2,5 3 4; 1,8 2,4 3,6",
        told_at={0.0: "It stays at one height."},
    ),
    speed("u", "Initial speed", "Its speed at first is {}.", "0 m/s; 0 0 1", told_at={0.0: "It is at rest at first."}),
    speed(
        "v",
        "Final speed",
        "At the end its speed is {}.",
        "3 m/s; 3 4 5; 3,5 4,5",
        told_at={0.0: "It is at rest at the end."},
    ),
    lasting("Deltat", "Time", "This takes {}.", "5 s; 3 4 5 6; 3,5 5,5"),
    done("W", "Work done", "The motor does {} of work.", "?; 12 18 24 kJ; 15 21", result="measured"),
    rate("P", "Average power", "The average power of the motor is {}.", "?; 1,5 2 3 kW; 1,8 2,6", result="measured"),
)


def crane(v: Values) -> Figure:
    """A load under a pulley, and how high it is raised."""
    items: list[Item] = [
        Surface((9.0, 9.0), (-3.0, 9.0)),
        Pulley((0.0, 7.2), 0.8, (0.0, 9.0)),
        Segment((0.8, 7.2), (0.8, 2.0), "outline"),
        Segment((-0.8, 7.2), (-2.2, 3.6), "outline"),
        Block((0.8, 1.1), 2.4, 1.8, 0.0, ""),
        Dimension((3.4, 1.1), (3.4, 5.2), "h", 0.0, 0.0),
        Segment((2.0, 1.1), (3.4, 1.1), "guide"),
        Segment((0.8, 5.2), (3.4, 5.2), "guide"),
        Arrow((-1.4, 0.4), (-1.4, 2.6), "", "velocity"),
    ]
    return composed(
        "A load is raised",
        items,
        opening="A load hangs from a rope over a pulley and is raised by the height h.",
        notes=("Not to scale.",),
    )


LIFTING = replace(
    declare(
        "average-power",
        "Average power of a motor that lifts",
        (PER_TIME, LIFTED),
        openings=(
            "The electric motor of a crane raises a load. Losses in the motor are left out.",
            "On a building site a motor with a rope lifts a load. What rubs in the winch is not counted.",
            "A hoist in a garage raises an engine block, the load, by a motor. Friction is left out.",
        ),
        given=LIFT,
        unfit={
            "h": LITTLE,
            "v": LITTLE,
            "u": "No initial speed fits: the work would have to be smaller. Check the numbers.",
            "W": "The load loses energy here: the motor would have to brake it. Check the height and the speeds.",
            "m": "No mass fits: the load would lose energy while the motor works. Check the height and the speeds.",
        },
        scene=crane,
        constants=("g",),
        states=(POWER,),
        practised={
            "P": "m h u v Deltat",
            "W": "m h u v",
            "Deltat": "m h u v P",
            "h": "m u v P Deltat",
            "v": "m h u P Deltat",
            "m": "h u v P Deltat",
            "u": "m h v P Deltat",
        },
        asks="P",
        unknowns=("P", "W", "Deltat", "h", "v", "m", "u"),
        since=4,
    ),
    drawn=("P", "W", "Deltat", "h", "v", "m"),
    drawn_later={"u": 6},
)


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """What leads to the unknown drawn; where the initial speed is asked, a power that leaves one."""
    assert LIFTING.adjust
    out = LIFTING.adjust(typed, chance, level)
    if typed["u"]:
        return out
    toss = chance.random  # type: ignore[attr-defined]
    m = float(str(out["m"]).split()[0].replace(",", "."))
    h, v = 1 + round(6 * toss()) / 10, 5 + round(20 * toss()) / 10  # little height: the speed hangs less on g
    u = v * (0.75 + 0.15 * toss())
    lasts = round(2 * h / (u + v), 2)
    power = (9.8 * m * h + m * (v * v - u * u) / 2) / lasts
    shown = {"h": f"{h:g} m", "v": f"{v:g} m/s", "Deltat": f"{lasts:g} s", "P": f"{power / 1000:.3g} kW"}
    return out | {name: text.replace(".", ",") for name, text in shown.items()}


AVERAGE = replace(LIFTING, adjust=practise)

# --- one constant force along a way ------------------------------------------------------------------------

FINAL = (
    "You used the final speed. The speed grows evenly, so use the average speed {v_av}, half-way between {u} and {v}."
)
PUSHED = Relation(
    "P = F*v_av",
    what="Average power is force times average speed",
    why="In each second the force does the work force times distance, and the distance in each second is the speed.",
    plain="A hard push on something fast takes the most power.",
    quotes=(POWER.name,),
    mistakes=(
        Mistake("final-speed", "P", "F*v", FINAL, "from rest the answer is twice the right one"),
        Mistake("final-speed", "F", "P/v", FINAL, "from rest the answer is half the right one"),
        Mistake("divided", "P", "F/v_av", "You divided {F} by {v_av}. Power is force times speed: multiply them."),
    ),
)
MEAN = Relation(
    "v_av = (u + v)/2",
    what="Average speed where the speed grows evenly",
    why="The forces are constant, so the speed changes evenly: its average is half-way between first and last.",
    plain="Half-way between the first speed and the last.",
)
MEAN_WAY = Relation(
    "Deltax = v_av*Deltat",
    what="Distance is average speed times time",
    why="That is what average speed means.",
    plain="So many metres in each second, times the seconds.",
)
ALONG = Relation(
    "W = F*Deltax",
    what="Work of the force along the way",
    why="The force acts in the direction of the motion: cos 0° = 1.",
    plain="How hard, times how far.",
    quotes=(WORK.name,),
)
START = (
    force("F", "Driving force (size)", "The driving force is {}.", "900 N; 600 800 1200; 750 950"),
    speed(
        "u", "Initial speed", "Its speed at first is {}.", "0 m/s; 0 2 3; 0 2,5", told_at={0.0: "It starts from rest."}
    ),
    speed("v", "Final speed", "At the end its speed is {}.", "12 m/s; 8 10 14; 9,5 12,5"),
    speed("v_av", "Average speed", "Its average speed is {}.", result="measured"),
    distance("Deltax", "Distance", "It covers {}.", "?; 40 60 80; 45 75"),
    lasting("Deltat", "Time", "This takes {}.", "?; 6 8 10; 7,5 9,5"),
    done("W", "Work done by the driving force", "The driving force does {} of work.", "?; 40 60 kJ", result="measured"),
    rate(
        "P",
        "Average power of the driving force",
        "The average power of the driving force is {}.",
        "?; 4 6 8 kW; 4,5 7,5",
        result="measured",
    ),
)
NO_SPEED = "No such speed fits: the average would have to be larger. Check the speeds, the distance and the time."


def road(v: Values) -> Figure:
    """The vehicle at both ends of its way."""
    return before_after(
        [Moving("", "u", v.get("u", 1.0))],
        [Moving("", "v", v.get("v", 2.0))],
        title="First and last speed",
    )


STARTING = declare(
    "average-speed",
    "Average power while a vehicle speeds up",
    (PUSHED, MEAN, MEAN_WAY, ALONG, PER_TIME),
    openings=(
        "An electric delivery van speeds up evenly on a level road.",
        "A scooter gathers speed evenly along a level street; its engine drives it with a constant force.",
        "A locomotive without wagons speeds up evenly on a level track.",
    ),
    given=START,
    unfit={"u": NO_SPEED, "v": NO_SPEED},
    scene=road,
    states=(POWER,),
    practised={
        "P": "F u v",
        "F": "P u v",
        "v": "F u P",
        "u": "F v P",
        "W": "P Deltat",
        "Deltat": "W P",
        "v_av": "u v",
    },
    asks="P",
    unknowns=("P", "F", "v", "u", "v_av", "W", "Deltat"),
    since=4,
)
