"""The frame around the content: safe to open anywhere, searchable, readable in either colour."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from calc.language.maths import Maths
from calc.renderings import mathml
from tests.browser.page_modules import in_module

pytestmark = pytest.mark.browser

POLICY = re.compile(r'<meta http-equiv="Content-Security-Policy" content="([^"]*)">')


def test_every_page_names_its_policy_first(built_site: Path) -> None:
    """The policy stands before anything that it governs, and allows no inline script at large."""
    for file in built_site.rglob("*.html"):
        text = file.read_text(encoding="utf-8")
        found = POLICY.search(text)
        assert found, f"{file.name} has no content policy"
        assert not re.search(r"<(script|link|style|img)\b", text[: found.start()]), file.name
        rules = dict(rule.split(" ", 1) for rule in found[1].split("; "))
        assert rules["default-src"] == "'none'"
        assert rules["script-src"] == "'self' 'wasm-unsafe-eval'"
        assert not re.search(r"https?:|\*", found[1]), file.name


def test_policy_is_in_force(place: str, chromium: Browser) -> None:
    """An inline script that slips into a page does not run, served or from disk."""
    page = chromium.new_page()
    page.goto(place + "index.html")
    page.evaluate("""() => {
            const script = document.createElement("script");
            script.textContent = "window.slippedIn = true";
            document.body.append(script);
        }""")
    slipped_in = page.evaluate("window.slippedIn")
    page.close()
    assert slipped_in is None


def test_search_finds_a_page_by_its_title(built_site: Path, place: str, page: Page) -> None:
    """Typing the title of a page into the search offers that page."""
    index = json.loads((built_site / "search/search_index.json").read_text(encoding="utf-8"))
    entry = next(doc for doc in index["docs"] if "#" not in doc["location"])
    page.goto(place + "index.html")
    page.get_by_role("textbox", name="Find a word, a law, a question").click()
    page.keyboard.type(entry["title"])
    result = page.locator(".md-search-result__link").first
    expect(result).to_be_visible()
    assert entry["location"] in (result.get_attribute("href") or "")


def test_the_search_is_fetched_when_it_is_opened(place: str, own_page: Page) -> None:
    """A page that is only read fetches neither the index nor the script that searches it; both come with the box."""
    asked: list[str] = []
    own_page.on("request", lambda request: asked.append(request.url))
    own_page.goto(place + "glossary.html")
    own_page.wait_for_load_state("networkidle")
    assert [url for url in asked if "/search" in url] == []
    own_page.get_by_role("textbox", name="Find a word, a law, a question").click()
    own_page.keyboard.type("equilibrium")
    expect(own_page.locator(".md-search-result__link").first).to_be_visible()
    assert sum("search_index" in url for url in asked) == 1
    assert any("workers/search" in url for url in asked)


def test_a_form_is_live_before_the_script_of_the_theme_runs(place: str, own_page: Page) -> None:
    """The theme measures the whole page, which a reader who types need not wait for; it is there when all is loaded."""
    own_page.add_init_script("""addEventListener("DOMContentLoaded", () => {
          window.atFirst = { live: !!document.querySelector("form.numbers.live"), theme: "document$" in window };
        });""")
    own_page.goto(place + "coulombs-law/force.html")
    assert own_page.evaluate("atFirst") == {"live": True, "theme": False}
    assert own_page.evaluate("'document$' in window")


def test_colours_follow_the_reader(place: str, page: Page) -> None:
    """The toggle turns the page dark, and the choice outlives a reload."""
    page.emulate_media(color_scheme="light")
    page.goto(place + "index.html")
    body = page.locator("body")
    expect(body).to_have_attribute("data-md-color-scheme", "default")
    before = body.evaluate("element => getComputedStyle(element).backgroundColor")
    page.get_by_title("Dark page").click()
    expect(body).to_have_attribute("data-md-color-scheme", "slate")
    assert body.evaluate("element => getComputedStyle(element).backgroundColor") != before
    page.reload()
    expect(body).to_have_attribute("data-md-color-scheme", "slate")
    page.get_by_title("Light page").click()
    expect(body).to_have_attribute("data-md-color-scheme", "default")


def test_colours_start_as_the_system_has_them(served: str, page: Page) -> None:
    """A reader whose system is dark gets the dark page at once."""
    page.emulate_media(color_scheme="dark")
    page.goto(served + "index.html")
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")


def test_unknown_address_explains_itself(served: str, chromium: Browser) -> None:
    """An unknown address answers 404 with a page of its own that leads back to the first page."""
    page = chromium.new_page()
    response = page.goto(served + "no-such-page.html")
    assert response is not None
    assert response.status == 404
    expect(page.locator("h1")).to_have_text("No such page")
    page.get_by_role("link").click()
    page.wait_for_url(served + "index.html")
    page.close()


def add_formula(page: Page, inside: str, classes: str) -> None:
    """Append a formula to the page as a live answer does."""
    in_module(
        page,
        "formulas",
        """({ typeset }, [inside, classes]) => {
            const node = document.createElement("span");
            node.id = "added";
            node.className = classes;
            node.innerHTML = inside;
            document.querySelector("article").append(node);
            typeset(node);
        }""",
        [inside, classes],
    )


def test_a_fraction_has_its_top_above_its_bar(served: str, page: Page) -> None:
    """The browser itself lays a formula out: top, bar, bottom."""
    page.goto(served + "index.html")
    add_formula(page, mathml.render(Maths(r"\dfrac{a}{b}", "a/b")), "tex")
    top, bottom = page.locator("#added mi").evaluate_all(
        "(nodes) => nodes.map((node) => node.getBoundingClientRect().toJSON())"
    )
    assert top["bottom"] <= bottom["top"]


def test_a_long_sum_breaks_between_its_terms(served: str, phone_page: Page) -> None:
    """On a phone it stands in several rows and nothing has to be scrolled."""
    phone_page.goto(served + "index.html")
    tex = " + ".join(f"x_{{{n}}}" for n in range(60))
    add_formula(phone_page, mathml.render(Maths("S = " + tex, "S = " + tex)), "tex display")
    added = phone_page.locator("#added")
    assert added.get_attribute("tabindex") is None
    assert added.evaluate("(node) => node.getBoundingClientRect().height") > 100


def test_wide_formula_is_reachable_by_keyboard(served: str, phone_page: Page) -> None:
    """A formula with no place to break, wider than the screen, scrolls in its own line and takes the focus."""
    phone_page.goto(served + "index.html")
    tex = r"\sqrt{" + " + ".join(f"x_{{{n}}}" for n in range(60)) + "}"
    add_formula(phone_page, mathml.render(Maths(tex, tex)), "tex display")
    added = phone_page.locator("#added")
    expect(added).to_have_attribute("tabindex", "0")
    expect(added).to_have_attribute("role", "group")
    assert "gradient" in added.evaluate("(node) => getComputedStyle(node).backgroundImage"), "a sign that more stands"
    added.focus()
    expect(added).to_be_focused()
    assert phone_page.evaluate("document.documentElement.scrollWidth") <= 360


def test_short_formula_is_no_tab_stop(served: str, page: Page) -> None:
    """A displayed formula that fits is not in the way of the keyboard."""
    page.goto(served + "index.html")
    add_formula(page, mathml.render(Maths("F = ma", "F = ma")), "tex display")
    expect(page.locator("#added math")).to_have_count(1)
    assert page.locator("#added").get_attribute("tabindex") is None


def test_where_no_formula_is_laid_out_its_words_stand(served: str, page: Page) -> None:
    """A browser that sets fractions as plain text shows calc's line instead: no fraction loses its bar."""
    page.add_init_script("""document.addEventListener("readystatechange", () => {
        const plain = document.createElement("style"); // what a browser without MathML does with its elements
        plain.textContent = "math, math * { display: inline !important }";
        document.head.append(plain);
    });""")
    page.goto(served + "coulombs-law/force.html")
    expect(page.locator("math")).to_have_count(0)
    lines = page.locator(".step .tex").evaluate_all("(nodes) => nodes.map((node) => node.textContent)")
    assert any("/" in line and line.count("=") == 1 for line in lines)
