"""The kinds of direction an answer can have: a closed list, each with its words, synonyms and opposites.

A step names a kind and a key that follows from its values; readers' words are matched against
the kind, so no question lists synonyms of its own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

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
KINDS = (
    SIGN_OF_CHARGE,
    ATTRACTION,
    ELECTRONS,
    LEFT_RIGHT,
    UP_DOWN,
    FOUR_WAYS,
    ALONG_SLOPE,
    AWAY_TOWARDS,
    CLOCKWISE,
    ALONG_X,
    ALONG_Y,
    FORWARDS,
)
