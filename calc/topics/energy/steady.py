"""Power at constant speed, P = Fv with F = mg sin θ + f, and a pump with its efficiency; any quantity asked."""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Dimension, Figure, Segment, Surface, Text
from calc.figures.pieces import Block, Item
from calc.figures.telling import composed
from calc.model.questions import Choice, Data, Draw, Refusal, Values
from calc.topics.energy.drawn import surface
from calc.topics.energy.laws import POWER
from calc.topics.energy.rate import lasting, rate
from calc.topics.shared.quantities import Quantity, force, height, mass, slope_angle, speed
from calc.working.declaring import Limit, Mistake, Relation, boxes, declare, state, told
from calc.working.solving import Situation, question

# --- constant speed ----------------------------------------------------------------------------------------

BALANCE = "You put the net force in, which is zero at constant speed. The engine still pushes: use {F}, its own force."
SLOPE_LEFT_OUT = "You left out the weight. Its component down the slope resists as well: add {m*g*sin(theta)}."
FRICTION_HELPS = "You subtracted the friction. It acts against the motion, as the hill does: add {f}."
FRICTION_LEFT_OUT = "You left out what resists besides the weight: add {f}."
WEIGHT_WHOLE = "You used the whole weight. Only its component along the slope resists: use {m*g*sin(theta)}."
SLOPE_AGAINST = "You added the weight's component. Downhill it helps the engine: subtract {m*g*sin(theta)}."
BRAKES = "Here the slope alone pulls harder than the resistance: the engine would have to brake. Check the numbers."
DISAGREE = "No value fits: the engine's force is smaller than the rest of what resists. Check the power and the speed."
STEADY = Relation(
    "P = F*v",
    what="Power at constant speed is the engine's force times the speed",
    why="In each second the engine does the work force times distance, and the distance in each second is the speed.",
    plain="A hard push on something fast takes the most power.",
    quotes=(POWER.name,),
    mistakes=(
        Mistake("divided", "P", "F/v", "You divided {F} by {v}. Power is force times speed: multiply them."),
        Mistake("multiplied", "v", "P*F", "You multiplied. Speed is power divided by force: divide {P} by {F}."),
        Mistake("upside-down", "v", "F/P", "You have the fraction upside down. Divide {P} by {F}."),
        Mistake("multiplied", "F", "P*v", "You multiplied. Force is power divided by speed: divide {P} by {v}."),
    ),
)
WHY = "At constant speed the net force is zero, so the engine's force balances what resists"
UP = Relation(
    "F = m*g*sin(theta) + f",
    what="The engine's force balances the weight's component and the resistance",
    why=f"{WHY}: the component of the weight down the slope, and friction with air resistance.",
    plain="Uphill the engine works against the hill and against rubbing.",
    mistakes=(
        Mistake("net-force", "F", "0*f", BALANCE),
        Mistake("weight-left-out", "F", "f", SLOPE_LEFT_OUT),
        Mistake("friction-left-out", "F", "m*g*sin(theta)", FRICTION_LEFT_OUT),
        Mistake("friction-subtracted", "F", "m*g*sin(theta) - f", FRICTION_HELPS, since=6),
        Mistake("whole-weight", "F", "m*g + f", WEIGHT_WHOLE),
    ),
)
DOWN = Relation(
    "F = f - m*g*sin(theta)",
    what="Engine and weight together balance the resistance",
    why=f"{WHY}, less the component of the weight, which points down the slope and helps.",
    plain="Downhill the hill does a part of the engine's work.",
    mistakes=(
        Mistake("net-force", "F", "0*f", BALANCE),
        Mistake("weight-left-out", "F", "f", SLOPE_LEFT_OUT.replace("resists as well: add", "helps: subtract")),
        Mistake("weight-added", "F", "f + m*g*sin(theta)", SLOPE_AGAINST),
    ),
)
LEVEL = Relation(
    "F = f",
    what="The engine's force balances the resistance",
    why=f"{WHY}: friction and air resistance.",
    plain="On the level the engine only works against rubbing and air.",
    mistakes=(Mistake("net-force", "F", "0*f", BALANCE),),
)
LAWS = {"up": UP, "down": DOWN, "level": LEVEL}
GOES = Choice("way", "The vehicle drives", (("up", "up a slope"), ("level", "on the level"), ("down", "down a slope")))
NO_SLOPE = "A level road has no angle: leave this empty, or choose a slope."
ENGINE = (
    mass("m", "Mass of the vehicle", "Its mass is {}.", "1 100 kg; 900 1 200 1 500; 950 1 350"),
    slope_angle(
        "theta",
        "Angle of the slope with the horizontal",
        "The slope makes an angle of {} with the horizontal.",
        "4°; 3 4 5 6; 2,5 4,5",
    ),
    force(
        "f",
        "Friction and air resistance together",
        "Friction and air resistance together are {}.",
        "550 N; 400 500 600 700; 450 650",
    ),
    speed("v", "Constant speed", "Its speed is {}.", "18 m/s; 12 15 20; 14 22"),
    force("F", "Driving force of the engine", "The engine drives it with a force of {}.", result="measured"),
    rate("P", "Power of the engine", "The engine gives {}.", "?; 18 24 30 kW; 21 27", result="measured"),
)
VEHICLES = (("small van", "road"), ("minibus", "mountain road"), ("tractor", "farm track"))
DRIVES = {
    "up": "A {0} drives up a straight {1} at constant speed.",
    "level": "A {0} drives along a level {1} at constant speed.",
    "down": "A {0} drives down a straight {1} at constant speed; its engine is pushing.",
}


def driving(data: Data) -> Situation:
    """What the engine works against, on the slope or the level chosen."""
    way = data.choices["way"]
    if way == "level" and data.has("theta"):
        raise Refusal("theta", NO_SLOPE)
    return replace(
        told(ENGINE),
        relations=(STEADY, LAWS[way]),
        openings=tuple(DRIVES[way].format(*one) for one in VEHICLES),
        stated=(state(POWER),),
        unfit={"F": BRAKES, "f": DISAGREE, "m": DISAGREE, "theta": DISAGREE, "P": BRAKES},
        limits=(Limit("F", BRAKES),),
        scene=lambda v: surface(
            v,
            level=way == "level",
            down=way == "down",
            title="Constant speed",
            opening={
                "up": "A body moves up a slope at constant speed.",
                "level": "A body moves to the right on the level at constant speed.",
                "down": "A body moves down a slope at constant speed.",
            }[way],
            distance="",
        ),
        notes=(
            ("The net force is zero, and so is the net work; the engine's work goes into height and heat.",)
            if way == "up"
            else ("The net force is zero, and so is the net work.",)
        ),
    )


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """Power and speed that fit the drawn road; downhill it is so flat that the engine still pushes."""
    toss = chance.random  # type: ignore[attr-defined]
    way = str(typed["way"])
    asked = next((name for name in ("v", "f", "m", "theta", "P") if not typed[name]), "F")
    m, theta = 900 + 50 * round(12 * toss()), 3 + round(3 * toss())
    if way == "level" and asked in ("m", "theta"):
        way = "up"
    pull = m * 9.8 * theta * 0.01745
    f = 10 * round(40 + 30 * toss() + (pull / 10 if way == "down" else 0))
    v = 12 + round(10 * toss())
    power = (f + {"up": pull, "level": 0.0, "down": -pull}[way]) * v
    shown = {
        "m": f"{m} kg" if way != "level" else "",
        "theta": f"{theta}°" if way != "level" else "",
        "f": f"{f} N",
        "v": f"{v} m/s",
        "F": "",
        "P": "" if asked in ("P", "F") else f"{power / 1e3:.3g} kW".replace(".", ","),
    }
    return {"way": way, **shown, asked: ""}


DRIVING = question(
    "constant-speed",
    "Power at constant speed",
    driving,
    **boxes(GOES, *ENGINE, draws={"way": Draw(("up", "up", "level"), "", ("up", "up", "level", "down"))}),
    drawn=("P", "v", "f", "m", "theta"),
    asks="P",
    constants=("g",),
    laws=(POWER.name,),
    adjust=practise,
    since=4,
)

# --- a pump ------------------------------------------------------------------------------------------------

OUTPUT = "Output cannot exceed input: no pump gives out more power than it takes in. Check the numbers."
share = Quantity("%", 1, 100, "An efficiency is greater than zero, and at most 100 %.")
KINETIC_OUT = "You left out the kinetic energy. The water leaves at speed: add {1/2*v^2} to {g*h}."
HEIGHT_OUT = "You left out the height. The water is lifted as well: add {g*h} to {1/2*v^2}."
RAISED = Relation(
    "P_out = m/Deltat*(g*h + 1/2*v^2)",
    what="Output power is the energy that the water gains in each second",
    why="Each kilogram gains gh in height and ½v² in speed; m/Δt is how many kilograms there are in each second.",
    plain="So much energy for each kilogram, times the kilograms in each second.",
    quotes=(POWER.name,),
    mistakes=(
        Mistake("kinetic-left-out", "P_out", "m/Deltat*g*h", KINETIC_OUT),
        Mistake("height-left-out", "P_out", "m/Deltat*1/2*v^2", HEIGHT_OUT),
        Mistake(
            "time-left-out",
            "P_out",
            "m*(g*h + 1/2*v^2)",
            "You stopped at the energy. Power is energy in each second: divide by {Deltat}.",
        ),
        Mistake(
            "kinetic-left-out",
            "h",
            "P_out*Deltat/(m*g)",
            "You gave all the power to the height. A part of it makes speed: subtract {1/2*v^2} first.",
        ),
        Mistake(
            "height-left-out",
            "v",
            "sqrt(2*P_out*Deltat/m)",
            "You gave all the power to the speed. A part of it lifts the water: subtract {g*h} first.",
        ),
        Mistake("kinetic-left-out", "m", "P_out*Deltat/(g*h)", KINETIC_OUT),
        Mistake("kinetic-left-out", "Deltat", "m*g*h/P_out", KINETIC_OUT),
    ),
    dropped={"v": "A speed has no sign: it is dropped."},
)
EFFICIENT = Relation(
    "eta = P_out/P_in*100",
    what="Efficiency is the output power as a percentage of the input power",
    why="The rest of the input becomes heat.",
    plain="Of every hundred joules taken in, so many come out as useful work.",
    mistakes=(
        Mistake(
            "upside-down",
            "eta",
            "P_in/P_out*100",
            "You divided the wrong way round. Divide the output by the input: {P_out/P_in}.",
        ),
        Mistake(
            "efficiency-multiplied",
            "P_in",
            "eta*P_out/100",
            "You multiplied. The input is larger than the output: divide by the efficiency.",
        ),
        Mistake(
            "efficiency-divided",
            "P_out",
            "100*P_in/eta",
            "You divided. The output is smaller than the input: multiply by the efficiency.",
        ),
    ),
)
LITTLE = (
    "This power is too little: it does not even reach for the rest. Check the power, the time and the other numbers."
)
WATER = (
    mass("m", "Mass of the water", "It moves {} of water.", "900 kg; 600 800 1 200; 750 950"),
    lasting("Deltat", "Time", "This takes {}.", "1 min; 40 60 90 s; 45 75", unit="s"),
    height(
        "h",
        "Height gained",
        "The water is raised by {}.",
        "8 m; 5 8 12; 6,5 9,5",
        told_at={0.0: "The water stays at one height."},
    ),
    speed(
        "v",
        "Speed at which the water leaves",
        "The water, at rest at first, leaves the hose at {}.",
        "6 m/s; 4 5 6 8; 4,5 7,5",
        told_at={0.0: "It leaves with hardly any speed."},
    ),
    rate("P_out", "Output power", "The output power of the pump is {}.", "?; 1,5 2 2,5 kW; 1,8 2,2", result="measured"),
    rate("P_in", "Input power", "The pump takes in {}.", "2,5 kW; 3 4 5; 3,5 4,5"),
    share("eta", "Efficiency", "The efficiency of the pump is {}.", "?; 60 70 75 80; 65 72"),
)


def refuse(data: Data, values: Values) -> None:
    """No more comes out than goes in."""
    out, taken = values.get("P_out", 0.0), values.get("P_in", 0.0)
    share_given = values.get("eta", 0.0) > 100 * (1 + 1e-9)
    if share_given or (taken and out > taken * (1 + 1e-9)):
        raise Refusal(next((name for name in ("eta", "P_in") if data.has(name)), None), OUTPUT)


def well(v: Values) -> Figure:
    """A pump between the water below and the hose above."""
    items: list[Item] = [
        Surface((-5.0, -5.0), (1.2, -5.0)),
        Text((-2.0, -4.2), "water", "above"),
        Segment((-4.4, -3.6), (0.6, -3.6), "guide"),
        Block((0.0, 0.0), 2.6, 2.0, 0.0, ""),
        Text((-1.6, 0.0), "pump", "left"),
        Segment((0.0, -4.4), (0.0, -1.0), "outline"),
        Segment((0.0, 1.0), (0.0, 4.4), "outline"),
        Segment((0.0, 4.4), (2.6, 4.4), "outline"),
        Dimension((5.4, -3.6), (5.4, 4.4), "h", 0.0, 0.0),
        Segment((0.6, -3.6), (5.4, -3.6), "guide"),
        Segment((2.6, 4.4), (5.4, 4.4), "guide"),
    ]
    return composed(
        "A pump",
        items,
        opening="A pump raises water from a tank by the height h to the end of a hose.",
        notes=("Not to scale.",),
    )


PUMP = declare(
    "pump",
    "A pump and its efficiency",
    (RAISED, EFFICIENT),
    openings=(
        "An electric pump lifts water from a well into a garden hose.",
        "A pump on a farm raises water from a dam to a trough.",
        "On a ship a pump brings sea water up to a hose on deck.",
    ),
    given=WATER,
    refuse=refuse,
    unfit={"h": LITTLE, "v": LITTLE},
    scene=well,
    constants=("g",),
    states=(POWER,),
    practised={
        "P_out": "m Deltat h v",
        "eta": "m Deltat h v P_in",
        "P_in": "m Deltat h v eta",
        "m": "Deltat h v P_out",
        "Deltat": "m h v P_out",
        "h": "m Deltat v P_out",
        "v": "m Deltat h P_out",
    },
    asks="eta",
    since=4,
)
