"""What the questions about fields at one point share: the table of sources, one field at a time, the arrows.

E = kQ/r² for each source alone; the point P stands for a small positive test charge.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import hypot
from typing import NamedTuple

from calc.figures import Figure
from calc.language.printing import Style
from calc.language.symbols import symbol
from calc.model.answers import Mark, Point
from calc.model.questions import FSA, NO_MARKS, Check, Data, Mistake, Part, Plan, Refusal, Rows, Step, Values
from calc.model.relations import Towards
from calc.topics.electric_field.charge import force_at_p, placed_force
from calc.topics.electric_field.laws import SOURCE_FIELD, between, step, written
from calc.topics.electric_field.shared import (
    AT_SOURCE,
    DEFINE,
    SHARED,
    in_air,
    pattern,
    pattern_part,
    position,
    refuse_idle,
)
from calc.topics.several_charges.plane import sloped
from calc.topics.several_charges.shared import NOISE, Body, heading_of, row_values, way_words, within_bounds
from calc.topics.shared.electrostatics import charge

PLAIN_NET = (
    "Each charge pushes a coulomb at P its own way. Pushes the same way help each other; opposite ones "
    "take from each other."
)
OPPOSITE = (
    "You added fields that point opposite ways. Draw an arrow at P for each field, and subtract those that point the"
    " other way."
)
SAME_WAY = "You subtracted fields that point the same way. Draw an arrow at P for each field, then add their sizes."
SIZES_ADDED = "You added the sizes of the fields. They point different ways at P: add components, then use Pythagoras."
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
    if sloped(source, at):
        line = f"{name} = sqrt(({across})^2 + ({along})^2)"
        why = "Pythagoras with the steps across and up, from the source to P."
        say = (
            f"You added the steps along x and along y. The distance {{{name}}} is the straight line to P: use"
            " Pythagoras."
        )
        wrong: tuple[Mistake, ...] = (Mistake("places-added", name, f"abs({across}) + abs({along})", say),)
    else:
        flat = abs(at.x - source.x) > abs(at.y - source.y)
        line, wrong = f"{name} = abs({across if flat else along})", ()
        why = "The distance from the source to P, not between the sources."
    return written(
        line,
        "m",
        marks=NO_MARKS,
        what=f"Distance from {source.words} to P",
        why=why,
        plain="How far P is from this charge, in a straight line.",
        mistakes=wrong,
    )


def field_step(source: Body, where: Towards, way: str, first: bool, placed: bool = False) -> Step:
    """One source's field at P. way: the direction inside a sentence; placed: a charge q is put at P."""
    name, gap = f"E_{source.tag}", f"r_{source.tag}"
    act, side_ = ("repels", "away from") if source.charge > 0 else ("attracts", "towards")
    say = (
        f"You put in {{q}}, the charge placed at P. The field {{{name}}} belongs to its source, so use"
        f" {{{source.name}}}."
    )
    law = between(SOURCE_FIELD, E=name, Q=source.name, r=gap)
    wrong = tuple(replace(m, why="") for m in law.mistakes if m.at == name)  # in a sum the answer does not show how
    of_placed = Mistake("test-charge", name, f"k*abs(q)/{gap}^2", say)
    return step(
        replace(law, mistakes=wrong),
        name,
        (of_placed,) if placed else (),
        direction=where,
        marks=FSA if first else (Mark("substitution"),),
        what=f"The field of {source.words} alone, at P",
        why=(
            f"{source.words[0].upper()}{source.words[1:]} {act} a small positive test charge: its field points {side_}"
            f" it, {way}. Put in the size only."
        ),
    )


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


def story(data: Data, sources: Sequence[Body]) -> str:
    rows = data.rows_said["charges"]
    places = [
        f"{row['Q']} at {'(' + row['x'] + '; ' + row['y'] + ')' if 'y' in row else 'x = ' + row['x']}" for row in rows
    ]
    where = "on a straight line" if "y" not in rows[0] else "in a plane"
    many = f"{COUNTED[len(sources) - 1]} point charge{'s are' if len(sources) > 1 else ' is'}"
    point = f"({data.said['x_P']}; {data.said['y_P']})" if "y_P" in data.said else f"x = {data.said['x_P']}"
    told, one = ", ".join(places), len(sources) == 1
    beads = "A small charged bead is" if one else f"{COUNTED[len(sources) - 1]} small charged beads are"
    board = "along a straight wooden rail with a scale" if "y" not in rows[0] else "to a large board with x- and y-axes"
    field = "a point charge" if one else f"{COUNTED[len(sources) - 1].lower()} point charges"
    return data.pick(
        f"{many} fixed {where}: {told}. P is the point {point}.",
        later=(
            f"{beads} glued {board}: {told}. P is the point {point} on it.",
            (
                f"The field of {field} is studied at the point P, {point}. {'It is' if one else 'They are'} fixed"
                f" {where}: {told}."
            ),
        ),
    )


# --- the whole of a net field, on a line as in a plane -----------------------------------------------------------


class Place(NamedTuple):
    """What a net field at P takes from the line or the plane it lies in.

    alone: the direction of one source's field, and the same inside a sentence. net: the steps from the fields to
    their sum. force: the direction of the force on a charge q at P. figure: the fields at P, drawn. scene: the data.
    ask: for the net field. check: the net field worked again from the signs of the charges. zero: the fields cancel.
    """

    alone: Callable[[Body], tuple[Towards, str]]
    net: tuple[Step, ...]
    force: Towards
    figure: Callable[[Values], Figure]
    scene: Callable[[Values], Figure]
    ask: str
    check: Check
    zero: bool
    net_figure: Callable[[Values], Figure] | None = None


def net_plan(data: Data, sources: Sequence[Body], at: Body, place: Place) -> Plan:
    """Definition, arrows, the net field, the force on a charge at P and the pattern."""
    fields = [
        step
        for i, source in enumerate(sources)
        for step in (gap_step(source, at), field_step(source, *place.alone(source), i == 0, data.has("q")))
    ]
    answer = "E_net" if place.net else f"E_{sources[-1].tag}"
    charges = [(s.label, s.charge, s.x, s.y) for s in sources]
    bounds = Check(
        "Is the size possible?",
        words="The net field is never larger than the sum of all the sizes.",
        holds=lambda v: within_bounds(v, [f"E_{s.tag}" for s in sources], answer),
    )
    plan = Plan(
        story=story(data, sources),
        parts=(
            DEFINE,
            Part(
                "draw",
                "draw",
                "Draw the field of each charge at P as an arrow.",
                points=arrow_points(sources, at, data.settings.style),
                figure=place.figure,
            ),
            Part("net", "calculate", place.ask, (*fields, *place.net), answer=answer, figure=place.net_figure),
            *((force_at_p(data, placed_force(data, place.force, answer)),) if data.has("q") else ()),
            pattern_part(
                f"the charge{'s' if len(sources) > 1 else ''}", lambda _: pattern(charges), *(s.charge for s in sources)
            ),
        ),
        values={**row_values(data), **data.values},
        scene=place.scene,
        checks=() if not place.net else (bounds,) if place.zero else (bounds, place.check),
        notes=("The fields cancel: P is a null point, so the net field has no direction.",) if place.zero else (),
    )
    return in_air(plan, data, *(f"E_{s.tag}" for s in sources), answer)
