"""What practice and papers print by the newest rule of drawing, read as an examiner who reads nothing but the paper."""

from __future__ import annotations

import itertools
import re
from collections import Counter
from functools import cache
from typing import NamedTuple

import pytest

from calc import topics
from calc.model.questions import Input, Plan, Rows
from calc.practice.drawing import DRAWS, Drawn
from calc.working.reading import Read, read
from calc.working.working import run
from tests import cases
from tests.cases import KEYS
from tests.strategies import examples

SEEDS = range(examples(18).max_examples)  # of each level
MANY = 100  # data sets a question and level
TELLINGS_OF = 40  # draws of a level among which three tellings must be met


class Told(NamedTuple):
    """One drawn question, planned."""

    one: Drawn
    found: Read
    plan: Plan

    @property
    def said(self) -> str:
        """All that the paper prints of it before an answer."""
        return plain(" ".join((self.plan.story, *(part.ask for part in self.plan.parts))))


@pytest.fixture(scope="module", params=KEYS)
def key(request: pytest.FixtureRequest) -> str:
    """Each question: all that looks at its draws follows one another, so that they are drawn once."""
    return request.param


@cache
def newest(key: str) -> tuple[Told, ...]:
    """All draws of each level, by the newest rule."""
    _, question = topics.find(key)
    told = []
    for level in question.levels:
        for seed in SEEDS:
            one = cases.drawn(key, seed, level, DRAWS)
            found = read(question, one.inputs, one.find, variant=one.variant)
            told.append(Told(one, found, question.plan(found.data)))
    return tuple(told)


def plain(words: str) -> str:
    """Words with every space an ordinary one."""
    return re.sub("[\N{NO-BREAK SPACE}\N{NARROW NO-BREAK SPACE}\N{THIN SPACE}]", " ", words)


# Least and, not reached, greatest number that an examiner prints before a unit. Common practice, no source.
_PREFIX, _BARE = (1, 1000), (0.1, 10_000)
PRINTED = {
    **dict.fromkeys(("nC", "µC", "mC", "µN", "mN", "kN", "mg", "mm", "cm", "km", "kV", "kW", "mJ", "kJ"), _PREFIX),
    **dict.fromkeys(("N", "m", "s", "V", "W", "J", "m·s⁻¹", "m·s⁻²", "N·m⁻¹", "N·C⁻¹", "V·m⁻¹"), _BARE),
    **dict.fromkeys(("g", "kg"), (0.1, 1000)),
    "C": None,  # never without a power of ten
    "°": (1, 361),
}
NUMBER = re.compile(
    r"(?<![\d,·⁻])(\d{1,3}(?: \d{3})+(?!\d)(?:,\d+)?|\d+(?:,\d+)?)( × 10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)? ?"
    r"(°|[A-Za-zµ]+(?:·[A-Za-z]+)*[⁻¹²³]*)?(?![a-z])"
)
WORDS = {"at", "and", "apart", "to", "of", "electrons", "times", "each", "above", "below", "by", "further", "before"}


def unusual(text: str) -> list[str]:
    """Every quantity in ``text`` that an examiner would write otherwise."""
    odd = []
    for number, power, unit in NUMBER.findall(text):
        value = float(number.replace(" ", "").replace(",", "."))
        if power:
            right = 1 <= value < 10 and not re.match(r"[nµm][CN]|k[VW]|mm|cm|mg", unit)
        elif not value or unit not in PRINTED:
            right = value == 0 or value < 100_000
        else:
            limits = PRINTED[unit]
            right = limits is not None and limits[0] <= value < limits[1]
        if not right:
            odd.append(f"{number}{power} {unit}")
    return odd


@pytest.mark.parametrize(
    ("text", "odd"),
    [
        ("It carries −0,0048 µC.", ["0,0048 µC"]),
        ("It carries −4,8 nC.", []),
        ("A mass of 3600 g, or 3,6 kg.", ["3600 g"]),
        ("charges of +0,002 µC and 1 500 nC, 1200 mm apart", ["0,002 µC", "1 500 nC", "1200 mm"]),
        ("a charge of 0,000002 C or 1,6 × 10⁻¹⁹ C", ["0,000002 C"]),
        ("a force of 12 × 10⁻⁶ N, in 0,5 m at 20°", ["12 × 10⁻⁶ N"]),
        ("sides of 12 cm and 0,3 kV, 2 100 mm", ["0,3 kV", "2 100 mm"]),
    ],
)
def test_an_odd_quantity_is_seen(text: str, odd: list[str]) -> None:
    """The reader of this file finds what no examiner writes, and nothing else."""
    assert unusual(text) == odd


def test_quantities_are_printed_as_an_examiner_writes_them(key: str) -> None:
    """At every level: −4,8 nC and 3,6 kg, never −0,0048 µC or 3600 g."""
    for told in newest(key):
        # "1 and 3 100 mm" names a pair of spheres and their distance
        said = re.sub(r"\b\d and \d\b", "", told.said)
        assert not unusual(said), (told.one.level, told.one.seed, told.said)


def test_a_question_has_many_data_sets_at_every_level(key: str) -> None:
    """At least 100: among the draws no more are alike than chance makes of 100 sets.

    Of n sets, all as likely, a pair of draws is alike once in n times (the birthday problem; any book on probability).
    """
    _, question = topics.find(key)
    for level in question.levels:
        seen = Counter(repr(told.one.inputs) for told in newest(key) if told.one.level == level)
        assert seen.total() == len(SEEDS)
        alike = sum(count * (count - 1) // 2 for count in seen.values())
        assert alike <= len(SEEDS) * (len(SEEDS) - 1) / 2 / MANY, (level, alike, seen.most_common(3))


def test_every_draw_is_one_and_not_the_example(key: str) -> None:
    """No draw fell back on the page's example, because nothing else that is fit to print was found."""
    _, question = topics.find(key)
    for told in newest(key):
        assert told.one.inputs != question.example, (told.one.level, told.one.seed)


def test_places_lie_inside_their_story(key: str) -> None:
    """Nothing on a bench is given or found farther than 2 m away, or, of an apparatus of more than 15 cm, 2,5 times
    as far as the longest length given; out of doors, where the page's own example has a length of more than 2 m, within
    100 m; among planets, where a box asks for more than 100 km, a length is from 1 km to 10⁹ m. Common practice, no
    source."""
    fields = topics.find(key)[1].fields
    columns = [column for item in fields if isinstance(item, Rows) for column in item.columns]
    every = [item for item in (*fields, *columns) if isinstance(item, Input)]
    if not any(item.unit in ("m", "km", "cm", "mm") for item in every):
        return  # speeds and times alone: nothing says how large the story is
    boxes = [item for item in fields if isinstance(item, Input) and item.unit in ("m", "km")]
    sky = any(item.high > 1e5 for item in boxes)
    example = read(topics.find(key)[1], topics.find(key)[1].example)
    outdoors = any(abs(q.value) > 2 for q in example.quantities.values() if q.unit.si().text == "m")
    for told in newest(key):
        given = [abs(q.value) for q in told.found.quantities.values() if q.unit.si().text == "m"]
        values = run(told.plan, told.found.data.settings.constants())
        found = [abs(values[step.makes]) for step in told.plan.steps if step.unit in ("m", "cm", "mm")]
        if sky:
            assert all(1e3 <= length <= 1e9 for length in (*given, *found)), told
            continue
        if outdoors:
            assert all(length <= 100 for length in (*given, *found)), (told.one, found)
            continue
        assert all(length <= 2 for length in (*given, *found)), told
        if given and max(given) >= 0.15:
            assert all(length <= 2.5001 * max(given) for length in found), (told.one, found)


def test_other_values_of_constants_change_no_answer(key: str) -> None:
    """k = 8,99 × 10⁹ and g = 9,81 stay within 1 %, g = 10 within 3 %: no difference of near-equal forces is drawn."""
    others = [("k", 8.99e9, 0.01), ("g", 9.81, 0.01), ("g", 10.0, 0.03)]
    for told in newest(key):
        sheet = told.found.data.settings.constants()
        right = run(told.plan, sheet)
        for name, value, close in others:
            if name not in sheet:
                continue
            other = run(told.plan, {**sheet, name: value})
            for part in (part for part in told.plan.parts if part.kind == "calculate"):
                for answer in part.asked:
                    assert other[answer] == pytest.approx(right[answer], rel=close * 1.05), (told.one, answer, value)


def worded(words: str) -> Counter[str]:
    """The words of a story without its numbers, their units, and all that is not a word."""
    return Counter(re.findall(r"[a-z]+", NUMBER.sub(" ", plain(words)).lower()))


def test_a_question_is_told_in_three_ways(key: str) -> None:
    """The same data are told in at least three wordings over the draws of a level, three words apart or more each."""
    _, question = topics.find(key)
    for level in question.levels:
        several = [told.one for told in newest(key) if told.one.level == level]
        more = (cases.drawn(key, seed, level, DRAWS) for seed in range(len(several) + 1, TELLINGS_OF + 1))
        stories: list[Counter[str]] = []
        for one in itertools.chain(several, more):
            found = read(question, several[0].inputs, several[0].find, variant=one.variant)
            words = worded(question.plan(found.data).story)
            if all(((words - other) + (other - words)).total() >= 3 for other in stories):
                stories.append(words)
            if len(stories) >= 3:
                break
        assert len(stories) >= 3, (level, stories)
