"""Bodies on one vertical line: where they start and where they are later, with velocities and heights."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, NamedTuple

from calc.figures import words
from calc.figures.bodies import Ball
from calc.figures.figure import VELOCITY, Figure, Tells
from calc.figures.pieces import Arrow, Dimension, Item, Surface

RADIUS = 0.8
ARROW = 1.6  # length of a velocity arrow, in lines
TALL = 9.0  # from the lowest place to the highest, in lines
HEIGHTS = "Heights not to scale."
ASIDE = 6.4  # from one line to the next


class Place(NamedTuple):
    """A body at a place of a vertical line.

    label: of the body; without one it is told as the one at the bottom, where its height is zero. height: of the place,
    in any unit. velocity: the label of its arrow, none if empty; up: its sense, None for a body at rest. line: 0 for
    the line on the left, 1 for the next, and so on. shows: names of the values its arrow tells of, besides the one of
    its label. spot: the label is that of the place, not of the body.
    """

    label: str
    height: float
    velocity: str = ""
    up: bool | None = None
    line: int = 0
    shows: tuple[str, ...] = ()
    spot: bool = False

    @property
    def called(self) -> str:
        """What it is called in a sentence."""
        if not self.label:
            return "body above the bottom" if self.height > 0 else "body at the bottom"
        return f"body at {self.label}" if self.spot else f"body {self.label}"


class Height(NamedTuple):
    """A distance marked between two heights, beside a line; label: its name."""

    low: float
    high: float
    label: str
    line: int = 0
    shows: tuple[str, ...] = ()


def _places(heights: Sequence[float]) -> dict[float, float]:
    """Where each height is drawn: in their order, none nearer to the next than two bodies need."""
    levels = sorted(set(heights))
    low, high = levels[0], levels[-1]
    drawn, last = dict[float, float](), -3.0
    for level in levels:
        even = (level - low) / (high - low) * TALL if high > low else 0.0
        last = max(even, last + 3.0)
        drawn[level] = last
    return drawn


def vertical(
    places: Sequence[Place],
    heights: Sequence[Height] = (),
    *,
    positive: Literal["up", "down"] = "up",
    ground: float | None = None,
    title: str = "The line of the motion",
    notes: Sequence[str] = (),
    drawn_from: tuple[str, ...] = (),
) -> Figure:
    """A vertical line or several side by side, each with its bodies; the positive direction is stated.

    ground: the height of the ground, drawn below everything. Raises ValueError where there is no body.
    """
    if not places:
        raise ValueError("A sketch needs a body: give it a place.")
    levels = [one.height for one in places] + [end for one in heights for end in (one.low, one.high)]
    drawn = _places([*levels, *([] if ground is None else [ground])])
    feet = drawn  # where a height is measured from: on the ground itself, not in the middle of a body on it
    items: list[Item] = []
    right = max(one.line for one in places) * ASIDE
    if ground is not None:
        floor = drawn[ground] - RADIUS
        items.append(Surface((-4.0, floor), (right + 4.4, floor)))
        feet = {**drawn, ground: floor}
    tells = list[Tells]()
    for one in places:
        x, y = one.line * ASIDE, drawn[one.height]
        items.append(Ball((x, y), RADIUS, one.label))
        if one.velocity and one.up is not None:
            half = ARROW / 2 if one.up else -ARROW / 2
            items.append(
                Arrow(
                    (x + 1.5, y - half),
                    (x + 1.5, y + half),
                    one.velocity,
                    "velocity",
                    label_at="middle",
                    shows=one.shows,
                )
            )
        tells.append(_told(one))
    for gap in heights:
        x = gap.line * ASIDE
        items.append(Dimension((x, feet[gap.low]), (x, feet[gap.high]), gap.label, 2.0, 1.0, shows=gap.shows))
    top = max(drawn.values())
    way = 1.2 if positive == "up" else -1.2
    x = right + 5.0
    items.append(Arrow((x, top / 2 - way), (x, top / 2 + way), "+", "axis"))
    said = [one.sentence for one in tells]
    for gap in heights:
        sentence = f"The distance {words.plain(gap.label)} is marked beside the line."
        tells.append(Tells(sentence, tuple(sorted(words.names_in(gap.label) | set(gap.shows)))))
        said.append(sentence)
    fast = any(isinstance(item, Arrow) and item.kind == "velocity" for item in items)
    return Figure(
        title,
        " ".join([*said, f"The positive direction is {positive}wards."]),
        tuple(items),
        (*((VELOCITY,) if fast else ()), HEIGHTS, *notes),
        unit=1.0,
        drawn_from=drawn_from,
        tells=tuple(one for one in tells if one.names),
    )


def _told(one: Place) -> Tells:
    """What is said of a body, and what is left where its velocity is to be found."""
    still = f"There is a {one.called}."
    if not one.velocity or one.up is None:
        return Tells(still, ())
    names = tuple(sorted(words.names_in(one.velocity) | set(one.shows)))
    way = "upwards" if one.up else "downwards"
    return Tells(f"The {one.called} moves {way} with {words.plain(one.velocity)}.", names, still)
