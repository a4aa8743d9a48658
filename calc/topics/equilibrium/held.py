"""The questions about one charged sphere held on a line: on a smooth slope, or straight up and down.

Type what is known, pick what is asked: the steps between are put together from the balance
of forces, Coulomb's law and the second law just after the cut.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import cos, sin

from calc.model.answers import Point
from calc.model.constants import SHEET
from calc.model.questions import Check, Choice, Data, Draw, Part, Plan, Question, Refusal, Step
from calc.topics.equilibrium.along import Line, line_of
from calc.topics.equilibrium.along_drawn import draw_part, judge, line_checks
from calc.topics.equilibrium.held_scene import scene, story
from calc.topics.equilibrium.practised import one_of, si
from calc.topics.equilibrium.relations import steps_of
from calc.topics.equilibrium.rough import plan_rough
from calc.topics.equilibrium.shared import (
    ACTING,
    APART,
    AT_CUT,
    COUNT,
    EQUAL,
    FBD_RULES,
    GAP,
    GROWS,
    HUNG_MASS,
    INCLINE,
    LENGTHS,
    NEUTRAL,
    NO_SPEED,
    NO_STRING,
    ONE_SIGN,
    PULL,
    PUSH,
    SAY_ACTING,
    SLACK,
    UNSTABLE,
    WHICH,
    by_choice,
    named_boxes,
    optional,
    refuse_unaskable,
    refuse_uncharged,
    wanted,
)
from calc.topics.shared.electrostatics import COULOMB, EQUILIBRIUM, SECOND
from calc.topics.shared.quantities import Quantity, charge, friction_coefficient
from calc.working.chain import follows, spread
from calc.working.declaring import Given, boxes, told
from calc.working.solving import Situation, led

SCHOOL_K, SCHOOL_G = SHEET["k"].school, SHEET["g"].school
ASKED = {
    "F_E": "Calculate the electrostatic force on the sphere.",
    "N": "Calculate the normal force on the sphere.",
    "n": "Calculate how many electrons the sphere has too many or too few.",
    "r": "Calculate the distance between the two charges.",
    "theta": "Calculate the angle of the slope with the horizontal.",
    "a": "The string is cut. Calculate the acceleration of the sphere at that instant.",
    "E_net": "Calculate the net electric field of the two charges at the point where the string is tied.",
}
WORDS = {
    "T": "the tension in the string",
    "F_E": "the electrostatic force",
    "N": "the normal force",
    "Q1": "the charge on the sphere",
    "Q2": "the fixed charge",
    "n": "the number of electrons too many or too few",
    "r": "the distance between the charges",
    "m": "the mass of the sphere",
    "theta": "the angle of the slope",
    "a": "the acceleration at the instant of the cut",
    "E_net": "the net field where the string is tied",
    "f": "the friction on it, and whether it stays",
}
HELPFUL = "m theta F_E T N r Q1 Q2 a"


# --- the plan -----------------------------------------------------------------------------------------------


def plan_slope(data: Data) -> Plan:
    """On a smooth slope; with a coefficient, or where friction is asked, on a rough one."""
    if "f" in wanted(data) or data.values.get("mu_s"):
        return plan_rough(data)
    return plan_line(data, slope=True)


def plan_vertical(data: Data) -> Plan:
    return plan_line(data, slope=False)


def plan_line(data: Data, slope: bool) -> Plan:
    """The free-body diagram, what is asked, and what the cut or a nudge would do."""
    wants = wanted(data)
    for want in wants:
        refuse_before(data, want)
    line = line_of(data, slope)

    def checks(names: set[str], steps: Sequence[Step]) -> tuple[Check, ...]:
        return line_checks(line, names, steps)

    return by_choice(data, at_rest(data, line, wants), WORDS, HELPFUL, checks)


def at_rest(data: Data, line: Line, wants: tuple[str, ...]) -> Situation:
    """What holds for a sphere at rest on the line, and how it is told."""
    laws, constants = line.laws(), data.settings.constants()
    directed = line.neutral or line.lift != 0  # else no arrow can be drawn for F_E
    ways = steps_of(*laws)
    if not directed and not all(follows(data.known, ways, want) for want in wants):
        rising = steps_of(*replace(line, lift=1).laws())
        led(replace(data, asked=",".join(wants)), rising, named_boxes(WORDS, HELPFUL, *wants))
        raise Refusal("acting", SAY_ACTING)
    known = spread(data.values, ways, constants)
    if "E_net" in wants:
        if not (line.sign_1 and line.sign_2):
            raise Refusal("Q1", ONE_SIGN)
        laws += line.field_laws(data.values["d"], known.get("r"))
    notes = {
        SLACK: line.string != "none" and known.get("T") == 0,
        FBD_RULES: directed,
        NEUTRAL: line.neutral,
        UNSTABLE: line.unstable,
    }
    return replace(
        told(ON_SLOPE, ("T",)),
        relations=laws,
        openings=(story(data, line),),
        ask=ASKED,
        stated=(draw_part(line, data, ways),) if directed else (),
        later=lambda data, values: later_parts(line, data, ways, wants) if directed else (),
        judge=judge(line, data),
        scene=lambda v: scene(line, v),
        notes=tuple(note for note, holds in notes.items() if holds),
    )


def refuse_before(data: Data, want: str) -> None:
    """What no set of numbers can answer."""
    refuse_unaskable(data, want)
    if want in ("F_E", "Q1", "Q2", "n", "r", "E_net"):
        refuse_uncharged(data)
    if data.choices["string"] == "none":
        if want in ("a", "T", "E_net"):
            raise Refusal("want", NO_STRING)
        for name in ("T", "a"):
            if data.has(name):
                raise Refusal(name, "Without a string there is nothing to pull or to cut: leave this empty.")
    if want == "E_net" and not data.has("d"):
        raise Refusal("d", "Give the distance from the sphere to where the string is tied.")
    if want == "Q2" and data.choices["equal"] == "equal":
        raise Refusal("want", "The charges are equal in size: ask for the charge on the sphere instead.")


def later_parts(line: Line, data: Data, ways: list[Step], wants: tuple[str, ...]) -> tuple[Part, ...]:
    """After the cut: the diagram and what becomes of a. Without a string: what a nudge does."""
    if "a" in wants:
        ask = GROWS.replace("become larger or smaller", "change") if line.neutral else GROWS
        cut = draw_part(line, data, ways, "draw-cut", cut=True)
        return (cut, Part("later", "explain", ask, points=line.after()))
    if line.string == "none":
        ask = "The sphere is moved a little towards the fixed charge and let go. Does it come back? Explain."
        return (Part("nudge", "explain", ask, points=nudge_points(line)),)
    return ()


def nudge_points(line: Line) -> tuple[Point, ...]:
    """Two marks: what F_E does, and who wins."""
    force, run, comes, said, key = (
        ("attraction", "towards", "does not come back", "unstable", "unstable")
        if line.side > 0
        else ("repulsion", "away from", "comes back", "stable along this line", "comes back")
    )
    return (
        Point(f"Closer, r is smaller, so the {force} F_E becomes larger.", 1, ("F_E becomes larger",)),
        Point(
            f"The net force now points {line.words(1)}, {run} the fixed charge: the sphere {comes}, the equilibrium is"
            f" {said}.",
            1,
            (key,),
        ),
    )


# --- practice -----------------------------------------------------------------------------------------------


def practise(slope: bool, typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Data that stand still: the drawn numbers, a string on the side that can pull, and another unknown at
    higher levels."""
    text = {name: str(value) for name, value in typed.items()}
    m, r, q1, q2 = (si(text[name], unit) for name, unit in (("m", "g"), ("r", "cm"), ("Q1", "nC"), ("Q2", "nC")))
    tilt = sin(si(text["theta"], "°")) if slope else 1.0
    pull, push = m * SCHOOL_G * tilt, SCHOOL_K * abs(q1 * q2) / r**2
    lift = (q1 * q2 > 0) == (text["where"] == "below")
    if 0.9 * pull <= push <= 1.1 * pull:  # nearly slack: make the sphere heavier
        text["m"], pull = f"{m * 2e3:g} g", 2 * pull
    text["string"] = "up" if not lift or push < pull else "down"
    pulled = abs(pull - push) if lift else pull + push
    wants = {1: ("T", "F_E"), 2: ("T", "a", "F_E"), 3: ("a", "Q1", "m", "r", "n")}[level]
    if slope and level > 1 and getattr(random, "rule", 1) >= ROUGH.box.since:
        wants += ("f",)
    want = one_of(random, wants)
    text.update(want=want, T="", F_E="", N="", n="", a="", d="", acting="signs", equal="own")
    if want in ("Q1", "m", "r", "n"):
        text.update({"T": f"{pulled * 1e3:.3g} mN", want: ""})
    if want in ("Q1", "n"):
        text.update(Q1="", acting="repel" if q1 * q2 > 0 else "attract")
    if want == "f":
        across = m * SCHOOL_G * cos(si(text["theta"], "°"))
        least = abs((push if lift else -push) - pull) / across
        text.update(string="none", mu_s=f"{least * one_of(random, (0.65, 0.8, 1.25, 1.5)):.2g}".replace(".", ","))
    if not slope and lift and one_of(random, ("hover", "string", "string")) == "hover":
        text.update(string="none", want="r", r="", T="", acting="signs")
        text["Q1"] = text["Q1"] or f"{q1 * 1e9:.3g} nC"
        text["m"] = text["m"] or f"{m * 1e3:.3g} g"
    return {name: text[name] for name in typed}


def practise_slope(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    return practise(True, typed, random, level)


def practise_vertical(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    return practise(False, typed, random, level)


# --- the forms ----------------------------------------------------------------------------------------------


def to_be_found(*names: str) -> Choice:
    options = tuple((name, WORDS[name]) for name in names)
    return Choice("want", "What is to be found", options, finds=True, several=True, never=(NO_SPEED,))


def given_on_line(mass: str, first: str, second: str, gap: str) -> tuple[Given, ...]:
    """The quantities of a sphere held on a line; the numbers of its mass, both charges and their distance."""
    return optional(
        HUNG_MASS("m", "Mass of the sphere", "", mass),
        charge("Q1", "Charge on the sphere", "", first + "; 20 30 40 50 60 80 -25 -45 -70 nC; 36 54 72 -28 -64"),
        COUNT("n", "Electrons too many or too few on the sphere", ""),
        charge("Q2", "Charge fixed in place", "", second + "; 30 40 50 60 90 -35 -55 -80; 48 66 -42 -75"),
        GAP("r", "Distance between the charges", "", gap + "; 3 4 5 6 8 cm; 3,5 4,5 7,5", unit="m"),
        PUSH("F_E", "Electrostatic force (size)", "The electrostatic force on the sphere is {}."),
        PULL("T", "Tension in the string", "The tension in the string is {}."),
        AT_CUT(
            "a",
            "Acceleration at the instant the string is cut",
            "Were the string cut, the sphere would start with an acceleration of {}.",
        ),
        APART(
            "d",
            "Distance from the sphere to where the string is tied",
            "The string is tied to a post {} from the sphere.",
        ),
    )


ON_SLOPE = given_on_line("25 g; 8 10 12 15 20 25; 7,5 13,5 18", "+80 nC", "+50 nC", "3 cm")
INCLINATION, NORMAL = optional(
    INCLINE("theta", "Angle of the slope with the horizontal", "", "35°; 20 25 30 35 40 50; 22,5 37 53"),
    Quantity("N", 1e-6, 10.0, "Enter the size of the force: more than zero.", result="measured")(
        "N", "Normal force", "The normal force on the sphere is {}."
    ),
)
ON_SLOPE = (ON_SLOPE[0], INCLINATION, *ON_SLOPE[1:7], NORMAL, *ON_SLOPE[7:])
(ROUGH,) = optional(friction_coefficient("mu_s", "Coefficient of static friction (0: smooth)", ""))
ROUGH = replace(ROUGH, box=replace(ROUGH.box, since=5))
UPRIGHT = given_on_line("3 g; 2 3 4 5 6 8; 2,5 4,5 7,2", "+60 nC", "+90 nC", "?")
WHERE = Choice("where", "The fixed charge is", (("below", "below the sphere"), ("above", "above the sphere")))
WHERE_DRAWN = {"where": Draw(("below", "above"))}
WEIGHT = Choice(
    "weight",
    "The weight in the free-body diagram",
    (("whole", "as one arrow"), ("components", "with its two components dashed")),
    quiet=("whole", "components"),
    by_drawing=True,
)

SLOPE = Question(
    key="slope",
    title="Charged sphere on a slope",
    **boxes(
        to_be_found("T", "F_E", "N", "Q1", "Q2", "n", "r", "m", "theta", "a", "E_net", "f"),
        WHERE,
        Choice(
            "string",
            "A string parallel to the slope pulls the sphere",
            (("up", "up the slope"), ("down", "down the slope"), ("none", "there is no string")),
        ),
        *ON_SLOPE,
        ROUGH,
        *(ACTING, EQUAL, WHICH, WEIGHT, LENGTHS),
        draws=WHERE_DRAWN,
    ),
    plan=plan_slope,
    constants=("k", "g", "e"),
    laws=(EQUILIBRIUM.name, COULOMB.name, SECOND.name),
    adjust=practise_slope,
)

VERTICAL = Question(
    key="vertical",
    title="Hovering, hanging or tied down beside a charge",
    **boxes(
        to_be_found("T", "F_E", "Q1", "Q2", "n", "r", "m", "a", "E_net"),
        WHERE,
        Choice(
            "string",
            "A vertical string pulls the sphere",
            (
                ("none", "there is no string: it hovers"),
                ("up", "upwards: it hangs"),
                ("down", "downwards: it is tied down"),
            ),
        ),
        *UPRIGHT,
        *(ACTING, EQUAL, WHICH, LENGTHS),
        draws=WHERE_DRAWN,
        example={"want": "r"},
    ),
    plan=plan_vertical,
    constants=("k", "g", "e"),
    laws=(EQUILIBRIUM.name, COULOMB.name, SECOND.name),
    adjust=practise_vertical,
)
