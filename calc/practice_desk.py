"""The requests about practice: a drawn question with its hints, and what to revise next.

``practice`` data: question (``topic.question``, or a topic's key for any of its questions), seed,
level, settings. ``revise`` data: today (``2026-03-09``), history: {question: [{day, level, earned,
possible, mistakes}]}. No state is kept here: the page keeps it, on the reader's own device.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from datetime import date
from typing import Any

from calc import topics
from calc.figures import Arrow, Curve, Figure, Segment, Sphere
from calc.hints import hints
from calc.practice import LEVELS, Chance, as_request, draw
from calc.questions import Plan, Question, Refusal, Topic
from calc.reading import Read, read
from calc.renderings import html
from calc.renderings import practice as rendering
from calc.requests import read_settings
from calc.revision import Attempt, Revision, revise
from calc.working import run

LARGEST_SEED = 999_999
FRESH = 3  # questions not tried yet that are offered


def practice(data: Mapping[str, Any]) -> dict[str, Any]:
    """A drawn question. Reply: a request for ``sheet``, ``mark`` and ``solve`` (question, inputs, find, variant),
    seed, level, title, figure (html, '' where it would tell the answer) and hints: [{part, html: [...]}].
    """
    seed = _whole(data.get("seed"), 0, LARGEST_SEED, f"The number of a drawn question is a whole number from 0 to {LARGEST_SEED}.")  # fmt: skip
    level = _whole(data.get("level", 1), 1, 3, "There are three levels: 1, 2 and 3.")
    topic, question = _asked(str(data.get("question", "")), seed, level)
    drawn = draw(topic, question, seed, level)
    settings = read_settings(data.get("settings", {}))
    found = read(question, drawn.inputs, drawn.find, settings, drawn.variant)
    plan = question.plan(found.data)
    parts = {part.key: str(index) for index, part in enumerate(plan.parts, 1)}
    several = len(plan.parts) > 1
    return {
        **as_request(drawn),
        "seed": seed,
        "level": level,
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


def _asked(key: str, seed: int, level: int) -> tuple[Topic, Question]:
    """The question of a key; of a topic's key, one of its questions: the same seed gives the same one."""
    topic = topics.topics().get(key)
    if topic is not None:
        chance = Chance(f"{key}/{seed}/{level}")
        return topic, topic.questions[int(chance.random() * len(topic.questions))]
    try:
        return topics.find(key)
    except KeyError:
        raise Refusal(
            None, "There is no such question to practise. Pick one from the list."
        ) from None


def _whole(value: object, low: int, high: int, sentence: str) -> int:
    if isinstance(value, str) and value.isascii() and value.isdigit() and len(value) < 10:
        value = int(value)
    if isinstance(value, bool) or not isinstance(value, int) or not low <= value <= high:
        raise Refusal(None, sentence)
    return value


def fair_scene(plan: Plan, found: Read) -> Figure | None:
    """The scene of the data, or None where it shows what is asked: a force, a field, the sign of a charge, a value."""
    if plan.scene is None:
        return None
    values = run(plan, found.data.settings.constants())
    scene = plan.scene(values).without(found_values(plan))
    if scene is None:
        return None
    signs_asked = any("positive or negative" in part.ask for part in plan.parts) or any(
        told and {"positive", "negative"} & {key for key, _ in told.options}
        for step in plan.steps
        if (told := step.direction(values) if callable(step.direction) else step.direction)
    )
    for item in scene.items:
        if isinstance(item, Arrow) and item.kind not in ("axis", "velocity"):
            return None
        if isinstance(item, Segment | Curve) and item.kind == "fieldline":
            return None
        if isinstance(item, Sphere) and item.sign and signs_asked:
            return None
    labels = [getattr(item, "label", "") or getattr(item, "text", "") for item in scene.items]
    said = " ".join((scene.title, scene.description, *scene.notes, *map(str, labels)))
    answers = answer_values(plan, values)
    if any(unit == "°" for _, unit in answers) or any(
        math.isclose(number, abs(value), rel_tol=0.01)
        for number in map(_number, re.findall(r"\d+(?:[.,]\d+)?", said))
        for value, _ in answers
    ):
        return None
    return scene


def found_values(plan: Plan) -> set[str]:
    """Names of every value a learner has to find on the way to the answers."""
    return {step.makes for step in plan.steps} | {
        name for part in plan.parts for name in part.asked
    }


def answer_values(plan: Plan, values: Mapping[str, float]) -> list[tuple[float, str]]:
    """Value (SI) and unit of every calculated answer."""
    units = {step.makes: step.unit for step in plan.steps}
    return [(values[name], units[name]) for part in plan.parts for name in part.asked]


def _number(digits: str) -> float:
    return float(digits.replace(",", "."))


def revision(data: Mapping[str, Any]) -> dict[str, Any]:
    """What to revise next. Reply: html (a list), next ({question, level} or None), due (how many)."""
    today = _day(data.get("today"))
    history = _history(data.get("history", {}))
    lines = revise(history, today)
    due = [line for line in lines if line.late >= 0]
    fresh = _fresh(history)
    best = due[0] if due else None
    offer = (
        {"question": best.question, "level": best.level}
        if best
        else {"question": fresh[0], "level": 1}
        if fresh
        else {"question": lines[0].question, "level": lines[0].level}
        if lines
        else None
    )
    rows = [rendering.RevisionRow(_title(line.question), line, _slip(line)) for line in lines]
    return {
        "html": rendering.revision(rows, [(key, _title(key)) for key in fresh]),
        "next": offer,
        "due": len(due),
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
        f"{mistake.key}@{mistake.at}": mistake.say
        for mistake in (*plan.mistakes, *(m for step in plan.steps for m in step.mistakes))
    }
    return next((known[key] for key in line.last.mistakes if key in known), "")


def _history(typed: object) -> dict[str, list[Attempt]]:
    """Attempts by question; questions this booklet does not (or no longer) have are left out."""
    damaged = Refusal(None, "The progress kept on this device cannot be read. Export it, wipe it, and begin again.")  # fmt: skip
    if not isinstance(typed, Mapping):
        raise damaged
    history: dict[str, list[Attempt]] = {}
    known = set(topics.question_keys())
    for key, entries in typed.items():
        if not isinstance(entries, list):
            raise damaged
        if key not in known or not entries:
            continue
        history[key] = []
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


def _day(typed: object) -> date:
    try:
        return date.fromisoformat(str(typed))
    except ValueError:
        raise Refusal(
            None, f"{str(typed)[:20]!r} is not a day. A day is written like 2026-03-09."
        ) from None
