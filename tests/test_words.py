"""The English of every question: what a reader sees in many draws, read for slips of a general shape."""

import json
import re
from functools import cache

import pytest

from calc import desk
from calc.language.printing import counted
from calc.language.wording import called, reworded
from calc.model.answers import WorkedAnswer
from calc.model.questions import Plan
from calc.practice.hints import hints
from calc.renderings import html
from calc.topics import find, question_keys, topics
from calc.working.reading import read
from calc.working.working import work
from tests import cases

KEYS = question_keys()
DRAWS = [(level, seed) for level in (1, 2, 3) for seed in (1, 2, 3)]
# What a story may call a body or what holds it; the rest of the answer has to call it the same.
NOUNS = (
    "sphere",
    "ball",
    "bead",
    "puck",
    "trap",
    "dome",
    "pellet",
    "disc",
    "button",
    "cork",
    "string",
    "cord",
    "thread",
)
BEGINS_SMALL = re.compile(r"(F_|[a-zα-ωΔΣ][₀-₉]?( |_|=|:|,)|mg |kQ|qE|sin |cos |tan )")


@cache  # three tests read the same answers
def worked_cases(key: str) -> list[tuple[WorkedAnswer, Plan]]:
    """The example of a question in three wordings, and drawn data of every level."""
    topic, question = find(key)
    typed = [(question.example, "", variant) for variant in (0, 1, 2)]
    for level, seed in DRAWS:
        drawn = cases.drawn(key, seed, level)
        typed.append((drawn.inputs, drawn.find, drawn.variant))
    found = [read(question, inputs, unknown, variant=variant) for inputs, unknown, variant in typed]
    return [(work(topic, question, one), question.plan(one.data)) for one in found]


def sentences(worked: WorkedAnswer, plan: Plan) -> list[str]:
    """Everything that is said in whole sentences."""
    told = [worked.story, *worked.notes, *worked.warnings]
    for part in worked.parts:
        told += [part.ask, *(point.words for point in part.points)]
        for step in part.steps:
            told += [step.why, step.plain, step.method]
    figures = [worked.figure, *(part.figure for part in worked.parts)]
    for drawn in figures:
        if drawn:
            told += [drawn.description, *drawn.notes]
    told += [check.words for check in worked.checks]
    told += [mistake.said for step in plan.steps for mistake in step.mistakes]
    return [words.replace("\N{NO-BREAK SPACE}", " ") for words in told if words]


def phrases(worked: WorkedAnswer, plan: Plan) -> list[str]:
    """What is said in headings, data and directions: no whole sentences."""
    told = [shown.words for shown in worked.given]
    for part in worked.parts:
        for step in part.steps:
            told += (
                [step.what, *(words for _, words in step.direction.options if step.direction)]
                if step.direction
                else [step.what]
            )
    told += [check.what for check in worked.checks]
    told += [drawn.title for drawn in [worked.figure, *(p.figure for p in worked.parts)] if drawn]
    told += [mistake.shows for step in plan.steps for mistake in step.mistakes if mistake.why]
    return [words.replace("\N{NO-BREAK SPACE}", " ") for words in told]


SLIPS = {
    "one of many": (
        r"(?<!harge )(?<![\d,.×(;] )(?<![\d,.⁻])\b1"
        r" (times|marks|electrons|points|forces|charges|steps|spheres|questions|mistakes|places)\b"
    ),
    "many of one": r"(?<!harge )(?<![\d,.])([02-9]|\d\d+) (mark|electron|point|question|step|mistake)\b",
    "no times": r"\b0 times\b",
    "doubled word": r"\b([A-Za-z]+) \1\b",
    "a before a vowel": (
        r"(?:\ba|(?:^|[.?!] )A) (electr|angle|attract|equal|uncharged|eas|arrow|oil|acceler|answer|upright)"
    ),
    "an before a consonant": r"\b[Aa]n (?!hour)[bcdfghjklmnpqrstvwz]",
    "space before a stop": r" [.,;:?!](?!\d)",
    "two stops": r"\.\.|,,|\.,|,\.",
    "two spaces": r"  ",
    "raw markup": r"[{}<>\\^]|\*\*|\bNone\b|\bTrue\b|\bFalse\b|\bnan\b",
}


@pytest.mark.parametrize("key", KEYS)
def test_no_slips_of_english(key: str) -> None:
    """No one of many, no doubled word, no wrong article, no stray space or markup."""
    for worked, plan in worked_cases(key):
        for words in [*sentences(worked, plan), *phrases(worked, plan)]:
            bare = words.replace("Q_{", "").replace("}", "") if "Field lines of" in words else words
            for slip, pattern in SLIPS.items():
                assert not re.search(pattern, bare), (slip, words)


@pytest.mark.parametrize("key", KEYS)
def test_sentences_begin_and_end(key: str) -> None:
    """A sentence begins with a capital (or a symbol) and ends with a stop; its brackets and quotes close."""
    for worked, plan in worked_cases(key):
        for words in sentences(worked, plan):
            assert words[-1] in ".?!", words
            assert not words[0].islower() or BEGINS_SMALL.match(words), words
            assert words.count("(") == words.count(")"), words
            assert words.count("“") == words.count("”"), words
            for start in re.findall(r"[.?!] (\S+ )", words):
                assert not start[0].islower() or BEGINS_SMALL.match(start), words


@pytest.mark.parametrize("key", KEYS)
def test_an_answer_calls_things_as_its_story_does(key: str) -> None:
    """A ball of the story is no sphere in the working, and its cord no string."""
    for worked, plan in worked_cases(key):
        for noun in NOUNS:
            mention = re.compile(rf"\b{noun}s?\b", re.I)
            if not mention.search(worked.story):
                for words in [*sentences(worked, plan)[1:], *phrases(worked, plan)]:
                    choice = words in [g.words for g in worked.given if not g.symbol.text]
                    assert choice or not mention.search(words), (worked.story, words)


@pytest.mark.parametrize("key", KEYS)
def test_hints_are_in_good_english(key: str) -> None:
    """Hints have no slips either, and end with a stop, a colon or the dots of an opening."""
    topic, question = find(key)
    for level, seed in DRAWS[::3]:
        drawn = cases.drawn(key, seed, level)
        found = read(question, drawn.inputs, drawn.find, variant=drawn.variant)
        for told in hints(topic, question, found, question.plan(found.data)).values():
            for hint in told:
                assert hint.words.rstrip("”")[-1] in ".?!:…", hint.words
                for slip, pattern in SLIPS.items():
                    if slip != "space before a stop":
                        assert not re.search(pattern, hint.words), (slip, hint.words)


@pytest.mark.parametrize("topic", list(topics()))
def test_refusals_of_wrong_boxes_are_sentences(topic: str) -> None:
    """Every refusal declared with a box, and every caution of a topic, is a whole sentence."""
    for question in topics()[topic].questions:
        for item in question.fields:
            for words in (getattr(item, "refusal", ""), *topics()[topic].cautions):
                assert not words or (words[-1] == "." and words[0].isupper()), words


@pytest.mark.parametrize(("count", "told"), [(0, "0 marks"), (1, "1 mark"), (2, "2 marks"), (11, "11 marks")])
def test_counts_agree_with_their_noun(count: int, told: str) -> None:
    """One mark, and two or no marks."""
    assert counted(count, "mark") == told


def test_bodies_are_renamed_whole() -> None:
    """A story's own noun replaces a body's, one and many, small and capital; keys and other words stay."""
    names = {"sphere": "bead", "string": "cord"}
    assert called("Spheres and a sphere on a string.", names) == "Beads and a bead on a cord."
    assert called("sphere-lost hemisphere atmosphere", names) == "sphere-lost hemisphere atmosphere"
    assert called("string", names) == "string"
    assert reworded(("a", 1, ("b", 2.5)), str.upper) == ("A", 1, ("B", 2.5))


@pytest.mark.parametrize("count", [1, 2])
def test_marks_in_the_margin_are_counted_aloud(count: int) -> None:
    """A line worth two marks says so, to the eye and to a screen reader."""
    topic, question = find("equilibrium.slope")
    worked = work(topic, question, read(question, question.example))
    shown = next(step for part in worked.parts for step in part.steps if step.makes == "T")
    kind = {1: "formula", 2: "substitution"}[count]
    told = {1: "1 mark: formula", 2: "2 marks: substitution"}[count]
    assert {mark.kind: mark.count for mark in shown.marks}[kind] == count
    page = html.step(shown, 1)
    assert f'<span class="spoken">{told}</span>' in page
    assert f'title="{told}"><span aria-hidden="true">{"✓" * count}' in page


@pytest.mark.parametrize(
    ("times", "told"),
    [
        (10, "10 times too large"),
        (100, "100 times too large"),
        (0.001, "1000 times too small"),
        (1e6, "10⁶ times too large"),
    ],
)
def test_a_wrong_power_of_ten_is_told_as_a_person_says_it(times: float, told: str) -> None:
    """Ten times too large is not called 10¹ times."""
    data = {"question": "coulomb.force", "inputs": find("coulomb.force")[1].example}
    answers = {"find": {"value": f"{25e-6 * times:.3g} N", "direction": "attract"}}
    request = {"operation": "mark", "data": {**data, "answers": answers}}
    reply = json.loads(desk.answer(json.dumps(request)))["data"]
    assert f"the answer is {told}. Check every prefix" in reply["parts"][1]["sentences"][0]


@pytest.mark.parametrize(
    ("key", "value", "label"),
    [
        ("coulomb.electrons", "n", "Your answer for n, a number"),
        ("coulomb.force", "F", "Your answer for F, with its unit"),
    ],
)
def test_the_sheet_asks_for_a_unit_only_where_there_is_one(key: str, value: str, label: str) -> None:
    """A count is asked for without a unit; anything else with one."""
    data = {"question": key, "inputs": find(key)[1].example}
    reply = json.loads(desk.answer(json.dumps({"operation": "sheet", "data": data})))
    page = re.sub(r"<[^>]+>", "", reply["data"]["html"])
    assert label in page
    assert f"{value} with its unit" not in page
