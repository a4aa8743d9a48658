"""The net field at a point on a line through the charges: sizes with signs of direction.

Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from random import Random
from typing import cast

from calc.figures import Charge, Figure, On, spheres_on_line
from calc.language.symbols import symbol
from calc.model.answers import Direction
from calc.model.questions import SA, Check, Data, Draw, Mistake, Part, Plan, Question, Step, Values
from calc.topics.electric_field.shared import ADDING, FIELD, TEST_CHARGE, placed, position
from calc.topics.electric_field.sources import (
    ARROWS,
    PLAIN_NET,
    each_field,
    net_plan,
    of_field,
    point_of,
    pushed_along,
    size_check,
    sources_of,
    table,
)
from calc.topics.several_charges.shared import NET_SIDES, SIDES, Body, side, sideways


def line_net(
    sources: Sequence[Body], at: Body, sizes: Sequence[float], names: Sequence[str] = ()
) -> tuple[Step, Direction]:
    """The vector sum on a line. sizes: of the fields, to choose the positive direction."""
    names = names or [f"E_{s.tag}" for s in sources]
    ways = [sideways(s, at) for s in sources]
    total = sum(way * size for way, size in zip(ways, sizes, strict=True))
    if abs(total) <= 1e-12 * max(sizes):
        total = 0.0
    positive = 1 if total > 0 or (total == 0 and ways[0] > 0) else -1
    plus = [n for n, way in zip(names, ways, strict=True) if way == positive]
    minus = [n for n, way in zip(names, ways, strict=True) if way != positive]
    law = "E_net = " + " - ".join([" + ".join(plus), *minus])
    added = " + ".join(names)
    if minus:
        wrong = Mistake("opposites-added", "E_net", added, f"{ARROWS} Opposite arrows: subtract.")
        why = f"Take {'right' if positive > 0 else 'left'} as positive: fields the other way count as negative."
    else:
        subtracted = f"abs({' - '.join(names)})"
        wrong = Mistake("aligned-subtracted", "E_net", subtracted, f"{ARROWS} Both point the same way: add.")
        why = "The fields at P all point the same way: add their sizes."
    direction = of_field(side(total, NET_SIDES))

    def towards(values: Values) -> Direction:
        """By the values: a learner's own fields may turn the sum round."""
        return of_field(side(values["E_net"] * positive if total else 0.0, NET_SIDES))

    step = Step(
        law=law,
        make=law,
        unit="N·C⁻¹",
        marks=SA,
        what="Add the fields as vectors",
        why=why,
        plain=PLAIN_NET,
        direction=towards,
        mistakes=(wrong,),
    )
    return step, direction


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


def plan_line(data: Data) -> Plan:
    sources = sources_of(data)
    at = point_of(data, sources)
    k = data.settings.constant("k")
    sizes = [k * abs(s.charge) / (at.x - s.x) ** 2 for s in sources]

    def alone(source: Body) -> tuple[Direction, str]:
        found = side(sideways(source, at), SIDES)
        return found, found.words

    steps = each_field(data, sources, at, alone)
    way = side(sideways(sources[0], at), SIDES)
    checks: tuple[Check, ...] = ()
    if len(sources) > 1:
        step, way = line_net(sources, at, sizes)
        steps.append(step)
        terms = " + ".join(f"{s.name}*(x_P - x{s.tag})/r_{s.tag}^3" for s in sources)
        checks = (size_check(sources),)
        if way.key != "none":
            checks += (
                Check(
                    "Once more with the signs of the charges put in",
                    f"E_net = abs(k*({terms}))",
                    "The signs of charges and steps settle each direction by themselves.",
                    tolerance=1e-6,
                ),
            )

    def force_way(v: Values) -> Direction | None:
        return pushed_along(steps[-1], v, data.sign("q"))

    ask = "Calculate the net electric field at P." if len(sources) > 1 else "Calculate the electric field at P."
    return net_plan(
        data,
        sources,
        at,
        Part("net", "calculate", ask, tuple(steps)),
        force_way,
        lambda v: line_figure(v, sources, at, True),
        lambda v: line_figure(v, sources, at, False),
        checks,
        way.key == "none",
    )


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
