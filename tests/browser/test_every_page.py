"""Each page of the booklet opened once: as it stands on a phone, on paper, from a server and from disk."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from chapters import DOCS, Entry, chapters
from tests.browser.conftest import PHONE
from tests.browser.test_formulas_shown import CUT

pytestmark = pytest.mark.browser

ENTRIES = [entry for chapter in chapters() for entry in chapter.entries]
# Pages that are not one question's: chapters, practice, worksheets, the data sheet, ...
GENERAL = sorted(f"{file.stem}.html" for file in DOCS.glob("*.md"))
# Opened from disk: all general pages, and of each chapter the first question; its last one is worked there.
FROM_DISK = [*GENERAL, *(chapter.entries[0].address for chapter in chapters())]
EVERY = [*GENERAL, *(entry.address for entry in ENTRIES)]


def test_no_page_is_left_out(built_site: Path) -> None:
    """The pages opened here are the pages of the site, but for the one that answers a wrong address."""
    built = {file.relative_to(built_site).as_posix() for file in built_site.rglob("*.html")}
    assert built == {*EVERY, "404.html"}


# Parts of a page unfolded. That of an own answer folds the worked one, so it is opened only when all else was seen.
UNFOLD = "(which) => document.querySelectorAll(which).forEach((node) => { node.open = true; })"
ALL_BUT_MINE = "details:not(.check-mine)"
# Lines that scroll, which they cannot on paper.
OVER = """() => [...document.querySelectorAll(".tex.display")]
  .filter((node) => node.scrollWidth > node.clientWidth + 1).map((node) => node.textContent)"""


def fits_a_phone(page: Page) -> bool:
    """Whether the page as it stands is no wider than a 360 px screen."""
    return bool(page.evaluate("document.documentElement.scrollWidth") <= 360)


def cut_on_paper(page: Page) -> list[str]:
    """The lines and formulas that a sheet of A4 would cut off; the page is on the screen again after."""
    page.set_viewport_size({"width": 672, "height": 900})  # 210 mm less the margins of 16 mm
    page.emulate_media(media="print")
    cut = [*page.evaluate(OVER), *page.evaluate(CUT)]
    page.emulate_media(media="screen")
    page.set_viewport_size(PHONE["viewport"])
    return cut


@pytest.mark.parametrize("name", GENERAL)
def test_a_page_fits_a_phone_and_paper(served: str, phone_page: Page, name: str) -> None:
    """It opens without complaint, is no wider than a 360 px screen, and on A4 no line is cut: nothing scrolls there."""
    phone_page.goto(served + name)
    expect(phone_page.locator("h1").first).to_be_visible()
    phone_page.evaluate(UNFOLD, "details")
    assert fits_a_phone(phone_page)
    assert cut_on_paper(phone_page) == []


@pytest.mark.parametrize("name", FROM_DISK)
def test_a_page_from_disk_opens_and_shows_no_folder(from_disk: str, page: Page, name: str) -> None:
    """It misses no file, and on paper neither its text nor what print styles add names the folder it lies in."""
    page.goto(from_disk + name)  # until all that the page names has come
    expect(page.locator("h1").first).to_be_visible()
    page.emulate_media(media="print")
    shown = page.evaluate("""() => {
            dispatchEvent(new Event("beforeprint"));
            const added = [...document.querySelectorAll("article *, footer *")].flatMap((node) =>
                ["::before", "::after"].map((part) => getComputedStyle(node, part).content));
            return [document.title, document.body.innerText, ...new Set(added)].join("\\n");
        }""")
    assert "file:" not in shown
    assert "attr(" not in shown


def test_lines_were_there_to_be_cut(served: str, page: Page) -> None:
    """The lines that are looked at are on the pages of questions."""
    page.goto(served + ENTRIES[0].address)
    assert page.locator(".tex.display").count() > 2


def fits_and_works(page: Page, entry: Entry) -> None:
    """A question's page, opened on a phone: as built it fits; its form, sent as it stands, gives a fresh worked answer
    and no problem; with every part open that fits a phone and paper."""
    expect(page.locator("h1").first).to_be_visible()
    page.evaluate(UNFOLD, ALL_BUT_MINE)
    assert fits_a_phone(page)
    section = page.locator(f'section.question[data-question="{entry.key}"]')
    area = section.locator(".answer-area")
    area.evaluate("node => node.replaceChildren()")
    section.locator(".show-working").click()
    expect(area.locator(".worked .total")).to_be_visible(timeout=20_000)
    expect(section.locator("form.numbers .problem:visible")).to_have_count(0)
    expect(area).to_have_class("answer-area")
    expect(area.locator(".waiting")).to_have_count(0, timeout=20_000)  # drawings and folded parts follow the lines
    assert area.locator(".tex").count() == area.locator(".tex:has(math)").count() > 0
    page.evaluate(UNFOLD, "details")
    assert fits_a_phone(page)
    assert cut_on_paper(page) == []


# Served, every question is worked where its links are tried: test_links.py. What a page does with an answer is the same
# from disk, and that Python's answers are test_same_answers.py shows: there a chapter's last question is enough.
@pytest.mark.parametrize("entry", [chapter.entries[-1] for chapter in chapters()], ids=lambda entry: entry.key)
def test_a_question_from_disk_fits_and_works_its_numbers(from_disk: str, phone_page: Page, entry: Entry) -> None:
    """The page of a chapter's last question does so without a server."""
    phone_page.goto(from_disk + entry.address)
    fits_and_works(phone_page, entry)
