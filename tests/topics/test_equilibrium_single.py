"""One sphere on a thread, and two unequal ones: numpy's vectors, scipy's roots, sympy's algebra beside our lines."""

import itertools
import json
import math
import random
import re

import numpy as np
import pytest
import sympy
from scipy import optimize

from calc import desk
from calc.figures import Arrow, Figure, Segment, Sphere
from calc.model.answers import PartShown, WorkedAnswer
from calc.model.questions import Refusal
from calc.practice.drawing import draw
from calc.practice.fair import fair_scene
from calc.topics import find
from calc.working.reading import Refusals, read
from calc.working.working import work

K, G, E = 9e9, 9.8, 1.6e-19
SI = {
    "m": "kg",
    "m1": "kg",
    "m2": "kg",
    "Q": "C",
    "Q1": "C",
    "Q2": "C",
    "E": "V/m",
    "V": "V",
    "a": "m/s^2",
    "n": "",
    **dict.fromkeys(("r", "d", "h", "L1", "L2"), "m"),
    **dict.fromkeys(("F_E", "T", "T1", "T2"), "N"),
}


def solve(key: str, asked: str = "", **typed: str) -> WorkedAnswer:
    """The worked answer of ``equilibrium.key``."""
    topic, question = find(f"equilibrium.{key}")
    return work(topic, question, read(question, typed, asked))


def typed_si(name: str, value: float) -> str:
    """A value as a reader could type it, with all its digits."""
    if name.startswith("alpha"):
        return f"{math.degrees(value)!r}°"
    return str(round(value)) if name == "n" else f"{value!r} {SI[name]}"


def part(worked: WorkedAnswer, key: str) -> PartShown:
    """One part of a worked answer."""
    return next(shown for shown in worked.parts if shown.key == key)


def refused(key: str, asked: str, **typed: str) -> Refusal:
    """The one refusal of these data."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(key, asked, **typed)
    one = caught.value
    return one if isinstance(one, Refusal) else one.refusals[0]


def plain(sentence: str) -> str:
    """A sentence with ordinary spaces."""
    return sentence.replace("\N{NO-BREAK SPACE}", " ")


# --- any givens, any unknown, against vectors -----------------------------------------------------------------


def beside_whole(alpha: float, r: float, q2: float, m: float) -> dict[str, float]:
    """A sphere at rest: scipy finds the charge and the tension at which numpy's three vectors add up to nothing."""

    def left(x: np.ndarray) -> np.ndarray:
        thread = x[0] * np.array([-math.sin(alpha), math.cos(alpha)])
        push = np.array([K * x[1] * 1e-9 * q2 / r**2, 0.0])
        return (thread + push + np.array([0.0, -m * G])) / (m * G)

    tension, charge = map(float, optimize.fsolve(left, [m * G, 10.0], xtol=1e-13))
    q1 = charge * 1e-9
    return {
        "m": m,
        "alpha": alpha,
        "r": r,
        "Q2": q2,
        "Q1": q1,
        "T": tension,
        "F_E": K * q1 * q2 / r**2,
        "a": tension / m,
        "n": q1 / E,
    }


def field_whole(m: float, q: float, volts: float, d: float) -> dict[str, float]:
    """A sphere in a field: the angle and the tension are the argument and length of force plus weight."""
    pull = complex(q * volts / d, -m * G)
    alpha = math.pi / 2 + math.atan2(pull.imag, pull.real)
    return {
        "m": m,
        "Q": q,
        "V": volts,
        "d": d,
        "E": volts / d,
        "F_E": pull.real,
        "n": q / E,
        "alpha": alpha,
        "T": abs(pull),
        "a": abs(pull) / m,
    }


def unequal_whole(m1: float, m2: float, length: float, r: float, q2: float) -> dict[str, float]:
    """Two spheres at one level: scipy finds both places from the moments about the hook."""

    def left(x: np.ndarray) -> list[float]:
        one, two, h = x
        return [m1 * one - m2 * two, (one + two - r) * m1, (math.hypot(one, h) - length) * m1]

    one, two, h = map(float, optimize.fsolve(left, [r / 2, r / 2, length], xtol=1e-13))
    force = m1 * G * one / h
    return {
        "m1": m1,
        "m2": m2,
        "alpha_1": math.atan2(one, h),
        "alpha_2": math.atan2(two, h),
        "h": h,
        "L1": length,
        "L2": math.hypot(two, h),
        "r": r,
        "F_E": force,
        "Q2": q2,
        "Q1": force * r**2 / (K * q2),
        "T1": math.hypot(force, m1 * G),
        "T2": math.hypot(force, m2 * G),
    }


WHOLES = [
    ("thread-beside-charge", beside_whole(0.35, 0.09, 7e-8, 1.3e-3), {"acting": "repel", "which": "lacking"}, 4),
    ("thread-in-field", field_whole(2.2e-4, 7e-9, 5500.0, 0.065), {"field": "left", "lean": "along"}, 4),
    ("unequal-threads", unequal_whole(1.7e-3, 0.9e-3, 0.21, 0.17, 6e-8), {}, 5),
]


def solved_or_none(key: str, want: str, **typed: str) -> WorkedAnswer | None:
    """The worked answer, or None where the data are refused as too few; any other refusal fails the test."""
    try:
        return solve(key, want, **typed)
    except Refusal as refusal:
        if "does not follow" not in refusal.sentence:
            raise
        return None


@pytest.mark.parametrize(("key", "whole", "choices", "size"), WHOLES, ids=[w[0] for w in WHOLES])
def test_any_sufficient_givens_bring_back_what_was_left_out(
    key: str, whole: dict[str, float], choices: dict[str, str], size: int
) -> None:
    """Whatever few quantities are given, every other one that follows is the one of the vectors."""
    solved = dict.fromkeys(whole, 0)
    for givens in random.Random(3).sample(list(itertools.combinations(whole, size)), 35):
        typed = {name: typed_si(name, whole[name]) for name in givens}
        for want in set(whole) - set(givens):
            worked = solved_or_none(key, want, **choices, **typed)
            if worked is None:
                continue
            assert abs(worked.values[want]) == pytest.approx(whole[want], rel=1e-6), (givens, want)
            assert worked.unproven == (), (givens, want)
            solved[want] += 1
    assert min(solved.values()) >= 2, solved


@pytest.mark.parametrize(
    ("key", "told", "kept"),
    [
        ("thread-in-field", {"E": "80 kV/m", "lean": "along"}, "lacking"),
        ("thread-in-field", {"E": "80 kV/m", "lean": "against"}, "excess"),
        ("thread-beside-charge", {"r": "8 cm", "Q2": "45 nC", "acting": "repel"}, "lacking"),
        ("thread-beside-charge", {"r": "8 cm", "Q2": "45 nC", "acting": "attract"}, "excess"),
    ],
)
def test_electrons_can_be_asked_and_their_kind_follows(key: str, told: dict[str, str], kept: str) -> None:
    """n = F_E/(E e), or F_E r²/(k Q₂ e), by hand; too many where the sphere is negative."""
    worked = solve(key, "n", m="1 g", alpha="20°", **told)
    force = 1e-3 * G * math.tan(math.radians(20))
    charge = force / 80e3 if "E" in told else force * 0.08**2 / (K * 45e-9)
    found = part(worked, "find").answer
    assert found is not None
    assert found.direction is not None
    assert found.value == pytest.approx(charge / E, rel=1e-9)
    assert found.direction.key == kept


def test_electrons_in_a_field_need_the_side_to_which_the_sphere_hangs() -> None:
    """Without it nothing tells whether they are too many or too few; where they are given, the angle follows."""
    problem = refused("thread-in-field", "n", m="1 g", alpha="20°", E="80 kV/m")
    assert problem.field == "lean"
    assert problem.sentence == "Say which way the sphere hangs: the sign of its charge follows from it."
    worked = solve("thread-in-field", "alpha", m="1 g", n="5e10", E="80 kV/m")
    assert math.tan(worked.values["alpha"]) == pytest.approx(5e10 * E * 80e3 / (1e-3 * G))
    assert "It has 5 × 10¹⁰ electrons too many or too few." in plain(worked.story)


@pytest.mark.parametrize("variant", range(3))
def test_the_body_beside_a_charge_has_one_name(variant: int) -> None:
    """The opening, the parts and the boxes speak of a sphere; no telling calls it otherwise."""
    topic, question = find("equilibrium.thread-beside-charge")
    typed = {"m": "1 g", "alpha": "20°", "acting": "repel", "r": "8 cm", "Q2": "45 nC"}
    worked = work(topic, question, read(question, typed, "Q1", variant=variant))
    said = " ".join((worked.story, *(shown.ask for shown in worked.parts)))
    assert "sphere" in worked.story.split(". ")[0]
    assert not re.search(r"\b(ball|bead)\b", said)


def test_an_algebra_system_agrees_on_the_masses_and_angles() -> None:
    """sympy, given both balances with one force, finds m₁ tan α₁ = m₂ tan α₂."""
    m1, m2, a1, a2, t1, t2, force = sympy.symbols("m1 m2 a1 a2 t1 t2 F", positive=True)
    g = sympy.Rational(98, 10)
    forces = sympy.solve(
        [
            t1 * sympy.cos(a1) - m1 * g,
            t1 * sympy.sin(a1) - force,
            t2 * sympy.cos(a2) - m2 * g,
            t2 * sympy.sin(a2) - force,
        ],
        [t1, t2, force, m2],
        dict=True,
    )[0]
    assert sympy.simplify(forces[m2] - m1 * sympy.tan(a1) / sympy.tan(a2)) == 0
    worked = solve("unequal-threads", "m2", m1="1,5 g", alpha_1="24°", alpha_2="33°")
    right = forces[m2].subs({m1: 1.5e-3, a1: sympy.rad(24), a2: sympy.rad(33)})
    assert worked.values["m2"] == pytest.approx(float(right), rel=1e-12)


def test_several_unknowns_become_parts_in_the_order_of_need() -> None:
    """Tension, force and charge asked at once: the force stands before the charge that needs it."""
    worked = solve("thread-beside-charge", "Q1,T,F_E", m="1 g", alpha="20°", r="8 cm", Q2="50 nC", acting="repel")
    keys = [one.key for one in worked.parts]
    assert set(keys) == {"draw", "find-F_E", "find-Q1", "find-T"}
    assert keys.index("find-F_E") < keys.index("find-Q1")
    assert worked.values["T"] == pytest.approx(math.hypot(9.8e-3, 9.8e-3 * math.tan(math.radians(20))))


# --- directions, signs, pictures ------------------------------------------------------------------------------


def arrows(figure: Figure) -> dict[str, np.ndarray]:
    """The force arrows drawn, as vectors."""
    return {i.label: np.subtract(i.end, i.start) for i in figure.items if isinstance(i, Arrow) and i.kind == "force"}


@pytest.mark.parametrize(("q1", "q2"), list(itertools.product((60, -60), (45, -45))))
def test_signs_decide_the_side_beside_a_fixed_charge(q1: int, q2: int) -> None:
    """Like signs push the sphere to the right, away from the charge on its left; unlike pull it to the left."""
    worked = solve("thread-beside-charge", "alpha", m="1 g", r="9 cm", Q1=f"{q1} nC", Q2=f"{q2} nC")
    right = 1 if q1 * q2 > 0 else -1
    drawn = arrows(part(worked, "draw").figure)
    assert drawn["F_E"][0] * right > 0
    assert drawn["T"][0] * right < 0 < drawn["T"][1]
    assert np.linalg.norm(sum(drawn.values())) < 1e-9
    spheres = {i.label: i for i in worked.figure.items if isinstance(i, Sphere)}
    thread = next(i for i in worked.figure.items if isinstance(i, Segment) and i.kind == "string")
    assert (thread.end[0] - thread.start[0]) * right > 0
    assert spheres["B"].centre[0] < spheres["A"].centre[0]
    assert spheres["B"].centre[1] == spheres["A"].centre[1]
    assert (spheres["A"].sign, spheres["B"].sign) == ("+" if q1 > 0 else "-", "+" if q2 > 0 else "-")
    words = "They repel each other." if right > 0 else "They attract each other."
    assert words in worked.story
    assert ("away from it" if right > 0 else "towards it") in worked.figure.description
    pushes = part(worked, "draw").points[2].words
    assert (
        pushes
        == f"F_E: the electrostatic force, horizontally, {'away from' if right > 0 else 'towards'} the other sphere."
    )


@pytest.mark.parametrize(("field", "q"), list(itertools.product(("left", "right"), (8, -8))))
def test_field_and_sign_decide_the_side_in_a_field(field: str, q: int) -> None:
    """A positive charge is pushed along the field, a negative one against it; plates, arrow and words agree."""
    worked = solve("thread-in-field", "F_E", field=field, Q=f"{q} nC", E="60 kV/m", m="0,2 g")
    right = (1 if field == "right" else -1) * (1 if q > 0 else -1)
    shown = part(worked, "find").answer.direction
    assert shown.words == ("to the right" if right > 0 else "to the left")
    assert worked.values["F_E"] == pytest.approx(8e-9 * 6e4)
    drawn = arrows(part(worked, "draw").figure)
    assert drawn["F_E"][0] * right > 0 > drawn["T"][0] * right
    way = "along" if q > 0 else "against"
    assert part(worked, "draw").points[2].words == f"F_E: the electrostatic force, {shown.words}, {way} the field."
    plus = "left" if field == "right" else "right"
    assert f"the {plus} plate is positive" in worked.figure.description
    assert f"leans to the {'right' if right > 0 else 'left'}" in worked.figure.description
    plates = [i for i in worked.figure.items if type(i).__name__ == "Plate"]
    assert [p.sign for p in sorted(plates, key=lambda p: p.start[0])] == (["+", "-"] if plus == "left" else ["-", "+"])
    thread = next(i for i in worked.figure.items if isinstance(i, Segment) and i.kind == "string")
    assert (thread.end[0] - thread.start[0]) * right > 0


@pytest.mark.parametrize(
    ("key", "given", "asked", "sign"),
    [
        ("thread-beside-charge", {"acting": "repel", "Q2": "-45 nC", "r": "8 cm"}, "Q1", "negative"),
        ("thread-beside-charge", {"acting": "attract", "Q2": "-45 nC", "r": "8 cm"}, "Q1", "positive"),
        ("thread-beside-charge", {"acting": "attract", "Q1": "45 nC", "r": "8 cm"}, "Q2", "negative"),
        ("thread-in-field", {"lean": "along", "E": "60 kV/m"}, "Q", "positive"),
        ("thread-in-field", {"lean": "against", "E": "60 kV/m"}, "Q", "negative"),
    ],
)
def test_the_sign_of_a_charge_follows_from_the_side(key: str, given: dict[str, str], asked: str, sign: str) -> None:
    """Which way the sphere hangs tells the sign that is asked for."""
    worked = solve(key, asked, m="0,5 g", alpha="20°", **given)
    assert part(worked, "find").answer.direction.key == sign


def test_the_cut_beside_a_charge_changes_from_moment_to_moment() -> None:
    """The first acceleration is T/m along the thread's line; repelled it shrinks, attracted it grows."""
    for acting, way in (("repel", "shrink"), ("attract", "grow")):
        worked = solve("thread-beside-charge", "a", m="1 g", alpha="25°", acting=acting)
        assert worked.values["a"] == pytest.approx(9.8 / math.cos(math.radians(25)))
        assert part(worked, "find").answer.direction.words == "along the line of the thread, away from the support"
        assert part(worked, "later").points[1].keys == (way,)
        assert set(arrows(part(worked, "draw-cut").figure)) == {"F_g", "F_E"}
        assert [point.keys[0] for point in part(worked, "draw-cut").points] == ["F_g", "F_E"]


def test_the_cut_in_a_field_leaves_a_constant_acceleration() -> None:
    """In a uniform field neither force changes, so the sphere goes on along a straight line."""
    worked = solve("thread-in-field", "a", m="0,2 g", Q="8 nC", E="75 kV/m")
    assert worked.values["a"] == pytest.approx(math.hypot(9.8, 8e-9 * 7.5e4 / 2e-4))
    assert (
        part(worked, "later").points[1].words
        == "The weight is the same too, so the net force and the acceleration stay the same: "
        "the sphere moves along a straight line."
    )


# --- which sphere hangs at the larger angle -------------------------------------------------------------------


@pytest.mark.parametrize(
    ("m1", "m2", "says"),
    [
        (
            "1 g",
            "2 g",
            "tan α = F_E/(mg): with the same F_E the lighter sphere, here the first one, hangs at the larger angle.",
        ),
        (
            "2 g",
            "1 g",
            "tan α = F_E/(mg): with the same F_E the lighter sphere, here the second one, hangs at the larger angle.",
        ),
        ("2 g", "2 g", "tan α = F_E/(mg): with the same F_E and equal masses both hang at the same angle."),
    ],
)
def test_the_lighter_sphere_hangs_at_the_larger_angle(m1: str, m2: str, says: str) -> None:
    """The words name the sphere whose angle is the larger one of the values."""
    worked = solve("unequal-threads", "alpha_2", m1=m1, m2=m2, alpha_1="20°")
    assert part(worked, "which").points[1].words == says
    first, second = worked.values["alpha_1"], worked.values["alpha_2"]
    if "same angle" in says:
        assert first == pytest.approx(second)
    else:
        assert (first > second) == ("first one" in says)


def test_angles_alone_tell_which_sphere_is_lighter() -> None:
    """Without masses the given angles decide; with one of them nothing does."""
    both = solve("unequal-threads", "m1", m2="1 g", alpha_1="10°", alpha_2="30°")
    assert "here the second one" in part(both, "which").points[1].words
    one = solve("unequal-threads", "F_E", m1="1 g", alpha_1="10°")
    assert (
        part(one, "which").points[1].words
        == "tan α = F_E/(mg): with the same F_E the lighter sphere hangs at the larger angle."
    )


def test_the_scene_of_unequal_spheres_is_level() -> None:
    """Both spheres are drawn at one height, the second to the right, each thread at its own angle."""
    figure = solve("unequal-threads", "alpha_2", m1="1 g", m2="2 g", alpha_1="30°").figure
    spheres = {i.label: i.centre for i in figure.items if isinstance(i, Sphere)}
    assert spheres["A"][1] == pytest.approx(spheres["B"][1])
    assert spheres["A"][0] < 0 < spheres["B"][0]
    ratio = math.tan(math.radians(30)) / 2  # tan of the second angle
    assert spheres["B"][0] / -spheres["B"][1] == pytest.approx(ratio)


# --- refusals, word for word ----------------------------------------------------------------------------------

REFUSED = [
    (
        "thread-beside-charge",
        "Q1",
        {"m": "1 g", "alpha": "20°", "r": "8 cm", "Q2": "5 nC"},
        "acting",
        "Say whether the spheres attract or repel: the sign of one of the charges is not known.",
    ),
    (
        "thread-beside-charge",
        "T",
        {"m": "1 g", "Q1": "0 C"},
        "Q1",
        "A zero charge gives no force, so this cannot be found.",
    ),
    (
        "thread-beside-charge",
        "T",
        {"m": "1 g", "F_E": "0 N"},
        "F_E",
        "Without an electrostatic force the charges do not matter. Type a force above zero.",
    ),
    (
        "thread-beside-charge",
        "m",
        {"T": "0 N", "alpha": "20°"},
        "T",
        "A thread that carries a sphere is pulled: its tension is at least the weight. Type more than zero.",
    ),
    (
        "thread-beside-charge",
        "alpha",
        {"m": "1 g", "T": "5 mN"},
        None,
        "The tension must be larger than the weight: a slanting thread also pulls sideways. Change T or the mass.",
    ),
    (
        "thread-beside-charge",
        "m",
        {"T": "5 mN", "F_E": "7 mN"},
        None,
        "No thread hangs at such an angle: α must be more than 0° and less than 90°. Check the numbers.",
    ),
    (
        "thread-beside-charge",
        "T",
        {"m": "1 g", "alpha": "90°"},
        "alpha",
        "Give the angle with the vertical: more than 0° and less than 90°.",
    ),
    (
        "thread-beside-charge",
        "Q1",
        {"m": "1 g", "r": "8 cm", "Q2": "5 nC", "acting": "repel"},
        None,
        (
            "The charge on the hanging sphere does not follow from these data. Add the angle of the thread with the"
            " vertical or the electrons too many or too few on the sphere or the electrostatic force (size) or the"
            " tension in the thread or the acceleration at the instant the thread is cut."
        ),
    ),
    (
        "thread-beside-charge",
        "alpha",
        {"m": "1 g", "r": "8 cm", "Q2": "5 nC", "Q1": "5 nC", "acting": "attract"},
        "acting",
        "Spheres with these signs repel each other. Choose “do what their signs say”, or change a sign.",
    ),
    (
        "thread-beside-charge",
        "T",
        {"m": "1 g", "alpha": "20°", "F_E": "4,5 mN"},
        "F_E",
        "This does not fit the other numbers: they give 3,57 × 10⁻³ N. Correct it, or leave this box empty.",
    ),
    (
        "thread-in-field",
        "Q",
        {"m": "1 g", "alpha": "20°", "E": "50 kV/m"},
        "lean",
        "Say which way the sphere hangs: the sign of its charge follows from it.",
    ),
    (
        "thread-in-field",
        "alpha",
        {"m": "1 g", "Q": "5 nC", "E": "50 kV/m", "lean": "against"},
        "lean",
        (
            "A positive charge is pushed in the direction of the field, a negative one against it. Choose “as the sign"
            " of its charge says”, or change the sign."
        ),
    ),
    (
        "thread-in-field",
        "alpha",
        {"m": "1 g", "Q": "0 C", "E": "50 kV/m"},
        "Q",
        "A zero charge gives no force, so this cannot be found.",
    ),
    (
        "thread-in-field",
        "alpha",
        {"m": "1 g", "Q": "5 nC", "E": "0 V/m"},
        "E",
        "The field's size is greater than zero: pick its direction beside it.",
    ),
    (
        "unequal-threads",
        "alpha_2",
        {"m1": "1 g", "m2": "2 g", "alpha_1": "20°", "Q1": "5 nC", "Q2": "-5 nC"},
        "Q2",
        "On one support spheres that attract swing together and touch. Choose two supports, or charges that repel.",
    ),
    (
        "unequal-threads",
        "alpha_2",
        {"m2": "2 g", "T2": "15 mN"},
        None,
        "No thread hangs at such an angle: each angle must be more than 0° and less than 90°. Check the numbers.",
    ),
    (
        "unequal-threads",
        "alpha_1",
        {"m1": "1 g", "T1": "0 N"},
        "T1",
        "A thread that carries a sphere is pulled: its tension is at least the weight. Type more than zero.",
    ),
]


@pytest.mark.parametrize(("key", "asked", "typed", "box", "sentence"), REFUSED)
def test_what_cannot_be_is_refused_at_its_box(
    key: str, asked: str, typed: dict[str, str], box: str | None, sentence: str
) -> None:
    """Each refusal stands at the box it is about and says what to do."""
    refusal = refused(key, asked, **typed)
    assert plain(refusal.sentence) == sentence
    assert refusal.field == box


@pytest.mark.parametrize("key", ["thread-beside-charge", "thread-in-field"])
def test_without_a_direction_nothing_is_drawn(key: str) -> None:
    """Where nothing tells which way the sphere is pushed, sizes are answered without an arrow."""
    worked = solve(key, "T", m="1 g", alpha="20°")
    assert [one.key for one in worked.parts] == ["find"]
    assert worked.figure is None
    assert worked.values["T"] == pytest.approx(9.8e-3 / math.cos(math.radians(20)))


def test_a_spare_rounded_result_changes_nothing() -> None:
    """The force typed rounded besides mass and angle is noted and not used."""
    data = {"m": "1 g", "alpha": "20°", "r": "8 cm", "Q2": "50 nC", "acting": "repel"}
    right = solve("thread-beside-charge", "Q1", **data).values["Q1"]
    more = solve("thread-beside-charge", "Q1", **data, F_E="3,6 mN", T="10 mN")
    assert more.values["Q1"] == right
    assert sum("More is given than is needed" in note for note in more.notes) == 2


# --- practice and marking -------------------------------------------------------------------------------------


@pytest.mark.parametrize("key", [w[0] for w in WHOLES])
def test_drawn_questions_are_told_in_three_ways_and_hide_what_is_asked(key: str) -> None:
    """Many draws: at least three openings, several unknowns, no spare datum, and no asked angle in the picture."""
    topic, question = find(f"equilibrium.{key}")
    openings, unknowns = set(), set()
    for level, seed in itertools.product((1, 2, 3), range(8)):
        one = draw(topic, question, seed, level)
        found = read(question, one.inputs, one.find, variant=one.variant)
        worked = work(topic, question, found)
        openings.add(re.split(r"[.;] ", worked.story)[0])
        unknowns.add(one.find)
        assert worked.unproven == ()
        assert not any("More is given" in note for note in worked.notes)
        scene = fair_scene(question.plan(found.data), found)
        if one.find.startswith("alpha"):
            assert scene is None
    assert len(openings) >= 3
    assert len(unknowns) >= 5


@pytest.mark.parametrize(
    ("key", "asked", "typed", "answer", "says"),
    [
        (
            "thread-beside-charge",
            "F_E",
            {"m": "1 g", "alpha": "20°", "acting": "repel"},
            f"{1e-3 * 9.8 / math.tan(math.radians(20)):.4g} N",
            (
                "You have the tangent upside down. F_E lies opposite α and mg next to it: start again from tan α ="
                " F_E/(mg)."
            ),
        ),
        (
            "thread-in-field",
            "E",
            {"V": "6 kV", "d": "8 cm"},
            "480 V/m",
            "You multiplied V by d. E tells how many volts there are for each metre, so divide: E = V/d.",
        ),
        (
            "unequal-threads",
            "alpha_2",
            {"m1": "2 g", "m2": "1 g", "alpha_1": "20°"},
            "40°",
            (
                "You put the angles in proportion. Their tangents are: take the tangent of α₁ first, and the inverse"
                " tangent last."
            ),
        ),
        (
            "unequal-threads",
            "alpha_2",
            {"m1": "2 g", "m2": "1 g", "alpha_1": "20°"},
            "10,31°",
            (
                "You have the masses the other way round. The force is the same on both spheres, so m₁ tan α₁ = m₂"
                " tan α₂. Divide by m₂."
            ),
        ),
    ],
)
def test_usual_mistakes_are_named_kindly(key: str, asked: str, typed: dict[str, str], answer: str, says: str) -> None:
    """A learner's answer made the known wrong way is met with its sentence."""
    request = {"question": f"equilibrium.{key}", "inputs": typed, "find": asked, "answers": {"find": {"value": answer}}}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": request})))
    assert reply["ok"], reply
    assert says in json.dumps(reply["data"], ensure_ascii=False)
