"""A learner's working as on paper, line under line: formula, numbers put in, result.

Each line is an equation. One with letters only is a formula: right where both sides agree, for the data given and for
others. One with letters and numbers has the numbers put in: right where it holds for the right values. One with
numbers must keep the value of the line before. A line that speaks of nothing the question knows ("Fnet = ma",
"Σp before = Σp after", "take right as positive") is a learner's own note: it is neither marked nor blamed.
Common practice of a memo, no source.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import permutations, product

from calc.language.expressions import Expression, ExpressionError
from calc.language.units import UnitError, parse_unit
from calc.marking.written import Letters, Side, letters_of, number, numbers, own_letter, plain, readings

MOST_LINES = 20
LONGEST = 200
SAME = 0.011  # a line may round the one before: 1 %, and a little for the last digit
HOLDS = 1e-6
NUDGE = 1e-4  # how far a value is moved to see how much hangs on it
MOST_MEANINGS = 150  # that a line with letters of the learner's own is tried with
COEFFICIENTS = (0.0, 0.5, 1.0, 2.0, 3.0, 4.0)

# What learners call a quantity whatever letter the question has for it.
_MEANT = {
    "vi": ("u", "v_1", "v1", "v_A"),
    "ui": ("u",),
    "u0": ("u",),
    "v0": ("u",),
    "vf": ("v", "v2", "v_2", "v1", "v_B"),
    "uf": ("v",),
    "v1i": ("u1", "u"),
    "vi1": ("u1", "u"),
    "v2i": ("u2", "u"),
    "vi2": ("u2", "u"),
    "v1f": ("v1", "v"),
    "vf1": ("v1", "v"),
    "v2f": ("v2", "v"),
    "vf2": ("v2", "v"),
    "FN": ("N", "N_1", "N_2", "N_3"),
    "Fn": ("N", "N_1", "N_2", "N_3"),
    "fk": ("f", "f_1", "f_2", "f_3"),
    "Fk": ("f", "f_1", "f_2", "f_3"),
    "Ff": ("f", "f_1", "f_2", "f_3", "f_smax"),
    "fs": ("f_smax", "f"),
    "Fs": ("f_smax", "f"),
    "Fg": ("w", "F_gpar"),
    "FT": ("T", "T_1", "T_2"),
    "a": ("a", "g", "-g"),
    "d": ("d", "L", "Deltax", "r"),
    "F": ("F", "P", "F_net"),
    "s": ("L", "d", "Deltax"),
    "Δx": ("L", "d", "Deltax"),
    "x": ("L", "d", "Deltax"),
    "Δy": ("h", "-h", "H", "-H", "h_1", "h_2", "Deltay"),
    "vav": ("v_av",),
    "vave": ("v_av",),
}
_LEAD = re.compile(r"^\s*(?:[∴⇒→•*-]\s+|∴|⇒|=>|(?:so|therefore|thus|hence|then|and|thus)\b)\s*", re.IGNORECASE)
_WORDS = re.compile(  # a direction behind a value
    r"(?:[,;]\s*|\s+)\(?(?:to|in|towards?|away|up|down|upwards?|downwards?|up-?slope|down-?slope|uphill|downhill|left"
    r"|right|leftwards?|rightwards?|forwards?|backwards?|north|south|east|west|vertically|horizontally|straight"
    r"|opposite|along|above|below|clockwise|anticlockwise|attract\w*|repel\w*|repuls\w*|positive|negative)\b.*$",
    re.IGNORECASE,
)
_COST = re.compile(r"^(?:the )?(?:total )?costs?(?=\s*=)", re.IGNORECASE)
_NUMBER_ALONE = re.compile(r"^[+-]?\s*(?:\d{1,3}(?:\s\d{3})+|\d+\.?\d*|\.\d+)")
_POWER_OF_TEN = re.compile(r"^(?:[eE][+-]?\d+|\s*[*xX.]\s*10\s*\^\s*\(?[+-]?\d+\)?)")
_UNIT_ALONE = re.compile(r"^\s*[°%]?\s*(?:[A-Za-zμΩ]+(?:\^\(?-?\d\)?|-?\d)?(?:\s*[*./\s]\s*(?=[A-Za-z]))?)*\s*$")


@dataclass(frozen=True)
class Working:
    """What the lines show, by step: formulas that hold or do not, the numbers put in, the value reached.

    put_in: whether an equation with the numbers put in holds. words: what stands behind the last value, as its
    direction. at: the line of the numbers put in. broken: what is said of the first line that does not follow; ''
    where all do.
    """

    formulas: Mapping[str, bool] = field(default_factory=dict)
    numbers: Mapping[str, str] = field(default_factory=dict)
    put_in: Mapping[str, bool] = field(default_factory=dict)
    values: Mapping[str, str] = field(default_factory=dict)
    words: Mapping[str, str] = field(default_factory=dict)
    at: Mapping[str, tuple[int, str]] = field(default_factory=dict)
    broken: str = ""


def read_working(
    text: str,
    steps: Iterable[str],
    sets: Iterable[Mapping[str, float]],
    own: Iterable[Mapping[str, float]] = (),
    turned: Iterable[str] = (),
) -> Working:
    """Read the lines of one part.

    steps: the names it finds, the one asked last. sets: right values of every name, for the data and for others.
    own: values that follow from the learner's own earlier ones. turned: names with a direction, whose value a learner
    may write with either sign.
    """
    reader = _Reader(tuple(steps), tuple(sets), tuple(own), frozenset(turned))
    found = reader.read(text)
    if not found.broken or not reader.reached:
        return found
    # once more, knowing what the learner ends with: a line may follow from a wrong value before it
    again = _Reader(reader.steps, reader.sets, reader.own, reader.turned)
    again.ends = dict(reader.reached)
    return again.read(text)


@dataclass(frozen=True)
class _Pair:
    """One reading of an equation."""

    left: Side
    right: Side

    @property
    def names(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys((*self.left.names, *self.right.names)))

    @property
    def unknown(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys((*self.left.unknown, *self.right.unknown)))

    @property
    def numerals(self) -> tuple[float, ...]:
        return (*self.left.numerals, *self.right.numerals)


class _Reader:
    def __init__(
        self,
        steps: tuple[str, ...],
        sets: tuple[Mapping[str, float], ...],
        own: tuple[Mapping[str, float], ...],
        turned: frozenset[str],
    ) -> None:
        self.steps, self.sets, self.turned = steps, sets, turned
        self.own = tuple({**sets[0], **values} for values in own)
        self.letters: Letters = letters_of(tuple(sets[0]))
        self.name = steps[-1]  # what the lines speak of until another name stands before the equals sign
        self.before: tuple[str, tuple[float, ...]] | None = None
        self.equation: tuple[str, list[tuple[_Pair, Mapping[str, float]]]] | None = None
        self.meant: dict[str, str] = {}  # a letter of the learner's own, and the name it stands for
        self.formulas: dict[str, bool] = {}
        self.numbers: dict[str, str] = {}
        self.put_in: dict[str, bool] = {}
        self.values: dict[str, str] = {}
        self.reached: dict[str, float] = {}
        self.ends: dict[str, float] = {}
        self.laws: dict[str, tuple[_Pair, dict[str, str]]] = {}  # a formula that holds, by the step it finds
        self.words: dict[str, str] = {}
        self.at: dict[str, tuple[int, str]] = {}
        self.broken = self.unread = ""

    def read(self, text: str) -> Working:
        lines = [line.strip() for line in text.splitlines() if line.strip()][:MOST_LINES]
        for count, line in enumerate(lines, 1):
            self.line(count, line[:LONGEST])
        nothing = not (self.formulas or self.numbers or self.put_in or self.values)
        return Working(
            self.formulas,
            self.numbers,
            self.put_in,
            self.values,
            self.words,
            self.at,
            self.broken or (self.unread if nothing else ""),
        )

    def line(self, count: int, line: str) -> None:
        bare = line
        while (shorter := _LEAD.sub("", bare)) != bare:
            bare = shorter
        bare = _COST.sub(next((name for name in ("K", "c") if name in self.steps), r"\g<0>"), bare)
        sides = [side.strip() for side in re.split(r"[=≈]", bare) if side.strip()]
        if not sides:
            return
        follows = bare[:1] in "=≈"
        if len(sides) == 1 and not follows and number(_without_words(sides[0])[0]) is None:
            self.unread = self.unread or (
                f"Line {count} of your working, “{line}”, could not be read. Use the letters of the question."
                if re.search(r"[A-Za-z]{2}", line)
                else f"Line {count} of your working, “{line}”, could not be read. Write numbers, × ÷ and brackets."
            )
            return
        if not follows and len(sides) > 1:
            sides = self.opened(count, line, sides)
        elif follows and number(_without_words(sides[0])[0]) is None:
            self.formula(count, line, self.name, sides[0])
            sides = sides[1:]
        for side in sides:
            self.side(count, side)

    def opened(self, count: int, line: str, sides: list[str]) -> list[str]:
        """The first two sides of a line, where they are a formula or name what it speaks of; the sides left."""
        alone, numeric = self.alone(sides[0]), number(_without_words(sides[1])[0]) is not None
        name = self.step_of(alone) if alone else ""
        if name and name != self.name:
            self.before = self.equation = None
        self.name = name or self.name
        if alone and numeric:
            return sides[1:] if name else []  # a datum written down, or a letter of the learner's own
        if number(sides[0]) is not None and numeric:
            return sides
        self.formula(count, line, sides[0], sides[1])
        return sides[2:]

    def alone(self, side: str) -> str:
        """The name that stands alone on a side, or '' ."""
        return next((read.names[0] for read in readings(side, self.letters) if read.formula.source in read.names), "")

    def step_of(self, name: str) -> str:
        """The step that a name stands for; '' for a datum and for a letter that is not known."""
        if not name.startswith("own_"):
            return name if name in self.steps else ""
        meant = self.meant.get(name, "")
        found = [meant] if meant else [one for one in self.meanings(name) if one in self.steps]
        return found[0] if found and found[0] in self.steps else ""

    def meanings(self, name: str) -> tuple[str, ...]:
        """What a letter of the learner's own may stand for: by what it is called elsewhere, else anything."""
        if name in self.meant:
            return (self.meant[name],)
        called = _MEANT.get(own_letter(name))
        return tuple(one for one in (called or self.sets[0]) if one.lstrip("-") in self.sets[0])

    def side(self, count: int, side: str) -> None:
        """A side of numbers: it keeps the value before it; the last of a name is its value."""
        bare, words = _without_words(side)
        values = numbers(bare)
        if not values:
            return
        reckoned = (*values, *_in_its_unit(bare))
        if self.before and not any(_near(one, other) for one in reckoned for other in self.before[1]):
            self.stop(
                f"Line {count} of your working breaks off: “{side}” is not the same as “{self.before[0]}” before it."
                " Work that line out once more."
            )
        elif not self.before and self.equation and not self.follows(values[0]):
            self.stop(
                f"Line {count} of your working breaks off: “{side}” does not follow from “{self.equation[0]}” before"
                " it. Work that line out once more."
            )
        self.before = (side, values)
        if _result(bare):
            self.values[self.name], self.reached[self.name] = bare, values[0]
            self.words[self.name] = words
        elif self.name not in self.numbers:
            self.numbers[self.name], self.at[self.name] = bare, (count, side)

    def follows(self, value: float) -> bool:
        """Whether a value of the present name makes the equation before it true, with either sign."""
        assert self.equation
        return any(
            _holds(pair, {**values, self.name: sign * one}, SAME)
            for pair, values in self.equation[1]
            for sign in (1, -1)
            for one in (value, math.radians(value))
        )

    def formula(self, count: int, line: str, left: str, right: str) -> None:
        pairs = [
            _Pair(one, other)
            for one in readings(left, self.letters)
            for other in readings(_without_words(right)[0], self.letters)
        ]
        if not pairs:
            if not (number(left) or number(right)):
                self.unread = self.unread or (
                    f"Line {count} of your working, “{line}”, could not be read. Use the letters of the question."
                )
            return
        tried = [(pair, meant) for pair in pairs for meant in self.bindings(pair)]
        for pair, meant in tried:
            if self.holds_always(pair, meant):
                self.meant.update(meant)
                self.formulas.setdefault(self.about(pair, meant), True)
                self.laws.setdefault(self.about(pair, meant), (pair, meant))
                self.equation = None
                return
        if any(pair.numerals for pair in pairs) and self.numbers_put_in(count, line, pairs, tried):
            return
        definite = [pair for pair in pairs if all(len(self.meanings(name)) == 1 for name in pair.unknown)]
        if not definite or not any(name in self.sets[0] for name in definite[0].names):
            return
        pair = definite[0]
        about = self.about(pair, {name: self.meanings(name)[0] for name in pair.unknown})
        if all(one in COEFFICIENTS for one in pair.numerals):
            self.formulas.setdefault(about, False)
            self.stop(
                f"Line {count} of your working, “{line}”, is not a formula that holds here. Look at the law again."
            )
        else:
            self.put_in.setdefault(about, False)
            self.stop(
                f"Line {count} of your working, “{line}”, does not hold with the right values. Check the formula, then"
                " each number and each sign you put in."
            )

    def numbers_put_in(
        self, count: int, line: str, pairs: list[_Pair], tried: list[tuple[_Pair, dict[str, str]]]
    ) -> bool:
        """Whether an equation with numbers holds for right values, or for those that follow from the learner's own."""
        ways = (self.sets[0], *self.own)
        found = [
            (pair, meant, values)
            for pair, meant in tried
            for values in self.with_reached(ways, self.about(pair, meant))
            if self.holds(pair, meant, values, SAME)
        ]
        found = found or [
            (pair, meant, values)
            for pair, meant in tried
            for values in self.followed(ways, self.about(pair, meant))
            if self.holds(pair, meant, values, SAME)
        ]
        if not found:
            return False
        pair, meant, _ = found[0]
        about = self.about(pair, meant)
        self.meant.update({name: one for name, one in meant.items() if not one.startswith("-")})
        self.put_in.setdefault(about, True)
        self.name = about
        self.before = None
        # what is found from it later must make it true, whichever reading was meant
        self.equation = (line, [(pair, _meaning(meant, values)) for pair, meant, values in found])
        return True

    def with_reached(self, ways: Iterable[Mapping[str, float]], about: str) -> Iterator[Mapping[str, float]]:
        """Values with those that the learner found on the way, but for the one that an equation is about."""
        mine = {name: value for name, value in self.reached.items() if name != about}
        for values in ways:
            yield values
            if mine:
                yield {**values, **mine}

    def followed(self, ways: Iterable[Mapping[str, float]], about: str) -> Iterator[Mapping[str, float]]:
        """Values with the learner's own, where a formula that holds leads from them to the learner's end."""
        if about not in self.ends or about not in self.laws or not self.reached:
            return
        pair, meant = self.laws[about]
        for values in self.with_reached(ways, about):
            for end in (self.ends[about], -self.ends[about]):
                mine = {**values, about: end}
                if self.holds(pair, meant, mine, SAME):
                    yield mine

    def bindings(self, pair: _Pair) -> Iterator[dict[str, str]]:
        """What the letters of the learner's own may stand for, each for another name than those that are there."""
        known = [self.meanings(name) for name in pair.unknown]
        if any(not one for one in known) or math.prod(map(len, known)) > MOST_MEANINGS:
            return
        there = set(pair.names)
        for found in product(*known):
            bare = [one.lstrip("-") for one in found]
            if not there & set(bare) and len(set(bare)) == len(bare):
                yield dict(zip(pair.unknown, found, strict=True))

    def about(self, pair: _Pair, meant: Mapping[str, str]) -> str:
        """The step that an equation finds: the one spoken of, else the last that stands in it and has no value yet."""
        names = {meant.get(name, name).lstrip("-") for name in pair.names}
        there = [self.name, *reversed(self.steps)]
        open_ = [name for name in there if name in names and name not in self.reached]
        return next(iter(open_ or [name for name in there if name in names]), self.name)

    def holds_always(self, pair: _Pair, meant: Mapping[str, str]) -> bool:
        """Whether a formula holds for the data and for others."""
        return all(self.holds(pair, meant, values, HOLDS) for values in self.sets)

    def holds(self, pair: _Pair, meant: Mapping[str, str], values: Mapping[str, float], close: float) -> bool:
        """Whether an equation holds: with signs, with sizes only, or with a direction counted the other way."""
        turned = [name for name in pair.names if name in self.turned][:2]
        sizes = {name: abs(value) for name, value in values.items()}
        ways = [values, sizes]
        for count in range(1, len(turned) + 1):
            for some in permutations(turned, count):
                ways.append({**values, **{name: -values[name] for name in some}})
        return any(_holds(pair, _meaning(meant, way), close, either=close == HOLDS) for way in ways)

    def stop(self, sentence: str) -> None:
        self.broken = self.broken or sentence


def _meaning(meant: Mapping[str, str], values: Mapping[str, float]) -> dict[str, float]:
    """Values with those of the learner's own letters."""
    own = {letter: -values[name[1:]] if name.startswith("-") else values[name] for letter, name in meant.items()}
    return {**values, **own}


def _holds(pair: _Pair, values: Mapping[str, float], close: float, either: bool = False) -> bool:
    """Whether two sides agree, as closely as ``close`` of what hangs on any letter in them.

    either: the sides may differ in sign, as where a direction is put into words.
    """
    one, other = _value(pair.left.formula, values), _value(pair.right.formula, values)
    if one is None or other is None:
        return False
    gap = min(abs(one - other), abs(one + other)) if either else abs(one - other)
    if gap <= 1e-12 * max(abs(one), abs(other)):
        return True
    weight = 0.0
    for name in pair.names:
        moved = {**values, name: values[name] * (1 + NUDGE)}
        first, second = _value(pair.left.formula, moved), _value(pair.right.formula, moved)
        if first is not None and second is not None:
            weight = max(weight, abs((first - second) - (one - other)) / NUDGE)
    return gap <= close * weight


def _value(formula: Expression, values: Mapping[str, float]) -> float | None:
    try:
        return formula.value(values)
    except (ExpressionError, ArithmeticError, ValueError):
        return None


def _near(value: float, before: float) -> bool:
    """Whether a value is the one before it; an angle may be written in degrees."""
    return any(
        math.isclose(abs(one), abs(other), rel_tol=SAME)
        for one, other in ((value, before), (math.radians(value), before), (value, math.radians(before)))
    )


def _without_words(side: str) -> tuple[str, str]:
    """(a side, the words behind it): "720 N to the left" is 720 N, and to the left."""
    match = _WORDS.search(side)
    if not match or not match.start():
        return side, ""
    return side[: match.start()].rstrip(), match[0].strip(" ,;()")


def _in_its_unit(side: str) -> tuple[float, ...]:
    """The number of a result in kilowatt-hours or minutes: who has such a unit has reckoned in it, 1,5 × 0,5 = 0,75."""
    line = plain(side).strip("() ")
    match = _NUMBER_ALONE.match(line)
    try:
        unit = parse_unit(line[match.end() :].strip() if match else "")
    except UnitError:
        return ()
    return () if not match or unit.is_decimal else (float("".join(match[0].split())),)


def _result(side: str) -> bool:
    """Whether a side is one number with its unit, and no calculation."""
    line = plain(side).strip("() ")
    match = _NUMBER_ALONE.match(line)
    if not match:
        return False
    rest = line[match.end() :]
    power = _POWER_OF_TEN.match(rest)
    return bool(_UNIT_ALONE.match(rest[power.end() :] if power else rest))
