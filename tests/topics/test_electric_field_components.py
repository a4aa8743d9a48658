"""The net field in a plane answered as two signed components, against numpy's vector sum and as marking reads them."""

import json
import math
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calc import desk
from calc.model.answers import PartShown, WorkedAnswer
from calc.model.questions import Refusal
from calc.topics import find
from calc.working.reading import read
from calc.working.working import work

K = 9e9  # school value
Row = tuple[float, int, int]


def rows(*charges: Row) -> list[dict[str, str]]:
    """Table rows from (nC, cm, cm)."""
    return [{"Q": f"{q!r} nC", "x": f"{x} cm", "y": f"{y} cm"} for q, x, y in charges]


def solve(*charges: Row, answer: str = "both") -> WorkedAnswer:
    """The worked answer for charges around P at the origin."""
    topic, question = find("electric-field.components")
    typed = {"charges": rows(*charges), "x_P": "0 cm", "y_P": "0 cm", "answer": answer}
    return work(topic, question, read(question, typed))


def part(worked: WorkedAnswer, key: str) -> PartShown:
    """One part of a worked answer."""
    return next(shown for shown in worked.parts if shown.key == key)


def vector(*charges: Row) -> np.ndarray:
    """kQr/r³ of every charge, added by numpy (N/C)."""
    places = np.array([(-x / 100, -y / 100) for _, x, y in charges])
    sizes = np.array([q * 1e-9 for q, _, _ in charges])
    return K * (sizes[:, None] * places / np.linalg.norm(places, axis=1)[:, None] ** 3).sum(axis=0)


CHARGE = st.tuples(st.integers(-90, 90).filter(bool).map(lambda n: n / 10), st.integers(-40, 40), st.integers(-40, 40))


@settings(max_examples=40, deadline=None)
@given(st.lists(CHARGE, min_size=1, max_size=5, unique_by=lambda row: row[1:]))
def test_components_equal_a_vector_sum(charges: list[Row]) -> None:
    """Both components have numpy's value and sign, and the words of the sign; so has the angle made of them."""
    assume((0, 0) not in {row[1:] for row in charges})
    assume(any(row[1] for row in charges) and any(row[2] for row in charges))
    wanted = vector(*charges)
    assume(np.all(np.abs(wanted) > 1e-3 * max(np.linalg.norm(vector(row)) for row in charges)))
    worked = solve(*charges)
    for axis, value in zip("xy", wanted, strict=True):
        answer = part(worked, axis).answer
        assert answer is not None
        assert answer.value == pytest.approx(value, rel=1e-6)
        assert answer.direction is not None
        assert answer.direction.key == ("positive" if value > 0 else "negative")
        word = {"x": ("right", "left"), "y": ("upwards", "downwards")}[axis][int(value < 0)]
        assert answer.direction.words.endswith(word)
    net = part(worked, "net").answer
    assert net is not None
    assert net.value == pytest.approx(np.linalg.norm(wanted), rel=1e-6)
    assert net.direction is not None
    assert net.direction.angle == pytest.approx(math.degrees(math.atan2(wanted[1], wanted[0])) % 360)


EXAMPLE = ((5.0, -40, -30), (-6.0, 0, -20))


def test_the_choice_says_whether_size_and_angle_are_asked_too() -> None:
    """Two components are two answers with marks of their own; size and angle come after them if asked."""
    two, all_three = solve(*EXAMPLE, answer="components"), solve(*EXAMPLE)
    assert [shown.key for shown in two.parts] == ["define", "draw", "x", "y"]
    assert [shown.key for shown in all_three.parts] == ["define", "draw", "x", "y", "net"]
    assert [answer.name for answer in all_three.answers] == ["E_x", "E_y", "E_net"]
    assert [part(all_three, key).marks for key in ("x", "y", "net")] == [5, 3, 4]
    assert all_three.unproven == two.unproven == ()


def test_a_component_that_cancels_has_no_direction() -> None:
    """Two equal charges beside P: the parts along x cancel, and zero has no sign."""
    worked = solve((4.0, -30, -40), (4.0, 30, -40))
    answer = part(worked, "x").answer
    assert answer is not None
    assert answer.value == 0
    assert answer.direction is None
    assert worked.unproven == ()


@pytest.mark.parametrize(("place", "along", "other"), [((30, 0), "y", "x"), ((0, 30), "x", "y")])
def test_a_point_on_one_line_with_all_charges_is_refused(place: tuple[int, int], along: str, other: str) -> None:
    """Along one axis nothing is left to ask for."""
    with pytest.raises(Refusal) as refused:
        solve((4.0, *place))
    assert (
        refused.value.sentence
        == f"All the charges and P lie on one line along the {other}-axis, so there is no component along {along}. "
        "Use the net field on a line, or move P off that line."
    )


@pytest.mark.parametrize(
    ("typed", "marks"),
    [
        ({"value": "-1242 N/C"}, 3),
        ({"value": "1242 N/C", "direction": "negative"}, 3),
        ({"value": "1242 N/C", "direction": "positive"}, 2),
    ],
)
def test_a_minus_sign_or_its_words_earn_the_mark_of_a_component(typed: dict[str, str], marks: int) -> None:
    """E_y = −1 242 N/C: the sign typed or said is right; the other sign loses the answer's mark."""
    inputs = {"charges": rows(*EXAMPLE), "x_P": "0 cm", "y_P": "0 cm", "answer": "components"}
    reply: dict[str, Any] = json.loads(
        desk.answer(
            json.dumps(
                {
                    "operation": "mark",
                    "data": {"question": "electric-field.components", "inputs": inputs, "answers": {"y": typed}},
                }
            )
        )
    )
    assert reply["ok"], reply
    found = next(one for one in reply["data"]["parts"] if one["part"] == "y")
    assert found["earned"] == marks
