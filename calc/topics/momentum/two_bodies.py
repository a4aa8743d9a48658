"""What questions on two bodies along a line share: masses and velocities of the first and the second, the sketch."""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.motion import Moving, before_after, moving
from calc.model.questions import Check, Values
from calc.topics.shared.quantities import mass, velocity
from calc.working.declaring import Given

NUMBERS = {"first": 1, "second": 2}


def mass_of(which: str, numbers: str) -> Given:
    """The mass m1 or m2. numbers: as for any quantity."""
    return mass(f"m{NUMBERS[which]}", f"Mass of the {which}", f"The {which} has a mass of {{}}.", numbers)


def before(which: str, numbers: str, *, may_rest: bool = True) -> Given:
    """The velocity u1 or u2 before the collision. may_rest: of one that may be at rest that is told in words."""
    name, told = f"u{NUMBERS[which]}", f"Before the collision the {which}"
    rest = {0.0: f"{told} is at rest."} if may_rest else None
    return velocity(name, f"Velocity of the {which} before", f"{told} moves at {{}}.", numbers, told_at=rest)


def afterwards(which: str, numbers: str, *, may_rest: bool = True) -> Given:
    """The velocity v1 or v2 when they have parted. may_rest: as for ``before``."""
    name, told = f"v{NUMBERS[which]}", f"Afterwards the {which}"
    rest = {0.0: f"{told} is at rest."} if may_rest else None
    return velocity(name, f"Velocity of the {which} afterwards", f"{told} moves at {{}}.", numbers, told_at=rest)


def parting(v: Values, together: list[Moving] | None = None) -> Figure:
    """The two before, or ``together``, and moving apart after."""
    apart = [moving("1", "v_1", v["v1"]), moving("2", "v_2", v["v2"])]
    return before_after(together or [moving("1", "u_1", v["u1"]), moving("2", "u_2", v["u2"])], apart)


def exchanged(first: str, second: str) -> Check:
    """That neither gains momentum but from the other. first, second: their velocities before."""
    return Check(
        "What the first loses in momentum the second gains",
        f"m1*({first} - v1) = m2*(v2 - {second})",
        "The impulses on the two are equal and opposite.",
    )
