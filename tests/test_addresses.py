"""Addresses stay true: what a link to a drawn question or paper gave when it was stored, it gives today.

``stored_draws.json`` holds short hashes of draws (data, telling, slips) and papers, and the names links may
hold, in full. An entry is never changed, but where a telling is put into better words: take that question's
entry out, run ``python -m tests.test_addresses``, and see in the difference that only the middle hashes moved.
The same command adds new questions.
"""

from __future__ import annotations

import hashlib
import json
from dataclasses import replace
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from calc import desk, topics
from calc.marking.marking import mark_question
from calc.model.questions import Choice, Data, Mistake, Plan, Question, Rows
from calc.papers.papers import RISING, Item, Wanted, make
from calc.practice.drawing import as_request, offered
from calc.renderings import form, html
from calc.working.reading import read
from calc.working.working import work
from tests.cases import LEVELS, drawn

PATH = Path(__file__).parent / "stored_draws.json"
SEEDS = range(1, 6)
KEYS = topics.question_keys()

# Requests for papers whose questions are named or whose topics were all there when they were stored.
FIRST = ("coulomb", "electric-field", "equilibrium", "several-charges")
PAPERS: dict[str, dict[str, Any]] = {
    "usual": {"entries": FIRST, "seed": 1},
    "one topic": {"entries": ("coulomb",), "count": 3, "seed": 2, "level": 2},
    "marks": {"entries": ("several-charges", "equilibrium"), "marks": 40, "seed": 3, "level": 3},
    "rising": {"entries": FIRST, "count": 5, "seed": 4, "level": RISING},
    "named": {"entries": ("coulomb.force", "coulomb.contact:3", "electric-field.plates:2"), "seed": 5},
    "copies": {"entries": ("coulomb.electrons",), "count": 3, "seed": 6},
    "a learner's": {"entries": ("coulomb", "electric-field"), "count": 3, "seed": 7, "own": 123_456},
    "count and marks": {"entries": FIRST, "count": 4, "marks": 50, "seed": 8, "level": 2},
}


STORED_RULE = 5  # the newest rule of drawing of what is stored
STORED: dict[str, Any] = (
    json.loads(PATH.read_text(encoding="utf-8")) if PATH.exists() else {"draws": {}, "names": {}, "papers": {}}
)


def short(value: object) -> str:
    """Eight digits of a hash of canonical JSON."""
    text = json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    return hashlib.sha256(text.encode()).hexdigest()[:8]


def draw_now(key: str, level: int, seed: int) -> dict[str, Any]:
    """What a practice address gives: the request, the story told, and the slips it can be marked with."""
    one = drawn(key, seed, level)
    _, question = topics.find(key)
    plan = question.plan(read(question, one.inputs, one.find, variant=one.variant).data)
    known = (*plan.mistakes, *(m for s in plan.steps for m in s.mistakes))
    slips = [f"{m.key}@{m.at}" for m in known if m.since <= STORED_RULE]  # marking may have learnt more since
    return {
        "request": {
            **as_request(one),
            "inputs": as_stored(key, one.inputs),
            "near": list(one.near),
            "apart": one.apart,
        },
        "story": [plan.story, *(part.key for part in plan.parts)],
        "slips": sorted(slips),
    }


def as_stored(key: str, inputs: dict[str, object]) -> dict[str, object]:
    """The data of the boxes that there were when the draw was stored; what came later is empty, or picked first."""
    if key not in STORED["names"]:
        return inputs
    names = STORED["names"][key]
    known = {*names["boxes"], *(name.partition(".")[0] for name in names["boxes"])}
    known |= {name.partition("=")[0] for name in names["choices"]}
    for item in topics.find(key)[1].fields:
        if item.name not in known:
            first = item.options[0][0] if isinstance(item, Choice) else ""
            assert inputs.get(item.name, "") in ("", first), item.name
    return {name: text for name, text in inputs.items() if name in known}


def hashes(key: str, level: int, seed: int) -> str:
    """A draw as ``data story slips``, each as a short hash."""
    return " ".join(short(part) for part in draw_now(key, level, seed).values())


def names_now(key: str) -> dict[str, list[str]]:
    """The names that links, papers and saved progress hold for the draws of a question: boxes, choices, parts,
    slips."""
    _, question = topics.find(key)
    boxes, choices, parts, slips = [], [], set(), set()
    for item in question.fields:
        boxes.append(item.name)
        if isinstance(item, Choice):
            # what can never be found keeps its name too: a link to it opens with the reason
            choices += [f"{item.name}={option}" for option, *_ in (*item.options, *item.never)]
        elif isinstance(item, Rows):
            boxes += [f"{item.name}.{column.name}" for column in item.columns]
    for level in LEVELS:
        for seed in SEEDS:
            one = drawn(key, seed, level)
            plan = question.plan(read(question, one.inputs, one.find, variant=one.variant).data)
            parts |= {part.key for part in plan.parts}
            slips |= {m.key for m in (*plan.mistakes, *(m for s in plan.steps for m in s.mistakes))}
    return {"boxes": boxes, "choices": choices, "parts": sorted(parts), "slips": sorted(slips)}


def paper_now(name: str) -> list[str]:
    """A paper as one line an item: question, level, and hashes of its story and of its data."""
    return [
        f"{item.pick.key}:{item.pick.level} {short([item.worked.story, *(p.key for p in item.worked.parts)])} "
        f"{short([*sought(item), *([given.name, given.typed] for given in item.worked.given)])} {item.marks}"
        for item in make(Wanted(**PAPERS[name])).items
    ]


def sought(item: Item) -> list[list[str]]:
    """What is to be found, where a choice says it: papers were stored when it stood first among the data."""
    _, question = topics.find(item.pick.key)
    found = [answer.name for answer in item.worked.answers]
    return [
        [field.name, dict(field.options)[found[-1]]]
        for field in question.fields
        if isinstance(field, Choice) and field.finds
    ]


@pytest.mark.parametrize("key", STORED["draws"])
def test_a_practice_address_gives_what_it_gave(key: str) -> None:
    """Data, telling and slips of each stored draw are those of the day it was stored."""
    now = {str(level): ", ".join(hashes(key, level, seed) for seed in SEEDS) for level in LEVELS}
    assert now == STORED["draws"][key]


@pytest.mark.parametrize("key", STORED["names"])
def test_no_name_that_a_link_may_hold_is_lost(key: str) -> None:
    """Boxes, choices, parts and slips keep their names; new ones may come."""
    now = names_now(key)
    for kind, names in STORED["names"][key].items():
        assert set(names) <= set(now[kind]), kind


@pytest.mark.parametrize("name", PAPERS)
def test_a_paper_address_gives_what_it_gave(name: str) -> None:
    """Questions, their order, stories, data and marks of each stored paper are those of the day it was stored."""
    assert paper_now(name) == STORED["papers"][name]


def test_every_question_is_stored() -> None:
    """A new question's draws are stored with it (see the head of this file)."""
    assert set(STORED["draws"]) == set(STORED["names"]) >= set(KEYS)


def store() -> None:
    """Add what is not stored yet; change nothing that is."""
    for key in KEYS:
        if key not in STORED["draws"]:
            STORED["draws"][key] = {
                str(level): ", ".join(hashes(key, level, seed) for seed in SEEDS) for level in LEVELS
            }
            STORED["names"][key] = names_now(key)
    for name in PAPERS:
        STORED["papers"].setdefault(name, paper_now(name))
    PATH.write_text(json.dumps(STORED, ensure_ascii=False, indent=0) + "\n", encoding="utf-8")


if __name__ == "__main__":
    store()


# The questions of the first rule of drawing: what an address without a draw number chooses from.
FIRST_QUESTIONS = {
    "coulomb": ("force", "contact", "electrons", "scaling", "two-forces"),
    "electric-field": (
        "charge",
        "force",
        "particle",
        "line",
        "plane",
        "null",
        "pattern",
        "plates",
        "drop",
        "drop-charge",
        "museum-domes",
        "paint-drop",
    ),
    "equilibrium": (
        "slope",
        "vertical",
        "threads",
        "museum-ramp",
        "stage-slope",
        "sensor-chute",
        "hovering-ball",
        "foil-balls",
        "barn-traps",
    ),
    "several-charges": ("line", "right-angle", "components", "plane", "third", "balance", "places", "rail", "pucks"),
}


@pytest.mark.parametrize("topic", FIRST_QUESTIONS)
def test_an_address_without_a_draw_number_knows_the_first_questions(topic: str) -> None:
    """A topic's list of the first rule holds what it held, in its order, however many questions came since."""
    assert tuple(q.key for q in offered(topics.topics()[topic], 1)) == FIRST_QUESTIONS[topic]


@pytest.mark.parametrize(("rule", "first"), [(1, ("join",)), (2, ("join",)), (3, ("join",))])
def test_a_younger_topic_offers_what_it_began_with(rule: int, first: tuple[str, ...]) -> None:
    """A topic younger than the rule of an address chooses from the questions it began with, not from later ones."""
    momentum = topics.topics()["momentum"]
    assert tuple(question.key for question in offered(momentum, rule)) == first
    assert len(offered(momentum, 4)) > len(first)


def test_every_address_of_a_drawn_question_carries_its_rule() -> None:
    """The reply names the rule; a rule still to come is refused with a sentence."""
    for rule, data in ((1, {}), (1, {"draw": "1"}), (2, {"draw": 2}), (3, {"draw": 3})):
        reply = asked("practice", {"question": "coulomb", "seed": 5, "level": 2, **data})
        assert reply["data"]["draw"] == rule
    reply = asked("practice", {"question": "coulomb", "seed": 5, "level": 2, "draw": 99})
    assert reply["errors"][0]["message"] == "This link was made by a newer booklet. Pick a question from the list."


def asked(operation: str, data: dict[str, Any]) -> dict[str, Any]:
    """The reply of the desk."""
    reply: dict[str, Any] = json.loads(desk.answer(json.dumps({"operation": operation, "data": data})))
    return reply


def test_former_names_are_read() -> None:
    """A renamed box or choice is found under the name an old address has."""
    question = replace(
        topics.find("coulomb.force")[1],
        fields=tuple(
            (
                replace(item, former=("apart",))
                if item.name == "r"
                else replace(item, former=("kind",), renamed=(("pull", "attract"),))
                if item.name == "acting"
                else item
            )
            for item in topics.find("coulomb.force")[1].fields
        ),
    )
    found = read(question, {"Q2": "2 nC", "apart": "3 cm", "F": "1 mN", "kind": "pull"}, "Q1")
    assert found.data.values["r"] == pytest.approx(0.03)
    assert found.data.choices["acting"] == "attract"
    assert read(question, {"Q1": "1 nC", "Q2": "2 nC", "F": "1 mN"}, "apart").data.asked == "r"


def test_former_names_stand_in_the_form() -> None:
    """The page learns of former names from the form it fills."""
    _, question = topics.find("coulomb.force")
    renamed = replace(
        question,
        former=("pair",),
        fields=tuple(replace(i, former=("apart",)) if i.name == "r" else i for i in question.fields),
    )
    page = form.render("coulomb.force", renamed, question.example)
    assert 'data-question="coulomb.force" data-former="pair"' in page
    assert 'data-field="r" data-former="apart"' in page


def with_former(question: Question, part: str, mistake: str) -> Question:
    """The question with a former key for each of its parts and each mistake."""

    def plan(data: Data) -> Plan:
        made = question.plan(data)
        parts = tuple(
            replace(
                one,
                former=(part,) if one.key == "find" else (),
                steps=tuple(
                    replace(s, mistakes=tuple(replace(m, former=(mistake,)) for m in s.mistakes)) for s in one.steps
                ),
            )
            for one in made.parts
        )
        return replace(made, parts=parts)

    return replace(question, plan=plan)


def test_a_renamed_part_is_found_by_links_and_answers() -> None:
    """The page learns a part's former keys, and an answer kept under one is marked as if under the new."""
    topic, question = topics.find("coulomb.force")
    renamed = with_former(question, "distance", "old")
    found = read(renamed, {"Q1": "8 nC", "Q2": "-5 nC", "F": "25 µN"}, "r")
    page = html.render(work(topic, renamed, found))
    assert 'data-part="find" data-former="distance"' in page
    assert 'data-part="state">' in page
    plan = renamed.plan(found.data)
    old, new = (mark_question(plan, found, {key: {"value": "0,12 m"}})[-1] for key in ("distance", "find"))
    assert (old.state, old.marks) == (new.state, new.marks)
    assert old.earned > 0


@pytest.mark.parametrize("kept", ["root-omitted@r", "old@r", "gone@r"])
def test_a_renamed_mistake_is_still_told(kept: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Progress kept on a device under a former key tells the mistake's sentence; an unknown key tells none."""
    topic, question = topics.find("coulomb.force")
    question = replace(question, example={"Q1": "8 nC", "Q2": "-5 nC", "F": "25 µN", "r": ""})
    renamed = with_former(question, "distance", "old")
    monkeypatch.setattr(topics, "find", lambda key: (topic, renamed))
    tried = {"day": "2026-03-02", "level": 1, "earned": 1, "possible": 3, "mistakes": [kept]}
    reply = asked("revision", {"today": "2026-03-09", "history": {"coulomb.force": [tried]}})["data"]
    told = [m.said for s in renamed.plan(read(renamed, question.example).data).steps for m in s.mistakes]
    assert any(say in unescape(reply["html"]) for say in told) == (kept != "gone@r")


def test_a_mistake_that_moved_names_its_old_place() -> None:
    """A former key may say where the mistake stood; else it is taken to have stood where it stands."""
    assert Mistake("new", "F", "k", "So.", former=("old", "older@E")).names == ("new@F", "old@F", "older@E")


def test_progress_of_a_renamed_question_counts_for_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """Tries kept under both names are those of one question."""
    topic, question = topics.find("coulomb.force")
    renamed, first = replace(question, former=("pair",)), topics.find
    monkeypatch.setattr(
        topics, "find", lambda k: (topic, renamed) if k in ("coulomb.pair", "coulomb.force") else first(k)
    )
    tried = {"day": "2026-03-02", "level": 1, "earned": 3, "possible": 3, "mistakes": []}
    reply = asked("revision", {"today": "2026-03-09", "history": {"coulomb.pair": [tried], "coulomb.gone": [tried]}})
    assert reply["data"]["next"]["question"] == "coulomb.force"
    assert reply["data"]["due"] == 1
