"""What a page fetches: little where the browser asks for little, and nothing twice."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

SLOW = 30_000
SAVING = 'Object.defineProperty(navigator, "connection", { configurable: true, value: { saveData: true } });'
WAITING = "Your browser asks to save data, so the calculator is not fetched yet."


def big_files(page: Page) -> list[str]:
    """The files of the runtime that the page asks for from now on, but its loader."""
    asked: list[str] = []
    page.context.on(
        "request", lambda r: asked.append(r.url) if "/runtime/" in r.url and "loader" not in r.url else None
    )
    return asked


@pytest.mark.parametrize("name", ["coulombs-law/force.html", "practice.html", "worksheet.html"])
def test_with_data_saving_the_calculator_waits_and_says_so(served: str, own_page: Page, name: str) -> None:
    """Nothing of the runtime is fetched while the page is read; a calm line says what a touch of a box does."""
    own_page.add_init_script(SAVING)
    asked = big_files(own_page)
    own_page.goto(served + name)
    own_page.wait_for_load_state("networkidle")
    expect(own_page.locator("main form .status").first).to_contain_text(WAITING)
    assert asked == []


def test_with_data_saving_a_touched_box_is_answered(served: str, own_page: Page) -> None:
    """Touching a box fetches the calculator, the line goes, and what is typed is worked."""
    own_page.add_init_script(SAVING)
    asked = big_files(own_page)
    own_page.goto(f"{served}coulombs-law/force.html")
    form = own_page.locator("form.numbers")
    expect(form.locator(".status")).to_contain_text(WAITING)
    form.locator('input[type=text][name="Q1"]').fill("3 nC")
    expect(own_page.locator(".heard").first).not_to_be_empty(timeout=SLOW)
    expect(form.locator(".status")).not_to_contain_text(WAITING)
    assert asked != []


def test_with_data_saving_a_link_with_numbers_is_answered(served: str, own_page: Page) -> None:
    """Whoever opens a link asks for its answer."""
    own_page.add_init_script(SAVING)
    own_page.goto(f"{served}coulombs-law/force.html#open.question=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm&find=F")
    expect(own_page.locator(".heard").first).to_contain_text("4,80 times 10", timeout=SLOW)


def test_without_data_saving_the_calculator_comes_with_the_page(served: str, own_page: Page) -> None:
    """It is fetched before anybody types, as the first answer should not wait."""
    asked = big_files(own_page)
    own_page.goto(f"{served}coulombs-law/force.html")
    for _ in range(100):
        if asked:
            return
        own_page.wait_for_timeout(100)
    raise AssertionError("nothing was fetched")


# What the runtime was doing when the page had been read to its end and none of its own scripts had run.
EARLY = 'document.addEventListener("readystatechange", () => { window.early ??= bookletRuntime.state; });'

READY = """new Promise((resolve) => {
  const live = () => { if (bookletRuntime.state === "ready") resolve(); };
  bookletRuntime.onchange(live);
  live();
})"""


@pytest.mark.parametrize(("saving", "early"), [("", {"starting", "ready"}), (SAVING, {"idle"})])
def test_the_next_page_joins_python_while_it_is_read(served: str, own_page: Page, saving: str, early: set[str]) -> None:
    """A page that started the calculator unasked says so to the next one in its tab; one that saves data does not."""
    own_page.add_init_script(EARLY + saving)
    own_page.goto(f"{served}coulombs-law/force.html")
    assert own_page.evaluate("early") == "idle"
    own_page.locator('input[type=text][name="Q1"]').first.focus()
    own_page.evaluate(READY)
    own_page.goto(f"{served}coulombs-law/contact.html")
    assert own_page.evaluate("early") in early
