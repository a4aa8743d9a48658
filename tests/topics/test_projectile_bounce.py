"""A bounce: sympy for every unknown, published speeds, the reference case, refusals, signs."""

import itertools
import re

import pytest
import sympy
from scipy import integrate

from calc import topics
from calc.figures import Arrow
from calc.figures.pieces import Dimension
from calc.model.questions import Refusal
from calc.practice.drawing import draw
from calc.topics.projectile.equations import other_sign
from calc.working.reading import read
from calc.working.working import work
from tests.topics.asking import mistakes_said
from tests.topics.test_projectile import G, published, refused, solve, value

# h₁ = 2 m, h₂ = 1,2 m, 0,2 kg, 50 ms (a common case): the rest by hand
DATA = {"h_1": 2.0, "h_2": 1.2, "m": 0.2, "Deltat": 0.05}
V1, V2 = -((2 * G * 2) ** 0.5), (2 * G * 1.2) ** 0.5
ALL = {
    **DATA,
    "v_1": V1,
    "v_2": V2,
    "Deltav": V2 - V1,
    "F_net": 0.2 * (V2 - V1) / 0.05,
    "N": 0.2 * (V2 - V1) / 0.05 + 0.2 * G,
}
UNITS = {"h_1": "m", "h_2": "m", "m": "kg", "Deltat": "s", "N": "N", "F_net": "N"}


def typed(*names: str) -> dict[str, str]:
    """The boxes for these names."""
    return {name: f"{ALL[name]:.13g} {UNITS.get(name, 'm/s')}" for name in names}


@pytest.mark.parametrize(
    ("find", "names"),
    [
        ("v_1", "h_1"),
        ("h_1", "v_1"),
        ("v_2", "h_2"),
        ("h_2", "v_2"),
        ("Deltav", "h_1 h_2"),
        ("v_2", "v_1 Deltav"),
        ("h_2", "h_1 Deltav"),
        ("F_net", "h_1 h_2 m Deltat"),
        ("N", "h_1 h_2 m Deltat"),
        ("m", "h_1 h_2 N Deltat"),
        ("Deltat", "h_1 h_2 m N"),
        ("h_2", "h_1 m Deltat N"),
    ],
)
def test_every_unknown(find: str, names: str) -> None:
    """Sympy solves energy before and after, the change in velocity and the impulse together for each of them."""
    letters = {name: sympy.Symbol(name, real=True) for name in ALL}
    laws = [
        letters["v_1"] + sympy.sqrt(2 * G * letters["h_1"]),
        letters["v_2"] - sympy.sqrt(2 * G * letters["h_2"]),
        letters["Deltav"] - letters["v_2"] + letters["v_1"],
        letters["F_net"] * letters["Deltat"] - letters["m"] * letters["Deltav"],
        letters["N"] - letters["F_net"] - letters["m"] * G,
    ]
    known = {letters[name]: ALL[name] for name in names.split()}
    left = [law.subs(known) for law in laws]
    unknown = sorted({s for law in left for s in law.free_symbols}, key=str)
    used = [law for law in left if law.free_symbols and find_needs(law, left, letters[find])]
    start = [ALL[str(s)] * 1.01 for s in unknown if any(s in law.free_symbols for law in used)]
    names_used = [s for s in unknown if any(s in law.free_symbols for law in used)]
    solution = sympy.nsolve(used, names_used, start)
    expected = float(solution[names_used.index(letters[find])])
    assert value("bounce", find, **typed(*names.split())) == pytest.approx(expected, rel=1e-9)


def find_needs(law: sympy.Expr, laws: list[sympy.Expr], target: sympy.Symbol) -> bool:
    """Whether an equation belongs to the smallest set that holds as many equations as unknowns and the target."""
    for size in range(1, len(laws) + 1):
        for some in itertools.combinations([one for one in laws if one.free_symbols], size):
            letters = set().union(*(one.free_symbols for one in some))
            if target in letters and len(letters) == size:
                return law in some
    return False


def test_published_bounce() -> None:
    """A soft ball dropped 1,50 m that rises 1,10 m: speed before, and the mean acceleration of the contact."""
    (h1,), speed = published("bounce-before", "h1")
    assert -value("bounce", "v_1", h_1=f"{h1} m") == speed
    (h1, h2, lasting), acceleration = published("bounce-contact-a", "h1", "h2", "dt")
    assert value("bounce", "Deltav", h_1=f"{h1} m", h_2=f"{h2} m") / lasting == acceleration
    force = value("bounce", "F_net", h_1=f"{h1} m", h_2=f"{h2} m", m="0,5 kg", Deltat=f"{lasting} s")
    assert force / 0.5 == acceleration


def test_the_contact_is_integrated() -> None:
    """Under the floor's force and its weight the body turns its velocity round within the contact."""
    force = value("bounce", "N", **typed(*DATA))
    found = integrate.solve_ivp(lambda t, v: [force / 0.2 - G], (0, 0.05), [V1], rtol=1e-10)
    assert found.y[0][-1] == pytest.approx(V2)
    assert force == pytest.approx(46.40, abs=0.005)


@pytest.mark.parametrize("positive", ["up", "down"])
def test_directions_of_a_bounce(positive: str) -> None:
    """Before it is downwards, afterwards, the change and the net force upwards, whichever direction is positive."""
    said = {}
    for find in ("v_1", "v_2", "Deltav", "F_net"):
        found = solve("bounce", find, positive=positive, **typed(*DATA))
        said[find] = [shown.direction.words for shown in found.answers if shown.direction]
    assert said == {"v_1": ["downwards"], "v_2": ["upwards"], "Deltav": ["upwards"], "F_net": ["upwards"]}


@pytest.mark.parametrize(("positive", "less"), [("up", "N less the weight"), ("down", "mg less N")])
def test_the_mass_of_what_bounces_follows_in_one_step(positive: str, less: str) -> None:
    """It stands in the momentum and in the weight, so both laws are put together, and the step says how."""
    found = solve("bounce", "m", positive=positive, **typed("h_1", "h_2", "N", "Deltat"))
    step = found.parts[-1].steps[-1]
    assert step.what == f"Impulse equals change in momentum, with the net force as {less}"
    assert step.why == f"The net force is {less}, and the mass stands in both."
    assert step.plain == "The floor turns the body round and holds it up at the same time."


@pytest.mark.parametrize(
    ("find", "name", "usual", "odd"),
    [
        ("N", "F_net", "1 mN", "0,9 mN"),
        ("N", "F_net", "1 MN", "1,1 MN"),
        ("Deltav", "v_1", "-500 m/s", "-510 m/s"),
        ("h_2", "p", "1 %", "0,9 %"),
    ],
)
def test_what_is_very_small_or_large_in_a_bounce_is_doubted(find: str, name: str, usual: str, odd: str) -> None:
    """It is worked all the same, with a word beside the box. Common practice, no source."""
    besides = {"N": {"m": "1 mg"}, "Deltav": {"v_2": "0,1"}, "h_2": {"h_1": "2 m"}}[find]
    doubts = [
        len([one for one in solve("bounce", find, **besides, **{name: text}).warnings if " looks very " in one])
        for text in (usual, odd)
    ]
    assert doubts[1] == doubts[0] + 1


def test_the_ratio_of_the_speeds_is_the_root_of_that_of_the_heights() -> None:
    """A rebound to a quarter of the height has half the speed."""
    v1, v2 = value("bounce", "v_1", h_1="4 m"), value("bounce", "v_2", h_2="1 m")
    assert v2 / -v1 == pytest.approx(0.5)


@pytest.mark.parametrize(("v_1", "v_2"), [(6.0, 4.0), (5.0, 5.0), (7.0, 0.5)])
def test_the_share_of_the_energy_that_is_lost(v_1: float, v_2: float) -> None:
    """½mv² before and after: what is missing, in per cent of what there was; from it the speeds come back."""
    p = 100 * (v_1**2 - v_2**2) / v_1**2
    assert value("bounce", "p", v_1=f"{-v_1}", v_2=f"{v_2}") == pytest.approx(p)
    assert value("bounce", "v_2", v_1=f"{-v_1}", p=f"{p!r} %") == pytest.approx(v_2)
    assert value("bounce", "v_1", v_2=f"{v_2}", p=f"{p!r} %") == pytest.approx(-v_1)
    assert value("bounce", "h_1", v_2=f"{v_2}", p=f"{p!r} %") == pytest.approx(v_1**2 / (2 * G))


@pytest.mark.parametrize(
    ("find", "data", "sentence"),
    [
        (
            "N",
            {"h_1": "1,2 m", "h_2": "2 m", "m": "200 g", "Deltat": "50 ms"},
            "A bounce cannot add energy: it cannot rise higher than the height it fell from. Check both heights.",
        ),
        ("Deltav", {"v_1": "-4", "v_2": "5"}, "A bounce cannot add energy"),
        ("Deltav", {"h_1": "2 m", "h_2": "2,02 m"}, "A bounce cannot add energy"),  # one per cent too high
        ("v_2", {"v_1": "-4", "Deltav": "9"}, "A bounce cannot add energy"),
        (
            "Deltav",
            {"v_1": "4", "v_2": "3"},
            "Just before the bounce it moves downwards: give this velocity a minus sign.",
        ),
        (
            "v_2",
            {"v_1": "-4", "Deltav": "3"},
            "Just after the bounce it moves upwards, or stays at rest: this velocity cannot be negative.",
        ),
        (
            "Deltav",
            {"v_1": "-4", "v_2": "3", "positive": "down"},
            "Just before the bounce it moves downwards, which is positive: give this velocity without a minus sign.",
        ),
        (
            "Deltav",
            {"v_1": "4", "v_2": "3", "positive": "down"},
            "Just after the bounce it moves upwards, or stays at rest: this velocity cannot be positive.",
        ),
        (
            "h_2",
            {"h_1": "2 m", "p": "120 %"},
            "The share that is lost lies between 0 % and 100 %: a bounce adds no energy",
        ),
        ("h_1", {"v_1": "-4", "h_2": "-1 m"}, "Height it rises to cannot be negative."),
        ("F_net", {"m": "2 kg", "N": "15 N"}, "The floor only pushes: its force must be larger than the weight"),
    ],
)
def test_what_cannot_be_is_refused(find: str, data: dict[str, str], sentence: str) -> None:
    """Each refusal gives its reason and what to do."""
    assert sentence in refused("bounce", find, **data)


def test_it_may_stay_on_the_floor() -> None:
    """Without a rebound the change in velocity is that of stopping."""
    found = solve("bounce", "Deltav", h_1="2 m", h_2="0 m")
    assert found.values["Deltav"] == pytest.approx(-V1)
    assert "It does not rise again." in found.story


def test_practice_gives_the_loss_of_energy_in_place_of_the_second_height_now_and_then() -> None:
    """From the sixth rule of drawing on, and then h₂ stays empty; by the fifth never."""
    topic, question = topics.find("projectile.bounce")
    by_rule = {rule: [draw(topic, question, seed, 2, rule) for seed in range(40)] for rule in (5, 6)}
    given = {rule: [one for one in drawn if one.inputs["p"]] for rule, drawn in by_rule.items()}
    assert given[5] == []
    assert 3 < len(given[6]) < 30
    for one in given[6]:
        assert not one.inputs["h_2"]
        assert "of its kinetic energy" in work(topic, question, read(question, one.inputs, one.find)).story


EMPTY = dict.fromkeys((*ALL, "p"), "")
WHOLE = {"h_1": "2 m", "h_2": "1,2 m", "m": "200 g", "Deltat": "50 ms"}
TOGETHER = (
    "You subtracted the sizes. The velocity turns round: {} is positive and {} negative, so add the sizes for Δv."
)
# what is asked, the wrong number, the data with upwards positive, what is said then and with downwards positive
MISTAKES = [
    ("v_1", "39,2 m/s", {"h_1": "2 m"}, ("You stopped at the square. Take its square root: that is the size of v₁.",)),
    ("v_2", "23,52 m/s", {"h_2": "1,2"}, ("You stopped at the square. Take its square root: that is the size of v₂.",)),
    (
        "v_1",
        f"{V2:.6g} m/s",
        {"h_1": "2 m", "h_2": "1,2 m"},
        ("You took the other height. Use h₁ for v₁: the one that belongs to this part of the motion.",),
    ),
    (
        "v_2",
        f"{-V1:.6g} m/s",
        {"h_1": "2 m", "h_2": "1,2 m"},
        ("You took the other height. Use h₂ for v₂: the one that belongs to this part of the motion.",),
    ),
    (
        "Deltav",
        f"{-V1 - V2:.6g} m/s",
        {"h_1": "2 m", "h_2": "1,2 m"},
        (TOGETHER.format("upwards", "downwards"), TOGETHER.format("downwards", "upwards")),
    ),
    (
        "v_2",
        "16 m/s",
        {"v_1": "-6", "Deltav": "10"},
        (
            "You left out the minus sign of v₁. It points downwards: subtract its size from Δv.",
            "You left out the minus sign of Δv. It points upwards: subtract its size from v₁.",
        ),
    ),
    (
        "N",
        f"{ALL['F_net']:.6g} N",
        WHOLE,
        (
            "You left the weight out. The floor also carries the weight: add mg to Fₙₑₜ.",
            "You left the weight out. The floor also carries the weight: add mg to the size of Fₙₑₜ.",
        ),
    ),
    (
        "N",
        f"{ALL['F_net'] - 0.2 * G:.6g} N",
        WHOLE,
        ("You subtracted the weight. The floor makes the net force and carries the weight too: add mg.",),
    ),
    (
        "F_net",
        "46,4 N",
        {"N": "46,4 N", "m": "200 g"},
        (
            "You left the weight out. N also carries it: subtract mg from N.",
            "You left the weight out. N also carries it: subtract N from mg.",
        ),
    ),
    (
        "h_2",
        "0,4 m",
        {"h_1": "2 m", "p": "20 %"},
        ("You took the part that is lost. What is left is asked: use 1 − p/100.",),
    ),
    (
        "h_1",
        "6 m",
        {"h_2": "1,2 m", "p": "20 %"},
        ("You took the part that is lost. What is left is asked: use 1 − p/100.",),
    ),
    (
        "p",
        "60 %",
        {"h_1": "2 m", "h_2": "1,2 m"},
        ("You have the share that is left. The share that is lost is asked: subtract yours from the whole.",),
    ),
]


@pytest.mark.parametrize(("find", "value", "data", "said"), MISTAKES, ids=[f"{row[0]}-{row[1]}" for row in MISTAKES])
@pytest.mark.parametrize("positive", ["up", "down"])
def test_mistakes_are_told_in_words(
    find: str, value: str, data: dict[str, str], said: tuple[str, ...], positive: str
) -> None:
    """The wrong number is told as what gives it, in the signs of the positive direction."""
    given = {**EMPTY, **data, "positive": positive}
    if positive == "down":
        given |= {name: other_sign(given[name]) for name in ("v_1", "Deltav") if given[name]}
    assert said[-1 if positive == "down" else 0] in mistakes_said("projectile.bounce", given, "find", value, find)


@pytest.mark.parametrize(
    ("positive", "told"),
    [
        (
            "up",
            [
                "From v² = u² + 2aΔy with u = 0: it falls from rest over the whole of h₁. Upwards is positive, so v₁ is"
                " negative.",
                "From v² = u² + 2aΔy with v = 0: at the top of the rebound it is at rest. It leaves the floor upwards.",
                "A change is final minus initial. Upwards is positive, so v₁ goes in with its minus sign and the sizes"
                " add up.",
                "The net force during the contact changes the momentum of the body by mΔv, upwards.",
                "Two forces act: N upwards and the weight downwards. The net force is N less the weight.",
            ],
        ),
        (
            "down",
            [
                "From v² = u² + 2aΔy with u = 0: it falls from rest over the whole of h₁. Downwards is positive, and so"
                " is v₁.",
                "From v² = u² + 2aΔy with v = 0: at the top of the rebound it is at rest. It leaves the floor upwards."
                " Downwards is positive, so v₂ is negative.",
                "A change is final minus initial. Downwards is positive, so v₂ goes in with its minus sign and the"
                " sizes add up.",
                "The net force during the contact changes the momentum of the body by mΔv, upwards.",
                "Two forces act: N upwards, which is negative, and the weight downwards. The net force is mg less N.",
            ],
        ),
    ],
)
def test_the_reasons_of_a_bounce_in_both_senses(positive: str, told: list[str]) -> None:
    """Every step says which of the signs is the minus sign, and why the other root is dropped."""
    found = solve("bounce", "N", positive=positive, **WHOLE)
    steps = [step for part in found.parts for step in part.steps]
    assert [step.why for step in steps] == told
    dropped = [step.method.partition(". ")[2] for step in steps if step.method]
    assert dropped == [
        "It would point upwards, and it comes down: drop it.",
        "It would point downwards, and it leaves the floor upwards: drop it.",
    ]
    less = "N less the weight" if positive == "up" else "mg less N"
    assert found.checks[0].what.endswith(f"impulse equals change in momentum, with the net force as {less}")
    assert [step.plain for step in steps] == [
        "The higher it falls from, the faster it arrives.",
        "How high it comes tells how fast it left the floor.",
        "First it has to lose all of its velocity downwards, then gain some upwards.",
        "The shorter the contact, the larger the force.",
        "The floor has two jobs: it turns the body round, and it holds it up.",
    ]


@pytest.mark.parametrize("variant", range(3))
@pytest.mark.parametrize(("positive", "other"), [("up", "down"), ("down", "up")])
def test_every_telling_of_a_bounce_names_its_positive_direction(variant: int, positive: str, other: str) -> None:
    """What falls, that nothing but the floor matters, and which direction is positive; then the heights from the
    floor."""
    topic, question = topics.find("projectile.bounce")
    given = {**EMPTY, **WHOLE, "positive": positive}
    story = work(topic, question, read(question, given, "N", variant=variant)).story.replace("\N{NO-BREAK SPACE}", " ")
    opening, _, rest = story.partition(" It is let go from rest at A, ")
    assert rest == (
        "2 m above the floor. It rises to B, 1,2 m above the floor. It has a mass of 200 g. The contact lasts 50 ms."
    )
    assert re.search(rf"{positive}wards (is|as) positive", opening, re.IGNORECASE)
    assert f"{other}wards" not in opening.lower()
    assert re.search(r"air resistance .*(out|ignored)|leave air resistance out", opening, re.IGNORECASE)
    assert re.search(r"falls straight down|drops straight|let go above the floor", opening)


@pytest.mark.parametrize("positive", ["up", "down"])
def test_the_picture_of_a_bounce_falls_on_the_left_and_rises_on_the_right(positive: str) -> None:
    """The fall from A is the longer; v₁ points down, v₂ up, whichever direction is positive."""
    figure = solve("bounce", "N", positive=positive, **WHOLE).figure
    assert figure is not None
    arrows = {item.label: (item.start, item.end) for item in figure.items if isinstance(item, Arrow)}
    heights = {item.label: item.end[1] - item.start[1] for item in figure.items if isinstance(item, Dimension)}
    assert set(arrows) == {"v_1", "v_2", "+"}
    turned = {name: end[1] > start[1] for name, (start, end) in arrows.items()}
    assert turned == {"v_1": False, "v_2": True, "+": positive == "up"}
    assert arrows["v_1"][0][0] < arrows["v_2"][0][0]
    assert abs(heights["h_1"]) > abs(heights["h_2"]) > 0
    assert figure.title == "Before and after the bounce"


@pytest.mark.parametrize(
    ("find", "data", "allowed"),
    [
        ("Deltav", {"h_1": "2 m", "h_2": "2 m"}, True),  # as high as before
        ("Deltav", {"v_1": "-4", "v_2": "0"}, True),
        ("F_net", {"m": "2 kg", "N": "19,7 N"}, True),
        ("F_net", {"m": "2 kg", "N": "19,6 N"}, False),  # the weight alone
        ("h_2", {"h_1": "2 m", "p": "100 %"}, True),
        ("h_2", {"h_1": "2 m", "p": "0 %"}, True),
        ("h_2", {"h_1": "2 m", "p": "-1 %"}, False),
        ("h_2", {"h_1": "2 m", "p": "100,1 %"}, False),
        ("Deltav", {"v_1": "0", "v_2": "3"}, False),
    ],
)
def test_how_far_a_bounce_may_go(find: str, data: dict[str, str], allowed: bool) -> None:
    """All of the energy may be kept or lost, and no more; the floor pushes with more than the weight."""
    if allowed:
        solve("bounce", find, **data)
    else:
        refused("bounce", find, **data)


@pytest.mark.parametrize(
    ("find", "data", "field"),
    [
        ("Deltav", {"h_1": "1 m", "h_2": "2 m"}, "h_2"),
        ("Deltav", {"v_1": "-4", "v_2": "5"}, "v_2"),
        ("v_2", {"v_1": "-4", "Deltav": "9"}, None),
        ("Deltav", {"v_1": "4", "v_2": "3"}, "v_1"),
        ("Deltav", {"v_1": "-4", "v_2": "-3"}, "v_2"),
        ("F_net", {"m": "2 kg", "N": "15 N"}, "N"),
    ],
)
def test_a_refusal_stands_beside_what_was_typed(find: str, data: dict[str, str], field: str | None) -> None:
    """At the box that is to be changed; at none where the number was found on the way."""
    topic, question = topics.find("projectile.bounce")
    with pytest.raises(Refusal) as told:
        work(topic, question, read(question, {**EMPTY, "positive": "up", **data}, find))
    assert told.value.field == field
