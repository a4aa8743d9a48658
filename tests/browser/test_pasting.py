"""A table copied from a spreadsheet and pasted into a form's, with the real clipboard."""

from __future__ import annotations

import pytest
from playwright.sync_api import Locator, Page, expect

pytestmark = pytest.mark.browser

SLOW = 20_000
COPIED = """(text) => {
  const box = document.createElement("textarea");
  document.body.append(box);
  box.value = text;
  box.select();
  document.execCommand("copy");
  box.remove();
}"""
HEADED = "V (V)\tI (mA)\n1,45\t100\n1,40\t200\n1,35\t300\n1,30\t400\n"  # on ε = 1,50 V with r = 0,50 Ω


def section_of(page: Page, address: str, key: str) -> Locator:
    """The question on its page, with its runtime there."""
    page.goto(address)
    return page.locator(f'section.question[data-question="{key}"]')


def paste(page: Page, box: Locator, text: str) -> None:
    """Copy a text and paste it as a reader does."""
    page.evaluate(COPIED, text)
    box.focus()
    page.keyboard.press("Control+V")


def cells(section: Locator) -> list[list[str]]:
    """What stands in the table."""
    found: list[list[str]] = section.locator("table.rows tbody").evaluate(
        "(body) => [...body.rows].map((row) => [...row.querySelectorAll('input')].map((box) => box.value))"
    )
    return found


def test_a_pasted_table_is_answered_and_its_link_opens_the_same(place: str, page: Page) -> None:
    """Headings put units and columns right, the example's rows go, and the address holds what was pasted."""
    section = section_of(page, f"{place}circuits/readings.html", "circuits.readings")
    expect(section.locator(".pasted")).to_contain_text("can be pasted into the first box")
    example = cells(section)
    paste(page, section.locator("table.rows input").first, HEADED)
    wanted = [["100 mA", "1,45 V"], ["200 mA", "1,40 V"], ["300 mA", "1,35 V"], ["400 mA", "1,30 V"]]
    assert cells(section) == wanted
    expect(section.locator(".pasted")).to_have_text(
        "4 rows pasted. The units are those of the headings. By their headings the columns go like this: “I (mA)” is"
        " current, “V (V)” is potential difference."
    )
    expect(section.locator(".heard")).to_contain_text("0,50 ohm", timeout=SLOW)
    expect(section.locator(".heard")).to_contain_text("1,50 volt")
    expect(section.locator(".problem:visible")).to_have_count(0)
    page.wait_for_url("**/*readings=*400mA_1,30V*")
    again = section_of(page, page.url, "circuits.readings")
    page.reload()
    expect(again.locator(".heard")).to_contain_text("0,50 ohm", timeout=SLOW)
    assert cells(again) == [[text.replace(" ", "") for text in row] for row in wanted]
    again.locator(".more summary").click()
    again.locator(".back-to-example").click()
    assert cells(again) == example
    expect(again.locator(".pasted")).to_contain_text("can be pasted into the first box")


def test_what_was_typed_is_kept_or_named(served: str, page: Page) -> None:
    """Rows below stay where a reader typed them; what is written over is told; a refusal changes nothing."""
    section = section_of(page, f"{served}circuits/ohm.html", "circuits.ohm")
    first = section.locator("table.rows input").first
    for name, text in (("readings.0.I", "0,11 A"), ("readings.4.V", "5,5 V")):
        section.locator(f'[name="{name}"]').fill(text)
    before = cells(section)
    paste(page, first, "0,1\n0,2\n0,3\n")
    assert cells(section) == before
    expect(section.locator(".pasted")).to_have_text(
        "Only 1 column came, and this table has 2: Current and Potential difference. Copy the columns together, side by"
        " side. Nothing was changed."
    )
    paste(page, first, "0.2 A;2.1 V\r\nbroken;wire\r\n0.4 A;4.2 V\r\n")
    assert cells(section) == [["0.2 A", "2.1 V"], ["0.4 A", "4.2 V"], ["0,50 A", "5,5 V"]]
    expect(section.locator(".pasted")).to_have_text(
        "2 rows pasted. The row “broken; wire” was left out: “broken” is not a number. This was replaced: “0,11 A;"
        " 0,99 V”. Below them stays what was typed before: “0,50 A; 5,5 V”. Remove what does not belong."
    )
    paste(page, first, "0,3 A")
    assert cells(section)[0][0] == "0.2 A0,3 A", "one number goes into its box as everywhere"


def test_a_table_is_pasted_on_a_phone_up_to_the_limit(served: str, phone_page: Page) -> None:
    """Rows are added as far as the table goes, powers of ten of a heading count, and no page grows sideways."""
    section = section_of(phone_page, f"{served}photoelectric/readings.html", "photoelectric.readings")
    rows = "".join(f"{5 + n},0\t{0.33 + 0.414 * n:.3f}\n".replace(".", ",") for n in range(14))
    paste(phone_page, section.locator("table.rows input").first, "f / 10^14 Hz\tEk (eV)\n" + rows)
    found = cells(section)
    assert found[0] == ["5,0 x 10^14 Hz", "0,330 eV"]
    assert len(found) == 12
    expect(section.locator(".pasted")).to_contain_text(
        "12 rows pasted. The units are those of the headings. The table holds no more: 2 rows from 17,0; 5,298 on were"
        " left out."
    )
    expect(section.locator(".heard")).to_contain_text("6,62 times 10 to the power minus 34", timeout=SLOW)
    assert phone_page.evaluate("document.documentElement.scrollWidth") <= 360


def test_three_columns_find_their_places(served: str, page: Page) -> None:
    """Charges with their positions, the columns in another order; a bad cell is asked about in its row."""
    section = section_of(page, f"{served}several-charges/plane.html", "several-charges.plane")
    paste(
        page,
        section.locator("table.rows input").first,
        "x (cm)\ty (cm)\tQ (uC)\n0\t0\t+2\n30\t0\t+3\n0\t40\t-4\n60\t0\t2..5\n",
    )
    assert cells(section)[2] == ["-4 uC", "0 cm", "40 cm"]
    expect(section.locator('td[data-field="charges.3.Q"] .problem')).to_be_visible(timeout=SLOW)
    section.locator(".remove-row").last.click()
    expect(section.locator(".answer-area")).to_contain_text("36,87", timeout=SLOW)
