"""Changing the words of a plan, a figure or a sentence without touching its numbers, formulas and keys."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass, replace
from functools import lru_cache
from operator import is_
from typing import Any


def reworded[T](thing: T, change: Callable[[str], str]) -> T:
    """``thing`` with ``change`` done to every text in it.

    Goes through dataclasses, tuples and the results of functions; numbers and dicts stay as they are.
    """
    changed: T = _reworded(thing, change)
    return changed


def called[T](thing: T, names: Mapping[str, str]) -> T:
    """``thing`` with its bodies called otherwise, one and many: ``{"sphere": "bead"}``.

    Only whole words inside a text of several change: a word alone, or joined by a hyphen, is a key and stays.
    """
    return reworded(thing, _calling(tuple(names.items())))


@lru_cache(maxsize=16)
def _calling(pairs: tuple[tuple[str, str], ...]) -> Callable[[str], str]:
    """What calls the bodies of a text otherwise; it remembers, as the next plan of a question has most of its texts."""
    names = dict(pairs)
    words = "|".join(map(re.escape, names))
    mention = re.compile(rf"(?<![-\w])({words})(s?)(?![-\w])", re.IGNORECASE)

    def other(found: re.Match[str]) -> str:
        name = names[found[1].lower()] + found[2]
        return name[0].upper() + name[1:] if found[1][0].isupper() else name

    @lru_cache(maxsize=512)
    def change(text: str) -> str:
        return mention.sub(other, text) if " " in text else text

    return change


@lru_cache(maxsize=64)
def _field_names(kind: type) -> tuple[str, ...]:
    """Names of the fields of a dataclass; none for any other type."""
    return tuple(one.name for one in fields(kind)) if is_dataclass(kind) else ()


def _reworded(thing: Any, change: Callable[[str], str]) -> Any:
    if isinstance(thing, str):
        return change(thing)
    if thing is None or isinstance(thing, float | int):
        return thing
    if isinstance(thing, tuple):
        parts = [_reworded(part, change) for part in thing]
        if all(map(is_, parts, thing)):
            return thing
        return type(thing)(*parts) if hasattr(thing, "_fields") else tuple(parts)
    if names := _field_names(thing.__class__):
        changed = {}
        for name in names:
            part = getattr(thing, name)
            if (other := _reworded(part, change)) is not part:
                changed[name] = other
        return replace(thing, **changed) if changed else thing
    if callable(thing):
        return lambda *given: _reworded(thing(*given), change)
    return thing
