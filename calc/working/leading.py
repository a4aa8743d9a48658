"""Which boxes of a form lead to what is asked, found by trying; nothing is listed by hand.

Tried in this order: what the page's example gives; the same with what the example finds typed into its box; these and
one or two boxes more. What is asked is taken out, and the question itself says whether the rest is enough: a box it
refuses is put away, one it asks for is filled, and those stay whose values the steps use.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import chain as joined
from itertools import combinations

from calc.language.expressions import ExpressionError
from calc.language.units import parse_unit
from calc.model.questions import Choice, Input, Plan, Question, Refusal, Rows, Worded
from calc.working.chain import inputs
from calc.working.reading import Read, Refusals, as_named_now, read
from calc.working.roots import NoRoot
from calc.working.working import direction, run

MOST_TRIES = 40  # plans made for one set of unknowns
MOST_ADDED = 1  # boxes added to the example's at once
MOST_KEPT = 200  # sets of unknowns and choices of a question that are remembered

Typed = Mapping[str, object]
Pairs = tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Way:
    """Data that lead to what is asked: the boxes used, and the choices they were found with."""

    boxes: frozenset[str]
    choices: Pairs


def boxes(question: Question, asked: str, typed: Typed) -> tuple[str, ...]:
    """The names of the boxes to show, in the order of the form, where ``asked`` is to be found.

    asked: one name, several with commas between, or '' for what the example asks. typed: what the form
    holds; its choices may rule boxes out, and a box that is filled is shown.
    """
    typed, asked = as_named_now(question, typed, asked)
    return _leading(question).boxes(asked, typed)


_KEPT: dict[int, _Leading] = {}


def _leading(question: Question) -> _Leading:
    """One for each question; it holds the question, so that its id stays its own."""
    return _KEPT.setdefault(id(question), _Leading(question))


class _Leading:
    def __init__(self, question: Question) -> None:
        self.question = question
        self.inputs = [one for one in question.fields if isinstance(one, Input)]
        self.choices = [one for one in question.fields if isinstance(one, Choice)]
        self.finds = [one.name for one in self.choices if one.finds]
        self.tables = {
            one.name: question.example.get(one.name, ()) for one in question.fields if isinstance(one, Rows | Worded)
        }
        self.turning = False
        self.ways: dict[tuple[tuple[str, ...], Pairs], Way | None] = {}
        self.usual = self._usual()
        self.given = {one.name: str(question.example.get(one.name) or "") for one in self.inputs}
        self.given = {name: text for name, text in self.given.items() if text.strip()}
        self.world = self.given | self._found()

    def boxes(self, asked: str, typed: Typed) -> tuple[str, ...]:
        question = self.question
        unknowns = tuple(name for name in asked.split(",") if name in question.unknowns) or self.usual
        picked = {one.name: self.picked(one, typed) for one in self.choices}
        way = self.way(unknowns, picked)
        wanted = set(way.boxes) - set(unknowns)
        wanted |= {one.name for one in self.inputs if _filled(typed.get(one.name)) and one.name not in unknowns}
        wanted |= {one.name for one in self.choices if self.tells(one, unknowns, picked, dict(way.choices))}
        wanted |= self.deciding(asked, typed, wanted)
        return tuple(one.name for one in question.fields if isinstance(one, Rows | Worded) or one.name in wanted)

    # --- the example

    def _usual(self) -> tuple[str, ...]:
        """What the example asks."""
        try:
            return read(self.question, self.question.example).data.asked_names
        except Refusals:
            return self.question.unknowns[:1]

    def _found(self) -> dict[str, str]:
        """What the example asks for and has a box, as it may be typed."""
        worked = self.worked(self.question.example, self.usual)
        if worked is None:
            return {}
        _, plan, values = worked
        asked = {name for part in plan.parts for name in part.asked} - self.given.keys()
        return {one.name: _text(one, values[one.name]) for one in self.inputs if one.name in asked}

    def picked(self, item: Choice, typed: Typed) -> str:
        """The option that the form has; the example's where it has none."""
        entry = typed.get(item.name)
        keys = entry.split(",") if isinstance(entry, str) and item.several else [entry]
        if isinstance(entry, str) and {key for key, _ in item.options}.issuperset(keys):
            return entry
        return str(self.question.example.get(item.name) or item.options[0][0])

    # --- ways

    def way(self, unknowns: tuple[str, ...], picked: dict[str, str]) -> Way:
        """The boxes that lead to the unknowns with these choices; where none are found, with the example's, or those
        that lead to each of the unknowns alone; every box where nothing is found at all."""
        usual = {one.name: picked[one.name] if one.finds else self.picked(one, {}) for one in self.choices}
        for tried in (picked, usual, *self.others(picked)):
            if found := self.kept(unknowns, tried):
                return found
        if found := self.turned(unknowns, picked):
            return found
        single = [self.kept((name,), usual) for name in unknowns] if len(unknowns) > 1 else []
        every = [one.boxes for one in single if one] or [frozenset(one.name for one in self.inputs)]
        return Way(frozenset(joined.from_iterable(every)), tuple(picked.items()))

    def others(self, picked: dict[str, str]) -> Iterator[dict[str, str]]:
        """The same choices with one of them another: with a string where there was none."""
        for one in self.choices:
            if not (one.finds or one.by_drawing or one.besides):
                yield from (picked | {one.name: key} for key, _ in one.options if key != picked[one.name])

    def turned(self, unknowns: tuple[str, ...], picked: dict[str, str]) -> Way | None:
        """The way that is found where each choice that a refusal names is made otherwise: the last resort."""
        key = unknowns, (*picked.items(), ("", "turned"))
        if key not in self.ways:
            self.turning = True
            self.ways[key] = self.searched(unknowns, picked)
            self.turning = False
        return self.ways[key]

    def kept(self, unknowns: tuple[str, ...], picked: dict[str, str]) -> Way | None:
        key = unknowns, tuple(picked.items())
        if key not in self.ways:
            if len(self.ways) >= MOST_KEPT:
                self.ways.clear()
            self.ways[key] = self.searched(unknowns, picked)
        return self.ways[key]

    def searched(self, unknowns: tuple[str, ...], picked: dict[str, str]) -> Way | None:
        """The boxes of the example, or these and one or two more, that the question takes for these unknowns."""
        tries = [MOST_TRIES]
        wanted = {*unknowns, *(key for name in self.finds for key in picked[name].split(","))}
        given, world = ({n: text for n, text in known.items() if n not in wanted} for known in (self.given, self.world))
        starts = [given, world]
        empty = [one for one in self.inputs if one.name not in {*self.world, *wanted}]
        for count in range(1, MOST_ADDED + 1):
            for added in combinations(empty, count):
                starts.append(world | {one.name: self.likely(one) for one in added})
        for start in starts:
            way = self.led(unknowns, start, picked, tries)
            if way or not tries[0]:
                return way
        return None

    def led(
        self,
        unknowns: tuple[str, ...],
        world: dict[str, str],
        picked: dict[str, str],
        tries: list[int],
        mended: tuple[str, ...] = (),
    ) -> Way | None:
        """The same from these boxes, with what is refused mended, each name once."""
        if not tries[0]:
            return None
        tries[0] -= 1
        try:
            found, plan, _ = self.work(self.typed(world, picked), unknowns)
        except (Refusal, Refusals) as refused:
            refusals = refused.refusals if isinstance(refused, Refusals) else (refused,)
            name = next((one.field for one in refusals if one.field and one.field not in mended), "")
            ways = (
                self.led(unknowns, boxes, choices, tries, (*mended, name))
                for boxes, choices in self.mended(name, world, picked)
            )
            return next(filter(None, ways), None)
        except (ExpressionError, NoRoot, ArithmeticError):
            return None
        return self.used(unknowns, world, picked, inputs(found.data.values, plan.steps))

    def mended(
        self, name: str, world: dict[str, str], picked: dict[str, str]
    ) -> Iterator[tuple[dict[str, str], dict[str, str]]]:
        """The refused box put away, or the one asked for filled, or said what a choice leaves unsaid."""
        item = next((one for one in self.question.fields if one.name == name), None)
        if name in world:
            yield {one: text for one, text in world.items() if one != name}, picked
        elif isinstance(item, Input):
            yield world | {name: self.likely(item)}, picked
        elif isinstance(item, Choice) and not item.finds and (self.turning or picked[name] in item.quiet):
            others = (key for key, _ in item.options if key not in item.quiet and key != picked[name])
            yield from ((world, picked | {name: key}) for key in others)

    def used(self, unknowns: tuple[str, ...], world: dict[str, str], picked: dict[str, str], names: set[str]) -> Way:
        """Of the boxes filled those whose values the steps use, if these alone are enough."""
        fewer = {name: text for name, text in world.items() if name in names}
        enough = len(fewer) < len(world) and self.worked(self.typed(fewer, picked), unknowns)
        return Way(frozenset(fewer if enough else world), tuple(picked.items()))

    def typed(self, world: Mapping[str, str], picked: Mapping[str, str]) -> Typed:
        return {**self.tables, **picked, **world}

    def likely(self, item: Input) -> str:
        """A value that an empty box could have: the first that practice draws, or the middle of its range."""
        drawn = self.question.draws.get(item.name)
        if drawn and drawn.values:
            first = drawn.values[0]
            return first if isinstance(first, str) else f"{first!r} {drawn.unit}".strip()
        middle = math.sqrt(item.low * item.high)
        if item.unit == "°":
            return f"{middle!r}°"
        return _text(item, max(1.0, middle) if item.whole else middle)

    def worked(self, typed: Typed, unknowns: Iterable[str]) -> tuple[Read, Plan, dict[str, float]] | None:
        """The data, the plan and its values; None where the question refuses them."""
        try:
            return self.work(typed, unknowns)
        except (Refusal, Refusals, ExpressionError, NoRoot, ArithmeticError):
            return None

    def work(self, typed: Typed, unknowns: Iterable[str]) -> tuple[Read, Plan, dict[str, float]]:
        found = read(self.question, typed, ",".join(unknowns))
        plan = self.question.plan(found.data)
        return found, plan, run(plan, found.data.settings.constants())

    # --- choices

    def tells(self, item: Choice, unknowns: tuple[str, ...], picked: Mapping[str, str], led: Mapping[str, str]) -> bool:
        """Whether a choice belongs to the story of these unknowns: what is told, and what had to be told."""
        if item.finds or item.by_drawing or item.besides:
            return True
        if item.asked:
            return bool(set(item.asked) & set(unknowns))
        return not {picked[item.name], self.picked(item, {}), led[item.name]} <= set(item.quiet)

    def deciding(self, asked: str, typed: Typed, wanted: set[str]) -> set[str]:
        """Choices left out so far on which the answer to what is typed hangs all the same."""
        left = [one for one in self.choices if one.name not in wanted and not one.asked]
        now = self.outcome(typed, asked) if left else None
        if now is None:
            return set()
        return {one.name for one in left if any(self.turns(typed, one.name, key, asked, now) for key, _ in one.options)}

    def turns(self, typed: Typed, name: str, key: str, asked: str, now: object) -> bool:
        return self.outcome({**typed, name: key}, asked) not in (None, now)

    def outcome(self, typed: Typed, asked: str) -> object:
        """What an answer comes to, to be compared; None where the data are refused."""
        worked = self.worked(typed, (asked,))
        if worked is None:
            return None
        _, plan, values = worked
        ways = tuple(direction(step, values) for step in plan.steps)
        return tuple(step.make for step in plan.steps), values, ways


def _filled(entry: object) -> bool:
    return isinstance(entry, str) and bool(entry.strip())


def _text(item: Input, value: float) -> str:
    """A value in SI as it may be typed."""
    if item.unit == "°":
        return f"{math.degrees(value)!r}°"
    number = repr(round(value)) if item.whole else repr(value if item.signed else abs(value))
    return f"{number} {parse_unit(item.unit).si().text}" if item.unit else number
