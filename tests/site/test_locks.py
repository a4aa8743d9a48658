"""The lock files: exact, hashed, and free of any registry's address."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from toolbox import SCRIPTS

PYTHON_LOCKS = sorted(SCRIPTS.glob("requirements*.txt"))
NODE_LOCK = json.loads((SCRIPTS / "package-lock.json").read_text(encoding="utf-8"))


def pins(lock: Path) -> list[str]:
    """Return the requirements of a lock file, each on one line with its hashes."""
    text = lock.read_text(encoding="utf-8").replace("\\\n", " ")
    return [line for line in text.splitlines() if line.strip() and not line.startswith("#")]


def test_python_locks_are_found() -> None:
    """The locks for the site, for uv and for Node are all checked below."""
    names = [lock.name for lock in PYTHON_LOCKS]
    assert names == ["requirements-node.txt", "requirements-uv.txt", "requirements.txt"]


@pytest.mark.parametrize("lock", PYTHON_LOCKS, ids=lambda lock: lock.name)
def test_python_pins_are_exact_and_hashed(lock: Path) -> None:
    """Each line pins one version and carries at least one SHA-256."""
    for pin in pins(lock):
        assert re.match(r"[\w.-]+==[\w.]+ ", pin), pin
        assert re.search(r"--hash=sha256:[0-9a-f]{64}\b", pin), pin


@pytest.mark.parametrize("lock", PYTHON_LOCKS, ids=lambda lock: lock.name)
def test_python_locks_name_no_address(lock: Path) -> None:
    """A reader's own pip settings say where packages come from; the lock does not."""
    text = lock.read_text(encoding="utf-8")
    assert not re.search(r"://|--index-url|--extra-index-url|--find-links", text)


def test_direct_requirements_are_locked_as_asked() -> None:
    """Every version in requirements.in is the one in requirements.txt."""
    asked = {
        line
        for line in (SCRIPTS / "requirements.in").read_text(encoding="utf-8").splitlines()
        if line and not line.startswith("#")
    }
    locked = {pin.split(" ", 1)[0] for pin in pins(SCRIPTS / "requirements.txt")}
    assert asked
    assert asked <= locked


def test_node_lock_names_no_download_address() -> None:
    """No package of the lock says where it was fetched from."""
    assert [name for name, entry in NODE_LOCK["packages"].items() if "resolved" in entry] == []


def test_node_packages_are_exact_and_hashed() -> None:
    """Direct versions are exact and each locked package has an integrity hash."""
    root = NODE_LOCK["packages"][""]
    for name, version in (root["dependencies"] | root["devDependencies"]).items():
        assert re.fullmatch(r"\d+\.\d+\.\d+", version), name
        assert NODE_LOCK["packages"][f"node_modules/{name}"]["version"] == version
    for name, entry in NODE_LOCK["packages"].items():
        assert not name or entry["integrity"].startswith("sha512-"), name
