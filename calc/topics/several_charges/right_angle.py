"""Two forces at right angles: on a charge at a corner, and with one force or the resultant unknown.

F_net = √(F_x² + F_y²), tan θ = F_y/F_x; given F_net and one force, the other is √(F_net² − F₁²).
Marks: two forces 2 + 2, resultant 2, angle 1, answer and direction 1; common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from calc.figures import Figure, Force, tail_to_head
from calc.language.printing import Style
from calc.model.answers import Direction
from calc.model.questions import (
    Check,
    Choice,
    Data,
    Draw,
    Input,
    Mistake,
    Part,
    Plan,
    Question,
    Refusal,
    Step,
    Values,
)
from calc.model.relations import Relation
from calc.topics.several_charges.plane import (
    angle_step,
    plane_figure,
    plane_parts,
    plane_pull,
    rough_net,
    size_step,
)
from calc.topics.several_charges.shared import (
    LEVELS,
    NOISE,
    PLAIN_NET,
    SIDES,
    SUPERPOSITION,
    Body,
    axis_angle,
    bounds_words,
    compass,
    gap_of,
    pair,
    pull_ask,
    pull_of,
    within_bounds,
)
from calc.topics.shared.electrostatics import (
    COULOMB,
    NOT_SQUARED,
    charge,
    distance,
    force,
    refuse_zero_charge,
    sign_of_charge,
    state,
)

# --- two charges at right angles ----------------------------------------------------------------------------


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


def corner_pull(source: Body, other: Body, on: Body, style: Style) -> Step:
    """One of two forces at right angles, with the distances a learner may mix up."""
    wrong = [
        (
            f"sqrt({gap_of(source, on)}^2 + {gap_of(other, on)}^2)",
            f"the distance from {source.words} to {other.words} was used",
        )
    ]
    if abs(abs(source.x + source.y) - abs(other.x + other.y)) > NOISE:
        wrong.insert(0, (gap_of(other, on), f"the distance of {other.words} was used"))
    return plane_pull(source, on, style, wrong)


def corner_net(across: Body, along: Body, on: Body, style: Style) -> tuple[Step, Step]:
    """Pythagoras and the angle for two forces along the axes."""
    x, y = pull_of(across, on), pull_of(along, on)
    net = rough_net((across, along), on)
    size = size_step(f"F_net = sqrt({x}^2 + {y}^2)", x, y, net, on, style, f"{x} + {y}")
    pooled = f"k*abs({on.name})*(abs({across.name}) + abs({along.name}))/({gap_of(across, on)} + {gap_of(along, on)})^2"
    once = Mistake(
        "distances-first", "F_net", pooled, "One pair at a time.", "the distances were added before the law was used"
    )
    subtracted = Mistake("subtracted", "F_net", f"abs({x} - {y})", "The forces are at right angles: their squares add.")
    return (
        replace(size, mistakes=(*size.mistakes[:1], subtracted, once, *size.mistakes[1:])),
        angle_step(x, y, net),
    )


def corner_scene(data: Data, bodies: Sequence[Body]) -> Figure:
    """The three charges with both distances."""
    gaps = [(0, i, data.said[gap_of(bodies[0], bodies[i])]) for i in (1, 2)]
    return plane_figure(bodies, bodies[0], None, distances=gaps)


def plan_corner(data: Data) -> Plan:
    for name in ("Q1", "Q2", "Q3"):
        refuse_zero_charge(data, name)
    style = data.settings.style
    on, across, along = bodies = corner(data)
    net = rough_net((across, along), on)
    return Plan(
        story=story_corner(data),
        parts=(
            state(SUPERPOSITION),
            Part("force-2", "calculate", pull_ask(across, on), (corner_pull(across, along, on, style),)),
            Part("force-3", "calculate", pull_ask(along, on), (corner_pull(along, across, on, style),)),
            *plane_parts(bodies, on, corner_net(across, along, on, style), net, data),
        ),
        values=dict(data.values),
        scene=lambda _: corner_scene(data, bodies),
        checks=(
            Check(
                "The same by the angle: a force over its share of the resultant",
                "F_net = F_31/sin(theta)",
                tolerance=1e-6,
            ),
            Check(
                "Is the size possible?",
                words=bounds_words(2),
                holds=lambda v: within_bounds(v, ("F_21", "F_31"), "F_net"),
            ),
        ),
    )


def story_corner(data: Data) -> str:
    said = data.said
    side = "to the right" if data.choices["across"] == "right" else "to the left"
    level = "above" if data.choices["along"] == "up" else "below"
    opening = data.pick(
        "Three charged beads sit on a square pegboard, seen from above.",
        "Three charged buttons lie on squared paper.",
    )
    return (
        f"{opening} Charge 1, {said['Q1']}, is at the corner of a right angle. Charge 2, {said['Q2']}, is"
        f" {said['r_12']} {side} of it; charge 3, {said['Q3']}, is {said['r_13']} {level} it on the page."
    )


CORNER = Question(
    key="right-angle",
    title="Two forces at right angles",
    fields=(
        charge("Q1", "Charge 1, at the corner"),
        charge("Q2", "Charge 2, beside it"),
        charge("Q3", "Charge 3, above or below it"),
        distance("r_12", "Distance from charge 1 to charge 2"),
        distance("r_13", "Distance from charge 1 to charge 3"),
        Choice("across", "Charge 2 is", (("right", "to the right"), ("left", "to the left"))),
        Choice("along", "Charge 3 is", (("up", "above"), ("down", "below"))),
    ),
    plan=plan_corner,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name),
    example={
        "Q1": "+5 nC",
        "Q2": "-8 nC",
        "Q3": "+6 nC",
        "r_12": "20 cm",
        "r_13": "30 cm",
        "across": "right",
        "along": "up",
    },
    draws={
        "Q1": Draw((2, 3, 4, 5, -2, -4), "nC", harder=(2.5, -3.6)),
        "Q2": Draw((4, 6, 8, -5, -9), "nC", harder=(5.5, -7.2)),
        "Q3": Draw((5, 7, 9, -4, -6), "nC", harder=(4.8, -6.5)),
        "r_12": Draw((10, 15, 20, 25), "cm"),
        "r_13": Draw((12, 16, 18, 24, 30), "cm"),
        "across": Draw(("right", "left")),
        "along": Draw(("up", "down")),
    },
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
    asked, style = data.asked, data.settings.style
    for name in ("F_x", "F_y"):
        if asked != "F_net" and data.has(name) and data.values["F_net"] <= data.values[name]:
            raise Refusal("F_net", TOO_SMALL)
    if asked != "F_net":
        for given, missing in (("Q1", "r"), ("r", "Q1")):
            if data.has(given) and not data.has(missing):
                raise Refusal(missing, BOTH)
        refuse_zero_charge(data, "Q1")
    signs = (
        1.0 if data.choices["across"] == "right" else -1.0,
        1.0 if data.choices["along"] == "up" else -1.0,
    )
    parts = [
        state(SUPERPOSITION),
        Part("find", "calculate", PERPENDICULAR[asked], (perpendicular_step(asked, signs, style),)),
    ]
    parts.append(
        Part(
            "angle",
            "calculate",
            "Calculate the angle between the net force and the x-axis.",
            (angle_step("F_x", "F_y", signs),),
            figure=lambda v: perpendicular_figure(v, signs),
        )
    )
    if asked != "F_net" and data.has("Q1"):
        parts.append(source_part(data))
    return Plan(
        story=story_perpendicular(data),
        parts=tuple(parts),
        values=dict(data.values),
        checks=(
            Check(
                "The same by the angle: the forces are the shares of the net force along the axes",
                "F_net*cos(theta) = F_x",
                tolerance=1e-6,
            ),
            Check("The other share", "F_net*sin(theta) = F_y", tolerance=1e-6),
        ),
    )


def perpendicular_step(asked: str, signs: tuple[float, float], style: Style) -> Step:
    """Pythagoras for the resultant, or turned round for one of the forces."""
    root = Mistake("root-omitted", asked, "F_x^2 + F_y^2", "You have F²: take the square root.")
    if asked == "F_net":
        what, why = (
            "The resultant: Pythagoras",
            "The forces are at right angles, so their squares add.",
        )
        across, along = signs
        wrong = (
            Mistake("sizes-added", "F_net", "F_x + F_y", "Forces have directions.", "the sizes were added"),
            Mistake("subtracted", "F_net", "abs(F_x - F_y)", "The forces are at right angles: their squares add."),
            root,
        )
    else:
        other = "F_y" if asked == "F_x" else "F_x"
        what = f"Pythagoras, turned round for the force along {asked[-1]}"
        why = "The net force is the longest side of the right-angled triangle."
        across, along = (signs[0], 0.0) if asked == "F_x" else (0.0, signs[1])
        wrong = (
            Mistake(
                "sizes-subtracted",
                asked,
                f"F_net - {other}",
                "Forces have directions: use the squares, not the sizes.",
                "the sizes were subtracted",
            ),
            Mistake(
                "squares-added",
                asked,
                f"sqrt(F_net^2 + {other}^2)",
                "The net force is the longest side: subtract the squares.",
            ),
            replace(root, instead=f"F_net^2 - {other}^2"),
        )

    def where(v: Values) -> Direction:
        return compass(v["F_x"] * across, v["F_y"] * along, style)

    return Relation(
        "F_net = sqrt(F_x^2 + F_y^2)",
        what=what,
        why=why,
        plain=PLAIN_NET,
        units=dict.fromkeys(PERPENDICULAR, "N"),
        mistakes=wrong,
        directions=dict.fromkeys(PERPENDICULAR, where),
    ).step(asked)


def source_part(data: Data) -> Part:
    """The charge that gives the force just found, from Coulomb's law."""
    asked = data.asked
    attract = {"attract": 1, "repel": -1}.get(data.choices["acting"], 0)
    where = sign_of_charge(-attract * data.sign("Q1")) if attract else None
    return Part(
        "source",
        "calculate",
        f"The force along {asked[-1]} comes from a charge {data.said['r']} away. Calculate that charge.",
        (
            pair(
                asked,
                "Q1",
                "Q2",
                "r",
                what="Coulomb's law for the size of the charge",
                directions={"Q2": lambda v: where},
                why=(
                    "Sizes only. Attraction means unlike signs, repulsion like signs."
                    if attract
                    else "Sizes only. Whether it attracts or repels is not said, so only the size follows."
                ),
                mistakes=(
                    Mistake("not-squared", "Q2", f"{asked}*r/(k*Q1)", NOT_SQUARED),
                    Mistake(
                        "net-used",
                        "Q2",
                        "F_net*r^2/(k*Q1)",
                        "That charge gives only the force along its own joining line.",
                    ),
                ),
            ).step("Q2"),
        ),
    )


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
            f"The {data.pick('bead', 'puck')} carries {said['Q1']}."
            + (f" The charge that gives the force to be found{act}." if act else "")
        )
    return " ".join(facts)


def pull_size(name: str, words: str, refusal: str) -> Input:
    return replace(force(name, words), over=0.0, refusal=refusal)


SIZE = "The force must be greater than zero: enter its size; choose the direction separately."

TWO_FORCES = Question(
    key="components",
    title="Two forces at right angles and their net force: any one unknown",
    fields=(
        pull_size("F_net", "Net force (size)", SIZE),
        pull_size("F_x", "Force along x (size)", SIZE),
        pull_size("F_y", "Force along y (size)", SIZE),
        Choice("across", "The force along x points", (("right", "to the right"), ("left", "to the left"))),
        Choice("along", "The force along y points", (("up", "upwards"), ("down", "downwards"))),
        replace(charge("Q1", "Charge the forces act on"), optional=True, help="only to go on to the other charge"),
        replace(
            distance("r", "Distance to the charge giving the force to be found"),
            optional=True,
            help="only to go on to the other charge",
        ),
        Choice(
            "acting",
            "That charge",
            (("unsaid", "attracts or repels: not said"), ("attract", "attracts"), ("repel", "repels")),
            quiet=("unsaid",),
            asked=("F_x", "F_y"),
        ),
    ),
    unknowns=("F_y", "F_x", "F_net"),
    plan=plan_perpendicular,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name),
    example={
        "F_net": "7,5 uN",
        "F_x": "4,5 uN",
        "F_y": "",
        "across": "left",
        "along": "up",
        "Q1": "+3 nC",
        "r": "20 cm",
        "acting": "attract",
    },
    draws={
        "F_net": Draw((13, 15, 17, 20, 25), "µN", harder=(14.5, 18.6)),
        "F_x": Draw((5, 8, 9, 12), "µN", harder=(6.4, 11.2)),
        "F_y": Draw((5, 8, 9, 12), "µN", harder=(7.3, 10.5)),
        "across": Draw(("right", "left")),
        "along": Draw(("up", "down")),
        "Q1": Draw((2, 3, 4, -5, -6), "nC"),
        "r": Draw((15, 20, 25, 30), "cm"),
        "acting": Draw(("attract", "repel")),
    },
)
