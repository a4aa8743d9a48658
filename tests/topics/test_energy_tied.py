"""Two bodies on one string: every unknown against Newton's laws and integrated motion, refusals, the drawing."""

import numpy as np
import pytest
from scipy import integrate

from calc import topics
from calc.figures import Arrow
from calc.figures.pieces import Block
from calc.practice.drawing import draw
from calc.working.reading import read
from calc.working.working import work
from tests.topics.test_energy_work import G, refused, solve, value

M1, M2, MU, H, U = 2.0, 3.0, 0.3, 0.8, 0.5


def pulled(first: str) -> dict[str, float]:
    """Acceleration and tension from two equations of Newton's second law, the speed by integrating."""
    resist = M1 * G * (1.0 if first == "hangs" else MU)
    # T - resist = m1 a and m2 g - T = m2 a
    tension, a = np.linalg.solve(np.array([[1.0, -M1], [-1.0, -M2]]), np.array([resist, -M2 * G]))

    def there(t: float, state: np.ndarray) -> float:
        return float(state[0] - H)

    there.terminal = True  # type: ignore[attr-defined]
    path = integrate.solve_ivp(lambda t, s: (s[1], a), (0, 9), (0.0, U), events=there, rtol=1e-10, atol=1e-12)
    right = {"m1": M1, "m2": M2, "h": H, "u": U, "v": float(path.y[1, -1]), "T": float(tension)}
    return right | ({"mu_k": MU} if first == "table" else {})


@pytest.mark.parametrize("first", ["table", "hangs"])
def test_every_unknown_of_two_tied_bodies(first: str) -> None:
    """Speeds, distance, masses, coefficient and tension agree with Newton's second law."""
    right = pulled(first)
    units = {"m1": " kg", "m2": " kg", "h": " m"}
    for name, number in right.items():
        given = [one for one in right if one not in (name, "T")]
        typed = {one: f"{right[one]!r}{units.get(one, '')}" for one in given}
        assert value("tied", name, first=first, **typed) == pytest.approx(number, rel=1e-6), name
    without_speed = {one: f"{right[one]!r}" for one in right if one not in ("v", "T")}
    assert value("tied", "T", first=first, **without_speed) == pytest.approx(right["T"], rel=1e-6)


def test_the_tension_lies_between_none_and_the_weight() -> None:
    """However heavy the second body, the string pulls less than its weight and more than nothing."""
    for m2 in ("2,1 kg", "5 kg", "50 kg"):
        tension = solve("tied", "T", first="hangs", m1="2 kg", m2=m2, h="1 m", u="0").values["T"]
        assert 2 * G < tension < float(m2.split()[0].replace(",", ".")) * G


REFUSED = (
    (
        "v",
        {"first": "hangs", "m1": "3", "m2": "2", "h": "2 m", "u": "1"},
        "They stop first, after h = 0,26 m. Type a shorter distance.",
    ),
    (
        "v",
        {"first": "table", "m1": "9", "m2": "1", "mu_k": "0,5", "h": "2 m", "u": "0"},
        (
            "They do not start that way: from rest the net work would be less than zero. Check the masses and the"
            " friction."
        ),
    ),
    (
        "v",
        {"first": "hangs", "m1": "3", "m2": "4", "mu_k": "0,5", "h": "2 m", "u": "0"},
        "Both bodies hang: there is no friction. Leave this empty, or choose the table.",
    ),
    (
        "mu_k",
        {"first": "table", "m1": "3", "m2": "4", "v": "9", "h": "1 m", "u": "0"},
        "No coefficient fits: friction would have to push the first body along. Check the numbers.",
    ),
    (
        "u",
        {"first": "hangs", "m1": "3", "m2": "4", "v": "0,5", "h": "1 m"},
        "No initial speed fits: the forces alone would make them faster than this. Check the numbers.",
    ),
    (
        "h",
        {"first": "hangs", "m1": "3", "m2": "4", "v": "0,5", "u": "1"},
        "No distance fits: these forces do not change the speed that way. Check the speeds and the masses.",
    ),
    (
        "m2",
        {"first": "hangs", "m1": "3", "v": "9", "h": "1 m", "u": "0"},
        "No mass fits: even a very heavy second body falls no faster than freely. Check the speeds and the distance.",
    ),
    (
        "m1",
        {"first": "hangs", "m2": "3", "v": "9", "h": "1 m", "u": "0"},
        "No mass fits: the second body alone would not become so fast. Check the speeds and the distance.",
    ),
    (
        "T",
        {"first": "hangs", "m2": "3", "v": "9", "h": "1 m", "u": "0"},
        "No tension fits: a string only pulls, so the second body falls no faster than freely. Check the numbers.",
    ),
    ("v", {"first": "hangs", "m1": "0 kg", "m2": "4", "h": "2 m", "u": "0"}, "Mass must be greater than zero."),
)


@pytest.mark.parametrize(("find", "typed", "sentence"), REFUSED)
def test_tied_bodies_that_cannot_be_are_refused(find: str, typed: dict[str, str], sentence: str) -> None:
    """Each refusal gives its reason and what to do."""
    assert sentence in refused("tied", find, **typed).replace("\u00a0", " ")


@pytest.mark.parametrize(("first", "ways"), [("table", {-90.0}), ("hangs", {-90.0, 90.0})])
def test_the_second_body_is_drawn_coming_down(first: str, ways: set[float]) -> None:
    """Body 2 is the one on the right; its arrow points down, that of a first one that hangs up."""
    figure = solve(
        "tied", "v", first=first, m1="2", m2="4", h="1", u="0", **({"mu_k": "0,1"} if first == "table" else {})
    )
    assert figure.figure
    place = {item.label: item.centre[0] for item in figure.figure.items if isinstance(item, Block)}
    assert place["2"] > place["1"]
    arrows = [item for item in figure.figure.items if isinstance(item, Arrow)]
    turns = {float(np.degrees(np.arctan2(a.end[1] - a.start[1], a.end[0] - a.start[0]))) for a in arrows}
    assert turns == ways
    down = next(a for a in arrows if a.end[1] < a.start[1])
    assert down.start[0] > place["1"]


def test_practice_ties_both_kinds() -> None:
    """Drawn bodies stand on a table and hang; every draw is worked without a warning."""
    topic, question = topics.find("energy.tied")
    met = set()
    for seed in range(10):
        one = draw(topic, question, seed, 1 + seed % 3, 4)
        found = work(topic, question, read(question, one.inputs, one.find, variant=one.variant))
        assert found.warnings == ()
        met |= {str(one.inputs["first"])}
    assert met == {"table", "hangs"}
