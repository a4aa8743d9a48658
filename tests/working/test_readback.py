"""What a form says it understood of each box, while it is typed. Prefixes: the SI brochure (BIPM, 2019), table 7."""

import json

import pytest

from calc import desk
from calc.language.units import parse_unit
from calc.model.questions import Input
from calc.topics import find, question_keys


def back(inputs: dict[str, object], key: str = "coulomb.force", **more: object) -> dict[str, tuple[str, str]]:
    """Unit and line by box, as a page gets them beside an answer or a refusal."""
    data = {"question": key, "inputs": inputs, "readback": True, **more}
    reply = json.loads(desk.answer(json.dumps({"operation": "solve", "data": data})))
    return {
        path: (one["unit"], one["line"].replace("\N{NO-BREAK SPACE}", " ")) for path, one in reply["readback"].items()
    }


@pytest.mark.parametrize(
    ("typed", "unit", "line"),
    [
        ("12 cm", "cm", "= 0,12 m"),
        ("12", "m", "= 12 m"),
        ("0,12 m", "m", ""),
        ("0.12 m", "m", ""),
        ("120 mm", "mm", "= 0,12 m"),
        ("1,2e-1 m", "m", "= 0,12 m"),
        ("3 km", "km", "= 3000 m"),
    ],
)
def test_a_distance_is_read_back_in_metres(typed: str, unit: str, line: str) -> None:
    """The unit beside the box is the one the number is counted in; what is plain already is not said again."""
    assert back({"r": typed}) == {"r": (unit, line)}


def test_a_box_that_cannot_be_read_says_nothing() -> None:
    """Neither an empty box, nor a wrong unit, nor a size below zero has a line; the others keep theirs."""
    assert back({"Q1": "+8 nC", "Q2": "", "r": "-3 cm", "R": "3 kg"}) == {"Q1": ("nC", "= 8 × 10⁻⁹ C")}


def test_a_charge_keeps_its_sign() -> None:
    """Minus five nanocoulomb is read back with its minus."""
    assert back({"Q2": "-5 nC"}) == {"Q2": ("nC", "= −5 × 10⁻⁹ C")}


def test_the_readers_decimal_sign_is_used() -> None:
    """A reader with the decimal point reads it here too, even where another setting is wrong."""
    assert back({"r": "12 cm"}, settings={"comma": "point"}) == {"r": ("cm", "= 0.12 m")}
    assert back({"r": "12 cm"}, settings={"comma": "point", "k": "none"}) == {"r": ("cm", "= 0.12 m")}


def test_cells_of_a_table_are_read_back_each() -> None:
    """A cell is named by its row and column."""
    rows = [{"Q": "+4 nC", "x": "0"}, {"Q": "two", "x": "30 cm"}]
    found = back({"charges": rows}, "several-charges.line")
    assert found["charges.0.Q"] == ("nC", "= 4 × 10⁻⁹ C")
    assert found["charges.1.x"] == ("cm", "= 0,3 m")
    assert "charges.1.Q" not in found


def test_an_angle_stays_in_degrees() -> None:
    """A slope of 35° needs no second line."""
    assert back({"theta": "35"}, "equilibrium.slope")["theta"] == ("°", "= 35°")
    assert back({"theta": "35°"}, "equilibrium.slope")["theta"] == ("°", "")


@pytest.mark.parametrize("key", question_keys())
def test_every_box_of_an_example_is_read_back(key: str) -> None:
    """Every number a page begins with is understood, in the unit that it is typed in."""
    question = find(key)[1]
    found = back(dict(question.example), key)
    for item in question.fields:
        text = str(question.example.get(item.name) or "")
        if isinstance(item, Input) and text.strip():
            unit, _ = found[item.name]
            assert text.replace(" ", "").endswith(unit) or parse_unit(unit) == parse_unit(text.rsplit(" ", 1)[-1])


def test_a_request_that_does_not_ask_gets_none() -> None:
    """Other pages that solve a question get the answer alone."""
    reply = json.loads(desk.answer('{"operation": "solve", "data": {"question": "coulomb.force"}}'))
    assert "readback" not in reply
