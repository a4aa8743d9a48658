"""Finding what the booklet is built with, and not doing work twice."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest

import toolbox

unix_only = pytest.mark.skipif(os.name == "nt", reason="the stand-ins are shell scripts")


def stand_in(file: Path, script: str) -> Path:
    """Write an executable shell script that stands in for a program."""
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(f"#!/bin/sh\n{script}\n", encoding="utf-8")
    file.chmod(0o755)
    return file


def test_running_python_is_recognised() -> None:
    """An interpreter that runs gives its version."""
    assert toolbox.python_version(Path(sys.executable)) == sys.version_info[:2]


@unix_only
def test_broken_shim_is_no_python(tmp_path: Path) -> None:
    """A shim named after a version that is not installed counts as absent."""
    shim = stand_in(tmp_path / "python3.13", "echo 'python3.13: command not found' >&2; exit 127")
    assert toolbox.python_version(shim) is None


def test_missing_file_is_no_python(tmp_path: Path) -> None:
    """A path without a file counts as absent."""
    assert toolbox.python_version(tmp_path / "python3") is None


@unix_only
def test_preferred_version_wins_over_an_earlier_one(tmp_path: Path) -> None:
    """3.13 is taken even if 3.12 comes first and a broken 3.13 stands between."""
    older = stand_in(tmp_path / "a/python3.12", "echo 3 12")
    broken = stand_in(tmp_path / "b/python3.13", "exit 127")
    preferred = stand_in(tmp_path / "c/python3.13", "echo 3 13")
    assert toolbox.find_python([older, broken, preferred]) == preferred


@unix_only
def test_too_old_and_too_new_are_refused(tmp_path: Path) -> None:
    """Versions the lock file was not made for are not taken."""
    old = stand_in(tmp_path / "python3.11", "echo 3 11")
    new = stand_in(tmp_path / "python3.99", "echo 3 99")
    assert toolbox.find_python([old, new]) is None


@unix_only
def test_candidates_cover_path_and_pyenv(tmp_path: Path) -> None:
    """This interpreter, those on PATH and those of pyenv are all tried."""
    on_path = stand_in(tmp_path / "bin/python3.13", "exit 127")
    in_pyenv = stand_in(tmp_path / ".pyenv/versions/3.13.0/bin/python3", "echo 3 13")
    found = list(toolbox.python_candidates(home=tmp_path, search_path=str(tmp_path / "bin")))
    assert found == [Path(sys.executable), on_path, in_pyenv]


def test_digest_changes_with_content_and_name(tmp_path: Path) -> None:
    """A changed byte, a new name and a new file each change the hash; reading again does not."""
    file = tmp_path / "in/a.txt"
    file.parent.mkdir()
    file.write_text("one", encoding="utf-8")
    seen = [toolbox.digest([file.parent])]
    assert toolbox.digest([file.parent]) == seen[0]
    file.write_text("two", encoding="utf-8")
    seen.append(toolbox.digest([file.parent]))
    file = file.rename(file.with_name("b.txt"))
    seen.append(toolbox.digest([file.parent]))
    file.with_name("c.txt").write_text("", encoding="utf-8")
    seen.append(toolbox.digest([file.parent]))
    assert len(set(seen)) == 4


def test_digest_leaves_out_what_tools_write(tmp_path: Path) -> None:
    """Byte code and node_modules do not count as inputs."""
    before = toolbox.digest([tmp_path])
    for folder in ("node_modules", "__pycache__"):
        (tmp_path / folder).mkdir()
        (tmp_path / folder / "x.js").write_text("x", encoding="utf-8")
    assert toolbox.digest([tmp_path]) == before


def test_stamp_is_fresh_only_for_its_own_value(tmp_path: Path) -> None:
    """A stage runs again after its inputs change, and not before."""
    stamp = tmp_path / "deep/stamp"
    assert not toolbox.is_fresh(stamp, "a")
    toolbox.write_stamp(stamp, "a")
    assert toolbox.is_fresh(stamp, "a")
    assert not toolbox.is_fresh(stamp, "b")


def test_failed_stage_says_what_to_do(capfd: pytest.CaptureFixture[str]) -> None:
    """A command that fails shows its output and ends in a sentence with the remedy."""
    command = [sys.executable, "-c", "import sys; sys.exit('no space left')"]
    with pytest.raises(toolbox.SetupError, match=r"ended with code 1\. Free some space\.$"):
        toolbox.run(command, remedy="Free some space.")
    assert "no space left" in capfd.readouterr().err


def test_named_chromium_must_exist(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """A wrong path in the variable is an error, not a reason to look elsewhere."""
    monkeypatch.setenv(toolbox.CHROMIUM_VARIABLE, str(tmp_path / "none"))
    with pytest.raises(toolbox.SetupError, match="there is no such file"):
        toolbox.find_chromium()
