"""Coulomb's law between two charges, any one quantity unknown; and what becomes of the force when they change.

F = k Q₁ Q₂ / r² with the sizes of the charges; like signs repel, unlike attract.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from calc.figures import Figure
from calc.figures.charges import Charge, On, spheres_on_line
from calc.model.answers import Direction
from calc.model.directions import ATTRACTION, SIGN_OF_CHARGE
from calc.model.questions import Check, Choice, Data, Input, Mistake, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation, Said, Towards
from calc.topics.shared.electrostatics import (
    COULOMB,
    NO_DISTANCE,
    NO_PULL,
    PLAIN_LAW,
    POINT_CHARGES,
    refuse_zero_charge,
    state,
)
from calc.topics.shared.quantities import Quantity, charge, electrostatic_force, length
from calc.topics.shared.ratios import ADDED, FURTHER, SQUARE
from calc.working.declaring import boxes, told
from calc.working.solving import Situation, question

apart = replace(length, high=10)  # between centres

SPHERES = (("A", "Q1"), ("B", "Q2"))
EACH_AND_OTHER = (("Q1", "Q2"), ("Q2", "Q1"))


def by_sign(name: str) -> Towards:
    """The sign of the charge ``name``, from its value."""
    return lambda values: SIGN_OF_CHARGE.by_sign(values[name], "positive")


def pull_or_push(values: Values) -> Direction | None:
    """Attraction or repulsion, from the signs of both charges; none without a charge."""
    return ATTRACTION.by_sign(values["Q1"] * values["Q2"], "repel")


def carried(data: Data) -> str:
    """What is known of the first charges: "A carries +8 nC and B carries −5 nC"."""
    return " and ".join(f"{letter} carries {data.said[name]}" for letter, name in SPHERES if data.has(name))


def two_spheres(values: Values, pull: str, title: str, charges: Mapping[str, float] | None = None) -> Figure:
    """A and B with the equal and opposite forces ``pull``, as far as they are known.

    charges: those whose sign is known, with it, where the values are sizes.
    """
    signed = values if charges is None else charges
    product, both = signed.get("Q1", 0.0) * signed.get("Q2", 0.0), ("Q1", "Q2")
    ends = ((0, product < 0), (1, product > 0)) if product and pull in values else ()
    return spheres_on_line(
        [
            Charge(letter, signed.get(name, 0.0), place, signed=name in signed, shows=(name,))
            for (letter, name), place in zip(SPHERES, (0.0, values.get("r", 1.0)), strict=True)
        ],
        forces=[On(sphere, pull, values[pull], to_right, shows=both) for sphere, to_right in ends],
        distances=[(0, 1, "r")],
        title=title,
    )


def between() -> Figure:
    """Two charges of unknown sign with the distance between them."""
    return spheres_on_line(
        [Charge(name, 0.0, float(place), signed=False) for place, name in enumerate("AB")],
        distances=[(0, 1, "r")],
        title="Two charges and the distance between them",
    )


# --- the force between two charges -------------------------------------------------------------------------

SIZE_OF_CHARGE = Said("Use Coulomb's law for the size of the charge")
LAW = replace(
    POINT_CHARGES,
    said={
        "F": Said("Find the size of the force with Coulomb's law"),
        "Q1": SIZE_OF_CHARGE,
        "Q2": SIZE_OF_CHARGE,
        "r": Said("Use Coulomb's law for the distance"),
    },
)
SURFACE = Mistake(
    "surface",
    "r",
    "r - 2*R",
    "Measure from centre to centre, not from surface to surface.",
    "the gap between the surfaces was put in for r",
)
PAIR = (
    "The force of A on B and the force of B on A are equal in size and opposite in direction, even when the charges"
    " differ."
)
NO_CHARGE = "A body without charge feels no electrostatic force; a charge of zero has no sign."
ONLY_SIZE = "Only the size follows: say whether the force attracts or repels to learn the sign."
SCALED = Check(
    "Compare with 1 µC and 1 µC at 1 m, which feel k × 10⁻¹² newtons",
    "F = k*10^-12*(Q1/10^-6)*(Q2/10^-6)*(1/r)^2",
    "Each charge scales the force in step; the distance scales it by the square, downwards.",
    sizes=("Q1", "Q2"),
)
PUT_BACK = Check("Put the answer back into the law: the force must come out as given", "k*Q1*Q2/r^2 = F")
NO_RADIUS = "Radius must be greater than zero."
BOXES = (
    charge("Q1", "Charge on A", "", "+8 nC; 2 3 4 5 6 8 -3 -4 -6; 1,5 -2,4 3,6 7,2 -8,5"),
    charge("Q2", "Charge on B", "", "-5 nC; 2 4 5 7 9 -2 -5 -7; 2,5 -4,8 6,4 -1,6"),
    apart(
        "r",
        "Distance between the centres",
        "",
        "12 cm; 5 8 10 12 15 20 25 30; 45 65 85 130",
        unit="m",
        ask="Calculate the distance between the centres of A and B.",
    ),
    electrostatic_force(
        "F",
        "Electrostatic force (size)",
        "",
        "?; 2 4 6 9 12 25 µN; 1,5 3,6 7,5",
        ask="Calculate the electrostatic force between A and B.",
    ),
    Choice(
        "acting",
        "A and B",
        (("unsaid", "attract or repel: not said"), ("attract", "attract each other"), ("repel", "repel each other")),
        quiet=("unsaid",),
        asked=("Q1", "Q2"),
    ),
    Input("R", "Radius of each sphere", "cm", 1e-4, 1.0, NO_RADIUS, optional=True, help="only if it is given"),
)


def signs(data: Data) -> dict[str, int]:
    """The sign of each charge: of one that is asked, from what is told of the force; 0 where nothing tells."""
    turn = {"attract": -1, "repel": 1}.get(data.choices["acting"], 0)
    return {one: data.sign(one) if data.has(one) else turn * data.sign(other) for one, other in EACH_AND_OTHER}


def refuse_impossible(data: Data) -> None:
    """No force without charge, no attraction or repulsion without force, no distance from no force."""
    if data.asked != "F":
        refuse_zero_charge(data, "Q1", "Q2")
    if data.values.get("F") != 0:
        return
    if data.asked == "r":
        raise Refusal("F", NO_DISTANCE)
    if data.choices["acting"] != "unsaid":
        raise Refusal("acting", f"{NO_PULL} Choose “attract or repel: not said”, or type a force above zero.")


def refuse_overlap(data: Data, values: Values) -> None:
    """Spheres of radius R have their centres more than 2R apart."""
    if data.has("R") and values["r"] <= 2 * values["R"]:
        raise Refusal(
            "r" if data.has("r") else "R",
            "The spheres would touch or overlap: their centres must be more than two radii apart.",
        )


def situation(data: Data) -> Situation:
    """The two charges told, with the sign of one that is asked."""
    refuse_impossible(data)
    asked, sign = data.asked, signs(data)
    charge_asked = asked in sign
    unsigned = charge_asked and not sign[asked]

    def sign_told(_: Values) -> Direction | None:
        return SIGN_OF_CHARGE.by_sign(sign[asked], "positive")

    def scene(v: Values) -> Figure:
        known = {name: s * abs(v[name]) for name, s in sign.items() if s or not v[name]}
        return two_spheres(v, "F", "Two charges and the force between them", known)

    size = f", each with a radius of {data.said['R']}," if data.has("R") else ","
    bodies = ("small charged spheres", "charged metal spheres", "point charges")
    centres = data.pick("Their centres are", "Their centres are", "They are")
    if data.has("R"):
        bodies, centres = ("charged spheres",) * 3, "Their centres are"
    # With both charges given their signs say it already; the choice is then not asked.
    pull = {"attract": " attract and", "repel": " repel and"}.get(data.choices["acting"] if charge_asked else "", "")
    return replace(
        told(BOXES),
        relations=(replace(LAW, directions={"F": pull_or_push, "Q1": sign_told, "Q2": sign_told}),),
        openings=(
            data.pick(
                *(f"Two {what}, A and B{size} are fixed in place. {carried(data)}." for what in bodies),
                later=(
                    (
                        f"A and B are two small charged balls on insulating stems{size.removesuffix(',')}."
                        f" {carried(data)}."
                    ),
                    (
                        "On a level table without other charges near it stand two small charged balls, A and"
                        f" B{size.removesuffix(',')}. {carried(data)}."
                    ),
                ),
            ),
        ),
        tell={"r": f"{centres} {{}} apart.", "F": f"They{pull} exert a force of {{}} on each other."},
        stated=(state(COULOMB),),
        refuse=refuse_overlap,
        scene=scene,
        proofs=lambda v: (SCALED,) if asked == "F" else (replace(PUT_BACK, sizes=tuple({"Q1", "Q2"} - {asked})),),
        mistakes=(SURFACE,) if data.has("R") else (),
        notes=(NO_CHARGE,) if charge_asked and not data.values["F"] else (PAIR, ONLY_SIZE) if unsigned else (PAIR,),
    )


FORCE = question(
    "force",
    "Force between two charges",
    situation,
    **boxes(*BOXES),
    unknowns=("F", "Q1", "Q2", "r"),
    any_givens=False,
    constants=("k",),
    laws=(COULOMB.name,),
)

# --- what becomes of the force -----------------------------------------------------------------------------

COMPARED = Relation(
    "F_new = a*b*F/d^2",
    "Compare the two forces",
    "k stays the same. Multiply by what each charge is multiplied by; divide by the square of what the distance is"
    " multiplied by.",
    {"F_new": "N"},
    PLAIN_LAW,
    mistakes=(
        Mistake("not-squared", "F_new", "a*b*F/d", SQUARE),
        Mistake("distance-multiplied", "F_new", "a*b*F*d^2", FURTHER),
        Mistake("factors-added", "F_new", "(a+b)*F/d^2", ADDED),
    ),
)
times = Quantity("", 0.01, 100)


def change(data: Data, name: str, what: str) -> str:
    """What becomes of one quantity: "the distance is made 3 times as large"; a factor of 1 changes nothing."""
    if data.values[name] == 1:
        return f"{what} stays the same"
    return f"{what} is made {data.said[name]} times as large"


def plan_scaling(data: Data) -> Plan:
    ask = "Calculate the new force without knowing the charges."
    opening = data.pick(
        f"Two point charges exert a force of {data.said['F']} on each other.",
        later=(
            f"The force between two small charged balls, whose charges nobody has measured, is {data.said['F']}.",
            (
                f"A force sensor shows that one charged bead acts on another with {data.said['F']}. Then the set-up is"
                " changed."
            ),
        ),
    )
    return Plan(
        story=(
            f"{opening} {change(data, 'a', 'One charge')}, "
            f"{change(data, 'b', 'the other charge')}, and {change(data, 'd', 'the distance')}."
        ),
        parts=(Part("find", "calculate", ask, (COMPARED.step("F_new"),)),),
        values=dict(data.values),
        scene=lambda v: between(),
        checks=(Check("Go back the same way: undo each factor", "F_new*d^2/(a*b) = F"),),
    )


SCALING = Question(
    "scaling",
    "What if the charges or the distance change?",
    plan=plan_scaling,
    laws=(COULOMB.name,),
    **boxes(
        electrostatic_force("F", "Electrostatic force (size)", "", "36 mN; 12 18 24 36 48 72", unit="N"),
        times("a", "First charge is multiplied by", "", "2; 2 3 4; 0,5 6 1,5"),
        times("b", "Second charge is multiplied by", "", "1; 1 2 5; 0,25 3"),
        times("d", "Distance is multiplied by", "", "3; 2 3 4; 0,5 0,2 1,5"),
    ),
)
