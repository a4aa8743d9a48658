"""Coulomb's law against published examples, an algebra system and the laws it must keep."""

import json
import math

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from calc import desk
from calc.figures import Arrow, Sphere
from calc.model.answers import WorkedAnswer
from calc.model.constants import Settings
from calc.model.questions import Refusal
from calc.renderings import html, latex, text
from calc.topics import find
from calc.topics.shared.electrostatics import POINT_CHARGES
from calc.working.reading import read
from calc.working.working import work


def solve(key: str, find_: str = "", settings: Settings | None = None, **typed: str) -> WorkedAnswer:
    """The worked answer of ``coulomb.key`` for typed data."""
    topic, question = find(f"coulomb.{key}")
    return work(topic, question, read(question, typed, find_, settings))


# OpenStax, University Physics Volume 2, section 5.3, first worked example (hydrogen atom), CC BY 4.0:
# 8.25e-8 N with e = 1.602e-19 C and ε₀ = 8.85e-12. The second row: OpenStax, College Physics, same
# atom with k = 8.99e9: 8.19e-8 N.
@pytest.mark.parametrize(
    ("charge", "r", "k", "published", "tolerance"),
    [
        ("1,602e-19 C", "5,29e-11 m", 1 / (4 * math.pi * 8.85e-12), 8.25e-8, 6.1e-4),
        ("1,6e-19 C", "5,3e-11 m", 8.99e9, 8.19e-8, 2e-3),
    ],
)
def test_the_hydrogen_atom_of_two_textbooks(charge: str, r: str, k: float, published: float, tolerance: float) -> None:
    """The published attraction of proton and electron comes out."""
    worked = solve("force", settings=Settings({"k": k}), Q1=charge, Q2=f"-{charge}", r=r)
    assert worked.answers[0].value == pytest.approx(published, rel=tolerance)
    assert worked.answers[0].direction.key == "attract"


def test_excess_electrons_of_a_textbook_problem() -> None:
    """OpenStax, University Physics Volume 2, section 5.1, problem 5(a): −2.00 nC is 1.248e10 electrons."""
    worked = solve("electrons", settings=Settings({"e": 1 / 6.242e18}), Q="-2 nC")
    assert worked.answers[0].value == pytest.approx(1.248e10, rel=4e-4)


def test_equal_halves_repel_most() -> None:
    """OpenStax, University Physics Volume 2, section 5.3, problem 10: a total charge repels most when halved."""
    forces = {n: solve("force", Q1=f"{n} nC", Q2=f"{20 - n} nC", r="10 cm").answers[0].value for n in range(1, 20)}
    assert max(forces, key=forces.get) == 10


def test_reference_case_sharing() -> None:
    """+6 and −2 nC at 0,15 m, recomputed with school constants (common practice, no source)."""
    worked = solve("contact", Q1="6 nC", Q2="-2 nC", r="0,15 m")
    before, shared, electrons, after = (answer.value for answer in worked.answers)
    assert before == pytest.approx(4.80e-6)
    assert shared == pytest.approx(2e-9)
    assert electrons == pytest.approx(2.5e10)
    assert after == pytest.approx(1.60e-6)
    assert worked.answers[2].direction.key == "B-to-A"


def test_one_microcoulomb_at_one_metre_is_nine_millinewtons() -> None:
    """The number every teacher carries in the head (common practice, no source)."""
    assert solve("force", Q1="1 µC", Q2="1 µC", r="1 m").answers[0].value == pytest.approx(9e-3)


@pytest.mark.parametrize("unknown", POINT_CHARGES.names)
def test_rearrangements_are_those_of_an_algebra_system(unknown: str) -> None:
    """sympy, solving the law for each quantity, gives our line."""
    k, q1, q2, r, f = names = sympy.symbols("k Q1 Q2 r F", positive=True)
    law = sympy.Eq(f, k * q1 * q2 / r**2)
    (solution,) = sympy.solve(law, sympy.Symbol(unknown, positive=True))
    ours = sympy.sympify(
        POINT_CHARGES.step(unknown).make.split("=")[1].replace("^", "**"),
        locals={str(n): n for n in names},
    )
    assert sympy.simplify(solution - ours) == 0


CHARGES = st.integers(-90, 90).filter(bool)
LENGTHS = st.integers(1, 200)


@given(CHARGES, CHARGES, LENGTHS)
def test_swapping_the_charges_changes_nothing(q1: int, q2: int, r: int) -> None:
    """The forces on the two spheres are a pair: same size, same kind."""
    one = solve("force", Q1=f"{q1} nC", Q2=f"{q2} nC", r=f"{r} cm").answers[0]
    other = solve("force", Q1=f"{q2} nC", Q2=f"{q1} nC", r=f"{r} cm").answers[0]
    assert one.value == pytest.approx(other.value, rel=1e-15)
    assert one.direction == other.direction
    assert one.direction.key == ("repel" if q1 * q2 > 0 else "attract")


@given(CHARGES, CHARGES, LENGTHS)
def test_doubling_charges_and_distance_changes_nothing(q1: int, q2: int, r: int) -> None:
    """Both charges doubled: four times the force; the distance doubled as well: the first force."""
    one = solve("force", Q1=f"{q1} nC", Q2=f"{q2} nC", r=f"{r} cm").answers[0].value
    charges = solve("force", Q1=f"{2 * q1} nC", Q2=f"{2 * q2} nC", r=f"{r} cm").answers[0].value
    both = solve("force", Q1=f"{2 * q1} nC", Q2=f"{2 * q2} nC", r=f"{2 * r} cm").answers[0].value
    assert charges == pytest.approx(4 * one, rel=1e-12)
    assert both == pytest.approx(one, rel=1e-12)


@given(CHARGES, CHARGES)
def test_sharing_conserves_charge_and_counts_whole_moves(q1: int, q2: int) -> None:
    """What is on both spheres stays; equal charges are refused because nothing would move."""
    if q1 == q2:
        with pytest.raises(Refusal, match="already equal"):
            solve("contact", Q1=f"{q1} nC", Q2=f"{q2} nC", r="10 cm")
        return
    values = solve("contact", Q1=f"{q1} nC", Q2=f"{q2} nC", r="10 cm").values
    assert 2 * values["Q_new"] == pytest.approx(values["Q1"] + values["Q2"], abs=1e-24)
    assert values["n"] * 1.6e-19 == pytest.approx(abs(q1 - q2) / 2 * 1e-9, rel=1e-9)


@given(st.integers(1, 60), st.integers(-60, -1), st.integers(2, 90))
def test_two_forces_give_the_charges_back(q1: int, q2: int, r: int) -> None:
    """From the forces of known charges the same charges are found (up to both signs and their order)."""
    if q1 + q2 == 0:
        return
    k, metres = 9e9, r / 100
    f1 = k * q1 * -q2 * 1e-18 / metres**2
    f2 = k * ((q1 + q2) * 1e-9 / 2) ** 2 / metres**2
    values = solve("two-forces", F_1=f"{f1!r} N", F_2=f"{f2!r} N", r=f"{r} cm", acting="attract").values
    found = sorted((values["Q1"] * 1e9, values["Q2"] * 1e9))
    expected = sorted((q1, q2)) if q1 + q2 > 0 else sorted((-q1, -q2))
    assert found == pytest.approx(expected, rel=1e-5, abs=1e-5)


@pytest.mark.parametrize(
    ("key", "typed", "find_", "field", "sentence"),
    [
        (
            "force",
            {"Q1": "0 C", "F": "1 N", "r": "1 m"},
            "Q2",
            "Q1",
            "A zero charge gives no force, so this cannot be found.",
        ),
        (
            "electrons",
            {"Q": "0 C"},
            "n",
            "Q",
            "A neutral body has no electrons too many or too few. Type a charge that is not zero.",
        ),
        (
            "two-forces",
            {"F_1": "9 µN", "F_2": "4 µN", "r": "10 cm", "acting": "repel"},
            "",
            "F_2",
            (
                "No real charges fit: like charges repel at least as strongly after sharing. "
                "Make the second force larger, or let them attract at first."
            ),
        ),
    ],
)
def test_impossible_data_are_refused_with_the_reason(
    key: str, typed: dict, find_: str, field: str, sentence: str
) -> None:
    """Each refusal stands at its field and says why."""
    with pytest.raises(Refusal) as caught:
        solve(key, find_, **typed)
    assert (caught.value.field, caught.value.sentence) == (field, sentence)


def test_a_charge_asked_for_gets_its_sign_from_the_kind_of_force() -> None:
    """A repelled by a negative charge is negative."""
    worked = solve("force", "Q1", Q2="-4 nC", r="30 cm", F="2 µN", acting="repel")
    assert worked.answers[0].direction.key == "negative"


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"Q1": "4 nC", "Q2": "5 nC", "r": "6 cm", "R": "3 cm"}, "r"),
        ({"Q1": "4 nC", "Q2": "5 nC", "F": "9 N", "R": "3 cm"}, "R"),
    ],
)
def test_spheres_may_not_overlap(typed: dict, field: str) -> None:
    """Centres no further apart than two radii are refused, given or found."""
    with pytest.raises(Refusal) as caught:
        solve("force", **typed)
    assert caught.value.field == field
    assert (
        caught.value.sentence == "The spheres would touch or overlap: their centres must be more than two radii apart."
    )


def test_the_gap_between_surfaces_is_a_known_mistake() -> None:
    """A force from the gap instead of the distance between centres is named as such."""
    inputs = {"Q1": "4 nC", "Q2": "5 nC", "r": "10 cm", "R": "2 cm"}
    gap = 9e9 * 4e-9 * 5e-9 / 0.06**2
    data = {"question": "coulomb.force", "inputs": inputs, "find": "F"}
    request = {**data, "answers": {"find": {"value": f"{gap:.3g} N", "direction": "repel"}}}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": request})))
    found = next(part for part in reply["data"]["parts"] if part["part"] == "find")
    assert found["state"] == "mistake"
    assert found["fits"][0]["keys"] == ["surface@r"]


def test_opposite_equal_charges_leave_nothing() -> None:
    """After the touch there is no charge, and no part asks for a force."""
    worked = solve("contact", Q1="4 nC", Q2="-4 nC", r="10 cm")
    assert [part.key for part in worked.parts] == ["law", "before", "shared", "electrons"]
    assert any("cancel" in note for note in worked.notes)


@pytest.mark.parametrize("name", ["Q1", "Q2"])
def test_a_zero_force_means_a_zero_charge_without_a_sign(name: str) -> None:
    """No force at a known distance from a charge: the other charge is zero, and has no sign."""
    other = {"Q1": "Q2", "Q2": "Q1"}[name]
    worked = solve("force", name, **{other: "6 nC"}, F="0 N", r="10 cm")
    answer = worked.answers[0]
    assert (answer.shown.text, answer.direction) == ("0\N{NO-BREAK SPACE}C", None)
    assert worked.notes == ("A body without charge feels no electrostatic force; a charge of zero has no sign.",)
    assert f"{'A' if name == 'Q1' else 'B'} (uncharged)" in worked.figure.description


@pytest.mark.parametrize("acting", ["attract", "repel"])
def test_a_zero_force_neither_attracts_nor_repels(acting: str) -> None:
    """Attraction or repulsion of zero size is a contradiction, refused at the choice that makes it."""
    with pytest.raises(Refusal) as caught:
        solve("force", "Q2", Q1="6 nC", F="0", r="10 cm", acting=acting)
    assert caught.value.field == "acting"
    assert (
        caught.value.sentence == "A force of zero neither attracts nor repels: one of the charges is zero then. "
        "Choose “attract or repel: not said”, or type a force above zero."
    )
    with pytest.raises(Refusal) as caught:
        solve("two-forces", F_1="0 N", F_2="9 µN", r="10 cm", acting=acting)
    assert caught.value.field == "F_1"
    assert (
        caught.value.sentence
        == "A force of zero neither attracts nor repels: one of the charges is zero then. Type a force above zero."
    )


@pytest.mark.parametrize(
    ("after", "told"),
    [("9 µN", "they now repel with 9\N{NO-BREAK SPACE}µN."), ("0 N", "now there is no force between them.")],
)
def test_the_story_of_two_forces_speaks_of_repulsion_only_where_there_is_one(after: str, told: str) -> None:
    """Equal and opposite charges leave no force after the touch, and the story says so."""
    worked = solve("two-forces", F_1="27 µN", F_2=after, r="10 cm", acting="attract")
    assert worked.story.endswith(f"put back at the same distance: {told}")


SIGN_CASES = [
    ("Q1", "-6 nC", "unsaid", ("", "-"), "A (sign not known) and B (negative)."),
    ("Q2", "+6 nC", "unsaid", ("+", ""), "A (positive) and B (sign not known)."),
    ("Q1", "-6 nC", "repel", ("-", "-"), "A (negative) and B (negative)."),
    ("Q1", "-6 nC", "attract", ("+", "-"), "A (positive) and B (negative)."),
    ("Q2", "-6 nC", "repel", ("-", "-"), "A (negative) and B (negative)."),
    ("Q2", "+6 nC", "attract", ("+", "-"), "A (positive) and B (negative)."),
]


@pytest.mark.parametrize(("name", "other", "acting", "signs", "told"), SIGN_CASES)
def test_only_a_known_sign_is_drawn(name: str, other: str, acting: str, signs: tuple[str, str], told: str) -> None:
    """The circle of a charge whose sign nothing tells stays blank, and the words say so."""
    known = {"Q1": "Q2", "Q2": "Q1"}[name]
    worked = solve("force", name, **{known: other}, F="1 µN", r="10 cm", acting=acting)
    drawn = [item.sign for item in worked.figure.items if isinstance(item, Sphere)]
    assert tuple(drawn) == signs
    assert worked.figure.description.startswith(f"From left to right: {told}")


def test_both_charges_are_answers() -> None:
    """A question for the charge on each sphere ends with two answers, in every notation and aloud."""
    worked = solve("two-forces", F_1="27 µN", F_2="9 µN", r="10 cm", acting="attract")
    both = ["Q₁ = 9,49 × 10⁻⁹ C", "Q₂ = −3,16 × 10⁻⁹ C"]
    assert [a.shown.text.replace("\N{NO-BREAK SPACE}", " ") for a in worked.answers] == both
    plain = text.render(worked).replace("\N{NO-BREAK SPACE}", " ")
    assert [line.strip() for line in plain.splitlines() if "Answer" in line] == [f"Answer: {line}" for line in both]
    assert latex.render(worked).count(r"\textbf{Answer:} $Q_{") == 2
    page = html.render(worked)
    assert page.count('<p class="answer">') == 2
    assert "Answer: Q1 is 9,49 times 10 to the power minus 9 coulomb" in page
    assert "Answer: Q2 is minus 3,16 times 10 to the power minus 9 coulomb" in page
    data = {"question": "coulomb.two-forces", "inputs": find("coulomb.two-forces")[1].example}
    reply = json.loads(desk.answer(json.dumps({"operation": "solve", "data": data})))
    assert (
        reply["data"]["spoken"]
        == "Q1 is 9,49 times 10 to the power minus 9 coulombs; Q2 is minus 3,16 times 10 to the power minus 9 coulombs"
    )


def test_both_charges_have_a_box_and_are_marked() -> None:
    """The sheet asks for both charges in the open; the usual full marks are earned with both."""
    question = {
        "question": "coulomb.two-forces",
        "inputs": find("coulomb.two-forces")[1].example,
    }
    sheet = json.loads(desk.answer(json.dumps({"operation": "sheet", "data": question})))["data"]
    shown = sheet["html"].split('<details class="own-working">')[0]
    assert 'name="answers.charges.steps.Q1"' in shown
    assert 'name="answers.charges.value"' in shown
    assert sheet["html"].count('name="answers.charges.steps.Q1"') == 1
    typed = {"value": "-3,16e-9 C", "steps": {"Q1": "9,49e-9 C"}}
    data = {**question, "answers": {"charges": typed}}
    marked = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))["data"]
    assert (marked["earned"], marked["possible"]) == (7, 7)


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        (
            {"a": "2", "b": "1", "d": "3"},
            (
                "One charge is made 2 times as large, the other charge stays the same, and the distance is made 3 times"
                " as large."
            ),
        ),
        (
            {"a": "1", "b": "1", "d": "0,5"},
            "One charge stays the same, the other charge stays the same, and the distance is made 0,5 times as large.",
        ),
    ],
)
def test_a_factor_of_one_is_told_as_no_change(typed: dict[str, str], told: str) -> None:
    """A quantity multiplied by 1 stays the same, in words."""
    worked = solve("scaling", F="36 mN", **typed)
    assert worked.story.endswith(told)


@pytest.mark.parametrize(
    ("variant", "noun"),
    [(0, "small charged spheres"), (1, "charged metal spheres"), (2, "point charges")],
)
def test_the_question_fits_each_wording_of_the_story(variant: int, noun: str) -> None:
    """Asks and answers name A and B, whatever the story calls the two bodies."""
    topic, question = find("coulomb.force")
    worked = work(topic, question, read(question, question.example, variant=variant))
    assert noun in worked.story
    rest = " ".join([*(part.ask for part in worked.parts), worked.answers[0].direction.words, *worked.notes])
    assert not any(word in rest for word in ("sphere", "bead", "ball"))


@pytest.mark.parametrize(("n", "told"), [("1,2 e", "About 1 electron:"), ("2,3 e", "About 2 electrons:")])
def test_a_count_of_one_is_singular(n: str, told: str) -> None:
    """A warning about a part of an electron counts in good English."""
    charge = float(n.removesuffix(" e").replace(",", ".")) * 1.6e-19
    worked = solve("electrons", "n", Q=f"-{charge} C")
    assert any(warning.startswith(told) for warning in worked.warnings)


HIDDEN = [
    ("force", "F", {"Q1": "6 nC", "Q2": "-2 nC", "r": "20 cm"}, "F"),
    ("force", "Q1", {"Q2": "-2 nC", "r": "20 cm", "F": "4 µN", "acting": "attract"}, "F"),
    ("contact", "", {"Q1": "6 nC", "Q2": "-2 nC", "r": "20 cm", "r2": ""}, "F_1"),
    ("contact-back", "F_1", {"Q1": "6 nC", "Q2": "-2 nC", "r": "20 cm"}, "F_1"),
]


@pytest.mark.parametrize(("key", "find_", "typed", "pull"), HIDDEN)
def test_a_force_and_a_sign_can_be_hidden_in_every_picture(
    key: str, find_: str, typed: dict[str, str], pull: str
) -> None:
    """Without the force no arrow is left; without A's charge neither its sign nor the arrows that would tell it."""
    figure = solve(key, find_, **typed).figure
    assert [item.label for item in figure.items if isinstance(item, Arrow)] == [pull, pull]
    without_force = figure.without({pull})
    assert not any(isinstance(item, Arrow) for item in without_force.items)
    assert [item.sign for item in without_force.items if isinstance(item, Sphere)] == ["+", "-"]
    without_charge = figure.without({"Q1"})
    assert not any(isinstance(item, Arrow) for item in without_charge.items)
    assert [item.sign for item in without_charge.items if isinstance(item, Sphere)] == ["", "-"]
    assert "points" not in without_charge.description
    assert "A (positive)" not in without_charge.description


@pytest.mark.parametrize(("key", "find_"), [("sharing", "Q2"), ("three-spheres", "Q_B")])
def test_the_sign_of_an_asked_charge_can_be_hidden_in_a_row(key: str, find_: str) -> None:
    """B's sign goes from the picture and from its words; the others stay."""
    typed = {
        "sharing": {"Q1": "6 nC", "Q_new": "2 nC"},
        "three-spheres": {"Q_A": "6 nC", "Q_C": "4 nC", "Q_BC": "3 nC"},
    }
    figure = solve(key, find_, **typed[key]).figure
    hidden = figure.without({find_})
    signs = [item.sign for item in hidden.items if isinstance(item, Sphere)]
    assert signs == ["+", "", "+"][: len(signs)]
    assert "B (" in figure.description
    assert "B (" not in hidden.description


def test_the_root_that_is_dropped_is_the_other_charge() -> None:
    """Two charges from sum and product: the second root is shown, and it is the charge on B."""
    worked = solve("two-forces", F_1="27 µN", F_2="9 µN", r="10 cm", acting="attract")
    root = next(step for step in worked.parts[0].steps if step.makes == "Q1")
    said = root.method.replace("\N{NO-BREAK SPACE}", " ")
    assert said == "The other root is Q₁ = −3,16 × 10⁻⁹ C. It is the charge on the other sphere."
    assert worked.answers[1].shown.text.replace("\N{NO-BREAK SPACE}", " ") == "Q₂ = −3,16 × 10⁻⁹ C"


def test_the_law_in_plain_words() -> None:
    """Both ways a force can act, what makes it larger and what smaller."""
    (step,) = solve("force", Q1="8 nC", Q2="-5 nC", r="12 cm").parts[-1].steps
    assert step.plain == (
        "Two charged things push or pull each other. More charge on either one makes the force bigger in step; twice as"
        " far apart makes it four times weaker."
    )
