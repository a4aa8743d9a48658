"""calc.figures: what the drawings say must be what the numbers say.

Independent source for the electric field: Coulomb's law summed with numpy arrays.
Drawing rules (arrows start on the dot, lines leave + and enter −, meet surfaces at
90°, never cross): common practice in physics marking, no single source.
"""

import itertools
import re
from collections.abc import Callable, Sequence
from math import atan2, cos, degrees, hypot, isclose, radians, sin
from random import Random
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

import calc.figures
from calc.figures import (
    AngleMark,
    Arrow,
    Body,
    Charge,
    Curve,
    Dimension,
    Dot,
    Figure,
    Force,
    GraphLine,
    On,
    Plate,
    Point,
    Resolved,
    Segment,
    Sphere,
    Surface,
    Text,
    charges_in_plane,
    drawn_lengths,
    field_at,
    field_lines,
    field_pattern,
    free_body_diagram,
    graph,
    hanging_pair,
    plates_scene,
    polar,
    slope_scene,
    spheres_on_line,
    tail_to_head,
)
from calc.figures import field as field_module
from calc.figures.energy import energy_bars
from calc.figures.graphs import scale_of, tick_label
from calc.figures.motion import Moving, before_after
from calc.figures.pieces import Sign
from calc.figures.words import direction, plain
from tests.strategies import examples

RUNS = examples(80)
SIZES = st.floats(1e-6, 1e6)
WAYS = st.floats(0, 360)


def of[T](figure: Figure, kind: type[T]) -> list[T]:
    """The items of one class."""
    return [item for item in figure.items if isinstance(item, kind)]


def arrows(figure: Figure, *kinds: str) -> dict[str, Arrow]:
    """The arrows of the given kinds by label."""
    return {a.label: a for a in of(figure, Arrow) if a.kind in (kinds or ("force",))}


def length(arrow: Arrow | Segment) -> float:
    """World length of an arrow."""
    return hypot(arrow.end[0] - arrow.start[0], arrow.end[1] - arrow.start[1])


def way(arrow: Arrow | Segment) -> float:
    """World direction of an arrow in degrees."""
    return degrees(atan2(arrow.end[1] - arrow.start[1], arrow.end[0] - arrow.start[0])) % 360


def close_ways(a: float, b: float, within: float = 1e-6) -> bool:
    """Whether two directions agree to `within` degrees."""
    return abs((a - b + 180) % 360 - 180) <= within


def test_public_names_exist() -> None:
    """Every name the package offers can be imported from it."""
    assert all(hasattr(calc.figures, name) for name in calc.figures.__all__)


def test_figure_needs_text_alternative() -> None:
    """A figure without a description is refused."""
    with pytest.raises(ValueError, match="needs a title and a description"):
        Figure("FBD", " ", (Dot((0, 0)),))


def test_figure_needs_finite_points() -> None:
    """A coordinate that is not a finite number is refused and named."""
    with pytest.raises(ValueError, match=r"Dot has the point \(nan, 0\)"):
        Figure("FBD", "A dot.", (Dot((float("nan"), 0)),))


def test_figure_needs_items() -> None:
    """A figure with nothing in it is refused."""
    with pytest.raises(ValueError, match="nothing to draw"):
        Figure("FBD", "Nothing.", ())


def test_quarter_turns_are_exact() -> None:
    """A vertical arrow is drawn exactly vertical."""
    assert polar((1, 2), 5, -90) == (1, -3)
    assert polar((1, 2), 5, 180) == (-4, 2)


@RUNS
@given(st.lists(SIZES, min_size=1, max_size=6))
def test_drawn_lengths_keep_order(sizes: list[float]) -> None:
    """Larger sizes are never drawn shorter; nothing falls below the least length."""
    lengths, to_scale = drawn_lengths(sizes, min_fraction=0.25)
    for (a, x), (b, y) in itertools.combinations(zip(sizes, lengths, strict=True), 2):
        assert a == b or (x <= y) == (a < b) or isclose(x, y)
    assert max(lengths) == 1
    assert min(lengths) >= 0.25
    if to_scale:
        assert lengths == pytest.approx([size / max(sizes) for size in sizes])


@RUNS
@given(st.lists(st.tuples(SIZES, WAYS), min_size=1, max_size=6))
def test_free_body_arrows_point_as_given(forces: list[tuple[float, float]]) -> None:
    """Every arrow starts on the dot and keeps the direction of its force."""
    named = [Force(f"F_{i}", size, angle) for i, (size, angle) in enumerate(forces)]
    drawn = arrows(free_body_diagram(named))
    assert len(drawn) == len(named)
    for force in named:
        assert drawn[force.label].start == (0, 0)
        assert close_ways(way(drawn[force.label]), force.direction_deg)


@RUNS
@given(SIZES, st.floats(0.3, 1), WAYS, WAYS)
def test_free_body_lengths_are_proportional(size: float, share: float, first: float, second: float) -> None:
    """Where the ratio can be drawn, arrow lengths have the ratio of the forces."""
    figure = free_body_diagram([("F_1", size, first), ("F_2", size * share, second)])
    drawn = arrows(figure)
    assert length(drawn["F_2"]) / length(drawn["F_1"]) == pytest.approx(share)
    assert "Arrows not to scale." not in figure.notes


@RUNS
@given(SIZES, WAYS, SIZES)
def test_equal_opposing_forces_look_equal(size: float, angle: float, third: float) -> None:
    """Equal opposite forces have equal arrows whatever else acts."""
    drawn = arrows(free_body_diagram([("A", size, angle), ("B", size, angle + 180), ("C", third, angle + 90)]))
    assert length(drawn["A"]) == pytest.approx(length(drawn["B"]))


def test_squeezed_lengths_are_announced() -> None:
    """A ratio of 1000:1 is drawn visibly and the figure says it is not to scale."""
    figure = free_body_diagram([("F_E", 1, 90), ("F_g", 1000, 270)])
    drawn = arrows(figure)
    assert length(drawn["F_E"]) >= 0.25 * length(drawn["F_g"])
    assert figure.notes == ("Arrows not to scale.",)


def test_tiny_force_stays_visible_where_scale_is_wanted() -> None:
    """With a small least fraction a tiny arrow is lengthened alone, and the figure names it."""
    figure = free_body_diagram([("w", 100, 270), ("N", 97, 90), ("F_E", 3, 0)], min_fraction=0.02)
    drawn = arrows(figure)
    assert length(drawn["N"]) / length(drawn["w"]) == pytest.approx(0.97)
    assert length(drawn["F_E"]) >= 0.13 * length(drawn["w"])
    assert figure.notes == ("Arrows not to scale.", "Only F_E is drawn longer.")


def test_equal_lengths_on_request() -> None:
    """With equal_lengths all arrows are alike and the figure says it is not to scale."""
    figure = free_body_diagram([("N", 3, 90), ("w", 5, 270)], equal_lengths=True)
    assert {round(length(a), 9) for a in arrows(figure).values()} == {1.0}
    assert figure.notes == ("Arrows not to scale.",)


def test_zero_force_is_said_not_drawn() -> None:
    """A force of zero has no arrow; the description mentions it."""
    figure = free_body_diagram([("N", 0, 90), ("w", 5, 270)])
    assert list(arrows(figure)) == ["w"]
    assert "Zero, so not drawn: N." in figure.description


def test_negative_size_is_refused() -> None:
    """A negative size is refused with the remedy."""
    with pytest.raises(ValueError, match="a size must be zero or more; turn the direction"):
        free_body_diagram([("w", -5, 270)])


def test_parallel_forces_stand_side_by_side() -> None:
    """Two forces in one direction are drawn in lanes of their own."""
    drawn = arrows(free_body_diagram([("T", 2, 30), ("F_E", 1, 30), ("w", 3, 270)]))
    assert drawn["T"].lane != drawn["F_E"].lane
    assert drawn["w"].lane == 0


@RUNS
@given(st.floats(1, 89))
def test_components_rebuild_their_force(angle: float) -> None:
    """Dashed components are the shadows of the drawn weight along and across the slope."""
    figure = free_body_diagram(
        [("w", 10, 270), ("N", 10 * cos(radians(angle)), angle + 90)],
        components=[Resolved("w", angle, "along", "across")],
    )
    parts = arrows(figure, "component")
    whole = length(arrows(figure)["w"])
    if "along" in parts:
        assert length(parts["along"]) == pytest.approx(whole * sin(radians(angle)))
        assert close_ways(way(parts["along"]), angle + 180)
    if "across" in parts:
        assert length(parts["across"]) == pytest.approx(whole * cos(radians(angle)))
        assert close_ways(way(parts["across"]), angle + 270)
    assert "Dashed arrows: components, not extra forces." in figure.notes


def test_component_of_unknown_force_is_refused() -> None:
    """A component must name a force that is drawn."""
    with pytest.raises(ValueError, match="no force with that label"):
        free_body_diagram([("w", 1, 270)], components=[Resolved("N", 0, "a", "b")])


@RUNS
@given(st.lists(st.tuples(st.floats(0.01, 10), WAYS), min_size=2, max_size=6))
def test_head_to_tail_sum(vectors: list[tuple[float, float]]) -> None:
    """The resultant runs from the first tail to the last head, as numpy adds the vectors."""
    total = sum(np.array([s * np.cos(np.radians(a)), s * np.sin(np.radians(a))]) for s, a in vectors)
    figure = tail_to_head([(f"F_{i}", s, a) for i, (s, a) in enumerate(vectors)])
    largest = max(s for s, _ in vectors)
    assume(np.hypot(*total) > 1e-3 * largest)
    drawn = arrows(figure, "resultant")["F_{net}"]
    assert np.subtract(drawn.end, drawn.start) * largest == pytest.approx(total, abs=1e-6 * largest)


def test_closed_triangle_has_no_resultant() -> None:
    """Three balanced forces close, and the figure says the resultant is zero."""
    figure = tail_to_head([("A", 1, 0), ("B", 1, 120), ("C", 1, 240)])
    assert not arrows(figure, "resultant")
    assert "The arrows close: the resultant is zero." in figure.notes


def test_right_angle_is_marked() -> None:
    """Vectors that meet at 90° carry a square; the asked angle is marked at the first tail."""
    figure = tail_to_head([("F_1", 0.6, 180), ("F_2", 0.45, 90)], angle=(143.13, 180, "θ"))
    square, marked = of(figure, AngleMark)
    assert square.sweep_deg == pytest.approx(90)
    assert square.vertex == pytest.approx((-1, 0))
    assert (marked.vertex, marked.label) == ((0, 0), "θ")


def test_line_keeps_order_and_signs() -> None:
    """Spheres stand in the order of their positions and carry the sign of their charge."""
    figure = spheres_on_line([("A", 2, 0.5), ("B", -1, 0.1), ("C", 0, 0.2)])
    spheres = sorted(of(figure, Sphere), key=lambda s: s.centre)
    assert [(s.label, s.sign) for s in spheres] == [("B", "-"), ("C", ""), ("A", "+")]


def test_line_gaps_are_to_scale_where_possible() -> None:
    """Gaps of 0,15 m and 0,20 m are drawn as 3 to 4."""
    figure = spheres_on_line([("A", 2, 0), ("B", -1, 0.15), ("C", 1, 0.35)])
    a, b, c = (s.centre[0] for s in of(figure, Sphere))
    assert (b - a) / (c - b) == pytest.approx(0.75)
    assert figure.notes == ()


def test_uneven_gaps_are_announced() -> None:
    """Gaps of 1 mm and 10 m cannot be to scale; the figure says so and spheres stay apart."""
    figure = spheres_on_line([("A", 2, 0), ("B", -1, 0.001), ("C", 1, 10)])
    a, b, c = (s.centre[0] for s in of(figure, Sphere))
    assert c - b > b - a > 2.5 * of(figure, Sphere)[0].radius
    assert figure.notes == ("Distances not to scale.",)


def test_mutual_forces_are_equal_and_do_not_meet() -> None:
    """Attracting spheres have equal arrows that stop before they touch."""
    figure = spheres_on_line(
        [("A", 6, 0), ("B", -2, 0.15)],
        forces=[(0, "F_A", 4.8e-6, True), (1, "F_B", 4.8e-6, False)],
        distances=[(0, 1, "r")],
    )
    drawn = arrows(figure)
    assert length(drawn["F_A"]) == pytest.approx(length(drawn["F_B"]))
    assert drawn["F_A"].end[0] < drawn["F_B"].end[0]
    (ruler,) = of(figure, Dimension)
    assert (ruler.start, ruler.end) == tuple(s.centre for s in of(figure, Sphere))


def test_field_arrows_on_a_marked_point() -> None:
    """Arrows on a marked point keep their kind and start there."""
    figure = spheres_on_line([("A", 9, 0), ("B", 4, 0.5)], points=[("P", 0.3)], forces=[On(2, "E_1", 3, True, "field")])
    (dot,) = of(figure, Dot)
    assert arrows(figure, "field")["E_1"].start[0] == pytest.approx(dot.at[0], abs=0.3)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (
            lambda: spheres_on_line([("A", 1, 0), ("B", 1, 0)]),
            "Two bodies share one place: give each its own position.",
        ),
        (
            lambda: spheres_on_line([("A", 1, 0)], forces=[(1, "F", 1, True)]),
            "There is no body number 1: there are 1.",
        ),
        (lambda: spheres_on_line([]), "There is no charge and no point to draw: give at least one."),
        (lambda: charges_in_plane([("A", 1, 0, 0)]), "One charge alone feels no force: give at least two."),
        (
            lambda: charges_in_plane([("A", 1, 0, 0), ("B", 1, 0, 0)]),
            "Two charges share a point: give each its own position.",
        ),
        (
            lambda: charges_in_plane([("A", 1, 0, 0), ("B", 1, 1, 0)], on=2),
            "There is no charge number 2: there are 2.",
        ),
        (
            lambda: slope_scene(90, [("A", 0.5, 1)]),
            "A slope of 90° cannot be drawn: use more than 0 and less than 90.",
        ),
        (lambda: slope_scene(0, [("A", 0.5, 1)]), "A slope of 0° cannot be drawn: use more than 0 and less than 90."),
        (lambda: slope_scene(30, [("A", 1.5, 1)]), "A at 1.5: a place on the slope lies from 0 to 1."),
        (lambda: slope_scene(30, [("A", -0.01, 1)]), "A at -0.01: a place on the slope lies from 0 to 1."),
        (lambda: hanging_pair(0), "A thread at 0° to the vertical cannot hang: use 0 to 90."),
        (lambda: hanging_pair(90), "A thread at 90° to the vertical cannot hang: use 0 to 90."),
        (
            lambda: hanging_pair(10, attracting=True),
            "Spheres that attract would touch on one support: use two supports.",
        ),
        (lambda: plates_scene(lines=13), "Plates need a sign + or - (got “+”) and 0 to 12 field lines (got 13)."),
        (lambda: plates_scene(lines=-1), "Plates need a sign + or - (got “+”) and 0 to 12 field lines (got -1)."),
        (lambda: field_pattern([("A", 0, 0, 0)]), "A field needs a charge: give at least one that is not zero."),
        (lambda: field_pattern([]), "A field pattern shows 1 to 8 charges, not 0."),
        (
            lambda: field_pattern([("A", 1, n, 0) for n in range(9)]),
            "A field pattern shows 1 to 8 charges, not 9.",
        ),
        (
            lambda: field_pattern([("A", 1, 0, 0), ("B", 1, 0, 0)]),
            "Two charges share a point: give each its own position.",
        ),
        (lambda: graph("t", "v", []), "The graph of v has no points, or one that is not a number."),
        (lambda: free_body_diagram([]), "No force is larger than zero: there is nothing to draw."),
        (lambda: tail_to_head([("A", 0, 0)]), "No vector is larger than zero: there is nothing to add."),
        (
            lambda: tail_to_head([("F_{1}", -1, 30)]),
            "F1 has size -1 and direction 30°: a size must be zero or more; turn the direction instead.",
        ),
        (
            lambda: before_after([Moving("A", "v", -1)], [Moving("A", "v", 1)]),
            "Each sketch needs a body, and a speed is zero or more: turn the direction instead.",
        ),
        (
            lambda: energy_bars([("Before", [("E_k", 0.0)])]),
            "Energy bars need an amount that is not zero, and every amount a number.",
        ),
        (lambda: Figure("T", "D.", ()), "Figure “T” has nothing to draw: give it at least one item."),
        (lambda: Figure("T", " ", (Dot((0, 0)),)), "A figure needs a title and a description: write both."),
        (
            lambda: Figure("T", "D.", (Dot((0, float("inf"))),)),
            "Figure “T”: Dot has the point (0, inf); every coordinate must be a finite number.",
        ),
    ],
)
def test_impossible_drawings_are_refused(call: Callable[[], Figure], message: str) -> None:
    """A drawing that makes no sense is refused with the rule, word for word."""
    with pytest.raises(ValueError, match="^" + re.escape(message) + "$"):
        call()


@pytest.mark.parametrize(
    "call",
    [
        lambda: slope_scene(0.5, [("A", 0.0, 1), ("B", 1.0, 1)]),
        lambda: slope_scene(89.5, [("A", 0.5, 1)]),
        lambda: hanging_pair(89.5),
        lambda: plates_scene(lines=12),
        lambda: plates_scene(lines=0),
        lambda: field_pattern([("A", 1, n, n % 3) for n in range(8)]),
        lambda: field_pattern([("A", 1, 0, 0)]),
        lambda: spheres_on_line([("A", 1, 0), ("B", 1, 1)], forces=[(1, "F", 1, True), (0, "F", 1, False)]),
        lambda: charges_in_plane([("A", 1, 0, 0), ("B", 1, 1, 0)], on=1),
    ],
)
def test_the_last_possible_drawings_are_drawn(call: Callable[[], Figure]) -> None:
    """Just inside each limit there is a drawing."""
    assert call().items


@st.composite
def clusters(draw: st.DrawFn, least: int = 2, most: int = 8) -> list[Charge]:
    """Charges at distinct places of any school size."""
    unit = draw(st.sampled_from([0.001, 0.1, 10.0]))
    places = draw(
        st.lists(
            st.tuples(st.integers(0, 40), st.integers(0, 40)),
            min_size=least,
            max_size=most,
            unique=True,
        )
    )
    sizes = st.sampled_from([-9.0, -4.0, -2.0, -1.0, 1.0, 2.0, 3.0, 8.0])
    return [Charge(f"Q_{i}", draw(sizes), x * unit, y * unit) for i, (x, y) in enumerate(places)]


@RUNS
@given(clusters())
def test_plane_keeps_directions_from_the_chosen_charge(charges: list[Charge]) -> None:
    """However distances are squeezed, each charge is seen in its true direction."""
    spheres = {s.label: s.centre for s in of(charges_in_plane(charges), Sphere)}
    here = charges[0]
    assert spheres[here.label] == pytest.approx((0, 0))
    for other in charges[1:]:
        true = degrees(atan2(other.y - here.y, other.x - here.x))
        x, y = spheres[other.label]
        assert close_ways(degrees(atan2(y, x)), true)


@RUNS
@given(clusters())
def test_plane_spheres_do_not_touch(charges: list[Charge]) -> None:
    """No two drawn spheres touch, for 2 to 8 charges at any distances."""
    spheres = of(charges_in_plane(charges), Sphere)
    for a, b in itertools.combinations(spheres, 2):
        assert hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1]) > 2 * a.radius


def test_plane_draws_only_forces_on_the_chosen_charge() -> None:
    """All force arrows and the dashed resultant start at the chosen sphere."""
    figure = charges_in_plane(
        [("Q_1", 2, 0, 0), ("Q_2", 3, 0.3, 0), ("Q_3", -4, 0, 0.4)],
        forces=[("F_2", 0.6, 180), ("F_3", 0.45, 90)],
        resultant=("F_{net}", 0.75, 143.13),
    )
    radius = of(figure, Sphere)[0].radius
    drawn = arrows(figure, "force", "resultant")
    assert {label: a.kind for label, a in drawn.items()} == {
        "F_2": "force",
        "F_3": "force",
        "F_{net}": "resultant",
    }
    assert all(hypot(*a.start) == pytest.approx(radius) for a in drawn.values())
    assert length(drawn["F_3"]) / length(drawn["F_2"]) == pytest.approx(0.75)


@RUNS
@given(st.floats(1, 89))
def test_slope_has_its_angle(angle: float) -> None:
    """The slope, the string and the marked angle all have the given angle."""
    figure = slope_scene(angle, [Body("A", 0.1, 1), Body("B", 0.6, 1)], string="up", string_on=1)
    (surface,) = of(figure, Surface)
    rise = surface.end[1] - surface.start[1]
    assert degrees(atan2(rise, surface.end[0] - surface.start[0])) == pytest.approx(angle)
    (mark,) = of(figure, AngleMark)
    assert mark.sweep_deg == pytest.approx(angle)
    (string,) = [s for s in of(figure, Segment) if s.kind == "string"]
    assert way(string) == pytest.approx(angle)


@RUNS
@given(st.floats(1, 89), st.booleans(), st.booleans())
def test_threads_have_their_angle(angle: float, two: bool, attracting: bool) -> None:
    """Both threads stand at the given angle to the vertical and are equally long."""
    assume(two or not attracting)
    figure = hanging_pair(angle, two_supports=two, attracting=attracting)
    left, right = (s for s in of(figure, Segment) if s.kind == "string")
    sense = -1 if attracting else 1
    assert way(right) == pytest.approx(270 + sense * angle)
    assert way(left) == pytest.approx(270 - sense * angle)
    assert length(left) == pytest.approx(length(right))
    a, b = of(figure, Sphere)
    assert b.centre[0] - a.centre[0] > 2 * a.radius


@pytest.mark.parametrize("upright", [False, True])
@pytest.mark.parametrize("sign", ["+", "-"])
def test_plate_lines_run_from_plus_to_minus(sign: Sign, upright: bool) -> None:
    """Lines between plates are parallel, evenly spaced and start on the positive plate."""
    figure = plates_scene(upper_sign=sign, lines=7, upright=upright)
    lines = [s for s in of(figure, Segment) if s.kind == "fieldline"]
    assert len(lines) == 7
    positive = next(p for p in of(figure, Plate) if p.sign == "+")
    across, along = (0, 1) if upright else (1, 0)
    assert all(line.start[across] == positive.start[across] for line in lines)
    assert all(line.start[along] == line.end[along] for line in lines)
    steps = np.diff(sorted(line.start[along] for line in lines))
    assert steps == pytest.approx(np.full(6, steps[0]))


@pytest.mark.parametrize(
    ("lines", "said"), [(1, "One field line runs from"), (2, "2 evenly spaced field lines run from")]
)
def test_one_line_is_told_as_one(lines: int, said: str) -> None:
    """A single line between plates is not told as several."""
    assert said in plates_scene(lines=lines).description


def test_balanced_drop_shows_equal_forces() -> None:
    """A balanced drop has equal arrows, up and down."""
    figure = plates_scene(particle="drop", particle_sign="-", forces=[("F_E", 3e-15, 90), ("F_g", 3e-15, 270)])
    drawn = arrows(figure)
    assert length(drawn["F_E"]) == pytest.approx(length(drawn["F_g"]))
    assert drawn["F_E"].end[1] > drawn["F_E"].start[1]


def numpy_field(charges: list[Charge], point: Point) -> np.ndarray:
    """Coulomb's law summed over charges with numpy, in units of k."""
    at = np.array([(c.x, c.y) for c in charges])
    away = np.asarray(point) - at
    cubes = np.linalg.norm(away, axis=1) ** 3
    return (np.array([c.charge for c in charges]) / cubes) @ away


@RUNS
@given(clusters(), st.floats(-50, 50), st.floats(-50, 50))
def test_field_agrees_with_numpy(charges: list[Charge], x: float, y: float) -> None:
    """The field at a point is Coulomb's law summed over the charges."""
    assume(min(hypot(x - c.x, y - c.y) for c in charges) > 1e-3)
    expected = numpy_field(charges, (x, y))
    assert field_at(charges, x, y) == pytest.approx(expected, rel=1e-9, abs=1e-12)


RADIUS, SHOWN = 0.6, 4.0


@st.composite
def spread_clusters(draw: st.DrawFn) -> list[Charge]:
    """One to four charges no closer than ten drawn radii."""
    places = draw(st.lists(st.tuples(st.integers(0, 3), st.integers(0, 3)), min_size=1, max_size=4, unique=True))
    sizes = st.sampled_from([-3.0, -2.0, -1.0, 1.0, 2.0, 3.0])
    return [Charge(f"Q_{i}", draw(sizes), 6.0 * x, 6.0 * y) for i, (x, y) in enumerate(places)]


@examples(25)
@given(spread_clusters())
def test_field_lines_follow_the_field(charges: list[Charge]) -> None:
    """Away from the spheres each piece of a line points along the field, from plus to minus."""
    for curve in field_lines(charges, radius=RADIUS, margin=SHOWN):
        for a, b in itertools.pairwise(curve.points):
            middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
            near = min(hypot(middle[0] - c.x, middle[1] - c.y) for c in charges)
            ex, ey = numpy_field(charges, middle)
            step = hypot(b[0] - a[0], b[1] - a[1])
            # At a null point the direction turns within one step: nothing to compare there.
            if near < 1.5 * RADIUS or hypot(ex, ey) < 0.01 or step > 1.0:
                continue
            turn = degrees(atan2(b[1] - a[1], b[0] - a[0])) - degrees(atan2(ey, ex))
            # Drawn points lie within 0,012 of the line; that turns a short piece further.
            assert abs((turn + 180) % 360 - 180) < 3 + degrees(0.03 / step)


@RUNS
@given(spread_clusters())
def test_field_lines_meet_spheres_at_right_angles(charges: list[Charge]) -> None:
    """A line that reaches a sphere does so along its radius, outwards from plus."""
    for curve in field_lines(charges, radius=RADIUS, margin=SHOWN):
        for end, inner in (
            (curve.points[0], curve.points[1]),
            (curve.points[-1], curve.points[-2]),
        ):
            for c in charges:
                if abs(hypot(end[0] - c.x, end[1] - c.y) - RADIUS) < 1e-6:
                    assert (c.charge > 0) == (end == curve.points[0])
                    radial = degrees(atan2(end[1] - c.y, end[0] - c.x))
                    line = degrees(atan2(inner[1] - end[1], inner[0] - end[0]))
                    assert close_ways(line, radial, within=12)


def crosses(p: Point, q: Point, r: Point, s: Point, width: float = 0.06) -> bool:
    """Whether segments pq and rs cross by more than the printed width of a line."""

    def side(a: Point, b: Point, c: Point) -> float:
        base = hypot(b[0] - a[0], b[1] - a[1]) or 1.0
        return ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / base

    sides = (side(p, q, r), side(p, q, s), side(r, s, p), side(r, s, q))
    apart = sides[0] * sides[1] < 0 and sides[2] * sides[3] < 0
    return apart and min(abs(x) for x in sides) > width


@examples(25)
@given(spread_clusters())
def test_field_lines_never_cross(charges: list[Charge]) -> None:
    """No two field lines cross."""
    curves = field_lines(charges, radius=RADIUS, margin=SHOWN)
    for one, two in itertools.combinations(curves, 2):
        for (p, q), (r, s) in itertools.product(itertools.pairwise(one.points), itertools.pairwise(two.points)):
            assert not crosses(p, q, r, s)


def touching(curves: Sequence[Curve], charge: Charge) -> int:
    """How many lines start or end on the sphere of a charge."""
    return sum(
        abs(hypot(x - charge.x, y - charge.y) - RADIUS) < 1e-6
        for curve in curves
        for x, y in (curve.points[0], curve.points[-1])
    )


@pytest.mark.parametrize(
    ("first", "second", "expected"),
    [(1, -1, (8, 8)), (2, -1, (16, 8)), (1, 1, (8, 8)), (-3, 1, (24, 8)), (2, 2, (8, 8))],
)
def test_line_count_is_proportional_to_charge(first: float, second: float, expected: tuple[int, int]) -> None:
    """Two charges have lines in the ratio of their sizes."""
    charges = [Charge("A", first, 0, 0), Charge("B", second, 6, 0)]
    curves = field_lines(charges, radius=RADIUS, margin=SHOWN)
    assert tuple(touching(curves, c) for c in charges) == expected


def test_unfair_line_count_is_announced() -> None:
    """Charges of 1 and 100 cannot have proportional lines; the figure says so."""
    figure = field_pattern([("A", 100, 0, 0), ("B", -1, 1, 0)])
    assert figure.notes == ("Number of lines not in proportion to the charges.",)


def test_lines_of_one_charge_are_equally_long() -> None:
    """The eight lines of a charge alone are shown up to the same distance, whichever way they run."""
    curves = field_lines([Charge("Q", -2.0, 6.0, 0.0)], radius=RADIUS, margin=SHOWN)
    lengths = [max(hypot(x - 6.0, y) for x, y in curve.points) for curve in curves]
    assert lengths == pytest.approx([lengths[0]] * 8, abs=1e-9)


@pytest.mark.parametrize("sizes", [(1.0, -1.0), (2.0, -1.0), (-3.0, -1.0), (2.0, 1.0, -1.0), (1.0, -2.0, 2.0)])
@pytest.mark.parametrize("turn", [0.0, 37.0, 90.0, 200.0])
def test_a_row_of_charges_turned_has_its_pattern_turned(sizes: tuple[float, ...], turn: float) -> None:
    """Where lines leave and meet the charges of a row turns with it: one side mirrors the other whatever its way."""
    cosine, sine = cos(radians(turn)), sin(radians(turn))

    def met(row: list[Charge]) -> list[Point]:
        ends = [
            end
            for curve in field_lines(row, radius=RADIUS, margin=SHOWN)
            for end in curve.points[:: len(curve.points) - 1]
        ]
        return [(x, y) for x, y in ends if any(abs(hypot(x - c.x, y - c.y) - RADIUS) < 1e-6 for c in row)]

    level = [Charge(f"Q_{i}", q, 5.0 * i, 0.0) for i, q in enumerate(sizes)]
    turned = [Charge(c.label, c.charge, c.x * cosine, c.x * sine) for c in level]
    back = [(x * cosine + y * sine, y * cosine - x * sine) for x, y in met(turned)]
    assert sorted((round(x, 4) + 0.0, round(y, 4) + 0.0) for x, y in back) == sorted(
        (round(x, 4) + 0.0, round(y, 4) + 0.0) for x, y in met(level)
    )


@pytest.mark.parametrize("seed", range(6))
def test_lines_of_like_charges_are_followed_no_further_than_the_page(
    seed: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """They never come back: what is drawn is what is drawn of lines followed far beyond the page."""
    chance = Random(seed)
    sign = chance.choice([-1, 1])
    charges = [
        Charge(f"Q_{i}", sign * chance.uniform(1, 20), chance.uniform(-9, 9), chance.uniform(-9, 9))
        for i in range(1 + seed % 4)
    ]
    asked, figure = steps_of(monkeypatch, charges)
    plain = field_module._Lines.__init__

    def far(lines: field_module._Lines, *given: Any) -> None:
        plain(lines, *given)
        lines.gone = lines.reach

    monkeypatch.setattr(field_module._Lines, "__init__", far)
    far_asked, far_figure = steps_of(monkeypatch, charges)
    assert figure == far_figure
    assert asked < 0.8 * far_asked


def steps_of(monkeypatch: pytest.MonkeyPatch, charges: list[Charge]) -> tuple[int, Figure]:
    """How often the field is worked out for a pattern, and the pattern."""
    asked = 0
    plain_headings = field_module._headings

    def counting(*given: object) -> Callable[[float, float], tuple[float, float, float]]:
        heading = plain_headings(*given)

        def counted(x: float, y: float) -> tuple[float, float, float]:
            nonlocal asked
            asked += 1
            return heading(x, y)

        return counted

    with monkeypatch.context() as patch:
        patch.setattr(field_module, "_headings", counting)
        field_module._traced.cache_clear()
        figure = field_pattern(charges)
    return asked, figure


@pytest.mark.parametrize("seed", range(12))
def test_a_pattern_takes_bounded_work(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """Charges and distances from 10⁻²⁵ to 10²⁵ never cost more than six ordinary patterns."""
    chance = Random(seed)

    def any_size() -> float:
        return chance.choice([-1, 1]) * 10 ** chance.uniform(-25, 25)

    ordinary, _ = steps_of(monkeypatch, [Charge("A", 16, 0, 0), Charge("B", 4, 0.6, 0)])
    for count in (2, 5, 8):
        charges = [Charge(f"Q_{i}", any_size(), any_size(), any_size()) for i in range(count)]
        asked, figure = steps_of(monkeypatch, charges)
        assert 0 < asked <= 6 * ordinary
        assert len(of(figure, Curve)) >= 3


def test_spent_work_leaves_lines_out_and_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    """When the steps run out fewer lines are drawn, all of them right, under an honest note."""
    charges = [Charge("A", 2, 0, 0), Charge("B", -1, 3, 0)]
    whole = of(field_pattern(charges), Curve)
    monkeypatch.setattr(field_module, "STEPS", 300)
    field_module._traced.cache_clear()  # the lines just followed are kept
    figure = field_pattern(charges)
    field_module._traced.cache_clear()  # and these few are of no use to others
    drawn = of(figure, Curve)
    assert 3 < len(drawn) < len(whole)
    assert {curve.points for curve in drawn} <= {curve.points for curve in whole}
    assert figure.notes == ("Number of lines not in proportion to the charges.",)


TOGETHER = "Charges too close together to be drawn apart are drawn as one."


def test_charges_too_close_to_draw_apart_are_drawn_as_one() -> None:
    """Two charges a thousandth of the page apart: one sphere with both names, and a note."""
    figure = field_pattern([("Q_1", 3, 0, 0), ("Q_2", -1, 0.001, 0), ("Q_3", -2, 1, 0)])
    spheres = {sphere.label: sphere for sphere in of(figure, Sphere)}
    assert {label: sphere.sign for label, sphere in spheres.items()} == {
        "Q_1, Q_2": "+",
        "Q_3": "-",
    }
    assert TOGETHER in figure.notes
    # The pair counts as +2, so both ends have equally many lines.
    ends = dict.fromkeys(spheres, 0)
    for curve in of(figure, Curve):
        for x, y in (curve.points[0], curve.points[-1]):
            for label, sphere in spheres.items():
                gap = hypot(x - sphere.centre[0], y - sphere.centre[1]) - sphere.radius
                ends[label] += abs(gap) < 1e-6
    assert ends["Q_1, Q_2"] == ends["Q_3"] == 8


def test_charges_drawn_as_one_have_the_field_of_all() -> None:
    """Away from the spheres the lines follow the field of every single charge."""
    given = [Charge("A", 5, 0, 0), Charge("B", 2, 0.004, 0.003), Charge("C", -4, 1, 0)]
    figure = field_pattern(given)
    spheres = {sphere.label: sphere for sphere in of(figure, Sphere)}
    left, right = spheres["A, B"], spheres["C"]
    size = (right.centre[0] - left.centre[0]) / (1 - 0.004 * 2 / 7)
    drawn = [c._replace(x=c.x * size, y=c.y * size) for c in given]
    for curve in of(figure, Curve):
        for a, b in itertools.pairwise(curve.points):
            middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
            near = min(hypot(middle[0] - s.centre[0], middle[1] - s.centre[1]) for s in (left, right))
            step = hypot(b[0] - a[0], b[1] - a[1])
            if near < 2 * left.radius or step > 1.0:
                continue
            ex, ey = numpy_field(drawn, middle)
            turn = degrees(atan2(b[1] - a[1], b[0] - a[0])) - degrees(atan2(ey, ex))
            assert abs((turn + 180) % 360 - 180) < 4 + degrees(0.03 / step)


def test_a_pair_that_cancels_draws_no_lines() -> None:
    """Equal and opposite charges at one drawn place: their own lines cannot be seen from here."""
    figure = field_pattern([("A", 1, 0, 0), ("B", -1, 1e-9, 0), ("C", 0, 1, 0)])
    assert of(figure, Curve) == []
    assert {sphere.sign for sphere in of(figure, Sphere)} == {""}
    assert figure.notes == (TOGETHER,)


@RUNS
@given(st.floats(-1e15, 1e15), st.floats(1e-18, 1e15))
def test_ticks_enclose_the_values(low: float, size: float) -> None:
    """An axis has 2 to 8 evenly spaced ticks that enclose its values."""
    assume(low + size > low)
    scale = scale_of([low, low + size], zero=False)
    slack = 1e-6 * max(size, abs(low))
    assert scale.low <= low + slack
    assert scale.high >= low + size - slack
    assert 2 <= len(scale.ticks) <= 8


def test_ticks_are_round_numbers_with_a_comma() -> None:
    """Ticks read as a person would write them, a power of ten taken out where needed."""
    scale = scale_of([0, 2.2])
    assert [tick_label(t, scale) for t in scale.ticks] == ["0", "0,5", "1,0", "1,5", "2,0", "2,5"]
    scale = scale_of([-3.2e-19, 2.1e-19])
    assert scale.power == -19
    assert tick_label(scale.ticks[0], scale) == "−4"


def test_graph_places_points_on_its_axes() -> None:
    """A line from (0; 10) to (5; −10) crosses the time axis half-way."""
    figure = graph("t (s)", "v (m·s⁻¹)", [GraphLine([(0, 10), (5, -10)])])
    (line,) = of(figure, Curve)
    x_axis = next(a for a in of(figure, Arrow) if a.label == "t (s)")
    (x, y), (x2, y2) = line.points
    assert (y + y2) / 2 == pytest.approx(x_axis.start[1])
    assert figure.description.startswith("Graph of v (m·s⁻¹) against t (s).")
    assert "falls from (0; 10) to (5; −10)" in figure.description
    assert x < x2


def test_graph_labels_carry_the_power_of_ten() -> None:
    """Large axis numbers share a power of ten written with the unit."""
    figure = graph("f (Hz)", "E_k (J)", [([(5e14, 0), (8e14, 2e-19)], "")])
    assert {a.label for a in of(figure, Arrow)} == {"f (× 10^{14} Hz)", "E_k (× 10^{-19} J)"}
    assert not any("e" in t.text for t in of(figure, Text))


def test_false_origin_is_announced() -> None:
    """An axis that does not start at zero is pointed out."""
    figure = graph("I (A)", "V (V)", [([(1, 11.4), (3, 10.7)], "")], y_zero=False)
    assert figure.notes == ("The V axis does not start at zero.",)


@pytest.mark.parametrize(
    ("angle", "words"),
    [
        (0, "to the right"),
        (360, "to the right"),
        (359.97, "to the right"),
        (0.04, "to the right"),
        (89.97, "upwards"),
        (180.03, "to the left"),
        (179.9, "0,1° above the left"),
        (90, "upwards"),
        (270, "downwards"),
        (143.13, "36,9° above the left"),
        (300, "60° below the right"),
        (-45, "45° below the right"),
    ],
)
def test_directions_in_words(angle: float, words: str) -> None:
    """A direction is said from the nearer horizontal."""
    assert direction(angle) == words


@pytest.mark.parametrize(
    ("label", "text"),
    [
        ("F_{AB}", "F AB"),
        ("Q_1", "Q1"),
        ("10^{-2}", "10⁻²"),
        ("mg sin θ", "mg sin θ"),
        ("F_E", "F E"),
    ],
)
def test_labels_in_plain_text(label: str, text: str) -> None:
    """A text alternative has no label markup."""
    assert plain(label) == text


def test_a_pattern_is_not_followed_again_while_its_charges_stay(monkeypatch: pytest.MonkeyPatch) -> None:
    """An edit of something else draws the same field lines, with other words under them, at no cost."""
    followed: list[int] = []
    follow = field_module._follow
    monkeypatch.setattr(field_module, "_follow", lambda *one: followed.append(1) or follow(*one))
    charges = [("A", 3e-9, 0.0, 0.0), ("B", -2e-9, 0.05, 0.0171)]
    one = field_module.field_pattern(charges, notes=("once",))
    steps = len(followed)
    again = field_module.field_pattern(charges, notes=("again",))
    assert steps > 0
    assert len(followed) == steps
    assert again.items == one.items
    assert again.notes != one.notes
