"""Momentum and impulse: published cases, sympy and numpy for every unknown, refusals word for word, mirrors."""

import numpy as np
import pytest
import sympy
from scipy import integrate, optimize

from calc import topics
from calc.figures import Arrow, Curve
from calc.practice.drawing import DRAWS, draw
from calc.renderings import form
from calc.working.reading import read
from calc.working.working import work
from tests.topics.asking import Chapter

ASKED = Chapter("momentum")
solve, value, refused, PUBLISHED = ASKED.solve, ASKED.value, ASKED.refused, ASKED.cases


def published(case: str, *names: str) -> tuple[list[float], object]:
    """The data of a published case by name, and its answer as published."""
    told = PUBLISHED[case]
    return (
        [float(told["given"][name]["value"]) for name in names],
        pytest.approx(told["published"]["value"], rel=told["published"]["rel_tol"]),
    )


# Sources stand in momentum_published.json: OpenStax University Physics Volume 1 and OpenStax College Physics,
# worked examples and exercises, CC BY 4.0.


@pytest.mark.parametrize("case", ["coupling-wagons", "skater-pickup", "puck-goalie"])
def test_published_bodies_that_join(case: str) -> None:
    """Two bodies that couple move on as published."""
    (m1, u1, m2, u2), answer = published(case, "m1", "v1", "m2", "v2")
    assert value("join", "v", m1=f"{m1}", u1=f"{u1}", m2=f"{m2}", u2=f"{u2}") == answer


def test_the_published_bullet_and_block() -> None:
    """Impulse and average force on a block in which a bullet stops: by its velocity with the bullet inside."""
    (m1, u1, m2), impulse = published("embedded-bullet-impulse", "m1", "v1", "m2")
    v = value("join", "v", m1=f"{m1}", u1=f"{u1}", m2=f"{m2}", u2="0")
    assert value("impulse", "Deltap", m=f"{m2} kg", u="0", v=f"{v:.9g}") == impulse
    (lasting,), force = published("embedded-bullet-force", "dt")
    assert value("impulse", "F_net", m=f"{m2} kg", u="0", v=f"{v:.9g}", Deltat=f"{lasting} s") == force


def test_the_published_lander() -> None:
    """The change in momentum of a body that bounces: the sizes of its velocities add up."""
    (m, u, v), answer = published("lander-bounce-dp", "m", "v1", "v2")
    assert value("impulse", "Deltap", m=f"{m} kg", u=f"{u}", v=f"{v}") == answer


def test_the_published_crash() -> None:
    """A passenger who stops within 15 cm, at a constant force: the time is the way over half the speed."""
    (m, u, way), answer = published("airbag-force", "m", "v", "d")
    found = solve("impulse", "F_net", m=f"{m} kg", u=f"{u}", v="0", Deltat=f"{2 * way / u} s")
    assert abs(found.values["F_net"]) == answer
    assert [shown.direction.words for shown in found.answers if shown.direction] == ["to the left"]


def test_the_published_hose() -> None:
    """The water of one second loses all its velocity at a wall."""
    (rate, u), answer = published("hose-on-wall", "rate", "v")
    assert -value("impulse", "F_net", m=f"{rate} kg", u=f"{u}", v="0", Deltat="1 s") == answer


def test_the_published_recoil() -> None:
    """A player on ice who throws a puck slides back by the ratio of the masses."""
    (m1, m2, v2, way), answer = published("player-recoil", "m1", "m2", "v2", "d")
    v1 = value("spring", "v1", m1=f"{m1}", m2=f"{m2}", u="0", v2=f"{v2}")
    assert -v1 * way / v2 * 100 == answer


@pytest.mark.parametrize("case", ["equal-mass-elastic", "elastic-1d-v1"])
def test_published_elastic_collisions(case: str) -> None:
    """The velocity of the first after an elastic collision."""
    (m1, u1, m2, u2), answer = published(case, "m1", "v1", "m2", "v2")
    assert value("elastic", "v1", m1=f"{m1}", u1=f"{u1}", m2=f"{m2}", u2=f"{u2}") == answer


def test_the_published_kinetic_energy_before() -> None:
    """The total kinetic energy of two carts before they meet."""
    (m1, u1, m2, u2), answer = published("carts-kinetic-before", "m1", "v1", "m2", "v2")
    typed = {"m1": f"{m1}", "u1": f"{u1}", "m2": f"{m2}", "u2": f"{u2}", "v1": "-0,3 m/s"}
    assert value("part", "v2", **typed) > 0
    assert solve("part", "v2", **typed).values["SigmaE_k"] == answer


# --- an independent route for every unknown ---

PARTED = {"m1": 2.0, "u1": 5.0, "m2": 3.0, "u2": -2.0, "v1": -1.0, "v2": 2.0}
SPRUNG = {"m1": 1.5, "m2": 2.5, "u": 0.5, "v1": -2.0, "v2": 2.0}
STRUCK = {"m": 0.06, "u": 24.0, "v": -18.0, "Deltat": 0.008, "F_net": -315.0}
PULSE = {"m": 0.16, "u": -4.0, "v": 11.0, "F_max": 320.0, "Deltat": 0.015}
FLOOR = {"m": 0.4, "u": -6.0, "v": 4.5, "Deltat": 0.15, "N": 31.92}
BALANCES = (
    ("part", PARTED, lambda m1, u1, m2, u2, v1, v2: m1 * u1 + m2 * u2 - m1 * v1 - m2 * v2),
    ("spring", SPRUNG, lambda m1, m2, u, v1, v2: m1 * (v1 - u) + m2 * (v2 - u)),
    ("impulse", STRUCK, lambda m, u, v, Deltat, F_net: m * v - m * u - F_net * Deltat),
    ("pulse", PULSE, lambda m, u, v, F_max, Deltat: m * v - m * u - F_max * Deltat / 2),
    ("floor", FLOOR, lambda m, u, v, Deltat, N: m * v - m * u - (N - m * sympy.Float(9.8)) * Deltat),
)


@pytest.mark.parametrize(
    ("key", "unknown", "data", "balance"),
    [(key, unknown, data, balance) for key, data, balance in BALANCES for unknown in data],
)
def test_every_unknown(key: str, unknown: str, data: dict[str, float], balance: object) -> None:
    """Sympy solves the balance of momentum for each quantity of each question."""
    names = {name: sympy.Symbol(name) if name == unknown else sympy.Float(number) for name, number in data.items()}
    (expected,) = sympy.solve(balance(**names), names[unknown])  # type: ignore[operator]
    units = {"m": "kg", "Deltat": "s"}
    typed = {name: f"{number} {units.get(name, '')}".strip() for name, number in data.items() if name != unknown}
    assert value(key, unknown, **typed) == pytest.approx(float(expected), rel=1e-9)
    assert float(expected) == pytest.approx(data[unknown])


@pytest.mark.parametrize(("m1", "u1", "m2", "u2"), [(3.0, 4.0, 1.0, 0.0), (1.0, 3.0, 4.0, -2.0), (2.0, 5.0, 2.0, 1.0)])
def test_an_elastic_collision_keeps_both_totals(m1: float, u1: float, m2: float, u2: float) -> None:
    """A root finder on momentum and kinetic energy, started beyond the collision, gives the same two velocities."""

    def balances(v: np.ndarray) -> list[float]:
        return [
            m1 * (v[0] - u1) + m2 * (v[1] - u2),
            m1 * (v[0] ** 2 - u1**2) + m2 * (v[1] ** 2 - u2**2),
        ]

    expected = optimize.fsolve(balances, [u2 - 1, u1 + 1], xtol=1e-13)
    typed = {"m1": f"{m1}", "u1": f"{u1}", "m2": f"{m2}", "u2": f"{u2}"}
    for find in ("v1", "v2"):
        values = solve("elastic", find, **typed).values
        assert [values["v1"], values["v2"]] == pytest.approx(list(expected), rel=1e-6, abs=1e-6)


def test_the_area_of_a_triangle_is_integrated() -> None:
    """The motion under a force that grows and dies away, step by step, ends with the velocity that is calculated."""
    m, u, peak, lasting = 0.16, -4.0, 320.0, 0.015
    area, _ = integrate.quad(lambda t: peak * (1 - abs(2 * t / lasting - 1)), 0, lasting, points=[lasting / 2])
    found = value("pulse", "v", m="160 g", u="-4", F_max="320", Deltat="15 ms")
    assert found == pytest.approx(u + area / m)


def test_the_whole_question_is_worked_by_plain_sums() -> None:
    """Velocity, both energies, and the force on the second cart, each from the data alone."""
    values = solve("market", m1="120 kg", u1="2", m2="40 kg", u2="-1", Deltat="0,2 s").values
    v = (240 - 40) / 160
    assert values["v"] == pytest.approx(v)
    assert values["SigmaE_k"] == pytest.approx(0.5 * 120 * 4 + 0.5 * 40)
    assert values["SigmaE_k_after"] == pytest.approx(0.5 * 160 * v**2)
    assert values["F_net"] == pytest.approx(-120 * (v - 2) / 0.2)  # what the first loses, the second gains


def test_an_explosion_gains_what_the_moving_frame_gains() -> None:
    """The energy of the spring is the same for whoever moves along: half the reduced mass times speed squared."""
    for u in (0.0, 3.0):
        found = solve("spring", "v2", m1="1,5", m2="2,5", u=f"{u}", v1=f"{u - 2}")
        assert found.values["DeltaE_k"] == pytest.approx(0.5 * 1.5 * 2.5 / 4 * 3.2**2)


# --- elastic or not ---


@pytest.mark.parametrize(
    ("v1", "verdict"),
    [
        ("-1 m/s", "inelastic"),
        ("-3,4 m/s", "elastic"),
        ("-3,39 m/s", "elastic"),
        ("-3,3 m/s", "inelastic"),
    ],
)
def test_the_verdict_is_elastic_within_one_per_cent(v1: str, verdict: str) -> None:
    """2 kg at 5 m/s meets 3 kg at −2 m/s: elastic if v₁ = −3,4 m/s, and up to 1 % apart."""
    found = solve("part", "v2", m1="2", u1="5", m2="3", u2="-2", v1=v1)
    before, after = found.values["SigmaE_k"], found.values["SigmaE_k_after"]
    assert (abs(after / before - 1) <= 0.01) == (verdict == "elastic")
    (point,) = next(part.points for part in found.parts if part.key == "elastic")
    same = "the same within 1 %" if verdict == "elastic" else "not the same"
    assert point.words.replace("\u00a0", " ").endswith(f" J after: {same}, so the collision is {verdict}.")
    assert f"{before:.2f} J before and {after:.2f} J after".replace(".", ",") in point.words.replace("\u00a0", " ")


@pytest.mark.parametrize(("u2", "share"), [("-1,5 m/s", 8.1 / 26.25), ("0 m/s", 14.4 / 24)])
def test_joined_trolleys_are_judged_where_that_is_asked(u2: str, share: float) -> None:
    """Both totals and the verdict come with the choice, and are not asked without it."""
    typed = {"m1": "3", "u1": "4", "m2": "2", "u2": u2}
    found = solve("join", "v", **typed, also="elastic")
    assert found.values["SigmaE_k_after"] / found.values["SigmaE_k"] == pytest.approx(share)
    (point,) = next(part.points for part in found.parts if part.key == "elastic")
    assert point.words.endswith("not the same, so the collision is inelastic.")
    for older in ({}, {"also": "nothing"}):
        assert [part.key for part in solve("join", "v", **typed, **older).parts] == ["state", "find"]


# --- through ---


@pytest.mark.parametrize("unknown", ["m1", "u1", "m2", "u2", "v1", "v2"])
def test_one_body_goes_through_another(unknown: str) -> None:
    """Every quantity of 2 kg at 5 m/s that leaves 3 kg behind: numpy's balance of momentum; energy is lost."""
    data = {"m1": 2.0, "u1": 5.0, "m2": 3.0, "u2": -2.0, "v1": 3.0}
    data["v2"] = float(np.dot([data["m1"], data["m2"]], [5.0 - 3.0, -2.0]) / 3)
    typed = {name: f"{number!r}" for name, number in data.items() if name != unknown}
    found = solve("part", unknown, how="pierce", **typed)
    assert found.values[unknown] == pytest.approx(data[unknown])
    assert found.values["SigmaE_k_after"] < found.values["SigmaE_k"]
    assert found.values["v1"] > found.values["v2"]


def test_what_went_through_is_drawn_beyond() -> None:
    """Afterwards the first stands on the right of the second; where they part it stands on the left."""
    for how, v1, right in (("pierce", "3", True), ("part", "-1", False)):
        figure = solve("part", "v2", how=how, m1="2", u1="5", m2="3", u2="-2", v1=v1).figure
        assert figure
        at = {one.label: one.start[0] for one in figure.items if isinstance(one, Arrow) and one.kind == "velocity"}
        assert (at["v_1"] > at["v_2"]) == right
        assert at["u_1"] < at["u_2"]


def test_practice_by_the_newest_rule_goes_through_too_and_an_older_one_never() -> None:
    """Both kinds are drawn, and each story is told of its kind; no older address meets the younger one."""
    topic, question = topics.find("momentum.part")
    kinds = set()
    for seed in range(8):
        drawn = draw(topic, question, seed, 2, DRAWS)
        story = work(topic, question, read(question, drawn.inputs, drawn.find, variant=drawn.variant)).story
        assert ("through" in story) == (drawn.inputs["how"] == "pierce")
        kinds.add(drawn.inputs["how"])
        assert draw(topic, question, seed, 2, 4).inputs["how"] == "part"
    assert kinds == {"part", "pierce"}


# --- asked besides ---


@pytest.mark.parametrize(("key", "option"), [("join", "elastic"), ("impulse", "longer"), ("pulse", "pair")])
def test_what_is_asked_besides_stands_with_what_is_to_be_found_and_is_no_datum(key: str, option: str) -> None:
    """The choice is part of the question on the form, not of the numbers, and no line among the data tells of it."""
    topic, question = topics.find(f"momentum.{key}")
    page = form.render(f"momentum.{key}", question, question.example)
    asked, known = page.split('<fieldset class="known">')
    assert f'<option value="{option}">' in asked
    assert 'name="also"' not in known
    worked = work(topic, question, read(question, {**question.example, "also": option}))
    assert "also" not in [given.name for given in worked.given]


def test_a_longer_contact_is_asked_in_three_tellings() -> None:
    """Airbag, bent knees, mat: the same Δp, a longer Δt, so F_net = Δp/Δt is smaller; not asked without the choice."""
    topic, question = topics.find("momentum.impulse")
    typed = {"m": "60 g", "u": "24", "v": "-18", "Deltat": "8 ms"}
    asks = set()
    for variant in range(12):
        found = work(topic, question, read(question, {**typed, "also": "longer"}, "F_net", variant=variant))
        part = found.parts[-1]
        asks.add(part.ask)
        assert part.marks == 3
        said = [point.words for point in part.points]
        assert "Δp is the same" in said[0]
        assert "Δt is longer" in said[1]
        assert "Δp/Δt, so it is smaller" in said[2]
    assert len(asks) == 3
    assert all("equation" in ask and "smaller" in ask for ask in asks)
    assert [part.key for part in solve("impulse", "F_net", **typed).parts] == ["state", "find"]


@pytest.mark.parametrize(
    ("v", "side", "other"), [("11", "above", "below"), ("-19", "below", "above"), ("-3,98", "above", "below")]
)
def test_the_pulse_of_the_stick_mirrors_that_of_the_puck(v: str, side: str, other: str) -> None:
    """Two triangles with the same corners in time, opposite peaks, equal and opposite areas; words as drawn."""
    found = solve("pulse", "F_max", m="160 g", u="-4", v=v, Deltat="15 ms", also="pair")
    part = found.parts[-1]
    assert part.figure
    lines = [item.points for item in part.figure.items if isinstance(item, Curve) and item.kind == "graph"]
    puck, stick = (np.array(line) for line in lines)
    zero = puck[0][1]
    assert puck[:, 0] == pytest.approx(stick[:, 0])
    assert puck[:, 1] - zero == pytest.approx(zero - stick[:, 1])
    assert (puck[1][1] > zero) == (side == "above")
    assert part.points[0].words == f"The triangle of the puck lies {side} the time axis, that of the stick {other} it."
    assert "pair" not in {one.key for one in solve("pulse", "Deltap", m="1 kg", u="1", v="2", also="pair").parts}


# --- what cannot be ---

THEY = {"m1": "2", "u1": "5", "m2": "3", "u2": "-2"}
REFUSED = (
    (
        "impulse",
        "m",
        {"u": "20", "v": "-15", "Deltat": "20 ms", "F_net": "200 N"},
        "Directions disagree: the net force and the change in velocity must point the same way. Check the signs of the"
        " velocities and of the force.",
    ),
    (
        "pulse",
        "Deltat",
        {"m": "160 g", "u": "-4", "v": "6", "F_max": "-300 N"},
        "Directions disagree: the net force and the change in velocity must point the same way. Check the signs of the"
        " velocities and of the force.",
    ),
    ("impulse", "F_net", {"m": "0 kg", "u": "20", "v": "-15", "Deltat": "20 ms"}, "Mass must be greater than zero."),
    ("impulse", "F_net", {"m": "1 kg", "u": "20", "v": "-15", "Deltat": "0 s"}, "Time must be greater than zero."),
    (
        "part",
        "v2",
        {**THEY, "v1": "3"},
        "They would pass through each other: afterwards the first, on the left, cannot be the faster one to the right."
        " Check the velocities and their signs, or choose “the first goes through the second”.",
    ),
    (
        "part",
        "v2",
        {**THEY, "v1": "-1", "how": "pierce"},
        "It does not get through: afterwards the first must still be the faster one to the right. Check the velocities,"
        " or choose “collide and part again”.",
    ),
    (
        "part",
        "v2",
        {**THEY, "v1": "0,8", "how": "pierce"},  # as fast as the second: it stays inside
        "It does not get through",
    ),
    (
        "part",
        "v2",
        {**THEY, "v1": "6", "how": "pierce"},
        "Needs an explosion or spring: the total kinetic energy would rise",
    ),
    (
        "part",
        "v2",
        {**THEY, "v1": "-5"},
        "Needs an explosion or spring: the total kinetic energy would rise from 31,00 J to 57,67 J. In a collision it"
        " cannot rise; check the numbers.",
    ),
    (
        "part",
        "m2",
        {"m1": "2", "u1": "5", "u2": "1", "v1": "-1", "v2": "1"},
        "No mass fits: these velocities would need a mass of zero or less. Check the directions.",
    ),
    (
        "part",
        "m2",
        {"m1": "2", "u1": "5", "u2": "1", "v1": "-1", "v2": "0"},
        "No mass fits: these velocities would need a mass of zero or less. Check the directions.",
    ),
    (
        "part",
        "v2",
        {**THEY, "u2": "6", "v1": "1"},
        "They never meet: the first is on the left and must be the faster one to the right. Check the velocities.",
    ),
    (
        "elastic",
        "m2",
        {"m1": "2", "u1": "5", "u2": "1", "v1": "6"},
        "No mass fits: these velocities would need a mass of zero or less. Check the directions.",
    ),
    (
        "spring",
        "v2",
        {"m1": "2", "m2": "3", "u": "0", "v1": "1"},
        "They would pass through each other: the spring drives the first, on the left, away from the second. Check the"
        " velocities and their signs.",
    ),
    (
        "floor",
        "N",
        {"m": "400 g", "u": "6", "v": "4", "Deltat": "0,1 s"},
        "The floor only pushes: these velocities would need a pull. The ball moves downwards before (a minus sign) and"
        " upwards, or not at all, afterwards.",
    ),
    (
        "floor",
        "N",
        {"m": "400 g", "u": "6", "v": "8", "Deltat": "0,1 s"},
        "The ball does not come down: to hit the floor it moves downwards just before. Give its velocity a minus sign.",
    ),
    (
        "floor",
        "N",
        {"m": "400 g", "u": "-6", "v": "-1", "Deltat": "0,1 s"},
        "The ball cannot go through the floor: just afterwards it is at rest or moves upwards. Check the velocities.",
    ),
    (
        "floor",
        "v",
        {"m": "400 g", "u": "-6", "N": "3 N", "Deltat": "0,1 s"},
        "The floor only pushes: to stop the ball, its force must be larger than the weight. Check the numbers.",
    ),
    (
        "market",
        "",
        {"m1": "100 kg", "u1": "1", "m2": "50 kg", "u2": "2", "Deltat": "0,2 s"},
        "They never meet: the first is on the left and must be the faster one to the right. Check the velocities.",
    ),
)


@pytest.mark.parametrize(("key", "find", "typed", "sentence"), REFUSED)
def test_what_cannot_be_is_refused(key: str, find: str, typed: dict[str, str], sentence: str) -> None:
    """Each refusal gives its reason and what to do."""
    assert sentence in refused(key, find, **typed).replace("\u00a0", " ")


# --- directions ---

SIGNED = ("u1", "u2", "v1", "v2", "u", "v", "F_net", "F_max", "Deltap")
TURNED = {"to the left": "to the right", "to the right": "to the left"}
MIRRORED = (
    ("part", "v2", {"m1": "2", "u1": "5", "m2": "3", "u2": "-2", "v1": "-1"}, ("1", "2")),
    ("elastic", "v1", {"m1": "3", "u1": "4", "m2": "1", "u2": "-1"}, ("1", "2")),
    ("spring", "v2", {"m1": "1,5", "m2": "2,5", "u": "0,5", "v1": "-2"}, ("1", "2")),
    ("impulse", "F_net", {"m": "60 g", "u": "24", "v": "-18", "Deltat": "8 ms"}, ()),
    ("pulse", "F_max", {"m": "60 g", "u": "24", "v": "-18", "Deltat": "8 ms"}, ()),
)


@pytest.mark.parametrize(("key", "find", "typed", "pair"), MIRRORED)
def test_a_mirror_turns_every_direction(key: str, find: str, typed: dict[str, str], pair: tuple[str, ...]) -> None:
    """In a mirror, left and right body changed over, the size stays and the words turn round."""
    over = {"1": "2", "2": "1"} if pair else {}

    def other(name: str) -> str:
        return f"{name[:-1]}{over[name[-1]]}" if name[-1] in over else name

    def mirror(name: str, text: str) -> str:
        return text if name not in SIGNED or text == "0" else text[1:] if text[0] == "-" else f"-{text}"

    first = solve(key, find, **typed)
    second = solve(key, other(find), **{other(name): mirror(name, text) for name, text in typed.items()})
    one, two = (
        {shown.name: (abs(shown.value), shown.direction.words if shown.direction else "") for shown in found.answers}
        for found in (first, second)
    )
    size, words = one[find]
    assert two[other(find)][0] == pytest.approx(size)
    assert two[other(find)][1] == TURNED[words]


@pytest.mark.parametrize("key", ["join", "part", "elastic", "spring", "impulse", "market", "canister", "bat"])
def test_velocity_arrows_point_the_way_of_the_values(key: str) -> None:
    """In every draw each velocity arrow of the sketches points to the right exactly if its value is above zero."""
    topic, question = topics.find(f"momentum.{key}")
    met = set()
    for level, seed in ((1, 1), (2, 2), (2, 3), (3, 4), (3, 5)):
        drawn = draw(topic, question, seed, level, 4)
        found = work(topic, question, read(question, drawn.inputs, drawn.find, variant=drawn.variant))
        assert found.figure
        for item in found.figure.items:
            if isinstance(item, Arrow) and item.kind == "velocity":
                named = found.values[item.label.replace("_", "")]
                assert (item.end[0] > item.start[0]) == (named > 0), (drawn, item.label)
                met.add(item.end[0] > item.start[0])
    assert met == {True, False}
