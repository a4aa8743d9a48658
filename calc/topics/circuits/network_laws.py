"""The laws of a network as relations between its letters: groups combined, the cell, Ohm's law and power of each part.

R_p from 1/R_p = Σ1/R, R_s = ΣR, ε = I(R + r), V = IR, P = VI = I²R = V²/R: data-sheet equations.
"""

from __future__ import annotations

from functools import lru_cache

from calc.model.questions import SA, Mistake
from calc.model.relations import Relation
from calc.topics.circuits.laws import ELECTRIC_POWER, OHM, PARALLEL, SERIES, TERMINAL
from calc.topics.circuits.network_live import MAIN, Node
from calc.topics.circuits.network_live import TERMINAL as V_EXT

DIVIDES = (
    "You used the total current {I}. It divides at a junction: only a part of it passes here. Use the potential"
    " difference across the branches first."
)
NOT_EMF = "You used the emf. This part has only its own potential difference, {{{}}}: use that."
UPSIDE = "You divided the other way round. Current is potential difference by resistance: use {{{}/{}}}."


def parallel(node: Node) -> Relation:
    """Reciprocals add."""
    names = [part.R for part in node.parts]
    lost = f"The inverse was forgotten: you have 1 ÷ {{{node.R}}}. Turn it over: divide 1 by it last."
    return Relation(
        f"1/{node.R} = {' + '.join(f'1/{name}' for name in names)}",
        what="Combine what is in parallel: the reciprocals add up",
        why="Each branch is one more way for the current, so together they resist less than the smallest of them.",
        plain="More doors side by side let more people through.",
        units=dict.fromkeys((node.R, *names), "Ω"),
        quotes=(PARALLEL.name,),
        mistakes=(
            Mistake("not-inverted", node.R, " + ".join(f"1/{name}" for name in names), lost),
            Mistake(
                "parallel-added",
                node.R,
                " + ".join(names),
                "You added the resistances. Adding a branch lowers the resistance: add the reciprocals and invert.",
                "the answer is larger than the largest branch",
            ),
        ),
    )


def series(node: Node) -> Relation:
    """Resistances add."""
    names = [part.R for part in node.parts]
    upside = f"1/({' + '.join(f'1/{name}' for name in names)})"
    return Relation(
        f"{node.R} = {' + '.join(names)}",
        what="Add what is in series",
        why="The same current passes one after the other, so the resistances add up.",
        plain="Every obstacle on the same way slows the current more.",
        units=dict.fromkeys((node.R, *names), "Ω"),
        marks=SA,
        quotes=(SERIES.name,),
        mistakes=(
            Mistake(
                "series-inverted",
                node.R,
                upside,
                "You added reciprocals. These stand one after the other, in series: add the resistances.",
            ),
        ),
    )


def cell(root: Node) -> tuple[Relation, ...]:
    """The whole circuit, the terminals and Ohm's law outside the cell."""
    R = root.R
    whole = Relation(
        f"epsilon = I*({R} + r)",
        what="The total current: the emf drives it through the circuit and through the cell",
        why="The current passes the external circuit and the internal resistance one after the other: these add up.",
        plain="The cell's push is used up by everything on the way, the cell itself included.",
        units={"epsilon": "V", MAIN: "A", R: "Ω", "r": "Ω"},
        mistakes=(
            Mistake(
                "internal-ignored",
                MAIN,
                f"epsilon/{R}",
                f"You left out the internal resistance. The cell resists too: divide by {{{R} + r}}.",
            ),
            Mistake(
                "not-subtracted",
                "r",
                f"epsilon/{MAIN}",
                f"You stopped at the total resistance. Subtract the external resistance {{{R}}} from it.",
            ),
            Mistake(
                "internal-ignored",
                "epsilon",
                f"{MAIN}*{R}",
                f"You left out the internal resistance. The cell resists too: multiply by {{{R} + r}}.",
            ),
        ),
    )
    return whole, TERMINAL, ohm(root)


def ohm(node: Node) -> Relation:
    """V = IR for a part or a group."""
    V, I, R = node.V, node.I, node.R  # noqa: E741
    mistakes = [
        Mistake("upside-down", I, f"{R}/{V}", UPSIDE.format(V, R)),
        Mistake("divided", V, f"{I}/{R}", f"You divided. Multiply the current by the resistance: {{{I}*{R}}}."),
    ]
    if I != MAIN:
        mistakes.append(Mistake("total-current", I, MAIN, DIVIDES))
        mistakes.append(Mistake("total-current", V, f"{MAIN}*{R}", DIVIDES))
    if V != V_EXT:
        mistakes.append(Mistake("emf-for-own", I, f"epsilon/{R}", NOT_EMF.format(V)))
    whole = node.how != "one"
    what = "Ohm's law for what is in parallel together" if node.how == "parallel" else "Ohm's law for this part"
    return Relation(
        f"{V} = {I}*{R}",
        what="Ohm's law for the branch" if node.how == "series" else what,
        why=(
            "The current that enters the group and its combined resistance give the potential difference across it."
            if whole
            else "Current, potential difference and resistance must belong to the same part."
        ),
        plain="A larger resistance needs more volts for the same current.",
        units={V: "V", I: "A", R: "Ω"},
        quotes=(OHM.name,),
        mistakes=tuple(mistakes),
    )


def sums(node: Node, root: Node) -> tuple[Relation, ...]:
    """Currents add up where branches meet, potential differences along a series."""
    if node.how == "parallel":
        names, total, unit = [part.I for part in node.parts], node.I, "A"
        what, why = "The currents in the branches add up to the current that enters", "No charge is lost at a junction."
    else:
        names, total, unit = [part.V for part in node.parts], node.V, "V"
        what = "The potential differences along a series add up"
        why = "Each coulomb gives off energy in one part after the other."
    return (
        Relation(
            f"{total} = {' + '.join(names)}",
            what=what,
            why=why,
            plain="What goes in comes out again." if unit == "A" else "The parts make up the whole.",
            units=dict.fromkeys((total, *names), unit),
            marks=SA,
            quotes=((PARALLEL if unit == "A" else SERIES).name,),
        ),
    )


def loops(node: Node, root: Node) -> tuple[Relation, ...]:
    """What is left for one part of a series once the others have had theirs: V_p = ε − I(r + R1)."""
    if node.how != "series":
        return ()
    found = []
    for part in node.parts:
        others = " + ".join(["r"] * (node is root) + [one.R for one in node.parts if one is not part])
        total = "epsilon" if node is root else node.V
        names = {total: "V", node.I: "A", part.V: "V"}
        names |= dict.fromkeys(("r" if one == "r" else one for one in others.split(" + ")), "Ω")
        found.append(
            Relation(
                f"{total} = {node.I}*({others}) + {part.V}"
                if " + " in others
                else f"{total} = {node.I}*{others} + {part.V}",
                what="What the others on the same way leave: the potential differences add up",
                why="The same current passes them all, so each takes its resistance times this current.",
                plain="The parts make up the whole.",
                units=names,
                quotes=(SERIES.name,),
            )
        )
    return tuple(found)


def power(node: Node) -> tuple[Relation, ...]:
    """P = VI = I²R = V²/R of one part."""
    V, I, R, P = node.V, node.I, node.R, node.P  # noqa: E741
    units = {P: "W", V: "V", I: "A", R: "Ω"}
    own = "its own potential difference and its own current"
    wrong = [
        Mistake(
            "emf-squared",
            P,
            f"epsilon^2/{R}",
            f"You used the emf. Only {{{V}}} drops across this part: use {{{V}^2/{R}}}.",
        ),
        Mistake(
            "not-squared",
            P,
            f"{I}*{R}",
            f"You have the potential difference, {{{I}*{R}}}. For power square the current: use {{{I}^2*{R}}}.",
        ),
    ]
    if I != MAIN:
        wrong.append(Mistake("total-current", P, f"{MAIN}^2*{R}", DIVIDES))

    def law(form: str, *mistakes: Mistake) -> Relation:
        return Relation(
            form,
            what="Power of this part",
            why=f"Power is found from {own}.",
            plain="How many joules it turns into heat or light each second.",
            units={name: unit for name, unit in units.items() if name in form},
            quotes=(ELECTRIC_POWER.name,),
            mistakes=mistakes,
        )

    return law(f"{P} = {V}*{I}", *wrong), law(f"{P} = {I}^2*{R}", *wrong), law(f"{P} = {V}^2/{R}", *wrong)


@lru_cache(maxsize=256)
def relations(root: Node, searching: bool = False) -> tuple[Relation, ...]:
    """Every law of a network. searching: with what each part of a series leaves to the others."""
    inner = [node for node in root.nodes() if node.how != "one"]
    combined = [parallel(node) if node.how == "parallel" else series(node) for node in inner]
    found = [*combined, *cell(root)]
    found += [ohm(node) for node in root.nodes() if node is not root]
    found += [law for node in inner for law in sums(node, root)]
    if searching:
        found += [law for node in inner for law in loops(node, root)]
    found += [law for node in root.ones() for law in power(node)]
    return tuple(found)
