"""Laws and definitions: one wording each, wherever they are read."""

import re
from pathlib import Path

import pytest

from calc.model.answers import Law
from calc.topics import find, question_keys, topics
from calc.working.reading import read

DOCS = Path(__file__).resolve().parent.parent / "docs"
LAWS = {law.words: law for topic in topics().values() for law in topic.laws}
PAGES = sorted(DOCS.glob("*.md"))


def sentences(page: Path) -> list[str]:
    """The sentences of a page's running text, without its fenced blocks, on one line each."""
    text = re.sub(r"^```.*?^```", "", page.read_text(encoding="utf-8"), flags=re.M | re.S)
    return [" ".join(piece.split()) for piece in re.split(r"(?<=[.:?!])\s", text)]


def without_longer(law: Law, key: str, words: str = "") -> str:
    """The words of a law (or of a sentence that quotes it) less its own key phrases that are longer than ``key``.

    Two inverse-square laws share "the square of the distance"; what follows it tells them apart.
    """
    words = words or law.words
    for own in law.keys:
        if key in own and own != key:
            words = words.replace(own, "")
    return words


def test_a_name_has_one_wording() -> None:
    """No two laws of the booklet share a name."""
    names = [law.name for law in LAWS.values()]
    assert sorted(set(names)) == sorted(names)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("Newton's first law", "remains at rest or moves at constant velocity unless"),
        ("Newton's second law", "the body accelerates in the direction of the net force"),
        ("Newton's third law", "simultaneously exerts a force on body A that is equal in magnitude and opposite in"),
    ],
)
def test_the_laws_of_motion_are_numbered_as_everywhere(name: str, words: str) -> None:
    """Inertia, acceleration, pairs: the order of the Principia's axioms (I. Newton, 1687)."""
    assert [law.name for law in LAWS.values() if words in law.words] == [name]


@pytest.mark.parametrize("law", LAWS.values(), ids=lambda law: law.name)
def test_the_phrases_marks_hang_on_stand_in_the_law(law: Law) -> None:
    """Every key phrase is a part of its law; a long one tells it from every other law of the booklet."""
    for key in law.keys:
        assert key in law.words
        if len(key.split()) > 3:
            assert [other.name for other in LAWS.values() if key in without_longer(other, key)] == [law.name]


@pytest.mark.parametrize("key", question_keys())
def test_a_law_to_state_is_a_law_of_its_page(key: str) -> None:
    """What a memo wants stated is word for word the law shown on the page."""
    topic, question = find(key)
    plan = question.plan(read(question, question.example).data)
    declared = {law.words for law in topic.laws}
    for part in plan.parts:
        if part.kind == "state":
            assert {point.words for point in part.points} <= declared, part.ask


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_pages_quote_laws_whole(page: Path) -> None:
    """A sentence of a page that uses a law's own long phrase is that law, word for word."""
    for sentence in sentences(page):
        for law in LAWS.values():
            for key in (key for key in law.keys if len(key.split()) > 3):
                left = sentence
                for other in LAWS.values():
                    left = without_longer(other, key, left) if left else ""
                if key in left:
                    assert law.words in sentence


def test_the_glossary_says_what_the_laws_say() -> None:
    """A glossary entry with the name of a law or definition holds that wording."""
    text = (DOCS / "glossary.md").read_text(encoding="utf-8")
    entries = dict(re.findall(r"^## (.+?)\n\n(.+?)(?=\n\n|\Z)", text, re.M | re.S))
    told = [
        (term, law)
        for term in entries
        for law in LAWS.values()
        if re.match(rf"{re.escape(term)}(?!'s)\b", law.name, re.I)
    ]
    assert {term for term, _ in told} >= {"electric field", "equilibrium", "superposition"}
    for term, law in told:
        assert law.words in " ".join(entries[term].split()), term


def test_coulombs_law_speaks_of_magnitudes() -> None:
    """Coulomb's law is about the sizes of force and charges: signs are not multiplied."""
    words = next(law.words for law in LAWS.values() if law.name == "Coulomb's law")
    assert (
        words
        == "The magnitude of the electrostatic force that one point charge exerts on another is directly proportional "
        "to the product of the magnitudes of the charges and inversely proportional to the square of the distance "
        "between them."
    )
