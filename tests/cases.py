"""Drawn questions of every topic, each drawn, planned and worked once for all tests of a process."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache

from calc import topics
from calc.figures import Figure
from calc.model.answers import WorkedAnswer
from calc.model.questions import Data, Plan, Question, Topic
from calc.practice.drawing import Drawn, draw
from calc.working.reading import Read, read
from calc.working.working import run, show

KEYS = topics.question_keys()
LEVELS = (1, 2, 3)
SEEDS = range(4)


@cache
def drawn(key: str, seed: int, level: int, rule: int = 1) -> Drawn:
    """One draw, by a rule of drawing."""
    return draw(*topics.find(key), seed, level, rule)


@dataclass(frozen=True)
class Case:
    """A question with its data read, its plan, every value, and the answer a reader sees."""

    name: str
    found: Read
    plan: Plan
    values: dict[str, float]
    worked: WorkedAnswer

    @property
    def data(self) -> Data:
        """The data read."""
        return self.found.data

    @property
    def figures(self) -> list[tuple[str, Figure]]:
        """Every figure, by the key of its part; the scene by ''."""
        scene = [("", self.worked.figure)] if self.worked.figure else []
        return scene + [(part.key, part.figure) for part in self.worked.parts if part.figure]


@cache
def case(key: str, seed: int, level: int) -> Case:
    """A draw, worked; level 0 is the page's example."""
    topic, question = topics.find(key)
    if level:
        one = drawn(key, seed, level)
        found = read(question, one.inputs, one.find, variant=one.variant)
    else:
        found = read(question, question.example)
    plan = question.plan(found.data)
    values = run(plan, found.data.settings.constants())
    return Case(f"{key} {seed}/{level}", found, plan, values, show(topic, question, found, plan, values))


def cases(key: str) -> list[Case]:
    """The example and a few draws at each level."""
    return [case(key, 0, 0)] + [case(key, seed, level) for level in LEVELS for seed in SEEDS]


def reckoned(topic: Topic, question: Question, found: Read) -> WorkedAnswer:
    """The worked answer without its figures, which take longer to make than all its numbers."""
    plan = question.plan(found.data)
    bare = replace(plan, scene=None, parts=tuple(replace(part, figure=None) for part in plan.parts))
    values = run(bare, found.data.settings.constants())
    return show(topic, question, found, bare, values)
