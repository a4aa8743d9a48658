"""A whole question: the element of a kiln on alternating current; device, rms, power, peak current, energy and cost.

The set-up and its numbers are our own; the price is a made-up number without a currency. Marks: common practice, no
source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure, GraphLine, graph
from calc.figures.graph_marks import Key
from calc.language.counts import MONEY
from calc.model.answers import Point
from calc.model.questions import SA, Check, Data, Mistake, Part, Plan, Question, Values
from calc.model.relations import Relation
from calc.topics.electrodynamics.laws import GENERATOR, ROOT_MEAN_SQUARE
from calc.topics.electrodynamics.rms import BY_VOLTAGE, RESISTOR, VOLTAGE
from calc.topics.electrodynamics.waves import sine
from calc.topics.shared.quantities import Quantity, resistance, voltage
from calc.working.declaring import boxes, state

ENERGY = Relation(
    "W = P_av*Deltat",
    what="Energy is average power times time",
    why="Power is the energy converted in each second; put in the time in seconds.",
    plain="So many joules each second, for so many seconds.",
    units={"W": "J"},
    mistakes=(
        Mistake("hours-kept", "W", "P_av*Deltat/3600", "You left the time in hours. Turn {Deltat} into seconds first."),
        Mistake(
            "divided",
            "W",
            "P_av/Deltat",
            "You divided by the time. Longer heating takes more energy: multiply {P_av} by {Deltat}.",
        ),
    ),
)
COST = Relation(
    "c = k_1*W/3600000",
    what="Cost of the energy",
    why="One kilowatt-hour is 1000 W for 3600 s, so 3 600 000 J.",
    plain="Count the kilowatt-hours, then pay for each.",
    units={"c": ""},
    counted={"c": MONEY},
    marks=SA,
    mistakes=(
        Mistake(
            "joules-paid",
            "c",
            "k_1*W",
            "You paid for each joule. The price is that of a kilowatt-hour: divide {W} by {3600000} first.",
        ),
    ),
)
PEAKS = replace(
    replace(RESISTOR, mistakes=()).renamed(V_rms="V_max", I_rms="I_max"),
    what="Resistance, with peaks on both sides",
    units={"I_max": "A"},
    mistakes=(
        Mistake("rms-as-peak", "I_max", "V_rms/R", "You found the rms current. The peak is asked: use {V_max}."),
        Mistake("multiplied", "I_max", "V_max*R", "You multiplied. More resistance means less current: divide by {R}."),
    ),
)
DEVICE = Part(
    "device",
    "explain",
    "Does the supply contain a generator with slip rings or one with a split-ring commutator? Give a reason.",
    points=(
        Point("One with slip rings.", 1, ("slip rings",)),
        Point("They keep each end of the coil joined to the same wire, so the current alternates.", 1, ("alternates",)),
    ),
)
HALF = Part(
    "half",
    "explain",
    "How large is the average power, compared with the largest power? Give a reason.",
    points=(
        Point("It is half of the largest power.", 1, ("half",)),
        Point(
            "The largest power is the peak voltage times the peak current, and each rms value is its peak over √2.",
            1,
            ("√2",),
        ),
    ),
)
hours = Quantity("h", 60, 1e6, "Time must be greater than zero.")
price = Quantity("", 1e-3, 1e4, "A price is greater than zero.")
BOXES = (
    voltage("V_max", "Peak potential difference", "", "340 V; 310 325 340; 156 311 334"),
    resistance("R", "Resistance of the element", "", "24 Ω; 20 25 30; 22 27,5 32"),
    hours("Deltat", "Time it is on", "", "6 h; 4 5 8; 3,5 7,5"),
    price("k_1", "Price of 1 kWh", "", "2,4; 2 2,5 3; 1,85 2,75"),
)


def scene(v: Values) -> Figure:
    """One and a half periods, with the peak."""
    return graph(
        "t",
        "V",
        [GraphLine(sine(1.5), "")],
        keys=[Key(0.25, 1.0, "", "", "V_{max}")],
        ticks=False,
        title="The potential difference across the element",
        description="Sketch of the potential difference against time: a sine with its peak marked V_max.",
    )


def plan(data: Data) -> Plan:
    """Device, state, rms, power, why half, peak current, energy, cost."""
    said = data.said
    told = f"a peak potential difference of {said['V_max']}, and its element has a resistance of {said['R']}"
    return Plan(
        story=data.pick(
            f"A pottery kiln works on alternating current with {told}. It is on for {said['Deltat']}.",
            f"The oven of a school kitchen is fed with alternating current: {told}. It heats for {said['Deltat']}.",
            f"A dryer for fruit is connected to an alternating supply with {told}. It runs for {said['Deltat']}.",
        ),
        parts=(
            DEVICE,
            state(ROOT_MEAN_SQUARE),
            Part("rms", "calculate", "Calculate the rms potential difference.", (VOLTAGE.step("V_rms"),)),
            Part("power", "calculate", "Calculate the average power.", (BY_VOLTAGE.step("P_av"),)),
            HALF,
            Part(
                "peak",
                "calculate",
                "Calculate the peak current.",
                (PEAKS.step("I_max"),),
            ),
            Part("energy", "calculate", "Calculate the energy that is converted in this time.", (ENERGY.step("W"),)),
            Part("cost", "calculate", f"One kilowatt-hour costs {said['k_1']}. Calculate the cost.", (COST.step("c"),)),
        ),
        values=dict(data.values),
        scene=scene,
        checks=(
            Check("The average power is half of the largest", "P_av = V_max*I_max/2"),
            Check("The energy straight from the peak", "W = V_max^2/(2*R)*Deltat"),
        ),
        notes=("Mains is dangerous: everything here is worked on paper.",),
    )


KILN = Question(
    "kiln",
    "A kiln on alternating current",
    plan=plan,
    **boxes(*BOXES),
    laws=(ROOT_MEAN_SQUARE.name, GENERATOR.name),
    scenario=True,
    since=6,
)
