"""What a reader sets up on the situation page, and what it does: the chain of bodies, decided by the physics core.

Forwards is to the right, up the slope, or towards what hangs beyond the right end; bodies are numbered that way.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import degrees
from typing import Literal

from calc.model.answers import Direction
from calc.model.directions import ALONG_SLOPE, LEFT_RIGHT, UP_DOWN
from calc.model.questions import Choice, Refusal
from calc.topics.forces.words import LIFTS
from calc.topics.newton.situation_extras import CHARGES, NEARBY, Extra, extras_of, way_of
from calc.topics.newton.situation_shapes import NOT_THERE, SHAPES, Shape, force_of, room
from calc.topics.shared.connected import HANGING, Body, Kind, Outcome, Pull, outcome

STEEPEST = 70.0  # degrees; the drawing has no room for more
ODD = "μₖ may not be larger than μₛ: friction would stop it as soon as it starts. Check the coefficients."
STEEP = f"The page draws slopes up to {STEEPEST:.0f}°: use a smaller angle."
NOTHING = (
    "Nothing acts along the surface and everything is at rest, so nothing happens: friction is zero. Choose a force, a"
    " slope, or a motion at first."
)
STEADY_ON = (
    "Nothing acts along a smooth, level surface, so by Newton's first law the velocity stays as it is: a is zero."
    " Choose a force, a slope or friction."
)
LEAVE = {
    "m2": "There is one body: leave this box empty, or choose more bodies.",
    "m3": "There are only two bodies: leave this box empty, or choose three.",
    "theta": "No body stands on a slope in this arrangement: leave this box empty, or choose another arrangement.",
    "P": "There is no pull or push: leave this box empty, or choose one.",
    "phi": "There is no pull or push: leave this box empty, or choose one.",
    "mu_s": "No body touches a surface here: leave this box empty.",
    "mu_k": "No body touches a surface here: leave this box empty.",
    "theta2": "There is no second slope: leave this box empty, or choose bodies on two slopes.",
}
FILL = {
    "m2": "Fill in the mass of the second body.",
    "m3": "Fill in the mass of the third body.",
    "theta": "Fill in the angle of the surface; 0° is level.",
    "P": "Fill in the size of the pull or push.",
    "phi": "Fill in its angle with the surface; 0° is along the surface.",
    "mu_s": "Fill in the coefficient of static friction; 0 for a smooth surface.",
    "mu_k": "Fill in the coefficient of kinetic friction; 0 for a smooth surface.",
    "theta2": "Fill in the angle of the slope on the right.",
}
FLAT = "A ridge has a slope on each side: give an angle above zero, or choose another arrangement."
START = Choice(
    "start",
    "At first",
    (
        ("rest", "everything is at rest"),
        ("on", "everything moves forwards"),
        ("back", "everything moves backwards"),
        ("goes-on", "at rest, then off forwards"),
        ("goes-back", "at rest, then off backwards"),
        ("slips-on", "about to slip forwards"),
        ("slips-back", "about to slip backwards"),
        ("steady-on", "forwards at constant velocity"),
        ("steady-back", "backwards at constant velocity"),
    ),
)


type Told = Literal["", "goes", "moves", "slips", "steady"]  # what is known of a motion
OWN = ("mu_s2", "mu_k2", "mu_s3", "mu_k3")  # coefficients of a body that has its own
FURTHER = ("F", "E", *CHARGES, *NEARBY, *OWN)  # boxes that no arrangement needs


@dataclass(frozen=True)
class Setup:
    """What is set up and what it does. force: 0 none, +1 forwards, −1 backwards. way: of the motion, or of D at rest.

    acted: the number of the body that the force acts on. found: what they do from now on. told: what is known of the
    motion where something else is asked: they move off from rest or move with a known force or acceleration, are about
    to slip, or move steadily; "" where what happens is asked. extras: further forces along the surface; field: the way
    an electric field points, 0 without one. own: the coefficients that a body has for itself.
    """

    shape: Shape
    slope: bool
    force: int
    push: bool
    acted: int
    start: int
    bodies: tuple[Body, ...]
    found: Outcome
    way: int
    told: Told = ""
    extras: tuple[Extra, ...] = ()
    field: int = 0
    own: frozenset[str] = frozenset()

    @property
    def moves(self) -> bool:
        """Whether they move or start to."""
        return self.found.state == "moves"

    @property
    def slips(self) -> bool:
        """Whether each friction is as large as static friction can be."""
        return self.told == "slips"

    @property
    def all_at_limit(self) -> bool:
        """Whether several rough bodies rest just held: then each friction is as large as it can be."""
        return self.found.state == "limit" and len(self.rough) > 1 and not self.told

    @property
    def balanced(self) -> bool:
        """Whether the net force on each is known to be zero."""
        return self.told in ("slips", "steady") or not self.moves

    @property
    def sizes(self) -> tuple[str, ...]:
        """The charges, whose signs give directions and are not put into laws."""
        return tuple(name for extra in self.extras for name in extra.charges)

    @property
    def beside(self) -> Extra | None:
        """The force of a fixed charge."""
        return next((extra for extra in self.extras if extra.side), None)

    def mu(self, kind: str, n: int) -> str:
        """The name of the coefficient of static ("s") or kinetic ("k") friction of body n."""
        return f"mu_{kind}{n}" if f"mu_{kind}{n}" in self.own else f"mu_{kind}"

    @property
    def rough(self) -> tuple[int, ...]:
        """The numbers of the bodies that friction acts on."""
        return tuple(n for n, body in enumerate(self.bodies, 1) if not body.hangs and body.mu_s > 0)

    @property
    def numbers(self) -> tuple[int, ...]:
        """The numbers of the bodies on the surface."""
        return self.shape.standing

    @property
    def link(self) -> str:
        """The letter of the force in a link."""
        return "R" if self.shape.touch else "T"

    @property
    def left(self) -> bool:
        """Whether the motion is told of the body on the left: the other goes another way."""
        return self.shape.ridge or not self.shape.on

    @property
    def of_one(self) -> bool:
        """Whether the motion is told of some of the bodies only."""
        return self.shape.ridge or self.shape.on < self.shape.count

    def falls(self, n: int) -> bool:
        """Whether the surface falls forwards under body n."""
        return self.shape.ridge and n > 1

    def angle(self, n: int) -> str:
        """The name of the angle of the slope under body n; "" on the level."""
        return ("theta2" if self.falls(n) else "theta") if self.slope else ""

    def where(self, way: int, n: int = 1) -> Direction:
        """Forwards (+1) and backwards as directions, of what stands on the surface, or of the first that hangs.

        n: the body, where the surface bends.
        """
        if not self.shape.on:
            return UP_DOWN.of("up" if way > 0 else "down")
        if self.slope:
            way = -way if self.falls(n) else way
            return ALONG_SLOPE.of("up-slope" if way > 0 else "down-slope")
        return LEFT_RIGHT.of("right" if way > 0 else "left")


def needed(choices: Mapping[str, str]) -> set[str]:
    """The boxes that apply to what is chosen."""
    shape = SHAPES[choices["chain"]]
    return (
        {f"m{n}" for n in range(1, shape.count + 1)}
        | ({"theta"} if shape.slopes else set())
        | ({"theta2"} if shape.ridge else set())
        | ({"mu_s", "mu_k"} if shape.on else set())
        | ({"P", "phi"} if choices["force"] != "none" else set())
    )


def fits(choices: Mapping[str, str], filled: set[str]) -> None:
    """Refuses a force that has no room, a box that does not apply, and one that is missing."""
    room(choices)
    apply = needed(choices)
    for name in LEAVE:
        if name in filled and name not in apply:
            raise Refusal(name, LEAVE[name])
        if name in apply and name not in filled:
            raise Refusal(name, FILL[name])


def bodies_of(choices: Mapping[str, str], v: Mapping[str, float], extras: tuple[Extra, ...] = ()) -> tuple[Body, ...]:
    """The bodies as the physics core has them."""
    shape, found = SHAPES[choices["chain"]], list[Body]()
    force, push, acted = force_of(choices["force"], shape)
    for n in range(1, shape.count + 1):
        mass = v[f"m{n}"]
        if shape.hangs(n):
            found.append(Body(mass, HANGING if n == 1 and shape.behind else -HANGING))
            continue
        turn = -v["phi"] if push else v.get("phi", 0.0)
        pull = Pull(v["P"], turn if force > 0 else 2 * HANGING - turn) if force and n == acted else None
        along = sum(extra.way * extra.size for extra in extras if extra.n == n)
        static, kinetic = (v.get(f"mu_{kind}{n}", v[f"mu_{kind}"]) for kind in ("s", "k"))
        rise = -v["theta2"] if shape.ridge and n > 1 else v.get("theta", 0.0)
        found.append(Body(mass, rise, static, kinetic, (pull,) if pull else (), along))
    return tuple(found)


def coefficients(shape: Shape, v: Mapping[str, float]) -> None:
    """Refuses coefficients of a body that is not there, and kinetic ones above static ones."""
    for name in OWN:
        if name in v and int(name[-1]) not in shape.standing:
            raise Refusal(name, NOT_THERE)
    for n in range(1, shape.count + 1):
        static, kinetic = (v.get(f"mu_{kind}{n}", v.get(f"mu_{kind}", 0.0)) for kind in ("s", "k"))
        if kinetic > static:
            raise Refusal(next(name for name in (f"mu_k{n}", f"mu_s{n}", "mu_k") if name in v), ODD)


def placed(choices: Mapping[str, str], v: Mapping[str, float], extras: tuple[Extra, ...]) -> Setup:
    """What is chosen, with its bodies, set moving forwards; what they do is not decided yet."""
    shape = SHAPES[choices["chain"]]
    for name in ("theta", "theta2") if shape.ridge else ():
        if not v[name]:
            raise Refusal(name, FLAT)
    return Setup(
        shape,
        shape.ridge or v.get("theta", 0.0) > 0,
        *force_of(choices["force"], shape),
        way_of(choices, "start"),
        bodies_of(choices, v, extras),
        Outcome("moves", (), ()),
        1,
        extras=extras,
        field=way_of(choices, "field"),
        own=frozenset(v) & set(OWN),
    )


def set_up(choices: Mapping[str, str], v: Mapping[str, float]) -> Setup:
    """What is chosen and what it does. v: the data and the constants g and, for a fixed charge, k.

    Raises Refusal for what cannot be or is not worked here.
    """
    fits(choices, set(v))
    shape = SHAPES[choices["chain"]]
    for name in ("theta", "theta2"):
        if degrees(v.get(name, 0.0)) > STEEPEST + 1e-9:
            raise Refusal(name, STEEP)
    coefficients(shape, v)
    here = placed(choices, v, extras_of(choices, v))
    acts = here.force or here.slope or shape.ahead or here.extras
    if not acts and not (here.start and any(body.mu_k for body in here.bodies)):
        raise Refusal("force", STEADY_ON if here.start else NOTHING)
    kinds: list[Kind] = ["contact" if shape.touch else "string"] * (shape.count - 1)
    found = outcome(here.bodies, kinds, g=v["g"], velocity=float(here.start))
    if found.state == "lifts off":
        raise Refusal("P", LIFTS)
    drive = sum(body.drive(v["g"]) for body in here.bodies)
    return replace(here, found=found, way=here.start or (-1 if drive < 0 else 1))
