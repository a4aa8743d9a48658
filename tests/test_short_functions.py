"""No function of the package is longer than a screen."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

import calc

PACKAGE = Path(calc.__file__).parent
MOST = 60  # lines of code: docstring, comments and empty lines do not count
MODULES = sorted(PACKAGE.rglob("*.py"))


def lengths(path: Path) -> Iterator[tuple[str, int]]:
    """Name and lines of code of every function of a module."""
    text = path.read_text(encoding="utf-8")
    lines = text.splitlines()
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.FunctionDef):
            first = node.body[0]
            told = set(range(first.lineno, (first.end_lineno or 0) + 1)) if ast.get_docstring(node) else set()
            code = [lines[n - 1].strip() for n in range(node.lineno, (node.end_lineno or 0) + 1) if n not in told]
            yield node.name, sum(bool(line) and not line.startswith("#") for line in code)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_no_function_is_longer_than_a_screen(path: Path) -> None:
    """At most sixty lines of code, however many there are of words."""
    assert [(name, count) for name, count in lengths(path) if count > MOST] == []
