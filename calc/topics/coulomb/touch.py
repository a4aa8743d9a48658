"""Two identical conductors touch: the laws before, in and after the touch, and the electrons that move.

Sharing between identical conductors keeps signs: Q′ = (Q₁ + Q₂)/2.
A charge is a whole number of electron charges: n = |ΔQ|/e.
Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.model.directions import ATTRACTION, Kind
from calc.model.questions import NO_MARKS, SA, Check, Mistake, Part, Refusal, Values
from calc.model.relations import Relation, Said
from calc.topics.coulomb.electrons import few_electrons, refuse_part_of_one
from calc.topics.coulomb.force import EACH_AND_OTHER, SPHERES, by_sign, pull_or_push
from calc.topics.shared.electrostatics import COULOMB, NOT_ROOTED, NOT_SQUARED, PER_ELECTRON, PLAIN_LAW, POINT_CHARGES
from calc.topics.shared.quantities import charge
from calc.working.declaring import Given

MADE = "What is on both afterwards is twice what one of them has."
UNDONE = Said(
    "Undo the sharing",
    f"{MADE} Nothing is lost, so taking away the other sphere's charge leaves this one's. Keep the signs.",
    "Put both halves back into one pot, then take out what the other sphere had brought.",
)
BEFORE = (
    "You took {%s} from {Q_new} itself. Both spheres now carry {Q_new}, so take it twice: {2*Q_new} is the whole"
    " charge."
)
TURNED = "You added {%s}. It has to be taken away from {2*Q_new}, with the sign it carries: subtract it in brackets."
ROOT = (
    NOT_ROOTED.replace("{r", "{r2"),
    "the answer is the square of the distance",
)

FIRST = replace(
    POINT_CHARGES.renamed(F="F_1"), what="Coulomb's law, before the touch", directions={"F_1": pull_or_push}
)
SHARING = Relation(
    "Q_new = (Q1+Q2)/2",
    "Share the net charge equally",
    "Identical conductors share the net charge equally. Here the signs do count: keep them.",
    {"Q_new": "C", "Q1": "C", "Q2": "C"},
    "Put the two charges in one pot, minus signs included, and give each sphere half.",
    directions={name: by_sign(name) for name in ("Q_new", "Q1", "Q2")},
    said={"Q1": UNDONE, "Q2": UNDONE},
    mistakes=(
        Mistake(
            "sizes-averaged",
            "Q_new",
            "(abs(Q1)+abs(Q2))/2",
            "You averaged the sizes of the charges. Charges of opposite sign cancel in part when they are shared, so"
            " keep each sign in the sum.",
        ),
        Mistake(
            "not-halved",
            "Q_new",
            "Q1+Q2",
            "You stopped at the sum of the charges. Two identical spheres share it equally, so halve it.",
            "the answer is twice the right one",
        ),
        *(Mistake("not-doubled", one, f"Q_new - {other}", BEFORE % other) for one, other in EACH_AND_OTHER),
        *(Mistake("sign-turned", one, f"2*Q_new + {other}", TURNED % other) for one, other in EACH_AND_OTHER),
    ),
)
SECOND = Relation(
    "F_2 = k*Q_new^2/r2^2",
    "Coulomb's law again, with the new charges",
    "Both spheres now carry the same charge, so they repel.",
    {"F_2": "N", "Q_new": "C", "r2": "m"},
    PLAIN_LAW,
    sizes=("Q_new",),
    quotes=(COULOMB.name,),
    directions={"F_2": lambda values: ATTRACTION.by_sign(values["F_2"], "repel")},
    mistakes=(
        Mistake("not-squared", "F_2", "k*Q_new^2/r2", NOT_SQUARED.replace("{r", "{r2")),
        Mistake(
            "old-charges",
            "F_2",
            "k*abs(Q1)*abs(Q2)/r2^2",
            "You used the charges from before the touch. They were shared then: put {Q_new} in for both spheres.",
        ),
        Mistake("root-omitted", "r2", "k*Q_new^2/F_2", *ROOT),
        Mistake(
            "root-omitted",
            "Q_new",
            "F_2*r2^2/k",
            "You stopped at the square of the charge. Take its square root: that is the size of {Q_new}.",
        ),
    ),
)
SHARED = (
    Check("The charge together is the same before and after", "Q1 + Q2 = 2*Q_new"),
    Check("What one sphere lost the other gained", "Q_new - Q1 = Q2 - Q_new"),
)


# Both charges at once: two numbers with a known product and a known sum.
LARGER = Relation(
    "Q1*(S - Q1) = P",
    "The larger root",
    "Two numbers with sum S and product P are the roots of x² − Sx + P = 0.",
    {"Q1": "C"},
    marks=SA,
    dropped={"Q1": "It is the charge on the other sphere."},
    mistakes=(
        Mistake(
            "discriminant",
            "Q1",
            "(S + sqrt(S^2 + 4*P))/2",
            "You added {4*P} under the root. The root holds {S^2 - 4*P}: subtract, and put P in with its sign.",
        ),
    ),
)


def product(acting: str) -> Relation:
    """The product of both charges with its sign, from the force before the touch."""
    minus = acting == "attract"
    signed = "attract, so it is negative" if minus else "repel, so it is positive"
    return Relation(
        "F_1 = -(k*P/r^2)" if minus else "F_1 = k*P/r^2",
        "Product of the charges, P = Q₁Q₂",
        f"Coulomb's law before the touch gives the product; they {signed}. Its unit is C².",
        {"P": "C^2"},
        PLAIN_LAW,
        marks=SA,
        quotes=(COULOMB.name,),
    )


def first_charges(*numbers: str) -> tuple[Given, ...]:
    """The boxes for what A and B carried before the touch."""
    return tuple(
        charge(
            name,
            f"Charge on {letter} before",
            f"Before the touch {letter} carries {{}}.",
            drawn,
            ask=f"Calculate the charge that {letter} carried before the touch.",
        )
        for (letter, name), drawn in zip(SPHERES, numbers, strict=True)
    )


# --- the electrons that move -------------------------------------------------------------------------------

CHANGE = Relation(
    "DeltaQ = Q_new - Q1",
    "Find the change of charge",
    "Only electrons move, so the change of charge counts them. Final minus initial.",
    {"DeltaQ": "C"},
    marks=NO_MARKS,
    mistakes=(
        Mistake(
            "final-charge",
            "DeltaQ",
            "Q_new",
            "You counted the charge that is there afterwards. Only what moved was carried over: subtract the charge"
            " before, {Q1}.",
        ),
    ),
)
COUNT = Relation(
    "n = abs(DeltaQ)/e",
    "Count the electrons",
    "Each electron carries e in size. Electrons leave the more negative sphere.",
    {"n": ""},
    "Divide the charge that moved by the charge of one electron.",
    said={"n": Said(count=True)},
    mistakes=(
        Mistake(
            "multiplied",
            "n",
            "abs(DeltaQ)*e",
            PER_ELECTRON % "abs(DeltaQ)",
        ),
    ),
)


def electrons(key: str = "electrons", pair: str = "AB", when: str = "", **names: str) -> Part:
    """How many electrons moved in a touch, from the change of the first sphere's charge, and from which sphere.

    names: this touch's own names for Q1 and Q2 (before), Q_new, DeltaQ and n.
    """
    first, second = tuple(pair)
    away, back = f"{first}-to-{second}", f"{second}-to-{first}"
    way = Kind(
        "electrons from one sphere to the other",
        ((away, f"electrons move from {first} to {second}"), (back, f"electrons move from {second} to {first}")),
        ((away, back),),
    )
    change = replace(
        CHANGE,
        what=f"Find the change in {first}'s charge",
        plain=f"How much more (or less) charge {first} has now than before.",
    )
    count = replace(COUNT, directions={"n": lambda values: way.by_sign(values["Q2"] - values["Q1"], away)})
    ask = f"Calculate how many electrons moved{when}, and say from which sphere to which."
    return Part(key, "calculate", ask, (*change.renamed(**names).steps(), *count.renamed(**names).steps()))


def refuse_idle(values: Values, before: str, after: str, scale: float, field: str) -> None:
    """Refuses a touch in which no electron moves."""
    moved = abs(values[after] - values[before])
    if moved <= 1e-9 * scale:
        raise Refusal(field, "The charges are already equal: nothing would move. Change one of them.")
    refuse_part_of_one(moved / values["e"], field)


def few_moved(values: Values) -> tuple[str, ...]:
    """A warning where the electrons are few and no whole number."""
    return few_electrons(abs(values["Q_new"] - values["Q1"]) / values["e"])
