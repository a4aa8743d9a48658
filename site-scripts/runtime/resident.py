"""Stays in Python's ``__main__`` inside the memory image; the engine calls these four names.

A restored image has no files, so a module imported late needs the standard library fetched
first: ``late_imports`` tells the engine when that happened.
"""

import random
import sys
import zipimport
from importlib.machinery import ModuleSpec

from calc.desk import answer

__all__ = ["answer", "forget_files", "late_imports", "wake"]


class _Watch:
    """First on ``sys.meta_path``: notes which modules were not there yet, finds none itself."""

    seen = 0

    @classmethod
    def find_spec(cls, _name: str, _path: object = None, _target: object = None) -> ModuleSpec | None:
        """Count one late import and leave the finding to the finders after this one."""
        cls.seen += 1
        return None


def late_imports() -> int:
    """Return how many modules were looked for since the last call."""
    seen, _Watch.seen = _Watch.seen, 0
    return seen


def forget_files() -> None:
    """Forget where modules were looked for: the image has none of those files, and later the library is there."""
    zipimport._zip_directory_cache.clear()
    sys.path_importer_cache.clear()


def wake() -> None:
    """Undo what the image froze: every reader would otherwise draw the same random numbers."""
    random.seed()


sys.meta_path.insert(0, _Watch)
