"""A law in the learner's own sentence: are the phrases that marks hang on there, in other words and order as well?

Only words are compared, so the learner has the last word and may tick a point all the same. Synonyms: common practice
of memos, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

# Words taken for one another; the first stands for all.
_SAME = (
    ("square", "squared", "squares", "²"),
    ("distance", "separation", "apart", "distances"),
    ("magnitude", "magnitudes", "size", "sizes", "strength"),
    ("proportional", "proportionally", "varies", "∝"),
    ("inversely", "inverse", "indirectly"),
    ("directly", "direct"),
    ("product", "multiplied"),
    ("charge", "charges"),
    ("force", "forces"),
    ("electrostatic", "electric", "electrical"),
    ("net", "resultant", "total", "unbalanced"),
    ("zero", "nought", "0"),
    ("sum", "addition", "added"),
    ("vector", "vectorial", "vectorially", "vectors"),
    ("each", "every", "all"),
    ("per", "for"),
    ("constant", "uniform", "unchanging"),
    ("same", "equal"),
    ("kinetic", "movement"),
)
_ONE = {word: words[0] for words in _SAME for word in words}
# What a phrase may leave out without losing its sense.
_FILLERS = frozenset(
    (
        *(
            "a",
            "an",
            "the",
            "of",
            "to",
            "in",
            "is",
            "are",
            "and",
            "on",
            "it",
            "its",
            "their",
            "them",
            "that",
            "by",
            "at",
        ),
        *(
            "be",
            "will",
            "magnitude",
            "body",
            "test",
            "directly",
            "electrostatic",
            "other",
            "you",
            "we",
            "there",
            "amount",
        ),
    )
)
_SLIPS = (
    ("square", "distance", "It is the square of the distance, not the distance itself."),
    ("product", "sum", "It is the product of the charges, not their sum."),
    ("product", "charge", "It is the product of the charges that counts: say so."),
)


def phrases_said(text: str, phrases: Sequence[str]) -> tuple[tuple[int, ...], tuple[str, ...]]:
    """The places of the phrases that ``text`` says, and a sentence for each known misstatement."""
    found, told = [], []
    for place, phrase in enumerate(phrases):
        wanted, part = set(_words(phrase)), _part(text, phrase)
        missing = wanted - _FILLERS - set(part)
        if "proportional" in _words(text):  # said once, it holds for both
            missing.discard("proportional")
        if not missing:
            found.append(place)
            continue
        slip = next((say for word, instead, say in _SLIPS if word in missing and instead in part), "")
        if slip:
            told.append(slip)
    return tuple(found), tuple(told)


def _words(text: str) -> list[str]:
    """The words in small letters, one for each group of synonyms; r² says "distance squared"."""
    plain = re.sub(r"\br\s*(?:²|\^\s*2)", " distance square ", text.casefold())
    return [_ONE.get(word, word) for word in re.findall(r"[^\W_]+|[²∝]", plain)]


def _part(text: str, phrase: str) -> list[str]:
    """Where in the sentence a phrase belongs: what is inversely proportional stands behind that word, the rest not."""
    words, wanted = _words(text), _words(phrase)
    if "proportional" not in wanted:
        return words
    turn = next((place for place, word in enumerate(words) if word == "inversely"), len(words))
    back = next((place for place, word in enumerate(words) if word == "directly" and place > turn), len(words))
    return words[turn:back] if "inversely" in wanted else words[:turn] + words[back:]
