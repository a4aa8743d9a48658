"""What is told to a learner about one marked part: sentences, each with the mathematics it speaks of."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from calc.language.decimal_sign import sentence_in_sign
from calc.language.expressions import expression
from calc.language.maths import EQUALS, Maths
from calc.language.printing import Style
from calc.language.symbols import symbol
from calc.language.units import UnitError, kind_of, name_of_dimension, parse_unit
from calc.language.unittext import superscript
from calc.marking.early_rounding import two_decimals
from calc.marking.findings import Finding
from calc.marking.learner import by_sign, can_be_asked, of_note
from calc.marking.marking import PartMarked
from calc.marking.memo import RIGHT_ANSWERS
from calc.marking.suspects import Chain, Slip, Suspect, uses
from calc.model.answers import Direction
from calc.model.directions import turned
from calc.model.questions import Part
from calc.working.working import measure

MOST_NAMED = 3


@dataclass(frozen=True)
class Sentence:
    """A sentence, and mathematics to set after it."""

    words: str
    maths: tuple[Maths, ...] = ()


def sentence_text(sentence: Sentence) -> str:
    """The sentence as plain text."""
    lines = " and ".join(piece.text for piece in sentence.maths)
    return f"{sentence.words} {lines}." if lines else sentence.words


@dataclass(frozen=True)
class FitTold:
    """One mistake that fits (or two together): what to do, why it fits, the wrong lines and the value they give."""

    say: tuple[str, ...]
    why: tuple[str, ...]
    lines: tuple[Maths, ...]
    value: Maths
    steps: tuple[str, ...]


HEADS = {
    "right": "Right",
    "rounded early": "Right, but rounded early",
    "carried": "Right from your own earlier value",
    "unit": "Right size, wrong unit or prefix",
    "direction": "Right size, wrong direction",
    "mistake": "Wrong: here is the mistake",
    "one of two": "Wrong: it may be one of these",
    "not recognised": "Wrong",
    "blank": "Nothing typed yet",
    "unreadable": "This cannot be read",
    "self-marked": "Marked by yourself",
}


def head(marked: PartMarked) -> str:
    """The verdict in a few words."""
    answer = marked.answer
    if marked.stated:
        return "Marked by its key phrases"
    if marked.state == "blank" and marked.part.kind != "calculate":
        return "Nothing ticked yet"
    if marked.state == "unit" and answer and not answer.power:
        return "Right size, no unit" if answer.unit == "missing" else "Right size, wrong unit"
    if marked.state == "unit":
        return "Right digits, wrong power of ten"
    if marked.state == "direction" and answer:
        if answer.turn == "missing":
            return "Right size, no direction"
        if answer.turn == "unread":
            return "Right size, direction not read"
        if answer.turn == "sign":
            return "Right size, wrong sign"
    if marked.state == "one of two" and marked.blamed and len(marked.blamed.fits) == 2:
        return "Wrong: it may be one of two mistakes"
    if marked.state == "mistake" and marked.blamed and _also_power(marked.blamed):
        return "Wrong: it may be this mistake"
    return HEADS[marked.state]


def sentences(marked: PartMarked, style: Style) -> tuple[Sentence, ...]:
    """All there is to tell about a part, in order."""
    told: list[Sentence] = []
    if marked.state == "self-marked" and marked.stated:
        told += [Sentence(slip) for slip in marked.slips]
        if marked.lacking:
            told.append(Sentence(f"Not found in it: {' and '.join(f'“{key}”' for key in marked.lacking)}."))
        told.append(
            Sentence(
                "Your sentence was searched for the phrases that marks hang on. If you said one in other words,"
                " tick it."
            )
        )
    elif marked.state == "self-marked":
        told.append(Sentence("You ticked these points yourself: check each against the words of the memo."))
    if marked.state == "unreadable":
        told += [Sentence(sentence_in_sign(problem.sentence, style.comma)) for problem in marked.problems]
    named = {slip.key for fit in _fits(marked) for slip in fit.slips}
    for mistake in marked.picked:
        if mistake.key in named:
            told.append(Sentence("The formula you picked is the one that gives this number."))
        else:
            told.append(Sentence(f"The formula you picked is not the right one. {mistake.said}"))
    if marked.broken:
        told.append(Sentence(sentence_in_sign(marked.broken, style.comma)))
    answer, blamed = marked.answer, marked.blamed
    if answer is not None:
        if answer.size == "within" and blamed is not None:
            name = symbol(blamed.way.target).text
            told.append(Sentence(f"Your answer follows rightly from your own {name}, but that value is not right."))
            told += _about(blamed, style, bool(marked.broken))
        elif blamed is not None and blamed is not answer:
            right, wrong = (symbol(finding.way.target).text for finding in (answer, blamed))
            told.append(Sentence(f"Your {right} is right, but your {wrong} is not."))
            told += _about(blamed, style, bool(marked.broken))
        else:
            told += _about(answer, style, bool(marked.broken))
        left_out = [symbol(name).text for name in marked.part.also if name not in marked.shown.values]
        if left_out and answer.state in RIGHT_ANSWERS:
            names = " and ".join(left_out) if len(left_out) < 4 else f"{', '.join(left_out[:2])} and the others"
            told.append(
                Sentence(f"This part asks for {names} as well. Type {'it' if len(left_out) == 1 else 'them'} too.")
            )
    elif blamed is not None:
        told.append(Sentence(f"Your {symbol(blamed.way.target).text} is not right."))
        told += _about(blamed, style, bool(marked.broken))
    return tuple(told)


def _about(finding: Finding, style: Style, placed: bool = False) -> list[Sentence]:
    """placed: a line of the working was named already as the one that breaks."""
    unexplained = finding.size == "wrong" and not (finding.fits or finding.meant or finding.power or finding.coarse)
    size = [] if placed and unexplained else _about_size(finding, style)
    told = [_about_unit(finding)] if finding.unit != "right" else []
    told += _about_turn(finding)
    return [*told, *size] if finding.fits and not finding.sized else [*size, *told]  # the mistakes stand below


def printed(value: float, way: Chain, style: Style) -> Maths:
    """A value of the step's kind as a memo prints it."""
    return measure(value, way.step.unit, style, count=way.step.count)


def _equals(finding: Finding, value: float, style: Style) -> Maths:
    sign = symbol(finding.way.target)
    return Maths(sign.tex, sign.text) + EQUALS + printed(value, finding.way, style)


def _about_size(finding: Finding, style: Style) -> list[Sentence]:
    way, right = finding.way, finding.way.right
    if finding.size == "right":
        if _as_printed(finding):
            return []
        return [Sentence("Near enough; a memo gives", (_equals(finding, _sized(finding), style),))]
    if finding.size in ("early", "carried") and finding.state != "mistake":
        line = (_equals(finding, right, style),)
        if finding.size == "carried":
            names = " and ".join(symbol(name).text for name in _carried(way)[:3])
            return [
                Sentence(f"With your own {names} this comes to", line),
                Sentence("The mistake is counted once, where it was made; the method here earns its marks."),
            ]
        told = [Sentence("Carry every digit and round once, at the end. Unrounded working gives", line)]
        if finding.fits:
            say = " / ".join(slip.say for slip in finding.fits[0].slips)
            told.append(Sentence(f"A mistake would give the same number; check it too. {say}"))
        return told
    if finding.meant:
        typed = finding.typed.text
        return [
            Sentence(
                f"“{typed}” is read with a decimal comma or point. If you mean thousands, type a space instead: "
                f"“{finding.meant}”. Then it is right."
            )
        ]
    if finding.power:
        times = "large" if finding.power > 0 else "small"
        power = abs(finding.power)
        ten = f"{10**power}" if power < 4 else f"10{superscript(power)}"
        return [
            Sentence(
                f"The digits are right, but the answer is {ten} times too {times}. Check every prefix and every power"
                " of ten."
            )
        ]
    if finding.coarse and finding.way.base:
        return [
            Sentence(
                "This is the right answer cut too short to be marked right: what counts is how far it lies from"
                f" {symbol(finding.way.step.judged_by).text}. Give two decimals, as a memo does."
            )
        ]
    if finding.coarse:
        return [
            Sentence(
                "This is the right answer cut too short to be marked right. Give at least two figures that count; a"
                " memo gives two decimals, with a power of ten for small numbers."
            )
        ]
    if finding.fits:
        return _about_fits(finding)
    return [Sentence(f"No usual mistake gives this number. {_what_next(finding)}")]


def _about_fits(finding: Finding) -> list[Sentence]:
    """What to do where mistakes are named: one by its step, several by the learner's own working."""
    several = _of_several(finding.fits)
    if not _also_power(finding):
        return several or _put_right(finding, "Put this right in the step “{}”, and work on from there:")
    if all(_of_powers(fit) for fit in finding.fits):
        told = "Your digits are the right ones, so a prefix or a power of ten is wrong."
        if several:
            return [Sentence(f"{told} It may be one of these: check each of them in your own working.")]
        return _put_right(finding, told + " Most likely it is this one, in the step “{}”:")
    power = Sentence(
        "Your digits are the right ones, so it may be no more than a power of ten: check every prefix and every power"
        " of ten in your working."
    )
    return [*several, power] if several else [power, *_put_right(finding, "Or put this right in the step “{}”:")]


def _put_right(finding: Finding, words: str) -> list[Sentence]:
    """The step by its name, where the mistake lies in one."""
    slip, steps = finding.fits[0].slips[0], finding.way.plan.steps
    if slip.key == "digits-swapped":
        return []
    step = next((s for s in steps if s.makes == slip.at or slip.at in uses(s)), finding.way.step)
    return [Sentence(words.format(step.what))]


def _of_powers(fit: Suspect) -> bool:
    """Whether a mistake is one of prefixes or powers of ten and nothing else."""
    return all(slip.kind == "unconverted" or slip.key.startswith(("prefix-", "power-of-")) for slip in fit.slips)


def _also_power(finding: Finding) -> bool:
    """Whether a mistake is named though the digits are right, so that any other power of ten would give them."""
    typed, right = finding.typed.value, finding.way.right
    if not (finding.fits and typed and right) or finding.way.step.unit == "°":
        return False
    ratio = math.log10(abs(typed / right))
    return round(ratio) != 0 and abs(ratio - round(ratio)) < 0.004


def _of_several(fits: tuple[Suspect, ...]) -> list[Sentence]:
    """What to do where more than one mistake fits: if each gives the same number whatever the digits, only the working
    can tell."""
    count = len(fits)
    if count == 1:
        return []
    if all(math.isclose(fit.value, fits[0].value, rel_tol=1e-9) for fit in fits[:MOST_NAMED]):
        which = "It is either the one or the other: both give" if count == 2 else "It is one of three: each gives"
        if count > MOST_NAMED:
            which = "It is one of several, these three first of all: each gives"
        return [Sentence(f"{which} exactly your number. Look in your own working which one it was.")]
    if count == 2:
        return [Sentence("Two mistakes give the number you typed. Compare both with your own working.")]
    how_many = "Three mistakes" if count == MOST_NAMED else "Several mistakes, these three first of all,"
    return [
        Sentence(
            f"{how_many} give the number you typed. Compare them with your own working, or type more digits or a value"
            " on the way: that tells them apart."
        )
    ]


def _what_next(finding: Finding) -> str:
    """How far the working can be checked when nothing explains the answer."""
    way = finding.way
    open_steps = [step for step in way.plan.steps if step.makes not in way.carry and step.makes != way.target]
    if not open_steps:
        return (
            "Write down the formula, put in each number in SI units, and work it out once more. Then compare with the"
            " answer line by line."
        )
    first = symbol(open_steps[0].makes).text
    return (
        f"Type your value for {first} under “My working”, and I can check that far. The first value that is not right"
        " shows where to look."
    )


def _sized(finding: Finding) -> float:
    return abs(finding.way.right) if finding.typed.value >= 0 else finding.way.right


def _as_printed(finding: Finding) -> bool:
    """Whether the digits typed are those of the right value, and no fewer than a memo gives."""
    typed, right = finding.typed, finding.way.right
    exact = abs(abs(typed.value) - abs(right)) <= 1e-9 * abs(right)
    places = abs(two_decimals(right / typed.factor)) * typed.factor
    if typed.shows(right) and typed.figures > 2:
        return True
    return exact or abs(places - abs(typed.value)) <= 1e-9 * abs(right)


def _carried(way: Chain) -> list[str]:
    return [step.makes for step in way.plan.steps if step.makes in way.carry]


def _about_unit(finding: Finding) -> Sentence:
    wanted = finding.way.step.unit
    if finding.unit == "missing":
        return Sentence(f"An answer needs its unit: write {wanted} after the number.")
    typed = finding.typed.unit
    found = f"“{typed.text}” measures {kind_of(typed)}" if typed else "the unit is not one for this"
    if not wanted:
        return Sentence(f"{found}, but this is a pure number: leave the unit out.")
    unit = parse_unit(wanted)
    try:
        kind = kind_of(unit)
    except UnitError:  # a kind without a name of its own
        kind = name_of_dimension(unit.dimension)
    return Sentence(f"{found[0].upper()}{found[1:]}, but {kind} is wanted: {wanted}.")


def _about_turn(finding: Finding) -> list[Sentence]:
    where = finding.way.direction
    if finding.turn in ("", "right"):
        return []
    if finding.turn == "sign" and finding.state == "mistake":
        return []  # the slip that fits says it
    if finding.turn == "sign":
        return [*_about_sign(finding, where), *_turned(finding)]
    if where is None:
        return []
    if finding.turn == "unread":
        return [Sentence("Your direction could not be read. Say it in one of the ways named beside its box.")]
    if finding.turn == "missing":
        if finding.typed.value < 0:
            return [Sentence("Your minus sign is understood, but an answer needs its direction in words. Add it.")]
        if of_note(where):
            return [Sentence("Say as well whether the note heard is higher or lower: in words, or with a sign.")]
        return [Sentence("The answer has a direction too. Write in words which way it points.")]
    if of_note(where):
        return [Sentence(f"The note heard is {where.words}, not {turned(where).words}."), *_turned(finding)]
    told = [Sentence(f"The direction should be: {where.words}. {_why_that_way(finding, where)}".rstrip())]
    return [*told, *_turned(finding)]


_OF_DIRECTION = re.compile(
    r"direction|towards|away|repel|attract|opposite|sign|points|\bside\b|pull|push|\bleft|\bright\b"
)
_RULES = {
    frozenset(("attract", "repel")): "Charges of the same sign repel each other; charges of opposite sign attract.",
    frozenset(("excess", "lacking")): "Electrons are negative: too many make a body negative, too few positive.",
}


def _why_that_way(finding: Finding, where: Direction) -> str:
    """The reason for a direction: the rule of its kind, or what the step says of directions."""
    rule = _RULES.get(frozenset(key for key, _ in where.options))
    if rule:
        return rule
    told = re.split(r"(?<=[.!?])\s+", finding.way.step.why)
    return " ".join(sentence for sentence in told if _OF_DIRECTION.search(sentence))


def _about_sign(finding: Finding, where: Direction | None) -> list[Sentence]:
    if where is not None and by_sign(where):
        start = "The size is right; the sign is not" if finding.sized else "The sign is not right either"
        return [Sentence(f"{start}: {where.words}.")]
    start = "The size is right, but this" if finding.sized else "This"
    if finding.way.right < 0:
        return [Sentence(f"{start} value is negative: keep the minus sign.")]
    words = ", and give a direction in words" if can_be_asked(where) else ""
    return [Sentence(f"{start} value is not negative: leave the minus sign out{words}.")]


def _turned(finding: Finding) -> list[Sentence]:
    if not finding.turned:
        return []
    says = " Or: ".join(mistake.said for mistake in finding.turned)
    asks = dict.fromkeys(mistake.shows for mistake in finding.turned if mistake.why)
    ask = "".join(f" How it shows: {why.rstrip('.?')}{'?' if why.endswith('?') else '.'}" for why in asks)
    return [Sentence(f"{says}{ask}")]


# --- the mistakes that fit ----------------------------------------------------------------------------------


def fits(marked: PartMarked, style: Style) -> tuple[FitTold, ...]:
    """The mistakes to name for a part, the likeliest first: three at most, for more help nobody."""
    finding = marked.blamed
    return tuple(_told(fit, finding, style) for fit in _fits(marked)[:MOST_NAMED]) if finding else ()


def _fits(marked: PartMarked) -> tuple[Suspect, ...]:
    """The suspects that are named to the learner."""
    finding = marked.blamed
    named = finding is not None and finding.state in ("mistake", "one of two")
    return finding.fits if finding is not None and named else ()


def _told(fit: Suspect, finding: Finding, style: Style) -> FitTold:
    lines = [line for slip in fit.slips for line in _lines(slip, style.comma)]
    return FitTold(
        say=tuple(slip.say for slip in fit.slips),
        why=tuple(slip.why for slip in fit.slips if slip.why),
        lines=tuple(lines),
        value=_equals(finding, fit.value, style),
        steps=tuple(slip.at for slip in fit.slips),
    )


def _lines(slip: Slip, comma: bool) -> list[Maths]:
    """The wrong formula, for a mistake in a formula; a datum's slip is told in words."""
    if slip.kind not in ("declared", "algebra") and slip.key not in ("on-the-way", "twice", "half"):
        return []
    sign = symbol(slip.at)
    return [Maths(sign.tex, sign.text) + EQUALS + expression(how).maths(comma=comma) for _, how in slip.instead]


def where_words(part_number: str, part: Part, step: str) -> str:
    """Where to look: "Step 2: use Coulomb's law"."""
    for index, item in enumerate(part.steps, 1):
        if item.makes == step:
            count = f"Step {index}" if len(part.steps) > 1 else "The step"
            return f"{count}{f' of part {part_number}' if part_number else ''}: {item.what}"
    return ""
