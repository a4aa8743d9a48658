"""The net field in a plane told by its components, each with its sign; and from them size and angle."""

from __future__ import annotations

from dataclasses import replace

from calc.model.directions import ALONG_X, ALONG_Y
from calc.model.questions import SA, Check, Choice, Data, Draw, Part, Plan, Question, Refusal
from calc.topics.electric_field.net import plan_plane, practise_plane, signed_sum
from calc.topics.electric_field.shared import ADDING, FIELD, TEST_CHARGE, by_value, position
from calc.topics.electric_field.sources import sources_of, table
from calc.topics.several_charges.shared import row_values
from calc.working.chain import lead
from calc.working.working import run

ALONG = {"x": ALONG_X, "y": ALONG_Y}


def plan_components(data: Data) -> Plan:
    """The plan of the plane, its one calculation cut into the components that are asked, each an answer of its own."""
    whole = plan_plane(data)
    net = whole.part("net")
    left = {step.makes: step for step in net.steps}
    for axis, other in ("xy", "yx"):
        if f"E_{axis}" not in left:
            raise Refusal(
                None,
                f"All the charges and P lie on one line along the {other}-axis, so there is no component along {axis}."
                " Use the net field on a line, or move P off that line.",
            )
    known, parts = {*data.known, *row_values(data)}, []
    for axis, signs in ALONG.items():
        name = f"E_{axis}"
        chain = lead(known, tuple(left.values()), name)
        last = replace(chain[-1], direction=by_value(signs, "positive", name), marks=SA)
        ask = f"Calculate the component of the net electric field at P along the {axis}-axis, with its sign."
        parts.append(Part(axis, "calculate", ask, (*chain[:-1], last)))
        known |= {step.makes for step in chain}
        left = {made: step for made, step in left.items() if made not in known}
    both = data.choices["answer"] == "both"
    if both:
        ask = "From the components, calculate the size of the net field at P, and its direction."
        parts.append(Part("net", "calculate", ask, tuple(left.values()), answer="E_net", figure=net.figure))
    values = run(whole, data.settings.constants())
    checks = tuple(
        Check(
            f"The component along {axis} once more, with the signs of the charges put in",
            f"E_{axis} = k*({signed_sum(sources_of(data), axis)})",
            tolerance=1e-6,
        )
        for axis in "xy"
        if values[f"E_{axis}"]
    )
    kept = tuple(part for part in whole.parts if part.key in ("define", "draw"))
    return replace(whole, parts=(*kept, *parts), checks=(*checks, *(whole.checks if both else ())))


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
