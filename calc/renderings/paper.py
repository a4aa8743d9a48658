"""A question paper and its memo as HTML. docs/assets/paper.css is its style, on the page and in a saved file.

A question stays on one page if a page can hold it; a longer one, marked ``long``, breaks between its parts.
"""

from __future__ import annotations

import re
from html import escape

from calc.figures import Figure
from calc.language.maths import Maths
from calc.language.printing import counted
from calc.model.answers import AnswerShown, Mark, PartShown, StepShown
from calc.papers.papers import Item, Paper
from calc.renderings import svg
from calc.renderings.html import emphasised, maths, prose

SPACES = ("none", "blank", "lined")
MEMOS = ("short", "full")
_LETTER = {"formula": "F", "substitution": "S", "answer": "A", "point": "✓"}
_PAGE = 225.0  # mm of an A4 page that a question may fill
_LINE, _RULE = 5.4, 8.5  # mm: a line of print, a line to write on
_MOST_LINES = 14


def render(paper: Paper, *, space: str = "none") -> str:
    """The question paper. space: room to answer in, one of SPACES."""
    questions = "".join(_question(item, space) for item in paper.items)
    return (
        f'<article class="paper" data-own="{paper.wanted.own}">{_head(paper)}{questions}'
        f'<p class="paper-total">Total: {counted(paper.marks, "mark")}</p>{_sheet(paper)}</article>'
    )


def memo(paper: Paper, *, full: bool = False) -> str:
    """The memo, numbered like the paper: the lines that earn marks; with full working, every line and its reason."""
    whose = f" for {escape(paper.wanted.learner)}" if paper.wanted.learner else ""
    items = "".join(_memo_question(item, full) for item in paper.items)
    return (
        f'<article class="paper memo" data-own="{paper.wanted.own}"><header class="paper-head">'
        f"<h2>{escape(paper.heading)}: memo{whose}</h2>"
        '<p class="paper-rules">F formula, S substitution, A answer with its unit and direction, ✓ a point. '
        "An earlier wrong value, rightly used, earns full marks later.</p></header>"
        f'{items}<p class="paper-total">Total: {counted(paper.marks, "mark")}</p></article>'
    )


def numbered(item: Item, part: PartShown) -> str:
    """The number of a part in its paper: ``2.1``; of an only part, that of the question."""
    return f"{item.number}.{part.number}" if part.number else f"{item.number}"


def rules(paper: Paper) -> tuple[str, ...]:
    """The sentences above the questions."""
    decimals = paper.wanted.settings.decimals
    rounding = {0: "whole numbers", 1: "one decimal", 2: "two decimals"}.get(decimals, f"{decimals} decimals")
    told = ["Show every step: formula, substitution, answer with its unit and, where it has one, its direction."]
    if paper.sheet or paper.formulas:
        told.append("Constants and formulas are on the data sheet at the end.")
    return (*told, f"Round final answers only, to {rounding}.")


def _head(paper: Paper) -> str:
    name = f"<b>{escape(paper.wanted.learner)}</b>" if paper.wanted.learner else "<i></i>"
    told = "".join(f"<li>{escape(rule)}</li>" for rule in rules(paper))
    return (
        f'<header class="paper-head"><h2>{escape(paper.heading)}</h2>'
        f'<p class="paper-lines"><span>Name: {name}</span><span>Date: <i></i></span>'
        f'<span class="mark-line">Mark: <i></i> / {paper.marks}</span></p>'
        f'<ul class="paper-rules">{told}</ul></header>'
    )


def _question(item: Item, space: str) -> str:
    drawn = _figure(item.scene)
    parts = [_part(item, part, space) for part in item.worked.parts]
    long = _height(item, space) > _PAGE
    opening = f'<h3>Question {item.number}</h3><p class="paper-story">{prose(item.worked.story)}</p>{drawn}'
    return (
        f'<section class="paper-question{" long" if long else ""}">'
        f'<div class="paper-opening">{opening}</div>{"".join(parts)}'
        f'<p class="paper-worth">[{item.marks}]</p></section>'
    )


def _part(item: Item, part: PartShown, space: str) -> str:
    lines = room(part, space)
    kind = "lined" if ruled(part, space) else "blank"
    left = f'<div class="paper-space {kind}">{"<i></i>" * lines}</div>' if lines else ""
    return (
        f'<div class="paper-part"><p class="paper-ask"><span class="paper-number">{numbered(item, part)}</span><span'
        f' class="paper-words">{prose(part.ask)}</span><span class="paper-marks">({part.marks})</span></p>{left}</div>'
    )


def room(part: PartShown, space: str) -> int:
    """Lines to answer in: more for more marks, a block for a drawing."""
    if space == "none":
        return 0
    wanted = {"calculate": 1 + 2 * part.marks, "draw": 7}.get(part.kind, 2 * part.marks)
    return min(wanted, _MOST_LINES)


def ruled(part: PartShown, space: str) -> bool:
    """Whether its room has lines to write on: not for a drawing."""
    return space == "lined" and part.kind != "draw"


def _height(item: Item, space: str) -> float:
    """About how many mm the question takes on paper."""
    words = [item.worked.story, *(part.ask for part in item.worked.parts)]
    height = 14 + sum(_LINE * (1 + len(line) // 90) + 3 for line in words)
    height += sum(_RULE * room(part, space) for part in item.worked.parts)
    tall = re.search(r'height="([\d.]+)"', _figure(item.scene))
    return height + (float(tall[1]) * 0.21 if tall else 0.0)


def _figure(drawn: Figure | None) -> str:
    if drawn is None:
        return ""
    return f'<figure class="paper-figure">{svg.render(drawn)}</figure>'


def _sheet(paper: Paper) -> str:
    constants = "".join(
        f"<tr><td>{prose(line.words[0].upper() + line.words[1:])}</td>"
        f"<td>{maths(line.symbol)}</td><td>{maths(line.shown)}</td></tr>"
        for line in paper.sheet
    )
    forms = "".join(f"<li>{maths(form)}</li>" for form in paper.formulas)
    table = f'<table class="paper-constants"><tbody>{constants}</tbody></table>' if constants else ""
    listed = f'<ul class="paper-formulas">{forms}</ul>' if forms else ""
    if not table + listed:
        return ""
    return f'<section class="paper-sheet"><h3>Data sheet</h3>{table}{listed}</section>'


# --- the memo ---


def _memo_question(item: Item, full: bool) -> str:
    drawn = _figure(memo_figure(item)) if full else ""
    parts = "".join(_memo_part(item, part, full) for part in item.worked.parts)
    notes = "".join(f'<p class="memo-note">{prose(note)}</p>' for note in item.worked.notes if full)
    return (
        f'<section class="memo-question"><h3>Question {item.number} <span'
        f' class="paper-worth">[{item.marks}]</span></h3>{drawn}{parts}{notes}</section>'
    )


def memo_figure(item: Item) -> Figure | None:
    """The scene as a memo shows it, unless the paper or a part of the memo shows the same."""
    shown = item.worked.figure
    elsewhere = [item.scene, *(part.figure for part in item.worked.parts)]
    return None if shown in elsewhere else shown


def _memo_part(item: Item, part: PartShown, full: bool) -> str:
    body = "".join(_step(step, part, full) for step in part.steps)
    body += "".join(
        f'<p class="memo-line"><span>{emphasised(point.words, point.keys)}</span><span'
        f' class="memo-mark">{"✓" * point.marks}</span></p>'
        for point in part.points
    )
    drawn = _figure(memo_drawing(part, full))
    return (
        f'<div class="memo-part"><p class="paper-ask"><span class="paper-number">{numbered(item, part)}</span>'
        f'<span class="paper-words">{prose(part.ask)}</span><span class="paper-marks">({part.marks})</span></p>'
        f'<div class="memo-work">{body}{drawn}{_answer(part)}</div></div>'
    )


def step_lines(step: StepShown) -> list[tuple[Maths, str]]:
    """The lines of a step, none twice, each with its mark's letter or ''."""
    earned = {mark.kind: letter(mark) for mark in step.marks}
    lines = [(step.formula, earned.get("formula", ""))]
    if step.substitution.text != step.formula.text:
        lines.append((step.substitution, earned.get("substitution", "")))
    lines += [(line, "") for line in step.algebra]
    return [*lines, (step.result, earned.get("answer", ""))]


def memo_lines(step: StepShown, full: bool) -> list[tuple[Maths, str]]:
    """The lines of a step that a memo has: all with full working, else those that earn marks, and the result."""
    *before, result = step_lines(step)
    return [*(line for line in before if full or line[1]), result]


def memo_drawing(part: PartShown, full: bool) -> Figure | None:
    """The drawing of a part, where a memo has it: with full working, else where it is what was asked."""
    return part.figure if full or part.kind == "draw" else None


def letter(mark: Mark) -> str:
    """A mark as a memo letters it: ``✓F``; ``✓✓A`` for two."""
    return "✓" * mark.count + (_LETTER[mark.kind] if mark.kind != "point" else "")


def _step(step: StepShown, part: PartShown, full: bool) -> str:
    *before, (result, mark) = memo_lines(step, full)
    shown = _boxed(step) if _is_last(step, part) else maths(result, display=True)
    lines = "".join(_memo_line(maths(line, display=True), earned) for line, earned in before) + _memo_line(shown, mark)
    if not full:
        return f'<div class="memo-step">{lines}</div>'
    method = f'<p class="memo-note">{prose(step.method)}</p>' if step.method else ""
    return f'<div class="memo-step"><p class="memo-what">{prose(step.what)}</p>{lines}{method}</div>'


def _memo_line(shown: str, mark: str) -> str:
    return f'<div class="memo-line"><span>{shown}</span><span class="memo-mark">{mark}</span></div>'


def told_again(part: PartShown, full: bool) -> list[AnswerShown]:
    """The answers that a memo of text tells below the steps: with full working all, else what no last line says."""
    last = part.steps[-1].makes if part.steps else ""
    return [answer for answer in part.answers if full or answer.direction or answer.name != last]


def _is_last(step: StepShown, part: PartShown) -> bool:
    """Whether the step ends the part with its answer."""
    return part.answer is not None and step is part.steps[-1] and step.makes == part.answer.name


def _boxed(step: StepShown) -> str:
    where = f", {prose(step.direction.words)}" if step.direction else ""
    return f'<b class="memo-answer">{maths(step.result)}{where}</b>'


def _answer(part: PartShown) -> str:
    """Answers once more whose step is not the last: a size whose direction came after it, the first of two values."""
    asked = {answer.name for answer in part.answers}
    return "".join(f"<p>{_boxed(step)}</p>" for step in part.steps if step.makes in asked and not _is_last(step, part))
