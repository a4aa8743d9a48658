"""Which boxes a form shows for what is to be found: enough to find it, and no more than it takes."""

import json
import math
from collections.abc import Iterator
from itertools import product

import pytest

from calc import desk
from calc.language.units import parse_unit
from calc.model.questions import Choice, Input, Question, Rows, Worded
from calc.topics import find, question_keys, topics
from calc.working.reading import read
from calc.working.working import work
from tests import cases

KEYS = question_keys()
Inputs = dict[str, object]


def shown(key: str, asked: str = "", **typed: object) -> list[str]:
    """The boxes of a form, as a page gets them."""
    data = {"question": key, "inputs": typed, "find": asked}
    reply = json.loads(desk.answer(json.dumps({"operation": "boxes", "data": data})))
    assert reply["ok"]
    return list(reply["data"]["boxes"])


def solved(key: str, asked: str, inputs: Inputs) -> dict[str, object]:
    """The reply of the desk to a form."""
    request = {"operation": "solve", "data": {"question": key, "inputs": inputs, "find": asked, "as": ["text"]}}
    return dict(json.loads(desk.answer(json.dumps(request))))


def wanted(question: Question) -> Iterator[tuple[str, Inputs]]:
    """All that a form can be asked: the unknown, and the choices that say what is to be found."""
    picks = [one for one in question.fields if isinstance(one, Choice) and one.finds]
    for unknown in question.unknowns or ("",):
        for pick in picks:
            rows = len(question.example[pick.counts]) if pick.counts else len(pick.options)  # type: ignore[arg-type]
            yield from ((unknown, {pick.name: key}) for key, _ in pick.options[:rows])
        if not picks:
            yield unknown, {}


ASKED = [(key, unknown, picked) for key in KEYS for unknown, picked in wanted(find(key)[1])]


def named(case: object) -> str:
    """A case in the name of its test."""
    return ",".join(case.values()) if isinstance(case, dict) else str(case)


def example(question: Question) -> tuple[str, Inputs]:
    """What the page's example asks and holds, what it finds put into its box too."""
    inputs = dict(question.example)
    reply = solved(_key(question), "", inputs)
    asked = str(reply["data"]["asked"]) if reply["ok"] else ""  # type: ignore[index]
    return asked, inputs


def _key(question: Question) -> str:
    return next(key for key in KEYS if find(key)[1] is question)


@pytest.mark.parametrize("key", KEYS)
def test_the_example_needs_no_other_box(key: str) -> None:
    """What the page's example holds stands in boxes that are shown, and these alone give its answer."""
    question = find(key)[1]
    asked, inputs = example(question)
    names = shown(key, asked)
    filled = {one.name for one in question.fields if isinstance(one, Input) and str(inputs.get(one.name) or "").strip()}
    assert filled <= set(names)
    alone = {name: entry for name, entry in inputs.items() if name in names}
    assert solved(key, asked, alone)["data"] == solved(key, asked, inputs)["data"]


def likely(question: Question, item: Input) -> list[str]:
    """Numbers a learner may have for a box: the example's, then those that practice draws."""
    drawn = question.draws.get(item.name)
    values = [v if isinstance(v, str) else f"{v} {drawn.unit}" for v in drawn.values] if drawn else []
    return [str(question.example.get(item.name) or ""), *values]


@pytest.mark.parametrize(("key", "asked", "picked"), ASKED, ids=named)
def test_the_boxes_shown_are_enough(key: str, asked: str, picked: Inputs) -> None:
    """For whatever may be asked, some numbers in the boxes shown, and nothing in any other, give an answer."""
    question = find(key)[1]
    names = shown(key, asked, **picked)
    fields = [one for one in question.fields if one.name in names]
    tables: Inputs = {one.name: question.example[one.name] for one in fields if isinstance(one, Rows | Worded)}
    for inputs in numbers(question, fields):
        if solved(key, asked, {**tables, **inputs, **picked})["ok"]:
            return
    pytest.fail(f"{key} asked for {asked or picked}: nothing in {names} gives an answer")


def numbers(question: Question, fields: list[object]) -> Iterator[Inputs]:
    """The example's numbers and choices, then worked and drawn ones, then each choice in turn."""
    boxes = [one for one in fields if isinstance(one, Input)]
    choices = [one for one in fields if isinstance(one, Choice)]
    picked: Inputs = {one.name: question.example.get(one.name) or one.options[0][0] for one in choices}
    known = found_by_the_example(question)
    names = [one.name for one in choices if not one.by_drawing]
    for keys in product(*([key for key, _ in one.options] for one in choices if not one.by_drawing)):
        for turn in range(4):
            values = {
                one.name: known.get(one.name)
                or one_of(likely(question, one), turn)
                or f"{(one.low * one.high) ** 0.5} "
                for one in boxes
            }
            yield {**picked, **dict(zip(names, keys, strict=True)), **values}


def one_of(values: list[str], turn: int) -> str:
    """One of the values that are there, another each turn; '' of none."""
    real = [value for value in values if value.strip()]
    return real[turn % len(real)] if real else ""


def found_by_the_example(question: Question) -> dict[str, str]:
    """The example's numbers, and as a number in SI what it finds."""
    known = {name: text for name, text in question.example.items() if isinstance(text, str) and text.strip()}
    topic = next(one for one in topics().values() if question in one.questions)
    worked = work(topic, question, read(question, question.example))
    for part in worked.parts:
        for answer in part.answers:
            item = next((one for one in question.fields if one.name == answer.name), None)
            if isinstance(item, Input) and answer.name not in known:
                known[answer.name] = in_si(item, worked.values[answer.name])
    return known


def in_si(item: Input, value: float) -> str:
    """A value as it may be typed in SI."""
    if item.unit == "°":
        return f"{math.degrees(value)}°"
    size = value if item.signed else abs(value)
    number = str(round(size) if item.whole else size)
    return f"{number} {parse_unit(item.unit).si().text}" if item.unit else number


@pytest.mark.parametrize(("key", "asked", "picked"), ASKED, ids=named)
def test_no_box_asks_for_what_is_to_be_found(key: str, asked: str, picked: Inputs) -> None:
    """What is asked is not among the boxes, and the boxes stand in the order of the form, each once."""
    question = find(key)[1]
    names = shown(key, asked, **picked)
    order = [one.name for one in question.fields]
    assert names == sorted(set(names), key=order.index)
    assert not set(asked.split(",")) & set(names)
    assert not {str(entry) for entry in picked.values()} & {one.name for one in question.fields if one.name in names}


@pytest.mark.parametrize("key", KEYS)
def test_a_box_that_is_filled_is_shown(key: str) -> None:
    """Whatever set of numbers a drawn question or a link brings, the boxes it fills are on view."""
    _, question = find(key)
    for level in (1, 2, 3):
        drawn = cases.drawn(key, 1, level)
        names = shown(key, drawn.find, **drawn.inputs)
        filled = {name for name, text in drawn.inputs.items() if isinstance(text, str) and text.strip()}
        assert {name for name in filled if isinstance(question.find(name), Input)} <= set(names)


def test_most_boxes_of_a_long_form_stand_behind() -> None:
    """On a slope the normal force takes a mass and an angle; no charge, no distance, no force stands in the way."""
    names = shown("equilibrium.slope", want="N")
    assert [name for name in names if isinstance(find("equilibrium.slope")[1].find(name), Input)] == ["m", "theta"]


def test_a_choice_rules_boxes_out() -> None:
    """The charge and the mass of an electron are on the data sheet: no box asks for them."""
    body = shown("electric-field.released", "v")
    electron = shown("electric-field.released", "v", particle="electron")
    assert {"q", "m"} <= set(body)
    assert not {"q", "m"} & set(electron)


def test_a_choice_that_decides_comes_with_its_box() -> None:
    """Whether electrons are too many or too few is asked once they are counted."""
    counted = {"want": "F_E", "n": "5 x 10^11", "Q2": "+50 nC", "r": "3 cm"}
    assert "which" not in shown("equilibrium.slope", want="F_E")
    assert "which" in shown("equilibrium.slope", **counted, m="25 g", theta="35°")


def test_two_unknowns_share_their_boxes() -> None:
    """Speed and time of what is released: the boxes of both, none of them an unknown."""
    names = shown("electric-field.released", "t,v")
    assert names == ["V", "d", "particle", "q", "m", "s", "along"]


def test_a_former_name_is_understood() -> None:
    """An address made before a box was renamed asks for the same."""
    renamed = [(key, one) for key in KEYS for one in find(key)[1].fields if isinstance(one, Input) and one.former]
    for key, one in renamed:
        if one.name in find(key)[1].unknowns:
            assert shown(key, one.former[0]) == shown(key, one.name)
