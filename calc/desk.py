"""The one boundary between a page and the physics: JSON text in, JSON text out.

Request: ``{"operation": "solve", "data": {...}}``. Reply: ``{"ok": true, "data": {...}}`` or
``{"ok": false, "errors": [{"field": "r" or null, "message": "a sentence"}]}``.
An operation is a function from a dict to a dict; it may raise Refusal or Refusals.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping
from typing import Any

from calc import marking_desk, papers_desk, practice_desk, topics
from calc.answers import AnswerShown, WorkedAnswer
from calc.constants import SHEET, Settings
from calc.quantities import QuantityError, parse_quantity
from calc.questions import Refusal
from calc.reading import Refusals, read
from calc.renderings import html, latex, text
from calc.working import work

Operation = Callable[[Mapping[str, Any]], dict[str, Any]]

LONGEST_REQUEST = 100_000

topics.topics()  # found once, at import: a memory image of Python has no files to look through later


def answer(request: str) -> str:
    """Answer one request. Never raises: whatever is wrong comes back as a sentence."""
    return json.dumps(_answer(request), ensure_ascii=False, sort_keys=True)


def _answer(request: str) -> dict[str, Any]:
    if len(request) > LONGEST_REQUEST:
        return _refused(Refusal(None, "That is too much text to read. Shorten it and try again."))
    try:
        asked = json.loads(request)
        operation = operations()[asked["operation"]]
        data = asked.get("data", {})
        if not isinstance(data, dict):
            raise TypeError("data must be an object")
    except (ValueError, KeyError, TypeError, RecursionError):
        return _refused(
            Refusal(None, "This page asked something the booklet does not know. Reload the page.")
        )
    try:
        return {"ok": True, "data": operation(data)}
    except Refusal as refusal:
        return _refused(refusal)
    except Refusals as several:
        return _refused(*several.refusals)
    except (ValueError, ArithmeticError) as problem:
        sentence = "These numbers have no answer here: a step has no real, finite value. Check the sizes and prefixes."
        return _refused(Refusal(None, sentence), fault=str(problem))


def _refused(*refusals: Refusal, fault: str = "") -> dict[str, Any]:
    errors = [{"field": refusal.field, "message": refusal.sentence} for refusal in refusals]
    return {"ok": False, "errors": errors, **({"fault": fault} if fault else {})}


NOTATIONS: Mapping[str, Callable[[WorkedAnswer, bool], str]] = {
    "html": lambda worked, opened: html.render(worked, open_parts=opened),
    "text": lambda worked, _: text.render(worked),
    "latex": lambda worked, _: latex.render(worked),
}


def operations() -> dict[str, Operation]:
    """Every operation by name."""
    return {
        "solve": solve,
        "settings": settings,
        "sheet": marking_desk.sheet,
        "mark": marking_desk.mark,
        "practice": practice_desk.practice,
        "revision": practice_desk.revision,
        "paper": papers_desk.paper,
    }


def find_question(data: Mapping[str, Any]) -> tuple[Any, Any]:
    """The declared topic and question named in ``data``; a refusal names what there is."""
    try:
        return topics.find(str(data.get("question", "")))
    except KeyError:
        raise Refusal(
            None, "There is no such question in this booklet. Follow a link from the contents page."
        ) from None


def solve(data: Mapping[str, Any]) -> dict[str, Any]:
    """Work one question. data: question, inputs (typed text by field), find, settings, variant, as.

    ``as`` lists the notations wanted: html (the usual one), text, latex. Reply: the
    worked answer in each of them, ``spoken`` (one line for a screen reader),
    ``asked`` (the unknown) and warnings.
    """
    topic, question = find_question(data)
    settings = read_settings(data.get("settings", {}))
    inputs = data.get("inputs", {})
    if not isinstance(inputs, dict):
        raise Refusal(None, "The numbers of this link cannot be read. Type them again.")
    found = read(question, inputs, str(data.get("find", "")), settings, variant_of(data))
    worked = work(topic, question, found)
    wanted = data.get("as", ["html"])
    if not isinstance(wanted, list) or not set(map(str, wanted)) <= set(NOTATIONS):
        raise Refusal(None, f"An answer is shown as {', '.join(NOTATIONS)}, and nothing else.")
    return {
        **{str(name): NOTATIONS[str(name)](worked, not question.scenario) for name in wanted},
        "spoken": "; ".join(_spoken(shown) for shown in worked.answers),
        "asked": worked.asked,
        "warnings": list(worked.warnings),
    }


def settings(data: Mapping[str, Any]) -> dict[str, Any]:
    """Check typed settings; the reply is empty, a wrong one is refused field by field."""
    read_settings(data.get("settings", {}))
    return {}


def _spoken(shown: AnswerShown) -> str:
    where = f", {shown.direction.words}" if shown.direction else ""
    return f"{shown.spoken}{where}"


def variant_of(data: Mapping[str, Any]) -> int:
    """The wording number of a request; 0 when it has none."""
    value = data.get("variant", 0)
    return value if isinstance(value, int) and 0 <= value < 10**9 else 0


def read_settings(typed: object) -> Settings:
    """The reader's settings: constants as typed text by name, ``decimals`` (0 to 6) and ``comma``.

    Raises Refusals, field ``settings.k`` and so on.
    """
    if not isinstance(typed, Mapping):
        return Settings()
    changed: dict[str, float] = {}
    refusals: list[Refusal] = []
    for name, line in SHEET.items():
        entry = typed.get(name, "")
        if not isinstance(entry, str) or not entry.strip():
            continue
        try:
            value = parse_quantity(entry, line.unit).value
        except QuantityError as problem:
            refusals.append(Refusal(f"settings.{name}", problem.sentence))
            continue
        if value <= 0:
            refusals.append(
                Refusal(
                    f"settings.{name}",
                    f"{line.words[0].upper()}{line.words[1:]} must be greater than zero.",
                )
            )
        else:
            changed[name] = value
    decimals = typed.get("decimals", 2)
    if isinstance(decimals, str) and decimals.isdigit():
        decimals = int(decimals)
    if not isinstance(decimals, int) or not 0 <= decimals <= 6:
        refusals.append(Refusal("settings.decimals", "Decimals: a whole number from 0 to 6."))
        decimals = 2
    if refusals:
        raise Refusals(tuple(refusals))
    return Settings(changed, decimals, typed.get("comma", True) in (True, "comma"))


def example_requests() -> Iterator[str]:
    """One request of each kind for every question: to warm up an image of Python, and to compare two Pythons."""
    for key in topics.question_keys():
        _, question = topics.find(key)
        data = {"question": key, "inputs": question.example}
        plan = question.plan(read(question, question.example).data)
        answers = {part.key: {"value": "1,5"} for part in plan.parts if part.kind == "calculate"}
        yield json.dumps({"operation": "solve", "data": {**data, "as": list(NOTATIONS)}})
        yield json.dumps({"operation": "sheet", "data": data})
        yield json.dumps({"operation": "mark", "data": {**data, "answers": answers}})
