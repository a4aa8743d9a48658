"""A table of readings of frequency and kinetic energy: the best straight line, Planck's constant, the work function.

E_k = hf − W₀ (data-sheet equation) is a straight line with the gradient h and the intercept −W₀; the line:
:mod:`calc.topics.shared.best_line`. Readings without emission do not belong to it and are left out. Marks: common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from random import Random
from typing import cast

from calc.figures import Figure, GraphLine, graph
from calc.model.questions import A, Data, Input, Mistake, Part, Plan, Question, Refusal, Rows, Step, Values
from calc.topics.photoelectric.graph import MEANING, emitted, power
from calc.topics.photoelectric.laws import THRESHOLD, WORK_FUNCTION
from calc.topics.shared.best_line import BY_EYE, Line, far_off, fitted, scattered
from calc.working.declaring import state
from calc.working.working import measure

FEWEST = 3
ABOVE = (
    1.02  # times the threshold frequency of the line: so near to it nothing may be seen. Common practice, no source.
)
TOO_FEW = (
    "At least three readings with a kinetic energy above zero are needed for a line: those of zero lie below the"
    " threshold frequency and do not count. Add readings."
)
ONE_FREQUENCY = "All readings have the same frequency: a line needs different ones. Check the column of frequencies."
FALLS = "The energies fall as the frequency rises, but they should rise. Check whether the columns are exchanged."
NO_WORK = (
    "The best line would cut the axis at a frequency of zero or less, but a metal has a threshold frequency above zero."
    " Check the readings and their units."
)
OPENINGS = (
    "Filters let one frequency after the other onto a photocell, and the maximum kinetic energy is noted: {}.",
    "A class lights a metal with lamps of various colours. Frequency and maximum kinetic energy are: {}.",
    "A sensor gives the maximum kinetic energy of the electrons for light of these frequencies: {}.",
)


WORK_FROM_LINE = Step(
    law="W_0 = -b",
    make="W_0 = -b",
    what="The work function is minus the intercept on the E_k axis",
    why="E_k = hf − W₀ has the form y = mx + c: the gradient is h, and the intercept −W₀.",
    plain="What is missing at the start is the price of leaving the metal.",
    unit="J",
    marks=A,
    quotes=(WORK_FUNCTION.name,),
    mistakes=(Mistake("added", "W_0", "h*f_m + E_m", "You added the kinetic energy. Subtract {E_m} from {h*f_m}."),),
)
START = Step(
    law="W_0 = h*f_0",
    make="f_0 = W_0/h",
    what="Where the line cuts the axis of frequency",
    why="At the threshold frequency the kinetic energy is zero.",
    plain="The line begins where the packets are just large enough.",
    unit="Hz",
    read_off=BY_EYE,
    quotes=(THRESHOLD.name,),
)


def slips(line: Line) -> tuple[Mistake, ...]:
    """What goes wrong with this gradient besides the fraction turned over."""
    return (
        Mistake(
            "power-omitted",
            "h",
            f"({line.products})/({line.squares})*10^14",
            "You left out the power of ten. Read the axis label, then divide your {h} by 10¹⁴.",
            "the answer is 10¹⁴ times the right one",
        ),
        Mistake(
            "through-origin",
            "h",
            "E_m/f_m",
            "You drew the line through the origin. It begins at the threshold frequency: take differences.",
        ),
    )


def crossing(line: Line) -> Step:
    """Where the extended line meets the E_k axis."""
    return line.intercept(
        "b",
        "h",
        "J",
        "The intercept on the E_k axis",
        "The line is followed back to a frequency of zero, dashed: no electron is emitted there.",
    )


def spread(line: Line) -> Part:
    """The uncertainty of the gradient and of the intercept, which is that of the work function."""
    return Part(
        "uncertainty",
        "calculate",
        "From the scatter of the readings calculate the uncertainty of Planck's constant and of the work function.",
        (line.scatter("h", "b", "J"), line.of_gradient("Deltah", "J·s"), line.of_intercept("DeltaW_0", "J")),
        also=("Deltah",),
    )


def checked(points: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """Gradient and work function of the best line; data that make no line of a metal are refused."""
    frequencies = [x for x, _ in points]
    if max(frequencies) - min(frequencies) < 1e-9 * max(frequencies):
        raise Refusal("readings", ONE_FREQUENCY)
    steep, start = fitted(points)
    if steep <= 0:
        raise Refusal("readings", FALLS)
    if start >= 0:
        raise Refusal("readings", NO_WORK)
    return steep, -start


def warned(data: Data, used: Sequence[int], steep: float, work: float) -> tuple[str, ...]:
    """A sentence for each reading that the others do not explain."""
    rows, said, style = data.rows["readings"], data.rows_said["readings"], data.settings.style
    told = []
    for place, off in far_off([(rows[n - 1]["f"], rows[n - 1]["E"]) for n in used]).items():
        n = used[place]
        told.append(
            f"Reading {n} ({said[n - 1]['f']} and {said[n - 1]['E']}) lies {measure(abs(off), 'J', style).text}"
            f" {'above' if off > 0 else 'below'} the line of all the others, further than their scatter explains. It"
            " has not been left out. Look for a slip in reading or typing, light of another colour that came through"
            " the filter, or a metal that was not clean, and take this reading again."
        )
    told += [
        f"Nothing was emitted at {said[n]['f']}, which lies above the threshold frequency of the line. Look whether the"
        " light reached the metal, and take this reading again."
        for n, row in enumerate(rows)
        if row["E"] == 0 and row["f"] * steep > work * ABOVE
    ]
    return tuple(told)


def plan(data: Data) -> Plan:
    """State, gradient, work function, threshold, uncertainty, what they mean."""
    rows, said = data.rows["readings"], data.rows_said["readings"]
    dark = [n for n, row in enumerate(rows, 1) if row["E"] == 0]
    used = [n for n in range(1, len(rows) + 1) if n not in dark]
    if len(used) < FEWEST:
        raise Refusal("readings", TOO_FEW)
    points = [(rows[n - 1]["f"], rows[n - 1]["E"]) for n in used]
    steep, work = checked(points)
    line, scatter = Line("f", "E", len(rows), dark), scattered(points)
    listed = ", ".join(f"({one['f']}; {one['E']})" for one in said)
    notes = ["The gradient is found from the line, not from two readings."]
    if dark:
        zeros = " and at ".join(said[n - 1]["f"] for n in dark)
        notes.append(f"Left out of the line, for nothing was emitted: the reading of zero at {zeros}.")
    if not scatter:
        notes.append("All readings lie exactly on one line, so its gradient has no uncertainty to be found.")
    means = (line.mean("f", "Hz", "frequency"), line.mean("E", "J", "kinetic energy"))
    return Plan(
        story=data.pick(*OPENINGS).format(listed),
        parts=(
            state(THRESHOLD),
            Part(
                "gradient",
                "calculate",
                "Planck's constant is the gradient of the best straight line through the readings. Calculate it.",
                (*means, line.gradient("h", "J·s", slips(line))),
            ),
            Part("work", "calculate", "Calculate the work function of the metal.", (crossing(line), WORK_FROM_LINE)),
            Part("threshold", "calculate", "Calculate the threshold frequency of the metal.", (START,)),
            *((spread(line),) if scatter else ()),
            MEANING,
        ),
        values=line.values(rows),
        scene=lambda v: drawn(v, len(rows), steep, work),
        checks=(line.balance("h", "b"),),
        warnings=warned(data, used, steep, work),
        notes=tuple(notes),
    )


def drawn(v: Values, count: int, steep: float, work: float) -> Figure:
    """The readings as crosses with the best line, dashed below the threshold frequency."""
    points = [(v[f"f{n}"], v[f"E{n}"]) for n in range(1, count + 1)]
    return graph(
        "f (Hz)",
        "E_k (J)",
        [*emitted(steep, work, 1.05 * max(x for x, _ in points)), GraphLine(points, "", "points")],
        title="Maximum kinetic energy against frequency",
        description=(
            "Graph of the maximum kinetic energy against frequency: the readings as crosses, and the best straight line"
            " through those above the axis, continued dashed below it."
        ),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """A metal and four to six readings with a little scatter, from level 2 on one or two below the threshold."""
    draw = cast(Random, random)
    first = draw.choice((4.2e14, 4.7e14, 5.1e14, 5.6e14, 6.2e14, 6.8e14))
    step = draw.choice((0.8e14, 1e14, 1.2e14, 1.4e14))
    count = 4 if level == 1 else draw.choice((4, 5))
    below = 0 if level == 1 else draw.choice((1, 2))
    start = first + step * draw.choice((0.3, 0.5, 0.7)) - below * step
    rows = []
    for n in range(count + below):
        f = round((start + n * step) / 1e12) * 1e12
        energy = max(0.0, 6.63e-34 * (f - first)) * (1 + draw.choice((-0.02, -0.01, 0.01, 0.02)))
        rows.append({"f": power(f, "Hz"), "E": power(energy, "J") if energy else "0 J"})
    return {**typed, "readings": rows}


READINGS = Question(
    key="readings",
    title="Planck's constant from readings",
    fields=(
        Rows(
            "readings",
            "Readings",
            "reading",
            (
                Input("f", "Frequency", "Hz", 1e14, 1e16, refusal="Frequency must be greater than zero."),
                Input(
                    "E",
                    "Maximum kinetic energy",
                    "J",
                    1e-21,
                    4e-18,
                    refusal="Kinetic energy cannot be negative: type zero where nothing was emitted.",
                    over=None,
                ),
            ),
            at_least=3,
            at_most=12,
        ),
    ),
    plan=plan,
    constants=("e",),
    laws=(THRESHOLD.name, WORK_FUNCTION.name),
    example={
        "readings": (
            {"f": "4,5 x 10^14 Hz", "E": "0 J"},
            {"f": "6 x 10^14 Hz", "E": "0,68 x 10^-19 J"},
            {"f": "7 x 10^14 Hz", "E": "1,30 x 10^-19 J"},
            {"f": "8 x 10^14 Hz", "E": "2,02 x 10^-19 J"},
            {"f": "9 x 10^14 Hz", "E": "2,65 x 10^-19 J"},
        )
    },
    adjust=practise,
    since=6,
)
