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
BLOCK = (2.6, 1.8)  # width and height of a drawn block, in lines


class Body(NamedTuple):
    """A body on a slope: `place` from 0 (bottom) to 1 (top); `charge` only gives the sign, of the values `shows`."""

    label: str
    place: float
    charge: float = 0.0
    shape: Literal["sphere", "block"] = "sphere"
    shows: tuple[str, ...] = ()


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
    for body in given:
        if not 0 <= body.place <= 1:
            raise ValueError(f"{body.label} at {body.place}: a place on the slope lies from 0 to 1.")
    length = 15.0
    foot: Point = (0.0, 0.0)
    top = polar(foot, length, angle_deg)
    base = max(length * cos(radians(angle_deg)), 6.0)
    up, normal = angle_deg, angle_deg + 90

    def on_slope(place: float, height: float = 0.0) -> Point:
        along = polar(foot, 1.6 + place * (length - 3.6), up)
        return polar(along, height, normal)

    centres = [on_slope(body.place, RADIUS if body.shape == "sphere" else 0.9) for body in given]
    items: list[Item] = [
        Segment(foot, (base, 0.0), "guide"),
        Surface(foot, top),
        AngleMark(foot, 0.0, angle_deg, angle_label, 3.0),
    ]
    if string:
        post = polar(foot, length - 0.3 if string == "up" else 0.3, up)
        height = RADIUS if given[string_on].shape == "sphere" else BLOCK[1] / 2
        knot = polar(post, height, normal)
        items.append(Segment(post, polar(post, height + 0.7, normal), "outline"))
        half = RADIUS if given[string_on].shape == "sphere" else BLOCK[0] / 2
        edge = polar(centres[string_on], half, up if string == "up" else up + 180)
        items.append(Segment(edge, knot, "string", string_label))
    elif string_to is not None:
        way = up if given[string_to].place > given[string_on].place else up + 180
        halves = [RADIUS if body.shape == "sphere" else BLOCK[0] / 2 for body in given]
        ends = (
            polar(centres[string_on], halves[string_on], way),
            polar(centres[string_to], halves[string_to], way + 180),
        )
        items.append(Segment(*ends, "string", string_label))
    for body, centre in zip(given, centres, strict=True):
        if body.shape == "block":
            items.append(Block(centre, *BLOCK, angle_deg, body.label))
        else:
            items.append(Sphere(centre, RADIUS, sign_of(body.charge), body.label, shows=body.shows))
    for a, b, label in distances:
        low, high = sorted((a, b), key=lambda i: given[i].place)
        items.append(Dimension(centres[low], centres[high], label, 1.9, RADIUS + 0.3))
    to_scale = True
    if forces:
        arrows, to_scale = standing(
            centres[forces_on],
            forces,
            4.2,
            RADIUS if given[forces_on].shape == "sphere" else 0.0,
        )
        items += arrows
    order = sorted(given, key=lambda body: body.place)
    signs = tuple(sorted({name for body in given for name in body.shows}))
    tells = Tells(
        f"From bottom to top: {words.listing([words.charged(b.label, b.charge) for b in order])}.",
        signs,
        f"From bottom to top: {words.listing([words.charged(b.label, 0) for b in order])}.",
    )
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
    points: list[tuple[Point, Point]] = []
    for side in (-1.0, 1.0):
        hook = (side * half, 0.0)
        points.append((hook, (hook[0] + side * inward * length * sine, -length * cosine)))
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
    supports = "two supports" if two_supports else "one support"
    way = "towards each other" if attracting else "apart"

    def told(worths: Iterable[Sign]) -> str:
        named = words.listing([words.charged(a, SIGNS[s]) for a, s in zip(labels, worths, strict=True)])
        return (
            f"Two charged spheres, {named}, hang {way} on equal threads from {supports}, each thread"
            f" {words.degrees(angle_deg)} from the vertical."
        )

    said = told(signs)
    tells = (Tells(said, (*shows[0], *shows[1]), told(("", ""))),) if not description else ()
    remarks = [SCHEMATIC] if to_scale else [SCHEMATIC, NOT_TO_SCALE]
    # The angle is drawn true.
    true = tuple(sorted(words.names_in(angle_label)))
    return Figure(title, description or said, tuple(items), (*remarks, *notes), unit=1.0, drawn_from=true, tells=tells)
