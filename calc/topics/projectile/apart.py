"""The same asked of the other of two flights that the data allow: its values have a 1 behind their letter."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from calc.model.directions import UP_DOWN
from calc.model.questions import NAME, Data, Step, in_names
from calc.model.relations import Relation
from calc.topics.projectile.equations import Roots, equations, falling
from calc.working.chain import lead


def chains_apart(
    data: Data, roots: Roots, up: bool, names: tuple[str, ...], laws: tuple[Relation, ...] = ()
) -> Iterator[tuple[str, tuple[Step, ...]]]:
    """For each of ``names`` that is asked the steps to its value in the other flight. laws: what holds besides."""
    assert roots.other
    other = {name: f"{name}1" for name in names}
    every = (*laws, *equations(up, Roots(roots.other, roots.kept)))
    ways = [under_names(step, other, up) for law in every for step in law.steps()]
    have = {"a", "g", *data.values, *(step.makes for law in laws for step in law.steps())}
    ways += falling(up).steps()
    for name in (one for one in names if one in data.asked_names):
        chain = lead(have, ways, other[name])
        have |= {step.makes for step in chain}
        yield name, chain


def under_names(step: Step, names: Mapping[str, str], up: bool) -> Step:
    """A step that finds and uses quantities under other names."""

    def put(line: str) -> str:
        return NAME.sub(lambda found: names.get(found[0], found[0]), line)

    made = names.get(step.makes, step.makes)
    mistakes = tuple(
        replace(one, at=put(one.at), instead=put(one.instead), say=in_names(one.say, names)) for one in step.mistakes
    )
    return replace(
        step,
        law=put(step.law),
        make=put(step.make),
        lines=tuple(map(put, step.lines)),
        other=put(step.other),
        mistakes=mistakes,
        direction=None if step.unit == "s" else lambda v: UP_DOWN.by_sign(v[made], "up" if up else "down"),
    )
