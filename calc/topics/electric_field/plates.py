"""The uniform field between charged plates.

E = V/d, the same everywhere between, towards the negative plate, edges ignored: data-sheet equation.
Ranges and marks: common practice, no source.
"""

from __future__ import annotations

from calc.model.answers import Direction, Mark, Point
from calc.model.directions import UP_DOWN
from calc.model.questions import (
    FSA,
    Check,
    Data,
    Draw,
    Mistake,
    Part,
    Plan,
    Question,
    Step,
)
from calc.topics.electric_field.shared import (
    UNIFORM,
    field,
    gap,
    in_air,
    plates,
    upper_plate,
    upper_sign,
    voltage,
)

WHY_UNIFORM = "Between parallel plates the field is uniform. It points towards the negative plate."
PLAIN_UNIFORM = "The same voltage over a smaller gap makes a stronger field: share the volts out over the metres."
PLATES_FOR = {
    "E": ("E = V/d", "V·m⁻¹", "Calculate the electric field between the plates."),
    "V": ("V = E*d", "V", "Calculate the potential difference between the plates."),
    "d": ("d = V/E", "m", "Calculate the distance between the plates."),
}
PLATES_WRONG: dict[str, tuple[Mistake, ...]] = {
    "E": (Mistake("multiplied", "E", "V*d", "Per metre: divide."),),
    "V": (Mistake("divided", "V", "E/d", "E is volts per metre: multiply by the metres."),),
    "d": (Mistake("upside-down", "d", "E/V", "E is volts per metre: d is the volts divided by E."),),
}  # fmt: skip


def field_way(data: Data) -> Direction:
    """Downwards from a positive upper plate, upwards to a negative one."""
    return UP_DOWN.of("down" if data.choices["upper"] == "positive" else "up")


def plates_step(data: Data, asked: str = "E", marks: tuple[Mark, ...] = FSA) -> Step:
    make, unit, _ = PLATES_FOR[asked]
    return Step(
        law="E = V/d", make=make, unit=unit, marks=marks, direction=field_way(data) if asked == "E" else None,
        what="Use the field between parallel plates", why=WHY_UNIFORM, plain=PLAIN_UNIFORM, mistakes=PLATES_WRONG[asked],
    )  # fmt: skip


def plates_drawing(data: Data) -> Part:
    negative = "lower" if data.choices["upper"] == "positive" else "upper"
    return Part(
        "draw", "draw", "Draw the field between the plates.",
        points=(
            Point("Field lines straight, parallel and evenly spaced, from plate to plate.", 1, ("parallel", "evenly spaced")),
            Point(f"Arrows towards the negative plate, here the {negative} one.", 1, ("towards the negative plate",)),
        ),
        figure=lambda _: plates(upper_sign(data), (data.said.get("V", "V"), data.said.get("d", "d"))),
    )  # fmt: skip


def plan_plates(data: Data) -> Plan:
    asked = data.asked
    way = field_way(data).words
    facts = [
        f"Two large parallel metal plates lie one above the other; the upper one is {data.choices['upper']}."
    ]
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
            Part("find", "calculate", PLATES_FOR[asked][2], (plates_step(data, asked),)),
            Part("explain", "explain", "Describe the field between the plates.", points=(
                Point("It has the same size and direction everywhere between the plates (edges ignored).", 1, ("same size and direction",)),
                Point(f"It points towards the negative plate, {way}: the way a small positive test charge would be pushed.", 1, ("towards the negative plate",)),
            )),
            plates_drawing(data),
        ),
        values=dict(data.values),
        scene=lambda _: plates(upper_sign(data)),
        checks=(Check("Put the answer back", back, "1 V·m⁻¹ is the same as 1 N·C⁻¹."),),
    )  # fmt: skip
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
)  # fmt: skip
