"""One more charge on a line, from a stated net force: a third charge or its distance, and a sphere exchanged on a rail.

F_net = F₃₂ ± F₁₂ gives the signed contribution of charge 3; Coulomb's law turned round gives
the rest, and the direction tells its sign or its side.
Marks: charge from electrons 3, one force 3, drawing 1 an arrow, net force 4, unknown charge 5; common practice,
no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from calc.figures import Figure, Force, tail_to_head
from calc.figures.charges import spheres_on_line
from calc.figures.figure import Tells
from calc.model.answers import Point
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import Check, Choice, Data, Draw, Input, Mistake, Part, Plan, Question, Refusal, Step, Values
from calc.model.relations import Relation
from calc.topics.several_charges.line import net_parts, pull_part, side_pull
from calc.topics.several_charges.shared import (
    COINCIDE,
    NET_USED,
    NOISE,
    PLAIN_NET,
    SIDES,
    SUPERPOSITION,
    Body,
    added,
    apart,
    charge,
    explain,
    like,
    pair,
    pull_ask,
    pull_on_line,
    put_back,
    side,
    sideways,
    size,
    size_check,
    slip,
    way_of,
)
from calc.topics.shared.electrostatics import (
    COULOMB,
    EACH_BRINGS,
    ONLY_ONCE,
    QUANTISATION,
    refuse_zero_charge,
    sign_of_charge,
    state,
)
from calc.working.declaring import boxes


def positive_if(outward: float, other: float) -> float:
    """A charge of size 1 that pulls (outward > 0) or pushes a charge of the sign of ``other``."""
    return -way_of(other) if outward > 0 else way_of(other)


def stated_way(data: Data) -> int:
    """+1 where the stated net force is to the right."""
    return 1 if data.choices["way"] == "right" else -1


def wanted(data: Data, first: Body, on: Body, net: str, nothing_left: str) -> float:
    """The force the further charge must exert, right positive; refuses data that leave it nothing to do."""
    has = pull_on_line(data, first, on)
    needed = stated_way(data) * data.values[net] - has
    if abs(needed) <= NOISE * abs(has):
        raise Refusal(net, nothing_left)
    return needed


# --- a third charge or its distance ---------------------------------------------------------------------------------

ALREADY = (
    "Charge 1 alone already gives this net force, so there is nothing left for charge 3 to do. Change the net force."
)


def plan_third(data: Data) -> Plan:
    refuse_zero_charge(data, "Q1", "Q2", "Q3")
    finding_charge = data.asked == "Q3"
    values, positive = data.values, stated_way(data)
    on = Body("2", values["Q2"])
    first = Body("1", values["Q1"], values["r_12"] * (1 if data.choices["side_1"] == "right" else -1))
    needed = wanted(data, first, on, "F_net", ALREADY)
    if finding_charge:
        place = 1 if data.choices["side_3"] == "right" else -1
        third = Body("3", positive_if(needed * place, values["Q2"]), place * values["r_23"])
    else:
        place = way_of(needed) * (-1 if values["Q3"] * values["Q2"] > 0 else 1)
        k = data.settings.constant("k")
        third = Body("3", values["Q3"], place * (k * abs(values["Q3"] * values["Q2"] / needed)) ** 0.5)
    if abs(third.x - first.x) <= NOISE * abs(first.x):
        raise Refusal("r_23" if finding_charge else "F_net", COINCIDE)
    ask = (
        "Calculate the charge that charge 3 must carry, with its sign."
        if finding_charge
        else f"Calculate the distance of charge 3 from charge 2, to the {'right' if place > 0 else 'left'}."
    )
    arrows = (("F₁₂", sideways(first, on)), ("F₃₂", needed))
    return Plan(
        story=story_third(data),
        parts=(
            state(SUPERPOSITION),
            Part("force-1", "calculate", pull_ask(first, on), (side_pull(first, on),)),
            *(() if finding_charge else (side_part(on, third, needed),)),
            Part("find", "calculate", ask, find_third(data, first, on, place, positive)),
            Part(
                "draw",
                "draw",
                "Draw the two forces on charge 2 and their sum.",
                points=tuple(
                    Point(f"Arrow {name} points {side(way).words}, with head and label.") for name, way in arrows
                ),
                figure=lambda v: third_figure(first, on, positive, v),
            ),
        ),
        values=dict(values),
        scene=lambda _: third_scene(data, (first, on, third)),
        checks=(
            put_back(
                "Put the answer back: the net force must come out as stated",
                "F_net",
                [
                    (sideways(first, on) * positive, "k*Q1*Q2/r_12^2"),
                    (way_of(needed) * positive, "k*Q3*Q2/r_23^2"),
                ],
                ("Q1", "Q2", "Q3"),
            ),
        ),
    )


def find_third(data: Data, first: Body, on: Body, place: int, positive: int) -> tuple[Step, Step]:
    """The signed contribution of charge 3, then its charge or its distance."""
    told = data.values["F_net"] != 0
    taken = "That is the direction of the stated net force."
    taken = taken if told else "With no net force either direction may be positive."
    contribution = added(
        "F_net",
        "F_32",
        "F_12",
        ways=(sideways(first, on), positive),
        what=f"Superposition: what charge 3 has to add, taking {side(positive).words} as positive",
        why=f"{taken} A minus sign in the result means the opposite direction.",
        plain="The stated total is what charge 1 does plus what charge 3 does. Take charge 1's share away from it.",
        told=told,
        wrong="F₁₂ was taken in the opposite direction",
    )
    other = "You used {r_12}, the distance of charge 1. Measure from charge 3 to charge 2: use {r_23}."
    mistakes: tuple[Mistake, ...] = (
        slip("not-squared", "Q3", "F_32*r_23/(k*Q2)", say=ONLY_ONCE, r="r_23"),
        slip("wrong-pair", "Q3", "F_32*r_12^2/(k*Q2)", say=other),
        slip("root-omitted", "r_23", "k*Q3*Q2/F_32", r="r_23"),
    )
    if told:
        share = NET_USED % "Charge 3"
        mistakes += (
            slip("net-used", "Q3", "F_net*r_23^2/(k*Q2)", say=share, net="F_net", share="F_32"),
            slip("net-used", "r_23", "sqrt(k*Q3*Q2/F_net)", say=share, net="F_net", share="F_32"),
        )
    options = tuple((key, f"{words} of charge 2") for key, words in SIDES)
    where = side(place, options)
    law = pair(
        "F_32",
        "Q3",
        "Q2",
        "r_23",
        why=(
            f"Charge 3 is {side(place).words} of charge 2. A force towards it is attraction (unlike signs), away from"
            " it repulsion (like signs)."
        ),
        mistakes=mistakes,
        directions={
            "Q3": lambda v: sign_of_charge(positive_if(v["F_32"] * positive * place, v["Q2"])),
            "r_23": lambda v: where,
        },
    )
    if data.asked == "r_23":
        law = replace(law, what="Coulomb's law for the distance", why="A distance is positive: take the positive root.")
    return contribution, law.step(data.asked)


def side_part(on: Body, third: Body, needed: float) -> Part:
    """Both regions tried: on which side charge 3 must stand."""
    points = []
    for place in (-1, 1):
        way = -place if like(third, on) else place
        fits = "which is what is needed" if way == way_of(needed) else "the wrong way: no place there"
        acts, there = "repulsion" if like(third, on) else "attraction", side(place).words
        would = f"{there[0].upper()}{there[1:]} of charge 2, charge 3 would give a force {side(way).words}"
        points.append((f"{would} ({acts}), {fits}.",))
    need = f"Charge 3 must exert a force {side(needed).words} on charge 2."
    return explain("side", f"{need} Explain on which side of charge 2 it must stand.", *points)


def third_figure(first: Body, on: Body, positive: int, values: Values) -> Figure:
    ways = (("F_12", sideways(first, on)), ("F_32", values["F_32"] * positive))
    forces = [Force(f"F_{{{name[2:]}}}", abs(values[name]), 0.0 if way > 0 else 180.0) for name, way in ways]
    return tail_to_head(forces, title="Sum of the forces on charge 2")


def story_third(data: Data) -> str:
    said = data.said
    side_1 = dict(SIDES)[data.choices["side_1"]]
    opening = data.pick(
        "Charged corks are pinned along a straight groove in a board.",
        "Charged balls stand on plastic pegs along a straight track.",
        later=("Three small charged spheres lie in a straight channel of plastic, seen from the side.",),
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
        [b.drawn for b in (first, on, third)],
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
    **boxes(
        charge("Q1", "Charge 1", "+4 nC; 3 4 5 6 -2 -4 -6"),
        charge("Q2", "Charge 2, which feels the net force", "-3 nC; 2 3 5 -3 -4; 2,5 -3,6"),
        apart("r_12", "Distance from charge 1 to charge 2", "15 cm; 10 15 20 25 30"),
        Choice("side_1", "Side of charge 1 (seen from charge 2)", SIDES),
        size("F_net", "Net force on charge 2 (size)", "9 uN; 1 2 4 9 µN; 1,6 3,5 0"),
        Choice("way", "Direction of the net force", SIDES, asked=("Q3", "r_23")),
        charge("Q3", "Charge 3", "?; 4 6 8 -5 -9"),
        apart("r_23", "Distance from charge 3 to charge 2", "20 cm; 12 18 24 40"),
        Choice("side_3", "Side of charge 3 (seen from charge 2)", LEFT_RIGHT.options, asked=("Q3",)),
        draws={"way": Draw(("left", "right")), "side_1": Draw(("left", "right")), "side_3": Draw(("right", "left"))},
        example={"way": "right"},
    ),
    unknowns=("Q3", "r_23"),
    plan=plan_third,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name),
    adjust=practise_third,
)


# --- three spheres on a rail ----------------------------------------------------------------------------------------

NO_CHARGE_LEFT = (
    "Sphere A alone already gives this net force, so sphere D would carry no charge. Change the new net force."
)


def plan_rail(data: Data) -> Plan:
    refuse_zero_charge(data, "Q_B", "Q_C")
    values, said = data.values, data.said
    first = Body("A", data.settings.constant("e") * values["n"], -values["r_AB"], kind="sphere")
    on = Body("B", values["Q_B"], kind="sphere")
    last = Body("C", values["Q_C"], values["r_BC"], kind="sphere")
    needed = wanted(data, first, on, "F_D", NO_CHARGE_LEFT)
    far = [("r_BC", "the distance of sphere C was used")] if values["r_AB"] != values["r_BC"] else []
    positive = stated_way(data)
    return Plan(
        story=story_rail(data),
        parts=(
            state(COULOMB),
            Part("charge", "calculate", "Calculate the charge on sphere A, with its sign.", (charge_from_electrons(),)),
            pull_part(first, on, far),
            pull_part(last, on, [("r_AB + r_BC", "the distance from A to C was used")]),
            *net_parts(data, [first, last], on, 1),
            explain(
                "farther",
                "Sphere C stays where it is, but sphere A is moved to twice its distance from B. Explain, without new"
                " numbers, what happens to the force of A on B.",
                (
                    "The force is inversely proportional to the square of the distance.",
                    "inversely proportional to the square",
                ),
                ("Twice the distance gives a quarter of the force; its direction stays the same.", "quarter"),
            ),
            Part(
                "new-charge",
                "calculate",
                "Sphere A is back in its place. Sphere C is exchanged for sphere D at the same place, and the net"
                f" force on B becomes {said['F_D']} {side(positive).words}. Calculate the charge on D, with its sign.",
                new_charge(data, first, on),
            ),
        ),
        values=dict(values),
        scene=lambda _: spheres_on_line(
            [b.drawn for b in (first, on, last)],
            distances=[(0, 1, said["r_AB"]), (1, 2, said["r_BC"])],
            title="Three spheres on a rail",
        ),
        checks=(
            size_check([first, last], on, "Is the size of the net force possible?"),
            Check("Count the electrons of A back", "Q_A/e = n"),
            put_back(
                "With D in place the net force must come out as stated",
                "F_D",
                [
                    (way_of(needed * positive), "k*Q_D*Q_B/r_BC^2"),
                    (sideways(first, on) * positive, "k*Q_A*Q_B/r_AB^2"),
                ],
                ("Q_A", "Q_B"),
            ),
        ),
    )


NUMBER = "You gave the number of electrons as the charge. Each of them brings {e}, so multiply {n} by {e}."


def charge_from_electrons() -> Step:
    return Relation(
        "n = Q_A/e",
        what="Each electron taken away leaves +e behind",
        why="Electrons are negative: a body that has lost some is positive.",
        plain="Multiply the number of electrons taken away by the charge of one of them.",
        units={"Q_A": "C"},
        directions={"Q_A": lambda v: sign_of_charge(1.0)},
        mistakes=(
            slip("divided", "Q_A", "n/e", say=EACH_BRINGS % "n} by {e"),
            slip("number-as-charge", "Q_A", "n", say=NUMBER),
        ),
    ).step("Q_A")


def new_charge(data: Data, first: Body, on: Body) -> tuple[Step, Step]:
    """What D must add, then its charge."""
    positive, told = stated_way(data), data.values["F_D"] != 0
    add = added(
        "F_D",
        "F_DB",
        "F_AB",
        ways=(sideways(first, on), positive),
        what=f"Superposition again, taking {side(positive).words} as positive",
        why="The force of A on B is the same as before. A minus sign in the result means the opposite direction.",
        plain=PLAIN_NET,
        told=told,
        wrong="F_AB was taken in the opposite direction",
    )
    law = pair(
        "F_DB",
        "Q_D",
        "Q_B",
        "r_BC",
        why=(
            "D is to the right of B. A force on B to the right is attraction (unlike signs), to the left repulsion"
            " (like signs)."
        ),
        directions={"Q_D": lambda v: sign_of_charge(positive_if(v["F_DB"] * positive, v["Q_B"]))},
        mistakes=(
            slip("not-squared", "Q_D", "F_DB*r_BC/(k*Q_B)", say=ONLY_ONCE, r="r_BC"),
            *(
                [slip("net-used", "Q_D", "F_D*r_BC^2/(k*Q_B)", say=NET_USED % "D", net="F_D", share="F_DB")]
                if told
                else []
            ),
        ),
    )
    return add, law.step("Q_D")


def story_rail(data: Data) -> str:
    said = data.said
    return data.pick(
        "For an open day three small metal spheres, A, B and C, are clamped in a row on a plastic rail, A on the left"
        f" and C on the right. {said['n']} electrons have been taken off A. B carries {said['Q_B']} and C"
        f" {said['Q_C']}. The centres of A and B are {said['r_AB']} apart, those of B and C {said['r_BC']}.",
        f"Three charged spheres stand on glass stems in a straight row: A, then B {said['r_AB']} to its right, then C"
        f" {said['r_BC']} farther right. A has lost {said['n']} electrons; B carries {said['Q_B']} and C carries"
        f" {said['Q_C']}.",
        later=(
            (
                "A row of three small metal balls is clipped to a plastic rail. From left to right they are A, which"
                f" gave away {said['n']} electrons, B with {said['Q_B']} and C with {said['Q_C']}. It is {said['r_AB']}"
                f" from the centre of A to that of B, and {said['r_BC']} from there to the centre of C."
            ),
        ),
    )


RAIL = Question(
    key="rail",
    title="Three spheres on a rail",
    **boxes(
        Input(
            "n",
            "Electrons taken off sphere A",
            "",
            1e6,
            1e14,
            whole=True,
            refusal="The number of electrons must be greater than zero.",
        ),
        charge("Q_B", "Charge on sphere B", "-6 nC; 4 6 -3 -5; 2,5 -6,4"),
        charge("Q_C", "Charge on sphere C", "-9 nC; 3 7 -4 -9; 5,6 -8,5"),
        apart("r_AB", "Distance between A and B", "20 cm; 10 15 20 25"),
        apart("r_BC", "Distance between B and C", "30 cm; 12 18 30 40"),
        size("F_D", "New net force on B, with D in place of C (size)", "2,4 uN; 1,5 2,4 3,5 µN"),
        Choice("way", "Direction of the new net force", SIDES),
        draws={
            "n": Draw(("2,5 x 10^10", "5 x 10^10", "7,5 x 10^10"), harder=("3,75 x 10^10", "6,25 x 10^10")),
            "way": Draw(("left", "right")),
        },
        example={"n": "5 x 10^10", "way": "right"},
    ),
    plan=plan_rail,
    constants=("k", "e"),
    laws=(COULOMB.name, QUANTISATION.name, SUPERPOSITION.name),
    scenario=True,
)
