"""Charges in a plane: the net force by components, at right angles or anywhere.

F_x = ΣF cos θ, F_y = ΣF sin θ, F_net = √(F_x² + F_y²), tan θ = F_y/F_x with the sizes of the
components; the signs of the components name the axis the angle is measured from.
Marks: two forces 2 + 2, resultant 2, angle 1, answer and direction 1; common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import hypot
from random import Random
from typing import cast

from calc.figures import Figure, tail_to_head
from calc.figures.plane import charges_in_plane
from calc.language.printing import Style
from calc.model.answers import Mark, Point
from calc.model.directions import NET_IN_PLANE
from calc.model.questions import NO_MARKS, SA, A, Check, Data, Draw, Mistake, Part, Plan, Question, Step, Values
from calc.model.relations import Relation
from calc.topics.several_charges import shared
from calc.topics.several_charges.shared import (
    NOISE,
    PLAIN_NET,
    Body,
    axis_angle,
    compass,
    gap_of,
    heading_of,
    pull_of,
    signed,
    slip,
    step,
    unit,
    way_words,
)
from calc.topics.shared.electrostatics import COULOMB, state

# --- what every question in a plane needs -------------------------------------------------------------------


def sloped(source: Body, on: Body) -> bool:
    """Whether the joining line lies along neither axis."""
    x, y = unit(heading_of(source, on))
    return x != 0 and y != 0


def halfway(source: Body, on: Body) -> bool:
    """Whether the joining line is at 45°, where nobody can see sin taken for cos."""
    x, y = unit(heading_of(source, on))
    return abs(abs(x) - abs(y)) < 1e-3


def rough_way(heading: float) -> str:
    """A heading in a sentence without its angle: "to the left and down"."""
    return NET_IN_PLANE.of(compass(*unit(heading), Style()).key).words.split(":")[0]


def pull_part(
    source: Body,
    on: Body,
    style: Style,
    wrong_gaps: Sequence[tuple[str, str]] = (),
    before: tuple[Step, ...] = (),
    angle_known: bool = True,
) -> Part:
    """The part that asks for one force in a plane. before: the steps to its distance."""
    heading = heading_of(source, on)
    where = compass(*unit(heading), style)
    way = way_words(heading, style) if angle_known else rough_way(heading)
    pull = shared.pull_step(source, on, where, way, SA, wrong_gaps)
    return Part(f"force-{source.tag}", "calculate", shared.pull_ask(source, on), (*before, pull))


def rough_net(sources: Sequence[Body], on: Body) -> tuple[float, float]:
    """The net force over k, by components: only to choose between directions."""
    x = y = most = 0.0
    for s in sources:
        size = abs(s.charge * on.charge) / hypot(s.x - on.x, s.y - on.y) ** 2
        across, up = unit(heading_of(s, on))
        x, y, most = x + size * across, y + size * up, max(most, size)
    return 0.0 if abs(x) <= NOISE * most else x, 0.0 if abs(y) <= NOISE * most else y


def resultant(
    x: str, y: str, net: tuple[float, float], on: Body, style: Style, *wrong: Mistake, sizes: bool = False
) -> tuple[Step, ...]:
    """Size by Pythagoras and angle with the x-axis. x, y: names of the parts along the axes.

    wrong: mistakes with the size besides the usual ones. sizes: the parts have no signs; ``net`` has them.
    """
    root, zero = f"sqrt({x}^2 + {y}^2)", net == (0.0, 0.0)
    signs = [-1 if sizes and part < 0 else 1 for part in net]
    why = "Both sums are zero: the forces cancel, so there is no direction."
    why = why if zero else "The parts along x and y are at right angles, so their squares add."
    omitted = slip("root-omitted", "F_net", f"{x}^2 + {y}^2", say=shared.SQUARE_LEFT, F="F_net")
    size = step(
        f"F_net = {root}",
        "N",
        "The resultant: Pythagoras",
        why,
        PLAIN_NET,
        directions={"F_net": lambda v: compass(v[x] * signs[0], v[y] * signs[1], style)},
        mistakes=() if zero else (*wrong, omitted, *shared.turned("F_net", root, on)),
    )
    return (size, angle_step(x, y, net)) if net[0] and net[1] else (size,)


def signless(name: str) -> str:
    """The size of a sum, which may be negative; a force found from sizes is one already."""
    return f"abs({name})" if name.startswith("Sigma") else name


def angle_step(x: str, y: str, net: tuple[float, float]) -> Step:
    """The angle between the resultant and the x-axis."""
    level, axis = "above" if net[1] > 0 else "below", "+x" if net[0] > 0 else "−x"
    key = f"{'right' if net[0] > 0 else 'left'}-{'up' if net[1] > 0 else 'down'}"
    where = replace(NET_IN_PLANE.of(key), words=f"{level} the {axis} axis")
    inverted = "the angle is 90° minus the right one: it is measured from the y-axis"
    return Relation(
        f"tan(theta) = {y}/{x}",
        units={"theta": "°"},
        marks=A,
        sizes=(x, y),
        directions={"theta": lambda v: where},
        what=f"The angle with the {axis} axis",
        why=f"Put in sizes. The resultant points {level} the {axis} axis, so θ is measured from the {axis} axis.",
        plain="How steeply the total force points, counted from the level line.",
        mistakes=(slip("angle-inverted", "theta", f"atan({x}/{y})", inverted, y=signless(y), x=signless(x)),),
    ).step("theta")


def plane_figure(
    bodies: Sequence[Body],
    on: Body,
    values: Values | None,
    net: tuple[float, float] | None = None,
    distances: Sequence[tuple[int, int, str]] = (),
) -> Figure:
    """The charges, with the forces on the chosen one where values are given and the resultant where ``net`` is."""
    sources = [body for body in bodies if body is not on]
    forces = shared.pulls(sources, on, values) if values else []
    resultant = None
    if values and net and net != (0.0, 0.0):
        angle = compass(*net, Style()).angle or 0.0
        resultant = ("F_{net}", abs(values["F_net"]), angle)
    return charges_in_plane(
        [b.drawn for b in bodies],
        on=bodies.index(on),
        forces=forces,
        resultant=resultant,
        angle=axis_angle(*net) if resultant and net else None,
        axes=resultant is not None,
        distances=distances,
        title=f"Forces on {on.words}" if forces else "Charges in a plane",
    )


def plane_parts(
    bodies: Sequence[Body], on: Body, net_steps: tuple[Step, ...], net: tuple[float, float], data: Data
) -> tuple[Part, Part, Part]:
    """Draw the forces, calculate the net force, check it by a drawing to scale."""
    sources = [body for body in bodies if body is not on]
    style, zero = data.settings.style, net == (0.0, 0.0)
    near = max(abs(s.charge) / hypot(s.x - on.x, s.y - on.y) ** 2 for s in sources)
    scale = shared.scale_words(data.settings.constant("k") * near * abs(on.charge), style)
    aim = (
        "The last head ends where the first arrow starts: the net force is zero."
        if zero
        else "One arrow from the first tail to the last head: the dashed resultant, with its angle."
    )
    return (
        shared.draw_part(on, sources, style, lambda v: plane_figure(bodies, on, v)),
        Part(
            "net",
            "calculate",
            f"Calculate the size and direction of the net electrostatic force on {on.words}.",
            net_steps,
            answer="F_net",
            figure=lambda v: plane_figure(bodies, on, v, net),
        ),
        Part(
            "sum",
            "draw",
            f"Check by drawing: add the forces on {on.words} head to tail, to scale.",
            points=(
                Point(f"Arrows head to tail, lengths to one stated scale ({scale}, for example)."),
                Point(aim),
            ),
            figure=lambda v: tail_to_head(
                shared.pulls(sources, on, v), angle=axis_angle(*net), title=f"Sum of the forces on {on.words}"
            ),
        ),
    )


# --- components -----------------------------------------------------------------------------------------------------


def component_steps(
    sources: Sequence[Body],
    on: Body,
    net: tuple[float, float],
    style: Style,
    tilts: Callable[[Body, Body], Step] | None = None,
) -> tuple[Step, ...]:
    """Components of the sloped forces, the two sums, the resultant and its angle.

    tilts: the step to the angle of a sloped joining line with the x-axis; without it the angles are known.
    """
    steps: list[Step] = []
    terms: dict[str, list[tuple[int, str]]] = {"x": [], "y": []}
    for source in sources:
        name, slanting = pull_of(source, on), sloped(source, on)
        if slanting:
            steps += [tilts(source, on)] if tilts else []
            steps += resolve(source, on, style if tilts else None)
        for axis, way in zip("xy", unit(heading_of(source, on)), strict=True):
            if way:
                terms[axis].append((1 if way > 0 else -1, f"{name}{axis}" if slanting else name))
    marks = A if any(sloped(source, on) for source in sources) else NO_MARKS
    steps += [sum_step(f"SigmaF_{axis}", axis, terms[axis], marks) for axis in "xy"]
    added = " + ".join(pull_of(s, on) for s in sources)
    wrong = (
        [slip("sizes-added", "F_net", added, "all the sizes were added", shared.OTHER_LINES)]
        if len(sources) > 1
        else []
    )
    return (*steps, *resultant("SigmaF_x", "SigmaF_y", net, on, style, *wrong))


def tilt_of(source: Body, on: Body) -> str:
    """The name of the angle between a joining line and the x-axis."""
    return gap_of(source, on).replace("r_", "theta_")


def resolve(source: Body, on: Body, style: Style | None) -> tuple[Step, ...]:
    """The sizes of both components of a force along a sloped joining line. style: None tells no angle."""
    name, angle, heading = pull_of(source, on), tilt_of(source, on), heading_of(source, on)
    way = way_words(heading, style) if style else rough_way(heading)
    return tuple(
        step(
            f"{name}{axis} = {name}*{f}({angle})",
            "N",
            f"Component along {axis} of the force of {source.words}",
            f"The force points {way}. Resolve it: sizes only, the directions come back in the sums.",
            "The part of the push that works along this axis.",
            NO_MARKS,
            mistakes=(
                ()
                if halfway(source, on)
                else (
                    slip(
                        "sin-for-cos",
                        f"{name}{axis}",
                        f"{name}*{other}({angle})",
                        say=shared.beside_angle(f"{name}{axis}", angle, axis),
                    ),
                )
            ),
        )
        for axis, f, other in (("x", "cos", "sin"), ("y", "sin", "cos"))
    )


def sum_step(name: str, axis: str, terms: Sequence[tuple[int, str]], marks: tuple[Mark, ...]) -> Step:
    """The signed sum of the components along one axis."""
    names = [term for _, term in terms]
    wrong: tuple[Mistake, ...] = ()
    if len({sign for sign, _ in terms}) > 1:
        why, say = f"all the sizes along {axis} were added", shared.SAY["sizes-added"]
        wrong = (slip(f"sizes-added-{axis}", name, " + ".join(names), why, say),)
    elif len(terms) == 2:
        less = f"{'-' if terms[0][0] < 0 else ''}abs({names[0]} - {names[1]})"
        wrong = (slip(f"subtracted-{axis}", name, less, say=shared.SAY["subtracted"]),)
    return step(
        f"{name} = {signed(terms) if terms else '0'}",
        "N",
        f"Add everything along {axis}, taking {'to the right' if axis == 'x' else 'upwards'} as positive",
        "A minus sign means the opposite direction." if terms else f"No force has a part along {axis}.",
        "Add up the pushes along this axis; opposite ones take away.",
        marks,
        mistakes=wrong,
    )


def signed_check(axis: str, law: str) -> Check:
    """The sum along one axis from charges with their signs."""
    return shared.check(
        f"The sum along {axis} with the signs of the charges put in",
        law,
        "The signs of charges and steps settle each direction by themselves, without angles.",
    )


# --- anywhere in a plane ------------------------------------------------------------------------------------


def plan_plane(data: Data) -> Plan:
    bodies = shared.row_bodies(data)
    on, sources = shared.chosen(data, bodies)
    style, net = data.settings.style, rough_net(sources, on)
    return Plan(
        story=story_plane(data, on),
        parts=(
            state(shared.SUPERPOSITION),
            *(pull_part(s, on, style, wrong_places(s, on, sources), (place_gap(s, on),)) for s in sources),
            *plane_parts(bodies, on, component_steps(sources, on, net, style, tilt_step), net, data),
        ),
        values=shared.row_values(data),
        scene=lambda _: plane_figure(bodies, on, None),
        checks=(*plane_checks(sources, on, net), shared.size_check(sources, on)),
        notes=(f"F₁₂ is the force of charge 1 on charge 2, and so on. Only forces on {on.words} count.",),
    )


def story_plane(data: Data, on: Body) -> str:
    rows = data.rows_said["charges"]
    opening = data.pick(
        "Small charged discs are taped to a large sheet of squared paper with x- and y-axes.",
        "Small charged spheres stand on a plastic grid with x- and y-axes.",
        later=("On a large pegboard an x- and a y-axis are drawn, and small charged balls are pinned to it.",),
    )
    facts = "; ".join(
        f"charge {i + 1}, {row['Q']}, at ({row['x'].lstrip('+')}; {row['y'].lstrip('+')})" for i, row in enumerate(rows)
    )
    return f"{opening} They are: {facts}. The net force on {on.words} is wanted."


def steps_to(source: Body, on: Body) -> tuple[str, str]:
    """The steps across and up from one charge to the other, by their coordinates."""
    return f"x{on.tag} - x{source.tag}", f"y{on.tag} - y{source.tag}"


def place_gap(source: Body, on: Body) -> Step:
    """The distance from the coordinates, by Pythagoras where the joining line is sloped."""
    name, (across, along) = gap_of(source, on), steps_to(source, on)
    what, plain = f"Distance from {source.words} to {on.words}", "How far apart the two are, in a straight line."
    if sloped(source, on):
        law, why = f"{name} = sqrt(({across})^2 + ({along})^2)", "Pythagoras with the steps across and up."
        wrong = (slip("places-added", name, f"abs({across}) + abs({along})", say=shared.AROUND, r=name),)
        return step(law, "m", what, why, plain, NO_MARKS, mistakes=wrong)
    flat = abs(on.x - source.x) > abs(on.y - source.y)
    why = f"Both lie on one line along {'x' if flat else 'y'}: the difference of the positions."
    return step(f"{name} = abs({across if flat else along})", "m", what, why, plain, NO_MARKS)


def wrong_places(source: Body, on: Body, sources: Sequence[Body]) -> list[tuple[str, str]]:
    """Distances of other pairs, where they differ from the right one."""
    return [
        (f"sqrt((x{a.tag} - x{b.tag})^2 + (y{a.tag} - y{b.tag})^2)", words)
        for a, b, words in shared.other_pairs(source, on, sources)
    ]


def tilt_step(source: Body, on: Body) -> Step:
    """The acute angle of the joining line with the x-axis, from the coordinates."""
    angle, (across, along) = tilt_of(source, on), steps_to(source, on)
    turned = slip(
        "angle-inverted",
        angle,
        f"atan(abs({across})/abs({along}))",
        "the angle was taken from the y-axis",
        theta=angle,
        y=f"abs({along})",
        x=f"abs({across})",
    )
    return Relation(
        f"tan({angle}) = abs({along})/abs({across})",
        units={angle: "°"},
        marks=NO_MARKS,
        what=f"Angle between the line through {source.words} and {on.words} and the x-axis",
        why="Step up over step across, sizes only.",
        plain="How steep the joining line is.",
        mistakes=() if halfway(source, on) else (turned,),
    ).step(angle)


def plane_checks(sources: Sequence[Body], on: Body, net: tuple[float, float]) -> list[Check]:
    """The components once more from charges with their signs."""
    found = []
    for axis, part in zip("xy", net, strict=True):
        terms = " + ".join(f"{s.name}*({axis}{on.tag} - {axis}{s.tag})/{gap_of(s, on)}^3" for s in sources)
        if part:
            found.append(signed_check(axis, f"SigmaF_{axis} = k*{on.name}*({terms})"))
    return found


def practise_plane(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """A right angle first; then a sloped joining line from a 3-4-5 or 5-12-13 triangle; then a fourth charge."""
    draw = cast(Random, random)

    def turn(number: int) -> int:
        return number * draw.choice((-1, 1))

    first, second = draw.sample((10, 15, 20, 24, 30), 2)
    places = [(0, 0), (turn(first), 0), (0, turn(second))]
    if level > 1:
        wide, high = draw.choice(((30, 40), (12, 16), (40, 30), (24, 10), (18, 24), (5, 12)))
        places[2] = (turn(wide), turn(high))
    if level > 2:
        places.append((0, turn(draw.choice((12, 25, 36)))))
    rows = [{"Q": f"{turn(draw.choice((2, 3, 4, 5, 6, 8, 9)))} nC", "x": f"{x} cm", "y": f"{y} cm"} for x, y in places]
    return {**typed, "charges": rows, "on": "1"}


PLANE = Question(
    key="plane",
    title="Charges anywhere in a plane",
    fields=(shared.table("x", "y"), shared.on_charge()),
    plan=plan_plane,
    constants=("k",),
    laws=(shared.SUPERPOSITION.name, COULOMB.name),
    example={
        "charges": [
            {"Q": "+2 nC", "x": "0 cm", "y": "0 cm"},
            {"Q": "+5 nC", "x": "-20 cm", "y": "0 cm"},
            {"Q": "-6 nC", "x": "12 cm", "y": "16 cm"},
        ],
        "on": "1",
    },
    draws={"on": Draw(("1",))},
    adjust=practise_plane,
)
