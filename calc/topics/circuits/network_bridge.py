"""A bridge of five resistors: no two of them are in series or in parallel, so the junctions A and B are worked.

What enters A and B leaves them again: two equations for V_A and V_B, the potential differences from A and B to the
negative terminal. Balanced, R₁R₄ = R₂R₃ and nothing passes R₅. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.circuits import Part as Drawn
from calc.figures.circuits import bridge
from calc.model.answers import Point
from calc.model.questions import Choice, Data, Mistake, Part, Refusal, Values
from calc.model.relations import Relation, Together
from calc.topics.circuits.laws import OHM, PARALLEL, current, volts
from calc.topics.circuits.laws import resistance as ohms
from calc.topics.circuits.misstatements import USED_UP
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import boxes, told
from calc.working.solving import Laws, Situation, question

through = Quantity("A", 1e-9, 20, signed=True, help="plus: from A to B", result="measured")
STATE = Choice(
    "state",
    "The bridge",
    (("any", "carries a current in R₅"), ("balanced", "is balanced: no current in R₅")),
)
NOT_IN_SERIES = (
    "You took two resistors as if they stood in series. A part of the current turns off into {R5}: use the junctions."
)
AT_A = Relation(
    "(V - V_A)/R1 = V_A/R2 + (V_A - V_B)/R5",
    what="Junction A: what comes through R₁ goes on through R₂ and R₅",
    why="No charge is lost at a junction. Each current is the potential difference across its resistor by R.",
    plain="What flows into a meeting point flows out of it again.",
    units={"V_A": "V"},
    quotes=(PARALLEL.name,),
    mistakes=(Mistake("as-series", "V_A", "V*R2/(R1 + R2)", NOT_IN_SERIES),),
)
AT_B = Relation(
    "(V - V_B)/R3 + (V_A - V_B)/R5 = V_B/R4",
    what="Junction B: what comes through R₃ and R₅ goes on through R₄",
    why="No charge is lost at a junction. A negative current in R₅ would come from B.",
    plain="What flows into a meeting point flows out of it again.",
    units={"V_B": "V"},
    quotes=(PARALLEL.name,),
    mistakes=(Mistake("as-series", "V_B", "V*R4/(R3 + R4)", NOT_IN_SERIES),),
)
MEETING = "What flows into a meeting point flows out of it again."
BOTH = Together(
    AT_A, AT_B, find="V_A", drop="V_B", what="Two junctions, two equations: V_B drops out", plain=MEETING, back=True
)
ACROSS = Relation(
    "V_A - V_B = I5*R5",
    what="Ohm's law for R₅, between A and B",
    why="Across R₅ lies the difference of the two. It is plus where the current goes from A to B.",
    plain="A difference is needed for a current, as water needs a slope.",
    units={"I5": "A"},
    quotes=(OHM.name,),
    mistakes=(
        Mistake("added", "I5", "(V_A + V_B)/R5", "You added. Between A and B lies the difference: use {V_A - V_B}."),
        Mistake("one-only", "I5", "V_A/R5", "You used {V_A} alone. Across {R5} lies the difference: use {V_A - V_B}."),
    ),
)
TOTAL = Relation(
    "I = (V - V_A)/R1 + (V - V_B)/R3",
    what="The total current divides between R₁ and R₃",
    why="Both start at the positive terminal.",
    plain="Both ways together carry what the battery supplies.",
    units={"I": "A"},
    quotes=(PARALLEL.name,),
    mistakes=(
        Mistake(
            "whole-volts",
            "I",
            "V/R1 + V/R3",
            "You used the whole of {V}. Across {R1} only {V - V_A} lies, across {R3} only {V - V_B}: use these.",
        ),
    ),
)
UPSIDE = "You have the ratio upside down. Multiply crosswise: {R1*R4} must equal {R2*R3}."
BALANCE = Relation(
    "R1*R4 = R2*R3",
    what="A balanced bridge: both ways are divided in the same ratio",
    why=(
        "No current in R₅ means that A and B lie at the same potential: R₁ and R₂ divide V as R₃ and R₄ do,"
        " R₁/R₂ = R₃/R₄."
    ),
    plain="The two midway points are equally high, so nothing flows between them.",
    units=dict.fromkeys(("R1", "R2", "R3", "R4"), "Ω"),
    mistakes=(
        Mistake("ratio-inverted", "R4", "R1*R3/R2", UPSIDE),
        Mistake("ratio-inverted", "R3", "R2*R4/R1", UPSIDE),
        Mistake("ratio-inverted", "R1", "R2*R4/R3", UPSIDE),
        Mistake("ratio-inverted", "R2", "R1*R3/R4", UPSIDE),
    ),
)
GIVEN = (
    volts("V", "Potential difference across the bridge", "Across the bridge lies {}.", "6 V; 6 9 12; 4,5 7,5"),
    ohms("R1", "Resistance R₁, before A", "R₁ is {}.", "2 Ω; 2 4 6; 3,5 5,5"),
    ohms("R2", "Resistance R₂, after A", "R₂ is {}.", "4 Ω; 3 5 8; 4,5 7,5"),
    ohms("R3", "Resistance R₃, before B", "R₃ is {}.", "3 Ω; 3 9 12; 6,5 8,5"),
    ohms("R4", "Resistance R₄, after B", "R₄ is {}.", "2 Ω; 2 5 10; 1,5 9,5"),
    ohms("R5", "Resistance R₅, from A to B", "R₅ is {}.", "5 Ω; 5 10 20; 2,5 15"),
    through("I5", "Current in R₅, from A to B", "The current in R₅, from A to B, is {}.", "?; 0,1 0,2; 0,15 0,25"),
    volts("V_A", "Potential difference from A to the negative terminal", "A voltmeter from A to minus reads {}.", ""),
    volts("V_B", "Potential difference from B to the negative terminal", "A voltmeter from B to minus reads {}.", ""),
    current("I", "Total current", "The total current is {}.", "?; 1 2; 1,5 2,5"),
)
OPENINGS = {
    "any": (
        "Five resistors form a bridge between the terminals of a supply.",
        "A sensor is a bridge of four resistors with a fifth one across it.",
        "On a practice board five resistors are connected as a bridge.",
    ),
    "balanced": (
        "Four resistors form a bridge; the meter between A and B shows no current.",
        "A slide is moved until the current between the middles of the two ways is zero.",
        "To measure a resistance a bridge is balanced: nothing passes from A to B.",
    ),
}


def laws(data: Data) -> Laws:
    """The junctions, or the ratio of a balanced bridge."""
    return (BALANCE,) if data.choices["state"] == "balanced" else (BOTH, ACROSS, AT_B, AT_A, TOTAL)


def scene(v: Values) -> Figure:
    """The bridge with its names."""
    parts = tuple(Drawn("resistor", f"R_{n}") for n in range(1, 6))
    return bridge(Drawn("battery", "V"), parts)  # type: ignore[arg-type]


def balanced(data: Data, v: Values) -> tuple[Part, ...]:
    """Whether it is balanced, and what that would take."""
    if data.choices["state"] == "balanced" or not {"R1", "R2", "R3", "R4"} <= v.keys():
        return ()
    same = abs(v["R1"] * v["R4"] - v["R2"] * v["R3"]) <= 1e-9 * v["R1"] * v["R4"]
    verdict = "The products are equal, so it is balanced." if same else "The products differ, so it is not balanced."
    points = (
        Point("A bridge is balanced if R₁R₄ = R₂R₃: then A and B lie at the same potential.", 1, ("R₁R₄ = R₂R₃",)),
        Point(verdict, 1, ("products",)),
    )
    return (
        Part("balance", "explain", "Is the bridge balanced? Give a reason.", points=points, misstatements=(USED_UP,)),
    )


ONLY_BALANCED = (
    "A resistance is found here from a balanced bridge only. Choose that the bridge is balanced, or pick a current or a"
    " potential difference to find."
)
NOTHING_PASSES = (
    "In a balanced bridge nothing passes R₅, and only the four resistances are asked for. Pick one of them, or choose"
    " that the bridge carries a current in R₅."
)


def situation(data: Data) -> Situation:
    """What holds for the choice made. Raises Refusal where that does not fit what is asked."""
    resistances = [name for name in data.asked_names if name in BALANCED]
    if data.choices["state"] == "any" and resistances:
        raise Refusal("state", ONLY_BALANCED)
    if data.choices["state"] == "balanced" and len(resistances) < len(data.asked_names):
        raise Refusal("state", NOTHING_PASSES)
    return replace(
        told(GIVEN),
        relations=laws(data),
        openings=OPENINGS[data.choices["state"]],
        scene=scene,
        later=balanced,
        notes=("No two of the five are in series or in parallel, so they cannot be combined one by one.",),
    )


BALANCED = {"R4": "R1 R2 R3", "R3": "R1 R2 R4", "R2": "R1 R3 R4", "R1": "R2 R3 R4"}
NAMES = tuple(one.box.name for one in GIVEN)


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """All five resistors, or three of a balanced bridge."""
    asked = next((name for name in (*BALANCED, "I5", "V_A", "V_B", "I") if not typed[name] and name in BALANCED), "")
    kept = BALANCED[asked].split() if asked else ["V", "R1", "R2", "R3", "R4", "R5"]
    state = "balanced" if asked else "any"
    return {**typed, "state": state} | {name: "" for name in NAMES if name not in kept}


BRIDGE = question(
    "bridge",
    "A bridge of resistors",
    situation,
    **boxes(STATE, *GIVEN),
    laws=(OHM.name, PARALLEL.name),
    unknowns=("I5", "V_A", "V_B", "I", "R4", "R3", "R2", "R1"),
    asks="I5",
    adjust=practise,
    since=6,
)
