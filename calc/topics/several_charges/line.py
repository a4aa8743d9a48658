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
from calc.figures.charges import Charge, spheres_on_line
from calc.language.printing import Style, exact
from calc.language.symbols import symbol
from calc.model.answers import Mark
from calc.model.questions import (
    FSA,
    NO_MARKS,
    A,
    Check,
    Choice,
    Data,
    Draw,
    Mistake,
    Part,
    Plan,
    Question,
    Step,
    Values,
)
from calc.topics.several_charges.shared import (
    NET_SIDES,
    NOISE,
    PLAIN_NET,
    SUPERPOSITION,
    Body,
    bounds_words,
    chosen,
    draw_part,
    gap_of,
    on_charge,
    other_pairs,
    pull_ask,
    pull_of,
    pull_step,
    pulls,
    row_bodies,
    row_values,
    side,
    sideways,
    table,
    turned,
    within_bounds,
)
from calc.topics.shared.electrostatics import (
    COULOMB,
    state,
)

# --- the net force ------------------------------------------------------------------------------------------


def plan_line(data: Data) -> Plan:
    bodies = row_bodies(data)
    on, sources = chosen(data, bodies)
    style = data.settings.style
    positive = 1 if data.choices["positive"] == "right" else -1
    return Plan(
        story=story_line(data, on),
        parts=(
            state(SUPERPOSITION),
            *(
                Part(
                    f"force-{s.tag}",
                    "calculate",
                    pull_ask(s, on),
                    (gap_step(s, on), side_pull(s, on, wrong_places(s, on, sources))),
                )
                for s in sources
            ),
            draw_part(on, sources, style, lambda v: forces_at(sources, on, v)),
            Part(
                "net",
                "calculate",
                f"Calculate the net electrostatic force on {on.words}.",
                net_steps(data, sources, on, positive),
                figure=lambda v: sum_figure(sources, on, v),
            ),
        ),
        values=row_values(data),
        scene=lambda _: scene_line(bodies, style),
        checks=(
            Check(
                "The same with the signs of the charges put in, which settles each direction by itself",
                signed_equation(sources, on, positive),
                tolerance=1e-6,
            ),
            Check(
                "Is the size possible?",
                words=bounds_words(len(sources)),
                holds=lambda v: within_bounds(v, [pull_of(s, on) for s in sources], "F_net"),
            ),
        ),
        notes=(
            f"The forces that {on.words} exerts on the others are not drawn and not added: only forces on it count.",
        ),
    )


def story_line(data: Data, on: Body) -> str:
    rows = data.rows_said["charges"]
    opening = data.pick(
        "Small charged spheres are fixed on a straight wooden rail with a scale; x grows to the right.",
        "Small charged beads are clipped to a plastic ruler, which serves as the x-axis to the right.",
    )
    facts = "; ".join(f"charge {i + 1}, {row['Q']}, at x = {row['x'].lstrip('+')}" for i, row in enumerate(rows))
    return f"{opening} They are: {facts}. The net force on {on.words} is wanted."


def gap_step(source: Body, on: Body) -> Step:
    """The distance from the two positions."""
    name = gap_of(source, on)
    make = f"{name} = abs(x{on.tag} - x{source.tag})"
    return Step(
        law=make,
        make=make,
        unit="m",
        marks=NO_MARKS,
        what=f"Distance from {source.words} to {on.words}",
        why="Final place minus starting place, size only.",
        plain="Read both places on the scale and subtract.",
        mistakes=(
            (
                Mistake(
                    "places-added",
                    name,
                    f"abs(x{on.tag} + x{source.tag})",
                    "A distance is a difference of positions: subtract.",
                ),
            )
            if on.x and source.x
            else ()
        ),
    )


def side_pull(
    source: Body,
    on: Body,
    wrong_gaps: Sequence[tuple[str, str]] = (),
    marks: tuple[Mark, ...] = FSA,
) -> Step:
    """Coulomb's law for one pair on a line."""
    way = sideways(source, on)
    return pull_step(source, on, side(way), side(way).words, marks, wrong_gaps)


def wrong_places(source: Body, on: Body, sources: Sequence[Body]) -> list[tuple[str, str]]:
    """Distances of other pairs, where they differ from the right one."""
    return [(f"x{a.tag} - x{b.tag}", words) for a, b, words in other_pairs(source, on, sources)]


def signed(terms: Sequence[tuple[int, str]]) -> str:
    """``-F_12 + F_32`` from signs and names."""
    text = "".join(f" {'+' if sign > 0 else '-'} {name}" for sign, name in terms)
    return text.removeprefix(" + ") if text.startswith(" +") else "-" + text.removeprefix(" - ")


def net_steps(data: Data, sources: Sequence[Body], on: Body, positive: int) -> tuple[Step, Step]:
    """The signed sum along the line, then its size and direction."""
    terms = [(sideways(s, on) * positive, pull_of(s, on)) for s in sources]
    rough = [abs(s.charge) / (s.x - on.x) ** 2 for s in sources]
    total = sum(sign * size for (sign, _), size in zip(terms, rough, strict=True))
    ways = {sign for sign, _ in terms}
    law = f"SigmaF = {signed(terms)}"
    taken = side(positive).words
    aligned = (
        "All the forces point the same way, so their sizes add."
        if len(ways) == 1
        else "Opposite directions get opposite signs."
    )
    add = Step(
        law=law,
        make=law,
        unit="N",
        marks=(Mark("formula"), Mark("substitution", len(terms))),
        what=f"Superposition: add the forces, taking {taken} as positive",
        why=f"{aligned} A positive sum points {taken}.",
        plain=PLAIN_NET,
        mistakes=sum_mistakes(sources, on, terms, -1 if total < 0 else 1),
    )
    zero = abs(total) <= NOISE * sum(rough)
    return add, Step(
        law="F_net = abs(SigmaF)",
        make="F_net = abs(SigmaF)",
        unit="N",
        marks=A,
        what="Give the size and the direction",
        why=(
            "The forces cancel: there is a size, zero, but no direction."
            if zero
            else f"The size is never negative. A plus sign means {taken}, a minus sign the opposite direction."
        ),
        plain="The sign of the sum only says which way. Say the way in words instead.",
        direction=lambda v: side(v["SigmaF"] * positive, NET_SIDES),
        mistakes=() if zero else turned("F_net", "abs(SigmaF)", on),
    )


def sum_mistakes(sources: Sequence[Body], on: Body, terms: Sequence[tuple[int, str]], sign: int) -> tuple[Mistake, ...]:
    """Known wrong sums, each with the sign of the right one so that only the size differs."""
    names = [name for _, name in terms]
    minus = "-" if sign < 0 else ""
    found = []
    if len({way for way, _ in terms}) > 1:
        found.append(
            Mistake(
                "sizes-added",
                "SigmaF",
                f"{minus}({' + '.join(names)})",
                "Forces have directions.",
                "all the sizes were added",
            )
        )
    elif len(terms) == 2:
        found.append(
            Mistake(
                "subtracted",
                "SigmaF",
                f"{minus}abs({names[0]} - {names[1]})",
                "Both point the same way; redraw.",
                "the sizes were subtracted",
            )
        )
    if len(sources) == 2:
        a, b = sources
        pooled = f"k*abs({on.name})*(abs({a.name}) + abs({b.name}))/({gap_of(a, on)} + {gap_of(b, on)})^2"
        found.append(
            Mistake(
                "distances-first",
                "SigmaF",
                f"{minus}{pooled}",
                "One pair at a time.",
                "the distances were added before the law was used",
            )
        )
    else:
        for i, (way, name) in enumerate(terms):
            flipped = [(-w if n == i else w, other) for n, (w, other) in enumerate(terms)]
            if len(terms) > 1 and len({w for w, _ in flipped}) > 1:
                found.append(
                    Mistake(
                        f"wrong-side-{sources[i].tag}",
                        "SigmaF",
                        signed(flipped),
                        "Attract: towards; repel: away.",
                        f"{symbol(name).text} was taken {side(-way).words}",
                    )
                )
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
    return free_body_diagram(pulls(sources, on, values), body=on.label, title=f"Forces on {on.words}")


def sum_figure(sources: Sequence[Body], on: Body, values: Values) -> Figure:
    """The forces head to tail, with the dashed resultant."""
    return tail_to_head(pulls(sources, on, values), title=f"Sum of the forces on {on.words}")


def scene_line(bodies: Sequence[Body], style: Style) -> Figure:
    """The spheres at their places with the distances between neighbours."""
    order = sorted(range(len(bodies)), key=lambda i: bodies[i].x)
    gaps = []
    for i, j in pairwise(order):
        size = float(f"{bodies[j].x - bodies[i].x:.9g}")
        gaps.append((i, j, f"{exact(size, style).text} m"))
    return spheres_on_line([Charge(b.label, b.charge, b.x) for b in bodies], distances=gaps, title="Charges on a line")


def practise_line(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """New rows: two other charges, three from level 3 on; the chosen one first inside, later anywhere."""
    draw = cast(Random, random)
    count = 4 if level == 3 else 3
    places, x = [], 0
    for _ in range(count):
        places.append(x)
        x += draw.choice((10, 15, 20, 25, 30, 40))
    sizes = draw.sample((2, 3, 4, 5, 6, 8, 9), count)
    rows = [
        {"Q": f"{draw.choice('+-')}{size} nC", "x": f"{place} cm"} for size, place in zip(sizes, places, strict=True)
    ]
    on = "2" if level == 1 else draw.choice([str(n + 1) for n in range(count)])
    return {**typed, "charges": rows, "on": on}


POSITIVE = Choice(
    "positive",
    "Positive direction",
    (("right", "to the right"), ("left", "to the left")),
    quiet=("right", "left"),
)

LINE = Question(
    key="line",
    title="Charges on a line: the net force on one of them",
    fields=(table("x"), on_charge(), POSITIVE),
    plan=plan_line,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name),
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
