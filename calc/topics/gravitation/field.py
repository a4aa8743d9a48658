"""g and weight at the surface of a planet and above it: any quantity from those that lead to it.

g = GM/R²; at the height h, with r = R + h from the centre, g_h = GM/r² = g (R/(R + h))². Marks: common practice, no
source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.planets import planet_scene
from calc.model.questions import A, Mistake, Values
from calc.model.relations import Relation, Said
from calc.topics.gravitation.laws import (
    AT_SURFACE,
    GRAVITATION,
    PLAIN,
    WEIGHED,
    WEIGHT,
    body_mass,
    field,
    height_above,
    radius,
)
from calc.topics.shared.quantities import force
from calc.working.declaring import Limit, declare

MORE = (
    "More than at the surface: check. g becomes smaller the further one is from the planet, so type a smaller value"
    " for the height, or a larger one for the surface."
)
CENTRE = "Measure from the centre: add {R} to {h}."
IGNORED = "You left out the height. At the height {h} the distance from the centre is {R + h}: put that in."
STOPPED = "You stopped at the distance from the centre. The height starts at the surface: subtract {R}."
FROM_SURFACE = "The height starts at the surface: take the radius away from the distance."
UP_TO_SURFACE = "The radius ends at the surface: take the height away from the distance."
LEFT_OVER = "Take one stretch away from the whole way; the other is left."
DISTANCE = Relation(
    "r = R + h",
    what="Distance from the centre of the planet",
    why="Newton's law measures from the centre: the radius up to the surface, and the height above it.",
    plain="First to the surface, then on to the object.",
    units={"r": "m", "R": "m", "h": "m"},
    marks=(),
    said={
        "h": Said("Height above the surface", FROM_SURFACE, LEFT_OVER, A),
        "R": Said("Radius of the planet", UP_TO_SURFACE, LEFT_OVER, A),
    },
    mistakes=(
        Mistake("height-as-distance", "r", "h", f"You measured from the surface. {CENTRE}"),
        Mistake("height-ignored", "r", "R", IGNORED),
        Mistake("not-subtracted", "h", "r", STOPPED),
    ),
)
ABOVE = Relation(
    "g_h = G*M/r^2",
    what="Find g at the distance r from the centre",
    why="It is the same law as at the surface; only the distance from the centre is larger.",
    plain=PLAIN,
    units={"g_h": "m·s⁻²", "M": "kg", "r": "m"},
    said={"r": Said("Find the distance from the centre"), "M": Said("Find the mass of the planet")},
    mistakes=(
        Mistake(
            "not-squared",
            "g_h",
            "G*M/r",
            "You divided by {r} only once. The pull falls with the square of the distance, so divide by {r^2}.",
        ),
        Mistake("root-omitted", "r", "G*M/g_h", "You stopped at {r^2}. Take its square root to get {r}."),
        Mistake(
            "not-squared",
            "M",
            "g_h*r/G",
            "You multiplied by {r} only once. The formula has the square of the distance, so multiply by {r^2}.",
        ),
    ),
)
ONCE = (
    "You used {R/(R + h)} once. The pull falls with the square of the distance: at twice the distance from the centre a"
    " quarter is left, not a half. Square the fraction."
)
COMPARED = Relation(
    "g_h = g*(R/(R + h))^2",
    what="Compare g at the height with g at the surface",
    why=(
        "Both are GM over the square of the distance from the centre; G and M cancel when one is divided by the other."
    ),
    plain="So many times as far from the middle, so many times squared weaker.",
    units={"g_h": "m·s⁻²", "g": "m·s⁻²", "R": "m", "h": "m"},
    mistakes=(
        Mistake("height-as-distance", "g_h", "g*(R/h)^2", f"You measured from the surface. {CENTRE}"),
        Mistake("height-ignored", "g_h", "g", IGNORED),
        Mistake("not-squared", "g_h", "g*R/(R + h)", ONCE),
        Mistake("not-subtracted", "h", "R/sqrt(g_h/g)", STOPPED),
        Mistake(
            "root-omitted",
            "h",
            "R*g/g_h - R",
            "You left out the square root. Take the square root of {g_h/g} before you solve for {h}.",
        ),
        Mistake("not-squared", "g", "g_h*(R + h)/R", ONCE),
    ),
)
RATIO_ROOT = replace(
    COMPARED,
    by_hand={
        "R": replace(
            COMPARED.step("g_h"),
            make="R = h*sqrt(g_h/g)/(1 - sqrt(g_h/g))",
            lines=("R/(R + h) = sqrt(g_h/g)", "R = (R + h)*sqrt(g_h/g)", "R*(1 - sqrt(g_h/g)) = h*sqrt(g_h/g)"),
            unit="m",
            why=(
                "G and M cancel when g at the height is divided by g at the surface. Take the square root of both"
                " sides, then bring every R to one side."
            ),
            mistakes=(
                Mistake(
                    "root-omitted",
                    "R",
                    "h*g_h/(g - g_h)",
                    "You left out the square root. Take the square root of {g_h/g} before you solve for {R}.",
                ),
            ),
        )
    },
)
WEIGHED_ABOVE = WEIGHED.renamed(w="w_h", g="g_h")
QUANTITIES = (
    body_mass(
        "M",
        "Mass of the planet",
        "The planet has a mass of {}.",
        "6,4 x 10^23 kg; 5e23 9e23 2e24 6e24; 3,3e23 4,9e24 7,2e24",
    ),
    radius(
        "R",
        "Radius of the planet",
        "The radius of the planet is {}.",
        "3,4 x 10^6 m; 3e6 4e6 5e6 6e6; 2,4e6 3,7e6 6,1e6",
        unit="m",
    ),
    field(
        "g",
        "Gravitational acceleration at the surface",
        "At the surface g is {}.",
        "?; 2 4 8 12; 1,6 3,7 8,9",
        ask="Calculate g at the surface of the planet.",
        result="measured",
    ),
    height_above(
        "h",
        "Height above the surface",
        "An object is at a height of {} above the surface.",
        "400 km; 300 500 800 950; 250 640 870",
        unfit=MORE,
    ),
    field(
        "g_h",
        "Gravitational acceleration at the height",
        "At that height g is {}.",
        "?; 1,2 1,6 1,9; 1,1 1,4",
        ask="Calculate g at that height.",
        result="measured",
    ),
    body_mass("m", "Mass of the object", "The object has a mass of {}.", "?; 20 60 85 250; 12 74 340"),
    force(
        "w",
        "Weight at the surface",
        "At the surface the object has a weight of {}.",
        "?; 150 300 600; 125 470 780",
        result="measured",
        high=1e12,
    ),
    force(
        "w_h",
        "Weight at the height",
        "At that height the object has a weight of {}.",
        "?; 120 250 500; 135 380 620",
        result="measured",
        high=1e12,
    ),
)
PRACTISED = {
    "g_h": "M R h",
    "g": "M R",
    "M": "g R",
    "R": "M g",
    "h": "g g_h R",
    "w": "m M R",
    "w_h": "m g h R",
    "m": "w g",
}


def scene(v: Values) -> Figure:
    """The planet with the object where it is asked about: above the surface, if anything is told of a height."""
    above = [name for name in ("w_h", "g_h") if name in v]
    below = [name for name in ("w", "g") if name in v]
    if above or "h" in v:
        arrow = above[0] if above else ""
        return planet_scene(arrow, kind="field" if arrow == "g_h" else "force", above=True)
    arrow = below[0] if below else ""
    return planet_scene(arrow, kind="field" if arrow == "g" else "force")


FIELD = declare(
    "field",
    "Weight and g at a planet's surface and above it",
    (ABOVE, DISTANCE, AT_SURFACE, WEIGHED, RATIO_ROOT, WEIGHED_ABOVE),
    openings=(
        "A planet without moons is a sphere; nothing else is near.",
        "Astronomers study a round planet far from all others.",
        "A probe explores a planet that nobody has visited before.",
    ),
    given=QUANTITIES,
    scene=scene,
    limits=(Limit("1.000001 - g_h/g", MORE, at="g_h"),),
    unfit={"R": MORE},
    states=(WEIGHT,),
    laws=(GRAVITATION,),
    notes=("The distance in the law runs from the centre of the planet, so a height is added to the radius.",),
    constants=("G",),
    units={"r": "m"},
    practised=PRACTISED,
    asks="g_h",
    since=4,
)
