"""From what a reader typed to data a question can be worked on, or to every refusal at once."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from calc.constants import Settings
from calc.printing import Style, exact, rounded
from calc.quantities import Quantity, QuantityError, parse_quantity
from calc.questions import Choice, Data, Input, Question, Refusal, Rows
from calc.units import Unit, parse_unit


class Refusals(Exception):
    """Everything that is wrong with the data, field by field."""

    def __init__(self, refusals: tuple[Refusal, ...]) -> None:
        super().__init__("; ".join(refusal.sentence for refusal in refusals))
        self.refusals = refusals


@dataclass(frozen=True)
class Read:
    """The data, the typed quantities by name (for the given lines), and warnings."""

    data: Data
    quantities: dict[str, Quantity]
    warnings: tuple[str, ...]


def read(
    question: Question,
    typed: Mapping[str, object],
    asked: str = "",
    settings: Settings | None = None,
    variant: int = 0,
) -> Read:
    """Read every field of ``question`` from ``typed`` (text by field name; a table is a list of rows).

    asked: the unknown, or '' to take the one empty box. Raises :class:`Refusals`
    with one sentence per field; never any other error for any text.
    """
    reader = _Reader(settings or Settings())
    asked = reader.unknown(question, typed, asked)
    told = {refusal.field for refusal in reader.refusals}
    for item in question.fields:
        if item.name == asked or item.name in told:
            continue
        entry = typed.get(item.name, "")
        if isinstance(item, Choice):
            reader.choice(item, entry)
        elif isinstance(item, Rows):
            reader.table(item, entry)
        else:
            reader.quantity(item, item.name, _text(entry))
    if reader.refusals:
        raise Refusals(tuple(reader.refusals))
    data = Data(
        values=reader.values,
        said=reader.said,
        choices=reader.choices,
        rows=reader.rows,
        rows_said=reader.rows_said,
        asked=asked,
        settings=reader.settings,
        variant=variant,
        halves={name: quantity.half for name, quantity in reader.quantities.items()},
        figures={name: quantity.figures for name, quantity in reader.quantities.items()},
    )
    return Read(data, reader.quantities, tuple(reader.warnings))


def _text(entry: object) -> str:
    return entry if isinstance(entry, str) else ""


def _listed(names: list[str]) -> str:
    return " and ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)


class _Reader:
    def __init__(self, settings: Settings) -> None:
        self.settings = settings
        self.values: dict[str, float] = {}
        self.said: dict[str, str] = {}
        self.choices: dict[str, str] = {}
        self.rows: dict[str, tuple[dict[str, float], ...]] = {}
        self.rows_said: dict[str, tuple[dict[str, str], ...]] = {}
        self.quantities: dict[str, Quantity] = {}
        self.refusals: list[Refusal] = []
        self.warnings: list[str] = []

    def unknown(self, question: Question, typed: Mapping[str, object], asked: str) -> str:
        if not question.unknowns:
            return ""
        if asked in question.unknowns:
            return asked
        empty = [name for name in question.unknowns if not _text(typed.get(name, "")).strip()]
        if len(empty) == 1:
            return empty[0]
        words = [_lower(question.find(name).words) for name in empty or question.unknowns]
        if empty:
            sentence = (
                f"Leave exactly one box empty, the one to find: {_listed(words)} are all empty."
            )
            self.refusals += [
                Refusal(name, "Fill this box, or leave only this one empty.") for name in empty
            ]
        else:
            sentence = "Leave exactly one box empty, the one to find; every box is filled. Or pick what to find."
        self.refusals.append(Refusal(None, sentence))
        return ""

    def choice(self, item: Choice, entry: object) -> None:
        key = _text(entry) or item.options[0][0]
        if key not in dict(item.options):
            words = _listed([f"“{name}”" for name, _ in item.options])
            self.refusals.append(
                Refusal(item.name, f"Choose one of {words} for {_lower(item.words)}.")
            )
            return
        self.choices[item.name] = key

    def table(self, item: Rows, entry: object) -> None:
        rows = (
            [row for row in entry if isinstance(row, Mapping)]
            if isinstance(entry, list | tuple)
            else []
        )
        filled = [row for row in rows if any(_text(cell).strip() for cell in row.values())]
        if not item.at_least <= len(filled) <= item.at_most:
            sentence = f"Give from {item.at_least} to {item.at_most} rows: there are {len(filled)}."
            self.refusals.append(Refusal(item.name, sentence))
            return
        values, said = [], []
        for index, row in enumerate(filled):
            prefix = f"{item.name}.{index}."
            for column in item.columns:
                self.quantity(column, prefix + column.name, _text(row.get(column.name, "")))
            values.append(
                {
                    c.name: self.values.pop(prefix + c.name)
                    for c in item.columns
                    if prefix + c.name in self.values
                }
            )
            said.append(
                {
                    c.name: self.said.pop(prefix + c.name)
                    for c in item.columns
                    if prefix + c.name in self.said
                }
            )
        self.rows[item.name], self.rows_said[item.name] = tuple(values), tuple(said)

    def quantity(self, item: Input, name: str, text: str) -> None:
        if item.optional and not text.strip():
            return
        try:
            quantity = parse_quantity(text, item.unit)
        except QuantityError as problem:
            self.refusals.append(Refusal(name, problem.sentence))
            return
        sentence = refused(item, quantity)
        if sentence:
            self.refusals.append(Refusal(name, sentence))
            return
        warning = doubtful(item, quantity, self.settings.style)
        if warning:
            self.warnings.append(warning)
        self.values[name] = quantity.value
        self.said[name] = said(quantity, item, self.settings.style)
        self.quantities[name] = quantity


def refused(item: Input, quantity: Quantity) -> str:
    """Why this value cannot be, or '' if it can."""
    measure = _measure(item, quantity)
    words = item.words[0].upper() + item.words[1:]
    if item.whole and quantity.value != int(quantity.value):
        return f"{words} is counted: type a whole number."
    if item.signed:
        return ""
    if item.over is not None and measure <= item.over:
        if measure < 0 and not item.refusal:
            return (
                f"{words} is a size: leave the minus sign out and choose the direction separately."
            )
        return (
            item.refusal
            or f"{words} must be greater than {'zero' if item.over == 0 else _plain(item.over)}."
        )
    if item.over is None and measure < 0:
        return item.refusal or f"{words} cannot be negative."
    if item.under is not None and measure >= item.under:
        return (
            item.refusal
            or f"{words} must be less than {_plain(item.under)}{item.unit if item.unit == '°' else ''}."
        )
    return ""


def doubtful(item: Input, quantity: Quantity, style: Style) -> str:
    """A warning for a value outside the sensible range, or ''."""
    measure = abs(_measure(item, quantity))
    if measure == 0 or item.low <= measure <= item.high:
        return ""
    end = item.low if measure < item.low else item.high
    unit = "°" if item.unit == "°" else f" {_base(item.unit).text}".rstrip()
    side = "small" if measure < item.low else "large"
    limit = exact(end, style).text + unit
    return (
        f"{item.words[0].upper()}{item.words[1:]} looks very {side} (usual: {'at least' if side == 'small' else 'at most'} {limit}). "
        "Check the prefix; it is worked out all the same."
    )


def said(quantity: Quantity, item: Input, style: Style) -> str:
    """The quantity as a sentence has it: "+6 nC", "15 cm"."""
    plus = "+" if item.signed and quantity.value > 0 else ""
    number = exact(float(quantity.number), style).text
    unit = quantity.unit.text
    return f"{plus}{number}{'' if unit == '°' else chr(0xA0) if unit else ''}{unit}"


def _measure(item: Input, quantity: Quantity) -> float:
    """The number limits speak of: SI, but degrees for an angle."""
    return math.degrees(quantity.value) if item.unit == "°" else quantity.value


def _base(unit: str) -> Unit:
    """The SI unit of the same kind, for printing limits."""
    return parse_unit(unit).si()


def _plain(value: float) -> str:
    return (
        rounded(value, Style(0, True)).text if value == int(value) else exact(value, Style()).text
    )


def _lower(words: str) -> str:
    return words[0].lower() + words[1:] if words[1:2].islower() else words
