"""Whether everyone can read it: axe-core 4.14 (WCAG 2.2 AA and its best practice) finds nothing on any kind of page."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from toolbox import NODE_MODULES

pytestmark = pytest.mark.browser

AXE = (NODE_MODULES / "axe-core/axe.min.js").read_text(encoding="utf-8")
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
OF_COLOUR = ["color-contrast", "link-in-text-block"]  # what can differ in the dark
LOOK = """async (rules) => {
  const options = { resultTypes: ["violations"], preload: false, selectors: false }; // no rule here reads style sheets
  const found = await axe.run(document, { runOnly: rules, ...options });
  return found.violations.flatMap(({ id, nodes }) => nodes.map((node) =>
    `${id}: ${node.html.slice(0, 160)} (${(node.any[0] ?? node.all[0] ?? node.none[0])?.message})`));
}"""
SLOW = 30_000
SECTION = "section.question"


def violations(page: Page, rules: list[str] = RULES) -> list[str]:
    """What axe-core finds on the page as it stands, a line each: the rule, the element, the reason."""
    if not page.evaluate("Boolean(window.axe)"):
        page.evaluate(f"{AXE};0")
    return page.evaluate(LOOK, rules)


DARK = """() => {
  const choice = document.querySelector("input[name=__palette][data-md-color-scheme=slate]");
  choice?.click();
  localStorage.removeItem("__palette");  // for this page alone
  return Boolean(choice);
}"""


def paint_dark(page: Page) -> None:
    """Turn a page that stands there dark, as a reader does; the one without that choice follows the system."""
    if page.locator("[data-md-component=palette]").count():
        expect(page.locator("head > meta[name=theme-color]")).to_have_count(
            1
        )  # made by the script that hears the choice
    if page.evaluate(DARK):
        expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")
    else:
        page.emulate_media(color_scheme="dark")


def as_built(page: Page) -> None:
    """The page as it opens; code that scrolls is reached by keyboard soon after, when the theme has measured it."""
    expect(page.locator("h1").first).to_be_visible()
    page.wait_for_function("""() => [...document.querySelectorAll("pre code")].every((code) =>
      code.scrollWidth <= code.clientWidth || code.tabIndex === 0)""")


def solved(page: Page) -> None:
    """An answer worked from a link, every fold open."""
    expect(page.locator(".answer-area .total")).to_be_visible(timeout=SLOW)
    expect(page.locator(".heard")).not_to_be_empty(timeout=SLOW)
    page.evaluate("document.querySelectorAll('details').forEach((node) => { node.open = true; })")


def refused(page: Page) -> None:
    """A box that cannot be read, with its sentence, and the answer before, which is out of date."""
    page.locator('form.numbers [name="r"]').fill("far")
    expect(page.locator("form.numbers .problem:visible").first).to_be_visible(timeout=SLOW)


def marked(page: Page) -> None:
    """An own answer, wrong, with its verdict."""
    page.locator("details.check-mine > summary").click()
    page.locator('[name="answers.before.value"]').fill("25 N", timeout=SLOW)
    page.locator(".mark-it").click()
    expect(page.locator(".verdict").first).to_be_visible(timeout=SLOW)


def finding(page: Page) -> None:
    """The find box, open, with what it found."""
    box = page.get_by_role("textbox", name="Find a word, a law, a question").first
    if page.viewport_size["width"] < 960:  # a phone shows the sign alone, the box when it is touched
        page.locator("label.md-header__button[for=__search]").click()
    else:
        box.click()
    page.keyboard.type("charge")
    expect(page.locator(".md-search-result__link").first).to_be_visible(timeout=SLOW)


def practised(page: Page) -> None:
    """A drawn question, open."""
    expect(page.locator(".practice-sheet .story")).not_to_be_empty(timeout=SLOW)


def practice_answered(page: Page) -> None:
    """A drawn question, answered wrongly and marked."""
    practised(page)
    page.locator('.practice-sheet [name^="answers."][name$=".value"]').first.fill("7 N")
    page.locator(".practice-sheet .mark-it").click()
    expect(page.locator(".practice-sheet .verdict").first).to_be_visible(timeout=SLOW)


def paper_made(page: Page) -> None:
    """A paper and its memo on the screen."""
    expect(page.locator(".sheets > .memo")).to_have_count(1, timeout=SLOW)


def settings_refused(page: Page) -> None:
    """A constant that cannot be read, with its sentence at its box."""
    page.locator('form.settings [name="k"]').fill("soon")
    page.get_by_role("button", name="Keep these").click()
    expect(page.locator("form.settings .problem:visible")).not_to_be_empty(timeout=SLOW)


def linked_setting_refused(page: Page) -> None:
    """A link with a setting that cannot be: the notice with its way out."""
    expect(page.locator(".notice.settings-problem button").first).to_be_visible(timeout=SLOW)


def wiping(page: Page) -> None:
    """Kept progress, and the question whether it shall be wiped."""
    practice_answered(page)
    page.locator(".progress-wipe").click()
    expect(page.locator(".progress-sure")).to_be_visible()


def copying(page: Page) -> None:
    """A link to copy where the browser's clipboard is refused: the text stands there, marked."""
    solved(page)
    page.evaluate("() => { Clipboard.prototype.writeText = () => Promise.reject(); }")
    page.locator("button.copy-link").first.click()
    expect(page.locator(".copy-box")).to_be_visible()


def paper_refused(page: Page) -> None:
    """Wishes that no paper can meet, each with its sentence."""
    page.locator('input[name="count"]').fill("99")
    page.locator('input[name="seed"]').fill("a")
    page.get_by_role("button", name="Make the paper").click()
    expect(page.locator(".worksheet-form .problem:visible")).to_have_count(2, timeout=SLOW)


STATES: dict[str, tuple[str, Callable[[Page], None]]] = {
    "front": ("index.html", as_built),
    "found": ("index.html", finding),
    "chapter": ("coulombs-law.html", as_built),
    "question": ("coulombs-law/force.html", as_built),
    "solved": ("coulombs-law/force.html#q=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm", solved),
    "refused": ("coulombs-law/force.html", refused),
    "marked": ("coulombs-law/contact.html", marked),
    "table": ("several-charges/plane.html", as_built),
    "whole question": ("equilibrium/museum-ramp.html", as_built),
    "graph": ("coulombs-law/graph.html", as_built),
    "link copied": ("coulombs-law/force.html#q=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm", copying),
    "setting refused": ("coulombs-law/force.html#q=coulomb.force&r=15cm&set.k=soon", linked_setting_refused),
    "form alone": ("coulombs-law/force.html#q=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm&only=form", solved),
    "practice": ("practice.html", as_built),
    "practised": ("practice.html#practice=coulomb.force&seed=3&level=2", practised),
    "practice answered": ("practice.html#practice=coulomb.force&seed=3&level=2", practice_answered),
    "wiping": ("practice.html#practice=coulomb.force&seed=3&level=2", wiping),
    "worksheet": ("worksheet.html", as_built),
    "paper": ("worksheet.html#paper=coulomb.force,coulomb.scaling&level=2&seed=41", paper_made),
    "paper refused": ("worksheet.html", paper_refused),
    "settings refused": ("data-sheet.html", settings_refused),
    "data sheet": ("data-sheet.html", as_built),
    "glossary": ("glossary.html", as_built),
    "frames": ("embed.html", as_built),
    "school server": ("school-server.html", as_built),
    "licences": ("licences.html", as_built),
    "what is new": ("changelog.html", as_built),
    "report": ("contributing.html", as_built),
    "no such page": ("404.html", as_built),
}
WINDOWS = {
    "desktop": {"viewport": {"width": 1366, "height": 768}},
    "phone": {"viewport": {"width": 360, "height": 740}, "is_mobile": True, "has_touch": True},
}
# On a phone what changes is the frame around the page, and how a form and an answer are laid out.
ON_A_PHONE = ("front", "found", "chapter", "solved", "marked", "table", "practised", "paper")


SEEN = [(window, state) for window in WINDOWS for state in STATES if window != "phone" or state in ON_A_PHONE]


@pytest.mark.parametrize(("window", "state"), SEEN, ids=[f"{state}, {window}" for window, state in SEEN])
def test_axe_finds_nothing(served: str, shared_page: Callable[..., Page], window: str, state: str) -> None:
    """No violation on any kind of page in any state, on a desktop and on a phone; then none of colour in the dark."""
    address, bring_about = STATES[state]
    page = shared_page(**WINDOWS[window], reduced_motion="reduce")
    page.emulate_media(color_scheme="light")
    page.goto(served + address)
    bring_about(page)
    assert ("light", violations(page)) == ("light", [])
    paint_dark(page)
    assert ("dark", violations(page, OF_COLOUR)) == ("dark", [])


def test_axe_sees_the_dark_colours(served: str, page: Page) -> None:
    """What can be read on the light page alone is found once the page is dark."""
    page.emulate_media(color_scheme="light")
    page.goto(served + "glossary.html")
    page.evaluate("document.querySelector('article p').style.color = '#333'")
    assert violations(page) == []
    paint_dark(page)
    assert [line for line in violations(page) if line.startswith("color-contrast: <p")]
