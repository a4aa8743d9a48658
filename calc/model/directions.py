"""The kinds of direction an answer can have: a closed list, each with its words, synonyms and opposites.

A step names a kind and a key that follows from its values; readers' words are matched against
the kind, so no question lists synonyms of its own.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import lru_cache

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
    {"positive": ("positive", "positively", "plus", "+"), "negative": ("negative", "negatively", "minus", "−", "-")},
    signed=True,
)
SIGN_OF_WORK = Kind(
    "sign of work",
    (
        ("positive", "positive: the force transfers energy to the body"),
        ("negative", "negative: the force takes energy from the body"),
    ),
    (("positive", "negative"),),
    {"positive": ("plus", "+", "gains energy"), "negative": ("minus", "−", "-", "loses energy")},
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
        "attract": ("attraction", "attract", "attracts", "attracted", "attractive", "towards each other"),
        "repel": ("repulsion", "repel", "repels", "repelled", "repulsive", "away from each other"),
    },
)
ELECTRONS = Kind(
    "electrons too many or too few",
    (
        ("excess", "too many electrons: the charge is negative"),
        ("lacking", "too few electrons: the charge is positive"),
    ),
    (("excess", "lacking"),),
    {
        "excess": ("too many", "excess", "surplus", "gained", "extra"),
        "lacking": ("too few", "missing", "deficit", "lost"),
    },
)
LEFT_RIGHT = Kind(
    "left or right",
    (("right", "to the right"), ("left", "to the left")),
    (("right", "left"),),
    {
        "right": ("right", "rightwards", "rightward", "east", "eastwards", "+x", "along +x", "positive x"),
        "left": ("left", "leftwards", "leftward", "west", "westwards", "-x", "along −x", "negative x"),
    },
    signed=True,
)
UP_DOWN = Kind(
    "up or down",
    (("up", "upwards"), ("down", "downwards")),
    (("up", "down"),),
    {
        "up": ("up", "upward", "vertically upwards", "vertically up", "straight up", "+y", "along +y", "positive y"),
        "down": (
            "down",
            "downward",
            "vertically downwards",
            "vertically down",
            "straight down",
            "-y",
            "along −y",
            "negative y",
        ),
    },
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
        "up-slope": ("upslope", "up the incline", "up the plane", "uphill", "up"),
        "down-slope": ("downslope", "down the incline", "down the plane", "downhill", "down"),
    },
    signed=True,
)
AWAY_TOWARDS = Kind(
    "away from or towards",
    (("away", "away from the charge"), ("towards", "towards the charge")),
    (("away", "towards"),),
    {"away": ("away", "outwards", "outward"), "towards": ("towards", "toward", "inwards", "inward")},
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
ON_ARC = Kind(
    "along the arc of a swing",
    (("outwards", "outwards along the arc"), ("back", "back along the arc, towards the vertical")),
    (("outwards", "back"),),
    {
        "outwards": ("outward", "away from the vertical", "further out"),
        "back": ("inwards", "backwards", "towards the vertical"),
    },
    signed=True,
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
        "forwards": ("forward", "in the direction of motion", "in the original direction"),
        "backwards": ("backward", "opposite to the direction of motion", "in the opposite direction"),
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
PITCH = Kind(
    "higher or lower note",
    (("higher", "higher"), ("lower", "lower")),
    (("higher", "lower"),),
    {"higher": ("raised", "rises"), "lower": ("lowered", "falls", "drops")},
    signed=True,
)
SIDE_OF_END = Kind(
    "values above or below an end",
    (("more", "all values above this one"), ("less", "all values below this one")),
    (("more", "less"),),
    {
        "more": ("greater", "larger", "above", "at least", "longer", "farther", "further"),
        "less": ("smaller", "below", "at most", "shorter", "nearer"),
    },
)
KINDS = (
    SIGN_OF_CHARGE,
    SIGN_OF_WORK,
    ATTRACTION,
    ELECTRONS,
    LEFT_RIGHT,
    UP_DOWN,
    FOUR_WAYS,
    ALONG_SLOPE,
    AWAY_TOWARDS,
    ALONG_THREAD,
    ON_ARC,
    FROM_SLOPE,
    CLOCKWISE,
    ALONG_X,
    ALONG_Y,
    NET_ON_LINE,
    NET_IN_PLANE,
    FORWARDS,
    COMPASS,
    IN_OUT,
    PITCH,
    SIDE_OF_END,
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


def meant(said: str, options: Mapping[str, str]) -> str | None:
    """The one of ``options`` (words by key) that a reader's words name: itself, its words or a part of them, a
    synonym, alone or in a sentence, or the same for each part of "right-up" in any order. None where none does, or
    several do."""
    tokens = _tokens(said)
    if not tokens or _UNSURE & set(tokens):
        return None
    if "right-up" in options:  # a map: north is up
        tokens = [point for word in tokens for point in _COMPASS.get(word, (word,))]
    names = {key: {tuple(_tokens(name)) for name in (*_names(key), *_pieces(words))} for key, words in options.items()}
    whole = {key for key, called in names.items() if tuple(tokens) in called}
    if whole:
        return whole.pop() if len(whole) == 1 else None
    plain = {part for key in options for part in key.split("-")} & _SINGLE
    named = {part for part in plain if _holds(tokens, {tuple(_tokens(name)) for name in _names(part)})}
    parts = {key for key in options if len(named) > 1 and set(key.split("-")) == named}
    if parts:
        return parts.pop() if len(parts) == 1 else None
    found = {key for key, called in names.items() if _holds(tokens, called)}
    found = found or {key for key, words in options.items() if _holds(_tokens(words), {tuple(tokens)})}
    return found.pop() if len(found) == 1 else None


_COMPASS = {
    "north": ("up",),
    "south": ("down",),
    "northeast": ("up", "right"),
    "northwest": ("up", "left"),
    "southeast": ("down", "right"),
    "southwest": ("down", "left"),
}
_UNSURE = {"or", "not", "no", "either", "neither", "?"}
# Words that say nothing of which way: "it moves in the direction of the left" is "left".
_FILLERS = frozenset(("the", "to", "in", "of", "it", "is", "they", "and", "direction", "axis", "at", "along", "with"))


def _tokens(text: str) -> list[str]:
    """The words that count, in small letters and signs of the keyboard."""
    plain = text.casefold().replace("−", "-").replace("–", "-")
    return [word for word in re.findall(r"[+-][xy](?![a-z])|[^\W\d_]+|[+-]|\?", plain) if word not in _FILLERS]


def _pieces(words: str) -> Iterable[str]:
    """An option's words, and what stands before and after its colon: "along +x: to the right"."""
    return (words, *words.split(":")) if ":" in words else (words,)


def _holds(tokens: list[str], names: set[tuple[str, ...]]) -> bool:
    """Whether one of the names stands somewhere among the words."""
    return any(
        tuple(tokens[start : start + len(name)]) == name
        for name in names
        if name and name not in _SIGNS_ALONE
        for start in range(len(tokens) - len(name) + 1)
    )


_SIGNS_ALONE = {("+",), ("-",)}
_SINGLE = frozenset(("right", "left", "up", "down"))


@lru_cache(maxsize=256)
def _names(key: str) -> frozenset[str]:
    """What a key is called in any kind."""
    words = [text for kind in KINDS for option, text in kind.options if option == key]
    return frozenset((key, *words, *(s for kind in KINDS for s in kind.synonyms.get(key, ()))))
