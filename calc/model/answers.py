"""The worked answer as data. Physics fills it; ``calc.renderings`` print it; nothing here is markup.

A worked answer is the data as given, the laws in words, then the parts of the
question in order. A part to calculate holds steps; a part to state, explain or
draw holds the points a memo gives marks for.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal

from calc.figures import Figure
from calc.language.maths import Maths

# What a part asks a reader to do, and what a mark is given for: nothing else is possible.
type PartKind = Literal["state", "calculate", "draw", "explain"]
type MarkKind = Literal["formula", "substitution", "answer", "point"]


@dataclass(frozen=True)
class Direction:
    """A direction in words, with the choices a learner may be offered.

    ``options`` are (key, words) pairs, the right one among them. ``angle`` is
    given for a direction in a plane: degrees anticlockwise from the +x axis.
    """

    key: str
    words: str
    options: tuple[tuple[str, str], ...] = ()
    angle: float | None = None


@dataclass(frozen=True)
class Mark:
    """One mark. kind: 'formula', 'substitution', 'answer' or 'point'."""

    kind: MarkKind
    count: int = 1


@dataclass(frozen=True)
class Given:
    """A quantity as the reader typed it and as it goes into the formula.

    ``conversion`` reads "15 cm = 0,15 m" when something was converted.
    """

    name: str
    words: str
    symbol: Maths
    typed: str
    shown: Maths
    conversion: Maths | None
    note: str = ""


@dataclass(frozen=True)
class StepShown:
    """One step: what is found, why it may be, formula, substitution, algebra lines, value.

    ``value`` is SI at full precision; ``result`` is the same value printed once.
    """

    makes: str
    what: str
    why: str
    formula: Maths
    substitution: Maths
    algebra: tuple[Maths, ...]
    result: Maths
    value: float
    unit: str
    spoken: str
    direction: Direction | None
    marks: tuple[Mark, ...]
    method: str = ""
    plain: str = ""


@dataclass(frozen=True)
class Point:
    """A sentence of a memo and the marks it earns; ``key`` phrases must be there."""

    words: str
    marks: int = 1
    keys: tuple[str, ...] = ()


@dataclass(frozen=True)
class AnswerShown:
    """One value a part asks for: printed once, with unit and direction.

    ``shown`` is the value alone, or "Q₁ = 6,00 × 10⁻⁹ C" where a part asks for several values.
    """

    name: str
    value: float
    unit: str
    shown: Maths
    spoken: str
    direction: Direction | None


@dataclass(frozen=True)
class PartShown:
    """One part of a question. kind: 'state', 'calculate', 'draw' or 'explain'.

    answer: the value that is marked as the answer; also: the other values the part asks for, found on the way.
    draws: makes the part's figure, when it is looked at. former: keys the part had before.
    """

    key: str
    number: str
    kind: PartKind
    ask: str
    marks: int
    steps: tuple[StepShown, ...] = ()
    points: tuple[Point, ...] = ()
    draws: Callable[[], Figure] | None = field(default=None, compare=False)
    answer: AnswerShown | None = None
    also: tuple[AnswerShown, ...] = ()
    former: tuple[str, ...] = ()

    @cached_property
    def figure(self) -> Figure | None:
        """The figure of the part."""
        return self.draws() if self.draws else None

    @property
    def answers(self) -> tuple[AnswerShown, ...]:
        """Every value the part asks for, in the order in which they are found."""
        return (*self.also, self.answer) if self.answer else ()


@dataclass(frozen=True)
class CheckShown:
    """The same result reached a second way."""

    what: str
    lines: tuple[Maths, ...]
    words: str


@dataclass(frozen=True)
class ConstantShown:
    name: str
    words: str
    symbol: Maths
    shown: Maths


@dataclass(frozen=True)
class Law:
    """A law or definition as a memo wants it; ``keys`` are the phrases marks hang on.

    formulas: as a data sheet prints them, with plain symbols. group: the heading they stand under there.
    """

    name: str
    words: str
    keys: tuple[str, ...] = ()
    marks: int = 2
    formulas: tuple[str, ...] = ()
    group: str = ""


@dataclass(frozen=True)
class WorkedAnswer:
    """A whole answer. ``values`` holds every named value, SI, unrounded.

    draws: makes the figure of the data, when it is looked at: words and lines need not wait for it.
    unproven: the checks left out because they do not come out for these values.
    """

    question: str
    title: str
    story: str
    asked: str
    given: tuple[Given, ...]
    constants: tuple[ConstantShown, ...]
    laws: tuple[Law, ...]
    parts: tuple[PartShown, ...]
    checks: tuple[CheckShown, ...]
    draws: Callable[[], Figure] | None = field(compare=False)
    notes: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
    values: dict[str, float] = field(default_factory=dict)
    unproven: tuple[str, ...] = ()

    @cached_property
    def figure(self) -> Figure | None:
        """The figure of the data."""
        return self.draws() if self.draws else None

    @property
    def marks(self) -> int:
        return sum(part.marks for part in self.parts)

    @property
    def answers(self) -> tuple[AnswerShown, ...]:
        return tuple(answer for part in self.parts for answer in part.answers)
