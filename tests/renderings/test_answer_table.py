"""The answers of a class in HTML, Markdown and LaTeX, and memos that a teacher carries to class."""

from __future__ import annotations

import re
import subprocess
from html.parser import HTMLParser
from pathlib import Path
from shutil import which

import pytest

from calc import topics
from calc.papers.papers import Paper, Wanted, make
from calc.renderings import answer_table, markdown, paper_latex

CLASS = ("Ayşe", "Ben", "D'Arcy | & Co_1")


def papers() -> list[Paper]:
    """A paper of three questions for each learner of a class."""
    keys = ("coulomb.force", "momentum.join", "coulomb.contact")
    return [
        make(Wanted(keys, level=2, seed=8, own=at, heading="Forces", learner=name)) for at, name in enumerate(CLASS, 1)
    ]


def whole(notation: str, made: list[Paper]) -> str:
    """The table as the page puts it together: title, then for each question and each head its rows, its foot."""
    found = [answer_table.pieces(paper)[notation] for paper in made]
    tables: dict[tuple[int, str], list[str]] = {}
    for one in sorted((one for pieces in found for one in pieces["questions"]), key=lambda one: one["number"]):
        tables.setdefault((one["number"], one["head"]), [one["foot"]]).insert(-1, one["row"])
    return found[0]["title"] + "".join(head + "".join(rows) for (_, head), rows in tables.items())


def answers(made: Paper) -> list[list[str]]:
    """By question, the printed value of each answer."""
    rows = [[a.shown.tex for part in item.worked.parts for a in part.answers] for item in made.items]
    return [row for row in rows if row]


def test_markdown_has_a_row_for_each_learner_and_every_answer() -> None:
    """Each question is a table of as many columns as its head says; no name and no formula breaks a row."""
    text = whole("markdown", papers())
    blocks = re.split(r"^## Question \d+\n\n", text, flags=re.M)[1:]
    assert len(blocks) == 3
    for block, theirs in zip(blocks, zip(*map(answers, papers()), strict=True), strict=True):
        head, rule, *rows = block.strip().splitlines()
        columns = len(re.findall(r"(?<!\\)\|", head))
        assert re.fullmatch(r"(\| --- )+\|", rule)
        assert len(rows) == len(CLASS)
        for row, values in zip(rows, theirs, strict=True):
            assert len(re.findall(r"(?<!\\)\|", row)) == columns
            assert all(f"${value}$" in row for value in values)
    assert text.startswith("# Forces: answers of the class\n")


def test_latex_tables_hold_the_same_answers() -> None:
    """Each row has a cell less than ampersands ask for, each table ends, and a name's signs are escaped."""
    text = whole("latex", papers())
    tables = re.findall(r"\\begin\{longtable\}.*?\n(.*?)\\end\{longtable\}", text, flags=re.S)
    assert len(tables) == 3
    assert r"D'Arcy | \& Co\_1".replace("\\'", "'") in text
    for table, theirs in zip(tables, zip(*map(answers, papers()), strict=True), strict=True):
        heads, body = table.split("\\endhead\n")
        columns = heads.splitlines()[1].count(" & ")
        rows = body.strip().splitlines()
        assert len(rows) == len(CLASS)
        for row, values in zip(rows, theirs, strict=True):
            assert len(re.findall(r"(?<!\\)&", row)) == columns
            assert all(f"${value}$" in row for value in values)


def test_html_is_a_table_for_each_question() -> None:
    """A caption, a column for each part, a line for each learner; names stay text."""

    class Seen(HTMLParser):
        def __init__(self) -> None:
            super().__init__()
            self.names: list[str] = []
            self.words = ""

        def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
            self.names.append(tag)

        def handle_data(self, data: str) -> None:
            self.words += data

    seen = Seen()
    seen.feed(whole("html", papers()))
    assert seen.names.count("table") == seen.names.count("caption") == 3
    assert seen.names.count("tr") == 3 * (1 + len(CLASS))
    assert all(name in seen.words for name in CLASS)
    assert "Forces: answers of the class" in seen.words


def test_other_parts_stand_in_a_table_of_their_own() -> None:
    """A learner whose circuit has more to be found is not in a row of the others, whose cells would not fit."""
    keys = ("circuits.what-if", "coulomb.force")
    made = [make(Wanted(keys, level=2, seed=4, own=own, learner=f"Learner {own}", rule=6)) for own in range(1, 9)]
    counts = {len(answers(one)[0]) for one in made}
    assert len(counts) > 1
    tables = re.findall(r"^## Question (\d+)\n\n(.*?)(?=^## |\Z)", whole("markdown", made), flags=re.M | re.S)
    assert [number for number, _ in tables] == ["1"] * len(counts) + ["2"]
    named = []
    for _, table in tables:
        lines = table.strip().splitlines()
        assert len({line.count("|") for line in lines}) == 1, table
        named += [line.split(" | ")[0].removeprefix("| ") for line in lines[2:]]
    assert sorted(named) == sorted(2 * [one.wanted.learner for one in made])


@pytest.mark.parametrize("level", [1, 2, 3])
def test_short_memos_of_text_files_are_no_longer_than_twice_the_paper(level: int) -> None:
    """In Markdown and in LaTeX: lines of print, a drawing counted as the same for both; full working is longer."""
    made = make(Wanted(tuple(topics.topics()), count=6, level=level, seed=3))
    for paper, short, full in (
        (markdown.render(made), markdown.memo(made), markdown.memo(made, full=True)),
        (paper_latex.render(made), paper_latex.memo(made), paper_latex.memo(made, full=True)),
    ):
        assert printed(short) <= 2 * printed(paper)
        assert printed(short) < printed(full)


def printed(text: str) -> float:
    """About how many lines a text takes in print: 90 characters a line, a fraction two lines, a drawing a dozen."""
    text = text.partition("\\begin{document}")[2] or text
    drawings = len(re.findall(r"<svg|\\begin\{tikzpicture\}", text))
    text = re.sub(r"<svg.*?</svg>|\\begin\{tikzpicture\}.*?\\end\{tikzpicture\}", "", text, flags=re.S)
    lines = [line for line in text.splitlines() if re.search(r"\w", line) and not re.match(r"\\(begin|end)\b", line)]
    return 12 * drawings + sum(2 if r"\dfrac" in line else 1 + len(line) // 90 for line in lines)


@pytest.mark.skipif(not which("pdflatex"), reason="there is no pdflatex on this machine")
def test_a_latex_table_of_every_question_compiles(tmp_path: Path) -> None:
    """Put into a paper's document, the table of a class is set, and no row is wider than its page by a letter."""
    keys = tuple(topics.question_keys())
    made = [
        make(Wanted(keys, level=2, seed=8, own=at, heading="50 % & more_1", learner=name))
        for at, name in enumerate(CLASS, 1)
    ]
    document = paper_latex.render(made[0]).replace("\\end{document}", whole("latex", made) + "\\end{document}")
    (tmp_path / "class.tex").write_text(document, encoding="utf-8")
    command = ["pdflatex", "-interaction=nonstopmode", "-halt-on-error", "class.tex"]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, check=False)
    assert done.returncode == 0, done.stdout[-2000:]
    wide = re.findall(rb"Overfull \\hbox \(([\d.]+)pt too wide\) in alignment", done.stdout)
    assert [points for points in wide if float(points) > 5] == []
