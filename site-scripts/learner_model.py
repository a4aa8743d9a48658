"""How marking does with learners it has not met: wrong answers made from the trade alone, right ones written oddly.

    python3 site-scripts/learner_model.py [--draws 1] [--seed 7] [--only coulomb] [--answers 3000] [--show 30]

It takes from the booklet only what a reader is shown: data as typed, formulas of the steps as text, values, units
and directions. Formulas are read and changed here by Python's own parser; no list of mistakes and no part of the
marking is used. Answers are sent through the JSON boundary as a page sends them.

Is a name true? Not judged by its words: the same slip is planted in other draws of the question. A cause that is
named for it there too is the slip; one that is not was a coincidence of digits, a false name. Kinds of slip, writings
and words for directions: common practice, no source.
"""

from __future__ import annotations

import argparse
import ast
import json
import math
import random
import re
import sys
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from calc import desk, topics
from calc.working.reading import read
from calc.working.working import run

PREFIX = {"p": -12, "n": -9, "µ": -6, "m": -3, "c": -2, "": 0, "k": 3, "M": 6}
SUPERSCRIPT = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
FUNCTIONS: dict[str, Callable[..., float]] = {
    "sqrt": math.sqrt,
    "sin": math.sin,
    "cos": math.cos,
    "tan": math.tan,
    "asin": math.asin,
    "acos": math.acos,
    "atan": math.atan,
    "abs": abs,
}
TURNED = {
    "left": "right",
    "right": "left",
    "up": "down",
    "down": "up",
    "upwards": "downwards",
    "downwards": "upwards",
    "positive": "negative",
    "negative": "positive",
    "attract": "repel",
    "repel": "attract",
    "away": "towards",
    "towards": "away",
    "forwards": "backwards",
    "backwards": "forwards",
    "excess": "lacking",
    "lacking": "excess",
    "up-slope": "down-slope",
    "down-slope": "up-slope",
    "clockwise": "anticlockwise",
    "anticlockwise": "clockwise",
}
# What learners call a direction, by what the booklet prints for it.
WORDS = {
    "to the right": ("right", "to the right", "rightwards", "East", "towards the right", "in the +x direction"),
    "to the left": ("left", "to the left", "leftwards", "West", "toward the left", "in the -x direction"),
    "upwards": ("up", "upward", "upwards", "vertically up", "vertically upwards"),
    "downwards": ("down", "downward", "downwards", "vertically down", "straight down"),
    "positive charge": ("positive", "plus", "+", "it is positive", "positive charge", "positively charged"),
    "negative charge": ("negative", "minus", "-", "it is negative", "negative charge", "negatively charged"),
    "away from the charge": ("away", "away from the charge", "outwards", "radially outwards", "away from Q"),
    "towards the charge": ("towards", "toward the charge", "inwards", "towards it", "radially inwards"),
    "attraction: each is pulled towards the other": ("attraction", "attract", "attractive", "they attract each other"),
    "repulsion: each is pushed away from the other": ("repulsion", "repel", "repulsive", "they repel"),
    "up the slope": ("up the slope", "upslope", "up the incline", "uphill", "up the plane"),
    "down the slope": ("down the slope", "downslope", "down the incline", "downhill", "down the plane"),
    "forwards": ("forward", "forwards", "in the original direction", "in the direction of motion"),
    "backwards": ("backward", "backwards", "in the opposite direction"),
}
UNIT_WRITINGS = {
    "N": ("N", "newton", "newtons"),
    "C": ("C", "coulomb", "coulombs"),
    "m": ("m", "metres", "metre"),
    "s": ("s", "seconds", "sec"),
    "kg": ("kg", "kilograms"),
    "J": ("J", "joule", "joules"),
    "V": ("V", "volt", "volts"),
    "°": ("°", "degrees", "deg"),
    "N·C⁻¹": ("N·C⁻¹", "N/C", "N.C^-1", "N C^-1", "NC⁻¹", "V/m", "V·m⁻¹", "N per C"),
    "V·m⁻¹": ("V·m⁻¹", "V/m", "V.m^-1", "N/C", "Vm⁻¹", "volts per metre"),
    "m·s⁻²": ("m·s⁻²", "m/s²", "m/s^2", "ms⁻²", "ms^-2", "m.s-2", "m/s/s", "m s^-2"),
    "m·s⁻¹": ("m·s⁻¹", "m/s", "ms⁻¹", "m.s^-1", "m s-1"),
}


# --- formulas, read by Python's own parser ---------------------------------------------------------------------


def parsed(text: str) -> ast.expr:
    """The right side of a formula as the booklet writes it."""
    return ast.parse(text.replace("^", "**"), mode="eval").body


def value(node: ast.expr, of: dict[str, float]) -> float:
    """A formula's value; raises ValueError or ArithmeticError where there is none."""
    if isinstance(node, ast.Constant):
        return float(node.value)  # type: ignore[arg-type]
    if isinstance(node, ast.Name):
        angle = re.fullmatch(r"deg(\d+)", node.id)  # an angle named in degrees, as in cos 180°
        return math.radians(float(angle[1])) if angle else of[node.id]
    if isinstance(node, ast.UnaryOp):
        return -value(node.operand, of)
    if isinstance(node, ast.Call):
        return FUNCTIONS[node.func.id](*(value(arg, of) for arg in node.args))  # type: ignore[attr-defined]
    assert isinstance(node, ast.BinOp)
    left, right = value(node.left, of), value(node.right, of)
    match node.op:
        case ast.Add():
            return left + right
        case ast.Sub():
            return left - right
        case ast.Mult():
            return left * right
        case ast.Div():
            return left / right
    result = left**right
    if isinstance(result, complex):
        raise ValueError("a root of a negative number")
    return result


def is_number(node: ast.AST, number: float) -> bool:
    """Whether a node is this very number."""
    return isinstance(node, ast.Constant) and node.value == number


def op(left: ast.expr, sign: ast.operator, right: ast.expr) -> ast.BinOp:
    """Two formulas joined."""
    return ast.BinOp(left, sign, right)


def called(node: ast.AST) -> str:
    """The name of the function a node calls."""
    return node.func.id if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) else ""


def call(name: str, *args: ast.expr) -> ast.Call:
    """A function of formulas."""
    return ast.Call(ast.Name(name), list(args), [])


def changed(node: ast.expr, top: bool = True) -> Iterator[tuple[str, ast.expr]]:
    """Every formula that one common slip makes of this one, with the kind of slip."""
    if top:
        if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Div):
            yield "upside down", op(node.right, ast.Div(), node.left)
        yield "halved", op(node, ast.Div(), ast.Constant(2))
        yield "doubled", op(node, ast.Mult(), ast.Constant(2))
    if isinstance(node, ast.Call):
        yield from _call_slips(node)
    if isinstance(node, ast.BinOp):
        yield from _binary_slips(node)
        for kind, left in changed(node.left, False):
            yield kind, op(left, node.op, node.right)
        if not isinstance(node.op, ast.Pow):
            for kind, right in changed(node.right, False):
                yield kind, op(node.left, node.op, right)
    elif isinstance(node, ast.UnaryOp):
        for kind, inner in changed(node.operand, False):
            yield kind, ast.UnaryOp(node.op, inner)
    elif isinstance(node, ast.Call):
        for kind, inner in changed(node.args[0], False):
            yield kind, call(called(node), inner)


def _call_slips(node: ast.Call) -> Iterator[tuple[str, ast.expr]]:
    name, inner = called(node), node.args[0]
    other = {"sin": "cos", "cos": "sin", "tan": "cos"}.get(name)
    if other:
        yield "wrong ratio", call(other, inner)
        yield "radians", call(name, op(inner, ast.Mult(), ast.Constant(180 / math.pi)))
        yield "half angle", call(name, op(inner, ast.Div(), ast.Constant(2)))
    if name == "atan" and isinstance(inner, ast.BinOp) and isinstance(inner.op, ast.Div):
        yield "tangent inverted", call("atan", op(inner.right, ast.Div(), inner.left))
    if name == "sqrt":
        yield "root left out", inner
        if isinstance(inner, ast.BinOp) and isinstance(inner.op, ast.Add) and _square(inner.left):
            yield "sides added", op(inner.left.left, ast.Add(), inner.right.left)  # type: ignore[attr-defined]
            yield "squares subtracted", call("sqrt", op(inner.left, ast.Sub(), inner.right))
        else:
            yield "halved, not rooted", op(inner, ast.Div(), ast.Constant(2))


def _square(node: ast.AST) -> bool:
    return isinstance(node, ast.BinOp) and isinstance(node.op, ast.Pow) and is_number(node.right, 2)


def _binary_slips(node: ast.BinOp) -> Iterator[tuple[str, ast.expr]]:
    left, right = node.left, node.right
    match node.op:
        case ast.Pow():
            if is_number(right, 2):
                yield "not squared", left
                yield "doubled, not squared", op(left, ast.Mult(), ast.Constant(2))
                yield "cubed", op(left, ast.Pow(), ast.Constant(3))
        case ast.Mult():
            yield "factor left out", right
            yield "factor left out", left
            yield "divided", op(left, ast.Div(), right)
            if isinstance(left, ast.Name) and isinstance(right, ast.Name) and left.id[0] == right.id[0]:
                yield "added, not multiplied", op(left, ast.Add(), right)
        case ast.Div():
            yield "divisor left out", left
            yield "multiplied", op(left, ast.Mult(), right)
        case ast.Add():
            yield "subtracted", op(left, ast.Sub(), right)
            yield "subtracted", op(right, ast.Sub(), left)
            yield "term left out", left
            yield "term left out", right
            yield "mean, not sum", op(node, ast.Div(), ast.Constant(2))
        case ast.Sub():
            yield "added", op(left, ast.Add(), right)
            yield "wrong way round", op(right, ast.Sub(), left)
            yield "term left out", left
            yield "term left out", right


# --- a question as a reader sees it ------------------------------------------------------------------------------


@dataclass
class Line:
    """One step as printed: what it finds, the formula, its unit, names of which the size goes in."""

    makes: str
    how: ast.expr
    unit: str
    sizes: tuple[str, ...]
    by_hand: bool  # found by trial: there is no formula to go wrong in
    where: tuple[str, str, float | None] | None  # key, words, angle
    marks: int
    size: bool  # the value is a size, whatever direction or sign goes with it


@dataclass
class Asked:
    """One part to calculate."""

    key: str
    answer: str
    lines: list[Line]
    marks: int
    also: tuple[str, ...]
    options: tuple[str, ...]


@dataclass
class Sheet:
    """One draw: the request of the page, every published value, the parts to calculate."""

    request: dict[str, Any]
    start: dict[str, float]
    values: dict[str, float]
    parts: list[Asked]
    typed: dict[str, tuple[float, str]]  # datum: number and unit as typed
    units: dict[str, str]


def ask(operation: str, data: dict[str, Any]) -> dict[str, Any]:
    """The data of a reply of the desk, or its errors."""
    reply: dict[str, Any] = json.loads(desk.answer(json.dumps({"operation": operation, "data": data})))
    return reply["data"] if reply["ok"] else {"errors": reply["errors"]}


@cache
def sheet(key: str, level: int, seed: int) -> Sheet | None:
    """One draw of a question, worked; None where practice draws none."""
    drawn = ask("practice", {"question": key, "level": level, "seed": seed})
    if "errors" in drawn:
        return None
    request = {name: drawn[name] for name in ("question", "inputs", "find", "variant")}
    question = topics.find(key)[1]
    found = read(question, request["inputs"], request["find"], variant=request["variant"])
    plan = question.plan(found.data)
    constants = found.data.settings.constants()
    values = run(plan, constants)
    parts = []
    for part in plan.parts:
        if part.kind != "calculate":
            continue
        lines, options = [], ()
        for step in part.steps:
            told = step.direction(values) if callable(step.direction) else step.direction
            if told is not None and not callable(step.direction) and values[step.makes] < 0:
                told = None if len(told.options) != 2 else told
            own = told and (told.key, told.words, told.angle)
            if told and not callable(step.direction) and values[step.makes] < 0:
                own = next((k, w, None) for k, w in told.options if k != told.key)
            if step.makes == part.answers and told:
                options = tuple(words for _, words in told.options)
            lines.append(
                Line(
                    step.makes,
                    parsed(step.how),
                    step.unit,
                    step.sizes,
                    step.root is not None,
                    own,
                    sum(mark.count for mark in step.marks),
                    bool(told) and values[step.makes] > 0 and told.key == "negative",
                )
            )
        parts.append(Asked(part.key, part.answers, lines, part.marks, part.also, options))
    typed = {}
    for name, text in _boxes(request["inputs"]):
        match = re.fullmatch(r"\s*([+−-]?[\d.,]+)\s*(\S*)\s*", str(text))
        if match and name in plan.values:
            typed[name] = (float(match[1].replace(",", ".").replace("−", "-")), match[2])
    units = {line.makes: line.unit for part in parts for line in part.lines}
    return Sheet(request, {**constants, **plan.values}, values, parts, typed, units)


def _boxes(inputs: dict[str, Any]) -> Iterator[tuple[str, str]]:
    for name, entry in inputs.items():
        if isinstance(entry, list):
            for index, row in enumerate(entry, 1):
                yield from ((f"{column}{index}", str(text)) for column, text in row.items())
        else:
            yield name, str(entry)


def rerun(
    one: Sheet,
    until: str,
    *,
    data: dict[str, float] | None = None,
    hows: dict[str, ast.expr] | None = None,
    fixed: dict[str, float] | None = None,
) -> dict[str, float]:
    """The values to ``until`` with other data, other formulas, or values taken as they are."""
    now = {**one.start, **(data or {})}
    for part in one.parts:
        for line in part.lines:
            if fixed and line.makes in fixed:
                now[line.makes] = fixed[line.makes]
            elif line.by_hand:
                now[line.makes] = one.values[line.makes]
            else:
                how = (hows or {}).get(line.makes, line.how)
                now[line.makes] = value(how, {**now, **{n: abs(now[n]) for n in line.sizes if n in now}})
            if line.makes == until:
                return now
    return now


# --- slips -----------------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Slip:
    """A way to go wrong that can be planted in any draw: its kind, and where."""

    kind: str
    part: str
    at: str
    index: int


def slips(one: Sheet, part: Asked) -> Iterator[tuple[Slip, Callable[[], float]]]:
    """Every slip of this part that a learner could make, with the answer it gives."""

    def answer(**how: Any) -> Callable[[], float]:
        return lambda: rerun(one, part.answer, fixed=before, **how)[part.answer]

    inside = {line.makes for line in part.lines}
    before = {name: v for name, v in one.values.items() if name not in inside and name not in one.start}
    used = _used(part)
    for line in part.lines:
        if not line.by_hand:
            for index, (kind, how) in enumerate(changed(line.how)):
                yield Slip(kind, part.key, line.makes, index), answer(hows={line.makes: how})
        if line.makes == part.answer:
            break
        yield Slip("value on the way", part.key, line.makes, 0), lambda name=line.makes: one.values[name]  # type: ignore[misc]
    for name, (number, unit) in one.typed.items():
        if name in used:
            for index, (kind, wrong) in enumerate(_data_slips(one, name, number, unit, used)):
                yield Slip(kind, part.key, name, index), answer(data={name: wrong})
    for name, wrong, kind in (
        ("g", 10.0, "g = 10"),
        ("k", 9e-9, "power of k"),
        ("k", 9e8, "power of k"),
        ("e", 1.6e19, "power of e"),
    ):
        if name in used and name in one.start and name not in one.typed:
            yield Slip(kind, part.key, name, 0), answer(data={name: wrong})
    right = one.values[part.answer]
    for n in (-3, -2, -1, 1, 2, 3, 6):
        yield Slip("power of ten", part.key, "", n), lambda n=n: right * 10**n  # type: ignore[misc]
    yield Slip("digits swapped", part.key, "", 0), lambda: _swapped(right)


def _used(part: Asked) -> set[str]:
    return {n.id for line in part.lines for n in ast.walk(line.how) if isinstance(n, ast.Name)}


def _data_slips(one: Sheet, name: str, number: float, unit: str, used: set[str]) -> Iterator[tuple[str, float]]:
    right = one.start[name]
    if unit == "°":
        yield "gradians", math.radians(number * 0.9)
        yield "other angle", math.pi / 2 - right
        return
    if unit and number and abs(right / number - 1) > 1e-9 and unit != "%":
        yield "not converted", number
        yield "wrong prefix", right * 1000
        yield "wrong prefix", right / 1000
        if unit == "cm":
            yield "wrong prefix", right / 10
    if unit in ("m", "cm", "mm"):
        yield "half distance", right / 2
        yield "double distance", right * 2
    if right < 0:
        yield "sign left out", -right
    for other, (_, unit2) in one.typed.items():
        if other != name and other in used and unit2[-1:] == unit[-1:] and unit:
            yield "other datum", one.start[other]


def _swapped(right: float) -> float:
    text = f"{abs(right):.2e}"
    swapped = f"{text[0]}.{text[3]}{text[2]}{text[4:]}"
    return math.copysign(float(swapped), right)


# --- how a learner writes ------------------------------------------------------------------------------------------


def written(number: float, figures: int, chance: random.Random, plain: bool = False) -> str:
    """A number with so many figures, in one of the ways learners write it."""
    if number == 0:
        return "0"
    mantissa, power = f"{number:.{figures - 1}e}".split("e")
    n = int(power)
    sign = "," if chance.random() < 0.7 else "."
    usual = -3 <= n <= 4
    if usual and (plain or chance.random() < 0.7):
        return f"{float(f'{number:.{figures - 1}e}'):.{max(figures - 1 - n, 0)}f}".replace(".", sign)
    ways = ("×10^{}", " × 10^{}", " x 10^{}", "e{}", "*10^{}", "sup", "E{}")
    way = "sup" if plain else chance.choice(ways)
    body = mantissa.replace(".", sign)
    return f"{body} × 10{str(n).translate(SUPERSCRIPT)}" if way == "sup" else body + way.format(n)


def odd_number(number: float, chance: random.Random) -> tuple[str, str]:
    """A right number in less usual writing, with the name of the writing."""
    n = math.floor(math.log10(abs(number))) if number else 0
    mantissa = f"{number / 10**n:.3f}".replace(".", ",")
    ways = [
        ("dot as times", f"{mantissa}.10^{n}"),
        ("raised dot", f"{mantissa}·10^{n}"),
        ("bracketed power", f"{mantissa} x 10^({n})"),
        ("double star", f"{mantissa}*10**{n}"),
        ("spaced e", f"{mantissa} e{n}"),
        ("≈", "≈ " + written(number, 4, chance)),
        ("about", "about " + written(number, 4, chance)),
        ("approximately", "approx. " + written(number, 4, chance)),
        ("many figures", written(number, 9, chance)),
        ("4 figures", written(number, 4, chance)),
        ("3 figures", written(number, 3, chance)),
        ("plus sign", ("+" if number > 0 else "") + written(number, 4, chance)),
        ("unspaced power", f"{mantissa}x10{str(n).translate(SUPERSCRIPT)}"),
    ]
    if 4 <= n <= 9:
        ways.append(("spaced thousands", f"{round(number, 3 - n):,.0f}".replace(",", " ")))
    if -1 <= n <= 2:
        whole = number * 8
        if abs(whole - round(whole)) < 1e-9 and abs(number - round(number)) > 1e-9:
            ways.append(("fraction", f"{round(whole)}/8"))
    return chance.choice(ways)


def with_prefix(number: float, unit: str, chance: random.Random) -> tuple[float, str]:
    """The same value in a prefixed unit where learners use one."""
    if unit in ("C", "N", "V", "J", "m") and number:
        n = math.floor(math.log10(abs(number)))
        for letter, power in PREFIX.items():
            if power <= n < power + 3 and letter not in ("c",) and (unit, letter) not in (("m", "M"),):
                return number / 10**power, letter + unit
    return number, unit


def direction_words(part: Asked, chance: random.Random, odd: bool) -> str:
    """The right direction of a part as a learner says it."""
    line = next(line for line in part.lines if line.makes == part.answer)
    if line.where is None:
        return ""
    key, words, angle = line.where
    if not odd:
        return words
    if angle is not None:  # a mark hangs on the angle: all write it
        below = angle > 180
        slope = round(min(angle % 180, 180 - angle % 180), 2)
        axis = "+x" if angle < 90 or angle > 270 else "-x"
        east = "east" if axis == "+x" else "west"
        up = "south" if below else "north"
        bearing = (90 - angle) % 360
        return chance.choice(
            (
                f"{slope}° {'below' if below else 'above'} the {axis} axis",
                f"{slope:.2f}° {'below' if below else 'above'} the {axis}-axis".replace(".", ","),
                f"{slope} degrees {up} of {east}",
                f"{up[0].upper()} {90 - slope:.2f}° {east[0].upper()}",
                f"{angle:.1f}°",
                f"bearing {bearing:05.1f}°",
                f"at {angle:.2f}° anticlockwise from the +x axis",
            )
        )
    usual = next((w for w in WORDS if words == w or words.startswith(w + ":")), None)
    if usual:
        return chance.choice(WORDS[usual])
    parts = re.match(r"to the (left|right) and (up|down)", words)
    if parts:
        return chance.choice((f"{parts[1]} and {parts[2]}", f"{parts[2]} and to the {parts[1]}"))
    return chance.choice((words, words.split(":")[0], key))


def typed_answer(number: float, unit: str, figures: int, chance: random.Random) -> str:
    """A value with its unit as typed."""
    shown, name = (math.degrees(number), "°") if unit == "°" else (number, unit)
    return f"{written(shown, figures, chance, plain=True)} {name}".strip()


def printed_size(number: float, line: Line) -> float:
    """A value as answered: its size where a direction goes with it, unless the sign is that of a charge."""
    return abs(number) if line.where and (line.unit != "C" or line.size) else number


# --- measuring --------------------------------------------------------------------------------


@dataclass
class Tally:
    """What became of the answers of one class."""

    answers: int = 0
    outcome: Counter[str] = field(default_factory=Counter)


@dataclass
class Report:
    wrong: defaultdict[str, Tally] = field(default_factory=lambda: defaultdict(Tally))
    right: defaultdict[str, Tally] = field(default_factory=lambda: defaultdict(Tally))
    examples: defaultdict[str, list[str]] = field(default_factory=lambda: defaultdict(list))
    verdicts: list[str] = field(default_factory=list)
    total: int = 0

    def note(self, table: str, kind: str, outcome: str, example: str) -> None:
        tally = (self.wrong if table == "wrong" else self.right)[kind]
        tally.answers += 1
        tally.outcome[outcome] += 1
        self.total += 1
        if outcome not in ("right", "named", "listed"):
            self.examples[f"{outcome} [{table}]"].append(f"{kind}: {example}")


def marked(one: Sheet, answers: dict[str, Any]) -> dict[str, dict[str, Any]] | None:
    """The verdicts of a request by part; None where it is refused."""
    reply = ask("mark", {**one.request, "answers": answers})
    return None if "errors" in reply else {part["part"]: part for part in reply["parts"]}


def names(verdict: dict[str, Any]) -> list[frozenset[str]]:
    """The causes a verdict names, each by its keys."""
    return [frozenset(fit["keys"]) for fit in verdict["fits"]]


def power_named(verdict: dict[str, Any]) -> bool:
    """Whether a verdict speaks of a power of ten."""
    return "power of ten" in verdict["head"].lower() or "power of ten" in " ".join(verdict["sentences"]).lower()


def same_elsewhere(key: str, slip: Slip, level: int, seed: int) -> Iterator[set[frozenset[str]]]:
    """What the same slip is called in other draws of the question."""
    shape = None
    first = sheet(key, level, seed)
    if first:
        shape = _shape(first)
    told = 0
    for other in range(1, 14):
        one = sheet(key, level, seed + 1000 + other)
        if one is None or _shape(one) != shape:
            continue
        part = next((p for p in one.parts if p.key == slip.part), None)
        how = next((how for s, how in slips(one, part) if s == slip), None) if part else None
        try:
            wrong = how() if how else None
        except (ValueError, ArithmeticError, KeyError):
            continue
        if part is None or wrong is None or not math.isfinite(wrong):
            continue
        verdict = _verdict(one, part, wrong, random.Random(other))
        if verdict and verdict["earned"] < verdict["possible"]:
            told += 1
            yield set(names(verdict))
        if told == 2:
            return


def _shape(one: Sheet) -> list[tuple[str, str]]:
    return [(line.makes, ast.dump(line.how)) for part in one.parts for line in part.lines]


def _answer(one: Sheet, part: Asked, number: float, chance: random.Random, figures: int = 4) -> dict[str, Any]:
    line = next(line for line in part.lines if line.makes == part.answer)
    entry: dict[str, Any] = {"value": typed_answer(printed_size(number, line), line.unit, figures, chance)}
    where = direction_words(part, chance, odd=False)
    if where:
        flip = number * one.values[part.answer] < 0 and (line.unit != "C" or line.size)
        entry["direction"] = _turned(line, part) if flip and _turned(line, part) else where
        if line.unit == "C" and line.where and line.where[0] in ("positive", "negative"):
            signed = one.values[part.answer] * (1 if line.where[0] == "positive" else -1) > 0
            if signed:  # the value carries the sign itself
                key = "positive" if number > 0 else "negative"
                entry["direction"] = next((words for words in part.options if key in words), where)
    return entry


def figures_that_tell(number: float, data: Iterable[float]) -> int:
    """Four figures, or as many as tell a number from a datum that it is close to: 420,03 Hz where 420 Hz is given."""
    others = [one for one in data if one and one != number]
    return next(
        (n for n in range(4, 9) if all(f"{number:.{n - 1}e}" != f"{one:.{n - 1}e}" for one in others)),
        9,
    )


def _turned(line: Line, part: Asked) -> str:
    assert line.where
    key = line.where[0]
    other = "-".join(TURNED.get(piece, "?") for piece in key.split("-")) if key not in TURNED else TURNED[key]
    return "" if "?" in other else other


def _verdict(one: Sheet, part: Asked, wrong: float, chance: random.Random) -> dict[str, Any] | None:
    done = marked(one, {part.key: _answer(one, part, wrong, chance)})
    return done[part.key] if done else None


def same_size(wrong: float, right: float) -> bool:
    """Whether a wrong value can be told from the right one."""
    return math.isclose(abs(wrong), abs(right), rel_tol=0.011)


def measure_wrong(
    report: Report, key: str, level: int, seed: int, one: Sheet, part: Asked, count: int, chance: random.Random
) -> None:
    """Slips of one part, each typed and judged."""
    right = one.values[part.answer]
    pool = list(slips(one, part))
    chance.shuffle(pool)
    seen: Counter[str] = Counter()
    done = 0
    for slip, how in pool:
        if done >= count:
            return
        if seen[slip.kind] >= 2:
            continue
        try:
            wrong = how()
        except (ValueError, ArithmeticError, KeyError):
            continue
        if not wrong or not math.isfinite(wrong) or same_size(wrong, right) or not 1e-40 < abs(wrong) < 1e40:
            continue
        seen[slip.kind] += 1
        done += 1
        typed = _answer(one, part, wrong, chance)
        reply = marked(one, {part.key: typed})
        if reply is None:
            continue
        verdict = reply[part.key]
        outcome = judged(verdict, slip, wrong, right, key, level, seed)
        said = " / ".join(verdict["sentences"])
        example = (
            f"{key} L{level} s{seed} {part.key} at {slip.at}: {typed} (right {right:.5g}) -> {verdict['head']}: {said}"
            f" {[sorted(n) for n in names(verdict)]}"
        )
        report.note("wrong", slip.kind, outcome, example)
        report.verdicts.append(f"{slip.kind} at {slip.at} | {example}")
        if not helps(verdict):
            report.note("wrong", "no helping sentence", "no help", example)


def judged(verdict: dict[str, Any], slip: Slip, wrong: float, right: float, key: str, level: int, seed: int) -> str:
    """What became of a slip."""
    if verdict["earned"] == verdict["possible"]:
        return "WRONG MARKED RIGHT"
    told = names(verdict)
    if not told:
        ratio = math.log10(abs(wrong / right))
        exact = abs(ratio - round(ratio)) < 0.003
        if power_named(verdict):
            return "named" if exact else "FALSE NAME"
        return "unnamed"
    if len(told) > 3:
        return "long list"
    ratio = math.log10(abs(wrong / right))
    if "power of ten" in " ".join(verdict["sentences"]) and abs(ratio - round(ratio)) < 0.003:
        return "listed"
    elsewhere = list(same_elsewhere(key, slip, level, seed))
    if not elsewhere:
        return "name not tested"
    true = [any(_one_of(name, others) for others in elsewhere) for name in told]
    if not any(true):
        return "FALSE NAME" if len(told) == 1 else "list without it"
    return "named" if len(told) == 1 else "listed"


def _one_of(name: frozenset[str], others: set[frozenset[str]]) -> bool:
    return name in others


def helps(verdict: dict[str, Any]) -> bool:
    """At least one whole sentence, no telegrams, no more than five."""
    said = " ".join([*verdict["sentences"], *(" ".join(map(str, fit["say"])) for fit in verdict["fits"])])
    return len(said.split()) >= 8


def measure_near(report: Report, one: Sheet, key: str, part: Asked, chance: random.Random) -> None:
    """Answers off by an amount that nothing explains: a name must give the digits typed."""
    right = one.values[part.answer]
    if not right:
        return
    wrong = right * (
        1
        + chance.choice((-1, 1))
        * chance.choice((0.015, 0.022, 0.028, 0.04, 0.07, 0.13, 0.3))
        * chance.uniform(0.9, 1.1)
    )
    typed = _answer(one, part, wrong, chance)
    reply = marked(one, {part.key: typed})
    if reply is None:
        return
    verdict = reply[part.key]
    outcome = "unnamed"
    if verdict["earned"] == verdict["possible"]:
        outcome = "right by the judging rule" if abs(wrong / right - 1) < 0.031 else "WRONG MARKED RIGHT"
    for fit in verdict["fits"]:
        number = _number(fit["value"])
        shown = math.degrees(wrong) if "°" in fit["value"] else abs(wrong)
        if number is None or not math.isclose(abs(number), abs(shown), rel_tol=6e-3):
            outcome = "FALSE NAME"
        elif outcome == "unnamed":
            outcome = "listed"
    report.note(
        "wrong",
        "off by some per cent",
        outcome,
        f"{key} {part.key} {typed} (right {right:.5g}) -> {verdict['head']}: {' / '.join(verdict['sentences'])}"
        f" {[(f['value'], f['keys']) for f in verdict['fits']]}",
    )


def _number(text: str) -> float | None:
    match = re.search(r"([−-]?\d[\d\s\u00a0]*(?:,\d+)?)(?:\s*×\s*10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+))?", text)
    if not match:
        return None
    power = match[2].translate(str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")) if match[2] else "0"
    return float(re.sub(r"[\s\u00a0]", "", match[1]).replace(",", ".").replace("−", "-")) * 10.0 ** int(power)


def measure_right(report: Report, key: str, one: Sheet, part: Asked, count: int, chance: random.Random) -> None:
    """Right answers in less usual writing."""
    line = next(line for line in part.lines if line.makes == part.answer)
    right = printed_size(one.values[part.answer], line)
    whole = {name: typed_answer(one.values[name], one.units[name], 4, chance) for name in part.also}
    for turn in range(count):
        shown = math.degrees(right) if line.unit == "°" else right
        unit = line.unit
        if turn % 3 == 1 and unit != "°":
            shown, unit = with_prefix(shown, unit, chance)
        name, text = odd_number(shown, chance) if turn % 3 != 2 else ("usual", written(shown, 4, chance))
        said_unit = chance.choice(UNIT_WRITINGS.get(unit, (unit,))) if turn % 3 == 2 else unit
        if turn % 7 == 3 and text[0] not in "≈a":
            text, name = f"{part.answer} = {text}", "with F = before"
        entry = {
            "value": f"{text} {said_unit}".strip(),
            "direction": direction_words(part, chance, odd=turn % 2 == 1),
            "steps": whole,
        }
        reply = marked(one, {part.key: entry})
        if reply is None:
            continue
        verdict = reply[part.key]
        full = verdict["earned"] == verdict["possible"]
        kind = f"unit as {said_unit}" if turn % 3 == 2 and not full else name
        said = " / ".join([*verdict["sentences"], *(p["message"] for p in verdict["problems"])])
        report.note(
            "right",
            kind if turn % 3 != 2 else "unit or direction",
            "right" if full else "RIGHT MARKED WRONG",
            f"{kind}: {key} {part.key} {entry} (right {right:.6g}) -> {verdict['head']}: {said}",
        )


def measure_through(report: Report, key: str, one: Sheet, chance: random.Random) -> None:
    """A wrong value of one part, used rightly in every later one: full marks for those."""
    for place, part in enumerate(one.parts[:-1]):
        pool = list(slips(one, part))
        chance.shuffle(pool)
        ways: list[tuple[str, float]] = []
        for _, how in pool[:12]:
            try:
                wrong = how()
            except (ValueError, ArithmeticError, KeyError):
                continue
            if wrong and math.isfinite(wrong) and not same_size(wrong, one.values[part.answer]):
                ways = [("carried, unrounded", wrong), ("carried, as typed", wrong), ("carried, 2 figures", wrong)]
                break
        line = next(line for line in part.lines if line.makes == part.answer)
        if line.where and _turned(line, part):
            ways.append(("carried, direction turned", -one.values[part.answer]))
        for kind, wrong in ways:
            _carry(report, key, one, place, kind, wrong, chance)


def _carry(report: Report, key: str, one: Sheet, place: int, kind: str, wrong: float, chance: random.Random) -> None:
    part = one.parts[place]
    figures = 2 if kind.endswith("2 figures") else 4
    on = float(f"{wrong:.{figures - 1}e}") if kind != "carried, unrounded" else wrong
    answers = {part.key: _answer(one, part, wrong, chance, figures)}
    try:
        now = rerun(
            one,
            one.parts[-1].answer,
            fixed={
                part.answer: on,
                **{
                    n: v
                    for n, v in one.values.items()
                    if n not in one.start and _index(one, n) < _index(one, part.answer)
                },
            },
        )
    except (ValueError, ArithmeticError):
        return
    later = []
    for other in one.parts[place + 1 :]:
        line = next(line for line in other.lines if line.makes == other.answer)
        if any(each.by_hand for each in other.lines) or other.also:
            continue
        new, old = now[other.answer], one.values[other.answer]
        if not new or math.isclose(new, old, rel_tol=0.012) or (line.where and (line.where[2] is not None)):
            continue
        if kind.endswith("turned") and not line.where and new * old < 0:
            continue  # a size that came out below zero: no learner goes on with it
        entry = _answer(one, other, new, chance, figures_that_tell(new, one.start.values()))
        if line.where and line.where[0] in TURNED:
            turned = _sense(one, other, now)
            if turned is None:  # the direction hangs on more than a sign: no guess at what a learner says
                continue
            entry["direction"] = turned or entry.get("direction", "")
        answers[other.key] = entry
        later.append((other, new))
    if not later:
        return
    reply = marked(one, answers)
    if reply is None:
        return
    for other, new in later[:2]:
        verdict = reply[other.key]
        full = verdict["earned"] == verdict["possible"]
        report.note(
            "right",
            kind,
            "right" if full else "LOST FOLLOW-THROUGH",
            f"{key} {one.request['inputs']} {answers} | {other.key} {new:.5g} (right {one.values[other.answer]:.5g}) ->"
            f" {verdict['head']}: {' / '.join(verdict['sentences'])}",
        )


def _index(one: Sheet, name: str) -> int:
    return [line.makes for part in one.parts for line in part.lines].index(name) if name in one.units else -1


def _sense(one: Sheet, part: Asked, now: dict[str, float]) -> str | None:
    """The direction of a later answer after a turned one: by the sign of what its size was taken of."""
    line = next(line for line in part.lines if line.makes == part.answer)
    assert line.where
    node = line.how
    if called(node) == "abs" and isinstance(node.args[0], ast.Name):  # type: ignore[attr-defined]
        name = node.args[0].id  # type: ignore[attr-defined]
        flipped = now[name] * one.values[name] < 0
    elif line.where[0] not in TURNED or any(now[n] * one.values[n] < 0 for n in line.sizes):
        return None
    else:
        flipped = now[part.answer] * one.values[part.answer] < 0
    return _turned(line, part) or None if flipped else line.where[1]


def measure_constants(report: Report, key: str, one: Sheet, chance: random.Random) -> None:
    """k = 8,99 × 10⁹ and the like, used all the way: full marks."""
    for name, other in (("k", 8.99e9), ("k", 8.988e9), ("g", 9.81), ("e", 1.602e-19), ("g", 10.0)):
        if name not in one.start or name in one.typed:
            continue
        try:
            now = rerun(one, one.parts[-1].answer, data={name: other})
        except (ValueError, ArithmeticError):
            continue
        answers, asked = {}, []
        for part in one.parts:
            line = next(line for line in part.lines if line.makes == part.answer)
            if any(each.by_hand for each in part.lines) or part.also or now[part.answer] * one.values[part.answer] <= 0:
                continue
            if line.where and line.where[2] is not None:
                continue
            answers[part.key] = _answer(one, part, now[part.answer], chance)
            asked.append(part)
        reply = marked(one, answers) if answers else None
        if reply is None:
            continue
        for part in asked:
            if now[part.answer] == one.values[part.answer]:
                continue
            verdict = reply[part.key]
            lost = verdict["possible"] - verdict["earned"]
            good = lost == 0 if (name, other) != ("g", 10.0) else lost <= 1
            report.note(
                "right",
                f"{name} = {other:g}",
                "right" if good else "RIGHT MARKED WRONG",
                f"{key} {part.key} {answers[part.key]} (right {one.values[part.answer]:.5g}) -> {verdict['head']}:"
                f" {' / '.join(verdict['sentences'])}",
            )


def main() -> None:
    """Measure and print."""
    asked = argparse.ArgumentParser()
    asked.add_argument("--draws", type=int, default=1)
    asked.add_argument("--seed", type=int, default=7)
    asked.add_argument("--only", default="")
    asked.add_argument("--answers", type=int, default=3000, help="stop after about so many")
    asked.add_argument("--show", type=int, default=6, help="examples of each failure")
    asked.add_argument("--verdicts", type=int, default=0)
    args = asked.parse_args()
    chance = random.Random(args.seed)
    report = Report()
    todo = [
        (key, level, args.seed + draw)
        for draw in range(args.draws)
        for key in topics.question_keys()
        for level in topics.find(key)[1].levels
        if key.startswith(tuple(args.only.split(",")))
    ]
    chance.shuffle(todo)
    for key, level, seed in todo:
        if report.total >= args.answers:
            break
        one = sheet(key, level, seed)
        if one is None:
            continue
        for part in one.parts:
            if not one.values[part.answer]:
                continue
            measure_right(report, key, one, part, 4, chance)
            measure_wrong(report, key, level, seed, one, part, 8, chance)
            measure_near(report, one, key, part, chance)
        measure_through(report, key, one, chance)
        measure_constants(report, key, one, chance)
    show(report, args.show)
    for line in chance.sample(report.verdicts, min(args.verdicts, len(report.verdicts))):
        print("*", line)


def show(report: Report, examples: int) -> None:
    """The tables, then examples of what failed."""
    for title, table in (("wrong answers", report.wrong), ("right answers", report.right)):
        print(f"== {title}")
        whole: Counter[str] = Counter()
        for kind, tally in sorted(table.items()):
            print(f"{kind:28}{tally.answers:6}  " + ", ".join(f"{n} {what}" for what, n in tally.outcome.most_common()))
            whole.update(tally.outcome)
        total = sum(whole.values()) or 1
        print(f"{'all':28}{total:6}  " + ", ".join(f"{what} {n} ({n / total:.1%})" for what, n in whole.most_common()))
    for what, lines in sorted(report.examples.items()):
        print(f"\n-- {what}: {len(lines)}")
        for line in random.Random(1).sample(lines, min(examples, len(lines))):
            print("  ", line)


if __name__ == "__main__":
    main()
