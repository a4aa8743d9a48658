"""Two spheres touch and part, and both charges found from the forces before and after.

Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.model.questions import SA, A, Check, Choice, Data, Draw, Mistake, Part, Plan, Question, Refusal
from calc.model.relations import Relation
from calc.topics.coulomb.force import apart, between, carried, two_spheres
from calc.topics.coulomb.touch import FIRST, LARGER, SECOND, SHARED, SHARING, electrons, few_moved, product, refuse_idle
from calc.topics.shared.electrostatics import CONSERVATION, COULOMB, NO_PULL, QUANTISATION, state
from calc.topics.shared.quantities import charge, electrostatic_force
from calc.working.chain import worked
from calc.working.declaring import boxes

CANCEL = "Equal and opposite charges cancel: after the touch neither sphere is charged, and there is no force."


def plan_contact(data: Data) -> Plan:
    given = {"r2": data.values["r"], **data.values}
    first, shared = FIRST.step("F_1"), SHARING.step("Q_new")
    v = worked(replace(data, values=given), (first, shared))
    refuse_idle(v, "Q1", "Q_new", max(abs(v["Q1"]), abs(v["Q2"])), "Q2")
    after = "back where they were" if v["r2"] == v["r"] else f"{data.said['r2']} apart"
    again = Part(
        "after",
        "calculate",
        f"The spheres are now placed with their centres {after}. Calculate the new electrostatic force between them.",
        (SECOND.step("F_2"),),
    )
    q1, q2, r = (data.said[name] for name in ("Q1", "Q2", "r"))
    return Plan(
        story=data.pick(
            f"Two identical metal spheres, A and B, stand on insulating stems. {carried(data)}; their"
            f" centres are {r} apart. They are made to touch and are then separated.",
            f"A and B are equal conducting spheres on plastic rods, with charges of {q1} and {q2}. At first their"
            f" centres are {r} apart. They touch, and are moved apart again.",
            later=(
                (
                    f"Two equal metal balls, A and B, hang on nylon threads, their centres {r} apart. {carried(data)}."
                    " They are brought together until they touch, and then held apart."
                ),
            ),
        ),
        parts=(
            state(COULOMB, "law"),
            Part(
                "before",
                "calculate",
                "Calculate the electrostatic force between the spheres before they touch.",
                (first,),
            ),
            Part("shared", "calculate", "Calculate the charge on each sphere after they have touched.", (shared,)),
            electrons(),
            *((again,) if v["Q_new"] else ()),
        ),
        values=given,
        scene=lambda values: two_spheres(values, "F_1", "Two charges and the force between them"),
        checks=SHARED,
        notes=() if v["Q_new"] else (CANCEL,),
        warnings=few_moved(v),
    )


R2 = apart("r2", "Distance between the centres afterwards", "", unit="m")
CONTACT = Question(
    "contact",
    "Two spheres touch and part",
    plan=plan_contact,
    constants=("e", "k"),
    laws=(COULOMB.name, CONSERVATION.name, QUANTISATION.name),
    **boxes(
        charge("Q1", "Charge on A", "", "+9 nC; 4 6 8 9 12; 3,2 7,6 9,6"),
        charge("Q2", "Charge on B", "", "-4 nC; -2 -3 -5 -7 1 2,5; -1,6 -4,4 -5,8"),
        apart("r", "Distance between the centres before", "", "20 cm; 10 15 20 25 30 40", unit="m"),
        replace(R2, box=replace(R2.box, optional=True, help="empty: the same as before")),
        draws={"r2": Draw(("",), harder=("6 cm", "12 cm", "50 cm"))},
    ),
)

# --- both charges from two forces --------------------------------------------------------------------------

DOUBLE = "You have the charge of one sphere. After sharing each carries half of {S}, so double it to get the sum."
SUM = Relation(
    "F_2 = k*(S/2)^2/r^2",
    "Sum of the charges, S = Q₁ + Q₂",
    "After the touch each carries half the sum; take the sum as positive for now.",
    {"S": "C"},
    "Sharing only depends on the total.",
    marks=SA,
    mistakes=(Mistake("not-halved", "S", "r*sqrt(F_2/k)", DOUBLE),),
)
OTHER = Relation("Q1 + Q2 = S", "The other charge", "The two charges add up to S.", {"Q2": "C"}, marks=A)
OTHER_WAYS = (
    "The same charges the other way round, and both with the opposite sign, fit as well: forces alone cannot tell."
)


def plan_two_forces(data: Data) -> Plan:
    acting, before, after = data.choices["acting"], data.values["F_1"], data.values["F_2"]
    if before == 0:
        raise Refusal("F_1", f"{NO_PULL} Type a force above zero.")
    if acting == "repel" and after < before:
        raise Refusal(
            "F_2",
            "No real charges fit: like charges repel at least as strongly after sharing. Make the second force larger,"
            " or let them attract at first.",
        )
    now = f"they now repel with {data.said['F_2']}" if after else "now there is no force between them"
    steps = (product(acting).step("P"), SUM.step("S"), LARGER.step("Q1"), OTHER.step("Q2"))
    ask = "Calculate the charge on each sphere before they touched."
    return Plan(
        story=data.pick(
            f"Two identical metal spheres, their centres {data.said['r']} apart, {acting} each other with"
            f" {data.said['F_1']}. They are touched together and put back at the same distance: {now}.",
            later=(
                (
                    f"A and B are equal metal balls on plastic rods; neither charge is known. At {data.said['r']}"
                    f" between their centres they {acting} each other with a force of {data.said['F_1']}. After one"
                    f" touch and at the old distance again, a second reading is taken: {now}."
                ),
                (
                    "With a sensitive balance the force between two identical charged spheres is read twice, both"
                    f" times with {data.said['r']} between their centres. At first they {acting} each other with"
                    f" {data.said['F_1']}; then they are made to touch, and {now}."
                ),
            ),
        ),
        parts=(Part("charges", "calculate", ask, steps, also=("Q1",)),),
        values=dict(data.values),
        checks=(
            Check("The force before the touch", "k*Q1*Q2/r^2 = F_1", sizes=("Q1", "Q2"), tolerance=1e-6),
            Check("The force after the touch", "k*((Q1 + Q2)/2)^2/r^2 = F_2", tolerance=1e-6),
        ),
        scene=lambda v: between(),
        notes=(OTHER_WAYS,),
    )


TWO_FORCES = Question(
    "two-forces",
    "Find both charges from two forces",
    plan=plan_two_forces,
    constants=("k",),
    laws=(COULOMB.name, CONSERVATION.name),
    levels=(3,),
    **boxes(
        electrostatic_force("F_1", "Force before the touch (size)", "", "27 µN; 12 18 27 36", unit="N"),
        electrostatic_force("F_2", "Force after the touch (size)", "", "9 µN; 4 9 16 25", unit="N"),
        apart("r", "Distance between the centres", "", "10 cm; 10 15 20 30", unit="m"),
        Choice("acting", "Before the touch the spheres", (("attract", "attract"), ("repel", "repel"))),
        draws={"acting": Draw(("attract",))},
    ),
)
