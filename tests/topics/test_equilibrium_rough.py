"""A charged sphere on a rough slope, against the balance of forces worked out here."""

from __future__ import annotations

import math
import random
from typing import Any

import pytest

from calc.model.answers import WorkedAnswer
from calc.model.questions import Plan
from calc.practice.drawing import DRAWS, draw
from calc.topics import find
from calc.working.reading import Refusals, read
from calc.working.working import run, work

TOPIC, QUESTION = find("equilibrium.slope")
K, G = 9e9, 9.8
USUAL = {"want": "f", "string": "none", "m": "25 g", "theta": "35°", "Q1": "80 nC", "Q2": "50 nC", "r": "3 cm"}


def worked(**own: str) -> tuple[Plan, dict[str, float], WorkedAnswer]:
    """The question with these boxes."""
    found = read(QUESTION, {**USUAL, **own})
    plan = QUESTION.plan(found.data)
    return plan, run(plan, found.data.settings.constants()), work(TOPIC, QUESTION, found)


def said(answer: WorkedAnswer, key: str) -> str:
    """The memo of a part in words."""
    return " ".join(point.words for point in next(part for part in answer.parts if part.key == key).points)


def refusal(**own: str) -> tuple[str | None, str]:
    """The box and the sentence of a refusal."""
    with pytest.raises(Exception) as caught:
        worked(**own)
    error: Any = caught.value
    one = error.refusals[0] if isinstance(error, Refusals) else error
    return one.field, one.sentence


def test_what_friction_holds_agrees_with_the_forces_added_here() -> None:
    """200 set-ups: D, N, the least coefficient, friction and its direction, and the decision on both sides."""
    chance, seen = random.Random(2), set[str]()
    for _ in range(200):
        m, theta, r = chance.uniform(5, 40), chance.uniform(10, 60), chance.uniform(2, 6)
        q1, q2, mu = chance.uniform(-90, 90), chance.uniform(-90, 90), chance.uniform(0.05, 1.2)
        where, string = chance.choice(("below", "above")), chance.choice(("none", "up", "down"))
        pull = chance.uniform(5, 300)
        boxes = {"where": where, "string": string, "m": f"{m:.6f} g", "theta": f"{theta:.6f}°", "r": f"{r:.6f} cm"}
        boxes |= {"Q1": f"{q1:.6f} nC", "Q2": f"{q2:.6f} nC", "mu_s": f"{mu:.6f}"}
        boxes |= {"T": f"{pull:.6f} mN"} if string != "none" else {}
        plan, v, answer = worked(**{name: text.replace(".", ",") for name, text in boxes.items()})
        push = K * q1 * q2 * 1e-18 / (r / 100) ** 2 * (1 if where == "below" else -1)
        tension = {"none": 0.0, "up": 1.0, "down": -1.0}[string] * pull / 1000
        weight, across = (
            m / 1000 * G * part for part in (math.sin(math.radians(theta)), math.cos(math.radians(theta)))
        )
        drive = push + tension - weight
        assert v["D"] == pytest.approx(drive, rel=1e-4, abs=1e-7)
        assert v["N"] == pytest.approx(across, rel=1e-4)
        assert v["mu_min"] == pytest.approx(abs(drive) / across, rel=1e-4, abs=1e-7)
        slips = abs(drive) > mu * across
        words = said(answer, "decide")
        up = "up the slope" if drive > 0 else "down the slope"
        assert (f"It slips {up}." in words) == slips
        assert ("it stays at rest" in words) == (not slips)
        assert ("f" in v) == (not slips)
        seen.add(up if slips else "stays")
        drawn = [point.words for point in next(part for part in plan.parts if part.key == "draw").points]
        against = "down the slope" if drive > 0 else "up the slope"
        assert f"f: friction, {against}." in drawn
        lifts = "up the slope" if push > 0 else "down the slope"
        run_ = "towards" if q1 * q2 < 0 else "away from"
        assert f"F_E: the electrostatic force, {run_} the fixed charge, {lifts}." in drawn
        assert answer.unproven == ()
    assert seen == {"up the slope", "down the slope", "stays"}


def test_the_limit_is_the_least_coefficient() -> None:
    """Just below it slips, just above it stays."""
    least = worked()[1]["mu_min"]
    for factor, words in ((0.999, "D is larger"), (1.001, "D is smaller")):
        assert words in said(worked(mu_s=f"{least * factor:.8f}".replace(".", ","))[2], "decide")


def test_without_a_coefficient_it_is_at_rest_and_what_is_needed_is_found() -> None:
    """Friction and the least coefficient; nothing to decide."""
    plan, v, answer = worked()
    assert [part.key for part in plan.parts] == ["force", "normal", "along", "find", "needed", "draw"]
    assert v["f"] == pytest.approx(0.025 * G * math.sin(math.radians(35)) - 0.04, rel=1e-6)
    assert "is at rest on a rough plastic slope" in answer.story
    assert "is put down at rest on" in worked(mu_s="0,6")[2].story


def test_the_story_does_not_tell_what_happens() -> None:
    """The same words whether it stays or slips."""
    stories = [worked(mu_s=mu)[2].story.replace(mu, "") for mu in ("0,3", "0,9")]
    assert stories[0] == stories[1]


def test_the_drawing_is_as_it_was_chosen() -> None:
    """Dashed components of the weight where they are chosen, and arrows all of one length."""
    figures = {}
    for choice in ({}, {"weight": "components"}, {"lengths": "equal"}):
        plan, v, _ = worked(**choice)
        part = next(part for part in plan.parts if part.key == "draw")
        assert part.figure
        figures[str(choice)] = part.figure(v)
        assert ("dashed" in part.ask) == ("weight" in choice)
    assert len({figure.items for figure in figures.values()}) == 3


def test_a_smooth_slope_is_what_it_was() -> None:
    """No coefficient, or zero, and another unknown: worked without friction as ever."""
    boxes = {"want": "T", "string": "up"}
    plain = worked(**boxes)[2]
    assert [part.key for part in worked(**boxes, mu_s="0")[2].parts] == [part.key for part in plain.parts]
    assert "smooth" in plain.story


@pytest.mark.parametrize(
    ("own", "field", "sentence"),
    [
        (
            {"want": "N", "mu_s": "0,4"},
            "want",
            (
                "With friction nothing else follows: it may take any share up to its limit. Ask for the friction and"
                " whether it stays, or leave the coefficient empty."
            ),
        ),
        ({"want": "f,N"}, "want", "Ask for the friction alone: it is worked with all that it rests on."),
        ({"m": ""}, "m", "Fill in the mass of the sphere."),
        ({"theta": ""}, "theta", "Fill in the angle of the slope."),
        ({"string": "up"}, "T", "Fill in the pull of the string, or choose “there is no string”."),
        (
            {"T": "3 mN"},
            "T",
            "Without a string there is nothing to pull or to cut: leave this empty.",
        ),
        (
            {"F_E": "3 mN"},
            "F_E",
            "The charges and their distance give this force: leave this box empty, or leave them empty.",
        ),
        ({"r": ""}, "r", "Fill in the distance between the charges, or the electrostatic force."),
        (
            {"Q1": "", "Q2": "", "r": "", "F_E": "3 mN"},
            "acting",
            "Say whether the spheres attract or repel: the sign of one of the charges is not known.",
        ),
        ({"N": "0,2 N"}, "N", "The friction does not need this: leave this box empty."),
        ({"Q1": "0 nC"}, "Q1", "A zero charge gives no force, so this cannot be found."),
        ({"mu_s": "-0,2"}, "mu_s", "A coefficient of friction cannot be negative."),
    ],
)
def test_refusals_on_a_rough_slope(own: dict[str, str], field: str, sentence: str) -> None:
    """What is missing, too much or cannot follow is said beside its box."""
    assert refusal(**own) == (field, sentence)


def test_practice_asks_whether_it_stays() -> None:
    """From the newest rule on, at the higher levels, both outcomes come."""
    outcomes = set()
    for seed in range(60):
        one = draw(TOPIC, QUESTION, seed, 2, DRAWS)
        if one.inputs["want"] == "f":
            found = read(QUESTION, one.inputs, one.find, variant=one.variant)
            words = said(work(TOPIC, QUESTION, found), "decide")
            outcomes.add("slips" if "It slips" in words else "stays")
    assert outcomes == {"slips", "stays"}
