"""A touch worked backwards, and factors: every set of givens that leads to an answer must give the right one."""

import itertools
import math

import pytest
import sympy

from calc.figures import Sphere
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.topics import find
from calc.working.reading import read
from calc.working.working import run, work

K = 9.0e9


def solve(key: str, find_: str = "", variant: int = 0, **typed: str) -> WorkedAnswer:
    """The worked answer of ``coulomb.key`` for typed data."""
    topic, question = find(f"coulomb.{key}")
    return work(topic, question, read(question, typed, find_, variant=variant))


def plain(text: str) -> str:
    """Ordinary spaces."""
    return text.replace("\N{NO-BREAK SPACE}", " ")


def touched(q1: float, q2: float, r: float, r2: float) -> dict[str, float]:
    """All seven quantities of a touch, worked here from first principles (nC, cm)."""
    one, two = q1 * 1e-9, q2 * 1e-9
    new = (one + two) / 2
    return {
        "Q1": one,
        "Q2": two,
        "r": r / 100,
        "F_1": K * abs(one * two) / (r / 100) ** 2,
        "Q_new": new,
        "r2": r2 / 100,
        "F_2": K * new**2 / (r2 / 100) ** 2,
    }


UNITS = {"Q1": "C", "Q2": "C", "r": "m", "F_1": "N", "Q_new": "C", "r2": "m", "F_2": "N"}
CASES = [(6, -2, 20, 10), (-9, 4, 15, 15), (3, 8, 12, 30), (-2, -7, 25, 8)]


@pytest.mark.parametrize("case", CASES)
def test_every_set_of_givens_leads_to_the_true_value_or_is_refused(case: tuple[float, ...]) -> None:
    """All sets of two to four quantities, each other one asked: the true value, or the charges the other way round."""
    true = touched(*case)
    _, question = find("coulomb.contact-back")
    told = {
        "acting": "repel" if true["Q1"] * true["Q2"] > 0 else "attract",
        "after": "positive" if true["Q_new"] > 0 else "negative",
    }
    answered, refused = dict.fromkeys(UNITS, 0), set[str]()
    for count in (2, 3, 4):
        for given in itertools.combinations(UNITS, count):
            typed = {name: f"{true[name]!r} {UNITS[name]}" for name in given}
            for asked in UNITS.keys() - set(given):
                try:
                    data = read(question, {**typed, **told}, asked).data
                    plan = question.plan(data)
                except Refusal as refusal:
                    refused.add(refusal.sentence.partition(".")[0])
                    continue
                value = run(plan, data.settings.constants())[asked]
                swapped = {"Q1": "Q2", "Q2": "Q1"}.get(asked, asked)
                known = {"Q1", "Q2"} & set(given)
                right = [true[asked]] if known else [true[asked], true[swapped]]
                assert any(math.isclose(value, one, rel_tol=1e-6) for one in right), (given, asked)
                answered[asked] += 1
    assert min(answered.values()) >= 10
    assert all(sentence.endswith("does not follow from these data") for sentence in refused)


def test_several_unknowns_become_parts_in_the_order_of_need() -> None:
    """The force before the touch needs A's charge, so that charge is the first part."""
    worked = solve("contact-back", "F_1,Q1", Q2="-2 nC", Q_new="2 nC", r="20 cm")
    assert [part.key for part in worked.parts] == ["law", "find-Q1", "find-F_1", "electrons"]
    assert worked.values["Q1"] == pytest.approx(6e-9)
    assert worked.values["F_1"] == pytest.approx(2.7e-6)
    assert [answer.direction.key for answer in worked.answers] == ["positive", "attract", "B-to-A"]


def test_both_charges_follow_from_one_force_and_the_charge_afterwards() -> None:
    """numpy's roots of x² − 2Q′x + P are the two charges, and the note says that they may be exchanged."""
    import numpy as np

    worked = solve("contact-back", "Q1,Q2", F_1="2,7 µN", r="20 cm", acting="attract", Q_new="2 nC")
    roots = sorted(np.roots([1, -4e-9, -2.7e-6 * 0.2**2 / K]))
    assert [worked.values["Q2"], worked.values["Q1"]] == pytest.approx(roots)
    assert any(note.startswith("The same charges the other way round") for note in worked.notes)


SIZE = "Only the size of a charge follows from a force. "
TOO_STRONG = (
    "No real charges fit: like charges that repel so strongly at first leave more charge on each sphere than this. "
    "Make the first force smaller, or let them attract at first."
)
NO_DISTANCE = (
    "Two charges exert a force on each other however far apart they are: a zero force gives no distance. "
    "Type a force above zero."
)


@pytest.mark.parametrize(
    ("typed", "find_", "field", "sentence"),
    [
        (
            {"Q1": "6 nC", "F_1": "5 µN", "r": "20 cm"},
            "Q2",
            "acting",
            SIZE + "Say whether A and B attract or repel each other before the touch.",
        ),
        (
            {"Q2": "6 nC", "F_2": "5 µN", "r2": "20 cm"},
            "Q1",
            "after",
            SIZE + "Say whether the charges are positive or negative after the touch.",
        ),
        (
            {"Q1": "6 nC", "Q2": "3 nC", "r": "20 cm", "acting": "attract"},
            "F_1",
            "acting",
            "These charges repel each other, so they cannot attract. Choose “repel each other”, or correct a charge.",
        ),
        (
            {"Q1": "6 nC", "Q2": "-3 nC", "r": "20 cm", "acting": "repel"},
            "F_1",
            "acting",
            "These charges attract each other, so they cannot repel. Choose “attract each other”, or correct a charge.",
        ),
        (
            {"Q1": "6 nC", "Q2": "-3 nC", "r2": "20 cm", "after": "negative"},
            "F_2",
            "after",
            "The charges come out positive after the touch, not negative. Choose “positive”, or correct a charge.",
        ),
        (
            {"Q1": "2 nC", "Q2": "-3 nC", "r2": "20 cm", "after": "positive"},
            "F_2",
            "after",
            "The charges come out negative after the touch, not positive. Choose “negative”, or correct a charge.",
        ),
        (
            {"Q1": "0 C", "F_1": "5 µN", "r": "20 cm", "acting": "attract"},
            "Q2",
            "Q1",
            "A zero charge gives no force, so this cannot be found.",
        ),
        ({"F_1": "90 µN", "r": "20 cm", "acting": "repel", "Q_new": "2 nC"}, "Q1", "F_1", TOO_STRONG),
        (
            {"F_1": "90 µN", "r": "20 cm", "acting": "repel", "F_2": "1 µN", "r2": "20 cm", "after": "positive"},
            "Q1",
            "F_1",
            TOO_STRONG,
        ),
        ({"Q1": "6 nC", "Q2": "-3 nC", "F_1": "0 N"}, "r", "F_1", NO_DISTANCE),
        ({"Q1": "6 nC", "Q2": "-6 nC", "F_2": "0 N"}, "r2", "F_2", NO_DISTANCE),
        (
            {"Q1": "6 nC", "r2": "10 cm"},
            "F_2",
            None,
            (
                "The force after the touch (size) does not follow from these data. Add the charge on B before or the"
                " charge on each sphere afterwards."
            ),
        ),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(
    typed: dict[str, str], find_: str, field: str | None, sentence: str
) -> None:
    """Each refusal stands at its box or choice and says what to do."""
    with pytest.raises(Refusal) as caught:
        solve("contact-back", find_, **typed)
    assert (caught.value.field, caught.value.sentence) == (field, sentence)


@pytest.mark.parametrize(
    ("after", "told"),
    [
        ("3,6 µN", "They then repel each other with a force of 3,6 µN. Both are positive then."),
        ("0 N", "There is then no force between them."),
    ],
)
def test_the_end_is_told_as_it_is(after: str, told: str) -> None:
    """With a force afterwards they repel; without one there is none, and no charge."""
    worked = solve("contact-back", "Q1", Q2="-2 nC", r2="10 cm", F_2=after, after="positive")
    assert plain(worked.story).endswith(told)


@pytest.mark.parametrize(("acting", "told"), [("attract", "attract"), ("repel", "repel")])
def test_a_charge_found_from_the_first_force_has_its_sign(acting: str, told: str) -> None:
    """Attracted by −6 nC it is positive, repelled negative; the story and the picture say the same."""
    worked = solve("contact-back", "Q2", Q1="-6 nC", r="20 cm", F_1="5 µN", acting=acting)
    assert f"they {told} each other with a force of 5 µN" in plain(worked.story)
    sign = 1 if acting == "attract" else -1
    assert worked.values["Q2"] == pytest.approx(sign * 5e-6 * 0.04 / (K * 6e-9))
    assert worked.answers[0].direction.key == ("positive" if sign > 0 else "negative")
    drawn = [item.sign for item in worked.figure.items if isinstance(item, Sphere)]
    assert drawn == ["-", "+" if sign > 0 else "-"]


# --- factors ------------------------------------------------------------------------------------------------


# OpenStax, College Physics, chapter 18, problems on Coulomb's law (CC BY 4.0; quoted from memory): 5.00 N at three
# times the distance is 0.556 N; a force 25 times as large means a fifth of the distance.
def test_published_factors() -> None:
    """The force at three times the distance, and the distance for 25 times the force."""
    worked = solve("ratio", "F_new", F="5,00 N", a="1", b="1", d="3")
    assert worked.answers[0].value == pytest.approx(0.556, abs=5e-4)
    worked = solve("ratio", "d", a="1", b="1", f="25")
    assert worked.answers[0].value == pytest.approx(1 / 5)


@pytest.mark.parametrize("relation", find("coulomb.ratio")[1].relations)
def test_factors_turned_round_are_those_of_an_algebra_system(relation: object) -> None:
    """sympy solves each law for each factor as the steps do, and no declared mistake is right."""
    names = {name: sympy.Symbol(name, positive=True) for name in relation.names}
    left, right = (sympy.sympify(side.replace("^", "**"), names) for side in relation.law.split("="))
    for name in relation.names:
        (solution,) = sympy.solve(sympy.Eq(left, right), names[name])
        step = relation.step(name)
        assert sympy.simplify(solution - sympy.sympify(step.how.replace("^", "**"), names)) == 0
        for mistake in step.mistakes:
            wrong = sympy.sympify(mistake.instead.replace("^", "**"), names)
            assert sympy.simplify(solution - wrong) != 0, mistake.key


def test_any_factor_follows_from_the_rest() -> None:
    """Every set of givens: the true factor or force, or a refusal that says what is missing."""
    true = {"a": 3.0, "b": 0.5, "d": 2.5, "F": 0.04}
    true["f"] = true["a"] * true["b"] / true["d"] ** 2
    true["F_new"] = true["f"] * true["F"]
    _, question = find("coulomb.ratio")
    answered, refused = dict.fromkeys(true, 0), set[str]()
    for count in range(1, 6):
        for given in itertools.combinations(true, count):
            typed = {n: f"{true[n]!r}{' N' if n.startswith('F') else ''}" for n in given}
            for asked in true.keys() - set(given):
                try:
                    data = read(question, typed, asked).data
                    plan = question.plan(data)
                except Refusal as refusal:
                    refused.add(refusal.sentence.partition(".")[0])
                    continue
                found = run(plan, data.settings.constants())[asked]
                assert found == pytest.approx(true[asked])
                answered[asked] += 1
    assert min(answered.values()) >= 4
    assert all(sentence.endswith("does not follow from these data") for sentence in refused)


def test_the_distance_from_two_forces_in_two_steps() -> None:
    """36 mN become 9 mN with the same charges: the distance is doubled."""
    worked = solve("ratio", "d", F="36 mN", F_new="9 mN", a="1", b="1")
    assert worked.values["f"] == pytest.approx(0.25)
    assert worked.answers[0].value == pytest.approx(2)
    assert plain(worked.story).endswith(
        "At first the force is 36 mN. The charge on A stays the same. The charge on B stays the same. The force"
        " afterwards is 9 mN."
    )


@pytest.mark.parametrize(
    ("f", "told"),
    [("4", "The force becomes 4 times as large."), ("1", "The force stays the same.")],
)
def test_a_factor_of_one_is_told_as_no_change(f: str, told: str) -> None:
    """The force with the factor 1 stays the same, in words."""
    assert plain(solve("ratio", "d", a="2", b="3", f=f).story).endswith(told)


def test_a_factor_of_zero_is_refused() -> None:
    """The sentence says how a factor is typed."""
    from calc.working.reading import Refusals

    with pytest.raises(Refusals) as caught:
        solve("ratio", "d", a="0", b="1", f="4")
    assert caught.value.refusals[0].field == "a"
    assert (
        caught.value.refusals[0].sentence
        == "A factor is greater than zero: 2 for doubled, 0,5 for halved, 1 for no change."
    )


def test_equal_charges_are_the_limit_of_repulsion() -> None:
    """Two equal charges leave exactly their own on each sphere: the strongest repulsion that fits is solved."""
    force = K * (2e-9) ** 2 / 0.2**2
    worked = solve("contact-back", "Q1,Q2", F_1=f"{force * (1 - 1e-6)!r} N", r="20 cm", acting="repel", Q_new="2 nC")
    assert worked.values["Q1"] == pytest.approx(2e-9, rel=2e-3)
    assert worked.values["Q1"] > worked.values["Q2"]
    with pytest.raises(Refusal, match="No real charges fit"):
        solve("contact-back", "Q1", F_1=f"{force * (1 + 1e-6)!r} N", r="20 cm", acting="repel", Q_new="2 nC")


@pytest.mark.parametrize(
    ("find_", "typed", "told"),
    [
        (
            "Q2",
            {"Q1": "6 nC", "r": "20 cm", "F_1": "5 µN", "acting": "attract"},
            "They attract, so the charges have opposite signs.",
        ),
        (
            "Q2",
            {"Q1": "6 nC", "r": "20 cm", "F_1": "5 µN", "acting": "repel"},
            "They repel, so the charges have the same sign.",
        ),
        ("Q_new", {"r2": "20 cm", "F_2": "5 µN", "after": "negative"}, "Both charges are negative afterwards."),
        ("Q_new", {"r2": "20 cm", "F_2": "5 µN", "after": "positive"}, "Both charges are positive afterwards."),
    ],
)
def test_the_reason_tells_where_a_sign_comes_from(find_: str, typed: dict[str, str], told: str) -> None:
    """A force gives a size; the step says which words gave the sign, and the value has it."""
    worked = solve("contact-back", find_, **typed)
    step = next(part for part in worked.parts if part.key == "find").steps[0]
    assert step.why.endswith(told)
    negative = "opposite" in told or "negative" in told
    assert (step.value < 0) == negative
    assert step.direction.key == ("negative" if negative else "positive")


@pytest.mark.parametrize(("q2", "told"), [("-2 nC", "attract"), ("2 nC", "repel")])
def test_the_first_force_is_drawn_as_the_charges_pull_or_push(q2: str, told: str) -> None:
    """Arrows towards each other for unlike charges, apart for like ones, as the answer says."""
    from calc.figures import Arrow

    worked = solve("contact-back", "F_1", Q1="6 nC", Q2=q2, r="20 cm")
    left, right = sorted((a for a in worked.figure.items if isinstance(a, Arrow)), key=lambda a: a.start[0])
    assert (left.end[0] > left.start[0]) == (told == "attract")
    assert (right.end[0] < right.start[0]) == (told == "attract")
    assert worked.answers[0].direction.key == told
