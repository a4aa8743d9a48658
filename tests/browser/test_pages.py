"""Every topic page in a real browser: each of its questions works, from its form and from a link."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from chapters import Chapter, chapters

pytestmark = pytest.mark.browser

CHAPTERS = {chapter.page: chapter for chapter in chapters()}


@pytest.mark.parametrize("chapter", CHAPTERS.values(), ids=CHAPTERS)
def test_every_form_of_a_page_works_its_numbers(place: str, page: Page, chapter: Chapter) -> None:
    """Each question's form, sent as it stands, gives a fresh worked answer and no problem."""
    for entry in chapter.entries:
        page.goto(f"{place}{entry.address}")
        section = page.locator(f'section.question[data-question="{entry.key}"]')
        area = section.locator(".answer-area")
        area.evaluate("node => node.replaceChildren()")
        section.locator(".show-working").click()
        expect(area.locator(".worked .total")).to_be_visible(timeout=20_000)
        expect(section.locator("form.numbers .problem:visible")).to_have_count(0)
        expect(area).to_have_class("answer-area")
        assert area.locator(".tex").count() == area.locator(".tex:has(math)").count()


@pytest.mark.parametrize("chapter", CHAPTERS.values(), ids=CHAPTERS)
def test_every_page_fits_a_phone_after_solving(served: str, phone_page: Page, chapter: Chapter) -> None:
    """With every fold open nothing is wider than 360 px."""
    for entry in chapter.entries:
        phone_page.goto(f"{served}{entry.address}")
        phone_page.evaluate("document.querySelectorAll('details.part').forEach((d) => { d.open = true; })")
        assert phone_page.evaluate("document.documentElement.scrollWidth") <= 360, entry.key


def test_rows_of_a_table_can_be_added_and_removed(place: str, page: Page) -> None:
    """A charge is added, counts at once, and is removed again."""
    page.goto(f"{place}several-charges/plane.html")
    section = page.locator('section.question[data-question="several-charges.plane"]')
    rows = section.locator("table.rows tbody tr")
    first = rows.count()
    section.locator(".add-row").click()
    expect(rows).to_have_count(first + 1)
    for column, typed in (("Q", "+4 nC"), ("x", "30 cm"), ("y", "-40 cm")):
        section.locator(f'[name="charges.{first}.{column}"]').fill(typed)
    expect(section.locator(".story")).to_contain_text(f"charge {first + 1}, +4", timeout=20_000)
    section.locator(".remove-row").last.click()
    expect(rows).to_have_count(first)
    expect(section.locator(".story")).not_to_contain_text(f"charge {first + 1}")


def test_a_bad_cell_gets_its_sentence_in_its_row(place: str, page: Page) -> None:
    """A cell that cannot be read is marked, not its neighbours."""
    page.goto(f"{place}several-charges/plane.html")
    section = page.locator('section.question[data-question="several-charges.plane"]')
    section.locator('[name="charges.1.x"]').fill("far")
    expect(section.locator('td[data-field="charges.1.x"] .problem')).to_be_visible(timeout=20_000)
    expect(section.locator("td .problem:visible")).to_have_count(1)


def test_a_link_with_a_table_opens_solved(place: str, page: Page) -> None:
    """Rows parted by ~ and cells by _ fill the table."""
    link = "several-charges/plane.html#q=several-charges.plane&charges=+2uC_0_0~+3uC_0,3_0~-4uC_0_0,4&on=1"
    page.goto(place + link)
    section = page.locator('section.question[data-question="several-charges.plane"]')
    expect(section.locator(".answer .spoken").last).to_be_attached()
    expect(section.locator(".answer-area")).to_contain_text("36,87", timeout=20_000)
    expect(section.locator("table.rows tbody tr")).to_have_count(3)


def test_a_link_may_ask_for_one_part(place: str, page: Page) -> None:
    """Of a whole question only the part asked for is open."""
    page.goto(f"{place}equilibrium/foil-balls.html#q=equilibrium.foil-balls&m=2g&L=60cm&beta=30&part=draw")
    section = page.locator('section.question[data-question="equilibrium.foil-balls"]')
    expect(section.locator(".story")).to_contain_text("60", timeout=20_000)
    opened = section.locator("details.part[open]")
    expect(opened).to_have_count(1)


def test_a_slack_string_is_said(place: str, page: Page) -> None:
    """Charges that lift the sphere more than its weight component are refused with the reason."""
    page.goto(place + "equilibrium/slope.html")
    section = page.locator('section.question[data-question="equilibrium.slope"]')
    section.locator('form.numbers [name="r"]').fill("0,5 cm")
    expect(section.locator("form.numbers .problem:visible").first).to_contain_text(
        "A string cannot push", timeout=20_000
    )


def test_equal_unlike_charges_have_no_null_point(place: str, page: Page) -> None:
    """The field page refuses what does not exist."""
    page.goto(place + "electric-field/null.html#q=electric-field.null&Q1=5nC&Q2=-5nC&D=20cm")
    section = page.locator('section.question[data-question="electric-field.null"]')
    expect(section.locator(".problem:visible").first).to_contain_text(
        "No null point at a finite distance", timeout=20_000
    )
