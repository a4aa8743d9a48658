"""A line of working as written on paper, made a formula: × left out, ½, degrees, units behind numbers, letters with
their lowered signs. What can be read in more than one way is given in each: "2g" may be 2 × g or two grams, u²/2g is
mostly u² ÷ (2g). Common practice of writing, no source.

Reading is bounded: numbers, letters, + − × ÷ powers, roots, sin, cos and tan and their inverses; nothing else is
worked out.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import product
from typing import NamedTuple

from calc.language.expressions import Expression, ExpressionError
from calc.language.symbols import symbol
from calc.language.units import UnitError, parse_unit
from calc.language.unittext import DASHES, raised_to_caret

LONGEST = 200
DEEPEST = 20  # brackets inside brackets
DEGREE = "0.017453292519943295"
# One sign for many names that a learner gives a quantity whatever the question calls it: they are one letter each.
PAPER = re.compile(
    r"v1[if]|v2[if]|v[if][12]?|u[if]|[uv]0|vave?|F[Nn]|[fF][ks]|Ff|Fg|FT|Fapp|F[ABP]|Fres|Fnet|ΣF|Σp|E[kpKP]|Em|K[if]"
    r"|U[if]|ΔE[kp]?|Δ[KUxytvp]|Wn(?:et|c)|[FPTwW][xy]|f[Ll]|v[LSsl]|p[if]"
)

_SIGNS = str.maketrans(
    {
        **dict.fromkeys("×⋅∙·", "*"),
        "\N{OHM SIGN}": "Ω",
        **dict.fromkeys(DASHES, "-"),
        "÷": "/",
        ":": "/",
        "[": "(",
        "]": ")",
        "{": "(",
        "}": ")",
        ",": ".",
        "µ": "μ",
        "π": "(3.141592653589793)",
        "½": "(1/2)",
        "¼": "(1/4)",
        "¾": "(3/4)",
        "º": "°",
        "˚": "°",
        "|": " ",
        "Δ": "Δ",
        "∆": "Δ",
        "∑": "Σ",
        "_": "",
    }
)
_LOWERED = str.maketrans("₀₁₂₃₄₅₆₇₈₉ₐₑₕᵢⱼₖₗₘₙₒₚᵣₛₜᵤᵥₓ", "0123456789aehijklmnoprstuvx")
_ONE = r"(?:kg|[kM]?Hz|min|[pnμmckMG]?(?:Wb|ohms?|[CNVJgsAWΩ])|[nμmckMG]?m|h)(?:\^\(?-?\d\)?|-\d(?!\d))?"
_UNIT = re.compile(rf"\s*({_ONE}(?:\s*[*./]\s*{_ONE}|\s?{_ONE})*)(?![A-Za-z(])")
# Letters elsewhere: units only behind a space, at the end of a side or a bracket.
_LAST_UNIT = re.compile(r"\s+([nμm]?T|[kM]?eV)(?=\s*(?:\)|$))")
_NUMERAL = re.compile(
    r"(\d{1,3}(?:[ \u00a0\u202f]\d{3})+(?![\d.])|\d+\.?\d*|\.\d+)"
    r"(?:[eE]([+-]?\d+)|\s*[*xX.]\s*10\s*\^\s*(?:\(([+-]?\d+)\)|([+-]?\d+)))?"
)
_FUNCTION = re.compile(r"(?:arc|a)(sin|cos|tan)|(sin|cos|tan)\s*\^\s*\(?-1\)?|(sin|cos|tan|sqrt)|(√)")
_MARK = re.compile(r"\*\*|[-+*/^()°%]")
_TIMES = re.compile(r"[xX](?=\s*[\d(.])")
_TIMES_BETWEEN = re.compile(r"(?<=\s)[xX](?=\s)")  # letters, where the question has no x


def plain(text: str) -> str:
    """One spelling for signs, raised and lowered letters; ms⁻¹ is m·s⁻¹."""
    line = raised_to_caret(text.translate(_LOWERED)).translate(_SIGNS)
    line = re.sub(r"(?<![A-Za-z])[dD]elta\s*(?=[A-Za-z])", "Δ", line)
    return re.sub(r"(?<![A-Za-z])ms\s*\^\s*\(?-([12])\)?", r"m*s^-\1", line).strip()


class Token(NamedTuple):
    """kind: 'number' (text is its source), 'name', 'function' or 'mark'."""

    kind: str
    text: str


@dataclass(frozen=True)
class Side:
    """One reading of a side of an equation. unknown: letters that are none of the question's."""

    formula: Expression
    unknown: tuple[str, ...]
    numerals: tuple[float, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """Every letter in it."""
        return self.formula.names


class Letters:
    """How the names of a question may be typed: Q1, Q_1, Q₁; F_net, Fnet; fS, fs."""

    def __init__(self, names: tuple[str, ...]) -> None:
        self.forms: dict[str, str] = {}
        for name in names:
            for form in _forms(name):
                self.forms.setdefault(form, name)
        small: dict[str, set[str]] = {}
        for form, name in self.forms.items():
            small.setdefault(_small(form), set()).add(name)
        self.small = {form: next(iter(found)) for form, found in small.items() if len(found) == 1}
        self.longest = max(map(len, self.forms), default=0)

    def at(self, text: str, place: int) -> tuple[str, int]:
        """(name, length) of the longest letter that stands here; ('', 0) where none of the question's does."""
        for size in range(min(self.longest, len(text) - place), 0, -1):
            piece = text[place : place + size]
            name = self.forms.get(piece)
            if not name and size > 1 and not all(sign in self.forms for sign in piece):  # "ab" is a × b, not a_B
                name = self.small.get(_small(piece))
            if name:
                return name, size
        return "", 0


@lru_cache(maxsize=64)
def letters_of(names: tuple[str, ...]) -> Letters:
    """The letters of a question."""
    return Letters(names)


def _forms(name: str) -> tuple[str, ...]:
    sign = symbol(name)
    shown = (name, sign.text, sign.label.replace("{", "").replace("}", ""))
    return tuple(dict.fromkeys(plain(form).replace("'", "′") for form in shown))


def _small(form: str) -> str:
    """What follows the first letter in small letters: fS is fs, but M is not m."""
    return form[:1] + form[1:].casefold()


def readings(text: str, letters: Letters) -> Iterator[Side]:
    """Every way to read a side, the likeliest first."""
    seen = set()
    line = plain(text)[:LONGEST]
    ways = list(product((True, False), (True, False), (False,)))
    if "x" in letters.forms and _TIMES_BETWEEN.search(line):  # "k x x^2" where x is a letter too
        ways += [(units, paper, True) for units, paper, _ in ways]
    for units, paper, times in ways:
        tokens = _tokens(line, letters, units, paper, times)
        if not tokens:
            continue
        for told, tight in _orders(tokens):
            try:
                source = _Parser(told, tight).whole()
                formula = Expression(source)
            except (ExpressionError, ValueError, RecursionError, MemoryError):
                continue
            if source not in seen:
                seen.add(source)
                unknown = tuple(name for name in formula.names if name.startswith("own_"))
                yield Side(formula, unknown, tuple(float(t.text.split("*")[0]) for t in tokens if t.kind == "number"))


def _orders(tokens: list[Token]) -> Iterator[tuple[list[Token], bool]]:
    """What binds first: letters side by side or ÷; a unit behind a fraction belongs to its lower number or to all."""
    if Token("mark", "/") not in tokens:
        yield tokens, False
        return
    yield from ((tokens, True), (tokens, False))
    apart = list[Token]()
    for place, token in enumerate(tokens):
        number, _, unit = token.text.partition("*")
        if token.kind == "number" and unit and place and tokens[place - 1].text == "/":
            apart += [Token("number", number), Token("mark", "*"), Token("number", unit)]
        else:
            apart.append(token)
    if len(apart) > len(tokens):
        yield apart, False


def numbers(text: str) -> tuple[float, ...]:
    """The values of a side of numbers, units and degrees, each way to read it; none where letters stand in it or it
    has no value."""
    found = []
    for side in readings(text, letters_of(())):
        if not side.names:
            try:
                found.append(side.formula.value({}))
            except ExpressionError:
                continue
    return tuple(dict.fromkeys(found))


def number(text: str) -> float | None:
    """The likeliest of these values; None where there is none."""
    found = numbers(text)
    return found[0] if found else None


def own_letter(name: str) -> str:
    """The letter as the learner wrote it, of an unknown name of a reading."""
    return "".join(chr(int(code)) for code in name.removeprefix("own_").split("_"))


def _own(letter: str) -> str:
    return "own_" + "_".join(str(ord(sign)) for sign in letter)


def _tokens(line: str, letters: Letters, units: bool, paper: bool, times: bool) -> list[Token]:
    """The tokens of a line in one spelling; none where a sign cannot be read.

    paper: "vf" is one letter, not v × f. times: an x between spaces is no letter.
    """
    found: list[Token] = []
    at = 0
    while at < len(line):
        if line[at].isspace():
            at += 1
            continue
        ended = bool(found) and (found[-1].kind in ("number", "name") or found[-1].text in (")", "°", "%"))
        numeral, function, mark = _NUMERAL.match(line, at), _FUNCTION.match(line, at), _MARK.match(line, at)
        name, size = letters.at(line, at)
        if numeral:
            at = _number(line, numeral, units, found)
        elif (
            ended and size <= 1 and (_TIMES.match(line, at) or ((times or not name) and _TIMES_BETWEEN.match(line, at)))
        ):
            found.append(Token("mark", "*"))
            at += 1
        elif ended and units and found[-1].text == ")" and (unit := _unit(line, at)) and unit[1] == len(line):
            found += [Token("mark", "*"), Token("number", unit[0])]
            at = unit[1]
        elif function and not (name and size > len(function[0])):
            inverse = function[1] or function[2]
            found.append(Token("function", f"a{inverse}" if inverse else "sqrt" if function[4] else function[3]))
            at = function.end()
        elif mark:
            found.append(Token("mark", {"**": "^"}.get(mark[0], mark[0])))
            at = mark.end()
        else:
            letter = PAPER.match(line, at)
            if not name and not letter and not line[at].isalpha():
                return []
            if letter and size < len(letter[0]) and (paper or not size):
                name, size = _own(letter[0]), len(letter[0])
            found.append(Token("name", name or _own(line[at])))
            at += size or 1
    return found


def _number(line: str, numeral: re.Match[str], units: bool, found: list[Token]) -> int:
    """Add a number, with the factor of the unit behind it; where it ends."""
    source = repr(float(re.sub(r"\s", "", numeral[1])) * 10.0 ** int(numeral[2] or numeral[3] or numeral[4] or 0))
    at = numeral.end()
    unit = _unit(line, at) if units else None
    if unit:
        source, at = f"{source}*{unit[0]}", unit[1]
    found.append(Token("number", source))
    return at


def _unit(line: str, at: int) -> tuple[str, int] | None:
    """(the factor of the unit that stands here, where it ends)."""
    match = _UNIT.match(line, at) or _LAST_UNIT.match(line, at)
    if not match:
        return None
    apart = "^" in match[1] or match[1] == "Ns"  # factors side by side, as in "kgms^-1"; "2gh" are letters
    for written in (match[1], *(["·".join(re.findall(_ONE, match[1]))] if apart else [])):
        try:
            return repr(float(parse_unit(written).factor)), match.end()
        except UnitError:
            continue
    return None


class _Parser:
    """Tokens made the source of a formula. tight: letters side by side bind before ÷."""

    def __init__(self, tokens: list[Token], tight: bool) -> None:
        self.tokens, self.tight, self.at, self.depth = tokens, tight, 0, 0

    def whole(self) -> str:
        found = self.sum()
        if self.at < len(self.tokens):
            raise ValueError("something is left over")
        return found

    def mark(self, *marks: str) -> str:
        """Take one of these signs if it comes next."""
        if self.at < len(self.tokens) and self.tokens[self.at] in [Token("mark", mark) for mark in marks]:
            self.at += 1
            return self.tokens[self.at - 1].text
        return ""

    def sum(self) -> str:
        found = ("-" if self.mark("-") else self.mark("+") and "") + self.product()
        while sign := self.mark("+", "-"):
            found += f" {sign} {self.product()}"
        return found

    def product(self) -> str:
        found = self.beside()
        while sign := self.mark("*", "/"):
            minus = "-" if self.mark("-") else ""
            found += f"{sign}{minus}{self.beside()}" if not minus else f"{sign}(-{self.beside()})"
        return found

    def beside(self) -> str:
        """Factors side by side."""
        found = [self.power()]
        while self.at < len(self.tokens) and (self.tokens[self.at].kind != "mark" or self.tokens[self.at].text == "("):
            found.append(self.power())
        if len(found) == 1:
            return found[0]
        return f"({'*'.join(found)})" if self.tight else "*".join(found)

    def power(self) -> str:
        found = self.atom()
        if self.mark("^"):
            minus = "-" if self.mark("-") else ""
            found = f"({found})**({minus}{self.atom()})"
        return found

    def atom(self) -> str:
        if self.at >= len(self.tokens):
            raise ValueError("something is missing")
        token = self.tokens[self.at]
        self.at += 1
        if token.kind == "function":
            return self.called(token.text)
        if token == Token("mark", "("):
            self.depth += 1
            if self.depth > DEEPEST:
                raise ValueError("too deep")
            found = f"({self.sum()})"
            self.depth -= 1
            if not self.mark(")"):
                raise ValueError("a bracket is open")
        elif token.kind == "mark":
            raise ValueError("a sign without a number")
        else:
            found = f"({token.text})" if "*" in token.text else token.text
        while sign := self.mark("°", "%"):
            found = f"({found}*{DEGREE})" if sign == "°" else f"({found}*0.01)"
        return found

    def called(self, name: str) -> str:
        """A function of the bracket or the number and letter behind it; bare numbers are degrees."""
        began = self.at
        inside = self.atom()
        number = self.at == began + 1 and self.tokens[began].kind == "number"
        if number and self.at < len(self.tokens) and self.tokens[self.at].kind == "name":
            inside += f"*{self.atom()}"
        inner = self.tokens[began : self.at]
        if name in ("sin", "cos", "tan") and not any(token.kind == "name" for token in inner):
            inside = f"({inside.replace(f'*{DEGREE}', '')})*{DEGREE}"  # whether each has its ° or one for all
        return f"{name}({inside})"
