"""Any givens, any unknown: the steps that lead from what is known to what is asked.

A set-up lists every way to make one quantity from others, each as a Step. ``lead``
strings together the ways that are needed and no more; ``spread`` makes all that follows,
to find impossible data; ``fits`` compares givens that are more than enough.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import replace

from calc.language.expressions import ExpressionError, expression
from calc.model.questions import Data, Part, Plan, Refusal, Step
from calc.working.working import made, measure, run

FIT = 0.01  # givens that say the same thing twice may differ by their rounding

CLASH = (
    "These numbers do not fit together: one step has no real value. "
    "Check their sizes and prefixes, or leave boxes empty that are not needed."
)
FAR_FEWER = 3  # figures


class NoWay(ValueError):
    """What is asked does not follow from what is given."""


def lead(known: Collection[str], ways: Sequence[Step], target: str) -> tuple[Step, ...]:
    """The fewest layers of steps from ``known`` (constants among it) to ``target``, in order.

    A root that has to be searched is the last resort. Mistakes that need other values drop out.

    Raises NoWay.
    """
    direct = [way for way in ways if way.root is None]
    if len(direct) < len(ways) and follows(known, direct, target):
        ways = direct
    have, made, left = set(known), list[Step](), ways
    while target not in have:
        layer, later = dict[str, Step](), list[Step]()
        for way in left:
            if way.makes in have:
                continue
            if way.needs <= have:
                layer.setdefault(way.makes, way)
            else:
                later.append(way)
        if not layer:
            raise NoWay(target)
        made += layer.values()
        have |= layer.keys()
        left = later
    wanted, used = {target}, list[Step]()
    for step in reversed(made):
        if step.makes in wanted:
            wanted |= step.needs
            used.insert(0, step)
    return possible_mistakes(known, used)


def possible_mistakes(known: Collection[str], steps: Sequence[Step]) -> tuple[Step, ...]:
    """The steps, each with those of its mistakes whose values are known by then."""
    have, kept = set(known), list[Step]()
    for step in steps:
        have.add(step.makes)
        mistakes = tuple(m for m in step.mistakes if set(expression(m.instead).names) <= have)
        kept.append(step if mistakes == step.mistakes else replace(step, mistakes=mistakes))
    return tuple(kept)


def worth(known: Mapping[str, float], steps: Sequence[Step], constants: Mapping[str, float]) -> dict[str, float]:
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
    there = {**constants, **known}
    while True:
        for way in ways:
            if way.makes in values or way.make in dead or not way.needs <= there.keys():
                continue
            try:
                value = made(way, there)
            except ExpressionError:
                dead.add(way.make)
                judge(way.makes, None)
                continue
            judge(way.makes, value)
            values[way.makes] = there[way.makes] = value
            break
        else:
            return values


def core(data: Data, ways: Sequence[Step], *wants: str) -> Data:
    """The data without those that the others give as well, as far as all of ``wants`` still follow.

    So an answer is the same whether or not a value known from elsewhere, usually rounded, is typed too.
    Left out first: what is typed with far fewer figures than any result, then what is declared a result,
    the least precise first. Nothing is left out that only a search for a root would give again.
    """
    ways = [way for way in ways if way.root is None]
    known, figures = set(data.values), data.figures
    constants = set(data.settings.constants())
    results = sorted(known & set(data.results), key=lambda n: (figures.get(n, 0), data.results.index(n)))
    best = min((figures.get(name, 0) for name in results), default=0)
    rounded = sorted(n for n in known if n not in results and figures.get(n, 0) + FAR_FEWER <= best)
    for name in (*rounded, *results):
        rest = known - {name}
        if all(follows(rest | constants, ways, one) for one in (*wants, name)):
            known = rest
    return replace(data, values={n: v for n, v in data.values.items() if n in known})


def follows(known: Collection[str], ways: Sequence[Step], target: str) -> bool:
    """Whether some steps lead from ``known`` to ``target``."""
    have, left = set(known), ways
    while target not in have:
        later = list[Step]()
        for way in left:
            if way.makes in have:
                continue
            if way.needs <= have:
                have.add(way.makes)
            else:
                later.append(way)
        if len(later) == len(left):
            return False
        left = later
    return True


def told(known: Collection[str], steps: Sequence[Step]) -> set[str]:
    """The names an answer rests on: the data its steps use, and what they make. Checks use no others."""
    return inputs(known, steps) | {step.makes for step in steps}


def inputs(known: Collection[str], steps: Sequence[Step]) -> set[str]:
    """The names among ``known`` that the steps start from."""
    needed = set[str]().union(*(step.needs for step in steps))
    return (needed & set(known)) - {step.makes for step in steps}


def fits(data: Data, ways: Sequence[Step], used: Sequence[Step], units: Mapping[str, str]) -> tuple[str, ...]:
    """Notes on givens that are not needed; a Refusal for one that contradicts the others.

    ``units``: the unit each quantity is printed in.
    """
    touched = inputs(data.values, used)
    spare = [name for name in data.values if name in units and name not in touched]
    spare.sort(key=lambda name: name not in data.measured)  # a force is blamed before a charge
    notes = []
    for name in spare:
        others = {n: v for n, v in data.values.items() if n != name}
        first = {n: v for n, v in others.items() if n in touched}
        found = next((f for f in (_found(data, known, ways, name) for known in (first, others)) if f), None)
        if found is None:
            continue
        value, relation, base = found
        if not (_rounds(data, name, value, base) or _another_rounds(data, name, relation, ways)):
            raise Refusal(
                name,
                "This does not fit the other numbers: they give"
                f" {measure(abs(value), units[name], data.settings.style).text}. Correct it, or leave this box empty.",
            )
        notes.append(f"More is given than is needed: {data.said[name]} fits, but the answer does not use it.")
    return tuple(notes)


def _found(
    data: Data, known: Mapping[str, float], ways: Sequence[Step], name: str
) -> tuple[float, set[str], float] | None:
    """The value ``known`` gives for ``name``, the data it takes with that name, and the value it is judged by its
    difference from (0 for none); None if there is none."""
    constants = data.settings.constants()
    try:
        steps = lead({*constants, *known}, ways, name)
        values = worth(known, steps, constants)
    except (NoWay, ExpressionError):
        return None
    base = next(step.judged_by for step in steps if step.makes == name)
    return values[name], inputs(known, steps), values.get(base, 0.0)


def _rounds(data: Data, name: str, found: float, base: float = 0.0) -> bool:
    """Whether the datum typed is the value found, to the last figure typed or within 1 % (of its difference from
    ``base``)."""
    slack = max(FIT * abs(found - base), data.halves.get(name, 0.0) * (1 + 1e-9))
    return abs(abs(found) - abs(data.values[name])) <= slack


def _another_rounds(data: Data, spare: str, relation: set[str], ways: Sequence[Step]) -> bool:
    """Whether a datum that ``spare`` is compared with is the rounded one: less precise, and it fits all the others.

    A single figure, as in 2 g, is taken as exact: rounded to so little it would fit nearly anything.
    """
    for name in relation:
        if not 2 <= data.figures.get(name, 0) < data.figures.get(spare, 0):
            continue
        known = {n: v for n, v in data.values.items() if n != name}
        found = _found(data, known, ways, name)
        if found and _rounds(data, name, found[0], found[2]):
            return True
    return False
