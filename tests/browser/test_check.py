"""Checking a learner's own answer in a real browser, served and from disk."""

from __future__ import annotations

import pytest
from playwright.sync_api import Locator, Page, expect

pytestmark = pytest.mark.browser

CONTACT = "coulombs-law/contact.html#q=coulomb.contact&Q1=9nC&Q2=-4nC&r=20cm"


def open_sheet(page: Page, address: str, key: str) -> Locator:
    """The opened answer sheet of one question."""
    page.goto(address)
    section = page.locator(f'section.question[data-question="{key}"]')
    expect(section.locator(".answer-area .total")).to_be_visible()
    section.locator("details.check-mine > summary").click()
    expect(section.locator(".mark-it")).to_be_visible(timeout=20_000)
    return section


def verdict(section: Locator, part: str) -> Locator:
    """The verdict on one part."""
    return section.locator(f'.verdict[data-part="{part}"]')


def test_right_answers_get_full_marks(served: str, page: Page) -> None:
    """Right values with units and directions earn every calculated mark."""
    section = open_sheet(page, served + CONTACT, "coulomb.contact")
    section.locator('[name="answers.before.value"]').fill("8,1 µN")
    section.locator('select[name="answers.before.direction"]').select_option("attract")
    section.locator('[name="answers.shared.value"]').fill("+2,5e-9 C")
    section.locator('select[name="answers.shared.direction"]').select_option("positive")
    section.locator(".mark-it").click()
    expect(verdict(section, "before").locator(".earned").first).to_have_text("3 of 3")
    expect(verdict(section, "shared").locator(".earned").first).to_have_text("3 of 3")


def test_what_is_typed_while_the_sheet_is_renewed_stays(served: str, page: Page) -> None:
    """New numbers bring a new sheet; what a learner types until it comes, and the place of typing, stay."""
    section = open_sheet(page, served + CONTACT, "coulomb.contact")
    answer = section.locator('[name="answers.before.value"]')
    answer.fill("8,1")
    page.evaluate(
        """() => {
            const ask = bookletRuntime.ask.bind(bookletRuntime);
            bookletRuntime.ask = async (...request) => {
                const reply = await ask(...request);
                if (request[0] === "sheet") await new Promise((go) => (window.release = go));
                return reply;
            };
        }"""
    )
    section.locator('[name="r"]').fill("25 cm")
    page.evaluate("async () => { while (!window.release) await new Promise((go) => setTimeout(go, 5)); }")
    answer.press("End")
    answer.press_sequentially(" µN")
    answer.press("Home")
    old = answer.element_handle()
    page.evaluate("release()")
    old.evaluate("async (box) => { while (box.isConnected) await new Promise((go) => setTimeout(go, 5)); }")
    expect(answer).to_have_value("8,1 µN")
    expect(answer).to_be_focused()
    assert answer.evaluate("(box) => box.selectionStart") == 0


def test_a_known_mistake_is_named_and_later_parts_are_carried(place: str, page: Page) -> None:
    """A sign dropped in one part is named there, and the next parts are marked from the learner's own value."""
    section = open_sheet(page, place + CONTACT, "coulomb.contact")
    section.locator('[name="answers.shared.value"]').fill("6,5 nC")
    section.locator('[name="answers.after.value"]').fill("9,51e-6 N")
    section.locator('select[name="answers.after.direction"]').select_option("repel")
    section.locator(".mark-it").click()
    expect(verdict(section, "shared")).to_contain_text("keep each sign in the sum.")
    expect(verdict(section, "after").locator(".earned").first).to_have_text("3 of 3")
    expect(verdict(section, "after")).to_contain_text("With your own")


def test_a_verdict_points_to_the_step(served: str, page: Page) -> None:
    """The link of a verdict brings the reader to the step of the worked answer."""
    section = open_sheet(page, served + CONTACT, "coulomb.contact")
    section.locator('[name="answers.shared.value"]').fill("6,5 nC")
    section.locator(".mark-it").click()
    verdict(section, "shared").locator("[data-look]").click()
    expect(section.locator('.step[data-step="Q_new"]')).to_be_focused()


def test_an_unreadable_answer_is_a_sentence_at_its_box(served: str, page: Page) -> None:
    """Words in a value's box are asked for again; the text stays."""
    section = open_sheet(page, served + CONTACT, "coulomb.contact")
    box = section.locator('[name="answers.before.value"]')
    box.fill("<b>lots</b>")
    section.locator(".mark-it").click()
    problem = section.locator('[data-field="answers.before.value"] .problem')
    expect(problem).to_be_visible()
    expect(box).to_have_value("<b>lots</b>")
    assert section.locator("b").count() == 0


def test_typed_answers_survive_a_change_of_numbers(served: str, page: Page) -> None:
    """When a number of the question changes, the sheet follows and keeps what was typed."""
    section = open_sheet(page, served + CONTACT, "coulomb.contact")
    section.locator('[name="answers.before.value"]').fill("8,1 µN")
    section.locator('form.numbers input[name="r"]').fill("40 cm")
    expect(section.locator(".answer-sheet .story")).to_contain_text("40 cm")
    expect(section.locator('[name="answers.before.value"]')).to_have_value("8,1 µN")
