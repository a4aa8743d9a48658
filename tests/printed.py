"""Reads printed formulas, in plain text or in TeX, and works them out: nothing here comes from ``calc``.

Usual reading of school formulas: a number or name beside another is a product and
binds tighter than ``×`` and ``/``; a stroke takes the one factor after it, and a
further factor beside that one is refused, because readers would not agree on it.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from types import ModuleType
from typing import Any

RAISED = dict(zip("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789-", strict=True))
FUNCTIONS = ("sin", "cos", "tan")
NUMBER = re.compile(r"\d+(?:[.,]\d+)?")
TEX_NUMBER = re.compile(r"\d+(?:(?:\{,\}|[.,])\d+)?")


class Unreadable(ValueError):
    """A line that a reader could not work out, or could work out in two ways."""


Token = tuple[str, Any]


def text_tokens(line: str, names: Mapping[str, str]) -> list[Token]:
    """Tokens of a plain-text line. names: printed name -> the name of its value."""
    longest = sorted(names, key=len, reverse=True)
    found: list[Token] = []
    at = 0
    while at < len(line):
        rest = line[at:]
        if rest[0] in " \N{NO-BREAK SPACE}":
            at += 1
        elif number := NUMBER.match(rest):
            found.append(("number", number.group().replace(",", ".")))
            at += number.end()
        elif rest[0] in RAISED:
            digits = ""
            while at < len(line) and line[at] in RAISED:
                digits += RAISED[line[at]]
                at += 1
            found += [("^", ""), ("(", ""), ("number", digits), (")", "")]
        elif function := next((f for f in FUNCTIONS if rest.startswith(f)), ""):
            at += len(function)
            if line[at : at + 2] == "⁻¹":
                function, at = "a" + function, at + 2
            found.append(("function", function))
        elif rest[0] == "π":
            found.append(("number", repr(math.pi)))
            at += 1
        elif name := next((n for n in longest if rest.startswith(n)), ""):
            found.append(("name", names[name]))
            at += len(name)
        elif rest[0] in "+−×/^()|√°=":
            found.append((rest[0], ""))
            at += 1
        else:
            raise Unreadable(f"{rest!r} in {line!r}")
    return found


def tex_tokens(line: str, names: Mapping[str, str]) -> list[Token]:
    """Tokens of a TeX line, the same as those of its plain text but for brackets."""
    tokens, at = _tex(line, 0, sorted(names, key=len, reverse=True), names, "")
    if at != len(line):
        raise Unreadable(line)
    return tokens


def _tex(line: str, at: int, longest: list[str], names: Mapping[str, str], end: str) -> tuple[list[Token], int]:
    found: list[Token] = []

    def group(start: int) -> tuple[list[Token], int]:
        if line[start] != "{":
            raise Unreadable(f"no group at {line[start:]!r}")
        inner, stop = _tex(line, start + 1, longest, names, "}")
        return [("(", ""), *inner, (")", "")], stop

    while at < len(line):
        rest = line[at:]
        if end and rest.startswith(end):
            return found, at + len(end)
        if rest[0] == " ":
            at += 1
        elif rest.startswith((r"\,", r"\ ")):
            at += 2
        elif rest.startswith(r"\begin{gathered}"):
            # a long sum in rows, each but the first beginning with its sign
            inner, at = _tex(line, at + 16, longest, names, r"\end{gathered}")
            found += [("(", ""), *inner, (")", "")]
        elif rest.startswith(r"\cr {}"):
            at += 6
        elif rest.startswith(r"\dfrac"):
            top, at = group(at + 6)
            bottom, at = group(at)
            found += [("(", ""), *top, ("/", ""), *bottom, (")", "")]
        elif rest.startswith(r"\sqrt"):
            inner, at = group(at + 5)
            found += [("√", ""), *inner]
        elif rest.startswith(r"\left"):
            found.append((rest[5], ""))
            at += 6
        elif rest.startswith(r"\right"):
            found.append((rest[6], ""))
            at += 7
        elif rest.startswith(r"\times"):
            found.append(("×", ""))
            at += 6
        elif rest.startswith(r"\neq"):
            raise Unreadable(f"unequal sides: {line!r}")
        elif rest.startswith(r"^\circ"):
            found.append(("°", ""))
            at += 6
        elif function := next((f for f in FUNCTIONS if rest.startswith("\\" + f)), ""):
            at += 1 + len(function)
            if line[at:].startswith("^{-1}"):
                function, at = "a" + function, at + 5
            found.append(("function", function))
        elif rest.startswith(r"\pi"):
            found.append(("number", repr(math.pi)))
            at += 3
        elif number := TEX_NUMBER.match(rest):
            found.append(("number", number.group().replace("{,}", ".").replace(",", ".")))
            at += number.end()
        elif name := next((n for n in longest if rest.startswith(n)), ""):
            found.append(("name", names[name]))
            at += len(name)
        elif rest.startswith("^{"):
            inner, at = group(at + 1)
            found += [("^", ""), *inner]
        elif rest[0] in "+-()=":
            found.append((rest[0].replace("-", "−"), ""))
            at += 1
        else:
            raise Unreadable(f"{rest!r} in {line!r}")
    if end:
        raise Unreadable(f"{line!r} has no {end!r}")
    return found, at


ROUNDING = 2e-12  # of the largest term of a sum


class Worked:
    """The value of tokens. ``scale`` is the largest term met in a sum: what rounding noise is judged by.

    largest: that of the sum met last, 0 where it was a single term.
    with_: the module that works out roots and angles (``math``, or ``mpmath`` for many digits).
    """

    def __init__(self, tokens: list[Token], values: Mapping[str, Any], with_: ModuleType = math) -> None:
        self.tokens, self.values, self.maths, self.at = tokens, values, with_, 0
        self.number = with_.mpf if hasattr(with_, "mpf") else float
        self.scale = self.largest = self.number(0)
        self.value = self._sum()
        if self.at != len(tokens):
            raise Unreadable(f"left over: {tokens[self.at :]}")

    def _next(self) -> str:
        return self.tokens[self.at][0] if self.at < len(self.tokens) else ""

    def _take(self, kind: str) -> Any:
        if self._next() != kind:
            raise Unreadable(f"{kind!r} expected: {self.tokens[self.at :]}")
        self.at += 1
        return self.tokens[self.at - 1][1]

    def _sum(self) -> Any:
        sign = 1
        if self._next() == "−":
            self._take("−")
            sign = -1
        total = sign * self._product()
        largest = abs(total)
        while self._next() in ("+", "−"):
            sign = 1 if self._next() == "+" else -1
            self.at += 1
            term = sign * self._product()
            largest = max(largest, abs(term))
            total += term
        self.scale = max(self.scale, largest)
        # terms that cancel but for the rounding of floats: a root of what is left would be no rounding
        return self.number(0) if abs(total) <= ROUNDING * largest else total

    def _product(self) -> Any:
        total = self._beside()
        while self._next() in ("×", "/"):
            if self._next() == "×":
                self.at += 1
                total *= self._beside()
            else:
                self.at += 1
                total /= self._power()
                if self._starts_factor():
                    raise Unreadable(f"a/b c can be read in two ways: {self.tokens}")
        return total

    def _starts_factor(self) -> bool:
        return self._next() in ("number", "name", "(", "√", "function")

    def _beside(self) -> Any:
        total = self._power()
        while self._starts_factor():
            if self._next() == "number" and self.tokens[self.at][1] != repr(math.pi):  # "2π" is read in one way
                raise Unreadable(f"a number right after another factor: {self.tokens}")
            total *= self._power()
        return total

    def _power(self) -> Any:
        if self._next() == "function":
            return self._function()
        base = self._atom()
        if self._next() == "^":
            self._take("^")
            power = self._atom()
            whole = int(power)
            base = base**whole if whole == power else base**power
        return base

    def _function(self) -> Any:
        name, power = self._take("function"), 1
        if self._next() == "^":
            self._take("^")
            power = int(self._atom())
        return getattr(self.maths, name)(self._power()) ** power

    def _atom(self) -> Any:
        kind = self._next()
        if kind == "number":
            value = self.number(self._take("number"))
            if self._next() == "°":
                self._take("°")
                value *= self.maths.pi / 180
            return value
        if kind == "name":
            return self.values[self._take("name")]
        if kind == "(":
            self._take("(")
            value = self._sum()
            self._take(")")
            return value
        if kind == "|":
            self._take("|")
            value = abs(self._sum())
            self._take("|")
            return value
        if kind == "√":
            self._take("√")
            return self.maths.sqrt(self._atom())
        raise Unreadable(f"no factor: {self.tokens[self.at :]}")
