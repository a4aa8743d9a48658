"""A charge or its distance in a plane from a stated net force, given by components or by size and direction.

Charge 1 at the origin, charge 2 on the +x axis, charge 3 on a line at the angle φ:
F_x = F₂₁ + F₃₁ cos φ, F_y = F₃₁ sin φ with a pull counted positive and a push negative, each from Coulomb's law.
Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import cos, degrees, hypot, radians, sin
from random import Random
from typing import cast

from calc.figures import Figure, Force, tail_to_head
from calc.figures.charges import DISTANCES, Charge
from calc.figures.plane import charges_in_plane
from calc.language.printing import Style
from calc.model.answers import Direction, Point
from calc.model.constants import Settings
from calc.model.directions import LEFT_RIGHT, UP_DOWN
from calc.model.questions import (
    SA,
    A,
    Check,
    Data,
    Draw,
    Input,
    Mistake,
    Part,
    Refusal,
    Values,
)
from calc.model.relations import Relation, Towards
from calc.topics.several_charges.line import signed
from calc.topics.several_charges.shared import NOISE, SUPERPOSITION, compass, pair
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
from calc.working.solving import Situation, question
from calc.working.working import measure

NOTHING_LEFT = (
    "Charge {} alone already gives this component, so there is nothing left for charge {} to do. Change the net force."
)
WRONG_WAY = (
    "Charge {} would have to {} charge 1, but {}: no distance fits. Change the sign of one of them, or the net force."
)
ON_THE_AXIS = "At {} charge 3 is on the x-axis as well: use a question about charges on a line, or change the angle."
NOT_THIS = (
    "This does not fit the other numbers: with the stated component along {} that along {} is {}. Correct it, or leave"
    " this box empty."
)
NOT_THERE = (
    "This direction does not fit the other numbers: no value of what is asked makes the net force point this way."
    " Correct it, or give one component instead."
)
ALONE = (
    "Charge 1 and something else cannot be found at once here: ask for charge 1 alone, with both other charges and"
    " their places given."
)
NO_PUSH = (
    "For any charge 1 the other charges give no force along {}, so this component says nothing about it. Give the other"
    " component."
)
ZERO = "A net force of zero along {} would need a charge 1 of zero. Give a component that is not zero."
PLAIN_PARTS = "A slanting push is a push along x and a push along y at once; each direction is added for itself."


def pulls(data: Data, tag: str) -> int | None:
    """+1 where charge ``tag`` attracts charge 1, −1 where it repels it, None where a charge is not given."""
    if not (data.has("Q1") and data.has(f"Q{tag}")) or {"Q1", f"Q{tag}"} & set(data.asked_names):
        return None
    return -1 if data.values["Q1"] * data.values[f"Q{tag}"] > 0 else 1


def quarter(data: Data, name: str) -> int | None:
    """How many right angles an angle is, where it is a whole number of them."""
    turns = degrees(data.values[name]) / 90 if data.has(name) else 0.5
    return round(turns) if abs(turns - round(turns)) < 1e-9 else None


def towards(tag: str, way: int | None, turn: float, style: Style) -> Towards:
    """The direction of a force on charge 1, which counts as attraction where its sign is still to be found."""
    name = f"F_{tag}1"

    def direction(values: Values) -> Direction | None:
        size = values[name] * (way or 1)
        return compass(round(size * cos(turn), 30), round(size * sin(turn), 30), style) if size else None

    return direction


def of_pair(data: Data, tag: str) -> Relation:
    """Coulomb's law between charge 1 and another, with the sign of an unknown charge from the direction."""
    pull, gap, other = f"F_{tag}1", f"r_1{tag}", f"Q{tag}"
    way = pulls(data, tag)
    turn = data.values.get("phi", 0.0) if tag == "3" else 0.0
    why = {
        1: f"Unlike charges attract: charge {tag} pulls charge 1 towards itself. Put only sizes into the formula.",
        -1: f"Like charges repel: charge {tag} pushes charge 1 away. Put only sizes into the formula.",
        None: "Sizes only. A pull means unlike signs, a push like signs.",
    }[way]
    law = pair(
        pull,
        other,
        "Q1",
        gap,
        what=f"Coulomb's law for charges 1 and {tag}",
        why=why,
        marks=SA,
        mistakes=(
            Mistake("not-squared", pull, f"k*{other}*Q1/{gap}", NOT_SQUARED),
            Mistake("not-squared", other, f"{pull}*{gap}/(k*Q1)", NOT_SQUARED),
            Mistake("root-omitted", gap, f"k*{other}*Q1/{pull}", "You have r²: take the square root."),
            Mistake(
                "net-used", other, f"F_net*{gap}^2/(k*Q1)", "That charge gives only its own share of the net force."
            ),
        ),
        directions={
            pull: towards(tag, way, turn, data.settings.style),
            other: lambda v: sign_of_charge(-v[pull] * v["Q1"]) if v[pull] else None,
        },
    )
    # Charge 1 is found from the force on each coulomb, where its sign comes out as well.
    return replace(law, units={name: unit for name, unit in law.units.items() if name != "Q1"})


def along(data: Data) -> tuple[Relation, ...]:
    """The net force along each axis as the sum of the pulls."""
    second, third = pulls(data, "2"), pulls(data, "3")
    right = quarter(data, "phi")
    open_ = (
        ""
        if second and third
        else " A force whose sign is not known counts as a pull; a minus sign in the result means a push."
    )
    across: list[tuple[int, str]] = [(second or 1, "F_21")]
    if right is None:
        across.append((third or 1, "F_31*cos(phi)"))
    upright = "F_31*sin(phi)" if right is None else "F_31"
    up = signed([((third or 1) * (-1 if right == 3 else 1), upright)])
    flipped = f"(F_x {'+' if (second or 1) > 0 else '-'} F_21)/({'-' if (third or 1) < 0 else ''}cos(phi))"
    wrong = (
        ()
        if right is not None
        else (
            Mistake(
                "wrong-side",
                "F_31",
                flipped,
                "Attract: towards; repel: away.",
                "F₂₁ was taken in the opposite direction",
            ),
            Mistake(
                "one-force",
                "F_31",
                "F_x/cos(phi)",
                "The net force is the sum of all the forces: charge 2 acts as well.",
            ),
            Mistake(
                "sin-for-cos",
                "F_31",
                f"(F_x {'-' if (second or 1) > 0 else '+'} F_21)/sin(phi)",
                "φ is measured from the x-axis: along x it is cos φ.",
            ),
            Mistake("one-force", "F_21", "F_x", "The net force is the sum of all the forces: charge 3 acts as well."),
        )
    )
    return (
        Relation(
            f"F_x = {signed(across)}",
            what="Superposition along x, to the right counted positive",
            why=(
                "Towards charge 2 is to the"
                f" right{'' if right is None else ', and charge 3 gives nothing along x'}.{open_}"
            ),
            plain=PLAIN_PARTS,
            units={"F_x": "N", "F_21": "N", "F_31": "N"},
            marks=SA,
            mistakes=wrong,
            directions=directions(data),
        ),
        Relation(
            f"F_y = {up}",
            what="Superposition along y, upwards counted positive",
            why=f"Charge 2 is on the x-axis, so it gives nothing along y: all of it is due to charge 3.{open_}",
            plain=PLAIN_PARTS,
            units={"F_y": "N", "F_31": "N"},
            marks=SA,
            mistakes=(
                ()
                if right is not None
                else (
                    Mistake(
                        "sin-for-cos", "F_31", "F_y/cos(phi)", "φ is measured from the x-axis: along y it is sin φ."
                    ),
                    Mistake(
                        "component-as-force",
                        "F_31",
                        "F_y",
                        "F_y is only one component of the force of charge 3: divide by sin φ.",
                    ),
                )
            ),
            directions=directions(data),
        ),
    )


def directions(data: Data) -> dict[str, Towards]:
    """The directions of both forces, however they are found."""
    turn, style = data.values.get("phi", 0.0), data.settings.style
    return {
        "F_21": towards("2", pulls(data, "2"), 0.0, style),
        "F_31": towards("3", pulls(data, "3"), turn, style),
    }


def components(data: Data) -> tuple[Relation, ...]:
    """The components of a net force given by its size and direction."""
    right = quarter(data, "theta")
    found = []
    for axis, f, other, start in (("x", "cos", "sin", 0), ("y", "sin", "cos", 1)):
        law = f"F_{axis} = F_net*{f}(theta)"
        if right is not None:
            law = f"F_{axis} = 0" if (right - start) % 2 else f"F_{axis} = {'-' if (right - start) % 4 else ''}F_net"
        found.append(
            Relation(
                law,
                what=f"Component of the net force along {axis}",
                why=(
                    "θ is counted anticlockwise from the +x axis, so the sign of the component comes out by itself."
                    if right is None
                    else "The net force lies along an axis."
                ),
                plain=PLAIN_PARTS,
                units={f"F_{axis}": "N"},
                marks=A,
                mistakes=(
                    ()
                    if right is not None
                    else (
                        Mistake(
                            "sin-for-cos",
                            f"F_{axis}",
                            f"F_net*{other}(theta)",
                            "θ is measured from the x-axis: along x it is F cos θ, along y F sin θ.",
                        ),
                    )
                ),
            )
        )
    return tuple(found)


def per_coulomb(data: Data) -> tuple[Relation, ...]:
    """Charge 1 from the force on each coulomb of it, when both other charges are known."""
    found: list[Relation] = []
    right = quarter(data, "phi")
    q2, q3 = (data.values.get(name, 1.0) for name in ("Q2", "Q3"))
    second, third = (-1 if q2 > 0 else 1), (-1 if q3 > 0 else 1)
    for axis in "xy":
        terms = [(second, "Q2/r_12^2")] if axis == "x" else []
        if right is None:
            terms.append((third, f"Q3*{'cos' if axis == 'x' else 'sin'}(phi)/r_13^2"))
        elif axis == "y":
            terms.append((third * (-1 if right == 3 else 1), "Q3/r_13^2"))
        pull, each = f"F_{axis}", f"E_{axis}"
        found += [
            Relation(
                f"{each} = k*({signed(terms)})",
                what=f"The force along {axis} on each coulomb of a positive charge 1",
                why=(
                    "By Coulomb's law every coulomb of charge 1 feels the same; a positive charge 1 is pulled by"
                    " negative charges and pushed by positive ones."
                ),
                plain="First find what one coulomb would feel here; the charge then follows by dividing.",
                quotes=(COULOMB.name,),
                units={each: "N·C⁻¹"},
                sizes=("Q2", "Q3"),
                marks=SA,
                mistakes=(
                    (
                        Mistake(
                            "wrong-side",
                            each,
                            f"k*({signed([(-terms[0][0], terms[0][1]), *terms[1:]])})",
                            "Attract: towards; repel: away.",
                        ),
                    )
                    if len(terms) > 1
                    else ()
                ),
            ),
            Relation(
                f"{pull} = Q1*{each}",
                what="So many coulombs feel the stated force",
                why=(
                    "Divide sizes. Where the force points the way a positive charge would be pushed, charge 1 is"
                    " positive; otherwise it is negative."
                ),
                plain="Twice the charge would feel twice the force.",
                units={"Q1": "C"},
                sizes=(pull, each),
                marks=A,
                mistakes=(
                    Mistake("multiplied", "Q1", f"{pull}*{each}", "Divide the force by the force on each coulomb."),
                ),
                directions={"Q1": sign_of(pull, each)},
            ),
        ]
    return tuple(found)


def sign_of(pull: str, each: str) -> Towards:
    return lambda v: sign_of_charge(v[pull] * v[each]) if v[pull] else None


def situation(data: Data) -> Situation:
    refuse_zero_charge(data, "Q1", "Q2", "Q3")
    if quarter(data, "phi") in (0, 2, 4):
        raise Refusal("phi", ON_THE_AXIS.format(data.said["phi"]))
    own = "Q1" in data.asked_names
    if own:
        refuse_no_push(data)
    laws = per_coulomb(data) if own else (*along(data), of_pair(data, "2"), of_pair(data, "3"))
    return Situation(
        relations=(*laws, *components(data)),
        openings=(
            (
                "Three small charged balls are fixed on a pegboard with x- and y-axes: charge 1 where the axes meet,"
                " charge 2 on the x-axis to the right of it, charge 3 off the axis."
            ),
            (
                "Three charged buttons lie on squared paper. Charge 1 is at the origin, charge 2 on the positive"
                " x-axis, charge 3 somewhere else on the paper."
            ),
            (
                "Charged foam beads are pinned to a board on which axes are drawn; charge 1 is at the origin, charge 2"
                " to the right of it on the x-axis, and charge 3 on a slanting line through charge 1."
            ),
        ),
        tell={
            "Q1": "Charge 1 is {}.",
            "Q2": "Charge 2 is {}.",
            "r_12": "Charge 2 is {} from charge 1.",
            "Q3": "Charge 3 is {}.",
            "r_13": "Charge 3 is {} from charge 1.",
            "phi": "The line from charge 1 to charge 3 is at {}, counted anticlockwise from the +x axis.",
            "F_x": "The net force on charge 1 has a component along x of {}.",
            "F_y": "The net force on charge 1 has a component along y of {}.",
            "F_net": "The net force on charge 1 is {}.",
            "theta": "It points at {}, counted anticlockwise from the +x axis.",
        },
        ask={
            **{f"Q{n}": f"Calculate charge {n}, with its sign." for n in "123"},
            **{f"r_1{n}": f"Calculate the distance of charge {n} from charge 1." for n in "23"},
        },
        ways={"F_x": (LEFT_RIGHT, "right"), "F_y": (UP_DOWN, "up")},
        stated=(state(SUPERPOSITION),),
        later=later,
        refuse=refuse,
        proofs=lambda values: proofs(data, values),
        scene=lambda _: scene(data),
    )


def refuse_no_push(data: Data) -> None:
    """Charge 1 follows from a component only where the others give one."""
    if len(data.asked_names) > 1:
        raise Refusal(None, ALONE)
    v = data.values
    if not {"Q2", "Q3", "r_12", "r_13", "phi"} <= v.keys():
        return
    level, slanting = v["Q2"] / v["r_12"] ** 2, v["Q3"] / v["r_13"] ** 2 * cos(v["phi"])
    if abs(level + slanting) <= NOISE * abs(level) and not data.has("F_y"):
        raise Refusal("F_x" if data.has("F_x") else "F_net", NO_PUSH.format("x"))


def refuse(data: Data, values: Values) -> None:
    """No zero charge, no distance for a force that would point the wrong way, no components that contradict
    each other."""
    if "Q1" in data.asked_names:
        for axis in "xy":
            if f"E_{axis}" in values and values[f"F_{axis}"] == 0:
                raise Refusal(f"F_{axis}" if data.has(f"F_{axis}") else "F_net", ZERO.format(axis))
    for tag, other in (("2", "3"), ("3", "2")):
        pull, way = f"F_{tag}1", pulls(data, tag)
        if not {f"Q{tag}", f"r_1{tag}"} & set(data.asked_names):
            continue
        if pull in values and abs(values[pull]) <= NOISE * abs(values.get(f"F_{other}1", 0.0)):
            raise Refusal("F_x" if data.has("F_x") else None, NOTHING_LEFT.format(other, tag))
        if way and values.get(pull, 1.0) < 0:
            act = ("attract", "like charges repel") if way < 0 else ("repel", "unlike charges attract")
            raise Refusal(f"Q{tag}", WRONG_WAY.format(tag, *act))
    refuse_contradiction(data)


SLACK = 0.02  # of the forces: stated numbers are rounded


def refuse_contradiction(data: Data) -> None:
    """Both components for one unknown: one of them is enough, so the other must agree."""
    v, k = data.values, data.settings.constant("k")
    size, way = v.get("F_net", 0.0), v.get("theta", 0.0)
    whole = data.has("F_net") and data.has("theta")
    x, y = (v.get("F_x", size * cos(way) if whole else None), v.get("F_y", size * sin(way) if whole else None))
    if x is None or y is None or len(data.asked_names) > 1 or not data.has("phi"):
        return
    phi = v["phi"]
    each = {n: -k * v[f"Q{n}"] / v[f"r_1{n}"] ** 2 for n in "23" if data.has(f"Q{n}") and data.has(f"r_1{n}")}
    if data.asked == "Q1":
        if len(each) < 2:
            return
        across, up = each["2"] + each["3"] * cos(phi), each["3"] * sin(phi)
        if abs(x * up - y * across) > SLACK * hypot(x, y) * hypot(across, up):
            raise Refusal(
                "theta" if whole else "F_y",
                NOT_THERE if whole else _not_this(data, "x", "y", up * x / across if across else 0.0),
            )
        return
    if not data.has("Q1"):
        return
    pull = {n: v["Q1"] * one for n, one in each.items()}
    scale = hypot(x, y) + sum(map(abs, pull.values()))
    if data.asked in ("Q3", "r_13"):
        if "2" not in pull:
            return
        if quarter(data, "phi") is None:
            other, wrong = (x - pull["2"]) / cos(phi) * sin(phi), ("x", "y")
            gap = other - y
        else:
            other, wrong = pull["2"], ("y", "x")
            gap = other - x
    elif "3" in pull:
        other, wrong = pull["3"] * sin(phi), ("x", "y")
        gap = other - y
    else:
        return
    if abs(gap) > SLACK * scale:
        raise Refusal("theta" if whole else f"F_{wrong[1]}", NOT_THERE if whole else _not_this(data, *wrong, other))


def _not_this(data: Data, right: str, wrong: str, value: float) -> str:
    return NOT_THIS.format(right, wrong, measure(value, "N", data.settings.style).text)


def proofs(data: Data, values: Values) -> tuple[Check, ...]:
    """The stated component once more, from the answer put back with its sign."""
    if not {"Q1", "Q2", "Q3", "r_12", "r_13", "phi", "F_x"} <= values.keys() or "Q1" in data.asked_names:
        return ()
    if any(abs(values["F_x"]) < 1e-3 * abs(values.get(f"F_{tag}1", 0.0)) for tag in "23"):
        return ()  # printed digits could not show a difference so small
    ways = {}
    for tag in "23":
        known = pulls(data, tag)
        sign = 1 if values.get(f"F_{tag}1", 1.0) > 0 else -1
        ways[tag] = known or sign
    terms = [(ways["2"], "k*Q1*Q2/r_12^2")]
    if quarter(data, "phi") is None:
        terms.append((ways["3"], "k*Q1*Q3*cos(phi)/r_13^2"))
    return (
        Check(
            "Put everything back: the component along x must come out as stated",
            f"F_x = {signed(terms)}",
            "Plus for a pull, minus for a push.",
            sizes=("Q1", "Q2", "Q3"),
            tolerance=1e-6,
        ),
    )


def later(data: Data, values: Values) -> tuple[Part, ...]:
    """The forces drawn where both are known; else why one component was enough."""
    if "Q1" in data.asked_names:
        return (
            Part(
                "double",
                "explain",
                "Charge 1 is doubled, the others stay as they are. Explain what happens to the net force on it.",
                points=(
                    Point(
                        "Each of the two forces is directly proportional to charge 1, so each doubles.", 1, ("doubles",)
                    ),
                    Point("Their sum doubles too, and its direction stays the same.", 1, ("direction",)),
                ),
            ),
        )
    if {"F_21", "F_31"} <= values.keys():
        return (
            Part(
                "draw",
                "draw",
                "Draw the two forces on charge 1 head to tail, with their sum.",
                points=(
                    Point(
                        "Arrow F₂₁ along the x-axis and arrow F₃₁ along the line through charges 1 and 3, each with"
                        " head and label."
                    ),
                    Point("The sum runs from the first tail to the last head."),
                ),
                figure=lambda v: forces_figure(data, v),
            ),
        )
    return (
        Part(
            "enough",
            "explain",
            "Explain why the component along y is enough here.",
            points=(
                Point(
                    "Charge 2 is on the x-axis, so its force on charge 1 has no component along y.",
                    1,
                    ("no component along y",),
                ),
                Point("The whole component along y comes from charge 3.", 1, ("charge 3",)),
            ),
        ),
    )


def forces_figure(data: Data, values: Values) -> Figure:
    """Both forces on charge 1 head to tail."""
    phi = degrees(data.values["phi"])
    drawn = []
    for tag, turn in (("2", 0.0), ("3", phi)):
        size = values[f"F_{tag}1"] * (pulls(data, tag) or 1)
        drawn.append(Force(f"F_{{{tag}1}}", abs(size), (turn + (0 if size > 0 else 180)) % 360))
    return tail_to_head(drawn, title="Sum of the forces on charge 1")


def scene(data: Data) -> Figure:
    """The three charges; a sign that is asked for is left out, and so is a distance."""
    phi = data.values.get("phi", radians(60))
    gaps = {n: data.values.get(f"r_1{n}") for n in "23"}
    usual = next((gap for gap in gaps.values() if gap), 1.0)
    two, three = (gaps[n] or usual for n in "23")
    asked = set(data.asked_names)
    places = ((0.0, 0.0), (two, 0.0), (three * cos(phi), three * sin(phi)))
    bodies = [
        Charge(f"Q_{n}", data.values.get(f"Q{n}", 1.0), x, y, signed=f"Q{n}" not in asked and data.has(f"Q{n}"))
        for n, (x, y) in zip("123", places, strict=True)
    ]
    return charges_in_plane(
        bodies,
        distances=[(0, int(n) - 1, data.said.get(f"r_1{n}", f"r_{{1{n}}}")) for n in "23"],
        angle=(0.0, degrees(phi), "φ"),
        title="Three charges in a plane",
        notes=() if all(gaps.values()) else (DISTANCES,),
    )


NAMES = ("Q1", "Q2", "r_12", "Q3", "r_13", "phi", "F_x", "F_y", "F_net", "theta")


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Charges and places that give the net force told; of that one component first, later its size and direction."""
    draw = cast(Random, random)
    asked = next((n for n in NAMES if typed.get(n) == ""), "Q3")
    nano = {n: draw.choice((1, -1)) * draw.choice((2, 3, 4, 5, 6, 8, 9)) for n in ("Q1", "Q2", "Q3")}
    gap = {"r_12": draw.choice((15, 20, 25, 30)), "r_13": draw.choice((12, 18, 24, 30, 40))}
    phi = draw.choice((30, 40, 60, 120, 135, 150) if level < 3 else (35, 65, 110, 145, 210, 240, 310))
    k = Settings().constant("k")
    size = {n: -k * nano["Q1"] * nano[f"Q{n}"] * 1e-18 / (gap[f"r_1{n}"] / 100) ** 2 for n in "23"}
    x = size["2"] + size["3"] * cos(radians(phi))
    y = size["3"] * sin(radians(phi))
    told = {"F_x": f"{x * 1e6:.3g} µN", "F_y": f"{y * 1e6:.3g} µN"}
    whole = {"F_net": f"{(x * x + y * y) ** 0.5 * 1e6:.4g} µN", "theta": f"{degrees(compass_of(x, y)):.4g}°"}
    third = asked in ("Q3", "r_13", "Q1")
    if level == 1 or (level == 2 and draw.choice((True, False))):
        net = {"F_y" if third and draw.choice((True, False)) else "F_x": ""}
        net = {name: told[name] for name in net}
    else:
        net = whole
    boxes = {n: f"{q} nC" for n, q in nano.items()} | {n: f"{r} cm" for n, r in gap.items()}
    boxes = {**boxes, "phi": f"{phi}°", **net}
    boxes = {name: text.replace(".", ",") for name, text in boxes.items()}
    return {**typed, **{name: boxes.get(name, "") if name != asked else "" for name in NAMES}}


def compass_of(x: float, y: float) -> float:
    """The direction of a vector in radians, 0 up to a full turn."""
    return radians(compass(x, y, Style()).angle or 0.0)


def turn(name: str, words: str, help: str) -> Input:
    return Input(name, words, "°", 1, 359, "Type an angle from 0° up to 360°.", over=None, under=360.0, help=help)


def component(name: str, words: str, help: str) -> Input:
    return replace(force(name, words), signed=True, refusal="", help=help, result="measured")


STATED = question(
    "stated",
    "A charge or its distance in a plane from a stated net force",
    situation,
    fields=(
        charge("Q1", "Charge 1"),
        charge("Q2", "Charge 2"),
        distance("r_12", "Distance between charges 1 and 2"),
        charge("Q3", "Charge 3"),
        distance("r_13", "Distance between charges 1 and 3"),
        turn("phi", "Angle of the line from charge 1 to charge 3", "anticlockwise from the +x axis"),
        component("F_x", "Net force along x", "to the left is negative"),
        component("F_y", "Net force along y", "downwards is negative"),
        force("F_net", "Net force (size)"),
        turn("theta", "Direction of the net force", "anticlockwise from the +x axis"),
    ),
    unknowns=("Q3", "r_13", "Q2", "r_12", "Q1"),
    asks="Q3",
    laws=(SUPERPOSITION.name, COULOMB.name),
    constants=("k",),
    example={
        "Q1": "+4 nC",
        "Q2": "-6 nC",
        "r_12": "20 cm",
        "Q3": "",
        "r_13": "30 cm",
        "phi": "60°",
        "F_x": "4,4 uN",
        "F_y": "",
        "F_net": "",
        "theta": "",
    },
    draws={name: Draw((1,)) for name in NAMES},
    adjust=practise,
    since=2,
)
