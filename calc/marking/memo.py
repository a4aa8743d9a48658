"""Marks as a memo gives them: formula 1, substitution 1, answer with unit and direction 1.

Wrong formula: nothing for that calculation. Formula absent but substitution right: only the
formula mark is lost. Substituted values must be SI. An earlier part's wrong value, rightly
used, earns full marks later; inside one part a wrong value loses the answer mark. A right
answer alone earns every mark; a wrong one earns method marks only for working that was
typed. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from calc.marking.findings import Finding
from calc.marking.suspects import Slip, uses
from calc.model.answers import MarkKind
from calc.model.questions import Part, Step

LAW = "law"  # the key of the right formula among those offered
_TURNS = {
    "missing": "the direction is missing",
    "unread": "the direction could not be read",
    "sign": "wrong sign",
    "wrong": "wrong direction",
    "opposite": "wrong direction",
}
RIGHT_ANSWERS = ("right", "rounded early", "carried")


@dataclass(frozen=True)
class MarkGiven:
    """One mark of a memo and whether it was earned. kind as in ``calc.model.answers.Mark``; step: '' for a point."""

    step: str
    kind: MarkKind
    possible: int
    earned: int
    reason: str


@dataclass(frozen=True)
class Shown:
    """What a learner typed for one part besides the answer.

    picks: formula key by step. lines: by step, 'right', 'unconverted' or 'wrong' for a typed line of numbers.
    values: findings of values on the way. formulas: by step, whether the formula in the lines of a working holds.
    """

    picks: Mapping[str, str]
    lines: Mapping[str, str]
    values: Mapping[str, Finding]
    formulas: Mapping[str, bool] = field(default_factory=dict)

    def __bool__(self) -> bool:
        return bool(self.picks or self.lines or self.values or self.formulas)


def marks(part: Part, answer: Finding | None, shown: Shown) -> tuple[MarkGiven, ...]:
    """Every mark of a part to calculate, in the order of its steps."""
    given: list[MarkGiven] = []
    for step in part.steps:
        wrong = shown.picks.get(step.makes, LAW) != LAW
        for mark in step.marks:
            if wrong:
                earned, reason = False, "wrong formula: no marks for this calculation"
            else:
                earned, reason = _mark(mark.kind, step, part, answer, shown)
            worth = mark.count * earned
            own = answer if step.makes == part.answers else shown.values.get(step.makes)
            if mark.kind == "answer" and mark.count > 1 and not earned and own is not None and _only_gravity(own):
                worth, reason = mark.count - 1, "g = 10: one mark for the value"
            given.append(MarkGiven(step.makes, mark.kind, mark.count, worth, reason))
    return tuple(given)


def _mark(kind: MarkKind, step: Step, part: Part, answer: Finding | None, shown: Shown) -> tuple[bool, str]:
    own = answer if step.makes == part.answers else shown.values.get(step.makes)
    reached = own is not None and (own.sized or own.size == "within")
    implied = answer is not None and (answer.sized or _only_gravity(answer))
    if kind == "answer":
        return _answer_mark(step, part, own, answer, implied)
    line = shown.lines.get(step.makes, "")
    picked = shown.picks.get(step.makes) == LAW or shown.formulas.get(step.makes, False)
    if kind == "formula":
        if picked or line in ("right", "unconverted"):
            return True, "right formula"
        if reached or implied:
            return True, "your value follows from the right formula"
        return False, _lacking(shown, own, "no right formula is shown")
    if line == "unconverted":
        return False, "the numbers put in are not in SI units"
    if line == "right" or reached or implied:
        return True, "right numbers put in"
    if picked and answer is not None and _elsewhere(answer, step):
        return True, "your answer follows from the right numbers here"
    return False, _lacking(shown, own, "no right substitution is shown")


def _answer_mark(
    step: Step, part: Part, own: Finding | None, answer: Finding | None, implied: bool
) -> tuple[bool, str]:
    if own is None:
        if step.makes == part.answers:
            return False, "no answer"
        if step.makes in part.also:
            return False, "this value is asked for as well: type it too"
        if implied and answer is not None and _angle_of_answer(step, answer) and not answer.angled:
            return False, "the direction is given without its angle"
        return implied, "the answer shows it" if implied else "this value is not shown"
    if own.state in RIGHT_ANSWERS and own.size != "within":
        return True, "your own earlier value, rightly used" if own.size == "carried" else "right"
    if own.size == "within":
        return False, "it carries a wrong value of this same part"
    if own.state == "unit":
        return False, "a power of ten is wrong" if own.power else f"{own.unit} unit"
    if own.state == "direction":
        return False, _TURNS[own.turn]
    return False, "wrong sign" if own.sized else "wrong value"


def _angle_of_answer(step: Step, answer: Finding) -> bool:
    """Whether a step finds the angle of the answer's direction: the size alone does not show it."""
    where = answer.way.direction
    on_the_way = {item.makes for item in answer.way.plan.steps}
    return step.unit == "°" and step.makes not in on_the_way and where is not None and where.angle is not None


def _only_gravity(answer: Finding) -> bool:
    """Whether all that is wrong is g = 10: it costs the answer mark and nothing else. So it does where a slip of
    algebra happens to give the same number, but not where a mistake of the catalogue does."""
    gravity = [all(slip.kind == "gravity" for slip in fit.slips) for fit in answer.fits]
    if answer.state == "one of two":
        return any(gravity) and all(slip.kind != "declared" for fit in answer.fits for slip in fit.slips)
    return answer.state == "mistake" and gravity[0]


def _lacking(shown: Shown, own: Finding | None, words: str) -> str:
    if shown or own is None:
        return words
    return "only an answer was given: typed working can earn this mark"


def _elsewhere(answer: Finding, step: Step) -> bool:
    """Whether the one mistake that fits lies neither in this step nor in what goes into it."""
    if answer.state != "mistake":
        return False
    slips = answer.fits[0].slips
    return not any(_in_step(slip, step) for slip in slips)


def _in_step(slip: Slip, step: Step) -> bool:
    return bool(slip.touches & {step.makes, *uses(step)})
