"""What the electrostatics topics share: the laws, how a charge, a distance and a force are asked for, directions.

F = k Q₁ Q₂ / r² with the sizes of the charges; like signs repel, unlike attract.
Ranges and refusals: common practice, no source.
"""

from __future__ import annotations

from calc.model.answers import Direction, Law
from calc.model.directions import ATTRACTION, SIGN_OF_CHARGE
from calc.model.questions import Data, Input, Mistake, Refusal
from calc.model.relations import Relation
from calc.topics.shared.motion_laws import EQUILIBRIUM as EQUILIBRIUM
from calc.topics.shared.motion_laws import SECOND as SECOND
from calc.topics.shared.stating import named as named
from calc.topics.shared.stating import state as state

ELECTROSTATICS = "Electrostatics"
COULOMB = Law(
    "Coulomb's law",
    "The magnitude of the electrostatic force that one point charge exerts on another is directly proportional to the"
    " product of the magnitudes of the charges and inversely proportional to the square of the distance between them.",
    (
        "directly proportional to the product of the magnitudes of the charges",
        "inversely proportional to the square of the distance",
    ),
    formulas=("F = k*Q1*Q2/r^2",),
    group=ELECTROSTATICS,
)
CONSERVATION = Law(
    "Conservation of charge",
    "The net charge of an isolated system stays constant.",
    ("net charge", "isolated system", "constant"),
)
QUANTISATION = Law(
    "Quantisation of charge",
    "Every charge is a whole-number multiple of the charge of one electron.",
    ("whole-number multiple",),
    formulas=("n = Q/e",),
    group=ELECTROSTATICS,
)
NO_DISTANCE = (
    "Two charges exert a force on each other however far apart they are: a zero force gives no distance. Type a force"
    " above zero."
)
NO_PULL = "A force of zero neither attracts nor repels: one of the charges is zero then."


def charge(name: str, words: str) -> Input:
    """A charge with its sign; sizes from 1 pC to 100 µC are usual in class."""
    return Input(name, words, "nC", 1e-12, 1e-4, signed=True, help="with its sign")


def distance(name: str = "r", words: str = "Distance between the centres") -> Input:
    return Input(name, words, "m", 1e-3, 10, refusal="Distance must be greater than zero.")


def force(name: str = "F", words: str = "Electrostatic force (size)") -> Input:
    return Input(
        name,
        words,
        "N",
        1e-9,
        1e3,
        over=None,
        refusal="Enter the size of the force; choose the direction separately.",
    )


def kind_of_force(product: float) -> Direction:
    """Attraction or repulsion, from the product of the two charges with their signs."""
    return ATTRACTION.of("repel" if product > 0 else "attract")


def refuse_zero_charge(data: Data, *names: str) -> None:
    """A divisor may not be zero: without a charge there is no force to work from."""
    for name in names:
        if data.has(name) and data.values[name] == 0:
            raise Refusal(name, "A zero charge gives no force, so this cannot be found.")


WHY_SIGN = "The signs only tell attraction from repulsion. Put the sizes of the charges into the formula."
PLAIN_LAW = (
    "Two charged things push or pull each other. More charge on either one makes the force bigger in step; "
    "twice as far apart makes it four times weaker."
)

NOT_SQUARED = "You divided by {r} only once. The force falls with the square of the distance, so divide by {r^2}."
ONLY_ONCE = "You multiplied by {r} only once. Coulomb's law has the square of the distance, so multiply by {r^2}."
NOT_ADDED = "You added {Q1} and {Q2}. The force grows in step with each of the two charges, so multiply them: {Q1*Q2}."
NOT_ROOTED = "You stopped at {r^2}. Take its square root: that is the distance {r}."
PER_ELECTRON = "You multiplied by {e}. Each electron carries {e}, so find how often {e} goes into {%s}: divide."
EACH_BRINGS = "You divided {%s}. Each of the electrons brings the charge {e}, so multiply {n} by {e}."
FROM_Y_AXIS = "You have the angle with the y-axis. The angle {theta} is measured from the x-axis, so divide {y} by {x}."
PLATE_SLIPS = (
    Mistake(
        "multiplied",
        "E",
        "V*d",
        "You multiplied {V} by {d}. {E} tells how many volts there are for each metre, so divide: {E} = {V/d}.",
    ),
    Mistake(
        "divided",
        "V",
        "E/d",
        "You divided {E} by {d}. {E} tells how many volts there are for each metre, so multiply: {V} = {E*d}.",
    ),
    Mistake(
        "upside-down",
        "d",
        "E/V",
        "You divided {E} by {V}. {E} tells how many volts there are for each metre: divide {V} by {E} to get {d}.",
    ),
)
ALONE = "You have the formula upside down. Rearrange again: {%s} is alone when {F*r^2} is divided by {k*%s}."
POINT_CHARGES = Relation(
    "F = k*Q1*Q2/r^2",
    what="Coulomb's law",
    why=WHY_SIGN,
    plain=PLAIN_LAW,
    units={"F": "N", "Q1": "C", "Q2": "C", "r": "m"},
    sizes=("Q1", "Q2"),
    quotes=(COULOMB.name,),
    mistakes=(
        Mistake("not-squared", "F", "k*Q1*Q2/r", NOT_SQUARED, "the answer is {r} times the right one"),
        Mistake("added", "F", "k*(Q1+Q2)/r^2", NOT_ADDED),
        Mistake("not-squared", "Q1", "F*r/(k*Q2)", ONLY_ONCE),
        Mistake("upside-down", "Q1", "k*Q2/(F*r^2)", ALONE % ("Q1", "Q2")),
        Mistake("not-squared", "Q2", "F*r/(k*Q1)", ONLY_ONCE),
        Mistake("upside-down", "Q2", "k*Q1/(F*r^2)", ALONE % ("Q2", "Q1")),
        Mistake(
            "root-omitted",
            "r",
            "k*Q1*Q2/F",
            NOT_ROOTED,
            "the answer is the square of the distance",
        ),
        Mistake("added", "r", "sqrt(k*(Q1+Q2)/F)", NOT_ADDED),
    ),
)


def sign_of_charge(sign: float) -> Direction:
    """The sign of a charge as the direction-like part of an answer."""
    return SIGN_OF_CHARGE.of("positive" if sign > 0 else "negative")
