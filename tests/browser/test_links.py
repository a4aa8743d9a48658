"""Addresses: old links open the same answers, forms stand in frames of other pages, prints carry their link."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from serve import serving

pytestmark = pytest.mark.browser

SLOW = 30_000

# Links as they were given out. They must open the same, now and in every later version: add, never change.
SOLVED = [
    ("coulombs-law.html#q=coulomb.force&Q1=+8nC&Q2=-3nC&r=12cm&find=F", "1,50 times 10 to the power minus 5 newtons, attraction"),
    ("coulombs-law.html#q=coulomb.force&Q1=%2B8%20nC&Q2=-3%20nC&r=12%20cm", "1,50 times 10 to the power minus 5 newtons, attraction"),
    ("coulombs-law.html#q=coulomb.force&Q1=6nC&Q2=-2nC&F=4.8e-6N&find=r", "0,15 metres"),
    ("coulombs-law.html#q=coulomb.force&Q2=-2nC&F=4,8µN&r=15cm&acting=attract&find=Q1", "6,00 times 10 to the power minus 9 coulombs, positive charge"),
    ("coulombs-law.html#q=coulomb.force&Q1=+8nC&Q2=-3nC&r=12cm&find=F&part=find", "1,50 times 10 to the power minus 5 newtons"),
    ("coulombs-law.html#q=coulomb.force&Q1=+8nC&Q2=-3nC&r=12cm&find=F&set.k=8,99e9&set.comma=point&set.decimals=3", "1.498 times 10 to the power minus 5 newtons"),
    ("coulombs-law.html#q=coulomb.contact&Q1=+9nC&Q2=-4nC&r=20cm", "electrons move from B to A"),
    ("several-charges.html#q=several-charges.line&charges=+6nC_0cm~-4nC_20cm~+5nC_50cm&on=2&positive=right", "3,40 times 10 to the power minus 6 newtons, to the left"),
    ("several-charges.html#q=several-charges.line&charges=%2B6nC_0cm~-4nC_20cm~%2B5nC_50cm~-2nC_70cm&on=1&positive=left", "4,54 times 10 to the power minus 6 newtons, to the right"),
    ("electric-field.html#q=electric-field.plates&V=1,5kV&d=1,25cm&find=E", "1,20 times 10 to the power 5 volts per metre, downwards"),
    ("coulombs-law.html#q=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm&find=F&only=form", "4,80 times 10 to the power minus 6 newtons"),
]  # fmt: skip

PRACTICE = [
    ("practice.html#practice=coulomb.force&seed=3&level=2", "B carries +2,5 nC. Their centres are 65 cm apart. They attract and exert a force of 3,6 µN"),
    ("practice.html#practice=coulomb.scaling&seed=3&level=1", "Two point charges exert a force"),
]  # fmt: skip

WORKSHEETS = [
    ("worksheet.html#paper=coulomb.force,coulomb.scaling,coulomb.contact&level=2&seed=41", "A carries −2,4 nC and B carries −1,6 nC.", 3),
    ("worksheet.html#paper=coulomb.force:1,coulomb.force:3&level=rising&seed=5&own=670576&space=lined", "", 2),
    ("worksheet.html#paper=coulomb,several-charges&n=6&level=2&seed=41&heading=Forces_1", "", 6),
    ("worksheet.html#paper=coulomb&marks=20&seed=1", "", 0),
]  # fmt: skip


@pytest.mark.parametrize(("link", "answer"), SOLVED, ids=range(len(SOLVED)))
def test_old_links_open_solved(place: str, page: Page, link: str, answer: str) -> None:
    """A stored link to a form gives the answer it gave when it was stored."""
    page.goto(place + link)
    key = link.split("#q=")[1].split("&")[0]
    section = page.locator(f'section.question[data-question="{key}"]')
    expect(section.locator(".heard")).to_contain_text(answer, timeout=SLOW)
    expect(section.locator(".problem:visible")).to_have_count(0)


def test_a_link_to_a_part_opens_that_part(place: str, page: Page) -> None:
    """A whole question opens with the asked part unfolded and the others folded."""
    page.goto(
        f"{place}several-charges.html#q=several-charges.rail&n=5x10^10&Q_B=-6nC&Q_C=-9nC&r_AB=20cm&r_BC=30cm&F_D=2,4uN&way=right&part=net"
    )
    section = page.locator('section.question[data-question="several-charges.rail"]')
    expect(section.locator('details.part[data-part="net"]')).to_have_attribute(
        "open", "", timeout=SLOW
    )
    expect(section.locator("details.part[open]")).to_have_count(1)


@pytest.mark.parametrize(("link", "story"), PRACTICE, ids=range(len(PRACTICE)))
def test_old_practice_links_draw_the_same(place: str, page: Page, link: str, story: str) -> None:
    """A stored practice link draws the question it drew when it was stored."""
    page.goto(place + link)
    expect(page.locator(".practice-sheet .story")).to_contain_text(story, timeout=SLOW)


@pytest.mark.parametrize(("link", "story", "count"), WORKSHEETS, ids=range(len(WORKSHEETS)))
def test_old_worksheet_links_make_the_same(
    place: str, page: Page, link: str, story: str, count: int
) -> None:
    """A stored worksheet link makes a paper and its memo."""
    page.goto(place + link)
    paper = page.locator(".sheets > .paper:not(.memo)")
    expect(paper).to_contain_text(story, timeout=SLOW)
    expect(page.locator(".sheets > .memo")).to_have_count(1)
    if count:
        expect(paper.locator(".paper-question")).to_have_count(count)
    else:
        expect(paper.locator(".paper-total")).to_have_text("Total: 20 marks")


# --- in a frame ---


@pytest.fixture
def host(served: str, tmp_path: Path) -> Iterator[str]:
    """A page on another port with one question in a frame, as a learning platform would have it."""
    (tmp_path / "lesson.html").write_text(
        '<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,"><title>Lesson</title><h1>Lesson</h1><p id="height"></p>'
        f'<iframe title="Question" width="700" height="900" src="{served}coulombs-law.html'
        '#q=coulomb.force&amp;Q1=6nC&amp;Q2=-2nC&amp;r=15cm&amp;find=F&amp;only=form"></iframe>'
        "<script>addEventListener('message', (event) => {"
        " document.getElementById('height').textContent = JSON.stringify(event.data); });</script>",
        encoding="utf-8",
    )

    with serving(tmp_path) as address:
        yield f"{address}lesson.html"


def test_a_form_stands_alone_in_a_frame(host: str, page: Page) -> None:
    """The frame shows one question, solved, and none of the site around it."""
    page.goto(host)
    frame = page.frame_locator("iframe")
    section = frame.locator('section.question[data-question="coulomb.force"]')
    expect(section.locator(".heard")).to_contain_text("4,80 times 10", timeout=SLOW)
    expect(section.locator(".answer").first).to_be_visible()
    for furniture in (".md-header", ".md-footer", "h1", ".md-sidebar--primary", '[data-question="coulomb.contact"]'):  # fmt: skip
        expect(frame.locator(furniture).first).to_be_hidden()
    expect(page.locator("#height")).to_contain_text("bookletHeight")


def test_a_form_in_a_frame_answers_what_is_typed(host: str, page: Page) -> None:
    """Other numbers are worked in the frame, the link stays that of a form alone, and the whole page is one link away."""
    page.goto(host)
    frame = page.frame_locator("iframe")
    section = frame.locator('section.question[data-question="coulomb.force"]')
    expect(section.locator(".heard")).to_contain_text("4,80 times 10", timeout=SLOW)
    section.locator('input[type=text][name="r"]').fill("30 cm")
    expect(section.locator(".heard")).to_contain_text("1,20 times 10", timeout=SLOW)
    inner = next(one for one in page.frames if "coulombs-law" in one.url)
    assert "r=30cm" in inner.url
    assert "only=form" in inner.url
    link = section.get_by_role("link", name="The whole page, with explanations")
    assert "only=form" not in (link.get_attribute("href") or "")
    expect(link).to_have_attribute("target", "_blank")


def test_an_unknown_question_in_a_frame_says_so(served: str, page: Page) -> None:
    """A frame that asks for a question of no such name shows the sentence, and no markup of the link."""
    page.goto(f"{served}coulombs-law.html#q=%3Cimg%20src=x%3E&only=form")
    expect(page.locator(".link-problem")).to_contain_text("not on this page", timeout=SLOW)
    expect(page.locator(".link-problem")).to_be_visible()
    assert page.locator(".md-content img").count() == 0


# --- on paper ---


def test_a_printed_page_carries_its_link(place: str, page: Page) -> None:
    """Before printing, the link with its numbers is put at the end; served, with a QR code; from disk, without."""
    address = f"{place}coulombs-law.html#q=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm&find=F"
    page.goto(address)
    expect(page.locator(".heard").first).to_contain_text("4,80 times 10", timeout=SLOW)
    page.evaluate("() => window.bookletPrintLink.ready")
    page.evaluate("() => window.dispatchEvent(new Event('beforeprint'))")
    line = page.locator(".md-content__inner > .print-link")
    expect(line).to_be_hidden()
    page.emulate_media(media="print")
    expect(line).to_be_visible()
    assert line.locator("p").inner_text() == page.url
    expect(line.locator("svg.print-code")).to_have_count(1 if address.startswith("http") else 0)
    page.evaluate("() => window.dispatchEvent(new Event('beforeprint'))")
    expect(line).to_have_count(1)


def test_the_code_library_waits_until_the_page_rests(served: str, page: Page) -> None:
    """The library is fetched after the page has loaded, and only when the page is served."""
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(f"{served}glossary.html")
    page.evaluate("() => window.bookletPrintLink.ready")
    assert "qrcode.js" in asked[-1]


def test_pages_from_disk_leave_the_code_library_alone(from_disk: str, page: Page) -> None:
    """From disk nobody else can open the link, so no code is made."""
    page.goto(f"{from_disk}glossary.html")
    page.evaluate("() => window.bookletPrintLink.ready")
    assert page.evaluate("typeof window.qrcode") == "undefined"
