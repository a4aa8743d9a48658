"""Hints: one for each line of the working, in order, and never the answer."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from calc import topics
from calc.language.printing import rounded
from calc.model.constants import Settings
from calc.model.questions import Part, Plan
from calc.practice.drawing import DRAWS
from calc.practice.hints import Hint, hints, holds_number
from calc.working.reading import Read, read
from calc.working.working import direction, run
from tests import cases
from tests.strategies import examples

KEYS = topics.question_keys()


def told(key: str, seed: int, level: int) -> tuple[Read, Plan, dict[str, tuple[Hint, ...]]]:
    """A drawn question with its hints."""
    topic, question = topics.find(key)
    one = cases.drawn(key, seed, level)
    found = read(question, one.inputs, one.find, variant=one.variant)
    plan = question.plan(found.data)
    return found, plan, hints(topic, question, found, plan)


def plain(words: str) -> str:
    """Words with every space an ordinary one."""
    return words.replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize("key", KEYS)
def test_no_hint_holds_the_digits_of_an_answer(key: str) -> None:
    """The number of no answer, as printed, stands in any hint of any part."""
    for level in (1, 2, 3):
        found, plan, given = told(key, level, level)
        values = run(plan, Settings().constants())
        for part in plan.parts:
            if part.kind != "calculate":
                continue
            unit = next(step.unit for step in plan.steps if step.makes == part.answers)
            value = values[part.answers] * (57.29577951308232 if unit == "°" else 1)
            digits = plain(rounded(abs(value)).text)
            for several in given.values():
                for hint in several:
                    assert not re.search(rf"(?<![\d,]){re.escape(digits)}(?![\d⁰¹²³⁴⁵⁶⁷⁸⁹])", plain(hint.text))
        assert found.data.asked not in plan.values


@pytest.mark.parametrize("key", KEYS)
def test_every_part_has_hints(key: str) -> None:
    """No part leaves a learner alone, and hints of words come before those with numbers."""
    _, plan, given = told(key, 1, 1)
    assert list(given) == [part.key for part in plan.parts]
    for part in plan.parts:
        kinds = [hint.kind for hint in given[part.key]]
        assert kinds
        if part.kind == "calculate":
            assert kinds[0] == "words"
            assert kinds.index("formula") == 1
        else:
            assert set(kinds) == {"points"}


def test_hints_open_in_the_order_of_the_working() -> None:
    """For a distance: the law in words, the formula, the data put in but one, with r open, then r made the subject."""
    topic, question = topics.find("coulomb.force")
    found = read(question, {"Q1": "8 nC", "Q2": "-5 nC", "F": "25 µN"}, "r")
    plan = question.plan(found.data)
    several = hints(topic, question, found, plan)["find"]
    assert [hint.kind for hint in several] == ["words", "formula", "numbers", "algebra"]
    assert "directly proportional to the product of the magnitudes of the charges" in several[0].words
    assert several[1].lines[0].text == "F = kQ₁Q₂/r²"
    assert several[2].lines[0].text.replace("\N{NO-BREAK SPACE}", " ") == "2,5 × 10⁻⁵ = (9 × 10⁹)(8 × 10⁻⁹)(▢)/r²"
    assert several[2].words.endswith("The box ▢ is left for you: Q₂ goes there.")
    assert several[3].lines[-1].text.startswith("r = √")


@pytest.mark.parametrize("key", KEYS)
def test_a_substitution_leaves_one_number_to_the_learner(key: str) -> None:
    """A formula with two or more numbers put in has exactly one name left as a gap, and the words say which."""
    seen = 0
    for several in told(key, 2, 2)[2].values():
        for hint in several:
            if hint.kind != "numbers":
                assert "▢" not in hint.text
            elif "▢" in hint.text:
                assert "▢" in hint.lines[0].text
                assert re.search(r"The box ▢ is left for you: \S+( \S+)? goes there\.$", hint.words)
                seen += 1
    put_in = [h.lines[0].text for several in told(key, 2, 2)[2].values() for h in several if h.kind == "numbers"]
    assert seen or all(len(re.findall(r"\d+(?:,\d+)?", line)) < 2 for line in put_in)


def test_an_earlier_answer_stays_a_symbol() -> None:
    """A later part's hint does not give away what an earlier part asks."""
    topic, question = topics.find("coulomb.contact")
    found = read(question, question.example)
    plan = question.plan(found.data)
    after = hints(topic, question, found, plan)["after"]
    numbers = next(hint for hint in after if hint.kind == "numbers")
    assert "Q_new" in numbers.lines[0].text


@pytest.mark.parametrize(
    ("words", "number", "there"),
    [
        ("F = 1,68 × 10⁻⁵ N", "1,68 × 10⁻⁵", True),
        ("F = 1,68 × 10⁻⁵ N", "1,68 × 10⁻", False),
        ("F = 1,68\N{NO-BREAK SPACE}× 10⁻⁵ N", "1,68 ×\N{NO-BREAK SPACE}10⁻⁵", True),
        ("r = 0,154 m", "0,15", False),
        ("r = 10,15 m", "0,15", False),
        ("r = 0,15 m", "0,15", True),
        ("it is 0,15, about", "0,15", True),
    ],
)
def test_a_number_is_found_whole(words: str, number: str, there: bool) -> None:
    """A piece of a longer number is no match."""
    assert holds_number(words, number) is there


def test_a_hint_that_would_tell_is_left_out() -> None:
    """Where a datum prints like an answer, the line that shows it is dropped rather than the rule."""
    topic, question = topics.find("coulomb.scaling")
    found = read(question, {"F": "2,25 N", "a": "1", "b": "4", "d": "2"})
    plan = question.plan(found.data)
    assert all("2,25" not in hint.text for several in hints(topic, question, found, plan).values() for hint in several)


def reworded(plan: Plan, **changes: object) -> Plan:
    """The plan with every step changed so."""
    parts = tuple(replace(p, steps=tuple(replace(s, **changes) for s in p.steps)) for p in plan.parts)  # type: ignore[arg-type]
    return replace(plan, parts=parts)


def test_a_hint_tells_the_law_that_its_step_names() -> None:
    """The law in words hangs on the step's reference, not on what its sentences happen to say."""
    topic, question = topics.find("coulomb.force")
    found = read(question, {"Q1": "8 nC", "Q2": "-5 nC", "F": "25 µN"}, "r")
    plan, law = question.plan(found.data), topic.law("Coulomb's law")
    other = reworded(plan, what="Find it", why="So it is.")
    assert law.words in hints(topic, question, found, other)["find"][0].words
    silent = reworded(plan, quotes=(), why="By Coulomb's law.")
    assert law.words not in hints(topic, question, found, silent)["find"][0].words


@pytest.mark.parametrize("key", KEYS)
def test_every_law_a_step_names_belongs_to_its_question(key: str) -> None:
    """A reference leads to a law that the question quotes."""
    for level in (1, 3):
        for step in told(key, 2, level)[1].steps:
            assert set(step.quotes) <= set(topics.find(key)[1].laws), step.law


# Words that say a direction or a sign, in pairs: one alone tells which, both together tell neither.
OPPOSED = (
    ({"left"}, {"right"}),
    ({"up", "upwards", "upward"}, {"down", "downwards", "downward"}),
    ({"above"}, {"below"}),
    ({"attract", "attracts", "attraction", "attractive"}, {"repel", "repels", "repulsion", "repulsive"}),
    ({"positive"}, {"negative"}),
    ({"towards"}, {"away"}),
    ({"many", "excess", "gained", "gains"}, {"few", "lacking", "lost", "loses"}),
)
GENERAL = (
    "positive test charge",
    "right angle",
    "right-angled",
    "left for you",
    "takes the tension away",
    "taking away",
    "as positive",
    "counted positive",
)


def sides(words: str) -> set[tuple[int, int]]:
    """Which side of which pair is named; none of a pair whose both sides are."""
    text = plain(words).lower()
    for general in GENERAL:
        text = text.replace(general, " ")
    named = set(re.findall(r"[a-z]+", text))
    found = {(n, side) for n, pair in enumerate(OPPOSED) for side in (0, 1) if pair[side] & named}
    return {(n, side) for n, side in found if (n, 1 - side) not in found}


def answer_of(part: Part, plan: Plan, values: dict[str, float]) -> str:
    """What the memo says of a part's direction or sign: the words of the direction, or of the points."""
    if part.kind != "calculate":
        return " ".join(point.words for point in part.points)
    ways = [direction(step, values) for step in part.steps if step.makes in part.asked]
    signs = ["negative" if values[name] < 0 else "positive" for name in part.asked if part.asks_sign]
    return ". ".join([*(way.words for way in ways if way), *signs])


def leaks(key: str, seed: int, level: int) -> list[str]:
    """Hints before the last that name one of two sides, where the answer has either: what is left out tells too."""
    topic, question = topics.find(key)
    one = cases.drawn(key, seed, level, DRAWS)
    found = read(question, one.inputs, one.find, variant=one.variant)
    plan = question.plan(found.data)
    values = run(plan, found.data.settings.constants())
    several = hints(topic, question, found, plan)
    told = []
    for part in plan.parts:
        secret = {n for piece in answer_of(part, plan, values).split(". ") for n, _ in sides(piece)}
        told += [
            f"{one.find} {part.key}: {hint.words!r} tells {OPPOSED[n][side]}"
            for hint in several[part.key][:-1]
            for n, side in sides(hint.words)
            if n in secret
        ]
    return told


@pytest.mark.parametrize("key", KEYS)
def test_no_hint_tells_the_direction_or_the_sign_of_the_answer(key: str) -> None:
    """Before the last hint of a part, no word says which of two directions or signs the answer has."""
    for level in topics.find(key)[1].levels:
        for seed in range(examples(4).max_examples):
            assert not leaks(key, seed, level), (level, seed)
