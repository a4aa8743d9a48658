"""Where labels go: candidates around an anchor, the cheapest free place wins.

All in page units, y downwards. A label never ends up on another label: the
search widens until a free place is found. A place on an arrow, a body or a
strong line, or nearer to another body or arrow than to its own, costs more than
the way to any free place; thin lines (which are cut at labels) cost little.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import cached_property, lru_cache
from math import cos, hypot, inf, radians, sin
from operator import itemgetter
from typing import Literal, NamedTuple

from calc.renderings.geometry import (
    Bar,
    Box,
    Index,
    Point,
    Round,
    alongside,
    bar_gap,
    between,
    box_at,
    crosses,
    inside,
    inside_round,
    round_gap,
)
from calc.renderings.spots import LINE, Placed, Request, Spot

type _Turn = tuple[float, float, int]  # cost, extra distance, number of the spot

WIDER: tuple[float, ...] = (0.0, 0.3, 0.7, 1.2, 1.8, 2.6, 3.6, 5.0, 7.0, 10.0)  # extra distance tried, in lines
LEADER_FROM = 1.8  # from this extra distance on, a thin line ties the label to its anchor
STRONG = 30.0  # a bar of this cost or more may not strike a label
STRUCK = 300.0  # more than the way to any place tried costs
ON_LABEL = 10_000.0
ON_LEADER = 900.0  # a leader through a label; with labels all round a point there may be no way
AMBIGUOUS = 200.0  # nearer to another body or arrow than to its own


class _Candidate(NamedTuple):
    cost: float
    extra: float
    box: Box
    spot: Spot


@lru_cache(maxsize=32)
def _order(costs: tuple[float, ...], pinned: tuple[bool, ...], wider: tuple[float, ...]) -> list[_Turn]:
    """Cost, extra distance and spot of every place to try, the cheapest first; a pinned label goes no further."""
    found = [
        (cost if fast else cost + 5.0 * extra, extra, number)
        for extra in wider
        for number, (cost, fast) in enumerate(zip(costs, pinned, strict=True))
        if not fast or not extra
    ]
    found.sort(key=itemgetter(0))
    return found


class _Wish:
    """A label and the places it may take, each worked out when its turn comes: most labels take the first free one."""

    def __init__(self, request: Request) -> None:
        self.request = request
        self.costs = tuple([spot.cost for spot in request.spots])
        self.pinned = tuple([spot.way == (0.0, 0.0) for spot in request.spots])
        self.reaches: dict[int, float] = {}

    @property
    def least(self) -> float:
        """The cost of the best place there is."""
        return _order(self.costs, self.pinned, WIDER)[0][0]

    @cached_property
    def all_round(self) -> _Wish:
        """The same label with every direction from its first anchors."""
        anchors = list(dict.fromkeys(spot.anchor for spot in self.request.spots))[:2]
        spots = [Spot(at, way, 2.0) for at in anchors for way in _WAYS]
        return _Wish(replace(self.request, spots=tuple(spots)))

    def places(self, wider: tuple[float, ...]) -> Iterator[_Candidate]:
        """Places to try, the cheapest first."""
        spots, w, h = self.request.spots, self.request.width, self.request.height
        for cost, extra, number in _order(self.costs, self.pinned, wider):
            spot = spots[number]
            (x, y), (ux, uy) = spot.anchor, spot.way
            if number not in self.reaches:
                self.reaches[number] = self._reach(spot)
            reach = self.reaches[number] + extra * LINE
            at = (x + ux * reach, y + uy * reach) if not self.pinned[number] else spot.anchor
            yield _Candidate(cost, extra, box_at(at, w, h), spot)

    def _reach(self, spot: Spot) -> float:
        """Far enough for the box to clear the anchor in this direction."""
        (ux, uy), request = spot.way, self.request
        w, h = request.width, request.height
        if spot.beside:
            return abs(ux) * w / 2 + abs(uy) * h / 2 + request.gap
        return min(
            (w / 2 + request.gap) / abs(ux) if ux else inf,
            (h / 2 + request.gap) / abs(uy) if uy else inf,
        )


_WAYS = tuple((round(cos(radians(a)), 6), round(-sin(radians(a)), 6)) for a in range(0, 360, 15))


def _leader(spot: Spot, box: Box) -> tuple[Point, Point]:
    """From the nearest point of the box to just short of the anchor."""
    x, y = spot.anchor
    start = (min(max(x, box.left), box.right), min(max(y, box.top), box.bottom))
    length = hypot(x - start[0], y - start[1]) or 1.0
    early, short = min(0.4, 2 / length), max(0.5, 1 - 3 / length)
    return (between(start, (x, y), early), between(start, (x, y), short))


class _Labels:
    """Labels that stand for now, and what they add to the cost of a place."""

    def __init__(self, standing: Iterable[Placed]) -> None:
        standing = tuple(standing)
        self.boxes = [one.box.grown(1.5) for one in standing]
        self.leaders = [Bar(*one.leader, 0.0) for one in standing if one.leader]

    def price(self, box: Box) -> float:
        """What they add to the cost of standing at `box`."""
        price = 0.0
        left, top, right, bottom = box
        for x, y, x2, y2 in self.boxes:
            if left < x2 and x < right and top < y2 and y < bottom:
                price += ON_LABEL
        if self.leaders:
            wide = box.grown(1.5)
            price += ON_LEADER * sum([bool(inside(leader, wide)) for leader in self.leaders])
        return price

    def leader_price(self, bar: Bar) -> float:
        """What they add to the cost of a leader: never through a label, nor over another leader."""
        price = ON_LEADER * sum([bool(inside(bar, one)) for one in self.boxes])
        return price + STRUCK * sum([crosses(bar.start, bar.end, leader) for leader in self.leaders])


class _Page:
    """What stands on the page: strokes and discs for good, other labels for now."""

    def __init__(self, bars: Sequence[Bar], rounds: Sequence[Round]) -> None:
        self.index, self.rounds, self.labels = Index(bars), rounds, _Labels(())
        self.discs: dict[int, list[Round]] = {}
        for disc in rounds:
            self.discs.setdefault(disc.owner, []).append(disc)
        self.shafts: dict[int, list[Bar]] = {}
        for bar in bars:
            if bar.named:
                self.shafts.setdefault(bar.owner, []).append(bar)

    def price(self, box: Box, owner: int, best: float) -> float:
        """Cost of standing at `box`; gives up once it is not below `best`."""
        price = self.labels.price(box)
        if price >= best:
            return price
        left, top, right, bottom = box
        for disc in self.rounds:
            (x, y), radius, cost, _ = disc
            reach = radius + 1.5
            if left - reach < x < right + reach and top - reach < y < bottom + reach:
                gap = round_gap(disc, box)
                if gap < 1.5:
                    price += cost * (1.0 - min(gap, 0.0) / LINE)
                    price += STRUCK if cost >= STRONG else 0.0
        if price >= best:
            return price
        near = box.grown(2.0)
        for bar in self.index.near(near):
            if price >= best:
                return price
            if part := inside(bar, near):
                (x, y), (x2, y2) = bar.start, bar.end
                length = (part[1] - part[0]) * hypot(x2 - x, y2 - y)
                price += bar.cost * (0.5 + length / LINE)
                price += STRUCK if bar.cost >= STRONG else 0.0
        if price < best and self._ambiguous(box, owner):
            price += AMBIGUOUS
        return price

    def _ambiguous(self, box: Box, owner: int) -> bool:
        """Whether a label of a body or an arrow stands nearer to another one."""
        # Letters do not fill their box: there is air above and below them.
        box = Box(box.left + 1, box.top + 4, box.right - 1, box.bottom - 2)
        if own_discs := self.discs.get(owner):
            clear = 1.4 * max(0.0, min(round_gap(disc, box) for disc in own_discs)) + 2.0
            left, top, right, bottom = box.grown(clear)
            return any(
                left - r < x < right + r and top - r < y < bottom + r and round_gap(disc, box) < clear
                for disc in self.rounds
                if disc.owner != owner
                for (x, y), r in [disc[:2]]
            )
        if own_shafts := self.shafts.get(owner):
            clear = 1.4 * min(bar_gap(bar, box) for bar in own_shafts) + 2.0
            return any(
                bar.named and bar.owner != owner and bar_gap(bar, box) < clear
                for bar in self.index.near(box.grown(clear))
            )
        return False

    def pierced(self, leader: Bar, owner: int) -> float:
        """Cost of a leader by itself, and of its way through bodies."""
        return 6.0 + STRUCK * sum([disc.owner != owner and bool(inside_round(leader, disc)) for disc in self.rounds])

    def leader_price(self, leader: Bar, best: float) -> float:
        """Cost of what a leader comes by: never through a label, rather not over lines."""
        a, b = leader.start, leader.end
        price = self.labels.leader_price(leader)
        for one in self.index.along(leader, 3.0):
            if price >= best:
                return price
            if crosses(a, b, one):
                price += 25.0 if one.cost >= STRONG else 4.0
            elif alongside(a, b, one, 3.0):
                price += 25.0
        return price

    def cheapest(self, wish: _Wish, wider: tuple[float, ...], best: float = inf) -> tuple[float, _Candidate] | None:
        """The cheapest place below `best`, with its whole cost."""
        chosen: _Candidate | None = None
        owner = wish.request.owner
        for one in wish.places(wider):
            if one.cost >= best:
                break
            box, price = one.box, one.cost
            leader = Bar(*_leader(one.spot, box), 0.0) if one.extra >= LEADER_FROM else None
            if leader:
                price += self.pierced(leader, owner)
            if price < best:
                # A leader tells what a label names; without one it must stand nearest to that.
                price += self.price(box, -2 if leader else owner, best - price)
            if leader and price < best:
                price += self.leader_price(leader, best - price)
            if price < best:
                best, chosen = price, one
        return (best, chosen) if chosen else None


def _settle(wish: _Wish, page: _Page) -> tuple[Placed, bool]:
    """The label at its cheapest place, and whether no place could be much cheaper."""
    request = wish.request
    found = page.cheapest(wish, WIDER)
    if found is None or found[0] >= AMBIGUOUS:
        best = found[0] if found else inf
        found = page.cheapest(wish.all_round, WIDER, best) or found
    wider = WIDER
    while found is None or found[0] >= ON_LABEL:
        # Labels are finite, so a wide enough ring is free.
        wider = tuple(extra + wider[-1] + 1 for extra in range(12))
        found = page.cheapest(wish.all_round, wider, found[0] if found else inf) or found
    price, one = found
    box = one.box
    centre = ((box.left + box.right) / 2, (box.top + box.bottom) / 2)
    leader = _leader(one.spot, box) if one.extra >= LEADER_FROM else None
    along = one.spot.way[0]
    align: Literal["start", "middle", "end"] = "middle"
    if abs(along) > 0.5:
        align = "start" if along > 0 else "end"
    best_of_all = price < wish.least + 1.0
    return Placed(request.text, request.style, centre, box, align, leader), best_of_all


def place(requests: Sequence[Request], bars: Sequence[Bar], rounds: Sequence[Round]) -> tuple[Placed, ...]:
    """A place for every label, in the order given; no two boxes overlap.

    Labels with the fewest possible places go first; a second pass lets each
    that had to give way move to a better place now that the others stand.
    """
    page = _Page(bars, rounds)
    wishes = [_Wish(request) for request in requests]
    order = sorted(range(len(requests)), key=lambda i: len(requests[i].spots))
    placed: dict[int, Placed] = {}
    happy: set[int] = set()
    met: dict[int, dict[int, Placed]] = {}  # the others that stood when a label was placed
    for _ in range(2):
        for i in order:
            if i in happy:
                continue
            others = {j: p for j, p in placed.items() if j != i}
            if i in placed and _stays(placed[i], met[i], others):
                continue
            met[i] = others
            page.labels = _Labels(others.values())
            placed[i], best = _settle(wishes[i], page)
            if best:
                happy.add(i)
    return tuple(placed[i] for i in range(len(requests)))


def _stays(label: Placed, met: Mapping[int, Placed], others: Mapping[int, Placed]) -> bool:
    """Whether a label's place is the cheapest still: those it met stand where they stood, and none that came since
    makes its place dearer. They can only have made other places dearer."""
    if any(others[number] is not one for number, one in met.items()):
        return False
    came = _Labels(one for number, one in others.items() if number not in met)
    return not came.price(label.box) and not (label.leader and came.leader_price(Bar(*label.leader, 0.0)))
