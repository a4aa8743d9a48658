"""Vector drawings: free-body diagrams and head-to-tail sums."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import cos, isfinite, radians
from typing import NamedTuple

from calc.figures import words
from calc.figures.figure import Figure, Tells
from calc.figures.pieces import (
    AngleMark,
    Arrow,
    ArrowKind,
    Dot,
    Item,
    Point,
    Segment,
    polar,
)

NOT_TO_SCALE = "Arrows not to scale."
COMPONENTS = "Dashed arrows: components, not extra forces."
SHORTEST = 0.16  # of the longest arrow of a free-body diagram
LANE = 0.56  # lines between two arrows along one line of action
PARALLEL_DEG = 7.0  # arrows closer in direction than this would print on each other


class Force(NamedTuple):
    """A vector to draw: any unit, one unit a figure; 0° is to the right, anticlockwise.

    `shows` names the values it tells of, besides the one its label names.
    """

    label: str
    size: float
    direction_deg: float
    shows: tuple[str, ...] = ()


class Resolved(NamedTuple):
    """Ask for the two dashed components of the force labelled `of`.

    One component lies along the line through `axis_deg`, the other across it.
    """

    of: str
    axis_deg: float
    along: str
    across: str


class Angle(NamedTuple):
    """An angle to mark, anticlockwise from `start_deg` to `end_deg`."""

    start_deg: float
    end_deg: float
    label: str


type ForceLike = Force | tuple[str, float, float]


def forces_of(given: Sequence[ForceLike]) -> list[Force]:
    """The given forces as `Force`, refusing sizes below zero or not finite."""
    forces = [Force(*one) for one in given]
    for force in forces:
        if not isfinite(force.size) or force.size < 0 or not isfinite(force.direction_deg):
            raise ValueError(
                f"{words.plain(force.label)} has size {force.size} and direction "
                f"{force.direction_deg}°: a size must be zero or more; turn the direction instead."
            )
    return forces


def drawn_lengths(
    sizes: Sequence[float], *, min_fraction: float = 0.25, equal: bool = False
) -> tuple[list[float], bool]:
    """Drawn length of each size (longest 1, zero stays 0), and whether they are to scale.

    Where the smallest would be shorter than `min_fraction` of the longest, all
    lengths are squeezed between the two: the order of sizes survives, equal
    sizes stay equal, nothing disappears.
    """
    largest = max(sizes, default=0.0)
    if largest <= 0:
        return [0.0 for _ in sizes], True
    shares = [size / largest for size in sizes]
    drawn = [share for share in shares if share > 0]
    if equal:
        return [1.0 if share > 0 else 0.0 for share in shares], min(drawn) > 0.999
    if min(drawn) >= min_fraction:
        return shares, True
    # A square root between the bounds still tells 1:2 from 1:4 by eye.
    return [min_fraction + (1 - min_fraction) * share**0.5 if share else 0.0 for share in shares], False


def fan(
    origin: Point,
    arrows: Sequence[tuple[str, float, float, ArrowKind]],
    clear: float = 0.0,
) -> list[Arrow]:
    """Arrows (label, length, direction, kind) from one point, parallel ones side by side.

    Each starts `clear` away from `origin`.
    """
    groups: list[list[int]] = []
    for i, (_, _, way, _) in enumerate(arrows):
        for group in groups:
            apart = abs((way - arrows[group[0]][2] + 180) % 360 - 180)
            if apart < PARALLEL_DEG:
                group.append(i)
                break
        else:
            groups.append([i])
    lanes = [0.0] * len(arrows)
    for group in groups:
        # Sorted by direction, so that two lines a few degrees apart do not cross.
        group.sort(key=lambda i: (arrows[i][2] + 180) % 360)
        for place, i in enumerate(group):
            lanes[i] = (place - (len(group) - 1) / 2) * LANE
    return [
        Arrow(polar(origin, clear, way), polar(origin, clear + length, way), label, kind, lane)
        for (label, length, way, kind), lane in zip(arrows, lanes, strict=True)
    ]


def showing(arrows: Sequence[Arrow], shown: Mapping[str, tuple[str, ...]]) -> list[Arrow]:
    """The arrows with the names of the values that their labels' vectors tell of."""
    return [replace(arrow, shows=shown.get(arrow.label, ())) for arrow in arrows]


def arrows_told(given: Sequence[Force]) -> list[Tells]:
    """What is said of each arrow that is drawn: where it points."""
    return [
        Tells(f"{words.plain(f.label)} points {words.direction(f.direction_deg)}.", names_of(f.label, f.shows))
        for f in given
        if f.size
    ]


def names_of(label: str, shows: tuple[str, ...] = ()) -> tuple[str, ...]:
    """Every name a labelled piece tells of."""
    return tuple(sorted(words.names_in(label) | set(shows)))


def resolve(
    part: Resolved, drawn: Mapping[str, tuple[Force, float]], clear: float = 0.0
) -> tuple[list[tuple[str, float, float, ArrowKind]], list[Item]]:
    """Dashed component arrows, and the lines that close their rectangle.

    `drawn` maps a label to its force and drawn length.
    """
    if part.of not in drawn or not drawn[part.of][1]:
        raise ValueError(f"Components of {part.of}: no force with that label is drawn.")
    force, length = drawn[part.of]
    origin = (0.0, 0.0)
    tip = polar(origin, length + clear, force.direction_deg)
    dashed: list[tuple[str, float, float, ArrowKind]] = []
    closing: list[Item] = []
    for label, axis in ((part.along, part.axis_deg), (part.across, part.axis_deg + 90)):
        share = cos(radians(force.direction_deg - axis)) * (length + clear)
        way = axis if share > 0 else axis + 180
        if abs(share) > clear + 0.02:
            dashed.append((label, abs(share) - clear, way, "component"))
            closing.append(Segment(polar(origin, abs(share), way), tip, "construction"))
    return dashed, closing


def standing(
    origin: Point, forces: Sequence[ForceLike], longest: float, clear: float = 0.65
) -> tuple[list[Arrow], bool]:
    """Arrows on a body, `clear` lines from its middle, and whether they are to scale."""
    given = forces_of(forces)
    lengths, to_scale = drawn_lengths([f.size for f in given], min_fraction=0.3)
    rays: list[tuple[str, float, float, ArrowKind]] = [
        (f.label, length * longest, f.direction_deg, "force")
        for f, length in zip(given, lengths, strict=True)
        if length
    ]
    return showing(fan(origin, rays, clear), {f.label: f.shows for f in given}), to_scale


def free_body_diagram(
    forces: Sequence[ForceLike],
    *,
    body: str = "",
    title: str = "Free-body diagram",
    description: str = "",
    equal_lengths: bool = False,
    min_fraction: float = 0.25,
    components: Sequence[Resolved] = (),
    angles: Sequence[Angle | tuple[float, float, str]] = (),
    guides: Sequence[float] = (),
    notes: Sequence[str] = (),
) -> Figure:
    """All forces on one body: a dot, and arrows that start on it and point away.

    `components` adds dashed components of a named force, `angles` marks angles
    at the dot, `guides` draws thin lines through it (directions in degrees).
    Forces of size zero are not drawn and the description says so.

    Raises ValueError for a negative size, no force above zero, or a component
    of a force that is not drawn.
    """
    given = forces_of(forces)
    lengths, to_scale = drawn_lengths([f.size for f in given], min_fraction=min_fraction, equal=equal_lengths)
    # Shorter than this an arrow hides behind its dot; the order of sizes is kept.
    lifted = [f.label for f, length in zip(given, lengths, strict=True) if 0 < length < SHORTEST]
    lengths = [SHORTEST * (0.85 + 0.15 * length / SHORTEST) if 0 < length < SHORTEST else length for length in lengths]
    drawn = {f.label: (f, length) for f, length in zip(given, lengths, strict=True) if length}
    if not drawn:
        raise ValueError("No force is larger than zero: there is nothing to draw.")
    arrows: list[tuple[str, float, float, ArrowKind]] = [
        (f.label, length, f.direction_deg, "force") for f, length in zip(given, lengths, strict=True) if length
    ]
    origin = (0.0, 0.0)
    items: list[Item] = [Segment(polar(origin, -0.75, way), polar(origin, 0.75, way), "guide") for way in guides]
    for part in components:
        dashed, closing = resolve(part, drawn)
        arrows += dashed
        items += closing
    items += [AngleMark(origin, *angle) for angle in angles]
    shown = {f.label: f.shows for f in given}
    for part in components:
        # A component shows its force, as its force shows it.
        whole = names_of(part.of, shown.get(part.of, ()))
        shown |= {part.along: whole, part.across: whole}
    fanned = showing(fan(origin, arrows), shown)
    items += fanned
    crowded = any(arrow.lane for arrow in fanned)
    items.append(Dot(origin, body, 0.36 if crowded else 0.24))
    said = [f"{words.plain(f.label)} {words.direction(f.direction_deg)}" for f in given if f.size > 0]
    missing = [words.plain(f.label) for f in given if not f.size]
    text = f"Arrows start on one dot and point away from it: {words.listing(said)}."
    if missing:
        text += f" Zero, so not drawn: {words.listing(missing)}."
    remarks = [] if to_scale and not lifted else [NOT_TO_SCALE]
    if to_scale and len(lifted) == 1:
        remarks.append(f"Only {lifted[0]} is drawn longer.")
    if components:
        remarks.append(COMPONENTS)
    return Figure(title, description or text, tuple(items), (*remarks, *notes), width=16.0, height=13.0)
