"""Strings that go slack and bodies that part, against every set of links tried with numpy."""

from __future__ import annotations

import itertools
import math
import random

import numpy as np
import pytest

from calc.model.questions import Refusal
from calc.topics.newton.situation_chain import needed
from calc.topics.newton.situation_shapes import SHAPES
from tests.topics.test_situation import USUAL, G, said, typed, worked


def numbers(form: dict[str, str]) -> dict[str, float]:
    """The numbers typed."""
    return {
        name: float(text.split("°")[0].split()[0].replace(",", ".")) for name, text in form.items() if text[0].isdigit()
    }


def alone(form: dict[str, str], way: float) -> list[tuple[float, float, float]]:
    """For each body its mass, and forwards what drives it and the friction of a body that slides along ``way``."""
    v, shape = numbers(form), SHAPES[form["chain"]]
    theta, phi, found = math.radians(v.get("theta", 0.0)), math.radians(v.get("phi", 0.0)), []
    noun, _, towards = form["force"].partition("-")
    at = {"pull-on": shape.on, "push-on": 1, "pull-back": 1, "push-back": shape.on}.get(form["force"])
    for n in range(1, shape.count + 1):
        m = v[f"m{n}"]
        if shape.hangs(n):
            found.append((m, -m * G if n == 1 and shape.behind else m * G, 0.0))
            continue
        own = v.get("P", 0.0) if n == at else 0.0
        presses = m * G * math.cos(theta) - own * math.sin(phi) * (1 if noun == "pull" else -1)
        drive = own * math.cos(phi) * (1 if towards == "on" else -1) - m * G * math.sin(theta)
        found.append((m, drive, -way * v.get(f"mu_k{n}", v["mu_k"]) * presses))
    return found


def apart(form: dict[str, str], way: float) -> tuple[tuple[bool, ...], list[float]]:
    """Which links act, and the acceleration of each body forwards: the set of links that agrees with itself."""
    bodies, touch = alone(form, way), SHAPES[form["chain"]].touch
    count = len(bodies)
    for acts in sorted(itertools.product((True, False), repeat=count - 1), key=lambda some: -sum(some)):
        rows, right = [], []
        for i, (m, drive, rub) in enumerate(bodies):  # unknown: a of each, then the pull in each link
            row = [0.0] * (2 * count - 1)
            row[i] = m
            if i < count - 1:
                row[count + i] = -1.0
            if i:
                row[count + i - 1] = 1.0
            rows.append(row)
            right.append(drive + rub)
        for i, tight in enumerate(acts):
            row = [0.0] * (2 * count - 1)
            if tight:
                row[i], row[i + 1] = 1.0, -1.0
            else:
                row[count + i] = 1.0
            rows.append(row)
            right.append(0.0)
        found = np.linalg.solve(np.array(rows), np.array(right))
        pulls, a = found[count:], found[:count]
        sign = -1.0 if touch else 1.0
        fits = (sign * pulls[i] >= -1e-9 if tight else sign * (a[i + 1] - a[i]) <= 1e-9 for i, tight in enumerate(acts))
        if all(fits):
            return acts, list(a)
    raise AssertionError(form)


def some(chance: random.Random) -> dict[str, str]:
    """A chain that moves, with coefficients of its bodies' own."""
    chain = chance.choice(("tow2", "tow3", "touch2", "touch3", "edge", "towedge", "ends"))
    forces = {"tow2": "pull-on", "tow3": "pull-back", "touch2": "push-on", "touch3": "push-back", "edge": "push-on"}
    force = chance.choice(("none", forces.get(chain, "none")))
    form = {"chain": chain, "force": force, "start": chance.choice(("on", "back"))}
    own = {"P": f"{chance.uniform(1, 90):.3f}", "theta": f"{chance.uniform(0, 30):.3f}°", "phi": "5°", "mu_s": "0,9"}
    own |= {f"m{n}": f"{chance.uniform(1, 9):.3f}" for n in (1, 2, 3)}
    form |= {name: words.replace(".", ",") for name, words in (USUAL | own).items() if name in needed(form)}
    for n in range(2, SHAPES[chain].count + 1):
        if not SHAPES[chain].hangs(n):
            form[f"mu_k{n}"] = f"{chance.uniform(0, 0.8):.3f}".replace(".", ",")
    return form


def test_accelerations_are_those_of_the_links_that_act() -> None:
    """300 chains: slack or not, and every acceleration, as the only set of links that agrees with itself has them."""
    chance, loose = random.Random(3), 0
    for _ in range(300):
        form = some(chance)
        try:
            _, plan, v, answer = worked(form)
        except Refusal:
            continue
        way = 1.0 if form["start"] == "on" else -1.0
        acts, a = apart(form, way)
        keys = {part.key for part in plan.parts}
        assert ("apart" in keys) == (not all(acts)), form
        assert answer.unproven == (), form
        if all(acts):
            continue
        loose += 1
        first = 0
        for i, one in enumerate(a):
            if i and not acts[i - 1]:
                first = i
            assert v[f"a_{first + 1}"] * way == pytest.approx(one, abs=1e-6), form
        for i, tight in enumerate(acts, 1):
            assert (f"link-{i}" in keys) == tight
            drawn = [point.words for part in plan.parts if part.kind == "draw" for point in part.points]
            assert any(words.startswith(("T₁:", "R₁:") if i == 1 else ("T₂:", "R₂:")) for words in drawn) == tight
    assert loose > 60


def test_a_string_that_goes_slack_is_told() -> None:
    """The rear body slides on while the front one is slowed more: it gains on it, and T₁ is zero."""
    form = typed("tow2", "none", "on", mu_s="0,6", mu_k="0,1") | {"mu_k2": "0,5"}
    _, plan, v, answer = worked(form)
    assert (
        said(answer, "apart")
        == "On their own they accelerate: the first body 0,98\u00a0m·s⁻² to the left; the second body 4,90\u00a0m·s⁻²"
        " to the left. So the first body gains on the second body: a string cannot push, it goes slack and T₁ = 0."
    )
    assert (v["a_1"], v["a_2"]) == pytest.approx((-0.98, -4.9))
    assert (
        next(part for part in plan.parts if part.key == "alone-1").ask
        == "Suppose the string no longer pulls. Calculate the acceleration of the first body."
    )


def test_bodies_that_part_are_told() -> None:
    """The other way about they touch no more: the front one moves away, and R₁ is zero."""
    form = typed("touch2", "none", "on", mu_s="0,6", mu_k="0,5") | {"mu_k2": "0,1"}
    answer = worked(form)[3]
    assert (
        said(answer, "apart")
        == "On their own they accelerate: the first body 4,90\u00a0m·s⁻² to the left; the second body 0,98\u00a0m·s⁻²"
        " to the left. So the second body moves away from the first body: they cannot pull each other, they part and"
        " R₁ = 0."
    )


def test_what_hangs_falls_freely_when_its_string_goes_slack() -> None:
    """A push that drives the body on the table faster than what hangs falls: that falls with g, downwards."""
    form = typed("edge", "push-on", P="150 N", phi="0°", m1="5 kg")
    _, _, v, answer = worked(form)
    assert v["a_2"] == pytest.approx(G)
    assert "the body that hangs 9,80\u00a0m·s⁻² downwards" in said(answer, "apart")


def test_one_may_stay_while_the_other_goes() -> None:
    """On a slope the smooth lower body slides down and the rough upper one is held: they touch no more."""
    form = typed("touch2", "none", theta="15°", mu_s="0,1", mu_k="0,05") | {"mu_s2": "0,8", "mu_k2": "0,7"}
    _, plan, v, answer = worked(form)
    keys = [part.key for part in plan.parts]
    assert {"alone-1", "rests-2", "holds-2"} <= set(keys)
    assert "It stays at rest: its acceleration is zero." in said(answer, "rests-2")
    assert v["f_2"] == pytest.approx(4 * G * math.sin(math.radians(15)))
    assert v["a_1"] == pytest.approx(G * (math.sin(math.radians(15)) - 0.05 * math.cos(math.radians(15))))
