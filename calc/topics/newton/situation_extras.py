"""Further forces of the situation page along the surface: a second one, that of a field, that of a fixed charge."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from calc.model.questions import Choice, Refusal
from calc.topics.newton.situation_shapes import NOT_THERE, SHAPES, Shape

ALSO = Choice(
    "also",
    "A second force, along the surface",
    (
        ("none", "no second force"),
        ("on-1", "forwards, on the first body"),
        ("back-1", "backwards, on the first body"),
        ("on-2", "forwards, on the second body"),
        ("back-2", "backwards, on the second body"),
        ("on-3", "forwards, on the third body"),
        ("back-3", "backwards, on the third body"),
    ),
    quiet=("none",),
    since=5,
)
FIELD = Choice(
    "field",
    "Electric field along the surface",
    (("none", "no field"), ("on", "a uniform field, forwards"), ("back", "a uniform field, backwards")),
    quiet=("none",),
    since=5,
    never=(
        (
            "across",
            "a field at an angle to the surface",
            "The field lies along the surface here. One across it changes the normal force like a pull at an angle.",
        ),
    ),
)
FIXED = Choice(
    "fixed",
    "A fixed charge in line with the bodies",
    (("none", "no fixed charge"), ("on", "in front of them"), ("back", "behind them")),
    quiet=("none",),
    since=6,
    never=(
        (
            "off",
            "a fixed charge off this line",
            "The fixed charge is in line with the bodies here. One off the line changes the normal force as well, like"
            " a pull or push at an angle.",
        ),
    ),
)
CHARGES = ("Q1", "Q2", "Q3")
NEARBY = ("Q", "r")  # boxes of a fixed charge
NO_FIELD = "There is no electric field: leave this box empty, or choose one."
NO_SECOND = "There is no second force: leave this box empty, or choose one."
NO_FIXED = "There is no fixed charge: leave this box empty, or choose one."
FILL_F = "Fill in the size of the second force."
FILL_E = "Fill in the strength of the field."
FILL_Q = "Fill in the charge of one of the bodies on the surface."
FILL_NEARBY = {"Q": "Fill in the fixed charge.", "r": "Fill in the distance between the two charges."}
TWO_CHARGES = "Two charged bodies act on each other as well, more and more as they come closer: charge one of them."
NO_CHARGE = "A charge of zero feels no force: fill in another, or choose “no field”."
NO_CHARGES = "A charge of zero has no part in a force: fill in another, or choose “no fixed charge”."
BOTH = "A field and a fixed charge together are not worked here: choose “no field”, or “no fixed charge”."
BENT = (
    "The line of the bodies bends at the ridge, so no field or fixed charge is in line with both: choose “no field” and"
    " “no fixed charge”, or another arrangement."
)
STRING_THERE = (
    "The string runs over its pulley on this side: put the fixed charge on the other side, or choose another"
    " arrangement."
)


@dataclass(frozen=True)
class Extra:
    """One more force along the surface on body n: forwards (+1) or backwards, with its size as the laws write it.

    charge: the name of the charge that is acted on; "" for a force of its own. size: in N. side: of a fixed charge, in
    front (+1) or behind; 0 without one.
    """

    n: int
    way: int
    term: str
    size: float
    charge: str = ""
    side: int = 0

    @property
    def charges(self) -> tuple[str, ...]:
        """The charges whose sizes give the force."""
        return ((self.charge, "Q") if self.side else (self.charge,)) if self.charge else ()

    @property
    def whole(self) -> str:
        """The force in the data alone."""
        return f"k*{self.charge}*Q/r^2" if self.side else self.term


def way_of(choices: Mapping[str, str], name: str) -> int:
    """Forwards (+1) or backwards, as a choice says; 0: there is none."""
    return {"on": 1, "back": -1}.get(choices.get(name, "none"), 0)


def charged(choices: Mapping[str, str]) -> bool:
    """Whether a field or a fixed charge acts on a charged body."""
    return bool(way_of(choices, "field") or way_of(choices, "fixed"))


def extras_of(choices: Mapping[str, str], v: Mapping[str, float]) -> tuple[Extra, ...]:
    """The second force, and that on a charge. v: the data, with k where there is a fixed charge.

    Raises Refusal for what does not belong together.
    """
    shape, field, fixed = SHAPES[choices["chain"]], way_of(choices, "field"), way_of(choices, "fixed")
    found = second(choices, v, shape)
    for name in ("E", *NEARBY):
        if name in v and not (field if name == "E" else fixed):
            raise Refusal(name, NO_FIELD if name == "E" else NO_FIXED)
    bodies = [name for name in CHARGES if name in v]
    if not (field or fixed):
        if bodies:
            raise Refusal(bodies[0], NO_FIELD)
        return found
    if shape.ridge:
        raise Refusal("field" if field else "fixed", BENT)
    if field and fixed:
        raise Refusal("fixed", BOTH)
    if (fixed > 0 and shape.ahead) or (fixed < 0 and shape.behind):
        raise Refusal("fixed", STRING_THERE if shape.on else NOT_THERE)
    return (*found, in_field(field, v, shape) if field else beside(fixed, v, shape))


def second(choices: Mapping[str, str], v: Mapping[str, float], shape: Shape) -> tuple[Extra, ...]:
    """The second force."""
    way, _, place = choices.get("also", "none").partition("-")
    if way == "none":
        if "F" in v:
            raise Refusal("F", NO_SECOND)
        return ()
    if int(place) not in shape.standing:
        raise Refusal("also", NOT_THERE)
    if "F" not in v:
        raise Refusal("F", FILL_F)
    return (Extra(int(place), 1 if way == "on" else -1, "F", v["F"]),)


def charge_of(v: Mapping[str, float], shape: Shape) -> str:
    """The name of the one charge that a body carries."""
    names = [name for name in CHARGES if name in v]
    if not names:
        raise Refusal(f"Q{min(shape.standing, default=1)}", FILL_Q if shape.standing else NOT_THERE)
    if len(names) > 1:
        raise Refusal(names[1], TWO_CHARGES)
    if int(names[0][1]) not in shape.standing:
        raise Refusal(names[0], NOT_THERE)
    return names[0]


def in_field(field: int, v: Mapping[str, float], shape: Shape) -> Extra:
    """The force of a field on the one charge in it."""
    if "E" not in v:
        raise Refusal("E", FILL_E)
    name = charge_of(v, shape)
    if not v[name]:
        raise Refusal(name, NO_CHARGE)
    return Extra(int(name[1]), field if v[name] > 0 else -field, f"{name}*E", abs(v[name]) * v["E"], name)


def beside(side: int, v: Mapping[str, float], shape: Shape) -> Extra:
    """Coulomb's force of the fixed charge: like charges repel, unlike ones attract."""
    for name in NEARBY:
        if name not in v:
            raise Refusal(name, FILL_NEARBY[name])
    name = charge_of(v, shape)
    for one in (name, "Q"):
        if not v[one]:
            raise Refusal(one, NO_CHARGES)
    size = v["k"] * abs(v[name] * v["Q"]) / v["r"] ** 2
    return Extra(int(name[1]), -side if v[name] * v["Q"] > 0 else side, "F_E", size, name, side)
