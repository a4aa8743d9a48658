"""What the diagram of a drawn question may show: nothing of what is asked."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping

from calc.figures import Arrow, Curve, Figure, Segment, Sphere
from calc.figures.pieces import Text, Told
from calc.marking.learner import by_sign
from calc.model.questions import Plan
from calc.working.reading import Read
from calc.working.working import direction, run

NUMBER = re.compile(r"\d+(?:[.,]\d+)?")


def fair_scene(plan: Plan, found: Read) -> Figure | None:
    """The scene of the data, or None where it shows what is asked: a force, a field, the sign of a charge, a value."""
    if plan.scene is None:
        return None
    values = run(plan, found.data.settings.constants())
    scene = plan.scene(values).without(found_values(plan))
    if scene is None:
        return None
    signs_asked = any(part.asks_sign for part in plan.parts) or any(
        by_sign(direction(step, values)) for step in plan.steps
    )
    for item in scene.items:
        if isinstance(item, Arrow) and not isinstance(item, Told) and item.kind not in ("axis", "velocity"):
            return None
        if isinstance(item, Segment | Curve) and item.kind == "fieldline":
            return None
        if isinstance(item, Sphere) and item.sign and signs_asked:
            return None
    labels = [
        getattr(item, "label", "") or getattr(item, "text", "")
        for item in scene.items
        if not (isinstance(item, Text) and item.small)  # the numbers along an axis are those of every graph
    ]
    told = {*NUMBER.findall(plan.story)}
    described = [number for number in NUMBER.findall(scene.description) if number not in told]
    said = " ".join((scene.title, *described, *scene.notes, *map(str, labels)))
    answers = answer_values(plan, values)
    if any(unit == "°" for _, unit in answers) or any(
        math.isclose(number, abs(value), rel_tol=0.01)
        for number in map(_number, NUMBER.findall(said))
        for value, _ in answers
    ):
        return None
    return scene


def found_values(plan: Plan) -> set[str]:
    """Names of every value a learner has to find on the way to the answers."""
    return {step.makes for step in plan.steps} | {name for part in plan.parts for name in part.asked}


def answer_values(plan: Plan, values: Mapping[str, float]) -> list[tuple[float, str]]:
    """Value (SI) and unit of every calculated answer."""
    units = {step.makes: step.unit for step in plan.steps}
    return [(values[name], units[name]) for part in plan.parts for name in part.asked]


def _number(digits: str) -> float:
    return float(digits.replace(",", "."))
