"""What a build leaves behind: pages, vendored libraries, and a zip that opens from disk."""

from __future__ import annotations

import fcntl
import hashlib
import html
import re
import subprocess
import sys
import threading
import unicodedata
import zipfile
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

import build_site
from build_site import ZIP_FOLDER, one_at_a_time, write_zip
from toolbox import SCRIPTS
from vendor import vendor


def test_zip_holds_the_site_in_one_folder(tmp_path: Path) -> None:
    """Unpacking makes one folder with the pages in it."""
    site = tmp_path / "site"
    (site / "assets").mkdir(parents=True)
    (site / "index.html").write_text("first", encoding="utf-8")
    (site / "assets/a.js").write_text("1", encoding="utf-8")
    write_zip(site, tmp_path / "a.zip")
    with zipfile.ZipFile(tmp_path / "a.zip") as packed:
        assert packed.namelist() == [f"{ZIP_FOLDER}/assets/a.js", f"{ZIP_FOLDER}/index.html"]
        assert packed.read(f"{ZIP_FOLDER}/index.html") == b"first"


def test_zip_leaves_out_what_only_a_server_needs(tmp_path: Path) -> None:
    """The runtime's files for http stay behind; its scripts for disk come along."""
    runtime = tmp_path / "site/assets/runtime"
    runtime.mkdir(parents=True)
    for name in ("core-1.wasm.gz", "calc-1.whl.gz", "lock-1.json", "disk-core-1.js", "loader.js"):
        (runtime / name).write_text("", encoding="utf-8")
    write_zip(tmp_path / "site", tmp_path / "a.zip")
    with zipfile.ZipFile(tmp_path / "a.zip") as packed:
        names = [Path(name).name for name in packed.namelist()]
    assert names == ["disk-core-1.js", "loader.js"]


def test_zip_of_the_same_site_is_the_same(tmp_path: Path) -> None:
    """The bytes do not depend on when the zip was made."""
    site = tmp_path / "site"
    site.mkdir()
    page = site / "index.html"
    zips = []
    for name in ("a.zip", "b.zip"):
        page.unlink(missing_ok=True)
        page.write_text("first", encoding="utf-8")
        write_zip(site, tmp_path / name)
        zips.append((tmp_path / name).read_bytes())
    assert zips[0] == zips[1]


def test_vendored_styles_name_only_vendored_fonts(tmp_path: Path) -> None:
    """Every font a vendored style sheet names is there, in woff2 alone, with a licence beside it."""
    vendor(tmp_path)
    for name in ("fonts/fonts.css",):
        sheet = tmp_path / "assets/vendor" / name
        fonts = re.findall(r"url\(([^)]*)\)", sheet.read_text(encoding="utf-8"))
        assert fonts
        for font in fonts:
            assert font.endswith(".woff2"), font
            assert (sheet.parent / font).is_file(), font
        assert list(sheet.parent.glob("*LICENSE"))


MATHS_FONT = "assets/vendor/fonts/stix-two-math-latin-400-normal*.woff2"


def test_the_font_of_formulas_holds_every_sign_used(built_site: Path) -> None:
    """Each sign in a formula of a page has its glyph, a letter alone its sloping one; the table for layout is kept."""
    (file,) = built_site.glob(MATHS_FONT)
    with TTFont(file) as font:
        held = set(font.getBestCmap())
        assert font["MATH"].table.MathConstants
    formulas: set[str] = set()
    for page in built_site.rglob("*.html"):
        formulas |= set(re.findall(r"<math.*?</math>", page.read_text(encoding="utf-8"), re.DOTALL))
    text = "".join(sorted(formulas))
    used = {
        letter if attributes else sloping(letter) for attributes, letter in re.findall(r"<mi([^>]*)>(.)</mi>", text)
    }
    used |= set(html.unescape(re.sub(r"<[^>]*>", "", text)))
    assert len(used) > 60
    assert {sign for sign in used if ord(sign) not in held} == set()


def sloping(letter: str) -> str:
    """The mathematical italic of a letter, by its name in Unicode; Planck's h has a name of its own."""
    if letter == "h":
        return "\N{PLANCK CONSTANT}"
    kind, name = unicodedata.name(letter).replace("GREEK ", "").replace("LATIN ", "").split(" LETTER ")
    return unicodedata.lookup(f"MATHEMATICAL ITALIC {kind} {name}")


def test_what_pages_fetch_is_named_by_its_content(built_site: Path) -> None:
    """Each script, style and font that a page or a style asks for ends with the start of its SHA-256; the loader of
    the runtime alone keeps its name, and carries its own after ?v=."""
    seen = set()
    for page in built_site.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        links = re.findall(r'<script[^>]* src="([^"]+)"|<link rel="stylesheet" href="([^"]+)"', text)
        seen |= {(page.parent / name.split("?")[0]).resolve() for pair in links for name in pair if name}
        assert all("loader.js" in name for pair in links for name in pair if "?" in name), page.name
    assert len(seen) > 15
    fonts = list(built_site.rglob("*.woff2"))
    assert len(fonts) > 5
    for file in [*seen, *fonts, *built_site.glob("assets/vendor/qrcode/*.js")]:
        if file.name != "loader.js":
            assert hashlib.sha256(file.read_bytes()).hexdigest()[:8] in file.name, file.name


def test_no_typesetter_is_left_in_the_site(built_site: Path) -> None:
    """No page, script or style of ours names it; the theme's own style does, for those who use it."""
    files = [file for end in ("html", "js", "css", "woff2") for file in built_site.rglob(f"*.{end}")]
    # Five letters can stand anywhere in the packed files of the runtime.
    ours = [file for file in files if "stylesheets" not in file.parts and not file.name.startswith("disk-")]
    assert len(ours) > 20
    assert [file.name for file in ours if b"katex" in file.read_bytes().lower()] == []


@pytest.fixture
def build_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A build folder of its own."""
    monkeypatch.setattr(build_site, "BUILD", tmp_path)
    monkeypatch.setattr(build_site, "CACHE", tmp_path / "cache")
    return tmp_path


def test_what_a_killed_build_left_is_removed(build_folder: Path) -> None:
    """The next build takes away the half-made site and runtime, and nothing else."""
    for name in ("site-a1b2", "cache/tmpc3d4", "site", "cache/runtime-1"):
        (build_folder / name).mkdir(parents=True)
        (build_folder / name / "a.html").write_text("", encoding="utf-8")
    (build_folder / "site-stamp").write_text("", encoding="utf-8")
    with one_at_a_time():
        pass
    left = {file.relative_to(build_folder).as_posix() for file in build_folder.rglob("*.html")}
    assert left == {"site/a.html", "cache/runtime-1/a.html"}
    assert (build_folder / "site-stamp").is_file()


def test_a_running_build_keeps_its_folder(build_folder: Path) -> None:
    """While one build works, another waits and touches nothing; killed, it leaves its folder to the next."""
    program = (
        "import sys, pathlib, build_site as b; b.BUILD = pathlib.Path(sys.argv[1])\n"
        "b.CACHE = b.BUILD / 'cache'\n"
        "with b.one_at_a_time():\n"
        "    (b.BUILD / 'site-running').mkdir(); print('works', flush=True); sys.stdin.read()"
    )
    command = [sys.executable, "-c", program, str(build_folder)]
    with subprocess.Popen(command, cwd=SCRIPTS, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as running:
        assert running.stdout
        assert running.stdout.readline() == "works\n"
        with (
            (build_folder / "lock").open("w") as held,
            pytest.raises(BlockingIOError),
        ):
            fcntl.flock(held, fcntl.LOCK_EX | fcntl.LOCK_NB)
        waiting = threading.Thread(target=_hold_once)
        waiting.start()
        assert (build_folder / "site-running").is_dir()
        running.kill()
        waiting.join()
    assert not (build_folder / "site-running").exists()


def _hold_once() -> None:
    with one_at_a_time():
        pass
