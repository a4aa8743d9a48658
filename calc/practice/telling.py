"""Words that say which of two directions or signs: what a hint may not say of an answer."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass

type Opposites = tuple[str, str]  # both, as a question asks for them


@dataclass(frozen=True)
class Side:
    """One of two opposites; second: whether it is the second of them."""

    pair: Opposites
    second: bool

    @property
    def question(self) -> str:
        """Both opposites, the answer left open: "positive or negative"."""
        return " or ".join(self.pair)


# By opposites, as a question asks for them, the words that name either.
_NAMED = {
    ("left", "right"): ("left", "right"),
    ("up", "down"): ("up upwards upward", "down downwards downward"),
    ("above", "below"): ("above", "below"),
    ("attract", "repel"): ("attract attracts attraction attractive", "repel repels repulsion repulsive"),
    ("positive", "negative"): ("positive", "negative"),
    ("towards", "away"): ("towards", "away"),
    ("too many", "too few"): ("many excess gained gains", "few lacking lost loses"),
}
_SIDES = {
    word: Side(pair, second == 1)
    for pair, both in _NAMED.items()
    for second, words in enumerate(both)
    for word in words.split()
}
# Where such a word tells no direction or sign of an answer.
_GENERAL = re.compile(r"positive test charge|right angles?|right-angled|tak(?:es?|ing) away|counted positive")


def sides(words: str) -> set[Side]:
    """The sides that are named, without the pairs of which both are."""
    named = re.findall(r"[a-z]+", _GENERAL.sub(" ", words.lower()))
    found = {_SIDES[word] for word in named if word in _SIDES}
    return {side for side in found if Side(side.pair, not side.second) not in found}


def without(words: str, secret: Collection[Opposites]) -> str:
    """The sentences, each up to the clause that names one of two secret opposites; one that begins so is left out."""
    kept = []
    for sentence in re.split(r"(?<=[.?!]) ", words):
        clauses = re.split(r"(?<=[:;,]) ", sentence)
        open_ = next(
            (n for n, clause in enumerate(clauses) if any(side.pair in secret for side in sides(clause))),
            len(clauses),
        )
        if open_ == len(clauses):
            kept.append(sentence)
        elif open_:
            kept.append(" ".join(clauses[:open_]).rstrip(":;,") + ".")
    return " ".join(kept)
