"""How long and how heavy the pages are."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from build_site import ZIP
from page_measures import READABLE, ZIPPED, heaviest_by_script, live_form, measure, to_read, to_use

pytestmark = pytest.mark.browser


def test_no_page_is_longer_or_heavier_than_its_kind_may_be(built_site: Path, chromium: Browser) -> None:
    """Chapters stay within 5 screens of a laptop, questions within 6, and within 9 of a phone; 150 kB of HTML."""
    found = measure(built_site, chromium)
    assert {one.kind for one in found} == {"chapter", "question", "other"}
    assert not [f"{one.name}: {one.over}" for one in found if one.over]


def test_a_page_is_read_for_a_quarter_of_a_megabyte(built_site: Path, chromium: Browser) -> None:
    """Page, styles, fonts and scripts of the heaviest page of each kind stay within 250 kB compressed."""
    names = heaviest_by_script(built_site)
    assert len(names) > 4
    weights = {name: to_read(built_site, chromium, name) for name in names}
    assert all(weight > 50_000 for weight in weights.values()), weights
    assert {name: weight for name, weight in weights.items() if weight > READABLE} == {}


def test_a_live_form_stays_within_its_size(built_site: Path, chromium: Browser) -> None:
    """A question's page with its calculator is fetched for 6,5 MB compressed with 35 questions, 7,3 MB with 120."""
    fetched = to_use(built_site, chromium, "coulombs-law/force.html")
    assert len([name for name in fetched if name.startswith("assets/runtime/")]) == 5, fetched
    assert sum(fetched.values()) <= live_form(), fetched


def test_the_zip_stays_within_its_size(built_site: Path) -> None:
    """The copy for offline use is at most 12 MB."""
    assert ZIP.stat().st_size <= ZIPPED
