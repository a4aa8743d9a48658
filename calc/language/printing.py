"""Numbers as a memo prints them, in plain text, TeX and words, always from one set of digits.

Results are rounded once: full precision in, two decimals out, halves away from zero;
below 0,1 and from 10 000 in scientific notation, two decimals on the coefficient.
Common practice of school memos, no source.

Halves are judged on the decimal digits a pocket calculator would hold, not on the binary
number: the float 2.675 lies a little below 2,675, and 1.5 * 0.15 comes out as
0.22499999999999998, yet on paper both round up.  So the shortest digits that give the
float back are first taken to 14 significant digits (calculators commonly carry 13 to 15;
common practice, no source).
"""

from dataclasses import dataclass, field
from decimal import ROUND_HALF_UP, Context, Decimal
from functools import lru_cache

from calc.language.units import Unit, speak
from calc.language.unittext import superscript

NO_BREAK = "\N{NO-BREAK SPACE}"
_MINUS = "\N{MINUS SIGN}"
_CONTEXT = Context(prec=60, rounding=ROUND_HALF_UP)
_CALCULATOR = Context(prec=14, rounding=ROUND_HALF_UP)
_MOST_DECIMALS = 10
_SMALLEST_PLAIN_RESULT = Decimal("0.1")
_SMALLEST_PLAIN_DATUM = Decimal("0.001")
_SCIENTIFIC_FROM = 10_000
_LONGEST_DATUM = 12  # significant digits; a longer float is noise, not a datum
_NEAR = Decimal("1e-9")  # relative: a float nearer than this to a whole number is that number
_MOST_ANGLE_DECIMALS = 20


@dataclass(frozen=True, slots=True)
class Style:
    """How numbers are printed: decimals kept (0 to 10), and a decimal comma or point."""

    decimals: int = 2
    comma: bool = True

    def __post_init__(self) -> None:
        if not 0 <= self.decimals <= _MOST_DECIMALS:
            raise ValueError(
                f"{self.decimals} decimals cannot be printed. Choose from 0 to {_MOST_DECIMALS}, for example 2."
            )


@dataclass(frozen=True, slots=True)
class Printed:
    """One number (perhaps with its unit) in three notations with the same digits."""

    text: str
    tex: str
    spoken: str
    number: Decimal = field(default=Decimal(), compare=False)  # what the digits say


@lru_cache(maxsize=512, typed=True)
def rounded(value: float | Decimal, style: Style = Style()) -> Printed:
    """A result, rounded once to ``style.decimals`` places (see the module's rule).

    A size that rounds to 10 000 is scientific too.  Raises ``ValueError`` for a value
    that is not finite.
    """
    number = _CALCULATOR.plus(_decimal(value))
    if not number:
        return _print("0", None, style)
    step = Decimal((0, (1,), -style.decimals))
    if _SMALLEST_PLAIN_RESULT <= abs(number) < _SCIENTIFIC_FROM:
        plain = number.quantize(step, context=_CONTEXT)
        if plain and abs(plain) < _SCIENTIFIC_FROM:
            return _print(f"{plain:f}", None, style)
    power = number.adjusted()
    coefficient = number.scaleb(-power, _CONTEXT).quantize(step, context=_CONTEXT)
    if abs(coefficient) >= 10:  # 9,999 has become 10,00
        power += 1
        coefficient = number.scaleb(-power, _CONTEXT).quantize(step, context=_CONTEXT)
    return _print(f"{coefficient:f}", power, style)


def count(value: float, style: Style = Style()) -> Printed:
    """A number of things: 3 where it is whole, 2,40 where the data do not fit, 4,06 × 10¹⁰ where it is large."""
    number = _CALCULATOR.plus(_decimal(value))
    whole = number.to_integral_value()
    if abs(number) < _SCIENTIFIC_FROM and whole and abs(number - whole) <= _NEAR * abs(whole):
        return _print(f"{whole:f}", None, style)
    return rounded(number, style)


def angle(degrees: float, style: Style = Style()) -> Printed:
    """Degrees, never with a power of ten, and rounded to a quarter turn only when they are one.

    A direction 0,004° off an axis is not along it: its distance from the axis keeps two figures.
    """
    number = _CALCULATOR.plus(_decimal(degrees))
    quarter = 90 * (number / 90).to_integral_value()
    gap = abs(number - quarter)
    if not gap:
        return _print(f"{quarter:f}" if not quarter else f"{quarter:.{style.decimals}f}", None, style)
    figures = max(style.decimals, 2)
    places = max(style.decimals, min(figures - 1 - gap.adjusted(), _MOST_ANGLE_DECIMALS))
    plain = number.quantize(Decimal((0, (1,), -places)), context=_CONTEXT)
    return _print(f"{plain:f}", None, style)


@lru_cache(maxsize=512, typed=True)
def exact(value: float | Decimal, style: Style = Style(), figures: int = 6, *, plain: bool = False) -> Printed:
    """A datum with all its digits: 0,15 or 1,6 × 10⁻¹⁹; plain from 0,001 to below 10 000, or always.

    A float with more than twelve significant digits came out of a calculation and is
    shown with six, or as many ``figures`` as asked; a ``Decimal`` keeps its digits.
    Raises ``ValueError`` for a value that is not finite.
    """
    number = _decimal(value).normalize(_CONTEXT)
    if isinstance(value, float) and len(number.as_tuple().digits) > _LONGEST_DATUM:
        number = Context(figures, ROUND_HALF_UP).plus(number).normalize(_CONTEXT)
    if not number:
        return _print("0", None, style)
    if plain or _SMALLEST_PLAIN_DATUM <= abs(number) < _SCIENTIFIC_FROM:
        return _print(f"{number:f}", None, style)
    power = number.adjusted()
    return _print(f"{number.scaleb(-power, _CONTEXT):f}", power, style)


def counted(count: int, noun: str) -> str:
    """A count with its noun, one or many: ``1 mark``, ``2 marks``."""
    return f"{count} {noun}{'' if count == 1 else 's'}"


def with_unit(printed: Printed, unit: Unit) -> Printed:
    """The number followed by its unit; a degree sign takes no space."""
    if not unit.text:
        return printed
    close = unit.text == "°"
    return Printed(
        printed.text + ("" if close else NO_BREAK) + unit.text,
        printed.tex + ("" if close else "\\,") + unit.tex,
        f"{printed.spoken} {speak(unit, one=printed.text == '1')}",
    )


def spoken(value: float | Decimal, style: Style = Style()) -> str:
    """A result in words: ``1,60 times 10 to the power minus 6``."""
    return rounded(value, style).spoken


def _decimal(value: float | Decimal) -> Decimal:
    """The shortest decimal digits that give the float back."""
    number = value if isinstance(value, Decimal) else Decimal(repr(float(value)))
    if not number.is_finite():
        raise ValueError(f"{value} cannot be printed: only finite numbers can.")
    return number


def _print(digits: str, power: int | None, style: Style) -> Printed:
    number = Decimal(digits).scaleb(power or 0, _CONTEXT)
    mark = "," if style.comma else "."
    text = digits.replace("-", _MINUS).replace(".", mark)
    tex = digits.replace(".", "{,}" if style.comma else ".")
    words = digits.replace("-", "minus ").replace(".", mark)
    if power is not None:
        text += f"{NO_BREAK}×{NO_BREAK}10{superscript(power)}"
        tex += f" \\times 10^{{{power}}}"
        words += f" times 10 to the power {'minus ' if power < 0 else ''}{abs(power)}"
    return Printed(text, tex, words, number)
