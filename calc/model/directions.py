"""The kinds of direction an answer can have: a closed list, each with its words, synonyms and opposites.

A step names a kind and a key that follows from its values; readers' words are matched against
the kind, so no question lists synonyms of its own.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from itertools import permutations

from calc.model.answers import Direction


@dataclass(frozen=True)
class Kind:
    """One kind of direction.

    options: (key, words) pairs. opposites: pairs of keys. synonyms: further words by key.
    signed: once a positive direction is stated, a sign may stand for the words.
    """

    name: str
    options: tuple[tuple[str, str], ...]
    opposites: tuple[tuple[str, str], ...]
    synonyms: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    signed: bool = False

    def of(self, key: str) -> Direction:
        """The direction ``key``; KeyError names the keys there are."""
        words = dict(self.options)
        if key not in words:
            raise KeyError(f"{self.name} has no {key!r}; it has {', '.join(words)}")
        return Direction(key, words[key], self.options)

    def worded(self, **words: str) -> Kind:
        """The same kind where a question has words of its own for its keys."""
        return replace(self, options=tuple((key, words.get(key, usual)) for key, usual in self.options))

    def opposite(self, key: str) -> str:
        """The key that is ``key`` turned round."""
        for one, other in self.opposites:
            if key in (one, other):
                return other if key == one else one
        raise KeyError(f"{self.name}: {key!r} has no opposite")

    def by_sign(self, value: float, positive: str) -> Direction | None:
        """The direction of a signed value where ``positive`` is the positive direction; None for zero."""
        if value == 0:
            return None
        return self.of(positive if value > 0 else self.opposite(positive))


SIGN_OF_CHARGE = Kind(
    "sign of a charge",
    (("positive", "positive charge"), ("negative", "negative charge")),
    (("positive", "negative"),),
    {"positive": ("positive", "plus", "+"), "negative": ("negative", "minus", "−", "-")},
    signed=True,
)
ATTRACTION = Kind(
    "attraction or repulsion",
    (
        ("attract", "attraction: each is pulled towards the other"),
        ("repel", "repulsion: each is pushed away from the other"),
    ),
    (("attract", "repel"),),
    {
        "attract": ("attraction", "attract", "attractive", "towards each other"),
        "repel": ("repulsion", "repel", "repulsive", "away from each other"),
    },
)
ELECTRONS = Kind(
    "electrons too many or too few",
    (
        ("excess", "too many electrons: the charge is negative"),
        ("lacking", "too few electrons: the charge is positive"),
    ),
    (("excess", "lacking"),),
    {"excess": ("too many", "excess", "surplus"), "lacking": ("too few", "missing", "deficit")},
)
LEFT_RIGHT = Kind(
    "left or right",
    (("right", "to the right"), ("left", "to the left")),
    (("right", "left"),),
    {"right": ("right", "rightwards", "east"), "left": ("left", "leftwards", "west")},
    signed=True,
)
UP_DOWN = Kind(
    "up or down",
    (("up", "upwards"), ("down", "downwards")),
    (("up", "down"),),
    {"up": ("up", "upward", "vertically upwards"), "down": ("down", "downward", "vertically downwards")},
    signed=True,
)
FOUR_WAYS = Kind(
    "left, right, up or down",
    (*LEFT_RIGHT.options, *UP_DOWN.options),
    (*LEFT_RIGHT.opposites, *UP_DOWN.opposites),
    {**LEFT_RIGHT.synonyms, **UP_DOWN.synonyms},
)
ALONG_SLOPE = Kind(
    "along a slope",
    (("up-slope", "up the slope"), ("down-slope", "down the slope")),
    (("up-slope", "down-slope"),),
    {
        "up-slope": ("upslope", "up the incline", "up the plane"),
        "down-slope": ("downslope", "down the incline", "down the plane"),
    },
    signed=True,
)
AWAY_TOWARDS = Kind(
    "away from or towards",
    (("away", "away from the charge"), ("towards", "towards the charge")),
    (("away", "towards"),),
    {"away": ("away", "outwards"), "towards": ("towards", "toward", "inwards")},
)
ALONG_THREAD = Kind(
    "along a thread, down or sideways",
    (
        ("away", "along the line of the thread, away from the support"),
        ("to", "along the line of the thread, towards the support"),
        ("down", "straight down"),
        ("sideways", "horizontally"),
    ),
    (("away", "to"),),
    {
        "away": ("away from the support",),
        "to": ("towards the support", "to the support"),
        "down": ("vertically downwards", "downwards"),
        "sideways": ("horizontal", "to the side"),
    },
)
FROM_SLOPE = Kind(
    "away from a slope or into it",
    (
        ("away", "at right angles to the slope, away from it"),
        ("into", "at right angles to the slope, into it"),
    ),
    (("away", "into"),),
    {"away": ("away from the slope", "out of the slope"), "into": ("into the slope", "towards the slope")},
)
CLOCKWISE = Kind(
    "clockwise or anticlockwise",
    (("clockwise", "clockwise"), ("anticlockwise", "anticlockwise")),
    (("clockwise", "anticlockwise"),),
    {"anticlockwise": ("counterclockwise", "counter-clockwise")},
)
ALONG_X = Kind(
    "sign of a component along x",
    (("positive", "along +x: to the right"), ("negative", "along −x: to the left")),
    (("positive", "negative"),),
    signed=True,
)
ALONG_Y = Kind(
    "sign of a component along y",
    (("positive", "along +y: upwards"), ("negative", "along −y: downwards")),
    (("positive", "negative"),),
    signed=True,
)
NO_WAY = ("none", "no direction: the net force is zero")
NET_ON_LINE = Kind(
    "left, right or no net force",
    (*LEFT_RIGHT.options[::-1], NO_WAY),
    LEFT_RIGHT.opposites,
    LEFT_RIGHT.synonyms,
)
NET_IN_PLANE = Kind(
    "in a plane, or no net force",
    (
        ("right", "to the right: along +x"),
        ("right-up", "to the right and up: above the +x axis"),
        ("up", "upwards: along +y"),
        ("left-up", "to the left and up: above the −x axis"),
        ("left", "to the left: along −x"),
        ("left-down", "to the left and down: below the −x axis"),
        ("down", "downwards: along −y"),
        ("right-down", "to the right and down: below the +x axis"),
        NO_WAY,
    ),
    (*FOUR_WAYS.opposites, ("right-up", "left-down"), ("left-up", "right-down")),
    FOUR_WAYS.synonyms,
)
FORWARDS = Kind(
    "forwards or backwards",
    (("forwards", "forwards"), ("backwards", "backwards")),
    (("forwards", "backwards"),),
    {
        "forwards": ("forward", "in the direction of motion"),
        "backwards": ("backward", "opposite to the direction of motion"),
    },
    signed=True,
)
COMPASS = Kind(
    "compass",
    (("north", "north"), ("south", "south"), ("east", "east"), ("west", "west")),
    (("north", "south"), ("east", "west")),
    {
        "north": ("northwards", "due north"),
        "south": ("southwards", "due south"),
        "east": ("eastwards", "due east"),
        "west": ("westwards", "due west"),
    },
)
IN_OUT = Kind(
    "into or out of the page",
    (("in", "into the page"), ("out", "out of the page")),
    (("in", "out"),),
    {"in": ("into", "inwards"), "out": ("outwards",)},
)
KINDS = (
    SIGN_OF_CHARGE,
    ATTRACTION,
    ELECTRONS,
    LEFT_RIGHT,
    UP_DOWN,
    FOUR_WAYS,
    ALONG_SLOPE,
    AWAY_TOWARDS,
    ALONG_THREAD,
    FROM_SLOPE,
    CLOCKWISE,
    ALONG_X,
    ALONG_Y,
    NET_ON_LINE,
    NET_IN_PLANE,
    FORWARDS,
    COMPASS,
    IN_OUT,
)


def turned_round(one: str, other: str) -> bool:
    """Whether two keys are opposite: as a pair of some kind, or part by part ("right-up" and "left-down")."""
    if any({one, other} == set(pair) for kind in KINDS for pair in kind.opposites):
        return True
    parts, others = one.split("-"), other.split("-")
    return len(parts) == len(others) > 1 and all(map(turned_round, parts, others))


def turned(way: Direction) -> Direction:
    """The option that is ``way`` turned round; ``way`` itself where none is (a place between two charges)."""
    others = [option for option in way.options if option[0] != way.key]
    for key, words in others:
        if turned_round(key, way.key) or len(way.options) == 2:
            return Direction(key, words, way.options, None if way.angle is None else (way.angle + 180) % 360)
    return way


def meant(said: str, keys: Iterable[str]) -> str | None:
    """The one of ``keys`` that a reader's words name: itself, its words, a synonym, or the same for each part of
    "right-up" in any order. None where none does, or several do."""
    found = [key for key in keys if said.casefold() in _names(key) or _in_parts(said, key)]
    return found[0] if len(found) == 1 else None


def _names(key: str) -> set[str]:
    """What a key is called in any kind, in small letters."""
    words = [text for kind in KINDS for option, text in kind.options if option == key]
    return {name.casefold() for name in (key, *words, *(s for kind in KINDS for s in kind.synonyms.get(key, ())))}


def _in_parts(said: str, key: str) -> bool:
    """Whether the words name every part of a key of two parts: "up and to the right" for "right-up"."""
    parts = key.split("-")
    words = [word for word in re.split(r"\s+and\s+|\s*,\s*", said.casefold()) if word]
    single = {option for kind in KINDS for option, _ in kind.options}
    if not single.issuperset(parts) or not len(words) == len(parts) > 1:
        return False
    return any(
        all(word in _names(part) for word, part in zip(words, order, strict=True)) for order in permutations(parts)
    )
