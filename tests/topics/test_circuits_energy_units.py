"""Energy in kilowatt-hours and joules, money with any sign: what a learner types and shows is marked as right.

1 kWh is 3,6 × 10⁶ J exactly (SI brochure, 9th edition, BIPM 2019: 1 h = 3 600 s). The numbers are of our own: 1,5 kW
for 20 min is 1,8 × 10⁶ J, half a kilowatt-hour; at 2,4 each it costs 1,20.
"""

import json
from typing import Any

import pytest

from calc import desk
from calc.language.counts import MONEY, as_count, without_currency
from calc.topics import find

GIVEN = {"P": "1,5 kW", "Deltat": "20 min", "c": "2,4"}


def marked(
    unknown: str, answer: dict[str, Any], question: str = "circuits.power", **inputs: str
) -> tuple[int, int, list[str]]:
    """(earned, possible, sentences) for the part that asks for an unknown."""
    names = {box.name: "" for box in find(question)[1].fields}
    data = {"question": question, "find": unknown, "inputs": names | GIVEN | inputs, "answers": {"find": answer}}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    assert reply["ok"], reply
    part = next(one for one in reply["data"]["parts"] if one["part"] == "find")
    return part["earned"], part["possible"], [one if isinstance(one, str) else one["say"] for one in part["sentences"]]


@pytest.mark.parametrize("unknown", ["W", "n"])
@pytest.mark.parametrize(
    "typed", ["0,5 kWh", "0.5 kW h", "0,5 kW·h", "500 Wh", "0,5 kilowatt-hours", "1,8 MJ", "1 800 kJ", "1,8 x 10^6 J"]
)
def test_an_energy_is_right_in_either_unit(unknown: str, typed: str) -> None:
    """The same energy in kilowatt-hours or joules, whether the energy or the number of kilowatt-hours is asked."""
    earned, possible, _ = marked(unknown, {"value": typed}, c="")
    assert earned == possible > 0


@pytest.mark.parametrize("typed", ["0,6 kWh", "0,5 MJ", "1,8 kJ", "0,5 W", "0,5 kW"])
def test_another_energy_stays_wrong(typed: str) -> None:
    """A wrong number, or a unit of another kind, is not made right by conversion."""
    earned, possible, _ = marked("n", {"value": typed}, c="")
    assert earned < possible


def test_the_number_of_kilowatt_hours_may_be_bare() -> None:
    """How many kilowatt-hours: 0,5 says it all."""
    assert marked("n", {"value": "0,5"}, c="")[:2] == (5, 5)


@pytest.mark.parametrize(
    "typed", ["1,20", "R1,20", "R 1.20", "€1,20", "$1.20", "1,20 €", "1,2 rand", "Rs. 1,20", "EUR 1,20"]
)
def test_money_has_any_sign(typed: str) -> None:
    """The booklet has no currency: a learner's own is let be."""
    assert marked("K", {"value": typed})[:2] == (8, 8)


@pytest.mark.parametrize(
    "working",
    [
        "W = 1,5 kW x (20/60) h = 0,5 kWh\ncost = 0,5 x 2,4 = 1,20",
        "W = Pt\nW = 1,5 × 20/60\nW = 0,5 kWh\nK = 0,5 × 2,4 = R1,20",
        "n = Pt = 1,5 × 0,3333 = 0,5 kWh\nK = nc = 0,5 × 2,4 = €1,20",
        "W = Pt = 1 500 × 1 200 = 1,8 × 10^6 J\nn = 1,8 × 10^6/3,6 × 10^6 = 0,5\nTotal cost = 0,5 × 2,4 = 1,20",
    ],
)
def test_a_working_in_kilowatts_and_hours_is_right(working: str) -> None:
    """Kilowatts times hours make kilowatt-hours: no line is said to break off, and all marks are given."""
    assert marked("K", {"working": working}) == (8, 8, [])


def test_steps_on_the_way_may_be_in_kilowatt_hours() -> None:
    """The energy and the count on the way, both as 0,5 kWh."""
    answer = {"value": "1,20", "steps": {"W": "0,5 kWh", "n": "0,5 kWh"}}
    assert marked("K", answer)[:2] == (8, 8)


def test_numbers_put_in_stay_wrong_without_the_unit() -> None:
    """1,5 × 20/60 = 0,5 J is no energy of this heater."""
    assert marked("W", {"value": "0,5 J", "working": "W = 1,5 × 20/60 = 0,5 J"}, c="")[0] < 3


def test_the_form_reads_kilowatt_hours_and_money() -> None:
    """The boxes for the number of kilowatt-hours, the price and the cost take a unit and a sign."""
    inputs = {"P": "", "Deltat": "", "n": "7,2 MJ", "c": "R2,50"}
    assert marked("K", {"value": "5,00"}, **inputs)[0] > 0


@pytest.mark.parametrize(
    ("text", "counted", "bare"),
    [
        ("0,5 kWh", "kWh", "0.5"),
        ("3,6 MJ", "kWh", "1"),
        ("0,5", "kWh", "0,5"),
        ("0,5 kW", "kWh", "0,5 kW"),
        ("many", "kWh", "many"),
        ("", "kWh", ""),
        ("R1,20", MONEY, "1,20"),
        ("1,20 €", MONEY, "1,20 "),
        ("", MONEY, ""),
        ("R1,20", "", "R1,20"),
    ],
)
def test_a_count_is_read_as_a_bare_number(text: str, counted: str, bare: str) -> None:
    """Only what tells the counted thing is turned into a number; all else is left as typed."""
    assert as_count(text, counted) == bare


def test_signs_of_money_are_left_out_of_a_working() -> None:
    """Letters go behind an equals sign only: R1 before one is a name."""
    assert without_currency("R1 = 5\nK = R1,20 = $1.20") == "R1 = 5\nK = 1,20 = 1.20"
