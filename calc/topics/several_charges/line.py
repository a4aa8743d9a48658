"""Charges on a line: the net force on a chosen one.

Choose a positive direction; F_net = Σ(±F), each F from Coulomb's law with sizes only.
Marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from random import Random
from typing import cast

from calc.figures import Figure, free_body_diagram, tail_to_head
from calc.figures.charges import spheres_on_line
from calc.language.printing import Style, exact
from calc.language.symbols import symbol
from calc.model.answers import Mark
from calc.model.directions import LEFT_RIGHT, NET_ON_LINE
from calc.model.questions import FSA, NO_MARKS, A, Choice, Data, Draw, Mistake, Part, Plan, Question, Step, Values
from calc.topics.several_charges import shared
from calc.topics.several_charges.shared import NOISE, Body, pull_of, side, sideways, signed, slip, step
from calc.topics.shared.electrostatics import COULOMB, state
from calc.topics.shared.quantities import among


def plan_line(data: Data) -> Plan:
    bodies = shared.row_bodies(data)
    on, sources = shared.chosen(data, bodies)
    style = data.settings.style
    positive = 1 if data.choices["positive"] == "right" else -1
    return Plan(
        story=story_line(data, on),
        parts=(
            state(shared.SUPERPOSITION),
            *(pull_part(s, on, wrong_places(s, on, sources), before=(gap_step(s, on),)) for s in sources),
            *net_parts(data, sources, on, positive),
        ),
        values=shared.row_values(data),
        scene=lambda _: scene_line(bodies, style),
        checks=(
            shared.check(
                "The same with the signs of the charges put in, which settles each direction by itself",
                signed_equation(sources, on, positive),
            ),
            shared.size_check(sources, on),
        ),
        notes=(
            f"The forces that {on.words} exerts on the others are not drawn and not added: only forces on it count.",
        ),
    )


def pull_part(
    source: Body, on: Body, wrong_gaps: Sequence[tuple[str, str]] = (), before: tuple[Step, ...] = ()
) -> Part:
    """The part that asks for one force on a line."""
    steps = (*before, side_pull(source, on, wrong_gaps))
    return Part(f"force-{source.tag}", "calculate", shared.pull_ask(source, on), steps)


def net_parts(data: Data, sources: Sequence[Body], on: Body, positive: int) -> tuple[Part, Part]:
    """The forces on the chosen charge drawn, then their sum."""
    return (
        shared.draw_part(on, sources, data.settings.style, lambda v: forces_at(sources, on, v)),
        Part(
            "net",
            "calculate",
            f"Calculate the net electrostatic force on {on.words}.",
            net_steps(data, sources, on, positive),
            figure=lambda v: sum_figure(sources, on, v),
        ),
    )


def story_line(data: Data, on: Body) -> str:
    rows = data.rows_said["charges"]
    opening = data.pick(
        "Small charged spheres are fixed on a straight wooden rail with a scale; x grows to the right.",
        "Small charged beads are clipped to a plastic metre rule, which serves as the x-axis to the right.",
        later=("Small charged balls stand in holes along a straight wooden bar, whose marks give x, to the right.",),
    )
    facts = "; ".join(f"charge {i + 1}, {row['Q']}, at x = {row['x'].lstrip('+')}" for i, row in enumerate(rows))
    return f"{opening} They are: {facts}. The net force on {on.words} is wanted."


POSITIONS = "You added {one} and {other}. A distance is the difference of two positions: subtract one from the other."


def gap_step(source: Body, on: Body) -> Step:
    """The distance from the two positions."""
    name, add = shared.gap_of(source, on), f"abs(x{on.tag} + x{source.tag})"
    return step(
        f"{name} = abs(x{on.tag} - x{source.tag})",
        "m",
        f"Distance from {source.words} to {on.words}",
        "Final place minus starting place, size only.",
        "Read both places on the scale and subtract.",
        NO_MARKS,
        mistakes=(
            (slip("places-added", name, add, say=POSITIONS, one=f"x{on.tag}", other=f"x{source.tag}"),)
            if on.x and source.x
            else ()
        ),
    )


def side_pull(
    source: Body, on: Body, wrong_gaps: Sequence[tuple[str, str]] = (), marks: tuple[Mark, ...] = FSA
) -> Step:
    """Coulomb's law for one pair on a line."""
    way = side(sideways(source, on))
    return shared.pull_step(source, on, way, way.words, marks, wrong_gaps)


def wrong_places(source: Body, on: Body, sources: Sequence[Body]) -> list[tuple[str, str]]:
    """Distances of other pairs, where they differ from the right one."""
    return [(f"x{a.tag} - x{b.tag}", words) for a, b, words in shared.other_pairs(source, on, sources)]


def net_steps(data: Data, sources: Sequence[Body], on: Body, positive: int) -> tuple[Step, Step]:
    """The signed sum along the line, then its size and direction."""
    terms = [(sideways(s, on) * positive, pull_of(s, on)) for s in sources]
    rough = [abs(s.charge) / (s.x - on.x) ** 2 for s in sources]
    total = sum(sign * size for (sign, _), size in zip(terms, rough, strict=True))
    zero = abs(total) <= NOISE * sum(rough)
    taken = side(positive).words
    aligned = "All the forces point the same way, so their sizes add."
    aligned = aligned if len({sign for sign, _ in terms}) == 1 else "Opposite directions get opposite signs."
    return (
        step(
            f"SigmaF = {signed(terms)}",
            "N",
            f"Superposition: add the forces, taking {taken} as positive",
            f"{aligned} A positive sum points {taken}.",
            shared.PLAIN_NET,
            (Mark("formula"), Mark("substitution", len(terms))),
            mistakes=sum_mistakes(sources, on, terms, -1 if total < 0 else 1),
        ),
        step(
            "F_net = abs(SigmaF)",
            "N",
            "Give the size and the direction",
            (
                "The forces cancel: there is a size, zero, but no direction."
                if zero
                else f"The size is never negative. A plus sign means {taken}, a minus sign the opposite direction."
            ),
            "The sign of the sum only says which way. Say the way in words instead.",
            A,
            directions={"F_net": lambda v: side(v["SigmaF"] * positive, NET_ON_LINE.options)},
            mistakes=() if zero else shared.turned("F_net", "abs(SigmaF)", on),
        ),
    )


def sum_mistakes(sources: Sequence[Body], on: Body, terms: Sequence[tuple[int, str]], sign: int) -> tuple[Mistake, ...]:
    """Known wrong sums, each with the sign of the right one so that only the size differs."""
    names = [name for _, name in terms]
    minus, opposite = "-" if sign < 0 else "", len({way for way, _ in terms}) > 1
    found = []
    if opposite:
        found.append(slip("sizes-added", "SigmaF", f"{minus}({' + '.join(names)})", "all the sizes were added"))
    elif len(terms) == 2:
        less = f"{minus}abs({names[0]} - {names[1]})"
        found.append(slip("subtracted", "SigmaF", less, "the sizes were subtracted"))
    if len(sources) == 2:
        found.append(shared.pooled("SigmaF", minus, sources, on))
    else:
        for i, (way, name) in enumerate(terms):
            flipped = [(-w if n == i else w, other) for n, (w, other) in enumerate(terms)]
            if len(terms) > 1 and len({w for w, _ in flipped}) > 1:
                why = f"{symbol(name).text} was taken {side(-way).words}"
                key, say = f"wrong-side-{sources[i].tag}", shared.SAY["wrong-side"]
                found.append(slip(key, "SigmaF", signed(flipped), why, say, F=name))
    return tuple(found)


def signed_equation(sources: Sequence[Body], on: Body, positive: int) -> str:
    """ΣF from charges with their signs and positions: k Q (x₂ − x₁)/|x₂ − x₁|³ points away from a like charge."""
    terms = []
    for s in sources:
        ends = (on.tag, s.tag) if positive > 0 else (s.tag, on.tag)
        gap = f"x{ends[0]} - x{ends[1]}"
        terms.append(f"{s.name}*({gap})/abs({gap})^3")
    return f"SigmaF = k*{on.name}*({' + '.join(terms)})"


def forces_at(sources: Sequence[Body], on: Body, values: Values) -> Figure:
    """The forces on the chosen charge, from one dot."""
    return free_body_diagram(shared.pulls(sources, on, values), body=on.label, title=f"Forces on {on.words}")


def sum_figure(sources: Sequence[Body], on: Body, values: Values) -> Figure:
    """The forces head to tail, with the dashed resultant."""
    return tail_to_head(shared.pulls(sources, on, values), title=f"Sum of the forces on {on.words}")


def scene_line(bodies: Sequence[Body], style: Style) -> Figure:
    """The spheres at their places with the distances between neighbours."""
    order = sorted(range(len(bodies)), key=lambda i: bodies[i].x)
    gaps = []
    for i, j in pairwise(order):
        size = float(f"{bodies[j].x - bodies[i].x:.9g}")
        gaps.append((i, j, f"{exact(size, style).text} m"))
    return spheres_on_line([b.drawn for b in bodies], distances=gaps, title="Charges on a line")


def practise_line(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """New rows: two other charges, three from level 3 on; the chosen one first inside, later anywhere."""
    draw = cast(Random, random)
    count = 4 if level == 3 else 3
    places, x = [], 0
    for _ in range(count):
        places.append(x)
        x += draw.choice(among(random, (10, 15, 20, 25, 30, 40), (10, 15, 20, 25, 30)))
    sizes = draw.sample((2, 3, 4, 5, 6, 8, 9), count)
    rows = [
        {"Q": f"{draw.choice('+-')}{size} nC", "x": f"{place} cm"} for size, place in zip(sizes, places, strict=True)
    ]
    on = "2" if level == 1 else draw.choice([str(n + 1) for n in range(count)])
    return {**typed, "charges": rows, "on": on}


POSITIVE = Choice("positive", "Positive direction", LEFT_RIGHT.options, quiet=("right", "left"))

LINE = Question(
    key="line",
    title="Charges on a line: the net force on one of them",
    fields=(shared.table("x"), shared.on_charge(), POSITIVE),
    plan=plan_line,
    constants=("k",),
    laws=(shared.SUPERPOSITION.name, COULOMB.name),
    example={
        "charges": [
            {"Q": "+6 nC", "x": "0 cm"},
            {"Q": "-4 nC", "x": "20 cm"},
            {"Q": "+5 nC", "x": "50 cm"},
        ],
        "on": "2",
        "positive": "right",
    },
    draws={"positive": Draw(("right", "left"))},
    adjust=practise_line,
)
