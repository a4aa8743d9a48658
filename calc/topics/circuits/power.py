"""Power, energy and cost: P = VI = I²R = V²/R, W = PΔt, kilowatt-hours and what they cost, for any unknown.

One kilowatt-hour is 3,6 × 10⁶ J exactly: 1 000 W for 3 600 s. Mistakes and marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.circuits import Part, circuit, parallel, series
from calc.language.counts import MONEY
from calc.model.questions import SA, Mistake, Values
from calc.model.relations import Relation, Said
from calc.topics.circuits.laws import ELECTRIC_POWER, OHM, current, power, resistance
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import declare

across = Quantity("V", 1e-3, 240, "Potential difference must be greater than zero.")
lasting = Quantity("s", 1e-3, 1e8, "Time must be greater than zero.")
used = Quantity("J", 1e-3, 1e12, "Energy must be greater than zero.")
counted = Quantity("", 1e-3, 1e6, "The number of kilowatt-hours must be greater than zero.", counted="kWh")
price = Quantity("", 1e-3, 1e3, "A price must be greater than zero.", help="in your money, for 1 kWh", counted=MONEY)
money = Quantity("", 1e-3, 1e6, "A cost must be greater than zero.", help="in the same money", counted=MONEY)

DIVIDED = "You divided. Every coulomb carries energy, and the current says how many pass: multiply {V} by {I}."
NOT_SQUARED = "You did not square the current. That is the potential difference: use {I^2*R}."
PD_NOT_SQUARED = "You did not square the potential difference. That is the current: use {V^2/R}."
P_VI = Relation(
    "P = V*I",
    what="Power is potential difference times current",
    why="V is the energy of each coulomb, and I is how many coulombs pass in each second.",
    plain="Energy for each parcel of charge, times parcels in each second.",
    quotes=(ELECTRIC_POWER.name,),
    mistakes=(
        Mistake("divided", "P", "V/I", DIVIDED),
        Mistake("upside-down", "I", "V/P", "You divided the other way round: divide {P} by {V} to get the current."),
        Mistake("multiplied", "I", "P*V", "You multiplied. Divide the power {P} by {V} to get the current."),
        Mistake("upside-down", "V", "I/P", "You divided the other way round: divide {P} by {I}."),
        Mistake("multiplied", "V", "P*I", "You multiplied. Divide the power {P} by {I}."),
    ),
)
P_IR = Relation(
    "P = I^2*R",
    what="Power from current and resistance",
    why="P = VI with V = IR in it.",
    plain="Twice the current makes four times the heat in the same resistor.",
    quotes=(ELECTRIC_POWER.name,),
    mistakes=(
        Mistake("not-squared", "P", "I*R", NOT_SQUARED),
        Mistake("root-omitted", "I", "P/R", "You stopped at {I^2}. Take its square root to get {I}."),
        Mistake("not-squared", "R", "P/I", "You divided by {I} only once. Divide {P} by {I^2}."),
    ),
)
P_VR = Relation(
    "P = V^2/R",
    what="Power from potential difference and resistance",
    why="P = VI with I = V/R in it.",
    plain="At the same volts a smaller resistance takes more power.",
    quotes=(ELECTRIC_POWER.name,),
    mistakes=(
        Mistake("not-squared", "P", "V/R", PD_NOT_SQUARED),
        Mistake("multiplied", "P", "V^2*R", "You multiplied by {R}. Divide {V^2} by it."),
        Mistake("root-omitted", "V", "P*R", "You stopped at {V^2}. Take its square root to get {V}."),
        Mistake("not-squared", "R", "V/P", "You did not square the potential difference: use {V^2/P}."),
        Mistake("upside-down", "R", "P/V^2", "You divided the other way round: divide {V^2} by {P}."),
    ),
)
BY_OHM = Relation(
    "V = I*R",
    what="Ohm's law for the device",
    why="Its resistance is taken as constant.",
    plain="More volts drive more current through the same resistor.",
    quotes=(OHM.name,),
    mistakes=(
        Mistake("upside-down", "R", "I/V", "You divided the other way round: divide {V} by {I}."),
        Mistake("multiplied", "I", "V*R", "You multiplied. Divide {V} by {R} to get the current."),
        Mistake("divided", "V", "I/R", "You divided. Multiply {I} by {R}."),
    ),
)
ENERGY = Relation(
    "W = P*Deltat",
    what="Energy is power times time",
    why="Power is the energy transferred in each second. The time must be in seconds.",
    plain="So much in each second, for so many seconds.",
    quotes=(ELECTRIC_POWER.name,),
    mistakes=(
        Mistake("divided", "W", "P/Deltat", "You divided by the time. Multiply {P} by {Deltat}."),
        Mistake(
            "minutes",
            "W",
            "P*Deltat/60",
            "You left the time in minutes. A watt is a joule in each second: use seconds.",
        ),
        Mistake(
            "hours", "W", "P*Deltat/3600", "You left the time in hours. A watt is a joule in each second: use seconds."
        ),
        Mistake("upside-down", "Deltat", "P/W", "You divided the other way round: divide {W} by {P}."),
        Mistake("multiplied", "Deltat", "W*P", "You multiplied. Divide the energy {W} by {P}."),
        Mistake("multiplied", "P", "W*Deltat", "You multiplied. Divide the energy {W} by {Deltat}."),
    ),
)
UNITS = Relation(
    "n = W/3600000",
    what="Change the joules to kilowatt-hours",
    why="One kilowatt-hour is 1 000 W for 3 600 s, which is 3,6 × 10⁶ J. n counts the kilowatt-hours.",
    plain="A kilowatt-hour is a large parcel of energy; count the parcels.",
    marks=SA,
    counted={"n": "kWh"},
    said={"W": Said("Change the kilowatt-hours to joules", count=False)},
    mistakes=(
        Mistake(
            "kilo-only",
            "n",
            "W/1000",
            "You stopped at kilojoules. Use {W/3600000} for kilowatt-hours.",
        ),
        Mistake(
            "hours-only",
            "n",
            "W/3600",
            "You stopped at watt-hours. Use {W/3600000} for kilowatt-hours.",
        ),
        Mistake("multiplied", "n", "W*3600000", "You multiplied. Use {W/3600000} to count kilowatt-hours."),
        Mistake(
            "hours-only",
            "W",
            "n*3600",
            "You left out the kilo. A kilowatt-hour is more than a watt-hour: use {3600000*n}.",
        ),
    ),
)
COST = Relation(
    "K = n*c",
    what="The cost is the number of kilowatt-hours times the price of one",
    why="Electrical energy is sold by the kilowatt-hour.",
    plain="So many parcels at so much each.",
    counted={"K": MONEY, "c": MONEY, "n": "kWh"},
    mistakes=(
        Mistake("divided", "K", "n/c", "You divided by the price. Multiply {n} by {c}."),
        Mistake(
            "price-of-kilowatt",
            "K",
            "P/1000*c",
            (
                "You multiplied kilowatts by the price. The price is for kilowatt-hours: use {n}, which has the"
                " time in it."
            ),
        ),
        Mistake("multiplied", "n", "K*c", "You multiplied by the price. Divide {K} by {c} to get {n}."),
        Mistake("upside-down", "c", "n/K", "You divided the other way round: divide {K} by {n}."),
    ),
)
BOXES = (
    across(
        "V",
        "Potential difference",
        "It works at {}.",
        "; 110 120 230 V; 115 240",
        ask="Calculate the potential difference across it.",
    ),
    current("I", "Current", "The current in it is {}.", "?; 4 6 8; 4,5 6,5"),
    resistance("R", "Resistance", "Its resistance is {}.", "?; 12 24 46; 18 35 52"),
    power("P", "Power", "Its power is {}.", "1,5 kW; 750 1200 1500 W; 840 1200", unit="W"),
    lasting("Deltat", "Time", "It works for {} in all.", "20 min; 15 20 40 min; 25 35 50"),
    used("W", "Energy transferred", "It transfers {} of energy.", "?; 360 540 900 kJ; 450 720", result="measured"),
    counted(
        "n",
        "Number of kilowatt-hours",
        "It uses {} kilowatt-hours of energy.",
        "?; 2 3 4; 1,5 2,4",
        ask="Calculate how many kilowatt-hours it uses.",
        result="measured",
    ),
    price("c", "Price of one kilowatt-hour", "One kilowatt-hour costs {}.", "2,4; 2 2,5 3; 1,85 2,35"),
    money("K", "Cost of the energy", "The energy costs {}.", "?; 1,5 3 6; 2,25 4,8", result="measured"),
)


def scene(v: Values) -> Figure:
    """The device between its meters."""
    return circuit(
        Part("battery", "supply"),
        series(Part("ammeter"), parallel(Part("voltmeter"), Part("resistor", "R"))),
        title="The device and its supply",
        notes=("Cells stand for any supply.",),
    )


WAYS = {
    "P": ("V I", "I R", "V R", "W Deltat"),
    "I": ("P V", "P R", "V R"),
    "V": ("P I", "P R", "I R"),
    "R": ("V I", "P I", "P V"),
    "W": ("P Deltat", "V I Deltat", "V R Deltat"),
    "Deltat": ("W P", "n P", "W V I"),
    "n": ("P Deltat", "W", "V I Deltat"),
    "c": ("K n", "K P Deltat"),
    "K": ("P Deltat c", "V I Deltat c", "n c"),
}


def practised(typed: object, level: int) -> dict[str, str]:
    """One of the ways to each unknown, by the numbers drawn."""
    turn = sum(map(ord, str(typed)))
    return {name: ways[turn % len(ways)] for name, ways in WAYS.items()}


POWER = declare(
    "power",
    "Power, energy and cost",
    (P_VI, P_IR, P_VR, BY_OHM, ENERGY, UNITS, COST),
    openings=(
        "An electrical heater has a constant resistance.",
        "A water heater, an urn and an iron are all one thing to a circuit: a heating element of constant resistance."
        " Take one"
        " of them.",
        "Somebody wants to know what a heating device takes from its supply; its resistance is taken as constant.",
    ),
    given=BOXES,
    scene=scene,
    states=(ELECTRIC_POWER,),
    laws=(OHM,),
    practised=practised,
    asks="K",
    notes=("Costs are in whatever money the price is in.",),
    since=6,
)
