"""More is given than is needed, rounded as textbooks round: nothing is refused, nothing changes, no check fails.

The sound data come from the laws themselves, worked here with ``math`` alone.
"""

from __future__ import annotations

import math
import random
from collections.abc import Iterator
from itertools import combinations

import pytest

from calc.model.questions import Refusal
from calc.renderings import html, text
from calc.topics import find
from calc.working.reading import Refusals, read
from calc.working.working import work
from tests.strategies import examples

K, G, E = 9.0e9, 9.8, 1.6e-19
UNITS = {
    "m": ("g", 1e-3),
    "L": ("cm", 1e-2),
    "alpha": ("°", math.pi / 180),
    "beta": ("°", math.pi / 180),
    "theta": ("°", math.pi / 180),
    "s": ("cm", 1e-2),
    "r": ("cm", 1e-2),
    "Q1": ("nC", 1e-9),
    "Q2": ("nC", 1e-9),
    "F_E": ("mN", 1e-3),
    "T": ("mN", 1e-3),
    "N": ("mN", 1e-3),
    "a": ("m/s^2", 1.0),
    "n": ("", 1.0),
}
SITUATIONS_OF_EACH = examples(20).max_examples
Situation = tuple[str, dict[str, str], dict[str, float]]


def threads(chance: random.Random) -> Situation:
    """Two equal charges on threads from one support, or from two."""
    m, length, alpha = chance.uniform(5e-4, 9e-3), chance.uniform(0.1, 0.9), math.radians(chance.uniform(4, 50))
    two = chance.random() < 0.4
    s = chance.uniform(0.05, 0.2) if two else 0.0
    r = s + 2 * length * math.sin(alpha)
    force = m * G * math.tan(alpha)
    q = r * math.sqrt(force / K)
    ties = m * G / math.cos(alpha)
    values = {"m": m, "L": length, "alpha": alpha, "r": r, "F_E": force, "T": ties, "Q1": q, "a": ties / m}
    values |= {"s": s} if two else {"beta": 2 * alpha}
    choices = {"supports": "two" if two else "one", "equal": "equal", "acting": "repel"}
    return "threads", choices, values


def held(chance: random.Random, slope: bool) -> Situation:
    """A charge above or below a fixed one, on a slope or a vertical line, with a string that pulls."""
    m, theta = chance.uniform(2e-3, 3e-2), math.radians(chance.uniform(8, 60) if slope else 90)
    r, q1, q2 = chance.uniform(0.02, 0.09), chance.uniform(10e-9, 90e-9), chance.uniform(10e-9, 90e-9)
    force, weight = K * q1 * q2 / r**2, m * G * math.sin(theta)
    values = {"m": m, "r": r, "Q1": q1, "Q2": q2, "F_E": force}
    up = weight > force
    pull = abs(weight - force)
    values |= {"T": pull, "a": pull / m}
    if slope:
        values |= {"theta": theta, "N": m * G * math.cos(theta)}
    choices = {"where": "below", "string": "up" if up else "down", "acting": "repel"}
    return ("slope" if slope else "vertical"), choices, values


def hovering(chance: random.Random) -> Situation:
    """A charge that hovers above a fixed one."""
    r, q1, q2 = chance.uniform(0.02, 0.09), chance.uniform(10e-9, 90e-9), chance.uniform(10e-9, 90e-9)
    force = K * q1 * q2 / r**2
    values = {"m": force / G, "r": r, "Q1": q1, "Q2": q2, "F_E": force}
    return "vertical", {"where": "below", "string": "none", "acting": "repel"}, values


def typed(name: str, value: float, figures: int) -> str:
    """A value as a textbook writes it, to so many figures and without a power of ten where none is needed."""
    unit, factor = UNITS[name]
    size = value / factor
    places = max(0, figures - 1 - math.floor(math.log10(abs(size))))
    digits = f"{float(f'{size:.{figures}g}'):.{places}f}"
    return f"{digits} {unit}".strip()


def shown(key: str, want: str, choices: dict[str, str], data: dict[str, str]) -> tuple[float, str]:
    """The answer, and everything printed; raises for refused data."""
    topic, question = find(f"equilibrium.{key}")
    worked = work(topic, question, read(question, {"want": want, **choices, **data}))
    assert worked.unproven == (), worked.unproven
    return worked.values[want], text.render(worked) + html.render(worked)


def solvable(key: str, want: str, choices: dict[str, str], data: dict[str, str]) -> float | None:
    """The answer without anything spare, or None where it does not follow."""
    try:
        return shown(key, want, choices, data)[0]
    except (Refusal, Refusals):
        return None


def cases(
    make: object, count: int, seed: int
) -> Iterator[tuple[str, dict[str, str], dict[str, float], str, tuple[str, ...], str]]:
    """(question, choices, values, unknown, data that suffice, one more datum)."""
    assert callable(make)
    chance = random.Random(seed)
    for _ in range(count):
        key, choices, values = make(chance)
        names = sorted(values)
        want = chance.choice(names)
        rest = [name for name in names if name != want]
        size = chance.choice((2, 3, 4))
        subsets = list(combinations(rest, size))
        chance.shuffle(subsets)
        for base in subsets[:12]:
            exact = {name: typed(name, values[name], 12) for name in base}
            if solvable(key, want, choices, exact) is None:
                continue
            spares = [name for name in rest if name not in base]
            if spares:
                yield key, choices, values, want, base, chance.choice(spares)


SITUATIONS = {
    "threads": threads,
    "slope": lambda chance: held(chance, True),
    "vertical": lambda chance: held(chance, False),
    "hovering": hovering,
}


@pytest.mark.parametrize("name", SITUATIONS)
@pytest.mark.parametrize("figures", [2, 3])
def test_one_spare_datum_rounded_as_textbooks_round(name: str, figures: int) -> None:
    """It is not refused, the answer stays, and no check says otherwise."""
    tried = 0
    for key, choices, values, want, base, spare in cases(SITUATIONS[name], SITUATIONS_OF_EACH, figures):
        exact = {n: typed(n, values[n], 12) for n in base}
        data = {**exact, spare: typed(spare, values[spare], figures)}
        said = f"{key} want={want} {choices} {data}"
        try:
            answer, page = shown(key, want, choices, data)
        except (Refusal, Refusals) as refusal:
            raise AssertionError(f"{said}: {refusal}") from None
        assert "≠" not in page, said
        assert "neq" not in page, said
        assert abs(answer) == pytest.approx(abs(values[want]), rel=10.0 ** (1 - figures)), said
        tried += 1
    assert tried >= SITUATIONS_OF_EACH


def test_a_result_given_too_changes_nothing() -> None:
    """Forces and accelerations typed besides the data that suffice leave the answer exactly as it was."""
    data = {"m": "2 g", "L": "40 cm", "alpha": "20°"}
    choices = {"supports": "one", "equal": "equal"}
    right, _ = shown("threads", "Q1", choices, data)
    for name, value in {"F_E": "7.1 mN", "T": "21 mN", "r": "27 cm", "beta": "40°"}.items():
        answer, page = shown("threads", "Q1", choices, {**data, name: value})
        assert answer == pytest.approx(right, rel=1e-9), name
        assert "More is given than is needed" in page


@pytest.mark.parametrize(
    ("spare", "gives"),
    [("F_E=8 mN", "7,13 × 10⁻³ N"), ("r=28 cm", "0,27 m"), ("T=19,5 mN", "2,09 × 10⁻² N")],
)
def test_a_datum_that_contradicts_is_refused_with_the_value_wanted(spare: str, gives: str) -> None:
    """27 cm is 27,36 cm rounded; 28 cm is not."""
    name, _, value = spare.partition("=")
    data = {"m": "2 g", "L": "40 cm", "alpha": "20°", name: value}
    with pytest.raises(Refusal) as refused:
        shown("threads", "Q1", {"supports": "one", "equal": "equal"}, data)
    assert refused.value.field == name
    assert f"they give {gives}".replace(" ", "\N{NO-BREAK SPACE}") in refused.value.sentence.replace(
        " ", "\N{NO-BREAK SPACE}"
    )
