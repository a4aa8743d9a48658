"""The drawing of a body that is moved along a surface: the slope or the floor, the way it goes, the pull."""

from __future__ import annotations

from collections.abc import Sequence
from math import degrees

from calc.figures import AngleMark, Arrow, Block, Dimension, Figure, Segment, Surface, polar
from calc.figures.bodies import Slope
from calc.figures.pieces import Item, Point
from calc.figures.telling import composed
from calc.model.questions import Values

LONG, HIGH, WIDE = 17.0, 1.8, 2.6  # of the surface and of the body, in lines
START = 0.2  # where a body on its way up stands, as a share of the surface


def tilt_of(v: Values, level: bool) -> float:
    """The angle of the surface (degrees), drawn as it is."""
    return 0.0 if level else degrees(v.get("theta", 0.5))


def surface(
    v: Values,
    *,
    level: bool,
    down: bool = False,
    pull: float | None = None,
    above: bool = False,
    distance: str = "L",
    title: str,
    opening: str,
    extra: Sequence[Item] = (),
) -> Figure:
    """A body at the start of its way along a surface.

    pull: the angle of the pull F with the direction of motion, degrees; None without one. above: that angle is φ
    and is marked. distance: what the way is called, '' where it is not marked.
    """
    tilt = tilt_of(v, level)
    way = tilt + 180 if down else tilt
    along = polar((0.0, 0.0), LONG * (0.78 if down else START), tilt)
    centre = polar(along, HIGH / 2, tilt + 90)
    end = polar(along, LONG * 0.58, way)
    items: list[Item] = [_ground(tilt, level), Block(centre, WIDE, HIGH, tilt, "")]
    start_u = polar(polar(along, HIGH + 1.0, tilt + 90), -1.2, way)
    items.append(Arrow(start_u, polar(start_u, 2.4, way), "", "velocity"))
    if distance:
        items.append(_way(along, end, down, 6.6 if above else 4.6, distance))
    if pull is not None:
        turn = way + (-pull if down else pull)
        nose = polar(centre, WIDE / 2, way if pull < 90 else way + 180)
        items.append(Arrow(nose, polar(nose, 4.4, turn), "F"))
        if above:
            items.append(Segment(nose, polar(nose, 4.0, way), "guide"))
            if pull > 1:
                start, stop = sorted((way, turn))
                items.append(AngleMark(nose, start, stop, "φ", 2.7))
    shown = ("theta",) if not level else ()
    return composed(
        title,
        [*items, *extra],
        opening=opening,
        drawn_from=(*shown, *(("phi",) if above else ())),
    )


def _ground(tilt: float, level: bool) -> Item:
    """The floor or the slope with its angle."""
    if level:
        return Surface((0.0, 0.0), (LONG, 0.0))
    top = polar((0.0, 0.0), LONG, tilt)
    return Slope((0.0, 0.0), top[0], tilt, "θ")


def _way(start: Point, end: Point, down: bool, offset: float, distance: str) -> Dimension:
    """The distance moved, above what is drawn on the body."""
    low, high = (end, start) if down else (start, end)
    return Dimension(low, high, distance, offset, HIGH + 1.6)
