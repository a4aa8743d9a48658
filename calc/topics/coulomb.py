"""Coulomb's law: two charges, sharing by contact, counting electrons.

F = k Q₁ Q₂ / r² with the sizes of the charges; like signs repel, unlike attract.
Sharing between identical conductors keeps signs: Q′ = (Q₁ + Q₂)/2.
A charge is a whole number of electron charges: n = |ΔQ|/e.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.answers import Direction
from calc.figures import Figure
from calc.figures.charges import Charge, On, spheres_on_line
from calc.questions import (
    NO_MARKS,
    SA,
    A,
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
    Step,
    Topic,
    Values,
)
from calc.topics._electrostatics import (
    CONSERVATION,
    COULOMB,
    PLAIN_LAW,
    QUANTISATION,
    WHY_SIGN,
    charge,
    distance,
    force,
    kind_of_force,
    refuse_zero_charge,
    sign_of_charge,
    state,
)

# --- the force law, any unknown -----------------------------------------------------------------------------

LAW = "F = k*Q1*Q2/r^2"
ROOT_LAW = {
    "F": LAW,
    "Q1": "Q1 = F*r^2/(k*Q2)",
    "Q2": "Q2 = F*r^2/(k*Q1)",
    "r": "r = sqrt(k*Q1*Q2/F)",
}
ASKED = {
    "F": ("Calculate the electrostatic force between the spheres.", "N"),
    "Q1": ("Calculate the charge on sphere A.", "C"),
    "Q2": ("Calculate the charge on sphere B.", "C"),
    "r": ("Calculate the distance between the centres of the spheres.", "m"),
}
WRONG = {
    "F": (
        Mistake("not-squared", "F", "k*Q1*Q2/r", "Inverse square: square the distance.", "the answer is r times the right one"),
        Mistake("added", "F", "k*(Q1+Q2)/r^2", "Product, not sum: multiply the charges."),
    ),
    "Q1": (
        Mistake("not-squared", "Q1", "F*r/(k*Q2)", "Inverse square: square the distance."),
        Mistake("upside-down", "Q1", "k*Q2/(F*r^2)", "Rearrange again: Q is alone when F r² is divided by k times the other charge."),
    ),
    "Q2": (
        Mistake("not-squared", "Q2", "F*r/(k*Q1)", "Inverse square: square the distance."),
        Mistake("upside-down", "Q2", "k*Q1/(F*r^2)", "Rearrange again: Q is alone when F r² is divided by k times the other charge."),
    ),
    "r": (
        Mistake("root-omitted", "r", "k*Q1*Q2/F", "You have r²: take the square root.", "the answer is the square of the distance"),
        Mistake("added", "r", "sqrt(k*(Q1+Q2)/F)", "Product, not sum: multiply the charges."),
    ),
}  # fmt: skip


def plan_force(data: Data) -> Plan:
    asked = data.asked
    if asked != "F":
        refuse_zero_charge(data, "Q1", "Q2")
        if data.values["F"] == 0 and asked == "r":
            raise Refusal(
                "F",
                "There is no force at any finite distance smaller than all others: a zero force gives no distance.",
            )
    product = acting(data)
    return Plan(
        story=story_two_spheres(data),
        parts=(
            state(COULOMB),
            Part("find", "calculate", ASKED[asked][0], (law_step(data, product),)),
        ),
        values=dict(data.values),
        scene=lambda v: scene(v, product),
        checks=(check_force(asked),),
        notes=force_notes(asked, product),
    )


def acting(data: Data) -> float:
    """+1 for repulsion, −1 for attraction, 0 when a charge is asked and nothing says which."""
    if data.asked in ("Q1", "Q2"):
        return {"attract": -1.0, "repel": 1.0}.get(data.choices["acting"], 0.0)
    return float(data.sign("Q1") * data.sign("Q2"))


def story_two_spheres(data: Data) -> str:
    carriers = data.pick(
        "Two small charged spheres, A and B,",
        "Two charged beads, A and B,",
        "Two point charges, A and B,",
    )
    known = [
        f"{name} carries {data.said[key]}"
        for name, key in (("A", "Q1"), ("B", "Q2"))
        if data.has(key)
    ]
    facts = [f"{carriers} are fixed in place."]
    facts.append(" and ".join(known) + "." if known else "")
    if data.has("r"):
        facts.append(f"Their centres are {data.said['r']} apart.")
    if data.has("F"):
        pull = {"attract": " attract and", "repel": " repel and"}.get(
            data.choices.get("acting", ""), ""
        )
        facts.append(f"They{pull} exert a force of {data.said['F']} on each other.")
    return " ".join(fact for fact in facts if fact)


def law_step(data: Data, product: float) -> Step:
    asked = data.asked
    size = (
        "size of the charge"
        if asked in ("Q1", "Q2")
        else "the force"
        if asked == "F"
        else "the distance"
    )
    return Step(
        law=LAW,
        make=ROOT_LAW[asked],
        what=f"Use Coulomb's law for {size}"
        if asked != "F"
        else "Find the size of the force with Coulomb's law",
        why=WHY_SIGN,
        plain=PLAIN_LAW,
        unit=ASKED[asked][1],
        direction=result_direction(data, product),
        mistakes=WRONG[asked],
        sizes=tuple(name for name in ("Q1", "Q2") if name != asked),
    )


def result_direction(data: Data, product: float) -> Direction | None:
    if data.asked == "F":
        return kind_of_force(product) if product else None
    if data.asked in ("Q1", "Q2") and product:
        other = data.sign("Q2" if data.asked == "Q1" else "Q1")
        return sign_of_charge(other * product)
    return None


def check_force(asked: str) -> Check:
    if asked == "F":
        return Check(
            "Compare with 1 µC and 1 µC at 1 m, which feel k × 10⁻¹² newtons",
            "F = k*10^-12*(Q1/10^-6)*(Q2/10^-6)*(1/r)^2",
            "Each charge scales the force in step; the distance scales it by the square, downwards.",
            sizes=("Q1", "Q2"),
        )
    return Check(
        "Put the answer back into the law: the force must come out as given",
        "k*Q1*Q2/r^2 = F",
        sizes=tuple(name for name in ("Q1", "Q2") if name != asked),
    )


def force_notes(asked: str, product: float) -> tuple[str, ...]:
    both = "The force of A on B and the force of B on A are equal in size and opposite in direction, even when the charges differ."
    if asked in ("Q1", "Q2") and not product:
        return (
            both,
            "Only the size follows: say whether the force attracts or repels to learn the sign.",
        )
    return (both,)


def scene(v: Values, product: float) -> Figure:
    """The two spheres with equal and opposite forces, to the numbers."""
    first, second = v["Q1"], v["Q2"]
    if product and first * second * product < 0:  # an asked charge is known by size only
        second = -second
    size, repel = v.get("F", 0.0), product > 0
    return spheres_on_line(
        [Charge("A", first, 0.0), Charge("B", second, v["r"])],
        forces=[On(0, "F", size, not repel), On(1, "F", size, repel)] if product else [],
        distances=[(0, 1, "r")],
        title="Two charged spheres",
    )


FORCE = Question(
    key="force",
    title="Force between two charges",
    fields=(
        charge("Q1", "Charge on A"),
        charge("Q2", "Charge on B"),
        distance(),
        force(),
        Choice(
            "acting",
            "The spheres",
            (
                ("unsaid", "attract or repel: not said"),
                ("attract", "attract each other"),
                ("repel", "repel each other"),
            ),
            quiet=("unsaid",),
            asked=("Q1", "Q2"),
        ),
    ),
    unknowns=("F", "Q1", "Q2", "r"),
    plan=plan_force,
    laws=(COULOMB.name,),
    example={"Q1": "+8 nC", "Q2": "-5 nC", "r": "12 cm", "F": "", "acting": "unsaid"},
    draws={
        "Q1": Draw((2, 3, 4, 5, 6, 8, -3, -4, -6), "nC", harder=(1.5, -2.4, 3.6, 7.2, -8.5)),
        "Q2": Draw((2, 4, 5, 7, 9, -2, -5, -7), "nC", harder=(2.5, -4.8, 6.4, -1.6)),
        "r": Draw((5, 8, 10, 12, 15, 20, 25, 30), "cm", harder=(45, 65, 85, 130)),
        "F": Draw((2, 4, 6, 9, 12, 25), "µN", harder=(1.5, 3.6, 7.5)),
        "acting": Draw(("attract", "repel")),
    },
)


# --- sharing by contact -------------------------------------------------------------------------------------


def plan_contact(data: Data) -> Plan:
    q1, q2 = data.values["Q1"], data.values["Q2"]
    r2 = data.values.get("r2", data.values["r"])
    product, shared = data.sign("Q1") * data.sign("Q2"), (q1 + q2) / 2
    if q1 == q2:
        raise Refusal(
            "Q2", "The charges are already equal: nothing would move. Change one of them."
        )
    donor, taker = ("A", "B") if q1 < q2 else ("B", "A")
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
            (sharing(shared),),
        ),
        Part(
            "electrons",
            "calculate",
            "Calculate how many electrons moved, and say from which sphere to which.",
            moved(donor, taker),
        ),
    ]
    if shared:
        apart = "back where they were" if r2 == data.values["r"] else f"{data.said['r2']} apart"
        ask = f"The spheres are now placed with their centres {apart}. Calculate the new electrostatic force between them."
        parts.append(Part("after", "calculate", ask, (after(),)))
    return Plan(
        story=data.pick(
            f"Two identical metal spheres, A and B, stand on insulating stems. A carries {data.said['Q1']} and B carries "
            f"{data.said['Q2']}; their centres are {data.said['r']} apart. They are made to touch and are then separated.",
            f"A and B are equal conducting balls on plastic rods, with charges of {data.said['Q1']} and {data.said['Q2']}. "
            f"At first their centres are {data.said['r']} apart. They touch, and are moved apart again.",
        ),
        parts=tuple(parts),
        values={**data.values, "r2": r2},
        scene=lambda v: scene({**v, "F": v["F_1"]}, product),
        checks=(
            Check("The charge together is the same before and after", "Q1 + Q2 = 2*Q_new"),
            Check("What one sphere lost the other gained", "Q_new - Q1 = Q2 - Q_new"),
        ),
        notes=()
        if shared
        else (
            "Equal and opposite charges cancel: after the touch neither sphere is charged, and there is no force.",
        ),
        warnings=few_electrons(abs(shared - q1) / data.settings.constant("e")),
    )


def before(product: float) -> Step:
    return Step(
        law="F_1 = k*Q1*Q2/r^2", make="F_1 = k*Q1*Q2/r^2", unit="N", what="Coulomb's law, before the touch", why=WHY_SIGN,
        plain=PLAIN_LAW, direction=kind_of_force(product) if product else None, sizes=("Q1", "Q2"),
        mistakes=(
            Mistake("not-squared", "F_1", "k*Q1*Q2/r", "Inverse square: square the distance."),
            Mistake("added", "F_1", "k*(Q1+Q2)/r^2", "Product, not sum: multiply the charges."),
        ),
    )  # fmt: skip


def sharing(shared: float) -> Step:
    return Step(
        law="Q_new = (Q1+Q2)/2", make="Q_new = (Q1+Q2)/2", unit="C",
        what="Share the net charge equally", why="Identical conductors share the net charge equally. Here the signs do count: keep them.",
        plain="Put the two charges in one pot, minus signs included, and give each sphere half.",
        direction=sign_of_charge(shared) if shared else None,
        mistakes=(
            Mistake("sizes-averaged", "Q_new", "(abs(Q1)+abs(Q2))/2", "Keep signs when sharing."),
            Mistake("not-halved", "Q_new", "Q1+Q2", "Shared by two: halve it.", "the answer is twice the right one"),
        ),
    )  # fmt: skip


def moved(donor: str, taker: str) -> tuple[Step, ...]:
    options = (("A-to-B", "electrons move from A to B"), ("B-to-A", "electrons move from B to A"))
    key = f"{donor}-to-{taker}"
    return (
        Step(
            law="DeltaQ = Q_new - Q1", make="DeltaQ = Q_new - Q1", unit="C", marks=NO_MARKS, what="Find the change in A's charge",
            why="Only electrons move, so the change of charge counts them. Final minus initial.",
            plain="How much more (or less) charge A has now than before.",
            mistakes=(Mistake("final-charge", "DeltaQ", "Q_new", "Count the change, not the final charge."),),
        ),
        Step(
            law="n = DeltaQ/e", make="n = DeltaQ/e", unit="", sizes=("DeltaQ",), what="Count the electrons",
            why="Each electron carries 1,6 × 10⁻¹⁹ C in size. They leave the more negative sphere.",
            plain="Divide the charge that moved by the charge of one electron.",
            direction=Direction(key, dict(options)[key], options),
            mistakes=(Mistake("multiplied", "n", "DeltaQ*e", "Divide by the charge of one electron: n = Q/e."),),
        ),
    )  # fmt: skip


def after() -> Step:
    return Step(
        law="F_2 = k*Q_new^2/r2^2", make="F_2 = k*Q_new^2/r2^2", unit="N", sizes=("Q_new",),
        what="Coulomb's law again, with the new charges", why="Both spheres now carry the same charge, so they repel.",
        plain=PLAIN_LAW, direction=kind_of_force(1.0),
        mistakes=(
            Mistake("not-squared", "F_2", "k*Q_new^2/r2", "Inverse square: square the distance."),
            Mistake("old-charges", "F_2", "k*abs(Q1)*abs(Q2)/r2^2", "Use the charges after the touch."),
        ),
    )  # fmt: skip


def few_electrons(n: float) -> tuple[str, ...]:
    """Fewer than 100 electrons, and not a whole number of them: the data do not fit well."""
    if n < 100 and abs(n - round(n)) > 0.1:
        return (
            f"About {round(n)} electrons: a charge is a whole number of electron charges, so check the data.",
        )
    return ()


CONTACT = Question(
    key="contact",
    title="Two spheres touch and part",
    fields=(
        charge("Q1", "Charge on A"), charge("Q2", "Charge on B"), distance("r", "Distance between the centres before"),
        replace(distance("r2", "Distance between the centres afterwards"), optional=True, help="empty: the same as before"),
    ),
    plan=plan_contact,
    laws=(COULOMB.name, CONSERVATION.name, QUANTISATION.name),
    example={"Q1": "+9 nC", "Q2": "-4 nC", "r": "20 cm", "r2": ""},
    draws={
        "Q1": Draw((4, 6, 8, 9, 12), "nC", harder=(3.2, 7.6, 9.6)),
        "Q2": Draw((-2, -3, -5, -7, 1, 2.5), "nC", harder=(-1.6, -4.4, -5.8)),
        "r": Draw((10, 15, 20, 25, 30, 40), "cm"),
        "r2": Draw(("",), harder=("6 cm", "12 cm", "50 cm")),
    },
)  # fmt: skip


# --- counting electrons -------------------------------------------------------------------------------------


def plan_electrons(data: Data) -> Plan:
    finding_n = data.asked == "n"
    if data.has("Q") and data.values["Q"] == 0:
        raise Refusal(
            "Q",
            "A neutral body has no electrons too many or too few. Type a charge that is not zero.",
        )
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
    step = Step(
        law="n = Q/e", make="n = Q/e" if finding_n else "Q = n*e", unit="" if finding_n else "C", sizes=("Q",) if finding_n else (),
        what="Charge comes in whole electron charges",
        why="A negative body has extra electrons; a positive one has lost some. e is the size of one electron's charge.",
        plain="Divide the pile by the size of one grain to count the grains.",
        direction=where,
        mistakes=(
            Mistake("multiplied", "n", "Q*e", "Divide by the charge of one electron: n = Q/e.") if finding_n
            else Mistake("divided", "Q", "n/e", "Multiply: each electron brings e."),
        ),
    )  # fmt: skip
    return Plan(
        story=story,
        parts=(state(QUANTISATION), Part("find", "calculate", ask, (step,))),
        values=dict(data.values),
        checks=(Check("Multiply back: n electrons carry", "n*e = Q", sizes=("Q",)),),
        warnings=few_electrons(abs(data.values["Q"]) / data.settings.constant("e"))
        if finding_n
        else (),
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
    laws=(QUANTISATION.name,),
    example={"Q": "-4 nC", "n": "", "which": "excess"},
    draws={
        "Q": Draw((-2, -3.2, 4, -5, 6.4, -8), "nC", harder=(-0.72, 1.36, -48)),
        "n": Draw(
            ("2,5 x 10^10", "4 x 10^10", "7,5 x 10^9"), harder=("1,25 x 10^11", "3,6 x 10^8")
        ),
        "which": Draw(("excess", "lacking")),
    },
)


# --- scaling ------------------------------------------------------------------------------------------------


def plan_scaling(data: Data) -> Plan:
    step = Step(
        law="F_new = a*b*F/d^2", make="F_new = a*b*F/d^2", unit="N",
        what="Compare the two forces", why="k stays the same. Multiply by what each charge is multiplied by; divide by the square of what the distance is multiplied by.",
        plain=PLAIN_LAW, lines=(),
        mistakes=(
            Mistake("not-squared", "F_new", "a*b*F/d", "Inverse square: square the factor of the distance."),
            Mistake("distance-multiplied", "F_new", "a*b*F*d^2", "Further apart means a smaller force: divide by d²."),
            Mistake("factors-added", "F_new", "(a+b)*F/d^2", "Product, not sum: multiply the factors."),
        ),
    )  # fmt: skip
    story = (
        f"Two point charges exert a force of {data.said['F']} on each other. One charge is made {data.said['a']} times as large, "
        f"the other {data.said['b']} times, and the distance {data.said['d']} times."
    )
    return Plan(
        story=story,
        parts=(
            Part(
                "find", "calculate", "Calculate the new force without knowing the charges.", (step,)
            ),
        ),
        values=dict(data.values),
        checks=(Check("Go back the same way: undo each factor", "F_new*d^2/(a*b) = F"),),
    )


SCALING = Question(
    key="scaling",
    title="What if the charges or the distance change?",
    fields=(
        force(),
        Input("a", "First charge is multiplied by", "", 0.01, 100),
        Input("b", "Second charge is multiplied by", "", 0.01, 100),
        Input("d", "Distance is multiplied by", "", 0.01, 100),
    ),
    plan=plan_scaling,
    laws=(COULOMB.name,),
    example={"F": "36 mN", "a": "2", "b": "1", "d": "3"},
    draws={
        "F": Draw((12, 18, 24, 36, 48, 72), "mN"), "a": Draw((2, 3, 4), harder=(0.5, 6, 1.5)),
        "b": Draw((1, 2, 5), harder=(0.25, 3)), "d": Draw((2, 3, 4), harder=(0.5, 0.2, 1.5)),
    },
)  # fmt: skip


# --- two unknown charges from two forces ----------------------------------------------------------------------


def plan_two_forces(data: Data) -> Plan:
    attract = data.choices["acting"] == "attract"
    before_, after_ = data.values["F_1"], data.values["F_2"]
    if not attract and after_ < before_:
        raise Refusal(
            "F_2",
            "No real charges fit: like charges repel at least as strongly after sharing. Make the second force larger, or let them attract at first.",
        )
    first = "P = -(F_1*r^2/k)" if attract else "P = F_1*r^2/k"
    steps = (
        Step(law="F_1 = -(k*P/r^2)" if attract else "F_1 = k*P/r^2", make=first, unit="", marks=SA, what="Product of the charges, P = Q₁Q₂", why=f"Coulomb's law before the touch gives the product; they {'attract, so it is negative' if attract else 'repel, so it is positive'}. Its unit is C².", plain=PLAIN_LAW),
        Step(law="F_2 = k*(S/2)^2/r^2", make="S = 2*r*sqrt(F_2/k)", unit="C", marks=SA, what="Sum of the charges, S = Q₁ + Q₂", why="After the touch each carries half the sum; take the sum as positive for now.", plain="Sharing only depends on the total.",
             mistakes=(Mistake("not-halved", "S", "r*sqrt(F_2/k)", "After sharing each sphere carries half the sum: double it to get the sum."),)),
        Step(law="Q1 = (S + sqrt(S^2 - 4*P))/2", make="Q1 = (S + sqrt(S^2 - 4*P))/2", unit="C", marks=SA, what="The larger root", why="Two numbers with sum S and product P are the roots of x² − Sx + P = 0.", plain="",
             mistakes=(Mistake("discriminant", "Q1", "(S + sqrt(S^2 + 4*P))/2", "Under the root it is S² − 4P; keep the sign of P."),)),
        Step(law="Q2 = S - Q1", make="Q2 = S - Q1", unit="C", marks=A, what="The other charge", why="The two charges add up to S.", plain=""),
    )  # fmt: skip
    return Plan(
        story=(
            f"Two identical metal spheres, their centres {data.said['r']} apart, {'attract' if attract else 'repel'} each other with "
            f"{data.said['F_1']}. They are touched together and put back at the same distance: they now repel with {data.said['F_2']}."
        ),
        parts=(
            Part(
                "charges",
                "calculate",
                "Calculate the charge on each sphere before they touched.",
                steps,
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
            "The same charges the other way round, and both with the opposite sign, fit as well: forces alone cannot tell.",
        ),
    )


TWO_FORCES = Question(
    key="two-forces",
    title="Find both charges from two forces",
    fields=(
        force("F_1", "Force before the touch (size)"), force("F_2", "Force after the touch (size)"),
        distance(), Choice("acting", "Before the touch the spheres", (("attract", "attract"), ("repel", "repel"))),
    ),
    plan=plan_two_forces,
    laws=(COULOMB.name, CONSERVATION.name),
    example={"F_1": "27 µN", "F_2": "9 µN", "r": "10 cm", "acting": "attract"},
    draws={
        "F_1": Draw((12, 18, 27, 36), "µN"), "F_2": Draw((4, 9, 16, 25), "µN"),
        "r": Draw((10, 15, 20, 30), "cm"), "acting": Draw(("attract",)),
    },
    levels=(3,),
)  # fmt: skip


TOPIC = Topic(
    key="coulomb",
    title="Coulomb's law",
    laws=(COULOMB, CONSERVATION, QUANTISATION),
    questions=(FORCE, CONTACT, ELECTRONS, SCALING, TWO_FORCES),
    cautions=(
        "Static machines: discharge them before touching, and keep them away from people with medical implants.",
    ),
)
