"""What the electric-field questions share: laws, boxes, directions, warnings and figures.

E = kQ/r² of a source charge, E = F/q on a charge placed in the field, E = V/d between
plates: data-sheet equations. Ranges, marks and the 3 × 10⁶ N·C⁻¹ at which air breaks
down: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from math import copysign, isclose, prod
from typing import Any

from calc.figures import Figure, Force, field_pattern, free_body_diagram, plates_scene
from calc.figures.pieces import Sign
from calc.language.printing import Style, exact
from calc.model.answers import Law, PartKind, Point
from calc.model.constants import SHEET
from calc.model.directions import FOUR_WAYS, UP_DOWN, Kind
from calc.model.questions import Choice, Data, Input, Part, Plan, Refusal, Step, Values
from calc.model.relations import Towards
from calc.topics.shared.electrostatics import ELECTROSTATICS
from calc.topics.shared.work import WORK_ENERGY as WORK_ENERGY
from calc.working.working import run

FIELD = Law(
    "Electric field at a point",
    "The electric field at a point is the electrostatic force per unit positive charge placed at that point.",
    ("electrostatic force", "per unit positive charge"),
    formulas=("E = k*Q/r^2", "E = F/q"),
    group=ELECTROSTATICS,
)
TEST_CHARGE = Law(
    "Direction of an electric field",
    "The electric field at a point has the direction of the force that a small positive test charge would feel there.",
    ("direction of the force", "positive test charge"),
)
ADDING = Law(
    "Superposition of fields",
    "The net electric field at a point is the vector sum of the fields that each charge would make there alone.",
    ("vector sum", "each charge"),
)
UNIFORM = Law(
    "Uniform field",
    "Between parallel charged plates the field has the same size and direction everywhere, from the positive towards "
    "the negative plate.",
    ("same size and direction", "towards the negative plate"),
    formulas=("E = V/d",),
    group=ELECTROSTATICS,
)

MOTION = Law(
    "Motion with constant acceleration",
    "When the acceleration is constant, the velocity changes by the same amount in every second.",
    ("acceleration is constant", "same amount in every second"),
    formulas=("v = u + a*t", "s = u*t + 1/2*a*t^2", "v^2 = u^2 + 2*a*s"),
    group="Motion",
)

BREAKDOWN = 3e6  # N·C⁻¹, dry air
AIR = "Air would break down: above 3 × 10⁶ N·C⁻¹ a spark jumps. It is worked out as in a vacuum; check the prefixes."
NO_FIELD = "A zero charge gives no field, so this cannot be found. Type a charge that is not zero."
AT_SOURCE = "Field is undefined there: point P is where {} is. Move P away from the charge."
SHARED = "Two charges share a point. Give each its own position."

PLAIN_FIELD = (
    "The field tells how hard one coulomb would be pushed there. A bigger charge makes it stronger; "
    "twice as far away makes it four times weaker."
)
WHY_SOURCE = "Q is the charge that makes the field. Put in its size; its sign gives the direction."
NOT_SQUARED = "You divided by {r} only once. The field falls with the square of the distance, so divide by {r^2}."

FOUR = FOUR_WAYS.options
TURNED = {"right": 0.0, "up": 90.0, "left": 180.0, "down": 270.0}


def field(name: str = "E", words: str = "Electric field (size)", unit: str = "N·C⁻¹") -> Input:
    """A field's size. Above breakdown there is a warning of its own (see ``in_air``), so no upper end here."""
    return Input(
        name,
        words,
        unit,
        1,
        1e30,
        refusal="The electric field must be greater than zero: enter its size; choose the direction separately.",
    )


def placed(words: str, name: str = "q", optional: bool = False) -> Input:
    """A charge put into a field, from one electron charge to 100 µC."""
    return Input(name, words, "nC", 1e-19, 1e-4, signed=True, optional=optional, help="with its sign")


def position(name: str, words: str) -> Input:
    return Input(name, words, "m", 1e-3, 10, signed=True, help="may be negative")


def voltage(name: str = "V", words: str = "Potential difference between the plates") -> Input:
    return Input(name, words, "V", 1, 5e4, refusal="Potential difference must be greater than zero.")


def gap(name: str = "d", words: str = "Distance between the plates") -> Input:
    return Input(name, words, "mm", 1e-3, 0.5, refusal="Distance must be greater than zero.")


def upper_plate() -> Choice:
    return Choice("upper", "The upper plate is", (("positive", "positive"), ("negative", "negative")))


def words_of(key: str) -> str:
    """One of the four ways, in a sentence."""
    return FOUR_WAYS.of(key).words


def follows(along: str, sign: float) -> str:
    """The way the force points on a charge of this sign in a field along ``along``."""
    return along if sign > 0 else FOUR_WAYS.opposite(along)


def by_value(kind: Kind, key: str, *names: str, sign: float = 1) -> Towards:
    """The direction ``key`` while the product of these values and ``sign`` is positive, its opposite while it is
    negative, none for zero: so it follows a learner's own values."""
    return lambda values: kind.by_sign(prod((copysign(bool(values[n]), values[n]) for n in names), start=sign), key)


def refuse_zero(data: Data, *names: str) -> None:
    for name in names:
        if data.has(name) and data.values[name] == 0:
            raise Refusal(name, NO_FIELD)


def refuse_idle(data: Data) -> None:
    """A charge placed at P may be left out, but not be zero."""
    if data.has("q") and data.values["q"] == 0:
        raise Refusal("q", "A zero charge feels no force: leave this box empty.")


def air(values: Values, *fields: str) -> tuple[str, ...]:
    """The warning about air if one of these fields is beyond breakdown."""
    return (AIR,) if any(values[name] > BREAKDOWN for name in fields) else ()


def in_air(plan: Plan, data: Data, *fields: str) -> Plan:
    """The plan, with the warning about air if one of these fields is beyond breakdown."""
    return replace(plan, warnings=(*plan.warnings, *air(run(plan, data.settings.constants()), *fields)))


def memo(key: str, kind: PartKind, ask: str, *points: tuple[str, ...], **rest: Any) -> Part:
    """A part in words, one mark a point: its sentence, then the phrases that must be there."""
    return Part(key, kind, ask, points=tuple(Point(words, 1, tuple(keys)) for words, *keys in points), **rest)


def define(law: Law, ask: str, key: str = "define") -> Part:
    return Part(key, "state", ask, points=(Point(law.words, law.marks, law.keys),))


DEFINE = define(FIELD, "Define the electric field at a point.")


def why_direction(sign: float, source: str = "the charge", key: str = "direction") -> Part:
    """The direction at P, reasoned with a small positive test charge."""
    act, way = ("repelled", "away from") if sign > 0 else ("attracted", "towards")
    kind = "positive" if sign > 0 else "negative"
    return memo(
        key,
        "explain",
        "Explain the direction of the field at P with a small positive test charge.",
        (f"{source[0].upper()}{source[1:]} is {kind}, so a small positive test charge at P is {act}.", act),
        (f"The field has the direction of that force: {way} {source}.", way),
    )


def pattern_points(*charges: float) -> tuple[Point, ...]:
    """What a memo looks for in a drawing of field lines around these charges (C, with their signs)."""
    last = (
        Point(
            f"Lines never cross; {share_of_lines(charges)}, closest together where the field is strongest.",
            1,
            ("never cross",),
        )
        if len(charges) > 1
        else Point("Lines straight and evenly spread, along the radius (at 90° to the surface).", 1, ("radius",))
    )
    return (Point("Arrows away from positive charges and towards negative ones.", 1, ("arrows",)), last)


def largest(charges: Sequence[float]) -> tuple[int, ...]:
    """Which of the charges are largest in size: one, or several of the same size."""
    most = max(abs(charge) for charge in charges)
    return tuple(i for i, charge in enumerate(charges) if isclose(abs(charge), most))


def share_of_lines(charges: Sequence[float]) -> str:
    """How many lines belong to which of several charges."""
    if len(largest(charges)) == len(charges):
        return "equally many lines at each charge, because the charges are equal in size"
    return f"more lines at {'the larger charge' if len(charges) == 2 else 'larger charges'}"


def pattern(charges: Sequence[tuple[str, float, float, float]]) -> Figure:
    """Field lines followed through the numbers: (label, charge, x, y)."""
    names = " and ".join(label for label, *_ in charges) if len(charges) < 3 else "the charges"
    return field_pattern(charges, title=f"Field lines of {names}")


def pattern_part(around: str, figure: Callable[[Values], Figure], *charges: float) -> Part:
    """The part that asks for the field lines of these charges (C, with their signs)."""
    return Part("pattern", "draw", f"Draw the field around {around}.", points=pattern_points(*charges), figure=figure)


def part_a_step(chain: Sequence[Step], asks: Mapping[str, tuple[str, str]]) -> tuple[Part, ...]:
    """A part for each step. asks: by the name a step makes, the part's key and what it asks."""
    return tuple(Part(asks[step.makes][0], "calculate", asks[step.makes][1], (step,)) for step in chain)


def field_along(data: Data) -> str:
    """The field between level plates: down from a positive upper plate, up to a negative one."""
    return "down" if data.choices["upper"] == "positive" else "up"


def field_way(data: Data, name: str = "E") -> Towards:
    """The direction of the field ``name`` between level plates."""
    return by_value(UP_DOWN, field_along(data), name)


def upper_sign(data: Data) -> Sign:
    return "+" if data.choices["upper"] == "positive" else "-"


def plates(sign: Sign, labels: Sequence[str] = ("V", "d"), particle: str = "", particle_sign: Sign = "") -> Figure:
    """The uniform field between level plates, with a charged particle half-way if one is named."""
    return plates_scene(
        upper_sign=sign,
        voltage=labels[0],
        separation=labels[1],
        particle=particle,
        particle_sign=particle_sign,
        particle_shows=("q", "n"),
        title="The field between the plates",
        notes=("The edges of the plates are ignored.",),
    )


def held_drop(_: Values) -> Figure:
    """The two forces on a drop that hangs at rest: equal and opposite."""
    return free_body_diagram(
        (Force("F_E", 1.0, 90.0), Force("F_g", 1.0, 270.0)), equal_lengths=True, title="Forces on the drop at rest"
    )


def typed_number(value: float, unit: str) -> str:
    """A drawn value, three significant figures, as a reader would type it."""
    text = exact(float(f"{value:.3g}"), Style()).text
    return f"{text} {unit}".replace("\N{NO-BREAK SPACE}", " ")


def school(*names: str) -> Mapping[str, float]:
    """Data-sheet constants for drawing practice numbers."""
    return {name: SHEET[name].school for name in names}
