"""Rounding too soon: the values reached when results on the way are cut to two decimals."""

from __future__ import annotations

import ast
from collections.abc import Callable, Mapping

from calc.language.expressions import Expression, ExpressionError, expression


def two_decimals(value: float) -> float:
    """Rounded as a memo prints it: two decimals, on the coefficient below 0,1 and from 10 000."""
    return round(value, 2) if 0.1 <= abs(value) < 10_000 else float(f"{value:.2e}")


def plain_decimals(value: float) -> float:
    """Rounded to two decimals whatever its size; a value too small for that is left as it is."""
    return round(value, 2) or value


def two_figures(value: float) -> float:
    """Rounded to two significant figures."""
    return float(f"{value:.1e}")


def rounded_inside(source: str, values: Mapping[str, float]) -> list[float]:
    """The value of an expression with each inner result rounded to two decimals."""
    tree = expression(source).tree
    found = []
    for functions_only in (True, False):
        for round_off in (two_decimals, plain_decimals):
            try:
                found.append(_evaluate(tree, values, round_off, functions_only, outer=True))
            except (ArithmeticError, ValueError, ExpressionError):
                continue
    return found


def _evaluate(
    node: ast.expr,
    values: Mapping[str, float],
    round_off: Callable[[float], float],
    functions_only: bool,
    outer: bool = False,
) -> float:
    """One node of a formula; every result inside the outermost is rounded."""
    inner = [child for child in ast.iter_child_nodes(node) if isinstance(child, ast.expr)]
    if isinstance(node, ast.Call):
        inner = node.args
    if not inner:
        return expression(ast.unparse(node)).value(values)
    parts = [_evaluate(child, values, round_off, functions_only) for child in inner]
    names = [f"v{index}" for index in range(len(parts))]
    value = _shape(node).value(dict(zip(names, parts, strict=True)))
    rounds = not outer and not isinstance(node, ast.UnaryOp)
    return round_off(value) if rounds and (isinstance(node, ast.Call) or not functions_only) else value


def _shape(node: ast.expr) -> Expression:
    """A node with its parts replaced by names: ``v0*v1``, ``sin(v0)``."""
    first, second = (ast.Name(name) for name in ("v0", "v1"))
    match node:
        case ast.BinOp(op=op):
            return expression(ast.unparse(ast.BinOp(first, op, second)))
        case ast.UnaryOp(op=sign):
            return expression(ast.unparse(ast.UnaryOp(sign, first)))
        case ast.Call(func=function):
            return expression(ast.unparse(ast.Call(function, [first], [])))
    raise ExpressionError(f"cannot round inside {ast.unparse(node)}")
