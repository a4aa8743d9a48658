"""Charged spheres in a plane, with the vectors on a chosen one."""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, degrees, hypot

from calc.figures import words
from calc.figures.charges import DISTANCES, RADIUS, Charge, name_alone, name_and_sign
from calc.figures.figure import Figure, Tells
from calc.figures.pieces import (
    AngleMark,
    Arrow,
    ArrowKind,
    Dimension,
    Dot,
    Item,
    Point,
    Segment,
    Sphere,
    polar,
)
from calc.figures.vectors import (
    NOT_TO_SCALE,
    Angle,
    Force,
    ForceLike,
    Resolved,
    arrows_told,
    drawn_lengths,
    fan,
    forces_of,
    names_of,
    resolve,
    showing,
)


def _spread(bodies: Sequence[Charge], on: int, least: float, most: float) -> tuple[list[Point], bool]:
    """Drawn places around body `on` at the origin, and whether they are to scale.

    Directions from that body are kept; distances are squeezed where spheres
    would touch or one would be very far.
    """
    here = bodies[on]
    polars = [(hypot(b.x - here.x, b.y - here.y), degrees(atan2(b.y - here.y, b.x - here.x))) for b in bodies]
    far = max(r for r, _ in polars)
    scaled = [polar((0.0, 0.0), most * r / far, way) for r, way in polars]
    apart = min(hypot(p[0] - q[0], p[1] - q[1]) for i, p in enumerate(scaled) for q in scaled[:i])
    near = min(most * r / far for i, (r, _) in enumerate(polars) if i != on)
    if near >= least and apart >= least * 0.55:
        return scaled, True
    drawn: list[Point] = [(0.0, 0.0)] * len(bodies)
    done: list[Point] = []
    low = min(r for i, (r, _) in enumerate(polars) if i != on)
    for i in sorted(range(len(bodies)), key=lambda i: polars[i][0]):
        if i == on:
            continue
        r, way = polars[i]
        reach = least if far == low else least + (most - least) * ((r - low) / (far - low)) ** 0.5
        while any(
            hypot(p[0] - q[0], p[1] - q[1]) < least * 0.55 for p in [polar((0.0, 0.0), reach, way)] for q in done
        ):
            reach += 0.3
        drawn[i] = polar((0.0, 0.0), reach, way)
        done.append(drawn[i])
    return drawn, False


def charges_in_plane(
    charges: Sequence[Charge | tuple[str, float, float, float]],
    *,
    on: int = 0,
    forces: Sequence[ForceLike] = (),
    resultant: ForceLike | None = None,
    components: Sequence[Resolved] = (),
    distances: Sequence[tuple[int, int, str]] = (),
    angle: Angle | tuple[float, float, str] | None = None,
    axes: bool = False,
    kind: ArrowKind = "force",
    title: str = "Charges in a plane",
    description: str = "",
    min_fraction: float = 0.25,
    notes: Sequence[str] = (),
) -> Figure:
    """Charges at their places; vectors drawn only on charge number `on`.

    The resultant is dashed, `angle` is marked at the chosen charge, `axes`
    draws x and y through it. With kind “field” the chosen body is a point
    without a sphere (give it charge 0).

    Raises ValueError for fewer than two bodies or two at one place.
    """
    bodies = _checked([Charge(*one) for one in charges], on)
    places, distances_to_scale = _spread(bodies, on, least=4.2, most=10.0)
    given = forces_of([*forces, *([] if resultant is None else [resultant])])
    lengths, to_scale = drawn_lengths([f.size for f in given], min_fraction=min_fraction)
    point = kind == "field" and not bodies[on].charge
    clear = 0.2 if point else RADIUS
    others = [place for i, place in enumerate(places) if i != on]
    longest = _longest(given, lengths, others, clear)
    origin = (0.0, 0.0)
    kinds: list[ArrowKind] = [*[kind] * len(forces), "resultant"][: len(given)]
    arrows = [
        (f.label, length * longest, f.direction_deg, of)
        for f, length, of in zip(given, lengths, kinds, strict=True)
        if length
    ]
    items: list[Item] = []
    named = {f.label: (f, length * longest) for f, length in zip(given, lengths, strict=True)}
    for part in components:
        dashed, guides = resolve(part, named, clear)
        arrows += dashed
        items += guides
    taken = [*places, *(polar(origin, clear + length, way) for _, length, way, _ in arrows)]
    if axes:
        items += _axes(taken)
    for place in others:
        if not (axes and min(abs(v) for v in place) < 1e-9):  # an axis shows that line already
            items.append(Segment(origin, place, "guide"))
    items += [_measured(places[a], places[b], label, taken) for a, b, label in distances]
    if angle is not None:
        items.append(AngleMark(origin, *Angle(*angle), radius=2.1))
    items += [_body(body, places[i], point and i == on) for i, body in enumerate(bodies)]
    tells = _plane_told(bodies, on, point, given)
    said = " ".join(one.sentence for one in tells)
    dashed_too = resultant is not None and given[-1].size
    remarks = [*([] if distances_to_scale else [DISTANCES]), *([] if to_scale else [NOT_TO_SCALE])]
    remarks += ["Dashed: the resultant."] if dashed_too else []
    return Figure(
        title,
        description or said,
        (*items, *showing(fan(origin, arrows, clear), {f.label: f.shows for f in given})),
        (*remarks, *notes),
        unit=1.2,
        tells=() if description else tuple(tells),
    )


def _checked(bodies: Sequence[Charge], on: int) -> Sequence[Charge]:
    """The bodies, if they can be drawn around number ``on``."""
    if len(bodies) < 2:
        raise ValueError("One charge alone feels no force: give at least two.")
    if not 0 <= on < len(bodies):
        raise ValueError(f"There is no charge number {on}: there are {len(bodies)}.")
    if len({(b.x, b.y) for b in bodies}) < len(bodies):
        raise ValueError("Two charges share a point: give each its own position.")
    return bodies


def _longest(given: Sequence[Force], lengths: Sequence[float], others: Sequence[Point], clear: float) -> float:
    """How long the longest arrow may be: one that points at a sphere, an attraction, stops short of that."""
    longest = 4.6
    for f, length in zip(given, lengths, strict=True):
        for x, y in others:
            apart = abs((degrees(atan2(y, x)) - f.direction_deg + 180) % 360 - 180)
            if length and apart < 15:
                longest = min(longest, max(1.6, (hypot(x, y) - RADIUS - clear - 0.8) / length))
    return longest


def _axes(taken: Sequence[Point]) -> list[Item]:
    """The x and y axes through the chosen body, as long as what stands around it."""
    xs, ys = zip(*taken, strict=True)
    return [
        Arrow((min(xs) - 1.4, 0.0), (max(xs) + 2.0, 0.0), "x", "axis"),
        Arrow((0.0, min(ys) - 1.4), (0.0, max(ys) + 2.0), "y", "axis"),
    ]


def _plane_told(bodies: Sequence[Charge], on: int, point: bool, given: Sequence[Force]) -> list[Tells]:
    """What the figure says: the bodies around the chosen one, and each arrow on it."""
    centre = f"point {words.plain(bodies[on].label)}" if point else ""
    around = [
        f"{words.listing([name(i, bodies, ()) for i in range(len(bodies)) if i != on])} around "
        f"{centre or name(on, bodies, ())}."
        for name in (name_and_sign, name_alone)
    ]
    signs = tuple(sorted({n for body in bodies for n in names_of(body.label, body.shows)}))
    return [Tells(around[0], signs, around[1]), *arrows_told(given)]


def _measured(start: Point, end: Point, label: str, taken: Sequence[Point]) -> Dimension:
    """A distance between two centres, on the emptier side."""
    return Dimension(start, end, label, _clear_side(start, end, taken), RADIUS + 0.3)


def _body(body: Charge, place: Point, point: bool) -> Item:
    """A sphere, or the point at which a field is asked."""
    if point:
        return Dot(place, body.label, 0.18)
    return Sphere(place, RADIUS, body.sign, body.label, shows=body.shows)


def _clear_side(start: Point, end: Point, others: Sequence[Point]) -> float:
    """Offset of a dimension to the side of start to end with fewer other things."""
    (x, y), (x2, y2) = start, end
    turns = [(x2 - x) * (v - y) - (y2 - y) * (u - x) for u, v in others]
    left, right = sum(turn > 1e-6 for turn in turns), sum(turn < -1e-6 for turn in turns)
    return 1.7 if left <= right else -1.7
