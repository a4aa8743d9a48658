"""A table of readings of frequency and kinetic energy: the best straight line, Planck's constant, the work function.

Least squares: h = Σ(f − f̄)(E − Ē)/Σ(f − f̄)², W₀ = hf̄ − Ē, and the uncertainty of a gradient √(Σr²/((n − 2)Σ(f − f̄)²)),
standard results of regression. Readings without emission do not belong to the line and are left out. Marks: common
practice, no source.
"""

from __future__ import annotations

from random import Random
from typing import cast

from calc.figures import Figure, GraphLine, graph
from calc.model.answers import Mark
from calc.model.questions import SA, A, Data, Input, Mistake, Part, Plan, Question, Refusal, Rows, Step, Values
from calc.topics.photoelectric.graph import MEANING, emitted, power
from calc.topics.photoelectric.laws import THRESHOLD, WORK_FUNCTION
from calc.working.declaring import state

DRAWN = 0.05  # of a gradient or an intercept of a line drawn by eye. Common practice, no source.
FAR = 0.1  # of the range of the energies: a reading further from the line is pointed out. Common practice, no source.
FEWEST = 3
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


def added(terms: list[str]) -> str:
    """The terms with plus signs between them."""
    return " + ".join(terms)


def mean(letter: str, numbers: list[int], unit: str, words: str) -> Step:
    """The mean of a column."""
    law = f"{letter}_m = ({added([f'{letter}{n}' for n in numbers])})/{len(numbers)}"
    return Step(
        law=law,
        make=law,
        what=f"The mean of the {words}",
        why="The best straight line passes through the point of both means.",
        plain="The middle of the readings.",
        unit=unit,
        marks=A,
    )


def gradient(numbers: list[int]) -> tuple[Step, ...]:
    """Planck's constant as the gradient of the best line."""
    products = added([f"(f{n} - f_m)*(E{n} - E_m)" for n in numbers])
    squares = added([f"(f{n} - f_m)^2" for n in numbers])
    slope = Step(
        law="h = S_1/S_2",
        make="h = S_1/S_2",
        what="The gradient of the best line is Planck's constant",
        why="Least squares: this gradient makes the squares of all distances from the line as small as they can be.",
        plain="The steepness that suits all readings best.",
        unit="J·s",
        marks=SA,
        read_off=DRAWN,
        mistakes=(
            Mistake(
                "power-omitted",
                "h",
                "S_1/S_2*10^14",
                "You left out the power of ten. Read the axis label, then divide your {h} by 10¹⁴.",
                "the answer is 10¹⁴ times the right one",
            ),
            Mistake(
                "upside-down",
                "h",
                "S_2/S_1",
                "You divided the other way round. Divide by {S_2} to get {h}.",
            ),
            Mistake(
                "through-origin",
                "h",
                "E_m/f_m",
                "You drew the line through the origin. It begins at the threshold frequency: take differences.",
            ),
        ),
    )
    why = "Differences from the means, multiplied reading by reading and added."
    return (
        mean("f", numbers, "Hz", "frequencies"),
        mean("E", numbers, "J", "kinetic energies"),
        Step(f"S_1 = {products}", f"S_1 = {products}", "Sum of the products", why, "J·s⁻¹", marks=(), plain=why),
        Step(f"S_2 = {squares}", f"S_2 = {squares}", "Sum of the squares", why, "s⁻²", marks=(), plain=why),
        slope,
    )


INTERCEPT = Step(
    law="E_m = h*f_m - W_0",
    make="W_0 = h*f_m - E_m",
    what="The work function from the point of both means",
    why="E_k = hf − W₀ holds on the line, and the point of both means lies on it.",
    plain="Follow the line back; what is missing at the start is the price of leaving the metal.",
    unit="J",
    read_off=2 * DRAWN,
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
    read_off=DRAWN,
    quotes=(THRESHOLD.name,),
)


def uncertain(numbers: list[int]) -> Part:
    """The uncertainty of the gradient."""
    rests = added([f"(E{n} - h*f{n} + W_0)^2" for n in numbers])
    return Part(
        "uncertainty",
        "calculate",
        "Calculate the standard uncertainty of the gradient.",
        (
            Step(
                f"S_3 = {rests}",
                f"S_3 = {rests}",
                "Sum of the squares of the distances from the line",
                "Each reading lies a little above or below the line.",
                "J²",
                marks=(),
                plain="How badly the readings fit.",
            ),
            Step(
                f"Deltah = sqrt(S_3/({len(numbers) - 2}*S_2))",
                f"Deltah = sqrt(S_3/({len(numbers) - 2}*S_2))",
                "Uncertainty of the gradient",
                "The scatter about the line, shared among the readings less two, over the spread of the frequencies.",
                "J·s",
                marks=(Mark("substitution"), Mark("answer")),
                plain="How far the steepness may be off.",
            ),
        ),
    )


def fitted(rows: list[dict[str, float]]) -> tuple[float, float]:
    """Gradient and work function of the best line, to judge the readings by before anything is worked."""
    f = sum(row["f"] for row in rows) / len(rows)
    energy = sum(row["E"] for row in rows) / len(rows)
    spread = sum((row["f"] - f) ** 2 for row in rows)
    if spread <= (1e-9 * f) ** 2:
        raise Refusal("readings", ONE_FREQUENCY)
    steep = sum((row["f"] - f) * (row["E"] - energy) for row in rows) / spread
    if steep <= 0:
        raise Refusal("readings", FALLS)
    if steep * f <= energy:
        raise Refusal("readings", NO_WORK)
    return steep, steep * f - energy


def plan(data: Data) -> Plan:
    """State, gradient, work function, threshold, uncertainty, what they mean."""
    rows = data.rows["readings"]
    said = data.rows_said["readings"]
    used = [n for n, row in enumerate(rows, 1) if row["E"] > 0]
    if len(used) < FEWEST:
        raise Refusal("readings", TOO_FEW)
    steep, work = fitted([rows[n - 1] for n in used])
    rests = {n: rows[n - 1]["E"] - steep * rows[n - 1]["f"] + work for n in used}
    range_ = max(rows[n - 1]["E"] for n in used) - min(rows[n - 1]["E"] for n in used)
    scattered = max(map(abs, rests.values())) > 1e-6 * range_
    listed = ", ".join(f"({one['f']}; {one['E']})" for one in said)
    out = [said[n - 1]["f"] for n in range(1, len(rows) + 1) if n not in used]
    notes = ["The gradient is found from the line, not from two readings."]
    if out:
        notes.append(f"Left out of the line, for nothing was emitted: the reading of zero at {' and at '.join(out)}.")
    if not scattered:
        notes.append("All readings lie exactly on one line, so its gradient has no uncertainty to be found.")
    return Plan(
        story=data.pick(*OPENINGS).format(listed),
        parts=(
            state(THRESHOLD),
            Part(
                "gradient",
                "calculate",
                "Calculate Planck's constant from the best straight line through the readings.",
                gradient(used),
            ),
            Part("work", "calculate", "Calculate the work function of the metal.", (INTERCEPT,)),
            Part("threshold", "calculate", "Calculate the threshold frequency of the metal.", (START,)),
            *((uncertain(used),) if scattered else ()),
            MEANING,
        ),
        values={f"{name}{n}": rows[n - 1][name] for n in range(1, len(rows) + 1) for name in ("f", "E")},
        scene=lambda v: drawn(v, len(rows), steep, work),
        warnings=tuple(
            f"The reading at {said[n - 1]['f']} lies far from the line of all: read it once more. It is kept."
            for n, rest in rests.items()
            if abs(rest) > FAR * range_
        ),
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
