"""Whatever is in the site has its licence there. What is in it is found without the build's own list."""

from __future__ import annotations

import json
import re
import zipfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import material
import pytest

from toolbox import NODE_MODULES, REPO, SCRIPTS

# Marks that a library leaves in compiled code, and the words its licence is known by.
IN_THE_CORE = {
    b"Copyright (c) 2001-2024 Python Software Foundation": "Python Software Foundation",
    b"inflate 1.3.1 Copyright 1995-2024 Mark Adler": "Jean-loup Gailly and Mark Adler",
    b"BZ2_bzCompress": "Julian R Seward",
    b"mpd_qquantiz": "Stefan Krah",
    b"expat_2": "Expat maintainers",
    b"Hacl_Hash_SHA3": "HACL* Contributors",
    b"BLAKE2B_MAX_KEY_SIZE": "Samuel Neves",
    b"ffi_call": "Anthony Green",
    b"libcxxabi": "LLVM Exceptions",
    b"emscripten_": "Emscripten authors",
    b"hiwire": "Mozilla Public License Version 2.0",
}
# The same for libraries that are not in it; one that comes in needs a licence and a line above.
NOT_IN_THE_CORE = [b"sqlite3_", b"lzma_", b"OpenSSL", b"ncurses", b"FreeType", b"libxml"]


@pytest.fixture(scope="module")
def texts(built_site: Path) -> dict[str, str]:
    """The licence texts of the site, by file name."""
    return {file.name: file.read_text("utf-8") for file in (built_site / "licences").iterdir()}


def test_every_vendored_folder_holds_a_licence(built_site: Path) -> None:
    """Each folder of assets/vendor with files in it has a licence beside them."""
    folders = {file.parent for file in (built_site / "assets/vendor").rglob("*.*")}
    assert len(folders) == 2, "fonts, and the square code"
    for folder in folders:
        assert list(folder.glob("*LICENSE*")), folder


def test_every_npm_package_of_the_site_has_its_text(texts: dict[str, str]) -> None:
    """What package.json asks for is shipped, unless it is a tool; a text is the package's own."""
    described = json.loads((SCRIPTS / "package.json").read_text("utf-8"))
    whole = "\n".join(texts.values())
    for package in described["dependencies"]:
        folder = NODE_MODULES / package
        name = package.rpartition("/")[2]
        assert any(file.removesuffix(".txt") in name for file in texts), package
        for own in folder.glob("LICENSE*"):
            assert own.read_text("utf-8").strip() in whole, package


def test_every_library_in_the_theme_has_its_text(built_site: Path, texts: dict[str, str]) -> None:
    """The theme's source maps name the packages in its scripts and styles; those shipped have a text."""
    assets = Path(material.__file__).parent / "templates/assets"
    # A script that the build changed has its content in its name besides.
    shipped = {re.sub(r"-[0-9a-f]{10}(?=\.js$)", "", file.name) for file in (built_site / "assets").rglob("*")}
    packages = set()
    for file in assets.rglob("*.map"):
        if file.name.removesuffix(".map") in shipped:
            sources = "\n".join(json.loads(file.read_text("utf-8"))["sources"])
            packages |= set(re.findall(r"node_modules/((?:@[^/]+/)?[^/\n]+)/", sources))
    assert {"lunr", "rxjs"} <= packages
    missing = {package for package in packages if f"{package}.txt" not in texts}
    assert not missing


def test_every_collection_of_icons_has_its_text(built_site: Path, texts: dict[str, str]) -> None:
    """A drawing of the site that stands in the theme's icon folders has that collection's licence."""
    icons = Path(material.__file__).parent / "templates/.icons"
    drawings = list(icons.rglob("*.svg"))
    with ThreadPoolExecutor() as readers:  # thousands of small files: the time is the disk's
        contents = readers.map(lambda file: file.read_text("utf-8"), drawings)
    collections: dict[str, str] = {}
    for file, content in zip(drawings, contents, strict=True):
        for path in re.findall(r'\bd="([^"]{20,})"', content):
            collections[path] = file.relative_to(icons).parts[0]
    used = set()
    for page in [*built_site.glob("*.html"), *built_site.glob("assets/stylesheets/*.css")]:
        for path in re.findall(r"""\bd=["']([^"']{20,})["']""", page.read_text("utf-8")):
            used.add(collections.get(path, ""))
    used.discard("")
    assert "material" in used
    for collection in used:
        (own,) = (icons / collection).glob("LICENSE*")
        assert own.read_text("utf-8").strip() in texts["icons.txt"], collection


def test_every_family_of_letters_has_its_text(built_site: Path, texts: dict[str, str]) -> None:
    """Each font family that a style sheet of the site brings is under a text with the font licence."""
    families = set()
    for sheet in (built_site / "assets").rglob("*.css"):
        faces = re.findall(r"@font-face\s*\{[^}]*\}", sheet.read_text("utf-8"))
        families |= {re.search(r"font-family:\s*\"?([^;\"]+)", face)[1] for face in faces}
    assert len(families) == 3, "text, forms, formulas"
    for family in families:
        name = family.lower().replace(" ", "-")
        assert "SIL OPEN FONT LICENSE Version 1.1" in texts[f"{name}.txt"], family


def test_every_library_in_the_core_has_its_text(texts: dict[str, str]) -> None:
    """Marks in the compiled core tell which libraries are in it; the build takes only names out of it."""
    core = (NODE_MODULES / "pyodide/pyodide.asm.wasm").read_bytes()
    whole = "\n".join(texts.values())
    for mark, holder in IN_THE_CORE.items():
        assert mark in core, f"{mark!r} is gone from the core: is {holder} still shipped?"
        assert holder in whole
    assert [mark for mark in NOT_IN_THE_CORE if mark in core] == []


def test_every_part_stands_on_the_page_with_its_text(built_site: Path, texts: dict[str, str]) -> None:
    """The page links each text once; each names a holder and says what is permitted."""
    page = (built_site / "licences.html").read_text("utf-8")
    assert sorted(re.findall(r'href="licences/([^"]+)"', page)) == sorted(texts)
    for name, text in texts.items():
        assert re.search(r"copyright|Pictogrammers|Mozilla Public License", text, re.I), name
        assert re.search(r"permission|permitted|grant|Apache License", text, re.I), name


def test_our_own_licence_is_ours(texts: dict[str, str]) -> None:
    """The site's first text is the repository's."""
    own = (REPO / "LICENSE").read_text("utf-8").strip()
    assert texts["physics-line-by-line.txt"].strip() == own


def test_the_changed_parts_say_where_their_source_is(built_site: Path) -> None:
    """Mozilla Public License 2.0, section 3.2: who gets compiled code is told how to get its source."""
    page = (built_site / "licences.html").read_text("utf-8")
    row = next(row for row in page.split("<dt>") if row.startswith("<strong>Pyodide"))
    installed = json.loads((NODE_MODULES / "pyodide/package.json").read_text("utf-8"))
    assert f"Pyodide {installed['version']}" in row
    assert "github.com/pyodide/pyodide" in row.replace("<wbr>", "")
    assert "slim_core.py" in row


def test_the_copy_for_offline_use_holds_the_texts(built_site: Path, texts: dict[str, str]) -> None:
    """The zip has the same files as the site."""
    with zipfile.ZipFile(built_site / "booklet-offline.zip") as packed:
        names = {Path(name).name for name in packed.namelist() if "/licences/" in name}
    assert names == set(texts)
