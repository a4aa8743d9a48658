"""A piece of mathematics in two notations with the same content and the same digits.

Line after line has the same shape with other numbers in it. So a line that is made with numbers holds its shape and
them: its notations are written when they are asked for, and what reads a shape (renderings/mathml.py) reads it once.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import lru_cache
from typing import NamedTuple


class Shown(NamedTuple):
    """A number as it stands in a line, in TeX and in plain text."""

    tex: str
    text: str


class Shape:
    """What a piece looks like whatever its numbers: its notations around their places, and the kind of each number."""

    __slots__ = ("around_tex", "around_text", "kinds", "size", "tex", "text")

    def __init__(self, around_tex: Sequence[str], around_text: Sequence[str], kinds: tuple[str, ...]) -> None:
        self.around_tex, self.around_text, self.kinds = tuple(around_tex), tuple(around_text), kinds
        self.tex, self.text = _to_fill(around_tex), _to_fill(around_text)
        self.size = sum(map(len, around_text))


def _to_fill(around: Sequence[str]) -> str:
    return "%s".join([piece.replace("%", "%%") for piece in around])


class Maths:
    """One piece of mathematics: given in both notations, or as a shape with a number for each place."""

    __slots__ = ("_later", "_numbers", "_shape", "_tex", "_text")

    def __init__(self, tex: str, text: str) -> None:
        self._tex: str | None = tex
        self._text: str | None = text
        self._shape: Shape | None = None
        self._numbers: tuple[Shown, ...] = ()
        self._later: Callable[[], Maths] | None = None

    @classmethod
    def filled(cls, shape: Shape, numbers: tuple[Shown, ...]) -> Maths:
        """A shape with its numbers."""
        made = cls.__new__(cls)
        made._tex = made._text = made._later = None
        made._shape, made._numbers = shape, numbers
        return made

    @classmethod
    def later(cls, make: Callable[[], Maths]) -> Maths:
        """One that is made when it is looked at: most lines of a long answer stay folded."""
        made = cls.__new__(cls)
        made._tex = made._text = made._shape = None
        made._numbers, made._later = (), make
        return made

    def _settle(self, make: Callable[[], Maths]) -> None:
        made, self._later = make(), None
        self._shape, self._numbers = made.shape, made.numbers
        if self._shape is None:
            self._tex, self._text = made.tex, made.text

    @property
    def shape(self) -> Shape | None:
        """What it looks like whatever its numbers; None where it is given in both notations."""
        if self._later is not None:
            self._settle(self._later)
        return self._shape

    @property
    def numbers(self) -> tuple[Shown, ...]:
        """The numbers in the places of its shape."""
        if self._later is not None:
            self._settle(self._later)
        return self._numbers

    @property
    def tex(self) -> str:
        """In TeX."""
        if self._tex is None and self.shape is not None:
            self._tex = self.shape.tex % tuple([number.tex for number in self.numbers])
        assert self._tex is not None
        return self._tex

    @property
    def text(self) -> str:
        """In plain text."""
        if self._text is None and self.shape is not None:
            self._text = self.shape.text % tuple([number.text for number in self.numbers])
        assert self._text is not None
        return self._text

    def __add__(self, other: Maths) -> Maths:
        mine, its = self.shape, other.shape
        if mine is None and its is None:
            return Maths(self.tex + other.tex, self.text + other.text)
        one, two = mine or _bare(self.tex, self.text), its or _bare(other.tex, other.text)
        return Maths.filled(_joined(one, two), self.numbers + other.numbers)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Maths) and (self.tex, self.text) == (other.tex, other.text)

    def __hash__(self) -> int:
        return hash((self.tex, self.text))

    def __repr__(self) -> str:
        return f"Maths({self.tex!r}, {self.text!r})"


EQUALS = Maths(" = ", " = ")


ANY = "*"  # the kind of a number that stands in brackets or after "=", where a line looks the same with any


def kind_of(number: Shown) -> str:
    """What of a number decides how a line around it is drawn: its minus, a power of ten ("e"), degrees ("°")."""
    end = number.tex[-1]
    return ("-" if number.tex[0] == "-" else "") + ("e" if end == "}" else "°" if end == "c" else "")


type Placed = tuple[tuple[str, ...], Shape]  # with the names whose numbers go into its places


@lru_cache(maxsize=4096)
def shapes_of(line: object) -> dict[tuple[object, ...], Placed | None]:
    """Shapes of a line by the kinds of its numbers, which the line fills; None where a number itself decides it."""
    return {}


def followed(number: Shown, tex: str, text: str) -> Maths:
    """A number with what follows it: a unit with the space before it, or nothing."""
    return Maths.filled(_followed(tex, text), (number,))


@lru_cache(maxsize=1024)
def _followed(tex: str, text: str) -> Shape:
    return Shape(("", tex), ("", text), (ANY,))


@lru_cache(maxsize=1024)
def _bare(tex: str, text: str) -> Shape:
    return Shape((tex,), (text,), ())


@lru_cache(maxsize=4096)
def _joined(one: Shape, two: Shape) -> Shape:
    tex, text = (
        (*first[:-1], first[-1] + last[0], *last[1:])
        for first, last in ((one.around_tex, two.around_tex), (one.around_text, two.around_text))
    )
    return Shape(tex, text, one.kinds + two.kinds)
