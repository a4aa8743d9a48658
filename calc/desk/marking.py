"""The requests about marking: the sheet a learner fills in, and the marks for what was typed.

``sheet`` data: question, inputs, find, settings, variant. ``mark`` data: the same and
answers: {part: {value, direction, steps: {name: text}, formula: key or {step: key},
substitution: text or {step: text}, working: lines of text, statement: a sentence,
said: [indices]}}. All optional, all text as typed.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc.desk.requests import asked_for
from calc.language.decimal_sign import sentence_in_sign
from calc.marking.marking import PartMarked, formulas, mark_question, tick_items
from calc.marking.sentences import fits, head, sentence_text, sentences, where_words
from calc.marking.suspects import Chain
from calc.model.constants import Settings
from calc.model.questions import Part, Plan, Refusal
from calc.practice.fair import fair_scene
from calc.renderings import marking as rendering
from calc.renderings import sheet as rendering_sheet
from calc.working.reading import Read
from calc.working.working import run


def mark(data: Mapping[str, Any]) -> dict[str, Any]:
    """Mark a learner's answers. Reply: parts (one verdict each), earned, possible, self_marked, problems, html.

    A verdict: part, kind, state, head, sentences, step, where, fits, marks, earned, possible, html.
    Raises Refusal or Refusals for data that cannot be worked; an unreadable answer is a problem of its field.
    """
    key, found, plan = _worked(data)
    answers = data.get("answers", {})
    if not isinstance(answers, Mapping):
        raise Refusal(None, "The answers of this request cannot be read. Type them again.")
    marked = mark_question(plan, found, answers)
    several, comma = len(plan.parts) > 1, found.data.settings.comma
    verdicts = [
        verdict(part, str(index) if several else "", found.data.settings) for index, part in enumerate(marked, 1)
    ]
    ticked = sum(part.earned for part in marked if part.state == "self-marked")
    return {
        "question": key,
        "parts": verdicts,
        "earned": sum(part.earned for part in marked),
        "possible": sum(part.possible for part in marked),
        "self_marked": ticked,
        "problems": [
            {"field": problem.field, "message": sentence_in_sign(problem.sentence, comma)}
            for part in marked
            for problem in part.problems
        ],
        "html": rendering.total(verdicts, ticked),
    }


def verdict(marked: PartMarked, number: str, settings: Settings) -> dict[str, Any]:
    """One part's verdict as plain data, with its rendering under ``html``."""
    style = settings.style
    told = fits(marked, style)
    said = sentences(marked, style)
    shown = {
        "part": marked.part.key,
        "number": number,
        "kind": marked.part.kind,
        "state": marked.state,
        "head": head(marked),
        "sentences": [sentence_text(sentence) for sentence in said],
        "step": marked.step,
        "where": where_words(number, marked.part, marked.step),
        "fits": [
            {
                "keys": [f"{slip.key}@{slip.at}" for slip in fit.slips],
                "say": list(line.say),
                "why": list(line.why),
                "value": line.value.text,
            }
            for fit, line in zip(marked.blamed.fits if marked.blamed else (), told, strict=False)
        ],
        "marks": [
            {
                "step": mark.step,
                "kind": mark.kind,
                "earned": mark.earned,
                "possible": mark.possible,
                "reason": mark.reason,
            }
            for mark in marked.marks
        ],
        "earned": marked.earned,
        "possible": marked.possible,
        "problems": [{"field": p.field, "message": sentence_in_sign(p.sentence, style.comma)} for p in marked.problems],
    }
    shown["html"] = rendering.part(shown, said, told)
    return shown


def sheet(data: Mapping[str, Any]) -> dict[str, Any]:
    """The answer sheet of a question with these data. Reply: html, parts with what may be typed in each, and
    ``scene``: whether the drawing of the data tells nothing that is asked, and may be seen before."""
    key, found, plan = _worked(data)
    values = run(plan, found.data.settings.constants())
    lines = [_part_sheet(part, plan, found, values) for part in plan.parts]
    return {
        "question": key,
        "parts": lines,
        "scene": plan.scene is not None and fair_scene(plan, found) == plan.scene(values),
        "html": rendering_sheet.render(key, plan, lines, comma=found.data.settings.comma),
    }


def _part_sheet(part: Part, plan: Plan, found: Read, values: dict[str, float]) -> dict[str, Any]:
    line: dict[str, Any] = {
        "part": part.key,
        "kind": part.kind,
        "ask": part.ask,
        "marks": part.marks,
    }
    if part.kind != "calculate":
        return {**line, "tick": [words for words, _ in tick_items(part)]}
    chain = Chain(plan, found.data.settings.constants(), part.answers)
    where = chain.direction
    return {
        **line,
        "answer": part.answers,
        "directions": [list(option) for option in where.options] if where else [],
        "angle": bool(where and where.angle is not None),
        "steps": [step.makes for step in part.steps if step.makes != part.answers],
        "formulas": {step.makes: [list(offer) for offer in formulas(step)] for step in part.steps if formulas(step)},
    }


def _worked(data: Mapping[str, Any]) -> tuple[str, Read, Plan]:
    """The question of a request with its data read and planned."""
    topic, question, found = asked_for(data)
    return f"{topic.key}.{question.key}", found, question.plan(found.data)
