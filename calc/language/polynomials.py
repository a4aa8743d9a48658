"""Sums of products in one unknown: collected, divided by what all share, and made a tree again."""

from __future__ import annotations

import ast
from collections.abc import Mapping
from fractions import Fraction

from calc.language.trees import (
    NotRearranged,
    count,
    factors,
    number,
    quotient,
    total,
    written,
)

Monomial = tuple[tuple[str, Fraction], ...]  # each atom's text with its power, in order of text
Sum = dict[Monomial, Fraction]
Poly = dict[int, Sum]  # by power of the unknown


def atoms_of(node: ast.expr) -> list[str]:
    """Names and calls as written, in the order in which a reader meets them."""
    match node:
        case ast.Name(id=name):
            return [name]
        case ast.Call():
            return [written(node)]
        case ast.BinOp(left=left, right=right):
            return atoms_of(left) + atoms_of(right)
        case ast.UnaryOp(operand=operand):
            return atoms_of(operand)
    return []


def in_order(poly: Poly, order: list[str]) -> Poly:
    """Each product in the order of the law's own symbols: m2*u2, not u2*m2."""
    place = {atom: index for index, atom in reversed(list(enumerate(order)))}

    def key(part: tuple[str, Fraction]) -> int:
        return place.get(part[0], len(order))

    return {
        power: {tuple(sorted(monomial, key=key)): value for monomial, value in sum_.items()}
        for power, sum_ in poly.items()
    }


def leads_with_minus(sum_: Sum) -> bool:
    """Whether every term is negative."""
    return all(value < 0 for value in sum_.values())


def ratio(node: ast.expr, unknown: str) -> tuple[Poly, Poly]:
    """A tree as one polynomial over another."""
    one: Poly = {0: {(): Fraction(1)}}
    match node:
        case ast.Name(id=name) if name == unknown:
            return {1: {(): Fraction(1)}}, one
        case ast.Constant(value=value):
            return {0: {(): Fraction(str(value))}}, one
        case ast.UnaryOp(operand=operand):
            top, bottom = ratio(operand, unknown)
            return plus({}, top, -1), bottom
        case ast.BinOp(left=left, op=ast.Add() | ast.Sub() as op, right=right):
            (a, b), (c, d) = ratio(left, unknown), ratio(right, unknown)
            sign = 1 if isinstance(op, ast.Add) else -1
            if b == d:
                return plus(a, c, sign), b
            return plus(times(a, d), times(c, b), sign), times(b, d)
        case ast.BinOp(left=left, op=ast.Mult(), right=right):
            (a, b), (c, d) = ratio(left, unknown), ratio(right, unknown)
            return times(a, c), times(b, d)
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            (a, b), (c, d) = ratio(left, unknown), ratio(right, unknown)
            return times(a, d), times(b, c)
        case ast.BinOp(left=base, op=ast.Pow(), right=ast.Constant(value=int(power))) if power >= 0:
            top, bottom = ratio(base, unknown)
            result_top, result_bottom = one, one
            for _ in range(power):
                result_top, result_bottom = times(result_top, top), times(result_bottom, bottom)
            return result_top, result_bottom
    if count(node, unknown):
        raise NotRearranged(f"{unknown} stands inside {written(node)} and elsewhere")
    return {0: {((written(node), Fraction(1)),): Fraction(1)}}, one


def plus(one: Poly, other: Poly, sign: int = 1) -> Poly:
    """The sum, or with sign -1 the difference, of two polynomials."""
    result: Poly = {power: dict(sum_) for power, sum_ in one.items()}
    for power, sum_ in other.items():
        into = result.setdefault(power, {})
        for monomial, value in sum_.items():
            into[monomial] = into.get(monomial, Fraction(0)) + sign * value
    cleaned = {p: {m: v for m, v in s.items() if v} for p, s in result.items()}
    return {power: sum_ for power, sum_ in cleaned.items() if sum_}


def times(one: Poly, other: Poly) -> Poly:
    """The product, multiplied out."""
    result: Poly = {}
    for power, sum_ in one.items():
        for power_2, sum_2 in other.items():
            product: Sum = {}
            for monomial, value in sum_.items():
                for monomial_2, value_2 in sum_2.items():
                    both = _joined(monomial, monomial_2)
                    product[both] = product.get(both, Fraction(0)) + value * value_2
            result = plus(result, {power + power_2: product})
    return result


def _joined(one: Monomial, other: Monomial) -> Monomial:
    powers = dict(one)
    for atom, power in other:
        powers[atom] = powers.get(atom, Fraction(0)) + power
    return tuple((atom, power) for atom, power in powers.items() if power)


def scaled(sum_: Sum, factor: int) -> Sum:
    """Every term multiplied by a whole number."""
    return {monomial: value * factor for monomial, value in sum_.items()}


def without_common(poly: Poly) -> Poly:
    """Divided by what every term holds: R*I + R*r = R*e needs no R."""
    every = [dict(monomial) for sum_ in poly.values() for monomial in sum_]
    common = {
        atom: min(powers[atom] for powers in every)
        for atom in (every[0] if every else {})
        if all(atom in powers for powers in every)
    }
    return {
        power: {
            tuple((a, p - common.get(a, 0)) for a, p in m if p != common.get(a, 0)): value for m, value in sum_.items()
        }
        for power, sum_ in poly.items()
    }


def tree(sum_: Sum) -> ast.expr:
    """A sum of monomials as a tree, with what all terms share taken out: m*(u - v)."""
    if not sum_:
        return number(0)
    every = [dict(monomial) for monomial in sum_]
    shared = {
        atom: min(powers[atom] for powers in every) for atom in every[0] if all(atom in powers for powers in every)
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
    above: list[ast.expr] = [] if value.numerator == 1 else [number(value.numerator)]
    below: list[ast.expr] = [] if value.denominator == 1 else [number(value.denominator)]
    for atom, power in powers.items():
        base = ast.parse(atom.replace("^", "**"), mode="eval").body
        size = abs(power)
        factor = base if size == 1 else ast.BinOp(base, ast.Pow(), ast.Constant(int(size)))
        (above if power > 0 else below).append(factor)
    return quotient(above, below)
