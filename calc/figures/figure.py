"""A figure: its pieces, its words, and what of it a reader may see who is to find something."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, field, replace
from math import isfinite
from typing import NamedTuple

from calc.figures.pieces import Arrow, Curve, Item, Segment, Surface, Text
from calc.figures.words import plain

VELOCITY = "Hollow heads: velocities, not forces; lengths not to scale."
ARROW_NOTES = ("Arrows", "Dashed", "Only ", "Hollow heads")  # beginnings of notes about arrows


class Tells(NamedTuple):
    """A sentence of a description, or a note, that tells of the values of these names.

    `instead` takes its place for a reader who is to find one of them.
    """

    sentence: str
    names: tuple[str, ...]
    instead: str = ""


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing as data.

    `description` is the text alternative: what a reader who cannot see the
    drawing needs. `notes` are printed below it ("Not to scale."). `width`
    and `height` bound the drawing on the page, in lines of label text; `unit`
    is the largest drawn size of one world unit, in lines (0: no limit).
    `drawn_from` names the values that set its shape (an angle drawn true,
    distances to scale): whoever is asked for one of them may not see it at all.
    `tells` are the sentences of the description and notes that tell of a value.
    `table` says the same in numbers, heads first, for whoever would rather read
    than look; it goes with the first value that is hidden.

    Raises ValueError if the title or description is blank, if there is
    nothing to draw, or if a coordinate is not a finite number.
    """

    title: str
    description: str
    items: tuple[Item, ...]
    notes: tuple[str, ...] = ()
    width: float = field(default=22.0, kw_only=True)
    height: float = field(default=17.0, kw_only=True)
    unit: float = field(default=0.0, kw_only=True)
    drawn_from: tuple[str, ...] = field(default=(), kw_only=True)
    tells: tuple[Tells, ...] = field(default=(), kw_only=True)
    table: tuple[tuple[str, ...], ...] = field(default=(), kw_only=True)

    def __post_init__(self) -> None:
        if not self.title.strip() or not self.description.strip():
            raise ValueError("A figure needs a title and a description: write both.")
        if not self.items:
            raise ValueError(f"Figure “{self.title}” has nothing to draw: give it at least one item.")
        for item in self.items:
            for x, y in item.corners():
                if not (isfinite(x) and isfinite(y)):
                    raise ValueError(
                        f"Figure “{self.title}”: {type(item).__name__} has the point ({x}, {y}); "
                        "every coordinate must be a finite number."
                    )
        for sentence, _, _ in self.tells:
            if sentence not in self.description and sentence not in self.notes:
                raise ValueError(
                    f"Figure “{self.title}” does not say “{sentence}”: `tells` repeats a sentence of "
                    "its description or notes."
                )

    def without(self, names: Collection[str]) -> Figure | None:
        """The figure for a reader who is to find the values of these names.

        Every arrow, label, number and sentence that shows one of them is gone;
        bodies stay. None where nothing is left to look at, or where the very
        shape of the drawing tells.
        """
        asked = frozenset(names)
        if asked & set(self.drawn_from):
            return None
        if self.table and asked:
            return replace(self, table=()).without(names)
        seen = tuple(part for item in self.items if (part := item.hiding(asked)))
        told = [one for one in self.tells if asked & set(one.names)]
        if seen == self.items and not told:
            return self
        if not any(_worth_seeing(item) for item in seen):
            return None
        if not told and len(seen) < len(self.items):
            return self._told_anew(seen)
        words, notes = self.description, self.notes
        for sentence, _, instead in told:
            words = words.replace(sentence, instead).replace("  ", " ").strip()
            notes = tuple(note for note in notes if note != sentence)
        notes = _notes_about(seen, notes)
        left = tuple(one for one in self.tells if one not in told)
        return replace(self, items=seen, description=words or self.title, notes=notes, tells=left)

    def _told_anew(self, seen: tuple[Item, ...]) -> Figure:
        """The pieces left, with their labels for words: the figure does not say what its sentences tell."""
        labels = [getattr(item, "label", "") or getattr(item, "text", "") for item in seen]
        words = f"The data as a diagram. Labelled: {', '.join(plain(label) for label in labels if label)}."
        return replace(
            self,
            title="The data as a diagram",
            description=words,
            items=seen,
            notes=_notes_about(seen, self.notes),
            tells=(),
        )


def _notes_about(items: tuple[Item, ...], notes: tuple[str, ...]) -> tuple[str, ...]:
    """The notes, without those about arrows where no arrow is left."""
    if any(isinstance(item, Arrow) and item.kind != "axis" for item in items):
        return notes
    return tuple(note for note in notes if not note.startswith(ARROW_NOTES))


def _worth_seeing(item: Item) -> bool:
    """Whether a piece is more than a line that helps the eye."""
    helper = isinstance(item, Segment | Curve | Text | Surface)
    return not (helper or (isinstance(item, Arrow) and item.kind == "axis"))
