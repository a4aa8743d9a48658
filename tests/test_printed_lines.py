"""Every printed line, read again by a reader who knows only school notation, has the value it claims."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping

import mpmath
import pytest

from calc.language.expressions import equation
from calc.language.maths import Maths
from calc.language.symbols import symbol
from calc.model.answers import WorkedAnswer
from calc.model.questions import Plan
from calc.topics import find, question_keys
from calc.working.working import LOPSIDED, agrees, decides, run, show
from tests.draws import Typed, data_sets, planned
from tests.printed import Token, Unreadable, Worked, tex_tokens, text_tokens
from tests.strategies import examples

KEYS = question_keys()
DRAWS = examples(2).max_examples
CLOSE = 0.01  # what a reader with a calculator may be out by for rounding on the way
VALUE = re.compile(r"(−?\d+(?:,\d+)?)(?:\s×\s10([⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+))?")


class Lines:
    """The printed lines of one worked answer, and what is wrong with them."""

    def __init__(self, plan: Plan, values: Mapping[str, float], worked: WorkedAnswer) -> None:
        self.plan, self.values, self.worked = plan, values, worked
        self.faults: list[str] = []
        self.text = {symbol(name).text: name for name in values}
        self.tex = {symbol(name).tex: name for name in values}
        if len(self.text) != len(values):
            self.faults.append(f"two names are printed alike: {sorted(values)}")

    def check(self) -> list[str]:
        steps = [step for part in self.worked.parts for step in part.steps]
        for step, shown in zip(self.plan.steps, steps, strict=True):
            sized = {n: abs(v) if n in step.sizes else v for n, v in self.values.items()}
            for line in (shown.formula, shown.substitution, *shown.algebra):
                self.equal(line, sized, step.makes)
            self.result(shown.result, shown.value, shown.unit)
        if LOPSIDED in self.worked.notes:  # the reader is told that digits are lost
            self.faults = [fault for fault in self.faults if "against" not in fault]
        self.faults += [
            f"fails: {check.what}"
            for check in self.plan.checks
            if decides(check, self.values) and not agrees(check, self.values)
        ]
        shown_checks = [check for check in self.plan.checks if agrees(check, self.values)]
        for check, seen in zip(shown_checks, self.worked.checks, strict=True):
            sized = {n: abs(v) if n in check.sizes else v for n, v in self.values.items()}
            for line in seen.lines:
                self.equal(line, sized)
        return self.faults

    def equal(self, line: Maths, values: Mapping[str, float], unknown: str = "") -> None:
        """Both sides come to the same; where one is nought, as nearly as the unknown among the terms is known."""
        for printed, sides in ((line.text, text_sides), (line.tex, tex_sides)):
            try:
                left, right = (
                    Worked(tokens, values) for tokens in sides(printed, self.text if sides is text_sides else self.tex)
                )
            except (ValueError, ArithmeticError, AttributeError) as problem:
                self.faults.append(f"{printed}: {problem!r}")
                continue
            size = max(abs(left.value), abs(right.value))
            if left.value == 0 or right.value == 0:
                size = abs(values.get(unknown, 0.0))
            noise = 1e-12 * max(left.scale, right.scale)  # where terms cancel to nought
            if abs(left.value - right.value) > CLOSE * 1.01 * size + noise:
                self.faults.append(f"{printed}: {left.value!r} against {right.value!r}")

    def result(self, line: Maths, value: float, unit: str) -> None:
        """A result is the value rounded to the digits printed."""
        said = line.text.split(" = ", 1)[1]
        found = VALUE.match(said)
        if not found:
            self.faults.append(f"{line.text}: no number")
            return
        digits, power = found.groups()
        ten = 10.0 ** int("".join("0123456789-"["⁰¹²³⁴⁵⁶⁷⁸⁹⁻".index(c)] for c in power or "⁰"))
        number = float(digits.replace("−", "-").replace(",", "."))
        places = len(digits.split(",")[1]) if "," in digits else 0
        wanted = math.degrees(value) if unit == "°" else value
        if abs(number * ten - wanted) > 0.5001 * 10.0**-places * ten:
            self.faults.append(f"{line.text}: {wanted!r}")


def text_sides(line: str, names: Mapping[str, str]) -> Iterator[list[Token]]:
    """The sides of a line in plain text."""
    return split(text_tokens(line, names))


def tex_sides(line: str, names: Mapping[str, str]) -> Iterator[list[Token]]:
    """The sides of a line in TeX."""
    return split(tex_tokens(line, names))


def split(tokens: list[Token]) -> Iterator[list[Token]]:
    """The two sides of one equation."""
    at = [i for i, token in enumerate(tokens) if token[0] == "="]
    if len(at) != 1:
        raise Unreadable(f"{len(at)} equals signs")
    return iter((tokens[: at[0]], tokens[at[0] + 1 :]))


def worth(key: str, typed: Typed, asked: str) -> list[str]:
    """Values of the right sides as printed, in fifty digits, that the values found do not agree with."""
    made = planned(find(key)[1], typed, asked)
    if made is None:
        return []
    found, plan = made
    values = run(plan, found.data.settings.constants())
    names = {symbol(name).text: name for name in values}
    precise = {name: mpmath.mpf(value) for name, value in values.items()}
    wrong = []
    with mpmath.workdps(50):
        for step in plan.steps:
            if step.root:
                continue  # nothing to work out; its own law is tested above
            sized = {n: abs(v) if n in step.sizes else v for n, v in precise.items()}
            right = list(split(text_tokens(equation(step.make).maths().text, names)))[1]
            exact = Worked(right, sized, mpmath)
            precise[step.makes] = exact.value
            if abs(exact.value - values[step.makes]) > 1e-6 * max(abs(exact.value), 1e-3 * exact.scale):
                wrong.append(f"{step.make}: {values[step.makes]!r}, not {mpmath.nstr(exact.value, 15)}")
    return wrong


def faults(key: str, typed: Typed, asked: str) -> list[str]:
    """What is wrong with the printed lines of the answer to these data; nothing for data that are refused."""
    topic, question = find(key)
    made = planned(question, typed, asked)
    if made is None:
        return []
    found, plan = made
    values = run(plan, found.data.settings.constants())
    return Lines(plan, values, show(topic, question, found, plan, values)).check()


@pytest.mark.parametrize("key", KEYS)
def test_every_printed_line_has_the_value_it_claims(key: str) -> None:
    """Formula, substitution, algebra, result and check lines, in text and in TeX, for many data and every unknown."""
    worked = 0
    for typed, asked in data_sets(key, DRAWS):
        wrong = faults(key, typed, asked)
        assert not wrong, (typed, asked, wrong)
        worked += 1
    assert worked > DRAWS


@pytest.mark.parametrize("key", KEYS)
def test_no_value_loses_digits_on_the_way(key: str) -> None:
    """Fifty digits give the same values, for lopsided data too."""
    for typed, asked in data_sets(key, DRAWS, seed=50):
        wrong = worth(key, typed, asked)
        assert not wrong, (typed, asked, wrong)
