"""The way units are written: names, powers, dots, strokes and words, in the order typed.

Says nothing of which units exist; ``calc.language.units`` does.  Spelling of products, quotients
and powers, and the ambiguity of a stroke before two factors: The International System of
Units, 9th edition (BIPM, 2019), chapter 5.
"""

import re
from collections.abc import Iterator

LONGEST = 60  # characters in one box

# symbol: (power of ten, name)
PREFIXES = {
    "p": (-12, "pico"),
    "n": (-9, "nano"),
    "µ": (-6, "micro"),
    "m": (-3, "milli"),
    "c": (-2, "centi"),
    "d": (-1, "deci"),
    "k": (3, "kilo"),
    "M": (6, "mega"),
    "G": (9, "giga"),
    "T": (12, "tera"),
    "P": (15, "peta"),
}
_PREFIX_WORDS = {name for _, name in PREFIXES.values()}

_SUPERSCRIPTS = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
_FROM_SUPERSCRIPTS = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁺", "0123456789-+")
# Signs that phones, word processors and web pages put for a hyphen-minus and for ·.
DASHES = "−–—‒‐\u2011\ufe63\uff0d"
DOTS = "⋅•∙∗"
_LIKENESSES = str.maketrans(
    dict.fromkeys(DASHES, "-")
    | dict.fromkeys(DOTS + "*×.", "·")
    | {
        "μ": "µ",
        "\u2126": "Ω",
        "º": "°",
        "˚": "°",
        "\u212a": "K",
        "⁄": "/",
        "∕": "/",
    }
)
_RAISED = re.compile("[⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁺]+")
_ONE_WORD = re.compile(r"(?<=watt)[ -](?=hour)|(?<=electron)[ -](?=volt)", re.IGNORECASE)
_JOIN = re.compile(r"-(?=[A-Za-zµΩ°])")
_TOKEN = re.compile(
    r"\s*(?:(?P<name>[A-Za-zµΩ°]+)"
    r"(?:\s*\^\s*(?:\(\s*)?(?P<raised>[+-]?[0-9]+)(?:\s*\))?|(?P<plain>[+-]?[0-9]+))?"
    r"|(?P<mark>[·/()]))"
)
_POWERS = {"square": 2, "squared": 2, "cubic": 3, "cubed": 3}
_STROKE = "Write negative powers instead of a stroke, for example J·kg^-1·K^-1."
_LARGEST_POWER = 9


class UnitError(ValueError):
    """A unit that cannot be read.

    ``reason`` says what was typed and the rule, ``remedy`` what to do; a box that knows
    the unit it wants may put a remedy of its own after ``reason``.
    """

    def __init__(self, reason: str, remedy: str = "") -> None:
        super().__init__(reason, remedy)
        self.reason = reason
        self.remedy = remedy

    @property
    def sentence(self) -> str:
        """The whole message, ready to show beside the box."""
        return f"{self.reason} {self.remedy or 'Type one like N, nC, m/s^2 or N·C^-1.'}"

    def __str__(self) -> str:
        return self.sentence


def superscript(power: int) -> str:
    """``power`` in raised digits: -19 gives ⁻¹⁹."""
    return str(power).translate(_SUPERSCRIPTS)


def raised_to_caret(text: str) -> str:
    """``text`` with each run of raised digits written after a caret: 10⁻⁹ gives 10^-9."""
    return _RAISED.sub(lambda run: "^" + run.group().translate(_FROM_SUPERSCRIPTS), text)


def _tokens(text: str) -> Iterator[tuple[str, int]]:
    """(name, power) for a unit or a word, (mark, 0) for one of · / ( )."""
    clean = _ONE_WORD.sub("", raised_to_caret(text).translate(_LIKENESSES))
    clean = _JOIN.sub("·", clean).strip()
    position = 0
    pending = ""  # a prefix word waiting for its unit: micro coulomb
    while position < len(clean):
        match = _TOKEN.match(clean, position)
        if match is None:
            raise UnitError(f'"{text}" cannot be read as a unit from "{clean[position:].strip()}".')
        position = match.end()
        name = match["name"] or match["mark"]
        if name.lower() in _PREFIX_WORDS:
            pending = name.lower()
        elif match["mark"]:
            yield name, 0
        else:
            power = int(match["raised"] or match["plain"] or 1)
            _check_power(text, power)
            yield (pending + name.lower() if pending else name), power
            pending = ""
    if pending:
        raise UnitError(f'"{pending}" is only a prefix: a unit follows it.')


def factors(text: str) -> list[tuple[str, int]]:
    """(name, signed power) for each factor of the unit written in ``text``."""
    found: list[tuple[str, int]] = []
    sign = 1
    operator = ""  # the mark just read, while its factor is awaited
    bracket = False
    divided = False  # a divisor is complete: one more factor could belong above or below
    ahead = 1  # from "square" or "cubic"
    for name, power in _tokens(text):
        word = name.lower()
        if power == 0 or word == "per":
            mark = "/" if word == "per" else name
            if mark == "(" and operator == "/":
                bracket = True
            elif operator or (mark != "/" and not found) or (mark == "/" and bracket):
                raise UnitError(f'"{text}" has a "{name}" out of place.', _STROKE)
            elif mark == "(" or (mark == ")" and not bracket):
                raise UnitError(f'"{text}" has a bracket out of place.', _STROKE)
            elif mark == "/":
                sign, divided = -1, False
            elif mark == ")":
                bracket, divided = False, True
            operator = "" if mark == ")" else mark
        elif word in _POWERS:
            if word in {"square", "cubic"}:
                ahead = _POWERS[word]
            elif found and not operator:
                found[-1] = found[-1][0], found[-1][1] * _POWERS[word]
            else:
                raise UnitError(f'"{text}" has "{name}" without a unit before it.')
        else:
            if sign < 0 and (power < 0 or divided):
                raise UnitError(f'"{text}" can be read in two ways.', _STROKE)
            found.append((name, sign * power * ahead))
            operator, ahead, divided = "", 1, sign < 0 and not bracket
    if operator or bracket or ahead > 1:
        raise UnitError(f'"{text}" is not complete.')
    for _, power in found:
        _check_power(text, power)
    return found


def _check_power(text: str, power: int) -> None:
    if not 1 <= abs(power) <= _LARGEST_POWER:
        raise UnitError(
            f'"{text}" has the power {power}: powers of a unit go from 1 to {_LARGEST_POWER} '
            f"and from -1 to -{_LARGEST_POWER}."
        )
