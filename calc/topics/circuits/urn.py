"""A whole question: an urn for a school fair: current, resistance, energy, cost, and a supply that is too low.

The set-up and its numbers are our own. P = VI, P = V²/R, W = PΔt (data-sheet equations); 1 kWh is 3,6 × 10⁶ J.
Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.model.answers import Point
from calc.model.questions import Check, Data, Mistake, Part, Plan, Question, Refusal
from calc.model.relations import Relation
from calc.topics.circuits.laws import ELECTRIC_POWER, OHM, power
from calc.topics.circuits.misstatements import USED_UP
from calc.topics.circuits.power import BY_OHM, COST, ENERGY, P_VI, P_VR, UNITS, across, lasting, price
from calc.topics.circuits.power import scene as device
from calc.working.declaring import boxes, state

NOT_LOWER = "The low supply must be lower than the one the urn is made for: type a smaller value."
LOW = P_VR.renamed(P="P_2", V="V_2")
LOW = replace(
    LOW,
    why="The element is the same, so its resistance is; only the potential difference has changed.",
    mistakes=(
        *LOW.mistakes,
        Mistake(
            "in-step",
            "P_2",
            "P*V_2/V",
            "You let the power fall in step with the potential difference. The current falls as well: use {V_2^2/R}.",
        ),
        Mistake("power-kept", "P_2", "P", "You kept the power. What stays the same is the resistance: use {V_2^2/R}."),
    ),
)
LONGER = Relation(
    "W = P_2*t_2",
    what="The same energy at the smaller power",
    why="The same water needs the same energy, whatever the supply.",
    plain="Less in each second, so more seconds.",
    units={"t_2": "s"},
    mistakes=(
        Mistake(
            "power-kept", "t_2", "W/P", "You divided by the first power. Divide by {P_2}, the power at the low supply."
        ),
        Mistake("multiplied", "t_2", "W*P_2", "You multiplied. Divide the energy {W} by {P_2}."),
    ),
)
SQUARED = Part(
    "squared",
    "explain",
    "Explain why the power falls by a larger factor than the potential difference.",
    points=(
        Point("With R constant a smaller V means a smaller current as well.", 1, ("current",)),
        Point("P = VI: both factors become smaller, so P falls with V².", 1, ("both",)),
    ),
    misstatements=(USED_UP,),
)
BOXES = (
    across("V", "Potential difference the urn is made for", "", "230 V; 110 220 230; 115 235"),
    power("P", "Power of the urn", "", "2,3 kW; 1,5 2 2,2; 1,65 1,95"),
    lasting("Deltat", "Time it heats", "", "45 min; 30 40 50; 35 55"),
    price("c", "Price of one kilowatt-hour", "", "2,4; 2 2,5 3; 1,85 2,35"),
    across("V_2", "Potential difference of the low supply", "", "207 V; 90 100 105; 95 102"),
)
TALES = (
    "For a school fair an urn heats water for tea.",
    "In a community hall an urn is filled and switched on before the guests arrive.",
    "A sports club heats water in an urn before a match.",
)


def plan(data: Data) -> Plan:
    """State, current, resistance, energy, cost, the low supply, why so much less, how much longer."""
    said, v = data.said, data.values
    if v["V_2"] >= v["V"]:
        raise Refusal("V_2", NOT_LOWER)
    return Plan(
        story=(
            f"{data.pick(*TALES)} It is made for {said['V']} and then has a power of {said['P']}; the resistance of its"
            f" element is constant. It heats for {said['Deltat']}. One kilowatt-hour costs {said['c']}."
        ),
        parts=(
            state(ELECTRIC_POWER),
            Part("current", "calculate", "Calculate the current in the element.", (made(P_VI, I="A").step("I"),)),
            Part(
                "resistance",
                "calculate",
                "Calculate the resistance of the element.",
                (made(BY_OHM, R="Ω").step("R"),),
            ),
            Part("energy", "calculate", "Calculate the energy it transfers.", (made(ENERGY, W="J").step("W"),)),
            Part(
                "cost",
                "calculate",
                "Calculate the cost of this energy.",
                (made(UNITS, n="").step("n"), made(COST, K="").step("K")),
            ),
            Part(
                "low",
                "calculate",
                f"One day the supply gives only {said['V_2']}. Calculate the power of the urn then.",
                (made(LOW, P_2="W").step("P_2"),),
            ),
            SQUARED,
            Part(
                "longer",
                "calculate",
                "Calculate the time the urn then needs for the same energy.",
                (LONGER.step("t_2"),),
            ),
        ),
        values=dict(v),
        scene=device,
        checks=(
            Check("The resistance straight from power and potential difference", "R = V^2/P"),
            Check("The times are as the squares of the potential differences", "t_2/Deltat = (V/V_2)^2"),
        ),
        notes=(
            "Appliances like this are sums on paper: nothing that is plugged into the mains is opened or measured.",
        ),
    )


def made(law: Relation, **units: str) -> Relation:
    """The law with the unit of what it finds."""
    return replace(law, units=units)


URN = Question(
    key="urn",
    title="An urn and its supply",
    **boxes(*BOXES),
    plan=plan,
    laws=(ELECTRIC_POWER.name, OHM.name),
    scenario=True,
    since=6,
)
