"""The reader's decimal sign, in everything the booklet writes: looked for in the finished text, as a reader sees it."""

import json
import math
import re
from collections.abc import Iterator
from html.parser import HTMLParser
from itertools import islice, zip_longest
from typing import Any

import pytest

from calc import desk
from calc.figures import Figure, Segment, Text
from calc.language.decimal_sign import in_sign, sentence_in_sign
from calc.language.expressions import ExpressionError, equation, expression
from calc.model.constants import Settings
from calc.model.questions import Choice, Part
from calc.practice.drawing import DRAWS
from calc.renderings import svg, tikz
from calc.topics import find, question_keys, topics
from calc.working.reading import read
from calc.working.working import run, sized

KEYS = question_keys()
SIGNS = ("comma", "point")
NUMBERED = re.compile(
    r"^\d+\.\d+$|\*\*\d+\.\d+\*\*|\\textbf\{\d+\.\d+\}|\\rule\{.*?\}\{.*?\}"
)  # parts of a paper, such as 2.1, and lengths of LaTeX


def ask(operation: str, **data: object) -> dict[str, Any]:
    """One request through the JSON boundary."""
    reply = json.loads(desk.answer(json.dumps({"operation": operation, "data": data})))
    assert isinstance(reply, dict)
    return reply


class _Visible(HTMLParser):
    """What a reader sees or hears of a page, and its formulas."""

    def __init__(self) -> None:
        super().__init__()
        self.words: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.words += [value or "" for name, value in attrs if name in ("alttext", "title", "aria-label")]

    def handle_data(self, data: str) -> None:
        self.words.append(data)


def seen(page: str) -> Iterator[str]:
    """The texts of a page in HTML, without the coordinates of its drawings."""
    parser = _Visible()
    parser.feed(page)
    yield from parser.words


def seen_in_latex(source: str) -> Iterator[str]:
    """The lines of a LaTeX source, of a TikZ picture only its labels."""
    for line in source.splitlines():
        if re.match(r"\\(draw|fill|begin\{tikz)", line):
            continue
        node = re.match(r"\\node\[.*?\] at \(.*?\) (\{.*\});$", line)
        yield node[1] if node else line


def wrong(texts: Iterator[str], sign: str) -> list[str]:
    """The texts in which a number has the other decimal sign."""
    other = r"\d\.\d" if sign == "comma" else r"\d,\d|\d\{,\}\d"
    return [text for text in texts if re.search(other, text)]


def cases(key: str) -> Iterator[dict[str, object]]:
    """The example of a question, asked for each of its unknowns and with each of its choices."""
    _, question = find(key)
    plain = {"question": key, "inputs": dict(question.example)}
    yield plain
    values = run(question.plan(read(question, question.example).data), Settings().constants())
    for unknown in question.unknowns:
        typed = dict(question.example)
        for name in question.unknowns:
            if not typed.get(name) and name in values:
                typed[name] = f"{abs(values[name])!r}"
        yield {"question": key, "inputs": {**typed, unknown: ""}, "find": unknown}
    for item in question.fields:
        if isinstance(item, Choice):
            for choice, _ in item.options:
                yield {**plain, "inputs": {**question.example, item.name: choice}}


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize("key", KEYS)
def test_every_answer_keeps_the_readers_sign(key: str, sign: str) -> None:
    """Every question, unknown and choice: no number of an answer or a refusal has the other sign."""
    # The comma is what every other test of an answer reads: here the example is enough.
    for case in islice(cases(key), 1 if sign == "comma" else None):
        reply = ask("solve", **case, settings={"comma": sign}, **{"as": ["html", "text", "latex"]})
        if not reply["ok"]:
            assert wrong(iter(error["message"] for error in reply["errors"]), sign) == []
            continue
        data = reply["data"]
        assert wrong(seen(data["html"]), sign) == []
        assert wrong(iter(data["text"].splitlines()), sign) == []
        assert wrong(seen_in_latex(data["latex"]), sign) == []
        assert wrong(iter([data["spoken"], *data["warnings"]]), sign) == []


def answers_of(key: str) -> Iterator[dict[str, dict[str, object]]]:
    """Answers of many kinds: twice the right one, a wrong prefix, no unit, a wrong unit, letters, and known
    mistakes."""
    _, question = find(key)
    plan = question.plan(read(question, question.example).data)
    values = run(plan, Settings().constants())
    parts = [part for part in plan.parts if part.kind == "calculate"]
    units = {step.makes: step.unit for step in plan.steps}
    shown = {part.key: values[part.answers] for part in parts}
    for change in (lambda x: 2 * x, lambda x: 1000 * x, lambda x: x, lambda x: -x):
        for unit in (True, False):
            yield {
                part.key: {"value": f"{change(shown[part.key]):.4e} {units[part.answers] if unit else ''}"}
                for part in parts
                if units[part.answers] != "°"
            }
    yield {part.key: {"value": "abc", "substitution": "4,5 apples"} for part in parts}
    yield {part.key: {"value": "3 kg", "direction": "sideways"} for part in parts}
    # One known mistake of each part at a time: every part is marked for itself.
    for several in zip_longest(*(list(mistaken(part, values)) for part in parts)):
        yield {part.key: entry for part, entry in zip(parts, several, strict=True) if entry}


def mistaken(part: Part, values: dict[str, float]) -> Iterator[dict[str, object]]:
    """An entry for each known mistake of a part, with the value it leads to."""
    for step in part.steps:
        for mistake in step.mistakes:
            if mistake.turns or step.unit == "°":
                continue
            try:
                value = expression(mistake.instead).value(sized(values, step.sizes))
            except ExpressionError:
                continue
            if math.isfinite(value):
                typed = f"{value:.4e} {step.unit}"
                yield {"value": typed} if step.makes == part.answers else {"steps": {step.makes: typed}}


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize("key", KEYS)
def test_sheets_and_marks_keep_the_readers_sign(key: str, sign: str) -> None:
    """What a learner is told of many wrong answers, and the sheet they are typed in, has one sign."""
    question = {
        "question": key,
        "inputs": dict(find(key)[1].example),
        "settings": {"comma": sign},
    }
    sheet = ask("sheet", **question)["data"]
    assert wrong(seen(sheet["html"]), sign) == []
    for answers in islice(answers_of(key), 3 if sign == "comma" else None):
        marked = ask("mark", **question, answers=answers)["data"]
        told = [problem["message"] for problem in marked["problems"]]
        for part in marked["parts"]:
            told += [*part["sentences"], part["head"], part["where"]]
            told += [words for fit in part["fits"] for words in (*fit["say"], *fit["why"], fit["value"])]
        pages = [*seen(marked["html"]), *told]
        # What was typed is quoted as it was typed.
        assert wrong((re.sub('“[^”]*”|"[^"]*"', "", words) for words in pages), sign) == []


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize("key", KEYS)
def test_practice_keeps_the_readers_sign(key: str, sign: str) -> None:
    """Hints and diagrams of drawn questions have one sign."""
    for level in (1, 3) if sign == "point" else (3,):
        drawn = ask("practice", question=key, seed=3, level=level, settings={"comma": sign})["data"]
        pages = [drawn["figure"], *(page for hint in drawn["hints"] for page in hint["html"])]
        assert wrong((words for page in pages for words in seen(page)), sign) == []
        solved = ask(
            "solve",
            settings={"comma": sign},
            **{name: drawn[name] for name in ("question", "inputs", "find", "variant")},
        )
        assert wrong(seen(solved["data"]["html"]), sign) == []


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize("topic", list(topics()))
def test_papers_keep_the_readers_sign(topic: str, sign: str) -> None:
    """Question papers and memos in every notation have one sign, data sheet and diagrams included."""
    notations = ["paper_html", "memo_html", "markdown", "markdown_memo", "latex", "latex_memo"]
    reply = ask(
        "paper",
        topics=[topic],
        count=min(8, 2 * len(topics()[topic].questions)),
        seed=5,
        level=2,
        draw=DRAWS,
        settings={"comma": sign},
        **{"as": notations},
    )["data"]
    for name in notations:
        texts = seen_in_latex(reply[name]) if name.startswith("latex") else seen(reply[name])
        assert wrong((NUMBERED.sub("", words) for words in texts), sign) == [], name


def test_numbers_inside_formulas_follow_the_sign() -> None:
    """A formula's own decimals have the reader's sign, in symbols and with numbers put in."""
    line = equation("E = 0.5*m*v^2")
    assert line.maths().text == "E = 0,5mv²"
    assert line.maths().tex == "E = 0{,}5 m v^{2}"
    assert line.maths(comma=False).text == "E = 0.5mv²"
    assert line.maths(comma=False).tex == "E = 0.5 m v^{2}"


def test_figures_follow_the_sign() -> None:
    """Labels, notes and the text alternative of a drawing follow, its coordinates do not."""
    drawn = Figure(
        "Scale 2,5",
        "1 cm stands for 2,5 N.",
        (Segment((0.5, 0.5), (2.5, 1.5)), Text((0.0, 0.0), "3,60 N")),
        ("0,2 m apart.",),
    )
    pointed = in_sign(drawn, False)
    assert pointed.items[0] == drawn.items[0]
    assert (pointed.title, pointed.description, pointed.notes) == (
        "Scale 2.5",
        "1 cm stands for 2.5 N.",
        ("0.2 m apart.",),
    )
    assert "3.60 N" in svg.render(pointed)
    assert "3.60 N" in tikz.render(pointed).replace("~", " ")
    assert in_sign(drawn, True) is drawn


def test_quoted_text_stays_as_typed() -> None:
    """A refusal shows the reader's own sign, and what was typed as it was typed."""
    sentence = '"1,5 apples" has no unit of length. Type one like 0,5 m.'
    assert sentence_in_sign(sentence, False) == '"1,5 apples" has no unit of length. Type one like 0.5 m.'
    assert sentence_in_sign(sentence, True) == sentence


def test_refusals_at_the_desk_follow_the_sign() -> None:
    """The sentence beside a box has the reader's sign, for a plan's refusal and for unreadable text."""
    leaky = {
        "question": "equilibrium.hovering-ball",
        "inputs": {**find("equilibrium.hovering-ball")[1].example, "f": "1"},
    }
    for sign, half in (("comma", "0,5"), ("point", "0.5")):
        errors = ask("solve", **leaky, settings={"comma": sign})["errors"]
        assert errors[0]["message"] == f"Charge leaks away: type a part between 0 and 1, such as {half}."
