"""Kirchhoff's equations of a network, solved for every junction: an independent check of what was combined."""

from __future__ import annotations

from collections.abc import Mapping

from calc.topics.circuits.network_live import Node


def junctions(root: Node) -> tuple[int, list[tuple[int, int, str]]]:
    """How many junctions there are (0: the negative terminal, 1: the positive one), and the parts between them."""
    between = list[tuple[int, int, str]]()
    count = 2

    def join(node: Node, a: int, b: int) -> None:
        nonlocal count
        if node.how == "one":
            between.append((a, b, node.R))
            return
        if node.how == "parallel":
            for part in node.parts:
                join(part, a, b)
            return
        at = a
        for n, part in enumerate(node.parts):
            if n == len(node.parts) - 1:
                join(part, at, b)
            else:
                end = count
                count += 1
                join(part, at, end)
                at = end

    join(root, 1, 0)
    return count, between


def solved(root: Node, ohms: Mapping[str, float], emf: float, inner: float) -> tuple[float, dict[str, float]]:
    """The current in the cell, and the p.d. across each part by the letter of its resistance.

    At each junction the currents add up to nothing; at the positive terminal also that from the cell.
    """
    count, between = junctions(root)
    size = count - 1  # the potential of junction 0 is 0
    rows = [[0.0] * (size + 1) for _ in range(size)]
    for a, b, name in between:
        g = 1 / ohms[name]
        for here, there in ((a, b), (b, a)):
            if here:
                rows[here - 1][here - 1] += g
                if there:
                    rows[here - 1][there - 1] -= g
    if inner > 0:
        rows[0][0] += 1 / inner
        rows[0][size] += emf / inner
    else:
        rows[0] = [1.0, *[0.0] * (size - 1), emf]
    potential = [0.0, *gauss(rows)]
    volts = {name: potential[a] - potential[b] for a, b, name in between}
    current = sum((potential[a] - potential[b]) / ohms[name] for a, b, name in between if a == 1)
    return current, volts


def gauss(rows: list[list[float]]) -> list[float]:
    """The solution of as many linear equations as unknowns, each row with its right side last.

    Raises ZeroDivisionError where there is none.
    """
    rows = [[*row] for row in rows]
    size = len(rows)
    for k in range(size):
        best = max(range(k, size), key=lambda n: abs(rows[n][k]))
        rows[k], rows[best] = rows[best], rows[k]
        for n in range(k + 1, size):
            f = rows[n][k] / rows[k][k]
            for m in range(k, size + 1):
                rows[n][m] -= f * rows[k][m]
    found = [0.0] * size
    for k in reversed(range(size)):
        found[k] = (rows[k][size] - sum(rows[k][m] * found[m] for m in range(k + 1, size))) / rows[k][k]
    return found
