"""Numbers and quantities as learners type them: ``5 nC``, ``1,6 x 10^-19 C``, ``30°``.

A number is kept exactly (``Decimal``) and turned into its SI value in one rounding, so
15 cm is exactly the float 0.15.  Angles: ``number`` keeps the degrees, ``value`` is in
radians.  Spaces group thousands as in SI (BIPM 2019, 5.4.4); comma and point both mark
decimals, never thousands.
"""

import re
from dataclasses import dataclass
from decimal import Decimal

from calc.units import (
    LONGEST,
    Unit,
    UnitError,
    kind_of,
    parse_unit,
    raised_to_caret,
    same_kind,
    speak,
    suggest,
)

LARGEST_POWER = 300  # beyond this a float has no room for squares and products


class QuantityError(ValueError):
    """Text that is no usable value; ``sentence`` says what was typed, the rule, the remedy."""

    @property
    def sentence(self) -> str:
        """The whole message, ready to show beside the box."""
        return str(self.args[0])


@dataclass(frozen=True, slots=True)
class Quantity:
    """One typed value.

    value: SI value (angles in radians), one correct rounding of the exact product.
    unit: the unit typed, or the box's own unit when none was typed.
    number: exactly the number typed, in ``unit``.
    text: what was typed, unchanged.
    unit_typed: False when the unit is the box's own.
    """

    value: float
    unit: Unit
    number: Decimal
    text: str
    unit_typed: bool


_SPACES = "\t\n\r\x0b\x0c\x85\xa0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007"
_SPACES += "\u2008\u2009\u200a\u2028\u2029\u202f\u205f\u3000"
_LIKENESSES = str.maketrans(
    {
        **dict.fromkeys(_SPACES, " "),
        **dict.fromkeys("\u200b\u2060\ufeff", None),  # spaces of no width
        **dict.fromkeys("−–—‐\u2011‒﹣-", "-"),
        **dict.fromkeys("✕✖⨯", "×"),
        **dict.fromkeys("⋅•∙∗", "·"),
    }
)
_POWER = r"\^?\s*[({]?\s*(?P<{0}>[+-]?\s?[0-9]+)\s*[)}}]?"
_NUMBER = re.compile(
    r"(?P<sign>[+-]?)\s*"
    r"(?:"
    r"(?P<whole>[0-9]{1,3}(?:\ [0-9]{3})+(?![0-9])|[0-9]+|(?=[.,][0-9]))"
    r"(?:[.,](?P<part>[0-9]{3}(?:\ [0-9]{3})+(?:\ [0-9]{1,2})?(?![0-9])|[0-9]*))?"
    r"(?:\s*[eE]\s*(?P<e>[+-]?\s?[0-9]+)"
    r"|\s*[xX×*·]\s*10\s*(?:(?:\^|\*\*)\s*[({]?\s*(?P<ten>[+-]?\s?[0-9]+)\s*[)}]?"
    r"|(?P<bare>[+-]\s?[0-9]+)))?"
    r"|10\s*(?:\^|\*\*)\s*[({]?\s*(?P<only>[+-]?\s?[0-9]+)\s*[)}]?"
    r")"
)
_ONLY_TEN = re.compile(r"(?P<sign>[+-]?)\s*10\s*(?:\^|\*\*)\s*[({]?\s*(?P<only>[+-]?\s?[0-9]+)\s*[)}]?")
_NO_NUMBERS = {"inf", "infinity", "nan", "∞"}


def parse_number(text: str) -> Decimal:
    """Read a plain number exactly.  Raises ``QuantityError``, nothing else."""
    clean = _clean(text, "0,5")
    number, rest = _split(clean, "0,5")
    if rest:
        raise QuantityError(f'"{clean}" is more than a number. Type only digits, for example 0,5.')
    return number


def parse_quantity(text: str, field_unit: str, *, example: str | None = None) -> Quantity:
    """Read a value with or without a unit, for a box whose unit is ``field_unit``.

    A bare number takes ``field_unit``; '' means a pure number.  ``example`` is shown in
    refusals.  Raises ``QuantityError`` for any text that is no value of that kind;
    ``UnitError`` only if ``field_unit`` itself is wrong.
    """
    wanted = parse_unit(field_unit)
    shown = example or _example(wanted)
    clean = _clean(text, shown)
    number, rest = _split(clean, shown)
    unit = _unit(rest, wanted, clean, shown) if rest else wanted
    try:
        value = unit.to_si(number)
    except OverflowError:
        value = float("inf")
    if number and not 10.0**-LARGEST_POWER <= abs(value) <= 10.0**LARGEST_POWER:
        raise QuantityError(_too_far(clean, shown))
    return Quantity(value, unit, number, text, bool(rest))


def _example(wanted: Unit) -> str:
    if not wanted.text:
        return "0,5"
    return "30°" if wanted.text == "°" else f"5 {wanted.text}"


def _clean(text: str, example: str) -> str:
    clean = " ".join(text.translate(_LIKENESSES).split())
    if not clean:
        raise QuantityError(f"Type a value, for example {example}.")
    if len(clean) > LONGEST:
        raise QuantityError(
            f'"{clean[:20]}…" is longer than {LONGEST} characters. Type one value, for example {example}.'
        )
    return clean


def _too_far(clean: str, example: str) -> str:
    return (
        f'"{clean}" is too large or too small to work with: powers of ten go from '
        f"-{LARGEST_POWER} to {LARGEST_POWER}. Type a smaller power, for example {example}."
    )


def _split(clean: str, example: str) -> tuple[Decimal, str]:
    """The number at the start of ``clean`` and the text after it."""
    plain = raised_to_caret(clean)
    match = _ONLY_TEN.match(plain) or _NUMBER.match(plain)
    if match is None:
        raise QuantityError(f'"{clean}" does not start with a number. Type a number, for example {example}.')
    found = match.groupdict()
    power_text = found.get("e") or found.get("ten") or found.get("bare") or found.get("only") or "0"
    digits = power_text.replace(" ", "")
    if len(digits.lstrip("+-").lstrip("0")) > 3 or abs(int(digits)) > LARGEST_POWER:
        raise QuantityError(_too_far(clean, example))
    whole = "1" if found.get("only") else (found["whole"] + "." + (found["part"] or "0")).replace(" ", "")
    number = Decimal(f"{found['sign']}{whole}e{digits}")
    return (number if number else Decimal(0)), plain[match.end() :].strip()


def _unit(rest: str, wanted: Unit, clean: str, example: str) -> Unit:
    needed = f"{kind_of(wanted)} in {speak(wanted)} ({wanted.text})"
    try:
        unit = parse_unit(rest)
    except UnitError as error:
        raise QuantityError(error.sentence) from None
    if not same_kind(unit, wanted):
        meant = suggest(rest, wanted)
        tail = f" Did you mean {' or '.join(meant)}?" if meant else ""
        raise QuantityError(
            f'"{clean}" is {kind_of(unit)}; this box needs {needed}, for example {example}.{tail}'
        )
    return unit
