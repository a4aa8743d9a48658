"""The reader's decimal sign in sentences and figures.

Topics write numbers inside their words with a comma, whoever reads them. ``in_sign`` gives the
same plan, figure or sentence with the sign the reader chose, so that no topic asks which it is.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import fields, is_dataclass, replace
from typing import Any

_COMMA = re.compile(r"(?<=\d),(?=\d)")
_QUOTED = re.compile('(“[^”]*”|"[^"]*")')


def in_sign[T](thing: T, comma: bool) -> T:
    """``thing`` with every decimal comma in its texts as the reader's sign; unchanged for a comma.

    Goes through dataclasses, tuples and the results of functions; numbers and dicts stay as they are.
    """
    return thing if comma else _pointed(thing)


def sentence_in_sign(sentence: str, comma: bool) -> str:
    """A sentence to the reader, of which quoted text stays as it was typed."""
    if comma:
        return sentence
    pieces = _QUOTED.split(sentence)
    return "".join(
        piece if index % 2 else _COMMA.sub(".", piece) for index, piece in enumerate(pieces)
    )


def _pointed(thing: Any) -> Any:
    if isinstance(thing, str):
        return _COMMA.sub(".", thing)
    if isinstance(thing, tuple):
        parts = [_pointed(part) for part in thing]
        return type(thing)(*parts) if hasattr(thing, "_fields") else tuple(parts)
    if is_dataclass(thing) and not isinstance(thing, type):
        return replace(
            thing, **{one.name: _pointed(getattr(thing, one.name)) for one in fields(thing)}
        )
    if callable(thing):
        return _pointed_result(thing)
    return thing


def _pointed_result(made: Callable[..., Any]) -> Callable[..., Any]:
    return lambda *given: _pointed(made(*given))
