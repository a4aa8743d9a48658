"""Formulas for the data sheet of a paper, from the laws the questions' steps declare.

A step's law names its own bodies (``F_21 = k*Q2*Q1/r_12^2``). A data sheet prints the same once,
with plain symbols: ``F = k*Q1*Q2/r^2``. Sums and balances of one situation are the learner's work
and are left out.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from calc.model.constants import SHEET

_NAME = re.compile(r"([A-Za-z]+?)\d*(?:_\w+)?")
_FACTOR = re.compile(r"([A-Za-z]\w*)(?:\^(\d))?")
_KEPT = ("F_net",)  # the net force of the second law is not any force


def general(law: str) -> str | None:
    """``law`` with plain symbols, or None when it is no product or quotient of quantities."""
    left, _, right = law.replace(" ", "").partition("=")
    above, _, below = right.partition("/")
    top, bottom = _factors(above), _factors(below) if below else []
    if not re.fullmatch(r"\w+", left) or top is None or bottom is None:
        return None
    made = left if left in _KEPT else _plain(left)
    if _plain(left) in {name for name, _ in top + bottom}:
        return None  # the same quantity before and after: a comparison
    if len(top) + len(bottom) < 2:
        return None
    names = [name for name, power in top for _ in range(power)]
    numbered = [
        f"{name}{names[: place + 1].count(name)}" if names.count(name) > 1 else name
        for place, name in enumerate(names)
    ]
    under = "*".join(f"{name}^{power}" if power > 1 else name for name, power in bottom)
    return f"{made} = {'*'.join(numbered)}" + (f"/{under}" if under else "")


def formulas(laws: Iterable[str]) -> tuple[str, ...]:
    """The general form of each law once, in the order of first use.

    Of forms that differ in one symbol only (``E = F/q``, ``E = F/e``) one is kept, the one without a constant first.
    """
    found = list(dict.fromkeys(form for law in laws if (form := general(law))))
    ranked = sorted(
        found, key=lambda form: ("_net" not in form, len(set(_names(form)) & set(SHEET)))
    )
    kept: list[str] = []
    for form in ranked:
        if not any(_alike(form, other) for other in kept):
            kept.append(form)
    return tuple(form for form in found if form in kept)


def _names(form: str) -> list[str]:
    return re.findall(r"[A-Za-z]\w*", form)


def _alike(form: str, other: str) -> bool:
    """Whether two forms are built alike and differ in at most one symbol."""
    here, there = _names(form), _names(other)
    built = re.sub(r"[A-Za-z]\w*", "x", form) == re.sub(r"[A-Za-z]\w*", "x", other)
    return built and sum(a != b for a, b in zip(here, there, strict=True)) <= 1


def _plain(name: str) -> str:
    found = _NAME.fullmatch(name.removeprefix("Delta"))
    return found[1] if found else name


def _factors(product: str) -> list[tuple[str, int]] | None:
    """Names and powers of a plain product; None for anything else."""
    found = [_FACTOR.fullmatch(piece) for piece in product.split("*")]
    if not all(found):
        return None
    return [(_plain(match[1]), int(match[2] or 1)) for match in found if match]
