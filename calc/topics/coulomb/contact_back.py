"""Two spheres that touched, worked backwards: any charge, distance or force from what is known before and after.

Coulomb's law holds before and after; in between identical conductors share, Q′ = (Q₁ + Q₂)/2. A force
gives only the size of a charge: its sign comes from what is said of attraction or of the sign afterwards.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from calc.figures import Figure
from calc.model.questions import NO_MARKS, Choice, Data, Draw, Part, Refusal, Step, Values
from calc.model.relations import Relation
from calc.topics.coulomb.force import EACH_AND_OTHER, apart, by_sign, two_spheres
from calc.topics.coulomb.touch import FIRST, LARGER, SECOND, SHARING, electrons, first_charges, product
from calc.topics.shared.electrostatics import (
    CONSERVATION,
    COULOMB,
    NO_DISTANCE,
    NO_PULL,
    QUANTISATION,
    WHY_SIGN,
    refuse_zero_charge,
    state,
)
from calc.topics.shared.quantities import charge, electrostatic_force
from calc.working.chain import follows
from calc.working.declaring import Item, boxes, told
from calc.working.solving import Laws, Situation, question

TURNS = {"attract": -1, "repel": 1, "positive": 1, "negative": -1}
ONLY_SIZE = "Only the size of a charge follows from a force."
SAY = {
    "acting": f"{ONLY_SIZE} Say whether A and B attract or repel each other before the touch.",
    "after": f"{ONLY_SIZE} Say whether the charges are positive or negative after the touch.",
}
BECAUSE = {
    "attract": "They attract, so the charges have opposite signs.",
    "repel": "They repel, so the charges have the same sign.",
    "positive": "Both charges are positive afterwards.",
    "negative": "Both charges are negative afterwards.",
}
SUM = Relation(
    "Q_new = S/2",
    "Sum of the charges, S = Q₁ + Q₂",
    "After the touch each carries half the sum.",
    {"S": "C"},
    "Two numbers are known by their sum and their product.",
    marks=NO_MARKS,
)
SIGNED_ROOT = replace(LARGER, directions={"Q1": by_sign("Q1")})


UNSAID = ("unsaid", "not said")
BOXES: tuple[Item, ...] = (
    *first_charges("?; 4 6 8 9 12 nC; 3,2 7,6 -9,6", "-2 nC; -2 -3 -5 2; -1,6 4,4 -5,8"),
    apart(
        "r",
        "Distance between the centres before",
        "Before the touch their centres are {} apart.",
        "?; 10 15 20 30 cm; 12 25 45",
        ask="Calculate the distance between the centres before the touch.",
    ),
    electrostatic_force(
        "F_1",
        "Force before the touch (size)",
        "Before the touch they act on each other with a force of {}.",
        "?; 4 9 12 25 µN; 3,5 7,2 16",
        ask="Calculate the force between the spheres before the touch.",
        result="measured",
    ),
    Choice(
        "acting",
        "Before the touch A and B",
        (UNSAID, ("attract", "attract each other"), ("repel", "repel each other")),
        quiet=("unsaid",),
    ),
    charge(
        "Q_new",
        "Charge on each sphere afterwards",
        "After the touch each carries {}.",
        "?; 2 3 1,5 -1 nC; 2,4 -1,8 3,3",
        ask="Calculate the charge on each sphere after the touch.",
    ),
    apart(
        "r2",
        "Distance between the centres afterwards",
        "After the touch their centres are placed {} apart.",
        "10 cm; 10 15 20 25; 8 35 50",
        unit="m",
        ask="Calculate the distance between the centres after the touch.",
    ),
    electrostatic_force(
        "F_2",
        "Force after the touch (size)",
        "They then repel each other with a force of {}.",
        "3,6 µN; 1,6 3,6 6,4 10; 2,5 4,2 8,1",
        unit="N",
        ask="Calculate the force between the spheres after the touch.",
        result="measured",
        told_at={0.0: "There is then no force between them."},
    ),
    Choice(
        "after",
        "After the touch both charges are",
        (UNSAID, ("positive", "positive"), ("negative", "negative")),
        quiet=("unsaid",),
    ),
)
SIGNS = {"acting": Draw(("attract", "repel")), "after": Draw(("positive", "negative"))}


def with_signs(law: Relation, signs: Mapping[str, int], told: str) -> Relation:
    """Coulomb's law, from which a charge follows only where its sign is told."""
    signed = {name: with_sign(law.step(name), sign, BECAUSE[told]) for name, sign in signs.items() if sign}
    units = {name: unit for name, unit in law.units.items() if unit != "C" or name in signed}
    return replace(law, units=units, by_hand=signed)


def with_sign(step: Step, sign: int, because: str) -> Step:
    """The step for the size of a charge, with the minus that what is told puts before it."""
    step = replace(
        step,
        what="Use Coulomb's law for the size of the charge, and give it its sign",
        why=f"{WHY_SIGN} {because}",
        sizes=(*step.sizes, step.makes),
        direction=by_sign(step.makes),
    )
    if sign > 0:
        return step
    mistakes = tuple(replace(m, instead=f"-({m.instead})") for m in step.mistakes)
    return replace(step, make=f"{step.makes} = -({step.how})", mistakes=mistakes)


def laws_for(data: Data, acting: str, after: str) -> Laws:
    """What holds where attraction and the sign afterwards are told so."""
    turn = TURNS.get(acting, 0)
    first = {one: turn * data.sign(other) for one, other in EACH_AND_OTHER if data.has(other)}
    laws = (with_signs(FIRST, first, acting), SHARING, with_signs(SECOND, {"Q_new": TURNS.get(after, 0)}, after))
    return (*laws, product(acting), SUM, SIGNED_ROOT) if turn and not first else laws


def refuse_unsaid(data: Data) -> None:
    """What is asked would follow if a sign were told: refused at the choice that tells it."""

    def reached(acting: str, after: str) -> bool:
        ways = [step for law in laws_for(data, acting, after) for step in law.steps()]
        return all(follows(data.known.keys(), ways, name) for name in data.asked_names)

    acting, after = data.choices["acting"], data.choices["after"]
    if reached(acting, after):
        return
    both = (acting if acting in TURNS else "attract", after if after in TURNS else "positive")
    for name, tried in (("acting", (both[0], after)), ("after", (acting, both[1])), ("after", both)):
        if reached(*tried):
            raise Refusal(name, SAY[name])


def refuse_impossible(data: Data) -> None:
    """Charges of zero that pull, forces of zero that attract or tell a distance."""
    if data.values.get("F_1"):
        refuse_zero_charge(data, "Q1", "Q2")
    if data.values.get("F_2"):
        refuse_zero_charge(data, "Q_new")
    if data.values.get("F_1") == 0 and data.choices["acting"] in TURNS:
        raise Refusal("F_1", f"{NO_PULL} Type a force above zero, or choose “not said”.")
    for given, asked in (("F_1", "r"), ("F_2", "r2")):
        if data.values.get(given) == 0 and asked in data.asked_names:
            raise Refusal(given, NO_DISTANCE)


def refuse_too_strong(name: str, value: float | None) -> None:
    """No two real numbers have this sum and this product."""
    if name == "Q1" and value is None:
        raise Refusal(
            "F_1",
            "No real charges fit: like charges that repel so strongly at first leave more charge on each sphere than"
            " this. Make the first force smaller, or let them attract at first.",
        )


def refuse_signs(data: Data, values: Values) -> None:
    """What is told of attraction and of signs must be what the charges say."""
    both = values["Q1"] * values["Q2"] if {"Q1", "Q2"} <= values.keys() else 0.0
    pull = "These charges {0} each other, so they cannot {1}. Choose “{0} each other”, or correct a charge."
    sign = "The charges come out {0} after the touch, not {1}. Choose “{0}”, or correct a charge."
    for choice, value, words, sentence in (
        ("acting", both, ("repel", "attract"), pull),
        ("after", values.get("Q_new", 0.0), ("positive", "negative"), sign),
    ):
        right, wrong = words if value > 0 else words[::-1]
        if value and data.choices[choice] == wrong:
            raise Refusal(choice, sentence.format(right, wrong))


def situation(data: Data) -> Situation:
    """What holds and how it is told, for these data."""
    refuse_impossible(data)
    refuse_unsaid(data)
    acting, after = data.choices["acting"], data.choices["after"]
    usual = told(BOXES)
    pull = acting if acting in TURNS else "act on"
    tell = {**usual.tell, "F_1": f"Before the touch they {pull} each other with a force of {{}}."}
    if after in TURNS and not data.has("Q_new"):
        tell["F_2"] += f" Both are {after} then."
    exchanged = not data.has("Q1") and not data.has("Q2") and {"Q1", "Q2"} & set(data.asked_names)
    return replace(
        usual,
        relations=laws_for(data, acting, after),
        openings=(
            "Two identical metal spheres, A and B, stand on insulating stems. They are made to touch and are then"
            " separated.",
            "A and B are equal metal spheres on glass rods, with charges on them. They are brought together once and"
            " parted.",
            "Two identical conducting spheres, A and B, hang on nylon threads. They touch, and are held apart again.",
        ),
        tell=tell,
        stated=(state(COULOMB, "law"),),
        later=moved,
        refuse=refuse_signs,
        judge=refuse_too_strong,
        scene=scene,
        notes=("The same charges the other way round fit as well: the forces cannot tell which sphere had which.",)
        if exchanged
        else (),
    )


def moved(data: Data, values: Values) -> tuple[Part, ...]:
    """Where a first charge was asked: the electrons that moved."""
    if not {"Q1", "Q2"} & set(data.asked_names) or not {"Q1", "Q2", "Q_new"} <= values.keys():
        return ()
    q1, q2 = values["Q1"], values["Q2"]
    return () if abs(q1 - q2) <= 1e-9 * max(abs(q1), abs(q2)) else (electrons(),)


def scene(values: Values) -> Figure:
    """The spheres before they touch, as far as they are known."""
    return two_spheres(values, "F_1", "The two spheres before they touch")


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
    **boxes(*BOXES, draws=SIGNS, example={"after": "positive"}),
    since=2,
    asks="Q1",
    constants=("e", "k"),
    laws=(COULOMB.name, CONSERVATION.name, QUANTISATION.name),
    adjust=practise_back,
)
