"""How marking does with whole workings on paper and laws in a learner's own sentence, in mechanics and circuits.

    python3 site-scripts/learner_workings.py [--draws 2] [--seed 7] [--only newton] [--show 20]

Formulas, forms, mistakes and laws come from ``learner_tables.py``, the data from drawn questions as a page shows them.
Nothing of the marking is used: lines are written here in many ways, sent through the JSON boundary, and the marks and
the words that come back are read as a learner reads them. Three questions of each part: does a right working get full
marks and no remark; is the place of a planted mistake found (its line, or its step), and the mistake itself named; is
anything said that is not so. Ways of writing: common practice, no source.
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
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from calc import desk
from learner_tables import LAWS, MORE_LAWS, QUESTIONS

FACTOR = (
    dict.fromkeys(
        ("", "kg", "m", "s", "N", "m/s", "m·s⁻¹", "m/s^2", "m·s⁻²", "°", "Hz", "W", "J", "N/m", "V", "A", "Ω"), 1.0
    )
    | dict.fromkeys(("g", "mm", "ms", "mA", "mV", "mWb"), 1e-3)
    | dict.fromkeys(("T", "Wb"), 1.0)
    | {"cm²": 1e-4, "cm^2": 1e-4}
    | dict.fromkeys(("t", "km", "kN", "kHz", "kW", "kJ", "kV", "kΩ"), 1e3)
    | {"cm": 1e-2, "µm": 1e-6, "MN": 1e6, "Mm": 1e6, "MHz": 1e6, "Gm": 1e9, "h": 3600.0, "min": 60.0, "km/h": 1 / 3.6}
    | {"nm": 1e-9, "eV": 1.6e-19, "mW": 1e-3, "µA": 1e-6}
)
SI_OF = {
    "g": "kg",
    "cm": "m",
    "ms": "s",
    "km": "m",
    "nm": "m",
    "eV": "J",
    "mW": "W",
    "µA": "A",
    "mWb": "Wb",
    "cm²": "m²",
    "cm^2": "m²",
} | {
    "kW": "W",
    "kV": "V",
    "min": "s",
    "h": "s",
}
CONSTANTS = {"g": 9.8, "G": 6.67e-11}
OF_LIGHT = {"h": 6.63e-34, "c": 3e8, "e": 1.6e-19, "m_e": 9.11e-31}  # letters of other things elsewhere
GREEK = {"theta": "θ", "phi": "φ", "alpha": "α", "beta": "β", "mu": "µ", "eta": "η", "Delta": "Δ"}
LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
UNITS = {
    "m·s⁻¹": ("m·s⁻¹", "m/s", "m.s⁻¹", "m.s^-1", "ms⁻¹"),
    "m·s⁻²": ("m·s⁻²", "m/s²", "m/s^2", "m.s⁻²", "ms⁻²"),
    "N·s": ("N·s", "N.s", "kg·m·s⁻¹", "Ns"),
}
# Letters that many learners use whatever the question calls it.
OTHER_LETTERS = {"u": "vi", "v": "vf", "N": "FN", "f": "fk", "f_smax": "fs", "w": "Fg", "u1": "v1i", "u2": "v2i"}
SINE = {name: (lambda fn: lambda x: fn(math.radians(x)))(getattr(math, name)) for name in ("sin", "cos", "tan")} | {
    name: (lambda fn: lambda x: math.degrees(fn(x)))(getattr(math, name)) for name in ("asin", "acos", "atan")
}


def ask(operation: str, data: dict[str, Any]) -> dict[str, Any]:
    """The data of a reply, or its errors."""
    reply = json.loads(desk.answer(json.dumps({"operation": operation, "data": data})))
    return reply["data"] if reply["ok"] else {"errors": reply["errors"]}


def value(formula: str, of: dict[str, float]) -> float:
    """A formula worked out; angles in degrees."""
    return float(eval(formula, {"__builtins__": {}}, {**SINE, "sqrt": math.sqrt, "abs": abs, "pi": math.pi, **of}))


# --- writing ---


@dataclass
class Hand:
    """One learner's way of writing."""

    comma: str
    times: str  # between numbers
    lowered: bool  # m₁ for m1
    bare: bool  # mv2 and sub-letters without a stroke: fS, Fnet
    spaced: bool
    square: str
    name_again: bool  # "N = …" in each line, not "= …"
    so: str
    units_inside: bool
    letters: dict[str, str] = field(default_factory=dict)
    direction_in_line: bool = False
    value_too: bool = False
    keyboard: bool = False  # no Greek letters, no raised or lowered signs

    @staticmethod
    def typist(chance: random.Random) -> Hand:
        """A learner who has only the keys of a keyboard."""
        hand = Hand.of(chance, False)
        hand.keyboard, hand.lowered, hand.square = True, False, "^2"
        hand.times = chance.choice(("*", " * ", " x ", "()"))
        hand.so = chance.choice(("", "", "so ", "=> "))
        return hand

    @staticmethod
    def of(chance: random.Random, own_letters: bool) -> Hand:
        letters = {}
        if own_letters:
            letters = {name: other for name, other in OTHER_LETTERS.items() if chance.random() < 0.7}
        return Hand(
            "," if chance.random() < 0.7 else ".",
            chance.choice((" × ", "×", " x ", "()", " * ", "·", "()")),
            chance.random() < 0.3,
            chance.random() < 0.7,
            chance.random() < 0.5,
            chance.choice(("²", "²", "^2")),
            chance.random() < 0.5,
            chance.choice(("", "", "", "∴ ", "so ", "therefore ")),
            chance.random() < 0.2,
            letters,
            chance.random() < 0.25,
            chance.random() < 0.5,
        )

    def letter(self, name: str) -> str:
        """A quantity's name as written."""
        if name in self.letters:
            return self.letters[name]
        head, _, tail = name.partition("_")
        digits = re.fullmatch(r"([A-Za-z]+?)(\d*)", head)
        assert digits
        stem, number = digits[1], digits[2]
        change = "Δ" if stem.startswith("Delta") else ""
        stem = stem.removeprefix("Delta")
        if self.keyboard:
            change = "delta " if change and self.spaced else "delta" if change else ""
        else:
            stem = GREEK.get(stem, stem)
        number = number.translate(LOWERED) if self.lowered else number
        if tail.isdigit() and (self.lowered or self.bare):
            tail = tail.translate(LOWERED) if self.lowered else tail
            return change + stem + number + tail
        return change + stem + number + (tail if self.bare else f"_{tail}" if tail else "")

    def number(self, x: float) -> str:
        """A number in a line."""
        if x and not 1e-3 <= abs(x) < 1e6:
            mantissa, power = f"{x:.4g}".split("e") if "e" in f"{x:.4g}" else f"{x:.3e}".split("e")
            body = f"{float(mantissa):g}".replace(".", self.comma)
            if self.keyboard:
                return body + (f"e{int(power)}" if self.spaced else f"*10^{int(power)}")
            return body + f"×10{str(int(power)).translate(RAISED)}"
        text = f"{x:.10g}" if len(f"{x:.10g}".lstrip("-0.")) <= 5 else f"{x:.5g}"
        return text.replace(".", self.comma)

    def result(self, x: float, unit: str) -> str:
        """A value with its unit, as the end of a working."""
        if x and not 1e-2 <= abs(x) < 1e5:
            mantissa, power = f"{x:.3e}".split("e")
            text = f"{mantissa} × 10{str(int(power)).translate(RAISED)}"
            if self.keyboard:
                text = f"{mantissa} x 10^{int(power)}"
        else:
            places = max(2, 3 - math.floor(math.log10(abs(x)))) if x else 2
            text = f"{x:.{places}f}"
        return f"{text} {unit}".strip().replace(".", self.comma, 1)

    def write(self, formula: str, numbers: dict[str, float] | None = None, units: dict[str, str] | None = None) -> str:
        """A formula in letters, or with the numbers of those names that have one."""
        return self._node(ast.parse(formula, mode="eval").body, numbers or {}, units or {})[0]

    def _node(self, node: ast.expr, of: dict[str, float], units: dict[str, str]) -> tuple[str, int]:
        """Text and rank: 0 sum, 1 product, 2 power, 3 atom."""
        if isinstance(node, ast.Constant):
            return self.number(float(node.value)), 3  # type: ignore[arg-type]
        if isinstance(node, ast.Name):
            if node.id == "pi":
                return "pi" if self.keyboard else "π", 3
            if node.id not in of:
                return self.letter(node.id), 3
            text = self.number(of[node.id])
            if self.units_inside and units.get(node.id) and of[node.id] >= 0 and "×" not in text:
                return f"({text} {units[node.id]})", 3
            return (text, 3) if of[node.id] >= 0 and "×" not in text else (f"({text})", 3)
        if isinstance(node, ast.UnaryOp):
            text, rank = self._node(node.operand, of, units)
            return (f"-({text})" if rank == 0 else f"-{text}"), 0
        if isinstance(node, ast.Call):
            return self._call(node, of, units)
        assert isinstance(node, ast.BinOp)
        left, right = self._node(node.left, of, units), self._node(node.right, of, units)
        if isinstance(node.op, ast.Pow):
            raised = self.square if right[0] == "2" else f"^{right[0]}"
            return (left[0] if left[1] == 3 else f"({left[0]})") + raised, 2
        if isinstance(node.op, ast.Add | ast.Sub):
            sign = "+" if isinstance(node.op, ast.Add) else chance_minus(self)
            other = (
                f"({right[0]})" if (right[1] == 0 and isinstance(node.op, ast.Sub)) or right[0][0] == "-" else right[0]
            )
            return (f"{left[0]} {sign} {other}" if self.spaced else f"{left[0]}{sign}{other}"), 0
        one = f"({left[0]})" if left[1] == 0 else left[0]
        if isinstance(node.op, ast.Div):
            if one == "1" and right[0] == "2":
                return ("1/2", 1) if self.keyboard else ("½", 3)
            other = right[0] if right[1] > 1 else f"({right[0]})"
            return f"{one}/{other}", 1
        other = f"({right[0]})" if right[1] == 0 or (right[1] == 1 and "/" in right[0]) else right[0]
        return self._product(one, other), 1

    def _call(self, node: ast.Call, of: dict[str, float], units: dict[str, str]) -> tuple[str, int]:
        name = node.func.id  # type: ignore[attr-defined]
        text, rank = self._node(node.args[0], of, units)
        if name == "abs":
            return text.strip("()").lstrip("-"), 3
        if name == "sqrt":
            return f"sqrt({text})" if self.keyboard else f"√({text})", 3
        if name in ("asin", "acos", "atan"):
            return (f"arc{name[1:]}({text})" if self.keyboard else f"{name[1:]}⁻¹({text})"), 2
        if self.keyboard:
            return f"{name}({text.strip('()')})", 2
        degrees = "°" if text[-1].isdigit() and isinstance(node.args[0], ast.Name) else ""
        if rank < 3:
            inside = (
                re.sub(r"(\d)(?=$| )", r"\1°", text)
                if any(c.isdigit() for c in text) and not re.search("[α-ω]", text)
                else text
            )
            return f"{name}({inside})", 2
        return f"{name}{' ' if self.spaced else ''}{text}{degrees}", 2

    def _product(self, one: str, other: str) -> str:
        digit = other[0].isdigit()
        if self.keyboard and (self.times != "()" or one.endswith("1/2")):
            return f"{one}{'*' if self.times == '()' else self.times}{other}"
        if one[-1] == "½" or (one.startswith(("½", "-½")) and not digit):
            return one + (f"({other})" if digit else other)
        if (digit and one[-1].isdigit()) or (digit and one[-1] in ")²"):
            if self.times == "()":
                return f"({one})({other})" if one[-1] != ")" else f"{one}({other})"
            return f"{one}{self.times}{other}"
        if digit:
            return f"{one}({other})"
        if other[0] in "(√" or other.startswith(("sin", "cos", "tan")):
            return one + (" " if self.spaced and other[0] not in "(√" else "") + other
        return one + other


def chance_minus(hand: Hand) -> str:
    """The sign of a difference."""
    return "−" if hand.spaced and hand.comma == "," else "-"


# --- one part of a drawn question ---


@dataclass
class Row:
    """One value of a part."""

    name: str
    unit: str
    ways: tuple[str, str] | None
    formula: str
    forms: list[str]
    principle: str
    slips: list[tuple[str, str]]


def rows(text: str) -> list[Row]:
    """The lines of a part of the tables."""
    found = []
    for line in text.split("\n"):
        name, unit, formula, forms, principle, slips = line.split("|", 5)
        kind, _, ways = unit.partition(" R ") if " R " in unit else (unit, "", "")
        both = tuple(ways.split("/")) if ways else None
        listed = [tuple(part.strip() for part in one.split("~", 1)) for one in slips.split(";") if one.strip()]
        found.append(
            Row(name, kind, both, formula, [f for f in forms.split(";") if f], principle, listed)  # type: ignore[arg-type]
        )
    return found


@dataclass
class Drawn:
    """A drawn question with the parts that the tables know."""

    key: str
    request: dict[str, Any]
    data: dict[str, float]
    units: dict[str, str]
    parts: dict[str, list[Row]]


def drawn(key: str, level: int, seed: int) -> Drawn | None:
    """A draw whose choices the tables know; None for another."""
    reply = ask("practice", {"question": key, "level": level, "seed": seed})
    if "errors" in reply:
        return None
    request = {name: reply[name] for name in ("question", "inputs", "find", "variant")}
    data, units, choices = (
        CONSTANTS | (OF_LIGHT if key.startswith("photoelectric") else {}),
        {},
        {"find": reply["find"]},
    )
    for name, text in reply["inputs"].items():
        typed = re.fullmatch(
            r"\s*([+−-]?[\d.,]+)(?:\s*[×x]\s*10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+))?\s*(.*?)\s*", text if isinstance(text, str) else ""
        )
        if typed and typed[3] in FACTOR:
            power = int((typed[2] or "0").translate(str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")))
            data[name] = float(typed[1].replace(",", ".").replace("−", "-")) * 10.0**power * FACTOR[typed[3]]
            units[name] = "" if typed[3] == "°" else SI_OF.get(typed[3], typed[3])
            choices[name] = typed[1]
        else:
            choices[name] = str(text)
    for wanted, parts in QUESTIONS[key]:
        if all(choices.get(name) == what for name, what in wanted.items()):
            return Drawn(key, request, data, units, {part: rows(text) for part, text in parts.items()})
    return None


@dataclass
class Sheet:
    """A learner's paper: entries by part, and what was planted where."""

    answers: dict[str, dict[str, Any]] = field(default_factory=dict)
    line: int = 0
    lines: list[str] = field(default_factory=list)


@dataclass
class Slip:
    """A mistake planted: the part, the name it is made at, its formula and the words that tell of it."""

    part: str
    at: str
    formula: str
    words: str


def paper(one: Drawn, hand: Hand, chance: random.Random, slip: Slip | None, whole: bool) -> Sheet | None:
    """All parts written out; a slip is carried through. None where a formula has no value."""
    now, sheet = dict(one.data), Sheet()
    for part, steps in one.parts.items():
        lines: list[str] = []
        entry: dict[str, Any] = {}
        for row in steps:
            planted = slip is not None and (slip.part, slip.at) == (part, row.name)
            formula = slip.formula if slip and planted else row.formula
            try:
                found = value(formula, now)
            except (ValueError, ArithmeticError, TypeError, NameError):
                return None
            if not math.isfinite(found) or abs(found) < (1e-40 if one.key.startswith("photoelectric") else 1e-9):
                return None
            if planted and slip:
                sheet.line = len(lines) + 1 + bool(row.principle)
            lines += _lines(row, formula, found, now, one.units, hand, chance, planted)
            now[row.name] = float(f"{found:.5g}")
        last = steps[-1]
        size = abs(found) if last.ways else found
        end = hand.result(size, _unit(last, chance, hand))
        if last.ways:
            where = last.ways[0] if found > 0 else last.ways[1]
            if hand.direction_in_line and whole and last.ways[0] != "positive":
                lines[-1] += f" {where}"
            else:
                entry["direction"] = where
        if not whole and len(steps) > 1 and one.key == "newton.bench":  # asks for both
            entry["steps"] = {steps[0].name: hand.result(now[steps[0].name], steps[0].unit)}
        if whole:
            entry["working"] = "\n".join(lines)
        if not whole or hand.value_too:
            entry["value"] = end
        if slip and slip.part == part:
            sheet.lines = lines
        sheet.answers[part] = entry
    return sheet


def _unit(row: Row, chance: random.Random, hand: Hand) -> str:
    if hand.keyboard:
        return {"m·s⁻¹": "m/s", "m·s⁻²": "m/s^2", "N·s": "N.s"}.get(row.unit, row.unit)
    return chance.choice(UNITS[row.unit]) if row.unit in UNITS else row.unit


def _lines(
    row: Row,
    formula: str,
    found: float,
    now: dict[str, float],
    units: dict[str, str],
    hand: Hand,
    chance: random.Random,
    planted: bool,
) -> list[str]:
    """Principle, formula, numbers put in, result, in this learner's hand."""
    name = hand.letter(row.name)
    lines = [row.principle] if row.principle and (planted or chance.random() < 0.6) else []
    if planted and row.principle:
        lines = [row.principle]
    form = (
        chance.choice(row.forms) if row.forms and not planted and chance.random() < 0.5 else f"{row.name} = {formula}"
    )
    left, right = form.split(" = ")
    lines.append(f"{hand.write(left)} = {hand.write(right)}")
    known = {n: v for n, v in now.items() if n != row.name}
    isolated = left == row.name
    again = not isolated or hand.name_again or chance.random() < 0.3
    numbers = hand.write(right, known, units)
    if isolated:
        lines.append(f"{name} = {numbers}" if again else f"= {numbers}")
    else:
        lines.append(f"{hand.write(left, known, units)} = {numbers}")
    size = abs(found) if row.ways and row.ways[0] != "positive" and chance.random() < 0.6 else found
    result = hand.result(size, _unit(row, chance, hand))
    lines.append(f"{hand.so}{name} = {result}" if again else f"= {result}")
    return lines


# --- reading what comes back ---


@dataclass
class Report:
    counts: defaultdict[str, defaultdict[str, Counter[str]]] = field(
        default_factory=lambda: defaultdict(lambda: defaultdict(Counter))
    )
    examples: defaultdict[str, list[str]] = field(default_factory=lambda: defaultdict(list))

    def note(self, chapter: str, table: str, outcome: str, example: str) -> None:
        self.counts[table][chapter][outcome] += 1
        self.examples[f"{table}: {outcome}"].append(example)


def marked(one: Drawn, sheet: Sheet) -> dict[str, dict[str, Any]]:
    """The verdicts by part."""
    reply = ask("mark", {**one.request, "answers": sheet.answers})
    if "errors" in reply:
        print("refused", json.dumps({**one.request, "answers": sheet.answers}), reply["errors"])
    return {} if "errors" in reply else {part["part"]: part for part in reply["parts"]}


def said(verdict: dict[str, Any]) -> str:
    """All that a learner is told of a part."""
    fits = " ".join(" ".join([*map(str, fit["say"]), *map(str, fit["why"])]) for fit in verdict["fits"])
    problems = " ".join(problem["message"] for problem in verdict["problems"])
    return " ".join([verdict["head"], *verdict["sentences"], fits, problems])


def shown(entry: dict[str, Any], verdict: dict[str, Any]) -> str:
    """An example in one line."""
    lost = [f"{m['kind']}@{m['step']}: {m['reason']}" for m in verdict["marks"] if m["earned"] < m["possible"]]
    return f"{entry} -> {verdict['earned']}/{verdict['possible']} {said(verdict)} LOST {lost}"


def measure_right(report: Report, one: Drawn, hand: Hand, chance: random.Random, table: str) -> None:
    """Right workings: full marks, and no remark on a line."""
    sheet = paper(one, hand, chance, None, whole=True)
    if sheet is None:
        return
    chapter = one.key.split(".")[0]
    done = marked(one, sheet)
    for part, entry in sheet.answers.items():
        verdict = done.get(part)
        if verdict is None:
            report.note(chapter, table, "no verdict", f"{one.key} {part}")
            continue
        full = verdict["earned"] == verdict["possible"]
        remark = re.search(r"Line \d+ of your working", said(verdict))
        outcome = "full marks" if full and not remark else "full, but a line blamed" if full else "RIGHT LOST MARKS"
        report.note(chapter, table, outcome, f"{one.key} {one.request['inputs']} {part} {shown(entry, verdict)}")


def slips(one: Drawn) -> Iterator[Slip]:
    """Every mistake of the tables for a draw."""
    for part, steps in one.parts.items():
        for row in steps:
            for formula, words in row.slips:
                yield Slip(part, row.name, formula, words)


def differs(one: Drawn, slip: Slip, chance: random.Random) -> bool:
    """Whether the answer of the part with the slip can be told from the right one."""
    hand = Hand.of(random.Random(1), False)
    hand.value_too, hand.direction_in_line = True, False
    right, wrong = paper(one, hand, chance, None, False), paper(one, hand, chance, slip, False)
    if right is None or wrong is None:
        return False
    now = dict(one.data)
    values = []
    for planted in (None, slip):
        now = dict(one.data)
        for part, steps in one.parts.items():
            for row in steps:
                hit = planted and (planted.part, planted.at) == (part, row.name)
                now[row.name] = value(planted.formula if planted and hit else row.formula, now)
            if part == slip.part:
                break
        values.append((now[slip.at], now[one.parts[slip.part][-1].name]))
    return all(abs(a - b) > 0.025 * max(abs(a), abs(b)) for a, b in zip(*values, strict=True))


def measure_wrong(report: Report, one: Drawn, slip: Slip, hand: Hand, chance: random.Random, whole: bool) -> None:
    """A planted mistake: its place found, itself named, nothing said that is not so; later parts carried."""
    sheet = paper(one, hand, chance, slip, whole)
    if sheet is None:
        return
    table = "wrong working" if whole else "wrong answer alone"
    chapter = one.key.split(".")[0]
    done = marked(one, sheet)
    verdict = done.get(slip.part)
    if verdict is None:
        return
    told = said(verdict)
    entry = sheet.answers[slip.part]
    example = (
        f"{one.key} {one.request['inputs']} {slip.part}: {slip.at} = {slip.formula} (line {sheet.line})"
        f" {shown(entry, verdict)}"
    )
    lines = [int(n) for n in re.findall(r"Line (\d+) of your working", told)]
    plain = re.sub(r"The direction should be: .*?\.|“.*?”|Line \d+ of your working", "", told)
    named = re.search(slip.words, plain, re.IGNORECASE) is not None
    place = (
        sheet.line in lines
        or verdict["step"] == slip.at
        or any(k.endswith(f"@{slip.at}") for f in verdict["fits"] for k in f["keys"])
    )
    if verdict["earned"] == verdict["possible"]:
        outcome = "WRONG MARKED RIGHT"
    elif whole and lines and sheet.line not in lines and lines[0] != sheet.line + 1:
        outcome = "FALSE ACCUSATION"
    elif place and named:
        outcome = "place and mistake"
    elif place:
        outcome = "place"
    elif named:
        outcome = "mistake"
    elif len(verdict["fits"]) == 1:
        outcome = "ANOTHER NAME"
    else:
        outcome = "neither"
    report.note(chapter, table, outcome, example)
    after = list(one.parts)[list(one.parts).index(slip.part) + 1 :]
    for part in after:
        later = done[part]
        full = later["earned"] == later["possible"]
        report.note(
            chapter,
            "carried on",
            "full marks" if full else "LOST",
            f"{one.key} {one.request['inputs']} {slip} | {sheet.answers[slip.part]} | {part}"
            f" {shown(sheet.answers[part], later)}",
        )


def measure_laws(report: Report, only: tuple[str, ...]) -> None:
    """Laws in learners' own sentences, full ones and ones that lack a point or turn it."""
    seen: set[tuple[str, str]] = set()
    for key in QUESTIONS:
        if not key.startswith(only):
            continue
        drew = ask("practice", {"question": key, "level": 1, "seed": 1})
        request = {name: drew[name] for name in ("question", "inputs", "find", "variant")}
        for part in ask("sheet", request)["parts"]:
            if part["kind"] != "state":
                continue
            fits = sorted((name for name in LAWS if name in part["ask"]), key=len)
            if not fits:
                report.note(key.split(".")[0], "laws", "unknown", part["ask"])
                continue
            if (key.split(".")[0], fits[-1]) in seen:
                continue
            seen.add((key.split(".")[0], fits[-1]))
            both = [one + more for one, more in zip(LAWS[fits[-1]], MORE_LAWS.get(fits[-1], ((), ())), strict=True)]
            for right, sentences in zip((True, False), both, strict=True):
                for sentence in sentences:
                    reply = ask("mark", {**request, "answers": {part["part"]: {"statement": sentence}}})
                    verdict = next(p for p in reply["parts"] if p["part"] == part["part"])
                    full = verdict["earned"] == verdict["possible"]
                    table = "law stated rightly" if right else "law misstated"
                    outcome = (
                        ("full marks" if full else "NOT FULL") if right else ("FULL MARKS" if full else "not full")
                    )
                    report.note(
                        key.split(".")[0],
                        table,
                        outcome,
                        f"{fits[-1]}: {sentence} -> {verdict['earned']}/{verdict['possible']} {said(verdict)}",
                    )


def main() -> None:
    """Measure and print."""
    asked = argparse.ArgumentParser()
    asked.add_argument("--draws", type=int, default=2, help="draws of a question and level")
    asked.add_argument("--seed", type=int, default=7)
    asked.add_argument("--only", default="")
    asked.add_argument("--show", type=int, default=10)
    args = asked.parse_args()
    if not 0 <= args.seed < 1000:
        asked.error("the seed is a whole number from 0 to 999: a thousand drawn questions belong to each")
    only = tuple(args.only.split(","))
    report = Report()
    drew: Counter[str] = Counter()
    for key in QUESTIONS:
        if not key.startswith(only):
            continue
        for level in (1, 2, 3):
            for n in range(args.draws):
                one = next((d for s in range(12) if (d := drawn(key, level, args.seed * 1000 + n * 50 + s))), None)
                if one is None:
                    continue
                drew[key] += 1
                chance = random.Random(f"{args.seed} {key} {level} {n}")
                measure_right(report, one, Hand.of(chance, False), chance, "right working")
                measure_right(report, one, Hand.of(chance, True), chance, "right working, letters of one's own")
                measure_right(report, one, Hand.typist(chance), chance, "right working, plain keyboard")
                for slip in slips(one):
                    if differs(one, slip, chance):
                        measure_wrong(report, one, slip, Hand.of(chance, False), chance, whole=True)
                        measure_wrong(report, one, slip, Hand.of(chance, False), chance, whole=False)
    measure_laws(report, only)
    print("not drawn:", [key for key in QUESTIONS if key.startswith(only) and not drew[key]])
    show(report, args.show)


def show(report: Report, examples: int) -> None:
    """The tables by chapter, then examples of what failed."""
    for table, chapters in report.counts.items():
        print(f"== {table}")
        whole: Counter[str] = Counter()
        for chapter, counts in chapters.items():
            print(
                f"{chapter:12}{sum(counts.values()):6}  " + ", ".join(f"{n} {what}" for what, n in counts.most_common())
            )
            whole.update(counts)
        total = sum(whole.values())
        print(f"{'all':12}{total:6}  " + ", ".join(f"{n} {what} ({n / total:.1%})" for what, n in whole.most_common()))
    for what, lines in sorted(report.examples.items()):
        if what.endswith((": full marks", "place and mistake", "not full")):
            continue
        print(f"\n-- {what}: {len(lines)}")
        for line in random.Random(1).sample(lines, min(examples, len(lines))):
            print("  ", line)


if __name__ == "__main__":
    main()
