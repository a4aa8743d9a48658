"""A string that goes slack, or bodies that part: each of them has an acceleration of its own.

What is apart is what the physics core finds: a string may not push, contact may not pull. Marks: common practice, no
source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise

from calc.model.answers import Mark, Point
from calc.model.questions import Check, Data, Part, Step
from calc.model.relations import Relation
from calc.topics.forces.words import PLAIN_A, TWO
from calc.topics.newton.pairs import PLAIN_ONE
from calc.topics.newton.situation_chain import Setup
from calc.topics.newton.situation_laws import STEADY, drives, held, joined, kinetic, normal, pointing
from calc.topics.newton.situation_words import name, on_surface, printed, told
from calc.topics.shared.motion_laws import SECOND

LATER = "This is what happens at first. If they meet or the string becomes tight again later, they move on together."


@dataclass(frozen=True)
class Group:
    """Bodies first to last, still held together, or one alone. way: of the motion, or of what drives them at rest."""

    here: Setup
    first: int
    last: int
    way: int

    @property
    def numbers(self) -> range:
        """Its bodies."""
        return range(self.first, self.last + 1)

    @property
    def moves(self) -> bool:
        """Whether it slides or starts to."""
        return self.here.found.bodies[self.first - 1].moves

    @property
    def rough(self) -> tuple[int, ...]:
        """Its bodies that friction acts on."""
        wanted = "mu_k" if self.moves else "mu_s"
        return tuple(n for n in self.numbers if n in self.here.numbers and getattr(self.here.bodies[n - 1], wanted) > 0)

    @property
    def a(self) -> str:
        """The name of its acceleration."""
        return f"a_{self.first}"

    def along(self, first: int, last: int) -> list[tuple[int, str]]:
        """The forces on some of its bodies along its way, friction left out."""
        links = [term for term in held(self.here, first, last) if self.inside(int(term[1][-1]))]
        every = [term for n in range(first, last + 1) for term in drives(self.here, n)]
        return [(self.way * sign, term) for sign, term in (*every, *links)]

    def inside(self, link: int) -> bool:
        """Whether a link is one of its own."""
        return self.first <= link < self.last

    def law(self, first: int, last: int) -> str:
        """Newton's second law for some of its bodies."""
        rubs = [(-1, f"f_{n}") for n in self.rough if first <= n <= last]
        masses = " + ".join(f"m{n}" for n in range(first, last + 1))
        right = f"{f'({masses})' if last > first else masses}*{self.a}" if self.moves else "0"
        terms = [*self.along(first, last), *rubs]
        return f"{joined(terms) if terms else '0'} = {right}"

    @property
    def called(self) -> str:
        """What it is called."""
        both = f"{name(self.here, self.first)} and {name(self.here, self.last)}"
        return name(self.here, self.first) if self.first == self.last else both


def groups(here: Setup) -> tuple[Group, ...]:
    """The bodies that still move together."""
    found, first = list[Group](), 1
    for last in range(1, here.shape.count + 1):
        if last < here.shape.count and here.found.links[last - 1].acts:
            continue
        one = here.found.bodies[first - 1]
        drive = sum(here.found.bodies[n - 1].drive for n in range(first, last + 1))
        found.append(Group(here, first, last, here.start or (-1 if (one.a or drive) < 0 else 1)))
        first = last + 1
    return tuple(found)


def where(group: Group, value: float) -> str:
    """The direction of a value that is positive along its way, told of the body itself."""
    way = group.way * (1 if value > 0 else -1)
    here = group.here
    if here.shape.hangs(group.first) and group.first == group.last:
        up = way > 0 if group.first == 1 else way < 0
        return "upwards" if up else "downwards"
    return here.where(way, group.first).words


def frictions(group: Group) -> list[Step]:
    """Friction on each of its bodies, where it follows."""
    here = replace(group.here, way=group.way)
    if group.moves:
        return [kinetic(here, n).step(f"f_{n}") for n in group.rough]
    if len(group.rough) != 1 or not group.along(group.first, group.last):
        return []
    (n,) = group.rough
    sum_ = joined(group.along(group.first, group.last))
    return [
        Relation(
            f"f_{n} = {sum_}",
            what="The friction that acts",
            why="It stays at rest, so the net force is zero: static friction is as large as what it holds.",
            units={f"f_{n}": "N"},
            sizes=here.sizes,
            marks=TWO,
            directions={f"f_{n}": pointing(here, f"f_{n}", -group.way, n)},
        ).step(f"f_{n}")
    ]


def own(group: Group) -> Step:
    """The acceleration of a group that moves."""
    here = replace(group.here, way=group.way)
    alone = group.first == group.last
    way = where(group, 1.0)
    return Relation(
        group.law(group.first, group.last),
        what=f"Newton's second law for {group.called}",
        why=(
            f"Nothing else pulls or pushes along its path now. The positive direction is {way}."
            if alone
            else f"These still move together; the forces between them cancel. The positive direction is {way}."
        ),
        units={group.a: "m·s⁻²"},
        sizes=here.sizes,
        plain=PLAIN_A,
        marks=(Mark("formula"), Mark("substitution"), Mark("answer")),
        quotes=(SECOND.name,),
        directions={} if here.shape.hangs(group.first) else {group.a: pointing(here, group.a, group.way, group.first)},
    ).step(group.a)


def accelerations(all_: tuple[Group, ...], data: Data) -> list[Part]:
    """Friction and acceleration of each on its own."""
    parts = list[Part]()
    for group in all_:
        rubs = frictions(group)
        also = tuple(step.makes for step in rubs)
        if group.moves:
            ask = f"{supposed(group.here)}Calculate the acceleration of {group.called}."
            parts.append(Part(f"alone-{group.first}", "calculate", ask, (*rubs, own(group)), also=also))
            continue
        drive = sum(group.here.found.bodies[n - 1].drive for n in group.numbers)
        most = sum(group.here.found.bodies[n - 1].most for n in group.numbers)
        parts.append(rests(group, told(data, drive), told(data, most)))
        if rubs:
            parts.append(
                Part(f"holds-{group.first}", "calculate", "Calculate the friction that acts on it.", tuple(rubs))
            )
    return parts


def rests(group: Group, drive: str, most: str) -> Part:
    """That it stays at rest on its own."""
    alone = group.first == group.last
    it, its, stays = ("it", "its acceleration", "stays") if alone else ("them", "their acceleration", "stay")
    points = (
        Point(
            f"What drives {it} is {drive}, the largest static friction {most}: no more.",
            1,
            ("largest static friction",),
        ),
        Point(f"{'It' if alone else 'They'} {stays} at rest: {its} is zero.", 1, (f"{stays} at rest",)),
    )
    ask = f"{'Does' if alone else 'Do'} {group.called} stay at rest or move? Give a reason."
    return Part(f"rests-{group.first}", "explain", supposed(group.here) + ask, points=points)


def supposed(here: Setup) -> str:
    """What is tried before it is judged."""
    if here.link == "R":
        return "Suppose the bodies no longer push each other. "
    return f"Suppose the string{'s' * (here.shape.count > 2)} no longer pull{'s' * (here.shape.count == 2)}. "


def inner(all_: tuple[Group, ...]) -> list[Part]:
    """The forces in links that still act, where the bodies move."""
    parts = list[Part]()
    for group in (one for one in all_ if one.moves and one.first < one.last):
        for link in range(group.first, group.last):
            force = f"{group.here.link}_{link}"
            law = Relation(
                group.law(group.first, link),
                what=f"Use the equation of {name(group.here, group.first)}"
                + (" and the next together" if link > group.first else " alone"),
                why="What joins two bodies has the same size in both equations.",
                units={force: "N"},
                sizes=group.here.sizes,
                plain=PLAIN_ONE,
                quotes=(SECOND.name,),
            )
            what = "tension" if group.here.link == "T" else "force that they exert on each other"
            pair = f"{name(group.here, link)} and {name(group.here, link + 1)}"
            parts.append(
                Part(f"link-{link}", "calculate", f"Calculate the {what}, between {pair}.", (law.step(force),))
            )
    return parts


def reasons(here: Setup, all_: tuple[Group, ...], data: Data) -> Part:
    """Why it goes slack or parts."""
    string = here.link == "T"
    points = list[Point]()
    said = list[str]()
    for group in all_:
        a = here.found.bodies[group.first - 1].a
        if abs(a) < STEADY:
            said.append(f"{group.called} none")
        else:
            size = told(data, a, "m·s⁻²")
            said.append(f"{group.called} {size} {where(group, a * group.way)}")
    points.append(Point(f"On their own they accelerate: {'; '.join(said)}.", 1, ("accelerate",)))
    for left, right in pairwise(all_):
        back, front = name(here, left.last), name(here, right.first)
        force = printed(f"{here.link}_{left.last} = 0")
        if string:
            words = f"So {back} gains on {front}: a string cannot push, it goes slack and {force}."
        else:
            words = f"So {front} moves away from {back}: they cannot pull each other, they part and {force}."
        points.append(Point(words, 1, ("slack" if string else "part", force)))
    does = "Does the string stay tight?" if string else "Do the bodies stay in touch?"
    if here.shape.count > 2:
        does = "Does each string stay tight?" if string else does
    return Part("apart", "explain", f"{does} Give a reason.", points=tuple(points))


def parts(here: Setup, data: Data) -> tuple[list[Part], list[Part], tuple[Check, ...]]:
    """What is calculated, what follows the diagrams, and the check that all forces together give all accelerations."""
    all_ = groups(here)
    normals = tuple(normal(here, n).step(f"N_{n}") for n in here.numbers)
    first = list[Part]()
    if normals:
        each = "each body on the surface" if len(normals) > 1 else on_surface(here)
        also = tuple(step.makes for step in normals[:-1])
        first.append(Part("normal", "calculate", f"Calculate the normal force on {each}.", normals, also=also))
    first += [*accelerations(all_, data), reasons(here, all_, data)]
    written = tuple(second_law(group) for group in all_)
    ask = "Write Newton's second law for each that moves or rests on its own."
    after = [Part("equations", "explain", ask, points=written), *inner(all_)]
    return first, after, added(here, all_)


def second_law(group: Group) -> Point:
    """Newton's second law for a group, as it is written down."""
    if not group.moves and not group.along(group.first, group.last):
        return Point(f"For {group.called}: nothing acts along its path, so F_net = 0.", 1, ("F_net = 0",))
    law = printed(group.law(group.first, group.last))
    return Point(f"For {group.called}: {law}.", 1, (law,))


def added(here: Setup, all_: tuple[Group, ...]) -> tuple[Check, ...]:
    """All forces along the chain against all masses times accelerations."""
    if any(len(group.rough) > 1 and not group.moves for group in all_):
        return ()
    sides: dict[int, list[str]] = {1: [], -1: []}
    for group in all_:
        if not group.moves and not frictions(group):
            continue
        terms = [(sign, term) for n in group.numbers for sign, term in drives(here, n)]
        terms += [(-group.way, f"f_{n}") for n in group.rough]
        if group.moves:
            terms += [(-group.way, f"m{n}*{group.a}") for n in group.numbers]
        for sign, term in terms:
            sides[sign].append(term)
    if not all(sides.values()):
        return ()
    left, right = (" + ".join(sides[sign]) for sign in (1, -1))
    return (
        Check("Forces and masses times accelerations of all of them, added", f"{left} = {right}", sizes=here.sizes),
    )
