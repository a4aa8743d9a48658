"""Teaching text says a thing once a page: no sentence stands twice outside forms, worked answers and templates."""

from __future__ import annotations

import re
from collections import Counter
from html.parser import HTMLParser
from pathlib import Path

SHORTEST = 6  # words
NO_TEACHING = {"licences.html"}  # a list of terms, which are alike
# What is not teaching text: it is made for each question, or not read.
APART_TAGS = {
    "form",
    "template",
    "script",
    "style",
    "svg",
    "math",
    "noscript",
    "head",
    "nav",
    "footer",
    "header",
    "aside",
}
APART_CLASSES = {"answer-area", "ready-drawn", "practice", "worksheet", "md-source-file"}
EMPTY = {"br", "hr", "img", "input", "link", "meta", "source", "wbr", "col"}
BLOCKS = {"p", "li", "dd", "dt", "td", "th", "h1", "h2", "h3", "h4", "div", "section", "figcaption", "small", "summary"}


class Teaching(HTMLParser):
    """The sentences of a page's teaching text."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.apart = 0  # elements open since the first that is set apart
        self.text = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in BLOCKS:
            self.text += "\n"
        if tag in EMPTY:
            return
        classes = set((dict(attrs).get("class") or "").split())
        if self.apart or tag in APART_TAGS or classes & APART_CLASSES:
            self.apart += 1

    def handle_endtag(self, tag: str) -> None:
        if self.apart and tag not in EMPTY:
            self.apart -= 1
        if tag in BLOCKS:
            self.text += "\n"

    def handle_data(self, data: str) -> None:
        if not self.apart:
            self.text += data.replace("\n", " ")

    @property
    def sentences(self) -> list[str]:
        found = (" ".join(one.split()) for one in re.split(r"(?<=[.!?])\s+|\n+", self.text))
        return [one.casefold() for one in found if one.endswith((".", "!", "?")) and len(one.split()) >= SHORTEST]


def test_no_sentence_stands_twice_on_a_page(built_site: Path) -> None:
    """Of every built page; a page of many words has many sentences, so the search finds what is there."""
    counted = 0
    twice = {}
    for page in sorted(built_site.rglob("*.html")):
        if page.name in NO_TEACHING:
            continue
        sentences = Teaching(page.read_text(encoding="utf-8")).sentences
        counted += len(sentences)
        if again := [one for one, count in Counter(sentences).items() if count > 1]:
            twice[str(page.relative_to(built_site))] = again
    assert counted > 500
    assert twice == {}


def test_a_sentence_said_twice_is_found() -> None:
    """In a paragraph and in a list; one in a form does not count."""
    said = "Equal signs push two charges apart."
    page = f"<main><p>{said} More.</p><ul><li>{said}</li></ul><form><p>{said}</p></form></main>"
    assert Teaching(page).sentences == [said.casefold()] * 2
