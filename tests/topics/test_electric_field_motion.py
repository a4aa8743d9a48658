"""A charge let go in a uniform field, and one that crosses it, against integrated motion and energy balances."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from calc.figures import Arrow, Curve
from calc.figures.pieces import Plate, Sphere
from calc.language.expressions import equation, expression
from calc.model.answers import PartShown, WorkedAnswer
from calc.model.questions import Refusal
from calc.practice.drawing import draw
from calc.topics import find
from calc.topics.electric_field import crossing, released
from calc.working.reading import Refusals, read
from calc.working.working import work

E, M_E, M_P, G = 1.6e-19, 9.11e-31, 1.67e-27, 9.8  # school values
BODIES = {"electron": (-E, M_E), "proton": (E, M_P)}
VECTORS = {"right": (1, 0), "left": (-1, 0), "up": (0, 1), "down": (0, -1)}


def solve(key: str, asked: str, variant: int = 0, **typed: str) -> WorkedAnswer:
    """The worked answer of ``electric-field.key``."""
    topic, question = find(f"electric-field.{key}")
    return work(topic, question, read(question, typed, asked, variant=variant))


def refusal(key: str, asked: str, **typed: str) -> tuple[str | None, str]:
    """The field and the sentence of the one refusal of these data."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(key, asked, **typed)
    found = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    return found.field, found.sentence.replace("\N{NO-BREAK SPACE}", " ")


def part(worked: WorkedAnswer, key: str) -> PartShown:
    """One part of a worked answer."""
    return next(shown for shown in worked.parts if shown.key == key)


def way(worked: WorkedAnswer, key: str) -> str:
    """The key of the direction of a part's answer."""
    answer = part(worked, key).answer
    assert answer is not None
    assert answer.direction is not None
    return answer.direction.key


def moved(q: float, m: float, field: tuple[float, float], v: tuple[float, float], t: float) -> np.ndarray:
    """Place and velocity (m, m·s⁻¹) after ``t`` seconds by numerical integration of qE = ma, in steps of its own."""
    scale = np.array([1.0, 1.0, 1 / t, 1 / t])  # metres, and metres in the whole time

    def rate(_: float, state: np.ndarray) -> np.ndarray:
        _, _, u, w = state / scale
        return t * scale * np.array([u, w, q * field[0] / m, q * field[1] / m])

    done = solve_ivp(rate, (0, 1), np.array([0, 0, *v]) * scale, rtol=1e-10, atol=1e-14)
    return done.y[:, -1] / scale


# --- released ---------------------------------------------------------------------------------------------------

RELEASED = {"V": "240 V", "d": "20 mm", "s": "15 mm"}


@pytest.mark.parametrize("particle", ["electron", "proton"])
@pytest.mark.parametrize("along", list(VECTORS))
def test_a_released_particle_moves_as_integrated(particle: str, along: str) -> None:
    """After the time found, integration from rest gives the distance, the speed and the direction found."""
    worked = solve("released", "t,v,W,F,a", particle=particle, along=along, **RELEASED)
    q, m = BODIES[particle]
    size = 240 / 0.02
    field = (size * VECTORS[along][0], size * VECTORS[along][1])
    x, y, u, w = moved(q, m, field, (0, 0), worked.values["t"])
    assert math.hypot(x, y) == pytest.approx(0.015, rel=1e-6)
    assert math.hypot(u, w) == pytest.approx(worked.values["v"], rel=1e-6)
    assert worked.values["W"] == pytest.approx(E * 240 * 15 / 20)
    assert worked.values["W"] == pytest.approx(m * (u * u + w * w) / 2, rel=1e-6)
    for key in ("find-F", "find-a", "find-v"):
        vector = VECTORS[way(worked, key)]
        assert np.dot(vector, (x, y)) == pytest.approx(0.015, rel=1e-6), key


DATA = {"V": "240 V", "d": "20 mm", "s": "15 mm", "q": "-3,2e-15 C", "m": "4e-18 kg"}
FIELD, MOVED = 240 / 0.02, 0.015
ACCELERATION = 3.2e-15 * FIELD / 4e-18
RIGHT = {
    "V": 240.0,
    "d": 0.02,
    "E": FIELD,
    "q": 3.2e-15,
    "m": 4e-18,
    "F": 3.2e-15 * FIELD,
    "a": ACCELERATION,
    "s": MOVED,
    "t": math.sqrt(2 * MOVED / ACCELERATION),
    "v": math.sqrt(2 * ACCELERATION * MOVED),
    "W": 3.2e-15 * FIELD * MOVED,
}
UNITS = {
    "V": "V",
    "d": "m",
    "E": "V/m",
    "q": "C",
    "m": "kg",
    "F": "N",
    "a": "m/s^2",
    "s": "m",
    "t": "s",
    "v": "m/s",
    "W": "J",
}


@pytest.mark.parametrize(
    ("asked", "given"),
    [
        ("V", "d s v q m"),
        ("V", "d W s q"),
        ("d", "V a q m"),
        ("E", "F q"),
        ("E", "a q m"),
        ("E", "s t q m"),
        ("E", "W s q"),
        ("q", "E F"),
        ("q", "V d m a"),
        ("q", "W E s"),
        ("m", "F a"),
        ("m", "W v"),
        ("m", "V d q s t"),
        ("F", "V d q"),
        ("F", "m v t"),
        ("a", "v t"),
        ("a", "v s"),
        ("a", "s t"),
        ("s", "a t"),
        ("s", "v a"),
        ("s", "W E q"),
        ("t", "V d q m s"),
        ("t", "v a"),
        ("t", "s a"),
        ("v", "V d q m s"),
        ("v", "a t"),
        ("v", "W m"),
        ("W", "m v"),
        ("W", "q E s"),
        ("W", "V d q s"),
    ],
)
def test_any_quantity_of_a_release_follows_from_enough_others(asked: str, given: str) -> None:
    """Each unknown comes out of every group of data that is enough, with the values of the closed formulas."""
    sign = {"q": "-"}
    typed = {name: f"{sign.get(name, '')}{RIGHT[name]!r} {UNITS[name]}" for name in given.split()}
    worked = solve("released", asked, particle="body", along="up", moves="against", **typed)
    assert abs(worked.values[asked]) == pytest.approx(RIGHT[asked], rel=1e-9)
    assert worked.unproven == ()
    if asked == "q":
        assert way(worked, "find") == "negative"
    elif asked in ("F", "a", "v"):
        assert way(worked, "find") == "down"


def test_data_that_are_not_enough_are_named() -> None:
    """Without anything about the field the speed cannot be found; the boxes that would do are named."""
    assert refusal("released", "v", particle="electron", s="5 mm") == (
        None,
        (
            "The speed reached does not follow from these data. Add the electric field between the plates or the"
            " electrostatic force (size) or the acceleration (size) or the time it moves for or the work done by the"
            " field."
        ),
    )


WEIGHT = (
    "The weight counts here too: the electrostatic force alone gives 120,00 m·s⁻², less than a thousand times g, and"
    " these formulas leave the weight out. Take a stronger field, a larger charge or a smaller mass."
)
LIGHT = (
    "That is faster than light, which nothing can be: these formulas do not hold any more. Check the prefixes, or take"
    " a smaller potential difference."
)
BEYOND = (
    "The plates are in the way: the distance moved cannot be more than the distance between the plates. Make it"
    " smaller."
)
SHEET = "Charge and mass of an electron stand on the data sheet: leave this box empty, or choose another charged body."


@pytest.mark.parametrize(
    ("asked", "typed", "field", "sentence"),
    [
        ("v", {"V": "240 V", "d": "20 mm", "s": "21 mm", "particle": "electron"}, "s", BEYOND),
        ("s", {"V": "240 V", "d": "20 mm", "t": "1 ms", "particle": "electron"}, None, BEYOND),
        ("a", {"E": "12 000 V/m", "q": "1 nC", "m": "1e-7 kg", "particle": "body"}, None, WEIGHT),
        ("v", {"V": "400 kV", "d": "20 mm", "s": "20 mm", "particle": "electron"}, None, LIGHT),
        ("a", {"v": "4e8 m/s", "t": "1 ns", "particle": "electron"}, "v", LIGHT),
        (
            "a",
            {"E": "500 V/m", "q": "0", "m": "1e-18 kg", "particle": "body"},
            "q",
            "A zero charge feels no force, so it stays as it is. Type a charge that is not zero.",
        ),
        ("a", {"E": "500 V/m", "q": "1 nC", "particle": "electron"}, "q", SHEET),
        ("a", {"E": "500 V/m", "m": "1e-18 kg", "particle": "electron"}, "m", SHEET),
        (
            "m",
            {"F": "2 N", "a": "5e6 m/s^2", "particle": "proton"},
            "particle",
            "Charge and mass of a proton stand on the data sheet. Choose another charged body to find one of them.",
        ),
        (
            "v",
            {"V": "240 V", "d": "20 mm", "s": "0", "particle": "electron"},
            "s",
            "Distance moved must be greater than zero.",
        ),
        (
            "v",
            {"V": "240 V", "d": "20 mm", "W": "-1e-17 J", "particle": "electron"},
            "W",
            "Work must be greater than zero.",
        ),
        ("v", {"a": "1e12 m/s^2", "t": "0", "particle": "electron"}, "t", "Time must be greater than zero."),
        (
            "t",
            {"a": "1e12 m/s^2", "v": "-3 m/s", "particle": "electron"},
            "v",
            "Speed reached must be greater than zero.",
        ),
    ],
)
def test_refusals_of_a_release(asked: str, typed: dict[str, str], field: str, sentence: str) -> None:
    """What cannot be is refused with its reason, beside the box that says it."""
    assert refusal("released", asked, **typed) == (field, sentence)


@pytest.mark.parametrize(
    ("key", "typed", "field", "told"),
    [
        (
            "released",
            {"E": "500 V/m", "q": "2 nC", "m": "1e-18 kg", "along": "up", "moves": "against"},
            "moves",
            "positive, so the force on it points upwards",
        ),
        (
            "released",
            {"E": "500 V/m", "particle": "electron", "along": "up", "moves": "along"},
            "moves",
            "negative, so the force on it points downwards",
        ),
        (
            "crossing",
            {"E": "500 V/m", "particle": "electron", "upper": "positive", "bends": "down"},
            "bends",
            "negative, so the force on it points upwards",
        ),
    ],
)
def test_a_direction_that_contradicts_the_charge_is_refused(
    key: str, typed: dict[str, str], field: str, told: str
) -> None:
    """The way it moves follows from the charge; another one beside it is not taken."""
    assert refusal(key, "a", **{"particle": "body", **typed}) == (
        field,
        f"This does not fit the charge: it is {told}. Choose “as its charge tells”.",
    )


@pytest.mark.parametrize(
    ("key", "choice", "picked", "sign"),
    [
        ("released", "moves", "charge", None),
        ("released", "moves", "along", "positive"),
        ("released", "moves", "against", "negative"),
        ("crossing", "bends", "charge", None),
        ("crossing", "bends", "up", "negative"),
        ("crossing", "bends", "down", "positive"),
    ],
)
def test_the_sign_of_a_charge_follows_only_from_the_way_it_is_pushed(
    key: str, choice: str, picked: str, sign: str | None
) -> None:
    """E and F give a size; the way it moves, if told, gives the sign, the picture's sign and the parts about it."""
    worked = solve(key, "q", particle="body", E="500 V/m", F="2e-15 N", **{choice: picked})
    answer = part(worked, "find").answer
    assert answer is not None
    assert (answer.direction.key if answer.direction else None) == sign
    assert (
        "Only the size of the charge follows: say which way the body is pushed to learn its sign." in worked.notes
    ) == (sign is None)
    assert worked.figure is not None
    drawn = next(item.sign for item in worked.figure.items if isinstance(item, Sphere))
    assert drawn == {None: "", "positive": "+", "negative": "-"}[sign]
    assert ("explain" in [shown.key for shown in worked.parts]) == (sign is not None)


def test_weight_is_left_out_at_the_thousandth_and_not_below() -> None:
    """a = 9 800 m/s² is just allowed; a little less is refused."""
    assert solve("released", "t", particle="body", a="9 800 m/s^2", v="5 m/s")
    with pytest.raises(Refusal, match="weight counts here too"):
        solve("released", "t", particle="body", a="9 799 m/s^2", v="5 m/s")


@pytest.mark.parametrize(("volts", "warned"), [("2 500 V", False), ("2 600 V", True)])
def test_a_speed_beyond_a_tenth_of_light_is_warned_of(volts: str, warned: bool) -> None:
    """An electron passes 3 × 10⁷ m/s at ½mv²/e = 2 562 V."""
    worked = solve("released", "v", particle="electron", V=volts, d="20 mm", s="20 mm")
    told = "The speed is more than a tenth of that of light: these formulas make it a little too large."
    assert (told in worked.warnings) == warned


@pytest.mark.parametrize("key", ["released", "crossing"])
def test_each_story_is_told_in_three_ways(key: str) -> None:
    """Three variants differ, and each gives every datum with its unit."""
    _, question = find(f"electric-field.{key}")
    example = {name: str(value) for name, value in question.example.items()}
    stories = {solve(key, question.asks, variant, **example).story for variant in range(3)}
    assert len(stories) == 3
    for story in stories:
        assert "V" in story.split("difference between the plates is ")[1].split(".")[0]
        assert "the weight may be left out" in story


@pytest.mark.parametrize("key", ["released", "crossing"])
@pytest.mark.parametrize("level", [1, 2, 3])
def test_drawn_data_are_few_and_fit(key: str, level: int) -> None:
    """Practice gives only what leads to the answer: no spare data, no warning, and checks that hold."""
    topic, question = find(f"electric-field.{key}")
    for seed in range(20, 32):
        drawn = draw(topic, question, seed, level)
        worked = work(topic, question, read(question, drawn.inputs, drawn.find, variant=drawn.variant))
        assert worked.warnings == ()
        assert not [note for note in worked.notes if "More is given" in note]
        assert worked.unproven == ()
        assert len(worked.checks) >= 1


@pytest.mark.parametrize("particle", ["electron", "proton"])
@pytest.mark.parametrize("along", list(VECTORS))
def test_the_force_is_drawn_the_way_it_is_told(particle: str, along: str) -> None:
    """F and v in the picture, the plates' signs and the sentence agree with qE."""
    worked = solve("released", "F", particle=particle, along=along, V="240 V", d="20 mm")
    figure = part(worked, "draw").figure
    assert figure is not None
    field = np.array(VECTORS[along])
    push = field * np.sign(BODIES[particle][0])
    arrows = {item.label: np.subtract(item.end, item.start) for item in figure.items if isinstance(item, Arrow)}
    for label in ("F", "v"):
        assert np.dot(arrows[label], push) == pytest.approx(np.linalg.norm(arrows[label]))
    middle = {item.sign: np.add(item.start, item.end) / 2 for item in figure.items if isinstance(item, Plate)}
    assert np.dot(middle["-"] - middle["+"], field) > 0
    where = {"right": "to the right", "left": "to the left", "up": "upwards", "down": "downwards"}
    told = where[next(key for key, vector in VECTORS.items() if np.dot(vector, push) > 0.5)]
    assert f"F on it points {told}. v points {told}." in figure.description
    assert f"it moves {told}." in part(worked, "explain").points[0].words


# --- crossing ---------------------------------------------------------------------------------------------------

CROSSED = {"V": "90 V", "d": "20 mm", "u": "1,8e7 m/s", "L": "50 mm"}


@pytest.mark.parametrize(("particle", "u"), [("electron", 1.8e7), ("proton", 4e5)])
@pytest.mark.parametrize("upper", ["positive", "negative"])
def test_a_crossing_particle_moves_as_integrated(particle: str, u: float, upper: str) -> None:
    """Integration over the time found gives length, deflection, both velocities, angle, energy and side."""
    typed = {**CROSSED, "u": f"{u!r} m/s"}
    worked = solve("crossing", "t,y,v_y,v,theta,W", particle=particle, upper=upper, **typed)
    q, m = BODIES[particle]
    field = (0.0, -4500.0 if upper == "positive" else 4500.0)
    x, y, u_x, v_y = moved(q, m, field, (u, 0.0), worked.values["t"])
    assert x == pytest.approx(0.05, rel=1e-6)
    assert abs(y) == pytest.approx(worked.values["y"], rel=1e-6)
    assert abs(v_y) == pytest.approx(worked.values["v_y"], rel=1e-6)
    assert math.hypot(u_x, v_y) == pytest.approx(worked.values["v"], rel=1e-9)
    assert math.atan2(abs(v_y), u_x) == pytest.approx(worked.values["theta"], rel=1e-6)
    assert worked.values["W"] == pytest.approx(m * (u_x**2 + v_y**2 - u**2) / 2, rel=1e-5)
    side = "up" if y > 0 else "down"
    for key in ("find-y", "find-v_y", "find-theta"):
        assert way(worked, key) == side, key
    plate = {"up": "upper", "down": "lower"}[side]
    figure = part(worked, "path").figure
    assert figure is not None
    assert f"bends towards the {plate} plate" in figure.description
    assert f"here the {plate} one" in part(worked, "explain").points[0].words
    path = next(item for item in figure.items if isinstance(item, Curve)).points
    assert (path[-1][1] - path[0][1]) * y > 0
    arrows = {item.label: item for item in figure.items if isinstance(item, Arrow)}
    (x1, y1), (x2, y2) = arrows["v"].start, arrows["v"].end
    (a1, b1), (a2, b2) = path[-2], path[-1]
    assert (y2 - y1) / (x2 - x1) == pytest.approx((b2 - b1) / (a2 - a1), rel=0.05)  # along the path
    assert (arrows["v_y"].end[1] - arrows["v_y"].start[1]) * y > 0


ION = {"q": 3.2e-19, "m": 6.64e-27, "V": 90.0, "d": 0.02, "L": 0.05, "u": 2.5e5}
A = ION["q"] * 4500 / ION["m"]
T = 0.05 / 2.5e5
CROSS = {
    **ION,
    "E": 4500.0,
    "F": ION["q"] * 4500,
    "a": A,
    "t": T,
    "y": A * T**2 / 2,
    "v_y": A * T,
    "v": math.hypot(2.5e5, A * T),
    "theta": math.degrees(math.atan2(A * T, 2.5e5)),
    "W": ION["q"] * 4500 * A * T**2 / 2,
}
CROSS_UNITS = {**UNITS, "L": "m", "u": "m/s", "y": "m", "v_y": "m/s", "theta": "°"}


@pytest.mark.parametrize(
    ("asked", "given"),
    [
        ("V", "d L u y q m"),
        ("d", "V L u y q m"),
        ("E", "L u y q m"),
        ("q", "V d L u y m"),
        ("m", "V d L u y q"),
        ("u", "V d L y q m"),
        ("L", "V d u y q m"),
        ("y", "V d L u q m"),
        ("y", "W E q"),
        ("v_y", "u theta"),
        ("v_y", "v u"),
        ("u", "v v_y"),
        ("u", "theta v_y"),
        ("theta", "V d L u q m"),
        ("v", "V d L u q m"),
        ("W", "V d L u q m"),
        ("t", "L u"),
        ("L", "t u"),
        ("a", "v_y t"),
        ("a", "y t"),
    ],
)
def test_any_quantity_of_a_crossing_follows_from_enough_others(asked: str, given: str) -> None:
    """Each unknown comes out of every group of data that is enough, with the values of the closed formulas."""
    typed = {name: f"{CROSS[name]!r} {CROSS_UNITS[name]}" for name in given.split()}
    worked = solve("crossing", asked, particle="body", upper="positive", bends="down", **typed)
    found = math.degrees(worked.values[asked]) if asked == "theta" else abs(worked.values[asked])
    assert found == pytest.approx(CROSS[asked], rel=1e-9)
    assert worked.unproven == ()
    if asked == "q":
        assert way(worked, "find") == "positive"


def test_a_particle_that_hits_a_plate_is_refused_with_the_distance() -> None:
    """An electron of 8,0 × 10⁶ m/s falls 10 mm in 5,03 ns, 40,2 mm along the plates: integrated, then told."""
    typed = {**CROSSED, "u": "8e6 m/s"}
    field, sentence = refusal("crossing", "y", particle="electron", upper="negative", **typed)
    reach = float(sentence.split("after ")[1].split(" × ")[0].replace(",", ".")) / 100
    _, y, *_ = moved(-E, M_E, (0, 4500), (8e6, 0), reach / 8e6)
    assert y == pytest.approx(-0.01, rel=5e-3)
    assert field is None
    assert (
        sentence
        == "It hits the lower plate after 4,02 × 10⁻² m along the plates, before their end. There are only 0,01 m "
        "between it and the lower plate. Take shorter plates, a larger speed or a smaller potential difference."
    )
    assert solve("crossing", "y", particle="electron", upper="negative", enters="edge", **typed)


def test_a_deflection_beyond_the_gap_is_refused() -> None:
    """Half the gap is free from the middle, the whole gap from the edge."""
    typed = {"y": "12 mm", "t": "5 ns", "d": "20 mm", "particle": "electron", "upper": "positive"}
    assert refusal("crossing", "a", **typed) == (
        "y",
        (
            "It hits the upper plate before the end. There are only 0,01 m between it and the upper plate. "
            "Make the deflection smaller or the distance between the plates larger."
        ),
    )
    assert solve("crossing", "a", enters="edge", **typed)
    assert solve("crossing", "a", **{**typed, "y": "10 mm"})


def test_the_picture_of_the_data_gives_no_path_away() -> None:
    """The scene has the entering velocity only; no arrow or curve tells where it bends."""
    worked = solve("crossing", "y", particle="electron", **CROSSED)
    assert worked.figure is not None
    assert [item.label for item in worked.figure.items if isinstance(item, Arrow)] == ["u"]
    assert not [item for item in worked.figure.items if isinstance(item, Curve)]
    assert "bends" not in worked.figure.description


# --- every law of both questions, for every quantity in it --------------------------------------------------------


@pytest.mark.parametrize("particle", ["electron", "proton", "body"])
@pytest.mark.parametrize("key", ["released", "crossing"])
def test_every_form_of_every_law_and_every_slip(key: str, particle: str) -> None:
    """Put back, each form satisfies its law; each declared slip gives another size, unless it only turns the
    direction."""
    _, question = find(f"electric-field.{key}")
    own = {"q": "+3,2e-19 C", "m": "6,64e-27 kg"} if particle == "body" else {}
    found = read(question, {"V": "90 V", "d": "2 cm", "particle": particle, **own}, "E")
    declared = {"released": released, "crossing": crossing}[key].situation(found.data)
    chance = np.random.default_rng(7)
    seen = 0
    for relation in declared.laws(found.data):
        names = sorted({*relation.units, *equation(relation.law).names})
        for step in relation.steps():
            values = {name: float(chance.uniform(2.1, 9.7)) for name in names}
            values |= {"theta": 0.4, "u": 3.3, "v_y": 5.9, "m_e": 2.3, "m_p": 8.9, "e": 4.7}
            if step.makes in ("u", "v_y") and "v" in names:
                values["v"] = 11.0  # larger than either part
            right = expression(step.how).value(values)
            law = equation(relation.law)
            values[step.makes] = right
            assert law.left.value(values) == pytest.approx(law.right.value(values)), step.make
            for line in step.lines:
                between = equation(line)
                assert between.left.value(values) == pytest.approx(between.right.value(values)), line
            for mistake in step.mistakes:
                wrong = expression(mistake.instead).value(values)
                assert mistake.turns == (wrong == pytest.approx(right, rel=0.01)), (step.make, mistake.key)
                seen += 1
    assert seen > 15
