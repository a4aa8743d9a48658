"""A figure that also says itself in numbers: the table stands below the drawing, and goes when anything is hidden."""

from dataclasses import replace

from calc.figures import graph
from calc.figures.graph_marks import Key
from calc.renderings import html

ROWS = (("t (s)", "v (m·s⁻¹)"), ("0", "12"), ("3,79", "−25,2 <"))
DRAWN = replace(
    graph("t (s)", "v (m·s⁻¹)", [([(0, 12), (3.79, -25.2)], "")], keys=[Key(3.79, -25.2, "", "t", "v")]), table=ROWS
)


def test_the_table_stands_below_the_drawing() -> None:
    """Heads are heads of columns, and every cell is set as text."""
    page = html.figure(DRAWN)
    assert page.index("</svg>") < page.index("<summary>As a table</summary>")
    assert '<th scope="col">v (m·s⁻¹)</th>' in page
    assert "<td>−25,2 &lt;</td>" in page
    assert page.count("<tr>") == len(ROWS)


def test_a_figure_without_one_has_no_empty_table() -> None:
    """Nothing is to be opened where there is nothing to read."""
    assert "as-table" not in html.figure(replace(DRAWN, table=()))


def test_the_table_goes_with_the_first_value_that_is_to_be_found() -> None:
    """A number in a table would tell what an arrow or a label may not."""
    seen = DRAWN.without({"v"})
    assert seen is not None
    assert seen.table == ()
    assert DRAWN.without(set()).table == ROWS  # type: ignore[union-attr]
