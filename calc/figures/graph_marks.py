"""What is marked on a graph: key points, shaded areas, slope triangles."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from calc.figures import words
from calc.figures.graph_words import at as told_at
from calc.figures.graph_words import short
from calc.figures.pieces import Dot, Item, Point, Segment, Shade

type Place = Callable[[float, float], Point]


def _names(shows: tuple[str, ...], *labels: str) -> tuple[str, ...]:
    return tuple(sorted(set(shows).union(*(words.names_in(label) for label in labels))))


class Key(NamedTuple):
    """A point of a line with its name and dashed guides to the axes.

    The labels stand where the guides meet the x and the y axis.
    """

    x: float
    y: float
    label: str = ""
    x_label: str = ""
    y_label: str = ""
    shows: tuple[str, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Every value it tells of."""
        return _names(self.shows, self.label, self.x_label, self.y_label)

    @property
    def words(self) -> str:
        """The point in a sentence."""
        values = [words.plain(label) for label in (self.x_label, self.y_label) if label]
        name = words.plain(self.label) or "A point"
        return f"{name} is marked at {told_at((self.x, self.y))}{': ' + words.listing(values) if values else ''}."

    def drawn(self, place: Place, axes: Point) -> list[Item]:
        """The dot and its guides; `axes` are the x of the y axis and the y of the x axis."""
        here, across, down = place(self.x, self.y), place(axes[0], self.y), place(self.x, axes[1])
        guides: list[Item] = [
            Segment(here, foot, "construction", label, shows=self.names)
            for foot, label in ((down, self.x_label), (across, self.y_label))
            if foot != here
        ]
        return [*guides, Dot(here, self.label, 0.18, shows=self.names)]


class Area(NamedTuple):
    """The area between the points of a line and the x axis, shaded."""

    points: Sequence[Point]
    label: str = ""
    shows: tuple[str, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Every value it tells of."""
        return _names(self.shows, self.label)

    @property
    def words(self) -> str:
        """The area in a sentence."""
        name = f", {words.plain(self.label)}," if self.label else ""
        return (
            f"The area between the line and the axis{name} is shaded from {short(self.points[0][0])} to"
            f" {short(self.points[-1][0])}."
        )

    def drawn(self, place: Place, axes: Point) -> list[Item]:
        """The shaded outline."""
        first, last = self.points[0][0], self.points[-1][0]
        outline = [(first, axes[1]), *self.points, (last, axes[1])]
        return [Shade(tuple(place(x, y) for x, y in outline), self.label, shows=self.names)]


class Gradient(NamedTuple):
    """The triangle whose sides are the changes along the axes between two points of a line."""

    start: Point
    end: Point
    x_label: str = "Δx"
    y_label: str = "Δy"
    shows: tuple[str, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Every value it tells of."""
        return _names(self.shows, self.x_label, self.y_label)

    @property
    def words(self) -> str:
        """The triangle in a sentence."""
        return (
            f"A slope triangle with the sides {words.plain(self.x_label)} and {words.plain(self.y_label)} "
            f"stands between {told_at(self.start)} and {told_at(self.end)}."
        )

    def drawn(self, place: Place, axes: Point) -> list[Item]:
        """Its two sides."""
        start, corner, end = place(*self.start), place(self.end[0], self.start[1]), place(*self.end)
        return [
            Segment(start, corner, "construction", self.x_label, shows=self.names),
            Segment(corner, end, "construction", self.y_label, shows=self.names),
        ]
