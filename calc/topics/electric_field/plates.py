"""The uniform field between charged plates.

E = V/d, the same everywhere between, towards the negative plate, edges ignored: data-sheet equation.
Ranges and marks: common practice, no source.
"""

from __future__ import annotations

from calc.model.answers import Direction, Mark, Point
from calc.model.directions import UP_DOWN
from calc.model.questions import FSA, Check, Data, Draw, Part, Plan, Question, Step
from calc.topics.electric_field.laws import PLATES as UNIFORM_FIELD
from calc.topics.electric_field.laws import step
from calc.topics.electric_field.shared import UNIFORM, field, gap, in_air, plates, upper_plate, upper_sign, voltage

PLATES_ASK = {
    "E": "Calculate the electric field between the plates.",
    "V": "Calculate the potential difference between the plates.",
    "d": "Calculate the distance between the plates.",
}


def field_way(data: Data) -> Direction:
    """Downwards from a positive upper plate, upwards to a negative one."""
    return UP_DOWN.of("down" if data.choices["upper"] == "positive" else "up")


def plates_step(data: Data, asked: str = "E", marks: tuple[Mark, ...] = FSA) -> Step:
    return step(UNIFORM_FIELD, asked, marks=marks, direction=field_way(data) if asked == "E" else None)


def plates_drawing(data: Data) -> Part:
    negative = "lower" if data.choices["upper"] == "positive" else "upper"
    return Part(
        "draw",
        "draw",
        "Draw the field between the plates.",
        points=(
            Point(
                "Field lines straight, parallel and evenly spaced, from plate to plate.",
                1,
                ("parallel", "evenly spaced"),
            ),
            Point(f"Arrows towards the negative plate, here the {negative} one.", 1, ("towards the negative plate",)),
        ),
        figure=lambda _: plates(upper_sign(data), (data.said.get("V", "V"), data.said.get("d", "d"))),
    )


def plan_plates(data: Data) -> Plan:
    asked = data.asked
    way = field_way(data).words
    facts = [f"Two large parallel metal plates lie one above the other; the upper one is {data.choices['upper']}."]
    if data.has("d"):
        facts.append(f"They are {data.said['d']} apart.")
    if data.has("V"):
        facts.append(f"The potential difference between them is {data.said['V']}.")
    if data.has("E"):
        facts.append(f"The field between them is {data.said['E']}.")
    back = "E*d = V" if asked == "E" else "V/d = E"
    plan = Plan(
        story=" ".join(facts),
        parts=(
            Part("find", "calculate", PLATES_ASK[asked], (plates_step(data, asked),)),
            Part(
                "explain",
                "explain",
                "Describe the field between the plates.",
                points=(
                    Point(
                        "It has the same size and direction everywhere between the plates (edges ignored).",
                        1,
                        ("same size and direction",),
                    ),
                    Point(
                        f"It points towards the negative plate, {way}: the way a small positive test charge would be"
                        " pushed.",
                        1,
                        ("towards the negative plate",),
                    ),
                ),
            ),
            plates_drawing(data),
        ),
        values=dict(data.values),
        scene=lambda _: plates(upper_sign(data)),
        checks=(Check("Put the answer back", back, "1 V·m⁻¹ is the same as 1 N·C⁻¹."),),
    )
    return in_air(plan, data, "E")


PLATES = Question(
    key="plates",
    title="The uniform field between plates",
    fields=(field("E", "Electric field between the plates", "V·m⁻¹"), voltage(), gap(), upper_plate()),
    unknowns=("E", "V", "d"),
    plan=plan_plates,
    laws=(UNIFORM.name,),
    example={"E": "", "V": "1,2 kV", "d": "15 mm", "upper": "positive"},
    draws={
        "V": Draw((120, 240, 300, 600, 900), "V", harder=("1,5 kV", "2,4 kV", "3,6 kV")),
        "d": Draw((4, 6, 8, 12, 20, 25), "mm", harder=(1.5, 7.5, 32)),
        "E": Draw(("2 x 10^4 V/m", "5 x 10^4 V/m", "7,5 x 10^4 V/m"), "", harder=("1,2 x 10^5 V/m", "3,2 x 10^5 V/m")),
        "upper": Draw(("positive", "negative")),
    },
)
