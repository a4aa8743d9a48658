"""Motion along a line in phases, each with a constant acceleration: where a body is and how fast it moves.

One direction of the line is positive throughout; times are in s, positions in m, velocities in m·s⁻¹. y = y₀ + ut +
½at² and v = u + at (data-sheet equations) hold inside a phase; from one phase to the next the position goes on, the
velocity may jump (a bounce).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise

SAME = 1e-9


def settled(*terms: float) -> float:
    """A sum without the noise of terms that cancel."""
    total = sum(terms)
    return 0.0 if abs(total) <= 1e-12 * max(map(abs, terms)) else total


@dataclass(frozen=True)
class Phase:
    """One stretch: it begins at the time ``start`` at the position ``y`` with the velocity ``u`` and has the
    acceleration ``a`` for the time ``lasting``."""

    start: float
    y: float
    u: float
    a: float
    lasting: float

    @property
    def end(self) -> float:
        """The time at its end."""
        return self.start + self.lasting

    @property
    def v(self) -> float:
        """The velocity at its end."""
        return self.velocity(self.end)

    @property
    def last(self) -> float:
        """The position at its end."""
        return self.position(self.end)

    @property
    def turning(self) -> float | None:
        """The time inside the phase at which the body is at rest for a moment and turns round; None if never."""
        if not self.a:
            return None
        at = self.start - self.u / self.a
        return at if self.start < at < self.end else None

    def velocity(self, time: float) -> float:
        """The velocity at a time."""
        return settled(self.u, self.a * (time - self.start))

    def position(self, time: float) -> float:
        """The position at a time."""
        since = time - self.start
        return settled(self.y, self.u * since, self.a * since**2 / 2)

    def then(self, lasting: float, *, u: float | None = None, a: float | None = None) -> Phase:
        """The phase that follows: from where this one ends, with its velocity and acceleration where none is given."""
        return Phase(self.end, self.last, self.v if u is None else u, self.a if a is None else a, lasting)

    def times(self, steps: int = 24) -> list[float]:
        """Times from start to end for a curve, the turning point among them."""
        even = [self.start + self.lasting * n / steps for n in range(steps + 1)]
        turn = self.turning
        return sorted({*even, turn}) if turn is not None else even


@dataclass(frozen=True)
class Motion:
    """Phases one after the other. Raises ValueError for none, or where time or position has a gap."""

    phases: tuple[Phase, ...]

    def __post_init__(self) -> None:
        if not self.phases or any(one.lasting <= 0 for one in self.phases):
            raise ValueError("A motion needs phases, and each lasts longer than nothing.")
        for one, other in pairwise(self.phases):
            gaps = (other.start - one.end, other.y - one.last)
            if any(abs(gap) > SAME * max(1.0, one.end, abs(one.last)) for gap in gaps):
                raise ValueError(f"A phase ends at {one.end} s and {one.last} m, the next begins elsewhere.")

    @property
    def end(self) -> float:
        """The time at the end of all."""
        return self.phases[-1].end

    def at(self, time: float) -> Phase:
        """The phase a time lies in; at a border the one that begins."""
        return next((one for one in reversed(self.phases) if time >= one.start), self.phases[0])

    def position(self, time: float) -> float:
        """The position at a time."""
        return self.at(time).position(time)

    def velocity(self, time: float) -> float:
        """The velocity at a time; at a border the one afterwards."""
        return self.at(time).velocity(time)

    def turned(self) -> Motion:
        """The same motion with the other direction positive."""
        return Motion(tuple(replace(one, y=-one.y, u=-one.u, a=-one.a) for one in self.phases))


def free(y: float, u: float, g: float, ground: float = 0.0) -> Phase:
    """A free flight from the height ``y`` with the velocity ``u``, upwards positive, until the ground is reached."""
    root = max(u * u + 2 * g * (y - ground), 0.0) ** 0.5
    return Phase(0.0, y, u, -g, (u + root) / g)
