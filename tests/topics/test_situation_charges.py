"""Charged bodies of a situation: in a field or beside a fixed charge, and a charge or distance found from the motion.

The independent route: the electrostatic force by Coulomb's law or as charge times field, put into one linear system of
all bodies with numpy.
"""

from __future__ import annotations

import itertools
import math
import random
from collections import Counter

import pytest

from calc.figures import Arrow, Dimension, Figure, Sphere
from calc.figures.chains import Fixed, chain
from calc.figures.pieces import Block, Text
from calc.model.answers import WorkedAnswer
from calc.model.questions import Refusal
from calc.practice.drawing import DRAWS, draw
from calc.topics.newton.situation_chain import needed
from calc.topics.newton.situation_shapes import SHAPES
from calc.working.leading import boxes
from calc.working.reading import Refusals, read
from calc.working.working import work
from tests import cases
from tests.test_figure_overlaps import all_faults
from tests.topics.test_situation import QUESTION, TOPIC, USUAL, said, solved, typed, worked
from tests.topics.test_situation_back import refusal, text
from tests.topics.test_situation_back import typed as typed_back
from tests.topics.test_situation_back import worked as worked_back
from tests.topics.test_situation_further import some_chain

K = 9.0e9  # N·m²·C⁻², as school data sheets round it
FORCES = {"tow2": "pull-on", "tow3": "pull-back", "touch2": "push-on", "touch3": "push-back", "edge": "pull-back"}
ON_SURFACE = tuple(name for name in SHAPES if name != "pulley")


def number(words: str) -> float:
    """A number as typed, without its unit."""
    return float(words.split()[0].replace(",", "."))


def electric(form: dict[str, str]) -> dict[int, float]:
    """The force on the charged body, forwards, by its place: unlike charges attract; a field drives a positive one."""
    name = next(name for name in ("Q1", "Q2", "Q3") if form.get(name))
    charge = number(form[name]) * 1e-6
    if form.get("field", "none") != "none":
        return {int(name[1]): charge * number(form["E"]) * (1 if form["field"] == "on" else -1)}
    towards = 1 if form["fixed"] == "on" else -1
    return {int(name[1]): -towards * K * charge * number(form["Q"]) * 1e-6 / number(form["r"]) ** 2}


def by_numpy(form: dict[str, str], way: float) -> dict[str, float]:
    """All unknowns of what slides this way; about to slip it slides with μₛ for μₖ."""
    plain = {"theta": "0°", "phi": "0°", "P": "0", "mu_k": "0", "mu_s": "0"} | form
    if form["start"].startswith("slips"):
        plain["mu_k"] = plain["mu_s"]
    plain = {name: words for name, words in plain.items() if name not in ("Q1", "Q2", "Q3", "Q", "r", "E", "a")}
    return solved(plain, way, electric(form))


def charged_form(chance: random.Random, chain_: str, start: str) -> dict[str, str]:
    """A set-up with a charged body in a field or beside a fixed charge."""
    shape = SHAPES[chain_]
    form = {"chain": chain_, "force": FORCES.get(chain_, "none"), "start": start}
    own = {"P": text(chance.uniform(30, 90)), "theta": text(chance.uniform(0, 30), "°"), "phi": "10°"}
    own |= {"mu_s": text(chance.uniform(0.2, 0.5)), "mu_k": text(chance.uniform(0.05, 0.19))}
    form |= {name: words for name, words in (USUAL | own).items() if name in needed(form)}
    body = chance.choice(shape.standing)
    form[f"Q{body}"] = text(chance.choice((1, -1)) * chance.uniform(10, 60), " uC")
    if chance.random() < 0.4:
        return form | {"field": chance.choice(("on", "back")), "E": text(chance.uniform(1e5, 6e5))}
    sides = [key for key, taken in (("on", shape.ahead), ("back", shape.behind)) if not taken]
    if not sides:
        return form | {"field": "on", "E": text(chance.uniform(1e5, 6e5))}
    far = {"Q": text(chance.choice((1, -1)) * chance.uniform(10, 60), " uC"), "r": text(chance.uniform(0.6, 2))}
    return form | {"fixed": chance.choice(sides)} | far


def test_what_happens_beside_charges_agrees_with_one_linear_system() -> None:
    """300 set-ups that move: a, each friction, each force between bodies, and every check of the page."""
    chance, done = random.Random(3), Counter[str]()
    for _ in range(300):
        form = charged_form(chance, chance.choice(ON_SURFACE), chance.choice(("on", "back", "rest")))
        try:
            _, plan, v, answer = worked(form)
        except (Refusal, Refusals):
            continue
        assert answer.unproven == (), form
        if "a" not in v:  # at rest, or each on its own
            continue
        way = {"on": 1.0, "back": -1.0}.get(form["start"]) or math.copysign(1.0, v["D"])
        done["fixed" if "fixed" in form else "field"] += 1
        right = by_numpy(form, way)
        assert v["a"] * way == pytest.approx(right["a"], abs=1e-6), form
        for name, value in v.items():
            letter, _, place = name.partition("_")
            if letter == "f" and place.isdigit():
                assert value == pytest.approx(abs(right[f"f{place}"]), abs=1e-6), form
            elif letter in ("T", "R") and place:
                assert value == pytest.approx(right[f"L{place}"] * (1 if letter == "T" else -1), abs=1e-6), form
        changes = [part.key for part in plan.parts if part.key == "later"]
        assert changes == (["later"] if "fixed" in form else []), form
        if done.total() <= 12:
            figures = [answer.figure, *(part.figure for part in answer.parts)]
            assert not any(all_faults(figure) for figure in figures if figure), form
    assert min(done["fixed"], done["field"]) > 40, done


SIGNS = {"positive": 1, "negative": -1}


def value_of(answer: WorkedAnswer, v: dict[str, float], name: str) -> float:
    """What was found, with its sign, as it may be typed."""
    step = next(step for part in answer.parts for step in part.steps if step.makes == name)
    if name.startswith("r"):
        assert step.direction is None
        return v[name]
    assert step.direction
    return v[name] * SIGNS[step.direction.key] * 1e6


def test_a_charge_or_distance_that_is_found_does_what_was_told() -> None:
    """Put into one linear system it gives the acceleration or the slip told; a second one gives it the other way."""
    chance, done = random.Random(8), Counter[str]()
    for _ in range(700):
        start = chance.choice(("goes-on", "goes-back", "on", "back", "slips-on", "slips-back", "steady-on", "rest"))
        form = charged_form(chance, chance.choice(ON_SURFACE), start)
        body = next(name for name in ("Q1", "Q2", "Q3") if name in form)
        asked = chance.choice((body, "Q", "r") if "fixed" in form else (body,))
        form.pop(asked)
        form.pop("mu_k" if start.startswith("slips") else "mu_s", "")
        a = 0.0
        if not start.startswith(("slips", "steady")):
            a = chance.uniform(0.2, 4)
            form["a"] = text(a)
            a = float(form["a"].replace(",", "."))
        links = SHAPES[form["chain"]].count - 1
        link = f"{'R' if SHAPES[form['chain']].touch else 'T'}_{chance.randint(1, links)}" if links else ""
        if "a" in form and link and chance.random() < 0.3:
            form[link] = text(chance.uniform(3, 40))
            form.pop("a")
        try:
            _, v, answer = worked_back(form, asked)
        except (Refusal, Refusals):
            continue
        assert answer.unproven == (), form
        unit = "" if asked == "r" else " uC"
        way = -1.0 if start.endswith("back") else 1.0
        if start == "rest":
            way = 1.0 if "right" in answer.story.split("moves off")[-1].split("move off")[-1] else 0.0
            way = way or (1.0 if "up the slope" in answer.story.split("move")[-1] else -1.0)
        for name, turn in ((asked, 1), (f"{asked[0]}_B", -1)):
            if name not in v:
                continue
            whole = form | {asked: f"{value_of(answer, v, name):.12f}".replace(".", ",") + unit}
            whole.pop(link, "")
            right = by_numpy(whole, way * turn)
            if link in form:
                force = right[f"L{link[2]}"] * (1 if link[0] == "T" else -1)
                assert force == pytest.approx(number(form[link]), abs=1e-5), (form, asked, name)
                done["link"] += 1
            else:
                assert right["a"] * way * turn == pytest.approx(a, abs=1e-5), (form, asked, name)
            done[name] += 1
    assert done["link"] > 10, done
    assert min(done[name] for name in ("Q1", "Q2", "Q3", "Q", "r", "Q_B", "r_B")) > 3, done


def test_between_the_two_charges_it_stays() -> None:
    """A thousandth beyond either charge that just holds the page says it moves, within both that it stays."""
    form = typed_back("Q1", "one", "none", "slips-on", theta="10°", m1="0,2 kg") | {
        "field": "back",
        "E": "100000 N/C",
    }
    _, v, answer = worked_back(form, "Q1")
    ends = sorted(value_of(answer, v, name) for name in ("Q1", "Q_B"))
    assert ends[0] < 0 < ends[1]
    for share, words in (
        (-0.001, "larger"),
        (0.001, "smaller"),
        (0.4, "smaller"),
        (0.999, "smaller"),
        (1.001, "larger"),
    ):
        charge = ends[0] + share * (ends[1] - ends[0])
        again = form | {"start": "rest", "Q1": text(charge, " uC"), "mu_k": "0,3"}
        assert words in said(worked(again)[3], "decide"), share


NEAR = {"fixed": "on", "Q": "3 uC", "Q1": "2 uC", "r": "0,2 m"}
WHERE = {("on", 1): "to the left", ("on", -1): "to the right", ("back", 1): "to the right", ("back", -1): "to the left"}


@pytest.mark.parametrize("side", ["on", "back"])
@pytest.mark.parametrize("signs", ["++", "+-", "-+", "--"])
def test_like_charges_repel_and_unlike_attract_on_either_side(side: str, signs: str) -> None:
    """The direction of the force in the step, the memo of the diagram, its arrow, and the words of both."""
    one, two = (sign.replace("+", "") for sign in signs)
    form = typed("one", m1="0,2 kg", mu_s="0,9", mu_k="0,2") | NEAR | {"Q1": f"{one}2 uC", "Q": f"{two}3 uC"}
    _, plan, v, answer = worked(form | {"fixed": side})
    like = signs[0] == signs[1]
    where = WHERE[side, 1 if like else -1]
    step = next(step for part in answer.parts for step in part.steps if step.makes == "F_E")
    assert step.direction
    assert step.direction.words == where
    why = next(step for step in plan.steps if step.makes == "F_E").why
    kind = "like signs and repel" if like else "unlike signs and attract"
    assert why.startswith(f"The charges have {kind} each other, so the force on this body points {where}.")
    assert v["F_E"] == pytest.approx(K * 6e-12 / 0.04)
    drawn = next(part for part in answer.parts if part.key == "draw-1")
    away = "away from" if like else "towards"
    assert f"F_E: the electrostatic force, {away} the fixed charge, {where}." in [point.words for point in drawn.points]
    assert drawn.figure
    arrow = next(item for item in drawn.figure.items if isinstance(item, Arrow) and "E" in item.label)
    assert (arrow.end[0] > arrow.start[0]) == (where == "to the right")
    assert v["D"] == pytest.approx(1.35 if where == "to the right" else -1.35)


@pytest.mark.parametrize("side", ["on", "back"])
@pytest.mark.parametrize("sign", ["", "-"])
@pytest.mark.parametrize("way", ["on", "back"])
def test_how_the_acceleration_changes_is_told_as_a_small_step_on_says(side: str, sign: str, way: str) -> None:
    """Larger or smaller: the net force along the motion 1 mm further on, by Coulomb's law."""
    form = typed("one", "none", way, m1="0,2 kg") | NEAR | {"Q": f"{sign}3 uC", "fixed": side}
    answer = worked(form)[3]
    words = said(answer, "later")
    closer = side == way
    again = form | {"r": "0,199 m" if closer else "0,201 m"}
    turn = 1.0 if way == "on" else -1.0
    now, then = (by_numpy(one, turn)["a"] * turn for one in (form, again))
    first = (
        "closer together: r becomes smaller, F_E larger." if closer else "further apart: r becomes larger, F_E smaller."
    )
    assert words.startswith(f"The charges move {first}")
    assert (
        f"direction of the motion becomes {'larger' if then > now else 'smaller'}: the acceleration does not" in words
    )
    against = electric(form)[1] * turn < 0
    assert f"F_E acts {'against' if against else 'with'} the motion" in words
    assert ("speeds up" in said(answer, "motion")) == (now > 0)
    assert ("slows down" in said(answer, "motion")) == (now < 0)


@pytest.mark.parametrize(
    ("side", "theta", "told"),
    [
        ("on", "0°", "and a small charge Q of +3 µC is fixed 0,2 m to the right, in line with it."),
        ("back", "0°", "and a small charge Q of +3 µC is fixed 0,2 m to the left, in line with it."),
        ("on", "12°", "and a small charge Q of +3 µC is fixed 0,2 m further up, in line with it."),
        ("back", "12°", "and a small charge Q of +3 µC is fixed 0,2 m further down, in line with it."),
    ],
)
def test_the_fixed_charge_is_told_and_drawn_on_its_side(side: str, theta: str, told: str) -> None:
    """The story, the ball beyond the bodies in line with them, its sign, and r from the middle of the charged body."""
    form = typed("tow2", "pull-on" if side == "back" else "pull-back", theta=theta, P="80 N") | NEAR | {"fixed": side}
    answer = worked(form)[3]
    assert told in answer.story.replace("\u00a0", " ")
    figure = answer.figure
    assert figure
    (ball,) = (item for item in figure.items if isinstance(item, Sphere))
    middles = [item.centre for item in figure.items if isinstance(item, Block)]
    assert (ball.sign, ball.label) == ("+", "Q")
    assert all((ball.centre[0] > x) == (side == "on") for x, _ in middles)
    slope = math.tan(math.radians(float(theta[:-1])))
    assert ball.centre[1] - middles[0][1] == pytest.approx(slope * (ball.centre[0] - middles[0][0]))
    (gap,) = (item for item in figure.items if isinstance(item, Dimension))
    assert sorted((gap.start, gap.end)) == sorted((middles[0], ball.centre))
    assert gap.label == "r"
    where = {"0°": ("to the right of", "to the left of"), "12°": ("further up than", "further down than")}[theta]
    assert f"A ball labelled Q stands {where[side == 'back']} the bodies, in line with them" in figure.description
    assert "The fixed charge Q is positive. The charge Q1 of m1 is positive." in figure.description
    assert all_faults(figure) == []


@pytest.mark.parametrize(("asked", "more"), [("Q1", {}), ("Q", {"Q1": "2 uC"}), ("r", {"Q1": "2 uC"})])
def test_what_is_asked_of_the_charges_is_a_letter_and_its_sign_is_not_drawn(asked: str, more: dict[str, str]) -> None:
    """The story has Q₁, Q or a distance r; the picture shows the sign of the other charge alone."""
    near = {"fixed": "on", "Q": "-3 uC", "r": "0,2 m"} | more
    near.pop(asked, "")
    answer = worked_back(typed_back(asked, "one", "none", "slips-on", theta="10°", m1="0,2 kg") | near, asked)[2]
    told = {"Q1": "carries a charge of Q₁, and", "Q": "a small charge Q is fixed", "r": "is fixed a distance r further"}
    assert told[asked] in answer.story
    assert answer.figure
    description = answer.figure.description
    assert ("The fixed charge Q is" in description) == (asked != "Q")
    assert ("The charge Q1 of m1 is" in description) == (asked != "Q1")
    written = next(item.text for item in answer.figure.items if isinstance(item, Text))
    assert written == ("Q_1" if asked == "Q1" else "Q_1 (+)")
    field = {"field": "on", "E": "900000 N/C"}
    if asked == "Q1":
        plain = worked_back(typed_back(asked, "one", "none", "slips-on", theta="10°", m1="0,2 kg") | field, asked)[2]
        assert plain.figure
        assert "Q1" not in plain.figure.description
        assert "carries a charge of Q₁, in a uniform electric field of" in plain.story


@pytest.mark.parametrize(
    ("start", "where", "kind"),
    [("slips-on", "up the slope", "positive"), ("slips-back", "down the slope", "negative")],
)
def test_the_memo_of_a_charge_in_a_field(start: str, where: str, kind: str) -> None:
    """The force, why it points so, the sign that follows, and the other charge."""
    form = typed_back("Q1", "one", "none", start, theta="10°", m1="0,2 kg") | {"field": "on", "E": "100000 N/C"}
    plan, v, answer = worked_back(form, "Q1")
    force, charge = (next(step for step in plan.steps if step.makes == name) for name in ("F_E", "Q1"))
    assert force.why == (
        f"The positive direction is that in which it would slip: {where}. Nothing speeds up, so the net force is zero."
        f" Without the electrostatic force the others would be too small, so it acts {where}."
    )
    along = "along" if kind == "positive" else "against"
    assert charge.why == f"The force points {where}, {along} the field, so the charge is {kind}."
    assert answer.parts[-2].ask == "Calculate Q₁, the charge of the body, and give its sign."
    turned = {"up the slope": "down the slope", "down the slope": "up the slope"}[where]
    assert answer.parts[-1].ask == (
        f"With another charge it is about to slip the other way: {turned}. Calculate this charge, Q_B."
    )
    weight, most = 0.2 * 9.8 * math.sin(math.radians(10)), 0.4 * 0.2 * 9.8 * math.cos(math.radians(10))
    sizes = (most + weight, most - weight)
    assert (v["Q1"] * 1e5, v["Q_B"] * 1e5) == pytest.approx(sizes if start == "slips-on" else sizes[::-1])


def test_two_motions_from_rest_have_two_charges() -> None:
    """With the same acceleration up and down the level: charges of one size and both signs."""
    form = typed_back("Q1", "one", "none", "rest", m1="0,2 kg", mu_k="0,1") | {
        "fixed": "back",
        "Q": "3 uC",
        "r": "0,2 m",
    }
    plan, v, answer = worked_back(form | {"a": "2"}, "Q1")
    force = 0.2 * (2 + 0.1 * 9.8)
    assert v["Q1"] == pytest.approx(force * 0.04 / (K * 3e-6)) == v["Q_B"]
    assert [value_of(answer, v, name) > 0 for name in ("Q1", "Q_B")] == [True, False]
    assert plan.parts[-1].ask == (
        "With another charge it moves off with the same acceleration, but the other way: to the left. Calculate this"
        " charge, Q_B."
    )


SLIPS = typed_back("Q1", "one", "none", "slips-on", theta="10°", m1="0,2 kg")
REFUSED: list[tuple[str, dict[str, str], str | None, str]] = [
    (
        "",
        typed("one", theta="9°") | {"Q": "1 uC"},
        "Q",
        "There is no fixed charge: leave this box empty, or choose one.",
    ),
    (
        "",
        typed("one", theta="9°") | {"r": "1 m"},
        "r",
        "There is no fixed charge: leave this box empty, or choose one.",
    ),
    ("", typed("one", theta="9°") | {"fixed": "on"}, "Q", "Fill in the fixed charge."),
    (
        "",
        typed("one", theta="9°") | {"fixed": "on", "Q": "1 uC"},
        "r",
        "Fill in the distance between the two charges.",
    ),
    (
        "",
        typed("one", theta="9°") | {"fixed": "on", "Q": "1 uC", "r": "1 m"},
        "Q1",
        "Fill in the charge of one of the bodies on the surface.",
    ),
    (
        "",
        typed("one", theta="9°") | NEAR | {"Q": "0 uC"},
        "Q",
        "A charge of zero has no part in a force: fill in another, or choose “no fixed charge”.",
    ),
    (
        "",
        typed("one", theta="9°") | NEAR | {"field": "on", "E": "20 N/C"},
        "fixed",
        "A field and a fixed charge together are not worked here: choose “no field”, or “no fixed charge”.",
    ),
    (
        "",
        typed("edge") | NEAR,
        "fixed",
        (
            "The string runs over its pulley on this side: put the fixed charge on the other side, or choose another"
            " arrangement."
        ),
    ),
    (
        "",
        typed("pulley") | NEAR,
        "fixed",
        "There is no such body on the surface in this arrangement: choose another body.",
    ),
    (
        "Q",
        SLIPS | {"field": "on", "E": "9 N/C"},
        "fixed",
        "There is no fixed charge: choose one, or ask for something else.",
    ),
    ("r", SLIPS, "fixed", "There is no fixed charge: choose one, or ask for something else."),
    (
        "Q1",
        SLIPS,
        "field",
        "Nothing acts on a charge here: choose an electric field or a fixed charge, or ask for something else.",
    ),
    (
        "Q2",
        SLIPS | {"field": "on", "E": "9 N/C"},
        "chain",
        "No such body stands on the surface here: choose another arrangement, or ask for the charge of another body.",
    ),
    (
        "Q1",
        SLIPS | {"fixed": "on", "Q": "3 uC", "r": "1 m", "start": "steady-on", "mu_k": "0,2"},
        "start",
        (
            "The force of a fixed charge changes with the distance, so no constant velocity lasts: choose a motion and"
            " give an acceleration of zero for this moment."
        ),
    ),
    (
        "r",
        SLIPS | {"fixed": "on", "Q": "3 uC", "Q1": "2 uC"},
        "fixed",
        (
            "These charges repel each other, so the force points down the slope; this motion needs it to point up the"
            " slope. Change the sign of a charge, or put the fixed charge on the other side."
        ),
    ),
    (
        "r",
        SLIPS | {"fixed": "back", "Q": "-3 uC", "Q1": "2 uC"},
        "fixed",
        (
            "These charges attract each other, so the force points down the slope; this motion needs it to point up the"
            " slope. Change the sign of a charge, or put the fixed charge on the other side."
        ),
    ),
    (
        "Q1",
        typed_back("Q1", "one", "none", "steady-on", mu_k="0") | {"field": "on", "E": "9 N/C"},
        None,
        (
            "Without an electrostatic force the motion is the same: the charge would have to be zero, or too far away"
            " to matter. Check the numbers."
        ),
    ),
    (
        "Q1",
        SLIPS | {"field": "on", "E": "9 N/C", "Q2": "1 uC"},
        "Q2",
        "Two charged bodies act on each other as well, more and more as they come closer: charge one of them.",
    ),
]


@pytest.mark.parametrize(("asked", "form", "field", "sentence"), REFUSED)
def test_charges_that_do_not_belong_together(
    asked: str, form: dict[str, str], field: str | None, sentence: str
) -> None:
    """A box without its choice, a side without room, a charge of zero, the wrong direction: said beside the box."""
    assert refusal(form, asked) == (field, sentence)


@pytest.mark.parametrize(
    ("asked", "choices", "shown"),
    [
        ("", {"fixed": "on"}, "m1 theta mu_s mu_k Q1 Q r"),
        ("Q1", {"fixed": "back", "start": "slips-on"}, "m1 theta mu_s Q r"),
        ("r", {"fixed": "on", "start": "goes-on"}, "m1 theta mu_k a Q1 Q"),
        ("Q1", {"field": "on", "start": "goes-on"}, "m1 theta mu_k a E"),
    ],
)
def test_only_the_boxes_of_the_charges_are_shown(asked: str, choices: dict[str, str], shown: str) -> None:
    """The form has the boxes that lead to what is asked and no other."""
    names = boxes(QUESTION, asked, {"chain": "one", "force": "none", "start": "rest"} | choices)
    found = {name for name in names if name not in ("chain", "force", "start", "fixed", "field")}
    assert found == set(shown.split())


@pytest.mark.parametrize("angle", [0, 12, 30, 55, 70])
def test_labels_stand_clear_beside_a_fixed_charge(angle: int) -> None:
    """Wherever the charges and a second force are, with a rope or rod at any angle, no label touches anything."""
    chance, wrong = random.Random(angle), list[str]()
    for _ in range(24):
        count, touch, held, second, place = some_chain(chance)
        signs = chance.choice((-1, 0, 1)), chance.choice((-1, 0, 1))
        fixed = Fixed(place, *signs, f"Q_{place + 1}", chance.random() < 0.5)
        on = tuple(f"m_{n}" for n in range(1, count + 1))
        some = chance.choice(((held, second), (held, None), (None, second), (None, None)))
        figure: Figure = chain(angle, on, touch=touch, pulled=some[0], second=some[1], fixed=fixed)
        wrong += all_faults(figure)
    assert wrong == []


def test_practice_asks_for_charges_and_draws_what_goes_slack() -> None:
    """Of 100 draws of the newest rule some ask for a charge or a distance, tell of fixed ones, and some go slack."""
    asked, told, slack = Counter[str](), 0, 0
    for level, seed in itertools.product((1, 2), range(100)):
        one = cases.drawn("newton.situation", seed, level, DRAWS)
        found = read(QUESTION, one.inputs, one.find, variant=one.variant)
        plan = QUESTION.plan(found.data)
        asked[one.find] += 1
        told += "is fixed" in plan.story
        slack += any(part.key == "apart" for part in plan.parts)
        assert not work(TOPIC, QUESTION, found).unproven
    assert min(asked["Q1"], asked["r"]) > 5
    assert max(asked["Q1"], asked["r"]) < 40
    assert told > 10
    assert slack > 5
    older = [draw(TOPIC, QUESTION, seed, 2, DRAWS - 1) for seed in range(30)]
    assert {one.inputs["fixed"] for one in older} == {"none"}
    assert {one.find for one in older}.isdisjoint(("Q1", "Q2", "Q3", "Q", "r"))
