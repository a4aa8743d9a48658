"""The forms of laws as a data sheet prints them: each once, in one letter for the displacement."""

from __future__ import annotations

import re
from collections.abc import Iterable

from calc.model.answers import Law

DISPLACEMENT = re.compile(r"\b(?:s|Deltax|Deltay)\b")


def forms(laws: Iterable[Law]) -> dict[Law, tuple[str, ...]]:
    """The laws that have forms, each with those that no law before it has.

    A law is left out where another has all of its forms and more: a sheet has the equations of motion once, whichever
    letter the displacement has.
    """
    each = {law: {alike(form) for form in law.formulas} for law in dict.fromkeys(laws) if law.formulas}
    whole = [law for law, has in each.items() if not any(has < other for other in each.values())]
    printed, found = set[str](), dict[Law, tuple[str, ...]]()
    for law in whole:
        fresh = tuple(form for form in law.formulas if alike(form) not in printed)
        printed |= each[law]
        if fresh:
            found[law] = fresh
    return found


def alike(form: str) -> str:
    """What a form has in common with those that differ from it in the letter of the displacement alone."""
    return DISPLACEMENT.sub("s", form)
