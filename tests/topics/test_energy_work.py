"""The work of one force, and of every force on a body that is moved: published cases, equations of motion, refusals."""

import numpy as np
import pytest
import sympy
from scipy import integrate

from calc import topics
from calc.figures import Arrow
from calc.model.questions import Refusal
from calc.practice.drawing import draw
from calc.working.reading import read
from calc.working.working import work
from tests.topics.asking import Chapter

ASKED = Chapter("energy")
solve, value, refused, PUBLISHED = ASKED.solve, ASKED.value, ASKED.refused, ASKED.cases
G = 9.8


def published(case: str, *names: str) -> tuple[list[float], object]:
    """The data of a published case by name, and its answer as published."""
    told = PUBLISHED[case]
    return (
        [float(told["given"][name]["value"]) for name in names],
        pytest.approx(told["published"]["value"], rel=told["published"]["rel_tol"]),
    )


# Sources stand in energy_published.json: OpenStax University Physics Volume 1 and OpenStax College Physics, worked
# examples and exercises, CC BY 4.0.


def test_the_published_cart() -> None:
    """A cart pulled by a handle at an angle: the work as published."""
    (size, way, angle), answer = published("cart-pull-at-angle", "F", "d", "angle")
    assert value("one-force", "W", F=f"{size}", Deltax=f"{way}", theta=f"{angle}°") == answer


def test_the_published_force_on_a_slanting_way() -> None:
    """The work of a force given by components, along a way given by components: by sizes and the angle between."""
    (fx, fy, dx, dy), answer = published("constant-force-path-work", "Fx", "Fy", "dx", "dy")
    between = np.degrees(np.arctan2(dy, dx) - np.arctan2(fy, fx))
    typed = {"F": f"{np.hypot(fx, fy)}", "Deltax": f"{np.hypot(dx, dy):.12g}", "theta": f"{abs(between):.12g}°"}
    assert value("one-force", "W", **typed) == answer


@pytest.mark.parametrize("case", ["bullet-in-boards", "bullet-in-block"])
def test_published_stopping_forces(case: str) -> None:
    """The average force that stops a bullet over a distance, in kN or N as published."""
    (m, u, way), answer = published(case, "m", "v", "d")
    unit = {"N": 1.0, "kN": 1e3}[PUBLISHED[case]["published"]["unit"]]
    typed = {"m": f"{m} kg", "u": f"{u}", "v": "0", "L": f"{way} m", "way": "level", "pull": "none"}
    assert value("moved", "f", **typed) / unit == answer


def test_the_published_sprinter() -> None:
    """A sprinter against a headwind: the wind as what resists, the average push as the pull."""
    (m, u, v, way, wind), answer = published("sprinter-into-wind", "m", "u", "v", "d", "F_wind")
    typed = {"m": f"{m}", "u": f"{u}", "v": f"{v}", "L": f"{way}", "f": f"{wind}", "way": "level", "pull": "along"}
    assert value("moved", "F", **typed) == answer


def test_the_published_work_to_stop_two_bodies() -> None:
    """The work to stop a bullet is so many times that to stop a crate."""
    (m1, v1, m2, v2), answer = published("bullet-crate-ratio", "m1", "v1", "m2", "v2")
    stops = [
        value("moved", "W_net", m=f"{m} kg", u=f"{u}", v="0", way="level", pull="none") for m, u in ((m1, v1), (m2, v2))
    ]
    assert stops[1] / stops[0] == answer


def test_the_published_parcel() -> None:
    """The final speed of a parcel from the net work on it."""
    (m, u, net), answer = published("package-speed", "m", "v0", "Wnet")
    assert value("moved", "v", m=f"{m}", u=f"{u}", W_net=f"{net}", way="level", pull="none") == answer


def test_the_published_sliding_car() -> None:
    """The speed of a car from the way it slid to rest, with the case's own g; its mass is not needed."""
    (mu, way), answer = published("struck-car-speed", "mu_k", "d")
    own = PUBLISHED["struck-car-speed"]["constants"]["g"] / G  # a larger g acts like a larger coefficient
    assert value("moved", "u", mu_k=f"{mu * own:.12g}", v="0", L=f"{way}", way="level", pull="none") == answer


# --- independent routes ---

ONE = {"F": 40.0, "Deltax": 6.0, "theta": 130.0, "W": 40.0 * 6.0 * float(np.cos(np.radians(130.0)))}


@pytest.mark.parametrize("unknown", ONE)
def test_every_unknown_of_one_force(unknown: str) -> None:
    """Force, displacement, angle and work come back from the dot product of two vectors."""
    typed = {name: f"{number!r}{'°' if name == 'theta' else ''}" for name, number in ONE.items() if name != unknown}
    found = value("one-force", unknown, **typed)
    assert (np.degrees(found) if unknown == "theta" else found) == pytest.approx(ONE[unknown], rel=1e-9)
    way = np.array([ONE["Deltax"], 0.0])
    pull = ONE["F"] * np.array([np.cos(np.radians(130.0)), np.sin(np.radians(130.0))])
    assert ONE["W"] == pytest.approx(float(way @ pull))


@pytest.mark.parametrize(
    ("angle", "words"),
    [
        ("0°", "positive: the force transfers energy to the body"),
        ("89°", "positive: the force transfers energy to the body"),
        ("90°", ""),
        ("91°", "negative: the force takes energy from the body"),
        ("180°", "negative: the force takes energy from the body"),
    ],
)
def test_the_sign_of_work_changes_at_a_right_angle(angle: str, words: str) -> None:
    """Below 90° positive, at 90° exactly zero and without a sign, above 90° negative."""
    (answer,) = solve("one-force", "W", F="40 N", Deltax="6 m", theta=angle).answers
    assert (answer.direction.words if answer.direction else "") == words
    assert (answer.value == 0) == (words == "")


RISE = {"up": 1, "level": 0, "down": -1}
PULLS = {"along": 0.0, "above": 25.0, "back": 180.0}
BODY = {"m": 12.0, "theta": 20.0, "mu_k": 0.25, "L": 1.5, "u": 6.0}
FORCE = {"along": 60.0, "above": 60.0, "back": 20.0, "none": 0.0}


def moved(way: str, pull: str) -> dict[str, float]:
    """All quantities of a body that is moved: the net force from vectors, the speed by integrating the motion."""
    tilt = np.radians(BODY["theta"]) if way != "level" else 0.0
    along = np.array([np.cos(tilt), np.sin(tilt)]) * (-1 if way == "down" else 1)
    out = np.array([-np.sin(tilt), np.cos(tilt)])
    weight = np.array([0.0, -BODY["m"] * G])
    turn = np.radians(PULLS.get(pull, 0.0))
    rope = FORCE[pull] * (np.cos(turn) * along + np.sin(turn) * out)
    normal = -float((weight + rope) @ out)
    friction = BODY["mu_k"] * normal
    net = float((weight + rope) @ along) - friction

    def there(t: float, state: np.ndarray) -> float:
        return float(state[0] - BODY["L"])

    there.terminal = True  # type: ignore[attr-defined]
    path = integrate.solve_ivp(
        lambda t, state: (state[1], net / BODY["m"]), (0, 5), (0.0, BODY["u"]), events=there, rtol=1e-10, atol=1e-12
    )
    way_gone = BODY["L"]
    works = {
        "W_F": float(rope @ along) * way_gone,
        "W_w": float(weight @ along) * way_gone,
        "W_f": -friction * way_gone,
    }
    return {**BODY, **works, "F": FORCE[pull], "f": friction, "W_net": net * way_gone, "v": float(path.y[1, -1])}


SHAPES = [(way, pull) for way in RISE for pull in FORCE]
UNITS = {"theta": "°", "m": " kg", "L": " m"}


@pytest.mark.parametrize(("way", "pull"), SHAPES)
def test_every_unknown_of_a_body_that_is_moved(way: str, pull: str) -> None:
    """Works, speeds, distance, pull, friction, coefficient and mass agree with the integrated motion."""
    right = moved(way, pull)
    given = {"m", "u", "L", "mu_k"} | ({"theta"} if way != "level" else set()) | ({"F"} if pull != "none" else set())
    typed = {name: f"{right[name]!r}{UNITS.get(name, '')}" for name in given}
    typed |= {"way": way, "pull": pull} | ({"phi": "25°"} if pull == "above" else {})
    worked = (
        {"v", "W_f", "W_net", "f"} | ({"W_w"} if way != "level" else set()) | ({"W_F"} if pull != "none" else set())
    )
    for name in sorted(worked):
        assert value("moved", name, **typed) == pytest.approx(right[name], rel=1e-8), name
    backwards = {"u", "L", "mu_k"} | ({"F", "m"} if pull != "none" else set())
    for name in sorted(backwards):
        rest = {key: text for key, text in typed.items() if key != name} | {"v": f"{right['v']!r}"}
        assert value("moved", name, **rest) == pytest.approx(right[name], rel=1e-6), name
    by_friction = {key: text for key, text in typed.items() if key not in ("m", "mu_k")}
    by_friction |= {"v": f"{right['v']!r}", "f": f"{right['f']!r} N"}
    assert value("moved", "m", **by_friction) == pytest.approx(right["m"], rel=1e-6)


@pytest.mark.parametrize(("way", "pull"), [shape for shape in SHAPES if shape[0] != "level" or shape[1] == "above"])
def test_the_angles_of_slope_and_pull_are_found(way: str, pull: str) -> None:
    """θ with the friction or with its coefficient, φ with the friction: those of the integrated motion."""
    right = moved(way, pull)
    typed = {name: f"{right[name]!r}{UNITS.get(name, '')}" for name in ("m", "u", "L", "v", "f")}
    typed |= {"way": way, "pull": pull} | ({"F": f"{right['F']!r}"} if pull != "none" else {})
    phi, theta = {"phi": "25°"} if pull == "above" else {}, {"theta": "20°"} if way != "level" else {}
    if way != "level":
        assert np.degrees(value("moved", "theta", **typed, **phi)) == pytest.approx(20, rel=1e-6)
        rough = {name: text for name, text in typed.items() if name != "f"} | {"mu_k": "0,25"}
        assert np.degrees(value("moved", "theta", **rough, **phi)) == pytest.approx(20, rel=1e-6)
        if pull == "none":
            rough.pop("m")
            assert np.degrees(value("moved", "theta", **rough)) == pytest.approx(20, rel=1e-6)
    if pull == "above":
        assert np.degrees(value("moved", "phi", **typed, **theta)) == pytest.approx(25, rel=1e-6)
        rough = {name: text for name, text in typed.items() if name != "f"} | {"mu_k": "0,25"}
        two = solve("moved", "phi", **rough, **theta).values
        assert 25 in [pytest.approx(np.degrees(two[name]), rel=1e-6) for name in ("phi", "phi_2") if name in two]


def pull_angles(size: float, u: float, v: float, mu: float) -> list[float]:
    """Every angle (°) above a level floor at which a pull on 10 kg gives this change over 6 m, not lifted: by numpy."""
    angles = np.radians(np.linspace(0, 89.99, 900_001))
    net = size * np.cos(angles) - mu * (10 * G - size * np.sin(angles))
    gap = net * 6 - 5 * (v**2 - u**2)
    at = np.flatnonzero(np.sign(gap[:-1]) != np.sign(gap[1:]))
    return [float(np.degrees(angles[i])) for i in at if size * np.sin(angles[i]) < 10 * G]


@pytest.mark.parametrize(
    ("size", "u", "v", "mu", "say"),
    [
        (90.0, 0.0, 7.0, 0.3, "It lies below the surface"),  # the larger angle alone
        (55.0, 7.0, 7.0, 0.6, ""),  # both
        (130.0, 0.0, 9.5, 0.6, "There the pull would lift the body off the surface"),  # the smaller alone
    ],
)
def test_every_angle_of_a_pull_that_fits_is_found(size: float, u: float, v: float, mu: float, say: str) -> None:
    """With the coefficient there are up to two angles: those that hold are found, the other is told with its reason."""
    typed = {"m": "10", "F": f"{size}", "mu_k": f"{mu}", "L": "6", "u": f"{u}", "v": f"{v}"}
    found = solve("moved", "phi", way="level", pull="above", **typed)
    angles = sorted(np.degrees(found.values[name]) for name in ("phi", "phi_2") if name in found.values)
    assert angles == pytest.approx(pull_angles(size, u, v, mu), abs=1e-3)
    methods = [step.method for part in found.parts for step in part.steps if step.makes == "phi"]
    assert (
        methods[0].endswith(f"{say}: there the pull would be a push, not a pull.")
        if "below" in say
        else say in methods[0]
    )
    assert ("other" in {part.key for part in found.parts}) == (not say)


@pytest.mark.parametrize(("v", "two"), [("1,5", True), ("3,5", False)])
def test_a_second_angle_of_a_steep_way_up_is_told(v: str, two: bool) -> None:
    """Where sin θ + µ cos θ takes its value twice below 90°, both angles stand there; numpy finds the roots."""
    mu, size = 0.6, (25 - float(v.replace(",", ".")) ** 2) / (2 * G)
    angles = np.radians(np.linspace(0, 90, 900_001))
    gap = np.sin(angles) + mu * np.cos(angles) - size
    roots = np.degrees(angles[:-1][np.sign(gap[:-1]) != np.sign(gap[1:])])
    found = solve("moved", "theta", way="up", pull="none", u="5", v=v, L="1", mu_k="0,6")
    assert np.degrees(found.values["theta"]) == pytest.approx(roots[0], abs=1e-3)
    assert len(roots) == (2 if two else 1)
    told = " ".join(found.warnings)
    if two:
        other = f"{roots[1]:.2f}".replace(".", ",")
        assert f"A second angle fits these numbers: {other}°." in told
    else:
        assert "second angle" not in told


@pytest.mark.parametrize("way", RISE)
def test_without_a_pull_the_mass_is_not_needed(way: str) -> None:
    """Speeds, distance and coefficient come out as with a mass."""
    right = moved(way, "none")
    names = ("v", "u", "L", "mu_k", *(("theta",) if way != "level" else ()))
    typed = {name: f"{right[name]!r}{UNITS.get(name, '')}" for name in names}
    for name in ("v", "u", "L", "mu_k"):
        rest = {key: text for key, text in typed.items() if key != name}
        assert value("moved", name, way=way, pull="none", **rest) == pytest.approx(right[name], rel=1e-6), name


def test_the_net_work_does_not_hang_on_how_it_is_split() -> None:
    """Sympy: the sum of the works is the net force along the way times the way, for a pull at any angle."""
    m, g, theta, pull, phi, mu, way = sympy.symbols("m g theta F phi mu_k L", positive=True)
    normal = m * g * sympy.cos(theta) - pull * sympy.sin(phi)
    net = pull * sympy.cos(phi) - m * g * sympy.sin(theta) - mu * normal
    numbers = {m: 12, g: G, theta: np.radians(20), pull: 110, phi: np.radians(25), mu: 0.25, way: 5}
    typed = {"m": "12", "theta": "20°", "F": "110", "phi": "25°", "mu_k": "0,25", "L": "5", "u": "0", "way": "up"}
    found = solve("moved", "v", pull="above", **typed)
    assert found.values["W_net"] == pytest.approx(float((net * way).subs(numbers)))


@pytest.mark.parametrize(("way", "pull"), SHAPES)
def test_signs_in_words_are_those_of_the_values(way: str, pull: str) -> None:
    """The list of signs says positive, negative or no work of each force as its value has it."""
    right = moved(way, pull)
    typed = {name: f"{right[name]!r}{UNITS.get(name, '')}" for name in ("m", "u", "L", "mu_k")}
    typed |= {"theta": "20°"} if way != "level" else {}
    typed |= {"F": f"{right['F']}"} if pull != "none" else {}
    typed |= {"phi": "25°"} if pull == "above" else {}
    found = solve("moved", "v", way=way, pull=pull, **typed)
    (signs,) = [part for part in found.parts if part.key == "signs"]
    told = " ".join(point.words for point in signs.points)
    for name, force in (("W_F", "The pull does"), ("W_w", "The weight does"), ("W_f", "does")):
        if right[name] if name != "W_F" else pull != "none":
            word = "positive" if right[name] > 0 else "negative"
            assert f"{force} {word} work" in told if name != "W_f" else "Friction does negative work" in told
    assert ("The normal force and the weight do no work" in told) == (way == "level")
    rises = {"up": "the body rises", "down": "the body comes down"}
    assert [words for words in rises.values() if words in told] == ([rises[way]] if way in rises else [])
    for part in found.parts:
        for step in part.steps:
            if step.makes.startswith("W_") and step.value:
                assert step.direction
                assert (step.direction.key == "positive") == (step.value > 0)


# --- what cannot be ---

CRATE = {"m": "12 kg", "theta": "20°", "mu_k": "0,25", "way": "up"}
ROPE = {**CRATE, "pull": "along", "u": "0", "L": "5 m"}
REFUSED = (
    (
        {**CRATE, "pull": "none", "u": "3", "L": "5 m"},
        "It stops first, after d = 0,80 m. Then it slides back only if tan θ = 0,36 is larger than µs. Type a shorter"
        " distance.",
    ),
    (
        {**CRATE, "theta": "10°", "pull": "none", "u": "3", "L": "5 m"},
        "It stops first, after d = 1,09 m. Then it stays at rest, since tan θ = 0,18 is not larger than µs, which is at"
        " least µk. Type a shorter distance.",
    ),
    (
        {"m": "2", "mu_k": "0,5", "u": "3", "L": "5", "way": "level", "pull": "none"},
        "It stops first, after d = 0,92 m. Then it stays at rest. Type a shorter distance.",
    ),
    (
        {**CRATE, "pull": "back", "F": "80 N", "u": "3", "L": "5 m"},
        "It stops first, after d = 0,37 m. Then it moves back only if µs is less than 1,09. Type a shorter distance.",
    ),
    (
        {**ROPE, "F": "30 N"},
        "It does not start that way: from rest the net work would be less than zero. Check the forces and the"
        " directions.",
    ),
    ({**ROPE, "F": "110 N", "m": "0 kg"}, "Mass must be greater than zero."),
    ({**ROPE, "F": "110 N", "mu_k": "-0,2"}, "A coefficient of friction cannot be negative."),
    ({**ROPE, "F": "-110 N"}, "Enter the size; choose the direction."),
    ({**ROPE, "F": "110 N", "theta": "95°"}, "Angle lies between 0° and 90°; choose above or below."),
    ({**ROPE, "F": "110 N", "L": "-5 m"}, "Distance must be greater than zero."),
    (
        {**ROPE, "pull": "above", "F": "200 N", "phi": "80°"},
        "The pull would lift the body off the surface: the normal force would be less than zero. Make the pull"
        " smaller.",
    ),
    (
        {**ROPE, "F": "110 N", "way": "level"},
        "A level floor has no angle: leave this empty, or choose a slope.",
    ),
    ({**ROPE, "F": "110 N", "pull": "none"}, "There is no pull: leave this empty, or choose a pull."),
    (
        {**ROPE, "F": "110 N", "phi": "20°"},
        "This pull is along the surface: leave its angle empty, or choose a pull at an angle.",
    ),
)


@pytest.mark.parametrize(("typed", "sentence"), REFUSED)
def test_a_way_that_cannot_be_is_refused(typed: dict[str, str], sentence: str) -> None:
    """Each refusal gives its reason and what to do."""
    assert sentence in refused("moved", "v", **typed).replace("\u00a0", " ")


NO_SIZE = (
    "No size fits: below 90° the work is positive, at 90° it is zero, and above 90° it is negative. Check the sign of"
    " the work and the angle."
)
UNFIT = (
    (
        "one-force",
        "theta",
        {"F": "40", "Deltax": "6", "W": "241"},
        "No angle fits: the work cannot be larger than force times displacement. Check the numbers and their prefixes.",
    ),
    ("one-force", "F", {"Deltax": "6", "theta": "30°", "W": "-120"}, NO_SIZE),
    ("one-force", "Deltax", {"F": "6", "theta": "90°", "W": "10"}, NO_SIZE),
    (
        "one-force",
        "W",
        {"F": "40", "Deltax": "6", "theta": "181°"},
        "The angle between the force and the displacement lies between 0° and 180°: type an angle in this range.",
    ),
    (
        "moved",
        "u",
        {**ROPE, "u": "", "F": "110", "v": "4"},
        "No initial speed fits: the net work alone would make the body faster than this. Check the numbers.",
    ),
    (
        "moved",
        "L",
        {**ROPE, "L": "", "u": "2", "F": "110", "v": "1"},
        "No distance fits: these forces do not change the speed that way. Check the speeds and the forces.",
    ),
    (
        "moved",
        "mu_k",
        {**ROPE, "mu_k": "", "F": "110", "v": "9"},
        "No friction fits: it would have to push the body along. Check the speeds and the other numbers.",
    ),
    (
        "moved",
        "mu_k",
        {"u": "2", "v": "3", "L": "5", "way": "level", "pull": "none"},
        "No coefficient fits: friction would have to push the body along. Check the speeds and the other numbers.",
    ),
    (
        "moved",
        "m",
        {**ROPE, "m": "", "pull": "back", "F": "10", "v": "3", "mu_k": "0,1"},
        "No mass fits: these forces and speeds would need a mass of zero or less. Check the numbers.",
    ),
    (
        "moved",
        "theta",
        {"m": "3", "f": "0", "L": "6", "u": "0", "v": "15", "way": "down", "pull": "none"},
        "No angle fits: the weight would have to give or take more energy than a fall over the whole distance",
    ),
    (
        "moved",
        "theta",
        {"m": "3", "mu_k": "0", "L": "6", "u": "0", "v": "15", "way": "down", "pull": "none"},
        "No angle fits: the weight would have to give or take more energy than a fall over the whole distance",
    ),
    (
        "moved",
        "phi",
        {"m": "10", "F": "90", "f": "126", "L": "6", "u": "0", "v": "5", "way": "level", "pull": "above"},
        "No angle fits: the pull would have to do more work than force times distance, or act against the motion.",
    ),
    (
        "moved",
        "phi",
        {"m": "10", "F": "90", "mu_k": "0,3", "L": "6", "u": "0", "v": "15", "way": "level", "pull": "above"},
        "Too small at every angle: even at the best angle this force cannot do it. Use a larger one.",
    ),
    (
        "moved",
        "theta",
        {"m": "10", "F": "90", "f": "12", "L": "6", "u": "0", "v": "5", "way": "level", "pull": "along"},
        "A level floor has no angle: ask for something else, or choose a slope.",
    ),
    (
        "moved",
        "phi",
        {"m": "10", "F": "90", "f": "12", "L": "6", "u": "0", "v": "5", "way": "level", "pull": "along"},
        "This pull is along the surface: ask for something else, or choose a pull at an angle.",
    ),
    (
        "moved",
        "v",
        {"m": "2", "u": "1", "W_net": "-3", "way": "level", "pull": "none"},
        "It stops first: the net work takes away more kinetic energy than the body has. Check the numbers.",
    ),
)


@pytest.mark.parametrize(("key", "find", "typed", "sentence"), UNFIT)
def test_an_unknown_without_a_value_is_refused(key: str, find: str, typed: dict[str, str], sentence: str) -> None:
    """Where no value can be, the reason is given."""
    assert sentence in refused(key, find, **typed).replace("\u00a0", " ")


@pytest.mark.parametrize("way", ["up", "level"])
@pytest.mark.parametrize("angle", [4, 10, 30, 60])
def test_it_stays_or_slides_back_as_statics_has_it(way: str, angle: float) -> None:
    """On each side of tan θ = µk the sentence is the one that holds, and only up a slope does it speak of tan θ."""
    typed = {"m": "2", "mu_k": "0,2", "u": "1", "L": "50", "way": way, "pull": "none"}
    typed |= {"theta": f"{angle}°"} if way == "up" else {}
    with pytest.raises(Refusal) as told:
        solve("moved", "v", **typed)
    slides = way == "up" and np.tan(np.radians(angle)) > 0.2
    assert ("slides back only if" in str(told.value)) == slides
    assert ("stays at rest" in str(told.value)) == (not slides)


# --- the drawing ---


@pytest.mark.parametrize(("way", "pull"), SHAPES)
def test_arrows_point_as_the_words_say(way: str, pull: str) -> None:
    """The body moves up, down or to the right as chosen; the pull is turned from that by its angle, away from the
    surface."""
    typed = {"m": "2", "mu_k": "0,2", "u": "9", "L": "1", **({"theta": "20°"} if way != "level" else {})}
    typed |= {"F": "5"} if pull != "none" else {}
    typed |= {"phi": "25°"} if pull == "above" else {}
    found = solve("moved", "v", way=way, pull=pull, **typed)
    assert found.figure
    heads = {
        item.kind: np.degrees(np.arctan2(item.end[1] - item.start[1], item.end[0] - item.start[0])) % 360
        for item in found.figure.items
        if isinstance(item, Arrow)
    }
    moves = {"up": 20, "level": 0, "down": 200}[way]
    assert heads["velocity"] == pytest.approx(moves)
    if pull != "none":
        away = -1 if way == "down" else 1
        assert heads["force"] == pytest.approx((moves + away * PULLS[pull]) % 360)


def test_practice_moves_every_way() -> None:
    """Drawn bodies go up, down and along the level, with and without a pull, and each is worked without a warning."""
    topic, question = topics.find("energy.moved")
    met = set()
    for seed in range(14):
        drawn = draw(topic, question, seed, 1 + seed % 3, 4)
        found = work(topic, question, read(question, drawn.inputs, drawn.find, variant=drawn.variant))
        assert found.warnings == ()
        met |= {str(drawn.inputs["way"]), str(drawn.inputs["pull"]), drawn.find}
    assert {"up", "down", "level", "along", "above", "none", "v"} <= met


@pytest.mark.parametrize(
    ("data", "said"),
    [
        ({"mu_k": "0,25", "v": ""}, "Friction does negative work: it acts against the motion."),
        ({"W_f": "-40 J", "v": ""}, "Friction does negative work: it acts against the motion."),
        ({"mu_k": "0", "v": ""}, ""),
        ({"mu_k": "", "v": "3 m/s"}, "Friction, if there is any, does negative work: it acts against the motion."),
    ],
)
def test_friction_is_named_among_the_forces_as_the_data_have_it(data: dict[str, str], said: str) -> None:
    """Rough: it does negative work; smooth: it is not there; where it is to be found, it may turn out to be none."""
    typed = {"m": "12", "theta": "20°", "F": "110", "L": "5", "u": "0", "way": "up", "pull": "along"}
    found = solve(
        "moved", "v" if not data["v"] else "mu_k", **typed, **{key: text for key, text in data.items() if text}
    )
    (signs,) = [part for part in found.parts if part.key == "signs"]
    assert [point.words for point in signs.points if point.words.startswith("Friction")] == ([said] if said else [])
