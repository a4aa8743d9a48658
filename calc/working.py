"""Work a plan: every value in order, then the worked answer a reader sees.

``run`` is the one place values come from. Marking runs the same plan with a
learner's own value carried in, or with one step done a known wrong way.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from calc.answers import (
    AnswerShown,
    CheckShown,
    ConstantShown,
    Direction,
    Given,
    PartShown,
    StepShown,
    WorkedAnswer,
)
from calc.constants import SHEET
from calc.expressions import ExpressionError, Maths, Shown, equation, expression
from calc.figures.words import plain
from calc.printing import Style, exact, rounded, spoken
from calc.quantities import Quantity
from calc.questions import Check, Choice, Data, Input, Part, Plan, Question, Root, Rows, Step, Topic
from calc.reading import Read
from calc.roots import NoRoot, bisect
from calc.symbols import symbol
from calc.units import parse_unit, speak


def run(
    plan: Plan,
    constants: Mapping[str, float],
    carry: Mapping[str, float] | None = None,
    instead: Mapping[str, str] | None = None,
) -> dict[str, float]:
    """Every named value, SI and unrounded, in the order of the steps.

    carry: values to take as found (a learner's own). instead: by name of a
    datum, constant or step, the expression used in place of the right one.
    Raises ExpressionError where a step has no real value.
    """
    carry, instead = carry or {}, instead or {}
    right = {**constants, **plan.values}
    values = {
        name: expression(instead[name]).value(right) if name in instead else value
        for name, value in right.items()
    }
    for step in plan.steps:
        name = step.makes
        if name in carry:
            values[name] = carry[name]
        elif name in instead:
            values[name] = expression(instead[name]).value(sized(values, step.sizes))
        elif step.root:
            values[name] = _root(step, step.root, sized(values, step.sizes))
        else:
            values[name] = expression(step.how).value(sized(values, step.sizes))
    return values


def sized(values: Mapping[str, float], sizes: tuple[str, ...]) -> dict[str, float]:
    """``values`` with the size only of each name in ``sizes``."""
    return {**values, **{name: abs(values[name]) for name in sizes}}


def _root(step: Step, root: Root, values: dict[str, float]) -> float:
    line = equation(root.equation)
    try:
        return bisect(lambda x: line.gap({**values, step.makes: x}), root.low, root.high)
    except NoRoot as none:  # a carried-in value may move the root out of its interval
        raise ExpressionError(f"{root.equation}: {none}") from None


def measure(value: float, unit: str, style: Style, *, data: bool = False) -> Maths:
    """A value with its unit in both notations: as given when ``data``, else rounded once."""
    angle = unit == "°"
    number = math.degrees(value) if angle else value
    printed = exact(_tidy(number) if angle else number, style) if data else rounded(number, style)
    if angle:
        return Maths(printed.tex + r"^\circ", printed.text + "°")
    if not unit:
        return Maths(printed.tex, printed.text)
    shown = parse_unit(unit)
    return Maths(rf"{printed.tex}\ {shown.tex}", f"{printed.text}\N{NO-BREAK SPACE}{shown.text}")


def _tidy(degrees: float) -> float:
    """Degrees back from radians, without the last bit of noise."""
    return float(f"{degrees:.12g}")


def say(value: float, unit: str, style: Style) -> str:
    """The rounded value for a screen reader."""
    number = math.degrees(value) if unit == "°" else value
    return f"{spoken(number, style)} {speak(parse_unit(unit)) if unit else ''}".strip()


def work(topic: Topic, question: Question, read: Read) -> WorkedAnswer:
    """The worked answer of ``question`` for data already read. Raises Refusal for impossible data."""
    data = read.data
    plan = question.plan(data)
    values = run(plan, data.settings.constants())
    return show(topic, question, read, plan, values)


def show(
    topic: Topic, question: Question, read: Read, plan: Plan, values: Mapping[str, float]
) -> WorkedAnswer:
    """The worked answer of a plan whose values are known (the right ones, or with a learner's carried in)."""
    style = read.data.settings.style
    writer = _Writer(plan, values, style)
    used = {
        name
        for step in plan.steps
        for name in (*equation(step.law).names, *expression(step.how).names)
    }
    return WorkedAnswer(
        question=f"{topic.key}.{question.key}",
        title=question.title,
        story=plan.story,
        asked=read.data.asked,
        given=given(question, read),
        constants=tuple(
            ConstantShown(
                name, line.words, _symbol(name), measure(values[name], line.unit, style, data=True)
            )
            for name, line in SHEET.items()
            if name in used and name not in plan.values
        ),
        laws=tuple(topic.law(name) for name in question.laws),
        parts=tuple(
            writer.part(part, index, len(plan.parts)) for index, part in enumerate(plan.parts)
        ),
        checks=tuple(writer.check(check) for check in plan.checks),
        figure=plan.scene(values) if plan.scene else None,
        notes=plan.notes,
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
        elif isinstance(item, Choice) and matters(item, read.data):
            words = dict(item.options)[read.data.choices[item.name]]
            lines.append(Given(item.name, item.words, Maths("", ""), words, Maths("", words), None))
    return tuple(lines)


def matters(item: Choice, data: Data) -> bool:
    """Whether a choice is worth a line among the data."""
    return data.choices[item.name] not in item.quiet and (
        not item.asked or data.asked in item.asked
    )


def _given(item: Input, path: str, name: str, quantity: Quantity, style: Style) -> Given:
    number = exact(float(quantity.number), style)
    unit = quantity.unit
    gap_tex, gap_text = (
        ("", "") if unit.text == "°" else (r"\ ", "\N{NO-BREAK SPACE}") if unit.text else ("", "")
    )
    shown = Maths(number.tex + gap_tex + unit.tex, number.text + gap_text + unit.text)
    conversion = None
    base = unit.si()
    if unit.text not in ("°", "") and unit.factor != 1:
        conversion = (
            shown + Maths(" = ", " = ") + measure(quantity.value, base.text, style, data=True)
        )
    clear = quantity.unit_typed or not item.unit or quantity.value == 0
    note = "" if clear else f"no unit typed: read in {speak(unit)}"
    return Given(path, item.words, _symbol(name), quantity.text, shown, conversion, note)


def _symbol(name: str) -> Maths:
    sign = symbol(name)
    return Maths(sign.tex, sign.text)


class _Writer:
    """Shows the steps of one plan with one set of values."""

    def __init__(self, plan: Plan, values: Mapping[str, float], style: Style) -> None:
        self.values, self.style = values, style
        self.units = {**{step.makes: step.unit for step in plan.steps}, **plan.units}
        self.shown: dict[str, Shown] = {}
        made = {step.makes for step in plan.steps}
        for name, value in values.items():
            if name not in made:
                self.shown[name] = self._number(name, value, data=True)

    def _number(self, name: str, value: float, *, data: bool) -> Shown:
        unit = "°" if self.units.get(name) == "°" else ""
        printed = measure(value, unit, self.style, data=data)
        return Shown(printed.tex, printed.text)

    def _sized(self, sizes: tuple[str, ...]) -> dict[str, Shown]:
        """Every number as shown, without the sign where only the size is put in."""
        bare = {
            name: Shown(self.shown[name].tex.lstrip("-"), self.shown[name].text.lstrip("−"))
            for name in sizes
        }
        return {**self.shown, **bare}

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
            figure=part.figure(self.values) if part.figure else None,
            answer=answers[-1] if answers else None,
            also=tuple(answers[:-1]),
        )

    def answer(self, steps: tuple[StepShown, ...], name: str, *, several: bool) -> AnswerShown:
        """The value of one step as an answer; called by its name where the part asks for several."""
        step = next(step for step in steps if step.makes == name)
        value = measure(step.value, step.unit, self.style)
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
        known = {
            name: shown for name, shown in self._sized(step.sizes).items() if name != step.makes
        }
        comma = self.style.comma
        algebra = tuple(equation(line).maths(comma=comma) for line in step.lines)
        rearranged = not step.root and step.law.replace(" ", "") != step.make.replace(" ", "")
        if rearranged:
            algebra += (make.maths(comma=comma), make.maths(known, comma=comma))
        name = _symbol(step.makes)
        result = name + Maths(" = ", " = ") + measure(value, step.unit, self.style)
        self.shown[step.makes] = self._number(step.makes, value, data=False)
        return StepShown(
            makes=step.makes,
            what=step.what,
            why=step.why,
            formula=law.maths(comma=comma),
            substitution=law.maths(known, comma=comma),
            algebra=algebra,
            result=result,
            value=value,
            unit=step.unit,
            spoken=say(value, step.unit, self.style),
            direction=direction(step, self.values),
            marks=step.marks,
            method=step.root.method if step.root else "",
            plain=step.plain,
        )

    def check(self, check: Check) -> CheckShown:
        if check.holds:
            return CheckShown(check.what, (), check.holds(self.values), check.words)
        line = equation(check.equation)
        values = sized(self.values, check.sizes)
        left, right = line.left.value(values), line.right.value(values)
        agrees = math.isclose(left, right, rel_tol=check.tolerance, abs_tol=0.0)
        mark = Maths(" = ", " = ") if agrees else Maths(r" \neq ", " ≠ ")
        both = measure(left, "", self.style) + mark + measure(right, "", self.style)
        return CheckShown(
            check.what,
            (
                line.maths(comma=self.style.comma),
                line.maths(self._sized(check.sizes), comma=self.style.comma),
                both,
            ),
            agrees,
            check.words,
        )


def direction(step: Step, values: Mapping[str, float]) -> Direction | None:
    """The direction of a step's value, for these values."""
    return step.direction(values) if callable(step.direction) else step.direction
