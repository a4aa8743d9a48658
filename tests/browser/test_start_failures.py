"""Real pages whose calculator does not arrive, does not start, or belongs to another build."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Route, expect

from serve import serving

pytestmark = pytest.mark.browser

PREFIX = "class/notes/"
SIGN_IN = "<!doctype html><title>Sign in</title><p>Sign in to use this network."
NOT_ARRIVED = "The calculator did not arrive with this page"


@pytest.fixture
def bare(chromium: Browser) -> Iterator[BrowserContext]:
    """A context whose pages may complain: these tests break things on purpose.

    Its browser has no shared worker, whose requests could not be answered wrongly.
    """
    context = chromium.new_context(viewport={"width": 1366, "height": 768})
    context.add_init_script("delete window.SharedWorker;")
    yield context
    context.close()


def gone(route: Route) -> None:
    """A server that does not have the file."""
    route.fulfill(status=404, content_type="text/html", body="<!doctype html><p>Not found")


def signed_out(route: Route) -> None:
    """A network that answers everything with its sign-in page."""
    route.fulfill(content_type="text/html", body=SIGN_IN)


@pytest.mark.parametrize("answer", [gone, signed_out])
def test_without_the_loader_the_page_says_so_and_stays(
    served: str, bare: BrowserContext, answer: Callable[[Route], None]
) -> None:
    """Each form carries one sentence; the worked example, typing and links go on working."""
    bare.route("**/runtime/loader.js*", answer)
    page = bare.new_page()
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(error.message))
    page.goto(f"{served}coulombs-law/force.html")
    form = page.locator('form.numbers[data-question="coulomb.force"]')
    expect(form.locator(".status")).to_contain_text(NOT_ARRIVED)
    area = form.locator("xpath=..").locator(".answer-area")
    expect(area).to_contain_text("N")
    example = area.inner_text()
    form.locator('input[name="Q1"]').fill("3 nC")
    expect(form.locator(".problem.whole")).to_contain_text(NOT_ARRIVED)
    assert area.inner_text() == example
    assert form.locator('input[name="Q1"]').input_value() == "3 nC"
    # The page that is no script is a syntax error of its own; nothing of ours stumbles over it.
    assert [text for text in errors if "Unexpected token" not in text] == []


@pytest.mark.parametrize("name", ["practice.html", "worksheet.html", "data-sheet.html"])
def test_no_page_stumbles_over_a_missing_loader(served: str, bare: BrowserContext, name: str) -> None:
    """Pages of other tools open without an error too."""
    bare.route("**/runtime/loader.js*", gone)
    page = bare.new_page()
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(error.message))
    page.goto(f"{served}{name}")
    page.wait_for_load_state("networkidle")
    expect(page.locator("h1").first).to_be_visible()
    assert errors == []


def test_a_failed_start_is_told_beside_each_form(served: str, bare: BrowserContext) -> None:
    """Nobody has to type first to learn that nothing will be worked out."""
    bare.route("**/runtime/core-*", signed_out)
    page = bare.new_page()
    page.goto(f"{served}coulombs-law/force.html")
    for status in page.locator("form.numbers .status").all():
        expect(status).to_contain_text("if this network asks you to sign in")


@pytest.fixture
def updatable(built_site: Path, tmp_path: Path) -> Iterator[tuple[str, Callable[[], None]]]:
    """The built site's address, and what replaces the runtime by that of a later build."""
    site = tmp_path / "site"
    shutil.copytree(built_site, site, ignore=shutil.ignore_patterns("*.zip", "disk-*"))
    runtime = site / "assets" / "runtime"

    def update() -> None:
        worker = re.search(r"worker-([0-9a-f]{12})", next(runtime.glob("worker-*")).name)
        assert worker
        for file in list(runtime.glob("*-*")):
            file.rename(runtime / file.name.replace(worker[1], "0123456789ab"))
        loader = runtime / "loader.js"
        loader.write_text(loader.read_text("utf-8").replace(worker[1], "0123456789ab"), "utf-8")

    with serving(site, PREFIX) as address:
        yield address, update


def hold_the_worker(context: BrowserContext) -> Callable[[], None]:
    """Keep pages from getting the worker's file until the function returned is called."""
    held: list[Route] | None = []

    def answer(route: Route) -> None:
        if held is None:
            route.continue_()
        else:
            held.append(route)

    def let_go() -> None:
        nonlocal held
        waiting, held = held or [], None
        for route in waiting:
            route.continue_()

    context.route("**/runtime/worker-*", answer)
    return let_go


def test_an_updated_site_keeps_what_was_typed(updatable: tuple[str, Callable[[], None]], bare: BrowserContext) -> None:
    """Boxes typed into before the page reloaded itself are filled after, and answered."""
    address, update = updatable
    page = bare.new_page()
    let_go = hold_the_worker(bare)
    page.goto(f"{address}coulombs-law/force.html")
    boxes = {
        ("coulomb.force", "Q1"): "3 nC",
        ("coulomb.force", "r"): "7 cm",
        ("coulomb.force", "Q2"): "-5 nC",
    }
    for (question, name), text in boxes.items():
        page.locator(f'form.numbers[data-question="{question}"] input[name="{name}"]').fill(text)
    update()
    with page.expect_event("load"):
        let_go()
    assert page.evaluate("bookletRuntime.ask('settings', {})")["ok"]
    for (question, name), text in boxes.items():
        box = page.locator(f'form.numbers[data-question="{question}"] input[name="{name}"]')
        assert box.input_value().replace(" ", "") == text.replace(" ", "")
    area = page.locator('section.question[data-question="coulomb.force"] .answer-area')
    expect(area).to_contain_text("2,76")


def test_an_updated_site_keeps_a_worksheet_form(
    updatable: tuple[str, Callable[[], None]], bare: BrowserContext
) -> None:
    """Boxes that no link of a question carries go over by their names."""
    address, update = updatable
    page = bare.new_page()
    let_go = hold_the_worker(bare)
    page.goto(f"{address}worksheet.html")
    page.evaluate("() => { bookletRuntime.start(); }")
    page.locator('main [name="heading"]').fill("Class test, week 4")
    update()
    with page.expect_event("load"):
        let_go()
    expect(page.locator('main [name="heading"]')).to_have_value("Class test, week 4")


def test_the_search_works_where_storage_is_denied(place: str, bare: BrowserContext) -> None:
    """A browser that throws when asked for storage still searches and answers."""
    bare.add_init_script("""for (const name of ["localStorage", "sessionStorage"]) {
          Object.defineProperty(window, name, {
            configurable: true,
            get() { throw new DOMException("denied", "SecurityError"); },
          });
        }""")
    page = bare.new_page()
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(error.message))
    page.goto(f"{place}coulombs-law/force.html")
    page.get_by_role("textbox", name="Find a word, a law, a question").click()
    page.keyboard.type("equilibrium")
    expect(page.locator(".md-search-result__link").first).to_be_visible()
    assert page.evaluate("bookletRuntime.ask('settings', {})")["ok"]
    assert errors == []
