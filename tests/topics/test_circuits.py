"""Electric circuits, cells and resistors: published cases, independent routes, limits, refusals word for word."""

from itertools import combinations

import numpy as np
import pint
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
        "state",
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


# --- resistors ---


@pytest.mark.parametrize("how", ["series", "parallel"])
@pytest.mark.parametrize("count", [2, 3, 4])
def test_any_one_resistor_comes_back(how: str, count: int) -> None:
    """The total is the sum of resistances, or of conductances; each resistor follows from the rest."""
    ohms = np.array([4.2, 11.0, 17.5, 30.0][:count])
    total = ohms.sum() if how == "series" else 1 / np.sum(1 / ohms)
    typed = {f"R{n}": f"{one!r} ohm" for n, one in enumerate(ohms.tolist(), 1)}
    picked = {"how": how, "count": str(count)}
    assert CIRCUITS.value("resistors", "R", **picked, **typed) == pytest.approx(total, rel=1e-9)
    for name, right in zip(typed, ohms, strict=True):
        others = {one: text for one, text in typed.items() if one != name}
        found = CIRCUITS.value("resistors", name, **picked, **others, R=f"{float(total)!r} ohm")
        assert found == pytest.approx(right, rel=1e-9)


def test_a_published_pair_of_branches() -> None:
    """The current in a branch is its own potential difference over its own resistance (University Physics 2, 10.2)."""
    v, one, two, three = CIRCUITS.given("S02c", "V", "R1", "R2", "R3")
    picked = {"how": "parallel", "count": "3", "V": f"{v} V"}
    solved = CIRCUITS.solve("resistors", "R", **picked, R1=f"{two} ohm", R2=f"{one} ohm", R3=f"{three} ohm")
    assert solved.values["I_1"] == CIRCUITS.published("S02c")
    whole = CIRCUITS.value("resistors", "I", **picked, R1=f"{two} ohm", R2=f"{one} ohm", R3=f"{three} ohm")
    assert whole * float(v) == CIRCUITS.published("S02e")


def test_published_resistors_in_series() -> None:
    """Four of 20 ohm and one of 10 ohm at 9 V: the last three as one; the first takes 2 V (University Physics 2)."""
    picked = {"how": "series", "count": "3", "V": "9 V", "R1": "20 ohm", "R2": "20 ohm", "R3": "50 ohm"}
    solved = CIRCUITS.solve("resistors", "I", **picked)
    assert solved.values["I"] == CIRCUITS.published("S01b")
    assert solved.values["V_1"] == CIRCUITS.published("S01c")


RESISTORS_REFUSED = [
    (
        "R2",
        {"how": "parallel", "R1": "4 ohm", "R": "4 ohm"},
        "R",
        "In parallel the total is less than the smallest branch: type a total below every resistance that is given.",
    ),
    (
        "R2",
        {"how": "series", "R1": "4 ohm", "R": "4 ohm"},
        "R",
        "In series the total is the sum, so it is larger than the others together: type a larger total.",
    ),
    (
        "R",
        {"R1": "4 ohm", "R2": "4 ohm", "R3": "4 ohm"},
        "R3",
        "There are only two resistors. Leave this empty, or choose more resistors.",
    ),
    (
        "R4",
        {"count": "3", "R1": "4 ohm", "R2": "4 ohm", "R": "1 ohm"},
        "count",
        "There are only three resistors. Pick another one to find, or choose more resistors.",
    ),
]


@pytest.mark.parametrize(("find", "typed", "field", "sentence"), RESISTORS_REFUSED)
def test_totals_that_cannot_be_are_refused(find: str, typed: dict[str, str], field: str | None, sentence: str) -> None:
    """With the reason, at the box."""
    assert refused("resistors", find, typed) == (field, sentence)


# --- the power of a load, two loads ---


@given(st.floats(2, 200), st.floats(0.05, 9), st.floats(0.02, 0.98))
def test_two_loads_get_a_power_below_the_largest(epsilon: float, r: float, share: float) -> None:
    """The roots are numpy's, their product is r², and both give back the power."""
    power = share * epsilon**2 / (4 * r)
    solved = CIRCUITS.solve("load-power", "R", epsilon=f"{epsilon!r} V", r=f"{r!r} ohm", P=f"{power!r} W")
    larger, smaller = solved.values["R"], solved.values["R_2"]
    assert sorted([larger, smaller]) == pytest.approx(
        sorted(np.roots([power, 2 * power * r - epsilon**2, power * r**2]).real), rel=1e-6
    )
    for one in (larger, smaller):
        assert one * (epsilon / (one + r)) ** 2 == pytest.approx(power, rel=1e-6)


def test_the_published_power_of_a_load() -> None:
    """A battery of 12 V gives 200 W to 0,5 ohm, and 72 W once its own resistance has grown (University Physics 2)."""
    for case in ("R01e", "R01g"):
        epsilon, r, outside = CIRCUITS.given(case, "emf", "r", "R")
        found = CIRCUITS.value("load-power", "P", epsilon=f"{epsilon} V", r=f"{r} ohm", R=f"{outside} ohm")
        assert found == CIRCUITS.published(case)


def test_the_roots_of_the_reference() -> None:
    """12 V and 1 ohm give 20 W to 0,20 ohm and to 5 ohm."""
    solved = CIRCUITS.solve("load-power", "R", epsilon="12 V", r="1 ohm", P="20 W")
    assert (solved.values["R"], solved.values["R_2"]) == pytest.approx((5, 0.2), rel=1e-12)


def test_more_than_the_largest_power_is_refused_with_the_reason() -> None:
    """ε²/(4r) is named with its value; that power itself has one load, R = r."""
    typed = {"epsilon": "12 V", "r": "1 ohm"}
    assert refused("load-power", "R", {**typed, "P": "36,1 W"}) == (
        "P",
        "No load gets so much power from this cell. The most it can give is ε²/(4r) = 36,00\N{NO-BREAK SPACE}W, to"
        " a load with R = r. Type a smaller power, a larger emf or a smaller internal resistance.",
    )
    solved = CIRCUITS.solve("load-power", "R", **typed, P="36 W")
    assert solved.values["R"] == pytest.approx(1, rel=1e-6)
    assert "R_2" not in solved.values


def test_without_internal_resistance_one_load_gets_the_power() -> None:
    """R = ε²/P."""
    assert CIRCUITS.value("load-power", "R", epsilon="12 V", r="0 ohm", P="24 W") == pytest.approx(6)


def test_an_internal_resistance_that_no_power_leaves_is_refused() -> None:
    """More than ε²/R is more than the load gets without any."""
    assert refused("load-power", "r", {"epsilon": "6 V", "R": "4 ohm", "P": "9,1 W"}) == (
        None,
        "No internal resistance fits: even without any, this load would get less than this power. Check the power, the"
        " emf and the resistance.",
    )


@given(st.floats(2, 200), st.floats(0.05, 9), st.floats(0.5, 40), st.floats(1.1, 9))
def test_two_readings_give_a_cell(epsilon: float, r: float, load: float, times: float) -> None:
    """Emf and internal resistance solve two equations; numpy's solution of them is the same."""
    one, two = epsilon / (load + r), epsilon / (load * times + r)
    a, b = np.linalg.solve([[1, -one], [1, -two]], [one * load, two * load * times])
    typed = {"I1": f"{one!r} A", "V1": f"{one * load!r} V", "I2": f"{two!r} A", "V2": f"{two * load * times!r} V"}
    assert CIRCUITS.value("two-loads", "epsilon", **typed) == pytest.approx(a, rel=1e-6)
    assert CIRCUITS.value("two-loads", "r", **typed) == pytest.approx(b, rel=1e-6)


def test_the_published_fall_of_the_terminal_potential_difference() -> None:
    """2 V less for 5 A more is 0,40 ohm (University Physics 2, 10.1)."""
    typed = {"I1": "1 A", "V1": "11 V", "I2": "6 A", "V2": "9 V"}
    assert CIRCUITS.value("two-loads", "r", **typed) == CIRCUITS.published("R03")


def test_one_reading_twice_is_refused() -> None:
    """Equal currents tell one thing only; a larger one with more volts is a slip in the columns."""
    same = {"I1": "1 A", "V1": "5 V", "I2": "1 A", "V2": "4 V"}
    assert refused("two-loads", "r", same) == (
        "I2",
        "Both currents are the same, so this is one reading twice and tells only one thing of the cell. Type two"
        " different currents.",
    )
    assert refused("two-loads", "r", {**same, "I2": "0,5 A"}) == (
        None,
        "Check the columns: the larger current must go with the smaller terminal potential difference. No internal"
        " resistance fits these readings.",
    )


# --- power, energy and cost ---


def test_published_powers() -> None:
    """A hoist motor, and a lamp that burns 3 h a day for a year (University Physics 2, 9.5)."""
    v, flow = CIRCUITS.given("W01", "V", "I")
    assert CIRCUITS.value("power", "P", V=f"{v} V", I=f"{flow} A") == CIRCUITS.published("W01")
    power, hours, days = (float(one) for one in CIRCUITS.given("W02", "P", "hours_per_day", "days"))
    assert CIRCUITS.value("power", "n", P=f"{power} W", Deltat=f"{hours * days} h") == CIRCUITS.published("W02")


def test_a_published_motor_by_ohms_law() -> None:
    """The current of a running motor: what is left of the supply over the resistance (University Physics 2, 13.6)."""
    v, back, one, two = (float(x) for x in CIRCUITS.given("W03b", "V", "back_emf", "R_field", "R_armature"))
    assert CIRCUITS.value("power", "I", V=f"{v - back} V", R=f"{one + two} ohm") == CIRCUITS.published("W03b")


UREG = pint.UnitRegistry()


@pytest.mark.parametrize("time", ["1200 s", "20 min", "0,75 h"])
def test_energy_in_the_units_typed(time: str) -> None:
    """Pint changes power and time into joules and kilowatt-hours."""
    energy = UREG.Quantity(1.5, "kW") * UREG.Quantity(time.replace(",", "."))
    typed = {"P": "1,5 kW", "Deltat": time}
    assert CIRCUITS.value("power", "W", **typed) == pytest.approx(energy.to("J").magnitude)
    assert CIRCUITS.value("power", "n", **typed) == pytest.approx(energy.to("kWh").magnitude)
    assert CIRCUITS.value("power", "K", **typed, c="2,4") == pytest.approx(2.4 * energy.to("kWh").magnitude)
    assert CIRCUITS.value("power", "P", W=f"{energy.to('kWh').magnitude!r} kWh", Deltat=time) == pytest.approx(1500)


@pytest.mark.parametrize("names", ["V I", "V R", "I R", "P V", "P I", "P R"])
def test_two_of_four_give_the_rest(names: str) -> None:
    """Power, potential difference, current and resistance by one power balance of two of them."""
    right = {"V": 24.0, "I": 1.6, "R": 15.0, "P": 38.4}
    units = {"V": "V", "I": "A", "R": "ohm", "P": "W"}
    typed = {name: f"{right[name]} {units[name]}" for name in names.split()}
    for name, value in right.items():
        if name not in typed:
            assert CIRCUITS.value("power", name, **typed) == pytest.approx(value, rel=1e-12)


FURTHER_SLIPS = [
    ("resistors", "R", {"how": "parallel", "R1": "4 ohm", "R2": "12 ohm"}, "16 ohm", "You added the resistances"),
    ("resistors", "R", {"how": "parallel", "R1": "4 ohm", "R2": "12 ohm"}, "0,333 ohm", "You stopped at 1/R"),
    ("load-power", "P", {"epsilon": "12 V", "r": "1 ohm", "R": "5 ohm"}, "28,8 W", "You used the emf"),
    (
        "two-loads",
        "r",
        {"I1": "0,5 A", "V1": "5,75 V", "I2": "2 A", "V2": "5 V"},
        "11,5 ohm",
        "You divided one reading",
    ),
    ("power", "K", {"P": "1,5 kW", "Deltat": "20 min", "c": "2,4"}, "4320", "You stopped at kilojoules"),
]


@pytest.mark.parametrize(("question", "find", "typed", "wrong", "begins"), FURTHER_SLIPS)
def test_the_usual_mistakes_are_named(question: str, find: str, typed: dict[str, str], wrong: str, begins: str) -> None:
    """The reader is told what a wrong number comes of."""
    said = mistakes_said(f"circuits.{question}", typed, "find", wrong, find)
    assert any(one.startswith(begins) for one in said), said


# --- whole questions: each against a route of its own ---


def test_two_lanterns_by_nodes() -> None:
    """The potential of the node between resistor and lanterns, by numpy, with S closed and open; the reference's."""
    solved = CIRCUITS.whole("lanterns").values
    epsilon, r, in_series, one, two = 12.0, 1.0, 2.0, 4.0, 12.0
    for branches, flow, power in (((one, two), "I", "P_1"), ((one,), "I_2", "P_2")):
        # two nodes: the terminal, and the joint of the lanterns
        conductances = np.array([[1 / r + 1 / in_series, -1 / in_series], [-1 / in_series, 1 / in_series]])
        conductances[1, 1] += sum(1 / branch for branch in branches)
        terminal, joint = np.linalg.solve(conductances, [epsilon / r, 0.0])
        assert solved[flow] == pytest.approx((terminal - joint) / in_series, rel=1e-9)
        assert solved[power] == pytest.approx(joint**2 / one, rel=1e-9)
    assert (solved["V_ext"], solved["V_p"]) == pytest.approx((10, 6))
    assert solved["I_2"] == pytest.approx(1.71, abs=0.005)


@given(st.floats(2, 200), st.floats(0.01, 9), st.floats(0.5, 50), st.floats(0.5, 50), st.floats(0.5, 50))
def test_the_other_lantern_is_always_brighter(
    epsilon: float, r: float, in_series: float, one: float, two: float
) -> None:
    """Whatever the numbers, opening the branch leaves more power to lantern 1, as the reasons say."""
    typed = {"epsilon": f"{epsilon!r} V", "r": f"{r!r} ohm", "R_s": f"{in_series!r} ohm"}
    found = CIRCUITS.whole("lanterns", **typed, R1=f"{one!r} ohm", R2=f"{two!r} ohm").values
    assert found["P_2"] > found["P_1"]
    assert found["I_2"] < found["I"]


def test_a_battery_under_test_by_nodes() -> None:
    """One load and two equal ones by the potential of the terminal."""
    found = CIRCUITS.whole("boat").values
    r, load = (12 - 11.2) / 1.6, 11.2 / 1.6
    terminal = (12 / r) / (1 / r + 2 / load)
    assert found["V_2"] == pytest.approx(terminal, rel=1e-12)
    assert found["I_2"] == pytest.approx(2 * terminal / load, rel=1e-12)
    assert found["W"] == pytest.approx((UREG.Quantity(11.2 * 1.6, "W") * UREG.Quantity("15 min")).to("J").magnitude)
    assert CIRCUITS.refusal("boat", V_ext="12 V") == (
        "V_ext",
        "Terminal p.d. cannot exceed emf while the cell supplies current. Type a smaller value, or choose that the"
        " cell is charged.",
    )


def test_an_urn_by_pint() -> None:
    """Current, energy and cost in the units typed; a tenth less of the supply is a fifth less of the power."""
    found = CIRCUITS.whole("urn").values
    energy = UREG.Quantity(2.3, "kW") * UREG.Quantity(45, "min")
    assert found["I"] == pytest.approx(UREG.Quantity("2.3 kW / (230 V)").to("A").magnitude)
    assert found["K"] == pytest.approx(2.4 * energy.to("kWh").magnitude)
    assert found["P_2"] / 2300 == pytest.approx(0.81)
    assert CIRCUITS.refusal("urn", V_2="230 V") == (
        "V_2",
        "The low supply must be lower than the one the urn is made for: type a smaller value.",
    )
