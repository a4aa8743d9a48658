"""What tests of several folders share."""

from __future__ import annotations

import gc
import subprocess
import sys
from pathlib import Path

import pytest

from build_site import SITE
from tests import strategies as strategies  # its profile: no test is timed, every run is the same
from tests.cases import KEYS
from toolbox import SCRIPTS


@pytest.fixture(scope="session")
def built_site() -> Path:
    """The folder of the built site, brought up to date first."""
    subprocess.run([sys.executable, str(SCRIPTS / "build_site.py")], check=True)
    return SITE


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Tests of one question follow one another, whatever they look at: what is drawn for it is drawn by one process."""
    places = {key: place for place, key in enumerate(KEYS)}

    def place(item: pytest.Item) -> int:
        given = item.callspec.params.values() if hasattr(item, "callspec") else ()
        keys = (one if isinstance(one, str) else getattr(one, "key", "") for one in given)
        return next((places[key] for key in keys if key in places), -1)

    items.sort(key=place)


def pytest_collection_finish() -> None:
    """What is collected stays to the end: memory is not searched for it again and again."""
    gc.collect()
    gc.freeze()
