"""Every builder over the whole of what it can be asked, at each edge where it begins to draw or to speak otherwise.

``approved/builders/NAME.txt`` holds the pieces and words, with the places of the labels: a regression lock, as
``test_figures_approved`` is for the questions. Below it stand rules that need no lock. After a change on purpose:

    .venv/bin/python -m tests.test_figures_swept

writes the files anew; read what git shows as changed.
"""

import itertools
import random
import re
from collections.abc import Callable, Iterator
from itertools import product
from pathlib import Path
from typing import Any

import pytest

from calc.figures import (
    Body,
    Charge,
    Figure,
    GraphLine,
    On,
    Resolved,
    charges_in_plane,
    drawn_lengths,
    field_pattern,
    free_body_diagram,
    graph,
    graph_words,
    hanging_pair,
    plates_scene,
    slope_scene,
    spheres_on_line,
    tail_to_head,
    words,
)
from calc.figures.bodies import Ball, Lift, Pulley, Slope, Trolley
from calc.figures.chains import Acting, Lying, chain
from calc.figures.circuit_pieces import NOUNS
from calc.figures.circuits import Part, circuit, parallel, series
from calc.figures.connected import in_a_lift, in_a_row, over_an_edge, over_one_pulley, over_the_top
from calc.figures.energy import Amount, energy_bars
from calc.figures.field import _joined, _quotas
from calc.figures.graph_marks import Area, Gradient, Key
from calc.figures.graphs import scale_of, tick_label
from calc.figures.motion import Moving, before_after
from calc.figures.pieces import Block, Piece, Plate, Sphere, Text
from calc.figures.surfaces import Pulled, on_surface, on_two_strings
from calc.figures.telling import composed, tell
from calc.figures.vertical import Height, Place, vertical
from calc.renderings import shapes
from calc.renderings.drawing import Disc, Head, Sheet
from tests.drawn_figures import BUILDERS
from tests.kept import differing
from tests.test_figure_words import WORDS
from tests.test_figures_approved import APPROVED as QUESTIONS
from tests.test_figures_approved import piece, short, told

APPROVED = QUESTIONS.parent / "builders"
SEEDS = range(6)
PULLS = (("T", 1.0, 120.0), ("F_g", 0.8, 270.0), ("F_E", 0.6, 0.0))
Made = tuple[str, Callable[[], Figure]]


def plates() -> Iterator[Made]:
    """Signs, turned or not, with and without each thing that may be there; an odd and an even number of lines."""
    for sign, upright, lines in product("+-", (False, True), (0, 1, 2, 5, 12)):
        yield (
            f"{sign} {upright} {lines}",
            lambda s=sign, u=upright, n=lines: plates_scene(upper_sign=s, upright=u, lines=n),
        )
    for upright, name, sign, forces in product((False, True), ("P", "oil drop", "d"), ("", "-"), ((), PULLS)):
        yield (
            f"{upright} {name} {sign} {len(forces)}",
            lambda u=upright, n=name, s=sign, f=forces: plates_scene(
                upright=u, particle=n, particle_sign=s, forces=f, voltage="490 V", separation="5 mm"
            ),
        )


def slopes() -> Iterator[Made]:
    """Strings to a post and to each other, both bodies in both orders, steep and flat, spheres and blocks."""
    pairs: list[tuple[Any, Any]] = [
        (Body("A", 0.1, 1), Body("B", 0.7, -1)),
        (Body("A", 1.0, 0, "block"), Body("B", 0.0, 1)),
        (Body("A", 0.5, -1, "block"), Body("B", 0.5, 0)),
    ]
    for angle, bodies, string in product((1, 30, 66, 67, 89), pairs, ("", "up", "down")):
        yield (
            f"{angle} {bodies[0].place} {string}",
            lambda a=angle, b=bodies, s=string: slope_scene(
                a, b, string=s, string_label="T", string_on=1, distances=[(0, 1, "r")], string_to=None if s else 0
            ),
        )
    for bodies, on in product(pairs, (0, 1)):
        yield (
            f"forces on {bodies[on].label} {bodies[on].place}",
            lambda b=bodies, n=on: slope_scene(30, b, forces=PULLS, forces_on=n, distances=[(1, 0, "r")]),
        )


def threads() -> Iterator[Made]:
    """One support and two, apart and together, from almost upright to almost level."""
    for angle, (two, close), forces in product(
        (1, 3, 10, 30, 60, 73, 74, 80, 89), ((False, False), (True, False), (True, True)), ((), PULLS)
    ):
        yield (
            f"{angle} {two} {close} {len(forces)}",
            lambda a=angle, t=two, c=close, f=forces: hanging_pair(
                a, two_supports=t, attracting=c, forces=f, signs=("+", "-"), supports_label="d"
            ),
        )


def collisions() -> Iterator[Made]:
    """Each shape beside each, joined or apart, at rest or moving either way, with and without a label."""
    for shape, other, joined, speed, right in product(
        ("trolley", "box", "ball"), ("trolley", "box", "ball"), (False, True), (0.0, 1.0), (False, True)
    ):
        yield (
            f"{shape} {other} {joined} {speed} {right}",
            lambda s=shape, o=other, j=joined, v=speed, r=right: before_after(
                [Moving("A", "v_{A}", v, r, s), Moving("", "", 2.0, not r, o, j, ("x",))],
                [Moving("A", "", v, r, s), Moving("B", "v_{B}", 3.0, r, o, j)],
                positive="right" if r else "left",
            ),
        )


def uprights() -> Iterator[Made]:
    """A body low and one high, on one line or two, moving either way or at rest, over a ground or in the air."""
    for up, other, line, ground, positive in product(
        (True, False, None), (True, None), (0, 1), (None, 0.0), ("up", "down")
    ):
        yield (
            f"{up} {other} {line} {ground} {positive}",
            lambda u=up, o=other, n=line, g=ground, p=positive: vertical(
                [Place("S", 0.0, "u", u, spot=True), Place("P", 3.0, "v", o, n, ("x",))],
                [Height(0.0, 3.0, "h", n)],
                positive=p,
                ground=g,
            ),
        )


TWO = ("m_1", "m_2")


def tied() -> Iterator[Made]:
    """Bodies on surfaces with ropes and rods, on strings, over pulleys and in lifts, at the ends of their angles."""
    for slope, lean, push in product((0, 4, 30, 75), (None, 0, 20, 80), (False, True)):
        rope = None if lean is None else Pulled("P", lean, push)
        yield f"on a surface {slope} {lean} {push}", lambda a=slope, r=rope: on_surface(a, r)
    for alpha, beta in ((0, 30), (30, 0), (35, 50), (80, 85), (5, 5), (90, 45)):
        yield f"two strings {alpha} {beta}", lambda a=alpha, b=beta: on_two_strings(a, b, load="m")
    for angle in (5, 20, 45, 70):
        yield f"over the top {angle}", lambda a=angle: over_the_top(a)
    for angle, on, push, back in product((0, 4, 35, 70), (1, 3), (False, True), (False, True)):
        labels, held = tuple(f"m_{n}" for n in range(1, on + 1)), Pulled("P", 25, push, back=back)
        yield f"chain {angle} {on} {push} {back}", lambda a=angle, o=labels, h=held: chain(a, o, touch=h.push, pulled=h)
    for angle in (0, 4, 35, 70):
        held = Pulled("P", 25, back=True)
        yield f"chain ahead {angle}", lambda a=angle, h=held: chain(a, ("m_1", "m_2"), pulled=h, front="m_3")
    for angle, back in product((0, 12, 35, 70), (False, True)):
        force, lies = Acting(0, back), Lying(1, back, "Q_2", not back)
        yield f"chain further {angle} {back}", lambda a=angle, s=force, f=lies: chain(a, TWO, second=s, field=f)
    yield "chain ends", lambda: chain(0, ("m_2",), back="m_1", front="m_3")
    for either in (False, True):
        yield f"in a row {either}", lambda e=either: in_a_row(pushed=e)
        yield f"in a lift {either}", lambda e=either: in_a_lift(hangs=e)
    yield "over an edge", over_an_edge
    yield "over one pulley", over_one_pulley


def patterns() -> Iterator[Made]:
    """Charges in every ratio up to where it cannot be drawn, of both signs, and charges too close to draw apart."""
    for ratio in (1.06, 1.07, 1.5, 2, 3, 4.5, 7, 8, 9, 16):
        yield f"1 to {ratio}", lambda q=ratio: field_pattern([Charge("A", 1, 0, 0), Charge("B", -q, 1, 0)])
        yield f"{ratio} to 1", lambda q=ratio: field_pattern([Charge("A", q, 0, 0), Charge("B", 1, 0, 2)])
    for first, second in ((0, 0), (1, 3), (-3, 1), (2, -2), (0, 1)):
        yield (
            f"close {first} {second}",
            lambda a=first, b=second: field_pattern(
                [Charge("A", a, 0, 0), Charge("B", b, 1e-3, 0), Charge("", 1, 1, 0)]
            ),
        )
    for gap in (0.04, 0.05, 0.06, 0.1, 0.3):
        yield (
            f"gap {gap}",
            lambda g=gap: field_pattern([Charge("A", 1, 0, 0), Charge("B", 1, g, 0), Charge("C", -1, 1, 0)]),
        )


def bodies() -> Iterator[Made]:
    """Forces of every ratio, on one dot, equal or to scale, resolved along axes all round."""
    for size, equal in product((0.0, 0.01, 0.12, 0.13, 0.2, 0.24, 0.25, 0.9985, 0.9995, 1.0), (False, True)):
        yield (
            f"{size} {equal}",
            lambda s=size, e=equal: free_body_diagram([("A", 1, 0), ("B", s, 90)], equal_lengths=e),
        )
        yield f"{size} least 0,02", lambda s=size: free_body_diagram([("A", 1, 0), ("B", s, 90)], min_fraction=0.02)
    for axis in range(0, 360, 15):
        yield (
            f"axis {axis}",
            lambda a=axis: free_body_diagram(
                [("A", 1, 40), ("B", 0.5, a)], components=[Resolved("A", a, "u", "v")], angles=[(0, a, "θ")], guides=[a]
            ),
        )
    for a, b in ((0, 5), (0, 15), (0, 355), (170, 190), (350, 10), (90, 90), (180, 180)):
        yield f"near {a} {b}", lambda a=a, b=b: free_body_diagram([("A", 1, a), ("B", 0.8, b), ("C", 0.6, a)])


def sums() -> Iterator[Made]:
    """Two vectors at every angle, and three on one line."""
    for way in (*range(0, 360, 15), 89, 91, 179, 181):
        yield f"{way}", lambda w=way: tail_to_head([("A", 1, 0), ("B", 0.7, w)], angle=(0, 40, "θ"), scale="1 cm = 1 N")
    for a, b, c in product((0, 180), repeat=3):
        yield f"{a} {b} {c}", lambda w=(a, b, c): tail_to_head([("A", 1, w[0]), ("B", 0.6, w[1]), ("C", 0.4, w[2])])


def lined_up() -> Iterator[Made]:
    """Charges on a line and in a plane, close and far, with forces both ways on each."""
    for gap, right in product((0.1, 0.2, 0.46, 0.5, 1, 2, 2.2, 5, 50), (False, True)):
        yield (
            f"{gap} {right}",
            lambda g=gap, r=right: spheres_on_line(
                [("A", 2, 0), ("B", -1, 1), ("C", 0, 1 + g)],
                points=[("P", 1 + g / 2)],
                forces=[On(0, "F", 1, r), On(1, "G", 0.5, r), On(1, "H", 0.2, not r), On(2, "K", 0.7, r)],
                distances=[(0, 1, "r"), (1, 2, "s")],
            ),
        )
    for way, axes in product(range(0, 360, 30), (False, True)):
        yield (
            f"{way} {axes}",
            lambda w=way, a=axes: charges_in_plane(
                [Charge("A", 1, 0, 0), Charge("B", -1, *_round(w)), Charge("C", 2, 1, 2)],
                forces=[("F", 1, w), ("G", 0.5, w + 180)],
                resultant=("R", 0.5, w),
                distances=[(0, 1, "r"), (1, 2, "s")],
                axes=a,
                angle=(0, 40, "θ"),
            ),
        )


def _round(way: float) -> tuple[float, float]:
    return {0: (1.0, 0.0), 90: (0.0, 1.0), 180: (-1.0, 0.0), 270: (0.0, -1.0)}.get(int(way), (way / 100 - 2, 0.7))


def graphs() -> Iterator[Made]:
    """Lines that rise, fall, stay, curve, and end where numbers begin to be written otherwise."""
    for end in (0.0, 1e-9, 2e-9, 0.099, 0.1, 0.101, 1, 3, 999, 1000, 1001, 9999, 10000, -0.5, -2000):
        yield (
            f"to {end}",
            lambda e=end: graph("t (s)", "v", [GraphLine([(0, 0), (1, e), (2, e)], "a")], marks=[(1, e, "P")]),
        )
    for bend in (0.0, 0.003, 0.0039, 0.0041, 0.1):
        yield (
            f"bent {bend}",
            lambda b=bend: graph("t", "x (m)", [GraphLine([(0, 0), (1, 1 + b), (2, 2)], "", "dashed")]),
        )
    for count, kind in product((1, 2, 6, 7, 8), ("solid", "points")):
        yield (
            f"{count} {kind}",
            lambda n=count, k=kind: graph(
                "t", "x", [GraphLine([(i, i % 2 + 1) for i in range(n)], "b", k)], y_zero=False
            ),
        )
    for x, y in product((-2, 0, 2), repeat=2):
        yield (
            f"keys {x} {y}",
            lambda x=x, y=y: graph(
                "t (s)",
                "v (m·s⁻¹)",
                [([(-3, -3), (x, y), (3, 3)], "")],
                keys=[Key(x, y, "P", "t_1", "v_1"), Key(3, 3)],
                areas=[Area([(x, y), (3, 3)], "A")],
                gradients=[Gradient((x, y), (3, 3))],
            ),
        )


def others() -> Iterator[Made]:
    """Circuits of each symbol, bars of each sign, and every piece of mechanics turned both ways."""
    for kind in NOUNS:
        yield (
            f"circuit {kind}",
            lambda k=kind: circuit(
                series(Part("cell", "ε"), Part(k, "R_1 = 12 Ω", ("R",))),
                parallel(series(Part(k), Part(k, "R_2")), Part("voltmeter"), parallel(Part(k), Part(k))),
            ),
        )
    for size in (-1.0, -0.2, 0.0, 0.2, 1.0):
        yield (
            f"bars {size}",
            lambda s=size: energy_bars(
                [
                    ("Before", [Amount("E_k", 0.6, "3 J"), Amount("E_p", s)]),
                    ("After", [Amount("W", s, "x"), ("E", -0.3)]),
                ]
            ),
        )
    for base, angle in product((-8, -0.5, 0.5, 8), (10, 60)):
        slope = Slope((0, 0), base, angle, "θ")
        yield (
            f"slope {base} {angle}",
            lambda s=slope: composed("Slope", [s, Ball(s.place(0.5, 0.7), 0.7, "A"), Text(s.place(1, 1), "P")]),
        )
    for kind, seed in product(BUILDERS, SEEDS):
        yield f"{kind} {seed}", lambda k=kind, s=seed: BUILDERS[k](random.Random(f"{k}/swept/{s}"))


SWEPT: dict[str, Callable[[], Iterator[Made]]] = {
    one.__name__: one
    for one in (plates, slopes, threads, collisions, uprights, tied, patterns, bodies, sums, lined_up, graphs, others)
}


def lines(name: str) -> Iterator[str]:
    """The figures of a sweep; a line that stands further up is not told again."""
    before: set[str] = set()
    for what, make in SWEPT[name]():
        every = list(told(make()))
        yield f"=== {what}: {len(every)} lines"
        yield from (line for line in every if line not in before)
        before.update(every)


def small() -> Iterator[str]:
    """Words and numbers of which figures are made, near every place where they change."""
    for exact, step in product(range(0, 361, 45), (-1, -0.06, -0.05, -0.04, 0, 0.04, 0.05, 0.06, 1)):
        yield f"direction {exact + step:g}: {words.direction(exact + step)}"
    for share, least in product((0, 0.01, 0.2, 0.25, 0.3, 0.998, 0.9995, 1), (0.25, 0.3)):
        for equal in (False, True):
            got = drawn_lengths([1, share], min_fraction=least, equal=equal)
            yield f"lengths 1 and {share} from {least} {equal}: {short(tuple(got[0]))} {got[1]}"
    for tenths in range(10, 340):
        quotas, fair = _quotas([Charge("A", 1, 0, 0), Charge("B", tenths / 10, 1, 0)], 8)
        yield f"lines of 1 and {tenths / 10}: {quotas} {fair}"
    for low, high in product(
        (-1000, -7, -0.05, 0, 0.2, 3), (0, 0.05, 0.1, 0.4, 1, 2.5, 6, 60, 600, 999, 1000, 1001, 2e4)
    ):
        if low <= high:
            for zero in (False, True):
                scale = scale_of([low, high], zero=zero)
                ticks = [tick_label(tick, scale) for tick in scale.ticks]
                yield f"axis {low} to {high} {zero}: {' '.join(ticks)} e{scale.power}"
    for value in (0, 1, -1, 12.34, 999, 999.4, 999.6, 1234, 1e-4, 1e-5, -6.8e-5, 1e6):
        yield f"said {value}: {graph_words.short(value)}"
    for one, _ in WORDS:
        yield f"{piece(one)}: {tell(one)}; {[short(corner) for corner in one.corners()]}"


def held() -> dict[str, Callable[[], Iterator[str]]]:
    """Every file."""
    return {**{name: lambda n=name: lines(n) for name in SWEPT}, "small": small}


@pytest.mark.parametrize("name", held())
def test_a_builder_draws_what_it_drew(name: str) -> None:
    """Each piece, word and place of a label over all that a builder can be asked."""
    kept = (APPROVED / f"{name}.txt").read_text(encoding="utf-8").split("\n")[:-1]
    assert differing(kept, list(held()[name]())) == []


# --- rules ---

SOLID: list[Piece] = [
    Ball((2, 1), 0.8),
    Trolley((2, 1), 3.0, 2.2),
    Lift((2, 1), 5.0, 6.0),
    Pulley((2, 1), 0.7, (2, 3)),
    Sphere((2, 1), 0.65, "+"),
    Block((2, 1), 3.0, 1.0, 0.0),
    Block((2, 1), 3.0, 1.0, 90.0),
    Block((2, 1), 3.0, 3.0, 45.0),
    Slope((2, 1), 8.0, 30.0),
    Slope((2, 1), -8.0, 30.0),
]


def extent(points: list[tuple[float, float]]) -> tuple[float, float, float, float]:
    """Left, right, bottom and top."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), max(xs), min(ys), max(ys)


@pytest.mark.parametrize("item", SOLID, ids=repr)
def test_a_body_says_where_its_edges_are(item: Piece) -> None:
    """The corners by which a figure is framed are the edges of what is drawn, within a third of a line of text."""
    scale = 100.0
    page = Sheet(scale, (0.0, 0.0))
    shapes.draw(page, item)
    drawn: list[tuple[float, float]] = []
    for shape in page.shapes:
        if isinstance(shape, Disc):
            (x, y), r = shape.centre, shape.radius
            drawn += [(x - r, y - r), (x + r, y + r)]
        else:
            paths = (shape.points,) if isinstance(shape, Head) else shape.paths
            drawn += [point for path in paths for point in path]
    seen = extent([(x / scale, -y / scale) for x, y in drawn])
    assert extent(list(item.corners())) == pytest.approx(seen, abs=0.35)


@pytest.mark.parametrize("ratio", [n / 10 for n in range(10, 340)])
def test_lines_are_called_fair_where_their_numbers_are_in_proportion(ratio: float) -> None:
    """Where no note says otherwise, the lines at two charges are in their ratio to within half a line."""
    (few, many), fair = _quotas([Charge("A", 1, 0, 0), Charge("B", ratio, 1, 0)], 8)
    assert fair == (abs(many / ratio - few) <= 0.5 + 1e-9)


@pytest.mark.parametrize(
    ("first", "second", "middle"), [(1, 1, 0.5), (3, 1, 0.25), (-1, 3, 0.75), (0, 2, 1.0), (0, 0, 0.5), (2, -2, 0.5)]
)
def test_charges_drawn_as_one_stand_at_the_centre_of_their_charge(first: float, second: float, middle: float) -> None:
    """The one sphere for two divides their distance as the other charge is to the whole, or halves it."""
    far = Charge("C", 1, 1000, 0)
    (one,) = [c for c in _joined([Charge("A", first, 0, 0), Charge("B", second, 1, 0), far]) if c.label != "C"]
    assert (one.x, one.y, one.charge, one.label) == (pytest.approx(middle), 0, first + second, "A, B")


def test_a_voltage_stands_beside_the_plates_not_between_them() -> None:
    """The label of the voltage is set on the side away from the plates, whichever way they stand."""
    for upright in (False, True):
        figure = plates_scene(voltage="490 V", upright=upright)
        (label,) = [one for one in figure.items if isinstance(one, Text)]
        edges = extent([end for one in figure.items if isinstance(one, Plate) for end in (one.start, one.end)])
        beyond = label.at[1] > edges[3] if upright else label.at[0] > edges[1]
        assert beyond
        assert label.place == ("above" if upright else "right")


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda: circuit(Part("cell"), series()), "A branch of the circuit is empty: give it at least one part."),
        (
            lambda: circuit(parallel(Part("cell"), series()), Part("lamp")),
            "A branch of the circuit is empty: give it at least one part.",
        ),
        (
            lambda: energy_bars([("Before", [("E", 0.0)])]),
            "Energy bars need an amount that is not zero, and every amount a number.",
        ),
        (
            lambda: before_after([], [Moving("A")]),
            "Each sketch needs a body, and a speed is zero or more: turn the direction instead.",
        ),
        (lambda: vertical([]), "A sketch needs a body: give it a place."),
    ],
)
def test_what_cannot_be_drawn_is_refused(make: Callable[[], Figure], message: str) -> None:
    """A sentence says what is missing."""
    with pytest.raises(ValueError, match=f"^{re.escape(message)}$"):
        make()


def test_an_arrow_turned_by_a_half_circle_is_told_the_other_way() -> None:
    """Opposite directions are said with opposite words, all round."""
    turned = {"right": "left", "left": "right", "above": "below", "below": "above", "upwards": "downwards"}
    turned |= {"downwards": "upwards"}
    for angle in itertools.chain(range(360), (0.04, 0.06, 89.96, 179.94, 269.9)):
        said, other = words.direction(angle), words.direction(angle + 180)
        assert " ".join(turned.get(word, word) for word in said.split()) == other


if __name__ == "__main__":
    Path(APPROVED).mkdir(parents=True, exist_ok=True)
    for every, make in held().items():
        (APPROVED / f"{every}.txt").write_text("\n".join(make()) + "\n", encoding="utf-8")
