"""What is to be said of one typed value: right, right but rounded early, which known mistake, or none.

The order of judging: within 1 % or a correct rounding; right from the learner's own
earlier values; a known mistake; rounding on the way (up to 3 %); a power of ten;
then unit and direction. Common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from calc.marking.learner import Typed, by_sign, can_be_asked, judge_direction
from calc.marking.suspects import Chain, Suspect
from calc.model.questions import Mistake

BESIDE = 0.03  # one mistake, rounded on the way, is as likely as two together that fit exactly
EARLY = 0.03  # "up to 3 % and reproduced by rounding intermediates"
POWERS = [sign * power for power in range(1, 19) for sign in (1, -1)]
FULL = ("right", "early", "carried")  # sizes that earn the marks

Keep = Callable[[Suspect, Chain], bool]


type State = Literal[
    "right",
    "rounded early",
    "carried",
    "unit",
    "direction",
    "mistake",
    "one of two",
    "not recognised",
]
type Label = Literal["right", "early", "carried", "within"]
type Size = Literal["right", "early", "carried", "within", "wrong"]
type UnitSaid = Literal["right", "missing", "wrong"]
type Turn = Literal["", "right", "missing", "wrong", "opposite", "sign"]


@dataclass(frozen=True)
class Base:
    """A way to the value that a learner may have gone. label: 'right', 'early', 'carried' or 'within'.

    'early': from own values that were all judged right. 'within': from a wrong value of the same part.
    """

    way: Chain
    label: Label


@dataclass(frozen=True)
class Finding:
    """The judgement of one value.

    state: 'right', 'rounded early', 'carried', 'unit', 'direction', 'mistake', 'one of two' or 'not recognised'.
    size: 'right', 'early', 'carried', 'within' or 'wrong'. unit: 'right', 'missing' or 'wrong'.
    turn: '' (none asked), 'right', 'missing', 'wrong', 'opposite', or 'sign' for a wrong sign.
    fits: the suspects that give this value. turned: declared mistakes that only turn the direction.
    power: the answer is 10 to this power times the right one. coarse: right to fewer figures than can be marked.
    way: the chain the value was held against.
    """

    state: State
    typed: Typed
    way: Chain
    size: Size
    unit: UnitSaid = "right"
    turn: Turn = ""
    fits: tuple[Suspect, ...] = ()
    turned: tuple[Mistake, ...] = ()
    power: int = 0
    coarse: bool = False

    @property
    def sized(self) -> bool:
        """Whether the number itself earns the marks for method."""
        return self.size in FULL


def judge(typed: Typed, said: str, right: Chain, own: Sequence[Base] = (), keep: Keep | None = None) -> Finding:
    """Judge a typed value and direction.

    right: the chain from the data. own: chains from the learner's own values: those of earlier parts first,
    then of this part.
    keep: which suspects agree with the other things typed. Raises QuantityError for a direction that cannot be read.
    """
    bases = [Base(right, "right"), *own]
    found = _size(typed, said, bases, keep)
    finding = replace(found, unit=_unit(typed, found.way))
    turn = _turn(typed, said, found.way)
    if not finding.sized:
        return replace(finding, turn=turn if turn != "missing" else "")
    substituted = _sign_substituted(typed, found.way) if turn == "sign" else ()
    if substituted:
        return replace(finding, state="mistake", turn=turn, fits=substituted)
    turned: tuple[Mistake, ...] = ()
    if turn in ("opposite", "sign"):
        turned = found.way.turning
    state: State = finding.state
    if turn in ("missing", "wrong", "opposite", "sign"):
        state = "direction"
    if finding.unit != "right":
        state = "unit"
    return replace(finding, state=state, turn=turn, turned=turned)


_STATES: dict[Label, State] = {
    "right": "right",
    "early": "rounded early",
    "carried": "carried",
    "within": "carried",
}


def _size(typed: Typed, said: str, bases: Sequence[Base], keep: Keep | None) -> Finding:
    for base in bases:
        if _agrees(typed, base.way):
            return Finding(_STATES[base.label], typed, base.way, base.label)
    ways = [base.way for base in reversed(bases)]
    for way in ways:
        fits = fitting(typed, way, keep, said)
        if fits:
            if _early(typed, way):  # no mistake is named that cannot be told from the right answer
                return Finding("rounded early", typed, way, "early", fits=fits)
            state: State = "mistake" if len(fits) == 1 else "one of two"
            return Finding(state, typed, way, "wrong", fits=fits)
    for way in ways:
        if _early(typed, way):
            return Finding("rounded early", typed, way, "early")
    for way in ways:
        for power in POWERS:
            if typed.factor and way.step.unit != "°" and _agrees(typed, way, 10.0**power):
                return Finding("unit", typed, way, "wrong", power=power)
    for way in ways:
        fits = tuple(s for s in way.algebra if _shown(typed, s, way))
        if fits:
            return Finding("mistake" if len(fits) == 1 else "one of two", typed, way, "wrong", fits=fits)
    return Finding("not recognised", typed, ways[-1], "wrong", coarse=_coarse(typed, ways[-1]))


def _shown(typed: Typed, suspect: Suspect, way: Chain) -> bool:
    """Whether a slip of the formula gives the digits typed, and the sign where that counts."""
    same_sign = not sign_counts(way) or (typed.value < 0) == (suspect.value < 0)
    return same_sign and typed.figures > 1 and typed.shows(suspect.value)


def _agrees(typed: Typed, way: Chain, times: float = 1.0) -> bool:
    wanted = way.right * times
    if not math.isfinite(wanted):
        return False
    read_off = way.step.read_off if times == 1.0 else 0.0
    return typed.agrees(wanted) or abs(abs(typed.value) - abs(wanted)) <= read_off * abs(wanted)


def _early(typed: Typed, way: Chain) -> bool:
    near = abs(abs(typed.value) - abs(way.right)) <= EARLY * abs(way.right)
    return near and any(typed.shows(value) for value in way.rounded_early)


def _coarse(typed: Typed, way: Chain) -> bool:
    """The right answer cut to one figure, or to nothing at all."""
    if not typed.number:
        return 0 < abs(way.right) < typed.half
    return typed.figures == 1 and typed.rounds(way.right, 1)


def fitting(typed: Typed, way: Chain, keep: Keep | None = None, said: str = "") -> tuple[Suspect, ...]:
    """The suspects that cannot be told from the typed value at its precision, single ones first.

    When none gives exactly the digits typed, those within 1 %: single ones, else two together.
    said: the direction given with it.
    """
    exact = [s for s in (*way.singles, *way.pairs) if typed.shows(s.value)]
    near = [s for s in way.singles if typed.near(s.value, BESIDE)]
    if not any(len(s.slips) == 1 for s in exact):
        exact = near + exact
    found = exact or [s for s in way.singles if typed.near(s.value)]
    if not found and typed.figures > 2:
        found = [s for s in way.pairs if typed.near(s.value)]
    if keep:
        found = [s for s in found if keep(s, way)] or found
    if sign_counts(way):
        negative = said == "negative" if by_sign(way.direction) and said else typed.value < 0
        found = [s for s in found if (s.value < 0) == negative] or found
    # what every explanation has in common can be told; a second slip that does not show cannot
    alone = {s.slips[0] for s in found if len(s.slips) == 1}
    return tuple(s for s in found if len(s.slips) == 1 or not alone & set(s.slips))


def sign_counts(way: Chain) -> bool:
    """Whether the sign of the value typed means something.

    Not in a signed value whose direction is asked apart from it, nor in a size whose sign is asked in words.
    """
    where = way.direction
    if where is not None and by_sign(where):
        return (way.right < 0) == (where.key == "negative")
    return not can_be_asked(where) or way.right > 0


def _sign_substituted(typed: Typed, way: Chain) -> tuple[Suspect, ...]:
    """The slip that gives the right size with the sign typed: signs put into the formula."""
    return tuple(
        s
        for s in way.singles
        if s.slips[0].kind == "sign" and typed.agrees(s.value) and (s.value < 0) == (typed.value < 0)
    )[:1]


def _unit(typed: Typed, way: Chain) -> UnitSaid:
    if not typed.fits:
        return "wrong"
    return "missing" if typed.unit is None and way.step.unit else "right"


def _turn(typed: Typed, said: str, way: Chain) -> Turn:
    right = way.direction
    if right is not None and by_sign(right):
        if said.strip():
            return judge_direction(said, right)
        negative = typed.value < 0
        return "right" if negative == (right.key == "negative") else "sign"
    if right is not None and can_be_asked(right):
        turn = judge_direction(said, right)
        return "sign" if turn in ("right", "missing") and typed.value < 0 < way.right else turn
    if typed.value and (typed.value < 0) != (way.right < 0):
        return "sign"
    return ""
