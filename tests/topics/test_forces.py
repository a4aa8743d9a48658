"""Forces on one body: published cases, numpy and scipy for every unknown, refusals word for word, pictures."""

from __future__ import annotations

import json
import random
import re
from math import atan, cos, degrees, radians, sin, sqrt, tan

import numpy as np
import pytest
from scipy import optimize

from calc import topics
from calc.figures import Arrow, Figure
from calc.model.answers import WorkedAnswer
from calc.model.questions import Choice, Input, Refusal
from calc.practice.drawing import draw
from calc.practice.fair import fair_scene
from calc.practice.hints import hints
from calc.working.leading import boxes
from calc.working.reading import Refusals, read
from calc.working.working import work
from tests.topics.asking import Chapter

G = 9.8
ASKED = Chapter("forces")
solve, value, refused, given, published = ASKED.solve, ASKED.value, ASKED.refused, ASKED.given, ASKED.published


# Sources stand in forces_published.json: OpenStax University Physics Volume 1 and OpenStax College Physics,
# worked examples and exercises, CC BY 4.0.


@pytest.mark.parametrize(("case", "names"), [("three-force-left-wire", "angle1 angle2"), ("traffic-light-T1", "")])
def test_published_weights_on_two_wires(case: str, names: str) -> None:
    """The tension in the left one of two wires that carry 15 kg."""
    m, alpha, beta = given(case, "m", *(names.split() or ("angle 1", "angle 2")))
    assert value("strings", "T1", m=f"{m} kg", alpha=f"{alpha}°", beta=f"{beta}°") == published(case)


def test_the_published_resultant_of_two_equal_pulls() -> None:
    """The force that balances two pulls, each 20° from the line between them: the load on strings at 70°."""
    pull, half = given("two-equal-pulls", "F1", "half_angle")
    steep = f"{90 - float(half)}°"
    assert value("strings", "w", T1=f"{pull} N", alpha=steep, beta=steep) == published("two-equal-pulls")


def test_the_published_angle_of_two_pushes_at_right_angles() -> None:
    """The resultant of two forces at right angles: the closed triangle gives its angle with the first."""
    first, second = map(float, given("perpendicular-pushes-angle", "F1", "F2"))
    alpha = value("strings", "alpha", T1=f"{first} N", T2=f"{second} N", w=f"{sqrt(first**2 + second**2):.9g} N")
    assert 90 - degrees(alpha) == published("perpendicular-pushes-angle")


@pytest.mark.parametrize(
    ("case", "angle", "mu", "motion"),
    [
        ("smooth-slope-a", "angle", "", "down"),
        ("rough-slope-13", "angle", "mu_k", "down"),
        ("rough-slope-parcel", "angle", "mu_k", "down"),
        ("icy-slope-braking", "angle", "mu_s", "up"),
    ],
)
def test_published_bodies_on_a_slope(case: str, angle: str, mu: str, motion: str) -> None:
    """The acceleration without a mass; friction down the slope makes it the largest."""
    (theta,) = given(case, angle)
    rough = given(case, mu)[0] if mu else "0"
    found = value("slope", "a", how="none", motion=motion, theta=f"{theta}°", mu=rough)
    assert abs(found) == published(case)


def test_the_published_skier() -> None:
    """Normal force and acceleration of a skier on a smooth slope."""
    m, slope = given("skier-normal", "m", "slope")
    data = {"how": "none", "motion": "down", "m": f"{m} kg", "theta": f"{slope}°"}
    assert value("slope", "N", **data) == published("skier-normal")
    assert value("slope", "a", mu="0", **data) == published("skier-smooth")


def test_the_published_crate_on_a_lorry() -> None:
    """What makes it keep up with the lorry is static friction, ma and not μsN; it slides where more is needed."""
    m, a, mu = given("crate-static-friction", "m", "a", "mu_s")
    push = f"{float(m) * float(a):.9g} N"
    data = {"how": "pull", "m": f"{m} kg", "theta": "0°", "phi": "0°"}
    assert value("moves", "f", P=push, mu_s=mu, mu_k="0.3", **data) == published("crate-static-friction")
    m, mu = given("crate-kinetic-friction", "m", "mu_k")
    data = {"how": "pull", "state": "slides", "m": f"{m} kg", "phi": "0°"}
    assert value("level", "f", P=f"{float(m) * 5} N", mu=mu, **data) == published("crate-kinetic-friction")


@pytest.mark.parametrize(
    ("pull", "friction", "normal", "words"),
    [("20 N", 17.32, 39.0, "stays at rest"), ("30 N", 0.4 * 34, 34.0, "starts to slide")],
)
def test_the_reference_of_the_notes(pull: str, friction: float, normal: float, words: str) -> None:
    """5 kg, μs 0,6, μk 0,4, 30°: at 20 N it stays and friction matches; at 30 N a = 2,48 m·s⁻²."""
    data = {"how": "pull", "m": "5 kg", "theta": "0°", "phi": "30°", "mu_s": "0,6", "mu_k": "0,4"}
    worked = solve("moves", P=pull, **data)
    assert worked.values["f"] == pytest.approx(friction, abs=0.005)
    assert worked.values["N"] == pytest.approx(normal)
    points = {part.key: " ".join(point.words for point in part.points) for part in worked.parts}
    assert words in points["decide"]
    assert ("2,48" in points["then"]) == (pull == "30 N")
    limit = pytest.approx(25.21, abs=0.005)
    assert value("level", "P", how="pull", state="about", m="5 kg", phi="30°", mu="0,6") == limit


# --- independent routes -----------------------------------------------------------------------------------------


def equations(x: np.ndarray, theta: float, phi: float, mu: float, way: int, known: dict[str, float]) -> list[float]:
    """Net force along x and y of the page, and f = μN, for unknown N, f and one of a, P, m."""
    names = [name for name in ("a", "P", "m") if name not in known]
    v = {**known, "N": x[0], "f": x[1], names[0]: x[2]}
    along, away = np.array([cos(theta), sin(theta)]), np.array([-sin(theta), cos(theta)])
    force = v["P"] * (cos(phi) * along + sin(phi) * away) + v["N"] * away - way * v["f"] * along
    force += np.array([0, -v["m"] * G])
    net = force - v["m"] * way * v["a"] * along
    return [net[0], net[1], v["f"] - mu * v["N"]]


@pytest.mark.parametrize("find", ["a", "P", "m"])
@pytest.mark.parametrize(
    ("key", "choices", "theta", "phi", "way"),
    [
        ("level", {"how": "pull", "state": "slides"}, 0, 30, 1),
        ("level", {"how": "push", "state": "slides"}, 0, -20, 1),
        ("slope", {"how": "pull", "motion": "up"}, 25, 15, 1),
        ("slope", {"how": "pull", "motion": "down"}, 35, 10, -1),
        ("level", {"how": "pull", "state": "about"}, 0, 30, 1),
        ("level", {"how": "push", "state": "about"}, 0, -20, 1),
        ("slope", {"how": "pull", "motion": "slip-up"}, 25, 15, 1),
        ("slope", {"how": "pull", "motion": "slip-down"}, 35, 10, -1),
        ("slope", {"how": "push", "motion": "up"}, 25, -15, 1),
        ("slope", {"how": "push", "motion": "down"}, 35, -10, -1),
        ("slope", {"how": "push", "motion": "slip-up"}, 25, -15, 1),
        ("slope", {"how": "push", "motion": "slip-down"}, 35, -10, -1),
    ],
)
def test_scipy_finds_the_same_from_components_on_the_page(
    find: str, key: str, choices: dict[str, str], theta: int, phi: int, way: int
) -> None:
    """The forces split along the page's own axes, solved by scipy for N, f and the unknown at once."""
    rests = choices.get("state") == "about" or choices.get("motion", "").startswith("slip")
    if rests and find == "a":
        return
    known = {"a": 0.0 if rests else 0.7, "P": 50.0 if way > 0 else 12.0, "m": 6.0}
    del known[find]
    args = (radians(theta), radians(phi), 0.2, way, known)
    found = optimize.least_squares(equations, [40.0, 9.0, 5.0], args=args, xtol=1e-15, ftol=1e-15, gtol=1e-15).x
    typed = {"mu": "0,2", "phi": f"{abs(phi)}°", **({"theta": f"{theta}°"} if key == "slope" else {})}
    units = {"a": "m/s^2", "P": "N", "m": "kg"}
    typed |= {name: f"{x} {units[name]}" for name, x in known.items() if not (rests and name == "a")}
    worked = solve(key, find, **choices, **typed)
    assert worked.values[find] == pytest.approx(found[2])
    assert worked.values["N"] == pytest.approx(found[0])


@pytest.mark.parametrize(("alpha", "beta"), [(35, 60), (20, 85), (0, 40), (70, 10)])
def test_numpy_finds_the_same_tensions(alpha: float, beta: float) -> None:
    """Two equations in two unknowns, solved as a matrix; an angle comes back from the sizes."""
    a, b = radians(alpha), radians(beta)
    first, second = np.linalg.solve([[-cos(a), cos(b)], [sin(a), sin(b)]], [0, 70])
    worked = solve("strings", "T1", w="70 N", alpha=f"{alpha}°", beta=f"{beta}°")
    assert [worked.values["T1"], worked.values["T2"]] == pytest.approx([first, second])
    back = value("strings", "alpha", w="70 N", T1=f"{first:.12g} N", T2=f"{second:.12g} N")
    assert back == pytest.approx(a, abs=1e-6)


@pytest.mark.parametrize(("w", "size", "angle"), [(80.0, 50.0, 35.0), (40.0, 60.0, 20.0), (30.0, 25.0, 80.0)])
def test_one_string_and_the_weight_fix_the_other(w: float, size: float, angle: float) -> None:
    """What closes the triangle of two known forces, by numpy, is the other tension with its angle, left or right."""
    known = np.array([-size * cos(radians(angle)), size * sin(radians(angle)) - w])
    other, tilt = float(np.hypot(*known)), degrees(np.arctan2(-known[1], -known[0]))
    assert 0 <= tilt < 90
    for mine, far, near_angle, far_angle in (("T1", "T2", "alpha", "beta"), ("T2", "T1", "beta", "alpha")):
        typed = {"w": f"{w} N", mine: f"{size} N", near_angle: f"{angle}°"}
        assert value("strings", far, **typed) == pytest.approx(other)
        assert degrees(value("strings", far_angle, **typed)) == pytest.approx(tilt)
        back = {mine: f"{size} N", far: f"{other:.12g} N", far_angle: f"{tilt:.12g}°"}
        assert degrees(value("strings", near_angle, **back)) == pytest.approx(angle, rel=1e-6)
        assert value("strings", "w", **back) == pytest.approx(w)


def test_the_angle_of_slipping_is_where_the_decision_turns() -> None:
    """tan θ = μ, for any mass: a hair steeper and "does it move?" says that it slides."""
    angle = value("slipping", "theta", mu_s="0,55")
    assert angle == pytest.approx(atan(0.55))
    for turn, words in ((-0.01, "stays at rest"), (0.01, "starts to slide down the slope")):
        theta = f"{degrees(angle) + turn:.6f}°"
        worked = solve("moves", how="pull", m="4 kg", theta=theta, P="0 N", phi="0°", mu_s="0,55", mu_k="0,3")
        assert words in " ".join(point.words for part in worked.parts for point in part.points)


def test_the_pull_that_just_slips_is_where_the_decision_turns() -> None:
    """On the level, on a slope, pulled and pushed: just below it stays, just above it slides."""
    for how, theta, phi in (("pull", 0, 30), ("push", 0, 20), ("pull", 20, 15)):
        if theta:
            limit = value("slope", "P", how="pull", motion="slip-up", m="6 kg", theta="20°", phi="15°", mu="0,4")
        else:
            limit = value("level", "P", how=how, state="about", m="6 kg", phi=f"{phi}°", mu="0,4")
        for share, words in ((0.999, "stays at rest"), (1.001, "starts to slide")):
            data = {"how": how, "m": "6 kg", "theta": f"{theta}°", "phi": f"{phi}°", "mu_s": "0,4", "mu_k": "0,3"}
            worked = solve("moves", P=f"{share * limit:.9g} N", **data)
            assert words in " ".join(point.words for part in worked.parts for point in part.points)


def test_friction_never_exceeds_its_limit_and_a_body_alone_falls_slower_than_free() -> None:
    """In many draws f ≤ μsN, and a body that slides down by itself accelerates at less than g."""
    topic, question = topics.find("forces.moves")
    for seed in range(30):
        drawn = draw(topic, question, seed, 2, 4)
        v = work(topic, question, read(question, drawn.inputs, drawn.find)).values
        assert v["f"] <= v["mu_s"] * v["N"] * (1 + 1e-9)
    for theta in (5, 30, 60, 85):
        assert value("slope", "a", how="none", motion="down", theta=f"{theta}°", mu="0,1") < G


SETTINGS = [
    ("level", {"how": "pull", "state": "slides"}, 0, 1),
    ("level", {"how": "push", "state": "slides"}, 0, 1),
    ("level", {"how": "pull", "state": "about"}, 0, 1),
    ("level", {"how": "push", "state": "about"}, 0, 1),
    ("slope", {"how": "pull", "motion": "up"}, 25, 1),
    ("slope", {"how": "pull", "motion": "down"}, 35, -1),
    ("slope", {"how": "pull", "motion": "slip-up"}, 25, 1),
    ("slope", {"how": "pull", "motion": "slip-down"}, 35, -1),
    ("slope", {"how": "push", "motion": "up"}, 25, 1),
    ("slope", {"how": "push", "motion": "down"}, 35, -1),
    ("slope", {"how": "push", "motion": "slip-up"}, 25, 1),
    ("slope", {"how": "push", "motion": "slip-down"}, 35, -1),
    ("slope", {"how": "none", "motion": "down"}, 35, -1),
    ("slope", {"how": "none", "motion": "up"}, 25, 1),
    ("slope", {"how": "none", "motion": "slip-down"}, degrees(atan(0.2)), -1),
]


@pytest.mark.parametrize(("key", "choices", "theta", "way"), SETTINGS)
def test_angles_of_slope_and_pull_are_those_that_scipy_was_given(
    key: str, choices: dict[str, str], theta: float, way: int
) -> None:
    """Forces from components on the page at known angles; each angle comes back from μ, from the friction and N."""
    lean = {"pull": 15, "push": -15, "none": 0}[choices["how"]]
    a = 0.0 if choices.get("state") == "about" or "slip" in choices.get("motion", "") else 0.7
    if choices["how"] == "none":
        known = {"P": 0.0, "m": 6.0}
    else:
        known = {"a": a, "m": 6.0}
    args = (radians(theta), radians(lean), 0.2, way, known)
    normal, friction, third = optimize.least_squares(equations, [40.0, 9.0, 5.0], args=args, xtol=1e-15, ftol=1e-15).x
    v = {"m": 6.0, "N": normal, "f": friction, "a": third if "P" in known else a, "P": 0.0 if "P" in known else third}
    units = {"m": " kg", "N": " N", "f": " N", "a": " m/s^2", "P": " N", "mu": ""}
    typed = {name: f"{v[name]:.12g}{units[name]}" for name in ("m", "P", "a") if v[name] or name == "m"}
    if choices["how"] == "none" and a == 0:
        typed.pop("a", None)
    tilt = {"theta": f"{theta}°"} if key == "slope" else {}
    turn = {"phi": f"{abs(lean)}°"} if lean else {}
    for given_ in ({"mu": "0,2"}, {"f": f"{friction:.12g} N"}, {"N": f"{normal:.12g} N"}):
        if key == "slope" and (choices["how"] == "none" or "N" not in given_):
            found = solve(key, "theta", **choices, **typed, **given_, **turn).values
            assert degrees(found["theta"]) == pytest.approx(theta, abs=1e-4), given_
        if lean:
            worked = solve(key, "phi", **choices, **typed, **given_, **tilt)
            drawn = " ".join(point.words for part in worked.parts if part.key == "draw" for point in part.points)
            assert "at φ " in drawn
            found = worked.values
            near = [degrees(found[name]) for name in ("phi", "phi_2") if name in found]
            assert min(abs(one - abs(lean)) for one in near) < 1e-4, given_


@pytest.mark.parametrize("pull", [43, 45, 50, 60])
def test_the_angle_asked_of_a_pull_that_just_slips_is_that_of_the_question_on_every_angle(pull: int) -> None:
    """Level, about to slip: both angles where there are two, and the diagram at the larger one."""
    every = solve("angle", m="8 kg", P=f"{pull} N", mu_s="0,6").values
    worked = solve("level", "phi", how="pull", state="about", m="8 kg", P=f"{pull} N", mu="0,6")
    assert worked.values["phi"] == pytest.approx(every["phi_2"])
    assert ("phi_2" in worked.values) == ("phi_1" in every)
    if "phi_1" in every:
        assert worked.values["phi_2"] == pytest.approx(every["phi_1"])
    figure = next(part.figure for part in worked.parts if part.key == "draw")
    assert figure
    arrow = next(one for one in figure.items if isinstance(one, Arrow) and one.label == "P")
    turn = np.arctan2(arrow.end[1] - arrow.start[1], arrow.end[0] - arrow.start[0])
    assert turn == pytest.approx(every["phi_2"], abs=1e-6)


@pytest.mark.parametrize(
    ("push", "said"),
    [
        (16, "The other root is φ = −18,07°. It lies above the surface: there the push would be a pull, not a push."),
        (12, ""),  # both hold
    ],
)
def test_every_angle_of_a_push_that_just_holds_is_found(push: int, said: str) -> None:
    """5 kg on 40° with μ 0,5, pushed up the slope and into it: numpy looks for every angle from 0° to 90° at which the
    forces along the slope cancel at the limit; the other root is dropped with its reason."""
    theta, angles = radians(40), np.radians(np.linspace(0, 90, 900_001))
    normal = 5 * G * cos(theta) + push * np.sin(angles)
    gap = push * np.cos(angles) + 0.5 * normal - 5 * G * sin(theta)
    roots = np.degrees(angles[:-1][np.sign(gap[:-1]) != np.sign(gap[1:])])
    worked = solve("slope", "phi", how="push", motion="slip-down", m="5 kg", theta="40°", mu="0,5", P=f"{push} N")
    found = [degrees(worked.values[name]) for name in ("phi", "phi_2") if name in worked.values]
    assert sorted(found) == pytest.approx(roots, abs=1e-3)
    assert [step.method for part in worked.parts for step in part.steps if step.method] == ([said] if said else [])


@pytest.mark.parametrize(("a", "two"), [("-11,2 m/s^2", True), ("-7 m/s^2", False)])
def test_a_second_slope_that_slows_as_much_is_told(a: str, two: bool) -> None:
    """μ 0,6 on the way up: g(sin θ + μ cos θ) has its largest value at 59°, and numpy finds it on both sides."""
    size = -float(a.split()[0].replace(",", "."))
    angles = np.radians(np.linspace(0, 90, 900_001))
    gap = G * (np.sin(angles) + 0.6 * np.cos(angles)) - size
    roots = np.degrees(angles[:-1][np.sign(gap[:-1]) != np.sign(gap[1:])])
    worked = solve("slope", "theta", how="none", motion="up", mu="0,6", a=a)
    assert degrees(worked.values["theta"]) == pytest.approx(roots[0], abs=1e-3)
    assert len(roots) == (2 if two else 1)
    told = " ".join(worked.warnings)
    assert (f"A second angle fits these numbers: {f'{roots[-1]:.2f}'.replace('.', ',')}°." in told) == two


@pytest.mark.parametrize(("pull", "roots"), [(43, 2), (45, 2), (50, 1), (60, 1)])
def test_scipy_finds_every_angle_at_which_a_pull_just_moves_a_chest(pull: float, roots: int) -> None:
    """8 kg, μs 0,6: the zeros of P cos φ − μs(mg − P sin φ) above the level, each found in its own bracket."""
    worked = solve("angle", m="8 kg", P=f"{pull} N", mu_s="0,6")

    def short(phi: float) -> float:
        return pull * cos(phi) - 0.6 * (8 * G - pull * sin(phi))

    best = atan(0.6)
    found = [optimize.brentq(short, best, radians(89.9))]
    if roots == 2:
        found.insert(0, optimize.brentq(short, 0, best))
    else:
        assert short(0) > 0
    names = ("phi_1", "phi_2") if roots == 2 else ("phi_2",)
    assert [worked.values[name] for name in names] == pytest.approx(found)
    assert [one.name for one in worked.answers] == list(names)
    points = " ".join(point.words for part in worked.parts if part.key == "between" for point in part.points)
    assert ("between the two angles" in points) == (roots == 2)
    for phi, moves in ((best, True), (found[-1] + 0.02, False), (found[0] - 0.02, roots == 1)):
        data = {"how": "pull", "m": "8 kg", "theta": "0°", "mu_s": "0,6", "mu_k": "0,5"}
        told = solve("moves", P=f"{pull} N", phi=f"{degrees(phi):.6f}°", **data)
        said = " ".join(point.words for part in told.parts if part.key == "decide" for point in part.points)
        assert ("starts to slide" in said) == moves


@pytest.mark.parametrize(("mu_s", "back"), [("0,4", True), ("0,6", False)])
def test_a_box_pushed_up_a_ramp_stops_by_energy_and_is_tested_again(mu_s: str, back: bool) -> None:
    """The distance from an energy balance; tan 25° lies between the two coefficients."""
    worked = solve("ramp", m="2 kg", theta="25°", u="4 m/s", mu_s=mu_s, mu_k="0,25")
    rise, rub = sin(radians(25)), 0.25 * cos(radians(25))
    assert worked.values["d"] == pytest.approx(0.5 * 4**2 / (G * (rise + rub)))
    points = " ".join(point.words for part in worked.parts if part.key == "decide" for point in part.points)
    assert ("slides back" in points) == back == (tan(radians(25)) > float(mu_s.replace(",", ".")))


def test_a_ramp_does_not_tell_what_the_box_does_in_the_end() -> None:
    """Rough or smooth, a reader is told and shown the same but for the coefficient."""
    told = {
        seen_before_the_answer(solve("ramp", m="2 kg", theta="25°", u="4 m/s", mu_s=mu, mu_k="0,25")).replace(mu, "μ")
        for mu in ("0,4", "0,6")
    }
    assert len(told) == 1


# --- refusals ---------------------------------------------------------------------------------------------------

LIFTS = "The pull lifts it off the surface"
JAMS = "No push at this angle moves it, however large"
ANGLE = "Angle lies between 0° and 90°; choose above/below."
LEVEL_STRINGS = "No tension holds a weight on a perfectly level string"
DROPS_OUT = "Without a pull the mass drops out"
ABOUT = "It is only about to slip, so it has no acceleration"
LEVEL_PULL = {"how": "pull", "state": "slides", "m": "5 kg", "phi": "30°", "mu": "0,4"}


@pytest.mark.parametrize(
    ("key", "find", "typed", "sentence"),
    [
        ("level", "a", {**LEVEL_PULL, "P": "99 N"}, LIFTS),
        ("moves", "", {**LEVEL_PULL, "P": "99 N", "theta": "0°", "mu_s": "0,5", "mu_k": "0,4"}, LIFTS),
        ("slope", "N", {"how": "pull", "motion": "up", "m": "2 kg", "theta": "30°", "P": "60 N", "phi": "40°"}, LIFTS),
        ("angle", "", {"m": "8 kg", "P": "38 N", "mu_s": "0,6"}, "Too small at every angle"),
        ("angle", "", {"m": "8 kg", "P": "0 N", "mu_s": "0"}, "Too small at every angle"),
        ("ramp", "", {"m": "2 kg", "theta": "0°", "u": "4 m/s", "mu_s": "0,1", "mu_k": "0"}, "Nothing slows it down"),
        ("angle", "", {"m": "8 kg", "P": "90 N", "mu_s": "0,6"}, LIFTS),
        ("level", "P", {"how": "push", "state": "about", "m": "5 kg", "phi": "60°", "mu": "0,7"}, JAMS),
        (
            "slope",
            "P",
            {"how": "push", "motion": "slip-up", "m": "5 kg", "theta": "45°", "phi": "40°", "mu": "1,3"},
            JAMS,
        ),
        (
            "strings",
            "T1",
            {"w": "80 N", "alpha": "0°", "beta": "0°"},
            LEVEL_STRINGS,
        ),
        ("strings", "alpha", {"w": "80 N", "T1": "30 N", "T2": "40 N"}, "These cannot balance"),
        ("strings", "beta", {"w": "20 N", "T1": "50 N", "alpha": "35°"}, "a string would slope downwards"),
        ("strings", "T1", {"w": "20 N", "T2": "50 N", "beta": "35°"}, "a string would slope downwards"),
        (
            "strings",
            "w",
            {"m": "1 kg", "alpha": "95°", "T1": "4 N"},
            ANGLE,
        ),
        ("level", "a", {**LEVEL_PULL, "P": "20 N", "mu": "-0,1"}, "A coefficient of friction cannot be negative."),
        ("level", "a", {**LEVEL_PULL, "P": "-20 N"}, "Enter the size; choose the direction."),
        ("level", "a", {**LEVEL_PULL, "P": "20 N", "m": "0 kg"}, "Mass must be greater than zero."),
        (
            "slope",
            "m",
            {"how": "none", "motion": "down", "theta": "30°", "mu": "0,2"},
            DROPS_OUT,
        ),
        ("slope", "mu", {"how": "none", "motion": "slip-up", "theta": "30°"}, "Nothing pulls it up the slope"),
        ("slope", "phi", {"how": "none", "motion": "down", "m": "6 kg"}, "No pull is chosen, so there is none"),
        (
            "slope",
            "theta",
            {"how": "none", "motion": "down", "mu": "0,2", "a": "11 m/s^2"},
            "No angle fits: on a slope the weight can drive or hold back at most with its whole size.",
        ),
        (
            "slope",
            "phi",
            {"how": "pull", "motion": "up", "m": "6 kg", "theta": "25°", "mu": "0,2", "P": "30 N", "a": "1 m/s^2"},
            "Too small at every angle: even at the best angle this force cannot do it. Use a larger one.",
        ),
        (
            "level",
            "phi",
            {"how": "push", "state": "about", "m": "8 kg", "mu": "0,6", "P": "30 N"},
            "No angle fits: at every angle from 0° to 90° this force does something else.",
        ),
        (
            "level",
            "phi",
            {"how": "pull", "state": "about", "m": "8 kg", "mu": "0,6", "P": "40 N"},
            "Too small at every",
        ),
        (
            "level",
            "a",
            {**LEVEL_PULL, "state": "about", "P": "20 N"},
            ABOUT,
        ),
    ],
)
def test_what_cannot_be_is_refused_with_its_reason(key: str, find: str, typed: dict[str, str], sentence: str) -> None:
    """Word for word."""
    assert sentence in refused(key, find, **typed)


def test_the_push_that_jams_starts_exactly_at_its_angle() -> None:
    """tan φ = 1/μ: a degree less steep a large push still moves it."""
    edge = degrees(atan(1 / 0.7))
    data = {"how": "push", "state": "about", "m": "5 kg", "mu": "0,7"}
    assert value("level", "P", phi=f"{edge - 1:.4f}°", **data) > 1000
    assert JAMS in refused("level", "P", phi=f"{edge + 0.01:.4f}°", **data)


def test_kinetic_friction_above_static_is_warned_of_or_refused() -> None:
    """Where it changes nothing a warning; where the body could neither stay nor move, a refusal."""
    data = {"how": "pull", "m": "5 kg", "theta": "0°", "phi": "0°", "mu_s": "0,3", "mu_k": "0,5"}
    assert any("μₖ is larger than μₛ" in one for one in solve("moves", P="10 N", **data).warnings)
    assert "μₖ may not be larger than μₛ" in refused("moves", P="20 N", **data)
    box = {"m": "2 kg", "theta": "25°", "u": "4 m/s"}  # tan 25° is 0,466
    for mu_s, mu_k, does in (("0,2", "0,25", "slides back"), ("0,5", "0,6", "stays at rest")):
        worked = solve("ramp", mu_s=mu_s, mu_k=mu_k, **box)
        assert any("μₖ is larger than μₛ" in one for one in worked.warnings)
        assert does in " ".join(point.words for part in worked.parts if part.key == "decide" for point in part.points)
    assert "μₖ may not be larger than μₛ" in refused("ramp", mu_s="0,4", mu_k="0,5", **box)
    assert not solve("ramp", mu_s="0,4", mu_k="0,4", **box).warnings


# --- words and pictures -----------------------------------------------------------------------------------------


def seen_before_the_answer(worked: WorkedAnswer) -> str:
    """The story, what is asked and the words of the drawing."""
    figure = worked.figure
    assert isinstance(figure, Figure)
    return " ".join((worked.story, *(part.ask for part in worked.parts), figure.description, *figure.notes))


@pytest.mark.parametrize("key", ["moves", "crew"])
def test_nothing_tells_whether_it_stays(key: str) -> None:
    """With a small pull and a large one, a reader is told and shown the same but for the number."""
    _, question = topics.find(f"forces.{key}")
    told, marks = set(), set()
    for pull in ("10 N", "40 N" if key == "moves" else "150 N"):
        example = {**question.example, "P": pull}
        found = read(question, example)
        worked = work(topics.find(f"forces.{key}")[0], question, found)
        told.add(seen_before_the_answer(worked).replace(pull.replace(" ", "\N{NO-BREAK SPACE}"), "P"))
        marks.add(tuple(part.marks for part in worked.parts))
        assert fair_scene(question.plan(found.data), found) is not None
    assert len(told) == len(marks) == 1


def test_nothing_tells_which_way_a_body_on_a_slope_would_slip() -> None:
    """A pull too weak and one too strong give the same words: up or down has to be found."""
    _, question = topics.find("forces.moves")
    told, ways = set(), []
    for pull in ("1 N", "90 N"):
        data = {"how": "pull", "m": "5 kg", "theta": "35°", "P": pull, "phi": "10°", "mu_s": "0,3", "mu_k": "0,2"}
        worked = solve("moves", **data)
        told.add(seen_before_the_answer(worked).replace(pull.replace(" ", "\N{NO-BREAK SPACE}"), "P"))
        ways.append(next(part.answer.direction.words for part in worked.parts if part.key == "friction"))  # type: ignore[union-attr]
    assert len(told) == 1
    assert ways == ["up the slope", "down the slope"]
    assert question.plan


@pytest.mark.parametrize("angle", ["0°", "0,001°", "89°", "89,99°"])
def test_flat_and_upright_surfaces_are_drawn(angle: str) -> None:
    """At both ends of the angle a picture and a diagram stand beside the working."""
    rough = {"mu_s": "0,5", "mu_k": "0,3"}
    moves = solve("moves", how="pull", m="5 kg", theta=angle, P="3 N", phi="0°", **rough)
    ramp = solve("ramp", m="2 kg", theta=angle, u="4 m/s", **rough)
    for worked in (moves, ramp):
        assert worked.figure
        assert all(part.figure for part in worked.parts if part.kind == "draw")


@pytest.mark.parametrize(("how", "side"), [("pull", "above"), ("push", "below")])
def test_a_pull_lifts_and_a_push_presses_in_words_number_and_drawing(how: str, side: str) -> None:
    """On a slope at 25°, P at 15° to it: story, law and arrow say the same of its part across the slope."""
    typed = {"m": "6 kg", "theta": "25°", "P": "60 N", "phi": "15°", "mu": "0,2"}
    worked = solve("slope", "a", how=how, motion="up", **typed)
    turn = 1 if how == "pull" else -1
    assert worked.values["N"] == pytest.approx(6 * G * cos(radians(25)) - turn * 60 * sin(radians(15)))
    drawn = next(part for part in worked.parts if part.key == "draw")
    assert f"the {how}, at φ {side} the slope" in " ".join(point.words for point in drawn.points)
    assert drawn.figure
    arrow = next(one for one in drawn.figure.items if isinstance(one, Arrow) and one.label == "P")
    way = np.degrees(np.arctan2(arrow.end[1] - arrow.start[1], arrow.end[0] - arrow.start[0]))
    assert way == pytest.approx(25 + turn * 15)
    assert f"The {how} has a size of 60" in worked.story
    assert ("into it" if how == "push" else "away from it") in worked.story
    assert ("push" in worked.story) == (how == "push")
    assert ("pull" in worked.story) == (how == "pull")


@pytest.mark.parametrize("how", ["pull", "push"])
def test_a_force_that_is_chosen_is_asked_for(how: str) -> None:
    """Size and angle are shown on the form as soon as a pull or push is chosen; without them each says so itself."""
    typed = {"how": how, "motion": "up", "m": "6 kg", "theta": "25°", "mu": "0,2"}
    _, question = topics.find("forces.slope")
    assert {"P", "phi"} <= set(boxes(question, "a", typed))
    assert refused("slope", "a", **typed) == f"A {how} is chosen: type its size, or choose “no other force”."
    along = refused("slope", "a", **typed, P="60 N")
    assert along == f"A {how} is chosen: type its angle with the slope, 0° if it is along the slope."
    assert {"P", "phi"}.isdisjoint(boxes(question, "a", {**typed, "how": "none", "motion": "down"}))


def test_practice_pushes_by_the_newest_rule_alone() -> None:
    """Of older addresses none pushes on a slope, as none did before."""
    topic, question = topics.find("forces.slope")
    seen = {rule: {draw(topic, question, seed, 2, rule).inputs["how"] for seed in range(25)} for rule in (4, 5)}
    assert seen == {4: {"none", "pull"}, 5: {"none", "pull", "push"}}


WAYS = {"up the slope": 0.0, "down the slope": 180.0, "to the left": 180.0, "to the right": 0.0}


@pytest.mark.parametrize("key", ["moves", "level", "slope", "crew"])
def test_friction_is_drawn_against_what_its_words_say(key: str) -> None:
    """The arrow f lies along the surface, opposite the motion or what would move it; N at 90° to the surface; the
    arrows of a body at rest close."""
    topic, question = topics.find(f"forces.{key}")
    for seed in range(9):
        drawn = draw(topic, question, seed, 1 + seed % 3, 4)
        worked = work(topic, question, read(question, drawn.inputs, drawn.find, variant=drawn.variant))
        part = next(part for part in worked.parts if part.key == "draw")
        assert part.figure
        ways = {
            item.label: degrees(np.arctan2(item.end[1] - item.start[1], item.end[0] - item.start[0]))
            for item in part.figure.items
            if isinstance(item, Arrow)
        }
        tilt = degrees(worked.values.get("theta", 0.0))
        assert ways["F_g"] == pytest.approx(-90)
        if "theta" in worked.values or key in ("moves", "level", "crew"):
            assert ways["N"] == pytest.approx(90 + tilt)
            said = next(point.words for point in part.points if point.words.startswith("f:"))
            along = next((way for words, way in WAYS.items() if words in said), 180.0)
            assert abs((ways["f"] - tilt - along + 180) % 360 - 180) < 0.1, said


def test_a_lantern_in_the_middle_pulls_harder_the_flatter_its_strings() -> None:
    """The tensions of equal strings grow as the angle shrinks, as its part on flatter strings says."""
    tensions = [value("lantern", "T1", m="8 kg", alpha=f"{angle}°", beta=f"{angle}°") for angle in (60, 45, 30, 10, 2)]
    assert tensions == sorted(tensions)
    assert tensions == pytest.approx([8 * G / (2 * sin(radians(angle))) for angle in (60, 45, 30, 10, 2)])
    points = [
        part.points for part in solve("lantern", m="8 kg", alpha="30°", beta="50°").parts if part.key == "flatter"
    ]
    assert points[0][-1].words == "So both tensions become larger."
    assert "No tension holds a weight" in refused("lantern", m="8 kg", alpha="0°", beta="0°")


def test_three_forces_close() -> None:
    """The triangle's arrows add up to nothing."""
    worked = solve("strings", "T1", w="70 N", alpha="35°", beta="60°")
    figure = next(part.figure for part in worked.parts if part.key == "triangle")
    assert figure
    total = sum(
        np.subtract(item.end, item.start) for item in figure.items if isinstance(item, Arrow) and item.kind == "force"
    )
    assert np.allclose(total, 0, atol=1e-9)


def test_an_acceleration_against_the_motion_is_told_so() -> None:
    """A pull too weak to keep a sliding crate going slows it down."""
    worked = solve("level", "a", how="pull", state="slides", m="5 kg", P="10 N", phi="0°", mu="0,4")
    assert worked.values["a"] == pytest.approx(2 - 0.4 * G)
    assert [one.direction.words for one in worked.answers if one.direction] == ["against the motion, so it slows down"]


def test_mass_drops_out_of_a_slide_without_a_pull() -> None:
    """Any mass slides down a slope with the same acceleration."""
    data = {"how": "none", "motion": "down", "theta": "30°", "mu": "0,2"}
    alone = value("slope", "a", **data)
    assert alone == pytest.approx(G * (sin(radians(30)) - 0.2 * cos(radians(30))))
    assert {round(value("slope", "a", m=m, **data), 9) for m in ("1 kg", "70 kg")} == {round(alone, 9)}
    assert tan(radians(30)) > 0.2


@pytest.mark.parametrize(
    ("key", "typed", "wrong", "words"),
    [
        ("moves", {"P": "20 N"}, {"normal": "49,00 N"}, "You made N as large as the weight"),
        ("moves", {"P": "20 N"}, {"normal": "59,00 N"}, "Pulling up lightens the contact"),
        ("moves", {"P": "20 N"}, {"along": "20,00 N"}, "You let all of P act along the surface"),
        (
            "moves",
            {"P": "20 N"},
            {"friction": "23,40 N"},
            "You used the largest static friction although it stays at rest",
        ),
        ("moves", {"P": "30 N"}, {"friction": "20,40 N"}, "You used the static coefficient although it slides"),
        ("moves", {"P": "20 N"}, {"limit": "15,60 N"}, "You used the kinetic coefficient"),
        ("slope", {}, {"find": "5,91 m/s²"}, "You let friction help the motion"),
        ("strings", {}, {"find": "58,80 N"}, "You gave each string half of the weight"),
    ],
)
def test_mistakes_of_the_table_are_named(key: str, typed: dict[str, str], wrong: dict[str, str], words: str) -> None:
    """The number that a known mistake gives brings its sentence."""
    from calc import desk

    _, question = topics.find(f"forces.{key}")
    answers = {part: {"value": text, "direction": ""} for part, text in wrong.items()}
    data = {"question": f"forces.{key}", "inputs": {**question.example, **typed}, "answers": answers}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))["data"]
    fits = [say for part in reply["parts"] for fit in part["fits"] for say in fit["say"]]
    told = [sentence for part in reply["parts"] for sentence in (*part["sentences"], *part["problems"])]
    assert words in " ".join(map(str, (*fits, *told)))


def test_hints_do_not_say_whether_it_moves_before_that_is_asked() -> None:
    """Up to the part that decides, no hint speaks of sliding or staying."""
    topic, question = topics.find("forces.moves")
    for pull in ("20 N", "30 N"):
        found = read(question, {**question.example, "P": pull})
        told = hints(topic, question, found, question.plan(found.data))
        early = " ".join(hint.words for key in ("normal", "along", "limit") for hint in told.get(key, ()))
        assert not re.search(r"\bslides\b|\bstays at rest\b", early)


EDGES = {"°": (0, 0.001, 5, 20, 30, 45, 60, 89, 89.99), "": (0, 0.1, 0.3, 0.6, 1, 1.5, 5)}


@pytest.mark.parametrize("key", ["moves", "level", "slope", "slipping", "angle", "strings", "crew", "ramp", "lantern"])
def test_any_data_are_worked_and_drawn_or_refused(key: str) -> None:
    """Numbers from the ends of every box, any choices, any unknown: an answer with its drawings, or a sentence."""
    topic, question = topics.find(f"forces.{key}")
    empty = 0.4 if question.unknowns else 0.05
    chance, worked = random.Random(f"any {key}"), 0
    for _ in range(90):
        typed = {}
        for item in question.fields:
            if isinstance(item, Choice):
                typed[item.name] = chance.choice(item.options)[0]
            elif isinstance(item, Input):
                numbers = EDGES.get(item.unit, (0, 0.01, 1, 5, 9.8, 20, 49, 100, 1e4, -2))
                typed[item.name] = "" if chance.random() < empty else f"{chance.choice(numbers)} {item.unit}"
        find = chance.choice(question.unknowns) if question.unknowns else ""
        try:
            answer = work(topic, question, read(question, typed | ({find: ""} if find else {}), find))
        except (Refusal, Refusals):
            continue
        assert answer.figure
        assert all(part.figure for part in answer.parts if part.kind == "draw")
        worked += 1
    assert worked
