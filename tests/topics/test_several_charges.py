"""Several charges against published examples, numpy vector sums, a computer algebra system and scipy roots."""

import json
import math
import re
from pathlib import Path

import numpy as np
import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq

from calc import desk
from calc.figures import Sphere
from calc.language.printing import Style
from calc.model.answers import WorkedAnswer
from calc.model.constants import Settings
from calc.model.questions import Mistake, Refusal
from calc.renderings import svg
from calc.topics import find, topics
from calc.topics.several_charges.shared import bounds_words, compass, scale_words, within_bounds
from calc.working.reading import Refusals, read
from calc.working.working import run, show, work
from tests.cases import reckoned

KEYS = [question.key for question in topics()["several-charges"].questions]
K = 9.0e9  # school value
PUBLISHED = json.loads((Path(__file__).parent / "several_charges_published.json").read_text())
ROWS = st.lists(
    st.tuples(st.sampled_from([-9, -5, -3, -1, 1, 2, 4, 7]), st.integers(-9, 9), st.integers(-9, 9)),
    min_size=2,
    max_size=8,
    unique_by=lambda row: row[1:],
)


def solve(key: str, find_: str = "", settings: Settings | None = None, **typed: object) -> WorkedAnswer:
    """The worked answer of ``several-charges.key``; what is not given comes from the example."""
    topic, question = find(f"several-charges.{key}")
    return work(topic, question, read(question, {**question.example, **typed}, find_, settings))


def reckon(key: str, find_: str = "", **typed: object) -> WorkedAnswer:
    """The same without figures, for tests that look at numbers only."""
    topic, question = find(f"several-charges.{key}")
    return reckoned(topic, question, read(question, {**question.example, **typed}, find_))


def answer(worked: WorkedAnswer, part: str) -> object:
    """The answer of one part."""
    return next(p.answer for p in worked.parts if p.key == part)


def rows(places: list[tuple[int, int, int]], unit: str = "cm") -> list[dict[str, str]]:
    """Typed rows in nC and cm."""
    return [{"Q": f"{q} nC", "x": f"{x} {unit}", "y": f"{y} {unit}"} for q, x, y in places]


def vector_sum(charges: np.ndarray, places: np.ndarray, on: int, k: float = K) -> np.ndarray:
    """The net force on charge ``on`` from k Q q d/|d|³ with signed charges, by numpy."""
    total = np.zeros(places.shape[1])
    for i, place in enumerate(places):
        if i != on:
            step = places[on] - place
            total += k * charges[on] * charges[i] * step / np.linalg.norm(step) ** 3
    return total


# --- published and reference values ---------------------------------------------------------------------------


@pytest.mark.parametrize("case", PUBLISHED, ids=[case["id"] for case in PUBLISHED])
def test_published_examples(case: dict) -> None:
    """Every published value comes out within the rounding of its source, which the case names."""
    worked = solve(case["question"], settings=Settings({"k": case["k"]}), **case["typed"])
    for name, (value, tolerance) in case["published"].items():
        assert worked.values[name] == pytest.approx(value, rel=tolerance), name
    net = answer(worked, "net")
    assert net.direction.key == case["direction"]
    if case["angle"] is not None:
        assert net.direction.angle == pytest.approx(case["angle"], abs=0.5)


def test_reference_case_in_a_plane() -> None:
    """0,60 N left and 0,45 N up give 0,75 N at 36,87° above −x (school constants; common practice, no source)."""
    worked = solve(
        "plane",
        charges=[
            {"Q": "+2 µC", "x": "0", "y": "0"},
            {"Q": "+3 µC", "x": "0,3", "y": "0"},
            {"Q": "-4 µC", "x": "0", "y": "0,4"},
        ],
        on="1",
    )
    assert worked.values["F_21"] == pytest.approx(0.60)
    assert worked.values["F_31"] == pytest.approx(0.45)
    net = answer(worked, "net")
    assert net.value == pytest.approx(0.75)
    assert net.direction.words == "36,87° above the −x axis (143,13° anticlockwise from the +x axis)"
    assert [answer(worked, part).direction.key for part in ("force-2", "force-3")] == ["left", "up"]


def test_the_corner_question_agrees_with_the_plane_question() -> None:
    """The same three charges give the same resultant in both questions."""
    corner = solve("right-angle", Q1="2 µC", Q2="3 µC", Q3="-4 µC", r_12="30 cm", r_13="40 cm")
    assert answer(corner, "net").value == pytest.approx(0.75)
    assert answer(corner, "net").direction.angle == pytest.approx(143.130102)
    assert math.degrees(corner.values["theta"]) == pytest.approx(36.869898)


# --- against other routes -------------------------------------------------------------------------------------


@given(ROWS, st.integers(0, 7))
def test_the_plane_sum_is_that_of_numpy(places: list[tuple[int, int, int]], on: int) -> None:
    """Components, size and full angle agree with a signed vector sum, for up to eight charges."""
    on %= len(places)
    worked = reckon("plane", charges=rows(places), on=str(on + 1))
    table = np.array(places, dtype=float)
    net = vector_sum(table[:, 0] * 1e-9, table[:, 1:] * 1e-2, on)
    scale = sum(abs(worked.values[f"F_{i + 1}{on + 1}"]) for i in range(len(places)) if i != on)
    assert worked.values["SigmaF_x"] == pytest.approx(net[0], rel=1e-9, abs=1e-11 * scale)
    assert worked.values["SigmaF_y"] == pytest.approx(net[1], rel=1e-9, abs=1e-11 * scale)
    shown = answer(worked, "net")
    assert shown.value == pytest.approx(np.linalg.norm(net), rel=1e-9, abs=1e-11 * scale)
    if np.linalg.norm(net) > 1e-6 * scale:
        gap = (shown.direction.angle - math.degrees(math.atan2(net[1], net[0]))) % 360
        assert min(gap, 360 - gap) < 1e-4
    assert worked.unproven == ()


@given(ROWS, st.sampled_from(["right", "left"]))
def test_the_line_sum_is_that_of_numpy(places: list[tuple[int, int, int]], positive: str) -> None:
    """Size and side agree with a signed sum, whichever direction is called positive."""
    line = [(q, x, 0) for q, x, _ in {x: (q, x, y) for q, x, y in places}.values()]
    assume(len(line) > 1)
    worked = reckon("line", charges=rows(line), on="1", positive=positive)
    table = np.array(line, dtype=float)
    net = vector_sum(table[:, :1].ravel() * 1e-9, table[:, 1:2] * 1e-2, 0)[0]
    shown = answer(worked, "net")
    scale = sum(worked.values[f"F_{i + 1}1"] for i in range(1, len(line)))
    assert shown.value == pytest.approx(abs(net), rel=1e-9, abs=1e-11 * scale)
    if abs(net) > 1e-9 * scale:
        assert shown.direction.key == ("right" if net > 0 else "left")
        assert (worked.values["SigmaF"] > 0) == ((net > 0) == (positive == "right"))
    assert worked.unproven == ()


@given(
    st.sampled_from([-6, -3, 2, 5]),
    st.sampled_from([-4, 3, 7]),
    st.sampled_from(["left", "right"]),
    st.sampled_from(["left", "right"]),
    st.sampled_from([0, 1, 7, 30]),
    st.sampled_from(["left", "right"]),
)
def test_the_third_charge_solves_the_equilibrium(
    q1: int, q2: int, side_1: str, side_3: str, net: int, way: str
) -> None:
    """The signed charge that numpy's linear equation asks for is the one found."""
    first = (0.15 if side_1 == "right" else -0.15, q1 * 1e-9)
    place = 0.2 if side_3 == "right" else -0.2
    other = K * q2 * 1e-9 * first[1] * -first[0] / abs(first[0]) ** 3
    per_coulomb = K * q2 * 1e-9 * -place / abs(place) ** 3
    wanted = net * 1e-6 * (1 if way == "right" else -1)
    q3 = np.linalg.solve(np.array([[per_coulomb]]), np.array([wanted - other]))[0].item()
    typed = {"Q1": f"{q1} nC", "Q2": f"{q2} nC", "side_1": side_1, "side_3": side_3, "way": way}
    worked = solve("third", F_net=f"{net} µN", **typed)
    found = answer(worked, "find")
    assert found.value == pytest.approx(abs(q3), rel=1e-9)
    assert found.direction.key == ("positive" if q3 > 0 else "negative")
    assert worked.checks
    assert worked.unproven == ()
    back = solve("third", "r_23", F_net=f"{net} µN", **{**typed, "Q3": f"{q3!r} C"})
    assert answer(back, "find").value == pytest.approx(0.2, rel=1e-6)
    assert answer(back, "find").direction.key == side_3


@pytest.mark.parametrize(("q1", "q2"), [(4, 9), (9, 4), (5, 5), (-2, -7), (4, -9), (-4, 9), (9, -4), (-7, 2)])
def test_the_balance_position_is_that_of_an_algebra_system(q1: int, q2: int) -> None:
    """sympy solves the force equation; of its real roots the one with opposite forces is ours."""
    x, d = sympy.symbols("x", real=True), sympy.Rational(1, 2)
    roots = sympy.solve(abs(q1) * (d - x) ** 2 - abs(q2) * x**2, x)

    def net(p: float) -> float:
        return q1 * p / abs(p) ** 3 + q2 * (p - 0.5) / abs(p - 0.5) ** 3

    right = [float(root) for root in roots if abs(net(float(root))) < 1e-6]
    worked = solve("balance", Q1=f"{q1} nC", Q2=f"{q2} nC", d="50 cm")
    assert len(right) == 1
    assert worked.values["r_1"] == pytest.approx(abs(right[0]), rel=1e-9)
    assert worked.values["r_2"] == pytest.approx(abs(right[0] - 0.5), rel=1e-9)
    key = "between" if 0 < right[0] < 0.5 else "beyond-1" if right[0] < 0 else "beyond-2"
    assert answer(worked, "find").direction.key == key
    assert worked.unproven == ()


def every_place(q1: float, q2: float, q3: float, d: float, wanted: float) -> list[float]:
    """Every root of the net force on a fine grid, refined by scipy: positions with charge 1 at 0."""

    def gap(x: float) -> float:
        return K * q3 * (q1 * x / abs(x) ** 3 + q2 * (x - d) / abs(x - d) ** 3) - wanted

    steps = np.geomspace(1e-6 * d, 1e4 * d, 20001)
    half = steps[steps < d / 2]
    grids = [-steps[::-1], np.concatenate([half, (d - half)[::-1]]), d + steps]
    found = []
    for grid in grids:
        sizes = [gap(x) for x in grid]
        for low, high, a, b in zip(grid, grid[1:], sizes, sizes[1:], strict=False):
            if (a > 0) != (b > 0):
                found.append(brentq(gap, low, high, xtol=1e-15))
    return sorted(found)


@pytest.mark.parametrize(
    ("q1", "q2", "q3", "force", "count"),
    [
        (6, 4, 2, 12, 2),
        (6, 4, 2, -12, 2),
        (6, 4, -2, 12, 2),
        (6, -4, 2, 12, 2),
        (6, -4, 2, -12, 2),
        (6, -4, 2, 2, 0),
        (6, -4, 2, 0.002, 2),
        (-4, 6, 2, 0.002, 2),
        (-4, 6, 2, -0.002, 2),
        (5, -5, 1, 3, 0),
        (5, -5, 1, -3, 2),
        (1, -9, 3, 0.5, 0),
        (1, -9, 3, -0.5, 2),
    ],
)
def test_every_place_is_found(q1: float, q2: float, q3: float, force: float, count: int) -> None:
    """All places on the line, none or two in one part among them, are those of a fine scan with scipy."""
    right = every_place(q1 * 1e-9, q2 * 1e-9, q3 * 1e-9, 0.3, force * 1e-6)
    worked = solve(
        "places",
        Q1=f"{q1} nC",
        Q2=f"{q2} nC",
        Q3=f"{q3} nC",
        d="30 cm",
        F_net=f"{abs(force)} µN",
        way="right" if force > 0 else "left",
    )
    place = {"u": lambda r: -r, "x": lambda r: r, "w": lambda r: 0.3 + r}
    found = sorted(place[a.name[0]](a.value) for a in worked.answers)
    assert found == pytest.approx(right, rel=1e-8)
    assert len(found) == count
    assert worked.unproven == ()


@pytest.mark.parametrize("unknown", ["F_net", "F_x", "F_y"])
def test_perpendicular_forces_are_those_of_an_algebra_system(unknown: str) -> None:
    """sympy, solving Pythagoras for each side, gives our value."""
    given_ = {"F_net": 7.5, "F_x": 4.5, "F_y": 6.0}
    names = {name: sympy.Symbol(name, positive=True) for name in given_}
    law = names["F_net"] ** 2 - names["F_x"] ** 2 - names["F_y"] ** 2
    (root,) = sympy.solve(law.subs({names[n]: v for n, v in given_.items() if n != unknown}), names[unknown])
    typed = {name: f"{value} µN" for name, value in given_.items()}
    worked = solve("components", unknown, **{**typed, unknown: ""})
    assert worked.values[unknown] == pytest.approx(float(root) * 1e-6)


# --- what must hold whatever the numbers ------------------------------------------------------------------------


@given(ROWS)
def test_all_net_forces_together_are_zero(places: list[tuple[int, int, int]]) -> None:
    """Forces come in equal and opposite pairs, so the net forces on all the charges add up to nothing."""
    places = places[:4]
    answers = [reckon("plane", charges=rows(places), on=str(n + 1)).values for n in range(len(places))]
    for axis in "xy":
        parts = [values[f"SigmaF_{axis}"] for values in answers]
        assert sum(parts) == pytest.approx(0, abs=1e-9 * sum(values["F_net"] for values in answers) + 1e-30)


@given(ROWS, st.sampled_from([2, 3, 0.5]))
def test_scaling_distances_scales_the_net_force(places: list[tuple[int, int, int]], factor: float) -> None:
    """All distances times f: the net force over f², in the same direction."""
    first = reckon("plane", charges=rows(places), on="1").values
    wide = [{"Q": f"{q} nC", "x": f"{x * factor} cm", "y": f"{y * factor} cm"} for q, x, y in places]
    second = reckon("plane", charges=wide, on="1").values
    assert second["SigmaF_x"] == pytest.approx(first["SigmaF_x"] / factor**2, rel=1e-6, abs=1e-15)
    assert second["SigmaF_y"] == pytest.approx(first["SigmaF_y"] / factor**2, rel=1e-6, abs=1e-15)


@given(ROWS)
def test_turning_every_sign_changes_nothing(places: list[tuple[int, int, int]]) -> None:
    """All charges with the opposite sign: the same forces."""
    first = reckon("plane", charges=rows(places), on="1").values
    second = reckon("plane", charges=rows([(-q, x, y) for q, x, y in places]), on="1").values
    assert second["SigmaF_x"] == pytest.approx(first["SigmaF_x"], rel=1e-12)
    assert second["SigmaF_y"] == pytest.approx(first["SigmaF_y"], rel=1e-12)


@pytest.mark.parametrize("key", ["line", "plane"])
def test_no_net_force_has_no_direction(key: str) -> None:
    """Half-way between equal charges the net force is exactly zero, and is said to have no direction."""
    table = [
        {"Q": "3 nC", "x": "0,1", "y": "0"},
        {"Q": "-2 nC", "x": "0,4", "y": "0"},
        {"Q": "3 nC", "x": "0,7", "y": "0"},
    ]
    worked = solve(key, charges=table, on="2")
    net = answer(worked, "net")
    assert net.value == 0
    assert net.direction.words == "no direction: the net force is zero"
    assert net.direction.angle is None


@pytest.mark.parametrize(
    ("x", "y", "key", "words"),
    [
        (1, 0, "right", "to the right: along +x"),
        (1, 1, "right-up", "45,00° above the +x axis"),
        (0, 2, "up", "upwards: along +y"),
        (-1, 1, "left-up", "45,00° above the −x axis (135,00° anticlockwise from the +x axis)"),
        (-3, 0, "left", "to the left: along −x"),
        (-1, -1, "left-down", "45,00° below the −x axis (225,00° anticlockwise from the +x axis)"),
        (0, -1, "down", "downwards: along −y"),
        (1, -1, "right-down", "45,00° below the +x axis (315,00° anticlockwise from the +x axis)"),
    ],
)
def test_every_quadrant_has_its_words(x: float, y: float, key: str, words: str) -> None:
    """The direction names an axis and a side of it, in every quadrant and along every axis."""
    found = compass(x, y, Style())
    assert (found.key, found.words) == (key, words)
    assert found.angle == pytest.approx(math.degrees(math.atan2(y, x)) % 360)


def test_bounds_tell_possible_from_impossible() -> None:
    """Two forces of 3 and 4 give from 1 to 7 and nothing else."""
    for net, fits in ((1.0, True), (7.0, True), (5.0, True), (0.9, False), (7.1, False)):
        assert within_bounds({"a": 3.0, "b": 4.0, "net": net}, ("a", "b"), "net") is fits
    assert "difference" in bounds_words(2)
    assert "difference" not in bounds_words(3)


@given(st.floats(1e-9, 1e3))
def test_the_suggested_scale_fits_the_page(largest: float) -> None:
    """The largest force is drawn between 4 and 10 cm long."""
    worded = scale_words(largest, Style(comma=False)).split("for ")[1].removesuffix(" N")
    number, _, power = worded.replace("\N{NO-BREAK SPACE}", "").partition("×10")
    raised = power.translate(str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789-"))
    assert 4 * (1 - 1e-6) <= largest / float(f"{number}e{raised or 0}") <= 10 * (1 + 1e-6)


# --- refusals -----------------------------------------------------------------------------------------------------

LINE = [{"Q": "1 nC", "x": "0"}, {"Q": "2 nC", "x": "10 cm"}]
SIZE = "The force must be greater than zero: enter its size; choose the direction separately."


@pytest.mark.parametrize(
    ("key", "typed", "field", "sentence"),
    [
        ("line", {"charges": LINE[:1]}, "charges", "Give from 2 to 8 rows: there are 1."),
        (
            "line",
            {"charges": [*LINE, {"Q": "3 nC", "x": "0,1 m"}], "on": "1"},
            "charges.2.x",
            "Two charges share a point: charges 2 and 3. Move one of them.",
        ),
        (
            "plane",
            {"charges": rows([(1, 3, 4), (2, 0, 0), (3, 3, 4)])},
            "charges.2.x",
            "Two charges share a point: charges 1 and 3. Move one of them.",
        ),
        (
            "line",
            {"charges": LINE, "on": "3"},
            "on",
            "There is no charge 3: the table has 2 charges. Choose one of them.",
        ),
        (
            "line",
            {"charges": [LINE[0], {"Q": "0", "x": "1"}], "on": "1"},
            "charges.1.Q",
            "A zero charge gives no force: leave this row out.",
        ),
        ("right-angle", {"Q2": "0"}, "Q2", "A zero charge gives no force, so this cannot be found."),
        (
            "components",
            {"F_net": "4 µN", "F_x": "5 µN", "F_y": ""},
            "F_net",
            (
                "The net force is the longest side of the right-angled triangle, so it must be larger than either"
                " force. Type a larger net force, or a smaller force."
            ),
        ),
        (
            "components",
            {"r": ""},
            "r",
            "To go on to the charge, fill in both the charge and the distance; or leave both empty.",
        ),
        ("components", {"F_x": "-5 µN"}, "F_x", SIZE),
        ("third", {"F_net": "-5 µN"}, "F_net", "Enter the size of the force; choose the direction separately."),
        ("third", {"r_12": "0"}, "r_12", "Distance must be greater than zero."),
        (
            "third",
            {"F_net": "4,8 µN", "way": "left"},
            "F_net",
            (
                "Charge 1 alone already gives this net force, so there is nothing left for charge 3 to do. Change the"
                " net force."
            ),
        ),
        (
            "third",
            {"r_12": "20 cm", "side_1": "right"},
            "r_23",
            "Two charges share a point. Give each its own position.",
        ),
        ("third", {"Q2": "0"}, "Q2", "A zero charge gives no force, so this cannot be found."),
        (
            "balance",
            {"Q1": "4 nC", "Q2": "-4 nC"},
            "Q2",
            (
                "No balance position at a finite distance: with equal and opposite charges the two forces are equal"
                " only half-way between them, and there both point the same way. Change one of the charges."
            ),
        ),
        ("balance", {"Q1": "0"}, "Q1", "A zero charge gives no force, so this cannot be found."),
        (
            "places",
            {"F_net": "0"},
            "F_net",
            "For no net force use the question “Where is there no net force?”. Here type a force greater than zero.",
        ),
        ("rail", {"n": "0"}, "n", "The number of electrons must be greater than zero."),
        (
            "rail",
            {"F_D": "10,8 µN", "way": "left"},
            "F_D",
            "Sphere A alone already gives this net force, so sphere D would carry no charge. Change the new net force.",
        ),
        ("pucks", {"m": "0"}, "m", "Mass must be greater than zero."),
    ],
)
def test_impossible_data_are_refused(key: str, typed: dict, field: str, sentence: str) -> None:
    """The field and the sentence, word for word."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(key, **typed)
    refusals = caught.value.refusals if isinstance(caught.value, Refusals) else (caught.value,)
    assert (field, sentence) in [(r.field, r.sentence) for r in refusals]


@pytest.mark.parametrize(
    ("key", "typed"),
    [
        ("pucks", {"Q_A": "7e200 C", "Q_B": "7e200 C"}),
        ("right-angle", {"Q1": "1e-200 C", "Q2": "1e-200 C", "Q3": "1e-200 C"}),
        ("places", {"d": "1e300 m", "F_net": "1e-300 N"}),
        ("places", {"Q1": "9e290 C", "Q3": "9e20 C"}),
        (
            "plane",
            {
                "charges": [
                    {"Q": "1 nC", "x": "0", "y": "0"},
                    {"Q": "1 nC", "x": "1e290 m", "y": "1 m"},
                ]
            },
        ),
        ("third", {"Q1": "1e300 C", "r_12": "1e-300 m"}),
    ],
)
def test_numbers_beyond_floats_are_refused_in_words(key: str, typed: dict) -> None:
    """Numbers whose force no float holds come back as a sentence, not as a fault."""
    _, question = find(f"several-charges.{key}")
    data = {"question": f"several-charges.{key}", "inputs": {**question.example, **typed}}
    reply = json.loads(desk.answer(json.dumps({"operation": "solve", "data": data})))
    assert not reply["ok"]
    assert reply["errors"][0]["message"].startswith("These numbers have no answer here")


def test_a_ninth_charge_is_refused() -> None:
    """The table holds eight charges at most."""
    with pytest.raises(Refusals, match="Give from 2 to 8 rows: there are 9"):
        solve("line", charges=[{"Q": "1 nC", "x": str(n)} for n in range(9)])


# --- known mistakes -----------------------------------------------------------------------------------------------


def mistake(key: str, name: str, at: str, **typed: object) -> tuple[Mistake, dict[str, float]]:
    """A declared mistake, and all the values it leads to."""
    _, question = find(f"several-charges.{key}")
    data = read(question, {**question.example, **typed}).data
    plan = question.plan(data)
    found = next(m for step in plan.steps for m in step.mistakes if m.key == name and m.at == at)
    return found, run(plan, Settings().constants(), instead={at: found.instead})


SIZES_ADDED = (
    "You added all the sizes. Forces have directions: draw each one, and count those that point the opposite way as"
    " negative."
)
SUBTRACTED = "You subtracted the forces. Both point the same way: draw them again and add their sizes."
ONE_PAIR = (
    "You added the charges and the distances first. Each pair has a force of its own: work out one pair at a time,"
    " then add."
)
OTHER_PAIR = "You used the distance of another pair. Measure from charge 1 to charge 2: use r₁₂."
AT_RIGHT = "You added F₂₁ and F₃₁. They are at right angles, so add their squares and take the square root."
SQUARE_LEFT = "You stopped at the square of the force. Take its square root: that is Fₙₑₜ."
OTHER_LINES = (
    "You added the sizes of the forces. They act along different lines, so add their components and then use"
    " Pythagoras."
)
ALIGNED = [{"Q": "+6 nC", "x": "0"}, {"Q": "-4 nC", "x": "20 cm"}, {"Q": "-5 nC", "x": "50 cm"}]


@pytest.mark.parametrize(
    ("key", "name", "at", "typed", "value", "say"),
    [
        ("line", "sizes-added", "SigmaF", {}, 5.4e-6 + 2e-6, SIZES_ADDED),
        ("line", "subtracted", "SigmaF", {"charges": ALIGNED}, 5.4e-6 - 2e-6, SUBTRACTED),
        ("line", "distances-first", "SigmaF", {}, 9e9 * 4e-9 * 11e-9 / 0.5**2, ONE_PAIR),
        ("line", "wrong-pair", "F_12", {}, None, OTHER_PAIR),
        ("right-angle", "sizes-added", "F_net", {}, 12e-6, AT_RIGHT),
        ("right-angle", "distances-first", "F_net", {}, 9e9 * 5e-9 * 14e-9 / 0.5**2, ONE_PAIR),
        ("right-angle", "root-omitted", "F_net", {}, 9e-6**2 + 3e-6**2, SQUARE_LEFT),
        ("plane", "sizes-added", "F_net", {}, 2.25e-6 + 2.7e-6, OTHER_LINES),
    ],
)
def test_wrong_sums_give_the_listed_values(
    key: str, name: str, at: str, typed: dict, value: float | None, say: str
) -> None:
    """Each slip changes the net force to the value it is known by, and says its sentence."""
    found, values = mistake(key, name, at, **typed)
    assert found.said == say
    if value is None:  # charge 3's distance, 0,3 m, in place of 0,2 m: 2,4 µN instead of 5,4 µN
        assert values["F_12"] == pytest.approx(2.4e-6)
    else:
        assert values["F_net"] == pytest.approx(value)


@pytest.mark.parametrize(
    ("key", "up", "across"),
    [
        ("right-angle", "F₃₁", "F₂₁"),
        ("plane", "|ΣF_y|", "|ΣFₓ|"),
        ("components", "F_y", "Fₓ"),
        ("pucks", "F_CA", "F_BA"),
    ],
)
def test_the_inverted_angle_is_the_other_one(key: str, up: str, across: str) -> None:
    """tan⁻¹(F_x/F_y) gives 90° less the right angle."""
    right = solve(key).values["theta"]
    found, values = mistake(key, "angle-inverted", "theta")
    assert values["theta"] == pytest.approx(math.pi / 2 - right)
    assert found.said == (
        f"You have the angle with the y-axis. The angle θ is measured from the x-axis, so divide {up} by {across}."
    )


def test_turned_directions_name_both_slips() -> None:
    """Wrong side and force-by coincide in size; both are declared, and the reader is asked which was drawn."""
    found, values = mistake("line", "wrong-side", "F_net")
    other, _ = mistake("line", "force-by", "F_net")
    assert found.turns
    assert other.turns
    assert (found.said, other.said) == (
        "You gave the force on charge 2 the opposite direction. Charges that attract it pull it towards them, those"
        " that repel it push it away: draw the arrows again.",
        "You drew the force by charge 2. The force on it is asked: start each arrow at charge 2.",
    )
    assert found.why == other.why
    assert found.why.endswith("was the force on charge 2 drawn, or the force by it?")
    assert values["F_net"] == pytest.approx(solve("line").values["F_net"])


@pytest.mark.parametrize("key", KEYS)
@pytest.mark.parametrize("factor", [0.5, 2.0, -1.0])
def test_a_learners_own_value_can_be_carried_through(key: str, factor: float) -> None:
    """Whatever step a learner gets wrong, the rest of the answer and its figures can still be shown."""
    topic, question = find(f"several-charges.{key}")
    found = read(question, question.example)
    plan = question.plan(found.data)
    constants = Settings().constants()
    right = run(plan, constants)
    for step in plan.steps:
        values = run(plan, constants, carry={step.makes: right[step.makes] * factor})
        assert show(topic, question, found, plan, values).parts


# --- memo, figures, scenarios ---------------------------------------------------------------------------------------


def test_the_marks_are_those_of_the_memo() -> None:
    """Line: 3 a force, 1 an arrow, 4 the net force; plane: 2 a force, 4 net and angle; third charge 5."""
    line = {part.key: part.marks for part in solve("line").parts}
    assert line == {"state": 2, "force-1": 3, "force-3": 3, "draw": 2, "net": 4}
    corner = {part.key: part.marks for part in solve("right-angle").parts}
    assert corner == {"state": 2, "force-2": 2, "force-3": 2, "draw": 2, "net": 4, "sum": 2}
    assert {part.key: part.marks for part in solve("third").parts}["find"] == 5


@pytest.mark.parametrize("key", ["rail", "pucks"])
def test_a_scenario_mixes_kinds_of_parts(key: str) -> None:
    """Five to eight parts, of every kind, under one set of data."""
    assert find(f"several-charges.{key}")[1].scenario
    parts = solve(key).parts
    assert 5 <= len(parts) <= 8
    assert {part.kind for part in parts} == {"state", "calculate", "draw", "explain"}


def test_rail_values_feed_each_other() -> None:
    """A wrong charge on A changes its force, the net force and the charge on D, by numpy's sums."""
    _, question = find("several-charges.rail")
    plan = question.plan(read(question, question.example).data)
    for q in (8e-9, 3e-9):
        values = run(plan, Settings().constants(), carry={"Q_A": q})
        net = vector_sum(np.array([q, -6e-9, -9e-9]), np.array([[-0.2], [0.0], [0.3]]), 1)[0]
        assert values["F_net"] == pytest.approx(abs(net))
        after = vector_sum(np.array([q, -6e-9, values["Q_D"]]), np.array([[-0.2], [0.0], [0.3]]), 1)[0]
        assert after == pytest.approx(2.4e-6)


@pytest.mark.parametrize(("key", "charge"), [("rail", "Q_A"), ("pucks", "Q_B"), ("third", "Q3"), ("plane", "Q2")])
def test_a_charge_to_be_found_has_no_sign_in_the_scene(key: str, charge: str) -> None:
    """Whoever is to find a charge sees neither plus nor minus, in the picture or in words."""
    topic, question = find(f"several-charges.{key}")
    scene = work(topic, question, read(question, question.example)).figure
    assert scene
    assert "positive" in scene.description
    hidden = scene.without({charge})
    assert hidden
    assert not re.search("positive|negative", hidden.description)
    label = charge[2:] if "_" in charge else f"Q_{{{charge[1:]}}}"
    assert [item.sign for item in hidden.items if isinstance(item, Sphere) and item.label == label] == [""]


def test_pucks_agree_with_numpy() -> None:
    """Net force, acceleration and the net force at twice the distances, from signed vectors."""
    values = solve("pucks").values
    charges, places = np.array([-40e-9, 60e-9, -50e-9]), np.array([[0, 0], [0.3, 0], [0, 0.25]])
    net = vector_sum(charges, places, 0)
    assert values["F_net"] == pytest.approx(np.linalg.norm(net))
    assert values["a"] == pytest.approx(np.linalg.norm(net) / 5e-3)
    assert values["F_new"] == pytest.approx(np.linalg.norm(vector_sum(charges, 2 * places, 0)))
    assert net[0] > 0 > net[1]


@given(ROWS, st.integers(0, 7))
def test_every_figure_can_be_drawn(places: list[tuple[int, int, int]], on: int) -> None:
    """No arrangement of charges in a plane stops a drawing."""
    on %= len(places)
    worked = solve("plane", charges=rows(places), on=str(on + 1))
    for figure in [worked.figure, *(part.figure for part in worked.parts)]:
        if figure:
            assert svg.render(figure).startswith("<svg")


def test_the_memo_counts_one_arrow_a_force() -> None:
    """A drawing part has one point for every other charge, and names the force and its direction."""
    draw = next(part for part in solve("plane").parts if part.key == "draw")
    assert [point.marks for point in draw.points] == [1, 1]
    assert "F₂₁" in draw.points[0].words
    assert "away from charge 2 (to the right)" in draw.points[0].words
    assert "towards charge 3 (at 53,13° above the +x axis)" in draw.points[1].words


@pytest.mark.parametrize(
    ("x", "y", "words"),
    [
        (0.0, 2.0, "upwards: along +y"),
        (-3.0, 0.0, "to the left: along −x"),
        (1.0, 7e-9, "0,00000040° above the +x axis"),
        (1.0, -1e-6, "0,000057° below the +x axis (359,999943° anticlockwise from the +x axis)"),
        (1e-6, 1.0, "89,999943° above the +x axis"),
        (4.0, 3.0, "36,87° above the +x axis"),
    ],
)
def test_a_direction_beside_an_axis_is_never_told_as_on_it(x: float, y: float, words: str) -> None:
    """Along an axis is told by the axis; 90,00°, 360,00° and powers of ten stand nowhere."""
    from calc.language.printing import Style
    from calc.topics.several_charges.shared import compass

    assert compass(x, y, Style()).words == words
