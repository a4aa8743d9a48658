"""Let go inside a lift that accelerates: relative to the lift it falls with g + a, upwards positive.

Seen from the ground the body has the acceleration −g and the lift a; the difference is what counts inside. Either
direction may be the positive one. Refusals, mistakes and marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from calc.figures import Figure
from calc.figures.vertical import Height, Place, vertical
from calc.model.directions import UP_DOWN
from calc.model.questions import Data, Mistake
from calc.model.relations import Relation
from calc.topics.projectile.equations import YOUNGER, only_given, sense_stated, turned
from calc.topics.projectile.laws import DOWNWARDS, FREE_FALL
from calc.topics.shared.quantities import AGAINST, Quantity, length, speed, time
from calc.working.declaring import boxes, state, told
from calc.working.solving import Limit, Situation, question

FLOATS = (
    "It does not reach the floor: a lift whose acceleration is g downwards, or more, falls as fast as what is let go in"
    " it. Check the acceleration and its sign."
)
PLAIN = "A floor that speeds up to meet it makes the fall shorter; one that gives way makes it longer."


@lru_cache(maxsize=2)
def laws(up: bool) -> tuple[Relation, ...]:
    """The fall and the speed as seen from the lift."""
    inside, wrong = ("g + a", "g - a") if up else ("g - a", "g + a")
    left_out = f"You left out the acceleration of the lift. Its floor is accelerated too: use {{{inside}}} for g."
    meets = f"A floor that is accelerated upwards comes to meet the body: use {{{inside}}} with the sign of {{a}}."
    turned_round = f"You {'subtracted' if up else 'added'} the acceleration of the lift. {meets}"
    why = (
        "Seen from the ground, the body is accelerated by −g and the floor by a. Seen from the lift, the body is"
        " accelerated by g + a towards the floor, and it starts at rest there."
        if up
        else "Seen from the ground, the body is accelerated by g and the floor by a, downwards positive. Seen from the"
        " lift, the body is accelerated by g − a towards the floor, and it starts at rest there."
    )

    def law(form: str, what: str, *slips: tuple[str, str]) -> Relation:
        """slips: a name and its wrong form, with {} for the wrong acceleration."""
        mistakes = [
            Mistake(key, name, wrong_form.format(a), say)
            for name, wrong_form in slips
            for key, a, say in (("lift-left-out", "g", left_out), ("lift-subtracted", f"({wrong})", turned_round))
        ]
        return Relation(form, what=what, why=why, plain=PLAIN, mistakes=tuple(mistakes))

    return (
        law(
            f"h = 1/2*({inside})*t^2",
            "The fall as seen from the lift",
            ("t", "sqrt(2*h/{})"),
            ("h", "1/2*{}*t^2"),
        ),
        law(f"v = ({inside})*t", "The speed as seen from the lift", ("v", "{}*t")),
    )


of_lift = Quantity("m·s⁻²", 1e-3, 1e3, typed="m/s^2", over=None, signed=True, help=AGAINST)
QUANTITIES = (
    length(
        "h", "Height above the floor of the lift", "It is let go {} above the floor of the lift.", "1,8 m; 1,2 2; 1 1,9"
    ),
    of_lift(
        "a",
        "Acceleration of the lift",
        "The acceleration of the lift is {}.",
        "1,5 m/s^2; 1,5 2 -1,5 -2; 1,2 2,4 -1,2 -2,4",
        told_at={0.0: "The velocity of the lift is constant."},
    ),
    time("t", "Time to the floor of the lift", "It takes {} to the floor.", "; 0,52 0,68; 0,5 0,66"),
    speed(
        "v",
        "Speed at the floor, as seen in the lift",
        "As seen in the lift its speed at the floor is {}.",
        "; 5 6,5; 4,8 6,4",
    ),
)


OPENINGS = (
    "In a lift a coin is let go at rest relative to the lift. Upwards is positive.",
    "Someone in a lift holds a pen still and lets it go. Take upwards as positive.",
    "From a shelf inside a glass lift a bolt comes loose; until then it moved with the lift. Upwards is positive.",
)
GIVEN = {"t": "h a", "h": "a t", "v": "a t", "a": "h t"}


def scene(up: bool) -> Figure:
    """The body above the floor of the lift."""
    return vertical(
        [Place("", 1.0)],
        [Height(0.0, 1.0, "h")],
        ground=0.0,
        positive="up" if up else "down",
        title="Inside the lift",
    )


def situation(data: Data) -> Situation:
    """The lift in the sign of the positive direction."""
    up = data.choices["positive"] == "up"
    return replace(
        told(QUANTITIES),
        relations=laws(up),
        openings=tuple(sense_stated(one, up) for one in OPENINGS),
        ways={"a": (UP_DOWN, "up" if up else "down")},
        limits=(Limit("g + a" if up else "g - a", FLOATS, at="a"),),
        scene=lambda v: scene(up),
        stated=(state(DOWNWARDS),),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """What leads to the unknown drawn, with the sign of the positive direction."""
    return turned(only_given(typed, GIVEN, [one.box.name for one in QUANTITIES]), "a")


LIFT = question(
    "lift",
    "Let go inside an accelerating lift",
    situation,
    **boxes(YOUNGER, *QUANTITIES),
    laws=(DOWNWARDS.name, FREE_FALL.name),
    constants=("g",),
    asks="t",
    adjust=practise,
    since=4,
)
