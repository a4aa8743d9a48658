"""What happens when: both circuits by numpy, the chain of reasons, verdicts, marking of a chain, refusals."""

import random

import numpy as np
import pytest

from calc.marking.statements import phrases_said
from calc.model.answers import WorkedAnswer
from calc.model.questions import Plan, Refusal
from calc.topics import find
from calc.topics.circuits.network_meters import measured
from calc.topics.circuits.network_text import Element, Tree, read_network
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
    return one.field, one.sentence.replace("\N{NO-BREAK SPACE}", " ")


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
        "The branches in parallel get what is left, V_p = ε − I(r + R₁): V_p increases from 6,00 V to 6,86 V.",
        "The potential difference across R₁ decreases from 4,00 V to 3,43 V.",
        "Lamp L₁ becomes brighter: the potential difference across it increases from 6,00 V to 6,86 V, and its power"
        " increases from 9,00 W to 11,76 W.",
        "Lamp L₂ goes out: no current passes it, but the potential difference across its gap increases from 6,00 V to"
        " 6,86 V.",
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
        "Across the other resistors and lamps there is no potential difference; across the burnt-out R₁ it is 12 V.",
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


METERED = (
    "ammeter A1 + R1 2 + ((ammeter A2 + lamp L1 4) || (S1 closed + lamp L2 12)); voltmeter V1 across the cell;"
    " voltmeter V2 across L1; voltmeter V3 across S1; voltmeter V4 across L2"
)


def test_meters_keep_the_names_they_were_given() -> None:
    """Every reading before and after, by hand: 2 A and 12/7 A, 10 V and 72/7 V, 6 V and 48/7 V."""
    found = solve(network=METERED, change="switch", of="S1")
    assert points(found, "meters") == [
        "The reading of ammeter A₁ decreases from 2,00 A to 1,71 A.",
        "The reading of ammeter A₂ increases from 1,50 A to 1,71 A.",
        "The reading of voltmeter V₁ increases from 10,00 V to 10,29 V.",
        "The reading of voltmeter V₂ increases from 6,00 V to 6,86 V.",
        "The reading of voltmeter V₃ increases from 0 V to 6,86 V.",
        "The reading of voltmeter V₄ decreases from 6,00 V to 0 V.",
    ]
    assert points(found, "chain")[1].endswith(
        "so the total current, shown by ammeter A₁, decreases from 2,00 A to 1,71 A."
    )
    assert points(found, "chain")[3].endswith(
        "the terminal potential difference, shown by voltmeter V₁, increases from 10,00 V to 10,29 V."
    )
    asks = [part.ask.replace("\N{NO-BREAK SPACE}", " ") for part in found.parts]
    assert "Calculate the current in lamp L₁, shown by ammeter A₂, before the change." in asks
    assert "Calculate the total current, shown by ammeter A₁ and ammeter A₂, after the change." in asks
    assert "Voltmeter V₃ is connected across S₁." in found.story


def test_a_voltmeter_across_a_series_lamp_that_burns_out_reads_the_emf() -> None:
    """No current anywhere, the emf across the broken lamp and at the terminals, nothing across the other."""
    found = solve(network="A1 + L1 4 + R1 2; V1 across L1; V2 across R1; V3 across the cell", of="L1")
    assert points(found, "meters") == [
        "The reading of ammeter A₁ decreases from 1,71 A to 0 A.",
        "The reading of voltmeter V₁ increases from 6,86 V to 12,00 V.",
        "The reading of voltmeter V₂ decreases from 3,43 V to 0 V.",
        "The reading of voltmeter V₃ increases from 10,29 V to 12,00 V.",
    ]
    assert points(found, "open")[-1].endswith("across the burnt-out lamp L₁ it is 12 V.")


def test_without_internal_resistance_only_the_broken_branch_changes() -> None:
    """r = 0, nothing in series: the voltmeters and the other branch's ammeter show what they showed."""
    text = "A1 + ((A2 + L1 4) || (A3 + L2 12)); V1 across the cell; V2 across L2"
    assert points(solve(network=text, r="0 Ω"), "meters") == [
        "The reading of ammeter A₁ decreases from 4,00 A to 3,00 A.",
        "The reading of ammeter A₂ stays the same, 3,00 A.",
        "The reading of ammeter A₃ decreases from 1,00 A to 0 A.",
        "The reading of voltmeter V₁ stays the same, 12,00 V.",
        "The reading of voltmeter V₂ stays the same, 12,00 V.",
    ]


def laid(tree: Tree, a: int, b: int, count: list[int], found: list[tuple[str, int, int, float]]) -> None:
    """Every part between two junctions, with a resistance for numpy: a wire's is tiny, a gap's is huge."""
    if isinstance(tree, Element):
        ideal = 1e12 if tree.kind == "voltmeter" or not tree.closed else 1e-6
        found.append((tree.name, a, b, tree.ohms or ideal))
        return
    for n, part in enumerate(tree.parts):
        if tree.how == "parallel":
            laid(part, a, b, count, found)
            continue
        end = b if n == len(tree.parts) - 1 else count[0]
        count[0] += end != b
        laid(part, a, end, count, found)
        a = end


def some_tree(chance: random.Random, size: int, how: str, names: list[int]) -> str:
    """A circuit in words with switches and ammeters in its branches; a branch has one gap at most."""
    if size == 1:
        n = names[0] = names[0] + 1
        extra = chance.choice(("", "", f"A{n} + ", f"S{n} open + ", f"S{n} closed + "))
        return f"({extra}R{n} {round(chance.uniform(1, 30), 1)} Ω)"
    first = chance.randint(1, size - 1)
    other = "parallel" if how == "series" else "series"
    sign = " + " if how == "series" else " || "
    return f"({sign.join(some_tree(chance, part, other, names) for part in (first, size - first))})"


def test_meters_anywhere_agree_with_numpy() -> None:
    """Volts and amperes of every part, switch and ammeter of random circuits, by node analysis."""
    chance = random.Random(8)
    for _ in range(60):
        network = read_network(some_tree(chance, chance.randint(2, 6), "parallel", [0]))
        parts: list[tuple[str, int, int, float]] = []
        count = [2]
        laid(network.tree, 1, 0, count, parts)
        emf, inner = chance.uniform(3, 20), chance.uniform(0.1, 2)
        matrix, right = np.zeros((count[0], count[0])), np.zeros(count[0])
        for a, b, ohms_ in [*((a, b, o) for _, a, b, o in parts), (1, 0, inner)]:
            matrix[a, a] += 1 / ohms_
            matrix[b, b] += 1 / ohms_
            matrix[a, b] -= 1 / ohms_
            matrix[b, a] -= 1 / ohms_
        right[1] = emf / inner
        matrix[0], right[0] = 0, 0  # the negative terminal is the zero
        matrix[0, 0] = 1
        at = np.linalg.solve(matrix, right)
        if sum(o > 1e9 for *_, o in parts) > 1:
            continue  # two gaps in a row share a potential difference that no ideal meter can tell
        got = measured(network, emf, inner)
        for name, a, b, ohms_ in parts:
            assert got[name] == pytest.approx((at[a] - at[b], (at[a] - at[b]) / ohms_), rel=1e-4, abs=1e-4)


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
        (
            {"network": "L1 4 || (S1 open + L2 4)"},
            "of",
            "Nothing changes: no current passes lamp L₂ before, nor after. Pick another part, or close the switch of"
            " its branch.",
        ),
        (
            {"network": "R1 4 + L2 4", "change": "becomes", "of": "R1", "R_new": "4 Ω"},
            "R_new",
            "Nothing changes: after it the total resistance is 8,00 Ω as well. Take another part or resistance.",
        ),
        (
            {"network": "R1 4 + (L2 4 || S1 open || S2 closed)", "change": "switch", "of": "S1"},
            "of",
            "Nothing changes: after it the total resistance is 4,00 Ω as well. Take another part or resistance.",
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
    assert phrases_said(said, ("L₁ becomes brighter", "L₂ goes out"))[0] == found


def planned(**typed: str) -> Plan:
    """The plan of the example with these boxes changed."""
    _, question = find("circuits.what-if")
    return question.plan(read(question, {**question.example, **typed}).data)


def test_the_proof_sees_a_wrong_value() -> None:
    """Kirchhoff's equations hold for the values found, and no longer where one is a thousandth off."""
    (check,), values = planned().checks, dict(solve().values)
    assert check.holds is not None
    assert check.holds(values)
    for name in ("I", "V_ext", "I_after", "V_ext_after"):
        assert not check.holds({**values, name: values[name] * 1.001})


def test_without_a_name_the_last_part_is_meant() -> None:
    """The last lamp or resistor burns out, the last switch is opened."""
    assert "lamp L₂ burns out" in solve(of="").story
    text = "S1 closed + R1 2 + (S2 closed || L1 4)"
    assert "switch S₂ is opened" in solve(of="", change="switch", network=text).story


def test_each_reason_and_each_verdict_earns_one_mark() -> None:
    """Four links, and a mark for each part and each meter."""
    parts = {part.key: part.marks for part in solve(network=METERED, change="switch", of="S1").parts}
    assert (parts["chain"], parts["meters"], parts["verdict"]) == (4, 6, 4)


def test_the_drawing_is_that_before_the_change() -> None:
    """Its title says so, and the switch in it stands as it stood."""
    scene = planned(network="S1 open + L1 4", change="switch", of="S1").scene
    assert scene is not None
    figure = scene({})
    assert figure.title == "The circuit before the change"
    assert "an open switch S1" in figure.description.replace("_", "")
