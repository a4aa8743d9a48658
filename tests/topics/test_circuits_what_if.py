"""What happens when: both circuits by numpy, the chain of reasons, verdicts, marking of a chain, refusals."""

import random

import numpy as np
import pytest

from calc.marking.statements import phrases_said
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.topics import find
from calc.working.reading import Refusals, read
from tests.cases import reckoned


def solve(**typed: str) -> WorkedAnswer:
    """The worked answer of the example with these boxes changed."""
    topic, question = find("circuits.what-if")
    return reckoned(topic, question, read(question, {**question.example, **typed}))


def refusal(**typed: str) -> tuple[str | None, str]:
    """The box and the sentence of the one refusal."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(**typed)
    one = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    return one.field, one.sentence


def points(found: WorkedAnswer, key: str) -> list[str]:
    """The sentences of one part, with plain spaces."""
    part = next(part for part in found.parts if part.key == key)
    return [point.words.replace("\N{NO-BREAK SPACE}", " ") for point in part.points]


def two_branches(emf: float, r: float, a: float, b: float, c: float) -> tuple[float, float]:
    """Current and branch p.d. of a + (b ∥ c): numpy solves ε = I(r + a) + V, I = V/b + V/c. c may be infinite."""
    current, volts = np.linalg.solve([[r + a, 1.0], [-1.0, 1 / b + 1 / c]], [emf, 0.0])
    return float(current), float(volts)


FAULTS = {
    "burns": lambda b, c, new: (b, float("inf")),
    "becomes": lambda b, c, new: (b, new),
    "parallel": lambda b, c, new: (b, 1 / (1 / c + 1 / new)),
    "series": lambda b, c, new: (b, c + new),
}


def test_both_circuits_agree_with_kirchhoff() -> None:
    """Currents and terminal potential differences before and after, for changes of the last branch."""
    chance = random.Random(2)
    for _ in range(40):
        emf, r, a, b, c, new = (round(chance.uniform(0.5, 20), 2) for _ in range(6))
        change = chance.choice(sorted(FAULTS))
        text = f"R1 {a} Ω in series with (R2 {b} Ω in parallel with R3 {c} Ω)"
        found = solve(network=text, of="R3", change=change, R_new=f"{new} Ω", epsilon=f"{emf} V", r=f"{r} Ω")
        v = found.values
        for tag, (one, two) in (("", (b, c)), ("_after", FAULTS[change](b, c, new))):
            current, _volts = two_branches(emf, r, a, one, two)
            assert v[f"I{tag}"] == pytest.approx(current, rel=1e-9)
            assert v[f"V_ext{tag}"] == pytest.approx(emf - current * r, rel=1e-9)
            assert v[f"V1{tag}"] == pytest.approx(current * a, rel=1e-9)
        assert not found.unproven


def test_the_reference_fault() -> None:
    """The 12 Ω branch burns out: 1,71 A, 10,29 V and 6,86 V, by hand; the chain and the verdicts word for word."""
    found = solve()
    v = found.values
    assert [round(v[n], 2) for n in ("I", "V_ext", "V_p", "I_after", "V_ext_after", "V_L1_after")] == [
        2.0,
        10.0,
        6.0,
        1.71,
        10.29,
        6.86,
    ]
    assert points(found, "chain") == [
        "One path for the current is taken away. The total resistance increases from 5,00 Ω to 6,00 Ω.",
        "The emf and the internal resistance do not change, so the total current decreases from 2,00 A to 1,71 A.",
        "The lost volts Ir change in step: Ir decreases from 2,00 V to 1,71 V.",
        "As V_ext = ε − Ir, the terminal potential difference increases from 10,00 V to 10,29 V.",
    ]
    assert points(found, "verdict") == [
        "The branches in parallel get what is left: V_p = ε − I(r + R₁) increases from 6,00 V to 6,86 V.",
        "The potential difference across R₁ decreases from 4,00 V to 3,43 V.",
        "Lamp L₁ becomes brighter: the potential difference across it increases from 6,00 V to 6,86 V, and its power"
        " increases from 9,00 W to 11,76 W.",
        "Lamp L₂ goes out: the potential difference across it decreases from 6,00 V to 0 V, and its power decreases"
        " from 3,00 W to 0 W.",
    ]


def test_what_stands_before_is_asked_first() -> None:
    """All parts before the change come before those after it."""
    asks = [part.ask for part in solve().parts if part.ask.startswith("Calculate")]
    assert [ask.rsplit(" ", 3)[1] for ask in asks] == sorted((ask.rsplit(" ", 3)[1] for ask in asks), reverse=True)


def test_a_series_lamp_that_burns_out_stops_all() -> None:
    """No current, the terminals and the gap show the emf, every lamp goes out."""
    found = solve(of="R1")
    assert points(found, "open") == [
        "The circuit is open, so the current becomes zero everywhere.",
        "Without current there are no lost volts: the terminals show the emf, 12 V.",
        "Every resistor and lamp has no potential difference; across the gap it is 12 V.",
    ]
    assert [one.split(":")[0] for one in points(found, "verdict")[1:]] == ["Lamp L₁ goes out", "Lamp L₂ goes out"]


def test_an_ideal_cell_with_nothing_in_series_keeps_the_other_branch() -> None:
    """r = 0: the terminal p.d. stays the emf and the other lamp is as bright as before."""
    found = solve(network="L1 4 Ω || L2 12 Ω", r="0 Ω")
    assert points(found, "chain")[-1] == (
        "The internal resistance is zero: there are no lost volts, and the terminal potential difference stays equal to"
        " the emf."
    )
    assert points(found, "verdict")[0].startswith("Lamp L₁ is as bright as before")


@pytest.mark.parametrize(
    ("typed", "resistance", "first", "second"),
    [
        ({"change": "shorted", "of": "L1"}, "decreases", "goes out", "goes out"),
        ({"change": "shorted", "of": "R1"}, "decreases", "becomes brighter", "becomes brighter"),
        ({"change": "parallel", "of": "L2", "R_new": "6 Ω"}, "decreases", "becomes dimmer", "becomes dimmer"),
        ({"change": "series", "of": "L2", "R_new": "6 Ω"}, "increases", "becomes brighter", "becomes dimmer"),
        ({"change": "becomes", "of": "R1", "R_new": "7 Ω"}, "increases", "becomes dimmer", "becomes dimmer"),
        (
            {"change": "switch", "of": "S1", "network": "R1 2 + (L1 4 || (S1 open + L2 12))"},
            "decreases",
            "becomes dimmer",
            "lights up",
        ),
    ],
)
def test_each_change_has_its_chain(typed: dict[str, str], resistance: str, first: str, second: str) -> None:
    """The total resistance goes the way it must, the lamps follow (reasoned by hand)."""
    found = solve(**typed)
    assert f"The total resistance {resistance}" in points(found, "chain")[0]
    lamps = [one for one in points(found, "verdict") if one.startswith("Lamp")]
    assert [first in lamps[0], second in lamps[1]] == [True, True]


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        (
            {"change": "switch", "of": "S1"},
            "network",
            "The circuit has no switch “S1”. Put one into the text, as in switch S1 closed, and type its name here.",
        ),
        (
            {"of": "R9"},
            "of",
            "The circuit has no part “R9” with a resistance. Type one of its names: R1, L1, L2.",
        ),
        (
            {"change": "becomes"},
            "R_new",
            "Type the new resistance: it is needed where a resistor is set or added.",
        ),
        (
            {"network": "R1 2 + L2 ?"},
            "network",
            "Every resistance must be known here: “L2 ?” has none. Type it instead of the question mark.",
        ),
        (
            {"network": "R1 2 + L2 4 taking 2 W"},
            "network",
            "Readings follow from the numbers here: leave the one of “L2 4 taking 2 W” out.",
        ),
        (
            {"network": "L1 2 || L2 4", "change": "shorted"},
            "of",
            "After this change nothing but the cell would limit the current: a short circuit, which burns. Choose"
            " another part, or put a resistor in series with it.",
        ),
        (
            {"network": "S1 open + L2 4"},
            "of",
            "Nothing changes: no current passes lamp L₂ before, nor after. Pick another part, or close the switch of"
            " its branch.",
        ),
    ],
)
def test_what_is_refused_and_why(typed: dict[str, str], field: str, sentence: str) -> None:
    """Each impossible change is answered by why, and what to do."""
    assert refusal(**typed) == (field, sentence)


@pytest.mark.parametrize(
    ("chain", "said"),
    [
        ("The total resistance increases, so the current decreases and the terminal p.d. increases.", (0, 1, 2)),
        ("total resistance decreases, so the current increases; terminal p.d. decreases", ()),
        ("The total resistance rises. Therefore the current decreases, Ir decreases.", (0, 1)),
        ("The terminal voltage goes up: it stays the same.", (2,)),
        ("Terminal voltage increases because the current decreases, R_T increases", (0, 1, 2)),
        ("R_T ↑ → I ↓ → V_ext ↑", (0, 1, 2)),
        ("R_T goes down, so more current flows, hence V_ext drops.", ()),
        (
            "The resistance of the circuit gets bigger, so less current flows. The voltmeter reading is higher.",
            (0, 1, 2),
        ),
        ("An increase of the total resistance causes a decrease of the current.", (0, 1)),
        ("The total resistance doesn't increase and the current does not decrease.", ()),
        ("Increases: the resistance. Decreases: the current.", ()),
        ("The current is used up, the resistance stays.", ()),
    ],
)
def test_a_chain_of_reasons_is_marked_link_by_link(chain: str, said: tuple[int, ...]) -> None:
    """What increases must stand beside that word: a chain the wrong way round earns nothing."""
    keys = ("total resistance increases", "current decreases", "terminal potential difference increases")
    assert phrases_said(chain, keys)[0] == said


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("L1 becomes brighter and L2 goes out.", (0, 1)),
        ("lamp 1 glows more brightly; bulb 2 no longer glows", (0, 1)),
        ("L₂ becomes brighter, L₁ goes out.", ()),
        ("Lamp L1 is not brighter. L2 does not glow any more.", (1,)),
        ("L1's brightness increases, L2 is off", (0, 1)),
        ("Both change.", ()),
    ],
)
def test_a_verdict_belongs_to_its_lamp(said: str, found: tuple[int, ...]) -> None:
    """Brighter said of the other lamp earns nothing."""
    assert phrases_said(said, ("L1 brighter", "L2 dark"))[0] == found
