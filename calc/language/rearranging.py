"""Make any quantity of a law its subject, with the lines a teacher writes on the way.

``rearranged("F = k*Q1*Q2/r^2", "r")`` gives the line ``r^2 = k*Q1*Q2/F`` and the
form ``r = sqrt(k*Q1*Q2/F)``. The unknown may stand once, under products, powers, roots,
sums, sin, cos, tan and their inverses; or several times where the law is linear or quadratic
in it. Anything else raises :class:`NotRearranged`: such a step needs a numeric root.

This is bookkeeping over the expression tree, no algebra system: school laws only.
"""

from __future__ import annotations

import ast
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from calc.language.expressions import equation

_INVERSE = {
    "sin": "asin",
    "cos": "acos",
    "tan": "atan",
    "asin": "sin",
    "acos": "cos",
    "atan": "tan",
}
ROOT_FORMULA = "Use the formula for the roots of a quadratic equation."


class NotRearranged(ValueError):
    """The unknown stands where these rules cannot free it."""


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


@lru_cache(maxsize=1024)
def rearranged(law: str, unknown: str) -> Rearranged:
    """``law`` solved for ``unknown``. Raises NotRearranged; ExpressionError for a law written wrongly."""
    line = equation(law)
    left, right = line.left.tree, line.right.tree
    count = _count(left, unknown) + _count(right, unknown)
    if count == 0:
        raise NotRearranged(f"{law}: there is no {unknown} in it")
    if isinstance(left, ast.Name) and left.id == unknown and count == 1:
        return Rearranged(f"{unknown} = {written(right)}")
    if count == 1:
        return _freed(left, right, unknown)
    return _collected(left, right, unknown)


# --- the tree as text ---------------------------------------------------------------------------------------

_SUM, _SIGNED, _PRODUCT, _POWER, _ATOM = range(5)


def written(node: ast.expr) -> str:
    """The tree in the written form of :mod:`calc.language.expressions`, with no bracket too many."""
    return _written(node)[0]


def _written(node: ast.expr) -> tuple[str, int]:
    match node:
        case ast.Name(id=name):
            return name, _ATOM
        case ast.Constant(value=value):
            return repr(value), _ATOM
        case ast.UnaryOp(operand=operand):
            return f"-{_bracketed(operand, _PRODUCT)}", _SIGNED
        case ast.BinOp(left=left, op=ast.Add(), right=right):
            return f"{_bracketed(left, _SUM)} + {_bracketed(right, _PRODUCT)}", _SUM
        case ast.BinOp(left=left, op=ast.Sub(), right=right):
            return f"{_bracketed(left, _SUM)} - {_bracketed(right, _PRODUCT)}", _SUM
        case ast.BinOp(left=left, op=ast.Mult(), right=right):
            return f"{_bracketed(left, _PRODUCT)}*{_bracketed(right, _POWER)}", _PRODUCT
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            return f"{_bracketed(left, _PRODUCT)}/{_bracketed(right, _POWER)}", _PRODUCT
        case ast.BinOp(left=left, op=ast.Pow(), right=right):
            return f"{_bracketed(left, _ATOM)}^{_bracketed(right, _ATOM)}", _POWER
        case ast.Call(func=ast.Name(id=name), args=[argument]):
            return f"{name}({written(argument)})", _ATOM
    raise NotRearranged(f"{ast.unparse(node)} cannot be written")


def _bracketed(node: ast.expr, level: int) -> str:
    text, own = _written(node)
    return text if own >= level else f"({text})"


# --- taking apart and putting together ----------------------------------------------------------------------


def _count(node: ast.AST, name: str) -> int:
    return sum(isinstance(part, ast.Name) and part.id == name for part in ast.walk(node))


def _number(value: int) -> ast.expr:
    return ast.Constant(value)


def _call(name: str, argument: ast.expr) -> ast.expr:
    return ast.Call(ast.Name(name, ast.Load()), [argument], [])


def _is_one(node: ast.expr) -> bool:
    return isinstance(node, ast.Constant) and node.value == 1


def _same(one: ast.expr, other: ast.expr) -> bool:
    return ast.dump(one) == ast.dump(other)


def terms(node: ast.expr) -> list[tuple[int, ast.expr]]:
    """The terms of a sum with their signs; a node that is no sum is its own only term."""
    match node:
        case ast.BinOp(left=left, op=ast.Add(), right=right):
            return [*terms(left), *terms(right)]
        case ast.BinOp(left=left, op=ast.Sub(), right=right):
            return [*terms(left), *((-sign, term) for sign, term in terms(right))]
        case ast.UnaryOp(operand=operand):
            return [(-sign, term) for sign, term in terms(operand)]
    return [(1, node)]


def total(parts: Iterable[tuple[int, ast.expr]]) -> ast.expr:
    """The sum of signed terms, beginning with a positive one where there is one."""
    ordered = list(parts)
    first = next((place for place, (sign, _) in enumerate(ordered) if sign > 0), 0)
    if ordered and ordered[0][0] < 0:
        ordered.insert(0, ordered.pop(first))
    result: ast.expr | None = None
    for sign, term in ordered:
        if result is None:
            result = term if sign > 0 else ast.UnaryOp(ast.USub(), term)
        else:
            result = ast.BinOp(result, ast.Add() if sign > 0 else ast.Sub(), term)
    return result if result is not None else _number(0)


def factors(node: ast.expr) -> tuple[list[ast.expr], list[ast.expr]]:
    """Factors above and below the line; numbers that are 1 left out."""
    match node:
        case ast.BinOp(left=left, op=ast.Mult(), right=right):
            (a, b), (c, d) = factors(left), factors(right)
            return a + c, b + d
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            (a, b), (c, d) = factors(left), factors(right)
            return a + d, b + c
    return ([] if _is_one(node) else [node]), []


def quotient(above: list[ast.expr], below: list[ast.expr]) -> ast.expr:
    """Factors above and below put together: numbers first, what stands in both taken out."""
    above, below = list(above), list(below)
    for factor in list(above):
        twin = next((other for other in below if _same(factor, other)), None)
        if twin is not None:
            above.remove(factor)
            below.remove(twin)
    top, bottom = _product(above), _product(below)
    if bottom is None:
        return top if top is not None else _number(1)
    return ast.BinOp(top if top is not None else _number(1), ast.Div(), bottom)


def _product(parts: list[ast.expr]) -> ast.expr | None:
    ordered = sorted(parts, key=_place)
    result: ast.expr | None = None
    for part in ordered:
        result = part if result is None else ast.BinOp(result, ast.Mult(), part)
    return result


def _place(factor: ast.expr) -> int:
    """Numbers stand first in a product and sin, cos, tan last, as on paper."""
    if isinstance(factor, ast.Constant):
        return 0
    return 2 if isinstance(factor, ast.Call) else 1


def _negative(node: ast.expr) -> ast.expr:
    return total((-sign, term) for sign, term in terms(node))


# --- the unknown stands once --------------------------------------------------------------------------------


def _freed(left: ast.expr, right: ast.expr, unknown: str) -> Rearranged:
    """Undo what is done to the unknown, from the outside in; each undoing is a line."""
    if _count(left, unknown):
        held, rest = left, right
    else:
        held, rest = right, left
    lines: list[str] = []
    while not isinstance(held, ast.Name):
        held, rest = _undone(held, rest, unknown)
        lines.append(f"{written(held)} = {written(rest)}")
    other = ""
    if (len(lines) > 1 and lines[-2].startswith(f"{unknown}^2 = ")) or _is_square(
        left, right, unknown
    ):
        other = f"{unknown} = -{_bracketed(rest, _PRODUCT)}"
    return Rearranged(lines[-1], tuple(lines[:-1]), other)


def _is_square(left: ast.expr, right: ast.expr, unknown: str) -> bool:
    """Whether one side of a law is the square of the unknown and nothing else: v^2 = u^2 + 2*a*Dy."""
    return f"{unknown}^2" in (written(left), written(right))


def _undone(held: ast.expr, rest: ast.expr, unknown: str) -> tuple[ast.expr, ast.expr]:
    match held:
        case ast.UnaryOp(operand=operand):
            return operand, _negative(rest)
        case ast.BinOp(op=ast.Add() | ast.Sub()):
            parts = terms(held)
            sign, mine = next(part for part in parts if _count(part[1], unknown))
            others = [(-s, term) for s, term in parts if term is not mine]
            moved = [*terms(rest), *others]
            return mine, total(moved if sign > 0 else [(-s, term) for s, term in moved])
        case ast.BinOp(op=ast.Mult() | ast.Div()):
            return _out_of_product(held, rest, unknown)
        case ast.BinOp(left=base, op=ast.Pow(), right=ast.Constant(value=power)) if _count(
            base, unknown
        ):
            if power == 2:
                return base, _call("sqrt", rest)
            exponent = ast.BinOp(_number(1), ast.Div(), ast.Constant(power))
            return base, ast.BinOp(rest, ast.Pow(), exponent)
        case ast.Call(func=ast.Name(id="sqrt"), args=[inside]):
            return inside, ast.BinOp(rest, ast.Pow(), _number(2))
        case ast.Call(func=ast.Name(id=name), args=[inside]) if name in _INVERSE:
            return inside, _call(_INVERSE[name], rest)
    raise NotRearranged(f"{unknown} stands inside {written(held)}")


def _out_of_product(held: ast.expr, rest: ast.expr, unknown: str) -> tuple[ast.expr, ast.expr]:
    above, below = factors(held)
    rest_above, rest_below = factors(rest)
    mine = next(factor for factor in (*above, *below) if _count(factor, unknown))
    if any(factor is mine for factor in above):
        others = [factor for factor in above if factor is not mine]
        return mine, quotient(rest_above + below, rest_below + others)
    others = [factor for factor in below if factor is not mine]
    return mine, quotient(above + rest_below, rest_above + others)


# --- the unknown stands several times -----------------------------------------------------------------------

_Monomial = tuple[tuple[str, Fraction], ...]  # each atom's text with its power, in order of text
_Sum = dict[_Monomial, Fraction]
_Poly = dict[int, _Sum]  # by power of the unknown


def _collected(left: ast.expr, right: ast.expr, unknown: str) -> Rearranged:
    """Collect the powers of the unknown; a linear or a quadratic equation is then solved."""
    top, bottom = _ratio(left, unknown)
    other_top, other_bottom = _ratio(right, unknown)
    poly = _plus(_times(top, other_bottom), _times(other_top, bottom), -1)
    poly = _in_order(_without_common(poly), _atoms_of(left) + _atoms_of(right))
    low = min(poly, default=0)
    if low:  # a root at zero, which no learner asks for
        poly = {power - low: sum_ for power, sum_ in poly.items()}
    degree = max(poly, default=0)
    if degree == 1:
        return _linear(poly, unknown)
    if degree == 2:
        return _quadratic(poly, unknown)
    raise NotRearranged(f"{unknown} stands in power {degree}")


def _atoms_of(node: ast.expr) -> list[str]:
    """Names and calls as written, in the order in which a reader meets them."""
    match node:
        case ast.Name(id=name):
            return [name]
        case ast.Call():
            return [written(node)]
        case ast.BinOp(left=left, right=right):
            return _atoms_of(left) + _atoms_of(right)
        case ast.UnaryOp(operand=operand):
            return _atoms_of(operand)
    return []


def _in_order(poly: _Poly, order: list[str]) -> _Poly:
    """Each product in the order of the law's own symbols: m2*u2, not u2*m2."""
    place = {atom: index for index, atom in reversed(list(enumerate(order)))}

    def key(part: tuple[str, Fraction]) -> int:
        return place.get(part[0], len(order))

    return {
        power: {tuple(sorted(monomial, key=key)): value for monomial, value in sum_.items()}
        for power, sum_ in poly.items()
    }


def _linear(poly: _Poly, unknown: str) -> Rearranged:
    ways = [(poly[1], _scaled(poly.get(0, {}), -1)), (_scaled(poly[1], -1), poly.get(0, {}))]
    fewest = min(ways, key=lambda way: sum(value < 0 for sum_ in way for value in sum_.values()))
    slope, level = (_tree(sum_) for sum_ in fewest)
    name = ast.Name(unknown, ast.Load())
    above, below = factors(slope)
    rest_above, rest_below = factors(level)
    line = f"{written(quotient([name, *above], below))} = {written(level)}"
    make = f"{unknown} = {written(quotient(rest_above + below, rest_below + above))}"
    return Rearranged(make, (line,) if line != make else ())


def _quadratic(poly: _Poly, unknown: str) -> Rearranged:
    if _leads_with_minus(poly[2]):
        poly = {power: _scaled(sum_, -1) for power, sum_ in poly.items()}
    name = ast.Name(unknown, ast.Load())
    square = ast.BinOp(name, ast.Pow(), _number(2))
    a, c = _tree(poly[2]), _tree(poly.get(0, {}))
    if not poly.get(1):
        above, below = factors(a)
        rest = _tree(_scaled(poly.get(0, {}), -1))
        rest_above, rest_below = factors(rest)
        line = f"{unknown}^2 = {written(quotient(rest_above + below, rest_below + above))}"
        how = f"sqrt({line.split('=', 1)[1].strip()})"
        return Rearranged(f"{unknown} = {how}", (line,), f"{unknown} = -{how}")
    whole = total(
        [
            *_term_of(square, a),
            *_term_of(name, _tree(poly[1])),
            *(terms(c) if poly.get(0) else []),
        ]
    )
    # With an even middle coefficient the halved formula is shorter: (-u ± sqrt(u^2 + 2*a*s))/a.
    halved = all(value % 2 == 0 for value in poly[1].values())
    middle = {m: value / 2 for m, value in poly[1].items()} if halved else poly[1]
    fourfold = Fraction(1 if halved else 4)
    inside = _under_root(middle, poly[2], poly.get(0, {}), fourfold)
    above, below = factors(a)
    under = quotient(above if halved else [_number(2), *above], below)
    minus_b = _tree(_scaled(middle, -1))
    root = _call("sqrt", inside)
    plus, less = (
        f"{unknown} = {written(ast.BinOp(ast.BinOp(minus_b, sign, root), ast.Div(), under))}"
        for sign in (ast.Add(), ast.Sub())
    )
    return Rearranged(plus, (f"{written(whole)} = 0",), less, ROOT_FORMULA)


def _under_root(b: _Sum, a: _Sum, c: _Sum, fourfold: Fraction) -> ast.expr:
    """b^2 - 4ac: multiplied out where each is one term, else left as products."""
    if len(a) == len(b) == len(c) == 1:
        square = _times({0: b}, {0: b})
        product = _times({0: a}, {0: c})
        return _tree(_plus(square, {0: {m: v * fourfold for m, v in product[0].items()}}, -1)[0])
    first = ast.BinOp(_tree(b), ast.Pow(), _number(2))
    if not c:
        return first
    sign, above, below = 1, [] if fourfold == 1 else [_number(int(fourfold))], list[ast.expr]()
    for sum_ in (a, c):
        tree = _tree(sum_)
        if isinstance(tree, ast.UnaryOp):
            sign, tree = -sign, tree.operand
        top, bottom = factors(tree)
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


def _leads_with_minus(sum_: _Sum) -> bool:
    return all(value < 0 for value in sum_.values())


def _ratio(node: ast.expr, unknown: str) -> tuple[_Poly, _Poly]:
    """A tree as one polynomial over another."""
    one: _Poly = {0: {(): Fraction(1)}}
    match node:
        case ast.Name(id=name) if name == unknown:
            return {1: {(): Fraction(1)}}, one
        case ast.Constant(value=value):
            return {0: {(): Fraction(str(value))}}, one
        case ast.UnaryOp(operand=operand):
            top, bottom = _ratio(operand, unknown)
            return _plus({}, top, -1), bottom
        case ast.BinOp(left=left, op=ast.Add() | ast.Sub() as op, right=right):
            (a, b), (c, d) = _ratio(left, unknown), _ratio(right, unknown)
            sign = 1 if isinstance(op, ast.Add) else -1
            if b == d:
                return _plus(a, c, sign), b
            return _plus(_times(a, d), _times(c, b), sign), _times(b, d)
        case ast.BinOp(left=left, op=ast.Mult(), right=right):
            (a, b), (c, d) = _ratio(left, unknown), _ratio(right, unknown)
            return _times(a, c), _times(b, d)
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            (a, b), (c, d) = _ratio(left, unknown), _ratio(right, unknown)
            return _times(a, d), _times(b, c)
        case ast.BinOp(left=base, op=ast.Pow(), right=ast.Constant(value=int(power))) if power >= 0:
            top, bottom = _ratio(base, unknown)
            result_top, result_bottom = one, one
            for _ in range(power):
                result_top, result_bottom = _times(result_top, top), _times(result_bottom, bottom)
            return result_top, result_bottom
    if _count(node, unknown):
        raise NotRearranged(f"{unknown} stands inside {written(node)} and elsewhere")
    return {0: {((written(node), Fraction(1)),): Fraction(1)}}, one


def _plus(one: _Poly, other: _Poly, sign: int = 1) -> _Poly:
    result: _Poly = {power: dict(sum_) for power, sum_ in one.items()}
    for power, sum_ in other.items():
        into = result.setdefault(power, {})
        for monomial, value in sum_.items():
            into[monomial] = into.get(monomial, Fraction(0)) + sign * value
    cleaned = {p: {m: v for m, v in s.items() if v} for p, s in result.items()}
    return {power: sum_ for power, sum_ in cleaned.items() if sum_}


def _times(one: _Poly, other: _Poly) -> _Poly:
    result: _Poly = {}
    for power, sum_ in one.items():
        for power_2, sum_2 in other.items():
            product: _Sum = {}
            for monomial, value in sum_.items():
                for monomial_2, value_2 in sum_2.items():
                    both = _joined(monomial, monomial_2)
                    product[both] = product.get(both, Fraction(0)) + value * value_2
            result = _plus(result, {power + power_2: product})
    return result


def _joined(one: _Monomial, other: _Monomial) -> _Monomial:
    powers = dict(one)
    for atom, power in other:
        powers[atom] = powers.get(atom, Fraction(0)) + power
    return tuple((atom, power) for atom, power in powers.items() if power)


def _scaled(sum_: _Sum, factor: int) -> _Sum:
    return {monomial: value * factor for monomial, value in sum_.items()}


def _without_common(poly: _Poly) -> _Poly:
    """Divided by what every term holds: R*I + R*r = R*e needs no R."""
    every = [dict(monomial) for sum_ in poly.values() for monomial in sum_]
    common = {
        atom: min(powers[atom] for powers in every)
        for atom in (every[0] if every else {})
        if all(atom in powers for powers in every)
    }
    return {
        power: {
            tuple((a, p - common.get(a, 0)) for a, p in m if p != common.get(a, 0)): value
            for m, value in sum_.items()
        }
        for power, sum_ in poly.items()
    }


def _tree(sum_: _Sum) -> ast.expr:
    """A sum of monomials as a tree, with what all terms share taken out: m*(u - v)."""
    if not sum_:
        return _number(0)
    every = [dict(monomial) for monomial in sum_]
    shared = {
        atom: min(powers[atom] for powers in every)
        for atom in every[0]
        if all(atom in powers for powers in every)
    }
    if len(sum_) == 1:
        ((monomial, value),) = sum_.items()
        return _signed(value, dict(monomial))
    inner = total(
        (
            1 if value > 0 else -1,
            _monomial(
                abs(value),
                {a: p - shared.get(a, Fraction(0)) for a, p in monomial if p != shared.get(a, 0)},
            ),
        )
        for monomial, value in sum_.items()
    )
    if not shared:
        return inner
    above, below = factors(_monomial(Fraction(1), shared))
    return quotient([*above, inner], below)


def _signed(value: Fraction, powers: Mapping[str, Fraction]) -> ast.expr:
    tree = _monomial(abs(value), powers)
    return tree if value > 0 else ast.UnaryOp(ast.USub(), tree)


def _monomial(value: Fraction, powers: Mapping[str, Fraction]) -> ast.expr:
    above: list[ast.expr] = [] if value.numerator == 1 else [_number(value.numerator)]
    below: list[ast.expr] = [] if value.denominator == 1 else [_number(value.denominator)]
    for atom, power in powers.items():
        base = ast.parse(atom.replace("^", "**"), mode="eval").body
        size = abs(power)
        factor = base if size == 1 else ast.BinOp(base, ast.Pow(), ast.Constant(int(size)))
        (above if power > 0 else below).append(factor)
    return quotient(above, below)
