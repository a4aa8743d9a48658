"""Setting formulas at build time."""

from __future__ import annotations

from pathlib import Path

import pytest

from toolbox import SetupError, ensure_node
from typeset import find_formulas, set_formulas

PATH = Path("field.html")


def set_one(text: str) -> str:
    """Set the formulas of one page."""
    return set_formulas({PATH: text}, ensure_node())[PATH]


def test_formula_is_read_from_its_attribute() -> None:
    """Entities are undone, the order of attributes is free, and "display" is a class."""
    page = '<div data-tex="a &lt; b &amp; c > d" class="tex display">words</div>'
    assert [formula for _, formula in find_formulas(page)] == [("a < b & c > d", True)]


def test_formula_keeps_its_element_and_source() -> None:
    """The element stays, its text is replaced by the formula with MathML, the rest is untouched."""
    page = set_one('<p>So <span class="tex" data-tex="F = ma">F is m a</span>.</p>')
    assert page.startswith('<p>So <span class="tex" data-tex="F = ma"><span class="katex">')
    assert page.endswith("</span>.</p>")
    assert "<math" in page
    assert "F is m a" not in page


def test_wrong_formula_names_page_and_formula() -> None:
    """A formula that cannot be set stops the build."""
    with pytest.raises(SetupError, match=r"^field\.html: the formula '\\\\frac\{a' is wrong\."):
        set_one(r'<span class="tex" data-tex="\frac{a">a over b</span>')


@pytest.mark.parametrize(
    "element",
    [
        '<span class="tex" data-tex="a"><b>a</b></span>',
        '<span class="tex">a</span>',
        '<em class="tex" data-tex="a">a</em>',
    ],
)
def test_half_written_formula_stops_the_build(element: str) -> None:
    """An element that claims to be a formula and is not written as one is never skipped."""
    with pytest.raises(SetupError, match=r"^field\.html: 1 elements have the class tex but 0 are"):
        set_one(element)


def test_page_without_formulas_stays_as_it_is() -> None:
    """Nothing is changed, and Node is not needed."""
    assert set_formulas({PATH: "<p>plain</p>"}, Path("no node")) == {PATH: "<p>plain</p>"}
