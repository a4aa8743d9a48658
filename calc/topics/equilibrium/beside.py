"""One charged sphere on a thread, beside a charge fixed at its level or in a horizontal uniform field.

tan α = F_E/(mg) and T = mg/cos α at rest; F_E = kQ₁Q₂/r², or F_E = QE with E = V/d between plates; a = T/m
just after the thread is cut: data-sheet equations. Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import atan, cos, pi, tan

from calc.model.answers import Direction, Point
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import Check, Choice, Data, Draw, Input, Mistake, Part, Refusal, Values
from calc.model.relations import Relation, Said
from calc.topics.equilibrium.hung import HALF_ANGLE, PARTS, SAGGING
from calc.topics.equilibrium.practised import practised
from calc.topics.equilibrium.relations import (
    AWAY,
    COUNTED,
    WOULD_CUT,
    coulomb,
    counting,
    cut,
    fixed,
    thread_laws,
    where_known,
)
from calc.topics.equilibrium.shared import (
    ACTING,
    F_E,
    FBD_RULES,
    GROWS,
    LENGTHS,
    SAY_ACTING,
    WHICH,
    apart,
    arrow_points,
    electrons,
    first_acceleration,
    kind,
    mass,
    refuse_uncharged,
    signs,
    tension,
)
from calc.topics.equilibrium.thread_figures import beside_scene, field_scene, thread_draw
from calc.topics.equilibrium.threads import Pair, bad_angle
from calc.topics.shared.electrostatics import (
    COULOMB,
    EQUILIBRIUM,
    SECOND,
    charge,
    kind_of_force,
    refuse_zero_charge,
    sign_of_charge,
)
from calc.working.solving import Situation, question

SCHOOL = {"k": 9e9, "g": 9.8, "e": 1.6e-19}
ANGLE = replace(
    HALF_ANGLE,
    words="Angle of the thread with the vertical",
    help="",
    refusal="Give the angle with the vertical: more than 0° and less than 90°.",
)
ASK = {
    "T": "Calculate the tension in the thread.",
    "F_E": "Calculate the electrostatic force on the sphere.",
    "alpha": "Calculate the angle of the thread with the vertical.",
    "n": "Calculate how many electrons the sphere has too many or too few.",
    "a": "The thread is cut. Calculate the acceleration of the sphere at that instant.",
}
TELL = {
    "m": "Its mass is {}.",
    "alpha": "The thread makes an angle of {} with the vertical.",
    "F_E": "The electrostatic force on the sphere is {}.",
    "T": "The tension in the thread is {}.",
    "a": "Were the thread cut, the sphere would start with an acceleration of {}.",
}


def hanging(data: Data) -> Callable[[str, float | None], None]:
    """Refuses an angle at which no thread hangs."""

    def see(name: str, value: float | None) -> None:
        if name == "alpha" and (value is None or not 0 < value < pi / 2):
            raise Refusal(None, bad_angle(data))

    return see


def one_sphere(
    data: Data, told: Situation, push: int, memo: tuple[Point, ...], after: tuple[str, tuple[Point, ...]]
) -> Situation:
    """What is drawn and asked of one sphere on a thread, whatever pushes it.

    push: +1 where F_E points to the right, −1 to the left, 0 where nothing tells: then nothing is drawn. memo: of
    the free-body diagram. after: what is asked of the motion after the cut, and its points.
    """
    if data.values.get("T") == 0:
        raise Refusal("T", SAGGING)
    ways = told.steps(data)
    ask, points = after

    def drawn(key: str = "draw", cut: bool = False) -> Part:
        return thread_draw(data, ways, push, memo, body="the sphere", key=key, cut=cut)

    def later(_: Data, values: Values) -> tuple[Part, ...]:
        if not push or "a" not in data.asked_names:
            return ()
        return (drawn("draw-cut", True), Part("later", "explain", ask, points=points))

    return replace(
        told,
        stated=(drawn(),) if push else (),
        later=later,
        judge=hanging(data),
        scene=told.scene if push else None,
        notes=(FBD_RULES,) if push else (),
    )


TRIANGLE = Check("The three forces make a right-angled triangle", "sqrt(F_E^2 + (m*g)^2) = T")
FIRST = Check("Work the acceleration from g and the angle", "a = g/cos(alpha)")


# --- beside a fixed charge ----------------------------------------------------------------------------------

NEXT_TO = (
    (
        "A small charged sphere hangs at rest on a light insulating thread. A second charged sphere is fixed to its"
        " left, at the same level."
    ),
    (
        "A charged foam sphere hangs still from a nylon thread. Level with it, on its left, a second charge is fixed on"
        " an insulating stand."
    ),
    (
        "On a light thread a charged sphere hangs beside a fixed charge: the centres of both lie on one level line, the"
        " fixed charge on the left."
    ),
)


def beside(data: Data) -> Situation:
    """What holds beside a fixed charge, as far as the signs tell which way the sphere is pushed."""
    refuse_uncharged(data)
    acting = kind(data)
    if not acting and {"Q1", "Q2", "n"} & set(data.asked_names):
        raise Refusal("acting", SAY_ACTING)
    one, two = signs(data, acting)
    pair = Pair(acting, two=False, equal=False)
    push = kind_of_force(acting) if acting else None
    said = {1: " They repel each other.", -1: " They attract each other.", 0: ""}[acting]
    many = "many" if data.choices["which"] == "excess" else "few"
    told = Situation(
        relations=(*thread_laws(push), WOULD_CUT, coulomb(push, one, two), counting(one), *cut(AWAY)),
        openings=tuple(opening + said for opening in NEXT_TO),
        tell={
            **TELL,
            "Q1": "The hanging sphere carries {}.",
            "n": f"It has {{}} electrons too {many}.",
            "Q2": "The fixed charge is {}.",
            "r": "The distance between the centres is {}.",
        },
        ask=ASK,
        proofs=where_known(
            Check(
                "The whole way back: Coulomb's law with these charges must give the force that the angle needs",
                "k*Q1*Q2/r^2 = m*g*tan(alpha)",
                sizes=("Q1", "Q2"),
            ),
            TRIANGLE,
            FIRST,
            COUNTED,
        ),
        scene=lambda v: beside_scene(v.get("alpha", 0.4), acting, one, two),
    )
    return one_sphere(data, told, acting, pair.arrows(), (GROWS, pair.after()))


def all_beside(base: dict[str, float]) -> dict[str, float]:
    """Every quantity from mass, angle, distance and the fixed charge (SI, radians); the charge Q1 repels."""
    m, alpha, r, q2 = (base[name] for name in ("m", "alpha", "r", "Q2"))
    force = m * SCHOOL["g"] * tan(alpha)
    ties = m * SCHOOL["g"] / cos(alpha)
    q1 = force * r**2 / (SCHOOL["k"] * q2)
    return {**base, "F_E": force, "T": ties, "Q1": q1, "a": ties / m, "n": abs(q1) / SCHOOL["e"]}


def practise_beside(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Just enough data; whether the charges repel is told where a sign is not."""
    text = practised(
        typed,
        random,
        level,
        BESIDE_DRAWS,
        all_beside,
        {
            "Q1": ("m alpha r Q2", "T alpha r Q2"),
            "n": ("m alpha r Q2", "a m r Q2"),
            "Q2": ("m alpha r Q1", "T m r Q1"),
            "r": ("m alpha Q1 Q2", "T alpha Q1 Q2"),
            "m": ("alpha r Q1 Q2", "T alpha"),
            "alpha": ("m r Q1 Q2", "m T"),
            "F_E": ("m alpha", "T m"),
            "T": ("m alpha", "m r Q1 Q2"),
            "a": ("m alpha", "m r Q1 Q2"),
        },
    )
    both = bool(text["Q1"] and text["Q2"])
    text["acting"] = "signs" if both else "repel"
    if level > 1 and not both and text["which"] == "excess":  # one of two, drawn already
        text["acting"] = "attract"
    elif level > 1 and both and text["which"] == "excess":
        minus = not text["Q1"].startswith("-")
        text["Q1"] = f"-{text['Q1']}" if minus else text["Q1"].lstrip("-")
    return dict(text)


BESIDE_DRAWS = {
    "m": Draw((0.5, 0.8, 1, 1.2, 1.5, 2), "g", harder=(0.65, 1.35, 1.8)),
    "alpha": Draw((15, 18, 20, 22, 25, 30), "°", harder=(16.5, 23.5, 33)),
    "r": Draw((6, 8, 9, 10, 12), "cm", harder=(7.5, 9.5, 11.5)),
    "Q2": Draw((40, 60, 75, 90, -50, -70), "nC", harder=(54, 82, -64)),
}
FOUND = {
    "Q1": Draw((30, 60), "nC"),
    "n": Draw((2e11,)),
    "F_E": Draw((3, 5), "mN"),
    "T": Draw((12, 15), "mN"),
    "a": Draw((10.5, 11), "m/s^2"),
}
BESIDE = question(
    "thread-beside-charge",
    "One sphere on a thread beside a fixed charge",
    beside,
    fields=(
        mass(),
        ANGLE,
        charge("Q1", "Charge on the hanging sphere"),
        electrons(),
        charge("Q2", "Charge fixed in place"),
        apart("Distance between the charges"),
        F_E,
        tension("thread"),
        first_acceleration("the thread is cut"),
        ACTING,
        replace(WHICH, quiet=("excess", "lacking")),
        PARTS,
        LENGTHS,
    ),
    example={
        "m": "1,2 g",
        "alpha": "22°",
        "Q2": "+45 nC",
        "r": "8 cm",
        "acting": "repel",
        "which": "lacking",
        "parts": "whole",
        "lengths": "scale",
    },
    asks="Q1",
    constants=("k", "g", "e"),
    laws=(EQUILIBRIUM.name, COULOMB.name, SECOND.name),
    draws={**BESIDE_DRAWS, **FOUND},
    since=2,
    adjust=practise_beside,
)


# --- in a horizontal field ----------------------------------------------------------------------------------

SAY_LEAN = "Say which way the sphere hangs: the sign of its charge follows from it."
OTHER_LEAN = (
    "A positive charge is pushed in the direction of the field, a negative one against it. "
    "Choose “as the sign of its charge says”, or change the sign."
)
SAME = (
    Point("Between the plates the field is uniform, so F_E = QE is the same everywhere.", 1, ("F_E = QE is the same",)),
    Point(
        "The weight is the same too, so the net force and the acceleration stay the same: the sphere moves along a"
        " straight line.",
        1,
        ("stay the same",),
    ),
)
PLATES = Relation(
    "E = V/d",
    "Use the field between parallel plates",
    "Between parallel plates the field is uniform.",
    {"E": "V·m⁻¹", "V": "V", "d": "m"},
    "The same voltage over a smaller gap makes a stronger field: share the volts out over the metres.",
    mistakes=(
        Mistake("multiplied", "E", "V*d", "Per metre: divide."),
        Mistake("divided", "V", "E/d", "E is volts per metre: multiply by the metres."),
        Mistake("upside-down", "d", "E/V", "E is volts per metre: d is the volts divided by E."),
    ),
)
BETWEEN = (
    (
        "Two large upright metal plates make a uniform horizontal field {way} between them. A small charged sphere"
        " hangs there at rest on a light insulating thread."
    ),
    (
        "A charged foil-covered sphere hangs still from a nylon thread between two upright charged plates; their"
        " uniform field points {way}."
    ),
    (
        "Between two parallel upright plates, whose field is uniform and points {way}, a charged sphere hangs at rest"
        " on a thin silk thread."
    ),
)


def push_of(data: Data) -> int:
    """+1 where F_E points with the field, −1 against it, 0 where nothing tells; refuses a sign that says otherwise."""
    sign = data.sign("Q") if data.has("Q") else 0
    said = {"along": 1, "against": -1}.get(data.choices["lean"], 0)
    if sign and said and sign != said:
        raise Refusal("lean", OTHER_LEAN)
    return sign or said


def force_in_field(way: Direction | None, sign: int) -> Relation:
    """F_E = QE with the size of the charge."""
    known = {"F_E": fixed(way)} if way else {}
    law = Relation(
        "F_E = Q*E",
        "Find the force of the field on the charge",
        "The field is the force on each coulomb. The sign of the charge only tells the direction.",
        {"F_E": "N", "Q": "C", "E": "V·m⁻¹"},
        "So much push for each bit of charge: more charge or a stronger field, more push.",
        sizes=("Q",),
        directions={**known, **({"Q": fixed(sign_of_charge(sign))} if sign else {})},
        mistakes=(
            Mistake("divided", "F_E", "E/Q", "E is the force per coulomb: multiply by the coulombs."),
            Mistake("upside-down", "Q", "E/F_E", "F_E = QE, so Q = F_E/E."),
            Mistake("upside-down", "E", "Q/F_E", "F_E = QE, so E = F_E/Q."),
        ),
    )
    return replace(
        law,
        said={
            "Q": Said(
                "Use the force of the field for the size of the charge",
                "The sign follows from the direction of the force: along the field or against it.",
            ),
            "E": Said(
                "Use the force on the charge for the field",
                "The field is the force on each coulomb; only the size of the charge goes in.",
            ),
        },
    )


def in_field(data: Data) -> Situation:
    """What holds in a horizontal field, as far as the sign tells which way the sphere is pushed."""
    refuse_zero_charge(data, "Q")
    refuse_uncharged(data)
    field, along = (1 if data.choices["field"] == "right" else -1), push_of(data)
    if not along and {"Q", "n"} & set(data.asked_names):
        raise Refusal("lean", SAY_LEAN)
    push = along * field
    way = LEFT_RIGHT.of("right" if push > 0 else "left") if push else None
    lean = {
        1: " It hangs to the side to which the field points.",
        -1: " It hangs to the side from which the field comes.",
        0: "",
    }[along if not data.has("Q") else 0]
    many = {1: "few", -1: "many", 0: "many or too few"}[along]
    memo = arrow_points(
        ("F_g", "the weight, straight down"),
        ("T", "the tension, along the thread towards the support"),
        (
            "F_E",
            f"the electrostatic force, {way.words if way else ''}, {'along' if along > 0 else 'against'} the field",
        ),
    )
    told = Situation(
        relations=(
            *(*thread_laws(way), WOULD_CUT),
            force_in_field(way, along),
            PLATES,
            *cut(AWAY),
            counting(along).renamed(Q1="Q"),
        ),
        openings=tuple(one.format(way=f"to the {data.choices['field']}") + lean for one in BETWEEN),
        tell={
            **TELL,
            "Q": "It carries {}.",
            "n": f"It has {{}} electrons too {many}.",
            "E": "The field is {}.",
            "V": "The potential difference between the plates is {}.",
            "d": "The plates are {} apart.",
        },
        ask={
            **ASK,
            "Q": "Calculate the charge on the sphere.",
            "E": "Calculate the electric field between the plates.",
        },
        proofs=where_known(
            Check(
                "The whole way back: the force of the field must be the one that the angle needs",
                "Q*V/d = m*g*tan(alpha)",
                sizes=("Q",),
            ),
            TRIANGLE,
            FIRST,
            replace(COUNTED, equation="n*e = Q", sizes=("Q",)),
        ),
        scene=lambda v: field_scene(v.get("alpha", 0.4), field, push, along),
    )
    ask = "As the sphere moves on between the plates, does its acceleration change? Explain."
    return one_sphere(data, told, push, memo, (ask, SAME))


def all_in_field(base: dict[str, float]) -> dict[str, float]:
    """Every quantity from mass, charge, voltage and gap (SI)."""
    field = base["V"] / base["d"]
    force, weight = abs(base["Q"]) * field, base["m"] * SCHOOL["g"]
    alpha = atan(force / weight)
    ties = weight / cos(alpha)
    return {**base, "E": field, "F_E": force, "alpha": alpha, "T": ties, "a": ties / base["m"]}


def practise_in_field(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Just enough data; which way the sphere hangs is told where the sign is not."""
    text = practised(
        typed,
        random,
        level,
        FIELD_DRAWS,
        all_in_field,
        {
            "alpha": ("m Q V d", "m Q E", "m T"),
            "m": ("alpha Q V d", "alpha Q E", "T alpha"),
            "Q": ("m alpha V d", "m alpha E"),
            "E": ("m alpha Q", "V d"),
            "V": ("m alpha Q d", "T alpha Q d"),
            "d": ("m alpha Q V",),
            "F_E": ("Q V d", "m alpha"),
            "T": ("m Q E", "m alpha"),
            "a": ("m Q V d", "m Q E"),
        },
    )
    if text["Q"]:
        text["lean"] = "signs"
    elif text["lean"] == "signs":
        text["lean"] = "against"
    return dict(text)


FIELD_DRAWS = {
    "m": Draw((0.1, 0.15, 0.2, 0.25, 0.3), "g", harder=(0.12, 0.18, 0.28)),
    "Q": Draw((5, 6, 8, 10, -5, -7, -9), "nC", harder=(5.5, 7.2, -8.4)),
    "V": Draw((4, 5, 6, 8), "kV", harder=(4.5, 7.2)),
    "d": Draw((5, 6, 8, 10), "cm", harder=(5.5, 7.5)),
}
IN_FIELD = question(
    "thread-in-field",
    "One sphere on a thread in a horizontal field",
    in_field,
    fields=(
        Choice("field", "The field points", (("right", "to the right"), ("left", "to the left"))),
        mass(),
        charge("Q", "Charge on the sphere"),
        electrons(),
        ANGLE,
        Input(
            "E",
            "Electric field",
            "V·m⁻¹",
            10,
            1e7,
            "The field's size is greater than zero: pick its direction beside it.",
        ),
        Input(
            "V",
            "Potential difference between the plates",
            "V",
            1,
            1e5,
            "Enter the size of the potential difference: more than zero.",
        ),
        Input("d", "Distance between the plates", "cm", 1e-3, 1, "Distance must be greater than zero."),
        F_E,
        tension("thread"),
        first_acceleration("the thread is cut"),
        Choice(
            "lean",
            "The sphere is pushed",
            (
                ("signs", "as the sign of its charge says"),
                ("along", "in the direction of the field"),
                ("against", "against the field"),
            ),
            quiet=("signs",),
        ),
        PARTS,
        LENGTHS,
    ),
    example={
        "field": "right",
        "m": "0,2 g",
        "Q": "+8 nC",
        "V": "6 kV",
        "d": "8 cm",
        "lean": "along",
        "parts": "whole",
        "lengths": "scale",
    },
    asks="alpha",
    undrawn=("n",),
    constants=("g", "e"),
    laws=(EQUILIBRIUM.name, SECOND.name),
    draws={
        **FIELD_DRAWS,
        "alpha": Draw((15, 20), "°"),
        "E": Draw((60, 80), "kV/m"),
        "F_E": Draw((0.5, 0.8), "mN"),
        "T": Draw((2, 3), "mN"),
        "a": Draw((10.5, 11), "m/s^2"),
    },
    since=2,
    adjust=practise_in_field,
)
