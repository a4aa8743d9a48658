"""Where the net force is as stated, against the roots numpy finds of the polynomial of each region."""

from __future__ import annotations

import random

import numpy as np
import pytest

from calc.model.questions import Refusal
from calc.topics import find
from calc.working.reading import Refusals, read
from calc.working.working import work

K = 9.0e9


def positions(data: dict[str, str]) -> list[float]:
    """The places the answer lists, charge 1 at 0."""
    topic, question = find("several-charges.places")
    worked = work(topic, question, read(question, data))
    d = worked.values["d"]
    at = {"u": lambda r: -r, "x": lambda r: r, "z": lambda r: d - r, "w": lambda r: d + r}
    return sorted(at[a.name[0]](a.value) for a in worked.answers)


def roots(q1: float, q2: float, q3: float, d: float, net: float) -> list[float]:
    """Real roots x of kQ3 (Q1 s/x² + Q2 t/(x − d)²) = net with s, t the signs each region has; net right positive."""
    found = []
    a, b = K * q1 * q3 / abs(net) / d**2, K * q2 * q3 / abs(net) / d**2
    f = 1.0 if net > 0 else -1.0
    for low, high, s, t in ((-np.inf, 0.0, -1, -1), (0.0, 1.0, 1, -1), (1.0, np.inf, 1, 1)):
        square, other = np.poly1d([1, 0, 0]), np.poly1d([1, -2, 1])
        polynomial = f * square * other - a * s * other - b * t * square
        for root in polynomial.roots:
            if abs(root.imag) < 1e-7 * max(1.0, abs(root)) and low < root.real < high:
                found.append(root.real * d)
    return sorted(found)


def test_every_place_is_listed() -> None:
    """Hundreds of draws, from forces far too small to far too large."""
    chance, tried = random.Random(7), 0
    for _ in range(400):
        q1, q2, q3 = (chance.choice((1, -1)) * round(chance.uniform(1, 9), 2) for _ in range(3))
        d, net = round(chance.uniform(5, 60), 1), float(f"{10 ** chance.uniform(-7, 0):.3g}")
        way = chance.choice(("left", "right"))
        signed = net if way == "right" else -net
        right = roots(q1 * 1e-9, q2 * 1e-9, q3 * 1e-9, d / 100, signed)
        data = {"Q1": f"{q1} nC", "Q2": f"{q2} nC", "Q3": f"{q3} nC", "d": f"{d} cm", "F_net": f"{net:e} N", "way": way}
        try:
            listed = positions(data)
        except (Refusal, Refusals):
            listed = []
        assert listed == pytest.approx(right, rel=1e-5, abs=1e-7), data
        tried += bool(listed)
    assert tried > 200


@pytest.mark.parametrize("force", ["0,5", "1", "9", "10", "45", "100", "10000"])
def test_a_place_right_beside_a_charge_is_found(force: str) -> None:
    """The larger the stated force the nearer the places: k Q Q₃/F is the square of the distance in the end."""
    data = {"Q1": "+6 nC", "Q2": "-4 nC", "Q3": "+2 nC", "d": "30 cm", "F_net": f"{force} N", "way": "right"}
    net = float(force.replace(",", "."))
    first, second = (K * q * 1e-9 * 2e-9 / net for q in (6, 4))
    # to the right between the charges, pulled on by charge 2 there and past it only to the left
    assert positions(data) == pytest.approx([first**0.5, 0.3 - second**0.5], rel=1e-3)
