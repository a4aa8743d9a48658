"""Over the edge of a table, on both sides of what friction can hold."""

from __future__ import annotations

import itertools
import random

import numpy as np
import pytest

from calc import topics
from calc.figures import Arrow
from calc.model.answers import WorkedAnswer
from calc.practice.drawing import DRAWS, draw
from calc.working.reading import read
from calc.working.working import work

G = 9.8
TOPIC, QUESTION = topics.find("newton.edge")


def worked(asked: str = "a", **typed: str) -> WorkedAnswer:
    """These boxes, worked."""
    return work(TOPIC, QUESTION, read(QUESTION, typed, asked))


def said(answer: WorkedAnswer, key: str) -> str:
    """The memo of a part in words."""
    return " ".join(point.words for point in next(part for part in answer.parts if part.key == key).points)


def text(value: float, unit: str = "") -> str:
    """A number as it is typed."""
    return f"{value:.6f}".replace(".", ",") + unit


def test_what_stays_and_what_moves_agree_with_two_equations() -> None:
    """100 pairs: with T − f = m₁a and m₂g − T = m₂a solved for a and T; where a is not above zero they stay."""
    chance, stayed = random.Random(2), 0
    for _ in range(100):
        m1, m2, mu = (round(chance.uniform(low, high), 6) for low, high in ((1, 9), (0.5, 5), (0, 0.9)))
        a, tension = np.linalg.solve([[m1, -1], [m2, 1]], [-mu * m1 * G, m2 * G])
        answer = worked(m1=text(m1, " kg"), m2=text(m2, " kg"), mu=text(mu))
        assert answer.unproven == ()
        if a > 0:
            assert (answer.values["a"], answer.values["T"]) == pytest.approx((a, tension))
            continue
        stayed += 1
        v = answer.values
        assert "a" not in v
        assert (v["T"], v["f"], v["N_1"]) == pytest.approx((m2 * G, m2 * G, m1 * G))
        just = worked(m1=text(m1, " kg"), m2=text(m2, " kg"), mu=text(v["mu_min"] * 0.999))
        assert 0 < just.values["a"] < 0.01
        assert "a" not in worked(m1=text(m1, " kg"), m2=text(m2, " kg"), mu=text(v["mu_min"] * 1.001)).values
    assert stayed > 20


def test_what_stays_is_told_drawn_and_reasoned() -> None:
    """The story tells of no motion; friction to the left is as long as T; the acceleration is zero."""
    answer = worked(m1="9 kg", m2="1 kg", mu="0,5")
    assert answer.story.startswith(
        "A crate on a level table is tied to a light string. The string runs to the right over a light pulley without"
        " friction at the edge, and a sandbag hangs from it. They are held at rest and then let go."
    )
    assert "moves" not in answer.story
    assert said(answer, "decide").replace("\u00a0", " ") == (
        "The weight that hangs is 9,80 N, not larger than 44,10 N, which static friction can reach at least. Static"
        " friction can hold it: they stay at rest."
    )
    assert said(answer, "still") == "The net force on each of them is zero. The acceleration is zero."
    drawn = next(part for part in answer.parts if part.key == "draw-1")
    assert drawn.figure
    assert "f: friction, to the left." in [point.words for point in drawn.points]
    arrows = {item.label: np.subtract(item.end, item.start) for item in drawn.figure.items if isinstance(item, Arrow)}
    assert arrows["f"] == pytest.approx(-arrows["T"])
    assert arrows["N"] == pytest.approx(-arrows["F_g"])
    assert arrows["T"][0] > 0 == pytest.approx(arrows["T"][1])
    directions = [step.direction.words for part in answer.parts for step in part.steps if step.direction]
    assert directions == ["to the left"]


def test_practice_draws_what_stays_by_the_newest_rule_alone() -> None:
    """Of 60 draws some stay; of those of the rule before none."""
    stayed = {DRAWS: 0, DRAWS - 1: 0}
    for rule, seed in itertools.product(stayed, range(60)):
        one = draw(TOPIC, QUESTION, seed, 1, rule)
        stayed[rule] += "mu_min" in worked(one.find, **{name: str(words) for name, words in one.inputs.items()}).values
    assert stayed[DRAWS] > 5
    assert stayed[DRAWS - 1] == 0
