"""Electric circuits, cells and resistors: published cases, independent routes, limits, refusals word for word."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.topics.asking import Chapter, mistakes_said

CIRCUITS = Chapter("circuits")


# --- published: University Physics Volume 2 (OpenStax), chapters 9, 10 and 13, CC BY 4.0; see the file of cases ---

CELL_CASES = {"R01a": "I", "R01f": "V_ext", "R04a": "r", "R04b": "P_r"}
NAMES = {"emf": "epsilon", "V_terminal": "V_ext"}
SI = {"epsilon": "V", "V_ext": "V", "V_r": "V", "I": "A", "I_s": "A", "r": "ohm", "R": "ohm", "P_r": "W"}


@pytest.mark.parametrize("case", CELL_CASES)
def test_published_cells(case: str) -> None:
    """A battery and its load, and one that is charged, come out as published."""
    given_ = CIRCUITS.cases[case]["given"]
    names = {name: NAMES.get(name, name) for name in given_}
    typed = {names[name]: f"{one['value']} {SI[names[name]]}" for name, one in given_.items()}
    how = "charged" if case.startswith("R04") else "supplies"
    found = CIRCUITS.value("cell", CELL_CASES[case], state=how, **typed)
    assert found == CIRCUITS.published(case)


# --- a cell: independent routes ---


def cell_of(epsilon: float, r: float, load: float) -> dict[str, float]:
    """Every quantity of a cell with a load, by a divider of its emf instead of the chapter's own laws."""
    outside = epsilon * load / (load + r)
    flow = outside / load
    return {
        "epsilon": epsilon,
        "r": r,
        "R": load,
        "I": flow,
        "V_ext": outside,
        "V_r": epsilon - outside,
        "I_s": epsilon / r,
        "P_r": (epsilon - outside) * flow,
    }


def leads_to(names: tuple[str, ...], unknown: str) -> bool:
    """Whether three of the quantities of a cell are independent of each other and lead to the rest.

    The numbers of freedom are counted by the rank of the logarithmic derivatives, taken numerically.
    """
    import numpy as np

    at, step = np.array([12.0, 0.7, 5.3]), 1e-6

    def rows(which: tuple[str, ...]) -> "np.ndarray":
        made = []
        for n in range(3):
            up, down = at.copy(), at.copy()
            up[n] *= 1 + step
            down[n] *= 1 - step
            high, low = cell_of(*up), cell_of(*down)
            made.append([(high[name] - low[name]) / (2 * step * cell_of(*at)[name]) for name in which])
        return np.array(made)

    rank = np.linalg.matrix_rank(rows(names), tol=1e-4)
    return rank == np.linalg.matrix_rank(rows((*names, unknown)), tol=1e-4)


WAYS = [
    (names, unknown)
    for names in combinations(("epsilon", "r", "R", "I", "V_ext", "V_r"), 3)
    for unknown in SI
    if unknown not in names and leads_to(names, unknown) and all(leads_to(names, one) for one in ("epsilon", "r", "R"))
]


def test_there_are_many_ways() -> None:
    """Most threes of the readings of a cell fix it: ten at least, each with five quantities to be asked."""
    assert len(WAYS) >= 50


@pytest.mark.parametrize(("names", "unknown"), WAYS, ids=lambda one: "-".join(one) if isinstance(one, tuple) else one)
def test_any_three_that_fix_a_cell_lead_to_the_rest(names: tuple[str, ...], unknown: str) -> None:
    """Whatever fixes a cell is enough for each of its quantities."""
    right = cell_of(11.2, 0.83, 4.7)
    typed = {name: f"{right[name]!r} {SI[name]}" for name in names}
    assert CIRCUITS.value("cell", unknown, **typed) == pytest.approx(right[unknown], rel=1e-9)


@given(st.floats(1, 230), st.floats(0.01, 9), st.floats(0.1, 20))
def test_a_charged_cell_takes_its_emf_and_its_lost_volts(epsilon: float, r: float, flow: float) -> None:
    """What the charger supplies is what the cell stores and what makes it warm."""
    typed = {"state": "charged", "epsilon": f"{epsilon!r} V", "r": f"{r!r} ohm", "I": f"{flow!r} A"}
    outside = CIRCUITS.value("cell", "V_ext", **typed)
    heat = CIRCUITS.value("cell", "P_r", **typed)
    assert outside * flow == pytest.approx(epsilon * flow + heat, rel=1e-9)


REFUSED = [
    (
        "I",
        {"epsilon": "6 V", "V_ext": "7 V", "R": "4 ohm"},
        "V_ext",
        "Terminal p.d. cannot exceed emf while the cell supplies current. Type a smaller value, or choose that the"
        " cell is charged.",
    ),
    (
        "r",
        {"state": "charged", "epsilon": "6 V", "V_ext": "5 V", "I": "1 A"},
        "V_ext",
        "A cell that is charged has a terminal potential difference above its emf: the charger must drive the"
        " current against it."
        " Type a larger value, or choose that the cell supplies current.",
    ),
    (
        "V_ext",
        {"epsilon": "6 V", "r": "2 ohm", "I": "3,1 A"},
        "I",
        "More than the short-circuit current, ε ÷ r: the cell can never drive it. Type a smaller current, or check the"
        " emf and the internal resistance.",
    ),
    (
        "V_ext",
        {"I_s": "3 A", "r": "2 ohm", "I": "3,1 A"},
        "I",
        "More than the short-circuit current, ε ÷ r: the cell can never drive it. Type a smaller current, or check the"
        " emf and the internal resistance.",
    ),
    (
        "I",
        {"epsilon": "6 V", "r": "0 ohm", "R": "0 ohm"},
        "r",
        "Short circuit without resistance: with R and r both zero nothing limits the current. Type a value above zero"
        " for one of them.",
    ),
    (
        "I_s",
        {"epsilon": "6 V", "r": "0 ohm"},
        "r",
        "Without internal resistance nothing limits the short-circuit current. Type a value above zero for the"
        " internal resistance.",
    ),
    (
        "V_ext",
        {"epsilon": "6 V", "V_r": "7 V"},
        "V_r",
        "The lost volts cannot exceed the emf: they are a part of it. Type a smaller value, or a larger emf.",
    ),
    (
        "V_ext",
        {"state": "charged", "epsilon": "6 V", "R": "4 ohm", "r": "1 ohm"},
        "R",
        "While the cell is charged no external resistance is connected to it. Leave this empty, or choose that the"
        " cell supplies current.",
    ),
    (
        "I_s",
        {"state": "charged", "epsilon": "6 V", "r": "1 ohm"},
        None,
        "While the cell is charged neither an external resistance nor a short circuit is connected to it. Pick"
        " something else to find, or choose that the cell supplies current.",
    ),
    (
        "r",
        {"epsilon": "6 V", "I": "2 A", "R": "4 ohm"},
        None,
        (
            "No resistance fits: these data need less than zero ohms. The current or a potential difference is too"
            " large for this emf."
        ),
    ),
    (
        "R",
        {"epsilon": "6 V", "I": "2 A", "r": "-1 ohm"},
        "r",
        "Internal resistance cannot be negative; type 0 for an ideal cell.",
    ),
    (
        "I",
        {"epsilon": "6 V", "V_ext": "6 V", "r": "1 ohm"},
        None,
        "Terminal potential difference and emf are equal, so there are no lost volts and no current. Type a"
        " terminal potential difference that differs"
        " from the emf.",
    ),
]


def refused(question: str, find: str, typed: dict[str, str]) -> tuple[str | None, str]:
    """Where such data are refused, and why."""
    from calc.model.questions import Refusal
    from calc.working.reading import Refusals

    with pytest.raises((Refusal, Refusals)) as caught:
        CIRCUITS.solve(question, find, **typed)
    one = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    return one.field, one.sentence


@pytest.mark.parametrize(("find", "typed", "field", "sentence"), REFUSED)
def test_what_no_cell_does_is_refused(find: str, typed: dict[str, str], field: str | None, sentence: str) -> None:
    """Each refusal stands beside its box and says what to do."""
    assert refused("cell", find, typed) == (field, sentence)


def test_a_cell_without_internal_resistance_shows_its_emf() -> None:
    """With r = 0 the terminal potential difference is the emf, whatever the current."""
    assert CIRCUITS.value("cell", "V_ext", epsilon="9 V", r="0 ohm", R="3 ohm") == 9.0


def test_a_short_circuit_has_no_terminal_pd() -> None:
    """With R = 0 the current is ε/r and nothing is left outside."""
    typed = {"epsilon": "6 V", "r": "0,5 ohm", "R": "0 ohm"}
    assert CIRCUITS.value("cell", "I", **typed) == 12.0
    assert CIRCUITS.value("cell", "V_ext", **typed) == pytest.approx(0, abs=1e-12)


SLIPS = [
    ("I", {"epsilon": "12 V", "r": "0,5 ohm", "R": "5,5 ohm"}, "2,18 A", "You left out the internal resistance"),
    ("V_ext", {"epsilon": "12 V", "r": "0,5 ohm", "I": "2 A"}, "1 V", "You gave the lost volts"),
    ("r", {"epsilon": "12 V", "V_ext": "11 V", "I": "2 A"}, "5,5 ohm", "You found the resistance of the load"),
]


@pytest.mark.parametrize(("find", "typed", "wrong", "begins"), SLIPS)
def test_the_mistakes_with_a_cell_are_named(find: str, typed: dict[str, str], wrong: str, begins: str) -> None:
    """The reader is told what a wrong number comes of."""
    assert any(said.startswith(begins) for said in mistakes_said("circuits.cell", typed, "find", wrong, find))
