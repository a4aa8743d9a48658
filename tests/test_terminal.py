"""Worked answers in the terminal: ``python -m calc``."""

from __future__ import annotations

import pytest

from calc import VERSION
from calc.__main__ import main


def printed(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    """How it ended, what it printed, and what it complained of."""
    ended = main(list(words))
    out, err = capsys.readouterr()
    return ended, out.replace("\N{NO-BREAK SPACE}", " "), err.replace("\N{NO-BREAK SPACE}", " ")


def test_own_numbers_are_worked(capsys: pytest.CaptureFixture[str]) -> None:
    """The unknown is what is left out, or what ``find`` says."""
    data = ("coulomb.force", "Q1=6nC", "Q2=-2nC")
    ended, out, err = printed(capsys, *data, "r=15cm")
    assert (ended, err) == (0, "")
    assert "4,80 × 10⁻⁶ N" in out
    ended, out, _ = printed(capsys, *data, "F=4,8e-6 N", "find=r")
    assert ended == 0
    assert "0,15 m" in out
    assert "\\section" not in out


def test_the_example_is_worked_where_no_numbers_are_typed(capsys: pytest.CaptureFixture[str]) -> None:
    """The key of a question alone is enough; an option is no datum."""
    ended, out, err = printed(capsys, "--latex", "coulomb.force")
    assert (ended, err) == (0, "")
    assert "\\section*{Force between two charges}" in out


def test_rows_of_a_table_are_typed_in_one_word(capsys: pytest.CaptureFixture[str]) -> None:
    """Rows are parted by ~, cells by _."""
    rows = "charges=+6nC_0cm~-4nC_20cm~+5nC_50cm"
    ended, out, err = printed(capsys, "several-charges.line", rows, "on=2", "positive=right")
    assert (ended, err) == (0, "")
    assert "3,40 × 10⁻⁶ N, to the left" in out


def test_what_is_refused_is_said_with_its_box(capsys: pytest.CaptureFixture[str]) -> None:
    """One refusal or several, each on a line, nothing printed as an answer."""
    ended, out, err = printed(capsys, "coulomb.force", "Q1=6nC", "Q2=-2nC", "r=-15cm")
    assert (ended, out) == (1, "")
    assert err == "r: Distance must be greater than zero.\n"
    ended, out, err = printed(capsys, "coulomb.force", "Q1=six", "Q2=two", "r=15cm")
    assert (ended, out, len(err.splitlines())) == (1, "", 2)
    assert [line.partition(":")[0] for line in err.splitlines()] == ["Q1", "Q2"]
    ended, out, err = printed(capsys, "coulomb.force", "Q1=6nC", "Q2=-2nC")
    assert (ended, out) == (1, "")
    assert [line.partition(":")[0] for line in err.splitlines()] == ["F", "r", "the question"]


def test_an_unknown_question_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    """With what there is."""
    ended, out, err = printed(capsys, "coulomb.weight")
    assert (ended, out) == (2, "")
    assert "coulomb.weight" in err


def test_without_words_the_questions_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    """Chapter by chapter, each with its boxes; the version on request."""
    ended, out, _ = printed(capsys)
    assert ended == 0
    assert out.splitlines()[1].startswith("  circuits.")
    (force,) = [line for line in out.splitlines() if line.startswith("  coulomb.force:")]
    assert "(Q1, Q2, r, F" in force
    assert printed(capsys, "--version") == (0, f"{VERSION}\n", "")
