"""Vector sums: arrows head to tail, closed by their resultant."""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, degrees, hypot

from calc.figures import words
from calc.figures.figure import Figure
from calc.figures.pieces import AngleMark, Arrow, Item, Point, Segment, polar
from calc.figures.vectors import Angle, ForceLike, forces_of


def _lane(lane: float, way: float, first: float) -> float:
    """Lanes count to an arrow's own left, so an arrow against the first needs the other sign."""
    return lane if abs((way - first + 180) % 360 - 180) < 90 else -lane


def _square(corner: Point, before: float, after: float) -> list[Item]:
    """The mark of a right angle, if two vectors meet at one."""
    if abs(abs((after - before + 180) % 360 - 180) - 90) >= 0.1:
        return []
    turn = sorted((before + 180, after), key=lambda a: a % 360)
    start, end = turn if (turn[1] - turn[0]) % 360 < 180 else turn[::-1]
    return [AngleMark(corner, start, end, "", 0.7)]


def _marked(angle: Angle, corner: Point, ways: tuple[float, ...]) -> list[Item]:
    """An angle with a guide along each leg that is no vector."""
    start, end, label = angle
    legs = [leg for leg in (start, end) if not any(abs((leg - way + 180) % 360 - 180) < 1 for way in ways)]
    guides = [Segment(corner, polar(corner, 0.45, leg), "guide") for leg in legs]
    return [AngleMark(corner, start, end, label, 2.4), *guides]


def tail_to_head(
    vectors: Sequence[ForceLike],
    *,
    resultant: str = "F_{net}",
    angle: Angle | tuple[float, float, str] | None = None,
    title: str = "Vector sum, head to tail",
    description: str = "",
    scale: str = "",
    notes: Sequence[str] = (),
) -> Figure:
    """Vectors drawn to scale one after the other; the dashed resultant closes the figure.

    `angle` is marked where the first vector starts; a square marks vectors that
    meet at 90°. `scale` is printed as the scale of the drawing, for example
    “1 cm = 0,2 N”. Vectors along one line are drawn side by side.

    Raises ValueError for a negative size or no vector above zero.
    """
    given = [force for force in forces_of(vectors) if force.size > 0]
    if not given:
        raise ValueError("No vector is larger than zero: there is nothing to add.")
    largest = max(force.size for force in given)
    points: list[Point] = [(0.0, 0.0)]
    for force in given:
        points.append(polar(points[-1], force.size / largest, force.direction_deg))
    first, last = points[0], points[-1]
    ways = [force.direction_deg for force in given]
    in_line = all(abs((way - ways[0] + 90) % 180 - 90) < 1 for way in ways)
    net = hypot(last[0] - first[0], last[1] - first[1])
    items: list[Item] = []
    arrows: list[Arrow] = []
    remarks: list[str] = []
    for i, force in enumerate(given):
        lane = _lane(-1.4 * i, force.direction_deg, ways[0]) if in_line else 0.0
        arrows.append(Arrow(points[i], points[i + 1], force.label, "force", lane, "middle", shows=force.shows))
        if i and min(force.size, given[i - 1].size) > 0.15 * largest:
            items += _square(points[i], ways[i - 1], ways[i])
        if force.size < 0.06 * largest:
            remarks.append(f"{force.label} is almost too short to see at this scale.")
    total = sum(force.size for force in given) / largest
    said = words.listing([f"{words.plain(force.label)} {words.direction(force.direction_deg)}" for force in given])
    text = f"Head to tail: {said}."
    if net > 1e-6 * total:
        way = degrees(atan2(last[1] - first[1], last[0] - first[0]))
        lane = _lane(1.4, way, ways[0]) if in_line else 0.0
        arrows.append(Arrow(first, last, resultant, "resultant", lane, "middle"))
        text += (
            f" The dashed resultant {words.plain(resultant)} runs from the first tail "
            f"to the last head, {words.direction(way)}."
        )
        if angle is not None and not in_line:
            items += _marked(Angle(*angle), first, (*ways[:1], way))
        remarks.append("Dashed: the resultant.")
    else:
        text += " The last head meets the first tail: the resultant is zero."
        remarks.append("The arrows close: the resultant is zero.")
    if scale:
        remarks.insert(0, f"Scale: {scale}.")
    return Figure(
        title,
        description or text,
        (*items, *arrows),
        (*remarks, *notes),
        width=18.0,
        height=14.0,
    )
