"""A graph of E_k against f is read: gradient h, threshold frequency, work function; a second metal's parallel line.

E_k = hf − W₀ (data-sheet equation, rearranged). Against 1/λ the gradient is hc. Mistakes and marks: common practice, no
source.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import cast

from calc.figures import Figure, GraphLine, graph
from calc.figures.graph_marks import Key
from calc.model.answers import Point
from calc.model.questions import SA, Check, Choice, Data, Mistake, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.photoelectric.laws import THRESHOLD, WORK_FUNCTION, frequency, kinetic_energy, work_function
from calc.topics.photoelectric.misstatements import LIGHT
from calc.working.declaring import boxes, state

READ = 0.05  # of an energy that is read off the line. Common practice, no source.
RIGHT = "Q lies further along the line than P: type a larger frequency and a larger kinetic energy for Q."
NO_WORK = (
    "The line through P and Q would cut the axis at a frequency of zero or less, but a metal has a threshold frequency"
    " above zero. Check both points."
)
GRADIENT = Relation(
    "h = (E_Q - E_P)/(f_Q - f_P)",
    what="The gradient of the line is Planck's constant",
    why="E_k = hf − W₀ has the form y = mx + c: the gradient is h, the same for every metal.",
    plain="Steepness is how far up for each step to the right.",
    units={"h": "J·s"},
    quotes=(WORK_FUNCTION.name,),
    mistakes=(
        Mistake(
            "power-omitted",
            "h",
            "(E_Q - E_P)/(f_Q - f_P)*10^14",
            "You left out the power of ten. Read the axis label, then divide your {h} by 10¹⁴.",
            "the answer is 10¹⁴ times the right one",
        ),
        Mistake(
            "upside-down",
            "h",
            "(f_Q - f_P)/(E_Q - E_P)",
            "You divided the other way round. Divide the change in energy {E_Q - E_P} by the change in frequency.",
        ),
        Mistake(
            "one-point",
            "h",
            "E_Q/f_Q",
            "You divided the coordinates of one point. The line does not pass through the origin: take the differences"
            " between P and Q.",
        ),
    ),
)
INTERCEPT = Relation(
    "E_P = h*f_P - W_0",
    what="The work function from one point of the line",
    why="Extended to f = 0, dashed because nothing is emitted there, the line cuts the axis of E_k at −W₀.",
    plain="Follow the line back; what is missing at the start is the price of leaving the metal.",
    units={"W_0": "J"},
    quotes=(WORK_FUNCTION.name,),
    mistakes=(
        Mistake("added", "W_0", "h*f_P + E_P", "You added the kinetic energy. Subtract {E_P} from {h*f_P}."),
        Mistake("skipped", "W_0", "h*f_P", "You left out the kinetic energy. Subtract {E_P} from {h*f_P}."),
    ),
)
START = Relation(
    "W_0 = h*f_0",
    what="Where the line cuts the axis of frequency",
    why="At the threshold frequency the kinetic energy is zero: 0 = hf₀ − W₀.",
    plain="The line begins where the packets are just large enough.",
    units={"f_0": "Hz"},
    quotes=(THRESHOLD.name,),
    mistakes=(
        Mistake("multiplied", "f_0", "W_0*h", "You multiplied by {h}. Divide the work function by it: {W_0/h}."),
    ),
)
OTHER = Relation(
    "E_3 = h*f_3 - W_0",
    what="Another place on the line",
    why="Find the frequency on the axis, go up to the line and across; or calculate E_k = hf − W₀.",
    plain="Up to the line, then across.",
    units={"E_3": "J"},
    marks=SA,
    mistakes=(
        Mistake("added", "E_3", "h*f_3 + W_0", "You added the work function. Subtract {W_0} from {h*f_3}."),
        Mistake("skipped", "E_3", "h*f_3", "You left out the work function. Subtract {W_0} from {h*f_3}."),
    ),
)
SECOND = replace(
    START.renamed(W_0="W_2", f_0="f_2"),
    what="Threshold frequency of the other metal",
    why="At the threshold frequency a photon has just the work function. The gradient h is that of the first line.",
)
PRODUCT = Relation(
    "k = h*c",
    what="The gradient against 1/λ",
    why="E_k = hc × (1/λ) − W₀: the gradient is what stands before 1/λ.",
    plain="With the other axis the same steepness holds the speed of light as well.",
    units={"k": "J·m"},
    mistakes=(
        Mistake("constant-forgotten", "k", "h", "You left out {c}. f is c/λ, so multiply {h} by {c}."),
        Mistake("divided", "k", "h/c", "You divided by {c}. f is c/λ, so multiply {h} by {c}."),
    ),
)
MEANING = Part(
    "meaning",
    "explain",
    "What do the gradient and the two intercepts of the line stand for, and why is the line dashed below the axis?",
    points=(
        Point("The gradient is Planck's constant.", 1, ("Planck's constant",)),
        Point("The intercept on the axis of frequency is the threshold frequency.", 1, ("threshold frequency",)),
        Point("The extended line cuts the axis of E_k at minus the work function.", 1, ("minus the work function",)),
        Point("Below the threshold frequency there is no emission, so nothing is measured there.", 1, ("no emission",)),
    ),
    misstatements=LIGHT,
)
PARALLEL = Part(
    "second",
    "draw",
    "On the same axes draw the line of the other metal.",
    points=(
        Point("A straight line parallel to the first: both have the gradient h.", 1, ("parallel",)),
        Point("It begins on the axis at the threshold frequency of the other metal.", 1, ("threshold frequency",)),
    ),
)
ALSO = Choice(
    "also", "Ask besides", (("nothing", "nothing more"), ("inverse", "for the gradient against 1/λ")), besides=True
)
BOXES = (
    frequency("f_P", "Frequency at P", "", "7 x 10^14 Hz"),
    kinetic_energy("E_P", "Kinetic energy at P", "", "1,32 x 10^-19 J"),
    frequency("f_Q", "Frequency at Q", "", "1,2 x 10^15 Hz"),
    kinetic_energy("E_Q", "Kinetic energy at Q", "", "4,64 x 10^-19 J"),
    frequency("f_3", "Another frequency", "", "1 x 10^15 Hz"),
    work_function("W_2", "Work function of another metal", "", "2,9 eV"),
)


def emitted(steep: float, work: float, end: float, label: str = "", back: float = 0.0) -> list[GraphLine]:
    """A metal's line: solid above its threshold frequency, dashed below it."""
    first = work / steep
    return [
        GraphLine([(back, steep * back - work), (first, 0.0)], "", "dashed"),
        GraphLine([(first, 0.0), (end, steep * end - work)], label),
    ]


def scene(v: Values) -> Figure:
    """The graph that is read: solid from the axis on, dashed below it."""
    steep = (v["E_Q"] - v["E_P"]) / (v["f_Q"] - v["f_P"])
    work = steep * v["f_P"] - v["E_P"]
    return graph(
        "f (Hz)",
        "E_k (J)",
        emitted(steep, work, 1.1 * max(v["f_Q"], v["f_3"])),
        keys=[Key(v["f_P"], v["E_P"], "P"), Key(v["f_Q"], v["E_Q"], "Q")],
        title="Maximum kinetic energy against frequency",
        description=(
            "Graph of the maximum kinetic energy against frequency: a straight line rises from the axis of frequency"
            " through P and Q; below the axis it is continued dashed down to the axis of energy."
        ),
    )


def both(v: Values) -> Figure:
    """The line and that of the other metal."""
    end = 1.1 * max(v["f_Q"], v["f_3"], 1.2 * v["W_2"] / v["h"])
    return graph(
        "f (Hz)",
        "E_k (J)",
        [*emitted(v["h"], v["W_0"], end, "1"), *emitted(v["h"], v["W_2"], end, "2")],
        title="The lines of both metals",
    )


def story(data: Data) -> str:
    """Three tellings of the readings and their line."""
    said = data.said
    opening = data.pick(
        "Light of many frequencies falls on a metal, and the fastest electrons are measured each time.",
        "In a laboratory a metal is lit with one frequency after the other, and the fastest electrons are measured.",
        "A sensor records the maximum kinetic energy of the electrons that light of various frequencies frees from a"
        " metal.",
    )
    return (
        f"{opening} Plotted against the frequency the energies lie on a straight line through"
        f" P ({said['f_P']}; {said['E_P']}) and Q ({said['f_Q']}; {said['E_Q']}). Another metal has a work function of"
        f" {said['W_2']}."
    )


def plan(data: Data) -> Plan:
    """State, gradient, work function, threshold, what they mean, another place, the other metal, 1/λ."""
    v, said = data.values, data.said
    if v["f_Q"] <= v["f_P"] or v["E_Q"] <= v["E_P"]:
        raise Refusal("f_Q" if v["f_Q"] <= v["f_P"] else "E_Q", RIGHT)
    steep = (v["E_Q"] - v["E_P"]) / (v["f_Q"] - v["f_P"])
    if steep * v["f_P"] <= v["E_P"]:
        raise Refusal("E_P", NO_WORK)
    if steep * v["f_3"] <= steep * v["f_P"] - v["E_P"]:
        raise Refusal("f_3", "Below the threshold frequency there is no emission: type a larger frequency.")
    return Plan(
        story=story(data),
        parts=(
            state(THRESHOLD),
            Part(
                "gradient", "calculate", "Calculate the gradient of the line, Planck's constant.", (GRADIENT.step("h"),)
            ),
            Part("work", "calculate", "Calculate the work function of the metal.", (INTERCEPT.step("W_0"),)),
            Part("threshold", "calculate", "Calculate the threshold frequency of the metal.", (START.step("f_0"),)),
            MEANING,
            Part(
                "read",
                "calculate",
                f"Read from the line, or calculate, the maximum kinetic energy at {said['f_3']}.",
                (replace(OTHER.step("E_3"), read_off=READ),),
            ),
            Part(
                "other",
                "calculate",
                "Calculate the threshold frequency of the other metal, with the same Planck's constant.",
                (SECOND.step("f_2"),),
            ),
            replace(PARALLEL, figure=both),
            *(
                (
                    Part(
                        "inverse",
                        "calculate",
                        "Against one over the wavelength the energies lie on a line too. Calculate its gradient.",
                        (PRODUCT.step("k"),),
                    ),
                )
                if data.choices["also"] == "inverse"
                else ()
            ),
        ),
        values=dict(v),
        scene=scene,
        checks=(Check("Q lies on the line as well", "E_Q = h*f_Q - W_0"),),
        notes=("The lines of all metals are parallel; only where they begin differs.",),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """A metal, two points on its line, another place and another metal."""
    draw = cast(Random, random)
    first = draw.choice((4e14, 4.5e14, 5e14, 5.5e14, 6e14) if level == 1 else (4.3e14, 4.8e14, 5.7e14, 6.4e14, 7.1e14))
    p = first + draw.choice((1e14, 1.5e14, 2e14, 2.5e14, 3e14))
    q = p + draw.choice((3e14, 4e14, 5e14, 6e14, 7e14))
    other = round((first + (q - first) * draw.choice((0.25, 0.5, 0.7, 0.9))) / 1e13) * 1e13
    second = draw.choice([w for w in (2.1, 2.4, 2.7, 3.3, 3.6) if abs(w * 1.6e-19 / 6.63e-34 / first - 1) > 0.1])
    return {
        **typed,
        **{name: power(value, "Hz") for name, value in (("f_P", p), ("f_Q", q), ("f_3", other))},
        **{name: power(6.63e-34 * (value - first), "J") for name, value in (("E_P", p), ("E_Q", q))},
        "W_2": f"{second:g} eV".replace(".", ","),
    }


def power(value: float, unit: str) -> str:
    """A number as a learner types it, with its power of ten."""
    digits, _, exponent = f"{value:.2e}".partition("e")
    return f"{float(digits):g} x 10^{int(exponent)} {unit}".replace(".", ",")


GRAPH = Question(
    key="graph",
    title="Read from a graph of kinetic energy",
    **boxes(*BOXES, ALSO),
    plan=plan,
    constants=("c", "e"),
    laws=(THRESHOLD.name, WORK_FUNCTION.name),
    adjust=practise,
    scenario=True,
    since=6,
)
