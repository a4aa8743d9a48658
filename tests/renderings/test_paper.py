"""Papers and memos in HTML, Markdown and LaTeX: well formed, complete, and safe whatever the heading says."""

from __future__ import annotations

import re
import subprocess
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from shutil import which

import pytest

from calc import topics
from calc.papers.papers import Paper, Wanted, make
from calc.renderings import answer_table, markdown, paper_latex
from calc.renderings import paper as html

KEYS = topics.question_keys()
HOSTILE = '<script>hit()</script> & "50 %" $x_1$ \\input{a} #~^'
EMPTY = {"meta", "br", "circle", "path", "polygon", "polyline", "input"}


@cache
def one(key: str) -> Paper:
    """A paper of one question, with a heading and a name that mean mischief."""
    return make(Wanted((key,), level=2, seed=6, heading=HOSTILE, learner=HOSTILE))


class Balanced(HTMLParser):
    """Checks that every element is closed in order, and gathers element names and text."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.names: set[str] = set()
        self.text = ""
        self.feed(page)
        self.close()
        assert not self.open

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.names.add(tag)
        assert not any(name.startswith("on") for name, _ in attrs)
        if tag not in EMPTY:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.names.add(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.text += data


@pytest.mark.parametrize("key", KEYS)
def test_html_is_balanced_and_holds_no_markup_of_a_reader(key: str) -> None:
    """Every element is closed in order, and a heading stays text."""
    for page in (html.render(one(key), space="lined"), html.memo(one(key))):
        found = Balanced(page)
        assert "script" not in found.names
        assert HOSTILE in found.text


@pytest.mark.parametrize("key", KEYS)
def test_marks_of_the_memo_add_up(key: str) -> None:
    """The ticks beside the lines of a memo are as many as the marks in brackets."""
    paper = one(key)
    ticks = sum(mark.count("✓") for mark in re.findall(r'"memo-mark">([^<]*)<', html.memo(paper)))
    assert ticks == paper.marks == sum(part.marks for part in paper.items[0].worked.parts)
    shown = [int(found) for found in re.findall(r'paper-marks">\((\d+)\)', html.render(paper))]
    assert sum(shown) == paper.marks


@pytest.mark.parametrize("key", KEYS)
def test_paper_and_memo_are_numbered_alike(key: str) -> None:
    """A part has the same number and words in both."""
    number = r'paper-number">([\d.]+)</span><span class="paper-words">(.*?)</span>'
    assert re.findall(number, html.render(one(key))) == re.findall(number, html.memo(one(key)))


@pytest.mark.parametrize("key", KEYS)
def test_a_memo_has_the_lines_that_earn_marks_and_all_working_on_request(key: str) -> None:
    """Both memos earn the same marks and hold every result; the short one has none of the reasons, the full one all."""
    paper = one(key)
    short, full = html.memo(paper), html.memo(paper, full=True)
    mark = r'"memo-mark">([^<]+)<'
    assert re.findall(mark, short) == re.findall(mark, full)
    for part in paper.items[0].worked.parts:
        for step in part.steps:
            assert html.prose(step.what) in full
            assert html.maths(step.result) in short or html.maths(step.result, display=True) in short
    worked = any(part.steps for part in paper.items[0].worked.parts)
    assert len(short) < len(full) or not worked
    assert "memo-what" not in short


def test_the_line_of_a_class_table_has_every_answer_with_its_direction() -> None:
    """A force is listed under its part's number with size, unit and direction, as the memo boxes it."""
    paper = make(Wanted(("several-charges.line", "coulomb.force"), seed=4))
    listed = answer_table.pieces(paper)["html"]["questions"]
    asked = [html.numbered(item, part) for item in paper.items for part in item.worked.parts if part.answers]
    assert re.findall(r'<th scope="col">([\d.]+)</th>', " ".join(line["head"] for line in listed)) == asked
    told = [answer for item in paper.items for part in item.worked.parts for answer in part.answers]
    text = " ".join(Balanced(line["row"]).text for line in listed)
    assert any(answer.direction for answer in told)
    for answer in told:
        assert answer.direction is None or answer.direction.words in text


@pytest.mark.parametrize("key", KEYS)
def test_a_paper_does_not_print_its_answers(key: str) -> None:
    """No answer's line and no point of the memo stands in the paper."""
    printed = Balanced(html.render(one(key))).text
    for part in one(key).items[0].worked.parts:
        for point in part.points:
            assert point.words not in printed
        for step in part.steps:
            assert step.result.text not in printed


@pytest.mark.parametrize(("space", "rules"), [("none", 0), ("lined", 11), ("blank", 11)])
def test_room_for_answers_grows_with_the_marks(space: str, rules: int) -> None:
    """Two marks to state get four lines, three to calculate seven; without room there are none."""
    paper = make(Wanted(("coulomb.force",), seed=1))
    assert html.render(paper, space=space).split("paper-sheet")[0].count("<i></i>") - 3 == rules


def test_a_question_longer_than_a_page_may_break_between_parts() -> None:
    """A whole question of many parts with lines to write on is marked long, a short one is not."""
    assert "paper-question long" in html.render(one("several-charges.rail"), space="lined")
    assert "paper-question long" not in html.render(one("coulomb.force"), space="lined")


# --- LaTeX ---

ENVIRONMENT = re.compile(r"\\(begin|end)\{(\w+\*?)\}")
# What \usepackage[utf8]{inputenc} with T1 fonts sets as it stands.
SET_AS_TEXT = set("“”‘’–—…äöüéèêëçñşåøæœßáíóúÄÖÜÉ·×÷°µ§¬±²³¹¼½¾")


def braces_balance(text: str) -> bool:
    """Whether unescaped braces close in order."""
    depth = 0
    for brace in re.findall(r"\\.|[{}]", text):
        depth += (brace == "{") - (brace == "}")
        if depth < 0:
            return False
    return depth == 0


@pytest.mark.parametrize("key", KEYS)
def test_latex_is_balanced(key: str) -> None:
    """Braces, environments and dollar signs of both documents pair up."""
    for text in (paper_latex.render(one(key), space="lined"), paper_latex.memo(one(key))):
        assert braces_balance(text)
        open_ones: list[str] = []
        for kind, name in ENVIRONMENT.findall(text):
            if kind == "begin":
                open_ones.append(name)
            else:
                assert open_ones.pop() == name
        assert not open_ones
        assert len(re.findall(r"(?<!\\)\$", text)) % 2 == 0
        assert text.startswith("\\documentclass")


@pytest.mark.parametrize("key", KEYS)
def test_latex_has_no_character_it_cannot_set(key: str) -> None:
    """Symbols outside T1 are written as commands."""
    plain = make(Wanted((key,), level=2, seed=6, heading="Forces"))
    for text in (paper_latex.render(plain), paper_latex.memo(plain)):
        assert {c for c in text if ord(c) > 126} - SET_AS_TEXT == set()


@pytest.mark.parametrize("key", KEYS)
def test_latex_uses_alignment_and_blank_lines_lawfully(key: str) -> None:
    """No blank line and at most one alignment mark a side stand in a display, and no row outside its table."""
    for body in re.findall(r"\\begin\{align\*\}(.*?)\\end\{align\*\}", paper_latex.memo(one(key)), re.S):
        assert "\n\n" not in body
        for row in body.split("\\\\\n"):
            assert row.count("&") <= 3
            assert "$" not in re.sub(r"\\text\{[^{}]*\}", "", row)


@pytest.mark.parametrize("key", ["coulomb.force", "several-charges.plane"])
def test_latex_has_the_lines_to_write_on_that_the_page_has(key: str) -> None:
    """As many rules in LaTeX as on the page; blank room has none, and no room neither rule nor gap."""
    lined = html.render(one(key), space="lined")
    rules = sum(found.count("<i>") for found in re.findall(r'paper-space lined">(.*?)</div>', lined))
    assert rules > 5
    assert paper_latex.render(one(key), space="lined").count(r"\rule{\linewidth}{0.3pt}") == rules
    assert r"\rule{\linewidth}" not in paper_latex.render(one(key), space="blank")
    assert r"\vspace{" in paper_latex.render(one(key), space="blank")
    assert r"\vspace{" not in paper_latex.render(one(key))


def test_a_reader_writes_no_latex_command() -> None:
    """What a heading holds is printed, not obeyed."""
    text = paper_latex.render(one("coulomb.force"))
    assert r"\input{" not in text
    assert r"\textbackslash{}input\{a\}" in text


# --- Markdown ---


def test_markdown_holds_no_markup_of_a_reader() -> None:
    """A heading's brackets, dollars and hashes are plain text."""
    text = markdown.render(one("coulomb.force"))
    assert text.startswith(r"# \<script\>hit()\</script\> & " + '"50 %"' + r" \$x\_1\$")


@pytest.mark.parametrize("key", KEYS)
def test_markdown_formulas_pair_up(key: str) -> None:
    """Every dollar sign has its partner in the same line, and a diagram is one block."""
    for text in (markdown.render(one(key)), markdown.memo(one(key))):
        for line in text.splitlines():
            assert len(re.findall(r"(?<!\\)\$", line)) % 2 == 0
        assert text.count("<svg ") == text.count("\n\n<svg ") == text.count("</svg>\n\n")


@pytest.mark.parametrize("key", KEYS)
def test_markdown_and_html_memo_hold_the_same_lines(key: str) -> None:
    """Each step's result and each point is in both."""
    memo = markdown.memo(one(key))
    for part in one(key).items[0].worked.parts:
        for step in part.steps:
            assert f"${step.result.tex}$" in memo
        for point in part.points:
            assert markdown.escape(point.words) in memo


@pytest.mark.skipif(not which("pdflatex"), reason="there is no pdflatex on this machine")
@pytest.mark.parametrize("level", [1, 2, 3])
def test_latex_compiles_and_loses_nothing_at_a_page_end(level: int, tmp_path: Path) -> None:
    """A paper of every question and its memo compile, and no box is higher than its page."""
    paper = make(Wanted(KEYS, level=level, seed=level, heading=HOSTILE, learner="Ayşe"))
    for name, text in (
        ("paper", paper_latex.render(paper, space="lined")),
        ("memo", paper_latex.memo(paper)),
    ):
        (tmp_path / f"{name}.tex").write_text(text, encoding="utf-8")
        command = ["pdflatex", "-interaction=nonstopmode", "-halt-on-error", f"{name}.tex"]
        done = subprocess.run(command, cwd=tmp_path, capture_output=True, check=False)
        assert done.returncode == 0, done.stdout[-2000:]
        assert b"too high" not in done.stdout
