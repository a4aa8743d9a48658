"""A law declared once: from it follow the steps for every one of its quantities.

``Relation("F = k*Q1*Q2/r^2", …).step("r")`` is the step with the law as on the data sheet, the line
``r^2 = k*Q1*Q2/F`` between, and ``r = sqrt(k*Q1*Q2/F)``. Algebra slips follow from the form (see
:mod:`calc.marking.algebra_slips`); a relation declares only the mistakes of its own physics.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from calc.language.expressions import equation
from calc.language.rearranging import rearranged
from calc.language.simultaneous import together
from calc.language.trees import NotRearranged
from calc.model.answers import Direction, Mark
from calc.model.questions import FSA, NAME, NO_MARKS, Mistake, Step, Values, in_names

Towards = Callable[[Values], Direction | None]

MOST_KEPT = 64  # relations made of one, with other names or units
OTHER_ROOT = "It does not fit the story and is dropped."


@dataclass(frozen=True)
class Said:
    """What the step for one name of a law says, where that is its own: None takes the law's.

    count: the value counts things.
    """

    what: str | None = None
    why: str | None = None
    plain: str | None = None
    marks: tuple[Mark, ...] | None = None
    count: bool = False

    def of(self, step: Step) -> Step:
        """The step in these words."""
        return replace(
            step,
            what=step.what if self.what is None else self.what,
            why=step.why if self.why is None else self.why,
            plain=step.plain if self.plain is None else self.plain,
            marks=step.marks if self.marks is None else self.marks,
            count=step.count or self.count,
        )


@dataclass(frozen=True)
class Relation:
    """One law, in the form of the data sheet.

    law: an equation. units: of each name that can be asked ('°' for an angle, '' for a pure number); one
    that declares none takes those of the question's boxes.
    what: what is done with it, as a heading. why: the reason, for a learner; plain: without assuming physics.
    sizes: names of which only the size goes in. directions: by name, from all values, or that of a value above zero.
    mistakes: the catalogue's, each ``at`` a name of the law; those at the unknown are used.
    dropped: by name, why the second root of a square is not an answer.
    said: by name, the words of its step where they are its own.
    quotes: the names of the laws in words that its steps apply.
    judged_by: by name, the value whose difference from it is what an answer is judged by (see Step).
    counted: by name, what a pure number counts (see Step).
    by_hand: by name, a step where no rule of algebra reads as a teacher writes, or a numeric root.
    """

    law: str
    what: str
    why: str
    units: Mapping[str, str] = field(default_factory=dict)
    plain: str = ""
    sizes: tuple[str, ...] = ()
    marks: tuple[Mark, ...] = FSA
    mistakes: tuple[Mistake, ...] = ()
    directions: Mapping[str, Towards | Direction] = field(default_factory=dict)
    dropped: Mapping[str, str] = field(default_factory=dict)
    said: Mapping[str, Said] = field(default_factory=dict)
    by_hand: Mapping[str, Step] = field(default_factory=dict)
    quotes: tuple[str, ...] = ()
    judged_by: Mapping[str, str] = field(default_factory=dict)
    counted: Mapping[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Raise ValueError for a mistake at what the law does not have: it would never be looked for."""
        for one in self.mistakes:
            if one.at not in equation(self.law).names:
                raise ValueError(f"The mistake {one.key!r} is at {one.at!r}, which {self.law} does not have.")

    @property
    def names(self) -> tuple[str, ...]:
        """The quantities a step can be made for, in the order of the law."""
        return tuple(name for name in equation(self.law).names if name in self.units)

    def step(self, unknown: str) -> Step:
        """The step that finds ``unknown`` from the rest. Raises NotRearranged where none can."""
        if unknown in self.by_hand:
            return self.by_hand[unknown]
        found = rearranged(self.law, unknown)
        step = Step(
            law=self.law,
            make=found.make,
            lines=found.lines,
            what=self.what,
            why=self.why,
            plain=self.plain,
            unit=self.units[unknown],
            marks=self.marks,
            direction=self.directions.get(unknown),
            mistakes=tuple(m for m in self.mistakes if m.at == unknown),
            sizes=tuple(name for name in self.sizes if name != unknown),
            other=found.other if found.why or unknown in self.dropped else "",
            dropped=self.dropped.get(unknown, OTHER_ROOT),
            quotes=self.quotes,
            judged_by=self.judged_by.get(unknown, ""),
            counted=self.counted.get(unknown, ""),
        )
        return self.said[unknown].of(step) if unknown in self.said else step

    def steps(self) -> tuple[Step, ...]:
        """A step for each quantity that the law can be solved for."""
        return self._steps

    @cached_property
    def _steps(self) -> tuple[Step, ...]:
        made = []
        for name in self.names:
            try:
                made.append(self.step(name))
            except NotRearranged:
                continue
        return tuple(made)

    def in_units(self, units: Mapping[str, str]) -> Relation:
        """The same law with these units for its names, if it declares none."""
        if self.units:
            return self
        own = {name: units[name] for name in equation(self.law).names if name in units}
        return self._kept(("units", *own.items()), lambda: replace(self, units=own))

    @cached_property
    def _made(self) -> dict[tuple[object, ...], Relation]:
        return {}

    def _kept(self, key: tuple[object, ...], make: Callable[[], Relation]) -> Relation:
        """What was made of this law before, with the steps it has by now; topics ask for it at every answer."""
        made = self._made
        if key not in made:
            if len(made) >= MOST_KEPT:
                made.clear()
            made[key] = make()
        return made[key]

    def renamed(self, **names: str) -> Relation:
        """The same law between other quantities: ``COULOMB.renamed(Q1="QA", F="F_AB")``."""
        return self._kept(("names", *names.items()), lambda: self._renamed(names))

    def _renamed(self, names: Mapping[str, str]) -> Relation:
        def put(text: str) -> str:
            return NAME.sub(lambda found: names.get(found[0], found[0]), text)

        return replace(
            self,
            law=put(self.law),
            units={put(name): unit for name, unit in self.units.items()},
            sizes=tuple(map(put, self.sizes)),
            mistakes=tuple(
                replace(
                    m,
                    at=put(m.at),
                    instead=put(m.instead),
                    say=in_names(m.say, names),
                    why=in_names(m.why, names),
                )
                for m in self.mistakes
            ),
            directions={put(name): _under_names(way, names) for name, way in self.directions.items()},
            dropped={put(name): reason for name, reason in self.dropped.items()},
            said={put(name): words for name, words in self.said.items()},
            judged_by={put(name): put(other) for name, other in self.judged_by.items()},
            counted={put(name): what for name, what in self.counted.items()},
        )


def _under_names(way: Towards | Direction, names: Mapping[str, str]) -> Towards | Direction:
    """A direction that looks its values up under their first names."""
    if isinstance(way, Direction):
        return way
    return lambda values: way({**values, **{old: values[new] for old, new in names.items() if new in values}})


@dataclass(frozen=True)
class Together:
    """Two relations that hold at once, for two unknowns of which one is made to drop out.

    find, drop: names in both. what: the heading. The step shows both equations and the reason.
    back: the value found is put back, so that the one that dropped out is known as well.
    """

    first: Relation
    second: Relation
    find: str
    drop: str
    what: str
    plain: str = ""
    back: bool = False

    def in_units(self, units: Mapping[str, str]) -> Together:
        """Both laws with these units, where they declare none."""
        return replace(self, first=self.first.in_units(units), second=self.second.in_units(units))

    def steps(self) -> tuple[Step, ...]:
        """The step for ``find``; the one for ``drop`` is the relations' own."""
        both = together(self.first.law, self.second.law, self.find, self.drop)
        step = Step(
            law=self.first.law,
            make=both.found.make,
            lines=tuple(dict.fromkeys((self.second.law, *both.lines, both.law, *both.found.lines))),  # none twice
            what=self.what,
            why=both.why,
            plain=self.plain,
            unit=self.first.units[self.find],
            marks=self.first.marks,
            direction=self.first.directions.get(self.find),
            mistakes=tuple(m for m in (*self.first.mistakes, *self.second.mistakes) if m.at == self.find),
            other=both.found.other if both.found.why else "",
            dropped=self.first.dropped.get(self.find, OTHER_ROOT),
            quotes=tuple(dict.fromkeys((*self.first.quotes, *self.second.quotes))),
            judged_by=self.first.judged_by.get(self.find, ""),
        )
        return (step,)

    def put_back(self) -> Step:
        """The step for ``drop`` once ``find`` is known, without marks."""
        law = self.second if self.drop in self.second.units else self.first
        return replace(law.step(self.drop), marks=NO_MARKS, mistakes=())
