"""One line of physics, written once: ``k*Q1*Q2/r^2``.

The same text gives the value, the formula in symbols and the formula with
numbers put in, in TeX and in plain text, so what is shown is what was computed.

Written form: names, numbers, ``+ - * / ^``, brackets, ``sqrt sin cos tan asin
acos atan abs``. ``+-`` stands for either sign, in a line that is only shown. An equation
is two expressions with one ``=`` between them.
Angles are in radians inside expressions and are shown in degrees.
"""

from __future__ import annotations

import ast
import math
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from types import CodeType
from typing import Any, NamedTuple

from calc.language.decimal_sign import in_sign
from calc.language.maths import ANY, EQUALS, Maths, Shape, Shown, kind_of, shapes_of
from calc.language.symbols import symbol

FLOAT_NOUGHT = 1e-15  # what is left of the cosine of a right angle, which no float can hold


def _sine(angle: float) -> float:
    """The sine; exactly 0 at half turns, while that of a tiny angle is tiny."""
    return value if abs(value := math.sin(angle)) > FLOAT_NOUGHT or abs(angle) < 1 else 0.0


def _cosine(angle: float) -> float:
    """The cosine; exactly 0 at right angles."""
    return value if abs(value := math.cos(angle)) > FLOAT_NOUGHT else 0.0


def _at_most_one(ratio: float) -> float:
    """The ratio; 1 where floats leave a little more of a quotient that is 1 on paper."""
    return math.copysign(1.0, ratio) if 1 < abs(ratio) < 1 + FLOAT_NOUGHT else ratio


_FUNCTIONS: dict[str, Callable[[float], float]] = {
    "sqrt": math.sqrt,
    "sin": _sine,
    "cos": _cosine,
    "tan": math.tan,
    "asin": lambda ratio: math.asin(_at_most_one(ratio)),
    "acos": lambda ratio: math.acos(_at_most_one(ratio)),
    "atan": math.atan,
    "abs": abs,
}
_ANGLES = {"deg90": "90", "deg180": "180", "deg360": "360"}  # angles a formula may name, shown in degrees
_CONSTANTS = {"pi": math.pi, **{name: math.radians(float(size)) for name, size in _ANGLES.items()}}
_NOISE = 1e-12  # of the largest term: what floats leave where terms cancel on paper
_TEX_FUNCTIONS = {"asin": r"\sin^{-1}", "acos": r"\cos^{-1}", "atan": r"\tan^{-1}"}
_TEXT_FUNCTIONS = {"asin": "sin⁻¹", "acos": "cos⁻¹", "atan": "tan⁻¹"}
_SUPERSCRIPTS = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")

_SUM, _PRODUCT, _SIGN, _POWER, _ATOM = range(5)
_ROW = 48  # signs of text in a row of a fraction, so that it fits a column of a page
_ROW_INSIDE = 40  # the same inside "φ = cos⁻¹( )"


class ExpressionError(ValueError):
    """A formula of ours is written wrongly, or a name in it has no value."""


class _Piece(NamedTuple):
    tex: str
    text: str
    level: int
    number: bool = False

    @property
    def negative(self) -> bool:
        """True where the piece starts with a minus, which after another factor or term needs brackets."""
        return self.text.startswith("−")

    def bracketed(self) -> _Piece:
        return _Piece(rf"\left({self.tex}\right)", f"({self.text})", _ATOM)


class Expression:
    """A parsed expression. Get one from :func:`expression`."""

    __slots__ = ("_code", "names", "source", "tree")

    def __init__(self, source: str) -> None:
        self.source = source
        try:
            parsed = ast.parse(source.replace("+-", "|").replace("^", "**").strip(), mode="eval")
        except SyntaxError as problem:
            raise ExpressionError(f"{source!r} is not an expression: {problem.msg}") from None
        self.tree = parsed.body
        self.names = tuple(dict.fromkeys(_names(self.tree, source)))
        self._code: CodeType | None = None  # most formulas that are looked at are never worked out

    def _compiled(self) -> CodeType:
        summed = _with_sums(self.tree) if "+" in self.source or "-" in self.source else self.tree
        code: CodeType = compile(ast.Expression(summed), f"<{self.source}>", "eval")
        self._code = code
        return code

    def value(self, values: Mapping[str, float]) -> float:
        """The value with ``values`` (SI, radians) put in; terms that cancel on paper give 0.

        Raises :class:`ExpressionError` for a name without a value and for a
        result that is no real number (root of a negative, division by zero).
        """
        try:
            result = float(eval(self._code or self._compiled(), _SCOPE, values))
        except NameError as missing:
            raise ExpressionError(f"{self.source}: no value for {missing.name}") from None
        except (ValueError, ZeroDivisionError, OverflowError, TypeError) as problem:
            raise ExpressionError(f"{self.source} has no real value here: {problem}") from None
        if not math.isfinite(result):
            raise ExpressionError(f"{self.source} has no finite value here")
        return result

    def maths(self, shown: Mapping[str, Shown] | None = None, *, comma: bool = True) -> Maths:
        """In symbols, or with every name that is in ``shown`` replaced by its number.

        ``comma``: the decimal sign of the formula's own numbers; those in ``shown`` bring theirs.
        """
        piece = _draw(self.tree, shown or {})
        if comma:
            return Maths(piece.tex, piece.text)
        return Maths(piece.tex.replace("{,}", "."), in_sign(piece.text, comma))


@dataclass(frozen=True)
class Equation:
    """Two expressions said to be equal, as ``F = k*Q1*Q2/r^2``."""

    left: Expression
    right: Expression

    @cached_property
    def names(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(self.left.names + self.right.names))

    def gap(self, values: Mapping[str, float]) -> float:
        """Left side minus right side."""
        return self.left.value(values) - self.right.value(values)

    def maths(self, shown: Mapping[str, Shown] | None = None, *, comma: bool = True) -> Maths:
        """In symbols, or with every name that is in ``shown`` replaced by its number."""
        if not shown:
            return self._in_symbols(shown, comma)
        numbers = [shown.get(name) for name in self.names]
        kinds = [
            number and (_spaced(number.text) if name in self._factors else kind_of(number))
            for name, number in zip(self.names, numbers, strict=True)
        ]
        key: tuple[object, ...] = (comma, *kinds)
        if self._rows:  # where rows begin hangs on how long the numbers are
            key += tuple([number and len(number.text) for number in numbers])
        shapes = shapes_of(self)
        if key not in shapes:
            shapes[key] = self._shape({name: shown[name] for name in self.names if name in shown}, comma)
        found = shapes[key]
        if found is None:
            return self._in_symbols(shown, comma)
        names, shape = found
        return Maths.filled(shape, tuple([shown[name] for name in names]))

    def _in_symbols(self, shown: Mapping[str, Shown] | None, comma: bool) -> Maths:
        return self.left.maths(shown, comma=comma) + EQUALS + self.right.maths(shown, comma=comma)

    @cached_property
    def _rows(self) -> bool:
        return any(map(_may_have_rows, (self.left.tree, self.right.tree)))

    @cached_property
    def _raised(self) -> bool:
        return any(map(_raises_a_name, (self.left.tree, self.right.tree)))

    @cached_property
    def _factors(self) -> frozenset[str]:
        """Names whose numbers stand in brackets wherever they stand: as factors, and as what is raised."""
        sides = (self.left.tree, self.right.tree)
        bare = {side.id for side in sides if isinstance(side, ast.Name)}
        bare |= {name for side in sides for name in _not_bracketed(side)}
        return frozenset(self.names) - bare

    def _shape(self, shown: Mapping[str, Shown], comma: bool) -> tuple[tuple[str, ...], Shape] | None:
        """The shape of the line with numbers of these kinds; None where a number's digits themselves decide it."""
        if self._raised:
            return None
        names = tuple(shown)
        placed = {name: _place(at, shown[name]) for at, name in enumerate(names)}
        line = self._in_symbols(placed, comma)
        tex, text = _PLACE.split(line.tex), _PLACE.split(line.text)
        order = [names[ord(place) - _FIRST] for place in tex[1::2]]
        if tex[1::2] != text[1::2]:
            raise ExpressionError(f"{self.left.source} = {self.right.source}: its notations differ in order")
        kinds = tuple([ANY if name in self._factors else kind_of(shown[name]) for name in order])
        around = [*text[::2]]
        for at, name in enumerate(order):
            if shown[name].text.startswith("−"):
                around[at] = around[at].removesuffix("−")  # the number's own
        return tuple(order), Shape(tex[::2], around, kinds)


# A place for a number: a sign of those that Unicode leaves to private use; in plain text with whatever of the number
# decides how the line is drawn, up to an end.
_FIRST, _END = 0xE000, "\uf8ff"
_PLACE = re.compile("([\ue000-\uf8fe])(?:[^\ue000-\uf8ff]*\uf8ff)?")


def _place(at: int, number: Shown) -> Shown:
    """What stands for a number of this kind and length until its place is filled."""
    sign = chr(_FIRST + at)
    minus = "−" if number.text.startswith("−") else ""
    inside = sign + (" " if _spaced(number.text) else "")
    filler = "0" * (len(number.text) - len(minus + inside) - 1)
    end = _END if len(number.text) > len(minus + inside) else ""
    return Shown(sign, minus + inside + filler + end)


def _not_bracketed(node: ast.expr) -> Iterator[str]:
    """The names in an expression whose numbers stand there without brackets."""
    for part in _parts(node):
        for kid in _own_parts(part):
            if isinstance(kid, ast.Name):
                inside = isinstance(part, ast.BinOp) and (
                    isinstance(part.op, ast.Mult) or (isinstance(part.op, ast.Pow) and kid is part.left)
                )
                if not inside:
                    yield kid.id


def _parts(node: ast.expr) -> list[ast.expr]:
    """What an expression is made of, each before its own parts."""
    found = [node]
    for part in found:  # grows while it is read
        found += _own_parts(part)
    return found


def _own_parts(node: ast.expr) -> Sequence[ast.expr]:
    if isinstance(node, ast.BinOp):
        return node.left, node.right
    if isinstance(node, ast.UnaryOp):
        return (node.operand,)
    return node.args if isinstance(node, ast.Call) else ()


def _may_have_rows(node: ast.expr) -> bool:
    """Whether a fraction in it has a sum above or below its bar."""
    return any(
        isinstance(side, ast.BinOp) and isinstance(side.op, ast.Add | ast.Sub)
        for part in _parts(node)
        if isinstance(part, ast.BinOp) and isinstance(part.op, ast.Div)
        for side in (part.left, part.right)
    )


def _raises_a_name(node: ast.expr) -> bool:
    return any(
        isinstance(raised, ast.Name)
        for part in _parts(node)
        if isinstance(part, ast.BinOp) and isinstance(part.op, ast.Pow)
        for raised in _parts(part.right)
    )


@lru_cache(maxsize=4096)
def expression(source: str) -> Expression:
    """Parse ``source``; :class:`ExpressionError` names what is wrong with it."""
    return Expression(source)


@lru_cache(maxsize=4096)
def equation(source: str) -> Equation:
    """Parse ``left = right``."""
    sides = source.split("=")
    if len(sides) != 2:
        raise ExpressionError(f"{source!r} needs exactly one '='")
    return Equation(expression(sides[0].strip()), expression(sides[1].strip()))


def _names(node: ast.AST, source: str) -> list[str]:
    match node:
        case ast.Name(id=name):
            return [] if name in _CONSTANTS else [name]
        case ast.Constant(value=value) if isinstance(value, int | float):
            return []
        case ast.BinOp(left=left, op=op, right=right) if type(op) in _MARKED:
            return _names(left, source) + _names(right, source)
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return _names(operand, source)
        case ast.Call(func=ast.Name(id=name), args=[argument], keywords=[]) if name in _FUNCTIONS:
            return _names(argument, source)
    raise ExpressionError(f"{source!r}: {ast.unparse(node)!r} is not allowed in a formula")


def _sum(*terms: float) -> float:
    """The sum, or 0 where the terms cancel on paper and floats leave only noise."""
    total = terms[0]
    for term in terms[1:]:
        total += term
    return 0.0 if abs(total) <= _NOISE * max(map(abs, terms)) else total


_SCOPE: dict[str, object] = {"__builtins__": {}, "_sum": _sum, **_FUNCTIONS, **_CONSTANTS}


# Where in a source text a made node stands: nobody asks, but the compiler wants it said.
_HERE: dict[str, Any] = {"lineno": 1, "col_offset": 0}


def _terms(node: ast.expr) -> list[ast.expr]:
    """The terms of a sum, each with its sign; the node alone if it is no sum."""
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub):
        last = _with_sums(node.right)
        return [
            *_terms(node.left),
            ast.UnaryOp(ast.USub(), last, **_HERE) if isinstance(node.op, ast.Sub) else last,
        ]
    return [_with_sums(node)]


def _with_sums(node: ast.expr) -> ast.expr:
    """A copy of the tree in which every sum is a call of ``_sum``."""
    if isinstance(node, ast.BinOp):
        if isinstance(node.op, ast.Add | ast.Sub):
            return ast.Call(ast.Name("_sum", ast.Load(), **_HERE), _terms(node), [], **_HERE)
        return ast.BinOp(_with_sums(node.left), node.op, _with_sums(node.right), **_HERE)
    if isinstance(node, ast.UnaryOp):
        return ast.UnaryOp(node.op, _with_sums(node.operand), **_HERE)
    if isinstance(node, ast.Call):
        return ast.Call(node.func, [_with_sums(argument) for argument in node.args], [], **_HERE)
    return node


def _wrap(piece: _Piece, level: int) -> _Piece:
    if piece.level >= level:
        return piece
    return piece.bracketed()


def _bracketed_number(piece: _Piece) -> _Piece:
    """A substituted number inside a product stands in brackets, as on paper."""
    if not piece.number:
        return piece
    return _Piece(f"({piece.tex})", f"({piece.text})", _ATOM)


def _draw(node: ast.expr, shown: Mapping[str, Shown]) -> _Piece:
    kind = type(node)  # asked for in each line of each answer: a chain of isinstance is dear
    if kind is ast.Name:
        return _draw_name(node.id, shown)  # type: ignore[attr-defined]
    return _DRAWN[kind](node, shown) if kind in _DRAWN else _not_drawn(node)


def _not_drawn(node: ast.expr) -> _Piece:
    raise ExpressionError(f"cannot show {ast.unparse(node)}")


def _draw_pair(node: ast.BinOp, shown: Mapping[str, Shown]) -> _Piece:
    left, op, right = node.left, type(node.op), node.right
    if op is ast.Mult:
        return _draw_product(left, right, shown)
    if op is ast.Div:
        return _draw_fraction(_draw_side(left, shown, _ROW), _draw_side(right, shown, _ROW))
    if op is ast.Pow:
        return _draw_power(left, right, shown)
    return _draw_sum(_draw(left, shown), op, _draw(right, shown))


def _draw_constant(node: ast.Constant, shown: Mapping[str, Shown]) -> _Piece:
    digits = repr(node.value)
    return _Piece(digits.replace(".", "{,}"), digits.replace(".", ","), _ATOM)


def _draw_minus(node: ast.UnaryOp, shown: Mapping[str, Shown]) -> _Piece:
    inner = _wrap(_draw(node.operand, shown), _PRODUCT)
    if inner.negative:
        inner = inner.bracketed()
    return _Piece("-" + inner.tex, "−" + inner.text, _SIGN)


def _draw_function(node: ast.Call, shown: Mapping[str, Shown]) -> _Piece:
    argument = node.args[0]
    if isinstance(argument, ast.BinOp) and isinstance(argument.op, ast.Div):
        sides = (_draw_side(side, shown, _ROW_INSIDE) for side in (argument.left, argument.right))
        return _draw_call(_call_name(node), _draw_fraction(*sides))
    return _draw_call(_call_name(node), _draw(argument, shown))


_DRAWN: dict[type[ast.expr], Callable[[Any, Mapping[str, Shown]], _Piece]] = {
    ast.BinOp: _draw_pair,
    ast.Constant: _draw_constant,
    ast.UnaryOp: _draw_minus,
    ast.Call: _draw_function,
}


def _draw_name(name: str, shown: Mapping[str, Shown]) -> _Piece:
    if name == "pi":
        return _Piece(r"\pi", "π", _ATOM)
    if name in _ANGLES:
        return _Piece(rf"{_ANGLES[name]}^\circ", f"{_ANGLES[name]}°", _ATOM)
    if name in shown:
        number = shown[name]
        return _Piece(number.tex, number.text, _ATOM, number=True)
    sign = symbol(name)
    return _Piece(sign.tex, sign.text, _ATOM)


_BETWEEN = {ast.Add: ("+", "+"), ast.Sub: ("-", "−"), ast.BitOr: (r"\pm", "±")}  # the last of two terms: either sign
_MARKED = frozenset({*_BETWEEN, ast.Mult, ast.Div, ast.Pow})


def _draw_sum(left: _Piece, op: type[ast.operator], right: _Piece) -> _Piece:
    if right.negative or (right.level == _SUM and op is not ast.Add):
        right = right.bracketed()
    mark = _BETWEEN[op]
    return _Piece(f"{left.tex} {mark[0]} {right.tex}", f"{left.text} {mark[1]} {right.text}", _SUM)


def _draw_side(node: ast.expr, shown: Mapping[str, Shown], room: int) -> _Piece:
    """The top or the bottom of a fraction; a sum longer than ``room`` in rows, as nothing else can break a fraction."""
    whole = _draw(node, shown)
    if not (isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub)):
        return whole
    rows, length = [""], 0
    for term in _drawn_terms(node, shown):
        if length and length + len(term.text) > room:
            rows.append("{}")
            length = 0
        rows[-1] += term.tex
        length += len(term.text)
    if len(rows) == 1:
        return whole
    # \cr and not two backslashes, of which Markdown takes one away.
    return whole._replace(tex=rf"\begin{{gathered}} {r' \cr '.join(rows)} \end{{gathered}}")


def _drawn_terms(node: ast.expr, shown: Mapping[str, Shown]) -> list[_Piece]:
    """The terms of a sum, each after the first with its sign before it."""
    match node:
        case ast.BinOp(left=left, op=ast.Add() | ast.Sub() as op, right=right):
            nothing = _Piece("", "", _SUM)
            return [*_drawn_terms(left, shown), _draw_sum(nothing, type(op), _draw(right, shown))]
    return [_draw(node, shown)]


def _draw_product(left: ast.expr, right: ast.expr, shown: Mapping[str, Shown]) -> _Piece:
    first = _bracketed_number(_wrap(_draw(left, shown), _PRODUCT))
    second = _bracketed_number(_wrap(_draw(right, shown), _PRODUCT))
    if _starts_with_digit(right):  # x*2 would read as x2
        return _Piece(rf"{first.tex} \times {second.tex}", f"{first.text} × {second.text}", _PRODUCT)
    if second.negative or (isinstance(right, ast.BinOp) and isinstance(right.op, ast.Div)):
        second = second.bracketed()
    if isinstance(left, ast.BinOp) and isinstance(left.op, ast.Div):  # a/b c would read as a/(b c)
        first = _Piece(first.tex, f"({first.text})", _ATOM)
    # sin θ followed by another factor needs air; k Q₁ does not
    space = r"\," if _ends_in_function(left) or _starts_with_function(right) else ""
    # F_E cannot be lowered in plain text, and F_Er would read as another name
    gap = " " if space or re.search(r"_\w+$", first.text) else ""
    return _Piece(f"{first.tex}{space or ' '}{second.tex}", f"{first.text}{gap}{second.text}", _PRODUCT)


def _ends_in_function(node: ast.expr) -> bool:
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Mult):
        node = node.right
    return isinstance(node, ast.Call) and _call_name(node) not in ("sqrt", "abs")


def _starts_with_function(node: ast.expr) -> bool:
    while isinstance(node, ast.BinOp) and isinstance(node.op, ast.Mult | ast.Pow):
        node = node.left
    return isinstance(node, ast.Call)


def _starts_with_digit(node: ast.expr) -> bool:
    while isinstance(node, ast.BinOp):
        node = node.left
    return isinstance(node, ast.Constant)


def _call_name(node: ast.Call) -> str:
    return node.func.id if isinstance(node.func, ast.Name) else ""


def _draw_fraction(top: _Piece, bottom: _Piece) -> _Piece:
    tex = rf"\dfrac{{{top.tex}}}{{{bottom.tex}}}"
    over = top.text if top.level >= _PRODUCT else f"({top.text})"
    if top.number and _spaced(top.text):
        over = f"({top.text})"
    bare = bottom.level >= _POWER and not bottom.negative and not _spaced(bottom.text)
    under = bottom.text if bare else f"({bottom.text})"
    return _Piece(tex, f"{over}/{under}", _PRODUCT)


def _spaced(text: str) -> bool:
    """True for a text with a space in it, as ``9 × 10⁹``, which needs brackets around it."""
    return " " in text or "\N{NO-BREAK SPACE}" in text


def _draw_power(base: ast.expr, exponent: ast.expr, shown: Mapping[str, Shown]) -> _Piece:
    raised = _draw(exponent, shown)
    digits = raised.text.replace("−", "-")
    power = digits.translate(_SUPERSCRIPTS) if digits.lstrip("-").isdigit() else f"^({raised.text})"
    if isinstance(base, ast.Call) and _call_name(base) in ("sin", "cos", "tan"):
        name, inner = _call_name(base), _draw(base.args[0], shown)
        inner = inner.bracketed() if inner.negative else _wrap(inner, _POWER)
        return _Piece(rf"\{name}^{{{raised.tex}}} {inner.tex}", f"{name}{power} {inner.text}", _POWER)
    bottom = _draw(base, shown)
    bottom = _bracketed_number(bottom) if bottom.number else _wrap(bottom, _ATOM)
    return _Piece(f"{bottom.tex}^{{{raised.tex}}}", f"{bottom.text}{power}", _POWER)


def _draw_call(name: str, inner: _Piece) -> _Piece:
    if name == "sqrt":
        bare = inner.level == _ATOM and not _spaced(inner.text)
        body = inner.text if bare else f"({inner.text})"
        return _Piece(rf"\sqrt{{{inner.tex}}}", f"√{body}", _ATOM)
    if name == "abs":
        return _Piece(rf"\left|{inner.tex}\right|", f"|{inner.text}|", _ATOM)
    if name.startswith("a"):
        head = (_TEX_FUNCTIONS[name], _TEXT_FUNCTIONS[name])
        return _Piece(rf"{head[0]}\left({inner.tex}\right)", f"{head[1]}({inner.text})", _POWER)
    inner = inner.bracketed() if inner.negative else _wrap(inner, _POWER)
    return _Piece(rf"\{name} {inner.tex}", f"{name} {inner.text}", _POWER)
