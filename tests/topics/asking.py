"""What the tests of a chapter ask of it: an answer, a value, a refusal, a published case."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path

import pytest

from calc import desk, topics
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.working.reading import Refusals, read
from calc.working.working import work


class Chapter:
    """A chapter by its key, with the published cases of ``KEY_published.json`` by their id."""

    def __init__(self, key: str) -> None:
        self.key = key
        path = Path(__file__).parent / f"{key}_published.json"
        cases = json.loads(path.read_text("utf-8")) if path.exists() else ()
        self.cases = {case["id"]: case for case in cases}

    def solve(self, key: str, find: str = "", **typed: str) -> WorkedAnswer:
        """The worked answer of a question of the chapter."""
        topic, question = topics.find(f"{self.key}.{key}")
        return work(topic, question, read(question, typed, find))

    def value(self, key: str, find: str, **typed: str) -> float:
        """One value of it."""
        return self.solve(key, find, **typed).values[find]

    def refused(self, key: str, find: str = "", **typed: str) -> str:
        """The sentence that refuses these data."""
        with pytest.raises((Refusal, Refusals)) as caught:
            self.solve(key, find, **typed)
        return str(getattr(caught.value, "sentence", "")) or str(caught.value)

    def whole(self, key: str, **typed: str) -> WorkedAnswer:
        """The worked answer of a whole question for these data, the rest as in its example."""
        _, question = topics.find(f"{self.key}.{key}")
        return self.solve(key, **{**question.example, **typed})

    def refusal(self, key: str, **typed: str) -> tuple[str | None, str]:
        """Where such data of a whole question are refused, and why."""
        with pytest.raises((Refusal, Refusals)) as caught:
            self.whole(key, **typed)
        one = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
        return one.field, one.sentence

    def given(self, case: str, *names: str) -> list[str]:
        """Data of a published case by name, typed in SI."""
        return [f"{self.cases[case]['given'][name]['value']:.9g}" for name in names]

    def published(self, case: str) -> object:
        """The answer as published, within its own tolerance."""
        told = self.cases[case]["published"]
        return pytest.approx(told["value"], rel=told["rel_tol"])


def mistakes_said(question: str, inputs: Mapping[str, object], part: str, value: str, find: str = "") -> list[str]:
    """What a reader is told that a wrong number comes of, through the desk."""
    data = {"question": question, "inputs": inputs, "find": find, "answers": {part: {"value": value}}}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    assert reply["ok"], reply
    (told,) = [one for one in reply["data"]["parts"] if one["part"] == part]
    return [said for fit in told.get("fits", ()) for said in fit["say"]]


def statement_marked(key: str, part: str, statement: str, /, **changed: str) -> tuple[int, list[str]]:
    """Marks and sentences for what is typed as the reason of one part; the rest of the question is its example."""
    inputs = {**topics.find(key)[1].example, **changed}
    data = {"question": key, "inputs": inputs, "find": "E_k" if "E_k" in changed else ""}
    data["answers"] = {part: {"statement": statement}}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    verdict = next(one for one in reply["data"]["parts"] if one["part"] == part)
    return verdict["earned"], [one["say"] if isinstance(one, dict) else one for one in verdict["sentences"]]
