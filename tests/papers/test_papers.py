"""Papers: the same request gives the same paper, marks come as near as they can, learners get their own numbers."""

from __future__ import annotations

import itertools
import json
import random
from typing import Any

import pytest

from calc import desk, topics
from calc.figures import Arrow, Curve, Segment, Sphere
from calc.model.answers import WorkedAnswer
from calc.model.questions import Question, Topic
from calc.papers import papers
from calc.papers.papers import RISING, Paper, Wanted, make, nearest, own_number
from calc.practice.drawing import Drawn, draw

ALL = tuple(topics.topics())


def ask(**data: Any) -> dict[str, Any]:
    """The reply of the desk to a request for a paper."""
    reply: dict[str, Any] = json.loads(desk.answer(json.dumps({"operation": "paper", "data": data})))
    return reply


def made(**wanted: Any) -> Paper:
    """A paper from all topics unless others are named."""
    return make(Wanted(**{"entries": ALL, **wanted}))


@pytest.mark.parametrize("marks", [20, 37, 50, 75, 150])
def test_marks_are_reached_when_they_can_be(marks: int) -> None:
    """From all topics any usual total can be made exactly."""
    assert made(marks=marks, level=2, seed=5).marks == marks


@pytest.mark.parametrize("seed", range(5))
def test_nearest_equals_trying_every_choice(seed: int) -> None:
    """The choice by sums comes as near as the best of all subsets, with and without a count."""
    chance = random.Random(seed)
    worth = [chance.randint(2, 20) for _ in range(9)]
    total = chance.randint(10, 90)
    for count in (None, 3):
        sizes = [count] if count else range(1, len(worth) + 1)
        best = min(abs(total - sum(some)) for size in sizes for some in itertools.combinations(worth, size))
        places = nearest(worth, total, count)
        assert len(set(places)) == len(places)
        assert count in (None, len(places))
        assert abs(total - sum(worth[place] for place in places)) == best


def test_a_count_is_kept_while_marks_are_sought() -> None:
    """With both asked for, the count is exact and the page says how near the marks came."""
    reply = ask(topics=["coulomb"], count=2, marks=100, level=1, seed=3)["data"]
    assert reply["questions"] == 2
    assert (
        reply["said"]
        == f"2 questions, {reply['marks']} marks. You asked for 100 marks; no choice of these questions comes nearer."
    )


def test_the_same_request_gives_the_same_bytes() -> None:
    """Two answers to one request are equal to the last character, in every notation."""
    data = {
        "topics": list(ALL),
        "count": 6,
        "level": 2,
        "seed": 41,
        "heading": "Forces",
        "space": "lined",
        "as": ["paper_html", "memo_html", "markdown", "markdown_memo", "latex", "latex_memo"],
    }
    assert ask(**data) == ask(**data)


def test_another_number_gives_another_paper() -> None:
    """Two seeds differ in questions or numbers."""
    assert made(count=5, seed=1).items != made(count=5, seed=2).items


@pytest.mark.parametrize("level", [1, 2, 3, RISING])
def test_naming_the_questions_gives_the_same_paper(level: int) -> None:
    """The entries a paper reports make it again, without a choice."""
    first = made(count=7, level=level, seed=9)
    again = make(Wanted(first.named, level=level, seed=9))
    assert again.items == first.items


def test_a_question_may_come_again_with_other_numbers() -> None:
    """More questions than there are: copies are drawn anew."""
    paper = make(Wanted(("coulomb.force",), count=3, level=1, seed=4))
    assert len({item.worked.story for item in paper.items}) == 3


def test_rising_papers_rise() -> None:
    """The levels never fall from one question to the next."""
    levels = [item.pick.level for item in made(count=8, level=RISING, seed=2).items]
    assert levels == sorted(levels)
    assert len(set(levels)) > 1


def test_a_first_copy_is_the_practice_question_of_the_same_seed() -> None:
    """A learner can practise a paper's question: practice draws it for the same seed and level."""
    paper = make(Wanted(("coulomb.force",), level=2, seed=3))
    drawn = draw(*topics.find("coulomb.force"), 3, 2)
    assert drawn.find == paper.items[0].worked.asked
    assert paper.items[0].worked.given


def test_only_questions_of_the_level_are_chosen() -> None:
    """A question declared for level 3 only is in no paper of level 1."""
    keys = {item.pick.key for item in make(Wanted(("coulomb",), count=8, level=1)).items}
    assert "coulomb.two-forces" not in keys


@pytest.mark.parametrize("learner", ["Ayşe", "Thabo M", "李"])
def test_learners_get_the_same_questions_and_marks_with_other_numbers(learner: str) -> None:
    """A learner's paper has every question and mark of the common one; its numbers differ."""
    common = made(count=5, level=2, seed=8)
    own = make(Wanted(common.named, level=2, seed=8, own=own_number(8, learner), learner=learner))
    assert own.named == common.named
    assert [item.marks for item in own.items] == [item.marks for item in common.items]
    assert [item.worked.story for item in own.items] != [item.worked.story for item in common.items]


def test_a_name_counts_without_its_capitals_and_spaces() -> None:
    """The same learner typed a little otherwise gets the same paper."""
    assert own_number(5, " Thabo   M") == own_number(5, "thabo m") != own_number(5, "thabo n")


def test_a_learners_number_replaces_the_name() -> None:
    """The reply's ``own`` makes the same questions without the name."""
    named = ask(topics=["coulomb"], count=2, seed=7, learner="Thabo M")["data"]
    by_number = ask(topics=["coulomb"], count=2, seed=7, own=named["own"])["data"]
    assert "Thabo M" in named["paper_html"]
    assert "Thabo" not in by_number["paper_html"]
    assert named["memo_html"].replace(" for Thabo M", "") == by_number["memo_html"]


@pytest.mark.parametrize("key", topics.question_keys())
def test_a_papers_diagram_shows_no_force_and_no_field(key: str) -> None:
    """What a learner has to find or draw is not in the question's own diagram."""
    for level, seed in itertools.product((1, 2, 3), range(3)):
        scene = make(Wanted((key,), level=level, seed=seed)).items[0].scene
        for item in scene.items if scene else ():
            assert not (isinstance(item, Arrow) and item.kind not in ("axis", "velocity"))
            assert not (isinstance(item, Segment | Curve) and item.kind == "fieldline")


@pytest.mark.parametrize("key", ["coulomb.force", "several-charges.right-angle", "electric-field.charge"])
def test_a_diagram_is_kept_when_its_arrows_are_left_out(key: str) -> None:
    """The bodies and distances still stand in the question, described without the forces."""
    scene = make(Wanted((key,), level=1, seed=1)).items[0].scene
    assert scene is not None
    assert any(isinstance(item, Sphere) for item in scene.items)
    assert not any(word in scene.description for word in ("points", "force", "F at"))


def test_the_data_sheet_has_the_constants_in_force() -> None:
    """A changed constant is on the sheet and in the memo."""
    data = {"topics": ["coulomb.force"], "seed": 1, "settings": {"k": "8,99e9"}}
    reply = ask(**data)["data"]
    assert "8,99" in reply["paper_html"]
    assert "<mn>8,99</mn>" in reply["memo_html"]


REFUSED = [
    ({"topics": []}, "topics", "Choose at least one topic."),
    ({"topics": ["<b>"]}, "topics", "This booklet has no topic “<b>”. Choose from the topics on the page."),
    (
        {"topics": ["coulomb.x"]},
        "topics",
        "This booklet has no question “coulomb.x”. Choose from the topics on the page.",
    ),
    ({"topics": ["coulomb.force:9"]}, "topics", "“coulomb.force:9” names no level: the levels are 1, 2 and 3."),
    ({"topics": ["coulomb"], "count": "1e9"}, "count", "Number of questions: a whole number from 1 to 30."),
    ({"topics": ["coulomb"], "marks": "0"}, "marks", "Marks: a whole number from 1 to 300."),
    ({"topics": ["coulomb"], "level": "9"}, "level", "There are three levels, 1, 2 and 3, and “rising”."),
    ({"topics": ["coulomb"], "seed": "-1"}, "seed", "The paper's number: a whole number from 0 to 999999."),
    (
        {"topics": ["coulomb"], "heading": "x" * 121},
        "heading",
        "The heading has 121 characters; at most 120 fit. Shorten it.",
    ),
    ({"topics": ["coulomb"], "space": "wide"}, "space", "Room for answers is one of none, blank, lined."),
    (
        {"topics": ["coulomb"], "as": ["exe"]},
        "as",
        "A paper is given as paper_html, memo_html, markdown, markdown_memo, latex, latex_memo, and nothing else.",
    ),
    (
        {"topics": ["coulomb.force"], "count": 9},
        "count",
        (
            "These topics have 3 questions to choose from at this level, other numbers counted: ask for fewer, or"
            " choose more topics."
        ),
    ),
]


@pytest.mark.parametrize(("data", "field", "sentence"), REFUSED)
def test_what_cannot_be_is_refused_with_a_sentence(data: dict[str, Any], field: str, sentence: str) -> None:
    """Each refusal stands at its field and says what to do."""
    reply = ask(**data)
    assert not reply["ok"]
    assert {"field": field, "message": sentence} in reply["errors"]


def test_the_data_sheet_has_the_forms_of_the_laws() -> None:
    """A paper's data sheet prints each law's formula as declared, once, in plain symbols."""
    reply = ask(
        **{
            "topics": ["coulomb.contact", "electric-field.charge", "coulomb.force"],
            "as": ["markdown"],
        }
    )
    sheet = reply["data"]["markdown"].rsplit("Data sheet", 1)[1]
    for form in (
        r"F = \dfrac{k Q_{1} Q_{2}}{r^{2}}",
        r"n = \dfrac{Q}{e}",
        r"E = \dfrac{k Q}{r^{2}}",
        r"E = \dfrac{F}{q}",
    ):
        assert sheet.count(form) == 1, form


def test_the_common_draw_is_made_once_for_a_class(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each learner's numbers must have the marks of the common paper, which is drawn once, and nothing drawn only for
    its marks is worked to the end."""
    seeds: list[int] = []
    shown: list[str] = []
    first_draw, first_show = papers.draw, papers.show

    def counted_draw(topic: Topic, question: Question, seed: int, level: int, rule: int) -> Drawn:
        seeds.append(seed)
        return first_draw(topic, question, seed, level, rule)

    def counted_show(topic: Topic, question: Question, *rest: Any) -> WorkedAnswer:
        shown.append(question.key)
        return first_show(topic, question, *rest)

    monkeypatch.setattr(papers, "draw", counted_draw)
    monkeypatch.setattr(papers, "show", counted_show)
    papers._marks_kept.cache_clear()
    for own in (11, 12, 13, 14):
        one = make(Wanted(("coulomb.contact", "several-charges.plane"), level=3, seed=77, own=own, rule=4))
        assert len(one.items) == 2
    assert seeds.count(77) == 2
    assert len(shown) == 8
