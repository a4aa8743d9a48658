"""The whole working typed as on paper: each line judged, the first that breaks named, method marks from the lines."""

import json
from typing import Any

import pytest

from calc import desk
from calc.marking.learner import read_line
from calc.marking.written import numbers

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


def marked(key: str, part: str, lines: str, find: str = "", direction: str = "", **inputs: str) -> dict[str, Any]:
    """The verdict on a working of one part of a question; '; ' parts the lines."""
    answer = {"working": lines.replace("; ", "\n"), "direction": direction}
    data = {"question": key, "inputs": inputs, "find": find, "answers": {part: answer}}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    assert reply["ok"], reply
    return next(verdict for verdict in reply["data"]["parts"] if verdict["part"] == part)


JOIN = {"m1": "2 kg", "m2": "1 kg", "u1": "6 m/s", "u2": "-1 m/s"}
EDGE = {"m1": "5 kg", "m2": "3 kg", "mu": "0,2"}
THROWN = {"H": "43 m", "positive": "up", "start": "thrown", "u": "15 m/s"}
STRAP = {"P": "130 N", "m": "30 kg", "mu_k": "0,3", "mu_s": "0,35", "phi": "30°"}
NOTE = {"f_S": "800 Hz", "moving": "source", "v": "335 m/s", "v_S": "40 m/s", "way": "towards"}
STRUCK = {"m": "150 g", "u": "12 m/s", "v": "-12 m/s", "Deltat": "5 ms"}
SPRING = {"h": "1,2 m", "k": "400 N/m", "m": "80 g", "x": "10 cm"}
DOWN = {"Deltat": "0,2 s", "m": "400 g", "u": "-8 m/s", "v": "5 m/s"}
CHUTE = {"m": "2 kg", "mu_k": "0,3", "mu_s": "0,4", "theta": "30°", "u": "5 m/s"}
WAYS = [
    ("momentum.join", "v", JOIN, "p before = p after; m1u1 + m2u2 = (m1+m2)v; 11 = 3v; v = 3,67 m·s⁻¹ to the right"),
    ("momentum.join", "v", JOIN, "Σpi = Σpf; m1v1i + m2v2i = (m1+m2)vf; (2)(6) + (1)(-1) = 3vf; ∴ vf = 3,67 m/s right"),
    ("newton.edge", "a", EDGE, "f = µm₁g = 0,2 × 5 × 9,8 = 9,8 N; Fnet = ma; 29,4 - 9,8 = 8a; a = 2,45 m/s²"),
    (
        "newton.edge",
        "a",
        EDGE,
        "fk = µm1g; fk = 9,8 N; a = (m2g - fk)/(m1 + m2); a = (3(9,8) - 9,8)/8; so a = 2,45 ms⁻²",
    ),
    ("projectile.from-height", "t", THROWN, "Δy = vit + ½at²; -43 = 15t + ½(-9,8)t²; 4,9t² - 15t - 43 = 0; t = 4,87 s"),
    ("doppler.one-moves", "f_L", NOTE, "fL = (v ± vL)/(v ± vS) fS; fL = 335/(335 - 40) × 800 Hz; fL = 908,47 Hz"),
    ("doppler.one-moves", "f_L", NOTE, "fL = v/(v - vS)fS; = 335/(335 - 40)(800); = 908,47 Hz"),
    (
        "momentum.impulse",
        "F_net",
        STRUCK,
        "FnetΔt = m(vf - vi); Fnet(0,005) = 0,15(-12 - 12); Fnet = 720 N to the left",
    ),
    (
        "momentum.impulse",
        "Deltap",
        STRUCK,
        "Take right as positive; Δp = mvf - mvi; = 0,15(-12) - 0,15(12); = 3,6 Ns left",
    ),
]


@pytest.mark.parametrize(
    ("key", "find", "inputs", "lines"), WAYS, ids=[f"{key} {n}" for n, (key, *_) in enumerate(WAYS)]
)
def test_a_right_working_as_learners_write_it(key: str, find: str, inputs: dict[str, str], lines: str) -> None:
    """A principle, letters of one's own, numbers put in before the unknown stands alone, compound units, a direction
    behind the value: full marks, and no line is blamed."""
    verdict = marked(key, "find", lines, find, **inputs)
    assert (verdict["earned"], verdict["sentences"]) == (verdict["possible"], [])


@pytest.mark.parametrize(
    ("key", "part", "find", "inputs", "lines", "says"),
    [
        ("forces.crew", "normal", "", STRAP, "ΣFy = 0; N + P sinφ = mg; N + 130sin30° = 294; N = 230 N", ""),
        ("forces.crew", "normal", "", STRAP, "ΣFy = 0; N = mg + Psinφ; = 294 + 65; = 359 N", "Line 2"),
        ("forces.crew", "normal", "", STRAP, "N = mg - Psinφ; = 294 + 65; = 359 N", "Line 2"),
        ("forces.crew", "normal", "", STRAP, "N + 130sin30° = 284; N = 219 N", "Line 1"),
        ("forces.crew", "normal", "", STRAP, "N + 130sin30° = 294; N = 239 N", "Line 2"),
        ("momentum.join", "find", "v", JOIN, "m1u1 + m2u2 = (m1+m2)v; (2)(6) + (1)(1) = 3v; v = 4,33 m/s", "Line 2"),
        # what follows from a wrong value is not blamed a second time
        (
            "momentum.floor",
            "find",
            "N",
            DOWN,
            "Fnet = m(v+u)/Δt; = 0,4(5-8)/0,2; = -6 N; N - mg = Fnet; N = -2,08 N",
            "Line 2",
        ),
        ("forces.ramp", "slows", "", CHUTE, "Fnet = ma; -mgsinθ - f = ma; -9,8 - 5,09 = 2a; a = -7,45 m/s²", ""),
    ],
)
def test_the_line_of_a_working_that_goes_wrong(
    key: str, part: str, find: str, inputs: dict[str, str], lines: str, says: str
) -> None:
    """A formula, a number or a result: the first line that does not hold is told, and no other."""
    told = " ".join(marked(key, part, lines, find, "down the slope", **inputs)["sentences"])
    assert [word for word in ("Line 1", "Line 2", "Line 3", "Line 4") if word in told] == ([says] if says else [])
    assert "No usual mistake" not in told or not says


@pytest.mark.parametrize(
    ("line", "value"),
    [
        ("½(35)(5 m/s)²", 437.5),
        ("√(2·9,8·1,5)", 5.422),
        ("(6,67×10⁻¹¹)(8×10^(23))(450)/(3×10⁷)²", 26.68),
        ("sin(35° + 55°)", 1),
        ("sin(35 + 55°)", 1),
        ("1 200 N - 200 N", 1000),
        ("12,3 ms⁻¹", 12.3),
        ("335 x 2", 670),
        ("tan⁻¹(0,5)", 0.46365),
    ],
)
def test_a_line_of_numbers_as_typed(line: str, value: float) -> None:
    """Halves, roots, powers of ten as one number, spaced thousands, one ° for a sum of angles."""
    assert read_line(line) == pytest.approx(value, rel=1e-3)


def test_g_of_ten_costs_one_mark_of_an_answer_worth_two() -> None:
    """Solving and value are marked together where two bodies are joined: with g = 10 only the value is lost."""
    data = {"question": "newton.edge", "inputs": {**EDGE, "m1": "3 kg"}, "find": "a"}
    request = {"operation": "mark", "data": {**data, "answers": {"find": {"value": "4,00 m/s²"}}}}
    verdict = next(v for v in json.loads(desk.answer(json.dumps(request)))["data"]["parts"] if v["part"] == "find")
    assert (verdict["possible"] - verdict["earned"], verdict["marks"][-1]["reason"]) == (
        1,
        "g = 10: one mark for the value",
    )


@pytest.mark.parametrize(
    ("side", "value"),
    [
        ("14,60 Ω", 14.6),
        ("14,60 \N{OHM SIGN}", 14.6),
        ("14.6 ohms", 14.6),
        ("3,6 kΩ", 3600.0),
        ("1/(1/(6 Ω) + 1/(3 Ω))", 2.0),
        ("(2 A)(3 Ω)", 6.0),
        ("0,5 T", 0.5),
        ("(0,5 T)(0,2 m)", 0.1),
        ("0,02 Wb", 0.02),
        ("2 keV", 2 * 1.602176634e-16),
        ("1,5 kW × 20/60 h", 1.8e6),
        ("10 m / 2 s", 5.0),
    ],
)
def test_units_of_electricity_stand_in_a_working(side: str, value: float) -> None:
    """Ohms, teslas, webers and electronvolts behind a number; the hour behind a fraction belongs to all of it."""
    assert any(one == pytest.approx(value) for one in numbers(side))


def test_a_letter_behind_a_number_is_no_tesla() -> None:
    """2T is twice a tension."""
    assert numbers("2T") == ()
