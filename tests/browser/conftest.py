"""A browser, the built site served and from disk, and pages that fail a test on any complaint."""

from __future__ import annotations

import zipfile
from collections.abc import Callable, Generator, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from build_site import ZIP, ZIP_FOLDER
from serve import serving
from toolbox import CHROMIUM_ARGUMENTS, ensure_chromium

PREFIX = "class/notes/"
DESKTOP = {"viewport": {"width": 1280, "height": 900}}
PHONE = {"viewport": {"width": 360, "height": 740}, "is_mobile": True, "has_touch": True}

OpenContext = Callable[..., BrowserContext]
OpenPage = Callable[..., Page]
FAILED = pytest.StashKey[bool]()


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
    """Both ways to open the site: a test that asks for this runs once for each.

    From disk differ how Python comes and where it runs, what is kept, links that are made, files, search and paper: of
    these, and of each kind of page, there are tests for both. What one script does alike in both is tested served.
    """
    return request.getfixturevalue(request.param)


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """One Chromium for all browser tests."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=str(ensure_chromium()), args=CHROMIUM_ARGUMENTS)
        yield browser
        browser.close()


# --- A context for one test ---------------------------------------------------------------------


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
def own_page(open_context: OpenContext) -> Page:
    """A watched page of a desktop browser that was never used: nothing was fetched before, nothing runs."""
    return open_context(**DESKTOP).new_page()


# --- Contexts that serve one test after the other -----------------------------------------------


# What a test does to a tab that outlasts its pages: such a tab is closed after it.
LASTING = ("add_init_script", "on", "once", "route", "expose_function", "expose_binding", "add_locator_handler")


class SharedContext:
    """A context whose tabs find Python running, as all but the first of a reader's do.

    Every test has an empty tab and finds nothing stored; the tab itself may have served before, for a new one takes
    longer than the page in it. What changes the context (scripts for all its pages, a clock, no network) and what
    watches how Python starts belongs into one of the test's own.
    """

    def __init__(self, browser: Browser, address: str, script: str = "", **options: Any) -> None:
        """Open a page of the site, which keeps the worker of all pages alive; ``script`` runs first in every page."""
        self.complaints: list[str] = []
        self._viewport = options["viewport"]
        self._context = browser.new_context(**options)
        _watch(self._context, self.complaints)
        if script:
            self._context.add_init_script(script)
        self._keeper = self._context.new_page()
        self._keeper.goto(address)
        assert self._keeper.evaluate("bookletRuntime.ask('settings', {})")["ok"]
        assert self._keeper.evaluate("bookletRuntime.how.place") == "shared"
        self._session = self._context.new_cdp_session(self._keeper)
        self._tab: Page | None = None
        self._origins = [self._keeper.evaluate("location.origin"), "file://"]

    def new_page(self) -> Page:
        """A tab for a test that begins: nothing is kept of the tests before it."""
        self._context.clear_cookies()
        for origin in self._origins:
            self._session.send("Storage.clearDataForOrigin", {"origin": origin, "storageTypes": "all"})
        if self._tab is None or self._tab.is_closed():
            self._tab = self._context.new_page()
            for name in LASTING:
                setattr(self._tab, name, self._noted(getattr(self._tab, name)))
        return self._tab

    def close_pages(self) -> None:
        """Leave the page of a test that ends, and close all tabs but one that can serve again.

        One closed in the middle of loading might never say that it did.
        """
        for page in self._context.pages:
            if page is self._keeper:
                continue
            if page is self._tab:
                page.evaluate("(() => { try { sessionStorage.clear(); } catch {} })()")
                page.goto("about:blank")
                page.emulate_media(media="null", color_scheme="null")
                page.set_viewport_size(self._viewport)
            else:
                page.goto("about:blank")
                page.close()

    def _noted(self, method: Callable[..., Any]) -> Callable[..., Any]:
        """The method of the tab, which serves no other test once it was called."""

        def call(*given: Any, **named: Any) -> Any:
            self._tab = None
            return method(*given, **named)

        return call

    def close(self) -> None:
        """Close everything."""
        self._context.close()


class SharedContexts:
    """The shared contexts of one worker process: one for each set of options, made when first asked for."""

    def __init__(self, browser: Browser, address: str) -> None:
        self._browser, self._address = browser, address
        self._open: dict[str, SharedContext] = {}

    def get(self, **options: Any) -> SharedContext:
        """The context with these options of Browser.new_context, or with a ``script`` that runs first in its pages."""
        kind = repr(sorted(options.items()))
        if kind not in self._open:
            self._open[kind] = SharedContext(self._browser, self._address, **options)
        return self._open[kind]

    def close(self) -> None:
        """Close all; those asked for later are new ones."""
        while self._open:
            self._open.popitem()[1].close()


@pytest.fixture(scope="session")
def shared_contexts(chromium: Browser, served: str) -> Iterator[SharedContexts]:
    """Contexts that serve one test after the other."""
    contexts = SharedContexts(chromium, f"{served}coulombs-law/force.html")
    yield contexts
    contexts.close()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item) -> Generator[None, Any, Any]:
    """Note of a test that it failed."""
    report = yield
    if report.failed:
        item.stash[FAILED] = True
    return report


@pytest.fixture
def shared_page(request: pytest.FixtureRequest, shared_contexts: SharedContexts) -> Iterator[OpenPage]:
    """Open a watched page of a shared context, once for each set of options; a complaint fails the test at its end.

    After a test that failed no context is used again: the next one finds none of what went wrong.
    """
    used: list[SharedContext] = []

    def open_one(**options: object) -> Page:
        context = shared_contexts.get(**options)
        assert context not in used, "one tab for a set of options; page.context has more"
        used.append(context)
        return context.new_page()

    yield open_one
    complaints = ["the tabs of this test could not be closed"]
    try:
        for context in used:
            context.close_pages()
        complaints = [text for context in used for text in context.complaints]
    finally:
        if complaints or FAILED in request.node.stash:
            shared_contexts.close()
    assert not complaints, "\n".join(complaints)


@pytest.fixture
def page(shared_page: OpenPage) -> Page:
    """A watched page of a desktop browser, for which Python may be running already."""
    return shared_page(**DESKTOP)


@pytest.fixture
def phone_page(shared_page: OpenPage) -> Page:
    """A watched page of a small phone, 360 px wide, for which Python may be running already."""
    return shared_page(**PHONE)


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
    context.on("console", lambda m: note(f"console: {m.text}") if m.type in {"error", "warning"} else None)
    context.on("weberror", lambda e: note(f"uncaught: {e.error}"))
