"""A bridge and two cells in parallel: numpy's solution of Kirchhoff's equations, balance, a charged cell."""

import random

import numpy as np
import pytest

from calc.figures.circuit_pieces import Symbol
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.topics import find
from calc.topics.circuits.network_bridge import scene
from calc.working.reading import read
from tests.cases import reckoned


def solve(key: str, asked: str, **typed: str) -> WorkedAnswer:
    """The worked answer of these data."""
    topic, question = find(f"circuits.{key}")
    return reckoned(topic, question, read(question, typed, asked))


def test_a_bridge_agrees_with_numpy() -> None:
    """Potentials of A and B and the current in R5, by the conductance matrix; power in equals power out."""
    chance = random.Random(4)
    for _ in range(80):
        r1, r2, r3, r4, r5 = ohms = [round(chance.uniform(0.5, 50), 2) for _ in range(5)]
        volts = round(chance.uniform(1, 24), 2)
        matrix = [[1 / r1 + 1 / r2 + 1 / r5, -1 / r5], [-1 / r5, 1 / r3 + 1 / r4 + 1 / r5]]
        a, b = np.linalg.solve(matrix, [volts / r1, volts / r3])
        typed = {f"R{n}": f"{one} Ω" for n, one in enumerate(ohms, 1)}
        found = solve("bridge", "I5,V_A,V_B,I", V=f"{volts} V", **typed)
        v = found.values
        assert (v["V_A"], v["V_B"], v["I5"]) == pytest.approx((a, b, (a - b) / r5), rel=1e-8)
        spent = [(volts - a) ** 2 / r1, a**2 / r2, (volts - b) ** 2 / r3, b**2 / r4, (a - b) ** 2 / r5]
        assert v["I"] * volts == pytest.approx(sum(spent), rel=1e-8)
        assert not found.unproven


@pytest.mark.parametrize("asked", ["R1", "R2", "R3", "R4"])
def test_a_balanced_bridge_gives_any_resistance(asked: str) -> None:
    """10 : 15 = 20 : 30, by hand."""
    ohms = {"R1": 10.0, "R2": 15.0, "R3": 20.0, "R4": 30.0}
    typed = {name: f"{value} Ω" for name, value in ohms.items() if name != asked}
    assert solve("bridge", asked, state="balanced", **typed).values[asked] == pytest.approx(ohms[asked])


def test_a_bridge_is_drawn_with_five_resistors_and_a_battery() -> None:
    """Six symbols; A lies between R1 and R2, B between R3 and R4."""
    figure = scene({})
    assert sorted(one.label for one in figure.items if isinstance(one, Symbol)) == [
        *(f"R_{n}" for n in range(1, 6)),
        "V",
    ]
    assert figure.description == (
        "A battery V across two ways side by side: a resistor R1 in series with a resistor R2, with A between them, and"
        " a resistor R3 in series with a resistor R4, with B between them. From A to B: a resistor R5."
    )


@pytest.mark.parametrize(
    ("state", "asked", "sentence"),
    [
        (
            "any",
            "R4",
            "A resistance is found here from a balanced bridge only. Choose that the bridge is balanced, or pick a"
            " current or a potential difference to find.",
        ),
        (
            "balanced",
            "I5",
            "In a balanced bridge nothing passes R₅, and only the four resistances are asked for. Pick one of them, or"
            " choose that the bridge carries a current in R₅.",
        ),
    ],
)
def test_what_a_bridge_is_asked_must_fit_its_state(state: str, asked: str, sentence: str) -> None:
    """The refusal stands beside the choice and says what to choose."""
    with pytest.raises(Refusal) as caught:
        solve("bridge", asked, state=state, V="6 V", R1="2 Ω", R2="4 Ω", R3="3 Ω", R5="1 Ω")
    assert (caught.value.field, caught.value.sentence) == ("state", sentence)


def test_two_cells_agree_with_numpy() -> None:
    """ε₁ = I₁r₁ + V, ε₂ = I₂r₂ + V, V = (I₁ + I₂)R, solved together; power in equals power out."""
    chance = random.Random(9)
    for _ in range(80):
        e1, r1, e2, r2, load = (round(chance.uniform(0.5, 20), 2) for _ in range(5))
        i1, i2, volts = np.linalg.solve([[r1, 0, 1], [0, r2, 1], [load, load, -1]], [e1, e2, 0])
        typed = {"epsilon_1": f"{e1} V", "epsilon_2": f"{e2} V", "r1": f"{r1} Ω", "r2": f"{r2} Ω", "R": f"{load} Ω"}
        found = solve("two-cells", "V,I,I1,I2", **typed)
        v = found.values
        assert (v["V"], v["I1"], v["I2"], v["I"]) == pytest.approx((volts, i1, i2, i1 + i2), rel=1e-8, abs=1e-12)
        assert e1 * v["I1"] + e2 * v["I2"] == pytest.approx(i1**2 * r1 + i2**2 * r2 + volts**2 / load, rel=1e-8)
        assert not found.unproven


def test_the_weaker_of_two_cells_is_charged() -> None:
    """6 V and 1 Ω beside 3 V and 2 Ω with 4 Ω: V = 30/7 V by hand, so cell 2 takes 9/14 A."""
    v = solve("two-cells", "V,I2", epsilon_1="6 V", r1="1 Ω", epsilon_2="3 V", r2="2 Ω", R="4 Ω").values
    assert v["V"] == pytest.approx(30 / 7)
    assert v["I2"] == pytest.approx(-9 / 14)


@pytest.mark.parametrize(("fourth", "verdict"), [("6 Ω", "are equal, so it is"), ("6,3 Ω", "differ, so it is not")])
def test_a_bridge_is_balanced_or_it_is_not(fourth: str, verdict: str) -> None:
    """2 × 6 = 4 × 3; a twentieth more and the products differ."""
    found = solve("bridge", "I", V="6 V", R1="2 Ω", R2="4 Ω", R3="3 Ω", R4=fourth, R5="5 Ω")
    point = next(part for part in found.parts if part.key == "balance").points[1]
    assert point.words == f"The products {verdict} balanced."
