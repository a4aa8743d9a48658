"""Over the top of a slope, when the string breaks: new free-body diagrams, g for what hangs, and the body on the slope.

Moving up, mg sin θ and friction both act down the slope: m₁a₁ = m₁g sin θ + f; moving down friction still acts up it.
Marks: common practice, no source.
"""

from __future__ import annotations

from math import degrees

from calc.model.answers import Point
from calc.model.directions import ALONG_SLOPE
from calc.model.questions import Choice, Data, Part, Values
from calc.model.relations import Relation
from calc.topics.newton.pairs import PLAIN_ONE, sizes
from calc.topics.shared.free_bodies import free_body
from calc.topics.shared.motion_laws import SECOND
from calc.working.declaring import Mistake
from calc.working.working import measure

CUT = Choice(
    "also",
    "Ask besides",
    (("nothing", "nothing more"), ("cut", "what happens when the string breaks")),
    besides=True,
    since=5,
)


def alone(up: bool) -> Relation:
    """The body on the slope without the string, down the slope positive."""
    sign, turned = ("+", "-") if up else ("-", "+")
    moved = "up" if up else "down"
    friction = "down" if up else "up"
    return Relation(
        f"m1*g*sin(theta) {sign} f = m1*a_1",
        what="Use Newton's second law for the body on the slope alone",
        why=(
            f"The tension has gone. It still moves {moved} at first, so friction acts {friction} the slope, as before;"
            " down the slope is positive."
        ),
        units={"a_1": "m·s⁻²"},
        plain=PLAIN_ONE,
        quotes=(SECOND.name,),
        directions={"a_1": lambda v: ALONG_SLOPE.by_sign(v["a_1"], "down-slope")},
        mistakes=(
            Mistake(
                "as-before",
                "a_1",
                "a",
                "You kept the acceleration of before. The string has gone: use {m1*g*sin(theta)} and {f} alone.",
            ),
            Mistake(
                "friction-turned",
                "a_1",
                f"(m1*g*sin(theta) {turned} f)/m1",
                f"You turned friction round. It still moves {moved} the slope at first, so friction acts {friction} it:"
                f" {'add' if up else 'subtract'} {{f}}.",
            ),
            Mistake(
                "both-masses",
                "a_1",
                f"(m1*g*sin(theta) {sign} f)/(m1 + m2)",
                "You divided by both masses. The body on the slope is alone now: divide by {m1}.",
            ),
        ),
    )


def parts(data: Data, values: Values, way: int) -> tuple[Part, ...]:
    """The hanging body, then the diagram and the acceleration of the other, where its friction is known."""
    if not {"m1", "theta", "f", "N_1"} <= values.keys():
        return ()
    g = measure(data.settings.constants()["g"], "m·s⁻²", data.settings.style, data=True).text
    tilt = degrees(values["theta"])
    back = ("down the slope", tilt + 180) if way > 0 else ("up the slope", tilt)
    rows = (
        ("F_g", "w1", "the weight, straight down", 270.0),
        ("N", "N_1", "the normal force, away from the slope at right angles to it", tilt + 90),
        ("f", "f", f"friction, {back[0]}", back[1]),
    )
    title = "Free-body diagram of the body on the slope without the string"
    who = "the body on the slope just after the string has broken"
    return (
        Part(
            "cut-falls",
            "explain",
            "While they move the string breaks. Give the acceleration of the body that hangs just afterwards, with a"
            " reason.",
            points=(
                Point("Only its weight acts on it.", 1, ("only its weight",)),
                Point(f"Its acceleration is g, {g} downwards.", 1, ("g", "downwards")),
            ),
        ),
        free_body("cut-draw", who, rows if values["f"] else rows[:2], (), data, title, tilt, sizes),
        Part(
            "cut-slides",
            "calculate",
            "Calculate the acceleration of the body on the slope just afterwards.",
            (alone(way > 0).step("a_1"),),
        ),
    )
