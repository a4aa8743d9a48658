"""Charges at the corners of a triangle or a rectangle given by its sides: the net force on one of them.

The sides give the distances and, by the cosine rule or the right-angled triangle in the figure, the angles;
from there as anywhere in a plane. r₂₃² = r₁₂² + r₁₃² − 2 r₁₂ r₁₃ cos θ at charge 1.
Marks: an angle 2, the rest as in a plane; common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from math import hypot, sqrt
from random import Random
from typing import cast

from calc.model.questions import (
    NO_MARKS,
    SA,
    A,
    Check,
    Choice,
    Data,
    Draw,
    Mistake,
    Part,
    Plan,
    Question,
    Refusal,
    Step,
)
from calc.model.relations import Relation
from calc.topics.several_charges.plane import (
    component_steps,
    plane_figure,
    plane_parts,
    pull_part,
    rough_net,
    signed_check,
    sloped,
    tilt_of,
)
from calc.topics.several_charges.shared import (
    NOISE,
    SUPERPOSITION,
    Body,
    apart,
    charge,
    check,
    gap_of,
    like,
    pull_of,
    signed,
    size_check,
    slip,
)
from calc.topics.shared.electrostatics import COULOMB, refuse_zero_charge, state
from calc.working.chain import NoWay, fits, lead, possible_mistakes, worked
from calc.working.declaring import Given, boxes
from calc.working.working import measure


def equal(one: str, other: str, why: str) -> Relation:
    """Two sides of the same length."""
    what, plain = "Sides of the same length", "One side is as long as the other."
    return Relation(f"{one} = {other}", what, why, {one: "m", other: "m"}, plain, marks=NO_MARKS)


def hypotenuse(longest: str, one: str, other: str) -> Relation:
    """Pythagoras in a right-angled triangle."""
    across = f"You added the two sides. The distance {{{longest}}} is straight across: use Pythagoras."
    known = f"You added the squares. The longest side is {{{longest}}}, which is known: subtract the squares instead."
    return Relation(
        f"{longest}^2 = {one}^2 + {other}^2",
        what="Pythagoras in the right-angled triangle",
        why="The longest side lies opposite the right angle.",
        plain="Two sides at a right angle fix the third.",
        units={longest: "m", one: "m", other: "m"},
        marks=A,
        mistakes=(
            slip("sides-added", longest, f"{one} + {other}", say=across),
            slip("squares-added", one, f"sqrt({longest}^2 + {other}^2)", say=known),
            slip("squares-added", other, f"sqrt({longest}^2 + {one}^2)", say=known),
        ),
    )


def tilt(law: str, name: str, why: str, *mistakes: Mistake) -> Relation:
    """The angle ``name`` between a joining line and the x-axis, from the sides."""
    what = f"Angle between the line through charges {name[-2]} and {name[-1]} and the x-axis"
    plain = "The three sides fix the triangle, so they fix how steep this side is."
    return Relation(law, what, why, {name: "°"}, plain, marks=SA, mistakes=mistakes)


# --- a triangle ---------------------------------------------------------------------------------------------

SIDES = ("r_12", "r_13", "r_23")
ANY, RIGHT, ISOSCELES, EQUILATERAL = "sides", "right", "isosceles", "equilateral"
MISSING = {
    ANY: "A triangle is fixed by its three sides: fill in this one too, or choose another shape.",
    RIGHT: "A right-angled triangle needs two of its sides: fill in one more.",
    ISOSCELES: (
        "An isosceles triangle needs its base, between charges 1 and 2, and one of the two equal sides: fill in this"
        " one too."
    ),
    EQUILATERAL: "An equilateral triangle needs one side: fill in this one.",
}
NOT_LONGEST = (
    "The side between charges 2 and 3 lies opposite the right angle, so it must be the longest. "
    "Type a larger distance here, or a smaller one for the other side."
)


def triangle_ways(shape: str, blunt: str = "") -> tuple[Step, ...]:
    """Every way from side to side and from the sides to an angle. blunt: the base charge with an angle over 90°."""
    if shape == ANY:
        return tuple(cosine(near, near == blunt) for near in "12")
    found: list[Relation] = []
    if shape == RIGHT:
        opposite = (
            "You divided the sides the other way round. Seen from charge 2, {r_13} is opposite {theta_23}: divide it by"
            " {r_12}."
        )
        turned = slip("angle-inverted", "theta_23", "atan(r_12/r_13)", say=opposite)
        why = "In the right-angled triangle: the side opposite charge 2 over the one beside it."
        found = [hypotenuse("r_23", "r_12", "r_13"), tilt("tan(theta_23) = r_13/r_12", "theta_23", why, turned)]
    elif shape == ISOSCELES:
        why = "The height of an isosceles triangle cuts the base in half: half the base over the side."
        half = "You used the whole base. Only half of {r_12} belongs to the right-angled triangle: halve it."
        found = [equal("r_13", "r_23", "Both sides from charge 3 are equally long.")]
        for a, leg in (("theta_13", "r_13"), ("theta_23", "r_23")):
            whole = slip("not-halved", a, f"acos(r_12/{leg})", say=half)
            found.append(tilt(f"cos({a}) = r_12/(2*{leg})", a, why, whole))
    else:
        why = "All angles of an equilateral triangle are 60°: half the base over the side is one half."
        same = "All sides of an equilateral triangle are equally long."
        found = [equal(a, b, same) for a, b in combinations(SIDES, 2)]
        found += [tilt(f"cos({a}) = 1/2", a, why) for a in ("theta_13", "theta_23")]
    return tuple(step for relation in found for step in relation.steps())


def cosine(near: str, blunt: bool) -> Step:
    """The cosine rule for the angle at charge ``near`` of the base, or for what is left of it to 180°.

    Rearranged by hand: the squares stay in the order in which the rule has them.
    """
    far = "2" if near == "1" else "1"
    name, side, opposite = f"theta_{near}3", f"r_{near}3", f"r_{far}3"
    moved = f"{opposite}^2 - r_12^2 - {side}^2" if blunt else f"r_12^2 + {side}^2 - {opposite}^2"
    product, ratio = f"2*r_12*{side}*cos({name})", f"({moved})/(2*r_12*{side})"
    touching = (
        f"You found another angle of the triangle. The side opposite charge {near} does not touch it: put"
        f" {{{opposite}}} there."
    )
    twice = (
        "You left out the 2 of the cosine rule. It has twice the product of the two sides: divide by"
        f" {{2*r_12*{side}}}."
    )
    rule = tilt(
        f"{opposite}^2 = r_12^2 + {side}^2 {'+' if blunt else '-'} {product}",
        name,
        f"The cosine rule at charge {near}. The angle there is more than 90°; θ is what is left of it to 180°, the"
        " angle with the x-axis, so the last term is added: cos(180° − θ) = −cos θ."
        if blunt
        else f"The cosine rule at charge {near}: the side opposite it is the one between the other two charges.",
        slip(
            "wrong-side-opposite",
            name,
            f"acos(abs((r_12^2 + {opposite}^2 - {side}^2)/(2*r_12*{opposite})))",
            "the angle at the other end of the base was found",
            touching,
        ),
        slip("not-doubled", name, f"acos(({moved})/(r_12*{side}))", say=twice),
    )
    lines = (f"{product} = {moved}", f"cos({name}) = {ratio}")
    return replace(rule.step(name), make=f"{name} = acos({ratio})", lines=lines)


def triangle_sides(data: Data) -> dict[str, float]:
    """All three sides; refuses those that make no triangle of the shape chosen."""
    shape, typed = data.choices["shape"], data.values
    ways = triangle_ways(shape)
    empty = [name for name in SIDES if name not in typed]
    if shape == ANY and empty:
        raise Refusal(empty[0], MISSING[shape])
    if shape == RIGHT and "r_23" in typed:
        for leg in ("r_12", "r_13"):
            if typed.get(leg, 0.0) >= typed["r_23"]:
                raise Refusal("r_23", NOT_LONGEST)
    steps: list[Step] = []
    for name in empty:
        try:
            steps += lead([*typed, *(step.makes for step in steps)], ways, name)
        except NoWay:
            raise Refusal(name, MISSING[shape]) from None
    values = worked(data, steps)
    sides = {name: values[name] for name in SIDES}
    longest = max(SIDES, key=sides.__getitem__)
    rest = sum(sides.values()) - sides[longest]
    if sides[longest] >= rest * (1 - NOISE):
        style = data.settings.style
        flat = sides[longest] <= rest * (1 + NOISE)
        raise Refusal(
            longest if longest in typed else next(iter(name for name in SIDES if name in typed)),
            f"These sides make no triangle: the one between charges {longest[2]} and {longest[3]} "
            f"({measure(sides[longest], 'm', style).text}) must be shorter than the other two together "
            f"({measure(rest, 'm', style).text}). "
            + ("With these lengths the three charges lie on one line. " if flat else "")
            + "Change one of the sides.",
        )
    return sides


def triangle_bodies(data: Data, sides: dict[str, float]) -> tuple[Body, ...]:
    """Charge 1 at the origin, charge 2 to the right of it, charge 3 above their line."""
    base, left, right = (sides[name] for name in SIDES)
    across = (base**2 + left**2 - right**2) / (2 * base)
    if data.choices["shape"] == RIGHT or abs(across) <= NOISE * left:
        across = 0.0
    if abs(across - base) <= NOISE * base:
        across = base
    height = sqrt((base + left + right) * (left + right - base) * (base + left - right) * (base + right - left)) / (
        2 * base
    )
    places = ((0.0, 0.0), (base, 0.0), (across, height))
    return tuple(Body(str(n), data.values[f"Q{n}"], *place) for n, place in enumerate(places, start=1))


# --- both shapes --------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Outline:
    """The charges of a figure given by its sides: their places, and the ways to its distances and angles."""

    bodies: tuple[Body, ...]
    ways: tuple[Step, ...]
    story: str
    check: Callable[[Sequence[Body], Body, Collection[str]], tuple[Check, ...]]
    told: tuple[str, ...] = ()  # angles to find although no component needs them


def plan_outline(data: Data, outline: Outline) -> Plan:
    """Distances and angles where they are needed, then the forces and their sum."""
    bodies = outline.bodies
    on = bodies[int(data.choices["on"]) - 1]
    sources = [body for body in bodies if body is not on]
    style, net = data.settings.style, rough_net(sources, on)
    known, parts = set(data.values), [state(SUPERPOSITION)]

    def leading(name: str) -> tuple[Step, ...]:
        steps = lead(known, outline.ways, name)
        known.update(step.makes for step in steps)
        return steps

    for source in sources:
        angle = tilt_of(source, on)
        if (sloped(source, on) or angle in outline.told) and angle not in known:
            ask = f"Calculate the angle between the line through charges {angle[-2]} and {angle[-1]} and the x-axis."
            parts.append(Part(f"angle-{angle[-2:]}", "calculate", ask, leading(angle)))
    for source in sources:
        gaps, steps = wrong_gaps(source, on, bodies), leading(gap_of(source, on))
        parts.append(pull_part(source, on, style, gaps, steps, angle_known=False))
    parts += plane_parts(bodies, on, component_steps(sources, on, net, style), net, data)
    given = tuple(
        (i, j, data.said[gap])
        for (i, one), (j, other) in combinations(enumerate(bodies), 2)
        if (gap := gap_of(one, other)) in data.said
    )
    return Plan(
        story=outline.story,
        parts=tuple(within_reach(data, parts)),
        values=dict(data.values),
        scene=lambda _: plane_figure(bodies, bodies[0], None, distances=given),
        checks=(*outline.check(sources, on, known), size_check(sources, on)),
        notes=("The x-axis runs from charge 1 to charge 2, the y-axis up the page.",),
    )


def within_reach(data: Data, parts: Sequence[Part]) -> list[Part]:
    """The parts with those mistakes only whose values are known by then."""
    known, kept = set(data.known), list[Part]()
    for part in parts:
        steps = possible_mistakes(known, part.steps)
        known |= {step.makes for step in steps}
        kept.append(replace(part, steps=steps))
    return kept


def wrong_gaps(source: Body, on: Body, bodies: Sequence[Body]) -> list[tuple[str, str]]:
    """Distances of other pairs, where they differ from the right one."""
    seen, found = [hypot(source.x - on.x, source.y - on.y)], list[tuple[str, str]]()
    for a, b in combinations(bodies, 2):
        length = hypot(a.x - b.x, a.y - b.y)
        if all(abs(length - other) > NOISE * length for other in seen):
            seen.append(length)
            found.append((gap_of(a, b), f"the distance from {a.words} to {b.words} was used"))
    return found[:2]


ENOUGH = {ANY: 3, RIGHT: 2, ISOSCELES: 2, EQUILATERAL: 1}


def plan_triangle(typed: Data) -> Plan:
    refuse_zero_charge(typed, "Q1", "Q2", "Q3")
    shape = typed.choices["shape"]
    lengths = dict.fromkeys(SIDES, "m")
    fits(typed, triangle_ways(shape), (), lengths)  # sides that are more than enough must agree
    spare = [name for name in SIDES if name in typed.values][ENOUGH[shape] :]
    data = replace(typed, values={n: v for n, v in typed.values.items() if n not in spare})
    bodies = triangle_bodies(data, triangle_sides(data))
    blunt = "1" if bodies[2].x < 0 else "2" if bodies[2].x > bodies[1].x else ""
    outline = Outline(
        bodies,
        triangle_ways(shape, blunt),
        story_triangle(data),
        triangle_check,
        told=("theta_13", "theta_23") if shape == ANY else (),
    )
    plan = plan_outline(data, outline)
    notes = fits(typed, outline.ways, plan.steps, lengths)
    return replace(plan, notes=(*plan.notes, *notes))


def triangle_check(sources: Sequence[Body], on: Body, known: Collection[str]) -> tuple[Check, ...]:
    """The resultant once more without components, by the cosine rule for the triangle of the forces."""
    first, second = sources
    a, b, c = gap_of(first, on), gap_of(second, on), gap_of(first, second)
    f, g = pull_of(first, on), pull_of(second, on)
    length = {gap_of(p, q): hypot(p.x - q.x, p.y - q.y) for p, q in combinations((on, *sources), 2)}
    twins = [n for n in length if n in known and abs(length[n] - length[c]) <= NOISE * length[c]]
    if not twins:  # two sides of a right angle
        return (check("The same by the angle: a force over its share of the resultant", f"F_net = {g}/sin(theta)"),)
    c = c if c in twins else twins[0]
    sign = "+" if like(first, on) == like(second, on) else "-"
    angle = (
        "Both forces pull or both push: the angle between them is that of the triangle."
        if sign == "+"
        else "One force pulls and one pushes: the angle between them is what is left of the triangle's to 180°."
    )
    law = f"F_net^2 = {f}^2 + {g}^2 {sign} {f}*{g}*({a}^2 + {b}^2 - {c}^2)/({a}*{b})"
    return (check("The size once more without components, by the cosine rule", law, angle),)


SHAPES = (
    (ANY, "any triangle: all three sides"),
    (RIGHT, "right-angled at charge 1: two sides"),
    (ISOSCELES, "isosceles, charge 3 equally far from 1 and 2: base and side"),
    (EQUILATERAL, "equilateral: one side"),
)
OPENINGS = (
    "Small charged spheres stand on plastic pegs at the corners of {}, seen from above.",
    "Small charged discs are taped to a glass plate at the corners of {}.",
    "Charged pith balls are pinned to a foam board, one at each corner of {}.",
)


def story_triangle(data: Data) -> str:
    said, shape = data.said, data.choices["shape"]
    kind = {
        ANY: "a triangle",
        RIGHT: "a right-angled triangle",
        ISOSCELES: "an isosceles triangle",
        EQUILATERAL: "an equilateral triangle",
    }
    facts = {
        ANY: "",
        RIGHT: " The right angle is at charge 1.",
        ISOSCELES: " Charge 3 is equally far from the other two.",
        EQUILATERAL: "",
    }
    apart = ", ".join(
        f"{'charges ' if not n else ''}{name[2]} and {name[3]}"
        f" {'are ' if not n else ''}{said[name]}{' apart' if not n else ''}"
        for n, name in enumerate(name for name in SIDES if name in said)
    )
    return (
        f"{data.pick(*OPENINGS).format(kind[shape])} Charge 1, {said['Q1']}, and charge 2, {said['Q2']}, are at the"
        f" ends of the base, charge 2 on the right; charge 3, {said['Q3']}, is above the base.{facts[shape]}"
        f" {apart[0].upper()}{apart[1:]}. The net force on charge {data.choices['on']} is wanted."
    )


def side(name: str, words: str, numbers: str = "", help: str = "") -> Given:
    given = apart(name, words, numbers)
    return replace(given, box=replace(given.box, optional=True, help=help))


def practise_triangle(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """A right angle or equal sides first, then any of them, then sides without a special angle."""
    draw = cast(Random, random)
    shape = draw.choice({1: (RIGHT, EQUILATERAL), 2: (RIGHT, ISOSCELES, ANY)}.get(level, (ANY,)))
    if shape == RIGHT:
        a, b, c = draw.choice(((30, 40, 50), (12, 16, 20), (20, 15, 25), (10, 24, 26), (18, 24, 30)))
        sides = draw.choice(((a, b, 0), (a, 0, c), (0, b, c))) if level > 1 else (a, b, 0)
    elif shape == EQUILATERAL:
        sides = (draw.choice((10, 15, 20, 25, 30, 40)), 0, 0)
    elif shape == ISOSCELES:
        base, leg = draw.choice(((12, 10), (16, 10), (24, 15), (30, 25), (20, 30), (10, 15)))
        sides = (base, leg, 0)
    else:
        sides = draw.choice(
            ((14, 13, 15), (21, 10, 17), (20, 15, 12), (8, 12, 10), (25, 20, 30), (12, 20, 14), (15, 10, 21))
        )
    boxes = {name: f"{side} cm" if side else "" for name, side in zip(SIDES, sides, strict=True)}
    return {**typed, **boxes, "shape": shape}


DRAWN = {
    "Q1": "3 5 6 -2 -4; 4,5 -5,2 6,8",
    "Q2": "4 7 8 -5 -9; 5,5 -7,2",
    "Q3": "2 6 9 -3 -8; 4,8 -6,5",
    "Q4": "3 5 7 -4 -6; 3,5 -8,5",
}


def at_corner(name: str, where: str, example: str) -> Given:
    return charge(name, f"Charge {name[1]}, {where}", f"{example}; {DRAWN[name]}")


def which(numbers: str) -> Choice:
    return Choice("on", "Find the net force on", tuple((n, f"charge {n}") for n in numbers), finds=True)


TRIANGLE = Question(
    key="triangle",
    title="Three charges at the corners of a triangle given by its sides",
    **boxes(
        Choice("shape", "The triangle is", SHAPES),
        at_corner("Q1", "at the left end of the base", "+4 nC"),
        at_corner("Q2", "at the right end of the base", "-6 nC"),
        at_corner("Q3", "above the base", "+5 nC"),
        side("r_12", "Distance between charges 1 and 2, the base", "14 cm"),
        side("r_13", "Distance between charges 1 and 3", "13 cm"),
        side("r_23", "Distance between charges 2 and 3", "15 cm"),
        which("123"),
        draws={"on": Draw(("1", "2", "3"))},
    ),
    plan=plan_triangle,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name),
    adjust=practise_triangle,
    since=2,
)


# --- a square or a rectangle --------------------------------------------------------------------------------

OPPOSITE = "Opposite sides of a rectangle are equally long."
SQUARE = "All sides of a square are equally long."


def rectangle_ways(square: bool) -> tuple[Step, ...]:
    """Sides that are equal, the diagonals by Pythagoras, and their angle with the x-axis."""
    same = [equal("r_34", "r_12", OPPOSITE), equal("r_23", "r_14", OPPOSITE)]
    if square:
        same = [equal(name, "r_12", SQUARE) for name in ("r_14", "r_23", "r_34")]
    why = "The upright side over the level one, in the right-angled triangle under the diagonal."
    steps = [relation.step(relation.names[0]) for relation in same]
    steps += [hypotenuse(name, "r_12", "r_14").step(name) for name in ("r_13", "r_24")]
    for a in ("theta_13", "theta_24"):
        turned = slip(
            "angle-inverted", a, "atan(r_12/r_14)", "the angle was taken from the y-axis", theta=a, y="r_14", x="r_12"
        )
        steps.append(tilt(f"tan({a}) = r_14/r_12", a, why, *([] if square else [turned])).step(a))
    return tuple(steps)


def plan_rectangle(data: Data) -> Plan:
    refuse_zero_charge(data, "Q1", "Q2", "Q3", "Q4")
    square = not data.has("r_14")
    wide = data.values["r_12"]
    high = wide if square else data.values["r_14"]
    places = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
    bodies = tuple(Body(str(n), data.values[f"Q{n}"], *place) for n, place in enumerate(places, start=1))
    return plan_outline(data, Outline(bodies, rectangle_ways(square), story_rectangle(data), rectangle_checks))


def rectangle_checks(sources: Sequence[Body], on: Body, known: Collection[str]) -> tuple[Check, ...]:
    """The sums along both axes with the signs of the charges put in."""
    found = []
    for axis, side, part in zip("xy", ("r_12", "r_14"), rough_net(sources, on), strict=True):
        steps = [(s, on.x - s.x if axis == "x" else on.y - s.y) for s in sources]
        terms = [(1 if gap > 0 else -1, f"{s.name}*{side}/{gap_of(s, on)}^3") for s, gap in steps if gap]
        least = min(sign for sign, _ in terms) if len({sign for sign, _ in terms}) == 1 else 1
        sum_ = signed(sorted(((sign * least, term) for sign, term in terms), reverse=True))
        if part:
            found.append(signed_check(axis, f"{'-' if least < 0 else ''}SigmaF_{axis} = k*{on.name}*({sum_})"))
    return tuple(found)


def story_rectangle(data: Data) -> str:
    said = data.said
    square = not data.has("r_14")
    sides = (
        f"sides of {said['r_12']}" if square else f"a width of {said['r_12']} and a height of {said.get('r_14', '')}"
    )
    shape = "square" if square else "rectangle"
    return (
        f"{data.pick(*OPENINGS).format('a ' + shape)} The {shape} has {sides}. Charge 1, {said['Q1']}, is at the bottom"
        f" left; then, anticlockwise, come charge 2, {said['Q2']}, charge 3, {said['Q3']}, and charge 4, {said['Q4']}."
        f" The net force on charge {data.choices['on']} is wanted."
    )


def practise_rectangle(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """A square first; a rectangle, mostly with a whole diagonal, from level 2 on."""
    draw = cast(Random, random)
    wide, high = draw.choice(((40, 30), (12, 16), (24, 10), (15, 20), (20, 15), (10, 25), (18, 24)))
    if level == 1 or (level == 2 and draw.choice((True, False))):
        high = 0
    across = "3412"[int(str(typed["on"])) - 1]  # a larger charge there, so that it counts in the sum
    size = f"{draw.choice((1, -1)) * draw.choice((12, 15, 18, 24))} nC"
    return {**typed, f"Q{across}": size, "r_12": f"{wide} cm", "r_14": f"{high} cm" if high else ""}


RECTANGLE = Question(
    key="square",
    title="Four charges at the corners of a square or a rectangle",
    **boxes(
        at_corner("Q1", "bottom left", "+3 nC"),
        at_corner("Q2", "bottom right", "-5 nC"),
        at_corner("Q3", "top right", "+4 nC"),
        at_corner("Q4", "top left", "+6 nC"),
        apart("r_12", "Side of the square, or width of the rectangle", "20 cm"),
        side("r_14", "Height of the rectangle", help="empty for a square"),
        which("1234"),
        draws={"on": Draw(("1", "2", "3", "4"))},
    ),
    plan=plan_rectangle,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name),
    adjust=practise_rectangle,
    since=2,
)
