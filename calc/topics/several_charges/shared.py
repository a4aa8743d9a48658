"""What the questions about several charges share: bodies, one force at a time, directions, refusals.

F = k Q₁ Q₂ / r² with the sizes of the charges, one pair at a time; the net force is the
vector sum. Names: ``F_12`` is the force of charge 1 on charge 2, ``r_12`` their distance.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from math import atan2, cos, degrees, floor, hypot, inf, isfinite, log10, radians, sin
from typing import Any, NamedTuple

from calc.figures import Figure, Force
from calc.figures.charges import Charge
from calc.language.printing import Style, angle, exact
from calc.language.symbols import symbol
from calc.model.answers import Direction, Law, Mark, Point
from calc.model.directions import LEFT_RIGHT, NET_IN_PLANE, UP_DOWN
from calc.model.questions import FSA, Check, Choice, Data, Input, Mistake, Part, Refusal, Rows, Step, Values, in_names
from calc.model.relations import Relation, Towards
from calc.topics.shared import quantities
from calc.topics.shared.electrostatics import FROM_Y_AXIS, NOT_ADDED, NOT_ROOTED, NOT_SQUARED, POINT_CHARGES
from calc.working.declaring import Given

SUPERPOSITION = Law(
    "Principle of superposition",
    "The net electrostatic force on a charge is the vector sum of the forces that each of the other charges "
    "exerts on it alone.",
    ("vector sum", "each of the other charges"),
)

# What is left of a sum that cancels on paper, as a share of its terms (calc.language.expressions drops it too).
NOISE = 1e-9

SIDES = LEFT_RIGHT.options[::-1]
LEVELS = UP_DOWN.options[::-1]

PLAIN_NET = (
    "Several pushes and pulls act at once. Those the same way help each other; those opposite "
    "ways take from each other."
)
COINCIDE = "Two charges share a point. Give each its own position."


SAY = {
    "wrong-side": (
        "You took {F} the other way. Charges that attract pull towards each other, those that repel push away: draw its"
        " arrow again."
    ),
    "not-squared": NOT_SQUARED,
    "charges-added": NOT_ADDED,
    "sizes-added": (
        "You added all the sizes. Forces have directions: draw each one, and count those that point the opposite way as"
        " negative."
    ),
    "subtracted": "You subtracted the forces. Both point the same way: draw them again and add their sizes.",
    "distances-first": (
        "You added the charges and the distances first. Each pair has a force of its own: work out one pair at a time,"
        " then add."
    ),
    "angle-inverted": FROM_Y_AXIS,
    "root-omitted": NOT_ROOTED,
    "one-force": "You let one charge give the whole of {F_net}. The other charge acts as well: put both forces in.",
}


WRONG_PAIR = "You used the distance of another pair. Measure from {source} to {on}: use {{{gap}}}."
OTHER_LINES = (
    "You added the sizes of the forces. They act along different lines, so add their components and then use"
    " Pythagoras."
)
AT_RIGHT = "You added {one} and {other}. They are at right angles, so add their squares and take the square root."
SQUARE_LEFT = "You stopped at the square of the force. Take its square root: that is {F}."
NET_TAKEN = "You took {net} for {share}. {net} is the sum of all the forces: bring {known} into the sum first."
NET_USED = "You used {net}, the whole net force. %s gives only its own share of it: use {share}."
AROUND = "You added the steps along x and along y. The distance {r} is straight across: use Pythagoras."


def beside_angle(component: str, angle: str, axis: str) -> str:
    """What to say to sine and cosine exchanged in a component along an axis."""
    took, where, use = ("sine", "next to", "cosine") if axis == "x" else ("cosine", "opposite", "sine")
    return f"You took the {took} of {{{angle}}}. The component {{{component}}} lies {where} this angle: use its {use}."


@lru_cache(maxsize=512)  # the same few in every plan, as long as the charges keep their places
def slip(key: str, at: str, instead: str, why: str = "", say: str = "", **names: str) -> Mistake:
    """A known mistake; ``say`` where the usual sentence of its key will not do.

    names: what the letters of the sentence are called here.
    """
    return Mistake(key, at, instead, in_names(say or SAY[key], names), why)


def step(law: str, unit: str, what: str, why: str, plain: str, marks: tuple[Mark, ...] = FSA, **more: Any) -> Step:
    """The step to the left side of a law as it stands. more: as for a Relation."""
    name = law.split(" = ")[0]
    return Relation(law, what, why, {name: unit}, plain, marks=marks, **more).step(name)


def explain(key: str, ask: str, *points: tuple[str, ...]) -> Part:
    """A part to explain: a mark for each sentence, which stands before the words its mark hangs on."""
    return Part(key, "explain", ask, points=tuple(Point(words, 1, tuple(keys)) for words, *keys in points))


def check(what: str, law: str, words: str = "", sizes: tuple[str, ...] = ()) -> Check:
    """A second way whose digits agree to a millionth."""
    return Check(what, law, words, sizes=sizes, tolerance=1e-6)


def size_check(sources: Sequence[Body], on: Body, what: str = "Is the size possible?") -> Check:
    """The net force against the least and the most that the sizes of the forces can give."""
    names = [pull_of(s, on) for s in sources]
    return Check(what, words=bounds_words(len(names)), holds=lambda v: within_bounds(v, names, "F_net"))


def signed(terms: Sequence[tuple[int, str]]) -> str:
    """``-F_12 + F_32`` from signs and names."""
    text = "".join(f" {'+' if sign > 0 else '-'} {name}" for sign, name in terms)
    return text.removeprefix(" + ") if text.startswith(" +") else "-" + text.removeprefix(" - ")


def put_back(what: str, net: str, terms: Sequence[tuple[int, str]], sizes: tuple[str, ...]) -> Check:
    """A stated net force once more as the sum of the forces, those in its direction first."""
    law = f"{net} = {signed(sorted(terms, key=lambda term: -term[0]))}"
    return check(what, law, "Plus for a force in the stated direction, minus for the opposite one.", sizes)


class Body(NamedTuple):
    """A charged body: its tag (``1`` or ``A``) names its charge ``Q1`` or ``Q_A``; SI units."""

    tag: str
    charge: float
    x: float = 0.0
    y: float = 0.0
    kind: str = "charge"

    @property
    def words(self) -> str:
        return f"{self.kind} {self.tag}"

    @property
    def name(self) -> str:
        return f"Q{self.tag}" if self.tag.isdigit() else f"Q_{self.tag}"

    @property
    def label(self) -> str:
        return symbol(self.name).label if self.tag.isdigit() else self.tag

    @property
    def drawn(self) -> Charge:
        """The body in a figure; whoever is to find its charge is not shown the sign."""
        return Charge(self.label, self.charge, self.x, self.y, shows=(self.name,))


def pull_of(source: Body, on: Body) -> str:
    """The name of the force of ``source`` on ``on``."""
    return f"F_{source.tag}{on.tag}"


def gap_of(first: Body, second: Body) -> str:
    """The name of the distance between two bodies, the same whichever comes first."""
    return "r_" + "".join(sorted((first.tag, second.tag)))


def like(first: Body, second: Body) -> bool:
    return first.charge * second.charge > 0


def heading_of(source: Body, on: Body) -> float:
    """Degrees anticlockwise from +x of the force of ``source`` on ``on``: 0 up to 360."""
    x, y = on.x - source.x, on.y - source.y
    if not like(source, on):
        x, y = -x, -y
    return degrees(atan2(y, x)) % 360


def sideways(source: Body, on: Body) -> int:
    """+1 where the force of ``source`` on ``on`` points to the right on a line, −1 to the left."""
    return 1 if (on.x > source.x) == like(source, on) else -1


def row_bodies(data: Data) -> list[Body]:
    """The bodies of the table of charges; refuses zero charges and two at one place."""
    bodies = []
    for index, row in enumerate(data.rows["charges"]):
        if row["Q"] == 0:
            raise Refusal(f"charges.{index}.Q", "A zero charge gives no force: leave this row out.")
        bodies.append(Body(str(index + 1), row["Q"], row["x"], row.get("y", 0.0)))
    for index, body in enumerate(bodies):
        for other in bodies[:index]:
            size = max(abs(body.x), abs(body.y), abs(other.x), abs(other.y))
            if hypot(body.x - other.x, body.y - other.y) <= NOISE * size:
                sentence = f"Two charges share a point: charges {other.tag} and {body.tag}. Move one of them."
                raise Refusal(f"charges.{index}.x", sentence)
    return bodies


def chosen(data: Data, bodies: Sequence[Body]) -> tuple[Body, list[Body]]:
    """The body the force is wanted on, and the others."""
    number = int(data.choices["on"])
    if number > len(bodies):
        sentence = f"There is no charge {number}: the table has {len(bodies)} charges. Choose one of them."
        raise Refusal("on", sentence)
    on = bodies[number - 1]
    return on, [body for body in bodies if body is not on]


def on_charge() -> Choice:
    """Which row of the table the net force is wanted on."""
    return Choice(
        "on", "Find the net force on", tuple((str(n), f"charge {n}") for n in range(1, 9)), finds=True, counts="charges"
    )


def table(*columns: str) -> Rows:
    """The table of charges with one column a coordinate."""
    along = {"x": "Position across", "y": "Position upwards"}
    places = tuple(Input(name, along[name], "m", 1e-3, 10, signed=True) for name in columns)
    words = "Charges on the line" if len(columns) == 1 else "Charges in the plane"
    return Rows("charges", words, "charge", (quantities.charge("Q", "Charge", "").box, *places))


def row_values(data: Data) -> dict[str, float]:
    """The table's cells by name: ``Q1``, ``x1`` …"""
    rows = data.rows["charges"]
    return {f"{name}{i + 1}": value for i, row in enumerate(rows) for name, value in row.items()}


# --- one force ----------------------------------------------------------------------------------------------


def pull_step(
    source: Body,
    on: Body,
    direction: Direction,
    way: str,
    marks: tuple[Mark, ...] = FSA,
    wrong_gaps: Sequence[tuple[str, str]] = (),
) -> Step:
    """Coulomb's law for one pair.

    way: the direction inside a sentence. wrong_gaps: (expression, words) of distances a learner may take instead.
    """
    name, gap = pull_of(source, on), gap_of(source, on)
    product = f"k*{source.name}*{on.name}"
    other_pair = WRONG_PAIR.format(source=source.words, on=on.words, gap=gap)
    alike, acts, act = ("Like", "repel", "pushes") if like(source, on) else ("Unlike", "attract", "pulls")
    return pair(
        name,
        source.name,
        on.name,
        gap,
        what=f"Coulomb's law: the force of {source.words} on {on.words}",
        why=f"{alike} charges {acts}: {source.words} {act} {on.words} {way}. Put only sizes into the formula.",
        marks=marks,
        directions={name: lambda v: direction},
        mistakes=(
            slip("not-squared", name, f"{product}/{gap}", r=gap),
            slip("charges-added", name, f"k*({source.name}+{on.name})/{gap}^2", Q1=source.name, Q2=on.name),
            *(
                slip(f"wrong-pair-{n}" if n else "wrong-pair", name, f"{product}/({wrong})^2", why, other_pair)
                for n, (wrong, why) in enumerate(wrong_gaps)
            ),
            *turned(name, f"{product}/{gap}^2", on),
        ),
    ).step(name)


def pair(
    pull: str,
    other: str,
    on: str,
    gap: str,
    *,
    what: str = "Coulomb's law for the size; the direction tells the sign",
    why: str,
    mistakes: tuple[Mistake, ...],
    directions: Mapping[str, Towards] | None = None,
    marks: tuple[Mark, ...] = FSA,
) -> Relation:
    """Coulomb's law between two bodies, by the names of the force, the charges and the distance; sizes only."""
    law = POINT_CHARGES.renamed(F=pull, Q1=other, Q2=on, r=gap)
    return replace(
        law, what=what, why=why, mistakes=mistakes, directions=directions or {}, marks=marks, sizes=(other, on, pull)
    )


def added(
    net: str,
    share: str,
    known: str,
    *,
    ways: tuple[int, int],
    what: str,
    why: str,
    plain: str,
    told: bool,
    wrong: str,
) -> Step:
    """What one charge has to add to a known force for a stated net force on a line.

    ways: the known force and the positive direction, right as 1. told: the net force is not zero.
    wrong: how a known force taken the wrong way shows.
    """
    has, positive = ways
    plus = "+" if has == positive else "-"
    return Relation(
        f"{net} = {share} {plus} {known}",
        what=what,
        why=why,
        plain=plain,
        units={share: "N"},
        marks=(Mark("formula"), Mark("substitution")),
        directions={share: lambda v: side(v[share] * positive) if v[share] else None},
        mistakes=(
            slip("wrong-side", share, f"{net} {plus} {known}", wrong, F=known),
            *([slip("one-force", share, net, say=NET_TAKEN, net=net, share=share, known=known)] if told else []),
        ),
    ).step(share)


def other_pairs(source: Body, on: Body, sources: Sequence[Body]) -> list[tuple[Body, Body, str]]:
    """At most two pairs whose distance may be taken for the right one, where it differs from it, with words."""
    right, found = hypot(source.x - on.x, source.y - on.y), []
    for other in sources:
        if other is source:
            continue
        for a, b in ((other, on), (source, other)):
            if abs(hypot(a.x - b.x, a.y - b.y) - right) > NOISE * right:
                found.append((a, b, f"the distance from {a.words} to {b.words} was used"))
    return found[:2]


def pooled(at: str, minus: str, sources: Sequence[Body], on: Body) -> Mistake:
    """Both charges and both distances added before the law is used, a classic."""
    a, b = sources
    both = f"k*abs({on.name})*(abs({a.name}) + abs({b.name}))/({gap_of(a, on)} + {gap_of(b, on)})^2"
    return slip("distances-first", at, f"{minus}{both}", "the distances were added before the law was used")


def way_of(value: float) -> int:
    """+1 for a positive value, −1 otherwise."""
    return 1 if value > 0 else -1


def pull_on_line(data: Data, source: Body, on: Body) -> float:
    """The force of ``source`` on ``on`` on a line, right positive, in newtons."""
    k = data.settings.constant("k")
    return sideways(source, on) * k * abs(source.charge * on.charge) / (source.x - on.x) ** 2


def turned(name: str, right: str, on: Body) -> tuple[Mistake, ...]:
    """The two ways to have the size right and the direction turned round."""
    ask = f"the direction is the opposite one: was the force on {on.words} drawn, or the force by it?"
    side_ = (
        f"You gave the force on {on.words} the opposite direction. Charges that attract it pull it towards them, those"
        " that repel it push it away: draw the arrows again."
    )
    by = f"You drew the force by {on.words}. The force on it is asked: start each arrow at {on.words}."
    return (
        Mistake("wrong-side", name, right, side_, ask, turns=True),
        Mistake("force-by", name, right, by, ask, turns=True),
    )


def pull_ask(source: Body, on: Body) -> str:
    return f"Calculate the electrostatic force that {source.words} exerts on {on.words}."


def side(sign: float, options: tuple[tuple[str, str], ...] = SIDES) -> Direction:
    """Left for a negative ``sign``, right for a positive one; none for 0 where that is among the options."""
    key = "right" if sign > 0 else "left" if sign < 0 else "none"
    return Direction(key, dict(options)[key], options)


# --- directions in a plane ----------------------------------------------------------------------------------


def compass(x: float, y: float, style: Style) -> Direction:
    """The direction of a vector, from a named axis and in full degrees; none for the zero vector."""
    size = hypot(x, y)
    if not isfinite(size):
        raise OverflowError("a force is too large to have a size")
    if size == 0:
        return NET_IN_PLANE.of("none")
    across = "" if abs(x) <= NOISE * size else "right" if x > 0 else "left"
    along = "" if abs(y) <= NOISE * size else "up" if y > 0 else "down"
    key = "-".join(filter(None, (across, along)))
    full = degrees(atan2(y, x)) % 360
    if not (across and along):
        return replace(NET_IN_PLANE.of(key), angle=full)
    axis = f"{'above' if y > 0 else 'below'} the {'+x' if x > 0 else '−x'} axis"
    acute = degrees(atan2(abs(y), abs(x)))
    words = f"{angle(acute, style).text}° {axis}"
    if key != "right-up":
        words += f" ({angle(full, style).text}° anticlockwise from the +x axis)"
    return replace(NET_IN_PLANE.of(key), words=words, angle=full)


def axis_angle(x: float, y: float) -> tuple[float, float, str] | None:
    """The angle between a vector and the nearer end of the x-axis, for a figure; None along an axis."""
    if abs(x) <= NOISE * abs(y) or abs(y) <= NOISE * abs(x):
        return None
    full, ground = degrees(atan2(y, x)) % 360, 0.0 if x > 0 else 180.0
    start, end = (ground, full) if (x > 0) == (y > 0) else (full, ground)
    return start, end % 360 or 360.0, "θ"


# --- drawings -----------------------------------------------------------------------------------------------


def pulls(sources: Sequence[Body], on: Body, values: Values) -> list[Force]:
    """The forces on ``on``, for a figure."""
    return [
        Force(symbol(pull_of(s, on)).label, abs(values[pull_of(s, on)]), _whole(heading_of(s, on))) for s in sources
    ]


def _whole(angle: float) -> float:
    """Quarter turns without float noise, so that level arrows are drawn level."""
    return float(round(angle)) if abs(angle - round(angle)) < 1e-9 else angle


def way_words(heading: float, style: Style) -> str:
    """A heading in a sentence: "to the right", "at 36,87° above the −x axis"."""
    words = compass(*unit(heading), style).words.split(" (")[0].split(":")[0]
    return f"at {words}" if "°" in words else words


def unit(angle: float) -> tuple[float, float]:
    """The vector of length 1 in a direction given in degrees; exact along the axes."""
    return round(cos(radians(angle)), 12), round(sin(radians(angle)), 12)


def scale_words(largest: float, style: Style) -> str:
    """A scale that draws the largest force between 4 and 10 cm long, in words."""
    step = largest / 10
    if not 0 < step < inf:
        raise OverflowError("no scale draws a force of this size")
    power = 10.0 ** floor(log10(step))
    nice = next(n for n in (1, 2, 5, 10) if n * power >= step * (1 - 1e-9)) * power
    return f"1 cm stands for {exact(float(f'{nice:.1g}'), style).text} N"


def bounds_words(count: int) -> str:
    if count == 2:
        return "Two forces give at most their sum (same direction) and at least their difference (opposite directions)."
    return "The net force is never larger than the sum of all the sizes."


def within_bounds(values: Values, names: Sequence[str], net: str) -> bool:
    """Whether the net force lies between the least and the most that these sizes can give."""
    sizes = sorted(abs(values[name]) for name in names)
    most, least = sum(sizes), max(0.0, sizes[-1] - sum(sizes[:-1]))
    slack = NOISE * most
    return least - slack <= values[net] <= most + slack


def draw_part(on: Body, sources: Sequence[Body], style: Style, figure: Callable[[Values], Figure]) -> Part:
    """The part that asks for the forces on the chosen charge, one mark an arrow."""
    points = []
    for source in sources:
        way, act = way_words(heading_of(source, on), style), "away from" if like(source, on) else "towards"
        starts = f"Arrow {symbol(pull_of(source, on)).text} starts on {on.words} and points {act} {source.words}"
        points.append(Point(f"{starts} ({way}), with a head and its label."))
    ask = f"Draw all the electrostatic forces on {on.words}, with labels."
    return Part("draw", "draw", ask, points=tuple(points), figure=figure)


def charge(name: str, words: str, numbers: str) -> Given:
    """The box of a charge with its numbers: the example, what practice draws, what it draws from level 2 on."""
    return quantities.charge(name, words, "", numbers)


def apart(name: str, words: str, numbers: str) -> Given:
    """The box of a distance; a bare number is in metres whatever the example has."""
    return quantities.distance(name, words, "", numbers, unit="m", high=10)


def size(name: str, words: str, numbers: str) -> Given:
    """The box of the size of a force."""
    return quantities.electrostatic_force(name, words, "", numbers, unit="N")


def two_on_a_line(data: Data) -> str:
    """Two charges fixed a distance d apart, told in words."""
    said = data.said
    opening = data.pick(
        "Two charged beads are glued to a nylon line, {d} apart.",
        "Two charged balls are fixed in a glass tube, their centres {d} apart.",
        later=("On a long bench stand two small charged balls on insulating stems, their centres {d} apart.",),
    ).replace("{d}", said["d"])
    return f"{opening} Charge 1, on the left, carries {said['Q1']}; charge 2, on the right, carries {said['Q2']}."
