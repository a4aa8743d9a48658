"""How well marking tells mistakes apart: plants known mistakes in random questions and counts the verdicts.

    python3 site-scripts/mistake_statistics.py [--questions 20] [--start 1] [--by-question]

Every declared question is drawn from its own Draws (or its example is scaled where it has none),
each known mistake and each two together are made on purpose, the result is rounded to two
decimals as on paper, and the marking says what it takes it for. The numbers are reproducible:
question and count make the start of each random sequence.
"""

from __future__ import annotations

import argparse
import math
import random
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from calc import topics
from calc.language.expressions import ExpressionError
from calc.language.printing import rounded
from calc.marking.early_rounding import two_decimals
from calc.marking.findings import judge, sign_counts
from calc.marking.learner import by_sign, read_value
from calc.marking.marking import mark_question
from calc.marking.suspects import Chain, Suspect
from calc.model.constants import Settings
from calc.model.questions import Choice, Input, Plan, Question, Refusal
from calc.practice.drawing import DRAWS
from calc.working.reading import Read, Refusals, read
from calc.working.roots import NoRoot
from calc.working.working import measure, run

TRIES = 60  # draws before a question counts as not drawable
RIGHT = ("right", "rounded early", "carried")
COLUMNS = (
    "named",
    "one of them",
    "listed in 2",
    "listed in more",
    "like right",
    "unnamed",
    "false",
)


@dataclass
class Counts:
    """What became of the planted mistakes (singles and pairs), right answers and numbers of no known origin."""

    singles: Counter[str] = field(default_factory=Counter)
    pairs: Counter[str] = field(default_factory=Counter)
    rounded: Counter[str] = field(default_factory=Counter)
    right: int = 0
    right_lost: list[str] = field(default_factory=list)
    followed: int = 0
    followed_lost: list[str] = field(default_factory=list)
    strangers: int = 0
    strangers_named: int = 0
    strangers_listed: int = 0
    false: list[str] = field(default_factory=list)
    questions: int = 0

    def add(self, other: Counts) -> None:
        self.singles.update(other.singles)
        self.pairs.update(other.pairs)
        self.rounded.update(other.rounded)
        for name in (
            "right",
            "followed",
            "strangers",
            "strangers_named",
            "strangers_listed",
            "questions",
        ):
            setattr(self, name, getattr(self, name) + getattr(other, name))
        for name in ("right_lost", "followed_lost", "false"):
            getattr(self, name).extend(getattr(other, name))


# --- random questions ---------------------------------------------------------------------------------------


def draw(question: Question, chance: random.Random, level: int) -> tuple[dict[str, object], str]:
    """Typed data for one random question, and the unknown."""
    unknowns = question.drawn or question.unknowns
    asked = chance.choice(unknowns) if unknowns else ""
    typed: dict[str, object] = dict(question.example)
    for item in question.fields:
        given = question.draws.get(item.name)
        if given:
            values = given.harder if level > 1 and given.harder else given.values
            typed[item.name] = f"{chance.choice(list(values))} {given.unit}".strip()
        elif not question.adjust and isinstance(item, Input):
            typed[item.name] = scaled(item, str(typed.get(item.name, "")), chance)
        elif not question.adjust and isinstance(item, Choice):
            typed[item.name] = chance.choice([key for key, _ in item.options])
    if asked:
        typed[asked] = ""
    if question.adjust:
        vars(chance).update(rule=DRAWS, kept={}, asked=asked)  # data settled as for an address of today
        typed = question.adjust(typed, chance, level)
    if asked:
        typed[asked] = ""
    return typed, asked


def scaled(item: Input, text: str, chance: random.Random) -> str:
    """An example's datum made up to twice as large or small, in its own unit."""
    if not text.strip():
        return text
    typed = read_value(text, item.unit)
    number = float(typed.number) * chance.uniform(0.5, 2.0)
    number = float(round(number)) or 1.0 if item.whole else float(f"{number:.2g}")
    return f"{number:g} {typed.unit.text if typed.unit else ''}".strip()


def questions(key: str, count: int, start: int) -> Iterator[tuple[Read, Plan]]:
    """``count`` random questions that can be worked; refused draws are drawn again."""
    _, question = topics.find(key)
    for number in range(count):
        chance = random.Random(f"{key}/{start}/{number}")
        for _ in range(TRIES):
            try:
                typed, asked = draw(question, chance, chance.choice(question.levels))
                found = read(question, typed, asked)
                plan = question.plan(found.data)
                for part in plan.parts:
                    if part.kind == "calculate":
                        Chain(plan, Settings().constants(), part.answers)
            except (Refusal, Refusals, ExpressionError, ArithmeticError, NoRoot):
                continue
            yield found, plan
            break


# --- planting -----------------------------------------------------------------------------------------------


def on_paper(value: float, way: Chain) -> str:
    """A value as a learner writes it: two decimals, with its unit."""
    return measure(value, way.step.unit, way.style).text


def right_way(way: Chain) -> str:
    """The direction a learner picks who only made the planted mistake; '' where the sign says it."""
    where = way.direction
    if where is None or (by_sign(where) and sign_counts(way)):
        return ""
    return f"{where.angle:.4f}°" if where.angle is not None else where.key if where.options else ""


def rounding(way: Chain, suspect: Suspect) -> float | None:
    """The value of a mistake made by someone who also rounds every value on the way to two decimals."""
    instead = {name: how for slip in suspect.slips for name, how in slip.instead}
    carried = dict(way.carry)
    if any(slip.signed or slip.output != 1 for slip in suspect.slips):
        return None
    try:
        for step in way.plan.steps:
            if step.makes != way.target and step.makes not in carried:
                value = run(way.plan, way.constants, carried, instead)[step.makes]
                carried[step.makes] = two_decimals(value)
        return run(way.plan, way.constants, carried, instead)[way.target]
    except (ExpressionError, ArithmeticError, NoRoot):
        return None


def planted(way: Chain, suspect: Suspect, value: float) -> tuple[str, str]:
    """The class of one planted mistake that gave ``value``, and a line about it when it was named falsely."""
    text = on_paper(value, way)
    typed = read_value(text, way.step.unit)
    finding = judge(typed, right_way(way), way)
    keys = [fit.key for fit in finding.fits]
    if suspect.key in keys:
        kinds = {1: "named", 2: "listed in 2"}
        kind = kinds.get(len(keys), "listed in more")
        return ("like right" if finding.sized and finding.state != "mistake" else kind), ""
    made = {line for slip in suspect.slips for line in slip.instead}
    part = [
        fit
        for fit in finding.fits
        if all(slip in suspect.slips or (slip.instead and set(slip.instead) <= made) for slip in fit.slips)
    ]
    # Of two together, one that gives the same number to the last digit cannot be told from them by any answer.
    same = [fit for fit in finding.fits if len(suspect.slips) > 1 and math.isclose(fit.value, value, rel_tol=1e-9)]
    if finding.power or same:  # both in a power of ten, which is told as such
        return "one of them", ""
    if part:  # the other slip does not show in the number
        return ("one of them" if len(keys) == 1 else "listed in 2" if len(keys) == 2 else "listed in more"), ""
    if keys:
        return "false", f"{suspect.key} ({text}) taken for {', '.join(keys)}"
    if finding.state in RIGHT or finding.sized:
        # A value read off a drawing may lie further from the right one.
        by_eye = abs(abs(typed.value) - abs(way.right)) <= way.step.read_off * abs(way.right)
        if typed.agrees(way.right, way.base) or by_eye or finding.state == "rounded early":
            return "like right", ""
        return "false", f"{suspect.key} ({text}) taken as right ({way.right})"
    return "unnamed", ""


def right_texts(way: Chain, chance: random.Random) -> list[str]:
    """Ways to write the right answer that must all be marked right."""
    unit, value = way.step.unit, way.right
    shown = [on_paper(value, way)]
    if unit == "°":
        return shown
    number = f"{value + (value - way.base) * chance.uniform(-0.0099, 0.0099):.12g}"
    shown += [f"{value!r} {unit}", f"{number} {unit}"]
    # where a difference counts, two figures do not show it
    shown += [f"{value:.{digits}e} {unit}" for digits in ((2, 3) if way.base else (1, 2, 3))]
    if unit in ("N", "C", "V", "J", "m"):
        shown += (
            [f"{value * 1e6!r} µ{unit}", f"{rounded(value * 1e3).text} m{unit}"]
            if abs(value) > 1e-4
            else [f"{value * 1e9!r} n{unit}"]
        )
    return shown


def one_question(key: str, found: Read, plan: Plan, chance: random.Random) -> Counts:
    """Everything counted on one question."""
    counts = Counts(questions=1)
    constants = found.data.settings.constants()
    style = found.data.settings.style
    answers: dict[str, object] = {}
    for part in plan.parts:
        if part.kind != "calculate":
            continue
        way = Chain(plan, constants, part.answers, None, found.quantities, style)
        for kind, suspects in ((counts.singles, way.singles), (counts.pairs, way.pairs)):
            for suspect in suspects:
                what, line = planted(way, suspect, suspect.value)
                kind[what] += 1
                if line:
                    counts.false.append(f"{key} {part.key}: {line}")
        for suspect in way.singles:
            value = rounding(way, suspect)
            if value is not None:
                what, line = planted(way, suspect, value)
                counts.rounded[what] += 1
                if line:
                    counts.false.append(f"{key} {part.key}, rounded on the way: {line}")
        for text in right_texts(way, chance):
            counts.right += 1
            finding = judge(read_value(text, way.step.unit), right_way(way), way)
            if finding.state not in RIGHT:
                counts.right_lost.append(f"{key} {part.key}: {text}: {finding.state}")
        stranger(way, chance, counts)
        answers[part.key] = on_sheet(way, [Chain(plan, constants, name) for name in part.also])
    counts.right += 1
    for marked in mark_question(plan, found, answers):
        if marked.part.kind == "calculate" and (marked.state not in RIGHT or marked.earned < marked.possible):
            counts.right_lost.append(f"{key} {marked.part.key}: whole question: {marked.state}")
    follow(key, found, plan, answers, counts)
    return counts


def on_sheet(way: Chain, also: list[Chain]) -> dict[str, object]:
    """The answer of a part on a learner's sheet, with the other values that the part asks for."""
    others = {other.target: on_paper(other.right, other) for other in also}
    return {"value": on_paper(way.right, way), "direction": right_way(way), "steps": others}


def stranger(way: Chain, chance: random.Random, counts: Counts) -> None:
    """A wrong number of no known origin: how often does it get a name?"""
    factor = 1.0
    while 0.9 < factor < 1.1:
        factor = 10 ** chance.uniform(-1, 1)
    if not way.right:
        return
    finding = judge(read_value(on_paper(way.right * factor, way), way.step.unit), right_way(way), way)
    counts.strangers += 1
    counts.strangers_named += finding.state == "mistake"
    counts.strangers_listed += finding.state == "one of two"


def follow(key: str, found: Read, plan: Plan, answers: dict[str, object], counts: Counts) -> None:
    """One mistake in the first part, later parts worked rightly from the wrong value: they must earn every mark."""
    parts = [part for part in plan.parts if part.kind == "calculate"]
    constants, style = found.data.settings.constants(), found.data.settings.style
    if len(parts) < 2:
        return
    first = Chain(plan, constants, parts[0].answers, None, found.quantities, style)
    for suspect in first.singles:
        wrong = read_value(on_paper(suspect.value, first), first.step.unit)
        if wrong.agrees(first.right, first.base) or suspect.slips[0].kind == "sign" or suspect.value * first.right <= 0:
            continue
        own = {first.target: wrong.value}
        typed = {**answers, parts[0].key: {"value": wrong.text, "direction": right_way(first)}}
        try:
            for part in parts[1:]:
                way = Chain(plan, constants, part.answers, own, found.quantities, style)
                typed[part.key] = on_sheet(way, [Chain(plan, constants, name, own) for name in part.also])
                own[way.target] = read_value(on_paper(way.right, way), way.step.unit).value
        except (ExpressionError, ArithmeticError, NoRoot):
            continue
        for marked in mark_question(plan, found, typed):
            if marked.part in parts[1:]:
                counts.followed += 1
                if marked.state not in RIGHT or marked.earned < marked.possible:
                    counts.followed_lost.append(f"{key} {suspect.key} then {marked.part.key}: {marked.state}")


def statistics(keys: list[str], count: int, start: int) -> dict[str, Counts]:
    """Counts by question key."""
    found: dict[str, Counts] = {}
    for key in keys:
        found[key] = Counts()
        for index, (data, plan) in enumerate(questions(key, count, start)):
            chance = random.Random(f"answers/{key}/{start}/{index}")
            found[key].add(one_question(key, data, plan, chance))
    return found


def share(count: int, of: int) -> str:
    """A percentage, or a dash of nothing."""
    return f"{100 * count / of:.1f} %" if of else "-"


def line(name: str, counter: Counter[str]) -> str:
    """One line of the table."""
    total = sum(counter.values())
    cells = "".join(f"{share(counter[column], total):>15}" for column in COLUMNS)
    return f"{name:34}{total:8}{cells}"


def main() -> int:
    """Print the tables; 1 when a right answer lost marks or 1 % of the names were false."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--questions", type=int, default=20, help="random questions of each kind")
    parser.add_argument("--start", type=int, default=1, help="start of the random sequences")
    parser.add_argument("--by-question", action="store_true", help="a line for every question")
    parser.add_argument("--only", default="", help="questions whose key starts so")
    arguments = parser.parse_args()
    keys = [key for key in topics.question_keys() if key.startswith(arguments.only)]
    found = statistics(keys, arguments.questions, arguments.start)
    everything = Counts()
    print(f"{'planted':34}{'count':>8}" + "".join(f"{column:>15}" for column in COLUMNS))
    for key, counts in found.items():
        everything.add(counts)
        if arguments.by_question:
            print(line(f"{key}: one", counts.singles))
            print(line(f"{key}: two", counts.pairs))
    print(line("one mistake", everything.singles))
    print(line("two mistakes together", everything.pairs))
    both = everything.singles + everything.pairs
    print(line("both", both))
    print(line("one, and rounded on the way", everything.rounded))
    e = everything
    print(f"questions: {e.questions}; without a drawable example: {[k for k, c in found.items() if not c.questions]}")
    print(f"right answers: {e.right}, marked wrong: {len(e.right_lost)}")
    print(f"later parts worked from a wrong value: {e.followed}, not given full marks: {len(e.followed_lost)}")
    print(
        f"wrong numbers of no known origin: {e.strangers}, given one name: {share(e.strangers_named, e.strangers)}, "
        f"given several: {share(e.strangers_listed, e.strangers)}"
    )
    for text in e.right_lost[:20] + e.followed_lost[:20] + e.false[:20]:
        print("  !", text)
    return 1 if e.right_lost or both["false"] >= 0.01 * sum(both.values()) else 0


if __name__ == "__main__":
    sys.exit(main())
