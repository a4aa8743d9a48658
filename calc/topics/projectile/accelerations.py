"""What a graph of acceleration against time tells: changes in velocity by areas, and with the velocity at the start
the velocity at any time.

The reader gives the key points of the graph, joined by straight lines; two points at one time make a jump. Either
direction may be the positive one. Mistakes and marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from random import Random
from typing import Any, cast

from calc.figures import Figure
from calc.figures.graph_words import short
from calc.figures.graphs import GraphLine, graph
from calc.model.answers import Mark, Point
from calc.model.directions import UP_DOWN
from calc.model.questions import SA, A, Check, Data, Input, Mistake, Part, Plan, Question, Refusal, Rows, Step, Values
from calc.topics.projectile.equations import POSITIVE, directed, sense_stated, written
from calc.topics.projectile.laws import EQUATIONS
from calc.topics.shared.quantities import AGAINST, velocity_along
from calc.topics.shared.quantities import time as a_time
from calc.working.working import measure, run

LETTERS = "ABCDEFGH"
READ = 0.05  # of an acceleration that is read off the graph. Common practice, no source.
EARLIER = "Each point comes after the one before it, or at the same time where the graph jumps: type a later time."
NO_JUMP = "Two points at one time make a jump: give the second another acceleration, or a later time."
END_JUMP = "A jump at the first or the last point lasts no time and changes nothing: leave one of the two points out."
OUTSIDE = "The graph goes from {} to {}: give a time between them."
OPENINGS = (
    (
        "A drone moves along a vertical line. A sensor in it records its acceleration; the graph has these points,"
        " joined by straight lines: {}."
    ),
    (
        "The graph of acceleration against time of a lift in a test tower is made of straight lines between these"
        " points: {}."
    ),
    (
        "A test capsule is driven up and down a vertical rail. Its acceleration against time is drawn as straight lines"
        " between the points {}."
    ),
)
AT_REST = "At the first point it is at rest."
MOVES = "At the first point it moves at {} {}."
PLAIN_AREA = "So much velocity in each second, times the seconds."
WHY_AREA = "The area between the graph and the time axis is the change in velocity; below the axis it is negative."
SLOPE = (
    "You took the gradient of the graph. It tells how fast the acceleration changes; the change in velocity is the"
    " area: use {%s}."
)
DIVIDED = "You divided by the time. The change in velocity is the area, height times width: multiply for {%s}."
HALVED = "You took a triangle for {%s}. The acceleration stays the same here, so the area is a rectangle: do not halve."
RECTANGLE = "You took a rectangle for {%s}. The acceleration changes evenly here: use the mean of both values."
TRIANGLE = "You took a triangle for {%s}. Both accelerations count: use the mean of the two."
WHOLE_TIME = "You took the time from zero. The area is only as wide as this part lasts: use {%s} for {%s}."
SIZES = "You added the sizes. An area below the time axis takes velocity away: subtract it for {%s}."
FORGOT_U = (
    "You left out the velocity at the start. The areas give only how much the velocity changes: add {u} to get {%s}."
)
SUBTRACTED = "You subtracted the velocity at the start. The areas are the change from it: add {u} to get {%s}."
READ_OFF = "You read off the acceleration. The graph shows no velocity: add the areas up to that time to {u} for {%s}."
TO_THE_END = "You took all areas. Add only those up to that time to {u} for {%s}."
MEANING = Part(
    "meaning",
    "explain",
    "What does the area between the graph and the time axis tell, and does the graph alone tell how fast it moves?"
    " Give a reason.",
    points=(
        Point("The area is the change in velocity.", 1, ("change in velocity",)),
        Point("No: the velocity at the start must be known as well.", 1, ("velocity at the start",)),
    ),
)
TURNS = Part(
    "turning",
    "explain",
    "Where the acceleration changes its sign, does it turn round there? Give a reason.",
    points=(
        Point("No: there only the acceleration changes its direction.", 1, ("acceleration", "direction")),
        Point(
            "It turns round where its velocity is zero; at that moment its velocity is not zero.",
            1,
            ("velocity is zero",),
        ),
    ),
)


@dataclass(frozen=True)
class Piece:
    """A straight line of the graph, from key point n to the next, and its two ends."""

    n: int
    start: float
    first: float
    end: float
    last: float

    @property
    def level(self) -> bool:
        """Whether the acceleration stays the same."""
        return self.first == self.last

    @property
    def idle(self) -> bool:
        """Whether there is no acceleration at all, and so no area."""
        return self.first == self.last == 0

    def at(self, time: float) -> float:
        """The acceleration at a time."""
        return self.first + (self.last - self.first) * (time - self.start) / (self.end - self.start)

    def gained(self, time: float) -> float:
        """The change in velocity from its start to a time."""
        return (self.first + self.at(time)) / 2 * (time - self.start)


def pieces(rows: Sequence[Values]) -> tuple[Piece, ...]:
    """The straight lines that last some time; a jump lasts none."""
    return tuple(
        Piece(n, one["t"], one["a"], other["t"], other["a"])
        for n, (one, other) in enumerate(pairwise(rows), 1)
        if other["t"] > one["t"]
    )


def refuse(data: Data, rows: Sequence[Values]) -> None:
    """Refuse times that go back, jumps that are none, and a time outside the graph."""
    last = len(rows) - 1
    for n, (one, other) in enumerate(pairwise(rows), 1):
        if other["t"] > one["t"]:
            continue
        if other["t"] < one["t"] or (n > 1 and rows[n - 2]["t"] == one["t"]):
            raise Refusal(f"points.{n}.t", EARLIER)
        if one["a"] == other["a"]:
            raise Refusal(f"points.{n}.a", NO_JUMP)
        if n in (1, last):
            raise Refusal(f"points.{n}.t", END_JUMP)
    if not rows[0]["t"] < data.values["t_P"] < rows[-1]["t"]:
        said = data.rows_said["points"]
        raise Refusal("t_P", OUTSIDE.format(said[0]["t"], said[-1]["t"]))


def signed(law: str, *, up: bool, unit: str = "m·s⁻¹", **words: Any) -> Step:
    """A step that its law gives directly, its value with a direction; words: as in Step."""
    return directed(Step(law=law, make=law, unit=unit, **words), up)


def area(one: Piece, up: bool) -> Step:
    """The change in velocity over one piece."""
    n, name = one.n, f"A{one.n}"
    time = f"(t{n + 1} - t{n})"
    how = f"a{n}*{time}" if one.level else f"1/2*(a{n} + a{n + 1})*{time}"
    if one.level:
        slips = [
            Mistake("divided", name, f"a{n}/{time}", DIVIDED % name),
            Mistake("halved", name, f"1/2*a{n}*{time}", HALVED % name),
        ]
        if one.start:
            slips.append(Mistake("whole-time", name, f"a{n}*t{n + 1}", WHOLE_TIME % (f"t{n + 1} - t{n}", name)))
    else:
        alone = f"a{n + 1}" if one.last else f"a{n}"
        slips = [
            Mistake("gradient", name, f"(a{n + 1} - a{n})/{time}", SLOPE % how),
            Mistake("rectangle", name, f"{alone}*{time}", RECTANGLE % name),
        ]
        if one.first and one.last:
            slips.append(Mistake("triangle", name, f"1/2*a{n + 1}*{time}", TRIANGLE % name))
    return signed(
        law=f"{name} = {how}",
        what=f"The area from {LETTERS[n - 1]} to {LETTERS[n]}",
        why=WHY_AREA,
        plain=PLAIN_AREA,
        marks=A,
        mistakes=tuple(slips),
        up=up,
    )


def change(areas: Sequence[Step], sizes: Sequence[float], up: bool) -> Step:
    """The whole change in velocity."""
    names = [step.makes for step in areas]
    slips: tuple[Mistake, ...] = ()
    if min(sizes) < 0 < max(sizes):
        slips = (Mistake("sizes-added", "Deltav", " + ".join(f"abs({one})" for one in names), SIZES % "Deltav"),)
    return signed(
        law=f"Deltav = {' + '.join(names)}",
        what="Add the areas, with their signs",
        why="What is gained above the time axis is lost again below it.",
        plain="All that the velocity gains, less all that it loses.",
        marks=(Mark("formula"), Mark("answer")),
        mistakes=slips,
        up=up,
    )


def from_start(name: str, added: str, what: str, up: bool, slips: tuple[Mistake, ...], moving: bool) -> Step:
    """A velocity from that at the start and the areas since; moving: it is not at rest there."""
    if moving:
        slips = (
            Mistake("start-forgotten", name, added, FORGOT_U % name),
            Mistake("start-subtracted", name, f"{added} - u", SUBTRACTED % name),
            *slips,
        )
    return signed(
        law=f"{name} = u + {added}",
        what=what,
        why=sense_stated(
            "The areas are the change since the start, so the velocity there is added. Upwards is positive.", up
        ),
        plain="Where it began, and what came on top.",
        marks=SA,
        mistakes=slips,
        up=up,
    )


def part_of(one: Piece, up: bool) -> Iterator[Step]:
    """The change in velocity from the start of a piece to the time asked; what the acceleration is there, if it
    changes."""
    n, time = one.n, f"(t_P - t{one.n})"
    how = f"a{n}*{time}"
    if not one.level:
        how = f"1/2*(a{n} + a_P)*{time}"
        rise = f"(a{n + 1} - a{n})/(t{n + 1} - t{n})*{time}"
        yield signed(
            law=f"a_P = a{n} + {rise}",
            what="The acceleration at that time",
            why="Read it off the line. By calculation: from the point before, the gradient times the time since.",
            plain="How high the graph is at that time.",
            unit="m·s⁻²",
            marks=A,
            read_off=READ,
            up=up,
        )
    yield signed(
        law=f"A_P = {how}",
        what=f"The area from {LETTERS[n - 1]} to that time",
        why=WHY_AREA,
        plain=PLAIN_AREA,
        marks=A,
        mistakes=(
            (Mistake("halved", "A_P", f"1/2*{how}", HALVED % "A_P"),)
            if one.level
            else (Mistake("rectangle", "A_P", f"a_P*{time}", RECTANGLE % "A_P"),)
        ),
        up=up,
    )


def at_time(found: Sequence[Piece], time: float, total: str, up: bool, moving: bool) -> tuple[Step, ...]:
    """The velocity at a time inside the graph: the areas up to it, the last of them in part."""
    names = [f"A{one.n}" for one in found if one.end <= time and not one.idle]
    here = next(one for one in found if one.start < time <= one.end)
    steps = tuple(part_of(here, up)) if time < here.end and not here.idle else ()
    if steps:
        names.append("A_P")
    if not names:
        still = "Until then there is no acceleration, so the velocity is still that at the start."
        plain = "Nothing has changed yet."
        return (
            signed(
                law="v_P = u",
                what="No area yet",
                why=still,
                plain=plain,
                marks=A,
                mistakes=(Mistake("to-the-end", "v_P", f"u + {total}", TO_THE_END % "v_P"),),
                up=up,
            ),
        )
    read = "a_P" if any(one.makes == "a_P" for one in steps) else f"a{here.n + (time == here.end)}"
    slips = [Mistake("to-the-end", "v_P", f"u + {total}", TO_THE_END % "v_P")]
    if here.at(time):
        slips.append(Mistake("value-read", "v_P", read, READ_OFF % "v_P"))
    return (*steps, from_start("v_P", " + ".join(names), "The velocity at that time", up, tuple(slips), moving))


# --- the graphs ---------------------------------------------------------------------------------------------------


def scene(v: Values, count: int) -> Figure:
    """The graph that is read, with its points; a jump is dashed."""
    points = [(v[f"t{n}"], v[f"a{n}"]) for n in range(1, count + 1)]
    lines = [
        GraphLine([one, other], "", "dashed" if one[0] == other[0] else "solid") for one, other in pairwise(points)
    ]
    return graph(
        "t (s)",
        "a (m·s^{-2})",
        lines,
        marks=[(*point, LETTERS[n]) for n, point in enumerate(points)],
        title="Acceleration against time",
    )


def speeds(found: Sequence[Piece], u: float) -> Iterator[tuple[float, float]]:
    """Times and velocities of the graph of velocity, close enough for a curve."""
    v = u
    for one in found:
        many = 1 if one.level else 24
        for k in range(many):
            time = one.start + (one.end - one.start) * k / many
            yield time, v + one.gained(time)
        v += one.gained(one.end)
    yield found[-1].end, v


def drawn(found: Sequence[Piece], u: float) -> Figure:
    """The velocity against time, with a table of its key points."""
    made = graph(
        "t (s)",
        "v (m·s^{-1})",
        [GraphLine(list(speeds(found, u)))],
        title="Velocity against time",
        notes=("The gradient of this graph is the acceleration.",),
    )
    rows, v = [("t (s)", "a (m·s⁻²)", "v (m·s⁻¹)")], u
    for one in found:
        rows.append((short(one.start), short(one.first), short(v)))
        v += one.gained(one.end)
        rows.append((short(one.end), short(one.last), short(v)))
    return replace(made, table=tuple(dict.fromkeys(rows)))


def sketch(data: Data, found: Sequence[Piece], v: Values) -> Part:
    """The graph of the velocity that goes with it."""
    style = data.settings.style
    ends = [measure(v[name], "m·s⁻¹", style).text for name in ("u", "v")]
    shape = [
        *(["level where there is no acceleration"] if any(one.idle for one in found) else []),
        *(
            ["straight where the acceleration stays the same"]
            if any(one.level and not one.idle for one in found)
            else []
        ),
        *(["curved where it changes"] if not all(one.level for one in found) else []),
    ]
    words = ", ".join(shape)
    return Part(
        "velocity-graph",
        "draw",
        "Draw the graph of velocity against time that belongs to it.",
        points=(
            Point("Axes labelled v (m·s⁻¹) and t (s).", 1, ("labelled",)),
            Point(f"It begins at {ends[0]} and ends at {ends[1]}, without a jump.", 1, ("begins", "ends")),
            Point(f"It is {words}.", 1, tuple(one.split()[0] for one in shape)),
        ),
        figure=lambda values: drawn(found, values["u"]),
    )


# --- the question -------------------------------------------------------------------------------------------------


def turning(found: Sequence[Piece], u: float) -> tuple[Part, ...]:
    """The part on a change of sign of the acceleration, where the velocity is not zero just there."""
    v, before = u, 0.0
    for one in found:
        crossing = (
            one.start - one.first * (one.end - one.start) / (one.last - one.first) if not one.level else one.start
        )
        for time, after in ((one.start, one.first), (max(crossing, one.start), one.last)):
            if before * after < 0:
                speed = v + one.gained(time)
                return (TURNS,) if abs(speed) > 1e-9 else ()
            before = after or before
        v += one.gained(one.end)
    return ()


def plan(data: Data) -> Plan:
    """What an area tells, the change in velocity, the velocity at the end and at a time, turning, v against t."""
    rows, up = data.rows["points"], data.choices["positive"] == "up"
    refuse(data, rows)
    found, u = pieces(rows), data.values["u"]
    if all(one.idle for one in found):
        raise Refusal("points.0.a", NOTHING)
    areas = tuple(area(one, up) for one in found if not one.idle)
    sizes = [one.gained(one.end) for one in found if not one.idle]
    sums = (*areas, change(areas, sizes, up)) if len(areas) > 1 else areas
    total = sums[-1].makes
    end = from_start("v", total, "The velocity at the last point", up, (), moving=bool(u))
    inside = at_time(found, data.values["t_P"], total, up, moving=bool(u))
    values = {f"{name}{n}": row[name] for n, row in enumerate(rows, 1) for name in ("t", "a")} | data.values
    calculated = (
        Part(
            "change",
            "calculate",
            "Calculate the change in velocity from the first point to the last.",
            sums,
        ),
        Part("end", "calculate", "Calculate the velocity at the last point.", (end,)),
        Part("at-time", "calculate", f"Calculate the velocity at {data.said['t_P']}.", inside),
    )
    worked = run(Plan("", calculated, dict(values)), data.settings.constants())
    listed = ", ".join(
        f"{LETTERS[n]} ({row['t']}; {row['a'].lstrip('+')})" for n, row in enumerate(data.rows_said["points"])
    )
    where = UP_DOWN.by_sign(u, "up" if up else "down")
    starts = MOVES.format(data.said["u"].lstrip("+−-"), where.words) if where else AT_REST
    return Plan(
        story=f"{data.pick(*OPENINGS).format(listed)} {starts} {sense_stated('Upwards is positive.', up)}",
        parts=(MEANING, *calculated, *turning(found, u), sketch(data, found, worked)),
        values=values,
        scene=lambda v: scene(v, len(rows)),
        checks=(rest(found),),
    )


def rest(found: Sequence[Piece]) -> Check:
    """The area from the time asked to the end leads from the one velocity to the other."""

    def holds(v: Values) -> bool:
        after = 0.0
        for one in found:
            since = max(v["t_P"], one.start)
            if since < one.end:
                after += (one.at(since) + one.last) / 2 * (one.end - since)
        return abs(v["v_P"] + after - v["v"]) <= 1e-9 * (abs(v["v_P"]) + abs(v["v"]) + abs(after))

    return Check(
        "From that time to the end",
        words="The area that is left, added to the velocity at that time, gives the velocity at the last point.",
        holds=holds,
    )


NOTHING = "The acceleration is zero throughout, so nothing changes. Give at least one point with an acceleration."


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Faster, steadily, slower; from level 2 on with a jump or two slanting pieces."""
    draw = cast(Random, random)
    lasting = [float(draw.choice((2, 3, 4, 5) if level == 1 else (1.5, 2.5, 3.5, 4.5))) for _ in range(3)]
    fast, slow = float(draw.choice((1, 1.5, 2, 2.5))), -float(draw.choice((1.5, 2, 3, 4)))
    if level == 1 or draw.random() < 0.4:
        ends = [(0.0, fast), (lasting[0], fast), (lasting[0] + lasting[1], 0.0), (sum(lasting), slow)]
    elif draw.random() < 0.5:
        ends = [(0.0, fast), (lasting[0], fast), (lasting[0], slow), (lasting[0] + lasting[1], slow)]
    else:
        ends = [(0.0, 0.0), (lasting[0], fast), (lasting[0] + lasting[1], fast), (sum(lasting), slow)]
    u = float(draw.choice((1, 2, 3, 4, -1, -2, 0)))
    at = round(ends[-1][0] * (0.3 + 0.6 * draw.random()) * 2) / 2
    sign = 1 if typed["positive"] == "up" else -1
    rows = [{"t": written(t, "s", 3), "a": written(sign * a, "m/s^2", 3)} for t, a in ends]
    return {**typed, "points": rows, "u": written(sign * u, "m/s", 3), "t_P": written(at, "s", 3)}


U = velocity_along("u", "Velocity at the first point", "", "1 m/s")
T_P = a_time("t_P", "Time at which the velocity is asked", "", "4 s")
ACCELERATIONS = Question(
    key="accelerations",
    title="Read from a graph of acceleration",
    fields=(
        POSITIVE,
        Rows(
            "points",
            "Key points of the graph",
            "point",
            (
                Input("t", "Time", "s", 1e-3, 600, over=None),
                Input("a", "Acceleration", "m·s⁻²", 1e-3, 300, signed=True, help=AGAINST),
            ),
            at_least=2,
            at_most=8,
        ),
        U.box,
        T_P.box,
    ),
    plan=plan,
    laws=(EQUATIONS.name,),
    example={
        "positive": "up",
        "points": (
            {"t": "0 s", "a": "2 m/s^2"},
            {"t": "3 s", "a": "2 m/s^2"},
            {"t": "5 s", "a": "0 m/s^2"},
            {"t": "9 s", "a": "-1,5 m/s^2"},
        ),
        "u": U.example,
        "t_P": T_P.example,
    },
    adjust=practise,
    scenario=True,
    since=6,
)
