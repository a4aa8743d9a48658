"""What the desk says of a form itself: which boxes lead to what is asked, and what was understood of each.

``boxes`` data: question, inputs, find. Reply: ``boxes``, the names of those to show, in the order of the form; all
others stand behind one line.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc.desk.requests import comma_of, find_question, read_settings
from calc.model.constants import Settings
from calc.model.questions import Refusal
from calc.working import leading
from calc.working.readback import readback
from calc.working.reading import Refusals


def boxes(data: Mapping[str, Any]) -> dict[str, Any]:
    """The boxes that lead to what is asked. Raises Refusal for a question there is not."""
    _, question = find_question(data)
    inputs = data.get("inputs", {})
    typed = inputs if isinstance(inputs, Mapping) else {}
    return {"boxes": list(leading.boxes(question, str(data.get("find", "")), typed))}


def read_back(data: Mapping[str, Any]) -> dict[str, dict[str, str]]:
    """Unit and line of every box that holds a usable value; none where the request names no question."""
    inputs = data.get("inputs", {})
    try:
        _, question = find_question(data)
    except Refusal:
        return {}
    found = readback(question, inputs if isinstance(inputs, Mapping) else {}, _settings(data))
    return {path: {"unit": back.unit, "spoken": back.spoken, "line": back.line} for path, back in found.items()}


def _settings(data: Mapping[str, Any]) -> Settings:
    """The reader's settings; where one is wrong, those of the booklet with the reader's decimal sign."""
    try:
        return read_settings(data.get("settings", {}))
    except (Refusal, Refusals):
        return Settings(comma=comma_of(data))
