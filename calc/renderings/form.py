"""The form of a question, made from its declaration. No form is written by hand.

What is to be found stands first, then the boxes that lead there; all others stand behind one line. A choice of how
to draw stands beside the drawing (:func:`by_drawing`), and the form keeps it unseen.
"""

from __future__ import annotations

from collections.abc import Mapping
from html import escape

from calc.language.symbols import symbol
from calc.language.units import parse_unit, speak
from calc.model.constants import Settings
from calc.model.questions import MOST_LETTERS, Choice, Field, Input, Question, Rows, Worded
from calc.working.leading import boxes
from calc.working.readback import ReadBack, readback

Backs = Mapping[str, ReadBack]


def render(key: str, question: Question, typed: Mapping[str, object], find: str = "") -> str:
    """The form of question ``key`` (``topic.question``) filled with ``typed``; ``find`` is what is to be found."""
    spot = key.replace(".", "-")
    backs = readback(question, typed, Settings())
    shown = boxes(question, find, typed)
    first, other = "", ""
    for item in question.fields:
        if isinstance(item, Choice) and (item.finds or item.by_drawing or item.besides):
            continue
        entry = _field(spot, item, typed, backs)
        if item.name in shown:
            first += entry
        else:
            other += entry
    return (
        f'<form class="numbers" id="form-{spot}" data-question="{escape(key)}"{_former(question.former)}'
        f' data-order="{" ".join(item.name for item in question.fields)}" novalidate autocomplete="off"'
        f'><h2 class="form-title">{escape(question.title)}: your numbers</h2>'
        f"{_wanted(spot, question, typed, find)}{_known(first, other)}{_drawn(spot, question, typed)}"
        f'<p class="problem whole" role="alert" hidden></p>{BUTTONS}<p'
        ' class="spoken heard" aria-live="polite"></p></form>'
    )


BUTTONS = (
    '<div class="buttons"><button type="submit" class="show-working">Show the working</button><details'
    ' class="more"><summary>Copy, or start again</summary><p><button type="button" class="back-to-example">Back to the'
    ' example</button><button type="button" class="copy-link">Copy a link to these numbers</button><button'
    ' type="button" data-copy="text">Copy the answer as text</button><button type="button" data-copy="latex">Copy it as'
    ' LaTeX</button></p></details><p class="status" role="status"></p></div>'
)
PASTE = "Rows copied from a spreadsheet, with their headings if you like, can be pasted into the first box."


def by_drawing(key: str, question: Question, choices: Mapping[str, str]) -> str:
    """The choices of how to draw, to stand beside the drawing; '' where there are none."""
    spot = key.replace(".", "-")
    picks = "".join(
        f'<label>{escape(item.words)} <select class="draws" name="{escape(item.name)}"'
        f' id="{spot}-draws-{escape(item.name)}">{_options(item, choices.get(item.name, ""))}</select></label>'
        for item in question.fields
        if isinstance(item, Choice) and item.by_drawing
    )
    return f'<p class="drawing-choices">{picks}</p>' if picks else ""


def _former(names: tuple[str, ...]) -> str:
    """What a box, a choice or a question was called before, for addresses made then."""
    return f' data-former="{escape(" ".join(names))}"' if names else ""


def _wanted(spot: str, question: Question, typed: Mapping[str, object], find: str) -> str:
    """What is to be found: one of a list, or one or several, or a choice that says it."""
    picks = "".join(
        (_several if item.several else _choice)(spot, item, str(typed.get(item.name, "")), typed) + _never(item)
        for item in question.fields
        if isinstance(item, Choice) and item.finds
    )
    more = "".join(
        _choice(spot, item, str(typed.get(item.name, "")), typed)
        for item in question.fields
        if isinstance(item, Choice) and item.besides
    )
    if picks or not question.unknowns:
        return f'<div class="wanted">{picks}{more}</div>' if picks or more else ""
    kind, how = ("checkbox", " <small>one or several</small>") if question.any_givens else ("radio", "")
    asked = find.split(",")
    named = (question.find(name) for name in question.unknowns)
    labels = "".join(
        f'<label class="find"><input type="{kind}" name="find" value="{escape(item.name)}"'
        f"{' checked' if item.name in asked else ''}><span>{escape(item.words)} <i"
        f' class="symbol">{_sign(item.name)}</i></span></label>'
        for item in named
    )
    return (
        f'<fieldset class="wanted"><legend>What is to be found{how}</legend><div'
        f' class="finds">{labels}</div>{more}</fieldset>'
    )


def _several(spot: str, item: Choice, value: str, _: Mapping[str, object]) -> str:
    """A choice of one thing or several: a box to tick for each."""
    name, asked = f"{spot}-{item.name}", (value or item.options[0][0]).split(",")
    labels = "".join(
        f'<label class="find"><input type="checkbox" name="{escape(item.name)}" value="{escape(key)}"'
        f' aria-describedby="{name}-problem"{" checked" if key in asked else ""}><span>{escape(_headed(words))} <i'
        f' class="symbol">{_sign(key)}</i></span></label>'
        for key, words in item.options
    )
    return (
        f'<fieldset class="several" data-field="{escape(item.name)}"{_former(item.former)}><legend>{escape(item.words)}'
        f' <small>one or several</small></legend><div class="finds">{labels}</div><p class="problem"'
        f' id="{name}-problem" hidden></p></fieldset>'
    )


def _headed(words: str) -> str:
    """Words of a sentence as they begin a line: "the tension" -> "Tension"."""
    plain = words.removeprefix("the ")
    return plain[0].upper() + plain[1:]


def _never(item: Choice) -> str:
    """What no data can answer, said in words instead of offered and refused."""
    return "".join(
        f'<details class="never"><summary>Why not {escape(words)}?</summary><p>{escape(why)}</p></details>'
        for _, words, why in item.never
    )


def _known(first: str, other: str) -> str:
    """What is given: the boxes that lead to what is asked, and behind one line all others."""
    more = (
        f'<details class="others"{"" if other else " hidden"}><summary>I know something else</summary><div'
        f' class="fields">{other}</div></details>'
    )
    return (
        '<fieldset class="known"><legend>What I know <small>a number alone is taken in the unit beside its'
        f' box</small></legend><div class="fields">{first}</div>{more}</fieldset>'
    )


def _drawn(spot: str, question: Question, typed: Mapping[str, object]) -> str:
    """The choices that stand beside the drawing, as the form sends them: not seen here."""
    return "".join(
        _choice(spot, item, str(typed.get(item.name, "")), typed, hidden=True)
        for item in question.fields
        if isinstance(item, Choice) and item.by_drawing
    )


def _field(spot: str, item: Field, typed: Mapping[str, object], backs: Backs) -> str:
    if isinstance(item, Choice):
        return _choice(spot, item, str(typed.get(item.name, "")), typed)
    if isinstance(item, Rows):
        return _table(spot, item, typed.get(item.name, ()), backs)
    if isinstance(item, Worded):
        return _worded(spot, item, str(typed.get(item.name, "")))
    return _entry(spot, item, item.name, str(typed.get(item.name, "")), backs)


def _worded(spot: str, item: Worded, value: str) -> str:
    """A box for words: no unit, nothing read back."""
    name = f"{spot}-{item.name}"
    hint = f'<small class="hint">{escape(item.help)}</small>' if item.help else ""
    return (
        f'<div class="entry worded{" long" if item.long else ""}" data-field="{escape(item.name)}"'
        f'{_former(item.former)}><label for="{name}">{escape(item.words)}{hint}</label><span class="box"><input'
        f' type="text" id="{name}" name="{escape(item.name)}" value="{escape(value, quote=True)}" inputmode="text"'
        f' spellcheck="false" autocapitalize="off" maxlength="{MOST_LETTERS}" aria-describedby="{name}-problem"></span>'
        f'<p class="problem" id="{name}-problem" hidden></p></div>'
    )


def _entry(spot: str, item: Input, path: str, value: str, backs: Backs) -> str:
    name = f"{spot}-{path.replace('.', '-')}"
    hint = f'<small class="hint">{escape(item.help)}</small>' if item.help else ""
    return (
        f'<div class="entry" data-field="{escape(path)}"{_former(item.former)}><label'
        f' for="{name}">{escape(item.words)} <i class="symbol">{_sign(item.name)}</i>{hint}</label>'
        f"{_box(name, path, item, value, backs.get(path))}<p"
        f' class="problem" id="{name}-problem" hidden></p></div>'
    )


def _box(name: str, path: str, item: Input, value: str, back: ReadBack | None, label: str = "") -> str:
    """The box, the unit outside it, and the line that says what was understood."""
    own = parse_unit(item.unit) if item.unit else None
    text, spoken = (own.text, f"in {speak(own)}") if own else ("", "")
    unit, heard, line = (back.unit, back.spoken, back.line) if back else (text, spoken, "")
    return (
        f'<span class="box"><input type="text" id="{name}" name="{escape(path)}" value="{escape(value, quote=True)}"'
        f' inputmode="text" spellcheck="false" autocapitalize="off" maxlength="200"{label}'
        f' aria-describedby="{name}-unit {name}-said {name}-problem"></span><span class="unit" id="{name}-unit"'
        f' data-own="{escape(text)}" data-own-spoken="{escape(spoken)}"><span aria-hidden="true">{escape(unit)}</span>'
        f'<span class="spoken">{escape(heard)}</span></span><small class="said" id="{name}-said">{escape(line)}</small>'
    )


def _sign(name: str) -> str:
    """The symbol with its lowered part, as HTML."""
    head, _, rest = symbol(name).label.partition("_")
    lowered, _, tail = rest.strip("{").partition("}")
    return escape(head) + (f"<sub>{escape(lowered)}</sub>{escape(tail)}" if rest else "")


def _choice(spot: str, item: Choice, value: str, typed: Mapping[str, object], hidden: bool = False) -> str:
    name = f"{spot}-{item.name}"
    rows = typed.get(item.counts, ())
    most = len(rows) if item.counts and isinstance(rows, list | tuple) else len(item.options)
    counts = f' data-counts="{escape(item.counts)}"' if item.counts else ""
    return (
        f'<div class="entry choice" data-field="{escape(item.name)}"{_former(item.former)}'
        f"{' hidden' if hidden else ''}>"
        f'<label for="{name}">{escape(item.words)}</label><span class="box"><select id="{name}"'
        f' name="{escape(item.name)}"{counts} aria-describedby="{name}-problem">{_options(item, value, most)}</select>'
        f'</span><p class="problem" id="{name}-problem" hidden></p></div>'
    )


def _options(item: Choice, value: str, most: int | None = None) -> str:
    """The options; those from ``most`` on count rows that are not there."""
    return "".join(
        f'<option value="{escape(key)}"{_former(tuple(old for old, new in item.renamed if new == key))}'
        f"{' selected' if key == value else ''}{' hidden disabled' if most is not None and index >= most else ''}>"
        f"{escape(words)}</option>"
        for index, (key, words) in enumerate(item.options)
    )


def _table(spot: str, item: Rows, rows: object, backs: Backs) -> str:
    given = [row for row in rows if isinstance(row, Mapping)] if isinstance(rows, list | tuple) else []
    given += [{}] * (item.at_least - len(given))
    head = "".join(f'<th scope="col">{escape(column.words)}{_column_sign(column)}</th>' for column in item.columns)
    body = "".join(_row(spot, item, index, row, backs) for index, row in enumerate(given))
    blank = (
        _row(spot, item, 0, {}, {})
        .replace(f"{item.name}.0.", f"{item.name}.#.")
        .replace(f"-{item.name}-0-", f"-{item.name}-#-")
    )
    return (
        f'<div class="entry table" data-field="{escape(item.name)}" data-least="{item.at_least}"'
        f' data-most="{item.at_most}"><table class="rows"><caption>{escape(item.words)}</caption><thead><tr><th'
        f' scope="col"><span class="spoken">Row</span></th>{head}<td></td></tr></thead>'
        f"<tbody>{body}</tbody></table><template>{blank}</template>"
        f'<button type="button" class="add-row">Add a {escape(item.row_words)}</button><p class="pasted"'
        f' role="status">{PASTE}</p><p class="problem" id="{spot}-{item.name}-problem" hidden></p></div>'
    )


def _column_sign(column: Input) -> str:
    """The symbol of a column, unless its words end with it ("Position x")."""
    said = column.words.endswith(f" {column.name}")
    return "" if said else f' <i class="symbol">{_sign(column.name)}</i>'


def _row(spot: str, item: Rows, index: int, row: Mapping[str, object], backs: Backs) -> str:
    cells = ""
    for column in item.columns:
        path = f"{item.name}.{index}.{column.name}"
        name = f"{spot}-{path.replace('.', '-')}"
        label = f' aria-label="{escape(column.words)}"'
        box = _box(name, path, column, str(row.get(column.name, "")), backs.get(path), label)
        cells += (
            f'<td data-field="{escape(path)}"><div class="cell">{box}</div><p class="problem" id="{name}-problem"'
            " hidden></p></td>"
        )
    remove = (
        '<td><button type="button" class="remove-row" aria-label="Remove this'
        f' {escape(item.row_words)}">×</button></td>'
    )
    return f'<tr><th scope="row" class="row-number">{index + 1}</th>{cells}{remove}</tr>'
