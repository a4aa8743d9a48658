"""The wrong values of known mistakes, each against plain arithmetic; and what marking makes of thousands of
planted ones."""

import json
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

import mistake_statistics
from calc import desk
from calc.marking.early_rounding import plain_decimals, rounded_inside, two_decimals
from calc.marking.suspects import Chain
from calc.model.constants import Settings
from calc.model.questions import NO_MARKS, SA, Input, Mistake, Part, Plan, Question, Step
from calc.topics import find, question_keys
from calc.working.reading import read

K, G = 9e9, 9.8


def incline(data: object) -> Plan:
    """A block held on a smooth slope by a string, in three steps."""
    return Plan(
        story="A crate is held on a smooth ramp by a rope along the ramp.",
        parts=(
            Part("weight", "calculate", "Weight?", (Step("F_g = m*g", "F_g = m*g", "Weight", "", "N"),)),
            Part(
                "tension",
                "calculate",
                "Tension?",
                (
                    Step(
                        "T = F_g*sin(theta)",
                        "T = F_g*sin(theta)",
                        "Along the ramp",
                        "",
                        "N",
                        mistakes=(Mistake("cosine", "T", "F_g*cos(theta)", "Take the sine."),),
                    ),
                ),
            ),
            Part(
                "speed",
                "calculate",
                "Speed after the rope is cut?",
                (
                    Step(
                        "a = T/m",
                        "a = T/m",
                        "Second law",
                        "",
                        "m·s⁻²",
                        NO_MARKS,
                        mistakes=(Mistake("divided", "a", "m/T", "Divide by the mass."),),
                    ),
                    Step(
                        "v = sqrt(2*a*L)",
                        "v = sqrt(2*a*L)",
                        "Equation of motion",
                        "",
                        "m·s⁻¹",
                        SA,
                        mistakes=(Mistake("root-omitted", "v", "2*a*L", "Take the root."),),
                    ),
                ),
            ),
        ),
        values=dict(data.values),
        units={"theta": "°"},
    )


RAMP = Question(
    "ramp",
    "Crate on a ramp",
    (
        Input("m", "Mass", "kg", 0.01, 100),
        Input("theta", "Angle", "°", 1, 89),
        Input("L", "Length", "m", 0.01, 10),
    ),
    incline,
    {"m": "400 g", "theta": "25°", "L": "65 cm"},
)


def chain(target: str, carry: dict[str, float] | None = None, **typed: str) -> Chain:
    """The way to one value of the ramp question."""
    found = read(RAMP, {**RAMP.example, **typed})
    return Chain(incline(found.data), Settings().constants(), target, carry, quantities=found.quantities)


def values(way: Chain) -> dict[str, float]:
    """Every single suspect's value by its key."""
    return {suspect.key: suspect.value for suspect in way.singles}


def test_the_general_slips_of_a_ramp() -> None:
    """Grams left, centimetres left, g = 10 and radians give what plain arithmetic gives."""
    a = G * math.sin(math.radians(25))
    found = values(chain("v"))
    assert found["unconverted-L@L"] == pytest.approx(math.sqrt(2 * a * 65))
    assert found["g-ten@g"] == pytest.approx(math.sqrt(2 * 10 * math.sin(math.radians(25)) * 0.65))
    assert found["cosine@T"] == pytest.approx(math.sqrt(2 * G * math.cos(math.radians(25)) * 0.65))
    assert found["root-omitted@v"] == pytest.approx(2 * a * 0.65)
    assert "unconverted-m@m" not in found  # the mass cancels: nothing shows


def test_a_root_of_a_negative_number_is_no_suspect() -> None:
    """sin of 25 radians is negative: the speed has no value that way, and the slip is left out."""
    assert math.sin(25) < 0
    assert "radians@theta" not in values(chain("v"))
    assert values(chain("T"))["radians@theta"] == pytest.approx(0.4 * G * math.sin(25))


def test_two_mistakes_together() -> None:
    """Cosine for sine and the root forgotten, together."""
    found = {suspect.key: suspect.value for suspect in chain("v").pairs}
    right = 2 * G * math.cos(math.radians(25)) * 0.65
    assert found["cosine@T+root-omitted@v"] == pytest.approx(right)
    assert not any("unconverted-m" in key for key in found)


def test_two_mistakes_together_are_at_two_places() -> None:
    """No pair makes one value wrong twice."""
    for pair in (*chain("v").pairs, *chain("T").pairs):
        one, two = pair.slips
        assert not one.touches & two.touches


def test_an_angle_found_in_radians() -> None:
    """A calculator in radians shows 0,64 for 36,87°; typed with a degree sign it is that slip."""
    _, question = find("several-charges.right-angle")
    found = read(question, question.example)
    way = Chain(question.plan(found.data), Settings().constants(), "theta")
    shown = math.radians(way.right)  # the radians, read as so many degrees
    assert values(way)["radians@theta"] == pytest.approx(shown)


def test_a_carried_value_hides_the_mistakes_before_it() -> None:
    """With the learner's own tension, slips in finding a tension are not suspected again."""
    found = values(chain("v", {"T": 2.0}))
    assert "cosine@T" not in found
    assert "g-ten@g" not in found
    assert found["root-omitted@v"] == pytest.approx(2 * (2.0 / 0.4) * 0.65)


def test_no_unit_typed_leaves_nothing_to_convert() -> None:
    """Data typed in SI units make no suspects of conversion."""
    assert not [slip for slip in chain("v", m="0,4", L="0,65 m").slips if slip.kind == "unconverted"]


@given(st.floats(0.02, 9000), st.floats(1, 89))
def test_the_ramp_slips_for_any_numbers(mass: float, angle: float) -> None:
    """For any mass in grams and any angle the suspects are the plain sums of the wrong ways."""
    way = chain("T", m=f"{mass:.4g} g", theta=f"{angle:.4g}°")
    m, t = float(f"{mass:.4g}") / 1000, math.radians(float(f"{angle:.4g}"))
    found = values(way)
    assert found["unconverted-m@m"] == pytest.approx(1000 * m * G * math.sin(t))
    assert found["g-ten@g"] == pytest.approx(10 * m * math.sin(t))
    if not math.isclose(math.sin(t), math.cos(t), rel_tol=1e-8):
        assert found["cosine@T"] == pytest.approx(m * G * math.cos(t))


# sign, nC sizes, cm: usual slips with the law of force (common practice, no source), by plain arithmetic
@given(st.floats(1, 99), st.floats(1, 99), st.sampled_from((1, -1)), st.floats(2, 9) | st.floats(11, 99))
def test_the_force_suspects_for_any_charges(a: float, b: float, sign: int, cm: float) -> None:
    """Coulomb's law: r not squared, charges added, signs put in, cm and nC left, as plain arithmetic has them."""
    a, b, cm = (float(f"{x:.3g}") for x in (a, b, cm))
    _, question = find("coulomb.force")
    found = read(question, {"Q1": f"{a!r} nC", "Q2": f"{sign * b!r} nC", "r": f"{cm!r} cm"})
    way = Chain(question.plan(found.data), Settings().constants(), "F", quantities=found.quantities)
    q1, q2, r = a * 1e-9, b * 1e-9, cm / 100
    got = values(way)
    assert way.right == pytest.approx(K * q1 * q2 / r**2)
    assert got["not-squared@F"] == pytest.approx(K * q1 * q2 / r)
    assert got["added@F"] == pytest.approx(K * (q1 + q2) / r**2)
    assert got["unconverted-r@r"] == pytest.approx(K * q1 * q2 / cm**2)
    assert got["unconverted-Q1,Q2@Q1"] == pytest.approx(K * a * b / r**2)
    assert got["unconverted-Q1,Q2,r@Q1"] == pytest.approx(K * a * b / cm**2)
    assert ("sign-substituted@F" in got) == (sign < 0)
    if sign < 0:
        assert got["sign-substituted@F"] == pytest.approx(-way.right)


def test_two_decimals_as_a_memo_prints_them() -> None:
    """Two decimals, on the coefficient of small and large numbers; plain rounding keeps what would vanish."""
    assert two_decimals(3.14159) == 3.14
    assert two_decimals(0.0123456) == 0.0123
    assert two_decimals(123456) == 123000
    assert plain_decimals(0.0123456) == 0.01
    assert plain_decimals(4.2e-6) == 4.2e-6


def test_rounding_inside_one_line() -> None:
    """sin 25° cut to 0,42 before multiplying is one of the values of rounding early."""
    line = rounded_inside("F_g*sin(theta)", {"F_g": 3.92, "theta": math.radians(25)})
    assert any(value == pytest.approx(3.92 * 0.42) for value in line)


def test_rounding_on_the_way() -> None:
    """A speed found from an acceleration cut to two decimals is among the values of rounding early."""
    way = chain("v", theta="3,1°")
    cut = math.sqrt(2 * round(way.values["a"], 2) * 0.65)
    assert any(value == pytest.approx(cut, rel=1e-12) for value in way.rounded_early)


# --- thousands of planted mistakes --------------------------------------------------------------------------


of_every_question = pytest.mark.timeout(300)  # whichever test asks first counts for all


@pytest.fixture(scope="module")
def counted() -> mistake_statistics.Counts:
    """The counts over every declared question."""
    everything = mistake_statistics.Counts()
    for counts in mistake_statistics.statistics(list(question_keys()), 4, 7).values():
        assert counts.questions
        everything.add(counts)
    return everything


@of_every_question
def test_thousands_of_planted_mistakes_are_named_or_listed(
    counted: mistake_statistics.Counts,
) -> None:
    """Every planted mistake, alone or with another, is named or listed unless it gives the right answer."""
    both = counted.singles + counted.pairs
    assert sum(both.values()) > 3000
    assert both["unnamed"] == 0
    assert both["like right"] <= 0.03 * sum(both.values())
    assert counted.singles["named"] > 0.6 * sum(counted.singles.values())
    assert counted.pairs["one of them"] > 0  # a second slip that does not show is not guessed at


@of_every_question
def test_false_names_are_rare(counted: mistake_statistics.Counts) -> None:
    """Fewer than 1 % of planted mistakes get a wrong name, even when everything on the way is rounded too."""
    for kind in (counted.singles, counted.pairs, counted.rounded):
        assert sum(kind.values()) > 500
        assert kind["false"] < 0.01 * sum(kind.values()), counted.false


@of_every_question
def test_right_answers_are_never_marked_wrong(counted: mistake_statistics.Counts) -> None:
    """Right answers in many digits, units and prefixes, and up to 1 % off, are right and earn every mark."""
    assert counted.right > 800
    assert counted.right_lost == []


@of_every_question
def test_right_work_from_a_wrong_value_earns_every_mark(
    counted: mistake_statistics.Counts,
) -> None:
    """After a mistake in the first part, later parts worked rightly from it earn full marks."""
    assert counted.followed > 300
    assert counted.followed_lost == []


@of_every_question
def test_numbers_from_nowhere_are_seldom_named(counted: mistake_statistics.Counts) -> None:
    """A wrong number of no known origin is given one mistake's name in fewer than 6 of 100 cases."""
    assert counted.strangers > 100
    assert counted.strangers_named < 0.06 * counted.strangers


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        # r = 12 cm taken three times as a factor; doubled instead of squared; k left out
        ("2,08 x 10^-4 N", "You took r three times as a factor. It stands squared in this formula: two times."),
        ("1,50 x 10^-6 N", "You doubled r. The square is r times r."),
        ("2,78 x 10^-15 N", "You left out k: it is a factor of this formula."),
        ("5,18 x 10^-9 N", "You multiplied by r²: divide by it."),
    ],
)
def test_slips_of_the_formula_are_named(typed: str, sentence: str) -> None:
    """A slip that no topic declares is told in the words of the formula it was made in."""
    data = {
        "question": "coulomb.force",
        "inputs": {"Q1": "+8 nC", "Q2": "-5 nC", "r": "12 cm"},
        "find": "F",
        "answers": {"find": {"value": typed, "direction": "attract"}},
    }
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    told = next(part["html"] for part in reply["data"]["parts"] if part["part"] == "find")
    assert sentence in told


def test_a_calculator_in_gradians_is_named() -> None:
    """An angle taken in gradians: sin 31,5° where sin 35° is meant."""
    weight = 0.025 * 9.8 * math.sin(math.radians(0.9 * 35))
    force = 9e9 * 80e-9 * 50e-9 / 0.03**2
    found = {**find("equilibrium.slope")[1].example}
    data = {
        "question": "equilibrium.slope",
        "inputs": found,
        "find": "",
        "answers": {"find": {"value": f"{weight - force:.4f} N", "direction": ""}},
    }
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    told = next(part["html"] for part in reply["data"]["parts"] if part["part"] == "find")
    assert "Set the calculator to degrees: it worked in gradians." in told
