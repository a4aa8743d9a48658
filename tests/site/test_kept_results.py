"""What a build keeps for the next is used while it is made from the same, and never longer."""

from __future__ import annotations

from pathlib import Path

import pytest

import kept_results
from kept_results import Kept


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of the test's own in the place of build/cache."""
    monkeypatch.setattr(kept_results, "FOLDER", tmp_path)
    return tmp_path


def built(made_from: str, *asked: str) -> list[str]:
    """What one build has to make when these results are asked for."""
    made: list[str] = []
    kept: Kept[str] = Kept("things", made_from)
    for key in asked:
        result = kept.get(key, lambda key=key: made.append(key) or f"{key} of {made_from}")
        assert result == f"{key} of {made_from}"
    kept.write()
    return made


def test_the_next_build_makes_only_what_is_new() -> None:
    """A result is made once, within a build and from build to build."""
    assert built("a", "one", "two", "one") == ["one", "two"]
    assert built("a", "one", "two", "three") == ["three"]


def test_results_made_from_something_else_are_made_anew() -> None:
    """A change of what they are made from drops all of them."""
    assert built("a", "one", "two") == ["one", "two"]
    assert built("b", "one", "two") == ["one", "two"]
    assert built("a", "one") == ["one"]


def test_what_is_no_longer_asked_for_is_dropped() -> None:
    """The file does not grow with every version of a page."""
    built("a", "one", "two")
    built("a", "one")
    assert built("a", "one", "two") == ["two"]


@pytest.mark.parametrize("damage", ["", "{", "[]", '{"made from": "a"}', "null"])
def test_a_damaged_file_counts_as_none(folder: Path, damage: str) -> None:
    """A build that was cut off, or a full disk, costs time and nothing else."""
    built("a", "one")
    (folder / "things.json").write_text(damage, encoding="utf-8")
    assert built("a", "one") == ["one"]
    assert built("a", "one") == []
