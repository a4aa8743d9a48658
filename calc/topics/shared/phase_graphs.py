"""The three graphs of a motion in phases: position, velocity and acceleration against time, with their key points."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from calc.figures import Figure
from calc.figures.graph_marks import Area, Gradient, Key
from calc.figures.graph_words import short
from calc.figures.graphs import GraphLine, graph
from calc.topics.shared.phases import Motion

SPIKE = 2.5  # of the acceleration of the phases: how far the cut-off spike of a contact is drawn beyond zero
NARROW = 0.012  # of the whole time: half the width of the spike
CUT = "During the contact the acceleration points the other way and is far larger: its spike is cut off."
JUMP = "The contact is so short that the velocity is drawn to jump (dashed)."


class Mark(NamedTuple):
    """A time that is named on the graphs. time, position, velocity: labels; shows: names of values they tell of."""

    at: float
    time: str = ""
    position: str = ""
    velocity: str = ""
    shows: tuple[str, ...] = ()
    after: bool = True  # at a jump the velocity afterwards is marked


def _key(mark: Mark, value: float, label: str) -> Key:
    """A key point; on an axis, where a guide would have no length, the label stands at the dot."""
    time, name = mark.time, ""
    if not mark.at:
        name, label = label, ""
    if not value and time:
        name, time = time, ""
    return Key(mark.at, value, name, time, label, mark.shows)


def position_graph(motion: Motion, marks: Sequence[Mark] = (), *, title: str = "Position against time") -> Figure:
    """y against t: a parabola for every phase with an acceleration."""
    points = list(dict.fromkeys((t, one.position(t)) for one in motion.phases for t in one.times()))
    keys = [_key(one, motion.position(one.at), one.position) for one in marks if one.time or one.position]
    return graph(
        "t (s)",
        "y (m)",
        [GraphLine(points)],
        keys=keys,
        title=title,
        notes=("The gradient of this graph is the velocity.",),
    )


def velocity_graph(
    motion: Motion,
    marks: Sequence[Mark] = (),
    *,
    areas: Sequence[tuple[float, float, str]] = (),
    slope: tuple[float, float] | None = None,
    title: str = "Velocity against time",
) -> Figure:
    """v against t: a straight line for every phase. areas: (from, to, label); slope: times of a slope triangle."""
    lines = [GraphLine([(one.start, one.u), (one.end, one.v)]) for one in motion.phases]
    jumps = [
        GraphLine([(one.end, one.v), (other.start, other.u)], "", "dashed")
        for one, other in pairwise(motion.phases)
        if one.v != other.u
    ]
    shaded = []
    for start, end, label in areas:
        inside = motion.at((start + end) / 2)
        shaded.append(Area([(start, inside.velocity(start)), (end, inside.velocity(end))], label))
    triangles = []
    if slope:
        inside = motion.at(sum(slope) / 2)
        one, other = ((t, inside.velocity(t)) for t in slope)
        triangles.append(Gradient(one, other, "Δt", "Δv"))
    keys = []
    for one_mark in marks:
        at = motion.at(one_mark.at)
        if not one_mark.after and at.start == one_mark.at:
            at = motion.phases[max(motion.phases.index(at) - 1, 0)]
        if one_mark.time or one_mark.velocity:
            keys.append(_key(one_mark, at.velocity(one_mark.at), one_mark.velocity))
    return graph(
        "t (s)",
        "v (m·s^{-1})",
        [*lines, *jumps],
        keys=keys,
        areas=shaded,
        gradients=triangles,
        title=title,
        notes=(*((JUMP,) if jumps else ()), "The gradient is the acceleration, the area the displacement."),
    )


def acceleration_graph(motion: Motion, *, title: str = "Acceleration against time") -> Figure:
    """a against t: level lines; a contact between two phases as a spike that is cut off."""
    half = motion.end * NARROW
    points: list[tuple[float, float]] = []
    contacts = [other.start for one, other in pairwise(motion.phases) if one.v != other.u]
    for one in motion.phases:
        start = one.start + (half if one.start in contacts else 0.0)
        end = one.end - (half if one.end in contacts else 0.0)
        points += [(start, one.a), (end, one.a)]
        if one.end in contacts:
            points.append((one.end, -SPIKE * one.a))
    return graph(
        "t (s)",
        "a (m·s^{-2})",
        [GraphLine(points)],
        title=title,
        notes=((CUT,) if contacts else ()) + ("The area is the change in velocity.",),
    )


def table(motion: Motion, times: Sequence[float]) -> tuple[tuple[str, ...], ...]:
    """Time, position, velocity and acceleration at the key points, a row each; at a jump before and after it."""
    rows: list[tuple[str, ...]] = [("t (s)", "y (m)", "v (m·s⁻¹)", "a (m·s⁻²)")]
    for one in motion.phases:
        inside = [t for t in times if one.start < t < one.end]
        for t in (one.start, *inside, one.end):
            rows.append(tuple(short(value) for value in (t, one.position(t), one.velocity(t), one.a)))
    return tuple(dict.fromkeys(rows))
