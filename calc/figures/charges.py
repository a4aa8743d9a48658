"""Charged spheres on a line and in a plane, with the forces on chosen ones."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from calc.figures import words
from calc.figures.bodies import Ball
from calc.figures.figure import Figure, Tells
from calc.figures.pieces import (
    Arrow,
    ArrowKind,
    Dimension,
    Dot,
    Item,
    Segment,
    Sign,
    Sphere,
    named_only,
)
from calc.figures.vectors import (
    NOT_TO_SCALE,
    drawn_lengths,
    fan,
    names_of,
    showing,
)

DISTANCES = "Distances not to scale."
RADIUS = 0.65  # of a drawn sphere, in lines


class Charge(NamedTuple):
    """A point charge: any one unit of charge and of length a figure. signed: whether its sign is known.

    `shows` names the values that its sign tells of, besides the one its label names.
    """

    label: str
    charge: float
    x: float
    y: float = 0.0
    signed: bool = True
    shows: tuple[str, ...] = ()

    @property
    def sign(self) -> Sign:
        """The sign to write in the sphere; none where it is not known."""
        return sign_of(self.charge) if self.signed else ""

    @property
    def kind(self) -> str:
        """The sign in words."""
        if not self.signed:
            return "sign not known"
        return "positive" if self.charge > 0 else "negative" if self.charge < 0 else "uncharged"

    @property
    def said(self) -> str:
        """The charge in a sentence: “Q1 (positive)”."""
        return f"{words.plain(self.label) or 'a sphere'} ({self.kind})"


class Mass(NamedTuple):
    """A body of which only the mass matters: one unit of length a figure. `shows` as in `Charge`."""

    label: str
    x: float
    shows: tuple[str, ...] = ()

    @property
    def said(self) -> str:
        """The body in a sentence."""
        return words.plain(self.label) or "a body"


type OnLine = Charge | Mass


class On(NamedTuple):
    """A vector on a body of a line: `on` is its place in the list, right is positive.

    `kind` “field” draws a field arrow (at a marked point).
    """

    on: int
    label: str
    size: float
    to_right: bool
    kind: ArrowKind = "force"
    shows: tuple[str, ...] = ()


def sign_of(charge: float) -> Sign:
    """The sign to write in a sphere."""
    return "+" if charge > 0 else "-" if charge < 0 else ""


def spheres_on_line(
    charges: Sequence[OnLine | tuple[str, float, float]],
    *,
    forces: Sequence[On | tuple[int, str, float, bool]] = (),
    distances: Sequence[tuple[int, int, str]] = (),
    points: Sequence[tuple[str, float]] = (),
    title: str = "Charges on a line",
    description: str = "",
    notes: Sequence[str] = (),
) -> Figure:
    """Spheres on a horizontal line with arrows on them and distances between centres; a `Mass` is a plain ball.

    `points` are marked places without a charge (label, x); in `forces` and
    `distances` they are numbered after the charges. Uneven gaps are evened out
    where needed, keeping the order, and a note says so.

    Raises ValueError if two bodies share a place or a number names no body.
    """
    bodies = [one if isinstance(one, Mass) else Charge(*one) for one in charges]
    places = [body.x for body in bodies] + [x for _, x in points]
    order = sorted(range(len(places)), key=lambda i: places[i])
    gaps = _gaps([places[i] for i in order])
    given = [On(*one) for one in forces]
    for number in [f.on for f in given] + [n for a, b, _ in distances for n in (a, b)]:
        if not 0 <= number < len(places):
            raise ValueError(f"There is no body number {number}: there are {len(places)}.")

    drawn_gaps, even = _drawn_gaps(gaps)
    at: dict[int, float] = {order[0]: 0.0}
    for i, gap in enumerate(drawn_gaps):
        at[order[i + 1]] = at[order[i]] + gap

    # Two arrows that point at each other share the smallest gap.
    room = min((min(drawn_gaps, default=8.0) - 2 * RADIUS) * 0.46, 3.6)
    lengths, to_scale = drawn_lengths([f.size for f in given], min_fraction=0.55 / room)
    items: list[Item] = []
    arrows: list[Arrow] = []
    for number in range(len(places)):
        mine = [
            (f.label, length * room, 0.0 if f.to_right else 180.0, f.kind)
            for f, length in zip(given, lengths, strict=True)
            if f.on == number and length
        ]
        here = (at[number], 0.0)
        if number < len(bodies):
            items.append(_body(bodies[number], here))
            arrows += fan(here, mine, clear=RADIUS)
        else:
            items.append(Dot(here, points[number - len(bodies)][0], 0.18))
            arrows += fan(here, mine, clear=0.2)
    if len(places) > 1:
        ends = (at[order[0]], at[order[-1]])
        items.insert(0, Segment((ends[0], 0.0), (ends[1], 0.0), "guide"))
    items += _in_rows(distances, at)
    tells = _line_told(bodies, points, order, given)
    said = " ".join(one.sentence for one in tells)
    arrows = showing(arrows, {force.label: force.shows for force in given})
    remarks = [] if even else [DISTANCES]
    if not to_scale:
        remarks.append(NOT_TO_SCALE)
    return Figure(
        title,
        description or said,
        (*items, *arrows),
        (*remarks, *notes),
        height=10.0,
        unit=1.0,
        tells=() if description else tuple(tells),
    )


def _body(body: OnLine, here: tuple[float, float]) -> Item:
    """A charged sphere with its sign, or a ball."""
    if isinstance(body, Mass):
        return Ball(here, RADIUS, body.label, shows=body.shows)
    return Sphere(here, RADIUS, body.sign, body.label, shows=body.shows)


def _gaps(places: Sequence[float]) -> list[float]:
    """From each place to the next, of places in order. Raises ValueError where there is none or two are one."""
    if not places:
        raise ValueError("There is no charge and no point to draw: give at least one.")
    gaps = [b - a for a, b in itertools.pairwise(places)]
    if any(gap <= 0 for gap in gaps):
        raise ValueError("Two bodies share one place: give each its own position.")
    return gaps


def _drawn_gaps(gaps: Sequence[float]) -> tuple[list[float], bool]:
    """The gaps as drawn, and whether they are to scale."""
    if not gaps:
        return [], True
    least, most = 4.2, 9.0
    small, large = min(gaps), max(gaps)
    total = 10.0 if len(gaps) == 1 else 15.0
    even = total * small / sum(gaps) >= least or large / small <= 1.05
    drawn = []
    for gap in gaps:
        # To scale where even the smallest gap has room; else squeezed between the bounds.
        share = (gap - small) / (large - small) if large > small else 0.0
        fitting = max(total / sum(gaps), least / small) * gap
        drawn.append(fitting if even else least + (most - least) * share**0.5)
    return drawn, even


def _in_rows(distances: Sequence[tuple[int, int, str]], at: Mapping[int, float]) -> list[Dimension]:
    """The dimension lines under the bodies, the short ones nearest; those that do not overlap form a chain."""
    drawn: list[Dimension] = []
    rows: list[list[tuple[float, float]]] = []
    for a, b, label in sorted(distances, key=lambda d: abs(at[d[0]] - at[d[1]])):
        left, right = sorted((at[a], at[b]))
        free = [all(right < start + 1e-9 or end < left + 1e-9 for start, end in row) for row in rows]
        level = next((i for i, empty in enumerate(free) if empty), len(rows))
        rows += [[] for _ in range(level + 1 - len(rows))]
        rows[level].append((left, right))
        drawn.append(Dimension((left, 0.0), (right, 0.0), label, -2.2 - 1.7 * level, RADIUS + 0.3))
    return drawn


def _line_told(
    bodies: Sequence[OnLine], points: Sequence[tuple[str, float]], order: Sequence[int], given: Sequence[On]
) -> list[Tells]:
    """What the figure of a line says: its bodies from left to right, and each arrow."""
    names = [words.listing([name(i, bodies, points) for i in order]) for name in (name_and_sign, name_alone)]
    signs = tuple(sorted({n for body in bodies for n in names_of(body.label, body.shows)}))
    tells = [Tells(f"From left to right: {names[0]}.", signs, f"From left to right: {names[1]}.")]
    for force in given:
        if force.size:
            way = "right" if force.to_right else "left"
            told = f"{words.plain(force.label)} at {name_alone(force.on, bodies, points)} points to the {way}."
            tells.append(Tells(told, names_of(force.label, force.shows)))
    return tells


def name_and_sign(i: int, bodies: Sequence[OnLine], points: Sequence[tuple[str, float]]) -> str:
    """A body or a point of a figure with its sign in words."""
    return bodies[i].said if i < len(bodies) else f"point {points[i - len(bodies)][0]}"


def name_alone(i: int, bodies: Sequence[OnLine], points: Sequence[tuple[str, float]]) -> str:
    """A body or a point of a figure without its sign and its value."""
    label = named_only(bodies[i].label) if i < len(bodies) else ""
    return words.plain(label) or ("a sphere" if i < len(bodies) else name_and_sign(i, bodies, points))
