"""One resistance that stands under the emf and its own reading: the rest of the circuit put together as one cell.

Seen from the part, everything else acts as a cell of some emf and internal resistance: a resistance in series adds to
the latter, a branch in parallel divides the emf and lies in parallel with it. With the power of the part given, its
resistance follows from a quadratic equation, whose two roots have the product of the square of that resistance.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from calc.language.expressions import ExpressionError
from calc.model.questions import SA, A, Check, Data, Part, Plan, Refusal, Step
from calc.model.relations import Relation
from calc.topics.circuits.laws import ELECTRIC_POWER
from calc.topics.circuits.network_drawn import the
from calc.topics.circuits.network_laws import parallel, series
from calc.topics.circuits.network_live import Live, Node
from calc.topics.circuits.network_nodes import solved
from calc.working.chain import follows
from calc.working.working import measure, run

NONE = (
    "No resistance of {part} takes {asked}: at this place of the circuit a part takes {most} at the most, and that with"
    " {at}. Type a smaller power."
)
NO_FIT = (
    "No resistance of {part} gives this reading: the rest of the circuit leaves it too little. Correct the reading."
)


def needed(values: dict[str, float], steps: Sequence[Step], unknown: list[str]) -> bool:
    """Whether one resistance is missing that the laws one by one do not give."""
    return len(unknown) == 1 and unknown[0].startswith("R") and not follows(set(values), steps, unknown[0])


def path(root: Node, name: str) -> list[Node]:
    """From the whole network down to the part whose resistance has this letter."""
    if name == root.R and root.how == "one":
        return [root]
    for part in root.parts:
        below = path(part, name)
        if below:
            return [root, *below]
    return []


def _sibling(node: Node, inner: Node, n: int) -> tuple[list[Step], str]:
    """The steps to the resistance of what stands beside ``inner`` in a group, and its letter."""
    others = tuple(part for part in node.parts if part is not inner)
    steps = list[Step]()
    for one in others:
        for group in reversed([g for g in one.nodes() if g.how != "one"]):
            law = parallel(group) if group.how == "parallel" else series(group)
            steps.append(law.step(group.R))
    if len(others) == 1:
        return steps, others[0].R
    together = Node(node.how, parts=others, R=f"R_b{n}")
    steps.append((parallel if node.how == "parallel" else series)(together).step(together.R))
    return steps, together.R


def replaced(root: Node, name: str) -> tuple[list[Step], str, str]:
    """The steps to the emf and the internal resistance that the part sees, and their letters."""
    steps, emf, inner = list[Step](), "epsilon", "r"
    way = path(root, name)
    for n, (node, below) in enumerate(pairwise(way), 1):
        more, beside = _sibling(node, below, n)
        steps += more
        if node.how == "series":
            law = Relation(
                f"r_{n} = {inner} + {beside}",
                what="What stands in series with the part counts with the cell",
                why="Seen from the part, the current passes it and the cell one after the other.",
                plain="It resists on the same way.",
                units={f"r_{n}": "Ω"},
                marks=A,
            )
            steps.append(law.step(f"r_{n}"))
        else:
            share = Relation(
                f"epsilon_{n} = {emf}*{beside}/({inner} + {beside})",
                what="The potential difference that the branch beside the part would have without it",
                why="Without the part only this branch is left: the emf is shared in the ratio of the resistances.",
                plain="The branch leaves the part this much push at the most.",
                units={f"epsilon_{n}": "V"},
                marks=SA,
            )
            both = Relation(
                f"1/r_{n} = 1/{inner} + 1/{beside}",
                what="Cell and branch, seen from the part, are in parallel",
                why="Current reaches the part through either of them.",
                plain="Two ways lead to it.",
                units={f"r_{n}": "Ω"},
                marks=SA,
            )
            steps += [share.step(f"epsilon_{n}"), both.step(f"r_{n}")]
            emf = f"epsilon_{n}"
        inner = f"r_{n}"
    return steps, emf, inner


def plan(data: Data, found: Live, root: Node, values: dict[str, float], unknown: list[str]) -> Plan | None:
    """The resistance from a reading on the part itself; both roots where it is a power. None where there is none."""
    node = next(one for one in found.ones if unknown[0] == one.R)
    which = next((w for w in ("I", "V", "P") if getattr(node, w) in values and getattr(node, w) != "I"), "")
    which = which or ("P" if node.P in values else "")
    if not which or not {"epsilon", "r"} <= values.keys() or node.element is None:
        return None
    lead, emf, inner = replaced(root, node.R)
    R, reading = node.R, getattr(node, which)
    ask = f"Calculate the resistance of {the(node.element)}."
    constants = data.settings.constants()
    start = run(Plan("", (Part("a", "calculate", "", tuple(lead)),), dict(values)), constants)
    parts: tuple[Part, ...]
    if which == "P":
        low, high = _roots(data, node, start, emf, inner)
        steps = (*lead, high)
        parts = (Part("find", "calculate", ask, steps, answer=R),)
        if low:
            other = f"Calculate the other resistance with which {the(node.element)} takes the same power."
            parts = (*parts, Part("other", "calculate", other, (low,), answer=low.makes))
    else:
        law = f"{emf} = {reading}*({R} + {inner})" if which == "I" else f"{reading} = {emf}*{R}/({R} + {inner})"
        one = Relation(
            law,
            what="The part and the rest of the circuit",
            why="The rest acts as one cell: its emf drives the current through its own resistance and the part.",
            plain="All the rest is one cell now.",
            units={R: "Ω"},
        ).step(R)
        parts = (Part("find", "calculate", ask, (*lead, one), answer=R),)
    made = Plan("", parts, {name: value for name, value in values.items() if name != R})
    try:
        after = run(made, constants)
    except ExpressionError:
        raise Refusal("network", NO_FIT.format(part=the(node.element))) from None
    if after[R] <= 0:
        raise Refusal("network", NO_FIT.format(part=the(node.element)))
    return Plan("", parts, made.values, checks=(proof(data, root, node, after, which, reading),))


def _roots(data: Data, node: Node, start: dict[str, float], emf: str, inner: str) -> tuple[Step | None, Step]:
    """The steps to the smaller and the larger resistance with the power given; the smaller None if both are one."""
    assert node.element is not None
    e, r, p = start[emf], start[inner], start[node.P]
    style = data.settings.style
    most = e * e / (4 * r) if r else math.inf
    if p > most * (1 + 1e-12):
        raise Refusal(
            "network",
            NONE.format(
                part=the(node.element),
                asked=measure(p, "W", style, data=True).text,
                most=measure(most, "W", style).text,
                at=measure(r, "Ω", style).text,
            ),
        )
    R, P = node.R, node.P
    law = f"{P} = ({emf}/({R} + {inner}))^2*{R}"
    middle = f"{emf}^2 - 2*{P}*{inner}"

    def step(name: str, sign: str) -> Step:
        root = f"sqrt({emf}^2*({emf}^2 - 4*{P}*{inner}))"
        return Step(
            law=law.replace(R, name) if name != R else law,
            make=f"{name} = ({middle} {sign} {root})/(2*{P})",
            lines=(f"{P}*{name}^2 + (2*{P}*{inner} - {emf}^2)*{name} + {P}*{inner}^2 = 0",),
            what="The power of the part, with the current that the rest of the circuit leaves it",
            why="P = I²R with I = ε ÷ (R + r): multiplied out, this is a quadratic equation in R with two roots.",
            plain="A small and a large resistance can take the same power: much current and few volts, or the reverse.",
            unit="Ω",
            quotes=(ELECTRIC_POWER.name,),
        )

    other = f"{R}_after"
    low = step(other, "-") if r and p < most * (1 - 1e-9) else None
    return low, step(R, "+")


def proof(data: Data, root: Node, node: Node, after: dict[str, float], which: str, reading: str) -> Check:
    """The reading again, from Kirchhoff's equations with the resistance found."""
    both = [after[node.R], *([after[f"{node.R}_after"]] if f"{node.R}_after" in after else [])]
    told = []
    holds = True
    for one in both:
        _, volts = solved(root, {**after, node.R: one}, after["epsilon"], after["r"])
        v = volts[node.R]
        back = {"V": v, "I": v / one, "P": v * v / one}[which]
        holds = holds and abs(back - after[reading]) <= 1e-9 * after[reading]
        unit = {"V": "V", "I": "A", "P": "W"}[which]
        said = [measure(value, sign, data.settings.style).text for value, sign in ((one, "Ω"), (back, unit))]
        told.append(" gives ".join(said))
    return Check(
        "Put back into Kirchhoff's equations at the junctions",
        words=f"{'; '.join(told)}, as read.",
        holds=lambda v: holds,
    )
