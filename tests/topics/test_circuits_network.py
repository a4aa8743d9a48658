"""Networks built in words: node analysis with numpy, published cases, unknowns, two roots, refusals word for word."""

import os
import random
from collections.abc import Iterator

import numpy as np
import pytest

from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.renderings.drawing import Stroke
from calc.renderings.layout import layout
from calc.topics import find
from calc.topics.circuits.network_text import Element, Group, Tree, read_network
from calc.working.reading import Refusals, read
from calc.working.working import work
from tests.cases import reckoned
from tests.topics.asking import Chapter

NETWORKS = int(os.environ.get("NETWORKS_SOLVED", "60"))


def solve(**typed: str) -> WorkedAnswer:
    """The worked answer of the example with these boxes changed."""
    topic, question = find("circuits.network")
    return reckoned(topic, question, read(question, {**question.example, **typed}))


def refusal(**typed: str) -> tuple[str | None, str]:
    """The box and the sentence of the one refusal."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(**typed)
    one = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    return one.field, one.sentence.replace("\N{NO-BREAK SPACE}", " ")


# --- node analysis ---


def text_of(shape: object, names: Iterator[int]) -> str:
    """A random shape in words, its parts R1, R2 …"""
    if isinstance(shape, float):
        return f"R{next(names)} {shape!r} Ω"
    how, parts = shape  # type: ignore[misc]
    word = " in series with " if how == "series" else " in parallel with "
    return word.join(text_of(p, names) if isinstance(p, float) else f"({text_of(p, names)})" for p in parts)


def a_shape(chance: random.Random, left: int, how: str) -> object:
    """A resistance, or a group whose parts are of the other kind."""
    if left == 1:
        return round(chance.uniform(0.5, 40), 2)
    count = chance.randint(2, min(3, left))
    cuts = sorted(chance.sample(range(1, left), count - 1))
    sizes = [b - a for a, b in zip([0, *cuts], [*cuts, left], strict=True)]
    other = "parallel" if how == "series" else "series"
    return how, [a_shape(chance, size, other) for size in sizes]


def edges(shape: object) -> tuple[int, list[tuple[int, int, float]]]:
    """Junctions from 0 (negative terminal) and 1 (positive), and the resistances between them."""
    found: list[tuple[int, int, float]] = []
    count = [2]

    def lay(one: object, a: int, b: int) -> None:
        if isinstance(one, float):
            found.append((a, b, one))
            return
        how, parts = one  # type: ignore[misc]
        for n, part in enumerate(parts):
            if how == "parallel":
                lay(part, a, b)
                continue
            end = b if n == len(parts) - 1 else count[0]
            count[0] += end != b
            lay(part, a, end)
            a = end

    lay(shape, 1, 0)
    return count[0], found


def by_nodes(shape: object, emf: float, inner: float) -> tuple[float, list[float]]:
    """Cell current and the p.d. across each resistance: numpy finds the potentials, the cell as a Norton source."""
    count, found = edges(shape)
    matrix, right = np.zeros((count - 1, count - 1)), np.zeros(count - 1)
    for a, b, ohms in [*found, (1, 0, inner)]:
        for here, there in ((a, b), (b, a)):
            if here:
                matrix[here - 1, here - 1] += 1 / ohms
                if there:
                    matrix[here - 1, there - 1] -= 1 / ohms
    right[0] = emf / inner
    potential = np.concatenate([[0.0], np.linalg.solve(matrix, right)])
    return float(emf - potential[1]) / inner, [float(potential[a] - potential[b]) for a, b, _ in found]


@pytest.mark.timeout(3600)  # ten thousand take a quarter of an hour
def test_random_networks_agree_with_node_analysis() -> None:
    """Networks of two to eight resistors: current, terminal p.d., every branch's p.d., current and power."""
    chance = random.Random(11)
    for _ in range(NETWORKS):
        shape = a_shape(chance, chance.randint(2, 8), chance.choice(("series", "parallel")))
        emf, inner = round(chance.uniform(1, 60), 2), round(chance.uniform(0.05, 5), 2)
        text = text_of(shape, iter(range(1, 20)))
        found = solve(network=text, epsilon=f"{emf} V", r=f"{inner} Ω")
        current, volts = by_nodes(shape, emf, inner)
        v = found.values
        assert v["I"] == pytest.approx(current, rel=1e-9), text
        assert v["V_ext"] == pytest.approx(emf - current * inner, rel=1e-9), text
        ohms = [one for *_, one in edges(shape)[1]]
        for n, (drop, one) in enumerate(zip(volts, ohms, strict=True), 1):
            assert v[f"P{n}"] == pytest.approx(drop**2 / one, rel=1e-9), text
        assert sum(drop**2 / one for drop, one in zip(volts, ohms, strict=True)) + current**2 * inner == pytest.approx(
            emf * current, rel=1e-9
        )
        assert not found.unproven
        assert [check.what for check in found.checks] == ["Power balance: what the cell supplies, the resistances take"]


@pytest.mark.timeout(3600)  # ten thousand take a quarter of an hour
def test_every_missing_value_comes_back() -> None:
    """A resistance, the emf or r is left out and a meter read instead: the value left out is found again."""
    chance = random.Random(5)
    for _ in range(NETWORKS // 2):
        shape = a_shape(chance, chance.randint(2, 6), chance.choice(("series", "parallel")))
        emf, inner = round(chance.uniform(4, 24), 2), round(chance.uniform(0.1, 2), 2)
        _, volts = by_nodes(shape, emf, inner)
        ohms = [one for *_, one in edges(shape)[1]]
        n = chance.randrange(len(ohms))
        left = chance.choice(("epsilon", "r", "R"))
        reading = chance.choice(("V", "I", "P"))
        size = {"V": volts[n], "I": volts[n] / ohms[n], "P": volts[n] ** 2 / ohms[n]}[reading]
        unit = {"V": "V", "I": "A", "P": "W"}[reading]
        text = text_of(shape, iter(range(1, 20)))
        own = f"R{n + 1} {ohms[n]!r} Ω"
        assert own in text
        text = text.replace(own, f"R{n + 1} {'?' if left == 'R' else repr(ohms[n]) + ' Ω'} taking {size!r} {unit}")
        typed = {"epsilon": f"{emf} V", "r": f"{inner} Ω", "network": text, "ask": "missing"}
        found = solve(**(typed if left == "R" else typed | {left: ""})).values
        want = {"epsilon": emf, "r": inner, "R": ohms[n]}[left]
        got = [found[f"R{n + 1}"] if left == "R" else found[left]]
        got += [found[f"R{n + 1}_after"]] if f"R{n + 1}_after" in found else []
        # r is what is left of emf/I when nearly all is taken away: it loses digits.
        assert any(one == pytest.approx(want, rel=1e-6) for one in got), (text, left, got, want)


def test_one_resistor_from_its_power_has_two_roots() -> None:
    """PR² + (2Pr − ε²)R + Pr² = 0 by numpy: both roots are told and their product is r²."""
    chance = random.Random(3)
    for _ in range(60):
        emf, inner = chance.uniform(3, 24), chance.uniform(0.2, 4)
        power = chance.uniform(0.05, 0.95) * emf**2 / (4 * inner)
        v = solve(network=f"R1 ? taking {power!r} W", epsilon=f"{emf!r} V", r=f"{inner!r} Ω", ask="missing").values
        roots = sorted(np.roots([power, 2 * power * inner - emf**2, power * inner**2]).real)
        assert [v["R1_after"], v["R1"]] == pytest.approx(roots, rel=1e-9)
        assert v["R1"] * v["R1_after"] == pytest.approx(inner**2, rel=1e-9)


# --- reference and published ---


def test_the_reference_network() -> None:
    """ε 12 V, r 1 Ω, 2 Ω + (4 ∥ 12): 2 A, 10 V, 6 V by hand; R from 20 W is 0,20 or 5 Ω."""
    v = solve().values
    assert (v["R_p"], v["R_T"], v["I"], v["V_ext"], v["V_p"]) == pytest.approx((3, 5, 2, 10, 6))
    assert (v["I2"], v["I3"], v["P1"], v["P2"], v["P3"]) == pytest.approx((1.5, 0.5, 8, 9, 3))
    both = solve(network="R1 ? taking 20 W", ask="missing").values
    assert sorted((both["R1"], both["R1_after"])) == pytest.approx([0.2, 5])


# University Physics Volume 2 (OpenStax, open textbook), ch. 10, sec. 10.2, worked examples: a 9,00 V battery without
# internal resistance, 20 Ω four times and 10 Ω in series; a 3,00 V battery with 1 Ω, 2 Ω and 2 Ω in parallel.
def test_published_series_and_parallel() -> None:
    """The published currents, potential differences and powers come out."""
    text = "R1 20 Ω + R2 20 Ω + R3 20 Ω + R4 20 Ω + R5 10 Ω"
    v = solve(network=text, epsilon="9 V", r="0 Ω").values
    assert v["R_T"] == pytest.approx(90)
    assert v["I"] == pytest.approx(0.1)
    assert (v["V1"], v["V5"]) == pytest.approx((2, 1))
    assert (v["P1"], v["P5"]) == pytest.approx((0.2, 0.1))
    v = solve(network="R1 1 Ω || R2 2 Ω || R3 2 Ω", epsilon="3 V", r="0").values
    assert v["R_T"] == pytest.approx(0.5)
    assert v["I"] == pytest.approx(6)
    assert (v["I1"], v["I2"], v["I3"]) == pytest.approx((3, 1.5, 1.5))
    assert (v["P1"], v["P2"], v["P3"]) == pytest.approx((9, 4.5, 4.5))


CIRCUITS = Chapter("circuits")
# case: the letter found, and how the resistances are put together; emf for the published V where r is left out
NETWORK_CASES = {
    "S01b": ("I", " + "),
    "S01c": ("V1", " + "),
    "S02c": ("I2", " || "),
    "S02d": ("P1", " || "),
    "series-current": ("I", " + "),
    "parallel-resistance": ("R_T", " || "),
    "terminal-light-load": ("I", ""),
}


@pytest.mark.parametrize("case", NETWORK_CASES)
def test_published_networks(case: str) -> None:
    """Each network of the file of cases, in words; sources and tolerances stand there."""
    letter, sign = NETWORK_CASES[case]
    quantities = {name: one["value"] for name, one in CIRCUITS.cases[case]["given"].items()}
    text = sign.join(f"{name} {ohms} Ω" for name, ohms in quantities.items() if name.startswith("R"))
    emf = quantities.get("emf", quantities.get("V", 12))  # a resistance hangs on no emf
    found = solve(network=text, epsilon=f"{emf} V", r=f"{quantities.get('r', 0)} Ω").values
    assert found[letter] == CIRCUITS.published(case)


# --- the notation ---


def shape_of(tree: Tree) -> object:
    """Names nested as the text nests them."""
    if isinstance(tree, Element):
        return tree.name
    assert isinstance(tree, Group)
    return (tree.how, *map(shape_of, tree.parts))


@pytest.mark.parametrize(
    ("text", "shape"),
    [
        ("R1 2 Ω in series with R2 3 Ω", ("series", "R1", "R2")),
        ("2 || 3 || 4 Ω", ("parallel", "R1", "R2", "R3")),
        ("2 ∥ (3 + 4)", ("parallel", "R1", ("series", "R2", "R3"))),
        ("((2 + 3)) + 4", ("series", "R1", "R2", "R3")),
        ("a lamp of 4 Ω in series with rheostat 5 Ω", ("series", "L1", "R1")),
        ("R₂ = 4 Ω in series with R_7: 2 kΩ", ("series", "R2", "R7")),
        ("switch S open + [ammeter + R1 2 Ω]", ("series", "S", "A1", "R1")),
        ("R1 1e+2 Ω + open switch + R 5", ("series", "R1", "S1", "R2")),
    ],
)
def test_the_notation_is_read(text: str, shape: object) -> None:
    """Words, signs, brackets and names give the tree that a teacher means."""
    assert shape_of(read_network(text).tree) == shape


def test_values_carry_units_and_prefixes() -> None:
    """A kilo-ohm is a thousand ohms, a bare number is in ohms."""
    ohms = [one.ohms for one in read_network("R1 1,5 kΩ + R2 4 + R3 5e-1 Ω").elements]
    assert ohms == [1500, 4, 0.5]


HOW = "Write for example R1 2 Ω in series with (R2 4 Ω in parallel with R3 12 Ω)."


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        ({"network": " "}, "network", f"Type the circuit between the terminals of the cell. {HOW}"),
        (
            {"network": "R1 2 + R2 3 || R3 4"},
            "network",
            "After “R2 3” the text goes on with “||”: in series and in parallel stand side by side. Put brackets round"
            " the parts that belong together, as in R1 2 Ω in series with (R2 4 Ω in parallel with R3 12 Ω).",
        ),
        (
            {"network": "R1 2 in paralel with R2 3"},
            "network",
            "“R1 2 in paralel with R2 3” is not read as a part: “2 in paralel with R2 3” is no resistance. Write its"
            " name and its resistance, as in R2 4 Ω; between two parts write “in series with” or “in parallel with”.",
        ),
        (
            {"network": "R1 2 + (R2 3 || R3 4"},
            "network",
            "The bracket before “R2 3” is never closed. Close it after its last part.",
        ),
        (
            {"network": "R1 2) + R2 3"},
            "network",
            "A bracket closes after “R1 2” that was never opened. Open it, or leave it out.",
        ),
        (
            {"network": "(R1 2) R2 3"},
            "network",
            "Between “)” and “R2 3” it is not said how they are connected. Write “in series with” or “in parallel"
            " with” there.",
        ),
        (
            {"network": "R1 2 in series with"},
            "network",
            f"After “in series with” a part is missing: nothing stands there. {HOW}",
        ),
        ({"network": "|| R1 2"}, "network", f"The circuit begins with “||”. Begin with a part. {HOW}"),
        (
            {"network": "R1 + R2 3"},
            "network",
            "“R1” has no resistance. Write it behind the name, as in R1 2 Ω, or ? where it is to be found.",
        ),
        (
            {"network": "R1 2 + R1 3"},
            "network",
            "Two parts are called R1. Give each a name of its own.",
        ),
        (
            {"network": "switch S1 closed"},
            "network",
            "Short circuit without resistance: the circuit has no resistor and no lamp. Add one, as in R1 2 Ω.",
        ),
        (
            {"network": "R1 2 || switch S1 closed"},
            "network",
            "Short circuit: a closed switch joins the terminals of the cell, and nothing but the cell limits the"
            " current. Never do this. Open the switch, or put it in series with a resistor.",
        ),
        (
            {"network": "voltmeter + R1 2"},
            "network",
            "The voltmeter V1 stands in series: it would let no current through. Put it in parallel with what it"
            " measures, or write at the end: ; voltmeter across R2.",
        ),
        (
            {"network": "ammeter || R1 2"},
            "network",
            "The ammeter A1 stands in parallel: it has no resistance and would short what is beside it. Put it in"
            " series with the part whose current it measures.",
        ),
        (
            {"network": "R1 2; voltmeter V1 across R9"},
            "network",
            "“voltmeter V1 across R9”: the circuit has no R9. Its parts are R1; or write the cell.",
        ),
        (
            {"network": "R1 2; voltmeter V1 reading 13 V across R1"},
            "network",
            "Terminal p.d. cannot exceed emf while the cell supplies current: 13 V is more than 12 V. Correct one"
            " of them.",
        ),
        (
            {"network": "R1 ? carrying 12,5 A"},
            "network",
            "More than the short-circuit current, ε ÷ r: the cell can never drive 12,5 A. Correct it, or the emf and"
            " r.",
        ),
        (
            {"network": "R1 ? taking 40 W", "ask": "missing"},
            "network",
            "No resistance of R₁ takes 40 W: at this place of the circuit a part takes 36,00 W at the most, and that"
            " with 1,00 Ω. Type a smaller power.",
        ),
        (
            {"ask": "V_x", "of": "R9"},
            "of",
            "The circuit has no part “R9” with a resistance. Type one of its names: R1, R2, R3.",
        ),
        (
            {"r": ""},
            "r",
            "The internal resistance is empty and does not follow from these data. Type it; 0 where it may be left"
            " out.",
        ),
        (
            {"network": "ammeter reading 2 A + R1 5", "ask": "I"},
            "ask",
            "This is given already, as a reading in the text. Pick something else to find.",
        ),
    ],
)
def test_what_is_refused_and_why(typed: dict[str, str], field: str, sentence: str) -> None:
    """Each wrong text is answered by what is wrong, where, and what to do."""
    assert refusal(**typed) == (field, sentence)


@pytest.mark.parametrize(
    ("network", "sentence"),
    [
        (
            "ammeter A1 reading 6 V + R1 2",
            "“ammeter A1 reading 6 V”: an ammeter reads a current, such as 2 A. Correct it.",
        ),
        (
            "R1 2; voltmeter V1 reading 2 A across R1",
            "“voltmeter V1 reading 2 A”: a voltmeter reads a potential difference, such as 6 V. Correct it.",
        ),
        (
            "switch S1 closed reading 2 A + R1 2",
            "“switch S1 closed reading 2 A”: a switch has no reading. Correct it.",
        ),
        (
            "S1 4 Ω + R1 2",
            "“S1 4 Ω”: a switch has no resistance here. Write for example “switch S open” or “switch S closed”.",
        ),
        (
            "R1 2 reading 3 kg",
            "“R1 2 reading 3 kg”: “3 kg” is no reading. Write a current, a voltage or a power with its unit: 2 A, 6 V,"
            " 9 W.",
        ),
        ("R1 2 taking 0 W", "“R1 2 taking 0 W”: a reading is a size greater than zero. Correct “0 W”."),
        ("R1 -2", "“R1 -2”: a resistance cannot be negative. Leave the minus sign out."),
        ("R1 0", "“R1 0” has no resistance at all. For a plain wire write “switch closed”, or leave it out."),
        (
            "R1 2; lamp L1 3 across R1",
            "“lamp L1 3 across R1”: only a voltmeter is put across a part. Write voltmeter V1 across R2.",
        ),
        ("R1 2; voltmeter", "“voltmeter”: behind a semicolon stands a voltmeter: write voltmeter V1 across R2."),
        (
            "R1 2 voltmeter across R1",
            "“across R1” stands inside the circuit. Write the voltmeter at the end, behind a semicolon, as in R1 2 Ω in"
            " series with R2 4 Ω; voltmeter V1 across R2.",
        ),
        (" + ".join(["R 1"] * 13), "At most 12 parts can be drawn and worked. Leave some out."),
    ],
)
def test_what_no_part_is_like(network: str, sentence: str) -> None:
    """A reading of the wrong kind, a size where none can be, a meter that measures nothing."""
    assert refusal(network=network) == ("network", sentence)


def test_a_switch_is_open_or_closed_by_either_word() -> None:
    """The word before or behind the name; closed where none stands."""
    text = "open switch S1 + switch S2 open + closed switch S3 + S4 closed + S5 + R1 1"
    assert [one.closed for one in read_network(text).elements[:5]] == [False, False, True, True, True]


def test_the_story_tells_every_part() -> None:
    """Kinds, sizes and meters of a circuit in one sentence; what is asked is of unknown resistance."""
    text = "open switch S1 + (rheostat R1 10 Ω || lamp L1 4 Ω) + ammeter A1; voltmeter V1 across L1"
    told = solve(network=f"R9 2 || ({text.split(';', maxsplit=1)[0]}); {text.split('; ')[1]}").story
    told = told.replace("\N{NO-BREAK SPACE}", " ")
    assert (
        "a resistor R₉ of 2 Ω in parallel with (an open switch S₁ in series with (a rheostat R₁ of 10 Ω in parallel"
        " with a lamp L₁ of 4 Ω) in series with an ammeter A₁). Voltmeter V₁ is connected across L₁."
    ) in told
    assert "a resistor R₁ of unknown resistance" in solve(network="R1 ? taking 20 W", ask="missing").story


def test_readings_at_their_limits_are_taken() -> None:
    """The emf itself at the terminals of an ideal cell, and the short-circuit current through next to nothing."""
    assert solve(network="R1 4; voltmeter V1 reading 12 V across R1", r="0").values["I"] == pytest.approx(3)
    assert refusal(network="ammeter A1 reading 12,1 A + R1 ?", ask="missing")[1].startswith(
        "More than the short-circuit"
    )


def test_readings_that_no_resistance_gives_are_refused() -> None:
    """A voltmeter in parallel that leaves less than nothing for the unknown in series, or for the cell."""
    assert refusal(network="R1 ? + (R2 4 || R3 12); voltmeter reading 11,9 V across R2", ask="missing") == (
        None,
        "No resistance fits these readings: it would come out as zero or less. In parallel the combined resistance is"
        " smaller than each branch, and no reading exceeds what the emf gives. Compare the readings.",
    )
    assert refusal(network="ammeter A1 reading 4 A + R1 4", r="", ask="missing") == (
        None,
        "No internal resistance fits these readings: it would come out below zero. Compare emf, readings and"
        " resistances.",
    )


def test_the_power_balance_sees_a_wrong_value() -> None:
    """It holds for the values found, and no longer where a current or a potential difference is a thousandth off."""
    _, question = find("circuits.network")
    (check,), values = question.plan(read(question, dict(question.example)).data).checks, dict(solve().values)
    assert check.holds is not None
    assert check.holds(values)
    for name in ("I", "V1", "V_p"):
        assert not check.holds({**values, name: values[name] * 1.001})


def test_a_cell_without_internal_resistance_is_told_so() -> None:
    """r = 0 is left out of the story's sums, and of the words of the balance."""
    found = solve(r="0 Ω")
    assert "The internal resistance may be left out." in found.story
    assert "all parts take" in found.checks[0].words
    assert "the cell itself" not in found.checks[0].words


# --- switches and meters ---


def test_an_open_branch_carries_nothing() -> None:
    """With the switch of its branch open R3 is as if it were not there; a note says why."""
    found = solve(network="R1 2 + (R2 4 || (S1 open + R3 12))")
    assert found.values["I"] == pytest.approx(12 / 7)
    assert found.values["V_ext"] == pytest.approx(12 - 12 / 7)
    assert "No current passes R₃: its branch is open." in found.notes


def test_a_closed_switch_passes_by_what_is_beside_it() -> None:
    """A part with a closed switch across it carries no current."""
    found = solve(network="R1 5 + (R2 4 || S1 closed)")
    assert found.values["I"] == pytest.approx(2)
    assert "No current passes R₂: a closed switch lies across it." in found.notes


def test_an_open_circuit_shows_the_emf() -> None:
    """Main switch open: no current, the terminals and the switch show the emf, resistors nothing."""
    found = solve(network="S1 open + R1 2 Ω")
    assert [(part.key, part.kind, part.marks) for part in found.parts] == [("open", "explain", 3)]
    words = [point.words.replace("\N{NO-BREAK SPACE}", " ") for part in found.parts for point in part.points]
    assert words == [
        "The current is zero everywhere: the circuit is open.",
        "The terminal potential difference equals the emf, 12 V: without current there are no lost volts.",
        "Across the open switch S₁ it is 12 V as well; across resistors and lamps it is zero.",
    ]


def test_meters_change_nothing() -> None:
    """Ammeters and voltmeters put in leave every value as it was."""
    plain = solve().values
    metered = solve(
        network="ammeter + R1 2 + ((R2 4 + ammeter A2) || R3 12 || voltmeter V9); V1 across R1; V2 across the cell"
    ).values
    assert {name: metered[name] for name in plain} == pytest.approx(dict(plain))


@pytest.mark.parametrize("count", [1, 4, 6, 9, 12])
def test_wires_end_at_the_symbols(count: int) -> None:
    """However many resistors and lamps stand in a row, no wire is drawn inside the box of one."""
    row = " + ".join(f"{'R' if n % 3 else 'L'}{n} {n} Ω" for n in range(1, count + 1))
    topic, question = find("circuits.network")
    figure = work(topic, question, read(question, {**question.example, "network": row})).figure
    assert figure is not None
    strokes = [shape for shape in layout(figure).shapes if isinstance(shape, Stroke)]
    boxes = [shape.paths[0] for shape in strokes if shape.style == "symbol" and shape.closed]
    assert len(boxes) == count - count // 3 + 1  # and the internal resistance
    wires = [point for shape in strokes if shape.style == "wire" for path in shape.paths for point in path]
    for box in boxes:
        left, right = min(x for x, _ in box), max(x for x, _ in box)
        low, high = min(y for _, y in box), max(y for _, y in box)
        assert not [1 for x, y in wires if left + 0.1 < x < right - 0.1 and low < y < high]


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        (
            {"network": "R1 5 carrying 2 A; voltmeter V1 reading 9 V across R1; V2 reading 9,2 V across R1"},
            "network",
            "Two readings tell the same quantity, 9 V and 9,2 V. Leave one of them out.",
        ),
        (
            {"network": "R1 2 + (R2 4 || (S1 open + R3 5))", "ask": "I_x", "of": "R3"},
            "of",
            "No current passes R₃: its current, potential difference and power are zero. Pick another part.",
        ),
    ],
)
def test_what_cannot_be_asked_or_told_twice(typed: dict[str, str], field: str, sentence: str) -> None:
    """A reading that contradicts another by more than a hundredth; a part without current."""
    assert refusal(**typed) == (field, sentence)


def test_readings_may_differ_by_a_rounding() -> None:
    """9 V and 9,05 V across one resistor are one reading."""
    text = "ammeter A1 reading 2 A + R1 4,5; voltmeter V1 reading 9 V across R1; V2 reading 9,05 V across R1"
    assert solve(network=text, r="", ask="missing").values["r"] == pytest.approx(1.5)


def test_how_groups_are_asked_for() -> None:
    """A group of single parts is in series or in parallel, one of groups is taken together; without a name the last."""
    asks = [part.ask for part in solve(network="R1 2 + (R2 4 || (R3 5 + R4 6))").parts]
    assert "Calculate the potential difference across R₂, R₃ and R₄ together." in asks
    assert "Calculate the current in R₃ and R₄ in series." in asks
    assert [part.ask for part in solve(ask="I_x").parts] == ["Calculate the current in R₃."]


def test_both_resistances_of_a_power_are_asked() -> None:
    """20 W in series with 4 Ω, from 24 V and 1 Ω: two parts, and the power comes out for each of the roots."""
    found = solve(network="R1 ? taking 20 W + R2 4", epsilon="24 V", ask="missing")
    assert [(part.kind, part.ask) for part in found.parts] == [
        ("calculate", "Calculate the resistance of R₁."),
        ("calculate", "Calculate the other resistance with which R₁ takes the same power."),
    ]
    for one in (found.values["R1"], found.values["R1_after"]):
        assert (24 / (5 + one)) ** 2 * one == pytest.approx(20)
    most = solve(network="R1 ? taking 28,8 W + R2 4", epsilon="24 V", ask="missing").values
    assert most["R1"] == pytest.approx(5, rel=1e-6)  # ε²/4r, with 5 Ω for r: the one root there is


def test_an_ammeter_belongs_to_what_is_left_of_its_branch() -> None:
    """With the other branch open, both ammeters read the one current there is."""
    text = "ammeter A1 + R1 2 + ((ammeter A2 + R2 4 + R3 1) || (S1 open + R4 5))"
    asks = [part.ask for part in solve(network=text).parts]
    assert "Calculate the total current, shown by ammeter A₁ and ammeter A₂." in asks
