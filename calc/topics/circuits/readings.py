"""Readings of current and terminal p.d.: the best line, emf and internal resistance with their uncertainty; Ohm's law.

V = ε − Ir is a straight line with the intercept ε and the gradient −r; V = IR one through the origin with the gradient
R (data-sheet equations). The line: :mod:`calc.topics.shared.best_line`. What counts as straight and as through the
origin, and marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from random import Random
from typing import cast

from calc.figures import Figure
from calc.figures.circuits import Part as Symbol
from calc.figures.circuits import circuit, parallel, series
from calc.figures.graph_marks import Gradient, Key
from calc.figures.graphs import GraphLine, graph
from calc.model.answers import Point
from calc.model.questions import A, Choice, Data, Input, Mistake, Part, Plan, Question, Refusal, Rows, Step, Values
from calc.model.relations import Relation
from calc.topics.circuits.laws import EMF, OHM, SHORT
from calc.topics.shared.best_line import Line, far_off, fitted, scattered
from calc.working.declaring import state
from calc.working.working import measure

STRAIGHT = 0.04  # of the largest p.d.: further off is no straight line
NEXT_TO = 0.02  # of the largest current: so near to the origin a line is drawn from it
THROUGH = 0.05  # of the largest p.d.: an intercept that counts as the origin
SAME = (
    "All these currents are the same, so every point lies above the same place of the axis and no line can be drawn."
    " Type readings with different currents."
)
RISES = (
    "Check the columns: the terminal potential difference must fall when the current grows, but in these readings it"
    " does not. Type each current with the potential difference that was read with it."
)
FALLS = (
    "Check the columns: across a resistor the potential difference grows with the current; here it does not."
    " Type each current with the potential difference that was read with it."
)
NOTHING = "These readings are all zero, so there is nothing to draw. Type potential differences above zero."
COLUMNS = (
    Input("I", "Current", "A", 1e-6, 20, over=None, refusal="Enter the size of the current, zero or more."),
    Input(
        "V",
        "Potential difference",
        "V",
        1e-3,
        240,
        over=None,
        refusal="Enter the size of the potential difference, zero or more.",
    ),
)
TABLE = Rows("readings", "Readings", "reading", COLUMNS, at_least=3, at_most=12)
BESIDES = Choice(
    "also",
    "Ask besides",
    (("spread", "how certain the result is"), ("nothing", "nothing more")),
    besides=True,
)
AXES = Point("Axes labelled V (V) and I (A), with even scales.", 1, ("labelled",))
PLOTTED = Point("All readings plotted.", 1, ("plotted",))
RULED = Point("One straight line of best fit, with as many points above it as below.", 1, ("straight",))


def points_of(rows: Sequence[Values]) -> list[tuple[float, float]]:
    """Current and potential difference of each reading."""
    return [(row["I"], row["V"]) for row in rows]


def listed(data: Data) -> str:
    """The readings in the story."""
    return "; ".join(f"{row['I']} and {row['V']}" for row in data.rows_said["readings"])


def refuse(points: Sequence[tuple[float, float]], falls: bool) -> None:
    """No line without two different currents; no cell whose p.d. rises, no resistor whose p.d. falls."""
    currents = [x for x, _ in points]
    if max(currents) - min(currents) < 1e-9 * max(currents):
        raise Refusal("readings.1.I", SAME)
    if not any(y for _, y in points):
        raise Refusal("readings.0.V", NOTHING)
    m, _ = fitted(points)
    if (m >= 0) if falls else (m <= 0):
        raise Refusal("readings.0.V", RISES if falls else FALLS)


def warned(data: Data, points: Sequence[tuple[float, float]]) -> tuple[str, ...]:
    """A sentence for each reading that the others do not explain."""
    said, style = data.rows_said["readings"], data.settings.style
    return tuple(
        f"Reading {n + 1} ({said[n]['I']} and {said[n]['V']}) lies {measure(abs(off), 'V', style).text}"
        f" {'above' if off > 0 else 'below'} the line of all the others, further than their scatter explains. It has"
        " not been left out. Look for a slip in reading or typing, a loose contact or a switch held closed so"
        " long that"
        " something grew hot, and take this reading again."
        for n, off in far_off(points).items()
    )


# --- a cell ------------------------------------------------------------------------------------------------

LOAD = "You divided the potential difference of a reading by its current. That is the load: use the gradient for {r}."
MINUS = Relation(
    "m = -r",
    what="The gradient is minus the internal resistance",
    why="V = −rI + ε has the form y = mx + c: the gradient is −r, and the intercept is ε.",
    plain="The steeper the line falls, the more the cell keeps for itself.",
    units={"r": "Ω"},
    marks=A,
)
TAKEN = (
    "A cell is connected to a resistor that can be varied; current and terminal potential difference are read each"
    " time, and the switch is opened in between.",
    "To test a cell, a class reads the current it supplies and the potential difference across its terminals for"
    " several loads.",
    "A variable resistor is connected to a cell. An ammeter in series and a voltmeter across the cell are read as it"
    " is changed.",
)
WHY_LINE = Part(
    "straight",
    "explain",
    "Explain why these readings are expected on a straight line that falls, and what its intercept on the V axis"
    " and its"
    " gradient stand for.",
    points=(
        Point("V = ε − Ir with ε and r constant, so V falls evenly with I.", 1, ("constant",)),
        Point("At I = 0 there are no lost volts: the intercept on the V axis is the emf.", 1, ("emf",)),
        Point("The gradient is −r, minus the internal resistance.", 1, ("internal resistance",)),
    ),
)


def slip_of_load(count: int) -> tuple[Mistake, ...]:
    """r as V/I of the first or the last reading, or of the mean."""
    where = ("V1/I1", f"V{count}/I{count}", "V_m/I_m")
    return tuple(Mistake("load-for-internal", "r", how, LOAD) for how in where)


def cell_graph(v: Values, points: Sequence[tuple[float, float]], whole: bool) -> Figure:
    """The readings and their line, dashed where it is extended: to the V axis, and if ``whole`` to the I axis."""
    m, b = v["m"], v["epsilon"]
    first, last = min(x for x, _ in points), max(x for x, _ in points)
    lines = [GraphLine(points, "", "points"), GraphLine([(first, b + m * first), (last, b + m * last)])]
    if first > 0:
        lines.append(GraphLine([(0.0, b), (first, b + m * first)], "", "dashed"))
    keys = [Key(0.0, b, "ε", shows=("epsilon",))]
    if whole:
        lines.append(GraphLine([(last, b + m * last), (-b / m, 0.0)], "", "dashed"))
        keys.append(Key(-b / m, 0.0, "I_s", shows=("I_s",)))
    near, far = first + 0.15 * (last - first), first + 0.75 * (last - first)
    return graph(
        "I (A)",
        "V (V)",
        lines,
        keys=keys,
        gradients=[] if whole else [Gradient((near, b + m * near), (far, b + m * far), "ΔI", "ΔV", ("m",))],
        y_zero=whole,
        title="The line down to the current axis" if whole else "Terminal potential difference against current",
        drawn_from=("m", "epsilon", "r"),
    )


def set_up(v: Values) -> Figure:
    """The circuit the readings are taken in."""
    return circuit(
        parallel(Symbol("voltmeter"), series(Symbol("cell", "ε"), Symbol("resistor", "r"))),
        series(Symbol("ammeter"), Symbol("variable resistor", "load"), Symbol("closed switch", "S")),
        title="The circuit",
    )


def spread(line: Line) -> Part:
    """The part on the uncertainty of both values."""
    steps = (line.scatter("m", "epsilon", "V"), line.of_gradient("Deltar", "Ω"), line.of_intercept("Deltaepsilon", "V"))
    ask = "From the scatter of the readings calculate the uncertainty of the internal resistance and of the emf."
    return Part("spread", "calculate", ask, steps, also=("Deltar",))


def at_no_current(line: Line) -> Step:
    """The emf from the line."""
    return line.intercept(
        "epsilon",
        "m",
        "V",
        "The intercept on the V axis is the emf",
        "At I = 0 no volts are lost. The I axis must start at zero, or the line does not meet the V axis at the emf.",
    )


def plan_cell(data: Data) -> Plan:
    """Why a line, the graph, gradient, r, ε, the short-circuit current, and how certain both are."""
    rows = data.rows["readings"]
    points = points_of(rows)
    refuse(points, falls=True)
    line = Line("I", "V", len(rows))
    wide = data.choices["also"] == "spread" and scattered(points)
    means = (line.mean("I", "A", "current"), line.mean("V", "V", "potential difference"))
    slips = slip_of_load(len(rows))
    return Plan(
        story=f"{data.pick(*TAKEN)} Current and potential difference: {listed(data)}.",
        parts=(
            WHY_LINE,
            Part(
                "draw",
                "draw",
                "Plot V against I and draw the line of best fit.",
                points=(AXES, PLOTTED, RULED),
                figure=lambda v: cell_graph(v, points, whole=False),
            ),
            Part(
                "gradient",
                "calculate",
                "Calculate the gradient of the line.",
                (*means, line.gradient("m", "V·A^-1")),
            ),
            Part(
                "internal",
                "calculate",
                "Give the internal resistance of the cell.",
                (with_mistakes(MINUS.step("r"), slips),),
            ),
            Part("emf", "calculate", "Find the emf of the cell from the line.", (at_no_current(line),)),
            Part(
                "short",
                "calculate",
                "Extend the line to the current axis, dashed: find the current at which nothing would be left at the"
                " terminals.",
                (SHORT.step("I_s"),),
                figure=lambda v: cell_graph(v, points, whole=True),
            ),
            *((spread(line),) if wide else ()),
        ),
        values=line.values(rows),
        scene=set_up,
        checks=(line.balance("m", "epsilon"),),
        notes=(
            "The short-circuit current is read from a line and never tried: that burns.",
            "Take the two points for a gradient from the line, far apart; do not use two readings.",
        ),
        warnings=warned(data, points),
    )


def with_mistakes(step: Step, mistakes: tuple[Mistake, ...]) -> Step:
    """The step with further known mistakes."""
    return replace(step, mistakes=(*step.mistakes, *mistakes))


def number(value: float, unit: str) -> str:
    """A reading with two decimals, as a meter shows it."""
    return f"{value:.2f} {unit}".replace(".", ",")


def practise_cell(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """A cell of one to three volts, read with a little scatter."""
    draw = cast(Random, chance)
    epsilon, r = draw.choice((1.5, 1.6, 3.0, 4.5)), draw.choice((0.4, 0.5, 0.8, 1.2))
    count = draw.choice((5, 6)) if level == 1 else draw.choice((6, 7, 8))
    most = epsilon / r * 0.6
    rows = []
    for n in range(1, count + 1):
        flow = round(most * n / count, 2)
        off = (0.01 if level == 1 else 0.02) * (2 * draw.random() - 1)
        rows.append({"I": number(flow, "A"), "V": number(epsilon - flow * r + off, "V")})
    return {**typed, "readings": rows, "also": "spread" if level > 2 else "nothing"}


READINGS = Question(
    key="readings",
    title="A cell from its readings",
    fields=(TABLE, BESIDES),
    plan=plan_cell,
    laws=(EMF.name,),
    example={
        "readings": (
            {"I": "0,20 A", "V": "1,42 V"},
            {"I": "0,40 A", "V": "1,29 V"},
            {"I": "0,60 A", "V": "1,21 V"},
            {"I": "0,80 A", "V": "1,10 V"},
            {"I": "1,00 A", "V": "0,98 V"},
        ),
        "also": "spread",
    },
    adjust=practise_cell,
    since=6,
)

# --- Ohm's law ---------------------------------------------------------------------------------------------

MEASURED = (
    "The current in a component and the potential difference across it are read at several settings of the supply.",
    "A component is put into a circuit with a variable resistor, an ammeter and a voltmeter, and both meters are read.",
    "To see whether a component obeys Ohm's law, a class changes the current in it and reads both meters.",
)
FROM_ORIGIN = Point("The line passes through the origin.", 1, ("origin",))
VERDICTS = {
    "ohmic": (
        Point("The points lie on a straight line through the origin.", 1, ("straight line", "origin")),
        Point(
            (
                "So V is directly proportional to I: the component obeys Ohm's law, as long as its temperature is"
                " constant."
            ),
            1,
            ("directly proportional",),
        ),
    ),
    "offset": (
        Point("The points lie on a straight line, but it misses the origin.", 1, ("misses the origin",)),
        Point(
            "So V is not directly proportional to I here. Check the zero of both meters before anything is said of the"
            " component.",
            1,
            ("not directly proportional",),
        ),
    ),
    "grows": (
        Point("The points lie on a curve that becomes steeper: V/I grows with the current.", 1, ("curve", "grows")),
        Point(
            (
                "So V is not directly proportional to I: the resistance grows, for instance because a filament"
                " becomes hot."
            ),
            1,
            ("not directly proportional", "resistance grows"),
        ),
    ),
    "shrinks": (
        Point("The points lie on a curve that becomes flatter: V/I falls with the current.", 1, ("curve", "falls")),
        Point(
            "So V is not directly proportional to I: the resistance becomes smaller as the current grows.",
            1,
            ("not directly proportional", "smaller"),
        ),
    ),
    "uneven": (
        Point("The points lie neither on a straight line nor on one smooth curve.", 1, ("neither",)),
        Point("So nothing can be said of Ohm's law: take the readings again.", 1, ("again",)),
    ),
}


def verdict(points: Sequence[tuple[float, float]]) -> str:
    """The kind of graph these readings make."""
    m, b = fitted(points)
    most = max(y for _, y in points)
    off = max(abs(y - m * x - b) for x, y in points)
    if off <= STRAIGHT * most:
        return "ohmic" if abs(b) <= THROUGH * most else "offset"
    ratios = [y / x for x, y in sorted(points) if x > 0]
    slack = 1 + STRAIGHT
    if all(one <= other * slack for one, other in pairwise(ratios)):
        return "grows"
    if all(other <= one * slack for one, other in pairwise(ratios)):
        return "shrinks"
    return "uneven"


def ohm_graph(v: Values, points: Sequence[tuple[float, float]], kind: str) -> Figure:
    """The readings with their line, or joined by a curve."""
    far = max(x for x, _ in points)
    drawn = GraphLine(points, "", "points")
    if kind not in ("ohmic", "offset"):
        joined = sorted(points) if kind == "uneven" else [(0.0, 0.0), *sorted(p for p in points if p[0] > 0)]
        lines = [drawn, *([] if kind == "uneven" else [GraphLine(joined)])]
        return graph("I (A)", "V (V)", lines, title="Potential difference against current")
    m, b = v["m"], v["b"]
    near = max(0.0, -b / m)
    first = (0.0, max(b, 0.0)) if near < NEXT_TO * far else (near, 0.0)
    lines = [drawn, GraphLine([first, (far, b + m * far)])]
    low, high = near + 0.2 * (far - near), near + 0.8 * (far - near)
    return graph(
        "I (A)",
        "V (V)",
        lines,
        gradients=[Gradient((low, b + m * low), (high, b + m * high), "ΔI", "ΔV", ("m",))],
        title="Potential difference against current",
        drawn_from=("m", "R"),
    )


IS_R = Relation(
    "m = R",
    what="The gradient of V against I is the resistance",
    why="V = IR has the form y = mx: the gradient m is R.",
    plain="The steeper the line, the more volts each ampere needs.",
    units={"R": "Ω"},
    marks=A,
    mistakes=(
        Mistake(
            "upside-down",
            "R",
            "1/m",
            "You turned the gradient upside down. With V upwards it is not turned: take {m} itself.",
        ),
    ),
)


def ratio(name: str, n: int) -> Step:
    """The resistance at one reading of a component that does not obey Ohm's law."""
    return Relation(
        f"{name} = V{n}/I{n}",
        what=f"The resistance at reading {n}",
        why="On a curve the resistance at a point is V divided by I there, not the gradient.",
        plain="Volts for each ampere at that place.",
        units={name: "Ω"},
        marks=A,
        mistakes=(Mistake("upside-down", name, f"I{n}/V{n}", f"You divided the other way round: divide {{V{n}}}."),),
    ).step(name)


def circuit_of(v: Values) -> Figure:
    """The component between its meters."""
    return circuit(
        series(Symbol("battery", "supply"), Symbol("variable resistor")),
        series(Symbol("ammeter"), parallel(Symbol("voltmeter"), Symbol("resistor", "component"))),
        title="The circuit",
    )


def resistance_parts(line: Line, points: Sequence[tuple[float, float]], kind: str, wide: bool) -> tuple[Part, ...]:
    """The gradient and R of a straight line, or the resistance at the ends of a curve."""
    if kind == "offset" or kind == "ohmic":
        means = (line.mean("I", "A", "current"), line.mean("V", "V", "potential difference"))
        intercept = line.intercept(
            "b",
            "m",
            "V",
            "The intercept on the V axis",
            (
                "The best line need not pass through the origin exactly; for Ohm's law its intercept must be next"
                " to nothing."
            ),
        )
        parts = [
            Part(
                "gradient",
                "calculate",
                "Calculate the gradient of the line.",
                (*means, line.gradient("m", "V·A^-1"), without_marks(intercept)),
                answer="m",
            )
        ]
        if kind == "ohmic":
            parts.append(Part("resistance", "calculate", "Give the resistance of the component.", (IS_R.step("R"),)))
        if kind == "ohmic" and wide:
            steps = (line.scatter("m", "b", "V"), line.of_gradient("DeltaR", "Ω"))
            ask = "From the scatter of the readings calculate the uncertainty of the resistance."
            parts.append(Part("spread", "calculate", ask, steps))
        return tuple(parts)
    if kind == "uneven":
        return ()
    order = sorted((x, n) for n, (x, _) in enumerate(points, 1) if x > 0)
    first, last = order[0][1], order[-1][1]
    ask = "Calculate the resistance at the smallest and at the largest current."
    return (Part("ends", "calculate", ask, (ratio("R_a", first), ratio("R_z", last)), also=("R_a",)),)


def without_marks(step: Step) -> Step:
    """The step as one that only leads to the verdict."""
    return replace(step, marks=())


def plan_ohm(data: Data) -> Plan:
    """State, the graph, the verdict with reasons, and the resistance."""
    rows = data.rows["readings"]
    points = points_of(rows)
    refuse(points, falls=False)
    line, kind = Line("I", "V", len(rows)), verdict(points)
    straight = kind in ("ohmic", "offset")
    drawing = RULED if straight else Point("A smooth curve through the points, not joined by ruler.", 1, ("smooth",))
    wide = data.choices["also"] == "spread" and straight and scattered(points)
    return Plan(
        story=f"{data.pick(*MEASURED)} Current and potential difference: {listed(data)}.",
        parts=(
            state(OHM),
            Part(
                "draw",
                "draw",
                "Plot V against I and draw the line or the curve that fits best.",
                points=(AXES, PLOTTED, drawing),
                figure=lambda v: ohm_graph(v, points, kind),
            ),
            Part(
                "verdict",
                "explain",
                "Does the component obey Ohm's law? Give a reason from the graph.",
                points=VERDICTS[kind],
            ),
            *resistance_parts(line, points, kind, wide),
        ),
        values=line.values(rows),
        scene=circuit_of,
        checks=(line.balance("m", "b"),) if straight else (),
        warnings=warned(data, points) if straight else (),
    )


def practise_ohm(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """A resistor, or from level 2 on now and then a filament."""
    draw = cast(Random, chance)
    ohms, count = draw.choice((4.7, 6.8, 10.0, 15.0)), draw.choice((5, 6, 7))
    lamp = level > 1 and draw.random() < 0.4
    rows = []
    for n in range(1, count + 1):
        flow = round(0.6 * n / count, 2)
        steep = ohms * (0.5 + flow) if lamp else ohms
        off = 1 + (0.01 if level == 1 else 0.02) * (2 * draw.random() - 1)
        rows.append({"I": number(flow, "A"), "V": number(flow * steep * off, "V")})
    return {**typed, "readings": rows, "also": "spread" if level > 2 else "nothing"}


OHMIC = Question(
    key="ohm",
    title="Ohm's law from readings",
    fields=(TABLE, BESIDES),
    plan=plan_ohm,
    laws=(OHM.name,),
    example={
        "readings": (
            {"I": "0,10 A", "V": "0,99 V"},
            {"I": "0,20 A", "V": "2,04 V"},
            {"I": "0,30 A", "V": "2,97 V"},
            {"I": "0,40 A", "V": "4,06 V"},
            {"I": "0,50 A", "V": "5,01 V"},
        ),
        "also": "nothing",  # a page to be read in one go; the reader picks the rest
    },
    adjust=practise_ohm,
    since=6,
)
