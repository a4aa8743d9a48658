"""Electric field against published answers, vector sums, an algebra system, root finders and the picture's own
field."""

import json
import math
from pathlib import Path

import numpy as np
import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import constants as codata
from scipy import optimize

from calc.figures import Arrow, Curve, field_at
from calc.figures.charges import Charge
from calc.language.expressions import ExpressionError, expression
from calc.model.answers import PartShown, WorkedAnswer
from calc.model.constants import Settings
from calc.model.questions import Refusal, Step
from calc.practice.drawing import draw
from calc.renderings import svg
from calc.topics import find, topics
from calc.working.reading import Refusals, read
from calc.working.working import run, sized, work
from tests.cases import reckoned
from tests.strategies import examples

K, G, E = 9e9, 9.8, 1.6e-19  # school values
PUBLISHED = {
    case["id"]: case for case in json.loads((Path(__file__).parent / "electric_field_published.json").read_text())
}
TOPIC = topics()["electric-field"]
KEYS = [question.key for question in TOPIC.questions]
SCENARIOS = [question.key for question in TOPIC.questions if question.scenario]


def solve(key: str, constants: Settings | None = None, **typed: object) -> WorkedAnswer:
    """The worked answer of ``electric-field.key`` for typed data."""
    topic, question = find(f"electric-field.{key}")
    return work(topic, question, read(question, typed, "", constants))


def reckon(key: str, **typed: object) -> WorkedAnswer:
    """The same without figures, for tests that look at numbers only."""
    topic, question = find(f"electric-field.{key}")
    return reckoned(topic, question, read(question, typed))


def refusal(key: str, **typed: object) -> tuple[str | None, str]:
    """The field and the sentence of the one refusal of these data."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(key, **typed)
    found = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    return found.field, found.sentence


def part(worked: WorkedAnswer, key: str) -> PartShown:
    """One part of a worked answer."""
    return next(shown for shown in worked.parts if shown.key == key)


def way(worked: WorkedAnswer, key: str) -> str:
    """The key of the direction of a part's answer."""
    answer = part(worked, key).answer
    assert answer is not None
    assert answer.direction is not None
    assert answer.direction.key in dict(answer.direction.options)
    return answer.direction.key


def rows(*charges: tuple[float, ...]) -> list[dict[str, str]]:
    """Table rows in SI from (Q, x) or (Q, x, y)."""
    units = ("C", "m", "m")
    return [
        {name: f"{value!r} {unit}" for name, value, unit in zip("Qxy", row, units, strict=False)} for row in charges
    ]


def published(key: str) -> object:
    """A published case's value as an approximation with the case's own tolerance."""
    case = PUBLISHED[key]["published"]
    return pytest.approx(case["value"], rel=case["rel_tol"])


def sheet(key: str) -> Settings:
    """The constants a published case was worked with."""
    given = PUBLISHED[key]["constants"]
    changed = {
        new: given[old] for old, new in (("k", "k"), ("e", "e"), ("m_e", "m_e")) if isinstance(given.get(old), float)
    }
    if "epsilon_0" in given:
        changed["k"] = 1 / (4 * math.pi * given["epsilon_0"])
    return Settings(changed)


# --- published and reference values -------------------------------------------------------------------------
# Sources stand in electric_field_published.json: OpenStax University Physics Volume 2 (E01 to E08) and
# OpenStax College Physics, 2nd edition, both CC BY 4.0.


@pytest.mark.parametrize(
    ("key", "charge", "distance"),
    [
        ("E01", 3.2e-19, 2.65e-11),
        ("E02a", 3.2e-19, 1e-10),
        ("field-point-charge", 2e-9, 5e-3),
    ],
)
def test_published_field_of_one_charge(key: str, charge: float, distance: float) -> None:
    """The field of a published point charge comes out, away from the positive source."""
    worked = solve("charge", sheet(key), Q=f"{charge!r} C", r=f"{distance!r} m")
    assert worked.values["E"] == published(key)
    assert way(worked, "find") == "away"


@pytest.mark.parametrize(("key", "source", "placed"), [("E02c", 3.2e-19, -1.602e-19), ("E05b", 1.2816e-18, 1.2816e-18)])
def test_published_force_by_way_of_the_field(key: str, source: float, placed: float) -> None:
    """Field first, then F = qE, gives the published force."""
    worked = solve("charge", sheet(key), Q=f"{source!r} C", r="1e-10 m", q=f"{placed!r} C")
    assert worked.values["F"] == published(key)
    assert way(worked, "force") == ("away" if placed > 0 else "towards")


def test_published_electron_under_a_thundercloud() -> None:
    """Force and acceleration of an electron in 2,00e5 N/C as published (E03a, E03b)."""
    constants = Settings({"e": 1.602e-19, "m_e": 9.109e-31})
    worked = solve("particle", constants, E="2e5 N/C", particle="electron", along="up")
    assert worked.values["F"] == published("E03a")
    assert worked.values["a"] == published("E03b")
    assert way(worked, "acceleration") == "down"


def test_published_midpoint_of_unlike_charges() -> None:
    """20 µC half-way between +50 µC and −25 µC feels the published force (E06b)."""
    worked = solve("line", sheet("E06b"), charges=rows((5e-5, 0.0), (-2.5e-5, 1.0)), x_P="0,5 m", q="20 uC")
    assert worked.values["F"] == published("E06b")
    assert way(worked, "force") == "right"


def test_published_charge_that_cancels_a_pair() -> None:
    """The pair's field and the charge at the origin that cancels it come out as published (E07a, E07b)."""
    worked = solve("plane", sheet("E07a"), charges=rows((4e-6, -3.0, 0.0), (4e-6, 3.0, 0.0)), x_P="0 m", y_P="3 m")
    assert worked.values["E_y"] == published("E07a")
    assert worked.values["E_x"] == 0
    assert way(worked, "net") == "up"
    back = solve("charge", sheet("E07b"), E=f"{worked.values['E_net']!r} N/C", r="3 m", pointing="towards")
    assert -back.values["Q"] == published("E07b")
    assert way(back, "find") == "negative"


def test_published_field_from_the_force_on_a_negative_charge() -> None:
    """4 µN to the right on −2 µC: the field is 2 N/C to the left (E08a, component along x)."""
    worked = solve("force", F="4 uN", q="-2 uC", pushed="right")
    sign = {"right": 1, "left": -1}[way(worked, "find")]
    assert sign * worked.values["E"] == published("E08a")


def test_published_fields_at_right_angles() -> None:
    """Two published fields at right angles add to the published resultant (adding-fields)."""
    worked = solve(
        "plane", sheet("adding-fields"), charges=rows((5e-9, 0.0, 0.02), (1e-8, 0.04, 0.0)), x_P="0", y_P="0"
    )
    assert worked.values["E_net"] == published("adding-fields")


def test_published_breakdown_between_plates() -> None:
    """3,0e6 V/m over 2,5 cm is the published 75 kV, without a warning at the limit itself."""
    worked = solve("plates", E="3e6 V/m", d="2,5 cm", upper="positive")
    assert worked.values["V"] == published("plates-breakdown")
    assert not any(line.startswith("Air would break down") for line in worked.warnings)


def test_reference_null_points() -> None:
    """+9 and +4 nC, 0,50 m: 0,30 m from +9; with −4 nC: 1,00 m beyond −4 (school constants, common practice,
    no source)."""
    like = solve("null", Q1="9 nC", Q2="4 nC", D="0,5 m")
    assert like.values["x"] == pytest.approx(0.30)
    assert way(like, "null") == "between"
    unlike = solve("null", Q1="9 nC", Q2="-4 nC", D="0,5 m")
    assert unlike.values["x"] == pytest.approx(1.00)
    assert way(unlike, "null") == "beyond-B"


def test_reference_drop() -> None:
    """3,2e-15 kg, 490 V, 5 mm: two electrons (school constants, common practice, no source)."""
    worked = solve("drop", m="3,2e-15 kg", V="490 V", d="5 mm", upper="positive")
    assert worked.values["n"] == pytest.approx(2)
    assert worked.notes == ("n is whole: 2 electrons.",)
    assert way(worked, "find") == "excess"


# --- independent routes --------------------------------------------------------------------------------------

NANO = st.integers(-90, 90).filter(bool).map(lambda n: n / 10)
PLACE = st.integers(-40, 40)
CHARGES = st.lists(st.tuples(NANO, PLACE, PLACE), min_size=1, max_size=8, unique_by=lambda r: r[1:])


def vector(charges: list[tuple[float, ...]], x: float, y: float) -> np.ndarray:
    """The field of charges (C, m, m) as a numpy vector sum."""
    at = np.array([x, y])
    return sum(
        (K * q * (at - place) / np.linalg.norm(at - place) ** 3)
        for q, place in ((row[0], np.array(row[1:])) for row in charges)
    )


@examples(60)
@given(CHARGES)
def test_plane_equals_a_vector_sum(charges: list[tuple[float, int, int]]) -> None:
    """Size and direction in a plane agree with numpy's vector sum."""
    assume((0, 0) not in {row[1:] for row in charges})
    si = [(q * 1e-9, x / 100, y / 100) for q, x, y in charges]
    expected = vector(si, 0.0, 0.0)
    alone = max(np.linalg.norm(vector([row], 0.0, 0.0)) for row in si)
    assume(np.linalg.norm(expected) > 1e-6 * alone)
    worked = reckon("plane", charges=rows(*si), x_P="0", y_P="0")
    assert worked.values["E_net"] == pytest.approx(np.linalg.norm(expected), rel=1e-6)
    answer = part(worked, "net").answer
    assert answer is not None
    assert answer.direction is not None
    turn = math.radians(answer.direction.angle or 0.0)
    assert np.dot(expected, [math.cos(turn), math.sin(turn)]) == pytest.approx(np.linalg.norm(expected), rel=1e-5)
    assert worked.unproven == ()


@examples(60)
@given(st.lists(st.tuples(NANO, PLACE), min_size=1, max_size=8, unique_by=lambda r: r[1]))
def test_line_equals_a_vector_sum(charges: list[tuple[float, int]]) -> None:
    """Size and side on a line agree with numpy's vector sum."""
    assume(0 not in {x for _, x in charges})
    si = [(q * 1e-9, x / 100) for q, x in charges]
    expected = vector([(q, x, 0.0) for q, x in si], 0.0, 0.0)[0]
    alone = max(K * abs(q) / x**2 for q, x in si)
    assume(abs(expected) > 1e-6 * alone)
    worked = reckon("line", charges=rows(*si), x_P="0")
    net = part(worked, "net").answer
    assert net is not None
    assert net.value == pytest.approx(abs(expected), rel=1e-6)
    assert way(worked, "net") == ("right" if expected > 0 else "left")
    assert worked.unproven == ()


@examples(60)
@given(NANO, NANO, st.integers(5, 90))
def test_null_point_is_the_only_zero_of_the_field(first: float, second: float, gap: int) -> None:
    """The field changes sign at the point found; a root finder near it finds the same place."""
    assume(first != -second and 0.02 < abs(first / second) < 50)
    assume(first * second > 0 or abs(math.sqrt(abs(first / second)) - 1) > 0.05)
    d = gap / 100
    worked = reckon("null", Q1=f"{first!r} nC", Q2=f"{second!r} nC", D=f"{gap} cm")
    x = worked.values["x"]
    at = {"between": x, "beyond-A": -x, "beyond-B": d + x}[way(worked, "null")]

    def field(place: float) -> float:
        return vector([(first, 0.0, 0.0), (second, d, 0.0)], place, 0.0)[0]

    near = 0.4 * min(abs(at), abs(at - d))
    root = optimize.brentq(field, at - near, at + near, xtol=1e-14)
    assert at == pytest.approx(root, rel=1e-9)
    assert worked.unproven == ()
    if first != second:
        other = worked.values["x_r"]
        place = d - other if way(worked, "null") == "beyond-B" else other
        if way(worked, "null") == "beyond-A":
            place = -other
        if way(worked, "null") == "beyond-B":
            place = d + other
        one, two = vector([(first, 0.0, 0.0)], place, 0.0)[0], vector([(second, d, 0.0)], place, 0.0)[0]
        assert one == pytest.approx(two, rel=1e-6)


@pytest.mark.parametrize(("first", "second"), [(9, 4), (4, 9), (9, -4), (-4, 9), (5, 5)])
def test_both_roots_solve_the_quadratic(first: int, second: int) -> None:
    """x and the rejected root are exactly the roots of the squared equation."""
    x, d = sympy.symbols("x"), sympy.Rational(1, 2)
    worked = solve("null", Q1=f"{first} nC", Q2=f"{second} nC", D="0,5 m")
    near, far = (second, first) if way(worked, "null") == "beyond-B" else (first, second)
    join = -1 if first * second > 0 else 1
    roots = sympy.solve(abs(near) * (d + join * x) ** 2 - abs(far) * x**2, x)
    found = {worked.values["x"]} | ({worked.values["x_r"]} if "x_r" in worked.values else set())
    assert sorted(found) == pytest.approx(sorted(float(root) for root in roots))


def test_null_point_lies_on_the_picture_of_no_field() -> None:
    """The field the lines are drawn from is zero at the null point."""
    worked = solve("null", Q1="4 nC", Q2="-16 nC", D="60 cm")
    ex, ey = field_at([Charge("A", 4.0, 0.0), Charge("B", -16.0, 0.6)], -worked.values["x"], 0.0)
    assert math.hypot(ex, ey) < 1e-9 * 4 / worked.values["x"] ** 2


@pytest.mark.parametrize("upper", ["positive", "negative"])
@pytest.mark.parametrize("factor", [0, 0.5, 1, 1.5, 2, 3])
def test_changed_voltage_by_energy(upper: str, factor: float) -> None:
    """The acceleration fits the energy gained over a millimetre: work of the field less work against weight."""
    worked = solve("drop-charge", m="6,4e-15 kg", q="6,4e-19 C", d="6 mm", upper=upper, V_2=f"{588 * factor!r} V")
    height = 1e-3
    gained = 6.4e-19 * (588 * factor) * height / 6e-3 - 6.4e-15 * G * height
    assert worked.values["a"] == pytest.approx(abs(gained) / (6.4e-15 * height), rel=1e-9, abs=1e-9)
    if factor != 1:
        assert way(worked, "changed") == ("up" if factor > 1 else "down")
    else:
        assert part(worked, "changed").answer.direction is None
    assert worked.unproven == ()


@pytest.mark.parametrize("key", ["drop", "drop-charge"])
@pytest.mark.parametrize("upper", ["positive", "negative"])
def test_drop_solved_by_algebra(key: str, upper: str) -> None:
    """Every unknown of a held drop agrees with the algebra system's solution of mg = neV/d."""
    known = {"m": 4.8e-15, "V": 784.0, "d": 8e-3, "n": 3.0, "q": 4.8e-19}
    names = ["m", "V", "d", "n" if key == "drop" else "q"]
    units = {"m": "kg", "V": "V", "d": "m", "n": "", "q": "C"}
    symbols = {name: sympy.symbols(name, positive=True) for name in names}
    charge = symbols["n"] * E if key == "drop" else symbols["q"]
    balance = symbols["m"] * G - charge * symbols["V"] / symbols["d"]
    for asked in names:
        typed = {
            name: str(int(known[name])) if name == "n" else f"{known[name]!r} {units[name]}"
            for name in names
            if name != asked
        }
        worked = solve(key, upper=upper, **typed)
        solution = sympy.solve(balance.subs({symbols[n]: known[n] for n in typed}), symbols[asked])
        assert worked.values[asked] == pytest.approx(float(solution[0]), rel=1e-9), asked
        sign = part(worked, "sign").points[0].words
        assert sign == ("Negative." if upper == "positive" else "Positive.")


def test_proton_mass_is_on_the_data_sheet() -> None:
    """A proton's acceleration with fuller constants uses the CODATA mass."""
    fuller = Settings({"e": codata.e, "m_p": codata.m_p})
    worked = solve("particle", fuller, E="5e4 N/C", particle="proton", along="left")
    assert worked.values["a"] == pytest.approx(codata.e * 5e4 / codata.m_p)
    assert way(worked, "acceleration") == "left"


def test_museum_domes_follow_from_superposition() -> None:
    """Every value of the two-domes scenario agrees with a direct calculation."""
    worked = solve("museum-domes", Q_A="45 nC", Q_B="-20 nC", D="40 cm", r_B="20 cm")
    net = K * 45e-9 / 0.6**2 - K * 20e-9 / 0.2**2
    assert worked.values["E_net"] == pytest.approx(abs(net))
    assert worked.values["a"] == pytest.approx(abs(net) * E / 9.11e-31)
    assert (way(worked, "net"), way(worked, "force"), way(worked, "acceleration")) == ("left", "right", "right")
    assert worked.values["x"] == pytest.approx(0.8)


# --- how things change ----------------------------------------------------------------------------------------


@examples(40)
@given(st.floats(1, 90), st.floats(0.05, 5), st.floats(1.1, 9))
def test_inverse_square(charge: float, r: float, factor: float) -> None:
    """Further away by a factor: weaker by its square."""
    near = reckon("charge", Q=f"{charge!r} nC", r=f"{r!r} m").values["E"]
    far = reckon("charge", Q=f"{charge!r} nC", r=f"{r * factor!r} m").values["E"]
    assert near / far == pytest.approx(factor**2)


@examples(30)
@given(st.lists(st.tuples(NANO, PLACE), min_size=2, max_size=5, unique_by=lambda r: r[1]))
def test_all_signs_turned_turns_the_net_field(charges: list[tuple[float, int]]) -> None:
    """Turning every charge's sign keeps the size and turns the direction."""
    assume(0 not in {x for _, x in charges})
    si = [(q * 1e-9, x / 100) for q, x in charges]
    one = reckon("line", charges=rows(*si), x_P="0")
    two = reckon("line", charges=rows(*((-q, x) for q, x in si)), x_P="0")
    assert one.values["E_net"] == pytest.approx(two.values["E_net"])
    if one.values["E_net"] > 0:
        assert way(one, "net") != way(two, "net")


@examples(30)
@given(st.integers(1, 50), st.integers(51, 99), st.integers(5, 90))
def test_null_does_not_care_which_is_called_a(first: int, second: int, gap: int) -> None:
    """Exchanging like charges leaves the null point where it is."""
    one = reckon("null", Q1=f"{first} nC", Q2=f"{second} nC", D=f"{gap} cm").values["x"]
    two = reckon("null", Q1=f"{second} nC", Q2=f"{first} nC", D=f"{gap} cm").values["x"]
    assert one + two == pytest.approx(gap / 100)


def test_symmetry_gives_no_net_field() -> None:
    """Half-way between equal like charges the net field is exactly zero and has no direction."""
    worked = solve("line", charges=rows((7e-9, 0.1), (7e-9, 0.7)), x_P="0,4 m")
    assert worked.values["E_net"] == 0
    assert way(worked, "net") == "none"
    assert worked.notes == ("The fields cancel: P is a null point, so the net field has no direction.",)


def test_square_of_equal_charges_has_no_field_at_its_centre() -> None:
    """In a plane a symmetrical arrangement gives zero without rounding noise."""
    corners = [(3e-9, x, y) for x in (-0.3, 0.3) for y in (-0.3, 0.3)]
    worked = solve("plane", charges=rows(*corners), x_P="0", y_P="0")
    assert worked.values["E_net"] == 0
    assert way(worked, "net") == "none"


@pytest.mark.parametrize(
    ("key", "sources", "point"),
    [
        ("line", ((7e-9, 0.1), (7e-9, 0.7)), {"x_P": "0,4 m"}),
        ("line", ((7e-9, 0.1), (-7e-9, 0.7)), {"x_P": "0,4 m"}),
        ("plane", ((7e-9, 0.1, 0.0), (7e-9, 0.7, 0.0)), {"x_P": "0,4 m", "y_P": "0"}),
        ("plane", ((7e-9, 0.1, 0.0), (7e-9, 0.7, 0.3)), {"x_P": "0,4 m", "y_P": "0"}),
    ],
)
def test_directions_of_a_field_speak_of_the_field(
    key: str, sources: tuple[tuple[float, ...], ...], point: dict[str, str]
) -> None:
    """Among a net field's directions, none is called a zero field, never a zero force."""
    answer = part(solve(key, charges=rows(*sources), **point), "net").answer
    assert answer is not None
    assert answer.direction is not None
    assert dict(answer.direction.options)["none"] == "no direction: the net field is zero"
    assert answer.direction.key != "none" or answer.direction.words == "no direction: the net field is zero"


@pytest.mark.parametrize(("first", "second"), [(9e-9, 4e-9), (9e-9, -4e-9), (-4e-9, 9e-9)])
def test_check_of_the_nearer_charge_can_fail(first: float, second: float) -> None:
    """The check of a null point refuses a point nearer to the larger charge, or charges exchanged."""
    _, question = find("electric-field.null")
    found = read(question, {"Q1": f"{first!r} C", "Q2": f"{second!r} C", "D": "50 cm"})
    plan = question.plan(found.data)
    values = run(plan, found.data.settings.constants())
    holds = plan.checks[1].holds
    assert holds is not None
    assert holds(values)
    assert not holds({**values, "Q1": second, "Q2": first})


def test_equal_like_charges_have_one_root() -> None:
    """Equal like charges: half-way, and no second root to reject."""
    worked = solve("null", Q1="-6 nC", Q2="-6 nC", D="30 cm")
    assert worked.values["x"] == pytest.approx(0.15)
    assert "x_r" not in worked.values


# --- directions -----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("charge", "along", "pushed"),
    [("2 nC", "right", "right"), ("-2 nC", "right", "left"), ("-2 nC", "up", "down"), ("5 nC", "down", "down")],
)
def test_force_along_or_against_the_field(charge: str, along: str, pushed: str) -> None:
    """A positive charge is pushed along the field, a negative one against it, whichever is asked."""
    assert way(solve("force", E="300 N/C", q=charge, along=along), "find") == pushed
    assert way(solve("force", F="3 uN", q=charge, pushed=pushed), "find") == along
    sign = "negative" if charge.startswith("-") else "positive"
    assert way(solve("force", E="300 N/C", F="3 uN", along=along, pushed=pushed), "find") == sign


@pytest.mark.parametrize(("upper", "field"), [("positive", "down"), ("negative", "up")])
def test_plate_field_points_to_the_negative_plate(upper: str, field: str) -> None:
    """The uniform field points away from the positive plate."""
    assert way(solve("plates", V="300 V", d="6 mm", upper=upper), "find") == field


def test_direction_is_reasoned_with_a_test_charge() -> None:
    """The explanation names the test charge's force first and the field after it."""
    points = part(solve("charge", Q="-6 nC", r="30 cm"), "direction").points
    assert [point.words for point in points] == [
        "The charge is negative, so a small positive test charge at P is attracted.",
        "The field has the direction of that force: towards the charge.",
    ]


# --- refusals and warnings, word for word ---------------------------------------------------------------------

NO_FIELD = "A zero charge gives no field, so this cannot be found. Type a charge that is not zero."
NONE = (
    "No null point at a finite distance: the charges are equal in size, so their fields are equal only half-way "
    "between them, and there both point the same way. Change one of the charges."
)
NO_HOLD = (
    "No field can hold it: without a potential difference there is no field. Type a potential difference greater than"
    " zero."
)
LINE_ROW = [{"Q": "2 nC", "x": "0"}, {"Q": "3 nC", "x": "20 cm"}]


@pytest.mark.parametrize(
    ("key", "typed", "field", "sentence"),
    [
        ("charge", {"Q": "0", "r": "1 m"}, "Q", NO_FIELD),
        ("charge", {"Q": "0", "E": "5 N/C"}, "Q", NO_FIELD),
        ("charge", {"Q": "2 nC", "r": "0 m"}, "r", "Distance must be greater than zero."),
        (
            "charge",
            {"E": "-4 N/C", "r": "1 m"},
            "E",
            "The electric field must be greater than zero: enter its size; choose the direction separately.",
        ),
        ("charge", {"Q": "2 nC", "r": "1 m", "q": "0"}, "q", "A zero charge feels no force: leave this box empty."),
        (
            "force",
            {"E": "5 N/C", "q": "0"},
            "q",
            "A zero charge feels no force, so this cannot be found. Type a charge that is not zero.",
        ),
        (
            "force",
            {"F": "-2 N", "q": "1 nC"},
            "F",
            "Enter the size of the force, greater than zero; choose the direction separately.",
        ),
        (
            "force",
            {"E": "5 N/C", "F": "2 uN", "along": "up", "pushed": "left"},
            "pushed",
            "The force on a charge points along the field or exactly against it. Choose one of these two.",
        ),
        ("particle", {"E": "1e-10 N/C"}, "E", "In so weak a field the weight counts as well. Type a stronger field."),
        (
            "particle",
            {"a": "20 m/s^2"},
            "a",
            "At so small an acceleration the weight counts as well. Type a larger one.",
        ),
        (
            "line",
            {"charges": LINE_ROW, "x_P": "20 cm"},
            "x_P",
            "Field is undefined there: point P is where charge 2 is. Move P away from the charge.",
        ),
        (
            "line",
            {"charges": [LINE_ROW[0], LINE_ROW[0]], "x_P": "20 cm"},
            "charges.1.x",
            "Two charges share a point. Give each its own position.",
        ),
        (
            "line",
            {"charges": [{"Q": "0", "x": "0"}], "x_P": "20 cm"},
            "charges.0.Q",
            "A zero charge gives no field: leave this row out.",
        ),
        (
            "line",
            {"charges": LINE_ROW, "x_P": "1 m", "q": "0"},
            "q",
            "A zero charge feels no force: leave this box empty.",
        ),
        ("line", {"charges": LINE_ROW * 5, "x_P": "1 m"}, "charges", "Give from 1 to 8 rows: there are 10."),
        (
            "plane",
            {"charges": [{"Q": "1 nC", "x": "3 m", "y": "4 m"}], "x_P": "3 m", "y_P": "4 m"},
            "x_P",
            "Field is undefined there: point P is where charge 1 is. Move P away from the charge.",
        ),
        ("null", {"Q1": "3 nC", "Q2": "-3 nC", "D": "1 m"}, "Q2", NONE),
        ("null", {"Q1": "0", "Q2": "-3 nC", "D": "1 m"}, "Q1", NO_FIELD),
        ("plates", {"V": "0", "d": "4 mm"}, "V", "Potential difference must be greater than zero."),
        ("plates", {"V": "9 V", "d": "-4 mm"}, "d", "Distance must be greater than zero."),
        ("drop", {"m": "1e-15 kg", "V": "0", "d": "5 mm"}, "V", NO_HOLD),
        ("drop", {"m": "0", "V": "400 V", "d": "5 mm"}, "m", "Mass must be greater than zero."),
        ("drop", {"n": "0", "V": "400 V", "d": "5 mm"}, "n", "The number of electrons must be greater than zero."),
        (
            "drop-charge",
            {"q": "-1 nC", "V": "400 V", "d": "5 mm"},
            "q",
            "Enter the size of the charge, greater than zero; its sign follows from the plates.",
        ),
        (
            "drop",
            {"m": "3,2e-15 kg", "V": "490 V", "d": "5 mm", "V_2": "-3 V"},
            "V_2",
            "Potential difference cannot be negative: choose the sign of the upper plate instead.",
        ),
        ("museum-domes", {"Q_A": "5 nC", "Q_B": "-5 nC", "D": "1 m", "r_B": "1 m"}, "Q_B", NONE),
        (
            "museum-domes",
            {"Q_A": "9 nC", "Q_B": "-4 nC", "D": "0,5 m", "r_B": "1 m"},
            "r_B",
            "P is the null point itself: no force acts there. Choose another distance.",
        ),
    ],
)
def test_refusals(key: str, typed: dict[str, object], field: str, sentence: str) -> None:
    """Impossible data are refused beside the box, with the reason."""
    assert refusal(key, **typed) == (field, sentence)


AIR = "Air would break down: above 3 × 10⁶ N·C⁻¹ a spark jumps. It is worked out as in a vacuum; check the prefixes."


@pytest.mark.parametrize(
    ("key", "typed"),
    [
        ("charge", {"Q": "4 uC", "r": "1 cm"}),
        ("plates", {"V": "40 kV", "d": "5 mm"}),
        ("force", {"E": "4e6 N/C", "q": "2 nC"}),
        ("line", {"charges": [{"Q": "9 uC", "x": "0"}], "x_P": "5 cm"}),
    ],
)
def test_warning_about_air(key: str, typed: dict[str, object]) -> None:
    """A field beyond breakdown is solved with the warning about air."""
    assert AIR in solve(key, **typed).warnings


def test_warning_about_part_of_an_electron() -> None:
    """n = 2,5 is solved, with a warning; n within a tenth of a whole number is not warned about."""
    warned = solve("drop", m="4e-15 kg", V="490 V", d="5 mm").warnings
    assert warned == (
        "n is not near a whole number: a drop carries a whole number of electron charges, so check the data.",
    )
    assert solve("drop", m="3,1e-15 kg", V="490 V", d="5 mm").warnings == ()


def test_less_than_one_electron_is_refused() -> None:
    """A drop that would have to carry 0,63 of an electron cannot be, whatever is asked."""
    with pytest.raises(Refusal, match="less than the charge of one electron"):
        solve("drop", m="5e-17 kg", V="24,3 V", d="5 mm")
    with pytest.raises(Refusal, match="less than the charge of one electron"):
        solve("drop", m="1e-17 kg", V="4900 V", d="5 mm")


# --- what every question of the topic must do -----------------------------------------------------------------


def all_steps(key: str, typed: dict[str, object]) -> list[tuple[Step, dict[str, float]]]:
    """Every step of a question's plan with the values it starts from."""
    _, question = find(f"electric-field.{key}")
    found = read(question, typed)
    plan = question.plan(found.data)
    values = run(plan, found.data.settings.constants())
    return [(step, sized(values, step.sizes)) for step in plan.steps]


CASES: list[tuple[str, dict[str, object]]] = [
    *((question.key, dict(question.example)) for question in TOPIC.questions),
    ("charge", {"Q": "-6 nC", "r": "30 cm", "q": "2 nC"}),
    ("charge", {"E": "900 N/C", "r": "30 cm", "pointing": "towards"}),
    ("charge", {"E": "900 N/C", "Q": "5 nC"}),
    ("force", {"F": "9 uN", "q": "-2 nC", "pushed": "left"}),
    ("force", {"F": "9 uN", "E": "450 N/C", "along": "left", "pushed": "left"}),
    ("particle", {"a": "4e14 m/s^2", "particle": "proton"}),
    ("null", {"Q1": "9 nC", "Q2": "4 nC", "D": "50 cm"}),
    ("null", {"Q1": "9 nC", "Q2": "-4 nC", "D": "50 cm"}),
    ("null", {"Q1": "-3 nC", "Q2": "8 nC", "D": "50 cm"}),
    ("plates", {"E": "4e4 V/m", "d": "6 mm"}),
    ("plates", {"E": "4e4 V/m", "V": "240 V"}),
    ("drop", {"n": "3", "V": "784 V", "d": "8 mm", "V_2": "300 V"}),
    ("drop-charge", {"m": "6,4e-15 kg", "V": "588 V", "d": "6 mm"}),
]


@pytest.mark.parametrize(("key", "typed"), CASES)
def test_mistakes_are_told_from_the_right_value(key: str, typed: dict[str, object]) -> None:
    """Every mistake of every step gives another size, or the same size and a turned direction."""
    seen = 0
    for step, values in all_steps(key, typed):
        for mistake in step.mistakes:
            try:
                wrong = abs(expression(mistake.instead).value(values))
            except ExpressionError:
                continue
            same = math.isclose(wrong, abs(values[step.makes]), rel_tol=0.01)
            assert same == mistake.turns, (step.makes, mistake.key)
            seen += 1
    assert seen or key == "pattern"


@pytest.mark.parametrize("key", KEYS)
@pytest.mark.parametrize("level", [1, 2, 3])
def test_practice_draws_are_solved(key: str, level: int) -> None:
    """Practice at every level draws data that are worked without a refusal or a warning."""
    topic, question = find(f"electric-field.{key}")
    for seed in range(3):
        drawn = draw(topic, question, seed, level)
        worked = work(topic, question, read(question, drawn.inputs, drawn.find, variant=drawn.variant))
        assert worked.warnings == ()
        assert drawn.apart
        assert worked.unproven == ()


@pytest.mark.parametrize(("key", "typed"), CASES)
def test_every_figure_can_be_drawn(key: str, typed: dict[str, object]) -> None:
    """Scenes and part figures render to SVG with a description."""
    worked = solve(key, **typed)
    figures = [figure for figure in (worked.figure, *(shown.figure for shown in worked.parts)) if figure]
    assert figures
    for figure in figures:
        assert svg.render(figure).startswith("<svg")
        assert figure.description


def test_pattern_lines_follow_the_numbers() -> None:
    """Each drawn line is everywhere along the field of the page's own charges."""
    worked = solve("pattern", charges=rows((6e-9, 0.0, 0.0), (-3e-9, 0.2, 0.0)))
    figure = part(worked, "pattern").figure
    assert figure is not None
    spheres = {item.label: item for item in figure.items if hasattr(item, "radius") and hasattr(item, "sign")}
    drawn = [Charge("1", 6.0, *spheres["Q_{1}"].centre), Charge("2", -3.0, *spheres["Q_{2}"].centre)]
    radius = spheres["Q_{1}"].radius
    lines = [item for item in figure.items if isinstance(item, Curve)]
    assert lines
    for line in lines:
        for (x, y), (x2, y2) in zip(line.points, line.points[1:], strict=False):
            middle = ((x + x2) / 2, (y + y2) / 2)
            if min(math.hypot(middle[0] - c.x, middle[1] - c.y) for c in drawn) < 1.6 * radius:
                continue  # near a sphere the line is turned to meet its surface squarely
            ex, ey = field_at(drawn, *middle)
            along = (ex * (x2 - x) + ey * (y2 - y)) / (math.hypot(ex, ey) * math.hypot(x2 - x, y2 - y))
            assert along > 0.97


def test_field_arrows_start_at_p() -> None:
    """A line's drawing has one field arrow for each source, all at P."""
    worked = solve("line", charges=rows((8e-9, 0.0), (-5e-9, 0.5), (2e-9, 0.9)), x_P="30 cm")
    figure = part(worked, "draw").figure
    assert figure is not None
    arrows = [item for item in figure.items if isinstance(item, Arrow) and item.kind == "field"]
    assert len(arrows) == 3
    assert len(part(worked, "draw").points) == 3
    assert max(a.start[0] for a in arrows) - min(a.start[0] for a in arrows) < 0.5


@pytest.mark.parametrize("key", SCENARIOS)
def test_scenarios_mix_the_kinds_of_parts(key: str) -> None:
    """A scenario has five to eight parts and all four kinds."""
    _, question = find(f"electric-field.{key}")
    worked = solve(key, **question.example)
    assert 5 <= len(worked.parts) <= 8
    assert {shown.kind for shown in worked.parts} == {"state", "draw", "calculate", "explain"}


def test_a_carried_value_is_marked_on() -> None:
    """A learner's own net field carries through to the electron's acceleration."""
    _, question = find("electric-field.museum-domes")
    found = read(question, question.example)
    plan = question.plan(found.data)
    values = run(plan, found.data.settings.constants(), carry={"E_net": 5625.0})
    assert values["a"] == pytest.approx(5625.0 * E / 9.11e-31)


def test_memo_of_the_usual_question() -> None:
    """Marks: define 2, first field 3, second 1, net 2, electron 3; drop's electrons 2, acceleration 4."""
    domes = solve("museum-domes", Q_A="45 nC", Q_B="-20 nC", D="40 cm", r_B="20 cm")
    assert [shown.marks for shown in domes.parts] == [2, 2, 6, 3, 3, 2, 3, 2]
    drop = solve("paint-drop", m="8e-15 kg", V="588 V", d="6 mm", V_2="1176 V")
    assert [shown.marks for shown in drop.parts] == [2, 2, 2, 3, 3, 2, 4, 3]


def test_cautions_for_kilovolt_plates() -> None:
    """The topic tells to limit the current and to switch off and earth before adjusting."""
    assert "current-limited supply only; switch off and earth" in TOPIC.cautions[0]


def spots(*charges: str) -> list[dict[str, str]]:
    """A row for each charge, 20 cm apart along x and 15 cm off the line from the third on."""
    return [{"Q": charge, "x": f"{20 * i} cm", "y": f"{15 if i == 2 else 0} cm"} for i, charge in enumerate(charges)]


@pytest.mark.parametrize(
    ("charges", "lines", "strong"),
    [
        (("+6 nC", "-3 nC"), "more lines at the larger charge", "close to charge 1, the larger one"),
        (("+3 nC", "-6 nC"), "more lines at the larger charge", "close to charge 2, the larger one"),
        (
            ("+6 nC", "+6 nC"),
            "equally many lines at each charge, because the charges are equal in size",
            "close to the charges, which are equal in size",
        ),
        (
            ("+6 nC", "-6 nC"),
            "equally many lines at each charge, because the charges are equal in size",
            "close to the charges, which are equal in size",
        ),
        (("-8 nC", "-8 nC", "+4 nC"), "more lines at larger charges", "close to charges 1 and 2, the largest"),
        (("-2 nC", "-8 nC", "+4 nC"), "more lines at larger charges", "close to charge 2, the largest"),
    ],
)
def test_pattern_words_name_the_larger_charge_only_where_there_is_one(
    charges: tuple[str, ...], lines: str, strong: str
) -> None:
    """A memo of field lines speaks of a larger charge only where one is larger."""
    worked = solve("pattern", charges=spots(*charges))
    assert [point.words for point in part(worked, "pattern").points][
        1
    ] == f"Lines never cross; {lines}, closest together where the field is strongest."
    assert [point.words for point in part(worked, "meaning").points][
        1
    ] == f"Where lines are closer together the field is stronger: here {strong}."


@pytest.mark.parametrize("key", ["null", "museum-domes", "line"])
@pytest.mark.parametrize("second", ["+6 nC", "+4 nC"])
def test_every_pattern_part_knows_equal_charges(key: str, second: str) -> None:
    """Every question that asks for a pattern tells equal charges from unequal ones."""
    typed: dict[str, object] = {
        "null": {"Q1": "+6 nC", "Q2": second, "D": "30 cm"},
        "museum-domes": {"Q_A": "+6 nC", "Q_B": second, "D": "30 cm", "r_B": "10 cm"},
        "line": {"charges": [{"Q": "+6 nC", "x": "0"}, {"Q": second, "x": "30 cm"}], "x_P": "10 cm", "q": ""},
    }[key]
    words = " ".join(point.words for point in part(solve(key, **typed), "pattern").points)
    assert ("the larger charge" in words) == (second != "+6 nC")
    assert ("equal in size" in words) == (second == "+6 nC")
