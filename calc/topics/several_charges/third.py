"""A third charge on a line from a stated net force: its charge, or its distance.

F_net = F₃₂ ± F₁₂ gives the signed contribution of charge 3; Coulomb's law turned round gives
the rest, and the direction tells its sign or its side.
Marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from calc.figures import Figure, Force, tail_to_head
from calc.figures.charges import Charge, spheres_on_line
from calc.figures.figure import Tells
from calc.model.answers import Direction, Point
from calc.model.questions import (
    FSA,
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
    Values,
)
from calc.model.relations import Towards
from calc.topics.several_charges.line import side_pull, signed
from calc.topics.several_charges.shared import (
    COINCIDE,
    NOISE,
    SIDES,
    SUPERPOSITION,
    Body,
    added,
    like,
    pair,
    pull_ask,
    pull_on_line,
    side,
    sideways,
    way_of,
)
from calc.topics.shared.electrostatics import (
    COULOMB,
    NOT_SQUARED,
    charge,
    distance,
    force,
    refuse_zero_charge,
    sign_of_charge,
    state,
)

# --- a third charge from a stated net force -----------------------------------------------------------------


def plan_third(data: Data) -> Plan:
    refuse_zero_charge(data, "Q1", "Q2", "Q3")
    finding_charge = data.asked == "Q3"
    values = data.values
    positive = 1 if data.choices["way"] == "right" else -1
    on = Body("2", values["Q2"])
    first = Body("1", values["Q1"], values["r_12"] * (1 if data.choices["side_1"] == "right" else -1))
    needed = wanted(data, first, on, positive)  # signed, right positive
    if finding_charge:
        place = 1 if data.choices["side_3"] == "right" else -1
        third = Body("3", positive_if(needed * place, values["Q2"]), place * values["r_23"])
    else:
        place = way_of(needed) * (-1 if values["Q3"] * values["Q2"] > 0 else 1)
        k = data.settings.constant("k")
        third = Body("3", values["Q3"], place * (k * abs(values["Q3"] * values["Q2"] / needed)) ** 0.5)
    if abs(third.x - first.x) <= NOISE * abs(first.x):
        raise Refusal("r_23" if finding_charge else "F_net", COINCIDE)
    contribution, last = find_third(data, first, on, place, positive)
    parts = [
        state(SUPERPOSITION),
        Part("force-1", "calculate", pull_ask(first, on), (side_pull(first, on, marks=FSA),)),
    ]
    if not finding_charge:
        parts.append(side_part(on, third, needed))
    ask = (
        "Calculate the charge that charge 3 must carry, with its sign."
        if finding_charge
        else f"Calculate the distance of charge 3 from charge 2, to the {'right' if place > 0 else 'left'}."
    )
    parts.append(Part("find", "calculate", ask, (contribution, last)))
    parts.append(
        Part(
            "draw",
            "draw",
            "Draw the two forces on charge 2 and their sum.",
            points=third_points(first, on, needed),
            figure=lambda v: third_figure(first, on, positive, v),
        )
    )
    terms = sorted(
        (-way * positive, f"k*{name}*Q2/{gap}^2")
        for way, name, gap in (
            (sideways(first, on), "Q1", "r_12"),
            (way_of(needed), "Q3", "r_23"),
        )
    )
    return Plan(
        story=story_third(data),
        parts=tuple(parts),
        values=dict(values),
        scene=lambda _: third_scene(data, (first, on, third)),
        checks=(
            Check(
                "Put the answer back: the net force must come out as stated",
                f"F_net = {signed([(-turn, term) for turn, term in terms])}",
                "Plus for a force in the stated direction, minus for the opposite one.",
                sizes=("Q1", "Q2", "Q3"),
                tolerance=1e-6,
            ),
        ),
    )


def positive_if(outward: float, other: float) -> float:
    """A charge of size 1 that pulls (outward > 0) or pushes a charge of the sign of ``other``."""
    return -way_of(other) if outward > 0 else way_of(other)


def wanted(data: Data, first: Body, on: Body, positive: int) -> float:
    """The force charge 3 must exert, right positive; refuses data that leave it nothing to do."""
    has = pull_on_line(data, first, on)
    needed = positive * data.values["F_net"] - has
    if abs(needed) <= NOISE * abs(has):
        raise Refusal(
            "F_net",
            "Charge 1 alone already gives this net force, so there is nothing left for charge 3 to do. Change the net"
            " force.",
        )
    return needed


def find_third(data: Data, first: Body, on: Body, place: int, positive: int) -> tuple[Step, Step]:
    """The signed contribution of charge 3, then its charge or its distance."""
    told = data.values["F_net"] != 0
    contribution = added(
        "F_net",
        "F_32",
        "F_12",
        ways=(sideways(first, on), positive),
        what=f"Superposition: what charge 3 has to add, taking {side(positive).words} as positive",
        why=(
            "That is the direction of the stated net force."
            if told
            else "With no net force either direction may be positive."
        )
        + " A minus sign in the result means the opposite direction.",
        plain="The stated total is what charge 1 does plus what charge 3 does. Take charge 1's share away from it.",
        alone="The net force is the sum of all the forces: charge 1 acts as well." if told else "",
        wrong="F₁₂ was taken in the opposite direction",
    )
    share = "Charge 3 gives only its own share of the net force."
    if data.asked == "Q3":
        why = (
            f"Charge 3 is {side(place).words} of charge 2. A force towards it is attraction (unlike signs), away from"
            " it repulsion (like signs)."
        )
        wrong = (
            Mistake("not-squared", "Q3", "F_32*r_23/(k*Q2)", NOT_SQUARED),
            Mistake(
                "wrong-pair", "Q3", "F_32*r_12^2/(k*Q2)", "Measure to the chosen charge: use the distance of charge 3."
            ),
            Mistake("net-used", "Q3", "F_net*r_23^2/(k*Q2)", share),
        )[: 3 if told else 2]
        sign: dict[str, Towards] = {"Q3": lambda v: sign_of_charge(positive_if(v["F_32"] * positive * place, v["Q2"]))}
        law = pair("F_32", "Q3", "Q2", "r_23", why=why, mistakes=wrong, directions=sign)
        return contribution, law.step("Q3")
    options = tuple((key, f"{words} of charge 2") for key, words in SIDES)
    key = "right" if place > 0 else "left"
    wrong = (
        Mistake("root-omitted", "r_23", "k*Q3*Q2/F_32", "You have r²: take the square root."),
        Mistake("net-used", "r_23", "sqrt(k*Q3*Q2/F_net)", share),
    )[: 2 if told else 1]
    where = Direction(key, dict(options)[key], options)
    law = pair(
        "F_32",
        "Q3",
        "Q2",
        "r_23",
        what="Coulomb's law for the distance",
        why="A distance is positive: take the positive root.",
        mistakes=wrong,
        directions={"r_23": lambda v: where},
    )
    return contribution, law.step("r_23")


def side_part(on: Body, third: Body, needed: float) -> Part:
    """Both regions tried: on which side charge 3 must stand."""
    need = side(needed).words
    points = []
    for place in (-1, 1):
        way = -place if like(third, on) else place
        fits = "which is what is needed" if way == way_of(needed) else "the wrong way: no place there"
        acts = "repulsion" if like(third, on) else "attraction"
        points.append(
            Point(
                f"{side(place).words[0].upper()}{side(place).words[1:]} of charge 2, charge 3 would give a force"
                f" {side(way).words} ({acts}), {fits}.",
                1,
            )
        )
    return Part(
        "side",
        "explain",
        f"Charge 3 must exert a force {need} on charge 2. Explain on which side of charge 2 it must stand.",
        points=tuple(points),
    )


def third_points(first: Body, on: Body, needed: float) -> tuple[Point, ...]:
    return (
        Point(f"Arrow F₁₂ points {side(sideways(first, on)).words}, with head and label."),
        Point(f"Arrow F₃₂ points {side(needed).words}, with head and label."),
    )


def third_figure(first: Body, on: Body, positive: int, values: Values) -> Figure:
    way = 0.0 if values["F_32"] * positive > 0 else 180.0
    forces = [
        Force("F_{12}", abs(values["F_12"]), 0.0 if sideways(first, on) > 0 else 180.0),
        Force("F_{32}", abs(values["F_32"]), way),
    ]
    return tail_to_head(forces, title="Sum of the forces on charge 2")


def story_third(data: Data) -> str:
    said = data.said
    side_1 = dict(SIDES)[data.choices["side_1"]]
    opening = data.pick(
        "Charged corks are pinned along a straight groove in a board.",
        "Charged balls stand on plastic pegs along a straight track.",
    )
    facts = [
        opening,
        f"Charge 1, {said['Q1']}, is {said['r_12']} {side_1} of charge 2, {said['Q2']}.",
    ]
    net = (
        f"a net force of {said['F_net']} {dict(SIDES)[data.choices['way']]}" if data.values["F_net"] else "no net force"
    )
    if data.asked == "Q3":
        facts.append(
            f"Charge 3 is {said['r_23']} {dict(SIDES)[data.choices['side_3']]} of charge 2. Charge 2 feels {net}."
        )
    else:
        facts.append(f"Charge 3, {said['Q3']}, is placed on the same line so that charge 2 feels {net}.")
    return " ".join(facts)


SIGN_FOUND = "The charge to be found is drawn with the sign it turns out to have."


def third_scene(data: Data, bodies: Sequence[Body]) -> Figure:
    first, on, third = bodies
    said = data.said
    drawn = spheres_on_line(
        [Charge(b.label, b.charge, b.x) for b in (first, on, third)],
        distances=[(0, 1, said["r_12"]), (2, 1, said.get("r_23", "r_{23}"))],
        title="Three charges on a line",
        notes=(SIGN_FOUND,) if data.asked == "Q3" else (),
    )
    told = (Tells(SIGN_FOUND, ("Q3",)),) if data.asked == "Q3" else ()
    return replace(drawn, tells=(*drawn.tells, *told))


def practise_third(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Opposite sides to begin with; the same side only with different distances."""
    if level == 1 or typed.get("r_12") == typed.get("r_23"):
        typed["side_1"], typed["side_3"] = "left", "right"
    return typed


THIRD = Question(
    key="third",
    title="A third charge from a stated net force",
    fields=(
        charge("Q1", "Charge 1"),
        charge("Q2", "Charge 2, which feels the net force"),
        distance("r_12", "Distance from charge 1 to charge 2"),
        Choice("side_1", "Side of charge 1 (seen from charge 2)", SIDES),
        force("F_net", "Net force on charge 2 (size)"),
        Choice("way", "Direction of the net force", SIDES, asked=("Q3", "r_23")),
        charge("Q3", "Charge 3"),
        distance("r_23", "Distance from charge 3 to charge 2"),
        Choice(
            "side_3",
            "Side of charge 3 (seen from charge 2)",
            (("right", "to the right"), ("left", "to the left")),
            asked=("Q3",),
        ),
    ),
    unknowns=("Q3", "r_23"),
    plan=plan_third,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name),
    example={
        "Q1": "+4 nC",
        "Q2": "-3 nC",
        "r_12": "15 cm",
        "side_1": "left",
        "F_net": "9 uN",
        "way": "right",
        "Q3": "",
        "r_23": "20 cm",
        "side_3": "right",
    },
    draws={
        "Q1": Draw((3, 4, 5, 6, -2, -4, -6), "nC"),
        "Q2": Draw((2, 3, 5, -3, -4), "nC", harder=(2.5, -3.6)),
        "Q3": Draw((4, 6, 8, -5, -9), "nC"),
        "r_12": Draw((10, 15, 20, 25, 30), "cm"),
        "r_23": Draw((12, 18, 24, 40), "cm"),
        "F_net": Draw((1, 2, 4, 9), "µN", harder=(1.6, 3.5, 0)),
        "way": Draw(("left", "right")),
        "side_1": Draw(("left", "right")),
        "side_3": Draw(("right", "left")),
    },
    adjust=practise_third,
)
