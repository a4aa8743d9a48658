"""The field of one charge, and what a field does to a charge, an electron or a proton placed in it.

E = kQ/r² with the size of the source charge Q; F = qE with the size of the charge q placed
there; a = F/m with the masses of the data sheet.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Arrow, Charge, Figure, On, Segment, Sphere, polar, spheres_on_line
from calc.model.answers import Direction, Point
from calc.model.questions import Check, Choice, Data, Draw, Input, Mistake, Part, Plan, Question, Refusal, Step, Values
from calc.model.relations import Towards
from calc.topics.electric_field.laws import PER_CHARGE, SOURCE_FIELD, force_step, step
from calc.topics.electric_field.shared import (
    AWAY,
    DEFINE,
    FIELD,
    FOUR,
    OPPOSITE,
    TEST_CHARGE,
    TURNED,
    field,
    follows,
    in_air,
    one_of,
    pattern,
    pattern_points,
    placed,
    pointing,
    refuse_idle,
    refuse_zero,
    why_direction,
)
from calc.topics.shared.electrostatics import charge, distance, sign_of_charge

# --- one source charge --------------------------------------------------------------------------------------

SOURCE_ASK = {
    "E": "Calculate the electric field at P.",
    "Q": "Calculate the charge that makes the field.",
    "r": "Calculate how far P is from the charge.",
}


def plan_charge(data: Data) -> Plan:
    refuse_zero(data, "Q")
    refuse_idle(data)
    asked = data.asked
    sign = source_sign(data)
    wrong: tuple[Mistake, ...] = ()
    if asked == "E" and data.has("q"):
        wrong += (
            Mistake(
                "test-charge", "E", "k*abs(q)/r^2", "E belongs to the source: put in Q, not the charge placed at P."
            ),
        )
    where: Direction | None = None
    if sign and asked != "r":
        where = pointing(sign) if asked == "E" else sign_of_charge(sign)
    find = step(SOURCE_FIELD, asked, wrong, direction=where)
    parts = [DEFINE, Part("find", "calculate", SOURCE_ASK[asked], (find,))]
    if sign:
        parts.append(why_direction(sign))
        parts.append(
            Part(
                "pattern",
                "draw",
                "Draw the field around the charge.",
                points=pattern_points(sign),
                figure=lambda v: pattern([("Q", sign * abs(v["Q"]), 0.0, 0.0)]),
            )
        )
    if data.has("q"):
        way = None
        if sign:
            way = one_of("away" if sign * data.sign("q") > 0 else "towards", AWAY)
        parts.append(
            Part(
                "force",
                "calculate",
                f"A charge of {data.said['q']} is placed at P. Calculate the electrostatic force on it.",
                (placed_force(data, way),),
            )
        )
    check = (
        Check(
            "Compare with 1 nC at 1 m, whose field is k × 10⁻⁹ newtons per coulomb",
            "E = k*10^-9*(Q/10^-9)*(1/r)^2",
            "The charge scales the field in step; the distance scales it by the square, downwards.",
            sizes=("Q",),
        )
        if asked == "E"
        else Check("Put the answer back: the field must come out as given", "k*Q/r^2 = E", sizes=("Q",))
    )
    plan = Plan(
        story=story_charge(data, sign),
        parts=tuple(parts),
        values=dict(data.values),
        scene=lambda v: point_scene(v, sign),
        checks=(check,),
        notes=(
            () if sign else ("Only the size follows: say which way the field points to learn the sign of the charge.",)
        ),
    )
    return in_air(plan, data, "E")


def source_sign(data: Data) -> int:
    """The sign of the source; 0 when it is asked and nothing tells it."""
    if data.asked == "Q":
        return {"away": 1, "towards": -1}.get(data.choices["pointing"], 0)
    return data.sign("Q")


def story_charge(data: Data, sign: int) -> str:
    body = data.pick(
        "A small charged sphere stands on an insulating stem.",
        "A charged bead hangs still on a nylon thread.",
        "A point charge is fixed in place.",
    )
    facts = [body]
    if data.has("Q"):
        facts.append(f"Its charge is {data.said['Q']}.")
    if data.has("r"):
        facts.append(f"P is a point {data.said['r']} from its centre.")
    if data.has("E"):
        way = {1: " away from it", -1: " towards it"}[sign] if sign else ""
        facts.append(f"At {'P' if data.has('r') else 'a point P'} the field{way} is {data.said['E']}.")
    return " ".join(facts)


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


def placed_force(
    data: Data, way: Direction | Towards | None, name: str = "E", charge_name: str = "q", makes: str = "F"
) -> Step:
    """F = qE on a charge placed where the field is ``name``; ``way`` is the force's direction."""
    negative = data.sign(charge_name) < 0
    return force_step(
        name,
        charge_name,
        makes,
        follows_field(makes, f"{charge_name}*{name}", negative),
        direction=way,
        what="Find the force from the field",
        why="q is the charge that feels the field, not the one that makes it. " + along_or_against(negative),
        plain="The field says how hard one coulomb is pushed. Multiply by how many coulombs there are.",
    )


def along_or_against(negative: bool) -> str:
    if negative:
        return "The charge is negative: the force is opposite to the field."
    return "The charge is positive: the force has the direction of the field."


def follows_field(at: str, right: str, negative: bool) -> tuple[Mistake, ...]:
    """A negative charge taken to follow the field: the size stays right."""
    if not negative:
        return ()
    say = "Negative: opposite to E."
    return (Mistake("follows-field", at, right, say, "only the direction differs", turns=True),)


CHARGE = Question(
    key="charge",
    title="The field of one charge",
    fields=(
        field("E", "Electric field at P (size)"),
        charge("Q", "Charge that makes the field"),
        distance("r", "Distance from the charge to P"),
        Choice("pointing", "The field at P points", (("unsaid", "not said"), *AWAY), quiet=("unsaid",), asked=("Q",)),
        placed("Charge placed at P, if any", optional=True),
    ),
    unknowns=("E", "Q", "r"),
    plan=plan_charge,
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

FORCE_ASK = {
    "E": "Calculate the electric field where the charge is.",
    "F": "Calculate the electrostatic force on the charge.",
    "q": "Calculate the charge.",
}


def plan_force(data: Data) -> Plan:
    asked = data.asked
    if data.has("q") and data.values["q"] == 0:
        raise Refusal("q", "A zero charge feels no force, so this cannot be found. Type a charge that is not zero.")
    along, pushed, sign = ways(data)
    shown = {"E": one_of(along, FOUR), "F": one_of(pushed, FOUR), "q": sign_of_charge(sign)}
    why = "Sizes go into the formula. " + along_or_against(sign < 0)
    turned = {"E": follows_field("E", "F/q", sign < 0), "F": follows_field("F", "q*E", sign < 0), "q": ()}[asked]
    if asked == "F":
        find = force_step("E", "q", "F", turned, direction=shown[asked], why=why)
    else:
        find = step(PER_CHARGE, asked, turned, direction=shown[asked], why=why)
    kind, way = ("negative", "opposite to that of") if sign < 0 else ("positive", "that of")
    words = dict(FOUR)
    reasons = {
        "F": f"so the force on it points {words[pushed]}",
        "E": f"so the field points {words[along]}",
        "q": f"so the charge is {kind}",
    }
    first = (
        f"The field points {words[along]} and the force {words[pushed]}."
        if asked == "q"
        else f"The charge is {kind}: the direction of the force on it is {way} the field."
    )
    plan = Plan(
        story=story_force(data, along, pushed),
        parts=(
            DEFINE,
            Part("find", "calculate", FORCE_ASK[asked], (find,)),
            Part(
                "direction",
                "explain",
                "Explain the sign of the charge." if asked == "q" else "Explain the direction.",
                points=(
                    Point(first, 1),
                    Point(
                        f"A positive charge is pushed along the field, a negative one against it, {reasons[asked]}.",
                        1,
                        ("against",),
                    ),
                ),
            ),
        ),
        values=dict(data.values),
        scene=lambda v: force_scene(v, along, pushed, sign),
        checks=(
            (
                Check("Put the answer back: force per charge must give the field", "F/q = E", sizes=("q",))
                if asked != "E"
                else Check("Multiply back: field times charge must give the force", "q*E = F", sizes=("q",))
            ),
        ),
    )
    return in_air(plan, data, "E")


def ways(data: Data) -> tuple[str, str, int]:
    """Which way the field points, which way the force, and the sign of the charge."""
    if data.asked == "F":
        sign = data.sign("q")
        return data.choices["along"], follows(data.choices["along"], sign), sign
    if data.asked == "E":
        sign = data.sign("q")
        return follows(data.choices["pushed"], sign), data.choices["pushed"], sign
    along, pushed = data.choices["along"], data.choices["pushed"]
    if pushed not in (along, OPPOSITE[along]):
        raise Refusal(
            "pushed", "The force on a charge points along the field or exactly against it. Choose one of these two."
        )
    return along, pushed, 1 if along == pushed else -1


def story_force(data: Data, along: str, pushed: str) -> str:
    words = dict(FOUR)
    facts = [
        (
            f"A charge of {data.said['q']} is placed in an electric field."
            if data.has("q")
            else "A small charged body is placed in an electric field."
        )
    ]
    if data.has("E"):
        facts.append(f"The field there is {data.said['E']} {words[along]}.")
    if data.has("F"):
        facts.append(f"The electrostatic force on it is {data.said['F']} {words[pushed]}.")
    return " ".join(facts)


def force_scene(v: Values, along: str, pushed: str, sign: int) -> Figure:
    """The charge as a sphere, the force on it, and the field beside it."""
    across = TURNED[along] + 90.0
    lanes = [polar((0.0, 0.0), off, across) for off in (-2.4, 2.4)]
    lines = [
        Segment(polar(p, -4.5, TURNED[along]), polar(p, 4.5, TURNED[along]), "fieldline", "E" if i else "", arrow=True)
        for i, p in enumerate(lanes)
    ]
    start = polar((0.0, 0.0), 0.65, TURNED[pushed])
    arrow = Arrow(start, polar(start, 3.2, TURNED[pushed]), "F")
    words = dict(FOUR)
    return Figure(
        "A charge in an electric field",
        f"The field E points {words[along]}; the force F on the {'negative' if sign < 0 else 'positive'} charge points"
        f" {words[pushed]}.",
        (*lines, Sphere((0.0, 0.0), 0.65, "-" if sign < 0 else "+", "q"), arrow),
        unit=1.0,
    )


FORCE = Question(
    key="force",
    title="A charge placed in a field",
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
    plan=plan_force,
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
