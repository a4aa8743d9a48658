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
    Mass,
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
from calc.figures.bodies import Ball, Cord, Lift, Pulley, Slope, Spring, Table, Trolley
from calc.figures.chains import chain
from calc.figures.circuit_pieces import NOUNS
from calc.figures.circuits import Branch, Part, circuit, parallel, series
from calc.figures.coils import coil_in_field, magnet_and_coil
from calc.figures.connected import in_a_lift, in_a_row, over_an_edge, over_one_pulley, over_the_top
from calc.figures.energy import Amount, energy_bars
from calc.figures.graph_marks import Area, Gradient, Key
from calc.figures.levels import energy_levels
from calc.figures.machines import machine
from calc.figures.motion import Moving, before_after
from calc.figures.photo import photocell
from calc.figures.pieces import Arrow, Block, Dimension, Surface, polar
from calc.figures.planets import planet_scene
from calc.figures.power_line import power_line
from calc.figures.surfaces import Pulled, on_surface, on_two_strings
from calc.figures.telling import composed
from calc.figures.vertical import Height, Place, vertical
from calc.working.reading import read
from calc.working.working import run
from tests import cases

FORCES = ("F_E", "F_{AB}", "F_N", "T", "F_g", "F_{12}", "w = 1,96 N", "F_{net} = 3,60 × 10⁻² N")
SIGNS = ("+", "-")


def of_question(key: str, seed: int) -> list[Figure]:
    """The scene of a drawn question, and the figure of each of its parts."""
    _, question = topics.find(key)
    drawn = cases.drawn(key, seed, 1 + seed % 3)
    found = read(question, drawn.inputs, drawn.find, variant=drawn.variant)
    plan = question.plan(found.data)
    values = run(plan, found.data.settings.constants())
    makers = [plan.scene, *(part.figure for part in plan.parts)]
    return [make(values) for make in makers if make]


def _forces(chance: random.Random, most: int = 4) -> list[tuple[str, float, float]]:
    names = chance.sample(FORCES, chance.randint(1, most))
    ways = [chance.choice((0, 30, 37, 53, 90, 120, 180, 200, 270, 300, 333)) for _ in names]
    return [(name, chance.choice((0.1, 0.4, 0.7, 1)), way) for name, way in zip(names, ways, strict=True)]


def _value(chance: random.Random, symbol: str) -> str:
    return chance.choice((symbol, f"{symbol} = {chance.choice('+−')}{chance.randint(1, 99)} nC"))


def _free_body(chance: random.Random) -> Figure:
    angle = chance.randint(5, 85)
    forces = _forces(chance)
    whole = Resolved(forces[0][0], angle, "along", "across")
    return free_body_diagram(
        forces,
        body=chance.choice(("", "A")),
        guides=[angle],
        angles=[(0, angle, "θ")],
        components=chance.choice(((), (whole,))),
    )


def _sum(chance: random.Random) -> Figure:
    forces = _forces(chance)
    if chance.random() < 0.5:
        forces = [(name, size, chance.choice((0, 180))) for name, size, _ in forces]
    return tail_to_head(forces, angle=(0, chance.randint(5, 85), "θ"), scale="1 cm = 0,2 N")


def _line(chance: random.Random) -> Figure:
    count = chance.randint(1, 8)
    places = sorted(chance.sample(range(1, 60), count))
    charges = [(_value(chance, f"Q_{i + 1}"), chance.choice((-2, 0, 3)), x) for i, x in enumerate(places)]
    forces = [On(chance.randrange(count), name, size, way < 180) for name, size, way in _forces(chance)]
    rulers = [(i, i + 1, f"{b - a} cm") for i, (a, b) in enumerate(itertools.pairwise(places))]
    return spheres_on_line(charges, forces=forces, distances=rulers)


def _masses(chance: random.Random) -> Figure:
    places = sorted(chance.sample(range(1, 60), chance.randint(2, 3)))
    bodies = [Mass(name, x) for name, x in zip("ABC", places, strict=False)]
    forces = [On(chance.randrange(len(bodies)), name, size, way < 180) for name, size, way in _forces(chance, 3)]
    rulers = [(i, i + 1, name) for i, name in zip(range(len(bodies) - 1), ("r_1", "d"), strict=False)]
    return spheres_on_line(bodies, forces=forces, distances=rulers, title="Bodies on a line")


def _planet(chance: random.Random) -> Figure:
    arrow = chance.choice(("", "w", "g_h", "w = 1,96 N", "F_{net} = 3,60 × 10⁻² N"))
    return planet_scene(arrow, kind=chance.choice(("force", "field")), above=chance.random() < 0.6)


def _places(chance: random.Random, count: int) -> list[tuple[int, int]]:
    return chance.sample([(x, y) for x in range(8) for y in range(6)], count)


def _plane(chance: random.Random) -> Figure:
    places = _places(chance, chance.randint(2, 6))
    charges = [Charge(_value(chance, f"Q_{i + 1}"), chance.choice((-2, 3)), *place) for i, place in enumerate(places)]
    on = chance.randrange(len(charges))
    return charges_in_plane(
        charges,
        on=on,
        forces=_forces(chance, 3),
        resultant=chance.choice((None, ("F_{net}", 1, chance.randint(0, 359)))),
        distances=[(on, (on + 1) % len(charges), "4,0 cm")],
        axes=chance.random() < 0.3,
        angle=chance.choice((None, (0, chance.randint(8, 80), "θ"))),
    )


def _pattern(chance: random.Random) -> Figure:
    places = _places(chance, chance.randint(1, 6))
    charges = [
        Charge(_value(chance, f"Q_{i + 1}"), chance.choice((-2, 1, 3)), *place) for i, place in enumerate(places)
    ]
    return field_pattern(charges)


def _slope(chance: random.Random) -> Figure:
    angle = chance.randint(5, 80)
    forces = [("F_g", 1, 270), ("F_N", 0.8, angle + 90), ("F_E", chance.choice((0.2, 0.6)), angle)]
    return slope_scene(
        angle,
        [Body("A", 0.1, 1.0), Body(_value(chance, "B"), 0.6, -1.0, chance.choice(("sphere", "block")))],
        string=chance.choice(("up", "down", "")),
        string_label="T",
        string_on=1,
        distances=[(0, 1, _value(chance, "r"))],
        forces=chance.choice(((), forces)),
        forces_on=1,
    )


def _hanging(chance: random.Random) -> Figure:
    two = chance.random() < 0.5
    angle = chance.randint(3, 75)
    forces = [("T", 1, 90 + angle), ("F_g", 0.8, 270), ("F_E", 0.6, 0)]
    return hanging_pair(
        angle,
        labels=(_value(chance, "A"), "B"),
        two_supports=two,
        attracting=two and chance.random() < 0.5,
        supports_label="d",
        forces=chance.choice(((), forces)),
    )


def _plates(chance: random.Random) -> Figure:
    return plates_scene(
        upper_sign=chance.choice(SIGNS),
        lines=chance.randint(0, 9),
        upright=chance.random() < 0.5,
        particle=chance.choice(("", "oil drop")),
        particle_sign=chance.choice(SIGNS),
        forces=chance.choice(((), (("F_g", 1, 270), ("F_E", 0.7, 90)))),
        voltage="490 V",
        separation="5 mm",
    )


def _graph(chance: random.Random) -> Figure:
    points = [(x, chance.randint(-9, 9)) for x in range(chance.randint(2, 7))]
    kind = chance.choice(("solid", "dashed", "points"))
    return graph(
        "t (s)", "v (m·s⁻¹)", [GraphLine(points, chance.choice(("", "ball A")), kind)], marks=[(*points[0], "P")]
    )


def _table(chance: random.Random) -> Figure:
    x = chance.uniform(2.5, 6)
    mass = _value(chance, "m_1")
    return composed(
        "Two bodies on one string",
        [
            Table((0, 0), (12, 0), 5),
            Pulley((12.8, 0.4), 0.7, (12, -0.2), chance.choice(("", "P"))),
            chance.choice((Trolley((x, 0), 3.2, 2.2, mass), Block((x, 1.1), 3.2, 2.2, 0, mass))),
            Cord((x + 1.6, 1.1), (13.5, -3), (12.8, 0.4), 0.7, "T"),
            Block((13.5, -4), 2, 2, 0, "m_2"),
            Arrow((x - 1.6, 1.1), (x - 1.6 - chance.uniform(1, 3), 1.1), "f"),
            Arrow((x - 1, 3.4), (x + chance.uniform(0, 3), 3.4), "v = 2 m·s⁻¹", "velocity"),
        ],
    )


def _hill(chance: random.Random) -> Figure:
    slope = Slope((0, 0), chance.choice((-11, 11)), chance.randint(12, 50), "θ")
    at = slope.place(chance.uniform(0.3, 0.7), 0.7)
    up = chance.choice((0, 180)) + (slope.angle_deg if slope.base > 0 else 180 - slope.angle_deg)
    return composed(
        "Ball on a slope",
        [slope, Ball(at, 0.7, _value(chance, "A")), Arrow(polar(at, 1, up), polar(at, 3, up), "v", "velocity")],
    )


def _lift(chance: random.Random) -> Figure:
    return composed(
        "Lift",
        [
            Lift((0, 0), 5, 6, "lift"),
            Block((0, -1.6), 2, 2.4, 0, "m"),
            Arrow((0, -1.6), (0, -chance.uniform(4, 6)), "F_g"),
            Arrow((0, -1.6), (0, chance.uniform(1, 2.4)), "F_N"),
            Arrow((4, -2), (4, 2), "a", "velocity"),
        ],
    )


def _spring(chance: random.Random) -> Figure:
    end = chance.uniform(3, 9)
    return composed(
        "Spring",
        [
            Surface((0, 3), (0, 0)),
            Surface((0, 0), (16, 0)),
            Spring((0, 1), (end, 1), "k"),
            Block((end + 1.2, 1), 2.4, 2, 0, _value(chance, "m")),
            Arrow((end + 2.4, 1), (end + 5, 1), "F"),
            Dimension((0, 0), (end, 0), "x = 4 cm", -1.5),
        ],
    )


def _collision(chance: random.Random) -> Figure:
    def sketch(when: str) -> list[Moving]:
        return [
            Moving(
                name,
                f"v_{{{when}{name}}}" + chance.choice(("", " = 2,5 m·s⁻¹")),
                chance.choice((0, 1, 3)),
                chance.random() < 0.5,
                shape,
            )
            for name, shape in zip(
                "ABC"[: chance.randint(1, 3)], chance.choices(("trolley", "box", "ball"), k=3), strict=False
            )
        ]

    return before_after(sketch("i"), sketch("f"), positive=chance.choice(("right", "left")))


def _upright(chance: random.Random) -> Figure:
    """Bodies on up to three vertical lines side by side, over a ground or in the air."""
    heights = chance.sample((0.0, 1.0, 2.5, 4.0, 4.2), 4)
    places = [
        Place(
            chance.choice((name, "")),
            height,
            chance.choice(("", f"v_{name}", f"u_{{{name}}} = 2,5 m·s⁻¹")),
            chance.choice((True, False, None)),
            line,
            spot=chance.random() < 0.5,
        )
        for name, height, line in zip("SPQR", heights, (0, 0, 1, 2), strict=True)
    ][: chance.randint(1, 4)]
    rulers = [Height(0.0, one.height, f"h_{n}", one.line) for n, one in enumerate(places, 1) if one.height][:2]
    return vertical(
        places,
        rulers[: chance.randint(0, 2)],
        positive=chance.choice(("up", "down")),
        ground=chance.choice((None, 0.0)),
    )


def _energy(chance: random.Random) -> Figure:
    def bars(*symbols: str) -> list[Amount]:
        sizes = [chance.choice((-20, 0, 5, 40, 100)) for _ in symbols]
        return [
            Amount(symbol, size, f"{size} J".replace("-", "−") if size else "")
            for symbol, size in zip(symbols, sizes, strict=True)
        ]

    return energy_bars(
        [
            ("Before", [Amount("E_k", 50, "50 J"), *bars("E_p")]),
            ("Work", bars("W_{net}")),
            ("After", bars("E_k", "E_p")),
        ]
    )


PLAIN = [kind for kind in NOUNS if kind != "generator"]  # it has a circuit of its own


def _branch(chance: random.Random, depth: int) -> Branch:
    if depth == 0 or chance.random() < 0.3:
        kind = chance.choice(PLAIN)
        return Part(kind, chance.choice(("", "R_1", "R_2 = 12 Ω", "V_1", "S")))
    parts = [_branch(chance, depth - 1) for _ in range(chance.randint(2, 3))]
    return chance.choice((series, parallel))(*parts)


def _circuit(chance: random.Random) -> Figure:
    source = series(Part(chance.choice(("cell", "battery")), "ε = 12 V"), Part("closed switch", "S"))
    return circuit(source, _branch(chance, 2))


def _generator(chance: random.Random) -> Figure:
    """A generator with the resistance of its coil, and what it drives."""
    return circuit(series(Part("generator", chance.choice(("ε", ""))), Part("resistor", "r")), _branch(chance, 1))


def _coil(chance: random.Random) -> Figure:
    """A coil edge-on in a field, with its angles, and turned."""
    after = chance.choice((None, None, chance.randint(2, 88)))
    plane = chance.choice(("", "β"))
    return coil_in_field(chance.choice((0, chance.randint(2, 88))), after=after, after_label="θ_2", plane=plane)


def _magnet(chance: random.Random) -> Figure:
    """A magnet beside a coil, with the answer or without."""
    ways, sides = ("towards", "away", "still"), ("right", "left")
    return magnet_and_coil(chance.choice("NS"), chance.choice(ways), chance.choice(sides), answer=chance.random() < 0.7)


def _machine(chance: random.Random) -> Figure:
    """A generator or a motor, its parts named or lettered."""
    return machine(chance.choice(("ac", "dc", "motor")), named=chance.random() < 0.5)


def _power_line(chance: random.Random) -> Figure:
    """A line between two boxes."""
    return power_line(chance.choice(("generator", "mill")), chance.choice(("users", "village")))


def _marked_graph(chance: random.Random) -> Figure:
    top, end = chance.randint(2, 9), chance.randint(4, 8)
    line = [(0, 0), (2, top), (end, 0)]
    return graph(
        "t (s)",
        "v (m·s⁻¹)",
        [(line, "")],
        keys=[Key(2, top, "P", chance.choice(("", "t_1")), chance.choice(("", "v_{max}")))],
        areas=[Area(line[1:], "Δx")],
        gradients=[Gradient((0, 0), (1, top / 2), "Δt", "Δv")],
    )


def _pulled(chance: random.Random) -> Figure:
    """A body on the level or a slope, alone or with a rope or a rod."""
    slope = chance.choice((0, 0, chance.randint(4, 60)))
    rope = Pulled(
        chance.choice(("P", "F = 20 N")), chance.choice((0, chance.randint(5, 70))), chance.random() < 0.4, "φ"
    )
    return on_surface(slope, chance.choice((None, rope)), label=chance.choice(("m", "5 kg", "A")))


def _two_strings(chance: random.Random) -> Figure:
    """A load on two strings, either of them level or steep."""
    return on_two_strings(
        chance.choice((0, chance.randint(5, 85))), chance.randint(5, 85), load=chance.choice(("", "m"))
    )


def _chain(chance: random.Random) -> Figure:
    """One to three bodies in tow, touching, or with some that hang."""
    on = tuple(f"m_{n}" for n in range(1, chance.randint(1, 3) + 1))
    if chance.random() < 0.3:
        return chain(0, ("m_2",), back="m_1", front="m_3")
    angle = chance.choice((0, chance.randint(5, 70)))
    front = "m_3" if len(on) < 3 and chance.random() < 0.4 else ""
    push = chance.random() < 0.5
    rope = Pulled("P", chance.choice((0, chance.randint(10, 85))), push, back=bool(front and not push))
    return chain(angle, on, touch=push and len(on) > 1, pulled=rope, front=front)


def _connected(chance: random.Random) -> Figure:
    """Two bodies tied or pushed, or one in a lift."""
    made: tuple[Callable[[], Figure], ...] = (
        lambda: in_a_row(pushed=chance.random() < 0.5),
        over_an_edge,
        lambda: over_the_top(chance.randint(5, 70)),
        over_one_pulley,
        lambda: in_a_lift(hangs=chance.random() < 0.5),
        lambda: _chain(chance),
    )
    return chance.choice(made)()


def _photocell(chance: random.Random) -> Figure:
    return photocell(against=chance.random() < 0.5, emits=chance.choice((True, True, False, None)))


def _levels(chance: random.Random) -> Figure:
    """Two to five levels, and changes between them up and down."""
    names = [f"E_{n + 1}" for n in range(chance.randint(2, 5))]
    labels = chance.sample(("hf", "A", "B", "C", "D"), chance.randint(1, 4))
    pairs = [chance.sample(range(len(names)), 2) for _ in labels]
    return energy_levels(names, [(first, last, label) for (first, last), label in zip(pairs, labels, strict=True)])


BUILDERS: dict[str, Callable[[random.Random], Figure]] = {
    "free body": _free_body,
    "vector sum": _sum,
    "charges on a line": _line,
    "masses on a line": _masses,
    "planet": _planet,
    "charges in a plane": _plane,
    "field pattern": _pattern,
    "slope": _slope,
    "hanging pair": _hanging,
    "plates": _plates,
    "graph": _graph,
    "table": _table,
    "hill": _hill,
    "lift": _lift,
    "spring": _spring,
    "collision": _collision,
    "upright": _upright,
    "energy": _energy,
    "circuit": _circuit,
    "generator circuit": _generator,
    "coil": _coil,
    "magnet and coil": _magnet,
    "machine": _machine,
    "power line": _power_line,
    "marked graph": _marked_graph,
    "pulled body": _pulled,
    "two strings": _two_strings,
    "connected": _connected,
    "photocell": _photocell,
    "energy levels": _levels,
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
