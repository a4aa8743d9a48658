"""Two bodies on two slopes that meet at a ridge, tied over a pulley there. Nothing drawn tells which way they move."""

from __future__ import annotations

from calc.figures import words
from calc.figures.bodies import Cord, Pulley
from calc.figures.chains import ABOVE, NAME, STEEPEST, TURNED, Acting
from calc.figures.figure import Figure, Tells
from calc.figures.pieces import AngleMark, Block, Item, Point, Segment, Surface, Told, polar
from calc.figures.surfaces import BOX, ROPE, SCHEMATIC, Pulled, held, rope

PLACE = 4.8  # from the ridge down to the middle of a body
ROOM, MARK, GUIDE = 3.4, 2.6, 3.6  # below a body to the foot; of the angle there; of the level line through it
WHEEL = BOX[1] / 2  # so the string leaves it in line with both bodies
LEAST = 3.0  # a slope flatter than this is drawn with it


def over_a_ridge(
    left_deg: float,
    right_deg: float,
    *,
    labels: tuple[str, str] = ("m_1", "m_2"),
    pulled: Pulled | None = None,
    second: Acting | None = None,
    title: str = "Two bodies over a ridge",
) -> Figure:
    """A body on each side of a ridge, whose slopes make these angles with the level (above 0, up to 70).

    pulled: a rope on the right body, down its slope, or backwards on the left one. second: a further force along the
    slope, on the body of its place. Raises ValueError for a slope that cannot be drawn.
    """
    if not (0 < left_deg <= STEEPEST and 0 < right_deg <= STEEPEST):
        raise ValueError(f"Slopes of {left_deg}° and {right_deg}° cannot be drawn: above 0 and up to {STEEPEST:g}.")
    tilts = (max(left_deg, LEAST), -max(right_deg, LEAST))
    at = None if pulled is None else 0 if pulled.back else 1
    lengths = [PLACE + BOX[0] / 2 + (ROPE + 1.0 if at == side else ROOM) for side in (0, 1)]
    left, right = (polar((0.0, 0.0), (-1, 1)[n] * lengths[n], tilts[n]) for n in (0, 1))
    centres = [polar(polar((0.0, 0.0), (-1, 1)[n] * PLACE, tilts[n]), BOX[1] / 2, tilts[n] + 90) for n in (0, 1)]
    items: list[Item] = [
        Surface(left, (0.0, 0.0)),
        Surface((0.0, 0.0), right),
        Segment(left, (left[0] + GUIDE, left[1]), "guide"),
        Segment(right, (right[0] - GUIDE, right[1]), "guide"),
        AngleMark(left, 0.0, tilts[0], "θ", MARK),
        AngleMark(right, 180.0 + tilts[1], 180.0, "θ_2", MARK),
        Pulley((0.0, 0.0), WHEEL, (0.0, -2 * WHEEL)),
        Cord(polar(centres[0], BOX[0] / 2, tilts[0]), polar(centres[1], -BOX[0] / 2, tilts[1]), (0.0, 0.0), WHEEL),
        *(Block(centre, *BOX, tilt, label) for centre, tilt, label in zip(centres, tilts, labels, strict=True)),
    ]
    tells = tuple[Tells, ...]()
    if second:
        items.append(_over(centres[second.place], tilts[second.place], second))
        tells = (_told(labels[second.place], second),)
    names = words.names_in("θ") | words.names_in("θ_2")
    if pulled and at is not None:
        items += rope(pulled, centres[at], tilts[at])
        names |= words.names_in(pulled.angle_label)
    said = [_said(labels, left_deg, right_deg), _pull(labels, pulled), *(one.sentence for one in tells)]
    return Figure(
        title,
        " ".join(filter(None, said)),
        tuple(items),
        (SCHEMATIC,),
        unit=1.0,
        drawn_from=tuple(sorted(names)),
        tells=tells,
    )


def _over(centre: Point, tilt: float, second: Acting) -> Told:
    """The second force, over its body."""
    up = BOX[1] / 2 + ABOVE + (NAME if abs(tilt) > TURNED else 0.0)
    half = BOX[0] / 2 - 0.1
    ends = [polar(polar(centre, side * half, tilt), up, tilt + 90) for side in ((1, -1) if second.back else (-1, 1))]
    return Told(ends[0], ends[1], second.label, label_at="middle")


def _down(place: int, back: bool) -> str:
    """Which way along its slope, for the body of a place: forwards is over the ridge to the right."""
    return "up the slope" if (place == 0) != back else "down the slope"


def _told(label: str, second: Acting) -> Tells:
    """The second force in words."""
    who, name = words.plain(label), words.plain(second.label)
    way = _down(second.place, second.back)
    said = f"An arrow labelled {name} over {who} points {way}: a second force on {who}."
    return Tells(said, tuple(sorted(words.names_in(second.label))))


def _said(labels: tuple[str, str], left: float, right: float) -> str:
    """What stands where."""
    one, two = (words.plain(label) for label in labels)
    return (
        f"Two slopes meet at a ridge. Box {one} stands on the left one, at {words.degrees(left)} (marked θ), box {two}"
        f" on the right one, at {words.degrees(right)} (marked θ2). A string joins them over a pulley at the ridge."
    )


def _pull(labels: tuple[str, str], pulled: Pulled | None) -> str:
    """The rope in words: it always pulls away from the ridge, down its slope."""
    if not pulled:
        return ""
    return (
        held(pulled._replace(back=True), 1.0)
        .strip()
        .replace(" it ", f" {words.plain(labels[0 if pulled.back else 1])} ")
    )
