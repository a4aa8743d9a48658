"""F against 1/r² as a graph: the line through the origin, its gradient kQ₁Q₂, and what the gradient tells.

The gradient is that of the line through the origin for which the squares of the distances of the readings
from it, taken along F, are least: m = Σ(x F)/Σ(x²) with x = 1/r² (least squares; any book on the treatment
of measurements). Ranges and marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from calc.figures import Figure
from calc.figures.graph_marks import Gradient, Key
from calc.figures.graphs import GraphLine, graph
from calc.model.answers import Point
from calc.model.questions import (
    FSA,
    NO_MARKS,
    SA,
    Check,
    Data,
    Draw,
    Input,
    Mistake,
    Part,
    Plan,
    Question,
    Refusal,
    Rows,
    Step,
    Values,
)
from calc.model.relations import Relation
from calc.topics.shared.electrostatics import COULOMB, PLAIN_LAW, distance, force

K = 9e9  # for drawing readings only
BY_EYE = 0.05  # a gradient read from a line drawn by eye (common practice, no source)
OFF = 0.1  # of the largest force: so far from the line a reading is worth another look
SAME = (
    "All these distances are the same, so every point lies above the same place of the axis and no line "
    "can be drawn. Type at least two different distances."
)
ZERO_FORCES = (
    "All these forces are zero: without a force there is no gradient and no charge to find. Type forces above zero."
)
LINE = (
    Point(
        "F = kQ₁Q₂ × (1/r²), and kQ₁Q₂ does not change: F is directly proportional to 1/r², so the points lie on a"
        " straight line.",
        1,
        ("directly proportional to 1/r²",),
    ),
    Point(
        "The further apart the charges are, the nearer both 1/r² and F come to zero, so the line passes through the"
        " origin.",
        1,
        ("through the origin",),
    ),
    Point(
        "The gradient is kQ₁Q₂: with one charge doubled it is doubled, and the line is twice as steep.",
        1,
        ("doubled", "twice as steep"),
    ),
)
DRAWING = (
    Point("Axes labelled F (N) and 1/r² (m⁻²), with even scales.", 1, ("labelled",)),
    Point("All readings plotted.", 1, ("plotted",)),
    Point("One straight line of best fit, drawn with a ruler through the origin.", 1, ("straight",)),
)
ROW_SQUARE = "You divided by the distance itself. The axis is 1/r²: square the distance first, then divide 1 by it."
ROW_TURN = "You stopped at r², the square of the distance. The axis is 1/r²: divide 1 by it."
PRODUCT = Relation(
    "m = k*P",
    what="Product of the charges, P = Q₁Q₂",
    why=(
        "F = kQ₁Q₂ × (1/r²) has the form y = mx, so the gradient m is k times the product of the charges. Its unit"
        " is C²."
    ),
    plain="The steepness holds both charges and k; divide by k and the charges are left.",
    units={"P": "C^2"},
    mistakes=(
        Mistake(
            "multiplied",
            "P",
            "m*k",
            "You multiplied the gradient by {k}. The gradient is {k} times the product of the charges, so divide by"
            " {k}.",
        ),
    ),
)
ONE_CHARGE = Relation(
    "P = Q1*Q2",
    what="The charge on B",
    why="The product divided by the one charge is the other. The graph gives the size of the charge only.",
    plain="Two numbers multiplied give P, and one of them is known.",
    units={"Q2": "C"},
    sizes=("Q1",),
    mistakes=(
        Mistake(
            "root-taken",
            "Q2",
            "sqrt(P)",
            "You took the square root of {P}. That holds only for two equal charges: divide {P} by {Q1} instead.",
        ),
        Mistake(
            "gradient-divided",
            "Q2",
            "m/Q1",
            "You divided the gradient by {Q1} alone. The gradient holds {k} as well: divide {P} by {Q1}.",
        ),
    ),
)
READ_OFF = Relation(
    "F_P = m*(1/r_P^2)",
    what="Read the force from the line",
    why="On the line F is the gradient times 1/r².",
    plain=PLAIN_LAW,
    units={"F_P": "N"},
    mistakes=(
        Mistake(
            "not-squared",
            "F_P",
            "m/r_P",
            "You multiplied the gradient by 1/r. The axis of the graph is 1/r²: square {r_P} before you divide by it.",
        ),
        Mistake(
            "not-inverted",
            "F_P",
            "m*r_P^2",
            "You multiplied the gradient by {r_P^2}. The axis of the graph is 1/r², so divide by {r_P^2}.",
        ),
    ),
)


def plan_graph(data: Data) -> Plan:
    rows = data.rows["readings"]
    numbers = range(1, len(rows) + 1)
    values = {f"{name}{n}": row[name] for n, row in zip(numbers, rows, strict=True) for name in ("r", "F")}
    refuse_readings(data)
    squares = tuple(square(n, last=n == len(rows)) for n in numbers)
    parts = (
        Part(
            "explain",
            "explain",
            "Explain why a graph of F against 1/r² is a straight line through the origin, and what a doubled charge"
            " does to it.",
            points=LINE,
        ),
        Part(
            "squares",
            "calculate",
            "Calculate 1/r² for each reading.",
            squares,
            also=tuple(step.makes for step in squares[:-1]),
        ),
        Part(
            "draw",
            "draw",
            "Plot F against 1/r² and draw the line of best fit through the origin.",
            points=DRAWING,
            figure=lambda v: drawn(v, len(rows)),
        ),
        Part("gradient", "calculate", "Calculate the gradient of the line.", (gradient(len(rows)),)),
        Part(
            "product", "calculate", "Calculate the product of the two charges from the gradient.", (PRODUCT.step("P"),)
        ),
        *parts_of_the_line(data),
    )
    listed = "; ".join(f"{row['F']} at {row['r']}" for row in data.rows_said["readings"])
    opening = data.pick(
        "The force between two small charged spheres, A and B, is measured with a sensitive balance at several"
        " distances between their centres.",
        "Sphere A is fixed; sphere B hangs from a force sensor and is moved from place to place. Force and distance of"
        " the centres are noted.",
        "In an experiment two charged spheres, A and B, are held at different distances, and the force between them is"
        " read each time.",
    )
    return Plan(
        story=f"{opening} The readings: {listed}.",
        parts=parts,
        values={**values, **{name: data.values[name] for name in ("Q1", "r_P") if data.has(name)}},
        checks=(best(len(rows)),),
        notes=(
            (
                "A line drawn by eye gives nearly the same gradient: take two points far apart on the line, not two"
                " readings."
            ),
        ),
        warnings=far_off(rows),
    )


def refuse_readings(data: Data) -> None:
    """No line without two different distances, no gradient without a force, no force on a charge of zero."""
    rows = data.rows["readings"]
    if max(row["r"] for row in rows) - min(row["r"] for row in rows) < 1e-9 * rows[0]["r"]:
        raise Refusal("readings.1.r", SAME)
    if not any(row["F"] for row in rows):
        raise Refusal("readings.0.F", ZERO_FORCES)
    if data.has("Q1") and data.values["Q1"] == 0:
        raise Refusal("Q1", "A zero charge gives no force, so this cannot be found.")


def parts_of_the_line(data: Data) -> Iterator[Part]:
    """What the line tells besides, where it is asked."""
    if data.has("Q1"):
        ask = f"A carries {data.said['Q1']}. Calculate the size of the charge on B."
        yield Part("charge", "calculate", ask, (ONE_CHARGE.step("Q2"),))
    if data.has("r_P"):
        ask = f"Use the line to find the force when the centres are {data.said['r_P']} apart."
        yield Part("read", "calculate", ask, (READ_OFF.step("F_P"),))


def square(n: int, *, last: bool) -> Step:
    """One entry of the column 1/r²."""
    return Step(
        law=f"x{n} = 1/r{n}^2",
        make=f"x{n} = 1/r{n}^2",
        unit="m^-2",
        marks=SA if last else NO_MARKS,
        what=f"The place of reading {n} on the axis, x = 1/r²",
        why="Square the distance in metres, then turn it upside down.",
        plain="The axis is chosen so that the curve becomes a straight line.",
        # Who slips here slips in every row: see the gradient. Only the last row is an answer of its own.
        mistakes=(
            (
                Mistake("not-squared", f"x{n}", f"1/r{n}", ROW_SQUARE),
                Mistake("not-inverted", f"x{n}", f"r{n}^2", ROW_TURN),
            )
            if last
            else ()
        ),
    )


def gradient(count: int) -> Step:
    """The gradient of the best line through the origin."""
    top = " + ".join(f"x{n}*F{n}" for n in range(1, count + 1))
    bottom = " + ".join(f"x{n}^2" for n in range(1, count + 1))
    numbers = range(1, count + 1)
    means = "+".join(f"F{n}/x{n}" for n in numbers)
    single = ("+".join(f"F{n}/r{n}" for n in numbers), "+".join(f"1/r{n}^2" for n in numbers))
    turned = ("+".join(f"r{n}^2*F{n}" for n in numbers), "+".join(f"r{n}^4" for n in numbers))
    return Step(
        law=f"m = ({top})/({bottom})",
        make=f"m = ({top})/({bottom})",
        unit="N·m^2",
        marks=FSA,
        read_off=BY_EYE,
        what="Gradient of the line of best fit through the origin",
        why=(
            "Among all lines through the origin this one fits the readings best (least squares): points far out on the"
            " line count for more. On paper, take a point far out on your line and divide its F by its 1/r²."
        ),
        plain="Steepness is how far up for each step to the right.",
        mistakes=(
            Mistake(
                "upside-down",
                "m",
                f"({bottom})/({top})",
                "You divided the other way round. The gradient is the change in F for each step in 1/r²: divide F by"
                " 1/r².",
            ),
            Mistake("rows-not-squared", "m", f"({single[0]})/({single[1]})", ROW_SQUARE),
            Mistake("rows-not-inverted", "m", f"({turned[0]})/({turned[1]})", ROW_TURN),
            Mistake(
                "added-up",
                "m",
                f"({means})",
                "You added up the gradients of all the readings. The line has one gradient: take it from one point far"
                " out on the line.",
            ),
        ),
    )


def best(count: int) -> Check:
    """At the best gradient, what the readings lie above the line and below it balances, each times its x."""

    def balanced(v: Values) -> bool:
        off = [v[f"x{n}"] * (v[f"F{n}"] - v["m"] * v[f"x{n}"]) for n in range(1, count + 1)]
        size = sum(abs(v[f"x{n}"] * v[f"F{n}"]) for n in range(1, count + 1))
        return abs(sum(off)) <= 1e-9 * size

    return Check(
        "Readings above the line and readings below it balance",
        words=(
            "What they lie above and what they lie below, each times its 1/r², comes to nothing: no other line through"
            " the origin is nearer to all of them."
        ),
        holds=balanced,
    )


def far_off(rows: tuple[dict[str, float], ...]) -> tuple[str, ...]:
    """A warning for each reading far from the line of all."""
    xs = [1 / row["r"] ** 2 for row in rows]
    slope = sum(x * row["F"] for x, row in zip(xs, rows, strict=True)) / sum(x * x for x in xs)
    limit = OFF * max(row["F"] for row in rows)
    return tuple(
        f"Reading {n} lies far from the line of the others. Check its distance, its force and their prefixes."
        for n, (x, row) in enumerate(zip(xs, rows, strict=True), 1)
        if abs(row["F"] - slope * x) > limit
    )


def drawn(v: Values, count: int) -> Figure:
    """The readings, the line, its slope triangle and the point that is read off."""
    points = [(v[f"x{n}"], v[f"F{n}"]) for n in range(1, count + 1)]
    m, end = v["m"], max(x for x, _ in points)
    keys = []
    if "r_P" in v:
        at = 1 / v["r_P"] ** 2
        end = max(end, at)
        keys = [Key(at, m * at, "P", "", "F_P", ("F_P",))]
    end *= 1.05
    return graph(
        "1/r^2 (m^{-2})",
        "F (N)",
        [GraphLine(points, "", "points"), GraphLine([(0.0, 0.0), (end, m * end)])],
        keys=keys,
        gradients=[Gradient((0.2 * end, 0.2 * m * end), (0.6 * end, 0.6 * m * end), "Δ(1/r²)", "ΔF", ("m",))],
        title="F against 1/r²",
        drawn_from=(*(f"x{n}" for n in range(1, count + 1)), "m"),
    )


PLACES = (
    (6, 8, 10, 12, 15, 20),
    (5, 6, 8, 10, 15),
    (10, 12, 15, 20, 30),
    (4, 5, 6, 8, 12),
    (8, 10, 12, 16),
)  # cm
PAIRS = ((20, 15), (12, 25), (30, 8), (40, 18), (16, 16), (24, 35))  # nC


def practise_graph(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """Readings of two charges, a little off the line as readings are."""
    toss = chance.random  # type: ignore[attr-defined]
    places = PLACES[int(toss() * len(PLACES))]
    one, other = PAIRS[int(toss() * len(PAIRS))]
    spread = 0.02 if level == 1 else 0.05
    rows = []
    for place in places:
        true = K * one * other * 1e-18 / (place / 100) ** 2 * (1 + spread * (2 * toss() - 1))
        rows.append({"r": f"{place} cm", "F": f"{float(f'{true * 1e6:.3g}'):g} µN".replace(".", ",")})
    charge_said = f"{one} nC" if level > 1 or toss() < 0.5 else ""
    return {**typed, "readings": rows, "Q1": charge_said}


INVERSE_SQUARE = Question(
    key="graph",
    title="The force as a graph",
    fields=(
        Rows(
            "readings",
            "Readings",
            "reading",
            (distance("r", "Distance between the centres"), force("F", "Force")),
            at_least=3,
            at_most=8,
        ),
        Input("Q1", "Charge on A", "nC", 1e-12, 1e-4, signed=True, optional=True, help="only if it is given"),
        Input(
            "r_P",
            "Distance to read the force at",
            "cm",
            1e-3,
            10,
            refusal="Distance must be greater than zero.",
            optional=True,
            help="only if it is asked",
        ),
    ),
    plan=plan_graph,
    constants=("k",),
    laws=(COULOMB.name,),
    example={
        "readings": (
            {"r": "6 cm", "F": "760 µN"},
            {"r": "8 cm", "F": "415 µN"},
            {"r": "10 cm", "F": "274 µN"},
            {"r": "15 cm", "F": "118 µN"},
            {"r": "20 cm", "F": "68 µN"},
        ),
        "Q1": "+20 nC",
        "r_P": "7 cm",
    },
    draws={"r_P": Draw((7, 9, 11, 14), "cm", harder=(6.5, 13, 18))},
    adjust=practise_graph,
    since=2,
)
