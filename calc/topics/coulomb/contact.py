"""Two spheres touch and part, and both charges found from the forces before and after.

Sharing between identical conductors keeps signs: Q′ = (Q₁ + Q₂)/2.
A charge is a whole number of electron charges: n = |ΔQ|/e.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.model.questions import (
    SA,
    A,
    Check,
    Choice,
    Data,
    Draw,
    Mistake,
    Part,
    Plan,
    Question,
    Refusal,
    Step,
)
from calc.model.relations import Relation
from calc.topics.coulomb.electrons import few_electrons, refuse_part_of_one
from calc.topics.coulomb.force import scene
from calc.topics.coulomb.sharing import ALREADY_EQUAL, SHARING, moved
from calc.topics.shared.electrostatics import (
    CONSERVATION,
    COULOMB,
    NO_PULL,
    NOT_SQUARED,
    PLAIN_LAW,
    POINT_CHARGES,
    QUANTISATION,
    charge,
    distance,
    force,
    kind_of_force,
    state,
)

FIRST = replace(POINT_CHARGES.renamed(F="F_1"), what="Coulomb's law, before the touch")
SECOND = Relation(
    "F_2 = k*Q_new^2/r2^2",
    what="Coulomb's law again, with the new charges",
    why="Both spheres now carry the same charge, so they repel.",
    plain=PLAIN_LAW,
    units={"F_2": "N", "Q_new": "C", "r2": "m"},
    sizes=("Q_new",),
    directions={"F_2": lambda values: kind_of_force(1.0) if values["F_2"] else None},
    mistakes=(
        Mistake("not-squared", "F_2", "k*Q_new^2/r2", NOT_SQUARED),
        Mistake("old-charges", "F_2", "k*abs(Q1)*abs(Q2)/r2^2", "Use the charges after the touch."),
        Mistake(
            "root-omitted",
            "r2",
            "k*Q_new^2/F_2",
            "You have r²: take the square root.",
            "the answer is the square of the distance",
        ),
        Mistake("root-omitted", "Q_new", "F_2*r2^2/k", "You have the square of the charge: take the square root."),
    ),
)


def plan_contact(data: Data) -> Plan:
    q1, q2 = data.values["Q1"], data.values["Q2"]
    r2 = data.values.get("r2", data.values["r"])
    product, shared = data.sign("Q1") * data.sign("Q2"), (q1 + q2) / 2
    if q1 == q2:
        raise Refusal("Q2", ALREADY_EQUAL)
    refuse_part_of_one(abs(shared - q1) / data.settings.constant("e"), "Q2")
    parts = [
        state(COULOMB, "law"),
        Part(
            "before",
            "calculate",
            "Calculate the electrostatic force between the spheres before they touch.",
            (before(product),),
        ),
        Part(
            "shared",
            "calculate",
            "Calculate the charge on each sphere after they have touched.",
            (SHARING.step("Q_new"),),
        ),
        Part(
            "electrons",
            "calculate",
            "Calculate how many electrons moved, and say from which sphere to which.",
            moved(("A", "B"), "A" if q1 < q2 else "B"),
        ),
    ]
    if shared:
        apart = "back where they were" if r2 == data.values["r"] else f"{data.said['r2']} apart"
        ask = (
            f"The spheres are now placed with their centres {apart}. Calculate the new electrostatic force between"
            " them."
        )
        parts.append(Part("after", "calculate", ask, (SECOND.step("F_2"),)))
    return Plan(
        story=data.pick(
            f"Two identical metal spheres, A and B, stand on insulating stems. A carries {data.said['Q1']} and B"
            f" carries {data.said['Q2']}; their centres are {data.said['r']} apart. They are made to touch and are then"
            " separated.",
            f"A and B are equal conducting spheres on plastic rods, with charges of {data.said['Q1']} and"
            f" {data.said['Q2']}. At first their centres are {data.said['r']} apart. They touch, and are moved apart"
            " again.",
        ),
        parts=tuple(parts),
        values={**data.values, "r2": r2},
        scene=lambda v: scene({**v, "F": v["F_1"]}, product),
        checks=(
            Check("The charge together is the same before and after", "Q1 + Q2 = 2*Q_new"),
            Check("What one sphere lost the other gained", "Q_new - Q1 = Q2 - Q_new"),
        ),
        notes=(
            ()
            if shared
            else (
                "Equal and opposite charges cancel: after the touch neither sphere is charged, and there is no force.",
            )
        ),
        warnings=few_electrons(abs(shared - q1) / data.settings.constant("e")),
    )


def before(product: float) -> Step:
    step = FIRST.step("F_1")
    return replace(step, direction=kind_of_force(product) if product else None)


CONTACT = Question(
    key="contact",
    title="Two spheres touch and part",
    fields=(
        charge("Q1", "Charge on A"),
        charge("Q2", "Charge on B"),
        distance("r", "Distance between the centres before"),
        replace(
            distance("r2", "Distance between the centres afterwards"), optional=True, help="empty: the same as before"
        ),
    ),
    plan=plan_contact,
    constants=("e", "k"),
    laws=(COULOMB.name, CONSERVATION.name, QUANTISATION.name),
    example={"Q1": "+9 nC", "Q2": "-4 nC", "r": "20 cm", "r2": ""},
    draws={
        "Q1": Draw((4, 6, 8, 9, 12), "nC", harder=(3.2, 7.6, 9.6)),
        "Q2": Draw((-2, -3, -5, -7, 1, 2.5), "nC", harder=(-1.6, -4.4, -5.8)),
        "r": Draw((10, 15, 20, 25, 30, 40), "cm"),
        "r2": Draw(("",), harder=("6 cm", "12 cm", "50 cm")),
    },
)


def plan_two_forces(data: Data) -> Plan:
    attract = data.choices["acting"] == "attract"
    before_, after_ = data.values["F_1"], data.values["F_2"]
    if before_ == 0:
        raise Refusal("F_1", f"{NO_PULL} Type a force above zero.")
    if not attract and after_ < before_:
        raise Refusal(
            "F_2",
            "No real charges fit: like charges repel at least as strongly after sharing. Make the second force larger,"
            " or let them attract at first.",
        )
    now = f"they now repel with {data.said['F_2']}" if after_ else "now there is no force between them"
    first = "P = -(F_1*r^2/k)" if attract else "P = F_1*r^2/k"
    steps = (
        Step(
            law="F_1 = -(k*P/r^2)" if attract else "F_1 = k*P/r^2",
            make=first,
            unit="C^2",
            marks=SA,
            what="Product of the charges, P = Q₁Q₂",
            why=(
                "Coulomb's law before the touch gives the product; they"
                f" {'attract, so it is negative' if attract else 'repel, so it is positive'}. Its unit is C²."
            ),
            plain=PLAIN_LAW,
        ),
        Step(
            law="F_2 = k*(S/2)^2/r^2",
            make="S = 2*r*sqrt(F_2/k)",
            unit="C",
            marks=SA,
            what="Sum of the charges, S = Q₁ + Q₂",
            why="After the touch each carries half the sum; take the sum as positive for now.",
            plain="Sharing only depends on the total.",
            mistakes=(
                Mistake(
                    "not-halved",
                    "S",
                    "r*sqrt(F_2/k)",
                    "After sharing each sphere carries half the sum: double it to get the sum.",
                ),
            ),
        ),
        Step(
            law="Q1 = (S + sqrt(S^2 - 4*P))/2",
            make="Q1 = (S + sqrt(S^2 - 4*P))/2",
            unit="C",
            marks=SA,
            what="The larger root",
            why="Two numbers with sum S and product P are the roots of x² − Sx + P = 0.",
            plain="",
            mistakes=(
                Mistake(
                    "discriminant", "Q1", "(S + sqrt(S^2 + 4*P))/2", "Under the root it is S² − 4P; keep the sign of P."
                ),
            ),
        ),
        Step(
            law="Q2 = S - Q1",
            make="Q2 = S - Q1",
            unit="C",
            marks=A,
            what="The other charge",
            why="The two charges add up to S.",
            plain="",
        ),
    )
    return Plan(
        story=(
            f"Two identical metal spheres, their centres {data.said['r']} apart, {'attract' if attract else 'repel'}"
            f" each other with {data.said['F_1']}. They are touched together and put back at the same distance: {now}."
        ),
        parts=(
            Part(
                "charges",
                "calculate",
                "Calculate the charge on each sphere before they touched.",
                steps,
                also=("Q1",),
            ),
        ),
        values=dict(data.values),
        checks=(
            Check(
                "The force before the touch",
                "k*Q1*Q2/r^2 = F_1",
                sizes=("Q1", "Q2"),
                tolerance=1e-6,
            ),
            Check("The force after the touch", "k*((Q1 + Q2)/2)^2/r^2 = F_2", tolerance=1e-6),
        ),
        notes=(
            (
                "The same charges the other way round, and both with the opposite sign, fit as well: forces alone"
                " cannot tell."
            ),
        ),
    )


TWO_FORCES = Question(
    key="two-forces",
    title="Find both charges from two forces",
    fields=(
        force("F_1", "Force before the touch (size)"),
        force("F_2", "Force after the touch (size)"),
        distance(),
        Choice("acting", "Before the touch the spheres", (("attract", "attract"), ("repel", "repel"))),
    ),
    plan=plan_two_forces,
    constants=("k",),
    laws=(COULOMB.name, CONSERVATION.name),
    example={"F_1": "27 µN", "F_2": "9 µN", "r": "10 cm", "acting": "attract"},
    draws={
        "F_1": Draw((12, 18, 27, 36), "µN"),
        "F_2": Draw((4, 9, 16, 25), "µN"),
        "r": Draw((10, 15, 20, 30), "cm"),
        "acting": Draw(("attract",)),
    },
    levels=(3,),
)
