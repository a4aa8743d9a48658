"""Gravitation: published cases, independent routes for every unknown, limits, the planets' table, refusals, words."""

import json
import math
import re
from pathlib import Path

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants as codata
from scipy import optimize

from calc.figures import Arrow
from calc.figures.bodies import Ball
from calc.marking.marking import mark_question
from calc.model.answers import WorkedAnswer
from calc.model.constants import Settings
from calc.model.questions import Refusal
from calc.practice.drawing import DRAWS, draw
from calc.topics import find, topics
from calc.working.reading import Refusals, read
from calc.working.working import work
from tests.cases import reckoned

G = 6.67e-11  # a school data sheet's
PUBLISHED = json.loads((Path(__file__).parent / "gravitation_published.json").read_text(encoding="utf-8"))
PAGE = (Path(__file__).parents[2] / "docs" / "gravitation.md").read_text(encoding="utf-8")
KEYS = [question.key for question in topics()["gravitation"].questions]


def solve(key: str, unknown: str = "", constants: Settings | None = None, **typed: str) -> WorkedAnswer:
    """The worked answer of ``gravitation.key``, without its figures."""
    topic, question = find(f"gravitation.{key}")
    return reckoned(topic, question, read(question, typed, unknown, constants))


def refusal(key: str, unknown: str = "", **typed: str) -> tuple[str | None, str]:
    """The field and the sentence of the one refusal of these data."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(key, unknown, **typed)
    found = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    return found.field, found.sentence


# --- published ---


def case_typed(case: dict) -> tuple[str, str, dict[str, str]]:
    """The question, the unknown and the boxes of a published case."""
    given_ = {name: one["value"] for name, one in case["given"].items()}
    if case["find"] == "F":
        return "force", "F", {n: f"{v!r} {'m' if n == 'r' else 'kg'}" for n, v in given_.items()}
    radius = given_.get("R", given_.get("r", given_.get("D", 0) / 2))
    # A sphere of the mean density rho has the mass (4/3) pi rho R^3.
    mass = given_.get("M") or 4 / 3 * math.pi * given_["rho"] * radius**3
    typed = {"M": f"{mass!r} kg", "R": f"{radius!r} m"}
    if "h" in given_:
        return "field", "g_h", typed | {"h": f"{given_['h']!r} m"}
    return "field", "g", typed


@pytest.mark.parametrize("case", PUBLISHED, ids=lambda case: case["id"])
def test_published_cases(case: dict) -> None:
    """Each published answer comes out, with the constants of its source and to its tolerance."""
    key, unknown, typed = case_typed(case)
    sheet = Settings(changed={"G": case["constants"]["G"]})
    found = solve(key, unknown, sheet, **typed).values[unknown]
    assert found == pytest.approx(case["published"]["value"], rel=case["published"]["rel_tol"])


def test_the_constant_is_codatas() -> None:
    """The school's G is CODATA's to three figures."""
    assert float(f"{codata.G:.2e}") == G == Settings().constant("G")


# Planets and Pluto: Physical Characteristics, Solar System Dynamics, Jet Propulsion Laboratory (NASA): mean radius
# in km and mass in 10^24 kg.
JPL = {
    "Mercury": (2439.4, 0.330114),
    "Venus": (6051.8, 4.86747),
    "Earth": (6371.0084, 5.97237),
    "Mars": (3389.50, 0.641712),
    "Jupiter": (69911.0, 1898.187),
}


def number(text: str) -> float:
    """A number of the page: "3,301 × 10²³"."""
    powers = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")
    size, _, power = text.replace(",", ".").partition(" × 10")
    return float(size) * 10 ** int(power.translate(powers) or 0)


def test_the_table_of_planets_is_the_sources() -> None:
    """Mass and radius are the source's to four figures, and g is what the question makes of them."""
    rows = re.findall(r"^\| (\w+) \| (\d.*?) \| (\d.*?) \| (\d.*?) \|$", PAGE, re.M)
    assert [row[0] for row in rows] == list(JPL)
    for name, mass, radius, g in rows:
        kilometres, septillions = JPL[name]
        assert number(mass) == pytest.approx(septillions * 1e24, rel=2e-4)
        assert number(radius) == pytest.approx(kilometres * 1e3, rel=2e-4)
        exact = solve("field", "g", M=f"{septillions}e24 kg", R=f"{kilometres} km").values["g"]
        assert number(g) == pytest.approx(exact, abs=0.006)


# --- independent routes ---

FORCE = {"m1": 4.8e24, "m2": 650.0, "r": 8.2e6, "F": 3094.943486020226}
UNITS = {"m1": "kg", "m2": "kg", "r": "m", "F": "N", "d": "m", "r_1": "m"}


@pytest.mark.parametrize("unknown", FORCE)
def test_every_unknown_of_the_law(unknown: str) -> None:
    """Sympy solves the law for each quantity; the distance is the positive root."""
    names = dict(zip(FORCE, sympy.symbols(list(FORCE), positive=True), strict=True))
    law = sympy.Eq(names["F"], sympy.Float(G) * names["m1"] * names["m2"] / names["r"] ** 2)
    known = {names[name]: value for name, value in FORCE.items() if name != unknown}
    (expected,) = sympy.solve(law.subs(known), names[unknown])
    typed = {name: f"{value!r} {UNITS[name]}" for name, value in FORCE.items() if name != unknown}
    assert solve("force", unknown, **typed).values[unknown] == pytest.approx(float(expected), rel=1e-9)


WORLD = {"M": "kg", "R": "m", "h": "m", "m": "kg", "g": "m/s^2", "g_h": "m/s^2", "w": "N", "w_h": "N"}
LEADS = [
    ("g", "M R"),
    ("M", "g R"),
    ("R", "M g"),
    ("w", "m M R"),
    ("m", "w g"),
    ("g", "w m"),
    ("g_h", "M R h"),
    ("g_h", "g R h"),
    ("h", "g g_h R"),
    ("h", "M R g_h"),
    ("R", "g g_h h"),
    ("M", "g_h R h"),
    ("g", "g_h R h"),
    ("w_h", "m g h R"),
    ("w_h", "w g_h g"),
    ("h", "w w_h m R"),
    ("m", "w_h M R h"),
    ("R", "M g_h h"),
]


@pytest.mark.parametrize(("unknown", "names"), LEADS)
@given(mass=st.floats(1e22, 1e27), radius=st.floats(1e6, 7e7), height=st.floats(1e5, 1e8), body=st.floats(1, 900))
def test_every_way_to_a_planets_quantity(
    unknown: str, names: str, mass: float, radius: float, height: float, body: float
) -> None:
    """A world made by plain arithmetic gives each of its quantities back, from whatever is told of it."""
    world = {"M": mass, "R": radius, "h": height, "m": body}
    world["g"] = G * mass / radius**2
    world["g_h"] = G * mass / (radius + height) ** 2
    world |= {"w": body * world["g"], "w_h": G * mass * body / (radius + height) ** 2}
    typed = {name: f"{world[name]!r} {WORLD[name]}" for name in names.split()}
    assert solve("field", unknown, **typed).values[unknown] == pytest.approx(world[unknown], rel=1e-6)


def test_the_height_at_which_a_quarter_is_left_is_the_radius() -> None:
    """At h = R g is a quarter of its value at the surface; 400 km above the Earth it is 8,69 m/s²."""
    assert solve("field", "h", g="8 m/s^2", g_h="2 m/s^2", R="5000 km").values["h"] == pytest.approx(5e6)
    earth = solve("field", "g_h", M="5.97e24 kg", R="6.37e6 m", h="400 km")
    assert f"{earth.values['g_h']:.2f}" == "8.69"
    assert solve("field", "g_h", g="9,8 m/s^2", R="6370 km", h="0 km").values["g_h"] == pytest.approx(9.8)


@given(st.floats(0.02, 50), st.floats(0.05, 20))
def test_another_planet_by_its_factors(a: float, b: float) -> None:
    """Two planets worked out whole have the ratio that the factors give, for every unknown."""
    mass, radius = 5e24, 6e6
    old, new = G * mass / radius**2, G * (a * mass) / (b * radius) ** 2
    factors = {"a": f"{a!r}", "b": f"{b!r}"}
    assert solve("compared", "f", **factors).values["f"] == pytest.approx(new / old)
    assert solve("compared", "g2", **factors, g1=f"{old!r} m/s^2").values["g2"] == pytest.approx(new)
    assert solve("compared", "g1", **factors, g2=f"{new!r} m/s^2").values["g1"] == pytest.approx(old)
    assert solve("compared", "a", f=f"{new / old!r}", b=factors["b"]).values["a"] == pytest.approx(a)
    assert solve("compared", "b", f=f"{new / old!r}", a=factors["a"]).values["b"] == pytest.approx(b)


@given(st.floats(1e20, 1e27), st.floats(1e20, 1e27), st.floats(1e6, 1e10))
def test_the_balance_point_is_where_the_net_force_vanishes(m1: float, m2: float, d: float) -> None:
    """scipy finds the zero of the net force between the bodies; it gives d and both masses back."""

    def net(share: float) -> float:
        return math.log(m1 / m2) - 2 * math.log(share / (1 - share))

    place = d * optimize.brentq(net, 1e-9, 1 - 1e-9)
    typed = {"m1": f"{m1!r} kg", "m2": f"{m2!r} kg", "d": f"{d!r} m", "r_1": f"{place!r} m"}
    for unknown, expected in (("r_1", place), ("m1", m1), ("m2", m2), ("d", d)):
        rest = {name: text for name, text in typed.items() if name != unknown}
        assert solve("balance", unknown, **rest).values[unknown] == pytest.approx(expected, rel=1e-5)


@pytest.mark.parametrize(
    ("m1", "m2", "told"),
    [
        ("9e24 kg", "4e24 kg", "r₁ = 9,00 × 10⁸ m"),  # beyond B, the smaller
        ("4e24 kg", "9e24 kg", "r₁ = −6,00 × 10⁸ m"),  # on the far side of A, the smaller
        ("4e24 kg", "4e24 kg", ""),
    ],
)
def test_the_outside_root_is_dropped_with_its_reason(m1: str, m2: str, told: str) -> None:
    """The second root is named with the reason why it is no answer; equal masses have none."""
    worked = solve("balance", "r_1", m1=m1, m2=m2, d="3e8 m")
    (step,) = next(part for part in worked.parts if part.key == "find").steps
    reason = (
        " It lies outside, beyond the body with the smaller mass. The two forces are equal in size there too, but they"
        " point the same way and cannot cancel: drop it."
    )
    assert step.method.replace("\N{NO-BREAK SPACE}", " ") == (f"The other root is {told}.{reason}" if told else "")


def test_the_whole_question_against_plain_arithmetic() -> None:
    """g, weight, height and the factor of the other world, from the law alone."""
    values = solve("lander", M="4,2e22 kg", R="1,4e6 m", m="240 kg", n="6,25", a="3", b="2").values
    assert values["g"] == pytest.approx(G * 4.2e22 / 1.4e6**2)
    assert values["w"] == pytest.approx(G * 4.2e22 * 240 / 1.4e6**2)
    up = G * 4.2e22 * 240 / (1.4e6 + values["h"]) ** 2
    assert values["w"] / up == pytest.approx(6.25)
    assert values["f"] == pytest.approx(0.75)


# --- refusals ---

OVERLAP = (
    "Bodies overlap: their centres must be at least as far apart as the two radii together. Check the distance and the"
    " radii."
)
MORE = (
    "More than at the surface: check. g becomes smaller the further one is from the planet, so type a smaller value"
    " for the height, or a larger one for the surface."
)
TWO = {"m1": "5e24 kg", "m2": "7e22 kg"}
REFUSED = [
    ("force", "F", {**TWO, "r": "0 m"}, "r", "Distance must be greater than zero."),
    ("force", "F", {**TWO, "r": "-4 m"}, "r", "Distance must be greater than zero."),
    ("force", "F", {**TWO, "r": "8000 km", "R1": "6400 km", "R2": "1700 km"}, "r", OVERLAP),
    ("force", "r", {**TWO, "F": "1e30 N", "R1": "6400 km", "R2": "1700 km"}, "R2", OVERLAP),
    ("force", "F", {"m1": "0 kg", "m2": "3 kg", "r": "2 m"}, "m1", "Mass must be greater than zero."),
    (
        "force",
        "r",
        {**TWO, "F": "0 N"},
        "F",
        "The force between two masses is never zero. Enter its size, above zero.",
    ),
    (
        "field",
        "g_h",
        {"M": "6e24 kg", "R": "6400 km", "h": "-5 km"},
        "h",
        "Only valid at or above the surface: type a height of zero or more, measured from the surface.",
    ),
    ("field", "h", {"g": "9,8 m/s^2", "g_h": "10,4 m/s^2", "R": "6400 km"}, None, MORE),
    ("field", "R", {"g": "9,8 m/s^2", "g_h": "10,4 m/s^2", "h": "400 km"}, None, MORE),
    ("field", "h", {"M": "6e24 kg", "R": "6400 km", "g_h": "10,4 m/s^2"}, None, MORE),
    ("field", "w", {"m": "3 kg", "g": "9,8 m/s^2", "g_h": "10,4 m/s^2"}, "g_h", MORE),
    (
        "compared",
        "f",
        {"a": "0", "b": "2"},
        "a",
        "A factor is greater than zero: 2 for doubled, 0,5 for halved, 1 for no change.",
    ),
    (
        "balance",
        "m2",
        {"m1": "5e24 kg", "d": "3e8 m", "r_1": "4e8 m"},
        "r_1",
        "The balance point lies between the bodies: its distance from A must be smaller than the distance between A and"
        " B. Check both distances.",
    ),
    (
        "lander",
        "",
        {"M": "4e22 kg", "R": "1e6 m", "m": "200 kg", "n": "1", "a": "2", "b": "3"},
        "n",
        "The weight becomes smaller with height: type a number greater than 1, such as 4 for a quarter.",
    ),
]


@pytest.mark.parametrize(("key", "unknown", "typed", "field", "sentence"), REFUSED)
def test_what_cannot_be_is_refused(
    key: str, unknown: str, typed: dict[str, str], field: str | None, sentence: str
) -> None:
    """Each refusal gives its reason, beside its box where one is to blame."""
    assert refusal(key, unknown, **typed) == (field, sentence)


def test_bodies_that_just_touch_are_no_overlap() -> None:
    """Centres exactly two radii apart are allowed."""
    assert solve("force", "F", **TWO, r="8100 km", R1="6400 km", R2="1700 km").values["F"] > 0


# --- pictures ---


@pytest.mark.parametrize("unknown", ["F", "m1"])
def test_the_two_forces_point_at_each_other(unknown: str) -> None:
    """The force on A points to B and the force on B to A, equally long, on the line of centres."""
    topic, question = find("gravitation.force")
    typed = {name: f"{value!r} {UNITS[name]}" for name, value in FORCE.items() if name != unknown}
    figure = work(topic, question, read(question, typed, unknown)).figure
    assert figure is not None
    a, b = sorted(item.centre[0] for item in figure.items if isinstance(item, Ball))
    on_a, on_b = sorted((item for item in figure.items if isinstance(item, Arrow)), key=lambda one: one.start[0])
    assert a < on_a.start[0] < on_a.end[0] < on_b.end[0] < on_b.start[0] < b
    assert on_a.end[0] - on_a.start[0] == pytest.approx(on_b.start[0] - on_b.end[0])
    assert "F at A points to the right. F at B points to the left." in figure.description


@pytest.mark.parametrize(
    ("unknown", "typed"),
    [("g", {"M": "6e24 kg", "R": "6400 km"}), ("w_h", {"m": "20 kg", "g": "9,8 m/s^2", "R": "6400 km", "h": "300 km"})],
)
def test_g_and_weight_point_to_the_centre(unknown: str, typed: dict[str, str]) -> None:
    """The arrow begins at the object and points to the centre of the planet, from outside if it is above."""
    topic, question = find("gravitation.field")
    figure = work(topic, question, read(question, typed, unknown)).figure
    assert figure is not None
    (planet,) = [item for item in figure.items if isinstance(item, Ball)]
    (arrow,) = [item for item in figure.items if isinstance(item, Arrow)]
    assert arrow.start[0] > arrow.end[0] >= planet.centre[0]
    assert (arrow.start[0] > planet.radius) == (unknown == "w_h")
    assert "towards the centre of the planet" in figure.description
    hidden = figure.without([unknown])
    assert hidden is None or not [item for item in hidden.items if isinstance(item, Arrow)]


# --- mistakes ---

SLIPS = [
    ("force", "F", {**TWO, "r": "4e8 m"}, G * 5e24 * 7e22 / 4e8, "not-squared"),
    ("force", "F", {**TWO, "r": "4e8 m"}, 9.8 * 5e24 * 7e22 / 4e8**2, "field-for-constant"),
    ("force", "r", {**TWO, "F": "2e20 N"}, G * 5e24 * 7e22 / 2e20, "root-omitted"),
    ("field", "g_h", {"M": "6e24 kg", "R": "6400 km", "h": "900 km"}, G * 6e24 / 9e5**2, "height-as-distance"),
    ("field", "g_h", {"M": "6e24 kg", "R": "6400 km", "h": "900 km"}, G * 6e24 / 6.4e6**2, "height-ignored"),
    ("field", "g", {"M": "6e24 kg", "R": "6400 km"}, G * 6e24 / 12.8e6**2, "diameter"),
    ("field", "w", {"m": "60 kg", "g": "3,7 m/s^2"}, 60.0, "mass-as-weight"),
    ("field", "h", {"g": "8 m/s^2", "g_h": "3 m/s^2", "R": "5000 km"}, 5e6 * math.sqrt(8 / 3), "not-subtracted"),
    ("balance", "r_1", {"m1": "9e24 kg", "m2": "4e24 kg", "d": "3e8 m"}, 9e8, "other-root"),
    ("compared", "f", {"a": "3", "b": "2"}, 1.5, "not-squared"),
]


@pytest.mark.parametrize(("key", "unknown", "typed", "wrong", "slip"), SLIPS)
def test_a_usual_mistake_is_named(key: str, unknown: str, typed: dict[str, str], wrong: float, slip: str) -> None:
    """The number that each mistake of the catalogue gives is recognised as that mistake."""
    _, question = find(f"gravitation.{key}")
    unit = question.find(unknown).unit if key != "compared" else ""
    unit = {"km": "m"}.get(unit, unit)
    found = read(question, typed, unknown)
    marked = mark_question(question.plan(found.data), found, {"find": {"value": f"{wrong!r} {unit}".strip()}})
    blamed = next(part.blamed or part.answer for part in marked if part.part.key == "find")
    assert blamed is not None
    assert slip in [one.key for suspect in blamed.fits for one in suspect.slips]


# --- practice ---


@pytest.mark.parametrize("key", KEYS)
def test_practice_draws_worlds_that_can_be(key: str) -> None:
    """At every level twelve draws give eleven sets of data at least, and keep the mistakes apart from the answer."""
    topic, question = find(f"gravitation.{key}")
    for level in (1, 2, 3):
        drawn = [draw(topic, question, seed, level, DRAWS) for seed in range(12)]
        assert len({json.dumps(one.inputs, sort_keys=True) for one in drawn}) >= 11
        assert sum(one.apart for one in drawn) >= 11


@pytest.mark.parametrize("unknown", ["a", "b", "d", "f"])
def test_a_factor_of_the_force_is_that_of_two_worked_forces(unknown: str) -> None:
    """The law worked before and after with masses and a distance of any size gives the same factors."""
    m1, m2, r = 3.2e23, 7.0e2, 4.1e6
    factors = {"a": 2.5, "b": 0.4, "d": 1.6}
    before, after = (G * (m1 * a) * (m2 * b) / (r * d) ** 2 for a, b, d in ((1.0, 1.0, 1.0), tuple(factors.values())))
    factors["f"] = after / before
    typed = {name: f"{value!r}" for name, value in factors.items() if name != unknown}
    found = solve("factors", unknown, **typed).values
    assert found[unknown] == pytest.approx(factors[unknown], rel=1e-9)
