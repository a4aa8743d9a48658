"""What tests of several folders share."""

from __future__ import annotations

import gc
import subprocess
import sys
from pathlib import Path

import pytest

from build_site import SITE
from tests import strategies as strategies  # its profile: no test is timed, every run is the same
from toolbox import SCRIPTS


@pytest.fixture(scope="session")
def built_site() -> Path:
    """The folder of the built site, brought up to date first."""
    subprocess.run([sys.executable, str(SCRIPTS / "build_site.py")], check=True)
    return SITE


def pytest_collection_finish() -> None:
    """What is collected stays to the end: memory is not searched for it again and again."""
    gc.collect()
    gc.freeze()
