"""Numbers and quantities as learners type them: ``5 nC``, ``1,6 x 10^-19 C``, ``30°``.

A number is kept exactly (``Decimal``) and turned into its SI value in one rounding, so
15 cm is exactly the float 0.15.  Angles: ``number`` keeps the degrees, ``value`` is in
radians.  Spaces group thousands, comma and point both mark decimals and never thousands:
The International System of Units, 9th edition (BIPM, 2019), chapter 5.
"""

import re
from dataclasses import dataclass
from decimal import Context, Decimal, localcontext
from functools import lru_cache

from calc.language.units import (
    LONGEST,
    Unit,
    UnitError,
    kind_of,
    parse_unit,
    same_kind,
    speak,
    suggest,
)
from calc.language.unittext import DASHES, DOTS, raised_to_caret

LARGEST_POWER = 300  # of ten; the rest of a float's range is left for squares and products
_LEAST, _MOST = 10.0**-LARGEST_POWER, 10.0**LARGEST_POWER
_PLAIN_EXAMPLE = "0,5"


class QuantityError(ValueError):
    """Text that is no usable value; ``sentence`` says what was typed, the rule, the remedy."""

    @property
    def sentence(self) -> str:
        """The whole message, ready to show beside the box."""
        return str(self)


@dataclass(frozen=True, slots=True)
class Quantity:
    """One typed value.

    value: SI value (angles in radians), one correct rounding of the exact product.
    unit: the unit typed, or the box's own unit when none was typed.
    number: exactly the number typed, counted in ``unit``.
    text: what was typed, unchanged.
    unit_typed: False when the unit is the box's own.
    """

    value: float
    unit: Unit
    number: Decimal
    text: str
    unit_typed: bool

    @property
    def figures(self) -> int:
        """Significant figures typed; the end zeros of a whole number are place holders, but for the second figure."""
        return len(self._significant[0])

    @property
    def half(self) -> float:
        """Half a unit of the last significant figure, in SI: how far a correctly rounded value may be off."""
        return _half(self._significant[1], self.unit)

    @property
    def _significant(self) -> tuple[tuple[int, ...], int]:
        _, digits, exponent = self.number.as_tuple()
        place = exponent if isinstance(exponent, int) else 0
        while place >= 0 and len(digits) > 2 and digits[-1] == 0:
            digits, place = digits[:-1], place + 1
        return digits, place


@lru_cache(maxsize=256)
def _half(place: int, unit: Unit) -> float:
    return unit.to_si(Decimal(5).scaleb(place - 1))


_LIKENESSES = str.maketrans(
    dict.fromkeys(DASHES, "-")
    | dict.fromkeys("✕✖⨯", "×")
    | dict.fromkeys(DOTS, "·")
    | {
        "\uff0b": "+",
        "\uff0c": ",",
        "\uff0e": ".",
        "⁄": "/",
        "∕": "/",
    }
)
_POWER = r"\s*(?:\^|\*\*)\s*[({]?\s*([+-]?\s?[0-9]+)\s*[)}]?"
_NUMBER = re.compile(
    # sign
    r"([+-]?)\s*(?:"
    # 10^-9 on its own
    rf"10{_POWER}"
    # whole part, with thousands in groups
    r"|([1-9][0-9]{0,2}(?:\ [0-9]{3})+(?![0-9])|[0-9]+|(?=[.,][0-9]))"
    # decimals, perhaps in groups of three
    r"(?:[.,]([0-9]{3}(?:\ [0-9]{3})*(?:\ [0-9]{1,2})?(?![0-9])|[0-9]*))?"
    # power of ten: e-9, x 10^-9 or x 10-9
    rf"(?:\s*[eE]\s*([+-]?\s?[0-9]+)|\s*[xX×*·]\s*10(?:{_POWER}|\s*([+-]\s?[0-9]+)))?"
    r")"
)
_NOT_FINITE = re.compile(r"[+-]?\s*(?:inf|nan|∞)", re.IGNORECASE)
_POWER_SLIP = (
    "has a power that cannot be read",
    "Type the power of ten with × and ^, for example 5 × 10^-9.",
)
# What may follow a number by mistake: how it starts, the rule, the remedy.  A remedy that
# is no whole sentence takes the example of the box.
_SLIPS = tuple(
    (re.compile(start), rule, remedy)
    for start, rule, remedy in (
        (r"[eE]\s*(?:[+-]|$)", "has no power of ten after the e", "Type the power too"),
        (r"[xX×*·]\s*10|10\s*(?:\^|\*\*)|\^|\*\*", *_POWER_SLIP),
        (r"/\s*[0-9]", "is a fraction", "Work it out and type a decimal number"),
        (r"[-+xX×*·:÷(]\s*[0-9(]", "is a calculation", "Work it out and type the result"),
        (
            r"[.,]?[0-9]",
            "has digits apart that are not in groups of three",
            "Type them together or in threes, for example 1 200.",
        ),
        (
            r"['’`´]",
            "has a mark between its digits",
            "Use a space between thousands, for example 1 200.",
        ),
        (r"%", "is a percentage", "Divide by 100 and type the decimal number"),
    )
)


_FRACTION = re.compile(r"/\s*([0-9]{1,6})\s*([^\s0-9/+*·×(-][^/]*)?")


def parse_number(text: str) -> Decimal:
    """Read a plain number exactly.  Raises ``QuantityError``, nothing else."""
    typed = _typed(text, _PLAIN_EXAMPLE)
    number, rest = _split(typed, _PLAIN_EXAMPLE)
    if rest:
        raise QuantityError(
            f'"{typed}" has more than a number in it. Type the number alone, for example {_PLAIN_EXAMPLE}.'
        )
    return number


@lru_cache(maxsize=1024)  # an edit changes one box, and the others are read again
def parse_quantity(text: str, field_unit: str, *, example: str | None = None, comma: bool = True) -> Quantity:
    """Read a value with or without a unit, for a box whose unit is ``field_unit``.

    A bare number takes ``field_unit``; '' means a pure number.  ``example`` is shown in
    refusals, whose other numbers have a decimal ``comma`` or point.  Raises ``QuantityError`` for any text
    that is no value of that kind;
    ``UnitError`` only if ``field_unit`` itself is wrong.
    """
    wanted = parse_unit(field_unit)
    shown = example or _example(wanted, comma)
    typed = _typed(text, shown)
    number, rest = _split(typed, shown, wanted.text, comma)
    unit = _unit(rest, wanted, typed, shown) if rest else wanted
    try:
        value = unit.to_si(number)
    except OverflowError:
        value = float("inf")
    if number and not _LEAST <= abs(value) <= _MOST:
        raise _too_far(typed, shown)
    return Quantity(value, unit, number, text, bool(rest))


def _example(wanted: Unit, comma: bool) -> str:
    if wanted.text in {"", "°"}:
        return "30°" if wanted.text else _marked(_PLAIN_EXAMPLE, comma)
    return f"5 {wanted.text}"


def _marked(digits: str, comma: bool) -> str:
    """``digits`` with the reader's decimal sign."""
    return digits if comma else digits.replace(",", ".")


def _typed(text: str, example: str) -> str:
    """``text`` with single plain spaces and without characters that cannot be seen."""
    if len(text.strip()) > LONGEST:
        start = _typed(text.strip()[:20], example)
        raise QuantityError(f'"{start}…" is longer than {LONGEST} characters. Type one value, for example {example}.')
    seen = "".join(c if c.isprintable() else " " if c.isspace() else "" for c in text)
    typed = " ".join(seen.split())
    if not typed:
        raise QuantityError(f"Type a value, for example {example}.")
    return typed


def _too_far(typed: str, example: str) -> QuantityError:
    return QuantityError(
        f'"{typed}" is too large or too small: powers of ten go from -{LARGEST_POWER} '
        f"to {LARGEST_POWER}. Check the power, for example {example}."
    )


def _split(typed: str, example: str, wanted: str = "", comma: bool = True) -> tuple[Decimal, str]:
    """The number at the start of ``typed``, and the text of its unit; ``wanted`` is the box's own."""
    plain = raised_to_caret(typed.translate(_LIKENESSES))
    if _NOT_FINITE.match(plain):
        raise QuantityError(f'"{typed}" is not a number to work with. Type digits, for example {example}.')
    match = _NUMBER.match(plain)
    if match is None:
        rule = (
            "has an equals sign. Type the value alone"
            if "=" in plain
            else "does not start with a number. Type a number"
        )
        raise QuantityError(f'"{typed}" {rule}, for example {example}.')
    # A phone may add a full stop after two spaces.
    rest = plain[match.end() :].strip().rstrip(" .")
    if rest and not rest == wanted == "%":
        _check_rest(match, rest, typed, example, comma)
    sign, alone, whole, decimals, *powers = match.groups()
    power = (alone or next(filter(None, powers), "0")).replace(" ", "")
    if len(power.lstrip("+-0")) > 3 or abs(int(power)) > LARGEST_POWER:
        raise _too_far(typed, example)
    digits = "1" if alone else f"{whole or '0'}.{decimals or ''}".replace(" ", "").rstrip(".")
    return Decimal(f"{sign}{digits}e{power}"), rest


def _check_rest(match: re.Match[str], rest: str, typed: str, example: str, comma: bool) -> None:
    """Refuse what follows a number by mistake, with the remedy that fits the mistake."""
    _, alone, _, decimals, *powers = match.groups()
    if rest[0] in ",." and (alone or any(powers)):
        raise QuantityError(f'"{typed}" has decimals in its power of ten. Type a whole power, for example {example}.')
    if rest[0] in ",." and decimals is not None:
        raise QuantityError(
            f'"{typed}" has two decimal signs. Use one decimal sign, and spaces between '
            f"thousands, for example {_marked('1 200,5', comma)}."
        )
    fraction = _FRACTION.fullmatch(rest)
    if fraction and match[3] and len(match[3]) <= 6 and not any((decimals, *powers)):
        raise _fraction(match.group(), *fraction.groups(), typed=typed, comma=comma)
    if match.group().lstrip("+- ") == "10" and rest[0] in "+-":
        raise QuantityError(f'"{typed}" {". ".join(_POWER_SLIP)}')
    for start, rule, remedy in _SLIPS:
        if start.match(rest):
            tail = "" if remedy.endswith(".") else f", for example {example}."
            raise QuantityError(f'"{typed}" {rule}. {remedy}{tail}')


def _fraction(above: str, below: str, unit: str, *, typed: str, comma: bool) -> QuantityError:
    """The refusal of a simple fraction, with its decimal form."""
    top, bottom = Decimal(above.replace(" ", "")), Decimal(below)
    try:
        text = parse_unit(unit or "").text
    except UnitError:
        return QuantityError(f'"{typed}" is a fraction. Work it out and type a decimal number.')
    if not bottom:
        return QuantityError(f'"{typed}" divides by zero. Type a decimal number instead.')
    with localcontext(prec=30):
        value = top / bottom
        short = value == round(value, 6)
        shown = value.normalize() if short else Context(prec=3).plus(value).normalize()
    digits = _marked(f"{shown:f}".replace(".", ","), comma).replace("-", "−")
    written = f"{digits}{' ' if text and text != '°' else ''}{text}"
    if short:
        return QuantityError(f'"{typed}" is a fraction. Type it as a decimal number: {written}.')
    return QuantityError(
        f'"{typed}" is a fraction. Type it as a decimal number, with as many digits as the '
        f"question gives: {written}, for example."
    )


def _unit(rest: str, wanted: Unit, typed: str, example: str) -> Unit:
    """The unit typed, if it measures the kind of quantity the box needs."""
    try:
        unit = parse_unit(rest)
    except UnitError as error:
        needed = _needed(wanted, example)
        remedy = _question(rest, wanted) or error.remedy or needed.replace("t", "T", 1)
        raise QuantityError(f"{error.reason} {remedy}") from None
    if same_kind(unit, wanted):
        return unit
    sentence = f'"{typed}" is {kind_of(unit)}; {_needed(wanted, example)} {_question(rest, wanted)}'
    raise QuantityError(sentence.rstrip())


def _question(rest: str, wanted: Unit) -> str:
    """Which unit of the right kind may have been meant, or ''."""
    meant = " or ".join(suggest(rest, wanted))
    dot = " Put a dot between two units." if "·" in meant and "·" not in rest else ""
    return f"Did you mean {meant}?{dot}" if meant else ""


def _needed(wanted: Unit, example: str) -> str:
    if not wanted.text:
        return f"this box needs a plain number without a unit, for example {example}."
    kind = kind_of(wanted)
    name = "a value" if kind.startswith("a quantity in") else kind
    return f"this box needs {name} in {speak(wanted)} ({wanted.text}), for example {example}."
