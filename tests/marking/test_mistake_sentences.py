"""The sentences of the declared mistakes: what was done, why not, and what to do, to the learner, at the step."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

import pytest

from calc import topics
from calc.language.expressions import equation, expression
from calc.language.symbols import symbol
from calc.model.questions import Mistake, Plan, Step
from tests.cases import KEYS, SEEDS, drawn
from tests.draws import every_unknown, planned

IMPERATIVES = re.compile(
    r"add|bring|count|divide|double|draw|find|halve|keep|leave|look|measure|multiply|put|rearrange|say|square|start|subtract|take"
    r"|turn|use|work"
)
IS_NOT = re.compile(r"\b(?:is|are)\b.*\bnot\b")
# What a unit measures: a sentence may name the kind of a quantity for its letter.
KINDS = {
    "N": ("force", "weight", "tension"),
    "m": ("distance", "shift", "height", "thread"),
    "C": ("charge",),
    "°": ("angle", "tangent", "sine", "cosine"),
    "N·C⁻¹": ("field",),
    "V·m⁻¹": ("field",),
    "kg": ("mass", "weight"),
    "m·s⁻¹": ("velocity", "speed"),
}
LEAST, MOST, LONGEST = 8, 45, 25  # words


@cache
def plans(key: str) -> tuple[Plan, ...]:
    """The plans of the example, of a few draws at each level, and of every other unknown of each first draw."""
    _, question = topics.find(key)
    sets = [(dict(question.example), "")]
    for level in question.levels:
        for seed in SEEDS:
            one = drawn(key, seed, level)
            sets.append((one.inputs, one.find))
            if seed == SEEDS[0]:
                sets += every_unknown(question, one.inputs, one.find)
    worked = (planned(question, typed, asked) for typed, asked in sets)
    return tuple(plan for _, plan in filter(None, worked))


def declared(key: str) -> Iterator[tuple[Mistake, Step | None]]:
    """Every mistake that a question plans, with its step; None for one with a datum. The same words once."""
    seen = set()
    for plan in plans(key):
        pairs = [(mistake, step) for step in plan.steps for mistake in step.mistakes]
        for mistake, step in [*pairs, *((mistake, None) for mistake in plan.mistakes)]:
            if (mistake.said, mistake.at) not in seen:
                seen.add((mistake.said, mistake.at))
                yield mistake, step


def sentences(words: str) -> list[str]:
    """The sentences of a text: each ends with a full stop before a blank or at the end."""
    return re.split(r"(?<=\.)\s+", words)


def count(words: str) -> int:
    """Words: a formula without a blank is one."""
    return len(words.split())


def names(mistake: Mistake, step: Step | None) -> set[str]:
    """What a sentence may call by name: the letters of the step and of the mistake, and the nouns of its heading."""
    letters = {mistake.at, *expression(mistake.instead).names}
    nouns: set[str] = set()
    if step is not None:
        for line in (step.law, f"{step.makes} = {step.how}" if not step.root else step.root.equation):
            letters |= set(equation(line).names)
        nouns |= set(re.findall(r"[a-z]{4,}", step.what.lower()))
        nouns |= set(KINDS.get(step.unit, ()))
    letters |= {letter.rstrip("0123456789") for letter in letters if "_" not in letter}  # the r of a row's r5
    return {symbol(letter).text for letter in letters} | nouns


def named(words: str, name: str) -> bool:
    """Whether a name stands in a sentence: a noun whole or with an s, a letter alone or in a formula."""
    if re.fullmatch("[a-z]{4,}", name):
        return bool(re.search(rf"\b{name}s?\b", words.lower()))
    return bool(re.search(rf"(?<![A-Za-z]{{2}}){re.escape(name)}(?![a-z])", words))


@pytest.mark.parametrize("key", KEYS)
def test_a_mistake_is_told_to_the_learner(key: str) -> None:
    """It begins with what the learner did: "You", or "you" in the first sentence."""
    for mistake, _ in declared(key):
        first = sentences(mistake.said)[0]
        assert re.search(r"\b[Yy]ou(r)?\b", first), (mistake.key, mistake.said)


@pytest.mark.parametrize("key", KEYS)
def test_a_mistake_is_told_in_two_or_three_short_sentences(key: str) -> None:
    """Or in one of at least 8 words; no more than 45 words in all and 25 in one; each ends with a full stop."""
    for mistake, _ in declared(key):
        parts = sentences(mistake.said)
        assert len(parts) in (2, 3) or (len(parts) == 1 and count(mistake.said) >= LEAST), mistake.said
        assert count(mistake.said) <= MOST, mistake.said
        assert max(map(count, parts)) <= LONGEST, mistake.said
        assert all(part.endswith(".") for part in parts), mistake.said
        assert "!" not in mistake.said, mistake.said
        assert not re.search(r"[{}%*]|\bsqrt\b|\babs\b", mistake.said), mistake.said


@pytest.mark.parametrize("key", KEYS)
def test_a_mistake_is_told_with_what_to_do(key: str) -> None:
    """A verb in the imperative, or what something is not, after what was done."""
    for mistake, _ in declared(key):
        rest = " ".join(sentences(mistake.said)[1:]) or mistake.said
        clauses = re.split(r"[.:,;]\s+|\b(?:and|or|so|then)\s+", rest)
        told = any(IMPERATIVES.fullmatch(clause.split()[0].lower()) for clause in clauses if clause)
        assert told or IS_NOT.search(rest), (mistake.key, mistake.said)


@pytest.mark.parametrize("key", KEYS)
def test_a_mistake_is_told_at_its_step(key: str) -> None:
    """It names a letter of the step, a noun of its heading, or the kind of quantity that the step finds."""
    for mistake, step in declared(key):
        assert any(named(mistake.said, name) for name in names(mistake, step)), (
            mistake.key,
            mistake.at,
            mistake.said,
            step and step.what,
        )


@pytest.mark.parametrize("key", KEYS)
def test_a_mistake_holds_for_any_data(key: str) -> None:
    """No number of the data and no unit stands in it: only the small whole numbers and the 180° of a formula."""
    for mistake, step in declared(key):
        formula = f"{mistake.instead} {step.law if step else ''} {step.make if step else ''}"
        for number in re.findall(r"\d+(?:,\d+)?", re.sub(r"[Cc]harges? \d", "", mistake.said)):
            assert number in re.findall(r"\d+", formula), (mistake.key, mistake.said)


def test_letters_of_a_law_are_those_of_the_question() -> None:
    """Where a law is used between other quantities, its sentence speaks of those."""
    told = {mistake.said for mistake, _ in declared("coulomb.contact")}
    for r in ("r", "r₂"):
        say = f"You divided by {r} only once. The force falls with the square of the distance, so divide by {r}²."
        assert say in told
