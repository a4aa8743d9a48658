"""Bars of energy, before and after, with the work done between."""

from __future__ import annotations

from collections.abc import Sequence
from math import isfinite
from typing import NamedTuple

from calc.figures import words
from calc.figures.figure import Figure, Tells
from calc.figures.pieces import Arrow, Column, Item, Segment, Text

HIGH = 7.0  # of the largest bar, in lines
WIDE, STEP = 1.7, 2.7  # of a bar, and from one to the next


class Amount(NamedTuple):
    """One bar: its symbol, its size in the unit of the chart, and the value printed at it.

    `shows` names the values it tells of, besides the one its symbol names.
    """

    symbol: str
    size: float
    value: str = ""
    shows: tuple[str, ...] = ()


def energy_bars(
    stages: Sequence[tuple[str, Sequence[Amount | tuple[str, float]]]],
    *,
    title: str = "Energy bars",
    description: str = "",
    notes: Sequence[str] = (),
) -> Figure:
    """Groups of bars to one scale: (“Before”, amounts), perhaps (“W”, …), (“After”, amounts).

    A bar below zero (work done against the motion, say) hangs down.

    Raises ValueError where there is no bar above or below zero, or one is not finite.
    """
    groups = [(name, [Amount(*one) for one in amounts]) for name, amounts in stages]
    sizes = [one.size for _, amounts in groups for one in amounts]
    if not any(sizes) or not all(isfinite(size) for size in sizes):
        raise ValueError("Energy bars need an amount that is not zero, and every amount a number.")
    scale = HIGH / max(abs(size) for size in sizes)
    lowest = min(0.0, min(sizes) * scale)
    items: list[Item] = []
    tells: list[Tells] = []
    x = 1.4
    for name, amounts in groups:
        start = x
        for one in amounts:
            names = tuple(sorted(words.names_in(one.symbol) | set(one.shows)))
            if one.size:
                items.append(Column((x, 0.0), WIDE, one.size * scale, one.value, shows=names))
            else:
                items.append(Text((x, 0.0), "0", "above", shows=names))
            below = one.size >= 0
            items.append(Text((x, 0.0), one.symbol, "below" if below else "above"))
            tells.append(Tells(_said(name, one), names, f"{name}: {words.plain(one.symbol)}."))
            x += STEP
        items.append(Text(((start + x - STEP) / 2, lowest - 1.7), name, "below"))
        x += 1.3
    end = x - 1.3 - STEP + 1.4
    items = [
        Segment((0.0, 0.0), (end, 0.0), "outline"),
        Arrow((0.0, lowest), (0.0, HIGH + 1.4), "E (J)", "axis"),
        *items,
    ]
    said = " ".join(one.sentence for one in tells)
    return Figure(
        title, description or said, tuple(items), tuple(notes), unit=1.0, tells=() if description else tuple(tells)
    )


def _said(stage: str, one: Amount) -> str:
    value = f" is {one.value}" if one.value else " is zero" if not one.size else ""
    sense = " (below zero)" if one.size < 0 else ""
    return f"{stage}: {words.plain(one.symbol)}{value or ' has a bar'}{sense}."
