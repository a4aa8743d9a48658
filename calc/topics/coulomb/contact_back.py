"""Two spheres that touched, worked backwards: any charge, distance or force from what is known before and after.

Coulomb's law holds before and after; in between identical conductors share, Q′ = (Q₁ + Q₂)/2. A force
gives only the size of a charge: its sign comes from what is said of attraction or of the sign afterwards.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

from calc.figures import Figure
from calc.figures.charges import Charge, On, spheres_on_line
from calc.model.questions import (
    SA,
    Choice,
    Data,
    Draw,
    Input,
    Mistake,
    Part,
    Refusal,
    Step,
    Values,
)
from calc.model.relations import Relation
from calc.topics.coulomb.contact import FIRST, SECOND
from calc.topics.coulomb.sharing import SHARING, by_sign, moved
from calc.topics.shared.electrostatics import (
    CONSERVATION,
    COULOMB,
    NO_DISTANCE,
    NO_PULL,
    PLAIN_LAW,
    QUANTISATION,
    WHY_SIGN,
    charge,
    distance,
    force,
    kind_of_force,
    refuse_zero_charge,
    state,
)
from calc.working.chain import follows
from calc.working.solving import Laws, Situation, question

TURNS = {"attract": -1, "repel": 1, "positive": 1, "negative": -1}
SAY = {
    "acting": (
        "Only the size of a charge follows from a force. Say whether A and B attract or repel each other before the"
        " touch."
    ),
    "after": (
        "Only the size of a charge follows from a force. Say whether the charges are positive or negative after the"
        " touch."
    ),
}
OTHER_WAY = "The same charges the other way round fit as well: the forces cannot tell which sphere had which."
TOO_STRONG = (
    "No real charges fit: like charges that repel so strongly at first leave more charge on each sphere than this. "
    "Make the first force smaller, or let them attract at first."
)


def before(data: Data, acting: str) -> Relation:
    """Coulomb's law before the touch; a charge follows only where its sign does too."""
    relation = replace(
        FIRST,
        directions={"F_1": lambda v: kind_of_force(v["Q1"] * v["Q2"]) if v["Q1"] * v["Q2"] else None},
    )
    hands = {}
    for name, other in (("Q1", "Q2"), ("Q2", "Q1")):
        if acting in TURNS and data.has(other):
            hands[name] = signed(relation.step(name), TURNS[acting] * data.sign(other), acting)
    free = {name: unit for name, unit in relation.units.items() if name in ("F_1", "r") or name in hands}
    return replace(relation, units=free, by_hand=hands)


def after(sign: str) -> Relation:
    """Coulomb's law after the touch; the charge follows only where its sign is told."""
    if sign not in TURNS:
        return replace(SECOND, units={"F_2": "N", "r2": "m"})
    return replace(SECOND, by_hand={"Q_new": signed(SECOND.step("Q_new"), TURNS[sign], sign)})


def signed(step: Step, sign: int, told: str) -> Step:
    """The step for the size of a charge, with the minus that what is told puts before it."""
    because = {
        "attract": "They attract, so the charges have opposite signs.",
        "repel": "They repel, so the charges have the same sign.",
    }.get(told, f"Both charges are {told} afterwards.")
    make = step.make if sign >= 0 else f"{step.makes} = -({step.how})"
    return replace(
        step,
        make=make,
        what="Use Coulomb's law for the size of the charge, and give it its sign",
        why=f"{WHY_SIGN} {because}",
        sizes=tuple(dict.fromkeys((*step.sizes, step.makes))),
        direction=by_sign(step.makes),
        mistakes=tuple(m if sign >= 0 else replace(m, instead=f"-({m.instead})") for m in step.mistakes),
    )


def both_charges(acting: str) -> Laws:
    """Both charges from their product and what each has afterwards."""
    minus = acting == "attract"
    product = Relation(
        "F_1 = -(k*P/r^2)" if minus else "F_1 = k*P/r^2",
        what="Product of the charges, P = Q₁Q₂",
        why=(
            "Coulomb's law before the touch gives the product; they"
            f" {'attract, so it is negative' if minus else 'repel, so it is positive'}. Its unit is C²."
        ),
        plain=PLAIN_LAW,
        units={"P": "C^2"},
        marks=SA,
    )
    step = Step(
        law="Q1*(2*Q_new - Q1) = P",
        make="Q1 = Q_new + sqrt(Q_new^2 - P)",
        unit="C",
        marks=SA,
        what="The larger root",
        lines=("Q1^2 - 2*Q_new*Q1 + P = 0",),
        why="The two charges add up to twice the charge afterwards, and multiply to P: a quadratic equation.",
        plain="Two numbers are known by their sum and their product.",
        direction=by_sign("Q1"),
        mistakes=(
            Mistake(
                "discriminant",
                "Q1",
                "Q_new + sqrt(Q_new^2 + P)",
                "Under the root it is Q_new² − P; keep the sign of P.",
            ),
        ),
    )
    root = Relation(step.law, step.what, step.why, units={"Q1": "C"}, by_hand={"Q1": step})
    return (product, root)


def laws_for(data: Data, acting: str, sign: str) -> Laws:
    """What holds where attraction and the sign afterwards are told so."""
    laws: Laws = (before(data, acting), SHARING, after(sign))
    if acting in TURNS and not data.has("Q1") and not data.has("Q2"):
        laws += both_charges(acting)
    return laws


def refuse_unsaid(data: Data) -> None:
    """What is asked would follow if a sign were told: refused at the choice that tells it."""
    said = (data.choices["acting"], data.choices["after"])
    if all(reached(data, name, *said) for name in data.asked_names):
        return
    told = (said[0] if said[0] in TURNS else "attract", said[1] if said[1] in TURNS else "positive")
    for name, one in (
        ("acting", (told[0], said[1])),
        ("after", (said[0], told[1])),
        ("after", told),
    ):
        if all(reached(data, asked, *one) for asked in data.asked_names):
            raise Refusal(name, SAY[name])


def reached(data: Data, name: str, acting: str, sign: str) -> bool:
    """Whether ``name`` follows from the data with these signs told."""
    ways = [step for relation in laws_for(data, acting, sign) for step in relation.steps()]
    return follows(data.known.keys(), ways, name)


def refuse_impossible(data: Data) -> None:
    """Forces of zero that attract, charges of zero that pull, and like charges that repel too strongly."""
    first = data.values.get("F_1")
    if first:
        refuse_zero_charge(data, "Q1", "Q2")
    if data.values.get("F_2"):
        refuse_zero_charge(data, "Q_new")
    if first == 0 and data.choices["acting"] in TURNS:
        raise Refusal("F_1", f"{NO_PULL} Type a force above zero, or choose “not said”.")
    for given, asked in (("F_1", "r"), ("F_2", "r2")):
        if data.values.get(given) == 0 and asked in data.asked_names:
            raise Refusal(given, NO_DISTANCE)
    if first and data.choices["acting"] == "repel" and data.has("r") and not data.has("Q1") and not data.has("Q2"):
        k = data.settings.constant("k")
        shared = data.values.get("Q_new")
        if shared is None and data.has("F_2") and data.has("r2"):
            shared = data.values["r2"] * sqrt(data.values["F_2"] / k)
        if shared is not None and shared**2 < first * data.values["r"] ** 2 / k * (1 - 1e-9):
            raise Refusal("F_1", TOO_STRONG)


def refuse_signs(data: Data, values: Values) -> None:
    """What is told of attraction and of signs must be what the charges say."""
    if {"Q1", "Q2"} <= values.keys() and data.choices["acting"] in TURNS:
        product = values["Q1"] * values["Q2"]
        if product * TURNS[data.choices["acting"]] < 0:
            does, told = ("attract", "repel") if product < 0 else ("repel", "attract")
            raise Refusal(
                "acting",
                f"These charges {does} each other, so they cannot {told}. Choose “{does} each other”, or correct a"
                " charge.",
            )
    if values.get("Q_new") and data.choices["after"] in TURNS:
        told = data.choices["after"]
        if values["Q_new"] * TURNS[told] < 0:
            right = "negative" if told == "positive" else "positive"
            raise Refusal(
                "after",
                f"The charges come out {right} after the touch, not {told}. Choose “{right}”, or correct a charge.",
            )


def situation(data: Data) -> Situation:
    """What holds and how it is told, for these data."""
    refuse_impossible(data)
    refuse_unsaid(data)
    acting, sign = data.choices["acting"], data.choices["after"]
    pull = acting if acting in TURNS else "act on"
    told = f" Both are {sign} then." if sign in TURNS and not data.has("Q_new") else ""
    turned = not data.has("Q1") and not data.has("Q2")
    return Situation(
        relations=laws_for(data, acting, sign),
        openings=(
            (
                "Two identical metal spheres, A and B, stand on insulating stems. They are made to touch and are then"
                " separated."
            ),
            (
                "A and B are equal metal spheres on glass rods, with charges on them. They are brought together once"
                " and parted."
            ),
            "Two identical conducting spheres, A and B, hang on nylon threads. They touch, and are held apart again.",
        ),
        tell={
            "Q1": "Before the touch A carries {}.",
            "Q2": "Before the touch B carries {}.",
            "r": "Before the touch their centres are {} apart.",
            "F_1": f"Before the touch they {pull} each other with a force of {{}}.",
            "Q_new": "After the touch each carries {}.",
            "r2": "After the touch their centres are placed {} apart.",
            "F_2": (
                f"They then repel each other with a force of {{}}.{told}"
                if data.values.get("F_2")
                else "There is then no force between them."
            ),
        },
        ask={
            "Q1": "Calculate the charge that A carried before the touch.",
            "Q2": "Calculate the charge that B carried before the touch.",
            "Q_new": "Calculate the charge on each sphere after the touch.",
            "r": "Calculate the distance between the centres before the touch.",
            "r2": "Calculate the distance between the centres after the touch.",
            "F_1": "Calculate the force between the spheres before the touch.",
            "F_2": "Calculate the force between the spheres after the touch.",
        },
        stated=(state(COULOMB, "law"),),
        later=electrons,
        refuse=refuse_signs,
        scene=scene,
        notes=(OTHER_WAY,) if turned and {"Q1", "Q2"} & set(data.asked_names) else (),
    )


def electrons(data: Data, values: Values) -> tuple[Part, ...]:
    """Where a first charge was asked: the electrons that moved."""
    if not {"Q1", "Q2"} & set(data.asked_names) or not {"Q1", "Q2", "Q_new"} <= values.keys():
        return ()
    q1, q2 = values["Q1"], values["Q2"]
    if abs(q1 - q2) <= 1e-9 * max(abs(q1), abs(q2)):
        return ()
    ask = "Calculate how many electrons moved, and say from which sphere to which."
    return (Part("electrons", "calculate", ask, moved(("A", "B"), "A" if q1 < q2 else "B")),)


def scene(values: Values) -> Figure:
    """The spheres before they touch, as far as they are known."""
    known = {name: name in values for name in ("Q1", "Q2")}
    forces = []
    if "F_1" in values and all(known.values()):
        repel = values["Q1"] * values["Q2"] > 0
        forces = [On(0, "F_1", values["F_1"], not repel), On(1, "F_1", values["F_1"], repel)]
    return spheres_on_line(
        [
            Charge("A", values.get("Q1", 0.0), 0.0, signed=known["Q1"], shows=("Q1",)),
            Charge("B", values.get("Q2", 0.0), values.get("r", 1.0), signed=known["Q2"], shows=("Q2",)),
        ],
        forces=forces,
        distances=[(0, 1, "r")],
        title="The two spheres before they touch",
    )


def measured(item: Input) -> Input:
    """A box whose value is usually found: left out first where more is given than is needed."""
    return replace(item, result="measured")


UNSAID = ("unsaid", "not said")
GIVEN = {
    "Q1": ("Q2", "F_2", "r2", "after"),
    "Q2": ("Q1", "F_2", "r2", "after"),
    "Q_new": ("Q1", "F_1", "r", "acting"),
    "r": ("Q2", "Q_new", "F_1"),
    "F_1": ("Q2", "Q_new", "r"),
    "r2": ("Q1", "Q2", "F_2"),
    "F_2": ("Q1", "F_1", "r", "r2", "acting"),
}


def practise_back(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """Just what leads to the unknown, with the signs told where they are needed."""
    asked = next((name for name in GIVEN if not typed[name]), "")
    kept = {name: text if name in GIVEN.get(asked, tuple(typed)) else "" for name, text in typed.items()}
    return {name: text or ("unsaid" if name in SAY else "") for name, text in kept.items()}


CONTACT_BACK = question(
    "contact-back",
    "Spheres that touched, worked backwards",
    situation,
    fields=(
        charge("Q1", "Charge on A before"),
        charge("Q2", "Charge on B before"),
        distance("r", "Distance between the centres before"),
        measured(force("F_1", "Force before the touch (size)")),
        Choice(
            "acting",
            "Before the touch A and B",
            (UNSAID, ("attract", "attract each other"), ("repel", "repel each other")),
            quiet=("unsaid",),
        ),
        charge("Q_new", "Charge on each sphere afterwards"),
        distance("r2", "Distance between the centres afterwards"),
        measured(force("F_2", "Force after the touch (size)")),
        Choice(
            "after",
            "After the touch both charges are",
            (UNSAID, ("positive", "positive"), ("negative", "negative")),
            quiet=("unsaid",),
        ),
    ),
    example={
        "Q1": "",
        "Q2": "-2 nC",
        "r": "",
        "F_1": "",
        "acting": "unsaid",
        "Q_new": "",
        "r2": "10 cm",
        "F_2": "3,6 µN",
        "after": "positive",
    },
    since=2,
    asks="Q1",
    constants=("e", "k"),
    laws=(COULOMB.name, CONSERVATION.name, QUANTISATION.name),
    draws={
        "Q1": Draw((4, 6, 8, 9, 12), "nC", harder=(3.2, 7.6, -9.6)),
        "Q2": Draw((-2, -3, -5, 2), "nC", harder=(-1.6, 4.4, -5.8)),
        "r": Draw((10, 15, 20, 30), "cm", harder=(12, 25, 45)),
        "F_1": Draw((4, 9, 12, 25), "µN", harder=(3.5, 7.2, 16)),
        "acting": Draw(("attract", "repel")),
        "Q_new": Draw((2, 3, 1.5, -1), "nC", harder=(2.4, -1.8, 3.3)),
        "r2": Draw((10, 15, 20, 25), "cm", harder=(8, 35, 50)),
        "F_2": Draw((1.6, 3.6, 6.4, 10), "µN", harder=(2.5, 4.2, 8.1)),
        "after": Draw(("positive", "negative")),
    },
    adjust=practise_back,
)
