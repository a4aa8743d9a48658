"""The reader's decimal sign in sentences and figures.

Topics write numbers inside their words with a comma, whoever reads them. ``in_sign`` gives the
same plan, figure or sentence with the sign the reader chose, so that no topic asks which it is.
"""

from __future__ import annotations

import re

from calc.language.wording import reworded

_COMMA = re.compile(r"(?<=\d),(?=\d)")
_QUOTED = re.compile('(“[^”]*”|"[^"]*")')


def in_sign[T](thing: T, comma: bool) -> T:
    """``thing`` with every decimal comma in its texts as the reader's sign; unchanged for a comma."""
    return thing if comma else reworded(thing, _pointed)


def sentence_in_sign(sentence: str, comma: bool) -> str:
    """A sentence to the reader, of which quoted text stays as it was typed."""
    if comma:
        return sentence
    pieces = _QUOTED.split(sentence)
    return "".join(piece if index % 2 else _pointed(piece) for index, piece in enumerate(pieces))


def _pointed(text: str) -> str:
    return _COMMA.sub(".", text)
