"""What the runtime build writes: one build's files together, each for a reason."""

from __future__ import annotations

import base64
import gzip
import hashlib
import io
import json
import marshal
import os
import re
import shutil
import subprocess
import sys
import tempfile
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from runtime import build_runtime as build
from runtime import slim_core
from toolbox import BUILD, NODE_MODULES, REPO, SetupError

STAND_IN = REPO / "tests" / "runtime" / "stand_in" / "calc"
CACHE = BUILD / "cache-stand-in"
TAG = re.compile(r"-([0-9a-f]{12})\.")


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The runtime folder of a build with the stand-in package."""
    site = tmp_path_factory.mktemp("site")
    build.build_runtime(site, CACHE, package_dir=STAND_IN)
    return site / "assets" / "runtime"


def one(folder: Path, pattern: str) -> Path:
    """The only file of a pattern."""
    (found,) = folder.glob(pattern)
    return found


def test_all_files_but_the_loader_carry_one_tag(made: Path) -> None:
    """Files of two builds cannot mix."""
    names = {file.name for file in made.iterdir()}
    tags = {match[1] for name in names if (match := TAG.search(name))}
    assert len(tags) == 1
    assert [name for name in names if not TAG.search(name)] == ["loader.js"]


def test_the_loader_names_every_file(made: Path) -> None:
    """No file is written that nothing loads, and none is missing."""
    named = set(re.findall(r'"([a-z-]+-[0-9a-f]{12}\.[a-z.]+)"', one(made, "loader.js").read_text()))
    assert named == {file.name for file in made.iterdir()} - {"loader.js"}


def test_scripts_for_disk_hold_the_served_files(made: Path) -> None:
    """Each disk script is the base64 of the file a server gives."""
    for name, pattern in build.DISK.items():
        text = one(made, pattern.format("*")).read_text("ascii")
        held = base64.b64decode(text.split('"')[1])
        assert held == one(made, build.FILES[name].format("*")).read_bytes(), name


def test_an_unchanged_second_build_runs_no_tool(made: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The second build only copies what the first one kept."""

    def refuse(*_: object, **__: object) -> None:
        raise AssertionError("a tool was run")

    monkeypatch.setattr(build, "_make", refuse)
    build.build_runtime(tmp_path, CACHE, package_dir=STAND_IN)
    again = tmp_path / "assets" / "runtime"
    assert {f.name: f.read_bytes() for f in again.iterdir()} == {f.name: f.read_bytes() for f in made.iterdir()}


def test_a_changed_package_is_built_anew(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One changed source line is noticed."""
    package = tmp_path / "calc"
    shutil.copytree(STAND_IN, package)
    cache = tmp_path / "cache"
    asked = []

    def note(scratch: Path, *_: object) -> Path:
        asked.append(scratch)
        (scratch / "finished").mkdir()
        return scratch / "finished"

    monkeypatch.setattr(build, "_make", note)
    for text in ("WORD = 'one'\n", "WORD = 'two'\n", "WORD = 'two'\n"):
        (package / "late.py").write_text(text)
        build.build_runtime(tmp_path / "site", cache, package_dir=package)
    assert len(asked) == 2
    assert len(list(cache.iterdir())) == 1


@pytest.fixture(scope="module")
def made_elsewhere(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The same sources built in another folder, by a reader with another home and time zone."""
    folder = tmp_path_factory.mktemp("another folder") / "päckage"
    for name in ("site-scripts", "tests/runtime/stand_in"):
        ignored = shutil.ignore_patterns("node_modules", "__pycache__")
        shutil.copytree(REPO / name, folder / name, ignore=ignored)
    program = (
        "import sys; from pathlib import Path; from runtime.build_runtime import build_runtime;"
        "build_runtime(Path('site'), Path('cache').resolve(), package_dir=Path(sys.argv[1]),"
        " node_modules=Path(sys.argv[2]))"
    )
    stand_in = folder / "tests" / "runtime" / "stand_in" / "calc"
    elsewhere = {
        "PYTHONPATH": str(folder / "site-scripts"),
        "HOME": str(folder),
        "TZ": "Pacific/Auckland",
        "LANG": "de_DE.UTF-8",
        "SOURCE_DATE_EPOCH": "1700000000",
        "PYTHONHASHSEED": "7",
    }
    subprocess.run(
        [sys.executable, "-c", program, stand_in, NODE_MODULES],
        cwd=folder,
        env={**os.environ, **elsewhere},
        check=True,
    )
    return folder / "site" / "assets" / "runtime"


def test_the_same_sources_give_the_same_bytes(made: Path, made_elsewhere: Path) -> None:
    """Neither the folder, nor the time, nor the builder's settings show in any file."""
    here, there = (
        {file.name: hashlib.sha256(file.read_bytes()).hexdigest() for file in folder.iterdir()}
        for folder in (made, made_elsewhere)
    )
    assert here == there


def contents(file: Path) -> Iterator[bytes]:
    """What a file holds, and what is packed in it: gzip, base64 in a script, a zip's members."""
    todo = [file.read_bytes()]
    while todo:
        content = todo.pop()
        yield content
        if content.startswith(b"\x1f\x8b"):
            todo.append(gzip.decompress(content))
        elif content.startswith(b"PK"):
            with zipfile.ZipFile(io.BytesIO(content)) as packed:
                todo += [packed.read(name) for name in packed.namelist()]
        elif content.startswith(b"(self.bookletDisk"):
            todo.append(base64.b64decode(content.split(b'"')[1]))


def test_no_file_names_a_folder_of_the_builder(made: Path, made_elsewhere: Path) -> None:
    """The path of the sources, of the build and of the home folder stays with the builder."""
    # The second build's home folder is the folder of its sources.
    private = [REPO, made_elsewhere.parents[2], Path(tempfile.gettempdir()) / "pytest-of"]
    for folder in (made, made_elsewhere):
        for file in folder.iterdir():
            for content in contents(file):
                found = [str(path) for path in private if str(path).encode() in content]
                assert not found, file.name


def test_files_in_the_wheel_are_undated(made: Path) -> None:
    """Each file in the wheel carries the oldest date a zip can hold, not that of the build."""
    with zipfile.ZipFile(io.BytesIO(gzip.decompress(one(made, "calc-*.whl.gz").read_bytes()))) as wheel:
        assert {entry.date_time for entry in wheel.infolist()} == {(1980, 1, 1, 0, 0, 0)}


def test_the_lock_file_lists_the_shipped_wheel(made: Path) -> None:
    """Name, hash and Python version in the lock file are those of the wheel and of Pyodide."""
    lock = json.loads(one(made, "lock-*").read_text("utf-8"))
    wheel = gzip.decompress(one(made, "calc-*.whl.gz").read_bytes())
    assert lock["packages"]["calc"]["sha256"] == hashlib.sha256(wheel).hexdigest()
    assert tuple(map(int, lock["info"]["python"].split(".")[:2])) == build.RUNTIME_PYTHON


def test_the_wheel_is_byte_code_only_under_the_same_python(made: Path) -> None:
    """Byte code of another Python would not load in the page, so then the sources are shipped."""
    with zipfile.ZipFile(io.BytesIO(gzip.decompress(one(made, "calc-*.whl.gz").read_bytes()))) as wheel:
        modules = [name for name in wheel.namelist() if name.startswith("calc/")]
    wanted = ".pyc" if sys.version_info[:2] == build.RUNTIME_PYTHON else ".py"
    assert {Path(name).suffix for name in modules} == {wanted}
    assert len(modules) == len(list(STAND_IN.glob("*.py")))


def test_the_library_has_what_is_imported_and_kept(made: Path) -> None:
    """Modules named anywhere in the package, and the kept ones, are there; unused ones are not."""
    packed = gzip.decompress(one(made, "stdlib-*").read_bytes())
    with zipfile.ZipFile(io.BytesIO(packed)) as library:
        names = set(library.namelist())
    assert {f"{name.replace('.', '/')}.pyc" for name in build.KEEP} <= names
    assert {"colorsys.pyc", "json/__init__.pyc"} <= names
    assert not {"sqlite3/__init__.pyc", "unittest/__init__.pyc", "turtle.pyc"} & names
    assert all(name.endswith(".pyc") for name in names)


@pytest.mark.skipif(sys.version_info[:2] != build.RUNTIME_PYTHON, reason="only the runtime's Python reads its code")
def test_the_library_has_no_docstrings(made: Path) -> None:
    """The library is compiled without its docstrings."""
    packed = gzip.decompress(one(made, "stdlib-*").read_bytes())
    with zipfile.ZipFile(io.BytesIO(packed)) as library:
        code = marshal.loads(library.read("textwrap.pyc")[16:])
    assert not any(isinstance(c, str) and "Text wrapping and filling" in c for c in code.co_consts)


# --- The core --------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def cores() -> tuple[dict[int, bytes], dict[int, bytes], set[str]]:
    """Sections of the published core, of one keeping the export "malloc", and what that dropped."""
    published = (NODE_MODULES / "pyodide" / "pyodide.asm.wasm").read_bytes()
    slim, dropped = slim_core.drop_exports(published, {"malloc"})
    return dict(slim_core._sections(published)), dict(slim_core._sections(slim)), dropped


def test_only_the_exports_change(
    cores: tuple[dict[int, bytes], dict[int, bytes], set[str]],
) -> None:
    """Code, data and everything else of the core stay as published."""
    published, slim, _ = cores
    assert [n for n in published if published[n] != slim[n]] == [slim_core._EXPORT]


def test_exports_the_core_links_itself_stay(
    cores: tuple[dict[int, bytes], dict[int, bytes], set[str]],
) -> None:
    """A name used, or looked up by the core's own linking, is never dropped."""
    published, slim, dropped = cores
    kept = {name for name, _ in slim_core._exports(slim[slim_core._EXPORT])}
    everything = {name for name, _ in slim_core._exports(published[slim_core._EXPORT])}
    linked = set(slim_core._linked_names(published[slim_core._IMPORT]))
    assert kept == everything & (linked | {"malloc"})
    assert kept | dropped == everything


@pytest.mark.parametrize("number", [0, 1, 127, 128, 16383, 16384, 2**32 - 1])
def test_numbers_are_read_as_written(number: int) -> None:
    """LEB128 writing and reading agree."""
    written = slim_core._number(number)
    assert slim_core._read_number(written + b"\xff", 0) == (number, len(written))


def test_a_number_is_written_as_the_specification_shows() -> None:
    """12857 is B9 64: DWARF Debugging Information Format 4, section 7.6, examples (from memory)."""
    assert slim_core._number(12857) == bytes.fromhex("b964")


def test_a_pyodide_with_other_scripts_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A patch that finds its place no longer, or twice, stops the build."""
    monkeypatch.setattr(slim_core, "_PATCHES", (("pyodide.js", "no such text", ""),))
    with pytest.raises(SetupError, match="no such text"):
        slim_core.slim_pyodide(NODE_MODULES / "pyodide", tmp_path / "out")


def test_no_script_holds_a_foreign_address(made: Path) -> None:
    """Neither engine nor loader names another host."""
    for file in [*made.glob("engine-*"), *made.glob("worker-*"), made / "loader.js"]:
        hosts = set(re.findall(r"(?:https?|wss?)://[\w.-]+", file.read_text("utf-8")))
        assert hosts == set(), file.name
