"""A whole question: a probe above a moon; its mass from g, force, g up there, a graph, weightlessness, a height.

The set-up and its numbers are our own. M = gR²/G, F = GMm/r² with r = R + h, g = F/m. Marks: common practice, no
source.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import cast

from calc.figures import Figure, GraphLine, graph
from calc.figures.graph_marks import Key
from calc.figures.planets import planet_scene
from calc.model.answers import Point
from calc.model.questions import Check, Data, Part, Plan, Question, Refusal, Values
from calc.topics.gravitation.field import ABOVE, DISTANCE, MORE
from calc.topics.gravitation.laws import (
    AT_SURFACE,
    GRAVITATION,
    MASS,
    TWO_BODIES,
    WEIGHED,
    WEIGHT,
    WEIGHTLESS,
    body_mass,
    field,
    height_above,
    radius,
)
from calc.working.declaring import Mistake, boxes, state

PULLED = replace(
    TWO_BODIES.renamed(m1="M", m2="m"),
    why="Moon and probe attract each other; r is measured from the centre of the moon, so it is R and h together.",
    mistakes=(
        Mistake(
            "not-squared",
            "F",
            "G*M*m/r",
            "You divided by {r} only once. The force falls with the square of the distance, so divide by {r^2}.",
        ),
        Mistake(
            "height-as-distance",
            "F",
            "G*M*m/h^2",
            "You measured from the surface. The law measures from the centre: add {R} to {h}.",
        ),
        Mistake(
            "height-ignored",
            "F",
            "G*M*m/R^2",
            "You left out the height. The distance from the centre is {R + h}: put that in.",
        ),
    ),
)
MOON_MASS = replace(AT_SURFACE.step("M"), what="Find the mass of the moon from g and its radius")
FROM_CENTRE = replace(DISTANCE.step("r"), what="Distance from the centre of the moon")
EACH_KILOGRAM = replace(
    WEIGHED.renamed(w="F", g="g_h"),
    what="g is the gravitational force on each kilogram",
    why="The gravitational force on the probe is its weight up there: mass times g of that height.",
    mistakes=(
        Mistake(
            "upside-down",
            "g_h",
            "m/F",
            "You turned the fraction over. The force on each kilogram is asked: divide {F} by {m}.",
        ),
    ),
)
BACK = Part(
    "moon",
    "explain",
    "How large is the force of the probe on the moon? Explain why the motion of the moon hardly changes.",
    points=(
        Point(
            "It is as large as the force of the moon on the probe, in the opposite direction (Newton's third law).",
            1,
            ("as large as", "opposite direction"),
        ),
        Point(
            "The mass of the moon is far larger, so this force gives it hardly any acceleration (a = F/m).",
            1,
            ("mass of the moon", "acceleration"),
        ),
    ),
)
SAME_MASS = Part(
    "mass",
    "explain",
    "Compare the mass and the weight of the probe up there with those on the ground. Give a reason.",
    points=(
        Point("Its mass is the same: the amount of matter in it has not changed.", 1, ("mass is the same",)),
        Point("Its weight is smaller, for the distance from the centre is larger.", 1, ("weight is smaller", "larger")),
    ),
)
FALLS = Part(
    "weightless",
    "explain",
    "The probe circles the moon at that height with its engine off, and nothing presses on anything inside. A newspaper"
    " writes that the moon no longer pulls at it. Use one of your answers to explain whether that is so.",
    points=(
        Point("It is not so: the gravitational force on the probe up there is not zero.", 1, ("not zero",)),
        Point(
            "Weightless means that no contact force acts: the probe and all in it fall together.",
            1,
            ("no contact force", "fall together"),
        ),
    ),
)
CURVE = (
    Point("Axes labelled g and r.", 1, ("labelled",)),
    Point("It begins at the surface, where r is R, not at r = 0.", 1, ("surface",)),
    Point("A curve that falls, steeply at first and then less and less.", 1, ("less and less",)),
    Point("It does not reach zero.", 1, ("not reach zero",)),
)
BOXES = (
    radius("R", "Radius of the moon", "", "1,6 x 10^6 m; 1,2e6 1,5e6 2e6; 1,1e6 1,7e6 2,4e6", unit="m"),
    field("g", "Gravitational acceleration at the surface", "", "1,5 m/s^2; 1,2 1,6 2; 0,9 1,4 2,3"),
    body_mass("m", "Mass of the probe", "", "350 kg; 200 400 500; 125 275 640"),
    height_above("h", "Height of the probe", "", "400 km; 200 300 500 800; 250 450 650"),
    field("g_2", "Gravitational acceleration at another height", "", "0,5 m/s^2"),
)


def scene(v: Values) -> Figure:
    """The probe above the moon."""
    return planet_scene("F", above=True, title="The probe above the moon", what="moon")


def curve(v: Values) -> Figure:
    """g against the distance from the centre, from the surface outwards."""
    return graph(
        "r",
        "g",
        [GraphLine([(1 + n / 12, 1 / (1 + n / 12) ** 2) for n in range(37)])],
        keys=[Key(1.0, 1.0, x_label="R")],
        ticks=False,
        title="g against the distance from the centre",
        description=(
            "Graph of g against r: a curve that begins where r is R and falls, steeply at first and then less and less,"
            " without reaching the axis."
        ),
    )


def plan(data: Data) -> Plan:
    """State, mass of the moon, force, g up there, the force back, graph, mass and weight, weightless, a height."""
    if data.values["g_2"] >= data.values["g"]:
        raise Refusal("g_2", MORE)
    said = data.said
    return Plan(
        story=" ".join(
            (
                data.pick(
                    f"A probe of {said['m']} is to map a round moon without air.",
                    f"An agency sends a probe of {said['m']} to a moon of a far planet; other bodies are left out.",
                    f"In a computer game a probe of {said['m']} flies over a moon; only the pull of the moon counts.",
                ),
                f"The radius of the moon is {said['R']}, and a body let fall at its surface has an acceleration of"
                f" {said['g']}. Now the probe is at a height of {said['h']} above the surface.",
            )
        ),
        parts=(
            state(GRAVITATION),
            Part("moon-mass", "calculate", "Calculate the mass of the moon.", (MOON_MASS,)),
            Part(
                "force",
                "calculate",
                "Calculate the size of the gravitational force of the moon on the probe.",
                (FROM_CENTRE, PULLED.step("F")),
            ),
            Part("field", "calculate", "Calculate g at the height of the probe.", (EACH_KILOGRAM.step("g_h"),)),
            BACK,
            Part(
                "graph",
                "draw",
                "Sketch a graph of g against the distance r from the centre of the moon, from its surface outwards.",
                points=CURVE,
                figure=curve,
            ),
            SAME_MASS,
            FALLS,
            Part(
                "height",
                "calculate",
                f"Calculate the height above the surface at which g is {said['g_2']}.",
                (
                    ABOVE.renamed(g_h="g_2", r="r_2").step("r_2"),
                    DISTANCE.renamed(r="r_2", h="h_2").step("h_2"),
                ),
            ),
        ),
        values=dict(data.values),
        scene=scene,
        checks=(
            Check("g at the height of the probe, without G and the mass of the moon", "g_h = g*(R/(R + h))^2"),
            Check("The last height gives back its g", "g_2 = g*(R/(R + h_2))^2"),
        ),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """A smaller g for the last height."""
    draw = cast(Random, random)
    g = float(str(typed["g"]).split()[0].replace(",", "."))
    return {**typed, "g_2": f"{g * draw.choice((0.2, 0.3, 0.4, 0.6)):.2g} m/s^2".replace(".", ",")}


PROBE = Question(
    key="probe",
    title="A probe above a moon",
    **boxes(*BOXES),
    plan=plan,
    constants=("G",),
    laws=(GRAVITATION.name, WEIGHT.name, MASS.name, WEIGHTLESS.name),
    adjust=practise,
    scenario=True,
    since=4,
)
