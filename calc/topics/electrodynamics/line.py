"""A line that carries electrical power: current, loss, what arrives, and the same power at a higher voltage.

P = VI at the sending end, I²R in the line: data-sheet equations, with rms values and a line that is a resistor.
Transformers are ideal and only told by their voltages. Mistakes and marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.power_line import power_line
from calc.model.answers import Point
from calc.model.questions import A, Mistake, Part, Values
from calc.model.relations import Relation, Said
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import Limit, declare

ALL_LOST = (
    "More would be lost in the line than is sent: at this voltage the line cannot carry so much power. Raise the"
    " voltage, or type a smaller power or resistance."
)
WHOLE_VOLTAGE = (
    "You used the voltage at the sending end for the line. Only a part of it is across the line: use {I^2*R}."
)
SENT = Relation(
    "P = V*I",
    what="Power that is sent, from voltage and current",
    why="All the current that leaves the sending end flows through the line. V and I are rms values.",
    plain="The same power at a higher voltage needs less current.",
    units={"P": "W", "V": "V", "I": "A"},
    mistakes=(
        Mistake(
            "upside-down", "I", "V/P", "You turned the fraction over. Current is power over voltage: divide {P} by {V}."
        ),
        Mistake(
            "multiplied",
            "I",
            "P*V",
            "You multiplied. The same power at a higher voltage needs less current: divide by {V}.",
        ),
    ),
)
LOST = Relation(
    "P_lost = I^2*R",
    what="Power lost in the line",
    why="The line heats like any resistor, and the whole current flows through it.",
    plain="Half the current, a quarter of the loss.",
    units={"P_lost": "W", "I": "A", "R": "Ω"},
    dropped={"I": "The rms value is a size and never negative: drop it."},
    mistakes=(
        Mistake("voltage-of-the-supply", "P_lost", "V^2/R", WHOLE_VOLTAGE),
        Mistake("not-squared", "P_lost", "I*R", "You did not square the current. The loss is {I^2*R}: square {I}."),
        Mistake("root-omitted", "I", "P_lost/R", "You stopped at {I^2}. Take its square root: that is {I}."),
    ),
)
SHARE = Relation(
    "p = P_lost/P*100",
    what="The share that is lost",
    why="Lost power over sent power, in per cent.",
    plain="Of every hundred units sent, so many are lost.",
    units={"p": "%", "P_lost": "W", "P": "W"},
    marks=A,
)
ALONG = Relation(
    "p = I*R/V*100",
    what="The share of the voltage that is needed along the line",
    why="Divide the loss I²R by the power VI that is sent: one I cancels, and IR over V is left.",
    plain="The line takes the same share of the voltage as of the power.",
    units={"p": "%", "I": "A", "R": "Ω", "V": "V"},
)
ARRIVES = Relation(
    "P_out = P - P_lost",
    what="What arrives at the far end",
    why="Energy is conserved: what is not lost in the line arrives.",
    plain="Sent, less lost.",
    units={"P_out": "W", "P": "W", "P_lost": "W"},
    marks=A,
    said={"P": Said(marks=A)},
    mistakes=(
        Mistake("lost-for-arrived", "P_out", "P_lost", "You gave the loss. Subtract it from {P}: the rest arrives."),
    ),
)
AGAIN = SENT.renamed(V="V_2", I="I_2")
LOST_AGAIN = LOST.renamed(P_lost="P_lost2", I="I_2")
WHY_HIGH = Part(
    "why-high",
    "explain",
    "Explain why power is sent over long distances at a high voltage.",
    points=(
        Point("For the same power a higher voltage needs a smaller current (P = VI).", 1, ("smaller current",)),
        Point("The loss in the line is I²R, with R the same: it falls with the square of the current.", 1, ("I²R",)),
        Point("So a smaller share of the power is lost as heat in the line.", 1, ("smaller share",)),
    ),
)
high_voltage = Quantity("V", 1, 1e6, "Potential difference must be greater than zero.")
watts = Quantity("W", 1, 1e10, "Power must be greater than zero.")
line_resistance = Quantity("Ω", 1e-3, 1e4, "Resistance must be greater than zero.")
line_current = Quantity("A", 1e-3, 1e5, "Current must be greater than zero.", result="measured")
per_cent = Quantity("%", 1e-6, 100, "The share that is lost lies between 0 % and 100 %.", under=100.0)
QUANTITIES = (
    watts("P", "Power that is sent", "A power of {} is sent into the line.", "46 kW; 20 30 60; 18 45 72", unit="kW"),
    high_voltage(
        "V",
        "Voltage at the sending end (rms)",
        "The rms voltage at the sending end is {}.",
        "2300 V; 1500 2000 3000; 1800 2400 3300",
    ),
    line_resistance(
        "R", "Resistance of the line", "The resistance of the whole line is {}.", "8 Ω; 2 4 5 10; 3,5 6,5 12"
    ),
    line_current(
        "I", "Current in the line (rms)", "The rms current in the line is {}.", "?; 10 15 20; 8,5 24", unfit=ALL_LOST
    ),
    watts(
        "P_lost",
        "Power lost in the line",
        "In the line {} are lost.",
        "?; 800 1200 2000 W; 950 1750",
        result="measured",
        unit="W",
    ),
    per_cent(
        "p",
        "Share that is lost",
        "In the line {} of the power is lost.",
        "; 2 4 5 8; 2,5 6,5",
        ask="Calculate the percentage of the power that is lost in the line.",
        result="measured",
        unfit=ALL_LOST,
    ),
    watts(
        "P_out", "Power that arrives", "At the far end {} arrive.", "?", unit="kW", result="measured", unfit=ALL_LOST
    ),
    high_voltage(
        "V_2",
        "Another voltage for the same power",
        "An ideal transformer then raises the voltage for the same power to {}.",
        "; 11 22 kV; 15 33",
        ask="At another voltage the same power is sent. Calculate this voltage.",
    ),
    watts(
        "P_lost2",
        "Power lost at the other voltage",
        "At the other voltage {} are lost.",
        "; 20 50 W; 35 75",
        unit="W",
        result="measured",
        ask="Calculate the power that is lost in the line at the other voltage.",
    ),
)
PRACTISED = {
    "P_lost": "P V R",
    "I": "P V",
    "p": "P V R",
    "P_out": "P V R",
    "R": "P V p",
    "V": "P R p",
    "P": "P_lost R V",
    "P_lost2": "P R V_2",
    "V_2": "P R P_lost2",
}


def scene(v: Values) -> Figure:
    """The line between its ends."""
    return power_line()


LINE = declare(
    "line",
    "Losses in a line, and why the voltage is high",
    (SENT, LOST, SHARE, ARRIVES, ALONG, AGAIN, LOST_AGAIN),
    openings=(
        "A small hydro plant feeds a village over a long line.",
        "A line of two copper wires carries the power of a wind wheel to a farm.",
        "Solar panels on a hill feed an inverter, and a long line carries its alternating current to a school.",
    ),
    given=QUANTITIES,
    scene=scene,
    limits=(Limit("P - P_lost", ALL_LOST, at="P"), Limit("P - P_lost2", ALL_LOST, at="P")),
    later=lambda data, values: (WHY_HIGH,),
    notes=(
        "Voltage here is the potential difference between the two wires. Only a small part of it is needed along them.",
    ),
    units={"I_2": "A", "P_lost2": "W"},
    practised=PRACTISED,
    asks="P_lost",
    since=6,
)
