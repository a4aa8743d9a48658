"""Wrong beliefs in a learner's reasons: what is said of a thing, and not that it is not so.

Only words are compared. A sentence that denies a belief, asks "if" or tells what others think is taken as right; how
reasons are worded is common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from calc.model.questions import Misstatement

_SHORT = str.maketrans("₀₁₂₃₄₅₆₇₈₉’‘", "0123456789''", "_")
_TURNS = (
    (r"\b(is|are|was|were|do|does|did|has|have|had|would|will|could|should)n'?t\b", r"\1 not"),
    (r"\bca(?:nno|n'?)t\b", "can not"),
    (r"\bwon'?t\b", "will not"),
    (r"\bp\. ?d\.", "pd"),
    (r"'s\b", " s"),
    (r"(?<=\d)[.,](?=\d)", "·"),
    (r"[^\w·,.;:!?\n]+", " "),
    (r"([,.;:!?\n])", r" \1 "),
)
_SENTENCE = re.compile(r"[.;!?\n]")
_CLAUSE = re.compile(r"[,:]|\b(?:so|because|but|and|since|as|while|therefore|thus|hence|then)\b")
_DENIED = re.compile(
    r"\b(?:not|never|no|nor|neither|none|nobody|without|wrong|wrongly|false|untrue|mistake|misconception|myth|if|would"
    r"|instead of|rather than|people|learners|thinks?|thought|believes?)\b"
)
_TAKEN_BACK = re.compile(r"\b(?:is|that s|this s|it s|are) (?:wrong|false|not true|incorrect|untrue|a m\w+)\b")


def plain(text: str) -> str:
    """The text in small letters, with "not" for "n't" and one blank between words and signs."""
    told = text.casefold().translate(_SHORT)
    for turn, words in _TURNS:
        told = re.sub(turn, words, told)
    return re.sub(r"[ \t]+", " ", told).strip()


def misstatements_said(text: str, known: Sequence[Misstatement]) -> tuple[Misstatement, ...]:
    """Those of the known misstatements that the text says."""
    sentences = _SENTENCE.split(plain(text)) if known else []
    return tuple(one for one in known if any(_says(sentence.strip(), one) for sentence in sentences))


def _says(sentence: str, one: Misstatement) -> bool:
    if (one.unless and re.search(one.unless, sentence)) or _TAKEN_BACK.search(sentence):
        return False
    for pattern in one.says:
        for found in re.finditer(pattern, sentence):
            before = _CLAUSE.split(sentence[: found.start()])[-1]
            if not _DENIED.search(before):
                return True
    return False
