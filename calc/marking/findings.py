"""What is to be said of one typed value: right, right but rounded early, which known mistake, or none.

The order of judging: within 1 % or a correct rounding; right from the learner's own
earlier values; a known mistake; rounding on the way (up to 3 %); a power of ten;
then unit and direction. Common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from calc.language.quantities import QuantityError
from calc.marking.bearings import has_number
from calc.marking.learner import CLOSE, Typed, by_sign, can_be_asked, direction_key, judge_direction, of_note
from calc.marking.suspects import DOUBLINGS, Chain, Slip, Suspect
from calc.model.answers import Direction
from calc.model.constants import other_sheets
from calc.model.directions import turned_round
from calc.model.questions import Mistake

BESIDE = 0.03  # how far rounding on the way may take the value of a mistake
SHEET_CLOSE = 0.002
VANISHED = 1e-3  # of a value on the way: less than that does not show in a sum
ELSEWHERE = 0.1  # how far another data sheet can take an answer
SURE = 4  # figures from which a slip that seldom happens needs no pair beside it
SPAN = 0.005  # a little more than the ends, for rounding at the end
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
type Turn = Literal["", "right", "missing", "unread", "wrong", "opposite", "sign"]


@dataclass(frozen=True)
class Base:
    """A way to the value that a learner may have gone. label: 'right', 'early', 'carried' or 'within'.

    'early': from own values that were all judged right. 'within': from a wrong value of the same part.
    ends: what the least and the greatest give that round to the own values typed.
    turned: one of the own values was given the opposite direction or sign. sheet: with another data sheet's constants.
    beside: another way than the plan's, on which no mistake is looked for.
    """

    way: Chain
    label: Label
    ends: tuple[float, ...] = ()
    turned: bool = False
    sheet: bool = False
    beside: bool = False

    def meets(self, typed: Typed) -> bool:
        """Whether the value is the one of this way. Another data sheet explains digits, not one more per cent."""
        if self.sheet:
            holders = typed.looser > typed.half  # 39 000 may be meant to two figures, 0,03900 is not
            rounded_off = holders and typed.rounds(self.way.right, 2)
            return typed.figures > 1 and (_same_digits(typed, self.way.right) or rounded_off)
        return _agrees(typed, self.way) or self.spans(typed)

    def spans(self, typed: Typed) -> bool:
        """Whether the value lies between those that the learner's own values, unrounded, could have given."""
        if not self.ends:
            return False
        low, high = min(map(abs, self.ends)), max(map(abs, self.ends))
        more = 0.0 if self.way.base else SPAN
        return low * (1 - more) <= abs(typed.value) <= high * (1 + more)


@dataclass(frozen=True)
class Finding:
    """The judgement of one value.

    state: 'right', 'rounded early', 'carried', 'unit', 'direction', 'mistake', 'one of two' or 'not recognised'.
    size: 'right', 'early', 'carried', 'within' or 'wrong'. unit: 'right', 'missing' or 'wrong'.
    turn: '' (none asked), 'right', 'missing', 'unread', 'wrong', 'opposite', or 'sign' for a wrong sign.
    fits: the suspects that give this value. turned: declared mistakes that only turn the direction.
    power: the answer is 10 to this power times the right one. coarse: right to fewer figures than can be marked.
    way: the chain the value was held against. meant: the text if its comma parts thousands, which makes it right.
    angled: the direction was said with its angle.
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
    meant: str = ""
    angled: bool = False

    @property
    def sized(self) -> bool:
        """Whether the number itself earns the marks for method."""
        return self.size in FULL


def judge(
    typed: Typed,
    said: str,
    right: Chain,
    own: Sequence[Base] = (),
    keep: Keep | None = None,
    positive: str = "",
) -> Finding:
    """Judge a typed value and direction.

    right: the chain from the data. own: chains from the learner's own values: those of earlier parts first,
    then of this part.
    keep: which suspects agree with the other things typed. positive: the key of the positive direction, where the
    question states one: a sign then says a direction. Raises QuantityError for a direction that cannot be read.
    """
    bases = [Base(right, "right"), *_other_sheets(typed, right), *own]
    found = _size(typed, said, bases, keep)
    finding = replace(found, unit=_unit(typed, found.way), angled=has_number(said))
    turn = _turn(typed, said, found.way, positive)
    if not finding.sized:
        return replace(finding, turn=turn if turn != "missing" else "")
    if turn in ("opposite", "wrong", "sign"):
        for base in own:
            if base.meets(typed) and (
                _turn(typed, said, base.way, positive) == "right" or (base.turned and turn != "wrong")
            ):
                return replace(finding, state=_STATES[base.label], size=base.label, way=base.way, turn="right")
    if turn in ("opposite", "wrong") and finding.size == "carried" and _turn(typed, said, right, positive) == "right":
        turn = "right"  # the direction of the memo, beside a size from an own value
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


def _other_sheets(typed: Typed, right: Chain) -> list[Base]:
    """The ways with the constants of other data sheets, used all through: k = 8,99 × 10⁹, g = 9,81.

    They matter where values almost cancel, so that a constant 1 in 1000 off shows.
    """
    if _agrees(typed, right) or not abs(abs(typed.value) - abs(right.right)) <= ELSEWHERE * abs(right.right):
        return []
    found = []
    for sheet in other_sheets(right.constants, right.used):
        try:
            found.append(Base(right.with_constants(sheet), "right", sheet=True))
        except (ValueError, ArithmeticError):
            continue
    return found


_STATES: dict[Label, State] = {
    "right": "right",
    "early": "rounded early",
    "carried": "carried",
    "within": "carried",
}


def _size(typed: Typed, said: str, bases: Sequence[Base], keep: Keep | None) -> Finding:
    """Right by one of the ways; else single slips that give the digits typed; rounding; an exact power of ten; two
    slips together; a slip rounded on the way."""
    ways = [base.way for base in reversed(bases) if not (base.sheet or base.beside)]
    for base in bases:
        if not base.sheet and base.meets(typed):
            return Finding(_STATES[base.label], typed, base.way, base.label)
    blamed = next(((way, fits) for way in ways if (fits := _single(typed, way, keep, said))), None)
    for way in [blamed[0]] if blamed else ways:
        if _early(typed, way):  # no mistake is named that cannot be told from the right answer
            declared = tuple(fit for fit in blamed[1] if _rank(fit) < 1) if blamed else ()
            return Finding("rounded early", typed, way, "early", fits=declared)
    for base in bases:
        if base.sheet and base.meets(typed):
            return Finding("right", typed, base.way, "right")
    if blamed:
        return _named(typed, *blamed)
    for way in ways:
        for power in POWERS:
            if typed.factor and way.step.unit != "°" and _digits(typed, way, 10.0**power):
                return Finding("unit", typed, way, "wrong", power=power)
    for way in ways:
        fits = pairs(typed, way, keep, said)
        near = rounded(typed, way, keep, said) + swapped(typed, way)
        if fits or near:
            return _named(typed, way, near + _beyond(near, fits))
    return Finding("not recognised", typed, ways[-1], "wrong", coarse=_coarse(typed, ways[-1]))


def _single(typed: Typed, way: Chain, keep: Keep | None, said: str) -> tuple[Suspect, ...]:
    """Single slips that give the digits typed; with few digits, or only slips that seldom happen, pairs besides."""
    fits = singles(typed, way, keep, said)
    if fits and _rank(fits[0]):  # copied wrongly is as likely as a slip that seldom happens
        fits += swapped(typed, way)
    if fits and (typed.figures < 3 or _rank(fits[0]) > 1 or (typed.figures < SURE and _rank(fits[0]))):
        fits += _beyond(fits, pairs(typed, way, keep, said))
    return fits


def _named(typed: Typed, way: Chain, fits: tuple[Suspect, ...]) -> Finding:
    return Finding("mistake" if len(fits) == 1 else "one of two", typed, way, "wrong", fits=fits)


def _agrees(typed: Typed, way: Chain) -> bool:
    return typed.agrees(way.right, way.base) or abs(abs(typed.value) - abs(way.right)) <= way.step.read_off * abs(
        way.right
    )


def _digits(typed: Typed, way: Chain, times: float) -> bool:
    """Whether the digits typed are the right ones, of this or another data sheet: 1 % off is not enough for that."""
    wanted = way.right * times
    return math.isfinite(wanted) and _same_digits(typed, wanted)


def _same_digits(typed: Typed, value: float) -> bool:
    """Whether a value typed is this one, rounded to its places or from another data sheet: 2,000 is not 1,96."""
    close = abs(abs(typed.value) - abs(value)) <= SHEET_CLOSE * abs(value)
    return close or typed.shows(value)


def _early(typed: Typed, way: Chain) -> bool:
    if way.base:  # what rounding on the way could spoil, a mistake spoils as much
        return False
    near = abs(abs(typed.value) - abs(way.right)) <= EARLY * abs(way.right)
    return near and any(typed.shows(value) for value in way.rounded_early)


def _coarse(typed: Typed, way: Chain) -> bool:
    """The right answer cut to one figure, or to nothing at all."""
    if not typed.number:
        return 0 < abs(way.right) < typed.half
    if way.base:
        return typed.figures < SURE and (typed.rounds(way.right, 2) or typed.shows(way.right))
    return typed.figures == 1 and typed.rounds(way.right, 1)


def _beyond(told: tuple[Suspect, ...], more: tuple[Suspect, ...]) -> tuple[Suspect, ...]:
    """Those of ``more`` that hold none of the slips told alone: a second slip that does not show is not guessed at."""
    alone = {slip for suspect in told for slip in suspect.slips}
    return tuple(suspect for suspect in more if not alone & set(suspect.slips))


def singles(typed: Typed, way: Chain, keep: Keep | None, said: str) -> tuple[Suspect, ...]:
    """Single slips that give the digits typed, the likeliest first: each another mistake, not another wording of one.

    Where the number is the right one times a power of ten, a prefix tells more than which prefix it was.
    """
    found = [s for s in _close(typed, (*way.singles, *way.general)) if _gives(typed, s.value, way, said, s)]
    found = _without_vanished(found, way)
    if found and _power(typed, way):
        found = [s for s in found if s.slips[0].kind != "common"]
    return _kept(way.distinct(sorted(found, key=lambda suspect: _order(suspect, way))), way, keep)


def _without_vanished(found: list[Suspect], way: Chain) -> list[Suspect]:
    """Where leaving a term out gives the number, no slip of algebra besides that makes the term vanish: dividing by k
    does, and is hardly what happened."""

    def vanished(suspect: Suspect) -> bool:
        slip = suspect.slips[0]
        if slip.kind != "algebra" or slip.at not in way.values:
            return False
        wrong = (way.run((slip,)) or way.values)[slip.at]
        return abs(wrong) < VANISHED * abs(way.values[slip.at])

    if not any(suspect.slips[0].key == "term-left-out" for suspect in found):
        return found
    return [suspect for suspect in found if not vanished(suspect)]


def pairs(typed: Typed, way: Chain, keep: Keep | None, said: str) -> tuple[Suspect, ...]:
    """Two slips together that give the digits typed; one figure would fit too much."""
    if typed.figures < 2 and typed.number:
        return ()
    return _kept(way.distinct(s for s in _close(typed, way.pairs) if _gives(typed, s.value, way, said, s)), way, keep)


def rounded(typed: Typed, way: Chain, keep: Keep | None, said: str) -> tuple[Suspect, ...]:
    """A slip with every step rounded, or one whose last figure is a little off."""
    if typed.figures < 2:
        return ()
    near = [s for s in way.singles if typed.near(s.value, BESIDE) and _signed(typed, s, way, said)]
    found = [
        s
        for s in near
        if (typed.figures > 2 and typed.beside(s.value)) or any(map(typed.shows, way.rounded_with(s.slips[0])))
    ]
    return _kept(way.distinct(found), way, keep)


def swapped(typed: Typed, way: Chain) -> tuple[Suspect, ...]:
    """The right digits, two neighbours of them changed over."""
    right = abs(way.right) / typed.factor
    if typed.figures < 3 or not right or not math.isfinite(right):
        return ()
    digits = "".join(map(str, typed.number.as_tuple().digits))
    exponent = typed.number.as_tuple().exponent
    for place in range(min(len(digits) - 1, 3)):
        back = digits[:place] + digits[place + 1] + digits[place] + digits[place + 2 :]
        number = int(back) * 10.0 ** (exponent if isinstance(exponent, int) else 0)
        short = place < 2 and not digits[3:].strip("0")  # copied from the three figures of a memo
        third = 0.5 * 10.0 ** (math.floor(math.log10(right)) - 2) if short else 0.0
        if back != digits and abs(number - right) <= max(typed.last / typed.factor, third) * (1 + 1e-6):
            say = "Two of your digits have changed places. Copy the number once more from your calculator."
            slip = Slip("digits-swapped", way.target, say, kind="common", output=typed.value / way.right)
            return (Suspect((slip,), typed.value),)
    return ()


def _close(typed: Typed, suspects: Iterable[Suspect]) -> list[Suspect]:
    """Those that come into question at all: a quick look, for there are hundreds."""
    size, wide = abs(typed.value), max(2 * typed.last, CLOSE * abs(typed.value) * 1.1)
    return [s for s in suspects if abs(abs(s.value) - size) <= wide]


def _kept(found: tuple[Suspect, ...], way: Chain, keep: Keep | None) -> tuple[Suspect, ...]:
    return (tuple(s for s in found if keep(s, way)) or found) if keep else found


# How likely a slip is: the catalogue's and those of units first, those of a whole answer last.
_SELDOM = {"power-3": 2, "power-4": 3, "halved-for-root": 2, "half-angle": 3, "twice": 3, "half": 3, "mean-for-sum": 2}


def _rank(suspect: Suspect) -> int:
    slip = suspect.slips[0]
    if slip.kind in ("algebra", "common"):
        return _SELDOM.get(slip.key, 1 if slip.kind == "algebra" else 2)
    return 0


def _order(suspect: Suspect, way: Chain) -> tuple[int, bool]:
    """The likeliest first; of equals a constant before the data, and a factor 2 at the answer before one on the way."""
    slip = suspect.slips[0]
    rank = _rank(suspect)
    return rank, (slip.at != way.target) if slip.key in DOUBLINGS else slip.at not in way.constants


def _power(typed: Typed, way: Chain) -> bool:
    """Whether the digits are right and only the power of ten is not."""
    return way.step.unit != "°" and any(_digits(typed, way, 10.0**power) for power in POWERS)


def _gives(typed: Typed, value: float, way: Chain, said: str, suspect: Suspect) -> bool:
    """Whether a slip gives the digits typed, with their sign and direction. One figure alone shows nothing."""
    shows = typed.shows(value) if typed.figures > 1 or not typed.number else typed.agrees(value) and _rank(suspect) == 0
    return shows and _signed(typed, suspect, way, said)


def _signed(typed: Typed, suspect: Suspect, way: Chain, said: str) -> bool:
    """Whether a slip gives the sign typed, or the direction said with a size."""
    where, negative = way.direction, typed.value < 0
    if suspect.slips[0].kind == "sign" and way.right > 0 > suspect.value and not by_sign(where):
        return negative
    if by_sign(where) and not sign_counts(way):
        return True
    if where is not None and by_sign(where):
        chosen = _key(said, where)
        return (suspect.value < 0) == (chosen == "negative" if chosen else negative)
    if where is None or not can_be_asked(where):
        return (suspect.value < 0) == negative
    if suspect.value < 0 and way.right > 0 and said and not negative:
        return _opposite(said, where) or _of_sizes(suspect)
    return not negative or suspect.value < 0


def _of_sizes(suspect: Suspect) -> bool:
    """Whether a slip works with sizes alone: its sign is then no direction, which may be said rightly beside it."""
    return any("abs(" in how for slip in suspect.slips for _, how in slip.instead)


def _key(said: str, where: Direction) -> str | None:
    return direction_key(said, where) if said.strip() else None


def _opposite(said: str, where: Direction) -> bool:
    try:
        return judge_direction(said, where) == "opposite"
    except QuantityError:
        return False


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


def _turn(typed: Typed, said: str, way: Chain, positive: str = "") -> Turn:
    right = way.direction
    if right is not None and by_sign(right):
        if said.strip():
            return judge_direction(said, right)
        negative = typed.value < 0
        return "right" if negative == (right.key == "negative") else "sign"
    if right is not None and of_note(right) and not said.strip() and (typed.value < 0 or typed.text.startswith("+")):
        return "right" if (typed.value < 0) == (right.key == "lower") else "opposite"
    if right is not None and can_be_asked(right):
        turn = judge_direction(said, right)
        if turn == "missing" and typed.value < 0 and positive in dict(right.options):
            return "missing" if turned_round(positive, right.key) else "sign"
        return "sign" if turn in ("right", "missing") and typed.value < 0 < way.right else turn
    if typed.value and (typed.value < 0) != (way.right < 0):
        return "sign"
    return ""
