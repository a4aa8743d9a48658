"""Requests that exercise the whole package: the build's warm-up, the bench and the tests ask them.

Also executed inside Pyodide, where only the calc package can be imported.
"""

from __future__ import annotations

import json
from importlib import import_module


def example_requests() -> list[str]:
    """Return JSON requests for ``calc.desk.answer``: each declared question with its own example.

    A package may offer more, or other ones, as ``calc.desk.example_requests()``.
    """
    desk = import_module("calc.desk")
    offered = getattr(desk, "example_requests", None)
    return list(offered()) if offered else [json.dumps(r) for r in _declared()]


def _declared() -> list[dict[str, object]]:
    topics = import_module("calc.topics").topics()
    notations = ["html", "text", "latex"]
    return [
        {
            "operation": "solve",
            "data": {
                "question": f"{topic.key}.{question.key}",
                "inputs": dict(question.example),
                "as": notations,
            },
        }
        for topic in topics.values()
        for question in topic.questions
    ]
