"""One Python for all pages over http: kept from page to page, shared by tabs, and left where it never ends.

The stand-in package counts its turns, so that a reply tells which Python gave it.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from serve import serving
from tests.browser.test_runtime import (
    ASK,
    NOT_FETCHED,
    PREFIX,
    STOPPED,
    TOO_LONG,
    ask,
    how,
    stand_in_address,
    stand_in_site,
    updatable,
)

__all__ = ["stand_in_address", "stand_in_site", "updatable"]  # fixtures
pytestmark = pytest.mark.browser

ASK_LATER = """([name, operation, data, options]) => {
  window[name] = bookletRuntime.ask(operation, data, options);
}"""


@pytest.fixture
def tabs(chromium: Browser) -> Iterator[BrowserContext]:
    """A browser of its own for each test: what it shares, it shares with no other."""
    context = chromium.new_context()
    yield context
    context.close()


def opened(tabs: BrowserContext, address: str) -> Page:
    """A new tab with Python running."""
    page = tabs.new_page()
    page.goto(f"{address}page.html")
    assert how(page)["place"] == "shared"
    return page


def turn(page: Page) -> int:
    """Which question this is that its Python was asked for its turn."""
    found: int = ask(page, "turn")["data"]["turn"]
    return found


def stopped(page: Page, operation: str, **data: object) -> str:
    """The sentence that a question without end gets."""
    reply = page.evaluate(ASK, [operation, data, {"limit": 100}])
    sentence: str = reply["errors"][0]["message"]
    return sentence


def test_the_next_page_finds_python_running(stand_in_address: str, tabs: BrowserContext) -> None:
    """What Python holds is still there on the next page, and on the one after a page without it."""
    page = opened(tabs, stand_in_address)
    assert turn(page) == 1
    page.goto(f"{stand_in_address}deep/page.html")
    assert turn(page) == 2
    page.goto("about:blank")
    page.goto(f"{stand_in_address}page.html")
    assert turn(page) == 3


def test_a_page_that_joins_hears_at_once_that_python_runs(stand_in_address: str, tabs: BrowserContext) -> None:
    """One message makes the next page ready; the page that started Python hears first that a worker is there."""
    tabs.add_init_script("""const Shared = SharedWorker;
        window.heard = [];
        window.SharedWorker = class extends Shared {
          constructor(...given) {
            super(...given);
            this.port.addEventListener("message", ({ data }) => heard.push(Object.keys(data)[0]));
          }
        };""")
    page = opened(tabs, stand_in_address)
    assert page.evaluate("heard")[:2] == ["here", "ready"]
    page.goto(f"{stand_in_address}deep/page.html")
    assert how(page)["place"] == "shared"
    assert page.evaluate("heard")[0] == "ready"


def test_tabs_share_one_python_and_each_gets_its_own_replies(stand_in_address: str, tabs: BrowserContext) -> None:
    """Questions of two tabs at once are answered, each to the tab that asked."""
    one, two = opened(tabs, stand_in_address), opened(tabs, stand_in_address)
    for page, name in ((one, "one"), (two, "two")):
        for number in range(5):
            page.evaluate(ASK_LATER, [f"reply{number}", "echo", {"tab": name, "number": number}, {}])
    for page, name in ((one, "one"), (two, "two")):
        for number in range(5):
            assert page.evaluate(f"window.reply{number}")["data"] == {"tab": name, "number": number}
    assert [turn(one), turn(two)] == [1, 2]


def test_stopping_in_one_tab_leaves_the_other_alone(stand_in_address: str, tabs: BrowserContext) -> None:
    """A calculation without end is interrupted by its own clock; Python and what it holds stay."""
    one, two = opened(tabs, stand_in_address), opened(tabs, stand_in_address)
    assert turn(two) == 1
    one.evaluate(ASK_LATER, ["endless", "slow", {"seconds": 600}, {"limit": 300}])
    assert turn(two) == 2
    assert TOO_LONG in one.evaluate("window.endless")["errors"][0]["message"]
    assert turn(one) == 3


def test_however_often_python_is_interrupted_it_stays(stand_in_address: str, tabs: BrowserContext) -> None:
    """Being stopped uses nothing up."""
    page = opened(tabs, stand_in_address)
    for _ in range(8):
        assert TOO_LONG in stopped(page, "slow", seconds=600)
    assert turn(page) == 1


def test_what_cannot_be_interrupted_is_left_behind(stand_in_address: str, tabs: BrowserContext) -> None:
    """Pages move on to another worker: the page that asked, another tab, the next page, a new tab."""
    one, two = opened(tabs, stand_in_address), opened(tabs, stand_in_address)
    assert turn(two) == 1
    one.evaluate(ASK_LATER, ["endless", "stuck", {}, {"limit": 100}])
    assert turn(two) == 1
    assert TOO_LONG in one.evaluate("window.endless")["errors"][0]["message"]
    assert turn(one) == 2
    one.goto(f"{stand_in_address}deep/page.html")
    assert turn(one) == 3
    three = opened(tabs, stand_in_address)
    assert turn(three) == 4


def test_pages_that_find_no_shared_worker_that_listens_have_their_own(
    stand_in_address: str, tabs: BrowserContext
) -> None:
    """After a few that never end the page is answered by a worker that it can end."""
    page = tabs.new_page()
    page.goto(f"{stand_in_address}hasty.html")
    assert how(page)["place"] == "shared"
    for _ in range(3):
        assert TOO_LONG in stopped(page, "stuck")
    assert how(page)["place"] == "worker"
    assert TOO_LONG in stopped(page, "stuck")
    assert ask(page, "echo", a=1)["ok"]


def test_python_that_ended_is_started_again_for_every_tab(stand_in_address: str, tabs: BrowserContext) -> None:
    """The tab whose question ended it gets a sentence, and both are answered after."""
    one, two = opened(tabs, stand_in_address), opened(tabs, stand_in_address)
    assert turn(two) == 1
    assert STOPPED in ask(one, "end")["errors"][0]["message"]
    assert how(one)["place"] == how(two)["place"] == "shared"
    assert {turn(one), turn(two)} == {1, 2}


def test_old_and_new_pages_have_workers_of_their_own(
    updatable: tuple[str, Callable[[], None]], tabs: BrowserContext
) -> None:
    """A tab opened before an update of the site goes on with its Python; a page opened after has the new one."""
    address, update = updatable
    old = opened(tabs, address)
    assert turn(old) == 1
    update()
    new = opened(tabs, address)
    assert turn(new) == 1
    assert turn(old) == 2
    assert turn(new) == 2


def test_a_page_stopped_in_its_start_by_an_update_is_answered(
    updatable: tuple[str, Callable[[], None]], tabs: BrowserContext
) -> None:
    """A page of before the update that starts Python after it reloads itself, and has the new one."""
    address, update = updatable
    page = tabs.new_page()
    page.goto(f"{address}page.html")
    update()
    with page.expect_event("load"):
        page.evaluate("() => { bookletRuntime.start(); }")
    assert how(page)["place"] == "shared"


def test_a_start_that_failed_is_tried_anew_by_the_next_page(
    stand_in_site: Path, tmp_path: Path, tabs: BrowserContext
) -> None:
    """A file that was missing is told; when it is there again the next page needs no help."""
    site = tmp_path / "site"
    shutil.copytree(stand_in_site, site)
    core = next((site / "assets" / "runtime").glob("core-*"))
    aside = core.rename(tmp_path / core.name)
    with serving(site, PREFIX) as address:
        page = tabs.new_page()
        page.goto(f"{address}page.html")
        assert NOT_FETCHED in ask(page, "root", of=2)["errors"][0]["message"]
        aside.rename(core)
        page.goto(f"{address}deep/page.html")
        assert how(page) == {"place": "shared", "start": "snapshot", "source": "http"}


def test_a_browser_that_keeps_no_worker_has_one_for_each_page(stand_in_address: str, tabs: BrowserContext) -> None:
    """A shared worker that would end with its page brings nothing, so the option must be known."""
    tabs.add_init_script("""{
      const Shared = window.SharedWorker;
      window.SharedWorker = function (address, options) { return new Shared(address, { name: options?.name }); };
    }""")
    page = tabs.new_page()
    page.goto(f"{stand_in_address}page.html")
    assert how(page)["place"] == "worker"


def test_shared_workers_are_refused_without_harm(stand_in_address: str, tabs: BrowserContext) -> None:
    """Where the browser throws for a shared worker, as in some private windows, the page has its own."""
    tabs.add_init_script("""window.SharedWorker = function (address, options) {
      if (options?.extendedLifetime) throw new DOMException("denied", "SecurityError");
    };""")
    page = tabs.new_page()
    page.goto(f"{stand_in_address}page.html")
    assert how(page)["place"] == "worker"
