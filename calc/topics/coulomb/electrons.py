"""Charge counted in electrons: n = Q/e, a whole number. Marks and ranges: common practice, no source."""

from __future__ import annotations

from dataclasses import replace

from calc.figures.charges import Charge, spheres_on_line
from calc.language.printing import counted
from calc.model.directions import ELECTRONS as TOO_MANY_OR_FEW
from calc.model.questions import Check, Choice, Data, Draw, Mistake, Refusal
from calc.model.relations import Relation, Said
from calc.topics.shared.electrostatics import EACH_BRINGS, PER_ELECTRON, QUANTISATION, state
from calc.topics.shared.quantities import Quantity, charge
from calc.working.declaring import boxes, told
from calc.working.solving import Situation, question


def refuse_part_of_one(n: float, field: str | None) -> None:
    """Refuses a charge well below that of one electron."""
    if n < 0.9:
        raise Refusal(
            field,
            "This comes to less than the charge of one electron, and no body carries less. Check the sizes, the"
            " prefixes and the powers of ten.",
        )


def few_electrons(n: float) -> tuple[str, ...]:
    """Fewer than 100 electrons, and not a whole number of them: the data do not fit well."""
    if n >= 100 or abs(n - round(n)) <= 0.1:
        return ()
    about = counted(round(n), "electron")
    return (f"About {about}: a charge is a whole number of electron charges, so check the data.",)


COUNTED = Relation(
    "n = Q/e",
    "Charge comes in whole electron charges",
    "A negative body has extra electrons; a positive one has lost some. e is the size of one electron's charge.",
    {"n": "", "Q": "C"},
    "Divide the pile by the size of one grain to count the grains.",
    sizes=("Q",),
    said={"n": Said(count=True)},
    mistakes=(
        Mistake(
            "multiplied",
            "n",
            "Q*e",
            PER_ELECTRON % "Q",
        ),
        Mistake(
            "divided",
            "Q",
            "n/e",
            EACH_BRINGS % "n} by {e",
        ),
    ),
)


BOXES = (
    charge("Q", "Charge on the sphere", "", "-4 nC; -2 -3,2 4 -5 6,4 -8; -0,72 1,36 -48", ask="Calculate its charge."),
    Quantity("", 1e6, 1e14, "The number of electrons must be greater than zero.", whole=True)(
        "n", "Number of electrons", "", ask="Calculate how many electrons it has too many or too few."
    ),
    Choice(
        "which", "The sphere has", (("excess", "too many electrons"), ("lacking", "too few electrons")), asked=("Q",)
    ),
)
NUMBERS = Draw(("2,5 x 10^10", "4 x 10^10", "7,5 x 10^9"), harder=("1,25 x 10^11", "3,6 x 10^8"))


def situation(data: Data) -> Situation:
    """A charged sphere, told by its charge or by its electrons."""
    e, given = data.settings.constant("e"), data.values.get("Q")
    if given == 0:
        raise Refusal("Q", "A neutral body has no electrons too many or too few. Type a charge that is not zero.")
    if given is not None:
        refuse_part_of_one(abs(given) / e, "Q")
        story = data.pick(
            f"A small sphere carries a charge of {data.said['Q']}.",
            later=(
                f"A balloon rubbed with a woollen cloth has a charge of {data.said['Q']}.",
                (
                    "After it was touched with a charged rod, a metal ball on an insulating stem carries"
                    f" {data.said['Q']}."
                ),
            ),
        )
    else:
        many = "few" if data.choices["which"] == "lacking" else "many"
        counted = f"{data.said['n']} electrons too {many}"
        story = data.pick(
            f"A small sphere has {counted}.",
            later=(
                f"A balloon was rubbed with a woollen cloth; now it has {counted}.",
                f"After it was touched with a charged rod, a metal ball on an insulating stem has {counted}.",
            ),
        )
    ways = {
        "n": lambda v: TOO_MANY_OR_FEW.by_sign(v["Q"], "lacking"),
        "Q": lambda v: TOO_MANY_OR_FEW.of(data.choices["which"]),
    }
    return replace(
        told(BOXES),
        relations=(replace(COUNTED, directions=ways),),
        openings=(story,),
        tell={},
        stated=(state(QUANTISATION),),
        scene=lambda v: spheres_on_line([Charge("Q", v["Q"], 0.0, shows=("n",))], title="The charged sphere"),
        proofs=lambda v: (Check("Multiply back: the charge that n electrons carry", "n*e = Q", sizes=("Q",)),),
        warn=lambda v: () if given is None else few_electrons(abs(given) / e),
    )


ELECTRONS = question(
    "electrons",
    "How many electrons?",
    situation,
    **boxes(*BOXES, draws={"n": NUMBERS}),
    unknowns=("n", "Q"),
    any_givens=False,
    constants=("e",),
    laws=(QUANTISATION.name,),
)
