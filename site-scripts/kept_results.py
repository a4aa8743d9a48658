"""What a build keeps for the next: results of costly steps, each by all that it was made from.

A page that is being written is one of many; the worked examples, scripts and policies of the others do not change.
"""

from __future__ import annotations

import json
import os
import tempfile
from collections.abc import Callable
from pathlib import Path

from toolbox import BUILD

FOLDER = BUILD / "cache"


class Kept[T]:
    """The results of one step by their keys, kept in build/cache for as long as `made_from` is the same.

    name: of the file. made_from: a digest of what every result depends on besides its key.
    T: what JSON can hold. A damaged file counts as none.
    """

    def __init__(self, name: str, made_from: str) -> None:
        self._file = FOLDER / f"{name}.json"
        self._made_from = made_from
        self._used: dict[str, T] = {}
        self._before: dict[str, T] = {}
        try:
            held = json.loads(self._file.read_text(encoding="utf-8"))
            if held["made from"] == made_from:
                self._before = held["results"]
        except (OSError, ValueError, KeyError, TypeError):
            pass

    def get(self, key: str, make: Callable[[], T]) -> T:
        """The result for this key; made now where none is kept."""
        if key not in self._used:
            self._used[key] = self._before[key] if key in self._before else make()
        return self._used[key]

    def write(self) -> None:
        """Keep the results that were used, and no others, for the next build."""
        if self._used == self._before:
            return
        FOLDER.mkdir(parents=True, exist_ok=True)
        descriptor, made = tempfile.mkstemp(dir=FOLDER)
        with os.fdopen(descriptor, "w", encoding="utf-8") as file:
            json.dump({"made from": self._made_from, "results": self._used}, file)
        Path(made).replace(self._file)
