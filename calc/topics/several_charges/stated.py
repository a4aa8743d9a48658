"""A charge, its distance or its angle in a plane from a stated net force: by components, or its size, or both size
and direction.

Charge 1 at the origin, charge 2 on the +x axis, charge 3 on a line at the angle φ:
F_x = F₂₁ + F₃₁ cos φ, F_y = F₃₁ sin φ with a pull counted positive and a push negative, each from Coulomb's law.
The size alone leaves two answers: F_net² = (F₃₁ + F₂₁ cos φ)² + (F₂₁ sin φ)², along and across a joining line.
Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import acos, asin, cos, degrees, hypot, pi, radians, sin, sqrt
from random import Random
from typing import NamedTuple, cast

from calc.figures import Figure, Force, tail_to_head
from calc.figures.charges import DISTANCES, Charge
from calc.figures.plane import charges_in_plane
from calc.language.printing import Style
from calc.model.answers import Direction, Point
from calc.model.constants import Settings
from calc.model.directions import AWAY_TOWARDS, LEFT_RIGHT, UP_DOWN
from calc.model.questions import SA, A, Check, Data, Draw, Input, Part, Refusal, Step, Values
from calc.model.relations import Relation, Towards
from calc.topics.several_charges.shared import NOISE, SUPERPOSITION, check, compass, explain, pair, signed, slip
from calc.topics.shared.electrostatics import (
    COULOMB,
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
NO_PUSH = (
    "For any charge 1 the other charges give no force along {}, so this component says nothing about it. Give the other"
    " component."
)
ZERO = "A net force of zero along {} would need a charge 1 of zero. Give a component that is not zero."
NO_CHARGE = (
    "Charge {} would exert no force on charge 1, so charge 1 would be zero. Change the net force, or the angle of"
    " charge 3."
)
ANGLE_ALONE = "The angle is asked alone here: give all three charges, both distances and the net force."
TOO_SMALL = (
    "Charge {} can only cancel what charge {} does along the line through charges 1 and {}: the net force is {} at"
    " least. Give a larger one."
)
NO_ROOT = (
    "Charge {} {} charge 1 here, and no distance makes the net force as small as this: it is more than {}. Change a"
    " sign, or the net force."
)
OUT_OF_REACH = (
    "With these charges and distances the net force{} is between {} and {}, whatever the angle. Give one between them."
)
AT_THE_END = (
    "Only with charge 3 on the x-axis would this fit: use a question about charges on a line, or change the net force."
)
PLAIN_PARTS = "A slanting push is a push along x and a push along y at once; each direction is added for itself."
FROM_X = "φ is measured from the x-axis: along {} it is {} φ."


# --- what the data settle before anything is worked -----------------------------------------------------------------


def given(data: Data, name: str) -> bool:
    """Whether a datum is known and not asked for."""
    return data.has(name) and name not in data.asked_names


def pulls(data: Data, tag: str) -> int | None:
    """+1 where charge ``tag`` attracts charge 1, −1 where it repels it, None where a charge is not given."""
    if not (given(data, "Q1") and given(data, f"Q{tag}")):
        return None
    return -1 if data.values["Q1"] * data.values[f"Q{tag}"] > 0 else 1


def quarter(data: Data, name: str) -> int | None:
    """How many right angles an angle is, where it is a whole number of them."""
    turns = degrees(data.values[name]) / 90 if given(data, name) else 0.5
    return round(turns) if abs(turns - round(turns)) < 1e-9 else None


def size_of(data: Data, tag: str) -> float | None:
    """The size of the force of charge ``tag`` on charge 1, where all of it is given."""
    names = ("Q1", f"Q{tag}", f"r_1{tag}")
    if not all(given(data, name) for name in names):
        return None
    one, other, gap = (data.values[name] for name in names)
    return data.settings.constant("k") * abs(one * other) / gap**2


def only_size(data: Data) -> bool:
    """Whether the net force is given by its size alone."""
    return data.has("F_net") and not any(data.has(name) for name in ("theta", "F_x", "F_y"))


def stated_net(data: Data) -> tuple[float | None, float | None]:
    """The components of the net force as far as they are given."""
    v, whole = data.values, data.has("F_net") and data.has("theta")
    size, way = v.get("F_net", 0.0), v.get("theta", 0.0)
    return v.get("F_x", size * cos(way) if whole else None), v.get("F_y", size * sin(way) if whole else None)


def by_the_others(data: Data) -> bool:
    """Whether charge 1 follows from the force on each coulomb of it, all the rest being given."""
    return data.asked == "Q1" and all(given(data, name) for name in ("Q2", "Q3", "r_12", "r_13", "phi"))


def sign_of_first(data: Data, values: Values) -> float:
    """The sign of charge 1: given, or from a charge that is and the force between the two, a pull being positive."""
    if given(data, "Q1"):
        return data.values["Q1"]
    tag = "2" if given(data, "Q2") and given(data, "r_12") else "3"
    return -values[f"F_{tag}1"] * data.values[f"Q{tag}"]


def towards(data: Data, tag: str) -> Towards:
    """The direction of a force on charge 1, which counts as attraction where its sign is still to be found."""
    name, way = f"F_{tag}1", pulls(data, tag) or 1
    turn, style = data.values.get("phi", 0.0) if tag == "3" else 0.0, data.settings.style

    def direction(values: Values) -> Direction | None:
        size = values[name] * way
        if tag == "3" and "phi" in data.asked_names:
            return AWAY_TOWARDS.of("towards" if size > 0 else "away")
        return compass(round(size * cos(turn), 30), round(size * sin(turn), 30), style) if size else None

    return direction


# --- the laws -------------------------------------------------------------------------------------------------------


def of_pair(data: Data, tag: str) -> Relation:
    """Coulomb's law between charge 1 and another, with the sign of an unknown charge from the direction."""
    pull, gap, other = f"F_{tag}1", f"r_1{tag}", f"Q{tag}"
    why = {
        1: f"Unlike charges attract: charge {tag} pulls charge 1 towards itself. Put only sizes into the formula.",
        -1: f"Like charges repel: charge {tag} pushes charge 1 away. Put only sizes into the formula.",
        None: "Sizes only. A pull means unlike signs, a push like signs.",
    }[pulls(data, tag)]
    share = "That charge gives only its own share of the net force."
    law = pair(
        pull,
        other,
        "Q1",
        gap,
        what=f"Coulomb's law for charges 1 and {tag}",
        why=why,
        marks=SA,
        mistakes=(
            slip("not-squared", pull, f"k*{other}*Q1/{gap}"),
            slip("not-squared", other, f"{pull}*{gap}/(k*Q1)"),
            slip("root-omitted", gap, f"k*{other}*Q1/{pull}"),
            slip("net-used", other, f"F_net*{gap}^2/(k*Q1)", say=share),
        ),
        directions={
            pull: towards(data, tag),
            other: lambda v: sign_of_charge(-v[pull] * sign_of_first(data, v)) if v[pull] else None,
            "Q1": lambda v: sign_of_charge(sign_of_first(data, v)),
        },
    )
    asked = set(law.units) if "Q1" in data.asked_names else set(law.units) - {"Q1"}
    return replace(law, units={name: unit for name, unit in law.units.items() if name in asked})


def along(data: Data) -> tuple[Relation, Relation]:
    """The net force along each axis as the sum of the pulls."""
    known, right = (pulls(data, "2"), pulls(data, "3")), quarter(data, "phi")
    second, third = known[0] or 1, known[1] or 1
    open_ = " A force whose sign is not known counts as a pull; a minus sign in the result means a push."
    open_ = "" if all(known) else open_
    across = [(second, "F_21"), *([(third, "F_31*cos(phi)")] if right is None else [])]
    up = (third * (-1 if right == 3 else 1), "F_31*sin(phi)" if right is None else "F_31")
    turned, rest = ("+", "-") if second > 0 else ("-", "+")
    both = "The net force is the sum of all the forces: charge {} acts as well."
    slanting = right is None
    return (
        Relation(
            f"F_x = {signed(across)}",
            what="Superposition along x, to the right counted positive",
            why=f"Towards charge 2 is to the right{'' if slanting else ', and charge 3 gives nothing along x'}.{open_}",
            plain=PLAIN_PARTS,
            units={"F_x": "N", "F_21": "N", "F_31": "N"},
            marks=SA,
            mistakes=(
                slip(
                    "wrong-side",
                    "F_31",
                    f"(F_x {turned} F_21)/({'-' if third < 0 else ''}cos(phi))",
                    "F₂₁ was taken in the opposite direction",
                ),
                slip("one-force", "F_31", "F_x/cos(phi)", say=both.format(2)),
                slip("sin-for-cos", "F_31", f"(F_x {rest} F_21)/sin(phi)", say=FROM_X.format("x", "cos")),
                slip("one-force", "F_21", "F_x", say=both.format(3)),
            )
            if slanting
            else (),
            directions={f"F_{tag}1": towards(data, tag) for tag in "23"},
        ),
        Relation(
            f"F_y = {signed([up])}",
            what="Superposition along y, upwards counted positive",
            why=f"Charge 2 is on the x-axis, so it gives nothing along y: all of it is due to charge 3.{open_}",
            plain=PLAIN_PARTS,
            units={"F_y": "N", "F_31": "N"},
            marks=SA,
            mistakes=(
                slip("sin-for-cos", "F_31", "F_y/cos(phi)", say=FROM_X.format("y", "sin")),
                slip(
                    "component-as-force",
                    "F_31",
                    "F_y",
                    say="F_y is only one component of the force of charge 3: divide by sin φ.",
                ),
            )
            if slanting
            else (),
            directions={"F_31": towards(data, "3")},
        ),
    )


def components(data: Data) -> tuple[Relation, ...]:
    """The components of a net force given by its size and direction."""
    right, found = quarter(data, "theta"), []
    on_axis = "The net force lies along an axis."
    counted = "θ is counted anticlockwise from the +x axis, so the sign of the component comes out by itself."
    say = "θ is measured from the x-axis: along x it is F cos θ, along y F sin θ."
    for axis, f, other, start in (("x", "cos", "sin", 0), ("y", "sin", "cos", 1)):
        law = f"F_{axis} = F_net*{f}(theta)"
        if right is not None:
            law = f"F_{axis} = 0" if (right - start) % 2 else f"F_{axis} = {'-' if (right - start) % 4 else ''}F_net"
        found.append(
            Relation(
                law,
                what=f"Component of the net force along {axis}",
                why=counted if right is None else on_axis,
                plain=PLAIN_PARTS,
                units={f"F_{axis}": "N"},
                marks=A,
                mistakes=(slip("sin-for-cos", f"F_{axis}", f"F_net*{other}(theta)", say=say),) if right is None else (),
            )
        )
    return tuple(found)


def per_coulomb(data: Data) -> tuple[Relation, ...]:
    """Charge 1 from the force on each coulomb of it, when both other charges are known."""
    found: list[Relation] = []
    right = quarter(data, "phi")
    second, third = (-1 if data.values[name] > 0 else 1 for name in ("Q2", "Q3"))
    for axis, f in (("x", "cos"), ("y", "sin")):
        terms = [(second, "Q2/r_12^2")] if axis == "x" else []
        if right is None:
            terms.append((third, f"Q3*{f}(phi)/r_13^2"))
        elif axis == "y":
            terms.append((third * (-1 if right == 3 else 1), "Q3/r_13^2"))
        each = f"E_{axis}"
        turned = signed([(-terms[0][0], terms[0][1]), *terms[1:]])
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
                mistakes=(slip("wrong-side", each, f"k*({turned})"),) if len(terms) > 1 else (),
            ),
            so_many(f"F_{axis}", each),
        ]
    if only_size(data):
        found.append(
            Relation(
                "E = sqrt(E_x^2 + E_y^2)",
                what="The force on each coulomb of charge 1: Pythagoras",
                why="The parts along x and y are at right angles, so their squares add.",
                plain=PLAIN_PARTS,
                units={"E": "N·C⁻¹"},
                marks=A,
                mistakes=(slip("sizes-added", "E", "abs(E_x) + abs(E_y)"),),
            )
        )
        found.append(so_many("F_net", "E"))
    return tuple(found)


def so_many(pull: str, each: str) -> Relation:
    """Charge 1 from a force and the force on each coulomb; with its sign where both are components."""
    whole = pull == "F_net"
    signs = (
        "Divide the size of the net force by the force on each coulomb. The sign of charge 1 does not follow."
        if whole
        else "Divide sizes. Where the force points the way a positive charge would be pushed, charge 1 is"
        " positive; otherwise it is negative."
    )
    return Relation(
        f"{pull} = Q1*{each}",
        what="So many coulombs feel the stated force",
        why=signs,
        plain="Twice the charge would feel twice the force.",
        units={"Q1": "C"},
        sizes=(pull, each),
        marks=A,
        mistakes=(slip("multiplied", "Q1", f"{pull}*{each}", say="Divide the force by the force on each coulomb."),),
        directions={} if whole else {"Q1": lambda v: sign_of_charge(v[pull] * v[each]) if v[pull] else None},
    )


# --- two answers ----------------------------------------------------------------------------------------------------


class Second(NamedTuple):
    """The laws that give what is asked, and the steps to a second answer that fits as well; none where one does."""

    laws: tuple[Relation, ...] = ()
    steps: tuple[Step, ...] = ()


def by_size(data: Data, tag: str) -> Second:
    """A force from the size of the net force: along and across the line through charge 1 and that charge."""
    pull, other = f"F_{tag}1", {"2": "3", "3": "2"}[tag]
    known, way = f"F_{other}1", pulls(data, tag)
    join = "+" if (pulls(data, other) or 1) * (way or 1) > 0 else "-"
    right = quarter(data, "phi") is not None
    counted = {1: "Towards", -1: "Away from", None: "Towards"}[way]
    open_ = "" if way else " A minus sign in the result means a push."
    law = Relation(
        f"F_net^2 = {pull}^2 + {known}^2"
        if right
        else f"F_net^2 = ({pull} {join} {known}*cos(phi))^2 + ({known}*sin(phi))^2",
        what=f"Pythagoras, along and across the line through charges 1 and {tag}",
        why=(
            f"Charge {tag} acts along this line only; across it there is what charge {other} gives. {counted} charge"
            f" {tag} is positive.{open_}"
        ),
        plain="Turn the page so that this line is level; then add along it and across it, and take the longest side.",
        units={pull: "N"},
        marks=SA,
        mistakes=(
            slip(
                "one-force", pull, "F_net", say=f"The net force is the sum of all the forces: charge {other} acts too."
            ),
            slip("sizes-subtracted", pull, f"F_net - {known}", say="Forces have directions: use the squares."),
        ),
        directions={pull: towards(data, tag)},
    )
    size, net, phi = size_of(data, other), data.values["F_net"], data.values.get("phi")
    if size is None or phi is None:
        return Second((law,))
    level, across = (1 if join == "+" else -1) * size * cos(phi), size * abs(sin(phi))
    style = data.settings.style
    if way and level >= 0 and net <= size:
        act = "pulls" if way == 1 else "pushes"
        raise Refusal("F_net", NO_ROOT.format(tag, act, measure(size, "N", style).text))
    if net < across:
        raise Refusal("F_net", TOO_SMALL.format(tag, other, tag, measure(across, "N", style).text))
    root = sqrt(net**2 - across**2)
    roots = (root - level, -root - level)
    fit = [n for n, one in enumerate(roots) if abs(one) > NOISE * size and (one > 0 or not way)]
    step = law.step(pull)
    if root <= NOISE * net:
        return Second((law,))
    if len(fit) == 1:
        kept, dropped = (step, minus_root(step)) if fit == [0] else (minus_root(step), step)
        reason = f"Charge {tag} {'pulls' if way == 1 else 'pushes'}, so its force counts as positive here."
        reason = reason if way else "A force of zero means no charge, so it is dropped."
        return Second((replace(law, by_hand={pull: replace(kept, other=dropped.make, dropped=reason)}),))
    found = f"Q{tag}" if f"Q{tag}" in data.asked_names else f"r_1{tag}"
    names = {pull: f"{pull}b", found: f"{found}_b" if found[0] == "Q" else f"{found}b"}
    other_root = minus_root(law.renamed(**names).step(names[pull]))
    return Second((law,), (other_root, of_pair(data, tag).renamed(**names).step(names[found])))


def minus_root(step: Step) -> Step:
    """The step with the other sign before the square root."""

    def turned(line: str) -> str:
        return line.replace("= sqrt(", "= -sqrt(")

    why = f"{step.why} A square has two roots: this time the negative one."
    return replace(step, make=turned(step.make), lines=tuple(map(turned, step.lines)), why=why)


def by_angle(data: Data) -> Second:
    """The angle φ from what is given of the net force: two angles, unless both components are given."""
    second, third = (pulls(data, tag) or 1 for tag in "23")
    level, slant = size_of(data, "2"), size_of(data, "3")
    if level is None or slant is None or len(data.asked_names) > 1:
        raise Refusal(None, ANGLE_ALONE)
    x, y = stated_net(data)
    wrong: tuple[tuple[str, str, str], ...]
    if x is not None:
        name, share, ends = (
            "F_x",
            (x - second * level) * third / slant,
            (second * level - slant, second * level + slant),
        )
        law = f"F_x = {signed([(second, 'F_21'), (third, 'F_31*cos(phi)')])}"
        rest = f"(F_x {'-' if second > 0 else '+'} F_21)"
        wrong = (
            ("one-force", "acos(F_x/F_31)", ""),
            ("wrong-side", f"acos(({'-' if third < 0 else ''}F_x {'+' if second * third > 0 else '-'} F_21)/F_31)", ""),
            ("sin-for-cos", f"asin({rest}/F_31)", FROM_X.format("x", "cos")),
        )
    elif y is not None:
        name, share, ends = "F_y", y * third / slant, (-slant, slant)
        law = f"F_y = {signed([(third, 'F_31*sin(phi)')])}"
        wrong = (("sin-for-cos", "acos(abs(F_y)/F_31)", FROM_X.format("y", "sin")),)
    elif data.has("F_net"):
        name, ends = "F_net", (abs(level - slant), level + slant)
        share = second * third * (data.values["F_net"] ** 2 - level**2 - slant**2) / (2 * level * slant)
        law = f"F_net^2 = F_21^2 + F_31^2 {'+' if second * third > 0 else '-'} 2*F_21*F_31*cos(phi)"
        wrong = (("not-doubled", "acos((F_net^2 - F_21^2 - F_31^2)/(F_21*F_31))", "The product stands there twice."),)
    else:
        return Second()
    by_sine = name == "F_y"
    if abs(share) > 1:
        bounds = (measure(end, "N", data.settings.style).text for end in ends)
        raise Refusal(name if data.has(name) else "F_net", OUT_OF_REACH.format(AXES[name], *bounds))
    if (abs(share) if by_sine else 1 - abs(share)) < NOISE:
        raise Refusal(name if data.has(name) else "F_net", AT_THE_END)
    # The angle with the formula, then the other one with the same sine or cosine.
    low = by_sine and share < 0
    turned = asin(min(1.0, abs(share))) if by_sine else acos(share)
    angles = [pi + turned if low else turned, pi - turned if by_sine and not low else 2 * pi - turned]
    makes = ["deg180 + {}" if low else "", "deg180 - {}" if by_sine and not low else "deg360 - {}"]
    fit = [0] if abs(angles[1] - angles[0]) < 1e-6 else [0, 1]  # a root loses half of the digits
    if x is not None and y is not None:
        fit = [n for n in fit if abs(third * slant * sin(angles[n]) - y) <= SLACK * (slant + abs(y))]
        if not fit:
            raise Refusal("theta" if data.has("theta") else "F_y", SIZE_OFF)
    helped = makes[fit[0]] != ""
    first = "alpha" if helped else "phi"
    law = law.replace("phi", first)
    made = Relation(
        law.replace("F_y = -", "F_y = ").replace("F_y", "abs(F_y)") if low else law,
        what="The net force along y, sizes only, for the angle with the x-axis" if low else HOW[name],
        why=HOW_WHY[name],
        plain=PLAIN_PARTS,
        units={first: "°"},
        marks=SA,
        mistakes=tuple(slip(key, first, instead, say=say) for key, instead, say in wrong),
    )
    same = f"The same {'sine' if by_sine else 'cosine'} belongs to two angles of a full turn"
    told = {
        True: f"{same}; the sign of F_y tells which one it is.",
        False: f"{same}: nothing that is given tells them apart, so both fit.",
    }[len(fit) == 1 and x is not None and y is not None]
    laws = [made]
    if helped:
        laws.append(turned_to("phi", makes[fit[0]].format("alpha"), BELOW if low else told))
    if len(fit) == 1:
        return Second(tuple(laws))
    return Second(tuple(laws), turned_to("phi_b", makes[1].format(first), told).steps())


AXES = {"F_x": " along x", "F_y": " along y", "F_net": ""}
HOW = {
    "F_x": "Superposition along x, solved for the angle of charge 3",
    "F_y": "Superposition along y, solved for the angle of charge 3",
    "F_net": "The cosine rule for the two forces and their sum",
}
HOW_WHY = {
    "F_x": "Charge 2 acts along x with its whole force, charge 3 with F₃₁ cos φ; a pull counts plus, a push minus.",
    "F_y": "Charge 2 gives nothing along y, charge 3 F₃₁ sin φ.",
    "F_net": "Two forces with the angle φ between them, or 180° − φ where one pulls and one pushes.",
}
BELOW = "Along y the net force shows that charge 3 is below the x-axis: count on from 180°."
SIZE_OFF = (
    "This does not fit the other numbers: at no angle of charge 3 are both components as stated. Correct it, or leave"
    " this box empty."
)


def turned_to(name: str, make: str, why: str) -> Relation:
    """An angle from the one the formula gives."""
    return Relation(
        f"{name} = {make}",
        what="The angle anticlockwise from the +x axis",
        why=why,
        plain="Draw the line at both angles and see where each arrow would point.",
        units={name: "°"},
        marks=A,
    )


# --- the question ---------------------------------------------------------------------------------------------------


def more_than_one(data: Data) -> Second:
    """What the size of the net force alone gives, or an angle."""
    if "phi" in data.asked_names:
        return by_angle(data)
    tags = [tag for tag in "23" if {f"Q{tag}", f"r_1{tag}"} & set(data.asked_names)]
    if only_size(data) and len(data.asked_names) == 1 and tags and data.has("phi"):
        return by_size(data, tags[0])
    return Second()


def situation(data: Data) -> Situation:
    refuse_zero_charge(data, "Q1", "Q2", "Q3")
    if quarter(data, "phi") in (0, 2, 4):
        raise Refusal("phi", ON_THE_AXIS.format(data.said["phi"]))
    own = by_the_others(data)
    if own:
        refuse_no_push(data)
    second = more_than_one(data)
    laws = per_coulomb(data) if own else (*second.laws, *along(data), of_pair(data, "2"), of_pair(data, "3"))
    return Situation(
        relations=(*laws, *components(data)),
        openings=OPENINGS,
        tell=TELL,
        ask={
            **{f"Q{n}": f"Calculate charge {n}, with its sign." for n in "123"},
            **{f"r_1{n}": f"Calculate the distance of charge {n} from charge 1." for n in "23"},
            **({"Q1": "Calculate the size of charge 1."} if own and only_size(data) else {}),
        },
        ways={"F_x": (LEFT_RIGHT, "right"), "F_y": (UP_DOWN, "up")},
        stated=(state(SUPERPOSITION),),
        later=lambda data, values: (*again(second), *later(data, values)),
        refuse=refuse,
        proofs=lambda values: proofs(data, values, second),
        scene=lambda _: scene(data),
    )


def again(second: Second) -> tuple[Part, ...]:
    """The other answer that fits."""
    if not second.steps:
        return ()
    name = second.steps[-1].makes
    which = {"Q": "charge, with its sign,", "r": "distance", "p": "angle"}[name[0]]
    return (Part("second", "calculate", f"Another {which} fits as well. Calculate it.", second.steps),)


OPENINGS = (
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
)
TELL = {
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
}


def refuse_no_push(data: Data) -> None:
    """Charge 1 follows from a component only where the others give one."""
    v = data.values
    level, slanting = v["Q2"] / v["r_12"] ** 2, v["Q3"] / v["r_13"] ** 2 * cos(v["phi"])
    if abs(level + slanting) <= NOISE * abs(level) and not data.has("F_y"):
        raise Refusal("F_x" if data.has("F_x") else "F_net", NO_PUSH.format("x"))


def refuse(data: Data, values: Values) -> None:
    """No zero charge, no distance for a force that would point the wrong way, no components that contradict
    each other."""
    asked = set(data.asked_names)
    for axis in "xy" if by_the_others(data) else "":
        if f"E_{axis}" in values and values.get(f"F_{axis}") == 0:
            raise Refusal(f"F_{axis}" if data.has(f"F_{axis}") else "F_net", ZERO.format(axis))
    for tag, other in (("2", "3"), ("3", "2")):
        pull = f"F_{tag}1"
        if pull not in values or not {"Q1", f"Q{tag}", f"r_1{tag}"} & asked:
            continue
        if abs(values[pull]) <= NOISE * abs(values.get(f"F_{other}1", 0.0)):
            sentence = NO_CHARGE.format(tag) if "Q1" in asked else NOTHING_LEFT.format(other, tag)
            raise Refusal("F_x" if data.has("F_x") else None, sentence)
        way = pulls(data, tag)
        if way is None and given(data, f"Q{tag}"):
            way = -1 if sign_of_first(data, values) * data.values[f"Q{tag}"] > 0 else 1
            right = values[pull] * way > 0
        else:
            right = values[pull] > 0
        if way and not right:
            act = ("attract", "like charges repel") if way < 0 else ("repel", "unlike charges attract")
            raise Refusal(f"Q{tag}", WRONG_WAY.format(tag, *act))
    refuse_contradiction(data)


SLACK = 0.02  # of the forces: stated numbers are rounded


def refuse_contradiction(data: Data) -> None:
    """Both components for one unknown: one of them is enough, so the other must agree."""
    v, k = data.values, data.settings.constant("k")
    whole, (x, y) = data.has("F_net") and data.has("theta"), stated_net(data)
    if x is None or y is None or len(data.asked_names) > 1 or not given(data, "phi"):
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


def proofs(data: Data, values: Values, second: Second) -> tuple[Check, ...]:
    """The stated component, or the size, once more from the answer put back with its sign."""
    if second.laws and only_size(data):
        made = {step.makes.removesuffix("b").removesuffix("_"): step.makes for step in second.steps}
        names = [{}, made] if made else [{}]
        signs = [pulls(data, tag) or 1 for tag in "23"]
        return tuple(
            check(
                "Put it back along both axes: the size of the net force must come out as stated",
                f"F_net^2 = ({signed([(signs[0], f), (signs[1], f'{g}*cos({phi})')])})^2 + ({g}*sin({phi}))^2",
            )
            for g, f, phi in ([named.get(n, n) for n in ("F_31", "F_21", "phi")] for named in names)
        )
    if not {"Q1", "Q2", "Q3", "r_12", "r_13", "phi", "F_x"} <= values.keys() or "Q1" in data.asked_names:
        return ()
    if any(abs(values["F_x"]) < 1e-3 * abs(values.get(f"F_{tag}1", 0.0)) for tag in "23"):
        return ()  # printed digits could not show a difference so small
    ways = [pulls(data, tag) or (1 if values.get(f"F_{tag}1", 1.0) > 0 else -1) for tag in "23"]
    terms = [(ways[0], "k*Q1*Q2/r_12^2")]
    if quarter(data, "phi") is None:
        terms.append((ways[1], "k*Q1*Q3*cos(phi)/r_13^2"))
    what = "Put everything back: the component along x must come out as stated"
    return (check(what, f"F_x = {signed(terms)}", "Plus for a pull, minus for a push.", ("Q1", "Q2", "Q3")),)


def later(data: Data, values: Values) -> tuple[Part, ...]:
    """The forces drawn where both are known; else why one component was enough."""
    if by_the_others(data):
        double = explain(
            "double",
            "Charge 1 is doubled, the others stay as they are. Explain what happens to the net force on it.",
            ("Each of the two forces is directly proportional to charge 1, so each doubles.", "doubles"),
            ("Their sum doubles too, and its direction stays the same.", "direction"),
        )
        sign = explain(
            "sign",
            "Explain why the sign of charge 1 does not follow from these data.",
            (
                "With the other sign each of the two forces on charge 1 turns round, and so does their sum.",
                "turns round",
            ),
            ("Its size stays the same, and only the size of the net force is given.", "size"),
        )
        return (sign, double) if only_size(data) else (double,)
    if {"F_21", "F_31"} <= values.keys():
        arrows = (
            "Arrow F₂₁ along the x-axis and arrow F₃₁ along the line through charges 1 and 3, each with head and label."
        )
        return (
            Part(
                "draw",
                "draw",
                "Draw the two forces on charge 1 head to tail, with their sum.",
                points=(Point(arrows), Point("The sum runs from the first tail to the last head.")),
                figure=lambda v: forces_figure(data, v),
            ),
        )
    return (
        explain(
            "enough",
            "Explain why the component along y is enough here.",
            ("Charge 2 is on the x-axis, so its force on charge 1 has no component along y.", "no component along y"),
            ("The whole component along y comes from charge 3.", "charge 3"),
        ),
    )


def forces_figure(data: Data, values: Values) -> Figure:
    """Both forces on charge 1 head to tail."""
    phi = degrees(values["phi"])
    drawn = []
    for tag, turn in (("2", 0.0), ("3", phi)):
        size = values[f"F_{tag}1"] * (pulls(data, tag) or 1)
        drawn.append(Force(f"F_{{{tag}1}}", abs(size), (turn + (0 if size > 0 else 180)) % 360))
    return tail_to_head(drawn, title="Sum of the forces on charge 1")


def scene(data: Data) -> Figure:
    """The three charges; a sign that is asked for is left out, and so is a distance."""
    phi = data.values["phi"] if given(data, "phi") else radians(60)
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
    unknowns=("Q3", "r_13", "Q2", "r_12", "Q1", "phi"),
    drawn=("Q3", "r_13", "Q2", "r_12", "Q1"),
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
