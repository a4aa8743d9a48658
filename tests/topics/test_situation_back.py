"""The situation page solved backwards, against the equations of all bodies solved at once."""

from __future__ import annotations

import math
import random
import re
from collections import Counter
from typing import Any

import pytest

from calc.language.expressions import expression
from calc.model.answers import WorkedAnswer
from calc.model.questions import Plan, Refusal
from calc.practice.drawing import DRAWS
from calc.topics import find
from calc.topics.newton.situation_back import ABSENT
from calc.topics.newton.situation_chain import START, needed
from calc.topics.newton.situation_shapes import SHAPES
from calc.working.reading import Refusals, read
from calc.working.working import run, work
from tests import cases
from tests.topics.test_situation import USUAL, solved

G = 9.8
TOPIC, QUESTION = find("newton.situation")
ASKED = ("m1", "m2", "m3", "P", "phi", "mu_s", "mu_k", "theta", "theta2")


def text(value: float, unit: str = "") -> str:
    """A number as it is typed, to many figures."""
    return f"{value:.9f}".replace(".", ",") + unit


def typed(find_: str, chain: str, force: str, start: str, **own: str) -> dict[str, str]:
    """A form with the boxes that apply; the coefficient that does not count stays empty."""
    form = {"chain": chain, "force": force, "start": start}
    spare = "mu_k" if start.startswith("slips") else "mu_s"
    form |= {name: words for name, words in USUAL.items() if name in needed(form) - {find_, spare}}
    return form | own


def worked(form: dict[str, str], find_: str) -> tuple[Plan, dict[str, float], WorkedAnswer]:
    """A form, worked for what is asked."""
    found = read(QUESTION, form, find_)
    plan = QUESTION.plan(found.data)
    return plan, run(plan, found.data.settings.constants()), work(TOPIC, QUESTION, found)


def refusal(form: dict[str, str], find_: str) -> tuple[str | None, str]:
    """The box and the sentence of a refusal."""
    with pytest.raises(Exception) as caught:
        worked(form, find_)
    error: Any = caught.value
    one = error.refusals[0] if isinstance(error, Refusals) else error
    return one.field, one.sentence


def does(form: dict[str, str], find_: str, value: float) -> dict[str, float]:
    """a along the motion and the forces between bodies with what was found put in: one linear system, as numpy has it.

    What is about to slip slides with μₛ for μₖ at a constant velocity.
    """
    way = -1.0 if form["start"].endswith("back") else 1.0
    unit = "°" if find_ in ("theta", "theta2", "phi") else ""
    whole = {"theta": "0°", "phi": "0°", "P": "0", "mu_k": "0", "mu_s": "0"} | form
    whole |= {find_: text(math.degrees(value) if unit else value, unit)}
    if form["start"].startswith("slips"):
        whole["mu_k"] = whole["mu_s"]
    numbers = {name: words.replace("- ", "-") for name, words in whole.items() if name not in ("a", *LINKS)}
    right = solved(numbers, way)
    return {"a": right["a"] * way} | {
        name: right[f"L{name[2]}"] * (1 if name[0] == "T" else -1) for name in LINKS if f"L{name[2]}" in right
    }


LINKS = ("T_1", "T_2", "R_1", "R_2")


def random_form(chance: random.Random) -> tuple[dict[str, str], str]:
    """Any choices and numbers, most of which fit together."""
    chain = chance.choice(tuple(SHAPES))
    shape = SHAPES[chain]
    force = "none"
    if not shape.behind:
        force = chance.choice(
            ("pull-back",) if shape.ahead else ("push-on", "push-back") if shape.touch else ("pull-on",)
        )
    start = chance.choice([key for key, _ in START.options if key != "rest"])
    slips = start.startswith("slips")
    there = needed({"chain": chain, "force": force}) - {"mu_k" if slips else "mu_s"}
    asked = chance.choice(sorted(there))
    numbers = {name: text(chance.uniform(1, 10)) for name in ("m1", "m2", "m3")}
    numbers |= {"theta": chance.choice(("0°", text(chance.uniform(5, 60), "°")))}
    numbers |= {"theta2": text(chance.uniform(5, 60), "°")}
    if shape.ridge and chance.random() < 0.6:
        force = "none"
    numbers |= {"phi": chance.choice(("0°", text(chance.uniform(5, 70), "°"))), "P": text(chance.uniform(10, 120))}
    numbers |= {"mu_s": text(chance.uniform(0.2, 0.8)), "mu_k": text(chance.uniform(0.05, 0.3))}
    form = {"chain": chain, "force": force, "start": start}
    form |= {name: words for name, words in numbers.items() if name in there - {asked}}
    if start.partition("-")[0] not in ("slips", "steady"):
        if shape.count > 1 and chance.random() < 0.5:
            form[f"{'R' if shape.touch else 'T'}_{chance.randint(1, shape.count - 1)}"] = text(chance.uniform(5, 60))
        else:
            form["a"] = text(chance.uniform(0.2, 5))
    return form, asked


def test_what_is_found_does_what_was_told() -> None:
    """400 set-ups: put into one linear system of all bodies, the value found gives the motion or the force given."""
    chance, done = random.Random(11), Counter[str]()
    for _ in range(900):
        form, asked = random_form(chance)
        try:
            _, v, answer = worked(form, asked)
        except (Refusal, Refusals):
            continue
        done[asked] += 1
        assert answer.unproven == (), (form, asked)
        wanted = next((name for name in ("a", *LINKS) if name in form), "a")
        given = float(form[wanted].replace(",", ".")) if wanted in form else 0.0
        assert does(form, asked, v[asked])[wanted] == pytest.approx(given, abs=1e-6), (form, asked, v[asked])
    assert set(done) == set(ASKED), done
    assert done.total() > 200


@pytest.mark.parametrize(
    ("asked", "form", "value"),
    [  # the catalogue's reference cases, recomputed by hand
        ("P", typed("P", "one", "pull-on", "slips-on", phi="30°", mu_s="0,6"), 25.21),
        ("m2", typed("m2", "edge", "none", "goes-on", m1="4 kg", mu_k="0,25", a="2,8"), 3.0),
        ("mu_k", typed("mu_k", "edge", "none", "goes-on", m1="4 kg", m2="3 kg", T_1="21 N"), 0.25),
        ("m1", typed("m1", "edge", "none", "goes-on", m2="3 kg", mu_k="0,25", T_1="21 N"), 4.0),
        ("theta", typed("theta", "one", "none", "slips-back", mu_s="0,4"), math.atan(0.4)),
        ("theta", typed("theta", "one", "none", "steady-back", mu_k="0,3"), math.atan(0.3)),
        ("m2", typed("m2", "pulley", "none", "goes-back", m1="5 kg", a="1,4"), 5 * (9.8 - 1.4) / (9.8 + 1.4)),
    ],
)
def test_reference_cases_backwards(asked: str, form: dict[str, str], value: float) -> None:
    """The force that just moves 5 kg, the mass, the coefficient and the tension over an edge, the angle of slipping."""
    assert worked(form, asked)[1][asked] == pytest.approx(value, abs=0.005)


@pytest.mark.parametrize("asked", ["m1", "P", "mu_k", "theta", "phi"])
def test_a_known_mistake_can_be_made_with_what_is_given(asked: str) -> None:
    """Where only one coefficient is given, no mistake is looked for that would need the other."""
    form = typed(asked, "one", "pull-on", "goes-on", P="40 N", theta="8°", a="1")
    form.pop(asked, None)
    plan, v, _ = worked(form, asked)
    known = {*plan.values, "g"}
    for step in plan.steps:
        known.add(step.makes)
        for mistake in step.mistakes:
            assert set(expression(mistake.instead).names) <= known, mistake
            assert expression(mistake.instead).value(v) != pytest.approx(v[step.makes])


def test_about_to_slip_the_limit_is_where_the_page_says_moves() -> None:
    """A thousandth more force than just slips moves it forwards, a thousandth less leaves it at rest."""
    form = typed("P", "tow2", "pull-on", "slips-on", theta="15°")
    least = worked(form, "P")[1]["P"]
    for size, words in ((1.001, "larger"), (0.999, "smaller")):
        again = form | {"start": "rest", "P": text(least * size), "mu_k": "0,3"}
        answer = worked(again, "")[2]
        decide = next(part for part in answer.parts if part.key == "decide")
        assert words in decide.points[0].words


@pytest.mark.parametrize(
    ("asked", "form", "other", "reason"),
    [
        ("theta", ("one", "pull-on", "slips-on", "40 N"), "103", "A slope makes at most 90° with the horizontal"),
        ("phi", ("one", "pull-on", "slips-on", "19 N"), "\\d\\d", "This angle fits as well; the smaller one is asked."),
        ("phi", ("one", "pull-on", "slips-on", "30 N"), "−", "It does not lie between 0° and 90° on its side"),
    ],
)
def test_the_other_root_is_shown_with_its_reason(asked: str, form: tuple[str, ...], other: str, reason: str) -> None:
    """The second angle of a sine or cosine is printed, and why it is not the answer."""
    chain, force, start, size = form
    answer = worked(typed(asked, chain, force, start, P=size, mu_s="0,4"), asked)[2]
    step = answer.parts[-1].steps[-1]
    assert re.match(rf"The other root is . = {other}[\d,]*°\. {reason}", step.method), step.method


@pytest.mark.parametrize(
    ("asked", "form", "field", "sentence"),
    [
        (
            "m2",
            typed("m2", "edge", "none", "goes-on", a="9,8"),
            "a",
            "A hanging mass cannot accelerate it at g or more: the string pulls it back. Give an acceleration below g.",
        ),
        (
            "P",
            typed("P", "one", "push-on", "slips-on", phi="70°"),
            "phi",
            (
                "No push at this angle moves it, however large: a harder push presses it down harder, and friction"
                " keeps up. Use a smaller angle."
            ),
        ),
        (
            "m1",
            typed("m1", "one", "none", "slips-back", theta="20°"),
            None,
            "This mass drops out of the equations: any mass does the same. Ask for something else.",
        ),
        (
            "mu_k",
            typed("mu_k", "one", "pull-on", "goes-on", a="12"),
            None,
            (
                "A coefficient of friction cannot be negative: with these numbers friction would have to help the"
                " motion. Check the acceleration and the forces."
            ),
        ),
        (
            "mu_k",
            typed("mu_k", "tow2", "pull-on", "goes-on", phi="0°", T_1="25 N"),
            "T_1",
            (
                "What is asked stands in the equations on both sides of this force, so it does not follow from it here."
                " Give the acceleration instead."
            ),
        ),
        (
            "m1",
            typed("m1", "one", "pull-back", "goes-on", a="6"),
            None,
            (
                "No mass fits: it would have to be zero or less. Check the forces, the acceleration and which way they"
                " move."
            ),
        ),
        (
            "P",
            typed("P", "one", "pull-back", "goes-back", theta="45°", a="1", mu_k="0,1"),
            "force",
            (
                "No force this way fits: it would have to act the other way. Turn the pull or push round, or check the"
                " numbers."
            ),
        ),
        (
            "P",
            typed("P", "one", "pull-on", "goes-on", phi="60°", a="9"),
            None,
            (
                "With these numbers the pull would lift it off the surface: no normal force would be left. Check the"
                " numbers."
            ),
        ),
        (
            "phi",
            typed("phi", "one", "pull-on", "slips-on", P="15 N"),
            "P",
            "Too small at every angle: even at the best angle this force does not do it. Use a larger one.",
        ),
        (
            "theta",
            typed("theta", "one", "pull-on", "slips-on", P="90 N"),
            None,
            (
                "No angle of the slope fits: the forces along it are too large or too small at every angle. Check the"
                " numbers."
            ),
        ),
        (
            "theta",
            typed("theta", "one", "pull-on", "slips-on", P="2 N"),
            None,
            "No slope fits: it would have to fall to the right, not rise. Check the numbers and which way they move.",
        ),
        (
            "mu_k",
            typed("mu_k", "one", "pull-on", "goes-on", a="8", mu_s="2"),
            "mu_s",
            (
                "With these numbers it would stay at rest: static friction can hold it. Choose that it moves at first,"
                " or check μₛ."
            ),
        ),
        (
            "mu_k",
            typed("mu_k", "one", "pull-on", "goes-on", a="5", mu_s="0,1"),
            "mu_s",
            "μₖ may not be larger than μₛ: friction would stop it as soon as it starts. Check the coefficients.",
        ),
        (
            "m1",
            typed("m1", "one", "pull-on", "goes-on", a="0"),
            "a",
            "What moves off from rest speeds up: give an acceleration above zero.",
        ),
        (
            "m1",
            typed("m1", "one", "pull-on", "rest"),
            "start",
            (
                "To find something else than what happens, the motion must be known: choose that they move off, move,"
                " are about to slip or have a constant velocity, and which way."
            ),
        ),
        (
            "m1",
            typed("m1", "one", "pull-on", "on"),
            "a",
            "Give the acceleration.",
        ),
        (
            "m1",
            typed("m1", "tow2", "pull-on", "on"),
            "a",
            "Give the acceleration, or the force between two of the bodies.",
        ),
        (
            "m1",
            typed("m1", "one", "pull-on", "steady-on", a="2"),
            "a",
            "The motion is known without it: leave this box empty.",
        ),
        (
            "mu_s",
            typed("mu_s", "one", "pull-on", "goes-on", a="2"),
            "start",
            "Once it slides, μₛ no longer counts: choose “about to slip”, or ask for μₖ.",
        ),
        (
            "mu_k",
            typed("mu_k", "one", "pull-on", "slips-on"),
            "start",
            "μₖ counts only while it slides: choose a motion, or ask for μₛ.",
        ),
        (
            "m2",
            typed("m2", "touch2", "push-on", "goes-on", T_1="5 N"),
            "T_1",
            "The bodies touch here: give the force between them, R, or leave this box empty.",
        ),
        (
            "m2",
            typed("m2", "tow2", "pull-on", "goes-on", R_1="5 N"),
            "R_1",
            "Strings join the bodies here: give the tension, T, or leave this box empty.",
        ),
        (
            "m2",
            typed("m2", "tow2", "pull-on", "goes-on", T_2="5 N"),
            "T_2",
            "These bodies have no such link between them: leave this box empty, or choose another arrangement.",
        ),
        (
            "P",
            typed("P", "tow2", "pull-on", "goes-on", T_1="5 N"),
            "T_1",
            "With this force between them they would not speed up this way. Check it, or which way they move.",
        ),
        (
            "",
            typed("", "one", "pull-on", "slips-on", mu_k="0,3"),
            "start",
            (
                "This says what happens already. Choose how it is at first, at rest or moving, or ask for a mass, the"
                " force, a coefficient or an angle."
            ),
        ),
        (
            "",
            typed("", "one", "pull-on", "rest", mu_s="0,4", T_1="3 N"),
            "T_1",
            "This follows from what is set up: leave this box empty, or ask for something else.",
        ),
    ],
)
def test_refusals_backwards(asked: str, form: dict[str, str], field: str | None, sentence: str) -> None:
    """What cannot be asked or does not fit is refused beside its box, with the reason and a remedy."""
    assert refusal(form, asked) == (field, sentence)


@pytest.mark.parametrize("name", ABSENT)
def test_what_is_not_there_cannot_be_asked(name: str) -> None:
    """A mass, an angle, a force or a coefficient that the arrangement does not have."""
    chain = "pulley" if name in ("theta", "mu_s", "mu_k") else "one"
    start = "slips-on" if name == "mu_s" else "steady-on"
    assert refusal(typed(name, chain, "none", start), name) == ABSENT[name]


WAYS = {"on": ("up the slope", "down the slope"), "back": ("down the slope", "up the slope")}


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize(
    ("kind", "told"),
    [
        ("goes", "It moves off from rest {}, with an acceleration of 2 m·s⁻²."),
        ("slips", "It is just about to slip {}."),
        ("steady", "It moves with a constant velocity {}."),
        ("", "It moves {}. The speed grows, with an acceleration of 2 m·s⁻²."),
        ("falls", "It moves {}. The speed falls, with an acceleration of 2 m·s⁻²."),
    ],
)
def test_the_motion_is_told_and_friction_acts_against_it(kind: str, told: str, way: str) -> None:
    """Both ways: the story names the direction of the motion, friction in the diagram has the opposite one."""
    a = {"goes": "2", "": "2", "falls": "-2"}.get(kind)
    start = way if kind in ("", "falls") else f"{kind}-{way}"
    # forwards it is pulled up, backwards down the slope
    form = typed(
        "P", "one", f"pull-{way}", start, theta="5°" if kind == "falls" else "10°", phi="0°", mu_k="0,5", mu_s="0,5"
    )
    form = {name: words for name, words in form.items() if name != "P"} | ({"a": a} if a else {})
    answer = worked(form, "P")[2]
    onwards, against = WAYS[way]
    assert told.format(onwards) in answer.story.replace("\u00a0", " ")
    drawn = next(part for part in answer.parts if part.key == "draw-1")
    assert f"f: friction on it, {against}." in [point.words for point in drawn.points]
    equations = next(part for part in answer.parts if part.key == "equations")
    which = "that in which it would slip" if kind == "slips" else "that of the motion"
    assert f"The positive direction is {which}: {onwards}." in equations.ask


@pytest.mark.parametrize(
    ("start", "told"),
    [
        ("goes-on", "They move off from rest, the body on the surface to the right, with an acceleration of 2 m·s⁻²."),
        ("slips-on", "They are just about to slip, the body on the surface to the right."),
        ("steady-on", "They move with a constant velocity, the body on the surface to the right."),
    ],
)
def test_a_motion_with_what_hangs_is_told_of_the_surface(start: str, told: str) -> None:
    """Which way, of the body on the surface: what hangs moves another way."""
    own = {"a": "2"} if start == "goes-on" else {}
    answer = worked(typed("m2", "edge", "none", start, **own), "m2")[2]
    assert told in answer.story.replace("\u00a0", " ")


@pytest.mark.parametrize("asked", ASKED)
def test_the_story_has_the_letter_of_what_is_asked_and_not_its_value(asked: str) -> None:
    """m₁, P, φ or θ stands in the story; the drawing is the same for other values of what is found."""
    start = "slips-on" if asked == "mu_s" else "goes-on"
    chain = {"m3": "tow3", "theta2": "ridge"}.get(asked, "tow2")
    own = {} if start == "slips-on" else {"a": {"m3": "0,2", "phi": "0,5"}.get(asked, "2")}
    own |= {"theta": "10°", "P": "50 N" if asked == "phi" else "85 N"}
    own |= {"P": "20 N", "mu_k": "0,1", "theta": "20°"} if chain == "ridge" else {}
    own.pop(asked, None)
    answer = worked(typed(asked, chain, "pull-on", start, **own), asked)[2]
    letters = {"m1": "m₁", "m2": "m₂", "m3": "m₃", "P": " P,", "phi": "an angle φ", "theta": "an angle θ"}
    letters["theta2"] = "that on the right an angle θ₂."
    assert letters.get(asked, "surface is rough") in answer.story
    assert answer.figure
    shown = re.sub(r"[^\d,]", "", answer.parts[-1].steps[-1].result.text.partition("=")[2])
    assert shown not in answer.story
    assert not asked.startswith("theta") or "25°" in answer.figure.description


def test_an_address_without_what_is_asked_asks_what_happens() -> None:
    """Links given out before anything else could be asked still open with what happens."""
    plan = worked({**{name: str(words) for name, words in QUESTION.example.items()}}, "")[0]
    assert [part.key for part in plan.parts][:4] == ["state", "normal", "along", "limit"]


def test_practice_draws_every_arrangement() -> None:
    """Of 100 draws a level each arrangement comes three times at least and slopes ten; none is the example."""
    for level in (1, 2, 3):
        drawn = [cases.drawn("newton.situation", seed, level, DRAWS) for seed in range(100)]
        chains = Counter(str(one.inputs["chain"]) for one in drawn)
        wanted = [chain for chain in SHAPES if level > 1 or chain != "ridge"]
        assert min(chains[chain] for chain in wanted) >= 3, (level, chains)
        assert sum(str(one.inputs["theta"]) not in ("", "0°") or one.find == "theta" for one in drawn) >= 10
        assert all(one.inputs != QUESTION.example for one in drawn)
        asked = {one.find for one in drawn}
        assert asked == {"a"} if level == 1 else len(asked) > 6


@pytest.mark.parametrize(
    ("form", "asked", "field", "sentence"),
    [
        (
            typed("m1", "tow2", "pull-on", "on", a="-4", mu_k="0,1", P="5 N", phi="0°") | {"mu_k2": "0,6"},
            "m1",
            "chain",
            (
                "With these numbers the string between the first body and the second body would have to push: it is"
                " slack, and each has a motion of its own, so that of the one says nothing about the other. Treat them"
                " one by one (“one body”), or check the numbers."
            ),
        ),
        (
            typed("m1", "touch2", "push-on", "on", a="-3,5", mu_k="0,6", P="5 N", phi="0°") | {"mu_k2": "0,1"},
            "m1",
            "chain",
            (
                "With these numbers the first body and the second body would have to pull each other: they part, and"
                " each has a motion of its own, so that of the one says nothing about the other. Treat them one by one"
                " (“one body”), or check the numbers."
            ),
        ),
    ],
)
def test_nothing_follows_through_a_slack_string(form: dict[str, str], asked: str, field: str, sentence: str) -> None:
    """What would need a string to push, or touching bodies to pull, is refused with why no number follows."""
    assert refusal(form, asked) == (field, sentence)
