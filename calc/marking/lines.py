"""A learner's working as on paper, line under line: formula, numbers put in, result.

Each line is an equation. One with letters is a formula: right where both sides agree, for the data given and for
others. One with numbers must keep the value of the line before. Reading is bounded: numbers, the names of the plan,
+ − × ÷ powers, roots, sin, cos and tan; nothing else is worked out. Common practice of a memo, no source.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from calc.language.expressions import Expression, ExpressionError
from calc.language.quantities import QuantityError
from calc.language.symbols import symbol
from calc.language.unittext import raised_to_caret
from calc.marking.learner import read_line

MOST_LINES = 20
LONGEST = 200
SAME = 0.011  # a line may round the one before: 1 %, and a little for the last digit

_SIGNS = str.maketrans({"×": "*", "·": "*", "⋅": "*", "÷": "/", "−": "-", "–": "-", "[": "(", "]": ")", ",": "."})
_LOWERED = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")
_FUNCTIONS = ("sqrt", "sin", "cos", "tan")
_TOKEN = re.compile(r"\s*(\d+\.?\d*(?:[eE][+-]?\d+)?|\*\*|[-+*/^()]|√)")


@dataclass(frozen=True)
class Working:
    """What the lines show, by step: formulas that hold or do not, the numbers put in, the value reached.

    broken: what is said of the first line that does not follow; '' where all do.
    """

    formulas: Mapping[str, bool] = field(default_factory=dict)
    numbers: Mapping[str, str] = field(default_factory=dict)
    values: Mapping[str, str] = field(default_factory=dict)
    broken: str = ""


def read_working(text: str, steps: Iterable[str], sets: Iterable[Mapping[str, float]]) -> Working:
    """Read the lines of one part.

    steps: the names it finds, the one asked last. sets: right values of every name, for the data and for others.
    """
    return _Reader(tuple(steps), tuple(sets)).read(text)


class _Reader:
    def __init__(self, steps: tuple[str, ...], sets: tuple[Mapping[str, float], ...]) -> None:
        self.steps, self.sets = steps, sets
        self.written = {form: name for values in sets for name in values for form in _forms(name)}
        self.longest_first = sorted(self.written, key=len, reverse=True)
        self.name = steps[-1]  # what the lines speak of until another name stands before the equals sign
        self.before: tuple[str, float] | None = None
        self.formulas: dict[str, bool] = {}
        self.numbers: dict[str, str] = {}
        self.values: dict[str, str] = {}
        self.broken = ""

    def read(self, text: str) -> Working:
        lines = [line.strip() for line in text.splitlines() if line.strip()][:MOST_LINES]
        for count, line in enumerate(lines, 1):
            self.line(count, line[:LONGEST])
        return Working(self.formulas, self.numbers, self.values, self.broken)

    def line(self, count: int, line: str) -> None:
        sides = [side.strip() for side in re.split(r"[=≈]", line) if side.strip()]
        if not sides:
            return
        name = self.written.get(_plain(sides[0]))
        if name in self.steps and len(sides) > 1:
            if name != self.name:
                self.before = None
            self.name = name or self.name
            if all(self.numeric(side) is None for side in sides[1:2]):
                self.formula(count, line, sides[0], sides[1])
                sides = sides[2:]
            else:
                sides = sides[1:]
        elif len(sides) > 1 and self.numeric(sides[0]) is None and self.numeric(sides[1]) is None:
            self.formula(count, line, sides[0], sides[1])
            sides = sides[2:]
        for side in sides:
            self.side(count, side)

    def side(self, count: int, side: str) -> None:
        """A side of numbers: it keeps the value before it; the last of a name is its value."""
        value = self.numeric(side)
        if value is None:
            formula = self.expression(side)
            if formula is None:
                self.stop(
                    f"Line {count} of your working, “{side}”, could not be read. Write numbers, × ÷ and brackets."
                )
            return
        if self.before and not math.isclose(abs(value), abs(self.before[1]), rel_tol=SAME):
            self.stop(
                f"Line {count} of your working breaks off: “{side}” is not the same as “{self.before[0]}” before it."
                " Work that line out once more."
            )
        self.before = (side, value)
        if re.search(r"[*/^√(]|\*\*|\d\s*[-+]\s*\d", _without_powers(side)):
            self.numbers.setdefault(self.name, side)
        else:
            self.values[self.name] = side

    def formula(self, count: int, line: str, left: str, right: str) -> None:
        first, second = self.expression(left), self.expression(right)
        if first is None or second is None:
            self.stop(f"Line {count} of your working, “{line}”, could not be read. Use the letters of the question.")
            return
        names = {*first.names, *second.names}
        about = self.name if self.name in names else next((n for n in reversed(self.steps) if n in names), self.name)
        holds = all(_agree(first, second, values) for values in self.sets)
        self.formulas.setdefault(about, holds)
        if not holds:
            self.stop(
                f"Line {count} of your working, “{line}”, is not a formula that holds here. Look at the law again."
            )

    def stop(self, sentence: str) -> None:
        self.broken = self.broken or sentence

    def numeric(self, side: str) -> float | None:
        """The value of a side of numbers, with units or without; None where letters stand in it."""
        try:
            return read_line(side)
        except QuantityError:
            return None

    def expression(self, side: str) -> Expression | None:
        """A side with the plan's names, × left out between them as on paper."""
        rest, parts = _plain(side).replace(" ", " "), []
        while rest.strip():
            rest = rest.lstrip()
            token = next((f for f in _FUNCTIONS if rest.startswith(f)), "")
            name = (
                ""
                if token
                else next((f for f in sorted(self.written, key=len, reverse=True) if rest.startswith(f)), "")
            )
            match = _TOKEN.match(rest)
            piece = token or name or (match[1] if match else "")
            if not piece:
                return None
            rest = rest[len(piece) :]
            # floats only: whole powers of whole numbers could fill the memory
            number = repr(float(piece)) if piece[0].isdigit() else piece
            parts.append(self.written[name] if name else {"√": "sqrt", "^": "**"}.get(piece, number))
        try:
            return Expression(_joined(parts))
        except (ExpressionError, ValueError):
            return None


def _joined(parts: list[str]) -> str:
    """Pieces with × between neighbours, and brackets round what a function without them takes."""
    out: list[str] = []
    pieces = iter(parts)
    for piece in pieces:
        operand = piece[0].isalnum() or piece == "("
        if out and operand and (out[-1][-1].isalnum() or out[-1] == ")") and out[-1] not in _FUNCTIONS:
            out.append("*")
        if piece not in ("(",) and out and out[-1] in _FUNCTIONS:
            piece = f"({piece})"
        out.append(piece)
    return "".join(out)


def _forms(name: str) -> tuple[str, ...]:
    """How a name is typed: Q1, Q_1, Q₁; F_net, Fnet."""
    sign = symbol(name)
    return tuple(
        dict.fromkeys(_plain(form) for form in (name, sign.text, sign.label.replace("{", "").replace("}", "")))
    )


def _plain(text: str) -> str:
    return raised_to_caret(text.translate(_SIGNS)).translate(_LOWERED).strip()


def _without_powers(side: str) -> str:
    """A side without its powers of ten, which are no calculation."""
    plain = _plain(side)
    return re.sub(r"[*x×]?\s*10\s*(?:\^|\*\*)\s*\(?-?\d+\)?", "", plain)


def _agree(first: Expression, second: Expression, values: Mapping[str, float]) -> bool:
    """Whether two formulas give one value, signs of charges put in or only their sizes."""
    sizes = {name: abs(value) for name, value in values.items()}
    for taken in (values, sizes):
        try:
            one, other = first.value(taken), second.value(taken)
        except (ExpressionError, ArithmeticError, ValueError):
            continue
        if math.isclose(abs(one), abs(other), rel_tol=1e-6):
            return True
    return False
