"""Charges in a plane: the net force by components, at right angles or anywhere.

F_x = ΣF cos θ, F_y = ΣF sin θ, F_net = √(F_x² + F_y²), tan θ = F_y/F_x with the sizes of the
components; the signs of the components name the axis the angle is measured from.
Marks: two forces 2 + 2, resultant 2, angle 1, answer and direction 1; common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import hypot
from random import Random
from typing import cast

from calc.figures import Figure, tail_to_head
from calc.figures.charges import Charge
from calc.figures.plane import charges_in_plane
from calc.language.printing import Style
from calc.model.answers import Direction, Mark, Point
from calc.model.questions import (
    NO_MARKS,
    SA,
    A,
    Check,
    Data,
    Draw,
    Mistake,
    Part,
    Plan,
    Question,
    Step,
    Values,
)
from calc.model.relations import Relation
from calc.topics.several_charges.line import signed
from calc.topics.several_charges.shared import (
    NOISE,
    PLAIN_NET,
    QUADRANTS,
    SUPERPOSITION,
    Body,
    axis_angle,
    bounds_words,
    chosen,
    compass,
    draw_part,
    gap_of,
    heading_of,
    on_charge,
    other_pairs,
    pull_ask,
    pull_of,
    pull_step,
    pulls,
    row_bodies,
    row_values,
    scale_words,
    table,
    turned,
    unit,
    way_words,
    within_bounds,
)
from calc.topics.shared.electrostatics import (
    COULOMB,
    state,
)

# --- what every question in a plane needs -------------------------------------------------------------------


def sloped(source: Body, on: Body) -> bool:
    """Whether the joining line lies along neither axis."""
    x, y = unit(heading_of(source, on))
    return x != 0 and y != 0


def halfway(source: Body, on: Body) -> bool:
    """Whether the joining line is at 45°, where nobody can see sin taken for cos."""
    x, y = unit(heading_of(source, on))
    return abs(abs(x) - abs(y)) < 1e-3


def plane_pull(
    source: Body,
    on: Body,
    style: Style,
    wrong_gaps: Sequence[tuple[str, str]] = (),
    way: str = "",
) -> Step:
    """Coulomb's law for one pair in a plane. way: the direction in words, where its angle is still to be found."""
    heading = heading_of(source, on)
    where = compass(*unit(heading), style)
    return pull_step(source, on, where, way or way_words(heading, style), SA, wrong_gaps)


def rough_net(sources: Sequence[Body], on: Body) -> tuple[float, float]:
    """The net force over k, by components: only to choose between directions."""
    x = y = most = 0.0
    for s in sources:
        size = abs(s.charge * on.charge) / hypot(s.x - on.x, s.y - on.y) ** 2
        across, up = unit(heading_of(s, on))
        x, y, most = x + size * across, y + size * up, max(most, size)
    return 0.0 if abs(x) <= NOISE * most else x, 0.0 if abs(y) <= NOISE * most else y


def size_step(law: str, x: str, y: str, net: tuple[float, float], on: Body, style: Style, added: str) -> Step:
    """The resultant by Pythagoras. x, y: names of the parts along the axes; added: the sum of all sizes."""
    zero = net == (0.0, 0.0)
    signs = (1, 1) if x.startswith("Sigma") else net
    return Step(
        law=law,
        make=law,
        unit="N",
        what="The resultant: Pythagoras",
        marks=(Mark("formula"), Mark("substitution"), Mark("answer")),
        why=(
            "Both sums are zero: the forces cancel, so there is no direction."
            if zero
            else "The parts along x and y are at right angles, so their squares add."
        ),
        plain=PLAIN_NET,
        direction=lambda v: compass(_signed(v[x], signs[0]), _signed(v[y], signs[1]), style),
        mistakes=(
            ()
            if zero
            else (
                *(
                    (Mistake("sizes-added", "F_net", added, "Forces have directions.", "all the sizes were added"),)
                    if added
                    else ()
                ),
                Mistake("root-omitted", "F_net", f"{x}^2 + {y}^2", "You have F²: take the square root."),
                *turned("F_net", law.split("= ")[1], on),
            )
        ),
    )


def _signed(value: float, sign: float) -> float:
    return -value if sign < 0 else value


def angle_step(x: str, y: str, net: tuple[float, float]) -> Step:
    """The angle between the resultant and the x-axis."""
    level = "above" if net[1] > 0 else "below"
    axis = "+x" if net[0] > 0 else "−x"
    key = f"{'right' if net[0] > 0 else 'left'}-{'up' if net[1] > 0 else 'down'}"
    where = Direction(key, f"{level} the {axis} axis", QUADRANTS)
    return Relation(
        f"tan(theta) = {y}/{x}",
        units={"theta": "°"},
        marks=A,
        sizes=(x, y),
        directions={"theta": lambda v: where},
        what=f"The angle with the {axis} axis",
        why=f"Put in sizes. The resultant points {level} the {axis} axis, so θ is measured from the {axis} axis.",
        plain="How steeply the total force points, counted from the level line.",
        mistakes=(
            Mistake(
                "angle-inverted",
                "theta",
                f"atan({x}/{y})",
                "Name your reference axis.",
                "the angle is 90° minus the right one: it is measured from the y-axis",
            ),
        ),
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
    forces = pulls(sources, on, values) if values else []
    resultant = None
    if values and net and net != (0.0, 0.0):
        angle = compass(*net, Style()).angle or 0.0
        resultant = ("F_{net}", abs(values["F_net"]), angle)
    return charges_in_plane(
        [Charge(b.label, b.charge, b.x, b.y) for b in bodies],
        on=bodies.index(on),
        forces=forces,
        resultant=resultant,
        angle=axis_angle(*net) if resultant and net else None,
        axes=resultant is not None,
        distances=distances,
        title=f"Forces on {on.words}" if forces else "Charges in a plane",
    )


def plane_parts(
    bodies: Sequence[Body],
    on: Body,
    net_steps: tuple[Step, ...],
    net: tuple[float, float],
    data: Data,
) -> tuple[Part, Part, Part]:
    """Draw the forces, calculate the net force, check it by a drawing to scale."""
    sources = [body for body in bodies if body is not on]
    style = data.settings.style
    near = max(abs(s.charge) / hypot(s.x - on.x, s.y - on.y) ** 2 for s in sources)
    largest = data.settings.constant("k") * near * abs(on.charge)
    aim = (
        "where the first arrow starts: the net force is zero."
        if net == (0.0, 0.0)
        else ("from the first tail to the last head: the dashed resultant, with its angle.")
    )
    return (
        draw_part(on, sources, style, lambda v: plane_figure(bodies, on, v)),
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
                Point(
                    f"Arrows head to tail, lengths to one stated scale ({scale_words(largest, style)}, for example)."
                ),
                Point(("The last head ends " if net == (0.0, 0.0) else "One arrow ") + aim),
            ),
            figure=lambda v: tail_to_head(
                pulls(sources, on, v), angle=axis_angle(*net), title=f"Sum of the forces on {on.words}"
            ),
        ),
    )


# --- anywhere in a plane ------------------------------------------------------------------------------------


def plan_plane(data: Data) -> Plan:
    bodies = row_bodies(data)
    on, sources = chosen(data, bodies)
    style = data.settings.style
    net = rough_net(sources, on)
    return Plan(
        story=story_plane(data, on),
        parts=(
            state(SUPERPOSITION),
            *(
                Part(
                    f"force-{s.tag}",
                    "calculate",
                    pull_ask(s, on),
                    (place_gap(s, on), plane_pull(s, on, style, wrong_places(s, on, sources))),
                )
                for s in sources
            ),
            *plane_parts(bodies, on, component_steps(sources, on, net, style, tilt_step), net, data),
        ),
        values=row_values(data),
        scene=lambda _: plane_figure(bodies, on, None),
        checks=plane_checks(sources, on, net),
        notes=(f"F₁₂ is the force of charge 1 on charge 2, and so on. Only forces on {on.words} count.",),
    )


def story_plane(data: Data, on: Body) -> str:
    rows = data.rows_said["charges"]
    opening = data.pick(
        "Small charged discs are taped to a sheet of squared paper with x- and y-axes.",
        "Small charged spheres stand on a plastic grid with x- and y-axes.",
    )
    facts = "; ".join(
        f"charge {i + 1}, {row['Q']}, at ({row['x'].lstrip('+')}; {row['y'].lstrip('+')})" for i, row in enumerate(rows)
    )
    return f"{opening} They are: {facts}. The net force on {on.words} is wanted."


def place_gap(source: Body, on: Body) -> Step:
    """The distance from the coordinates, by Pythagoras where the joining line is sloped."""
    name = gap_of(source, on)
    across, along = (f"{axis}{on.tag} - {axis}{source.tag}" for axis in "xy")
    wrong: tuple[Mistake, ...] = ()
    if sloped(source, on):
        make, why = (
            f"{name} = sqrt(({across})^2 + ({along})^2)",
            "Pythagoras with the steps across and up.",
        )
        wrong = (
            Mistake(
                "places-added",
                name,
                f"abs({across}) + abs({along})",
                "The shortest way is along the joining line: use Pythagoras.",
            ),
        )
    else:
        flat = abs(on.x - source.x) > abs(on.y - source.y)
        make = f"{name} = abs({across if flat else along})"
        why = f"Both lie on one line along {'x' if flat else 'y'}: the difference of the positions."
    return Step(
        law=make,
        make=make,
        unit="m",
        marks=NO_MARKS,
        what=f"Distance from {source.words} to {on.words}",
        why=why,
        plain="How far apart the two are, in a straight line.",
        mistakes=wrong,
    )


def wrong_places(source: Body, on: Body, sources: Sequence[Body]) -> list[tuple[str, str]]:
    """Distances of other pairs, where they differ from the right one."""
    return [
        (f"sqrt((x{a.tag} - x{b.tag})^2 + (y{a.tag} - y{b.tag})^2)", words)
        for a, b, words in other_pairs(source, on, sources)
    ]


def component_steps(
    sources: Sequence[Body],
    on: Body,
    net: tuple[float, float],
    style: Style,
    tilts: Callable[[Body, Body], tuple[Step, ...]] | None = None,
) -> tuple[Step, ...]:
    """Components of the sloped forces, the two sums, the resultant and its angle.

    tilts: the steps to the angle of a sloped joining line with the x-axis; without it the angles are known.
    """
    steps: list[Step] = []
    terms: tuple[list[tuple[int, str]], list[tuple[int, str]]] = ([], [])
    for source in sources:
        ways = unit(heading_of(source, on))
        name = pull_of(source, on)
        if sloped(source, on):
            steps += tilts(source, on) if tilts else ()
            steps += resolve(source, on, style if tilts else None)
            for axis, way, kept in zip("xy", ways, terms, strict=True):
                kept.append((1 if way > 0 else -1, f"{name}{axis}"))
        else:
            along = 0 if ways[0] else 1
            terms[along].append((1 if ways[along] > 0 else -1, name))
    marks = A if any(sloped(source, on) for source in sources) else NO_MARKS
    for axis, kept, positive in zip("xy", terms, ("to the right", "upwards"), strict=True):
        steps.append(sum_step(f"SigmaF_{axis}", axis, kept, positive, marks))
    added = " + ".join(pull_of(s, on) for s in sources) if len(sources) > 1 else ""
    law = "F_net = sqrt(SigmaF_x^2 + SigmaF_y^2)"
    steps.append(size_step(law, "SigmaF_x", "SigmaF_y", net, on, style, added))
    if net[0] and net[1]:
        steps.append(angle_step("SigmaF_x", "SigmaF_y", net))
    return tuple(steps)


def rough_way(heading: float) -> str:
    """A heading in a sentence without its angle: "to the left and down"."""
    return dict(QUADRANTS)[compass(*unit(heading), Style()).key].split(":")[0]


def tilt_step(source: Body, on: Body) -> tuple[Step, ...]:
    """The acute angle of the joining line with the x-axis, from the coordinates."""
    angle = tilt_of(source, on)
    across, along = (f"{axis}{on.tag} - {axis}{source.tag}" for axis in "xy")
    turned_round = Mistake(
        "angle-inverted",
        angle,
        f"atan(abs({across})/abs({along}))",
        "Name your reference axis.",
        "the angle was taken from the y-axis",
    )
    law = Relation(
        f"tan({angle}) = abs({along})/abs({across})",
        units={angle: "°"},
        marks=NO_MARKS,
        what=f"Angle between the line through {source.words} and {on.words} and the x-axis",
        why="Step up over step across, sizes only.",
        plain="How steep the joining line is.",
        mistakes=() if halfway(source, on) else (turned_round,),
    )
    return (law.step(angle),)


def tilt_of(source: Body, on: Body) -> str:
    """The name of the angle between a joining line and the x-axis."""
    return gap_of(source, on).replace("r_", "theta_")


def resolve(source: Body, on: Body, style: Style | None) -> tuple[Step, ...]:
    """The sizes of both components of a force along a sloped joining line. style: None tells no angle."""
    name, angle = pull_of(source, on), tilt_of(source, on)
    heading = heading_of(source, on)
    way = way_words(heading, style) if style else rough_way(heading)
    share = f"{name} points {way}. Resolve it: sizes only, the directions come back in the sums."
    return tuple(
        Step(
            law=f"{name}{axis} = {name}*{f}({angle})",
            make=f"{name}{axis} = {name}*{f}({angle})",
            unit="N",
            marks=NO_MARKS,
            what=f"Component along {axis} of the force of {source.words}",
            why=share.replace(name, "The force", 1),
            plain="The part of the push that works along this axis.",
            mistakes=(
                (
                    Mistake(
                        "sin-for-cos",
                        f"{name}{axis}",
                        f"{name}*{other}({angle})",
                        "The side next to the angle is F cos θ, the side opposite it F sin θ.",
                    ),
                )
                if not halfway(source, on)
                else ()
            ),
        )
        for axis, f, other in (("x", "cos", "sin"), ("y", "sin", "cos"))
    )


def sum_step(name: str, axis: str, terms: Sequence[tuple[int, str]], way: str, marks: tuple[Mark, ...]) -> Step:
    """The signed sum of the components along one axis."""
    law = f"{name} = {signed(terms) if terms else '0'}"
    names = " + ".join(term for _, term in terms)
    wrong: tuple[Mistake, ...] = ()
    if len({sign for sign, _ in terms}) > 1:
        wrong = (
            Mistake(
                f"sizes-added-{axis}", name, names, "Forces have directions.", f"all the sizes along {axis} were added"
            ),
        )
    elif len(terms) == 2:
        minus = "-" if terms[0][0] < 0 else ""
        wrong = (
            Mistake(
                f"subtracted-{axis}",
                name,
                f"{minus}abs({terms[0][1]} - {terms[1][1]})",
                "Both point the same way; redraw.",
            ),
        )
    return Step(
        law=law,
        make=law,
        unit="N",
        marks=marks,
        mistakes=wrong,
        what=f"Add everything along {axis}, taking {way} as positive",
        why="A minus sign means the opposite direction." if terms else f"No force has a part along {axis}.",
        plain="Add up the pushes along this axis; opposite ones take away.",
    )


def plane_checks(sources: Sequence[Body], on: Body, net: tuple[float, float]) -> tuple[Check, ...]:
    """The components once more from charges with their signs, and the bounds on the size."""
    checks = []
    for axis, part in zip("xy", net, strict=True):
        if part:
            terms = " + ".join(f"{s.name}*({axis}{on.tag} - {axis}{s.tag})/{gap_of(s, on)}^3" for s in sources)
            checks.append(
                Check(
                    f"The sum along {axis} with the signs of the charges put in",
                    f"SigmaF_{axis} = k*{on.name}*({terms})",
                    "The signs of charges and steps settle each direction by themselves, without angles.",
                    tolerance=1e-6,
                )
            )
    names = [pull_of(s, on) for s in sources]
    return (
        *checks,
        Check(
            "Is the size possible?", words=bounds_words(len(sources)), holds=lambda v: within_bounds(v, names, "F_net")
        ),
    )


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
    fields=(table("x", "y"), on_charge()),
    plan=plan_plane,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name),
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
