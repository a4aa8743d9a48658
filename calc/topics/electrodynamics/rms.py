"""Alternating current in a resistor: peak and rms values, resistance, average and largest power, any of them.

V_rms = V_max/√2, I_rms = I_max/√2, P_av = V_rms I_rms = I_rms² R = V_rms²/R: data-sheet equations, for a sine and a
resistor; the largest power is V_max I_max, twice the average. Mistakes and marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.graph_marks import Key
from calc.figures.graphs import GraphLine, graph
from calc.model.questions import Mistake, Values
from calc.model.relations import Relation, Said
from calc.topics.electrodynamics.laws import ROOT_MEAN_SQUARE
from calc.topics.electrodynamics.waves import sine
from calc.topics.shared.quantities import current, power, resistance, voltage
from calc.working.declaring import declare

LESS = "You multiplied by √2. The rms value is smaller than the peak: divide {%s} by {sqrt(2)}."
MORE = "You divided by √2. The peak is larger than the rms value: multiply {%s} by {sqrt(2)}."
NOT_MIXED = "You took one peak and one rms value. Don't mix them: use {V_rms} and {I_rms}."
USE_RMS = "You multiplied the two peaks. That is the largest power, twice the average: use {V_rms} and {I_rms}."


def peak_and_rms(kind: str, unit: str) -> Relation:
    """V_rms = V_max/√2 or the same of the current."""
    rms, peak = f"{kind}_rms", f"{kind}_max"
    return Relation(
        f"{rms} = {peak}/sqrt(2)",
        what="From the peak to the rms value, or back",
        why="For a sine the rms value is the peak divided by √2: the mean of sin² over a period is a half.",
        plain="The direct value that heats as much is about seven tenths of the peak.",
        units={rms: unit, peak: unit},
        quotes=(ROOT_MEAN_SQUARE.name,),
        mistakes=(
            Mistake("multiplied", rms, f"{peak}*sqrt(2)", LESS % peak, "the answer is twice the right one"),
            Mistake("peak-as-rms", rms, peak, "You gave the peak. The rms value is smaller: divide by {sqrt(2)}."),
            Mistake("divided", peak, f"{rms}/sqrt(2)", MORE % rms, "the answer is half the right one"),
            Mistake("rms-as-peak", peak, rms, "You gave the rms value. The peak is larger: multiply by {sqrt(2)}."),
        ),
    )


VOLTAGE, CURRENT = peak_and_rms("V", "V"), peak_and_rms("I", "A")
AVERAGE = Relation(
    "P_av = V_rms*I_rms",
    what="Average power from the rms values",
    why="The rms values are made so that they give the average power just as direct values do.",
    plain="Volts times amperes, taken as steady values that heat as much.",
    units={"P_av": "W", "V_rms": "V", "I_rms": "A"},
    quotes=(ROOT_MEAN_SQUARE.name,),
    mistakes=(
        Mistake("peak-times-peak", "P_av", "V_max*I_max", USE_RMS, "the answer is twice the right one"),
        Mistake("mixed", "P_av", "V_max*I_rms", NOT_MIXED, "the answer is √2 times the right one"),
        Mistake("mixed", "P_av", "V_rms*I_max", NOT_MIXED, "the answer is √2 times the right one"),
        Mistake("mixed", "I_rms", "P_av/V_max", NOT_MIXED, "the answer is the right one divided by √2"),
        Mistake("mixed", "V_rms", "P_av/I_max", NOT_MIXED, "the answer is the right one divided by √2"),
    ),
)
RESISTOR = Relation(
    "V_rms = I_rms*R",
    what="Resistance, with rms values on both sides",
    why="V = IR holds at each moment, so it holds for both rms values, and for both peaks.",
    plain="How hard it is pushed, over how much flows.",
    units={"V_rms": "V", "I_rms": "A", "R": "Ω"},
    mistakes=(
        Mistake("mixed", "R", "V_max/I_rms", NOT_MIXED, "the answer is √2 times the right one"),
        Mistake("mixed", "R", "V_rms/I_max", NOT_MIXED, "the answer is the right one divided by √2"),
        Mistake("mixed", "I_rms", "V_max/R", NOT_MIXED, "the answer is √2 times the right one"),
    ),
)
BY_CURRENT = Relation(
    "P_av = I_rms^2*R",
    what="Average power from current and resistance",
    why="Put V_rms = I_rms R into P_av = V_rms I_rms.",
    plain="Twice the current heats four times as much.",
    units={"P_av": "W", "I_rms": "A", "R": "Ω"},
    dropped={"I_rms": "The rms value is a size and never negative: drop it."},
    mistakes=(
        Mistake("peak-for-rms", "P_av", "I_max^2*R", "You squared the peak. Square the rms current: use {I_rms}."),
        Mistake("not-squared", "P_av", "I_rms*R", "You did not square the current. Power is {I_rms^2*R}: square it."),
        Mistake("root-omitted", "I_rms", "P_av/R", "You stopped at {I_rms^2}. Take its square root: that is {I_rms}."),
    ),
)
BY_VOLTAGE = Relation(
    "P_av = V_rms^2/R",
    what="Average power from potential difference and resistance",
    why="Put I_rms = V_rms/R into P_av = V_rms I_rms.",
    plain="Twice the push heats four times as much.",
    units={"P_av": "W", "V_rms": "V", "R": "Ω"},
    dropped={"V_rms": "The rms value is a size and never negative: drop it."},
    mistakes=(
        Mistake("peak-for-rms", "P_av", "V_max^2/R", "You squared the peak. Square the rms value: use {V_rms}."),
        Mistake(
            "not-squared",
            "P_av",
            "V_rms/R",
            "You did not square the potential difference. Power is {V_rms^2/R}: square it.",
        ),
        Mistake("peak-for-rms", "R", "V_max^2/P_av", "You squared the peak. Square the rms value: use {V_rms}."),
        Mistake("root-omitted", "V_rms", "P_av*R", "You stopped at {V_rms^2}. Take its square root: that is {V_rms}."),
    ),
)
LARGEST_POWER = Relation(
    "P_max = V_max*I_max",
    what="The largest power, from the peaks",
    why="At the moment of the peaks V and I are both at their largest, so their product is as well.",
    plain="The most that it ever takes, twice in each period.",
    units={"P_max": "W", "V_max": "V", "I_max": "A"},
    mistakes=(
        Mistake(
            "rms-times-rms",
            "P_max",
            "V_rms*I_rms",
            "You multiplied the rms values. That is the average power: the largest is twice {P_av}.",
            "the answer is half the right one",
        ),
    ),
)
HALF = Relation(
    "P_av = P_max/2",
    what="The average is half of the largest power",
    why="P_av = V_rms I_rms = (V_max/√2)(I_max/√2), and √2 times √2 is 2.",
    plain="As often above half as below it.",
    units={"P_av": "W", "P_max": "W"},
    said={"P_max": Said("The largest power is twice the average")},
    mistakes=(
        Mistake("not-halved", "P_av", "P_max", "You gave the largest power. The average is half of it."),
        Mistake("halved", "P_max", "P_av/2", "You halved. The largest power is twice the average: multiply by 2."),
    ),
)
QUANTITIES = (
    voltage(
        "V_rms",
        "Rms potential difference",
        "The rms potential difference across it is {}.",
        "230 V; 12 24 115 230; 9,5 42 220",
    ),
    voltage(
        "V_max",
        "Peak potential difference",
        "The peak of the potential difference across it is {}.",
        "; 17 34 310; 15 62 325",
    ),
    current("I_rms", "Rms current", "The rms current in it is {}.", "?; 0,5 2 4 5; 0,35 1,6 7,5", result="measured"),
    current(
        "I_max", "Peak current", "The peak of the current in it is {}.", "; 0,8 3 7; 0,55 2,4 9,5", result="measured"
    ),
    resistance(
        "R",
        "Resistance",
        "Its resistance is {}.",
        "46 Ω; 6 8 20 46; 7,5 33 52",
    ),
    power("P_av", "Average power", "On average it dissipates {}.", "?; 24 60 100 1150; 38 75 850", result="measured"),
    power("P_max", "Largest power", "At most it dissipates {}.", "; 48 120 200; 76 150", result="measured"),
)
PRACTISED = {
    "P_av": "V_rms R",
    "I_rms": "P_av V_rms",
    "I_max": "V_rms R",
    "R": "P_av V_rms",
    "V_rms": "P_av I_max",
    "V_max": "P_av R",
    "P_max": "V_rms R",
}


def scene(v: Values) -> Figure:
    """One and a half periods of the potential difference, its peak and its rms value; a sketch."""
    return graph(
        "t",
        "V",
        [GraphLine(sine(1.5), ""), GraphLine(((0.0, 0.5**0.5), (1.5, 0.5**0.5)), "V_{rms}", "dashed")],
        keys=[Key(0.25, 1.0, "", "", "V_{max}")],
        ticks=False,
        title="Peak and rms value",
        description=(
            "Sketch of the potential difference against time, a sine: the peak V_max is marked, and dashed, at about"
            " seven tenths of it, the rms value V_rms."
        ),
    )


ALTERNATING = declare(
    "rms",
    "Alternating current: rms, peak and power",
    (VOLTAGE, CURRENT, AVERAGE, RESISTOR, BY_CURRENT, BY_VOLTAGE, LARGEST_POWER, HALF),
    openings=(
        "A heating wire is connected to an alternating supply.",
        "A resistor is connected to a generator of alternating current.",
        "The element of a kettle is fed with alternating current and behaves as a resistor.",
    ),
    given=QUANTITIES,
    scene=scene,
    states=(ROOT_MEAN_SQUARE,),
    notes=("The average power is half the largest power; the rms values are smaller than the peaks.",),
    practised=PRACTISED,
    asks="P_av",
    since=6,
)
