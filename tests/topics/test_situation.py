"""The situation page: chains of the reader's own, against the equations of all bodies solved at once."""

from __future__ import annotations

import itertools
import math
from typing import Any

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from calc.model.answers import WorkedAnswer
from calc.model.questions import Plan
from calc.topics import find
from calc.topics.newton.situation_chain import LEAVE, needed
from calc.topics.newton.situation_shapes import SHAPES
from calc.working.leading import boxes
from calc.working.reading import Read, Refusals, read
from calc.working.working import run, work
from tests.test_arrows import arrows, bare, heading, turn

G = 9.8
LOWERED = str.maketrans("₁₂", "12")
TOPIC, QUESTION = find("newton.situation")
USUAL = {
    "m1": "5 kg",
    "m2": "4 kg",
    "m3": "9 kg",
    "theta": "0°",
    "theta2": "35°",
    "P": "60 N",
    "phi": "20°",
    "mu_s": "0,4",
    "mu_k": "0,3",
}
NUMBER = {"m1": 5.0, "m2": 4.0, "m3": 9.0}


def typed(chain: str, force: str = "none", start: str = "rest", **own: str) -> dict[str, str]:
    """A form with the boxes that apply."""
    choices = {"chain": chain, "force": force, "start": start}
    apply = needed(choices)
    return choices | {name: text for name, text in (USUAL | own).items() if name in apply}


def worked(form: dict[str, str]) -> tuple[Read, Plan, dict[str, float], WorkedAnswer]:
    """A form, worked."""
    found = read(QUESTION, form, "")
    plan = QUESTION.plan(found.data)
    return found, plan, run(plan, found.data.settings.constants()), work(TOPIC, QUESTION, found)


def refusal(form: dict[str, str]) -> tuple[str, str]:
    """The box and the sentence of a refusal."""
    with pytest.raises(Exception) as caught:
        worked(form)
    error: Any = caught.value
    one = error.refusals[0] if isinstance(error, Refusals) else error
    return one.field or "", one.sentence


def said(answer: WorkedAnswer, key: str) -> str:
    """The memo of a part in words."""
    return " ".join(point.words for point in next(part for part in answer.parts if part.key == key).points)


def solved(form: dict[str, str], way: float, further: dict[int, float] | None = None) -> dict[str, float]:
    """a (forwards positive) and the forces between bodies that slide forwards (way +1) or backwards, from one system of
    linear equations: N, f, link forces and a of all bodies are its unknowns. further: other forces forwards, by body;
    mu_k2, mu_k3 in the form: coefficients of a body's own."""
    number = {
        name: float(text.split("°")[0].split()[0].replace(",", ".")) for name, text in form.items() if text[0].isdigit()
    }
    shape, slope = SHAPES[form["chain"]], math.radians(number.get("theta", 0.0))
    n, names = shape.count, ["a"]
    names += [f"{kind}{i}" for kind in ("N", "f") for i in range(1, n + 1)] + [f"L{i}" for i in range(1, n)]
    rows, right = list[list[float]](), list[float]()

    def equation(terms: dict[str, float], value: float) -> None:
        rows.append([terms.get(name, 0.0) for name in names])
        right.append(value)

    force, phi = number.get("P", 0.0), math.radians(number.get("phi", 0.0))
    noun, _, towards = form["force"].partition("-")
    at = {"pull-on": shape.on, "push-on": 1, "pull-back": 1, "push-back": shape.on}.get(form["force"])
    for i in range(1, n + 1):
        m = number[f"m{i}"]
        along = {"a": -m, f"f{i}": 1.0, f"L{i}": 1.0, f"L{i - 1}": -1.0}  # a link counts as a pull
        if shape.hangs(i):
            equation({f"N{i}": 1.0}, 0.0)
            equation({f"f{i}": 1.0}, 0.0)
            equation(along, m * G if i == 1 and shape.behind else -m * G)
            continue
        own = force if i == at else 0.0
        theta = -math.radians(number["theta2"]) if shape.ridge and i > 1 else slope
        lifts = own * math.sin(phi) * (1 if noun == "pull" else -1)
        equation({f"N{i}": 1.0}, m * G * math.cos(theta) - lifts)
        equation({f"f{i}": 1.0, f"N{i}": way * number.get(f"mu_k{i}", number["mu_k"])}, 0.0)
        onwards = own * math.cos(phi) * (1 if towards == "on" else -1) + (further or {}).get(i, 0.0)
        equation(along, m * G * math.sin(theta) - onwards)
    return dict(zip(names, np.linalg.solve(np.array(rows), np.array(right)), strict=True))


MOVING = [
    typed("one", "push-on", theta="10°", P="90 N"),
    typed("one", "pull-back", "on"),
    typed("tow2", "pull-on"),
    typed("tow3", "pull-back", theta="25°"),
    typed("touch2", "push-on", P="80 N"),
    typed("touch3", "push-back", P="120 N"),
    typed("touch3", "push-on", "back", theta="20°", P="120 N"),
    typed("edge"),
    typed("edge", "pull-back", "on", theta="30°"),
    typed("towedge", theta="15°"),
    typed("ends"),
    typed("ends", "none", "back"),
    typed("pulley"),
    typed("pulley", "none", "on"),
    typed("ridge", "none", "on", theta="20°"),
    typed("ridge", "pull-on", theta="12°"),
    typed("ridge", "pull-back", "back", theta="50°"),
]


@pytest.mark.parametrize("form", MOVING, ids=lambda form: f"{form['chain']} {form['force']} {form['start']}")
def test_all_equations_at_once_give_the_same(form: dict[str, str]) -> None:
    """a, every normal force, friction and force between bodies agree with one linear system of all bodies."""
    _, plan, v, _ = worked(form)
    way = {"on": 1.0, "back": -1.0}.get(form["start"]) or math.copysign(1.0, v["D"])
    right = solved(form, way)
    assert v["a"] * way == pytest.approx(right["a"], abs=1e-9)
    for name, value in v.items():
        letter, _, place = name.partition("_")
        if letter in ("N", "f") and place.isdigit():
            assert value == pytest.approx(abs(right[f"{letter}{place}"]))
        elif letter in ("T", "R") and place:
            assert value == pytest.approx(right[f"L{place}"] * (1 if letter == "T" else -1))
    links = SHAPES[form["chain"]].count - 1
    assert sum(part.key.startswith("link-") for part in plan.parts) == links


def test_friction_decides_on_both_sides_of_its_limit() -> None:
    """Just below, at and just above the largest static friction: 19,6 N for 5 kg on the level with μs = 0,4."""
    for hangs, words in (("1,99 kg", "D is smaller"), ("2 kg", "they are the same"), ("2,01 kg", "D is larger")):
        _, _, v, answer = worked(typed("edge", m2=hangs))
        assert words in said(answer, "decide"), hangs
        assert (v.get("a", 0.0) > 0) == (hangs == "2,01 kg")
    assert v["f_smax"] == pytest.approx(0.4 * 5 * G)


def test_at_rest_friction_matches_and_the_tension_carries_the_weight() -> None:
    """A small body that hangs is held: T is its weight, friction as large, a zero."""
    _, _, v, answer = worked(typed("edge", m2="1 kg"))
    assert (v["T_1"], v["f_1"]) == pytest.approx((G, G))
    assert "acceleration is zero" in said(answer, "acceleration")
    assert "they stay at rest" in said(answer, "decide")


def test_what_is_zero_has_no_direction() -> None:
    """Equal weights at both ends: D and friction are zero, point nowhere, and have no arrow."""
    for form in (typed("ends", m1="5 kg", m3="5 kg"), typed("pulley", m1="5 kg", m2="5 kg")):
        _, plan, v, answer = worked(form)
        assert v["D"] == pytest.approx(0.0)
        for step in (step for part in answer.parts for step in part.steps if step.makes in ("D", "f_2")):
            assert step.direction is None
        assert "stay at rest" in said(answer, "decide")
        drawn = [point.words for part in plan.parts if part.kind == "draw" for point in part.points]
        assert not any("friction" in words for words in drawn)


def test_of_a_load_shared_by_several_frictions_the_sum_is_found() -> None:
    """Two rough bodies in tow at rest: the frictions add up to what is pulled, and that T cannot be found is said."""
    _, plan, _, answer = worked(typed("tow2", "pull-on", P="10 N", phi="0°"))
    assert [part.key for part in plan.parts] == ["state", "normal", "along", "limit", "decide", "shared"]
    assert (
        said(answer, "shared")
        == "Only the sum of the frictions can be found: it balances D, so it is 10,00\u00a0N, to the left. How they"
        " share it does not follow: each may have any size up to its own limit. So the tension in a string on the"
        " surface cannot be found."
    )
    _, plan, v, answer = worked(typed("touch2", "push-back", P="12 N", phi="0°"))
    assert "12,00\u00a0N, to the right." in said(answer, "shared")
    _, plan, v, _ = worked(typed("towedge", m3="1 kg"))
    assert [part.key for part in plan.parts][-2:] == ["shared", "link-2"]
    assert v["T_2"] == pytest.approx(G)


def slides(angle: float, mu_s: float, mu_k: float, upwards: float) -> tuple[float, float]:
    """Position when a body on a slope first stops and 1 s later, by integrating its motion; forwards is up."""
    down, across = G * math.sin(angle), G * math.cos(angle)

    def motion(_: float, y: np.ndarray) -> list[float]:
        return [y[1], -down - math.copysign(mu_k * across, y[1])]

    def stops(_: float, y: np.ndarray) -> float:
        return float(y[1])

    stops.terminal = True  # type: ignore[attr-defined]
    first = solve_ivp(motion, (0, 60), [0.0, upwards], events=stops, max_step=0.05)
    top = float(first.y[0, -1])
    if down <= mu_s * across:
        return top, top
    again = solve_ivp(motion, (0, 1), [top, -1e-9], max_step=0.05)
    return top, float(again.y[0, -1])


@pytest.mark.parametrize("angle", [10, 20, 21, 22, 23, 30, 45])
def test_what_slides_up_a_slope_stays_or_slides_back_as_its_motion_says(angle: int) -> None:
    """Whether it stays above tan θ = 0,4 is told as integration of the motion finds it."""
    _, _, v, answer = worked(typed("one", "none", "on", theta=f"{angle}°"))
    top, later = slides(math.radians(angle), 0.4, 0.3, 3.0)
    assert -(9.0) / (2 * v["a"]) == pytest.approx(top, rel=1e-4)
    words = said(answer, "motion")
    assert "slows down" in words
    assert ("start" in words and "move back" in words) == (later < top - 1e-6)
    assert ("stays at rest" in words) == (later >= top - 1e-6)


@pytest.mark.parametrize(("force", "words"), [("P", "speeds up"), ("f", "slows down")])
def test_what_moves_already_speeds_up_or_slows_down(force: str, words: str) -> None:
    """A pull above or below the kinetic friction."""
    size = "60 N" if force == "P" else "5 N"
    assert words in said(worked(typed("one", "pull-on", "on", P=size))[3], "motion")


MIRRORED = {"on": "back", "back": "on", "rest": "rest", "pull-on": "pull-back", "push-on": "push-back"}


@pytest.mark.parametrize("chain", ["one", "tow2", "tow3", "touch2", "touch3"])
@pytest.mark.parametrize("noun", ["pull", "push"])
def test_a_mirror_gives_the_same_sizes_and_turned_words(chain: str, noun: str) -> None:
    """On the level: the force and the order of the bodies turned round turn the words and keep every size."""
    if (noun == "pull") == chain.startswith("touch"):
        return
    count = SHAPES[chain].count
    masses = [f"m{n}" for n in range(1, count + 1)]
    turned = dict(zip(masses, [USUAL[name] for name in reversed(masses)], strict=True))
    _, plan, v, answer = worked(typed(chain, f"{noun}-on", P="90 N"))
    _, other, w, mirrored = worked(typed(chain, f"{noun}-back", P="90 N", **turned))
    for n in range(1, count + 1):
        assert w[f"N_{n}"] == pytest.approx(v[f"N_{count + 1 - n}"])
    assert (w["a"], w["D"]) == pytest.approx((v["a"], -v["D"]))
    right, left = said(answer, "decide"), said(mirrored, "decide")
    assert right.replace("right", "left") == left
    assert len(plan.parts) == len(other.parts)


EVERY = [
    typed(chain, force, start, theta=theta, P=size)
    for chain, force, start, theta, size in itertools.product(
        SHAPES,
        ("none", "pull-on", "push-on", "pull-back", "push-back"),
        ("rest", "on", "back"),
        ("0°", "25°"),
        ("12 N", "70 N"),
    )
]


def test_every_choice_is_worked_or_refused_with_a_sentence() -> None:
    """All arrangements, forces, motions, level and slope: checks agree, arrows agree with their words, or a reason."""
    told, done = set[str](), 0
    headings = {"to the right": 0, "to the left": 180, "upwards": 90, "straight down": 270}
    for form in EVERY:
        tilt = float(form.get("theta", "0°").rstrip("°"))
        try:
            _, plan, v, answer = worked(form)
        except Exception as error:
            one: Any = error.refusals[0] if isinstance(error, Refusals) else error  # type: ignore[attr-defined]
            told.add(one.sentence.split(":")[0].split(".")[0])
            continue
        done += 1
        assert answer.unproven == (), form
        for part in plan.parts:
            if part.kind == "draw" and part.figure:
                ways = headings | {"up the slope": tilt, "down the slope": tilt + 180}
                ways["away from the slope at right angles to it"] = tilt + 90
                heads = {bare(one.label): heading(one) for one in arrows(part.figure(v))}
                assert len(heads) == len(part.points), form
                for point in part.points:
                    label, _, words = point.words.rstrip(".").translate(LOWERED).partition(": ")
                    where, _, leans = words.split(", ", 1)[1].partition(", at φ ")
                    angle = ways[where]
                    if form["chain"] == "ridge" and part.key == "draw-2" and "slope" in where:
                        falls = {"up the slope": 145, "down the slope": -35}  # a slope of 35° that falls to the right
                        angle = falls.get(where, 55)
                    if leans:  # φ = 20°, away from the surface for a pull, into it for a push
                        onwards = where in ("to the right", "up the slope") or angle == -35
                        angle += 20 if onwards == leans.startswith("above") else -20
                    assert turn(heads[label.replace("_", "")], angle) < 0.2, (form, point.words)
    assert done > 150
    assert told == {
        "Both ends hold strings here, so there is no room for a pull or push",
        "The string to the pulley is in the way at the front",
        "Nothing acts along the surface and everything is at rest, so nothing happens",
        "A push would close the gap between bodies in tow, and the string would hang loose",
        "A pull would take bodies that touch apart",
        "A ridge has a slope on each side",
    } | told.intersection({"A string goes slack here", "The bodies part here"})


def test_what_lifts_off_is_refused_beside_the_force() -> None:
    """A pull of 60 N at 60° on 5 kg lifts it no sooner than its part across beats the weight."""
    heavy = 5 * G / math.sin(math.radians(60))
    worked(typed("one", "pull-on", phi="60°", P=f"{heavy - 0.1:.1f} N".replace(".", ",")))
    field, sentence = refusal(typed("one", "pull-on", phi="60°", P=f"{heavy + 0.1:.1f} N".replace(".", ",")))
    assert field == "P"
    assert (
        sentence
        == "The pull lifts it off the surface: no normal force is left. Use a smaller force or a smaller angle."
    )


@pytest.mark.parametrize("name", LEAVE)
def test_a_box_that_does_not_apply_is_refused_there(name: str) -> None:
    """What is typed into a box of another arrangement stays, with the reason beside it."""
    chain = "pulley" if name in ("theta", "mu_s", "mu_k", "m3") else "one"
    assert refusal(typed(chain) | {name: USUAL[name]}) == (name, LEAVE[name])


@pytest.mark.parametrize(
    ("chain", "force", "shown"),
    [
        ("one", "none", "m1 theta mu_s mu_k"),
        ("tow2", "pull-on", "m1 m2 theta P phi mu_s mu_k"),
        ("pulley", "none", "m1 m2"),
        ("ends", "none", "m1 m2 m3 mu_s mu_k"),
        ("towedge", "pull-back", "m1 m2 m3 theta P phi mu_s mu_k"),
    ],
)
def test_only_the_boxes_that_apply_are_shown(chain: str, force: str, shown: str) -> None:
    """The form of an arrangement has its own boxes and no other."""
    names = boxes(QUESTION, "", {"chain": chain, "force": force, "start": "rest"})
    assert " ".join(name for name in names if name not in ("chain", "force", "start")) == shown


def test_the_story_and_its_picture_do_not_tell_what_happens() -> None:
    """The same words and the same picture whether they stay or move."""
    for chain in ("one", "edge", "towedge"):
        light, heavy = ("0,1 kg", "9 kg")
        last = f"m{SHAPES[chain].count}"
        force = "pull-on" if chain == "one" else "none"
        sizes = ({"P": "1 N"}, {"P": "40 N"}) if chain == "one" else ({last: light}, {last: heavy})
        stories = []
        for own in sizes:
            answer = worked(typed(chain, force, **own))[3]
            assert answer.figure
            stories.append((answer.story.replace(next(iter(own.values())).replace(" ", "\u00a0"), ""), answer.figure))
        assert stories[0] == stories[1]
