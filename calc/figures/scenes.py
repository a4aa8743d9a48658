"""Scenes of bodies at rest: slopes, hanging pairs, charged plates.

All are drawn in lines of label text, so bodies keep their size from figure to
figure; angles are true, distances are not unless a note says so.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import cos, radians, sin
from typing import Literal, NamedTuple

from calc.figures import words
from calc.figures.charges import RADIUS, sign_of
from calc.figures.figure import Figure, Tells
from calc.figures.pieces import (
    AngleMark,
    Block,
    Dimension,
    Item,
    Point,
    Segment,
    Sign,
    Sphere,
    Surface,
    polar,
)
from calc.figures.vectors import NOT_TO_SCALE, ForceLike, standing

SIGNS: dict[Sign, float] = {"+": 1.0, "-": -1.0, "": 0.0}
SCHEMATIC = "Not to scale."
SLOPE = 15.0  # length of a drawn slope, in lines
BLOCK = (2.6, 1.8)  # width and height of a drawn block, in lines


class Body(NamedTuple):
    """A body on a slope: `place` from 0 (bottom) to 1 (top); `charge` only gives the sign, of the values `shows`."""

    label: str
    place: float
    charge: float = 0.0
    shape: Literal["sphere", "block"] = "sphere"
    shows: tuple[str, ...] = ()


def _on_slope(body: Body, up: float) -> Point:
    """Where the middle of a body stands. Raises ValueError for a place off the slope."""
    if not 0 <= body.place <= 1:
        raise ValueError(f"{body.label} at {body.place}: a place on the slope lies from 0 to 1.")
    return polar(polar((0.0, 0.0), 1.6 + body.place * (SLOPE - 3.6), up), _half(body, 1), up + 90)


def _half(body: Body, side: Literal[0, 1]) -> float:
    """Half the width (0) or the height (1) of a body."""
    return RADIUS if body.shape == "sphere" else BLOCK[side] / 2


def _tied_to_post(body: Body, up: float, end: Literal["up", "down"], label: str) -> list[Item]:
    """A post at one end of the slope, and the string from it to a body."""
    post = polar((0.0, 0.0), SLOPE - 0.3 if end == "up" else 0.3, up)
    height = _half(body, 1)
    edge = polar(_on_slope(body, up), _half(body, 0), up if end == "up" else up + 180)
    return [
        Segment(post, polar(post, height + 0.7, up + 90), "outline"),
        Segment(edge, polar(post, height, up + 90), "string", label),
    ]


def _tied(one: Body, other: Body, up: float, label: str) -> Segment:
    """A string between two bodies."""
    way = up if other.place > one.place else up + 180
    start = polar(_on_slope(one, up), _half(one, 0), way)
    return Segment(start, polar(_on_slope(other, up), _half(other, 0), way + 180), "string", label)


def _standing_body(body: Body, up: float) -> Item:
    """The block or the sphere itself."""
    centre = _on_slope(body, up)
    if body.shape == "block":
        return Block(centre, *BLOCK, up, body.label)
    return Sphere(centre, RADIUS, sign_of(body.charge), body.label, shows=body.shows)


def _upwards(bodies: Sequence[Body]) -> Tells:
    """The bodies from bottom to top, with their signs and without."""
    order = sorted(bodies, key=lambda body: body.place)
    signs = tuple(sorted({name for body in bodies for name in body.shows}))
    return Tells(
        f"From bottom to top: {words.listing([words.charged(b.label, b.charge) for b in order])}.",
        signs,
        f"From bottom to top: {words.listing([words.charged(b.label, 0) for b in order])}.",
    )


def slope_scene(
    angle_deg: float,
    bodies: Sequence[Body | tuple[str, float, float]],
    *,
    string: Literal["up", "down", ""] = "",
    string_label: str = "",
    string_on: int = 0,
    string_to: int | None = None,
    angle_label: str = "θ",
    distances: Sequence[tuple[int, int, str]] = (),
    forces_on: int = 0,
    forces: Sequence[ForceLike] = (),
    title: str = "Bodies on a slope",
    description: str = "",
    notes: Sequence[str] = (),
) -> Figure:
    """Bodies on a slope that rises to the right at `angle_deg` (0 to 90, both left out).

    `string` ties body `string_on` to a post at the top (“up”) or the bottom
    (“down”), or to body `string_to`. Directions of `forces` are on the page:
    up the slope is `angle_deg`, the normal `angle_deg` + 90.

    Raises ValueError for an angle or a place outside its range.
    """
    if not 0 < angle_deg < 90:
        raise ValueError(f"A slope of {angle_deg}° cannot be drawn: use more than 0 and less than 90.")
    given = [Body(*one) for one in bodies]
    centres = [_on_slope(body, angle_deg) for body in given]
    foot: Point = (0.0, 0.0)
    top = polar(foot, SLOPE, angle_deg)
    base = max(SLOPE * cos(radians(angle_deg)), 6.0)
    items: list[Item] = [
        Segment(foot, (base, 0.0), "guide"),
        Surface(foot, top),
        AngleMark(foot, 0.0, angle_deg, angle_label, 3.0),
    ]
    if string:
        items += _tied_to_post(given[string_on], angle_deg, string, string_label)
    elif string_to is not None:
        items.append(_tied(given[string_on], given[string_to], angle_deg, string_label))
    items += [_standing_body(body, angle_deg) for body in given]
    for a, b, label in distances:
        low, high = sorted((a, b), key=lambda i: given[i].place)
        items.append(Dimension(centres[low], centres[high], label, 1.9, RADIUS + 0.3))
    to_scale = True
    if forces:
        clear = RADIUS if given[forces_on].shape == "sphere" else 0.0
        arrows, to_scale = standing(centres[forces_on], forces, 4.2, clear)
        items += arrows
    tells = _upwards(given)
    said = f"A slope rises to the right at {words.degrees(angle_deg)} to the horizontal. {tells.sentence}"
    if string:
        where = "top" if string == "up" else "bottom"
        said += f" A string parallel to the slope ties {words.plain(given[string_on].label)} to a post at the {where}."
    remarks = [SCHEMATIC] if to_scale else [SCHEMATIC, NOT_TO_SCALE]
    # The angle is drawn true.
    true = tuple(sorted(words.names_in(angle_label)))
    return Figure(
        title,
        description or said,
        tuple(items),
        (*remarks, *notes),
        unit=1.0,
        drawn_from=true,
        tells=() if description else (tells,),
    )


def hanging_pair(
    angle_deg: float,
    *,
    labels: tuple[str, str] = ("A", "B"),
    signs: tuple[Sign, Sign] = ("+", "+"),
    two_supports: bool = False,
    attracting: bool = False,
    angle_label: str = "α",
    shows: tuple[tuple[str, ...], tuple[str, ...]] = ((), ()),
    thread_label: str = "L",
    distance_label: str = "r",
    supports_label: str = "",
    forces: Sequence[ForceLike] = (),
    title: str = "Two charged spheres on threads",
    description: str = "",
    notes: Sequence[str] = (),
) -> Figure:
    """Two spheres on equal threads, each `angle_deg` from the vertical (0 to 90, both left out).

    From one support, or from two supports a distance apart; from two supports
    they may hang towards each other (`attracting`). `forces` act on the
    right-hand sphere.

    Raises ValueError for an angle outside its range, or for attracting spheres
    on one support.
    """
    if not 0 < angle_deg < 90:
        raise ValueError(f"A thread at {angle_deg}° to the vertical cannot hang: use 0 to 90.")
    if attracting and not two_supports:
        raise ValueError("Spheres that attract would touch on one support: use two supports.")
    sine, cosine = sin(radians(angle_deg)), cos(radians(angle_deg))
    # Long enough for the spheres to stay apart at a small angle.
    length = 8.5 if two_supports else min(30.0, max(8.5, 1.7 * RADIUS / sine))
    radius = RADIUS if two_supports else min(RADIUS, 0.85 * length * sine)
    inward = -1.0 if attracting else 1.0
    half = (2 * radius + length * sine if attracting else 2.6) if two_supports else 0.0
    hooks: list[Point] = [(-half, 0.0), (half, 0.0)]
    points = [(h, (h[0] + s * inward * length * sine, -length * cosine)) for h, s in zip(hooks, (-1, 1), strict=True)]
    ceiling = half + 2.2
    items: list[Item] = [Surface((ceiling, 0.0), (-ceiling, 0.0))]
    drop = min(length * cosine + 1.0, max(4.2, 0.62 * length)) if length * cosine > 2.4 else 3.4
    for i, (hook, centre) in enumerate(points):
        side = -1.0 if i == 0 else 1.0
        thread = side * inward * angle_deg - 90
        end = polar(hook, length - radius, thread)
        items.append(Segment(hook, end, "string", thread_label if i == 0 else ""))
        items.append(Sphere(centre, radius, signs[i], labels[i], shows=shows[i]))
        if two_supports or i == 1:
            items.append(Segment(hook, (hook[0], -drop), "guide"))
        if i == 1:
            start, stop = sorted((-90.0, thread))
            items.append(AngleMark(hook, start, stop, angle_label, 2.6))
    # Below the arrows, which may point straight down.
    low, clear = (-5.6, 5.0) if forces else (-1.9, radius + 0.3)
    items.append(Dimension(points[0][1], points[1][1], distance_label, low, clear))
    if two_supports and supports_label:
        items.append(Dimension(points[0][0], points[1][0], supports_label, 1.4, 0.5))
    to_scale = True
    if forces:
        arrows, to_scale = standing(points[1][1], forces, 3.4, radius)
        items += arrows
    way = f"{'towards each other' if attracting else 'apart'} on equal threads from"
    way += f" {'two supports' if two_supports else 'one support'}"
    said, bare = (_pair_said(zip(labels, worths, strict=True), way, angle_deg) for worths in (signs, ("", "")))
    tells = (Tells(said, (*shows[0], *shows[1]), bare),) if not description else ()
    remarks = [SCHEMATIC] if to_scale else [SCHEMATIC, NOT_TO_SCALE]
    # The angle is drawn true.
    true = tuple(sorted(words.names_in(angle_label)))
    return Figure(title, description or said, tuple(items), (*remarks, *notes), unit=1.0, drawn_from=true, tells=tells)


def _pair_said(named: Iterable[tuple[str, Sign]], way: str, angle_deg: float) -> str:
    """What the figure of a hanging pair says, with or without the signs."""
    pair = words.listing([words.charged(name, SIGNS[sign]) for name, sign in named])
    return f"Two charged spheres, {pair}, hang {way}, each thread {words.degrees(angle_deg)} from the vertical."
