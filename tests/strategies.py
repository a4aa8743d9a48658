"""Hypothesis generators shared by the tests, and the profiles they run under."""

import os
from decimal import Decimal
from typing import Any

from hypothesis import Phase, settings
from hypothesis import strategies as st

from calc.language.printing import Style

# Every profile but "long" makes each run the same. BOOKLET_HYPOTHESIS names another than "small".
EXAMPLES = 60
PROFILES: dict[str, dict[str, Any]] = {
    "small": {"derandomize": True, "max_examples": EXAMPLES},
    "long": {"max_examples": 20 * EXAMPLES, "print_blob": True},
    # For site-scripts/mutate.py: that a test fails is enough, the smallest failing example is not sought.
    "mutants": {
        "derandomize": True,
        "max_examples": EXAMPLES,
        "phases": (Phase.explicit, Phase.generate),
    },
}
PROFILE = os.environ.get("BOOKLET_HYPOTHESIS", "small")
for _name, _options in PROFILES.items():
    settings.register_profile(_name, deadline=None, **_options)
settings.load_profile(PROFILE)


def examples(count: int) -> settings:
    """For a test that is dear, or dull: ``count`` examples instead of the usual number, in the same proportion
    in each profile."""
    usual = PROFILES[PROFILE]["max_examples"]
    return settings(max_examples=max(1, count * usual // EXAMPLES))


# Unit symbol: (word the pint library knows, prefixes used with it in school physics).
UNITS = {
    "m": ("metre", "pnµmcdkMGT"),
    "g": ("gram", "nµmk"),
    "t": ("metric_ton", ""),
    "s": ("second", "pnµm"),
    "min": ("minute", ""),
    "h": ("hour", ""),
    "d": ("day", ""),
    "A": ("ampere", "pnµmkM"),
    "K": ("kelvin", "m"),
    "mol": ("mole", "m"),
    "cd": ("candela", "m"),
    "Hz": ("hertz", "mkMGTP"),
    "N": ("newton", "nµmkM"),
    "Pa": ("pascal", "mkMG"),
    "J": ("joule", "pnµmkMGTP"),
    "eV": ("electron_volt", "mkMGT"),
    "W": ("watt", "pnµmkMGT"),
    "Wh": ("watt_hour", "kMGT"),
    "C": ("coulomb", "pnµmk"),
    "V": ("volt", "nµmkM"),
    "Ω": ("ohm", "µmkMG"),
    "F": ("farad", "pnµm"),
    "T": ("tesla", "nµm"),
    "Wb": ("weber", "nµm"),
    "H": ("henry", "nµm"),
    "L": ("litre", "µmcd"),
    "rad": ("radian", "m"),
    "°": ("degree", ""),
}
PREFIXES = {
    "p": "pico",
    "n": "nano",
    "µ": "micro",
    "m": "milli",
    "c": "centi",
    "d": "deci",
    "k": "kilo",
    "M": "mega",
    "G": "giga",
    "T": "tera",
    "P": "peta",
}
SYMBOLS = {
    prefix + symbol: PREFIXES.get(prefix, "") + word
    for symbol, (word, prefixes) in UNITS.items()
    for prefix in ("", *prefixes)
}

_RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
_POWERS = (
    "e{0}",
    "E{0}",
    " e{0}",
    "x10^{0}",
    " x 10^{0}",
    " X 10 ^ {0}",
    "*10^{0}",
    "·10^{0}",
    " × 10{1}",
    "×10{1}",
    " x 10^({0})",
    " × 10^{{{0}}}",
    "*10**{0}",
)


@st.composite
def typed_numbers(draw: st.DrawFn) -> tuple[str, Decimal]:
    """A number as a learner may type it, and its exact value."""
    sign = draw(st.sampled_from(["", "", "+", "-", "−", "–", "- "]))
    whole = draw(st.integers(0, 9_999_999))
    decimals = draw(st.text("0123456789", max_size=6))
    power = draw(st.none() | st.integers(-30, 30))
    space = draw(st.sampled_from(["", " ", "\u00a0", "\u202f", "\u2009"]))
    mark = draw(st.sampled_from([",", "."]))
    text = f"{whole:,}".replace(",", space)
    if decimals:
        text = ("" if whole == 0 and draw(st.booleans()) else text) + mark + decimals
    if power is not None:
        raised = str(power).translate(_RAISED)
        text += draw(st.sampled_from(_POWERS)).format(power, raised)
    negative = sign.strip() not in {"", "+"}
    value = Decimal(f"{'-' if negative else ''}{whole}.{decimals or '0'}e{power or 0}")
    return sign + text, value


def typed_units() -> st.SearchStrategy[str]:
    """A single unit symbol, perhaps with a prefix."""
    return st.sampled_from(sorted(SYMBOLS))


@st.composite
def compound_units(draw: st.DrawFn) -> list[tuple[str, int]]:
    """(symbol, power) pairs of one to three different units, degrees left out."""
    symbols = st.sampled_from(sorted(set(SYMBOLS) - {"°"}))
    names = draw(st.lists(symbols, min_size=1, max_size=3, unique=True))
    powers = st.sampled_from([-3, -2, -1, 1, 2, 3])
    return [(name, draw(powers)) for name in names]


def values(least: float = 1e-30, most: float = 1e30) -> st.SearchStrategy[float]:
    """Floats of either sign with sizes in school physics, and zero."""
    sizes = st.floats(least, most, allow_nan=False, allow_infinity=False)
    return st.just(0.0) | sizes | sizes.map(lambda value: -value)


@st.composite
def data_values(draw: st.DrawFn) -> float:
    """Floats with the few digits a datum has: 0.15, 1.6e-19, 299792458."""
    return float(f"{draw(st.integers(-999_999_999, 999_999_999))}e{draw(st.integers(-40, 40))}")


def styles() -> st.SearchStrategy[Style]:
    """Printing styles: nought to six decimals, comma or point."""
    return st.builds(Style, st.integers(0, 6), st.booleans())


def scribbles() -> st.SearchStrategy[str]:
    """Any text, and text made of the very signs numbers and units are made of."""
    signs = "0123456789.,+-−–eExX×*^·/ ()nCkgmsNu°µΩ%'⁻⁹² \u00a0squaredpermicroinf="
    return st.text(max_size=80) | st.text(signs, max_size=30) | st.text(signs, max_size=70)
