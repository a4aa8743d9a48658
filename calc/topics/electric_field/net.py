"""The net field at a point, of charges on a line or in a plane.

On a line: sizes with signs of direction. In a plane, by components: E_x = ΣE cos θ, E_y = ΣE sin θ,
E_net = √(E_x² + E_y²), the quadrant from the signs of the sums. Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import hypot
from random import Random
from typing import Any, cast

from calc.figures import Charge, Figure, Force, On, charges_in_plane, spheres_on_line
from calc.language.printing import Style
from calc.language.symbols import symbol
from calc.model.answers import Direction
from calc.model.directions import LEFT_RIGHT, NET_ON_LINE
from calc.model.questions import (
    FSA,
    NO_MARKS,
    SA,
    A,
    Check,
    Data,
    Draw,
    Mistake,
    Plan,
    Question,
    Step,
    Values,
    in_names,
)
from calc.model.relations import Relation, Towards
from calc.topics.electric_field.laws import written
from calc.topics.electric_field.shared import ADDING, FIELD, TEST_CHARGE, by_value, placed, position
from calc.topics.electric_field.sources import (
    OPPOSITE,
    PLAIN_NET,
    SAME_WAY,
    SIZES_ADDED,
    Place,
    net_plan,
    point_of,
    sources_of,
    table,
)
from calc.topics.several_charges.plane import sloped
from calc.topics.several_charges.shared import (
    Body,
    axis_angle,
    beside_angle,
    compass,
    heading_of,
    side,
    sideways,
    unit,
    way_words,
)
from calc.topics.shared.electrostatics import FROM_Y_AXIS

NO_WAY = "no direction: the net field is zero"
NOTHING = 1e-11  # of the largest field: what floats leave of a sum that cancels


def of_field(where: Direction) -> Direction:
    """A direction shared with net forces, its words for a zero vector about the field."""
    options = tuple((key, NO_WAY if key == "none" else words) for key, words in where.options)
    return replace(where, words=NO_WAY if where.key == "none" else where.words, options=options)


def on_line(source: Body, at: Body) -> tuple[Towards, str]:
    """The direction of one source's field at P, and the same inside a sentence."""
    right = sideways(source, at) > 0
    sign = 1 if source.charge > 0 else -1
    key = "right" if right else "left"
    return by_value(LEFT_RIGHT, key, source.name, sign=sign), LEFT_RIGHT.of(key).words


def line_net(sources: Sequence[Body], at: Body, sizes: Sequence[float]) -> tuple[Step, str]:
    """The vector sum on a line, and the key of its positive direction ('' where the fields cancel).

    sizes: of the fields, to choose the positive direction.
    """
    names = [f"E_{s.tag}" for s in sources]
    ways = [sideways(s, at) for s in sources]
    total = sum(way * size for way, size in zip(ways, sizes, strict=True))
    zero = abs(total) <= 1e-12 * max(sizes)
    positive = ways[0] if zero else 1 if total > 0 else -1
    plus = [n for n, way in zip(names, ways, strict=True) if way == positive]
    minus = [n for n, way in zip(names, ways, strict=True) if way != positive]
    if minus:
        wrong = Mistake("opposites-added", "E_net", " + ".join(names), OPPOSITE)
        why = f"Take {'right' if positive > 0 else 'left'} as positive: fields the other way count as negative."
    else:
        subtracted = f"abs({' - '.join(names)})"
        wrong = Mistake("aligned-subtracted", "E_net", subtracted, SAME_WAY)
        why = "The fields at P all point the same way: add their sizes."
    made = written(
        "E_net = " + " - ".join([" + ".join(plus), *minus]),
        "N·C⁻¹",
        marks=SA,
        what="Add the fields as vectors",
        why=why,
        plain=PLAIN_NET,
        direction=lambda v: of_field(side(v["E_net"] * positive, NET_ON_LINE.options)),
        mistakes=(wrong,),
    )
    return made, "" if zero else "right" if positive > 0 else "left"


def line_figure(v: Values, sources: Sequence[Body], at: Body, arrows: bool) -> Figure:
    """Charges and P at their places; with the fields at P as arrows, or with distances."""
    count = len(sources)
    distances = [] if arrows else [(i, count, symbol(f"r_{s.tag}").label) for i, s in enumerate(sources)]
    forces = [On(count, symbol(f"E_{s.tag}").label, v[f"E_{s.tag}"], sideways(s, at) > 0, "field") for s in sources]
    return spheres_on_line(
        [Charge(s.label, s.charge, s.x) for s in sources],
        points=[("P", at.x)],
        forces=forces if arrows else (),
        distances=distances,
        title="Fields at P" if arrows else "Charges and the point P",
    )


def signed_sum(sources: Sequence[Body], axis: str) -> str:
    """A component of the net field over k, in one line: the signs of charges and steps settle its direction."""
    return " + ".join(f"{s.name}*({axis}_P - {axis}{s.tag})/r_{s.tag}^3" for s in sources)


def plan_line(data: Data) -> Plan:
    sources = sources_of(data)
    at = point_of(data, sources)
    k = data.settings.constant("k")
    made, positive = line_net(sources, at, [k * abs(s.charge) / (at.x - s.x) ** 2 for s in sources])
    several = len(sources) > 1
    alone = "right" if sideways(sources[0], at) > 0 else "left"
    place = Place(
        alone=lambda source: on_line(source, at),
        net=(made,) if several else (),
        force=by_value(LEFT_RIGHT, positive or alone, "E_net" if several else f"E_{sources[0].tag}", "q"),
        figure=lambda v: line_figure(v, sources, at, True),
        scene=lambda v: line_figure(v, sources, at, False),
        ask=f"Calculate the {'net ' if several else ''}electric field at P.",
        check=Check(
            "Once more with the signs of the charges put in",
            f"E_net = abs(k*({signed_sum(sources, 'x')}))",
            "The signs of charges and steps settle each direction by themselves.",
            tolerance=1e-6,
        ),
        zero=several and not positive,
    )
    return net_plan(data, sources, at, place)


def practise_line(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Two charges with P between or beside them; three from level 3 on."""
    draw = cast(Random, random)
    count = 3 if level == 3 else 2
    places, x = [], 0
    for _ in range(count + 1):
        places.append(x)
        x += draw.choice((10, 15, 20, 25, 30, 40))
    at = draw.choice(places[1:-1] if level == 1 else places)
    sizes = draw.sample((2, 3, 4, 5, 6, 8, 9), count)
    rows = [
        {"Q": f"{draw.choice('+-')}{size} nC", "x": f"{place} cm"}
        for size, place in zip(sizes, [p for p in places if p != at], strict=True)
    ]
    return {
        **typed,
        "charges": rows,
        "x_P": f"{at} cm",
        "q": "" if level == 1 else draw.choice(("", "+2 nC", "-1,6 x 10^-19 C")),
    }


LINE = Question(
    key="line",
    title="Net field at a point on a line",
    fields=(table("x"), position("x_P", "Position of P"), placed("Charge placed at P, if any", optional=True)),
    plan=plan_line,
    constants=("k",),
    laws=(FIELD.name, TEST_CHARGE.name, ADDING.name),
    example={"charges": [{"Q": "+8 nC", "x": "0 cm"}, {"Q": "-5 nC", "x": "50 cm"}], "x_P": "30 cm", "q": ""},
    draws={"x_P": Draw((20,), "cm"), "q": Draw(("",))},
    adjust=practise_line,
)

# --- in a plane ---------------------------------------------------------------------------------------------------


def field_vector(source: Body, at: Body, k: float) -> tuple[float, float]:
    """Components of one source's field at P."""
    size = k * abs(source.charge) / ((at.x - source.x) ** 2 + (at.y - source.y) ** 2)
    x, y = unit(heading_of(source, at))
    return size * x, size * y


def summed(values: Sequence[float]) -> float:
    total = sum(values)
    return 0.0 if abs(total) <= NOTHING * max(abs(value) for value in values) else total


def resolve_steps(source: Body, style: Style, at: Body) -> tuple[Step, ...]:
    """The acute angle of the joining line with the x-axis, and both components' sizes."""
    tag = source.tag
    name, angle = f"E_{tag}", f"theta_{tag}"
    up, across = f"abs(y_P - y{tag})", f"abs(x_P - x{tag})"
    way = way_words(heading_of(source, at), style)
    return (
        angle_step(
            angle,
            up,
            across,
            marks=NO_MARKS,
            what=f"Angle between the line through {source.words} and P and the x-axis",
            why="Step up over step across, sizes only.",
            plain="How steep the joining line is.",
        ),
        *(
            written(
                f"{name}{axis} = {name}*{f}({angle})",
                "N·C⁻¹",
                marks=NO_MARKS,
                what=f"Component along {axis} of the field of {source.words}",
                why=f"This field points {way}. Resolve it: sizes only, the directions come back in the sums.",
                plain="The part of the field that works along this axis.",
                mistakes=(
                    Mistake(
                        "sin-for-cos",
                        f"{name}{axis}",
                        f"{name}*{other}({angle})",
                        beside_angle(f"{name}{axis}", angle, axis),
                    ),
                ),
            )
            for axis, f, other in (("x", "cos", "sin"), ("y", "sin", "cos"))
        ),
    )


def angle_step(name: str, up: str, across: str, **rest: Any) -> Step:
    """An angle with the x-axis from its tangent."""
    why = "the angle was taken from the y-axis"
    say = in_names(FROM_Y_AXIS, {"theta": name, "y": up, "x": across})
    return Relation(
        f"tan({name}) = {up}/{across}",
        units={name: "°"},
        mistakes=(Mistake("angle-inverted", name, f"atan({across}/{up})", say, why),),
        **rest,
    ).step(name)


def sum_step(axis: str, terms: Sequence[tuple[int, str]]) -> Step:
    """The signed sum of everything along one axis."""
    name, positive = f"E_{axis}", "to the right" if axis == "x" else "upwards"
    signed = "".join(f" {'+' if sign > 0 else '-'} {term}" for sign, term in terms).removeprefix(" + ")
    wrong: tuple[Mistake, ...] = ()
    if len({sign for sign, _ in terms}) > 1:
        all_added = " + ".join(term for _, term in terms)
        wrong = (Mistake(f"opposites-added-{axis}", name, all_added, OPPOSITE),)
    return written(
        f"{name} = {signed.replace(' - ', '-', 1) if signed.startswith(' - ') else signed}",
        "N·C⁻¹",
        marks=A,
        mistakes=wrong,
        what=f"Add everything along {axis}, taking {positive} as positive",
        why="A minus sign means the opposite direction.",
        plain="Add up the pushes along this axis; opposite ones take away.",
    )


def net_steps(sources: Sequence[Body], at: Body, k: float, style: Style) -> tuple[tuple[Step, ...], bool]:
    """Components, their sums, the resultant and its angle; and whether the fields cancel."""
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
    added = " + ".join(f"E_{s.tag}" for s in sources)
    wrong = Mistake("sizes-added", "E_net", added, SIZES_ADDED)

    def towards(v: Values) -> Direction:
        return of_field(compass(*components(v, sources), style))

    steps.append(
        written(
            "E_net = " + ("sqrt(E_x^2 + E_y^2)" if len(have) == 2 else f"abs({have[0]})"),
            "N·C⁻¹",
            marks=FSA,
            what="Put the two components together",
            why="They are at right angles: use Pythagoras." if len(have) == 2 else "Everything lies along one axis.",
            plain=PLAIN_NET,
            direction=towards,
            mistakes=(wrong,) if len(sources) > 1 and len(have) == 2 else (),
        )
    )
    if x and y:
        theta = angle_step(
            "theta",
            "abs(E_y)",
            "abs(E_x)",
            marks=A,
            what="The angle of the net field with the x-axis",
            why="Opposite over adjacent, sizes only; the signs of the sums tell the quadrant.",
            plain="Which way the arrow points.",
            directions={"theta": towards},
        )
        steps.append(theta)
    return tuple(steps), not (x or y)


def components(v: Values, sources: Sequence[Body]) -> tuple[float, float]:
    """E_x and E_y by the values, a learner's own among them; 0 for what only floats leave."""
    least = NOTHING * max(abs(v[f"E_{s.tag}"]) for s in sources)
    x, y = (value if abs(value := v.get(f"E_{axis}", 0.0)) > least else 0.0 for axis in "xy")
    return x, y


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
    style = data.settings.style
    steps, zero = net_steps(sources, at, data.settings.constant("k"), style)

    def alone(source: Body) -> tuple[Towards, str]:
        def towards(v: Values) -> Direction:
            return of_field(compass(*unit(heading_of(source._replace(charge=v[source.name]), at)), style))

        return towards, way_words(heading_of(source, at), style)

    def pushed(v: Values) -> Direction | None:
        x, y = components(v, sources)
        turn = 1 if v["q"] > 0 else -1
        return compass(turn * x, turn * y, style) if x or y else None

    x_sum, y_sum = (signed_sum(sources, axis) for axis in "xy")
    place = Place(
        alone=alone,
        net=steps,
        force=pushed,
        figure=lambda v: plane_figure(v, sources, at, False),
        net_figure=lambda v: plane_figure(v, sources, at, True),
        scene=lambda _: plane_scene(sources, at),
        ask="Calculate the net electric field at P, with its direction.",
        check=Check(
            "Once more with the signs of the charges put in, without angles",
            f"E_net = k*sqrt(({x_sum})^2 + ({y_sum})^2)",
            tolerance=1e-6,
        ),
        zero=zero,
    )
    return net_plan(data, sources, at, place)


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
