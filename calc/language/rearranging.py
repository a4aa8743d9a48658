"""Make any quantity of a law its subject, with the lines a teacher writes on the way.

``rearranged("F = k*Q1*Q2/r^2", "r")`` gives the line ``r^2 = k*Q1*Q2/F`` and the
form ``r = sqrt(k*Q1*Q2/F)``. The unknown may stand once, under products, powers, roots,
sums, sin, cos, tan and their inverses; or several times where the law is linear or quadratic
in it. Anything else raises :class:`NotRearranged`: such a step needs a numeric root.

This is bookkeeping over the expression tree, no algebra system: school laws only.
"""

from __future__ import annotations

import ast
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from calc.language.expressions import equation
from calc.language.polynomials import (
    Poly,
    Sum,
    atoms_of,
    in_order,
    leads_with_minus,
    plus,
    ratio,
    scaled,
    times,
    tree,
    without_common,
)
from calc.language.trees import (
    PRODUCT,
    NotRearranged,
    bracketed,
    call,
    count,
    factors,
    negative,
    number,
    quotient,
    terms,
    total,
    written,
)

_INVERSE = {
    "sin": "asin",
    "cos": "acos",
    "tan": "atan",
    "asin": "sin",
    "acos": "cos",
    "atan": "tan",
}
ROOT_FORMULA = "Use the formula for the roots of a quadratic equation."


@dataclass(frozen=True)
class Rearranged:
    """A law with one name made the subject.

    make: ``r = sqrt(k*Q1*Q2/F)``. lines: equations between the law and ``make``, in order.
    other: the second root of a quadratic, '' where there is only one. why: a reason for the last line.
    """

    make: str
    lines: tuple[str, ...] = ()
    other: str = ""
    why: str = ""

    @property
    def how(self) -> str:
        """The right side of ``make``."""
        return self.make.split("=", 1)[1].strip()


@lru_cache(maxsize=4096)
def rearranged(law: str, unknown: str) -> Rearranged:
    """``law`` solved for ``unknown``. Raises NotRearranged; ExpressionError for a law written wrongly."""
    line = equation(law)
    left, right = line.left.tree, line.right.tree
    times_there = count(left, unknown) + count(right, unknown)
    if times_there == 0:
        raise NotRearranged(f"{law}: there is no {unknown} in it")
    if isinstance(left, ast.Name) and left.id == unknown and times_there == 1:
        return Rearranged(f"{unknown} = {written(right)}")
    if isinstance(right, ast.Name) and right.id == unknown and times_there == 1:
        return Rearranged(f"{unknown} = {written(left)}")
    if times_there == 1:
        return _freed(left, right, unknown)
    return _collected(left, right, unknown)


# --- the unknown stands once --------------------------------------------------------------------------------


def _freed(left: ast.expr, right: ast.expr, unknown: str) -> Rearranged:
    """Undo what is done to the unknown, from the outside in; each undoing is a line."""
    if count(left, unknown):
        held, rest = left, right
    else:
        held, rest = right, left
    lines: list[str] = []
    while not isinstance(held, ast.Name):
        held, rest = _undone(held, rest, unknown)
        lines.append(f"{written(held)} = {written(rest)}")
    other = ""
    if (len(lines) > 1 and lines[-2].startswith(f"{unknown}^2 = ")) or _is_square(left, right, unknown):
        other = f"{unknown} = -{bracketed(rest, PRODUCT)}"
    return Rearranged(lines[-1], tuple(lines[:-1]), other)


def _is_square(left: ast.expr, right: ast.expr, unknown: str) -> bool:
    """Whether one side of a law is the square of the unknown and nothing else: v^2 = u^2 + 2*a*Dy."""
    return f"{unknown}^2" in (written(left), written(right))


def _undone(held: ast.expr, rest: ast.expr, unknown: str) -> tuple[ast.expr, ast.expr]:
    match held:
        case ast.UnaryOp(operand=operand):
            return operand, negative(rest)
        case ast.BinOp(op=ast.Add() | ast.Sub()):
            parts = terms(held)
            sign, mine = next(part for part in parts if count(part[1], unknown))
            others = [(-s, term) for s, term in parts if term is not mine]
            moved = [(sign * s, term) for s, term in (*terms(rest), *others)]
            return mine, total(_as_written(moved))
        case ast.BinOp(op=ast.Mult() | ast.Div()):
            return _out_of_product(held, rest, unknown)
        case ast.BinOp(left=base, op=ast.Pow(), right=ast.Constant(value=power)) if count(base, unknown):
            if power == 2:
                return base, call("sqrt", rest)
            exponent = ast.BinOp(number(1), ast.Div(), ast.Constant(power))
            return base, ast.BinOp(rest, ast.Pow(), exponent)
        case ast.Call(func=ast.Name(id="sqrt"), args=[inside]):
            return inside, ast.BinOp(rest, ast.Pow(), number(2))
        case ast.Call(func=ast.Name(id=name), args=[inside]) if name in _INVERSE:
            return inside, call(_INVERSE[name], rest)
    raise NotRearranged(f"{unknown} stands inside {written(held)}")


def _as_written(parts: list[tuple[int, ast.expr]]) -> list[tuple[int, ast.expr]]:
    """The terms of a sum as a teacher writes them: no zero, and a minus not first where a plus can be."""
    parts = [part for part in parts if written(part[1]) != "0"] or parts
    return parts if parts[0][0] > 0 else sorted(parts, key=lambda part: part[0] < 0)


def _out_of_product(held: ast.expr, rest: ast.expr, unknown: str) -> tuple[ast.expr, ast.expr]:
    if isinstance(rest, ast.UnaryOp):  # a minus goes before the whole: -(F*r^2/k)
        mine, turned = _out_of_product(held, rest.operand, unknown)
        return mine, negative(turned)
    above, below = factors(held)
    rest_above, rest_below = factors(rest)
    mine = next(factor for factor in (*above, *below) if count(factor, unknown))
    if any(factor is mine for factor in above):
        others = [factor for factor in above if factor is not mine]
        return mine, quotient(rest_above + below, rest_below + others)
    others = [factor for factor in below if factor is not mine]
    return mine, quotient(above + rest_below, rest_above + others)


# --- the unknown stands several times -----------------------------------------------------------------------


# --- the unknown stands several times --------


def _collected(left: ast.expr, right: ast.expr, unknown: str) -> Rearranged:
    """Collect the powers of the unknown; a linear or a quadratic equation is then solved."""
    top, bottom = ratio(left, unknown)
    other_top, other_bottom = ratio(right, unknown)
    poly = plus(times(top, other_bottom), times(other_top, bottom), -1)
    poly = in_order(without_common(poly), atoms_of(left) + atoms_of(right))
    low = min(poly, default=0)
    if low:  # a root at zero, which no learner asks for
        poly = {power - low: sum_ for power, sum_ in poly.items()}
    degree = max(poly, default=0)
    if degree == 1:
        return _linear(poly, unknown)
    if degree == 2:
        return _quadratic(poly, unknown)
    raise NotRearranged(f"{unknown} stands in power {degree}")


def _linear(poly: Poly, unknown: str) -> Rearranged:
    ways = [(poly[1], scaled(poly.get(0, {}), -1)), (scaled(poly[1], -1), poly.get(0, {}))]
    fewest = min(ways, key=lambda way: sum(value < 0 for sum_ in way for value in sum_.values()))
    slope, level = (tree(sum_) for sum_ in fewest)
    name = ast.Name(unknown, ast.Load())
    above, below = factors(slope)
    rest_above, rest_below = factors(level)
    line = f"{written(quotient([name, *above], below))} = {written(level)}"
    make = f"{unknown} = {written(quotient(rest_above + below, rest_below + above))}"
    return Rearranged(make, (line,) if line != make else ())


def _quadratic(poly: Poly, unknown: str) -> Rearranged:
    if leads_with_minus(poly[2]):
        poly = {power: scaled(sum_, -1) for power, sum_ in poly.items()}
    name = ast.Name(unknown, ast.Load())
    square = ast.BinOp(name, ast.Pow(), number(2))
    a, c = tree(poly[2]), tree(poly.get(0, {}))
    if not poly.get(1):
        above, below = factors(a)
        rest = tree(scaled(poly.get(0, {}), -1))
        rest_above, rest_below = factors(rest)
        line = f"{unknown}^2 = {written(quotient(rest_above + below, rest_below + above))}"
        how = f"sqrt({line.split('=', 1)[1].strip()})"
        return Rearranged(f"{unknown} = {how}", (line,), f"{unknown} = -{how}")
    whole = total(
        [
            *_term_of(square, a),
            *_term_of(name, tree(poly[1])),
            *(terms(c) if poly.get(0) else []),
        ]
    )
    # With an even middle coefficient the halved formula is shorter: (-u ± sqrt(u^2 + 2*a*s))/a.
    halved = all(value % 2 == 0 for value in poly[1].values())
    middle = {m: value / 2 for m, value in poly[1].items()} if halved else poly[1]
    fourfold = Fraction(1 if halved else 4)
    inside = _under_root(middle, poly[2], poly.get(0, {}), fourfold)
    above, below = factors(a)
    under = quotient(above if halved else [number(2), *above], below)
    minus_b = tree(scaled(middle, -1))
    root = call("sqrt", inside)
    upper, lower = (
        f"{unknown} = {written(_over(ast.BinOp(minus_b, sign, root), under))}" for sign in (ast.Add(), ast.Sub())
    )
    return Rearranged(upper, (f"{written(whole)} = 0",), lower, ROOT_FORMULA)


def _over(above: ast.expr, below: ast.expr) -> ast.expr:
    """A fraction; nothing is divided by one."""
    return above if written(below) == "1" else ast.BinOp(above, ast.Div(), below)


def _under_root(b: Sum, a: Sum, c: Sum, fourfold: Fraction) -> ast.expr:
    """b^2 - 4ac: multiplied out where each is one term, else left as products."""
    if len(a) == len(b) == len(c) == 1:
        square = times({0: b}, {0: b})
        product = times({0: a}, {0: c})
        return tree(plus(square, {0: {m: v * fourfold for m, v in product[0].items()}}, -1)[0])
    first = ast.BinOp(tree(b), ast.Pow(), number(2))
    if not c:
        return first
    sign, above, below = 1, [] if fourfold == 1 else [number(int(fourfold))], list[ast.expr]()
    for sum_ in (a, c):
        factor = tree(sum_)
        if isinstance(factor, ast.UnaryOp):
            sign, factor = -sign, factor.operand
        top, bottom = factors(factor)
        above, below = above + top, below + bottom
    return total([(1, first), (-sign, quotient(above, below))])


def _term_of(power: ast.expr, coefficient: ast.expr) -> list[tuple[int, ast.expr]]:
    """One term of a polynomial; the sign stands before it."""
    parts = terms(coefficient)
    sign = 1
    if len(parts) == 1:
        sign, coefficient = parts[0]
    above, below = factors(coefficient)
    return [(sign, quotient([*above, power], below))]
