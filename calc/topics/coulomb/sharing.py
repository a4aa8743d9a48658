"""Charges shared by contact: two identical spheres, or three that touch in turn; any one charge unknown.

Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.charges import Charge, spheres_on_line
from calc.model.questions import SA, Check, Choice, Data, Draw, Mistake, Part, Plan, Question, Values
from calc.topics.coulomb.electrons import few_electrons
from calc.topics.coulomb.force import carried
from calc.topics.coulomb.touch import SHARED, SHARING, electrons, few_moved, first_charges, refuse_idle
from calc.topics.shared.electrostatics import CONSERVATION, QUANTISATION, state
from calc.topics.shared.quantities import charge
from calc.working.chain import lead, worked
from calc.working.declaring import Item, boxes, told
from calc.working.solving import Situation, question


def row(values: Values, *names: str) -> Figure:
    """The spheres in a row before they touch, with the signs of their charges."""
    return spheres_on_line(
        [Charge("ABC"[place], values[name], float(place), shows=(name,)) for place, name in enumerate(names)],
        title=f"The {'two' if len(names) == 2 else 'three'} spheres before they touch",
        notes=("Distances not to scale.",),
    )


def last_typed(data: Data, *names: str) -> str:
    """The last of these boxes that is filled: where data that do not suit each other are refused."""
    return next(name for name in reversed(names) if data.has(name))


# --- two spheres -------------------------------------------------------------------------------------------


TWO: tuple[Item, ...] = (
    *first_charges("+7 nC; 5 6 7 9 -8; 3,6 -5,2 7,8", "-3 nC; -2 -3 -4 -6 1,5; -1,4 -4,6 2,2"),
    charge(
        "Q_new",
        "Charge on each sphere afterwards",
        "",
        "?; 2 2,5 -1 3,5 nC; 1,3 -2,7 4,1",
        ask="Calculate the charge on each sphere after they have touched.",
    ),
)


def two_spheres_share(data: Data) -> Situation:
    """Two spheres that touch once, told with the charges that are given."""
    facts = f"At first {carried(data)}."

    def refuse(data: Data, v: Values) -> None:
        refuse_idle(v, "Q1", "Q_new", max(abs(v["Q1"]), abs(v["Q2"])), last_typed(data, "Q1", "Q2", "Q_new"))

    return replace(
        told(TWO),
        relations=(SHARING,),
        openings=(
            (
                f"Two identical metal spheres, A and B, stand on insulating stems. {facts} They are made to touch and"
                " are then separated."
            ),
            f"A and B are equal metal spheres on glass rods. {facts} They are brought together and taken apart again.",
            (
                f"Two identical conducting spheres, A and B, hang on nylon threads. {facts} They swing together, touch"
                " once and are held apart."
            ),
        ),
        tell={"Q_new": "Afterwards each carries {}."},
        stated=(state(CONSERVATION),),
        later=lambda data, values: (electrons(),),
        refuse=refuse,
        scene=lambda values: row(values, "Q1", "Q2"),
        proofs=lambda values: SHARED,
        warn=few_moved,
    )


TWO_SPHERES = question(
    "sharing",
    "Two spheres share their charge",
    two_spheres_share,
    **boxes(*TWO),
    unknowns=("Q_new", "Q1", "Q2"),
    any_givens=False,
    constants=("e",),
    since=2,
    laws=(CONSERVATION.name, QUANTISATION.name),
)

# --- three spheres in turn ---------------------------------------------------------------------------------

FORGOTTEN = "You used {Q_B}, the charge B began with. The first touch changed it: use {Q_AB}."
BY_THREE = "You divided the charge of all three by three. Only two spheres touch at a time: halve {Q_AB + Q_C}."
FIRST_TOUCH = SHARING.renamed(Q1="Q_A", Q2="Q_B", Q_new="Q_AB")
SECOND_TOUCH = SHARING.renamed(Q1="Q_AB", Q2="Q_C", Q_new="Q_BC")
SECOND_TOUCH = replace(
    SECOND_TOUCH,
    mistakes=(
        *SECOND_TOUCH.mistakes,
        Mistake("first-touch-forgotten", "Q_BC", "(Q_B + Q_C)/2", FORGOTTEN),
        Mistake("shared-by-three", "Q_BC", "(Q_A + Q_B + Q_C)/3", BY_THREE),
        Mistake("first-touch-forgotten", "Q_C", "2*Q_BC - Q_B", FORGOTTEN),
    ),
)
THIRD_TOUCH = SHARING.renamed(Q1="Q_BC", Q2="Q_AB", Q_new="Q_CA")
START = {
    "A": "+8 nC; 4 6 8 -6 12; 5,6 -4,8 9,2",
    "B": "-2 nC; -2 3 -4 5; -1,6 2,8 -6,4",
    "C": "-5 nC; -5 9 -8 7; -3,4 8,6 -7,2",
}
THREE: tuple[Item, ...] = (
    *(
        charge(
            f"Q_{x}",
            f"Charge on {x} at the start",
            "",
            drawn,
            ask=f"Calculate the charge that {x} carried at the start.",
        )
        for x, drawn in START.items()
    ),
    charge("Q_BC", "Charge on B and on C after the second touch", "", "?; -1 1,5 2 -3 nC; 1,7 -2,3 3,9"),
    Choice("then", "Afterwards", (("parted", "they stay apart"), ("third", "C touches A")), quiet=("parted",)),
)


def touched(number: int, pair: str, first: str, second: str, after: str) -> Part:
    """The electrons of one touch of the three."""
    names = {"Q1": first, "Q2": second, "Q_new": after, "DeltaQ": f"DeltaQ_{number}", "n": f"n_{number}"}
    return electrons(f"electrons-{number}", pair, f" when {pair[0]} and {pair[1]} touched", **names)


def story_of_three(data: Data) -> str:
    """The charges that are given, the touches, and what is known of the end."""
    told = [f"{name[-1]} {data.said[name]}" for name in ("Q_A", "Q_B", "Q_C") if data.has(name)]
    start = f"At the start the charges are: {', '.join(told[:-1])} and {told[-1]}."
    story = data.pick(
        f"Three identical metal spheres, A, B and C, stand on insulating stems. {start} A touches B and is taken away;"
        " then B touches C and is taken away.",
        f"A, B and C are equal metal spheres on plastic rods. {start} First A and B are brought together and parted,"
        " then B and C.",
        f"Three identical conducting spheres, A, B and C, hang on nylon threads. {start} B is held against A and let"
        " go; after that it is held against C and let go.",
    )
    end = f" After the second touch B and C each carry {data.said['Q_BC']}." if data.has("Q_BC") else ""
    return story + end + (" In the end C touches A." if data.choices["then"] == "third" else "")


def plan_three(data: Data) -> Plan:
    third = data.choices["then"] == "third"
    between, found = lead(data.known, (*FIRST_TOUCH.steps(), *SECOND_TOUCH.steps()), data.asked)
    v = worked(data, (between, found), (THIRD_TOUCH.step("Q_CA"),))
    scale, last = max(abs(v[name]) for name in ("Q_A", "Q_B", "Q_C")), last_typed(data, "Q_C", "Q_BC")
    refuse_idle(v, "Q_A", "Q_AB", scale, last_typed(data, "Q_A", "Q_B", "Q_BC"))
    refuse_idle(v, "Q_AB", "Q_BC", scale, last)
    parts = [
        Part(
            "between",
            "calculate",
            "Calculate the charge that A and B each carry between the two touches.",
            (replace(between, marks=SA),),
        ),
        Part("find", "calculate", told(THREE).ask[data.asked], (found,)),
        touched(1, "AB", "Q_A", "Q_B", "Q_AB"),
        touched(2, "BC", "Q_AB", "Q_C", "Q_BC"),
    ]
    checks = [
        Check(
            "The charge of all three together is the same at the start and after the second touch",
            "Q_A + Q_B + Q_C = Q_AB + 2*Q_BC",
        ),
        Check("In the second touch C gained what B lost", "Q_BC - Q_C = Q_AB - Q_BC"),
    ]
    if third:
        refuse_idle(v, "Q_BC", "Q_CA", scale, last)
        ask = "Calculate the charge on C and on A after they have touched."
        parts += [
            Part("third", "calculate", ask, (THIRD_TOUCH.step("Q_CA"),)),
            touched(3, "CA", "Q_BC", "Q_AB", "Q_CA"),
        ]
        nor = "Nor did the third touch change the charge of all three"
        checks.append(Check(nor, "Q_A + Q_B + Q_C = Q_BC + 2*Q_CA"))
    return Plan(
        story=story_of_three(data),
        parts=tuple(parts),
        values=dict(data.values),
        scene=lambda values: row(values, "Q_A", "Q_B", "Q_C"),
        checks=tuple(checks),
        notes=("Sphere A keeps the charge of the first touch through the second: it has no part in that.",),
        warnings=few_electrons(min(abs(v["Q_AB"] - v["Q_A"]), abs(v["Q_BC"] - v["Q_AB"])) / v["e"]),
    )


THREE_SPHERES = Question(
    "three-spheres",
    "Three spheres touch in turn",
    unknowns=("Q_BC", "Q_A", "Q_B", "Q_C"),
    plan=plan_three,
    constants=("e",),
    since=2,
    laws=(CONSERVATION.name, QUANTISATION.name),
    **boxes(*THREE, draws={"then": Draw(("parted",), harder=("parted", "third"))}),
)
