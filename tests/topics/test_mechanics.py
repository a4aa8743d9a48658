"""Momentum and energy: published cases, an independent route for every unknown, refusals word for word."""

import json
from itertools import product

import pytest
import sympy

from calc import desk, topics
from calc.model.questions import Refusal
from calc.working.reading import Refusals, read
from calc.working.working import work


def solved(key: str, find: str = "", **typed: str) -> dict[str, float]:
    """Every value for these data."""
    topic, question = topics.find(key)
    return work(topic, question, read(question, typed, find)).values


# OpenStax University Physics Volume 1, section 9.3 Conservation of Linear Momentum (module m58320), CC BY 4.0:
# two wagons coupling (0.122 m/s), and one skater lifting another (5.9 m/s).
@pytest.mark.parametrize(
    ("typed", "published", "tolerance"),
    [
        ({"m1": "150000 kg", "u1": "0,30 m/s", "m2": "110000 kg", "u2": "-0,12 m/s"}, 0.122, 0.0042),
        ({"m1": "75 kg", "u1": "6,2 m/s", "m2": "50 kg", "u2": "5,5 m/s"}, 5.9, 0.0086),
    ],
)
def test_published_collisions(typed: dict[str, str], published: float, tolerance: float) -> None:
    """Bodies that couple move on as published."""
    assert solved("momentum.join", "v", **typed)["v"] == pytest.approx(published, rel=tolerance)


JOINED = {"m1": 3.0, "u1": 4.0, "m2": 2.0, "u2": -1.5, "v": 1.8}
LAUNCHED = {"k": 400.0, "x": 0.12, "m": 0.05, "h": 1.5, "v": 9.259589623520823}
UNITS = {"m1": "kg", "u1": "m/s", "m2": "kg", "u2": "m/s", "v": "m/s", "k": "N/m", "x": "m", "m": "kg", "h": "m"}


@pytest.mark.parametrize("unknown", JOINED)
def test_every_unknown_of_a_collision(unknown: str) -> None:
    """Sympy solves the momentum balance for each quantity."""
    m1, u1, m2, u2, v = names = sympy.symbols("m1 u1 m2 u2 v")
    law = sympy.Eq(m1 * u1 + m2 * u2, (m1 + m2) * v)
    known = {symbol: JOINED[str(symbol)] for symbol in names if str(symbol) != unknown}
    (expected,) = sympy.solve(law.subs(known), sympy.Symbol(unknown))
    typed = {name: f"{value} {UNITS[name]}" for name, value in JOINED.items() if name != unknown}
    assert solved("momentum.join", unknown, **typed)[unknown] == pytest.approx(float(expected))


@pytest.mark.parametrize("unknown", LAUNCHED)
def test_every_unknown_of_a_launch(unknown: str) -> None:
    """Sympy solves the energy balance for each quantity; a height h and a spring k are no constants of nature."""
    k, x, m, h, v = names = sympy.symbols("k x m h v", positive=True)
    law = sympy.Eq(k * x**2 / 2, m * sympy.Float(9.8) * h + m * v**2 / 2)
    known = {symbol: LAUNCHED[str(symbol)] for symbol in names if str(symbol) != unknown}
    (expected,) = sympy.solve(law.subs(known), sympy.Symbol(unknown, positive=True))
    typed = {name: f"{value} {UNITS[name]}" for name, value in LAUNCHED.items() if name != unknown}
    assert solved("energy.spring-launch", unknown, **typed)[unknown] == pytest.approx(float(expected))


@pytest.mark.parametrize("unknown", ["h", "k"])
def test_no_constant_is_found_by_its_letter(unknown: str) -> None:
    """Neither answer, data sheet nor paper calls a height Planck's constant or a spring Coulomb's."""
    typed = {name: f"{value} {UNITS[name]}" for name, value in LAUNCHED.items() if name != unknown}
    data = {
        "question": "energy.spring-launch",
        "inputs": typed,
        "find": unknown,
        "as": ["text", "latex", "html"],
    }
    reply = json.loads(desk.answer(json.dumps({"operation": "solve", "data": data})))["data"]
    paper = {
        "topics": ["energy.spring-launch", "momentum.join"],
        "level": 3,
        "seed": 4,
        "as": ["markdown", "markdown_memo"],
    }
    printed = json.loads(desk.answer(json.dumps({"operation": "paper", "data": paper})))["data"]
    for words in (
        *(reply[name] for name in ("text", "latex", "html")),
        printed["markdown"],
        printed["markdown_memo"],
    ):
        assert "Planck" not in words
        assert "Coulomb" not in words


def test_a_mirror_turns_every_direction() -> None:
    """With every velocity mirrored the answer has the same size and the opposite words."""
    topic, question = topics.find("momentum.join")
    words = set()
    for sign in (1, -1):
        u1, u2 = (4.0, -1.5) if sign > 0 else (1.5, -4.0)
        masses = ("3 kg", "2 kg") if sign > 0 else ("2 kg", "3 kg")
        typed = {"m1": masses[0], "u1": f"{u1} m/s", "m2": masses[1], "u2": f"{u2} m/s"}
        (answer,) = work(topic, question, read(question, typed, "v")).answers
        assert abs(answer.value) == pytest.approx(1.8)
        words.add(answer.direction.words if answer.direction else "")
    assert words == {"to the right", "to the left"}


REFUSED = (
    (
        "momentum.join",
        {"m1": "3 kg", "u1": "1 m/s", "m2": "2 kg", "u2": "2 m/s"},
        "They never meet: the first is on the left and must be the faster one to the right. Check the velocities.",
    ),
    (
        "momentum.join",
        {"m1": "3 kg", "u1": "4 m/s", "u2": "-1 m/s", "v": "5 m/s"},
        "No mass fits: these velocities would need a mass of zero or less. Check the directions.",
    ),
    (
        "energy.spring-launch",
        {"k": "100 N/m", "x": "2 cm", "m": "100 g", "v": "5 m/s"},
        "The spring cannot give so much: at P the ball would have more energy than the spring had. Check the numbers.",
    ),
    (
        "momentum.join",
        {"m1": "3 kg", "u1": "4 m/s"},
        (
            "Pick what to find: mass of the second, velocity of the second before and velocity of both afterwards are"
            " empty."
        ),
    ),
)


@pytest.mark.parametrize(("key", "typed", "sentence"), REFUSED)
def test_what_cannot_be_is_refused(key: str, typed: dict[str, str], sentence: str) -> None:
    """Each refusal gives its reason."""
    with pytest.raises((Refusal, Refusals)) as told:
        solved(key, **typed)
    assert sentence in str(told.value)


def test_what_does_not_follow_names_what_would_help() -> None:
    """Asked for two things at once where one more datum is needed: that one is named."""
    _, question = topics.find("momentum.join")
    with pytest.raises(Refusal) as told:
        question.plan(read(question, {"m1": "3 kg", "u1": "4 m/s", "m2": "2 kg"}, "u2,v").data)
    assert (
        str(told.value)
        == "The velocity of the second before does not follow from these data. Add the velocity of both afterwards."
    )


def test_values_scale_as_they_must() -> None:
    """All masses doubled: the velocity stays. All velocities doubled: so does the answer."""
    for masses, speeds in product((1, 2), (1, 2)):
        typed = {
            "m1": f"{3 * masses} kg",
            "u1": f"{4 * speeds} m/s",
            "m2": f"{2 * masses} kg",
            "u2": f"{-1.5 * speeds} m/s",
        }
        assert solved("momentum.join", "v", **typed)["v"] == pytest.approx(1.8 * speeds)
