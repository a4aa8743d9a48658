"""No label of any drawn figure is struck, covered, or nearer to another body or arrow than to its own.

Measured from the SVG text alone (``tests/measured.py``). 150 figures by default;
``FIGURES_MEASURED=2000`` in the environment measures so many.
"""

import os

import pytest

from calc.figures import Arrow, Dot, Figure, Sphere
from calc.renderings.svg import render
from tests.drawn_figures import BUILDERS, figures
from tests.measured import faults, measured, misread

COUNT = int(os.environ.get("FIGURES_MEASURED", "150"))


def all_faults(figure: Figure) -> list[str]:
    """What is wrong with the labels of one figure."""
    drawn = measured(render(figure))
    found = faults(drawn)
    bodies = [item.label for item in figure.items if isinstance(item, Sphere | Dot)]
    vectors: dict[str, list[str]] = {}
    for item in figure.items:
        if isinstance(item, Arrow) and item.kind != "axis":
            vectors.setdefault(item.kind, []).append(item.label)
    if len(bodies) == len(drawn.circles):  # a figure with other circles has no list of bodies
        found += misread(drawn, bodies, vectors)
    return found


def test_labels_stand_clear_and_by_their_own() -> None:
    """In figures of every question and every builder no label touches anything or can be misread."""
    wrong = {name: found for name, figure in figures(COUNT) if (found := all_faults(figure))}
    assert wrong == {}


def test_every_builder_is_measured() -> None:
    """The sample holds figures of every builder, and of more than twenty questions."""
    kinds = {name.partition("/")[0] for name, _ in figures(150)}
    assert set(BUILDERS) <= kinds
    assert len({kind for kind in kinds if "." in kind}) > 20


@pytest.mark.parametrize(
    ("drawing", "fault"),
    [
        (
            (
                '<text class="fig-label" x="0" y="0" font-size="16">AB</text>'
                '<text class="fig-label" x="8" y="3" font-size="16">CD</text>'
            ),
            "“AB” on “CD”",
        ),
        (
            '<text class="fig-label" x="0" y="0" font-size="16">AB</text><path class="fig-force" d="M-50,-5L50,-5"/>',
            "“AB” struck by force",
        ),
        (
            (
                '<text class="fig-label" x="0" y="0" font-size="16">AB</text>'
                '<path class="fig-fieldline" d="M-50,-15L50,5"/>'
            ),
            "“AB” struck by fieldline",
        ),
        (
            (
                '<text class="fig-label" x="0" y="0" font-size="16">AB</text>'
                '<circle class="fig-positive" cx="15" cy="-5" r="8"/>'
            ),
            "“AB” on a circle (positive)",
        ),
    ],
)
def test_the_measure_sees_a_fault(drawing: str, fault: str) -> None:
    """Text on text, on a line or on a circle is found in an SVG that is wrong on purpose."""
    assert faults(measured(f'<svg xmlns="http://www.w3.org/2000/svg">{drawing}</svg>')) == [fault]


def test_the_measure_sees_a_label_at_the_wrong_body() -> None:
    """A name that stands at its neighbour is found."""
    drawing = (
        '<svg xmlns="http://www.w3.org/2000/svg"><circle class="fig-positive" cx="0" cy="0" r="8"/>'
        '<circle class="fig-positive" cx="60" cy="0" r="8"/>'
        '<text class="fig-label" x="58" y="-12" font-size="16">A</text></svg>'
    )
    assert misread(measured(drawing), ["A", "B"], {}) == ["“A” stands nearer to another"]
