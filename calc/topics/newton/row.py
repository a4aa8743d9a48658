"""Two bodies on the level: pulled by P on the second with a string between, or P pushing the first against the second.

String: P − T − f₂ = m₂a and T − f₁ = m₁a; contact: P − R − f₁ = m₁a and R − f₂ = m₂a; f = μmg for each.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures.connected import in_a_row
from calc.model.questions import Check
from calc.topics.newton.pairs import (
    AT_ONCE,
    INTERNAL,
    NET_ONLY,
    ONE_FRICTION,
    ONE_MASS,
    PLAIN_ONE,
    Rows,
    Set,
    coefficient,
    common,
    connected,
    contact,
    friction,
    masses,
    pulling,
    put_together,
    sizes,
    string,
)
from calc.topics.shared.motion_laws import SECOND, THIRD
from calc.working.declaring import Given, Mistake, Relation
from calc.working.solving import Laws

STAYS = (
    "Friction can hold all of this force: from rest they stay where they are, a = 0, and {} cannot be found. Use a"
    " larger force or less friction."
)
ALL_OF_P = "You made {%s} as large as {P}. Then nothing would be left to speed up the other body and beat its friction."
OWN = "You left this body's friction out. It acts against the motion: put {%s} in as well."


def ahead(link: str, body: int) -> Relation:
    """The body that P acts on. link: T or R."""
    how = "tension holds it back" if link == "T" else "other body pushes it back"
    return Relation(
        f"P - {link} - f_{body} = m{body}*a",
        what=f"Use Newton's second law for the {('first', 'second')[body - 1]} body",
        why=f"To the right is positive: P acts forwards; the {how}, and so does friction.",
        units={"P": "N", link: "N"},
        plain=PLAIN_ONE,
        quotes=(SECOND.name,),
        mistakes=(
            Mistake("all-of-p", link, "P", (ALL_OF_P % link) + f" Subtract {{f_{body}}} and {{m{body}*a}}."),
            Mistake("friction-left-out", link, f"P - m{body}*a", OWN % f"f_{body}"),
        ),
    )


def behind(link: str, body: int) -> Relation:
    """The body that only the other one moves."""
    how = "tension pulls it" if link == "T" else "other body pushes it"
    return Relation(
        f"{link} - f_{body} = m{body}*a",
        what=f"Use Newton's second law for the {('first', 'second')[body - 1]} body",
        why=f"To the right is positive: the {how} forwards, friction acts backwards. P does not act on this body.",
        units={link: "N"},
        plain=PLAIN_ONE,
        quotes=(SECOND.name,),
        mistakes=(
            Mistake("all-of-p", link, "P", (ALL_OF_P % link) + f" Use {{m{body}*a + f_{body}}}."),
            Mistake("net-force-alone", link, f"m{body}*a", NET_ONLY if link == "T" else OWN % f"f_{body}"),
        ),
    )


def with_mu(law: Relation, body: int, units: dict[str, str]) -> Relation:
    """The same with f = μmg, for a mass or μ."""
    put = f"mu*m{body}*g"
    return replace(
        law, law=law.law.replace(f"f_{body}", put), what=f"{law.what}, with f = μmg", units=units, mistakes=()
    )


def laws(link: str) -> Laws:
    """Both frictions, both bodies, and the two together."""
    first, second = (behind(link, 1), ahead(link, 2)) if link == "T" else (ahead(link, 1), behind(link, 2))
    near, far = (first, second) if link == "T" else (second, first)
    slips = (
        Mistake("one-mass", "a", f"(P - f_1 - f_2)/m{2 if link == 'T' else 1}", ONE_MASS),
        Mistake("one-friction", "a", f"(P - f_{2 if link == 'T' else 1})/(m1 + m2)", ONE_FRICTION),
        Mistake(
            "friction-ignored",
            "a",
            "P/(m1 + m2)",
            "You left friction out. Each body has its own: subtract {f_1 + f_2}.",
        ),
        Mistake("link-kept", "a", f"(P - f_1 - f_2)*m{2 if link == 'T' else 1}/(m1 + m2)^2", INTERNAL_LINK[link]),
    )
    one, two = with_mu(first, 1, {"m1": "kg", "mu": ""}), with_mu(second, 2, {"m2": "kg", "mu": ""})
    return (
        friction("f_1", "m1"),
        friction("f_2", "m2"),
        near,
        far,
        one,
        two,
        put_together(far, near, "a", link, slips),
        put_together(*((two, one) if link == "T" else (one, two)), "mu", link),
    )


INTERNAL_LINK = {
    "T": INTERNAL,
    "R": "You kept the contact force in the equation of both together. Internal forces cancel: leave it out.",
}
NAMES = {1: "the first body", 2: "the second body"}


def diagrams(link: str) -> tuple[tuple[str, str, Rows, float | None], ...]:
    """The two free-body diagrams."""
    pushed = 1 if link == "R" else 2
    found = []
    for n in (1, 2):
        rows = [
            ("F_g", f"w{n}", "the weight, straight down", 270.0),
            ("N", f"w{n}", "the normal force, upwards", 90.0),
            ("f", f"f_{n}", "friction, to the left", 180.0),
        ]
        if n == pushed:
            rows.append(("P", "P", f"the {'push' if link == 'R' else 'pull'}, to the right", 0.0))
        what = "the tension" if link == "T" else f"the force of {NAMES[3 - n]}"
        way = ("to the right", 0.0) if n != pushed else ("to the left", 180.0)
        rows.append((link, link, f"{what}, {way[0]}", way[1]))
        found.append((f"{n}", NAMES[n], tuple(rows), None))
    return tuple(found)


def quantities(link: str) -> tuple[Given, ...]:
    """The boxes."""
    joined = (
        string("; 12 15 20; 14 18 22")
        if link == "T"
        else contact("R", "Contact force between the two", "They push each other with {}.", "; 12 15 20; 14 18 22")
    )
    return (
        *masses("the first body", "the second body", "4 kg; 2 3 4; 2,5 3,5 4,5", "6 kg; 4 5 6 8; 5,5 6,5 7,5"),
        pulling("50 N; 40 50 60 70; 45 55 65", "The force P is {}."),
        coefficient("of each body with the floor", "0,2; 0,1 0,15 0,2 0,3; 0,12 0,18 0,26"),
        common("?; 1 1,5 2 2,5; 0,8 1,6 2,4"),
        joined,
    )


ENOUGH = {"a": "m1 m2 P mu", "P": "m1 m2 mu a", "m1": "m2 P mu a", "m2": "m1 P mu a", "mu": "m1 m2 P a"}
SUM = Check(AT_ONCE, "a = (P - mu*m1*g - mu*m2*g)/(m1 + m2)")
TALES = {
    "T": (
        (
            "Two crates on a level floor are joined by a light string, the first on the left. A rope pulls the second"
            " to the right with a level force P, and both slide."
        ),
        (
            "Two sledges on level ground are tied one behind the other with a light string; the second is in front, on"
            " the right. A level force P pulls it to the right, and both slide."
        ),
        (
            "A light string joins two boxes on a level warehouse floor. The one on the right, the second, is pulled to"
            " the right with a level force P; both slide."
        ),
    ),
    "R": (
        (
            "Two crates touch on a level floor, the first on the left. Somebody pushes the first to the right with a"
            " level force P, and both slide."
        ),
        (
            "Two boxes stand side by side on a level worktop. A level force P pushes the one on the left, the first, to"
            " the right against the other; both slide."
        ),
        (
            "On a level yard a machine pushes two pallets that touch, the first on the left, with a level"
            " force P to the right. Both slide."
        ),
    ),
}


def made(link: str) -> Set:
    """One of the two set-ups."""
    name = "T" if link == "T" else "R"
    other = {"T": "T = m1*(a + mu*g)", "R": "R = m2*(a + mu*g)"}[link]
    stays = STAYS.format(name)
    return Set(
        key="row" if link == "T" else "contact",
        title="Two bodies in tow" if link == "T" else "Two bodies pushed together",
        boxes=quantities(link),
        laws=lambda data: laws(link),
        openings=lambda data: TALES[link],
        diagrams=lambda data: diagrams(link),
        sizes=sizes,
        figure=lambda v: in_a_row(pushed=link == "R"),
        enough={**ENOUGH, link: "m1 m2 P mu"},
        unfit={"a": stays, link: stays, "mu": stays},
        proofs=(SUM, Check("The force between them from the body that P does not touch", other)),
        states=SECOND if link == "T" else THIRD,
    )


ROW, CONTACT = connected(made("T")), connected(made("R"))
