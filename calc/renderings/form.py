"""The form of a question, made from its declaration. No form is written by hand."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape

from calc.language.symbols import symbol
from calc.language.units import parse_unit, speak
from calc.model.questions import Choice, Field, Input, Question, Rows


def render(key: str, question: Question, typed: Mapping[str, object], find: str = "") -> str:
    """The form of question ``key`` (``topic.question``) filled with ``typed``; ``find`` is the unknown."""
    spot = key.replace(".", "-")
    fields = "".join(_field(spot, question, item, typed, find) for item in question.fields)
    lead = f'<p class="lead">{_lead(question)}</p>'
    return (
        f'<form class="numbers" id="form-{spot}" data-question="{escape(key)}"{_former(question.former)} novalidate'
        f' autocomplete="off"><h2 class="form-title">{escape(question.title)}: your numbers</h2>{lead}<div'
        f' class="fields">{fields}</div><p class="problem whole" role="alert" hidden></p><p class="buttons"><button'
        ' type="submit" class="show-working">Show the working</button><button type="button"'
        ' class="back-to-example">Back to the example</button><button type="button" class="copy-link">Copy a link to'
        ' these numbers</button><button type="button" data-copy="text">Copy the answer as text</button><button'
        ' type="button" data-copy="latex">Copy it as LaTeX</button></p><p class="status" role="status"></p><p'
        ' class="spoken heard" aria-live="polite"></p></form>'
    )


def _former(names: tuple[str, ...]) -> str:
    """What a box, a choice or a question was called before, for addresses made then."""
    return f' data-former="{escape(" ".join(names))}"' if names else ""


def _lead(question: Question) -> str:
    if question.any_givens:
        return "Type what you know, and tick what is to be found: one box or several. Leave the rest empty."
    if question.unknowns:
        return "Type your own numbers. Leave the box you want to find empty, or pick it."
    return "Type your own numbers."


def _field(spot: str, question: Question, item: Field, typed: Mapping[str, object], find: str) -> str:
    if isinstance(item, Choice):
        return _choice(spot, item, str(typed.get(item.name, "")))
    if isinstance(item, Rows):
        return _table(spot, item, typed.get(item.name, ()))
    pick = ""
    if item.name in question.unknowns:
        pick = "checkbox" if question.any_givens else "radio"
    asked = item.name in find.split(",")
    return _entry(spot, item, item.name, str(typed.get(item.name, "")), pick, asked)


def _entry(spot: str, item: Input, path: str, value: str, pick: str = "", asked: bool = False) -> str:
    name = f"{spot}-{path.replace('.', '-')}"
    unit = parse_unit(item.unit) if item.unit else None
    said = (
        f'<span class="unit" title="{escape(speak(unit))}">{escape(unit.text)}</span>'
        if unit
        else '<span class="unit"></span>'
    )
    hint = f'<small class="hint">{escape(item.help)}</small>' if item.help else ""
    find = ""
    if pick:
        chosen = " checked" if asked else ""
        find = (
            f'<label class="find"><input type="{pick}" name="find" value="{escape(path)}"{chosen}>'
            f'<span>find<span class="spoken"> {escape(item.words)}</span></span></label>'
        )
    return (
        f'<div class="entry{" asked" if asked else ""}" data-field="{escape(path)}"{_former(item.former)}><label'
        f' for="{name}">{escape(item.words)} <i class="symbol">{_sign(item.name)}</i>{hint}</label><span'
        f' class="box"><input type="text" id="{name}" name="{escape(path)}" value="{escape(value, quote=True)}"'
        ' inputmode="text" spellcheck="false" autocapitalize="off" maxlength="200"'
        f' aria-describedby="{name}-problem">{said}</span>{find}<p class="problem" id="{name}-problem"'
        " hidden></p></div>"
    )


def _sign(name: str) -> str:
    """The symbol with its lowered part, as HTML."""
    head, _, rest = symbol(name).label.partition("_")
    lowered, _, tail = rest.strip("{").partition("}")
    return escape(head) + (f"<sub>{escape(lowered)}</sub>{escape(tail)}" if rest else "")


def _asked(item: Choice) -> str:
    return f' data-asked="{escape(" ".join(item.asked))}"' if item.asked else ""


def _choice(spot: str, item: Choice, value: str) -> str:
    name = f"{spot}-{item.name}"
    options = "".join(
        f'<option value="{escape(key)}"{_former(tuple(old for old, new in item.renamed if new == key))}'
        f"{' selected' if key == value else ''}>{escape(words)}</option>"
        for key, words in item.options
    )
    return (
        f'<div class="entry choice" data-field="{escape(item.name)}"{_former(item.former)}{_asked(item)}><label'
        f' for="{name}">{escape(item.words)}</label><span class="box"><select id="{name}" name="{escape(item.name)}"'
        f' aria-describedby="{name}-problem">{options}</select></span><p class="problem" id="{name}-problem"'
        " hidden></p></div>"
    )


def _table(spot: str, item: Rows, rows: object) -> str:
    given = [row for row in rows if isinstance(row, Mapping)] if isinstance(rows, list | tuple) else []
    given += [{}] * (item.at_least - len(given))
    head = "".join(f'<th scope="col">{escape(column.words)}{_column_sign(column)}</th>' for column in item.columns)
    body = "".join(_row(spot, item, index, row) for index, row in enumerate(given))
    blank = (
        _row(spot, item, 0, {})
        .replace(f"{item.name}.0.", f"{item.name}.#.")
        .replace(f"-{item.name}-0-", f"-{item.name}-#-")
    )
    return (
        f'<div class="entry table" data-field="{escape(item.name)}" data-least="{item.at_least}"'
        f' data-most="{item.at_most}"><table class="rows"><caption>{escape(item.words)}</caption><thead><tr><th'
        f' scope="col"><span class="spoken">Row</span></th>{head}<td></td></tr></thead>'
        f"<tbody>{body}</tbody></table><template>{blank}</template>"
        f'<button type="button" class="add-row">Add a {escape(item.row_words)}</button><p class="problem"'
        f' id="{spot}-{item.name}-problem" hidden></p></div>'
    )


def _column_sign(column: Input) -> str:
    """The symbol of a column, unless its words end with it ("Position x")."""
    said = column.words.endswith(f" {column.name}")
    return "" if said else f' <i class="symbol">{_sign(column.name)}</i>'


def _row(spot: str, item: Rows, index: int, row: Mapping[str, object]) -> str:
    cells = ""
    for column in item.columns:
        path = f"{item.name}.{index}.{column.name}"
        name = f"{spot}-{path.replace('.', '-')}"
        unit = parse_unit(column.unit).text if column.unit else ""
        cells += (
            f'<td data-field="{escape(path)}"><span class="box"><input type="text" id="{name}" name="{escape(path)}"'
            f' value="{escape(str(row.get(column.name, "")), quote=True)}" spellcheck="false" autocapitalize="off"'
            f' maxlength="200" aria-label="{escape(column.words)}" aria-describedby="{name}-problem"><span'
            f' class="unit">{escape(unit)}</span></span><p class="problem" id="{name}-problem" hidden></p></td>'
        )
    remove = (
        '<td><button type="button" class="remove-row" aria-label="Remove this'
        f' {escape(item.row_words)}">×</button></td>'
    )
    return f'<tr><th scope="row" class="row-number">{index + 1}</th>{cells}{remove}</tr>'
