"""The sheet on which a learner answers a question: boxes, directions, formulas to pick, points to tick."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape
from typing import Any

from calc.language.decimal_sign import in_sign
from calc.language.expressions import equation
from calc.language.maths import Maths
from calc.language.symbols import symbol
from calc.model.questions import Part, Plan
from calc.renderings.html import maths

LINES = "The lines as on paper"
LINES_HINT = "formula, numbers put in, result, each on a line of its own"


def render(key: str, plan: Plan, lines: Sequence[Mapping[str, Any]], *, comma: bool = True) -> str:
    """The sheet of question ``key`` (``topic.question``). lines: as ``calc.desk.marking.sheet`` makes them.

    comma: the reader's decimal sign in formulas and examples.

    Field names are paths of the request: ``answers.find.value``, ``answers.find.steps.F_1``.
    """
    spot = f"sheet-{key.replace('.', '-')}"
    several = len(plan.parts) > 1
    parts = "".join(
        _part(spot, part, line, str(index) if several else "", comma)
        for index, (part, line) in enumerate(zip(plan.parts, lines, strict=True), 1)
    )
    return (
        f'<form class="answer-sheet" id="{escape(spot)}" data-question="{escape(key)}" novalidate autocomplete="off">'
        f'<p class="story">{escape(plan.story)}</p>{parts}'
        '<p class="buttons"><button type="submit" class="mark-it">Mark my work</button></p>'
        '<p class="status" role="status"></p></form>'
    )


def _part(spot: str, part: Part, line: Mapping[str, Any], number: str, comma: bool) -> str:
    path = f"answers.{part.key}"
    shown = f'<span class="part-number">{escape(number)}</span> ' if number else ""
    body = _points(path, line["tick"]) if "tick" in line else _boxes(spot, path, part, line, comma)
    if part.kind == "state":
        body = (
            _text_box(spot, f"{path}.statement", "In my own words", "one sentence; its key phrases are looked for")
            + body
        )
    return (
        f'<fieldset class="answer-part" data-part="{escape(part.key)}"><legend>{shown}{escape(part.ask)} '
        f'<span class="worth">({part.marks})</span></legend>{body}<div class="verdict-place"></div></fieldset>'
    )


def _points(path: str, items: Sequence[str]) -> str:
    rows = "".join(
        f'<li><label><input type="checkbox" name="{escape(path)}.said" value="{index}">'
        f" <span>{escape(words)}</span></label></li>"
        for index, words in enumerate(items)
    )
    return (
        '<details class="self-mark"><summary>Write your answer on paper first, then tick what it says</summary>'
        f'<ul class="points">{rows}</ul></details>'
    )


def _boxes(spot: str, path: str, part: Part, line: Mapping[str, Any], comma: bool) -> str:
    answer = str(line["answer"])
    units = {step.makes: step.unit for step in part.steps}
    boxes = "".join(
        _box(
            spot,
            f"{path}.value" if name == answer else f"{path}.steps.{name}",
            "Your answer for",
            name,
            ", with its unit" if units[name] else ", a number",
        )
        for name in part.asked
    )
    boxes += _direction(spot, f"{path}.direction", line)
    working = _text_box(spot, f"{path}.working", LINES, LINES_HINT) + "".join(
        _working(spot, path, name, name not in part.asked, line["formulas"].get(name, ()), comma) for name in units
    )
    return (
        f'<div class="fields">{boxes}</div><details class="own-working"><summary>My working, if I like: it can earn'
        f" marks for method</summary>{working}</details>"
    )


def _text_box(spot: str, path: str, words: str, hint: str) -> str:
    """A box for several lines."""
    name = f"{spot}-{path.replace('.', '-')}"
    return (
        f'<div class="entry lines" data-field="{escape(path)}"><label for="{escape(name)}">{escape(words)}'
        f' <small class="hint">{escape(hint)}</small></label><span class="box"><textarea id="{escape(name)}"'
        f' name="{escape(path)}" rows="3" spellcheck="false" autocapitalize="off" maxlength="2000"'
        f' aria-describedby="{escape(name)}-problem"></textarea></span><p class="problem"'
        f' id="{escape(name)}-problem" hidden></p></div>'
    )


def _box(spot: str, path: str, words: str, quantity: str = "", rest: str = "", hint: str = "") -> str:
    """A box whose label reads ``words``, the quantity's symbol if one is named, ``rest``."""
    name = f"{spot}-{path.replace('.', '-')}"
    shown = escape(words)
    if quantity:
        sign = symbol(quantity)
        shown += f" {maths(Maths(sign.tex, sign.text))}{escape(rest)}"
    small = f' <small class="hint">{escape(hint)}</small>' if hint else ""
    return (
        f'<div class="entry" data-field="{escape(path)}"><label for="{escape(name)}">{shown}{small}</label><span'
        f' class="box"><input type="text" id="{escape(name)}" name="{escape(path)}" spellcheck="false"'
        f' autocapitalize="off" maxlength="200" aria-describedby="{escape(name)}-problem"></span><p class="problem"'
        f' id="{escape(name)}-problem" hidden></p></div>'
    )


def _direction(spot: str, path: str, line: Mapping[str, Any]) -> str:
    if not line["directions"] and not line["angle"]:
        return ""
    if line["angle"]:
        options = "".join(f'<option value="{escape(words)}">' for _, words in line["directions"])
        name = f"{spot}-{path.replace('.', '-')}"
        box = _box(
            spot,
            path,
            "Direction",
            hint="with its angle: 30° above the +x axis, N 60° E, bearing 060, or degrees anticlockwise from +x",
        ).replace("<input ", f'<input list="{escape(name)}-list" ')
        return f'{box}<datalist id="{escape(name)}-list">{options}</datalist>'
    name = f"{spot}-{path.replace('.', '-')}"
    options = "".join(f'<option value="{escape(key)}">{escape(words)}</option>' for key, words in line["directions"])
    return (
        f'<div class="entry choice" data-field="{escape(path)}"><label for="{escape(name)}">Direction or'
        f' sign</label><span class="box"><select id="{escape(name)}" name="{escape(path)}"'
        f' aria-describedby="{escape(name)}-problem"><option value="">choose</option>{options}</select></span><p'
        f' class="problem" id="{escape(name)}-problem" hidden></p></div>'
    )


def _working(spot: str, path: str, name: str, has_value: bool, offers: Sequence[Sequence[str]], comma: bool) -> str:
    picks = "".join(
        f'<label class="formula"><input type="radio" name="{escape(path)}.formula.{escape(name)}"'
        f' value="{escape(key)}"> {maths(equation(line).maths(comma=comma))}</label>'
        for key, line in offers
    )
    if picks:
        picks = f'<fieldset class="formulas"><legend>The formula I used</legend>{picks}</fieldset>'
    hint = in_sign("for example 9e9 × 8e-9 × 5e-9 / 0,12^2", comma)
    boxes = _box(spot, f"{path}.substitution.{name}", "Numbers put in for", name, hint=hint)
    if has_value:
        boxes += _box(spot, f"{path}.steps.{name}", "My value of", name)
    return f'<div class="working-step">{picks}<div class="fields">{boxes}</div></div>'
