"""Power: published cases, every unknown by another route, refusals, what the learner is told of usual mistakes."""

import json

import numpy as np
import pytest
import sympy
from scipy import integrate

from calc import desk, topics
from calc.figures import Arrow
from calc.model.questions import Refusal
from calc.practice.drawing import draw
from calc.working.reading import read
from calc.working.working import work
from tests.topics.test_energy_work import PUBLISHED, G, published, refused, solve, value


def test_the_published_day_of_work() -> None:
    """Average power from work and a working day."""
    (work, hours), answer = published("worker-average-power", "W", "t")
    assert value("average-power", "P", W=f"{work} J", Deltat=f"{hours} h", m="", h="", u="", v="") == answer


def test_the_published_car_and_its_time() -> None:
    """The time in which an engine of known power brings a car to a speed on the level."""
    (m, power, v), answer = published("car-acceleration-time", "m", "P", "v")
    assert value("average-power", "Deltat", m=f"{m}", P=f"{power}", v=f"{v}", h="0", u="0", Deltat="") == answer


@pytest.mark.parametrize(("case", "divisor"), [("aircraft-average-power", 1e6), ("stairs-power", 1.0)])
def test_published_climbs_with_gain_in_speed(case: str, divisor: float) -> None:
    """Average power of a climb that ends at a speed: an aircraft (MW) and a woman on stairs (W)."""
    (m, h, v, t), answer = published(case, "m", "h", "v", "t")
    typed = {"m": f"{m} kg", "h": f"{h} m", "v": f"{v}", "u": "0", "Deltat": f"{t} s"}
    assert value("average-power", "P", **typed) / divisor == answer


def test_the_published_hill() -> None:
    """A car climbs at constant speed, with three quarters of its power against the weight alone (grade: sine)."""
    (m, v, grade, fraction), answer = published("hill-climb-power", "m", "v", "grade", "fraction")
    told = PUBLISHED["hill-climb-power"]
    assert told["published"]["unit"] == "kW"
    angle = np.degrees(np.arctan(grade))
    typed = {"m": f"{m}", "v": f"{v} km/h", "theta": f"{angle:.10g}°", "f": "0"}
    assert value("constant-speed", "P", **typed) / fraction / 1e3 == answer


UNITS = {"Deltat": " s", "theta": "°", "eta": " %", "P": " W", "P_in": " W", "P_out": " W", "W": " J"}


def typed_of(right: dict[str, float], *left_out: str) -> dict[str, str]:
    """Numbers as a reader types them, the left out ones empty."""
    return {name: "" if name in left_out else f"{size!r}{UNITS.get(name, '')}" for name, size in right.items()}


def test_every_unknown_of_a_lift() -> None:
    """The work is the integral of the rope's force over the way, the power that over the time."""
    m, h, u, v, t = 250.0, 6.0, 0.5, 1.5, 8.0
    pull = m * (G + (v**2 - u**2) / (2 * h))  # constant, so that the speed grows evenly over the way
    work, _ = integrate.quad(lambda y: pull, 0, h)
    right = {"m": m, "h": h, "u": u, "v": v, "Deltat": t, "W": work, "P": work / t}
    assert value("average-power", "W", **typed_of(right, "W", "P", "Deltat")) == pytest.approx(work)
    assert value("average-power", "P", **typed_of(right, "W", "P")) == pytest.approx(work / t)
    for name in ("m", "h", "v", "u", "Deltat"):
        assert value("average-power", name, **typed_of(right, name, "W")) == pytest.approx(right[name], rel=1e-6), name


def test_every_unknown_of_a_start() -> None:
    """The mean over time of F v(t), integrated, is the average power; sympy gives the rest."""
    f, u, v, t = 900.0, 2.0, 12.0, 6.0
    work, _ = integrate.quad(lambda time: f * (u + (v - u) * time / t), 0, t)
    way, _ = integrate.quad(lambda time: u + (v - u) * time / t, 0, t)
    right = {"F": f, "u": u, "v": v, "v_av": way / t, "Deltax": way, "Deltat": t, "W": work, "P": work / t}
    empty = dict.fromkeys(right, "")
    routes = {
        "P": ("F", "u", "v"),
        "F": ("P", "u", "v"),
        "v": ("P", "F", "u"),
        "u": ("P", "F", "v"),
        "Deltat": ("W", "P"),
        "W": ("F", "Deltax"),
        "v_av": ("Deltax", "Deltat"),
    }
    for name, given in routes.items():
        typed = {one: text for one, text in typed_of(right).items() if one in given}
        assert value("average-speed", name, **{**empty, **typed}) == pytest.approx(right[name], rel=1e-9), name


@pytest.mark.parametrize(("way", "sign"), [("up", 1), ("level", 0), ("down", -1)])
def test_every_unknown_at_constant_speed(way: str, sign: int) -> None:
    """With the engine's force the net force from vectors is zero; the power is force times speed."""
    m, angle, f, v = 1100.0, 4.0, 900.0, 18.0
    slope = np.radians(angle) * abs(sign)
    along = (sign or 1) * np.array([np.cos(slope), np.sin(slope)])
    engine = float(-(np.array([0.0, -m * G]) @ along) + f)
    right = {"f": f, "v": v, "F": engine, "P": engine * v} | ({"m": m, "theta": angle} if sign else {})
    blank = dict.fromkeys(("m", "theta", "f", "v", "F", "P"), "")
    for name in right:
        typed = typed_of(right, name, *(() if name == "F" else ("F",)))
        found = value("constant-speed", name, way=way, **{**blank, **typed})
        assert (np.degrees(found) if name == "theta" else found) == pytest.approx(right[name], rel=1e-6), name


def test_every_unknown_of_a_pump() -> None:
    """Sympy solves the balance of energy in each second for each quantity."""
    names = sympy.symbols("m Deltat h v P_in eta", positive=True)
    m, t, h, v, taken, share = names
    law = sympy.Eq(taken * share / 100, m * (sympy.Float(G) * h + v**2 / 2) / t)
    right = {"m": 900.0, "Deltat": 60.0, "h": 8.0, "v": 6.0, "P_in": 2500.0}
    (percent,) = sympy.solve(law.subs({one: right[str(one)] for one in names if str(one) in right}), share)
    right["eta"] = float(percent)
    for symbol in names:
        known = {one: right[str(one)] for one in names if one != symbol}
        (expected,) = sympy.solve(law.subs(known), symbol)
        found = value("pump", str(symbol), P_out="", **typed_of(right, str(symbol)))
        assert found == pytest.approx(float(expected), rel=1e-6), symbol


def example(key: str, **typed: str) -> dict[str, str]:
    """The page's example with these boxes changed."""
    return {**{name: str(text) for name, text in topics.find(f"energy.{key}")[1].example.items()}, **typed}


REFUSED = (
    ("average-power", "P", {"Deltat": "0 s"}, "Time must be greater than zero."),
    (
        "average-power",
        "v",
        {"v": "", "W": "4 kJ", "Deltat": ""},
        "This work is too little: it does not even reach for the rest. Check the power, the time and the other"
        " numbers.",
    ),
    (
        "average-power",
        "W",
        {"h": "0", "u": "3", "v": "1"},
        "The load loses energy here: the motor would have to brake it. Check the height and the speeds.",
    ),
    (
        "average-speed",
        "u",
        {"u": "", "v": "12", "Deltax": "20", "Deltat": "5", "F": ""},
        "No such speed fits: the average would have to be larger. Check the speeds, the distance and the time.",
    ),
    (
        "average-speed",
        "v",
        {"u": "30", "v": "", "Deltax": "50", "Deltat": "5", "F": ""},
        "No such speed fits: the average would have to be larger. Check the speeds, the distance and the time.",
    ),
    (
        "constant-speed",
        "P",
        {"way": "down", "f": "500 N"},
        "Here the slope alone pulls harder than the resistance: the engine would have to brake. Check the numbers.",
    ),
    (
        "constant-speed",
        "f",
        {"f": "", "P": "3 kW"},
        "No value fits: the engine's force is smaller than the rest of what resists. Check the power and the speed.",
    ),
    (
        "constant-speed",
        "P",
        {"way": "level"},
        "A level road has no angle: leave this empty, or choose a slope.",
    ),
    (
        "pump",
        "eta",
        {"P_in": "1,4 kW"},
        "Output cannot exceed input: no pump gives out more power than it takes in. Check the numbers.",
    ),
    (
        "pump",
        "P_in",
        {"P_in": "", "eta": "101 %"},
        "Output cannot exceed input: no pump gives out more power than it takes in. Check the numbers.",
    ),
    (
        "pump",
        "h",
        {"h": "", "P_in": "1,99 kW", "P_out": "2 kW"},  # one in two hundred more out than in, whatever is asked
        "Output cannot exceed input: no pump gives out more power than it takes in. Check the numbers.",
    ),
    (
        "pump",
        "h",
        {"h": "", "P_in": "", "P_out": "200 W"},
        "This power is too little: it does not even reach for the rest. Check the power, the time and the other"
        " numbers.",
    ),
    ("pump", "eta", {"Deltat": "0 s"}, "Time must be greater than zero."),
    ("pump", "eta", {"P_in": "0 W"}, "Power must be greater than zero."),
)


@pytest.mark.parametrize(("key", "find", "typed", "sentence"), REFUSED)
def test_power_that_cannot_be_is_refused(key: str, find: str, typed: dict[str, str], sentence: str) -> None:
    """Each refusal gives its reason and what to do."""
    assert sentence in refused(key, find, **example(key, **typed)).replace("\u00a0", " ")


def test_all_of_the_input_may_come_out_but_no_more() -> None:
    """An efficiency of 100 % is worked; a hair more is refused."""
    out = value("pump", "P_out", **example("pump", P_in=""))
    assert value("pump", "eta", **example("pump", P_in=f"{out!r} W")) == pytest.approx(100)
    with pytest.raises(Refusal):
        solve("pump", "eta", **example("pump", P_in=f"{out * 0.9999!r} W"))


@pytest.mark.parametrize(
    ("key", "answer", "sentence"),
    [
        ("average-speed", "10 800 W", "You used the final speed."),
        ("constant-speed", "0 W", "You put the net force in, which is zero at constant speed."),
        ("pump", "172,9 %", "You divided the wrong way round."),
    ],
)
def test_usual_mistakes_with_power_are_told(key: str, answer: str, sentence: str) -> None:
    """Final for average speed, the net force in P = Fv, and output for input are named."""
    data = {"question": f"energy.{key}", "inputs": topics.find(f"energy.{key}")[1].example}
    request = {"operation": "mark", "data": {**data, "answers": {"find": {"value": answer}}}}
    assert sentence in desk.answer(json.dumps(request)), json.loads(desk.answer(json.dumps(request)))


@pytest.mark.parametrize(("way", "turn"), [("up", 4), ("level", 0), ("down", 184)])
def test_the_vehicle_is_drawn_the_way_it_drives(way: str, turn: float) -> None:
    """The velocity arrow lies along the road at its true angle."""
    typed = {"way": way, "f": "900 N", **({"theta": "", "m": ""} if way == "level" else {})}
    figure = solve("constant-speed", "P", **example("constant-speed", **typed)).figure
    assert figure
    (arrow,) = [item for item in figure.items if isinstance(item, Arrow)]
    heading = np.degrees(np.arctan2(arrow.end[1] - arrow.start[1], arrow.end[0] - arrow.start[0])) % 360
    assert heading == pytest.approx(turn)


def test_practice_of_the_first_speed_of_a_load_is_a_motion_that_can_be() -> None:
    """The height is the mean of both speeds times the time, and the power is what the motor needs, with g = 9,8."""
    topic, question = topics.find("energy.average-power")
    drawn = [one for seed in range(60) if (one := draw(topic, question, seed, 3, 6)).find == "u"]
    assert len(drawn) > 2
    for one in drawn:
        values = work(topic, question, read(question, one.inputs, "u")).values
        m, h, u, v, t = (values[name] for name in ("m", "h", "u", "v", "Deltat"))
        assert h == pytest.approx((u + v) / 2 * t, rel=0.04)
        assert values["P"] * t == pytest.approx(m * 9.8 * h + m * (v * v - u * u) / 2, rel=1e-6)
        assert 0 < u < v
