"""The site as a whole: links that lead somewhere, pages that say what they are, one version everywhere."""

from __future__ import annotations

import re
import subprocess
import sys
import zipfile
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urldefrag

import pytest

from toolbox import REPO


class Page(HTMLParser):
    """What a page offers to links (names), asks for (links), and says of itself."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.names: list[str] = []
        self.links: list[str] = []
        self.title = self.description = ""
        self._in_title = False
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        own = {name: value or "" for name, value in attrs}
        self.names += [own[name] for name in ("id", "name") if name in own]
        if tag in {"a", "link", "script", "img", "iframe", "source"}:
            self.links += [own[name] for name in ("href", "src") if name in own]
        if tag == "meta" and own.get("name") == "description":
            self.description = own.get("content", "")
        self._in_title = self._in_title or (tag == "title" and not self.title)

    def handle_data(self, data: str) -> None:
        if self._in_title:
            self.title += data

    def handle_endtag(self, tag: str) -> None:
        self._in_title = self._in_title and tag != "title"


@pytest.fixture(scope="module", params=["served", "from disk"])
def folder(request: pytest.FixtureRequest, built_site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site, and what the copy for offline use unpacks to."""
    if request.param == "served":
        return built_site
    with zipfile.ZipFile(built_site / "booklet-offline.zip") as packed:
        packed.extractall(place := tmp_path_factory.mktemp("unpacked"))
    (inner,) = place.iterdir()
    return inner


@pytest.fixture(scope="module")
def pages(folder: Path) -> dict[str, Page]:
    """Every page by its path."""
    return {
        file.relative_to(folder).as_posix(): Page(file.read_text("utf-8")) for file in sorted(folder.rglob("*.html"))
    }


def test_every_link_leads_somewhere(folder: Path, pages: dict[str, Page]) -> None:
    """Each address in a page is a file of the site and, after #, a name in it or a state of the page."""
    lost = []
    seen = 0
    for name, page in pages.items():
        for link in page.links:
            if link.startswith("data:"):
                continue  # it carries its own content
            address, anchor = urldefrag(link)
            address = unquote(address.partition("?")[0])
            target = ((folder / name).parent / address).resolve() if address else folder / name
            seen += 1
            if ":" in address or not target.is_relative_to(folder.resolve()) or not target.is_file():
                lost.append(f"{name}: {link}")
            elif anchor and "=" not in anchor:
                inner = pages[target.relative_to(folder.resolve()).as_posix()]
                if unquote(anchor) not in inner.names:
                    lost.append(f"{name}: {link}")
    assert seen > 500
    assert not lost


def test_every_page_says_what_it_is(pages: dict[str, Page]) -> None:
    """Titles and descriptions are there, and no two pages share one."""
    named = {name: page for name, page in pages.items() if name != "404.html"}
    assert len(named) > 10
    for part in ("title", "description"):
        said = [" ".join(getattr(page, part).split()) for page in named.values()]
        assert all(said), part
        assert len(set(said)) == len(said), part


def test_no_name_stands_twice_in_a_page(pages: dict[str, Page], folder: Path) -> None:
    """An identifier is one element's, so a link has one target."""
    for file in folder.rglob("*.html"):
        found = re.findall(r'\sid="([^"]*)"', file.read_text("utf-8"))
        twice = {name for name in found if found.count(name) > 1}
        assert not twice, file.name


def test_the_version_is_the_same_everywhere(folder: Path) -> None:
    """The foot of every page, the terminal and the newest entry of the changelog agree."""
    done = subprocess.run([sys.executable, "-m", "calc", "--version"], cwd=REPO, capture_output=True, text=True)
    version = done.stdout.strip()
    assert re.fullmatch(r"\d+\.\d+(\.\d+)?", version)
    entries = re.findall(r"^## Version (\S+)", (REPO / "docs/changelog.md").read_text("utf-8"), re.M)
    assert entries[0] == version
    assert len(set(entries)) == len(entries)
    for file in folder.glob("*.html"):
        if file.name != "404.html":
            assert f">Version {version}</a>" in file.read_text("utf-8"), file.name


def test_only_the_served_site_offers_the_copy_for_offline_use(folder: Path) -> None:
    """The offer to download is gone where the download already is."""
    offered = "booklet-offline.zip" in (folder / "index.html").read_text("utf-8")
    assert offered == (folder / "booklet-offline.zip").is_file()


def test_formulas_are_set_before_any_script(built_site: Path) -> None:
    """In every page as built each formula is MathML with its line in words: none waits for a script to lay it out."""
    seen = 0
    for file in built_site.rglob("*.html"):
        for inside in re.findall(r'class="tex[^"]*"[^>]*>(.{15})', file.read_text(encoding="utf-8"), re.DOTALL):
            assert inside.startswith("<math "), f"{file.name}: {inside}"
            seen += 1
    assert seen > 100
