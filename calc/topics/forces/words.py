"""What the questions on one body share: boxes, sentences of mistakes and refusals, the reasons of their laws."""

from __future__ import annotations

from calc.model.answers import Mark
from calc.model.directions import FORWARDS
from calc.topics.shared.quantities import Quantity
from calc.working.solving import Way

ONWARDS: Way = (
    FORWARDS.worded(forwards="in the direction of motion", backwards="against the motion, so it slows down"),
    "forwards",
)
LIFTS = "The pull lifts it off the surface: no normal force is left. Use a smaller force or a smaller angle."
JAMS = (
    "No push at this angle moves it, however large: a harder push presses it down harder, and friction keeps up. Use a"
    " smaller angle."
)
AT_REST = "It is only about to slip, so it has no acceleration yet: leave this box empty, or choose “slides”."
SLIPS_ASKED = "It is only about to slip, so it has no acceleration yet: choose “slides”, or ask for something else."
WEIGHT_ALWAYS = "You made {N} as large as the weight. {N} only balances what presses into the surface: use {%s}."
LIGHTER = "You added the vertical part of {P}. Pulling up lightens the contact: subtract {P*sin(phi)}."
HEAVIER = "You subtracted the vertical part of {P}. Pushing down adds to the contact: add {P*sin(phi)}."
COSINE = "You took the cosine for the vertical part of {P}. It lies opposite {phi}: use {P*sin(phi)}."
NO_G = "You put the mass in for the weight. Multiply it by {g}."
ALL_ALONG = "You let all of {P} act along the surface. Only a part of it does: use {P*cos(phi)}."
SINE = "You took the sine for the part of {P} along the surface. It lies next to the angle: use {P*cos(phi)}."
HELPS = "You let friction help the motion. Friction opposes sliding: subtract {f}."
IGNORED = "You left friction out. It opposes sliding: subtract {f}."
STILL_AT_REST = "You used the kinetic coefficient. It is still at rest here: use {mu_s}."
SLIDES_HERE = "You used the static coefficient. It slides here: use {mu_k}."
BY_WEIGHT = "You put the weight in for the normal force. Only what presses the surfaces together counts: use {N}."
WHOLE_PUSH = "You let friction balance all of {P}. It balances only what acts along the surface: use {P*cos(phi)}."
NO_MOTION = "You let {P} balance friction alone. The rest of its part along the surface speeds it up: subtract {m*a}."
PLAIN_N = "The ground pushes back only as hard as it is pressed."
PLAIN_F = "The harder two surfaces are pressed together, the harder it is to slide one on the other."
PLAIN_A = "What is left of the pull after friction has had its share changes the motion."
PLAIN_REST = "Nothing speeds up, so what drives it and what holds it are worth the same."
WHY_F = {
    "slides": "It slides, so friction is kinetic: μ is the coefficient of kinetic friction.",
    "about": "It is about to slip, so static friction has its largest size: μ is the coefficient of static friction.",
}
TWO = (Mark("formula"), Mark("answer"))
EACH_AXIS_MARKS = (Mark("formula", 2), Mark("substitution", 2), Mark("answer"))  # one for each equation
pull = Quantity("N", 1e-3, 1e6, "Enter the size; choose the direction.", over=None)
lean = Quantity(
    "°", 0.1, 90, "Angle lies between 0° and 90°; choose above/below.", over=None, under=90, help="0: along the surface"
)
normal = Quantity(
    "N",
    1e-3,
    1e6,
    "A surface only pushes: give the size of its force, greater than zero.",
    result="measured",
)
friction = Quantity("N", 1e-3, 1e6, "Enter the size; choose the direction.", over=None, result="measured")
EACH_AXIS = "Write one equation along the surface and one across it"
COSINE_SLOPE = "You took the cosine for the part of {P} across the slope. It lies opposite {phi}: use {P*sin(phi)}."
SWAPPED = (
    "You took the sine for the part of the weight across the slope. Try it on the level: {N} must then be {m*g}."
    " Use the cosine."
)
SINE_SLOPE = (
    "You took the cosine for the part of the weight along the slope. Try it on the level: nothing must be left."
    " Use the sine."
)


def weight(known: dict[str, float]) -> dict[str, float]:
    """F_g, where the mass is known."""
    return {"F_g": known["m"] * known["g"]} if "m" in known else {}


def typed_as(value: float, unit: str, figures: int) -> str:
    """A value to so many figures as a keyboard gives it."""
    return f"{float(f'{value:.{figures}g}'):g} {unit}".replace(".", ",")


def put_back_words(slides: bool) -> str:
    """The heading of the check of two equations put together."""
    return "Put the answer back: what drives it, what holds it" + (", what speeds it up" if slides else "")
