"""What the questions about fields at one point share: the table of sources, one field at a time, the arrows.

E = kQ/r² for each source alone; the point P stands for a small positive test charge.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import hypot

from calc.figures import Figure
from calc.language.printing import Style
from calc.language.symbols import symbol
from calc.model.answers import Direction, Mark, Point
from calc.model.questions import FSA, NO_MARKS, Check, Data, Mistake, Part, Plan, Refusal, Rows, Step, Values
from calc.model.relations import Towards
from calc.topics.electric_field.charge import placed_force
from calc.topics.electric_field.shared import (
    AT_SOURCE,
    DEFINE,
    NOT_SQUARED,
    PLAIN_FIELD,
    SHARED,
    in_air,
    pattern,
    pattern_points,
    position,
    refuse_idle,
)
from calc.topics.several_charges.plane import sloped
from calc.topics.several_charges.shared import NOISE, Body, heading_of, row_values, side, way_words, within_bounds
from calc.topics.shared.electrostatics import charge
from calc.working.working import direction

PLAIN_NET = (
    "Each charge pushes a coulomb at P its own way. Pushes the same way help each other; opposite ones "
    "take from each other."
)
ARROWS = "Arrow at P for each."
NO_WAY = "no direction: the net field is zero"
COUNTED = ("A", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight")


def sources_of(data: Data) -> list[Body]:
    """The charges of the table; refuses a zero charge, here or at P, and two at one place."""
    refuse_idle(data)
    found: list[Body] = []
    for index, row in enumerate(data.rows["charges"]):
        if row["Q"] == 0:
            raise Refusal(f"charges.{index}.Q", "A zero charge gives no field: leave this row out.")
        body = Body(str(index + 1), row["Q"], row["x"], row.get("y", 0.0))
        if any(touching(body, other) for other in found):
            raise Refusal(f"charges.{index}.x", SHARED)
        found.append(body)
    return found


def touching(body: Body, other: Body) -> bool:
    size = max(abs(body.x), abs(body.y), abs(other.x), abs(other.y))
    return hypot(body.x - other.x, body.y - other.y) <= NOISE * size


def point_of(data: Data, sources: Sequence[Body]) -> Body:
    """The point P, as a small positive test charge; refuses a point at a source."""
    at = Body("P", 1.0, data.values["x_P"], data.values.get("y_P", 0.0), "point")
    for body in sources:
        if touching(body, at):
            raise Refusal("x_P", AT_SOURCE.format(body.words))
    return at


def table(*columns: str) -> Rows:
    words = {"x": "Position across", "y": "Position upwards"}
    return Rows(
        "charges",
        "Charges",
        "charge",
        (charge("Q", "Charge"), *(position(name, words[name]) for name in columns)),
        at_least=1,
    )


# --- one field, on a line or in a plane -----------------------------------------------------------------------


def gap_step(source: Body, at: Body) -> Step:
    """The distance from a source to P."""
    name, tag = f"r_{source.tag}", source.tag
    across, along = f"x_P - x{tag}", f"y_P - y{tag}"
    wrong: tuple[Mistake, ...] = ()
    if sloped(source, at):
        make = f"{name} = sqrt(({across})^2 + ({along})^2)"
        why = "Pythagoras with the steps across and up, from the source to P."
        wrong = (
            Mistake(
                "places-added",
                name,
                f"abs({across}) + abs({along})",
                "The shortest way is along the joining line: use Pythagoras.",
            ),
        )
    else:
        flat = abs(at.x - source.x) > abs(at.y - source.y)
        make = f"{name} = abs({across if flat else along})"
        why = "The distance from the source to P, not between the sources."
    return Step(
        law=make,
        make=make,
        unit="m",
        marks=NO_MARKS,
        what=f"Distance from {source.words} to P",
        why=why,
        plain="How far P is from this charge, in a straight line.",
        mistakes=wrong,
    )


def field_step(source: Body, where: Direction, way: str, first: bool, gap: str = "", test: str = "") -> Step:
    """One source's field at P. way: the direction inside a sentence; test: the name of a charge placed at P."""
    name, gap = f"E_{source.tag}", gap or f"r_{source.tag}"
    law = f"{name} = k*{source.name}/{gap}^2"
    act, side_ = ("repels", "away from") if source.charge > 0 else ("attracts", "towards")
    wrong = [Mistake("not-squared", name, f"k*{source.name}/{gap}", NOT_SQUARED)]
    if test:
        wrong.append(
            Mistake(
                "test-charge",
                name,
                f"k*abs({test})/{gap}^2",
                "E belongs to the source: put in the charge that makes the field.",
            )
        )
    return Step(
        law=law,
        make=law,
        unit="N·C⁻¹",
        sizes=(source.name,),
        direction=where,
        mistakes=tuple(wrong),
        marks=FSA if first else (Mark("substitution"),),
        what=f"The field of {source.words} alone, at P",
        why=(
            f"{source.words[0].upper()}{source.words[1:]} {act} a small positive test charge: its field points {side_}"
            f" it, {way}. Put in the size only."
        ),
        plain=PLAIN_FIELD,
    )


def of_field(where: Direction) -> Direction:
    """A direction shared with net forces, its words for a zero vector about the field."""
    options = tuple((key, NO_WAY if key == "none" else words) for key, words in where.options)
    return replace(where, words=NO_WAY if where.key == "none" else where.words, options=options)


def arrow_points(sources: Sequence[Body], at: Body, style: Style) -> tuple[Point, ...]:
    """One mark an arrow at P."""
    return tuple(
        Point(
            f"Arrow {symbol(f'E_{s.tag}').text} at P points {'away from' if s.charge > 0 else 'towards'} {s.words}, "
            f"{way_words(heading_of(s, at), style)}.",
            1,
        )
        for s in sources
    )


def pushed_along(step: Step, values: Values, sign: int) -> Direction | None:
    """The way of the force on a charge of this sign, on a line, in the field that ``step`` makes."""
    net = direction(step, values)
    if net is None or net.key == "none":
        return None
    return side(sign if net.key == "right" else -sign)


def force_at(data: Data, net: str, way: Towards) -> tuple[Part, ...]:
    """F = qE on a charge placed at P, if one is given."""
    if not data.has("q"):
        return ()
    ask = f"A charge of {data.said['q']} is placed at P. Calculate the electrostatic force on it."
    return (Part("force", "calculate", ask, (placed_force(data, way, net),)),)


def pattern_part(sources: Sequence[Body]) -> Part:
    charges = [(s.label, s.charge, s.x, s.y) for s in sources]
    ask = f"Draw the field around the charge{'s' if len(sources) > 1 else ''}."
    return Part(
        "pattern", "draw", ask, points=pattern_points(*(s.charge for s in sources)), figure=lambda _: pattern(charges)
    )


def story(data: Data, sources: Sequence[Body]) -> str:
    rows = data.rows_said["charges"]
    places = [
        f"{row['Q']} at {'(' + row['x'] + '; ' + row['y'] + ')' if 'y' in row else 'x = ' + row['x']}" for row in rows
    ]
    where = "on a straight line" if "y" not in rows[0] else "in a plane"
    many = f"{COUNTED[len(sources) - 1]} point charge{'s are' if len(sources) > 1 else ' is'}"
    point = f"({data.said['x_P']}; {data.said['y_P']})" if "y_P" in data.said else f"x = {data.said['x_P']}"
    return f"{many} fixed {where}: {', '.join(places)}. P is the point {point}."


# --- the whole of a net field, on a line as in a plane -----------------------------------------------------------


def each_field(
    data: Data, sources: Sequence[Body], at: Body, way: Callable[[Body], tuple[Direction, str]]
) -> list[Step]:
    """Distance and field of every source alone. way: the direction of its field, and the same inside a sentence."""
    test = "q" if data.has("q") else ""
    return [
        step
        for i, source in enumerate(sources)
        for step in (gap_step(source, at), field_step(source, *way(source), i == 0, test=test))
    ]


def size_check(sources: Sequence[Body]) -> Check:
    return Check(
        "Is the size possible?",
        words="The net field is never larger than the sum of all the sizes.",
        holds=lambda v: within_bounds(v, [f"E_{s.tag}" for s in sources], "E_net"),
    )


def net_plan(
    data: Data,
    sources: Sequence[Body],
    at: Body,
    found: Part,
    force_way: Towards,
    arrows: Callable[[Values], Figure],
    scene: Callable[[Values], Figure],
    checks: tuple[Check, ...],
    zero: bool,
) -> Plan:
    """The parts around ``found``, the net field: definition, arrows, force on a charge at P, pattern. zero:
    the fields cancel."""
    plan = Plan(
        story=story(data, sources),
        parts=(
            DEFINE,
            Part(
                "draw",
                "draw",
                "Draw the field of each charge at P as an arrow.",
                points=arrow_points(sources, at, data.settings.style),
                figure=arrows,
            ),
            found,
            *force_at(data, found.answers, force_way),
            pattern_part(sources),
        ),
        values={**row_values(data), **data.values},
        scene=scene,
        checks=checks,
        notes=("The fields cancel: P is a null point, so the net field has no direction.",) if zero else (),
    )
    return in_air(plan, data, *(f"E_{s.tag}" for s in sources), found.answers)
