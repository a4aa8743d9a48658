"""Charges shared by contact, two spheres or three in turn, against averages taken with numpy and whole electrons."""

import json

import numpy as np
import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from calc import desk
from calc.figures import Sphere
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.topics import find
from calc.topics.coulomb.sharing import FIRST_TOUCH, SECOND_TOUCH
from calc.topics.coulomb.touch import SHARING
from calc.working.reading import read
from calc.working.working import work

E = 1.6e-19


def solve(key: str, find_: str = "", variant: int = 0, **typed: str) -> WorkedAnswer:
    """The worked answer of ``coulomb.key`` for typed data."""
    topic, question = find(f"coulomb.{key}")
    return work(topic, question, read(question, typed, find_, variant=variant))


def touched(charges: list[float], *pairs: tuple[int, int]) -> tuple[np.ndarray, list[float]]:
    """The charges after each pair of spheres has shared, and the electrons that left the first of each pair."""
    now, left = np.array(charges), []
    for pair in pairs:
        before = now[pair[0]]
        now[list(pair)] = now[list(pair)].mean()
        left.append((now[pair[0]] - before) / E)
    return now, left


CHARGES = st.integers(-80, 80)


@given(CHARGES, CHARGES, CHARGES)
def test_three_spheres_share_as_averages_do(a: int, b: int, c: int) -> None:
    """Charges at the end and electrons of each touch, counted by hand with numpy."""
    charges = [a * 1e-9, b * 1e-9, c * 1e-9]
    after, (first, second) = touched(charges, (0, 1), (1, 2))
    typed = {"Q_A": f"{a} nC", "Q_B": f"{b} nC", "Q_C": f"{c} nC"}
    if a == b or a + b == 2 * c:
        with pytest.raises(Refusal, match="already equal"):
            solve("three-spheres", **typed)
        return
    worked = solve("three-spheres", **typed)
    assert worked.values["Q_AB"] == pytest.approx(after[0], rel=1e-9, abs=1e-21)
    assert worked.values["Q_BC"] == pytest.approx(after[2], rel=1e-9, abs=1e-21)
    assert worked.values["n_1"] == pytest.approx(abs(first), rel=1e-9)
    assert worked.values["n_2"] == pytest.approx(abs(second), rel=1e-9)
    ways = {part.key: part.answer.direction.key for part in worked.parts if part.key.startswith("el")}
    # The sphere whose charge rises has lost electrons.
    assert ways["electrons-1"] == ("A-to-B" if first > 0 else "B-to-A")
    assert ways["electrons-2"] == ("B-to-C" if second > 0 else "C-to-B")


@given(CHARGES, CHARGES, CHARGES, st.sampled_from(["Q_A", "Q_B", "Q_C"]))
def test_any_first_charge_of_three_comes_back(a: int, b: int, c: int, unknown: str) -> None:
    """From the charge at the end and two of the first ones, the third."""
    if a == b or a + b == 2 * c:
        return
    charges = {"Q_A": a, "Q_B": b, "Q_C": c}
    typed = {name: f"{value} nC" for name, value in charges.items() if name != unknown}
    end = (a + b) / 4 + c / 2
    worked = solve("three-spheres", unknown, Q_BC=f"{end!r} nC", **typed)
    assert worked.values[unknown] == pytest.approx(charges[unknown] * 1e-9, rel=1e-9, abs=1e-20)
    assert worked.unproven == ()


@given(CHARGES, CHARGES, st.sampled_from(["Q1", "Q2", "Q_new"]))
def test_any_charge_of_two_comes_back(a: int, b: int, unknown: str) -> None:
    """Any of the three charges follows from the other two, and the electrons with it."""
    if a == b:
        return
    charges = {"Q1": float(a), "Q2": float(b), "Q_new": (a + b) / 2}
    typed = {name: f"{value!r} nC" for name, value in charges.items() if name != unknown}
    worked = solve("sharing", unknown, **typed)
    assert worked.values[unknown] == pytest.approx(charges[unknown] * 1e-9, rel=1e-9, abs=1e-20)
    assert worked.values["n"] == pytest.approx(abs(a - b) * 1e-9 / 2 / E, rel=1e-9)
    assert worked.parts[-1].answer.direction.key == ("A-to-B" if a < b else "B-to-A")


@pytest.mark.parametrize("relation", [SHARING, FIRST_TOUCH, SECOND_TOUCH])
def test_sharing_turned_round_is_that_of_an_algebra_system(relation: object) -> None:
    """sympy solves each law of sharing for each charge as the steps do."""
    left, right = (sympy.sympify(side) for side in relation.law.split("="))
    for name in relation.names:
        (solution,) = sympy.solve(sympy.Eq(left, right), sympy.Symbol(name))
        assert sympy.simplify(solution - sympy.sympify(relation.step(name).how)) == 0


def test_sharing_is_told_in_words() -> None:
    """The story of two spheres names every datum, and the directions say sign and way."""
    worked = solve("sharing", "Q2", variant=1, Q1="-8 nC", Q_new="-1,5 nC")
    assert (
        worked.story.replace("\N{NO-BREAK SPACE}", " ")
        == "A and B are equal metal spheres on glass rods. At first A carries −8 nC. "
        "They are brought together and taken apart again. Afterwards each carries −1,5 nC."
    )
    assert [part.ask for part in worked.parts] == [
        "State the conservation of charge in words.",
        "Calculate the charge that B carried before the touch.",
        "Calculate how many electrons moved, and say from which sphere to which.",
    ]
    answers = [answer.direction.words for answer in worked.answers]
    assert answers == ["positive charge", "electrons move from A to B"]


@pytest.mark.parametrize("variant", [0, 1, 2])
def test_three_spheres_are_told_in_three_ways(variant: int) -> None:
    """Each wording names the charges, both touches and, where it is given, the end."""
    worked = solve("three-spheres", "Q_B", variant, Q_A="6 nC", Q_C="-4 nC", Q_BC="2 nC")
    story = worked.story.replace("\N{NO-BREAK SPACE}", " ")
    assert "At the start the charges are: A +6 nC and C −4 nC." in story
    assert story.endswith("After the second touch B and C each carry +2 nC.")
    touches = (
        ("A touches B", "B touches C"),
        ("A and B are", "B and C"),
        ("against A", "against C"),
    )
    assert all(told in story for told in touches[variant])


NOT_ONE = (
    "This comes to less than the charge of one electron, and no body carries less. "
    "Check the sizes, the prefixes and the powers of ten."
)
EQUAL = "The charges are already equal: nothing would move. Change one of them."


@pytest.mark.parametrize(
    ("key", "typed", "find_", "field", "sentence"),
    [
        ("sharing", {"Q1": "4 nC", "Q2": "4 nC"}, "Q_new", "Q2", EQUAL),
        ("sharing", {"Q1": "4 nC", "Q_new": "4 nC"}, "Q2", "Q_new", EQUAL),
        ("sharing", {"Q1": "1,6e-19 C", "Q2": "0 C"}, "Q_new", "Q2", NOT_ONE),
        ("three-spheres", {"Q_A": "2 nC", "Q_B": "2 nC", "Q_C": "5 nC"}, "Q_BC", "Q_B", EQUAL),
        ("three-spheres", {"Q_A": "6 nC", "Q_B": "2 nC", "Q_C": "4 nC"}, "Q_BC", "Q_C", EQUAL),
        ("three-spheres", {"Q_A": "6 nC", "Q_B": "2 nC", "Q_BC": "4 nC"}, "Q_C", "Q_BC", EQUAL),
    ],
)
def test_a_touch_that_moves_nothing_is_refused(
    key: str, typed: dict[str, str], find_: str, field: str, sentence: str
) -> None:
    """The refusal stands at the box that can be changed."""
    with pytest.raises(Refusal) as caught:
        solve(key, find_, **typed)
    assert (caught.value.field, caught.value.sentence) == (field, sentence)


def test_three_spheres_are_drawn_with_their_signs() -> None:
    """A, B and C stand from left to right with the signs they start with."""
    worked = solve("three-spheres", Q_A="8 nC", Q_B="-2 nC", Q_C="0 nC")
    drawn = [(item.label, item.sign) for item in worked.figure.items if isinstance(item, Sphere)]
    assert drawn == [("A", "+"), ("B", "-"), ("C", "")]


def test_the_slips_of_a_second_touch_are_known() -> None:
    """A first touch forgotten and a total shared by three have sentences of their own."""
    _, question = find("coulomb.three-spheres")
    plan = question.plan(read(question, question.example).data)
    slips = {m.key: m.said for m in plan.part("find").steps[0].mistakes}
    assert slips["first-touch-forgotten"] == (
        "You used Q_B, the charge B began with. The first touch changed it: use Q_AB."
    )
    assert slips["shared-by-three"] == (
        "You divided the charge of all three by three. Only two spheres touch at a time: halve Q_AB + Q_C."
    )


@pytest.mark.parametrize(("electrons", "warned"), [(99.5, True), (99.05, False), (100.5, False)])
def test_few_electrons_that_are_no_whole_number_are_pointed_out(electrons: float, warned: bool) -> None:
    """Below a hundred, and more than a tenth from a whole number: the data do not fit well."""
    worked = solve("sharing", Q1=f"{2 * electrons * E!r} C", Q2="0 C")
    about = f"About {round(electrons)} electrons: a charge is a whole number of electron charges, so check the data."
    assert [w for w in worked.warnings if w.startswith("About")] == ([about] if warned else [])


@pytest.mark.parametrize(("electrons", "refused"), [(0.89, True), (0.91, False)])
def test_less_than_one_electron_cannot_move(electrons: float, refused: bool) -> None:
    """A touch that would move a part of an electron is refused; rounding of one whole electron is let pass."""
    typed = {"Q1": f"{2 * electrons * E!r} C", "Q2": "0 C"}
    if not refused:
        assert solve("sharing", **typed).values["n"] == pytest.approx(electrons)
        return
    with pytest.raises(Refusal) as caught:
        solve("sharing", **typed)
    assert caught.value.sentence == NOT_ONE


@given(CHARGES, CHARGES, CHARGES)
def test_a_third_touch_goes_on_from_the_second(a: int, b: int, c: int) -> None:
    """C touches A in the end: the averages of numpy again, and the electrons' way."""
    if a == b or a + b == 2 * c:
        return
    after, moves = touched([a * 1e-9, b * 1e-9, c * 1e-9], (0, 1), (1, 2), (2, 0))
    worked = solve("three-spheres", Q_A=f"{a} nC", Q_B=f"{b} nC", Q_C=f"{c} nC", then="third")
    assert worked.values["Q_CA"] == pytest.approx(after[0], rel=1e-9, abs=1e-20)
    assert worked.values["n_3"] == pytest.approx(abs(moves[2]), rel=1e-9)
    assert worked.parts[-1].answer.direction.key == ("C-to-A" if moves[2] > 0 else "A-to-C")
    assert worked.story.endswith("In the end C touches A.")
    assert worked.unproven == ()


@pytest.mark.parametrize(("said", "earned"), [("B-to-A", 3), ("A-to-B", 2)])
def test_a_wrong_charge_afterwards_does_not_turn_the_electrons_round(said: str, earned: int) -> None:
    """Electrons leave the more negative sphere: after 10 nC for 2 nC it is still B; the count is carried on."""
    inputs = {"Q1": "+7 nC", "Q2": "-3 nC", "Q_new": ""}
    answers = {
        "find": {"value": "10e-9 C", "direction": "positive"},
        "electrons": {"value": "1,875e10", "direction": said},
    }
    data = {"question": "coulomb.sharing", "inputs": inputs, "find": "Q_new", "answers": answers}
    marked = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))["data"]
    assert next(part for part in marked["parts"] if part["part"] == "electrons")["earned"] == earned


def test_the_way_of_each_touch_follows_the_two_that_touch() -> None:
    """A at −6 nC gives to B at 2 nC; then B at −2 nC takes from C at −8 nC; then C at −5 nC gives to A at −2 nC."""
    worked = solve("three-spheres", Q_A="-6 nC", Q_B="2 nC", Q_C="-8 nC", then="third")
    ways = [part.answer.direction.key for part in worked.parts if part.key.startswith("electrons")]
    assert ways == ["A-to-B", "C-to-B", "C-to-A"]
