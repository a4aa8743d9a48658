"""The forms of a page in a real browser, served and from disk: typed numbers in, worked answer out."""

from __future__ import annotations

import re
from typing import Any

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

pytestmark = pytest.mark.browser

PAGE = "coulombs-law/force.html"
FORCE = '[data-question="coulomb.force"]'
VALUES = {"Q1": "6 nC", "Q2": "-2 nC", "r": "15 cm", "F": "4,8e-6 N"}
ANSWERS = {
    "F": "4,80 times 10 to the power minus 6 newtons",
    "Q1": "6,00 times 10 to the power minus 9 coulombs",
    "Q2": "2,00 times 10 to the power minus 9 coulombs",
    "r": "0,15 metres",
}


def question(page: Page, key: str = "coulomb.force") -> Locator:
    """The section of one question: its form and its worked answer."""
    return page.locator(f'section.question[data-question="{key}"]')


def spoken(section: Locator) -> Locator:
    """The answer as a screen reader gets it."""
    return section.locator(".answer .spoken").last


def wait_until_ready(page: Page) -> None:
    """Wait for the runtime; the content policy forbids Playwright's own waiting on an expression."""
    for _ in range(200):
        if page.evaluate("window.bookletRuntime.state") == "ready":
            return
        page.wait_for_timeout(100)
    raise AssertionError("the runtime was not ready within 20 s")


@pytest.mark.parametrize("unknown", ANSWERS)
def test_each_unknown_is_solved(served: str, page: Page, unknown: str) -> None:
    """Filling three boxes and leaving one empty shows the worked answer for it."""
    page.goto(served + PAGE)
    section = question(page)
    section.locator(f'input[name="find"][value="{unknown}"]').check()
    for name, typed in VALUES.items():
        if name != unknown:
            section.locator(f'input[type=text][name="{name}"]').fill(typed)
    expect(spoken(section)).to_contain_text(ANSWERS[unknown], timeout=20_000)
    expect(section.locator(".story")).not_to_contain_text("8 nC")
    expect(section.locator(".answer math").first).to_be_visible()


def test_emptying_a_box_makes_it_the_unknown(served: str, page: Page) -> None:
    """The unknown is chosen by leaving its box empty."""
    page.goto(served + PAGE)
    section = question(page)
    section.get_by_text("I know something else").click()
    section.locator('input[name="F"]').fill("4,8e-6 N")
    section.locator('input[name="Q1"]').fill("6 nC")
    section.locator('input[name="Q2"]').fill("-2 nC")
    section.locator('input[type=text][name="r"]').fill("")
    expect(spoken(section)).to_contain_text(ANSWERS["r"], timeout=20_000)
    expect(section.locator('input[name="find"][value="r"]')).to_be_checked()


def test_a_link_with_numbers_opens_solved(place: str, page: Page) -> None:
    """A link fills the form and shows its answer."""
    page.goto(f"{place}{PAGE}#q=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm&find=F")
    section = question(page)
    expect(spoken(section)).to_contain_text(ANSWERS["F"], timeout=20_000)
    expect(section.locator('input[name="Q1"]')).to_have_value("6nC")


def test_a_copied_link_opens_the_same_answer(place: str, page: Page) -> None:
    """What the copy button offers brings another reader to the same numbers; from disk it names no folder."""
    page.goto(place + PAGE)
    section = question(page)
    section.locator('input[name="Q1"]').fill("6 nC")
    section.locator('input[name="Q2"]').fill("-2 nC")
    section.locator('input[type=text][name="r"]').fill("0,15 m")
    expect(spoken(section)).to_contain_text(ANSWERS["F"], timeout=20_000)
    page.evaluate("() => { Clipboard.prototype.writeText = () => Promise.reject(); }")
    section.get_by_text("Copy, or start again").click()
    section.get_by_role("button", name="Copy a link").click()
    link = section.locator(".copy-box").input_value()
    other = page.context.new_page()
    if place.startswith("file:"):
        assert link.startswith(f"{PAGE}#")
        expect(section.locator(".status")).to_contain_text("put the address of the folder")
        link = place + link
    other.goto(link)
    expect(spoken(question(other))).to_contain_text(ANSWERS["F"], timeout=20_000)


def test_keyboard_alone_is_enough(place: str, page: Page) -> None:
    """Tab, typing and Enter reach the answer."""
    page.goto(place + PAGE)
    section = question(page)
    section.locator('input[name="Q1"]').focus()
    page.keyboard.press("Control+A")
    page.keyboard.type("6 nC")
    page.keyboard.press("Tab")
    page.keyboard.press("Control+A")
    page.keyboard.type("-2 nC")
    page.keyboard.press("Tab")
    expect(section.locator('input[type=text][name="r"]')).to_be_focused()
    page.keyboard.press("Control+A")
    page.keyboard.type("15 cm")
    page.keyboard.press("Enter")
    expect(spoken(section)).to_contain_text(ANSWERS["F"], timeout=20_000)
    expect(section.locator(".heard")).to_contain_text("4,80 times 10")


BAD = {
    "Q1": ("6 kg", "charge"),
    "Q2": ("six", "number"),
    "r": ("-15 cm", "Distance must be greater than zero."),
    "F": ("-3 N", "Enter the size of the force"),
}


@pytest.mark.parametrize("field", BAD)
def test_bad_input_gets_a_sentence_beside_its_box(served: str, page: Page, field: str) -> None:
    """The sentence stands at the field, what was typed stays, and no answer for other numbers stands as if it
    were new."""
    typed, part = BAD[field]
    page.goto(served + PAGE)
    section = question(page)
    unknown = "r" if field == "F" else "F"
    section.locator(f'input[name="find"][value="{unknown}"]').check()
    section.locator(f'input[type=text][name="{field}"]').fill(typed)
    entry = section.locator(f'.entry[data-field="{field}"]')
    expect(entry.locator(".problem")).to_contain_text(part, timeout=20_000)
    expect(section.locator(f'input[type=text][name="{field}"]')).to_have_value(typed)
    expect(section.locator(".answer-area")).to_have_class("answer-area stale")
    assert "NaN" not in page.content()
    assert "Traceback" not in page.content()


def test_bad_input_is_mended(served: str, page: Page) -> None:
    """After the box is put right the sentence goes and the answer is fresh."""
    page.goto(served + PAGE)
    section = question(page)
    box = section.locator('input[type=text][name="r"]')
    box.fill("0 m")
    expect(section.locator('.entry[data-field="r"] .problem')).to_be_visible(timeout=20_000)
    box.fill("15 cm")
    expect(section.locator('.entry[data-field="r"] .problem')).to_be_hidden()
    expect(section.locator(".answer-area")).to_have_class("answer-area")


def test_back_to_the_example_restores_the_page(place: str, page: Page) -> None:
    """The page's own example comes back, boxes and working."""
    page.goto(f"{place}{PAGE}#q=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm")
    section = question(page)
    expect(spoken(section)).to_contain_text(ANSWERS["F"], timeout=20_000)
    section.get_by_text("Copy, or start again").click()
    section.get_by_role("button", name="Back to the example").click()
    expect(section.locator('input[name="Q1"]')).to_have_value("+8 nC")
    expect(section.locator(".story")).to_contain_text("+8 nC")
    assert "#q=" not in page.url


HOSTILE = [
    "#q=coulomb.force&Q1=%3Cimg%20src%3Dx%20onerror%3Dwindow.hit%3D1%3E&Q2=-2nC&r=15cm",
    "#q=coulomb.force&Q1=6nC&Q2=-2nC&r=1e99999m",
    "#q=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm&acting=%3Cscript%3Ewindow.hit%3D1%3C/script%3E&find=%22%3E%3Cb%3E",
    "#q=coulomb.force&Q1=" + "9" * 100_000,
    "#q=%3Cscript%3Ewindow.hit%3D1%3C/script%3E",
    "#q=coulomb.force&Q1=%E0%A4%A",
    "#q=coulomb.force&set.k=%3Cb%3E&Q1=6nC&Q2=-2nC&r=15cm",
]


@pytest.mark.parametrize("hash_", HOSTILE, ids=range(len(HOSTILE)))
def test_a_hostile_link_is_a_sentence_never_markup(served: str, page: Page, hash_: str) -> None:
    """Markup stays text, and whatever cannot be read is said."""
    page.goto(served + PAGE + hash_)
    said = page.locator(".problem:visible, .notice:visible, .answer-area:not(.stale) .answer:visible").first
    expect(said).to_be_visible(timeout=20_000)
    wait_until_ready(page)
    assert page.evaluate("window.hit") is None
    assert page.locator(".md-content img, .md-content script, .md-content b").count() == 0


def test_the_example_reads_without_javascript(place: str, chromium: Browser) -> None:
    """With scripts off the worked example stands in the page, its formulas set."""
    context = chromium.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(place + PAGE)
    section = question(page)
    expect(section.locator(".step math").first).to_be_visible()
    expect(section.locator(".answer").last).to_be_visible()
    expect(section.locator("figure svg").first).to_be_visible()
    context.close()


def test_a_phone_needs_no_sideways_scrolling(served: str, phone_page: Page) -> None:
    """At 360 px nothing is wider than the screen, before and after solving."""
    phone_page.goto(f"{served}{PAGE}#q=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm")
    expect(spoken(question(phone_page))).to_contain_text(ANSWERS["F"], timeout=20_000)
    widths = phone_page.evaluate("[document.documentElement.scrollWidth, innerWidth]")
    assert widths[0] <= widths[1]


def test_typing_is_possible_before_python_arrives(served: str, own_page: Page) -> None:
    """Boxes take text at once, nothing moves when the runtime is ready, and the answer follows."""
    held: list[Any] = []
    own_page.route("**/core-*", lambda route: held.append(route))
    own_page.goto(served + PAGE)
    section = question(own_page)
    section.locator('input[name="Q1"]').fill("6 nC")
    section.locator('input[name="Q2"]').fill("-2 nC")
    section.locator('input[type=text][name="r"]').fill("15 cm")
    before = section.locator("form").bounding_box()
    expect(section.locator(".story")).to_contain_text("8 nC")
    for route in held:
        route.continue_()
    own_page.unroute("**/core-*")
    expect(spoken(section)).to_contain_text(ANSWERS["F"], timeout=20_000)
    assert section.locator("form").bounding_box() == before


def test_settings_hold_on_every_page(place: str, page: Page) -> None:
    """A changed k and decimal sign are used by the next page and named in its status."""
    page.goto(place + "data-sheet.html")
    page.locator('input[name="k"]').fill("8,99e9")
    page.locator('select[name="comma"]').select_option("point")
    page.get_by_role("button", name="Keep these").click()
    expect(page.locator(".settings .status")).to_contain_text("Kept on this device", timeout=20_000)
    page.goto(f"{place}{PAGE}#q=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm")
    section = question(page)
    expect(spoken(section)).to_contain_text("4.79 times 10", timeout=20_000)
    expect(section.locator(".status")).to_contain_text("k = 8,99e9")


def test_impossible_settings_are_refused(served: str, page: Page) -> None:
    """A negative constant gets its sentence and is not kept."""
    page.goto(served + "data-sheet.html")
    page.locator('input[name="g"]').fill("-9,8")
    page.get_by_role("button", name="Keep these").click()
    problem = page.locator('[data-field="settings.g"] .problem')
    expect(problem).to_contain_text("must be greater than zero", timeout=20_000)
    assert page.evaluate("localStorage.getItem('physics-line-by-line.settings')") is None


def opened_from_its_link(page: Page, key: str) -> Locator:
    """A question in another tab, from the address that its page gave itself."""
    other = page.context.new_page()
    other.goto(page.url)
    return other.locator(f'section.question[data-question="{key}"]')


def ticked(section: Locator, name: str) -> list[str | None]:
    """What is ticked of the boxes to tick with one name."""
    return [box.get_attribute("value") for box in section.locator(f'input[name="{name}"]:checked').all()]


def test_several_things_are_asked_at_once(served: str, page: Page) -> None:
    """Ticking two boxes asks for both; the link opened elsewhere asks for both again."""
    page.goto(f"{served}electric-field/released.html")
    section = page.locator('section.question[data-question="electric-field.released"]')
    section.get_by_text("I know something else").click()
    typed = {"V": "200 V", "d": "4 cm", "s": "1 cm"}
    for box in section.locator(".entry input[type=text]").all():
        box.fill(typed.get(box.get_attribute("name") or "", ""))
    section.locator('select[name="particle"]').select_option("electron")
    for box in section.locator('input[name="find"]').all():
        box.set_checked(box.get_attribute("value") in ("t", "v"))
    expect(section.locator(".heard")).to_contain_text("4,19 times 10 to the power 6 metres per second", timeout=20_000)
    expect(section.locator(".heard")).to_contain_text("4,77 times 10 to the power minus 9 seconds")
    expect(page).to_have_url(re.compile("find=t,v"))
    again = opened_from_its_link(page, "electric-field.released")
    expect(again.locator(".heard")).to_contain_text("4,77 times 10 to the power minus 9 seconds", timeout=20_000)
    assert ticked(again, "find") == ["t", "v"]


@pytest.mark.parametrize(
    ("question", "kept", "typed", "text"),
    [("slope", "N", "T", "0,2 N"), ("vertical", "F_E", "r", "9 cm"), ("threads", "T", "Q1", "50 nC")],
)
def test_what_is_typed_is_no_longer_to_be_found(
    served: str, page: Page, question: str, kept: str, typed: str, text: str
) -> None:
    """Of two things wished, the one whose value is typed in loses its tick; emptied again it does not get it back."""
    page.goto(f"{served}equilibrium/{question}.html")
    section = page.locator(f'section.question[data-question="equilibrium.{question}"]')
    section.locator(f'[name="want"][value="{kept}"]').check()
    assert sorted(ticked(section, "want")) == sorted([kept, typed])
    section.get_by_text("I know something else").click()
    box = section.locator(f'.entry input[name="{typed}"]')
    box.fill(text)
    assert ticked(section, "want") == [kept]
    expect(section.locator('[data-field="want"] > .problem')).to_be_hidden()
    box.fill("")
    assert ticked(section, "want") == [kept]


def test_several_things_are_asked_at_once_by_a_choice(served: str, page: Page) -> None:
    """On a slope two forces are asked at once, and the link asks for both; with none ticked it is said what to do."""
    page.goto(f"{served}equilibrium/slope.html")
    section = page.locator('section.question[data-question="equilibrium.slope"]')
    section.locator('[name="want"][value="N"]').check()
    expect(section.locator(".heard")).to_contain_text("0,20 newtons", timeout=20_000)
    expect(section.locator(".heard")).to_contain_text("0,10 newtons, up the slope")
    expect(page).to_have_url(re.compile("want=T,N"))
    again = opened_from_its_link(page, "equilibrium.slope")
    expect(again.locator(".heard")).to_contain_text("0,20 newtons", timeout=20_000)
    assert ticked(again, "want") == ["T", "N"]
    assert again.page.locator(".notice").count() == 0
    for key in ("T", "N"):
        again.locator(f'[name="want"][value="{key}"]').uncheck()
    said = again.locator('[data-field="want"] > .problem')
    expect(said).to_have_text("Nothing is picked to be found. Pick one thing or several.", timeout=20_000)
    again.locator('[name="want"][value="F_E"]').check()
    expect(said).to_be_hidden(timeout=20_000)
    expect(again.locator(".heard")).to_contain_text("4,00 times 10 to the power minus 2 newtons")
