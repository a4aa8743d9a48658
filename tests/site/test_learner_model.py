"""The model of learners writes what a learner writes."""

import pytest

from learner_model import figures_that_tell


@pytest.mark.parametrize(
    ("number", "data", "figures"),
    [
        (452.71, (420.0, 332.0), 4),
        (420.03035, (420.0, 332.0), 5),  # to four figures it is the 420 Hz that is given
        (332.0004, (420.0, 332.0), 7),
        (-420.03035, (420.0,), 4),  # a sign tells them apart
        (420.0, (420.0,), 4),
    ],
)
def test_a_value_close_to_a_datum_is_written_with_figures_that_tell_them_apart(
    number: float, data: tuple[float, ...], figures: int
) -> None:
    """Four figures are enough unless they make it the datum."""
    assert figures_that_tell(number, data) == figures
