"""What is given of a free flight, in a question's own boxes: the flights it allows, or why it allows none.

Extra data are judged to 1 %: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from calc.model.directions import UP_DOWN
from calc.model.questions import Data, Refusal
from calc.topics.projectile.equations import Known, Pass, passes
from calc.working.working import measure

FASTER = (
    "Free fall never makes the upward velocity larger: the acceleration is downwards all the way. Check both velocities"
    " and their signs."
)
BELOW = "Never gets there: it moves downwards from the start, and the place lies above. Check the signs."
SLOWER = (
    "These values contradict each other: that far below the start it must be faster, at least {}. Check the velocity"
    " and the displacement."
)
NOWHERE = "Nothing happens: these values describe the moment of the start itself. Give a later moment."
CONTRADICT = "These values contradict each other: from the others the {} would be {}. Correct it, or leave a box empty."
BELIEVED = "utyv"  # of values that contradict each other the last of these is doubted first
FIT, ROUNDED = 0.01, 2
UNITS = {"u": "m·s⁻¹", "v": "m·s⁻¹", "y": "m", "t": "s"}


@dataclass(frozen=True)
class Boxes:
    """The boxes of a question by the letters u, v, y, t, and the words for each; ``height``: that of y holds how far
    the start lies above the end, a size."""

    names: Mapping[str, str]
    words: Mapping[str, str]
    height: bool = False

    def sign(self, name: str, way: int) -> int:
        """What makes a value of a box one with upwards positive. way: 1 where upwards is positive in the boxes."""
        if name == "t":
            return 1
        return -1 if name == "y" and self.height else way

    def known(self, data: Data, way: int) -> Known:
        """What is given, upwards positive."""
        given = {name: data.values[box] for name, box in self.names.items() if data.has(box)}
        return Known(**{name: value * self.sign(name, way) for name, value in given.items()})


def flights(data: Data, boxes: Boxes, way: int) -> tuple[Pass, ...]:
    """The flights that the data allow. Raises Refusal where there is none, or where values contradict each other."""
    given, g = boxes.known(data, way), data.settings.constant("g")
    names = given.names
    if len(names) < 2:
        return ()
    found = [passes(given.only(*pair), g) for pair in pairs(names)]
    if len(names) > 2:
        return (agreeing(data, boxes, given, [one for some in found for one in some]),)
    if not found[0]:
        raise refusal(data, boxes, given)
    return found[0]


def pairs(names: tuple[str, ...]) -> list[tuple[str, str]]:
    """Every two of the names; first those whose values are rather believed where one of more does not fit."""
    every = [(one, other) for n, one in enumerate(names) for other in names[n + 1 :]]
    return sorted(every, key=lambda pair: sorted((BELIEVED.index(name) for name in pair), reverse=True))


def agreeing(data: Data, boxes: Boxes, given: Known, found: list[Pass]) -> Pass:
    """The flight of some pair of data that fits all others within 1 % or their last figure; else a Refusal."""
    if not found:
        raise refusal(data, boxes, given)
    nearest = min(found, key=lambda one: len(astray(data, boxes, given, one)))
    off = astray(data, boxes, given, nearest)
    if not off:
        return nearest
    value = getattr(nearest, off[0])
    size = measure(abs(value), UNITS[off[0]], data.settings.style).text
    where = UP_DOWN.by_sign(value, "up") if off[0] != "t" and not (off[0] == "y" and boxes.height) else None
    said = f"{size} {where.words}" if where else size
    raise Refusal(boxes.names[off[0]], CONTRADICT.format(boxes.words[off[0]], said))


def astray(data: Data, boxes: Boxes, given: Known, one: Pass) -> list[str]:
    """The names of what is given and does not fit a flight."""
    off = []
    for name in given.names:
        typed, right, box = getattr(given, name), getattr(one, name), boxes.names[name]
        rounded = data.figures.get(box, 0) >= ROUNDED  # one figure, as in 2 s, is exact
        half = data.halves.get(box, 0.0) * (1 + 1e-9) if rounded else 0.0
        if abs(typed - right) > max(FIT * abs(right), half):
            off.append(name)
    return off


def refusal(data: Data, boxes: Boxes, given: Known) -> Refusal:
    """Why two values allow no flight."""
    style, g = data.settings.style, data.settings.constant("g")
    u, v, y = given.u, given.v, given.y
    place = boxes.names["y"]
    if u is not None and v is not None:
        return Refusal(boxes.names["v"], FASTER if u != v else NOWHERE)
    if u is not None and y is not None:
        if not u and not y:
            return Refusal(place, NOWHERE)
        if u <= 0:
            return Refusal(place, BELOW)
        top = measure(u * u / (2 * g), "m", style).text
        return Refusal(place, f"Never gets there; highest point is {top} above release. Check Δy and its sign.")
    if v is not None and y is not None and v * v + 2 * g * y < 0:
        return Refusal(boxes.names["v"], SLOWER.format(measure((-2 * g * y) ** 0.5, "m·s⁻¹", style).text))
    return Refusal(boxes.names["v"], FASTER)
