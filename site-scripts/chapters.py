"""Which page belongs to which question, read from docs/.

A chapter is a page whose front matter names a `topic`. Each question of the topic has a page of its own in the
folder of the same name: docs/coulombs-law.md and docs/coulombs-law/force.md. The front matter of a question's
file may say `when:` (one line: when to use it), `order:` (its place in the chapter) and `was:` (names that links
to the chapter's page may still end with). A question without a file gets its page from its declaration.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from mkdocs.exceptions import PluginError
from mkdocs.utils.meta import get_data

from calc import topics
from calc.model.questions import Question, Topic

DOCS = Path(__file__).resolve().parent.parent / "docs"


@dataclass(frozen=True)
class Entry:
    """A question and its page: ``page`` is the address in the booklet without its ending."""

    key: str
    question: Question
    page: str
    when: str
    was: tuple[str, ...]
    order: float

    @property
    def address(self) -> str:
        return f"{self.page}.html"


@dataclass(frozen=True)
class Chapter:
    """A chapter's page and its questions in the order of the chapter."""

    page: str
    title: str
    about: str
    topic: Topic
    entries: tuple[Entry, ...]

    @property
    def address(self) -> str:
        return f"{self.page}.html"

    @property
    def pages(self) -> dict[str, str]:
        """The address of each question by its key, former keys too."""
        return {
            f"{self.topic.key}.{key}": entry.address
            for entry in self.entries
            for key in (entry.question.key, *entry.question.former)
        }


def _when(question: Question) -> str:
    """What stands in place of a line that nobody wrote: what the question can find, or that it is a story."""
    if question.scenario:
        return "One story in several parts."
    words = [question.find(name).words.lower() for name in question.unknowns]
    return f"To find: {', '.join(words[:4])}." if words else "With your own numbers."


def _meta(path: Path) -> dict[str, object]:
    return get_data(path.read_text(encoding="utf-8"))[1] if path.is_file() else {}


def _entry(topic: Topic, question: Question, page: str, docs: Path) -> Entry:
    meta = _meta(docs / f"{page}.md")
    was = tuple(word.strip() for word in str(meta.get("was", "")).split(",") if word.strip())
    when = str(meta.get("when", "")) or _when(question)
    return Entry(f"{topic.key}.{question.key}", question, page, when, was, float(str(meta.get("order", "inf"))))


def read_chapters(docs: Path = DOCS) -> tuple[Chapter, ...]:
    """Every chapter in the order of the booklet.

    Raises PluginError for a topic that does not exist, and for a file in a chapter's folder that is no question's.
    """
    found = []
    for path in docs.glob("*.md"):
        meta = _meta(path)
        if "topic" not in meta:
            continue
        key = str(meta["topic"])
        if key not in topics.topics():
            raise PluginError(f"docs/{path.name}: no topic {key!r}; there are {', '.join(topics.topics())}.")
        topic = topics.topics()[key]
        keys = [question.key for question in topic.questions]
        for file in sorted((docs / path.stem).glob("*.md")):
            if file.stem not in keys:
                raise PluginError(
                    f"docs/{path.stem}/{file.name}: {key} has no question {file.stem!r}; name the file after one of "
                    f"{', '.join(keys)}."
                )
        entries = [_entry(topic, question, f"{path.stem}/{question.key}", docs) for question in topic.questions]
        entries.sort(key=lambda entry: (entry.question.scenario, entry.order))
        chapter = Chapter(path.stem, str(meta["title"]), str(meta.get("about", "")), topic, tuple(entries))
        found.append((float(str(meta.get("order", "inf"))), chapter))
    return tuple(chapter for _, chapter in sorted(found, key=lambda pair: pair[0]))


chapters = cache(read_chapters)


def entry_at(page: str) -> tuple[Chapter, Entry] | None:
    """The chapter and the question whose page this is; None for any other page."""
    for chapter in chapters():
        for entry in chapter.entries:
            if entry.page == page:
                return chapter, entry
    return None


def whole_questions_using(chapter: Chapter, entry: Entry) -> list[Entry]:
    """Questions in several parts that apply every law of this one: of its own chapter, or else of the others."""
    if entry.question.scenario:
        return []
    laws = set(entry.question.laws)
    uses = [e for e in chapter.entries if e.question.scenario and laws <= set(e.question.laws)]
    if not uses:
        others = [e for c in chapters() for e in c.entries if c is not chapter and e.question.scenario]
        uses = [e for e in others if laws <= set(e.question.laws)]
    return uses[:4]
