"""A charge that moves in a uniform field: the laws, the boxes and the limits that its questions share.

E = V/d, F = qE, F = ma, the equations of motion from rest along the field, W = qEs and the kinetic
energy ½mv²: data-sheet equations. The weight is left out below a thousandth of the electrostatic
force; speeds are far below that of light. Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from calc.language.expressions import ExpressionError
from calc.model.answers import Direction, Law
from calc.model.directions import FOUR_WAYS, SIGN_OF_CHARGE
from calc.model.questions import Choice, Data, Input, Mistake, Refusal, Step, Values
from calc.model.relations import Relation
from calc.topics.electric_field.charge import along_or_against, follows_field
from calc.topics.electric_field.shared import AIR, BREAKDOWN, FOUR, field, follows, gap, voltage
from calc.topics.shared.electrostatics import SECOND
from calc.working.chain import spread
from calc.working.working import measure

MOTION = Law(
    "Motion with constant acceleration",
    "When the acceleration is constant, the velocity changes by the same amount in every second.",
    ("acceleration is constant", "same amount in every second"),
    formulas=("v = u + a*t", "s = u*t + 1/2*a*t^2", "v^2 = u^2 + 2*a*s"),
    group="Motion",
)
WORK_ENERGY = Law(
    "Work-energy theorem",
    "The net work done on a body is equal to the change in the kinetic energy of the body.",
    ("net work", "change in the kinetic energy"),
    formulas=("E_k = 1/2*m*v^2",),
    group="Work and energy",
)

PARTICLES = {"electron": ("e", "m_e", -1), "proton": ("e", "m_p", 1)}
# Charge (C) and mass (kg) of ions for practice: He²⁺, Na⁺, Cl⁻, O²⁻, Al³⁺, from atomic masses (from memory).
IONS = ((3.2e-19, 6.64e-27), (1.6e-19, 3.82e-26), (-1.6e-19, 5.89e-26), (-3.2e-19, 2.66e-26), (4.8e-19, 4.48e-26))
TIMES = 1000  # the weight counts for less than this share of the electrostatic force
FAST = 0.1  # of the speed of light: beyond it the formulas are a little off (common practice, no source)


@dataclass(frozen=True)
class Charged:
    """The charged body of one set of data.

    q, m: the names of its charge and mass. sign: of the charge, 0 where nothing tells it.
    along: which way the field points.
    """

    name: str
    q: str
    m: str
    sign: int
    along: str

    @property
    def pushed(self) -> str:
        """Which way the electrostatic force points; '' where the sign is not known."""
        return follows(self.along, self.sign) if self.sign else ""

    def way(self, _: Values) -> Direction | None:
        """The direction of the force, the acceleration and what they bring about."""
        return FOUR_WAYS.of(self.pushed) if self.sign else None

    def sign_of_charge(self, _: Values) -> Direction | None:
        """The sign of the charge as a direction."""
        return SIGN_OF_CHARGE.of("negative" if self.sign < 0 else "positive") if self.sign else None

    @property
    def kind(self) -> str:
        return "negative" if self.sign < 0 else "positive"


def charged(data: Data, along: str, choice: str, told: int) -> Charged:
    """Who moves. told: the sign that the box ``choice`` gives its charge, 0 for none.

    Refuses a charge of zero, one that stands on the data sheet, and one that ``choice`` contradicts.
    """
    name = data.choices["particle"]
    q, m, sign = PARTICLES.get(name, ("q", "m", told))
    if name in PARTICLES:
        typed = [box for box in ("q", "m") if data.has(box)]
        if typed:
            raise Refusal(
                typed[0],
                f"Charge and mass of {an(name)} stand on the data sheet: leave this box empty, or choose another"
                " charged body.",
            )
        if {"q", "m"} & set(data.asked_names):
            raise Refusal(
                "particle",
                f"Charge and mass of {an(name)} stand on the data sheet. Choose another charged body to find one of"
                " them.",
            )
    elif data.has("q"):
        sign = data.sign("q")
        if not sign:
            raise Refusal("q", "A zero charge feels no force, so it stays as it is. Type a charge that is not zero.")
    body = Charged(name if name in PARTICLES else "charged body", q, m, sign, along)
    if told and told != sign:
        raise Refusal(
            choice,
            f"This does not fit the charge: it is {body.kind}, so the force on it points {words_of(body.pushed)}."
            " Choose “as its charge tells”.",
        )
    return body


ONLY_SIZE = "Only the size of the charge follows: say which way the body is pushed to learn its sign."
BY_CHARGE = ("charge", "as its charge tells")


def only_size(data: Data, body: Charged) -> tuple[str, ...]:
    """The note where the sign of a charge that is asked does not follow."""
    return () if body.sign or "q" not in data.asked_names else (ONLY_SIZE,)


def an(name: str) -> str:
    return f"{'an' if name[0] in 'aeiou' else 'a'} {name}"


# --- the laws --------------------------------------------------------------------------------------------------

NOT_ROOTED = "The square stands alone: take the square root."


def force_of(body: Charged) -> Relation:
    """F = qE on the body."""
    q, negative = body.q, body.sign < 0
    why = f"The charge of the {body.name} has the size e." if q == "e" else "Sizes go into the formula."
    if body.sign:
        why += f" {along_or_against(negative)}"
    units = {"E": "N·C⁻¹", "F": "N", "q": "C"}
    return Relation(
        f"F = {q}*E",
        what="Force and field: so much force on every coulomb",
        why=why,
        plain=(
            "The field says how hard one coulomb would be pushed. Multiply by how many coulombs there are, or share the"
            " force out over them."
        ),
        units={name: unit for name, unit in units.items() if name != "q" or q == "q"},
        sizes=("q",) if q == "q" else (),
        directions={"F": body.way, "q": body.sign_of_charge},
        mistakes=(
            Mistake("multiplied", "E", f"F*{q}", "Per unit charge: divide the force by the charge."),
            Mistake("divided", "F", f"E/{q}", "E is force per coulomb: multiply by the charge."),
            Mistake("upside-down", "q", "E/F", "E is force per coulomb: q is the force divided by E."),
            *follows_field("F", f"{q}*E", negative),
        ),
    )


def newton(body: Charged) -> Relation:
    """F = ma: the electrostatic force is the net force."""
    m = body.m
    other = {"m_e": "m_p", "m_p": "m_e"}.get(m)
    look = "Look again at the data sheet: electrons and protons have different masses."
    return Relation(
        f"F = {m}*a",
        what="Newton's second law",
        quotes=(SECOND.name,),
        why=(
            "The electrostatic force is the only force worth counting: the weight is far smaller. The acceleration has"
            " its direction."
        ),
        plain="The same push speeds up a small mass more.",
        units={"F": "N", "a": "m·s⁻²", **({"m": "kg"} if m == "m" else {})},
        directions={"F": body.way, "a": body.way},
        mistakes=(
            Mistake("divided", "F", f"a/{m}", "F = ma: multiply the mass by the acceleration."),
            Mistake("multiplied", "a", f"F*{m}", "F = ma: divide the force by the mass."),
            Mistake("multiplied", "m", "F*a", "F = ma: divide the force by the acceleration."),
            *((Mistake("other-mass", "a", f"F/{other}", look),) if other else ()),
        ),
    )


def from_rest(s: str, v: str, way: Charged, rest: str) -> tuple[Relation, ...]:
    """The equations of motion along the field: distance ``s``, speed ``v`` after it. rest: why it starts
    without speed."""
    after = f"{rest} The field is uniform, so the acceleration is constant and the equations of motion hold."

    def law(line: str, what: str, *mistakes: Mistake) -> Relation:
        return Relation(
            line,
            what=what,
            why=after,
            plain="A steady push adds the same speed in every second.",
            units={s: "m", v: "m·s⁻¹", "a": "m·s⁻²", "t": "s"},
            directions={v: way.way, "a": way.way, **({s: way.way} if s == "y" else {})},
            mistakes=mistakes,
        )

    return (
        law(
            f"{v} = a*t",
            "The speed grows in step with the time",
            Mistake("divided", v, "a/t", "a is speed gained per second: multiply by the seconds."),
            Mistake("multiplied", "t", f"{v}*a", "a is speed gained per second: divide the speed by it."),
        ),
        law(
            f"{v}^2 = 2*a*{s}",
            "Speed after a distance, from rest",
            Mistake("root-omitted", v, f"2*a*{s}", "This is the square of the speed: take the square root."),
            Mistake("two-omitted", v, f"sqrt(a*{s})", "There is a 2 in the formula."),
            Mistake("not-squared", s, f"{v}/(2*a)", "Square the speed first."),
        ),
        law(
            f"{s} = 1/2*a*t^2",
            "Distance in a time, from rest",
            Mistake("not-squared", s, "1/2*a*t", "Square the time."),
            Mistake("half-omitted", s, "a*t^2", "There is a half in the formula."),
            Mistake("root-omitted", "t", f"2*{s}/a", NOT_ROOTED),
            Mistake("half-omitted", "t", f"sqrt({s}/a)", "There is a half in the formula."),
        ),
    )


def work_by_field(body: Charged, s: str) -> Relation:
    """W = qEs over the distance ``s`` along the field's line."""
    q = body.q
    return Relation(
        f"W = {q}*E*{s}",
        what="Work done by the field: force times distance along it",
        why=(
            "The force qE and the motion along the field's line have the same direction, so cos 0° = 1. Work has no"
            " direction."
        ),
        plain="Pushing harder, or over a longer way, takes more energy from the field.",
        units={"W": "J", "E": "V·m⁻¹", s: "m", **({"q": "C"} if q == "q" else {})},
        sizes=("q",) if q == "q" else (),
        directions={"q": body.sign_of_charge},
        mistakes=(
            Mistake("distance-omitted", "W", f"{q}*E", "This is the force: multiply by the distance."),
            Mistake("multiplied", s, f"W*{q}*E", "Work is force times distance: divide the work by the force."),
        ),
    )


# --- the boxes ---------------------------------------------------------------------------------------------------


def boxes(mass_of: str = "Mass of the body") -> tuple[Input | Choice, ...]:
    """Plates, field, particle, its charge and mass, force and acceleration."""
    return (
        voltage(),
        gap(),
        field("E", "Electric field between the plates", "V·m⁻¹"),
        Choice(
            "particle",
            "What moves",
            (("electron", "an electron"), ("proton", "a proton"), ("body", "another charged body")),
        ),
        Input(
            "q", "Charge of the body", "C", 1e-19, 1e-6, signed=True, help="with its sign; not for electron or proton"
        ),
        Input(
            "m",
            mass_of,
            "kg",
            1e-30,
            1e-3,
            refusal="Mass must be greater than zero.",
            help="not for electron or proton",
        ),
        Input(
            "F",
            "Electrostatic force (size)",
            "N",
            1e-20,
            1,
            refusal="Enter the size of the force, greater than zero; its direction follows from the field.",
        ),
        Input("a", "Acceleration (size)", "m·s⁻²", 1e3, 1e18, refusal="Acceleration must be greater than zero."),
    )


def length(name: str, words: str, unit: str = "mm") -> Input:
    return Input(name, words, unit, 1e-6, 1, refusal=f"{words} must be greater than zero.")


def speed(name: str, words: str) -> Input:
    return Input(name, words, "m·s⁻¹", 1e-3, 3e7, refusal=f"{words} must be greater than zero.")


def time(words: str) -> Input:
    return Input("t", words, "s", 1e-12, 100, refusal="Time must be greater than zero.")


def energy(words: str) -> Input:
    return Input("W", words, "J", 1e-22, 1, refusal="Work must be greater than zero.")


# --- what cannot be ------------------------------------------------------------------------------------------------


def following(data: Data, ways: Sequence[Step]) -> dict[str, float]:
    """All that follows from the data, to judge them by."""
    try:
        return spread(data.values, ways, data.settings.constants())
    except ExpressionError:
        return dict(data.values)


def refuse_weight(data: Data, found: Values) -> None:
    """The weight is left out only where it cannot be seen in the answer."""
    g = data.settings.constant("g")
    if "a" in found and found["a"] < TIMES * g:
        size = measure(found["a"], "m·s⁻²", data.settings.style).text
        raise Refusal(
            None,
            f"The weight counts here too: the electrostatic force alone gives {size}, less than a thousand times g, and"
            " these formulas leave the weight out. Take a stronger field, a larger charge or a smaller mass.",
        )


def refuse_light(data: Data, found: Values, *names: str) -> None:
    """Nothing is faster than light."""
    for name in names:
        if name in found and found[name] >= data.settings.constant("c"):
            raise Refusal(
                name if data.has(name) else None,
                "That is faster than light, which nothing can be: these formulas do not hold any more. Check the"
                " prefixes, or take a smaller potential difference.",
            )


def warned(values: Values, *names: str) -> tuple[str, ...]:
    """About sparks in air and about speeds near that of light."""
    told: tuple[str, ...] = ()
    if values.get("E", 0.0) > BREAKDOWN:
        told += (AIR,)
    if any(values.get(name, 0.0) > FAST * values["c"] for name in names):
        told += ("The speed is more than a tenth of that of light: these formulas make it a little too large.",)
    return told


def weight_told(values: Values, body: Charged) -> bool:
    """Whether the weight is known to be below a thousandth of the electrostatic force; unknown counts as so."""
    m, q = (values.get(name) for name in (body.m, body.q))
    if m is None or q is None or "E" not in values:
        return True
    return m * values["g"] < abs(q) * values["E"] / TIMES


def words_of(along: str) -> str:
    return dict(FOUR)[along]


def without_direction(relation: Relation, *names: str) -> Relation:
    """The relation with no direction asked of these names."""
    kept = {name: way for name, way in relation.directions.items() if name not in names}
    return replace(relation, directions=kept)
