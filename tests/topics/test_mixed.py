"""Questions across chapters: the motion followed in small steps, refusals at their edge, words and pictures."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from calc.figures.pieces import Arrow
from calc.topics.mixed.charged import scene
from tests.topics.asking import Chapter, mistakes_said

K = 9e9


ASKED = Chapter("mixed")
solve, refusal = ASKED.whole, ASKED.refusal


# --- two charged gliders ---


def apart(m1: float, m2: float, q1: float, q2: float, r: float, seconds: float) -> tuple[float, float]:
    """The velocities of both, to the right positive, so many seconds after they were let go."""

    def change(_: float, state: list[float]) -> list[float]:
        x1, x2, v1, v2 = state
        push = K * q1 * q2 / (x2 - x1) ** 2
        return [v1, v2, -push / m1, push / m2]

    end = solve_ivp(change, (0, seconds), [0.0, r, 0.0, 0.0], rtol=1e-10, atol=1e-12).y[:, -1]
    return float(end[2]), float(end[3])


@pytest.mark.parametrize("signs", [1, -1])
@pytest.mark.parametrize(("m1", "m2"), [(0.2, 0.3), (0.3, 0.1)])
def test_charged_gliders_move_as_coulombs_law_drives_them(m1: float, m2: float, signs: int) -> None:
    """The velocity of the second is that of the motion followed step by step; so is the acceleration at the start."""
    q1, q2, r = 6e-7 * signs, 4e-7 * signs, 0.1
    v1, v2 = apart(m1, m2, q1, q2, r, 0.3)
    found = solve("charged", m1=f"{m1} kg", m2=f"{m2} kg", Q1=f"{q1!r} C", Q2=f"{q2!r} C", r=f"{r} m", v1=f"{v1!r} m/s")
    assert found.values["v2"] == pytest.approx(v2, rel=1e-6)
    started = apart(m1, m2, q1, q2, r, 1e-4)
    assert -found.values["a1"] == pytest.approx(started[0] / 1e-4, rel=1e-4)
    directions = {part.key: part.answers[0].direction for part in found.parts if part.answers}
    assert directions["acceleration"].words == "to the left"
    assert directions["velocity"].words == "to the right"


def test_charged_gliders_get_no_more_than_the_charges_give() -> None:
    """However long they are followed, the first stays below the speed at which it is refused."""
    limit = (2 * K * 6e-7 * 4e-7 / 0.1 / (0.2 * (1 + 0.2 / 0.3))) ** 0.5
    assert 0.97 * limit < -apart(0.2, 0.3, 6e-7, 4e-7, 0.1, 60)[0] < limit
    data = {"m1": "200 g", "m2": "300 g", "Q1": "+600 nC", "Q2": "+400 nC", "r": "10 cm"}
    solve("charged", **data, v1=f"-{0.999 * limit!r} m/s")
    field, sentence = refusal("charged", **data, v1=f"-{1.001 * limit!r} m/s")
    assert field == "v1"
    assert sentence.startswith("The charges cannot give so much")


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"Q2": "-400 nC"}, "Q2"),
        ({"Q2": "0 nC"}, "Q2"),
        ({"Q1": "0 nC"}, "Q1"),
        ({"v1": "0,2 m/s"}, "v1"),
        ({"v1": "0 m/s"}, "v1"),
    ],
)
def test_what_two_charged_gliders_cannot_do_is_refused(typed: dict[str, str], field: str) -> None:
    """Unlike charges, no charge, and a velocity towards each other, each at its box and with a remedy."""
    where, sentence = refusal("charged", **typed)
    assert where == field
    assert "Give both" in sentence or "minus sign" in sentence


def test_charged_gliders_are_drawn_moving_apart() -> None:
    """At rest before; after, the left one to the left and the right one to the right."""
    arrows = [
        item for item in scene({"v1": -0.2, "v2": 0.13}).items if isinstance(item, Arrow) and item.kind == "velocity"
    ]
    assert [arrow.end[0] > arrow.start[0] for arrow in sorted(arrows, key=lambda one: one.start[0])] == [False, True]


# --- a generator lights two lamps ---

LIT = {"N": "150", "B": "0,25 T", "A": "50 cm^2", "n": "750", "r": "2 ohm", "R_c": "0,8 ohm", "R1": "12 ohm"}
LIT |= {"R2": "24 ohm", "Deltat": "20 min"}


def lamps_by_nodes(resistances: tuple[float, ...]) -> tuple[float, np.ndarray]:
    """The rms emf from the steepest flux linkage of a turn, and what each resistance dissipates: coil, cable, lamps.

    Node potentials: 1 at the terminal, 2 at the lamps; the other wire is at zero.
    """
    times = np.linspace(0, 60 / 750, 40001)
    emf = np.gradient(150 * 0.25 * 50e-4 * np.cos(2 * math.pi * times * 750 / 60), times)
    rms = float(np.sqrt(np.mean(emf[1:-1] ** 2)))
    coil, cable, *lamps = resistances
    lead, side = 1 / cable, sum(1 / one for one in lamps)
    one, two = np.linalg.solve([[1 / coil + lead, -lead], [-lead, lead + side]], [rms / coil, 0])
    return rms, np.array([(rms - one) ** 2 / coil, (one - two) ** 2 / cable, *(two**2 / lamp for lamp in lamps), one])


def test_lamps_on_a_generator_as_by_node_potentials() -> None:
    """Emf, terminal reading, power and energy with both lamps, and with one burnt out."""
    found = solve("lamps", **LIT).values
    rms, (coil, _, first, _, terminal) = lamps_by_nodes((2, 0.8, 12, 24))
    assert found["epsilon_rms"] == pytest.approx(rms, rel=1e-4)
    assert found["I"] ** 2 * 2 == pytest.approx(coil, rel=1e-3)
    assert found["V_ext"] == pytest.approx(terminal, rel=1e-4)
    assert found["P_1"] == pytest.approx(first, rel=1e-3)
    assert found["W"] == pytest.approx(1200 * first, rel=1e-3)
    after = lamps_by_nodes((2, 0.8, 12))[1]
    assert found["P_2"] == pytest.approx(after[2], rel=1e-3)
    assert after[2] > first  # as the reasons say: brighter


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        ({"B": "0 T"}, "B", "Without a magnetic field no emf is induced: type a field greater than zero."),
        ({"r": "0 ohm"}, "r", "A wire always resists a little: type a resistance greater than zero."),
        ({"R_c": "0 ohm"}, "R_c", "A wire always resists a little: type a resistance greater than zero."),
        ({"R2": "0 ohm"}, "R2", "Resistance must be greater than zero."),
        ({"N": "0"}, "N", "Turns are counted: type a whole number, 1 or more."),
        ({"n": "0"}, "n", "The turns in a minute must be more than zero."),
        ({"Deltat": "0 s"}, "Deltat", "Time must be greater than zero."),
    ],
)
def test_what_a_generator_with_lamps_cannot_be(typed: dict[str, str], field: str, sentence: str) -> None:
    """No field, a wire without resistance, no turns: each at its box, word for word."""
    assert refusal("lamps", **typed) == (field, sentence)


EMF = 2 * math.pi * 12.5 * 150 * 0.25 * 50e-4
LAMP_SLIPS = [
    ("emf", EMF * math.sqrt(2), "You multiplied by √2. The rms value is smaller than the peak"),
    ("current", EMF / math.sqrt(2) / 8.8, "You left out the resistance of the coil."),
    ("current", EMF / 10.8, "You used the largest emf."),
    ("current", EMF / math.sqrt(2) / 38.8, "You added all three."),
    ("current", EMF / math.sqrt(2) / 10, "You left out the cable."),
    ("terminal", EMF / math.sqrt(2), "You gave the emf. While a current flows the terminals show less"),
    ("terminal", EMF / math.sqrt(2) / 10.8 * 2, "You gave what drops across the coil."),
    ("power", (EMF / math.sqrt(2) / 10.8) ** 2 * 12, "You used the total current."),
    ("power", (EMF / math.sqrt(2) / 10.8 * 8.8) ** 2 / 12, "You used the terminal potential difference."),
    ("energy", (EMF / math.sqrt(2) / 10.8 * 8) ** 2 / 12 * 20, "You left the time in minutes."),
    ("after", (EMF / math.sqrt(2) / 12.8) ** 2 * 12, "You left out the resistance of the coil."),
    ("after", (EMF / math.sqrt(2) / 10.8) ** 2 * 12, "You kept both lamps."),
]


@pytest.mark.parametrize(("part", "wrong", "said"), LAMP_SLIPS)
def test_mistakes_with_the_lamps_are_named(part: str, wrong: float, said: str) -> None:
    """Each wrong number, worked by hand, is told what it comes of."""
    unit = {"emf": "V", "current": "A", "terminal": "V", "power": "W", "energy": "J", "after": "W"}[part]
    told = mistakes_said("mixed.lamps", LIT, part, f"{wrong:.6g} {unit}".replace(".", ","))
    assert any(one.startswith(said) for one in told), told
