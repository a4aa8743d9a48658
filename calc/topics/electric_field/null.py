"""The point where the fields of two charges cancel.

Charges a distance D apart: square roots of both sides of kQ₁/x² = kQ₂/(D ∓ x)², the minus
between like charges, the plus outside unlike ones, beyond the smaller. The root with the
other sign has equal sizes but the same direction, so it is rejected.
Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Charge, Figure, On, spheres_on_line
from calc.model.answers import Direction, Point
from calc.model.questions import NO_MARKS, Check, Data, Draw, Mistake, Part, Plan, Question, Refusal, Step, Values
from calc.model.relations import Towards
from calc.topics.electric_field.shared import ADDING, FIELD, pattern, pattern_part, refuse_zero
from calc.topics.shared.electrostatics import charge, distance

NONE = (
    "No null point at a finite distance: the charges are equal in size, so their fields are equal only half-way "
    "between them, and there both point the same way. Change one of the charges."
)
NAMES = ("Q1", "Q2")
WHERE = (
    ("between", "from A, between the charges"),
    ("beyond-A", "from A, on the far side of A from B"),
    ("beyond-B", "from B, on the far side of B from A"),
)
ROOTS = "Take square roots of both sides."
NOT_ROOTED = (
    "You left out the square roots. The fields go with the square of the distance, so take square roots of both sides"
    " before you solve for {x}."
)
AGREE = (
    "You have the other root for {x}. There the two fields point the same way and cannot cancel: take the root where"
    " they are opposite."
)
FROM_OTHER = (
    "You have the distance from the other charge. The distance {{x}} starts at {here}, so put {{{small}}} on top of"
    " the fraction."
)


def refuse_no_null(data: Data) -> None:
    """Equal unlike charges have no null point."""
    if data.values["Q1"] == -data.values["Q2"]:
        raise Refusal("Q2", NONE)


def place_of(first: float, second: float) -> str:
    """Where the null point lies: between like charges, beyond the smaller of unlike ones."""
    if first * second > 0:
        return "between"
    return "beyond-A" if abs(first) < abs(second) else "beyond-B"


def place_found(names: tuple[str, str]) -> Towards:
    """Where the null point lies, by the signs and sizes of the charges."""

    def where(v: Values) -> Direction:
        place = place_of(v[names[0]], v[names[1]])
        return Direction(place, dict(WHERE)[place], WHERE)

    return where


def null_steps(first: float, second: float, names: tuple[str, str] = NAMES) -> tuple[Step, ...]:
    """x, and the root that is rejected (equal like charges have none). names: of the two charges."""
    place = place_of(first, second)
    like = place == "between"
    near, far = reversed(names) if place == "beyond-B" else names
    here = "B" if place == "beyond-B" else "A"
    join, apart = ("-", "+") if like else ("+", "-")
    law = f"k*{near}/x^2 = k*{far}/(D {join} x)^2"
    small, large = f"sqrt({near})", f"sqrt({far})"
    equal = abs(first) == abs(second)
    rejected = f"D*{small}/({small} - {large})" if like else f"-(D*{small}/({large} + {small}))"
    other_end = FROM_OTHER.format(here=here, small=small)
    wrong = (
        Mistake("not-rooted", "x", f"D*{near}/({far} {apart} {near})", NOT_ROOTED),
        Mistake("other-root", "x", f"abs({rejected})", AGREE),
        Mistake("upside-down", "x", f"D*{large}/({large} {apart} {small})", other_end),
    )
    reason = (
        "Between like charges the two fields point opposite ways. Let x be the distance from A; B is then D − x away."
        f" {ROOTS}"
        if like
        else (
            "Outside unlike charges the two fields point opposite ways, and the weaker charge must be the nearer one. "
            f"Let x be the distance from {here}, outwards; the other charge is D + x away. {ROOTS}"
        )
    )
    found = Step(
        law=law,
        make=f"x = D*{small}/({large} {apart} {small})",
        unit="m",
        sizes=names,
        direction=place_found(names),
        lines=(
            f"{near}/x^2 = {far}/(D {join} x)^2",
            f"{small}/x = {large}/(D {join} x)",
            f"{small}*(D {join} x) = {large}*x",
            f"D*{small} = x*({large} {apart} {small})",
        ),
        what="Set the two fields equal in size",
        why=reason,
        mistakes=() if equal else wrong,
        plain="Look for the spot where both charges push a positive charge equally hard, in opposite directions.",
    )
    if equal:
        return (found,)
    return (
        found,
        Step(
            law=f"{small}/x_r = -({large}/(D {join} x_r))",
            make=f"x_r = {rejected}",
            unit="m",
            marks=NO_MARKS,
            sizes=names,
            what="The other root, to be rejected",
            why=f"A square root has two signs. The other sign gives a point {rejected_place(first, second)}.",
            plain="The sum also finds a spot where the two pushes are equally hard but in the same direction.",
        ),
    )


def rejected_place(first: float, second: float) -> str:
    """Where the other root lies, as the end of a sentence."""
    place = place_of(first, second)
    if place != "between":
        here, other = ("A", "B") if place == "beyond-A" else ("B", "A")
        return f"between the charges (minus: from {here} towards {other})"
    return (
        "on the far side of B (more than D from A)"
        if abs(first) > abs(second)
        else "on the far side of A (minus: away from B)"
    )


def why_rejected(first: float, second: float) -> Part:
    """Why there is one null point, and where."""
    like = first * second > 0
    way = "opposite ways" if like else "the same way"
    points = [
        Point(
            f"Between {'like' if like else 'unlike'} charges the two fields point {way}; outside them"
            f" {'the same way' if like else 'opposite ways'}.",
            1,
        )
    ]
    if abs(first) == abs(second):
        points.append(Point("The charges are equal, so the sizes are equal half-way and nowhere else.", 1))
    else:
        where = rejected_place(first, second).split(" (")[0]
        points.append(
            Point(
                f"At the other root, {where}, the sizes are equal but the fields point the same way: they add up, so"
                " reject it.",
                1,
                ("same way",),
            )
        )
    return Part("reject", "explain", "Explain why there is only one such point.", points=tuple(points))


def null_checks(first: float, second: float, names: tuple[str, str] = NAMES) -> tuple[Check, ...]:
    """Substitution, and which charge is nearer. names: of the two charges."""
    place = place_of(first, second)
    near, far = reversed(names) if place == "beyond-B" else names
    join = "-" if place == "between" else "+"
    substitution = Check(
        "Put x back: the two fields must be equal in size there",
        f"k*{near}/x^2 = k*{far}/(D {join} x)^2",
        sizes=names,
        tolerance=1e-6,
    )
    if abs(first) == abs(second):
        return (substitution,)

    def holds(v: Values) -> bool:
        to_near, to_far = abs(v["x"]), abs(v["D"] - v["x"] if join == "-" else v["D"] + v["x"])
        return (to_near < to_far) == (abs(v[near]) < abs(v[far]))

    nearer = Check(
        "Is the point nearer to the smaller charge?",
        words="It is: a small charge must be close to match a large one.",
        holds=holds,
    )
    return (substitution, nearer)


def pair(v: Values) -> list[Charge]:
    return [Charge("A", v["Q1"], 0.0, shows=("Q1",)), Charge("B", v["Q2"], v["D"], shows=("Q2",))]


def null_scene(v: Values) -> Figure:
    """A, B and the null point N, with the two equal and opposite fields there."""
    place = place_of(v["Q1"], v["Q2"])
    at = {"between": v["x"], "beyond-A": -v["x"], "beyond-B": v["D"] + v["x"]}[place]
    right = (at > 0) == (v["Q1"] > 0)
    return spheres_on_line(
        pair(v),
        points=[("N", at)],
        forces=[On(2, "E_1", 1.0, right, "field"), On(2, "E_2", 1.0, not right, "field")],
        title="Where the field is zero",
        distances=[(0, 1, "D"), (1 if place == "beyond-B" else 0, 2, "x")],
    )


def pair_pattern(v: Values) -> Figure:
    return pattern([("A", v["Q1"], 0.0, 0.0), ("B", v["Q2"], v["D"], 0.0)])


def plan_null(data: Data) -> Plan:
    refuse_zero(data, "Q1", "Q2")
    refuse_no_null(data)
    first, second = data.values["Q1"], data.values["Q2"]
    return Plan(
        story=data.pick(
            f"Two small charged spheres, A ({data.said['Q1']}) and B ({data.said['Q2']}), stand {data.said['D']}"
            " apart.",
            f"Point charges A and B of {data.said['Q1']} and {data.said['Q2']} are fixed {data.said['D']} apart.",
            later=(
                (
                    f"Along a straight wooden bench a charged ball A ({data.said['Q1']}) is fixed, and {data.said['D']}"
                    f" to the right of it another one, B ({data.said['Q2']})."
                ),
            ),
        ),
        parts=(
            Part(
                "null",
                "calculate",
                "Find the point on the line through A and B where the net electric field is zero.",
                null_steps(first, second),
                answer="x",
                figure=null_scene,
            ),
            why_rejected(first, second),
            pattern_part("the two charges", pair_pattern, first, second),
        ),
        values=dict(data.values),
        scene=lambda v: spheres_on_line(pair(v), distances=[(0, 1, "D")], title="Two charges"),
        checks=null_checks(first, second),
        notes=(
            ("Very far away the field is nearly zero as well, but nowhere at a finite distance exactly.",)
            if first * second < 0
            else ()
        ),
    )


def practise_null(typed: dict[str, object], _random: object, level: int) -> dict[str, object]:
    """Like charges at first; unlike ones from level 2 on."""
    second = str(typed["Q2"]).lstrip("+-")
    return {**typed, "Q2": f"{'-' if level > 1 else '+'}{second}"}


NULL = Question(
    key="null",
    title="Where is the field of two charges zero?",
    fields=(charge("Q1", "Charge on A"), charge("Q2", "Charge on B"), distance("D", "Distance between the charges")),
    plan=plan_null,
    constants=("k",),
    laws=(FIELD.name, ADDING.name),
    example={"Q1": "+16 nC", "Q2": "+4 nC", "D": "60 cm"},
    draws={
        "Q1": Draw((9, 16, 25, 36), "nC", harder=(5, 8, 12, 18)),
        "Q2": Draw((1, 4), "nC", harder=(2, 3, 7)),
        "D": Draw((20, 30, 40, 60, 80), "cm", harder=(25, 36, 55)),
    },
    adjust=practise_null,
)
