"""What a learner typed as an answer: a value with its unit and precision, a direction, a line of numbers.

An answer is read more widely than a datum: a unit of the wrong kind, or none, is
kept and marked, not refused. Only text without a readable number is refused.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import cached_property
from typing import Literal

from calc.language.quantities import QuantityError, parse_number, parse_quantity
from calc.language.units import Unit, UnitError, parse_unit
from calc.marking.bearings import angle_said, has_number
from calc.marking.writings import number_parts, unit_meant, value_text
from calc.marking.written import number
from calc.model.answers import Direction
from calc.model.directions import PITCH, SIGN_OF_CHARGE, meant, turned_round

CLOSE = 0.01  # "within 1 %"
NEARLY = 1e-9  # floats that mean the same number
ANGLE_CLOSE = math.radians(1.0)  # a direction in a plane: one degree either way
FINEST = 1e-4  # of a wrong value: no mistake is told by more digits than four, for on paper none is carried further
NOTHING = 1e-60  # below any size met here
LONGEST_LINE = 200


@dataclass(frozen=True)
class Typed:
    """One value as typed.

    value: SI (radians for an angle). number: counted in ``unit``. half: half of the last place typed, in SI.
    unit: None when none was typed; ``fits`` is False when it measures another kind of quantity.
    """

    value: float
    number: Decimal
    half: float
    factor: float
    unit: Unit | None
    fits: bool
    text: str

    @cached_property
    def figures(self) -> int:
        """Significant figures typed (trailing zeros count)."""
        return len(self.number.as_tuple().digits) if self.number else 1

    @property
    def looser(self) -> float:
        """Like ``half`` when the end zeros of a whole number are only place holders: 1 200 for 1 234."""
        return self.half * 10.0**self._end_zeros

    @cached_property
    def _end_zeros(self) -> int:
        """Zeros at the end of a whole number written out; those of 1,10 × 10⁵ are meant."""
        digits, exponent = self.number.as_tuple().digits, self.number.as_tuple().exponent
        if not self.number or exponent != 0:
            return 0
        return len(digits) - len("".join(map(str, digits)).rstrip("0"))

    @cached_property
    def last(self) -> float:
        """Half of the last place that is meant: a whole number of more than three figures ends at its third at least,
        as 16 930 does for 16 931,2."""
        zeros = min(self._end_zeros, max(self.figures - 3, 0))
        return self.half * 10.0**zeros

    def agrees(self, right: float, base: float = 0.0) -> bool:
        """Within 1 % of ``right``, or a correct rounding of it to two or more significant figures; sizes only.

        base: a value that ``right`` differs little from, if that is what counts: then within 1 % of the difference, or
        a correct rounding in which the difference still shows.
        """
        size, wanted = abs(self.value), abs(right)
        if base:
            close = abs(size - wanted) <= (CLOSE + NEARLY) * abs(wanted - abs(base)) + NEARLY * wanted
            told = self.shows(right) and not self.shows(base)
            return close or (self.figures > 2 and (told or (self._places(right) and not self._places(base))))
        if wanted == 0:
            return size == 0
        return abs(size - wanted) <= CLOSE * wanted * (1 + NEARLY) or self.rounds(right, 2)

    def rounds(self, right: float, figures: int) -> bool:
        """Whether the size typed is ``right`` correctly rounded to so many figures, in the unit typed."""
        size, wanted = abs(float(self.number)), abs(right) / self.factor
        if wanted == 0 or size == 0:
            return wanted == size
        if not 0.1 < size / wanted < 10:
            return False
        place = 10.0 ** (math.floor(math.log10(wanted)) - figures + 1)
        whole = size / place
        return abs(whole - round(whole)) < 1e-6 and abs(size - wanted) <= place * (0.5 + 1e-6)

    def shows(self, value: float) -> bool:
        """Whether ``value``, rounded to the places typed, is what was typed; sizes only.

        Nought and a single figure fit far too much: they stand for themselves.
        """
        if not self.number:
            return abs(value) < NOTHING
        if self.figures == 1:
            return self.near(value)
        width = max(self.last, FINEST * abs(self.value))  # values on the way were rounded, whatever is typed at the end
        return abs(abs(self.value) - abs(value)) <= width * (1 + 1e-6) + NEARLY * abs(value)

    def _places(self, value: float) -> bool:
        """The same with every place typed meant: 420,03 is not 420."""
        return abs(abs(self.value) - abs(value)) <= self.half * (1 + 1e-6) + NEARLY * abs(value)

    def beside(self, value: float) -> bool:
        """Whether the last figure typed is at most one off, as after cutting digits short; sizes only."""
        return abs(abs(self.value) - abs(value)) <= 2 * self.last * (1 + 1e-6)

    def near(self, value: float, close: float = CLOSE) -> bool:
        """Whether ``value`` is within 1 %, or what was typed with end zeros as place holders; sizes only."""
        gap = abs(abs(self.value) - abs(value))
        width = max(close * abs(value), self.looser if self.figures > 1 else 0.0)
        return gap <= width * (1 + NEARLY)


def read_value(text: str, unit: str) -> Typed:
    """Read an answer whose right unit is ``unit``; a bare number counts as SI (degrees for an angle).

    A step counted in another unit than SI (electronvolts) has its answers counted in that unit too.
    Raises QuantityError, whose sentence says what to type.
    """
    wanted = parse_unit(unit)
    read = _read_value(text, unit, wanted)
    if wanted.is_angle or wanted.factor == 1:
        return read
    size = float(wanted.factor)
    return replace(read, value=read.value / size, half=read.half / size, factor=read.factor / size)


def _read_value(text: str, unit: str, wanted: Unit) -> Typed:
    """The answer with its value in SI."""
    plain = value_text(text)
    try:
        parts = number_parts(plain)
        if parts:
            plain = f"{read_line(parts[0]):.12g} {parts[1]}"
        quantity = parse_quantity(plain, unit)
    except QuantityError as problem:
        number, tail, other = _apart(plain, problem)
        meant_unit = unit_meant(tail, wanted) if tail and unit else None
        if meant_unit:
            read = parse_unit(meant_unit)
            return _typed(number, read, read, True, text)
        if other:
            return _typed(number, other, other, False, text)
        if unit or tail:
            raise
        return _typed(number, None, wanted, True, text)  # "3 electrons": a count says what it counts
    return _typed(quantity.number, quantity.unit if quantity.unit_typed else None, quantity.unit, True, text)


def apart_direction(text: str, unit: str, right: Direction) -> tuple[str, str]:
    """(value, direction) of an answer in one line, "25 µN to the left"; the whole as a value where none is found."""
    words = text.split()
    for cut in range(len(words) - 1, 0, -1):
        head, tail = " ".join(words[:cut]).rstrip(",;"), " ".join(words[cut:])
        try:
            if read_value(head, unit).fits and judge_direction(tail, right) != "missing":
                return head, tail
        except QuantityError:
            continue
    return text, ""


def _typed(number: Decimal, unit: Unit | None, counted: Unit, fits: bool, text: str) -> Typed:
    exponent = number.as_tuple().exponent
    place = Decimal(1).scaleb(exponent if isinstance(exponent, int) else 0)
    factor = float(counted.factor)
    value = counted.to_si(number)
    return Typed(value, number, float(place) / 2 * factor, factor, unit, fits, text.strip())


def _apart(text: str, problem: QuantityError) -> tuple[Decimal, str, Unit | None]:
    """The number at the start of ``text``, what stands after it, and that as a unit of whatever kind; None for a
    plain word, or for units without the dot between them."""
    for cut in range(len(text) - 1, 0, -1):
        try:
            number = parse_number(text[:cut])
        except QuantityError:
            continue
        tail = text[cut:].strip()
        try:
            unit = parse_unit(tail)
        except UnitError:
            if re.fullmatch(r"[A-Za-z]{4,}", tail) and parse_quantity(text[:cut], ""):
                return number, "", None
            return number, tail, None
        if unit.text:
            return number, tail, unit
    raise problem


def by_sign(direction: Direction | None) -> bool:
    """True when the 'direction' is the sign of the value: a minus sign typed says it too."""
    signs = {key for key, _ in SIGN_OF_CHARGE.options}
    return direction is not None and {key for key, _ in direction.options} == signs


def of_note(direction: Direction | None) -> bool:
    """True when the 'direction' is a note's, higher or lower: no arrow, and a sign typed says it as well as words."""
    return direction is not None and {key for key, _ in direction.options} == {key for key, _ in PITCH.options}


def can_be_asked(direction: Direction | None) -> bool:
    """Whether a learner can be asked for this direction: there are choices, or an angle."""
    return direction is not None and (len(direction.options) > 1 or direction.angle is not None)


type Judged = Literal["right", "missing", "opposite", "wrong"]


def judge_direction(text: str, right: Direction) -> Judged:
    """'right', 'missing', 'opposite' or 'wrong'; QuantityError when the text cannot be read as a direction.

    text: an option's key or words, what else its kind of direction is called, alone or in a sentence, or an angle in
    a plane as :mod:`calc.marking.bearings` reads it. Where no angle is asked, one said beside the words is left out.
    """
    said = text.strip()
    if not said:
        return "missing"
    angle = angle_said(said) if right.angle is not None and has_number(said) else None
    if angle is not None and right.angle is not None:
        return _judge_angle(math.radians(angle), math.radians(right.angle))
    key = direction_key(said, right)
    if key is None and right.angle is None and has_number(said):  # the angle is a value of its own here
        key = direction_key(_WITHOUT_ANGLE.sub("", said), right)
    if key is not None:
        return "right" if key == right.key else "opposite" if opposite(key, right) else "wrong"
    raise QuantityError(_unread(said, right))


_WITHOUT_ANGLE = re.compile(r"-?\d+(?:[.,]\d+)?\s*(?:°|deg(?:ree)?s?\b)?|\(.*\)")


def direction_key(said: str, right: Direction) -> str | None:
    """The option that a learner's words name; None where none does."""
    said = said.strip()
    if said.casefold() == right.words.casefold():
        return right.key
    chosen = (key for key, words in right.options if said.casefold() in (key.casefold(), words.casefold()))
    return next(chosen, None) or meant(said, dict(right.options))


def _unread(said: str, right: Direction) -> str:
    short = said if len(said) <= 40 else f"{said[:39]}…"
    if right.angle is not None:
        return (
            f'"{short}" could not be read as a direction. Type it like 30° above the +x axis, N 60° E, bearing 060, or'
            " degrees anticlockwise from the +x axis."
        )
    offered = " or ".join(f"“{words}”" for _, words in right.options)
    return f'"{short}" could not be read as one of the directions here. Choose {offered}.'


def opposite(key: str, right: Direction) -> bool:
    """Whether an option is the right direction turned round: the only other one, or opposite in every part."""
    if len(right.options) == 2:
        return True
    return turned_round(key, right.key)


def _judge_angle(said: float, right: float) -> Judged:
    gap = abs(math.remainder(said - right, 2 * math.pi))
    if gap <= ANGLE_CLOSE:
        return "right"
    return "opposite" if abs(gap - math.pi) <= ANGLE_CLOSE else "wrong"


def read_line(text: str) -> float:
    """The value of a typed line of numbers, as ``9x10^9 x 8e-9 x 5e-9 / 0,12^2``; numbers of sin, cos, tan in degrees.

    Raises QuantityError for anything but numbers, units, + − × ÷ ^, brackets, roots, sin, cos, tan and their inverses.
    """
    typed = text.strip()
    if len(typed) > LONGEST_LINE:
        raise QuantityError(f"The line is longer than {LONGEST_LINE} characters. Shorten it.")
    value = number(typed.split("=")[-1])
    if value is None:
        raise QuantityError(
            f'"{typed}" cannot be worked out as it stands. Type numbers only, for example 9e9 × 8e-9 × 5e-9 / 0,12^2.'
        )
    return value
