"""Every topic of the booklet. A module in this folder with a ``TOPIC`` is one; nothing else lists them."""

from __future__ import annotations

import pkgutil
from functools import cache
from importlib import import_module

from calc.model.questions import Question, Topic


@cache
def topics() -> dict[str, Topic]:
    """Topics by key, in the order of their module names."""
    found: dict[str, Topic] = {}
    for module in sorted(info.name for info in pkgutil.iter_modules(__path__)):
        topic = getattr(import_module(f"{__name__}.{module}"), "TOPIC", None)
        if topic is not None:
            found[topic.key] = topic
    return found


def find(key: str) -> tuple[Topic, Question]:
    """The topic and question for ``topic.question``; KeyError lists what there is."""
    topic_key, _, question_key = key.partition(".")
    topic = topics().get(topic_key)
    if topic is None:
        raise KeyError(f"no topic {topic_key!r}; there are {', '.join(topics())}")
    for question in topic.questions:
        if question_key in (question.key, *question.former):
            return topic, question
    names = ", ".join(f"{topic_key}.{question.key}" for question in topic.questions)
    raise KeyError(f"no question {key!r}; there are {names}")


def question_keys() -> tuple[str, ...]:
    """Every ``topic.question``."""
    return tuple(f"{topic.key}.{question.key}" for topic in topics().values() for question in topic.questions)
