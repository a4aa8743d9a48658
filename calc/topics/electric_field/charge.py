"""The field of one charge, and what a field does to a charge placed in it.

E = kQ/r² with the size of the source charge Q; F = qE with the size of the charge q placed there.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Arrow, Charge, Figure, On, Segment, Sphere, polar, spheres_on_line
from calc.figures.figure import Tells
from calc.model.directions import AWAY_TOWARDS, FOUR_WAYS, SIGN_OF_CHARGE
from calc.model.questions import Check, Choice, Data, Draw, Input, Mistake, Part, Refusal, Step, Values
from calc.model.relations import Towards
from calc.topics.electric_field.laws import PER_CHARGE, SOURCE_FIELD, along_or_against, follows_field, force_step
from calc.topics.electric_field.shared import (
    DEFINE,
    FIELD,
    FOUR,
    TEST_CHARGE,
    TURNED,
    air,
    by_value,
    field,
    follows,
    memo,
    pattern,
    pattern_part,
    placed,
    refuse_idle,
    refuse_zero,
    why_direction,
    words_of,
)
from calc.topics.shared.electrostatics import charge, distance
from calc.working.solving import Situation, question

# --- one source charge --------------------------------------------------------------------------------------

OF_SOURCE = Mistake(
    "test-charge",
    "E",
    "k*abs(q)/r^2",
    "You put in {q}, the charge placed at P. The field {E} belongs to its source, so use {Q}.",
)


def one_charge(data: Data) -> Situation:
    refuse_zero(data, "Q")
    refuse_idle(data)
    sign = source_sign(data)
    law = replace(
        SOURCE_FIELD,
        directions={
            "E": by_value(AWAY_TOWARDS, "away", "Q"),
            "Q": by_value(SIGN_OF_CHARGE, "positive", "Q", sign=sign),
        },
        mistakes=(*SOURCE_FIELD.mistakes, OF_SOURCE),
    )
    compared = Check(
        "Compare with 1 nC at 1 m, whose field is k × 10⁻⁹ newtons per coulomb",
        "E = k*10^-9*(Q/10^-9)*(1/r)^2",
        "The charge scales the field in step; the distance scales it by the square, downwards.",
        sizes=("Q",),
    )
    back = Check("Put the answer back: the field must come out as given", "k*Q/r^2 = E", sizes=("Q",))
    way = {1: " away from it", -1: " towards it"}.get(sign, "")
    return Situation(
        relations=(law,),
        openings=(
            "A small charged sphere stands on an insulating stem.",
            "A charged bead hangs still on a nylon thread.",
            "A point charge is fixed in place.",
        ),
        tell={
            "Q": "Its charge is {}.",
            "r": "P is a point {} from its centre.",
            "E": f"At {'P' if data.has('r') else 'a point P'} the field{way} is {{}}.",
        },
        ask={
            "E": "Calculate the electric field at P.",
            "Q": "Calculate the charge that makes the field.",
            "r": "Calculate how far P is from the charge.",
        },
        stated=(DEFINE,),
        later=lambda data, _: (*(known_source(sign) if sign else ()), *placed_at_p(data, sign)),
        scene=lambda v: point_scene(v, sign),
        proofs=lambda _: (compared if data.asked == "E" else back,),
        warn=lambda v: air(v, "E"),
        notes=(
            () if sign else ("Only the size follows: say which way the field points to learn the sign of the charge.",)
        ),
    )


def known_source(sign: int) -> tuple[Part, ...]:
    """The direction explained, and the lines drawn, of a source whose sign is known."""
    return (
        why_direction(sign),
        pattern_part("the charge", lambda v: pattern([("Q", sign * abs(v["Q"]), 0.0, 0.0)]), sign),
    )


def placed_at_p(data: Data, sign: int) -> tuple[Part, ...]:
    """F = qE on a charge placed at P, if one is given."""
    way = by_value(AWAY_TOWARDS, "away", "E", "q", sign=sign)
    return (force_at_p(data, placed_force(data, way)),) if data.has("q") else ()


def force_at_p(data: Data, step: Step) -> Part:
    ask = f"A charge of {data.said['q']} is placed at P. Calculate the electrostatic force on it."
    return Part("force", "calculate", ask, (step,))


def source_sign(data: Data) -> int:
    """The sign of the source; 0 when it is asked and nothing tells it."""
    if data.asked == "Q":
        return {"away": 1, "towards": -1}.get(data.choices["pointing"], 0)
    return data.sign("Q")


def point_scene(v: Values, sign: int) -> Figure:
    """The source on the left, P on the right, the field at P if its direction is known."""
    arrows = [On(1, "E", v["E"], sign > 0, "field")] if sign else []
    return spheres_on_line(
        [Charge("Q", sign * abs(v["Q"]), 0.0)],
        points=[("P", v["r"])],
        forces=arrows,
        distances=[(0, 1, "r")],
        title="A charge and a point P in its field",
    )


def placed_force(data: Data, way: Towards, name: str = "E") -> Step:
    """F = qE on a charge placed where the field is ``name``; ``way`` is the force's direction."""
    negative = data.sign("q") < 0
    return force_step(
        name,
        "q",
        "F",
        follows_field("F", f"q*{name}", negative),
        direction=way,
        what="Find the force from the field",
        why="q is the charge that feels the field, not the one that makes it. " + along_or_against(negative),
        plain="The field says how hard one coulomb is pushed. Multiply by how many coulombs there are.",
    )


CHARGE = question(
    "charge",
    "The field of one charge",
    one_charge,
    fields=(
        field("E", "Electric field at P (size)"),
        charge("Q", "Charge that makes the field"),
        distance("r", "Distance from the charge to P"),
        Choice(
            "pointing",
            "The field at P points",
            (("unsaid", "not said"), *AWAY_TOWARDS.options),
            quiet=("unsaid",),
            asked=("Q",),
        ),
        placed("Charge placed at P, if any", optional=True),
    ),
    unknowns=("E", "Q", "r"),
    any_givens=False,
    constants=("k",),
    laws=(FIELD.name, TEST_CHARGE.name),
    example={"E": "", "Q": "-6 nC", "r": "30 cm", "pointing": "unsaid", "q": ""},
    draws={
        "Q": Draw((2, 4, 5, 8, -3, -6, -9), "nC", harder=(1.5, -2.4, 7.2, -0.85)),
        "r": Draw((5, 10, 20, 30, 40, 60), "cm", harder=(12, 25, 45, 75)),
        "E": Draw((200, 450, 900, 1500, 3600), "N/C", harder=(750, 2400, 5200)),
        "pointing": Draw(("away", "towards")),
        "q": Draw(("",), harder=("", "2 nC", "-3 nC", "-1,6 x 10^-19 C")),
    },
)

# --- a charge placed in a field -------------------------------------------------------------------------------


def placed_charge(data: Data) -> Situation:
    if data.has("q") and data.values["q"] == 0:
        raise Refusal("q", "A zero charge feels no force, so this cannot be found. Type a charge that is not zero.")
    asked = data.asked
    along, pushed, sign = ways(data)
    negative = sign < 0
    why = f"Sizes go into the formula. {along_or_against(negative)}"
    law = replace(
        PER_CHARGE,
        why=why,
        directions={
            "E": by_value(FOUR_WAYS, pushed, "F", "q"),
            "q": by_value(SIGN_OF_CHARGE, "positive", "q", sign=sign),
        },
        mistakes=(*PER_CHARGE.mistakes, *follows_field("E", "F/q", negative)),
        by_hand={
            "F": force_step(
                "E",
                "q",
                "F",
                follows_field("F", "q*E", negative),
                why=why,
                direction=by_value(FOUR_WAYS, along, "E", "q"),
            )
        },
    )
    back = Check("Put the answer back: force per charge must give the field", "F/q = E", sizes=("q",))
    multiplied = Check("Multiply back: field times charge must give the force", "q*E = F", sizes=("q",))
    return Situation(
        relations=(law,),
        openings=(opening(data),),
        tell={
            "E": f"The field there is {{}} {words_of(along)}.",
            "F": f"The electrostatic force on it is {{}} {words_of(pushed)}.",
        },
        ask={
            "E": "Calculate the electric field where the charge is.",
            "F": "Calculate the electrostatic force on the charge.",
            "q": "Calculate the charge.",
        },
        stated=(DEFINE,),
        later=lambda *_: (explained(asked, along, pushed, sign),),
        scene=lambda v: force_scene(v, along, pushed, sign),
        proofs=lambda _: (multiplied if asked == "E" else back,),
        warn=lambda v: air(v, "E"),
    )


def opening(data: Data) -> str:
    """What is in the field, in one of several wordings."""
    said = data.said["q"] if data.has("q") else ""
    return data.pick(
        f"{f'A charge of {said}' if said else 'A small charged body'} is placed in an electric field.",
        later=(
            (
                f"A bead {f'with a charge of {said}' if said else 'with a charge'} is held at a point of an"
                " electric field."
            ),
            (
                "To explore an electric field a small body on a thin stem is brought to one point"
                f" of it. {f'It carries {said}.' if said else 'Its charge is not known.'}"
            ),
        ),
    )


def explained(asked: str, along: str, pushed: str, sign: int) -> Part:
    """Why the field, the force or the sign of the charge is as found."""
    kind, way = ("negative", "opposite to that of") if sign < 0 else ("positive", "that of")
    reasons = {
        "F": f"so the force on it points {words_of(pushed)}",
        "E": f"so the field points {words_of(along)}",
        "q": f"so the charge is {kind}",
    }
    first = (
        f"The field points {words_of(along)} and the force {words_of(pushed)}."
        if asked == "q"
        else f"The charge is {kind}: the direction of the force on it is {way} the field."
    )
    second = f"A positive charge is pushed along the field, a negative one against it, {reasons[asked]}."
    ask = "Explain the sign of the charge." if asked == "q" else "Explain the direction."
    return memo("direction", "explain", ask, (first,), (second, "against"))


def ways(data: Data) -> tuple[str, str, int]:
    """Which way the field points, which way the force, and the sign of the charge."""
    along, pushed = data.choices["along"], data.choices["pushed"]
    if data.asked == "F":
        return along, follows(along, data.sign("q")), data.sign("q")
    if data.asked == "E":
        return follows(pushed, data.sign("q")), pushed, data.sign("q")
    if pushed not in (along, FOUR_WAYS.opposite(along)):
        raise Refusal(
            "pushed", "The force on a charge points along the field or exactly against it. Choose one of these two."
        )
    return along, pushed, 1 if along == pushed else -1


def force_scene(v: Values, along: str, pushed: str, sign: int) -> Figure:
    """The charge as a sphere, the force on it, and the field beside it."""
    across = TURNED[along] + 90.0
    lanes = [polar((0.0, 0.0), off, across) for off in (-2.4, 2.4)]
    lines = [
        Segment(
            polar(p, -4.5, TURNED[along]),
            polar(p, 4.5, TURNED[along]),
            "fieldline",
            "E" if i else "",
            arrow=True,
            shows=("E",),
        )
        for i, p in enumerate(lanes)
    ]
    start = polar((0.0, 0.0), 0.65, TURNED[pushed])
    arrow = Arrow(start, polar(start, 3.2, TURNED[pushed]), "F")
    tells = (
        Tells(f"The field E points {words_of(along)}.", ("E",)),
        Tells(f"The charge q is {'negative' if sign < 0 else 'positive'}.", ("q",)),
        Tells(f"The force F on it points {words_of(pushed)}.", ("F",), "It is in the field."),
    )
    return Figure(
        "A charge in an electric field",
        " ".join(tell.sentence for tell in tells),
        (*lines, Sphere((0.0, 0.0), 0.65, "-" if sign < 0 else "+", "q"), arrow),
        unit=1.0,
        tells=tells,
    )


FORCE = question(
    "force",
    "A charge placed in a field",
    placed_charge,
    fields=(
        field(),
        Input(
            "F",
            "Electrostatic force on the charge (size)",
            "N",
            1e-20,
            1e3,
            refusal="Enter the size of the force, greater than zero; choose the direction separately.",
        ),
        placed("Charge placed in the field"),
        Choice("along", "The field points", FOUR, asked=("F", "q")),
        Choice("pushed", "The force on the charge points", FOUR, asked=("E", "q")),
    ),
    unknowns=("E", "F", "q"),
    any_givens=False,
    laws=(FIELD.name, TEST_CHARGE.name),
    example={"E": "4 500 N/C", "F": "", "q": "-2 nC", "along": "right", "pushed": "right"},
    draws={
        "E": Draw((250, 400, 1500, 3000, 4500), "N/C", harder=("2,4 x 10^4 N/C", "7,5 x 10^5 N/C")),
        "F": Draw((2, 4, 9, 12), "µN", harder=(0.36, 7.5)),
        "q": Draw((2, 4, 5, -3, -6), "nC", harder=(-1.5, 2.4, -0.8)),
        "along": Draw(("right", "left")),
        "pushed": Draw(("right", "left")),
    },
)
