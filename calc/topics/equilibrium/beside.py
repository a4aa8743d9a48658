"""One charged sphere on a thread, beside a charge fixed at its level or in a horizontal uniform field.

tan α = F_E/(mg) and T = mg/cos α at rest; F_E = kQ₁Q₂/r², or F_E = QE with E = V/d between plates; a = T/m
just after the thread is cut: data-sheet equations. Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from math import pi

from calc.model.answers import Direction, Point
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import Check, Choice, Data, Mistake, Part, Refusal, Values
from calc.model.relations import Relation, Said
from calc.topics.equilibrium import let_go
from calc.topics.equilibrium.hung import PARTS, SAGGING
from calc.topics.equilibrium.practised import following, like_charges, practised
from calc.topics.equilibrium.relations import (
    AWAY,
    COUNTED,
    WOULD_CUT,
    coulomb,
    counting,
    cut,
    thread_laws,
    where_known,
)
from calc.topics.equilibrium.shared import (
    ACTING,
    AT_CUT,
    COUNT,
    FBD_RULES,
    GAP,
    GROWS,
    HUNG_MASS,
    LEAN,
    LENGTHS,
    PULL,
    PUSH,
    SAY_ACTING,
    WHICH,
    arrow_points,
    kind,
    refuse_uncharged,
    signs,
)
from calc.topics.equilibrium.thread_figures import beside_scene, field_scene, thread_draw
from calc.topics.equilibrium.threads import Pair, bad_angle
from calc.topics.shared.electrostatics import (
    COULOMB,
    EQUILIBRIUM,
    PLATE_SLIPS,
    SECOND,
    kind_of_force,
    refuse_zero_charge,
    sign_of_charge,
)
from calc.topics.shared.quantities import Quantity, charge
from calc.working.declaring import Given, boxes, told
from calc.working.solving import Situation, question

TOLD_FIRST = ("m", "alpha", "F_E", "T", "a")


def hung_by(drawn: Mapping[str, str]) -> dict[str, Given]:
    """What is told of one sphere on its thread; ``drawn``: the example's and the drawn numbers of each quantity."""
    given = (
        HUNG_MASS("m", "Mass of the sphere", "Its mass is {}.", drawn["m"]),
        LEAN(
            "alpha",
            "Angle of the thread with the vertical",
            "The thread makes an angle of {} with the vertical.",
            drawn["alpha"],
        ),
        COUNT(
            "n",
            "Electrons too many or too few on the sphere",
            "It has {} electrons too many or too few.",
            drawn["n"],
            ask="Calculate how many electrons the sphere has too many or too few.",
        ),
        PUSH(
            "F_E",
            "Electrostatic force (size)",
            "The electrostatic force on the sphere is {}.",
            drawn["F_E"],
            ask="Calculate the electrostatic force on the sphere.",
        ),
        PULL("T", "Tension in the thread", "The tension in the thread is {}.", drawn["T"]),
        AT_CUT(
            "a",
            "Acceleration at the instant the thread is cut",
            "Were the thread cut, the sphere would start with an acceleration of {}.",
            drawn["a"],
            ask="The thread is cut. Calculate the acceleration of the sphere at that instant.",
        ),
    )
    return {one.box.name: one for one in given}


def electrons_told(given: tuple[Given, ...], sign: int) -> Situation:
    """What the quantities say, with the electrons too many or too few as the sign of the charge says."""
    all_told = told(given, TOLD_FIRST)
    many = {1: "few", -1: "many", 0: "many or too few"}[sign]
    return replace(all_told, tell={**all_told.tell, "n": f"It has {{}} electrons too {many}."})


def hanging(data: Data) -> Callable[[str, float | None], None]:
    """Refuses an angle at which no thread hangs."""

    def see(name: str, value: float | None) -> None:
        if name == "alpha" and (value is None or not 0 < value < pi / 2):
            raise Refusal(None, bad_angle(data))

    return see


def one_sphere(
    data: Data, bare: Situation, push: int, memo: tuple[Point, ...], after: tuple[str, tuple[Point, ...]]
) -> Situation:
    """What is drawn and asked of one sphere on a thread, whatever pushes it.

    push: +1 where F_E points to the right, −1 to the left, 0 where nothing tells: then nothing is drawn. memo: of
    the free-body diagram. after: what is asked of the motion after the cut, and its points.
    """
    if data.values.get("T") == 0:
        raise Refusal("T", SAGGING)
    ways = bare.steps(data)
    ask, points = after

    def drawn(key: str = "draw", cut: bool = False) -> Part:
        return thread_draw(data, ways, push, memo, body="the sphere", key=key, cut=cut)

    def later(_: Data, values: Values) -> tuple[Part, ...]:
        if not push or "a" not in data.asked_names:
            return ()
        return (drawn("draw-cut", True), Part("later", "explain", ask, points=points))

    return replace(
        bare,
        stated=(drawn(),) if push else (),
        later=later,
        judge=hanging(data),
        scene=bare.scene if push else None,
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
HELD_NEXT_TO = (
    (
        "A small charged sphere hangs on a light insulating thread. A second charged sphere is fixed to its left. The"
        " first is held at the level of the second, out to the side to which the force between them points, and let go"
        " from rest."
    ),
    (
        "On a nylon thread a charged foam sphere is held level with a fixed charge on its left, out to the side to"
        " which the electrostatic force points. Then it is let go from rest."
    ),
    (
        "A charged sphere on a light thread is held so that the centres of it and of a fixed charge on its left lie on"
        " one level line, the thread leaning to the side to which the force points. It is let go from rest."
    ),
)
BESIDE_PROOFS = (
    Check(
        "The whole way back: Coulomb's law with these charges must give the force that the angle needs",
        "k*Q1*Q2/r^2 = m*g*tan(alpha)",
        sizes=("Q1", "Q2"),
    ),
    TRIANGLE,
    FIRST,
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
    held = let_go.is_let_go(data)
    if held:
        let_go.refuse(data)
    here = let_go.laws(push) if held else (*thread_laws(push), WOULD_CUT, *cut(AWAY))
    bare = replace(
        electrons_told(BESIDE_GIVEN, -1 if data.choices["which"] == "excess" else 1),
        relations=(*here, coulomb(push, one, two), counting(one)),
        openings=tuple(opening + said for opening in NEXT_TO),
        proofs=let_go.proofs(COUNTED) if held else where_known(*BESIDE_PROOFS, COUNTED),
        scene=lambda v: beside_scene(v.get("alpha", 0.4), acting, one, two),
    )
    if held:
        return let_go.let_go(data, bare, acting, pair.arrows(), tuple(opening + said for opening in HELD_NEXT_TO))
    return one_sphere(data, bare, acting, pair.arrows(), (GROWS, pair.after()))


def all_beside(base: dict[str, float]) -> dict[str, float]:
    """Every quantity from mass, angle, distance and the fixed charge (SI, radians); the charge Q1 repels."""
    laws = (*thread_laws(None), *cut(AWAY), coulomb(None), counting())
    return like_charges(following(base, *laws))


def practise_beside(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Just enough data; whether the charges repel is told where a sign is not."""
    text = practised(
        typed,
        random,
        level,
        BESIDE_GIVEN,
        "m alpha r Q2",
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
            **let_go.enough(typed, "m alpha r Q1 Q2"),
        },
    )
    if let_go.is_drawn(typed, "Q1 n Q2 r m alpha F_E T a"):
        text["alpha"] = let_go.aside(text["alpha"], random)
    both = bool(text["Q1"] and text["Q2"])
    text["acting"] = "signs" if both else "repel"
    if level > 1 and not both and text["which"] == "excess":  # one of two, drawn already
        text["acting"] = "attract"
    elif level > 1 and both and text["which"] == "excess":
        minus = not text["Q1"].startswith("-")
        text["Q1"] = f"-{text['Q1']}" if minus else text["Q1"].lstrip("-")
    return dict(text)


BESIDE_BODY = hung_by(
    {
        "m": "1,2 g; 0,5 0,8 1 1,2 1,5 2; 0,65 1,35 1,8",
        "alpha": "22°; 15 18 20 22 25 30; 16,5 23,5 33",
        "n": "?; 2e11",
        "F_E": "?; 3 5 mN",
        "T": "?; 12 15 mN",
        "a": "?; 10,5 11 m/s^2",
    }
)
BESIDE_GIVEN = (
    BESIDE_BODY["m"],
    BESIDE_BODY["alpha"],
    charge("Q1", "Charge on the hanging sphere", "The hanging sphere carries {}.", "?; 30 60 nC"),
    BESIDE_BODY["n"],
    charge("Q2", "Charge fixed in place", "The fixed charge is {}.", "+45 nC; 40 60 75 90 -50 -70; 54 82 -64"),
    GAP(
        "r",
        "Distance between the charges",
        "The distance between the centres is {}.",
        "8 cm; 6 8 9 10 12; 7,5 9,5 11,5",
        unit="m",
        ask="Calculate the distance between the charges.",
    ),
    BESIDE_BODY["F_E"],
    BESIDE_BODY["T"],
    BESIDE_BODY["a"],
    let_go.FROM_NOW,
)
BESIDE = question(
    "thread-beside-charge",
    "One sphere on a thread beside a fixed charge",
    beside,
    **boxes(
        *BESIDE_GIVEN,
        *(ACTING, replace(WHICH, quiet=("excess", "lacking")), PARTS, LENGTHS),
        example={"acting": "repel", "which": "lacking"},
    ),
    asks="Q1",
    drawn=("m", "alpha", "Q1", "n", "Q2", "r", "F_E", "T", "a"),
    drawn_later={"a_0": 6},
    constants=("k", "g", "e"),
    laws=(EQUILIBRIUM.name, COULOMB.name, SECOND.name),
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
    mistakes=PLATE_SLIPS,
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
HELD_BETWEEN = (
    (
        "Two large upright metal plates make a uniform horizontal field {way} between them. A small charged sphere on a"
        " light insulating thread is held there, out to the side to which the force on it points, and let go from rest."
    ),
    (
        "Between two upright charged plates, whose uniform field points {way}, a charged foil-covered sphere on a nylon"
        " thread is held out to the side to which the force on it points. Then it is let go from rest."
    ),
    (
        "A charged sphere on a thin silk thread is held at a slant between two parallel upright plates, leaning to the"
        " side to which the force on it points, and let go from rest. The field is uniform and points {way}."
    ),
)
FIELD_PROOFS = (
    Check(
        "The whole way back: the force of the field must be the one that the angle needs",
        "Q*V/d = m*g*tan(alpha)",
        sizes=("Q",),
    ),
    TRIANGLE,
    FIRST,
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
    known = {"F_E": way} if way else {}
    law = Relation(
        "F_E = Q*E",
        "Find the force of the field on the charge",
        "The field is the force on each coulomb. The sign of the charge only tells the direction.",
        {"F_E": "N", "Q": "C", "E": "V·m⁻¹"},
        "So much push for each bit of charge: more charge or a stronger field, more push.",
        sizes=("Q",),
        directions={**known, **({"Q": sign_of_charge(sign)} if sign else {})},
        mistakes=(
            Mistake(
                "divided",
                "F_E",
                "E/Q",
                "You divided {E} by {Q}. {E} tells the force on each coulomb, so multiply: {Q*E}.",
            ),
            Mistake(
                "upside-down",
                "Q",
                "E/F_E",
                "You divided {E} by {F_E}. The force is {Q*E}, so divide {F_E} by {E} to get {Q}.",
            ),
            Mistake(
                "upside-down",
                "E",
                "Q/F_E",
                "You divided {Q} by {F_E}. The force is {Q*E}, so divide {F_E} by {Q} to get {E}.",
            ),
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
    hangs = "leans" if let_go.is_let_go(data) else "hangs"
    lean = {
        1: f" It {hangs} to the side to which the field points.",
        -1: f" It {hangs} to the side from which the field comes.",
        0: "",
    }[along if not data.has("Q") else 0]
    memo = arrow_points(
        ("F_g", "the weight, straight down"),
        ("T", "the tension, along the thread towards the support"),
        (
            "F_E",
            f"the electrostatic force, {way.words if way else ''}, {'along' if along > 0 else 'against'} the field",
        ),
    )
    held = let_go.is_let_go(data)
    if held:
        let_go.refuse(data)
    here = let_go.laws(way) if held else (*thread_laws(way), WOULD_CUT)
    cuts = () if held else cut(AWAY)
    counted = replace(COUNTED, equation="n*e = Q", sizes=("Q",))
    bare = replace(
        electrons_told(FIELD_GIVEN, along),
        relations=(*here, force_in_field(way, along), PLATES, *cuts, counting(along).renamed(Q1="Q")),
        openings=tuple(one.format(way=f"to the {data.choices['field']}") + lean for one in BETWEEN),
        proofs=let_go.proofs(counted) if held else where_known(*FIELD_PROOFS, counted),
        scene=lambda v: field_scene(v.get("alpha", 0.4), field, push, along),
    )
    if held:
        openings = tuple(one.format(way=f"to the {data.choices['field']}") + lean for one in HELD_BETWEEN)
        return let_go.let_go(data, bare, push, memo, openings)
    ask = "As the sphere moves on between the plates, does its acceleration change? Explain."
    return one_sphere(data, bare, push, memo, (ask, SAME))


def all_in_field(base: dict[str, float]) -> dict[str, float]:
    """Every quantity from mass, charge, voltage and gap (SI)."""
    return following(base, PLATES, force_in_field(None, 0), *thread_laws(None), *cut(AWAY))


def practise_in_field(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Just enough data; which way the sphere hangs is told where the sign is not."""
    text = practised(
        typed,
        random,
        level,
        FIELD_GIVEN,
        "m Q V d",
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
            **let_go.enough(typed, "m alpha Q V d", "m alpha Q E"),
        },
    )
    if let_go.is_drawn(typed, "alpha m Q E V d F_E T a"):
        text["alpha"] = let_go.aside(text["alpha"], random)
    del text["n"]  # this box came after the draws were stored: it is no part of them
    if text["Q"]:
        text["lean"] = "signs"
    elif text["lean"] == "signs":
        text["lean"] = "against"
    return dict(text)


FIELD_BODY = hung_by(
    {
        "m": "0,2 g; 0,1 0,15 0,2 0,25 0,3; 0,12 0,18 0,28",
        "alpha": "?; 15 20 °",
        "n": "?",
        "F_E": "?; 0,5 0,8 mN",
        "T": "?; 2 3 mN",
        "a": "?; 10,5 11 m/s^2",
    }
)
FIELD_GIVEN = (
    FIELD_BODY["m"],
    charge("Q", "Charge on the sphere", "It carries {}.", "+8 nC; 5 6 8 10 -5 -7 -9; 5,5 7,2 -8,4"),
    FIELD_BODY["n"],
    FIELD_BODY["alpha"],
    Quantity("V·m⁻¹", 10, 1e7, "The field's size is greater than zero: pick its direction beside it.")(
        "E",
        "Electric field",
        "The field is {}.",
        "?; 60 80 kV/m",
        ask="Calculate the electric field between the plates.",
    ),
    Quantity("V", 1, 1e5, "Enter the size of the potential difference: more than zero.")(
        "V",
        "Potential difference between the plates",
        "The potential difference between the plates is {}.",
        "6 kV; 4 5 6 8; 4,5 7,2",
        unit="V",
    ),
    Quantity("cm", 1e-3, 1, "Distance must be greater than zero.")(
        "d", "Distance between the plates", "The plates are {} apart.", "8 cm; 5 6 8 10; 5,5 7,5"
    ),
    FIELD_BODY["F_E"],
    FIELD_BODY["T"],
    FIELD_BODY["a"],
    let_go.FROM_NOW,
)
LEANING = Choice(
    "lean",
    "The sphere is pushed",
    (
        ("signs", "as the sign of its charge says"),
        ("along", "in the direction of the field"),
        ("against", "against the field"),
    ),
    quiet=("signs",),
)
IN_FIELD = question(
    "thread-in-field",
    "One sphere on a thread in a horizontal field",
    in_field,
    **boxes(
        Choice("field", "The field points", (("right", "to the right"), ("left", "to the left"))),
        *FIELD_GIVEN,
        *(LEANING, PARTS, LENGTHS),
        example={"lean": "along"},
    ),
    asks="alpha",
    drawn=("m", "Q", "alpha", "E", "V", "d", "F_E", "T", "a"),
    drawn_later={"a_0": 6},
    constants=("g", "e"),
    laws=(EQUILIBRIUM.name, SECOND.name),
    since=2,
    adjust=practise_in_field,
)
