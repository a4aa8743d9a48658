"""Where on a line a third charge feels no net force: each region judged, the place by square roots.

k Q₁Q₃/r₁² = k Q₂Q₃/r₂²; Q₃ and k cancel and square roots of both sides give one place, between
like charges and beyond the smaller of unlike ones.
Marks: common practice, no source.
"""

from __future__ import annotations

from math import sqrt

from calc.figures import Figure
from calc.figures.charges import Charge, On, spheres_on_line
from calc.language.printing import rounded
from calc.model.answers import Direction, Mark
from calc.model.questions import NO_MARKS, Check, Data, Part, Plan, Question, Refusal, Step, Values
from calc.topics.several_charges.shared import SUPERPOSITION, apart, charge, check, explain, slip, step, two_on_a_line
from calc.topics.shared.electrostatics import COULOMB, refuse_zero_charge, state
from calc.working.declaring import boxes

PLACES = (
    ("between", "between the charges"),
    ("beyond-1", "outside, on the far side of charge 1"),
    ("beyond-2", "outside, on the far side of charge 2"),
)
ROOTS = "Take square roots of both sides."
NEVER = (
    "No balance position at a finite distance: with equal and opposite charges the two forces are equal only half-way"
    " between them, and there both point the same way. Change one of the charges."
)

# --- no net force -------------------------------------------------------------------------------------------


def plan_balance(data: Data) -> Plan:
    refuse_zero_charge(data, "Q1", "Q2")
    q1, q2 = data.values["Q1"], data.values["Q2"]
    if q1 == -q2:
        raise Refusal("Q2", NEVER)
    alike = q1 * q2 > 0
    near, far = ("1", "2") if alike or abs(q1) < abs(q2) else ("2", "1")
    place, other = balance_steps(q1, q2, near, far, alike)
    return Plan(
        story=story_balance(data),
        parts=(
            state(SUPERPOSITION),
            explain(
                "where",
                "Explain in which part of the line a third charge can be in equilibrium.",
                *region_points(alike, near, far),
            ),
            Part(
                "find",
                "calculate",
                f"Calculate how far from charge {near} the third charge must be placed.",
                (place, other),
                answer=place.makes,
                figure=lambda v: balance_figure(data, near, alike, v),
            ),
            explain(
                "third",
                "The third charge is made twice as large and its sign is changed. Explain whether the place changes.",
                ("No: Q₃ stands on both sides of the equation and cancels.", "cancels"),
                ("Both forces double and both turn round, so they still cancel at the same place.",),
            ),
        ),
        values=dict(data.values),
        scene=lambda _: spheres_on_line(
            [Charge("Q_1", q1, 0.0), Charge("Q_2", q2, data.values["d"])],
            distances=[(0, 1, data.said["d"])],
            title="Two fixed charges",
        ),
        checks=(
            check(
                "Put it back: each charge over the square of its own distance",
                "Q1/r_1^2 = Q2/r_2^2",
                "The two forces are equal in size.",
                sizes=("Q1", "Q2"),
            ),
            quadratic_check(near, far, alike),
        ),
        notes=rejected(data, near, far, alike),
    )


def balance_steps(q1: float, q2: float, near: str, far: str, alike: bool) -> tuple[Step, Step]:
    """The distance from charge ``near`` by square roots, then the distance from the other charge.

    By hand: no rule of rearranging takes square roots of both sides, which is what a teacher does here.
    """
    r, s, small, large = f"r_{near}", f"r_{far}", f"Q{near}", f"Q{far}"
    join, apart = ("-", "+") if alike else ("+", "-")
    span, key = f"(d {join} {r})", "between" if alike else f"beyond-{near}"
    root = f"sqrt({small})/(sqrt({large}) {apart} sqrt({small}))"
    ends = f"sqrt({small}) + sqrt({large})" if alike else f"sqrt({large}) - sqrt({small})"
    no_root = (
        f"You left out the square roots. The forces go with the square of the distance: take square roots of both sides"
        f" before you solve for {{{r}}}."
    )
    same_way = (
        f"You have the other root for {{{r}}}. There both forces point the same way and cannot cancel: take the root"
        " where they are opposite."
    )
    other_end = (
        f"You have the distance from charge {far}. The distance {{{r}}} starts at charge {near}, so put"
        f" {{sqrt({small})}} on top of"
        " the fraction."
    )
    where = "Between the charges" if alike else f"Beyond charge {near}, the smaller one,"
    return (
        Step(
            law=f"k*{small}/{r}^2 = k*{large}/{span}^2",
            make=f"{r} = d*{root}",
            lines=(
                f"{small}/{r}^2 = {large}/{span}^2",
                f"sqrt({small})/{r} = sqrt({large})/{span}",
                f"sqrt({small})*{span} = sqrt({large})*{r}",
            ),
            what="Set the sizes of the two forces equal",
            why=(
                f"{where} the forces on the third charge are opposite; they cancel where their sizes kQQ₃/r² are equal."
                f" Q₃ stands on both sides and has been divided out. {ROOTS}"
            ),
            plain="Go to the spot where both pushes are equally strong. It is closer to the weaker charge.",
            unit="m",
            sizes=("Q1", "Q2"),
            marks=(Mark("formula"), Mark("substitution", 2), Mark("answer")),
            direction=Direction(key, dict(PLACES)[key], PLACES),
            mistakes=()
            if q1 == q2
            else (
                slip("no-root", r, f"d*{small}/({large} {apart} {small})", say=no_root),
                slip("other-root", r, f"abs(d*{root.replace(f' {apart} ', f' {join} ')})", say=same_way),
                slip("other-end", r, f"d*sqrt({large})/({ends})", say=other_end),
            ),
        ),
        step(
            f"{s} = d {join} {r}",
            "m",
            f"Its distance from charge {far}",
            "From the figure.",
            "The rest of the way." if alike else "The whole way.",
            NO_MARKS,
        ),
    )


def region_points(alike: bool, near: str, far: str) -> tuple[tuple[str, ...], ...]:
    """Each region of the line: can the two forces cancel there? The sentence and the words its mark hangs on."""
    if alike:
        return (
            (
                "Outside, on either side, both forces on a third charge point the same way, so they cannot cancel.",
                "same way",
            ),
            (
                "Between the charges the two forces point opposite ways, so they can cancel where their sizes are"
                " equal.",
                "opposite",
            ),
        )
    return (
        ("Between the charges both forces on a third charge point the same way, so they cannot cancel.", "same way"),
        (
            f"Beyond charge {far}, the larger one, the forces are opposite, but the larger charge is also the nearer"
            " one: its force is always larger.",
            "larger",
        ),
        (
            f"Beyond charge {near}, the smaller one, the forces are opposite and the larger charge is farther away, so"
            " they can be equal in size.",
            "opposite",
            "farther",
        ),
    )


def quadratic_check(near: str, far: str, alike: bool) -> Check:
    """The same place from the quadratic equation, without square roots of charges."""
    r, small, large = f"r_{near}", f"Q{near}", f"Q{far}"
    sides = (
        f"{large}*{r}^2 + 2*{small}*d*{r} = {small}*d^2 + {small}*{r}^2"
        if alike
        else f"{large}*{r}^2 = {small}*d^2 + 2*{small}*d*{r} + {small}*{r}^2"
    )
    return check("It also fits the quadratic equation that multiplying out gives", sides, sizes=("Q1", "Q2"))


def rejected(data: Data, near: str, far: str, alike: bool) -> tuple[str, ...]:
    """The other root of the quadratic, and why it is no answer; how steady the balance is."""
    small, large = sqrt(abs(data.values[f"Q{near}"])), sqrt(abs(data.values[f"Q{far}"]))
    steady = (
        "Free on the line, a third charge that both others repel comes back after a nudge; one that both attract "
        "runs away from the place."
    )
    notes = [steady] if alike else []
    if small == large:
        return ("The quadratic has one root only: half-way.", *notes)
    root = data.values["d"] * small / abs(large - small if alike else large + small)
    size = rounded(root, data.settings.style).text
    side = near if small < large else far
    spot = (
        f"on the far side of charge {side} ({size} m from charge {near})"
        if alike
        else f"between the charges ({size} m from charge {near})"
    )
    return (
        (
            f"The quadratic equation has a second root, {spot}. The sizes are equal there too, but both forces point"
            " the same way: reject it."
        ),
        *notes,
    )


def story_balance(data: Data) -> str:
    return (
        f"{two_on_a_line(data)} "
        "A third charge, free to slide along the same line, is placed where it feels no net electrostatic force."
    )


def balance_figure(data: Data, near: str, alike: bool, v: Values) -> Figure:
    """The place, with the two equal and opposite forces on a positive third charge there."""
    d, q1, q2 = data.values["d"], data.values["Q1"], data.values["Q2"]
    x = v["r_1"] if alike else -v["r_1"] if near == "1" else d + v["r_2"]
    if x in (0.0, d):  # a learner's own value may land on a charge
        x = d / 2
    return spheres_on_line(
        [Charge("Q_1", q1, 0.0), Charge("Q_2", q2, d), Charge("Q_3", 1.0, x)],
        forces=[On(2, "F_{13}", 1.0, (x > 0) == (q1 > 0)), On(2, "F_{23}", 1.0, (x > d) == (q2 > 0))],
        distances=[(0, 2, "r_1"), (2, 1, "r_2")],
        title="The third charge in balance",
        notes=("Drawn for a positive third charge; for a negative one both arrows turn round.",),
    )


def practise_balance(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Like charges first; never equal and opposite."""
    first, second = str(typed["Q1"]), str(typed["Q2"])
    if level == 1:
        second = second.lstrip("-−")
    if first.lstrip("-−+") == second.lstrip("-−+"):
        second = "16 nC"
    return {**typed, "Q2": second}


BALANCE = Question(
    key="balance",
    title="Where is there no net force?",
    **boxes(
        charge("Q1", "Charge 1, on the left", "+4 nC; 1 4 9; 2 5 -3 7"),
        charge("Q2", "Charge 2, on the right", "+9 nC; 2 6 16 25; -8 -12 6,5 -20"),
        apart("d", "Distance between charge 1 and charge 2", "50 cm; 30 40 50 60 80"),
    ),
    plan=plan_balance,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name),
    adjust=practise_balance,
)
