"""A browser, the built site served and from disk, and pages that fail a test on any complaint."""

from __future__ import annotations

import zipfile
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from build_site import ZIP, ZIP_FOLDER
from serve import serving
from toolbox import CHROMIUM_ARGUMENTS, ensure_chromium

PREFIX = "class/notes/"
PHONE = {"viewport": {"width": 360, "height": 740}, "is_mobile": True, "has_touch": True}

OpenContext = Callable[..., BrowserContext]


@pytest.fixture(scope="session")
def served(built_site: Path) -> Iterator[str]:
    """The address of the site served under a sub-path, with a slash at its end."""
    with serving(built_site, PREFIX) as address:
        yield address


@pytest.fixture(scope="session")
def from_disk(built_site: Path, tmp_path_factory: pytest.TempPathFactory) -> str:
    """The file:// address of the unpacked offline zip, with a slash at its end."""
    folder = tmp_path_factory.mktemp("unpacked")
    with zipfile.ZipFile(ZIP) as packed:
        packed.extractall(folder)
    return f"{(folder / ZIP_FOLDER).as_uri()}/"


@pytest.fixture(params=["served", "from_disk"])
def place(request: pytest.FixtureRequest) -> str:
    """Both ways to open the site: a test that asks for this runs once for each."""
    return request.getfixturevalue(request.param)


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """One Chromium for all browser tests."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=str(ensure_chromium()), args=CHROMIUM_ARGUMENTS)
        yield browser
        browser.close()


@pytest.fixture
def open_context(chromium: Browser) -> Iterator[OpenContext]:
    """Open browser contexts that are watched; the test fails at its end if any page complained.

    A complaint is a request to another host, a request that failed, a console error (a breach of
    the content policy is one), or an uncaught error. Options are those of Browser.new_context.
    """
    contexts: list[BrowserContext] = []
    complaints: list[str] = []

    def open_one(**options: object) -> BrowserContext:
        context = chromium.new_context(**options)
        contexts.append(context)
        _watch(context, complaints)
        return context

    yield open_one
    for context in contexts:
        context.close()
    assert not complaints, "\n".join(complaints)


@pytest.fixture
def page(open_context: OpenContext) -> Page:
    """A watched page of a desktop browser."""
    return open_context(viewport={"width": 1280, "height": 900}).new_page()


@pytest.fixture
def phone_page(open_context: OpenContext) -> Page:
    """A watched page of a small phone, 360 px wide."""
    return open_context(**PHONE).new_page()


def _watch(context: BrowserContext, complaints: list[str]) -> None:
    own = ("http://127.0.0.1:", "file:", "blob:", "data:")

    def note(text: str) -> None:
        complaints.append(text)

    context.on("request", lambda r: None if r.url.startswith(own) else note(f"asked another host: {r.url}"))
    # "Aborted" is a request still under way when the test moved on to another page.
    context.on(
        "requestfailed",
        lambda r: None if r.failure == "net::ERR_ABORTED" else note(f"request failed: {r.url} ({r.failure})"),
    )
    context.on("response", lambda r: note(f"{r.status} for {r.url}") if r.status >= 400 else None)
    context.on("console", lambda m: note(f"console: {m.text}") if m.type in {"error", "warning"} else None)
    context.on("weberror", lambda e: note(f"uncaught: {e.error}"))
