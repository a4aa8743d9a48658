"""The data sheet: constants with their school and fuller values, and the settings a reader may change.

School values are the rounded ones printed on school data sheets (common
practice, no source). Fuller values are CODATA 2022 as tabulated in
``scipy.constants`` (checked in tests/test_constants.py); g is the standard
acceleration of free fall, 9.80665 m/s² (3rd General Conference on Weights and Measures, 1901).
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from calc.language.printing import Style


@dataclass(frozen=True)
class Constant:
    """One line of the data sheet. ``school`` and ``fuller`` are SI values."""

    name: str
    words: str
    school: float
    fuller: float
    unit: str


SHEET: Mapping[str, Constant] = {
    constant.name: constant
    for constant in (
        Constant("k", "Coulomb's constant", 9.0e9, 8.9875517862e9, "N·m²·C⁻²"),
        Constant("e", "charge of an electron (size)", 1.6e-19, 1.602176634e-19, "C"),
        Constant("g", "acceleration due to gravity", 9.8, 9.80665, "m·s⁻²"),
        Constant("m_e", "mass of an electron", 9.11e-31, 9.1093837139e-31, "kg"),
        Constant("m_p", "mass of a proton", 1.67e-27, 1.67262192595e-27, "kg"),
        Constant("h", "Planck's constant", 6.63e-34, 6.62607015e-34, "J·s"),
        Constant("c", "speed of light in a vacuum", 3.0e8, 2.99792458e8, "m·s⁻¹"),
        Constant("G", "universal gravitational constant", 6.67e-11, 6.67430e-11, "N·m²·kg⁻²"),
    )
}


def other_sheets(values: Mapping[str, float], used: Collection[str]) -> Iterator[dict[str, float]]:
    """``values`` of constants as other data sheets have them: one of those ``used`` or all, with three figures, four,
    or all that are known. Values that are not those of the school's sheet were chosen, and stay."""
    names = [name for name in values if name in used and name in SHEET and values[name] == SHEET[name].school]
    if not names:
        return
    for figures in (3, 4, 12):
        other = {name: float(f"{SHEET[name].fuller:.{figures - 1}e}") for name in names}
        yield {**values, **other}
        if len(names) > 1:
            yield from ({**values, name: other[name]} for name in names)


@dataclass(frozen=True)
class Settings:
    """What a reader has changed: constants by name (SI values), decimals and the decimal sign.

    names: the constants a question asked for. No letter is a constant unless its question says so:
    h may be a height there and c a speed.
    """

    changed: Mapping[str, float] = field(default_factory=dict)
    decimals: int = 2
    comma: bool = True
    names: tuple[str, ...] = tuple(SHEET)

    @cached_property
    def style(self) -> Style:
        return Style(self.decimals, self.comma)

    def constant(self, name: str) -> float:
        """The value in force for constant ``name`` (SI)."""
        return self.changed.get(name, SHEET[name].school)

    def constants(self) -> dict[str, float]:
        """The value in force of every constant that is asked for, by name."""
        return dict(self._constants)

    @cached_property
    def _constants(self) -> dict[str, float]:
        return {name: self.constant(name) for name in self.names}

    def asking(self, names: tuple[str, ...]) -> Settings:
        """The same settings with these constants only. Raises KeyError for one the data sheet has not."""
        unknown = [name for name in names if name not in SHEET]
        if unknown:
            raise KeyError(f"no constant {unknown[0]!r}; the data sheet has {', '.join(SHEET)}")
        return replace(self, names=names)
