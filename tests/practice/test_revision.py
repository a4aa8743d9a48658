"""The revision rule: five boxes, gaps that double, one step a day."""

from __future__ import annotations

import json
from datetime import date, timedelta
from typing import Any

import pytest

from calc import desk
from calc.practice.revision import GAPS, Attempt, box_of, next_level, revise

START = date(2026, 3, 2)


def tries(*lines: tuple[int, int]) -> list[Attempt]:
    """Attempts from (day number, marks out of 10), level 1."""
    return [Attempt(START + timedelta(days=day), 1, earned, 10) for day, earned in lines]


@pytest.mark.parametrize(
    ("lines", "box"),
    [
        ([], 1),
        ([(0, 10)], 2),
        ([(0, 10), (2, 9), (6, 8)], 4),
        ([(0, 10), (2, 9), (6, 7)], 1),
        ([(0, 10), (0, 10), (0, 10)], 2),
        ([(0, 10), (0, 2), (0, 10)], 1),
        ([(0, 2), (0, 10)], 2),
        ([(d, 10) for d in range(9)], 5),
    ],
)
def test_the_box_after_some_tries(lines: list[tuple[int, int]], box: int) -> None:
    """Done well moves one box on, at most once a day; done badly goes back to the first; the fifth is the last."""
    assert box_of(tries(*lines)) == box


def test_the_gaps_double() -> None:
    """A question done well every time it is due rests 2, 4, 8, 16 and again 16 days."""
    day, history, rests = START, list[Attempt](), []
    for _ in range(5):
        history.append(Attempt(day, 1, 5, 5))
        (line,) = revise({"coulomb.force": history}, day)
        rests.append((line.due - day).days)
        day = line.due
    assert rests == [2, 4, 8, 16, 16]
    assert GAPS == (1, 2, 4, 8, 16)


def test_a_missed_question_is_due_tomorrow() -> None:
    """Done badly, it comes back the next day, however far it had come."""
    history = tries(*[(d, 10) for d in range(6)], (10, 3))
    (line,) = revise({"a.b": history}, START + timedelta(days=10))
    assert (line.box, line.late) == (1, -1)


def test_the_most_overdue_comes_first() -> None:
    """The list runs from most overdue to longest rest; ties go to the lower box, then by name."""
    history = {
        "x.late": tries((0, 1)),
        "x.rests": tries((0, 10), (2, 10), (6, 10), (14, 10)),
        "x.b": tries((18, 2)),
        "x.a": tries((18, 2)),
        "x.box2": tries((17, 10)),
        "x.none": [],
    }
    order = [line.question for line in revise(history, START + timedelta(days=19))]
    assert order == ["x.late", "x.a", "x.b", "x.box2", "x.rests"]


def test_days_may_come_in_any_order() -> None:
    """Attempts read from two files are sorted by day before the rule is applied."""
    first, last = tries((0, 10)), tries((5, 1))
    today = START + timedelta(days=6)
    assert revise({"a.b": last + first}, today) == revise({"a.b": first + last}, today)


def test_a_day_to_come_is_a_wrong_clock() -> None:
    """A try dated after tomorrow counts as older than any dated one; with nothing else, the question is due now."""
    today = START + timedelta(days=6)
    wrong = Attempt(date(2099, 1, 1), 1, 10, 10)
    (only,) = revise({"a.b": [wrong]}, today)
    assert (only.box, only.due, only.late, only.last) == (2, today, 0, wrong)
    (line,) = revise({"a.b": [wrong, *tries((5, 1))]}, today)
    assert (line.box, line.late, line.last.earned) == (1, 0, 1)
    assert revise({"a.b": [*tries((5, 1)), wrong]}, today) == (line,)


def test_tomorrow_may_have_begun_elsewhere() -> None:
    """A try dated tomorrow, from a device east of here, is taken at its word."""
    (line,) = revise({"a.b": tries((7, 10))}, START + timedelta(days=6))
    assert line.late == -3


@pytest.mark.parametrize("today", ["2026-03-09", "9999-12-31", "0001-01-01"])
@pytest.mark.parametrize("day", ["9999-12-31", "0001-01-01"])
def test_the_ends_of_the_calendar_make_a_list(today: str, day: str) -> None:
    """The first and the last day there are block neither the question nor the others."""
    reply = ask(
        today=today,
        history={"coulomb.force": [entry(day=day)], "coulomb.contact": [entry()]},
    )
    assert reply["ok"]
    assert reply["data"]["html"].count('<th scope="row">') == 2


@pytest.mark.parametrize(
    ("levels", "level"),
    [
        ([(1, 10)], 1),
        ([(1, 10), (1, 10)], 2),
        ([(2, 10), (2, 9)], 3),
        ([(3, 10), (3, 10)], 3),
        ([(1, 10), (2, 10)], 2),
        ([(2, 1), (2, 2)], 1),
        ([(1, 1), (1, 2)], 1),
        ([(2, 10), (2, 2)], 2),
    ],
)
def test_the_level_to_try_next(levels: list[tuple[int, int]], level: int) -> None:
    """Two good tries at a level lead one up, two bad ones one down."""
    attempts = [Attempt(START, at, earned, 10) for at, earned in levels]
    assert next_level(attempts) == level


def ask(**data: Any) -> dict[str, Any]:
    """A revision request through the one boundary."""
    reply: dict[str, Any] = json.loads(desk.answer(json.dumps({"operation": "revision", "data": data})))
    return reply


def entry(**changed: Any) -> dict[str, Any]:
    """One attempt as the page sends it."""
    return {"day": "2026-03-01", "level": 1, "earned": 1, "possible": 5, "mistakes": []} | changed


def test_the_page_gets_a_list_and_the_next_question() -> None:
    """What is overdue is offered first, with the sentence about the last mistake."""
    reply = ask(today="2026-03-09", history={"coulomb.force": [entry(mistakes=["not-squared@F"])]})
    data = reply["data"]
    assert data["next"] == {"question": "coulomb.force", "level": 1}
    assert data["due"] == 1
    assert "now, 7 days late" in data["html"]
    assert "The force falls with the square of the distance" in data["html"]


def test_nothing_due_offers_something_new() -> None:
    """When every tried question rests, one of the same topic not tried yet is offered."""
    data = ask(today="2026-03-01", history={"coulomb.force": [entry()]})["data"]
    assert data["due"] == 0
    assert data["next"]["question"].startswith("coulomb.")
    assert data["next"]["question"] != "coulomb.force"


def test_an_empty_history_offers_a_first_question() -> None:
    """Without progress there is still a question to begin with."""
    data = ask(today="2026-03-01", history={})["data"]
    assert data["next"]["level"] == 1
    assert "Nothing has been marked" in data["html"]


def test_questions_the_booklet_does_not_have_are_left_out() -> None:
    """A file from another version does no harm, and its names are not shown."""
    data = ask(today="2026-03-01", history={"old.<b>gone": [entry()]})["data"]
    assert "gone" not in data["html"]


@pytest.mark.parametrize(
    "bad",
    [
        entry(earned=9),
        entry(earned="5"),
        entry(level=7),
        entry(mistakes="no list"),
        "text",
        None,
    ],
)
def test_damaged_progress_gets_a_sentence(bad: object) -> None:
    """No damaged entry is guessed at."""
    reply = ask(today="2026-03-09", history={"coulomb.force": [bad]})
    assert reply["errors"][0]["message"].startswith("The progress kept on this device cannot be read")


def test_a_day_that_is_none_gets_a_sentence() -> None:
    """The 31st of February is refused by name."""
    reply = ask(today="2026-02-31", history={})
    assert reply["errors"][0]["message"] == "'2026-02-31' is not a day. A day is written like 2026-03-09."
