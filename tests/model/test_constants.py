"""The data sheet against CODATA, by way of scipy's tables."""

import pytest
import scipy.constants

from calc.model.constants import SHEET, Settings

CODATA = {
    "k": 1 / (4 * scipy.constants.pi * scipy.constants.epsilon_0),
    "e": scipy.constants.e,
    "g": scipy.constants.g,
    "h": scipy.constants.h,
    "c": scipy.constants.c,
    "G": scipy.constants.G,
    "m_e": scipy.constants.m_e,
    "m_p": scipy.constants.m_p,
}


@pytest.mark.parametrize("name", SHEET)
def test_fuller_values_are_codata(name: str) -> None:
    """Every fuller value is that of the CODATA tables shipped with scipy (g: the standard value)."""
    assert SHEET[name].fuller == pytest.approx(CODATA[name], rel=1e-8)


@pytest.mark.parametrize("name", SHEET)
def test_school_values_are_the_fuller_ones_rounded(name: str) -> None:
    """A school value is within half a per cent of the fuller one."""
    assert SHEET[name].school == pytest.approx(SHEET[name].fuller, rel=5e-3)


def test_a_changed_constant_is_in_force_everywhere() -> None:
    """Settings replace one constant and leave the others."""
    settings = Settings({"g": 10.0})
    assert settings.constants() == {**{n: c.school for n, c in SHEET.items()}, "g": 10.0}
