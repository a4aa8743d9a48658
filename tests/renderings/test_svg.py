"""calc.renderings.svg and the layout behind it: placed labels, safe and small SVG.

Independent check of the markup: the standard library's XML parser. Rules on italic
and upright type: ISO 80000-1:2022, clause 7 (symbols of quantities italic, units,
numbers and descriptive subscripts upright).
"""

import itertools
import re
from math import atan2, cos, degrees, hypot, radians, sin
from random import Random
from typing import NamedTuple, cast
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import (
    AngleMark,
    Arrow,
    Body,
    Curve,
    Dimension,
    Dot,
    Figure,
    GraphLine,
    Item,
    On,
    Segment,
    Sphere,
    Text,
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
from calc.figures.telling import composed
from calc.renderings import labels, placing
from calc.renderings.drawing import Disc, Stroke
from calc.renderings.geometry import Bar, Box, Index, Point, Round, crosses, inside
from calc.renderings.layout import Layout, layout
from calc.renderings.placing import place
from calc.renderings.spots import Request, around
from calc.renderings.svg import number, render, sketch
from tests.strategies import examples

RUNS = examples(60)
SVG = "{http://www.w3.org/2000/svg}"
NAMES = st.sampled_from(
    [
        "F_E",
        "F_{AB}",
        "N",
        "T",
        "mg sin θ",
        "w = 1,96 N",
        "F_{net} = 3,60 × 10⁻² N",
        "Q_1 = +6 nC",
        "30°",
        "",
    ]
)
SIZES = st.sampled_from([0.001, 0.03, 0.2, 0.5, 1.0])
WAYS = st.floats(0, 360)
FORCES = st.lists(st.tuples(NAMES, SIZES, WAYS), min_size=1, max_size=5)
PLACES = st.lists(st.tuples(st.integers(0, 30), st.integers(0, 30)), min_size=2, max_size=8, unique=True)


@st.composite
def scenes(draw: st.DrawFn) -> Figure:
    """Any kind of figure the package draws, with labels of any length."""
    kind = draw(st.integers(0, 8))
    forces = draw(FORCES)
    angle = draw(st.floats(1, 89))
    name = draw(NAMES)
    places = draw(PLACES)
    charges = [(draw(NAMES), draw(st.sampled_from([-2.0, 1.0, 4.0])), x, y) for x, y in places]
    if kind == 0:
        return free_body_diagram(forces, guides=[angle], angles=[(0, angle, name)], body=name, notes=[f"Note {name}."])
    if kind == 1:
        return tail_to_head(forces, angle=(0, angle, name), scale="1 cm = 0,2 N")
    if kind == 2:
        xs = sorted({x for x, _ in places})
        return spheres_on_line(
            [(draw(NAMES), 1.0, float(x)) for x in xs],
            forces=[On(0, f[0], f[1], f[2] < 180) for f in forces],
            distances=[(0, i, name) for i in range(1, min(3, len(xs)))],
        )
    if kind == 3:
        return charges_in_plane(
            charges,
            forces=forces,
            resultant=(name, 1.0, angle),
            angle=(0, angle, "θ"),
            distances=[(0, 1, name)],
            axes=draw(st.booleans()),
        )
    if kind == 4:
        return slope_scene(
            angle,
            [Body(name, 0.1, 1.0), Body("B", 0.6, -1.0, draw(st.sampled_from(["sphere", "block"])))],
            string=draw(st.sampled_from(["up", "down", ""])),
            string_label=name,
            string_on=1,
            distances=[(0, 1, name)],
            forces=forces,
            forces_on=1,
        )
    if kind == 5:
        two = draw(st.booleans())
        return hanging_pair(
            angle,
            labels=(name, "B"),
            two_supports=two,
            attracting=two and draw(st.booleans()),
            supports_label=name,
            forces=forces,
        )
    if kind == 6:
        return plates_scene(
            lines=draw(st.integers(0, 9)),
            upright=draw(st.booleans()),
            particle=name,
            particle_sign="-",
            forces=forces,
            voltage="490 V",
            separation="5 mm",
        )
    if kind == 7:
        return field_pattern(charges[:4])
    points = [(float(x), float(y)) for x, y in sorted(places)]
    return graph("t (s)", "v (m·s⁻¹)", [GraphLine(points, name)], marks=[(*points[0], name)])


def overlapping(placed: Layout) -> list[tuple[str, str]]:
    """Pairs of labels whose boxes overlap."""
    return [(a.text, b.text) for a, b in itertools.combinations(placed.labels, 2) if a.box.overlaps(b.box, -0.01)]


@examples(250)
@given(scenes())
def test_labels_never_overlap_and_stay_in_view(figure: Figure) -> None:
    """No two label boxes overlap in any drawing, and all lie inside the viewBox."""
    placed = layout(figure)
    assert overlapping(placed) == []
    for label in placed.labels:
        assert placed.view.left <= label.box.left
        assert placed.view.right >= label.box.right
        assert placed.view.top <= label.box.top
        assert placed.view.bottom >= label.box.bottom


def test_many_labels_on_one_point_find_places() -> None:
    """Twenty labels on one point all get places of their own."""
    figure = Figure("Crowd", "Twenty labels.", tuple(Text((0, 0), f"label {i}") for i in range(20)))
    assert overlapping(layout(figure)) == []


def test_strokes_far_from_a_label_are_not_priced() -> None:
    """A label among thousands of strokes is placed by looking at those near it."""

    class Watched(NamedTuple):
        start: Point
        finish: Point
        cost: float
        owner: int = -1
        named: bool = False

        @property
        def end(self) -> Point:
            seen.append(self)
            return self.finish

    seen: list[Watched] = []
    strokes = [Watched((x, y), (x + 5.0, y + 5.0), 30.0) for x in range(0, 900, 15) for y in range(0, 900, 15)]
    spots = tuple(around((450.0, 450.0)))
    bars = cast("list[Bar]", strokes)
    placed = place([Request("Q", 20.0, 20.0, spots), Request("P", 20.0, 20.0, spots)], bars, [])
    assert len({p.centre for p in placed}) == 2
    assert len(seen) < 3 * len(strokes)


def test_fixed_places_give_way_to_other_labels() -> None:
    """Two labels asked for the very same fixed place do not print on each other."""
    items = (Text((0, 0), "first", "centre"), Text((0, 0), "second", "centre"))
    assert overlapping(layout(Figure("Two", "Two labels.", items))) == []


@RUNS
@given(st.integers(2, 4), WAYS, st.lists(SIZES.filter(lambda s: s > 0.1), min_size=4, max_size=4))
def test_labels_keep_off_arrows_and_dot(count: int, first: float, sizes: list[float]) -> None:
    """With up to four well separated forces no label touches an arrow or the dot."""
    figure = free_body_diagram([(f"F_{i}", sizes[i], first + i * 360 / count) for i in range(count)], body="body")
    placed = layout(figure)
    for label in placed.labels:
        if label.style == "note":
            continue
        for _, tail, tip in placed.shafts:
            assert inside(Bar(tail, tip, 0), label.box) is None
        for disc in (s for s in placed.shapes if isinstance(s, Disc)):
            x, y = disc.centre
            near_x = min(max(x, label.box.left), label.box.right)
            near_y = min(max(y, label.box.top), label.box.bottom)
            assert hypot(x - near_x, y - near_y) >= disc.radius


@RUNS
@given(WAYS)
def test_labels_keep_off_spheres(way: float) -> None:
    """A sphere with a neighbour on any side has its label clear of both."""
    other = (2.4 * cos(radians(way)), 2.4 * sin(radians(way)))
    spheres = (Sphere((0, 0), 1, "+", "Q_1"), Sphere(other, 1, "-", "Q_2"))
    placed = layout(Figure("Pair", "Two spheres.", spheres, unit=1))
    for label, disc in itertools.product(placed.labels, placed.shapes):
        if isinstance(disc, Disc):
            x, y = disc.centre
            near_x = min(max(x, label.box.left), label.box.right)
            near_y = min(max(y, label.box.top), label.box.bottom)
            assert hypot(x - near_x, y - near_y) >= disc.radius


@RUNS
@given(FORCES)
def test_drawn_arrows_keep_their_direction(forces: list[tuple[str, float, float]]) -> None:
    """On the page each arrow points as given, y downwards."""
    placed = layout(free_body_diagram(forces))
    for (_, (x, y), (x2, y2)), (_, _, way) in zip(placed.shafts, forces, strict=True):
        assert abs((degrees(atan2(y - y2, x2 - x)) - way + 180) % 360 - 180) < 1e-6


@RUNS
@given(st.floats(0.3, 1), WAYS, WAYS)
def test_drawn_arrows_keep_their_ratio(share: float, first: float, second: float) -> None:
    """On the page arrow lengths have the ratio of the forces."""
    placed = layout(free_body_diagram([("A", 1, first), ("B", share, second)]))
    whole, part = (hypot(x2 - x, y2 - y) for _, (x, y), (x2, y2) in placed.shafts)
    assert part / whole == pytest.approx(share)


@RUNS
@given(st.sampled_from([1e-9, 1e-3, 1.0, 1e6]), st.floats(0.01, 10))
def test_any_world_scale_fits(scale: float, flat: float) -> None:
    """A drawing in nanometres or megametres fills the same page."""
    segment = Segment((0, 0), (scale, flat * scale))
    view = layout(Figure("Line", "A line.", (segment,), width=20, height=10)).view
    wide, high = view.right - view.left - 12, view.bottom - view.top - 12
    assert wide == pytest.approx(400) or high == pytest.approx(200)
    assert wide < 400.001
    assert high < 200.001


def test_long_labels_break_before_their_equals_sign() -> None:
    """A drawing too wide for a phone sets long labels in two lines."""
    long = "F_{AB} = 4,80 × 10⁻⁶ N"
    figure = spheres_on_line([("A", 6, 0), ("B", 2, 1)], forces=[(0, long, 1, False), (1, long, 1, True)])
    assert {p.text for p in layout(figure).labels} >= {"F_{AB}\n= 4,80 × 10⁻⁶ N"}
    texts = list(ElementTree.fromstring(render(figure)).iter(f"{SVG}text"))
    assert "= 4,80 × 10−6 N" in {"".join(t.itertext()) for t in texts}


@examples(80)
@given(scenes())
def test_svg_is_well_formed_and_bare(figure: Figure) -> None:
    """Every drawing is XML with title, description and viewBox, without style or id."""
    text = render(figure)
    root = ElementTree.fromstring(text)
    assert root.tag == f"{SVG}svg"
    assert root.get("role") == "img"
    assert len(root.get("viewBox", "").split()) == 4
    assert root.findtext(f"{SVG}title") == figure.title
    assert root.findtext(f"{SVG}desc") == figure.description
    allowed = {
        "svg",
        "title",
        "desc",
        "g",
        "path",
        "polygon",
        "polyline",
        "circle",
        "text",
        "tspan",
    }
    for element in root.iter():
        assert element.tag.removeprefix(SVG) in allowed
        assert not {"style", "id", "href"} & set(element.keys())
    assert not re.search(r"\d\.\d{3,}", text)
    assert "nan" not in text


@RUNS
@given(st.text(max_size=12))
def test_any_label_is_printed_as_text(label: str) -> None:
    """Whatever a label contains, it arrives as text and never as markup."""
    printable = "".join(c for c in label if c.isprintable())
    root = ElementTree.fromstring(render(Figure("T", "D.", (Dot((0, 0), printable),))))
    shown = "".join("".join(t.itertext()) for t in root.iter(f"{SVG}text"))
    assert not set(shown) & set("{}_^") - set(printable)
    if not set(printable) & set("{}_^-⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻"):
        assert shown == (printable if printable.strip() else "")


def test_hostile_text_is_escaped() -> None:
    """Markup in label, title, description and note is escaped."""
    bad = '<script>alert("x")</script>&'
    text = render(Figure(bad, bad, (Dot((0, 0), bad),), (bad,)))
    assert "<script" not in text
    assert ElementTree.fromstring(text).findtext(f"{SVG}title") == bad


def test_title_has_no_label_markup() -> None:
    """A subscript in a title is read out, not spelled with underscores."""
    root = ElementTree.fromstring(render(Figure("Field of Q_{1}", "D.", (Dot((0, 0)),))))
    assert root.findtext(f"{SVG}title") == "Field of Q1"


def test_description_names_every_force() -> None:
    """The text alternative says each force and its direction."""
    text = render(free_body_diagram([("F_g", 2, 270), ("N", 1.7, 120), ("T", 1, 30)]))
    description = ElementTree.fromstring(text).findtext(f"{SVG}desc")
    assert (
        description
        == "Arrows start on one dot and point away from it: F g downwards, N 60° above the left and T 30° above the"
        " right."
    )


def test_kinds_differ_without_colour() -> None:
    """Each kind of arrow has its own weight, dash and head shape."""
    kinds = ["force", "field", "component", "resultant", "velocity", "axis"]
    items = tuple(Arrow((0, i), (5, i), "", kind) for i, kind in enumerate(kinds))
    root = ElementTree.fromstring(render(Figure("Kinds", "Arrows.", items)))
    looks = {}
    for kind in kinds:
        parts = [e for e in root.iter() if f"fig-{kind}" in e.get("class", "").split()]
        shaft = next(e for e in parts if e.tag == f"{SVG}path")
        heads = [e for e in parts if e is not shaft]
        looks[kind] = (
            shaft.get("stroke-width"),
            shaft.get("stroke-dasharray"),
            heads[0].tag,
            heads[0].get("fill"),
            len(heads),
        )
    assert len(set(looks.values())) == len(kinds)
    assert [kind for kind in kinds if looks[kind][1]] == ["component", "resultant"]
    assert looks["resultant"][4] == 2


def test_lanes_are_to_the_left() -> None:
    """A lane moves an arrow to its own left by that many lines."""
    items = (
        Arrow((0, 0), (5, 0)),
        Arrow((0, 0), (5, 0), lane=0.5),
        Arrow((5, 0), (0, 0), lane=0.5),
    )
    (_, a, _), (_, b, _), (_, c, _) = layout(Figure("L", "Lanes.", items)).shafts
    assert (b[1] - a[1], c[1] - a[1]) == pytest.approx((-10, 10))


def strokes(items: tuple[Item, ...], style: str) -> list[Stroke]:
    """The strokes of one style in the drawing of some items."""
    shapes = layout(Figure("S", "Shapes.", items)).shapes
    return [s for s in shapes if isinstance(s, Stroke) and s.style == style]


def test_right_angle_is_a_square() -> None:
    """An angle of 90° is marked with a square corner, another with an arc."""
    line = Segment((0, 0), (5, 0))
    (square,) = strokes((line, AngleMark((0, 0), 0, 90)), "angle")
    (arc,) = strokes((line, AngleMark((0, 0), 0, 60)), "angle")
    assert len(square.paths[0]) == 3
    assert len(arc.paths[0]) > 5
    radii = [hypot(x, y) for x, y in arc.paths[0]]
    assert radii == pytest.approx([radii[0]] * len(radii))
    assert arc.paths[0][-1] == pytest.approx((radii[0] * cos(radians(60)), -radii[0] * 3**0.5 / 2))


def test_dimension_stands_off_its_points() -> None:
    """A dimension line is parallel to what it measures, set off to its left."""
    (line,) = strokes((Dimension((0, 0), (4, 0), "r", 2.0),), "dimension")
    a, b = line.paths[0]
    assert a[1] == b[1] == pytest.approx(-40)


def test_thin_lines_stop_at_labels() -> None:
    """A field line is interrupted where a label stands on it."""
    items = (Curve(((-5, 0), (5, 0)), "fieldline"), Text((0, 0), "E", "centre"))
    (line,) = strokes(items, "fieldline")
    assert len(line.paths) == 2


def test_lines_stop_at_spheres() -> None:
    """An axis or a guide through a sphere is not drawn inside it."""
    sphere = Sphere((0, 0), 1, "-")
    for item in (Segment((0, -4), (0, 4), "guide"), Arrow((0, -4), (0, 4), "", "axis")):
        placed = layout(Figure("S", "Shapes.", (item, sphere), unit=1))
        style = "guide" if isinstance(item, Segment) else "axis"
        (line,) = [s for s in placed.shapes if isinstance(s, Stroke) and s.style == style]
        (disc,) = [s for s in placed.shapes if isinstance(s, Disc)]
        ends = [hypot(x - disc.centre[0], y - disc.centre[1]) for path in line.paths for x, y in path]
        assert len(line.paths) == 2
        assert min(ends) >= disc.radius - 1e-6


def test_sphere_carries_its_sign() -> None:
    """A positive sphere shows two strokes, a negative one a single stroke, a neutral none."""
    counts = [sum(len(s.paths) for s in strokes((Sphere((0, 0), 1, sign),), "sign")) for sign in ("+", "-", "")]
    assert counts == [2, 1, 0]


def test_figures_stay_small() -> None:
    """A free-body diagram takes less than 4 kB, a field of two charges less than 12 kB."""
    assert len(render(free_body_diagram([("F_g", 2, 270), ("N", 1.7, 120), ("T", 1, 30)]))) < 4000
    assert len(render(field_pattern([("A", 1, 0, 0), ("B", -1, 1, 0)], lines_each=12))) < 12000


@pytest.mark.parametrize(
    ("label", "expected"),
    [
        ("F_E", "/F/|_E"),
        ("F_{AB}", "/F/|_AB"),
        ("mg sin θ", "/mg/| sin |/θ/"),
        ("3,60 × 10⁻² N", "3,60 × 10|^−2| N"),
        ("N = 5 N", "/N/| = 5 N"),
        ("r = 2L sin α", "/r/| = 2|/L/| sin |/α/"),
        ("v (m·s⁻¹)", "/v/| (m·s|^−1|)"),
        ("not to scale", "not to scale"),
        ("Q_1 = -6 nC", "/Q/|_1| = −6 nC"),
        ("a_", "/a/|_"),
    ],
)
def test_type_of_labels(label: str, expected: str) -> None:
    """Symbols are italic; numbers, units, subscripts and words are upright."""
    marks = {"base": "", "sub": "_", "super": "^"}
    shown = "|".join(f"/{run.text}/" if run.italic else marks[run.level] + run.text for run in labels.runs(label))
    assert shown == expected


@pytest.mark.parametrize(
    ("value", "text"),
    [(1.0, "1"), (-0.001, "0"), (12.345678, "12.35"), (-3.5, "-3.5"), (100, "100")],
)
def test_numbers_are_short(value: float, text: str) -> None:
    """Coordinates have at most two decimals and no needless zeros."""
    assert number(value) == text


@RUNS
@given(st.lists(st.floats(-50, 50), min_size=4, max_size=4))
def test_clipping_finds_the_part_inside(ends: list[float]) -> None:
    """Points sampled along a bar are inside the box exactly in the part that is reported."""
    x, y, x2, y2 = ends
    box = Box(-10, -5, 10, 5)
    part = inside(Bar((x, y), (x2, y2), 0), box)
    for n in range(21):
        t = n / 20
        within = abs(x + (x2 - x) * t) < 9.999 and abs(y + (y2 - y) * t) < 4.999
        if within:
            assert part is not None
            assert part[0] <= t + 1e-9
            assert part[1] >= t - 1e-9
        if part and part[0] + 1e-6 < t < part[1] - 1e-6:
            assert abs(x + (x2 - x) * t) <= 10.001
            assert abs(y + (y2 - y) * t) <= 5.001


def test_wrapped_notes_keep_their_words() -> None:
    """A long note is set in lines that together hold all its words."""
    note = "Dashed arrows are components and never extra forces on the body."
    lines = labels.wrapped(note, 13, 150)
    assert " ".join(lines) == note
    assert all(labels.width(line, 13) <= 150 for line in lines)


def test_a_sketch_is_the_drawing_without_labels_cut_to_its_edges() -> None:
    """No words, no lengths; the frame leaves four units around balls, heads and lines alike."""
    ball, foot = Sphere((0, 0), 1.0, "+", "A"), Segment((-3, -2), (4, -2))
    figure = composed("Sketch", [ball, foot, Dimension((0, 0), (0, 9), "9 m", 4.0)], description="A ball.")
    drawn = ElementTree.fromstring(sketch(figure))
    assert drawn.get("aria-hidden") == "true"
    assert not [one for one in drawn.iter() if one.tag.endswith("text") or one.tag.endswith("title")]
    left, top, width, height = map(float, (drawn.get("viewBox") or "").split())
    (circle,) = [one for one in drawn.iter() if one.tag.endswith("circle")]
    x, y, r = (float(circle.get(name) or 0) for name in ("cx", "cy", "r"))
    unit = r  # the ball has radius 1
    assert (left, top) == (pytest.approx(x - 3 * unit - 4, abs=0.2), pytest.approx(y - r - 4, abs=0.2))
    assert (width, height) == (pytest.approx(7 * unit + 8, abs=0.2), pytest.approx(3 * unit + 8, abs=0.2))


def test_a_sketch_shows_the_whole_head_of_an_arrow() -> None:
    """The frame holds the sides of a head, which stand out from its line."""
    drawn = ElementTree.fromstring(sketch(composed("Sketch", [Arrow((0, 0), (4, 0), "F")])))
    left, top, width, height = map(float, (drawn.get("viewBox") or "").split())
    assert width > height > 8
    numbers = [
        float(n) for one in drawn.iter() for n in re.findall(r"-?[\d.]+", one.get("d") or one.get("points") or "")
    ]
    xs, ys = numbers[::2], numbers[1::2]
    assert (left, top) == (pytest.approx(min(xs) - 4, abs=0.2), pytest.approx(min(ys) - 4, abs=0.2))
    assert (width, height) == (
        pytest.approx(max(xs) - min(xs) + 8, abs=0.2),
        pytest.approx(max(ys) - min(ys) + 8, abs=0.2),
    )


def crowd(seed: int) -> tuple[list[Request], list[Bar], list[Round]]:
    """Four to sixteen labels close together among strokes and discs: some have to give way, some need a leader."""
    chance = Random(seed)

    def at() -> Point:
        return chance.uniform(0, 60), chance.uniform(0, 40)

    requests = [
        Request("Q", chance.choice([20.0, 40.0, 80.0]), 20.0, tuple(around(at()))[: chance.choice([1, 3, 16])], owner=i)
        for i in range(chance.randint(4, 16))
    ]
    bars = [
        Bar(at(), at(), chance.choice([3.0, 40.0]), chance.randint(0, 9), chance.random() < 0.5)
        for _ in range(chance.randint(0, 40))
    ]
    rounds = [
        Round(at(), chance.choice([2.0, 12.0, 50.0]), 40.0, chance.randint(0, 9)) for _ in range(chance.randint(0, 4))
    ]
    return requests, bars, rounds


def test_labels_stand_where_each_would_if_sought_anew(monkeypatch: pytest.MonkeyPatch) -> None:
    """A label that the later ones leave alone is not sought again, one that they disturb is: all stand where a search
    for each of them puts them."""
    pages = [crowd(seed) for seed in range(30)]
    found = [place(*page) for page in pages]
    monkeypatch.setattr(placing, "_stays", lambda *given: False)
    assert found == [place(*page) for page in pages]
    monkeypatch.setattr(placing, "_stays", lambda *given: True)
    assert found != [place(*page) for page in pages]  # some do move


@pytest.mark.parametrize("size", [1.0, 30.0, 3000.0])
def test_every_stroke_at_a_box_is_found_among_few_and_many(size: float) -> None:
    """What the index leaves out touches neither the box nor a stroke through it, and nothing is named twice."""
    for seed in range(40):
        _, bars, _ = crowd(seed)
        x, y = 10.0 + seed, 60.0 - seed
        box, through = Box(x, y, x + size, y + size), Bar((x, y), (x + size, y + size), 0.0)
        near, along = Index(bars).near(box), Index(bars).along(through, 3.0)
        assert len(near) == len(set(near))
        assert [bar for bar in bars if bar not in near and inside(bar, box)] == []
        assert [bar for bar in bars if bar not in along and crosses(through.start, through.end, bar)] == []
