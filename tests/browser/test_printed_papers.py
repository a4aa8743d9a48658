"""Papers on paper: printed by the browser to PDF and read again, page by page."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path
from shutil import which

import pytest
from playwright.sync_api import Browser, Page, expect

from calc import topics
from calc.papers.papers import Wanted, make
from calc.renderings import paper as html
from chapters import DOCS, chapters

pytestmark = pytest.mark.browser

STYLE = (DOCS / "assets" / "paper.css").read_text(encoding="utf-8")
NAMES = ("Ayşe", "Ben", "Chloé")
SLOW = 60_000


def pages_of(printed: Path) -> list[str]:
    """The text of each page of a PDF file."""
    command = ["pdftotext", "-layout", str(printed), "-"]
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout.split("\f")[:-1]


@pytest.mark.parametrize("level", [1, 2, 3])
def test_a_memo_is_no_longer_than_twice_its_paper(page: Page, level: int) -> None:
    """Set as on paper, 178 mm wide, the memo takes at most twice the height of its paper; full working takes more."""
    made = make(Wanted(tuple(topics.topics()), count=6, level=level, seed=3))
    page.set_viewport_size({"width": 673, "height": 900})
    page.emulate_media(media="print")
    heights = []
    for text in (html.render(made), html.memo(made), html.memo(made, full=True)):
        page.set_content(f'<style>{STYLE}</style><body class="saved"><div class="sheets">{text}</div>')
        heights.append(page.locator("article").bounding_box()["height"])
    paper, short, full = heights
    assert paper > 500
    assert short <= 2 * paper
    assert full > short


def class_set(page: Page, address: str, names: tuple[str, ...]) -> None:
    """Open a paper's link and make one for each name."""
    page.goto(address)
    expect(page.locator(".sheets > .memo .paper-total")).to_be_visible(timeout=SLOW)
    page.get_by_text("A different paper for each learner").click()
    page.locator('textarea[name="names"]').fill("\n".join(names))
    page.get_by_role("button", name="Make the paper").click()
    expect(page.locator(".worksheet-form .status")).to_contain_text(f"{len(names)} papers", timeout=SLOW)


def heads_of(sheets: list[str]) -> list[tuple[str, str, int, int]]:
    """The running head of each page: whose it is, the paper's number, page x, of y."""
    found = []
    for text in sheets:
        head = next(line for line in text.splitlines() if line.strip())
        match = re.fullmatch(r"\s*(\S.*?)\s+(Paper \S+?(?:, memo|, answers)?)\s+page (\d+) of (\d+)", head)
        assert match, head
        found.append((match[1], match[2], int(match[3]), int(match[4])))
    return found


def counted_alone(heads: list[tuple[str, str, int, int]]) -> list[tuple[str, str]]:
    """Whose papers follow each other; fails unless each counts its own pages, from 1 to as many as it has."""
    sets: dict[tuple[str, str], list[tuple[int, int]]] = {}
    for name, number, at, of in heads:
        sets.setdefault((name, number), []).append((at, of))
    for key, pages in sets.items():
        assert pages == [(at, len(pages)) for at in range(1, len(pages) + 1)], key
    return list(sets)


@pytest.mark.skipif(not which("pdftotext"), reason="there is no pdftotext on this machine")
def test_a_single_paper_ends_with_its_memo(served: str, page: Page, tmp_path: Path) -> None:
    """Paper and memo count their own pages, and no empty page follows."""
    page.goto(served + "worksheet.html#paper=coulomb.force,coulomb.scaling&level=2&seed=41")
    expect(page.locator(".sheets > .memo")).to_have_count(1, timeout=SLOW)
    expect(page.locator(".sheets > .paper .print-code").first).to_be_attached(timeout=SLOW)
    page.pdf(path=tmp_path / "one.pdf", prefer_css_page_size=True)
    sheets = pages_of(tmp_path / "one.pdf")
    assert counted_alone(heads_of(sheets)) == [("Worksheet", "Paper 41"), ("Worksheet", "Paper 41, memo")]


@pytest.mark.skipif(not which("pdftotext"), reason="there is no pdftotext on this machine")
def test_every_page_of_a_class_set_tells_whose_it_is(served: str, page: Page, tmp_path: Path) -> None:
    """Name, paper and page x of y of that paper stand on every page; no heading ends one; one answer table closes."""
    link = "worksheet.html#paper=coulomb.force,coulomb.contact,several-charges.line&space=lined&level=2&seed=41"
    class_set(page, served + link, NAMES)
    page.pdf(path=tmp_path / "set.pdf", prefer_css_page_size=True)
    sheets = pages_of(tmp_path / "set.pdf")
    heads = heads_of(sheets)
    *own, table = counted_alone(heads)
    assert [name for name, _ in own] == [*NAMES, *NAMES]
    assert [number.endswith(", memo") for _, number in own] == [False] * 3 + [True] * 3
    assert all(re.fullmatch(r"Paper 41/\d+(, memo)?", number) for _, number in own)
    assert table == ("Worksheet", "Paper 41, answers")
    assert max(of for *_, of in heads) > 1
    for text in sheets:
        last = [line for line in text.splitlines() if line.strip()][-1]
        assert not re.match(r"\s*(Question \d+|Data sheet)", last), last
    assert all(name in sheets[-1] for name in NAMES)
    assert sheets[-1].count("Question") == 3
    assert "of the class" in sheets[-1]


@pytest.mark.skipif(not which("pdftotext"), reason="there is no pdftotext on this machine")
@pytest.mark.parametrize("memo", ["short", "full"])
def test_a_saved_class_set_counts_its_pages_as_the_page_does(
    from_disk: str, page: Page, chromium: Browser, tmp_path: Path, memo: str
) -> None:
    """Saved and opened elsewhere, without scripts, it prints page for page what the page itself prints."""
    class_set(page, f"{from_disk}worksheet.html#paper=coulomb,momentum&n=4&level=3&seed=9&memo={memo}", NAMES)
    page.pdf(path=tmp_path / "page.pdf", prefer_css_page_size=True)
    with page.expect_download(timeout=SLOW) as download:
        page.locator('[data-save="html"]').click()
    download.value.save_as(tmp_path / "saved.html")
    context = chromium.new_context(java_script_enabled=False)
    alone = context.new_page()
    alone.goto((tmp_path / "saved.html").as_uri())
    alone.pdf(path=tmp_path / "saved.pdf", prefer_css_page_size=True)
    heads = heads_of(pages_of(tmp_path / "saved.pdf"))
    assert len(counted_alone(heads)) == 2 * len(NAMES) + 1
    assert heads == heads_of(pages_of(tmp_path / "page.pdf"))
    context.close()


def test_a_saved_paper_brings_the_fonts_of_its_formulas(from_disk: str, page: Page, chromium: Browser) -> None:
    """A saved file opened elsewhere sets a fraction in the maths font, word for word as wide as the page sets it."""
    page.goto(from_disk + "worksheet.html#paper=coulomb.force&seed=41")
    expect(page.locator(".sheets > .memo .paper-total")).to_be_visible(timeout=SLOW)
    with page.expect_download(timeout=SLOW) as download:
        page.locator('[data-save="html"]').click()
    context = chromium.new_context(java_script_enabled=False, viewport={"width": 1280, "height": 900})
    alone = context.new_page()
    alone.set_content(Path(download.value.path()).read_text(encoding="utf-8"))
    size = "(node) => { const box = node.getBoundingClientRect(); return [box.width, box.height]; }"
    here, there = (one.locator(".memo mfrac").first for one in (page, alone))
    alone.wait_for_timeout(200)
    assert there.evaluate(size) == pytest.approx(here.evaluate(size), abs=0.1)
    session = context.new_cdp_session(alone)
    session.send("DOM.enable")
    session.send("CSS.enable")
    root = session.send("DOM.getDocument", {"depth": -1})["root"]["nodeId"]
    fonts = set()
    for part in session.send("DOM.querySelectorAll", {"nodeId": root, "selector": ".memo mfrac mi, .memo mfrac mn"})[
        "nodeIds"
    ]:
        used = session.send("CSS.getPlatformFontsForNode", {"nodeId": part})["fonts"]
        fonts |= {(font["familyName"], font["isCustomFont"]) for font in used}
    assert fonts == {("STIX Two Math", True)}
    context.close()


@pytest.mark.skipif(not which("pdftotext"), reason="there is no pdftotext on this machine")
def test_folded_parts_are_open_on_paper_and_folded_on_screen(served: str, page: Page, tmp_path: Path) -> None:
    """Every part of a whole question is printed with all its marks, open or not; on screen all stay as they were."""
    page.goto(
        served + next(entry.address for chapter in chapters() for entry in chapter.entries if entry.question.scenario)
    )
    parts = page.locator(".answer-area details.part")
    folded = "(nodes) => nodes.map((node) => node.open)"
    before = parts.evaluate_all(folded)
    assert before.count(False) > 1
    page.pdf(path=tmp_path / "page.pdf", prefer_css_page_size=True)
    ticks = "(nodes) => nodes.map((node) => node.textContent).join('').split('\u2713').length - 1"
    in_parts, in_folded = (
        page.locator(f".answer-area details.part{kind} .mark").evaluate_all(ticks) for kind in ("", ":not([open])")
    )
    assert in_folded > 5
    assert "".join(pages_of(tmp_path / "page.pdf")).count("\u2713") == in_parts
    assert parts.evaluate_all(folded) == before


@pytest.mark.parametrize("chapter", ["newton", "energy"])
def test_the_cards_of_a_chapter_stay_whole_on_paper(served: str, page: Page, chapter: str) -> None:
    """No card of a question is cut by the end of a sheet, and what announces the cards stays with the first of them."""
    page.goto(f"{served}{chapter}.html")
    page.emulate_media(media="print")
    kept = page.evaluate(
        """() => [...document.querySelectorAll(".question-list")].map((list) => [
          [...list.children].every((card) => getComputedStyle(card).breakInside === "avoid"),
          list.previousElementSibling.tagName !== "P" || getComputedStyle(list.previousElementSibling).breakAfter,
        ])"""
    )
    assert kept
    assert all(whole and after in (True, "avoid") for whole, after in kept)
