"""Energy levels of an atom as lines one above the other, with arrows for the changes between them."""

from __future__ import annotations

from collections.abc import Sequence

from calc.figures.figure import Figure
from calc.figures.pieces import Arrow, Item, Segment, Text

WIDE = 11.0  # of a level
STEP = 2.6  # between two levels


def energy_levels(
    names: Sequence[str],
    changes: Sequence[tuple[int, int, str]] = (),
    *,
    title: str = "Energy levels",
    notes: Sequence[str] = (),
) -> Figure:
    """Levels from the lowest to the highest; changes from level to level (counted from 0), each with its label.

    Raises ValueError for a change from or to a level that is not there, or back to the same one.
    """
    items: list[Item] = []
    for n, name in enumerate(names):
        y = n * STEP
        items += [Segment((0.0, y), (WIDE, y), "outline"), Text((WIDE + 0.2, y), name, "right")]
    told = []
    for k, (first, last, label) in enumerate(changes, 1):
        if first == last or not {first, last} <= set(range(len(names))):
            raise ValueError(f"There is no change from level {first} to level {last} of {len(names)}.")
        x = WIDE * k / (len(changes) + 1)
        items.append(Arrow((x, first * STEP), (x, last * STEP), label, "velocity", label_at="middle"))
        way = "down" if last < first else "up"
        told.append(f" An arrow points {way}, from level {first + 1} to level {last + 1}, counted from the lowest.")
    count = {2: "Two", 3: "Three", 4: "Four"}.get(len(names), str(len(names)))
    return Figure(
        title,
        f"{count} energy levels, drawn as level lines one above the other.{''.join(told)}",
        tuple(items),
        ("Not to scale.", *notes),
        unit=1.0,
        height=12.0,
    )
