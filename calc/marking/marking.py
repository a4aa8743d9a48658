"""Mark a learner's work on a whole question, part by part, each with the learner's own earlier values.

A part to calculate is judged by ``calc.marking.findings`` and marked by ``calc.marking.memo``; the points of a
part to state, explain or draw are ticked by the learner, and counted as such.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal
from functools import cached_property
from itertools import permutations, product
from typing import Literal

from calc.language.counts import MONEY, as_count, without_currency
from calc.language.expressions import ExpressionError, equation, expression
from calc.language.quantities import QuantityError
from calc.marking.findings import Base, Finding, Label, Size, State, judge
from calc.marking.intervals import bound, ends, listed
from calc.marking.learner import apart_direction, by_sign, can_be_asked, judge_direction, read_line, read_value
from calc.marking.lines import Working, read_working
from calc.marking.memo import LAW, RIGHT_ANSWERS, MarkGiven, Shown, marks
from calc.marking.misstatements import misstatements_said
from calc.marking.statements import phrases_said
from calc.marking.suspects import Chain, Suspect, uses
from calc.marking.writings import thousands
from calc.marking.written import numbers
from calc.model.directions import SIDE_OF_END
from calc.model.questions import Check, Mistake, Part, Plan, Refusal, Step, Values
from calc.working.reading import Read
from calc.working.roots import NoRoot
from calc.working.working import agrees, run

Entry = Mapping[str, object]
LONGEST_STATEMENT = 600
COSTS = "A reason that contradicts the memo costs a mark."
type PartState = State | Literal["blank", "unreadable", "self-marked"]


@dataclass(frozen=True)
class PartMarked:
    """One part, marked.

    state: a Finding's, or 'blank', 'unreadable' or 'self-marked'. answer: the finding for the answer itself.
    blamed: the finding that explains a wrong answer (a value on the way, or the answer). step: the name to
    point at. picked: mistakes whose formula the learner picked. problems: what could not be read, by field path.
    broken: what is said of the first line of a typed working that does not follow.
    stated: a sentence was typed, in which phrases were looked for. slips: what is said of known misstatements in it.
    lacking: phrases of a point that were not found in it.
    """

    part: Part
    state: PartState
    marks: tuple[MarkGiven, ...] = ()
    answer: Finding | None = None
    blamed: Finding | None = None
    step: str = ""
    picked: tuple[Mistake, ...] = ()
    problems: tuple[Refusal, ...] = ()
    shown: Shown = field(default_factory=lambda: Shown({}, {}, {}))
    broken: str = ""
    stated: bool = False
    slips: tuple[str, ...] = ()
    lacking: tuple[str, ...] = ()

    @property
    def earned(self) -> int:
        return sum(mark.earned for mark in self.marks)

    @property
    def possible(self) -> int:
        return sum(mark.possible for mark in self.marks)


def tick_items(part: Part) -> tuple[tuple[str, int], ...]:
    """What a learner ticks in a part without a value, and its marks: the key phrases of a point, or the point."""
    return tuple((words, worth) for words, worth, _ in _sought(part))


def formulas(step: Step) -> tuple[tuple[str, str], ...]:
    """The formulas offered for a step, as (key, equation): the right one and its mistakes', alphabetically."""
    if not any(mark.kind == "formula" for mark in step.marks) or step.root:
        return ()
    offered = {f"{step.makes} = {step.how}": LAW}
    for mistake in step.mistakes:
        if mistake.at == step.makes and not mistake.turns:
            offered.setdefault(f"{step.makes} = {mistake.instead}", mistake.key)
    if len(offered) < 2:
        return ()
    return tuple((key, line) for line, key in sorted(offered.items()))


def mark_question(plan: Plan, read: Read, answers: Mapping[str, object]) -> tuple[PartMarked, ...]:
    """Mark every part. answers: by part key, with value, direction, steps, formula, substitution, said.

    Raises ExpressionError or NoRoot only when the question itself cannot be worked.
    """
    marker = _Marker(plan, read)
    marked = []
    for part in plan.parts:
        entry = next((answers[key] for key in (part.key, *part.former) if key in answers), None)
        entry = entry if isinstance(entry, Mapping) else {}
        if part.kind == "calculate":
            marked.append(marker.calculated(part, entry))
        else:
            marked.append(_ticked(part, entry))
    return tuple(marked)


def _ticked(part: Part, entry: Entry) -> PartMarked:
    said = entry.get("said")
    ticks = {item for item in said if isinstance(item, int)} if isinstance(said, list) else set()
    text = _text(entry.get("statement")).strip()[:LONGEST_STATEMENT]
    given: list[MarkGiven] = []
    slips: tuple[str, ...] = ()
    lacking: list[str] = []
    for index, (words, worth, keys) in enumerate(_sought(part)):
        found, told = phrases_said(text, keys) if text else ((), ())
        left = [key for place, key in enumerate(keys) if place not in found]
        earned = max(worth - len(left), 0) if found else 0  # each phrase that is missing costs a mark
        if index in ticks:  # a tick overrules: the learner may have said it in words not known here
            earned, left, told = worth, [], ()
        slips += told
        lacking += left if len(keys) > 1 else []
        given.append(MarkGiven("", "point", worth, earned, words))
    charged = set[str]()
    for wrong in misstatements_said(text, part.misstatements):
        costs = None if wrong.denies in charged else _denied(part, given, ticks, wrong.denies)
        charged.add(wrong.denies)
        slips += (wrong.say if costs is None else f"{wrong.say} {COSTS}",)
        if costs is not None:
            given[costs] = replace(given[costs], earned=given[costs].earned - 1)
    state: PartState = "self-marked" if ticks or text else "blank"
    return PartMarked(part, state, tuple(given), stated=bool(text), slips=slips, lacking=tuple(lacking) if text else ())


def _denied(part: Part, given: Sequence[MarkGiven], ticks: set[int], word: str) -> int | None:
    """The place of the point that a misstatement costs: the first earned one with this word in its phrases, else the
    first earned; None where the text earned nothing."""
    earned = [n for n, mark in enumerate(given) if mark.earned and n not in ticks]
    about = [n for n, (_, _, keys) in enumerate(_sought(part)) if n in earned and any(word in key for key in keys)]
    return next(iter([*about, *earned]), None)


def _sought(part: Part) -> Iterator[tuple[str, int, tuple[str, ...]]]:
    """What is ticked in a part, its marks, and the phrases looked for in a typed sentence."""
    for point in part.points:
        if len(point.keys) == point.marks > 1:
            yield from ((key, 1, (key,)) for key in point.keys)
        else:
            yield point.words, point.marks, point.keys or (point.words,)


ROUNDED = 0.06  # how far rounding to two figures may take a value
WIDEST = 0.15  # of a value, between what the least and the greatest of rounded own values give


@dataclass(frozen=True)
class Carried:
    """A learner's own value for later steps: with the direction given, its size only, before it was rounded.

    half: half of the last place typed. turned: it was given the opposite direction or sign.
    """

    signed: float
    size: float
    unrounded: float
    half: float
    turned: bool


def _by_check(step: Step, check: Check) -> Step:
    """A step by the equation of a check."""
    return replace(step, law=check.equation, make=check.equation, lines=(), mistakes=(), other="", root=None)


def _used_here(chain: Chain) -> set[str]:
    """The own values that a chain goes through."""
    return set(chain.carry) & {step.makes for step in chain.plan.steps}


class _Marker:
    """Marks parts in order; ``carry`` gathers the learner's own values on the way."""

    def __init__(self, plan: Plan, read: Read) -> None:
        self.plan, self.read = plan, read
        self.constants = read.data.settings.constants()
        self.positive = self.read.data.choices.get("positive", "")
        self.carry: dict[str, Carried] = {}
        self.all_right = True  # every value carried so far was judged right
        # What follows from right values is at worst rounded early; right, once one was read off a drawing.
        self.followed: Label = "early"

    def chain(self, name: str, carry: Values | None = None, plan: Plan | None = None) -> Chain:
        quantities, style = self.read.quantities, self.read.data.settings.style
        return Chain(plan or self.plan, self.constants, name, carry, quantities, style)

    @cached_property
    def value_sets(self) -> tuple[dict[str, float], ...]:
        """Every value rightly found, for the data and for data a little different."""
        found = [run(self.plan, self.constants)]
        for share in (0.031, 0.077):
            data = {n: v * (1 + share * math.sqrt(place + 2)) for place, (n, v) in enumerate(self.plan.values.items())}
            try:
                found.append(run(replace(self.plan, values=data), self.constants))
            except (ExpressionError, ArithmeticError, NoRoot, ValueError):
                continue
        return tuple(found)

    def own(self, name: str, carried: Mapping[str, Carried], label: Label) -> list[Base]:
        """The ways from own values; none when that is the right one, or when they lead to no value.

        A learner goes on with the value written down or with the one in the calculator, with its direction or with
        its size only.
        """
        besides = [
            replace(base, beside=True)
            for plan in self.by_checks(name, carried)
            for base in self._own_ways(name, carried, label, plan)
        ]
        return [*self._own_ways(name, carried, label, self.plan), *besides]

    def by_checks(self, name: str, carried: Mapping[str, Carried]) -> Iterator[Plan]:
        """The plan with another step for a value, where a check tells it by an own value: the peak is twice the
        average force. A learner may go that way as well."""
        for check in self.plan.checks:
            left, _, right = check.equation.partition("=")
            if left.strip() == name and {*expression(right).names} & set(carried):
                parts = [
                    replace(part, steps=tuple([_by_check(s, check) if s.makes == name else s for s in part.steps]))
                    for part in self.plan.parts
                ]
                yield replace(self.plan, parts=tuple(parts))

    def _own_ways(self, name: str, carried: Mapping[str, Carried], label: Label, plan: Plan) -> list[Base]:
        found: list[Base] = []
        for how in ("signed", "size", "unrounded"):
            carry = {key: getattr(value, how) for key, value in carried.items()}
            if any(carry == dict(base.way.carry) for base in found):
                continue
            chain = self._own(name, carry, plan)
            if chain:
                turned = how == "signed" and any(carried[key].turned for key in _used_here(chain))
                ends = self._ends(name, carried, chain) if how == "signed" else ()
                found.append(Base(chain, label, ends, turned))
        return found

    def _own(self, name: str, carry: Values, plan: Plan) -> Chain | None:
        if not carry:
            return None
        try:
            chain = self.chain(name, carry, plan)
        except (ExpressionError, ArithmeticError, NoRoot, ValueError):
            return None
        return chain if _used_here(chain) else None

    def _ends(self, name: str, carried: Mapping[str, Carried], chain: Chain) -> tuple[float, ...]:
        """What comes of the least and the greatest values that round to those typed; none where that is too much."""
        carry = dict(chain.carry)
        found = []
        for key in _used_here(chain):
            for half in (-carried[key].half, carried[key].half):
                end = self._own(name, {**carry, key: carry[key] + half}, chain.whole)
                if end is None:
                    return ()
                found.append(end.right)
        width = max(found, default=0.0) - min(found, default=0.0)
        return tuple(found) if width <= WIDEST * abs(chain.right) else ()

    def calculated(self, part: Part, entry: Entry) -> PartMarked:
        work = _Work(self, part, entry)
        work.both_in_one_box()
        work.either_way()
        work.on_the_way()
        work.final()
        self.carry, self.all_right = work.carry, work.all_right
        return work.marked()


class _Work:
    """The marking of one part to calculate."""

    def __init__(self, marker: _Marker, part: Part, entry: Entry) -> None:
        self.marker, self.part = marker, part
        self.before, self.before_right = dict(marker.carry), marker.all_right
        self.carry, self.all_right = dict(marker.carry), marker.all_right
        self.path = f"answers.{part.key}"
        self.problems: list[Refusal] = []
        self.values: dict[str, Finding] = {}
        self.answer: Finding | None = None
        self.value, self.said = _text(entry.get("value")), _text(entry.get("direction"))
        self.typed_steps = _by_step(entry.get("steps"), part, "")
        first = next((s.makes for s in part.steps if formulas(s)), part.answers)
        self.picks = self._known_picks(_by_step(entry.get("formula"), part, first))
        self.lines = _by_step(entry.get("substitution"), part, part.answers)
        self.working = self._read_working(_text(entry.get("working")))
        self.broken = self.working.broken

    def _read_working(self, text: str) -> Working:
        """The lines of a whole working; their values and numbers count like those typed in boxes of their own."""
        if not text.strip():
            return Working()
        turned = [step.makes for step in self.marker.plan.steps if step.direction is not None]
        own = [base.way.values for base in self.bases(self.part.answers)]
        steps = [step.makes for step in self.part.steps]
        if MONEY in {step.counted for step in self.part.steps}:
            text = without_currency(text)
        working = read_working(text, steps, self.marker.value_sets, own, turned)
        self.said = self.said or self._direction_said(working.words.get(self.part.answers, ""))
        for name, typed in working.values.items():
            if name != self.part.answers:
                self.typed_steps.setdefault(name, typed)
            elif not self.value.strip():
                where = self.marker.chain(name).direction
                sized = self.said.strip() and where is not None and not by_sign(where)
                # on paper the sign belongs to the way counted positive; the direction in words says the same
                self.value = typed.lstrip().lstrip("-−–") if sized else typed
        for name, line in working.numbers.items():
            self.lines.setdefault(name, line)
        return working

    def _direction_said(self, words: str) -> str:
        """The words behind a value of the working, where they name a direction that is asked."""
        where = self.marker.chain(self.part.answers).direction
        try:
            return words if where and words and judge_direction(words, where) else ""
        except QuantityError:
            return ""

    def _known_picks(self, typed: dict[str, str]) -> dict[str, str]:
        offered = {step.makes: dict(formulas(step)) for step in self.part.steps}
        return {name: key for name, key in typed.items() if key in offered[name]}

    @property
    def inside_right(self) -> bool:
        return all(finding.sized for finding in self.values.values())

    def bases(self, name: str) -> list[Base]:
        """The learner's own ways to a value: from earlier parts, and from this part's values."""
        earlier = self.marker.own(name, self.before, self.marker.followed if self.before_right else "carried")
        if not self.values:
            return earlier
        followed = earlier[0].label if earlier else self.marker.followed
        return [*earlier, *self.marker.own(name, self.carry, followed if self.inside_right else "within")]

    def judged(self, name: str, text: str, said: str, path: str) -> Finding | None:
        """A typed value's finding; None, and a problem noted, when it cannot be read."""
        right = self.marker.chain(name)
        try:
            typed = read_value(as_count(text, right.step.counted), right.step.unit)
        except QuantityError as problem:
            self.problems.append(Refusal(path, problem.sentence))
            return None
        try:
            finding = judge(typed, said, right, self.bases(name), self.keep, self.marker.positive)
            return self._thousands(finding, text)
        except QuantityError as problem:
            self.problems.append(Refusal(f"{self.path}.direction", problem.sentence))
            finding = judge(typed, "", right, self.bases(name), self.keep, self.marker.positive)
            return replace(finding, turn="unread") if finding.turn == "missing" else finding

    def _thousands(self, finding: Finding, text: str) -> Finding:
        """Where a comma read as thousands makes the value right, nothing is blamed: it is asked for."""
        spaced = None if finding.sized else thousands(text, finding.way.step.unit)
        if spaced and read_value(spaced, finding.way.step.unit).agrees(finding.way.right, finding.way.base):
            return replace(finding, state="not recognised", fits=(), power=0, meant=spaced)
        return finding

    def keep(self, suspect: Suspect, way: Chain) -> bool:
        """Whether a suspect agrees with the formulas picked and the values typed on the way."""
        slips = {slip.at: slip.key for slip in suspect.slips if slip.kind == "declared"}
        if any(slips.get(name, LAW) != key for name, key in self.picks.items()):
            return False
        values = way.run(suspect.slips) or {}
        return all(
            f.typed.near(values[name]) for name, f in self.values.items() if name in values and name not in way.carry
        )

    def both_in_one_box(self) -> None:
        """Where a part asks for two values, take them from one line: "between 2 cm and 5 cm", "2 nC and −5 nC".

        The ends of an interval belong to the smaller and the larger value whatever their order; other values are
        taken by their names, else in the order asked.
        """
        names = self.part.asked
        typed = [text for text in (self.value, *(self.typed_steps.get(name, "") for name in names)) if text.strip()]
        if len(names) != 2 or len(typed) != 1:
            return
        two = ends(typed[0]) or listed(typed[0])
        if two is None:
            return
        first, second = ways = [self.marker.chain(name) for name in names]
        try:
            one, other = (read_value(text, way.step.unit).value for text, way in zip(two, ways, strict=True))
        except QuantityError:
            return
        in_order = (one < other) == (first.right < second.right)
        swapped = not in_order if ends(typed[0]) else _named(two, names[::-1])
        texts = dict(zip(names[::-1] if swapped else names, two, strict=True))
        self.value = texts.pop(self.part.answers)
        self.typed_steps.update(texts)

    def either_way(self) -> None:
        """Where a part asks for several values that fit the other way round as well, or all with the other sign,
        take them so: the checks of the plan decide."""
        names = self.part.asked
        texts = {name: self.value if name == self.part.answers else self.typed_steps.get(name, "") for name in names}
        if len(names) < 2 or not all(text.strip() for text in texts.values()):
            return
        values = {name: self.marker.chain(name).right for name in names}
        try:
            typed = {name: read_value(text, self.marker.chain(name).step.unit) for name, text in texts.items()}
        except QuantityError:
            return
        for order, sign in product(permutations(names), (1, -1)):
            other = {name: sign * values[place] for name, place in zip(names, order, strict=True)}
            same = all(typed[n].agrees(v) and typed[n].value * v >= 0 for n, v in other.items())
            if same and (list(order) != list(names) or sign < 0) and self._also_fits(other):
                turned = {place: _with_sign(texts[name], sign) for name, place in zip(names, order, strict=True)}
                self.value = turned.pop(self.part.answers)
                self.typed_steps.update(turned)
                return

    def _also_fits(self, other: Values) -> bool:
        plan = self.marker.plan
        checks = [check for check in plan.checks if check.equation and set(equation(check.equation).names) & set(other)]
        right = run(plan, self.marker.constants)
        return bool(checks) and all(agrees(check, {**right, **other}) for check in checks)

    def on_the_way(self) -> None:
        for step in self.part.steps:
            name = step.makes
            text = self.typed_steps.get(name, "")
            if name == self.part.answers or not text.strip():
                continue
            finding = self.judged(name, text, "", f"{self.path}.steps.{name}")
            if finding is None:
                continue
            if finding.turn == "missing":  # a direction is asked of the answer only
                finding = _without_turn(finding)
            self.values[name] = finding
            self.take(finding)

    def final(self) -> None:
        if not self.value.strip():
            return
        right = self.marker.chain(self.part.answers)
        where = right.direction
        end = bound(self.value) if where is not None and set(dict(where.options)) == _SIDES else None
        if end:
            self.value, self.said = end[0], self.said.strip() or end[1]
        if where is not None and not self.said.strip() and (can_be_asked(where) or by_sign(where)):
            self.value, self.said = apart_direction(self.value, right.step.unit, where)
        self.answer = self.judged(self.part.answers, self.value, self.said, f"{self.path}.value")
        if self.answer:
            self.take(self.answer)

    def take(self, finding: Finding) -> None:
        """Carry a learner's own value on."""
        self.carry[finding.way.target] = carried(finding)
        if finding.way.step.read_off and finding.sized:
            self.marker.followed = "right"
        self.all_right = self.all_right and finding.sized and finding.turn not in ("opposite", "wrong", "sign")

    def marked(self) -> PartMarked:
        shown = Shown(self.picks, self.read_lines(), self.values, self.working.formulas)
        given = marks(self.part, self.answer, shown)
        picked = tuple(
            mistake
            for step in self.part.steps
            for mistake in step.mistakes
            if self.picks.get(step.makes) == mistake.key
        )
        state, blamed = self.state()
        if picked and state == "not recognised":
            state = "mistake"
        return PartMarked(
            self.part,
            state,
            given,
            self.answer,
            blamed,
            self.point_at(blamed, picked),
            picked,
            tuple(self.problems),
            shown,
            self.broken,
        )

    def state(self) -> tuple[PartState, Finding | None]:
        """The part's state, and the finding that explains it."""
        if self.answer is None:
            unreadable = any(problem.field == f"{self.path}.value" for problem in self.problems)
            wrong = next((f for f in self.values.values() if not f.sized), None)
            return ("unreadable" if unreadable else "blank"), wrong
        if self.answer.size == "within":
            wrong = next(f for f in self.values.values() if not f.sized)
            return wrong.state, wrong
        other = next((f for n, f in self.values.items() if n in self.part.also and f.state not in RIGHT_ANSWERS), None)
        if other and self.answer.state in RIGHT_ANSWERS:
            return other.state, other
        return self.answer.state, self.answer

    def point_at(self, blamed: Finding | None, picked: tuple[Mistake, ...]) -> str:
        """The step to look at: where the mistake lies, or the first that uses the wrong datum."""
        if picked:
            return picked[0].at
        if blamed is None or blamed.state in ("right", "rounded early", "carried"):
            return ""
        steps = blamed.way.plan.steps
        if blamed.fits:
            at = blamed.fits[0].slips[0].at
            made = {step.makes for step in steps}
            if at in made:
                return at
            from_here = (s.makes for s in steps if at in uses(s))
            return next(from_here, blamed.way.target)
        return blamed.way.target

    def read_lines(self) -> dict[str, str]:
        """Each typed line of numbers: 'right', 'unconverted' or 'wrong'."""
        found = {}
        for name, text in self.lines.items():
            if not text.strip():
                continue
            try:
                values = [read_line(text), *numbers(text)]  # "5/2g" can be read in two ways
            except QuantityError as problem:
                self.problems.append(Refusal(f"{self.path}.substitution.{name}", problem.sentence))
                continue
            ways = [self.marker.chain(name), *(base.way for base in self.bases(name))]
            if _ANGLE.search(text):
                values += [math.degrees(value) for value in values]
            result = self.answer if name == self.part.answers else self.values.get(name)
            unit = result.typed.unit if result and result.sized else None
            if unit and not unit.is_decimal:  # 1,5 × 0,5 for what is told in kilowatt-hours
                values += [unit.to_si(Decimal(repr(value))) for value in values]
            states = [_line_state(value, ways) for value in values]
            found[name] = "right" if "right" in states else states[0]
            if found[name] == "wrong" and self.working.formulas.get(name) and name in self.working.at:
                count, side = self.working.at[name]
                self.broken = self.broken or (
                    f"Line {count} of your working, “{side}”, does not give what its formula gives. Check each number"
                    " and each sign you put in."
                )
        for name, holds in self.working.put_in.items():
            if found.get(name) != "right":
                found[name] = "right" if holds else "wrong"
        return found


def _line_state(value: float, ways: list[Chain]) -> str:
    def same(wanted: float, way: Chain) -> bool:
        if way.base:
            return math.isclose(abs(value) - way.base, abs(wanted) - way.base, rel_tol=0.01)
        wanted = math.degrees(wanted) if way.step.unit == "°" else wanted
        return math.isclose(abs(value), abs(wanted), rel_tol=0.01)

    if any(same(way.right, way) for way in ways):
        return "right"
    left = (s.value for way in ways for s in way.singles if s.slips[0].kind == "unconverted")
    return "unconverted" if any(same(value_, ways[0]) for value_ in left) else "wrong"


def carried(finding: Finding) -> Carried:
    """A learner's value as later steps may take it."""
    typed, right = finding.typed, finding.way.right
    where = finding.way.direction
    if not by_sign(where) and not can_be_asked(where):
        value, turned = typed.value, typed.value * right < 0
        size = value
    else:
        size = math.copysign(typed.value, right)
        turned = finding.turn in ("sign", "opposite")
        value = -size if turned else size
    exact = next((fit.value for fit in finding.fits), right if finding.sized or finding.size == "within" else value)
    exact = math.copysign(exact, value) if typed.near(exact, ROUNDED) else value
    return Carried(value, size, exact, typed.last, turned)


def _without_turn(finding: Finding) -> Finding:
    state = finding.state
    if state == "direction":
        told: dict[Size, State] = {"right": "right", "early": "rounded early"}
        state = told.get(finding.size, "carried")
    return replace(finding, state=state, turn="")


_ANGLE = re.compile(r"°|(?:sin|cos|tan)\s*(?:⁻¹|\^\(?-1)|a(?:rc)?(?:sin|cos|tan)")  # a line that may end in an angle
_PLAIN = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789", "_")
_SIDES = {key for key, _ in SIDE_OF_END.options}


def _named(texts: tuple[str, str], names: tuple[str, ...]) -> bool:
    """Whether each text begins with the name of its value: "Q₁ = 2 nC"."""

    def plain(text: str) -> str:
        return text.translate(_PLAIN).strip().casefold()

    return all(
        "=" in text and plain(text.split("=")[0]) == plain(name) for text, name in zip(texts, names, strict=True)
    )


def _with_sign(text: str, sign: int) -> str:
    """A typed value, with its sign turned where ``sign`` is below zero."""
    if sign > 0:
        return text
    return text.lstrip()[1:] if text.lstrip()[:1] in ("-", "−") else f"-{text.lstrip()}"


def _text(entry: object) -> str:
    return entry if isinstance(entry, str) else ""


def _by_step(entry: object, part: Part, alone: str) -> dict[str, str]:
    """Typed texts by step name; a lone text belongs to step ``alone``."""
    if isinstance(entry, str) and entry.strip() and alone:
        return {alone: entry}
    names = {step.makes for step in part.steps}
    if not isinstance(entry, Mapping):
        return {}
    return {name: text for name, text in entry.items() if name in names and isinstance(text, str)}
