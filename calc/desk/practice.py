"""The requests about practice: a drawn question with its hints, and what to revise next.

``practice`` data: question (``topic.question``, or a topic's key for any of its questions), seed,
level, draw (the number of the rule it is drawn by; 1 without it), settings. ``revise`` data: today
(``2026-03-09``), history: {question: [{day, level, earned,
possible, mistakes}]}. No state is kept here: the page keeps it, on the reader's own device.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

from calc import topics
from calc.desk.requests import read_settings
from calc.model.questions import Question, Refusal, Topic
from calc.practice.drawing import DRAWS, LEVELS, Chance, as_request, draw, offered
from calc.practice.fair import fair_scene
from calc.practice.hints import hints
from calc.practice.revision import Attempt, Revision, revise
from calc.renderings import html
from calc.renderings import practice as rendering
from calc.working.reading import read

LARGEST_SEED = 999_999
FRESH = 3  # questions not tried yet that are offered


def practice(data: Mapping[str, Any]) -> dict[str, Any]:
    """A drawn question. Reply: a request for ``sheet``, ``mark`` and ``solve`` (question, inputs, find, variant),
    seed, level, title, figure (html, '' where it would tell the answer) and hints: [{part, html: [...]}].
    """
    seed = _whole(
        data.get("seed"), 0, LARGEST_SEED, f"The number of a drawn question is a whole number from 0 to {LARGEST_SEED}."
    )
    level = _whole(data.get("level", 1), 1, 3, "There are three levels: 1, 2 and 3.")
    rule = _whole(
        data.get("draw", 1),
        1,
        DRAWS,
        "This link was made by a newer booklet. Pick a question from the list.",
    )
    topic, question = _asked(str(data.get("question", "")), seed, level, rule)
    drawn = draw(topic, question, seed, level, rule)
    settings = read_settings(data.get("settings", {}))
    found = read(question, drawn.inputs, drawn.find, settings, drawn.variant)
    plan = question.plan(found.data)
    parts = {part.key: str(index) for index, part in enumerate(plan.parts, 1)}
    several = len(plan.parts) > 1
    return {
        **as_request(drawn),
        "seed": seed,
        "level": level,
        "draw": rule,
        "title": f"{topic.title}: {question.title}",
        "figure": html.figure(fair_scene(plan, found)),
        "hints": [
            {
                "part": key,
                "number": parts[key] if several else "",
                "html": [rendering.hint(hint) for hint in told],
            }
            for key, told in hints(topic, question, found, plan).items()
        ],
    }


def _asked(key: str, seed: int, level: int, rule: int) -> tuple[Topic, Question]:
    """The question of a key; of a topic's key, one of its questions: the same seed gives the same one."""
    topic = topics.topics().get(key)
    if topic is not None:
        chance = Chance(f"{key}/{seed}/{level}")
        questions = offered(topic, rule)
        return topic, questions[int(chance.random() * len(questions))]
    try:
        return topics.find(key)
    except KeyError:
        raise Refusal(None, "There is no such question to practise. Pick one from the list.") from None


def _whole(value: object, low: int, high: int, sentence: str) -> int:
    if isinstance(value, str) and value.isascii() and value.isdigit() and len(value) < 10:
        value = int(value)
    if isinstance(value, bool) or not isinstance(value, int) or not low <= value <= high:
        raise Refusal(None, sentence)
    return value


def revision(data: Mapping[str, Any]) -> dict[str, Any]:
    """What to revise next. Reply: html (a list), next ({question, level} or None), due (how many), late (days)."""
    today = _day(data.get("today"))
    history = _history(data.get("history", {}))
    lines = revise(history, today)
    due = [line for line in lines if line.late >= 0]
    fresh = _fresh(history)
    best = due[0] if due else None
    offer = (
        {"question": best.question, "level": best.level}
        if best
        else (
            {"question": fresh[0], "level": 1}
            if fresh
            else {"question": lines[0].question, "level": lines[0].level}
            if lines
            else None
        )
    )
    rows = [rendering.RevisionRow(_title(line.question), line, _slip(line)) for line in lines]
    return {
        "html": rendering.revision(rows, [(key, _title(key)) for key in fresh]),
        "next": offer,
        "due": len(due),
        "late": [line.late for line in lines],
    }


def _title(key: str) -> str:
    topic, question = topics.find(key)
    return f"{topic.title}: {question.title}"


def _fresh(history: Mapping[str, object]) -> list[str]:
    """A few questions not tried yet: first of the topics already begun, in the booklet's order."""
    begun = {key.partition(".")[0] for key in history}
    waiting = [key for key in topics.question_keys() if key not in history]
    return sorted(waiting, key=lambda key: key.partition(".")[0] not in begun)[:FRESH]


def _slip(line: Revision) -> str:
    """What was said about a recognised mistake of the last try, if the topic declares it."""
    _, question = topics.find(line.question)
    plan = question.plan(read(question, question.example).data)
    known = {
        name: mistake.said
        for mistake in (*plan.mistakes, *(m for step in plan.steps for m in step.mistakes))
        for name in mistake.names
    }
    return next((known[key] for key in line.last.mistakes if key in known), "")


def _history(typed: object) -> dict[str, list[Attempt]]:
    """Attempts by question; questions this booklet does not (or no longer) have are left out."""
    damaged = Refusal(None, "The progress kept on this device cannot be read. Export it, wipe it, and begin again.")
    if not isinstance(typed, Mapping):
        raise damaged
    history: dict[str, list[Attempt]] = {}
    for name, entries in typed.items():
        if not isinstance(entries, list):
            raise damaged
        key = _now(str(name))
        if not key or not entries:
            continue
        history.setdefault(key, [])
        for entry in entries:
            if not isinstance(entry, Mapping):
                raise damaged
            level, earned, possible = (entry.get(name) for name in ("level", "earned", "possible"))
            mistakes = entry.get("mistakes", [])
            if (
                level not in LEVELS
                or not isinstance(earned, int)
                or not isinstance(possible, int)
                or not 0 <= earned <= possible
                or not isinstance(mistakes, list)
            ):
                raise damaged
            day = _day(entry.get("day"))
            history[key].append(Attempt(day, level, earned, possible, tuple(map(str, mistakes))))
    return history


def _now(key: str) -> str:
    """The key that a question has now; '' where this booklet does not have it."""
    try:
        topic, question = topics.find(key)
    except KeyError:
        return ""
    return f"{topic.key}.{question.key}"


def _day(typed: object) -> date:
    try:
        return date.fromisoformat(str(typed))
    except ValueError:
        raise Refusal(None, f"{str(typed)[:20]!r} is not a day. A day is written like 2026-03-09.") from None
