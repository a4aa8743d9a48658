"""Plain text: the letters of a memo's marks."""

import pytest

from calc.model.answers import Mark
from calc.renderings.text import marks


@pytest.mark.parametrize(
    ("given", "lettered"),
    [
        ((), ""),
        ((Mark("formula"), Mark("substitution"), Mark("answer")), "F S A"),
        ((Mark("substitution", 2), Mark("answer")), "S2 A"),
        ((Mark("substitution", 3),), "S3"),
    ],
)
def test_marks_are_lettered_and_counted(given: tuple[Mark, ...], lettered: str) -> None:
    """A letter for each kind, and how many where it is more than one."""
    assert marks(given) == lettered
