"""Hints for a drawn question, derived from its plan: one opens at a time, and none holds an answer.

For each step of a part to calculate: what to use and why, in words; the formula; the
formula with the data put in but for one, left as a gap, and everything still to be found
left as a symbol; the algebra, in symbols. Parts to state, explain or draw: how many points, and how they begin.
What would name the direction or the sign of an answer is left out: the learner is asked to find it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from calc.language.expressions import equation
from calc.language.maths import Maths, Shown
from calc.language.printing import counted
from calc.language.symbols import symbol
from calc.model.constants import SHEET
from calc.model.questions import Part, Plan, Question, Step, Topic
from calc.practice.telling import Opposites, sides, without
from calc.working.reading import Read
from calc.working.working import direction, measure, run

FIRST_WORDS = 4
FEWEST_WORDS = 2  # that say anything
OPEN = "Decide yourself which direction or which sign: sketch it first."
GAP = Shown(r"\square", "▢")


@dataclass(frozen=True)
class Hint:
    """One hint. kind: 'words', 'formula', 'numbers', 'algebra' or 'points'; lines: mathematics under the words."""

    kind: Literal["words", "formula", "numbers", "algebra", "points"]
    words: str
    lines: tuple[Maths, ...] = ()

    @property
    def text(self) -> str:
        """Everything the hint says, in plain text."""
        return " ".join((self.words, *(line.text for line in self.lines)))


def hints(topic: Topic, question: Question, found: Read, plan: Plan) -> dict[str, tuple[Hint, ...]]:
    """The hints of every part, by its key, in the order in which they open."""
    style = found.data.settings.style
    values = run(plan, found.data.settings.constants())
    made = {step.makes for step in plan.steps}
    # Only data and constants are shown as numbers: an earlier part's answer stays a symbol.
    data: dict[str, Shown] = {}
    for name, value in values.items():
        if name not in made:
            printed = measure(value, "°" if plan.units.get(name) == "°" else "", style, data=True)
            data[name] = Shown(printed.tex, printed.text)
    answers = answer_numbers(plan, found)
    return {
        part.key: tuple(
            hint
            for hint in _of_part(topic, question, part, data, style.comma, _secret(part, values))
            if not any(holds_number(hint.text, number) for number in answers)
        )
        for part in plan.parts
    }


def answer_numbers(plan: Plan, found: Read) -> tuple[str, ...]:
    """The printed number of every calculated answer, without its unit."""
    style = found.data.settings.style
    values = run(plan, found.data.settings.constants())
    units = {step.makes: step.unit for step in plan.steps}
    numbers = []
    for part in plan.parts:
        for name in part.asked:
            unit = "°" if units[name] == "°" else ""
            numbers.append(measure(values[name], unit, style).text.strip("−°"))
    return tuple(numbers)


def holds_number(words: str, number: str) -> bool:
    """Whether ``number`` stands in ``words`` as a whole number, not as a piece of a longer one."""
    words, number = (text.replace("\N{NO-BREAK SPACE}", " ") for text in (words, number))
    return bool(re.search(rf"(?<![\d,.]){re.escape(number)}(?![\d⁰¹²³⁴⁵⁶⁷⁸⁹]|[,.]\d)", words))


def _secret(part: Part, values: Mapping[str, float]) -> set[Opposites]:
    """The opposites of which a part's values have one. Neither is named: what is missing would tell as well."""
    ways = (direction(step, dict(values)) for step in part.steps)
    signs = {"negative" if values[name] < 0 else "positive" for name in part.asked if part.asks_sign}
    return {side.pair for words in (*(way.words for way in ways if way), *signs) for side in sides(words)}


def _of_part(
    topic: Topic, question: Question, part: Part, data: Mapping[str, Shown], comma: bool, secret: set[Opposites]
) -> Iterator[Hint]:
    if part.kind != "calculate":
        yield from _of_points(part)
        return
    told: set[str] = set()
    for step in part.steps:
        laws = [topic.law(name) for name in question.laws if name in step.quotes and name not in told]
        told |= {law.name for law in laws}
        own = " ".join(filter(None, (_sentence(step.what), step.why)))
        words = without(own, secret)
        yield Hint("words", " ".join(filter(None, (words, "" if words == own else OPEN, *(law.words for law in laws)))))
        yield from _of_step(step, data, comma)


def _of_step(step: Step, data: Mapping[str, Shown], comma: bool) -> Iterator[Hint]:
    law, make = equation(step.law), equation(step.make)
    open_name = symbol(step.makes).text
    yield Hint("formula", "The formula:", (law.maths(comma=comma),))
    known = _sizes_only(data, step.sizes)
    put_in = {name: known[name] for name in law.names if name in known and name != step.makes}
    words = f"Put in the data, in SI units. {open_name} is still open."
    # One datum is left to the learner, where that still leaves a number to see.
    gap = [name for name in put_in if name not in SHEET][-1:] if len(put_in) > 1 else []
    for name in gap:
        put_in[name] = GAP
        words += f" The box {GAP.text} is left for you: {symbol(name).text} goes there."
    if put_in:
        yield Hint("numbers", words, (law.maths(put_in, comma=comma),))
    algebra = tuple(equation(line).maths(comma=comma) for line in step.lines)
    if step.root:
        yield Hint("algebra", step.root.method, algebra)
    elif algebra or step.law.replace(" ", "") != step.make.replace(" ", ""):
        yield Hint("algebra", f"Make {open_name} the subject:", (*algebra, make.maths(comma=comma)))


def _of_points(part: Part) -> Iterator[Hint]:
    count = sum(point.marks for point in part.points)
    separate = f"{count} separate points" if count > 1 else "one clear point"
    yield Hint("points", f"This part is worth {counted(count, 'mark')}: give {separate}.")
    for point in part.points:
        words = point.words.split()
        start = words[: min(FIRST_WORDS, max(1, len(words) // 2))]
        at, which = next(((n, side) for n, word in enumerate(start) for side in sides(word)), (len(start), None))
        begin = f"A point begins: “{' '.join(start[:at])} …”" if at >= FEWEST_WORDS or which is None else "A point says"
        yield Hint("points", begin if which is None else f"{begin}: {which.question}?")


def _sentence(words: str) -> str:
    return words if words.endswith((".", "?", "!")) else f"{words}."


def _sizes_only(data: Mapping[str, Shown], sizes: tuple[str, ...]) -> dict[str, Shown]:
    """The data as shown, without the sign where only the size is put in."""
    bare = {name: Shown(data[name].tex.lstrip("-"), data[name].text.lstrip("−")) for name in sizes if name in data}
    return {**data, **bare}
