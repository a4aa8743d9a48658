"""A question paper and its memo as Markdown: formulas between dollar signs, diagrams as SVG elements."""

from __future__ import annotations

import re

from calc.figures import Figure
from calc.language.printing import counted
from calc.model.answers import PartShown
from calc.papers.papers import Item, Paper
from calc.renderings import svg
from calc.renderings.paper import memo_drawing, memo_figure, memo_lines, numbered, rules, told_again

_SPECIAL = re.compile(r"([\\`*_{}\[\]<>#|$~])")
_BEGINS = re.compile(r"^(\s*)([-+]|\d+[.)])(?=\s)")


def escape(text: str) -> str:
    """``text`` with whatever Markdown would take for markup made plain."""
    return _BEGINS.sub(lambda found: f"{found[1]}\\{found[2]}", _SPECIAL.sub(r"\\\1", text))


def render(paper: Paper) -> str:
    """The question paper; ends with a newline."""
    name = escape(paper.wanted.learner) or r"\_" * 24
    blocks = [
        f"# {escape(paper.heading)}",
        f"Name: {name} &emsp; Date: {r'\_' * 12} &emsp; Mark: {r'\_' * 6} / {paper.marks}",
        "\n".join(f"- {rule}" for rule in rules(paper)),
    ]
    for item in paper.items:
        blocks += [f"## Question {item.number}", escape(item.worked.story), _figure(item.scene)]
        blocks += [_ask(item, part) for part in item.worked.parts]
        blocks.append(f"**[{item.marks}]**")
    blocks += [f"**Total: {counted(paper.marks, 'mark')}**", _sheet(paper)]
    return "\n\n".join(block for block in blocks if block) + "\n"


def memo(paper: Paper, *, full: bool = False) -> str:
    """The memo; ends with a newline. The lines that earn marks; with full working, every line and its reason."""
    whose = f" for {escape(paper.wanted.learner)}" if paper.wanted.learner else ""
    blocks = [
        f"# {escape(paper.heading)}: memo{whose}",
        "F formula, S substitution, A answer with its unit and direction, ✓ a point.",
    ]
    for item in paper.items:
        blocks.append(f"## Question {item.number} [{item.marks}]")
        blocks.append(_figure(memo_figure(item)) if full else "")
        for part in item.worked.parts:
            blocks += [_ask(item, part), *_work(part, full)]
        blocks += [escape(note) for note in item.worked.notes if full]
    blocks.append(f"**Total: {counted(paper.marks, 'mark')}**")
    return "\n\n".join(block for block in blocks if block) + "\n"


def _ask(item: Item, part: PartShown) -> str:
    return f"**{numbered(item, part)}** {escape(part.ask)} ({part.marks})"


def _work(part: PartShown, full: bool) -> list[str]:
    blocks = []
    for step in part.steps:
        lines = [f"- ${line.tex}$ {mark}".rstrip() for line, mark in memo_lines(step, full)]
        blocks += [f"*{escape(step.what)}*" if full else "", "\n".join(lines), escape(step.method) if full else ""]
    if part.points:
        blocks.append("\n".join(f"- {escape(point.words)} {'✓' * point.marks}" for point in part.points))
    blocks.append(_figure(memo_drawing(part, full)))
    for answer in told_again(part, full):
        where = f", {escape(answer.direction.words)}" if answer.direction else ""
        blocks.append(f"**Answer:** ${answer.shown.tex}${where}")
    return blocks


def _figure(drawn: Figure | None) -> str:
    return svg.render(drawn) if drawn else ""


def _sheet(paper: Paper) -> str:
    if not paper.sheet and not paper.formulas:
        return ""
    rows = [f"| {escape(line.words)} | ${line.symbol.tex}$ | ${line.shown.tex}$ |" for line in paper.sheet]
    table = "\n".join(["| Quantity | Symbol | Value |", "| --- | --- | --- |", *rows]) if rows else ""
    forms = "\n".join(f"- ${form.tex}$" for form in paper.formulas)
    return "\n\n".join(block for block in ("## Data sheet", table, forms) if block)
