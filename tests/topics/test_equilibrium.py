"""Charged bodies in equilibrium against published answers, an algebra system, root finders, energy and vector sums."""

import itertools
import math
import random
from dataclasses import replace

import numpy as np
import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import optimize

from calc.figures import Arrow, Figure
from calc.language.expressions import equation, expression
from calc.model.answers import PartShown, WorkedAnswer
from calc.model.constants import Settings
from calc.model.questions import Choice, Question, Refusal, Topic
from calc.practice.drawing import draw
from calc.topics import find
from calc.topics.equilibrium.along import Line
from calc.topics.equilibrium.hung import NO_SHORTCUT
from calc.topics.equilibrium.relations import steps_of
from calc.topics.equilibrium.threads import Pair
from calc.working.reading import Refusals, read
from calc.working.working import run, work
from tests.cases import reckoned
from tests.strategies import examples

K, G, E = 9e9, 9.8, 1.6e-19
SLOPE_KEYS = ("m", "theta", "Q1", "Q2", "r", "F_E", "T", "N", "a")
SCENARIOS = [q.key for q in find("equilibrium.slope")[0].questions if q.scenario]


def solve(key: str, constants: Settings | None = None, **typed: str) -> WorkedAnswer:
    """The worked answer of ``equilibrium.key`` for typed data."""
    topic, question = find(f"equilibrium.{key}")
    return work(topic, question, read(question, typed, "", constants))


def reckon(key: str, **typed: str) -> WorkedAnswer:
    """The same without figures, for tests that look at numbers only."""
    topic, question = find(f"equilibrium.{key}")
    return reckoned(topic, question, read(question, typed))


def asked(key: str, want: str, **typed: str) -> float:
    """The size of one value asked for."""
    return abs(reckon(key, want=want, **typed).values[want])


def part(worked: WorkedAnswer, key: str) -> PartShown:
    """One part of a worked answer."""
    return next(shown for shown in worked.parts if shown.key == key)


def typed_si(name: str, value: float) -> str:
    """A value as a reader could type it."""
    unit = {
        "m": "kg",
        "theta": "°",
        "alpha": "°",
        "Q1": "C",
        "Q2": "C",
        "r": "m",
        "L": "m",
        "s": "m",
        "a": "m/s^2",
    }.get(name, "N")
    return f"{math.degrees(value) if unit == '°' else value!r} {unit}"


# --- published and reference values -------------------------------------------------------------------------


def test_a_published_pair_on_threads() -> None:
    """Physics for Scientists and Engineers: A Strategic Approach, 4th ed., ch. 22, exercise 73: 7.46e-7 C.

    Read from a public page of solutions: 3.0 g, 1.0 m, 20° from the vertical, k = 9.0e9, g = 9.8.
    """
    size = asked("threads", "Q1", m="3 g", L="1 m", alpha="20°", equal="equal")
    assert size == pytest.approx(7.46e-7, rel=1e-3)


@pytest.mark.parametrize(
    ("mistake_free", "published"),
    [
        # OpenStax, College Physics (CC BY 4.0), section "Normal, Tension, and Other Examples of Forces",
        # worked example of the weight on an incline: 60 kg, 25°, N printed as 532 N.
        ("N", 532.0),
        # The same skier without friction: 4.14 m/s², which is F_g∥/m.
        ("F_gpar/m", 4.14),
    ],
)
def test_a_skier_of_a_textbook_on_our_slope(mistake_free: str, published: float) -> None:
    """The components of a published skier's weight come from the same steps as a charged sphere's."""
    topic, question = find("equilibrium.slope")
    typed = {
        "want": "N",
        "m": "60 kg",
        "theta": "25°",
        "T": "100 N",
        "string": "up",
        "where": "below",
    }
    found = read(question, typed)
    line = Line(True, -1, 1, "up")
    steps = [step for step in steps_of(*line.weight_laws()) if step.makes in ("F_gpar", "N")]
    values = {**found.data.values, "g": 9.80}
    for step in steps:
        values[step.makes] = expression(step.how).value(values)
    assert expression(mistake_free).value(values) == pytest.approx(published, rel=3e-3)
    assert work(topic, question, found).values["N"] == pytest.approx(532.0, rel=3e-3)


def test_reference_case_slope() -> None:
    """20 g, 30°, 60 nC each, 3 cm, repelled from below; recomputed with school constants (common practice, no
    source)."""
    worked = solve(
        "slope", want="a", where="below", string="up", m="20 g", theta="30°", Q1="60 nC", Q2="60 nC", r="3 cm"
    )
    assert worked.values["F_E"] == pytest.approx(3.60e-2)
    assert worked.values["T"] == pytest.approx(6.20e-2)
    assert worked.values["a"] == pytest.approx(3.10)
    assert part(worked, "find").answer.direction.key == "down-slope"


def test_reference_case_threads() -> None:
    """0,25 m, 1 g, tan α = 0,75: r 0,30 m, Q 2,71e-7 C, T 1,23e-2 N, a 12,25 m·s⁻² (common practice, no source)."""
    typed = {"m": "1 g", "L": "0,25 m", "alpha": f"{math.degrees(math.atan(0.75))!r}°", "equal": "equal"}
    assert asked("threads", "r", **typed) == pytest.approx(0.30)
    assert asked("threads", "Q1", **typed) == pytest.approx(2.71e-7, rel=2e-3)
    assert asked("threads", "T", **typed) == pytest.approx(1.23e-2, rel=5e-3)
    worked = solve("threads", want="a", **typed)
    assert worked.values["a"] == pytest.approx(12.25)
    assert part(worked, "find").answer.direction.key == "away"


# --- an algebra system on the same equations ------------------------------------------------------------------

SET_UPS = [("up", 1), ("up", -1), ("down", 1), ("none", 1)]


@pytest.mark.parametrize(("string", "lift"), SET_UPS)
def test_slope_steps_solve_the_vector_equations_of_an_algebra_system(string: str, lift: int) -> None:
    """sympy, given ΣF = 0 in horizontal and vertical components, agrees with every balance and normal-force step."""
    T, F, N, m, g, th = sympy.symbols("T F_E N m g theta")
    along = sympy.Matrix([sympy.cos(th), sympy.sin(th)])
    across = sympy.Matrix([-sympy.sin(th), sympy.cos(th)])
    pull = {"up": 1, "down": -1, "none": 0}[string]
    total = pull * T * along + lift * F * along + N * across + sympy.Matrix([0, -m * g])
    line = Line(True, -1, lift, string)
    names = {"T": T, "F_E": F, "N": N, "m": m, "g": g, "theta": th, "F_gpar": m * g * sympy.sin(th)}
    for step in (*steps_of(*line.balance_laws()), *steps_of(*line.weight_laws())):
        if step.makes in ("T", "N", "F_E"):
            ours = sympy.sympify(step.how, locals=names)
            unknown = T if step.makes == "T" else F
            right = sympy.solve(list(total), (N, unknown), dict=True)[0]
            target = right[names[step.makes]]
            assert sympy.simplify(ours - target) == 0, step.make


@pytest.mark.parametrize("two", [False, True])
@pytest.mark.parametrize("repel", [1, -1])
def test_thread_steps_follow_from_the_vector_equations(two: bool, repel: int) -> None:
    """Every rearranged line on threads fits T sin α = F_E, T cos α = mg and the triangle, at one set of numbers."""
    if repel < 0 and not two:
        repel = 1
    m, length, alpha, q2 = 2e-3, 0.3, 0.35, 4e-8
    s = 0.5 if two else 0.0
    x = length * math.sin(alpha)
    r = s + repel * 2 * x
    force = m * G * math.tan(alpha)
    tension = m * G / math.cos(alpha)
    q1 = force * r**2 / (K * q2)
    values = {
        "k": K,
        "g": G,
        "e": E,
        "m": m,
        "L": length,
        "alpha": alpha,
        "beta": 2 * alpha,
        "s": s,
        "x": x,
        "r": r,
        "F_E": force,
        "T": tension,
        "Q1": q1,
        "Q2": q2,
        "n": q1 / E,
        "F_net": tension,
        "a": tension / m,
    }
    for step in steps_of(*Pair(repel, two, False).laws()):
        if step.makes == "s" and not two:
            continue
        assert expression(step.how).value(values) == pytest.approx(values[step.makes], rel=1e-9), step.make


# --- any givens, any unknown ----------------------------------------------------------------------------------

CASES = [
    ("below", "up", 1, 3e-8, 5e-8),
    ("above", "up", -1, 3e-8, 5e-8),
    ("above", "up", 1, -3e-8, 5e-8),
    ("below", "up", -1, 3e-8, -5e-8),
    ("below", "down", 1, 9e-8, 9e-8),
    ("above", "down", 1, 9e-8, -9e-8),
]


def solved_or_none(want: str, typed: dict[str, str]) -> WorkedAnswer | None:
    """The worked answer, or None where the data are refused as too few; any other refusal fails the test."""
    try:
        return reckon("slope", want=want, **typed)
    except Refusal as refusal:
        if "does not follow" not in refusal.sentence:
            raise
        return None


@pytest.mark.parametrize(("where", "string", "lift", "q1", "q2"), CASES)
def test_any_sensible_givens_bring_back_what_was_left_out(
    where: str, string: str, lift: int, q1: float, q2: float
) -> None:
    """Of nine quantities of one slope, any five that suffice give back each of the others."""
    m, theta, r = 8e-3, 0.5, 0.035
    pull, force = m * G * math.sin(theta), K * abs(q1 * q2) / r**2
    tension = pull - lift * force if string == "up" else force - pull
    assert tension > 0
    whole = {
        "m": m,
        "theta": theta,
        "Q1": q1,
        "Q2": q2,
        "r": r,
        "F_E": force,
        "T": tension,
        "N": m * G * math.cos(theta),
        "a": tension / m,
    }
    acting = "repel" if q1 * q2 > 0 else "attract"
    solved: dict[str, int] = dict.fromkeys(SLOPE_KEYS, 0)
    for givens in itertools.combinations(SLOPE_KEYS, 5):
        typed = {name: typed_si(name, whole[name]) for name in givens}
        for want in set(SLOPE_KEYS) - set(givens):
            worked = solved_or_none(want, {"where": where, "string": string, "acting": acting, **typed})
            if worked is None:
                continue
            assert abs(worked.values[want]) == pytest.approx(abs(whole[want]), rel=1e-6), (givens, want)
            assert worked.unproven == (), (givens, want)
            solved[want] += 1
    assert min(solved.values()) >= 10, solved


def test_tension_beside_weight_tells_which_way_the_charges_act() -> None:
    """Less tension than mg sin θ with the charge below: F_E points up, so the spheres repel and share their sign."""
    worked = solve(
        "slope", want="Q1", where="below", string="up", m="10 g", theta="30°", T="30 mN", Q2="-40 nC", r="4 cm"
    )
    assert part(worked, "find").answer.direction.key == "negative"
    assert worked.values["Q1"] == pytest.approx(0.019 * 0.04**2 / (K * 4e-8), rel=1e-9)


def test_electrons_stand_for_a_charge() -> None:
    """2 × 10¹¹ electrons too many are −32 nC, attracted by a positive charge."""
    worked = solve(
        "slope",
        want="F_E",
        where="below",
        string="up",
        m="10 g",
        theta="30°",
        n="2e11",
        which="excess",
        Q2="50 nC",
        r="4 cm",
    )
    assert worked.values["F_E"] == pytest.approx(K * 3.2e-8 * 5e-8 / 0.04**2)
    assert part(worked, "find").answer.direction.key == "down-slope"


# --- the field at the string's end ----------------------------------------------------------------------------


@examples(60)
@given(
    q1=st.integers(-60, 60).filter(bool),
    q2=st.integers(-60, 60).filter(bool),
    where=st.sampled_from(("above", "below")),
    string=st.sampled_from(("up", "down")),
    d=st.integers(2, 30),
)
def test_net_field_is_the_sum_of_signed_fields(q1: int, q2: int, where: str, string: str, d: int) -> None:
    """numpy adds both fields with signs along the slope; size and direction agree."""
    r, end = 0.05, (1 if string == "up" else -1) * d / 100
    place = r if where == "above" else -r
    assume(abs(end - place) > 1e-9)
    charges, gaps = np.array([q1, q2]) * 1e-9, end - np.array([0.0, place])
    signed = float(np.sum(K * charges / gaps**2 * np.sign(gaps)))
    lift = -np.sign(q1 * q2) * (1 if where == "above" else -1)
    assume(string == "up" or lift > 0)
    mass = "2 kg" if string == "up" else "0,001 mg"
    worked = solve(
        "slope",
        want="E_net",
        where=where,
        string=string,
        m=mass,
        theta="30°",
        Q1=f"{q1} nC",
        Q2=f"{q2} nC",
        r="5 cm",
        d=f"{d} cm",
    )
    assert worked.values["E_net"] == pytest.approx(abs(signed), rel=1e-9, abs=1e-6)
    shown = part(worked, "find").answer.direction
    if abs(signed) > 1e-6:
        assert shown.key == ("up-slope" if signed > 0 else "down-slope")


# --- drawings: real forces, which close to zero ---------------------------------------------------------------


def force_arrows(figure: Figure) -> dict[str, np.ndarray]:
    """The real forces drawn, as vectors."""
    return {
        item.label: np.subtract(item.end, item.start)
        for item in figure.items
        if isinstance(item, Arrow) and item.kind == "force"
    }


@examples(40)
@given(
    m=st.integers(5, 40),
    theta=st.integers(20, 70),
    q=st.integers(20, 90),
    where=st.sampled_from(("above", "below")),
)
def test_drawn_forces_on_a_slope_add_up_to_zero(m: int, theta: int, q: int, where: str) -> None:
    """Arrows drawn to the numbers close to a zero resultant, whichever way F_E points."""
    typed = {
        "where": where,
        "m": f"{m} g",
        "theta": f"{theta}°",
        "Q1": f"{q} nC",
        "Q2": "70 nC",
        "r": "4 cm",
        "weight": "components",
    }
    worked = None
    for string in ("up", "down"):
        try:
            worked = solve("slope", want="N", string=string, **typed)
            break
        except Refusal:
            continue
    assert worked is not None
    arrows = force_arrows(part(worked, "draw").figure)
    assert set(arrows) == {"F_g", "N", "T", "F_E"}
    if "Arrows not to scale." not in part(worked, "draw").figure.notes:
        assert np.linalg.norm(sum(arrows.values())) < 1e-9


@examples(30)
@given(alpha=st.integers(10, 70), m=st.integers(1, 9), supports=st.sampled_from(("one", "two repel")))
def test_drawn_forces_on_a_thread_add_up_to_zero(alpha: int, m: int, supports: str) -> None:
    """T along the thread, the weight and the horizontal F_E close to a triangle."""
    two = supports != "one"
    typed = {"m": f"{m} g", "L": "30 cm", "alpha": f"{alpha}°", "equal": "equal", "parts": "components"}
    if two:
        typed.update(supports="two", s="20 cm", acting="repel")
    arrows = force_arrows(part(solve("threads", want="Q1", **typed), "draw").figure)
    assert set(arrows) == {"F_g", "T", "F_E"}
    assert np.linalg.norm(sum(arrows.values())) < 1e-9
    assert arrows["F_E"][0] > 0


def test_components_are_dashed_and_never_forces() -> None:
    """mg sin θ and mg cos θ are drawn as components beside one weight arrow, and only on request."""
    typed = {
        "want": "T",
        "where": "below",
        "string": "up",
        "m": "20 g",
        "theta": "30°",
        "Q1": "60 nC",
        "Q2": "60 nC",
        "r": "3 cm",
    }
    with_parts = part(solve("slope", weight="components", **typed), "draw").figure
    kinds = {i.label: i.kind for i in with_parts.items if isinstance(i, Arrow)}
    assert kinds["mg sin θ"] == kinds["mg cos θ"] == "component"
    plain = part(solve("slope", weight="whole", **typed), "draw").figure
    assert {i.label for i in plain.items if isinstance(i, Arrow)} == {"F_g", "N", "T", "F_E"}


def test_equal_lengths_on_request() -> None:
    """With “all equally long” every force arrow has the same length."""
    worked = solve(
        "slope",
        want="T",
        where="below",
        string="up",
        m="20 g",
        theta="30°",
        Q1="60 nC",
        Q2="60 nC",
        r="3 cm",
        lengths="equal",
    )
    lengths = {round(float(np.linalg.norm(v)), 9) for v in force_arrows(part(worked, "draw").figure).values()}
    assert len(lengths) == 1


@pytest.mark.parametrize(("key", "left"), [("slope", {"F_g", "N", "F_E"}), ("threads", {"F_g", "F_E"})])
def test_after_the_cut_no_tension_is_drawn(key: str, left: set[str]) -> None:
    """The second diagram keeps every other force, and its memo has one mark an arrow."""
    typed = {
        "slope": {
            "where": "below",
            "string": "up",
            "m": "20 g",
            "theta": "30°",
            "Q1": "60 nC",
            "Q2": "60 nC",
            "r": "3 cm",
        },
        "threads": {"m": "2 g", "alpha": "30°", "equal": "equal"},
    }[key]
    shown = part(solve(key, want="a", **typed), "draw-cut")
    assert set(force_arrows(shown.figure)) == left
    assert shown.marks == len(left)


# --- the cut --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("where", "string", "lift", "q1", "q2"), CASES)
def test_the_acceleration_grows_or_shrinks_as_the_numbers_say(
    where: str, string: str, lift: int, q1: float, q2: float
) -> None:
    """A little further on, the acceleration from the forces themselves is larger where the memo says “grow”."""
    m, theta, r = 8e-3, 0.5, 0.035
    side = 1 if where == "above" else -1
    line = Line(True, side, lift, string)

    def acceleration(moved: float) -> float:
        gap = r - side * moved
        return (lift * K * abs(q1 * q2) / gap**2 - m * G * math.sin(theta)) / m

    step = 1e-4 * line.motion
    assert acceleration(0.0) * line.motion > 0
    assert (abs(acceleration(step)) > abs(acceleration(0.0))) == line.grows
    words = line.after()[1].words
    assert ("grow" in words) == line.grows
    worked = solve(
        "slope",
        want="a",
        where=where,
        string=string,
        m="8 g",
        theta=typed_si("theta", theta),
        Q1=f"{q1!r} C",
        Q2=f"{q2!r} C",
        r="3,5 cm",
    )
    assert worked.values["a"] == pytest.approx(abs(acceleration(0.0)), rel=1e-9)
    assert part(worked, "find").answer.direction.key == ("up-slope" if line.motion > 0 else "down-slope")


@given(alpha=st.integers(5, 80), m=st.integers(1, 20))
@examples(40)
def test_a_cut_thread_lets_the_sphere_go_along_its_line(alpha: int, m: int) -> None:
    """Weight and F_E added as vectors: size T, along the thread's line, a = g/cos α whatever the mass."""
    worked = solve("threads", want="a", m=f"{m} g", alpha=f"{alpha}°", equal="equal")
    angle, mass = math.radians(alpha), m / 1e3
    push = asked("threads", "F_E", m=f"{m} g", alpha=f"{alpha}°", equal="equal")
    net = np.array([push, -mass * G])
    assert worked.values["a"] == pytest.approx(float(np.linalg.norm(net)) / mass, rel=1e-9)
    assert worked.values["a"] == pytest.approx(G / math.cos(angle), rel=1e-9)
    assert math.atan2(net[0], -net[1]) == pytest.approx(angle, rel=1e-9)


# --- angles from charges: root finders and energy ---------------------------------------------------------------


@examples(40)
@given(q=st.integers(20, 900), length=st.integers(10, 90), m=st.integers(1, 30))
def test_the_angle_of_one_support_is_scipys_root(q: int, length: int, m: int) -> None:
    """brentq on T sin α = F_E with T = mg/cos α finds the same angle."""
    charge, far, mass = q * 1e-9, length / 100, m / 1e3

    def gap(a: float) -> float:
        return mass * G * math.sin(a) / math.cos(a) - K * charge**2 / (2 * far * math.sin(a)) ** 2

    expected = optimize.brentq(gap, 1e-7, math.pi / 2 - 1e-7, xtol=1e-14)
    ours = asked("threads", "alpha", m=f"{m} g", L=f"{length} cm", Q1=f"{q} nC", equal="equal")
    assert ours == pytest.approx(expected, rel=1e-8)


def energy(alpha: float, m: float, length: float, s: float, product: float) -> float:
    """Potential energy of the pair leaning outwards by alpha; product is kQ₁Q₂ with its sign."""
    return -2 * m * G * length * math.cos(alpha) + product / (s + 2 * length * math.sin(alpha))


@examples(30)
@given(q1=st.integers(20, 400), q2=st.integers(20, 400), s=st.integers(1, 30))
def test_repelling_spheres_hang_where_the_energy_is_least(q1: int, q2: int, s: int) -> None:
    """scipy's minimum of the potential energy lies at our angle, for two supports and unequal charges."""
    lowest = optimize.minimize_scalar(
        energy,
        bounds=(1e-6, math.pi / 2 - 1e-6),
        method="bounded",
        args=(3e-3, 0.4, s / 100, K * q1 * q2 * 1e-18),
        options={"xatol": 1e-12},
    )
    ours = asked(
        "threads", "alpha", supports="two", equal="own", m="3 g", L="40 cm", s=f"{s} cm", Q1=f"{q1} nC", Q2=f"{q2} nC"
    )
    assert ours == pytest.approx(lowest.x, abs=2e-6)


@examples(40)
@given(q=st.integers(5, 120), length=st.integers(10, 60), s=st.integers(5, 40))
def test_attracting_spheres_have_every_angle_that_a_fine_scan_finds(q: int, length: int, s: int) -> None:
    """numpy's scan of tan α (s − 2L sin α)² = c counts as many angles as are listed; none is refused."""
    m, far, apart = 1e-3, length / 100, s / 100
    c = K * (q * 1e-9) * 40e-9 / (m * G)
    limit = math.asin(apart / (2 * far)) if apart < 2 * far else math.pi / 2
    grid = np.linspace(1e-7, limit - 1e-9, 200_001)
    values = np.tan(grid) * (apart - 2 * far * np.sin(grid)) ** 2 - c
    assume(np.min(np.abs(values)) < c)
    assume(np.max(values) > 1e-4 * c or np.max(values) < -1e-4 * c)  # not a double root
    scanned = grid[:-1][np.sign(values[:-1]) != np.sign(values[1:])]
    typed = {
        "supports": "two",
        "equal": "own",
        "m": "1 g",
        "L": f"{length} cm",
        "s": f"{s} cm",
        "Q1": f"{q} nC",
        "Q2": "-40 nC",
    }
    if not scanned.size:
        with pytest.raises(Refusal, match=r"^No equilibrium with the spheres apart"):
            solve("threads", want="alpha", **typed)
        return
    found = solve("threads", want="alpha", **typed).values
    ours = [found[name] for name in ("alpha", "alpha_2", "alpha_3") if name in found]
    assert ours == pytest.approx(list(scanned), abs=2e-5)


@pytest.mark.parametrize(("share", "angles"), [(0.9999, 2), (1.0001, 0)])
def test_just_below_the_strongest_attraction_there_are_two_angles_just_above_none(share: float, angles: int) -> None:
    """scipy finds the largest kQ₁Q₂/(mg) that still balances; a hair less has two angles, a hair more is refused."""
    best = optimize.minimize_scalar(
        lambda a: -math.tan(a) * (0.2 - 0.6 * math.sin(a)) ** 2,
        bounds=(0.0, math.asin(1 / 3)),
        method="bounded",
        options={"xatol": 1e-12},
    )
    charge = math.sqrt(-best.fun * share * 2e-3 * G / K)
    typed = {
        "supports": "two",
        "equal": "equal",
        "acting": "attract",
        "m": "2 g",
        "L": "30 cm",
        "s": "20 cm",
        "Q1": f"{charge!r} C",
    }
    if angles == 0:
        with pytest.raises(Refusal, match=r"^No equilibrium with the spheres apart"):
            solve("threads", want="alpha", **typed)
    else:
        values = solve("threads", want="alpha", **typed).values
        assert values["alpha"] < best.x < values["alpha_2"]


def test_of_two_angles_the_smaller_is_stable() -> None:
    """The energy has its minimum at the first and its maximum at the second angle, as the note says."""
    worked = solve(
        "threads", want="alpha", supports="two", equal="own", m="2 g", L="30 cm", s="20 cm", Q1="40 nC", Q2="-30 nC"
    )
    args = (2e-3, 0.3, 0.2, -K * 40e-9 * 30e-9)
    for name, sign in (("alpha", 1), ("alpha_2", -1)):
        at = -worked.values[name]  # inwards
        h = 1e-4
        bend = energy(at + h, *args) - 2 * energy(at, *args) + energy(at - h, *args)
        assert bend * sign > 0, name
        assert energy(at + h, *args) == pytest.approx(energy(at - h, *args), rel=1e-6)
    assert any("unstable" in note for note in worked.notes)


def test_the_shortcut_states_its_error() -> None:
    """sin³ α = kQ²/(4L²mg) instead of tan α sin² α: the per cent given are those against scipy's angle."""
    typed = {"m": "2 g", "L": "40 cm", "Q1": "250 nC", "equal": "equal"}
    worked = solve("threads", want="alpha", method="small", **typed)
    c = K * 250e-9**2 / (4 * 0.4**2 * 2e-3 * G)
    exact = optimize.brentq(lambda a: math.tan(a) * math.sin(a) ** 2 - c, 1e-6, 1.5)
    short = math.asin(c ** (1 / 3))
    assert worked.values["alpha"] == pytest.approx(short, rel=1e-12)
    assert worked.values["p"] == pytest.approx(100 * (short / exact - 1), rel=1e-8)
    assert asked("threads", "alpha", **typed) == pytest.approx(exact, rel=1e-9)


def test_the_shortcut_is_known_by_its_law_however_it_is_worded() -> None:
    """Only sin³ α = kQ²/(4L²mg) is out: the cube root from a measured tension is exact and has no error to state."""
    pair = Pair(1, two=False, equal=True, shortcut=True)
    short = pair.small_angle({"m": 2e-3, "L": 0.4, "Q1": 250e-9}, K, G)
    assert pair.shortens([replace(short, what="In other words")])
    assert not pair.shortens(pair.cube().steps())
    exact = solve("threads", want="alpha", method="small", T="30 mN", L="40 cm", Q1="60 nC", equal="equal")
    assert [part.key for part in exact.parts] == ["draw", "find"]
    assert NO_SHORTCUT in exact.notes


# --- limits and scaling ---------------------------------------------------------------------------------------


def test_with_hardly_any_charge_a_thread_hangs_straight() -> None:
    """Charge to zero: α to zero, T to mg."""
    typed = {"m": "5 g", "L": "50 cm", "Q1": "0,01 nC", "equal": "equal"}
    assert asked("threads", "alpha", **typed) < 1e-3
    assert asked("threads", "T", **typed) == pytest.approx(5e-3 * G, rel=1e-6)


@examples(40)
@given(st.integers(2, 9), st.integers(21, 60), st.integers(10, 60))
def test_scaling_mass_and_charge_together_scales_every_force(factor: int, theta: int, q: int) -> None:
    """m and Q₁ made f times as large: T is f times as large, a is the same."""
    typed = {"where": "above", "string": "up", "theta": f"{theta}°", "Q2": "30 nC", "r": "6 cm"}
    one = reckon("slope", want="a", m="4 g", Q1=f"{q} nC", **typed).values
    other = reckon("slope", want="a", m=f"{4 * factor} g", Q1=f"{q * factor} nC", **typed).values
    assert other["T"] == pytest.approx(factor * one["T"], rel=1e-9)
    assert other["a"] == pytest.approx(one["a"], rel=1e-9)


def test_unequal_charges_hang_at_equal_angles() -> None:
    """Swapping the charges changes nothing, and a part asks why."""
    typed = {"supports": "one", "equal": "own", "m": "2 g", "L": "30 cm"}
    one = solve("threads", want="alpha", Q1="40 nC", Q2="90 nC", **typed)
    other = solve("threads", want="alpha", Q1="90 nC", Q2="40 nC", **typed)
    assert one.values["alpha"] == pytest.approx(other.values["alpha"], rel=1e-12)
    assert part(one, "angles").marks == 2


def test_hovering_height_is_the_closed_form() -> None:
    """r = √(kQq/(mg)), repelled from below, without a string."""
    r = asked("vertical", "r", where="below", string="none", m="3 g", Q1="60 nC", Q2="90 nC")
    assert r == pytest.approx(math.sqrt(K * 60e-9 * 90e-9 / (3e-3 * G)))


@pytest.mark.parametrize(
    ("where", "string", "q2", "sign"),
    [("below", "up", 40, -1), ("above", "up", 40, 1), ("below", "up", -40, 1), ("above", "up", -40, -1)],
)
def test_a_vertical_string_carries_the_weight_with_or_without_the_force(
    where: str, string: str, q2: int, sign: int
) -> None:
    """T = mg ± F_E: less where F_E points up, more where it points down."""
    tension = asked("vertical", "T", where=where, string=string, m="5 g", Q1="30 nC", Q2=f"{q2} nC", r="4 cm")
    assert tension == pytest.approx(5e-3 * G + sign * K * 30e-9 * 40e-9 / 0.04**2)


def test_held_by_attraction_from_above_is_called_unstable() -> None:
    """Without a string, attraction from above is unstable and the answer says so; repulsion from below comes back."""
    above = solve("vertical", want="r", where="above", string="none", m="3 g", Q1="60 nC", Q2="-90 nC")
    assert any("unstable" in note for note in above.notes)
    assert "unstable" in part(above, "nudge").points[1].words
    below = solve("vertical", want="r", where="below", string="none", m="3 g", Q1="60 nC", Q2="90 nC")
    assert not any("unstable" in note for note in below.notes)
    assert "comes back" in part(below, "nudge").points[1].words


def test_a_slack_string_is_named() -> None:
    """T = 0 is an answer: slack, just balanced, and the free-body diagram has no T."""
    worked = solve("slope", want="T", where="below", string="up", m="20 g", theta="30°", F_E="98 mN", acting="repel")
    assert worked.values["T"] == 0
    assert worked.notes[0] == "The tension is zero: the string is slack, and the forces just balance without it."
    assert "T" not in force_arrows(part(worked, "draw").figure)
    assert len(part(worked, "draw").points) == 3


# --- refusals -------------------------------------------------------------------------------------------------

BASE = {
    "want": "T",
    "where": "below",
    "string": "up",
    "m": "10 g",
    "theta": "30°",
    "Q1": "60 nC",
    "Q2": "50 nC",
    "r": "4 cm",
}
HANG = {"want": "Q1", "m": "2 g", "L": "40 cm", "alpha": "20°", "equal": "equal"}


@pytest.mark.parametrize(
    ("key", "changed", "field", "sentence"),
    [
        (
            "slope",
            {"r": "1 cm"},
            None,
            (
                "A string cannot push: no equilibrium this way. F_E is larger than mg sin θ: the string goes slack and"
                " the sphere moves up the slope. Change the charges, the distance or the side of the string."
            ),
        ),
        (
            "slope",
            {"string": "down"},
            None,
            (
                "A string cannot push: no equilibrium this way. F_E is smaller than mg sin θ: the string goes slack and"
                " the sphere moves down the slope. Change the charges, the distance or the side of the string."
            ),
        ),
        (
            "slope",
            {"string": "down", "Q2": "-50 nC"},
            "string",
            (
                "No equilibrium this way: the electrostatic force points down the slope, like the weight, and nothing"
                " pulls up the slope. Turn one charge's sign, or put the fixed charge on the other side."
            ),
        ),
        ("slope", {"Q1": "0 C", "want": "F_E"}, "Q1", "A zero charge gives no force, so this cannot be found."),
        ("slope", {"Q2": "0 C", "want": "r", "r": ""}, "Q2", "A zero charge gives no force, so this cannot be found."),
        ("threads", {"Q1": "0 C", "want": "T"}, "Q1", "A zero charge gives no force, so this cannot be found."),
        (
            "slope",
            {"Q1": "0 C", "string": "down"},
            "string",
            (
                "Without charge there is no electrostatic force, and nothing pulls the sphere up the slope. Choose a"
                " string that does, or type a charge."
            ),
        ),
        (
            "slope",
            {"Q1": "0 C", "acting": "repel"},
            "acting",
            "A force of zero neither attracts nor repels. Choose “do what their signs say”, or change the zero.",
        ),
        (
            "slope",
            {"Q1": "0 C", "F_E": "5 mN"},
            "F_E",
            "Without charge there is no electrostatic force: leave this box empty, or type a charge.",
        ),
        (
            "slope",
            {"F_E": "0 N"},
            "F_E",
            "Two charges always exert a force on each other: leave this box empty, or change a charge.",
        ),
        (
            "slope",
            {"Q1": "", "Q2": "", "r": ""},
            None,
            (
                "The tension in the string does not follow from these data. Add the electrostatic force or the"
                " acceleration at the instant of the cut."
            ),
        ),
        ("slope", {"T": "1 N"}, "T", "This is what is to be found: leave its box empty."),
        (
            "slope",
            {"acting": "attract"},
            "acting",
            "Spheres with these signs repel each other. Choose “do what their signs say”, or change a sign.",
        ),
        (
            "slope",
            {"Q2": "", "F_E": "10 mN"},
            "acting",
            "Say whether the spheres attract or repel: the sign of one of the charges is not known.",
        ),
        (
            "slope",
            {"want": "a", "string": "none"},
            "want",
            "There is no string to cut. Choose a string, or ask for something else.",
        ),
        ("slope", {"want": "E_net"}, "d", "Give the distance from the sphere to where the string is tied."),
        (
            "slope",
            {"want": "E_net", "where": "above", "d": "4 cm"},
            "d",
            "Field is undefined there: the fixed charge is at that very point. Change one of the distances.",
        ),
        (
            "slope",
            {"want": "N", "F_E": "5 mN"},
            "F_E",
            "This does not fit the other numbers: they give 1,69 × 10⁻² N. Correct it, or leave this box empty.",
        ),
        (
            "slope",
            {"m": "", "r": ""},
            None,
            "The tension in the string does not follow from these data. More of the boxes must be filled.",
        ),
        (
            "slope",
            {"m": ""},
            None,
            (
                "The tension in the string does not follow from these data. Add the mass of the sphere or the normal"
                " force or the acceleration at the instant of the cut."
            ),
        ),
        (
            "slope",
            {"want": "theta", "theta": "", "T": "1 N"},
            None,
            "No slope fits: a component cannot be as large as the weight itself. Use a larger mass or smaller forces.",
        ),
        (
            "threads",
            {"supports": "one", "acting": "attract"},
            "supports",
            "On one support spheres that attract swing together and touch. Choose two supports, or charges that repel.",
        ),
        (
            "threads",
            {"supports": "two", "acting": "attract", "s": "20 cm"},
            "s",
            (
                "The spheres would touch or overlap. Use a larger distance between the supports, shorter threads or a"
                " smaller angle."
            ),
        ),
        (
            "threads",
            {"want": "alpha", "alpha": "", "T": "10 mN"},
            None,
            "The tension must be larger than the weight: a slanting thread also pulls sideways. Change T or the mass.",
        ),
        (
            "threads",
            {"supports": "two", "s": "20 cm", "method": "small", "acting": "repel"},
            "method",
            "The small-angle shortcut is for one support. Choose the exact method.",
        ),
        (
            "threads",
            {"want": "alpha", "alpha": "", "Q1": "5 µC", "method": "small"},
            "method",
            "The small-angle shortcut gives no angle here: sin α would be larger than 1. Choose the exact method.",
        ),
        (
            "threads",
            {
                "want": "alpha",
                "alpha": "",
                "supports": "two",
                "s": "20 cm",
                "equal": "own",
                "Q1": "150 nC",
                "Q2": "-200 nC",
            },
            "Q1",
            (
                "No equilibrium with the spheres apart: the attraction wins at every angle and they swing together."
                " Move the supports further apart, or use smaller charges."
            ),
        ),
        (
            "threads",
            {"supports": "two", "acting": "repel", "alpha": "", "r": "10 cm", "s": "15 cm"},
            "r",
            ("Spheres that repel hang further apart than their supports. Check r and s, or whether they attract."),
        ),
        (
            "threads",
            {"supports": "two", "acting": "attract", "alpha": "", "r": "15 cm", "s": "10 cm"},
            "r",
            ("Spheres that attract hang closer together than their supports. Check r and s, or whether they attract."),
        ),
        (
            "vertical",
            {"theta": "", "string": "none", "where": "above", "want": "r", "r": ""},
            "string",
            (
                "No equilibrium this way: the electrostatic force points downwards, like the weight, and nothing pulls"
                " upwards. Turn one charge's sign, or put the fixed charge on the other side."
            ),
        ),
    ],
)
def test_impossible_data_are_refused_with_the_reason(
    key: str, changed: dict[str, str], field: str | None, sentence: str
) -> None:
    """Each refusal stands at its field and says why and what to do."""
    with pytest.raises(Refusal) as caught:
        solve(key, **{**(HANG if key == "threads" else BASE), **changed})
    said = caught.value.sentence.replace("\N{NO-BREAK SPACE}", " ")
    assert (caught.value.field, said) == (field, sentence)


@pytest.mark.parametrize(("key", "data"), [("slope", BASE), ("vertical", BASE | {"theta": ""}), ("threads", HANG)])
def test_the_speed_after_the_cut_is_no_question(key: str, data: dict[str, str]) -> None:
    """A link that asks for it is told why it cannot be found; no form offers it."""
    with pytest.raises(Refusals) as caught:
        solve(key, **{**data, "want": "v"})
    [refusal] = caught.value.refusals
    assert (refusal.field, refusal.sentence) == (
        "want",
        "After the cut the distance changes, so the electrostatic force and the acceleration change from moment to"
        " moment. The equations of motion need a constant acceleration and may not be used: ask for the acceleration"
        " at the instant of the cut.",
    )


@pytest.mark.parametrize(
    ("key", "changed", "sentence"),
    [
        ("slope", {"m": "-10 g"}, "Mass must be greater than zero."),
        ("slope", {"theta": "90°"}, "The slope makes more than 0° and less than 90° with the horizontal."),
        ("slope", {"want": "F_E", "T": "-1 N"}, "A string cannot push: no equilibrium this way."),
        ("threads", {"alpha": "90°"}, "Half the angle between threads: more than 0° and less than 90°."),
        ("threads", {"L": "0 m"}, "The thread's length must be greater than zero."),
    ],
)
def test_a_value_out_of_bounds_is_refused_at_its_box(key: str, changed: dict[str, str], sentence: str) -> None:
    """The sentence stands beside the box, word for word."""
    with pytest.raises(Refusals) as caught:
        solve(key, **{**(HANG if key == "threads" else BASE), **changed})
    assert [refusal.sentence for refusal in caught.value.refusals] == [sentence]


# --- mistakes -------------------------------------------------------------------------------------------------


def with_mistake(key: str, name: str, typed: dict[str, str]) -> tuple[dict[str, float], dict[str, float]]:
    """The right values, and those of a learner who makes one known mistake and works on."""
    _, question = find(f"equilibrium.{key}")
    plan = question.plan(read(question, typed).data)
    mistake = next(m for step in plan.steps for m in step.mistakes if m.key == name)
    constants = Settings().constants()
    return run(plan, constants), run(plan, constants, instead={mistake.at: mistake.instead})


@pytest.mark.parametrize(
    ("key", "name", "typed", "value", "ratio"),
    [
        ("threads", "half-gap", HANG, "Q1", 0.5),
        ("threads", "tan-inverted", {**HANG, "want": "F_E"}, "F_E", 1 / math.tan(math.radians(20)) ** 2),
        ("threads", "cos-times", {**HANG, "want": "T"}, "T", math.cos(math.radians(20)) ** 2),
        (
            "threads",
            "whole-angle",
            {**HANG, "alpha": "", "beta": "40°", "want": "F_E"},
            "F_E",
            math.tan(math.radians(40)) / math.tan(math.radians(20)),
        ),
        ("slope", "tension-kept", {**BASE, "want": "a"}, "a", 0.0),
        (
            "slope",
            "charge-forgotten",
            {**BASE, "want": "a"},
            "a",
            G * 0.5 / ((10e-3 * G * 0.5 - K * 3e-15 / 0.04**2) / 10e-3),
        ),
    ],
)
def test_mistakes_amount_to_what_is_listed(
    key: str, name: str, typed: dict[str, str], value: str, ratio: float
) -> None:
    """A learner's answer after the slip stands in the known ratio to the right one."""
    right, wrong = with_mistake(key, name, typed)
    assert wrong[value] / right[value] == pytest.approx(ratio, rel=1e-9)


def test_a_reversed_force_is_out_by_twice_the_force() -> None:
    """F_E taken the wrong way changes T by 2F_E."""
    right, wrong = with_mistake("slope", "reversed", BASE)
    assert wrong["T"] - right["T"] == pytest.approx(2 * right["F_E"], rel=1e-9)


# --- scenarios and practice -----------------------------------------------------------------------------------


@pytest.mark.parametrize("key", SCENARIOS)
def test_a_scenario_mixes_kinds_of_parts_that_feed_each_other(key: str) -> None:
    """Five to nine parts, of three kinds at least, and a changed first value changes a later answer."""
    topic, question = find(f"equilibrium.{key}")
    found = read(question, question.example)
    plan = question.plan(found.data)
    assert 5 <= len(plan.parts) <= 9
    assert {"calculate", "draw", "explain"} <= {one.kind for one in plan.parts}
    constants = Settings().constants()
    right = run(plan, constants)
    first = next(one for one in plan.parts if one.kind == "calculate").steps[-1].makes
    carried = run(plan, constants, carry={first: right[first] * 1.5})
    later = [one.answers for one in plan.parts if one.kind == "calculate"]
    force = run(plan, constants, carry={"F_E": right["F_E"] * 0.9})
    assert any(carried[name] != right[name] for name in later[1:]) or any(force[name] != right[name] for name in later)
    assert work(topic, question, found).marks >= 15


def drawn(question_key: str, seed: int, level: int) -> tuple[Topic, Question, dict[str, object]]:
    """Practice data of one question."""
    topic, question = find(f"equilibrium.{question_key}")
    return topic, question, draw(topic, question, seed, level).inputs


@pytest.mark.parametrize("key", [q.key for q in find("equilibrium.slope")[0].questions])
@pytest.mark.parametrize("level", [1, 2, 3])
def test_practice_numbers_are_worked_and_checked(key: str, level: int) -> None:
    """Drawn data have an equilibrium, their second ways agree, and they are not just the example."""
    different = 0
    for seed in range(4):
        topic, question = find(f"equilibrium.{key}")
        one = draw(topic, question, seed, level)
        inputs = one.inputs
        worked = work(topic, question, read(question, inputs, one.find))
        assert worked.unproven == ()
        different += inputs != dict(question.example)
    assert different >= 3


def test_every_law_of_a_step_is_an_equation_with_its_names() -> None:
    """The law and the rearranged line of every step speak of the same quantity."""
    for line in (
        Line(slope, side, 1, string) for slope in (True, False) for side in (1, -1) for string in ("up", "down", "none")
    ):
        for step in (*steps_of(*line.weight_laws()), *steps_of(*line.balance_laws())):
            assert step.makes in equation(step.law).names


TYPED = {
    "g": ("2 g", "10 g", "0,5 g"),
    "°": ("10°", "30°", "45°", "80°"),
    "nC": ("50 nC", "-40 nC", "3 µC"),
    "m": ("4 cm", "30 cm", "1 m"),
    "N": ("10 mN", "0,1 N", "0 N", "3 N"),
    "": ("2e11",),
    "m·s⁻²": ("3", "12", "0"),
}


@pytest.mark.parametrize("key", ["slope", "vertical", "threads"])
def test_no_mixture_of_boxes_ends_in_a_fault(key: str) -> None:
    """Whatever boxes are filled, the answer is a worked one whose checks agree, or a sentence of ours."""
    topic, question = find(f"equilibrium.{key}")
    chance, solved = random.Random(7), 0
    for _ in range(500):
        typed = {}
        for item in question.fields:
            if isinstance(item, Choice):
                typed[item.name] = chance.choice(item.options)[0]
            elif chance.random() < 0.5:
                typed[item.name] = chance.choice(TYPED[item.unit])
        typed[typed["want"]] = ""
        try:
            worked = work(topic, question, read(question, typed))
        except (Refusal, Refusals) as problem:
            sentences = [problem] if isinstance(problem, Refusal) else problem.refusals
            assert all(one.sentence.strip().endswith(".") for one in sentences)
            continue
        solved += 1
        assert worked.unproven == (), typed
        assert all(math.isfinite(value) for value in worked.values.values())
    assert solved >= 3


# --- without charge, and without a word about the charges -----------------------------------------------------


def test_the_normal_force_needs_no_charges() -> None:
    """N = mg cos θ is answered from mass and angle alone, without an arrow whose direction nothing tells."""
    worked = solve("slope", want="N", m="25 g", theta="30°")
    assert worked.values["N"] == pytest.approx(0.025 * 9.8 * math.cos(math.pi / 6))
    assert [one.key for one in worked.parts] == ["find"]
    assert worked.unproven == ()
    assert worked.notes == ()


@pytest.mark.parametrize("zero", ["Q1", "Q2", "F_E"])
@pytest.mark.parametrize("want", ["T", "N", "m", "theta", "a"])
def test_without_charge_the_slope_still_has_its_answers(zero: str, want: str) -> None:
    """With a zero charge or force the string carries mg sin θ alone; any of its quantities can be asked."""
    m, theta = 0.025, math.radians(32)
    right = {
        "T": m * 9.8 * math.sin(theta),
        "N": m * 9.8 * math.cos(theta),
        "a": 9.8 * math.sin(theta),
        "m": m,
        "theta": theta,
    }
    typed = {"m": "25 g", "theta": "32°", zero: "0"}
    if want in ("m", "theta"):
        typed |= {want: "", "T": f"{right['T']:.12g} N"}
    worked = solve("slope", want=want, **typed)
    assert worked.values[want] == pytest.approx(right[want], rel=1e-9)
    assert worked.unproven == ()
    assert (
        worked.notes[-1]
        == "The electrostatic force is zero here: it is left out of the diagram and of the sum of the forces."
    )
    drawn = [item.label for item in part(worked, "draw").figure.items if isinstance(item, Arrow)]
    assert sorted(drawn) == ["F_g", "N", "T"]
    assert [point.keys[0] for point in part(worked, "draw").points] == ["F_g", "N", "T"]
    if want == "a":
        assert part(worked, "later").ask == "As the sphere moves on, does its acceleration change? Explain."
        assert [point.words for point in part(worked, "later").points] == [
            "There is no electrostatic force: the weight's component alone acts along the slope.",
            "It does not depend on where the sphere is, so the acceleration stays the same.",
        ]


@pytest.mark.parametrize("want", ["T", "m", "a"])
def test_without_charge_the_sphere_hangs_on_its_string(want: str) -> None:
    """Straight up and down the string then carries the whole weight."""
    typed = {"m": "25 g", "Q2": "0 C", "string": "up"}
    if want == "m":
        typed |= {"m": "", "T": "0,245 N"}
    worked = solve("vertical", want=want, **typed)
    right = {"T": 0.245, "m": 0.025, "a": 9.8}[want]
    assert worked.values[want] == pytest.approx(right, rel=1e-9)
    assert worked.unproven == ()


@pytest.mark.parametrize(
    ("zero", "told"),
    [
        (
            {"Q1": "0 C", "Q2": "+5 nC"},
            ("A small uncharged sphere of mass 25 g is at rest", "A second small sphere with charge +5 nC is fixed"),
        ),
        (
            {"Q1": "+5 nC", "Q2": "0 C"},
            (
                "A small charged sphere of mass 25 g and charge +5 nC is at rest",
                "A second small uncharged sphere is fixed",
            ),
        ),
    ],
)
def test_the_story_calls_an_uncharged_sphere_so(zero: dict[str, str], told: tuple[str, str]) -> None:
    """No story speaks of a charged sphere with a charge of zero."""
    story = solve("slope", want="T", m="25 g", theta="30°", **zero).story
    assert all(words in story.replace("\N{NO-BREAK SPACE}", " ") for words in told)


def test_scenes_tell_the_signs_in_words() -> None:
    """The text alternative of a scene names the signs that are drawn, and no others."""
    base = {"want": "T", "m": "25 g", "theta": "30°", "r": "3 cm"}
    both = solve("slope", **base, Q1="-80 nC", Q2="-5 nC").figure
    assert "From bottom to top: B (negative) and A (negative)." in both.description
    none = solve("slope", want="N", m="25 g", theta="30°").figure
    assert "From bottom to top: B and A." in none.description
    up = solve("vertical", want="T", string="up", m="25 g", Q1="-80 nC", Q2="5 nC", r="3 cm").figure
    assert "Sphere A (negative) is at rest, sphere B (positive) is fixed straight below it." in up.description
    pair = solve("threads", want="F_E", m="2 g", alpha="20°", Q1="-4 nC", equal="equal").figure
    assert pair.description.startswith("Two charged spheres, A (negative) and B (negative), hang apart")


# --- several things to be found at once ---------------------------------------------------------------------


@pytest.mark.parametrize(
    ("key", "wants", "typed"),
    [
        ("slope", ("T", "N"), {**BASE}),
        ("slope", ("F_E", "N", "a"), {**BASE}),
        ("slope", ("m", "F_E"), {**BASE, "m": "", "T": "20 mN"}),
        ("vertical", ("T", "F_E", "a"), {"m": "3 g", "Q1": "60 nC", "Q2": "90 nC", "r": "6 cm", "string": "up"}),
        ("threads", ("T", "Q1", "r"), {**HANG}),
        ("threads", ("alpha", "F_E"), {**HANG, "alpha": "", "Q1": "200 nC"}),
        (
            "threads",
            ("T", "alpha", "s"),
            {**HANG, "alpha": "", "supports": "two", "r": "30 cm", "Q1": "100 nC", "acting": "repel"},
        ),
    ],
)
def test_several_things_are_found_at_once(key: str, wants: tuple[str, ...], typed: dict[str, str]) -> None:
    """Each has a part of its own and the value it has when it is asked alone; no line stands twice."""
    worked = solve(key, **{**typed, "want": ",".join(wants)})
    for want in wants:
        assert worked.values[want] == pytest.approx(reckon(key, **{**typed, "want": want}).values[want], rel=1e-9)
    parts = [shown for shown in worked.parts if shown.key.startswith("find")]
    assert sorted(shown.key for shown in parts) == sorted(f"find-{want}" for want in wants)
    lines = [step.formula.text for shown in parts for step in shown.steps]
    assert len(lines) == len(set(lines))


def test_several_things_on_a_slope_by_hand() -> None:
    """25 g, 35°, 80 nC and 50 nC 3 cm apart, repelled from below: N = mg cos θ and T = mg sin θ − kQ₁Q₂/r²."""
    worked = solve("slope", **{**BASE, "want": "T,N", "m": "25 g", "theta": "35°", "Q1": "80 nC", "r": "3 cm"})
    weight, push = 0.025 * 9.8, 9e9 * 80e-9 * 50e-9 / 0.03**2
    assert worked.values["N"] == pytest.approx(weight * math.cos(math.radians(35)))
    assert worked.values["T"] == pytest.approx(weight * math.sin(math.radians(35)) - push)


@pytest.mark.parametrize(
    ("key", "typed", "field", "sentence"),
    [
        ("slope", {**BASE, "want": ""}, "want", "Nothing is picked to be found. Pick one thing or several."),
        ("slope", {**BASE, "want": "N,T", "T": "1 N"}, "T", "This is what is to be found: leave its box empty."),
        ("slope", {**BASE, "want": "N,v"}, "want", "may not be used"),
        ("slope", {**BASE, "want": "N,T", "string": "none"}, "want", "no string"),
        ("threads", {**HANG, "want": "Q1,Q2"}, "want", "The charges are equal in size"),
        ("threads", {**HANG, "want": "Q1,beta", "supports": "two", "acting": "repel"}, "want", "do not meet"),
    ],
)
def test_of_several_things_the_one_that_cannot_be_is_refused(
    key: str, typed: dict[str, str], field: str, sentence: str
) -> None:
    """What one of them cannot be is said as when it is asked alone; nothing picked is no silent choice."""
    with pytest.raises((Refusal, Refusals)) as refused:
        solve(key, **typed)
    told = refused.value.refusals if isinstance(refused.value, Refusals) else (refused.value,)
    assert any(one.field == field and sentence in one.sentence for one in told)
