"""Charge counted in electrons: n = Q/e, a whole number. Marks and ranges: common practice, no source."""

from __future__ import annotations

from dataclasses import replace

from calc.language.printing import counted
from calc.model.answers import Direction
from calc.model.questions import (
    Check,
    Choice,
    Data,
    Draw,
    Input,
    Mistake,
    Part,
    Plan,
    Question,
    Refusal,
)
from calc.model.relations import Relation
from calc.topics.shared.electrostatics import (
    QUANTISATION,
    charge,
    state,
)

NOT_ONE = (
    "This comes to less than the charge of one electron, and no body carries less. "
    "Check the sizes, the prefixes and the powers of ten."
)


def refuse_part_of_one(n: float, field: str | None) -> None:
    """Refuses a charge well below that of one electron."""
    if n < 0.9:
        raise Refusal(field, NOT_ONE)


def few_electrons(n: float) -> tuple[str, ...]:
    """Fewer than 100 electrons, and not a whole number of them: the data do not fit well."""
    if n < 100 and abs(n - round(n)) > 0.1:
        return (
            (
                f"About {counted(round(n), 'electron')}: a charge is a whole number of electron charges, so check the"
                " data."
            ),
        )
    return ()


COUNTED = Relation(
    "n = Q/e",
    what="Charge comes in whole electron charges",
    why="A negative body has extra electrons; a positive one has lost some. e is the size of one electron's charge.",
    plain="Divide the pile by the size of one grain to count the grains.",
    units={"n": "", "Q": "C"},
    sizes=("Q",),
    mistakes=(
        Mistake("multiplied", "n", "Q*e", "Divide by the charge of one electron: n = Q/e."),
        Mistake("divided", "Q", "n/e", "Multiply: each electron brings e."),
    ),
)


def plan_electrons(data: Data) -> Plan:
    finding_n = data.asked == "n"
    if data.has("Q") and data.values["Q"] == 0:
        raise Refusal(
            "Q",
            "A neutral body has no electrons too many or too few. Type a charge that is not zero.",
        )
    if data.has("Q"):
        refuse_part_of_one(abs(data.values["Q"]) / data.settings.constant("e"), "Q")
    lacking = data.values["Q"] > 0 if finding_n else data.choices["which"] == "lacking"
    options = (
        ("excess", "too many electrons: the charge is negative"),
        ("lacking", "too few electrons: the charge is positive"),
    )
    where = Direction(
        "lacking" if lacking else "excess",
        dict(options)["lacking" if lacking else "excess"],
        options,
    )
    if finding_n:
        story, ask = (
            f"A small sphere carries a charge of {data.said['Q']}.",
            "Calculate how many electrons it has too many or too few.",
        )
    else:
        story = f"A small sphere has {data.said['n']} electrons too {'few' if lacking else 'many'}."
        ask = "Calculate its charge."
    step = replace(COUNTED.step(data.asked), count=finding_n, direction=where)
    return Plan(
        story=story,
        parts=(state(QUANTISATION), Part("find", "calculate", ask, (step,))),
        values=dict(data.values),
        checks=(Check("Multiply back: the charge that n electrons carry", "n*e = Q", sizes=("Q",)),),
        warnings=few_electrons(abs(data.values["Q"]) / data.settings.constant("e")) if finding_n else (),
    )


ELECTRONS = Question(
    key="electrons",
    title="How many electrons?",
    fields=(
        charge("Q", "Charge on the sphere"),
        Input(
            "n",
            "Number of electrons",
            "",
            1e6,
            1e14,
            whole=True,
            refusal="The number of electrons must be greater than zero.",
        ),
        Choice(
            "which",
            "The sphere has",
            (("excess", "too many electrons"), ("lacking", "too few electrons")),
            asked=("Q",),
        ),
    ),
    unknowns=("n", "Q"),
    plan=plan_electrons,
    constants=("e",),
    laws=(QUANTISATION.name,),
    example={"Q": "-4 nC", "n": "", "which": "excess"},
    draws={
        "Q": Draw((-2, -3.2, 4, -5, 6.4, -8), "nC", harder=(-0.72, 1.36, -48)),
        "n": Draw(("2,5 x 10^10", "4 x 10^10", "7,5 x 10^9"), harder=("1,25 x 10^11", "3,6 x 10^8")),
        "which": Draw(("excess", "lacking")),
    },
)
