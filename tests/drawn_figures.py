"""Figures to measure: every declared question's, and every builder's with data drawn at random."""

from __future__ import annotations

import itertools
import random
from collections.abc import Callable, Iterator

from calc import topics
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
from calc.practice import draw
from calc.reading import read
from calc.working import run

FORCES = ("F_E", "F_{AB}", "F_N", "T", "F_g", "F_{12}", "w = 1,96 N", "F_{net} = 3,60 × 10⁻² N")
SIGNS = ("+", "-")


def of_question(key: str, seed: int) -> list[Figure]:
    """The scene of a drawn question, and the figure of each of its parts."""
    topic, question = topics.find(key)
    drawn = draw(topic, question, seed, 1 + seed % 3)
    found = read(question, drawn.inputs, drawn.find, variant=drawn.variant)
    plan = question.plan(found.data)
    values = run(plan, found.data.settings.constants())
    makers = [plan.scene, *(part.figure for part in plan.parts)]
    return [make(values) for make in makers if make]


def _forces(chance: random.Random, most: int = 4) -> list[tuple[str, float, float]]:
    names = chance.sample(FORCES, chance.randint(1, most))
    ways = [chance.choice((0, 30, 37, 53, 90, 120, 180, 200, 270, 300, 333)) for _ in names]
    return [(name, chance.choice((0.1, 0.4, 0.7, 1)), way) for name, way in zip(names, ways, strict=True)]  # fmt: skip


def _value(chance: random.Random, symbol: str) -> str:
    return chance.choice((symbol, f"{symbol} = {chance.choice('+−')}{chance.randint(1, 99)} nC"))


def _free_body(chance: random.Random) -> Figure:
    angle = chance.randint(5, 85)
    forces = _forces(chance)
    whole = Resolved(forces[0][0], angle, "along", "across")
    return free_body_diagram(forces, body=chance.choice(("", "A")), guides=[angle],
                             angles=[(0, angle, "θ")], components=chance.choice(((), (whole,))))  # fmt: skip


def _sum(chance: random.Random) -> Figure:
    forces = _forces(chance)
    if chance.random() < 0.5:
        forces = [(name, size, chance.choice((0, 180))) for name, size, _ in forces]
    return tail_to_head(forces, angle=(0, chance.randint(5, 85), "θ"), scale="1 cm = 0,2 N")


def _line(chance: random.Random) -> Figure:
    count = chance.randint(1, 8)
    places = sorted(chance.sample(range(1, 60), count))
    charges = [(_value(chance, f"Q_{i + 1}"), chance.choice((-2, 0, 3)), x) for i, x in enumerate(places)]  # fmt: skip
    forces = [On(chance.randrange(count), name, size, way < 180) for name, size, way in _forces(chance)]  # fmt: skip
    rulers = [(i, i + 1, f"{b - a} cm") for i, (a, b) in enumerate(itertools.pairwise(places))]  # fmt: skip
    return spheres_on_line(charges, forces=forces, distances=rulers)


def _places(chance: random.Random, count: int) -> list[tuple[int, int]]:
    return chance.sample([(x, y) for x in range(8) for y in range(6)], count)


def _plane(chance: random.Random) -> Figure:
    places = _places(chance, chance.randint(2, 6))
    charges = [Charge(_value(chance, f"Q_{i + 1}"), chance.choice((-2, 3)), *place) for i, place in enumerate(places)]  # fmt: skip
    on = chance.randrange(len(charges))
    return charges_in_plane(
        charges, on=on, forces=_forces(chance, 3), resultant=chance.choice((None, ("F_{net}", 1, chance.randint(0, 359)))),
        distances=[(on, (on + 1) % len(charges), "4,0 cm")], axes=chance.random() < 0.3,
        angle=chance.choice((None, (0, chance.randint(8, 80), "θ"))),
    )  # fmt: skip


def _pattern(chance: random.Random) -> Figure:
    places = _places(chance, chance.randint(1, 6))
    charges = [Charge(_value(chance, f"Q_{i + 1}"), chance.choice((-2, 1, 3)), *place) for i, place in enumerate(places)]  # fmt: skip
    return field_pattern(charges)


def _slope(chance: random.Random) -> Figure:
    angle = chance.randint(5, 80)
    forces = [("F_g", 1, 270), ("F_N", 0.8, angle + 90), ("F_E", chance.choice((0.2, 0.6)), angle)]
    return slope_scene(
        angle, [Body("A", 0.1, 1.0), Body(_value(chance, "B"), 0.6, -1.0, chance.choice(("sphere", "block")))],
        string=chance.choice(("up", "down", "")), string_label="T", string_on=1,
        distances=[(0, 1, _value(chance, "r"))], forces=chance.choice(((), forces)), forces_on=1,
    )  # fmt: skip


def _hanging(chance: random.Random) -> Figure:
    two = chance.random() < 0.5
    angle = chance.randint(3, 75)
    forces = [("T", 1, 90 + angle), ("F_g", 0.8, 270), ("F_E", 0.6, 0)]
    return hanging_pair(angle, labels=(_value(chance, "A"), "B"), two_supports=two, attracting=two and chance.random() < 0.5,
                        supports_label="d", forces=chance.choice(((), forces)))  # fmt: skip


def _plates(chance: random.Random) -> Figure:
    return plates_scene(
        upper_sign=chance.choice(SIGNS), lines=chance.randint(0, 9), upright=chance.random() < 0.5,
        particle=chance.choice(("", "oil drop")), particle_sign=chance.choice(SIGNS),
        forces=chance.choice(((), (("F_g", 1, 270), ("F_E", 0.7, 90)))), voltage="490 V", separation="5 mm",
    )  # fmt: skip


def _graph(chance: random.Random) -> Figure:
    points = [(x, chance.randint(-9, 9)) for x in range(chance.randint(2, 7))]
    kind = chance.choice(("solid", "dashed", "points"))
    return graph("t (s)", "v (m·s⁻¹)", [GraphLine(points, chance.choice(("", "ball A")), kind)],
                 marks=[(*points[0], "P")])  # fmt: skip


BUILDERS: dict[str, Callable[[random.Random], Figure]] = {
    "free body": _free_body,
    "vector sum": _sum,
    "charges on a line": _line,
    "charges in a plane": _plane,
    "field pattern": _pattern,
    "slope": _slope,
    "hanging pair": _hanging,
    "plates": _plates,
    "graph": _graph,
}


def figures(count: int) -> Iterator[tuple[str, Figure]]:
    """About `count` figures with a name each: half of questions, half of builders, always the same."""
    keys = topics.question_keys()
    given = 0
    for seed in range(count):
        for key in keys:
            for number, figure in enumerate(of_question(key, seed)):
                yield f"{key}/{seed}/{number}", figure
                given += 1
                if given >= count // 2:
                    break
            if given >= count // 2:
                break
        if given >= count // 2:
            break
    for turn in range(count - given):
        kind = list(BUILDERS)[turn % len(BUILDERS)]
        yield f"{kind}/{turn}", BUILDERS[kind](random.Random(f"{kind}/{turn}"))
