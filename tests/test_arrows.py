"""Arrows, signs and places in every figure against the steps' directions, the charges, and Newton's first law.

Nothing here is told of a question: headings are worked out again from the charges' signs and the drawn
places (like repel, unlike attract; a field points away from a positive charge), and forces at rest are added.
"""

from __future__ import annotations

import re
from cmath import rect
from itertools import pairwise
from math import atan2, cos, degrees, hypot, radians, sin

import numpy as np
import pytest
from scipy import optimize

from calc.figures import AngleMark, Arrow, Block, Dot, Figure, Plate, Segment, Sphere
from calc.figures.bodies import Ball
from calc.figures.pieces import corners
from calc.language.symbols import symbol
from calc.working.working import direction
from tests.cases import KEYS, Case, cases

ALONG = {
    "right": 0,
    "right-up": 45,
    "up": 90,
    "left-up": 135,
    "left": 180,
    "left-down": 225,
    "down": 270,
    "right-down": 315,
}


def bare(label: str) -> str:
    """A label without its markup: F_{21} and F₂₁ are F21."""
    return re.sub(r"[_{} ]", "", label)


def heading(arrow: Arrow | Segment) -> float:
    """Degrees anticlockwise from the right, of an arrow as drawn."""
    (x, y), (x2, y2) = arrow.start, arrow.end
    return degrees(atan2(y2 - y, x2 - x)) % 360


def long(arrow: Arrow) -> float:
    """How long an arrow is drawn."""
    return hypot(arrow.end[0] - arrow.start[0], arrow.end[1] - arrow.start[1])


def turn(first: float, second: float) -> float:
    """The angle between two headings, 0 to 180."""
    return abs((first - second + 180) % 360 - 180)


def arrows(figure: Figure) -> list[Arrow]:
    """The arrows of vectors, not of axes."""
    return [item for item in figure.items if isinstance(item, Arrow) and item.kind != "axis"]


def told_heading(case: Case, key: str, angle: float | None) -> tuple[float, float] | None:
    """The heading a step's direction stands for, and how near an arrow must come to it."""
    if angle is not None:
        return angle, 0.1
    slope = degrees(case.values["theta"]) if "theta" in case.values else None
    if slope is not None and case.name.startswith("equilibrium"):
        along = {"up-slope": slope, "down-slope": slope + 180, "away": slope + 90}
        return (along[key], 0.1) if key in along else None
    if key in ALONG:
        return ALONG[key], 44.9 if "-" in key else 0.1
    return None


@pytest.mark.parametrize("key", KEYS)
def test_an_arrow_points_as_its_step_says(key: str) -> None:
    """The arrow of a value a step makes has that step's direction, in every figure."""
    for case in cases(key):
        told = {
            bare(symbol(step.makes).label): way for step in case.plan.steps if (way := direction(step, case.values))
        }
        for place, figure in case.figures:
            for arrow in arrows(figure):
                way = told.get(bare(arrow.label))
                wanted = told_heading(case, way.key, way.angle) if way else None
                if wanted:
                    assert turn(heading(arrow), wanted[0]) <= wanted[1], (case.name, place, arrow)


def charge_of(case: Case, label: str) -> float | None:
    """The charge of a drawn sphere, by its label: Q1, A, q; None where it is not among the values."""
    name = bare(label)
    second = {"A": "Q1", "B": "Q2"}.get(name, name)
    for known in (name, f"Q_{name}", second):
        if known in case.values:
            return case.values[known]
    return None


@pytest.mark.parametrize("key", KEYS)
def test_a_sphere_carries_the_sign_of_its_charge(key: str) -> None:
    """+ stands in a sphere whose given charge is positive, − in one whose is negative."""
    for case in cases(key):
        made = {step.makes for step in case.plan.steps}
        for place, figure in case.figures:
            for sphere in (item for item in figure.items if isinstance(item, Sphere)):
                charge = charge_of(case, sphere.label)
                asked = made & {"Q1", "Q2", "Q_A", "Q_B", "q", "Q", "Q_D", "Q3"}
                if charge and sphere.sign and not asked:
                    assert sphere.sign == ("+" if charge > 0 else "-"), (case.name, place, sphere)


def pulled(case: Case, source: Sphere, at: tuple[float, float], on: str) -> float:
    """The heading of the force of a charged sphere on a charge at ``at`` with the sign ``on``."""
    away = degrees(atan2(at[1] - source.centre[1], at[0] - source.centre[0])) % 360
    return away if source.sign == on else (away + 180) % 360


@pytest.mark.parametrize("key", KEYS)
def test_forces_between_drawn_charges_repel_and_attract(key: str) -> None:
    """Between two drawn charges like signs push apart and unlike pull together, whatever the step says."""
    for case in cases(key):
        scene = case.worked.figure
        for place, figure in case.figures:
            own = {bare(i.label): i for i in figure.items if isinstance(i, Sphere) and i.sign}
            far = {bare(i.label): i for i in (scene.items if scene else ()) if isinstance(i, Sphere) and i.sign}
            spheres = own if len(own) > 1 else far
            for arrow in arrows(figure):
                pair = re.fullmatch(r"F(\w)(\w)", bare(arrow.label))
                if pair and not {"x", "y"} & set(pair.groups()):
                    ends = [spheres.get(n) or spheres.get(f"Q{n}") for n in pair.groups()]
                elif bare(arrow.label) in ("F", "F1") and len(own) == 2:
                    near = sorted(
                        own.values(), key=lambda s: hypot(s.centre[0] - arrow.start[0], s.centre[1] - arrow.start[1])
                    )
                    ends = [near[1], near[0]]
                else:
                    continue
                source, on = ends
                if source is None or on is None:
                    continue
                wanted = pulled(case, source, on.centre, on.sign)
                assert turn(heading(arrow), wanted) < 1, (case.name, place, arrow)


@pytest.mark.parametrize("key", KEYS)
def test_field_arrows_point_away_from_positive_charges(key: str) -> None:
    """The field of one drawn charge points away from it where it is positive, towards it where negative."""
    for case in cases(key):
        for place, figure in case.figures:
            spheres = {bare(i.label): i for i in figure.items if isinstance(i, Sphere) and i.sign}
            points = [i for i in figure.items if isinstance(i, Dot)]
            for arrow in arrows(figure):
                name = re.fullmatch(r"E(\w)", bare(arrow.label))
                source = None
                if name:
                    source = (
                        spheres.get(name[1])
                        or spheres.get(f"Q{name[1]}")
                        or spheres.get({"1": "A", "2": "B"}.get(name[1], ""))
                    )
                elif bare(arrow.label) == "E" and len(spheres) == 1:
                    (source,) = spheres.values()
                if source and len(points) == 1 and arrow.kind == "field":
                    wanted = pulled(case, source, points[0].at, "+")
                    assert turn(heading(arrow), wanted) < 1, (case.name, place, arrow)


@pytest.mark.parametrize("key", [key for key in KEYS if key.startswith("equilibrium.")])
def test_drawn_forces_at_rest_add_up_to_nothing(key: str) -> None:
    """The forces of a free-body diagram, each with its size and as it is drawn, have no resultant."""
    for case in cases(key):
        for place, figure in case.figures:
            if place != "draw":
                continue
            v = case.values
            known = {name: abs(v[n]) for name, n in (("FE", "F_E"), ("T", "T"), ("T2", "T2"), ("N", "N")) if n in v}
            mass = v.get("m", v.get("m2"))  # of two unequal bodies the second is drawn
            known |= {"Fg": mass * v["g"]} if mass is not None else {}
            forces = {bare(a.label): heading(a) for a in arrows(figure) if a.kind == "force"}
            assert turn(forces["Fg"], 270) < 1e-6, (case.name, place)
            ways = {name: (cos(radians(way)), sin(radians(way))) for name, way in forces.items()}
            total = [-sum(known[n] * ways[n][axis] for n in ways if n in known) for axis in (0, 1)]
            free = [ways[n] for n in ways if n not in known]
            # A force not worked out may have any size, but not a negative one: it cannot point the other way.
            missing = optimize.nnls(np.array(free).T, np.array(total))[1] if free else hypot(*total)
            assert missing <= 1e-6 * max(known.values(), default=0.0), (case.name, forces, known)


@pytest.mark.parametrize("key", KEYS)
def test_a_dashed_resultant_is_the_sum_of_the_arrows_before_it(key: str) -> None:
    """Head to tail, the resultant runs from the first tail to the last head."""
    for case in cases(key):
        for place, figure in case.figures:
            if not figure.description.startswith("Head to tail"):
                continue
            drawn = arrows(figure)
            (net,) = [arrow for arrow in drawn if arrow.kind == "resultant"]
            parts = [arrow for arrow in drawn if arrow is not net]
            for axis in (0, 1):
                added = sum(arrow.end[axis] - arrow.start[axis] for arrow in parts)
                assert added == pytest.approx(net.end[axis] - net.start[axis], abs=1e-6), (case.name, place)


SAID = re.compile(
    r"(?:^|[.:,] |and |: )(?P<name>[A-Zamgθ][^.:,°]*?)(?: at [^.]*?)?(?: points)? "
    r"(?P<way>to the right|to the left|upwards|downwards|\d+(?:,\d)?° (?:above|below) the (?:right|left))"
)


def said_heading(words: str) -> float:
    """The heading a phrase of a figure's text alternative stands for."""
    exact = {"to the right": 0.0, "upwards": 90.0, "to the left": 180.0, "downwards": 270.0}
    if words in exact:
        return exact[words]
    found = re.fullmatch(r"([\d,]+)° (above|below) the (right|left)", words)
    assert found, words
    angle = float(found[1].replace(",", "."))
    up = angle if found[3] == "right" else 180 - angle
    return up if found[2] == "above" else -up % 360


@pytest.mark.parametrize("key", KEYS)
def test_the_words_of_a_figure_say_what_is_drawn(key: str) -> None:
    """Each arrow's direction in a text alternative is the one drawn; so are signs, order and plates."""
    for case in cases(key):
        for place, figure in case.figures:
            text = figure.description
            for found in SAID.finditer(text):
                name = bare(found["name"].removeprefix("and ").removeprefix("The dashed resultant "))
                same = [a for a in arrows(figure) if bare(a.label) == name]
                if same:
                    near = min(turn(heading(a), said_heading(found["way"])) for a in same)
                    assert near < 0.2, (case.name, place, found[0])
            spheres = {bare(i.label): i for i in figure.items if isinstance(i, Sphere)}
            for label, sign in re.findall(r"(\w+) \((positive|negative)\)", text):
                if label in spheres:
                    assert spheres[label].sign == ("+" if sign == "positive" else "-"), text
            order = re.search(r"From left to right: ([^.]*)\.", text)
            if order:
                named = [bare(re.sub(r" \(.*?\)|point ", "", part)) for part in re.split(r", | and ", order[1])]
                at = {
                    bare(i.label): (i.at if isinstance(i, Dot) else i.centre)[0]
                    for i in figure.items
                    if isinstance(i, Sphere | Ball | Dot)
                }
                places = [at[name] for name in named]
                assert places == sorted(places), (case.name, place, text)
            plates = re.search(r"Upper plate (positive|negative), lower plate (\w+)", text)
            if plates:
                upper, lower = sorted((i for i in figure.items if isinstance(i, Plate)), key=lambda p: -p.start[1])
                assert [upper.sign, lower.sign] == [{"positive": "+", "negative": "-"}[s] for s in plates.groups()]


@pytest.mark.parametrize("key", KEYS)
def test_field_lines_between_plates_run_from_plus_to_minus(key: str) -> None:
    """Every straight field line between plates starts at the positive one."""
    for case in cases(key):
        for place, figure in case.figures:
            plates = {i.sign: i for i in figure.items if isinstance(i, Plate)}
            for line in (i for i in figure.items if isinstance(i, Segment)):
                if line.kind == "fieldline" and plates:
                    ends = [(plates[s].start[i] + plates[s].end[i]) / 2 for s in "-+" for i in (0, 1)]
                    across, rise = ends[0] - ends[2], ends[1] - ends[3]
                    run = (line.end[0] - line.start[0], line.end[1] - line.start[1])
                    assert run[0] * across + run[1] * rise > 0, (case.name, place, line)
                    assert abs(run[0] * rise - run[1] * across) < 1e-9, (case.name, place, line)


@pytest.mark.parametrize("key", KEYS)
def test_a_force_in_a_field_is_along_it_for_a_positive_charge_only(key: str) -> None:
    """F, a and E of one plan: same way where q is positive, opposite where it is negative."""
    ways = {"right": 1, "left": -1, "up": 1, "down": -1, "away": 1, "towards": -1}
    for case in cases(key):
        told = {
            step.makes: way.key for step in case.plan.steps if (way := direction(step, case.values)) and way.key in ways
        }
        name = next((n for n in ("E", "E_net") if n in told), "")
        if "F" not in told or not name or "q" not in case.values:
            continue
        alike = ways[told["F"]] == ways[told[name]]
        assert alike == (case.values["q"] > 0), case.name
        assert told.get("a", told["F"]) == told["F"], case.name


DROPS = ("electric-field.drop", "electric-field.drop-charge", "electric-field.paint-drop")


@pytest.mark.parametrize("key", DROPS)
def test_a_hovering_drop_is_pushed_up(key: str) -> None:
    """The force on it is up: a positive drop in a field upwards, a negative one in a field downwards; it is
    drawn so."""
    signs = set()
    for case in cases(key):
        scene = case.worked.figure
        assert scene
        (drop,) = [item for item in scene.items if isinstance(item, Sphere)]
        upper, lower = sorted((i for i in scene.items if isinstance(i, Plate)), key=lambda p: -p.start[1])
        assert {upper.sign, lower.sign} == {"+", "-"}
        assert drop.sign == lower.sign, case.name
        signs.add(drop.sign)
        told = {s.makes: w.key for s in case.plan.steps if (w := direction(s, case.values))}
        if "E" in told:
            assert told["E"] == ("up" if lower.sign == "+" else "down"), case.name
        if "q" in told:
            assert told["q"] == ("positive" if drop.sign == "+" else "negative"), case.name
        if "n" in told:
            assert told["n"] == ("lacking" if drop.sign == "+" else "excess"), case.name
    assert signs == {"+", "-"}


@pytest.mark.parametrize("key", DROPS)
def test_a_drop_starts_to_the_side_of_the_larger_force(key: str) -> None:
    """With another field of the same direction it starts up or down as q E is more or less than m g."""
    ways: set[str] = set()
    for case in cases(key):
        v = case.values
        told = {s.makes: w.key for s in case.plan.steps if (w := direction(s, v))}
        if {"q", "m", "E_2"} <= set(v) and "a" in told and told["E_2"] == told["E"]:
            net = abs(v["q"]) * v["E_2"] - v["m"] * v["g"]
            assert told["a"] == ("up" if net > 0 else "down"), case.name
            assert v["a"] == pytest.approx(abs(net) / v["m"], rel=1e-6)
            ways.add(told["a"])
    assert ways


@pytest.mark.parametrize("key", KEYS)
def test_two_components_make_up_the_arrow_they_belong_to(key: str) -> None:
    """Components drawn from one point add up, head to tail, to one of the forces drawn there."""
    for case in cases(key):
        for place, figure in case.figures:
            parts = [a for a in arrows(figure) if a.kind == "component"]
            whole = [a for a in arrows(figure) if a.kind != "component"]
            for first, second in zip(parts[::2], parts[1::2], strict=True):
                assert turn(heading(first), heading(second)) == pytest.approx(90), (
                    case.name,
                    place,
                )
                # By lengths and headings: arrows may begin a little away from their common point.
                total = [sum(long(a) * way(radians(heading(a))) for a in (first, second)) for way in (cos, sin)]
                ahead = degrees(atan2(total[1], total[0]))
                fits = [a for a in whole if turn(heading(a), ahead) < 0.5]
                assert any(long(a) == pytest.approx(hypot(*total), rel=0.02) for a in fits), (case.name, place, parts)


@pytest.mark.parametrize("key", KEYS)
def test_a_marked_angle_has_the_size_of_its_name(key: str) -> None:
    """An arc labelled θ, α or β is as wide as that angle's value, where the drawing is not clamped."""
    for case in cases(key):
        named = {bare(symbol(n).label): degrees(v) for n, v in case.values.items() if n in ("theta", "alpha", "beta")}
        for place, figure in case.figures:
            for mark in (i for i in figure.items if isinstance(i, AngleMark)):
                size = named.get(bare(mark.label))
                if size is not None and 8 <= size <= 75:
                    assert mark.sweep_deg == pytest.approx(size, abs=0.1), (case.name, place)


def to_scale(figure: Figure, kind: str) -> bool:
    """Whether no note says that arrows of this kind are not to scale; one about velocities says it of them alone."""
    about = [n for n in figure.notes if "to scale" in n.casefold() and not n.startswith("Distances")]
    return not any(kind == "velocity" or not note.startswith("Hollow heads") for note in about)


def quantity(arrow: Arrow) -> str:
    """What an arrow stands for: a resultant or a component is a force or a field as its label says."""
    return {"F": "force", "E": "field", "v": "velocity", "u": "velocity"}.get(arrow.label[:1], arrow.kind)


@pytest.mark.parametrize("key", KEYS)
def test_arrows_of_two_quantities_are_not_said_to_be_to_one_scale(key: str) -> None:
    """Newtons and metres a second have no common length: where both are drawn, a note takes one of them out."""
    for case in cases(key):
        for place, figure in case.figures:
            scaled = {quantity(a) for a in arrows(figure) if to_scale(figure, a.kind)} & {"force", "field", "velocity"}
            assert len(scaled) <= 1, (case.name, place, scaled, figure.notes)


@pytest.mark.parametrize("key", KEYS)
def test_arrows_said_to_be_to_scale_are(key: str) -> None:
    """Without a note about their kind, arrows of one quantity are as long as their values are large; the larger
    value never has the shorter arrow."""
    for case in cases(key):
        sizes = {bare(symbol(n).label): abs(v) for n, v in case.values.items()}
        for place, figure in case.figures:
            for kind in ("force", "field", "resultant", "velocity"):
                scale = to_scale(figure, kind)
                alike = ("force", "resultant", "field") if kind == "resultant" else (kind, "resultant")
                known = [
                    (sizes[bare(a.label)], long(a))
                    for a in arrows(figure)
                    if a.kind in alike and sizes.get(bare(a.label))
                ]
                for (first, one), (second, other) in pairwise(sorted(known, reverse=True)):
                    assert one >= other - 1e-6, (case.name, place, known)
                    if scale and first:
                        assert other / one == pytest.approx(second / first, abs=0.02), (
                            case.name,
                            place,
                            known,
                            figure.notes,
                        )


def test_the_corners_of_a_turned_block_are_its_corners_turned() -> None:
    """Turned by 30° about its centre, by the multiplication of complex numbers."""
    block = Block((2.0, 1.0), 4.0, 2.0, 30.0)
    turned = rect(1.0, radians(30))
    wanted = {complex(2, 1) + turned * complex(x, y) for x in (-2, 2) for y in (-1, 1)}
    found = [complex(*corner) for corner in corners(block)]
    assert all(min(abs(one - other) for other in found) < 1e-12 for one in wanted)
