"""Builders with data of any kind, drawn at random: hundreds of figures, each held by a few numbers.

``approved/builders/wild.txt`` has a line a figure: how many pieces and how many words it has, a mark of its words, and
sums of all its coordinates, each weighted by its place, of the pieces and (of some) of the page. The pictures to look
at are those of ``test_figures_swept`` and ``test_approved_drawings``; these see a change that begins only at some
angle, some ratio, some order. After a change on purpose:

    .venv/bin/python -m tests.test_figures_wild
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Iterator
from random import Random
from typing import Any, get_args

import pytest

from calc.figures import (
    Body,
    Charge,
    Figure,
    GraphLine,
    On,
    Resolved,
    charges_in_plane,
    field_pattern,
    free_body_diagram,
    graph,
    hanging_pair,
    plates_scene,
    slope_scene,
    spheres_on_line,
    tail_to_head,
)
from calc.figures.bodies import Ball, Cord, Lift, Pulley, Slope, Spring, Trolley
from calc.figures.circuit_pieces import NOUNS
from calc.figures.circuits import Branch, Part, circuit, parallel, series
from calc.figures.energy import Amount, energy_bars
from calc.figures.graph_marks import Area, Gradient, Key
from calc.figures.motion import Moving, before_after
from calc.figures.pieces import (
    AngleMark,
    Arrow,
    ArrowKind,
    Block,
    Column,
    Curve,
    Dimension,
    Dot,
    LineKind,
    Piece,
    Plate,
    Segment,
    Shade,
    Sphere,
    Surface,
    Text,
    polar,
)
from calc.figures.telling import composed
from calc.figures.vertical import Height, Place, vertical
from calc.renderings import svg
from tests.kept import NUMBER, differing
from tests.test_figures_approved import APPROVED as QUESTIONS
from tests.test_figures_approved import piece

KEPT = QUESTIONS.parent / "builders" / "wild.txt"
MANY, ON_PAGE = 36, 9  # figures of a builder; those whose page is measured too
LOOSE = 200  # scenes of single pieces and arrows, each measured on its page
SIGNS: tuple[Any, ...] = ("+", "-", "")
KINDS: tuple[Any, ...] = ("trolley", "box", "ball")
ARROWS: tuple[Any, ...] = get_args(ArrowKind.__value__)
LINES: tuple[Any, ...] = get_args(LineKind.__value__)
ENDS: tuple[Any, ...] = ("tip", "middle")


def angle(chance: Random) -> float:
    """Any angle, one of eight in four a multiple of 45°, some beyond a full turn."""
    return chance.choice((chance.uniform(-360, 720), 45.0 * chance.randint(-4, 12)))


def pulls(chance: Random, fewest: int = 0, most: int = 4) -> list[tuple[str, float, float]]:
    """Forces of any size, some zero, in any direction, some along one line."""
    names = ("F_A", "F_{AB}", "T = 3 N", "w")[: chance.randint(fewest, most)]
    found: list[tuple[str, float, float]] = []
    for name in names:
        turn = found[0][2] + chance.choice((0, 180, 90, -90)) if found and chance.random() < 0.4 else angle(chance)
        found.append((name, chance.choice((0.0, 1.0, chance.uniform(0.001, 1))) if found else 1.0, turn))
    return found


def mark(chance: Random) -> tuple[float, float, str]:
    """A marked angle, from either of its sides."""
    return angle(chance), angle(chance), chance.choice(("θ", "37,5°", ""))


def free_body(chance: Random) -> Figure:
    """Forces on one body, with a component, an angle, a guide or without."""
    forces = pulls(chance, 1)
    return free_body_diagram(
        forces,
        body=chance.choice(("", "A")),
        equal_lengths=chance.random() < 0.3,
        min_fraction=chance.choice((0.25, 0.1)),
        components=[Resolved(forces[0][0], angle(chance), "u", "v")][: chance.randint(0, 1)],
        angles=[mark(chance)][: chance.randint(0, 1)],
        guides=[angle(chance)][: chance.randint(0, 1)],
    )


def vector_sum(chance: Random) -> Figure:
    """Two to four vectors from head to tail."""
    forces = [one for one in pulls(chance, 2) if one[1]]
    return tail_to_head(forces, angle=mark(chance), scale=chance.choice(("", "1 cm = 2 N")))


def charges(chance: Random, fewest: int, most: int) -> list[Charge]:
    """Charges of either sign and none, anywhere."""
    return [
        Charge("ABCDE"[i], chance.choice((-3.0, 0.0, 0.5, 2.0)), round(chance.uniform(0, 9), 1), float(i) + 0.3)
        for i in range(chance.randint(fewest, most))
    ]


def on_line(chance: Random) -> Figure:
    """Two to five charges on a line, with forces and distances of every order."""
    places = sorted(chance.sample(range(60), chance.randint(2, 5)))
    bodies = [("ABCDE"[i], chance.choice((-2, 0, 3)), place / 3) for i, place in enumerate(places)]
    forces = [On(chance.randrange(len(places)), name, size, chance.random() < 0.5) for name, size, _ in pulls(chance)]
    spans = [(i, chance.randrange(len(places)), f"{i} m") for i in range(len(places))]
    points = [("P", chance.uniform(-5, 25))][: chance.randint(0, 1)]
    return spheres_on_line(bodies, forces=forces, distances=[one for one in spans if one[0] != one[1]], points=points)


def in_plane(chance: Random) -> Figure:
    """Two to five charges in a plane, with forces or fields on one of them."""
    bodies = charges(chance, 2, 5)
    on = chance.randrange(len(bodies))
    forces = pulls(chance, 1, 3)
    return charges_in_plane(
        bodies,
        on=on,
        forces=forces,
        resultant=chance.choice((None, ("R", chance.uniform(0.1, 1), angle(chance)))),
        components=[Resolved(forces[0][0], angle(chance), "u", "v")][: chance.randint(0, 1)],
        distances=[(on, other, "r") for other in range(len(bodies)) if other != on][: chance.randint(0, 2)],
        angle=chance.choice((None, mark(chance))),
        axes=chance.random() < 0.5,
        kind=chance.choice(("force", "field")),
    )


def pattern(chance: Random) -> Figure:
    """The field of one to four charges."""
    bodies = charges(chance, 1, 4)
    return field_pattern([Charge("A", 1.0, 0.0, 0.0), *bodies[1:]])


def slope(chance: Random) -> Figure:
    """One or two bodies on a slope."""
    bodies = [
        Body(name, chance.uniform(0, 1), chance.choice((-1, 0, 1)), chance.choice(("sphere", "block")))
        for name in "AB"[: chance.randint(1, 2)]
    ]
    last = len(bodies) - 1
    return slope_scene(
        chance.uniform(1, 89),
        bodies,
        string=chance.choice(("up", "down", "")),
        string_label=chance.choice(("", "T")),
        string_on=last,
        string_to=0 if last and chance.random() < 0.3 else None,
        distances=[(last, 0, "r")] if last else [],
        forces_on=last,
        forces=pulls(chance),
    )


def hanging(chance: Random) -> Figure:
    """Two balls on threads."""
    two = chance.random() < 0.6
    return hanging_pair(
        chance.uniform(1, 89),
        signs=(chance.choice(SIGNS), chance.choice(SIGNS)),
        two_supports=two,
        attracting=two and chance.random() < 0.5,
        thread_label=chance.choice(("", "L")),
        supports_label=chance.choice(("", "d")),
        forces=pulls(chance),
    )


def plates(chance: Random) -> Figure:
    """Plates of either sign, upright or level, with and without all they may have."""
    return plates_scene(
        upper_sign=chance.choice(("+", "-")),
        lines=chance.randint(0, 12),
        upright=chance.random() < 0.5,
        particle=chance.choice(("", "P", "oil drop")),
        particle_sign=chance.choice(SIGNS),
        forces=pulls(chance),
        voltage=chance.choice(("", "490 V")),
        separation=chance.choice(("", "5 mm")),
    )


def points(chance: Random) -> list[tuple[float, float]]:
    """Points of a graph of any size."""
    size = 10 ** chance.uniform(-5, 6)
    return [(float(x), size * chance.uniform(-0.5, 1)) for x in range(chance.randint(2, 7))]


def curves(chance: Random) -> Figure:
    """A graph with and without all that may be marked."""
    line = points(chance)
    return graph(
        "t (s)",
        chance.choice(("v (m·s⁻¹)", "x", "F (N)")),
        [GraphLine(line, chance.choice(("", "a")), chance.choice(("solid", "dashed", "points")))],
        marks=[(*line[0], "P")][: chance.randint(0, 1)],
        keys=[Key(*chance.choice(line), "K", "t_1", "v_1")][: chance.randint(0, 1)],
        areas=[Area(line[1:], "A")] if len(line) > 2 and chance.random() < 0.4 else [],
        gradients=[Gradient(line[0], line[1], "Δt", "Δv")][: chance.randint(0, 1)],
        x_zero=chance.random() < 0.5,
        y_zero=chance.random() < 0.5,
        ticks=chance.random() < 0.8,
    )


def collision(chance: Random) -> Figure:
    """Up to three bodies before and after."""

    def sketch() -> list[Moving]:
        return [
            Moving(
                chance.choice((name, "")),
                chance.choice(("", "v", "v = 2,5 m·s⁻¹")),
                chance.choice((0.0, chance.uniform(0.1, 9))),
                chance.random() < 0.5,
                chance.choice(KINDS),
                joined=bool(i) and chance.random() < 0.4,
            )
            for i, name in enumerate("ABC"[: chance.randint(1, 3)])
        ]

    return before_after(sketch(), sketch(), positive=chance.choice(("right", "left")))


def uprights(chance: Random) -> Figure:
    """Bodies on vertical lines at any heights."""
    places = [
        Place(
            chance.choice((name, "")),
            chance.choice((0.0, chance.uniform(-3, 30))),
            chance.choice(("", "v", f"v_{name} = 2,5 m·s⁻¹")),
            chance.choice((True, False, None)),
            chance.randint(0, 2),
            spot=chance.random() < 0.5,
        )
        for name in "ABC"[: chance.randint(0, 3)]
    ]
    rulers = [Height(min(0.0, one.height), max(0.0, one.height), "h", one.line) for one in places if one.height]
    return vertical(places, rulers, positive=chance.choice(("up", "down")), ground=chance.choice((None, -4.0)))


def energies(chance: Random) -> Figure:
    """Bars of energy of either sign."""
    stages = [
        (stage, [Amount(name, chance.uniform(-1, 1), chance.choice(("", "3 J"))) for name in ("E_k", "E_p", "W")])
        for stage in ("Before", "Work", "After")[: chance.randint(1, 3)]
    ]
    return energy_bars(stages)


PLAIN = [kind for kind in NOUNS if kind != "generator"]  # it came later, and what is kept stays


def branch(chance: Random, depth: int) -> Branch:
    """A part of a circuit, nested."""
    if not depth or chance.random() < 0.3:
        return Part(chance.choice(PLAIN), chance.choice(("", "R_1", "R_2 = 12 Ω")))
    return chance.choice((series, parallel))(*(branch(chance, depth - 1) for _ in range(chance.randint(1, 3))))


def wired(chance: Random) -> Figure:
    """A circuit."""
    return circuit(series(Part(chance.choice(("cell", "battery")), "ε"), branch(chance, 1)), branch(chance, 2))


def place(chance: Random) -> tuple[float, float]:
    """A point, one in two on a grid, so that lines are often level or upright."""
    return chance.choice(
        ((float(chance.randint(-4, 4)), float(chance.randint(-4, 4))), (chance.uniform(-4, 4), chance.uniform(-4, 4)))
    )


def single(chance: Random) -> Piece:
    """One piece of any kind, turned any way."""
    at, end, name = place(chance), place(chance), chance.choice(("", "A", "F_{net} = 3,60 N", "Q_1 = +5 nC"))
    end = end if end != at else (at[0] + 2.0, at[1])
    size, turn = chance.uniform(0.6, 4), angle(chance)
    makers: list[Callable[[], Piece]] = [
        lambda: Arrow(at, end, name, chance.choice(ARROWS), chance.choice((0, 0.5, -1)), chance.choice(ENDS)),
        lambda: Segment(at, end, chance.choice(LINES), name, chance.random() < 0.5),
        lambda: Dimension(at, end, name, chance.uniform(-3, 3), chance.uniform(0, 1)),
        lambda: AngleMark(at, turn, turn + chance.uniform(2, 350), name, size),
        lambda: Sphere(at, size, chance.choice(SIGNS), name),
        lambda: Block(at, size, chance.uniform(0.6, 3), turn, name),
        lambda: Dot(at, name),
        lambda: Surface(at, end),
        lambda: Plate(at, end, chance.choice(SIGNS), name),
        lambda: Text(at, name or "P", chance.choice(("auto", "above", "below", "left", "right"))),
        lambda: Column(at, size, chance.uniform(-4, 4), name),
        lambda: Shade((at, end, (end[0], at[1] + 1)), name),
        lambda: Curve((at, (at[0] + 1, at[1] + 2), end), chance.choice(LINES), name, chance.randint(0, 2)),
        lambda: Ball(at, size, name),
        lambda: Trolley(at, size + 1, size, name),
        lambda: Lift(at, size + 2, size + 3, name),
        lambda: Pulley(at, 0.7, (at[0], at[1] + 2), name),
        lambda: Cord(at, end, (at[0] + 2, at[1] + 2), 0.7, name),
        lambda: Slope(at, chance.choice((-7.0, 8.0)), chance.uniform(5, 70), name),
        lambda: Spring(at, end, name, chance.randint(3, 9)),
    ]
    return chance.choice(makers)()


def scene(chance: Random) -> Figure:
    """Up to five pieces together."""
    return composed("Scene", [single(chance) for _ in range(chance.randint(1, 5))])


def arrow(chance: Random) -> Figure:
    """One arrow along a multiple of 45°, beside a body or alone."""
    tip = polar((0.0, 0.0), chance.uniform(1, 5), 45.0 * chance.randint(0, 7))
    items: list[Piece] = [
        Arrow((0.0, 0.0), tip, chance.choice(("v", "F_{AB} = 3 N")), chance.choice(ARROWS), 0.0, chance.choice(ENDS))
    ]
    return composed("Arrow", [*items, *[Ball((0.0, 0.0), 0.7, "A")][: chance.randint(0, 1)]])


WILD: dict[str, Callable[[Random], Figure]] = {
    one.__name__: one
    for one in (
        free_body,
        vector_sum,
        on_line,
        in_plane,
        pattern,
        slope,
        hanging,
        plates,
        curves,
        collision,
        uprights,
        energies,
        wired,
        scene,
        arrow,
    )
}


def weighed(text: str) -> str:
    """The sum of all numbers of a text, each weighted by its place."""
    numbers = [float(number) for number in NUMBER.findall(text)]
    return f"{sum(number * (1 + i % 17 / 16) for i, number in enumerate(numbers)):.2f}"


def held(name: str) -> Iterator[str]:
    """A line a figure; a figure that is refused is held by the sentence."""
    loose = name in ("scene", "arrow")
    for seed in range(LOOSE if loose else MANY):
        try:
            figure = WILD[name](Random(f"{name} {seed}"))
        except ValueError as refused:
            yield f"{name} {seed}: {refused}"
            continue
        words = " ".join((figure.title, figure.description, *figure.notes, *map(str, figure.tells)))
        pieces = "\n".join(map(piece, figure.items))
        spelt = hashlib.sha256(re.sub(NUMBER, "#", words + pieces).encode()).hexdigest()
        mark = spelt[:12].translate(str.maketrans("0123456789", "ghijklmnop"))  # no numbers: those are compared as such
        page = f", page {weighed(svg.render(figure))}" if loose or seed < ON_PAGE else ""
        yield f"{name} {seed}: {len(figure.items)} pieces, {mark}, {weighed(words)} {weighed(pieces)}{page}"


@pytest.mark.parametrize("name", WILD)
def test_any_data_are_drawn_as_they_were(name: str) -> None:
    """Pieces, words, and every coordinate."""
    kept = [one for one in KEPT.read_text(encoding="utf-8").splitlines() if one.startswith(f"{name} ")]
    assert differing(kept, list(held(name))) == []


def test_most_figures_are_drawn() -> None:
    """A builder refuses hardly any of these data, so that figures are held, not refusals."""
    kept = KEPT.read_text(encoding="utf-8").splitlines()
    assert sum(" pieces, " in one for one in kept) > 0.9 * len(kept)


if __name__ == "__main__":
    KEPT.write_text("".join(f"{line}\n" for name in WILD for line in held(name)), encoding="utf-8")
