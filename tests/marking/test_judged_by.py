"""Answers that are judged by their difference from a value beside them: a heard frequency by its shift."""

from dataclasses import replace

import pytest

from calc.language.printing import Style
from calc.marking.learner import read_value
from calc.marking.marking import PartMarked, mark_question
from calc.marking.sentences import sentence_text, sentences
from calc.model.questions import Data, Input, Mistake, Part, Plan, Question
from calc.model.relations import Relation
from calc.working.reading import read

# A beat of two strings: the second lies close to the first, and what counts is by how much.
TUNED = Relation(
    "b = a*(1 + x)",
    what="Raise the first note",
    why="The second string is a little tighter.",
    units={"a": "Hz", "b": "Hz", "x": ""},
    mistakes=(Mistake("below", "b", "a/(1 - x)", "Multiply instead."),),
    judged_by={"b": "a"},
)


def found(value: str, judged: bool = True, first: str = "400 Hz", **more: object) -> PartMarked:
    """The marked part for an answer: right is 1,05 times the first note."""
    law = TUNED if judged else replace(TUNED, judged_by={})

    def plan(data: Data) -> Plan:
        return Plan("Two strings.", (Part("find", "calculate", "Calculate b.", (law.step("b"),)),), dict(data.values))

    fields = (Input("a", "First note", "Hz", 1, 1e5), Input("x", "Share", "", 1e-3, 1))
    typed = {"a": first, "x": "0,05"}
    reading = read(Question("strings", "Strings", fields, plan, typed), typed)
    (part,) = mark_question(plan(reading.data), reading, {"find": {"value": value, **more}})
    return part


@pytest.mark.parametrize(
    ("value", "judged", "state"),
    [
        ("420,15 Hz", True, "right"),
        ("419,81 Hz", True, "right"),
        ("420,3 Hz", True, "not recognised"),
        ("420,3 Hz", False, "right"),
        ("421,05 Hz", True, "mistake"),
        ("421,05 Hz", False, "right"),
        ("424 Hz", False, "right"),
        ("424 Hz", True, "not recognised"),
    ],
)
def test_one_percent_of_the_difference(value: str, judged: bool, state: str) -> None:
    """Within 1 % of the 20 Hz between the notes is right; where the whole size counts, within 1 % of 420 Hz is."""
    assert found(value, judged).state == state


def test_a_correct_rounding_in_which_the_difference_shows_is_right() -> None:
    """167 for 167,213 is a rounding a memo makes; 170 is cut too short; 150 for 150,2 has lost the difference."""
    assert read_value("167 Hz", "Hz").agrees(167.213, 150)
    assert not read_value("170 Hz", "Hz").agrees(167.213, 150)
    assert not read_value("150 Hz", "Hz").agrees(150.2, 150)
    assert read_value("420,03 Hz", "Hz").agrees(420.03035, 420)
    assert not read_value("420,0 Hz", "Hz").agrees(420.03035, 420)
    assert not read_value("420,04 Hz", "Hz").agrees(420.03035, 420)
    assert read_value("170 Hz", "Hz").agrees(168.5)


def test_an_answer_cut_too_short_is_told_so() -> None:
    """Two figures do not show by how much the notes differ: the sentence says what counts and what to give."""
    told = " ".join(map(sentence_text, sentences(found("440 Hz", first="415 Hz"), Style())))
    assert "what counts is how far it lies from a. Give two decimals, as a memo does." in told


def test_a_typed_line_of_numbers_is_judged_in_the_same_way() -> None:
    """A line that gives the value of a mistake is no right substitution, though it is within 1 % of it."""
    lines = {text: found("99 Hz", substitution={"b": text}).marks for text in ("400*(1 + 0,05)", "400/(1 - 0,05)")}
    earned = {text: sum(one.earned for one in marks if one.kind == "substitution") for text, marks in lines.items()}
    assert earned == {"400*(1 + 0,05)": 1, "400/(1 - 0,05)": 0}


def test_another_name_takes_the_declaration_along() -> None:
    """A law between other quantities is judged by the other quantity."""
    assert TUNED.renamed(a="f_1", b="f_2").step("f_2").judged_by == "f_1"
    assert TUNED.step("a").judged_by == ""
