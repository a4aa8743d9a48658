"""A situation with a second force, a charge in a field, or coefficients of a body's own, against one linear system."""

from __future__ import annotations

import math
import random
from typing import Any

import pytest

from calc.figures import Arrow, Figure
from calc.figures.chains import Acting, Lying, chain
from calc.figures.pieces import Block, Text
from calc.figures.surfaces import Pulled
from calc.model.questions import Refusal
from calc.papers.papers import plain_scene
from calc.practice.fair import fair_scene
from calc.topics.newton.situation_chain import needed
from calc.topics.newton.situation_shapes import SHAPES
from calc.working.reading import Refusals, read
from tests.test_figure_overlaps import all_faults
from tests.test_hiding import seen
from tests.topics.test_situation import QUESTION, USUAL, said, solved, typed, worked
from tests.topics.test_situation_back import refusal, text
from tests.topics.test_situation_back import typed as typed_back
from tests.topics.test_situation_back import worked as worked_back

FORCES = {"tow2": "pull-on", "tow3": "pull-back", "touch2": "push-on", "touch3": "push-back", "edge": "pull-back"}


def form_with(chance: random.Random, chain: str, count: int) -> tuple[dict[str, str], dict[int, float]]:
    """A set-up with a second force, a charged body and own coefficients, and the further forces forwards by body."""
    form = {"chain": chain, "force": FORCES.get(chain, "none"), "start": chance.choice(("on", "back"))}
    own = {"P": text(chance.uniform(30, 90)), "theta": text(chance.uniform(0, 20), "°"), "phi": "10°"}
    form |= {name: words for name, words in (USUAL | own).items() if name in needed(form)}
    on = [n for n in range(1, count + 1) if not SHAPES[chain].hangs(n)]
    further = dict.fromkeys(on, 0.0)
    n, way, size = chance.choice(on), chance.choice((1, -1)), chance.uniform(1, 20)
    form |= {"also": f"{'on' if way > 0 else 'back'}-{n}", "F": text(size)}
    further[n] += way * size
    n, way, sign = chance.choice(on), chance.choice((1, -1)), chance.choice((1, -1))
    size = chance.uniform(100, 900)
    form |= {"field": "on" if way > 0 else "back", f"Q{n}": f"{sign * size:.6f} uC".replace(".", ","), "E": "20000 N/C"}
    further[n] += way * sign * float(f"{size:.6f}") * 0.02
    for n in (n for n in on if n > 1):
        form |= {f"mu_k{n}": text(chance.uniform(0.1, 0.3)), f"mu_s{n}": text(chance.uniform(0.3, 0.6))}
    return form, further


def test_further_forces_and_own_coefficients_agree_with_one_linear_system() -> None:
    """200 set-ups that move: a, every friction and every force between bodies as numpy solves all equations at once."""
    chance, done = random.Random(5), 0
    for _ in range(200):
        chain = chance.choice(tuple(chain for chain in SHAPES if chain != "pulley"))
        form, further = form_with(chance, chain, SHAPES[chain].count)
        try:
            _, _, v, answer = worked(form)
        except (Refusal, Refusals):
            continue
        if "a" not in v:  # a string goes slack
            continue
        done += 1
        way = 1.0 if form["start"] == "on" else -1.0
        right = solved({name: words for name, words in form.items() if not name.startswith("Q")}, way, further)
        assert v["a"] * way == pytest.approx(right["a"], abs=1e-6), form
        assert answer.unproven == (), form
        if done <= 12:
            figures = [answer.figure, *(part.figure for part in answer.parts)]
            assert not any(all_faults(figure) for figure in figures if figure), form
        for name, value in v.items():
            letter, _, place = name.partition("_")
            if letter == "f" and place.isdigit():
                assert value == pytest.approx(abs(right[f"f{place}"]), abs=1e-6), form
            elif letter in ("T", "R") and place:
                assert value == pytest.approx(right[f"L{place}"] * (1 if letter == "T" else -1), abs=1e-6), form
    assert done > 60


def test_backwards_with_further_forces() -> None:
    """A mass found with a second force, a charge and an own coefficient gives the acceleration told, by numpy."""
    more = {"also": "back-1", "F": "7", "field": "on", "Q2": "-300 uC", "E": "20000 N/C", "mu_k2": "0,1"}
    form = typed_back("m1", "tow2", "pull-on", "goes-on", P="80 N", theta="5°", a="1,5") | more
    _, v, _ = worked_back(form, "m1")
    plain = {name: words for name, words in form.items() if not name.startswith("Q")} | {"mu_s": "0"}
    right = solved(plain | {"m1": text(v["m1"])}, 1.0, {1: -7.0, 2: -6.0})
    assert right["a"] == pytest.approx(1.5, abs=1e-6)
    _, v, _ = worked_back({**form, "m1": text(v["m1"])} | {"mu_k": ""}, "mu_k")
    assert v["mu_k"] == pytest.approx(0.3)


@pytest.mark.parametrize(("asked", "value"), [("F", 7.0), ("E", 20000.0)])
def test_the_second_force_and_the_field_can_be_asked(asked: str, value: float) -> None:
    """What is found is what gave the acceleration, by numpy; the story has its letter."""
    more = {"also": "back-1", "F": "7", "field": "on", "Q2": "-300 uC", "E": "20000 N/C"}
    form = typed("tow2", "pull-on", "on", P="80 N", theta="5°") | more
    plain = {name: words for name, words in form.items() if not name.startswith("Q")}
    a = solved(plain, 1.0, {1: -7.0, 2: -6.0})["a"]
    found = {**form, "a": f"{a:.9f}".replace(".", ",")}
    found.pop(asked)
    _, v, answer = worked_back(found, asked)
    assert v[asked] == pytest.approx(value, rel=1e-6)
    told = {"F": "A second force F acts on the first along the surface, down the slope.", "E": "field of E that points"}
    assert told[asked] in answer.story


def test_the_second_force_cannot_point_the_other_way() -> None:
    """An acceleration that needs it forwards is refused where backwards is chosen, and a field that is not there."""
    form = typed("one", "pull-on", "on", P="20 N", a="9") | {"also": "back-1", "a": "9"}
    sentence = "Nothing this way fits: it would have to point the other way. Turn it round, or check the numbers."
    assert refusal(form, "F") == ("also", sentence)
    absent = "There is no electric field: choose one, or ask for something else."
    assert refusal(typed("one", "pull-on", "on") | {"a": "1"}, "E") == ("field", absent)


WORDS = {"on": "to the right", "back": "to the left"}


@pytest.mark.parametrize("field", ["on", "back"])
@pytest.mark.parametrize("sign", ["", "-"])
def test_the_force_of_a_field_has_its_direction_by_the_sign_of_the_charge(field: str, sign: str) -> None:
    """A positive charge is driven along the field, a negative one against it; the diagram and the story say so."""
    form = typed("one", "none", "rest", mu_s="0,1", mu_k="0,1", m1="1 kg")
    form |= {"field": field, "E": "20000 N/C", "Q1": f"{sign}400 uC"}
    _, plan, v, answer = worked(form)
    where = WORDS[field] if not sign else WORDS["back" if field == "on" else "on"]
    assert f"They start to move {where}." in said(answer, "decide") or f"It starts to move {where}." in said(
        answer, "decide"
    )
    drawn = next(part for part in plan.parts if part.kind == "draw")
    assert f"F_E: the electrostatic force, {where}." in [point.words for point in drawn.points]
    assert "in a uniform electric field of 2" in answer.story
    assert f"that points {WORDS[field]}." in answer.story
    assert v["D"] == pytest.approx(8.0 if where == "to the right" else -8.0)
    why = next(step for step in plan.steps if step.makes == "D").why
    kind = "negative, so its force points against" if sign else "positive, so its force points along"
    assert f"Q₁ is {kind} the field: {where}." in why
    slips = {mistake.key for step in plan.steps for mistake in step.mistakes}
    assert ("negative-along-field" in slips) == bool(sign)


@pytest.mark.parametrize("way", ["on", "back"])
def test_the_second_force_is_told_and_drawn_the_way_it_points(way: str) -> None:
    """Forwards up the slope, backwards down."""
    where = "up the slope" if way == "on" else "down the slope"
    form = typed("tow2", "pull-on", theta="10°", P="80 N") | {"also": f"{way}-1", "F": "12 N"}
    _, plan, _, answer = worked(form)
    assert f"A second force F of 12\u00a0N acts on the first along the surface, {where}." in answer.story
    assert answer.figure
    assert answer.figure.notes == ("Not to scale.",)
    (arrow,) = (item for item in answer.figure.items if isinstance(item, Arrow))
    assert arrow.label == "F"
    assert heading(arrow) == pytest.approx(10 if way == "on" else 190)
    assert nearest(answer.figure, middle(arrow)) == "m_1"
    assert f"An arrow labelled F over m1 points {where}: a second force on m1." in answer.figure.description
    first = next(part for part in plan.parts if part.key == "draw-1")
    assert f"F: the second force, {where}." in [point.words for point in first.points]


def middle(arrow: Arrow) -> tuple[float, float]:
    """The point half-way."""
    return (arrow.start[0] + arrow.end[0]) / 2, (arrow.start[1] + arrow.end[1]) / 2


def heading(arrow: Arrow) -> float:
    """The direction it points, in degrees anticlockwise from the right."""
    (x, y), (x2, y2) = arrow.start, arrow.end
    return math.degrees(math.atan2(y2 - y, x2 - x)) % 360


def nearest(figure: Figure, point: tuple[float, float]) -> str:
    """The name of the box whose middle is nearest."""
    boxes = [item for item in figure.items if isinstance(item, Block)]
    return min(boxes, key=lambda box: math.dist(box.centre, point)).label


FIELD_FORM = {"E": "20000 N/C", "also": "back-1", "F": "7"}


@pytest.mark.parametrize("theta", ["0°", "15°"])
@pytest.mark.parametrize("field", ["on", "back"])
@pytest.mark.parametrize("sign", ["", "-"])
def test_the_field_and_the_sign_of_the_charge_are_drawn_and_told(theta: str, field: str, sign: str) -> None:
    """Two parallel arrows point along the field whatever the sign, which stands over the charged body."""
    more = FIELD_FORM | {"field": field, "Q2": f"{sign}300 uC"}
    figure = worked(typed("tow2", "pull-on", theta=theta, P="80 N") | more)[3].figure
    assert figure
    assert figure.notes == ("Not to scale.",)
    lines = [item for item in figure.items if isinstance(item, Arrow) and item.kind == "field"]
    forwards = float(theta[:-1])
    assert [heading(one) for one in lines] == pytest.approx([forwards if field == "on" else forwards + 180] * 2)
    (written,) = (item for item in figure.items if isinstance(item, Text))
    assert written.text == f"Q_2 ({'−' if sign else '+'})"
    assert nearest(figure, written.at) == "m_2"
    where = {"0°": WORDS, "15°": {"on": "up the slope", "back": "down the slope"}}[theta][field]
    assert f"Parallel arrows labelled E point {where}: a uniform electric field" in figure.description
    assert f"The charge Q2 of m2 is {'negative' if sign else 'positive'}." in figure.description
    assert all_faults(figure) == []


@pytest.mark.parametrize(
    ("asked", "gone", "kept"),
    [
        ("F", ("labelled F", "second force"), ("labelled E", "is negative")),
        ("E", ("labelled E", "electric field"), ("labelled F", "is negative")),
        ("Q2", ("charge Q2", "negative", "(−)"), ("labelled F", "labelled E")),
    ],
)
def test_what_is_asked_of_further_forces_is_hidden(asked: str, gone: tuple[str, ...], kept: tuple[str, ...]) -> None:
    """Its arrow or sign and its sentence are gone from picture and words; the bodies and the rest stay."""
    form = typed("tow2", "pull-on", theta="10°", P="80 N") | FIELD_FORM | {"field": "on", "Q2": "-300 uC"}
    whole = worked(form)[3].figure
    assert whole
    hidden = whole.without({asked})
    before, after = seen(whole), seen(hidden)
    for words in (*gone, *kept, "Boxes m1, m2 stand"):
        assert words in before
        assert (words in after) == (words not in gone)
    assert hidden
    arrows = {item.kind for item in hidden.items if isinstance(item, Arrow)}
    assert arrows == {"F": {"field"}, "E": {"force"}, "Q2": {"field", "force"}}[asked]


def some_chain(chance: random.Random) -> tuple[int, bool, Pulled, Acting, int]:
    """How many bodies, whether they touch, a pull or push, a second force, and the place of a charge."""
    count, touch = chance.randint(1, 3), chance.random() < 0.5
    held = Pulled("P", chance.choice((0, 30, 60, 88)), touch, back=chance.random() < 0.5)
    return count, touch, held, Acting(chance.randrange(count), chance.random() < 0.5), chance.randrange(count)


@pytest.mark.parametrize("angle", [0, 12, 30, 55, 70])
def test_labels_stand_clear_with_further_forces(angle: int) -> None:
    """Wherever the second force and the charge are, with a rope or rod at any angle, no label touches anything."""
    chance, wrong = random.Random(angle), list[str]()
    for _ in range(24):
        count, touch, held, second, place = some_chain(chance)
        field = Lying(place, chance.random() < 0.5, f"Q_{place + 1}", chance.random() < 0.5)
        on = tuple(f"m_{n}" for n in range(1, count + 1))
        either = chance.choice(((second, field), (second, None), (None, field)))
        wrong += all_faults(chain(angle, on, touch=touch, pulled=held, second=either[0], field=either[1]))
    assert wrong == []


def test_given_arrows_stay_in_practice_and_on_paper() -> None:
    """The second force and the field are data: a drawn question shows them, with their words."""
    form = typed("tow2", "pull-on", theta="10°", P="80 N") | FIELD_FORM | {"field": "on", "Q2": "-300 uC"}
    found = read(QUESTION, form, "a")
    plan = QUESTION.plan(found.data)
    for scene in (fair_scene(plan, found), plain_scene(plan, found)):
        assert scene
        assert {item.label for item in scene.items if isinstance(item, Arrow)} == {"F", "E", ""}
        assert "An arrow labelled F over m1 points down the slope" in scene.description


REFUSED: list[tuple[dict[str, str], str, str]] = [
    ({"F": "3 N"}, "F", "There is no second force: leave this box empty, or choose one."),
    ({"also": "on-1"}, "F", "Fill in the size of the second force."),
    (
        {"also": "on-3", "F": "3 N"},
        "also",
        "There is no such body on the surface in this arrangement: choose another body.",
    ),
    ({"E": "20 N/C"}, "E", "There is no electric field: leave this box empty, or choose one."),
    ({"Q1": "2 uC"}, "Q1", "There is no electric field: leave this box empty, or choose one."),
    ({"field": "on", "Q1": "2 uC"}, "E", "Fill in the strength of the field."),
    ({"field": "on", "E": "20 N/C"}, "Q1", "Fill in the charge of one of the bodies on the surface."),
    (
        {"field": "on", "E": "20 N/C", "Q1": "2 uC", "Q2": "3 uC"},
        "Q2",
        "Two charged bodies act on each other as well, more and more as they come closer: charge one of them.",
    ),
    (
        {"field": "on", "E": "20 N/C", "Q3": "2 uC"},
        "Q3",
        "There is no such body on the surface in this arrangement: choose another body.",
    ),
    (
        {"field": "on", "E": "20 N/C", "Q1": "0 uC"},
        "Q1",
        "A charge of zero feels no force: fill in another, or choose “no field”.",
    ),
    (
        {"mu_k3": "0,1"},
        "mu_k3",
        "There is no such body on the surface in this arrangement: choose another body.",
    ),
    (
        {"mu_k2": "0,5"},
        "mu_k2",
        "μₖ may not be larger than μₛ: friction would stop it as soon as it starts. Check the coefficients.",
    ),
]


@pytest.mark.parametrize(("more", "field", "sentence"), REFUSED)
def test_further_boxes_that_do_not_belong_together(more: dict[str, str], field: str, sentence: str) -> None:
    """A box without its choice, a choice without its box, and a body that is not there, are refused beside them."""
    assert refusal(typed("tow2", "pull-on") | more, "a") == (field, sentence)


def test_the_angle_of_a_slope_with_two_coefficients_is_refused() -> None:
    """Two coefficients leave no single angle ε: said beside the box."""
    form = typed_back("theta", "tow2", "pull-on", "goes-on", a="1") | {"mu_k2": "0,1"}
    sentence = (
        "With different coefficients the angle of the slope is not worked out here: leave this box empty, or ask for"
        " something else."
    )
    assert refusal(form, "theta") == ("mu_k2", sentence)


def test_younger_boxes_left_alone_change_nothing() -> None:
    """With no second force and no field chosen the answer is the one without these choices."""
    form: dict[str, Any] = typed("tow2", "pull-on")
    assert worked(form | {"also": "none", "field": "none", "F": "", "E": "", "Q1": ""})[2] == worked(form)[2]
    assert math.isclose(worked(form)[2]["a"], solved(form, 1.0)["a"])
    assert {"also", "field"} <= {item.name for item in QUESTION.fields}
