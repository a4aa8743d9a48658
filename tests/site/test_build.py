"""What a build leaves behind: pages, vendored libraries, and a zip that opens from disk."""

from __future__ import annotations

import re
import zipfile
from pathlib import Path

from build_site import ZIP_FOLDER, write_zip
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
    for name in ("core-1.wasm.gz", "calc-1.whl", "lock-1.json", "disk-core-1.js", "loader.js"):
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
    for name in ("katex/katex.css", "fonts/fonts.css"):
        sheet = tmp_path / "assets/vendor" / name
        fonts = re.findall(r"url\(([^)]*)\)", sheet.read_text(encoding="utf-8"))
        assert fonts
        for font in fonts:
            assert font.endswith(".woff2"), font
            assert (sheet.parent / font).is_file(), font
        assert list(sheet.parent.glob("*LICENSE"))
