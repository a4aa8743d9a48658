"""The best line that several chapters share: which readings are pointed out, and what its check proves."""

import json

import pytest
from scipy import stats

from calc import desk
from calc.topics.shared.best_line import MANY, STUDENT, Line, far_off


def test_four_readings_are_enough_to_point_one_out_and_three_are_not() -> None:
    """Three others are needed to tell how far one lies from their line."""
    points = [(0.0, 0.0), (1.0, 1.0), (2.0, 2.0), (3.0, 5.0)]
    assert far_off(points) == {3: pytest.approx(2.0)}
    assert far_off(points[1:]) == {}


def test_two_places_of_the_others_make_a_line() -> None:
    """Readings repeated at two places tell of a fifth elsewhere; at one place only they tell nothing."""
    points = [(0.0, 0.0), (0.0, 0.1), (1.0, 1.0), (1.0, 1.1), (2.0, 9.0)]
    assert 4 in far_off(points)
    assert 4 not in far_off([(0.0, y) for _, y in points[:4]] + [points[4]])


def test_the_more_readings_the_less_scatter_is_allowed() -> None:
    """Student's t at 99,5 % (NIST/SEMATECH e-Handbook, 1.3.6.7.2; scipy's quantiles) for each number of others."""
    assert [float(f"{stats.t.ppf(0.995, free):.3f}") for free in range(1, 10)] == [
        pytest.approx(one, abs=1.1e-3) for one in STUDENT
    ]
    assert STUDENT[-1] == MANY
    for count in (6, 8, 16):
        points = [(float(n), n + (0.1 if n % 2 else -0.1)) for n in range(count)]
        line = stats.linregress(*zip(*points, strict=True))
        s = (sum((y - line.intercept - line.slope * x) ** 2 for x, y in points) / (count - 2)) ** 0.5
        mean = (count - 1) / 2
        lever = 1 + 1 / count + (count - mean) ** 2 / sum((n - mean) ** 2 for n in range(count))
        most = min(float(stats.t.ppf(0.995, count - 2)), 1e9) if count - 2 < 10 else MANY
        for share, seen in ((0.98, False), (1.02, True)):
            y = line.intercept + line.slope * count + share * most * s * lever**0.5
            assert (count in far_off([*points, (float(count), y)])) == seen, (count, share)


def test_the_check_holds_for_the_best_line_alone() -> None:
    """Above and below balance for it and for no other gradient or intercept."""
    holds = Line("x", "y", 3).balance("m", "b").holds
    assert holds is not None
    values = {"x1": 0.0, "y1": 0.0, "x2": 1.0, "y2": 2.0, "x3": 2.0, "y3": 1.0}
    assert holds({**values, "m": 0.5, "b": 0.5}) is True
    assert holds({**values, "m": 0.5, "b": 0.6}) is False
    assert holds({**values, "m": 0.6, "b": 0.4}) is False


@pytest.mark.parametrize(("off", "right"), [(1.045, True), (1.055, False)])
def test_a_gradient_by_eye_may_be_five_per_cent_off(off: float, right: bool) -> None:
    """As much as an eye and a ruler allow (common practice, no source)."""
    rows = [(6e14, 0.66e-19), (7e14, 1.36e-19), (8e14, 1.93e-19), (9.1e14, 2.74e-19)]
    slope = float(stats.linregress(*zip(*rows, strict=True)).slope)
    data = {
        "question": "photoelectric.readings",
        "inputs": {"readings": [{"f": f"{f!r} Hz", "E": f"{energy!r} J"} for f, energy in rows]},
        "answers": {"gradient": {"value": f"{slope * off!r} J s"}},
    }
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    (part,) = [one for one in reply["data"]["parts"] if one["part"] == "gradient"]
    assert (part["state"] == "right") == right


def test_the_line_in_plain_words() -> None:
    """What each step says to a reader who asks for plain words."""
    line = Line("x", "y", 3)
    assert line.gradient("m", "1").plain == "Steepness is how far up for each step to the right."
    assert line.of_gradient("Deltam", "1").plain == "How far the line could be tilted and still fit."
    assert line.of_intercept("Deltab", "1").plain == "How far up or down the line could start and still fit."
