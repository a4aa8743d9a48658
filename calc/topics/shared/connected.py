"""What a chain of one to three bodies does: it stays, moves, is at its limit, lifts off, or a string goes slack.

Bodies stand on surfaces or hang; light inextensible strings over frictionless pulleys, or contact, join each to the
next. One direction along the chain, from the first body to the last, is positive for all of them, round every pulley.
For each body, with P at φ away from its surface and the positive direction rising at θ:

    D = P cos φ − mg sin θ + other forces along,   N = mg cos θ − P sin φ − other forces away from the surface

At rest each friction is whatever is needed, up to µs·N; a sliding body feels µk·N against its velocity; F_net = ma.
Standard school mechanics: definitions of the two kinds of friction and Newton's second law. Numbers only, SI.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from math import copysign, cos, inf, pi, sin
from typing import Literal

type State = Literal["stays", "limit", "moves", "lifts off"]
type Kind = Literal["string", "contact"]

MOST = 3  # bodies of a chain
NEAR = 1e-9  # of the forces at work: closer than this two forces are equal, rounding apart
HANGING = pi / 2  # the rise of a hanging body's positive direction, up; −HANGING: down


@dataclass(frozen=True)
class Pull:
    """A pull of ``size`` (N, 0 or more) at ``angle`` (rad) from the positive direction, away from the surface.

    A push into the surface has a negative angle; one against the positive direction an angle above π/2.
    """

    size: float
    angle: float = 0.0


@dataclass(frozen=True)
class Body:
    """One body. mass: kg. rise: how steeply the positive direction climbs here (rad, −π/2 to π/2); ±π/2: it hangs.

    mu_s, mu_k: coefficients of friction. pulls: forces at an angle. along: other forces along the positive direction,
    off: away from the surface (N, signed; an electrostatic force, say).
    """

    mass: float
    rise: float = 0.0
    mu_s: float = 0.0
    mu_k: float = 0.0
    pulls: tuple[Pull, ...] = ()
    along: float = 0.0
    off: float = 0.0

    def __post_init__(self) -> None:
        if self.mass <= 0 or self.mu_s < 0 or self.mu_k < 0 or not -HANGING <= self.rise <= HANGING:
            raise ValueError(f"{self}: a mass is above zero, a coefficient zero or more, a rise between ±π/2.")
        if any(pull.size < 0 for pull in self.pulls):
            raise ValueError(f"{self}: the size of a pull is zero or more; turn its angle instead.")

    @property
    def hangs(self) -> bool:
        """Whether no surface carries it."""
        return abs(self.rise) == HANGING

    def drive(self, g: float) -> float:
        """D: the forces along the positive direction, friction and strings left out (N)."""
        return sum(p.size * cos(p.angle) for p in self.pulls) + self.along - self.mass * g * sin(self.rise)

    def normal(self, g: float) -> float:
        """N: what the surface must push with to keep it there (N); below zero it lifts off. 0 for one that hangs."""
        if self.hangs:
            return 0.0
        return self.mass * g * cos(self.rise) - sum(p.size * sin(p.angle) for p in self.pulls) - self.off

    def holds(self, g: float) -> float:
        """The largest static friction, µs·N (N). A µk above µs would hold a body as well as it slows it."""
        return max(self.mu_s, self.mu_k) * max(self.normal(g), 0.0)

    def slows(self, g: float) -> float:
        """Kinetic friction, µk·N (N)."""
        return self.mu_k * max(self.normal(g), 0.0)


def on_thread(mass: float, lean: float, sideways: float) -> Body:
    """A body on a tight thread that leans by ``lean`` (rad) from the vertical, pushed outwards by ``sideways`` (N).

    It can only move at right angles to the thread, as on a smooth slope that rises by the same angle; the tension is
    what a normal force would be, and where it would "lift off" the thread is slack.
    """
    return Body(mass, lean, along=sideways * cos(lean), off=-sideways * sin(lean))


@dataclass(frozen=True)
class Motion:
    """What one body does. drive, friction and a (m·s⁻²) are along the positive direction, signed.

    friction: None where only a range follows (several rough bodies at rest). moves: whether it slides or starts to.
    """

    drive: float
    normal: float
    most: float
    friction: float | None
    a: float
    moves: bool


@dataclass(frozen=True)
class Link:
    """What joins a body to the next. force: tension or contact force, zero or more (N); None where it cannot be found.

    acts: False for a string that is slack or bodies that part.
    """

    kind: Kind
    force: float | None
    acts: bool


@dataclass(frozen=True)
class Outcome:
    """What the chain does. lifted: places of the bodies that lift off; then nothing else is found.

    state: "stays" at rest; "limit": stays, and any further force moves it; "moves": at least one body does.
    """

    state: State
    bodies: tuple[Motion, ...]
    links: tuple[Link, ...]
    lifted: tuple[int, ...] = ()

    @property
    def slack(self) -> bool:
        """Whether a string is slack or bodies part."""
        return not all(link.acts for link in self.links)


def outcome(bodies: Sequence[Body], kinds: Sequence[Kind] = (), *, g: float = 9.8, velocity: float = 0.0) -> Outcome:
    """What the bodies do from now on. kinds: what joins each to the next. velocity: that all have now (m·s⁻¹).

    Raises ValueError for no body, more than three, or a wrong number of links.
    """
    if not 1 <= len(bodies) <= MOST or len(kinds) != len(bodies) - 1:
        raise ValueError(f"{len(bodies)} bodies, {len(kinds)} links: one to {MOST} bodies, a link between neighbours.")
    scale = sum(body.mass * g + sum(p.size for p in body.pulls) + abs(body.along) for body in bodies)
    slack = NEAR * scale
    lifted = tuple(i for i, body in enumerate(bodies) if body.normal(g) < -slack)
    if lifted:
        still = tuple(Motion(b.drive(g), b.normal(g), b.holds(g), None, 0.0, False) for b in bodies)
        return Outcome("lifts off", still, tuple(Link(kind, None, False) for kind in kinds), lifted)
    for acts in _link_states(len(kinds)):
        found = _with_links(bodies, kinds, acts, g, velocity, slack)
        if found is not None:
            return found
    raise ValueError("No consistent motion: these strings and contacts contradict each other.")


@dataclass(frozen=True)
class Stop:
    """Where a body that slows comes to rest, and what it does then."""

    time: float
    distance: float
    after: Outcome


def slides_to_rest(
    bodies: Sequence[Body], kinds: Sequence[Kind] = (), *, velocity: float, g: float = 9.8
) -> Stop | None:
    """When (s) and how far along (m, signed) bodies that move together stop, then tested again from rest; "moves" in
    ``after`` means that they slide back. None where they do not slow down, or not together."""
    now = outcome(bodies, kinds, g=g, velocity=velocity)
    rates = {round(one.a, 12) for one in now.bodies}
    if now.state != "moves" or now.slack or len(rates) != 1 or now.bodies[0].a * velocity >= 0:
        return None
    a = now.bodies[0].a
    return Stop(-velocity / a, -(velocity**2) / (2 * a), outcome(bodies, kinds, g=g))


# --- groups of bodies that strings or contact hold together --------------------------------------------------


def _link_states(count: int) -> Iterator[tuple[bool, ...]]:
    """Every set of links that act, most of them first."""
    yield from sorted(product((True, False), repeat=count), key=lambda acts: -sum(acts))


def _with_links(
    bodies: Sequence[Body], kinds: Sequence[Kind], acts: tuple[bool, ...], g: float, velocity: float, slack: float
) -> Outcome | None:
    """The motion if just these links act; None where that contradicts itself."""
    motions, forces, limit = list[Motion](), dict[int, float | None](), False
    start = 0
    for end in range(len(bodies)):
        if end < len(kinds) and acts[end]:
            continue
        group = _group(bodies[start : end + 1], kinds[start:end], g, velocity, slack)
        if group is None:
            return None
        motions += group[0]
        forces |= dict(enumerate(group[1], start))
        limit = limit or group[2]
        start = end + 1
    for i, kind in enumerate(kinds):
        ahead = motions[i + 1].a - motions[i].a
        # A slack string must not be pulled tight, parted bodies must not press on each other.
        if not acts[i] and (ahead if kind == "string" else -ahead) > NEAR * g:
            return None
    moves = any(one.moves for one in motions)
    links = tuple(Link(kind, forces.get(i, 0.0), acts[i]) for i, kind in enumerate(kinds))
    return Outcome("moves" if moves else "limit" if limit else "stays", tuple(motions), links)


type Group = tuple[list[Motion], list[float | None], bool]  # the motions, the forces in the links, at the limit


def _group(bodies: Sequence[Body], kinds: Sequence[Kind], g: float, velocity: float, slack: float) -> Group | None:
    """Bodies that move as one, or rest."""
    drive, most = sum(b.drive(g) for b in bodies), sum(b.holds(g) for b in bodies)
    if velocity == 0 and abs(drive) <= most + slack:
        return _resting(bodies, kinds, g, slack, abs(drive) >= most - slack and most > 0)
    way = copysign(1.0, velocity or drive)
    frictions = [-way * b.slows(g) for b in bodies]
    a = (drive + sum(frictions)) / sum(b.mass for b in bodies)
    motions = [
        Motion(b.drive(g), b.normal(g), b.holds(g), f, a, moves=True) for b, f in zip(bodies, frictions, strict=True)
    ]
    pulls, pull = list[float | None](), 0.0
    for body, friction, kind in zip(bodies, frictions, kinds, strict=False):
        pull = body.mass * a - body.drive(g) - friction + pull  # what the next one must pull with
        if (pull if kind == "string" else -pull) < -slack:
            return None
        pulls.append(abs(pull))
    return motions, pulls, False


def _resting(bodies: Sequence[Body], kinds: Sequence[Kind], g: float, slack: float, limit: bool) -> Group | None:
    """Bodies held at rest by frictions that suffice; None where a string would have to push, or contact to pull."""
    ahead = _pulls(bodies, kinds, g, slack)
    back = _pulls(bodies[::-1], kinds[::-1], g, slack, -1)
    if ahead is None or back is None:
        return None
    # The range of each link's pull, from what stands before it and from what stands behind it.
    ranges = [(max(a[0], b[0]), min(a[1], b[1])) for a, b in zip(ahead, back[::-1], strict=True)]
    if any(high - low < -slack for low, high in ranges):
        return None
    pulls = [abs(low + high) / 2 if high - low <= 2 * slack else None for low, high in ranges]
    signed = [0.0, *((low + high) / 2 if high - low <= 2 * slack else None for low, high in ranges), 0.0]
    motions = list[Motion]()
    for i, body in enumerate(bodies):
        behind, before = signed[i], signed[i + 1]
        needed = None if behind is None or before is None else behind - before - body.drive(g)
        smooth = body.holds(g) <= slack
        motions.append(
            Motion(body.drive(g), body.normal(g), body.holds(g), 0.0 if smooth else needed, 0.0, moves=False)
        )
    return motions, pulls, limit


def _pulls(
    bodies: Sequence[Body], kinds: Sequence[Kind], g: float, slack: float, way: int = 1
) -> list[tuple[float, float]] | None:
    """The range of the pull in each link that the bodies before it allow; way −1: the chain read backwards."""
    found, low, high = list[tuple[float, float]](), 0.0, 0.0
    for body, kind in zip(bodies, kinds, strict=False):
        drive, most = way * body.drive(g), body.holds(g)
        low, high = low - drive - most, high - drive + most
        least, greatest = (0.0, inf) if kind == "string" else (-inf, 0.0)
        low, high = max(low, least), min(high, greatest)
        if high - low < -slack:
            return None
        found.append((low, high))
    drive, most = way * bodies[-1].drive(g), bodies[-1].holds(g)
    if not low - most - slack <= drive <= high + most + slack:
        return None
    return found
