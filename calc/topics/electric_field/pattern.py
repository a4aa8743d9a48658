"""The picture of the field of any charges, and what its lines tell."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random
from typing import cast

from calc.figures.words import listing
from calc.model.answers import Point
from calc.model.questions import Data, Part, Plan, Question
from calc.topics.electric_field.shared import TEST_CHARGE, largest, pattern, pattern_points
from calc.topics.electric_field.sources import sources_of, table
from calc.topics.several_charges.shared import row_values
from calc.topics.shared.quantities import among


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
        story=data.pick(
            (
                f"Charged spheres are fixed in place: {places}."
                if several
                else f"A charged sphere is fixed in place: {places}."
            ),
            later=(
                (
                    "Grass seeds on oil show the field round"
                    f" {'charged metal discs' if several else 'a charged metal disc'}. Its plan: {places}."
                ),
                (
                    f"{'Small charged balls stand' if several else 'A small charged ball stands'} on a sheet of glass"
                    f" with x- and y-axes: {places}. Nothing else near is charged."
                ),
            ),
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
    apart = draw.choice(range(16, 25)) if among(random, (), (1,)) else 20
    places = [(0, 0), (apart, 0), (10, 15)][: 3 if level == 3 else 2]
    sizes = among(random, (2, 4, 6, 8), range(2, 9))
    rows = [{"Q": f"{draw.choice('+-')}{draw.choice(sizes)} nC", "x": f"{x} cm", "y": f"{y} cm"} for x, y in places]
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
