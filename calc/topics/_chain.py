"""Any givens, any unknown: the steps that lead from what is known to what is asked.

A set-up lists every way to make one quantity from others, each as a Step. ``lead``
strings together the ways that are needed and no more; ``spread`` makes all that follows,
to find impossible data; ``fits`` compares givens that are more than enough.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import replace

from calc.constants import SHEET
from calc.expressions import ExpressionError, equation, expression
from calc.questions import Data, Part, Plan, Refusal, Step
from calc.working import measure, run

FIT = 0.01  # givens that say the same thing twice may differ by their rounding

CLASH = (
    "These numbers do not fit together: one step has no real value. "
    "Check their sizes and prefixes, or leave boxes empty that are not needed."
)
MEASURED = ("F_E", "T", "N", "a", "n")


class NoWay(ValueError):
    """What is asked does not follow from what is given."""


def needs(step: Step) -> set[str]:
    """The names a step starts from, without the constants of the data sheet."""
    names = equation(step.root.equation).names if step.root else expression(step.how).names
    return set(names) - {step.makes} - set(SHEET)


def lead(known: Collection[str], ways: Sequence[Step], target: str) -> tuple[Step, ...]:
    """The fewest layers of steps from ``known`` to ``target``, in order; mistakes that need other values drop out.

    Raises NoWay.
    """
    have, made = set(known), list[Step]()
    while target not in have:
        layer: dict[str, Step] = {}
        for way in ways:
            if way.makes not in have and needs(way) <= have:
                layer.setdefault(way.makes, way)
        if not layer:
            raise NoWay(target)
        made += layer.values()
        have |= layer.keys()
    wanted, used = {target}, list[Step]()
    for step in reversed(made):
        if step.makes in wanted:
            wanted |= needs(step)
            used.insert(0, step)
    return possible_mistakes(known, used)


def possible_mistakes(known: Collection[str], steps: Sequence[Step]) -> tuple[Step, ...]:
    """The steps, each with those of its mistakes whose values are known by then."""
    have, kept = set(known) | set(SHEET), list[Step]()
    for step in steps:
        have.add(step.makes)
        mistakes = tuple(m for m in step.mistakes if set(expression(m.instead).names) <= have)
        kept.append(replace(step, mistakes=mistakes))
    return tuple(kept)


def worth(
    known: Mapping[str, float], steps: Sequence[Step], constants: Mapping[str, float]
) -> dict[str, float]:
    """The values after ``steps``; raises ExpressionError where one has no real value."""
    part = Part("all", "calculate", "", tuple(steps))
    return run(Plan("", (part,), dict(known)), constants)


def worked(data: Data, steps: Sequence[Step], further: Sequence[Step] = ()) -> dict[str, float]:
    """The values of a plan; refuses data that leave a step without a real value."""
    try:
        return worth(data.values, (*steps, *further), data.settings.constants())
    except ExpressionError:
        raise Refusal(None, CLASH) from None


def spread(
    known: Mapping[str, float],
    ways: Sequence[Step],
    constants: Mapping[str, float],
    judge: Callable[[str, float | None], None] = lambda name, value: None,
) -> dict[str, float]:
    """Everything that follows from ``known``, constants left out.

    ``judge(name, value)`` sees each new value, None for one that is not real, and
    may raise a Refusal; unreal values are left out.
    """
    values, dead = dict(known), set[str]()
    while True:
        for way in ways:
            if way.makes in values or way.make in dead or not needs(way) <= values.keys():
                continue
            try:
                value = worth(values, [way], constants)[way.makes]
            except ExpressionError:
                dead.add(way.make)
                judge(way.makes, None)
                continue
            judge(way.makes, value)
            values[way.makes] = value
            break
        else:
            return values


def fits(
    data: Data, ways: Sequence[Step], used: Sequence[Step], units: Mapping[str, str]
) -> tuple[str, ...]:
    """Notes on givens that are not needed; a Refusal for one that contradicts the others.

    ``units``: the unit each quantity is printed in.
    """
    touched = set[str]().union(*(needs(step) for step in used))
    spare = [name for name in data.values if name in units and name not in touched]
    spare.sort(key=lambda name: name not in MEASURED)  # a force is blamed before a charge
    constants, notes = data.settings.constants(), []
    for name in spare:
        known = {other: value for other, value in data.values.items() if other != name}
        try:
            steps = lead(known, ways, name)
            found = worth(known, steps, constants)[name]
        except (NoWay, ExpressionError):
            continue
        if abs(abs(found) - abs(data.values[name])) > FIT * abs(found):
            raise Refusal(
                name,
                f"This does not fit the other numbers: they give {measure(abs(found), units[name], data.settings.style).text}. "
                "Correct it, or leave this box empty.",
            )
        notes.append(
            f"More is given than is needed: {data.said[name]} fits, but the answer does not use it."
        )
    return tuple(notes)
