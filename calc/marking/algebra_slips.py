"""The slips that belong to any formula: upside down, × for ÷, a power or root forgotten, a term left out.

A topic declares the mistakes of its own physics. These are made from the formula itself, so that
no law goes without them. Each is an expression in place of the right one, with a sentence in the
words of that formula. Common practice, no source.
"""

from __future__ import annotations

import ast
import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from random import Random

from calc.language.expressions import Expression, ExpressionError, expression
from calc.language.symbols import symbol
from calc.language.trees import factors, quotient, terms, total, written

_SWAPPED = {"sin": "cos", "cos": "sin", "asin": "acos", "acos": "asin"}
_FUNCTION = {"sin": "sine", "cos": "cosine", "tan": "tangent"}
_SIDE = {
    "sin": "sine belongs to the side opposite the angle",
    "cos": "cosine belongs to the side next to the angle",
}


@dataclass(frozen=True)
class AlgebraSlip:
    """One wrong way to work a formula. instead: the expression used; say: what to do, to the learner."""

    key: str
    instead: str
    say: str


@lru_cache(maxsize=1024)
def algebra_slips(how: str, constants: tuple[str, ...] = ()) -> tuple[AlgebraSlip, ...]:
    """Every slip of the right side ``how``, each different from it in value and from the others as written.

    constants: the names in it that are constants of the data sheet, which are easily forgotten.
    """
    right = expression(how)
    found: dict[str, AlgebraSlip] = {}
    for key, node, say in (*_upside_down(right.tree), *_inside(right.tree)):
        instead = written(node)
        if instead != written(right.tree):
            found.setdefault(instead, AlgebraSlip(key, instead, say))
    tried = list(_tried(right))
    return tuple(slip for slip in found.values() if not _same(expression(slip.instead), tried))


_MOST_TRIED, _ENOUGH = 40, 4  # data drawn, and those at which the right side has a value


def _tried(right: Expression) -> Iterator[tuple[Mapping[str, float], float]]:
    """A few data of any sign, drawn the same each time, and the value of the right side there."""
    chance, found = Random(1), 0
    for _ in range(_MOST_TRIED):
        values = {name: chance.choice((1, 1, -1)) * chance.uniform(0.2, 1.8) for name in right.names}
        try:
            value = right.value(values)
        except ExpressionError:
            continue
        yield values, value
        found += 1
        if found == _ENOUGH:
            return


def _same(slip: Expression, tried: list[tuple[Mapping[str, float], float]]) -> bool:
    """Whether a slip gives the right value whatever the data, as a difference turned round does where it is squared."""
    try:
        return bool(tried) and all(math.isclose(slip.value(values), value, rel_tol=1e-9) for values, value in tried)
    except ExpressionError:
        return False


_Found = Iterator[tuple[str, ast.expr, str]]


def _said(node: ast.expr) -> str:
    """A piece of the formula inside a sentence."""
    return expression(written(node)).maths().text


def _upside_down(tree: ast.expr) -> _Found:
    """The whole quotient turned over."""
    inner = tree
    if isinstance(tree, ast.Call) and _name(tree) == "sqrt":
        inner = tree.args[0]
    above, below = factors(inner)
    if not below or not any(_holds_name(factor) for factor in (*above, *below)):
        return
    turned = quotient(below, above)
    node = turned if inner is tree else ast.Call(tree.func, [turned], [])  # type: ignore[attr-defined]
    top, bottom = _said(quotient(above, [])), _said(quotient(below, []))
    yield (
        "upside-down",
        node,
        f"You turned the fraction over. {top} belongs above the line and {bottom} below it.",
    )


def _inside(node: ast.expr) -> _Found:
    """Slips at this place of the tree, then those further inside, each put back into the whole."""
    yield from _here(node)
    match node:
        case ast.BinOp(op=ast.Add() | ast.Sub()):
            parts = terms(node)
            for place, (sign, term) in enumerate(parts):
                for key, other, say in _inside(term):
                    yield key, total([*parts[:place], (sign, other), *parts[place + 1 :]]), say
        case ast.BinOp(op=ast.Mult() | ast.Div()):
            above, below = factors(node)
            for place, factor in enumerate(above):
                for key, other, say in _inside(factor):
                    yield key, quotient([*above[:place], other, *above[place + 1 :]], below), say
            for place, factor in enumerate(below):
                for key, other, say in _inside(factor):
                    yield key, quotient(above, [*below[:place], other, *below[place + 1 :]]), say
        case ast.BinOp(left=base, op=ast.Pow(), right=power):
            for key, other, say in _inside(base):
                yield key, ast.BinOp(other, ast.Pow(), power), say
        case ast.UnaryOp(op=op, operand=operand):
            for key, other, say in _inside(operand):
                yield key, ast.UnaryOp(op, other), say
        case ast.Call(func=func, args=[argument]):
            for key, other, say in _inside(argument):
                yield key, ast.Call(func, [other], []), say


def _here(node: ast.expr) -> _Found:
    match node:
        case ast.BinOp(left=base, op=ast.Pow(), right=ast.Constant(value=2)):
            yield from _of_square(base)
        case ast.Call(args=[argument]) if _name(node) == "sqrt":
            yield from _of_root(argument)
        case ast.Call(args=[argument]):
            yield from _of_angle(node, argument)
        case ast.BinOp(op=ast.Add() | ast.Sub()):
            yield from _of_sum(node)
        case ast.BinOp(op=ast.Mult() | ast.Div()):
            yield from _of_product(node)


def _of_square(base: ast.expr) -> _Found:
    said = _said(base)
    yield "not-squared", base, f"You left out the square: multiply {said} by itself first."
    two = ast.Constant(2)
    yield (
        "doubled-for-squared",
        quotient([two, base], []),
        f"You doubled {said}. The square is {said} times {said}.",
    )
    for power, times in ((3, "three"), (4, "four")):
        raised = ast.BinOp(base, ast.Pow(), ast.Constant(power))
        say = f"You took {said} {times} times as a factor. It stands squared in this formula: two times."
        yield f"power-{power}", raised, say


def _of_root(inside: ast.expr) -> _Found:
    said = _said(inside)
    yield "root-omitted", inside, f"You stopped at {said}: its square root is still to be taken."
    yield (
        "halved-for-root",
        quotient([inside], [ast.Constant(2)]),
        f"You halved {said}. Take its square root: the number whose square it is.",
    )
    squares = [
        term.left
        for _, term in terms(inside)
        if isinstance(term, ast.BinOp)
        and isinstance(term.op, ast.Pow)
        and isinstance(term.right, ast.Constant)
        and term.right.value == 2
    ]
    if len(squares) == len(terms(inside)) == 2:
        sign = terms(inside)[1][0]
        yield (
            "sizes-combined",
            total([(1, squares[0]), (sign, squares[1])]),
            (
                f"You {'added' if sign > 0 else 'subtracted'} the two sides themselves. "
                "In a right-angled triangle it is their squares."
            ),
        )
        did, do = ("subtracted", "add") if sign > 0 else ("added", "subtract")
        yield (
            "squares-combined",
            ast.Call(ast.Name("sqrt", ast.Load()), [total([terms(inside)[0], (-sign, terms(inside)[1][1])])], []),
            f"You {did} the squares of the two sides. Look which side is the longest one, and {do} them here.",
        )


def _of_angle(node: ast.Call, argument: ast.expr) -> _Found:
    name = _name(node)
    if name in ("sin", "cos", "tan"):
        said, half = _said(argument), quotient([argument], [ast.Constant(2)])
        say = f"You halved {said} before you took the {_FUNCTION[name]}. Use the whole angle."
        yield "half-angle", ast.Call(node.func, [half], []), say
    if name in _SWAPPED:
        other = _SWAPPED[name]
        plain = name.removeprefix("a")
        wrong = ast.Call(ast.Name(other, ast.Load()), [argument], [])
        say = f"You used {other.removeprefix('a')} for {plain}: {_SIDE[plain]}. Look at your drawing again."
        yield f"{other}-for-{name}", wrong, say
    elif name == "tan":
        say = "You divided the sides the other way round: the tangent is opposite over adjacent."
        yield "tan-turned", quotient([], [node]), say
        for other in ("sin", "cos"):
            wrong = ast.Call(ast.Name(other, ast.Load()), [argument], [])
            say = f"You used {'sine' if other == 'sin' else 'cosine'} for the tangent. Look at your triangle again."
            yield f"{other}-for-tan", wrong, f"{say} The tangent is opposite over adjacent."
    elif name == "atan":
        above, below = factors(argument)
        if below:
            yield (
                "angle-from-other-axis",
                ast.Call(node.func, [quotient(below, above)], []),
                "You have the angle from the other axis: the tangent is opposite over adjacent.",
            )


def _of_sum(node: ast.expr) -> _Found:
    parts = terms(node)
    if all(sign > 0 for sign, _ in parts):
        mean = quotient([node], [ast.Constant(len(parts))])
        yield "mean-for-sum", mean, f"You took the mean. {_said(node)} is a sum: do not divide it by {len(parts)}."
    if len(parts) == 2 and parts[0][0] > 0 > parts[1][0]:
        first, second = _said(parts[0][1]), _said(parts[1][1])
        say = f"You subtracted the other way round: take {second} from {first}."
        yield "turned-round", total([(1, parts[1][1]), (-1, parts[0][1])]), say
    kind = "sum" if all(sign > 0 for sign, _ in parts) else "difference" if len(parts) == 2 else "line"
    for place, (sign, term) in enumerate(parts):
        said = _said(term)
        rest = [*parts[:place], *parts[place + 1 :]]
        yield "term-left-out", total(rest), f"You left {said} out: it belongs in this {kind}."
        if place:
            turned = [*parts[:place], (-sign, term), *parts[place + 1 :]]
            did, do = ("added", "subtracted") if sign < 0 else ("subtracted", "added")
            yield "sign-turned", total(turned), f"You {did} {said} where it must be {do}."


def _of_product(node: ast.expr) -> _Found:
    above, below = factors(node)
    for place, factor in enumerate(above):
        rest = [*above[:place], *above[place + 1 :]]
        said = _said(factor)
        if isinstance(factor, ast.Constant):
            yield "number-left-out", quotient(rest, below), f"You left out the factor {said}."
            yield (
                "number-turned",
                quotient(rest, [*below, factor]),
                f"You divided by {said}: multiply by it.",
            )
            continue
        if rest or below:
            yield (
                "divided",
                quotient(rest, [*below, factor]),
                f"You divided by {said}: multiply by it.",
            )
        if rest or below:
            yield (
                "factor-left-out",
                quotient(rest, below),
                f"You left out {said}: it is a factor of this formula.",
            )
    for place, factor in enumerate(below):
        rest = [*below[:place], *below[place + 1 :]]
        said = _said(factor)
        if isinstance(factor, ast.Constant):
            yield "number-left-out", quotient(above, rest), f"You did not divide by {said}."
            yield (
                "number-turned",
                quotient([factor, *above], rest),
                f"You multiplied by {said}: divide by it.",
            )
            continue
        yield (
            "multiplied",
            quotient([*above, factor], rest),
            f"You multiplied by {said}: divide by it.",
        )
        if rest or above:
            yield (
                "factor-left-out",
                quotient(above, rest),
                f"You did not divide by {said}: it stands below the line.",
            )
    yield from _added(above, below)


def _added(above: list[ast.expr], below: list[ast.expr]) -> _Found:
    """Two quantities of one kind (Q1, Q2) added where they are multiplied."""
    names = [factor for factor in above if isinstance(factor, ast.Name)]
    for place, one in enumerate(names):
        for other in names[place + 1 :]:
            if _letter(one) == _letter(other):
                rest = [factor for factor in above if factor not in (one, other)]
                both = ast.BinOp(one, ast.Add(), other)
                say = f"You added {_said(one)} and {_said(other)}: multiply them."
                yield "added", quotient([*rest, both], below), say


def _letter(name: ast.Name) -> str:
    return symbol(name.id).label.partition("_")[0]


def _name(node: ast.Call) -> str:
    return node.func.id if isinstance(node.func, ast.Name) else ""


def _holds_name(node: ast.expr) -> bool:
    return any(isinstance(part, ast.Name) for part in ast.walk(node))
