"""The booklet behind exactly the headers that its page for the school's server prints."""

from __future__ import annotations

import html
import re
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from chapters import chapters

pytestmark = pytest.mark.browser


def printed(site: Path) -> tuple[list[list[tuple[str, str]]], dict[str, str]]:
    """The groups of headers on the page, and its table of types by the end of a file's name."""
    page = (site / "school-server.html").read_text("utf-8")
    groups = []
    for code in re.findall(r"<pre>.*?</pre>", page, re.S):
        lines = html.unescape(re.sub(r"<[^>]+>", "", code)).strip().splitlines()
        groups.append([tuple(line.split(": ", 1)) for line in lines])
    rows = re.findall(r"<td><code>(\.\w+)</code></td>\s*<td><code>([^<]+)</code></td>", page)
    return groups, dict(rows)


@contextmanager
def server(folder: Path, headers: list[tuple[str, str]], types: dict[str, str]) -> Iterator[str]:
    """Serve a folder with these headers and types, and nothing of the build's own server."""

    class Handler(SimpleHTTPRequestHandler):
        extensions_map = types

        def __init__(self, *args: object) -> None:
            super().__init__(*args, directory=str(folder))

        def end_headers(self) -> None:
            for name, value in headers:
                self.send_header(name, value)
            super().end_headers()

        def log_message(self, *_: object) -> None:
            pass

    with ThreadingHTTPServer(("127.0.0.1", 0), Handler) as running:
        threading.Thread(target=running.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{running.server_address[1]}/"
        running.shutdown()


@pytest.fixture
def framed(built_site: Path, tmp_path: Path) -> Iterator[tuple[str, str, str]]:
    """Addresses: the booklet's, a page that the headers let frame it, and one that they do not."""
    groups, types = printed(built_site)
    folders = [tmp_path / "platform", tmp_path / "stranger"]
    for folder in folders:
        folder.mkdir()
    with server(folders[0], [], types) as platform, server(folders[1], [], types) as stranger:
        headers = [(name, value.replace("https://YOUR-PLATFORM", platform.rstrip("/"))) for name, value in groups[0]]
        with server(built_site, headers, types) as booklet:
            for folder in folders:
                link = f"{booklet}coulombs-law.html#question=coulomb.force&only=form"
                frame = f'<!doctype html><title>f</title><iframe src="{link}" width="900" height="900"></iframe>'
                (folder / "a.html").write_text(frame, encoding="utf-8")
            yield booklet, platform + "a.html", stranger + "a.html"


def test_the_page_prints_the_rules_that_are_needed(built_site: Path) -> None:
    """The policy stands there in one line; each kind of file that is shipped has its type."""
    groups, types = printed(built_site)
    first = dict(groups[0])
    assert "script-src 'self' 'wasm-unsafe-eval';" in first["Content-Security-Policy"]
    assert "frame-ancestors 'self' https://YOUR-PLATFORM;" in first["Content-Security-Policy"]
    shipped = {file.suffix for file in built_site.rglob("*.*") if file.is_file()}
    assert shipped - set(types) == set()
    assert dict(groups[1]) == {"Cache-Control": "public, max-age=31536000, immutable"}


def test_a_question_is_solved_behind_the_printed_headers(framed: tuple[str, str, str], own_page: Page) -> None:
    """Other numbers give another answer; no header, policy or type is in the way."""
    own_page.goto(framed[0] + "coulombs-law/force.html")
    section = own_page.locator('section.question[data-question="coulomb.force"]')
    section.locator('form.numbers [name="Q1"]').fill("+16 nC")
    expect(section.locator(".given")).to_contain_text("16", timeout=20_000)
    assert own_page.evaluate("window.bookletRuntime.how") == {
        "place": "shared",
        "start": "snapshot",
        "source": "http",
    }


# Where a page has begun to start Python it is heard out.
STARTED_WELL = """async () => {
  const runtime = window.bookletRuntime;
  return !runtime || runtime.state === "idle" || (await runtime.ask("settings", {})).ok;
}"""


def test_every_page_opens_behind_the_printed_headers(
    framed: tuple[str, str, str], built_site: Path, own_page: Page
) -> None:
    """No page breaks the policy, its search included; of questions, whose pages are of one make, one a chapter."""
    names = [file.relative_to(built_site).as_posix() for file in sorted(built_site.glob("*.html"))]
    for name in [*names, *(chapter.entries[-1].address for chapter in chapters())]:
        if name != "404.html":
            own_page.goto(framed[0] + name)
            assert own_page.evaluate(STARTED_WELL)
    own_page.goto(framed[0] + "index.html")
    own_page.get_by_role("textbox", name="Find a word, a law, a question").click()
    own_page.keyboard.type("Coulomb")
    expect(own_page.locator(".md-search-result__link").first).to_be_visible()


def test_only_the_platform_named_may_frame_it(framed: tuple[str, str, str], chromium: Browser) -> None:
    """The learning platform shows the form; another site shows nothing of it."""
    page = chromium.new_page()
    page.goto(framed[1])
    form = page.frame_locator("iframe").locator('form.numbers [name="Q1"]').first
    expect(form).to_be_visible(timeout=20_000)
    page.goto(framed[2])
    page.wait_for_load_state("networkidle")
    assert page.frame_locator("iframe").locator("form.numbers").count() == 0
    page.close()
