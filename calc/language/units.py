"""Units as learners type them and as a teacher writes them.

Unit names, prefixes and factors: The International System of Units, 9th edition
(BIPM, 2019), chapters 2 to 4; the electronvolt uses the exact SI value of e.  Factors are
fractions, so 36 km/h is exactly 10 m/s.  There are no units with an offset: every
conversion is one multiplication.
"""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from itertools import islice, product
from typing import NamedTuple

from calc.language.unittext import LONGEST, PREFIXES, UnitError, factors, superscript

__all__ = [
    "LONGEST",
    "PI",
    "Dimension",
    "Unit",
    "UnitError",
    "kind_of",
    "name_of_dimension",
    "parse_unit",
    "same_kind",
    "speak",
    "suggest",
]

# pi to 50 decimals (OEIS A000796); enough that degrees become correctly rounded radians.
PI = Fraction("3.14159265358979323846264338327950288419716939937510")


class Dimension(NamedTuple):
    """Whole powers of the seven SI base units, in this order."""

    kg: int = 0
    m: int = 0
    s: int = 0
    A: int = 0
    K: int = 0
    mol: int = 0
    cd: int = 0

    def times(self, other: "Dimension", power: int = 1) -> "Dimension":
        """The dimension of ``self * other**power``."""
        return Dimension(*(a + b * power for a, b in zip(self, other, strict=True)))


class _Atom(NamedTuple):
    """One unit symbol with its prefix, such as nC."""

    symbol: str
    word: str
    plural: str
    factor: Fraction
    dimension: Dimension
    si: str  # symbol of the SI unit it turns into, and the power of that
    si_power: int


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: ``text`` as a teacher writes it (N·C⁻¹), and ``factor`` SI units in one of it.

    ``parts`` are (symbol, power) pairs.  Angles are pure numbers in SI: the factor of a
    degree is pi/180, so the SI value of an angle is in radians.
    """

    text: str
    factor: Fraction
    dimension: Dimension
    parts: tuple[tuple[str, int], ...]

    @property
    def is_angle(self) -> bool:
        """True for degrees and radians, which SI does not tell from pure numbers."""
        return len(self.parts) == 1 and self.parts[0] in _ANGLES

    @property
    def is_decimal(self) -> bool:
        """Whether it is the SI unit times a power of ten, or an angle: kJ is, kWh and min are not."""
        return self.is_angle or Fraction(10) ** round(math.log10(self.factor)) == self.factor

    @property
    def tex(self) -> str:
        r"""Upright TeX, such as ``\mathrm{N\cdot C^{-1}}``; empty for a pure number."""
        return _tex(self.parts)

    def si(self) -> "Unit":
        """The unprefixed SI unit of the same kind: km·h⁻¹ gives m·s⁻¹, kWh gives J."""
        return _si(self.parts)

    def to_si(self, number: Decimal) -> float:
        """SI value of ``number`` of this unit, rounded once (angles: radians)."""
        return float(Fraction(number) * self.factor)

    def from_si(self, value: float) -> float:
        """How many of this unit make the SI ``value``, taken at its shortest digits."""
        return float(Fraction(repr(float(value))) / self.factor)


_ANY = "pnµmkMGTP"  # centi and deci go with the metre and the litre only
_NEWTON = Dimension(kg=1, m=1, s=-2)
_JOULE = Dimension(kg=1, m=2, s=-2)
_WATT = Dimension(kg=1, m=2, s=-3)
_VOLT = Dimension(kg=1, m=2, s=-3, A=-1)
_NONE = Dimension()
_EV = Fraction("1.602176634e-19")

# symbol, word, plural, SI factor, dimension, prefixes it takes, other spellings
_TABLE: tuple[tuple[str, str, str, Fraction | int, Dimension, str, str], ...] = (
    ("m", "metre", "metres", 1, Dimension(m=1), _ANY + "cd", "meter meters"),
    ("g", "gram", "grams", Fraction(1, 1000), Dimension(kg=1), "pnµmk", "gramme grammes"),
    ("t", "tonne", "tonnes", 1000, Dimension(kg=1), "kM", ""),
    ("s", "second", "seconds", 1, Dimension(s=1), "pnµm", "sec secs"),
    ("min", "minute", "minutes", 60, Dimension(s=1), "", "mins"),
    ("h", "hour", "hours", 3600, Dimension(s=1), "", "hr hrs"),
    ("d", "day", "days", 86400, Dimension(s=1), "", ""),
    ("A", "ampere", "amperes", 1, Dimension(A=1), _ANY, "amp amps"),
    ("K", "kelvin", "kelvins", 1, Dimension(K=1), "nµmkM", ""),
    ("mol", "mole", "moles", 1, Dimension(mol=1), "nµmk", ""),
    ("cd", "candela", "candelas", 1, Dimension(cd=1), "mk", ""),
    ("Hz", "hertz", "hertz", 1, Dimension(s=-1), _ANY, ""),
    ("N", "newton", "newtons", 1, _NEWTON, _ANY, ""),
    ("Pa", "pascal", "pascals", 1, Dimension(kg=1, m=-1, s=-2), _ANY, ""),
    ("J", "joule", "joules", 1, _JOULE, _ANY, ""),
    ("eV", "electronvolt", "electronvolts", _EV, _JOULE, _ANY, ""),
    ("W", "watt", "watts", 1, _WATT, _ANY, ""),
    ("Wh", "watt-hour", "watt-hours", 3600, _JOULE, "kMGT", ""),
    ("C", "coulomb", "coulombs", 1, Dimension(s=1, A=1), _ANY, ""),
    ("V", "volt", "volts", 1, _VOLT, _ANY, ""),
    ("Ω", "ohm", "ohms", 1, _VOLT.times(Dimension(A=1), -1), _ANY, ""),
    ("F", "farad", "farads", 1, Dimension(s=1, A=1).times(_VOLT, -1), _ANY, ""),
    ("T", "tesla", "teslas", 1, Dimension(kg=1, s=-2, A=-1), _ANY, ""),
    ("Wb", "weber", "webers", 1, _VOLT.times(Dimension(s=1)), _ANY, ""),
    ("H", "henry", "henries", 1, _VOLT.times(Dimension(s=1, A=-1)), _ANY, "henrys"),
    ("L", "litre", "litres", Fraction(1, 1000), Dimension(m=3), "µmcd", "liter liters"),
    ("rad", "radian", "radians", 1, _NONE, "mµ", ""),
    ("°", "degree", "degrees", PI / 180, _NONE, "", "deg degs"),
)
_SI_FOR = {
    "g": ("kg", 1),
    "t": ("kg", 1),
    "min": ("s", 1),
    "h": ("s", 1),
    "d": ("s", 1),
    "eV": ("J", 1),
    "Wh": ("J", 1),
    "L": ("m", 3),
    "°": ("rad", 1),
}
_ANGLES = {("°", 1), ("rad", 1), ("mrad", 1), ("µrad", 1)}

_SYMBOLS: dict[str, _Atom] = {}  # every accepted symbol, case-sensitive
_WORDS: dict[str, _Atom] = {}  # every accepted name, lower case
_BY_LETTERS: dict[str, list[str]] = {}  # lower-case letters -> symbols written with them


def _build_tables() -> None:
    symbols_typed = {"Ω": ("Ω", "ohm"), "L": ("L", "l")}
    for symbol, word, plural, factor, dimension, prefixes, spellings in _TABLE:
        si, si_power = (symbol, 1) if factor == 1 else _SI_FOR[symbol]
        for prefix in ("", *prefixes):
            power, name = PREFIXES.get(prefix, (0, ""))
            whole = Fraction(factor) * Fraction(10) ** power
            full, many = (_elide(name + each) for each in (word, plural))
            atom = _Atom(prefix + symbol, full, many, whole, dimension, si, si_power)
            for typed in symbols_typed.get(symbol, (symbol,)):
                # setdefault: a unit listed earlier keeps its symbol.
                _SYMBOLS.setdefault(prefix + typed, atom)
                if prefix == "µ":
                    _SYMBOLS.setdefault("u" + typed, atom)
            for each in (full, many, *(name + w for w in (word, plural, *spellings.split()))):
                _WORDS.setdefault(each.replace("-", ""), atom)
    for typed in _SYMBOLS:
        _BY_LETTERS.setdefault(typed.lower(), []).append(typed)


def _elide(word: str) -> str:
    return word.replace("kiloohm", "kilohm").replace("megaohm", "megohm")


_build_tables()

# Not in the table: a percentage is an answer of its own kind and goes with no other unit.
_PER_CENT = _Atom("%", "per cent", "per cent", Fraction(1), _NONE, "%", 1)
_SYMBOLS["%"] = _PER_CENT

_MOST_GUESSES = 64
_REMEDIES = dict.fromkeys(("kph", "kmh", "kmph"), "Type km/h, for example 36 km/h.")
_REMEDIES["°C"] = "Add 273 to the temperature and type kelvin, for example 293 K."


def _atom(name: str) -> _Atom | None:
    return _SYMBOLS.get(name) or (_WORDS.get(name.lower()) if len(name) > 2 else None)


@lru_cache(maxsize=1024)
def parse_unit(text: str) -> Unit:
    """Read a unit such as ``nC``, ``N/C``, ``m s^-2``, ``km·h⁻¹`` or ``newtons per coulomb``.

    Blank text is the unit of a pure number.  Raises ``UnitError``, nothing else.
    """
    text = text.strip()
    if text == "%":
        return _assemble([(_PER_CENT, 1)])
    if len(text) > LONGEST:
        raise UnitError(f'"{text[:20]}…" is longer than {LONGEST} characters.')
    pairs: list[tuple[_Atom, int]] = []
    for name, power in factors(text):
        atom = _atom(name)
        if atom is None:
            raise _unknown(name)
        pairs.append((atom, power))
    unit = _assemble(pairs)
    if ("°", 1) in unit.parts and sum(power > 0 for _, power in unit.parts) > 1:
        raise UnitError(f'"{text}" puts a degree beside another unit.', _REMEDIES["°C"])
    return unit


@lru_cache(maxsize=256)
def _si(parts: tuple[tuple[str, int], ...]) -> Unit:
    atoms = [(_SYMBOLS[symbol], power) for symbol, power in parts]
    return _assemble([(_SYMBOLS[atom.si], power * atom.si_power) for atom, power in atoms])


def _assemble(pairs: Iterable[tuple[_Atom, int]]) -> Unit:
    powers: dict[_Atom, int] = {}
    factor, dimension = Fraction(1), _NONE
    for atom, power in pairs:
        powers[atom] = powers.get(atom, 0) + power
        factor *= atom.factor**power
        dimension = dimension.times(atom.dimension, power)
    # A teacher writes the negative powers last.
    ordered = sorted((p for p in powers.items() if p[1]), key=lambda pair: pair[1] < 0)
    parts = tuple((atom.symbol, power) for atom, power in ordered)
    shown = "·".join(s + (superscript(p) if p != 1 else "") for s, p in parts)
    return Unit(shown, factor, dimension, parts)


def _unknown(name: str) -> UnitError:
    if name in PREFIXES or name == "u":
        return UnitError(f'"{name}" is only a prefix: a unit follows it.')
    close = " or ".join(_BY_LETTERS.get(name.lower(), [])[:2])
    if close:
        return UnitError(f'"{name}" is not a unit: capital and small letters differ.', f"Did you mean {close}?")
    return UnitError(f'"{name}" is not a unit used here.', _REMEDIES.get(name, ""))


def suggest(text: str, wanted: Unit) -> tuple[str, ...]:
    """At most two units of the wanted kind that ``text`` may have meant, closest first.

    Tries other capitals (NC for nC), a forgotten dot (ms^-1 for m·s⁻¹) and a prefix alone.
    """
    text = text.strip()
    try:
        choices = [list(_alternatives(name, power)) for name, power in factors(text)]
    except UnitError:
        return ()
    units = [
        _assemble(pair for pairs in combination for pair in pairs)
        for combination in islice(product(*choices), _MOST_GUESSES)
    ]
    if text not in _SYMBOLS and text + wanted.si().text in _SYMBOLS:
        units.append(parse_unit(text + wanted.si().text))
    close = dict.fromkeys(unit.text for unit in units if same_kind(unit, wanted))
    return tuple(close)[:2]


def _alternatives(name: str, power: int) -> Iterator[list[tuple[_Atom, int]]]:
    def slips(symbol: str) -> int:
        return sum(a != b for a, b in zip(symbol, name, strict=False))

    for symbol in sorted(_BY_LETTERS.get(name.lower(), []), key=slips):
        yield [(_SYMBOLS[symbol], power)]
    for cut in range(1, len(name)):
        first, second = _atom(name[:cut]), _atom(name[cut:])
        if first and second and "°" not in name:
            yield [(first, 1), (second, power)]


def same_kind(one: Unit, other: Unit) -> bool:
    """True when the two units measure the same kind of quantity."""
    return one.dimension == other.dimension and one.is_angle == other.is_angle


_KINDS = {
    parse_unit(text).dimension: kind
    for text, kind in {
        "": "a pure number",
        "m": "a length",
        "m^2": "an area",
        "m^3": "a volume",
        "kg": "a mass",
        "kg/m^3": "a density",
        "s": "a time",
        "Hz": "a frequency",
        "m/s": "a velocity",
        "m/s^2": "an acceleration",
        "N": "a force",
        "J": "an energy",
        "W": "a power",
        "N s": "a momentum",
        "Pa": "a pressure",
        "C": "a charge",
        "A": "a current",
        "V": "a potential difference",
        "Ω": "a resistance",
        "F": "a capacitance",
        "V/m": "an electric field",
        "T": "a magnetic flux density",
        "Wb": "a magnetic flux",
        "H": "an inductance",
        "K": "a temperature",
        "mol": "an amount of substance",
        "cd": "a luminous intensity",
    }.items()
}


def name_of_dimension(dimension: Dimension) -> str:
    """The kind of quantity, with its article: ``a charge``, ``a length``."""
    if kind := _KINDS.get(dimension):
        return kind
    base = _assemble((_SYMBOLS[symbol], power) for symbol, power in dimension._asdict().items())
    return f"a quantity in {base.text}"


def kind_of(unit: Unit) -> str:
    """Like ``name_of_dimension`` but tells an angle from a pure number."""
    return "an angle" if unit.is_angle else name_of_dimension(unit.dimension)


@lru_cache(maxsize=256)
def _tex(parts: tuple[tuple[str, int], ...]) -> str:
    if parts in ((), (("°", 1),)):
        return "^\\circ" if parts else ""
    pieces = (_tex_symbol(symbol) + (f"^{{{power}}}" if power != 1 else "") for symbol, power in parts)
    return "\\mathrm{" + "\\cdot ".join(pieces) + "}"


def _tex_symbol(symbol: str) -> str:
    text = symbol.replace("µ", "\\mu ").replace("Ω", "\\Omega").replace("°", "{}^\\circ")
    text = text.replace("%", "\\%")
    return text.replace("\\mu \\", "\\mu\\")


def speak(unit: Unit, *, one: bool = False) -> str:
    """Words for a screen reader: ``newtons per coulomb``; ``one`` gives the singular."""
    return _spoken(unit.parts, one)


@lru_cache(maxsize=256)
def _spoken(parts: tuple[tuple[str, int], ...], one: bool) -> str:
    above = [(s, p) for s, p in parts if p > 0]
    below = [(s, -p) for s, p in parts if p < 0]
    words: list[str] = []
    for index, (symbol, power) in enumerate(above):
        atom = _SYMBOLS[symbol]
        last = index == len(above) - 1
        word = atom.plural if last and not one else atom.word
        if len(above) == 1 and power in {2, 3}:
            words.append(("square " if power == 2 else "cubic ") + word)
        else:
            words.append(word + _spoken_power(power))
    words += ["per " + _SYMBOLS[symbol].word + _spoken_power(power) for symbol, power in below]
    return " ".join(words)


def _spoken_power(power: int) -> str:
    return {1: "", 2: " squared", 3: " cubed"}.get(power, f" to the power {power}")
