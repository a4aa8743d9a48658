"""Two equations with two unknowns: add, subtract, equate or substitute, as a teacher does on the board.

``together("T - f = m1*a", "m2*g - T = m2*a", "a", "T")`` adds the two, because T stands in them with
opposite signs, and gives ``m2*g - f = m1*a + m2*a``, from which a follows.
"""

from __future__ import annotations

import ast
from dataclasses import dataclass
from functools import lru_cache

from calc.language.expressions import equation
from calc.language.rearranging import Rearranged, rearranged
from calc.language.symbols import symbol
from calc.language.trees import NotRearranged, factors, quotient, terms, total, written


@dataclass(frozen=True)
class Together:
    """One equation made of two, without the quantity that was in both.

    law: the combined equation. method: 'add', 'subtract', 'equate', 'divide' or 'substitute'.
    why: why the other unknown drops out, in words. lines: what stands between the two equations and ``law``.
    found: ``law`` solved for the first unknown. back: the first equation solved for the other one.
    """

    law: str
    method: str
    why: str
    lines: tuple[str, ...]
    found: Rearranged
    back: Rearranged


@lru_cache(maxsize=256)
def together(first: str, second: str, find: str, drop: str) -> Together:
    """Combine two laws so that ``drop`` falls out, and solve for ``find``.

    Raises NotRearranged where neither adding, equating nor substituting frees ``find``.
    """
    for way in (_equated, _added, _divided, _substituted):
        combined = way(first, second, drop)
        if combined is None:
            continue
        law, method, why, lines = combined
        try:
            found = rearranged(law, find)
        except NotRearranged:
            continue
        return Together(law, method, why, lines, found, _solved_for(first, second, drop))
    raise NotRearranged(f"{first} and {second} do not give {find} without {drop}")


def _solved_for(first: str, second: str, name: str) -> Rearranged:
    try:
        return rearranged(first, name)
    except NotRearranged:
        return rearranged(second, name)


_Combined = tuple[str, str, str, tuple[str, ...]]


def _side_alone(law: str, name: str) -> str:
    """The other side of a law that has ``name`` alone on one side, else ''."""
    line = equation(law)
    for side, other in ((line.left, line.right), (line.right, line.left)):
        if isinstance(side.tree, ast.Name) and side.tree.id == name and name not in other.names:
            return written(other.tree)
    return ""


def _equated(first: str, second: str, drop: str) -> _Combined | None:
    one, two = _side_alone(first, drop), _side_alone(second, drop)
    if not one or not two:
        return None
    why = f"{symbol(drop).text} is the same in both equations, so the other sides are equal too."
    return f"{one} = {two}", "equate", why, ()


def _terms_of(law: str) -> tuple[list[tuple[int, ast.expr]], list[tuple[int, ast.expr]]]:
    line = equation(law)
    return terms(line.left.tree), terms(line.right.tree)


def _added(first: str, second: str, drop: str) -> _Combined | None:
    """Add or subtract where the same term with ``drop`` stands in both equations."""
    left, right = _terms_of(first)
    left_2, right_2 = _terms_of(second)
    mine = _only_term(left, right, drop)
    theirs = _only_term(left_2, right_2, drop)
    if mine is None or theirs is None or written(mine[1]) != written(theirs[1]):
        return None
    sign = -1 if mine[0] == theirs[0] else 1
    said = symbol(drop).text
    if sign > 0:
        why = f"{said} stands with opposite signs in the two equations: added, it drops out."
    else:
        why = f"{said} stands with the same sign in both equations: subtract one from the other and it drops out."
    sides = [
        [(s, term) for s, term in (*one, *((sign * s, term) for s, term in two)) if not _holds(term, drop)]
        for one, two in ((left, left_2), (right, right_2))
    ]
    law = f"{written(total(_cancelled(sides[0])))} = {written(total(_cancelled(sides[1])))}"
    return law, "add" if sign > 0 else "subtract", why, ()


def _cancelled(parts: list[tuple[int, ast.expr]]) -> list[tuple[int, ast.expr]]:
    """The terms without those that stand once with plus and once with minus."""
    kept: list[tuple[int, ast.expr]] = []
    for sign, term in parts:
        twin = next((k for k in kept if k[0] == -sign and ast.dump(k[1]) == ast.dump(term)), None)
        if twin is not None:
            kept.remove(twin)
        else:
            kept.append((sign, term))
    return kept


def _only_term(
    left: list[tuple[int, ast.expr]], right: list[tuple[int, ast.expr]], name: str
) -> tuple[int, ast.expr] | None:
    """The one term that holds ``name``, with its sign on the left side; None if there are more."""
    found = [(sign, term) for sign, term in left if _holds(term, name)]
    found += [(-sign, term) for sign, term in right if _holds(term, name)]
    return found[0] if len(found) == 1 else None


def _holds(node: ast.AST, name: str) -> bool:
    return any(isinstance(part, ast.Name) and part.id == name for part in ast.walk(node))


class _Put(ast.NodeTransformer):
    def __init__(self, name: str, tree: ast.expr) -> None:
        self.name, self.tree = name, tree

    def visit_Name(self, node: ast.Name) -> ast.expr:
        return self.tree if node.id == self.name else node


def _divided(first: str, second: str, drop: str) -> _Combined | None:
    """Divide one equation by the other where ``drop`` is a factor of both: T*sin(b) = F by T*cos(b) = m*g."""
    quotients = []
    for law in (first, second):
        line = equation(law)
        above, below = factors(line.left.tree)
        other_above, other_below = factors(line.right.tree)
        top, bottom = above + other_below, below + other_above
        if any(_holds(factor, drop) for factor in bottom):
            top, bottom = bottom, top
        mine = [f for f in top if isinstance(f, ast.Name) and f.id == drop]
        if len(mine) != 1 or any(_holds(f, drop) for f in (*top, *bottom) if f is not mine[0]):
            return None
        quotients.append(([f for f in top if f is not mine[0]], bottom))
    (top, bottom), (top_2, bottom_2) = quotients
    law = f"{written(_tangent(top, top_2))} = {written(quotient(bottom, bottom_2))}"
    why = f"{symbol(drop).text} is a factor of both equations: divide one by the other and it drops out."
    return law, "divide", why, ()


def _tangent(above: list[ast.expr], below: list[ast.expr]) -> ast.expr:
    """A quotient in which sine over cosine of one angle is written as its tangent."""
    pairs = (("sin", "cos", above, below), ("cos", "sin", above, below))
    for high, low, over, under in pairs:
        for one in over:
            twin = next(
                (
                    other
                    for other in under
                    if _called(one) == high
                    and _called(other) == low
                    and ast.dump(_argument(one)) == ast.dump(_argument(other))
                ),
                None,
            )
            if twin is not None:
                tangent = ast.Call(ast.Name("tan", ast.Load()), [_argument(one)], [])
                rest = [f for f in over if f is not one]
                rest_under = [f for f in under if f is not twin]
                if high == "sin":
                    return quotient([*rest, tangent], rest_under)
                return quotient(rest, [*rest_under, tangent])
    return quotient(above, below)


def _called(node: ast.expr) -> str:
    return node.func.id if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) else ""


def _argument(node: ast.expr) -> ast.expr:
    return node.args[0] if isinstance(node, ast.Call) else node


def _substituted(first: str, second: str, drop: str) -> _Combined | None:
    """Solve one equation for ``drop``, the one that gives the shorter line, and put it into the other."""
    ways = []
    for one, other in ((first, second), (second, first)):
        try:
            ways.append((rearranged(one, drop), other))
        except NotRearranged:
            continue
    if not ways:
        return None
    solved, into = min(ways, key=lambda way: len(way[0].how))
    tree = ast.parse(solved.how.replace("^", "**"), mode="eval").body
    line = equation(into)
    sides = []
    for side in (line.left, line.right):
        copy = ast.parse(side.source.replace("^", "**").strip(), mode="eval").body
        sides.append(written(_Put(drop, tree).visit(copy)))
    why = f"Write {symbol(drop).text} with the help of one equation and put it into the other: one unknown is left."
    return f"{sides[0]} = {sides[1]}", "substitute", why, (*solved.lines, solved.make)
