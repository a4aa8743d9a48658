"""The uniform field between charged plates.

E = V/d, the same everywhere between, towards the negative plate, edges ignored: data-sheet equation.
Ranges and marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.model.questions import Check, Data, Draw, Part
from calc.model.relations import Relation
from calc.topics.electric_field.laws import PLATES as UNIFORM_FIELD
from calc.topics.electric_field.shared import (
    UNIFORM,
    air,
    field,
    field_along,
    field_way,
    gap,
    memo,
    plates,
    upper_plate,
    upper_sign,
    voltage,
    words_of,
)
from calc.working.solving import Situation, question

PLATES_ASK = {
    "E": "Calculate the electric field between the plates.",
    "V": "Calculate the potential difference between the plates.",
    "d": "Calculate the distance between the plates.",
}


def between_plates(data: Data) -> Relation:
    """E = V/d, the field from the positive plate to the negative one."""
    return replace(UNIFORM_FIELD, directions={"E": field_way(data)})


def plates_drawing(data: Data) -> Part:
    negative = "lower" if data.choices["upper"] == "positive" else "upper"
    return memo(
        "draw",
        "draw",
        "Draw the field between the plates.",
        ("Field lines straight, parallel and evenly spaced, from plate to plate.", "parallel", "evenly spaced"),
        (f"Arrows towards the negative plate, here the {negative} one.", "towards the negative plate"),
        figure=lambda _: plates(upper_sign(data), (data.said.get("V", "V"), data.said.get("d", "d"))),
    )


def level_plates(data: Data) -> Situation:
    explain = memo(
        "explain",
        "explain",
        "Describe the field between the plates.",
        (
            "It has the same size and direction everywhere between the plates (edges ignored).",
            "same size and direction",
        ),
        (
            (
                f"It points towards the negative plate, {words_of(field_along(data))}: the way a small positive test"
                " charge would be pushed."
            ),
            "towards the negative plate",
        ),
    )
    back = Check(
        "Put the answer back", "E*d = V" if data.asked == "E" else "V/d = E", "1 V·m⁻¹ is the same as 1 N·C⁻¹."
    )
    return Situation(
        relations=(between_plates(data),),
        openings=(
            data.pick(
                f"Two large parallel metal plates lie one above the other; the upper one is {data.choices['upper']}.",
                later=(
                    (
                        "A power supply is connected to two level metal plates, one straight above the other; the upper"
                        f" plate is {data.choices['upper']}."
                    ),
                    (
                        "For an experiment a wide metal plate is fixed parallel to and above a second one, with air"
                        f" between. The upper plate is {data.choices['upper']}."
                    ),
                ),
            ),
        ),
        tell={
            "d": "They are {} apart.",
            "V": "The potential difference between them is {}.",
            "E": "The field between them is {}.",
        },
        ask=PLATES_ASK,
        later=lambda data, _: (explain, plates_drawing(data)),
        scene=lambda _: plates(upper_sign(data)),
        proofs=lambda _: (back,),
        warn=lambda v: air(v, "E"),
    )


PLATES = question(
    "plates",
    "The uniform field between plates",
    level_plates,
    fields=(field("E", "Electric field between the plates", "V·m⁻¹"), voltage(), gap(), upper_plate()),
    unknowns=("E", "V", "d"),
    any_givens=False,
    laws=(UNIFORM.name,),
    example={"E": "", "V": "1,2 kV", "d": "15 mm", "upper": "positive"},
    draws={
        "V": Draw((120, 240, 300, 600, 900), "V", harder=("1,5 kV", "2,4 kV", "3,6 kV")),
        "d": Draw((4, 6, 8, 12, 20, 25), "mm", harder=(1.5, 7.5, 32)),
        "E": Draw(("2 x 10^4 V/m", "5 x 10^4 V/m", "7,5 x 10^4 V/m"), "", harder=("1,2 x 10^5 V/m", "3,2 x 10^5 V/m")),
        "upper": Draw(("positive", "negative")),
    },
)
