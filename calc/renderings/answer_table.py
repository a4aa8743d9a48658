"""The answers of a class, a table for each question and a line for each learner: in HTML, Markdown and LaTeX.

Each learner's paper is made by itself, so a table comes in pieces: those of any paper begin and end it, and each paper
adds its line.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from html import escape as html_escape

from calc.language.maths import Maths
from calc.model.answers import PartShown
from calc.papers.papers import Paper
from calc.renderings import latex, markdown, paper_latex
from calc.renderings.html import maths, prose
from calc.renderings.paper import numbered

_WIDTH, _NAMES = 170, 40  # mm: of a page in LaTeX, of its column of names


@dataclass(frozen=True)
class _Notation:
    """How a table is written: its pieces from the number of the question, the head of each column, or a line.

    escape: for a name; words: for a sentence, which may hold names of quantities.
    """

    escape: Callable[[str], str]
    title: Callable[[str], str]
    head: Callable[[int, Sequence[str]], str]
    row: Callable[[Sequence[str]], str]
    foot: str
    words: Callable[[str], str]
    value: Callable[[Maths], str]


def _html_head(number: int, columns: Sequence[str]) -> str:
    heads = "".join(f'<th scope="col">{name}</th>' for name in columns)
    return f'<table class="answers"><caption>Question {number}</caption><thead><tr>{heads}</tr></thead><tbody>'


def _html_row(cells: Sequence[str]) -> str:
    name, *others = cells
    return f'<tr><th scope="row">{name}</th>{"".join(f"<td>{cell}</td>" for cell in others)}</tr>'


def _markdown_head(number: int, columns: Sequence[str]) -> str:
    return f"## Question {number}\n\n{_markdown_row(columns)}{_markdown_row(['---'] * len(columns))}"


def _markdown_row(cells: Sequence[str]) -> str:
    return f"| {' | '.join(cells)} |\n"


def _latex_head(number: int, columns: Sequence[str]) -> str:
    count = len(columns) - 1
    wide = f"p{{{(_WIDTH - _NAMES) / count - 5:.0f}mm}}"
    heads = " & ".join(rf"\textbf{{{name}}}" for name in columns)
    return (
        f"\\begin{{longtable}}[l]{{@{{}}p{{{_NAMES}mm}}*{{{count}}}{{{wide}}}@{{}}}}\n"
        f"\\multicolumn{{{count + 1}}}{{@{{}}l}}{{\\textbf{{Question {number}}}}} \\\\*\n"
        f"{heads} \\\\*\\hline\\endhead\n"
    )


_NOTATIONS = {
    "html": _Notation(
        html_escape,
        lambda text: f"<h2>{text}</h2>",
        _html_head,
        _html_row,
        "</tbody></table>",
        prose,
        maths,
    ),
    "markdown": _Notation(
        markdown.escape,
        lambda text: f"# {text}\n\n",
        _markdown_head,
        _markdown_row,
        "\n",
        markdown.escape,
        lambda shown: f"${shown.tex.replace('|', r'\vert ')}$",
    ),
    "latex": _Notation(
        latex.escape,
        lambda text: f"{{\\Large\\textbf{{{text}}}}}\n\n",
        _latex_head,
        lambda cells: " & ".join(cells) + " \\\\\n",
        "\\end{longtable}\n\n",
        paper_latex.words,
        lambda shown: f"${shown.tex}$",
    ),
}


def pieces(paper: Paper) -> dict[str, dict[str, object]]:
    """By notation, what a paper has for its class's table: title, and for each question with answers its number, head,
    row and foot.

    The whole is the title, and for each question a table: the head, a row of each paper, and the foot. Papers of which
    a question has other parts, so another head, have a table of their own below it.
    """
    return {name: _pieces(paper, written) for name, written in _NOTATIONS.items()}


def _pieces(paper: Paper, written: _Notation) -> dict[str, object]:
    questions = []
    for item in paper.items:
        parts = [part for part in item.worked.parts if part.answers]
        if parts:
            columns = ["Name", *(numbered(item, part) for part in parts)]
            cells = [written.escape(paper.wanted.learner), *(_cell(part, written) for part in parts)]
            questions.append(
                {
                    "number": item.number,
                    "head": written.head(item.number, columns),
                    "row": written.row(cells),
                    "foot": written.foot,
                }
            )
    return {"title": written.title(written.escape(f"{paper.heading}: answers of the class")), "questions": questions}


def _cell(part: PartShown, written: _Notation) -> str:
    return "; ".join(
        written.value(answer.shown) + (f", {written.words(answer.direction.words)}" if answer.direction else "")
        for answer in part.answers
    )
