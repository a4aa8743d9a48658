"""Up to four resistors in series or in parallel: the total or any one of them, and how V and I are shared.

R = R₁ + R₂ + … in series, 1/R = 1/R₁ + 1/R₂ + … in parallel (data-sheet equations). Refusals and mistakes: common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache

from calc.figures import Figure
from calc.figures.circuits import Part as Symbol
from calc.figures.circuits import circuit, parallel, series
from calc.model.questions import SA, Check, Choice, Data, Draw, Mistake, Part, Refusal, Values
from calc.model.relations import Relation
from calc.topics.circuits.laws import ACROSS, OHM, PARALLEL, SERIES, current, resistance, volts
from calc.working.declaring import boxes, state, told
from calc.working.solving import Situation, question

TOO_LARGE = "In parallel the total is less than the smallest branch: type a total below every resistance that is given."
TOO_SMALL = "In series the total is the sum, so it is larger than the others together: type a larger total."
NOT_THERE = "There are only {} resistors. Leave this empty, or choose more resistors."
NOT_ASKED = "There are only {} resistors. Pick another one to find, or choose more resistors."
COUNT = Choice("count", "How many resistors", (("2", "two"), ("3", "three"), ("4", "four")))
HOW = Choice("how", "They are", (("parallel", "in parallel"), ("series", "in series")))
NUMBERS = {"2": "two", "3": "three", "4": "four"}
ONES = ("R1", "R2", "R3", "R4")


@cache
def combined(how: str, count: int) -> Relation:
    """The law of so many resistors."""
    names = ONES[:count]
    total, inverses = " + ".join(names), " + ".join(f"1/{name}" for name in names)
    units = dict.fromkeys(("R", *names), "Ω")
    if how == "series":
        return Relation(
            f"R = {total}",
            what="In series the resistances add up",
            why=(
                "The same current passes every resistor, and the potential differences add up: IR = IR₁ + IR₂ and"
                " so on."
            ),
            plain="One obstacle after the other: together they resist more than each.",
            units=units,
            marks=SA,
            mistakes=(
                Mistake(
                    "as-parallel",
                    "R",
                    f"1/({inverses})",
                    (
                        "You combined them as if they were in parallel. Add the resistances themselves: in series"
                        " nothing is inverted."
                    ),
                ),
                *(
                    Mistake("added", name, f"R + {' + '.join(one for one in names if one != name)}", ADDED)
                    for name in names
                ),
            ),
        )
    return Relation(
        f"1/R = {inverses}",
        what="In parallel the reciprocals add up",
        why="Every branch has the same potential difference, and the currents add up: V/R = V/R₁ + V/R₂ and so on.",
        plain="One more way through: together they resist less than the smallest of them.",
        units=units,
        mistakes=(
            Mistake(
                "not-inverted",
                "R",
                inverses,
                "You stopped at 1/R, the sum of the reciprocals. Turn it upside down: invert last.",
            ),
            Mistake(
                "as-series",
                "R",
                total,
                "You added the resistances. Adding a branch lowers the resistance: add reciprocals, then invert.",
            ),
            *(mistake for name in names for mistake in branch_mistakes(name, names)),
        ),
    )


ADDED = "You added. The total holds all of them: subtract the others from {R}."


def branch_mistakes(name: str, names: Sequence[str]) -> tuple[Mistake, ...]:
    """What goes wrong with one branch of a parallel combination."""
    others = [one for one in names if one != name]
    rest = " - ".join(f"1/{one}" for one in others)
    return (
        Mistake(
            "not-inverted",
            name,
            f"1/R - {rest}",
            f"You stopped at {{1/{name}}}. Turn it upside down: invert last.",
        ),
        Mistake(
            "as-series",
            name,
            f"abs(R - {' - '.join(others)})",
            f"You subtracted the resistances. Subtract the reciprocals instead to get {{1/{name}}}, then invert.",
        ),
    )


BOXES = (
    *(
        resistance(name, f"Resistance of resistor {n}", f"Resistor {n} has a resistance of {{}}.", numbers, unfit="")
        for n, (name, numbers) in enumerate(
            zip(
                ONES,
                (
                    "10 Ω; 4 6 8 10; 3,6 5,4 7,5",
                    "15 Ω; 12 15 20; 11 14,5 18",
                    "20 Ω; 20 24 30; 16,5 27",
                    "30 Ω; 30 40 60; 33 45",
                ),
                strict=True,
            ),
            1,
        )
    ),
    resistance("R", "Total resistance", "Together they have a resistance of {}.", "?; 3 2 2,5; 1,9 2,2"),
    volts(
        "V",
        "Potential difference across the combination",
        "The potential difference across the combination is {}.",
        "6 V; 6 9 12; 4,5 7,5",
    ),
    current("I", "Total current", "The total current is {}.", "?; 1 1,5 2; 1,2 1,8"),
)


OF_ALL = replace(
    ACROSS.renamed(V_ext="V"),
    what="Ohm's law for all the resistors together",
    why="The total resistance stands for all of them: it takes the total current at the whole potential difference.",
)


def refuse(data: Data, how: str, names: Sequence[str]) -> None:
    """Refuse resistors that are not there and a total that cannot be."""
    said = NUMBERS[str(len(names))]
    for name in ONES[len(names) :]:
        if data.has(name):
            raise Refusal(name, NOT_THERE.format(said))
        if name in data.asked_names:
            raise Refusal("count", NOT_ASKED.format(said))
    known = [data.values[name] for name in names if data.has(name)]
    if not data.has("R") or not known or len(known) == len(names):
        return
    if how == "series" and data.values["R"] <= sum(known):
        raise Refusal("R", TOO_SMALL)
    if how == "parallel" and data.values["R"] >= 1 / sum(1 / one for one in known):
        raise Refusal("R", TOO_LARGE)


def scene(how: str, names: Sequence[str]) -> Figure:
    """The resistors on their supply."""
    symbols = [Symbol("resistor", f"R_{name[1:]}") for name in names]
    branch = series(*symbols) if how == "series" else parallel(*symbols)
    return circuit(
        series(Symbol("battery", "V"), Symbol("ammeter")),
        branch,
        title=f"Resistors in {how}",
        notes=("V stands across all the resistors.",),
    )


def shared(data: Data, how: str, names: Sequence[str], values: Values) -> tuple[Part, ...]:
    """The part on one resistor: its potential difference in series, its current in parallel."""
    if not {"V", "I"} & values.keys() or not {*names} <= values.keys():
        return ()
    first = names[0]
    if how == "series":
        if "I" not in values:
            return ()
        law = ACROSS.renamed(V_ext="V_1", R=first)
        return (
            Part("share", "calculate", "Calculate the potential difference across resistor 1.", (law.step("V_1"),)),
        )
    if "V" not in values:
        return ()
    law = replace(ACROSS.renamed(V_ext="V", I="I_1", R=first), what="Ohm's law for resistor 1", why=BRANCH)
    step = law.step("I_1")
    whole = () if "I" not in values else (Mistake("whole-current", "I_1", "I", WHOLE_CURRENT),)
    return (
        Part(
            "share",
            "calculate",
            "Calculate the current in resistor 1.",
            (replace(step, mistakes=(*step.mistakes, *whole)),),
        ),
    )


SAME_CURRENT = "The total current passes every resistor in series, and each takes its own share of the volts."
BRANCH = "Every branch has the whole potential difference across it, and its own resistance sets its own current."
WHOLE_CURRENT = "You gave the total current. The current divides between the branches: divide {V} by {R1}."


def proofs(how: str, names: Sequence[str], values: Values) -> tuple[Check, ...]:
    """The power of the whole is that of its resistors together."""
    if not {"V", "I", *names} <= values.keys():
        return ()
    each = " + ".join(f"I^2*{name}" if how == "series" else f"V^2/{name}" for name in names)
    return (Check("The powers of the resistors make up the power of the supply", f"V*I = {each}"),)


def situation(data: Data) -> Situation:
    """What holds for the number and the arrangement chosen."""
    how, names = data.choices["how"], ONES[: int(data.choices["count"])]
    refuse(data, how, names)
    number = NUMBERS[data.choices["count"]]
    return replace(
        told(BOXES),
        relations=(combined(how, len(names)), OF_ALL),
        openings=(
            f"A circuit has {number} resistors in {how}.",
            f"On a board {number} resistors are connected in {how}.",
            f"A toy robot has {number} heating wires, which are connected in {how}.",
        ),
        stated=(state(SERIES if how == "series" else PARALLEL),),
        later=lambda data, values: shared(data, how, names, values),
        scene=lambda v: scene(how, names),
        proofs=lambda v: proofs(how, names, v),
        unfit=dict.fromkeys(names, TOO_LARGE if how == "parallel" else TOO_SMALL),
    )


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """As many resistors as chosen; a total that fits where one of them is asked."""
    toss = chance.random  # type: ignore[attr-defined]
    asked = next((name for name in (*ONES, "V", "I") if not typed[name]), "R")
    count = max(int(str(typed["count"])), int(asked[1]) if asked in ONES else 2)
    names = ONES[:count]
    ohms = [
        float(str(typed[name]).split()[0].replace(",", ".")) if typed[name] else 10.0 + 8 * toss() for name in names
    ]
    total = sum(ohms) if typed["how"] == "series" else 1 / sum(1 / one for one in ohms)
    kept = {"V": ("I",), "I": ("V",)}.get(asked, () if toss() < 0.4 else ("V",) if asked != "R" else ("I",))
    out = {**typed, "count": str(count)} | dict.fromkeys((*ONES[count:], "V", "I", "R"), "")
    out |= {name: typed[name] for name in kept}
    if asked in ONES:
        out |= {asked: "", "R": f"{total:.3g} Ω".replace(".", ",")}
    return out


RESISTORS = question(
    "resistors",
    "Resistors in series or in parallel",
    situation,
    **boxes(
        COUNT,
        HOW,
        *BOXES,
        draws={"how": Draw(("parallel", "series")), "count": Draw(("2", "3", "4"))},
        example={"count": "4"},
    ),
    laws=(SERIES.name, PARALLEL.name, OHM.name),
    asks="I",
    adjust=practise,
    since=6,
)
