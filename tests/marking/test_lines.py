"""The whole working typed as on paper: each line judged, the first that breaks named, method marks from the lines."""

import json
from typing import Any

import pytest

from calc import desk
from calc.marking.learner import read_line

FORCE = {"Q1": "+8 nC", "Q2": "-5 nC", "r": "12 cm"}  # 9e9 × 8e-9 × 5e-9 / 0,12² = 2,5 × 10⁻⁵ N


def worked(*lines: str, **more: str) -> dict[str, Any]:
    """The verdict on a working of the force of two charges."""
    data = {
        "question": "coulomb.force",
        "inputs": FORCE,
        "answers": {"find": {"working": "\n".join(lines), "direction": "attract", **more}},
    }
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    assert reply["ok"], reply
    return next(part for part in reply["data"]["parts"] if part["part"] == "find")


def earned(verdict: dict[str, Any]) -> str:
    """The marks earned as a memo letters them."""
    return "".join(mark["kind"][0].upper() for mark in verdict["marks"] if mark["earned"])


def test_a_whole_working_earns_every_mark() -> None:
    """Formula, numbers and result in lines are the answer, with no box of its own."""
    verdict = worked("F = kQ₁Q₂/r²", "F = 9e9 × 8e-9 × 5e-9 / 0,12²", "= 2,5 x 10^-5 N")
    assert (earned(verdict), verdict["sentences"]) == ("FSA", [])


def test_the_line_that_breaks_is_named() -> None:
    """The numbers are right and are worked out wrongly: the third line says another value than the second."""
    verdict = worked("F = k Q1 Q2 / r^2", "= 9e9 × 8e-9 × 5e-9 / 0,12²", "= 3,1 x 10^-5 N")
    assert earned(verdict) == "FS"
    assert verdict["sentences"][0] == (
        "Line 3 of your working breaks off: “3,1 x 10^-5 N” is not the same as “9e9 × 8e-9 × 5e-9 / 0,12²” before it."
        " Work that line out once more."
    )


def test_a_formula_that_does_not_hold_is_named() -> None:
    """r for r² in the first line."""
    verdict = worked("F = kQ1Q2/r", "= 9e9 × 8e-9 × 5e-9 / 0,12", "= 3 x 10^-6 N")
    assert verdict["sentences"][0].startswith(
        "Line 1 of your working, “F = kQ1Q2/r”, is not a formula that holds here."
    )
    assert "F" not in earned(verdict)


def test_another_allowed_form_of_the_law_is_a_formula() -> None:
    """F r² = k Q₁ Q₂ says the same."""
    assert "F" in earned(worked("F r^2 = k Q1 Q2", "F = 1,0 x 10^-5 N"))


def test_units_inside_a_line_of_numbers() -> None:
    """8 nC and 12 cm with their prefixes are read as SI."""
    assert read_line("9e9 × 8 nC × 5 nC / (12 cm)²") == pytest.approx(2.5e-5)
    assert read_line("(9 × 10⁹ N·m²·C⁻²)(8 × 10⁻⁹ C)(5 × 10⁻⁹ C)/(0,12 m)²") == pytest.approx(2.5e-5)


@pytest.mark.parametrize("line", ["__import__('os')", "F = open(1)", "= = =", "((((", "x" * 5000, "9**9**9**9 = F"])
def test_whatever_is_typed_is_read_or_answered(line: str) -> None:
    """Nothing typed is run, and nothing raises."""
    assert worked(line)["state"]
