"""Units as learners type them and as a teacher writes them.

Unit names, prefixes and factors: The International System of Units, 9th edition
(BIPM, 2019), tables 2 to 8; the electronvolt uses the exact SI value of e.  Factors are
fractions, so 36 km/h is exactly 10 m/s.  There are no units with an offset: every
conversion is one multiplication.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from itertools import islice, product
from typing import NamedTuple

# pi to 50 decimals (OEIS A000796); enough that degrees become correctly rounded radians.
PI = Fraction("3.14159265358979323846264338327950288419716939937510")

LONGEST = 60  # characters in one box


class UnitError(ValueError):
    """A unit that cannot be read; ``sentence`` says what was typed, the rule and the remedy."""

    @property
    def sentence(self) -> str:
        """The whole message, ready to show beside the box."""
        return str(self.args[0])


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
    def tex(self) -> str:
        r"""Upright TeX, such as ``\mathrm{N\cdot C^{-1}}``; empty for a pure number."""
        if self.text in {"", "°"}:
            return "^\\circ" if self.text else ""
        pieces = (
            _tex_symbol(symbol) + (f"^{{{power}}}" if power != 1 else "")
            for symbol, power in self.parts
        )
        return "\\mathrm{" + "\\cdot ".join(pieces) + "}"

    def si(self) -> "Unit":
        """The unprefixed SI unit of the same kind: km·h⁻¹ gives m·s⁻¹, kWh gives J."""
        return _assemble((_SYMBOLS[_SYMBOLS[s].si], p * _SYMBOLS[s].si_power) for s, p in self.parts)

    def to_si(self, number: Decimal) -> float:
        """SI value of ``number`` of this unit, rounded once (angles: radians)."""
        return float(Fraction(number) * self.factor)

    def from_si(self, value: float) -> float:
        """How many of this unit make the SI ``value``, taken at its shortest digits."""
        return float(Fraction(repr(float(value))) / self.factor)


# symbol: (power of ten, name); u is typed for µ.
_PREFIXES = {
    "p": (-12, "pico"), "n": (-9, "nano"), "µ": (-6, "micro"), "m": (-3, "milli"),
    "c": (-2, "centi"), "d": (-1, "deci"), "k": (3, "kilo"), "M": (6, "mega"),
    "G": (9, "giga"), "T": (12, "tera"), "P": (15, "peta"),
}  # fmt: skip
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
    "g": ("kg", 1), "t": ("kg", 1), "min": ("s", 1), "h": ("s", 1), "d": ("s", 1),
    "eV": ("J", 1), "Wh": ("J", 1), "L": ("m", 3), "°": ("rad", 1),
}  # fmt: skip
_ANGLES = {("°", 1), ("rad", 1), ("mrad", 1), ("µrad", 1)}
_ELISIONS = {"kiloohm": "kilohm", "megaohm": "megohm"}

_SYMBOLS: dict[str, _Atom] = {}  # every accepted symbol, case-sensitive
_WORDS: dict[str, _Atom] = {}  # every accepted name, lower case
_BY_LETTERS: dict[str, list[str]] = {}  # lower-case letters -> symbols written with them


def _build_tables() -> None:
    typed_as = {"Ω": ("Ω", "ohm"), "L": ("L", "l")}
    for symbol, word, plural, factor, dimension, prefixes, spellings in _TABLE:
        for prefix in ("", *prefixes):
            power, name = _PREFIXES.get(prefix, (0, ""))
            ohm = _ELISIONS.get(name + word, name + word)
            words = [name + w for w in (word, plural, *spellings.split())] + [ohm, ohm + "s"]
            whole = Fraction(factor) * Fraction(10) ** power
            shown_plural = name + plural if ohm == name + word else ohm + "s"
            si, si_power = (symbol, 1) if factor == 1 else _SI_FOR[symbol]
            atom = _Atom(prefix + symbol, ohm, shown_plural, whole, dimension, si, si_power)
            for typed in typed_as.get(symbol, (symbol,)):
                # setdefault: a unit listed earlier keeps its symbol (cd is no centi-day).
                _SYMBOLS.setdefault(prefix + typed, atom)
                if prefix == "µ":
                    _SYMBOLS.setdefault("u" + typed, atom)
            for each in words:
                _WORDS.setdefault(each.replace("-", ""), atom)
    for typed in _SYMBOLS:
        _BY_LETTERS.setdefault(typed.lower(), []).append(typed)


_build_tables()

_SUPERSCRIPTS = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
_FROM_SUPERSCRIPTS = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁺", "0123456789-+")
_LIKENESSES = str.maketrans({
    "μ": "µ", "\u2126": "Ω", "º": "°", "˚": "°", "\u212a": "K",
    "⋅": "·", "•": "·", "∙": "·", "*": "·", "×": "·", ".": "·",
    "−": "-", "–": "-", "‐": "-", "\u2011": "-", "⁄": "/", "∕": "/",
})  # fmt: skip
_RAISED = re.compile("[⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁺]+")
_JOIN = re.compile(r"-(?=[A-Za-zµΩ°])")
_TOKEN = re.compile(
    r"\s*(?:(?P<name>[A-Za-zµΩ°]+)"
    r"(?:\s*\^\s*(?:\(\s*)?(?P<raised>[+-]?[0-9]+)(?:\s*\))?|(?P<plain>[+-]?[0-9]+))?"
    r"|(?P<mark>[·/()]))"
)
_POWERS = {"square": 2, "squared": 2, "cubic": 3, "cubed": 3}
_PREFIX_WORDS = {name for _, name in _PREFIXES.values()}
_REMEDIES = {
    "°C": "Add 273 to the temperature and type kelvin, for example 293 K",
    "kph": "Type km/h, for example 36 km/h",
    "kmh": "Type km/h, for example 36 km/h",
    "kmph": "Type km/h, for example 36 km/h",
}


def superscript(power: int) -> str:
    """``power`` in raised digits: -19 gives ⁻¹⁹."""
    return str(power).translate(_SUPERSCRIPTS)


def raised_to_caret(text: str) -> str:
    """``text`` with each run of raised digits written after a caret: 10⁻⁹ gives 10^-9."""
    return _RAISED.sub(lambda run: "^" + run.group().translate(_FROM_SUPERSCRIPTS), text)


def _tokens(text: str) -> Iterator[tuple[str, int]]:
    """(name, power) for a unit, (mark, 0) for one of · / ( )."""
    clean = _JOIN.sub("·", raised_to_caret(text).translate(_LIKENESSES)).strip()
    position = 0
    pending = ""  # a prefix word waiting for its unit: micro coulomb
    while position < len(clean):
        match = _TOKEN.match(clean, position)
        if match is None:
            raise UnitError(
                f'"{text.strip()}" cannot be read as a unit at "{clean[position:].strip()}". '
                "Type unit symbols with powers, for example N·C^-1 or m/s^2."
            )
        position = match.end()
        if match["mark"]:
            yield match["mark"], 0
            continue
        name = match["name"]
        if name.lower() in _PREFIX_WORDS:
            pending = name.lower()
            continue
        power = int(match["raised"] or match["plain"] or 1)
        if not 1 <= abs(power) <= 9:
            raise UnitError(
                f'"{text.strip()}" has the power {power}. '
                "Powers in a unit run from 1 to 9 or -1 to -9, for example m^2."
            )
        yield pending + (name.lower() if pending else name), power
        pending = ""
    if pending:
        raise UnitError(f'"{text.strip()}" is only a prefix. Type a unit after it, for example nC.')


def _factors(text: str) -> Iterator[tuple[str, int]]:
    """(name, signed power) for each factor of the unit written in ``text``."""
    sign, bracket, divided, next_power = 1, False, False, 1
    held: tuple[str, int] | None = None
    for name, power in _tokens(text):
        word = name.lower()
        if word in {"squared", "cubed"} and held:
            held = (held[0], held[1] * _POWERS[word])
        elif word in {"square", "cubic"}:
            next_power = _POWERS[word]
        elif name == "/" or word == "per":
            sign, divided = -1, False
        elif name == "(" and sign < 0 and not divided:
            bracket = True
        elif name == ")" and bracket:
            bracket, divided = False, True
        elif name == "·":
            continue
        elif power == 0:
            raise UnitError(
                f'"{text.strip()}" has a bracket out of place. '
                "Write negative powers instead, for example J·kg^-1·K^-1."
            )
        else:
            if held:
                yield held
            if sign < 0 and (power < 0 or divided):
                raise UnitError(
                    f'"{text.strip()}" can be read in two ways. Use negative powers '
                    "instead of the stroke, for example J·kg^-1·K^-1."
                )
            held = (name, sign * power * next_power)
            next_power, divided = 1, sign < 0 and not bracket
    if held:
        yield held


def _atom(name: str) -> _Atom | None:
    return _SYMBOLS.get(name) or (_WORDS.get(name.lower()) if len(name) > 2 else None)


@lru_cache(maxsize=1024)
def parse_unit(text: str) -> Unit:
    """Read a unit such as ``nC``, ``N/C``, ``m s^-2``, ``km·h⁻¹`` or ``newtons per coulomb``.

    Blank text is the unit of a pure number.  Raises ``UnitError``, nothing else.
    """
    if len(text) > LONGEST:
        raise UnitError(f"This unit is longer than {LONGEST} characters. Type it shorter: N·C^-1.")
    pairs: list[tuple[_Atom, int]] = []
    for name, power in _factors(text):
        atom = _atom(name)
        if atom is None:
            raise UnitError(_unknown(name))
        pairs.append((atom, power))
    if text.strip() and not pairs:
        raise UnitError(f'"{text.strip()}" is not a unit. Type one, for example N·C^-1.')
    return _assemble(pairs)


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


def _unknown(name: str) -> str:
    if name in _REMEDIES:
        return f'"{name}" is not a unit used here. {_REMEDIES[name]}.'
    if name in _PREFIXES or name == "u":
        return f'"{name}" is only a prefix. Type a unit after it, for example nC.'
    close = _BY_LETTERS.get(name.lower(), [])
    if close:
        return (
            f'"{name}" is not a unit: capital and small letters differ. '
            f"Did you mean {' or '.join(close[:2])}?"
        )
    return f'"{name}" is not a unit used here. Type a unit symbol, for example N, nC or m/s^2.'


def suggest(text: str, wanted: Unit) -> tuple[str, ...]:
    """At most two units of the wanted kind that ``text`` may have meant, closest first.

    Tries other capitals (NC for nC) and a forgotten dot (ms^-1 for m·s⁻¹).
    """
    choices: list[list[str]] = []
    try:
        for name, power in _factors(text):
            close = sorted(
                _BY_LETTERS.get(name.lower(), []),
                key=lambda symbol, typed=name: sum(  # type: ignore[misc]
                    a != b for a, b in zip(symbol, typed, strict=False)
                ),
            )
            dotted = [
                f"{name[:i]}·{name[i:]}"
                for i in range(1, len(name))
                if _atom(name[:i]) and _atom(name[i:])
            ]
            choices.append([f"{each}^{power}" for each in (*close, *dotted)])
    except UnitError:
        return ()
    found: dict[str, None] = {}
    for combination in islice(product(*choices), 64):
        unit = parse_unit("·".join(combination))
        if same_kind(unit, wanted):
            found.setdefault(unit.text)
    return tuple(found)[:2]


def same_kind(one: Unit, other: Unit) -> bool:
    """True when the two units measure the same kind of quantity."""
    return one.dimension == other.dimension and one.is_angle == other.is_angle


_KINDS = {
    parse_unit(text).dimension: kind
    for text, kind in {
        "": "a pure number", "m": "a length", "m^2": "an area", "m^3": "a volume",
        "kg": "a mass", "kg/m^3": "a density", "s": "a time", "Hz": "a frequency",
        "m/s": "a velocity", "m/s^2": "an acceleration", "N": "a force", "J": "an energy",
        "W": "a power", "N s": "a momentum", "Pa": "a pressure", "C": "a charge",
        "A": "a current", "V": "a potential difference", "Ω": "a resistance",
        "F": "a capacitance", "V/m": "an electric field", "T": "a magnetic flux density",
        "Wb": "a magnetic flux", "H": "an inductance", "K": "a temperature",
        "mol": "an amount of substance", "cd": "a luminous intensity",
    }.items()
}  # fmt: skip


def name_of_dimension(dimension: Dimension) -> str:
    """The kind of quantity, with its article: ``a charge``, ``a length``."""
    base = " ".join(f"{s}^{p}" for s, p in dimension._asdict().items() if p)
    return _KINDS.get(dimension) or f"a quantity in {parse_unit(base).text}"


def kind_of(unit: Unit) -> str:
    """Like ``name_of_dimension`` but tells an angle from a pure number."""
    return "an angle" if unit.is_angle else name_of_dimension(unit.dimension)


def _tex_symbol(symbol: str) -> str:
    text = symbol.replace("µ", "\\mu ").replace("Ω", "\\Omega").replace("°", "{}^\\circ")
    return text.replace("\\mu \\", "\\mu\\")


def speak(unit: Unit, *, one: bool = False) -> str:
    """Words for a screen reader: ``newtons per coulomb``; ``one`` gives the singular."""
    above = [(s, p) for s, p in unit.parts if p > 0]
    below = [(s, -p) for s, p in unit.parts if p < 0]
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
