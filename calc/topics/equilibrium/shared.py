"""What charged bodies at rest share, on a slope, on a vertical line and on threads: laws, fields, common steps.

Equilibrium: the net force is zero. Just after a string is cut its force is gone and every
other force is unchanged, so the net force has the size the tension had: a = T/m.
F_E = k Q₁ Q₂ / r² with the sizes of the charges. Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from calc.model.answers import Mark
from calc.model.questions import Check, Choice, Data, Input, Plan, Refusal, Step
from calc.topics.shared.free_bodies import FBD_ASK as FBD_ASK
from calc.topics.shared.free_bodies import FBD_RULES as FBD_RULES
from calc.topics.shared.free_bodies import arrow_points as arrow_points
from calc.topics.shared.quantities import Quantity, electrostatic_force
from calc.working.chain import told
from calc.working.declaring import Given
from calc.working.solving import Situation, plan

NO_PUSH = "A string cannot push: no equilibrium this way."
SLACK = "The tension is zero: the string is slack, and the forces just balance without it."
NO_STRING = "There is no string to cut. Choose a string, or ask for something else."
NOT_CONSTANT = (
    "After the cut the distance changes, so the electrostatic force and the acceleration change from moment to moment."
    " The equations of motion need a constant acceleration and may not be used: ask for the acceleration at the instant"
    " of the cut."
)
NO_SPEED = ("v", "the speed some time after the cut", NOT_CONSTANT)
SAY_ACTING = "Say whether the spheres attract or repel: the sign of one of the charges is not known."
ONE_SIGN = "Give the sign of at least one charge: the direction of a field depends on it."
UNSTABLE = (
    "Held by attraction from above this equilibrium is unstable: a little closer and the attraction wins, "
    "a little further away and the weight wins."
)
NEUTRAL = "The electrostatic force is zero here: it is left out of the diagram and of the sum of the forces."
GROWS = "As the sphere moves on, does its acceleration become larger or smaller? Explain."
BALANCE_MARKS = (Mark("formula"), Mark("substitution", 2), Mark("answer"))


# --- quantities of a body on a thread ---

HUNG_MASS = Quantity("g", 1e-6, 1.0, "Mass must be greater than zero.")
LEAN = Quantity("°", 0.5, 85, "Give the angle with the vertical: more than 0° and less than 90°.", under=90.0)
GAP = Quantity("m", 1e-3, 10, "Distance must be greater than zero.", result="laid out")
APART = replace(GAP, result="")
INCLINE = Quantity("°", 1.0, 89.0, "The slope makes more than 0° and less than 90° with the horizontal.", under=90.0)
HALF_LEAN = replace(
    LEAN,
    refusal="Half the angle between threads: more than 0° and less than 90°.",
    help="half the angle between the threads",
)
WHOLE_LEAN = Quantity(
    "°", 1, 170, "The angle between the threads is more than 0° and less than 180°.", under=180.0, result="laid out"
)
DEPTH = Quantity("m", 1e-2, 5, "The depth must be greater than zero.", result="laid out")
LENGTH = Quantity("m", 1e-2, 5, "The thread's length must be greater than zero.")
PUSH = replace(electrostatic_force, result="measured")
PULL = Quantity("N", 1e-6, 10.0, NO_PUSH, over=None, result="measured")
AT_CUT = Quantity(
    "m·s⁻²",
    1e-3,
    1e3,
    "The acceleration at the cut must be greater than zero: with none, there was no tension.",
    result="measured",
)
COUNT = Quantity("", 1e6, 1e14, "The number of electrons must be greater than zero.", whole=True, result="measured")


# --- forms that ask by a choice ---


def named_boxes(words: Mapping[str, str], names: str, *wants: str) -> dict[str, Input]:
    """What may be asked or typed, under its words, as a refusal calls it; what cannot be is judged by the set-up."""
    called = {name: words[name].removeprefix("the ") for name in (*names.split(), *wants)}
    return {name: Input(name, said, "", 0.0, 1.0, signed=True) for name, said in called.items()}


def by_choice(
    data: Data,
    situation: Situation,
    words: Mapping[str, str],
    names: str,
    checks: Callable[[set[str], tuple[Step, ...]], tuple[Check, ...]],
    rests: Data | None = None,
    further: Mapping[str, tuple[Step, ...]] = {},
) -> Plan:
    """The plan of a form whose choice ``want`` says what to find, one thing or several.

    words: by quantity, "the mass of the sphere". names: those that a refusal may send a reader to.
    checks: second ways, from the names an answer rests on and its steps. rests: as in ``plan``.
    further: by what is to be found, steps to more answers that fit as well.
    """
    asked = data.choices["want"]
    wants = wanted(data)
    made = plan(
        replace(data, asked=asked), situation, named_boxes(words, names, *wants), rests and replace(rests, asked=asked)
    )
    found = {"find" if len(wants) == 1 else f"find-{want}": want for want in wants}
    steps = tuple(step for part in made.parts if part.key in found for step in part.steps)
    more = tuple(step for want in wants for step in further.get(want, ()))
    parts = tuple(
        replace(part, steps=(*part.steps, *further.get(found[part.key], ())), answer=found[part.key])
        if part.key in found
        else part
        for part in made.parts
    )
    return replace(made, parts=parts, checks=checks(told(data.values, (*steps, *more)), steps))


def wanted(data: Data) -> tuple[str, ...]:
    """What is to be found, one by one."""
    return tuple(data.choices["want"].split(","))


# --- fields of the forms ------------------------------------------------------------------------------------


def optional(*given: Given) -> tuple[Given, ...]:
    """The same quantities, whose boxes may stay empty."""
    return tuple(replace(one, box=replace(one.box, optional=True)) for one in given)


WHICH = Choice(
    "which",
    "If electrons are counted, the sphere has",
    (("excess", "too many of them"), ("lacking", "too few of them")),
    quiet=("excess",),
)
ACTING = Choice(
    "acting",
    "The spheres",
    (("signs", "do what their signs say"), ("repel", "repel each other"), ("attract", "attract each other")),
    quiet=("signs",),
)
EQUAL = Choice(
    "equal",
    "The charges",
    (("own", "may differ"), ("equal", "are equal in size: use the first box only")),
    quiet=("own",),
)
LENGTHS = Choice(
    "lengths",
    "Arrows of the free-body diagram",
    (("scale", "lengths to the numbers"), ("equal", "all equally long")),
    quiet=("scale", "equal"),
    by_drawing=True,
)


# --- signs --------------------------------------------------------------------------------------------------


def known_sign(data: Data, name: str) -> int:
    """+1 or −1 for a charge whose sign is told, 0 where it is not."""
    if data.has(name):
        return data.sign(name)
    if name == "Q1" and data.has("n"):
        return -1 if data.choices["which"] == "excess" else 1
    return 0


def neutral(data: Data) -> bool:
    """Whether a charge, or the electrostatic force itself, is typed as zero."""
    return any(data.has(name) and data.values[name] == 0 for name in ("Q1", "Q2", "F_E"))


def refuse_uncharged(data: Data) -> None:
    """Without charge there is no electrostatic force, and nothing of this topic is left."""
    for name in ("Q1", "Q2"):
        if data.has(name) and data.values[name] == 0:
            raise Refusal(name, "A zero charge gives no force, so this cannot be found.")
    if data.values.get("F_E") == 0:
        raise Refusal("F_E", "Without an electrostatic force the charges do not matter. Type a force above zero.")


def refuse_unaskable(data: Data, want: str) -> None:
    """What no set of numbers can answer, whatever the set-up."""
    if data.has(want):
        raise Refusal(want, "This is what is to be found: leave its box empty.")
    if data.choices.get("equal") == "equal" and data.has("Q2"):
        raise Refusal("Q2", "The charges are equal in size: use the first box only, or choose “may differ”.")


def kind(data: Data) -> int:
    """+1 repulsion, −1 attraction, 0 where nothing tells; refuses a choice that the signs contradict."""
    product = known_sign(data, "Q1") * known_sign(data, "Q2")
    said = {"repel": 1, "attract": -1}.get(data.choices.get("acting", "signs"), 0)
    if product and said and product != said:
        do = "repel" if product > 0 else "attract"
        raise Refusal(
            "acting", f"Spheres with these signs {do} each other. Choose “do what their signs say”, or change a sign."
        )
    return product or said


def signs(data: Data, acting: int) -> tuple[int, int]:
    """The signs of both charges as far as they follow, 0 where they do not."""
    one, two = known_sign(data, "Q1"), known_sign(data, "Q2")
    return one or acting * two, two or acting * one
