"""A pytest plugin of ``mutate.py``: notes the lines of ``calc`` that run, and runs quick tests first.

``BOOKLET_LINES_TO`` names a file for the lines and durations; ``BOOKLET_DURATIONS`` one to order by.
"""

from __future__ import annotations

import json
import os
import sys
from collections import defaultdict
from pathlib import Path
from types import CodeType

import pytest

LINES_TO = os.environ.get("BOOKLET_LINES_TO", "")
DURATIONS = os.environ.get("BOOKLET_DURATIONS", "")
TREE = str(Path.cwd() / "calc") + os.sep
TOOL = sys.monitoring.COVERAGE_ID

_lines: defaultdict[str, set[int]] = defaultdict(set)
_durations: defaultdict[str, float] = defaultdict(float)


def _line(code: CodeType, number: int) -> object:
    if code.co_filename.startswith(TREE):
        _lines[code.co_filename.removeprefix(TREE)].add(number)
    return sys.monitoring.DISABLE  # once is enough


if LINES_TO:
    sys.monitoring.use_tool_id(TOOL, "mutate")
    sys.monitoring.register_callback(TOOL, sys.monitoring.events.LINE, _line)
    sys.monitoring.set_events(TOOL, sys.monitoring.events.LINE)


def pytest_runtest_logreport(report: pytest.TestReport) -> None:
    """Add up how long each test takes, with its fixtures."""
    _durations[report.nodeid] += report.duration


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The quickest first: a change that is seen at all is mostly seen by one of them."""
    if DURATIONS:
        known = json.loads(Path(DURATIONS).read_text(encoding="utf-8"))
        items.sort(key=lambda item: known.get(item.nodeid, 0.0))


def pytest_unconfigure() -> None:
    """Write what was noted."""
    if LINES_TO:
        noted = {
            "lines": {name: sorted(numbers) for name, numbers in sorted(_lines.items())},
            "durations": _durations,
        }
        Path(LINES_TO).write_text(json.dumps(noted), encoding="utf-8")
