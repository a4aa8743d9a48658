"""calc.language.units and calc.language.unittext: reading, converting and writing units.

Independent source of every factor: the pint library (its own unit table).  Spellings of
products and powers: The International System of Units, 9th edition (BIPM, 2019).
"""

import contextlib
import math
from decimal import Decimal
from fractions import Fraction

import pint
import pytest
from hypothesis import assume, given

from calc.language.units import (
    LONGEST,
    Dimension,
    UnitError,
    kind_of,
    name_of_dimension,
    parse_unit,
    same_kind,
    speak,
    suggest,
)
from tests.strategies import SYMBOLS, compound_units, scribbles, typed_units

PINT = pint.UnitRegistry()
PINT_BASE = {
    "kg": "[mass]",
    "m": "[length]",
    "s": "[time]",
    "A": "[current]",
    "K": "[temperature]",
    "mol": "[substance]",
    "cd": "[luminosity]",
}


@pytest.mark.parametrize(("symbol", "word"), SYMBOLS.items())
def test_factor_agrees_with_pint(symbol: str, word: str) -> None:
    """Every unit with every school prefix has the factor pint gives it."""
    factor = PINT.Quantity(1.0, word).to_base_units().magnitude
    assert float(parse_unit(symbol).factor) == pytest.approx(factor, rel=1e-12)


@pytest.mark.parametrize(("symbol", "word"), SYMBOLS.items())
def test_dimension_agrees_with_pint(symbol: str, word: str) -> None:
    """Every unit has the powers of the base units that pint gives it."""
    theirs = PINT.Quantity(1.0, word).dimensionality
    ours = {PINT_BASE[k]: v for k, v in parse_unit(symbol).dimension._asdict().items() if v}
    assert ours == dict(theirs)


@given(compound_units())
def test_compound_factor_is_the_product_of_its_parts(pairs: list[tuple[str, int]]) -> None:
    """A product of powers has the product of the powers of the factors."""
    product = Fraction(1)
    for symbol, power in pairs:
        product *= parse_unit(symbol).factor ** power
    assert parse_unit(" ".join(f"{s}^{p}" for s, p in pairs)).factor == product


@given(compound_units())
def test_written_unit_reads_back(pairs: list[tuple[str, int]]) -> None:
    """The text a unit is printed with is read as the same unit."""
    unit = parse_unit("·".join(f"{s}^{p}" for s, p in pairs))
    assert parse_unit(unit.text) == unit


@given(compound_units())
def test_spoken_unit_reads_back(pairs: list[tuple[str, int]]) -> None:
    """The words spoken for a unit are read as a unit of the same size and kind."""
    unit = parse_unit("·".join(f"{s}^{p}" for s, p in pairs))
    words = speak(unit)
    assume(len(words) <= LONGEST)
    again = parse_unit(words)
    assert (again.factor, again.dimension) == (unit.factor, unit.dimension)


@pytest.mark.parametrize(
    "typed",
    [
        "N·C⁻¹",
        "N/C",
        "N C^-1",
        "N.C-1",
        "N C-1",
        "N*C^-1",
        "N·C^(-1)",
        "N×C⁻¹",
        "N per C",
        "newton per coulomb",
        "newtons per coulomb",
        "Newtons/Coulomb",
        " N / C ",
        "N∕C",
        "N·C−1",
    ],
)
def test_spellings_of_one_unit(typed: str) -> None:
    """Each way of typing newtons per coulomb gives N·C⁻¹."""
    assert parse_unit(typed).text == "N·C⁻¹"


@pytest.mark.parametrize(
    ("typed", "text", "tex", "words"),
    [
        ("m/s²", "m·s⁻²", r"\mathrm{m\cdot s^{-2}}", "metres per second squared"),
        ("m/s/s", "m·s⁻²", r"\mathrm{m\cdot s^{-2}}", "metres per second squared"),
        ("m.s^-2", "m·s⁻²", r"\mathrm{m\cdot s^{-2}}", "metres per second squared"),
        ("kg m s^-1", "kg·m·s⁻¹", r"\mathrm{kg\cdot m\cdot s^{-1}}", "kilogram metres per second"),
        ("s^-1 m kg", "m·kg·s⁻¹", r"\mathrm{m\cdot kg\cdot s^{-1}}", "metre kilograms per second"),
        ("N·m^2/C^2", "N·m²·C⁻²", r"\mathrm{N\cdot m^{2}\cdot C^{-2}}", "newton metres squared per coulomb squared"),
        ("V/m", "V·m⁻¹", r"\mathrm{V\cdot m^{-1}}", "volts per metre"),
        ("km/h", "km·h⁻¹", r"\mathrm{km\cdot h^{-1}}", "kilometres per hour"),
        ("J/(kg·K)", "J·kg⁻¹·K⁻¹", r"\mathrm{J\cdot kg^{-1}\cdot K^{-1}}", "joules per kilogram per kelvin"),
        ("micro coulomb", "µC", r"\mathrm{\mu C}", "microcoulombs"),
        ("μC", "µC", r"\mathrm{\mu C}", "microcoulombs"),
        ("uC", "µC", r"\mathrm{\mu C}", "microcoulombs"),
        ("ohms", "Ω", r"\mathrm{\Omega}", "ohms"),
        ("\u2126", "Ω", r"\mathrm{\Omega}", "ohms"),
        ("kohm", "kΩ", r"\mathrm{k\Omega}", "kilohms"),
        ("Mohm", "MΩ", r"\mathrm{M\Omega}", "megohms"),
        ("uohm", "µΩ", r"\mathrm{\mu\Omega}", "microohms"),
        ("kWh", "kWh", r"\mathrm{kWh}", "kilowatt-hours"),
        ("kilowatt hours", "kWh", r"\mathrm{kWh}", "kilowatt-hours"),
        ("electron volts", "eV", r"\mathrm{eV}", "electronvolts"),
        ("newton-metre", "N·m", r"\mathrm{N\cdot m}", "newton metres"),
        ("deg", "°", r"^\circ", "degrees"),
        ("degrees", "°", r"^\circ", "degrees"),
        ("º", "°", r"^\circ", "degrees"),
        ("cm²", "cm²", r"\mathrm{cm^{2}}", "square centimetres"),
        ("cubic metres", "m³", r"\mathrm{m^{3}}", "cubic metres"),
        ("m^4", "m⁴", r"\mathrm{m^{4}}", "metres to the power 4"),
        ("Hz", "Hz", r"\mathrm{Hz}", "hertz"),
        ("/s", "s⁻¹", r"\mathrm{s^{-1}}", "per second"),
        ("henrys", "H", r"\mathrm{H}", "henries"),
        ("sec", "s", r"\mathrm{s}", "seconds"),
        ("meters", "m", r"\mathrm{m}", "metres"),
        ("", "", "", ""),
    ],
)
def test_written_and_spoken_forms(typed: str, text: str, tex: str, words: str) -> None:
    """A typed unit is written in text and TeX and spoken as a teacher would."""
    unit = parse_unit(typed)
    assert (unit.text, unit.tex, speak(unit)) == (text, tex, words)


@pytest.mark.parametrize(
    ("typed", "words"),
    [("C", "coulomb"), ("N/C", "newton per coulomb"), ("m²", "square metre"), ("Hz", "hertz")],
)
def test_singular_words(typed: str, words: str) -> None:
    """One of a unit is spoken in the singular."""
    assert speak(parse_unit(typed), one=True) == words


@pytest.mark.parametrize(
    ("symbol", "factor", "kind"),
    [
        ("m", 1, "a length"),
        ("min", 60, "a time"),
        ("mm", Fraction(1, 1000), "a length"),
        ("Pa", 1, "a pressure"),
        ("pA", Fraction(1, 10**12), "a current"),
        ("PA", 10**15, "a current"),
        ("cd", 1, "a luminous intensity"),
        ("T", 1, "a magnetic flux density"),
        ("mT", Fraction(1, 1000), "a magnetic flux density"),
        ("t", 1000, "a mass"),
        ("h", 3600, "a time"),
        ("H", 1, "an inductance"),
        ("mol", 1, "an amount of substance"),
        ("ms", Fraction(1, 1000), "a time"),
        ("MW", 10**6, "a power"),
        ("mW", Fraction(1, 1000), "a power"),
        ("dm", Fraction(1, 10), "a length"),
        ("d", 86400, "a time"),
        ("cm^2", Fraction(1, 10**4), "an area"),
        ("Wb", 1, "a magnetic flux"),
        ("mrad", Fraction(1, 1000), "an angle"),
        ("kg", 1, "a mass"),
        ("g", Fraction(1, 1000), "a mass"),
    ],
)
def test_look_alike_symbols(symbol: str, factor: Fraction | int, kind: str) -> None:
    """Symbols that share letters keep their own meaning."""
    unit = parse_unit(symbol)
    assert (unit.factor, kind_of(unit)) == (factor, kind)


@pytest.mark.parametrize("symbol", ["Ms", "cC", "mmin", "kh", "kd", "k°", "cN"])
def test_prefixes_nobody_uses_are_refused(symbol: str) -> None:
    """A prefix is taken only where school physics uses it, so slips are caught."""
    with pytest.raises(UnitError):
        parse_unit(symbol)


@pytest.mark.parametrize(
    ("typed", "si"),
    [
        ("km/h", "m·s⁻¹"),
        ("kWh", "J"),
        ("cm²", "m²"),
        ("L", "m³"),
        ("L/min", "m³·s⁻¹"),
        ("g", "kg"),
        ("kg", "kg"),
        ("t", "kg"),
        ("meV", "J"),
        ("nC", "C"),
        ("°", "rad"),
        ("mm·N", "m·N"),
        ("", ""),
    ],
)
def test_si_unit_of_the_same_kind(typed: str, si: str) -> None:
    """The SI counterpart is written without a prefix and measures the same kind."""
    unit = parse_unit(typed)
    assert unit.si().text == si
    assert unit.si().factor == 1
    assert same_kind(unit, unit.si())


def test_conversion_is_exact() -> None:
    """36 km/h is 10 m/s and 15 cm is 0.15 m, to the last bit."""
    assert parse_unit("km/h").to_si(Decimal(36)) == 10.0
    assert parse_unit("cm").to_si(Decimal(15)) == 0.15
    assert parse_unit("cm").from_si(0.15) == 15.0
    assert parse_unit("km/h").from_si(10.0) == 36.0


def test_degrees_become_radians() -> None:
    """The SI value of an angle is in radians."""
    assert parse_unit("°").to_si(Decimal(180)) == math.pi
    assert parse_unit("°").from_si(math.pi) == 180.0


@pytest.mark.parametrize(
    ("typed", "kind"),
    [
        ("C", "a charge"),
        ("kg", "a mass"),
        ("N/C", "an electric field"),
        ("V/m", "an electric field"),
        ("m/s", "a velocity"),
        ("N s", "a momentum"),
        ("kg m/s", "a momentum"),
        ("eV", "an energy"),
        ("rad", "an angle"),
        ("", "a pure number"),
        ("m/m", "a pure number"),
        ("N·m²/C²", "a quantity in kg·m³·s⁻⁴·A⁻²"),
    ],
)
def test_kinds_of_quantity(typed: str, kind: str) -> None:
    """A unit names the kind of quantity it measures."""
    assert kind_of(parse_unit(typed)) == kind


def test_dimension_without_a_name_is_written_out() -> None:
    """A dimension of any size is named by its base units."""
    assert name_of_dimension(Dimension(s=-12, A=1)) == "a quantity in A·s⁻¹²"


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("NC", '"NC" is not a unit: capital and small letters differ. Did you mean nC?'),
        ("mhz", '"mhz" is not a unit: capital and small letters differ. Did you mean mHz or MHz?'),
        ("qq", '"qq" is not a unit used here. Type one like N, nC, m/s^2 or N·C^-1.'),
        ("N/qq", '"qq" is not a unit used here. Type one like N, nC, m/s^2 or N·C^-1.'),
        ("n", '"n" is only a prefix: a unit follows it. Type one like N, nC, m/s^2 or N·C^-1.'),
        ("micro", '"micro" is only a prefix: a unit follows it. Type one like N, nC, m/s^2 or N·C^-1.'),
        ("kph", '"kph" is not a unit used here. Type km/h, for example 36 km/h.'),
        ("°C", '"°C" is not a unit used here. Add 273 to the temperature and type kelvin, for example 293 K.'),
        (
            "deg C",
            '"deg C" puts a degree beside another unit. Add 273 to the temperature and type kelvin, for example 293 K.',
        ),
        (
            "J/kg·K",
            '"J/kg·K" can be read in two ways. Write negative powers instead of a stroke, for example J·kg^-1·K^-1.',
        ),
        (
            "J/(kg K) m",
            (
                '"J/(kg K) m" can be read in two ways. '
                "Write negative powers instead of a stroke, for example J·kg^-1·K^-1."
            ),
        ),
        (
            "m/s^-1",
            '"m/s^-1" can be read in two ways. Write negative powers instead of a stroke, for example J·kg^-1·K^-1.',
        ),
        ("N//C", '"N//C" has a "/" out of place. Write negative powers instead of a stroke, for example J·kg^-1·K^-1.'),
        ("(N)", '"(N)" has a "(" out of place. Write negative powers instead of a stroke, for example J·kg^-1·K^-1.'),
        ("N)", '"N)" has a bracket out of place. Write negative powers instead of a stroke, for example J·kg^-1·K^-1.'),
        (
            "m^0",
            (
                '"m^0" has the power 0: powers of a unit go from 1 to 9 and from -1 to -9. '
                "Type one like N, nC, m/s^2 or N·C^-1."
            ),
        ),
        (
            "s^5 squared",
            (
                '"s^5 squared" has the power 10: powers of a unit go from 1 to 9 '
                "and from -1 to -9. Type one like N, nC, m/s^2 or N·C^-1."
            ),
        ),
        ("N·", '"N·" is not complete. Type one like N, nC, m/s^2 or N·C^-1.'),
        ("J/(kg", '"J/(kg" is not complete. Type one like N, nC, m/s^2 or N·C^-1.'),
        ("squared", '"squared" has "squared" without a unit before it. Type one like N, nC, m/s^2 or N·C^-1.'),
        ("5 %", '"5 %" cannot be read as a unit from "5 %". Type one like N, nC, m/s^2 or N·C^-1.'),
        ("m" * 61, '"mmmmmmmmmmmmmmmmmmmm…" is longer than 60 characters. Type one like N, nC, m/s^2 or N·C^-1.'),
    ],
)
def test_refusals_word_for_word(typed: str, sentence: str) -> None:
    """An unreadable unit is named, with the rule and the remedy."""
    with pytest.raises(UnitError) as refusal:
        parse_unit(typed)
    assert refusal.value.sentence == sentence
    assert str(refusal.value) == sentence


@pytest.mark.parametrize(
    ("typed", "wanted", "meant"),
    [
        ("NC", "C", ("nC",)),
        ("mc", "C", ("mC", "MC")),
        ("KG", "kg", ("kg",)),
        ("S", "s", ("s",)),
        ("ms^-1", "m/s", ("m·s⁻¹",)),
        ("Nm", "J", ("N·m",)),
        ("Vm^-1", "V/m", ("V·m⁻¹",)),
        ("n/c", "N/C", ("N·C⁻¹",)),
        ("n", "C", ("nC",)),
        ("k", "Ω", ("kΩ",)),
        ("u", "C", ("µC",)),
        ("qq", "C", ()),
        ("((", "C", ()),
        ("m", "C", ()),
    ],
)
def test_suggestions(typed: str, wanted: str, meant: tuple[str, ...]) -> None:
    """A slip of capitals, a forgotten dot or a bare prefix leads to the unit meant."""
    assert suggest(typed, parse_unit(wanted)) == meant


@given(typed_units())
def test_lower_case_slip_is_led_back(symbol: str) -> None:
    """A single unit typed in the wrong capitals is among the suggestions, or reads as another."""
    wanted = parse_unit(symbol)
    swapped = "".join(c.swapcase() if c.isascii() else c for c in symbol)
    others = [s for s in SYMBOLS if s.lower() == symbol.lower() and same_kind(wanted, parse_unit(s))]
    assert set(suggest(swapped, wanted)) & set(others)


@given(scribbles())
def test_any_text_is_read_or_refused(text: str) -> None:
    """No text raises anything but UnitError, with a sentence that ends."""
    with contextlib.suppress(UnitError):
        assert parse_unit(text).factor > 0
        return
    with pytest.raises(UnitError) as refusal:
        parse_unit(text)
    assert refusal.value.sentence[-1] in ".?"
