"""A worked answer as HTML. Every string is escaped here; class names are styled in docs/assets/booklet.css.

Mathematics is written as ``<span class="tex"><math alttext="plain text">…</math></span>``, which a browser sets
by itself; ``display`` is the class of a line of its own.
"""

from __future__ import annotations

import re
from collections.abc import Collection
from functools import lru_cache

from calc.figures import Figure
from calc.language.maths import EQUALS, Maths
from calc.language.printing import counted
from calc.model.answers import (
    CheckShown,
    Direction,
    Given,
    Mark,
    PartShown,
    Point,
    StepShown,
    WorkedAnswer,
)
from calc.renderings import mathml, svg
from calc.renderings.escaping import escaped as escape

_MARK = {
    "formula": ("F", "formula"),
    "substitution": ("S", "substitution"),
    "answer": ("A", "answer with unit"),
    "point": ("✓", "point"),
}

LONGEST_OPEN = 8  # steps; more are no page to read through, and are opened part by part


def render(
    answer: WorkedAnswer,
    *,
    open_parts: bool = True,
    drawn: bool = True,
    by_drawing: str = "",
    opened: Collection[str] | None = None,
) -> str:
    """The whole answer; several parts are folded when ``open_parts`` is false, or when they are long together.

    Without ``drawn`` the places of the figures stay empty, for ``drawings`` to be put into later.
    by_drawing: markup with the choices of how to draw, put below the first drawing of a part.
    opened: keys of the folded parts that a reader has open; of the others only the heads are there, and
    ``folded_parts`` takes their place later.
    """
    folded = _folds(answer, open_parts)
    parts = "".join(
        (
            part(shown, folded=folded, drawn=drawn, by_drawing=choices)
            if opened is None or not folded or _open(shown, opened)
            else _folded(shown)
        )
        for shown, choices in _with_choices(answer, by_drawing)
    )
    return (
        f'<article class="worked">{_warnings(answer.warnings)}<p class="story">{prose(answer.story)}</p>'
        f'<div class="data">{_given(answer)}{_place(DATA, answer, drawn)}</div>'
        f'<div class="parts">{parts}</div>{_checks(answer.checks)}{_notes(answer.notes)}'
        f'<p class="total">Total: {counted(answer.marks, "mark")}</p></article>'
    )


def folded_parts(
    answer: WorkedAnswer, *, open_parts: bool = True, by_drawing: str = "", opened: Collection[str] = ()
) -> dict[str, str]:
    """By key the parts of which ``render`` with the same ``opened`` has only the heads, places of figures empty."""
    if not _folds(answer, open_parts):
        return {}
    return {
        shown.key: part(shown, folded=True, drawn=False, by_drawing=choices)
        for shown, choices in _with_choices(answer, by_drawing)
        if not _open(shown, opened)
    }


def _folds(answer: WorkedAnswer, open_parts: bool) -> bool:
    long = sum(len(shown.steps) for shown in answer.parts) > LONGEST_OPEN
    return len(answer.parts) > 1 and (long or not open_parts)


def _with_choices(answer: WorkedAnswer, by_drawing: str) -> list[tuple[PartShown, str]]:
    """The parts, the first that has a drawing with the choices of how to draw."""
    first = next((shown for shown in answer.parts if shown.draws is not None), None)
    return [(shown, by_drawing if shown is first else "") for shown in answer.parts]


def _open(shown: PartShown, opened: Collection[str]) -> bool:
    return any(key in opened for key in (shown.key, *shown.former))


def maths(piece: Maths, *, display: bool = False) -> str:
    """One piece of mathematics."""
    return f'<span class="{"tex display" if display else "tex"}">{mathml.render(piece)}</span>'


def figure(drawn: Figure | None) -> str:
    """The figure with its text alternative, or nothing."""
    return f'<figure class="scene">{svg.render(drawn)}{_table(drawn)}</figure>' if drawn else ""


def _table(drawn: Figure) -> str:
    """What the figure says in numbers, to be opened below it; nothing where it has no table."""
    if not drawn.table:
        return ""
    heads = "".join(f'<th scope="col">{escape(head)}</th>' for head in drawn.table[0])
    rows = "".join(f"<tr>{''.join(f'<td>{escape(cell)}</td>' for cell in row)}</tr>" for row in drawn.table[1:])
    return (
        '<details class="plain as-table"><summary>As a table</summary>'
        f"<table><thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table></details>"
    )


DATA = "data"  # the place of the figure of the data; a part's is called "part." and its key


def _place(name: str, told: WorkedAnswer | PartShown, drawn: bool) -> str:
    """The place of a figure by its name, with the figure in it or not yet."""
    if told.draws is None:
        return ""
    picture = _picture(told.figure) if drawn and told.figure else ""
    return f'<figure class="scene" data-drawing="{escape(name)}">{picture}</figure>'


def drawings(answer: WorkedAnswer) -> dict[str, str]:
    """The SVG of every figure of the answer by the name of its place."""
    shown = {DATA: answer.figure, **{f"part.{one.key}": one.figure for one in answer.parts}}
    return {name: _picture(figure) for name, figure in shown.items() if figure}


@lru_cache(maxsize=8)
def _picture(figure: Figure) -> str:
    """The SVG of a figure and its table, kept for the next answer: one that shows the same is not laid out again."""
    return svg.render(figure) + _table(figure)


def part(shown: PartShown, *, folded: bool = False, drawn: bool = True, by_drawing: str = "") -> str:
    """One part: the words and marks, then steps, memo points, figure and answer."""
    body = "".join(step(item, index) for index, item in enumerate(shown.steps, 1))
    body = f'<ol class="steps">{body}</ol>' if body else ""
    body += _points(shown.points) + _place(f"part.{shown.key}", shown, drawn) + by_drawing + _answer(shown)
    if folded:
        return _folded(shown, body)
    return f'<section class="part" {_keys(shown)}><h3 class="part-ask">{_head(shown)}</h3>{body}</section>'


def _folded(shown: PartShown, body: str = "") -> str:
    """A part behind its head; without its body where that is to come later."""
    return f'<details class="part" {_keys(shown)}><summary>{_head(shown)}</summary>{body}</details>'


def _head(shown: PartShown) -> str:
    number = f'<span class="part-number">{escape(shown.number)}</span> ' if shown.number else ""
    return f'{number}{prose(shown.ask)} <span class="part-marks">({shown.marks})</span>'


def _keys(shown: PartShown) -> str:
    former = f' data-former="{escape(" ".join(shown.former))}"' if shown.former else ""
    return f'data-part="{escape(shown.key)}"{former}'


def step(shown: StepShown, index: int) -> str:
    """One numbered step: the reason beside the lines of working, the marks in the margin."""
    earned = {mark.kind: mark for mark in shown.marks}
    lines = [_line(shown.formula, earned.get("formula"))]
    if shown.substitution.text != shown.formula.text:
        lines.append(_line(shown.substitution, earned.get("substitution")))
    lines += [_line(line, None) for line in shown.algebra]
    if shown.method:
        lines.append(f'<p class="method">{prose(shown.method)}</p>')
    lines.append(_line(shown.result, earned.get("answer"), "result"))
    plain = f'<details class="plain"><summary>In plain words</summary><p>{prose(shown.plain)}</p></details>'
    return (
        f'<li class="step" data-step="{escape(shown.makes)}"><div class="reason"><p class="what">'
        f'<span class="step-number">{index}</span>{prose(shown.what)}</p><p class="why">{prose(shown.why)}</p>'
        f'{plain if shown.plain else ""}</div><div class="lines">{"".join(lines)}</div></li>'
    )


def _line(piece: Maths, mark: Mark | None, kind: str = "") -> str:
    tick = ""
    if mark:
        letter, words = _MARK[mark.kind]
        worth = counted(mark.count, "mark")
        tick = f'<span class="mark" title="{worth}: {words}"><span aria-hidden="true">{"✓" * mark.count}{letter}</span>'
        tick += f'<span class="spoken">{worth}: {words}</span></span>'
    return f'<div class="line {kind}">{maths(piece, display=True)}{tick}</div>'


def _answer(shown: PartShown) -> str:
    lines = ""
    for answer in shown.answers:
        last = shown.steps[-1]
        line = last.result if last.makes == answer.name else answer.shown
        spoken = f'<span class="spoken">Answer: {escape(answer.spoken)}</span>'
        lines += (
            f'<p class="answer">{spoken}<span aria-hidden="true">{maths(line)}</span>{_direction(answer.direction)}</p>'
        )
    return lines


def _direction(direction: Direction | None) -> str:
    return f'<span class="direction">, {prose(direction.words)}</span>' if direction else ""


def _points(points: tuple[Point, ...]) -> str:
    if not points:
        return ""
    rows = "".join(
        f'<li><span>{emphasised(point.words, point.keys)}</span><span class="mark"'
        f' title="{counted(point.marks, "mark")}">{"✓" * point.marks}</span></li>'
        for point in points
    )
    return f'<ul class="points">{rows}</ul>'


LOWERED = re.compile(r"\b([A-Za-zΔΣα-ω]{1,2})_(?:\{(\w+)\}|(\w+))")


@lru_cache(maxsize=4096)
def prose(words: str) -> str:
    """A sentence, escaped, with names such as F_AB set with their lowered part."""
    return LOWERED.sub(lambda name: f"<i>{name[1]}</i><sub>{name[2] or name[3]}</sub>", escape(words))


def emphasised(words: str, keys: tuple[str, ...]) -> str:
    """``words`` as prose, with each key phrase marked."""
    text = prose(words)
    for key in keys:
        text = text.replace(prose(key), f'<em class="key">{prose(key)}</em>', 1)
    return text


def _given(answer: WorkedAnswer) -> str:
    rows = "".join(_given_row(line) for line in answer.given)
    rows += "".join(
        f'<tr class="constant"><th scope="row">{prose(c.words[0].upper() + c.words[1:])}</th>'
        f"<td>{maths(c.symbol + EQUALS + c.shown)}</td></tr>"
        for c in answer.constants
    )
    return f'<table class="given"><caption>What is given</caption><tbody>{rows}</tbody></table>' if rows else ""


def _given_row(line: Given) -> str:
    if not line.symbol.text:
        return f'<tr><th scope="row">{prose(line.words)}</th><td>{escape(line.shown.text)}</td></tr>'
    note = f' <small class="note">{escape(line.note)}</small>' if line.note else ""
    shown = maths(line.symbol + EQUALS + (line.conversion or line.shown))
    return f'<tr><th scope="row">{prose(line.words)}</th><td>{shown}{note}</td></tr>'


def _checks(checks: tuple[CheckShown, ...]) -> str:
    if not checks:
        return ""
    items = said = ""
    for check in checks:
        lines = "".join(_line(line, None) for line in check.lines)
        words = f"<p>{prose(check.words)}</p>" if check.words else ""
        what = f'<p class="what">{prose(check.what)}</p>' if check.what != said else ""
        items += f'<div class="check">{what}{lines}{words}</div>'
        said = check.what
    return f'<section class="checks"><h3>Check it another way</h3>{items}</section>'


def _notes(notes: tuple[str, ...]) -> str:
    return "".join(f'<p class="note">{prose(note)}</p>' for note in notes)


def _warnings(warnings: tuple[str, ...]) -> str:
    return "".join(f'<p class="warning">{prose(warning)}</p>' for warning in warnings)
