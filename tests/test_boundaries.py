"""What the physics may lean on: the standard library and itself, inwards only."""

import ast
import sys
from pathlib import Path

import pytest

import calc

PACKAGE = Path(calc.__file__).parent
MODULES = sorted(PACKAGE.rglob("*.py"))
BROWSER = {"js", "pyodide", "pyodide_js", "micropip", "webbrowser"}


def imported(path: Path) -> set[str]:
    """The modules a file imports, by full name."""
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            names.add(node.module)
    return names


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_only_the_standard_library_is_imported(path: Path) -> None:
    """No module needs an installed package or knows of a browser."""
    roots = {name.split(".")[0] for name in imported(path)} - {"calc"}
    assert roots <= set(sys.stdlib_module_names) - BROWSER


@pytest.mark.parametrize(
    "path",
    sorted((PACKAGE / "topics").rglob("*.py")),
    ids=lambda path: path.relative_to(PACKAGE).as_posix(),
)
def test_topics_know_nothing_of_renderings(path: Path) -> None:
    """Physics is declared as data: no topic imports a rendering, the desk or the terminal."""
    assert not {name for name in imported(path) if name.startswith(("calc.renderings", "calc.desk", "calc.__main__"))}


@pytest.mark.parametrize(
    "path",
    sorted((PACKAGE / "topics").rglob("*.py")),
    ids=lambda path: path.relative_to(PACKAGE).as_posix(),
)
def test_topics_hold_no_markup(path: Path) -> None:
    """No text in a topic is HTML or TeX."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            assert "</" not in node.value
            assert "\\frac" not in node.value


# Each may import those before it, and itself.
ORDER = (
    "language",
    "figures",
    "model",
    "working",
    "topics",
    "marking",
    "practice",
    "papers",
    "renderings",
    "desk",
)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_imports_point_one_way(path: Path) -> None:
    """Language knows of nothing else; the desk may know of all; nothing points back."""
    place = path.relative_to(PACKAGE).parts
    if len(place) == 1:
        return  # the terminal, and the version
    allowed = ORDER[: ORDER.index(place[0]) + 1]
    back = {name for name in imported(path) if name.startswith("calc.") and name.split(".")[1] not in allowed}
    assert not back
