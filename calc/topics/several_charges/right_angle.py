"""Two forces at right angles: on a charge at a corner, on a puck that is let go, and with one force or the
resultant unknown.

F_net = √(F_x² + F_y²), tan θ = F_y/F_x; given F_net and one force, the other is √(F_net² − F₁²).
Marks: two forces 2 + 2, resultant 2, angle 1, answer and direction 1; common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from calc.figures import Figure, Force, tail_to_head
from calc.language.printing import Style
from calc.model.answers import Direction
from calc.model.directions import LEFT_RIGHT, UP_DOWN
from calc.model.questions import SA, Check, Choice, Data, Draw, Input, Part, Plan, Question, Refusal, Step, Values
from calc.model.relations import Relation
from calc.topics.several_charges.plane import angle_step, plane_figure, plane_parts, pull_part, resultant, rough_net
from calc.topics.several_charges.shared import (
    AT_RIGHT,
    LEVELS,
    NET_USED,
    NOISE,
    PLAIN_NET,
    SIDES,
    SQUARE_LEFT,
    SUPERPOSITION,
    Body,
    apart,
    axis_angle,
    charge,
    check,
    compass,
    explain,
    gap_of,
    pair,
    pooled,
    pull_of,
    size,
    size_check,
    slip,
    step,
)
from calc.topics.shared.electrostatics import COULOMB, ONLY_ONCE, SECOND, refuse_zero_charge, sign_of_charge, state
from calc.working.declaring import Given, boxes

# --- two charges at right angles ----------------------------------------------------------------------------

BY_ANGLE = "The same by the angle: a force over its share of the resultant"
SQUARES = "You subtracted the forces. They are at right angles, so add their squares and take the square root."
NOT_SIZES = (
    "You subtracted {other} from {net}. The forces are at right angles, so subtract the squares and take the square"
    " root."
)
LONGEST = "You added the squares. {net} is the longest side: subtract the square of {other} from its square."


def corner(data: Data, tags: str = "123", kind: str = "charge") -> tuple[Body, Body, Body]:
    """The charge at the corner, the one across from it and the one above or below."""
    at, across, along = tuple(tags)
    base = Body(at, 0.0, kind=kind)
    second, third = base._replace(tag=across), base._replace(tag=along)
    right = 1 if data.choices.get("across", "right") == "right" else -1
    up = 1 if data.choices.get("along", "up") == "up" else -1
    return (
        base._replace(charge=data.values[base.name]),
        second._replace(charge=data.values[second.name], x=right * data.values[gap_of(base, second)]),
        third._replace(charge=data.values[third.name], y=up * data.values[gap_of(base, third)]),
    )


def corner_parts(data: Data, bodies: tuple[Body, Body, Body]) -> tuple[Part, ...]:
    """Both forces on the charge at the corner, then draw them, add them, and check by a drawing to scale."""
    on, across, along = bodies
    style, x, y = data.settings.style, pull_of(across, on), pull_of(along, on)
    net = rough_net((across, along), on)
    size, *rest = resultant(
        x,
        y,
        net,
        on,
        style,
        slip("sizes-added", "F_net", f"{x} + {y}", "all the sizes were added", AT_RIGHT, one=x, other=y),
        slip("subtracted", "F_net", f"abs({x} - {y})", say=SQUARES),
        pooled("F_net", "", (across, along), on),
        sizes=True,
    )
    return (
        pull_part(across, on, style, corner_gaps(across, along, on)),
        pull_part(along, on, style, corner_gaps(along, across, on)),
        *plane_parts(bodies, on, (size, *rest), net, data),
    )


def corner_gaps(source: Body, other: Body, on: Body) -> list[tuple[str, str]]:
    """The distances a learner may take for that of ``source``."""
    slanting = f"sqrt({gap_of(source, on)}^2 + {gap_of(other, on)}^2)"
    wrong = [(slanting, f"the distance from {source.words} to {other.words} was used")]
    if abs(abs(source.x + source.y) - abs(other.x + other.y)) > NOISE:
        wrong.insert(0, (gap_of(other, on), f"the distance of {other.words} was used"))
    return wrong


def corner_scene(data: Data, bodies: Sequence[Body]) -> Figure:
    """The three charges with both distances."""
    gaps = [(0, i, data.said[gap_of(bodies[0], bodies[i])]) for i in (1, 2)]
    return plane_figure(bodies, bodies[0], None, distances=gaps)


def plan_corner(data: Data) -> Plan:
    refuse_zero_charge(data, "Q1", "Q2", "Q3")
    bodies = corner(data)
    return Plan(
        story=story_corner(data),
        parts=(state(SUPERPOSITION), *corner_parts(data, bodies)),
        values=dict(data.values),
        scene=lambda _: corner_scene(data, bodies),
        checks=(check(BY_ANGLE, "F_net = F_31/sin(theta)"), size_check(bodies[1:], bodies[0])),
    )


def story_corner(data: Data) -> str:
    said = data.said
    side = "to the right" if data.choices["across"] == "right" else "to the left"
    level = "above" if data.choices["along"] == "up" else "below"
    opening = data.pick(
        "Three charged beads sit on a square pegboard, seen from above.",
        "Three charged buttons lie on squared paper.",
        later=("Three small charged balls on stems are set up on a bench; the plan shows them from above.",),
    )
    return (
        f"{opening} Charge 1, {said['Q1']}, is at the corner of a right angle. Charge 2, {said['Q2']}, is"
        f" {said['r_12']} {side} of it; charge 3, {said['Q3']}, is {said['r_13']} {level} it on the page."
    )


CORNER = Question(
    key="right-angle",
    title="Two forces at right angles",
    **boxes(
        charge("Q1", "Charge 1, at the corner", "+5 nC; 2 3 4 5 -2 -4; 2,5 -3,6"),
        charge("Q2", "Charge 2, beside it", "-8 nC; 4 6 8 -5 -9; 5,5 -7,2"),
        charge("Q3", "Charge 3, above or below it", "+6 nC; 5 7 9 -4 -6; 4,8 -6,5"),
        apart("r_12", "Distance from charge 1 to charge 2", "20 cm; 10 15 20 25"),
        apart("r_13", "Distance from charge 1 to charge 3", "30 cm; 12 16 18 24 30"),
        Choice("across", "Charge 2 is", LEFT_RIGHT.options),
        Choice("along", "Charge 3 is", (("up", "above"), ("down", "below"))),
        draws={"across": Draw(("right", "left")), "along": Draw(("up", "down"))},
    ),
    plan=plan_corner,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name),
)


# --- three pucks on an air table ------------------------------------------------------------------------------------


def plan_pucks(data: Data) -> Plan:
    refuse_zero_charge(data, "Q_A", "Q_B", "Q_C")
    on, across, along = bodies = corner(data, "ABC", "puck")
    way = compass(*rough_net((across, along), on), data.settings.style)
    return Plan(
        story=story_pucks(data),
        parts=(
            state(SUPERPOSITION),
            *corner_parts(data, bodies)[:-1],
            Part(
                "acceleration",
                "calculate",
                "Puck A is let go; the others stay clamped. Calculate its acceleration at that moment.",
                (acceleration(way),),
            ),
            explain(
                "later",
                "Explain whether the acceleration of A stays the same as it moves.",
                (
                    (
                        "As A moves its distances from B and C change, and the forces depend on the inverse square of"
                        " the distance."
                    ),
                    "distances",
                ),
                (
                    (
                        "So the net force and the acceleration change: equations for constant acceleration may not be"
                        " used."
                    ),
                    "change",
                ),
            ),
            Part(
                "doubled",
                "calculate",
                "Before A is let go, both distances are made twice as large. Calculate the new net force on A without"
                " going back to the charges.",
                (doubled(way),),
            ),
        ),
        values=dict(data.values),
        scene=lambda _: corner_scene(data, bodies),
        checks=(
            check(BY_ANGLE, f"F_net = {pull_of(along, on)}/sin(theta)"),
            Check("Multiply back: mass times acceleration is the net force", "m*a = F_net"),
            check(
                "The force of B at twice the distance, straight from the law, is its share of the new net force",
                "k*Q_B*Q_A/(2*r_AB)^2 = F_new*cos(theta)",
                sizes=("Q_A", "Q_B"),
            ),
        ),
        notes=("The cushion of air carries the weight, so only the electrostatic forces act along the table.",),
    )


def acceleration(way: Direction) -> Step:
    where = replace(way, words=f"in the direction of the net force, {way.words}")
    multiplied = "You multiplied {F_net} by {m}. A larger mass is harder to speed up, so divide {F_net} by {m}."
    inverted = "You divided {m} by {F_net}. A larger force gives a larger acceleration, so divide {F_net} by {m}."
    return Relation(
        "F_net = m*a",
        units={"a": "m·s⁻²"},
        what="Newton's second law",
        quotes=(SECOND.name,),
        why=(
            "There is no friction on the air cushion, so the net force is the electrostatic one. The acceleration has"
            " its direction."
        ),
        plain="The same push speeds up a small mass more.",
        directions={"a": lambda v: where},
        mistakes=(
            slip("multiplied", "a", "F_net*m", say=multiplied),
            slip("upside-down", "a", "m/F_net", say=inverted),
        ),
    ).step("a")


def doubled(way: Direction) -> Step:
    square = "You divided by 2 only once. The force falls with the square of the distance, so divide by 2²."
    further = "You multiplied by 2². Further apart means a smaller force, so divide by it."
    once = "You divided by 2² twice. Each force has only one distance, so divide by 2² once."
    return step(
        "F_new = F_net/2^2",
        "N",
        "Compare: every force falls to a quarter",
        "Each force goes with the inverse square of its distance, so both become a quarter. The triangle of forces"
        " keeps its shape: the net force is a quarter too, in the same direction.",
        "Twice as far is four times weaker, for each of the pushes and so for their sum.",
        SA,
        directions={"F_new": lambda v: way},
        mistakes=(
            slip("not-squared", "F_new", "F_net/2", say=square),
            slip("multiplied", "F_new", "F_net*2^2", say=further),
            slip("each-distance", "F_new", "F_net/2^4", say=once),
        ),
    )


def story_pucks(data: Data) -> str:
    said = data.said
    return data.pick(
        "On the air table of a science museum three light plastic pucks are clamped at first. Seen from above, B is"
        f" {said['r_AB']} to the right of A, and C is {said['r_AC']} from A, straight up the table. A carries"
        f" {said['Q_A']}, B {said['Q_B']} and C {said['Q_C']}. The mass of A is {said['m']}.",
        f"Three charged foam pucks hover on a level table with air holes, held in place. Puck A, {said['Q_A']},"
        f" {said['m']}, is at the corner of a right angle; puck B, {said['Q_B']}, is {said['r_AB']} to its right, and"
        f" puck C, {said['Q_C']}, is {said['r_AC']} above it on the plan.",
        later=(
            (
                "A learner holds three charged pucks of foam still on an air table and draws a plan of them: from A,"
                f" {said['m']}, it is {said['r_AB']} to B, to the right, and {said['r_AC']} to C, straight up the page."
                f" Their charges are {said['Q_A']}, {said['Q_B']} and {said['Q_C']}, in this order."
            ),
        ),
    )


PUCKS = Question(
    key="pucks",
    title="Three pucks on an air table",
    **boxes(
        charge("Q_A", "Charge on puck A, at the corner", "-40 nC; 20 30 40 -25 -50; 36 -48"),
        charge("Q_B", "Charge on puck B, to the right of A", "+60 nC; 40 60 80 -45 -70; 52 -64"),
        charge("Q_C", "Charge on puck C, above A", "-50 nC; 35 55 -30 -65; 42 -58"),
        apart("r_AB", "Distance between A and B", "30 cm; 20 30 40"),
        apart("r_AC", "Distance between A and C", "25 cm; 15 25 35"),
        Input("m", "Mass of puck A", "g", 1e-5, 1, refusal="Mass must be greater than zero."),
        draws={"m": Draw((2, 4, 5, 8), "g", harder=(2.5, 6.4))},
        example={"m": "5 g"},
    ),
    plan=plan_pucks,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name, SECOND.name),
    scenario=True,
)


# --- two forces at right angles, one of them or the resultant asked -----------------------------------------

PERPENDICULAR = {
    "F_net": "Calculate the net force, with its direction.",
    "F_x": "Calculate the force along x.",
    "F_y": "Calculate the force along y.",
}
TOO_SMALL = (
    "The net force is the longest side of the right-angled triangle, so it must be larger than either force. "
    "Type a larger net force, or a smaller force."
)
BOTH = "To go on to the charge, fill in both the charge and the distance; or leave both empty."


def plan_perpendicular(data: Data) -> Plan:
    asked = data.asked
    if asked != "F_net":
        other = "F_y" if asked == "F_x" else "F_x"
        if data.values["F_net"] <= data.values[other]:
            raise Refusal("F_net", TOO_SMALL)
        for given, missing in (("Q1", "r"), ("r", "Q1")):
            if data.has(given) and not data.has(missing):
                raise Refusal(missing, BOTH)
        refuse_zero_charge(data, "Q1")
    signs = (1.0 if data.choices["across"] == "right" else -1.0, 1.0 if data.choices["along"] == "up" else -1.0)
    step_ = pythagoras(asked, signs, data.settings.style).step(asked)
    return Plan(
        story=story_perpendicular(data),
        parts=(
            state(SUPERPOSITION),
            Part("find", "calculate", PERPENDICULAR[asked], (step_,)),
            Part(
                "angle",
                "calculate",
                "Calculate the angle between the net force and the x-axis.",
                (angle_step("F_x", "F_y", signs),),
                figure=lambda v: perpendicular_figure(v, signs),
            ),
            *([source_part(data)] if asked != "F_net" and data.has("Q1") else []),
        ),
        values=dict(data.values),
        checks=(
            check(
                "The same by the angle: the forces are the shares of the net force along the axes",
                "F_net*cos(theta) = F_x",
            ),
            check("The other share", "F_net*sin(theta) = F_y"),
        ),
    )


def pythagoras(asked: str, signs: tuple[float, float], style: Style) -> Relation:
    """The net force and its two parts at right angles, worded for the one that is asked."""
    net = asked == "F_net"
    across, along = signs[0] * (net or asked == "F_x"), signs[1] * (net or asked == "F_y")
    wrong = [
        slip("sizes-added", "F_net", "F_x + F_y", "the sizes were added", AT_RIGHT, one="F_x", other="F_y"),
        slip("subtracted", "F_net", "abs(F_x - F_y)", say=SQUARES),
        slip("root-omitted", "F_net", "F_x^2 + F_y^2", say=SQUARE_LEFT, F="F_net"),
    ]
    for one, other in (("F_x", "F_y"), ("F_y", "F_x")):
        wrong += [
            slip(
                "sizes-subtracted",
                one,
                f"F_net - {other}",
                "the sizes were subtracted",
                NOT_SIZES,
                net="F_net",
                other=other,
            ),
            slip("squares-added", one, f"sqrt(F_net^2 + {other}^2)", say=LONGEST, net="F_net", other=other),
            slip("root-omitted", one, f"F_net^2 - {other}^2", say=SQUARE_LEFT, F=one),
        ]
    return Relation(
        "F_net = sqrt(F_x^2 + F_y^2)",
        what="The resultant: Pythagoras" if net else f"Pythagoras, turned round for the force along {asked[-1]}",
        why=(
            "The forces are at right angles, so their squares add."
            if net
            else "The net force is the longest side of the right-angled triangle."
        ),
        plain=PLAIN_NET,
        units=dict.fromkeys(PERPENDICULAR, "N"),
        mistakes=tuple(wrong),
        directions={asked: lambda v: compass(v["F_x"] * across, v["F_y"] * along, style)},
    )


def source_part(data: Data) -> Part:
    """The charge that gives the force just found, from Coulomb's law."""
    asked, acting = data.asked, {"attract": 1, "repel": -1}.get(data.choices["acting"], 0)
    where = sign_of_charge(-acting * data.sign("Q1")) if acting else None
    unsaid = "Whether it attracts or repels is not said, so only the size follows."
    law = pair(
        asked,
        "Q1",
        "Q2",
        "r",
        what="Coulomb's law for the size of the charge",
        directions={"Q2": lambda v: where},
        why=f"Sizes only. {'Attraction means unlike signs, repulsion like signs.' if acting else unsaid}",
        mistakes=(
            slip("not-squared", "Q2", f"{asked}*r/(k*Q1)", say=ONLY_ONCE),
            slip("net-used", "Q2", "F_net*r^2/(k*Q1)", say=NET_USED % "This charge", net="F_net", share=asked),
        ),
    )
    ask = f"The force along {asked[-1]} comes from a charge {data.said['r']} away. Calculate that charge."
    return Part("source", "calculate", ask, (law.step("Q2"),))


def perpendicular_figure(values: Values, signs: tuple[float, float]) -> Figure:
    """Both forces head to tail with the resultant and its angle."""
    forces = [
        Force("F_x", abs(values["F_x"]), 0.0 if signs[0] > 0 else 180.0),
        Force("F_y", abs(values["F_y"]), 90.0 if signs[1] > 0 else 270.0),
    ]
    net = (values["F_x"] * signs[0], values["F_y"] * signs[1])
    return tail_to_head(forces, angle=axis_angle(*net), title="Sum of two forces at right angles")


def story_perpendicular(data: Data) -> str:
    said = data.said
    ways = [dict(SIDES)[data.choices["across"]], dict(LEVELS)[data.choices["along"]]]
    opening = data.pick(
        "Two charges exert electrostatic forces at right angles on a bead in a tray.",
        "Two charges push and pull at right angles on a puck on an air table.",
        later=("A bead on a sheet of glass feels electrostatic forces of two others: along x and along y.",),
    )
    facts = [opening]
    for name, way in zip(("F_x", "F_y"), ways, strict=True):
        size = f" is {said[name]}," if data.has(name) else " is to be found; it points"
        facts.append(f"The force along {name[-1]}{size} {way}.")
    if data.has("F_net"):
        facts.append(f"The net force on it is {said['F_net']}.")
    if data.asked != "F_net" and data.has("Q1"):
        act = {"attract": " attracts it", "repel": " repels it"}.get(data.choices["acting"], "")
        facts.append(
            f"The {data.pick('bead', 'puck', later=('bead',))} carries {said['Q1']}."
            + (f" The charge that gives the force to be found{act}." if act else "")
        )
    return " ".join(facts)


SIZE = "The force must be greater than zero: enter its size; choose the direction separately."
ONWARD = "only to go on to the other charge"


def above_zero(name: str, words: str, numbers: str) -> Given:
    given = size(name, words, numbers)
    return replace(given, box=replace(given.box, over=0.0, refusal=SIZE))


def onward(given: Given) -> Given:
    return replace(given, box=replace(given.box, optional=True, help=ONWARD))


UNSAID = (("unsaid", "attracts or repels: not said"), ("attract", "attracts"), ("repel", "repels"))
TWO_FORCES = Question(
    key="components",
    title="Two forces at right angles and their net force: any one unknown",
    **boxes(
        above_zero("F_net", "Net force (size)", "7,5 uN; 13 15 17 20 25 µN; 14,5 18,6"),
        above_zero("F_x", "Force along x (size)", "4,5 uN; 5 8 9 12 µN; 6,4 11,2"),
        above_zero("F_y", "Force along y (size)", "?; 5 8 9 12 µN; 7,3 10,5"),
        Choice("across", "The force along x points", LEFT_RIGHT.options),
        Choice("along", "The force along y points", UP_DOWN.options),
        onward(charge("Q1", "Charge the forces act on", "+3 nC; 2 3 4 -5 -6")),
        onward(apart("r", "Distance to the charge giving the force to be found", "20 cm; 15 20 25 30")),
        Choice("acting", "That charge", UNSAID, quiet=("unsaid",), asked=("F_x", "F_y")),
        draws={"across": Draw(("right", "left")), "along": Draw(("up", "down")), "acting": Draw(("attract", "repel"))},
        example={"across": "left", "acting": "attract"},
    ),
    unknowns=("F_y", "F_x", "F_net"),
    plan=plan_perpendicular,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name),
)
