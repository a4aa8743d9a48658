"""How long and how heavy the pages are."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from page_measures import measure

pytestmark = pytest.mark.browser


def test_no_page_is_longer_or_heavier_than_its_kind_may_be(built_site: Path, chromium: Browser) -> None:
    """Chapters stay within 5 screens of a laptop, questions within 6, and within 9 of a phone; 150 kB of HTML."""
    found = measure(built_site, chromium)
    assert {one.kind for one in found} == {"chapter", "question", "other"}
    assert not [f"{one.name}: {one.over}" for one in found if one.over]
