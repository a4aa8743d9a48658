"""A charged sphere held on a line: the data told as a small story, and the drawing that goes with it."""

from __future__ import annotations

from math import degrees

from calc.figures import Dimension, Figure, Segment, Sphere, Surface
from calc.figures.charges import RADIUS, sign_of
from calc.figures.figure import Tells
from calc.figures.pieces import Item
from calc.figures.scenes import Body, slope_scene
from calc.figures.words import charged
from calc.model.questions import Data, Values
from calc.topics.equilibrium.along import Line


def story(data: Data, line: Line) -> str:
    """Who is at rest where, and what is beside it; what is not given is not mentioned."""
    said = data.said
    who = "A small charged sphere" if data.values.get("Q1") != 0 else "A small uncharged sphere"
    if data.has("m"):
        who += f" of mass {said['m']}"
    if data.values.get("Q1"):
        who += f"{' and' if data.has('m') else ' with'} charge {said['Q1']}"
    if data.has("n"):
        who += f" with {said['n']} electrons too {'many' if data.choices['which'] == 'excess' else 'few'}"
    facts = [f"{who} is at rest {place(data, line)}.", holding(line)]
    other = f"A second small {'uncharged ' if data.values.get('Q2') == 0 else ''}sphere"
    if data.values.get("Q2"):
        other += f" with charge {said['Q2']}"
    if data.choices["equal"] == "equal":
        other += " with a charge of the same size"
    away = f"{said['r']} " if data.has("r") else ""
    side = "further up" if line.side > 0 else "further down"
    spot = f"on the slope, {away}{side}" if line.slope else f"{away}straight {'above' if line.side > 0 else 'below'} it"
    facts.append(f"{other} is fixed {spot}.")
    if data.choices["acting"] != "signs":
        facts.append(f"The spheres {data.choices['acting']} each other.")
    return " ".join(fact for fact in facts if fact)


def place(data: Data, line: Line) -> str:
    if not line.slope:
        return data.pick(
            "inside a smooth upright glass tube",
            "on a smooth upright rod through it",
            later=("in a narrow plastic pipe that stands upright, without friction",),
        )
    surface = data.pick(
        "a smooth insulating slope",
        "a smooth glass ramp",
        "a smooth plastic ramp",
        later=("the tilted top of a plastic box, without friction,", "a sloping air track of plastic"),
    )
    return f"on {surface}" + (f" at {data.said['theta']} to the horizontal" if data.has("theta") else "")


def holding(line: Line) -> str:
    if line.slope:
        return {
            "up": "A light string parallel to the slope ties it to a post at the top.",
            "down": "A light string parallel to the slope ties it to a post at the bottom.",
            "none": "Nothing but the electrostatic force keeps it from sliding.",
        }[line.string]
    return {
        "up": "It hangs from a light vertical string.",
        "down": "A light vertical string ties it to the table below.",
        "none": "Nothing but the electrostatic force holds it up.",
    }[line.string]


def scene(line: Line, v: Values) -> Figure:
    """The set-up, not to scale."""
    return slope_figure(line, v) if line.slope else vertical_figure(line, v)


def slope_figure(line: Line, v: Values) -> Figure:
    """Sphere A on the slope, B fixed; the slope's own angle where it is known."""
    places = (0.28, 0.68) if line.side > 0 else (0.62, 0.22)
    if line.string == "down" and line.side < 0:
        places = (0.75, 0.4)
    passes = line.string != "none" and (line.side > 0) == (line.string == "up")
    return slope_scene(
        min(max(degrees(v.get("theta", 0.5)), 8.0), 75.0),
        [
            Body("A", places[0], line.sign_1, shows=("Q1",)),
            Body("B", places[1], line.sign_2, shows=(line.other,)),
        ],
        string="up" if line.string == "up" else "down" if line.string == "down" else "",
        distances=[(0, 1, "r")],
        title="Charged sphere on a smooth slope",
        notes=("B is fixed; where the string passes it, it does not touch." if passes else "B is fixed.",),
    )


def vertical_figure(line: Line, v: Values) -> Figure:
    """Sphere A on the vertical line, B fixed above or below it."""
    gap, remark = 5.0 * line.side, ""
    items: list[Item] = [
        Sphere((0.0, 0.0), RADIUS, sign_of(line.sign_1), "A", shows=("Q1",)),
        Sphere((0.0, gap), RADIUS, sign_of(line.sign_2), "B", shows=(line.other,)),
        Dimension((0.0, min(0.0, gap)), (0.0, max(0.0, gap)), "r", -2.4, 0.3),
    ]
    rest, alone = (
        f"Sphere {charged('A', one)} is at rest, sphere {charged('B', two)} is fixed straight"
        f" {'above' if gap > 0 else 'below'} it."
        for one, two in ((line.sign_1, line.sign_2), (0, 0))
    )
    if line.string != "none":
        way = 1.0 if line.string == "up" else -1.0
        reach = way * (8.5 if way == line.side else 4.5)
        items.insert(0, Segment((0.0, way * RADIUS), (0.0, reach), "string"))
        items.insert(0, Surface((3.0 * way, reach), (-3.0 * way, reach)))
        remark = " Where the string passes it, it does not touch." if way == line.side else ""
        held = f"A vertical string runs from A {'up to the ceiling' if way > 0 else 'down to the table'}."
    else:
        items[:0] = [Segment((x, -1.6), (x, 1.9), "guide") for x in (1.3, -1.3)]
        held = "A smooth guide keeps A on the vertical line."
    return Figure(
        "Charged sphere on a vertical line",
        f"{rest} {held}",
        tuple(items),
        (f"Not to scale. B is fixed.{remark}",),
        unit=1.0,
        tells=(Tells(rest, ("Q1", line.other), alone),),
    )
