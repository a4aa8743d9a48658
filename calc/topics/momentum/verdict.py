"""Whether a collision of two bodies is elastic: ΣE_k before and after, each line, then the comparison.

Totals within 1 % of each other count as the same: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable

from calc.model.answers import Mark, Point
from calc.model.questions import Data, Part, Step, Values
from calc.model.relations import Relation
from calc.topics.momentum.besides import besides
from calc.working.working import measure

NEARLY = 0.01
PLAIN = "The energy of motion of both, put together. It has no direction."
NOT_SQUARED = "You did not square the velocities. Kinetic energy is half the mass times the square of the velocity."
SUBTRACTED = "You gave a kinetic energy a minus sign. Energy has no direction: a square is never negative, so add."


def kinetic(values: Values, first: str, second: str) -> float:
    """The total kinetic energy (J) of m1 and m2 at these velocities."""
    return values["m1"] * values[first] ** 2 / 2 + values["m2"] * values[second] ** 2 / 2


def total(name: str, first: str, second: str, when: str, marks: tuple[Mark, ...]) -> Step:
    """The step for the total kinetic energy at two velocities, or one that both have."""
    return Relation(
        f"{name} = 1/2*m1*{first}^2 + 1/2*m2*{second}^2" if first != second else f"{name} = 1/2*(m1 + m2)*{first}^2",
        what=f"Total kinetic energy {when}",
        why="Add the kinetic energies. Each velocity is squared, so its sign does not matter.",
        units={name: "J"},
        plain=PLAIN,
        marks=marks,
    ).step(name)


def verdict(data: Data, values: Values, before: tuple[str, str], after: tuple[str, str]) -> tuple[Part, ...]:
    """The parts that judge a collision: the totals (3 marks), then comparison and conclusion (1 mark)."""
    steps = (
        total("SigmaE_k", *before, "before the collision", (Mark("formula"), Mark("answer"))),
        total("SigmaE_k_after", *after, "after the collision", (Mark("answer"),)),
    )
    return (
        Part(
            "energies",
            "calculate",
            "Calculate the total kinetic energy before and after the collision.",
            steps,
            also=("SigmaE_k",),
        ),
        Part(
            "elastic",
            "explain",
            "Is the collision elastic? Give a reason.",
            points=(compared(data, values, before, after),),
        ),
    )


ELASTIC = besides("elastic", "whether the collision is elastic")


def if_asked(before: tuple[str, str], after: tuple[str, str]) -> Callable[[Data, Values], tuple[Part, ...]]:
    """The verdict, where the choice ELASTIC asks for it."""
    return lambda data, values: verdict(data, values, before, after) if data.choices["also"] == "elastic" else ()


def compared(data: Data, values: Values, before: tuple[str, str], after: tuple[str, str]) -> Point:
    """The two totals side by side, and what follows."""
    first, second = kinetic(values, *before), kinetic(values, *after)
    shown = [measure(one, "J", data.settings.style).text for one in (first, second)]
    told = f"The total kinetic energy is {shown[0]} before and {shown[1]} after"
    if abs(second - first) <= NEARLY * first:
        return Point(f"{told}: the same within 1 %, so the collision is elastic.", 1, ("the same", "elastic"))
    return Point(f"{told}: not the same, so the collision is inelastic.", 1, ("not the same", "inelastic"))
