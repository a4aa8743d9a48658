"""The worksheet page in a real browser: made, printed, saved, linked, one for each learner."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from calc import desk

pytestmark = pytest.mark.browser

PAGE = "worksheet.html"
LINK = f"{PAGE}#paper=coulomb,several-charges&n=4&level=2&seed=41&heading=Forces_between_charges"
SLOW = 30_000


def paper(page: Page) -> Locator:
    """The question papers on screen."""
    return page.locator(".sheets > .paper:not(.memo)")


def memo(page: Page) -> Locator:
    """The memos on screen."""
    return page.locator(".sheets > .memo")


def open_made(page: Page, address: str) -> None:
    """Open a link and wait for its paper and memo."""
    page.goto("about:blank")
    page.goto(address)
    expect(memo(page).first).to_be_visible(timeout=SLOW)
    expect(page.locator(".worksheet-form .status")).to_contain_text("marks.", timeout=SLOW)


def saved(page: Page, notation: str) -> str:
    """The text of the file that a save button writes."""
    with page.expect_download() as download:
        page.locator(f'[data-save="{notation}"]').click()
    return Path(download.value.path()).read_text(encoding="utf-8")


def test_a_link_makes_the_paper(place: str, page: Page) -> None:
    """Topics, number of questions, level, number and heading come from the address."""
    open_made(page, place + LINK)
    expect(paper(page).locator("h2")).to_have_text("Forces between charges")
    expect(paper(page).locator(".paper-question")).to_have_count(4)
    expect(page.locator('input[name="seed"]')).to_have_value("41")
    expect(memo(page).locator(".katex").first).to_be_visible()


def test_the_page_gives_the_bytes_of_cpython(place: str, page: Page) -> None:
    """Python in the page and CPython write the same papers, in every notation."""
    for level in (1, "rising"):
        data = {
            "topics": ["coulomb", "electric-field", "equilibrium", "several-charges"], "marks": 60, "level": level,
            "seed": 12, "learner": "Thabo M", "space": "lined",
            "as": ["paper_html", "memo_html", "markdown", "markdown_memo", "latex", "latex_memo"],
        }  # fmt: skip
        page.goto(place + PAGE)
        here = page.evaluate("(data) => window.bookletRuntime.ask('paper', data)", data)
        assert here == json.loads(desk.answer(json.dumps({"operation": "paper", "data": data})))


def test_made_by_keyboard_alone(place: str, page: Page) -> None:
    """Space ticks a topic, typing fills a box, Enter makes the paper, and the address follows."""
    page.goto(place + PAGE)
    page.locator('input[name="topic"][value="equilibrium"]').focus()
    page.keyboard.press("Space")
    page.locator('input[name="count"]').focus()
    page.keyboard.press("Control+A")
    page.keyboard.type("2")
    page.keyboard.press("Enter")
    expect(paper(page).locator(".paper-question")).to_have_count(2, timeout=SLOW)
    assert "#paper=" in page.url


def test_the_link_of_a_paper_makes_it_again(place: str, page: Page) -> None:
    """What the copy button offers opens the same paper and memo."""
    open_made(page, place + LINK)
    page.evaluate("() => { Clipboard.prototype.writeText = () => Promise.reject(); }")
    page.get_by_role("button", name="Copy a link to this paper").click()
    link = page.locator(".worksheet-tools .copy-box").input_value()
    assert len(link.partition("#")[2]) < 300
    first = [paper(page).inner_text(), memo(page).inner_text()]
    other = page.context.new_page()
    open_made(other, link)
    again = [paper(other).inner_text(), memo(other).inner_text()]
    assert again == first


def test_each_learner_gets_a_paper_and_no_link_has_a_name(place: str, page: Page) -> None:
    """Three names, three papers with other numbers; the list survives a reload and is wiped on request."""
    page.goto(place + PAGE)
    page.get_by_text("A different paper for each learner").click()
    page.locator('textarea[name="names"]').fill("Thabo M\nAyşe K\n\nLi W\nThabo M")
    page.get_by_role("button", name="Make the paper").click()
    expect(memo(page)).to_have_count(3, timeout=SLOW)
    expect(page.locator(".worksheet-form .status")).to_contain_text("stands twice in the list")
    stories = [paper(page).nth(n).locator(".paper-story").all_inner_texts() for n in range(3)]
    assert len({tuple(told) for told in stories}) == 3
    expect(paper(page).nth(1)).to_contain_text("Ayşe K")
    links = [page.url, *page.locator(".print-link p").all_inner_texts()]
    assert not re.search(r"Thabo|Ay|Li%|Li_", " ".join(link.partition("#")[2] for link in links))
    assert len(set(links)) == 4
    page.goto("about:blank")
    page.goto(place + PAGE)
    expect(page.locator('textarea[name="names"]')).to_have_value("Thabo M\nAyşe K\n\nLi W\nThabo M")
    page.get_by_role("button", name="Wipe the class list").click()
    expect(page.locator('textarea[name="names"]')).to_have_value("")
    assert page.evaluate("JSON.stringify({...localStorage})").find("Thabo") == -1


def test_a_learners_link_opens_that_learners_paper(place: str, page: Page) -> None:
    """The number in a learner's link makes the same questions; the name stays behind."""
    page.goto(place + PAGE)
    page.get_by_text("A different paper for each learner").click()
    page.locator('textarea[name="names"]').fill("Ayşe K")
    page.get_by_role("button", name="Make the paper").click()
    expect(memo(page)).to_have_count(1, timeout=SLOW)
    link = page.locator(".print-link p").first.inner_text()
    stories = paper(page).locator(".paper-story").all_inner_texts()
    other = page.context.new_page()
    other.goto("about:blank")
    open_made(other, link)
    expect(memo(other)).to_have_count(1)
    assert paper(other).locator(".paper-story").all_inner_texts() == stories


def test_the_saved_page_needs_nothing_else(place: str, page: Page, chromium: Browser) -> None:
    """The HTML file has no script, no other file and no colour of the site; its formulas read without scripts."""
    open_made(page, place + LINK)
    text = saved(page, "html")
    assert not re.search(r"<script|<link|<img|@import|url\(|\bsrc=|\son\w+=", text)
    context = chromium.new_context(java_script_enabled=False)
    asked: list[str] = []
    context.on("request", lambda request: asked.append(request.url))
    alone = context.new_page()
    alone.set_content(text)
    expect(alone.locator(".memo math").first).to_be_visible()
    expect(alone.locator(".paper-figure svg").first).to_be_visible()
    assert not [url for url in asked if url.startswith("http")]
    context.close()


def test_markdown_and_latex_are_saved(place: str, page: Page) -> None:
    """Both files hold the paper and then the memo; a part can be saved alone."""
    open_made(page, place + LINK)
    markdown = saved(page, "markdown")
    assert markdown.startswith("# Forces between charges\n")
    assert "# Forces between charges: memo" in markdown
    latex = saved(page, "latex")
    assert latex.count(r"\begin{document}") == latex.count(r"\end{document}") == 1
    assert r"\newpage" in latex
    page.locator('select[name="piece"]').select_option("paper")
    assert ": memo" not in saved(page, "markdown")


def test_only_papers_are_printed_and_the_memo_begins_a_page(place: str, page: Page) -> None:
    """In print the site's furniture is gone, a question keeps together and the memo starts on a new page."""
    open_made(page, place + LINK)
    page.emulate_media(media="print")
    for furniture in (".md-header", ".worksheet-form", ".worksheet-tools", "h1", ".md-footer"):
        expect(page.locator(furniture).first).to_be_hidden()
    style = "(node) => { const s = getComputedStyle(node); return [s.breakInside, s.breakBefore]; }"
    assert paper(page).locator(".paper-question").first.evaluate(style)[0] == "avoid"
    assert memo(page).first.evaluate(style)[1] == "page"
    page.emulate_media(media="screen")
    page.locator('select[name="piece"]').select_option("memo")
    page.emulate_media(media="print")
    expect(paper(page)).to_be_hidden()
    expect(memo(page)).to_be_visible()


def test_the_link_can_be_kept_off_the_paper(served: str, page: Page) -> None:
    """For a test, only the memo carries the link that opens the memo."""
    open_made(page, served + LINK)
    expect(page.locator(".paper .print-link svg")).to_have_count(2)
    page.locator('select[name="link"]').select_option("memo")
    expect(page.locator(".paper:not(.memo) .print-link")).to_have_count(0)
    expect(page.locator(".memo .print-link")).to_have_count(1)


def test_wrong_wishes_get_a_sentence_beside_their_box(place: str, page: Page) -> None:
    """A number that cannot be is said at its box and stays typed."""
    page.goto(place + PAGE)
    page.locator('input[name="count"]').fill("99")
    page.get_by_role("button", name="Make the paper").click()
    problem = page.locator('[data-field="count"] .problem')
    expect(problem).to_have_text("Number of questions: a whole number from 1 to 30.", timeout=SLOW)
    expect(page.locator('input[name="count"]')).to_have_value("99")
    page.locator('input[name="count"]').fill("2")
    page.get_by_role("button", name="Make the paper").click()
    expect(memo(page)).to_be_visible(timeout=SLOW)
    expect(problem).to_be_hidden()


HOSTILE = [
    "#paper=%3Cscript%3Ewindow.hit%3D1%3C/script%3E",
    "#paper=coulomb&n=1e99&seed=-5",
    "#paper=coulomb&level=%3Cb%3E",
    "#paper=coulomb&own=%3Cimg%20src%3Dx%20onerror%3Dwindow.hit%3D1%3E",
    "#paper=coulomb&heading=" + "x" * 1000,
    "#paper=" + "coulomb," * 12_500,
    "#paper=%E0%A4%A",
    "#paper=" + "coulomb.force," * 61,
]


@pytest.mark.parametrize("hash_", HOSTILE, ids=range(len(HOSTILE)))
def test_a_hostile_link_is_a_sentence(place: str, page: Page, hash_: str) -> None:
    """What a link asks wrongly is said; nothing of it becomes markup."""
    page.goto(place + PAGE + hash_)
    expect(page.locator(".worksheet-form .problem:visible").first).not_to_be_empty(timeout=SLOW)
    assert page.evaluate("window.hit") is None
    assert page.locator(".md-content img, .md-content b, .sheets script").count() == 0


def test_markup_in_a_heading_is_printed_as_text(place: str, page: Page) -> None:
    """A heading with tags shows its tags."""
    open_made(page, f"{place}{PAGE}#paper=coulomb.force&heading=%3Cb%20onclick%3Dx%3EHi%3C/b%3E")
    expect(paper(page).locator("h2")).to_have_text("<b onclick=x>Hi</b>")


def test_a_phone_needs_no_sideways_scrolling(place: str, phone_page: Page) -> None:
    """At 360 px form, paper and memo fit the screen."""
    open_made(phone_page, f"{place}{PAGE}#paper=several-charges,equilibrium&n=5&level=2&seed=3")
    widths = phone_page.evaluate("[document.documentElement.scrollWidth, innerWidth]")
    assert widths[0] <= widths[1]
