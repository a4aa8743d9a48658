"""The equation of neighbouring bodies of a chain, all together, written for what is asked."""

from __future__ import annotations

from dataclasses import dataclass

from calc.language.expressions import equation as line
from calc.model.questions import Step
from calc.topics.newton.situation_chain import Setup
from calc.topics.newton.situation_laws import drives, greatest, held, joined, kinetic, normal, presses


@dataclass(frozen=True)
class Side:
    """Bodies first to last of a chain, and the equation of all of them together for what is asked.

    drive: the forces along the way of the motion; rubs: friction, each written so that what is asked stands in it;
    before: the steps to what is used. mass: all masses, added.
    """

    here: Setup
    first: int
    last: int
    name: str

    @property
    def mu(self) -> str:
        """The coefficient that counts."""
        return "mu_s" if self.here.slips else "mu_k"

    def of(self, n: int) -> str:
        """The coefficient that counts for body n."""
        return self.here.mu("s" if self.here.slips else "k", n)

    @property
    def alike(self) -> tuple[int, ...]:
        """The rough bodies with the common coefficient."""
        return tuple(n for n in self.rough if self.of(n) == self.mu)

    @property
    def numbers(self) -> tuple[int, ...]:
        """Its bodies."""
        return tuple(range(self.first, self.last + 1))

    @property
    def rough(self) -> tuple[int, ...]:
        """Those of its bodies that friction acts on."""
        return tuple(n for n in self.numbers if not self.here.shape.hangs(n) and self.here.bodies[n - 1].mu_k > 0)

    @property
    def standing(self) -> tuple[int, ...]:
        """Those of its bodies that stand on the surface."""
        return tuple(n for n in self.numbers if not self.here.shape.hangs(n))

    @property
    def mass(self) -> str:
        """All masses."""
        return " + ".join(f"m{n}" for n in self.numbers)

    @property
    def held_in(self) -> bool:
        """Whether what is asked stands in the equation of these bodies."""
        return self.name in line(self.law).names

    @property
    def drive(self) -> list[tuple[int, str]]:
        """The forces along the way of the motion."""
        along = [term for n in self.numbers for term in drives(self.here, n)]
        return [(self.here.way * sign, term) for sign, term in (*along, *held(self.here, self.first, self.last))]

    def apart(self, n: int) -> bool:
        """Whether friction on a rough body is known: what is asked stands neither in it nor in the normal force."""
        return self.name not in {self.of(n), *line(f"N_{n} = {presses(self.here, n)}").names}

    @property
    def rubs(self) -> list[tuple[int, str]]:
        """Friction, against the motion."""
        asked = self.alike if self.name == self.mu else ()
        found = [
            (-1, f"f_{n}" if self.apart(n) else f"{self.of(n)}*{bracket(presses(self.here, n))}")
            for n in self.rough
            if n not in asked
        ]
        if not asked:
            return found
        sum_ = " + ".join(f"N_{n}" for n in asked)
        return [(-1, f"{self.mu}*{bracket(sum_)}"), *found]

    @property
    def gains(self) -> str:
        """The right side: what all of them need to speed up."""
        return "0" if self.here.balanced else f"{bracket(self.mass)}*a"

    @property
    def law(self) -> str:
        """The equation of all of them together."""
        return f"{joined([*self.drive, *self.rubs]) if self.drive or self.rubs else '0'} = {self.gains}"

    @property
    def elsewhere(self) -> tuple[Step, ...]:
        """The friction on bodies of another slope than that whose angle is asked."""
        found = list[Step]()
        for n in (one for one in self.rough if self.here.angle(one) != self.name):
            found.append(normal(self.here, n).step(f"N_{n}"))
            found.append((greatest if self.here.slips else kinetic)(self.here, n).step(f"f_{n}"))
        return tuple(found)

    @property
    def before(self) -> tuple[Step, ...]:
        """Normal forces and frictions that the equation uses."""
        found = list[Step]()
        for n in self.rough:
            asked = self.name == self.of(n)
            if asked or self.apart(n):
                found.append(normal(self.here, n).step(f"N_{n}"))
            if not asked and self.apart(n):
                found.append((greatest if self.here.slips else kinetic)(self.here, n).step(f"f_{n}"))
        return tuple(found)


def bracket(sum_: str) -> str:
    """In brackets where it is a sum."""
    return f"({sum_})" if " " in sum_ else sum_
