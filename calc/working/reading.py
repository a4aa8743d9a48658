"""From what a reader typed to data a question can be worked on, or to every refusal at once."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from decimal import Decimal
from fractions import Fraction

from calc.language.counts import as_count
from calc.language.printing import Style, exact, rounded, with_unit
from calc.language.quantities import Quantity, QuantityError, parse_quantity
from calc.language.units import Unit, UnitError, parse_unit, same_kind
from calc.model.constants import Settings
from calc.model.questions import MOST_LETTERS, Choice, Data, Input, Pick, Question, Refusal, Rows, Worded

# Prefixes a learner may have left out, the likeliest first (common practice, no source).
_USUAL_PREFIXES = ("c", "m", "µ", "n", "p", "k", "M")


class Refusals(Exception):
    """Everything that is wrong with the data, field by field."""

    def __init__(self, refusals: tuple[Refusal, ...]) -> None:
        super().__init__("; ".join(refusal.sentence for refusal in refusals))
        self.refusals = refusals


@dataclass(frozen=True)
class Read:
    """The data, the typed quantities by name (for the given lines), and warnings.

    understood: a bare number with the unit it was taken in, as it may be typed, by box.
    notes: for a bare number that was taken in the box's unit although another is likelier.
    """

    data: Data
    quantities: dict[str, Quantity]
    warnings: tuple[str, ...]
    understood: dict[str, str] = field(default_factory=dict)
    notes: tuple[Refusal, ...] = ()


def read(
    question: Question,
    typed: Mapping[str, object],
    asked: str = "",
    settings: Settings | None = None,
    variant: int = 0,
    asking: frozenset[str] = frozenset(),
) -> Read:
    """Read every field of ``question`` from ``typed`` (text by field name; a table is a list of rows).

    asked: the unknown, or '' to take the one empty box. asking: the boxes in which a bare number
    that fits another unit better is asked about; elsewhere it is taken in the box's unit, with a note.
    Raises :class:`Refusals` with one sentence per field; never any other error for any text.
    """
    typed, asked = as_named_now(question, typed, asked)
    reader = _Reader(question, settings or Settings(), asking)
    asked = reader.unknown(question, typed, asked)
    told = {refusal.field for refusal in reader.refusals}
    for item in question.fields:
        if item.name in asked.split(",") or item.name in told:
            continue
        entry = typed.get(item.name, "")
        if isinstance(item, Choice):
            reader.choice(item, typed.get(item.name))
        elif isinstance(item, Rows):
            reader.table(item, entry)
        elif isinstance(item, Worded):
            reader.worded(item, _text(entry))
        elif _text(entry).strip() or not question.any_givens:
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
        settings=reader.settings.asking(question.constants),
        variant=variant,
        halves={name: quantity.half for name, quantity in reader.quantities.items()},
        figures={name: quantity.figures for name, quantity in reader.quantities.items()},
        results=_results(question),
        measured=frozenset(item.name for item in _inputs(question) if item.result == "measured"),
        texts=reader.texts,
    )
    return Read(
        data,
        reader.quantities,
        tuple(reader.warnings),
        reader.understood,
        tuple(reader.notes),
    )


def by_sheet(quantity: Quantity, question: Question, settings: Settings) -> Quantity:
    """An energy typed in electronvolts, turned into joules with the e of the data sheet where the question has it.

    A learner multiplies by that e; the exact one would part the two in the third figure.
    """
    if "e" not in question.constants or not any(symbol.endswith("eV") for symbol, _ in quantity.unit.parts):
        return quantity
    volts = Fraction(quantity.number) * quantity.unit.factor / parse_unit("eV").factor
    return replace(quantity, value=float(volts * Fraction(repr(settings.constant("e")))))


def _text(entry: object) -> str:
    return entry if isinstance(entry, str) else ""


def _inputs(question: Question) -> list[Input]:
    return [item for item in question.fields if isinstance(item, Input)]


def _results(question: Question) -> tuple[str, ...]:
    """Names of results, those left out first standing first: what is measured, then what is laid out, from the
    foot of the form."""
    backwards = [item for item in reversed(_inputs(question)) if item.result]
    return tuple(item.name for item in sorted(backwards, key=lambda one: one.result != "measured"))


def _listed(names: list[str]) -> str:
    return " and ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)


def as_named_now(question: Question, typed: Mapping[str, object], asked: str) -> tuple[Mapping[str, object], str]:
    """Typed text and unknown of an address in which a box or a choice still has a former name."""
    former = {old: item.name for item in question.fields if not isinstance(item, Rows) for old in item.former}
    renamed = {
        (item.name, old): new for item in question.fields if isinstance(item, Choice) for old, new in item.renamed
    }
    if not former and not renamed:
        return typed, asked
    named = {former.get(name, name): entry for name, entry in typed.items()}
    return (
        {name: renamed.get((name, str(entry)), entry) for name, entry in named.items()},
        ",".join(former.get(name, name) for name in asked.split(",")),
    )


class _Reader:
    def __init__(self, question: Question, settings: Settings, asking: frozenset[str]) -> None:
        self.question = question
        self.settings = settings
        self.asking = asking
        self.understood: dict[str, str] = {}
        self.notes: list[Refusal] = []
        self.values: dict[str, float] = {}
        self.said: dict[str, str] = {}
        self.choices: dict[str, str] = {}
        self.rows: dict[str, tuple[dict[str, float], ...]] = {}
        self.rows_said: dict[str, tuple[dict[str, str], ...]] = {}
        self.quantities: dict[str, Quantity] = {}
        self.texts: dict[str, str] = {}
        self.refusals: list[Refusal] = []
        self.warnings: list[str] = []

    def unknown(self, question: Question, typed: Mapping[str, object], asked: str) -> str:
        if not question.unknowns:
            return ""
        if asked in question.unknowns:
            return asked
        several = [name for name in question.unknowns if name in asked.split(",")]
        if question.any_givens and several:
            return ",".join(several)
        empty = [name for name in question.unknowns if not _text(typed.get(name, "")).strip()]
        if len(empty) == 1:
            return empty[0]
        if question.asks in empty:
            return question.asks
        elder = [name for name in empty if getattr(question.find(name), "since", 1) == 1]
        if len(elder) == 1:  # a box that came later leaves a link that knew nothing of it as it was
            return elder[0]
        words = [_lower(question.find(name).words) for name in empty or question.unknowns]
        if empty and question.any_givens:
            sentence = f"Pick what to find: {_listed(words)} are empty."
        elif empty:
            sentence = f"Leave exactly one box empty, the one to find: {_listed(words)} are all empty."
            self.refusals += [Refusal(name, "Fill this box, or leave only this one empty.") for name in empty]
        else:
            sentence = "Leave exactly one box empty, the one to find; every box is filled. Or pick what to find."
        self.refusals.append(Refusal(None, sentence))
        return ""

    def choice(self, item: Choice, entry: object) -> None:
        if item.several and entry == "":
            self.refusals.append(Refusal(item.name, "Nothing is picked to be found. Pick one thing or several."))
            return
        text = _text(entry) or item.options[0][0]
        picked = text.split(",") if item.several else [text]
        for key in picked:
            why = next((why for name, _, why in item.never if name == key), "")
            if why:
                self.refusals.append(Refusal(item.name, why))
                return
            if key not in dict(item.options):
                words = _listed([f"“{name}”" for name, _ in item.options])
                self.refusals.append(Refusal(item.name, f"Choose one of {words} for {_lower(item.words)}."))
                return
        self.choices[item.name] = ",".join(name for name, _ in item.options if name in picked)

    def worded(self, item: Worded, text: str) -> None:
        if len(text) > MOST_LETTERS:
            self.refusals.append(
                Refusal(item.name, f"This text is too long: at most {MOST_LETTERS} letters are read. Shorten it.")
            )
            return
        self.texts[item.name] = " ".join(text.split())

    def table(self, item: Rows, entry: object) -> None:
        rows = [row for row in entry if isinstance(row, Mapping)] if isinstance(entry, list | tuple) else []
        # Paths count the rows as they stand on the page, empty ones too.
        filled = [(index, row) for index, row in enumerate(rows) if any(_text(cell).strip() for cell in row.values())]
        if not item.at_least <= len(filled) <= item.at_most:
            sentence = f"Give from {item.at_least} to {item.at_most} rows: there are {len(filled)}."
            self.refusals.append(Refusal(item.name, sentence))
            return
        values, said = [], []
        for position, (index, row) in enumerate(filled):
            prefix = f"{item.name}.{index}."
            for column in item.columns:
                self.quantity(column, prefix + column.name, _text(row.get(column.name, "")))
                if prefix + column.name in self.quantities:
                    quantity = self.quantities.pop(prefix + column.name)
                    self.quantities[f"{item.name}.{position}.{column.name}"] = quantity
            values.append(
                {c.name: self.values.pop(prefix + c.name) for c in item.columns if prefix + c.name in self.values}
            )
            said.append({c.name: self.said.pop(prefix + c.name) for c in item.columns if prefix + c.name in self.said})
        self.rows[item.name], self.rows_said[item.name] = tuple(values), tuple(said)

    def quantity(self, item: Input, name: str, text: str) -> None:
        if item.optional and not text.strip():
            return
        quantity = self.parsed(item, name, text)
        if quantity is None:
            return
        sentence = refused(item, quantity)
        if sentence:
            self.refusals.append(Refusal(name, sentence))
            return
        if not quantity.unit_typed and item.unit:
            doubt = self.bare(item, name, quantity)
            if doubt and name in self.asking:
                self.refusals.append(doubt)
                return
        warning = doubtful(item, quantity, self.settings.style)
        if warning:
            self.warnings.append(warning)
        self.values[name] = quantity.value
        self.said[name] = said(quantity, item, self.settings.style)
        self.quantities[name] = quantity

    def parsed(self, item: Input, name: str, text: str) -> Quantity | None:
        """What was typed in a box; a refusal is noted, with an example for this box, which only it needs."""
        comma, text = self.settings.comma, as_count(text, item.counted)
        try:
            return by_sheet(parse_quantity(text, item.unit, comma=comma), self.question, self.settings)
        except QuantityError:
            pass
        try:
            return parse_quantity(text, item.unit, example=self.example(item, name), comma=comma)
        except QuantityError as problem:
            self.refusals.append(Refusal(name, problem.sentence))
            return None

    def bare(self, item: Input, name: str, quantity: Quantity) -> Refusal | None:
        """Note the unit a bare number is taken in; the question to ask where another is likelier."""
        own = _pick(quantity, quantity.unit, self.settings.style)
        self.understood[name] = own.text
        units = likelier_units(item, quantity, self.shown(item, name))
        if not units:
            return None
        others = tuple(_pick(quantity, unit, self.settings.style) for unit in units)
        words = " or ".join(pick.words for pick in others)
        if name in self.asking:
            sentence = f"No unit was typed: {', '.join(pick.words for pick in others)}, or {own.words}?"
            return Refusal(name, sentence, (*others, own))
        sentence = f"No unit was typed, so this was taken as {own.words}. Did you mean {words}?"
        self.notes.append(Refusal(name, sentence, (own, *others)))
        return None

    def shown(self, item: Input, name: str) -> Quantity | None:
        """What the page's own example has in this box, if that is a quantity."""
        head, _, _ = name.partition(".")
        entry = self.question.example.get(head, "")
        entries = (
            [row.get(item.name, "") for row in entry if isinstance(row, Mapping)]
            if isinstance(entry, list | tuple)
            else [entry]
        )
        found = None
        for text in map(_text, entries):
            try:
                quantity = parse_quantity(text, item.unit)
            except QuantityError:
                continue
            if found is None or not found.value:
                found = quantity
        return found

    def example(self, item: Input, name: str) -> str:
        """A value for this box, as a sentence has it: the page's own, or one in the middle of its range."""
        shown = self.shown(item, name)
        if shown is not None and shown.value:
            return said(shown, item, self.settings.style)
        unit = parse_unit(item.unit)
        middle = math.sqrt(item.low * item.high)
        number = middle if item.unit == "°" else unit.from_si(middle)
        plain = Decimal(1).scaleb(round(math.log10(number)))
        if item.whole:
            plain = max(plain, Decimal(1))
        return with_unit(exact(plain, self.settings.style), unit).text


def likelier_units(item: Input, quantity: Quantity, shown: Quantity | None) -> tuple[Unit, ...]:
    """Units in which a bare number would be of a sensible size, where the box's own gives none.

    The unit of the page's example or the SI unit, if one of them fits; else at most two with a usual prefix.
    """
    if not quantity.value or _sensible(item, quantity.number, quantity.unit):
        return ()
    own = quantity.unit
    first = [shown.unit] if shown is not None else []
    for units in ([*first, own.si()], _prefixed(own)):
        fitting = {
            unit.text: unit
            for unit in units
            if unit.text and unit.text != own.text and _sensible(item, quantity.number, unit)
        }
        if fitting:
            return tuple(fitting.values())[:2]
    return ()


def _prefixed(unit: Unit) -> list[Unit]:
    if unit.is_angle or len(unit.parts) != 1:
        return []
    base = "g" if unit.si().text == "kg" else unit.si().text
    found = []
    for prefix in _USUAL_PREFIXES:
        try:
            other = parse_unit(prefix + base)
        except UnitError:
            continue
        if same_kind(other, unit):
            found.append(other)
    return found


def _sensible(item: Input, number: Decimal, unit: Unit) -> bool:
    try:
        measure = abs(unit.to_si(number))
    except OverflowError:
        return False
    if item.unit == "°":
        measure = math.degrees(measure)
    below = item.under is None or measure < item.under
    return item.low <= measure <= item.high and below


def _pick(quantity: Quantity, unit: Unit, style: Style) -> Pick:
    """A bare number with a unit: as a teacher writes it, and as it may be typed."""
    gap = "" if unit.text == "°" else " "
    words = with_unit(exact(quantity.number, style), unit).text
    return Pick(words, f"{quantity.text.strip().rstrip(' .')}{gap}{unit.text}")


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
            return f"{words} is a size: leave the minus sign out and choose the direction separately."
        return item.refusal or f"{words} must be greater than {'zero' if item.over == 0 else _plain(item.over)}."
    if item.over is None and measure < 0:
        return item.refusal or f"{words} cannot be negative."
    if item.under is not None and measure >= item.under:
        return item.refusal or f"{words} must be less than {_plain(item.under)}{item.unit if item.unit == '°' else ''}."
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
        f"{item.words[0].upper()}{item.words[1:]} looks very {side} (usual:"
        f" {'at least' if side == 'small' else 'at most'} {limit}). Check the prefix; it is worked out all the same."
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
    return rounded(value, Style(0, True)).text if value == int(value) else exact(value, Style()).text


def _lower(words: str) -> str:
    return words[0].lower() + words[1:] if words[1:2].islower() else words
