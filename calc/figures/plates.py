"""Two charged plates with the field between them."""

from __future__ import annotations

from collections.abc import Sequence

from calc.figures import words
from calc.figures.charges import RADIUS
from calc.figures.figure import Figure, Tells
from calc.figures.pieces import Dimension, Dot, Item, Plate, Point, Segment, Sign, Sphere, Text
from calc.figures.vectors import NOT_TO_SCALE, ForceLike, arrows_told, forces_of, names_of, standing


def plates_scene(
    *,
    upper_sign: Sign = "+",
    lines: int = 5,
    upright: bool = False,
    particle: str = "",
    particle_sign: Sign = "",
    particle_shows: tuple[str, ...] = (),
    forces: Sequence[ForceLike] = (),
    voltage: str = "",
    separation: str = "",
    field_label: str = "E",
    title: str = "Parallel charged plates",
    description: str = "",
    notes: Sequence[str] = (),
) -> Figure:
    """Two parallel plates with evenly spaced field lines, and a particle half-way.

    `upper_sign` is the sign of the upper plate (of the left one when `upright`);
    `lines` of 0 leaves the field out (with a particle, one line fewer where
    that number is odd). `voltage` is written at the plates,
    `separation` along a dimension line.

    Raises ValueError for fewer than 0 or more than 12 lines, or no sign.
    """
    if upper_sign not in ("+", "-") or not 0 <= lines <= 12:
        raise ValueError(f"Plates need a sign + or - (got “{upper_sign}”) and 0 to 12 field lines (got {lines}).")
    lower_sign: Sign = "-" if upper_sign == "+" else "+"
    wide, gap = 13.0, 8.0

    def place(along: float, across: float) -> Point:
        # Level plates: along is x, across is y upwards. Upright: turned, first plate left.
        return (-across, along) if upright else (along, across)

    half = gap / 2
    items: list[Item] = []
    down = half if upper_sign == "+" else -half
    if particle:
        lines -= lines % 2  # an even number leaves the middle free for the particle
    for n in range(lines):
        along = (n - (lines - 1) / 2) * wide / (lines + 0.4)
        label, shows = field_label if n == lines - 1 else "", names_of(field_label)
        items.append(Segment(place(along, down), place(along, -down), "fieldline", label, arrow=True, shows=shows))
    items.append(Plate(place(wide / 2, half), place(-wide / 2, half), upper_sign))
    items.append(Plate(place(-wide / 2, -half), place(wide / 2, -half), lower_sign))
    to_scale = True
    centre, radius = (0.0, 0.0), RADIUS * 0.8 if particle_sign else 0.0
    if particle and particle_sign:
        items.append(Sphere(centre, radius, particle_sign, particle, shows=particle_shows))
    elif particle:
        items.append(Dot(centre, particle, 0.26))
    if forces:
        arrows, to_scale = standing(centre, forces, 2.6, radius)
        items += arrows
    if separation:
        edge = -wide / 2 - 0.2
        items.append(Dimension(place(edge, half), place(edge, -half), separation, -1.2, 0.3))
    if voltage:
        items.append(Text(place(wide / 2 + 0.6, 0.0), voltage, "above" if upright else "right"))
    first, second = ("Left", "right") if upright else ("Upper", "lower")
    field, pulls = _field_told(lines, field_label), arrows_told(forces_of(forces))
    signs = f"{first} plate {_word(upper_sign)}, {second} plate {_word(lower_sign)}."
    said = [signs, *(one.sentence for one in field), *_particle_said(particle), *(one.sentence for one in pulls)]
    remarks = [] if to_scale else [NOT_TO_SCALE]
    return Figure(
        title,
        description or " ".join(said),
        tuple(items),
        (*remarks, *notes),
        unit=1.0,
        tells=() if description else (*field, *pulls),
    )


def _field_told(lines: int, label: str) -> list[Tells]:
    """What is said of the field lines, if there are any."""
    count = "One field line runs" if lines == 1 else f"{lines} evenly spaced field lines run"
    return [Tells(f"{count} from the positive to the negative plate.", names_of(label))] if lines else []


def _particle_said(particle: str) -> list[str]:
    """Where the particle is, if there is one."""
    name = words.plain(particle)
    name = f"The {name}" if name[:2].islower() and len(name) > 2 else name
    return [f"{name} is half-way between the plates."] if particle else []


def _word(sign: Sign) -> str:
    return "positive" if sign == "+" else "negative"
