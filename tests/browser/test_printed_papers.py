"""Papers on paper: printed by the browser to PDF and read again, page by page."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path
from shutil import which

import pytest
from playwright.sync_api import Page, expect

from calc import topics
from calc.papers.papers import Wanted, make
from calc.renderings import paper as html
from chapters import DOCS

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


@pytest.mark.skipif(not which("pdftotext"), reason="there is no pdftotext on this machine")
def test_every_page_of_a_class_set_tells_whose_it_is(served: str, page: Page, tmp_path: Path) -> None:
    """Name, number of the paper and page x of y stand on every page; no heading ends one; one answer table closes."""
    page.goto(served + "worksheet.html#paper=coulomb.force,coulomb.contact,several-charges.line&level=2&seed=41")
    expect(page.locator(".sheets > .memo .paper-total")).to_be_visible(timeout=SLOW)
    page.get_by_text("A different paper for each learner").click()
    page.locator('textarea[name="names"]').fill("\n".join(NAMES))
    page.get_by_role("button", name="Make the paper").click()
    expect(page.locator(".worksheet-form .status")).to_contain_text("3 papers", timeout=SLOW)
    page.pdf(path=tmp_path / "set.pdf", prefer_css_page_size=True)
    sheets = pages_of(tmp_path / "set.pdf")
    assert len(sheets) >= 2 * len(NAMES) + 1
    *own, table = sheets
    seen = set()
    for number, text in enumerate(own, 1):
        head, *_, last = [line for line in text.splitlines() if line.strip()]
        found = re.search(r"^\s*(\S+)\s+Paper 41/\d+(, memo)?\s+page (\d+) of (\d+)", head)
        assert found, head
        assert (int(found[3]), int(found[4])) == (number, len(sheets))
        assert not re.match(r"\s*(Question \d+|Data sheet)", last), last
        seen.add((found[1], found[2] or ""))
    assert seen == {(name, memo) for name in NAMES for memo in ("", ", memo")}
    assert all(name in table for name in NAMES)
    assert re.search(rf"Worksheet\s+Paper 41, answers\s+page {len(sheets)} of {len(sheets)}", table)
    assert table.count("Question") == 3
    assert "of the class" in table
