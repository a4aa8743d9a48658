"""Electric field patterns of point charges, found by following the field.

E is the sum of kQ/r² along the line from each charge (Coulomb's law and
superposition); a field line is followed with the midpoint rule, and where it
bends with the classical fourth-order Runge–Kutta step. Lines leave positive charges and enter negative ones.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import lru_cache
from math import atan2, cos, hypot, inf, isfinite, pi, sin

from calc.figures import words
from calc.figures.charges import RADIUS, Charge
from calc.figures.figure import Figure
from calc.figures.pieces import Curve, Item, Point, Sphere

MARGIN = 4.2  # lines of page shown around the outermost charges
MOST = 24  # lines at the largest charge
FEWEST = 4  # fewer lines than this do not show a pattern
WIDEST = 14.0  # lines of page from one outermost charge to the other
CLOSEST = 0.3  # lines of page; charges nearer than this cannot be drawn apart
STEPS = 10_000  # steps spent on one pattern; ordinary ones take 1500, the worst seen 6000
STRAIGHT = 0.9997  # cosine of the turn in half a step (1,4°) up to which the midpoint rule will do
MOST_STEPS = 400  # of one line
CLOSE = 1.6 + 1e-9  # drawn radii; a straight line comes to 1,6 in whole steps, and no rounding is to decide there
TOLERANCE = 0.01  # lines of page that a drawn field line may stray
JOINED = "Charges too close together to be drawn apart are drawn as one."


def field_at(charges: Sequence[Charge], x: float, y: float) -> Point:
    """Field components at a point, in units of k × (unit of charge) ÷ (unit of length)²."""
    ex = ey = 0.0
    for _, q, cx, cy, *_ in charges:
        dx, dy = x - cx, y - cy
        square = dx * dx + dy * dy or 1e-30
        pull = q / (square * square**0.5)
        ex += pull * dx
        ey += pull * dy
    return ex, ey


type _Heading = tuple[float, float, float]


def _headings(charges: Sequence[Charge], radius: float, sense: float) -> Callable[[float, float], _Heading]:
    """Of a point: the unit direction of the line there, and the square of the way to the nearest centre.

    `sense` −1 follows lines backwards. Within 1,4 drawn radii of a centre the line is turned to meet the drawn surface
    at 90°, as a line meets a conductor.
    """
    bodies = [(one.charge, one.x, one.y) for one in charges]
    close = (1.4 * radius) ** 2

    def heading(x: float, y: float) -> _Heading:
        ex = ey = 0.0  # as in `field_at`; a call for each point is what most of the time would go on
        least = inf
        for q, cx, cy in bodies:
            dx, dy = x - cx, y - cy
            square = dx * dx + dy * dy or 1e-30
            if square < least:
                least = square
            pull = q / (square * square**0.5)
            ex += pull * dx
            ey += pull * dy
        size = hypot(ex, ey) or 1e-30
        ux, uy = sense * ex / size, sense * ey / size
        if least < close:
            ux, uy = _turned(bodies, radius, (x, y), sense, (ux, uy))
        return ux, uy, least

    return heading


def _turned(bodies: Sequence[tuple[float, float, float]], radius: float, at: Point, sense: float, way: Point) -> Point:
    """A direction near a drawn sphere, turned to its surface."""
    (x, y), (ux, uy) = at, way
    for q, cx, cy in bodies:
        away = hypot(x - cx, y - cy)
        if q and away < 1.4 * radius:
            share = max(0.0, (away - radius) / (0.4 * radius))
            turn = sense if q > 0 else -sense
            rx, ry = turn * (x - cx) / (away or 1e-30), turn * (y - cy) / (away or 1e-30)
            ux, uy = share * ux + (1 - share) * rx, share * uy + (1 - share) * ry
            size = hypot(ux, uy) or 1e-30
            ux, uy = ux / size, uy / size
    return ux, uy


def _follow(
    charges: Sequence[Charge], radius: float, start: Point, sense: float, reach: float, gone: float
) -> tuple[list[Point], int | None]:
    """The line from `start`, and the number of the charge it ends on (None: it leaves).

    It is followed up to `gone` from the origin; `reach` is the scale of its steps.
    """
    heading = _headings(charges, radius, sense)
    (x, y), path = start, [start]
    k1x, k1y, least = heading(x, y)
    for _ in range(MOST_STEPS):
        near = least**0.5
        h = 0.12 * radius if near < CLOSE * radius else min(0.1 * near, 0.04 * reach)
        k2x, k2y, _ = heading(x + h / 2 * k1x, y + h / 2 * k1y)
        u, v = x + h * k2x, y + h * k2y
        ahead = heading(u, v)
        if k1x * k2x + k1y * k2y < STRAIGHT or k2x * ahead[0] + k2y * ahead[1] < STRAIGHT:
            k3x, k3y, _ = heading(x + h / 2 * k2x, y + h / 2 * k2y)
            k4x, k4y, _ = heading(x + h * k3x, y + h * k3y)
            u = x + h / 6 * (k1x + 2 * k2x + 2 * k3x + k4x)
            v = y + h / 6 * (k1y + 2 * k2y + 2 * k3y + k4y)
            ahead = heading(u, v)
        x, y = u, v
        k1x, k1y, least = ahead
        if near - h <= radius:
            for i, c in enumerate(charges):
                away = hypot(x - c.x, y - c.y)
                if away <= radius and c.charge * sense < 0:
                    # Ends on the surface, not inside.
                    path.append((c.x + (x - c.x) * radius / away, c.y + (y - c.y) * radius / away))
                    return path, i
        path.append((x, y))
        if x * x + y * y > gone * gone:
            break
    return path, None


def _quotas(charges: Sequence[Charge], lines_each: int) -> tuple[list[int], bool]:
    """Lines at each charge, in proportion to its size where that can be drawn."""
    sizes = [abs(c.charge) for c in charges]
    smallest, largest = min(s for s in sizes if s), max(sizes)
    most = min(MOST, round(lines_each * largest / smallest))
    exact = [most * size / largest for size in sizes]
    quotas = [max(FEWEST, round(e)) if e else 0 for e in exact]
    fair = all(abs(q - e) <= 0.5 for q, e in zip(quotas, exact, strict=True))
    return quotas, fair


def _gaps(taken: list[float]) -> list[tuple[float, float]]:
    """(start, width) of the gaps between angles taken round a charge."""
    angles = sorted(a % (2 * pi) for a in taken)
    return [(a, (b - a) % (2 * pi) or 2 * pi) for a, b in zip(angles, angles[1:] + angles[:1], strict=True)]


def _shared(gaps: Sequence[tuple[float, float]], wanted: int) -> list[float]:
    """`wanted` new angles, put where the lines would stand widest apart."""
    parts = [1] * len(gaps)
    for _ in range(wanted if gaps else 0):
        parts[max(range(len(gaps)), key=lambda i: gaps[i][1] / parts[i])] += 1
    return [
        start + width * n / share for (start, width), share in zip(gaps, parts, strict=True) for n in range(1, share)
    ]


def _visible(path: list[Point], charges: Sequence[Charge], margin: float) -> list[list[Point]]:
    """The pieces of a line within `margin` of the box around the charges."""
    left, right = min(c.x for c in charges), max(c.x for c in charges)
    low, high = min(c.y for c in charges), max(c.y for c in charges)
    pieces: list[list[Point]] = [[]]
    for x, y in path:
        # Distance from the box around the charges: the shown part has rounded corners.
        dx = left - x if x < left else x - right if x > right else 0.0
        dy = low - y if y < low else y - high if y > high else 0.0
        if dx * dx + dy * dy <= margin * margin:
            pieces[-1].append((x, y))
        elif pieces[-1]:
            pieces.append([])
    return [piece for piece in pieces if len(piece) > 2]


def _thinned(path: list[Point], tolerance: float) -> list[Point]:
    """The line with points dropped that lie within `tolerance` of it (Douglas–Peucker)."""
    (x, y), (x2, y2) = path[0], path[-1]
    dx, dy = x2 - x, y2 - y
    offs = [abs(dx * (v - y) - dy * (u - x)) for u, v in path]  # times the length of the chord
    far = max(offs)
    if far <= tolerance * hypot(dx, dy):
        return [path[0], path[-1]]
    at = offs.index(far)
    return _thinned(path[: at + 1], tolerance)[:-1] + _thinned(path[at:], tolerance)


def field_lines(
    charges: Sequence[Charge | tuple[str, float, float, float]],
    *,
    radius: float,
    margin: float,
    lines_each: int = 8,
) -> tuple[Curve, ...]:
    """Field lines as curves that run from positive to negative (or to the edge).

    `radius` is that of the drawn spheres, `margin` the space shown around the
    outermost charges, both in the charges' own unit of length; `lines_each`
    is the number of lines at the smallest charge.
    """
    return _traced(tuple([Charge(*one) for one in charges]), radius, margin, lines_each)[0]


type _Found = tuple[list[Point], int | None]  # a line, and the number of the charge it ends on


class _Lines:
    """Lines that leave the charges, each followed once; ``spent`` counts the steps of all that were asked for.

    The charges lie around the origin on a page whose corners are `corner` away from it.
    """

    def __init__(self, charges: Sequence[Charge], radius: float, corner: float) -> None:
        self.charges, self.radius = charges, radius
        self.reach = 6.0 * corner  # far beyond the page: a loop that leaves it may come back
        # With charges of one sign, whose field beyond them points outwards everywhere, none does.
        self.gone = corner if len({c.charge > 0 for c in charges}) == 1 else self.reach
        self.fold = _fold(charges)
        self.found: dict[tuple[int, float, float], _Found] = {}
        self.spent = 0

    def follow(self, number: int, angle: float) -> _Found:
        """The line that leaves a charge at an angle, and the number of the charge it ends on."""
        way = (cos(angle), sin(angle))
        key = _key(number, way)
        if key not in self.found:
            self.found[key] = self._mirrored(number, way) or self._followed(number, way)
        self.spent += len(self.found[key][0])
        return self.found[key]

    def _mirrored(self, number: int, way: Point) -> _Found | None:
        """The line on the other side of the charges, turned over, if it was followed."""
        found = self.found.get(_key(number, _turned_over(way, self.fold))) if self.fold else None
        if found is None or self.fold is None:
            return None
        _, _, on_x, on_y, *_ = self.charges[0]
        back = [_turned_over((x - on_x, y - on_y), self.fold) for x, y in found[0]]
        return [(on_x + u, on_y + v) for u, v in back], found[1]

    def _followed(self, number: int, way: Point) -> _Found:
        c, (ux, uy) = self.charges[number], way
        start = (c.x + self.radius * ux, c.y + self.radius * uy)
        return _follow(self.charges, self.radius, start, 1.0 if c.charge > 0 else -1.0, self.reach, self.gone)


def _key(number: int, way: Point) -> tuple[int, float, float]:
    return number, round(way[0], 9), round(way[1], 9)


def _fold(charges: Sequence[Charge]) -> Point | None:
    """Cosine and sine of twice the angle of the line all charges lie on, where there is one: what is on one side of it
    mirrors what is on the other."""
    first, *others = charges
    if not others:
        return None
    ux, uy = others[0].x - first.x, others[0].y - first.y
    length = hypot(ux, uy)
    ux, uy = ux / length, uy / length
    if any(abs((c.x - first.x) * uy - (c.y - first.y) * ux) >= 1e-12 for c in others):
        return None
    return ux * ux - uy * uy, 2 * ux * uy


def _turned_over(way: Point, fold: Point) -> Point:
    """A way on the other side of the line of the charges."""
    (x, y), (cosine, sine) = way, fold
    return x * cosine + y * sine, x * sine - y * cosine


@lru_cache(maxsize=8)  # the pattern stays while a reader changes something else
def _traced(
    bodies: tuple[Charge, ...],
    radius: float,
    margin: float,
    lines_each: int,
) -> tuple[tuple[Curve, ...], bool]:
    """The curves, and whether these are all: no more are begun when `STEPS` are spent."""
    live = [c for c in bodies if c.charge]
    if not live:
        return (), True
    left, right = min(c.x for c in bodies) - margin, max(c.x for c in bodies) + margin
    low, high = min(c.y for c in bodies) - margin, max(c.y for c in bodies) + margin
    mid = ((left + right) / 2, (low + high) / 2)
    # Around the origin.
    local = [Charge(c.label, c.charge, c.x - mid[0], c.y - mid[1]) for c in live]
    quotas, _ = _quotas(live, lines_each)
    taken: list[list[float]] = [[] for _ in local]
    curves: list[Curve] = []
    lines = _Lines(local, radius, hypot(right - left, high - low) / 2)

    def full(end: int | None) -> bool:
        return end is not None and len(taken[end]) >= quotas[end]

    # The smallest first: its lines are the fewest, and the others fit round them.
    for i in sorted(range(len(local)), key=lambda i: abs(local[i].charge)):
        c = local[i]
        forwards = 1 if c.charge > 0 else -1
        wanted = max(0, quotas[i] - len(taken[i]))
        if taken[i]:
            open_gaps = [g for g in _gaps(taken[i]) if not full(lines.follow(i, g[0] + g[1] / 2)[1])]
            # Never closer than half the even spacing: fewer lines rather than a bundle.
            room = sum(int(width * quotas[i] / pi) for _, width in open_gaps)
            angles = _shared(open_gaps, min(wanted, room))
        else:
            others = [o for o in local if o is not c]
            near = min(others, key=lambda o: hypot(o.x - c.x, o.y - c.y), default=None)
            first = atan2(near.y - c.y, near.x - c.x) if near else pi / wanted
            angles = [first + (n + 0.5) * 2 * pi / wanted for n in range(wanted)]
        for angle in angles:
            if lines.spent >= STEPS:
                return tuple(curves), False
            path, end = lines.follow(i, angle)
            if full(end):
                continue
            if end is not None:
                x, y = path[-1]
                taken[end].append(atan2(y - local[end].y, x - local[end].x))
            taken[i].append(angle)
            for piece in _visible(path[::forwards], local, margin):
                thin = _thinned(piece, max(0.02 * radius, TOLERANCE * margin / MARGIN))
                shown = tuple((x + mid[0], y + mid[1]) for x, y in thin)
                curves.append(Curve(shown, "fieldline", arrows=1))
    return tuple(curves), True


def _distances(bodies: Sequence[Charge]) -> list[float]:
    return [hypot(a.x - b.x, a.y - b.y) for i, a in enumerate(bodies) for b in bodies[:i]]


def _joined(bodies: Sequence[Charge]) -> list[Charge]:
    """The charges, those too close together to be drawn apart taken as one.

    From as far away as the page shows them, their field is that of their sum at
    the centre of their charge.
    """
    found = list(bodies)
    while len(found) > 1:
        a, b = min(
            ((a, b) for i, b in enumerate(found) for a in found[:i]),
            key=lambda pair: hypot(pair[0].x - pair[1].x, pair[0].y - pair[1].y),
        )
        if hypot(a.x - b.x, a.y - b.y) * WIDEST >= CLOSEST * max(_distances(found)):
            break
        whole = abs(a.charge) + abs(b.charge)
        share = abs(b.charge) / whole if whole else 0.5
        label = ", ".join(one.label for one in (a, b) if one.label)
        x, y = a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)
        one = Charge(label, a.charge + b.charge, x, y, a.signed and b.signed)
        found[found.index(a)] = one
        found.remove(b)
    return found


def field_pattern(
    charges: Sequence[Charge | tuple[str, float, float, float]],
    *,
    lines_each: int = 8,
    title: str = "Electric field pattern",
    description: str = "",
    notes: Sequence[str] = (),
) -> Figure:
    """The field pattern of one to eight point charges at their places.

    Raises ValueError for no charge, more than eight, two at one place, or if
    all are zero.
    """
    bodies = [Charge(*one) for one in charges]
    if not 1 <= len(bodies) <= 8:
        raise ValueError(f"A field pattern shows 1 to 8 charges, not {len(bodies)}.")
    if not any(c.charge for c in bodies) or not all(isfinite(c.charge) for c in bodies):
        raise ValueError("A field needs a charge: give at least one that is not zero.")
    if len({(c.x, c.y) for c in bodies}) < len(bodies):
        raise ValueError("Two charges share a point: give each its own position.")
    together = _joined(bodies)
    joined = len(together) < len(bodies)
    bodies = together
    apart = _distances(bodies)
    # Neighbours 6 lines apart, unless that makes the whole too large for a page.
    size = min(6.0 / min(apart), WIDEST / max(apart)) if apart else 1.0
    radius = min(RADIUS, 0.3 * size * min(apart)) if apart else RADIUS
    drawn = [Charge(c.label, c.charge, c.x * size, c.y * size) for c in bodies]
    curves, complete = _traced(tuple(drawn), radius, MARGIN, lines_each)
    items: list[Item] = [*curves]
    items += [Sphere((c.x, c.y), radius, c.sign, c.label) for c in drawn]
    said = words.listing([f"{words.plain(c.label) or 'a charge'} ({c.kind})" for c in bodies])
    live = [c for c in bodies if c.charge]
    fair = complete and (not live or _quotas(live, lines_each)[1])
    text = (
        f"Field lines around {said}. Lines leave positive charges and enter negative ones, "
        "never cross, and meet each charge at a right angle."
    )
    remarks = [] if fair else ["Number of lines not in proportion to the charges."]
    if fair and len(bodies) > 2:
        remarks = ["Number of lines only roughly in proportion to the charges."]
    if joined:
        remarks.append(JOINED)
    return Figure(title, description or text, tuple(items), (*remarks, *notes), unit=1.0)


__all__ = ["field_at", "field_lines", "field_pattern"]
