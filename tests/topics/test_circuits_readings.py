"""Readings of a cell and of a component: the best line against scipy, readings far off, refusals, figures."""

from random import Random
from typing import Any

import numpy as np
import pytest
from scipy import stats

from calc import topics
from calc.figures.pieces import Curve
from calc.model.questions import Refusal
from calc.practice.drawing import DRAWS, draw
from calc.topics.circuits import readings
from calc.topics.shared.best_line import MANY, STUDENT, far_off
from calc.working.reading import Refusals
from tests.topics.asking import Chapter

CIRCUITS = Chapter("circuits")
CELL = [(0.2, 1.42), (0.4, 1.29), (0.6, 1.21), (0.8, 1.1), (1.0, 0.98)]


def typed(points: list[tuple[float, float]]) -> tuple[dict[str, str], ...]:
    """Readings as a reader types them."""
    return tuple({"I": f"{x!r} A", "V": f"{y!r} V"} for x, y in points)


def refused(key: str, points: list[tuple[float, float]]) -> tuple[str | None, str]:
    """Where such readings are refused, and why."""
    with pytest.raises((Refusal, Refusals)) as caught:
        CIRCUITS.solve(key, readings=typed(points), also="spread")
    one = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    return one.field, one.sentence


@pytest.mark.parametrize("seed", range(20))
def test_the_line_of_a_cell_is_scipys(seed: int) -> None:
    """Gradient, intercept and the uncertainty of both are those of scipy.stats.linregress."""
    chance = Random(seed)
    epsilon, r, count = chance.uniform(1, 12), chance.uniform(0.1, 3), chance.randint(3, 12)
    flows = [epsilon / r * 0.7 * n / count for n in range(1, count + 1)]
    points = [(x, epsilon - r * x + chance.gauss(0, 0.01 * epsilon)) for x in flows]
    right = stats.linregress(*zip(*points, strict=True))
    found = CIRCUITS.solve("readings", readings=typed(points), also="spread").values
    assert found["m"] == pytest.approx(right.slope, rel=1e-9)
    assert found["r"] == pytest.approx(-right.slope, rel=1e-9)
    assert found["epsilon"] == pytest.approx(right.intercept, rel=1e-9)
    assert found["Deltar"] == pytest.approx(right.stderr, rel=1e-6)
    assert found["Deltaepsilon"] == pytest.approx(right.intercept_stderr, rel=1e-6)
    assert found["I_s"] == pytest.approx(np.roots([right.slope, right.intercept])[0], rel=1e-9)


@pytest.mark.parametrize("seed", range(20))
def test_the_line_of_a_resistor_is_scipys(seed: int) -> None:
    """The resistance is the gradient of scipy.stats.linregress, with its uncertainty."""
    chance = Random(seed)
    ohms, count = chance.uniform(1, 100), chance.randint(3, 12)
    points = [(0.1 * n, 0.1 * n * ohms * (1 + chance.uniform(-0.01, 0.01))) for n in range(1, count + 1)]
    right = stats.linregress(*zip(*points, strict=True))
    found = CIRCUITS.solve("ohm", readings=typed(points), also="spread").values
    assert found["R"] == pytest.approx(right.slope, rel=1e-9)
    assert found["DeltaR"] == pytest.approx(right.stderr, rel=1e-6)


def test_students_t_is_scipys() -> None:
    """The table of 99,5 % quantiles, one degree of freedom after the other."""
    assert pytest.approx([stats.t.ppf(0.995, n) for n in range(1, 10)], abs=6e-4) == STUDENT
    assert stats.t.ppf(0.995, 10) <= MANY


def test_a_reading_far_off_is_pointed_out_and_left_in() -> None:
    """A slip of a digit is named with its place and its distance; the line still counts it."""
    points = [*CELL[:2], (0.6, 1.12), *CELL[3:], (1.2, 0.87), (1.4, 0.77)]
    solved = CIRCUITS.solve("readings", readings=typed(points), also="nothing")
    (sentence,) = solved.warnings
    assert sentence.replace("\N{NO-BREAK SPACE}", " ").startswith("Reading 3 (0,6 A and 1,12 V) lies ")
    assert sentence.endswith(
        " below the line of all the others, further than their scatter explains. It has not been left out. Look for a"
        " slip in reading or typing, a loose contact or a switch held closed so long that something grew hot, and take"
        " this reading again."
    )
    assert solved.values["m"] == pytest.approx(stats.linregress(*zip(*points, strict=True)).slope)


@pytest.mark.parametrize("seed", range(30))
def test_what_is_far_off_is_what_a_deleted_residual_says(seed: int) -> None:
    """A reading is pointed out where its deleted residual, by the hat matrix, passes Student's t, and it shows."""
    chance = Random(seed)
    points = [(0.2 * n, 3 - 0.12 * n + chance.gauss(0, 0.01)) for n in range(1, 9)]
    at = chance.randrange(8)
    points[at] = (points[at][0], points[at][1] + chance.choice((0.02, 0.1, -0.2, 0.4)))
    x, y = (np.array(one) for one in zip(*points, strict=True))
    design = np.column_stack([np.ones_like(x), x])
    hat = design @ np.linalg.pinv(design)
    left = y - hat @ y
    free = len(x) - 3
    inner = (left @ left - left**2 / (1 - np.diag(hat))) / free
    scaled = np.abs(left) / np.sqrt(inner * (1 - np.diag(hat)))
    deleted = left / (1 - np.diag(hat))
    right = {n for n in range(8) if scaled[n] > stats.t.ppf(0.995, free) and abs(deleted[n]) > 0.02 * y.max()}
    assert set(far_off(points)) == right
    for n, off in far_off(points).items():
        assert off == pytest.approx(deleted[n])


def test_three_readings_are_enough_and_two_are_not() -> None:
    """The table asks for three."""
    assert CIRCUITS.solve("readings", readings=typed(CELL[:3]), also="nothing").values["r"] > 0
    field, sentence = refused("readings", CELL[:2])
    assert field
    assert field.startswith("readings")
    assert "3" in sentence or "three" in sentence


REFUSALS = [
    (
        "readings",
        [(0.2, 1.0), (0.4, 1.1), (0.6, 1.3)],
        "readings.0.V",
        "Check the columns: the terminal potential difference must fall when the current grows, but in these readings"
        " it does not. Type each current with the potential difference that was read with it.",
    ),
    (
        "ohm",
        [(0.2, 1.3), (0.4, 1.1), (0.6, 1.0)],
        "readings.0.V",
        "Check the columns: across a resistor the potential difference grows with the current; here it does not."
        " Type each current with the potential difference that was read with it.",
    ),
    (
        "readings",
        [(0.4, 1.3), (0.4, 1.1), (0.4, 1.0)],
        "readings.1.I",
        "All these currents are the same, so every point lies above the same place of the axis and no line can be"
        " drawn. Type readings with different currents.",
    ),
    (
        "ohm",
        [(0.2, 0.0), (0.4, 0.0), (0.6, 0.0)],
        "readings.0.V",
        "These readings are all zero, so there is nothing to draw. Type potential differences above zero.",
    ),
]


@pytest.mark.parametrize(("key", "points", "field", "sentence"), REFUSALS)
def test_readings_that_cannot_be_are_refused(
    key: str, points: list[tuple[float, float]], field: str, sentence: str
) -> None:
    """With the reason, at the table."""
    assert refused(key, points) == (field, sentence)


VERDICTS = [
    ([(0.1 * n, 0.8 * n) for n in range(1, 7)], "The points lie on a straight line through the origin."),
    ([(0.1 * n, 0.8 * n + 1) for n in range(1, 7)], "The points lie on a straight line, but it misses the origin."),
    (
        [(0.1 * n, n**2) for n in range(1, 7)],
        "The points lie on a curve that becomes steeper: V/I grows with the current.",
    ),
    (
        [(0.1 * n, n**0.4) for n in range(1, 8)],
        "The points lie on a curve that becomes flatter: V/I falls with the current.",
    ),
    (
        [(0.1, 1.0), (0.2, 1.1), (0.3, 3.5), (0.4, 2.2), (0.5, 5.5)],
        "The points lie neither on a straight line nor on one smooth curve.",
    ),
]


@pytest.mark.parametrize(("points", "begins"), VERDICTS)
def test_ohmic_or_not(points: list[tuple[float, float]], begins: str) -> None:
    """The verdict is that of the points: straight through the origin, beside it, a curve either way, or nothing."""
    solved = CIRCUITS.solve("ohm", readings=typed(points), also="nothing")
    (part,) = [one for one in solved.parts if one.key == "verdict"]
    assert part.points[0].words == begins
    assert ("R" in solved.values) == ("through the origin" in begins)


def test_a_filament_has_the_ratio_at_each_end() -> None:
    """On a curve the resistance is V/I at the point."""
    points = [(0.1 * n, 0.5 * n**1.6) for n in range(1, 7)]
    found = CIRCUITS.solve("ohm", readings=typed(points), also="nothing").values
    assert found["R_a"] == pytest.approx(points[0][1] / points[0][0])
    assert found["R_z"] == pytest.approx(points[-1][1] / points[-1][0])


def test_the_line_is_dashed_where_it_is_extended() -> None:
    """To the emf in the graph of the readings, and down to the current axis in the second one."""
    solved = CIRCUITS.solve("readings", readings=typed(CELL), also="nothing")
    figures = {part.key: part.figure for part in solved.parts if part.figure}
    dashed = {
        key: sum(isinstance(item, Curve) and item.kind == "extrapolation" for item in figure.items)
        for key, figure in figures.items()
    }
    assert dashed == {"draw": 1, "short": 2}


@pytest.mark.parametrize("key", ["readings", "ohm"])
@pytest.mark.parametrize("level", [1, 2, 3])
def test_practice_reads_like_an_experiment(key: str, level: int) -> None:
    """Drawn readings are worked, with no reading so far off that it is pointed out."""
    topic, question = topics.find(f"circuits.{key}")
    for seed in range(1, 6):
        drawn = draw(topic, question, seed, level, DRAWS)
        assert not CIRCUITS.solve(key, **drawn.inputs).warnings


def test_the_gradient_triangle_stands_on_the_line(monkeypatch: pytest.MonkeyPatch) -> None:
    """Both corners of ΔI and ΔV lie on the line of best fit, well apart."""
    drawn: dict[str, Any] = {}
    monkeypatch.setattr(readings, "graph", lambda *_, **given: drawn.update(given))
    readings.ohm_graph({"m": 5.0, "b": 0.01}, [(0.1, 0.5), (0.6, 3.0)], "ohmic")
    (triangle,) = drawn["gradients"]
    for x, y in (triangle.start, triangle.end):
        assert y == pytest.approx(0.01 + 5 * x)
    assert 0 < 3 * triangle.start[0] < triangle.end[0] < 0.6
