"""Tables of rows, links with tables, parts asked for and refusals, on the pages of their questions."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser


def test_rows_of_a_table_can_be_added_and_removed(served: str, page: Page) -> None:
    """A charge is added, counts at once, and is removed again."""
    page.goto(f"{served}several-charges/plane.html")
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


def test_a_bad_cell_gets_its_sentence_in_its_row(served: str, page: Page) -> None:
    """A cell that cannot be read is marked, not its neighbours."""
    page.goto(f"{served}several-charges/plane.html")
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


def test_a_link_may_ask_for_one_part(served: str, page: Page) -> None:
    """Of a whole question only the part asked for is open."""
    page.goto(f"{served}equilibrium/foil-balls.html#q=equilibrium.foil-balls&m=2g&L=60cm&beta=30&part=draw")
    section = page.locator('section.question[data-question="equilibrium.foil-balls"]')
    expect(section.locator(".story")).to_contain_text("60", timeout=20_000)
    opened = section.locator("details.part[open]")
    expect(opened).to_have_count(1)


def test_a_slack_string_is_said(served: str, page: Page) -> None:
    """Charges that lift the sphere more than its weight component are refused with the reason."""
    page.goto(served + "equilibrium/slope.html")
    section = page.locator('section.question[data-question="equilibrium.slope"]')
    section.locator('form.numbers [name="r"]').fill("0,5 cm")
    expect(section.locator("form.numbers .problem:visible").first).to_contain_text(
        "A string cannot push", timeout=20_000
    )


def test_equal_unlike_charges_have_no_null_point(served: str, page: Page) -> None:
    """The field page refuses what does not exist."""
    page.goto(served + "electric-field/null.html#q=electric-field.null&Q1=5nC&Q2=-5nC&D=20cm")
    section = page.locator('section.question[data-question="electric-field.null"]')
    expect(section.locator(".problem:visible").first).to_contain_text(
        "No null point at a finite distance", timeout=20_000
    )
