"""The same sources give the same site, wherever and by whomever it is built; nothing in it tells of that."""

from __future__ import annotations

import getpass
import gzip
import io
import os
import re
import shutil
import subprocess
import sys
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from toolbox import BUILD, NODE_MODULES, REPO

# A whole build; how long it takes says nothing.
pytestmark = pytest.mark.timeout(900)

SOURCES = ("docs", "calc", "site-scripts", "mkdocs.yml", "LICENSE")


@pytest.fixture(scope="module")
def two_sites(built_site: Path, tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    """The site, and one built from a copy of its sources in a folder of another name and at other settings.

    The runtime comes from the cache, as its own tests build it twice; nothing else that a build keeps does.
    """
    place = tmp_path_factory.mktemp("b") / "Grade 12" / "some other name"
    _copy_sources(place)
    _build(place)
    return [built_site, place / "build/site"]


def _build(place: Path) -> None:
    own = {"TZ": "Asia/Tokyo", "LC_ALL": "C.UTF-8", "USER": "ben", "HOME": str(place.parent), "PYTHONHASHSEED": "7"}
    subprocess.run([sys.executable, "site-scripts/build_site.py"], cwd=place, env={**os.environ, **own}, check=True)


def _copy_sources(place: Path) -> None:
    place.mkdir(parents=True)
    unwanted = shutil.ignore_patterns("node_modules", "__pycache__")
    for name in SOURCES:
        if (REPO / name).is_dir():
            shutil.copytree(REPO / name, place / name, ignore=unwanted)
        else:
            shutil.copy(REPO / name, place / name)
    (place / "site-scripts/node_modules").symlink_to(REPO / "site-scripts/node_modules")
    (runtime,) = (BUILD / "cache").glob("runtime-*")
    shutil.copytree(runtime, place / "build/cache" / runtime.name)


def files(site: Path) -> dict[str, bytes]:
    """Every file of a site by its path."""
    return {file.relative_to(site).as_posix(): file.read_bytes() for file in sorted(site.rglob("*")) if file.is_file()}


def test_two_builds_have_the_same_bytes(two_sites: list[Path]) -> None:
    """Pages, search index, licences, runtime and zip: every file is the same."""
    one, other = (files(site) for site in two_sites)
    assert list(one) == list(other)
    assert [name for name in one if one[name] != other[name]] == []
    assert "booklet-offline.zip" in one
    assert "search/search_index.js" in one


def test_a_changed_page_changes_nothing_else(two_sites: list[Path]) -> None:
    """What a build keeps for the next is all as if it were made anew; the page that was changed is."""
    before = files(two_sites[1])
    place = two_sites[1].parent.parent
    page = place / "docs/gravitation/force.md"
    old = page.read_text(encoding="utf-8")
    page.write_text(f"{old}\nA plumb line shows which way is down.\n", encoding="utf-8")
    try:
        _build(place)
        after = files(two_sites[1])
    finally:
        page.write_text(old, encoding="utf-8")
    changed = [name for name in before if after[name] != before[name]]
    assert list(after) == list(before)
    assert changed == [
        "booklet-offline.zip",
        "gravitation/force.html",
        "search/search_index.js",
        "search/search_index.json",
    ]
    assert b"A plumb line shows" in after["gravitation/force.html"]


def test_a_changed_question_is_worked_anew(two_sites: list[Path]) -> None:
    """An example that was kept is not shown once the code that works it is another."""
    place = two_sites[1].parent.parent
    question = place / "calc/topics/coulomb/force.py"
    old = question.read_text(encoding="utf-8")
    code = (
        "import sys; sys.path.insert(0, 'site-scripts')\n"
        "import pages_hook\n"
        "pages_hook.on_files(None)\n"
        "print(pages_hook._built('question', ['coulomb.force'], '../'))"
    )
    shown = []
    for text in (old, old.replace("Find the size of the force with", "Work out the size of the force with")):
        question.write_text(text, encoding="utf-8")
        done = subprocess.run([sys.executable, "-c", code], cwd=place, capture_output=True, text=True, check=True)
        shown.append(done.stdout)
    question.write_text(old, encoding="utf-8")
    assert "Find the size of the force" in shown[0]
    assert "Work out the size of the force" in shown[1]


def test_nothing_is_dated(two_sites: list[Path]) -> None:
    """Every entry of the zip has the format's first day."""
    with zipfile.ZipFile(two_sites[0] / "booklet-offline.zip") as packed:
        assert {entry.date_time for entry in packed.infolist()} == {(1980, 1, 1, 0, 0, 0)}


def contents(name: str, content: bytes) -> Iterator[tuple[str, bytes]]:
    """A file as it can be read: what is packed stands by itself."""
    if name.endswith(".gz"):
        yield from contents(name.removesuffix(".gz"), gzip.decompress(content))
    elif name.endswith((".zip", ".whl")):
        with zipfile.ZipFile(io.BytesIO(content)) as packed:
            for inner in packed.namelist():
                yield from contents(f"{name}/{inner}", packed.read(inner))
    else:
        yield name, content


def test_no_file_tells_where_or_by_whom_it_was_built(two_sites: list[Path]) -> None:
    """No folder of the builder and no user's name stands in any file, packed ones included.

    The plain name may be a word of the language, as "root" is, so it is sought as part of a folder or
    an address. Folders of those who built the published core are theirs, and stay.
    """
    user = getpass.getuser()
    home = str(Path.home())
    named = [str(two_sites[1].parent.parent), "some other name", str(REPO), f"{home}/"]
    secrets = [text.encode() for text in [*named, f"/{user}/", f"home/{user}", f"{user}@"]]
    published = b"".join(
        (NODE_MODULES / "pyodide" / name).read_bytes() for name in ("pyodide.asm.wasm", "pyodide.asm.js", "pyodide.js")
    )
    found = []
    for name, content in files(two_sites[1]).items():
        if re.search(r"/disk-[^/]*$|\.zip$", name):
            continue  # the served files once more
        for inner, plain in contents(name, content):
            for secret in secrets:
                at = plain.find(secret)
                while at >= 0:
                    around = plain[max(0, at - 20) : at + len(secret) + 20]
                    if around not in published:
                        found.append((inner, around))
                    at = plain.find(secret, at + 1)
    assert not found
