"""The real package in the built site answers like CPython, to the last character."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from calc import desk
from runtime.example_requests import example_requests
from tests.strategies import PROFILE

pytestmark = [pytest.mark.browser, pytest.mark.timeout(300)]  # one test for all questions

# Keeps the reply texts as they arrive from the worker, before the page parses them.
KEEP_REPLIES = """
delete window.SharedWorker; // whose messages come by ports: the page has a worker of its own
window.replyTexts = [];
const Plain = window.Worker;
window.Worker = class extends Plain {
  constructor(...given) {
    super(...given);
    this.addEventListener("message", ({ data }) => "reply" in data && replyTexts.push(data.reply));
  }
};
"""


def varied(request: dict[str, Any], turn: int) -> Iterator[dict[str, Any]]:
    """A request as it is, with one input emptied, with a wrong one, with settings.

    ``turn`` says whose turn among the inputs it is; in the long profile it is that of each.
    """
    yield request
    data = request["data"]
    inputs = data.get("inputs", {})
    for number, name in enumerate(inputs):
        if PROFILE == "long" or number == turn % len(inputs):
            yield {**request, "data": {**data, "inputs": {**inputs, name: ""}}}
            yield {**request, "data": {**data, "inputs": {**inputs, name: "3,7 × 10^"}}}
    settings = {"k": "8,99e9", "decimals": "3", "comma": "point"}
    yield {**request, "data": {**data, "settings": settings}}


def test_replies_equal_those_of_cpython(place: str, open_context: Callable[..., Any]) -> None:
    """Every declared question, varied, gets the same text to the last digit in page and CPython.

    From disk, where the same image comes as text, each as it is.
    """
    from_disk = place.startswith("file:")
    requests = []
    for turn, text in enumerate(example_requests()):
        plain, *more = varied(json.loads(text), turn)
        requests += [plain] if from_disk else [plain, *more]
    context = open_context()
    context.add_init_script(KEEP_REPLIES)
    page = context.new_page()
    page.goto(f"{place}coulombs-law/force.html")
    page.evaluate(
        """async (requests) => {
          for (const { operation, data } of requests) await bookletRuntime.ask(operation, data);
        }""",
        requests,
    )
    assert page.evaluate("bookletRuntime.how.start") == "snapshot"
    # The page's own forms ask too, so its replies are looked for, not counted.
    texts = set(page.evaluate("replyTexts"))
    expected = [desk.answer(json.dumps(request)) for request in requests]
    solved = [text for text in expected if json.loads(text)["ok"]]
    assert len(solved) >= len(list(example_requests()))
    assert [text for text in expected if text not in texts] == []
