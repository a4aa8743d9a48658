"""The one boundary between a page and the physics: JSON text in, JSON text out.

Request: ``{"operation": "solve", "data": {...}}``. Reply: ``{"ok": true, "data": {...}}`` or
``{"ok": false, "errors": [{"field": "r" or null, "message": "a sentence"}]}``. An error that is a question
with few answers has ``"choices": [{"words": "12 cm", "text": "12 cm"}]``: what each puts into the box.
A request whose data have ``"readback": true`` gets besides, answered or refused, what was understood of each box:
``"readback": {"r": {"unit": "cm", "line": "= 0,12 m"}}``.
An operation is a function from a dict to a dict; it may raise Refusal or Refusals.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from typing import Any, TypedDict

from calc import topics
from calc.desk import form as form_desk
from calc.desk import marking as marking_desk
from calc.desk import papers as papers_desk
from calc.desk import practice as practice_desk
from calc.desk.form import read_back
from calc.desk.requests import asked_for, comma_of, find_question, is_text, read_settings
from calc.language.decimal_sign import sentence_in_sign
from calc.model.answers import AnswerShown, WorkedAnswer
from calc.model.questions import Question, Refusal
from calc.practice.drawing import LEVELS, draw
from calc.renderings import form, html, latex, text
from calc.working.reading import Read, Refusals, read
from calc.working.working import work

Operation = Callable[[Mapping[str, Any]], dict[str, Any]]

LONGEST_REQUEST = 100_000
_HALVES = re.compile("[\ud800-\udfff]")
OURS = (
    "The booklet could not work this out, and the mistake is its own. "
    "Change a number or leave out what is not needed, and report it with the link of this page."
)

topics.topics()  # found once, at import: a memory image of Python has no files to look through later


def answer(request: str) -> str:
    """Answer one request. Never raises: whatever is wrong comes back as a sentence."""
    return json.dumps(_answer(_whole(request)), ensure_ascii=False, sort_keys=True)


def _whole(text: str) -> str:
    """``text`` with halves of characters, which nothing can pass on, replaced by a sign for them."""
    return _HALVES.sub("\N{REPLACEMENT CHARACTER}", text)


def _strings(entry: Any) -> Any:
    """A request with the same done to the characters its escapes stand for."""
    if isinstance(entry, str):
        return _whole(entry)
    if isinstance(entry, list):
        return [_strings(item) for item in entry]
    if isinstance(entry, dict):
        return {_whole(name): _strings(item) for name, item in entry.items()}
    return entry


def _answer(request: str) -> dict[str, Any]:
    if len(request) > LONGEST_REQUEST:
        return _refused(Refusal(None, "That is too much text to read. Shorten it and try again."))
    try:
        asked = _strings(json.loads(request))
        operation = operations()[asked["operation"]]
        data = asked.get("data", {})
        if not isinstance(data, dict):
            raise TypeError("data must be an object")
    except (ValueError, KeyError, TypeError, RecursionError):
        return _refused(Refusal(None, "This page asked something the booklet does not know. Reload the page."))
    back = {"readback": read_back(data)} if data.get("readback") is True else {}
    return {**_reply(operation, data), **back}


def _reply(operation: Operation, data: dict[str, Any]) -> dict[str, Any]:
    try:
        return {"ok": True, "data": operation(data)}
    except Refusal as refusal:
        return _refused(refusal, comma=comma_of(data))
    except Refusals as several:
        return _refused(*several.refusals, comma=comma_of(data))
    except (ValueError, ArithmeticError) as problem:
        sentence = "These numbers have no answer here: a step has no real, finite value. Check the sizes and prefixes."
        return _refused(Refusal(None, sentence), fault=str(problem))
    except Exception as problem:  # whatever it is, a page waits for an answer
        return _refused(Refusal(None, OURS), fault=repr(problem))


def _refused(*refusals: Refusal, fault: str = "", comma: bool = True) -> dict[str, Any]:
    errors = [_told(refusal, comma) for refusal in refusals]
    return {"ok": False, "errors": errors, **({"fault": fault} if fault else {})}


def _told(refusal: Refusal, comma: bool) -> dict[str, Any]:
    sentence = sentence_in_sign(refusal.sentence, comma)
    told: dict[str, Any] = {"field": refusal.field, "message": sentence}
    if refusal.picks:
        told["choices"] = [{"words": sentence_in_sign(pick.words, comma), "text": pick.text} for pick in refusal.picks]
    return told


NOTATIONS: Mapping[str, Callable[[WorkedAnswer], str]] = {
    "html": html.render,
    "text": text.render,
    "latex": latex.render,
}


def operations() -> dict[str, Operation]:
    """Every operation by name."""
    return {
        "solve": solve,
        "boxes": form_desk.boxes,
        "drawings": drawings,
        "rehearse": rehearse,
        "settings": settings,
        "sheet": marking_desk.sheet,
        "mark": marking_desk.mark,
        "practice": practice_desk.practice,
        "revision": practice_desk.revision,
        "paper": papers_desk.paper,
    }


def solve(data: Mapping[str, Any]) -> dict[str, Any]:
    """Work one question. data: question, inputs (typed text by field), find, settings, variant, typed, as, drawn.

    Without ``drawn`` (true by default) the html has empty places for its figures, which ``drawings`` fills:
    words and lines are there at once, and figures only for numbers the reader stays with. So it is with the lines
    of parts that are folded, where ``opened`` lists the keys of those that are not.
    ``as`` lists the notations wanted: html (the usual one), text, latex. ``typed`` names the boxes
    whose bare number may be asked about (``charges.0.x`` for a cell). Reply: the worked answer in each
    notation, ``spoken`` (one line for a screen reader), ``asked`` (the unknown), warnings,
    ``understood`` (bare numbers with the unit they were taken in, by box) and ``notes`` (like errors).
    """
    question, found, worked = _worked(data)
    wanted = data.get("as", ["html"])
    if not isinstance(wanted, list) or not all(isinstance(name, str) and name in NOTATIONS for name in wanted):
        raise Refusal(None, f"An answer is shown as {', '.join(NOTATIONS)}, and nothing else.")
    made = {name: NOTATIONS[name](worked) for name in dict.fromkeys(wanted) if name != "html"}
    if "html" in wanted:
        drawn = data.get("drawn") is not False
        made["html"] = html.render(worked, drawn=drawn, opened=_opened(data), **_laid_out(question, found, worked))
    return {
        **made,
        "spoken": "; ".join(_spoken(shown) for shown in worked.answers) or NO_VALUE,
        "asked": worked.asked,
        "warnings": list(worked.warnings),
        "understood": dict(found.understood),
        "notes": [_told(note, comma_of(data)) for note in found.notes],
    }


def drawings(data: Mapping[str, Any]) -> dict[str, Any]:
    """What ``solve`` left for later. data: as there. Reply: ``drawings``, SVG by the name of its place.

    With ``opened`` also ``parts``: html of the folded parts by key, with empty places for their figures.
    """
    question, found, worked = _worked(data)
    opened = _opened(data)
    parts = {} if opened is None else html.folded_parts(worked, opened=opened, **_laid_out(question, found, worked))
    return {"drawings": html.drawings(worked), **({} if opened is None else {"parts": parts})}


def rehearse(data: Mapping[str, Any]) -> dict[str, Any]:
    """Work a question with numbers nobody sees, so that the shapes of its lines are known before a reader types.

    data: question, turn (from 0). Reply: ``more``, whether there is a turn after this one.
    """
    topic, question = find_question(data)
    turn = data.get("turn")
    if not isinstance(turn, int) or not 0 <= turn < REHEARSALS:
        raise Refusal(None, f"A question is rehearsed in turns numbered from 0 to {REHEARSALS - 1}.")
    drawn = draw(topic, question, 1000 + turn, LEVELS[turn % len(LEVELS)], first=True)
    found = read(question, drawn.inputs, drawn.find, variant=drawn.variant)
    html.render(work(topic, question, found), drawn=False)
    return {"more": turn + 1 < REHEARSALS}


REHEARSALS = 9  # most questions have fewer unknowns; the signs and powers of ten of their numbers differ besides


class _LaidOut(TypedDict):
    open_parts: bool
    by_drawing: str


def _laid_out(question: Question, found: Read, worked: WorkedAnswer) -> _LaidOut:
    """How a page shows a worked answer: whole questions part by part, the choices of drawing beside the drawing."""
    choices = form.by_drawing(worked.question, question, found.data.choices)
    return {"open_parts": not question.scenario, "by_drawing": choices}


def _opened(data: Mapping[str, Any]) -> tuple[str, ...] | None:
    """The parts that a page has open; None where it wants all."""
    opened = data.get("opened")
    return tuple(filter(is_text, opened)) if isinstance(opened, list) else None


def _worked(data: Mapping[str, Any]) -> tuple[Question, Read, WorkedAnswer]:
    return _kept(json.dumps({name: data[name] for name in ASKED if name in data}))


# What a worked answer hangs on.
ASKED = ("question", "inputs", "find", "settings", "variant", "typed")


@lru_cache(maxsize=2)
def _kept(asked: str) -> tuple[Question, Read, WorkedAnswer]:
    """The worked answer of a request, kept for its drawings, which are asked for next."""
    topic, question, found = asked_for(json.loads(asked))
    return question, found, work(topic, question, found)


# What a screen reader hears of an answer that is a drawing or a sentence.
NO_VALUE = "The answer below is made from these numbers."


def settings(data: Mapping[str, Any]) -> dict[str, Any]:
    """Check typed settings; the reply is empty, a wrong one is refused field by field."""
    read_settings(data.get("settings", {}))
    return {}


def _spoken(shown: AnswerShown) -> str:
    where = f", {shown.direction.words}" if shown.direction else ""
    return f"{shown.spoken}{where}"


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
