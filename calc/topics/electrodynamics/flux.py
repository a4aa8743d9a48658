"""The magnetic flux through a coil, with the angle from the normal or from the plane, and the area of round and
square coils.

Φ = BA cos θ, θ between field and normal: data-sheet equation. Mistakes and marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import cos, degrees, pi
from random import Random
from typing import cast

from calc.figures import Figure
from calc.figures.coils import coil_in_field
from calc.model.questions import A, Data, Mistake, Refusal, Values
from calc.model.relations import Relation, Said
from calc.topics.electrodynamics.laws import (
    FLUX,
    area,
    diameter,
    flux,
    from_normal,
    from_plane,
    magnetic_field,
    radius,
    side,
)
from calc.topics.electrodynamics.numbers import asked_of, number, typed_as, units_of
from calc.working.declaring import boxes, state, told
from calc.working.solving import Limit, Situation, question

TOO_MUCH = (
    "More flux than BA: a coil that faces the field squarely has the flux BA, and no other position has more. Check the"
    " flux, the field and the area."
)
PLANE_ANGLE = (
    "You used the angle to the plane of the coil. Angle to the normal: use {cos(theta)}, with {theta}"
    " between the field and the normal."
)
THROUGH = Relation(
    "Phi = B*A*cos(theta)",
    what="Use the definition of magnetic flux",
    why="Only the component of the field at right angles to the coil goes through it, so take the cosine.",
    plain="Count how much field goes through the loop: most when it faces the field, none when it is edge-on.",
    units={"Phi": "Wb", "B": "T", "A": "m²", "theta": "°"},
    quotes=(FLUX.name,),
    mistakes=(
        Mistake("plane-angle", "Phi", "B*A*sin(theta)", PLANE_ANGLE),
        Mistake("plane-angle", "B", "Phi/(A*sin(theta))", PLANE_ANGLE),
        Mistake("plane-angle", "A", "Phi/(B*sin(theta))", PLANE_ANGLE),
        Mistake("plane-angle", "theta", "asin(Phi/(B*A))", PLANE_ANGLE),
        Mistake(
            "angle-left-out",
            "Phi",
            "B*A",
            "You left out the angle. Only the component at right angles to the coil counts: multiply by {cos(theta)}.",
        ),
    ),
)
TILTED = Relation(
    "theta = deg90 - beta",
    what="The angle with the normal",
    why="The normal stands at right angles to the plane of the coil; what is given is the angle with the plane.",
    plain="The two angles fill a quarter turn.",
    units={"theta": "°", "beta": "°"},
    marks=(),
    said={"beta": Said("The angle with the plane of the coil", marks=A)},
)
BEHIND = replace(TILTED, law="theta = deg90 + beta")
ROUND = Relation(
    "A = pi*r^2",
    what="Area of a circle",
    why="The coil is round, and only the field inside it counts.",
    units={"A": "m²", "r": "m"},
    marks=(),
    said={"r": Said("The radius of the coil", marks=A)},
    mistakes=(
        Mistake(
            "diameter-as-radius",
            "A",
            "pi*(2*r)^2",
            "You put in the diameter. Halve it: the radius is {r}.",
            "the answer is four times the right one",
        ),
    ),
)
ACROSS = Relation(
    "D = 2*r",
    what="Diameter and radius",
    why="The diameter is twice the radius.",
    units={"D": "m", "r": "m"},
    marks=(),
    said={"r": Said("Half the diameter"), "D": Said(marks=A)},
)
SQUARE = Relation(
    "A = s^2",
    what="Area of a square",
    why="All sides of the coil are as long as each other.",
    units={"A": "m²", "s": "m"},
    marks=(),
    said={"s": Said("The side of the coil", marks=A)},
)
RECTANGLE = replace(
    SQUARE,
    law="A = s*s2",
    what="Area of a rectangle",
    why="Length times width; only the field inside the coil counts.",
    units={"A": "m²", "s": "m", "s2": "m"},
    said={"s": Said("The side of the coil", marks=A), "s2": Said("The other side of the coil", marks=A)},
)
SHAPE = (
    radius(
        "r",
        "Radius of a round coil",
        "The coil is round, with a radius of {}.",
        "; 3 4 5 6 cm; 2,5 3,5 4,5",
        unit="cm",
        ask="The coil is round. Calculate its radius.",
    ),
    diameter(
        "D",
        "Diameter of a round coil",
        "The coil is round, with a diameter of {}.",
        "; 8 10 12 cm; 7 9",
        unit="cm",
        ask="The coil is round. Calculate its diameter.",
    ),
    side(
        "s",
        "Side of a square coil (or length of a rectangle)",
        "One side of the coil is {} long.",
        "; 5 10 12 20 cm; 7,5",
        unit="cm",
        ask="The coil is a rectangle. Calculate the length of the side that is not given.",
    ),
    side(
        "s2",
        "Other side (if it is not square)",
        "The coil is a rectangle; its other side is {} long.",
        "; 6 8 15 cm; 5,5",
        unit="cm",
        ask="The coil is a rectangle. Calculate the length of the side that is not given.",
    ),
)
BOXES = (
    magnetic_field("B", "Magnetic field", "The magnetic field is {}.", "0,4 T; 0,2 0,4 0,5 0,8; 0,15 0,35 0,65"),
    area("A", "Area of the coil", "The coil has an area of {}.", "?; 20 40 50 80 cm^2; 35 64 125", unit="cm²"),
    *SHAPE,
    from_normal(
        "theta",
        "Angle with the normal of the coil",
        "The angle between the field and the normal of the coil is {}.",
        "60°; 30 60 75; 25 40 70 120",
        ask="Calculate the angle between the field and the normal of the coil.",
        told_at={0.0: "The field is at right angles to the plane of the coil, along its normal."},
        unfit=TOO_MUCH,
    ),
    from_plane(
        "beta",
        "Angle with the plane of the coil",
        "The angle between the field and the plane of the coil is {}.",
        "; 30 60 90; 20 50 65",
        ask="Calculate the angle between the field and the plane of the coil.",
        told_at={0.0: "The plane of the coil is parallel to the field."},
        unfit=TOO_MUCH,
    ),
    flux(
        "Phi",
        "Magnetic flux through the coil",
        "The magnetic flux through the coil is {}.",
        "?",
        unit="mWb",
        result="measured",
    ),
)
EITHER = "A coil is round or has straight sides, not both: leave the radius and the diameter empty, or the sides."
UNITS = units_of(BOXES)
ROUND_NAMES, SIDES = ("r", "D"), ("s", "s2")


SQUARE_TOLD = "The coil is a square with sides of {}."
SQUARE_ASKED = "The coil is a square. Calculate the length of its sides."


def wanted(data: Data) -> set[str]:
    """What is given or asked."""
    return {*data.values, *data.asked_names}


def shaped(data: Data) -> tuple[Relation, ...]:
    """How the area follows from the shape that is told. Raises Refusal for two shapes at once."""
    names = wanted(data)
    straight = [name for name in SIDES if name in names]
    if names & set(ROUND_NAMES):
        if straight:
            raise Refusal(straight[0] if data.has(straight[0]) else None, EITHER)
        return (ROUND, ACROSS)
    if "s2" in names:
        return (RECTANGLE,)
    return (SQUARE,) if straight else ()


def felt(mistakes: tuple[Mistake, ...], angle: float | None, plane: bool = False) -> tuple[Mistake, ...]:
    """The mistakes that show: without its angle the flux is wrong only where the field is not along the normal."""
    straight = angle is not None and abs(angle - (pi / 2 if plane else 0.0)) < 1e-9
    return tuple(one for one in mistakes if not (straight and one.key == "angle-left-out"))


def scene(v: Values) -> Figure:
    """The coil edge-on at its angle; at one of our own where none is told."""
    theta = degrees(v["theta"]) if "theta" in v else 40.0
    shown = tuple(name for name in ("theta", "beta") if name in v)
    return coil_in_field(theta, plane="β" if "beta" in v else "", shows=shown)


def situation(data: Data) -> Situation:
    """The coil as it is told; behind it where the normal points against the field."""
    names, v = wanted(data), data.values
    tilted: tuple[Relation, ...] = ()
    if "beta" in names:
        behind = v.get("theta", 0.0) > pi / 2 or v.get("Phi", 0.0) < 0
        tilted = (BEHIND if behind else TILTED,)
    base = told(BOXES)
    angle = (v["theta"], False) if "theta" in v else (v.get("beta"), True)
    return replace(
        base,
        tell={**base.tell, **({} if "s2" in names else {"s": SQUARE_TOLD})},
        ask={**base.ask, **({} if "s2" in names else {"s": SQUARE_ASKED})},
        relations=(replace(THROUGH, mistakes=felt(THROUGH.mistakes, *angle)), *tilted, *shaped(data)),
        openings=(
            "A flat coil is held in a uniform magnetic field.",
            "A loop of wire stands in a uniform magnetic field.",
            "A search coil is put into the uniform field between two magnets.",
        ),
        unfit={"theta": TOO_MUCH, "beta": TOO_MUCH},
        limits=(Limit("1.000001*B*A - abs(Phi) + 1e-300", TOO_MUCH, at="Phi"),),
        stated=(state(FLUX),),
        scene=scene,
        notes=(
            "The normal is the line at right angles to the plane of the coil. Largest flux: field along the normal."
            " No flux: field along the plane.",
        ),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """One shape, one angle, and a flux that fits them."""
    draw = cast(Random, random)
    names = [one.box.name for one in BOXES]
    asked = asked_of(random, "Phi")
    shape = (
        asked
        if asked in ("A", *ROUND_NAMES, *SIDES)
        else draw.choice(("A", "r", "D", "s") if level == 1 else ("r", "D", "s", "s2"))
    )
    angle = asked if asked in ("theta", "beta") else draw.choice(("theta", "beta"))
    given = {"B", angle, shape} | ({"s"} if shape == "s2" else set())
    world = {name: number(typed, name, UNITS) for name in given if typed[name]}
    for name in given - set(world):
        world[name] = {"B": 0.3, "A": 4e-3, "theta": pi / 3, "beta": pi / 5}.get(name, 0.08)
    sides = world.get("s", 0.0) * world.get("s2", world.get("s", 0.0))
    size = world.get("A") or pi * (world.get("r") or world.get("D", 0.0) / 2) ** 2 or sides
    normal = world["theta"] if "theta" in world else pi / 2 - world["beta"]
    out = {**typed, **{name: "" for name in names if name not in given or name == asked}}
    through = world["B"] * size * cos(normal)
    return out if asked == "Phi" else {**out, "Phi": typed_as(through, "mWb")}


COIL = question(
    "flux",
    "Magnetic flux through a coil",
    situation,
    **boxes(*BOXES, example={"A": "50 cm^2"}),
    laws=(FLUX.name,),
    asks="Phi",
    adjust=practise,
    since=6,
)
