"""The small server: right types, a sub-path, and nothing outside the site."""

from __future__ import annotations

import http.client
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from serve import serving


@pytest.fixture
def address(tmp_path: Path) -> Iterator[str]:
    """A site of three files served below class/notes/."""
    site = tmp_path / "site"
    (site / "assets").mkdir(parents=True)
    (tmp_path / "secret.txt").write_text("outside", encoding="utf-8")
    (site / "index.html").write_text("first page", encoding="utf-8")
    (site / "404.html").write_text("no such page", encoding="utf-8")
    (site / "assets/a.wasm").write_bytes(b"\0asm")
    (site / "assets/a-0123abcd.css").write_text("p {}", encoding="utf-8")
    with serving(site, "class/notes") as below:
        yield below.removesuffix("/class/notes/")


def read(url: str) -> tuple[int, str, bytes]:
    """Return status, type and body of an address."""
    try:
        with urllib.request.urlopen(url, timeout=5) as answer:
            return answer.status, answer.headers["Content-Type"], answer.read()
    except urllib.error.HTTPError as error:
        with error:
            return error.code, error.headers["Content-Type"], error.read()


def test_first_page_is_served_below_the_prefix(address: str) -> None:
    """The folder's address answers with its index page."""
    html = "text/html; charset=utf-8"
    assert read(f"{address}/class/notes/") == (200, html, b"first page")
    assert read(f"{address}/class/notes/index.html?k=1") == (200, html, b"first page")


def test_wasm_has_its_own_type(address: str) -> None:
    """Browsers compile while loading only when the type is application/wasm."""
    assert read(f"{address}/class/notes/assets/a.wasm")[:2] == (200, "application/wasm")


@pytest.mark.parametrize(
    "path",
    ["/", "/index.html", "/class/notes/none.html", "/class/notes/assets/"],
)
def test_unknown_address_gets_the_sites_own_page(address: str, path: str) -> None:
    """Outside the prefix, a missing file and a bare folder all answer 404 with 404.html."""
    assert read(address + path) == (404, "text/html; charset=utf-8", b"no such page")


KEPT, ASKED = "public, max-age=31536000, immutable", "no-cache"


@pytest.mark.parametrize(
    ("path", "kept"),
    [("assets/a-0123abcd.css", KEPT), ("assets/a.wasm", ASKED), ("", ASKED), ("assets/none-0123abcd.css", ASKED)],
)
def test_only_what_is_named_by_its_content_is_kept_unasked(address: str, path: str, kept: str) -> None:
    """A browser asks again for a page, for a file whose name stays, and for one that was not there."""
    with closing(http.client.HTTPConnection(address.removeprefix("http://"), timeout=5)) as connection:
        connection.request("GET", f"/class/notes/{path}")
        with connection.getresponse() as answer:
            assert answer.headers.get_all("Cache-Control") == [kept]


@pytest.mark.parametrize("path", ["/../secret.txt", "/class/notes/%2e%2e/secret.txt"])
def test_nothing_outside_the_site_is_served(address: str, path: str) -> None:
    """Climbing out of the folder leads nowhere."""
    assert read(address + path)[0] == 404
