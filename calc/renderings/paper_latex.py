"""A question paper and its memo as LaTeX documents: article, amsmath, and TikZ for the diagrams."""

from __future__ import annotations

from calc.figures import Figure
from calc.language.printing import counted
from calc.model.answers import PartShown
from calc.papers.papers import Item, Paper
from calc.renderings import tikz
from calc.renderings.html import LOWERED
from calc.renderings.latex import escape
from calc.renderings.paper import memo_drawing, memo_figure, memo_lines, numbered, room, ruled, rules, told_again

_PREAMBLE = r"""\documentclass[11pt,a4paper]{article}
\usepackage[utf8]{inputenc}
\usepackage[T1]{fontenc}
\usepackage{amsmath,amssymb}
\usepackage[margin=20mm]{geometry}
\usepackage{longtable}
\usepackage{tikz}
\setlength{\parindent}{0pt}
\setlength{\parskip}{6pt}
\begin{document}
"""
_NO_SKIP = r"\setlength{\parskip}{0pt}"
_WITH_ITS_ASK = 4  # lines of its room on the page of what is asked, at least
_END = "\\end{document}\n"


def words(text: str) -> str:
    """A sentence, escaped, with names such as F_AB set with their lowered part."""
    parts, end = [], 0
    for name in LOWERED.finditer(text):
        parts += [
            escape(text[end : name.start()]),
            rf"\textit{{{escape(name[1])}}}$_{{\text{{{name[2] or name[3]}}}}}$",
        ]
        end = name.end()
    return "".join([*parts, escape(text[end:])])


def render(paper: Paper, *, space: str = "none") -> str:
    """The question paper as a whole document. space: room to answer in, as in ``paper.render``."""
    name = words(paper.wanted.learner) or r"\rule{55mm}{0.4pt}"
    told = "\n".join(rf"\item {words(rule)}" for rule in rules(paper))
    blocks = [
        rf"{{\Large\textbf{{{words(paper.heading)}}}}}",
        rf"Name: {name} \hfill Date: \rule{{25mm}}{{0.4pt}} \hfill Mark: \rule{{12mm}}{{0.4pt}} / {paper.marks}",
        f"\\begin{{itemize}}\n{told}\n\\end{{itemize}}",
        *(_question(item, space) for item in paper.items),
        rf"\hfill\textbf{{Total: {counted(paper.marks, 'mark')}}}",
        _sheet(paper),
    ]
    return _PREAMBLE + "\n\n".join(block for block in blocks if block) + "\n" + _END


def memo(paper: Paper, *, full: bool = False) -> str:
    """The memo as a whole document: the lines that earn marks; with full working, every line and its reason."""
    whose = f" for {words(paper.wanted.learner)}" if paper.wanted.learner else ""
    blocks = [
        rf"{{\Large\textbf{{{words(paper.heading)}: memo{whose}}}}}",
        r"F formula, S substitution, A answer with its unit and direction, $\checkmark$ a point.",
        *(_memo(item, full) for item in paper.items),
        rf"\hfill\textbf{{Total: {counted(paper.marks, 'mark')}}}",
    ]
    return _PREAMBLE + "\n\n".join(blocks) + "\n" + _END


def _kept(blocks: list[str]) -> str:
    """Blocks that stay on one page."""
    body = "\n\n".join(block for block in blocks if block)
    return f"\\begin{{minipage}}{{\\linewidth}}\\setlength{{\\parskip}}{{6pt}}\n{body}\n\\end{{minipage}}"


def _question(item: Item, space: str) -> str:
    opening = [rf"\textbf{{Question {item.number}}}", words(item.worked.story), _figure(item.scene)]
    pieces = []
    for number, part in enumerate(item.worked.parts):
        kept, more = _space(part, space)
        first = [] if number else opening
        pieces += [r"\smallskip" if number else "", _kept([*first, _ask(item, part), kept]), more]
    return "\n\n".join(["\\medskip", *filter(None, pieces), rf"\hfill\textbf{{[{item.marks}]}}"])


def _space(part: PartShown, space: str) -> tuple[str, str]:
    """Room to answer in, ruled where lines were asked for: what stays with what is asked, what may go to a new page.

    There are as many lines as on the page. The room for a drawing is one.
    """
    lines = room(part, space)
    kept = lines if part.kind == "draw" else min(lines, _WITH_ITS_ASK)
    line = r"\rule{\linewidth}{0.3pt}" if ruled(part, space) else r"\rule{0pt}{0.3pt}"
    here = "".join(["\n\n\\vspace{8.5mm}" + line] * kept)
    # As far apart as those before, whose box hides its last line; what stands first on a page keeps the room above it.
    later = "".join(["\n\n\\allowbreak\\vspace*{8.5mm}" + line] * (lines - kept))
    return here and _NO_SKIP + here, later and f"{{{_NO_SKIP}\\prevdepth0pt{later}\\par}}"


def _ask(item: Item, part: PartShown) -> str:
    return rf"\textbf{{{numbered(item, part)}}}\quad {words(part.ask)} \hfill ({part.marks})"


def _memo(item: Item, full: bool) -> str:
    blocks = [rf"\medskip\textbf{{Question {item.number}}} \hfill \textbf{{[{item.marks}]}}"]
    blocks.append(_figure(memo_figure(item)) if full else "")
    for part in item.worked.parts:
        first, *others = _work(part, full)
        blocks += [_kept([_ask(item, part), first]), *others]
    blocks += [words(note) for note in item.worked.notes if full]
    return "\n\n".join(block for block in blocks if block)


def _work(part: PartShown, full: bool) -> list[str]:
    blocks = []
    for step in part.steps:
        lines = " \\\\\n".join(
            line.tex.replace(" = ", " &= ", 1) + (rf" && {_mark(mark)}" if mark else "")
            for line, mark in memo_lines(step, full)
        )
        what = rf"\emph{{{words(step.what)}}}" + "\n" if full else ""
        blocks.append(_kept([f"{what}\\begin{{align*}}\n{lines}\n\\end{{align*}}"]))
        if step.method and full:
            blocks.append(words(step.method))
    blocks += [rf"{words(point.words)} \hfill {_mark('✓' * point.marks)}" for point in part.points]
    blocks.append(_figure(memo_drawing(part, full)))
    for answer in told_again(part, full):
        where = f", {words(answer.direction.words)}" if answer.direction else ""
        blocks.append(rf"\textbf{{Answer:}} ${answer.shown.tex}${where}")
    return blocks


def _mark(letters: str) -> str:
    """Ticks and letter of a mark; it stands in text and in mathematics alike."""
    return r"\ensuremath{" + r"\checkmark" * letters.count("✓") + rf"\text{{{letters.strip('✓')}}}}}"


def _figure(drawn: Figure | None) -> str:
    return f"\\begin{{center}}\n{tikz.render(drawn)}\n\\end{{center}}" if drawn else ""


def _sheet(paper: Paper) -> str:
    if not paper.sheet and not paper.formulas:
        return ""
    rows = [rf"{words(line.words)} & ${line.symbol.tex}$ & ${line.shown.tex}$" for line in paper.sheet]
    body = " \\\\\n".join(rows)
    table = f"\\begin{{tabular}}{{lll}}\n{body}\n\\end{{tabular}}" if rows else ""
    forms = r" \qquad ".join(f"${form.tex}$" for form in paper.formulas)
    return _kept([r"\bigskip\hrule\medskip\textbf{Data sheet}", table, forms])
