"""Trees of expressions taken apart, put together, and written again with no bracket too many."""

from __future__ import annotations

import ast
from collections.abc import Iterable


class NotRearranged(ValueError):
    """The unknown stands where these rules cannot free it."""


SUM, SIGNED, PRODUCT, POWER, ATOM = range(5)


def written(node: ast.expr) -> str:
    """The tree in the written form of :mod:`calc.language.expressions`, with no bracket too many."""
    return _written(node)[0]


def _written(node: ast.expr) -> tuple[str, int]:
    match node:
        case ast.Name(id=name):
            return name, ATOM
        case ast.Constant(value=value):
            return repr(value), ATOM
        case ast.UnaryOp(operand=operand):
            return f"-{bracketed(operand, POWER)}", SIGNED  # -a*b would be read as (-a)*b
        case ast.BinOp(left=left, op=ast.Add(), right=right):
            return f"{bracketed(left, SUM)} + {bracketed(right, PRODUCT)}", SUM
        case ast.BinOp(left=left, op=ast.Sub(), right=right):
            return f"{bracketed(left, SUM)} - {bracketed(right, PRODUCT)}", SUM
        case ast.BinOp(left=left, op=ast.Mult(), right=right):
            return f"{bracketed(left, PRODUCT)}*{bracketed(right, POWER)}", PRODUCT
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            return f"{bracketed(left, PRODUCT)}/{bracketed(right, POWER)}", PRODUCT
        case ast.BinOp(left=left, op=ast.Pow(), right=right):
            return f"{bracketed(left, ATOM)}^{bracketed(right, ATOM)}", POWER
        case ast.Call(func=ast.Name(id=name), args=[argument]):
            return f"{name}({written(argument)})", ATOM
    raise NotRearranged(f"{ast.unparse(node)} cannot be written")


def bracketed(node: ast.expr, level: int) -> str:
    """The tree written, in brackets where it binds less than ``level``."""
    text, own = _written(node)
    return text if own >= level else f"({text})"


# --- taking apart and putting together ----------------------------------------------------------------------


def count(node: ast.AST, name: str) -> int:
    """How often a name stands in the tree."""
    return sum(isinstance(part, ast.Name) and part.id == name for part in ast.walk(node))


def number(value: int) -> ast.expr:
    """A whole number as a tree."""
    return ast.Constant(value)


def call(name: str, argument: ast.expr) -> ast.expr:
    """A function of one argument."""
    return ast.Call(ast.Name(name, ast.Load()), [argument], [])


def _is_one(node: ast.expr) -> bool:
    return isinstance(node, ast.Constant) and node.value == 1


def same(one: ast.expr, other: ast.expr) -> bool:
    """Whether two trees are alike."""
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
    return result if result is not None else number(0)


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
        twin = next((other for other in below if same(factor, other)), None)
        if twin is not None:
            above.remove(factor)
            below.remove(twin)
    top, bottom = _product(above), _product(below)
    if bottom is None:
        return top if top is not None else number(1)
    return ast.BinOp(top if top is not None else number(1), ast.Div(), bottom)


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


def negative(node: ast.expr) -> ast.expr:
    """The tree with the sign of every term turned."""
    return total((-sign, term) for sign, term in terms(node))
