"""What a form asks and which boxes it shows; what it says it understood; the answer folded under an own one."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

pytestmark = pytest.mark.browser

SLOW = 20_000
FORCE = "coulombs-law/force.html"
SLOPE = "equilibrium/slope.html"
RELEASED = "electric-field/released.html"


def form_of(page: Page) -> Locator:
    """The form of the page."""
    return page.locator("form.numbers")


def on_view(page: Page) -> list[str]:
    """The boxes a reader sees, in the order they stand."""
    seen = "(boxes) => boxes.filter((box) => box.checkVisibility()).map((box) => box.name)"
    boxes = form_of(page).locator(".known .entry > .box > :is(input, select)")
    return list(boxes.evaluate_all(seen))


def wait_for_boxes(page: Page, *names: str) -> None:
    """Wait until exactly these boxes are on view."""
    for _ in range(200):
        if on_view(page) == list(names):
            return
        page.wait_for_timeout(100)
    assert on_view(page) == list(names)


def copied_link(page: Page) -> str:
    """The link to what the form holds, as its button offers it."""
    page.evaluate("() => { Clipboard.prototype.writeText = () => Promise.reject(); }")
    form_of(page).get_by_text("Copy, or start again").click()
    form_of(page).get_by_role("button", name="Copy a link").click()
    return str(form_of(page).locator(".copy-box").input_value())


def test_only_the_boxes_that_lead_there_are_on_view(served: str, page: Page) -> None:
    """Asked for the force: two charges and a distance; asked for a charge: the force, and how it acts."""
    page.goto(served + FORCE)
    assert on_view(page) == ["Q1", "Q2", "r"]
    form_of(page).locator('input[name="find"][value="Q1"]').check()
    wait_for_boxes(page, "Q2", "r", "F", "acting")
    form_of(page).locator('input[name="find"][value="F"]').check()
    wait_for_boxes(page, "Q1", "Q2", "r")
    expect(form_of(page).locator('[name="Q1"]')).to_have_value("+8 nC")


def test_the_rest_stands_behind_one_line(served: str, page: Page) -> None:
    """Opened, the line shows every other box, and one that is filled there counts."""
    page.goto(served + FORCE)
    form_of(page).get_by_text("I know something else").click()
    assert set(on_view(page)) == {"Q1", "Q2", "r", "F", "acting", "R"}
    form_of(page).locator('[name="R"]').fill("7 cm")
    problem = form_of(page).locator('[data-field="r"] .problem')
    expect(problem).to_contain_text("The spheres would touch or overlap", timeout=SLOW)


def test_what_is_asked_by_a_choice_comes_first_and_shows_its_boxes(served: str, page: Page) -> None:
    """On a slope the normal force takes mass and angle; of the example's numbers those two are left, and answered."""
    page.goto(served + SLOPE)
    first = form_of(page).locator("fieldset").first
    assert first.get_attribute("data-field") == "want"
    first.locator('[value="N"]').check()
    first.locator('[value="T"]').uncheck()
    wait_for_boxes(page, "where", "string", "m", "theta")
    expect(page.locator(".answer-area .story")).not_to_contain_text("80", timeout=SLOW)
    expect(page.locator(".answer .spoken").last).to_contain_text("0,20 newtons")


def test_what_cannot_be_asked_is_said_in_words(served: str, page: Page) -> None:
    """The speed after the cut is no choice of the list; the reason is on the page, with scripts or without."""
    page.goto(served + SLOPE)
    assert "v" not in [o.get_attribute("value") for o in form_of(page).locator('input[name="want"]').all()]
    form_of(page).get_by_text("Why not the speed some time after the cut?").click()
    expect(form_of(page).locator(".never p")).to_contain_text("may not be used")


def test_a_choice_takes_away_what_it_makes_needless(served: str, page: Page) -> None:
    """An electron's charge and mass are on the data sheet: their boxes go, and the answer is there at once."""
    page.goto(served + RELEASED)
    form_of(page).locator('select[name="particle"]').select_option("electron")
    wait_for_boxes(page, "V", "d", "particle", "s", "along")
    expect(page.locator(".answer-area")).to_have_class("answer-area", timeout=SLOW)
    expect(page.locator(".answer-area .story")).to_contain_text("electron")


def test_a_link_shows_the_boxes_it_fills(place: str, page: Page) -> None:
    """Whatever set of values a link brings, their boxes are on view, and copied again the link is the same."""
    link = "#q=equilibrium.slope&want=F_E&where=below&string=up&n=5e11&which=lacking&Q2=-50nC&r=3cm&m=25g&theta=35"
    page.goto(place + SLOPE + link)
    expect(page.locator(".heard")).not_to_be_empty(timeout=SLOW)
    wait_for_boxes(page, "where", "string", "m", "theta", "Q1", "n", "Q2", "r", "which")
    assert form_of(page).locator('[name="n"]').input_value() == "5e11"
    assert {"n=5e11", "which=lacking", "Q2=-50nC"} <= set(copied_link(page).split("&"))


def test_typing_into_a_box_behind_the_line_keeps_the_focus(served: str, page: Page) -> None:
    """The asked quantity is typed, another box emptied: the old way of saying what is to be found, by keyboard."""
    page.goto(served + FORCE)
    form_of(page).get_by_text("I know something else").click()
    form_of(page).locator('[name="r"]').fill("")
    box = form_of(page).locator('input[type=text][name="F"]')
    box.click()
    page.keyboard.type("4,8e-6 N", delay=30)
    expect(box).to_be_focused()
    expect(box).to_have_value("4,8e-6 N")
    expect(form_of(page).locator('input[name="find"][value="r"]')).to_be_checked()
    expect(page.locator(".answer .spoken").last).to_contain_text("metres", timeout=SLOW)
    expect(box).to_be_focused()


def test_the_line_under_a_box_says_what_was_understood(served: str, page: Page) -> None:
    """The built page has the example's; typed anew, unit and line follow, and stay empty for what cannot be read."""
    page.goto(served + FORCE)
    entry = form_of(page).locator('.entry[data-field="r"]')
    unit, said = entry.locator(".unit > :first-child"), entry.locator(".said")
    expect(unit).to_have_text("cm")
    expect(said).to_have_text("= 0,12 m")
    box = entry.locator("input[type=text]")
    box.fill("150 mm")
    expect(said).to_have_text("= 0,15 m", timeout=SLOW)
    expect(unit).to_have_text("mm")
    box.fill("150 mmm")
    expect(said).to_have_text("")
    expect(unit).to_have_text("m")
    described = [form_of(page).locator(f"#{one}") for one in str(box.get_attribute("aria-describedby")).split()]
    assert [one.count() for one in described] == [1, 1, 1]
    assert form_of(page).locator(".said[aria-live], .unit[aria-live]").count() == 0


def test_nothing_moves_while_a_number_is_typed(served: str, page: Page) -> None:
    """A line that comes or goes takes no room of its own."""
    page.goto(served + FORCE)
    box = form_of(page).locator('input[type=text][name="r"]')
    before = form_of(page).bounding_box()
    said = form_of(page).locator('.entry[data-field="r"] .said')
    for typed, line in (("15 cm", "= 0,15 m"), ("0,15 m", ""), ("15 cm", "= 0,15 m")):
        box.fill(typed)
        expect(said).to_have_text(line, timeout=SLOW)
        assert form_of(page).bounding_box() == before


def test_how_to_draw_is_chosen_beside_the_drawing(served: str, page: Page) -> None:
    """The weight with its components: the choice stands under the free-body diagram, redraws it, and is in the link."""
    page.goto(served + SLOPE)
    part = page.locator('.part[data-part="draw"]')
    if part.evaluate("node => node.matches('details')"):
        part.locator("summary").click()
    before = part.locator("figure svg").inner_html()
    choice = part.locator('select[name="weight"]')
    choice.focus()
    choice.select_option("components")
    expect(page.locator(".heard")).not_to_be_empty(timeout=SLOW)
    expect(part.locator('select[name="weight"]')).to_have_value("components")
    expect(part.locator('select[name="weight"]')).to_be_focused()
    assert part.locator("figure svg").inner_html() != before
    assert "weight=components" in copied_link(page).split("&")
    assert form_of(page).locator('[name="weight"]:visible').count() == 0


def test_a_list_counts_the_rows_there_are(served: str, page: Page) -> None:
    """With three charges the force on a fourth is not offered; with a fourth row it is."""
    page.goto(served + "several-charges/line.html")
    offered = form_of(page).locator('select[name="on"] option:enabled')
    expect(offered).to_have_count(form_of(page).locator("tbody tr").count())
    form_of(page).locator(".add-row").click()
    expect(offered).to_have_count(form_of(page).locator("tbody tr").count())


def test_one_button_and_the_others_behind_one(served: str, page: Page) -> None:
    """The working is one button; copying and starting again are a click away."""
    page.goto(served + FORCE)
    buttons = form_of(page).get_by_role("button")
    assert [one.inner_text() for one in buttons.all() if one.is_visible()] == ["Show the working"]
    form_of(page).get_by_text("Copy, or start again").click()
    assert len([one for one in buttons.all() if one.is_visible()]) == 5


def give_up(section: Locator, key: str) -> None:
    """Ask to see one part of the worked answer."""
    section.locator(f'.part[data-part="{key}"] :is(summary, .see-part)').first.click()


def test_the_answer_is_folded_while_an_own_one_is_checked(served: str, page: Page) -> None:
    """Nothing of the working is seen until a part is marked or given up; then that part is."""
    page.goto(served + "coulombs-law/contact.html")
    section, steps = page.locator("section.question"), page.locator(".answer-area .step")
    section.locator("details.check-mine > summary").click()
    expect(section.locator(".mark-it")).to_be_visible(timeout=SLOW)
    assert not any(step.is_visible() for step in steps.all())
    expect(section.locator(".answer-area .checks")).to_be_hidden()
    section.locator('[name="answers.before.value"]').fill("8,1 µN")
    section.locator('select[name="answers.before.direction"]').select_option("attract")
    section.locator(".mark-it").click()
    expect(section.locator('.part[data-part="before"] .step').first).to_be_visible(timeout=SLOW)
    assert not any(step.is_visible() for step in section.locator('.part[data-part="after"] .step').all())
    give_up(section, "after")
    expect(section.locator('.part[data-part="after"] .step').first).to_be_visible()
    section.locator("details.check-mine > summary").click()
    expect(section.locator(".answer-area .checks")).to_be_visible()


def test_an_answer_in_one_part_can_be_given_up(served: str, page: Page) -> None:
    """Where there is one part, a button shows its working."""
    page.goto(served + FORCE)
    section = page.locator("section.question")
    section.locator("details.check-mine > summary").click()
    expect(section.locator(".mark-it")).to_be_visible(timeout=SLOW)
    steps = section.locator(".answer-area .step")
    expect(steps.first).to_be_hidden()
    for part in section.locator(".answer-area .part").all():
        give_up(section, str(part.get_attribute("data-part")))
    expect(steps.first).to_be_visible()
    expect(section.locator(".answer-area .total")).to_be_visible()


def test_values_do_not_break_from_their_units(from_disk: str, page: Page) -> None:
    """In “What is given” each value with its unit stays on one line, inside the page, from 240 px up."""
    broken = """() => [...document.querySelectorAll("table.given td math")].filter((math) =>
      math.getClientRects().length > 1 || math.getBoundingClientRect().height > 40
      || math.getBoundingClientRect().right > document.documentElement.clientWidth)
      .map((math) => math.getAttribute("alttext"))"""
    for question in ("electric-field/crossing", "equilibrium/slope", "coulombs-law/graph"):
        page.goto(f"{from_disk}{question}.html")
        for width in (240, 320, 390, 768, 1366):
            page.set_viewport_size({"width": width, "height": 800})
            assert page.evaluate(broken) == [], (question, width)


def test_the_form_reads_without_scripts(place: str, chromium: Browser) -> None:
    """With scripts off: what is found, the boxes of the example with what they mean, the rest behind its line."""
    context = chromium.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(place + FORCE)
    assert on_view(page) == ["Q1", "Q2", "r"]
    expect(form_of(page).locator('.entry[data-field="r"] .said')).to_have_text("= 0,12 m")
    form_of(page).get_by_text("I know something else").click()
    assert "F" in on_view(page)
    context.close()


def test_a_form_alone_in_a_frame_keeps_its_place(place: str, phone_page: Page) -> None:
    """Alone, on a phone of 360 px, the form has its question, its boxes and its line, and nothing is wider."""
    phone_page.goto(f"{place}{SLOPE}#open.question=equilibrium.slope&want=N&m=2kg&theta=30&only=form")
    expect(phone_page.locator(".heard")).not_to_be_empty(timeout=SLOW)
    wait_for_boxes(phone_page, "where", "string", "m", "theta")
    assert phone_page.evaluate("document.documentElement.scrollWidth <= innerWidth")
