"""Coulomb's law between two charges, any one quantity unknown; and what becomes of the force when they change.

F = k Q₁ Q₂ / r² with the sizes of the charges; like signs repel, unlike attract.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import copysign

from calc.figures import Figure
from calc.figures.charges import Charge, On, spheres_on_line
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
    Values,
)
from calc.model.relations import Relation
from calc.topics.shared.electrostatics import (
    COULOMB,
    NO_DISTANCE,
    NO_PULL,
    PLAIN_LAW,
    POINT_CHARGES,
    charge,
    distance,
    force,
    kind_of_force,
    refuse_zero_charge,
    sign_of_charge,
    state,
)
from calc.working.working import run

ASKED = {
    "F": ("Calculate the electrostatic force between A and B.", "Find the size of the force with Coulomb's law"),
    "Q1": ("Calculate the charge on A.", "Use Coulomb's law for the size of the charge"),
    "Q2": ("Calculate the charge on B.", "Use Coulomb's law for the size of the charge"),
    "r": ("Calculate the distance between the centres of A and B.", "Use Coulomb's law for the distance"),
}


def plan_force(data: Data) -> Plan:
    asked = data.asked
    if asked != "F":
        refuse_zero_charge(data, "Q1", "Q2")
        if data.values["F"] == 0 and asked == "r":
            raise Refusal("F", NO_DISTANCE)
    if data.values.get("F") == 0 and asked != "r" and data.choices["acting"] != "unsaid":
        raise Refusal("acting", f"{NO_PULL} Choose “attract or repel: not said”, or type a force above zero.")
    product = acting(data)
    ask, what = ASKED[asked]
    step = replace(POINT_CHARGES.step(asked), what=what, direction=result_direction(data, product))
    plan = Plan(
        story=story_two_spheres(data),
        parts=(
            state(COULOMB),
            Part("find", "calculate", ask, (step,)),
        ),
        values=dict(data.values),
        scene=lambda v: scene(v, product, asked),
        checks=(check_force(asked),),
        notes=force_notes(data, product),
        mistakes=(SURFACE,) if data.has("R") and data.has("r") else (),
    )
    refuse_overlap(data, plan)
    return plan


SURFACE = Mistake(
    "surface",
    "r",
    "r - 2*R",
    "Measure from centre to centre, not from surface to surface.",
    "the gap between the surfaces was put in for r",
)


def refuse_overlap(data: Data, plan: Plan) -> None:
    """Spheres of radius R have their centres more than 2R apart."""
    if not data.has("R"):
        return
    apart = run(plan, data.settings.constants())["r"]
    if apart <= 2 * data.values["R"]:
        raise Refusal(
            "r" if data.has("r") else "R",
            "The spheres would touch or overlap: their centres must be more than two radii apart.",
        )


def acting(data: Data) -> float:
    """+1 for repulsion, −1 for attraction, 0 when a charge is asked and nothing says which."""
    if data.asked in ("Q1", "Q2"):
        return {"attract": -1.0, "repel": 1.0}.get(data.choices["acting"], 0.0)
    return float(data.sign("Q1") * data.sign("Q2"))


def story_two_spheres(data: Data) -> str:
    carriers = data.pick(
        "Two small charged spheres, A and B,",
        "Two charged metal spheres, A and B,",
        "Two point charges, A and B,",
    )
    apart = data.pick("Their centres are", "Their centres are", "They are")
    if data.has("R"):
        apart = "Their centres are"
        carriers = f"Two charged spheres, A and B, each with a radius of {data.said['R']},"
    known = [f"{name} carries {data.said[key]}" for name, key in (("A", "Q1"), ("B", "Q2")) if data.has(key)]
    facts = [f"{carriers} are fixed in place."]
    facts.append(" and ".join(known) + "." if known else "")
    if data.has("r"):
        facts.append(f"{apart} {data.said['r']} apart.")
    if data.has("F"):
        # With both charges given their signs say it already; the choice is then not asked.
        told = data.choices.get("acting", "") if data.asked in ("Q1", "Q2") else ""
        pull = {"attract": " attract and", "repel": " repel and"}.get(told, "")
        facts.append(f"They{pull} exert a force of {data.said['F']} on each other.")
    return " ".join(fact for fact in facts if fact)


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


def force_notes(data: Data, product: float) -> tuple[str, ...]:
    asked = data.asked
    if asked in ("Q1", "Q2") and data.values["F"] == 0:
        return ("A body without charge feels no electrostatic force; a charge of zero has no sign.",)
    both = (
        "The force of A on B and the force of B on A are equal in size and opposite in direction, even when the charges"
        " differ."
    )
    if asked in ("Q1", "Q2") and not product:
        return (
            both,
            "Only the size follows: say whether the force attracts or repels to learn the sign.",
        )
    return (both,)


def scene(v: Values, product: float, asked: str = "") -> Figure:
    """The two spheres with equal and opposite forces, to the numbers.

    An asked charge is known by its size only: its sign comes from product, or is left open.
    """
    first, second = v["Q1"], v["Q2"]
    if product and asked == "Q1":
        first = copysign(first, product * second)
    elif product and asked == "Q2":
        second = copysign(second, product * first)
    known = {name: name != asked or product != 0 or v[name] == 0 for name in ("Q1", "Q2")}
    size, repel = v.get("F", 0.0), product > 0
    return spheres_on_line(
        [
            Charge("A", first, 0.0, signed=known["Q1"]),
            Charge("B", second, v["r"], signed=known["Q2"]),
        ],
        forces=[On(0, "F", size, not repel), On(1, "F", size, repel)] if product else [],
        distances=[(0, 1, "r")],
        title="Two charges and the force between them",
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
            "A and B",
            (
                ("unsaid", "attract or repel: not said"),
                ("attract", "attract each other"),
                ("repel", "repel each other"),
            ),
            quiet=("unsaid",),
            asked=("Q1", "Q2"),
        ),
        Input(
            "R",
            "Radius of each sphere",
            "cm",
            1e-4,
            1.0,
            refusal="Radius must be greater than zero.",
            optional=True,
            help="only if it is given",
        ),
    ),
    unknowns=("F", "Q1", "Q2", "r"),
    plan=plan_force,
    constants=("k",),
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


def change(data: Data, name: str, what: str) -> str:
    """What becomes of one quantity: "the distance is made 3 times as large"; a factor of 1 changes nothing."""
    if data.values[name] == 1:
        return f"{what} stays the same"
    return f"{what} is made {data.said[name]} times as large"


COMPARED = Relation(
    "F_new = a*b*F/d^2",
    what="Compare the two forces",
    why=(
        "k stays the same. Multiply by what each charge is multiplied by; divide by the square of what the distance is"
        " multiplied by."
    ),
    plain=PLAIN_LAW,
    units={"F_new": "N"},
    mistakes=(
        Mistake("not-squared", "F_new", "a*b*F/d", "Inverse square: square the factor of the distance."),
        Mistake("distance-multiplied", "F_new", "a*b*F*d^2", "Further apart means a smaller force: divide by d²."),
        Mistake("factors-added", "F_new", "(a+b)*F/d^2", "Product, not sum: multiply the factors."),
    ),
)


def plan_scaling(data: Data) -> Plan:
    story = (
        f"Two point charges exert a force of {data.said['F']} on each other. {change(data, 'a', 'One charge')}, "
        f"{change(data, 'b', 'the other charge')}, and {change(data, 'd', 'the distance')}."
    )
    return Plan(
        story=story,
        parts=(
            Part(
                "find",
                "calculate",
                "Calculate the new force without knowing the charges.",
                (COMPARED.step("F_new"),),
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
        "F": Draw((12, 18, 24, 36, 48, 72), "mN"),
        "a": Draw((2, 3, 4), harder=(0.5, 6, 1.5)),
        "b": Draw((1, 2, 5), harder=(0.25, 3)),
        "d": Draw((2, 3, 4), harder=(0.5, 0.2, 1.5)),
    },
)
