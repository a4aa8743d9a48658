"""The net field at a point in a plane, by components; and the picture of the field of any charges.

E_x = ΣE cos θ, E_y = ΣE sin θ, E_net = √(E_x² + E_y²), the quadrant from the signs of the sums.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import hypot
from random import Random
from typing import cast

from calc.figures import Charge, Figure, Force, charges_in_plane
from calc.figures.words import listing
from calc.language.printing import Style
from calc.language.symbols import symbol
from calc.model.answers import Direction, Point
from calc.model.questions import (
    FSA,
    NO_MARKS,
    SA,
    A,
    Check,
    Choice,
    Data,
    Draw,
    Mistake,
    Part,
    Plan,
    Question,
    Refusal,
    Step,
    Values,
)
from calc.topics.electric_field.shared import (
    ADDING,
    FIELD,
    TEST_CHARGE,
    largest,
    pattern,
    pattern_points,
    placed,
    position,
)
from calc.topics.electric_field.sources import (
    ARROWS,
    PLAIN_NET,
    each_field,
    net_plan,
    of_field,
    point_of,
    size_check,
    sources_of,
    table,
)
from calc.topics.several_charges.plane import sloped
from calc.topics.several_charges.shared import Body, axis_angle, compass, heading_of, row_values, unit, way_words
from calc.working.chain import lead
from calc.working.working import run


def field_vector(source: Body, at: Body, k: float) -> tuple[float, float]:
    """Components of one source's field at P."""
    size = k * abs(source.charge) / ((at.x - source.x) ** 2 + (at.y - source.y) ** 2)
    x, y = unit(heading_of(source, at))
    return size * x, size * y


def summed(values: Sequence[float]) -> float:
    total = sum(values)
    return 0.0 if abs(total) <= 1e-11 * max(abs(value) for value in values) else total


def resolve_steps(source: Body, style: Style, at: Body) -> tuple[Step, ...]:
    """The acute angle of the joining line with the x-axis, and both components' sizes."""
    tag = source.tag
    name, angle = f"E_{tag}", f"theta_{tag}"
    up, across = f"abs(y_P - y{tag})", f"abs(x_P - x{tag})"
    way = way_words(heading_of(source, at), style)
    return (
        Step(
            law=f"tan({angle}) = {up}/{across}",
            make=f"{angle} = atan({up}/{across})",
            unit="°",
            marks=NO_MARKS,
            what=f"Angle between the line through {source.words} and P and the x-axis",
            why="Step up over step across, sizes only.",
            plain="How steep the joining line is.",
            mistakes=(
                Mistake(
                    "angle-inverted",
                    angle,
                    f"atan({across}/{up})",
                    "Name your reference axis.",
                    "the angle was taken from the y-axis",
                ),
            ),
        ),
        *(
            Step(
                law=f"{name}{axis} = {name}*{f}({angle})",
                make=f"{name}{axis} = {name}*{f}({angle})",
                unit="N·C⁻¹",
                marks=NO_MARKS,
                what=f"Component along {axis} of the field of {source.words}",
                why=f"This field points {way}. Resolve it: sizes only, the directions come back in the sums.",
                plain="The part of the field that works along this axis.",
                mistakes=(
                    Mistake(
                        "sin-for-cos",
                        f"{name}{axis}",
                        f"{name}*{other}({angle})",
                        "The side next to the angle is E cos θ, the side opposite it E sin θ.",
                    ),
                ),
            )
            for axis, f, other in (("x", "cos", "sin"), ("y", "sin", "cos"))
        ),
    )


def sum_step(axis: str, terms: Sequence[tuple[int, str]]) -> Step:
    """The signed sum of everything along one axis."""
    name, positive = f"E_{axis}", "to the right" if axis == "x" else "upwards"
    body = "".join(f" {'+' if sign > 0 else '-'} {term}" for sign, term in terms)
    law = (
        f"{name} ="
        f" {body.removeprefix(' + ').replace(' - ', '-', 1) if body.startswith(' - ') else body.removeprefix(' + ')}"
    )
    wrong: tuple[Mistake, ...] = ()
    if len({sign for sign, _ in terms}) > 1:
        wrong = (
            Mistake(
                f"opposites-added-{axis}",
                name,
                " + ".join(term for _, term in terms),
                f"{ARROWS} Opposite arrows: subtract.",
            ),
        )
    return Step(
        law=law,
        make=law,
        unit="N·C⁻¹",
        marks=A,
        mistakes=wrong,
        what=f"Add everything along {axis}, taking {positive} as positive",
        why="A minus sign means the opposite direction.",
        plain="Add up the pushes along this axis; opposite ones take away.",
    )


def net_steps(sources: Sequence[Body], at: Body, k: float, style: Style) -> tuple[tuple[Step, ...], Direction]:
    """Components, their sums, the resultant and its angle."""
    vectors = [field_vector(s, at, k) for s in sources]
    steps: list[Step] = []
    terms: tuple[list[tuple[int, str]], list[tuple[int, str]]] = ([], [])
    for source, vector in zip(sources, vectors, strict=True):
        oblique = sloped(source, at)
        if oblique:
            steps += resolve_steps(source, style, at)
        for axis, part, kept in zip("xy", vector, terms, strict=True):
            if part:
                kept.append((1 if part > 0 else -1, f"E_{source.tag}{axis if oblique else ''}"))
    x, y = (summed([vector[i] for vector in vectors]) for i in (0, 1))
    x, y = (0.0 if abs(part) <= 1e-12 * hypot(x, y) else part for part in (x, y))
    steps += [sum_step(axis, kept) for axis, kept in zip("xy", terms, strict=True) if kept]
    have = [f"E_{axis}" for axis, kept in zip("xy", terms, strict=True) if kept]
    direction = of_field(compass(x, y, style))

    def towards(v: Values) -> Direction:
        """By the values: a learner's own components may turn the field."""
        return of_field(compass(v["E_x"] if x else 0.0, v["E_y"] if y else 0.0, style))

    law = "E_net = " + ("sqrt(E_x^2 + E_y^2)" if len(have) == 2 else f"abs({have[0]})")
    added = " + ".join(f"E_{s.tag}" for s in sources)
    steps.append(
        Step(
            law=law,
            make=law,
            unit="N·C⁻¹",
            marks=FSA,
            what="Put the two components together",
            why="They are at right angles: use Pythagoras." if len(have) == 2 else "Everything lies along one axis.",
            plain=PLAIN_NET,
            direction=towards,
            mistakes=(
                (Mistake("sizes-added", "E_net", added, f"{ARROWS} Fields have directions: add them as vectors."),)
                if len(sources) > 1 and len(have) == 2
                else ()
            ),
        )
    )
    if x and y:
        steps.append(
            Step(
                law="tan(theta) = abs(E_y)/abs(E_x)",
                make="theta = atan(abs(E_y)/abs(E_x))",
                unit="°",
                marks=A,
                direction=towards,
                what="The angle of the net field with the x-axis",
                why="Opposite over adjacent, sizes only; the signs of the sums tell the quadrant.",
                plain="Which way the arrow points.",
                mistakes=(
                    Mistake(
                        "angle-inverted",
                        "theta",
                        "atan(abs(E_x)/abs(E_y))",
                        "Name your reference axis.",
                        "the angle was taken from the y-axis",
                    ),
                ),
            )
        )
    return tuple(steps), direction


def plane_scene(sources: Sequence[Body], at: Body) -> Figure:
    """The data: the charges around P, and nothing that is to be found."""
    bodies = [Charge(s.label, s.charge, s.x, s.y) for s in sources]
    return charges_in_plane(
        [*bodies, Charge("P", 0.0, at.x, at.y)], on=len(bodies), kind="field", title="Charges around a point P"
    )


def plane_figure(v: Values, sources: Sequence[Body], at: Body, net: bool) -> Figure:
    """The fields at P with P at the centre; with the dashed resultant when ``net``."""
    bodies = [Charge(s.label, s.charge, s.x, s.y) for s in sources]
    forces = [Force(symbol(f"E_{s.tag}").label, v[f"E_{s.tag}"], heading_of(s, at)) for s in sources]
    x, y = v.get("E_x", 0.0), v.get("E_y", 0.0)
    resultant, angle = None, None
    if net and (x or y):
        heading = compass(x, y, Style()).angle
        resultant = Force("E_{net}", v["E_net"], heading or 0.0)
        angle = axis_angle(x, y)
    return charges_in_plane(
        [*bodies, Charge("P", 0.0, at.x, at.y)],
        on=len(bodies),
        kind="field",
        forces=forces,
        resultant=resultant,
        angle=angle,
        title="The net field at P" if net else "Fields at P",
    )


def plan_plane(data: Data) -> Plan:
    sources = sources_of(data)
    at = point_of(data, sources)
    style, k = data.settings.style, data.settings.constant("k")

    def alone(source: Body) -> tuple[Direction, str]:
        heading = heading_of(source, at)
        return of_field(compass(*unit(heading), style)), way_words(heading, style)

    steps = each_field(data, sources, at, alone)
    more, direction = net_steps(sources, at, k, style)
    zero = direction.key == "none"

    def force_way(v: Values) -> Direction | None:
        net = more[-1].direction
        found = net(v) if callable(net) else net
        if found is None or found.angle is None:
            return None
        turn = 0.0 if data.sign("q") > 0 else 180.0
        return compass(*unit((found.angle + turn) % 360), style)

    terms = {axis: " + ".join(f"{s.name}*({axis}_P - {axis}{s.tag})/r_{s.tag}^3" for s in sources) for axis in "xy"}
    checks = [size_check(sources)]
    if not zero:
        checks.append(
            Check(
                "Once more with the signs of the charges put in, without angles",
                f"E_net = k*sqrt(({terms['x']})^2 + ({terms['y']})^2)",
                tolerance=1e-6,
            )
        )
    found = Part(
        "net",
        "calculate",
        "Calculate the net electric field at P, with its direction.",
        (*steps, *more),
        answer="E_net",
        figure=lambda v: plane_figure(v, sources, at, True),
    )
    return net_plan(
        data,
        sources,
        at,
        found,
        force_way,
        lambda v: plane_figure(v, sources, at, False),
        lambda _: plane_scene(sources, at),
        tuple(checks),
        zero,
    )


def practise_plane(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """P at a right angle first; then on a sloped line; three charges from level 3 on."""
    draw = cast(Random, random)

    def turn(number: int) -> int:
        return number * draw.choice((-1, 1))

    first, second = draw.sample((10, 15, 20, 24, 30), 2)
    places = [(turn(first), 0), (0, turn(second))]
    if level > 1:
        wide, high = draw.choice(((30, 40), (12, 16), (40, 30), (24, 10), (18, 24), (5, 12)))
        places[1] = (turn(wide), turn(high))
    if level > 2:
        places.append((0, turn(draw.choice((12, 25, 36)))))
    sizes = draw.sample((2, 3, 4, 5, 6, 8, 9), len(places))
    rows = [
        {"Q": f"{draw.choice('+-')}{size} nC", "x": f"{x} cm", "y": f"{y} cm"}
        for size, (x, y) in zip(sizes, places, strict=True)
    ]
    return {**typed, "charges": rows, "x_P": "0 cm", "y_P": "0 cm", "q": ""}


PLANE = Question(
    key="plane",
    title="Net field at a point in a plane",
    fields=(
        table("x", "y"),
        position("x_P", "Position of P across"),
        position("y_P", "Position of P upwards"),
        placed("Charge placed at P, if any", optional=True),
    ),
    plan=plan_plane,
    constants=("k",),
    laws=(FIELD.name, TEST_CHARGE.name, ADDING.name),
    example={
        "charges": [{"Q": "+9 nC", "x": "-30 cm", "y": "0 cm"}, {"Q": "-8 nC", "x": "0 cm", "y": "-20 cm"}],
        "x_P": "0 cm",
        "y_P": "0 cm",
        "q": "",
    },
    draws={"x_P": Draw((0,), "cm"), "y_P": Draw((0,), "cm"), "q": Draw(("",))},
    adjust=practise_plane,
)

# --- the same field told by its components ------------------------------------------------------------------------

ALONG = {
    "x": (("positive", "along +x: to the right"), ("negative", "along −x: to the left")),
    "y": (("positive", "along +y: upwards"), ("negative", "along −y: downwards")),
}


def with_sign(axis: str) -> Callable[[Values], Direction | None]:
    """The sign of a component as its direction; None for a component of zero."""

    def way(v: Values) -> Direction | None:
        value = v[f"E_{axis}"]
        key = "positive" if value > 0 else "negative"
        return Direction(key, dict(ALONG[axis])[key], ALONG[axis]) if value else None

    return way


def plan_components(data: Data) -> Plan:
    """The plan of the plane, its one calculation cut into the components that are asked, each an answer of its own."""
    whole = plan_plane(data)
    steps = {step.makes: step for step in whole.part("net").steps}
    parts = []
    for axis in "xy":
        name = f"E_{axis}"
        if name not in steps:
            other = "y" if axis == "x" else "x"
            raise Refusal(
                None,
                f"All the charges and P lie on one line along the {other}-axis, so there is no component along {axis}."
                " Use the net field on a line, or move P off that line.",
            )
    before: list[Step] = []
    left = dict(steps)
    for axis in "xy":
        name = f"E_{axis}"
        chain = tuple(
            left.pop(step.makes)
            for step in lead({*data.known, *row_values(data), *(s.makes for s in before)}, tuple(steps.values()), name)
            if step.makes in left
        )
        before += chain
        last = replace(chain[-1], direction=with_sign(axis), marks=SA)
        parts.append(
            Part(
                axis,
                "calculate",
                f"Calculate the component of the net electric field at P along the {axis}-axis, with its sign.",
                (*chain[:-1], last),
            )
        )
    shown = data.choices["answer"] == "both"
    rest = tuple(left.values()) if shown else ()
    if rest:
        parts.append(
            Part(
                "net",
                "calculate",
                "From the components, calculate the size of the net field at P, and its direction.",
                rest,
                answer="E_net",
                figure=whole.part("net").figure,
            )
        )
    kept = tuple(part for part in whole.parts if part.key in ("define", "draw"))
    values = run(whole, data.settings.constants())
    terms = {
        axis: " + ".join(f"{s.name}*({axis}_P - {axis}{s.tag})/r_{s.tag}^3" for s in sources_of(data)) for axis in "xy"
    }
    checks = tuple(
        Check(
            f"The component along {axis} once more, with the signs of the charges put in",
            f"E_{axis} = k*({terms[axis]})",
            tolerance=1e-6,
        )
        for axis in "xy"
        if values[f"E_{axis}"]
    )
    return replace(whole, parts=(*kept, *parts), checks=(*checks, *(whole.checks if rest else ())))


def practise_components(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Two charges: a right angle first, then a sloping line; size and angle as well from level 3 on."""
    drawn = practise_plane({**typed, "q": ""}, random, min(level, 2))
    return {**{name: drawn[name] for name in typed}, "answer": "both" if level == 3 else "components"}


COMPONENTS = Question(
    key="components",
    title="Net field in a plane, as components",
    fields=(
        table("x", "y"),
        position("x_P", "Position of P across"),
        position("y_P", "Position of P upwards"),
        Choice(
            "answer",
            "The net field is asked",
            (
                ("components", "as two components, each with its sign"),
                ("both", "as components, then as size and angle"),
            ),
        ),
    ),
    plan=plan_components,
    constants=("k",),
    laws=(FIELD.name, TEST_CHARGE.name, ADDING.name),
    example={
        "charges": [{"Q": "+5 nC", "x": "-40 cm", "y": "-30 cm"}, {"Q": "-6 nC", "x": "0 cm", "y": "-20 cm"}],
        "x_P": "0 cm",
        "y_P": "0 cm",
        "answer": "both",
    },
    draws={"x_P": Draw((0,), "cm"), "y_P": Draw((0,), "cm"), "answer": Draw(("components",))},
    adjust=practise_components,
    since=2,
)

# --- the picture alone --------------------------------------------------------------------------------------------


def crowded(charges: Sequence[float]) -> str:
    """Where the field of these charges (C) is strongest, as the end of a sentence."""
    if len(charges) == 1:
        return "close to the charge"
    top = largest(charges)
    if len(top) == len(charges):
        return "close to the charges, which are equal in size"
    names = listing([str(i + 1) for i in top])
    if len(top) > 1:
        return f"close to charges {names}, the largest"
    return f"close to charge {names}, the {'larger one' if len(charges) == 2 else 'largest'}"


def plan_pattern(data: Data) -> Plan:
    sources = sources_of(data)
    several = len(sources) > 1
    charges = [(s.label, s.charge, s.x, s.y) for s in sources]
    sizes = [s.charge for s in sources]
    points = [*pattern_points(*sizes), Point("Every line meets the surface of a sphere at 90°.", 1, ("90°",))]
    meaning = (
        Point(
            "The tangent to a field line gives the direction of the force on a small positive test charge.",
            1,
            ("positive test charge",),
        ),
        Point(
            f"Where lines are closer together the field is stronger: here {crowded(sizes)}.", 1, ("closer together",)
        ),
        Point("Two lines never cross: the field at a point has only one direction.", 1, ("one direction",)),
    )
    rows = data.rows_said["charges"]
    places = ", ".join(f"{row['Q']} at ({row['x']}; {row['y']})" for row in rows)
    return Plan(
        story=(
            f"Charged spheres are fixed in place: {places}."
            if several
            else f"A charged sphere is fixed in place: {places}."
        ),
        parts=(
            Part(
                "pattern",
                "draw",
                "Draw the electric field pattern.",
                points=tuple(points),
                figure=lambda _: pattern(charges),
            ),
            Part("meaning", "explain", "Explain what the lines tell, and why they never cross.", points=meaning),
        ),
        values={**row_values(data), **data.values},
    )


def practise_pattern(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Two charges; a third one from level 3 on."""
    draw = cast(Random, random)
    places = [(0, 0), (20, 0), (10, 15)][: 3 if level == 3 else 2]
    rows = [
        {"Q": f"{draw.choice('+-')}{draw.choice((2, 4, 6, 8))} nC", "x": f"{x} cm", "y": f"{y} cm"} for x, y in places
    ]
    return {**typed, "charges": rows}


PATTERN = Question(
    key="pattern",
    title="Draw the field of your charges",
    fields=(table("x", "y"),),
    plan=plan_pattern,
    laws=(TEST_CHARGE.name,),
    example={"charges": [{"Q": "+6 nC", "x": "0 cm", "y": "0 cm"}, {"Q": "-3 nC", "x": "20 cm", "y": "0 cm"}]},
    adjust=practise_pattern,
)
