"""What a reader sets up on the situation page, and what it does: the chain of bodies, decided by the physics core.

Forwards is to the right, up the slope, or towards what hangs beyond the right end; bodies are numbered that way.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import degrees
from typing import Literal

from calc.model.answers import Direction
from calc.model.directions import ALONG_SLOPE, LEFT_RIGHT, UP_DOWN
from calc.model.questions import Choice, Refusal
from calc.topics.forces.words import LIFTS
from calc.topics.shared.connected import HANGING, Body, Kind, Outcome, Pull, outcome

STEEPEST = 70.0  # degrees; the drawing has no room for more
ODD = "μₖ may not be larger than μₛ: friction would stop it as soon as it starts. Check the coefficients."
STEEP = f"The page draws slopes up to {STEEPEST:.0f}°: use a smaller angle."
SLACK = (
    "A string goes slack here: a string only pulls, and the bodies it joins would come closer to each other. Treat them"
    " one by one (“one body”), or change the force, how it moves or a coefficient."
)
PARTS = (
    "The bodies part here: bodies that touch can only push each other. Treat them one by one (“one body”), or push from"
    " the other side."
)
NOTHING = (
    "Nothing acts along the surface and everything is at rest, so nothing happens: friction is zero. Choose a force, a"
    " slope, or a motion at first."
)
STEADY_ON = (
    "Nothing acts along a smooth, level surface, so by Newton's first law the velocity stays as it is: a is zero."
    " Choose a force, a slope or friction."
)
IN_THE_WAY = (
    "The string to the pulley is in the way at the front. Choose a pull backwards or a push forwards: both act from"
    " behind."
)
CLOSES = (
    "A push would close the gap between bodies in tow, and the string would hang loose. Choose a pull, or bodies that"
    " touch."
)
TAKES = "A pull would take bodies that touch apart. Choose a push, or bodies in tow."
NO_HOLD = "Both ends hold strings here, so there is no room for a pull or push: choose “no pull or push”."
LEAVE = {
    "m2": "There is one body: leave this box empty, or choose more bodies.",
    "m3": "There are only two bodies: leave this box empty, or choose three.",
    "theta": "No body stands on a slope in this arrangement: leave this box empty, or choose another arrangement.",
    "P": "There is no pull or push: leave this box empty, or choose one.",
    "phi": "There is no pull or push: leave this box empty, or choose one.",
    "mu_s": "No body touches a surface here: leave this box empty.",
    "mu_k": "No body touches a surface here: leave this box empty.",
}
FILL = {
    "m2": "Fill in the mass of the second body.",
    "m3": "Fill in the mass of the third body.",
    "theta": "Fill in the angle of the surface; 0° is level.",
    "P": "Fill in the size of the pull or push.",
    "phi": "Fill in its angle with the surface; 0° is along the surface.",
    "mu_s": "Fill in the coefficient of static friction; 0 for a smooth surface.",
    "mu_k": "Fill in the coefficient of kinetic friction; 0 for a smooth surface.",
}
CHAIN = Choice(
    "chain",
    "Bodies and what joins them",
    (
        ("one", "one body on the surface"),
        ("tow2", "two in tow, a string between"),
        ("touch2", "two that touch"),
        ("edge", "one, and one hanging at the front"),
        ("pulley", "two that hang over one pulley"),
        ("tow3", "three in tow"),
        ("touch3", "three that touch"),
        ("towedge", "two in tow, one hanging at the front"),
        ("ends", "one, and one hanging at each end"),
    ),
    never=(
        (
            "four",
            "four bodies or more",
            "One chain of at most three bodies can be worked here: count those that always move together as one body.",
        ),
        (
            "moving-pulley",
            "a pulley that moves",
            "The pulleys here are fixed. With one that moves the bodies no longer have the same acceleration.",
        ),
        (
            "branch",
            "a string that branches, or a body on top of another",
            "The bodies stand in one chain here, each joined to the next. Treat other arrangements body by body.",
        ),
    ),
)
FORCE = Choice(
    "force",
    "Pull or push",
    (
        ("none", "no pull or push"),
        ("pull-on", "a pull forwards, on the front body"),
        ("push-on", "a push forwards, on the rear body"),
        ("pull-back", "a pull backwards, on the rear body"),
        ("push-back", "a push backwards, on the front body"),
    ),
    quiet=("none",),
)
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
        (
            "fixed",
            "a fixed charge nearby",
            "Its force changes with the distance, so the acceleration changes while they move. At rest on a slope it"
            " has a question of its own among the charged bodies in equilibrium.",
        ),
    ),
)
type Told = Literal["", "goes", "moves", "slips", "steady"]  # what is known of a motion
CHARGES = ("Q1", "Q2", "Q3")
OWN = ("mu_s2", "mu_k2", "mu_s3", "mu_k3")  # coefficients of a body that has its own
FURTHER = ("F", "E", *CHARGES, *OWN)  # boxes that no arrangement needs
NOT_THERE = "There is no such body on the surface in this arrangement: choose another body."
NO_FIELD = "There is no electric field: leave this box empty, or choose one."
NO_SECOND = "There is no second force: leave this box empty, or choose one."
FILL_F = "Fill in the size of the second force."
FILL_E = "Fill in the strength of the field."
FILL_Q = "Fill in the charge of one of the bodies on the surface."
TWO_CHARGES = "Two charged bodies act on each other as well, more and more as they come closer: charge one of them."
NO_CHARGE = "A charge of zero feels no force: fill in another, or choose “no field”."


@dataclass(frozen=True)
class Extra:
    """One more force along the surface on body n: forwards (+1) or backwards, with its size as the laws write it.

    charge: the name of the charge that the field acts on; "" for a force of its own. size: in N.
    """

    n: int
    way: int
    term: str
    size: float
    charge: str = ""


@dataclass(frozen=True)
class Shape:
    """An arrangement. on: bodies on the surface; behind, ahead: whether one hangs at that end; touch: they touch."""

    on: int
    behind: bool = False
    ahead: bool = False
    touch: bool = False

    @property
    def count(self) -> int:
        """How many bodies."""
        return self.on + self.behind + self.ahead

    @property
    def slopes(self) -> bool:
        """Whether the surface may slope."""
        return self.on > 0 and not self.behind

    def hangs(self, body: int) -> bool:
        """Whether a body, numbered from 1, hangs."""
        return (self.behind and body == 1) or (self.ahead and body == self.count)


SHAPES = {
    "one": Shape(1),
    "tow2": Shape(2),
    "touch2": Shape(2, touch=True),
    "edge": Shape(1, ahead=True),
    "pulley": Shape(0, behind=True, ahead=True),
    "tow3": Shape(3),
    "touch3": Shape(3, touch=True),
    "towedge": Shape(2, ahead=True),
    "ends": Shape(1, behind=True, ahead=True),
}


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
    def balanced(self) -> bool:
        """Whether the net force on each is known to be zero."""
        return self.told in ("slips", "steady") or not self.moves

    @property
    def sizes(self) -> tuple[str, ...]:
        """The charges, whose signs give directions and are not put into laws."""
        return tuple(extra.charge for extra in self.extras if extra.charge)

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
        return tuple(n for n in range(1, self.shape.count + 1) if not self.shape.hangs(n))

    @property
    def link(self) -> str:
        """The letter of the force in a link."""
        return "R" if self.shape.touch else "T"

    def where(self, way: int) -> Direction:
        """Forwards (+1) and backwards as directions, of what stands on the surface, or of the first that hangs."""
        if not self.shape.on:
            return UP_DOWN.of("up" if way > 0 else "down")
        if self.slope:
            return ALONG_SLOPE.of("up-slope" if way > 0 else "down-slope")
        return LEFT_RIGHT.of("right" if way > 0 else "left")


def needed(choices: Mapping[str, str]) -> set[str]:
    """The boxes that apply to what is chosen."""
    shape = SHAPES[choices["chain"]]
    return (
        {f"m{n}" for n in range(1, shape.count + 1)}
        | ({"theta"} if shape.slopes else set())
        | ({"mu_s", "mu_k"} if shape.on else set())
        | ({"P", "phi"} if choices["force"] != "none" else set())
    )


def room(choices: Mapping[str, str]) -> None:
    """Refuses a force that has no room."""
    shape, force = SHAPES[choices["chain"]], choices["force"]
    if force != "none" and shape.behind:
        raise Refusal("force", NO_HOLD)
    if force in ("pull-on", "push-back") and shape.ahead:
        raise Refusal("force", IN_THE_WAY)
    if force.startswith("push") and shape.on > 1 and not shape.touch:
        raise Refusal("force", CLOSES)
    if force.startswith("pull") and shape.touch:
        raise Refusal("force", TAKES)


def fits(choices: Mapping[str, str], filled: set[str]) -> None:
    """Refuses a force that has no room, a box that does not apply, and one that is missing."""
    room(choices)
    apply = needed(choices)
    for name in LEAVE:
        if name in filled and name not in apply:
            raise Refusal(name, LEAVE[name])
        if name in apply and name not in filled:
            raise Refusal(name, FILL[name])


def force_of(choice: str, shape: Shape) -> tuple[int, bool, int]:
    """Which way the force acts (0: there is none), whether it is a push, and the number of the body it acts on."""
    noun, _, towards = choice.partition("-")
    way = {"on": 1, "back": -1}.get(towards, 0)
    return way, noun == "push", (shape.on if (way > 0) != (noun == "push") else 1) if way else 0


def field_of(choices: Mapping[str, str]) -> int:
    """Which way the field points; 0: there is none."""
    return {"on": 1, "back": -1}.get(choices.get("field", "none"), 0)


def extras_of(choices: Mapping[str, str], v: Mapping[str, float]) -> tuple[Extra, ...]:
    """The second force, and that of a field on a charge. Raises Refusal for what does not belong together."""
    shape, found = SHAPES[choices["chain"]], list[Extra]()
    on = {n for n in range(1, shape.count + 1) if not shape.hangs(n)}
    way, _, place = choices.get("also", "none").partition("-")
    if way == "none" and "F" in v:
        raise Refusal("F", NO_SECOND)
    if way != "none":
        if int(place) not in on:
            raise Refusal("also", NOT_THERE)
        if "F" not in v:
            raise Refusal("F", FILL_F)
        found.append(Extra(int(place), 1 if way == "on" else -1, "F", v["F"]))
    field = field_of(choices)
    charged = [name for name in CHARGES if name in v]
    if not field:
        for name in (*charged, "E"):
            if name in v:
                raise Refusal(name, NO_FIELD)
        return tuple(found)
    return (*found, charge_in(field, charged, v, on))


def charge_in(field: int, charged: list[str], v: Mapping[str, float], on: set[int]) -> Extra:
    """The force of a field on the one charge in it."""
    if "E" not in v:
        raise Refusal("E", FILL_E)
    if not charged:
        raise Refusal(f"Q{min(on, default=1)}", FILL_Q if on else NOT_THERE)
    name = charged[0]
    if len(charged) > 1:
        raise Refusal(charged[1], TWO_CHARGES)
    if int(name[1]) not in on:
        raise Refusal(name, NOT_THERE)
    if not v[name]:
        raise Refusal(name, NO_CHARGE)
    return Extra(int(name[1]), field if v[name] > 0 else -field, f"{name}*E", abs(v[name]) * v["E"], name)


def bodies_of(
    shape: Shape, v: Mapping[str, float], force: int, push: bool, acted: int, extras: tuple[Extra, ...] = ()
) -> tuple[Body, ...]:
    """The bodies as the physics core has them."""
    found = []
    for n in range(1, shape.count + 1):
        mass = v[f"m{n}"]
        if shape.hangs(n):
            found.append(Body(mass, HANGING if n == 1 and shape.behind else -HANGING))
            continue
        turn = -v["phi"] if push else v.get("phi", 0.0)
        pull = Pull(v["P"], turn if force > 0 else 2 * HANGING - turn) if force and n == acted else None
        along = sum(extra.way * extra.size for extra in extras if extra.n == n)
        static, kinetic = (v.get(f"mu_{kind}{n}", v[f"mu_{kind}"]) for kind in ("s", "k"))
        found.append(Body(mass, v.get("theta", 0.0), static, kinetic, (pull,) if pull else (), along))
    return tuple(found)


def coefficients(shape: Shape, v: Mapping[str, float]) -> None:
    """Refuses coefficients of a body that is not there, and kinetic ones above static ones."""
    for name in OWN:
        if name in v and (int(name[-1]) > shape.count or shape.hangs(int(name[-1]))):
            raise Refusal(name, NOT_THERE)
    for n in range(1, shape.count + 1):
        static, kinetic = (v.get(f"mu_{kind}{n}", v.get(f"mu_{kind}", 0.0)) for kind in ("s", "k"))
        if kinetic > static:
            raise Refusal(next(name for name in (f"mu_k{n}", f"mu_s{n}", "mu_k") if name in v), ODD)


def set_up(choices: Mapping[str, str], v: Mapping[str, float], g: float, apart: bool = False) -> Setup:
    """What is chosen and what it does. Raises Refusal for what cannot be or is not worked here, and, but for ``apart``,
    for a string that goes slack or bodies that part."""
    fits(choices, set(v))
    shape = SHAPES[choices["chain"]]
    if degrees(v.get("theta", 0.0)) > STEEPEST + 1e-9:
        raise Refusal("theta", STEEP)
    coefficients(shape, v)
    force, push, acted = force_of(choices["force"], shape)
    start = {"rest": 0, "on": 1, "back": -1}[choices["start"]]
    extras = extras_of(choices, v)
    bodies = bodies_of(shape, v, force, push, acted, extras)
    slope = v.get("theta", 0.0) > 0
    if not (force or slope or shape.ahead or extras) and not (start and any(body.mu_k for body in bodies)):
        raise Refusal("force", STEADY_ON if start else NOTHING)
    kinds: list[Kind] = ["contact" if shape.touch else "string"] * (shape.count - 1)
    found = outcome(bodies, kinds, g=g, velocity=float(start))
    if found.state == "lifts off":
        raise Refusal("P", LIFTS)
    if found.slack and not apart:
        raise Refusal("chain", PARTS if shape.touch else SLACK)
    drive = sum(body.drive(g) for body in bodies)
    way = start or (-1 if drive < 0 else 1)
    return Setup(
        shape,
        slope,
        force,
        push,
        acted,
        start,
        bodies,
        found,
        way,
        extras=extras,
        field=field_of(choices),
        own=frozenset(v) & set(OWN),
    )
