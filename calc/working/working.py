"""Work a plan: every value in order, then the worked answer a reader sees.

``run`` is the one place values come from. Marking runs the same plan with a
learner's own value carried in, or with one step done a known wrong way.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import lru_cache, partial
from itertools import islice

from calc.figures.words import plain
from calc.language import printing
from calc.language.decimal_sign import in_sign
from calc.language.expressions import Equation, ExpressionError, equation, expression
from calc.language.maths import EQUALS, Maths, Shown, followed
from calc.language.printing import Printed, Style, exact, rounded
from calc.language.quantities import Quantity
from calc.language.symbols import symbol
from calc.language.units import parse_unit, speak
from calc.model.answers import (
    AnswerShown,
    CheckShown,
    ConstantShown,
    Direction,
    Given,
    PartShown,
    StepShown,
    WorkedAnswer,
)
from calc.model.constants import SHEET
from calc.model.directions import turned
from calc.model.questions import (
    Check,
    Choice,
    Data,
    Input,
    Part,
    Plan,
    Question,
    Root,
    Rows,
    Step,
    Topic,
    Worded,
)
from calc.working.reading import Read
from calc.working.roots import NoRoot, bisect


def run(
    plan: Plan,
    constants: Mapping[str, float],
    carry: Mapping[str, float] | None = None,
    instead: Mapping[str, str] | None = None,
    known: Mapping[str, float] | None = None,
) -> dict[str, float]:
    """Every named value, SI and unrounded, in the order of the steps.

    carry: values to take as found (a learner's own). instead: by name of a
    datum, constant or step, the expression used in place of the right one.
    known: what the same comes to with nothing instead; the steps before the first changed one are not worked again.
    Raises ExpressionError where a step has no real value.
    """
    carry, instead = carry or {}, instead or {}
    right = {**constants, **plan.values}
    first = 0
    if known and len(known) == len(right) + len(plan.steps) and not any(name in right for name in instead):
        first = next((at for at, step in enumerate(plan.steps) if step.makes in instead), 0)
        values = dict(islice(known.items(), len(right) + first))
    else:
        values = {
            name: expression(instead[name]).value(right) if name in instead else value for name, value in right.items()
        }
    for step in plan.steps[first:]:
        name = step.makes
        if name in carry:
            values[name] = carry[name]
        elif name in instead:
            values[name] = expression(instead[name]).value(sized(values, step.sizes))
        else:
            values[name] = made(step, values)
    return values


def made(step: Step, values: Mapping[str, float]) -> float:
    """The value that a step makes of others. Raises ExpressionError where that is not real."""
    if step.root:
        return _root(step, step.root, sized(values, step.sizes))
    return expression(step.how).value(sized(values, step.sizes))


def sized(values: Mapping[str, float], sizes: tuple[str, ...]) -> Mapping[str, float]:
    """``values`` with the size only of each name in ``sizes`` that has a value yet."""
    if not sizes:
        return values
    return {**values, **{name: abs(values[name]) for name in sizes if name in values}}


def _root(step: Step, root: Root, values: Mapping[str, float]) -> float:
    line = equation(root.equation)
    try:
        return bisect(lambda x: line.gap({**values, step.makes: x}), root.low, root.high)
    except NoRoot as none:  # a carried-in value may move the root out of its interval
        raise ExpressionError(f"{root.equation}: {none}") from None


def digits(
    value: float,
    unit: str,
    style: Style,
    *,
    data: bool = False,
    count: bool = False,
    figures: int = 6,
) -> Printed:
    """The number of a value, degrees for an angle: as given when ``data``, else rounded once."""
    if unit == "°":
        degrees = math.degrees(value)
        if data:
            return exact(_tidy(degrees), style, figures, plain=True)
        return printing.angle(degrees, style)
    if data:
        return exact(value, style, figures)
    return printing.count(value, style) if count else rounded(value, style)


def measure(value: float, unit: str, style: Style, *, data: bool = False, count: bool = False) -> Maths:
    """A value with its unit in both notations: as given when ``data``, else rounded once."""
    printed = digits(value, unit, style, data=data, count=count)
    if unit == "°":
        return followed(Shown(printed.tex + r"^\circ", printed.text + "°"), "", "")
    if not unit:
        return followed(Shown(printed.tex, printed.text), "", "")
    shown = parse_unit(unit)
    return followed(Shown(printed.tex, printed.text), rf"\ {shown.tex}", f"\N{NO-BREAK SPACE}{shown.text}")


def _tidy(degrees: float) -> float:
    """Degrees back from radians, without the last bit of noise."""
    return float(f"{degrees:.12g}")


def say(value: float, unit: str, style: Style, *, count: bool = False) -> str:
    """The rounded value for a screen reader."""
    words = digits(value, unit, style, count=count).spoken
    return f"{words} {speak(parse_unit(unit)) if unit else ''}".strip()


def work(topic: Topic, question: Question, read: Read) -> WorkedAnswer:
    """The worked answer of ``question`` for data already read. Raises Refusal for impossible data."""
    data = read.data
    plan = question.plan(data)
    values = run(plan, data.settings.constants())
    return show(topic, question, read, plan, values)


def show(topic: Topic, question: Question, read: Read, plan: Plan, values: Mapping[str, float]) -> WorkedAnswer:
    """The worked answer of a plan whose values are known (the right ones, or with a learner's carried in)."""
    style = read.data.settings.style
    writer = _Writer(plan, values, style)
    used = {name for step in plan.steps for name in (*equation(step.law).names, *expression(step.how).names)}
    parts = tuple(writer.part(part, index, len(plan.parts)) for index, part in enumerate(plan.parts))
    # A check that decides nothing for these values is left out. One that fails is a fault of ours,
    # which the tests look for; it helps no reader.
    proven = [agrees(check, values) for check in plan.checks]
    checks = tuple(writer.check(check) for check, holds in zip(plan.checks, proven, strict=True) if holds)
    data_sheet = read.data.settings.constants()
    return WorkedAnswer(
        question=f"{topic.key}.{question.key}",
        title=question.title,
        story=plan.story,
        asked=read.data.asked,
        given=given(question, read),
        constants=tuple(
            ConstantShown(name, line.words, _symbol(name), measure(values[name], line.unit, style, data=True))
            for name, line in SHEET.items()
            if name in used and name in data_sheet and name not in plan.values
        ),
        laws=tuple(topic.law(name) for name in question.laws),
        parts=parts,
        checks=checks,
        unproven=tuple(check.what for check, holds in zip(plan.checks, proven, strict=True) if not holds),
        draws=partial(plan.scene, values) if plan.scene else None,
        notes=plan.notes + writer.notes,
        warnings=read.warnings + plan.warnings,
        values=dict(values),
    )


def given(question: Question, read: Read) -> tuple[Given, ...]:
    """The data as typed and as they go into the formulas, in the order of the form."""
    lines: list[Given] = []
    style = read.data.settings.style
    for item in question.fields:
        if isinstance(item, Input) and item.name in read.quantities:
            lines.append(_given(item, item.name, item.name, read.quantities[item.name], style))
        elif isinstance(item, Rows):
            for index in range(len(read.data.rows.get(item.name, ()))):
                row = f"{item.row_words[0].upper()}{item.row_words[1:]} {index + 1}"
                for column in item.columns:
                    path, name = f"{item.name}.{index}.{column.name}", f"{column.name}{index + 1}"
                    if path in read.quantities:
                        named = replace(column, words=f"{row}: {column.words.lower()}")
                        lines.append(_given(named, path, name, read.quantities[path], style))
        elif isinstance(item, Worded) and read.data.texts.get(item.name):
            text = in_sign(read.data.texts[item.name], style.comma)
            lines.append(Given(item.name, item.words, Maths("", ""), text, Maths("", text), None))
        elif isinstance(item, Choice) and not (item.finds or item.besides) and matters(item, read.data):
            words = dict(item.options)[read.data.choices[item.name]]
            lines.append(Given(item.name, item.words, Maths("", ""), words, Maths("", words), None))
    return tuple(lines)


def matters(item: Choice, data: Data) -> bool:
    """Whether a choice is worth a line among the data."""
    return data.choices[item.name] not in item.quiet and (not item.asked or data.asked in item.asked)


def _given(item: Input, path: str, name: str, quantity: Quantity, style: Style) -> Given:
    number = exact(float(quantity.number), style)
    unit = quantity.unit
    gap_tex, gap_text = ("", "") if unit.text == "°" else (r"\ ", "\N{NO-BREAK SPACE}") if unit.text else ("", "")
    shown = followed(Shown(number.tex, number.text), gap_tex + unit.tex, gap_text + unit.text)
    conversion = None
    base = unit.si()
    if unit.text not in ("°", "") and unit.factor != 1:
        conversion = shown + EQUALS + measure(quantity.value, base.text, style, data=True)
    clear = quantity.unit_typed or not item.unit or quantity.value == 0
    note = "" if clear else f"no unit typed: read in {speak(unit)}"
    return Given(path, item.words, _symbol(name), quantity.text, shown, conversion, note)


@lru_cache(maxsize=4096)
def _in_symbols(line: str, comma: bool) -> Maths:
    return equation(line).maths(comma=comma)


@lru_cache(maxsize=4096)
def _symbol(name: str) -> Maths:
    sign = symbol(name)
    return Maths(sign.tex, sign.text)


@lru_cache(maxsize=4096)
def _named(name: str) -> Maths:
    """What stands before a value."""
    return _symbol(name) + EQUALS


MORE_DIGITS = (
    "Some lines take an earlier result with more digits than were printed for it: with the rounded number "
    "they would not give the value below them."
)
LOPSIDED = (
    "In one line two values differ so much in size that the smaller is lost in the digits of the larger, "
    "so the line as printed does not show it. Check the sizes and prefixes."
)
CLOSE = 0.01  # how far off a line may be with the numbers as printed
MOST_DECIMALS = 10
FLOATS = 2e-12  # relative: what floats and the dropping of noise in sums leave uncertain


type _Number = tuple[Shown, float]  # a name's number as it is put into a line, and its value


class _Writer:
    """Shows the steps of one plan with one set of values."""

    def __init__(self, plan: Plan, values: Mapping[str, float], style: Style) -> None:
        self.values, self.style = values, style
        self.units = {**{step.makes: step.unit for step in plan.steps}, **plan.units}
        self.counts = {step.makes for step in plan.steps if step.count}
        made = {step.makes for step in plan.steps}
        self.data = {name for name in values if name not in made}
        self.known = set(self.data)
        self.told: dict[tuple[str, int], _Number] = {}
        self.more_digits = self.lopsided = False

    @property
    def notes(self) -> tuple[str, ...]:
        """What is to be said of the digits of the lines."""
        return (MORE_DIGITS,) * self.more_digits + (LOPSIDED,) * self.lopsided

    def _number(self, name: str, more: int) -> _Number:
        """A name's number as it is put into a line, with ``more`` digits than usual, and its value."""
        found = self.told.get((name, more))
        if found is None:
            found = self.told[name, more] = self._told(name, more)
        return found

    def _told(self, name: str, more: int) -> _Number:
        angle = self.units.get(name) == "°"
        printed = digits(
            self.values[name],
            "°" if angle else "",
            Style(self.style.decimals + more, self.style.comma) if more else self.style,
            data=name in self.data,
            count=name in self.counts,
            figures=6 + more,
        )
        said = float(printed.number)
        if not angle:
            return Shown(printed.tex, printed.text), said
        if math.isclose(said, math.degrees(self.values[name]), rel_tol=1e-12):
            said = math.degrees(self.values[name])  # a tangent of 90° must stay what it was
        return Shown(printed.tex + r"^\circ", printed.text + "°"), math.radians(said)

    def _numbers(self, line: Equation, sizes: tuple[str, ...], unknown: str = "") -> dict[str, Shown]:
        """What stands for each known name of ``line``: with so many digits that the line still holds.

        Only the size is put in for a name in ``sizes``; ``unknown`` stays a letter.
        """
        names = [name for name in line.names if name in self.known and name != unknown]
        true = sized(self.values, sizes)
        open_ = not set(line.names) <= true.keys() | {unknown}  # one of two equations, with a letter that drops out

        def holds(numbers: Mapping[str, _Number]) -> bool:
            said = {name: value for name, (_, value) in numbers.items()}
            return open_ or _holds(line, sized({**true, **said}, sizes), abs(true.get(unknown, 0.0)))

        numbers = {name: self._number(name, 0) for name in names}
        if not holds(numbers):
            numbers = self._with_more(numbers, holds)
        shown = {name: number for name, (number, _) in numbers.items()}
        for name in sizes:
            if name in shown:
                shown[name] = Shown(shown[name].tex.lstrip("-"), shown[name].text.lstrip("−"))
        return shown

    def _with_more(
        self, fewest: dict[str, _Number], holds: Callable[[Mapping[str, _Number]], bool]
    ) -> dict[str, _Number]:
        """The numbers of a line that does not hold with the ``fewest`` digits, with as many as it takes."""

        def numbers(more: Mapping[str, int]) -> dict[str, _Number]:
            return {name: self._number(name, more[name]) for name in fewest}

        enough = (dict.fromkeys(fewest, m) for m in range(1, MOST_DECIMALS - self.style.decimals + 1))
        more = next((some for some in enough if holds(numbers(some))), None)
        if more is None:
            self.lopsided = True
            return fewest
        for name in fewest:  # only the numbers that matter keep them
            if any(more.values()):
                more[name] = next(m for m in range(more[name] + 1) if holds(numbers({**more, name: m})))
        self.more_digits = self.more_digits or any(more.values())
        return numbers(more)

    def part(self, part: Part, index: int, count: int) -> PartShown:
        steps = tuple(self.step(step) for step in part.steps)
        answers = [self.answer(steps, name, several=bool(part.also)) for name in part.asked]
        return PartShown(
            key=part.key,
            number=f"{index + 1}" if count > 1 else "",
            kind=part.kind,
            ask=part.ask,
            marks=part.marks,
            steps=steps,
            points=part.points,
            draws=partial(part.figure, self.values) if part.figure else None,
            answer=answers[-1] if answers else None,
            also=tuple(answers[:-1]),
            former=part.former,
        )

    def answer(self, steps: tuple[StepShown, ...], name: str, *, several: bool) -> AnswerShown:
        """The value of one step as an answer; called by its name where the part asks for several."""
        step = next(step for step in steps if step.makes == name)
        value = measure(step.value, step.unit, self.style, count=name in self.counts)
        return AnswerShown(
            name,
            step.value,
            step.unit,
            step.result if several else value,
            f"{plain(symbol(name).label)} is {step.spoken}" if several else step.spoken,
            step.direction,
        )

    def step(self, step: Step) -> StepShown:
        law, make = equation(step.law), equation(step.make)
        value = self.values[step.makes]
        known = self._numbers(law, step.sizes, step.makes)
        comma = self.style.comma
        algebra = tuple(_in_symbols(line, comma) for line in step.lines)
        rearranged = not step.root and step.law.replace(" ", "") != step.make.replace(" ", "")
        if rearranged:
            numbers = self._numbers(make, step.sizes, step.makes)
            algebra += (_in_symbols(step.make, comma), Maths.later(lambda: make.maths(numbers, comma=comma)))
        self.known.add(step.makes)
        return StepShown(
            makes=step.makes,
            what=step.what,
            why=step.why,
            formula=_in_symbols(step.law, comma),
            substitution=Maths.later(lambda: law.maths(known, comma=comma)),
            algebra=algebra,
            result=Maths.later(lambda: _named(step.makes) + measure(value, step.unit, self.style, count=step.count)),
            value=value,
            unit=step.unit,
            spoken=say(value, step.unit, self.style, count=step.count),
            direction=direction(step, self.values),
            marks=step.marks,
            method=self._method(step),
            plain=step.plain,
        )

    def _method(self, step: Step) -> str:
        """How a root was found, or which of two was kept."""
        if step.root:
            return step.root.method
        if not step.other:
            return ""
        try:
            other = equation(step.other).right.value(sized(self.values, step.sizes))
        except ExpressionError:
            return ""
        line = f"{symbol(step.makes).text} = {measure(other, step.unit, self.style).text}"
        return f"The other root is {line}. {step.dropped}".rstrip()

    def check(self, check: Check) -> CheckShown:
        """A check that holds; see :func:`agrees`."""
        if check.holds:
            return CheckShown(check.what, (), check.words)
        line = equation(check.equation)
        left = line.left.value(sized(self.values, check.sizes))
        # Both sides are one value: printed once, it cannot fall to either side of a rounding half.
        side = measure(left, "", self.style)
        return CheckShown(
            check.what,
            (
                _in_symbols(check.equation, self.style.comma),
                line.maths(self._numbers(line, check.sizes), comma=self.style.comma),
                side + EQUALS + side,
            ),
            check.words,
        )


def _holds(line: Equation, said: Mapping[str, float], unknown: float) -> bool:
    """Whether both sides of a line come to the same with the numbers as printed.

    A side that is nought gives no size to judge by: the unknown, one of the terms, does.
    """
    try:
        left, right = line.left.value(said), line.right.value(said)
    except ExpressionError:
        return False
    size = unknown if "0" in (line.left.source, line.right.source) else max(abs(left), abs(right))
    return abs(left - right) <= CLOSE * size


def agrees(check: Check, values: Mapping[str, float]) -> bool:
    """Whether a check comes out for these values, within its tolerance."""
    if check.holds:
        return check.holds(values)
    line, of = equation(check.equation), sized(values, check.sizes)
    try:
        left, right = line.left.value(of), line.right.value(of)
    except ExpressionError:
        return False
    return math.isclose(left, right, rel_tol=check.tolerance, abs_tol=0.0)


def decides(check: Check, values: Mapping[str, float]) -> bool:
    """Whether a check can tell right from wrong: not where its terms all but cancel, below what floats carry."""
    if check.holds:
        return True
    line, of = equation(check.equation), sized(values, check.sizes)
    try:
        gap, shift = line.gap(of), 0.0
        for name in line.names:
            shift += abs(line.gap({**of, name: of[name] * (1 + FLOATS)}) - gap)
    except ExpressionError:
        return False
    size = max(abs(line.left.value(of)), abs(line.right.value(of)))
    return shift <= check.tolerance * size or abs(gap) > shift


def direction(step: Step, values: Mapping[str, float]) -> Direction | None:
    """The direction of a step's value, for these values. A fixed one is that of a value above zero."""
    told = step.direction
    if callable(told):
        return told(values)
    return turned(told) if told is not None and values[step.makes] < 0 else told
