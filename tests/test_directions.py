"""Directions in words against the arrows that are drawn: of steps, of memo points, of the text alternative, of
the SVG."""

import math
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from dataclasses import replace
from itertools import product

import pytest

from calc.figures import Arrow, Figure
from calc.language.expressions import ExpressionError
from calc.language.symbols import symbol
from calc.model.answers import Direction, WorkedAnswer
from calc.model.directions import UP_DOWN, meant
from calc.model.questions import Step
from calc.renderings import svg
from calc.topics import find, question_keys
from calc.working.reading import read
from calc.working.working import direction, run, work
from tests import cases

KEYS = question_keys()
CLOSE = 1.0  # degrees: words give one or two decimals of an angle
PLAIN = {"to the right": 0.0, "upwards": 90.0, "to the left": 180.0, "downwards": 270.0, "straight down": 270.0}


def turned(words: str, slope: float | None) -> float | None:
    """The direction a phrase names, in degrees anticlockwise from the right; None if it names none."""
    found = re.search(r"(\d+(?:,\d+)?)° (above|below) the (?:([+−])x axis|(right|left))", words)
    if found:
        size = float(found[1].replace(",", "."))
        left = found[3] == "−" or found[4] == "left"
        up = found[2] == "above"
        return (180 - size if left else size) if up else (180 + size if left else 360 - size)
    if slope is not None:
        for phrase, more in (
            ("up the slope", 0.0),
            ("down the slope", 180.0),
            ("at right angles to the slope, away", 90.0),
            ("away from the slope at right angles", 90.0),
        ):
            if phrase in words:
                return (slope + more) % 360
    named = [angle for phrase, angle in PLAIN.items() if re.search(rf"\b{phrase}\b", words)]
    return named[0] if len(named) == 1 else None


def leaning(words: str, worked: WorkedAnswer) -> float | None:
    """The direction of a memo's phrase: one "at φ above the surface" is turned by φ from that along the surface."""
    along, side = turned(words, slope_of(worked)), re.search(r"at φ (above|below) the surface", words)
    if along is None or not side:
        return along
    forwards = abs(along - (slope_of(worked) or 0.0)) < CLOSE
    return along + math.degrees(worked.values["phi"]) * (1 if (side[1] == "above") == forwards else -1)


def way(arrow: Arrow) -> float:
    """Where an arrow points."""
    (x, y), (u, v) = arrow.start, arrow.end
    return math.degrees(math.atan2(v - y, u - x)) % 360


def apart(one: float, other: float) -> float:
    """The angle between two directions."""
    return abs((one - other + 180) % 360 - 180)


def arrows(drawn: Figure) -> dict[str, float]:
    """Label and direction of each force or field arrow whose label stands on no other way."""
    found: dict[str, set[float]] = {}
    for item in drawn.items:
        if isinstance(item, Arrow) and item.kind in ("force", "field", "resultant") and item.label:
            found.setdefault(item.label, set()).add(round(way(item), 6))
    return {label: ways.pop() for label, ways in found.items() if len(ways) == 1}


def figures(worked: WorkedAnswer) -> list[Figure]:
    """Every figure of an answer."""
    return [drawn for drawn in (worked.figure, *(part.figure for part in worked.parts)) if drawn]


def answers(key: str) -> Iterator[WorkedAnswer]:
    """The example, and draws of every level."""
    topic, question = find(key)
    yield work(topic, question, read(question, question.example))
    for level in (1, 2, 3):
        for seed in range(1, 5):
            drawn = cases.drawn(key, seed, level)
            found = read(question, drawn.inputs, drawn.find, variant=drawn.variant)
            yield work(topic, question, found)


def slope_of(worked: WorkedAnswer) -> float | None:
    """The angle of the slope in degrees, if there is one."""
    is_slope = worked.figure is not None and "slope rises to the right" in worked.figure.description
    return math.degrees(worked.values["theta"]) if is_slope and "theta" in worked.values else None


def steps_compared(worked: WorkedAnswer) -> int:
    """Steps whose direction in words has an arrow; fails where they differ."""
    count = 0
    for drawn in figures(worked):
        pointing = arrows(drawn)
        for part in worked.parts:
            for step in part.steps:
                label = symbol(step.makes).label
                named = turned(step.direction.words, slope_of(worked)) if step.direction else None
                if named is not None and label in pointing:
                    assert apart(named, pointing[label]) < CLOSE, (step.what, step.direction)
                    count += 1
    return count


def points_compared(worked: WorkedAnswer) -> int:
    """Points of a memo for arrows; fails where a drawn arrow differs."""
    count = 0
    for part in worked.parts:
        if part.kind == "draw" and part.figure:
            pointing = arrows(part.figure)
            spoken = {symbol_text(label): angle for label, angle in pointing.items()}
            for point in part.points:
                label = re.match(r"(?:Arrow )?(\S+?)[ :]", point.words)
                named = leaning(point.words, worked)
                if label and label[1] in spoken and named is not None:
                    assert apart(named, spoken[label[1]]) < CLOSE, point.words
                    count += 1
    return count


def symbol_text(label: str) -> str:
    """A label of a figure as a sentence has it: ``F_{12}`` is F₁₂, ``F_E`` stays."""
    name = label.replace("{", "").replace("}", "")
    return symbol(name.replace("_", "", 1) if re.fullmatch(r"\w_\d", name) else name).text


def descriptions_compared(drawn: Figure) -> int:
    """Phrases of the text alternative, “F 12 to the left” or “E1 points upwards”; fails where an arrow differs."""
    count = 0
    for label, angle in arrows(drawn).items():
        name = re.sub(r"_(\d)", r"\1", label.replace("_{", "_").replace("}", ""))
        name = re.sub(r"^(\w)_(\d+)$", r"\1\2", name).replace("_", " ")
        for said in re.findall(
            rf"\b{re.escape(name)}(?: at [\w ]+(?:\(\w+\))?)?(?: points)? ((?:to"
            r" the|upwards|downwards|[\d,]+°)[^,.;]*?(?:right|left|upwards|downwards|axis)?)(?=[,.;]| and |$)",
            drawn.description,
        ):
            named = turned(said, None)
            if named is not None:
                assert apart(named, angle) < CLOSE, (label, drawn.description)
                count += 1
    return count


def heads_compared(drawn: Figure) -> int:
    """Arrowheads of the SVG of forces and resultants; fails where one points along no arrow of the figure."""
    root = ET.fromstring(svg.render(drawn))
    ways = [way(item) for item in drawn.items if isinstance(item, Arrow) and item.kind in ("force", "resultant")]
    heads = []
    for node in root.iter():
        if node.get("class") in ("fig-force fig-head", "fig-resultant fig-head"):
            corners = [tuple(map(float, pair.split(","))) for pair in node.get("points", "").split()]
            (x, y), (ax, ay), (bx, by) = corners[:3]
            heads.append(math.degrees(math.atan2((ay + by) / 2 - y, x - (ax + bx) / 2)) % 360)
    assert all(min(apart(head, one) for one in ways) < 2 * CLOSE for head in heads), drawn.title
    assert all(min(apart(head, one) for head in heads) < 2 * CLOSE for one in ways), drawn.title
    return len(heads)


QUADRANTS = ("right-up", "left-up", "left-down", "right-down")


def keys_compared(worked: WorkedAnswer) -> int:
    """Directions whose words name the key that marking goes by; fails where they name another."""
    count = 0
    for part in worked.parts:
        for step in part.steps:
            where = step.direction
            if where is None:
                continue
            said = meant(where.words, dict(where.options))
            slanting = re.search(r"(above|below) the ([+−])x axis", where.words)
            if said is None and slanting and "right-up" in dict(where.options):
                above, right = slanting[1] == "above", slanting[2] == "+"
                said = QUADRANTS[(0 if right else 1) if above else (3 if right else 2)]
            assert said in (None, where.key), (step.what, where.key, where.words)
            count += said is not None
    return count


COUNTED = ("steps", "points", "descriptions", "heads", "keys")


def compared(worked: WorkedAnswer) -> dict[str, int]:
    """How many directions of an answer were compared, by where they stand."""
    pictures = list(figures(worked))
    counts = (
        steps_compared(worked),
        points_compared(worked),
        sum(map(descriptions_compared, pictures)),
        sum(map(heads_compared, pictures)),
        keys_compared(worked),
    )
    return dict(zip(COUNTED, counts, strict=True))


@pytest.mark.parametrize("key", KEYS)
def test_words_and_arrows_point_the_same_way(key: str) -> None:
    """Left is drawn left, up the slope up the slope, 53° above the +x axis there: in steps, points, words and SVG.

    And the key that a learner's words are compared with is the one the memo's words name.
    """
    for worked in answers(key):
        compared(worked)


@pytest.mark.parametrize(
    ("topic", "least"),
    [
        ("coulomb", {"heads": 10, "keys": 100}),
        ("several-charges", {"steps": 50, "points": 50, "descriptions": 100, "heads": 100, "keys": 100}),
        ("electric-field", {"steps": 30, "points": 30, "descriptions": 60, "heads": 20, "keys": 100}),
        ("equilibrium", {"steps": 50, "points": 50, "descriptions": 100, "heads": 100, "keys": 100}),
    ],
)
def test_there_are_directions_to_compare(topic: str, least: dict[str, int]) -> None:
    """The comparison meets directions of every kind in the chapters that are full of them."""
    counts = dict.fromkeys(COUNTED, 0)
    for worked in (one for key in KEYS if key.startswith(f"{topic}.") for one in answers(key)):
        counts = {name: counts[name] + count for name, count in compared(worked).items()}
        if all(counts[name] >= few for name, few in least.items()):
            return
    pytest.fail(f"too few: {counts}")


def flipped(drawn: Figure) -> Figure:
    """The figure with its first labelled force turned round."""
    at, item = next((i, one) for i, one in enumerate(drawn.items) if isinstance(one, Arrow) and one.kind == "force")
    back = (2 * item.start[0] - item.end[0], 2 * item.start[1] - item.end[1])
    return replace(drawn, items=(*drawn.items[:at], replace(item, end=back), *drawn.items[at + 1 :]))


def test_an_arrow_turned_round_is_noticed() -> None:
    """Each comparison fails for a figure with one arrow turned round."""
    topic, question = find("several-charges.right-angle")
    worked = work(topic, question, read(question, question.example))
    part = next(one for one in worked.parts if one.kind == "draw" and one.figure)
    wrong = flipped(part.figure)
    parts = tuple(replace(one, draws=lambda: wrong) if one is part else one for one in worked.parts)
    for compare, given in (
        (steps_compared, replace(worked, parts=parts)),
        (points_compared, replace(worked, parts=parts)),
        (descriptions_compared, wrong),
    ):
        with pytest.raises(AssertionError):
            compare(given)
    # An SVG of the wrong figure does not fit the right one.
    ways = {round(way(item)) for item in part.figure.items if isinstance(item, Arrow)}
    assert {round(way(item)) for item in wrong.items if isinstance(item, Arrow)} != ways


def test_phrases_are_read_as_directions() -> None:
    """The phrases of the booklet mean these directions, anticlockwise from the right."""
    assert turned("to the left", None) == 180.0
    assert turned("30° below the −x axis", None) == 210.0
    assert turned("36,9° above the left", None) == pytest.approx(143.1)
    assert turned("down the slope", 25.0) == 205.0
    assert turned("left or right: to the left, to the right", None) is None


def turns(key: str, seeds: range) -> Iterator[tuple[str, bool]]:
    """Steps whose value a learner's own earlier value turns round, and whether their direction turns with it."""
    _, question = find(key)
    for level, seed in product((1, 2, 3), seeds):
        drawn = cases.drawn(key, seed, level)
        found = read(question, drawn.inputs, drawn.find, variant=drawn.variant)
        plan, constants = question.plan(found.data), found.data.settings.constants()
        right = run(plan, constants)
        for place, step in enumerate(plan.steps):
            told = direction(step, right)
            for earlier, times in product(plan.steps[:place] if told else (), (0.05, 0.5, 2.0, 20.0)):
                try:
                    own = run(plan, constants, {earlier.makes: right[earlier.makes] * times})
                except ExpressionError:
                    continue
                if own[step.makes] * right[step.makes] < 0:
                    yield f"{step.law} for {step.makes}, own {earlier.makes}", direction(step, own) != told


@pytest.mark.parametrize("key", KEYS)
def test_a_direction_turns_with_its_value(key: str) -> None:
    """A plan worked on with a learner's own value never tells the direction that the right value had."""
    assert [where for where, turned in turns(key, range(1, 3)) if not turned] == []


def test_values_that_turn_are_met() -> None:
    """The rule above is put to the test: a cut thread, a drop and a slope have such values."""
    for key in ("equilibrium.slope", "electric-field.drop", "equilibrium.hovering-ball"):
        assert list(turns(key, range(1, 5))), key


def test_a_fixed_direction_is_that_of_a_value_above_zero() -> None:
    """Below zero its kind's opposite is told; a place has none and stays."""
    step = Step("d = a - b", "d = a - b", "Compare", "So.", "m", direction=UP_DOWN.of("down"))
    assert [direction(step, {"d": d}) for d in (1.0, -1.0)] == [UP_DOWN.of("down"), UP_DOWN.of("up")]
    places = (("between", "between them"), ("beyond-1", "beyond 1"), ("beyond-2", "beyond 2"))
    between = replace(step, direction=Direction("between", "between them", places))
    assert direction(between, {"d": -1.0}) == between.direction
    plane = Direction("right-up", "30° above the +x axis", (("right-up", "A"), ("left-down", "B"), ("up", "C")), 30.0)
    assert direction(replace(step, direction=plane), {"d": -1.0}) == Direction("left-down", "B", plane.options, 210.0)
