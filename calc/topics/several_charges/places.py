"""Where on a line the net force on a third charge is as stated: each region tried, every place listed.

No closed form: each region is cut at the turning point of the net force, and every piece in which the
net force passes the stated one holds one place, found by halving. There may be two, or none.
Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from math import isfinite, sqrt
from random import Random
from typing import Literal, cast

from calc.figures import Figure
from calc.figures.charges import Charge, On, spheres_on_line
from calc.language.printing import rounded
from calc.language.symbols import symbol
from calc.model.answers import Direction
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import FSA, Check, Choice, Data, Draw, Part, Plan, Question, Refusal, Root, Step
from calc.topics.several_charges.balance import PLACES
from calc.topics.several_charges.shared import (
    SIDES,
    SUPERPOSITION,
    apart,
    charge,
    check,
    explain,
    side,
    signed,
    size,
    slip,
    two_on_a_line,
    way_of,
)
from calc.topics.shared.electrostatics import COULOMB, refuse_zero_charge, state
from calc.working.declaring import boxes
from calc.working.roots import NoRoot, bisect

# --- a stated net force -------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Region:
    """One part of the line and how far into it a place is.

    key: one of PLACES. name: of that distance. sides: on which side of charge 1 and of charge 2 it is, +1 right, −1
    left. start: the charge that the distance is measured from.
    """

    key: str
    name: str
    sides: tuple[int, int]
    start: Literal[1, 2]

    @property
    def between(self) -> bool:
        return self.sides[0] != self.sides[1]

    @property
    def way(self) -> int:
        """From the charge it is measured from into the region: +1 to the right, −1 to the left."""
        return self.sides[self.start - 1]

    @property
    def measured(self) -> str:
        return f"from charge {self.start}, {side(self.way).words}"

    @property
    def gaps(self) -> tuple[str, str]:
        """The distances from charge 1 and charge 2 as expressions."""
        other = f"(d {'-' if self.between else '+'} {self.name})"
        return (self.name, other) if self.start == 1 else (other, self.name)

    def steps(self, d: float, r: float) -> tuple[float, float]:
        """From charge 1 and from charge 2 to the place ``r`` into it, right positive; each without a difference that
        would lose digits beside its charge."""
        own = self.way * r
        return (own, -(d - own)) if self.start == 1 else (d + own, own)


REGIONS = (
    Region("beyond-1", "u", (-1, -1), 1),
    Region("between", "x", (1, -1), 1),
    Region("beyond-2", "w", (1, 1), 2),
)
# The part between the charges once more, for a place so near charge 2 that its distance from there counts.
FROM_THE_RIGHT = Region("between", "z", (1, -1), 2)
BESIDE = 0.01  # of d: nearer to charge 2 than this, a place is measured from there


class Forces:
    """The net force on charge 3 along the line, right positive, for one set of data."""

    def __init__(self, data: Data) -> None:
        v = data.values
        self.d = v["d"]
        self.first = data.settings.constant("k") * v["Q1"] * v["Q3"]
        self.second = data.settings.constant("k") * v["Q2"] * v["Q3"]

    def at(self, region: Region, r: float) -> float:
        """The net force ``r`` into a region."""
        a, b = region.steps(self.d, r)
        net = self.first / (a * abs(a)) + self.second / (b * abs(b))
        if not isfinite(net):
            raise OverflowError("the net force is too large to have a size")
        return net

    def ways(self, region: Region) -> tuple[int, int]:
        """The directions (±1) of the forces of charges 1 and 2 in a region."""
        return way_of(self.first) * region.sides[0], way_of(self.second) * region.sides[1]

    def turning(self, region: Region) -> float | None:
        """How far into the region the net force stops growing or shrinking; None if it does not."""
        # d/dx of A/x² ± B/(x − d)² is zero where the ratio of the distances is the cube root of B/A.
        ratio = (abs(self.second) / abs(self.first)) ** (1 / 3)  # distance from 2 over distance from 1
        same = self.ways(region)[0] == self.ways(region)[1]
        if region.between:
            return self.d / (1 + ratio) if same else None
        if same or ratio == 1:
            return None
        if region.start == 1:
            return self.d / (ratio - 1) if ratio > 1 else None
        return self.d * ratio / (1 - ratio) if ratio < 1 else None

    def places(self, region: Region, wanted: float) -> list[tuple[Region, float, float]]:
        """Every place in a region where the net force is ``wanted`` (not zero), with an interval around its distance.

        The region is cut where the net force turns, and between the charges at least once, so that each piece
        holds one place at most and lies against one charge only: from that charge it is measured.
        """
        one, two, d = abs(self.first), abs(self.second), self.d
        if region.between:
            middle = self.turning(region) or d / 2
            left = self._piece(region, wanted, one, two, [middle])
            found = [self._shifted(*place) for place in self._piece(FROM_THE_RIGHT, wanted, two, one, [d - middle])]
            return [(region, *place) for place in left] + found[::-1]
        beside, other = (one, two) if region.start == 1 else (two, one)
        # Farther out than this both forces together are smaller than the wanted one.
        reach = 2 * sqrt((one + two) / abs(wanted)) + d
        cut = self.turning(region)
        ends = [cut, reach] if cut and cut < reach else [reach]
        return [(region, *place) for place in self._piece(region, wanted, beside, other, ends)]

    def _piece(
        self, region: Region, wanted: float, beside: float, other: float, ends: list[float]
    ) -> list[tuple[float, float]]:
        """Intervals around the distances, from the charge the region is measured from out to each end in turn."""

        def gap(r: float) -> float:
            return self.at(region, r) - wanted

        # Nearer than this the charge beside it outdoes the other one and the wanted force together.
        near = 1e-3 * min(self.d, sqrt(beside / abs(wanted)), self.d * sqrt(beside / other))
        found = []
        for low, high in pairwise([min(near, ends[0] / 2), *ends]):
            try:
                root = bisect(gap, low, high)
            except NoRoot:
                continue
            # The net force has one direction of change here, so any interval around the root will do.
            found.append((max(low, 0.8 * root), min(high, 1.2 * root)))
        return found

    def _shifted(self, low: float, high: float) -> tuple[Region, float, float]:
        """A place found from charge 2, measured from charge 1 like the others unless it lies right beside charge 2."""
        if high < BESIDE * self.d:
            return FROM_THE_RIGHT, low, high
        return REGIONS[1], self.d - high, self.d - low


BY_TRIAL = "No formula of school algebra gives these distances; they are found by trial, narrowing in step by step."


def plan_places(data: Data) -> Plan:
    refuse_zero_charge(data, "Q1", "Q2", "Q3")
    if data.values["F_net"] == 0:
        raise Refusal(
            "F_net",
            "For no net force use the question “Where is there no net force?”. Here type a force greater than zero.",
        )
    forces = Forces(data)
    positive = 1 if data.choices["way"] == "right" else -1
    wanted = positive * data.values["F_net"]
    parts: list[Part] = [state(SUPERPOSITION)]
    checks: list[Check] = []
    for region in REGIONS:
        found = forces.places(region, wanted)
        if not found:
            parts.append(empty_part(data, region, forces, positive))
        for n, (place, low, high) in enumerate(found):
            count = f"{n + 1}" if len(found) > 1 else ""
            parts.append(place_part(data, place, forces, positive, (low, high), count))
            checks.append(place_check(place, positive, count))
    count_ = len(checks)
    return Plan(
        story=story_places(data),
        parts=tuple(parts),
        values=dict(data.values),
        scene=lambda _: spheres_on_line(
            [Charge("Q_1", data.values["Q1"], 0.0), Charge("Q_2", data.values["Q2"], forces.d)],
            distances=[(0, 1, data.said["d"])],
            title="Two fixed charges",
        ),
        checks=tuple(checks),
        notes=(f"Places on the line that fit: {count_ or 'none'}.", *([BY_TRIAL] if count_ else [])),
    )


def equation_in(region: Region, forces: Forces, positive: int) -> str:
    """F_net as the sum of both forces in a region, positive in the stated direction; both minus cannot be."""
    gaps = zip(forces.ways(region), ("Q1", "Q2"), region.gaps, strict=True)
    terms = [(way * positive, f"k*{source}*Q3/{gap}^2") for way, source, gap in gaps]
    return f"F_net = {signed(sorted(terms, key=lambda term: -term[0]))}"


def place_part(
    data: Data, region: Region, forces: Forces, positive: int, ends: tuple[float, float], count: str
) -> Part:
    """One place: the equation of its region and its root."""
    region = replace(region, name=f"{region.name}{count}")
    name, law = region.name, equation_in(region, forces, positive)
    same = forces.ways(region)[0] == forces.ways(region)[1]
    where = dict(PLACES)[region.key]
    nth = {"": "the place", "1": "the first place", "2": "the second place"}[count]
    nearest = f"Q{region.start}"
    style = data.settings.style
    low, high = (rounded(end, style).text for end in ends)
    step = Step(
        law=law,
        make=f"{name} = {name}",
        unit="m",
        marks=FSA,
        sizes=("Q1", "Q2", "Q3"),
        what="Superposition with Coulomb's law, and its root",
        quotes=(COULOMB.name,),
        why=(
            f"Here the two forces point {'the same way' if same else 'opposite ways'}; plus for a force in the stated"
            f" direction. {symbol(name).text} is measured {region.measured}."
        ),
        plain="Try a distance, see whether the total force is too large or too small, and move.",
        root=Root(
            law,
            *ends,
            method=(
                f"By trial: between {low} m and {high} m the right side passes the net force once. Halve the interval"
                " again and again."
            ),
        ),
        direction=Direction(region.key, f"{where}, measured {region.measured}", PLACES),
        mistakes=(slip("one-force", name, f"sqrt(k*abs({nearest})*abs(Q3)/F_net)"),),
    )
    return Part(
        f"{region.key}{'-' + count if count else ''}",
        "calculate",
        f"Find {nth} {where} where the net force is as stated; measure {region.measured}.",
        (step,),
        figure=lambda v: place_figure(data, region, v[name], positive),
    )


def empty_part(data: Data, region: Region, forces: Forces, positive: int) -> Part:
    """Why a region holds no place."""
    ways, style = forces.ways(region), data.settings.style
    cut = forces.turning(region)
    if ways[0] == ways[1]:
        reason = f"Both forces on charge 3 point {side(ways[0]).words} there."
        if ways[0] != positive:
            end = "The net force has the wrong direction everywhere in this part."
        else:
            least = rounded(abs(forces.at(region, cut or forces.d / 2)), style).text
            end = f"The net force is never smaller than {least} N there, which is more than the stated one."
    else:
        reason = "The two forces point opposite ways there."
        # With a turning point inside, the net force may point the stated way without ever being large enough.
        if cut and way_of(forces.at(region, cut)) == positive:
            most = f"never exceeds {rounded(abs(forces.at(region, cut)), style).text} N there"
            end = f"In the stated direction the net force {most}, which is less than the stated one."
        else:
            end = f"The net force points {side(-positive).words} everywhere in this part: the wrong direction."
    ask = f"Explain why there is no such place {dict(PLACES)[region.key]}."
    return explain(region.key, ask, (reason,), (end,))


def place_check(region: Region, positive: int, count: str) -> Check:
    """Put the place back with signed charges: each force is k Q Q₃ (step)/|step|³, right positive."""
    region = replace(region, name=f"{region.name}{count}")
    own = region.name if region.way > 0 else f"(-{region.name})"
    x, y = (own, f"({own} - d)") if region.start == 1 else (region.gaps[0], own)
    return check(
        f"Put it back, {dict(PLACES)[region.key]}, with the signs of the charges and steps",
        f"{'F_net' if positive > 0 else '-F_net'} = k*Q3*(Q1*{x}/abs({x})^3 + Q2*{y}/abs({y})^3)",
        "To the right counts as positive.",
    )


def place_figure(data: Data, region: Region, r: float, positive: int) -> Figure:
    """Charge 3 at a place found, with the net force on it."""
    v = data.values
    x = region.steps(v["d"], r)[0]
    if x in (0.0, v["d"]):  # a learner's own value may land on a charge
        x = v["d"] / 3
    return spheres_on_line(
        [Charge("Q_1", v["Q1"], 0.0), Charge("Q_2", v["Q2"], v["d"]), Charge("Q_3", v["Q3"], x)],
        forces=[On(2, "F_{net}", v["F_net"], positive > 0)],
        distances=[(2, region.start - 1, symbol(region.name).label)],
        title="A place that fits",
    )


def story_places(data: Data) -> str:
    said = data.said
    return (
        f"{two_on_a_line(data)} "
        f"Charge 3, {said['Q3']}, is placed on the same line, and the net electrostatic force on it is {said['F_net']} "
        f"{dict(SIDES)[data.choices['way']]}."
    )


def practise_places(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """For unlike charges the direction that holds outside them, where there is always a place."""
    minus = [str(typed[name]).startswith(("-", "−")) for name in ("Q1", "Q2", "Q3")]
    if minus[0] != minus[1]:
        return {**typed, "way": "left" if minus[0] == minus[2] else "right"}
    return {**typed, "way": cast(Random, random).choice(("left", "right"))}


PLACES_QUESTION = Question(
    key="places",
    title="Where is the net force as stated?",
    **boxes(
        charge("Q1", "Charge 1, on the left", "+6 nC; 4 6 8 9"),
        charge("Q2", "Charge 2, on the right", "-4 nC; 3 5 7; -3 -5 7"),
        charge("Q3", "Charge 3, to be placed", "+2 nC; 2 3 -2"),
        apart("d", "Distance between charge 1 and charge 2", "30 cm; 20 30 40"),
        size("F_net", "Net force on charge 3 (size)", "12 uN; 2 5 8 12 µN"),
        Choice("way", "Direction of the net force", LEFT_RIGHT.options),
        draws={"way": Draw(("right", "left"))},
    ),
    plan=plan_places,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name),
    adjust=practise_places,
    levels=(3,),
)
