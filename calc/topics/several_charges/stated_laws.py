"""The laws of three charges in a plane, charge 1 at the origin: forces, their components, and where two answers fit.

F_x = F₂₁ + F₃₁ cos φ, F_y = F₃₁ sin φ with a pull counted positive and a push negative, each from Coulomb's law.
The size alone leaves two answers: F_net² = (F₃₁ + F₂₁ cos φ)² + (F₂₁ sin φ)², along and across a joining line.
"""

from __future__ import annotations

from dataclasses import replace
from math import acos, asin, cos, degrees, pi, sin, sqrt
from typing import NamedTuple

from calc.model.answers import Direction
from calc.model.directions import AWAY_TOWARDS
from calc.model.questions import SA, A, Data, Refusal, Step, Values, in_names
from calc.model.relations import Relation, Towards
from calc.topics.several_charges.shared import AT_RIGHT, NET_TAKEN, NET_USED, NOISE, SAY, compass, pair, signed, slip
from calc.topics.shared.electrostatics import COULOMB, ONLY_ONCE, sign_of_charge
from calc.working.working import measure

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
SECOND_TURNED = (
    "You took the force of charge 2 the other way. Charges that attract pull towards each other, those that repel push"
    " away: draw its arrow again."
)
ONE_COMPONENT = "You took {F_y} for the whole force of charge 3. It is only one component of it: divide by {sin(phi)}."
PER_COULOMB = "You multiplied {F} by {E}. {E} is the force on each coulomb, so divide: {F/E}."
OTHER_LINE = (
    "You subtracted {F} from {F_net}. The forces act along different lines, so work with squares, as Pythagoras."
)
PLAIN_PARTS = "A slanting push is a push along x and a push along y at once; each direction is added for itself."
FROM_X = "You worked with the {}. The angle {{{}}} is measured from the x-axis, so use the {} along {}."
SINE, COSINE = "sine", "cosine"
WHOLE_X = "You let charge {} give the whole of {{F_x}}. Charge {} acts along x as well: bring {} into the sum first."
SLACK = 0.02  # of the forces: stated numbers are rounded


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
    law = pair(
        pull,
        other,
        "Q1",
        gap,
        what=f"Coulomb's law for charges 1 and {tag}",
        why=why,
        marks=SA,
        mistakes=(
            slip("not-squared", pull, f"k*{other}*Q1/{gap}", r=gap),
            slip("not-squared", other, f"{pull}*{gap}/(k*Q1)", say=ONLY_ONCE, r=gap),
            slip("root-omitted", gap, f"k*{other}*Q1/{pull}", r=gap),
            slip("net-used", other, f"F_net*{gap}^2/(k*Q1)", say=NET_USED % f"Charge {tag}", net="F_net", share=pull),
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
                    F="F_21",
                ),
                slip("one-force", "F_31", "F_x/cos(phi)", say=WHOLE_X.format(3, 2, "{F_21}")),
                slip("sin-for-cos", "F_31", f"(F_x {rest} F_21)/sin(phi)", say=FROM_X.format(SINE, "phi", COSINE, "x")),
                slip("one-force", "F_21", "F_x", say=WHOLE_X.format(2, 3, "its component")),
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
                slip("sin-for-cos", "F_31", "F_y/cos(phi)", say=FROM_X.format(COSINE, "phi", SINE, "y")),
                slip(
                    "component-as-force",
                    "F_31",
                    "F_y",
                    say=ONE_COMPONENT,
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
    for axis, f, other, start in (("x", "cos", "sin", 0), ("y", "sin", "cos", 1)):
        took, use = (SINE, COSINE) if axis == "x" else (COSINE, SINE)
        say = FROM_X.format(took, "theta", use, axis)
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
                mistakes=(slip("wrong-side", each, f"k*({turned})", say=SECOND_TURNED),) if len(terms) > 1 else (),
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
                mistakes=(slip("sizes-added", "E", "abs(E_x) + abs(E_y)", say=AT_RIGHT, one="E_x", other="E_y"),),
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
        mistakes=(slip("multiplied", "Q1", f"{pull}*{each}", say=PER_COULOMB, F=pull, E=each),),
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
            slip("one-force", pull, "F_net", say=NET_TAKEN, net="F_net", share=pull, known=known),
            slip("sizes-subtracted", pull, f"F_net - {known}", say=OTHER_LINE, F=known),
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


BELOW = "Along y the net force shows that charge 3 is below the x-axis: count on from 180°."
SIZE_OFF = (
    "This does not fit the other numbers: at no angle of charge 3 are both components as stated. Correct it, or leave"
    " this box empty."
)


class Turn(NamedTuple):
    """What is given of the net force as a law for φ.

    name: of what is given. ratio: the cosine of φ, or with F_y its sine. ends: the least and the most it can be, in
    newtons. wrong: (key, expression, sentence) of known mistakes.
    """

    name: str
    ratio: float
    ends: tuple[float, float]
    law: str
    what: str
    why: str
    wrong: tuple[tuple[str, str, str], ...]


def turn_of(data: Data, level: float, slant: float) -> Turn | None:
    """The law for φ, with the forces of charge 2 and of charge 3 in newtons; None where no net force is given."""
    second, third = (pulls(data, tag) or 1 for tag in "23")
    x, y = stated_net(data)
    if x is not None:
        less, turned = ("-", "+") if second > 0 else ("+", "-")
        minus = "-" if third < 0 else ""
        return Turn(
            "F_x",
            (x - second * level) * third / slant,
            (second * level - slant, second * level + slant),
            f"F_x = {signed([(second, 'F_21'), (third, 'F_31*cos(phi)')])}",
            "Superposition along x, solved for the angle of charge 3",
            "Charge 2 acts along x with its whole force, charge 3 with F₃₁ cos φ; a pull counts plus, a push minus.",
            (
                ("one-force", f"acos({minus}F_x/F_31)", WHOLE_X.format(3, 2, "{F_21}")),
                ("wrong-side", f"acos({minus}(F_x {turned} F_21)/F_31)", in_names(SAY["wrong-side"], {"F": "F_21"})),
                ("sin-for-cos", f"asin({minus}(F_x {less} F_21)/F_31)", FROM_X.format(SINE, "phi", COSINE, "x")),
            ),
        )
    if y is not None:
        return Turn(
            "F_y",
            y * third / slant,
            (-slant, slant),
            f"F_y = {signed([(third, 'F_31*sin(phi)')])}",
            "Superposition along y, solved for the angle of charge 3",
            "Charge 2 gives nothing along y, charge 3 F₃₁ sin φ.",
            (("sin-for-cos", "acos(abs(F_y)/F_31)", FROM_X.format(COSINE, "phi", SINE, "y")),),
        )
    if not data.has("F_net"):
        return None
    squares = "F_net^2 - F_21^2 - F_31^2" if second == third else "F_21^2 + F_31^2 - F_net^2"
    return Turn(
        "F_net",
        second * third * (data.values["F_net"] ** 2 - level**2 - slant**2) / (2 * level * slant),
        (abs(level - slant), level + slant),
        f"F_net^2 = F_21^2 + F_31^2 {'+' if second == third else '-'} 2*F_21*F_31*cos(phi)",
        "The cosine rule for the two forces and their sum",
        "Two forces with the angle φ between them, or 180° − φ where one pulls and one pushes.",
        (
            (
                "not-doubled",
                f"acos(({squares})/(F_21*F_31))",
                (
                    "You left out the 2 of the cosine rule. It has twice the product of the two forces: divide by"
                    " {2*F_21*F_31}."
                ),
            ),
        ),
    )


def by_angle(data: Data) -> Second:
    """The angle φ from what is given of the net force: two angles, unless both components are given."""
    level, slant = size_of(data, "2"), size_of(data, "3")
    if level is None or slant is None or len(data.asked_names) > 1:
        raise Refusal(None, ANGLE_ALONE)
    turn = turn_of(data, level, slant)
    if turn is None:
        return Second()
    by_sine, box = turn.name == "F_y", turn.name if data.has(turn.name) else "F_net"
    if abs(turn.ratio) > 1:
        bounds = (measure(end, "N", data.settings.style).text for end in turn.ends)
        along_ = {"F_x": " along x", "F_y": " along y"}.get(turn.name, "")
        raise Refusal(box, OUT_OF_REACH.format(along_, *bounds))
    if (abs(turn.ratio) if by_sine else 1 - abs(turn.ratio)) < NOISE:
        raise Refusal(box, AT_THE_END)
    # The angle that the formula gives, then the other one with the same sine or cosine.
    low = by_sine and turn.ratio < 0
    acute = asin(abs(turn.ratio)) if by_sine else acos(turn.ratio)
    both = (
        (pi + acute if low else acute, "deg180 + {}" if low else ""),
        (pi - acute, "deg180 - {}") if by_sine and not low else (2 * pi - acute, "deg360 - {}"),
    )
    fit = list(both[:1] if abs(both[1][0] - both[0][0]) < 1e-6 else both)  # a root loses half of the digits
    x, y = stated_net(data)
    picked = x is not None and y is not None
    if x is not None and y is not None:
        across, up = (pulls(data, "3") or 1) * slant, y
        fit = [min(fit, key=lambda one: abs(across * sin(one[0]) - up))]
        if abs(across * sin(fit[0][0]) - y) > SLACK * (slant + abs(y)):
            raise Refusal("theta" if data.has("theta") else "F_y", SIZE_OFF)
    first = "alpha" if fit[0][1] else "phi"
    law = turn.law.replace("phi", first)
    made = Relation(
        law.replace("F_y = -", "F_y = ").replace("F_y", "abs(F_y)") if low else law,
        what="The net force along y, sizes only, for the angle with the x-axis" if low else turn.what,
        why=turn.why,
        plain=PLAIN_PARTS,
        units={first: "°"},
        marks=SA,
        mistakes=tuple(slip(key, first, instead, say=say) for key, instead, say in turn.wrong),
    )
    same = f"The same {'sine' if by_sine else 'cosine'} belongs to two angles of a full turn"
    one, two = "the sign of F_y tells which one it is.", "nothing that is given tells them apart, so both fit."
    why = f"{same}; {one}" if picked else f"{same}: {two}"
    laws = [made]
    if fit[0][1]:
        laws.append(turned_to("phi", fit[0][1].format(first), BELOW if low else why))
    return Second(tuple(laws), *[turned_to("phi_b", make.format(first), why).steps() for _, make in fit[1:]])


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
